"""Tangent points and level points with their ellipses: against geographiclib, differences and simulated slopes."""

import numpy as np
import pytest
from geographiclib.geodesic import Geodesic
from scipy import stats

from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.covariance import independent
from tautline.algorithms.core.fit import Heights, fit_surface, line_frame, plane_frame
from tautline.algorithms.core.geodesy import east_north, foot_and_normal
from tautline.algorithms.core.geoid_slope import GeoidSlope
from tautline.algorithms.core.tangent_point import Ellipse, line_places, places_of_lines, plane_points, shift_by_slopes

SECOND = np.pi / 180 / 3600


@pytest.mark.parametrize("lat, lon", [(50.0, 8.0), (-31.2, 22.4), (89.99, 10.0), (0.0, 180.0), (-5.0, -179.99)])
@pytest.mark.parametrize("azimuth", [0.0, 37.0, 90.0, 151.0])
def test_outline_is_true_on_the_ellipsoid(wgs84, lat, lon, azimuth):
    """Every point of the outline satisfies the equation of the ellipse in polar coordinates about the centre
    (geographiclib)."""
    ellipse, geodesic = Ellipse(900.0, 250.0, azimuth), Geodesic(wgs84.a, wgs84.f)
    out_lat, out_lon = ellipse.outline(lat, lon, wgs84)
    assert len(out_lat) == 181 and out_lat[0] == out_lat[-1] and out_lon[0] == out_lon[-1]
    distances = []
    for a, b in zip(out_lat, out_lon):
        line = geodesic.Inverse(lat, lon, a, b)
        turn = np.radians(line["azi1"] - azimuth)
        distances.append(line["s12"])
        assert (line["s12"] * np.cos(turn) / 900.0) ** 2 + (line["s12"] * np.sin(turn) / 250.0) ** 2 == pytest.approx(
            1.0, abs=1e-7
        )
    assert max(distances) == pytest.approx(900.0, abs=1e-5) and min(distances) == pytest.approx(250.0, abs=1e-5)


def arms(wgs84, lat0, lon0, turn=70.0, length=2400.0, number=21, azimuth=20.0):
    along = np.linspace(0.0, length, number)
    parts = [
        wgs84.forward(np.full(number, lat0), np.full(number, lon0), np.full(number, a), along)[:2]
        for a in (azimuth, azimuth + turn)
    ]
    return np.concatenate([parts[0][0], parts[1][0][1:]]), np.concatenate([parts[0][1], parts[1][1][1:]])


def plane_fit(wgs84, lat, lon, slopes=(1e-4, -1.5e-4), errors=0.0, known=True, sigma=0.003):
    frame = plane_frame(lat, lon, wgs84)
    height = frame.plane(500.0, slopes).heights(lat, lon, wgs84) + errors
    return fit_surface(frame, Heights(lat, lon, height, independent(np.full(len(lat), sigma)), known))


@pytest.mark.parametrize("lat0, lon0", [(48.0, 11.0), (-31.26, 22.4), (89.95, 0.0), (0.0, 179.999), (-75.0, -100.0)])
def test_how_the_tangent_point_moves_with_the_slopes(wgs84, lat0, lon0):
    """The Jacobian against finite differences of the tangent point, measured by geographiclib."""
    geodesic = Geodesic(wgs84.a, wgs84.f)
    frame = plane_fit(wgs84, *arms(wgs84, lat0, lon0)).frame
    slopes = np.array([1e-4, -1.5e-4])

    def at(g):
        n = frame.normal(g)
        return np.degrees(np.arctan2(n[2], np.hypot(n[0], n[1]))), np.degrees(np.arctan2(n[1], n[0]))

    jacobian = shift_by_slopes(frame, frame.normal(slopes), *at(slopes))
    for k in range(2):
        step = np.eye(2)[k] * 2e-6
        line = geodesic.Inverse(*at(slopes - step), *at(slopes + step))
        middle = np.radians(geodesic.Direct(*at(slopes - step), line["azi1"], line["s12"] / 2)["azi2"])
        shift = line["s12"] * np.array([np.sin(middle), np.cos(middle)]) / 4e-6
        assert jacobian[:, k] == pytest.approx(shift, rel=1e-5, abs=5.0)
    # A second of arc moves it by about 31 m (R times one second).
    assert np.linalg.norm(jacobian[:, 0]) * SECOND == pytest.approx(31.0, abs=0.2)


def test_spread_of_simulated_tangent_points(wgs84):
    """The covariance against the scatter of 2,000 tangent points fitted to simulated errors, by one linear
    step each.
    """
    lat, lon = arms(wgs84, 48.0, 11.0)
    fit = plane_fit(wgs84, lat, lon)
    found, solution = plane_points(fit, lat, lon).tangent, fit.solution
    random = np.random.default_rng(1)
    errors = random.normal(0.0, 0.003, (2000, len(lat)))
    slopes = (solution.cofactors @ solution.design.T @ (errors / 0.003**2).T)[1:3].T + fit.slopes
    n = fit.frame.up - slopes @ fit.frame.directions
    north = (np.arctan2(n[:, 2], np.hypot(n[:, 0], n[:, 1])) - np.radians(found.lat)) * wgs84.radius_meridian(48.0)
    parallel = wgs84.radius_across(48.0) * np.cos(np.radians(found.lat))
    east = (np.arctan2(n[:, 1], n[:, 0]) - np.radians(found.lon)) * parallel
    sampled = np.cov(east, north)
    assert np.sqrt(np.diag(sampled)) == pytest.approx(np.sqrt(np.diag(found.covariance)), rel=0.06)
    correlation = found.covariance[0, 1] / np.sqrt(np.prod(np.diag(found.covariance)))
    assert np.corrcoef(east, north)[0, 1] == pytest.approx(correlation, abs=0.06)
    turn = np.radians(found.ellipse.azimuth)
    along, aside = north * np.cos(turn) + east * np.sin(turn), east * np.cos(turn) - north * np.sin(turn)
    inside = (along / found.ellipse.semi_a) ** 2 + (aside / found.ellipse.semi_b) ** 2 <= 1.0
    assert stats.binom.ppf(0.0005, 2000, 0.95) <= inside.sum() <= stats.binom.ppf(0.9995, 2000, 0.95)


def above(sigma, bending=0.0):
    """Heights above a geoid of which no slope is known."""
    return GeoidSlope(False, sigma=sigma, bending=bending)


def test_the_slope_widens_the_ellipse_of_the_point_that_needs_it(wgs84):
    lat, lon = arms(wgs84, 48.0, 11.0, length=3000.0)
    precise = plane_points(plane_fit(wgs84, lat, lon, sigma=1e-6), lat, lon, above(4.0))
    # With heights without error, 4 seconds of each component are all: a circle of 2.45 x 4 x 31 m.
    assert precise.tangent.ellipse.semi_a == pytest.approx(2.4477 * 4 * 31.0, rel=0.01)
    assert precise.tangent.ellipse.semi_b == pytest.approx(precise.tangent.ellipse.semi_a, rel=0.01)
    assert precise.level.ellipse.semi_a < 1.0
    # Ellipsoidal heights: the other one.
    bare = plane_points(plane_fit(wgs84, lat, lon, sigma=1e-6), lat, lon, GeoidSlope(True, sigma=4.0))
    assert bare.level.ellipse.semi_a == pytest.approx(precise.tangent.ellipse.semi_a, rel=1e-6)
    assert bare.tangent.ellipse.semi_a < 1.0
    # The geoid's share is stated beforehand, so it does not grow where sigma is estimated from four stations too many.
    few = [0, 7, 14, 20, 27, 34, 40]
    errors = 1e-7 * np.array([1.0, -1.0, 1.0, -1.0, 1.0, -1.0, 1.0])
    estimated = plane_points(
        plane_fit(wgs84, lat[few], lon[few], errors=errors, known=False), lat[few], lon[few], above(4.0)
    )
    assert estimated.tangent.ellipse.semi_a == pytest.approx(precise.tangent.ellipse.semi_a, rel=0.001)
    rough = plane_points(plane_fit(wgs84, lat, lon, sigma=0.01), lat, lon, above(4.0))
    # Variances add: the sum of squares of both semi-axes is that of either share.
    shares = [e.semi_a**2 + e.semi_b**2 for e in (rough.tangent.ellipse, rough.level.ellipse, precise.tangent.ellipse)]
    assert shares[0] == pytest.approx(shares[1] + shares[2], rel=1e-3)


def test_bending_moves_the_level_point_by_its_distance(wgs84):
    """Stations all around their centre, heights without error: a geoid whose slope changes by k per metre turns the
    horizon at a point d away by k d, which moves it by R k d (the fit takes nothing of it, for reasons of symmetry)."""
    turn, far = np.arange(0.0, 360.0, 30.0), np.repeat([500.0, 1000.0], 12)
    lat, lon, _ = wgs84.forward(np.full(24, 48.0), np.full(24, 11.0), np.tile(turn, 2), far)
    fit = plane_fit(wgs84, lat, lon, slopes=(1500.0 / wgs84.radius_across(48.0), 0.0), sigma=1e-7)
    found, k = plane_points(fit, lat, lon, above(0.0, 6e-9)), 6e-9
    # 1.5 km to the west: d2N/de2 moves it along, d2N/dedn across, both by R k d.
    assert found.level.distance == pytest.approx(500.0, abs=2.0)
    for size in (found.level.ellipse.semi_a, found.level.ellipse.semi_b):
        assert size == pytest.approx(2.4477 * 6.38e6 * k * 1500.0, rel=0.01)
    assert found.tangent.ellipse.semi_a < 0.1
    bare = plane_points(fit, lat, lon, GeoidSlope(True, bending=k))
    assert bare.level.ellipse.semi_a == pytest.approx(found.level.ellipse.semi_a, rel=1e-3)


@pytest.mark.parametrize("lat0, lon0", [(48.0, 11.0), (-31.26, 22.4), (89.9, 0.0), (0.0, 179.999)])
def test_level_point_over_a_known_geoid(wgs84, lat0, lon0):
    """There the plane's height less N is least: against the vertex of a parabola through heights around it."""
    lat, lon = arms(wgs84, lat0, lon0)
    fit = plane_fit(wgs84, lat, lon)
    origin = foot_and_normal(lat0, lon0, wgs84)[0]
    basis = np.stack(east_north(lat0, lon0))
    slope, second = np.array([4e-5, -7e-5]), np.array([[6e-9, -2e-9], [-2e-9, 3e-9]])

    def undulation(at_lat, at_lon):
        x = (foot_and_normal(at_lat, at_lon, wgs84)[0] - origin) @ basis.T
        return x @ slope + 0.5 * np.sum(x @ second * x, axis=-1)

    def rise(at_lat, at_lon):
        x = (foot_and_normal(at_lat, at_lon, wgs84)[0] - origin) @ basis.T
        vector = (slope + second @ x) @ basis
        return tuple(float(vector @ side) for side in east_north(at_lat, at_lon))

    found = plane_points(fit, lat, lon, GeoidSlope(True, known=rise)).level
    turn = np.arange(0.0, 360.0, 45.0)
    at_lat, at_lon, _ = wgs84.forward(np.full(8, found.lat), np.full(8, found.lon), turn, np.full(8, 500.0))
    height = fit.plane.heights(at_lat, at_lon, wgs84) - undulation(at_lat, at_lon)
    # Opposite heights are equal, but for h/R of the slope: 500 m up a metre of the plane is longer than one of the
    # ellipsoid, which is 6 micrometres here and 4 cm of the point.
    assert height[:4] == pytest.approx(height[4:], abs=8e-6)
    # The same place, said otherwise: heights above that geoid with the undulations applied, from which N went in.
    other = plane_points(fit, lat, lon, GeoidSlope(False, applied=rise, known=rise))
    assert (other.level.lat, other.level.lon) == (found.lat, found.lon)
    bare = plane_points(fit, lat, lon)
    assert (other.tangent.lat, other.tangent.lon) == (bare.tangent.lat, bare.tangent.lon)
    # Heights above the geoid without undulations are level where they are least; the slope moves the tangent point.
    without = plane_points(fit, lat, lon, GeoidSlope(False, known=rise))
    assert (without.level.lat, without.level.lon) == (bare.tangent.lat, bare.tangent.lon)
    line = Geodesic(wgs84.a, wgs84.f).Inverse(
        without.level.lat, without.level.lon, without.tangent.lat, without.tangent.lon
    )
    assert line["s12"] == pytest.approx(6.38e6 * np.hypot(*rise(without.tangent.lat, without.tangent.lon)), rel=0.01)


def test_how_the_level_point_moves_where_the_geoid_bends(wgs84):
    """The Jacobian against finite differences: over a geoid that bends by a tenth of the Earth's curvature the level
    point moves a tenth farther."""
    lat, lon = arms(wgs84, 48.0, 11.0)
    fit, bend = plane_fit(wgs84, lat, lon), 0.1 / 6.38e6
    origin, basis = foot_and_normal(48.0, 11.0, wgs84)[0], np.stack(east_north(48.0, 11.0))

    def rise(at_lat, at_lon):
        x = (foot_and_normal(at_lat, at_lon, wgs84)[0] - origin) @ basis.T
        vector = bend * x @ basis
        return tuple(float(vector @ side) for side in east_north(at_lat, at_lon))

    at = {}
    for name, more in (("more", 2e-6), ("less", -2e-6)):
        moved = plane_fit(wgs84, lat, lon, slopes=(1e-4 + more, -1.5e-4))
        found = plane_points(moved, lat, lon, GeoidSlope(True, known=rise)).level
        at[name] = found.lat, found.lon
    line = Geodesic(wgs84.a, wgs84.f).Inverse(*at["less"], *at["more"])
    found = plane_points(fit, lat, lon, GeoidSlope(True, known=rise)).level
    jacobian = shift_by_slopes(fit.frame, fit.frame.normal(fit.slopes), found.lat, found.lon, rise)
    assert np.linalg.norm(jacobian[:, 0]) == pytest.approx(line["s12"] / 4e-6, rel=1e-4)
    assert np.linalg.norm(jacobian[:, 0]) == pytest.approx(6.38e6 / 0.9, rel=0.01)


def test_sigma_unknown_takes_fishers_quantile(wgs84):
    lat, lon = arms(wgs84, 48.0, 11.0, number=4)
    errors = np.random.default_rng(3).normal(0.0, 0.003, len(lat))
    known, unknown = (
        plane_points(plane_fit(wgs84, lat, lon, errors=errors, known=flag), lat, lon).tangent for flag in (True, False)
    )
    factor = plane_fit(wgs84, lat, lon, errors=errors).solution.variance_factor
    ratio = np.sqrt(2 * stats.f.ppf(0.95, 2, 4) * factor / stats.chi2.ppf(0.95, 2))
    assert unknown.ellipse.semi_a / known.ellipse.semi_a == pytest.approx(ratio, rel=1e-6)


def test_poorly_determined(wgs84):
    """An arm of 5 m beside one of 2.4 km: 10 mm there are 400 seconds across. The ellipse is longer than ten extents:
    none."""
    along = np.linspace(0.0, 2400.0, 21)
    first = wgs84.forward(np.full(21, 48.0), np.full(21, 11.0), np.full(21, 20.0), along)
    second = wgs84.forward(np.full(3, 48.0), np.full(3, 11.0), np.full(3, 110.0), [1.5, 2.5, 5.0])
    lat, lon = np.concatenate([first[0], second[0]]), np.concatenate([first[1], second[1]])
    both = plane_points(plane_fit(wgs84, lat, lon, sigma=0.01), lat, lon, above(4.0))
    assert both.extent == pytest.approx(2400.0, abs=0.01)
    for found in (both.tangent, both.level):
        assert not found.well_determined and found.ellipse is None
    # With heights three times as good it is given, 9 km long; so is one far away but well determined.
    assert plane_points(plane_fit(wgs84, lat, lon), lat, lon).tangent.well_determined
    lat, lon = arms(wgs84, 48.0, 11.0)
    far = plane_points(plane_fit(wgs84, lat, lon, slopes=(0.004, 0.0)), lat, lon).tangent
    assert far.well_determined and far.distance == pytest.approx(0.004 * wgs84.radius_across(48.0), rel=0.15)
    # On 60 m a slope known to 8 seconds leaves the tangent point to 600 m, while the heights know where it is level.
    lat, lon = arms(wgs84, 48.0, 11.0, length=40.0)
    short = plane_points(plane_fit(wgs84, lat, lon, sigma=1e-5), lat, lon, above(8.0))
    assert short.level.well_determined and not short.tangent.well_determined


def test_without_freedom_and_sigma_there_is_no_ellipse(wgs84):
    lat, lon = (values[[0, 20, 40]] for values in arms(wgs84, 48.0, 11.0))
    assert not plane_points(plane_fit(wgs84, lat, lon, known=False), lat, lon).tangent.well_determined
    assert plane_points(plane_fit(wgs84, lat, lon), lat, lon).tangent.well_determined


@pytest.mark.parametrize("lat0, azimuth, height0", [(48.0, 33.0, 500.0), (-60.0, 200.0, 0.0), (5.0, 91.0, 3000.0)])
def test_places_of_a_line(wgs84, lat0, azimuth, height0):
    """A line of slope g is level R g before its middle; standard deviation R times that of the slope
    (Euler's radius).
    """
    along = np.linspace(0.0, 3000.0, 31)
    lat, lon, _ = wgs84.forward(np.full(31, lat0), np.full(31, 20.0), np.full(31, azimuth), along)
    axis = Axis(AxisLine("line", lat[[0, -1]], lon[[0, -1]], wgs84), height0)
    frame = line_frame(axis, 0.0, axis.length)
    height = frame.plane(height0, [2e-4]).heights(lat, lon, wgs84)
    fit = fit_surface(frame, Heights(lat, lon, height, independent(np.full(31, 0.003))))
    middle, radius = 0.5 * axis.length, wgs84.euler_radius(frame.lat, frame.azimuth)
    places = line_places(fit, axis, middle, lat, lon, above(4.0))
    found = places.level
    # 0.3 m: the radius of curvature changes by 2e-4 over these 1.3 km.
    assert found.chainage == pytest.approx(middle - 2e-4 * radius * (1 + height0 / radius), abs=0.3)
    # Slope of n equally spaced heights: sigma sqrt(12 / n) / L for large n, exactly sqrt(12 (n - 1) / (n (n + 1))).
    sd = 0.003 * np.sqrt(12 * 30 / (31 * 32)) / axis.length
    assert found.sd == pytest.approx(sd * (radius + height0), rel=1e-3)
    assert places.tangent.sd == pytest.approx(np.hypot(found.sd, 4 * SECOND * (radius + height0)), rel=1e-3)
    # Bending k turns the horizon by k d at a distance d from the middle.
    bent = line_places(fit, axis, middle, lat, lon, above(0.0, 6e-9))
    away = found.chainage - middle
    assert bent.level.sd == pytest.approx(np.hypot(found.sd, 6e-9 * away * (radius + height0)), rel=1e-3)
    # Nowhere along the axis is the height above the ellipsoid less.
    near_lat, near_lon, _ = axis.place(found.chainage + np.array([-200.0, 0.0, 200.0]))
    near = fit.plane.heights(near_lat, near_lon, wgs84)
    assert near[0] - near[1] == pytest.approx(near[2] - near[1], abs=1e-5) and near[1] < near[0]
    assert found.height == pytest.approx(near[1], abs=1e-6)


@pytest.mark.parametrize("azimuth", [33.0, 250.0])
def test_a_line_over_a_sloping_geoid(wgs84, azimuth):
    """80 microradians ahead are 510 m of chainage; there the line rises by as much against the ellipsoid."""
    along = np.linspace(0.0, 3000.0, 31)
    lat, lon, _ = wgs84.forward(np.full(31, 48.0), np.full(31, 20.0), np.full(31, azimuth), along)
    axis = Axis(AxisLine("line", lat[[0, -1]], lon[[0, -1]], wgs84), 0.0)
    frame = line_frame(axis, 0.0, axis.length)
    fit = fit_surface(
        frame, Heights(lat, lon, frame.plane(0.0, [0.0]).heights(lat, lon, wgs84), independent(np.full(31, 0.003)))
    )
    turn = np.radians(azimuth)
    ahead, aside = np.array([np.sin(turn), np.cos(turn)]), np.array([np.cos(turn), -np.sin(turn)])

    def rise(lat, lon):
        return tuple(8e-5 * ahead + 3e-5 * aside)

    found = line_places(fit, axis, 1500.0, lat, lon, GeoidSlope(True, known=rise))
    assert found.tangent.chainage == pytest.approx(1500.0, abs=1e-4)
    near_lat, near_lon, _ = axis.place(found.level.chainage + np.array([-50.0, 50.0]))
    low, high = fit.plane.heights(near_lat, near_lon, wgs84)
    assert (high - low) / 100.0 == pytest.approx(8e-5, rel=3e-4)
    assert found.level.chainage == pytest.approx(1500.0 + 8e-5 * 6.38e6, abs=3.0)


def test_many_lines_at_once(wgs84):
    """Each line's places are those that it has alone, whichever geoid it has and whoever shares it."""
    lines = []

    def bending(lat, lon):
        return 1e-5 + 0.0 * lat, 3e-5 * (lon - 20.0)

    above_bent = GeoidSlope(False, bending, bending, 4.0, 2e-9)
    for k, geoid in enumerate([above(4.0), above_bent, GeoidSlope(True, known=bending, sigma=2.0), above_bent]):
        lat, lon, _ = wgs84.forward(
            np.full(21, 40.0 + k), np.full(21, 20.0), np.full(21, 50.0 * k), np.linspace(0, 2e3, 21)
        )
        axis = Axis(AxisLine(f"{k}", lat[[0, -1]], lon[[0, -1]], wgs84), 100.0 * k)
        frame = line_frame(axis, 0.0, axis.length)
        height = frame.plane(100.0 * k, [1e-4 * (k - 1)]).heights(lat, lon, wgs84)
        fit = fit_surface(frame, Heights(lat, lon, height, independent(np.full(21, 0.003))))
        lines.append((fit, axis, 0.5 * axis.length, (lat, lon), geoid))
    for one, found in zip(lines, places_of_lines(*zip(*lines))):
        fit, axis, middle, stations, geoid = one
        alone = line_places(fit, axis, middle, *stations, geoid)
        for name in ("tangent", "level"):
            expected, value = vars(getattr(alone, name)), vars(getattr(found, name))
            assert value == pytest.approx(expected, rel=1e-9, abs=1e-6)
