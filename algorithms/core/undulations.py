"""Geoid undulations N, h = H + N, and the geoid's slope, from the source that a run states (method page 5)."""

from dataclasses import dataclass, field
from typing import Callable, Protocol

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
    """One undulation for all, metres (0 where the heights are ellipsoidal or N is not known): its slope is unknown."""

    value: float = 0.0

    def at(self, lat, lon, chainage):
        """The one undulation, metres, wherever."""
        return self.value

    def slope(self, lat, lon, chainage, azimuth):
        """None: the slope, rise per metre, is not known."""
        return None


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
        """Rise per metre to the east and to the north: the surface's own gradient where it is smooth, so
        that N and slope are of one surface; else central differences over two cells: the derivative inside
        a bilinear cell jumps at its edges.
        """
        if isinstance(self.surface, SmoothGrid):
            east, north = self.surface.gradient(np.atleast_1d(lat), np.atleast_1d(lon))
            scale = 180.0 / np.pi
            return (
                float(east[0] * scale / (self.ellipsoid.radius_across(lat) * np.cos(np.radians(lat)))),
                float(north[0] * scale / self.ellipsoid.radius_meridian(lat)),
            )
        lat0 = float(np.clip(lat, -90.0 + self.cell, 90.0 - self.cell))
        n = self.surface(
            np.array([lat0, lat0, lat0 - self.cell, lat0 + self.cell]),
            np.array([lon - self.cell, lon + self.cell, lon, lon]),
        )
        step = np.radians(2.0 * self.cell)
        east = (n[1] - n[0]) / (step * self.ellipsoid.radius_across(lat0) * np.cos(np.radians(lat0)))
        return float(east), float((n[3] - n[2]) / (step * self.ellipsoid.radius_meridian(lat0)))


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
                f"The geoid grid does not reach latitude {np.asarray(lat)[k]:.5f}, longitude {np.asarray(lon)[k]:.5f}."
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
            f"The geoid grid has no value at latitude {np.asarray(lat)[k]:.5f}, longitude {np.asarray(lon)[k]:.5f}."
        )
    return result


def library_grid():
    """The EGM96 grid of PROJ as a Grid; its nodes are asked from the library where they are needed."""
    return Grid(LibraryNodes(), LibraryNodes.west, LibraryNodes.north, EGM96_CELL, EGM96_CELL)


# Cells of one tile of a smooth grid, and of the margin around it: a node twelve cells away moves a spline by 1e-7 of
# its
# height (measured), so that tiles meet without a seam and two surveys get the same N whatever stations they have.
_TILE, _MARGIN = 64, 12
# Fewer nodes than this on a side determine no cubic spline.
_LEAST_NODES = 4


@dataclass(frozen=True)
class SmoothGrid:
    """A bicubic spline through the nodes of a Grid: N and its slope from one surface, without kinks at cells' edges.

    Source: de Boor, A Practical Guide to Splines, through scipy (FITPACK). Where a node of the margin is unknown, the
    margin shrinks. Where a node of the tile itself is, all of the tile is bilinear, its slope is refused, and so is a
    point beside the unknown node (InputError).
    """

    grid: Grid
    _tiles: dict = field(default_factory=dict, repr=False, compare=False)

    @property
    def cell(self):
        """The longer side of a cell, degrees."""
        return self.grid.cell

    def __call__(self, lat, lon):
        """Undulations at lat, lon degrees (n,), metres; InputError where a point lies outside or on a hole."""
        return self._evaluated(lat, lon, 0, 0)

    def gradient(self, lat, lon):
        """Rise of N per degree to the east and to the north at lat, lon degrees: two arrays (n,), metres."""
        return (
            self._evaluated(lat, lon, 0, 1) / self.grid.step_lon,
            -self._evaluated(lat, lon, 1, 0) / self.grid.step_lat,
        )

    def _evaluated(self, lat, lon, down, along):
        v, u = self.grid.places(lat, lon)
        rows = self.grid.values.shape[0]
        tile_row = np.floor(np.clip(v, 0, rows - 1) / _TILE).astype(int)
        tile_column = np.floor(np.maximum(u, 0.0) / _TILE).astype(int)
        result = np.empty(len(v))
        keys = tile_row * 1_000_000 + tile_column
        for key in np.unique(keys):
            mine = keys == key
            spline = self._spline(int(key // 1_000_000), int(key % 1_000_000))
            if spline is None:
                # Unknown nodes close by: what bilinear cells can tell, or their refusal.
                if down or along:
                    raise InputError("The geoid grid has holes here; its slope is not known.")
                result[mine] = self.grid(np.asarray(lat)[mine], np.asarray(lon)[mine])
                continue
            result[mine] = spline.ev(v[mine], u[mine], dx=down, dy=along)
        return _without_holes(result, lat, lon)

    def _spline(self, tile_row, tile_column):
        """The spline of a tile, None where a node of the tile itself is unknown."""
        key = (tile_row, tile_column)
        if key not in self._tiles:
            for margin in (_MARGIN, 6, 3, 1, 0):
                found = self._made(tile_row, tile_column, margin)
                if found is not None:
                    break
            self._tiles[key] = found
        return self._tiles[key]

    def _made(self, tile_row, tile_column, margin):
        try:
            from scipy.interpolate import RectBivariateSpline
        except ImportError:
            raise InputError(
                "Undulations between the nodes of a grid need scipy in QGIS's own Python; install it (python3-scipy on "
                "Debian and Ubuntu), or set GEOID_BETWEEN to bilinear."
            ) from None
        rows, columns = self.grid.values.shape
        first, last = tile_row * _TILE - margin, (tile_row + 1) * _TILE + margin
        left, right = tile_column * _TILE - margin, (tile_column + 1) * _TILE + margin
        i = np.arange(max(first, 0), min(last, rows - 1) + 1)
        if self.grid.whole_turn:
            j = np.arange(left, min(right, left + columns - 1) + 1)
        else:
            j = np.arange(max(left, 0), min(right, columns - 1) + 1)
        if len(i) < _LEAST_NODES or len(j) < _LEAST_NODES:
            return None
        values = np.asarray(self.grid.values[np.ix_(i, j % columns)], float)
        return RectBivariateSpline(i, j, values, kx=3, ky=3, s=0.0) if np.all(np.isfinite(values)) else None
