"""Straightness of a row of stations: departures from the best-fit line, upwards, sideways and together
(method page 6), from it and as minimum zones.
"""

from dataclasses import dataclass

import numpy as np

from .best_line import best_lines
from .fit import SurfaceFit
from .geodesy import position
from .minimum_zone import cylinder_zones, profile_zones
from .segments import Segments, joined


@dataclass(frozen=True)
class Departures:
    """RMS and range (greatest less least; of the combined one the greatest) of departures, metres."""

    rms: float
    range: float


@dataclass(frozen=True)
class Straightness:
    """``vertical``, ``lateral``, ``combined``: Departures; the lateral ones are of the stations' places in plan.

    Minimum zones, metres: ``vertical_zone``, ``lateral_zone`` between two parallel lines, ``cylinder`` its diameter.
    """

    vertical: Departures
    lateral: Departures
    combined: Departures
    vertical_zone: float
    lateral_zone: float
    cylinder: float


@dataclass(frozen=True)
class _Profiles:
    """Stations of many lines, one after another on ``legs``, Segments of n rows: places along each from their mean,
    departures upwards and sideways, metres (n,); ``risen``, ``beside``: masks of those that count upwards and
    sideways."""

    legs: Segments
    along: np.ndarray
    vertical: np.ndarray
    lateral: np.ndarray
    risen: np.ndarray
    beside: np.ndarray

    def part(self, mask, *values):
        """Segments of the rows of a ``mask`` (n,), none perhaps on some, and the ``values`` (n,) of these."""
        return Segments(self.legs.sums(mask.astype(int))), *(one[mask] for one in values)


def straightness(fit: SurfaceFit, lat, lon, height):
    """Straightness of stations at ``lat``, ``lon`` degrees and ellipsoidal ``height`` metres (n,), kept ones only: see
    straightness_of_lines."""
    return straightness_of_lines([fit], [(lat, lon, height)])[0]


def straightness_of_lines(fits, stations, lines=None):
    """Straightness of the kept stations of many lines, found together: a list. ``stations``: of each fit ``lat``,
    ``lon`` degrees and ellipsoidal ``height``, metres (n,), kept ones only. ``lines``: of each its LateralFit to all
    its rows, where the line in plan is fitted too: its own stations then count sideways, and those kept in both
    together.

    Sideways from the plane of the line and the plumb line at its middle, not from the polyline: the best-fit line in
    plan is taken out, since the axis was drawn by somebody.
    """
    in_plan = lines is not None and lines[0] is not None
    found = _with_lines(fits, lines) if in_plan else _from_places(fits, stations)
    upwards = found.part(found.risen, found.along, found.vertical)
    sideways = found.part(found.beside, found.along, found.lateral)
    legs, along, *both = found.part(found.risen & found.beside, found.along, found.vertical, found.lateral)
    (rise, rise_range), (side, side_range) = (_departures(part[0], part[2]) for part in (upwards, sideways))
    # Where half is set aside upwards, the other half sideways, nothing counts together.
    together, greatest = _together(legs, np.hypot(*both))
    values = (
        *(rise, rise_range, side, side_range, together, greatest),
        # The best-fit line is one that a zone chooses from: what is more is rounding.
        np.minimum(profile_zones(*upwards), rise_range),
        np.minimum(profile_zones(*sideways), side_range),
        np.minimum(cylinder_zones(legs, along, *both), 2.0 * greatest),
    )
    return [
        Straightness(Departures(*row[0:2]), Departures(*row[2:4]), Departures(*row[4:6]), *row[6:])
        for row in zip(*(one.tolist() for one in values))
    ]


def _with_lines(fits, lines):
    columns = zip(
        *(
            (line.along, fit.residuals, line.residuals, fit.search.kept, line.search.kept)
            for fit, line in zip(fits, lines)
        )
    )
    return _Profiles(Segments([len(line.along) for line in lines]), *(joined(one) for one in columns))


def _from_places(fits, stations):
    legs, frames = Segments([len(lat) for lat, _, _ in stations]), [fit.frame for fit in fits]
    lat, lon, height = (np.asarray(joined(values), float) for values in zip(*stations))
    foot, up, ahead = (np.stack(one) for one in zip(*((f.foot, f.up, f.directions[0]) for f in frames)))
    origin = foot + np.array([fit.height for fit in fits])[:, None] * up
    away = position(lat, lon, height, frames[0].ellipsoid) - origin[legs.which]
    along, aside = (np.einsum("ij,ij->i", away, one[legs.which]) for one in (ahead, np.cross(ahead, up)))
    best = best_lines(legs.which, along, aside, np.ones(len(along)), len(fits))
    along, lateral = best.coordinates(legs.which, along, aside)
    every, vertical = np.ones(len(along), bool), joined([fit.residuals[fit.search.kept] for fit in fits])
    return _Profiles(legs, along, vertical, lateral, every, every)


def _departures(legs, values):
    """RMS and range, metres (m,), of departures (n,)."""
    return np.sqrt(legs.sums(values**2) / legs.counts), legs.range(values)[1]


def _together(legs, sizes):
    """RMS and greatest, metres (m,), of combined departures (n,), NaN where there is none."""
    found, filled = np.full((2, len(legs.counts)), np.nan), np.flatnonzero(legs.counts)
    if len(filled):
        part = Segments(legs.counts[filled])
        found[0, filled] = np.sqrt(part.sums(sizes**2) / part.counts)
        found[1, filled] = np.maximum.reduceat(sizes, part.first)
    return found
