"""The panel of a strip beside an axis: frame, grid, stations and scale bar, the same for heights and for the plan."""

from functools import cached_property

import numpy as np
from qgis.core import QgsWkbTypes

from ..boundary.geometries import lines, placed_paths
from ..boundary.output_rows import OutputTable
from ..core.map_geometry import Path, beside_each, chainages_along, with_bends, within
from ..core.strip import tick_chainages
from ..language.height_text import grid_text
from ..language.number_text import times
from ..language.shown_stations import shown_station
from ..styles.layer_kinds import StyleSpec


class StripPanel:
    """The rows of one axis' strip. ``frame``: its StripFrame; ``gap``: room for labels, metres; ``scale``: what the
    scale bar stands for, metres. ``cut``: names of lines that leave the strip."""

    def __init__(self, drawn, one, chainage, frame, gap, scale):
        self.drawn, self.one, self.frame, self.gap, self.scale = drawn, one, frame, gap, scale
        self.first, self.last = chainage[[0, -1]]
        self.cut = []

    def offset(self, value):
        """Where a value (metres) is drawn: offset from the axis, metres."""
        return self.frame.offset(value)

    def grid_label(self, value):
        return grid_text(value, self.frame.step, self.drawn.units.height_name, sign=True)

    def title(self):
        raise NotImplementedError

    def panel_rows(self):
        """Frame, grid and stations; the lines and the scale bar come after them."""
        return [self._frame(), *self._grid(), *self._ticks()]

    def place(self, chainage, offset):
        """A line beside the axis, chainages and offsets in metres (n,); where it is on the map is found for all strips
        at once."""
        return self.one.axis, chainage, offset

    def row(self, part, paths, **more):
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

    @cached_property
    def followed(self):
        """Chainages of a line that follows the axis through the strip, metres (m,)."""
        return chainages_along(self.one.axis, self.first, self.last)

    def along(self, offset):
        """A line at an offset from the axis, metres."""
        return self.place(self.followed, np.full(len(self.followed), offset))

    def across(self, chainage, low, high):
        return self.place(np.array([chainage, chainage]), np.array([low, high]))

    def _frame(self):
        """The ring: first the outer edge, in the direction that has the axis on its right, where the title stands."""
        edges, turn = (self.frame.high, self.frame.low), -self.frame.side
        outer, inner = (self.along(self.frame.offset(edge)) for edge in edges)
        ring = (np.concatenate([a[::turn], b[::-turn], a[::turn][:1]]) for a, b in zip(outer[1:], inner[1:]))
        return self.row("frame", [(self.one.axis, *ring)], label=self.title())

    def _grid(self):
        for k, value in enumerate(self.frame.grid.tolist()):
            yield self.row(
                "grid" if k else "datum",
                [self.along(self.offset(value))],
                value=value / self.drawn.units.height,
                label=self.grid_label(value),
            )

    def _ticks(self):
        chainages = tick_chainages(self.first, self.last, self.drawn.units.chainage)
        low = self.frame.offset(self.frame.low) - self.frame.side * self.gap / 4.0
        high = self.frame.offset(self.frame.high)
        for chainage, text in zip(chainages.tolist(), self.drawn.notation.texts(chainages)):
            yield self.row(
                "tick",
                [self.across(chainage, low, high)],
                station=text,
                label=shown_station(text),
                chainage=chainage / self.drawn.units.chainage,
            )

    def shown(self, part, path):
        """The parts of a Path that lie inside the strip, and 1 where some of it does not."""
        parts, cut = within(path, self.frame.low, self.frame.high)
        if cut:
            self.cut.append(part)
        return parts, int(cut)

    def built(self, path, label):
        """The row of what was built, a Path over the stations."""
        parts, cut = self.shown("as-built", with_bends(self.one.axis, path))
        # A station whose neighbours have no value, or lie outside the strip, still shows as a short piece.
        half = (self.last - self.first) / 400.0
        paths = []
        for p in parts:
            if np.ptp(p.chainage) < 1e-6:
                p = Path(p.chainage[0] + np.array([-half, half]), p.value[[0, 0]])
            paths.append(self.place(p.chainage, self.offset(p.value)))
        return self.row("as-built", paths, cut=cut, label=label)

    def scale_row(self):
        at, tooth = self.last + 0.7 * self.gap, self.gap / 8.0
        low, high = self.frame.offset([self.frame.low, self.frame.low + self.scale])
        teeth = [self.place(np.array([at - tooth, at + tooth]), np.array([offset, offset])) for offset in (low, high)]
        return self.row(
            "scale",
            [self.across(at, low, high), *teeth],
            value=self.scale / self.drawn.units.height,
            label=grid_text(self.scale, self.frame.step, self.drawn.units.height_name),
        )


def panel_table(drawn, rows, key, kind, name, factor, record, view=""):
    """OutputTable ``key`` of the rows of all axes; ``name``: of the layer, before the exaggeration."""
    names = ("axis", "part", "station", "chainage", "value", "label", "factor", "cut")
    columns = {name: [row[name] for row in rows] for name in names}
    placed = iter(placed_paths(beside_each([path for row in rows for path in row["paths"]]), drawn.crs))
    shapes = [lines([next(placed) for _ in row["paths"]]) for row in rows]
    title = " ".join(filter(None, (name, times(factor) if factor else "")))
    units, scale = drawn.units, next((row["label"] for row in rows if row["part"] == "scale"), "")
    style = StyleSpec(
        kind, title, units.height_name, units.chainage_name, None, record, exaggeration=factor, view=view, scale=scale
    )
    return OutputTable(key, columns, drawn.crs, QgsWkbTypes.Type.MultiLineString, style, shapes=shapes)
