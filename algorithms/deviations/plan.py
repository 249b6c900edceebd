"""The plan strip beside each axis: how the structure stands to its line, seen from above, right being right."""

from dataclasses import dataclass, replace

import numpy as np

from ..core.exaggeration import round_number
from ..core.segments import Segments, ranges
from ..core.strip import GAP_SHARE, StripFrame, edges, grid_step, plan_halves, strip_factor
from ..language.height_text import exact_text, grid_text, sided
from ..language.number_text import times
from ..language.translation import tr
from .strip import MOST_TOLD, automatic_sides, long_enough, tell_more
from .strip_panel import StripPanels, panel_table


def plan_table(drawn, scale, wish, room, beyond, record, asked):
    """OutputTable PLAN and its factor (None where no strip can be drawn). ``wish``: StripWish of the plan; ``room``,
    ``beyond``: see strip_table; a plan stands beyond the profile strip of its axis."""
    own, path = _paths(drawn, scale, asked)
    plans, factor = None, None
    if len(own):
        unit, tolerance = drawn.units.height, np.nan_to_num(drawn.line_tolerance[own])
        half = plan_halves(path.value, path.rows, tolerance)
        step = grid_step((2.0 * half).tolist(), unit, float(tolerance.max()))
        low, high = edges(-half, half, step)
        widths = high - low
        factor = strip_factor(widths.tolist(), scale.length) if wish.factor is None else wish.factor
        bar = max(step, round_number(widths.min() / 2.0 / unit) * unit)
        gap = GAP_SHARE * scale.length
        side = np.full(len(own), wish.side) if wish.side else automatic_sides(drawn, own, room)
        clear = np.where(side > 0, room(1)[own], room(-1)[own])
        for k, axis in enumerate(own.tolist()):
            if axis in beyond:
                # Beyond a profile strip there must be room for its title.
                side[k], clear[k] = beyond[axis][0], beyond[axis][1] + gap
        plans = _Plans(drawn, own, path, StripFrame(low, high, step, factor, clear + 2.0 * gap, side), gap, bar)
        for k in range(min(len(own), MOST_TOLD)):
            _tell(plans, k, asked)
        tell_more(len(own), asked)
    return panel_table(drawn, plans, "PLAN", "plan_strip", tr("Plan strip"), factor, record), factor


@dataclass(frozen=True)
class _Paths:
    """Lateral departures of the stations of many axes, from the first to the last that has one: ``rows``, Segments of
    the axes; chainages and departures, metres (n,), NaN for none."""

    rows: Segments
    chainage: np.ndarray
    value: np.ndarray


def _paths(drawn, scale, asked):
    """Indices of the axes that have a plan strip (m,), and their _Paths."""
    known = np.flatnonzero(np.isfinite(drawn.lateral))
    there = long_enough(drawn, known, scale)
    for name in (drawn.names[k] for k in np.flatnonzero(~there).tolist()):
        asked.warn(
            tr("Axis '{}': no plan strip; it needs lateral departures at two stations some way apart.").format(name)
        )
    own = np.flatnonzero(there)
    counts = np.bincount(drawn.rows.which[known], minlength=len(there))
    last = np.cumsum(counts)
    first, last = known[(last - counts)[own]], known[last[own] - 1]
    each = Segments(last - first + 1)
    rows = ranges(first, each.counts)
    return own, _Paths(each, drawn.chainage[rows], drawn.lateral[rows])


class _Plans(StripPanels):
    """The rows of the axes; ``path``: _Paths, positive right."""

    def __init__(self, drawn, own, path, frame, gap, scale):
        rows, chainage = path.rows, path.chainage
        super().__init__(drawn, own, chainage[rows.first], chainage[rows.last], frame, gap, scale)
        self.add_panels()
        self._add_limits()
        zero = np.zeros(len(own))
        label = [tr("line")] * len(own)
        self.add(
            self.every, "line", self.along(self.every, self.offset(self.every, zero)), value=zero.tolist(), label=label
        )
        self.add_built(rows, chainage, path.value, tr("as built"))
        self.add_scales()

    def offset(self, strips, value):
        """Right is right on either side of the axis."""
        frame = self.frame.of(strips)
        return frame.offset(frame.side * np.asarray(value, float))

    def grid_label(self, value):
        text = grid_text(abs(value), self.frame.step, self.drawn.units.height_name)
        return sided(text, 0 if abs(value) < 0.5 * self.frame.step else value)

    def _add_limits(self):
        limit = self.drawn.line_tolerance[self.own]
        # One that is wider than the strip would be drawn beyond it.
        strips = np.flatnonzero((limit > 0.0) & (limit <= self.frame.high))
        limit, both = limit[strips], np.repeat(strips, 2)
        lines = self.along(both, self.offset(both, np.stack([-limit, limit], axis=-1).ravel()))
        lines = replace(lines, row=np.repeat(np.arange(len(strips)), 2))
        label = [tr("tolerance")] * len(strips)
        self.add(strips, "tolerance", lines, value=(limit / self.drawn.units.height).tolist(), label=label)

    def title(self, strip):
        text = tr("{}: plan, across the line {}").format(self.name(strip), times(self.frame.factor))
        limit = float(self.drawn.line_tolerance[self.own[strip]])
        if limit > 0.0:
            text += tr(", tolerance \u00b1{}").format(exact_text(limit, self.drawn.units.height_name))
        return text


def _tell(plans, k, asked):
    frame, name = plans.frame.of(k), plans.name(k)
    asked.say(
        tr(
            "Axis '{}': plan strip on the {}, true to scale along the axis and {} across it; its scale bar stands for "
            "{}. Right of the line is drawn right, looking up-chainage."
        ).format(name, tr("right") if frame.side > 0 else tr("left"), times(frame.factor), plans.scale_label)
    )
    if plans.cut[k]:
        asked.warn(
            tr("Axis '{}': stations far from the line leave the plan strip and are cut at its edge.").format(name)
        )
    if plans.fold(k):
        asked.warn(tr("Axis '{}': the plan strip folds over itself at a bend; draw it on the other side.").format(name))
