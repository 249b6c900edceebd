"""Quantiles of tests and intervals, against printed tables."""

import builtins

import pytest

from tautline.algorithms.core import quantiles
from tautline.algorithms.core.errors import InputError

# NIST/SEMATECH e-Handbook of Statistical Methods, table of chi-squared with 10 degrees of freedom.
CHI_SQUARED_10 = {0.025: 3.24697, 0.05: 3.9403, 0.95: 18.30704, 0.975: 20.48318, 0.99: 23.20925}
# Two-sided 95 % of Student's t, from memory of the printed table (any textbook of statistics).
STUDENT_975 = {1: 12.706, 2: 4.303, 5: 2.571, 10: 2.228, 30: 2.042}
# Upper 5 % of F with 2 and m degrees of freedom, from memory of the printed table.
FISHER_95 = {1: 199.50, 2: 19.00, 5: 5.786, 10: 4.103, 30: 3.316}


@pytest.mark.parametrize("probability, value", CHI_SQUARED_10.items())
def test_chi_squared(probability, value):
    assert quantiles.chi_squared(probability, 10) == pytest.approx(value, abs=1e-5)


@pytest.mark.parametrize("freedom, value", STUDENT_975.items())
def test_student_and_interval(freedom, value):
    assert quantiles.student(0.975, freedom) == pytest.approx(value, abs=6e-4)
    assert quantiles.interval_factor(freedom, False) == pytest.approx(value, abs=6e-4)
    assert quantiles.interval_factor(freedom, True) == pytest.approx(1.959964, abs=1e-6)


@pytest.mark.parametrize("freedom, value", FISHER_95.items())
def test_fisher_and_ellipse(freedom, value):
    assert quantiles.fisher(0.95, 2, freedom) == pytest.approx(value, rel=2e-4)
    assert quantiles.ellipse_factor(freedom, False) == pytest.approx((2.0 * value) ** 0.5, rel=1e-4)
    # 5.991: upper 5 % of chi-squared with 2 degrees of freedom, same handbook.
    assert quantiles.ellipse_factor(freedom, True) == pytest.approx(5.991**0.5, abs=1e-4)


def test_without_freedom_there_is_no_interval_unless_sigma_is_known():
    assert quantiles.interval_factor(0, False) == quantiles.ellipse_factor(0, False) == float("inf")
    assert quantiles.interval_factor(0, True) == pytest.approx(1.96, abs=1e-3)


def test_baarda():
    """Baarda (1968), A testing procedure for use in geodetic networks: 3.29 and 4.13; the root of lambda_0 = 17.075."""
    assert quantiles.BAARDA == pytest.approx(3.29, abs=0.005)
    assert quantiles.DETECTABLE == pytest.approx(4.13, abs=0.005)
    assert quantiles.DETECTABLE**2 == pytest.approx(17.075, abs=0.005)
    from scipy import stats

    # 4.13 is the shift of a normal test value that exceeds 3.29 on either side with a chance of 80 %.
    shifted = stats.norm(quantiles.DETECTABLE)
    assert shifted.sf(quantiles.BAARDA) + shifted.cdf(-quantiles.BAARDA) == pytest.approx(0.80, abs=1e-9)
    assert 2.0 * stats.norm.sf(quantiles.BAARDA) == pytest.approx(quantiles.ALPHA, abs=1e-12)


def test_without_scipy_one_sentence_says_so(monkeypatch):
    real = builtins.__import__

    def without(name, *rest):
        if name.split(".")[0] == "scipy":
            raise ImportError(name)
        return real(name, *rest)

    monkeypatch.setattr(builtins, "__import__", without)
    quantiles._special.cache_clear()
    with pytest.raises(InputError, match=r"needs scipy .*\.$"):
        quantiles.student(0.975, 5)
