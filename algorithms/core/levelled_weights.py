"""Covariance of heights levelled outwards along arms, and its inverse, at a cost that grows with the stations (method
page 6).

The errors of the sections add up to a random walk, and each height has an error of its own beside it. With E the
differences of neighbours, less what the walk carries on from the former, E C E^T = T has three diagonals, T = L D L^T,
so that W = E^T T^-1 E. D are the variances of the innovations of a Kalman filter; they follow from each other by sums
of positive numbers, and so do the diagonal of W and e^T W e of a tail: no digits are lost however little is levelled.
Sources: Kalman (1960), A new approach to linear filtering and prediction problems; Rauch, Tung and Striebel (1965),
AIAA Journal 3(8); de Jong (1989), Smoothing and interpolation with the state-space model, JASA 84.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from .errors import InputError
from .quantiles import missing_scipy


class Walk:
    """Values of a random walk with errors of their own, in its order; (n,) each: variances ``own``, positive, and
    ``steps`` of the walk, any unit squared, and ``carried``: share of the former value's walk in each, 0 where a walk
    begins anew."""

    def __init__(self, own, carried, steps):
        self.own, self.carried, self.steps = own, carried, steps
        innovations, gains, left = [], [], 0.0
        for noise, share, step in zip(own.tolist(), carried.tolist(), steps.tolist()):
            ahead = share * share * left + step
            innovation = ahead + noise
            innovations.append(innovation)
            gains.append(ahead / innovation)
            left = ahead * noise / innovation
        self._innovations, self._gains = np.array(innovations), np.array(gains)
        self._left = own / self._innovations
        # Below the diagonal of L; on it are ones.
        self._below = -carried[1:] * self._left[:-1]

    def _solved(self, values):
        """T^-1 E times values (n, k)."""
        try:
            from scipy.linalg.lapack import dpttrs
        except ImportError:
            raise missing_scipy() from None
        differences = np.array(values, float, order="F")
        differences[1:] -= self.carried[1:, None] * values[:-1]
        if len(self.own) < 2:  # the library's wrapper takes no single row
            return differences / self._innovations[:, None]
        return dpttrs(self._innovations, self._below, differences, overwrite_b=True)[0]

    def weighted(self, values):
        """W times values (n, k)."""
        found = self._solved(values)
        found[:-1] -= self.carried[1:, None] * found[1:]
        return found

    def whitened(self, values):
        """R^-1 times values (n, k), with C = R R^T, R lower triangular."""
        found = self._solved(values)
        found[:-1] += self._below[:, None] * found[1:]
        return np.sqrt(self._innovations)[:, None] * found

    def times(self, values):
        """C times values (n, k), where a walk is carried on as a whole or begins anew."""
        found = self.own[:, None] * values
        bounds = [*np.flatnonzero(self.carried == 0.0).tolist(), len(self.own)]
        for first, last in zip(bounds, bounds[1:]):
            after = np.cumsum(values[first:last][::-1], axis=0)[::-1]
            found[first:last] += np.cumsum(self.steps[first:last, None] * after, axis=0)
        return found

    @cached_property
    def tails(self):
        """Diagonal of T^-1 (n,): e^T W e with e = 1 from each on to the last that the walk is carried on to."""
        found, after = [], 0.0
        shares = np.append(self._below**2, 0.0)
        for innovation, share in zip(self._innovations[::-1].tolist(), shares[::-1].tolist()):
            after = 1.0 / innovation + share * after
            found.append(after)
        return np.array(found[::-1])

    @cached_property
    def weights(self):
        """Diagonal of W (n,)."""
        found = 1.0 / self._innovations
        found[:-1] += (self.carried[1:] * self._gains[:-1]) ** 2 * self.tails[1:]
        return found

    @cached_property
    def _of_runs(self):
        """The tails, with that after the last one, and the logarithm of what is left of a start at each."""
        return np.append(self.tails, 0.0), np.concatenate(([0.0], np.cumsum(np.log(self._left))))

    def forms(self, first, last):
        """e^T W e of the runs from ``first`` to before ``last``, integers (k,), on a single walk; 0 for an empty
        one."""
        tails, decay = self._of_runs
        left = np.exp(decay[last] - decay[first])
        return tails[first] + (1.0 - 2.0 * left) * tails[last]


class Followed:
    """The walk itself, as it is known from the values that are seen: ``variances`` (n,) of it at each place, and
    ``links`` (n,), which of a change of it at the next place shows at each: the covariance of two places is the
    variance at the latter times the links from the former on.

    ``walk``: Walk; ``seen`` (n,): booleans.
    """

    # Farther on nothing changes.
    _SMALL = 1e-18

    def __init__(self, walk, seen):
        self._own, self._carried, self._steps = walk.own, walk.carried, walk.steps
        self._seen, filtered, left = np.array(seen, bool), [], 0.0
        for share, step, own, one in zip(*(v.tolist() for v in (walk.carried, walk.steps, walk.own, self._seen))):
            ahead = share * share * left + step
            left = ahead * own / (ahead + own) if one else ahead
            filtered.append(left)
        # Of the walk at each place from the values up to there; what of a change at the former place is left in it.
        self._filtered = np.array(filtered)
        number = len(filtered)
        self.links, self._through, self._window = np.zeros(number), np.ones(number), 64
        ahead = self._refresh(0, number)
        own = self._filtered[:-1] * np.divide(self._steps[1:], ahead, out=np.ones(number - 1), where=ahead > 0.0)
        found, after = [], 0.0
        for value, share in zip([filtered[-1], *own[::-1].tolist()], (self.links[::-1] ** 2).tolist()):
            after = value + share * after
            found.append(after)
        self.variances = np.array(found[::-1])

    def _refresh(self, first, last):
        """What follows from the filtered variances of the places from ``first`` to before ``last``: those ahead."""
        carried, left, now = self._carried[first + 1 : last], self._filtered[first : last - 1], slice(first + 1, last)
        ahead = carried * carried * left + self._steps[now]
        self.links[first : last - 1] = np.divide(carried * left, ahead, out=np.zeros(len(ahead)), where=ahead > 0.0)
        self._through[now] = carried * np.where(self._seen[now], self._own[now] / (ahead + self._own[now]), 1.0)
        return ahead

    def column(self, at):
        """Covariance of the walk ``at`` a place (an index) with that at the places around it: the index of the first of
        these, and the covariances (k,), which are as good as 0 farther away."""
        before, after = self._products(self.links[:at][::-1]), self._products(self.links[at:-1])
        first, last = at - len(before), at + len(after)
        found = np.empty(last + 1 - first)
        found[: at - first] = self.variances[at] * before[::-1]
        found[at - first] = self.variances[at]
        found[at - first + 1 :] = self.variances[at + 1 : last + 1] * after
        return first, found

    def _products(self, values):
        """Products of the first of ``values`` (n,) with all up to each, until they are next to nothing."""
        while True:
            found = np.cumprod(values[: self._window])
            if self._window >= len(values) or found[-1] < self._SMALL:
                return found
            self._window *= 2

    def change(self, at, seen):
        """The value ``at`` a place is ``seen`` again, or no longer (boolean). Returns the first of the places around
        it, and what the walk at each of these then takes on of what was left of that value."""
        first, column = self.column(at)
        own, variance = self._own[at], self.variances[at]
        shares = column / (-own - variance if seen else own - variance)
        self.variances[first : first + len(column)] += shares * column
        self._filter(at, seen)
        return first, shares

    def _filter(self, at, seen):
        """How the filter changes from a place on, in closed form: a change d of a filtered variance is
        d f^2 / (1 + d g) farther on, with f what is left of a change, and g what the values in between tell of it."""
        self._seen[at] = seen
        former = self._filtered[at - 1] if at else 0.0
        ahead, own = self._carried[at] ** 2 * former + self._steps[at], self._own[at]
        kept = own / (ahead + own) if seen else 1.0
        self._through[at] = self._carried[at] * kept
        change, self._filtered[at] = ahead * kept - self._filtered[at], ahead * kept
        left = self._products(self._through[at + 1 :])
        now = slice(at + 1, at + 1 + len(left))
        weight = np.where(self._seen[now], self._through[now] * self._carried[now] / self._own[now], 0.0)
        told = np.cumsum(weight * np.append(1.0, left[:-1])[: len(left)] ** 2)
        self._filtered[now] += change * left**2 / (1.0 + change * told)
        self._refresh(at, now.stop)


@dataclass(frozen=True)
class Levelled:
    """Covariance C_ij = own_i [i = j] + walk min(d_i, d_j) on one arm, 0 between arms: the same kind of thing as
    covariance.Covariance, without a matrix.

    ``own``: variances of the heights by themselves, square metres (n,); ``arms``: number of each station's arm (n,);
    ``distances``: metres along the levelling from its origin (n,), not negative; ``walk``: variance over one metre,
    square metres. InputError for a variance that is not positive, and for a distance that is negative or no number.
    """

    own: np.ndarray
    arms: np.ndarray
    distances: np.ndarray
    walk: float

    correlated = True

    def __post_init__(self):
        if not np.all(np.isfinite(self.own) & (self.own > 0.0)):
            raise InputError("A standard deviation is zero, negative or no number.")
        if not np.all(np.isfinite(self.distances) & (self.distances >= 0.0)):
            raise InputError("A distance along the levelling is negative or no number.")

    def __len__(self):
        return len(self.own)

    @cached_property
    def variance(self):
        """Diagonal of C (n,)."""
        return self.own + self.walk * self.distances

    @cached_property
    def order(self):
        """Rows (n,), arm by arm and outwards on each."""
        return np.lexsort((self.distances, self.arms))

    @cached_property
    def places(self):
        """Place (n,) of each row in the ``order``."""
        found = np.empty(len(self), int)
        found[self.order] = np.arange(len(self))
        return found

    @cached_property
    def outwards(self):
        """The Walk of all arms, one after the other in the ``order``."""
        return self._walk(self.order)

    def _walk(self, order):
        """The Walk along each arm in turn; ``order``: rows (n,), arm by arm, outwards on one or inwards."""
        arms, d = self.arms[order], self.distances[order]
        same = np.append(False, arms[1:] == arms[:-1])
        before = np.append(0.0, d[:-1])
        carried = same.astype(float)
        steps = np.where(same, d - before, d)
        # Inwards the walk that is known at one place is known at the next in proportion: it began at the origin.
        inwards = same & (d < before)
        carried[inwards] = d[inwards] / before[inwards]
        steps[inwards] = carried[inwards] * (before[inwards] - d[inwards])
        return Walk(self.own[order], carried, self.walk * steps)

    def weighted(self, values):
        """W times ``values``, (n,) or (n, k)."""
        return _in_order(self.outwards.weighted, self.order, values)

    def times(self, values):
        """C times ``values``, (n,) or (n, k)."""
        return _in_order(self.outwards.times, self.order, values)

    @cached_property
    def weight_diagonal(self):
        """Diagonal of W (n,)."""
        return self.outwards.weights[self.places]

    def weight_column(self, row):
        """W of one row with all (n,)."""
        unit = np.zeros(len(self))
        unit[row] = 1.0
        return self.weighted(unit)

    def tail_forms(self, rows):
        """e^T W e with e = 1 from each of the ``rows`` on (k,): all of one arm, outwards."""
        return self.outwards.tails[self.places[rows]]

    def whitened(self, order, values):
        """L^-1 times ``values``, (n,) or (n, k), which are in the ``order`` (n,) of rows, with C = L L^T in that order:
        on each arm outwards or inwards."""
        by_arm = np.argsort(self.arms[order], kind="stable")
        return _in_order(self._walk(order[by_arm]).whitened, by_arm, values)

    @property
    def matrix(self):
        """C as a matrix (n, n), made each time."""
        found = self.walk * np.minimum.outer(self.distances, self.distances)
        found[np.not_equal.outer(self.arms, self.arms)] = 0.0
        found[np.diag_indices(len(self))] += self.own
        return found

    def part(self, keep):
        """Covariance of the kept observations only: ``keep``, (n,) of booleans."""
        if np.all(keep):
            return self
        return Levelled(self.own[keep], self.arms[keep], self.distances[keep], self.walk)

    def predicted(self, kept, part, values):
        """Of the rows not ``kept`` (n,), with ``part``, the covariance of those kept: ``values`` (n, k) less what the
        kept ones tell of them, and the variances of that."""
        left = values - self.shared(kept, part, values)[0]
        variances = Followed(self.outwards, kept[self.order]).variances[self.places]
        return left[~kept], (self.own + variances)[~kept]

    def shared(self, kept, part, values):
        """The walk of all rows (n, k) as the values of the rows ``kept`` (n,) tell, and W of these times their values,
        0 in the others. ``part``: their covariance; ``values`` (n, k)."""
        told = np.zeros(values.shape)
        told[kept] = part.weighted(values[kept])
        return self.times(told) - self.own[:, None] * told, told


def _in_order(made, order, values):
    """What ``made`` makes of ``values``, (n,) or (n, k), taken in an ``order`` (n,), put back in their own."""
    found = np.empty(values.shape)
    found[order] = made(values[order].reshape(len(order), -1)).reshape(values.shape)
    return found
