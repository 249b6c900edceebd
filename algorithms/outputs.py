"""Output tables: described first, then written whole or not at all (DESIGN, run sequence)."""

import os
import shutil
from collections import deque
from dataclasses import dataclass, field
from itertools import islice, repeat
from operator import setitem
from typing import Optional
from urllib.parse import unquote

import numpy as np
from qgis.core import (
    Qgis,
    QgsFeature,
    QgsFeatureRequest,
    QgsFeatureSink,
    QgsField,
    QgsFieldConstraints,
    QgsFields,
    QgsGeometry,
    QgsMapLayer,
    QgsPointXY,
    QgsProcessingException,
    QgsProcessingFeatureSourceDefinition,
    QgsProcessingOutputLayerDefinition,
    QgsProcessingUtils,
    QgsProviderConnectionException,
    QgsProviderRegistry,
    QgsVectorFileWriter,
    QgsVectorLayer,
    QgsWkbTypes,
)

from .decision_words import ENDING
from .fields import FIELDS, REAL, WHOLE
from .layers import UNCHECKED, check_cancel
from .texts import tr

if Qgis.versionInt() >= 33800:
    from qgis.PyQt.QtCore import QMetaType

    _TYPES = {REAL: QMetaType.Type.Double, WHOLE: QMetaType.Type.Int}
    _TEXT = QMetaType.Type.QString
else:
    from qgis.PyQt.QtCore import QVariant

    _TYPES = {REAL: QVariant.Type.Double, WHOLE: QVariant.Type.Int}
    _TEXT = QVariant.Type.String

CHUNK = 20_000
_MOST_WORDS = 200
_UNIQUE = QgsFieldConstraints.Constraint.ConstraintUnique
_TEMPORARY = ("TEMPORARY_OUTPUT", "memory:")
_SIDECARS = ("-wal", "-shm", "-journal")
# Formats that cut texts at 254 characters.
SHORT_TEXTS = (".shp", ".dbf", ".tab", ".mif")
# Files that belong to one of the ending, by their own endings.
_COMPANIONS = {
    ".shp": (".shx", ".dbf", ".prj", ".cpg", ".qix", ".sbn", ".sbx", ".qmd", ".shp.xml"),
    ".tab": (".dat", ".map", ".id", ".ind"),
    ".mif": (".mid",),
    ".gml": (".xsd",),
}


@dataclass(frozen=True)
class OutputTable:
    """One output layer, ready to be written.

    ``key``: of its parameter. ``columns``: {field name of fields.py: list or array (rows,)}. ``source``, ``rows``: the
    input whose columns come first, and the index of its feature for each row, rising (None: no input columns).
    ``ids``: of the input's features as read, to notice a change meanwhile; ``features``: those kept from reading.
    ``shapes``: QgsGeometry of each row, for lines and polygons.
    ``points``: x, y arrays (rows,) of new points; None: the input's geometry, or none. ``moved``: x, y (rows,) that the
    input's points are moved to, keeping what else they carry. ``crs``; ``wkb``: of the layer. ``style``: StyleSpec.
    """

    key: str
    columns: dict
    crs: object
    wkb: object
    style: object
    source: Optional[object] = None
    rows: Optional[np.ndarray] = None
    ids: Optional[np.ndarray] = None
    points: Optional[tuple] = None
    features: Optional[list] = None
    shapes: Optional[list] = None
    moved: Optional[tuple] = None

    def __len__(self):
        return len(next(iter(self.columns.values())))

    def kept(self):
        """Indices of the input's fields that stay: those that no own field replaces, compared without case."""
        own = {name.lower() for name in self.columns}
        fields = [] if self.source is None else self.source.fields()
        return [k for k, f in enumerate(fields) if f.name().lower() not in own]

    def fields(self):
        """QgsFields: the input's that stay, then the own ones.

        A GeoPackage refuses names that differ by case only, and a 'fid' that does not tell its rows apart: these get a
        new name, 'name_2' and 'fid_2'.
        """
        fields, taken = QgsFields(), {name.lower() for name in self.columns} | {"fid"}
        for k in self.kept():
            field = QgsField(self.source.fields()[k])
            if not _is_row_number(field):
                field.setName(_free_name(field.name(), taken))
            taken.add(field.name().lower())
            fields.append(field)
        for name in self.columns:
            fields.append(QgsField(name, _TYPES.get(FIELDS[name].kind, _TEXT)))
        return fields


def _is_row_number(field):
    return field.name().lower() == "fid" and bool(field.constraints().constraints() & _UNIQUE)


def _free_name(name, taken):
    """``name``, or with a number where it is taken; ten characters at most where it is changed."""
    free, number = name, 1
    while free.lower() in taken:
        number += 1
        free = f"{name[:8]}_{number}"
    return free


def _plain(column, first, last):
    """A stretch of a column as Python values with None for NaN: numpy scalars must never reach a feature."""
    part = column[first:last]
    values = (
        part.tolist()
        if isinstance(part, np.ndarray)
        else [value.item() if isinstance(value, np.generic) else value for value in part]
    )
    return [None if v != v else v for v in values]


def _fid_field(fields):
    return next((k for k, f in enumerate(fields) if f.name().lower() == "fid"), -1)


def write_rows(sink, table, feedback, progress=(0.0, 100.0)):
    """Write a table into an open sink in chunks, with progress and cancel between them.

    Raises QgsProcessingException where the sink refuses rows, or the input changed since it was read.
    """
    number = len(table)
    features = _new_features(table) if table.source is None else _source_features(table)
    kept = 0 if table.source is None else len(table.kept())
    for first in range(0, number, CHUNK):
        check_cancel(feedback)
        last = min(first + CHUNK, number)
        chunk = list(islice(features, last - first))
        # Column by column, with the loop inside the interpreter's own C code: this is the hot place of every run.
        for k, column in enumerate(table.columns.values(), kept):
            deque(map(setitem, chunk, repeat(k), _plain(column, first, last)), maxlen=0)
        if not sink.addFeatures(chunk, QgsFeatureSink.Flag.FastInsert):
            raise QgsProcessingException(not_written(table.key, sink.lastError()))
        feedback.setProgress(progress[0] + (progress[1] - progress[0]) * last / number)
    if next(features, None) is not None:
        raise QgsProcessingException(_changed(table))
    if not sink.flushBuffer():
        raise QgsProcessingException(not_written(table.key, sink.lastError()))


def not_written(key, reason):
    """The sentence for an output that its format or place refuses; ``reason``: the host's own words, often many."""
    words = " ".join(str(reason).split())
    words = words if len(words) <= _MOST_WORDS else "... " + words[-_MOST_WORDS:]
    return tr("The output {} could not be written ({}). Is the place full or read-only?").format(key, words)


def _new_features(table):
    fields, points = table.fields(), table.points
    for k in range(len(table)):
        feature = QgsFeature(fields)
        if table.shapes is not None:
            feature.setGeometry(table.shapes[k])
        elif points is not None:
            feature.setGeometry(_point(points, k))
        yield feature


def _point(points, k):
    return QgsGeometry.fromPointXY(QgsPointXY(float(points[0][k]), float(points[1][k])))


def _moved(geometry, places, k):
    """The point at its new place with its Z and M, still a multipoint where it was one."""
    moved = QgsGeometry(geometry)
    moved.moveVertex(float(places[0][k]), float(places[1][k]), 0)
    return moved


def _source_features(table):
    """Each output row's feature with the input's attributes that stay, and room for the own ones."""
    fields, kept = table.fields(), table.kept()
    total = len(kept) + len(table.columns)
    everything = len(kept) == table.source.fields().count()
    once = len(table.rows) == 0 or bool(np.all(np.diff(table.rows) > 0))
    fid = -1 if once else _fid_field(fields)
    geometry = table.wkb != QgsWkbTypes.Type.NoGeometry and table.points is None and table.shapes is None
    for at, feature in enumerate(_rows_of_source(table, geometry)):
        copy = feature if once else QgsFeature(feature)
        if everything:
            copy.resizeAttributes(total)
        else:
            values = feature.attributes()
            copy.setAttributes([values[k] for k in kept] + [None] * len(table.columns))
        if fid >= 0:
            copy[fid] = None
        if table.points is not None:
            copy.setGeometry(_point(table.points, at))
        elif table.shapes is not None:
            copy.setGeometry(table.shapes[at])
        elif table.moved is not None:
            copy.setGeometry(_moved(copy.geometry(), table.moved, at))
        elif not geometry and copy.hasGeometry():
            copy.clearGeometry()
        yield copy


def _rows_of_source(table, geometry):
    """The input's feature for each output row: those kept from reading, else read again and compared by their ids."""
    rows = table.rows.tolist()
    if table.features is not None:
        yield from map(table.features.__getitem__, rows)
        return
    request = QgsFeatureRequest()
    if not geometry:
        request.setFlags(QgsFeatureRequest.Flag.NoGeometry)
    ids, at, number = table.ids.tolist(), 0, -1
    for number, feature in enumerate(table.source.getFeatures(request, UNCHECKED)):
        if number >= len(ids) or ids[number] != feature.id():
            raise QgsProcessingException(_changed(table))
        while at < len(rows) and rows[at] == number:
            yield feature
            at += 1
    if at < len(rows) or number + 1 != len(ids):
        raise QgsProcessingException(_changed(table))


def _changed(table):
    return tr("Layer '{}' changed while it was read; run again.").format(table.source.sourceName())


# --- where an output goes, and what stands there already


def destination_text(value):
    """The destination of an output parameter as text; '' for none."""
    if isinstance(value, QgsProcessingOutputLayerDefinition):
        value = value.sink.staticValue()
    return value if isinstance(value, str) else ""


def place_of(text):
    """(real path, table name or '') of a destination or source text; None for temporary and other places.

    A plain path stands for all tables of its file: writing to it removes the others.
    """
    if not text or text.startswith(_TEMPORARY):
        return None
    if text.startswith("ogr:"):
        parts = QgsProviderRegistry.instance().decodeUri("ogr", _ogr_uri(text))
        path, name = parts.get("path") or "", parts.get("layerName") or ""
    elif text.startswith(("postgres:", "postgis:", "spatialite:", "mssql:")):
        return None
    else:
        path, name = QgsProviderRegistry.instance().decodeUri("ogr", text).get("path") or text, ""
        if not QgsVectorFileWriter.driverForExtension(os.path.splitext(path)[1]):
            path += ".gpkg"  # as the host does
    return (_whole(os.path.realpath(path)), name) if path else None


def place_of_file(text):
    """(real path, '') of a document's destination text; None for a temporary one."""
    return None if not text or text.startswith(_TEMPORARY) else (os.path.realpath(text), "")


def _whole(path):
    """The Shapefile that a path to its table means, else the path."""
    stem, ending = os.path.splitext(path)
    return stem + ".shp" if ending.lower() == ".dbf" else path


def _ogr_uri(text):
    """'ogr:dbname='file' table="name" (geom)' as the host's own uri, file|layername=name."""
    from qgis.core import QgsDataSourceUri

    uri = QgsDataSourceUri(text[4:])
    return f"{uri.database()}|layername={uri.table()}"


def place_of_layer(value, context):
    """(real path, table) of an input parameter's layer; None where it is no file."""
    if isinstance(value, QgsProcessingFeatureSourceDefinition):
        value = value.source.staticValue()
    layer = value if isinstance(value, QgsMapLayer) else None
    if layer is None and isinstance(value, str) and value:
        layer = QgsProcessingUtils.mapLayerFromString(value, context)
    if layer is None or not hasattr(layer, "source"):
        return None
    parts = QgsProviderRegistry.instance().decodeUri(layer.providerType(), layer.source())
    path = parts.get("path")
    if not path:
        return None
    if layer.providerType() == "delimitedtext" and not os.path.exists(path):
        path = unquote(path[7:] if path.startswith("file://") else path)
    return _whole(os.path.realpath(path)), parts.get("layerName") or ""


def same_place(a, b):
    """True where two places are one file and one table, a missing table name standing for all of the file."""
    return a is not None and b is not None and a[0] == b[0] and (not a[1] or not b[1] or a[1].lower() == b[1].lower())


@dataclass
class Guard:
    """Puts what stood at the outputs' places aside, and gives it back where the run fails."""

    aside: list = field(default_factory=list)
    opened: list = field(default_factory=list)
    tables: list = field(default_factory=list)

    def prepare(self, text):
        """Before a sink is opened at ``text``: move the files there aside (a table's file is copied)."""
        place = place_of(text)
        if place is None:
            return
        path, name = place
        if any(opened == path for opened, _ in self.opened):
            # The run's second table in one file: what stood there before the run is aside already, or was nothing.
            return
        if name and os.path.exists(path) and not _geopackage(path).tableExists("", name):
            # Other layers may have the file open: it must stay the same file, so that only the new table goes again.
            self.tables.append(place)
            return
        existed = os.path.exists(path)
        for found in _files_of(path):
            spare = os.path.join(os.path.dirname(found), f".{os.path.basename(found)}.before")
            try:
                (shutil.copy2 if name else os.replace)(found, spare)
            except OSError as error:
                raise QgsProcessingException(
                    tr("The output {} cannot be replaced: {}.").format(path, error.strerror)
                ) from None
            self.aside.append((found, spare))
        self.opened.append((path, existed))

    def keep(self):
        """The run went well: drop what was put aside."""
        for _, spare in self.aside:
            _remove(spare)

    def restore(self):
        """The run failed: remove what it opened and give back what stood there."""
        spared = {original for original, _ in self.aside}
        for path, existed in self.opened:
            if not existed or path in spared:
                for found in _files_of(path):
                    _remove(found)
        for original, spare in self.aside:
            if os.path.exists(spare):
                os.replace(spare, original)
        for path, name in self.tables:
            _drop_table(path, name)


def _geopackage(path):
    return QgsProviderRegistry.instance().providerMetadata("ogr").createConnection(path, {})


def _drop_table(path, name):
    try:
        connection = _geopackage(path)
        if connection.tableExists("", name):
            connection.dropVectorTable("", name)
    except QgsProviderConnectionException as error:
        raise QgsProcessingException(
            tr("The run failed, and the incomplete table '{}' in {} could not be removed; delete it: {}").format(
                name, path, error
            )
        ) from None


def _files_of(path):
    """The file and those that belong to it."""
    stem = os.path.splitext(path)[0]
    names = [path, *(path + tail for tail in _SIDECARS)]
    names += [stem + tail for tail in _COMPANIONS.get(os.path.splitext(path)[1].lower(), ())]
    return [name for name in names if os.path.isfile(name)]


def _remove(path):
    if os.path.exists(path):
        os.remove(path)


def unfit_place(key, text):
    """Why nothing can be written at an output's destination, as a sentence; '' where it can be tried."""
    place = place_of(text)
    if place is None or place[0].startswith("/vsi"):
        return ""
    folder = os.path.dirname(place[0])
    if os.path.isdir(text):
        return tr("{} is the folder {}; give the name of a file in it.").format(key, text)
    if not os.path.isdir(folder):
        return tr("{} cannot be written: there is no folder {}.").format(key, folder)
    if os.path.basename(place[0]).lower().endswith(ENDING):
        return tr("{} is {}, where decisions are kept; no run writes there. Choose another name.").format(key, place[0])
    return ""


def check_written(asked, destination, table):
    """QgsProcessingException where the closed file does not hold all rows: a full disk shows only now.

    ``asked``: the parameter's text; ``destination``: what the host made of it.
    """
    if place_of(asked) is None or place_of(destination) is None:
        return
    uri = _ogr_uri(destination) if destination.startswith("ogr:") else destination
    if table.wkb == QgsWkbTypes.Type.NoGeometry and uri.lower().endswith(".shp"):
        uri = uri[:-4] + ".dbf"  # all that there is of a Shapefile without geometry
    layer = QgsVectorLayer(uri, "check", "ogr")
    if not layer.isValid() or layer.featureCount() != len(table):
        arrived = max(layer.featureCount(), 0) if layer.isValid() else 0
        raise QgsProcessingException(
            tr("The output {} is not complete: {} of {} rows arrived. Is the place full?").format(
                table.key, arrived, len(table)
            )
        )
