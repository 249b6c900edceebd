"""Which axis a station belongs to, and the foot of its perpendicular there (method page 3)."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from .curves import FARTHEST_IN_SPACE, fitted_span, fitted_spans, project, project_each, project_exactly
from .errors import InputError
from .geodesy import foot_and_normal

EQUALLY_NEAR = 0.01
_MARGIN = 1_000.0
_NOISE = 1e-7
_AT_END = 1e-8
# Cells of stations are cut into so many times as many at least, down to single ones.
_SPLIT = 3
# Bits of each of three coordinates in a number of 64.
_BITS = 21
# An assigned axis of so many pieces is compared with its stations piece by piece.
_FEW_PIECES = 8
# Steps that leave two empty bits behind each of 21.
_SPREAD = (
    (32, 0x1F00000000FFFF),
    (16, 0x1F0000FF0000FF),
    (8, 0x100F00F00F00F00F),
    (4, 0x10C30C30C30C30C3),
    (2, 0x1249249249249249),
)
# Stations on one piece from which on it is worth a projection of its own.
_FEW = 2_000


@dataclass(frozen=True)
class Feet:
    """Feet of perpendiculars, a row for each pair of a station and an axis it belongs to; arrays (rows,).

    ``station``, ``axis``, ``leg``: indices. ``along``: metres on the ellipsoid from the beginning of the leg;
    ``across``: signed, positive right; ``distance``: to the axis itself, not to its continuation.
    Rows follow the stations, then the axes.
    """

    station: np.ndarray
    axis: np.ndarray
    leg: np.ndarray
    along: np.ndarray
    across: np.ndarray
    distance: np.ndarray


@dataclass(frozen=True)
class _Piece:
    axis: int
    leg: int
    start: float
    length: float
    # An end of the axis or a mere cut inside a leg, not a vertex where the axis may bend.
    open_before: bool
    open_after: bool


def _pieces(lines):
    pieces = []
    for number, line in enumerate(lines):
        cuts = line.span_cuts()
        for k, (leg, start, length) in enumerate(cuts):
            pieces.append(
                _Piece(
                    number,
                    leg,
                    start,
                    length,
                    k == 0 or cuts[k - 1][0] == leg,
                    k == len(cuts) - 1 or cuts[k + 1][0] == leg,
                )
            )
    return pieces


def _group_starts(*keys):
    """True at the first of each run of equal keys; arrays (n,), sorted."""
    starts = np.zeros(len(keys[0]), bool)
    starts[:1] = True
    for key in keys:
        starts[1:] |= np.diff(key) != 0
    return starts


def _curve_order(places):
    """Indices that sort places (n, 3) along a curve through space, on which neighbours lie close together, and the
    sorted numbers (n,) of their cells on it.

    Source: Morton (1966), A computer oriented geodetic data base: the bits of the three coordinates by turns.
    """
    low = places.min(axis=0, initial=np.inf)
    size = max(float(np.ptp(places, axis=0).max()), 1e-3) if len(places) else 1.0
    key = np.zeros(len(places), np.uint64)
    for k in range(3):
        bits = ((places[:, k] - low[k]) / size * (2**_BITS - 1)).astype(np.uint64)
        for shift, mask in _SPREAD:
            bits = (bits | bits << np.uint64(shift)) & np.uint64(mask)
        key |= bits << np.uint64(k)
    order = np.argsort(key, kind="stable")
    return order, key[order]


def _cells(key):
    """Where the cells of finer and finer grids begin among places sorted by their numbers ``key`` (n,) on the curve: a
    list of index arrays, of one cell for all to begin with, and in the end of one for each place.

    Equal shares of the curve would do too, but some lie across its long jumps, far larger than a cell.
    """
    # The finest grid on which a place and the next are still in one cell.
    apart = (np.frexp((key[1:] ^ key[:-1]).astype(float))[1] - 1) // 3
    found = [np.zeros(1, int)]
    for level in range(_BITS, -1, -1):
        cut = np.flatnonzero(apart >= level)
        if len(cut) + 1 >= _SPLIT * len(found[-1]):
            found.append(np.concatenate([[0], cut + 1]))
    if len(found[-1]) < len(key):
        found.append(np.arange(len(key)))
    return found


def _handed_down(cell, parent):
    """Pairs of the parts of cells with all that these are paired with, sorted by part: the part and the pair that each
    is from, two index arrays. ``cell`` (n,): of each pair, sorted, none missing; ``parent`` (k,): cell of each part."""
    first = np.searchsorted(cell, np.arange(parent[-1] + 2))
    counts = np.diff(first)[parent]
    before = np.cumsum(counts) - counts
    pair = np.arange(before[-1] + counts[-1]) + np.repeat(first[parent] - before, counts)
    return np.repeat(np.arange(len(parent)), counts), pair


class Measurer:
    """Measures stations against axis lines that share one ellipsoid; made once, used for many chunks."""

    def __init__(self, lines):
        self.lines = tuple(lines)
        self.ellipsoid = self.lines[0].ellipsoid
        self._all = _pieces(self.lines)
        self._spans = {}
        self._ends_of_pieces()

    def _ends_of_pieces(self):
        self._start, self._length = (np.array([getattr(p, name) for p in self._all]) for name in ("start", "length"))
        self._leg, self._axis = (np.array([getattr(p, name) for p in self._all]) for name in ("leg", "axis"))
        self._open = tuple(np.array([getattr(p, name) for p in self._all]) for name in ("open_before", "open_after"))
        # One call for all lines: thousands of axes have thousands of ends.
        legs = [np.concatenate([part[:-1] for part in parts]) for parts in zip(*((n.lat, n.lon) for n in self.lines))]
        azimuth = np.concatenate([line.azimuths for line in self.lines])
        before = np.concatenate([[0], np.cumsum([len(line.lengths) for line in self.lines])])
        own = before[self._axis] + self._leg
        begin = legs[0][own], legs[1][own], azimuth[own]
        self._begin, self._end = (
            foot_and_normal(*self.ellipsoid.forward(*begin, along)[:2], self.ellipsoid)[0]
            for along in (self._start, self._start + self._length)
        )
        self._chord = self._end - self._begin
        self._square = np.einsum("ij,ij->i", self._chord, self._chord)
        # A geodesic leaves its chord by at most about this much; the search must not cut a piece off for it.
        self._sag = self._square / (7.0 * self.ellipsoid.a)

    def feet(self, lat, lon, assigned=None):
        """Feet of the perpendiculars from stations at ``lat``, ``lon`` degrees (n,).

        ``assigned``: axis index of each station (n,), -1 where the nearest axis is wanted; stations within
        0.01 m of equally near to several axes then get a row for each. InputError for places that are no numbers.
        """
        lat, lon = np.atleast_1d(np.asarray(lat, float)), np.atleast_1d(np.asarray(lon, float))
        if not np.all(np.isfinite(lat + lon)):
            raise InputError("A station has no valid latitude and longitude.")
        station, piece = self._candidates(lat, lon, assigned)
        along, across, distance = self._project(station, piece, lat, lon)
        return self._choose(station, piece, along, across, distance)

    def _candidates(self, lat, lon, assigned):
        """Pairs of a station and a piece that may be nearest to it: two index arrays, sorted by piece."""
        number = len(lat)
        if len(self._all) == 1 or not number:
            return np.arange(number), np.zeros(number, int)
        feet = foot_and_normal(lat, lon, self.ellipsoid)[0]
        if assigned is None:
            pairs = [self._pruned(feet, np.arange(number), np.arange(len(self._all)))]
        else:
            pairs = self._assigned_pairs(feet, np.asarray(assigned, int))
        station, piece = (np.concatenate(part) for part in zip(*pairs))
        order = np.lexsort((station, piece))
        return station[order], piece[order]

    def _assigned_pairs(self, feet, assigned):
        """Pairs of stations and pieces where stations belong to an axis, -1 for the nearest: a list of pairs."""
        bounds = np.searchsorted(self._axis, np.arange(len(self.lines) + 1))
        counts = np.where(assigned < 0, 0, np.diff(bounds)[assigned])
        rows = np.flatnonzero((counts > 0) & (counts <= _FEW_PIECES))
        # Each station with every piece of its axis, where these are few.
        station, before = np.repeat(rows, counts[rows]), np.cumsum(counts[rows]) - counts[rows]
        piece = bounds[assigned[station]] + np.arange(len(station)) - np.repeat(before, counts[rows])
        pairs = [self._closest(feet, station, piece)]
        free, many = np.flatnonzero(assigned < 0), np.flatnonzero(counts > _FEW_PIECES)
        if len(free):
            pairs.append(self._pruned(feet, free, np.arange(len(self._all))))
        many = many[np.argsort(assigned[many], kind="stable")]
        for part in np.split(many, np.flatnonzero(np.diff(assigned[many])) + 1):
            if len(part):
                own = assigned[part[0]]
                pairs.append(self._pruned(feet, part, np.arange(bounds[own], bounds[own + 1])))
        return pairs

    def _pruned(self, feet, stations, pieces):
        """Pairs of the ``stations`` and those of the ``pieces`` that can be nearest to them, two index arrays.

        Stations are taken in cells of space, large ones first, and a piece that is too far for the sphere around what
        is in a cell is so for all of it.
        """
        order, key = _curve_order(feet[stations])
        stations, places = stations[order], feet[stations[order]]
        cells = _cells(key)
        cell, piece = np.zeros(len(pieces), int), pieces
        for starts, finer in zip(cells, [*cells[1:], None]):
            low, high = (edge.reduceat(places, starts, axis=0) for edge in (np.minimum, np.maximum))
            distance, sag = self._to_chords(0.5 * (low + high)[cell], piece), self._sag[piece]
            first = np.searchsorted(cell, np.arange(len(starts)))
            limit = np.minimum.reduceat(distance + sag, first) + np.linalg.norm(high - low, axis=1)
            keep = distance - sag <= limit[cell] + EQUALLY_NEAR + 1e-3
            cell, piece = cell[keep], piece[keep]
            if finer is not None:
                cell, pair = _handed_down(cell, np.searchsorted(starts, finer, side="right") - 1)
                piece = piece[pair]
        return stations[cell], piece

    def _closest(self, feet, station, piece):
        """Of pairs, sorted by station, those that can be nearest for their own station."""
        distance = self._to_chords(feet[station], piece)
        fresh = _group_starts(station)
        if not len(station):
            return station, piece
        limit = np.minimum.reduceat(distance + self._sag[piece], np.flatnonzero(fresh)) + EQUALLY_NEAR + 1e-3
        keep = distance - self._sag[piece] <= limit[np.cumsum(fresh) - 1]
        return station[keep], piece[keep]

    def _to_chords(self, feet, pieces):
        """Distances in space from ``feet`` (n, 3), or one foot (3,), to the chords of ``pieces`` (n,), metres."""
        away, chord = feet - self._begin[pieces], self._chord[pieces]
        share = np.einsum("ij,ij->i", away, chord) / self._square[pieces]
        away -= np.minimum(np.maximum(share, 0.0), 1.0)[:, None] * chord
        return np.sqrt(np.einsum("ij,ij->i", away, away))

    def _project(self, station, piece, lat, lon):
        along, across, distance = (np.empty(len(station)) for _ in range(3))
        numbers, firsts, counts = np.unique(piece, return_index=True, return_counts=True)
        few = counts < _FEW if len(numbers) > 1 else np.zeros(len(numbers), bool)
        if np.any(few):
            rows = np.repeat(few, counts)
            found = self._project_each(piece[rows], lat[station[rows]], lon[station[rows]])
            along[rows], across[rows], distance[rows] = found
        for number, first, count in zip(numbers[~few], firsts[~few], counts[~few]):
            last = first + count
            rows = station[first:last]
            along[first:last], across[first:last], distance[first:last] = self._project_on(
                int(number), lat[rows], lon[rows]
            )
        return along, across, distance

    def _project_on(self, number, lat, lon):
        """Distance along the leg, signed offset, and distance to the piece itself, metres, for one piece."""
        piece, line = self._all[number], self.lines[self._all[number].axis]
        start = (line.lat[piece.leg], line.lon[piece.leg], line.azimuths[piece.leg])
        span, (first, last) = self._span(number, _MARGIN, _MARGIN)
        along, across = project(span, lat, lon, self.ellipsoid, line.mean_radii[1][piece.leg])
        far = ~((np.abs(across) < FARTHEST_IN_SPACE) & (along > first) & (along < last))
        if np.any(far):
            along[far], across[far] = project_exactly(
                self.ellipsoid, *start, piece.start + 0.5 * piece.length, lat[far], lon[far]
            )
        return along, across, self._distance(np.full(len(lat), number), along, across, lat, lon)

    def _distance(self, piece, along, across, lat, lon):
        """Distance to the pieces themselves, metres (n,): beyond an end the one to the end."""
        distance, start, last = np.abs(across), self._start[piece], self._start[piece] + self._length[piece]
        for outside, end in ((along < start, self._begin), (along > last, self._end)):
            if np.any(outside):
                feet = foot_and_normal(lat[outside], lon[outside], self.ellipsoid)[0]
                chord = np.linalg.norm(feet - end[piece[outside]], axis=1)
                distance[outside] = chord * (1.0 + (chord / self.ellipsoid.a) ** 2 / 24.0)
        return distance

    def _project_each(self, piece, lat, lon):
        """The same as ``_project_on`` for points on many pieces with few each: one fit and one projection for all."""
        spans, (begin_lat, begin_lon, azimuth, radius) = self._every_span
        along, across = project_each(spans, piece, lat, lon, self.ellipsoid, radius[piece])
        start, length = self._start[piece], self._length[piece]
        far = ~((np.abs(across) < FARTHEST_IN_SPACE) & (along > start - _MARGIN) & (along < start + length + _MARGIN))
        if np.any(far):
            own = piece[far]
            along[far], across[far] = project_exactly(
                self.ellipsoid,
                begin_lat[own],
                begin_lon[own],
                azimuth[own],
                start[far] + 0.5 * length[far],
                lat[far],
                lon[far],
            )
        return along, across, self._distance(piece, along, across, lat, lon)

    @cached_property
    def _every_span(self):
        """Spans of all pieces, and of each the beginning of its leg and Euler's radius across it: four arrays (m,)."""
        parts = [(line.lat[:-1], line.lon[:-1], line.azimuths, line.mean_radii[1]) for line in self.lines]
        legs = [np.concatenate(part) for part in zip(*parts)]
        before = np.concatenate([[0], np.cumsum([len(line.lengths) for line in self.lines])])
        own = before[self._axis] + self._leg
        starts = tuple(part[own] for part in legs)
        return fitted_spans(self.ellipsoid, *starts[:3], self._start, self._length, _MARGIN), starts

    def _span(self, number, before, after):
        """The fitted span of a piece and the range it holds for, kept for the next chunk."""
        if number not in self._spans:
            piece, line = self._all[number], self.lines[self._all[number].axis]
            span = fitted_span(
                self.ellipsoid,
                line.lat[piece.leg],
                line.lon[piece.leg],
                line.azimuths[piece.leg],
                piece.start,
                piece.length,
                before,
                after,
            )
            self._spans[number] = span, (piece.start - before, piece.start + piece.length + after)
        return self._spans[number]

    def _choose(self, station, piece, along, across, distance):
        """Of all pairs keep, for each station, the nearest piece of the nearest axis, or of all equally near."""
        axis = self._axis[piece]
        if len(self._all) == 1 or len(np.unique(station)) == len(station):
            order = np.argsort(station, kind="stable")
        else:
            order = self._nearest_pairs(station, axis, piece, along, distance)
        station, axis, piece = station[order], axis[order], piece[order]
        along, across, distance = along[order], across[order], distance[order]
        leg = self._leg[piece]
        self._corners(piece, along, across, distance)
        return Feet(station, axis, leg, along, across, distance)

    def _nearest_pairs(self, station, axis, piece, along, distance):
        order = np.lexsort((axis, station))
        fresh = _group_starts(station[order], axis[order])
        best = np.minimum.reduceat(distance[order], np.flatnonzero(fresh))
        order = order[distance[order] <= best[np.cumsum(fresh) - 1] + _NOISE]
        # Noise must not decide between two legs that meet at a vertex. A foot inside a leg goes before the vertex at
        # the end of its neighbour, which is as near to 1e-7 m when it is millimetres off; then the earlier leg wins.
        beyond = along[order] - self._start[piece[order]]
        outside = (beyond < -_AT_END) | (beyond > self._length[piece[order]] + _AT_END)
        order = order[np.lexsort((piece[order], outside, axis[order], station[order]))]
        order = order[_group_starts(station[order], axis[order])]
        groups = _group_starts(station[order])
        best = np.minimum.reduceat(distance[order], np.flatnonzero(groups))
        return order[distance[order] <= best[np.cumsum(groups) - 1] + EQUALLY_NEAR]

    def _corners(self, piece, along, across, distance):
        """In the wedge outside a bend the foot is the vertex, and the offset the distance to it (in place)."""
        start, end = self._start[piece], self._start[piece] + self._length[piece]
        for beyond, end_open, corner, shift in (
            (along < start, self._open[0], start, -1),
            (along > end, self._open[1], end, 0),
        ):
            rows = np.flatnonzero(beyond & ~end_open[piece])
            along[rows] = corner[rows]
            side = [self._outside(self._all[piece[row]], shift, across[row]) for row in rows]
            across[rows] = np.copysign(distance[rows], side)

    def _outside(self, piece, shift, across):
        """A number with the sign of the side outside the bend; where there is no bend, ``across`` itself."""
        bend = self.lines[piece.axis].bends[piece.leg + shift]
        return across if abs(bend) < 1e-9 or abs(bend) > 179.999999 else -bend


def measure(lines, lat, lon, assigned=None):
    """Feet of the perpendiculars from stations at ``lat``, ``lon`` degrees (n,) on the nearest, or the assigned, of
    ``lines``: see Measurer.feet."""
    return Measurer(lines).feet(lat, lon, assigned)
