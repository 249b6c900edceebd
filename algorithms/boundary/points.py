"""Points of a layer as arrays of latitudes and longitudes, and back onto the map."""

from dataclasses import dataclass
from typing import Optional

import numpy as np
from qgis.core import QgsWkbTypes

from ..core import geodesy
from ..core.errors import InputError
from ..language.core_sentences import worded
from ..language.number_text import plain_text
from ..language.translation import tr
from .reference_systems import checked_crs, definition
from .tables import check_geometry, read_table


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
            tr("Layer '{}', row {} has coordinates that are not numbers.").format(source.sourceName(), lost[0] + 1)
        )
    lat, lon = _to_latitude_longitude(x, y, source, crs, definition(crs))
    return Points(source.sourceName(), crs, table.ids, x, y, z, lat, lon, table.columns, table.features)


def _to_latitude_longitude(x, y, source, crs, target):
    try:
        lat, lon = geodesy.to_latitude_longitude(x, y, definition(crs), target)
    except InputError as error:
        raise error.reworded(tr("Layer '{}': {}").format(source.sourceName(), worded(error))) from None
    bad = np.flatnonzero(~((np.abs(lat) <= 90.0) & (np.abs(lon) <= 540.0)))
    if len(bad):
        raise InputError(
            tr("Layer '{}', row {}: latitude {}, longitude {} is not a place on Earth.").format(
                source.sourceName(), bad[0] + 1, plain_text(lat[bad[0]]), plain_text(lon[bad[0]])
            )
        )
    return lat, lon


def placed_points(lat, lon, crs):
    """Map coordinates x, y (n,) in ``crs`` of latitudes and longitudes on its datum."""
    x, y = geodesy.from_latitude_longitude(lat, lon, definition(crs))
    return np.asarray(x, float), np.asarray(y, float)
