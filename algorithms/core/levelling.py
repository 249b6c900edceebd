"""Least-squares adjustment of a level net, with the tests of single lines (method page 6 for the tests).

Normal equations are sparse; scipy is imported where it is needed only.
"""

from collections import deque
from dataclasses import dataclass
from functools import cached_property
from typing import Optional

import numpy as np

from .errors import InputError
from .level_net import LevelNet
from .quantiles import chi_squared, critical_value, detectable_blunders, externally_studentised, interval_factor
from .selected_inverse import selected_inverse

# Below this redundancy nothing checks an observation.
_NO_REDUNDANCY = 1e-9
SAME_SUSPECT = 0.999


def _sparse():
    try:
        import scipy.sparse
        import scipy.sparse.linalg
    except ImportError:
        raise InputError(
            "This needs scipy in QGIS's own Python; install it (python3-scipy on Debian and Ubuntu)."
        ) from None
    return scipy.sparse


@dataclass(frozen=True)
class Datum:
    """What the heights hang on: ``fixed``, {point: height}; ``weighted``, {point: (height, standard deviation)},
    metres. InputError for a weighted height whose standard deviation is not positive, or a point in both."""

    fixed: dict
    weighted: dict

    def __post_init__(self):
        if set(self.fixed) & set(self.weighted):
            raise InputError("A benchmark is given both as fixed and with a standard deviation.")
        for height, deviation in self.weighted.values():
            if not (np.isfinite(height) and np.isfinite(deviation) and deviation > 0.0):
                raise InputError("A benchmark's standard deviation is not positive.")
        if not np.all(np.isfinite(list(self.fixed.values()))):
            raise InputError("A benchmark's height is not a number.")


@dataclass(frozen=True)
class Adjustment:
    """An adjusted net. Lines first, then weighted benchmarks, as observations (m,).

    ``heights``: metres (p,), NaN for points without datum; ``observed``: rows of the net's lines that take part, then
    -1 for each weighted benchmark; ``benchmarks``: their points in that order; ``residuals``: observed - adjusted (m,),
    metres; ``variance``: of the observations; ``first``, ``second``: columns of an observation's points, -1 for fixed
    ones and for a benchmark's missing first; ``known``: True where the variances are in square metres, False where
    their scale is to be estimated; ``points``: net points of the columns.
    """

    net: LevelNet
    heights: np.ndarray
    observed: np.ndarray
    benchmarks: tuple
    residuals: np.ndarray
    variance: np.ndarray
    first: np.ndarray
    second: np.ndarray
    known: bool
    points: np.ndarray
    solver: Optional[object]

    @property
    def freedom(self):
        """Observations less unknown heights, a number."""
        return len(self.residuals) - len(self.points)

    @cached_property
    def quadratic(self):
        """v^T W v, without unit where the variances are known."""
        return float(np.sum(self.residuals**2 / self.variance))

    @property
    def variance_factor(self):
        """v^T W v / freedom; NaN without freedom."""
        return self.quadratic / self.freedom if self.freedom > 0 else np.nan

    @property
    def scale(self):
        """What cofactors are multiplied by for variances: 1, or the variance factor where it is to be estimated."""
        return 1.0 if self.known else self.variance_factor

    def computing(self):
        """Compute the cofactors in steps; yields the share done, so that the caller can stop between them."""
        found = []
        if len(self.points):
            yield from selected_inverse(self.solver, self.first, self.second, found)
        object.__setattr__(self, "_cofactors", tuple(found) or (np.zeros(0), np.zeros(len(self.residuals))))

    @property
    def cofactors(self):
        """Diagonal of the inverse normal matrix (columns,), and its element between each observation's two
        points (m,).
        """
        if not hasattr(self, "_cofactors"):
            deque(self.computing(), maxlen=0)
        return self._cofactors

    @cached_property
    def height_deviations(self):
        """Standard deviations of the heights (p,), metres: 0 for fixed points, NaN without datum or freedom."""
        found = np.where(np.isfinite(self.heights), 0.0, np.nan)
        found[self.points] = np.sqrt(np.maximum(self.cofactors[0], 0.0) * self.scale)
        return found

    @cached_property
    def adjusted_cofactors(self):
        """Cofactors of the adjusted observations (m,)."""
        own, across = self.cofactors
        own = np.append(own, 0.0)  # index -1: a fixed point
        return own[self.first] + own[self.second] - 2.0 * across

    @cached_property
    def redundancies(self):
        """Share of a blunder that shows in its own residual (m,); 0 where nothing checks the observation."""
        r = 1.0 - self.adjusted_cofactors / self.variance
        return np.where(r > _NO_REDUNDANCY, r, 0.0)

    @cached_property
    def _plain_w(self):
        """v / (sigma sqrt(r)) (m,), before studentising; NaN where unchecked."""
        checked = self.redundancies > 0.0
        size = np.sqrt(self.variance * np.where(checked, self.redundancies, 1.0))
        return np.where(checked, self.residuals / size, np.nan)

    @cached_property
    def w(self):
        """Test values (m,), NaN where unchecked: v / (sigma sqrt(r)), or externally studentised where the scale is to
        be estimated."""
        w = self._plain_w
        return w if self.known else externally_studentised(w, self.quadratic, self.freedom)

    @cached_property
    def critical(self):
        """What |w| is compared with; inf where no test is possible."""
        return critical_value(self.freedom, self.known)

    @cached_property
    def detectable(self):
        """Smallest detectable blunder (m,), metres; inf where unchecked: see quantiles.detectable_blunders."""
        sizes = np.sqrt(self.variance / np.where(self.redundancies > 0.0, self.redundancies, 1.0))
        return detectable_blunders(sizes, self._plain_w, self.quadratic, self.freedom, self.known)

    @property
    def interval_factor(self):
        """Factor of a 95 % interval on a standard deviation: see quantiles.interval_factor."""
        return interval_factor(self.freedom, self.known)

    @property
    def global_test(self):
        """(v^T W v, lower, upper, passed) against chi squared, two-sided 95 %; None where there is none."""
        if not self.known or self.freedom < 1:
            return None
        low, high = chi_squared(0.025, self.freedom), chi_squared(0.975, self.freedom)
        return self.quadratic, low, high, bool(low <= self.quadratic <= high)

    def covariance(self, points):
        """Covariance of the heights of some points (k, k), square metres; fixed points have rows of zeros.

        InputError for a point without datum.
        """
        points = np.asarray(points, int)
        if not np.all(np.isfinite(self.heights[points])):
            raise InputError("A point without a height has no covariance.")
        column = np.full(len(self.net.names), -1)
        column[self.points] = np.arange(len(self.points))
        at = np.flatnonzero(column[points] >= 0)
        matrix = np.zeros((len(points), len(points)))
        if len(at):
            rows = column[points[at]]
            unit = np.zeros((len(self.points), len(rows)))
            unit[rows, np.arange(len(rows))] = 1.0
            matrix[np.ix_(at, at)] = self.solver.solve(unit)[rows] * self.scale
        return 0.5 * (matrix + matrix.T)

    def twins(self, observation):
        """Other observations whose test values correlate with this one's by more than 0.999: a blunder in any of them
        looks the same. Indices into (m,)."""
        pick = np.zeros(len(self.points) + 1)
        pick[self.second[observation]] += 1.0
        pick[self.first[observation]] -= 1.0
        column = np.append(self.solver.solve(pick[:-1]), 0.0) if len(self.points) else np.zeros(1)
        row = -(column[self.second] - column[self.first])
        row[observation] += self.variance[observation]
        own = self.variance[observation] * self.redundancies[observation]
        # Correlation of v_i and v_j, whose variances are sigma^2 r; what nothing checks has none.
        spread = np.where(self.redundancies > 0.0, self.variance * self.redundancies, np.inf)
        same = np.abs(row) / np.sqrt(spread * own) > SAME_SUSPECT
        same[observation] = False
        return np.flatnonzero(same)


def adjusted(net, datum, *, known=True):
    """Adjust a LevelNet to a Datum, both in metres: returns Adjustment.

    ``known``: see Adjustment. Points in parts without a benchmark get no height, and their lines take no part.
    InputError where no part has a benchmark, or where weighted benchmarks meet variances of unknown scale.
    """
    if datum.weighted and not known:
        raise InputError("Benchmarks with a standard deviation need lines with standard deviations in metres too.")
    given = {**datum.fixed, **{point: height for point, (height, _) in datum.weighted.items()}}
    start_heights = net.approximate_heights(given)
    hung = np.isfinite(start_heights)
    if not np.any(hung):
        raise InputError("The net has no benchmark.")
    is_fixed = np.zeros(len(net.names), bool)
    is_fixed[list(datum.fixed)] = True
    points = np.flatnonzero(hung & ~is_fixed)
    column = np.full(len(net.names), -1)
    column[points] = np.arange(len(points))
    lines = np.flatnonzero(hung[net.start])
    weighted = np.array(sorted(datum.weighted), int)
    first = np.concatenate([column[net.start[lines]], np.full(len(weighted), -1)])
    second = np.concatenate([column[net.end[lines]], column[weighted]])
    misfit = np.concatenate(
        [
            net.difference[lines] - start_heights[net.end[lines]] + start_heights[net.start[lines]],
            [datum.weighted[p][0] - start_heights[p] for p in weighted],
        ]
    )
    variance = np.concatenate([net.variance[lines], [datum.weighted[p][1] ** 2 for p in weighted]])
    shift, solver = _solved(first, second, misfit, variance, len(points))
    residuals = misfit - shift[second] + shift[first]
    heights = start_heights.copy()
    heights[points] += shift[:-1]
    observed = np.concatenate([lines, np.full(len(weighted), -1)])
    return Adjustment(
        net, heights, observed, tuple(weighted.tolist()), residuals, variance, first, second, known, points, solver
    )


def _solved(first, second, misfit, variance, number):
    """Corrections of the heights (number + 1,), the last one 0 for fixed points, and the factorised normal matrix."""
    if not number:
        return np.zeros(1), None
    sparse = _sparse()
    weight, rows = 1.0 / variance, np.arange(len(misfit))
    inside, outside = second >= 0, first >= 0
    design = sparse.csr_matrix(
        (
            np.concatenate([np.ones(inside.sum()), -np.ones(outside.sum())]),
            (np.concatenate([rows[inside], rows[outside]]), np.concatenate([second[inside], first[outside]])),
        ),
        shape=(len(misfit), number),
    )
    weighted = design.multiply(weight[:, None]).T.tocsr()
    normals = (weighted @ design).tocsc()
    # Symmetric and positive definite: no pivoting, an ordering that keeps the factors sparse.
    solver = sparse.linalg.splu(
        normals, permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options={"SymmetricMode": True}
    )
    return np.append(solver.solve(weighted @ misfit), 0.0), solver
