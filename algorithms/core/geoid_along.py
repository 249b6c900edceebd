"""The geoid's slope and bending along an axis: what a constant undulation hides (method page 5)."""

from dataclasses import dataclass

import numpy as np

from .errors import InputError

PLACES = 41


@dataclass(frozen=True)
class GeoidAlong:
    """The geoid along one axis, metres. ``chainage``, ``undulation``: (n,); ``change``: undulation less that at the
    first place, as far as the source can tell (n,); ``bend``: undulation above the straight line between both ends
    (n,), NaN where the source is too coarse to show it; ``slope``: rise per metre from end to end; ``span``: length it
    was taken over."""

    chainage: np.ndarray
    undulation: np.ndarray
    change: np.ndarray
    bend: np.ndarray
    slope: float
    span: float

    @property
    def coarse(self):
        """True where the source cannot show bending."""
        return bool(np.all(np.isnan(self.bend)))

    @property
    def greatest(self):
        """(greatest bending with its sign, chainage there), metres; (NaN, NaN) where it does not show."""
        if self.coarse:
            return np.nan, np.nan
        at = int(np.nanargmax(np.abs(self.bend)))
        return float(self.bend[at]), float(self.chainage[at])


def geoid_from_grid(axis, surface, cell):
    """GeoidAlong of an Axis from a grid: differences over the axis' length, or over two cells where that is more.

    ``surface``: function of lat, lon (degrees, arrays) to metres; ``cell``: degrees. Within two cells a bilinear grid
    bends at its cells' edges only: its slope is then that of two cells about the axis' middle, and no bending is given.
    """
    chainage = np.linspace(*axis.vertex_chainages[[0, -1]], PLACES)
    lat, lon, azimuth = axis.place(chainage, np.zeros(PLACES))
    undulation = np.asarray(surface(lat, lon), float)
    length, middle, ellipsoid = float(np.ptp(chainage)), PLACES // 2, axis.line.ellipsoid
    two_cells = float(2.0 * np.radians(cell) * ellipsoid.radius_meridian(lat[middle]))
    if length > two_cells:
        return _over_ends(chainage, undulation)
    ends_lat, ends_lon, _ = ellipsoid.forward(
        lat[middle], lon[middle], azimuth[middle], np.array([-0.5, 0.5]) * two_cells
    )
    low, high = surface(ends_lat, ends_lon)
    slope = float(high - low) / two_cells
    return GeoidAlong(chainage, undulation, slope * (chainage - chainage[0]), np.full(PLACES, np.nan), slope, two_cells)


def geoid_from_stations(chainage, undulation):
    """GeoidAlong from stations that carry their own undulations; metres (n,). InputError for fewer than two places; no
    bending from fewer than three."""
    order = np.argsort(chainage, kind="stable")
    chainage, undulation = np.asarray(chainage, float)[order], np.asarray(undulation, float)[order]
    if len(chainage) < 2 or np.ptp(chainage) < 1.0:
        raise InputError("The geoid's slope needs undulations at two places at least.")
    return _over_ends(chainage, undulation, len(chainage) > 2)


def _over_ends(chainage, undulation, bends=True):
    span = float(chainage[-1] - chainage[0])
    slope = float(undulation[-1] - undulation[0]) / span
    change = undulation - undulation[0]
    bend = change - slope * (chainage - chainage[0])
    return GeoidAlong(chainage, undulation, change, bend if bends else np.full(len(bend), np.nan), slope, span)
