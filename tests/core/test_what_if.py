"""A line through two points of a profile: against the sphere's closed form with 50 digits, and the design 'chord'."""

import mpmath
import numpy as np
import pytest

from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.controls import DesignStations
from tautline.algorithms.core.design import DesignSpec, design_heights
from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.geodesy import Ellipsoid
from tautline.algorithms.core.undulations import StationUndulations
from tautline.algorithms.core.what_if import ProfilePlaces, line_through

GRS80 = Ellipsoid(6378137.0, 1.0 / 298.257222101)
SPHERE = Ellipsoid(6371000.0, 0.0)


def places(ellipsoid, s, height, undulation=0.0, lat=45.0, lon=7.0, azimuth=60.0):
    """Stations on a geodesic at height 0, so that chainages are distances on the ellipsoid."""
    s = np.asarray(s, float)
    at = ellipsoid.forward(np.full(len(s), lat), np.full(len(s), lon), np.full(len(s), azimuth), s)
    full = np.zeros(len(s))
    return ProfilePlaces(ellipsoid, at[0], at[1], s, full + height, full + undulation)


def test_straight_line_on_a_sphere_in_closed_form(owed):
    """r = r_A r_B sin w / (r_A sin t + r_B sin(w - t)): the sine rule in the triangle of A, B and the centre."""
    s = np.linspace(0.0, 4000.0, 81)
    height = 80.0 + 0.002 * s
    line = line_through(places(SPHERE, s, height), *(places(SPHERE, s, height).station(k) for k in (60, 10)))
    errors = []
    with mpmath.workdps(50):
        r_a, r_b = (mpmath.mpf(6371000) + mpmath.mpf(height[k]) for k in (10, 60))
        whole = mpmath.mpf(s[60] - s[10]) / 6371000
        for k in range(81):
            t = mpmath.mpf(s[k] - s[10]) / 6371000
            true = r_a * r_b * mpmath.sin(whole) / (r_a * mpmath.sin(t) + r_b * mpmath.sin(whole - t)) - 6371000
            errors.append(float(true) - line.straight[k])
    owed("line through two stations, sphere", errors, 2e-8)
    assert [control.station for control in line.controls] == [10, 60]


def test_the_same_as_the_design_chord_on_the_ellipsoid():
    """With stations beside the axis and undulations that bend: what the run would say of the same two stations."""
    s = np.linspace(0.0, 3000.0, 61)
    lat, lon, _ = GRS80.forward(45.0, 7.0, 60.0, 3000.0)
    axis = Axis(AxisLine("arm", [45.0, lat], [7.0, lon], GRS80), chainage_height=130.0)
    s = s * axis.length / 3000.0
    offset = 3.0 * np.sin(s / 700.0)
    lat, lon, _ = axis.place(s, offset)
    height, n = 80.0 + 0.3 * np.cos(s / 500.0), 47.0 + 1e-8 * s**2
    found = design_heights(
        DesignSpec("chord", chainage_a=float(s[5]), chainage_b=float(s[50])),
        DesignStations(axis, lat, lon, s, offset, height, n),
        StationUndulations(s, n),
    )
    line = line_through(*(lambda p: (p, p.station(50), p.station(5)))(ProfilePlaces(GRS80, lat, lon, s, height, n)))
    assert line.straight == pytest.approx(found.design_h, abs=1e-9)
    assert line.flat == pytest.approx(found.flat_h, abs=1e-9)
    assert line.straight[[5, 50]] == pytest.approx(height[[5, 50]], abs=1e-9)
    assert np.all(line.level == height[5])


def test_gap_and_rule_of_thumb():
    """8 inches per mile squared by hand: two miles apart, half-way, one mile from either end, 8 inches."""
    mile = 1609.344
    there = places(SPHERE, np.arange(0.0, 3.5, 0.5) * mile, 50.0)
    line = line_through(there, there.station(0), there.station(4))
    assert line.rule[2] == pytest.approx(-8 * 0.0254, rel=1e-12) and line.rule[[0, 4]].tolist() == [0.0, 0.0]
    assert np.all(line.rule[5:] > 0.0) and np.all(line.gap[5:] > 0.0)
    # The rule stands for an Earth of 3960 miles, 0.03 % more than this sphere.
    assert line.gap == pytest.approx(line.rule, rel=1e-3, abs=1e-9)
    assert line.greatest_gap == (pytest.approx(line.gap[2]), 2)


def test_points_of_the_chart_are_where_the_axis_is():
    """A point between two stations is one of the line's own places; the line is that through stations there."""
    dense = places(GRS80, np.arange(0.0, 1001.0, 10.0), 60.0, undulation=20.0)
    rare = places(GRS80, np.arange(0.0, 1001.0, 50.0), 60.0, undulation=20.0)
    a, b = rare.point(130.0, 61.0), rare.point(870.0, 59.5)
    line = line_through(rare, b, a)
    assert len(line.chainage) == 23 and np.all(np.diff(line.chainage) > 0.0)
    assert line.chainage[line.rows].tolist() == rare.chainage.tolist()
    assert line.straight[np.searchsorted(line.chainage, [130.0, 870.0])] == pytest.approx([61.0, 59.5], abs=1e-9)
    height = np.full(101, 60.0)
    height[[13, 87]] = 61.0, 59.5
    full = ProfilePlaces(GRS80, dense.lat, dense.lon, dense.chainage, height, dense.undulation)
    other = line_through(full, full.station(13), full.station(87))
    assert line.straight[line.rows] == pytest.approx(other.straight[::5], abs=1e-6)


def test_points_across_the_antimeridian():
    across = places(GRS80, np.arange(0.0, 1001.0, 100.0), 60.0, lat=-17.0, lon=179.996, azimuth=90.0)
    assert across.lon.min() < -179.0 < 179.0 < across.lon.max()
    line = line_through(across, across.point(50.0, 60.0), across.point(950.0, 60.0))
    assert np.max(np.abs(line.gap)) < 0.02


def test_what_makes_no_line_is_refused():
    there = places(GRS80, [0.0, 100.0, 200.0], [50.0, np.nan, 50.0])
    with pytest.raises(InputError, match="no height"):
        there.station(1)
    for chainage in (-0.1, 200.1):
        with pytest.raises(InputError, match="beyond"):
            there.point(chainage, 50.0)
    with pytest.raises(InputError, match="one chainage"):
        line_through(there, there.station(0), there.point(0.0005, 50.0))
    lost = ProfilePlaces(GRS80, np.array([45.0, np.nan]), np.array([7.0, np.nan]), *np.zeros((3, 2)))
    with pytest.raises(InputError, match="no place"):
        lost.station(1)
