"""Geoid undulations N, h = H + N, and the geoid's slope, from the source that a run states (METHOD 5)."""

from dataclasses import dataclass
from typing import Callable, Protocol

import numpy as np

from .errors import InputError
from .geodesy import Ellipsoid

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
        """Rise per metre to the east and to the north by central differences over two cells.

        The derivative inside a bilinear cell would jump at its edges. ``lat``, ``lon``: degrees.
        """
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
    """A bilinear grid. ``values`` (rows, columns), metres, NaN where unknown; row 0 is the northernmost.

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

    def __call__(self, lat, lon):
        """Undulations at lat, lon degrees (n,), metres; InputError where a point lies outside or on a hole."""
        rows, columns = self.values.shape
        whole_turn = columns * self.step_lon >= 360.0 - 1e-6
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
        i = np.clip(np.floor(v).astype(int), 0, max(rows - 2, 0))
        j = np.floor(u).astype(int) if whole_turn else np.clip(np.floor(u).astype(int), 0, max(columns - 2, 0))
        dv, du = v - i, u - j
        i2, j2 = np.minimum(i + 1, rows - 1), (j + 1) % columns if whole_turn else np.minimum(j + 1, columns - 1)
        j = j % columns
        result = (self.values[i, j] * (1 - du) + self.values[i, j2] * du) * (1 - dv) + (
            self.values[i2, j] * (1 - du) + self.values[i2, j2] * du
        ) * dv
        if not np.all(np.isfinite(result)):
            k = int(np.flatnonzero(~np.isfinite(result))[0])
            raise InputError(
                f"The geoid grid has no value at latitude {np.asarray(lat)[k]:.5f}, longitude {np.asarray(lon)[k]:.5f}."
            )
        return result
