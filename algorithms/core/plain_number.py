"""A number as computers write it, and nothing else: no grouping, no digits of other scripts, no words."""

import re

_NUMBER = re.compile(r"[+-]?(?:(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:e[+-]?[0-9]+)?|nan|inf(?:inity)?)", re.IGNORECASE)


def plain_number(text):
    """The float that a text writes, None where it writes none; blanks around it do not count.

    NaN and infinity are written 'nan' and 'inf'. Python's own reading also takes '1_000' and the digits of every
    script, which no list means as the number that comes out.
    """
    text = text.strip()
    return float(text) if _NUMBER.fullmatch(text) else None


def plain_numbers(texts):
    """List of floats of a column of texts, NaN for an empty one; None where one of them is no plain number."""
    matched = _NUMBER.fullmatch
    if not all(not text or matched(text) for text in texts):
        return None
    return [float(text or "nan") for text in texts]
