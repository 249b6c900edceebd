"""Warnings about heights in the wrong unit: where they are due, and where not."""

import numpy as np
import pytest

from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.controls import DesignStations
from tautline.algorithms.core.design import DesignSpec, design_heights
from tautline.algorithms.core.unit_check import curvature_shown, unit_by_bend, unit_by_distance, unit_doubt

FOOT = 0.3048


def _stations(ellipsoid, heights, length=4000.0):
    end = ellipsoid.forward(45.0, 7.0, 30.0, length)
    axis = Axis(AxisLine("arm", [45.0, end[0]], [7.0, end[1]], ellipsoid))
    s = np.linspace(0.0, axis.length, 41)
    lat, lon, _ = axis.place(s)
    return DesignStations(axis, lat, lon, s, np.zeros(41), heights(s), np.zeros(41))


def _built(s):
    """A straight structure 80 m up with 2 mm of scatter, from (s - 2000)^2 / 2R."""
    return 80.0 + (s - 2000.0) ** 2 / 2.0 / 6.375e6 + np.random.default_rng(4).normal(0.0, 0.002, len(s))


def test_no_doubt_about_a_good_survey(wgs84):
    stations = _stations(wgs84, _built)
    for spec in (DesignSpec("chord"), DesignSpec("tangent", 2000.0, 80.0), DesignSpec("level", 0.0, 80.3)):
        assert unit_doubt(stations, design_heights(spec, stations), spec) == ""
    factor, deviation = curvature_shown(stations, design_heights(DesignSpec("chord"), stations))
    assert factor == pytest.approx(1.0, abs=4.0 * deviation) and deviation < 0.01


@pytest.mark.parametrize("factor, guess", [(1.0 / FOOT, "in feet"), (FOOT, "in metres")])
def test_heights_in_another_unit_against_typed_controls(wgs84, factor, guess):
    stations = _stations(wgs84, lambda s: factor * _built(s))
    spec = DesignSpec("tangent", 2000.0, 80.0)
    text = unit_doubt(stations, design_heights(spec, stations), spec)
    assert text.startswith("Axis 'arm': the heights are about") and guess in text and "HEIGHT_UNIT" in text


@pytest.mark.parametrize("factor, guess", [(1.0 / FOOT, "in feet"), (FOOT, "in metres")])
def test_heights_in_another_unit_by_their_curvature(wgs84, factor, guess):
    """Nothing typed: a structure that bends 3.28 times too much was read in the wrong unit."""
    stations, spec = _stations(wgs84, lambda s: factor * _built(s)), DesignSpec("chord")
    text = unit_doubt(stations, design_heights(spec, stations), spec)
    bend = float(text.split("bend ")[1].split()[0])
    assert bend == pytest.approx(factor, rel=0.02) and guess in text


def test_level_and_short_structures_raise_no_doubt(wgs84):
    """Level rails do not bend at all, and in 100 m nobody can tell."""
    for stations in (_stations(wgs84, lambda s: np.full(len(s), 80.0)), _stations(wgs84, _built, length=100.0)):
        spec = DesignSpec("chord")
        assert unit_doubt(stations, design_heights(spec, stations), spec) == ""


def test_too_few_heights(wgs84):
    stations = _stations(wgs84, lambda s: np.where(s < 300.0, 80.0, np.nan))
    spec = DesignSpec("tangent", 0.0, 0.5)
    assert unit_doubt(stations, design_heights(spec, stations), spec) == ""
    assert curvature_shown(stations, design_heights(spec, stations)) == (1.0, np.inf)
    nothing = _stations(wgs84, lambda s: np.full(len(s), np.nan))
    level = DesignSpec("level", 0.0, 5.0)
    assert unit_doubt(nothing, design_heights(level, nothing), level) == ""


def test_bend_of_a_straight_design_tells_its_unit():
    """A chord on a sphere of 6378 km, in closed form: s(s - L)/2R of the flat line, 3.28084 times that in feet."""
    s = np.linspace(0.0, 3000.0, 31)
    bend = s * (s - 3000.0) / (2.0 * 6.378e6)
    assert unit_by_bend(s, bend) == "metre" and unit_by_bend(s, bend / 0.3048) == "foot"
    assert unit_by_bend(s, 0.0 * bend) == "" and unit_by_bend(s, 2.0 * bend) == "" == unit_by_bend(s[:3], bend[:3])
    # Readings or a wave are no design.
    assert unit_by_bend(s, bend + 0.05 * np.sin(s / 100.0)) == ""


def test_distances_tell_the_unit_of_chainages():
    x, axis = np.arange(10) * 100.0, np.repeat([0, 1], 5)
    nothing = np.zeros(10)
    assert unit_by_distance(x, x, nothing, axis) == "metre" and unit_by_distance(x / 0.3048, x, nothing, axis) == "foot"
    assert unit_by_distance(2.0 * x, x, nothing, axis) == "" == unit_by_distance(np.full(10, np.nan), x, x, axis)
