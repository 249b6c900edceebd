"""Lines and polygons on the map from latitudes and longitudes, for the layers that are drawn."""

import numpy as np
from qgis.core import QgsGeometry

from ..core.errors import InputError
from ..language.translation import tr
from .points import placed_points

# Types of well-known binary.
_LINE, _POLYGON, _LINES = 2, 3, 5


def placed_paths(lat, lon, rows, crs):
    """Map coordinates x, y (n,) in ``crs`` of paths with latitudes and longitudes, degrees (n,); ``rows``: their
    Segments.

    In latitude and longitude a path that crosses the antimeridian goes on beyond it: it would run around the Earth
    otherwise. InputError where a place has no image in ``crs``.
    """
    if not len(lat):
        return np.empty(0), np.empty(0)
    x, y = placed_points(lat, lon, crs)
    if not np.all(np.isfinite(x) & np.isfinite(y)):
        raise InputError(
            tr(
                "The drawing reaches beyond what '{}' can show; give the stations another coordinate reference system."
            ).format(crs.description())
        )
    if crs.isGeographic():
        _, spans = rows.range(x)
        for k in np.flatnonzero(spans > 180.0).tolist():
            own = slice(rows.bounds[k], rows.bounds[k + 1])
            x[own] = np.degrees(np.unwrap(np.radians(x[own])))
    return x, y


class Shapes:
    """Geometries of the rows of a table, made while it is written: as the host's own they take ten times the room.

    ``x``, ``y``: map coordinates of the points (n,); ``paths``: Segments of them; ``rows``: how many paths each row
    has, one for a polygon's ring, one or none for a line.
    """

    def __init__(self, kind, x, y, paths, rows):
        self._kind, self._x, self._y = kind, x, y
        self._points, self._paths = paths.bounds, np.concatenate([[0], np.cumsum(rows)])

    def __getitem__(self, part):
        bounds = self._paths[part.start : part.stop + 1].tolist()
        points = self._points[bounds[0] : bounds[-1] + 1].tolist()
        own, first = slice(points[0], points[-1]), bounds[0]
        raw = np.stack([self._x[own], self._y[own]], axis=-1).astype("<f8").tobytes()
        written = [
            _whole(end - begin) + raw[16 * (begin - points[0]) : 16 * (end - points[0])]
            for begin, end in zip(points, points[1:])
        ]
        return [self._shape(written[begin - first : end - first]) for begin, end in zip(bounds, bounds[1:])]

    def _shape(self, paths):
        if self._kind == _LINE:
            if not paths:
                return QgsGeometry()
            text = _head(_LINE) + paths[0]
        elif self._kind == _POLYGON:
            text = _head(_POLYGON) + _whole(1) + paths[0]
        else:
            head = _head(_LINE)
            text = _head(_LINES) + _whole(len(paths)) + b"".join([head + path for path in paths])
        shape = QgsGeometry()
        shape.fromWkb(text)
        return shape


def _head(kind):
    """How well-known binary begins: the least byte comes first, then the type."""
    return b"\x01" + _whole(kind)


def _whole(number):
    return number.to_bytes(4, "little")


def line_shapes(x, y, paths, there=None):
    """Shapes of one line a row; ``there``: mask of the rows that have one, all if not told."""
    return Shapes(_LINE, x, y, paths, np.ones(len(paths.counts), int) if there is None else there.astype(int))


def polygon_shapes(x, y, paths):
    """Shapes of a polygon within one closed ring a row."""
    return Shapes(_POLYGON, x, y, paths, np.ones(len(paths.counts), int))


def lines_shapes(x, y, paths, rows):
    """Shapes of several lines a row; ``rows``: how many each has."""
    return Shapes(_LINES, x, y, paths, rows)
