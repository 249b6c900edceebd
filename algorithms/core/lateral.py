"""The line of a structure in plan: how far each station stands beside it, positive right (method page 4).

From the axis as drawn; from the vertical plane through two stations (chord); or from the vertical plane that fits the
stations best, by shift and rotation (fitted). All axes of a run at once, so that a thousand of them cost what their
stations cost.
"""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from .best_line import best_lines
from .curves import CHUNK
from .errors import InputError, Word
from .geodesy import Ellipsoid, foot_and_normal, foot_components
from .plane import rightwards

# Stations that a straight line in plan needs.
FEWEST = {"chord": 2, "fitted": 3}
# Two stations closer than this in plan give no direction, metres.
_APART = 0.001


@dataclass(frozen=True)
class LineStations:
    """Stations of several axes, a row for each station on its axis; arrays (n,).

    ``axis``: index; ``lat``, ``lon``: degrees; ``height``: ellipsoidal, metres, the design height where none was
    surveyed; ``chainage``, ``offset``: metres; ``surveyed``: True where the height was surveyed.
    """

    axis: np.ndarray
    lat: np.ndarray
    lon: np.ndarray
    height: np.ndarray
    chainage: np.ndarray
    offset: np.ndarray
    surveyed: np.ndarray
    ellipsoid: Ellipsoid


@dataclass(frozen=True)
class VerticalPlanes:
    """A vertical plane for each axis, NaN where it has none; Earth-centred arrays (m, 3).

    ``point``: on the plane, metres; ``ahead``, ``right``: unit vectors, level half-way, ``ahead`` in the plane and
    up-chainage, ``right`` across it.
    """

    point: np.ndarray
    ahead: np.ndarray
    right: np.ndarray

    def coordinates(self, axis, lat, lon, height, ellipsoid):
        """Distances along and right of the planes of ``axis`` (indices (n,)), metres, two arrays (n,), of places at
        ``lat``, ``lon`` degrees and ellipsoidal ``height`` metres (n,)."""
        along, aside = np.empty(len(axis)), np.empty(len(axis))
        for first in range(0, len(axis), CHUNK):
            part = slice(first, first + CHUNK)
            foot = foot_components(lat[part], lon[part], ellipsoid)
            along[part] = aside[part] = 0.0
            for k in range(3):
                away = foot[k] - self.point[axis[part], k] + height[part] * foot[k + 3]
                along[part] += away * self.ahead[axis[part], k]
                aside[part] += away * self.right[axis[part], k]
        return along, aside

    def turned(self, axes, lines):
        """The planes, those of the ``axes`` (indices) shifted and turned onto BestLines ``lines`` (m,) in plan."""
        point, ahead, right = self.point.copy(), self.ahead.copy(), self.right.copy()
        middle, shift, turn = (v[axes, None] for v in (lines.middle, lines.shift, lines.turn))
        sine, cosine = np.sin(turn), np.cos(turn)
        point[axes] += middle * self.ahead[axes] + shift * self.right[axes]
        ahead[axes] = cosine * self.ahead[axes] + sine * self.right[axes]
        right[axes] = cosine * self.right[axes] - sine * self.ahead[axes]
        return VerticalPlanes(point, ahead, right)


@dataclass(frozen=True)
class Line:
    """What ``line_departures`` has found. ``lateral`` (n,): metres, positive right looking up-chainage, NaN on axes
    without a line. Of each axis (m,): ``first``, ``last``: rows of the stations at the plane's ends, -1 without a
    plane; ``counted``: stations that the plane rests on; ``planes``."""

    lateral: np.ndarray
    first: np.ndarray
    last: np.ndarray
    counted: np.ndarray
    planes: VerticalPlanes


def line_departures(kinds, names, stations, ends=None, weight=None):
    """Lateral departures of LineStations (n,) of m axes: a Line.

    ``kinds``: for each axis one of LINES; ``names``: of the axes. ``ends`` (m, 2): rows of the stations that a chord is
    to run through, -1 for the first or the last: of those with a surveyed height where these suffice, else of all; a
    fit rests on the same. ``weight`` (n,): of each station in a fit, in any unit; alike where not given. InputError
    naming the axis where its stations give no line.
    """
    kinds = np.asarray(kinds, dtype=object)
    straight = np.flatnonzero((kinds == "chord") | (kinds == "fitted"))
    lateral = np.where((kinds == "axis")[stations.axis], stations.offset, np.nan)
    counts = counting(kinds, stations)
    first, last = _ends(len(kinds), stations, counts)
    if ends is not None:
        told = (kinds == "chord")[:, None] & (ends >= 0)
        first, last = (np.where(told[:, k], ends[:, k], found) for k, found in enumerate((first, last)))
        turned = (first >= 0) & (stations.chainage[first] > stations.chainage[last])
        first, last = np.where(turned, last, first), np.where(turned, first, last)
    counted = np.bincount(stations.axis[counts], minlength=len(kinds))
    planes = _chord_planes(straight, kinds, names, stations, (first, last), counted)
    rows = np.flatnonzero(np.isin(stations.axis, straight))
    if len(rows):
        axis = stations.axis[rows]
        place = (stations.lat[rows], stations.lon[rows], stations.height[rows], stations.ellipsoid)
        along, aside = planes.coordinates(axis, *place)
        share = counts[rows] * (1.0 if weight is None else np.asarray(weight, float)[rows])
        fitted = np.flatnonzero(kinds == "fitted")
        planes, aside = _fitted(fitted, names, planes, (axis, along, aside, share))
        lateral[rows] = aside
    unused = kinds != "chord"
    return Line(lateral, np.where(unused, -1, first), np.where(unused, -1, last), counted, planes)


def counting(kinds, stations):
    """Mask (n,) of the stations that a plane rests on: those surveyed in height where they suffice, else all."""
    need = np.array([FEWEST.get(kind, 0) for kind in kinds])
    known = np.bincount(stations.axis[stations.surveyed], minlength=len(kinds))
    return (stations.surveyed | (known < need)[stations.axis]) & (need > 0)[stations.axis]


def _ends(number, stations, counts):
    """Rows of the first and the last station that counts on each axis, two arrays (number,), -1 without any; of two at
    one chainage the one with the least offset, then by input order, as a design takes its controls."""
    rows = np.flatnonzero(counts)
    found = np.full((2, number), -1)
    for which, sign in enumerate((1.0, -1.0)):
        here = rows[_leads(stations.axis[rows], np.round(sign * stations.chainage[rows], 6), number)]
        here = here[np.argsort(np.abs(stations.offset[here]), kind="stable")]
        axes, at = np.unique(stations.axis[here], return_index=True)
        found[which, axes] = here[at]
    return found


def _leads(axis, values, number):
    """Mask (n,) of the rows with the least of ``values`` (n,) on their ``axis``, indices (n,) of ``number`` axes."""
    least = np.full(number, np.inf)
    np.minimum.at(least, axis, values)
    return values == least[axis]


def _chord_planes(axes, kinds, names, stations, ends, counted):
    """VerticalPlanes of the ``axes`` (indices) through the stations at their ends."""
    point, ahead, right = (np.full((len(names), 3), np.nan) for _ in range(3))
    for axis in axes[counted[axes] < [FEWEST[kind] for kind in kinds[axes]]]:
        raise InputError(
            "Axis '{}': the line '{}' needs {} stations; it has {}.",
            names[axis],
            Word(kinds[axis]),
            FEWEST[kinds[axis]],
            counted[axis],
        )
    if not len(axes):
        return VerticalPlanes(point, ahead, right)
    begin, end = (_places(stations, rows[axes]) for rows in ends)
    up = begin[1] + end[1]
    up /= np.linalg.norm(up, axis=1)[:, None]
    way = end[0] - begin[0]
    level = np.linalg.norm(np.cross(way, up), axis=1)
    for axis in axes[~(level > _APART)]:
        raise InputError("Axis '{}': the stations of its line are at one place, so it has no direction.", names[axis])
    point[axes], right[axes] = begin[0], rightwards(way, up)
    ahead[axes] = np.cross(up, right[axes])
    return VerticalPlanes(point, ahead, right)


def _places(stations, rows):
    """Earth-centred places in space and normals of some stations: two arrays (k, 3)."""
    foot, up = foot_and_normal(stations.lat[rows], stations.lon[rows], stations.ellipsoid)
    return foot + stations.height[rows][:, None] * up, up


def _fitted(axes, names, planes, rows):
    """The planes, those of the ``axes`` shifted and rotated to the best fit of the rows, and the departures from all.

    ``rows``: axis, along, aside and weight of each. The squares of the distances across the plane are least, not those
    across the first guess.
    """
    axis, along, aside, weight = rows
    if not len(axes):
        return planes, aside
    lines = best_lines(axis, along, aside, weight, len(names))
    check_lines(lines, axes, names)
    aside = np.where(np.isin(axis, axes), lines.coordinates(axis, along, aside)[1], aside)
    return planes.turned(axes, lines), aside


def check_lines(lines, axes, names):
    """InputError naming the first of the ``axes`` (indices) whose stations, of which ``lines`` are the BestLines, do
    not lie along a line."""
    for one in axes[~(lines.along2[axes] > np.maximum(lines.aside2[axes], _APART**2))]:
        raise InputError("Axis '{}': its stations do not lie along a line, so none can be fitted.", names[one])


def planes_through_ends(names, stations):
    """VerticalPlanes of all axes through the first and the last of their LineStations, and the distances of all
    stations along and right of them, metres, arrays (n,). InputError naming an axis without two stations apart."""
    kinds = np.full(len(names), "chord", dtype=object)
    counts = counting(kinds, stations)
    counted = np.bincount(stations.axis[counts], minlength=len(names))
    ends = _ends(len(names), stations, counts)
    planes = _chord_planes(np.arange(len(names)), kinds, names, stations, ends, counted)
    place = (stations.lat, stations.lon, stations.height, stations.ellipsoid)
    return planes, *planes.coordinates(stations.axis, *place)


@dataclass(frozen=True)
class LineStatistics:
    """Of the departures of each axis that are numbers; arrays (m,), metres, NaN and -1 without any. ``greatest``: with
    its sign; ``greatest_at``: its row."""

    number: np.ndarray
    rms: np.ndarray
    greatest: np.ndarray
    greatest_at: np.ndarray
    within: np.ndarray
    left: np.ndarray
    right: np.ndarray


def line_statistics(lateral, side, axis, axes):
    """LineStatistics of ``lateral`` (n,) metres and ``side`` (n,) (see residuals.sides) by ``axis``, indices (n,) of
    ``axes`` axes."""
    rows = np.flatnonzero(np.isfinite(lateral))
    number = np.bincount(axis[rows], minlength=axes)
    rms = np.full(axes, np.nan)
    known = number > 0
    rms[known] = np.sqrt(np.bincount(axis[rows], lateral[rows] ** 2, axes)[known] / number[known])
    worst = rows[_leads(axis[rows], -np.abs(lateral[rows]), axes)]
    found, first = np.unique(axis[worst], return_index=True)
    at = np.full(axes, -1)
    at[found] = worst[first]
    greatest = np.where(known, lateral[at] if len(lateral) else np.nan, np.nan)
    counts = [np.bincount(axis[rows][side[rows] == word], minlength=axes) for word in ("within", "left", "right")]
    return LineStatistics(number, rms, greatest, at, *counts)


def plan_bends(planes, lines, reach: Optional[list] = None):
    """How far each axis' vertices lie beside its plane, metres (m,), 0 without an inner vertex or a plane.

    ``lines``: Axis of each plane; ``reach``: (least, greatest chainage) of each, outside which vertices do not count.
    """
    away, parts = np.zeros(len(lines)), []
    for number, axis in enumerate(lines):
        if len(axis.line.lat) > 2 and np.isfinite(planes.point[number, 0]):
            s = axis.vertex_chainages
            inner = np.arange(1, len(s) - 1)
            if reach is not None:
                inner = inner[(s[inner] > reach[number][0]) & (s[inner] < reach[number][1])]
            parts.append((np.full(len(inner), number), axis.line.lat[inner], axis.line.lon[inner], axis))
    if parts:
        number, lat, lon = (np.concatenate([part[k] for part in parts]) for k in range(3))
        height = np.array([lines[k].chainage_height for k in number])
        aside = planes.coordinates(number, lat, lon, height, parts[0][3].line.ellipsoid)[1]
        np.maximum.at(away, number, np.abs(aside))
    return away
