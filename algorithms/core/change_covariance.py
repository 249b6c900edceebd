"""Covariance of the changes of one axis' stations, made so that every run of neighbours can be weighed (method page 7).

A test of a run needs e^T W e with e = 1 on the run. Changes levelled outwards along the axis are a random walk on each
side of the origin, which has it in closed form (see levelled_weights.py); a covariance that was given has it by
cumulative sums.
"""

import numpy as np

from .covariance import Covariance
from .levelled_weights import Walk


def _arm(own, steps):
    """The Walk on one side of the origin: ``own`` variances (m,), and ``steps`` (m,) from each inner neighbour."""
    return Walk(own, (np.arange(len(own)) > 0).astype(float), steps)


class LevelledChanges:
    """Changes that are independent, or levelled outwards along the axis on both sides of its levelling's origin.

    C_ij = own_i [i = j] + walk min(d_i, d_j) on one side of the origin. ``own``: square metres (n,), positive;
    ``distance``: metres along the axis from the origin (n,), ascending, negative before it; ``walk``: variance over one
    metre, square metres, 0 where independent.
    """

    def __init__(self, own, distance, walk):
        self.own, self.distance, self.walk = own, distance, walk
        self._before = before = int(np.searchsorted(distance, 0.0)) if walk > 0.0 else 0
        outwards = np.abs(distance) if walk > 0.0 else np.zeros(len(own))
        self._inner = _arm(own[:before][::-1], walk * np.diff(outwards[:before][::-1], prepend=0.0))
        self._outer = _arm(own[before:], walk * np.diff(outwards[before:], prepend=0.0))

    def __len__(self):
        return len(self.own)

    @property
    def variance(self):
        """Diagonal of C (n,)."""
        return self.own + (self.walk * np.abs(self.distance) if self.walk > 0.0 else 0.0)

    def part(self, keep):
        """That of the kept stations only: ``keep``, (n,) of booleans."""
        return LevelledChanges(self.own[keep], self.distance[keep], self.walk)

    def _of_arms(self, name, values):
        found, before = np.empty((len(values), values.size // len(values))), self._before
        rows = values.reshape(found.shape)
        if before:
            found[:before] = getattr(self._inner, name)(rows[:before][::-1])[::-1]
        if before < len(values):
            found[before:] = getattr(self._outer, name)(rows[before:])
        return found.reshape(values.shape)

    def weighted(self, values):
        """W times values, (n,) or (n, k)."""
        return self._of_arms("weighted", values)

    def times(self, values):
        """C times values, (n,) or (n, k)."""
        return self._of_arms("times", values)

    def forms(self, first, last):
        """e^T W e, one over square metres, of the runs from station ``first`` to before ``last``, integers (k,)."""
        m = self._before
        outer = self._outer.forms(np.maximum(first - m, 0), np.maximum(last - m, 0))
        if not m:
            return outer
        return outer + self._inner.forms(m - np.minimum(last, m), m - np.minimum(first, m))


class GivenChanges:
    """Changes with any covariance, a core Covariance in the order of the chainage."""

    def __init__(self, covariance: Covariance):
        self.covariance = covariance
        weight = covariance.weight
        if weight is None:
            weight = np.diag(covariance.weight_diagonal)
        self._sums = np.zeros((len(covariance) + 1,) * 2)
        self._sums[1:, 1:] = np.cumsum(np.cumsum(weight, axis=0), axis=1)

    def __len__(self):
        return len(self.covariance)

    @property
    def variance(self):
        """Diagonal of C (n,)."""
        return self.covariance.variance

    def part(self, keep):
        """That of the kept stations only: ``keep``, (n,) of booleans."""
        return GivenChanges(self.covariance.part(keep))

    def weighted(self, values):
        """W times values, (n,) or (n, k)."""
        return self.covariance.weighted(values)

    def times(self, values):
        """C times values, (n,) or (n, k)."""
        return self.covariance.times(values)

    def forms(self, first, last):
        """e^T W e, one over square metres, of the runs from station ``first`` to before ``last``, integers (k,)."""
        at = self._sums
        return at[last, last] - 2.0 * at[first, last] + at[first, first]
