"""Rows of the bars across the axis, of heights and of the line, and of the band; and what the log says of them."""

from dataclasses import dataclass
from typing import Callable

import numpy as np
from qgis.core import QgsWkbTypes

from ..boundary.geometries import line, placed_paths, polygon
from ..boundary.output_rows import OutputTable
from ..core.exaggeration import LONGEST_SHARE, bar_factor, bar_lengths, round_number
from ..core.map_geometry import band, bars_each, folds
from ..core.residuals import sides, statuses
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
    tolerance in a DrawnAxis, and of the field with the verdict, which ``judged`` gives; ``text``: of one value."""

    key: str
    style: str
    title: str
    value: str
    limit: str
    verdict: str
    judged: Callable
    text: Callable

    def values(self, one):
        return getattr(one, self.value)

    def tolerance(self, one):
        return getattr(one, self.limit)


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
    length = max(one.extent for one in drawn.axes) or max(one.axis.length for one in drawn.axes)
    if factor is None:
        tolerance = max(kind.tolerance(one) or 0.0 for one in drawn.axes)
        factor = bar_factor(np.concatenate([kind.values(one) for one in drawn.axes]), length, tolerance)
    return BarScale(factor, length * LONGEST_SHARE if longest is None else longest, side, length)


def reach(one, kind, scale, side):
    """How far bars of a kind reach from the axis to one side, metres."""
    values = kind.values(one)
    lengths, _ = bar_lengths(values[np.isfinite(values)], scale.factor, scale.longest)
    return float(np.max(lengths * scale.side * side, initial=0.0))


def band_reach(one, scale):
    """How far the band reaches from the axis, metres."""
    return (one.tolerance or 0.0) * scale.factor


def bars_table(drawn, kind, scale, record):
    """OutputTable of one kind of bars: a line for each station that has a value."""
    names = ("axis", "station", "chainage", kind.value, kind.verdict, "factor", "bar_m", "cut")
    columns = {name: [] for name in names}
    bars = []
    for one in drawn.axes:
        values = kind.values(one)
        rows = np.flatnonzero(np.isfinite(values))
        lengths, cut = bar_lengths(values[rows], scale.factor, scale.longest)
        if len(rows):
            bars.append((one.axis, one.chainage[rows], lengths * scale.side))
        columns["axis"] += [one.name] * len(rows)
        columns["station"] += drawn.notation.texts(one.chainage[rows])
        columns["chainage"] += (one.chainage[rows] / drawn.units.chainage).tolist()
        columns[kind.value] += (values[rows] / drawn.units.height).tolist()
        columns[kind.verdict] += kind.judged(values[rows], kind.tolerance(one)).tolist()
        columns["factor"] += [scale.factor] * len(rows)
        columns["bar_m"] += np.abs(lengths).tolist()
        columns["cut"] += cut.astype(int).tolist()
    paths = [path for ends in bars_each(bars) for path in zip(*ends)]
    shapes = [line(path) for path in placed_paths(paths, drawn.crs)]
    limits = [kind.tolerance(one) for one in drawn.axes]
    style = _style(kind.style, kind.title, drawn, scale, record, limits)
    return OutputTable(kind.key, columns, drawn.crs, QgsWkbTypes.Type.LineString, style, shapes=shapes)


def band_table(drawn, scale, record, asked):
    """OutputTable BAND: a polygon for each axis that has a tolerance."""
    columns, paths = {"axis": [], "tolerance": [], "factor": []}, []
    for one in drawn.axes:
        if not one.tolerance:
            continue
        first, last = one.chainage[[0, -1]]
        if last - first < 1e-3:
            # One station alone: a short piece of band about it.
            first, last = first - scale.length / 40.0, last + scale.length / 40.0
        half = one.tolerance * scale.factor
        if folds(one.axis, half, first, last) or folds(one.axis, -half, first, last):
            asked.warn(
                tr(
                    "Axis '{}': the tolerance band is wider than its bends allow and folds over itself; give a smaller "
                    "EXAGGERATION."
                ).format(one.name)
            )
        paths.append(band(one.axis, first, last, half))
        columns["axis"].append(one.name)
        columns["tolerance"].append(one.tolerance / drawn.units.height)
        columns["factor"].append(scale.factor)
    if not paths:
        asked.warn(tr("No tolerance is known, so BAND is empty; give TOLERANCE."), keys=("TOLERANCE",))
    shapes = [polygon(path) for path in placed_paths(paths, drawn.crs)]
    limits = [one.tolerance for one in drawn.axes]
    style = _style("tolerance_band", tr("Tolerance band"), drawn, scale, record, limits)
    return OutputTable("BAND", columns, drawn.crs, QgsWkbTypes.Type.Polygon, style, shapes=shapes)


def _style(kind, name, drawn, scale, record, limits):
    known = [limit for limit in limits if limit is not None]
    return StyleSpec(
        kind,
        f"{name} {times(scale.factor)}",
        drawn.units.height_name,
        drawn.units.chainage_name,
        max(known) / drawn.units.height if known else None,
        record,
        exaggeration=scale.factor,
        high_side="right" if scale.side > 0 else "left",
    )


def tell_bars(drawn, kind, scale, asked):
    """Say the factor, what the longest bar stands for, and which bars are cut; return how many these are."""
    units = drawn.units
    found = [
        (abs(value), value, one.name, chainage)
        for one in drawn.axes
        for value, chainage in zip(kind.values(one).tolist(), one.chainage.tolist())
        if value == value
    ]
    if not found:
        asked.warn(tr("No station of layer '{}' has a residual, so there are no bars.").format(drawn.layer))
        return 0

    def told(item):
        return tr("{} at {} of axis '{}'").format(kind.text(item[1], units), drawn.notation.shown(item[3]), item[2])

    asked.say(_factor_sentence(drawn, kind, scale))
    whole = [item for item in found if item[0] * scale.factor <= scale.longest * (1.0 + 1e-9)]
    cut = sorted((item for item in found if item[0] * scale.factor > scale.longest * (1.0 + 1e-9)), reverse=True)
    if whole:
        longest = max(whole)
        asked.say(
            tr("The longest bar drawn whole stands for {}; it is {} m long.").format(
                told(longest), number_text(longest[0] * scale.factor, 1)
            )
        )
    if cut:
        asked.warn(
            tr("{} cut at {} m, with a mark: {}. {} {} would show all whole.").format(
                counted(len(cut), tr("bar is"), tr("bars are")),
                number_text(scale.longest, 0 if scale.longest >= 10 else 2),
                listed([told(item) for item in cut], _MOST_TOLD),
                "EXAGGERATION" if kind.key == "BARS" else "LINE_EXAGGERATION",
                plain_text(round_number(scale.longest / cut[0][0])),
            )
        )
    return len(cut)


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
