"""The state of a search for blunders among levelled heights, at a cost of the heights for each step.

What is known of the walk and of the fit together is V, the covariance of the heights without their own errors, given
the rows kept. A row that goes, or comes back, changes V by its own column, as where errors are independent: V takes
the place of A N^-1 A^T there. V = M + G N^-1 G^T, M the covariance of the walk where the fit is held fixed, which is
next to nothing farther along the arm, and G the part of the design that the walk does not follow.
"""

import numpy as np

from .blunder_states import NO_REDUNDANCY, Independent
from .levelled_weights import Followed
from .segments import Segments
from .small_matrices import inverse

# The difference of a height's own variance and what is known of it has no more digits than these.
_DIGITS = 1e-12


class LevelledRows(Independent):
    """As Independent. ``sections``: rows along levelled arms, see least_squares.suspected_step.

    Whether a removal leaves a row unchecked is left to the fit that follows, as with Correlated.
    """

    def __init__(self, solution, sections):
        covariance, rows = solution.covariance, [one for one in sections if len(one) > 1]
        self._covariance, self._tested = covariance, rows
        if rows:
            self._along, self._arms = np.concatenate(rows), Segments([len(one) for one in rows])
            self._least_sizes = NO_REDUNDANCY * self._arms.tails(solution.test_variances[self._along])
        self._hold(solution, covariance.own)
        # What the others tell of a row's own error is r^2 W_ii, less the fit's share.
        self._least = np.maximum(NO_REDUNDANCY * self.own**2 * covariance.weight_diagonal, _DIGITS * self.own)

    def begin(self, kept):
        """Everything anew for these rows ``kept`` (n,)."""
        covariance, self._changes = self._covariance, 0
        part = covariance.part(kept)
        self._walk = Followed(covariance.outwards, kept[covariance.order])
        scale = np.sqrt(np.sum(self._solution.design**2, axis=0))
        a = self._solution.design / np.where(scale > 0.0, scale, 1.0)
        values = np.column_stack([a, self._solution.residuals])
        shared, told = covariance.shared(kept, part, values)
        # Of a row kept what the walk leaves is its own error, which W gives with all its digits.
        left = np.where(kept[:, None], self.own[:, None] * told, values - shared)
        self._a = left[:, :-1]
        self._inverse = inverse(a.T @ told[:, :-1])
        self.v = left[:, -1] - self._a @ (self._inverse @ (a.T @ told[:, -1]))
        self.reach = self._walk.variances[covariance.places]
        self.reach = self.reach + np.einsum("ij,jk,ik->i", self._a, self._inverse, self._a)
        if self._tested:
            self._begin_tails(kept, part, told[:, :-1])

    def _begin_tails(self, kept, part, told):
        """e^T P e of each tail. That from a row aside on is the tail from the next one kept on."""
        forms, found = np.append(part.tail_forms(np.arange(len(part))), 0.0), []
        places = np.cumsum(kept) - 1
        for rows in self._tested:
            mine = kept[rows]
            after = np.append(places[rows[mine]], len(part))
            found.append(forms[after[np.cumsum(mine) - mine]])
        levers = self._arms.tails(told[self._along])
        self._sizes = np.concatenate(found) - np.einsum("ij,jk,ik->i", levers, self._inverse, levers)

    def column(self, i):
        """V of row i with all others (n,)."""
        found, order = super().column(i), self._covariance.order
        first, walk = self._walk.column(self._covariance.places[i])
        found[order[first : first + len(walk)]] += walk
        return found

    def _change(self, i, kept, column, aside):
        if self._tested:
            weight = np.where(kept, self._weight, 0.0)
            weight[i] = self._weight[i] if aside else 0.0
            shown = -weight * column
            shown[i] += 1.0
            size = self.own[i] - self.reach[i] if aside else -self.own[i] - self.reach[i]
            self._sizes = self._sizes - self._arms.tails(shown[self._along]) ** 2 / size
        super()._change(i, kept, column, aside)
        first, shares = self._walk.change(self._covariance.places[i], not aside)
        around = self._covariance.order[first : first + len(shares)]
        self._a[around] += np.outer(shares, self._a[i])

    def step(self, kept):
        """As of Correlated: ``kept`` (n,), without unit."""
        sums = self._arms.tails(np.where(kept, self._weight * self.v, 0.0)[self._along])
        there = kept[self._along]
        before = np.cumsum(there) - there
        # A step from a row that is aside is the step from the next one on; from the first on there is none.
        known = (self._sizes > self._least_sizes) & there & (before > before[self._arms.first][self._arms.which])
        return float(np.max(sums[known] ** 2 / self._sizes[known], initial=0.0))
