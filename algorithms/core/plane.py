"""A straight design as a plane in space: its exact height anywhere on the ellipsoid (method page 4)."""

from dataclasses import dataclass

import numpy as np

from .curves import CHUNK
from .errors import InputError
from .geodesy import east_north, foot_and_normal, foot_components, position


@dataclass(frozen=True)
class Plane:
    """Earth-centred ``point`` (3,), metres, and unit ``normal`` (3,) that points away from the Earth.

    InputError where they are no numbers or the normal has no length.
    """

    point: np.ndarray
    normal: np.ndarray

    def __post_init__(self):
        point, normal = np.asarray(self.point, float), np.asarray(self.normal, float)
        size = np.linalg.norm(normal)
        if not (np.all(np.isfinite(point)) and np.isfinite(size) and size > 1e-12):
            raise InputError("The plane is not defined: its point or its normal is missing.")
        object.__setattr__(self, "point", point)
        object.__setattr__(self, "normal", normal / np.copysign(size, normal @ point))

    def heights(self, lat, lon, ellipsoid):
        """Ellipsoidal height of the plane, metres (n,), at ``lat``, ``lon`` degrees (n,).

        h = n . (P - F) / (n . u), never n . P - n . F, which loses nine digits. NaN where the plane does not
        pass over the point at all.
        """
        lat, lon = np.broadcast_arrays(np.atleast_1d(np.asarray(lat, float)), np.asarray(lon, float))
        return heights_over(self.point, self.normal, None, lat, lon, ellipsoid)


def heights_over(points, normals, which, lat, lon, ellipsoid):
    """Ellipsoidal heights, metres (n,), each of a plane of its own: see Plane.heights.

    ``points``, ``normals``: of the planes (m, 3), ``which``: index of that of each place (n,); None where they are one,
    (3,).
    """
    heights = np.empty(len(lat))
    for first in range(0, len(heights), CHUNK):
        part = slice(first, first + CHUNK)
        x, y, z, up_x, up_y, up_z = foot_components(lat[part], lon[part], ellipsoid)
        n, p = (normals, points) if which is None else (normals[which[part]].T, points[which[part]].T)
        over = n[0] * up_x + n[1] * up_y + n[2] * up_z
        rise = n[0] * (p[0] - x) + n[1] * (p[1] - y) + n[2] * (p[2] - z)
        heights[part] = np.where(over > 0.0, rise / np.where(over > 0.0, over, 1.0), np.nan)
    return heights


def _unit(vector):
    return vector / np.linalg.norm(vector, axis=-1)[..., None]


def rightwards(way, up):
    """Unit vectors (..., 3) to the right of ``way`` (..., 3), level where ``up`` (..., 3) is the normal."""
    return _unit(np.cross(way, up))


def horizon_normal(lat, lon, geoid_slope=(0.0, 0.0)):
    """Unit normals (..., 3) of the horizon at lat, lon degrees (...): unit(u - grad N).

    ``geoid_slope``: rise of the undulation per metre to the east and to the north, without unit, each (...).
    """
    east, north = east_north(lat, lon)
    up = np.cross(east, north)
    rise_east, rise_north = (np.asarray(rise, float)[..., None] for rise in geoid_slope)
    return _unit(up - rise_east * east - rise_north * north)


def chord_plane(lat, lon, height, ellipsoid):
    """Plane through two points, level across at the middle between them.

    ``lat``, ``lon``: degrees (2,); ``height``: ellipsoidal, metres (2,). InputError where both are one place.
    """
    return Plane(*chord_planes(*(np.asarray(values, float) for values in (lat, lon, height)), ellipsoid))


def chord_planes(lat, lon, height, ellipsoid):
    """The same of many pairs of points, (2, m) each: points and normals, (m, 3)."""
    (a, b), ups = position(lat, lon, height, ellipsoid), foot_and_normal(lat, lon, ellipsoid)[1]
    if np.any(np.linalg.norm(b - a, axis=-1) < 0.001):
        raise InputError("A chord needs two controls at different places.")
    ahead = _unit(b - a)
    return a, np.cross(rightwards(ahead, ups.sum(axis=0)), ahead)


def inclined_plane(lat, lon, height, azimuth, slope, ellipsoid, geoid_slope=(0.0, 0.0)):
    """Plane through one point that rises by ``slope`` against the horizon in ``azimuth``, level across there.

    ``lat``, ``lon``, ``azimuth``: degrees; ``height``: ellipsoidal, metres; ``slope``: tangent of the angle with
    the horizon, without unit; 0 gives the tangent plane. ``geoid_slope``: see horizon_normal.
    """
    return Plane(*inclined_planes(lat, lon, height, azimuth, slope, ellipsoid, geoid_slope))


def inclined_planes(lat, lon, height, azimuth, slope, ellipsoid, geoid_slope=(0.0, 0.0)):
    """The same of many points (m,): points and normals, (m, 3)."""
    up = horizon_normal(lat, lon, geoid_slope)
    east, north = east_north(lat, lon)
    turn = np.radians(azimuth)[..., None]
    level = np.cos(turn) * north + np.sin(turn) * east
    level = _unit(level - np.sum(level * up, axis=-1, keepdims=True) * up)
    ahead = _unit(level + np.asarray(slope, float)[..., None] * up)
    return position(lat, lon, height, ellipsoid), np.cross(np.cross(level, up), ahead)
