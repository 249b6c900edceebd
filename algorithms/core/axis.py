"""The axis of a structure: geodesic legs, chainage and offset at the chainage height (method page 3)."""

import math
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from .curves import LONGEST_SPAN
from .errors import InputError
from .geodesy import Ellipsoid

SAME_PLACE = 0.001


@dataclass(frozen=True)
class AxisLine:
    """A named polyline of geodesic legs. ``lat``, ``lon``: vertices (n,), degrees, in digitising direction.

    Vertices within 1 mm of the one before are left out. InputError for fewer than two different vertices,
    for a closed line and for coordinates that are no latitude and longitude.
    """

    name: str
    lat: np.ndarray
    lon: np.ndarray
    ellipsoid: Ellipsoid

    def __post_init__(self):
        lat, lon = np.atleast_1d(np.asarray(self.lat, float)), np.atleast_1d(np.asarray(self.lon, float))
        valid = (
            np.isfinite(lat + lon) & (np.abs(lat) <= 90.0) & (np.abs(lon) <= 540.0) if lat.shape == lon.shape else False
        )
        if not np.all(valid):
            raise InputError("Axis '{}' has a vertex without a valid latitude and longitude.", self.name)
        if len(lat) < 2:
            raise InputError("Axis '{}' has only one vertex; an axis needs at least two.", self.name)
        lengths = self.ellipsoid.inverse(lat[:-1], lon[:-1], lat[1:], lon[1:])[2]
        keep = np.concatenate([[True], lengths > SAME_PLACE])
        if keep.sum() < 2:
            raise InputError("Axis '{}' has zero length: all its vertices are at one place.", self.name)
        object.__setattr__(self, "lat", lat[keep])
        object.__setattr__(self, "lon", lon[keep])
        closing = self.ellipsoid.inverse(self.lat[0], self.lon[0], self.lat[-1], self.lon[-1])[2]
        if closing <= SAME_PLACE:
            raise InputError(
                "Axis '{}' is closed: its two ends are at one place, so chainage has no direction; cut it open.",
                self.name,
            )

    @cached_property
    def _legs(self):
        return self.ellipsoid.inverse(self.lat[:-1], self.lon[:-1], self.lat[1:], self.lon[1:])

    @property
    def azimuths(self):
        """Azimuth at the beginning of each leg, degrees (legs,)."""
        return self._legs[0]

    @property
    def end_azimuths(self):
        """Azimuth at the end of each leg, degrees (legs,)."""
        return self._legs[1]

    @property
    def lengths(self):
        """Geodesic length of each leg on the ellipsoid, metres (legs,)."""
        return self._legs[2]

    @cached_property
    def bends(self):
        """Turn at each inner vertex, degrees, positive right, -180 to 180 (legs - 1,)."""
        return (self.azimuths[1:] - self.end_azimuths[:-1] + 180.0) % 360.0 - 180.0

    @cached_property
    def mean_radii(self):
        """Euler's radius along and across each leg at its middle, metres: two arrays (legs,)."""
        lat, _, azimuth = self.ellipsoid.forward(self.lat[:-1], self.lon[:-1], self.azimuths, 0.5 * self.lengths)
        return (self.ellipsoid.euler_radius(lat, azimuth), self.ellipsoid.euler_radius(lat, azimuth + 90.0))

    def span_cuts(self):
        """Cut the legs into pieces of at most 250 km: list of (leg, start in the leg, length), metres."""
        pieces = []
        for leg, length in enumerate(self.lengths):
            count = int(np.ceil(length / LONGEST_SPAN))
            pieces += [(leg, length * k / count, length / count) for k in range(count)]
        return pieces


def check_axis(name, height, start):
    """InputError, naming the axis, where its chainage height or first chainage, metres, cannot be."""
    if not (math.isfinite(height) and math.isfinite(start)):
        raise InputError("Axis '{}': the chainage height and the first chainage must be numbers.", name)
    if abs(height) > 100_000.0:
        raise InputError("Axis '{}': a chainage height of {:g} m is not on Earth.", name, height)


def axis_lines(names, vertices, ellipsoid):
    """Many axis lines at once: a list of AxisLine. ``names``: texts; ``vertices``: of each line latitudes and
    longitudes, degrees. InputError as AxisLine.

    Legs and radii are computed in one call for all; a line that AxisLine would mend or refuse is left to it.
    """
    counts = np.array([len(lat) for lat, _ in vertices])
    lat, lon = (np.concatenate([np.atleast_1d(np.asarray(pair[k], float)) for pair in vertices]) for k in (0, 1))
    last = np.cumsum(counts) - 1
    inner = np.ones(len(lat), bool)
    inner[last] = False
    begin = np.flatnonzero(inner)
    legs = ellipsoid.inverse(lat[begin], lon[begin], lat[begin + 1], lon[begin + 1])
    middle_lat, _, azimuth = ellipsoid.forward(lat[begin], lon[begin], legs[0], 0.5 * legs[2])
    radii = ellipsoid.euler_radius(middle_lat, azimuth), ellipsoid.euler_radius(middle_lat, azimuth + 90.0)
    closing = ellipsoid.inverse(lat[last - counts + 1], lon[last - counts + 1], lat[last], lon[last])[2]
    whole = np.isfinite(lat + lon) & (np.abs(lat) <= 90.0) & (np.abs(lon) <= 540.0)
    whole[begin] &= legs[2] > SAME_PLACE
    plain = np.logical_and.reduceat(whole, last - counts + 1) & (closing > SAME_PLACE) & (counts > 1)
    lines, at = [], 0
    for name, pair, first, count, good in zip(names, vertices, (last - counts + 1).tolist(), counts.tolist(), plain):
        if good:
            own = slice(at, at + count - 1)
            vertex = slice(first, first + count)
            known = {"_legs": tuple(v[own] for v in legs), "mean_radii": tuple(v[own] for v in radii)}
            lines.append(_known_line(name, lat[vertex], lon[vertex], ellipsoid, known))
        else:
            lines.append(AxisLine(name, *pair, ellipsoid))
        at += count - 1
    return lines


def _known_line(name, lat, lon, ellipsoid, known):
    """An AxisLine whose checks are made already; ``known``: its cached values."""
    line = object.__new__(AxisLine)
    line.__dict__.update(name=name, lat=lat, lon=lon, ellipsoid=ellipsoid, **known)
    return line


@dataclass(frozen=True)
class Axis:
    """An axis line with the height its chainages are measured at and the chainage of its first vertex.

    ``chainage_height``, ``start``: metres.
    """

    line: AxisLine
    chainage_height: float = 0.0
    start: float = 0.0

    def __post_init__(self):
        check_axis(self.line.name, self.chainage_height, self.start)

    @cached_property
    def _scales(self):
        along, across = self.line.mean_radii
        return 1.0 + self.chainage_height / along, 1.0 + self.chainage_height / across

    @cached_property
    def vertex_chainages(self):
        """Chainage of every vertex, metres (legs + 1,)."""
        return self.start + np.concatenate([[0.0], np.cumsum(self.line.lengths * self._scales[0])])

    @property
    def length(self):
        """Length at the chainage height, metres."""
        return self.vertex_chainages[-1] - self.start

    def chainages(self, leg, along):
        """Chainage of points ``along`` metres on the ellipsoid from the beginning of ``leg``; arrays (n,)."""
        return self.vertex_chainages[leg] + along * self._scales[0][leg]

    def offsets(self, leg, across):
        """Offset at the chainage height of points ``across`` metres from the leg on the ellipsoid; arrays (n,)."""
        return across * self._scales[1][leg]

    def leg_at(self, chainage):
        """Index of the leg at each chainage, metres (n,); at a vertex the leg ahead, beyond an end the end's leg."""
        return np.searchsorted(self.vertex_chainages[1:-1], chainage, side="right")

    def place(self, chainage, offset=0.0):
        """Latitude, longitude and azimuth of the axis, degrees, at ``chainage`` and ``offset`` metres; arrays (n,)."""
        chainage, offset = np.broadcast_arrays(*np.atleast_1d(chainage, offset))
        leg = self.leg_at(chainage)
        along = (chainage - self.vertex_chainages[leg]) / self._scales[0][leg]
        lat, lon, azimuth = self.line.ellipsoid.forward(
            self.line.lat[leg], self.line.lon[leg], self.line.azimuths[leg], along
        )
        aside = offset != 0.0
        if np.any(aside):
            lat, lon = lat.copy(), lon.copy()
            lat[aside], lon[aside], _ = self.line.ellipsoid.forward(
                lat[aside], lon[aside], azimuth[aside] + 90.0, offset[aside] / self._scales[1][leg][aside]
            )
        return lat, lon, azimuth % 360.0


def axes_at(lines, heights, starts):
    """An Axis for each of many lines (m), with its chainage ``heights`` and ``starts``, metres (m,): a list. What they
    share is computed in one go."""
    along, across = (np.concatenate([line.mean_radii[k] for line in lines]) for k in (0, 1))
    counts = np.array([len(line.lengths) for line in lines])
    height = np.repeat(np.asarray(heights, float), counts)
    scales = 1.0 + height / along, 1.0 + height / across
    sizes = np.concatenate([line.lengths for line in lines]) * scales[0]
    # Most lines have two vertices: both chainages of all of these at once.
    ends = np.asarray(starts, float)[:, None] + np.stack(
        [np.zeros(len(lines)), sizes[np.cumsum(counts) - counts]], axis=1
    )
    axes, at = [], 0
    for line, own, start, count, both in zip(lines, heights, starts, counts.tolist(), ends):
        axis, legs = Axis(line, own, start), slice(at, at + count)
        vertices = both if count == 1 else start + np.concatenate([[0.0], np.cumsum(sizes[legs])])
        vars(axis).update(_scales=(scales[0][legs], scales[1][legs]), vertex_chainages=vertices)
        axes.append(axis)
        at += count
    return axes


def chainages_and_offsets(axes, axis, leg, along, across):
    """Chainage and offset of points, metres, two arrays (n,): as Axis.chainages and Axis.offsets, each on its own of
    many ``axes``. ``axis``, ``leg``: indices; ``along``, ``across``: metres on the ellipsoid; arrays (n,)."""
    before = np.concatenate([[0], np.cumsum([len(one._scales[0]) for one in axes])])
    first = np.concatenate([one.vertex_chainages[:-1] for one in axes])
    scales = (np.concatenate([one._scales[k] for one in axes]) for k in (0, 1))
    own = before[axis] + leg
    along_scale, across_scale = scales
    return first[own] + along * along_scale[own], across * across_scale[own]


def places_on(axes, chainages):
    """Latitudes, longitudes and azimuths, degrees (m,), of one place on each of many axes, all on one ellipsoid.

    ``axes``: list of Axis; ``chainages``: metres (m,). As Axis.place, in one call.
    """
    starts = []
    for axis, chainage in zip(axes, chainages.tolist()):
        line, leg = axis.line, 0 if len(axis.line.lat) == 2 else int(axis.leg_at(chainage))
        along = (chainage - axis.vertex_chainages[leg]) / axis._scales[0][leg]
        starts.append((line.lat[leg], line.lon[leg], line.azimuths[leg], along))
    lat, lon, azimuth = axes[0].line.ellipsoid.forward(*np.array(starts).T)
    return lat, lon, azimuth % 360.0


def joined_parts(name, parts, ellipsoid):
    """Join the parts of a multi-part axis, in order, where ends meet within 1 mm.

    ``parts``: list of (lat, lon) array pairs in degrees. Returns lat, lon of the whole. InputError where two
    parts do not meet end to beginning, with their distance.
    """
    lat, lon = parts[0]
    for number, (next_lat, next_lon) in enumerate(parts[1:], 2):
        gap = ellipsoid.inverse(lat[-1], lon[-1], next_lat[0], next_lon[0])[2]
        if not gap <= SAME_PLACE:
            raise InputError(
                "Axis '{}' has parts that do not meet: part {} begins {:.3f} m from the end of part {}.",
                name,
                number,
                gap,
                number - 1,
            )
        lat, lon = np.concatenate([lat, next_lat]), np.concatenate([lon, next_lon])
    return lat, lon
