"""Chainage and offset: against geographiclib, closed forms on the sphere, an integration, and brute force."""

import numpy as np
import pytest
from geographiclib.geodesic import Geodesic

from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.geodesy import Ellipsoid, foot_and_normal
from tautline.algorithms.core.measure import Measurer, measure


def _line(world, along, axis):
    """The axis from its two ends, and the azimuth that geographiclib has for these ends."""
    lat, lon, azimuth, length = axis
    end = along(world.geodesic, lat, lon, azimuth, length)
    back = world.geodesic.Inverse(lat, lon, *end[:2])
    return AxisLine("a", [lat, end[0]], [lon, end[1]], world.ellipsoid), back["azi1"], back["s12"]


def test_chainage_and_offset_to_1e6(world, along, owed):
    """Stations placed by geographiclib: along the geodesic to the foot, then square to it, to 1 km aside."""
    dice, chainages, offsets = world.dice(), [], []
    for axis in world.axes:
        line, azimuth, length = _line(world, along, axis)
        true = np.array(
            [
                (share * length, dice.uniform(-1.0, 1.0) * min(1000.0, 20.0 * length))
                for share in (-0.05, 0.0, 0.21, 0.5, 0.77, 1.0, 1.03)
            ]
        )
        places = np.array([along(world.geodesic, *axis[:2], azimuth, s, y)[:2] for s, y in true])
        feet = measure([line], *places.T)
        chainages += list(feet.along - true[:, 0])
        offsets += list(feet.across - true[:, 1])
    owed("chainage on the ellipsoid, offsets to 1 km", chainages, 1e-6)
    owed("offset on the ellipsoid, offsets to 1 km", offsets, 1e-6)


def test_foot_condition(world, along, owed):
    """The geodesic from the foot that was found to the station is square to the axis, by geographiclib."""
    dice, errors = world.dice(), []
    for axis in world.axes[10:22]:
        line, azimuth, length = _line(world, along, axis)
        y = dice.choice([-1.0, 1.0]) * dice.uniform(100.0, 1000.0)
        station = along(world.geodesic, *axis[:2], azimuth, 0.4 * length, y)[:2]
        feet = measure([line], *station)
        foot = along(world.geodesic, *axis[:2], azimuth, feet.along[0])
        towards = world.geodesic.Inverse(*foot[:2], *station)
        errors.append(towards["s12"] * np.cos(np.radians(towards["azi1"] - foot[2])))
    owed("perpendicularity of the foot", errors, 1e-6)


def test_far_stations_and_long_legs(world, along, owed):
    """Offsets beyond 8 km, legs longer than 250 km (cut into spans), stations far beyond an end."""
    chainages, offsets = [], []
    for lat, lon, azimuth, length in ((41.0, 12.0, 33.0, 700e3), (-20.0, 179.0, 80.0, 260e3), (70.0, 0.0, 10.0, 30e3)):
        line, start, length = _line(world, along, (lat, lon, azimuth, length))
        true = np.array(
            [
                (share * length, y)
                for share in (-0.2, 0.1, 0.5, 0.9, 1.4)
                for y in (-30e3, -8100.0, -3990.0, -1.0, 5.0, 3990.0, 4010.0, 12e3, 60e3)
            ]
        )
        places = np.array([along(world.geodesic, lat, lon, start, s, y)[:2] for s, y in true])
        feet = measure([line], *places.T)
        chainages += list(feet.along - true[:, 0])
        offsets += list(feet.across - true[:, 1])
    owed("chainage, offsets to 60 km and legs to 700 km", chainages, 2e-6)
    owed("offset, offsets to 60 km and legs to 700 km", offsets, 2e-6)


def test_sphere_in_closed_form(owed):
    """Cross-track and along-track distances of spherical trigonometry: sin y = sin d sin(a), tan s = tan d cos(a)."""
    radius, errors = 6371000.0, []
    earth = Ellipsoid(radius, 0.0)
    end = earth.forward(48.0, 2.0, 70.0, 100e3)
    line = AxisLine("a", [48.0, end[0]], [2.0, end[1]], earth)
    for turn, distance in ((0.5, 40e3), (-0.3, 60e3), (0.9, 900.0), (-1.2, 700.0), (0.01, 99e3)):
        lat, lon = _on_sphere(48.0, 2.0, 70.0 + np.degrees(turn), distance / radius)
        feet = measure([line], lat, lon)
        along = radius * np.arctan2(np.sin(distance / radius) * np.cos(turn), np.cos(distance / radius))
        across = radius * np.arcsin(np.sin(distance / radius) * np.sin(turn))
        errors += [feet.along[0] - along, feet.across[0] - across]
    owed("chainage and offset on a sphere, closed form", errors, 1e-6)


def _on_sphere(lat, lon, azimuth, angle):
    phi, alpha = np.radians(lat), np.radians(azimuth)
    phi2 = np.arcsin(np.sin(phi) * np.cos(angle) + np.cos(phi) * np.sin(angle) * np.cos(alpha))
    turn = np.arctan2(np.sin(alpha) * np.sin(angle) * np.cos(phi), np.cos(angle) - np.sin(phi) * np.sin(phi2))
    return np.degrees(phi2), lon + np.degrees(turn)


def test_integrated_geodesic(owed):
    """The differential equations of a geodesic, integrated: d(phi) = cos(a)/M, d(lambda) = sin(a)/(nu cos phi), ds."""
    from scipy.integrate import solve_ivp

    a, f = 6397300.0, 1.0 / 191.0
    e2 = f * (2.0 - f)

    def rates(_, state):
        phi, _, alpha = state
        w = np.sqrt(1.0 - e2 * np.sin(phi) ** 2)
        m, nu = a * (1.0 - e2) / w**3, a / w
        return [np.cos(alpha) / m, np.sin(alpha) / (nu * np.cos(phi)), np.sin(alpha) * np.tan(phi) / nu]

    def walk(lat, lon, azimuth, distance):
        start = np.radians([lat, lon, azimuth])
        path = solve_ivp(rates, (0.0, distance), start, method="DOP853", rtol=1e-13, atol=1e-16)
        return np.degrees(path.y[:, -1])

    end, foot = walk(-52.0, -70.0, 25.0, 150e3), walk(-52.0, -70.0, 25.0, 64e3)
    station = walk(foot[0], foot[1], foot[2] - 90.0, 800.0)
    feet = measure([AxisLine("a", [-52.0, end[0]], [-70.0, end[1]], Ellipsoid(a, f))], station[0], station[1])
    owed("chainage and offset, integrated geodesic", [feet.along[0] - 64e3, feet.across[0] + 800.0], 1e-6)


# Kinked axes: 1 km at azimuth 90, then the second leg; corner at chainage 1000 on the ellipsoid.


def _bent(ellipsoid, turn, first=1000.0, second=1000.0):
    corner = Geodesic.WGS84.Direct(45.0, 7.0, 90.0, first)
    end = Geodesic.WGS84.Direct(corner["lat2"], corner["lon2"], corner["azi2"] + turn, second)
    line = AxisLine("bent", [45.0, corner["lat2"], end["lat2"]], [7.0, corner["lon2"], end["lon2"]], ellipsoid)
    return line, (corner["lat2"], corner["lon2"], corner["azi2"])


@pytest.mark.parametrize("turn, side", [(30.0, -1.0), (-30.0, 1.0), (120.0, -1.0), (-150.0, 1.0)])
def test_wedge_outside_the_bend(wgs84, turn, side):
    """The foot is the vertex; the offset is the distance to it, left of a bend to the right and the other way."""
    line, (lat, lon, azimuth) = _bent(wgs84, turn)
    outward = azimuth + 0.5 * turn + (90.0 if side > 0 else -90.0)
    place = Geodesic.WGS84.Direct(lat, lon, outward, 40.0)
    feet = measure([line], place["lat2"], place["lon2"])
    assert feet.leg[0] == 0 and feet.along[0] == pytest.approx(line.lengths[0], abs=1e-9)
    assert feet.across[0] == pytest.approx(side * 40.0, abs=1e-7)
    assert feet.distance[0] == pytest.approx(40.0, abs=1e-7)


def test_inside_the_bend_the_nearer_leg(wgs84):
    line, (lat, lon, azimuth) = _bent(wgs84, 60.0)
    for ahead, leg in ((-80.0, 0), (80.0, 1)):
        foot = Geodesic.WGS84.Direct(lat, lon, azimuth + (60.0 if leg else 0.0), ahead)
        place = Geodesic.WGS84.Direct(foot["lat2"], foot["lon2"], foot["azi2"] + 90.0, 10.0)
        feet = measure([line], place["lat2"], place["lon2"])
        assert feet.leg[0] == leg and feet.across[0] == pytest.approx(10.0, abs=1e-7)
        assert line.lengths[:leg].sum() + feet.along[0] == pytest.approx(1000.0 + ahead, abs=1e-6)


@pytest.mark.parametrize("turn", [50.0, -50.0])
def test_on_the_bisector_the_earlier_leg(wgs84, turn):
    """Equally near to both legs but for the last digits, whichever side of a rounding step the distance falls."""
    line, (lat, lon, azimuth) = _bent(wgs84, turn)
    inward = azimuth + 0.5 * turn + (90.0 if turn > 0 else -90.0)
    for distance in np.linspace(1.0, 200.0, 150):
        place = Geodesic.WGS84.Direct(lat, lon, inward, distance)
        assert measure([line], place["lat2"], place["lon2"]).leg[0] == 0


@pytest.mark.parametrize("ahead", [1e-6, 1e-5, 1e-4, 3e-3, 0.2])
@pytest.mark.parametrize("turn, offset", [(0.01, -900.0), (-0.01, 900.0), (-5.0, 900.0), (20.0, -50.0)])
def test_just_past_a_vertex(wgs84, ahead, turn, offset):
    """Outside a bend, a foot a little way along the later leg is not at the vertex, though that is as near to 1e-7."""
    line, (lat, lon, azimuth) = _bent(wgs84, turn)
    start = Geodesic.WGS84.Inverse(lat, lon, line.lat[2], line.lon[2])["azi1"]
    foot = Geodesic.WGS84.Direct(lat, lon, start, ahead)
    place = Geodesic.WGS84.Direct(foot["lat2"], foot["lon2"], foot["azi2"] + 90.0, offset)
    feet = measure([line], place["lat2"], place["lon2"])
    assert line.lengths[: feet.leg[0]].sum() + feet.along[0] == pytest.approx(1000.0 + ahead, abs=1e-6)
    assert feet.across[0] == pytest.approx(offset, abs=1e-6)


@pytest.mark.parametrize("turn", [20.0, -20.0])
def test_at_a_cut_inside_a_leg_nothing_happens(wgs84, turn):
    """A leg of 400 km is cut at 200 km; stations abreast of the cut keep their sign and chainage."""
    line, _ = _bent(wgs84, turn, first=400e3)
    for ahead in (-3e-3, -1e-6, 0.0, 1e-6, 1e-4, 3e-3):
        for offset in (-500.0, -2.0, 2.0, 500.0):
            foot = Geodesic.WGS84.Direct(45.0, 7.0, line.azimuths[0], 200e3 + ahead)
            place = Geodesic.WGS84.Direct(foot["lat2"], foot["lon2"], foot["azi2"] + 90.0, offset)
            feet = measure([line], place["lat2"], place["lon2"])
            assert feet.along[0] == pytest.approx(200e3 + ahead, abs=1e-6)
            assert feet.across[0] == pytest.approx(offset, abs=1e-6)


def test_beyond_the_ends_and_distance_to_the_axis_itself(wgs84):
    line, _ = _bent(wgs84, 0.0)
    before = Geodesic.WGS84.Direct(45.0, 7.0, line.azimuths[0], -30.0)
    aside = Geodesic.WGS84.Direct(before["lat2"], before["lon2"], before["azi2"] + 90.0, 40.0)
    feet = measure([line], aside["lat2"], aside["lon2"])
    assert feet.along[0] == pytest.approx(-30.0, abs=1e-6) and feet.across[0] == pytest.approx(40.0, abs=1e-6)
    assert feet.distance[0] == pytest.approx(50.0, abs=1e-6)


def test_nearest_by_the_axis_not_by_its_continuation(wgs84):
    """A station on the continuation of one axis, 500 m beyond its end, 100 m beside another."""
    end = Geodesic.WGS84.Direct(45.0, 7.0, 90.0, 1000.0)
    station = Geodesic.WGS84.Direct(45.0, 7.0, 90.0, 1500.0)
    near = Geodesic.WGS84.Direct(station["lat2"], station["lon2"], 180.0, 100.0)
    far = Geodesic.WGS84.Direct(near["lat2"], near["lon2"], 180.0, 800.0)
    lines = [
        AxisLine("a", [45.0, end["lat2"]], [7.0, end["lon2"]], wgs84),
        AxisLine("b", [near["lat2"], far["lat2"]], [near["lon2"], far["lon2"]], wgs84),
    ]
    feet = measure(lines, station["lat2"], station["lon2"])
    assert list(feet.axis) == [1] and feet.along[0] == pytest.approx(-100.0, abs=1e-5)
    assert list(measure(lines, station["lat2"], station["lon2"], assigned=[0]).axis) == [0]


def test_common_corner_gives_a_row_for_each_axis(wgs84):
    """Two arms from one corner, not at a right angle; a station 4 mm from the corner, one 30 m up an arm."""
    ends = [Geodesic.WGS84.Direct(45.0, 7.0, azimuth, 900.0) for azimuth in (20.0, 115.0)]
    lines = [AxisLine(name, [45.0, end["lat2"]], [7.0, end["lon2"]], wgs84) for name, end in zip("xy", ends)]
    corner = Geodesic.WGS84.Direct(45.0, 7.0, 250.0, 0.004)
    up = Geodesic.WGS84.Direct(45.0, 7.0, 115.0, 30.0)
    lat, lon = np.array([corner["lat2"], up["lat2"]]), np.array([corner["lon2"], up["lon2"]])
    feet = measure(lines, lat, lon)
    assert list(zip(feet.station, feet.axis)) == [(0, 0), (0, 1), (1, 1)]
    assert list(measure(lines, lat, lon, assigned=[1, -1]).axis) == [1, 1]


def test_thousand_axes_against_brute_force(wgs84):
    """The search against the distances to all axes, cut into straight pieces of 50 m in space (sagitta 0.05 mm).

    Axes of one, two and three legs, some bent, either side of the antimeridian.
    """
    rng = np.random.default_rng(7)
    lines, begins, ends, owners = [], [], [], []
    for k in range(1000):
        places = [(46.0 + rng.uniform(0.0, 1.0), 179.5 + rng.uniform(0.0, 1.0))]
        for azimuth in np.cumsum(rng.uniform(-60.0, 60.0, k % 3 + 1)) + rng.uniform(0.0, 360.0):
            places.append(wgs84.forward(*places[-1], azimuth, rng.uniform(20.0, 4000.0))[:2])
        line = AxisLine(str(k), *np.array(places).T, wgs84)
        for leg, length in enumerate(line.lengths):
            steps = np.linspace(0.0, length, int(length / 50.0) + 2)
            lat, lon, _ = wgs84.forward(line.lat[leg], line.lon[leg], line.azimuths[leg], steps)
            feet = foot_and_normal(lat, lon, wgs84)[0]
            begins.append(feet[:-1]), ends.append(feet[1:]), owners.append(np.full(len(steps) - 1, k))
        lines.append(line)
    begin, end, owner = np.concatenate(begins), np.concatenate(ends), np.concatenate(owners)
    lat, lon = 46.0 + rng.uniform(0.0, 1.0, 120), 179.5 + rng.uniform(0.0, 1.0, 120)
    lon[::7] -= 360.0
    found = Measurer(lines).feet(lat, lon)
    assert np.array_equal(found.station, np.arange(120))
    for i, foot in enumerate(foot_and_normal(lat, lon, wgs84)[0]):
        run = end - begin
        share = np.clip(np.sum((foot - begin) * run, axis=1) / np.sum(run * run, axis=1), 0.0, 1.0)
        distance = np.linalg.norm(begin + share[:, None] * run - foot, axis=1)
        distance *= 1.0 + (distance / 6.38e6) ** 2 / 24.0
        assert owner[distance.argmin()] == found.axis[i]
        assert found.distance[i] == pytest.approx(distance.min(), abs=1e-3)
        assert abs(found.across[i]) <= found.distance[i] + 1e-6


def test_stations_at_one_place_among_many_axes(wgs84):
    """Nine stations at each of three places, which no grid tells apart: 100 parallel axes 200 m apart."""
    east = wgs84.forward(np.full(100, 47.0), np.full(100, 9.0), np.full(100, 90.0), 200.0 * np.arange(100))
    ends = wgs84.forward(*east[:2], np.zeros(100), np.full(100, 3000.0))
    lines = [AxisLine(str(k), *(np.array([a[k], b[k]]) for a, b in zip(east[:2], ends[:2])), wgs84) for k in range(100)]
    near = np.array([3, 50, 98])
    lat, lon, _ = wgs84.forward(east[0][near], east[1][near], np.full(3, 1.0), np.array([10.0, 1500.0, 2990.0]))
    feet = Measurer(lines).feet(np.repeat(lat, 9), np.repeat(lon, 9))
    assert feet.station.tolist() == list(range(27)) and feet.axis.tolist() == np.repeat(near, 9).tolist()
    assert feet.along.reshape(3, 9) == pytest.approx(np.tile([[9.998], [1499.8], [2989.5]], 9), abs=0.1)


def test_many_stations_in_chunks_keep_their_order(wgs84):
    """20,000 stations on three axes, shuffled, against their own placing."""
    rng = np.random.default_rng(3)
    axes = [Axis(AxisLine(str(k), [45.0 + 0.1 * k, 45.02 + 0.1 * k], [7.0, 7.03], wgs84), 200.0) for k in range(3)]
    which = rng.integers(0, 3, 20_000)
    s, y = rng.uniform(-50.0, 3300.0, 20_000), rng.uniform(-80.0, 80.0, 20_000)
    lat, lon = np.empty(20_000), np.empty(20_000)
    for k, axis in enumerate(axes):
        lat[which == k], lon[which == k], _ = axis.place(s[which == k], y[which == k])
    feet = Measurer([axis.line for axis in axes]).feet(lat, lon)
    assert np.array_equal(feet.station, np.arange(20_000)) and np.array_equal(feet.axis, which)
    for k, axis in enumerate(axes):
        mine = feet.axis == k
        assert np.abs(axis.chainages(feet.leg[mine], feet.along[mine]) - s[mine]).max() < 1e-6
        assert np.abs(axis.offsets(feet.leg[mine], feet.across[mine]) - y[mine]).max() < 1e-6


@pytest.mark.parametrize("count", [1, 3])
def test_a_place_that_is_no_number_drops_nothing_silently(wgs84, count):
    lines = [AxisLine(str(k), [45.0, 45.1], [7.0 + k, 7.0 + k], wgs84) for k in range(count)]
    with pytest.raises(InputError, match="no valid latitude"):
        measure(lines, [45.01, np.nan, 45.02], [7.001, 7.0, 7.001])


def test_no_stations(wgs84):
    lines = [AxisLine("a", [45.0, 45.1], [7.0, 7.0], wgs84), AxisLine("b", [46.0, 46.1], [7.0, 7.0], wgs84)]
    assert len(measure(lines, [], []).station) == 0 and len(measure(lines[:1], [], []).station) == 0


def test_many_axes_at_once_as_each_alone():
    """Few stations on each of many axes are projected together; the feet are those of each axis measured alone, far
    ones and those beyond an end too."""
    draw, earth = np.random.default_rng(3), Ellipsoid(6378137.0, 1 / 298.257223563)
    lines = [
        AxisLine(f"a{k}", [50.0 + 0.3 * k, 50.02 + 0.3 * k, 50.05 + 0.3 * k], [8.0, 8.01, 8.05], earth)
        for k in range(40)
    ]
    lat = np.concatenate([50.0 + 0.3 * k + draw.uniform(-0.02, 0.07, 6) for k in range(40)])
    lon = np.concatenate([8.0 + draw.uniform(-0.06, 0.12, 6) for _ in range(40)])
    own = np.repeat(np.arange(40), 6)
    together = Measurer(lines).feet(lat, lon, own)
    assert together.station.tolist() == list(range(240)) and together.axis.tolist() == own.tolist()
    for k, line in enumerate(lines):
        alone, mine = Measurer([line]).feet(lat[own == k], lon[own == k]), own == k
        assert together.leg[mine].tolist() == alone.leg.tolist()
        for name in ("along", "across", "distance"):
            assert np.abs(getattr(together, name)[mine] - getattr(alone, name)).max() < 2e-8
