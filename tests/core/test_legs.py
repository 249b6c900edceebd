"""Straight stretches of bent axes, with the departure measured by geographiclib."""

import numpy as np
import pytest
from geographiclib.geodesic import Geodesic

from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.legs import Stretch, departure, rows_on, stretches


def bent(wgs84, bend, lengths=(1000.0, 1000.0), start=0.0, height=0.0):
    geodesic = Geodesic(wgs84.a, wgs84.f)
    lat, lon, azimuth = [47.0], [8.0], 60.0
    for k, length in enumerate(lengths):
        end = geodesic.Direct(lat[-1], lon[-1], azimuth, length)
        lat.append(end["lat2"])
        lon.append(end["lon2"])
        azimuth = end["azi2"] + bend * (-1) ** k
    return Axis(AxisLine("a", lat, lon, wgs84), height, start)


def test_departure_of_a_bend(wgs84):
    """The height of the triangle over its long side: half of 1000 m times the sine of half the bend, roughly."""
    axis = bent(wgs84, 2.0)
    assert departure(axis, 0.0, 2000.0) == pytest.approx(1000.0 * np.sin(np.radians(1.0)), abs=0.001)
    assert departure(axis, 0.0, 900.0) == 0.0
    assert departure(axis, 500.0, 1500.0) == pytest.approx(500.0 * np.sin(np.radians(1.0)), abs=0.001)


def test_a_slight_bend_is_no_kink_and_a_stronger_one_is(wgs84):
    # 1/1000 of 2000 m is 2 m: a bend of 2 asin(2 / 1000) = 0.229 degrees.
    assert stretches(bent(wgs84, 0.22), 0.0, 2000.0) == (Stretch(0, 0.0, 2000.0),)
    first, second = stretches(bent(wgs84, 0.24), 0.0, 2000.0)
    assert (first.leg, second.leg) == (1, 2)
    assert (first.first, second.last) == (0.0, 2000.0) and first.last == second.first == pytest.approx(1000.0, abs=1e-6)


def test_many_vertices_of_one_straight_line_are_one_stretch(wgs84):
    assert len(stretches(bent(wgs84, 0.0, (300.0,) * 9), 0.0, 2700.0)) == 1


def test_only_the_legs_with_stations(wgs84):
    axis = bent(wgs84, 30.0, (800.0, 700.0, 900.0), start=200.0, height=1000.0)
    kinks = axis.vertex_chainages
    assert [part.leg for part in stretches(axis, 300.0, 900.0)] == [0]
    parts = stretches(axis, float(kinks[1] + 50.0), float(kinks[2] + 400.0))
    assert [part.leg for part in parts] == [2, 3]
    assert parts[0].first == kinks[1] + 50.0 and parts[1].last == kinks[2] + 400.0
    # Stations before the origin and beyond the end belong to the end legs.
    parts = stretches(axis, 100.0, float(kinks[-1] + 25.0))
    assert parts[0].first == 100.0 and parts[-1].last == kinks[-1] + 25.0 and len(parts) == 3


def test_the_corner_belongs_to_both_legs(wgs84):
    axis = bent(wgs84, 30.0)
    first, second = stretches(axis, 0.0, 2000.0)
    corner = float(axis.vertex_chainages[1])
    chainage = np.array([0.0, corner - 1.0, corner, corner + 1.0, 2000.0])
    assert rows_on(first, chainage).tolist() == [True, True, True, False, False]
    assert rows_on(second, chainage).tolist() == [False, False, True, True, True]
