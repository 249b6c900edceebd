"""Where a fitted plane or line is tangent to the ellipsoid, and where it is level: both points of a plane with their
ellipses, both chainages of a line (method page 6).
"""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from .fit import SurfaceFit, surface_normals
from .geodesy import Ellipsoid, east_north, foot_and_normal
from .geoid_slope import GeoidSlope
from .quantiles import CHI2_2_95, ellipse_factor
from .segments import Segments, joined, row_products

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


def _turned_at(x, y):
    """Change of a plane's slopes at a place by the second derivatives of N, per unit of each: (2, 3)."""
    return np.array([[x, y, 0.0], [0.0, x, y]])


def _fitted_bending(fit, lat, lon):
    """Slopes that a plane takes from the second derivatives of N, per unit of each: (2, 3).

    ``lat``, ``lon``: of the kept stations, degrees (n,).
    """
    x, y = _plan(fit.frame, lat, lon)
    return fitted_slopes(fit, np.column_stack([0.5 * x**2, x * y, 0.5 * y**2]))


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
    return float(stations_extents([(lat, lon)], ellipsoid)[0])


def stations_extents(stations, ellipsoid):
    """The same of many groups, found together: metres (m,). ``stations``: of each its ``lat``, ``lon``, degrees."""
    legs = Segments([len(lat) for lat, _ in stations])
    feet = foot_and_normal(*(np.asarray(joined(one), float) for one in zip(*stations)), ellipsoid)[0]
    far = legs.greatest(np.linalg.norm(feet - feet[legs.first][legs.which], axis=1))
    return np.maximum.reduceat(np.linalg.norm(feet - feet[far][legs.which], axis=1), legs.first)


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
    return places_of_lines([fit], [axis], [middle], [(lat, lon)], [geoid])[0]


def places_of_lines(fits, axes, middles, stations, geoids):
    """LinePlaces of many fitted lines, found together: a list. Each argument is a list (m,), ``stations`` of pairs
    ``lat``, ``lon``; see line_places."""
    lines = _Lines(fits)
    bent = lines.bent(fits, stations)
    observed = np.array([fit.solution.parameter_covariance[1, 1] for fit in fits])
    scales = 1.0 + np.array([axis.chainage_height for axis in axes]) / lines.radii
    slopes, bending = (np.array([getattr(geoid, name) for geoid in geoids]) for name in ("slope_variance", "bending"))
    ellipsoidal = np.array([geoid.ellipsoidal for geoid in geoids])
    bent = np.where(ellipsoidal, 0.0, bent)

    def places(tilt, needs_slope, to_point):
        along, lat, lon, gain = lines.zero_slopes(tilt)
        reach = lines.reaches(lat, lon) if to_point else 0.0
        deviation = np.sqrt(observed + needs_slope * slopes + (bending * (reach - bent)) ** 2)
        found = middles + along * scales, gain * scales * deviation, lat, lon, lines.heights(lat, lon)
        return [LinePlace(*one) for one in zip(*(values.tolist() for values in found))]

    tangent = places(tilts(geoids, "tangent_tilt"), ~ellipsoidal, False)
    level = places(tilts(geoids, "level_tilt"), ellipsoidal, True)
    return [LinePlaces(*both) for both in zip(tangent, level)]


def tilts(geoids, name):
    """What many GeoidSlopes (m,) tell of a slope under one ``name``, as one function of places (m,), degrees, to (2,
    m), without unit; what is one geoid to several lines is asked once for all of them."""
    alike = {}
    for number, geoid in enumerate(geoids):
        alike.setdefault((geoid.ellipsoidal, geoid.applied, geoid.known), []).append(number)
    parts = [(np.array(rows), getattr(geoids[rows[0]], name)) for rows in alike.values()]

    def tilt(lat, lon):
        found = np.empty((2, len(lat)))
        for rows, one in parts:
            found[0, rows], found[1, rows] = one(lat[rows], lon[rows])
        return found

    return tilt


class _Lines:
    """Many fitted lines as arrays (m,), (m, 3): place, azimuth and direction of each, and Euler's radius along it."""

    def __init__(self, fits):
        frames = [fit.frame for fit in fits]
        self.ellipsoid = frames[0].ellipsoid
        self.lat, self.lon, self.azimuth = (
            np.array([getattr(frame, name) for frame in frames], float) for name in ("lat", "lon", "azimuth")
        )
        self.foot, self.up = (np.stack([getattr(frame, name) for frame in frames]) for name in ("foot", "up"))
        self.direction = np.stack([frame.directions[0] for frame in frames])
        self.height = np.array([fit.height for fit in fits])
        self.normal = surface_normals(fits)
        self.radii = self.ellipsoid.euler_radius(self.lat, self.azimuth)
        ahead = np.cross(self.normal, np.cross(self.direction, self.up))
        self.ahead = (
            ahead / np.linalg.norm(ahead, axis=1)[:, None] * np.sign(row_products(ahead, self.direction))[:, None]
        )

    def bent(self, fits, stations):
        """Slopes that the lines take from the geoid's bending, per unit of it (m,). ``stations``: of each ``lat``,
        ``lon``, degrees, those set aside among them."""
        kept = [fit.search.kept for fit in fits]
        places = [[np.asarray(values, float)[rows] for values in one] for one, rows in zip(stations, kept)]
        legs = Segments([len(lat) for lat, _ in places])
        feet = foot_and_normal(*(joined(one) for one in zip(*places)), self.ellipsoid)[0]
        along = row_products(feet - self.foot[legs.which], self.direction[legs.which])
        # As fitted_slopes of heights that bend by one: (A^T W A)^-1 A^T W b, of which the slope is the second.
        weighted = joined([fit.solution.weighted_design for fit in fits])
        right = legs.sums(weighted * (0.5 * along**2)[:, None])
        return np.array([fit.solution.cofactors[1] @ own for fit, own in zip(fits, right)])

    def reaches(self, lat, lon):
        """Distances of places from the lines' own, metres along their directions (m,)."""
        return row_products(foot_and_normal(lat, lon, self.ellipsoid)[0] - self.foot, self.direction)

    def heights(self, lat, lon):
        """Ellipsoidal heights of the lines at places on them, metres (m,): as Plane.heights."""
        feet, up = foot_and_normal(lat, lon, self.ellipsoid)
        return row_products(self.normal, self.foot + self.height[:, None] * self.up - feet) / row_products(
            self.normal, up
        )

    def zero_slopes(self, tilt):
        """Distances from the frames along their geodesics, metres (m,), to where each line's slope against the
        ellipsoid is that of ``tilt``; latitudes and longitudes there, degrees; and by how much each moves per slope,
        metres."""

        def at(along):
            lat, lon, azimuth = self.ellipsoid.forward(self.lat, self.lon, self.azimuth, along)
            up, turn = foot_and_normal(lat, lon, self.ellipsoid)[1], np.radians(azimuth)
            rise = tilt(lat, lon)
            climb = np.tan(np.arcsin(np.clip(row_products(self.ahead, up), -1.0, 1.0)))
            return climb - (rise[0] * np.sin(turn) + rise[1] * np.cos(turn)), lat, lon

        # The line climbs where ahead . u > 0; the horizon turns by 1/R for each metre.
        along = np.zeros(len(self.lat))
        for _ in range(_STEPS):
            step = self.radii * at(along)[0]
            along = along - step
            if np.all(np.abs(step) < 1e-7):
                break
        _, lat, lon = at(along)
        return along, lat, lon, 2.0 * _APART / np.abs(at(along + _APART)[0] - at(along - _APART)[0])
