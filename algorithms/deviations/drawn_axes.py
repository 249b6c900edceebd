"""Stations with residuals, by axis, as a run of designheights has left them: what drawdeviations draws."""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from ..boundary.cancel import check_cancel
from ..boundary.input_fields import named_field
from ..core.axis import Axis
from ..core.errors import InputError
from ..core.station_notation import station_equations
from ..entry.moved_points import warn_of_moved_points
from ..entry.run_record import RunRecord
from ..entry.stated_units import stated_units
from ..language.number_text import counted, number_text, plain_text
from ..language.translation import tr
from ..language.units import Units
from ..structure.axis_overrides import AxisFields
from ..structure.notation import Notation
from ..structure.reviewed_stations import recorded_tolerance, review_fields
from ..structure.structure import read_structure

# What given chainages may differ from those measured here, metres and share: a point moved by hand, a vertex of the
# axis.
_SLACK, _SLACK_SHARE = 0.05, 1e-3
# No structure stands higher than this, metres.
_HIGHEST = 20_000.0
# Of heights and of the line: the axis layer's field, the parameter, and the name in a record.
_TOLERANCES = (("tolerance", "TOLERANCE", "tolerance"), ("line_tol", "LINE_TOLERANCE", "line_tolerance"))


@dataclass(frozen=True)
class DrawnAxis:
    """One axis with its stations by rising chainage; metres, arrays (n,). NaN in ``residual``: no as-built height; in
    ``lateral``, positive right: not judged by line."""

    axis: Axis
    chainage: np.ndarray
    residual: np.ndarray
    design: np.ndarray
    flat: np.ndarray
    tolerance: Optional[float]
    lateral: np.ndarray
    line_tolerance: Optional[float]

    @property
    def name(self):
        return self.axis.line.name

    @property
    def extent(self):
        """Distance from the first to the last station, metres."""
        return float(np.ptp(self.chainage)) if len(self.chainage) else 0.0


@dataclass(frozen=True)
class Drawn:
    """What was read: the axes that have stations, names of those that have none, and how many stations are left out."""

    axes: list
    empty: list
    lines: list
    units: Units
    notation: Notation
    record: RunRecord
    crs: object
    layer: str
    stations: int
    without: int
    off: int

    @property
    def with_line(self):
        """Whether any station has a lateral departure."""
        return any(np.any(np.isfinite(one.lateral)) for one in self.axes)


def _column(name):
    def find(source):
        index = named_field(source, "", "STATIONS", (name,))
        if index < 0:
            raise InputError(
                tr(
                    "Layer '{}' has no field '{}'; run 'Design heights and residuals' first and give its output."
                ).format(source.sourceName(), name)
            )
        return index

    return find


def _maybe(name):
    return lambda source: named_field(source, "", "STATIONS", (name,))


def read_drawn(asked, *, with_design):
    """Read STATIONS and AXIS: Drawn. ``with_design``: whether design_h and flat_h must be there.

    InputError for fields that are missing, and where the chainages are not those of the axis.
    """
    record = asked.record_of("STATIONS")
    units = stated_units(asked, record, asked.source("STATIONS").sourceName())
    numbers = {
        "residual": _column("residual"),
        "chainage": _maybe("chainage"),
        **{name: (_column if with_design else _maybe)(name) for name in ("design_h", "flat_h")},
        "lateral": lambda source: review_fields(source)["lateral"],
    }
    structure, _ = read_structure(asked, units, with_heights=False, more_numbers=numbers)
    warn_of_moved_points(asked, "STATIONS", record, structure.points)
    text = asked.text("EQUATIONS") or record.parameter("EQUATIONS")
    notation = Notation(units.chainage_name, units.chainage, station_equations(text))
    fields, feet = AxisFields(structure.axis_source), structure.feet
    # A station far from the axis is reviewed by no run; one without a design height is none of the structure's.
    known = np.isfinite(structure.points.columns["residual"]) | np.isfinite(structure.points.columns["design_h"])
    used = ~structure.off & known[feet.station]
    axes, empty = [], []
    for number, (row, rows) in enumerate(zip(structure.axes, structure.rows_on_axes(used))):
        check_cancel(asked.feedback)
        if not len(rows):
            empty.append(row.line.name)
            continue
        placed = _placed(row, number + 1, fields, structure, rows, units, record)
        limits = [_tolerance(asked, row, number + 1, fields, units, record, *names) for names in _TOLERANCES]
        axes.append(_by_chainage(placed, structure, rows, units, *limits))
    if not axes:
        raise InputError(
            tr("Layer '{}' has no station with a residual on an axis; nothing can be drawn.").format(
                structure.points.name
            )
        )
    without = sum(int(np.sum(np.isnan(one.residual))) for one in axes)
    return Drawn(
        axes,
        empty,
        [row.line for row in structure.axes],
        units,
        notation,
        record,
        structure.points.crs,
        structure.points.name,
        len(structure.points),
        without,
        int(np.sum(~used)),
    )


def _placed(row, number, fields, structure, rows, units, record):
    """The axis with the chainage height and start that the given chainages were measured with.

    Without chainages: the chainage height of the axis layer or of the recorded run, and the start 0.
    """
    feet, station = structure.feet, structure.feet.station[rows]
    chainage = structure.points.columns["chainage"][station] * units.chainage
    given = np.isfinite(chainage)
    if not np.any(given):
        height = fields.number(row, number, "chain_h")
        height = record.axis_number(row.line.name, "chainage_height") if height is None else height
        return Axis(row.line, (height or 0.0) * units.height)
    ground = Axis(row.line).chainages(feet.leg[rows], feet.along[rows])
    axis = Axis(row.line, _chainage_height(row.line, chainage[given], ground[given]))
    measured = axis.chainages(feet.leg[rows], feet.along[rows])
    away = chainage - measured
    start = float(np.median(away[given]))
    wrong = np.abs(away - start) > _SLACK + _SLACK_SHARE * np.ptp(measured)
    if np.any(wrong):
        at = int(np.flatnonzero(wrong)[0])
        raise InputError(
            tr(
                "Layer '{}', field 'chainage', row {}: {} {} is not where axis '{}' has this station; check "
                "CHAINAGE_UNIT and the direction of the axis, or compute the residuals again."
            ).format(
                structure.points.name,
                station[at] + 1,
                number_text(chainage[at] / units.chainage, 3),
                units.chainage_label,
                row.line.name,
            ),
            keys=("CHAINAGE_UNIT",),
        )
    return Axis(row.line, axis.chainage_height, start)


def _chainage_height(line, chainage, ground):
    """Height at which chainages (n,) were measured, from what they are on the ellipsoid, metres; 0 where none fits."""
    extent = np.ptp(ground)
    height = (np.ptp(chainage) / extent - 1.0) * float(np.mean(line.mean_radii[0])) if extent > 1.0 else 0.0
    return height if abs(height) < _HIGHEST else 0.0


def _tolerance(asked, row, number, fields, units, record, own, key, recorded):
    """A tolerance of one axis in metres: the axis layer's, the form's, the recorded run's; None without one."""
    value = fields.number(row, number, own)
    if value is None:
        value = asked.number(key)
    if value is None:
        return recorded_tolerance(record, row.line.name, units, recorded)
    if value < 0:
        raise InputError(tr("Axis '{}': the tolerance {} is negative.").format(row.line.name, plain_text(value)))
    return value * units.height


def _by_chainage(axis, structure, rows, units, tolerance, line_tolerance):
    feet, columns = structure.feet, structure.points.columns
    chainage = axis.chainages(feet.leg[rows], feet.along[rows])
    order = np.argsort(chainage, kind="stable")
    station = feet.station[rows][order]
    names = ("residual", "design_h", "flat_h", "lateral")
    residual, design, flat, lateral = (columns[name][station] * units.height for name in names)
    return DrawnAxis(axis, chainage[order], residual, design, flat, tolerance, lateral, line_tolerance)


def left_out(drawn):
    """A sentence on the stations that nothing can be drawn of, '' where there are none."""
    parts = []
    if drawn.without:
        parts.append(tr("{} no as-built height").format(counted(drawn.without, tr("station has"), tr("stations have"))))
    if drawn.off:
        parts.append(tr("{} off axis").format(counted(drawn.off, tr("station lies"), tr("stations lie"))))
    return tr("Not drawn: {}.").format(", ".join(parts)) if parts else ""
