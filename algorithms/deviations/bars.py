"""Rows of the residual bars and of the tolerance band, and what the log says of them."""

from dataclasses import dataclass

import numpy as np
from qgis.core import QgsWkbTypes

from ..boundary.geometries import line, placed_paths, polygon
from ..boundary.output_rows import OutputTable
from ..core.exaggeration import LONGEST_SHARE, bar_factor, bar_lengths, round_number
from ..core.map_geometry import band, bar_ends, folds
from ..core.residuals import statuses
from ..language.height_text import amounts_for, small_text
from ..language.number_text import counted, listed, number_text, times
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


def bar_scale(drawn, factor, longest, side):
    """BarScale from what the user gave, None for what is automatic."""
    length = max(one.extent for one in drawn.axes) or max(one.axis.length for one in drawn.axes)
    if factor is None:
        tolerance = max(one.tolerance or 0.0 for one in drawn.axes)
        factor = bar_factor(np.concatenate([one.residual for one in drawn.axes]), length, tolerance)
    return BarScale(factor, length * LONGEST_SHARE if longest is None else longest, side, length)


def reach(one, scale, side):
    """How far bars and band reach from the axis to one side, metres."""
    lengths, _ = bar_lengths(one.residual[np.isfinite(one.residual)], scale.factor, scale.longest)
    bars = np.max(lengths * scale.side * side, initial=0.0)
    return max(float(bars), (one.tolerance or 0.0) * scale.factor)


def bars_table(drawn, scale, record):
    """OutputTable BARS: a line for each station with a residual."""
    columns = {name: [] for name in ("axis", "station", "chainage", "residual", "status", "factor", "bar_m", "cut")}
    paths = []
    for one in drawn.axes:
        rows = np.flatnonzero(np.isfinite(one.residual))
        lengths, cut = bar_lengths(one.residual[rows], scale.factor, scale.longest)
        if len(rows):
            paths += list(zip(*bar_ends(one.axis, one.chainage[rows], lengths * scale.side)))
        columns["axis"] += [one.name] * len(rows)
        columns["station"] += drawn.notation.texts(one.chainage[rows])
        columns["chainage"] += (one.chainage[rows] / drawn.units.chainage).tolist()
        columns["residual"] += (one.residual[rows] / drawn.units.height).tolist()
        columns["status"] += statuses(one.residual[rows], one.tolerance).tolist()
        columns["factor"] += [scale.factor] * len(rows)
        columns["bar_m"] += np.abs(lengths).tolist()
        columns["cut"] += cut.astype(int).tolist()
    shapes = [line(path) for path in placed_paths(paths, drawn.crs)]
    style = _style("deviation_bars", tr("Residual bars"), drawn, scale, record)
    return OutputTable("BARS", columns, drawn.crs, QgsWkbTypes.Type.LineString, style, shapes=shapes)


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
    style = _style("tolerance_band", tr("Tolerance band"), drawn, scale, record)
    return OutputTable("BAND", columns, drawn.crs, QgsWkbTypes.Type.Polygon, style, shapes=shapes)


def _style(kind, name, drawn, scale, record):
    known = [one.tolerance for one in drawn.axes if one.tolerance is not None]
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


def tell_bars(drawn, scale, asked):
    """Say the factor, what the longest bar stands for, and which bars are cut."""
    units = drawn.units
    found = [
        (abs(residual), residual, one.name, chainage)
        for one in drawn.axes
        for residual, chainage in zip(one.residual.tolist(), one.chainage.tolist())
        if residual == residual
    ]
    if not found:
        asked.warn(tr("No station of layer '{}' has a residual, so there are no bars.").format(drawn.layer))
        return 0

    def told(item):
        return tr("{} at {} of axis '{}'").format(
            small_text(item[1], units, True), drawn.notation.text(item[3]), item[2]
        )

    ground = round_number(scale.length * LONGEST_SHARE)
    asked.say(
        tr("Bars are drawn {} on the ground: {} m stand for {}. High is to the {}.").format(
            times(scale.factor),
            number_text(ground, 0 if ground >= 1 else 3),
            amounts_for(units.height_name, ground / scale.factor).with_unit(ground / scale.factor),
            tr("right") if scale.side > 0 else tr("left"),
        )
    )
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
            tr("{} cut at {} m, with a mark: {}. EXAGGERATION {:g} would show all whole.").format(
                counted(len(cut), tr("bar is"), tr("bars are")),
                number_text(scale.longest, 0 if scale.longest >= 10 else 2),
                listed([told(item) for item in cut], _MOST_TOLD),
                round_number(scale.longest / cut[0][0]),
            )
        )
    return len(cut)
