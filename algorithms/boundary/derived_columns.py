"""Columns of an output that are made while it is written: of a million rows only a few hundred exist at a time."""

import numpy as np


class Derived:
    """A column (rows,). ``make``: called with a slice of the rows, returns their values as a list of str, int, float
    and None, as they go into a feature."""

    def __init__(self, rows, make):
        self._rows, self._make = rows, make

    def __len__(self):
        return self._rows

    def __getitem__(self, part):
        return self._make(part)


def numbers(rows, make):
    """A Derived of the arrays that ``make`` returns for slices; None for NaN."""

    def values(part):
        found = make(part)
        return found.tolist() if not np.isnan(found).any() else [None if v != v else v for v in found.tolist()]

    return Derived(rows, values)


def words(texts, codes):
    """A Derived of ``texts`` by their numbers, ``codes`` (rows,)."""
    texts = np.array(texts, dtype=object)
    return Derived(len(codes), lambda part: texts[codes[part]].tolist())
