"""The curvature factor: shapes built by 50-digit geometry, standard deviations by formula and by scipy, verdicts."""

import mpmath
import numpy as np
import pytest
from scipy import linalg

from tautline.algorithms.core import curvature
from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.covariance import independent, levelled
from tautline.algorithms.core.curvature import SurveyedLeg
from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.fit import line_frame
from tautline.algorithms.core.leg_regressions import MODELS

PLACES = [(48.0, 11.0, 33.0), (-31.2, 22.4, 250.0), (0.0, 179.99, 90.0), (78.0, -40.0, 0.0), (-62.0, 5.0, 140.0)]


def line(wgs84, lat0, lon0, azimuth, length, number, chainage_height=0.0):
    lat, lon, _ = wgs84.forward(
        np.full(number, lat0), np.full(number, lon0), np.full(number, azimuth), np.linspace(0.0, length, number)
    )
    axis = Axis(AxisLine("line", lat[[0, -1]], lon[[0, -1]], wgs84), chainage_height)
    return axis, lat, lon, np.linspace(0.0, axis.length, number)


def straight_heights(exact, wgs84, lat, lon, height, azimuth, slope):
    """Ellipsoidal heights over the stations of the straight line through the first one, rising by
    ``slope``; 50 digits.
    """
    geometry = exact(wgs84)
    point, normal = geometry.position(lat[0], lon[0], height), geometry.inclined_normal(lat[0], lon[0], azimuth, slope)
    return np.array([float(geometry.height(point, normal, a, b)) for a, b in zip(lat, lon)])


def outcome(axis, lat, lon, chainage, height, *, undulation=None, covariance=None, sigma=0.003, **more):
    number = len(lat)
    return curvature.test_curvature(
        SurveyedLeg(
            axis,
            lat,
            lon,
            chainage,
            height,
            np.zeros(number) if undulation is None else undulation,
            covariance or independent(np.full(number, sigma)),
            **more,
        )
    )


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("slope", [0.0, 0.004, -0.02])
def test_a_straight_line_in_space_has_factor_1(exact, wgs84, place, slope):
    axis, lat, lon, s = line(wgs84, *place, 3000.0, 21, chainage_height=400.0)
    found = outcome(axis, lat, lon, s, straight_heights(exact, wgs84, lat, lon, 400.0, place[2], slope))
    # A slope of 2 % changes the bend of the line's height by its square, 4e-4, and c is that of the level line.
    assert found.factor == pytest.approx(1.0, abs=2e-3 * (slope != 0) + 2e-6)
    assert found.verdict == "straight"
    assert found.implied_radius == pytest.approx(float(wgs84.euler_radius(lat[10], place[2])), rel=3e-3)


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("slope", [0.0, 0.02])
def test_level_and_grade_have_factor_0(wgs84, place, slope):
    axis, lat, lon, s = line(wgs84, *place, 3000.0, 21)
    found = outcome(axis, lat, lon, s, 50.0 + slope * s)
    assert found.factor == pytest.approx(0.0, abs=1e-9) and found.verdict == "level"
    models = {model.name: model for model in found.models}
    assert models["grade"].rms < 1e-9 and (models["level"].rms < 1e-9) == (slope == 0.0)
    assert models["straight"].rms == pytest.approx(3000.0**2 / 8 / found.radius * np.sqrt(4 / 45), rel=0.15)


@pytest.mark.parametrize("share", [0.5, -0.7, 2.0])
def test_other_bends_have_their_share(exact, wgs84, share):
    """100 m higher a level line bends less, by 100 m / R, so to 5e-5."""
    axis, lat, lon, s = line(wgs84, 48.0, 11.0, 33.0, 3000.0, 31)
    straight = straight_heights(exact, wgs84, lat, lon, 0.0, 33.0, 0.0)
    found = outcome(axis, lat, lon, s, 100.0 + share * straight - 0.001 * s)
    assert found.factor == pytest.approx(share, abs=5e-5) and found.verdict == "neither"
    assert found.implied_radius == pytest.approx(found.radius / share, rel=1e-4)


def test_the_bend_of_undulations_counts(exact, wgs84):
    """A straight line over a geoid that bends by a tenth of the Earth's curvature: with N it is straight, without it
    0.9."""
    axis, lat, lon, s = line(wgs84, 48.0, 11.0, 33.0, 3000.0, 31)
    ellipsoidal = straight_heights(exact, wgs84, lat, lon, 100.0, 33.0, 0.0)
    undulation = 45.0 + 2e-5 * s + 0.1 * (s - 1500.0) ** 2 / 2 / 6.37e6
    with_n = outcome(axis, lat, lon, s, ellipsoidal - undulation, undulation=undulation)
    without = outcome(axis, lat, lon, s, ellipsoidal - undulation)
    assert with_n.factor == pytest.approx(1.0, abs=1e-5) and without.factor == pytest.approx(0.9, abs=2e-3)


def test_c_is_the_height_of_the_tangent_at_the_middle(exact, wgs84):
    axis, lat, lon, s = line(wgs84, -31.2, 22.4, 250.0, 3000.0, 21)
    found = outcome(axis, lat, lon, s, np.full(21, 700.0))
    geometry = exact(wgs84)
    point = geometry.position(lat[10], lon[10], 700.0)
    normal = geometry.normal(lat[10], lon[10])
    want = [float(geometry.height(point, normal, a, b) - 700) for a, b in zip(lat, lon)]
    assert found.curvature == pytest.approx(want, abs=1e-8)
    assert mpmath.mp.dps == 50


@pytest.mark.parametrize("number, length", [(31, 600.0), (31, 3000.0), (101, 1100.0)])
def test_standard_deviation_of_the_factor(wgs84, number, length):
    """By the sum of squares of x^2 less its mean; in the limit of many stations 12 sqrt(5) = 26.8 R sigma / (L^2 sqrt
    n)."""
    axis, lat, lon, s = line(wgs84, 48.0, 11.0, 33.0, length, number)
    found = outcome(axis, lat, lon, s, np.zeros(number))
    radius = wgs84.euler_radius(48.0, 33.0)
    x = np.linspace(-0.5, 0.5, number)
    square = x**2 - np.mean(x**2)
    exact_sd = 0.003 * 2 * radius / length**2 / np.sqrt(np.sum(square**2))
    assert found.sd == pytest.approx(exact_sd, rel=1e-3)
    limit = 26.8 * radius * 0.003 / length**2 / np.sqrt(number)
    assert found.sd == pytest.approx(limit, rel=0.06 if number < 100 else 0.03)


@pytest.mark.parametrize("sigma, length", [(0.003, 600.0), (0.010, 1100.0)])
def test_lengths_that_decide(wgs84, sigma, length):
    """31 stations: at 3 mm 600 m decide, at 10 mm 1.1 km; the method page has both to two digits. Without the geoid's
    share."""
    found = {}
    for factor in (0.85, 1.15):
        axis, lat, lon, s = line(wgs84, 48.0, 11.0, 33.0, length * factor, 31)
        found[factor] = outcome(axis, lat, lon, s, np.zeros(31), sigma=sigma, bending=0.0)
    assert found[0.85].sd > 0.255 > found[1.15].sd
    assert found[0.85].deciding[1] == pytest.approx(length, rel=0.06)


def test_what_would_decide_decides(wgs84):
    """Undecided at 400 m and 3 mm; with the accuracy or at the length that it names, u is 0.255."""
    axis, lat, lon, s = line(wgs84, 48.0, 11.0, 33.0, 400.0, 31)
    found = outcome(axis, lat, lon, s, np.zeros(31), bending=0.1)
    accuracy, length = found.deciding
    assert found.uncertainty > 0.255
    better = outcome(axis, lat, lon, s, np.zeros(31), sigma=accuracy, bending=0.1)
    assert better.uncertainty == pytest.approx(0.255, abs=1e-6)
    longer_axis = line(wgs84, 48.0, 11.0, 33.0, length, 31)
    longer = outcome(*longer_axis, np.zeros(31), bending=0.1 * 400.0 / length)
    assert longer.uncertainty == pytest.approx(0.255, abs=1e-4)
    # Where the geoid's share alone is too much, no accuracy decides.
    assert outcome(axis, lat, lon, s, np.zeros(31)).geoid == pytest.approx(0.3)
    assert outcome(axis, lat, lon, s, np.zeros(31)).deciding[0] is None


def test_geoid_share(wgs84):
    axis, lat, lon, s = line(wgs84, 48.0, 11.0, 33.0, 1500.0, 31)
    assert outcome(axis, lat, lon, s, np.zeros(31)).geoid == pytest.approx(0.08, rel=1e-4)
    assert outcome(axis, lat, lon, s, np.zeros(31), fine_grid=True).geoid == pytest.approx(0.04, rel=1e-4)
    found = outcome(axis, lat, lon, s, np.zeros(31), bending=0.01)
    assert found.geoid == 0.01 and found.uncertainty == pytest.approx(np.hypot(0.01, found.sd))
    assert found.half_width == pytest.approx(1.959964 * found.uncertainty, rel=1e-6)


def test_undecided(exact, wgs84):
    axis, lat, lon, s = line(wgs84, 48.0, 11.0, 33.0, 300.0, 16)
    height = straight_heights(exact, wgs84, lat, lon, 0.0, 33.0, 0.0)
    assert outcome(axis, lat, lon, s, height).verdict == outcome(axis, lat, lon, s, 0 * height).verdict == "undecided"


def test_implied_radius_and_its_interval(exact, wgs84):
    axis, lat, lon, s = line(wgs84, 48.0, 11.0, 33.0, 3000.0, 31)
    straight = straight_heights(exact, wgs84, lat, lon, 0.0, 33.0, 0.0)
    one = outcome(axis, lat, lon, s, straight)
    low, high = one.interval
    assert one.implied_interval == pytest.approx((one.radius / high, one.radius / low))
    assert one.implied_interval[0] < one.radius < one.implied_interval[1]
    hollow = outcome(axis, lat, lon, s, -2.0 * straight)
    assert hollow.implied_radius == pytest.approx(-0.5 * hollow.radius, rel=1e-4)
    assert hollow.implied_interval[0] < -0.5 * hollow.radius < hollow.implied_interval[1] < 0
    # The interval around 0: above the radius of its wider side, on either side, or level.
    level = outcome(axis, lat, lon, s, 0.02 * straight)
    low, high = level.interval
    assert low < 0.0 < high and level.implied_interval == (pytest.approx(level.radius / high), np.inf)
    assert level.implied_interval[0] > 8 * level.radius
    assert abs(outcome(axis, lat, lon, s, 0.0 * straight).implied_radius) > 1e12


@pytest.mark.parametrize("known", [True, False])
@pytest.mark.parametrize("correlated", [False, True])
def test_against_scipys_regression(wgs84, known, correlated):
    """All models with a full covariance, by whitening and scipy's least squares; uneven spacing, heights of 2 km."""
    random = np.random.default_rng(2)
    axis, *_ = line(wgs84, -31.2, 22.4, 250.0, 2500.0, 2)
    s = np.sort(random.uniform(0.0, axis.length, 24))
    lat, lon, _ = axis.place(s)
    covariance = (
        levelled(np.full(24, 0.001), np.zeros(24, int), s, 0.002)
        if correlated
        else independent(random.uniform(0.002, 0.004, 24))
    )
    matrix = covariance.matrix if correlated else np.diag(covariance.variance)
    errors = linalg.cholesky(matrix, lower=True) @ random.normal(size=24)
    height = 2000.0 + 0.003 * s + (s - 1200.0) ** 2 / 2 / 6.37e6 + errors
    found = outcome(axis, lat, lon, s, height, covariance=covariance, known=known)
    white = linalg.inv(linalg.cholesky(matrix, lower=True))
    one, x, c = np.ones(24), (s - s.mean()) / 1000.0, found.curvature
    rule = x**2 * 1e6 / 2 / (3960 * 1609.344)
    sloping = np.column_stack([one, x])
    wanted = {
        "level": (one[:, None], 0),
        "grade": (sloping, 0),
        "straight": (sloping, c),
        "8-inch rule": (sloping, rule),
        "free": (np.column_stack([one, x, c]), 0),
    }
    models = {model.name: model for model in found.models}
    assert tuple(models) == MODELS
    factors = {}
    for name, (design, given) in wanted.items():
        solved = linalg.lstsq(white @ design, white @ (height - given))[0]
        residuals = height - given - design @ solved
        cofactors = linalg.inv(design.T @ linalg.inv(matrix) @ design)
        factors[name] = solved, cofactors, float(np.sum((white @ residuals) ** 2))
        assert models[name].rms == pytest.approx(np.sqrt(np.mean(residuals**2)), rel=2e-4)
        assert models[name].freedom == 24 - design.shape[1]
        assert models[name].curve == pytest.approx(height - residuals, abs=2e-7)
    scale = 1.0 if known else factors["free"][2] / 21
    for name in wanted:
        assert models[name].chi_squared == pytest.approx(factors[name][2] / scale, rel=2e-4)
    assert found.factor == pytest.approx(factors["free"][0][2], rel=1e-6)
    assert found.sd == pytest.approx(np.sqrt(factors["free"][1][2, 2] * scale), rel=1e-6)
    # Sphere and ellipsoid part by less than the fit sees here; a straight line on a flat Earth is the same curve as a
    # grade.
    assert models["sphere"].rms == pytest.approx(models["straight"].rms, rel=0.05)


def test_too_few_and_too_near(wgs84):
    axis, lat, lon, s = line(wgs84, 48.0, 11.0, 33.0, 1000.0, 3)
    with pytest.raises(InputError, match=r"'line': a curvature factor needs at least 4 stations .*; there are 3\.$"):
        outcome(axis, lat, lon, s, np.zeros(3))
    same = np.full(5, lat[1]), np.full(5, lon[1]), np.full(5, s[1])
    with pytest.raises(InputError, match="at one chainage"):
        outcome(axis, *same, np.zeros(5))
    two = [0, 0, 2, 2, 2]
    with pytest.raises(InputError, match="(too few places|do not determine)"):
        outcome(axis, lat[two], lon[two], s[two], np.array([0.0, 0.001, 0.0, 0.001, 0.002]))


def test_order_of_the_stations_does_not_matter(exact, wgs84):
    axis, lat, lon, s = line(wgs84, 48.0, 11.0, 33.0, 3000.0, 21)
    height = straight_heights(exact, wgs84, lat, lon, 20.0, 33.0, 0.001)
    order = np.random.default_rng(1).permutation(21)
    assert outcome(axis, lat[order], lon[order], s[order], height[order]).factor == pytest.approx(
        outcome(axis, lat, lon, s, height).factor, abs=1e-10
    )


def test_what_only_bends_like_a_shape_is_not_called_it(wgs84):
    """Waves of 30 mm on a straight line, 2 mm stated: the factor is 1, chi squared says no; a fifth 30 mm
    low as well.
    """
    axis = Axis(AxisLine("waves", [47.0, 47.0], [8.0, 8.04], wgs84), 0.0)
    s = np.linspace(0.0, axis.length, 31)
    lat, lon, _ = axis.place(s)
    straight = line_frame(axis, 0.0, axis.length).plane(500.0, [0.001]).heights(lat, lon, wgs84)
    noise = np.random.default_rng(8).normal(0.0, 0.002, 31)
    for wrong in (0.030 * np.sin(2.0 * np.pi * s / 700.0), np.where((s > 900.0) & (s < 1500.0), -0.030, 0.0)):
        leg = SurveyedLeg(axis, lat, lon, s, straight + noise + wrong, np.zeros(31), independent(np.full(31, 0.002)))
        found = curvature.test_curvature(leg)
        assert found.verdict != "straight" and not found.shape.fits
        assert found.shape.chi > 3.0 * found.shape.chi_limit and 0.015 < abs(found.shape.greatest) < 0.06
    plain = curvature.test_curvature(
        SurveyedLeg(axis, lat, lon, s, straight + noise, np.zeros(31), independent(np.full(31, 0.002)))
    )
    assert plain.verdict == "straight" and plain.shape.fits
