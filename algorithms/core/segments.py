"""Rows of many short pieces one after another: sums and neighbours within each, without a loop over the pieces."""

import numpy as np


def joined(arrays):
    """Arrays (n,) of any unit, one after the other; a single one as it is, not copied: a million rows are 8 MB each."""
    return arrays[0] if len(arrays) == 1 else np.concatenate(arrays)


def row_products(first, second):
    """Inner products (n,) of the rows of two arrays (n, k), in the product of their units."""
    return np.einsum("ij,ij->i", first, second)


def ranges(firsts, counts):
    """Indices from each of ``firsts`` (m,) on, so many as ``counts`` (m,) says, one range after another (n,)."""
    rows = Segments(counts)
    return np.asarray(firsts)[rows.which] + rows.places


class Segments:
    """Pieces of ``counts`` (m,) rows each, none empty: n rows in all.

    ``bounds`` (m + 1,): where the rows of each begin, and where the last end; ``which`` (n,): index of each row's
    piece.
    """

    def __init__(self, counts):
        self.counts = np.asarray(counts, int)
        self.bounds = np.concatenate([[0], np.cumsum(self.counts)])
        self.which = np.repeat(np.arange(len(self.counts)), self.counts)

    @property
    def first(self):
        """First row of each (m,)."""
        return self.bounds[:-1]

    @property
    def places(self):
        """How many rows of its piece stand before each row (n,)."""
        return np.arange(self.bounds[-1]) - self.first[self.which]

    @property
    def last(self):
        """Last row of each (m,)."""
        return self.bounds[1:] - 1

    def sums(self, values):
        """Sums of ``values`` (n, ...) over each, (m, ...), in their unit."""
        return np.add.reduceat(values, self.first, axis=0)

    def tails(self, values):
        """Sums of ``values`` (n, ...) from each row to the last of its piece, (n, ...), in their unit."""
        sums = np.zeros((len(values) + 1, *values.shape[1:]))
        np.cumsum(values[::-1], axis=0, out=sums[-2::-1])
        return sums[:-1] - sums[self.bounds[1:]][self.which]

    def products(self, left, right):
        """left^T right of each, (m, p, q), of columns (n, p) and (n, q)."""
        found = np.empty((len(self.counts), left.shape[1], right.shape[1]))
        for i in range(left.shape[1]):
            for j in range(right.shape[1]):
                found[:, i, j] = self.sums(left[:, i] * right[:, j])
        return found

    def times(self, columns, factors):
        """``columns`` (n, p) times the ``factors`` (m, p) of each, (n,)."""
        return np.einsum("np,np->n", columns, factors[self.which])

    def steps(self, values):
        """Next row less this one, (n, ...), in the unit of the ``values`` (n, ...); 0 in the last row of each."""
        found = np.zeros_like(values)
        found[:-1] = np.diff(values, axis=0)
        found[self.last] = 0.0
        return found

    def greatest(self, values):
        """Row of the greatest of ``values`` (n,) of each, the first of several, (m,)."""
        top = np.flatnonzero(values == np.maximum.reduceat(values, self.first)[self.which])
        return top[np.searchsorted(self.which[top], np.arange(len(self.counts)))]

    def range(self, values):
        """The least of ``values`` (n,) of each, and how far the greatest is above it: two arrays (m,)."""
        low = np.minimum.reduceat(values, self.first)
        return low, np.maximum.reduceat(values, self.first) - low

    def parts(self, values):
        """``values`` (n, ...) of each: a list."""
        bounds = self.bounds.tolist()
        return [values[first:last] for first, last in zip(bounds, bounds[1:])]
