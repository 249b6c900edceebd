"""Rows of the profile strip beside each axis, and what the log says of it."""

from dataclasses import dataclass

import numpy as np

from ..core.exaggeration import round_number
from ..core.map_geometry import Path, folds, with_bends
from ..core.strip import GAP_SHARE, StripFrame, StripHeights, edges, grid_step, shown_range, sides_away, strip_factor
from ..language.height_text import grid_text, height_with_unit
from ..language.number_text import counted, number_text, times
from ..language.translation import tr
from .strip_panel import StripPanel, panel_table

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
    """OutputTable STRIP, the strip's factor (None where no strip can be drawn), and {axis: its StripFrame}. ``room``:
    function of a DrawnAxis and a side, how far bars and band reach there, metres."""
    plans = _plans(drawn, scale, wish, asked)
    rows, factor, frames = [], None, {}
    if plans:
        step = grid_step(
            [high - low for _, _, low, high, _ in plans],
            drawn.units.height,
            max(one.tolerance or 0.0 for one, *_ in plans),
        )
        ranges = [edges(low, high, step) for _, _, low, high, _ in plans]
        heights = [high - low for low, high in ranges]
        factor = strip_factor(heights, scale.length) if wish.factor is None else wish.factor
        # One scale bar for all, up to half of the lowest strip.
        bar = max(step, round_number(min(heights) / 2.0 / drawn.units.height) * drawn.units.height)
        aways = sides_away([one.axis for one, *_ in plans], drawn.lines)
        for number, ((one, profile, *_, fits), (low, high), away) in enumerate(zip(plans, ranges, aways)):
            side = wish.side or automatic_side(one, away, room)
            gap = GAP_SHARE * scale.length
            distance = room(one, side) + 2.0 * gap if wish.distance is None else wish.distance
            frame = frames[one.name] = StripFrame(low, high, step, factor, distance, side)
            strip = _Strip(drawn, one, profile, frame, wish.view, gap, bar)
            rows += strip.rows()
            if number < MOST_TOLD:
                _tell(drawn, one, strip, fits, asked)
        tell_more(len(plans), asked)
    table = panel_table(drawn, rows, "STRIP", "profile_strip", tr("Profile strip"), factor, record, wish.view)
    return table, factor, frames


def _plans(drawn, scale, wish, asked):
    plans = []
    for one in drawn.axes:
        rows = np.isfinite(one.design) & np.isfinite(one.flat)
        if rows.sum() < 2 or np.ptp(one.chainage[rows]) < 1e-3 * scale.length:
            asked.warn(
                tr("Axis '{}': no strip; it needs design heights at two stations some way apart.").format(one.name)
            )
            continue
        profile = StripHeights(one.chainage[rows], one.design[rows], one.flat[rows], one.residual[rows])
        plans.append((one, profile, *shown_range(profile, wish.view, one.tolerance)))
    return plans


def automatic_side(one, away, room):
    """Side of a strip where nobody has said it: ``away`` from the other axes, else where bars are shorter; 1, -1."""
    return away or (1 if room(one, 1) <= room(one, -1) else -1)


def tell_more(number, asked):
    """Say that the strips of axes beyond the first MOST_TOLD of a ``number`` are alike."""
    if number > MOST_TOLD:
        more = counted(number - MOST_TOLD, tr("axis"), tr("axes"))
        asked.say(tr("{} more have a strip of the same scale.").format(more))


class _Strip(StripPanel):
    """The rows of one axis."""

    def __init__(self, drawn, one, profile, frame, view, gap, scale):
        self.profile, self.view = profile, view
        super().__init__(drawn, one, profile.chainage, frame, gap, scale)

    def rows(self):
        names, values = _names(), self.profile.lines(self.view)
        drawn = {part: Path(self.profile.chainage, values[part]) for part in names}
        lines = [self._line(part, drawn[part], names[part]) for part in ("flat", "level", "design")]
        built = self.built(drawn["as-built"], names["as-built"])
        return [*self.panel_rows(), *lines, built, self.scale_row()]

    def _line(self, part, path, label):
        path = with_bends(self.one.axis, path, self.followed)
        parts, cut = self.shown(part, path)
        paths = [self.place(p.chainage, self.offset(p.value)) for p in parts if len(p.chainage) > 1]
        return self.row(part, paths, cut=cut, label=label)

    def title(self):
        if self.view == "level":
            return tr("{}: heights {} above level {}").format(
                self.one.name, times(self.frame.factor), height_with_unit(self.profile.level, self.drawn.units)
            )
        return tr("{}: heights {} from the design").format(self.one.name, times(self.frame.factor))


def _names():
    """What is written at each line."""
    return {"flat": tr("no curvature"), "level": tr("level"), "design": tr("design"), "as-built": tr("as built")}


def _tell(drawn, one, strip, fits, asked):
    frame, units = strip.frame, drawn.units
    asked.say(
        tr(
            "Axis '{}': strip on the {}, {} m from the axis, heights drawn {}; its scale bar stands for {}. Level "
            "line: constant height {} through the design at {}."
        ).format(
            one.name,
            tr("right") if frame.side > 0 else tr("left"),
            number_text(frame.distance, 0),
            times(frame.factor),
            grid_text(strip.scale, frame.step, units.height_name),
            height_with_unit(strip.profile.level, units),
            drawn.notation.shown(strip.first),
        )
    )
    if drawn.record.height_system == "ellipsoidal":
        asked.warn(
            tr(
                "Axis '{}': the heights are ellipsoidal, so the level line follows the ellipsoid and is not a water "
                "surface."
            ).format(one.name)
        )
    if not fits:
        asked.say(
            tr(
                "Axis '{}': the design slopes so much that the level line leaves the strip; it is cut at the edge."
            ).format(one.name)
        )
    if "as-built" in strip.cut:
        asked.warn(
            tr(
                "Axis '{}': as-built heights far from the design leave the strip and are cut at its edge; the bars and "
                "the table have them."
            ).format(one.name)
        )
    slope, curve = np.ptp(strip.profile.flat), np.ptp(strip.profile.design - strip.profile.flat)
    if strip.view == "level" and 0.0 < 10.0 * curve < slope:
        asked.say(
            tr("Axis '{}': the design's slope hides its curvature here; VIEW 'straight' shows it.").format(one.name)
        )
    outer = frame.offset(frame.high)
    if any(folds(one.axis, offset, strip.first, strip.last) for offset in (frame.offset(frame.low), outer)):
        asked.warn(
            tr("Axis '{}': the strip folds over itself at a bend; draw it on the other side or nearer.").format(
                one.name
            )
        )
