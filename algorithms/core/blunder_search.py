"""The search for blunders, one by one, without a fit for each (method page 6).

A row that is set aside is a row with an unknown of its own (a shift of its mean), so that all other test values follow
from one column of P = W Q_v W. With b = W v, setting row i aside gives

    b_j - P_ji b_i / P_ii    and    P_jk - P_ji P_ik / P_ii,

which costs one column instead of a fit. Source: the equivalence of deletion and mean shift, for example
Cook and Weisberg (1982), Residuals and Influence in Regression, section 2.2; for correlated heights
Baarda's (1968) conventional alternatives. The design is held as it is in the fit of all rows; whoever uses
the result fits it once more (measured: the set is the same).
"""

from functools import lru_cache

import numpy as np

from .quantiles import critical_value
from .small_matrices import inverse

LEAST_REDUNDANCY = 0.05
SAME_SUSPECT = 0.999
_NO_REDUNDANCY = 1e-9
# After so many updates the numbers are made anew, so that rounding does not add up.
_AFRESH = 256


@lru_cache(maxsize=4096)
def _limit(freedom, known):
    return critical_value(freedom, known)


class _Independent:
    """b and the diagonal of P for heights with independent errors: a downdate of the p x p cofactors each time."""

    def __init__(self, solution):
        self._solution, self.own = solution, solution.covariance.variance
        self._weight = 1.0 / self.own
        self._afresh(np.ones(len(solution.residuals), bool))

    def _afresh(self, kept):
        a, w = self._solution.design, np.where(kept, self._weight, 0.0)
        scale = np.sqrt(np.sum(a**2, axis=0))
        a = a / np.where(scale > 0.0, scale, 1.0)
        self._a, self._changes = a, 0
        self._inverse = inverse(a.T @ (a * w[:, None]))
        v = self._solution.residuals
        self.v = v - a @ (self._inverse @ (a.T @ (w * v)))
        # a_i N^-1 a_i of every row, kept or not.
        self.reach = np.einsum("ij,jk,ik->i", a, self._inverse, a)

    def column(self, i):
        """a_j N^-1 a_i of all rows j, (n,)."""
        return self._a @ (self._inverse @ self._a[i])

    def change(self, i, kept, column, *, aside):
        """Set row i aside, or take it back; ``column``: of i; ``kept``: as it is afterwards."""
        self._changes += 1
        if self._changes >= _AFRESH:
            self._afresh(kept)
            return
        # The cofactors without the row, (N - w a a^T)^-1, or with it again, by Sherman and Morrison.
        w = self._weight[i] if aside else -self._weight[i]
        u = self._inverse @ self._a[i]
        share = w / (1.0 - w * self.reach[i])
        residual = self.v[i]
        self._inverse = self._inverse + share * np.outer(u, u)
        self.v = self.v + column * (share * residual)
        self.reach = self.reach + share * column**2

    def variances(self, kept):
        """Of the residuals, (n,): of kept rows 1/w - a N^-1 a, of rows aside, as if each were taken in
        alone, 1/w + ...
        """
        return np.where(kept, self.own - self.reach, self.own + self.reach)

    def tests(self, variances):
        """Squares of the test values before studentising, (n,); 0 where a row is not checked by the others."""
        checked = variances > _NO_REDUNDANCY * self.own
        return np.divide(self.v * self.v, variances, out=np.zeros_like(self.v), where=checked)

    def quadratic(self, kept):
        """v^T W v of the kept rows."""
        return float(np.sum(self._weight[kept] * self.v[kept] ** 2))


def set_aside(solution, number, *, most):
    """Rows that are set aside, one by one, the greatest first: (kept (n,), beyond).

    ``solution``: least_squares.Solution of all ``number`` rows, with independent errors; ``most``: how many
    may go. ``beyond``: True where one more would have to go; then all rows are kept. Rows of which two
    cannot be told apart, and those without which too little would be left, stay, as in
    least_squares.search.
    """
    state, kept = _Independent(solution), np.ones(number, bool)
    freedom, known = solution.freedom, solution.known
    checked_before = state.variances(kept) >= LEAST_REDUNDANCY * state.own
    fixed, seen = np.zeros(number, bool), set()
    while True:
        variances = state.variances(kept)
        row, back = _next(state.tests(variances), kept, fixed, state, freedom, known)
        if row is None:
            return kept, False
        column = state.column(row)
        if not back:
            alike = np.where(kept, column * column, 0.0) > SAME_SUSPECT**2 * variances[row] * variances
            alike[row] = False
            if np.any(alike):
                fixed[row] = fixed[int(np.argmax(alike))] = True
                continue
            # What is left of each row's redundancy without this one.
            share = 1.0 / variances[row]
            unchecked = kept & checked_before & (variances - share * column * column < LEAST_REDUNDANCY * state.own)
            unchecked[row] = False
            if freedom - 1 < 2 or np.any(unchecked):
                fixed[row] = True
                continue
            if number - np.count_nonzero(kept) >= most:
                return np.ones(number, bool), True
        kept[row] = back
        freedom += 1 if back else -1
        state.change(row, kept, column, aside=not back)
        if not back:
            mark = hash(kept.tobytes())
            if mark in seen:
                return kept, False
            seen.add(mark)


def _next(squares, kept, fixed, state, freedom, known):
    """The row that is taken back (the clearest) or that goes (the greatest), and whether it is taken back;
    (None, False) for none. ``squares``: of the test values (n,).
    """
    quadratic = 0.0 if known else state.quadratic(kept)
    aside = np.flatnonzero(~kept)
    if len(aside):
        limit = _limit(freedom + 1, known)
        best = aside[int(np.argmin(squares[aside]))]
        if np.isfinite(limit) and squares[best] < limit**2 * (1.0 if known else quadratic / freedom):
            return int(best), True
    row = int(np.argmax(np.where(kept & ~fixed, squares, 0.0)))
    value = float(squares[row]) if kept[row] and not fixed[row] else 0.0
    if not known:
        if freedom < 2:
            return None, False
        rest = max(quadratic - value, 0.0) / (freedom - 1)
        value = value / rest if rest > 0.0 else (np.inf if value > 0.0 else 0.0)
    return (row, False) if value > _limit(freedom, known) ** 2 else (None, False)
