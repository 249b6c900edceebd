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
        self.begin(np.ones(len(solution.residuals), bool))

    def begin(self, kept):
        """Everything anew for these rows ``kept`` (n,)."""
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
            self.begin(kept)
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


class _Correlated:
    """The same for heights that share errors: b and the diagonal of P of the rows kept, from the columns of P of the
    rows aside, S: P - P_:S P_SS^-1 P_S:. Of a row aside itself the test value is its shift's, (P_SS^-1 b_S) over the
    root of its variance. ``sections``: rows along levelled arms, see least_squares.suspected_step.

    Whether a removal leaves a row unchecked is left to the fit that follows: its redundancy does not come from P.
    """

    def __init__(self, solution, sections):
        self._solution, self.own = solution, solution.covariance.weight_diagonal
        self._weight, self._b = solution.covariance.weight, solution.covariance.weighted(solution.design)
        self._w = solution.covariance.weighted(solution.residuals)
        self._sections = [(rows, *solution.tails(rows)) for rows in sections if len(rows) > 1]
        self.begin(np.ones(len(self._w), bool))

    def _base(self, i):
        return self._weight[:, i] - self._b @ (self._solution.cofactors @ self._b[i])

    def begin(self, kept):
        """Everything from the whole fit, for rows aside that are no longer the ones before and one more."""
        self._aside = np.flatnonzero(~kept).tolist()
        self._columns = np.column_stack([self._base(i) for i in self._aside]) if self._aside else None
        variances = self._solution.test_variances
        self.v, self._variances = self._w, variances
        self._tails = [(sums, sizes) for _, sums, sizes, _ in self._sections]
        if self._aside:
            self._inverse = np.linalg.inv(self._columns[self._aside])
            share = self._columns @ self._inverse
            self.v = self._w - share @ self._w[self._aside]
            self._variances = variances - np.einsum("ij,ij->i", share, self._columns)
            root = np.linalg.cholesky(self._inverse)
            self._tails = []
            for rows, sums, sizes, _ in self._sections:
                u = _tail_sums(self._columns[rows]) @ root
                self._tails.append((sums - u @ (root.T @ self._w[self._aside]), sizes - np.sum(u * u, axis=1)))

    def column(self, i):
        """P of row i with all others (n,), of the rows kept."""
        column = self._base(i)
        if self._aside:
            column = column - self._columns @ (self._inverse @ self._columns[i])
        return column

    def change(self, i, kept, column, *, aside):
        if not aside:
            self.begin(kept)
            return
        size = self._variances[i]
        self._tails = [
            (sums - u * (self.v[i] / size), sizes - u * u / size)
            for (sums, sizes), u in zip(self._tails, (_tail_sums(column[rows]) for rows, *_ in self._sections))
        ]
        base = self._base(i)
        if self._aside:
            shares = self._inverse @ self._columns[i]
            more = np.append(shares, -1.0)
            self._inverse = np.pad(self._inverse, (0, 1)) + np.outer(more, more) / size
            self._columns = np.column_stack([self._columns, base])
        else:
            self._inverse, self._columns = np.array([[1.0 / size]]), base[:, None]
        self._aside.append(i)
        self.v, self._variances = (self.v - column * (self.v[i] / size), self._variances - column * column / size)

    def variances(self, kept):
        """Of b of the rows kept, and of each row aside as if it were taken in alone (n,)."""
        found = np.maximum(self._variances, 0.0)
        if self._aside:
            found[self._aside] = 1.0 / np.diag(self._inverse)
        return found

    def tests(self, variances):
        """Squares of the test values, (n,); 0 where a row is not checked by the others."""
        v = self.v.copy()
        if self._aside:
            v[self._aside] = (self._inverse @ self._w[self._aside]) * variances[self._aside]
        return np.divide(v * v, variances, out=np.zeros_like(v), where=variances > _NO_REDUNDANCY * self.own)

    def step(self, kept):
        """The greatest square of a step's test value, see least_squares.suspected_step; 0 without one."""
        best = 0.0
        for (rows, _, _, least), (sums, sizes) in zip(self._sections, self._tails):
            # A step from a row that is aside is the step from the next one on.
            known = (sizes > _NO_REDUNDANCY * least) & kept[rows][1:]
            known &= np.cumsum(kept[rows])[:-1] > 0
            if np.any(known):
                best = max(best, float(np.max(sums[known] ** 2 / sizes[known])))
        return best


def _tail_sums(values):
    """Sums of values (k,) or (k, m) from each but the first on (k - 1, ...)."""
    return np.cumsum(values[::-1], axis=0)[::-1][1:]


def set_aside(solution, number, *, most, start=None, sections=()):
    """Rows that are set aside, one by one, the greatest first: (kept (n,), beyond).

    ``solution``: least_squares.Solution of all ``number`` rows; where their errors are correlated, sigma must be known;
    ``most``: how many may go. ``start``: rows to begin with (n,), default all; ``sections``: rows along levelled arms:
    no row goes for what is a step. ``beyond``: True where one more would have to go; then all rows are kept. Rows of
    which two cannot be told apart, and those without which too little would be left, stay, as in least_squares.search.
    """
    correlated = solution.covariance.weight is not None
    state = _Correlated(solution, sections) if correlated else _Independent(solution)
    kept = np.ones(number, bool)
    freedom, known = solution.freedom, solution.known
    checked_before = state.variances(kept) >= LEAST_REDUNDANCY * state.own
    if start is not None and not np.all(start):
        kept = np.array(start, bool)
        freedom -= int(np.sum(~kept))
        state.begin(kept)
    fixed, seen = np.zeros(number, bool), set()
    while True:
        variances = state.variances(kept)
        tests = state.tests(variances)
        row, back = _next(tests, kept, fixed, state, freedom, known)
        if row is None:
            return kept, False
        if correlated and not back and sections:
            step = state.step(kept)
            if step > _limit(freedom, known) ** 2 and step * SAME_SUSPECT**2 > np.max(tests[kept]):
                return kept, False
        column = state.column(row) if not (back and correlated) else None
        if not back:
            alike = np.where(kept, column * column, 0.0) > SAME_SUSPECT**2 * variances[row] * variances
            alike[row] = False
            if np.any(alike):
                fixed[row] = fixed[int(np.argmax(alike))] = True
                continue
            # What is left of each row's redundancy without this one.
            share = 1.0 / variances[row]
            left = variances - share * column * column
            unchecked = kept & checked_before & (left < LEAST_REDUNDANCY * state.own) & (not correlated)
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
