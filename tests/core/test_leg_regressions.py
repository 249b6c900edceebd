"""Regressions of many legs at once: against scipy's, leg by leg, and against themselves one by one."""

import numpy as np
import pytest
from scipy import linalg

from tautline.algorithms.core import curvature
from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.covariance import independent, levelled
from tautline.algorithms.core.curvature import SurveyedLeg
from tautline.algorithms.core.leg_regressions import bends_of, regressions


def legs_of_all_kinds(wgs84):
    """Legs of different numbers of stations and accuracies, in any order, with blunders in some and without."""
    random, legs = np.random.default_rng(11), []
    for number in (4, 5, 9, 31, 31, 50, 50, 80):
        lat = 40.0 + number / 10.0
        axis = Axis(AxisLine("line", [lat, lat + 0.006 * number**0.5], [11.0, 11.0 + 0.001 * number], wgs84), 300.0)
        s = random.permutation(random.uniform(0.0, axis.length, number))
        lat, lon, _ = axis.place(s)
        for known in (True, False):
            sigmas = random.uniform(0.001, 0.003, number)
            height = 300.0 + 0.002 * s + (s - 0.5 * axis.length) ** 2 / 1.3e7 + random.normal(0.0, sigmas)
            height[: number // 50] += 0.02 + 0.5 * known
            covariance = independent(sigmas)
            if number == 9:
                covariance = levelled(np.full(number, 0.001), np.zeros(number, int), s, 0.001)
            legs.append(SurveyedLeg(axis, lat, lon, s, height, 40.0 + 1e-5 * s, covariance, known))
    return legs


def test_many_legs_at_once_are_those_one_by_one(wgs84):
    """To what the last digit of a place on Earth, 1e-9 m, makes of c and, with one degree of freedom, of sigma."""
    legs = legs_of_all_kinds(wgs84)
    for one, leg in zip(curvature.test_curvatures(legs), legs):
        alone = curvature.test_curvature(leg)
        for name in ("factor", "sd", "geoid", "half_width", "radius", "variance_factor"):
            assert getattr(one, name) == pytest.approx(getattr(alone, name), rel=2e-5, abs=1e-5), name
        assert (one.bend, one.verdict, one.doubtful) == (alone.bend, alone.verdict, alone.doubtful)
        assert one.curvature == pytest.approx(alone.curvature, abs=5e-9)
        for model, other in zip(one.models, alone.models):
            assert model.curve == pytest.approx(other.curve, abs=5e-9) and model.freedom == other.freedom
            assert model.chi_squared == pytest.approx(other.chi_squared, rel=2e-5, abs=1e-5)
        shape, other = one.shape, alone.shape
        assert (shape.chi, shape.ratio, shape.ratio_limit) == pytest.approx(
            (other.chi, other.ratio, other.ratio_limit), rel=2e-5, abs=1e-5, nan_ok=True
        )
        assert shape.greatest == pytest.approx(other.greatest, abs=2e-8)
        assert shape.at == other.at
    assert curvature.test_curvatures([]) == []


def test_a_leg_that_is_not_doubtful_has_no_suspect(wgs84):
    """By the search, which fits each leg by itself: no leg with a suspect is passed over, and most others are."""
    passed_over = []
    for one in curvature.test_curvatures(legs_of_all_kinds(wgs84)):
        search = curvature.search_free(one)
        suspected = np.any(np.abs(np.nan_to_num(search.w)) > search.solution.critical) or not np.all(search.kept)
        assert one.doubtful or not suspected
        passed_over.append(not one.doubtful)
        # Where nothing is set aside, the search has fitted the free model as well.
        if np.all(search.kept):
            assert search.fitted.solution.parameters[2] == pytest.approx(one.factor, rel=2e-5)
    assert 4 <= sum(passed_over) <= 12


def test_free_model_of_each_leg_against_scipy(wgs84):
    legs = legs_of_all_kinds(wgs84)
    found = regressions(legs)
    free, c = found.fitted["free"], found.rows.legs.parts(found.rows.as_given(found.rows.c))
    for k, leg in enumerate(legs):
        matrix = np.diag(leg.covariance.variance) if leg.covariance.matrix is None else leg.covariance.matrix
        white = linalg.inv(linalg.cholesky(matrix, lower=True))
        x = 2.0 * (leg.chainage - leg.chainage.min()) / np.ptp(leg.chainage) - 1.0
        design = white @ np.column_stack([np.ones_like(x), x, c[k]])
        solved = linalg.lstsq(design, white @ leg.height)[0]
        assert free.parameters[k] == pytest.approx(solved, rel=2e-5, abs=1e-6)
        left = white @ leg.height - design @ solved
        assert free.quadratic[k] == pytest.approx(left @ left, rel=2e-5, abs=1e-5)
        assert found.cofactor[k] == pytest.approx(linalg.inv(design.T @ design)[2, 2], rel=1e-6)


def test_words_of_the_bends():
    factors, half = np.array([1.1, 0.1, 0.5, 0.5, -1.0]), np.array([0.2, 0.2, 0.2, 0.6, 0.2])
    assert bends_of(factors, half) == ["straight", "level", "neither", "undecided", "neither"]
