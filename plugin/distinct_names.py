"""Names of layers and groups by which a person can tell them apart."""


def distinct(name, taken):
    """``name``, with a number where one of the names ``taken`` is the same."""
    found, number = name, 1
    while found in taken:
        number += 1
        found = f"{name} ({number})"
    return found
