"""The boundary between features and arrays: NULL and NaN, types, units, CRS. The only feature code but outputs.py.

Every refusal is one sentence that names the layer, the field and the row; rows count from 1 in reading order.
"""

from dataclasses import dataclass
from typing import Optional

import numpy as np
from qgis.core import QgsCoordinateReferenceSystem, QgsFeatureRequest, QgsProcessingFeatureSource, QgsWkbTypes
from qgis.PyQt.QtCore import QDate, QDateTime, Qt

from .core import geodesy
from .core.axis import AxisLine, joined_parts
from .core.errors import InputError
from .texts import listed, tr

CANCEL_EVERY = 20_000
# Features kept from reading to writing spare a second reading; at about 0.4 kB each this bounds the memory.
MOST_KEPT = 400_000
# The host's own check of geometries skips or refuses features by the user's settings and says less than ours.
UNCHECKED = QgsProcessingFeatureSource.Flag.FlagSkipGeometryValidityChecks


class Cancelled(Exception):
    """The user has cancelled; nothing has been written, or what was is removed."""


def check_cancel(feedback):
    """Raise Cancelled where the user has asked for it."""
    if feedback.isCanceled():
        raise Cancelled()


@dataclass(frozen=True)
class Points:
    """Stations as read, arrays (n,): ``lat``, ``lon`` degrees on the datum of ``crs``; ``x``, ``y`` in the layer; ``z``
    NaN where there is none; ``ids`` of the features; ``columns``: the numbers or texts of the fields asked for."""

    name: str
    crs: object
    ids: np.ndarray
    x: np.ndarray
    y: np.ndarray
    z: np.ndarray
    lat: np.ndarray
    lon: np.ndarray
    columns: dict
    features: Optional[list] = None

    def __len__(self):
        return len(self.ids)


def definition(crs):
    """A coordinate reference system as the core takes it: its EPSG code, else its WKT."""
    if crs.authid().startswith("EPSG:"):
        return crs.authid()
    return crs.toWkt(QgsCoordinateReferenceSystem.WktVariant.WKT_PREFERRED)


def checked_crs(source):
    """The CRS of a source; InputError where it has none."""
    crs = source.sourceCrs()
    if not crs.isValid():
        raise InputError(tr("Layer '{}' has no coordinate reference system; set it first.").format(source.sourceName()))
    return crs


def check_geometry(source, kind):
    """InputError where the layer's geometry is not of QgsWkbTypes geometry ``kind``."""
    wanted = {QgsWkbTypes.GeometryType.PointGeometry: tr("points"), QgsWkbTypes.GeometryType.LineGeometry: tr("lines")}[
        kind
    ]
    found = QgsWkbTypes.geometryType(source.wkbType())
    if found == kind:
        return
    names = {
        QgsWkbTypes.GeometryType.PointGeometry: tr("points"),
        QgsWkbTypes.GeometryType.LineGeometry: tr("lines"),
        QgsWkbTypes.GeometryType.PolygonGeometry: tr("polygons"),
        QgsWkbTypes.GeometryType.NullGeometry: tr("no geometry"),
    }
    raise InputError(
        tr("Layer '{}' has {}, but {} are due here.").format(
            source.sourceName(), names.get(found, tr("an unknown geometry")), wanted
        )
    )


def named_field(source, given, key, defaults=()):
    """Index of the field ``given`` by the user, else of the first of ``defaults`` there is; -1 for none.

    Names match without case. InputError where a given field does not exist.
    """
    names = [field.name().lower() for field in source.fields()]
    if given:
        if given.lower() not in names:
            raise InputError(
                tr("Layer '{}' has no field '{}' ({}); it has {}.").format(
                    source.sourceName(), given, key, listed([f.name() for f in source.fields()], 12) or tr("none")
                )
            )
        return names.index(given.lower())
    return next((names.index(name) for name in defaults if name in names), -1)


def _where(source, field, row):
    return tr("Layer '{}', field '{}', row {}").format(source.sourceName(), source.fields()[field].name(), row)


def as_number(value, source, field, row):
    """A cell as a float, NaN for NULL, NaN and blank text; InputError for text that is no number, and infinity."""
    try:
        number = float(value)
    except (TypeError, ValueError):
        text = "" if is_null(value) else str(value).strip()
        if not text:
            return np.nan
        try:
            number = float(text)
        except ValueError:
            raise InputError(tr("{}: '{}' is not a number.").format(_where(source, field, row), text)) from None
    if number in (np.inf, -np.inf):
        raise InputError(tr("{}: the value is infinite.").format(_where(source, field, row)))
    return number


def is_null(value):
    """True for None and for the host's NULL."""
    return value is None or (hasattr(value, "isNull") and value.isNull())


def as_text(value):
    """A cell as text without blanks around it, '' for NULL; numbers without exponent, whole ones without decimals,
    dates as 2025-03-11."""
    if is_null(value):
        return ""
    if isinstance(value, (QDate, QDateTime)):
        return value.toString(Qt.DateFormat.ISODate)
    if isinstance(value, float):
        return np.format_float_positional(value, trim="-")
    return str(value).strip()


@dataclass(frozen=True)
class Table:
    """Rows of a source as read: ``ids`` (n,); ``columns`` {key: array or list}; ``xyz``: arrays, None without geometry;
    ``features``: kept for writing where they are few enough, else None."""

    ids: np.ndarray
    columns: dict
    xyz: Optional[tuple]
    features: Optional[list]


def read_table(source, numbers, texts, feedback, geometry=False):
    """Read columns of a source in one pass.

    ``numbers``, ``texts``: {key: field index}, -1 for a column of NaN or ''. Returns Table. InputError for a row
    without a point, where ``geometry`` is asked for.
    """
    request = QgsFeatureRequest()
    keep = 0 <= source.featureCount() <= MOST_KEPT
    if not keep:
        request.setSubsetOfAttributes(sorted({index for index in [*numbers.values(), *texts.values()] if index >= 0}))
        if not geometry:
            request.setFlags(QgsFeatureRequest.Flag.NoGeometry)
    ids, x, y, z, kept = [], [], [], [], []
    columns = {key: [] for key in [*numbers, *texts]}
    number_items = [(columns[key].append, index) for key, index in numbers.items() if index >= 0]
    text_items = [(columns[key].append, index) for key, index in texts.items() if index >= 0]
    flat = geometry and source.wkbType() == QgsWkbTypes.Type.Point
    for row, feature in enumerate(source.getFeatures(request, UNCHECKED), 1):
        if row % CANCEL_EVERY == 0:
            check_cancel(feedback)
        ids.append(feature.id())
        if geometry:
            shape = feature.geometry()
            # The common case without the detour over the shape's own class, which costs a third of the reading.
            point = shape.asPoint() if flat and not shape.isEmpty() else _point(feature, source, row)
            x.append(point.x())
            y.append(point.y())
            if not flat:
                z.append(point.z())
        for append, index in number_items:
            value = feature[index]
            append(value if type(value) is float else as_number(value, source, index, row))
        for append, index in text_items:
            append(as_text(feature[index]))
        if keep:
            kept.append(feature)
    for key, index in numbers.items():
        columns[key] = (
            _finite(np.array(columns[key], float), source, index) if index >= 0 else np.full(len(ids), np.nan)
        )
    for key, index in texts.items():
        columns[key] = columns[key] if index >= 0 else [""] * len(ids)
    xyz = None
    if geometry:
        xyz = (np.array(x, float), np.array(y, float), np.full(len(x), np.nan) if flat else np.array(z, float))
    return Table(np.array(ids, dtype=np.int64), columns, xyz, kept if keep else None)


def _finite(values, source, field):
    infinite = np.flatnonzero(np.isinf(values))
    if len(infinite):
        raise InputError(tr("{}: the value is infinite.").format(_where(source, field, infinite[0] + 1)))
    return values


def _point(feature, source, row):
    geometry = feature.geometry()
    if geometry.isEmpty():
        raise InputError(
            tr("Layer '{}', row {} (feature {}) has no geometry.").format(source.sourceName(), row, feature.id())
        )
    shape = geometry.constGet()
    if QgsWkbTypes.isMultiType(shape.wkbType()):
        if shape.numGeometries() != 1:
            raise InputError(
                tr("Layer '{}', row {} has {} points; one is due.").format(
                    source.sourceName(), row, shape.numGeometries()
                )
            )
        shape = shape.geometryN(0)
    if shape.z() in (np.inf, -np.inf):
        raise InputError(tr("Layer '{}', row {}: the point's Z is infinite.").format(source.sourceName(), row))
    return shape


def read_points(source, feedback, numbers=None, texts=None):
    """Read the points of a source with columns: returns Points. ``numbers``, ``texts``: see read_table."""
    check_geometry(source, QgsWkbTypes.GeometryType.PointGeometry)
    crs = checked_crs(source)
    table = read_table(source, numbers or {}, texts or {}, feedback, geometry=True)
    x, y, z = table.xyz
    if not len(x):
        raise InputError(tr("Layer '{}' has no stations.").format(source.sourceName()))
    lost = np.flatnonzero(~(np.isfinite(x) & np.isfinite(y)))
    if len(lost):
        raise InputError(
            tr("Layer '{}', row {} has coordinates that are no numbers.").format(source.sourceName(), lost[0] + 1)
        )
    lat, lon = _to_latitude_longitude(x, y, source, crs, definition(crs))
    return Points(source.sourceName(), crs, table.ids, x, y, z, lat, lon, table.columns, table.features)


def _to_latitude_longitude(x, y, source, crs, target):
    try:
        lat, lon = geodesy.to_latitude_longitude(x, y, definition(crs), target)
    except InputError as error:
        raise InputError(tr("Layer '{}': {}").format(source.sourceName(), error)) from None
    bad = np.flatnonzero(~((np.abs(lat) <= 90.0) & (np.abs(lon) <= 540.0)))
    if len(bad):
        raise InputError(
            tr("Layer '{}', row {}: latitude {:.6g}, longitude {:.6g} is no place on Earth.").format(
                source.sourceName(), bad[0] + 1, lat[bad[0]], lon[bad[0]]
            )
        )
    return lat, lon


def placed_points(lat, lon, crs):
    """Map coordinates x, y (n,) in ``crs`` of latitudes and longitudes on its datum."""
    x, y = geodesy.from_latitude_longitude(lat, lon, definition(crs))
    return np.asarray(x, float), np.asarray(y, float)


@dataclass(frozen=True)
class AxisRow:
    """An axis line with the row of its feature: ``values``, {lower-case field name: cell}."""

    line: AxisLine
    values: dict


def read_axes(source, axis_field, feedback, target_crs=None):
    """Read the axes of a line layer onto the datum of ``target_crs`` (default: its own): list of AxisRow.

    ``axis_field``: name given by the user or ''. InputError for two axes with one name and all that AxisLine refuses.
    """
    check_geometry(source, QgsWkbTypes.GeometryType.LineGeometry)
    crs = checked_crs(source)
    target = definition(target_crs if target_crs is not None else crs)
    ellipsoid = geodesy.ellipsoid_of(target)
    try:
        to_degrees = geodesy.mapping(definition(crs), target)
    except InputError as error:
        raise InputError(tr("Layer '{}': {}").format(source.sourceName(), error)) from None
    naming = named_field(source, axis_field, "AXIS_FIELD", ("axis", "name"))
    rows, seen = [], {}
    for row, feature in enumerate(source.getFeatures(QgsFeatureRequest(), UNCHECKED), 1):
        check_cancel(feedback)
        name = (as_text(feature[naming]) if naming >= 0 else "") or str(feature.id())
        if name in seen:
            raise InputError(
                tr(
                    "Layer '{}' has two axes named '{}', rows {} and {}; give them different names or choose another "
                    "AXIS_FIELD."
                ).format(source.sourceName(), name, seen[name], row)
            )
        seen[name] = row
        try:
            line = _axis_line(feature, name, to_degrees, ellipsoid)
        except InputError as error:
            raise InputError(tr("Layer '{}', row {}: {}").format(source.sourceName(), row, error)) from None
        rows.append(AxisRow(line, {f.name().lower(): feature[i] for i, f in enumerate(source.fields())}))
    if not rows:
        raise InputError(tr("Layer '{}' has no axis.").format(source.sourceName()))
    return rows


def _axis_line(feature, name, to_degrees, ellipsoid):
    geometry = feature.geometry()
    if geometry.isEmpty():
        raise InputError(tr("axis '{}' has no geometry.").format(name))
    shape = geometry.constGet()
    if shape.hasCurvedSegments():
        raise InputError(tr("axis '{}' has curved segments; an axis is made of straight legs.").format(name))
    several = QgsWkbTypes.isMultiType(shape.wkbType())
    parts = [shape.geometryN(k) for k in range(shape.numGeometries())] if several else [shape]
    mapped = []
    for part in parts:
        x = np.array([part.xAt(k) for k in range(part.numPoints())])
        y = np.array([part.yAt(k) for k in range(part.numPoints())])
        if not len(x):
            raise InputError(tr("axis '{}' has an empty part.").format(name))
        lat, lon = to_degrees(x, y)
        mapped.append((lat, lon))
    lat, lon = joined_parts(name, mapped, ellipsoid)
    return AxisLine(name, lat, lon, ellipsoid)


def assigned_axes(points_name, names, axis_names, field_name, explicit, feedback):
    """Axis index of each station by the names it carries, -1 for the nearest; None where no station carries one.

    ``names``: texts (n,). A field found by default that matches no axis at all is not taken for a naming field.
    InputError where some rows name an axis that does not exist.
    """
    index = {name: k for k, name in enumerate(axis_names)}
    found = np.array([index.get(name, -1 if name == "" else -2) for name in names], int)
    if not np.any(found >= 0) and not explicit:
        if np.any(found == -2):
            feedback.pushWarning(
                tr(
                    "No value of the field '{}' of layer '{}' names an axis; each station goes to its nearest axis."
                ).format(field_name, points_name)
            )
        return None
    unknown = np.flatnonzero(found == -2)
    if len(unknown):
        raise InputError(
            tr("Layer '{}', field '{}', row {}: there is no axis '{}'; the axes are {}.").format(
                points_name, field_name, unknown[0] + 1, names[unknown[0]], listed(axis_names)
            )
        )
    return found


@dataclass(frozen=True)
class HeightColumn:
    """Where heights come from: the field's index, -1 for the point's Z; ``described`` for the log."""

    index: int
    described: str


def height_column(source, given, use_z=True):
    """The field with heights by METHOD's defaults; InputError where there is neither field nor Z."""
    index = named_field(source, given, "HEIGHT_FIELD", ("height",))
    if index >= 0:
        return HeightColumn(index, tr("field '{}'").format(source.fields()[index].name()))
    if use_z and QgsWkbTypes.hasZ(source.wkbType()):
        return HeightColumn(-1, tr("the points' Z"))
    if not use_z:
        return HeightColumn(-1, tr("none"))
    raise InputError(
        tr(
            "Layer '{}' has no field 'height' and its points have no Z; choose the field with the heights "
            "(HEIGHT_FIELD)."
        ).format(source.sourceName())
    )


def raster_grid(layer, lat, lon):
    """Undulations of a raster layer around stations at lat, lon degrees, as a core Grid; metres.

    Opened anew from its source, since a layer of the project lives in another thread. InputError where the raster is
    not in latitude and longitude or cannot be read.
    """
    from qgis.core import QgsRasterLayer, QgsRectangle

    raster = QgsRasterLayer(layer.source(), layer.name(), layer.providerType())
    if not raster.isValid() or raster.width() < 2 or raster.height() < 2:
        raise InputError(tr("The geoid raster '{}' cannot be read.").format(layer.name()))
    if not raster.crs().isGeographic():
        raise InputError(tr("The geoid raster '{}' is not in latitude and longitude.").format(layer.name()))
    extent, step_lon = raster.extent(), raster.extent().width() / raster.width()
    step_lat = extent.height() / raster.height()
    first, last = 0, raster.height()
    if raster.width() * raster.height() > 2_000_000:
        # A fine global grid does not fit the memory; the rows of the stations and two around them do.
        first = int(np.clip((extent.yMaximum() - np.max(lat)) / step_lat - 3, 0, last - 2))
        last = int(np.clip((extent.yMaximum() - np.min(lat)) / step_lat + 4, first + 2, last))
    north = extent.yMaximum() - first * step_lat
    window = QgsRectangle(extent.xMinimum(), extent.yMaximum() - last * step_lat, extent.xMaximum(), north)
    block = raster.dataProvider().block(1, window, raster.width(), last - first)
    if not block.isValid():
        raise InputError(tr("The geoid raster '{}' cannot be read.").format(layer.name()))
    return _grid_of(block, extent.xMinimum() + 0.5 * step_lon, north - 0.5 * step_lat, step_lon, step_lat)


def _grid_of(block, west, north, step_lon, step_lat):
    from qgis.core import Qgis

    from .core.undulations import Grid

    block.convert(Qgis.DataType.Float64)
    values = np.frombuffer(bytes(block.data()), dtype=np.float64).reshape(block.height(), block.width()).copy()
    if block.hasNoDataValue():
        values[values == block.noDataValue()] = np.nan
    return Grid(values, west, north, step_lon, step_lat)


@dataclass(frozen=True)
class ReferenceRow:
    """A row of a reference layer: its name and the cells that fix the plane."""

    name: str
    values: dict

    def serves(self, axis):
        """True where the reference is of this axis by its name, or of a group of axes that holds it."""
        return axis == self.name or axis in [name.strip() for name in self.values["axes"].split(";")]


def read_references(source, feedback):
    """Rows of a reference layer; InputError where it lacks the fields that fix a plane."""
    needed = ("name", "lat0", "lon0", "h0", "nx", "ny", "nz")
    indices = {field.name().lower(): k for k, field in enumerate(source.fields())}
    missing = [name for name in needed if name not in indices]
    if missing:
        raise InputError(
            tr("Layer '{}' is no reference: it lacks the field {}.").format(source.sourceName(), listed(missing))
        )
    rows = []
    request = QgsFeatureRequest().setFlags(QgsFeatureRequest.Flag.NoGeometry)
    for row, feature in enumerate(source.getFeatures(request), 1):
        check_cancel(feedback)
        values = {name: as_number(feature[indices[name]], source, indices[name], row) for name in needed[1:]}
        if not np.all(np.isfinite(list(values.values()))):
            raise InputError(tr("Layer '{}', row {}: the plane is not complete.").format(source.sourceName(), row))
        for name in ("h_system", "undul", "h_unit", "axes", "datum"):
            values[name] = as_text(feature[indices[name]]) if name in indices else ""
        rows.append(ReferenceRow(as_text(feature[indices["name"]]), values))
    if not rows:
        raise InputError(tr("Layer '{}' has no reference.").format(source.sourceName()))
    return rows


def optional_number(value: Optional[object], source, name, row):
    """A cell of the axis layer as a float, None for NULL; InputError for text that is no number."""
    index = [field.name().lower() for field in source.fields()].index(name)
    number = as_number(value, source, index, row)
    return None if np.isnan(number) else float(number)
