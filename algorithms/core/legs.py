"""Straight stretches of an axis: the whole of it, or its legs where it bends (method page 6)."""

from dataclasses import dataclass

import numpy as np

from .axis import Axis, AxisLine
from .measure import measure

KINK = 1e-3
LEAST_ON_LEG = 4


@dataclass(frozen=True)
class Stretch:
    """A straight stretch between two chainages, metres; ``leg``: its number from 1, 0 where it is the whole axis."""

    leg: int
    first: float
    last: float


def departure(axis: Axis, first, last):
    """Greatest distance, metres, of the axis from the geodesic between two of its chainages."""
    if len(axis.vertex_chainages) == 2:
        return 0.0
    # Beyond its ends the axis goes straight on, so that only what lies between two legs can be a corner.
    inner = (axis.vertex_chainages > min(first, last)) & (axis.vertex_chainages < max(first, last))
    inner[[0, -1]] = False
    if not np.any(inner) or abs(last - first) < 0.002:
        return 0.0
    lat, lon, _ = axis.place(np.array([first, last]))
    line = AxisLine(axis.line.name, lat, lon, axis.line.ellipsoid)
    return float(np.abs(measure([line], axis.line.lat[inner], axis.line.lon[inner]).across).max())


def stretches(axis: Axis, first, last):
    """The straight stretches between two chainages, metres: a tuple of Stretch, one unless the axis departs more than
    1/1000 of it from straight."""
    if departure(axis, first, last) <= KINK * abs(last - first):
        return (Stretch(0, first, last),)
    vertices = axis.vertex_chainages
    parts = []
    for leg in range(len(vertices) - 1):
        low = first if leg == 0 else max(first, vertices[leg])
        high = last if leg == len(vertices) - 2 else min(last, vertices[leg + 1])
        if high > low:
            parts.append(Stretch(leg + 1, float(low), float(high)))
    return tuple(parts)


def rows_on(stretch, chainage):
    """Which of the chainages (n,) lie on the stretch, ends included; booleans."""
    return (chainage >= stretch.first - 1e-6) & (chainage <= stretch.last + 1e-6)
