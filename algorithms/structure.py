"""Stations measured against the axes of their structure: what most entries begin with."""

import re
from dataclasses import dataclass

import numpy as np
from qgis.core import QgsWkbTypes

from .core.axis import Axis
from .core.errors import InputError
from .core.measure import Feet, Measurer
from .core.station_notation import StationEquations, notation, station_equations
from .core.units import metres_per
from .fields import UNIT_LABELS
from .layers import (
    Points,
    assigned_axes,
    check_cancel,
    check_geometry,
    height_column,
    named_field,
    optional_number,
    read_axes,
    read_points,
)
from .texts import listed, number_text, tr

_CHUNK = 100_000
SAME_STATION = 0.001


@dataclass(frozen=True)
class Units:
    """The run's units by name, and the metres in one of each."""

    height_name: str
    chainage_name: str

    @property
    def height(self):
        return metres_per(self.height_name)

    @property
    def chainage(self):
        return metres_per(self.chainage_name)

    @property
    def height_label(self):
        """As sentences write it: m, ft, US ft."""
        return UNIT_LABELS[self.height_name]

    @property
    def chainage_label(self):
        return UNIT_LABELS[self.chainage_name]


def units(entry, parameters, context):
    """Units of the run: chainage as heights unless set."""
    height = entry.choice(parameters, "HEIGHT_UNIT", context) if entry.parameterDefinition("HEIGHT_UNIT") else ""
    chainage = entry.choice(parameters, "CHAINAGE_UNIT", context)
    return Units(height or chainage or "metre", chainage or height or "metre")


@dataclass(frozen=True)
class Notation:
    """How stations are written in this run: ``unit`` in metres and by name, and the station equations."""

    name: str
    unit: float
    equations: StationEquations

    def chainage(self, text):
        """Chainage in metres of a station or distance as written."""
        value, region = notation(text)
        return self.equations.chainage(value, region) * self.unit if self.equations.pairs else value * self.unit

    def texts(self, chainages):
        """Normal notation of chainages (n,) in metres; '' for NaN."""
        return self.equations.texts(chainages / self.unit, self.name)

    def text(self, chainage):
        return self.texts(np.array([chainage]))[0]


def station_style(entry, parameters, context, run_units, axis_count):
    """Notation of the run; InputError for equations with several axes, of which they would be ambiguous."""
    text = entry.text(parameters, "EQUATIONS", context)
    if text and axis_count > 1:
        raise InputError(
            tr("Station equations belong to one axis, but there are {}; run that axis alone.").format(axis_count)
        )
    return Notation(run_units.chainage_name, run_units.chainage, station_equations(text))


@dataclass(frozen=True)
class Structure:
    """Stations as read and measured: ``feet`` has a row for each station and axis; ``off``: rows too far away."""

    points: Points
    source: object
    axis_source: object
    axes: list
    feet: Feet
    off: np.ndarray

    @property
    def names(self):
        return [axis.line.name for axis in self.axes]


def read_structure(entry, parameters, context, feedback, run_units, with_heights=True, more_numbers=None):
    """Read STATIONS and AXIS, and measure each station.

    ``more_numbers``: {key: function of the source to a field index}. Returns Structure and, ``with_heights``, the
    HeightColumn (else None). The points' column 'height' is as read, in the unit of heights, NaN where there is none.
    """
    source, axis_source = entry.source(parameters, "STATIONS", context), entry.source(parameters, "AXIS", context)
    check_geometry(source, QgsWkbTypes.GeometryType.PointGeometry)
    check_geometry(axis_source, QgsWkbTypes.GeometryType.LineGeometry)
    numbers = {key: find(source) for key, find in (more_numbers or {}).items()}
    heights = height_column(source, entry.text(parameters, "HEIGHT_FIELD", context)) if with_heights else None
    if heights is not None:
        numbers["height"] = heights.index
    wanted = entry.text(parameters, "STATION_AXIS_FIELD", context)
    naming = named_field(source, wanted, "STATION_AXIS_FIELD", ("axis",))
    points = read_points(source, feedback, numbers, {"axis": naming} if naming >= 0 else {})
    if heights is not None and heights.index < 0:
        points.columns["height"] = points.z
    axes = read_axes(axis_source, entry.text(parameters, "AXIS_FIELD", context), feedback, points.crs)
    feedback.setProgress(20)
    assigned = None
    if naming >= 0:
        assigned = assigned_axes(
            points.name,
            points.columns["axis"],
            [a.line.name for a in axes],
            source.fields()[naming].name(),
            bool(wanted),
            feedback,
        )
    feet = measured(axes, points, assigned, feedback)
    off = _too_far(feet, entry.number(parameters, "MAX_DISTANCE", context), points, feedback)
    return Structure(points, source, axis_source, axes, feet, off), heights


def measured(axes, points, assigned, feedback):
    """Feet of all stations, in chunks between which the user can cancel."""
    measurer = Measurer([axis.line for axis in axes])
    parts = []
    for first in range(0, len(points), _CHUNK):
        check_cancel(feedback)
        part = slice(first, first + _CHUNK)
        feet = measurer.feet(points.lat[part], points.lon[part], None if assigned is None else assigned[part])
        parts.append(Feet(feet.station + first, feet.axis, feet.leg, feet.along, feet.across, feet.distance))
        feedback.setProgress(20 + 20 * min(first + _CHUNK, len(points)) / len(points))
    names = ("station", "axis", "leg", "along", "across", "distance")
    return Feet(*(np.concatenate([getattr(part, name) for part in parts]) for name in names))


def _too_far(feet, greatest, points, feedback):
    off = feet.distance > (np.inf if greatest is None else greatest)
    if np.all(off):
        raise InputError(
            tr(
                "All stations of layer '{}' are farther than {} m from every axis, the nearest {} m; check the layers' "
                "coordinate reference systems or raise MAX_DISTANCE."
            ).format(points.name, _distance_text(greatest), _distance_text(feet.distance.min()))
        )
    if np.any(off):
        rows = np.unique(feet.station[off]) + 1
        feedback.pushWarning(
            tr("Layer '{}': {} of {} farther than {} m from every axis: {} {}.").format(
                points.name,
                len(rows),
                tr("{} stations lie").format(len(points)),
                _distance_text(greatest),
                tr("row") if len(rows) == 1 else tr("rows"),
                listed(rows),
            )
        )
    return off


def _distance_text(metres):
    return number_text(metres, 0 if metres >= 10 else 3)


class AxisFields:
    """The per-axis override fields of the axis layer; none counts where the layer has no field 'design'."""

    def __init__(self, source):
        self._source = source
        names = {field.name().lower() for field in source.fields()}
        self.names = names if "design" in names else set()

    def number(self, axis, row, name):
        """The override as a number, None where there is none."""
        if name not in self.names:
            return None
        return optional_number(axis.values[name], self._source, name, row)

    def text(self, axis, name):
        from .layers import as_text

        return as_text(axis.values[name]) if name in self.names else ""


def axis_at_height(entry, parameters, context, axis, row, fields, notation_, run_units, heights):
    """The axis with its chainage height and start, and a word on where the height is from.

    ``heights``: ellipsoidal heights of its stations as far as known, metres (n,), NaN where there is none.
    """
    typed = fields.number(axis, row, "chain_h")
    if typed is None:
        typed = entry.number(parameters, "CHAINAGE_HEIGHT", context)
    known = heights[np.isfinite(heights)]
    if typed is not None:
        height, word = typed * run_units.height, tr("as given")
    elif len(known):
        height, word = float(np.round(np.median(known))), tr("median of the heights")
    else:
        height, word = 0.0, tr("no heights")
    start = fields.text(axis, "chain_0") or entry.text(parameters, "CHAINAGE_START", context)
    try:
        return Axis(axis.line, height, notation_.chainage(start) if start else 0.0), word
    except InputError as error:
        raise InputError(tr("Chainage of the first vertex of axis '{}': {}").format(axis.line.name, error)) from None


def duplicate_rows(axis_index, chainage, offset, station):
    """Pairs of input rows (counted from 1) whose stations stand at one place of one axis, in a list."""
    order = np.lexsort((offset, chainage, axis_index))
    same = (
        (np.diff(axis_index[order]) == 0)
        & (np.diff(chainage[order]) < SAME_STATION)
        & (np.abs(np.diff(offset[order])) < SAME_STATION)
    )
    at = np.flatnonzero(same)
    return [(int(a) + 1, int(b) + 1) for a, b in zip(station[order][at], station[order][at + 1])]


def warn_duplicates(pairs, name, feedback):
    """Warn of rows that are one station twice; both stay."""
    if pairs:
        feedback.pushWarning(
            tr("Layer '{}' has stations at one place more than once, all kept: rows {}.").format(
                name, listed([tr("{} and {}").format(*sorted(pair)) for pair in pairs])
            )
        )


def warn_unit_by_name(field_name, unit, feedback):
    """Warn where a field's name says another unit than the run's."""
    feet = re.search(r"(^|[_\W\d])(ft|feet|foot)$", field_name, re.IGNORECASE)
    metres = re.search(r"(^|[_\W\d])(m|metres?|meters?)$", field_name, re.IGNORECASE)
    if (feet and unit == "metre") or (metres and unit != "metre"):
        feedback.pushWarning(
            tr("The field '{}' sounds like another unit than '{}'; check HEIGHT_UNIT.").format(field_name, unit)
        )
