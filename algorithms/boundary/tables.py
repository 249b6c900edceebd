"""Rows of a source read into columns in one pass.

Every refusal is one sentence that names the layer, the field and the row; rows count from 1 in reading order.
"""

from dataclasses import dataclass
from typing import Optional

import numpy as np
from qgis.core import QgsFeatureRequest, QgsProcessingFeatureSource, QgsWkbTypes

from ..core.errors import InputError
from ..core.input_record import InputRecord
from ..language.translation import tr
from .cancel import CANCEL_EVERY, check_cancel
from .cells import absent, as_number, as_text, cell_place
from .readings import note, reading
from .slices import ROWS, finished
from .stored_rows import read_stored

# Features kept from reading to writing spare a second reading; at about 0.4 kB each this bounds the memory.
MOST_KEPT = 400_000


# The host's own check of geometries skips or refuses features by the user's settings and says less than ours.
UNCHECKED = QgsProcessingFeatureSource.Flag.FlagSkipGeometryValidityChecks


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
        tr("Layer '{}' has {}, but {} are expected here.").format(
            source.sourceName(), names.get(found, tr("an unknown geometry")), wanted
        )
    )


@dataclass(frozen=True)
class Table:
    """Rows of a source as read: ``ids`` (n,); ``columns`` {key: array or list}; ``xyz``: arrays, None without geometry;
    ``features``: kept for writing where they are few enough, else None; ``read``: its InputRecord, without a source."""

    ids: np.ndarray
    columns: dict
    xyz: Optional[tuple]
    features: Optional[list]
    read: InputRecord


def read_table(source, numbers, texts, feedback, geometry=False):
    """Read columns of a source in one pass.

    ``numbers``, ``texts``: {key: field index}, -1 for a column of NaN or ''. Returns Table. InputError for a row
    without a point, where ``geometry`` is asked for.
    """
    there = [{key: index for key, index in kind.items() if index >= 0} for kind in (numbers, texts)]
    stored = read_stored(source, *there, feedback, geometry)
    if stored is not None:
        ids, columns, xyz = stored
        columns.update({key: absent(len(ids)) for key in set(numbers) - set(there[0])})
        columns.update({key: [""] * len(ids) for key in set(texts) - set(there[1])})
        read = _reading(source, numbers, texts, columns, xyz, len(ids))
        note(source, read)
        return Table(ids, columns, xyz, None, read)
    keep = 0 <= source.featureCount() <= MOST_KEPT
    return finished(table_in_slices(source, numbers, texts, feedback, geometry, keep))


def table_in_slices(source, numbers, texts, feedback, geometry=False, keep=False):
    """The same in slices, see ``finished``; ``keep``: the features too. The layer behind the source must stay."""
    request = QgsFeatureRequest()
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
        if row % ROWS == 0:
            yield
        ids.append(feature.id())
        if geometry:
            shape = feature.geometry()
            # The common case without the detour over the shape's own class, which costs a third of the reading.
            point = shape.asPoint() if flat and not shape.isEmpty() else single_point(feature, source, row)
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
        yield
        columns[key] = _finite(np.array(columns[key], float), source, index) if index >= 0 else absent(len(ids))
    for key, index in texts.items():
        columns[key] = columns[key] if index >= 0 else [""] * len(ids)
    xyz = None
    if geometry:
        xyz = (np.array(x, float), np.array(y, float), absent(len(x)) if flat else np.array(z, float))
    yield
    read = _reading(source, numbers, texts, columns, xyz, len(ids))
    note(source, read)
    return Table(np.array(ids, dtype=np.int64), columns, xyz, kept if keep else None, read)


def _reading(source, numbers, texts, columns, xyz, rows):
    """What was read, under the names of the fields."""
    names = [field.name() for field in source.fields()]
    named = [{names[index]: columns[key] for key, index in kind.items() if index >= 0} for kind in (numbers, texts)]
    return reading(rows, *named, xyz or (), "point" if xyz else "")


def _finite(values, source, field):
    infinite = np.flatnonzero(np.isinf(values))
    if len(infinite):
        raise InputError(tr("{}: the value is infinite.").format(cell_place(source, field, infinite[0] + 1)))
    return values


def single_point(feature, source, row):
    geometry = feature.geometry()
    if geometry.isEmpty():
        raise InputError(
            tr("Layer '{}', row {} (feature {}) has no geometry.").format(source.sourceName(), row, feature.id())
        )
    shape = geometry.constGet()
    if QgsWkbTypes.isMultiType(shape.wkbType()):
        if shape.numGeometries() != 1:
            raise InputError(
                tr("Layer '{}', row {} has {} points; one is expected.").format(
                    source.sourceName(), row, shape.numGeometries()
                )
            )
        shape = shape.geometryN(0)
    if shape.z() in (np.inf, -np.inf):
        raise InputError(tr("Layer '{}', row {}: the point's Z is infinite.").format(source.sourceName(), row))
    return shape
