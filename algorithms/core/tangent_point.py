"""Where a fitted plane or line is tangent to the ellipsoid, and where it is level: both points of a plane with their
ellipses, both chainages of a line (method page 6).
"""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from .fit import SurfaceFit
from .geodesy import Ellipsoid, east_north, foot_and_normal
from .geoid_slope import GeoidSlope
from .quantiles import CHI2_2_95, ellipse_factor

WORST_CONDITION = 1e8
FARTHEST = 10.0
# The geoid turns by at most a tenth of what the ellipsoid's normal does, so that each step gains a digit.
_STEPS, _CLOSE = 60, 1e-13
_APART = 100.0
_NO_GEOID = GeoidSlope()


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
class SurfacePoint:
    """A place of a fitted plane: ``lat``, ``lon`` degrees, ``height`` of the plane there, ellipsoidal, metres.

    ``covariance``: of east and north, square metres (2, 2), all that is uncertain in it; ``ellipse``: of 95 %, None
    where the place is poorly determined; ``distance``: from the nearest station, metres.
    """

    lat: float
    lon: float
    height: float
    covariance: np.ndarray
    ellipse: Optional[Ellipse]
    distance: float

    @property
    def well_determined(self):
        """True where the accuracy is good enough for a 95 % ellipse."""
        return self.ellipse is not None

    @property
    def deviation(self):
        """The greater of the standard deviations to the east and to the north, metres."""
        return float(np.sqrt(max(self.covariance[0, 0], self.covariance[1, 1])))


@dataclass(frozen=True)
class PlanePoints:
    """``tangent``: where the plane's normal is the ellipsoid's; ``level``: where it is the horizon's, so that water on
    the structure would stand still there. ``extent``: of the stations, metres.
    """

    tangent: SurfacePoint
    level: SurfacePoint
    extent: float


def plane_points(fit: SurfaceFit, lat, lon, geoid=_NO_GEOID):
    """PlanePoints of a fitted plane over stations at ``lat``, ``lon`` degrees (n,), those set aside among them.

    ``geoid``: GeoidSlope. Heights above the geoid know the level point from themselves, and the tangent point only as
    well as the geoid's slope; ellipsoidal heights the reverse. Bending of the geoid goes through the fit and to the
    level point.
    """
    kept = fit.search.kept
    extent = stations_extent(lat, lon, fit.frame.ellipsoid)
    bent = np.zeros((2, 3)) if geoid.ellipsoidal else _fitted_bending(fit, np.asarray(lat)[kept], np.asarray(lon)[kept])
    slope = geoid.slope_variance * np.eye(2)

    def point(tilt, needs_slope, to_point):
        place = _place(fit.frame.normal(fit.slopes), tilt, fit.frame)
        # Of n = U - g_E E - g_N N: what bending adds to the two slopes at the point, less what the fit took of it.
        shown = (_turned_at(*_plan(fit.frame, *place)) if to_point else 0.0) - bent
        return _surface_point(
            fit,
            place,
            shift_by_slopes(fit.frame, fit.frame.normal(fit.slopes), *place, tilt),
            slope * needs_slope + geoid.bending**2 * (shown @ shown.T),
            (lat, lon, extent),
        )

    return PlanePoints(
        point(geoid.tangent_tilt, not geoid.ellipsoidal, False),
        point(geoid.level_tilt, geoid.ellipsoidal, True),
        extent,
    )


def _surface_point(fit, place, jacobian, stated, stations):
    """``stated``: covariance of the slopes (2, 2) that the geoid adds; known beforehand, it takes the factor of a known
    sigma even where Fisher's F rules the rest."""
    lat, lon, extent = stations
    solution, ellipsoid = fit.solution, fit.frame.ellipsoid
    observed = jacobian @ solution.parameter_covariance[1:3, 1:3] @ jacobian.T
    added = jacobian @ stated @ jacobian.T
    factor = ellipse_factor(solution.freedom, solution.known)
    ellipse = _ellipse(factor**2 * observed + CHI2_2_95 * added)
    if ellipse is not None and (ellipse.semi_a > FARTHEST * extent or solution.condition > WORST_CONDITION):
        ellipse = None
    nearest = float(np.min(ellipsoid.inverse(np.full(len(lat), place[0]), np.full(len(lat), place[1]), lat, lon)[2]))
    height = float(fit.plane.heights(*place, ellipsoid)[0])
    return SurfacePoint(*place, height, observed + added, ellipse, nearest)


def _place(n, tilt, frame):
    """Latitude and longitude, degrees, where the surface with normal ``n`` has the slope ``tilt`` against the
    ellipsoid: there u is n / (n . u) + tilt."""
    lat, lon = frame.lat, frame.lon
    for _ in range(_STEPS):
        east, north = east_north(lat, lon)
        rise = tilt(lat, lon)
        x, y, z = n / (n @ np.cross(east, north)) + rise[0] * east + rise[1] * north
        before, lat, lon = (
            (lat, lon),
            float(np.degrees(np.arctan2(z, np.hypot(x, y)))),
            float(np.degrees(np.arctan2(y, x))),
        )
        if abs(lat - before[0]) + abs(lon - before[1]) * np.cos(np.radians(lat)) <= _CLOSE * 180.0:
            break
    return lat, lon


def shift_by_slopes(frame, n, lat, lon, tilt=None):
    """Derivative of a point's east and north, metres, by the two slopes: (2, 2), exact.

    ``n``: the plane's normal (3,), as Frame.normal gives it; ``lat``, ``lon``: of the point, degrees; ``tilt``: slope
    of the surface there, a function of lat, lon, which changes from place to place; None for none.
    """
    ellipsoid = frame.ellipsoid
    east, north = east_north(lat, lon)
    radii = np.array([ellipsoid.radius_across(lat), ellipsoid.radius_meridian(lat)])
    basis = np.stack([east, north])
    by_slopes = -radii[:, None] * (basis @ frame.directions.T) / (n @ np.cross(east, north))
    if tilt is None:
        return by_slopes
    turned = np.empty((2, 2))
    degrees = np.degrees(_APART / radii)
    steps = ((0.0, degrees[0] / max(np.cos(np.radians(lat)), 1e-9)), (degrees[1], 0.0))
    for k, (up, aside) in enumerate(steps):
        ahead, back = (_tilt_vector(tilt, lat + sign * up, lon + sign * aside) for sign in (1.0, -1.0))
        turned[:, k] = basis @ (ahead - back) / (2.0 * _APART)
    # The horizon turns with the place, on its own account too.
    return np.linalg.solve(np.eye(2) - radii[:, None] * turned, by_slopes)


def _tilt_vector(tilt, lat, lon):
    east, north = east_north(lat, lon)
    rise = tilt(lat, lon)
    return rise[0] * east + rise[1] * north


def _plan(frame, lat, lon):
    """Places along the frame's directions, metres from its own: one array for each."""
    feet = foot_and_normal(np.asarray(lat, float), np.asarray(lon, float), frame.ellipsoid)[0]
    origin = foot_and_normal(frame.lat, frame.lon, frame.ellipsoid)[0]
    return tuple(((feet - origin) @ frame.directions.T).T)


def _turned_at(x, y=None):
    """Change of the slopes at a place by the second derivatives of N, per unit of each: (2, 3), (1, 1) on a line."""
    return np.array([[x]]) if y is None else np.array([[x, y, 0.0], [0.0, x, y]])


def _fitted_bending(fit, lat, lon):
    """Slopes that the fit takes from the second derivatives of N, per unit of each: (2, 3), (1, 1) of a line.

    ``lat``, ``lon``: of the kept stations, degrees (n,).
    """
    x = _plan(fit.frame, lat, lon)
    bends = [0.5 * x[0] ** 2] if len(x) == 1 else [0.5 * x[0] ** 2, x[0] * x[1], 0.5 * x[1] ** 2]
    return fitted_slopes(fit, np.column_stack(bends))


def fitted_slopes(fit, values):
    """Slopes along the frame's directions that the fit would find in other heights: (k,) or (k, m).

    ``values``: of the kept stations, metres (n,) or (n, m); with the weights of the fit.
    """
    solution = fit.solution
    found = solution.cofactors @ (solution.design.T @ solution.covariance.weighted(values))
    return found[1 : 1 + len(fit.slopes)]


def _ellipse(scaled):
    """The Ellipse of a covariance (2, 2) that holds its factor already, None where it is not finite."""
    if not np.all(np.isfinite(scaled)):
        return None
    sizes, directions = np.linalg.eigh(scaled)
    east, north = directions[:, 1]
    semi = np.sqrt(np.maximum(sizes, 0.0))
    return Ellipse(float(semi[1]), float(semi[0]), float(np.degrees(np.arctan2(east, north)) % 180.0))


def stations_extent(lat, lon, ellipsoid):
    """Extent of places at ``lat``, ``lon`` degrees (n,), metres: from the one farthest out to that farthest from it."""
    feet = foot_and_normal(np.asarray(lat, float), np.asarray(lon, float), ellipsoid)[0]
    far = feet[np.argmax(np.linalg.norm(feet - feet[0], axis=1))]
    return float(np.linalg.norm(feet - far, axis=1).max())


@dataclass(frozen=True)
class LinePlace:
    """A place of a fitted line: its ``chainage`` with the standard deviation ``sd``, metres; ``lat``, ``lon`` degrees;
    ``height``: of the line there, ellipsoidal, metres."""

    chainage: float
    sd: float
    lat: float
    lon: float
    height: float


@dataclass(frozen=True)
class LinePlaces:
    """Where a line's slope is zero: ``tangent``, against the ellipsoid; ``level``, against the horizon."""

    tangent: LinePlace
    level: LinePlace


def line_places(fit: SurfaceFit, axis, middle, lat, lon, geoid=_NO_GEOID):
    """LinePlaces of a fitted line over stations at ``lat``, ``lon`` degrees (n,), those set aside among them.

    ``axis``: core Axis; ``middle``: chainage of the fit's frame, metres; ``geoid``: see plane_points.
    """
    kept, frame = fit.search.kept, fit.frame
    bent = 0.0 if geoid.ellipsoidal else float(_fitted_bending(fit, np.asarray(lat)[kept], np.asarray(lon)[kept])[0, 0])
    observed = float(fit.solution.parameter_covariance[1, 1])

    def place(tilt, needs_slope, to_point):
        along, at_lat, at_lon, gain = _zero_slope(fit, tilt)
        reach = float(_plan(frame, at_lat, at_lon)[0]) if to_point else 0.0
        variance = observed + needs_slope * geoid.slope_variance + (geoid.bending * (reach - bent)) ** 2
        scale = 1.0 + axis.chainage_height / float(frame.ellipsoid.euler_radius(frame.lat, frame.azimuth))
        height = float(fit.plane.heights(at_lat, at_lon, frame.ellipsoid)[0])
        return LinePlace(middle + along * scale, gain * scale * float(np.sqrt(variance)), at_lat, at_lon, height)

    return LinePlaces(
        place(geoid.tangent_tilt, not geoid.ellipsoidal, False), place(geoid.level_tilt, geoid.ellipsoidal, True)
    )


def _zero_slope(fit, tilt):
    """Distance from the frame along its geodesic, metres, to where the line's slope against the ellipsoid is that of
    ``tilt``; latitude and longitude there, degrees; and by how much it moves per slope, metres."""
    ellipsoid, frame = fit.frame.ellipsoid, fit.frame
    n = frame.normal(fit.slopes)
    ahead = np.cross(n, np.cross(frame.directions[0], frame.up))
    ahead = ahead / np.linalg.norm(ahead)
    ahead = ahead * np.sign(ahead @ frame.directions[0])
    radius = float(ellipsoid.euler_radius(frame.lat, frame.azimuth))

    def at(along):
        lat, lon, azimuth = (float(v) for v in ellipsoid.forward(frame.lat, frame.lon, frame.azimuth, along))
        up, turn = foot_and_normal(lat, lon, ellipsoid)[1], np.radians(azimuth)
        rise = tilt(lat, lon)
        climb = float(np.tan(np.arcsin(np.clip(ahead @ up, -1.0, 1.0))))
        return climb - float(rise[0] * np.sin(turn) + rise[1] * np.cos(turn)), lat, lon

    # The line climbs where ahead . u > 0; the horizon turns by 1/R for each metre.
    along = 0.0
    for _ in range(_STEPS):
        step = radius * at(along)[0]
        along -= step
        if abs(step) < 1e-7:
            break
    _, lat, lon = at(along)
    return along, lat, lon, 2.0 * _APART / abs(at(along + _APART)[0] - at(along - _APART)[0])
