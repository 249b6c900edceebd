"""The plan strip beside each axis: how the structure stands to its line, seen from above, right being right."""

import numpy as np

from ..core.exaggeration import round_number
from ..core.map_geometry import Path, folds
from ..core.strip import GAP_SHARE, StripFrame, edges, grid_step, plan_half, sides_away, strip_factor
from ..language.height_text import exact_text, grid_text, sided
from ..language.number_text import times
from ..language.translation import tr
from .strip import MOST_TOLD, automatic_side, tell_more
from .strip_panel import StripPanel, panel_table


def plan_table(drawn, scale, wish, room, frames, record, asked):
    """OutputTable PLAN and its factor (None where no strip can be drawn). ``wish``: StripWish of the plan; ``room``:
    see strip_table; ``frames``: {axis: StripFrame} of the profile strips, beyond which the plan stands."""
    plans = _plans(drawn, scale, asked)
    rows, factor = [], None
    if plans:
        unit, tolerance = drawn.units.height, max(one.line_tolerance or 0.0 for one, *_ in plans)
        step = grid_step([2.0 * half for *_, half in plans], unit, tolerance)
        ranges = [edges(-half, half, step) for *_, half in plans]
        widths = [high - low for low, high in ranges]
        factor = strip_factor(widths, scale.length) if wish.factor is None else wish.factor
        bar = max(step, round_number(min(widths) / 2.0 / unit) * unit)
        gap = GAP_SHARE * scale.length
        aways = sides_away([one.axis for one, *_ in plans], drawn.lines)
        for number, ((one, path, _), (low, high), away) in enumerate(zip(plans, ranges, aways)):
            beyond = frames.get(one.name)
            side = beyond.side if beyond else wish.side or automatic_side(one, away, room)
            # Beyond a profile strip there must be room for its title.
            clear = abs(float(beyond.offset(beyond.high))) + gap if beyond else room(one, side)
            plan = _Plan(drawn, one, path, StripFrame(low, high, step, factor, clear + 2.0 * gap, side), gap, bar)
            rows += plan.rows()
            if number < MOST_TOLD:
                _tell(drawn, one, plan, asked)
        tell_more(len(plans), asked)
    return panel_table(drawn, rows, "PLAN", "plan_strip", tr("Plan strip"), factor, record), factor


def _plans(drawn, scale, asked):
    plans = []
    for one in drawn.axes:
        rows = np.isfinite(one.lateral)
        if rows.sum() < 2 or np.ptp(one.chainage[rows]) < 1e-3 * scale.length:
            asked.warn(
                tr("Axis '{}': no plan strip; it needs lateral departures at two stations some way apart.").format(
                    one.name
                )
            )
            continue
        first, last = np.flatnonzero(rows)[[0, -1]]
        path = Path(one.chainage[first : last + 1], one.lateral[first : last + 1])
        plans.append((one, path, plan_half(one.lateral, one.line_tolerance)))
    return plans


class _Plan(StripPanel):
    """The rows of one axis; ``path``: its stations' lateral departures, positive right."""

    def __init__(self, drawn, one, path, frame, gap, scale):
        self.path = path
        super().__init__(drawn, one, path.chainage, frame, gap, scale)

    def offset(self, value):
        """Right is right on either side of the axis."""
        return self.frame.offset(self.frame.side * np.asarray(value, float))

    def grid_label(self, value):
        text = grid_text(abs(value), self.frame.step, self.drawn.units.height_name)
        return sided(text, 0 if abs(value) < 0.5 * self.frame.step else value)

    def rows(self):
        label = tr("as built")
        built = self.built(self.path, label)
        return [*self.panel_rows(), *self._limits(), self._line(), built, self.scale_row()]

    def _line(self):
        return self.row("line", [self.along(self.offset(0.0))], value=0.0, label=tr("line"))

    def _limits(self):
        limit = self.one.line_tolerance
        # One that is wider than the strip would be drawn beyond it.
        if limit and limit <= self.frame.high:
            paths = [self.along(self.offset(side * limit)) for side in (-1, 1)]
            yield self.row("tolerance", paths, value=limit / self.drawn.units.height, label=tr("tolerance"))

    def title(self):
        text = tr("{}: plan, across the line {}").format(self.one.name, times(self.frame.factor))
        if self.one.line_tolerance:
            text += tr(", tolerance \u00b1{}").format(exact_text(self.one.line_tolerance, self.drawn.units.height_name))
        return text


def _tell(drawn, one, plan, asked):
    frame = plan.frame
    asked.say(
        tr(
            "Axis '{}': plan strip on the {}, true to scale along the axis and {} across it; its scale bar stands for "
            "{}. Right of the line is drawn right, looking up-chainage."
        ).format(
            one.name,
            tr("right") if frame.side > 0 else tr("left"),
            times(frame.factor),
            grid_text(plan.scale, frame.step, drawn.units.height_name),
        )
    )
    if plan.cut:
        asked.warn(
            tr("Axis '{}': stations far from the line leave the plan strip and are cut at its edge.").format(one.name)
        )
    edges_ = (frame.offset(frame.low), frame.offset(frame.high))
    if any(folds(one.axis, offset, plan.first, plan.last) for offset in edges_):
        asked.warn(
            tr("Axis '{}': the plan strip folds over itself at a bend; draw it on the other side.").format(one.name)
        )
