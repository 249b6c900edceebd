"""Straightness of a row of stations: departures from the best-fit line, upwards, sideways and together
(method page 6), from it and as minimum zones.
"""

from dataclasses import dataclass

import numpy as np

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


def straightness(fit: SurfaceFit, lat, lon, height):
    """Straightness of stations at ``lat``, ``lon`` degrees and ellipsoidal ``height`` metres (n,), kept ones only: see
    straightness_of_lines."""
    return straightness_of_lines([fit], [(lat, lon, height)])[0]


def straightness_of_lines(fits, stations):
    """Straightness of the kept stations of many lines: a list. ``stations``: of each fit ``lat``, ``lon`` degrees and
    ellipsoidal ``height``, metres (n,).

    Sideways from the plane of the line and the plumb line at its middle, not from the polyline; a straight line through
    these offsets is taken out, since the axis was drawn by somebody.
    """
    profiles = [_profile(*one) for one in zip(fits, stations)]
    return [_straightness(*one) for one in zip(profiles, cylinder_zones(profiles).tolist())]


def _profile(fit, stations):
    """Places along the line from their mean, departures upwards and sideways from the best-fit line, metres (n,)."""
    frame, (lat, lon, height) = fit.frame, (np.asarray(v, float) for v in stations)
    away = position(lat, lon, height, frame.ellipsoid) - (frame.foot + fit.height * frame.up)
    ahead = frame.directions[0]
    right = np.cross(ahead, frame.up)
    along, aside = away @ ahead, away @ right
    along = along - along.mean()
    spread = float(np.sum(along**2))
    lateral = aside - aside.mean()
    lateral = lateral - along * (float(np.sum(along * lateral)) / spread if spread > 0 else 0.0)
    return along, fit.residuals[fit.search.kept], lateral


def _straightness(profile, cylinder):
    along, vertical, lateral = profile
    together = np.hypot(vertical, lateral)
    return Straightness(
        _departures(vertical),
        _departures(lateral),
        Departures(float(np.sqrt(np.mean(together**2))), float(together.max())),
        # The best-fit line is one that a zone chooses from: what is more is rounding.
        min(profile_zone(along, vertical), float(np.ptp(vertical))),
        min(profile_zone(along, lateral), float(np.ptp(lateral))),
        min(cylinder, 2.0 * float(together.max())),
    )


def _departures(values):
    return Departures(float(np.sqrt(np.mean(values**2))), float(np.ptp(values)))
