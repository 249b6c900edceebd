"""Where a fitted plane or line is level: tangent point, with its ellipses, and chainage of zero slope
(method page 6).
"""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from .fit import SurfaceFit
from .geodesy import Ellipsoid, east_north, foot_and_normal
from .quantiles import ellipse_factor

ARC_SECOND = np.pi / (180.0 * 3600.0)
WORST_CONDITION = 1e8
FARTHEST = 10.0


@dataclass(frozen=True)
class Ellipse:
    """A 95 % ellipse: semi-axes in metres, azimuth of the longer one in degrees, 0 to 180."""

    semi_a: float
    semi_b: float
    azimuth: float

    def outline(self, lat, lon, ellipsoid: Ellipsoid, points=180):
        """Latitudes and longitudes, degrees (points + 1,), closed, true on the ellipsoid around lat, lon."""
        turn = np.linspace(0.0, 2.0 * np.pi, points + 1)
        along, across = self.semi_a * np.cos(turn), self.semi_b * np.sin(turn)
        azimuth = self.azimuth + np.degrees(np.arctan2(across, along))
        out_lat, out_lon, _ = ellipsoid.forward(
            np.full(points + 1, lat), np.full(points + 1, lon), azimuth, np.hypot(along, across)
        )
        out_lat[-1], out_lon[-1] = out_lat[0], out_lon[0]
        return out_lat, out_lon


@dataclass(frozen=True)
class TangentPoint:
    """Where a plane is level: ``lat``, ``lon`` degrees, ``height`` of the plane there, ellipsoidal, metres.

    ``covariance``: of east and north, square metres (2, 2), levelling only; ``levelling``, ``geoid``: 95 % ellipses,
    the second with the geoid's slope error (None for ellipsoidal heights); both None where it is poorly determined.
    ``extent``: of the stations, metres; ``distance``: from the nearest station, metres.
    """

    lat: float
    lon: float
    height: float
    covariance: np.ndarray
    levelling: Optional[Ellipse]
    geoid: Optional[Ellipse]
    extent: float
    distance: float

    @property
    def well_determined(self):
        """True where the accuracy is good enough for 95 % ellipses."""
        return self.levelling is not None


def tangent_point(fit: SurfaceFit, lat, lon, *, geoid_slope_sigma=None):
    """Tangent point of a fitted plane over stations at ``lat``, ``lon`` degrees (n,).

    ``geoid_slope_sigma``: standard deviation of each component of the geoid's slope, seconds of arc; None where heights
    are ellipsoidal. Returns TangentPoint.
    """
    ellipsoid, frame = fit.frame.ellipsoid, fit.frame
    n = frame.normal(fit.slopes)
    at_lat = float(np.degrees(np.arctan2(n[2], np.hypot(n[0], n[1]))))
    at_lon = float(np.degrees(np.arctan2(n[1], n[0])))
    jacobian = shift_by_slopes(frame, n, at_lat, at_lon)
    slopes = fit.solution.parameter_covariance[1:3, 1:3]
    covariance = jacobian @ slopes @ jacobian.T
    factor = ellipse_factor(fit.solution.freedom, fit.solution.known)
    extent = _extent(lat, lon, ellipsoid)
    levelling = _ellipse(covariance, factor)
    geoid = None
    if geoid_slope_sigma is not None:
        geoid = _ellipse(
            covariance + jacobian @ jacobian.T * (geoid_slope_sigma * ARC_SECOND) ** 2 * _normal_over(factor), factor
        )
    if (
        not np.all(np.isfinite(covariance))
        or levelling.semi_a > FARTHEST * extent
        or fit.solution.condition > WORST_CONDITION
    ):
        levelling = geoid = None
    nearest = float(np.min(ellipsoid.inverse(np.full(len(lat), at_lat), np.full(len(lat), at_lon), lat, lon)[2]))
    height = float(fit.plane.heights(at_lat, at_lon, ellipsoid)[0])
    return TangentPoint(at_lat, at_lon, height, covariance, levelling, geoid, extent, nearest)


def _normal_over(factor):
    """The geoid's share is known beforehand, so it takes the factor of a known sigma even where t or F
    rules the rest.
    """
    from .quantiles import CHI2_2_95

    return CHI2_2_95 / factor**2 if np.isfinite(factor) and factor > 0 else 0.0


def shift_by_slopes(frame, n, lat, lon):
    """Derivative of the tangent point's east and north, metres, by the two slopes: (2, 2), exact.

    ``n``: the plane's normal (3,), as Frame.normal gives it; ``lat``, ``lon``: of the point, degrees.
    """
    east, north = east_north(lat, lon)
    radii = np.array([frame.ellipsoid.radius_across(lat), frame.ellipsoid.radius_meridian(lat)])
    return -radii[:, None] * (np.stack([east, north]) @ frame.directions.T) / np.linalg.norm(n)


def _ellipse(covariance, factor):
    if not np.all(np.isfinite(covariance)):
        return Ellipse(np.inf, np.inf, 0.0)
    sizes, directions = np.linalg.eigh(covariance)
    east, north = directions[:, 1]
    semi = factor * np.sqrt(np.maximum(sizes, 0.0))
    return Ellipse(float(semi[1]), float(semi[0]), float(np.degrees(np.arctan2(east, north)) % 180.0))


def _extent(lat, lon, ellipsoid):
    feet = foot_and_normal(np.asarray(lat, float), np.asarray(lon, float), ellipsoid)[0]
    far = feet[np.argmax(np.linalg.norm(feet - feet[0], axis=1))]
    return float(np.linalg.norm(feet - far, axis=1).max())


@dataclass(frozen=True)
class LevelPlace:
    """Where a fitted line is level: chainage and its standard deviation, metres; ``geoid_sd``: with the
    geoid's slope.
    """

    chainage: float
    sd: float
    geoid_sd: Optional[float]
    lat: float
    lon: float
    height: float


def level_place(fit: SurfaceFit, axis, middle, *, geoid_slope_sigma=None):
    """Chainage where a fitted line's slope against the horizon of the ellipsoid is zero.

    ``axis``: core Axis; ``middle``: chainage of the fit's frame, metres; ``geoid_slope_sigma``: see tangent_point.
    """
    ellipsoid, frame = axis.line.ellipsoid, fit.frame
    n = frame.normal(fit.slopes)
    across = np.cross(frame.directions[0], frame.up)
    ahead = np.cross(n, across)
    ahead = ahead / np.linalg.norm(ahead)
    ahead = ahead * np.sign(ahead @ frame.directions[0])
    radius = float(ellipsoid.euler_radius(frame.lat, frame.azimuth))
    lat, lon = frame.lat, frame.lon
    along = 0.0
    for _ in range(6):
        up = foot_and_normal(lat, lon, ellipsoid)[1]
        # The line climbs where ahead . u > 0; the horizon turns by 1/R for each metre.
        along -= radius * float(np.arcsin(np.clip(ahead @ up, -1.0, 1.0)))
        lat, lon, _ = (float(v) for v in ellipsoid.forward(frame.lat, frame.lon, frame.azimuth, along))
    scale = 1.0 + axis.chainage_height / radius
    sd = radius * scale * float(fit.solution.deviations[1])
    geoid = None if geoid_slope_sigma is None else float(np.hypot(sd, radius * scale * geoid_slope_sigma * ARC_SECOND))
    height = float(fit.plane.heights(lat, lon, ellipsoid)[0])
    return LevelPlace(middle + along * scale, sd, geoid, lat, lon, height)
