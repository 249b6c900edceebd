"""Rows of arrays seen where they are consecutive, and copied only where they are not."""

import numpy as np


def as_slice(rows):
    """The same rows as a slice where ``rows``, indices (n,), are consecutive, else ``rows`` itself.

    An array indexed by a slice is a view that takes no room of its own: whoever gets it only reads it.
    """
    if len(rows) and rows[-1] - rows[0] == len(rows) - 1 and np.all(np.diff(rows) == 1):
        return slice(int(rows[0]), int(rows[-1]) + 1)
    return rows
