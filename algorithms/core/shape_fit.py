"""Whether residuals look like chance: the second half of the verdict on a shape (method page 6).

One curvature factor says nothing of waves. Two tests look at what is left of a fit: the weighted sum of
squares against chi squared, where sigma is known, and von Neumann's ratio, which sees neighbours that leave
the curve together. Source: von Neumann (1941), Distribution of the ratio of the mean square successive
difference to the variance, Ann. Math. Stat. 12; the moments of a ratio of quadratic forms in residuals as
in Durbin and Watson (1950), Testing for serial correlation in least squares regression I, Biometrika 37,
whose beta approximation is used here.
"""

from dataclasses import dataclass

import numpy as np

from .covariance import Covariance
from .quantiles import beta_quantile, chi_squared
from .segments import Segments

CHI_LEVEL, RATIO_LEVEL = 0.975, 0.01
# Fewer degrees of freedom say nothing of the order of the residuals.
_LEAST_FREEDOM = 3
# No height is measured to a micrometre: residuals below are the rounding of computed ones, whose order means nothing.
_NOTHING = 1e-6


@dataclass(frozen=True)
class ShapeFit:
    """What two tests say of residuals.

    ``chi``, ``chi_limit``: weighted sum of squares and the quantile that it must not exceed, NaN where
    sigma is unknown; ``ratio``, ``ratio_limit``: von Neumann's ratio and the quantile that it must not fall
    below, NaN with fewer than three degrees of freedom; ``greatest``: the residual of greatest size,
    metres, and ``at`` its chainage, metres.
    """

    chi: float
    chi_limit: float
    ratio: float
    ratio_limit: float
    greatest: float
    at: float

    @property
    def tested(self):
        """Whether there were enough observations for any test."""
        return np.isfinite(self.chi_limit) or np.isfinite(self.ratio_limit)

    @property
    def fits(self):
        """True where no test speaks against the shape."""
        return not (self.chi > self.chi_limit or self.ratio < self.ratio_limit)


def shape_fit(design, residuals, covariance: Covariance, chainage, *, known):
    """Test residuals (n,), metres, of a fit with ``design`` (n, p), by chainage (n,), metres; returns ShapeFit.

    ``covariance``: C; ``known``: True where it is in square metres. The residuals are whitened by the root of C in the
    order of chainage: raw ones of levelled heights share errors, and would fail for that alone.
    """
    legs, order = Segments([len(residuals)]), np.argsort(chainage, kind="stable")
    white, columns = (whitened([covariance], legs, order, values[order]) for values in (residuals, design))
    freedom = np.array([len(residuals) - design.shape[1]])
    basis = orthonormal(legs, columns)
    return shape_fits(legs, white, basis, freedom, np.array([known]), residuals, np.asarray(chainage, float))[0]


def shape_fits(legs, white, basis, freedom, known, residuals, chainage):
    """The same of many legs: a list of ShapeFit.

    ``legs``: Segments, n rows on m legs; ``white`` (n,): whitened residuals, by chainage on each; ``basis`` (n, p):
    orthonormal columns of the whitened design, zeros where a leg has fewer; ``freedom``, ``known`` (m,);
    ``residuals``, ``chainage`` (n,): as they are, metres, in any order on each leg.
    """
    worst = legs.greatest(np.abs(residuals))
    square = legs.sums(white * white)
    chi, limit, ratio, ratio_limit = np.full((4, len(freedom)), np.nan)
    summed = known & (freedom > 0)
    chi[summed] = square[summed]
    limit[summed] = [chi_squared(CHI_LEVEL, m) for m in freedom[summed].tolist()]
    mean, variance = _moments(legs, basis, freedom)
    ordered = (freedom >= _LEAST_FREEDOM) & (np.abs(residuals[worst]) > _NOTHING) & (square > 0.0) & (variance > 0.0)
    if np.any(ordered):
        ratio[ordered] = legs.sums(legs.steps(white) ** 2)[ordered] / square[ordered]
        ratio_limit[ordered] = beta_quantile(RATIO_LEVEL, mean[ordered], variance[ordered], 4.0)
    values = (chi, limit, ratio, ratio_limit, residuals[worst], chainage[worst])
    return [ShapeFit(*row) for row in zip(*(one.tolist() for one in values))]


def whitened(covariances, legs, order, values):
    """L^-1 times values (n,) or (n, k) of many legs, with C = L L^T of each leg in the given order.

    ``covariances``: of each leg, in its own order of rows; ``order`` (n,): row at each place of ``values``.
    """
    root = np.sqrt(np.concatenate([one.variance for one in covariances])[order])
    found = (values.T / root).T
    for covariance, first, last in zip(covariances, legs.bounds.tolist(), legs.bounds[1:].tolist()):
        if covariance.correlated:
            found[first:last] = covariance.whitened(order[first:last] - first, values[first:last])
    return found


def _moments(legs, basis, freedom):
    """Mean and variance (m,) of the ratio of the sum of squared differences of neighbours to the sum of squares.

    With M the projection onto what the fit leaves and D = B^T B of the differences, the ratio e^T MDM e / e^T M e has
    mean tr(MD)/m and variance 2 (m tr((MD)^2) - tr(MD)^2) / (m^2 (m + 2)); a beta variable on 0 to 4 is given these.
    """
    n, differenced = legs.counts, _differenced(legs, basis)
    inner = legs.products(basis, differenced)
    # tr D = 2(n - 1); tr D^2 = 4(n - 2) + 2 + 2(n - 1) of the tridiagonal (1, 2, ..., 2, 1) with -1 beside it.
    trace = 2.0 * (n - 1) - np.trace(inner, axis1=1, axis2=2)
    own = legs.sums(np.sum(differenced**2, axis=1))
    square = (4.0 * (n - 2) + 2.0 + 2.0 * (n - 1)) - 2.0 * own + np.sum(inner * inner.swapaxes(1, 2), axis=(1, 2))
    enough = np.maximum(freedom, 1)
    return trace / enough, 2.0 * (freedom * square - trace**2) / (enough**2 * (enough + 2.0))


def orthonormal(legs, columns):
    """Orthonormal columns (n, p) of the same span on each of many legs, by Gram and Schmidt's way taken twice: as good
    as a QR decomposition. Source: Giraud and others (2005), Numer. Math. 101.
    """
    q = columns / np.sqrt(legs.sums(columns**2))[legs.which]
    for _ in range(2):
        for k in range(q.shape[1]):
            before = q[:, :k]
            own = q[:, k] - legs.times(before, legs.products(before, q[:, k : k + 1])[:, :, 0])
            q[:, k] = own / np.sqrt(legs.sums(own * own))[legs.which]
    return q


def _differenced(legs, values):
    """D times values (n, p): the second differences of neighbours on each leg, with open ends."""
    steps = legs.steps(values)
    found = -steps
    found[1:] += steps[:-1]
    return found
