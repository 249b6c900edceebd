"""Undulations of a height list's rows, for the chainage height only: so that a list is placed at the chainage height
that later runs on its points take.
"""

import numpy as np

from ..boundary.points import Points
from ..core.axis import Axis
from ..entry.recorded_system import height_kind
from ..language.translation import tr
from .height_system import height_system, undulation_index


def list_undulation_index(asked, source):
    """Index of the list's column of undulations, -1 where the run uses none."""
    return undulation_index(asked)(source)


def list_undulations(asked, read, rows, axes, crs, unit):
    """Undulation of each placed row, metres (n,), 0 where none is applied, NaN where its cell is empty.

    ``read``: those of all rows of the list as its column has them, None without one; ``rows``: the placed ones;
    ``axes``: AxisRow list; ``unit``: metres per unit of heights. InputError for a grid that is missing.
    """
    kind = height_kind(asked)
    number = len(rows.row)
    if kind == "field":
        return read[np.array(rows.row, int)] * unit
    if kind not in ("constant", "grid"):
        return np.zeros(number)
    lat, lon = np.empty(number), np.empty(number)
    index, chainage = np.array(rows.axis, int), np.array(rows.chainage)
    for k, axis in enumerate(axes):
        # Near enough for a geoid: the chainage height moves a place by millimetres.
        mine = index == k
        if np.any(mine):
            lat[mine], lon[mine], _ = Axis(axis.line).place(chainage[mine])
    nothing = np.full(number, np.nan)
    points = Points(tr("height list"), crs, np.arange(number), nothing, nothing, nothing, lat, lon, {})
    return height_system(asked, points, unit).undulation
