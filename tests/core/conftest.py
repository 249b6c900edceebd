"""What the tests of the core share: ellipsoids, axes all over the Earth, and 50-digit geometry of their own.

The formulas here are written from the definitions and share no code with the package.
"""

import math
import random
import types

import mpmath
import numpy as np
import pytest
from geographiclib.geodesic import Geodesic

# Semi-major axis in metres and inverse flattening (0: sphere). Source: EPSG dataset; Maupertuis 1738, the flattest of
# the historical ones, from the list of ellipsoids that PROJ carries.
ELLIPSOIDS = {
    "WGS 84": (6378137.0, 298.257223563),
    "GRS 1980": (6378137.0, 298.257222101),
    "Bessel 1841": (6377397.155, 299.1528128),
    "Clarke 1866": (6378206.4, 294.9786982138982),
    "Clarke 1880 (IGN)": (6378249.2, 293.4660212936269),
    "Airy 1830": (6377563.396, 299.3249646),
    "International 1924": (6378388.0, 297.0),
    "Krassowsky 1940": (6378245.0, 298.3),
    "Maupertuis 1738": (6397300.0, 191.0),
    "sphere": (6371000.0, 0.0),
}
_WORST = {}


def pytest_terminal_summary(terminalreporter):
    """Print what was measured: the figures that method page 9 owes."""
    if _WORST:
        terminalreporter.write_sep("-", "worst errors measured, metres")
        for name, value in sorted(_WORST.items()):
            terminalreporter.write_line(f"{name:70s} {value:.1e}")


@pytest.fixture(scope="session")
def owed():
    """A check that keeps the greatest error for the summary: owed(name, errors, limit)."""

    def check(name, errors, limit):
        worst = float(np.max(np.abs(np.asarray(errors, float))))
        _WORST[name] = max(worst, _WORST.get(name, 0.0))
        assert worst <= limit, f"{name}: {worst:.2e} m, owed {limit:.0e} m"

    return check


def _seed(name):
    return sum(ord(letter) * 31**k for k, letter in enumerate(name)) % 100003


def _axes(name, geodesic, number):
    """Axes (lat, lon, azimuth, length): special places first, then random ones, 10 m to 200 km."""
    special = [
        (90.0, 0.0, 135.0, 3e3),
        (89.999, 40.0, 3.0, 2e4),
        (-89.9, -120.0, 178.0, 2e5),
        (-90.0, 0.0, 10.0, 500.0),
        (10.0, 179.99, 85.0, 8e3),
        (-35.0, -179.999, 265.0, 1e5),
        (0.0, 20.0, 90.0, 2e5),
        (0.0, -20.0, 0.0, 4e3),
        (60.0, 180.0, 0.0, 3e4),
        (51.0, 7.0, 270.0, 10.0),
    ]
    dice = random.Random(_seed(name))
    axes = special + [
        (
            math.degrees(math.asin(dice.uniform(-1.0, 1.0))),
            dice.uniform(-180.0, 180.0),
            dice.uniform(0.0, 360.0),
            10.0 ** dice.uniform(1.0, math.log10(2e5)),
        )
        for _ in range(number - len(special))
    ]
    return axes, dice


@pytest.fixture(scope="session", params=ELLIPSOIDS)
def world(request):
    """One ellipsoid: core Ellipsoid, independent geodesics (geographiclib), 30 axes, a dice of its own."""
    from tautline.algorithms.core.geodesy import Ellipsoid

    a, inverse_flattening = ELLIPSOIDS[request.param]
    ellipsoid = Ellipsoid(a, 1.0 / inverse_flattening if inverse_flattening else 0.0)
    geodesic = Geodesic(ellipsoid.a, ellipsoid.f)
    axes, _ = _axes(request.param, geodesic, 30)
    return types.SimpleNamespace(
        name=request.param,
        ellipsoid=ellipsoid,
        geodesic=geodesic,
        axes=axes,
        dice=lambda: random.Random(_seed(request.param) + 1),
    )


@pytest.fixture(scope="session")
def wgs84():
    from tautline.algorithms.core.geodesy import Ellipsoid

    return Ellipsoid(6378137.0, 1.0 / 298.257223563)


class Exact:
    """Geometry on an ellipsoid with 50 digits: positions, planes and their heights, from the definitions."""

    def __init__(self, ellipsoid):
        self.a, self.f = ellipsoid.a, ellipsoid.f

    def normal(self, lat, lon):
        lat, lon = (mpmath.mpf(v) * mpmath.pi / 180 for v in (lat, lon))
        return (mpmath.cos(lat) * mpmath.cos(lon), mpmath.cos(lat) * mpmath.sin(lon), mpmath.sin(lat))

    def position(self, lat, lon, height):
        """From the support function of the ellipsoid, not from the radius nu: F = (a^2 u, a^2 u, b^2 u) / support."""
        u, a = self.normal(lat, lon), mpmath.mpf(self.a)
        b = a * (1 - mpmath.mpf(self.f))
        support = mpmath.sqrt(a**2 * (u[0] ** 2 + u[1] ** 2) + b**2 * u[2] ** 2)
        foot = (a**2 * u[0] / support, a**2 * u[1] / support, b**2 * u[2] / support)
        return tuple(p + mpmath.mpf(height) * q for p, q in zip(foot, u))

    def chord_normal(self, a, b):
        """Of the chord between a and b = (lat, lon, height): t = B - A, c = t x (u_A + u_B), n = c x t."""
        t = tuple(q - p for p, q in zip(self.position(*a), self.position(*b)))
        up = tuple(p + q for p, q in zip(self.normal(*a[:2]), self.normal(*b[:2])))
        return self.cross(self.cross(t, up), t)

    def inclined_normal(self, lat, lon, azimuth, slope):
        """Of the plane that rises by slope in azimuth: n = u - slope * ahead."""
        phi, lam, alpha = (mpmath.mpf(v) * mpmath.pi / 180 for v in (lat, lon, azimuth))
        sin, cos = mpmath.sin, mpmath.cos
        ahead = (
            -cos(alpha) * sin(phi) * cos(lam) - sin(alpha) * sin(lam),
            -cos(alpha) * sin(phi) * sin(lam) + sin(alpha) * cos(lam),
            cos(alpha) * cos(phi),
        )
        return tuple(u - mpmath.mpf(slope) * t for u, t in zip(self.normal(lat, lon), ahead))

    def height(self, point, normal, lat, lon):
        """Where the ellipsoid normal at lat, lon meets the plane."""
        foot, u = self.position(lat, lon, 0), self.normal(lat, lon)
        return self.dot(normal, tuple(p - f for p, f in zip(point, foot))) / self.dot(normal, u)

    @staticmethod
    def dot(p, q):
        return sum(x * y for x, y in zip(p, q))

    @staticmethod
    def cross(p, q):
        return (p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0])


@pytest.fixture
def exact():
    """Exact, with 50 digits for the length of one test."""
    with mpmath.workdps(50):
        yield Exact


def _along(geodesic, lat, lon, azimuth, distance, offset=0.0):
    """Point by geographiclib at distance along and offset (positive right) from a geodesic: lat, lon, azimuth."""
    foot = geodesic.Direct(lat, lon, azimuth, distance)
    if offset == 0.0:
        return foot["lat2"], foot["lon2"], foot["azi2"]
    aside = geodesic.Direct(foot["lat2"], foot["lon2"], foot["azi2"] + 90.0, offset)
    return aside["lat2"], aside["lon2"], foot["azi2"]


@pytest.fixture(scope="session")
def along():
    return _along


# Published straight lines -------------------------------------------------------------------------------------------


@pytest.fixture(scope="session")
def pearson():
    """The worked example of K. Pearson, On lines and planes of closest fit to systems of points in space, Philosophical
    Magazine 2 (1901): the line that makes the perpendicular distances least is y = 5.784 - 0.546 x."""
    x = [0.0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4]
    y = [5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5]
    return types.SimpleNamespace(x=np.array(x), y=np.array(y), intercept=5.784, slope=-0.546)


NORRIS_Y = """
0.1 338.8 118.1 888.0 9.2 228.1 668.5 998.5 449.1 778.9 559.2 0.3 0.1 778.1 668.8 339.3 448.9 10.8
557.7 228.3 998.0 888.8 119.6 0.3 0.6 557.6 339.3 888.0 998.5 778.9 10.2 117.6 228.9 668.4 449.2 0.2
"""
NORRIS_X = """
0.2 337.4 118.2 884.6 10.1 226.5 666.3 996.3 448.6 777.0 558.2 0.4 0.6 775.5 666.9 338.0 447.5 11.6
556.0 228.1 995.8 887.6 120.2 0.3 0.3 556.8 339.1 887.2 999.0 779.0 11.1 118.3 229.2 669.1 448.9 0.5
"""


@pytest.fixture(scope="session")
def norris():
    """NIST Statistical Reference Datasets, linear regression, Norris: data and certified values of y = intercept +
    slope x, with their standard deviations and the residual one."""
    x, y = (np.array(text.split(), float) for text in (NORRIS_X, NORRIS_Y))
    return types.SimpleNamespace(
        x=x,
        y=y,
        intercept=-0.262323073774029,
        slope=1.00211681802045,
        intercept_sd=0.232818234301152,
        slope_sd=0.429796848199937e-3,
        sd=0.884796396144373,
    )


@pytest.fixture(scope="session")
def dense():
    """Fits and tests of correlated heights by dense algebra: ``solution`` and ``tests``."""
    from tautline.algorithms.core.least_squares import Solution

    def solution(design, observed, covariance):
        weight = np.linalg.inv(covariance.matrix)
        parameters = np.linalg.solve(design.T @ weight @ design, design.T @ weight @ observed)
        return Solution(design, observed - design @ parameters, covariance, True, parameters)

    def tests(solution, rows=None):
        """|w| of single rows, or of steps along ``rows``, by dense algebra on the inverse of the covariance."""
        weight, a = np.linalg.inv(solution.covariance.matrix), solution.design
        p = weight - weight @ a @ np.linalg.inv(a.T @ weight @ a) @ a.T @ weight
        tested = (
            np.eye(len(a))
            if rows is None
            else np.array([np.isin(np.arange(len(a)), rows[k:]) for k in range(1, len(rows))])
        )
        return np.abs(tested @ weight @ solution.residuals) / np.sqrt(np.einsum("ij,jk,ik->i", tested, p, tested))

    return types.SimpleNamespace(solution=solution, tests=tests)
