"""Work that gives way now and then: a generator whose ``yield`` says that others may go first, and which returns what
was asked for. A window that must not stand still takes one slice at a time; all others take them in one go."""

# Rows of a layer in one slice: some hundredths of a second.
ROWS = 2_000


def finished(work):
    """Take all slices of a generator ``work``; what it returns."""
    while True:
        try:
            next(work)
        except StopIteration as end:
            return end.value
