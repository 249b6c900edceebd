"""Rows of the bars across the axis, of heights and of the line, and of the band; and what the log says of them."""

from dataclasses import dataclass
from typing import Callable

import numpy as np
from qgis.core import QgsWkbTypes

from ..boundary.derived_columns import Derived, words
from ..boundary.geometries import line_shapes, placed_paths, polygon_shapes
from ..boundary.output_rows import OutputTable
from ..core.exaggeration import LONGEST_SHARE, bar_factor, bar_lengths, round_number
from ..core.residuals import sides, statuses
from ..core.segments import Segments
from ..language.height_text import exact_text, side_text, small_text
from ..language.number_text import counted, listed, number_text, plain_text, times
from ..language.translation import tr
from ..styles.layer_kinds import StyleSpec

_MOST_TOLD = 5


@dataclass(frozen=True)
class BarScale:
    """How bars are drawn: ``factor``; ``longest`` bar on the ground, metres; ``side`` of those built high, 1 or -1."""

    factor: float
    longest: float
    side: int
    length: float


@dataclass(frozen=True)
class BarKind:
    """One kind of bars: output ``key``, ``style`` and ``title`` of its layer; names of the field drawn, of its
    tolerance in what is Drawn, and of the field with the verdict, which ``judged`` gives; ``text``: of one value."""

    key: str
    style: str
    title: str
    value: str
    limit: str
    verdict: str
    judged: Callable
    text: Callable

    def values(self, drawn):
        """Of all stations, metres (n,), NaN for none."""
        return getattr(drawn, self.value)

    def tolerances(self, drawn):
        """Of the axes, metres (m,), NaN for none."""
        return getattr(drawn, self.limit)


def residual_bars():
    """BarKind of heights."""

    def text(value, units):
        return small_text(value, units, True)

    title = tr("Residual bars")
    return BarKind("BARS", "deviation_bars", title, "residual", "tolerance", "status", statuses, text)


def lateral_bars():
    """BarKind of the line."""
    title = tr("Lateral bars")
    return BarKind("LINE_BARS", "lateral_bars", title, "lateral", "line_tolerance", "side", sides, side_text)


def bar_scale(drawn, kind, factor, longest, side):
    """BarScale from what the user gave, None for what is automatic."""
    length = float(drawn.extents.max()) or max(axis.length for axis in drawn.axes)
    if factor is None:
        tolerance = float(np.nan_to_num(kind.tolerances(drawn)).max())
        factor = bar_factor(kind.values(drawn), length, tolerance)
    return BarScale(factor, length * LONGEST_SHARE if longest is None else longest, side, length)


def reach(drawn, kind, scale, side):
    """How far bars of a kind reach from each axis to one side, metres (m,)."""
    values = kind.values(drawn)
    lengths, _ = bar_lengths(np.where(np.isfinite(values), values, 0.0), scale.factor, scale.longest)
    return np.maximum(np.maximum.reduceat(lengths * scale.side * side, drawn.rows.first), 0.0)


def band_reach(drawn, scale):
    """How far the band reaches from each axis, metres (m,)."""
    return np.nan_to_num(drawn.tolerance) * scale.factor


def bars_table(drawn, kind, scale, record):
    """OutputTable of one kind of bars: a line for each station that has a value."""
    rows = np.flatnonzero(np.isfinite(kind.values(drawn)))
    which, chainage, values = drawn.rows.which[rows], drawn.chainage[rows], kind.values(drawn)[rows]
    lengths, cut = bar_lengths(values, scale.factor, scale.longest)
    columns = {
        "axis": words(drawn.names, which),
        "station": Derived(len(rows), lambda part: drawn.notation.texts(chainage[part])),
        "chainage": chainage / drawn.units.chainage,
        kind.value: values / drawn.units.height,
        kind.verdict: kind.judged(values, kind.tolerances(drawn)[which]),
        "factor": np.full(len(rows), float(scale.factor)),
        "bar_m": np.abs(lengths),
        "cut": cut.astype(int),
    }
    ends = Segments(np.full(len(rows), 2))
    lat, lon = drawn.on_map.bars(which, chainage, lengths * scale.side)
    shapes = line_shapes(*placed_paths(lat.ravel(), lon.ravel(), ends, drawn.crs), ends)
    style = _style(kind.style, kind.title, drawn, scale, record, kind.tolerances(drawn))
    return OutputTable(kind.key, columns, drawn.crs, QgsWkbTypes.Type.LineString, style, shapes=shapes)


def band_table(drawn, scale, record, asked):
    """OutputTable BAND: a polygon for each axis that has a tolerance."""
    known = np.flatnonzero(drawn.tolerance > 0.0)
    first, last = drawn.chainage[drawn.rows.first[known]], drawn.chainage[drawn.rows.last[known]]
    # One station alone: a short piece of band about it.
    room = np.where(last - first < 1e-3, scale.length / 40.0, 0.0)
    first, last, half = first - room, last + room, drawn.tolerance[known] * scale.factor
    folded = drawn.on_map.folds(known, half, first, last) | drawn.on_map.folds(known, -half, first, last)
    for k in known[folded].tolist():
        asked.warn(
            tr(
                "Axis '{}': the tolerance band is wider than its bends allow and folds over itself; give a smaller "
                "EXAGGERATION."
            ).format(drawn.names[k])
        )
    if not len(known):
        asked.warn(tr("No tolerance is known, so BAND is empty; give TOLERANCE."), keys=("TOLERANCE",))
    columns = {
        "axis": words(drawn.names, known),
        "tolerance": drawn.tolerance[known] / drawn.units.height,
        "factor": np.full(len(known), float(scale.factor)),
    }
    rings, lat, lon = drawn.on_map.bands(known, first, last, half)
    shapes = polygon_shapes(*placed_paths(lat, lon, rings, drawn.crs), rings)
    style = _style("tolerance_band", tr("Tolerance band"), drawn, scale, record, drawn.tolerance)
    return OutputTable("BAND", columns, drawn.crs, QgsWkbTypes.Type.Polygon, style, shapes=shapes)


def _style(kind, name, drawn, scale, record, limits):
    known = limits[~np.isnan(limits)]
    return StyleSpec(
        kind,
        f"{name} {times(scale.factor)}",
        drawn.units.height_name,
        drawn.units.chainage_name,
        float(known.max()) / drawn.units.height if len(known) else None,
        record,
        exaggeration=scale.factor,
        high_side="right" if scale.side > 0 else "left",
    )


def tell_bars(drawn, kind, scale, asked):
    """Say the factor, what the longest bar stands for, and which bars are cut; return how many these are."""
    units, values = drawn.units, kind.values(drawn)
    known = np.flatnonzero(np.isfinite(values))
    if not len(known):
        asked.warn(tr("No station of layer '{}' has a residual, so there are no bars.").format(drawn.layer))
        return 0

    def told(row):
        return tr("{} at {} of axis '{}'").format(
            kind.text(float(values[row]), units),
            drawn.notation.shown(drawn.chainage[row]),
            drawn.names[drawn.rows.which[row]],
        )

    def greatest_first(rows):
        """The few greatest; of two that are alike the later by value, name and chainage."""
        order = np.argsort(-np.abs(values[rows]), kind="stable")
        least = np.abs(values[rows[order[:_MOST_TOLD]]]).min(initial=np.inf)
        rows = rows[np.abs(values[rows]) >= least].tolist()
        names, which = drawn.names, drawn.rows.which
        return sorted(rows, key=lambda k: (abs(values[k]), values[k], names[which[k]], drawn.chainage[k]), reverse=True)

    asked.say(_factor_sentence(drawn, kind, scale))
    beyond = np.abs(values[known]) * scale.factor > scale.longest * (1.0 + 1e-9)
    whole, cut = greatest_first(known[~beyond]), greatest_first(known[beyond])
    if whole:
        asked.say(
            tr("The longest bar drawn whole stands for {}; it is {} m long.").format(
                told(whole[0]), number_text(abs(values[whole[0]]) * scale.factor, 1)
            )
        )
    number = int(np.sum(beyond))
    if number:
        asked.warn(
            tr("{} cut at {} m, with a mark: {}. {} {} would show all whole.").format(
                counted(number, tr("bar is"), tr("bars are")),
                number_text(scale.longest, 0 if scale.longest >= 10 else 2),
                listed([told(row) for row in cut[:_MOST_TOLD]], _MOST_TOLD, number),
                "EXAGGERATION" if kind.key == "BARS" else "LINE_EXAGGERATION",
                plain_text(round_number(scale.longest / abs(values[cut[0]]))),
            )
        )
    return number


def _factor_sentence(drawn, kind, scale):
    ground = round_number(scale.length * LONGEST_SHARE)
    told = (
        times(scale.factor),
        number_text(ground, 0 if ground >= 1 else 3),
        exact_text(ground / scale.factor, drawn.units.height_name),
    )
    if kind.key != "BARS":
        words = tr("Lateral bars are dashed and drawn {}: {} m stand for {}. Each points to where its station stands.")
        return words.format(*told)
    high = tr("right") if scale.side > 0 else tr("left")
    return tr("Bars are drawn {} on the ground: {} m stand for {}. High is to the {}.").format(*told, high)
