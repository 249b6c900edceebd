"""The strips beside axes: which heights they show from what, their frames, their grids and their scale."""

from dataclasses import dataclass, replace

import numpy as np

from .axis import places_on
from .exaggeration import ordinary_sizes, round_number
from .geodesy import east_north, foot_and_normal
from .segments import Segments, ranges

VIEWS = ("level", "straight")
# Of the structure's length: the height of the strip, and the gap that keeps its labels off bars and band.
HEIGHT_SHARE = 1.0 / 6.0
GAP_SHARE = 1.0 / 40.0
# A level line that would squeeze all else to less than this share of the strip leaves it instead.
LEAST_SHARE = 0.2


@dataclass(frozen=True)
class StripHeights:
    """Heights of many axes (m), each by rising chainage; metres, arrays (n,). ``rows``: Segments of the axes;
    ``residual``: NaN where there is no as-built height.

    The level line of each is at the design height of its first station.
    """

    rows: Segments
    chainage: np.ndarray
    design: np.ndarray
    flat: np.ndarray
    residual: np.ndarray

    @property
    def level(self):
        """Heights of the level lines, metres (m,)."""
        return self.design[self.rows.first]

    def lines(self, view):
        """Heights of each line as seen in ``view``: {'flat', 'level', 'design', 'as-built': array (n,)}, metres.

        'level': above the level line, where a straight structure is a curve; 'straight': from the design line, where
        the level line is the curve.
        """
        level = self.level[self.rows.which]
        heights = {"flat": self.flat, "level": level, "design": self.design, "as-built": self.design + self.residual}
        base = level if view == "level" else self.design
        return {kind: value - base for kind, value in heights.items()}


def shown_ranges(profile, view, tolerances):
    """Lowest and highest value that the strip of each axis must hold, metres, and whether its level line fits in: three
    arrays (m,). ``tolerances``: metres (m,), 0 for none.

    A blunder does not set the range: as-built heights count up to four ordinary residuals from the design.
    """
    lines, rows = profile.lines(view), profile.rows
    most = np.maximum(4.0 * ordinary_sizes(profile.residual, rows), 1.5 * tolerances)[rows.which]
    residual = np.nan_to_num(np.clip(profile.residual, -most, most))
    values = lines["flat"], lines["design"], lines["design"] + residual
    low, high = (
        outer.reduce([outer.reduceat(value, rows.first) for value in values]) for outer in (np.minimum, np.maximum)
    )
    with_low = np.minimum(low, np.minimum.reduceat(lines["level"], rows.first))
    with_high = np.maximum(high, np.maximum.reduceat(lines["level"], rows.first))
    fits = high - low >= LEAST_SHARE * (with_high - with_low)
    return np.where(fits, with_low, low), np.where(fits, with_high, high), fits


def plan_halves(lateral, rows, tolerances):
    """How far each plan strip reaches to either side of its line, metres (m,): the departures (n,), NaN for none, up to
    four ordinary ones, and the tolerance with some room about it. ``rows``: Segments of the strips; ``tolerances``:
    metres (m,), 0 for none."""
    most = np.maximum(4.0 * ordinary_sizes(lateral, rows), 1.5 * tolerances)
    greatest = np.maximum.reduceat(np.nan_to_num(np.abs(lateral)), rows.first)
    return np.maximum(np.minimum(greatest, most), 1.25 * tolerances)


def grid_step(spans, unit, tolerance=None):
    """Round step of the height grid, metres: three to seven of them in the greatest of ``spans`` (metres).

    ``unit``: metres in the unit of heights that the step is round in.
    """
    span = max(spans, default=0.0)
    # Where all heights are equal, any step will do that shows them to be so.
    return round_number(max(span, tolerance or 0.0, 0.003 * unit) / 3.0 / unit) * unit


@dataclass(frozen=True)
class StripFrame:
    """Where strips stand, arrays (m,). ``low``, ``high``: values at their edges, multiples of the ``step`` of all;
    ``factor``: exaggeration of all; ``distance``: from the axis to the base; ``side``: 1 right, -1 left. Metres."""

    low: np.ndarray
    high: np.ndarray
    step: float
    factor: float
    distance: np.ndarray
    side: np.ndarray

    def of(self, strips):
        """The StripFrame of one of the strips, or of many: by index."""
        names = ("low", "high", "distance", "side")
        return replace(self, **{name: getattr(self, name)[strips] for name in names})

    def offset(self, value):
        """Offset from the axis of a value (m,), both metres, positive right; heights grow away from the axis."""
        return self.side * (self.distance + (np.asarray(value, float) - self.low) * self.factor)

    @property
    def grid(self):
        """Values of the height grids from edge to edge as whole numbers of steps: their Segments, and numbers (k,)."""
        first, last = (np.rint(edge / self.step).astype(int) for edge in (self.low, self.high))
        rows = Segments(last - first + 1)
        return rows, ranges(first, rows.counts)


def edges(low, high, step):
    """The ranges (``low``, ``high``) widened to multiples of ``step``, never empty; all in one unit."""
    slack = 1e-9
    first, last = np.floor(low / step + slack), np.ceil(high / step - slack)
    return first * step, np.maximum(last, first + 1) * step


def strip_factor(heights, length):
    """Automatic exaggeration of strips: round, the highest of ``heights`` (metres) at most a sixth of ``length``."""
    return round_number(length * HEIGHT_SHARE / max(heights))


def tick_chainages(first, last, unit):
    """Round chainages from first to last (m,) of each strip, four to ten intervals of them: their Segments, and the
    chainages (n,). ``unit``: metres in the unit of chainages."""
    steps = np.array([round_number(span) for span in ((last - first) / unit / 4.0).tolist()])
    begin, end = np.ceil(first / unit / steps - 1e-9), np.floor(last / unit / steps + 1e-9)
    rows = Segments((end - begin).astype(int) + 1)
    return rows, ranges(begin, rows.counts) * steps[rows.which] * unit


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
