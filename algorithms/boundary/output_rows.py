"""Output tables: described first, then written in chunks."""

from collections import deque
from dataclasses import dataclass
from itertools import repeat
from operator import setitem
from typing import Optional

import numpy as np
from qgis.core import (
    Qgis,
    QgsCoordinateReferenceSystem,
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
from .derived_columns import Derived
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


# Few rows at a time: so they are still in the processor's cache when their next column is set.
CHUNK = 200


_MOST_WORDS = 200


_UNIQUE = QgsFieldConstraints.Constraint.ConstraintUnique


@dataclass(frozen=True)
class OutputTable:
    """One output layer, ready to be written.

    ``key``: of its parameter. ``columns``: {field name of fields.py: list, array or Derived (rows,)}. ``source``,
    ``rows``: the input whose columns come first, and the index of its feature for each row, rising (None: no input
    columns).
    ``ids``: of the input's features as read, to notice a change meanwhile; ``features``: those kept from reading.
    ``shapes``: QgsGeometry of each row, for lines and polygons.
    ``points``: x, y arrays (rows,) of new points; None: the input's geometry, or none. ``moved``: x, y (rows,) that the
    input's points are moved to, keeping what else they carry. ``crs``; ``wkb``: of the layer. ``style``: StyleSpec.
    ``replaced``: names of fields of the input that do not stay, beside those of the own ones; ``reserved``: names that
    mean something beside the own ones, so that a field of the input gets a new one.
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
    reserved: tuple = ()

    @classmethod
    def beside(cls, key, columns, style, source, rows, read, **more):
        """Columns beside those of the input ``source``, in its geometry and CRS unless ``more`` says otherwise;
        ``read``: the Points or Table that was read of it, ``rows``: the index of its feature for each row."""
        whole = {"crs": source.sourceCrs(), "wkb": source.wkbType(), "ids": read.ids, "features": read.features}
        return cls(key, columns, style=style, source=source, rows=rows, **{**whole, **more})

    @classmethod
    def bare(cls, key, columns, style, source=None, rows=None, read=None):
        """A table without geometry; with the columns of an input as in ``beside``."""
        none = {"crs": QgsCoordinateReferenceSystem(), "wkb": QgsWkbTypes.Type.NoGeometry}
        if source is None:
            return cls(key, columns, style=style, **none)
        return cls.beside(key, columns, style, source, rows, read, **none)

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
        fields, taken = QgsFields(), {name.lower() for name in (*self.columns, *self.reserved)} | {"fid"}
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


def _plain(column, part):
    """A stretch of a column as Python values with None for NaN: numpy scalars must never reach a feature."""
    values = column[part]
    if isinstance(column, Derived):
        return values
    if not isinstance(values, np.ndarray):
        values = [value.item() if isinstance(value, np.generic) else value for value in values]
    elif values.dtype == float and not np.isnan(values).any():
        return values.tolist()
    else:
        values = values.tolist()
    return [None if v != v else v for v in values]


def _fid_field(fields):
    return next((k for k, f in enumerate(fields) if f.name().lower() == "fid"), -1)


def write_rows(sink, table, feedback, progress=(0.0, 100.0)):
    """Write a table into an open sink in chunks, with progress and cancel between them.

    Raises InputError where the sink refuses rows, QgsProcessingException where the input changed since it was read.
    """
    chunks = _new_chunks(table) if table.source is None else _source_chunks(table)
    kept = 0 if table.source is None else len(table.kept())
    for part, chunk in chunks:
        check_cancel(feedback)
        # Column by column, with the loop inside the interpreter's own C code: this is the hot place of every run.
        for k, column in enumerate(table.columns.values(), kept):
            deque(map(setitem, chunk, repeat(k), _plain(column, part)), maxlen=0)
        if not sink.addFeatures(chunk, QgsFeatureSink.Flag.FastInsert):
            raise InputError(not_written(table.key, sink.lastError()), keys=(table.key,))
        feedback.setProgress(progress[0] + (progress[1] - progress[0]) * part.stop / len(table))
    if not sink.flushBuffer():
        raise InputError(not_written(table.key, sink.lastError()), keys=(table.key,))


def not_written(key, reason):
    """The sentence for an output that its format or place refuses; ``reason``: the host's own words, often many."""
    words = " ".join(str(reason).split())
    words = words if len(words) <= _MOST_WORDS else "... " + words[-_MOST_WORDS:]
    return tr("The output {} could not be written ({}). Is the disk full or read-only?").format(key, words)


def _parts(number):
    """Slices of CHUNK rows."""
    return (slice(first, min(first + CHUNK, number)) for first in range(0, number, CHUNK))


def _new_chunks(table):
    """(slice of the rows, their features), chunk by chunk."""
    fields, points = table.fields(), table.points
    for part in _parts(len(table)):
        chunk = [QgsFeature(fields) for _ in range(part.start, part.stop)]
        if table.shapes is not None:
            deque(map(QgsFeature.setGeometry, chunk, table.shapes[part]), maxlen=0)
        elif points is not None:
            _set_points(chunk, points, part)
        yield part, chunk


def _set_points(chunk, points, part):
    for feature, x, y in zip(chunk, *(np.asarray(one[part], float).tolist() for one in points)):
        feature.setGeometry(QgsGeometry.fromPointXY(QgsPointXY(x, y)))


def _move_points(chunk, places, part):
    """Put each point at its new place with its Z and M, still a multipoint where it was one."""
    for feature, x, y in zip(chunk, *(np.asarray(one[part], float).tolist() for one in places)):
        moved = QgsGeometry(feature.geometry())
        moved.moveVertex(x, y, 0)
        feature.setGeometry(moved)


def _source_chunks(table):
    """(slice of the rows, their features), chunk by chunk of the input: its features with the attributes that stay, and
    room for the own ones."""
    fields, kept = table.fields(), table.kept()
    more = [None] * len(table.columns)
    everything = len(kept) == table.source.fields().count()
    once = len(table.rows) == 0 or bool(np.all(np.diff(table.rows) > 0))
    fid = -1 if once else _fid_field(fields)
    geometry = table.wkb != QgsWkbTypes.Type.NoGeometry and table.points is None and table.shapes is None
    for read, features in _features_of_source(table, geometry):
        part = slice(*np.searchsorted(table.rows, (read.start, read.stop)).tolist())
        chunk = [features[k] for k in (table.rows[part] - read.start).tolist()]
        if not once:
            chunk = [QgsFeature(feature) for feature in chunk]
        if everything:
            deque(map(QgsFeature.resizeAttributes, chunk, repeat(len(kept) + len(more))), maxlen=0)
        else:
            for feature in chunk:
                values = feature.attributes()
                feature.setAttributes([values[k] for k in kept] + more)
        if fid >= 0:
            deque(map(setitem, chunk, repeat(fid), repeat(None)), maxlen=0)
        if table.points is not None:
            _set_points(chunk, table.points, part)
        elif table.shapes is not None:
            deque(map(QgsFeature.setGeometry, chunk, table.shapes[part]), maxlen=0)
        elif table.moved is not None:
            _move_points(chunk, table.moved, part)
        elif not geometry:
            deque(map(QgsFeature.clearGeometry, chunk), maxlen=0)
        if chunk:
            yield part, chunk


def _features_of_source(table, geometry):
    """(slice of the input's rows, their features), chunk by chunk: those kept from reading, else read again, each chunk
    into the same features, and compared by their ids."""
    if table.features is not None:
        yield from ((part, table.features[part]) for part in _parts(len(table.features)))
        return
    request = QgsFeatureRequest()
    if not geometry:
        request.setFlags(QgsFeatureRequest.Flag.NoGeometry)
    stream = table.source.getFeatures(request, UNCHECKED)
    features = [QgsFeature() for _ in range(min(CHUNK, len(table.ids)))]
    for part in _parts(len(table.ids)):
        del features[part.stop - part.start :]
        there = all(map(stream.nextFeature, features))
        if not there or list(map(QgsFeature.id, features)) != table.ids[part].tolist():
            raise QgsProcessingException(_changed(table))
        yield part, features
    if stream.nextFeature(QgsFeature()):
        raise QgsProcessingException(_changed(table))


def _changed(table):
    return tr("Layer '{}' changed while it was read; run again.").format(table.source.sourceName())
