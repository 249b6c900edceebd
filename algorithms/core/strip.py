"""The profile strip beside an axis: which heights it shows from what, its frame, its grid and its scale."""

from dataclasses import dataclass

import numpy as np

from .axis import places_on
from .exaggeration import ordinary_size, round_number
from .geodesy import east_north, foot_and_normal

VIEWS = ("level", "straight")
# Of the structure's length: the height of the strip, and the gap that keeps its labels off bars and band.
HEIGHT_SHARE = 1.0 / 6.0
GAP_SHARE = 1.0 / 40.0
# A level line that would squeeze all else to less than this share of the strip leaves it instead.
LEAST_SHARE = 0.2


@dataclass(frozen=True)
class StripHeights:
    """Heights of one axis by rising chainage; metres, arrays (n,). ``residual``: NaN where there is no as-built height.

    The level line is at the design height of the first station.
    """

    chainage: np.ndarray
    design: np.ndarray
    flat: np.ndarray
    residual: np.ndarray

    @property
    def level(self):
        """Height of the level line, metres."""
        return self.design[0]

    def lines(self, view):
        """Heights of each line as seen in ``view``: {'flat', 'level', 'design', 'as-built': array (n,)}, metres.

        'level': above the level line, where a straight structure is a curve; 'straight': from the design line, where
        the level line is the curve.
        """
        heights = {
            "flat": self.flat,
            "level": np.full(len(self.design), self.level),
            "design": self.design,
            "as-built": self.design + self.residual,
        }
        base = self.level if view == "level" else self.design
        return {kind: value - base for kind, value in heights.items()}


def shown_range(profile, view, tolerance=None):
    """Lowest and highest value the strip must hold, metres, and whether the level line fits in.

    A blunder does not set the range: as-built heights count up to four ordinary residuals from the design.
    """
    lines = profile.lines(view)
    most = max(4.0 * ordinary_size(profile.residual), 1.5 * (tolerance or 0.0))
    residual = np.nan_to_num(np.clip(profile.residual, -most, most))
    values = np.concatenate([lines["flat"], lines["design"], lines["design"] + residual])
    low, high = values.min(), values.max()
    with_level = min(low, lines["level"].min()), max(high, lines["level"].max())
    fits = high - low >= LEAST_SHARE * (with_level[1] - with_level[0])
    return (*(with_level if fits else (low, high)), bool(fits))


def plan_half(lateral, tolerance=None):
    """How far a plan strip reaches to either side of its line, metres: the departures (n,), NaN for none, up to four
    ordinary ones, and the tolerance with some room about it."""
    most = max(4.0 * ordinary_size(lateral), 1.5 * (tolerance or 0.0))
    greatest = float(np.nanmax(np.abs(lateral), initial=0.0))
    return max(min(greatest, most), 1.25 * (tolerance or 0.0))


def grid_step(spans, unit, tolerance=None):
    """Round step of the height grid, metres: three to seven of them in the greatest of ``spans`` (metres).

    ``unit``: metres in the unit of heights that the step is round in.
    """
    span = max(spans, default=0.0)
    # Where all heights are equal, any step will do that shows them to be so.
    return round_number(max(span, tolerance or 0.0, 0.003 * unit) / 3.0 / unit) * unit


@dataclass(frozen=True)
class StripFrame:
    """Where the strip stands. ``low``, ``high``: values at its edges, multiples of ``step``; ``factor``: exaggeration;
    ``distance``: from the axis to its base; ``side``: 1 right, -1 left. Metres."""

    low: float
    high: float
    step: float
    factor: float
    distance: float
    side: int

    def offset(self, value):
        """Offset from the axis of a value (n,), both metres, positive right; heights grow away from the axis."""
        return self.side * (self.distance + (np.asarray(value, float) - self.low) * self.factor)

    @property
    def grid(self):
        """Values of the height grid from edge to edge, metres (m,)."""
        return self.step * np.arange(round(self.low / self.step), round(self.high / self.step) + 1)


def edges(low, high, step):
    """The range (``low``, ``high``) widened to multiples of ``step``, never empty; all in one unit."""
    slack = 1e-9
    first, last = np.floor(low / step + slack), np.ceil(high / step - slack)
    return first * step, max(last, first + 1) * step


def strip_factor(heights, length):
    """Automatic exaggeration of strips: round, the highest of ``heights`` (metres) at most a sixth of ``length``."""
    return round_number(length * HEIGHT_SHARE / max(heights))


def tick_chainages(first, last, unit):
    """Round chainages from first to last, four to ten intervals of them; ``unit``: metres in the unit of chainages."""
    step = round_number((last - first) / unit / 4.0)
    numbers = np.arange(np.ceil(first / unit / step - 1e-9), np.floor(last / unit / step + 1e-9) + 1)
    return numbers * step * unit


def side_away(axis, others):
    """Side of an axis that most of the ``others`` (list of AxisLine) do not lie on: 1 right, -1 left, 0 undecided."""
    return sides_away([axis], [axis.line, *(line for line in others if line is not axis.line)])[0]


def sides_away(axes, lines):
    """The same of many axes among ``lines`` (list of AxisLine, their own among them): a list. The mean of how far the
    others' vertices lie to the right, in space, follows from the sum over all and each axis' own."""
    lat, lon = (np.concatenate([getattr(line, name) for line in lines]) for name in ("lat", "lon"))
    feet = foot_and_normal(lat, lon, axes[0].line.ellipsoid)[0]
    cuts = np.concatenate([[0], np.cumsum([len(line.lat) for line in lines])])
    sums = dict(zip(map(id, lines), np.add.reduceat(feet, cuts[:-1])))
    middles = np.array([0.5 * (axis.vertex_chainages[0] + axis.vertex_chainages[-1]) for axis in axes])
    lat, lon, azimuth = places_on(axes, middles)
    (places, ups), turn = foot_and_normal(lat, lon, axes[0].line.ellipsoid), np.radians(azimuth)[:, None]
    east, north = east_north(lat, lon)
    right = np.cross(np.sin(turn) * east + np.cos(turn) * north, ups)
    own = np.array([sums[id(axis.line)] for axis in axes])
    counts = len(feet) - np.array([len(axis.line.lat) for axis in axes])
    mean = (feet.sum(axis=0) - own) / np.maximum(counts, 1)[:, None]
    across = np.einsum("ij,ij->i", mean - places, right)
    lengths = np.array([axis.length for axis in axes])
    return np.where((counts == 0) | (np.abs(across) < 1e-3 * lengths), 0, -np.sign(across)).astype(int).tolist()
