"""Rows of a stored layer in bulk, by GDAL's Arrow stream: for many rows ten times as fast as feature by feature.

What is read is to the bit what the host hands out. Nothing is refused here: whatever is out of the ordinary is left to
the host's way, which names the row and what is wrong with it.
"""

import weakref
from dataclasses import dataclass

import numpy as np
from osgeo import gdal, ogr
from qgis.core import QgsProviderRegistry, QgsVectorLayer
from qgis.PyQt.QtCore import QThread

from .cancel import check_cancel
from .cells import absent, as_text

# Of fewer rows opening the file once more costs as much as it spares.
_FEWEST = 300
# Rows at a time. The oldest GDAL makes every text as long as the longest of its batch, so of texts only a few.
_BATCH, _TEXT_BATCH = 50_000, 2_000
_NUMBERS = (ogr.OFTReal, ogr.OFTInteger, ogr.OFTInteger64)
# A text that begins with it is read without it by the host.
_BYTE_ORDER_MARK = "\ufeff"
_STYLES = "layer_styles"
_STORED = weakref.WeakKeyDictionary()


@dataclass(frozen=True)
class StoredLayer:
    """A table of a GeoPackage, all rows of which are handed out as they are stored; ``table`` '' for its only one."""

    path: str
    table: str


class _Unusual(Exception):
    """Something that only the host's way may read."""


def stored_layer(layer):
    """The StoredLayer of a map layer; None for one of few rows, edited, filtered, or kept otherwise than in a
    GeoPackage, and for one of another thread, whose own properties must not be touched."""
    if not isinstance(layer, QgsVectorLayer) or layer.thread() != QThread.currentThread():
        return None
    if layer.providerType() != "ogr" or layer.storageType() != "GPKG":
        return None
    if layer.isEditable() or layer.subsetString() or layer.featureCount() < _FEWEST:
        return None
    parts = QgsProviderRegistry.instance().decodeUri("ogr", layer.source())
    path, table = parts.pop("path", ""), parts.pop("layerName", "")
    # The host's NULL counts as false.
    return StoredLayer(path, table or "") if path and not any(parts.values()) else None


def remember(source, stored):
    """Keep for the readers that all rows of a ``source``, the host's feature source, are those of a StoredLayer."""
    if stored is not None:
        _STORED[source] = stored


def read_stored(source, numbers, texts, feedback, geometry):
    """Columns of a source that ``remember`` knows: (ids (n,), {key: array or list}, (x, y, z) or None).

    ``numbers``, ``texts``: {key: field index}, none negative. None where it is not known, or not to be read in bulk.
    """
    stored = _STORED.get(source)
    if stored is None:
        return None
    try:
        return _Reading(source, stored, numbers, texts, geometry).rows(feedback)
    except (_Unusual, RuntimeError, ImportError):
        # GDAL raises where another plugin has asked it to.
        return None


class _Reading:
    """One reading of a stored table: ``layer`` with only those fields that are asked for."""

    def __init__(self, source, stored, numbers, texts, geometry):
        self.data = gdal.OpenEx(stored.path, gdal.OF_VECTOR | gdal.OF_READONLY, allowed_drivers=["GPKG"])
        self.layer = self._table(stored.table) if self.data is not None else None
        if self.layer is None or not hasattr(self.layer, "GetArrowStreamAsNumPy"):
            raise _Unusual
        self.wkb = int(source.wkbType()) if geometry else None
        names = self._names(source)
        self.numbers, self.texts = ({key: names[k] for key, k in kind.items()} for kind in (numbers, texts))
        wanted = {*self.numbers.values(), *self.texts.values()}
        self._check(self.numbers, _NUMBERS)
        self._check(self.texts, (*_NUMBERS, ogr.OFTString))
        ignored = [name for name in names if name not in wanted and name != self.fid]
        self.layer.SetIgnoredFields(ignored if geometry else [*ignored, "OGR_GEOMETRY"])

    def _table(self, name):
        """The table of a name; of '' the only one, beside which the host may keep its styles."""
        if name:
            return self.data.GetLayerByName(name)
        first, *others = (self.data.GetLayer(k).GetName() for k in range(self.data.GetLayerCount()))
        return self.data.GetLayer(0) if first != _STYLES and set(others) <= {_STYLES} else None

    def _names(self, source):
        """Names of the source's fields, where these are the table's."""
        names = [field.name() for field in source.fields()]
        about = self.layer.GetLayerDefn()
        stored = [about.GetFieldDefn(k).GetName() for k in range(about.GetFieldCount())]
        self.fid = self.layer.GetFIDColumn()
        if not self.fid or names != [self.fid, *stored]:
            raise _Unusual
        return names

    def _check(self, columns, kinds):
        """Only of these kinds it is known that the host hands out the same: dates, for one, differ by zone."""
        about = self.layer.GetLayerDefn()
        for name in set(columns.values()) - {self.fid}:
            field = about.GetFieldDefn(about.GetFieldIndex(name))
            if field.GetType() not in kinds or field.GetSubType() != ogr.OFSTNone:
                raise _Unusual

    def rows(self, feedback):
        ids, xyz = [], []
        columns = {key: [] for key in (*self.numbers, *self.texts)}
        batch = _TEXT_BATCH if self.texts else _BATCH
        for part in self.layer.GetArrowStreamAsNumPy([f"MAX_FEATURES_IN_BATCH={batch}", "INCLUDE_FID=YES"]):
            check_cancel(feedback)
            ids.append(part[self.fid])
            if self.wkb is not None:
                xyz.append(_coordinates(part[self.layer.GetGeometryColumn()], self.wkb))
            for key, name in self.numbers.items():
                columns[key].append(_as_numbers(part[name]))
            for key, name in self.texts.items():
                columns[key] += _as_texts(part[name])
        if not ids:
            raise _Unusual
        columns.update({key: np.concatenate(columns[key]) for key in self.numbers})
        ids = np.concatenate(ids)
        places = [absent(len(ids)) if one[0] is None else np.concatenate(one) for one in zip(*xyz)]
        return ids, columns, tuple(places) if xyz else None


def _as_numbers(cells):
    """Cells as floats (n,), NaN for NULL."""
    if cells.dtype.kind not in "fi":
        raise _Unusual  # a column of texts
    found = np.ma.filled(cells.astype(float), np.nan)
    if np.any(np.isinf(found)):
        raise _Unusual
    return found


def _as_texts(cells):
    """Cells as texts, as the host's way reads them."""
    values = cells.tolist()
    try:
        values = [value.decode() if isinstance(value, bytes) else value for value in values]
    except UnicodeDecodeError:
        raise _Unusual from None
    found = [as_text(value) for value in values]
    if _BYTE_ORDER_MARK in "".join(found):
        raise _Unusual
    return found


def _coordinates(cells, wkb):
    """x, y, z (n,) of well-known binary, one point each; z None where there is none. ``wkb``: type of the layer."""
    if cells.dtype.kind != "V" or np.ma.isMaskedArray(cells):
        raise _Unusual
    raw = cells.view(np.uint8).reshape(len(cells), -1)
    kind, dimensions = _kind(wkb)
    multiple = kind % 1000 == 4
    # Byte order and type, of a multipoint also its number of points, then byte order and type of that one point.
    head = 14 if multiple else 5
    if raw.shape[1] != head + 8 * dimensions or not np.array_equal(
        raw[:, :head], np.broadcast_to(raw[0, :head], (len(raw), head))
    ):
        raise _Unusual
    first = raw[0].tobytes()
    if first[0] != 1 or _kind(int.from_bytes(first[1:5], "little"))[0] != kind:
        raise _Unusual
    if multiple and first[5:9] != b"\x01\x00\x00\x00":
        raise _Unusual
    places = np.ascontiguousarray(raw[:, head:]).view("<f8")
    x, y = places[:, 0].copy(), places[:, 1].copy()
    z = places[:, 2].copy() if kind // 1000 in (1, 3) else None
    # A point that is empty has coordinates that are no numbers.
    if np.any(np.isnan(x) | np.isnan(y)) or (z is not None and np.any(np.isinf(z))):
        raise _Unusual
    return x, y, z


def _kind(wkb):
    """(type as ISO numbers it, dimensions) of a type of well-known binary, which has an older sign for Z."""
    kind = 1000 + (wkb & 0xFF) if wkb & 0x80000000 else wkb
    return kind, {0: 2, 1: 3, 2: 3, 3: 4}.get(kind // 1000, 0)
