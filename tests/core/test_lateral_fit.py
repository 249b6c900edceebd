"""The line in plan by least squares: against an independent solution in Earth-centred coordinates, a certified
regression, deletion by hand and simulated surveys of known truth."""

import pathlib
import sys

import numpy as np
import pytest
from scipy import stats

from tautline.algorithms.core.covariance import independent
from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.geodesy import position
from tautline.algorithms.core.lateral import LineStations, line_departures, planes_through_ends
from tautline.algorithms.core.lateral_fit import Sideways, fit_sideways

START = (-31.0, 22.0, 40.0)


def stations_of(ellipsoid, along, offsets, height=250.0, start=START):
    """LineStations beside the geodesic from ``start``, by the library's geodesics."""
    along, offsets = np.asarray(along, float), np.asarray(offsets, float)
    full = np.ones(len(along))
    lat, lon, azimuth = ellipsoid.forward(*(full * v for v in start), along)
    lat, lon, _ = ellipsoid.forward(lat, lon, azimuth + 90.0, offsets)
    axis = np.zeros(len(along), int)
    return LineStations(axis, lat, lon, full * height, along, offsets, axis == 0, ellipsoid)


def fitted(stations, sigma, *, known=True, remove=False, robust=False):
    planes, along, aside = planes_through_ends(["wall"], stations)
    part = Sideways(planes, along, aside, independent(np.zeros(len(along)) + sigma), known)
    return fit_sideways("wall", part, remove=remove, robust=robust)


def wall(wgs84, seed=1, number=31, length=3000.0, **more):
    dice = np.random.default_rng(seed)
    along = np.linspace(0.0, length, number)
    return stations_of(wgs84, along, dice.normal(0.0, 0.003, number), dice.uniform(200.0, 230.0, number), **more)


# Independent solutions ----------------------------------------------------------------------------------------------


@pytest.mark.parametrize("start", [START, (51.0, 7.0, 190.0), (0.0, 179.99, 90.0), (89.5, 40.0, 10.0)])
def test_against_singular_values_in_earth_centred_coordinates(wgs84, start):
    """The plumb line at the middle is taken out of the places in space; the line is the first singular vector of what
    is left, weighted, and a departure the part along the other one."""
    stations, dice = wall(wgs84, start=start), np.random.default_rng(4)
    sigma = dice.uniform(0.001, 0.006, len(stations.lat))
    fit = fitted(stations, sigma)
    places = position(stations.lat, stations.lon, stations.height, wgs84)
    ends = [position(stations.lat[[k]], stations.lon[[k]], h, wgs84)[0] for k in (0, -1) for h in (0.0, 1.0)]
    up = (ends[1] - ends[0]) + (ends[3] - ends[2])
    up /= np.linalg.norm(up)
    weight = sigma**-2 / np.sum(sigma**-2)
    away = places - weight @ places
    plan = away - np.outer(away @ up, up)
    ahead = np.linalg.svd(plan * np.sqrt(weight)[:, None], full_matrices=False)[2][0]
    ahead *= np.sign(ahead @ (places[-1] - places[0]))
    assert fit.residuals == pytest.approx(plan @ np.cross(ahead, up), abs=2e-9)
    assert fit.along == pytest.approx(plan @ ahead, abs=1e-6)


def test_the_same_as_the_line_of_designheights(wgs84):
    """Where nothing is set aside and all count alike, departures are those of LINE 'fitted' there."""
    stations = wall(wgs84)
    assert fitted(stations, 0.003).residuals == pytest.approx(
        line_departures(["fitted"], ["wall"], stations).lateral, abs=1e-9
    )


def test_place_and_azimuth(wgs84):
    """A line 2 m beside the geodesic and turned by a hundredth of a degree: the library's geodesics tell both."""
    length = 2000.0
    along = np.linspace(0.0, length, 21)
    turned = START[:2] + (START[2] + 0.01,)
    ahead = stations_of(wgs84, along, np.zeros(21), 0.0, turned)
    lat, lon, azimuth = fitted(ahead, 0.003).place(wgs84)
    middle = wgs84.forward(*turned, 0.5 * length)
    assert (lat, lon) == pytest.approx(middle[:2], abs=1e-9)
    assert azimuth == pytest.approx(middle[2] % 360.0, abs=1e-7)


def test_certified_deviations_of_a_straight_line(wgs84, norris):
    """x metres along, y millimetres to the right, sigma unknown: standard deviations of place and azimuth."""
    fit = fitted(stations_of(wgs84, norris.x, 1e-3 * norris.y, 0.0), 1.0, known=False)
    shift, turn = fit.solution.deviations
    assert np.sqrt(fit.solution.variance_factor) == pytest.approx(1e-3 * norris.sd, rel=3e-6)
    assert turn == pytest.approx(1e-3 * norris.slope_sd, rel=3e-6)
    # At x = 0, where the certified intercept is, by propagation from the middle.
    assert np.hypot(shift, turn * norris.x.mean()) == pytest.approx(1e-3 * norris.intercept_sd, rel=3e-6)


@pytest.mark.parametrize("known", [True, False])
def test_tests_of_single_stations_by_deletion(wgs84, known):
    """w, redundancy and smallest blunder of each station from the straight line through the others (numpy.polyfit)."""
    stations, dice = wall(wgs84, number=13), np.random.default_rng(8)
    sigma = dice.uniform(0.002, 0.005, 13)
    fit = fitted(stations, sigma, known=known)
    x, y = fit.along, fit.residuals
    for k in range(13):
        rest = np.arange(13) != k
        line, cofactors = np.polyfit(x[rest], y[rest], 1, w=1.0 / sigma[rest], cov="unscaled")
        miss = y[k] - np.polyval(line, x[k])
        variance = sigma[k] ** 2 + np.array([x[k], 1.0]) @ cofactors @ [x[k], 1.0]
        left = (y[rest] - np.polyval(line, x[rest])) / sigma[rest]
        scale = 1.0 if known else np.sqrt(left @ left / 10)
        assert fit.search.w[k] == pytest.approx(miss / np.sqrt(variance) / scale, rel=1e-6)
        assert fit.search.redundancies[k] == pytest.approx(sigma[k] ** 2 / variance, rel=1e-6)
        if known:
            # Baarda: 4.13 standard deviations, for alpha 0.001 and a chance of 80 %.
            factor = stats.norm.ppf(0.9995) + stats.norm.ppf(0.8)
            assert fit.search.detectable[k] == pytest.approx(factor * np.sqrt(variance), rel=1e-4)


# The search ---------------------------------------------------------------------------------------------------------


def test_a_knocked_station_is_set_aside_and_the_rest_is_as_without_it(wgs84):
    clean = wall(wgs84)
    offsets = clean.offset.copy()
    offsets[9] += 0.08
    knocked = stations_of(wgs84, clean.chainage, offsets, clean.height)
    fit = fitted(knocked, 0.003, remove=True)
    assert np.flatnonzero(~fit.search.kept).tolist() == [9] and abs(fit.search.w[9]) > 20.0
    keep = np.arange(31) != 9
    alone = fitted(stations_of(wgs84, clean.chainage[keep], offsets[keep], clean.height[keep]), 0.003, remove=True)
    assert fit.residuals[keep] == pytest.approx(alone.residuals, abs=1e-9)
    only_tested = fitted(knocked, 0.003)
    assert np.all(only_tested.search.kept) and abs(only_tested.search.w[9]) > 20.0


def test_a_bend_is_not_taken_for_blunders(wgs84):
    """When more than a tenth would have to go, all stay: the guard of the heights."""
    along = np.linspace(0.0, 3000.0, 31)
    fit = fitted(stations_of(wgs84, along, 0.2 * (along / 3000.0) ** 2), 0.003, remove=True)
    assert np.all(fit.search.kept) and fit.search.beyond == 3


def test_a_moved_stretch_with_the_robust_start(wgs84):
    """Eight neighbours of 31, more than the tenth that the plain search may set aside."""
    clean = wall(wgs84)
    moved = np.isin(np.arange(31), np.arange(12, 20))
    offsets = clean.offset + 0.08 * moved
    assert np.all(fitted(stations_of(wgs84, clean.chainage, offsets, clean.height), 0.003, remove=True).search.kept)
    fit = fitted(stations_of(wgs84, clean.chainage, offsets, clean.height), 0.003, remove=True, robust=True)
    assert np.array_equal(~fit.search.kept, moved)


@pytest.mark.parametrize(
    "along, offsets, words",
    [
        ([50.0, 50.0, 50.0], [0.0, 0.0, 0.0], "at one place"),
        ([0.0, 1.0, 2.0, 3.0], [0.0, 30.0, -30.0, 0.0], "do not lie along a line"),
    ],
)
def test_too_little_for_a_line_is_refused(wgs84, along, offsets, words):
    with pytest.raises(InputError, match=words) as caught:
        fitted(stations_of(wgs84, along, offsets), 0.003)
    assert "wall" in str(caught.value)


def test_two_stations_determine_a_line_and_nothing_tests_it(wgs84):
    fit = fitted(stations_of(wgs84, [0.0, 800.0], [0.02, -0.01]), 0.003, remove=True)
    assert fit.residuals == pytest.approx([0.0, 0.0], abs=1e-9)
    assert fit.solution.freedom == 0 and np.all(np.isnan(fit.search.w))


# Simulated surveys (2,000 of each kind in the benchmark) ------------------------------------------------------------

SURVEYS = 150


@pytest.fixture(scope="module")
def simulated():
    sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "benchmarks"))
    try:
        import simulated_plans
    finally:
        del sys.path[0]
    return simulated_plans


@pytest.mark.parametrize("known", [True, False])
def test_intervals_hold_the_truth_and_false_alarms_are_rare(simulated, known):
    """Bounds that chance passes once in 20,000 times; a flag is false once in a thousand tests, 31 a survey."""
    plain = simulated.lines(np.random.default_rng(13), SURVEYS, known=known)
    searched = simulated.lines(np.random.default_rng(14), SURVEYS, known=known, remove=True)
    for name in ("place sideways", "azimuth"):
        assert stats.binom.ppf(5e-5, SURVEYS, 0.95) <= plain.held[name] <= SURVEYS
        assert stats.binom.ppf(5e-5, SURVEYS, 0.94) <= searched.held[name]
    assert 0 < searched.held["false alarms"] <= stats.binom.ppf(0.99995, 31 * SURVEYS, 0.0013)


@pytest.mark.parametrize("known", [True, False])
def test_the_smallest_detectable_blunder_is_found_in_four_of_five(simulated, known):
    found = simulated.knocks(np.random.default_rng(15), SURVEYS, known=known)
    low, high = stats.binom.ppf([5e-5, 0.99995], SURVEYS, 0.8)
    assert low <= found.held["the smallest, found"] <= high
    assert found.held["twice that, found"] >= SURVEYS - 2
