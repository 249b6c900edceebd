"""The sentences and numbers of the profile."""

from html import escape

import numpy as np

from ...algorithms.core.units import METRES
from ...algorithms.language.decision_words import SUSPECTED, flag_of
from ...algorithms.language.number_text import number_text, signed_text
from ...algorithms.language.translation import tr
from ...algorithms.language.units import UNIT_LABELS

MILLIMETRE = 1e-3


def small_unit(height_unit):
    """(metres in the unit of residuals, its label): millimetres where heights are metric, else the unit of heights."""
    return (MILLIMETRE, "mm") if height_unit == "metre" else (METRES[height_unit], UNIT_LABELS[height_unit])


def small(value, height_unit, sign=True):
    """A residual in metres as a person reads it: '−18.2 mm', '+0.065 ft'; '' where there is none."""
    if not np.isfinite(value):
        return ""
    metres, label = small_unit(height_unit)
    return (signed_text if sign else number_text)(float(value) / metres, 1 if label == "mm" else 4) + " " + label


def height(value, height_unit):
    """A height in metres in its unit with the unit behind it; '' where there is none."""
    if not np.isfinite(value):
        return ""
    return number_text(float(value) / METRES[height_unit], 4) + " " + UNIT_LABELS[height_unit]


def small_height(value, height_unit):
    """The size of a height difference for a sentence, to a thousandth of its unit."""
    return number_text(abs(float(value)) / METRES[height_unit], 3) + " " + UNIT_LABELS[height_unit]


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
        "Seen from the level surface, where water would stand, a straight design is a curve: at {} it lies {} {} what "
        "a flat Earth would give."
    ).format(station_at(profile.chainage[at]), small_height(effect[at], height_unit), words)


def why_flagged(status, flag):
    """Why a station is in the list, in a word or two."""
    parts = {"high": tr("Too high"), "low": tr("Too low")}
    words = [parts[status]] if status in parts else []
    if flag_of(flag) == SUSPECTED:
        words.append(tr("suspected blunder"))
    if not words:
        return tr("Within now") if status == "within" else tr("Not flagged now")
    text = ", ".join(words)
    return text[0].upper() + text[1:]


def _name(stations, row):
    return " ".join(filter(None, (str(stations.axis[row]), str(stations.station[row]))))


def _judged(stations, row):
    """(the residual in words, the heights in words or '') of a station."""
    unit = stations.height_unit
    design, residual = stations.heights["design_h"][row], stations.heights["residual"][row]
    words = {"high": tr("too high"), "low": tr("too low"), "within": tr("within the tolerance")}
    said = [tr("residual {}").format(small(residual, unit)) if np.isfinite(residual) else tr("no as-built height")]
    said += [words[stations.status[row]]] if stations.status[row] in words else []
    said += [tr("suspected blunder")] if stations.suspected[row] else []
    heights = [tr("as-built {}").format(height(design + residual, unit))] if np.isfinite(design + residual) else []
    heights += [tr("design {}").format(height(design, unit))] if np.isfinite(design) else []
    return ", ".join(said), ", ".join(heights)


def station_story(stations, row):
    """One line on a station: where it is and how it lies."""
    return "   ·   ".join(filter(None, (_name(stations, row), *_judged(stations, row))))


def station_lines(stations, row):
    """The same in lines of rich text, for a narrow place."""
    parts = [part[0].upper() + part[1:] for part in _judged(stations, row) if part]
    return "<br>".join([f"<b>{escape(_name(stations, row))}</b>", *map(escape, parts)])


def factor_text(factor):
    """An exaggeration to three digits: 1.25, 12.5, 640, 12,300."""
    digits = max(2 - int(np.floor(np.log10(factor))), 0)
    rounded = round(factor, 2 - int(np.floor(np.log10(factor))))
    return number_text(rounded, digits) if rounded < 10000 else f"{rounded:,.0f}"
