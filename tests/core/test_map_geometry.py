"""Drawing beside an axis: factors, bars against independent geodesics, bands at bends, strips."""

import numpy as np
import pytest
from geographiclib.geodesic import Geodesic

from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.exaggeration import bar_factor, bar_lengths, ordinary_size, ordinary_sizes, round_number
from tautline.algorithms.core.map_geometry import AxesOnMap, Path, with_points, within, within_each
from tautline.algorithms.core.segments import Segments
from tautline.algorithms.core.strip import (
    StripFrame,
    StripHeights,
    edges,
    grid_step,
    shown_ranges,
    side_away,
    strip_factor,
    tick_chainages,
)

NAN = float("nan")


def on(axis, *columns):
    """An axis alone on the map, its index for each value, and the columns of values."""
    columns = np.broadcast_arrays(*(np.atleast_1d(np.asarray(column, float)) for column in columns))
    return AxesOnMap([axis]), np.zeros(len(columns[0]), int), columns


def bar_ends(axis, chainage, length):
    axes, which, columns = on(axis, chainage, length)
    return axes.bars(which, *columns)


def beside(axis, chainage, offset):
    axes, which, columns = on(axis, chainage, offset)
    return axes.beside(which, *columns)


def folds(axis, offset, first, last):
    axes, which, columns = on(axis, offset, first, last)
    return axes.folds(which, *columns)[0]


def chainages_along(axis, first, last):
    axes, which, columns = on(axis, first, last)
    return axes.along(which, *columns)[1]


def band(axis, first, last, half_width):
    axes, which, columns = on(axis, first, last, half_width)
    return axes.bands(which, *columns)[1:]


@pytest.mark.parametrize(
    "limit, want",
    [
        (1, 1),
        (1.99, 1),
        (2, 2),
        (4.999, 2),
        (5, 5),
        (9.99, 5),
        (10, 10),
        (12000, 10000),
        (20000, 20000),
        (49999, 20000),
        (0.03, 0.02),
        (0.1, 0.1),
        (0.5, 0.5),
        (1e-3, 1e-3),
        (7e-7, 5e-7),
        (3e11, 2e11),
        (0.3 / 3, 0.1),
        (1 - 1e-15, 1),
    ],
)
def test_round_number(limit, want):
    assert round_number(limit) == want


@pytest.mark.parametrize("limit", [0.0, -1.0, NAN, float("inf")])
def test_no_round_number(limit):
    with pytest.raises(InputError):
        round_number(limit)


@pytest.mark.parametrize(
    "residuals, tolerance, want",
    [
        ([0.003] * 40, None, 0.003),
        ([0.003] * 40, 0.01, 0.01),
        ([0.003] * 30 + [5.0], None, 0.003),
        ([0.002, -0.004, 9.0], None, 0.004),
        ([-0.02], None, 0.02),
        ([0.0, 0.0, 0.007], None, 0.007),
        ([0.0, 0.0], None, 0.0),
        ([NAN, 0.002], 0.0, 0.002),
        ([NAN], 0.01, 0.01),
    ],
)
def test_ordinary_size(residuals, tolerance, want):
    assert ordinary_size(np.array(residuals), tolerance) == want


# A twentieth of the length over the size, down to 1, 2, 5 times a power of ten: worked by hand.
@pytest.mark.parametrize(
    "size, length, want",
    [
        (0.010, 2400.0, 10_000),
        (0.0005, 620.0, 50_000),
        (0.03 * 0.3048, 5200.0, 20_000),
        (1.0, 100.0, 5),
        (50.0, 100.0, 0.1),
        (0.0, 100.0, 1),
    ],
)
def test_bar_factor(size, length, want):
    assert bar_factor(np.full(10, size), length) == want


def test_ordinary_sizes_of_many_are_those_of_each():
    dice = np.random.default_rng(3)
    parts = [dice.normal(0.0, 0.01, n) for n in (40, 1, 2, 21)]
    parts[0][::3], parts[2][:], parts[3][:20] = NAN, NAN, 0.0
    found = ordinary_sizes(np.concatenate(parts), Segments([len(part) for part in parts]))
    assert found.tolist() == [ordinary_size(part) for part in parts] and found[2] == 0.0 < found[3]
    # Of 26 the 24th and of one that one: the greatest of which at most 95 in a hundred of the steps lie below.
    sizes = sorted(np.abs(parts[0][np.isfinite(parts[0])]).tolist())
    assert len(sizes) == 26 and found[0] == sizes[23] and found[1] == abs(parts[1][0])


def test_long_bars_are_cut_with_their_sign():
    lengths, cut = bar_lengths([0.01, -0.01, 3.0, -3.0, 0.04], 1000.0, 40.0)
    assert lengths.tolist() == [10.0, -10.0, 40.0, -40.0, 40.0] and cut.tolist() == [False, False, True, True, False]


# --- bars


@pytest.mark.parametrize("height", [0.0, 1500.0])
def test_bars_against_independent_geodesics(world, along, owed, height):
    """Foot and end of each bar by geographiclib, poles and antimeridian included; lengths at the chainage height."""
    errors = []
    for lat, lon, azimuth, length in world.axes:
        end = world.geodesic.Direct(lat, lon, azimuth, length)
        line = AxisLine("line", [lat, end["lat2"]], [lon, end["lon2"]], world.ellipsoid)
        axis = Axis(line, height)
        scale, across = (1.0 + height / radius[0] for radius in line.mean_radii)
        lengths = np.array([250.0, -40.0, 0.5])
        lats, lons = bar_ends(axis, np.array([0.1, 0.5, 0.9]) * axis.length, lengths)
        for k, share in enumerate((0.1, 0.5, 0.9)):
            foot = along(world.geodesic, lat, lon, azimuth, share * axis.length / scale)
            tip = along(world.geodesic, lat, lon, azimuth, share * axis.length / scale, lengths[k] / across)
            for column, want in ((0, foot), (1, tip)):
                errors.append(world.geodesic.Inverse(lats[k, column], lons[k, column], *want[:2])["s12"])
            drawn = world.geodesic.Inverse(lats[k, 0], lons[k, 0], lats[k, 1], lons[k, 1])["s12"]
            assert drawn * across == pytest.approx(abs(lengths[k]), abs=1e-6)
    owed("ends of residual bars", errors, 1e-6)


def test_a_bar_of_no_length_is_a_millimetre(wgs84):
    axis = Axis(AxisLine("line", [50.0, 50.01], [8.0, 8.0], wgs84))
    lat, lon = bar_ends(axis, np.array([100.0, 200.0]), np.array([0.0, -1e-5]))
    geodesic = Geodesic.WGS84
    lengths = [geodesic.Inverse(lat[k, 0], lon[k, 0], lat[k, 1], lon[k, 1])["s12"] for k in (0, 1)]
    assert lengths == pytest.approx([1e-3] * 2)
    assert lon[0, 1] > 8.0 > lon[1, 1], "up-chainage is north, so right is east"


# --- beside a kinked axis


def kinked(wgs84, *turns, leg=1000.0, start=(50.0, 8.0, 30.0)):
    lat, lon, azimuth = start
    lats, lons = [lat], [lon]
    for turn in (0.0, *turns):
        azimuth += turn
        end = Geodesic.WGS84.Direct(lats[-1], lons[-1], azimuth, leg)
        lats.append(end["lat2"])
        lons.append(end["lon2"])
        azimuth = end["azi2"]
    return Axis(AxisLine("bent", lats, lons, wgs84))


def test_points_beside_many_axes_are_those_of_each(wgs84):
    """Axes with and without bends, one of them twice, by turns; a straight one against geographiclib."""
    straight = Axis(AxisLine("s", [48.0, 48.02], [8.0, 8.0], wgs84), 0.0, 50.0)
    bent = Axis(AxisLine("b", [47.0, 47.01, 47.01], [8.0, 8.0, 8.02], wgs84), 300.0)
    which = np.array([1, 0, 1, 1, 0, 1, 1])
    chainage = np.array([-50.0, 60.0, 700.0, 1100.0, 550.0, 1111.5, 2500.0])
    offset = np.array([30.0, -5.0, 30.0, -12.0, -5.0, 30.0, 30.0])
    found = np.array(AxesOnMap([straight, bent]).beside(which, chainage, offset))
    for k, axis in enumerate((straight, bent)):
        own = which == k
        assert np.array_equal(found[:, own], beside(axis, chainage[own], offset[own]))
    geodesic = Geodesic(wgs84.a, wgs84.f)
    foot = geodesic.Direct(48.0, 8.0, 0.0, 500.0)
    end = geodesic.Direct(foot["lat2"], foot["lon2"], foot["azi2"] - 90.0, 5.0)
    assert found[:, 4] == pytest.approx(np.array([end["lat2"], end["lon2"]]), abs=1e-11)


def test_lines_along_many_axes_are_those_of_each(wgs84):
    axes = [kinked(wgs84, 30.0, -20.0), kinked(wgs84), kinked(wgs84, *[5.0] * 6, leg=90.0)]
    first, last = np.array([-10.0, 3.0, 100.0]), np.array([2_900.0, 3.5, 600.0])
    both = AxesOnMap(axes)
    rows, chainage = both.along(np.arange(3), first, last)
    rings, lat, lon = both.bands(np.arange(3), first, last, np.array([3.0, 4.0, 5.0]))
    folded = both.folds(np.arange(3), np.array([4_000.0, 4_000.0, 10.0]), first, last)
    for k, (axis, own, *places) in enumerate(zip(axes, rows.parts(chainage), rings.parts(lat), rings.parts(lon))):
        assert np.array_equal(own, chainages_along(axis, first[k], last[k])) and np.all(np.diff(own) > 0.0)
        # By the definition: even pieces of up to 250 m, and each vertex between.
        even = np.linspace(first[k], last[k], int((last[k] - first[k]) / 250.0) + 2)
        inner = axis.vertex_chainages[(axis.vertex_chainages > first[k]) & (axis.vertex_chainages < last[k])]
        assert own == pytest.approx(np.union1d(even, inner), abs=1e-9)
        assert np.array_equal(places, band(axis, first[k], last[k], 3.0 + k))
        assert folded[k] == folds(axis, (4_000.0, 4_000.0, 10.0)[k], first[k], last[k])
    assert folded.tolist() == [True, False, False]


def test_beside_a_straight_axis_is_its_place(wgs84):
    axis = kinked(wgs84)
    chainage, offset = np.array([-50.0, 0.0, 400.0, 1000.0, 1100.0]), np.array([5.0, -80.0, 300.0, 0.0, -300.0])
    lat, lon = beside(axis, chainage, offset)
    want = axis.place(chainage, offset)
    assert lat == pytest.approx(want[0], abs=1e-13) and lon == pytest.approx(want[1], abs=1e-13)


@pytest.mark.parametrize("turn", [20.0, -20.0, 75.0, -75.0])
@pytest.mark.parametrize("offset", [150.0, -150.0])
def test_lines_beside_a_bend_meet_and_keep_their_offset(wgs84, turn, offset):
    axis = kinked(wgs84, turn)
    chainage = np.array([300.0, 1000.0 - 1e-7, 1000.0, 1700.0])
    lat, lon = beside(axis, chainage, np.full(4, offset))
    gap = Geodesic.WGS84.Inverse(lat[1], lon[1], lat[2], lon[2])["s12"]
    assert gap < 2e-3, "a sphere's excess over a bend of a kilometre's legs is less"
    # The mitre: offset / cos(half the bend) from the vertex. Source: plane trigonometry.
    from_vertex = Geodesic.WGS84.Inverse(axis.line.lat[1], axis.line.lon[1], lat[2], lon[2])["s12"]
    assert from_vertex == pytest.approx(abs(offset) / np.cos(np.radians(turn / 2)), rel=1e-6)
    for k, leg in ((0, 0), (3, 1)):
        start = axis.line.lat[leg], axis.line.lon[leg]
        seen = Geodesic.WGS84.Inverse(*start, lat[k], lon[k])
        across = seen["s12"] * np.sin(np.radians(seen["azi1"] - axis.line.azimuths[leg]))
        assert across == pytest.approx(offset, abs=1e-3)


def test_folds_only_inside_a_bend_and_only_where_it_is_too_near(wgs84):
    axis = kinked(wgs84, 60.0, leg=200.0)
    # The inner side of a leg is used up at 200 m / tan 30 degrees.
    assert not folds(axis, 340.0, 0.0, 400.0) and folds(axis, 350.0, 0.0, 400.0) and not folds(axis, -900.0, 0.0, 400.0)
    assert not folds(axis, 350.0, 0.0, 0.0)
    assert folds(kinked(wgs84, 150.0), 1.0, 0.0, 2000.0), "a hairpin"


@pytest.mark.parametrize("turns", [(), (30.0,), (-30.0, 40.0)])
def test_band_has_the_area_of_its_sides(wgs84, turns):
    """Against geographiclib's area of polygons: with mitred bends it is length times width."""
    axis = kinked(wgs84, *turns)
    lat, lon = band(axis, 0.0, axis.length, 25.0)
    assert (lat[0], lon[0]) == (lat[-1], lon[-1])
    polygon = Geodesic.WGS84.Polygon()
    for place in zip(lat[:-1], lon[:-1]):
        polygon.AddPoint(*place)
    _, perimeter, area = polygon.Compute(False, True)
    assert abs(area) == pytest.approx(axis.length * 50.0, rel=1e-6)
    assert perimeter == pytest.approx(2 * axis.length + 100.0, rel=1e-2)


# --- paths


def test_bars_of_many_axes_are_those_of_each(wgs84):
    """Straight and bent axes beside each other: each bar begins on its own axis, and ends across it."""
    straight = Axis(AxisLine("b", [10.0, 10.02], [20.0, 20.01], wgs84), 800.0, 300.0)
    axes, which = [kinked(wgs84, 30.0), straight], np.array([0, 1, 0, 0])
    chainage, length = np.array([10.0, 310.0, 900.0, 1100.0]), np.array([-30.0, 40.0, 5.0, 12.0])
    lat, lon = AxesOnMap(axes).bars(which, chainage, length)
    for k, axis in enumerate(axes):
        own = which == k
        for column, at in ((0, 0.0), (1, length[own])):
            places = np.array([lat[own, column], lon[own, column]])
            assert np.abs(places - axis.place(chainage[own], at)[:2]).max() < 1e-13
    assert AxesOnMap(axes).bars(which[:0], chainage[:0], length[:0])[0].shape == (0, 2)


def test_path_is_cut_at_the_edges():
    path = Path(np.arange(5.0), np.array([0.0, 4.0, 0.0, -4.0, 0.0]))
    parts, cut = within(path, -2.0, 1.0)
    assert cut and [(p.chainage.tolist(), p.value.tolist()) for p in parts] == [
        ([0.0, 0.25], [0.0, 1.0]),
        ([1.75, 2.0, 2.5], [1.0, 0.0, -2.0]),
        ([3.5, 4.0], [-2.0, 0.0]),
    ]
    parts, cut = within(path, -4.0, 4.0)
    assert not cut and len(parts) == 1


def test_path_parts_where_there_is_no_height():
    path = Path(np.arange(6.0), np.array([1.0, 1.0, NAN, 1.0, NAN, NAN]))
    parts, cut = within(path, 0.0, 2.0)
    assert not cut and [p.chainage.tolist() for p in parts] == [[0.0, 1.0], [3.0]]
    assert within(Path(np.arange(2.0), np.array([5.0, 6.0])), 0.0, 1.0) == ([], True)


def test_many_paths_are_cut_as_each():
    """One that is whole, one with a gap, one beyond its edges, and one of which nothing is left."""
    values = [[0.1, 0.2], [1.0, 1.0, NAN, 1.0], [0.0, 4.0, 0.0, -4.0, 0.0], [9.0, 9.0]]
    low, high = np.array([0.0, 0.0, -2.0, 0.0]), np.array([1.0, 2.0, 1.0, 1.0])
    rows = Segments([len(one) for one in values])
    paths = [Path(np.arange(float(len(one))), np.array(one)) for one in values]
    whole = Path(*(np.concatenate([getattr(path, name) for path in paths]) for name in ("chainage", "value")))
    line, parts, found, cut = within_each(rows, whole, low, high)
    assert line.tolist() == [0, 1, 1, 2, 2, 2] and cut.tolist() == [False, False, True, True]
    want = [part for path, *edge in zip(paths, low, high) for part in within(path, *edge)[0]]
    for one, chainage, value in zip(want, parts.parts(found.chainage), parts.parts(found.value)):
        assert np.array_equal(one.chainage, chainage) and np.array_equal(one.value, value)


def test_points_are_put_onto_paths():
    """Against numpy: two paths, of which one has a point twice; points that are there already, and a gap."""
    chainage, value = np.array([0.0, 2.0, 2.0, 5.0, 1.0, 4.0, 6.0]), np.array([1.0, 3.0, 7.0, 1.0, 2.0, 8.0, NAN])
    line, extra = np.array([0, 0, 0, 0, 1, 1]), np.array([0.0, 0.5, 2.0, 3.0, 1.5, 5.0])
    rows, at, (found,) = with_points(Segments([4, 3]), chainage, [value], line, extra)
    assert rows.counts.tolist() == [6, 5]
    assert at.tolist() == [0.0, 0.5, 2.0, 2.0, 3.0, 5.0, 1.0, 1.5, 4.0, 5.0, 6.0]
    want = [1.0, np.interp(0.5, [0, 2], [1, 3]), 3.0, 7.0, np.interp(3.0, [2, 5], [7, 1]), 1.0]
    assert found == pytest.approx(np.array([*want, 2.0, np.interp(1.5, [1, 4], [2, 8]), 8.0, NAN, NAN]), nan_ok=True)


# --- the strip

# A chord of 2 km that lies 78 mm below the level surface at its middle (s(L - s)/2R, R = 6380 km).
CHAINAGE = np.array([0.0, 1000.0, 2000.0])
ONE = Segments([3])
CHORD = StripHeights(
    ONE,
    CHAINAGE,
    100.0 - CHAINAGE * (2000.0 - CHAINAGE) / 2 / 6_380_000.0,
    np.full(3, 100.0),
    np.array([0.0, 0.005, NAN]),
)


def test_two_ways_of_looking():
    level, straight = CHORD.lines("level"), CHORD.lines("straight")
    assert level["level"].tolist() == [0.0] * 3 and straight["design"].tolist() == [0.0] * 3
    assert level["design"][1] == pytest.approx(-0.078370, abs=1e-6) and level["flat"].tolist() == [0.0] * 3
    assert straight["level"][1] == pytest.approx(0.078370, abs=1e-6)
    for lines in (level, straight):
        assert lines["as-built"][1] - lines["design"][1] == pytest.approx(0.005)
        assert np.isnan(lines["as-built"][2])
        assert lines["level"] - lines["design"] == pytest.approx(straight["level"])


def shown(profile, view, tolerance=0.0):
    low, high, fits = shown_ranges(profile, view, np.array([tolerance]))
    return low[0], high[0], bool(fits[0])


def test_range_holds_all_lines_but_no_blunder():
    low, high, fits = shown(CHORD, "level", 0.01)
    assert fits and low == pytest.approx(-0.07837, abs=1e-5) and high == pytest.approx(0.0, abs=1e-9)
    n = 40
    level = np.full(n, 10.0)
    wild = StripHeights(Segments([n]), np.arange(n) * 50.0, level, level, np.where(np.arange(n) == 7, 300.0, 0.003))
    low, high, _ = shown(wild, "level")
    assert high == pytest.approx(0.012) and low == 0.0


def test_a_level_line_that_would_squeeze_all_else_is_left_out():
    slope = 10.0 + 0.01 * CHAINAGE
    steep = StripHeights(ONE, CHAINAGE, slope, slope, np.array([0.0, 0.02, 0.0]))
    assert shown(steep, "straight")[2] is False and shown(steep, "straight")[1] == pytest.approx(0.02)
    assert shown(steep, "level") == (0.0, pytest.approx(20.0), True)
    # Beside another one neither changes.
    both = StripHeights(
        Segments([3, 3]),
        *(np.concatenate([getattr(one, name) for one in (CHORD, steep)]) for name in ("chainage", "design", "flat")),
        np.concatenate([CHORD.residual, steep.residual]),
    )
    found = shown_ranges(both, "straight", np.array([0.01, 0.0]))
    want = shown(CHORD, "straight", 0.01), shown(steep, "straight")
    assert list(zip(*(column.tolist() for column in found))) == list(want)


@pytest.mark.parametrize(
    "low, high, step, want",
    [
        (-0.233, 0.215, 0.1, (-0.3, 0.3)),
        (0.0, 0.3, 0.1, (0.0, 0.3)),
        (0.0, 0.0, 0.5, (0.0, 0.5)),
        (-0.2, -0.1, 0.1, (-0.2, -0.1)),
    ],
)
def test_edges(low, high, step, want):
    assert edges(low, high, step) == pytest.approx(want)


@pytest.mark.parametrize(
    "spans, unit, want",
    [([0.45], 1.0, 0.1), ([0.1, 20.5 * 0.3048], 0.3048, 5 * 0.3048), ([0.0], 1.0, 0.001), ([], 1.0, 0.001)],
)
def test_grid_step(spans, unit, want):
    assert grid_step(spans, unit) == pytest.approx(want, rel=1e-12)


def test_frame_and_its_scale():
    edge, near, side = np.array([0.3, 0.2]), np.array([330.0, 10.0]), np.array([-1, 1])
    frame = StripFrame(-edge, edge, 0.1, strip_factor([0.6, 0.4], 2400.0), near, side)
    rows, numbers = frame.grid
    assert frame.factor == 500 and [part.tolist() for part in rows.parts(numbers)] == [
        [-3, -2, -1, 0, 1, 2, 3],
        [-2, -1, 0, 1, 2],
    ]
    assert frame.of(0).offset([-0.3, 0.3]) == pytest.approx([-330.0, -630.0]), "heights grow away from the axis"
    assert frame.offset(edge).tolist() == pytest.approx([-630.0, 210.0])


@pytest.mark.parametrize(
    "first, last, unit, want",
    [
        (0.0, 2400.0, 1.0, [0, 500, 1000, 1500, 2000]),
        (-130.0, 70.0, 1.0, [-100, -50, 0, 50]),
        (1200 * 0.3048, 18260 * 0.3048, 0.3048, [2000 * k for k in range(1, 10)]),
    ],
)
def test_ticks(first, last, unit, want):
    rows, found = tick_chainages(np.array([first, 0.0]), np.array([last, unit]), unit)
    own, other = rows.parts(found)
    assert own / unit == pytest.approx(np.array(want), abs=1e-9)
    assert other / unit == pytest.approx(np.arange(6) / 5.0, abs=1e-9)


def test_the_strip_keeps_away_from_the_other_axes(wgs84):
    north = AxisLine("north", [50.0, 50.02], [8.0, 8.0], wgs84)
    east = AxisLine("east", [50.0, 50.0], [8.0, 8.03], wgs84)
    assert side_away(Axis(north), [east]) == -1 and side_away(Axis(east), [north]) == 1
    assert side_away(Axis(north), []) == 0 and side_away(Axis(north), [north]) == 0


def test_pieces_of_a_short_line_follow_the_geodesic(wgs84):
    """At 80 degrees, where a geodesic eastwards leaves a line straight in latitude and longitude most: by tan(latitude)
    d^2 / 8 N, 7 mm for 250 m. A long line has a hundred pieces."""
    lat, lon, _ = wgs84.forward([80.0, 80.0], [10.0, 10.0], [90.0, 90.0], [0.0, 1000.0])
    axis = Axis(AxisLine("north", lat, lon, wgs84))
    s = chainages_along(axis, 0.0, 999.0)
    assert 0.0 < np.diff(s).max() <= 250.0
    ends, middles = beside(axis, s, 20.0), beside(axis, 0.5 * (s[1:] + s[:-1]), 20.0)
    straight = [0.5 * (values[1:] + values[:-1]) for values in ends]
    off = wgs84.inverse(*middles, *straight)[2]
    assert 0.005 < off.max() < 0.0075
    assert len(chainages_along(axis, -40_000.0, 40_000.0)) == 102
