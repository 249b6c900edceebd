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
    order = np.argsort(chainage, kind="stable")
    white, columns = _whitened(covariance, order, residuals[order]), _whitened(covariance, order, design[order])
    freedom = len(residuals) - design.shape[1]
    worst = int(np.argmax(np.abs(residuals)))
    chi = (float(white @ white), chi_squared(CHI_LEVEL, freedom)) if known and freedom > 0 else (np.nan, np.nan)
    ratio = (np.nan, np.nan)
    if freedom >= _LEAST_FREEDOM and abs(residuals[worst]) > _NOTHING:
        ratio = _von_neumann(white, columns, freedom)
    return ShapeFit(*chi, *ratio, float(residuals[worst]), float(chainage[worst]))


def _whitened(covariance, order, values):
    """L^-1 times values (n,) or (n, k), with C = L L^T in the given order."""
    if covariance.matrix is None:
        return (values.T / np.sqrt(covariance.variance[order])).T
    root = np.linalg.cholesky(covariance.matrix[np.ix_(order, order)])
    return np.linalg.solve(root, values)


def _von_neumann(white, columns, freedom):
    """(ratio of the sum of squared differences of neighbours to the sum of squares, its 1 % quantile for this design).

    With M the projection onto what the fit leaves and D = B^T B of the differences, the ratio e^T MDM e / e^T M e has
    mean tr(MD)/m and variance 2 (m tr((MD)^2) - tr(MD)^2) / (m^2 (m + 2)); a beta variable on 0 to 4 is given these.
    """
    total = float(white @ white)
    if not total > 0.0:
        return np.nan, np.nan
    n = len(white)
    q = _orthonormal(columns)
    d_q = _differenced(q)
    inner = q.T @ d_q
    # tr D = 2(n - 1); tr D^2 = 4(n - 2) + 2 + 2(n - 1) of the tridiagonal (1, 2, ..., 2, 1) with -1 beside it.
    trace = 2.0 * (n - 1) - np.trace(inner)
    square = (4.0 * (n - 2) + 2.0 + 2.0 * (n - 1)) - 2.0 * np.sum(d_q**2) + np.sum(inner * inner.T)
    mean = trace / freedom
    variance = 2.0 * (freedom * square - trace**2) / (freedom**2 * (freedom + 2.0))
    if not variance > 0.0:
        return np.nan, np.nan
    return float(np.sum(np.diff(white) ** 2)) / total, beta_quantile(RATIO_LEVEL, mean, variance, 4.0)


def _orthonormal(columns):
    """Orthonormal columns (n, k) of the same span, by Gram and Schmidt's way taken twice: as good as a QR
    decomposition, without its library's threads for each of thousands of axes. Source: Giraud and others (2005),
    Numer. Math. 101.
    """
    q = columns / np.sqrt(np.sum(columns**2, axis=0))
    for _ in range(2):
        for k in range(q.shape[1]):
            own = q[:, k] - q[:, :k] @ (q[:, :k].T @ q[:, k])
            q[:, k] = own / np.sqrt(own @ own)
    return q


def _differenced(values):
    """D times values (n, k): the second differences of neighbours, with open ends."""
    steps = np.diff(values, axis=0)
    found = np.zeros_like(values)
    found[:-1] -= steps
    found[1:] += steps
    return found
