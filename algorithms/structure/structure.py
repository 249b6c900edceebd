"""Stations measured against the axes of their structure: what most entries begin with."""

from dataclasses import dataclass, fields, replace
from functools import cached_property

import numpy as np
from qgis.core import QgsWkbTypes

from ..boundary.axes import assigned_axes, read_axes
from ..boundary.cancel import check_cancel
from ..boundary.height_column import height_column
from ..boundary.input_fields import field_of_kind
from ..boundary.points import Points, read_points
from ..boundary.reference_systems import definition
from ..boundary.tables import check_geometry
from ..core.axis import chainages_and_offsets
from ..core.errors import InputError
from ..core.geodesy import datum_name
from ..core.measure import Feet, Measurer
from ..entry.messages import NO_AXIS_NAMED
from ..entry.stated_units import stated_units
from ..language.number_text import listed, number_text
from ..language.translation import tr
from .axis_overrides import axes_at_heights, medians_of_axes
from .axis_words import tell_axes
from .measured_before import chainage_before, warn_of_contradictions
from .vertical_system import check_vertical

_CHUNK = 100_000


@dataclass(frozen=True)
class PlacedAxes:
    """Core axes at their chainage heights, words on what each height is, and of all rows the ``chainage`` and
    ``offset``, metres (rows,)."""

    axes: list
    words: list
    chainage: np.ndarray
    offset: np.ndarray


@dataclass(frozen=True)
class Structure:
    """Stations as read and measured: ``feet`` has a row for each station and axis; ``off``: rows too far away."""

    points: Points
    source: object
    axis_source: object
    axes: list
    feet: Feet
    off: np.ndarray

    @cached_property
    def names(self):
        """Names of the axes, in their order."""
        return [axis.line.name for axis in self.axes]

    @property
    def rows_of_axes(self):
        """The rows of each axis, those too far away among them: a list of index arrays, each rising."""
        return self.rows_on_axes(np.ones(len(self.feet.axis), bool))

    def rows_on_axes(self, used):
        """The rows of each axis of those ``used``, a mask (rows,): a list of index arrays, each rising."""
        rows = np.flatnonzero(used)
        rows = rows[np.argsort(self.feet.axis[rows], kind="stable")]
        return np.split(rows, np.searchsorted(self.feet.axis[rows], np.arange(1, len(self.axes))))

    def foot_places(self, rows):
        """Latitudes and longitudes of the feet of some rows on their axes, and azimuths of these there, degrees;
        ``rows``: mask (rows,)."""
        lines, feet = [axis.line for axis in self.axes], self.feet
        before = np.concatenate([[0], np.cumsum([len(line.lengths) for line in lines])])
        own = before[feet.axis[rows]] + feet.leg[rows]
        starts = [(line.lat[:-1], line.lon[:-1], line.azimuths) for line in lines]
        begin = (np.concatenate(part)[own] for part in zip(*starts))
        return lines[0].ellipsoid.forward(*begin, feet.along[rows])

    def placed(self, asked, fields, notation, run_units, heights):
        """The axes at their chainage heights: PlacedAxes; warns of stations that a run has measured elsewhere before.
        ``heights``: ellipsoidal heights of the rows that count for these where none is given, metres (rows,), NaN for
        none; ``fields``: AxisFields."""
        medians = medians_of_axes(self.feet.axis, np.where(self.off, np.nan, heights), len(self.axes))
        axes, words = axes_at_heights(asked, self.axes, fields, notation, run_units, medians)
        feet = self.feet
        found = PlacedAxes(axes, words, *chainages_and_offsets(axes, feet.axis, feet.leg, feet.along, feet.across))
        warn_of_contradictions(asked, self, found, notation)
        return found


def units_of_stations(asked, heights_needed=True):
    """Units of a run on STATIONS: as form, record and the heading of the heights state. InputError where these
    contradict each other. ``heights_needed``: whether the run has nothing to do without heights."""
    source = asked.source("STATIONS")
    check_geometry(source, QgsWkbTypes.GeometryType.PointGeometry)
    headings = height_column(source, asked.text("HEIGHT_FIELD"), heights_needed).headings
    return stated_units(asked, asked.record_of("STATIONS"), source.sourceName(), headings)


def read_structure(asked, run_units, with_heights=True, more_numbers=None, places=True, *, heights_needed=True):
    """Read STATIONS and AXIS, and measure each station.

    ``more_numbers``: {key: function of the source to a field index}; ``places``: whether the points' x and y and the
    feet's distances are needed after that, which are None without; ``heights_needed``: whether a layer without heights
    is refused. Returns Structure and, ``with_heights``, the HeightColumn (else None). The points' column 'height' is as
    read, in the unit of heights, NaN where there is none.
    """
    source, axis_source = asked.source("STATIONS"), asked.source("AXIS")
    check_geometry(source, QgsWkbTypes.GeometryType.PointGeometry)
    check_geometry(axis_source, QgsWkbTypes.GeometryType.LineGeometry)
    numbers = {key: find(source) for key, find in (more_numbers or {}).items()}
    heights = height_column(source, asked.text("HEIGHT_FIELD"), heights_needed) if with_heights else None
    if heights is not None:
        numbers.update({"height": heights.index, **chainage_before(asked.record_of("STATIONS"), source)})
    wanted = asked.text("STATION_AXIS_FIELD")
    naming = field_of_kind(source, wanted, "STATION_AXIS_FIELD", "axis", ("axis",))
    points = read_points(source, asked.feedback, numbers, {"axis": naming} if naming >= 0 else {})
    if heights is not None and heights.index < 0:
        points.columns["height"] = points.z
    grouping = asked.text("GROUP_FIELD").lower() if asked.has("GROUP_FIELD") else ""
    axes = read_axes(axis_source, asked.text("AXIS_FIELD"), asked.feedback, points.crs, (grouping,))
    tell_axes(asked, axes, axis_source, datum_name(definition(points.crs)))
    if heights is not None and asked.has("UNDULATION"):
        field = source.fields()[heights.index].name() if heights.index >= 0 else ""
        check_vertical(asked, points, run_units.height_name, field)
    asked.progress(20)
    assigned = None
    if naming >= 0:
        assigned = assigned_axes(
            points.name,
            points.columns["axis"],
            [a.line.name for a in axes],
            source.fields()[naming].name(),
            bool(wanted),
        )
        if assigned is None and any(points.columns["axis"]):
            asked.warn(
                tr(
                    "No value of the field '{}' of layer '{}' names an axis; each station goes to its nearest axis."
                ).format(source.fields()[naming].name(), points.name),
                NO_AXIS_NAMED,
                ("STATION_AXIS_FIELD",),
            )
    feet = measured(axes, points, assigned, asked.feedback)
    off = _too_far(feet, asked.number("MAX_DISTANCE"), points, asked)
    if not places:
        points, feet = replace(points, x=None, y=None), replace(feet, distance=None)
    return Structure(points, source, axis_source, axes, feet, off), heights


def measured(axes, points, assigned, feedback):
    """Feet of all stations, in chunks between which the user can cancel."""
    measurer = Measurer([axis.line for axis in axes])
    columns, rows = {}, 0
    for first in range(0, len(points), _CHUNK):
        check_cancel(feedback)
        part = slice(first, first + _CHUNK)
        feet = measurer.feet(points.lat[part], points.lon[part], None if assigned is None else assigned[part])
        for field in fields(Feet):
            column = getattr(feet, field.name)
            _put(columns, field.name, column + first if field.name == "station" else column, rows, len(points))
        rows += len(feet.station)
        feedback.setProgress(20 + 20 * min(first + _CHUNK, len(points)) / len(points))
    return Feet(**{name: column[:rows] for name, column in columns.items()})


def _put(columns, name, part, at, room):
    """Put a part of a column into its place ``at`` in the whole, which is made at once with ``room`` rows, one for each
    station, and grows where some have several: parts kept until the end leave holes in the memory."""
    whole = columns.get(name, part[:0])
    if at + len(part) > len(whole):
        whole = np.concatenate([whole[:at], np.empty(max(room, len(part)), part.dtype)])
    whole[at : at + len(part)] = part
    columns[name] = whole


def _too_far(feet, greatest, points, asked):
    off = feet.distance > (np.inf if greatest is None else greatest)
    if np.all(off):
        raise InputError(
            tr(
                "All stations of layer '{}' are farther than {} m from every axis, the nearest {} m; check the layers' "
                "coordinate reference systems or raise MAX_DISTANCE."
            ).format(points.name, _distance_text(greatest), _distance_text(feet.distance.min())),
            keys=("MAX_DISTANCE",),
        )
    if np.any(off):
        rows = np.unique(feet.station[off]) + 1
        asked.warn(
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
