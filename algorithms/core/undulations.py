"""Geoid undulations N, h = H + N, and the geoid's slope, from the source that a run states (method page 5)."""

from dataclasses import dataclass, field
from typing import Callable, Optional, Protocol

import numpy as np

from .errors import InputError
from .geodesy import EGM96_CELL, Ellipsoid, LibraryNodes

SLOPE_REACH = 500.0


class AlongAxis(Protocol):
    """Undulations along one axis."""

    def at(self, lat, lon, chainage):
        """Undulation at one point, metres. ``lat``, ``lon``: degrees; ``chainage``: metres."""

    def slope(self, lat, lon, chainage, azimuth):
        """Rise of the undulation per metre to the east and to the north at one point, or None where not known.

        ``lat``, ``lon``, ``azimuth`` of the axis: degrees; ``chainage``: metres.
        """


@dataclass(frozen=True)
class ConstantUndulation:
    """One undulation for all, metres (0 where the heights are ellipsoidal or N is not known).

    ``rise``: slope of the geoid that was stated, metres per metre to the east and to the north; None where not known.
    """

    value: float = 0.0
    rise: Optional[tuple] = None

    def at(self, lat, lon, chainage):
        """The one undulation, metres, wherever."""
        return self.value

    def slope(self, lat, lon, chainage, azimuth):
        """The stated slope, rise per metre to the east and to the north; None where it is not known."""
        return self.rise


@dataclass(frozen=True)
class StationUndulations:
    """The stations' own undulations along one axis; ``chainage``, ``value``: metres (n,)."""

    chainage: np.ndarray
    value: np.ndarray

    def __post_init__(self):
        order = np.argsort(self.chainage, kind="stable")
        object.__setattr__(self, "chainage", np.asarray(self.chainage, float)[order])
        object.__setattr__(self, "value", np.asarray(self.value, float)[order])

    def at(self, lat, lon, chainage):
        """Undulation at ``chainage`` metres, linear between the stations', metres."""
        return float(np.interp(chainage, self.chainage, self.value))

    def slope(self, lat, lon, chainage, azimuth):
        """Rise per metre to the east and north: least squares of the stations within 500 m along the axis, 0 across.

        None for fewer than two places. ``chainage``: metres; ``azimuth`` of the axis: degrees.
        """
        near = np.abs(self.chainage - chainage) <= SLOPE_REACH
        s, n = self.chainage[near], self.value[near]
        if len(s) < 2 or np.ptp(s) < 1.0:
            return None
        s = s - s.mean()
        along = float(s @ n / (s @ s))
        return along * np.sin(np.radians(azimuth)), along * np.cos(np.radians(azimuth))


@dataclass(frozen=True)
class SurfaceUndulation:
    """Undulations from a grid. ``surface``: function of lat, lon (degrees, arrays) to metres; ``cell``: degrees."""

    surface: Callable
    cell: float
    ellipsoid: Ellipsoid

    def at(self, lat, lon, chainage):
        """Undulation of the surface at ``lat``, ``lon`` degrees, metres."""
        return float(self.surface(np.atleast_1d(lat), np.atleast_1d(lon))[0])

    def slope(self, lat, lon, chainage, azimuth):
        """Rise per metre to the east and to the north, of one point or of many (m,): the surface's own gradient
        where it is smooth, so that N and slope are of one surface; else central differences over two cells: the
        derivative inside a bilinear cell jumps at its edges.
        """
        if np.ndim(lat) == 0:
            return tuple(float(v[0]) for v in self.slope(np.atleast_1d(lat), np.atleast_1d(lon), chainage, azimuth))
        across, meridian = self.ellipsoid.radius_across, self.ellipsoid.radius_meridian
        if isinstance(self.surface, SmoothGrid):
            east, north = self.surface.gradient(lat, lon)
            scale = 180.0 / np.pi
            return east * scale / (across(lat) * np.cos(np.radians(lat))), north * scale / meridian(lat)
        lat = np.clip(lat, -90.0 + self.cell, 90.0 - self.cell)
        west, east, south, north = np.split(
            self.surface(
                np.concatenate([lat, lat, lat - self.cell, lat + self.cell]),
                np.concatenate([lon - self.cell, lon + self.cell, lon, lon]),
            ),
            4,
        )
        step = np.radians(2.0 * self.cell)
        return (east - west) / (step * across(lat) * np.cos(np.radians(lat))), (north - south) / (step * meridian(lat))


@dataclass(frozen=True)
class Grid:
    """A grid, bilinear between its nodes. ``values`` (rows, columns), metres, NaN where unknown; row 0 is the
    northernmost; an array, or what is indexed like one.

    ``west``, ``north``: centre of the first cell, degrees; ``step_lon``, ``step_lat``: positive, degrees.
    """

    values: np.ndarray
    west: float
    north: float
    step_lon: float
    step_lat: float

    @property
    def cell(self):
        """The longer side of a cell, degrees."""
        return max(self.step_lon, self.step_lat)

    @property
    def whole_turn(self):
        """Whether the grid goes around the Earth."""
        return self.values.shape[1] * self.step_lon >= 360.0 - 1e-6

    def places(self, lat, lon):
        """Row v and column u (n,) of points at lat, lon degrees, as fractions; InputError where one lies outside."""
        rows, columns = self.values.shape
        whole_turn = self.whole_turn
        u = (np.asarray(lon, float) - self.west) / self.step_lon
        v = (self.north - np.asarray(lat, float)) / self.step_lat
        turn = 360.0 / self.step_lon
        # A point may be given one turn away from the grid's own range of longitudes.
        u = np.mod(u, turn) if whole_turn else u - turn * np.round((u - 0.5 * (columns - 1)) / turn)
        slack = 1e-9 * max(rows, columns)
        outside = (
            (v < -slack)
            | (v > rows - 1 + slack)
            | (~np.full(u.shape, whole_turn) & ((u < -slack) | (u > columns - 1 + slack)))
        )
        if np.any(outside):
            k = int(np.flatnonzero(outside)[0])
            raise InputError(
                "The geoid grid does not reach latitude {:.5f}, longitude {:.5f}.",
                np.asarray(lat)[k],
                np.asarray(lon)[k],
            )
        return v, u

    def __call__(self, lat, lon):
        """Undulations at lat, lon degrees (n,), metres; InputError where a point lies outside or on a hole."""
        v, u = self.places(lat, lon)
        rows, columns, whole_turn = *self.values.shape, self.whole_turn
        i = np.clip(np.floor(v).astype(int), 0, max(rows - 2, 0))
        j = np.floor(u).astype(int) if whole_turn else np.clip(np.floor(u).astype(int), 0, max(columns - 2, 0))
        dv, du = v - i, u - j
        i2, j2 = np.minimum(i + 1, rows - 1), (j + 1) % columns if whole_turn else np.minimum(j + 1, columns - 1)
        j = j % columns
        result = (self.values[i, j] * (1 - du) + self.values[i, j2] * du) * (1 - dv) + (
            self.values[i2, j] * (1 - du) + self.values[i2, j2] * du
        ) * dv
        return _without_holes(result, lat, lon)


def _without_holes(result, lat, lon):
    if not np.all(np.isfinite(result)):
        k = int(np.flatnonzero(~np.isfinite(result))[0])
        raise InputError(
            "The geoid grid has no value at latitude {:.5f}, longitude {:.5f}.", np.asarray(lat)[k], np.asarray(lon)[k]
        )
    return result


def library_grid():
    """The EGM96 grid of PROJ as a Grid; its nodes are asked from the library where they are needed."""
    return Grid(LibraryNodes(), LibraryNodes.west, LibraryNodes.north, EGM96_CELL, EGM96_CELL)


# Cells of one tile of a smooth grid, and of the margin around it: a node twelve cells away moves a spline by 1e-7 of
# its height (measured), so that tiles meet without a seam and two surveys get the same N whatever stations they have.
_TILE, _MARGIN = 64, 12
# Beside unknown nodes each cell has a window of its own, with as much of the margin as is known.
_MARGINS = (_MARGIN, 6, 3, 1)
# Fewer nodes than this on a side determine no cubic spline.
_LEAST_NODES = 4


@dataclass(frozen=True)
class SmoothGrid:
    """A bicubic spline through the nodes of a Grid: N and its slope from one surface, without kinks at cells' edges.

    Source: de Boor, A Practical Guide to Splines, through scipy (FITPACK). Each cell is taken with twelve cells around
    it, or to the edge of the grid. Where a node among them is unknown the margin shrinks to 6, 3 or 1 cells, and
    ``shortened`` names the place; where one cell around is not known either, the point is refused (InputError). An
    unknown node is never filled in, and nothing falls back to bilinear cells.
    """

    grid: Grid
    _splines: dict = field(default_factory=dict, repr=False, compare=False)
    _shortened: dict = field(default_factory=dict, repr=False, compare=False)

    @property
    def cell(self):
        """The longer side of a cell, degrees."""
        return self.grid.cell

    @property
    def shortened(self):
        """Of each cell evaluated so far with less than the margin: latitude and longitude of a point in it and of an
        unknown node near it, degrees: tuple of (lat, lon, lat, lon)."""
        return tuple(self._shortened.values())

    def __call__(self, lat, lon):
        """Undulations at lat, lon degrees (n,), metres; InputError where a point lies outside or beside a hole."""
        return self._evaluated(lat, lon, 0, 0)

    def gradient(self, lat, lon):
        """Rise of N per degree to the east and to the north at lat, lon degrees: two arrays (n,), metres."""
        return (
            self._evaluated(lat, lon, 0, 1) / self.grid.step_lon,
            -self._evaluated(lat, lon, 1, 0) / self.grid.step_lat,
        )

    def _evaluated(self, lat, lon, down, along):
        v, u = self.grid.places(lat, lon)
        lat, lon = np.asarray(lat, float), np.asarray(lon, float)
        row = np.floor(np.clip(v, 0, self.grid.values.shape[0] - 1)).astype(int)
        column = np.floor(np.maximum(u, 0.0)).astype(int)
        result = np.empty(len(v))
        for mine, tile in _alike(row // _TILE, column // _TILE):
            spline = self._tile(*tile)
            if spline is not None:
                result[mine] = spline.ev(v[mine], u[mine], dx=down, dy=along)
                continue
            for part, cell in _alike(row[mine], column[mine]):
                at = mine[part]
                spline = self._cell(*cell, float(lat[at[0]]), float(lon[at[0]]))
                result[at] = spline.ev(v[at], u[at], dx=down, dy=along)
        return _without_holes(result, lat, lon)

    def _tile(self, row, column):
        """The spline of a tile, None where a node of it or of its margin is unknown."""
        key = ("tile", row, column)
        if key not in self._splines:
            nodes = self._nodes(row * _TILE, (row + 1) * _TILE, column * _TILE, (column + 1) * _TILE, _MARGIN)
            self._splines[key] = _spline(*nodes)
        return self._splines[key]

    def _cell(self, row, column, lat, lon):
        """The spline of one cell with as much of its margin as is known; InputError without any. ``lat``, ``lon``: of a
        point in it, degrees."""
        key = ("cell", row, column)
        if key not in self._splines:
            found = None
            for margin in _MARGINS:
                nodes = self._nodes(row, row + 1, column, column + 1, margin)
                found = _spline(*nodes)
                if found is not None:
                    break
                hole = self._hole(*nodes, row, column)
            else:
                raise InputError(
                    "The geoid grid has no value at latitude {:.5f}, longitude {:.5f}, beside latitude "
                    "{:.5f}, longitude {:.5f}: too close for a smooth surface between the nodes. Take a grid "
                    "that covers the structure and some cells around it, or set GEOID_BETWEEN to bilinear.",
                    hole[0],
                    hole[1],
                    lat,
                    lon,
                )
            if margin < _MARGIN:
                self._shortened[key] = (lat, lon, *hole)
            self._splines[key] = found
        return self._splines[key]

    def _nodes(self, first, last, left, right, margin):
        """Rows, columns (which may run over the seam) and values of a window with a margin, inside the grid."""
        rows, columns = self.grid.values.shape
        i = np.arange(max(first - margin, 0), min(last + margin, rows - 1) + 1)
        if self.grid.whole_turn:
            j = np.arange(left - margin, min(right + margin, left - margin + columns - 1) + 1)
        else:
            j = np.arange(max(left - margin, 0), min(right + margin, columns - 1) + 1)
        # At the edge of the grid there may be too few on one side, but enough on the other.
        i, j = _enough(i, rows), j if self.grid.whole_turn else _enough(j, columns)
        return i, j, np.asarray(self.grid.values[np.ix_(i, j % columns)], float)

    def _hole(self, i, j, values, row, column):
        """Latitude and longitude of the unknown node of a window nearest to a cell, degrees."""
        away = np.hypot(i[:, None] - row - 0.5, j[None, :] - column - 0.5)
        k, m = np.unravel_index(np.argmin(np.where(np.isfinite(values), np.inf, away)), values.shape)
        lon = (self.grid.west + float(j[m]) * self.grid.step_lon + 180.0) % 360.0 - 180.0
        return self.grid.north - float(i[k]) * self.grid.step_lat, lon


def _alike(first, second):
    """(indices, (first, second)) of each pair that occurs, in their order."""
    order = np.lexsort((second, first))
    if not len(order):
        return
    new = np.flatnonzero(np.diff(first[order]) | np.diff(second[order])) + 1
    for part in np.split(order, new):
        yield part, (int(first[part[0]]), int(second[part[0]]))


def _enough(indices, size):
    """Consecutive indices, more of them where they are too few for a spline and the grid has more."""
    lacking = min(_LEAST_NODES, size) - len(indices)
    if lacking <= 0:
        return indices
    first = max(int(indices[0]) - lacking, 0)
    return np.arange(first, min(first + _LEAST_NODES, size))


def _spline(rows, columns, values):
    """The bicubic spline through nodes, None where one of them is unknown; InputError for too few of them."""
    try:
        from scipy.interpolate import RectBivariateSpline
    except ImportError:
        raise InputError(
            "Undulations between the nodes of a grid need scipy in QGIS's own Python; install it (python3-scipy on "
            "Debian and Ubuntu), or set GEOID_BETWEEN to bilinear."
        ) from None
    if min(values.shape) < _LEAST_NODES:
        raise InputError(
            "The geoid grid has {} by {} nodes; a smooth surface between them needs {} by {}. Set "
            "GEOID_BETWEEN to bilinear.",
            values.shape[0],
            values.shape[1],
            _LEAST_NODES,
            _LEAST_NODES,
        )
    return RectBivariateSpline(rows, columns, values, kx=3, ky=3, s=0.0) if np.all(np.isfinite(values)) else None
