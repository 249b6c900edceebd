"""Lateral departures: against 50 digits, an independent solution by SVD, geodesics, and published straight lines."""

import mpmath
import numpy as np
import pytest

from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.geodesy import foot_and_normal, position
from tautline.algorithms.core.lateral import LineStations, line_departures, line_statistics, plan_bends
from tautline.algorithms.core.residuals import sides


def row(ellipsoid, start, along, offsets, height=0.0, axis=0, surveyed=True):
    """LineStations beside the geodesic from ``start`` = (lat, lon, azimuth), by the library's geodesics."""
    along = np.atleast_1d(np.asarray(along, float))
    offsets, height = np.zeros(len(along)) + offsets, np.zeros(len(along)) + height
    lat, lon, azimuth = ellipsoid.forward(*(np.full(len(along), v) for v in start), along)
    lat, lon, _ = ellipsoid.forward(lat, lon, azimuth + 90.0, offsets)
    full = np.full(len(along), axis)
    return LineStations(full, lat, lon, height, along, offsets, np.zeros(len(along), bool) | surveyed, ellipsoid)


def together(*parts):
    """LineStations of several axes, one after the other."""
    names = ("axis", "lat", "lon", "height", "chainage", "offset", "surveyed")
    return LineStations(
        *(np.concatenate([getattr(part, name) for part in parts]) for name in names), parts[0].ellipsoid
    )


def departures(kind, stations, **more):
    return line_departures([kind], ["a"], stations, **more).lateral


def in_plan(exact_, stations, at=(0, -1)):
    """Two coordinates of each station, 50 digits, on axes level half-way between the stations ``at``: ahead, right."""
    places = [exact_.position(*one) for one in zip(stations.lat, stations.lon, stations.height)]
    up = [exact_.normal(stations.lat[k], stations.lon[k]) for k in at]
    up = tuple(p + q for p, q in zip(*up))
    right = exact_.cross(tuple(q - p for p, q in zip(places[at[0]], places[at[-1]])), up)
    right, up = (tuple(c / mpmath.sqrt(exact_.dot(v, v)) for c in v) for v in (right, up))
    ahead = exact_.cross(up, right)
    away = [tuple(p - q for p, q in zip(place, places[at[0]])) for place in places]
    return [(exact_.dot(one, ahead), exact_.dot(one, right)) for one in away]


def test_chord_and_fit_against_50_digits(world, exact, owed):
    """Any ellipsoid, poles, antimeridian and southern half included, axes of 10 m to 200 km, at heights."""
    dice = world.dice()
    for lat, lon, azimuth, length in world.axes:
        along = np.sort([0.0, length, *(dice.uniform(0.0, length) for _ in range(5))])
        offsets = [dice.uniform(-2.0, 2.0) for _ in along]
        stations = row(world.ellipsoid, (lat, lon, azimuth), along, offsets, [dice.uniform(-50, 2000) for _ in along])
        plan = in_plan(exact(world.ellipsoid), stations)
        found = departures("chord", stations)
        owed("line, chord", [mpmath.mpf(v) - y for v, (_, y) in zip(found, plan)], 1e-8)
        # The fit by another way: the line through the mean in the direction t that makes sum (p . n)^2 least, by
        # bisection of its derivative in the angle.
        mean = [sum(p[k] for p in plan) / len(plan) for k in (0, 1)]
        xy = [(x - mean[0], y - mean[1]) for x, y in plan]

        def slope(angle, xy=xy):
            s, c = mpmath.sin(angle), mpmath.cos(angle)
            return sum((c * y - s * x) * (-s * y - c * x) for x, y in xy)

        angle = mpmath.findroot(slope, (-0.3, 0.3), solver="anderson")
        exactly = [mpmath.cos(angle) * y - mpmath.sin(angle) * x for x, y in xy]
        found = departures("fitted", stations)
        owed("line, fitted", [mpmath.mpf(v) - y for v, y in zip(found, exactly)], 1e-8)


def test_the_fit_against_a_singular_value_decomposition(world):
    """Another algorithm in other coordinates: east and north at the middle station, the least singular vector."""
    dice = world.dice()
    for lat, lon, azimuth, length in world.axes[:12]:
        along = np.linspace(0.0, length, 9)
        stations = row(world.ellipsoid, (lat, lon, azimuth), along, [dice.uniform(-1, 1) for _ in along], 300.0)
        up = foot_and_normal(stations.lat[[0, -1]], stations.lon[[0, -1]], world.ellipsoid)[1].sum(axis=0)
        up /= np.linalg.norm(up)
        places = position(stations.lat, stations.lon, stations.height, world.ellipsoid)
        flat = places - places.mean(axis=0)
        flat -= np.outer(flat @ up, up)
        normal = np.linalg.svd(flat)[2][1]
        ahead = flat[-1] - flat[0]
        normal *= np.sign(np.cross(ahead, up) @ normal)
        assert departures("fitted", stations) == pytest.approx(flat @ normal, abs=2e-8)


def test_the_plane_follows_the_geodesic(wgs84):
    """Vertical plane and geodesic part by 4e-8 m on 4 km and 4e-5 m on 40 km (geographiclib, any azimuth)."""
    for length, limit in ((4e3, 6e-8), (4e4, 6e-5)):
        for azimuth in range(0, 360, 15):
            stations = row(wgs84, (47.0, 11.0, azimuth), np.linspace(0.0, length, 11), 0.0)
            assert np.abs(departures("chord", stations)).max() < limit


def test_the_side_is_that_of_the_chainage(wgs84):
    """Right is positive looking up-chainage, whichever way the axis runs and in whatever order its stations come."""
    for start in ((51.0, 7.0, 10.0), (51.0, 7.0, 190.0), (-33.0, 151.0, 100.0), (0.0, 179.999, 90.0)):
        stations = row(wgs84, start, [400.0, 0.0, 1000.0, 600.0], [0.02, 0.0, 0.0, -0.03], 250.0)
        scale = 1.0 + 250.0 / 6.37e6
        assert departures("chord", stations) == pytest.approx([0.02 * scale, 0.0, 0.0, -0.03 * scale], abs=2e-6)
        assert np.array_equal(departures("axis", stations), stations.offset)
        assert np.all(np.isnan(departures("none", stations)))


def test_heights_hardly_move_a_departure(wgs84):
    """A metre of height moves a lateral departure by about a micrometre at a few metres beside the line."""
    low, high = (
        row(wgs84, (45.0, 7.0, 30.0), [0.0, 1500.0, 3000.0], [0.0, 2.0, 0.0], h) for h in (100.0, [100, 101, 100])
    )
    assert np.abs(departures("chord", low) - departures("chord", high)).max() < 1e-6


# Published lines ----------------------------------------------------------------------------------------------------


def test_pearsons_line_of_closest_fit(wgs84, pearson):
    stations = row(wgs84, (-31.0, 22.0, 90.0), pearson.x, -pearson.y)
    line = line_departures(["fitted"], ["a"], stations)
    slope = pearson.slope
    expected = -(pearson.y - pearson.intercept - slope * pearson.x) / np.hypot(1.0, slope)
    # Half a unit in the last published digit of the slope is 4 mm at 7.4 m.
    assert line.lateral == pytest.approx(expected, abs=4e-3)
    east = np.array([-np.sin(np.radians(22.0)), np.cos(np.radians(22.0)), 0.0])
    assert np.tan(np.arccos(line.planes.ahead[0] @ east)) == pytest.approx(-slope, abs=6e-4)


def test_a_certified_straight_line(wgs84, norris):
    """x metres along, y millimetres to the right: what a fit leaves is what the certified regression leaves, save that
    distances are taken across the line, which changes 5e-7 of them."""
    line = line_departures(["fitted"], ["a"], row(wgs84, (48.0, 16.0, 70.0), norris.x, 1e-3 * norris.y))
    expected = 1e-3 * (norris.y - norris.intercept - norris.slope * norris.x)
    assert line.lateral == pytest.approx(expected, abs=1e-7)
    assert np.sqrt(np.sum(line.lateral**2) / 34) == pytest.approx(1e-3 * norris.sd, abs=2e-9)


# What a line rests on -----------------------------------------------------------------------------------------------


def test_weights_of_a_fit(wgs84):
    """A station of weight 3 counts as three stations of weight 1 at its place."""
    along, offsets = np.arange(6) * 200.0, np.array([0.01, -0.02, 0.0, 0.03, 0.01, -0.01])
    once = row(wgs84, (45.0, 7.0, 60.0), along, offsets)
    thrice = row(wgs84, (45.0, 7.0, 60.0), np.append(along, [along[3]] * 2), np.append(offsets, [offsets[3]] * 2))
    weight = np.array([1.0, 1.0, 1.0, 3.0, 1.0, 1.0])
    assert departures("fitted", once, weight=weight) == pytest.approx(departures("fitted", thrice)[:6], abs=1e-9)
    assert np.abs(departures("fitted", once) - departures("fitted", thrice)[:6]).max() > 1e-3


def test_stations_without_a_height_are_judged_but_carry_no_line(wgs84):
    along, offsets = np.arange(6) * 200.0, np.array([0.5, 0.01, -0.02, 0.02, -0.01, 0.7])
    surveyed = np.array([False, True, True, True, True, False])
    stations = row(wgs84, (45.0, 7.0, 60.0), along, offsets, surveyed=surveyed)
    line = line_departures(["chord"], ["a"], stations)
    assert (line.first[0], line.last[0], line.counted[0]) == (1, 4, 4)
    assert np.all(np.isfinite(line.lateral)) and abs(line.lateral[0]) > 0.4
    line = line_departures(["fitted"], ["a"], stations)
    assert line.counted[0] == 4 and line.first[0] == -1
    alone = row(wgs84, (45.0, 7.0, 60.0), along[1:5], offsets[1:5])
    assert line.lateral[1:5] == pytest.approx(departures("fitted", alone), abs=1e-9)
    few = row(wgs84, (45.0, 7.0, 60.0), along, offsets, surveyed=surveyed & (along < 500.0))
    assert line_departures(["fitted"], ["a"], few).counted[0] == 6


def test_ends_of_a_chord_may_be_told(wgs84):
    stations = row(wgs84, (45.0, 7.0, 60.0), np.arange(5) * 100.0, [0.3, 0.0, 0.02, 0.0, -0.4])
    for ends in ((1, 3), (3, 1)):
        line = line_departures(["chord"], ["a"], stations, ends=np.array([ends]))
        assert (line.first[0], line.last[0]) == (1, 3)
        assert line.lateral == pytest.approx([0.3, 0.0, 0.02, 0.0, -0.4], abs=1e-6)


def test_of_two_stations_at_one_chainage_the_nearer_one_to_the_axis_ends_a_chord(wgs84):
    """Chainages that noise tells apart are one, as where a design takes its controls."""
    along = np.array([0.0, 1e-9, 500.0, 1000.0, 1000.0 - 1e-9])
    stations = row(wgs84, (45.0, 7.0, 60.0), along, [0.5, 0.1, 0.0, 0.2, -0.4])
    line = line_departures(["chord"], ["a"], stations)
    assert (line.first[0], line.last[0]) == (1, 3)


def test_many_axes_are_as_each_by_itself(wgs84):
    kinds = ["chord", "none", "fitted", "axis", "fitted"]
    starts = [(45.0 + k, 7.0, 70.0 * k) for k in range(5)]
    offsets = np.array([0.01, -0.03, 0.02, 0.05, -0.01])
    rows = [row(wgs84, start, np.arange(5) * 90.0, (k + 1) * offsets, 50.0 * k, k) for k, start in enumerate(starts)]
    mixed = together(*rows)
    order = np.random.default_rng(1).permutation(25)
    names = ("axis", "lat", "lon", "height", "chainage", "offset", "surveyed")
    mixed = LineStations(*(getattr(mixed, name)[order] for name in names), wgs84)
    line = line_departures(kinds, list("abcde"), mixed)
    alone = np.concatenate(
        [
            departures(kind, row(wgs84, start, np.arange(5) * 90.0, (k + 1) * offsets, 50.0 * k))
            for k, (kind, start) in enumerate(zip(kinds, starts))
        ]
    )
    assert line.lateral == pytest.approx(alone[order], abs=2e-9, nan_ok=True)
    side = sides(line.lateral, np.array([0.01, np.nan, np.nan, 0.1, 0.05])[mixed.axis])
    found = line_statistics(line.lateral, side, mixed.axis, 5)
    assert found.number.tolist() == [5, 0, 5, 5, 5] and np.isnan(found.rms[1]) and found.greatest_at[1] == -1
    own = line.lateral[mixed.axis == 3]
    assert found.rms[3] == pytest.approx(np.sqrt(np.mean(own**2)), rel=1e-12)
    assert found.greatest[3] == own[np.argmax(np.abs(own))] == line.lateral[found.greatest_at[3]]
    assert [found.within[3], found.left[3], found.right[3]] == [3, 1, 1]
    assert set(side[mixed.axis == 2]) == {"no tolerance"} and set(side[mixed.axis == 1]) == {""}


def test_a_bent_axis_is_no_straight_line(wgs84):
    corner = wgs84.forward(45.0, 7.0, 60.0, 500.0)
    end = wgs84.forward(corner[0], corner[1], corner[2] + 2.0, 500.0)
    axis = Axis(AxisLine("bent", [45.0, corner[0], end[0]], [7.0, corner[1], end[1]], wgs84))
    chainage = np.linspace(0.0, axis.length, 11)
    lat, lon, _ = axis.place(chainage)
    stations = LineStations(np.zeros(11, int), lat, lon, np.zeros(11), chainage, np.zeros(11), np.ones(11, bool), wgs84)
    planes = line_departures(["chord"], ["bent"], stations).planes
    # The corner lies left of the chord by 500 m times the sine of half the turn.
    assert plan_bends(planes, [axis]) == pytest.approx([500.0 * np.sin(np.radians(1.0))], abs=1e-5)
    assert plan_bends(planes, [axis], [(0.0, 499.0)]) == pytest.approx([0.0])


@pytest.mark.parametrize(
    "kind, along, offsets, words",
    [
        ("chord", [0.0], 0.0, "the line 'chord' needs 2 stations; it has 1"),
        ("fitted", [0.0, 50.0], 0.0, "the line 'fitted' needs 3 stations; it has 2"),
        ("chord", [50.0, 50.0], 0.0, "at one place"),
        ("fitted", [0.0, 1.0, 2.0, 3.0], [0.0, 30.0, -30.0, 0.0], "do not lie along a line"),
    ],
)
def test_too_little_for_a_line_is_refused(wgs84, kind, along, offsets, words):
    with pytest.raises(InputError, match=words) as caught:
        line_departures([kind], ["north wall"], row(wgs84, (45.0, 7.0, 60.0), along, offsets))
    assert "north wall" in str(caught.value)


def test_sides_by_the_rule_of_residuals():
    """To the last digit of the tolerance is within, as with heights."""
    lateral = [0.004, 0.0040000004, -0.0041, 0.0041, np.nan]
    assert sides(lateral, 0.004).tolist() == ["within", "within", "left", "right", ""]
    assert sides(lateral).tolist() == ["no tolerance"] * 4 + [""]
    assert sides(lateral, [np.nan, 0.004, 0.01, 0.0, 0.1]).tolist() == ["no tolerance", "within", "within", "right", ""]
