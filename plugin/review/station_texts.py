"""The sentences and numbers of the profile."""

from html import escape

import numpy as np

from ...algorithms.language.decision_words import SUSPECTED, flag_of, line_doubt
from ...algorithms.language.height_text import amounts_for, full_height, side_text
from ...algorithms.language.number_text import number_text, times
from ...algorithms.language.shown_stations import shown_station
from ...algorithms.language.stored_words import capitalised
from ...algorithms.language.translation import tr
from ...algorithms.language.units import Units
from .layer_stations import OUT_OF_TOLERANCE


def view_sentence(profile, view, station_at, height_unit):
    """One sentence on what a view shows. ``station_at``: notation of a chainage in metres."""
    if not profile.has_design:
        return tr("This layer has no design heights: only the residuals are drawn.")
    if not profile.is_straight:
        return (
            tr("This design keeps to the level surface, level or at a constant grade, so it shows no curve against it.")
            if (view == "level")
            else tr("The design lies flat here; the level surface leaves it by the design's grade alone.")
        )
    effect = profile.curvature_effect
    at = int(np.nanargmax(np.abs(effect)))
    if view == "straight":
        return tr(
            "Seen along the straight design the line lies flat, and the level surface, where water would stand, is the "
            "curve."
        )
    words = tr("above") if effect[at] > 0 else tr("below")
    return tr(
        "Seen from the level surface, where water would stand, a straight design is a curve: at {} it lies {} {} the "
        "design with no curvature."
    ).format(station_at(profile.chainage[at]), amounts_for(height_unit).with_unit(abs(effect[at])), words)


def waiting_text(layer):
    """Why a layer under review is not shown yet."""
    return tr("Layer '{}' is shown as soon as the current run has ended.").format(layer.name())


def why_flagged(status, flag, moved=False, side="", in_line=""):
    """Why a station is in the list, in a word or two: what doubts its height before how it lies, which the residual's
    sign says too; then the same of the line. ``moved``: whether neighbours are flagged with it on one side;
    ``in_line``: what doubts its place in line, '' for nothing."""
    aside = {"left": tr("Left of the line"), "right": tr("Right of the line")}.get(side, "")
    aside = capitalised(in_line) if in_line else aside
    words = {"high": tr("Too high"), "low": tr("Too low"), "within": tr("Within now")}
    if flag_of(flag) == SUSPECTED:
        why = tr("Stretch that moved") if moved else tr("Suspected blunder")
    elif aside and status not in OUT_OF_TOLERANCE:
        return aside
    else:
        why = words.get(status, tr("Not flagged now"))
    return f"{why}, {aside[0].lower()}{aside[1:]}" if aside else why


def doubt_in_line(stations, row):
    """What doubts the place of a station in line, in a word or two; '' for nothing."""
    return line_doubt(moved=bool(stations.line_moved[row])) if stations.line_suspected[row] else ""


def _name(stations, row):
    return " ".join(filter(None, (str(stations.axis[row]), shown_station(str(stations.station[row])))))


def _judged(stations, row):
    """(the residual in words, the heights in words or '') of a station."""
    unit = stations.height_unit
    design, residual = stations.heights["design_h"][row], stations.heights["residual"][row]
    words = {"high": tr("too high"), "low": tr("too low"), "within": tr("within the tolerance")}
    told = tr("residual {}").format(amounts_for(unit).with_unit(residual, True))
    said = [told if np.isfinite(residual) else tr("no as-built height")]
    said += [words[stations.status[row]]] if stations.status[row] in words else []
    if stations.suspected[row]:
        said.append(tr("in a stretch that moved") if stations.moved[row] else tr("suspected blunder"))
    said += [*_beside_line(stations, row), *filter(None, [doubt_in_line(stations, row)])]
    heights = [tr("as-built {}").format(full_height(design + residual, unit))] if np.isfinite(design + residual) else []
    heights += [tr("design {}").format(full_height(design, unit))] if np.isfinite(design) else []
    return ", ".join(said), ", ".join(heights)


def _beside_line(stations, row):
    """How a station stands to the line, in words; [] where it was not judged."""
    lateral, unit = stations.heights["lateral"][row], stations.height_unit
    if not np.isfinite(lateral):
        return []
    words = {
        "left": tr("{} of the line, beyond its tolerance"),
        "right": tr("{} of the line, beyond its tolerance"),
        "within": tr("{} of the line, within its tolerance"),
    }
    text = side_text(lateral, Units(unit, unit))
    if text == side_text(0.0, Units(unit, unit)):
        return [tr("on the line")]
    return [words.get(stations.side[row], tr("{} of the line")).format(text)]


def station_story(stations, row):
    """One line on a station: where it is and how it lies."""
    return "   ·   ".join(filter(None, (_name(stations, row), *_judged(stations, row))))


def station_lines(stations, row):
    """The same in lines of rich text, for a narrow place."""
    parts = [capitalised(part) for part in _judged(stations, row) if part]
    return "<br>".join([f"<b>{escape(_name(stations, row))}</b>", *map(escape, parts)])


def _apart(value, unit):
    """'12.3 mm below' of a height in metres that is counted up."""
    return " ".join((amounts_for(unit).with_unit(abs(value)), tr("above") if value > 0 else tr("below")))


def what_if_story(line, row, height, station, unit):
    """One line on a station beside a line that is tried (a core LineThrough, ``row`` of its stations); ``height``: its
    as-built height, metres."""
    at = int(line.rows[row])
    gap, rule = line.gap[at], line.rule[at]
    parts = [
        tr("What if, {}").format(station),
        tr("straight line {} the line with no curvature (8-inch rule {})").format(
            _apart(gap, unit), amounts_for(unit).with_unit(abs(rule))
        ),
        tr("{} the level surface through A").format(_apart(line.straight[at] - line.level[at], unit)),
    ]
    if np.isfinite(height):
        parts.append(tr("as-built {} the straight line").format(_apart(height - line.straight[at], unit)))
    return "   ·   ".join(parts)


def what_if_sentence(line, points, station_at, unit, height_system, refusal=""):
    """What stands over the chart while a line is tried: that nothing is written, and what is asked or was found."""
    lead = tr("What if: nothing is written.")
    if refusal:
        return f"{lead} {refusal}"
    if not points:
        return f"{lead} " + tr("Click the first station. Ctrl and a click take the very point of the chart.")
    named = [
        tr("{} ({})").format(station_at(point.chainage), full_height(point.height, unit))
        for point in (line.controls if line is not None else points)
    ]
    if line is None:
        return f"{lead} " + tr("A straight line from {}: click the second station.").format(named[0])
    gap, at = line.greatest_gap
    text = tr(
        "Straight from A {} to B {}. Farthest from the line with no curvature at {}: {} it, 8-inch rule {}."
    ).format(*named, station_at(line.chainage[at]), _apart(gap, unit), amounts_for(unit).with_unit(abs(line.rule[at])))
    if height_system in ("", "unknown", "constant"):
        text += " " + tr("The geoid's slope and bending are not known here.")
    return f"{lead} {text}"


def factor_text(factor):
    """An exaggeration to three digits: 1.25, 12.5, 640, 12,300."""
    digits = max(2 - int(np.floor(np.log10(factor))), 0)
    rounded = round(factor, 2 - int(np.floor(np.log10(factor))))
    return number_text(rounded, digits) if rounded < 10000 else times(rounded)[2:]
