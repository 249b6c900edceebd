"""Fits of many straight lines, computed together: a run may have thousands of axes with a few stations each.

What fit.fit_surface finds of each by itself, with the same formulas on all stations one after another. Lines that need
more than that are left to it: heights that share errors, a robust start, a suspect to be searched for, few stations.
"""

import numpy as np

from .blunder_states import NO_REDUNDANCY
from .fit import MOST_CONDITION, STEPS, Heights, SurfaceFit, fit_surface
from .geodesy import foot_and_normal
from .least_squares import Fitted, Search, Solution
from .quantiles import critical_value, detectable_blunders, externally_studentised
from .segments import Segments, joined, row_products

# A test value this near to its limit is left to the search.
_NEARLY = 1.0 - 1e-6
_COLUMNS, _LEAST_FREEDOM = 2, 2


def _by_itself(_number, frame, heights, **options):
    return fit_surface(frame, heights, **options)


def fit_lines(frames, heights, *, remove=False, robust=False, sections=None, fitted=_by_itself):
    """Fit a line to each of many Heights: a list of SurfaceFit, metres.

    ``frames``: Frame of each; ``sections``: of each its rows along levelled arms; ``fitted``: function of the number of
    a line and the arguments of fit.fit_surface, which fits that line by itself. The other options, and the errors, as
    there.
    """
    alone = [robust or one.covariance.correlated or one.datums is not None for one in heights]
    alone = [more or len(one) < _COLUMNS + _LEAST_FREEDOM for more, one in zip(alone, heights)]
    found, rest = [None] * len(frames), np.flatnonzero(~np.array(alone, bool)).tolist()
    if rest:
        fits = _Together([frames[k] for k in rest], [heights[k] for k in rest]).fits(remove)
        for k, fit in zip(rest, fits):
            found[k] = fit
    for k, fit in enumerate(found):
        if fit is None:
            options = {"remove": remove, "robust": robust, "sections": sections[k] if sections else ()}
            found[k] = fitted(k, frames[k], heights[k], **options)
    return found


class _Together:
    """Lines through independent heights, one after another: m lines, n stations."""

    def __init__(self, frames, heights):
        self.frames, self.heights = frames, heights
        self.legs = Segments([len(one) for one in heights])
        self.height, self.variance = (joined(one) for one in zip(*((h.height, h.covariance.variance) for h in heights)))
        self.feet, self.normals = foot_and_normal(
            *(joined([getattr(one, name) for one in heights]) for name in ("lat", "lon")), frames[0].ellipsoid
        )
        self.foot, self.up, self.ahead = (
            np.stack(one) for one in zip(*((one.foot, one.up, one.directions[0]) for one in frames))
        )
        self.good = np.ones(len(frames), bool)

    def fits(self, remove):
        """SurfaceFit of each, None where it has to be fitted by itself."""
        legs, (parameters, design, residuals) = self.legs, self._parameters()
        cofactors = self._cofactors(design)
        weighted_design, weighted_residuals = design / self.variance[:, None], residuals / self.variance
        shares = np.einsum("ij,ijk,ik->i", design, cofactors[legs.which], design)
        test_variances = np.maximum((1.0 - shares / self.variance) / self.variance, 0.0)
        checked = test_variances > NO_REDUNDANCY / self.variance
        plain_w = np.where(checked, weighted_residuals / np.sqrt(np.where(checked, test_variances, 1.0)), np.nan)
        quadratic = legs.sums(residuals * weighted_residuals)
        columns = {
            "design": design,
            "residuals": residuals,
            "redundancies": 1.0 - shares / self.variance,
            "weighted_design": weighted_design,
            "weighted_residuals": weighted_residuals,
            "test_variances": test_variances,
            "_plain_w": plain_w,
        }
        parts = zip(*(legs.parts(values) for values in columns.values()))
        rms = np.sqrt(legs.sums(residuals**2) / legs.counts).tolist()
        found = zip(
            self.frames, self.heights, parameters, cofactors, quadratic.tolist(), parts, rms, self.good.tolist()
        )
        return [
            _fit(frame, heights, own, remove, rms, cofactors=q, quadratic=square, **dict(zip(columns, part)))
            if good
            else None
            for frame, heights, own, q, square, part, rms, good in found
        ]

    def _parameters(self):
        """Height and slope of each, metres (m, 2); derivatives (n, 2) and residuals (n,) there. See fit.fit_surface."""
        parameters = np.zeros((len(self.frames), _COLUMNS))
        parameters[:, 0] = self.legs.sums(self.height) / self.legs.counts
        for _ in range(STEPS + 1):
            design, residuals = self._linearised(parameters)
            right = self.legs.sums(design * (residuals / self.variance)[:, None])
            parameters = parameters + np.einsum("mij,mj->mi", self._cofactors(design), right)
        return parameters, *self._linearised(parameters)

    def _linearised(self, parameters):
        which, n = self.legs.which, self.up - parameters[:, 1:] * self.ahead
        origin = self.foot + parameters[:, :1] * self.up
        over = row_products(self.normals, n[which])
        self.good &= np.minimum.reduceat(over, self.legs.first) > 0.0
        over = np.where(over > 0.0, over, 1.0)
        computed = row_products(origin[which] - self.feet, n[which]) / over
        points = self.feet - origin[which] + computed[:, None] * self.normals
        design = np.stack(
            [row_products(self.up, n)[which] / over, row_products(points, self.ahead[which]) / over], axis=1
        )
        return design, self.height - computed

    def _cofactors(self, design):
        """(A^T W A)^-1 of each, (m, 2, 2); by columns of unit size, as least_squares does it."""
        root = np.sqrt(self.variance)
        size = np.sqrt(self.legs.sums((design / root[:, None]) ** 2))
        size = np.where(size > 0.0, size, 1.0)
        share = self.legs.sums(design[:, 0] * design[:, 1] / self.variance) / (size[:, 0] * size[:, 1])
        # Of two columns of unit size the condition is (1 + |share|) / (1 - |share|).
        left = 1.0 - np.abs(share)
        self.good &= (1.0 + np.abs(share)) < MOST_CONDITION * left
        inverse = np.empty((len(share), 2, 2))
        inverse[:, 0, 0] = inverse[:, 1, 1] = 1.0
        inverse[:, 0, 1] = inverse[:, 1, 0] = -share
        inverse /= np.where(left > 0.0, left * (1.0 + np.abs(share)), 1.0)[:, None, None]
        return inverse / (size[:, :, None] * size[:, None, :])


def _fit(frame, heights: Heights, parameters, remove, rms, *, design, residuals, **computed):
    """SurfaceFit of one line, None where a station may be suspected and is to be set aside. ``computed``: what
    least_squares.Solution would compute of it."""
    known, freedom, quadratic = heights.known, len(heights) - _COLUMNS, computed["quadratic"]
    plain_w = computed["_plain_w"]
    w = plain_w if known else externally_studentised(plain_w, quadratic, freedom)
    limit = critical_value(freedom, known)
    if remove and np.nanmax(np.abs(w), initial=0.0) > _NEARLY * limit:
        return None
    solution = Solution(design, residuals, heights.covariance, known, parameters)
    sizes = 1.0 / np.sqrt(np.where(computed["test_variances"] > 0.0, computed["test_variances"], 1.0))
    detectable = detectable_blunders(sizes, plain_w, quadratic, freedom, known)
    # These are its cached properties: there they need not be computed again.
    vars(solution).update(computed, w=w, critical=limit, detectable=detectable)
    fitted = Fitted(solution, design, residuals, heights.covariance, np.ones(len(heights), bool))
    search = Search(fitted, w, computed["redundancies"], detectable)
    found = SurfaceFit(frame, float(parameters[0]), parameters[1:], parameters[2:], search)
    vars(found)["rms"] = rms
    return found
