"""Straightness of a row of stations: departures from the best-fit line, upwards, sideways and together
(method page 6), from it and as minimum zones.
"""

from dataclasses import dataclass

import numpy as np

from .best_line import best_lines
from .fit import SurfaceFit
from .geodesy import position
from .minimum_zone import cylinder_zones, profile_zone


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
class _Profile:
    """Places along a line from their mean, departures upwards and sideways, metres (n,); ``risen``, ``beside``: masks
    of those that count upwards and sideways."""

    along: np.ndarray
    vertical: np.ndarray
    lateral: np.ndarray
    risen: np.ndarray
    beside: np.ndarray

    @property
    def both(self):
        """Places and departures of those that count in both, metres (k,)."""
        counts = self.risen & self.beside
        return self.along[counts], self.vertical[counts], self.lateral[counts]


def straightness(fit: SurfaceFit, lat, lon, height):
    """Straightness of stations at ``lat``, ``lon`` degrees and ellipsoidal ``height`` metres (n,), kept ones only: see
    straightness_of_lines."""
    return straightness_of_lines([fit], [(lat, lon, height)])[0]


def straightness_of_lines(fits, stations, lines=None):
    """Straightness of the kept stations of many lines: a list. ``stations``: of each fit ``lat``, ``lon`` degrees and
    ellipsoidal ``height``, metres (n,), kept ones only. ``lines``: of each its LateralFit to all its rows, where the
    line in plan is fitted too: its own stations then count sideways, and those kept in both together.

    Sideways from the plane of the line and the plumb line at its middle, not from the polyline: the best-fit line in
    plan is taken out, since the axis was drawn by somebody.
    """
    profiles = [_profile(*one) for one in zip(fits, stations, lines or [None] * len(fits))]
    return [_straightness(*one) for one in zip(profiles, cylinder_zones([one.both for one in profiles]).tolist())]


def _profile(fit, stations, line):
    if line is not None:
        return _Profile(line.along, fit.residuals, line.residuals, fit.search.kept, line.search.kept)
    frame, (lat, lon, height) = fit.frame, (np.asarray(v, float) for v in stations)
    away = position(lat, lon, height, frame.ellipsoid) - (frame.foot + fit.height * frame.up)
    ahead, one, every = frame.directions[0], np.zeros(len(lat), int), np.ones(len(lat), bool)
    along, aside = away @ ahead, away @ np.cross(ahead, frame.up)
    along, lateral = best_lines(one, along, aside, np.ones(len(lat)), 1).coordinates(one, along, aside)
    return _Profile(along, fit.residuals[fit.search.kept], lateral, every, every)


def _straightness(profile, cylinder):
    vertical, lateral = profile.vertical[profile.risen], profile.lateral[profile.beside]
    together = np.hypot(*profile.both[1:])
    if not len(together):  # Where half is set aside upwards, the other half sideways.
        together, cylinder = np.full(1, np.nan), np.nan
    return Straightness(
        _departures(vertical),
        _departures(lateral),
        Departures(float(np.sqrt(np.mean(together**2))), float(together.max())),
        # The best-fit line is one that a zone chooses from: what is more is rounding.
        min(profile_zone(profile.along[profile.risen], vertical), float(np.ptp(vertical))),
        min(profile_zone(profile.along[profile.beside], lateral), float(np.ptp(lateral))),
        min(cylinder, 2.0 * float(together.max())),
    )


def _departures(values):
    return Departures(float(np.sqrt(np.mean(values**2))), float(np.ptp(values)))
