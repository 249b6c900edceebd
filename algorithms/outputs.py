"""Output tables: described first, then written whole or not at all (DESIGN, run sequence)."""

import glob
import os
import shutil
from dataclasses import dataclass, field
from typing import Optional

import numpy as np
from qgis.core import (
    Qgis,
    QgsFeature,
    QgsFeatureRequest,
    QgsFeatureSink,
    QgsField,
    QgsFields,
    QgsGeometry,
    QgsPoint,
    QgsPointXY,
    QgsProcessingException,
    QgsProcessingFeatureSourceDefinition,
    QgsProcessingOutputLayerDefinition,
    QgsProcessingUtils,
    QgsProviderRegistry,
    QgsVectorLayer,
    QgsWkbTypes,
)

from .fields import FIELDS, REAL, WHOLE
from .layers import check_cancel
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
_TEMPORARY = ("TEMPORARY_OUTPUT", "memory:")
_SIDECARS = ("-wal", "-shm", "-journal")
_SHAPEFILE = (".shx", ".dbf", ".prj", ".cpg", ".qix", ".sbn", ".sbx", ".qmd", ".shp.xml")


@dataclass(frozen=True)
class OutputTable:
    """One output layer, ready to be written.

    ``key``: of its parameter. ``columns``: {field name of fields.py: list or array (rows,)}. ``source``, ``rows``: the
    input whose columns come first, and the index of its feature for each row, rising (None: no input columns).
    ``ids``: of the input's features as read, to notice a change meanwhile. ``points``: x, y, z arrays (rows,) of new
    points, z None for flat ones; None: the input's geometry, or none. ``crs``; ``wkb``: of the layer.
    ``style``: StyleSpec.
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
    keep_ids: bool = True

    def __len__(self):
        return len(next(iter(self.columns.values())))

    def kept(self):
        """Indices of the input's fields that stay: those that no own field replaces, compared without case."""
        own = {name.lower() for name in self.columns}
        return [] if self.source is None else [k for k, f in enumerate(self.source.fields()) if f.name().lower() not in own]

    def fields(self):
        """QgsFields: the input's that stay, then the own ones."""
        fields = QgsFields()
        for k in self.kept():
            fields.append(self.source.fields()[k])
        for name in self.columns:
            fields.append(QgsField(name, _TYPES.get(FIELDS[name].kind, _TEXT)))
        return fields


def _plain(column, first, last):
    """A stretch of a column as Python values with None for NaN: numpy scalars must never reach a feature."""
    part = column[first:last]
    values = part.tolist() if isinstance(part, np.ndarray) else list(part)
    return [None if v != v else v for v in values]


def _fid_field(fields):
    return next((k for k, f in enumerate(fields) if f.name().lower() == "fid"), -1)


def write_rows(sink, table, feedback, progress=(0.0, 100.0)):
    """Write a table into an open sink in chunks, with progress and cancel between them.

    Raises QgsProcessingException where the sink refuses rows, or the input changed since it was read.
    """
    number, first = len(table), 0
    features = _new_features(table) if table.source is None else _source_features(table)
    while first < number:
        check_cancel(feedback)
        last = min(first + CHUNK, number)
        own = list(zip(*(_plain(column, first, last) for column in table.columns.values())))
        chunk = []
        for row in own:
            feature, kept = next(features)
            for k, value in enumerate(row, kept):
                feature[k] = value
            chunk.append(feature)
        if not sink.addFeatures(chunk, QgsFeatureSink.Flag.FastInsert):
            raise QgsProcessingException(_refused(sink, table))
        first = last
        feedback.setProgress(progress[0] + (progress[1] - progress[0]) * first / number)
    if not sink.flushBuffer():
        raise QgsProcessingException(_refused(sink, table))


def _refused(sink, table):
    return tr("The output {} could not be written: {}").format(table.key, sink.lastError() or tr("the place is full or "
                                                                                              "read-only."))


def _new_features(table):
    fields, points = table.fields(), table.points
    for k in range(len(table)):
        feature = QgsFeature(fields)
        if points is not None:
            feature.setGeometry(_point(points, k))
        yield feature, 0


def _point(points, k):
    x, y, z = points
    if z is None:
        return QgsGeometry.fromPointXY(QgsPointXY(float(x[k]), float(y[k])))
    return QgsGeometry(QgsPoint(float(x[k]), float(y[k]), float(z[k])))


def _source_features(table):
    """Each output row's feature with the input's attributes that stay, and room for the own ones."""
    fields, kept, own = table.fields(), table.kept(), len(table.columns)
    everything = len(kept) == table.source.fields().count()
    once = len(table.rows) == 0 or bool(np.all(np.diff(table.rows) > 0))
    fid = -1 if once and table.keep_ids else _fid_field(fields)
    request = QgsFeatureRequest()
    if table.wkb == QgsWkbTypes.Type.NoGeometry or table.points is not None:
        request.setFlags(QgsFeatureRequest.Flag.NoGeometry)
    rows, at = table.rows.tolist(), 0
    ids = table.ids.tolist() if table.ids is not None else None
    number = -1
    for number, feature in enumerate(table.source.getFeatures(request)):
        if ids is not None and (number >= len(ids) or ids[number] != feature.id()):
            raise QgsProcessingException(_changed(table))
        while at < len(rows) and rows[at] == number:
            copy = feature if once else QgsFeature(feature)
            if everything:
                copy.resizeAttributes(len(kept) + own)
            else:
                values = feature.attributes()
                copy.setAttributes([values[k] for k in kept] + [None] * own)
            if fid >= 0:
                copy[fid] = None
            if table.points is not None:
                copy.setGeometry(_point(table.points, at))
            yield copy, len(kept)
            at += 1
    if at < len(rows) or (ids is not None and number + 1 != len(ids)):
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
    return (os.path.realpath(path), name) if path else None


def _ogr_uri(text):
    """'ogr:dbname='file' table="name" (geom)' as the host's own uri, file|layername=name."""
    from qgis.core import QgsDataSourceUri

    uri = QgsDataSourceUri(text[4:])
    return f"{uri.database()}|layername={uri.table()}"


def place_of_layer(value, context):
    """(real path, table) of an input parameter's layer; None where it is no file."""
    if isinstance(value, QgsProcessingFeatureSourceDefinition):
        value = value.source.staticValue()
    layer = value if isinstance(value, QgsVectorLayer) else None
    if layer is None and isinstance(value, str) and value:
        layer = QgsProcessingUtils.mapLayerFromString(value, context)
    if layer is None or not hasattr(layer, "source"):
        return None
    parts = QgsProviderRegistry.instance().decodeUri(layer.providerType(), layer.source())
    path = parts.get("path")
    if not path:
        return None
    if path.startswith("file:"):
        path = path[7:] if path.startswith("file://") else path[5:]
    return os.path.realpath(path), parts.get("layerName") or ""


def same_place(a, b):
    """True where two places are one file and one table, a missing table name standing for all of the file."""
    return a is not None and b is not None and a[0] == b[0] and (not a[1] or not b[1] or a[1].lower() == b[1].lower())


@dataclass
class Guard:
    """Puts what stood at the outputs' places aside, and gives it back where the run fails."""

    aside: list = field(default_factory=list)
    opened: list = field(default_factory=list)

    def prepare(self, text):
        """Before a sink is opened at ``text``: move the files there aside (a table's file is copied)."""
        place = place_of(text)
        if place is None:
            return
        path, name = place
        existed = os.path.exists(path)
        self.opened.append((place, existed))
        if any(original == path for original, _ in self.aside):
            return
        for found in _files_of(path):
            spare = os.path.join(os.path.dirname(found), f".{os.path.basename(found)}.before")
            try:
                (shutil.copy2 if name else os.replace)(found, spare)
            except OSError as error:
                raise QgsProcessingException(tr("The output {} cannot be replaced: {}").format(path, error.strerror)) from None
            self.aside.append((found, spare))

    def keep(self):
        """The run went well: drop what was put aside."""
        for _, spare in self.aside:
            _remove(spare)

    def restore(self):
        """The run failed: remove what it opened and give back what stood there."""
        spared = {original for original, _ in self.aside}
        for (path, _), existed in self.opened:
            if not existed or path in spared:
                for found in _files_of(path):
                    _remove(found)
        for original, spare in self.aside:
            if os.path.exists(spare):
                os.replace(spare, original)


def _files_of(path):
    """The file and those that belong to it."""
    stem = os.path.splitext(path)[0]
    names = [path, *(path + tail for tail in _SIDECARS)]
    if path.lower().endswith(".shp"):
        names += [stem + tail for tail in _SHAPEFILE]
    return [name for name in names if os.path.isfile(name)]


def _remove(path):
    if os.path.exists(path):
        os.remove(path)


def leftovers(folder):
    """Files put aside in ``folder``; for tests."""
    return glob.glob(os.path.join(folder, ".*.before"))


def check_written(asked, destination, table):
    """QgsProcessingException where the closed file does not hold all rows: a full disk shows only now.

    ``asked``: the parameter's text; ``destination``: what the host made of it.
    """
    if place_of(asked) is None or place_of(destination) is None:
        return
    uri = _ogr_uri(destination) if destination.startswith("ogr:") else destination
    layer = QgsVectorLayer(uri, "check", "ogr")
    if not layer.isValid() or layer.featureCount() != len(table):
        raise QgsProcessingException(tr("The output {} is not complete: {} of {} rows arrived. Is the place full?").format(
            table.key, max(layer.featureCount(), 0) if layer.isValid() else 0, len(table)))
