"""Rows of the profile strip beside each axis, and what the log says of it."""

from dataclasses import dataclass

import numpy as np
from qgis.core import QgsWkbTypes

from ..boundary.geometries import lines, placed_paths
from ..boundary.output_rows import OutputTable
from ..core.exaggeration import round_number
from ..core.map_geometry import Path, beside_each, chainages_along, folds, with_bends, within
from ..core.strip import (
    GAP_SHARE,
    StripFrame,
    StripHeights,
    edges,
    grid_step,
    shown_range,
    sides_away,
    strip_factor,
    tick_chainages,
)
from ..language.height_text import grid_text, height_with_unit
from ..language.number_text import counted, number_text, times
from ..language.translation import tr
from ..styles.layer_kinds import StyleSpec
from .bars import reach

# Of how many axes the log tells.
MOST_TOLD = 40


@dataclass(frozen=True)
class StripWish:
    """What the user asked of the strip; None and 0 for what is automatic. ``distance``: metres; ``side``: 1, -1."""

    view: str
    side: int
    distance: object
    factor: object


def strip_table(drawn, scale, wish, record, asked):
    """OutputTable STRIP and the strip's factor (None where no strip can be drawn)."""
    plans = _plans(drawn, scale, wish, asked)
    rows, factor = [], None
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
            side = wish.side or _automatic_side(one, away, scale)
            gap = GAP_SHARE * scale.length
            distance = reach(one, scale, side) + 2.0 * gap if wish.distance is None else wish.distance
            frame = StripFrame(low, high, step, factor, distance, side)
            strip = _Strip(drawn, one, profile, frame, wish.view, gap, bar)
            rows += strip.rows()
            if number < MOST_TOLD:
                _tell(drawn, one, strip, fits, asked)
        if len(plans) > MOST_TOLD:
            more = counted(len(plans) - MOST_TOLD, tr("axis"), tr("axes"))
            asked.say(tr("{} more have a strip of the same scale.").format(more))
    return _table(drawn, rows, wish.view, factor, record), factor


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


def _automatic_side(one, away, scale):
    return away or (1 if reach(one, scale, 1) <= reach(one, scale, -1) else -1)


def _table(drawn, rows, view, factor, record):
    names = ("axis", "part", "station", "chainage", "value", "label", "factor", "cut")
    columns = {name: [row[name] for row in rows] for name in names}
    placed = iter(placed_paths(beside_each([path for row in rows for path in row["paths"]]), drawn.crs))
    shapes = [lines([next(placed) for _ in row["paths"]]) for row in rows]
    title = " ".join(filter(None, (tr("Profile strip"), times(factor) if factor else "")))
    style = StyleSpec(
        "profile_strip",
        title,
        drawn.units.height_name,
        drawn.units.chainage_name,
        None,
        record,
        exaggeration=factor,
        view=view,
    )
    return OutputTable("STRIP", columns, drawn.crs, QgsWkbTypes.Type.MultiLineString, style, shapes=shapes)


class _Strip:
    """The rows of one axis."""

    def __init__(self, drawn, one, profile, frame, view, gap, scale):
        self.drawn, self.one, self.profile, self.frame, self.view = drawn, one, profile, frame, view
        self.gap, self.scale = gap, scale
        self.first, self.last = profile.chainage[[0, -1]]
        self.cut = []

    def rows(self):
        return [
            self._frame(),
            *self._grid(),
            *self._ticks(),
            *map(self._line, ("flat", "level", "design")),
            self._built(),
            self._scale(),
        ]

    def _place(self, chainage, offset):
        """A line beside the axis; where it is on the map is found for all strips at once."""
        return self.one.axis, *np.broadcast_arrays(*np.atleast_1d(chainage, offset))

    def _row(self, part, paths, **more):
        row = {
            "axis": self.one.name,
            "part": part,
            "station": None,
            "chainage": None,
            "value": None,
            "label": None,
            "factor": self.frame.factor,
            "cut": 0,
            "paths": paths,
        }
        return {**row, **more}

    def _along(self, value):
        along = chainages_along(self.one.axis, self.first, self.last)
        return self._place(along, np.full(len(along), self.frame.offset(value)))

    def _across(self, chainage, low, high):
        return self._place(np.array([chainage, chainage]), np.array([low, high]))

    def _frame(self):
        """The ring: first the outer edge, in the direction that has the axis on its right, where the title stands."""
        outer, inner, turn = self._along(self.frame.high), self._along(self.frame.low), -self.frame.side
        ring = (np.concatenate([a[::turn], b[::-turn], a[::turn][:1]]) for a, b in zip(outer[1:], inner[1:]))
        return self._row("frame", [(self.one.axis, *ring)], label=self._title())

    def _grid(self):
        for k, value in enumerate(self.frame.grid.tolist()):
            yield self._row(
                "grid" if k else "datum",
                [self._along(value)],
                value=value / self.drawn.units.height,
                label=grid_text(value, self.frame.step, self.drawn.units.height_name, sign=True),
            )

    def _ticks(self):
        chainages = tick_chainages(self.first, self.last, self.drawn.units.chainage)
        low = self.frame.offset(self.frame.low) - self.frame.side * self.gap / 4.0
        high = self.frame.offset(self.frame.high)
        for chainage, text in zip(chainages.tolist(), self.drawn.notation.texts(chainages)):
            yield self._row(
                "tick",
                [self._across(chainage, low, high)],
                station=text,
                label=text,
                chainage=chainage / self.drawn.units.chainage,
            )

    def _shown(self, part, path):
        parts, cut = within(path, self.frame.low, self.frame.high)
        if cut:
            self.cut.append(part)
        return parts, int(cut)

    def _line(self, part):
        path = with_bends(self.one.axis, self.profile.path(part, self.view), even=True)
        parts, cut = self._shown(part, path)
        paths = [self._place(p.chainage, self.frame.offset(p.value)) for p in parts if len(p.chainage) > 1]
        return self._row(part, paths, cut=cut, label=_names()[part])

    def _built(self):
        path = with_bends(self.one.axis, self.profile.path("as-built", self.view))
        parts, cut = self._shown("as-built", path)
        # A station whose neighbours have no height, or lie outside the strip, still shows as a short piece.
        half = (self.last - self.first) / 400.0
        paths = []
        for p in parts:
            if np.ptp(p.chainage) < 1e-6:
                p = Path(p.chainage[0] + np.array([-half, half]), p.value[[0, 0]])
            paths.append(self._place(p.chainage, self.frame.offset(p.value)))
        return self._row("as-built", paths, cut=cut, label=_names()["as-built"])

    def _scale(self):
        at, tooth = self.last + 0.7 * self.gap, self.gap / 8.0
        low, high = self.frame.offset([self.frame.low, self.frame.low + self.scale])
        teeth = [self._place(np.array([at - tooth, at + tooth]), np.array([offset, offset])) for offset in (low, high)]
        return self._row(
            "scale",
            [self._across(at, low, high), *teeth],
            value=self.scale / self.drawn.units.height,
            label=grid_text(self.scale, self.frame.step, self.drawn.units.height_name),
        )

    def _title(self):
        if self.view == "level":
            return tr("{}: heights {} above level {}").format(
                self.one.name, times(self.frame.factor), height_with_unit(self.profile.level, self.drawn.units)
            )
        return tr("{}: heights {} from the design").format(self.one.name, times(self.frame.factor))


def _names():
    """What is written at each line."""
    return {"flat": tr("as if flat"), "level": tr("level"), "design": tr("design"), "as-built": tr("as built")}


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
            drawn.notation.text(strip.first),
        )
    )
    if drawn.record.height_system == "ellipsoidal":
        asked.warn(
            tr(
                "Axis '{}': the heights are ellipsoidal, so the level line follows the ellipsoid and is no water "
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
