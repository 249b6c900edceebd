"""Geodesic spans as polynomials in space: against an independent solution of the geodesic (geographiclib)."""

import numpy as np
import pytest
from geographiclib.geodesic import Geodesic

from tautline.algorithms.core.curves import fitted_span, project, project_exactly
from tautline.algorithms.core.geodesy import Ellipsoid

WGS84 = Ellipsoid(Geodesic.WGS84.a, Geodesic.WGS84.f)


def points(lat, lon, azimuth, along, across):
    """Places at ``across`` metres to the right of a geodesic, by geographiclib."""
    found = []
    for s, y in zip(along, across):
        foot = Geodesic.WGS84.Direct(lat, lon, azimuth, s)
        place = Geodesic.WGS84.Direct(foot["lat2"], foot["lon2"], foot["azi2"] + 90.0, y)
        found.append((place["lat2"], place["lon2"]))
    return np.array(found).T


@pytest.mark.parametrize("lat, lon, azimuth", [(47.0, 8.0, 63.0), (-72.0, 179.9, 271.0), (0.1, 0.0, 1.0)])
@pytest.mark.parametrize("length", [3_000.0, 200_000.0])
def test_feet_on_a_span(lat, lon, azimuth, length):
    along = np.linspace(0.0, length, 23)
    across = np.tile([-900.0, -0.4, 0.0, 25.0, 700.0], 5)[:23]
    span = fitted_span(WGS84, lat, lon, azimuth, 0.0, length, 1000.0, 1000.0)
    middle = Geodesic.WGS84.Direct(lat, lon, azimuth, 0.5 * length)
    radius = WGS84.euler_radius(middle["lat2"], middle["azi2"] + 90.0)
    found, offset = project(span, *points(lat, lon, azimuth, along, across), WGS84, radius)
    assert np.allclose(found, along, rtol=0.0, atol=1e-6) and np.allclose(offset, across, rtol=0.0, atol=1e-6)


def test_far_points_by_inverse_geodesics():
    along, across = np.array([-5_000.0, 0.0, 80_000.0]), np.array([30_000.0, -12_000.0, 60_000.0])
    place = points(47.0, 8.0, 63.0, along, across)
    found, offset = project_exactly(WGS84, 47.0, 8.0, 63.0, 0.0, *place)
    assert np.allclose(found, along, rtol=0.0, atol=1e-6) and np.allclose(offset, across, rtol=0.0, atol=1e-6)
