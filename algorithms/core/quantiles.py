"""Quantiles of the tests and intervals of METHOD 6; scipy is imported where it is needed only."""

import numpy as np

from .errors import InputError

NORMAL_95 = 1.959963984540054
CHI2_2_95 = 5.991464547107979
# Baarda (1968), A testing procedure for use in geodetic networks: alpha_0 = 0.001, power 0.80.
BAARDA = 3.2905267314919255
DETECTABLE = 4.132147965064639
ALPHA = 0.001


def _stats():
    try:
        from scipy import stats
    except ImportError:
        raise InputError(
            "This needs scipy in QGIS's own Python; install it (python3-scipy on Debian and Ubuntu)."
        ) from None
    return stats


def student(probability, freedom):
    """Quantile of Student's t with ``freedom`` degrees of freedom, without unit; ``probability``: 0 to 1."""
    return float(_stats().t.ppf(probability, freedom))


def fisher(probability, first, second):
    """Quantile of Fisher's F, ``first`` and ``second`` degrees of freedom, without unit; ``probability``: 0 to 1."""
    return float(_stats().f.ppf(probability, first, second))


def chi_squared(probability, freedom):
    """Quantile of chi squared with ``freedom`` degrees of freedom, without unit; ``probability``: 0 to 1."""
    return float(_stats().chi2.ppf(probability, freedom))


def interval_factor(freedom, known):
    """Factor, without unit, of a 95 % interval on a standard deviation: 1.96 where sigma is known, else Student's t
    with ``freedom`` degrees of freedom; inf without freedom."""
    if known:
        return NORMAL_95
    return student(0.975, freedom) if freedom > 0 else float("inf")


def ellipse_factor(freedom, known):
    """Factor, without unit, of a 95 % ellipse on the standard ellipse's axes: sqrt(5.99) where sigma is known, else
    sqrt(2F) with ``freedom`` degrees of freedom."""
    if known:
        return CHI2_2_95**0.5
    return (2.0 * fisher(0.95, 2, freedom)) ** 0.5 if freedom > 0 else float("inf")


def externally_studentised(w, quadratic, freedom):
    """Test values where sigma is unknown: ``w`` (n,), residuals over the roots of their variances in units of the
    variance factor, against the variance factor of all the others. ``quadratic``: v^T W v; ``freedom``: m. Student's t
    with m - 1 degrees of freedom; NaN for m < 2.
    """
    if freedom < 2:
        return np.full(len(w), np.nan)
    without = (quadratic - w**2) / (freedom - 1)
    with np.errstate(divide="ignore", invalid="ignore"):
        return w / np.sqrt(np.maximum(without, 0.0))


def critical_value(freedom, known):
    """What |w|, without unit, is compared with: 3.29 where sigma is known, else Student's quantile of the same level
    with ``freedom`` - 1 degrees of freedom; inf where no test is possible."""
    if known:
        return BAARDA
    return student(1.0 - ALPHA / 2.0, freedom - 1) if freedom >= 2 else float("inf")
