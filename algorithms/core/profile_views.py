"""What a profile on the screen needs of numbers: two ways of looking, ranges, thinning, picking, the worst first."""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from .errors import InputError

VIEWS = ("level", "straight")
# Baarda's critical value for one suspected blunder (method page 6): |w| beyond it counts as out of tolerance does.
CRITICAL_W = 3.29
# A design that leaves its flat twin by less than this nowhere shows a curve (metres).
_STRAIGHT_FROM = 5e-5
# Ordinary residuals from the design that the chart makes room for: a blunder does not set the range.
_ROOM = 4.0


@dataclass(frozen=True)
class AxisProfile:
    """Stations of one axis by rising chainage; metres, arrays (n,), NaN where a value is missing.

    ``chainage`` is finite and does not fall; InputError otherwise. ``sd``: standard deviation of the as-built height;
    ``tolerance``: greatest residual that counts as within, None without one. ``lateral``: departures from the line,
    positive right, None where the line was not judged; ``line_tolerance`` as ``tolerance``.
    """

    chainage: np.ndarray
    design: np.ndarray
    flat: np.ndarray
    residual: np.ndarray
    sd: np.ndarray
    tolerance: Optional[float] = None
    lateral: Optional[np.ndarray] = None
    line_tolerance: Optional[float] = None

    def __post_init__(self):
        columns = (self.chainage, self.design, self.flat, self.residual, self.sd, self.lateral)
        lengths = {len(column) for column in columns if column is not None}
        if len(lengths) != 1:
            raise InputError("The columns of a profile differ in length.")
        if not np.all(np.isfinite(self.chainage)) or np.any(np.diff(self.chainage) < 0.0):
            raise InputError("The chainages of a profile must be known and must not fall.")

    def __len__(self):
        return len(self.chainage)

    @property
    def has_design(self):
        """True where a station has a design height."""
        return bool(np.any(np.isfinite(self.design)))

    @property
    def has_line(self):
        """True where a station has a lateral departure."""
        return self.lateral is not None and bool(np.any(np.isfinite(self.lateral)))

    @property
    def built(self):
        """As-built heights, metres (n,)."""
        return self.design + self.residual

    @property
    def level(self):
        """Height of the level line, metres: the design height of the first station that has one; NaN without."""
        known = np.flatnonzero(np.isfinite(self.design))
        return float(self.design[known[0]]) if len(known) else float("nan")

    @property
    def curvature_effect(self):
        """Design height minus design height as if the Earth were flat, metres (n,)."""
        return self.design - self.flat

    @property
    def is_straight(self):
        """True where the design leaves its flat twin by more than 0.05 mm: a straight structure does, a level one does
        not."""
        effect = self.curvature_effect
        return bool(np.any(np.abs(effect[np.isfinite(effect)]) > _STRAIGHT_FROM))

    def lines(self, view):
        """Heights of each line in ``view``: {'flat', 'level', 'design', 'as-built': array (n,)}, metres.

        'level': above the level line, where a straight structure is a curve. 'straight': from the design line, where
        the level line is the curve. InputError for another view.
        """
        heights = {
            "flat": self.flat,
            "level": np.full(len(self), self.level),
            "design": self.design,
            "as-built": self.built,
        }
        base = self._base(view)
        return {name: value - base for name, value in heights.items()}

    def seen(self, chainage, heights, view):
        """Any ``heights`` as ``view`` shows them, metres (m,); ``chainage``: of each, metres (m,)."""
        return heights - self.base_at(chainage, view)

    def base_at(self, chainage, view):
        """Height from which ``view`` counts at any ``chainage``, metres (m,): that of the level line, or of the design
        line between its stations. NaN without a design height."""
        base, known = np.broadcast_to(self._base(view), len(self)), np.isfinite(self.design)
        if not np.any(known):
            return np.full(np.shape(chainage), np.nan)
        return np.interp(chainage, self.chainage[known], base[known])

    def _base(self, view):
        if view not in VIEWS:
            raise InputError("The view '{}' is unknown; known are {}.", view, ", ".join(VIEWS))
        return self.level if view == "level" else self.design

    def shown_range(self, view):
        """(lowest, highest) that a chart of ``view`` holds, metres: design, flat and level line, ordinary residuals.

        As-built heights beyond those count where they widen the range by less than half.
        """
        lines = self.lines(view)
        low, high = self.residual_range()
        near = lines["design"] + np.clip(np.nan_to_num(self.residual), low, high)
        shown = np.concatenate([lines["flat"], lines["level"], lines["design"], near])
        (low, high), (lowest, highest) = _spread(shown), _spread(np.concatenate([shown, lines["as-built"]]))
        return (lowest, highest) if highest - lowest < 1.5 * (high - low) else (low, high)

    def residual_range(self):
        """(lowest, highest) of the residuals to make room for, metres: symmetric, at least one and a half tolerances.

        The greatest residual sets it while it is at most four times an ordinary one (the 95th percentile).
        """
        return _room_for(self.residual, self.tolerance)

    def lateral_range(self):
        """The same for the lateral departures, metres."""
        return _room_for(self.lateral, self.line_tolerance)


def _room_for(values, tolerance):
    sizes = np.sort(np.abs(values[np.isfinite(values)]))
    ordinary = sizes[int(0.95 * (len(sizes) - 1))] if len(sizes) else 0.0
    most = min(sizes[-1], _ROOM * ordinary) if len(sizes) and ordinary > 0.0 else (sizes[-1] if len(sizes) else 0.0)
    most = float(max(most, 1.5 * (tolerance or 0.0))) or 1e-3
    return -most, most


def _spread(values):
    values = values[np.isfinite(values)]
    if not len(values):
        return -1e-3, 1e-3
    low, high = float(values.min()), float(values.max())
    return (low, high) if high > low else (low - 1e-3, high + 1e-3)


def widened(low, high, share=0.06):
    """A range with ``share`` of its length added at both ends."""
    return low - share * (high - low), high + share * (high - low)


def thinned(x, y, low, high, bins):
    """Indices, rising, of points that draw like all of those within [low, high] and one beyond each end.

    ``x`` (n,) does not fall; of each of ``bins`` equal pieces of the range the first, last, lowest and highest point
    are kept, so that no peak is lost. All points where there are at most four for each piece. Points whose ``y`` is NaN
    are passed over.
    """
    first = max(int(np.searchsorted(x, low, side="left")) - 1, 0)
    last = min(int(np.searchsorted(x, high, side="right")) + 1, len(x))
    rows = first + np.flatnonzero(np.isfinite(y[first:last]))
    if len(rows) <= 4 * bins or not high > low:
        return rows
    piece = np.clip(((x[rows] - low) / (high - low) * bins).astype(np.int64), -1, bins)
    starts = np.flatnonzero(np.concatenate([[True], np.diff(piece) > 0]))
    ends = np.append(starts[1:], len(rows)) - 1
    # Sorted by piece, then height: the first and last of each piece are its lowest and highest point.
    by_height = np.lexsort((y[rows], piece))
    return rows[np.unique(np.concatenate([starts, ends, by_height[starts], by_height[ends]]))]


def nearest(x, y, at_x, at_y, *, across=1.0):
    """Index of the point nearest to (at_x, at_y), vertical distances counted ``across`` times; -1 where there is none.

    Points whose ``y`` is NaN count by ``x`` alone. All in one unit, such as pixels.
    """
    if not len(x):
        return -1
    distance = np.abs(x - at_x) ** 2 + np.nan_to_num((across * (y - at_y)) ** 2)
    return int(np.argmin(distance)) if np.any(np.isfinite(distance)) else -1


def within_box(x, y, corner, opposite):
    """Mask (n,) of the points in the rectangle between two corners (x, y); NaN is outside."""
    (x1, y1), (x2, y2) = corner, opposite
    return (x >= min(x1, x2)) & (x <= max(x1, x2)) & (y >= min(y1, y2)) & (y <= max(y1, y2))


def exaggeration(width, x_span, height, y_span):
    """How many times larger heights are drawn than chainages.

    ``width``, ``height``: of the chart, pixels; ``x_span``, ``y_span``: what they show, metres. InputError where one is
    not positive.
    """
    if not min(width, x_span, height, y_span) > 0.0:
        raise InputError("A chart without extent has no exaggeration.")
    return (height / y_span) / (width / x_span)


def span_at(factor, width, x_span, height):
    """Heights that a chart shows at the exaggeration ``factor``, metres: the inverse of ``exaggeration``."""
    return exaggeration(width, x_span, height, 1.0) / factor


def severity(residual, tolerance, w, suspected):
    """How far stations are beyond what is accepted (n,): 1 is at the limit; NaN for those without a residual.

    The greater of |residual| over ``tolerance`` (both in one unit, NaN for none) and, where a blunder is ``suspected``,
    |w| over 3.29. A suspected station without a test value counts as at the limit.
    """
    with np.errstate(divide="ignore", invalid="ignore"):
        by_tolerance = np.abs(residual) / tolerance
        by_test = np.where(suspected, np.nan_to_num(np.abs(w) / CRITICAL_W, nan=1.0), np.nan)
    return np.fmax(by_tolerance, by_test)


def worst_first(flagged, severities, residual):
    """Indices of the ``flagged`` (mask (n,)) stations: severest first, then by |residual|, then in order."""
    rows = np.flatnonzero(flagged)
    size, step = np.nan_to_num(np.abs(residual[rows])), np.nan_to_num(severities[rows])
    return rows[np.lexsort((rows, -size, -step))]
