"""What a search for blunders knows of each row after each step, without a fit for each (see blunder_search.py)."""

import numpy as np

from .small_matrices import inverse

# Of a row that the others check by no more than this share of its weight there is no test.
NO_REDUNDANCY = 1e-9
# After so many updates the numbers are made anew, so that rounding does not add up.
AFRESH = 256


class Independent:
    """b and the diagonal of P for heights with independent errors: a downdate of the p x p cofactors each time."""

    def __init__(self, solution):
        self._hold(solution, solution.covariance.variance)
        self._least = NO_REDUNDANCY * self.own

    def _hold(self, solution, own):
        self._solution, self.own, self._weight = solution, own, 1.0 / own
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
        # Not by the library, whose threads take longer to start than this takes.
        return np.einsum("ij,j->i", self._a, self._inverse @ self._a[i])

    def change(self, i, kept, column, *, aside):
        """Set row ``i`` (an index) aside, or take it back; ``column`` (n,): of i; ``kept`` (n,): as then."""
        self._changes += 1
        if self._changes >= AFRESH:
            self.begin(kept)
        else:
            self._change(i, kept, column, aside)

    def _change(self, i, kept, column, aside):
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
        checked = variances > self._least
        return np.divide(self.v * self.v, variances, out=np.zeros_like(self.v), where=checked)

    def quadratic(self, kept):
        """v^T W v of the rows ``kept`` (n,), without unit."""
        return float(np.sum(self._weight[kept] * self.v[kept] ** 2))


class SomeRows(Independent):
    """The same for those ``rows`` (k,) of a ``whole`` Independent that may go or come back, all those aside among them:
    a step costs these rows only. ``kept`` (n,): of the whole, as it stands."""

    def __init__(self, whole, rows, kept):
        self.own, self._weight, self._least = whole.own[rows], whole._weight[rows], whole._least[rows]
        self._a, self._inverse = whole._a[rows], whole._inverse
        self.v, self.reach = whole.v[rows], whole.reach[rows]
        self._total = whole.quadratic(kept)

    def quadratic(self, kept):
        """v^T W v of all rows that are kept, without unit; ``kept`` (k,) is not looked at."""
        return self._total

    def change(self, i, kept, column, *, aside):
        """As of Independent: ``i`` an index of these rows, ``column`` and ``kept`` (k,). What a row takes away from the
        sum of squares is the square of its test value."""
        if aside:
            self._total -= self.v[i] ** 2 / (self.own[i] - self.reach[i])
        else:
            self._total += self.v[i] ** 2 / (self.own[i] + self.reach[i])
        self._change(i, kept, column, aside)


class Correlated:
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
        """Everything from the whole fit for the rows ``kept`` (n,): not the ones before less one."""
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
        """As of Independent: ``i`` an index, ``column`` and ``kept`` (n,)."""
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
        return np.divide(v * v, variances, out=np.zeros_like(v), where=variances > NO_REDUNDANCY * self.own)

    def step(self, kept):
        """The greatest square of a step's test value with the rows ``kept`` (n,), see least_squares.suspected_step;
        0 without one. Without unit."""
        best = 0.0
        for (rows, _, _, least), (sums, sizes) in zip(self._sections, self._tails):
            # A step from a row that is aside is the step from the next one on.
            known = (sizes > NO_REDUNDANCY * least) & kept[rows][1:]
            known &= np.cumsum(kept[rows])[:-1] > 0
            if np.any(known):
                best = max(best, float(np.max(sums[known] ** 2 / sizes[known])))
        return best


def _tail_sums(values):
    """Sums of values (k,) or (k, m) from each but the first on (k - 1, ...)."""
    return np.cumsum(values[::-1], axis=0)[::-1][1:]
