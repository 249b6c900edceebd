"""Stations with residuals, by axis, as a run of designheights has left them: what drawdeviations draws."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from ..boundary.cancel import check_cancel
from ..boundary.input_fields import named_field
from ..core.axis import axes_at, chainages_and_offsets
from ..core.errors import InputError
from ..core.map_geometry import AxesOnMap
from ..core.segments import Segments
from ..core.station_notation import station_equations
from ..entry.edited_heights import residual_heights, warn_of_edited_heights
from ..entry.moved_points import warn_of_moved_points
from ..entry.run_record import RunRecord
from ..entry.stated_units import stated_units
from ..language.number_text import counted, number_text, plain_text
from ..language.translation import tr
from ..language.units import Units
from ..structure.axis_overrides import AxisFields, medians_of_axes
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
class Drawn:
    """What was read: the ``axes`` (m) that have stations, and of these stations, axis after axis and by rising
    chainage, arrays (n,) in metres, ``rows`` their Segments. NaN in ``residual``: no as-built height; in
    ``lateral``, positive right: not judged by line; in ``tolerance``, ``line_tolerance`` (m,): none.

    ``empty``: names of axes that have no station; ``lines``: of all axes; ``without``, ``off``: how many of the
    layer's ``stations`` have no as-built height, and how many are left out.
    """

    axes: list
    rows: Segments
    chainage: np.ndarray
    residual: np.ndarray
    design: np.ndarray
    flat: np.ndarray
    lateral: np.ndarray
    tolerance: np.ndarray
    line_tolerance: np.ndarray
    empty: list
    lines: list
    units: Units
    notation: Notation
    record: RunRecord
    crs: object
    layer: str
    stations: int
    off: int

    @cached_property
    def names(self):
        return [axis.line.name for axis in self.axes]

    @cached_property
    def on_map(self):
        """AxesOnMap of the axes."""
        return AxesOnMap(self.axes)

    @property
    def extents(self):
        """Distance from the first to the last station of each axis, metres (m,)."""
        return self.chainage[self.rows.last] - self.chainage[self.rows.first]

    @property
    def without(self):
        return int(np.sum(np.isnan(self.residual)))

    @property
    def with_line(self):
        """Whether any station has a lateral departure."""
        return bool(np.any(np.isfinite(self.lateral)))


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
    record, source = asked.record_of("STATIONS"), asked.source("STATIONS")
    units, heights = stated_units(asked, record, source.sourceName()), residual_heights(record, source)
    numbers = {
        "residual": _column("residual"),
        "chainage": _maybe("chainage"),
        **{name: (_column if with_design else _maybe)(name) for name in ("design_h", "flat_h")},
        "lateral": lambda source: review_fields(source)["lateral"],
        **({} if heights is None else {"height": lambda _: heights.index}),
    }
    structure, _ = read_structure(asked, units, with_heights=False, more_numbers=numbers)
    warn_of_moved_points(asked, "STATIONS", record, structure.points)
    warn_of_edited_heights(asked, "STATIONS", heights, structure.points)
    text = asked.text("EQUATIONS") or record.parameter("EQUATIONS")
    notation = Notation(units.chainage_name, units.chainage, station_equations(text))
    fields, feet = AxisFields(structure.axis_source), structure.feet
    # A station far from the axis is reviewed by no run; one without a design height is none of the structure's.
    known = np.isfinite(structure.points.columns["residual"]) | np.isfinite(structure.points.columns["design_h"])
    used = ~structure.off & known[feet.station]
    rows = np.flatnonzero(used)
    rows = rows[np.argsort(feet.axis[rows], kind="stable")]
    counts = np.bincount(feet.axis[rows], minlength=len(structure.axes))
    if not len(rows):
        raise InputError(
            tr("Layer '{}' has no station with a residual on an axis; nothing can be drawn.").format(
                structure.points.name
            )
        )
    check_cancel(asked.feedback)
    some = np.flatnonzero(counts)
    on = [(structure.axes[k], k + 1) for k in some.tolist()]
    each = Segments(counts[some])
    on_axes = _OnAxes([row.line for row, _ in on], feet, rows, each)
    axes = _placed(on, on_axes, fields, structure.points, units, record)
    tolerance, line_tolerance = (_tolerances(asked, on, fields, units, record, *names) for names in _TOLERANCES)
    chainage = on_axes.chainages(axes)
    order = np.lexsort((chainage, each.which))
    station, columns = feet.station[rows][order], structure.points.columns
    return Drawn(
        axes,
        each,
        chainage[order],
        *(columns[name][station] * units.height for name in ("residual", "design_h", "flat_h", "lateral")),
        tolerance,
        line_tolerance,
        [row.line.name for row, count in zip(structure.axes, counts) if not count],
        [row.line for row in structure.axes],
        units,
        notation,
        record,
        structure.points.crs,
        structure.points.name,
        len(structure.points),
        int(np.sum(~used)),
    )


class _OnAxes:
    """Feet of stations on the ``lines`` (m) that have some, line after line: ``rows`` (n,) of the Feet; ``each``: their
    Segments."""

    def __init__(self, lines, feet, rows, each):
        self.lines, self.each = lines, each
        self.station, self._leg, self._along = feet.station[rows], feet.leg[rows], feet.along[rows]

    def placed(self, heights, starts=None):
        """Chainages, metres (n,), where those of each axis are measured at its height and begin with its start, metres
        (m,), 0 where these are not told."""
        starts = np.zeros(len(self.lines)) if starts is None else starts
        return self.chainages(axes_at(self.lines, heights.tolist(), starts.tolist()))

    def chainages(self, axes):
        """Chainages on ``axes`` (m), metres (n,)."""
        return chainages_and_offsets(axes, self.each.which, self._leg, self._along, 0.0)[0]


def _placed(on, on_axes, fields, points, units, record):
    """The axes with the chainage heights and starts that the given chainages were measured with.

    Without chainages: the chainage height of the axis layer or of the recorded run, and the start 0. ``on``: pairs of
    an AxisRow and its number.
    """
    each = on_axes.each
    chainage = points.columns["chainage"][on_axes.station] * units.chainage
    given = np.isfinite(chainage)
    known = np.bincount(each.which[given], minlength=len(on)) > 0
    heights = _chainage_heights(on_axes, chainage, given)
    for k in np.flatnonzero(~known).tolist():
        row, number = on[k]
        height = fields.number(row, number, "chain_h")
        height = record.axis_number(row.line.name, "chainage_height") if height is None else height
        heights[k] = (height or 0.0) * units.height
    measured = on_axes.placed(heights)
    starts = np.where(known, medians_of_axes(each.which, chainage - measured, len(on)), 0.0)
    slack = _SLACK + _SLACK_SHARE * each.range(measured)[1]
    wrong = np.flatnonzero(np.abs(chainage - measured - starts[each.which]) > slack[each.which])
    if len(wrong):
        at = wrong[0]
        raise InputError(
            tr(
                "Layer '{}', field 'chainage', row {}: {} {} is not where axis '{}' has this station; check "
                "CHAINAGE_UNIT and the direction of the axis, or compute the residuals again."
            ).format(
                points.name,
                on_axes.station[at] + 1,
                number_text(chainage[at] / units.chainage, 3),
                units.chainage_label,
                on_axes.lines[each.which[at]].name,
            ),
            keys=("CHAINAGE_UNIT",),
        )
    return axes_at(on_axes.lines, heights.tolist(), starts.tolist())


def _chainage_heights(on_axes, chainage, given):
    """Heights at which chainages (n,) were measured, from what those ``given`` (mask (n,)) are on the ellipsoid, metres
    (m,); 0 where none fits."""
    each, lines = on_axes.each, on_axes.lines
    ground = on_axes.placed(np.zeros(len(lines)))
    spans = []
    for values in (chainage, ground):
        low, high = np.where(given, values, np.inf), np.where(given, values, -np.inf)
        spans.append(np.maximum.reduceat(high, each.first) - np.minimum.reduceat(low, each.first))
    legs = Segments([len(line.lengths) for line in lines])
    radii = legs.parts(np.concatenate([line.mean_radii[0] for line in lines]))
    radii = np.array([float(np.mean(one)) if len(one) > 1 else one[0] for one in radii])
    found, long = np.zeros(len(lines)), spans[1] > 1.0
    found[long] = (spans[0][long] / spans[1][long] - 1.0) * radii[long]
    return np.where(np.abs(found) < _HIGHEST, found, 0.0)


def _tolerances(asked, on, fields, units, record, own, key, recorded):
    """Tolerances of the axes in metres, NaN for none (m,): the axis layer's, the form's, the recorded run's."""
    form, found = asked.number(key), []
    for row, number in on:
        value = fields.number(row, number, own)
        value = form if value is None else value
        if value is None:
            found.append(recorded_tolerance(record, row.line.name, units, recorded))
            continue
        if value < 0:
            raise InputError(tr("Axis '{}': the tolerance {} is negative.").format(row.line.name, plain_text(value)))
        found.append(value * units.height)
    return np.array(found, float)


def left_out(drawn):
    """A sentence on the stations that nothing can be drawn of, '' where there are none."""
    parts = []
    if drawn.without:
        parts.append(tr("{} no as-built height").format(counted(drawn.without, tr("station has"), tr("stations have"))))
    if drawn.off:
        parts.append(tr("{} off axis").format(counted(drawn.off, tr("station lies"), tr("stations lie"))))
    return tr("Not drawn: {}.").format(", ".join(parts)) if parts else ""
