"""Rows of arrays: those of each key, found in one pass, and those that follow each other, seen without a copy."""

import numpy as np


def as_slice(rows):
    """The same rows as a slice where ``rows``, indices (n,), are consecutive, else ``rows`` itself.

    An array indexed by a slice is a view that takes no room of its own: whoever gets it only reads it.
    """
    if len(rows) and rows[-1] - rows[0] == len(rows) - 1 and np.all(np.diff(rows) == 1):
        return slice(int(rows[0]), int(rows[-1]) + 1)
    return rows


def as_slices(rows, bounds):
    """``as_slice`` of each of many parts of ``rows``, indices (n,), asked in one go: a list. ``bounds`` (m + 1,): where
    the rows of each part begin, and where all end; no part is empty."""
    bounds = np.asarray(bounds)
    follows = np.ones(len(rows), bool)
    follows[1:] = np.diff(rows) == 1
    follows[bounds[:-1]] = True
    whole = np.logical_and.reduceat(follows, bounds[:-1]).tolist() if len(rows) else []
    begins, bounds = rows[bounds[:-1]].tolist() if len(rows) else [], bounds.tolist()
    return [
        slice(begin, begin + last - first) if good else rows[first:last]
        for good, begin, first, last in zip(whole, begins, bounds, bounds[1:])
    ]


def rows_of_each(keys):
    """{key: its rows, rising}, keys in the order in which they first occur. ``keys`` (n,): plain names or numbers.

    A mask for each key costs rows times keys; this sorts the rows once.
    """
    known = {}
    numbers = np.array([known.setdefault(key, len(known)) for key in keys], int)
    order = np.argsort(numbers, kind="stable")
    return dict(zip(known, np.split(order, np.cumsum(np.bincount(numbers))[:-1]))) if known else {}
