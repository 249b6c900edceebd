"""The panels of strips beside axes: frame, grid, stations and scale bar, the same for heights and for the plan."""

from dataclasses import dataclass
from itertools import repeat

import numpy as np
from qgis.core import QgsWkbTypes

from ..boundary.derived_columns import words
from ..boundary.geometries import lines_shapes, placed_paths
from ..boundary.output_rows import OutputTable
from ..core.map_geometry import Path, ring, with_points, within_each
from ..core.segments import Segments, ranges
from ..core.strip import tick_chainages
from ..language.height_text import grid_text
from ..language.number_text import times
from ..language.shown_stations import shown_station
from ..styles.layer_kinds import StyleSpec

_COLUMNS = ("part", "station", "chainage", "value", "label", "cut")


@dataclass(frozen=True)
class _Lines:
    """Lines beside the axes: ``row`` (k,), the row of its block that each belongs to; ``rows``: Segments of their
    points; chainages and offsets of these, metres (n,)."""

    row: np.ndarray
    rows: Segments
    chainage: np.ndarray
    offset: np.ndarray


class StripPanels:
    """The rows of the strips of many axes (m). ``own``: indices of the axes among those drawn; ``first``, ``last``:
    chainages, metres; ``frame``: StripFrame of all; ``gap``: room for labels, metres; ``scale``: what the scale bars
    stand for, metres. ``cut`` (m,): whether what was built leaves the strip."""

    def __init__(self, drawn, own, first, last, frame, gap, scale):
        self.drawn, self.own, self.frame, self.gap, self.scale = drawn, own, frame, gap, scale
        self.first, self.last = first, last
        # Of lines that follow the axes through the strips.
        self.followed, self.chainage = drawn.on_map.along(own, first, last)
        self.every = np.arange(len(own))
        self._blocks = []

    def offset(self, strips, value):
        """Where values (n,) of strips (n,), metres, are drawn: offset from the axis, metres."""
        return self.frame.of(strips).offset(value)

    def grid_label(self, value):
        return grid_text(value, self.frame.step, self.drawn.units.height_name, sign=True)

    def name(self, strip):
        return self.drawn.names[self.own[strip]]

    def title(self, strip):
        raise NotImplementedError

    def fold(self, strip):
        """Whether the edges of a strip fold over themselves at a bend."""
        frame = self.frame.of(strip)
        edges = np.array([frame.offset(frame.low), frame.offset(frame.high)])
        which, first, last = (np.repeat(column[strip], 2) for column in (self.own, self.first, self.last))
        return bool(np.any(self.drawn.on_map.folds(which, edges, first, last)))

    # --- rows, block by block: in the table they stand strip by strip, in the order of the blocks

    def add(self, strips, part, lines, **more):
        """Add rows of some strips, (k,), rising. ``part``: of each, or of all; ``lines``: _Lines; ``more``: lists of
        the columns that they have."""
        columns = {name: more.get(name, [0 if name == "cut" else None] * len(strips)) for name in _COLUMNS}
        columns["part"] = [part] * len(strips) if isinstance(part, str) else part
        self._blocks.append((strips, columns, lines))

    def add_panels(self):
        """Frames, grids and stations; the lines and the scale bars come after them."""
        self._add_frames()
        self._add_grids()
        self._add_ticks()

    def along(self, strips, offset):
        """_Lines that follow their axes, one a row: of ``strips`` at ``offset`` metres, (k,)."""
        rows = Segments(self.followed.counts[strips])
        chainage = self.chainage[ranges(self.followed.first[strips], rows.counts)]
        return _Lines(np.arange(len(strips)), rows, chainage, offset[rows.which])

    @staticmethod
    def straight(row, chainage, offset):
        """_Lines from point to point: chainages and offsets, metres (k, 2)."""
        return _Lines(row, Segments(np.full(len(row), 2)), np.ravel(chainage), np.ravel(offset))

    def _add_frames(self):
        """The rings: first the outer edge, in the direction that has the axis on its right, where the title stands."""
        frame = self.frame
        rings = ring(self.followed.counts, frame.side < 0)
        chainage = self.chainage[self.followed.first[rings.line] + rings.point]
        high, low = frame.offset(frame.high)[rings.line], frame.offset(frame.low)[rings.line]
        lines = _Lines(self.every, rings.rows, chainage, np.where(rings.back, low, high))
        self.add(self.every, "frame", lines, label=[self.title(k) for k in self.every.tolist()])

    def _add_grids(self):
        rows, numbers = self.frame.grid
        values = self.frame.step * numbers
        labels = {value: self.grid_label(value) for value in np.unique(values).tolist()}
        self.add(
            rows.which,
            np.where(rows.places == 0, "datum", "grid").tolist(),
            self.along(rows.which, self.offset(rows.which, values)),
            value=(values / self.drawn.units.height).tolist(),
            label=[labels[value] for value in values.tolist()],
        )

    def _add_ticks(self):
        frame = self.frame
        rows, chainages = tick_chainages(self.first, self.last, self.drawn.units.chainage)
        low = frame.offset(frame.low) - frame.side * self.gap / 4.0
        ends = np.stack([low, frame.offset(frame.high)], axis=-1)
        texts = self.drawn.notation.texts(chainages)
        self.add(
            rows.which,
            "tick",
            self.straight(np.arange(len(chainages)), np.repeat(chainages, 2), ends[rows.which]),
            station=texts,
            label=[shown_station(text) for text in texts],
            chainage=(chainages / self.drawn.units.chainage).tolist(),
        )

    def within(self, rows, path):
        """The parts of a Path of each strip that lie inside it: see within_each."""
        return within_each(rows, path, self.frame.low, self.frame.high)

    def add_built(self, rows, chainage, value, label):
        """What was built, over the stations: chainages and values, metres (n,), of the strips, ``rows`` their
        Segments."""
        at = self.drawn.on_map.vertices(self.own, self.first, self.last)
        rows, chainage, (value,) = with_points(rows, chainage, [value], *at)
        strip, parts, path, self.cut = self.within(rows, Path(chainage, value))
        # A station whose neighbours have no value, or lie outside the strip, still shows as a short piece.
        short = path.chainage[parts.last] - path.chainage[parts.first] < 1e-6
        shown = Segments(np.where(short, 2, parts.counts))
        at, alone = parts.first[shown.which] + np.where(short[shown.which], 0, shown.places), short[shown.which]
        half = ((self.last - self.first) / 400.0)[strip[shown.which]]
        aside = np.where(shown.places == 0, -half, half)
        chainage = np.where(alone, path.chainage[at] + aside, path.chainage[at])
        offset = self.offset(strip[shown.which], path.value[at])
        self._add_labelled("as-built", _Lines(strip, shown, chainage, offset), self.cut, label)

    def _add_labelled(self, part, lines, cut, label):
        """A row of each strip, with the lines that belong to it, none or several."""
        number = len(self.every)
        self.add(self.every, part, lines, cut=cut.astype(int).tolist(), label=[label] * number)

    def add_lines(self, rows, chainage, values, labels):
        """Lines over the stations that follow their axes. ``values``, ``labels``: {part: values, metres (n,), or its
        text}."""
        rows, chainage, values = with_points(
            rows, chainage, [values[part] for part in labels], self.followed.which, self.chainage
        )
        for (part, label), value in zip(labels.items(), values):
            strip, parts, path, cut = self.within(rows, Path(chainage, value))
            long = parts.counts > 1
            points, kept = long[parts.which], Segments(parts.counts[long])
            offset = self.offset(strip[parts.which], path.value)[points]
            self._add_labelled(part, _Lines(strip[long], kept, path.chainage[points], offset), cut, label)

    def add_scales(self):
        at, tooth = self.last + 0.7 * self.gap, self.gap / 8.0
        low, high = self.frame.offset(self.frame.low), self.frame.offset(self.frame.low + self.scale)
        chainage = np.stack([at, at, at - tooth, at + tooth, at - tooth, at + tooth], axis=-1)
        offset = np.stack([low, high, low, low, high, high], axis=-1)
        number = len(self.every)
        self.add(
            self.every,
            "scale",
            self.straight(np.repeat(self.every, 3), chainage, offset),
            value=[self.scale / self.drawn.units.height] * number,
            label=[self.scale_label] * number,
        )

    @property
    def scale_label(self):
        return grid_text(self.scale, self.frame.step, self.drawn.units.height_name)

    # --- the table

    def columns(self):
        """Columns of all rows, and their shapes."""
        strips = np.concatenate([strip for strip, _, _ in self._blocks])
        order = np.argsort(strips, kind="stable")
        columns = {name: [] for name in _COLUMNS}
        for _, block, _ in self._blocks:
            for name in _COLUMNS:
                columns[name] += block[name]
        found = {name: list(map(column.__getitem__, order.tolist())) for name, column in columns.items()}
        own = self.own[strips[order]]
        return {"axis": words(self.drawn.names, own), **found}, self._shapes(order)

    def _shapes(self, order):
        before = np.cumsum([0, *(len(strip) for strip, _, _ in self._blocks)]).tolist()
        blocks = [(lines, strip, first) for (strip, _, lines), first in zip(self._blocks, before)]
        row = np.concatenate([lines.row + first for lines, _, first in blocks])
        strip = np.concatenate([strip[lines.row] for lines, strip, _ in blocks])
        counts = np.concatenate([lines.rows.counts for lines, _, _ in blocks])
        chainage, offset = (
            np.concatenate([getattr(lines, name) for lines, _, _ in blocks]) for name in ("chainage", "offset")
        )
        self._blocks = []
        # Where each row has come to stand, and with it its lines and their points.
        place = np.empty(len(order), int)
        place[order] = np.arange(len(order))
        lines = np.argsort(place[row], kind="stable")
        points = ranges((np.cumsum(counts) - counts)[lines], counts[lines])
        paths = Segments(counts[lines])
        lat, lon = self.drawn.on_map.beside(self.own[strip[lines]][paths.which], chainage[points], offset[points])
        placed = placed_paths(lat, lon, paths, self.drawn.crs)
        return lines_shapes(*placed, paths, np.bincount(place[row], minlength=len(order)))


def panel_table(drawn, panels, key, kind, name, factor, record, view=""):
    """OutputTable ``key`` of the strips of ``panels``, None for no strip; ``name``: of the layer, before the
    exaggeration."""
    if panels is None:
        columns, shapes, scale = {name: [] for name in ("axis", *_COLUMNS)}, None, ""
    else:
        (columns, shapes), scale = panels.columns(), panels.scale_label
    rows = len(columns["part"])
    columns = {name: columns[name] for name in ("axis", *_COLUMNS[:-1])} | {
        "factor": list(repeat(factor, rows)),
        "cut": columns["cut"],
    }
    title = " ".join(filter(None, (name, times(factor) if factor else "")))
    units = drawn.units
    style = StyleSpec(
        kind, title, units.height_name, units.chainage_name, None, record, exaggeration=factor, view=view, scale=scale
    )
    return OutputTable(key, columns, drawn.crs, QgsWkbTypes.Type.MultiLineString, style, shapes=shapes)
