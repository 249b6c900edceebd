"""Slope and bending of the geoid along an axis, against surfaces whose bending is known."""

import numpy as np
import pytest

from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.geoid_along import geoid_from_grid, geoid_from_stations


def axis(wgs84, degrees):
    """Northwards from 10° north: chainage is the meridian's length."""
    return Axis(AxisLine("a", np.array([10.0, 10.0 + degrees]), np.array([20.0, 20.0]), wgs84))


def parabola(lat, lon):
    """20 m at 10°, 3 m per degree, and 0.4 m per square degree of bending."""
    return 20.0 + 3.0 * (lat - 10.0) + 0.4 * (lat - 10.0) ** 2


def test_long_axis_shows_slope_and_bending(wgs84):
    """Over x degrees the parabola's middle lies 0.4 x^2 / 4 below its chord, whatever else the surface does."""
    found = geoid_from_grid(axis(wgs84, 0.1), parabola, 0.01)
    length = float(np.ptp(found.chainage))
    assert found.span == length and not found.coarse
    assert found.slope == pytest.approx((0.3 + 0.004) / length, rel=1e-9)
    bend, at = found.greatest
    assert bend == pytest.approx(-0.4 * 0.01 / 4.0, rel=1e-3) and at == pytest.approx(0.5 * length, rel=1e-3)
    assert found.bend[0] == 0.0 and found.bend[-1] == pytest.approx(0.0, abs=1e-12)
    assert found.change[-1] == pytest.approx(0.304, rel=1e-9)


def test_short_axis_takes_two_cells_and_no_bending(wgs84):
    """0.02 degrees within a grid of 0.25: the slope over two cells about the middle, 3 + 0.8 * 0.01 m per degree."""
    found = geoid_from_grid(axis(wgs84, 0.02), parabola, 0.25)
    degree = np.radians(1.0) * wgs84.radius_meridian(10.01)
    assert found.coarse and np.isnan(found.greatest[0])
    assert found.span == pytest.approx(0.5 * degree, rel=1e-6)
    assert found.slope == pytest.approx((3.0 + 0.8 * 0.01) / degree, rel=1e-4)
    assert found.change[-1] == pytest.approx(found.slope * np.ptp(found.chainage), rel=1e-12)


def test_kinks_of_a_bilinear_grid_are_not_taken_for_bending(wgs84):
    """A bilinear cell edge in the axis' middle: the raw undulations bend there, the report does not (method page 5)."""

    def bilinear(lat, lon):
        return np.interp(lat, [9.5, 9.75, 10.0, 10.25, 10.5], parabola(np.array([9.5, 9.75, 10.0, 10.25, 10.5]), 0.0))

    line = Axis(AxisLine("a", np.array([9.99, 10.01]), np.array([20.0, 20.0]), wgs84))
    found = geoid_from_grid(line, bilinear, 0.25)
    raw = found.undulation - np.linspace(found.undulation[0], found.undulation[-1], len(found.undulation))
    assert np.abs(raw).max() > 5e-4 and found.coarse
    assert np.allclose(np.diff(found.change, 2), 0.0, atol=1e-12)


def test_stations():
    s = np.array([400.0, 0.0, 200.0])
    found = geoid_from_stations(s, 30.0 + 1e-5 * s + 1e-8 * s**2)
    assert list(found.chainage) == [0.0, 200.0, 400.0] and found.slope == pytest.approx(1e-5 + 4e-6)
    assert found.greatest == (pytest.approx(-4e-4), 200.0)
    assert geoid_from_stations([0.0, 10.0], [1.0, 1.1]).coarse
    with pytest.raises(InputError, match="two places"):
        geoid_from_stations([5.0, 5.0], [1.0, 1.0])
