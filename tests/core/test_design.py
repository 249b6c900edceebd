"""Designs of one axis: controls, heights, curvature effect, undulations; against 50 digits and published places."""

import mpmath
import numpy as np
import pytest
from geographiclib.geodesic import Geodesic

from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.controls import DesignStations, resolved_controls
from tautline.algorithms.core.design import DesignSpec, design_heights, designs_heights, middle_radius, straight_plane
from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.geodesy import Ellipsoid, foot_and_normal, position
from tautline.algorithms.core.plane import Plane, chord_plane
from tautline.algorithms.core.undulations import ConstantUndulation, StationUndulations, SurfaceUndulation

FOOT = 0.3048
SPHERE = Ellipsoid(6371000.0, 0.0)


def straight_axis(ellipsoid, length=3000.0, lat=45.0, lon=7.0, azimuth=60.0, **options):
    end = ellipsoid.forward(lat, lon, azimuth, length)
    return Axis(AxisLine("arm", [lat, end[0]], [lon, end[1]], ellipsoid), **options)


def bent_axis(ellipsoid, turn, **options):
    corner = ellipsoid.forward(45.0, 7.0, 60.0, 1000.0)
    end = ellipsoid.forward(*corner[:2], corner[2] + turn, 1000.0)
    return Axis(AxisLine("bent", [45.0, corner[0], end[0]], [7.0, corner[1], end[1]], ellipsoid), **options)


def stations_on(axis, chainage, height=np.nan, offset=0.0, undulation=0.0):
    chainage = np.asarray(chainage, float)
    full = np.zeros(len(chainage))
    lat, lon, _ = axis.place(chainage, full + offset)
    return DesignStations(axis, lat, lon, chainage, full + offset, full + height, full + undulation)


# Published places ---------------------------------------------------------------------------------------------------


def _geographic(true, xyz):
    """Latitude, longitude (degrees) and height of a position, with 50 digits, by Newton steps on the normal's foot."""
    a, f = mpmath.mpf(true.a), mpmath.mpf(true.f)
    e2, p = f * (2 - f), mpmath.hypot(xyz[0], xyz[1])
    phi = mpmath.atan2(xyz[2], p * (1 - e2))
    for _ in range(30):
        nu = a / mpmath.sqrt(1 - e2 * mpmath.sin(phi) ** 2)
        phi = mpmath.atan2(xyz[2] + e2 * nu * mpmath.sin(phi), p)
    nu = a / mpmath.sqrt(1 - e2 * mpmath.sin(phi) ** 2)
    height = p * mpmath.cos(phi) + xyz[2] * mpmath.sin(phi) - a * a / nu
    return mpmath.degrees(phi), mpmath.degrees(mpmath.atan2(xyz[1], xyz[0])), height


# ST-V1-X, ST-V1-Y, ST-G1-X, ST-G1-Y, ST-K1-X. Source: geometry as packaged in PyPI bilby 2.8.2, gw/detector/detectors
# (V1, GEO600, K1; azimuths there run counter-clockwise from east); heights computed from it with 30 digits.
V1, G1 = (43.63141447207, 10.5044966112, 51.88399887), (52.24514666663, 9.807192777776, 114.4250031)
K1 = (36.41186033946, 137.3059560115, 414.1809998)
ARMS = {
    "V1 X": (V1, 19.432600236, 0.0, 3000.0, [51.88399887, 51.92816235, 52.06065271, 52.28146985, 52.59061366]),
    "V1 Y": (V1, 289.43259921, 0.0, 3000.0, [51.88399887, 51.92804133, 52.06016868, 52.28038089, 52.58867791]),
    "G1 X": (G1, 68.388300423, 0.0, 600.0, [114.4250031, 114.4267638, 114.4320459, 114.4408495, 114.4531745]),
    "G1 Y": (G1, 334.05690249, 0.0, 600.0, [114.4250031, 114.4267668, 114.4320579, 114.4408764, 114.4532224]),
    "K1 X": (
        K1,
        60.396227774,
        0.00314139994,
        3026.50708,
        [414.1809998, 416.6027332, 419.1142065, 421.7154197, 424.4063726],
    ),
}


@pytest.mark.parametrize(
    "arm, kind",
    [(arm, kind) for arm in ARMS for kind in ("tangent", "inclined") if kind == "inclined" or ARMS[arm][2] == 0.0],
)
def test_published_arms(arm, kind, wgs84, exact, owed):
    """Points of a straight line from the vertex: the design has their heights, as printed and with 50 digits."""
    vertex, azimuth, altitude, length, printed = ARMS[arm]
    true = exact(wgs84)
    up, slope = true.normal(*vertex[:2]), mpmath.tan(mpmath.mpf(altitude))
    # The plane rising by tan(altitude) has normal u - slope ahead; the line is ahead cos + u sin.
    ahead = tuple(u - n for u, n in zip(up, true.inclined_normal(*vertex[:2], azimuth, 1.0)))
    line = tuple(mpmath.cos(altitude) * t + mpmath.sin(altitude) * u for t, u in zip(ahead, up))
    points = [
        _geographic(true, [p + k * mpmath.mpf(length) / 4 * d for p, d in zip(true.position(*vertex), line)])
        for k in range(5)
    ]
    lat, lon = (np.array([float(p[k]) for p in points]) for k in (0, 1))
    axis = Axis(AxisLine(arm, lat[[0, -1]], lon[[0, -1]], wgs84), chainage_height=vertex[2])
    chainage = axis.length * np.arange(5) / 4.0
    stations = DesignStations(axis, lat, lon, chainage, np.zeros(5), np.full(5, np.nan), np.zeros(5))
    spec = DesignSpec(kind, 0.0, vertex[2], slope=float(slope) if kind == "inclined" else None)
    found = design_heights(spec, stations).design_h
    assert np.allclose(found, printed, rtol=0.0, atol=1e-6)
    owed("published arms, 50 digits", [float(mpmath.mpf(float(h)) - p[2]) for h, p in zip(found, points)], 1e-8)


# ST-V1-GPS-NE. Source: site page 'Location of ...' (2015-12-10), copy workarea.ego-gw.it/ego2/virgo/data-analysis/
# location-of-virgo: GPS positions of tower centres, WGS 84; azimuth published, the heights computed from the positions.
BS = (43.0 + 37.0 / 60.0 + 53.0880 / 3600.0, 10.0 + 30.0 / 60.0 + 16.1885 / 3600.0, 53.238)
NE = (43.0 + 39.0 / 60.0 + 24.9479 / 3600.0, 10.0 + 31.0 / 60.0 + 00.8264 / 3600.0, 53.069)


def _gps_stations(ellipsoid, chainage_height):
    axis = Axis(AxisLine("NE", [BS[0], NE[0]], [BS[1], NE[1]], ellipsoid), chainage_height)
    lat, lon, _ = axis.place(0.5 * axis.length)
    return DesignStations(
        axis,
        np.array([BS[0], lat[0], NE[0]]),
        np.array([BS[1], lon[0], NE[1]]),
        np.array([0.0, 0.5, 1.0]) * axis.length,
        np.zeros(3),
        np.array([BS[2], np.nan, NE[2]]),
        np.zeros(3),
    )


@pytest.mark.parametrize("chainage_height", [0.0, 53.0, 2000.0])
def test_published_gps_positions(wgs84, chainage_height):
    stations = _gps_stations(wgs84, chainage_height)
    tangent = design_heights(DesignSpec("tangent", 0.0), stations)
    assert tangent.design_h[2] == pytest.approx(53.9476323, abs=1e-6)
    assert stations.height[2] - tangent.design_h[2] == pytest.approx(-0.8786323, abs=1e-6)
    assert stations.height[0] == pytest.approx(tangent.design_h[0], abs=2e-9) and tangent.controls[0].station == 0
    chord = design_heights(DesignSpec("chord"), stations)
    assert chord.design_h[1] == pytest.approx(52.976092, abs=1e-6)
    assert (chord.design_h - chord.flat_h)[1] == pytest.approx(-0.177408, abs=1e-6)
    level = design_heights(DesignSpec("level", 0.0), stations)
    assert stations.height[2] - level.design_h[2] == pytest.approx(-0.169, abs=1e-6)


def test_published_gps_azimuth_and_length(wgs84):
    assert AxisLine("NE", [BS[0], NE[0]], [BS[1], NE[1]], wgs84).azimuths[0] == pytest.approx(19.432768, abs=1.5e-5)
    assert np.linalg.norm(position(*NE, wgs84) - position(*BS, wgs84)) == pytest.approx(3006.399135, abs=1e-6)


def test_level_rails_of_a_towing_basin():
    """ST-TANK: rails 3200 ft long that follow the level surface lie 18.67 mm above their chord at the middle.

    Source: length, and that the rails follow the curvature: engineering-society landmark brochure; sagitta computed.
    """
    stations = stations_on(straight_axis(SPHERE, 3200.0 * FOOT), np.array([0.0, 1600.0, 3200.0]) * FOOT, 5.0)
    residuals = stations.height - design_heights(DesignSpec("chord"), stations).design_h
    assert 1000.0 * residuals[1] == pytest.approx(18.67, abs=0.1) and np.abs(residuals[[0, 2]]).max() < 2e-9
    assert np.all(stations.height == design_heights(DesignSpec("level"), stations).design_h)


# Facts of the trade: common practice, no source ----------------------------------------------------------------------

TRADE_RADIUS = 20_903_520.0 * FOOT


def _trade_spec(kind, **options):
    return DesignSpec(kind, earth="sphere", radius=TRADE_RADIUS, **options)


def test_trade_a_level_looking_structure():
    """64.12 ft at 0, 63.00 ft at 6,500 ft, 64.09 ft at 13,100 ft: 1.105 ft below the flat line, 0.08 ft below a chord.

    Common practice, no source. The chord lies BELOW the level surface, so nearly all the 'dip' is as designed.
    """
    stations = stations_on(
        straight_axis(SPHERE, 13_100.0 * FOOT),
        np.array([0.0, 6500.0, 13_100.0]) * FOOT,
        np.array([64.12, 63.00, 64.09]) * FOOT,
    )
    flat = design_heights(DesignSpec("chord", earth="flat"), stations).design_h
    assert (stations.height - flat)[1] / FOOT == pytest.approx(-1.105, abs=5e-4)
    chord = design_heights(_trade_spec("chord"), stations)
    assert (stations.height - chord.design_h)[1] / FOOT == pytest.approx(-0.08, abs=5e-3)
    assert (chord.design_h - chord.flat_h)[1] / FOOT == pytest.approx(-6500.0 * 6600.0 / 2.0 / 20_903_520.0, abs=1e-4)


def test_trade_an_arm_that_comes_down_is_straight_and_rises():
    """From 64.12 ft down to 60.04 ft at 13,100 ft: level near its far end, and rising on both sides of that.

    Common practice, no source. In feet from the far end the tangent there stands s^2/2R above its 60.04 ft.
    """
    axis = straight_axis(SPHERE, 13_100.0 * FOOT, lat=30.0)
    stations = stations_on(
        axis, np.array([0.0, 6550.0, 13_100.0, 19_650.0]) * FOOT, np.array([64.12, np.nan, 60.04, np.nan]) * FOOT
    )
    tangent = design_heights(_trade_spec("tangent", chainage_a=13_100.0 * FOOT), stations)
    rise = 13_100.0**2 / 2.0 / 20_903_520.0
    assert rise == pytest.approx(4.10, abs=0.01)
    assert np.allclose((tangent.design_h / FOOT) - 60.04, rise * np.array([1.0, 0.25, 0.0, 0.25]), rtol=0.0, atol=1e-4)
    effect = (tangent.design_h - tangent.flat_h) / FOOT
    assert np.allclose(effect, rise * np.array([1.0, 0.25, 0.0, 0.25]), rtol=0.0, atol=3e-4)
    assert (stations.height - tangent.design_h)[0] / FOOT == pytest.approx(-0.025, abs=2e-3)
    chord = design_heights(_trade_spec("chord", chainage_a=0.0, chainage_b=13_100.0 * FOOT), stations)
    effect = (chord.design_h - chord.flat_h) / FOOT
    assert effect[1] == pytest.approx(-rise / 4.0, abs=1e-4)  # below the level surface between its ends
    assert effect[3] == pytest.approx(0.75 * rise, abs=1e-4)  # above it beyond them
    # Straight on the way down: the mean slope is -3.1e-4, that at the far end nothing, that behind it upwards.
    assert chord.design_h[3] > chord.design_h[2] and chord.design_h[1] > chord.design_h[2]
    near = stations_on(axis, 13_100.0 * FOOT + np.array([-1.0, 1.0]))
    ends = (64.12 * FOOT, 60.04 * FOOT)
    spec = _trade_spec("chord", chainage_a=0.0, height_a=ends[0], chainage_b=13_100.0 * FOOT, height_b=ends[1])
    there = design_heights(spec, near).design_h
    assert abs(there[1] - there[0]) / 2.0 < 5e-6 and (ends[1] - ends[0]) / (13_100.0 * FOOT) < -3e-4


# Accuracy ------------------------------------------------------------------------------------------------------------


def _radius_along(geodesic, lat, lon, azimuth, length):
    """Euler's radius by the formulas of method page 2, written here anew."""
    middle = geodesic.Direct(lat, lon, azimuth, 0.5 * length)
    e2, phi, alpha = geodesic.f * (2.0 - geodesic.f), np.radians(middle["lat2"]), np.radians(middle["azi2"])
    w2 = 1.0 - e2 * np.sin(phi) ** 2
    ahead, across = np.cos(alpha) ** 2 * w2**1.5 / (1.0 - e2), np.sin(alpha) ** 2 * np.sqrt(w2)
    return geodesic.a / (ahead + across)


@pytest.mark.parametrize("kind", ["chord", "tangent", "inclined"])
def test_controls_by_chainage_to_1e6(world, along, exact, owed, kind):
    """Controls at chainages: their places by geographiclib, the plane and its heights with 50 digits."""
    dice, true, errors = world.dice(), exact(world.ellipsoid), []
    for lat, lon, azimuth, length in world.axes:
        end = along(world.geodesic, lat, lon, azimuth, length)
        back = world.geodesic.Inverse(lat, lon, *end[:2])
        height, start = dice.uniform(-300.0, 3000.0), 10_000.0
        scale = 1.0 + height / _radius_along(world.geodesic, lat, lon, back["azi1"], back["s12"])
        sigma = np.array([0.1, 0.85]) * back["s12"]
        a, b = (along(world.geodesic, lat, lon, back["azi1"], s) for s in sigma)
        heights = (height, height + dice.uniform(-0.01, 0.01) * length)
        slope = dice.uniform(-0.05, 0.05)
        places = np.array(
            [
                along(world.geodesic, lat, lon, back["azi1"], share * length, dice.uniform(-50.0, 50.0))[:2]
                for share in (-0.05, 0.4, 1.0)
            ]
        )
        axis = Axis(AxisLine("a", [lat, end[0]], [lon, end[1]], world.ellipsoid), height, start)
        s = start + sigma * scale
        nothing = np.zeros(3)
        stations = DesignStations(axis, *places.T, nothing, nothing, nothing + np.nan, nothing)
        spec = {
            "chord": DesignSpec("chord", s[0], heights[0], s[1], heights[1]),
            "tangent": DesignSpec("tangent", s[0], heights[0]),
            "inclined": DesignSpec("inclined", s[0], heights[0], slope=slope),
        }[kind]
        normal = (
            true.chord_normal((*a[:2], heights[0]), (*b[:2], heights[1]))
            if kind == "chord"
            else true.inclined_normal(*a[:2], a[2], slope if kind == "inclined" else 0.0)
        )
        point = true.position(*a[:2], heights[0])
        for place, found in zip(places, design_heights(spec, stations).design_h):
            errors.append(float(mpmath.mpf(float(found)) - true.height(point, normal, *place)))
    owed("design height, controls by chainage", errors, 1e-6)


def test_residual_is_nothing_at_control_stations(world):
    """Whatever offset the control stations have, chord and tangent run through their heights."""
    for lat, lon, azimuth, length in world.axes[:14]:
        axis = straight_axis(world.ellipsoid, length, lat, lon, azimuth, chainage_height=500.0)
        stations = stations_on(
            axis,
            np.array([0.0, 0.31, 0.5, 1.0]) * axis.length,
            [510.0, 505.0, 507.0, 511.0],
            np.array([0.9, -0.4, 0.2, -0.7]),
        )
        chord = design_heights(DesignSpec("chord", refraction=0.13), stations)
        assert np.abs((stations.height - chord.design_h)[[0, 3]]).max() < 5e-9
        assert np.abs((stations.height - chord.flat_h)[[0, 3]]).max() < 5e-9
        tangent = design_heights(DesignSpec("tangent"), stations)
        assert tangent.controls[0].station == 2 and abs((stations.height - tangent.design_h)[2]) < 5e-9


# Controls ------------------------------------------------------------------------------------------------------------


def _controls(stations, kind, *values, **options):
    return [
        (c.station, c.chainage, c.height)
        for c in resolved_controls(DesignSpec(kind, *values, **options), stations, ConstantUndulation())
    ]


@pytest.fixture
def listed(wgs84):
    """Input order shuffled; the outermost stations have no height."""
    axis = straight_axis(wgs84)
    return stations_on(axis, [1700.0, 0.0, 100.0, 2000.0, 3000.0, 900.0], [7.0, np.nan, 2.0, 5.0, np.nan, 3.0])


def test_default_controls(listed):
    """First and last station with a height; for a tangent the one nearest the middle between them; else the first."""
    assert _controls(listed, "chord") == [(2, 100.0, 2.0), (3, 2000.0, 5.0)]
    assert _controls(listed, "tangent") == [(5, 900.0, 3.0)]
    assert _controls(listed, "inclined", slope=0.001) == [(2, 100.0, 2.0)]
    assert _controls(listed, "level") == [(2, 100.0, 2.0)]
    assert _controls(listed, "grade", slope=0.001) == [(2, 100.0, 2.0)]
    assert _controls(listed, "grade") == [(2, 100.0, 2.0), (3, 2000.0, 5.0)]


def test_typed_controls_lie_on_the_axis(wgs84):
    """Also where a station is at that chainage: the typed height counts, at the axis point."""
    axis = straight_axis(wgs84)
    stations = stations_on(axis, [100.0, 2900.0], [2.0, 5.0], 0.8)
    a, b = resolved_controls(DesignSpec("chord", 100.0, 9.0, None, 8.0), stations, ConstantUndulation())
    assert (a.station, a.chainage, a.height) == (None, 100.0, 9.0)
    lat, lon, azimuth = axis.place(100.0)
    assert (a.lat, a.lon, a.azimuth) == (lat[0], lon[0], azimuth[0])
    assert (b.station, b.height) == (None, 8.0) and b.chainage == 2900.0 and b.lat != stations.lat[1]


def test_height_from_the_nearest_station(wgs84):
    """At most 1 m away, itself included; that station's own place and chainage."""
    stations = stations_on(straight_axis(wgs84), [100.0, 100.9, 500.0], [1.0, 2.0, 3.0], [0.0, 0.5, 0.0])
    assert _controls(stations, "level", 100.4) == [(0, 100.0, 1.0)]
    assert _controls(stations, "level", 100.5) == [(1, 100.9, 2.0)]
    assert _controls(stations, "level", 501.0) == [(2, 500.0, 3.0)]
    with pytest.raises(InputError, match=r"'arm': control A at chainage 501.1 m has no height.*within 1 m"):
        _controls(stations, "level", 501.1)
    (a,) = resolved_controls(DesignSpec("level", 100.5), stations, ConstantUndulation())
    assert (a.lat, a.lon) == (stations.lat[1], stations.lon[1])


@pytest.mark.parametrize("noise", [-1e-9, 1e-9])
def test_one_metre_away_to_the_last_digits_is_one_metre_away(wgs84, noise):
    """A measured chainage is 500 m to 1e-8; whether 501 finds it must not depend on that."""
    stations = stations_on(straight_axis(wgs84), [500.0 + noise], [3.0])
    assert _controls(stations, "level", 501.0)[0][0] == _controls(stations, "level", 499.0)[0][0] == 0


def test_ties_by_offset_then_input_order(wgs84):
    axis = straight_axis(wgs84)
    stations = stations_on(axis, [100.0, 100.0, 100.0, 900.0], [1.0, 2.0, 3.0, 4.0], [-2.0, 0.5, -0.5, 0.0])
    assert _controls(stations, "level", 100.0)[0][0] == 1
    assert _controls(stations, "chord")[0][0] == 1
    twins = stations_on(axis, [200.0, 100.0, 300.0], [1.0, np.nan, 3.0])
    assert _controls(twins, "tangent", 200.0)[0][0] == 0 and _controls(twins, "tangent")[0][0] == 0
    assert _controls(stations_on(axis, [300.0, 100.0], [1.0, 2.0]), "tangent")[0][0] == 0


def test_a_station_without_height_is_no_control(wgs84):
    stations = stations_on(straight_axis(wgs84), [100.0, 100.4, 900.0], [np.nan, 2.0, 3.0])
    assert _controls(stations, "level", 100.0) == [(1, 100.4, 2.0)]


def test_no_station_has_a_height(wgs84):
    stations = stations_on(straight_axis(wgs84), [100.0, 900.0])
    with pytest.raises(InputError, match="'arm': control A has no chainage, and no station"):
        design_heights(DesignSpec("chord"), stations)
    assert design_heights(DesignSpec("tangent", 500.0, 12.0), stations).controls[0].height == 12.0
    with pytest.raises(InputError, match="control B at chainage 900 m has no height"):
        design_heights(DesignSpec("chord", 0.0, 1.0, 900.0), stations)


def test_controls_at_one_place(wgs84):
    stations = stations_on(straight_axis(wgs84), [100.0, 100.0004], [1.0, 2.0])
    with pytest.raises(InputError, match="A and B are at the same chainage; a chord needs two"):
        design_heights(DesignSpec("chord"), stations)


@pytest.mark.parametrize(
    "options, words",
    [
        ({"kind": "straight"}, "'straight' is unknown; known are chord"),
        ({"kind": "chord", "earth": "disc"}, "'disc' is unknown"),
        ({"kind": "chord", "height_a": np.nan}, "height a is not a number"),
        ({"kind": "chord", "chainage_b": np.inf}, "chainage b"),
        ({"kind": "tangent", "refraction": np.nan}, "refraction is not a number"),
        ({"kind": "inclined"}, "needs a slope"),
        ({"kind": "inclined", "slope": 3.0}, "steeper than 45 degrees"),
        ({"kind": "reference"}, "needs a reference"),
        ({"kind": "reference", "plane": Plane((6.4e6, 0, 0), (1, 0, 0)), "earth": "sphere"}, "ellipsoid only"),
        ({"kind": "grade", "slope": 0.01, "height_b": 4.0}, "a slope and a second control"),
        ({"kind": "chord", "chainage_a": 5.0, "chainage_b": 5.0}, "Both controls are at chainage 5 m"),
        ({"kind": "tangent", "earth": "sphere", "radius": 6371.0 / 10.0}, "RADIUS is in metres"),
    ],
)
def test_contradictions(options, words):
    with pytest.raises(InputError, match=words):
        DesignSpec(**options)


def test_unused_values_are_named():
    assert DesignSpec("tangent", 1.0, 2.0, 3.0, 4.0, 0.1).unused == ["chainage_b", "height_b", "slope"]
    assert DesignSpec("chord", 1.0, 2.0, 3.0, 4.0).unused == [] and DesignSpec("level", slope=0.0).unused == ["slope"]


# Curvature effect and other models -----------------------------------------------------------------------------------

S = np.array([-300.0, 0.0, 800.0, 1500.0, 2500.0, 3000.0, 3400.0])


def test_curvature_effect_has_its_sign(wgs84):
    """A tangent rises by (s - s0)^2/2R on both sides, a chord lies s(L - s)/2R below between its ends, above beyond."""
    axis = straight_axis(wgs84)
    stations, radius = stations_on(axis, S), middle_radius(axis)
    for spec in (DesignSpec("tangent", 1000.0, 30.0), DesignSpec("inclined", 1000.0, 30.0, slope=-0.002)):
        found = design_heights(spec, stations)
        assert np.allclose(found.design_h - found.flat_h, (S - 1000.0) ** 2 / 2.0 / radius, rtol=0.0, atol=2e-5)
        assert np.all((found.design_h - found.flat_h) >= 0.0)
    chord = design_heights(DesignSpec("chord", 0.0, 30.0, 3000.0, 33.0), stations)
    assert np.allclose(chord.design_h - chord.flat_h, -S * (3000.0 - S) / 2.0 / radius, rtol=0.0, atol=2e-5)
    assert np.allclose(chord.flat_h, 30.0 + 0.001 * S, rtol=0.0, atol=1e-9)
    assert chord.slope == pytest.approx(0.001, abs=1e-12)


def test_flat_heights(wgs84):
    stations = stations_on(straight_axis(wgs84), S)
    assert np.all(design_heights(DesignSpec("tangent", 1000.0, 30.0), stations).flat_h == 30.0)
    inclined = design_heights(DesignSpec("inclined", 1000.0, 30.0, slope=0.003), stations)
    assert np.allclose(inclined.flat_h, 30.0 + 0.003 * (S - 1000.0), rtol=0.0, atol=1e-12)
    flat = design_heights(DesignSpec("inclined", 1000.0, 30.0, slope=0.003, earth="flat"), stations)
    assert np.array_equal(flat.design_h, inclined.flat_h) and np.array_equal(flat.flat_h, inclined.flat_h)


@pytest.mark.parametrize(
    "spec",
    [
        DesignSpec("chord", 0.0, 30.0, 3000.0, 33.0),
        DesignSpec("tangent", 700.0, 30.0),
        DesignSpec("inclined", 0.0, 3.0, slope=0.01),
    ],
)
def test_refraction_takes_its_share(wgs84, spec):
    """k = 1 leaves a flat Earth, k = 0.13 leaves 87 % of the curvature effect, k < 0 adds to it."""
    stations = stations_on(straight_axis(wgs84), S)
    names = ("kind", "chainage_a", "height_a", "chainage_b", "height_b", "slope")
    options = {name: getattr(spec, name) for name in names}
    whole = design_heights(spec, stations)
    for k, left in ((0.13, 0.87), (1.0, 0.0), (-0.5, 1.5)):
        found = design_heights(DesignSpec(refraction=k, **options), stations)
        assert np.allclose(found.design_h - found.flat_h, left * (whole.design_h - whole.flat_h), rtol=0.0, atol=1e-9)
        assert np.array_equal(found.flat_h, whole.flat_h)


def test_sphere_against_the_ellipsoid_and_closed_forms(wgs84):
    """On the sphere of Euler's radius at the middle all straight designs are within 0.1 mm of the ellipsoid in 3 km."""
    axis = straight_axis(wgs84, chainage_height=30.0)
    stations, e2 = stations_on(axis, S), 0.00669437999014
    lat, _, azimuth = axis.place(0.5 * axis.length)
    phi, alpha = np.radians(lat[0]), np.radians(azimuth[0])
    w2 = 1.0 - e2 * np.sin(phi) ** 2
    radius = 6378137.0 / (np.cos(alpha) ** 2 * w2**1.5 / (1.0 - e2) + np.sin(alpha) ** 2 * np.sqrt(w2))
    assert middle_radius(axis) == pytest.approx(radius, abs=1e-3)
    theta = (S - 1000.0) / (radius + 30.0)
    for kind, slope in (("tangent", None), ("inclined", 0.004), ("chord", None)):
        values = (0.0, 30.0, 3000.0, 36.0) if kind == "chord" else (1000.0, 30.0)
        sphere = design_heights(DesignSpec(kind, *values, slope=slope, earth="sphere"), stations)
        ellipsoid = design_heights(DesignSpec(kind, *values, slope=slope), stations)
        assert np.allclose(sphere.design_h, ellipsoid.design_h, rtol=0.0, atol=1e-4)
        if kind != "chord":
            tilt = np.arctan(slope or 0.0)
            closed = (radius + 30.0) * np.cos(tilt) / np.cos(theta + tilt) - radius
            assert np.allclose(sphere.design_h, closed, rtol=0.0, atol=1e-8)


def test_sphere_of_a_given_radius_goes_by_chainage(wgs84):
    """Offsets count for nothing there."""
    axis = straight_axis(wgs84)
    spec = DesignSpec("tangent", 0.0, 0.0, earth="sphere", radius=6371000.0)
    aside, on = (design_heights(spec, stations_on(axis, S, offset=y)).design_h for y in (50.0, 0.0))
    assert np.array_equal(aside, on) and on[2] == pytest.approx(800.0**2 / 2.0 / 6371000.0, abs=1e-8)


def test_level_and_grade(listed):
    level = design_heights(DesignSpec("level"), listed)
    assert np.all(level.design_h == 2.0) and np.all(level.flat_h == 2.0) and level.slope == 0.0
    grade = design_heights(DesignSpec("grade", 100.0, 2.5, slope=0.01), listed)
    assert np.allclose(grade.design_h, 2.5 + 0.01 * (listed.chainage - 100.0), rtol=0.0, atol=1e-12)
    assert np.array_equal(grade.design_h, grade.flat_h)
    through = design_heights(DesignSpec("grade"), listed)
    assert np.allclose(through.design_h, 2.0 + 3.0 / 1900.0 * (listed.chainage - 100.0), rtol=0.0, atol=1e-12)
    assert through.slope == pytest.approx(3.0 / 1900.0, abs=1e-15)


def test_level_in_undulating_country(listed):
    """It is constant in the input's own system, whatever N does."""
    stations = DesignStations(
        listed.axis, listed.lat, listed.lon, listed.chainage, listed.offset, listed.height, np.arange(6.0)
    )
    assert np.all(design_heights(DesignSpec("level"), stations).design_h == 2.0)


def test_reference_shared_by_two_arms(wgs84):
    """One plane over both arms; flat_h is the chord through the design heights of each arm's ends."""
    plane = chord_plane((45.0, 45.02), (7.0, 7.03), (100.0, 101.0), wgs84)
    for azimuth in (20.0, 115.0):
        stations = stations_on(straight_axis(wgs84, azimuth=azimuth), [1500.0, 0.0, 3000.0], undulation=[3.0, 2.0, 4.0])
        found = design_heights(DesignSpec("reference", plane=plane), stations)
        above = plane.heights(stations.lat, stations.lon, wgs84)
        assert np.allclose(found.design_h + [3.0, 2.0, 4.0], above, rtol=0.0, atol=1e-9)
        assert np.allclose(found.flat_h[1:], found.design_h[1:], rtol=0.0, atol=1e-9) and found.controls == ()
        assert found.flat_h[0] == pytest.approx(0.5 * (found.design_h[1] + found.design_h[2]), abs=1e-9)
        half = design_heights(DesignSpec("reference", plane=plane, refraction=0.5), stations)
        assert np.allclose(half.design_h, 0.5 * (found.design_h + found.flat_h), rtol=0.0, atol=1e-9)
    alone = design_heights(DesignSpec("reference", plane=plane), stations_on(straight_axis(wgs84), [10.0]))
    assert alone.design_h == pytest.approx(alone.flat_h, abs=1e-9)
    nobody = stations_on(straight_axis(wgs84), [])
    assert len(design_heights(DesignSpec("reference", plane=plane), nobody).design_h) == 0


# Kinks ---------------------------------------------------------------------------------------------------------------


def test_a_bend_warns_with_its_departure(wgs84):
    """Legs of 1000 m that turn by 1 degree: the vertex departs 1000 sin(0.5 deg) = 8.727 m from A to B."""
    stations = stations_on(bent_axis(wgs84, 1.0), [0.0, 500.0, 1500.0, 2000.0], 10.0)
    chord = design_heights(DesignSpec("chord"), stations)
    assert len(chord.warnings) == 1 and "'bent' bends: it departs 8.727 m" in chord.warnings[0]
    # Through one control on the first leg: the vertex lies on its geodesic, the far end 1000 sin(1 deg) beside it.
    for spec in (DesignSpec("tangent", 0.0), DesignSpec("inclined", 500.0, slope=0.001)):
        found = design_heights(spec, stations)
        assert len(found.warnings) == 1 and "it departs 17.452 m" in found.warnings[0]
    assert design_heights(DesignSpec("level"), stations).warnings == ()


def test_a_bend_below_a_thousandth_does_not_warn(wgs84):
    """0.1 degree: 0.873 m in 2000 m. Distances along the design go to the foot of the perpendicular."""
    axis = bent_axis(wgs84, 0.1)
    stations = stations_on(axis, [0.0, 1000.0, 2000.0], [10.0, np.nan, 12.0])
    chord = design_heights(DesignSpec("chord"), stations)
    assert chord.warnings == () and chord.flat_h[1] == pytest.approx(11.0, abs=1e-6)
    inclined = design_heights(DesignSpec("inclined", 0.0, 10.0, slope=0.01), stations)
    # Along the first leg's geodesic the second leg is short by 1000 (1 - cos 0.1 deg) = 1.52 mm.
    assert inclined.flat_h[2] - 10.0 == pytest.approx(0.01 * (1000.0 + 1000.0 * np.cos(np.radians(0.1))), abs=1e-7)


def test_vertices_on_the_line_change_nothing(wgs84):
    """An axis digitised with many vertices has the designs of the plain one."""
    plain = straight_axis(wgs84, chainage_height=40.0, start=200.0)
    lat, lon, _ = plain.place(200.0 + plain.length * np.linspace(0.0, 1.0, 8))
    dense = Axis(AxisLine("arm", lat, lon, wgs84), 40.0, 200.0)
    for spec in (DesignSpec("chord"), DesignSpec("inclined", slope=0.02), DesignSpec("tangent")):
        results = [design_heights(spec, stations_on(axis, 200.0 + S, 50.0 + 0.001 * S, 0.5)) for axis in (plain, dense)]
        assert results[1].warnings == ()
        assert np.allclose(results[0].design_h, results[1].design_h, rtol=0.0, atol=1e-6)
        assert np.allclose(results[0].flat_h, results[1].flat_h, rtol=0.0, atol=1e-6)


# Undulations ---------------------------------------------------------------------------------------------------------


def test_constant_undulation_lifts_in_and_out(wgs84):
    """A constant N of 48 m changes a 3 km chord by what 48 m more of radius do: less than 2 micrometres."""
    axis, n = straight_axis(wgs84), 48.0
    for spec in (DesignSpec("chord", 0.0, 30.0, 3000.0, 33.0), DesignSpec("tangent", 100.0, 30.0)):
        bare = design_heights(spec, stations_on(axis, S)).design_h
        lifted = design_heights(spec, stations_on(axis, S, undulation=n), ConstantUndulation(n))
        assert np.allclose(bare, lifted.design_h, rtol=0.0, atol=1e-5) and not lifted.horizon_known
        assert np.abs(bare - lifted.design_h).max() > 1e-8


SLOPE_E, SLOPE_N = 4.0e-5, -3.0e-5  # rise of the geoid per metre: 10 seconds of arc, 150 mm in 3 km


def _leaning(lat, lon):
    """A geoid that rises evenly to the east and falls to the north about 45 N, 7 E, WGS 84."""
    return (
        40.0
        + SLOPE_E * np.radians(np.asarray(lon) - 7.0) * 4517590.879
        + SLOPE_N * np.radians(np.asarray(lat) - 45.0) * 6367381.816
    )


@pytest.mark.parametrize("source", ["grid", "field"])
@pytest.mark.parametrize(
    "spec",
    [
        DesignSpec("tangent", 200.0, 30.0),
        DesignSpec("inclined", 2500.0, 30.0, slope=-0.004),
        DesignSpec("chord", 0.0, 30.0, 3000.0, 31.0),
        DesignSpec("tangent"),
    ],
)
def test_an_evenly_leaning_geoid_changes_nothing(wgs84, source, spec):
    """The horizon leans with the geoid, so heights above it are as on an upright one: here to 0.1 mm of 150 mm.

    What is left is that a plain in latitude and longitude is not quite even on the ellipsoid.
    """
    axis = straight_axis(wgs84)
    s = np.arange(0.0, 3001.0, 100.0)
    bare = stations_on(axis, s, 30.0 + 0.002 * s)
    n = _leaning(bare.lat, bare.lon)
    leaning = DesignStations(axis, bare.lat, bare.lon, s, bare.offset, bare.height, n)
    undulation = SurfaceUndulation(_leaning, 0.25, wgs84) if source == "grid" else StationUndulations(s, n)
    upright, found = design_heights(spec, bare), design_heights(spec, leaning, undulation)
    assert np.ptp(n) > 0.05
    assert np.allclose(found.design_h, upright.design_h, rtol=0.0, atol=1e-4)
    assert np.allclose(found.flat_h, upright.flat_h, rtol=0.0, atol=1e-9)
    assert found.horizon_known == (spec.kind != "chord")
    if spec.kind != "chord":  # the ellipsoid's horizon would be wrong by the geoid's slope times the distance
        blind = design_heights(spec, leaning, ConstantUndulation(float(n[0])))
        assert np.abs(blind.design_h - upright.design_h).max() > 0.02


def test_five_seconds_of_slope_are_73_mm_in_3_km(wgs84):
    """method page 4 by hand: 3000 tan(5 s) = 72.7 mm. The geoid rises ahead, so the plane rises with its horizon."""
    axis, slope = straight_axis(wgs84, azimuth=90.0), np.tan(np.radians(5.0 / 3600.0))
    s = np.array([0.0, 300.0, 3000.0])
    stations = stations_on(axis, s, undulation=slope * s)
    found = design_heights(DesignSpec("tangent", 0.0, 10.0), stations, StationUndulations(s, slope * s))
    plane = straight_plane(DesignSpec("tangent", 0.0, 10.0), found.controls, wgs84, (0.0, 0.0), 0.0)
    upright = plane.heights(stations.lat, stations.lon, wgs84)
    assert found.design_h[2] + stations.undulation[2] - upright[2] == pytest.approx(0.0727, abs=1e-4)


def test_undulation_of_a_typed_control_is_that_of_its_place(wgs84):
    """Halfway between two stations N is halfway; the control's height above the ellipsoid is H + N there."""
    axis = straight_axis(wgs84)
    stations = stations_on(axis, [0.0, 1000.0], undulation=[40.0, 42.0])
    (control,) = resolved_controls(
        DesignSpec("tangent", 500.0, 10.0), stations, StationUndulations([0.0, 1000.0], [40.0, 42.0])
    )
    assert control.undulation == pytest.approx(41.0, abs=1e-12)
    (at_station,) = resolved_controls(
        DesignSpec("tangent", 1000.0), stations_on(axis, [1000.0], 5.0, undulation=42.0), ConstantUndulation(0.0)
    )
    assert at_station.undulation == 42.0


# Places where formulas break -----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "lat, lon, azimuth",
    [
        (90.0, 0.0, 200.0),
        (89.999, 12.0, 1.0),
        (-89.995, 0.0, 180.0),
        (12.0, 179.99, 90.0),
        (-12.0, -179.995, 270.0),
        (0.0, 0.0, 90.0),
    ],
)
def test_poles_and_antimeridian(wgs84, lat, lon, azimuth):
    """Ten kilometres there are like ten kilometres elsewhere: the effect is that of the local radius to 0.2 mm."""
    axis = straight_axis(wgs84, 10_000.0, lat, lon, azimuth)
    s = np.linspace(0.0, 10_000.0, 9)
    found = design_heights(DesignSpec("tangent", 5000.0, 20.0), stations_on(axis, s))
    assert np.allclose(found.design_h - 20.0, (s - 5000.0) ** 2 / 2.0 / middle_radius(axis), rtol=0.0, atol=2e-4)
    assert found.warnings == ()


def test_design_far_from_its_axis_is_no_number():
    """Half round the globe the plane does not pass over the station: NaN, not a wrong height."""
    plane = Plane(foot_and_normal(0.0, 0.0, SPHERE)[0], foot_and_normal(0.0, 0.0, SPHERE)[1])
    assert np.isnan(plane.heights(0.0, 95.0, SPHERE)[0])


def test_geographiclib_agrees_on_the_test_axis(wgs84):
    """So that stations_on, which places by the package itself, is no circle: its axis is where it should be."""
    axis = straight_axis(wgs84)
    lat, lon, _ = axis.place(2000.0, 30.0)
    foot = Geodesic.WGS84.Direct(45.0, 7.0, 60.0, 2000.0)
    true = Geodesic.WGS84.Direct(foot["lat2"], foot["lon2"], foot["azi2"] + 90.0, 30.0)
    assert lat[0] == pytest.approx(true["lat2"], abs=1e-12) and lon[0] == pytest.approx(true["lon2"], abs=1e-12)


def test_many_axes_at_once(wgs84):
    """Every kind of design beside the others, typed controls and controls at stations, axes with and without legs,
    another Earth, refraction, undulations: each axis has the design that it has alone."""
    dice = np.random.default_rng(4)
    straight = [Axis(AxisLine(f"{k}", [45.0 + k, 45.02 + k], [7.0, 7.01 * 1.001], wgs84), 100.0 * k) for k in range(9)]
    axes = [*straight, bent_axis(wgs84, 20.0)]
    plane = chord_plane([45.0, 45.02], [7.0, 7.01], [100.0, 120.0], wgs84)
    specs = [
        DesignSpec("chord"),
        DesignSpec("chord", 100.0, None, 900.0, 105.0, refraction=0.13),
        DesignSpec("tangent"),
        DesignSpec("inclined", slope=0.002),
        DesignSpec("reference", plane=plane),
        DesignSpec("level", 200.0, datum_height=400.0),
        DesignSpec("grade"),
        DesignSpec("grade", 50.0, 3.0, slope=-0.001),
        DesignSpec("inclined", 100.0, 99.0, slope=0.001, earth="sphere"),
        DesignSpec("chord"),
    ]
    undulations = [ConstantUndulation(k, (1e-5, -2e-5) if k % 2 else None) for k in range(10)]
    stations = []
    for k, axis in enumerate(axes):
        s = np.sort(np.round(dice.uniform(0.0, 2000.0, 12 + k), 0))
        s[:3] = 50.0, 100.0, 200.0
        height = np.where(dice.uniform(size=len(s)) < 0.2, np.nan, dice.normal(100.0, 1.0, len(s)))
        height[:3] = 100.0
        stations.append(stations_on(axis, s, height, dice.normal(0.0, 1.0, len(s)), dice.normal(40.0, 0.1, len(s))))
    together = designs_heights(specs, stations, undulations)
    for k, found in enumerate(together):
        alone = design_heights(specs[k], stations[k], undulations[k])
        assert np.allclose(found.design_h, alone.design_h, rtol=0.0, atol=1e-9)
        assert np.allclose(found.flat_h, alone.flat_h, rtol=0.0, atol=1e-9)
        assert found.warnings == alone.warnings and found.horizon_known == alone.horizon_known
        assert found.slope == pytest.approx(alone.slope, abs=1e-15) if alone.slope is not None else found.slope is None
        assert [c.station for c in found.controls] == [c.station for c in alone.controls]
        assert [c.chainage for c in found.controls] == pytest.approx([c.chainage for c in alone.controls], abs=1e-9)
        assert np.all(np.isfinite(found.design_h))
    # At its own control a design is the height there.
    (a, b), first = together[0].controls, stations[0]
    assert together[0].design_h[[a.station, b.station]] == pytest.approx(first.height[[a.station, b.station]], abs=1e-8)
    with pytest.raises(InputError, match="Axis '3': control A at chainage"):
        designs_heights([DesignSpec("chord"), DesignSpec("level", 9e5)], [stations[0], stations[3]], undulations[:2])
