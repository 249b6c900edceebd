"""One run of placestations: the rows of a height list read, placed along their axes or rejected."""

from dataclasses import dataclass, field

import numpy as np
from qgis.core import QgsWkbTypes

from ..boundary.axes import read_axes
from ..boundary.file_rows import file_rows
from ..boundary.input_fields import field_of_kind, headings_of
from ..boundary.output_rows import OutputTable
from ..boundary.points import placed_points
from ..boundary.reference_systems import checked_crs
from ..boundary.tables import read_table
from ..core.errors import InputError
from ..core.row_ranges import rows_of_each
from ..entry.base import Result
from ..entry.messages import ROW_REJECTED
from ..entry.recorded_system import UNKNOWN, height_kind
from ..entry.stated_units import stated_units
from ..language.core_sentences import worded
from ..language.height_text import height_with_unit
from ..language.number_text import counted, listed
from ..language.translation import tr
from ..styles.layer_kinds import StyleSpec
from .axis_overrides import AxisFields, axis_at_height
from .axis_words import tell_axes
from .checks import duplicate_rows, warn_beyond_ends, warn_duplicates
from .height_list import heading_row, headings_within, read_height_list, suspicions, told
from .height_system import undulations_told
from .list_undulations import list_undulation_index, list_undulations
from .notation import station_style

_KEYS = {
    "station": ("STATION_FIELD", ("station", "chainage")),
    "offset": ("OFFSET_FIELD", ("offset",)),
    "height": ("HEIGHT_FIELD", ("height",)),
    "axis": ("STATION_AXIS_FIELD", ("axis",)),
}


class PlacementRun:
    """One run: the list read, its rows placed, those that cannot be told with the reason."""

    def __init__(self, asked):
        self.asked = asked

    def result(self):
        asked = self.asked
        source, axis_source = asked.source("INPUT"), asked.source("AXIS")
        fields = {
            key: field_of_kind(source, asked.text(name), name, key, first) for key, (name, first) in _KEYS.items()
        }
        heading = -1
        if fields["station"] < 0:
            fields, heading = heading_row(source, fields, asked.feedback)
        if fields["station"] < 0:
            raise InputError(
                tr(
                    "Layer '{}' has no field 'station' or 'chainage'; choose the field with the station "
                    "(STATION_FIELD) among {}."
                ).format(source.sourceName(), _columns_text(source)),
                keys=("STATION_FIELD",),
            )
        undulation = list_undulation_index(asked, source)
        table = read_table(source, {}, {**fields, "undulation": undulation}, asked.feedback)
        if not len(table.ids):
            raise InputError(tr("Layer '{}' has no rows.").format(source.sourceName()))
        crs = checked_crs(axis_source)
        axes = read_axes(axis_source, asked.text("AXIS_FIELD"), asked.feedback)
        tell_axes(asked, axes, axis_source)
        run_units = self._units(asked, source, fields, table, heading + 1)
        notation = station_style(asked, run_units, len(axes))
        rows = _Rows([axis.line.name for axis in axes], notation, run_units)
        sign = asked.choice("DECIMAL_SIGN")
        numbers = file_rows(asked.layer("INPUT"), table.ids)
        name = source.fields()[undulation].name() if undulation >= 0 else ""
        heights = read_height_list(table.columns, rows.names, run_units, sign, heading + 1, numbers, name)
        rows.read(heights)
        rows.refuse_if_none(source.sourceName())
        _refuse_without_heights(rows, source, fields)
        _tell(rows, source, fields, len(axes), run_units, asked)
        told(heights, source, asked)
        for sentence in suspicions(rows, heights, rows.names, notation):
            asked.warn(tr("Layer '{}', {}.").format(source.sourceName(), sentence))
        n = list_undulations(asked, heights.undulation, rows, axes, crs, run_units.height)
        lat, lon = self._places(asked, axes, axis_source, rows, n, notation, run_units)
        warn_duplicates(
            duplicate_rows(*(np.array(v) for v in (rows.axis, rows.chainage, rows.offset)), numbers[rows.row] - 1),
            source.sourceName(),
            asked,
        )
        return self._result(asked, source, table, fields, rows, axes, lat, lon, crs, notation, run_units)

    @staticmethod
    def _units(asked, source, fields, table, first):
        """Units of the run by form, record and all headings: names of the fields, and rows of headings."""
        heights, chainages = headings_within(table.columns, first)
        # A heading row names columns whose fields have no names of their own.
        heights += headings_of(source, fields["height"])
        chainages += [text for key in ("station", "offset") for text in headings_of(source, fields[key])]
        return stated_units(asked, asked.record_of("INPUT"), source.sourceName(), heights, chainages)

    def _places(self, asked, axes, axis_source, rows, undulations, notation, run_units):
        fields, lat, lon = AxisFields(axis_source), np.empty(len(rows.row)), np.empty(len(rows.row))
        on_axis = rows_of_each(rows.axis)
        chainage, offset, height = (np.array(values) for values in (rows.chainage, rows.offset, rows.height))
        for k, axis in enumerate(axes):
            mine = on_axis.get(k)
            if mine is None:
                asked.say(tr("Axis '{}': no row belongs to it.").format(axis.line.name))
                continue
            heights = height[mine] * run_units.height + undulations[mine]
            placed, word = axis_at_height(asked, axis, k + 1, fields, notation, run_units, heights)
            s = chainage[mine]
            lat[mine], lon[mine], _ = placed.place(s, offset[mine])
            first, last = placed.vertex_chainages[[0, -1]]
            asked.say(
                tr("Axis '{}': {} placed from {} to {}, axis from {} to {}, chainage height {} ({}).").format(
                    axis.line.name,
                    counted(len(mine), tr("row"), tr("rows")),
                    notation.shown(s.min()),
                    notation.shown(s.max()),
                    notation.shown(first),
                    notation.shown(last),
                    height_with_unit(placed.chainage_height, run_units),
                    word,
                )
            )
            words = tr("row lies"), tr("rows lie")
            warn_beyond_ends(asked, axis.line.name, s, (first, last), words, notation, run_units)
        return lat, lon

    @staticmethod
    def _record(asked, fields, source, run_units, crs):
        """The record: the placed heights are those of the list's column, and the list's own record tells of 'height'
        only."""
        kind = height_kind(asked)
        more = {} if kind == UNKNOWN else {"height_system": kind, **undulations_told(asked)}
        own = fields["height"] >= 0 and source.fields()[fields["height"]].name().lower() == "height"
        return asked.record(units=run_units, crs=crs, keeps_heights=own, **more)

    def _result(self, asked, source, table, fields, rows, axes, lat, lon, crs, notation, run_units):
        x, y = placed_points(lat, lon, crs)
        chainage = np.array(rows.chainage)
        columns = {
            "axis": [axes[k].line.name for k in rows.axis],
            "station": notation.texts(chainage),
            "chainage": chainage / run_units.chainage,
            "offset": np.array(rows.offset) / run_units.chainage,
            "height": np.array(rows.height),
        }
        record = self._record(asked, fields, source, run_units, crs).text()
        style = StyleSpec(
            "stations", tr("Placed stations"), run_units.height_name, run_units.chainage_name, None, record
        )
        new = {"crs": crs, "wkb": QgsWkbTypes.Type.Point, "points": (x, y)}
        placed = OutputTable.beside("OUTPUT", columns, style, source, np.array(rows.row, int), table, **new)
        rejected = OutputTable.bare(
            "REJECTED",
            {
                "row": [int(rows.numbers[k]) for k, _ in rows.rejected],
                "reason": [reason for _, reason in rows.rejected],
            },
            StyleSpec("rejected", tr("Rejected rows"), run_units.height_name, run_units.chainage_name, None, record),
            source,
            np.array([k for k, _ in rows.rejected], int),
            table,
        )
        return Result([placed, rejected], {"COUNT": len(rows.row), "REJECTED_COUNT": len(rows.rejected)})


@dataclass
class _Rows:
    """The list's rows, sorted into those placed (lists of equal length; metres, heights as read) and those rejected."""

    names: list
    notation: object
    units: object
    row: list = field(default_factory=list)
    axis: list = field(default_factory=list)
    chainage: list = field(default_factory=list)
    offset: list = field(default_factory=list)
    height: list = field(default_factory=list)
    rejected: list = field(default_factory=list)
    quiet: set = field(default_factory=set)
    numbers: object = None

    def read(self, heights):
        """Sort the rows of a HeightList."""
        index = {name: k for k, name in enumerate(self.names)}
        self.quiet, self.numbers = heights.quiet, heights.numbers
        for k, (station, axis) in enumerate(zip(heights.station, heights.axis)):
            try:
                if k in heights.quiet:
                    raise InputError(heights.reasons[k])
                axis, chainage = self._axis(axis, index), self._chainage(station)
                if k in heights.reasons:
                    raise InputError(heights.reasons[k])
            except InputError as error:
                self.rejected.append((k, worded(error)))
                continue
            offset = 0.0 if np.isnan(heights.offset[k]) else heights.offset[k] * self.units.chainage
            for target, value in zip(
                (self.row, self.axis, self.chainage, self.offset, self.height),
                (k, axis, chainage, offset, heights.height[k]),
            ):
                target.append(value)

    def _axis(self, name, index):
        if name in index:
            return index[name]
        if name:
            raise InputError(tr("There is no axis '{}'; the axes are {}.").format(name, listed(self.names)))
        if len(self.names) > 1:
            raise InputError(tr("The row names no axis, and there are {}.").format(len(self.names)))
        return 0

    def _chainage(self, text):
        if not text:
            raise InputError(tr("The row has no station."))
        return self.notation.chainage(text)

    def refuse_if_none(self, layer):
        if not self.row:
            row, reason = next((one for one in self.rejected if one[0] not in self.quiet), self.rejected[0])
            raise InputError(
                tr("Layer '{}': none of {} can be placed; row {}: {}").format(
                    layer, counted(len(self.rejected), tr("row"), tr("rows")), self.numbers[row], reason
                )
            )


def _columns_text(source):
    return listed([f"'{field.name()}'" for field in source.fields()], 12) or tr("none")


def _refuse_without_heights(rows, source, fields):
    """InputError where no placed row has a height: a column by another name, or an empty one. A list that holds
    nothing but stations is one to be set out."""
    others = set(range(source.fields().count())) - set(fields.values())
    if np.any(np.isfinite(rows.height)) or (fields["height"] < 0 and not others):
        return
    if fields["height"] < 0:
        raise InputError(
            tr("Layer '{}' has no column of heights; choose it (HEIGHT_FIELD) among {}.").format(
                source.sourceName(), _columns_text(source)
            ),
            keys=("HEIGHT_FIELD",),
        )
    raise InputError(
        tr("Layer '{}', field '{}': no row has a height; the columns are {}.").format(
            source.sourceName(), source.fields()[fields["height"]].name(), _columns_text(source)
        ),
        keys=("HEIGHT_FIELD",),
    )


def _tell(rows, source, fields, axis_count, run_units, asked):
    def field_text(key):
        return tr("field '{}'").format(source.fields()[fields[key]].name()) if fields[key] >= 0 else tr("none")

    columns = tr("station from {}, offset from {}, height from {}, axis from {}").format(
        field_text("station"), field_text("offset"), field_text("height"), field_text("axis")
    )
    asked.read_as(
        tr("Understood: {} of layer '{}' and {}; {}; heights in {}, chainages in {}.").format(
            counted(len(rows.row) + len(rows.rejected), tr("row"), tr("rows")),
            source.sourceName(),
            counted(axis_count, tr("axis"), tr("axes")),
            columns,
            run_units.height_label,
            run_units.chainage_label,
        ),
        short=tr("Columns: {}.").format(columns),
    )
    empty = int(np.isnan(rows.height).sum())
    asked.say(
        tr("{} placed, {} of them without a height; {} rejected.").format(
            counted(len(rows.row), tr("row"), tr("rows")), empty, len(rows.rejected)
        )
    )
    loud = [one for one in rows.rejected if one[0] not in rows.quiet]
    for row, reason in loud[:20]:
        asked.warn(
            tr("Layer '{}', row {} is rejected: {}").format(source.sourceName(), rows.numbers[row], reason),
            ROW_REJECTED,
            about=(1, int(rows.numbers[row]), reason),
        )
    if len(loud) > 20:
        asked.warn(
            tr("{} rejected; see REJECTED.").format(counted(len(loud) - 20, tr("more row is"), tr("more rows are"))),
            ROW_REJECTED,
            about=(len(loud) - 20, 0, ""),
        )
