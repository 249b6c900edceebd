"""Places on the map of what is drawn beside an axis: in metres on the ground, never in map units."""

from dataclasses import dataclass

import numpy as np

from .segments import Segments

# A bar of no length would be a broken line to many programs.
SHORTEST_BAR = 0.001
# Beyond it a mitre grows without bound.
SHARPEST_BEND = 120.0
# A line beside the axis is drawn in a hundred pieces, or in fewer of up to 250 metres: a geodesic leaves one that is
# straight in latitude and longitude by 7 mm at 80 degrees.
_PIECES, _SHORT_PIECE = 100, 250.0


def bar_ends(axis, chainage, length):
    """Ends of bars across an axis, from its line to ``length`` metres, positive right; arrays (n,).

    A bar runs along the geodesic perpendicular to the axis at its chainage. Bars shorter than 1 mm are drawn 1 mm long.
    Returns lat, lon: arrays (n, 2) in degrees.
    """
    return bars_each([(axis, np.asarray(chainage, float), np.asarray(length, float))])[0]


def bars_each(bars):
    """The same across many axes in one go: for each (axis, chainage, length), metres (n,), lat and lon, degrees (n, 2);
    a list."""
    if not bars:
        return []
    ellipsoid, chainage, length, legs = _on_legs(bars)
    length = np.where(np.abs(length) < SHORTEST_BAR, np.copysign(SHORTEST_BAR, length), length)
    along = (chainage - legs.chainage) * legs.length / legs.size
    lat, lon, azimuth = ellipsoid.forward(legs.lat, legs.lon, legs.azimuth, along)
    end_lat, end_lon, _ = ellipsoid.forward(lat, lon, azimuth + 90.0, length / legs.across)
    rows = Segments([len(one[1]) for one in bars])
    ends = (np.stack(pair, axis=-1) for pair in ((lat, end_lat), (lon, end_lon)))
    return list(zip(*map(rows.parts, ends)))


def _half_tangents(axis):
    """Tangent of half the bend at every vertex of the axis, positive right (legs + 1,); 0 at the ends."""
    bends = np.clip(axis.line.bends, -SHARPEST_BEND, SHARPEST_BEND)
    return np.concatenate([[0.0], np.tan(np.radians(bends) / 2.0), [0.0]])


def beside(axis, chainage, offset):
    """Latitude and longitude, degrees (n,), of what is drawn beside the axis at ``offset`` metres, positive right.

    On a straight axis the point at the chainage and offset. On a kinked one each leg's side is stretched between the
    lines that halve the angles at its vertices, so that a band beside the axis neither gapes nor folds there; the
    offset from the leg is kept exactly.
    """
    return beside_each([(axis, *np.broadcast_arrays(*np.atleast_1d(chainage, offset)))])[0]


def beside_each(lines):
    """The same of many lines in one go: for each (axis, chainage, offset), metres (n,), its latitudes and longitudes,
    degrees (n,); a list."""
    if not lines:
        return []
    ellipsoid, chainage, offset, legs = _on_legs(lines)
    share = np.clip((chainage - legs.chainage) / legs.size, 0.0, 1.0)
    # Beside the leg itself or its continuation, which Axis.place would take for the neighbour's.
    along = chainage - legs.chainage + offset * (legs.begin * (1.0 - share) - legs.end * share)
    lat, lon, azimuth = ellipsoid.forward(legs.lat, legs.lon, legs.azimuth, along * legs.length / legs.size)
    lat, lon, _ = ellipsoid.forward(lat, lon, azimuth + 90.0, offset / legs.across)
    rows = Segments([len(one[1]) for one in lines])
    return list(zip(rows.parts(lat), rows.parts(lon)))


@dataclass(frozen=True)
class _Legs:
    """Legs of axes; arrays (k,): beginning and ``azimuth``, degrees, first ``chainage``, ``size`` along the axis and
    ``length`` on the ellipsoid, metres, scale ``across``, and tangents of half the bends at both ends."""

    lat: np.ndarray
    lon: np.ndarray
    azimuth: np.ndarray
    chainage: np.ndarray
    size: np.ndarray
    length: np.ndarray
    across: np.ndarray
    begin: np.ndarray
    end: np.ndarray


def _on_legs(lines):
    """Of many (axis, chainage, distance across), metres (n,), on one ellipsoid: that, the chainages and distances one
    after another, and the _Legs on which they stand."""
    axes = list({id(axis): axis for axis, _, _ in lines}.values())
    before = dict(zip(map(id, axes), np.cumsum([0, *(len(axis.line.lengths) for axis in axes)]).tolist()))
    counts = [len(s) for _, s, _ in lines]
    own, end = np.repeat([before[id(axis)] for axis, _, _ in lines], counts), 0
    for (axis, s, _), count in zip(lines, counts):
        end += count
        if len(axis.line.lengths) > 1:
            own[end - count : end] += axis.leg_at(s)
    chainage, across = (np.concatenate([np.asarray(one[k], float) for one in lines]) for k in (1, 2))
    legs = (np.concatenate(part)[own] for part in zip(*map(_legs, axes)))
    return axes[0].line.ellipsoid, chainage, across, _Legs(*legs)


def _legs(axis):
    """The columns of _Legs of one axis: nine arrays (legs,)."""
    line, vertices, tangents = axis.line, axis.vertex_chainages, _half_tangents(axis)
    across = axis.offsets(np.arange(len(line.lengths)), 1.0)
    place = line.lat[:-1], line.lon[:-1], line.azimuths
    return (*place, vertices[:-1], np.diff(vertices), line.lengths, across, tangents[:-1], tangents[1:])


def folds(axis, offset, first, last):
    """True where a line at ``offset`` metres beside the axis folds back at a bend between chainages first and last."""
    tangents, vertices = _half_tangents(axis), axis.vertex_chainages
    shrunk = np.diff(vertices) - offset * (tangents[1:] + tangents[:-1])
    near = (vertices[1:] > first) & (vertices[:-1] < last)
    sharp = np.abs(axis.line.bends) > SHARPEST_BEND
    return bool(np.any(shrunk[near] <= 0.0) or np.any(sharp & near[1:] & near[:-1]))


def chainages_along(axis, first, last):
    """Rising chainages (m,), metres, from first to last for a line that follows the axis: a hundred even
    steps, or fewer of up to 250 m, and the vertices between."""
    vertices = axis.vertex_chainages
    inner = vertices[(vertices > first + SHORTEST_BAR) & (vertices < last - SHORTEST_BAR)]
    pieces = min(_PIECES, int((last - first) / _SHORT_PIECE) + 1)
    even = np.linspace(first, last, pieces + 1)
    # Two points that differ in their last digits only would make a ring cross itself.
    near = np.zeros(len(even), bool)
    for side in (-1, 0):
        if len(inner):
            at = np.clip(np.searchsorted(inner, even) + side, 0, len(inner) - 1)
            near |= np.abs(inner[at] - even) < SHORTEST_BAR
    return np.sort(np.concatenate([even[~near], inner]))


def band(axis, first, last, half_width):
    """Closed ring around the axis between two chainages, ``half_width`` metres to either side: lat, lon
    (m,) degrees.
    """
    along = chainages_along(axis, first, last)
    there = beside(axis, along, np.full(len(along), half_width))
    back = beside(axis, along[::-1], np.full(len(along), -half_width))
    return tuple(np.concatenate([a, b, a[:1]]) for a, b in zip(there, back))


@dataclass(frozen=True)
class Path:
    """A line over chainage and height above a base: arrays (n,), metres."""

    chainage: np.ndarray
    value: np.ndarray


def with_bends(axis, path, even=()):
    """The same Path, metres, by rising chainage, with a point at each vertex of the axis within it, or at the ``even``
    chainages, which hold these (see chainages_along)."""
    vertices = axis.vertex_chainages
    extra = even if len(even) else vertices[(vertices > path.chainage[0]) & (vertices < path.chainage[-1])]
    extra = extra[path.chainage[np.searchsorted(path.chainage[:-1], extra)] != extra]
    if not len(extra):
        return path
    chainage = np.concatenate([path.chainage, extra])
    value = np.concatenate([path.value, np.interp(extra, path.chainage, path.value)])
    order = np.argsort(chainage, kind="stable")
    return Path(chainage[order], value[order])


def within(path, low, high):
    """The parts of a path between two values, a list of Path, and whether anything beyond them was cut away.

    The path also parts where a value is NaN. A point that is left alone makes a part of one point.
    """
    chainage, value = path.chainage, path.value
    # A value that is at the edge but for its binary form is not beyond it.
    slack = 1e-6 * (high - low)
    beyond = (value < low - slack) | (value > high + slack)
    value, cut = np.where(beyond, value, np.clip(value, low, high)), bool(np.any(beyond))
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
