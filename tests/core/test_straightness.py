"""Straightness of a row of stations, against known departures and a parabola's textbook values."""

import numpy as np
import pytest

from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.covariance import independent
from tautline.algorithms.core.fit import Heights, fit_surface, line_frame
from tautline.algorithms.core.lateral import LineStations, planes_through_ends
from tautline.algorithms.core.lateral_fit import Sideways, fit_sideways
from tautline.algorithms.core.straightness import straightness, straightness_of_lines


def measured(wgs84, up, aside, number=201, length=2000.0, height0=300.0, skew=0.0, remove=False):
    """Straightness of stations ``up`` above and ``aside`` to the right of a straight line, metres; ``skew``: degrees
    by which the axis was drawn askew."""
    along = np.linspace(0.0, length, number)
    lat, lon, azimuth = wgs84.forward(np.full(number, -31.0), np.full(number, 22.0), np.full(number, 40.0), along)
    end = wgs84.forward(-31.0, 22.0, 40.0 + skew, length)
    axis = Axis(AxisLine("a", [-31.0, end[0]], [22.0, end[1]], wgs84), height0)
    frame = line_frame(axis, 0.0, axis.length)
    lat, lon, _ = wgs84.forward(lat, lon, azimuth + 90.0, np.asarray(aside) / (1 + height0 / 6.37e6))
    height = frame.plane(height0, [1e-4]).heights(lat, lon, wgs84) + up
    fit = fit_surface(frame, Heights(lat, lon, height, independent(np.full(number, 0.002))), remove=remove)
    kept = fit.search.kept
    return straightness(fit, lat[kept], lon[kept], height[kept]), fit


def waves(number=201):
    """Two departures without mean and trend, orthogonal to each other: cosines over whole periods."""
    turn = 2 * np.pi * np.arange(number) / (number - 1)
    return 0.004 * np.cos(4 * turn), 0.003 * np.cos(6 * turn)


@pytest.mark.parametrize("skew", [0.0, 0.02])
def test_upwards_sideways_and_together(wgs84, skew):
    up, aside = waves()
    found, _ = measured(wgs84, up, aside, skew=skew)

    def less_line(values):
        x = np.linspace(-1.0, 1.0, len(values))
        return values - np.polyval(np.polyfit(x, values, 1), x)

    up, aside = less_line(up), less_line(aside)
    assert found.vertical.rms == pytest.approx(np.sqrt(np.mean(up**2)), abs=2e-6)
    assert found.vertical.range == pytest.approx(np.ptp(up), abs=5e-6)
    assert found.lateral.rms == pytest.approx(np.sqrt(np.mean(aside**2)), abs=2e-6)
    assert found.lateral.range == pytest.approx(np.ptp(aside), abs=5e-6)
    assert found.combined.rms == pytest.approx(np.sqrt(found.vertical.rms**2 + found.lateral.rms**2), abs=1e-9)
    assert found.combined.range == pytest.approx(np.hypot(up, aside).max(), abs=5e-6)


def test_a_straight_row_has_none(wgs84):
    found, _ = measured(wgs84, np.zeros(201), np.zeros(201))
    for part in (found.vertical, found.lateral, found.combined):
        assert part.rms < 2e-7 and part.range < 1e-6


def test_a_level_row_departs_by_its_sagitta(wgs84):
    """Peak to valley of a parabola is its sagitta s, its RMS s sqrt(4/45) (Legendre expansion); here s = L^2 / 8R."""
    x = np.linspace(-1000.0, 1000.0, 2001)
    sagitta = 1000.0**2 / 2 / 6.37e6
    found, _ = measured(wgs84, -sagitta * (x / 1000.0) ** 2, np.zeros(2001), number=2001)
    assert found.vertical.range == pytest.approx(sagitta, rel=1e-3)
    assert found.vertical.rms == pytest.approx(sagitta * np.sqrt(4 / 45), rel=2e-3)


def test_a_blunder_set_aside_does_not_count(wgs84):
    up, aside = waves()
    wild = up.copy()
    wild[50] += 0.5
    clean, _ = measured(wgs84, up, aside)
    found, fit = measured(wgs84, wild, aside, remove=True)
    assert not fit.search.kept[50]
    assert found.vertical.range < 0.009 and found.vertical.rms == pytest.approx(clean.vertical.rms, rel=0.02)


def test_minimum_zones_beside_the_ranges(wgs84):
    """Never larger than about the best-fit line, the cylinder never smaller than either profile; of a level row the
    zone is its sagitta (Legendre expansion), of a straight one nothing."""
    up, aside = waves()
    for skew in (0.0, 0.02):
        found, _ = measured(wgs84, up, aside, skew=skew)
        assert 0.0 < found.vertical_zone <= found.vertical.range and found.vertical_zone > 0.9 * np.ptp(up)
        assert 0.0 < found.lateral_zone <= found.lateral.range and found.lateral_zone > 0.9 * np.ptp(aside)
        least = max(found.vertical_zone, found.lateral_zone)
        assert least * (1 - 1e-9) <= found.cylinder <= 2.0 * found.combined.range
    x = np.linspace(-1000.0, 1000.0, 2001)
    sagitta = 1000.0**2 / 2 / 6.37e6
    level, _ = measured(wgs84, -sagitta * (x / 1000.0) ** 2, np.zeros(2001), number=2001)
    assert level.vertical_zone == pytest.approx(sagitta, rel=1e-5) and level.cylinder == pytest.approx(
        sagitta, rel=1e-5
    )
    straight, _ = measured(wgs84, np.zeros(201), np.zeros(201))
    assert max(straight.vertical_zone, straight.lateral_zone, straight.cylinder) < 1e-6


def with_line(wgs84, up, aside, number=41, robust=False):
    """Straightness of stations with the line in plan fitted too, and both fits; places by the library's geodesics."""
    along = np.linspace(0.0, 2000.0, number)
    lat, lon, azimuth = wgs84.forward(*(np.full(number, v) for v in (-31.0, 22.0, 40.0)), along)
    end = wgs84.forward(-31.0, 22.0, 40.0, 2000.0)
    frame = line_frame(Axis(AxisLine("a", [-31.0, end[0]], [22.0, end[1]], wgs84), 0.0), 0.0, 2000.0)
    lat, lon, _ = wgs84.forward(lat, lon, azimuth + 90.0, aside)
    height = frame.plane(0.0, [0.0]).heights(lat, lon, wgs84) + up
    fit = fit_surface(frame, Heights(lat, lon, height, independent(np.full(number, 0.002))), remove=True, robust=robust)
    zero = np.zeros(number, int)
    planes, along, side = planes_through_ends(
        ["a"], LineStations(zero, lat, lon, height, along, aside, zero == 0, wgs84)
    )
    line = fit_sideways("a", Sideways(planes, along, side, independent(zero + 0.002)), remove=True, robust=robust)
    kept = fit.search.kept
    return straightness_of_lines([fit], [(lat[kept], lon[kept], height[kept])], [line])[0], fit, line


def test_a_station_doubted_in_one_part_counts_in_the_other(wgs84):
    """Upwards those kept upwards, sideways those kept sideways, together those kept in both."""
    dice = np.random.default_rng(6)
    up, aside = dice.normal(0.0, 0.002, (2, 41))
    up[7] += 0.1
    aside[30] += 0.1
    found, fit, line = with_line(wgs84, up, aside)
    assert np.flatnonzero(~fit.search.kept).tolist() == [7] and np.flatnonzero(~line.search.kept).tolist() == [30]
    x, sides = np.arange(41.0), []
    for values, wrong in ((up, 7), (aside, 30)):
        keep = x != wrong
        sides.append(values - np.polyval(np.polyfit(x[keep], values[keep], 1), x))
        assert np.ptp(sides[-1][keep]) == pytest.approx((found.vertical, found.lateral)[len(sides) - 1].range, abs=5e-7)
    both = np.hypot(*sides)[(x != 7) & (x != 30)]
    assert found.combined.rms == pytest.approx(np.sqrt(np.mean(both**2)), abs=1e-7)
    assert found.combined.range == pytest.approx(both.max(), abs=5e-7)
    assert found.lateral_zone <= found.lateral.range and found.cylinder <= 2.0 * found.combined.range < 0.02


def test_where_no_station_is_kept_in_both_there_is_nothing_together(wgs84):
    """The robust start may leave one half of them aside upwards, the other half sideways."""
    found, fit, line = with_line(wgs84, np.zeros(41), np.zeros(41))
    object.__setattr__(fit.search.fitted, "kept", np.arange(41) < 20)
    object.__setattr__(line.search.fitted, "kept", np.arange(41) >= 20)
    none = straightness_of_lines([fit], [(np.zeros(20),) * 3], [line])[0]
    assert found.combined.rms < 1e-6
    assert np.isnan([none.combined.rms, none.combined.range, none.cylinder]).all()
    assert none.vertical.rms < 1e-6 and none.lateral_zone < 1e-6
