"""Whether residuals look like chance: the ratio's moments by dense matrices, its quantile by simulation, waves told."""

import numpy as np
import pytest

from tautline.algorithms.core.covariance import independent, levelled
from tautline.algorithms.core.quantiles import beta_quantile
from tautline.algorithms.core.shape_fit import shape_fit

ONE_MILLIMETRE = 1e-3


def design_of(number, columns=3):
    x = np.linspace(-1.0, 1.0, number)
    return np.column_stack([x**k for k in range(columns)])


def residuals_of(design, heights, root):
    """Residuals of generalised least squares, by whitening with the root of C."""
    white = np.linalg.solve(root, np.column_stack([design, heights]))
    parameters = np.linalg.lstsq(white[:, :-1], white[:, -1], rcond=None)[0]
    return heights - design @ parameters


@pytest.mark.parametrize("number, columns", [(9, 2), (13, 3), (31, 3)])
def test_limit_against_dense_matrices(number, columns):
    """Mean and variance of the ratio by traces of dense matrices (Durbin and Watson 1950)."""
    design = design_of(number, columns)
    step = np.diff(np.eye(number), axis=0)
    left = np.eye(number) - design @ np.linalg.pinv(design)
    form, m = left @ (step.T @ step) @ left, number - columns
    mean = np.trace(form) / m
    variance = 2.0 * (m * np.trace(form @ form) - np.trace(form) ** 2) / (m**2 * (m + 2.0))
    residuals = left @ np.random.default_rng(1).normal(0.0, ONE_MILLIMETRE, number)
    found = shape_fit(design, residuals, independent(np.ones(number)), np.arange(number), known=False)
    assert found.ratio_limit == pytest.approx(beta_quantile(0.01, mean, variance, 4.0), abs=1e-12)
    assert found.ratio == pytest.approx(np.sum(np.diff(residuals) ** 2) / np.sum(residuals**2), rel=1e-12)


@pytest.mark.parametrize("kind", ["independent", "levelled"])
def test_one_survey_in_a_hundred_falls_below(kind):
    """2,000 surveys of 21 stations that follow the curve: 1 % below the limit, 2.5 % above chi squared's."""
    number, rng = 21, np.random.default_rng(3)
    s, design = np.linspace(0.0, 3000.0, number), design_of(number)
    sigma = np.full(number, ONE_MILLIMETRE)
    c = independent(sigma) if kind == "independent" else levelled(sigma, np.zeros(number, int), s, ONE_MILLIMETRE)
    root = np.diag(sigma) if c.matrix is None else np.linalg.cholesky(c.matrix)
    low = high = 0
    for _ in range(2000):
        left = residuals_of(design, root @ rng.normal(size=number), root)
        found = shape_fit(design, left, c, s, known=True)
        low += found.ratio < found.ratio_limit
        high += found.chi > found.chi_limit
    assert 10 <= low <= 33 and 35 <= high <= 68


def test_waves_are_told_whatever_the_order_of_the_rows():
    number, rng = 31, np.random.default_rng(4)
    s, design = np.linspace(0.0, 3000.0, number), design_of(number)
    wave = 3.0 * ONE_MILLIMETRE * np.sin(2.0 * np.pi * s / 1000.0)
    left = residuals_of(design, wave + rng.normal(0.0, ONE_MILLIMETRE, number), np.eye(number))
    unknown = shape_fit(design, left, independent(np.ones(number)), s, known=False)
    assert not unknown.fits and unknown.ratio < unknown.ratio_limit and np.isnan(unknown.chi_limit)
    known = shape_fit(design, left, independent(np.full(number, ONE_MILLIMETRE)), s, known=True)
    assert not known.fits and known.chi > 2.0 * known.chi_limit
    mixed = rng.permutation(number)
    same = shape_fit(design[mixed], left[mixed], independent(np.ones(number)), s[mixed], known=False)
    assert same.ratio == pytest.approx(unknown.ratio, rel=1e-12)
    assert same.greatest == unknown.greatest and same.at == unknown.at and abs(same.greatest) == np.abs(left).max()


def test_few_stations_and_exact_heights_say_nothing():
    few = shape_fit(design_of(5), np.full(5, 0.01), independent(np.ones(5)), np.arange(5.0), known=False)
    assert few.fits and not few.tested
    exact = shape_fit(design_of(9), np.linspace(0.0, 1e-9, 9), independent(np.ones(9)), np.arange(9.0), known=False)
    assert exact.fits and not exact.tested
