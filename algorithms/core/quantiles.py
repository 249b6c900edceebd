"""Quantiles of the tests and intervals of method page 6; scipy is imported where it is needed only."""

from functools import cache, lru_cache

import numpy as np

from .errors import InputError

NORMAL_95 = 1.959963984540054
CHI2_2_95 = 5.991464547107979
# Baarda (1968), A testing procedure for use in geodetic networks: alpha_0 = 0.001, power 0.80.
BAARDA = 3.2905267314919255
DETECTABLE = 4.132147965064639
ALPHA, POWER = 0.001, 0.80


def missing_scipy():
    """The InputError where the library is not there."""
    return InputError("This needs scipy in QGIS's own Python; install it (python3-scipy on Debian and Ubuntu).")


@cache
def _special():
    # An import that is found already still goes through the host's own hook, for thousands of axes.
    try:
        from scipy import special
    except ImportError:
        raise missing_scipy() from None
    return special


def _noncentral():
    # All of the library's distributions take as long to load as many runs do: only where there is no other way.
    try:
        from scipy import optimize, stats
    except ImportError:
        raise missing_scipy() from None
    return stats.nct, optimize


@lru_cache(maxsize=4096)
def _quantile(function, *values):
    """Thousands of axes have few different numbers of stations, and the functions take numbers slowly."""
    return float(function(*values))


def student(probability, freedom):
    """Quantile of Student's t with ``freedom`` degrees of freedom, without unit; ``probability``: 0 to 1."""
    return _quantile(_special().stdtrit, freedom, probability)


def fisher(probability, first, second):
    """Quantile of Fisher's F, ``first`` and ``second`` degrees of freedom, without unit; ``probability``: 0 to 1."""
    return _quantile(_special().fdtri, first, second, probability)


def chi_squared(probability, freedom):
    """Quantile of chi squared with ``freedom`` degrees of freedom, without unit; ``probability``: 0 to 1."""
    return 2.0 * _quantile(_special().gammaincinv, 0.5 * freedom, probability)


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


@lru_cache(maxsize=1024)
def detectable_factor(freedom, known):
    """Blunder over its own standard deviation that the test of one observation finds with a chance of 80 %.

    4.13 where sigma is known (Baarda 1968); else the noncentrality of Student's t with ``freedom`` - 1 degrees of
    freedom whose two-sided test at 0.1 % has that power; inf where no test is possible.
    """
    if known:
        return DETECTABLE
    if freedom < 2:
        return float("inf")
    (t, optimize), limit = _noncentral(), critical_value(freedom, known)

    def missed(shift):
        # Far out in the other tail, where next to nothing is, the library may know no number.
        other_tail = np.nan_to_num(t.cdf(-limit, freedom - 1, shift))
        return t.cdf(limit, freedom - 1, shift) - other_tail - (1.0 - POWER)

    # With few degrees of freedom the limit itself is far out; the noncentrality is of its size.
    return float(optimize.brentq(missed, 0.1, 4.0 * limit, xtol=1e-9))


def detectable_blunders(sizes, w, quadratic, freedom, known):
    """Smallest detectable blunders (n,), in the unit of ``sizes``; inf where unchecked.

    ``sizes``: standard deviations of a blunder's estimate (n,), in units of the variance factor where sigma is unknown;
    ``w``: test values before studentising (n,), NaN where nothing checks; ``quadratic``: v^T W v; ``freedom``: m. Where
    sigma is unknown it is that of the others, without the observation itself.
    """
    checked = np.isfinite(w)
    if not known:
        others = np.maximum(quadratic - np.where(checked, w, 0.0) ** 2, 0.0)
        sizes = sizes * np.sqrt(others / (freedom - 1)) if freedom >= 2 else np.full(len(w), np.inf)
    return np.where(checked, detectable_factor(freedom, known) * sizes, np.inf)


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


def beta_quantile(probability, mean, variance, width):
    """Quantile of a beta variable on 0 to ``width`` of given mean and variance, without unit; numbers or arrays."""
    share = mean / width
    size = share * (1.0 - share) * width**2 / variance - 1.0
    return width * _special().betaincinv(share * size, (1.0 - share) * size, probability)
