"""One run of reducesights: the sights of a field book read, reduced, and the tables of it."""

import numpy as np
from qgis.core import QgsWkbTypes

from ..boundary.output_rows import OutputTable
from ..entry.base import Result
from ..language.translation import tr
from ..structure.named_points import read_named_points
from ..styles.layer_kinds import StyleSpec
from .field_book_units import field_book_units
from .reduced_sights import Reduction
from .sight_messages import tell_sights
from .sight_table import read_sights


class SightsRun:
    """One run: height differences with their standard deviations, and the rows that give none."""

    def __init__(self, asked):
        self.asked = asked

    def result(self):
        asked = self.asked
        source = asked.source("INPUT")
        units = field_book_units(asked)
        table = read_sights(asked, source, asked.feedback, units)
        named = read_named_points(asked)
        asked.progress(30)
        reduction = Reduction(asked, table, named, units)
        found = reduction.result()
        asked.progress(60)
        tell_sights(table, reduction, found, units, asked)
        record = asked.record(units=units, collimation=reduction.collimation_seconds, k_solved=found.mean_k).text()
        tables = [_differences(found, named, units, record), _rejected(table, units, record)]
        return Result(
            tables,
            {
                "COUNT": len(found.start),
                "REJECTED_COUNT": len(table.rejected),
                "PAIRS": found.pairs,
                "K_SOLVED": found.mean_k,
            },
        )


def _differences(found, named, units, record):
    height, distance = units.height, units.chainage
    columns = {
        "from_pt": found.start,
        "to_pt": found.end,
        "dh": found.difference / height,
        "sd": found.deviation / height,
        "length": found.length / distance,
        "setups": found.setups.astype(int),
        "kind": found.kind,
        "curv_corr": found.curvature / height,
        "coll_corr": found.collimation / height,
        "imbalance": found.imbalance / distance,
        "k": found.k,
        "k_solved": found.k_solved,
        "k_sd": found.k_deviation,
        "day": found.day,
        "rows": found.rows,
    }
    style = StyleSpec("reduced", tr("Height differences"), units.height_name, units.chainage_name, None, record)
    if named is None:
        return OutputTable.bare("OUTPUT", columns, style)
    return OutputTable(
        "OUTPUT",
        columns,
        named.points.crs,
        QgsWkbTypes.Type.LineString,
        style,
        shapes=named.lines(found.start, found.end),
    )


def _rejected(table, units, record):
    rows = sorted(table.rejected)
    columns = {"row": [row + 1 for row in rows], "reason": [table.rejected[row] for row in rows]}
    style = StyleSpec("rejected", tr("Rejected rows"), units.height_name, units.chainage_name, None, record)
    return OutputTable.bare("REJECTED", columns, style, table.source, np.array(rows, int), table)
