"""Lines and polygons on the map from latitudes and longitudes, for the layers that are drawn."""

import numpy as np
from qgis.core import QgsGeometry, QgsLineString, QgsMultiLineString, QgsPolygon

from ..core.errors import InputError
from ..core.segments import Segments
from ..language.translation import tr
from .points import placed_points


def placed_paths(paths, crs):
    """Map coordinates of paths: list of (lat, lon) arrays, degrees, to a list of (x, y) arrays in ``crs``.

    In latitude and longitude a path that crosses the antimeridian goes on beyond it: it would run around the Earth
    otherwise. InputError where a place has no image in ``crs``.
    """
    if not paths:
        return []
    x, y = placed_points(np.concatenate([lat for lat, _ in paths]), np.concatenate([lon for _, lon in paths]), crs)
    if not np.all(np.isfinite(x) & np.isfinite(y)):
        raise InputError(
            tr(
                "The drawing reaches beyond what '{}' can show; give the stations another coordinate reference system."
            ).format(crs.description())
        )
    rows = Segments([len(lat) for lat, _ in paths])
    placed = zip(rows.parts(x), rows.parts(y))
    if not crs.isGeographic():
        return list(placed)
    return [(np.degrees(np.unwrap(np.radians(px))) if np.ptp(px) > 180.0 else px, py) for px, py in placed]


def _line(path):
    return QgsLineString(path[0].tolist(), path[1].tolist())


def line(path):
    """A line through map coordinates (x, y)."""
    return QgsGeometry(_line(path))


def lines(paths):
    """One geometry of several lines."""
    shape = QgsMultiLineString()
    for path in paths:
        shape.addGeometry(_line(path))
    return QgsGeometry(shape)


def polygon(path):
    """A polygon within a closed ring of map coordinates (x, y)."""
    return QgsGeometry(QgsPolygon(_line(path)))
