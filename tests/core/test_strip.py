"""The profile strip: its grid and ticks by counting, its factor by the room it has, its side by where the
others are.
"""

import numpy as np
import pytest

from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.segments import Segments
from tautline.algorithms.core.strip import (
    StripFrame,
    edges,
    plan_halves,
    side_away,
    sides_away,
    strip_factor,
    tick_chainages,
)


def test_edges_and_grid_hold_the_range_in_whole_steps():
    for low, high, step in ((-0.013, 0.052, 0.02), (0.0, 0.0, 0.5), (1.99, 2.01, 0.01)):
        first, last = edges(low, high, step)
        assert first <= low + 1e-9 and last >= high - 1e-9 and last > first
        assert first / step == pytest.approx(round(first / step), abs=1e-6)
    frame = StripFrame(np.array([-0.02]), np.array([0.06]), 0.02, 1000.0, np.array([50.0]), np.array([-1]))
    assert frame.grid[1].tolist() == [-1, 0, 1, 2, 3]
    # 0.06 above the lower edge by 0.08 m, drawn a thousand times larger, 50 m to the left of the axis.
    assert frame.offset(0.06) == pytest.approx(-(50.0 + 80.0))


@pytest.mark.parametrize("length, unit", [(2_400.0, 1.0), (330.0, 0.3048), (98_765.0, 1.0)])
def test_ticks_are_round_and_between_four_and_ten(length, unit):
    ticks = tick_chainages(np.zeros(1), np.array([length]), unit)[1] / unit
    steps = np.diff(ticks)
    assert 4 <= len(steps) <= 10 and np.allclose(steps, steps[0])
    digits = float(f"{steps[0]:e}".split("e")[0])
    assert digits == pytest.approx(round(digits)) and round(digits) in (1, 2, 5)


def test_the_highest_strip_takes_a_sixth_of_the_length_at_most():
    factor = strip_factor([0.4, 0.1], 3000.0)
    assert factor * 0.4 <= 3000.0 / 6.0 < factor * 0.4 * 2.5 + 1e-9


def test_sides_of_many_axes_are_those_of_each(wgs84):
    dice = np.random.default_rng(2)
    places = dice.uniform(-0.1, 0.1, (12, 2, 2))
    lines = [AxisLine(f"{k}", 47.0 + lat, 8.0 + lon, wgs84) for k, (lat, lon) in enumerate(places)]
    axes = [Axis(line, 10.0 * k) for k, line in enumerate(lines)]
    for axis, side in zip(axes, sides_away(axes, lines)):
        others = [line for line in lines if line is not axis.line]
        # By geodesics to the vertices of the others: distance times the sine of the turn from the axis.
        lat, lon, azimuth = (v[0] for v in axis.place(0.5 * axis.length))
        away = [wgs84.inverse(lat, lon, *one) for line in others for one in zip(line.lat, line.lon)]
        across = np.mean([length * np.sin(np.radians(towards - azimuth)) for towards, _, length in away])
        assert side == side_away(axis, others) == -np.sign(across)


def test_the_strip_lies_away_from_the_other_axes(wgs84):
    line = AxisLine("a", [47.0, 47.02], [8.0, 8.0], wgs84)
    east = AxisLine("b", [47.0, 47.02], [8.01, 8.01], wgs84)
    west = AxisLine("c", [47.0, 47.02], [7.99, 7.99], wgs84)
    axis = Axis(line, 0.0)
    assert side_away(axis, [east]) == -1 and side_away(axis, [west]) == 1
    assert side_away(axis, []) == 0 and side_away(axis, [east, west]) == 0


@pytest.mark.parametrize(
    "lateral, tolerance, half",
    [
        ([0.001, -0.003, np.nan, 0.002], None, 0.003),
        ([0.001, -0.003, 0.002], 0.004, 0.005),
        # Four of the ordinary 2 mm, and one and a half tolerances, hold a wild one back.
        ([0.002, -0.002, 0.002, 0.9], None, 0.008),
        ([0.001, 0.0, 0.001, 0.9], 0.01, 0.015),
        ([0.0, 0.0], None, 0.0),
    ],
)
def test_the_plan_holds_departures_and_tolerance(lateral, tolerance, half):
    both = np.concatenate([lateral, [0.5, np.nan]]), Segments([len(lateral), 2])
    assert plan_halves(*both, np.array([tolerance or 0.0, 0.0])) == pytest.approx(np.array([half, 0.5]))
