"""Fits of lines and planes: against 50-digit geometry, finite differences, scipy's least squares and
simulated surveys.
"""

import json
import pathlib
import subprocess
import sys

import mpmath
import numpy as np
import pytest
from scipy import optimize, stats

from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.covariance import Covariance, independent, levelled
from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.fit import (
    Frame,
    Heights,
    SurfaceFit,
    check_spread,
    fit_surface,
    line_frame,
    linearised,
    plane_frame,
    unit_normals,
)
from tautline.algorithms.core.tangent_point import line_places, plane_points

HONESTY = pathlib.Path(__file__).resolve().parents[1] / "benchmarks" / "honesty.py"

# Two arms from one vertex: lat, lon, h; azimuths clockwise from north; length; altitudes are 0, so both arms are
# tangent to the horizon at the vertex. Source: package bilby 2.8.2, files V1.interferometer and GEO600.interferometer
# (their azimuths run counter-clockwise from east).
TWO_ARMS = {
    "V1": (43.63141447207, 10.5044966112, 51.88399887, (19.432600236, 289.43259921), 3000.0),
    "G1": (52.24514666663, 9.807192777776, 114.4250031, (68.388300423, 334.05690249), 600.0),
}


def geographic(exact, point):
    """Latitude, longitude (degrees) and height of an Earth-centred point with all digits, by Newton's method on its
    definition."""
    x, y, z = point
    ring = mpmath.sqrt(x * x + y * y)
    a, b = mpmath.mpf(exact.a), mpmath.mpf(exact.a) * (1 - mpmath.mpf(exact.f))

    def gap(lat, height):
        sin, cos = mpmath.sin(lat), mpmath.cos(lat)
        support = mpmath.sqrt(a**2 * cos**2 + b**2 * sin**2)
        return a**2 * cos / support + height * cos - ring, b**2 * sin / support + height * sin - z

    lat, height = mpmath.findroot(gap, (mpmath.atan2(z, ring), mpmath.mpf(100)), tol=1e-60)
    return mpmath.degrees(lat), mpmath.degrees(mpmath.atan2(y, x)), height


def arm_stations(exact, lat, lon, height, azimuth, slope, distances):
    """Stations of a straight line in space: rises by ``slope`` against the horizon of the vertex; full precision."""
    phi, lam, alpha = (mpmath.mpf(v) * mpmath.pi / 180 for v in (lat, lon, azimuth))
    sin, cos = mpmath.sin, mpmath.cos
    ahead = (
        -cos(alpha) * sin(phi) * cos(lam) - sin(alpha) * sin(lam),
        -cos(alpha) * sin(phi) * sin(lam) + sin(alpha) * cos(lam),
        cos(alpha) * cos(phi),
    )
    tilt = mpmath.atan(mpmath.mpf(slope))
    start, up = exact.position(lat, lon, height), exact.normal(lat, lon)
    return [
        geographic(
            exact, tuple(p + mpmath.mpf(d) * (cos(tilt) * t + sin(tilt) * u) for p, t, u in zip(start, ahead, up))
        )
        for d in distances
    ]


def two_arms(exact, name, slopes):
    lat, lon, height, azimuths, length = TWO_ARMS[name]
    distances = [length * k / 6 for k in range(7)]
    places = [
        arm_stations(exact, lat, lon, height, azimuth, slope, distances) for azimuth, slope in zip(azimuths, slopes)
    ]
    return [*places[0], *places[1][1:]]


def exact_normal(exact, name, slopes):
    """Normal of the plane of both arms, 50 digits, by the cross product of their directions."""
    lat, lon, _, azimuths, _ = TWO_ARMS[name]
    up, arms = exact.normal(lat, lon), []
    for azimuth, slope in zip(azimuths, slopes):
        level = tuple(p - q for p, q in zip(up, exact.inclined_normal(lat, lon, azimuth, 1)))
        arms.append(tuple(p + mpmath.mpf(slope) * q for p, q in zip(level, up)))
    n = exact.cross(*arms)
    return n if exact.dot(n, up) > 0 else tuple(-v for v in n)


@pytest.mark.parametrize("name", TWO_ARMS)
@pytest.mark.parametrize("slopes", [(0.0, 0.0), (-1.1e-4, 6.3e-5)])
def test_two_arms_return_their_slopes_and_their_tangent_point(exact, wgs84, owed, name, slopes):
    geometry = exact(wgs84)
    places = two_arms(geometry, name, slopes)
    lat, lon, height = (np.array([float(place[k]) for place in places]) for k in range(3))
    fit = fit_surface(plane_frame(lat, lon, wgs84), Heights(lat, lon, height, independent(np.full(13, 0.003))))
    assert np.abs(fit.residuals).max() < 5e-9
    vertex_lat, vertex_lon, _, azimuths, _ = TWO_ARMS[name]
    n = fit.plane.normal
    for azimuth, slope in zip(azimuths, slopes):
        direction = Frame(vertex_lat, vertex_lon, wgs84, azimuth)
        assert -(n @ direction.directions[0]) / (n @ direction.up) == pytest.approx(slope, abs=1e-10)
    x, y, z = exact_normal(geometry, name, slopes)
    true_lat = float(mpmath.degrees(mpmath.atan2(z, mpmath.sqrt(x * x + y * y))))
    true_lon = float(mpmath.degrees(mpmath.atan2(y, x)))
    found = plane_points(fit, lat, lon).tangent
    distance = wgs84.inverse(found.lat, found.lon, true_lat, true_lon)[2]
    owed(f"tangent point of two arms, {name}", distance, 1e-3)
    if slopes == (0.0, 0.0):
        assert wgs84.inverse(found.lat, found.lon, vertex_lat, vertex_lon)[2] < 1e-3
    point = geometry.position(*TWO_ARMS[name][:3])
    assert found.height == pytest.approx(float(geometry.height(point, (x, y, z), true_lat, true_lon)), abs=1e-7)


@pytest.mark.parametrize("name", TWO_ARMS)
def test_an_arm_as_a_line(exact, wgs84, name):
    """One arm, 3 in 10,000 down from the vertex: slope there, and the chainage where the line is level, by
    50 digits.
    """
    geometry = exact(wgs84)
    lat0, lon0, height0, azimuths, length = TWO_ARMS[name]
    slope = -0.0003
    places = arm_stations(geometry, lat0, lon0, height0, azimuths[0], slope, [length * k / 8 for k in range(9)])
    lat, lon, height = (np.array([float(place[k]) for place in places]) for k in range(3))
    axis = Axis(AxisLine(name, lat[[0, -1]], lon[[0, -1]], wgs84), height0)
    fit = fit_surface(line_frame(axis, 0.0, axis.length), Heights(lat, lon, height, independent(np.full(9, 0.003))))
    assert np.abs(fit.residuals).max() < 5e-9
    start = Frame(lat0, lon0, wgs84, azimuths[0])
    n = fit.plane.normal
    assert -(n @ start.directions[0]) / (n @ start.up) == pytest.approx(slope, abs=1e-10)
    # Where the line's direction is level: distance d along it where direction . u(foot of the point) = 0.
    direction = tuple(q - p for p, q in zip(geometry.position(*map(float, places[0])), geometry.position(*places[-1])))

    def climb(d):
        point = tuple(
            p + d * t / mpmath.sqrt(geometry.dot(direction, direction))
            for p, t in zip(geometry.position(lat0, lon0, height0), direction)
        )
        where = geographic(geometry, point)
        return geometry.dot(direction, geometry.normal(where[0], where[1])), where

    root = mpmath.findroot(lambda d: climb(d)[0], (1900, 1950))
    where = climb(root)[1]
    level = line_places(fit, axis, 0.5 * axis.length, lat, lon).tangent
    assert wgs84.inverse(level.lat, level.lon, float(where[0]), float(where[1]))[2] < 2e-3
    along = wgs84.inverse(lat0, lon0, float(where[0]), float(where[1]))[2]
    assert level.chainage == pytest.approx(along * (1 + height0 / wgs84.euler_radius(lat0, azimuths[0])), abs=5e-3)
    assert level.height == pytest.approx(float(where[2]), abs=1e-6)


def random_places(wgs84, random, number=25, extent=2000.0, lat0=-31.0, lon0=22.0):
    lat, lon, _ = wgs84.forward(
        np.full(number, lat0),
        np.full(number, lon0),
        random.uniform(0, 360, number),
        random.uniform(50.0, extent, number),
    )
    return lat, lon


@pytest.mark.parametrize("azimuth", [None, 73.0])
def test_derivatives_by_finite_differences(wgs84, azimuth):
    lat, lon = random_places(wgs84, np.random.default_rng(1))
    frame = Frame(-31.01, 22.01, wgs84, azimuth)
    datums = np.repeat([0, 1, 2], [10, 8, 7])
    heights = Heights(lat, lon, np.zeros(25), independent(np.ones(25)), True, datums)
    parameters = np.array([400.0, 0.02, -0.03, 0.5, -0.2]) if azimuth is None else np.array([400.0, 0.02, 0.5, -0.2])
    design, computed = linearised(frame, heights, parameters)
    for k, step in enumerate([1.0, 1e-5, 1e-5, 1.0, 1.0] if azimuth is None else [1.0, 1e-5, 1.0, 1.0]):
        up, down = parameters.copy(), parameters.copy()
        up[k] += step
        down[k] -= step
        slope = (linearised(frame, heights, up)[1] - linearised(frame, heights, down)[1]) / (2 * step)
        assert design[:, k] == pytest.approx(slope, rel=1e-6, abs=1e-5 if 0 < k < 3 else 1e-9)
    without = frame.plane(400.0, parameters[1:3] if azimuth is None else parameters[1:2]).heights(lat, lon, wgs84)
    assert computed == pytest.approx(without + np.array([0.0, 0.5, -0.2])[datums], abs=1e-8)


@pytest.mark.parametrize("full", [False, True])
def test_against_scipys_nonlinear_least_squares(wgs84, full):
    random = np.random.default_rng(2)
    lat, lon = random_places(wgs84, random)
    matrix = np.diag(random.uniform(0.002, 0.005, 25) ** 2)
    if full:
        root = random.normal(0.0, 0.001, (25, 25))
        matrix = matrix + root @ root.T
    frame = plane_frame(lat, lon, wgs84)
    height = frame.plane(300.0, [0.01, -0.02]).heights(lat, lon, wgs84)
    height = height + random.multivariate_normal(np.zeros(25), matrix)
    fit = fit_surface(frame, Heights(lat, lon, height, Covariance(np.diag(matrix).copy(), matrix if full else None)))
    white = np.linalg.inv(np.linalg.cholesky(matrix))

    def misfit(scaled):
        plane = frame.plane(300.0 + scaled[0] * 1e-3, [0.01 + scaled[1] * 1e-6, -0.02 + scaled[2] * 1e-6])
        return white @ (height - plane.heights(lat, lon, wgs84))

    def derivatives(scaled):
        return np.column_stack([(misfit(scaled + e) - misfit(scaled - e)) / 20.0 for e in 10.0 * np.eye(3)])

    found = optimize.least_squares(misfit, np.zeros(3), derivatives, xtol=1e-14, ftol=1e-14, gtol=1e-14)
    assert fit.height == pytest.approx(300.0 + found.x[0] * 1e-3, abs=1e-8)
    assert fit.slopes == pytest.approx([0.01 + found.x[1] * 1e-6, -0.02 + found.x[2] * 1e-6], abs=1e-11)
    assert fit.solution.quadratic == pytest.approx(2.0 * found.cost, rel=1e-6)
    scale = np.array([1e-3, 1e-6, 1e-6])
    want = np.linalg.inv(found.jac.T @ found.jac) * np.outer(scale, scale)
    assert fit.solution.parameter_covariance == pytest.approx(want, rel=1e-5, abs=1e-16)
    assert fit.rms == pytest.approx(np.sqrt(np.mean(fit.residuals**2)))


def test_far_heights_and_steep_slopes_converge(wgs84):
    """Two steps from the level plane at the mean height are enough for slopes of one in ten and heights of
    kilometres.
    """
    lat, lon = random_places(wgs84, np.random.default_rng(3), extent=5000.0)
    frame = plane_frame(lat, lon, wgs84)
    height = frame.plane(4000.0, [0.1, -0.08]).heights(lat, lon, wgs84)
    fit = fit_surface(frame, Heights(lat, lon, height, independent(np.full(25, 0.003))))
    assert np.abs(fit.residuals).max() < 1e-7
    assert fit.slopes == pytest.approx([0.1, -0.08], abs=1e-10)


def test_arms_levelled_separately_get_a_height_unknown_each(wgs84):
    random = np.random.default_rng(4)
    along = np.linspace(0.0, 1500.0, 16)
    one = wgs84.forward(np.full(16, 48.0), np.full(16, 2.0), np.full(16, 20.0), along)
    two = wgs84.forward(np.full(16, 48.01), np.full(16, 2.02), np.full(16, 110.0), along)
    lat, lon = np.concatenate([one[0], two[0]]), np.concatenate([one[1], two[1]])
    arms = np.repeat([0, 1], 16)
    frame = plane_frame(lat, lon, wgs84)
    height = frame.plane(200.0, [1e-4, -2e-4]).heights(lat, lon, wgs84) + np.where(arms, 0.35, 0.0)
    covariance = levelled(np.full(32, 0.0005), arms, np.tile(along, 2), 0.0015)
    fit = fit_surface(frame, Heights(lat, lon, height, covariance, True, arms))
    assert fit.offsets == pytest.approx([0.35], abs=1e-8) and fit.slopes == pytest.approx([1e-4, -2e-4], abs=1e-11)
    assert fit.solution.freedom == 28
    noisy = fit_surface(frame, Heights(lat, lon, height + 0.001 * random.normal(size=32), covariance, True, arms))
    assert noisy.offsets[0] == pytest.approx(0.35, abs=5 * noisy.solution.deviations[3])


def surface(wgs84, blunders=(), number=30, sigma=0.003, seed=5):
    random = np.random.default_rng(seed)
    lat, lon = random_places(wgs84, random, number)
    frame = plane_frame(lat, lon, wgs84)
    height = frame.plane(100.0, [1e-4, 1e-4]).heights(lat, lon, wgs84) + random.normal(0.0, sigma, number)
    for row, size in blunders:
        height[row] += size
    return frame, Heights(lat, lon, height, independent(np.full(number, sigma)))


def test_robust_start_sees_a_settlement_that_hides_itself(wgs84):
    """Ten of 41 neighbours have settled by up to 30 mm: their own residuals swell the sigma that is estimated from
    all, so that none is suspected; from the robust start they are, and no station beside them."""
    random, settled = np.random.default_rng(1), np.arange(15, 25)
    lat, lon, _ = wgs84.forward(np.full(41, 50.0), np.full(41, 8.0), np.full(41, 30.0), np.linspace(0.0, 2000.0, 41))
    axis = Axis(AxisLine("a", lat[[0, -1]], lon[[0, -1]], wgs84))
    frame = line_frame(axis, 0.0, axis.length)
    height = frame.plane(100.0, [1e-4]).heights(lat, lon, wgs84) + random.normal(0.0, 0.003, 41)
    height[settled] -= 0.03 * np.sin(np.linspace(0.3, 2.8, 10))
    heights = Heights(lat, lon, height, independent(np.ones(41)), False)
    plain, robust = (fit_surface(frame, heights, remove=True, robust=flag) for flag in (False, True))
    assert np.all(plain.search.kept)
    aside = np.flatnonzero(~robust.search.kept)
    assert robust.robust and len(aside) >= 5 and set(aside) <= set(settled)
    assert np.sqrt(robust.solution.variance_factor) < 0.006 < np.sqrt(plain.solution.variance_factor)


@pytest.mark.parametrize("distance", [100.0, 500.0, 2000.0])
def test_robust_start_of_two_stations_weighs_nothing(wgs84, distance):
    """Both lie on the line to the last digit, as far to either side: no median departure to weigh them by."""
    lat, lon, _ = wgs84.forward(np.zeros(2), np.full(2, 8.0), np.array([0.0, 180.0]), np.full(2, distance))
    heights = Heights(lat, lon, np.full(2, 50.0), independent(np.full(2, 0.003)))
    found = fit_surface(Frame(0.0, 8.0, wgs84, 0.0), heights, remove=True, robust=True)
    assert np.all(found.search.kept) and found.residuals == pytest.approx(np.zeros(2), abs=2e-9)


def test_normals_of_many_surfaces(wgs84):
    """Against the cross product of what lies between three points of each surface: numpy's own."""
    frames = [Frame(-80.0 + 8.0 * k, 17.0 * k, wgs84, None) for k in range(20)]
    slopes = np.random.default_rng(2).uniform(-0.3, 0.3, (20, 2))
    fits = [SurfaceFit(frame, 100.0 * k, own, np.zeros(0), None) for k, (frame, own) in enumerate(zip(frames, slopes))]
    found = unit_normals(fits)
    for frame, (east, north), normal in zip(frames, slopes, found):
        across = np.cross(frame.directions[0] + east * frame.up, frame.directions[1] + north * frame.up)
        assert normal == pytest.approx(across / np.linalg.norm(across), abs=1e-15)


def test_robust_start_of_good_heights_ends_where_the_plain_one_does(wgs84):
    frame, heights = surface(wgs84)
    plain, robust = (fit_surface(frame, heights, remove=True, robust=flag) for flag in (False, True))
    assert np.all(robust.search.kept) and robust.slopes == pytest.approx(plain.slopes, abs=1e-15)


def test_fewer_stations_than_unknowns(wgs84):
    frame, heights = surface(wgs84, number=2)
    with pytest.raises(InputError, match=r"^A fit of 3 unknowns needs at least 3 stations .*; there are 2\.$"):
        fit_surface(frame, heights)


def test_all_at_one_place_or_on_one_line(wgs84):
    one = np.full(5, 50.0), np.full(5, 8.0)
    with pytest.raises(InputError, match="at one place"):
        check_spread(*one, wgs84)
    with pytest.raises(InputError, match="do not determine the fit"):
        fit_surface(plane_frame(*one, wgs84), Heights(*one, np.arange(5.0), independent(np.ones(5))))
    along = wgs84.forward(np.full(9, 50.0), np.full(9, 8.0), np.full(9, 65.0), np.linspace(0.0, 2000.0, 9))
    lat, lon = along[0].copy(), along[1].copy()
    with pytest.raises(InputError, match=r"on one line .* determines no plane; fit a line"):
        check_spread(lat, lon, wgs84)
    # 1/1000 of 2000 m is 2 m: 1.9 m aside is still one line, 2.1 m is not.
    for away, refused in ((1.9, True), (2.1, False)):
        aside = wgs84.forward(along[0][4], along[1][4], along[2][4] + 90.0, away)
        lat[4], lon[4] = aside[0], aside[1]
        if refused:
            with pytest.raises(InputError, match="1.9 m from it over 2000 m"):
                check_spread(lat, lon, wgs84)
        else:
            check_spread(lat, lon, wgs84)


def test_heights_that_are_none(wgs84):
    frame, heights = surface(wgs84)
    wild = Heights(heights.lat, heights.lon, np.where(np.arange(30) == 3, -1e15, heights.height), heights.covariance)
    with pytest.raises(InputError):
        fit_surface(frame, wild)


# The simulated surveys of the benchmark (2,000 of each kind there), a few of them. A share p of n simulated surveys has
# a binomial spread: the
# bounds hold a coverage of exactly 95 % with a chance of 99.99 %.
SURVEYS = 24


@pytest.fixture(scope="module")
def simulated():
    """{title: {name: count}} of the benchmark, in a process of its own: there the linear algebra has one thread."""
    command = [sys.executable, str(HONESTY), str(SURVEYS), "--json"]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    return json.loads(done.stdout)


def least(share):
    return stats.binom.ppf(0.00005, SURVEYS, share)


def titled(simulated, words):
    found = {title: counts for title, counts in simulated.items() if words in title}
    assert found, words
    return found


def test_intervals_and_ellipses_hold_the_truth(simulated):
    tallies = titled(simulated, "no removal")
    assert len(tallies) == 8
    for title, counts in tallies.items():
        assert len(counts) == (4 if "plane" in title else 3)
        for name, held in counts.items():
            # Holding the truth always would be as wrong, but 80 surveys cannot tell; the benchmark's 2,000 do.
            assert least(0.95) <= held, (title, name, held)


def test_verdict_on_shapes_and_smallest_blunders(simulated):
    """Of pure shapes 3.5 % (sigma unknown 1 %) are said not to fit, of waves 99 %; the smallest detectable blunder is
    found in 80 %. Bounds are those that chance passes once in 20,000 times."""
    for title, counts in titled(simulated, "pure shapes").items():
        share = 0.045 if "sigma known" in title else 0.017
        assert counts.get("shape does not fit", 0) <= stats.binom.ppf(0.99995, SURVEYS, share), title
    for title, counts in titled(simulated, "waves of 3 sd").items():
        assert counts["shape does not fit"] >= least(0.98), title
    for title, counts in titled(simulated, "smallest detectable blunder, sigma unknown").items():
        assert least(0.78) <= counts["found"] <= stats.binom.ppf(0.99995, SURVEYS, 0.82), title


def test_nominal_coverage_over_all_simulated_surveys(simulated):
    """Slopes and heights of all eight kinds together: 1,520 intervals, not quite independent, so with bounds twice as
    wide."""
    shares = [
        counts[name] / SURVEYS
        for counts in titled(simulated, "no removal").values()
        for name in counts
        if "level" not in name and "ellipse" not in name
    ]
    assert 0.95 - 0.035 < np.mean(shares) < 0.95 + 0.035


def test_both_ellipses_hold_the_truth_over_a_geoid_that_slopes_and_bends(simulated):
    """Heights above the geoid and ellipsoidal ones, points 1.5 km off included."""
    tallies = titled(simulated, "plane over a geoid that slopes and bends")
    assert len(tallies) == 8
    for title, counts in tallies.items():
        assert min(counts["tangent point"], counts["level point"]) >= least(0.95), title
        if "above the geoid" in title:
            assert counts["level point, bending left out"] < 0.4 * SURVEYS, title


def test_both_chainages_hold_the_truth_over_a_geoid_that_slopes_and_bends(simulated):
    tallies = titled(simulated, "line over a geoid that slopes and bends")
    assert len(tallies) == 4
    for title, counts in tallies.items():
        assert min(counts["tangent"], counts["level"]) >= least(0.95), title


def test_ignoring_the_correlation_makes_the_ellipse_lie(simulated):
    (counts,) = titled(simulated, "as if independent").values()
    assert counts["correlation regarded"] >= least(0.95)
    for name in ("from the residuals", "of the reading alone", "of each height"):
        assert counts[name] < 0.6 * SURVEYS, name


def test_the_curvature_factor_holds_the_truth(simulated):
    tallies = titled(simulated, "curvature factor")
    assert len(tallies) == 8
    for title, counts in tallies.items():
        assert least(0.95) <= counts["factor"], title
        assert counts["other shape's verdict"] == 0


def test_blunders_are_found_and_false_alarms_are_rare(simulated):
    for title, counts in titled(simulated, "one blunder").items():
        # A blunder of twice the smallest detectable is 8.26 standard deviations of its test, 5 beyond the limit: with
        # sigma known it is always found; with sigma unknown the limit is Student's, at 20 degrees of freedom and more.
        assert counts["found"] >= SURVEYS - 2, title
        assert counts["found, no other station flagged"] >= 0.8 * SURVEYS
    for title, counts in titled(simulated, "with removal").items():
        tests = SURVEYS * (53 if "plane" in title else 31)
        # One in a thousand each; one alarm can bring another, so twice that.
        assert counts["false alarms"] <= stats.binom.ppf(0.9999, tests, 0.002), title
