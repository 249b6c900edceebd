"""Weighted least squares with the tests of single observations and of steps (method page 6)."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from .blunder_search import LEAST_REDUNDANCY, SAME_SUSPECT, set_aside
from .blunder_states import NO_REDUNDANCY
from .covariance import Covariance
from .errors import InputError
from .quantiles import (
    chi_squared,
    critical_value,
    detectable_blunders,
    detectable_factor,
    externally_studentised,
    interval_factor,
)
from .small_matrices import condition, inverse

# Never more than this share of the stations is set aside: what a smaller rest agrees on is another shape.
MOST_ASIDE = 0.1


@dataclass(frozen=True)
class Solution:
    """A linear least-squares solution, or the last step of a Gauss-Newton one.

    ``design``: A (n, p); ``residuals``: v = observed - computed (n,), metres; ``covariance``: C; ``known``: True where
    C is in square metres, False where its scale, the variance factor, is to be estimated. ``parameters``: (p,).
    """

    design: np.ndarray
    residuals: np.ndarray
    covariance: Covariance
    known: bool
    parameters: np.ndarray

    @property
    def freedom(self):
        """Degrees of freedom m = n - p."""
        return self.design.shape[0] - self.design.shape[1]

    @cached_property
    def _scale(self):
        """Column scales: normals of unscaled columns, metres beside slopes, would lose half of the digits."""
        scale = np.sqrt(np.sum(self.design**2, axis=0))
        return np.where(scale > 0, scale, 1.0)

    @cached_property
    def normals(self):
        """Normal matrix of the scaled columns (p, p)."""
        scaled = self.design / self._scale
        return scaled.T @ self.covariance.weighted(scaled)

    @cached_property
    def condition(self):
        """Condition of the normals with unit diagonal."""
        size = np.sqrt(np.diag(self.normals))
        if np.any(size == 0):
            return np.inf
        return condition(self.normals / np.outer(size, size))

    @cached_property
    def cofactors(self):
        """(A^T W A)^-1, (p, p); InputError where the observations do not determine the parameters."""
        try:
            found = inverse(self.normals)
        except np.linalg.LinAlgError:
            raise InputError("The stations do not determine the fit.") from None
        return found / np.outer(self._scale, self._scale)

    @cached_property
    def quadratic(self):
        """v^T W v, without unit where C is known, else in square metres."""
        return float(self.residuals @ self.weighted_residuals)

    @property
    def variance_factor(self):
        """v^T W v / m; NaN without freedom."""
        return self.quadratic / self.freedom if self.freedom > 0 else np.nan

    @property
    def parameter_covariance(self):
        """Covariance of the parameters (p, p): cofactors, times the variance factor where sigma is unknown."""
        return self.cofactors if self.known else self.cofactors * self.variance_factor

    @property
    def deviations(self):
        """Standard deviations of the parameters (p,)."""
        return np.sqrt(np.diag(self.parameter_covariance))

    @property
    def interval_factor(self):
        """Factor of a 95 % interval on a standard deviation: see quantiles.interval_factor."""
        return interval_factor(self.freedom, self.known)

    @cached_property
    def weighted_design(self):
        """W A (n, p)."""
        return self.covariance.weighted(self.design)

    @cached_property
    def weighted_residuals(self):
        """W v (n,)."""
        return self.covariance.weighted(self.residuals)

    @cached_property
    def redundancies(self):
        """Redundancy numbers r_i = (Q_v W)_ii (n,): the share of a blunder that shows in its own residual."""
        return 1.0 - np.einsum("ij,jk,ik->i", self.design, self.cofactors, self.weighted_design)

    @cached_property
    def test_variances(self):
        """(W Q_v W)_ii (n,), the variance of (W v)_i where C is known; not below 0."""
        b = self.weighted_design
        return np.maximum(self.covariance.weight_diagonal - np.einsum("ij,jk,ik->i", b, self.cofactors, b), 0.0)

    @cached_property
    def _plain_w(self):
        """(W v)_i / sqrt((W Q_v W)_ii) (n,), before studentising; NaN where an observation is not checked."""
        checked = self.test_variances > NO_REDUNDANCY * self.covariance.weight_diagonal
        size = np.sqrt(np.where(checked, self.test_variances, 1.0))
        return np.where(checked, self.weighted_residuals / size, np.nan)

    @cached_property
    def w(self):
        """Test values of the single observations (n,), NaN where an observation is not checked by the others.

        Sigma known: w = (W v)_i / sqrt((W Q_v W)_ii), Baarda's, normal. Sigma unknown: the externally studentised
        residual, Student's t with m - 1 degrees of freedom; NaN for m < 2.
        """
        w = self._plain_w
        return w if self.known else externally_studentised(w, self.quadratic, self.freedom)

    @cached_property
    def critical(self):
        """What |w| is compared with: 3.29, or Student's quantile of the same level; inf where no test is possible."""
        return critical_value(self.freedom, self.known)

    @cached_property
    def detectable(self):
        """Smallest detectable blunder of each observation (n,), metres; inf where unchecked.

        4.13 / sqrt((W Q_v W)_ii) where sigma is known, else by the noncentral t and the accuracy that the others show.
        """
        sizes = 1.0 / np.sqrt(np.where(self.test_variances > 0.0, self.test_variances, 1.0))
        return detectable_blunders(sizes, self._plain_w, self.quadratic, self.freedom, self.known)

    @cached_property
    def global_test(self):
        """(v^T W v, lower, upper, passed) against chi squared, two-sided 95 %; None where sigma is unknown or m = 0."""
        if not self.known or self.freedom < 1:
            return None
        low, high = chi_squared(0.025, self.freedom), chi_squared(0.975, self.freedom)
        return self.quadratic, low, high, bool(low <= self.quadratic <= high)

    def steps(self, order):
        """Test values T of a step from each but the first of the stations in ``order`` on (k - 1,).

        ``order``: rows along one arm, outwards. T_j = e^T W v / sqrt(e^T W Q_v W e), e = 1 from the j-th on.
        """
        order = np.asarray(order, int)
        if len(order) < 2:
            return np.zeros(0)
        sums, size, least = self.tails(order)
        good = size > NO_REDUNDANCY * least
        return np.where(good, sums / np.sqrt(np.where(good, size, 1.0)), np.nan)

    def tails(self, order):
        """Of the stations in ``order`` (k,) from each but the first on: e^T W v, e^T W Q_v W e, and the sum of the
        latter's own elements, three arrays (k - 1,), in units of the weights."""
        wv, b = self.weighted_residuals[order], _tail_sums(self.weighted_design[order])
        size = self.covariance.tail_forms(order) - np.einsum("ij,jk,ik->i", b, self.cofactors, b)
        return _tail_sums(wv)[1:], size[1:], _tail_sums(self.test_variances[order])[1:]


def _tail_sums(values):
    """Sums of values (k, ...) from each on, (k, ...)."""
    return np.cumsum(values[::-1], axis=0)[::-1]


@dataclass(frozen=True)
class Fitted:
    """A fit of the kept rows: their ``solution``, and for all n rows the ``design`` (n, p), the ``residuals`` (n,) from
    the fit, metres, and the ``covariance``.
    """

    solution: Solution
    design: np.ndarray
    residuals: np.ndarray
    covariance: Covariance
    kept: np.ndarray

    def predictions(self):
        """Of the rows set aside: indices, residuals given the kept ones, and variances of these, as if each were taken
        in alone. The ratio to the root of the variance is then its test value, without another fit."""
        values = np.column_stack([self.residuals, self.design])
        left, own = self.covariance.predicted(self.kept, self.solution.covariance, values)
        a = left[:, 1:]
        variance = own + np.einsum("ij,jk,ik->i", a, self.solution.cofactors, a)
        return np.flatnonzero(~self.kept), left[:, 0], variance, own


@dataclass(frozen=True)
class Search:
    """Result of a search for blunders: ``fitted`` with the kept rows; ``w``, ``redundancies``, ``detectable`` of every
    observation (n,), of those set aside as if each were taken in alone; ``twins``: pairs of rows that cannot be told
    apart; ``guarded``: rows that stay although suspected, since too little would be left; ``beyond``: how many stations
    may be set aside, where one more would have had to go: then none is, since the shape does not fit; else 0."""

    fitted: Fitted
    w: np.ndarray
    redundancies: np.ndarray
    detectable: np.ndarray
    twins: tuple = ()
    guarded: tuple = ()
    beyond: int = 0

    @property
    def kept(self):
        """True for the rows that take part, (n,) of booleans."""
        return self.fitted.kept

    @property
    def solution(self):
        """The Solution of the kept rows."""
        return self.fitted.solution


def suspected_step(fitted, sections):
    """The greatest step along levelled arms, where it explains more than any blunder of one station: (T, row), else
    None.

    ``sections``: for each arm the rows (k,) outwards. The row is the first beyond the step. From the second station of
    a line on, or at the last one alone, a step is a station's blunder, hence the margin between T and w.
    """
    solution, place, best = fitted.solution, np.cumsum(fitted.kept) - 1, None
    for rows in sections:
        rows = rows[fitted.kept[rows]]
        values = np.nan_to_num(solution.steps(place[rows]))
        if len(values):
            at = int(np.argmax(np.abs(values)))
            if best is None or abs(values[at]) > abs(best[0]):
                best = float(values[at]), int(rows[at + 1])
    beaten = np.max(np.abs(np.nan_to_num(solution.w)))
    return best if best and abs(best[0]) > solution.critical and abs(best[0]) * SAME_SUSPECT > beaten else None


def search(fit, number, *, remove=True, start=None, sections=(), share=MOST_ASIDE):
    """Fit, and set suspected blunders aside one by one (method page 6), never more than ``share`` of the rows.

    ``fit``: function of ``keep``, (n,) of booleans, to a Fitted; InputError where those rows determine no fit.
    ``start``: rows to begin with, (n,) of booleans, such as a robust fit's; default all. ``remove``: False only tests.
    ``sections``: rows along levelled arms, see suspected_step: no station is set aside for what is a step.
    Returns Search.
    """
    whole = fit(np.ones(number, bool))
    if not remove:
        return _search_result(whole, [], [])
    most, fitted, twins, guarded, seen = max(int(share * number), 1), whole, [], [], set()
    if start is not None:
        fitted = _checked_fit(fit, np.array(start, bool), whole) or whole
    quick = not whole.covariance.correlated or whole.solution.known
    if quick and whole.solution.freedom >= 2 and (_any_suspect(fitted.solution) or not np.all(fitted.kept)):
        # The set is found without a fit for each row, and checked below by whole fits.
        kept, too_many = set_aside(whole.solution, number, most=most, start=fitted.kept, sections=sections)
        if too_many:
            return _search_result(whole, [], [], most)
        fitted = _checked_fit(fit, kept, whole) or fitted
    while True:
        fitted = _readmitted(fit, fitted)
        if fitted.kept.tobytes() in seen:
            break
        seen.add(fitted.kept.tobytes())
        worst = _suspect(fitted.solution, np.flatnonzero(fitted.kept), guarded, twins)
        if worst is None or (sections and suspected_step(fitted, sections)):
            break
        trial = fitted.kept.copy()
        trial[worst] = False
        smaller = _checked_fit(fit, trial, whole)
        if smaller is None:
            guarded.append(worst)
            seen.discard(fitted.kept.tobytes())
            continue
        if np.sum(~trial) > most:
            return _search_result(whole, [], [], most)
        fitted = smaller
    if np.sum(~fitted.kept) > most:
        return _search_result(whole, [], [], most)
    return _search_result(fitted, twins, guarded)


def _any_suspect(solution):
    return bool(np.any(np.abs(np.nan_to_num(solution.w)) > solution.critical))


def _suspect(solution, rows, guarded, twins):
    """The row of the greatest |w| beyond the limit that may be set aside; pairs that cannot be told apart are noted."""
    size, barred = np.abs(np.nan_to_num(solution.w)), [*guarded, *(row for pair in twins for row in pair)]
    if barred:
        size[np.isin(rows, barred)] = 0.0
    at = int(np.argmax(size))
    if not size[at] > solution.critical:
        return None
    with np.errstate(invalid="ignore"):
        others = _correlations(solution, at)
    others[at] = 0.0
    twin = int(np.argmax(np.abs(others)))
    if abs(others[twin]) > SAME_SUSPECT:
        twins.append((int(rows[at]), int(rows[twin])))
        return _suspect(solution, rows, guarded, twins)
    return int(rows[at])


def _correlations(solution, at):
    """Correlation of the test value ``at`` with all others (n,)."""
    b = solution.weighted_design
    row = solution.covariance.weight_column(at) - b @ (solution.cofactors @ b[at])
    size = np.sqrt(np.where(solution.test_variances > 0, solution.test_variances, np.inf))
    return row / (size * size[at])


def _checked_fit(fit, keep, whole):
    """The fit of fewer rows, None where it would leave too little: freedom below two, or a redundancy below 0.05 of a
    row that has more in the fit of all rows. A row that nothing checks anyway does not keep a blunder elsewhere in.
    """
    if np.all(keep):
        return whole
    try:
        fitted = fit(keep)
    except InputError:
        return None
    left, before = fitted.solution.redundancies, whole.solution.redundancies[keep]
    unchecked = np.any((left < LEAST_REDUNDANCY) & (before >= LEAST_REDUNDANCY))
    return None if fitted.solution.freedom < 2 or unchecked else fitted


def _tests_aside(fitted):
    """Rows set aside, their test values as if each were taken in alone, and the limit for these."""
    rows, v, variance, _ = fitted.predictions()
    solution = fitted.solution
    # With one row more there is one degree of freedom more.
    limit = critical_value(solution.freedom + 1, solution.known)
    if not np.isfinite(limit):
        return rows, np.zeros(len(rows)), limit
    scale = 1.0 if solution.known else solution.variance_factor
    return rows, v / np.sqrt(variance * scale), limit


def _readmitted(fit, fitted):
    """Take back what was set aside earlier and clears by now, the clearest first."""
    while not np.all(fitted.kept):
        rows, w, limit = _tests_aside(fitted)
        best = int(np.argmin(np.abs(w)))
        if not abs(w[best]) < limit:
            break
        trial = fitted.kept.copy()
        trial[rows[best]] = True
        fitted = fit(trial)
    return fitted


def _search_result(fitted, twins, guarded, beyond=0):
    kept, solution = fitted.kept, fitted.solution
    w, r, detectable = (np.full(len(kept), np.nan) for _ in range(3))
    w[kept], r[kept], detectable[kept] = solution.w, solution.redundancies, solution.detectable
    if not np.all(kept):
        rows, _, variance, own = fitted.predictions()
        _, w[rows], _ = _tests_aside(fitted)
        scale = 1.0 if solution.known else solution.variance_factor
        r[rows] = own / variance
        # With the row itself there is one degree of freedom more.
        detectable[rows] = detectable_factor(solution.freedom + 1, solution.known) * np.sqrt(variance * scale)
    return Search(fitted, w, r, detectable, tuple(twins), tuple(guarded), beyond)


def huber_weights(residuals, limit=1.5):
    """Huber's weights (n,), 0 to 1, of residuals (n,), metres, against 1.4826 times their median absolute deviation."""
    scale = 1.4826 * np.median(np.abs(residuals - np.median(residuals)))
    size = np.abs(residuals) / scale if scale > 0 else np.where(residuals == 0, 0.0, np.inf)
    return np.where(size <= limit, 1.0, limit / np.where(size > 0, size, 1.0)), scale
