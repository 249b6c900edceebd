"""Controls of the designs of many axes: typed ones on the axis, the others at stations (method page 4)."""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from .axis import Axis, places_on
from .errors import Chainage, InputError, Length, Word
from .segments import joined

CONTROL_REACH = 1.0
# Two controls closer than this along the axis determine no design, metres.
_APART = 0.001


@dataclass(frozen=True)
class DesignStations:
    """Stations of one axis; arrays (n,): ``lat``, ``lon`` degrees; ``chainage``, ``offset``, ``height`` metres.

    ``height``: in the input's height system, NaN where there is none. ``undulation``: N of each station, metres,
    zeros where heights are ellipsoidal or N is not known.
    """

    axis: Axis
    lat: np.ndarray
    lon: np.ndarray
    chainage: np.ndarray
    offset: np.ndarray
    height: np.ndarray
    undulation: np.ndarray

    @property
    def name(self):
        """Name of the axis."""
        return self.axis.line.name


@dataclass(frozen=True)
class Control:
    """A control as used: metres and degrees; ``height`` in the input's system; ``station``: its index, or None."""

    chainage: float
    height: float
    lat: float
    lon: float
    azimuth: float
    undulation: float
    station: Optional[int] = None


class Rows:
    """The stations of many axes one after another, (n,): ``axis``, index of each, and the fields of DesignStations.

    ``bounds`` (m + 1,): where the rows of each axis begin, and where the last end.
    """

    def __init__(self, stations):
        counts = [len(one.chainage) for one in stations]
        self.bounds = np.concatenate([[0], np.cumsum(counts, dtype=int)])
        self.axis = np.repeat(np.arange(len(counts), dtype=np.int32), counts)
        self.lat, self.lon, self.chainage, self.offset, self.height, self.undulation = (
            joined([np.asarray(getattr(one, name), float) for one in stations])
            for name in ("lat", "lon", "chainage", "offset", "height", "undulation")
        )

    def of(self, axis):
        """The rows of one axis, a slice; ``axis``: its index."""
        return slice(self.bounds[axis], self.bounds[axis + 1])

    def parts(self, values):
        """``values`` (n,) of each axis: a list."""
        bounds = self.bounds.tolist()
        return [values[first:last] for first, last in zip(bounds, bounds[1:])]

    def each(self, values, rows):
        """``values`` (m,) of the axes for each of the ``rows`` (r,): (r,), or (1,) where there is one axis only, which
        spares a million rows an array of their own."""
        return values if len(values) == 1 else values[self.axis[rows]]

    def least(self, rows, values):
        """Least of ``values`` (r,) of the ``rows`` (r,), rising, on each axis (m,); inf where an axis has none."""
        found = np.full(len(self.bounds) - 1, np.inf)
        if len(rows) and len(found) == 1:
            found[0] = values.min()
        elif len(rows):
            own = self.axis[rows]
            first = np.concatenate([[0], np.flatnonzero(np.diff(own)) + 1])
            found[own[first]] = np.minimum.reduceat(values, first)
        return found

    def best(self, rows, closeness):
        """Of the ``rows`` (r,) on each axis the one of least ``closeness`` (r,), to a micrometre; of several the one of
        least offset, then by input order: (m,), -1 where an axis has none."""
        found = np.full(len(self.bounds) - 1, -1)
        rounded = np.round(closeness, 6)
        rows = rows[rounded == self.each(self.least(rows, rounded), rows)]
        aside = np.abs(self.offset[rows])
        rows = rows[aside == self.each(self.least(rows, aside), rows)]
        own, first = np.unique(self.axis[rows], return_index=True)
        found[own] = rows[first]
        return found


@dataclass(frozen=True)
class ControlArrays:
    """One control of each of many axes, the fields of Control as arrays (m,); NaN where an axis has none. ``station``:
    index among the axis' own stations, -1 for a typed control."""

    present: np.ndarray
    chainage: np.ndarray
    height: np.ndarray
    lat: np.ndarray
    lon: np.ndarray
    azimuth: np.ndarray
    undulation: np.ndarray
    station: np.ndarray

    @property
    def above(self):
        """Ellipsoidal heights, metres."""
        return self.height + self.undulation

    def one(self, axis):
        """The Control of one axis, metres and degrees, None where it has none; ``axis``: its index."""
        names = ("chainage", "height", "lat", "lon", "azimuth", "undulation")
        if not self.present[axis]:
            return None
        station = int(self.station[axis])
        return Control(*(float(getattr(self, name)[axis]) for name in names), None if station < 0 else station)

    def each(self):
        """The Control of every axis, None where it has none: a list."""
        values = (self.chainage, self.height, self.lat, self.lon, self.azimuth, self.undulation)
        columns = zip(self.present.tolist(), self.station.tolist(), *(one.tolist() for one in values))
        return [Control(*rest, None if at < 0 else at) if present else None for present, at, *rest in columns]


def controls_of(specs, stations, rows, undulations):
    """Controls A and B of the designs of many axes: two ControlArrays.

    ``specs``: list of DesignSpec (m,); ``stations``: of DesignStations, and ``rows``: the same as Rows;
    ``undulations``: of undulations.AlongAxis. InputError, naming the axis, where a control cannot be found.
    """
    first = [{"tangent": "middle", "reference": ""}.get(spec.kind, "first") for spec in specs]
    last = ["last" if spec.uses_b else "" for spec in specs]
    a = _controls("A", first, [(spec.chainage_a, spec.height_a) for spec in specs], stations, rows, undulations)
    b = _controls("B", last, [(spec.chainage_b, spec.height_b) for spec in specs], stations, rows, undulations)
    for k in np.flatnonzero(b.present & (np.abs(b.chainage - a.chainage) < _APART)):
        raise InputError(
            "Axis '{}': controls A and B are at the same chainage; a {} needs two that are apart.",
            stations[k].name,
            Word(specs[k].kind),
        )
    return a, b


def resolved_controls(spec, stations, undulation):
    """The controls of one axis as used, a tuple of one or two Control: see controls_of."""
    both = controls_of([spec], [stations], Rows([stations]), [undulation])
    return tuple(control.one(0) for control in both if control.present[0])


def _controls(letter, defaults, given, stations, rows, undulations):
    """ControlArrays of one letter. ``defaults``: where a control without a chainage is, 'first', 'middle' or 'last', ''
    where an axis has no such control; ``given``: chainage and height of each, None where not typed."""
    words = np.array(defaults, dtype=object)
    present, number = words != "", len(words)
    chainage, height = np.array([[np.nan if v is None else v for v in pair] for pair in given]).reshape(-1, 2).T.copy()
    untold, typed = present & np.isnan(chainage), present & ~np.isnan(height)
    known = np.flatnonzero(np.isfinite(rows.height))
    station = _defaults(letter, words, untold, stations, rows, known)
    chainage[untold] = rows.chainage[station[untold]]
    near = present & ~untold & ~typed
    if np.any(near):
        found = stations_near(rows, known, chainage)
        station[near] = found[near]
        for k in np.flatnonzero(near & (found < 0)):
            raise InputError(
                "Axis '{}': control {} at chainage {} has no height, and no station with a height "
                "lies within {} of it.",
                stations[k].name,
                letter,
                Chainage(chainage[k]),
                Length(CONTROL_REACH),
            )
    at, n = present & ~typed, np.full(number, np.nan)
    chainage[at], height[at], n[at] = (v[station[at]] for v in (rows.chainage, rows.height, rows.undulation))
    chainage[~present] = height[~present] = np.nan
    lat, lon, azimuth = (np.full(number, np.nan) for _ in range(3))
    if np.any(present):
        axes = [stations[k].axis for k in np.flatnonzero(present)]
        lat[present], lon[present], azimuth[present] = places_on(axes, chainage[present])
    for k in np.flatnonzero(typed):
        n[k] = undulations[k].at(float(lat[k]), float(lon[k]), float(chainage[k]))
    lat[at], lon[at] = rows.lat[station[at]], rows.lon[station[at]]
    own = np.where(at, station - rows.bounds[:-1], -1)
    return ControlArrays(present, chainage, height, lat, lon, azimuth, n, own)


def _defaults(letter, words, untold, stations, rows, known):
    """Row of the station that a control without a chainage stands at (m,), -1 for others."""
    found = np.full(len(words), -1)
    if not np.any(untold):
        return found
    s = rows.chainage[known]
    least, greatest = rows.least(known, s), -rows.least(known, -s)
    for k in np.flatnonzero(untold & np.isinf(least)):
        raise InputError(
            "Axis '{}': control {} has no chainage, and no station of the axis has a height to take it from.",
            stations[k].name,
            letter,
        )
    for word in sorted(set(words[untold])):
        mine = untold & (words == word)
        found[mine] = rows.best(known, _closeness(word, s, least, greatest, known, rows))[mine]
    return found


def _closeness(word, s, least, greatest, known, rows):
    """How near chainages ``s`` (r,), metres, of the ``known`` rows are to the 'first', 'last' or 'middle' (``word``) of
    their axes, which reach from ``least`` to ``greatest`` (m,): one array at a time, a million rows are 8 MB each."""
    if word != "middle":
        return s if word == "first" else -s
    with np.errstate(invalid="ignore"):
        found = s - rows.each(0.5 * (least + greatest), known)
    return np.abs(found, out=found)


def stations_near(rows, known, chainage):
    """Row of the station nearest to ``chainage`` (m,), metres, on each axis, of those ``known`` (r,): (m,), -1 where
    none is within CONTROL_REACH."""
    distance = rows.chainage[known] - rows.each(chainage, known)
    np.abs(distance, out=distance)
    # A measured chainage has noise of 1e-8 m, which must not decide about a station that is 1 m away.
    reachable = distance <= CONTROL_REACH + 1e-6
    return rows.best(known[reachable], distance[reachable])


def station_at(stations, chainage):
    """Index of the station with a height nearest to ``chainage`` metres, None where none is within CONTROL_REACH."""
    rows = Rows([stations])
    found = int(stations_near(rows, np.flatnonzero(np.isfinite(rows.height)), np.array([float(chainage)]))[0])
    return None if found < 0 else found
