"""Geodesic spans as polynomials in space, so that many stations are projected on them at once (method page 3)."""

from dataclasses import dataclass
from functools import cache

import numpy as np

from .geodesy import east_north, foot_and_normal, foot_components

LONGEST_SPAN = 250_000.0
DEGREE = 8
CHUNK = 8192
# After a Newton step of this size, metres, what is left is below 1e-9 m.
SMALL_STEP = 0.05
# Beyond this offset the perpendiculars in space and on the ellipsoid part by 1e-6 m: exact inverse geodesics there.
FARTHEST_IN_SPACE = 4_000.0


@dataclass(frozen=True)
class Span:
    """A geodesic piece of one leg, fitted in space in a frame of its own.

    ``start``, ``length``: from the leg's beginning, metres. ``origin`` (3,): Earth-centred, metres; ``frame``
    (3, 3): rows ahead, right and up at the middle. ``middle``, ``half``: the fitted range of distance along the
    leg, metres. ``powers`` (3, DEGREE + 1): place in the frame, metres, in powers of (distance - middle) / half.
    ``radius``: Euler's radius along it at the middle, metres.
    """

    start: float
    length: float
    origin: np.ndarray
    frame: np.ndarray
    middle: float
    half: float
    powers: np.ndarray
    radius: float


_NODES = np.cos(np.pi * (np.arange(DEGREE + 1) + 0.5) / (DEGREE + 1))


@cache
def _powers_at_nodes():
    """Values at the Chebyshev nodes to powers of t: small enough in degree to lose no digit that counts (1e-9 m).

    Not at the top: the library's first call of linear algebra costs the host's start a tenth of all that is loaded.
    """
    return np.linalg.inv(np.vander(_NODES, increasing=True))


def fitted_span(ellipsoid, lat, lon, azimuth, start, length, margin_before, margin_after):
    """Fit the span from ``start`` over ``length`` metres of the geodesic that leaves lat, lon in ``azimuth``."""
    first, last = start - margin_before, start + length + margin_after
    middle, half = 0.5 * (first + last), 0.5 * (last - first)
    node_lat, node_lon, _ = ellipsoid.forward(lat, lon, azimuth, middle + half * _NODES)
    mid_lat, mid_lon, mid_azimuth = ellipsoid.forward(lat, lon, azimuth, middle)
    origin, up = foot_and_normal(mid_lat, mid_lon, ellipsoid)
    east, north = east_north(mid_lat, mid_lon)
    ahead = np.cos(np.radians(mid_azimuth)) * north + np.sin(np.radians(mid_azimuth)) * east
    frame = np.stack([ahead, np.cross(ahead, up), up])
    places = (foot_and_normal(node_lat, node_lon, ellipsoid)[0] - origin) @ frame.T
    radius = ellipsoid.euler_radius(mid_lat, mid_azimuth)
    return Span(start, length, origin, frame, middle, half, places.T @ _powers_at_nodes().T, radius)


@dataclass(frozen=True)
class Spans:
    """Many spans at once, for structures with many short axes: the fields of Span, each with the pieces first, (m,),
    (m, 3), (m, 3, 3) and (m, 3, DEGREE + 1)."""

    origin: np.ndarray
    frame: np.ndarray
    middle: np.ndarray
    half: np.ndarray
    powers: np.ndarray
    radius: np.ndarray


def fitted_spans(ellipsoid, lat, lon, azimuth, start, length, margin):
    """Fit many spans as ``fitted_span`` fits one: arrays (m,), degrees and metres; ``margin`` metres at both ends."""
    middle, half = start + 0.5 * length, 0.5 * length + margin
    along = middle[:, None] + half[:, None] * _NODES
    start_lat, start_lon, start_azimuth = (np.broadcast_to(v[:, None], along.shape) for v in (lat, lon, azimuth))
    node_lat, node_lon, _ = ellipsoid.forward(
        start_lat.ravel(), start_lon.ravel(), start_azimuth.ravel(), along.ravel()
    )
    mid_lat, mid_lon, mid_azimuth = ellipsoid.forward(lat, lon, azimuth, middle)
    origin, up = foot_and_normal(mid_lat, mid_lon, ellipsoid)
    east, north = east_north(mid_lat, mid_lon)
    turn = np.radians(mid_azimuth)[:, None]
    ahead = np.cos(turn) * north + np.sin(turn) * east
    frame = np.stack([ahead, np.cross(ahead, up), up], axis=1)
    nodes = foot_and_normal(node_lat, node_lon, ellipsoid)[0].reshape(*along.shape, 3) - origin[:, None, :]
    places = np.einsum("mkj,mij->mik", nodes, frame)
    radius = ellipsoid.euler_radius(mid_lat, mid_azimuth)
    return Spans(origin, frame, middle, half, places @ _powers_at_nodes().T, radius)


def project_each(spans, piece, lat, lon, ellipsoid, radius):
    """Feet of the perpendiculars from points, each to a span of its own: as ``project``.

    ``piece``: index into the Spans for each point (n,); ``radius``: metres, Euler's radius across its leg (n,).
    """
    along, offset = np.empty(len(lat)), np.empty(len(lat))
    with np.errstate(over="ignore", invalid="ignore"):
        for first in range(0, len(lat), CHUNK):
            part = slice(first, first + CHUNK)
            own = piece[part]
            one = Span(
                0.0,
                0.0,
                spans.origin[own].T,
                spans.frame[own].transpose(1, 2, 0),
                spans.middle[own],
                spans.half[own],
                spans.powers[own].transpose(1, 2, 0),
                spans.radius[own],
            )
            along[part], offset[part] = _project_chunk(one, lat[part], lon[part], ellipsoid, radius[part])
    return along, offset


def _value(powers, t):
    value = np.zeros_like(t) + powers[-1]
    for power in powers[-2::-1]:
        value *= t
        value += power
    return value


def project(span, lat, lon, ellipsoid, radius):
    """Feet of the perpendiculars from points to a span.

    ``lat``, ``lon``: degrees (n,); ``radius``: metres, Euler's radius across the leg. Returns distance along the
    leg (n,) and signed offset (n,), positive right, both metres on the ellipsoid.
    """
    along, offset = np.empty(len(lat)), np.empty(len(lat))
    # Far beyond its range the polynomial runs away to infinity; the caller sees that and takes the exact way.
    with np.errstate(over="ignore", invalid="ignore"):
        for first in range(0, len(lat), CHUNK):
            part = slice(first, first + CHUNK)
            along[part], offset[part] = _project_chunk(span, lat[part], lon[part], ellipsoid, radius)
    return along, offset


def _project_chunk(span, lat, lon, ellipsoid, radius):
    x, y, z = foot_components(lat, lon, ellipsoid)[:3]
    x, y, z = x - span.origin[0], y - span.origin[1], z - span.origin[2]
    ahead, right, up = (row[0] * x + row[1] * y + row[2] * z for row in span.frame)
    # As on a sphere: centimetres off at the ends of 250 km, which one Newton step mends.
    distance = span.middle + span.radius * np.arcsin(np.clip(ahead / span.radius, -1.0, 1.0))
    # Powers of one span, or of one for each point: these follow the coefficients.
    slopes = span.powers[:, 1:] * np.arange(1, DEGREE + 1).reshape(-1, *[1] * (span.powers.ndim - 2))
    for _ in range(4):
        t = (distance - span.middle) / span.half
        away = [point - _value(powers, t) for point, powers in zip((ahead, right, up), span.powers)]
        tangent = [_value(powers, t) / span.half for powers in slopes]
        # The tangent has unit length on a geodesic, so this is Newton's step; away follows it to second order.
        step = away[0] * tangent[0] + away[1] * tangent[1] + away[2] * tangent[2]
        distance = distance + step
        if not np.any(np.abs(step) > SMALL_STEP):
            break
    away = [a - step * b for a, b in zip(away, tangent)]
    size = np.sqrt(away[0] ** 2 + away[1] ** 2 + away[2] ** 2)
    # Right of the span: away . (tangent x up of the frame), which is away . (tangent_right, -tangent_ahead, 0) turned.
    side = away[1] * tangent[0] - away[0] * tangent[1]
    return distance, np.copysign(size * (1.0 + (size / radius) ** 2 / 24.0), side)


def project_exactly(ellipsoid, lat, lon, azimuth, guess, station_lat, station_lon):
    """The same by Newton steps on inverse geodesics, for points far from the leg that leaves lat, lon.

    ``guess``: distance along, metres, (n,) or one for all. Returns distance along and signed offset, metres.
    """
    along = np.full(len(station_lat), 0.0) + guess
    for _ in range(12):
        foot_lat, foot_lon, ahead = ellipsoid.forward(lat, lon, azimuth, along)
        towards, _, length = ellipsoid.inverse(foot_lat, foot_lon, station_lat, station_lon)
        turn = np.radians(towards - ahead)
        radius = ellipsoid.euler_radius(foot_lat, ahead)
        step = radius * np.arctan2(np.sin(length / radius) * np.cos(turn), np.cos(length / radius))
        along += step
        if np.all(np.abs(step) < 1e-7):
            break
    return along, np.copysign(length, np.sin(turn))
