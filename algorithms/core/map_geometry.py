"""Places on the map of what is drawn beside axes: in metres on the ground, never in map units."""

from dataclasses import dataclass

import numpy as np

from .segments import Segments, ranges

# A bar of no length would be a broken line to many programs.
SHORTEST_BAR = 0.001
# Beyond it a mitre grows without bound.
SHARPEST_BEND = 120.0
# A line beside the axis is drawn in a hundred pieces, or in fewer of up to 250 metres: a geodesic leaves one that is
# straight in latitude and longitude by 7 mm at 80 degrees.
_PIECES, _SHORT_PIECE = 100, 250.0
# Points placed at a time: of millions of points the legs on which they stand would take more room than all else.
_AT_ONCE = 50_000


@dataclass(frozen=True)
class _Legs:
    """Legs of axes; arrays (k,): beginning and ``azimuth``, degrees, first ``chainage``, ``size`` along the axis and
    ``length`` on the ellipsoid, metres, scale ``across``, and tangents of half the bends at both ends, positive
    right, 0 at the ends of an axis."""

    lat: np.ndarray
    lon: np.ndarray
    azimuth: np.ndarray
    chainage: np.ndarray
    size: np.ndarray
    length: np.ndarray
    across: np.ndarray
    begin: np.ndarray
    end: np.ndarray

    def at(self, rows):
        """The _Legs of some rows, indices."""
        return _Legs(*(column[rows] for column in vars(self).values()))


class AxesOnMap:
    """Many axes on one ellipsoid, made once; ``axes``: list of Axis.

    In what follows ``which`` (n,) is the index of the axis that a point or a line belongs to.
    """

    def __init__(self, axes):
        self._axes, lines = axes, [axis.line for axis in axes]
        self._ellipsoid = lines[0].ellipsoid
        self._rows = Segments([len(line.lengths) for line in lines])
        azimuth, end_azimuth, length = (
            np.concatenate([getattr(line, name) for line in lines]) for name in ("azimuths", "end_azimuths", "lengths")
        )
        lat, lon = (np.concatenate([getattr(line, name)[:-1] for line in lines]) for name in ("lat", "lon"))
        # Those of all vertices, of which an axis has one more than legs.
        self._vertices = np.concatenate([axis.vertex_chainages for axis in axes])
        begins = np.arange(len(azimuth)) + self._rows.which
        first, self._last = self._vertices[begins], self._vertices[begins + 1]
        across = np.concatenate([axis.offsets(slice(None), 1.0) for axis in axes])
        inner = np.ones(len(azimuth), bool)
        inner[self._rows.first] = False
        inner = np.flatnonzero(inner)
        # The bend at the beginning of each leg.
        self._bends = np.zeros(len(azimuth))
        self._bends[inner] = (azimuth[inner] - end_azimuth[inner - 1] + 180.0) % 360.0 - 180.0
        begin = np.tan(np.radians(np.clip(self._bends, -SHARPEST_BEND, SHARPEST_BEND)) / 2.0)
        end = np.zeros(len(azimuth))
        end[inner - 1] = begin[inner]
        self._legs = _Legs(lat, lon, azimuth, first, self._last - first, length, across, begin, end)

    def bars(self, which, chainage, length):
        """Ends of bars across the axes, from their lines to ``length`` metres, positive right; arrays (n,).

        A bar runs along the geodesic perpendicular to its axis at its chainage. Bars shorter than 1 mm are drawn 1 mm
        long. Returns lat, lon: arrays (n, 2) in degrees.
        """
        length = np.where(np.abs(length) < SHORTEST_BAR, np.copysign(SHORTEST_BAR, length), length)
        found = np.empty((2, len(chainage), 2))
        for part, legs in self._parts(which, chainage):
            along = (chainage[part] - legs.chainage) * legs.length / legs.size
            lat, lon, azimuth = self._ellipsoid.forward(legs.lat, legs.lon, legs.azimuth, along)
            end_lat, end_lon, _ = self._ellipsoid.forward(lat, lon, azimuth + 90.0, length[part] / legs.across)
            found[:, part, 0], found[:, part, 1] = (lat, lon), (end_lat, end_lon)
        return found[0], found[1]

    def beside(self, which, chainage, offset):
        """Latitude and longitude, degrees (n,), of what is drawn beside the axes at ``offset`` metres, positive right.

        On a straight axis the point at the chainage and offset. On a kinked one each leg's side is stretched between
        the lines that halve the angles at its vertices, so that a band beside the axis neither gapes nor folds there;
        the offset from the leg is kept exactly.
        """
        found = np.empty((2, len(chainage)))
        for part, legs in self._parts(which, chainage):
            share = np.clip((chainage[part] - legs.chainage) / legs.size, 0.0, 1.0)
            # Beside the leg itself or its continuation, which Axis.place would take for the neighbour's.
            along = chainage[part] - legs.chainage + offset[part] * (legs.begin * (1.0 - share) - legs.end * share)
            lat, lon, azimuth = self._ellipsoid.forward(
                legs.lat, legs.lon, legs.azimuth, along * legs.length / legs.size
            )
            found[:, part] = self._ellipsoid.forward(lat, lon, azimuth + 90.0, offset[part] / legs.across)[:2]
        return found[0], found[1]

    def _parts(self, which, chainage):
        """(slice of the points, the _Legs on which they stand), so many points at a time."""
        own, several = self._rows.first[which], np.flatnonzero(self._rows.counts > 1)
        if len(several):
            order = np.argsort(which, kind="stable")
            bounds = np.searchsorted(which[order], np.arange(len(self._axes) + 1)).tolist()
            for k in several.tolist():
                rows = order[bounds[k] : bounds[k + 1]]
                own[rows] += self._axes[k].leg_at(chainage[rows])
        for first in range(0, len(own), _AT_ONCE):
            part = slice(first, first + _AT_ONCE)
            yield part, self._legs.at(own[part])

    def folds(self, which, offset, first, last):
        """True where a line at ``offset`` metres beside an axis folds back at a bend between chainages first and last;
        arrays (n,)."""
        rows = Segments(self._rows.counts[which])
        legs, line = ranges(self._rows.first[which], rows.counts), rows.which
        shrunk = self._legs.size[legs] - offset[line] * (self._legs.end + self._legs.begin)[legs]
        near = (self._last[legs] > first[line]) & (self._legs.chainage[legs] < last[line])
        # A bend between two legs that are both near; none is at the beginning of an axis.
        sharp = (np.abs(self._bends[legs]) > SHARPEST_BEND) & near & np.concatenate([[False], near[:-1]])
        return np.logical_or.reduceat((near & (shrunk <= 0.0)) | sharp, rows.first)

    def vertices(self, which, first, last, room=0.0):
        """Chainages of the vertices of axes that lie between two chainages, more than ``room`` from both; metres (n,).
        Returns index of the line of each, and the chainages, rising in each line: arrays (m,)."""
        rows = Segments(self._rows.counts[which] + 1)
        found = self._vertices[ranges(self._rows.first[which] + which, rows.counts)]
        inside = (found > (first + room)[rows.which]) & (found < (last - room)[rows.which])
        return rows.which[inside], found[inside]

    def along(self, which, first, last):
        """Rising chainages, metres (m,), from first to last (n,) for lines that follow their axes: a hundred even
        steps, or fewer of up to 250 m, and the vertices between. Returns their Segments, and the chainages."""
        pieces = np.minimum(_PIECES, ((last - first) / _SHORT_PIECE).astype(int) + 1)
        even = Segments(pieces + 1)
        chainage = even.places * ((last - first) / pieces)[even.which] + first[even.which]
        chainage[even.last] = last
        own, inner = self.vertices(which, first, last, SHORTEST_BAR)
        if not len(inner):
            return even, chainage
        line, chainage = np.concatenate([even.which, own]), np.concatenate([chainage, inner])
        order = np.lexsort((chainage, line))
        line, chainage, vertex = line[order], chainage[order], order >= len(even.which)
        # Two points that differ in their last digits only would make a ring cross itself.
        close = (np.diff(line) == 0) & (np.diff(chainage) < SHORTEST_BAR)
        near = np.zeros(len(line), bool)
        near[1:] |= close & vertex[:-1]
        near[:-1] |= close & vertex[1:]
        keep = vertex | ~near
        return Segments(np.bincount(line[keep], minlength=len(first))), chainage[keep]

    def bands(self, which, first, last, half_width):
        """Closed rings around axes between two chainages, ``half_width`` metres to either side; arrays (n,). Returns
        their Segments, and lat, lon, degrees (m,)."""
        along, chainage = self.along(which, first, last)
        rings = ring(along.counts, np.ones(len(which), bool))
        rows = along.first[rings.line] + rings.point
        width = half_width[rings.line]
        places = self.beside(which[rings.line], chainage[rows], np.where(rings.back, -width, width))
        return (rings.rows, *places)


@dataclass(frozen=True)
class Rings:
    """Closed rings of the points of lines, there on one side and back on the other: ``rows``, Segments of their points;
    of each point (n,) the index of its ``line``, the ``point`` of that line, and whether it lies on the way
    ``back``."""

    rows: Segments
    line: np.ndarray
    point: np.ndarray
    back: np.ndarray


def ring(counts, forward):
    """Rings of lines with so many points, ``counts`` (m,); ``forward``: which of them begin with their first point."""
    rows = Segments(2 * np.asarray(counts) + 1)
    line = rows.which
    turn, point = np.divmod(rows.places, np.asarray(counts)[line])
    back = turn == 1
    return Rings(rows, line, np.where(back == forward[line], np.asarray(counts)[line] - 1 - point, point), back)


@dataclass(frozen=True)
class Path:
    """A line over chainage and height above a base: arrays (n,), metres."""

    chainage: np.ndarray
    value: np.ndarray


def with_points(rows, chainage, values, line, extra):
    """Paths with further points on them: their Segments, chainages (m,) and a list of values (m,), all in metres.

    ``rows``, ``chainage``: of the paths, rising in each; ``values``: list of their values (n,); ``line``, ``extra``: of
    the points index of the path and chainage within it, (k,). Where a path has a point already, it gets no other.
    """
    own, at = np.concatenate([rows.which, line]), np.concatenate([chainage, extra])
    order = np.lexsort((at, own))
    fresh = order >= len(chainage)
    # The last point of the path itself at or before each.
    before = np.maximum.accumulate(np.where(fresh, 0, order))
    keep = ~fresh | (at[order] != chainage[before])
    order, before, fresh = order[keep], before[keep], fresh[keep]
    left = before[fresh]
    step, beyond = chainage[left + 1] - chainage[left], at[order][fresh] - chainage[left]
    found = []
    for value in values:
        column = value[before]
        column[fresh] = (value[left + 1] - value[left]) / step * beyond + value[left]
        found.append(column)
    return Segments(np.bincount(own[order], minlength=len(rows.counts))), at[order], found


def within(path, low, high):
    """The parts of a path between two values, a list of Path, and whether anything beyond them was cut away.

    The path also parts where a value is NaN. A point that is left alone makes a part of one point.
    """
    chainage, value = path.chainage, path.value
    value, beyond = _clipped(value, low, high)
    cut = bool(np.any(beyond))
    if not cut and not np.any(np.isnan(value)):
        return [Path(chainage, value)], False
    for bound in (low, high) if cut else ():
        before, after = value[:-1] - bound, value[1:] - bound
        at = np.flatnonzero(before * after < 0.0)
        share = before[at] / (before[at] - after[at])
        chainage = np.insert(chainage, at + 1, chainage[at] + share * (chainage[at + 1] - chainage[at]))
        value = np.insert(value, at + 1, bound)
    inside = (value >= low) & (value <= high)
    edges = np.flatnonzero(np.diff(np.concatenate([[False], inside, [False]]).astype(int)))
    return [Path(chainage[a:b], value[a:b]) for a, b in zip(edges[::2], edges[1::2])], cut


def _clipped(value, low, high):
    """Values (n,), those that are at an edge but for their binary form put there, and which lie beyond."""
    slack = 1e-6 * (high - low)
    beyond = (value < low - slack) | (value > high + slack)
    return np.where(beyond, value, np.clip(value, low, high)), beyond


def within_each(rows, path, low, high):
    """The same of many paths (m,), each between its own ``low`` and ``high`` (m,): index of the path of each part (k,),
    their Segments, a Path of all, and which paths were cut (m,)."""
    value, beyond = _clipped(path.value, low[rows.which], high[rows.which])
    cut = np.logical_or.reduceat(beyond, rows.first)
    broken = cut | np.logical_or.reduceat(np.isnan(value), rows.first)
    if not np.any(broken):
        return np.arange(len(cut)), rows, Path(path.chainage, value), cut
    parts, line = [], []
    for k, (chainage, own) in enumerate(zip(rows.parts(path.chainage), rows.parts(value))):
        found = within(Path(chainage, own), low[k], high[k])[0] if broken[k] else [Path(chainage, own)]
        parts += found
        line += [k] * len(found)
    whole = (np.concatenate([getattr(one, name) for one in parts] or [[]]) for name in ("chainage", "value"))
    return np.array(line, int), Segments([len(one.chainage) for one in parts]), Path(*whole), cut
