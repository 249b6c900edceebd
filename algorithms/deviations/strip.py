"""Rows of the profile strip beside each axis, and what the log says of it."""

from dataclasses import dataclass

import numpy as np

from ..core.exaggeration import round_number
from ..core.segments import Segments
from ..core.strip import GAP_SHARE, StripFrame, StripHeights, edges, grid_step, shown_ranges, sides_away, strip_factor
from ..language.height_text import height_with_unit
from ..language.number_text import counted, number_text, times
from ..language.translation import tr
from .strip_panel import StripPanels, panel_table

# Of how many axes the log tells.
MOST_TOLD = 40


@dataclass(frozen=True)
class StripWish:
    """What the user asked of the strip; None and 0 for what is automatic. ``distance``: metres; ``side``: 1, -1."""

    view: str
    side: int
    distance: object
    factor: object


def strip_table(drawn, scale, wish, room, record, asked):
    """OutputTable STRIP, the strip's factor (None where no strip can be drawn), and {index of an axis: (its strip's
    side, how far its outer edge is from the axis, metres)}. ``room``: function of a side, how far bars and band reach
    there from each axis, metres."""
    own, profile = _profiles(drawn, scale, asked)
    strips, factor, beyond = None, None, {}
    if len(own):
        tolerance = np.nan_to_num(drawn.tolerance[own])
        low, high, fits = shown_ranges(profile, wish.view, tolerance)
        step = grid_step((high - low).tolist(), drawn.units.height, float(tolerance.max()))
        low, high = edges(low, high, step)
        heights = high - low
        factor = strip_factor(heights.tolist(), scale.length) if wish.factor is None else wish.factor
        # One scale bar for all, up to half of the lowest strip.
        bar = max(step, round_number(heights.min() / 2.0 / drawn.units.height) * drawn.units.height)
        side = np.full(len(own), wish.side) if wish.side else automatic_sides(drawn, own, room)
        gap = GAP_SHARE * scale.length
        distance = np.full(len(own), wish.distance or 0.0)
        if wish.distance is None:
            distance = np.where(side > 0, room(1)[own], room(-1)[own]) + 2.0 * gap
        frame = StripFrame(low, high, step, factor, distance, side)
        strips = _Strips(drawn, own, profile, frame, wish.view, gap, bar)
        outer = frame.offset(frame.high)
        beyond = dict(zip(own.tolist(), zip(side.tolist(), np.abs(outer).tolist())))
        for k in range(min(len(own), MOST_TOLD)):
            _tell(strips, k, bool(fits[k]), asked)
        tell_more(len(own), asked)
    table = panel_table(drawn, strips, "STRIP", "profile_strip", tr("Profile strip"), factor, record, wish.view)
    return table, factor, beyond


def _profiles(drawn, scale, asked):
    """Indices of the axes that have a strip (m,), and StripHeights of their stations with a design height."""
    rows = np.flatnonzero(np.isfinite(drawn.design) & np.isfinite(drawn.flat))
    there = long_enough(drawn, rows, scale)
    for name in (drawn.names[k] for k in np.flatnonzero(~there).tolist()):
        asked.warn(tr("Axis '{}': no strip; it needs design heights at two stations some way apart.").format(name))
    rows = rows[there[drawn.rows.which[rows]]]
    each = Segments(np.bincount(drawn.rows.which[rows], minlength=len(there))[there])
    columns = drawn.chainage, drawn.design, drawn.flat, drawn.residual
    return np.flatnonzero(there), StripHeights(each, *(column[rows] for column in columns))


def long_enough(drawn, rows, scale):
    """Which axes have two of the stations ``rows``, rising indices, some way apart (mask (m,))."""
    counts = np.bincount(drawn.rows.which[rows], minlength=len(drawn.axes))
    last = np.cumsum(counts)
    there = counts >= 2
    spans = drawn.chainage[rows[last[there] - 1]] - drawn.chainage[rows[(last - counts)[there]]]
    there[there] = ~(spans < 1e-3 * scale.length)
    return there


def automatic_sides(drawn, own, room):
    """Sides of strips of axes, indices (m,), where nobody has said them: away from the other axes, else where bars are
    shorter; 1, -1."""
    aways = np.array(sides_away([drawn.axes[k] for k in own.tolist()], drawn.lines), int)
    return np.where(aways != 0, aways, np.where(room(1)[own] <= room(-1)[own], 1, -1))


def tell_more(number, asked):
    """Say that the strips of axes beyond the first MOST_TOLD of a ``number`` are alike."""
    if number > MOST_TOLD:
        more = counted(number - MOST_TOLD, tr("axis"), tr("axes"))
        asked.say(tr("{} more have a strip of the same scale.").format(more))


class _Strips(StripPanels):
    """The rows of the axes; ``profile``: their StripHeights."""

    def __init__(self, drawn, own, profile, frame, view, gap, scale):
        rows, chainage = profile.rows, profile.chainage
        super().__init__(drawn, own, chainage[rows.first], chainage[rows.last], frame, gap, scale)
        self.profile, self.view, self.level = profile, view, profile.level
        names, values = _names(), profile.lines(view)
        built = names.pop("as-built")
        self.add_panels()
        self.add_lines(rows, chainage, values, names)
        self.add_built(rows, chainage, values["as-built"], built)
        self.add_scales()

    def title(self, strip):
        if self.view == "level":
            return tr("{}: heights {} above level {}").format(
                self.name(strip), times(self.frame.factor), height_with_unit(self.level[strip], self.drawn.units)
            )
        return tr("{}: heights {} from the design").format(self.name(strip), times(self.frame.factor))


def _names():
    """What is written at each line."""
    return {"flat": tr("no curvature"), "level": tr("level"), "design": tr("design"), "as-built": tr("as built")}


def _tell(strips, k, fits, asked):
    """Tell of the strip with index ``k``."""
    drawn, frame, profile, name = strips.drawn, strips.frame.of(k), strips.profile, strips.name(k)
    units, own = drawn.units, slice(profile.rows.first[k], profile.rows.last[k] + 1)
    asked.say(
        tr(
            "Axis '{}': strip on the {}, {} m from the axis, heights drawn {}; its scale bar stands for {}. Level "
            "line: constant height {} through the design at {}."
        ).format(
            name,
            tr("right") if frame.side > 0 else tr("left"),
            number_text(frame.distance, 0),
            times(frame.factor),
            strips.scale_label,
            height_with_unit(strips.level[k], units),
            drawn.notation.shown(strips.first[k]),
        )
    )
    if drawn.record.height_system == "ellipsoidal":
        asked.warn(
            tr(
                "Axis '{}': the heights are ellipsoidal, so the level line follows the ellipsoid and is not a water "
                "surface."
            ).format(name)
        )
    if not fits:
        asked.say(
            tr(
                "Axis '{}': the design slopes so much that the level line leaves the strip; it is cut at the edge."
            ).format(name)
        )
    if strips.cut[k]:
        asked.warn(
            tr(
                "Axis '{}': as-built heights far from the design leave the strip and are cut at its edge; the bars and "
                "the table have them."
            ).format(name)
        )
    slope, curve = np.ptp(profile.flat[own]), np.ptp((profile.design - profile.flat)[own])
    if strips.view == "level" and 0.0 < 10.0 * curve < slope:
        asked.say(tr("Axis '{}': the design's slope hides its curvature here; VIEW 'straight' shows it.").format(name))
    if strips.fold(k):
        asked.warn(
            tr("Axis '{}': the strip folds over itself at a bend; draw it on the other side or nearer.").format(name)
        )
