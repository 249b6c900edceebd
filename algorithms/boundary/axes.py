"""Axes of a line layer, and which of them each station names."""

from contextlib import contextmanager
from dataclasses import dataclass

import numpy as np
from qgis.core import QgsFeatureRequest, QgsWkbTypes

from ..core import geodesy
from ..core.axis import AxisLine, axis_lines, joined_parts
from ..core.errors import InputError
from ..language.core_sentences import worded
from ..language.number_text import listed
from ..language.translation import tr
from .cancel import check_cancel
from .cells import as_text
from .input_fields import field_indices, named_field
from .readings import note, reading
from .reference_systems import checked_crs, definition
from .tables import UNCHECKED, check_geometry

# Fields with which an axis overrides the form, where the layer has the first of them.
OVERRIDES = ("design", "chain_a", "height_a", "chain_b", "height_b", "slope", "tolerance", "chain_h", "chain_0")


@dataclass(frozen=True)
class AxisRow:
    """An axis line with the row of its feature: ``values``, {lower-case field name: cell}.

    ``departure``: how far the line as drawn lies from the geodesics between its vertices, metres; ``shift``: accuracy
    of the shift between the datums as PROJ states it, metres, NaN where it does not.
    """

    line: AxisLine
    values: dict
    departure: float = 0.0
    shift: float = 0.0


def read_axes(source, axis_field, feedback, target_crs=None, more_fields=()):
    """Read the axes of a line layer onto the datum of ``target_crs`` (default: its own): list of AxisRow.

    ``axis_field``: name given by the user or ''; ``more_fields``: names of fields that the run uses beside those that
    every run does, so that a change in them is known later. InputError for two axes with one name and all that AxisLine
    refuses.
    """
    check_geometry(source, QgsWkbTypes.GeometryType.LineGeometry)
    crs = checked_crs(source)
    target = definition(target_crs if target_crs is not None else crs)
    ellipsoid = geodesy.ellipsoid_of(target)
    try:
        to_degrees = geodesy.mapping(definition(crs), target)
    except InputError as error:
        raise error.reworded(tr("Layer '{}': {}").format(source.sourceName(), worded(error))) from None
    naming = named_field(source, axis_field, "AXIS_FIELD", ("axis", "name"))
    cells = {**field_indices(source), **_own_names(source)}
    used = _fields_used(source, naming, more_fields)
    drawn, seen, read = [], {}, LineReading(used)
    for row, feature in enumerate(source.getFeatures(QgsFeatureRequest(), UNCHECKED), 1):
        check_cancel(feedback)
        name = (as_text(feature[naming]) if naming >= 0 else "") or str(feature.id())
        if name in seen:
            raise InputError(
                tr(
                    "Layer '{}' has two axes named '{}', rows {} and {}; give them different names or choose another "
                    "AXIS_FIELD."
                ).format(source.sourceName(), name, seen[name], row),
                keys=("AXIS_FIELD",),
            )
        seen[name] = row
        with _of_row(source, row):
            parts = _parts(feature, name)
        read.add(feature, parts)
        values = feature.attributes()
        # Cells by the fields' own names, and by these in small letters where no field has that name.
        drawn.append(_Drawn(row, name, parts, {key: values[k] for key, k in cells.items()}))
    if not drawn:
        raise InputError(tr("Layer '{}' has no axis.").format(source.sourceName()))
    lines = _axis_lines(drawn, to_degrees, ellipsoid, source)
    shift = geodesy.shift_accuracy(definition(crs), target, *(float(v[0]) for v in drawn[0].parts[0]))
    note(source, read.record())
    return [AxisRow(line, one.values, departure, shift) for one, (line, departure) in zip(drawn, lines)]


def _own_names(source):
    return {field.name(): k for k, field in enumerate(source.fields())}


def _fields_used(source, naming, more_fields):
    """Names of the fields of axes that a run uses."""
    names = {name: source.fields()[k].name() for name, k in field_indices(source).items()}
    used = {source.fields()[naming].name().lower()} if naming >= 0 else set()
    used |= {"group", *more_fields, *(OVERRIDES if OVERRIDES[0] in names else ())}
    return [names[name] for name in used if name in names]


@contextmanager
def _of_row(source, row):
    try:
        yield
    except InputError as error:
        raise error.reworded(tr("Layer '{}', row {}: {}").format(source.sourceName(), row, worded(error))) from None


class LineReading:
    """What is read of a line layer, feature by feature: coordinates, and the ``fields`` (names) as texts."""

    def __init__(self, fields):
        self._coordinates, self._columns = [], {name: [] for name in fields}

    def add(self, feature, parts=None):
        """Add a feature. ``parts``: x and y of the vertices of each of its parts, where they are known already."""
        if parts is None:
            shape = feature.geometry().constGet()
            vertices = [] if shape is None else [(v.x(), v.y()) for v in shape.vertices()]
        else:
            vertices = [vertex for x, y in parts for vertex in zip(x, y)]
        self._coordinates.append(np.array(vertices, float))
        for name, column in self._columns.items():
            column.append(as_text(feature[name]))

    def record(self):
        """The InputRecord of all that was added."""
        return reading(len(self._coordinates), {}, self._columns, self._coordinates, "line")


def read_lines(source, fields, feedback):
    """What there is to be read of a line layer: InputRecord of its coordinates and of the ``fields`` (names) as
    texts."""
    read = LineReading(fields)
    for feature in source.getFeatures(QgsFeatureRequest(), UNCHECKED):
        check_cancel(feedback)
        read.add(feature)
    return read.record()


@dataclass(frozen=True)
class _Drawn:
    """An axis as drawn: the ``row`` of its feature, its ``name``, and of each part x and y of its vertices."""

    row: int
    name: str
    parts: list
    values: dict


def _parts(feature, name):
    """Map coordinates x and y of the vertices of each part of an axis."""
    geometry = feature.geometry()
    if geometry.isEmpty():
        raise InputError(tr("axis '{}' has no geometry.").format(name))
    shape = geometry.constGet()
    if shape.hasCurvedSegments():
        raise InputError(tr("axis '{}' has curved segments; an axis is made of straight legs.").format(name))
    several = QgsWkbTypes.isMultiType(shape.wkbType())
    found = []
    for part in [shape.geometryN(k) for k in range(shape.numGeometries())] if several else [shape]:
        number = part.numPoints()
        if not number:
            raise InputError(tr("axis '{}' has an empty part.").format(name))
        found.append(([part.xAt(k) for k in range(number)], [part.yAt(k) for k in range(number)]))
    return found


def _axis_lines(drawn, to_degrees, ellipsoid, source):
    """AxisLine of each axis and how far the drawn line departs from it, metres: a list, all found in one go. Where that
    is refused each is tried by itself, so that the one at fault is named."""
    try:
        return _lines_at_once(drawn, to_degrees, ellipsoid)
    except InputError:
        lines = []
        for one in drawn:
            with _of_row(source, one.row):
                lines += _lines_at_once([one], to_degrees, ellipsoid)
        return lines


def _lines_at_once(drawn, to_degrees, ellipsoid):
    parts = [part for one in drawn for part in one.parts]
    x, y = (np.array([value for part in parts for value in part[k]]) for k in (0, 1))
    lat, lon = to_degrees(x, y)
    bounds = np.concatenate([[0], np.cumsum([len(part[0]) for part in parts])]).tolist()
    away = _departures(x, y, lat, lon, np.array(bounds), to_degrees, ellipsoid)
    mapped, departures, at = [], [], 0
    for one in drawn:
        own = range(at, at + len(one.parts))
        pieces = [(lat[bounds[k] : bounds[k + 1]], lon[bounds[k] : bounds[k + 1]]) for k in own]
        mapped.append(joined_parts(one.name, pieces, ellipsoid))
        departures.append(float(away[at : at + len(one.parts)].max()))
        at += len(one.parts)
    return list(zip(axis_lines([one.name for one in drawn], mapped, ellipsoid), departures))


def _departures(x, y, lat, lon, bounds, to_degrees, ellipsoid):
    """Greatest distance, metres, of the lines drawn between the vertices of each part (m,) from the geodesics between
    them, 0 for a part of one vertex. ``bounds`` (m + 1,): where the vertices of each part begin, and where all end.

    At three points of each line, by the sine of the angle at its start on a sphere: within some per cent of it.
    """
    away, part = np.zeros(len(bounds) - 1), np.repeat(np.arange(len(bounds) - 1), np.diff(bounds))
    first = np.flatnonzero(part[1:] == part[:-1])
    if not len(first):
        return away
    shares = np.array([0.25, 0.5, 0.75])[:, None]
    at_x, at_y = (((1.0 - shares) * v[first] + shares * v[first + 1]).ravel() for v in (x, y))
    at_lat, at_lon = to_degrees(at_x, at_y)
    start_lat, start_lon = np.tile(lat[first], 3), np.tile(lon[first], 3)
    ahead, _, _ = ellipsoid.inverse(start_lat, start_lon, np.tile(lat[first + 1], 3), np.tile(lon[first + 1], 3))
    azimuth, _, distance = ellipsoid.inverse(start_lat, start_lon, at_lat, at_lon)
    across = np.sin(distance / ellipsoid.a) * np.sin(np.radians(azimuth - ahead))
    found = ellipsoid.a * np.abs(np.arcsin(np.clip(across, -1.0, 1.0)))
    np.maximum.at(away, part[first], found.reshape(3, -1).max(axis=0))
    return away


def assigned_axes(points_name, names, axis_names, field_name, explicit):
    """Axis index of each station by the names it carries, -1 for the nearest; None where no station names one.

    ``names``: texts (n,). A field found by default that matches no axis at all is not taken for a naming field.
    InputError where some rows name an axis that does not exist.
    """
    index = {name: k for k, name in enumerate(axis_names)}
    found = np.array([index.get(name, -1 if name == "" else -2) for name in names], int)
    if not np.any(found >= 0) and not explicit:
        return None
    unknown = np.flatnonzero(found == -2)
    if len(unknown):
        raise InputError(
            tr("Layer '{}', field '{}', row {}: there is no axis '{}'; the axes are {}.").format(
                points_name, field_name, unknown[0] + 1, names[unknown[0]], listed(axis_names)
            )
        )
    return found
