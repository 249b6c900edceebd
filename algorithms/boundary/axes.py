"""Axes of a line layer, and which of them each station names."""

from dataclasses import dataclass

import numpy as np
from qgis.core import QgsFeatureRequest, QgsWkbTypes

from ..core import geodesy
from ..core.axis import AxisLine, joined_parts
from ..core.errors import InputError
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
        raise error.reworded(tr("Layer '{}': {}").format(source.sourceName(), error)) from None
    naming = named_field(source, axis_field, "AXIS_FIELD", ("axis", "name"))
    rows, seen, shift = [], {}, None
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
        try:
            line, departure, first = _axis_line(feature, name, to_degrees, ellipsoid)
        except InputError as error:
            raise error.reworded(tr("Layer '{}', row {}: {}").format(source.sourceName(), row, error)) from None
        if shift is None:
            shift = geodesy.shift_accuracy(definition(crs), target, *first)
        rows.append(AxisRow(line, _values(feature, source), departure, shift))
    if not rows:
        raise InputError(tr("Layer '{}' has no axis.").format(source.sourceName()))
    names = {name: source.fields()[k].name() for name, k in field_indices(source).items()}
    used = {source.fields()[naming].name().lower()} if naming >= 0 else set()
    used |= {"group", *more_fields, *(OVERRIDES if OVERRIDES[0] in names else ())}
    note(source, read_lines(source, [names[name] for name in used if name in names], feedback))
    return rows


def _values(feature, source):
    """Cells by the fields' own names, and by these in small letters where no field has that name."""
    values = {field.name(): feature[k] for k, field in enumerate(source.fields())}
    return {**{name: feature[k] for name, k in field_indices(source).items()}, **values}


def read_lines(source, fields, feedback):
    """What there is to be read of a line layer: InputRecord of its coordinates and of the ``fields`` (names) as
    texts."""
    coordinates, columns, rows = [], {name: [] for name in fields}, 0
    for feature in source.getFeatures(QgsFeatureRequest(), UNCHECKED):
        check_cancel(feedback)
        rows += 1
        shape = feature.geometry().constGet()
        vertices = [] if shape is None else [(v.x(), v.y()) for v in shape.vertices()]
        coordinates.append(np.array(vertices, float))
        for name, column in columns.items():
            column.append(as_text(feature[name]))
    return reading(rows, {}, columns, coordinates, "line")


def _axis_line(feature, name, to_degrees, ellipsoid):
    """AxisLine of a feature, how far the drawn line departs from it (metres), and its first vertex as drawn."""
    geometry = feature.geometry()
    if geometry.isEmpty():
        raise InputError(tr("axis '{}' has no geometry.").format(name))
    shape = geometry.constGet()
    if shape.hasCurvedSegments():
        raise InputError(tr("axis '{}' has curved segments; an axis is made of straight legs.").format(name))
    several = QgsWkbTypes.isMultiType(shape.wkbType())
    parts = [shape.geometryN(k) for k in range(shape.numGeometries())] if several else [shape]
    mapped, departure, first = [], 0.0, None
    for part in parts:
        x = np.array([part.xAt(k) for k in range(part.numPoints())])
        y = np.array([part.yAt(k) for k in range(part.numPoints())])
        if not len(x):
            raise InputError(tr("axis '{}' has an empty part.").format(name))
        lat, lon = to_degrees(x, y)
        mapped.append((lat, lon))
        departure = max(departure, _departure(x, y, lat, lon, to_degrees, ellipsoid))
        first = first or (x[0], y[0])
    lat, lon = joined_parts(name, mapped, ellipsoid)
    return AxisLine(name, lat, lon, ellipsoid), departure, first


def _departure(x, y, lat, lon, to_degrees, ellipsoid):
    """Greatest distance, metres, of the lines drawn between vertices from the geodesics between them.

    At three points of each line, by the sine of the angle at its start on a sphere: within some per cent of it.
    """
    if len(x) < 2:
        return 0.0
    shares = np.array([0.25, 0.5, 0.75])[:, None]
    at_x, at_y = (((1.0 - shares) * v[:-1] + shares * v[1:]).ravel() for v in (x, y))
    at_lat, at_lon = to_degrees(at_x, at_y)
    start_lat, start_lon = np.tile(lat[:-1], 3), np.tile(lon[:-1], 3)
    ahead, _, _ = ellipsoid.inverse(start_lat, start_lon, np.tile(lat[1:], 3), np.tile(lon[1:], 3))
    azimuth, _, distance = ellipsoid.inverse(start_lat, start_lon, at_lat, at_lon)
    across = np.sin(distance / ellipsoid.a) * np.sin(np.radians(azimuth - ahead))
    return float(ellipsoid.a * np.max(np.abs(np.arcsin(np.clip(across, -1.0, 1.0)))))


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
