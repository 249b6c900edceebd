"""Undulations of a height list's rows, for the chainage height only: so that a list is placed at the chainage height
that later runs on its points take.
"""

import numpy as np

from ..boundary.points import Points
from ..core.axis import Axis
from ..core.errors import InputError
from ..core.number_reading import read_column
from ..entry.recorded_system import height_kind
from ..language.core_sentences import worded
from ..language.translation import tr
from .height_system import height_system, undulation_index


def list_undulation_index(asked, source):
    """Index of the list's column of undulations, -1 where the run uses none."""
    return undulation_index(asked)(source)


def list_undulations(asked, texts, rows, axes, crs, unit, sign):
    """Undulation of each placed row, metres (n,), 0 where none is applied, NaN where its cell is empty.

    ``texts``: the column's cells of all rows of the list, or None; ``rows``: the placed ones; ``axes``: AxisRow list;
    ``unit``: metres per unit of heights. InputError for a cell that is no number, or a grid that is missing.
    """
    kind = height_kind(asked)
    number = len(rows.row)
    if kind == "field":
        column = read_column([texts[row] for row in rows.row], name=tr("undulation"), sign=sign, in_feet=unit != 1.0)
        if column.reasons:
            at = min(column.reasons)
            raise InputError(tr("Row {}: {}").format(rows.row[at] + 1, worded(column.reasons[at])))
        return np.asarray(column.values, float) * unit
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
