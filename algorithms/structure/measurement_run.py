"""One run of measurestations: points measured against the axes they belong to."""

from dataclasses import replace

import numpy as np

from ..boundary.fields import MEASURED_LINE
from ..boundary.output_rows import OutputTable
from ..boundary.points import placed_points
from ..entry.base import Result
from ..entry.stated_units import height_unit_stated
from ..language.height_text import height_with_unit
from ..language.number_text import counted, number_text
from ..language.translation import tr
from ..styles.layer_kinds import StyleSpec
from .axis_overrides import MOST_TOLD, AxisFields
from .notation import station_style
from .place_sigmas import PlaceSigmas
from .structure import read_structure, units_of_stations


class MeasurementRun:
    """One run: chainage and offset of each point, and where it is asked for its place on the axis."""

    def __init__(self, asked):
        self.asked, self.units = asked, units_of_stations(asked, heights_needed=False)

    def result(self):
        asked, run_units = self.asked, self.units
        sigmas = PlaceSigmas(asked, asked.source("STATIONS"))
        structure, _ = read_structure(asked, run_units, more_numbers=sigmas.columns, heights_needed=False)
        notation = station_style(asked, run_units, len(structure.axes))
        fields, heights = AxisFields(structure.axis_source), structure.points.columns["height"][structure.feet.station]
        placed = structure.placed(asked, fields, notation, run_units, heights * run_units.height)
        self._tell(asked, structure, notation, run_units, placed)
        measured = [np.where(structure.off, np.nan, values) for values in (placed.chainage, placed.offset)]
        if sigmas:
            measured.append(sigmas.across(structure))
            sigmas.tell(asked)
        return self._result(asked, structure, notation, run_units, measured)

    @staticmethod
    def _tell(asked, structure, notation, run_units, placed):
        """A sentence for each axis, of many of the first only."""
        for number, (axis, word, rows) in enumerate(zip(placed.axes, placed.words, structure.rows_of_axes)):
            if number == MOST_TOLD:
                more = len(placed.axes) - MOST_TOLD
                asked.say(tr("{} more: see the points.").format(counted(more, tr("axis"), tr("axes"))))
                break
            rows = rows[~structure.off[rows]]
            if not len(rows):
                asked.say(tr("Axis '{}': no point belongs to it.").format(axis.line.name))
                continue
            asked.say(
                tr("Axis '{}': {} from {} to {}, greatest offset {} {}; chainage height {} ({}).").format(
                    axis.line.name,
                    counted(len(rows), tr("point"), tr("points")),
                    notation.shown(placed.chainage[rows].min()),
                    notation.shown(placed.chainage[rows].max()),
                    number_text(np.abs(placed.offset[rows]).max() / run_units.chainage, 3),
                    run_units.chainage_label,
                    height_with_unit(axis.chainage_height, run_units),
                    word,
                )
            )

    def _result(self, asked, structure, notation, run_units, measured):
        feet, source, on = structure.feet, structure.source, ~structure.off
        chainage, offset, *across = measured
        names = np.array(structure.names, dtype=object)[feet.axis]
        names[~on] = None
        columns = {
            "axis": names.tolist(),
            "station": [text or None for text in notation.texts(chainage)],
            "chainage": chainage / run_units.chainage,
            "offset": offset / run_units.chainage,
            **dict(zip(MEASURED_LINE, across)),
        }
        moved = None
        if asked.flag("ONTO_AXIS"):
            x, y = structure.points.x[feet.station].copy(), structure.points.y[feet.station].copy()
            x[on], y[on] = placed_points(*structure.foot_places(on)[:2], source.sourceCrs())
            moved = (x, y)
        style = StyleSpec(
            "stations",
            tr("Measured points"),
            run_units.height_name,
            run_units.chainage_name,
            None,
            _record(asked, run_units, structure.points.crs).text(),
        )
        table = OutputTable.beside("OUTPUT", columns, style, source, feet.station, structure.points, moved=moved)
        return Result([table], {"COUNT": int(on.sum())})


def _record(asked, run_units, crs):
    """The record: of the heights, which stay as they are, it says only what is stated."""
    record = asked.record(units=run_units, crs=crs)
    return record if height_unit_stated(asked, asked.record_of("STATIONS")) else replace(record, height_unit="")
