"""Straight designs as planes in space, against 50-digit arithmetic."""

import mpmath
import numpy as np
import pytest

from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.geodesy import Ellipsoid, foot_and_normal, position
from tautline.algorithms.core.plane import Plane, chord_plane, horizon_normal, inclined_plane


def _places(world, along, axis, dice):
    """Controls at both ends and five stations on and beside the axis, as floats that both sides are given."""
    lat, lon, azimuth, length = axis
    ends = [along(world.geodesic, lat, lon, azimuth, s)[:2] for s in (0.0, length)]
    stations = [
        along(world.geodesic, lat, lon, azimuth, share * length, dice.uniform(-100.0, 100.0))[:2]
        for share in (-0.1, 0.0, 0.3, 0.5, 1.0)
    ]
    return ends, np.array(stations)


def test_chord_to_1e8(world, along, exact, owed):
    dice, true, errors = world.dice(), exact(world.ellipsoid), []
    for axis in world.axes:
        ends, stations = _places(world, along, axis, dice)
        heights = [dice.uniform(-400.0, 4000.0) for _ in ends]
        heights[1] = heights[0] + dice.uniform(-0.01, 0.01) * axis[3]
        plane = chord_plane(*zip(*ends), heights, world.ellipsoid)
        a, b = ((*end, height) for end, height in zip(ends, heights))
        normal, point = true.chord_normal(a, b), true.position(*a)
        for station, height in zip(stations, plane.heights(*stations.T, world.ellipsoid)):
            errors.append(mpmath.mpf(float(height)) - true.height(point, normal, *station))
    owed("design height, chord, controls by position", errors, 1e-8)


@pytest.mark.parametrize("steepest", [0.0, 0.05])
def test_tangent_and_inclined_to_1e8(world, along, exact, owed, steepest):
    dice, true, errors = world.dice(), exact(world.ellipsoid), []
    for axis in world.axes:
        _, stations = _places(world, along, axis, dice)
        lat, lon, azimuth, _ = axis
        height, slope = dice.uniform(-400.0, 4000.0), dice.uniform(-steepest, steepest)
        plane = inclined_plane(lat, lon, height, azimuth, slope, world.ellipsoid)
        normal, point = true.inclined_normal(lat, lon, azimuth, slope), true.position(lat, lon, height)
        for station, found in zip(stations, plane.heights(*stations.T, world.ellipsoid)):
            errors.append(mpmath.mpf(float(found)) - true.height(point, normal, *station))
    name = "inclined" if steepest else "tangent"
    owed(f"design height, {name}, controls by position", errors, 1e-8)


def test_tilted_horizon_is_the_plane_normal(wgs84, exact):
    """The geoid rises to the east by 20 arc seconds: the horizon's normal leans west by as much."""
    slope = float(np.tan(np.radians(20.0 / 3600.0)))
    plane = inclined_plane(45.0, 0.0, 100.0, 90.0, 0.0, wgs84, (slope, 0.0))
    true = exact(wgs84)
    normal = true.inclined_normal(45.0, 0.0, 90.0, slope)
    size = mpmath.sqrt(true.dot(normal, normal))
    assert np.allclose(plane.normal, [float(n / size) for n in normal], rtol=0.0, atol=1e-15)
    assert np.allclose(horizon_normal(45.0, 0.0, (slope, 0.0)), plane.normal, rtol=0.0, atol=1e-15)


def test_slope_counts_against_the_tilted_horizon(wgs84, along):
    """A design that rises by the geoid's own slope and one that rises by nothing differ by slope times distance."""
    level = inclined_plane(45.0, 0.0, 0.0, 90.0, 0.0, wgs84, (1e-4, 0.0))
    rising = inclined_plane(45.0, 0.0, 0.0, 90.0, 1e-4, wgs84)
    from geographiclib.geodesic import Geodesic

    lat, lon, _ = along(Geodesic.WGS84, 45.0, 0.0, 90.0, 1000.0)
    assert level.heights(lat, lon, wgs84)[0] == pytest.approx(rising.heights(lat, lon, wgs84)[0], abs=1e-6)


def test_level_across_at_the_chord_middle(wgs84):
    """Two points either side of the middle, 100 m apart, have one design height to their curvature's 0.8 mm."""
    from geographiclib.geodesic import Geodesic

    line = Geodesic.WGS84.Direct(50.0, 8.0, 60.0, 3000.0)
    middle = Geodesic.WGS84.Direct(50.0, 8.0, 60.0, 1500.0)
    plane = chord_plane((50.0, line["lat2"]), (8.0, line["lon2"]), (100.0, 130.0), wgs84)
    sides = [
        Geodesic.WGS84.Direct(middle["lat2"], middle["lon2"], middle["azi2"] + turn, 100.0) for turn in (90.0, -90.0)
    ]
    left, right = (plane.heights(side["lat2"], side["lon2"], wgs84)[0] for side in sides)
    assert left == pytest.approx(right, abs=2e-6)
    between = plane.heights(middle["lat2"], middle["lon2"], wgs84)[0]
    assert left - between == pytest.approx(100.0**2 / 2.0 / 6.385e6, abs=2e-6)


def test_normal_is_turned_away_from_the_earth_and_has_unit_length(wgs84):
    foot, up = foot_and_normal(20.0, 30.0, wgs84)
    assert np.allclose(Plane(foot, -5.0 * up).normal, up, rtol=0.0, atol=1e-15)


def test_many_longitudes_with_one_latitude(wgs84):
    """More points than a chunk holds, on one parallel given once."""
    lon = np.linspace(8.0, 8.01, 9000)
    plane = inclined_plane(50.0, 8.0, 0.0, 0.0, 0.0, wgs84)
    assert np.array_equal(plane.heights(50.0, lon, wgs84), plane.heights(np.full(9000, 50.0), lon, wgs84))


def test_plane_that_does_not_pass_over_a_point_gives_nan(wgs84):
    plane = inclined_plane(0.0, 0.0, 0.0, 0.0, 0.0, wgs84)
    heights = plane.heights([0.0, 0.0], [10.0, 170.0], wgs84)
    assert np.isfinite(heights[0]) and np.isnan(heights[1])


@pytest.mark.parametrize(
    "point, normal", [((0, 0, np.nan), (0, 0, 1)), ((1, 0, 0), (0, 0, 0)), ((1, 0, 0), (np.inf, 0, 0))]
)
def test_no_plane(point, normal):
    with pytest.raises(InputError, match="not defined"):
        Plane(point, normal)


def test_chord_of_one_place(wgs84):
    with pytest.raises(InputError, match="different places"):
        chord_plane((50.0, 50.0), (8.0, 8.0), (1.0, 1.0005), wgs84)


def test_ring_plane():
    """ST-RING: plane of a 27 km ring tilted 1.4 %: height range 120.5 m, tolerance 1.0 m.

    Source: ring plane gradient 1.4 % (cds.cern.ch bulletin 2004/31); 1.42 % and 26 659 m from memory; computed. Both
    the highest and the lowest point lie r^2/2R = 1.41 m higher above the level surface than on a flat Earth.
    """
    earth, radius = Ellipsoid(6371000.0, 0.0), 26659.0 / (2.0 * np.pi)
    plane = inclined_plane(46.0, 6.0, 400.0, 30.0, 0.0142, earth)
    lat, lon, _ = earth.forward(46.0, 6.0, np.array([30.0, 210.0, 120.0, 300.0]), radius)
    high, low, left, right = plane.heights(lat, lon, earth)
    assert high - low == pytest.approx(120.5, abs=1.0)
    assert 0.5 * (high + low) - 400.0 == pytest.approx(1.41, abs=0.005)
    assert left - 400.0 == pytest.approx(1.41, abs=0.005) and right == pytest.approx(left, abs=1e-6)


def test_position_is_point_of_the_plane(wgs84):
    plane = inclined_plane(-33.0, 151.0, 25.0, 45.0, 0.01, wgs84)
    assert np.linalg.norm(plane.point - position(-33.0, 151.0, 25.0, wgs84)) == 0.0
    assert plane.heights(-33.0, 151.0, wgs84)[0] == pytest.approx(25.0, abs=2e-9)
