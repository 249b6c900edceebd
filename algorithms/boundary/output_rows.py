"""Output tables: described first, then written in chunks."""

from collections import deque
from dataclasses import dataclass
from itertools import islice, repeat
from operator import setitem
from typing import Optional

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
    QgsPointXY,
    QgsProcessingException,
    QgsWkbTypes,
)

from ..core.errors import InputError
from ..language.translation import tr
from .cancel import check_cancel
from .fields import FIELDS, REAL, WHOLE
from .tables import UNCHECKED

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


@dataclass(frozen=True)
class OutputTable:
    """One output layer, ready to be written.

    ``key``: of its parameter. ``columns``: {field name of fields.py: list or array (rows,)}. ``source``, ``rows``: the
    input whose columns come first, and the index of its feature for each row, rising (None: no input columns).
    ``ids``: of the input's features as read, to notice a change meanwhile; ``features``: those kept from reading.
    ``shapes``: QgsGeometry of each row, for lines and polygons.
    ``points``: x, y arrays (rows,) of new points; None: the input's geometry, or none. ``moved``: x, y (rows,) that the
    input's points are moved to, keeping what else they carry. ``crs``; ``wkb``: of the layer. ``style``: StyleSpec.
    ``replaced``: names of fields of the input that do not stay, beside those of the own ones.
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
    replaced: tuple = ()

    def __len__(self):
        return len(next(iter(self.columns.values())))

    def kept(self):
        """Indices of the input's fields that stay: those that no own field replaces, compared without case."""
        own = {name.lower() for name in (*self.columns, *self.replaced)}
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

    Raises InputError where the sink refuses rows, QgsProcessingException where the input changed since it was read.
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
            raise InputError(not_written(table.key, sink.lastError()), keys=(table.key,))
        feedback.setProgress(progress[0] + (progress[1] - progress[0]) * last / number)
    if next(features, None) is not None:
        raise QgsProcessingException(_changed(table))
    if not sink.flushBuffer():
        raise InputError(not_written(table.key, sink.lastError()), keys=(table.key,))


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
