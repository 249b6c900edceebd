"""Covariance of the changes of one axis' stations, made so that every run of neighbours can be weighed (method page 7).

A test of a run needs e^T W e with e = 1 on the run. Changes levelled outwards along the axis are a random walk seen
with an error of its own at each station, and there a filter gives e^T W e of any run in closed form, with a cost that
grows with the number of stations; a covariance that was given has it by cumulative sums. Source of the filter: Kalman
(1960), A new approach to linear filtering and prediction problems.
"""

import numpy as np

from .covariance import Covariance


class _Arm:
    """Stations levelled outwards on one side of the origin: ``own`` variances (m,) and variances ``steps`` (m,) of the
    walk from each station's inner neighbour."""

    def __init__(self, own, steps):
        gains, innovations, ahead = [], [], 0.0
        for noise, step in zip(own.tolist(), steps.tolist()):
            ahead += step
            innovations.append(ahead + noise)
            gains.append(ahead / innovations[-1])
            ahead *= 1.0 - gains[-1]
        later, after = [0.0] * (len(gains) + 1), 0.0
        for k in range(len(gains) - 1, -1, -1):
            after = 1.0 / innovations[k] + (1.0 - gains[k]) ** 2 * after
            later[k] = after
        self.own, self.steps, self._gains, self._innovations = own, steps, gains, innovations
        # What is left at each station and the later ones of a height put on from there, weighted; and the logarithm of
        # the part of it that the filter has not followed.
        self._later = np.array(later)
        self._left = np.concatenate(([0.0], np.cumsum(np.log1p(-np.array(gains)))))

    def forms(self, first, last):
        """e^T W e of the runs from ``first`` to before ``last``, arrays; 0 for an empty one."""
        left = np.exp(self._left[last] - self._left[first])
        return self._later[first] + (1.0 - 2.0 * left) * self._later[last]

    def weighted(self, values):
        """W times values (m,)."""
        whitened, followed = [], 0.0
        for value, gain, size in zip(values.tolist(), self._gains, self._innovations):
            innovation = value - followed
            followed += gain * innovation
            whitened.append(innovation / size)
        back = 0.0
        for k in range(len(whitened) - 1, -1, -1):
            value = whitened[k]
            whitened[k] = value + self._gains[k] * back
            back = (1.0 - self._gains[k]) * back - value
        return np.array(whitened)

    def times(self, values):
        """C times values (m,)."""
        return self.own * values + np.cumsum(self.steps * np.cumsum(values[::-1])[::-1])


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
        self._inner = _Arm(own[:before][::-1], walk * np.diff(outwards[:before][::-1], prepend=0.0))
        self._outer = _Arm(own[before:], walk * np.diff(outwards[before:], prepend=0.0))

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
        parts = [
            (getattr(self._inner, name), values[: self._before][::-1], -1),
            (getattr(self._outer, name), values[self._before :], 1),
        ]
        return np.concatenate([made(part)[::turn] for made, part, turn in parts])

    def weighted(self, values):
        """W times values (n,)."""
        return self._of_arms("weighted", values)

    def times(self, values):
        """C times values (n,)."""
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
        """W times values (n,)."""
        return self.covariance.weighted(values)

    def times(self, values):
        """C times values (n,)."""
        return self.covariance.times(values)

    def forms(self, first, last):
        """e^T W e, one over square metres, of the runs from station ``first`` to before ``last``, integers (k,)."""
        at = self._sums
        return at[last, last] - 2.0 * at[first, last] + at[first, first]
