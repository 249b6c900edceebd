"""The sentences in which the panel says what it understood: lists of (kind, sentence)."""

import numpy as np

from ...algorithms.core import data_check
from ...algorithms.core.station_notation import station_text
from ...algorithms.core.units import metres_per
from ...algorithms.entry.messages import ROW_REJECTED
from ...algorithms.language.height_text import amounts_for, full_height, height_text
from ...algorithms.language.number_text import counted, listed, number_text
from ...algorithms.language.shown_stations import shown_station, shown_stations
from ...algorithms.language.stored_words import capitalised, stored_text
from ...algorithms.language.translation import tr
from ...algorithms.language.units import UNIT_LABELS

_MOST = 4


def _length(metres):
    """A length as one reads it: 2.40 km, 620 m."""
    return f"{number_text(metres / 1000.0, 2)} km" if metres >= 1000.0 else f"{number_text(metres, 0)} m"


def _distance(metres, unit):
    """A distance along the axis in its unit."""
    value = metres / metres_per(unit)
    return f"{number_text(value, 1 if metres < 10 else 0)} {UNIT_LABELS[unit]}"


def rows_waiting(number):
    """A height source before the axis is known."""
    if number < 0:
        return tr("The rows are checked once the structure is known.")
    return tr("{}; they are checked once the structure is known.").format(counted(number, tr("row"), tr("rows")))


def many_lines(number):
    return tr("The layer has {} lines. Is it the structure? Each line counts as an axis.").format(number)


def structure(axes):
    """What is known of the axes."""
    form = tr("{}, {}") if len(axes) == 1 else tr("{} ({})")
    told = listed([form.format(axis.name, _length(axis.length)) for axis in axes], _MOST)
    return [("fact", tr("{}: {}.").format(counted(len(axes), tr("axis"), tr("axes")), told))]


def own_designs(axes):
    """Designs that the axis layer states itself, which go before the panel's."""
    own = list(dict.fromkeys(axis.design for axis in axes if axis.design))
    if not own:
        return []
    stated = sum(bool(axis.design) for axis in axes)
    who = (
        tr("The axis layer states the design itself")
        if stated == len(axes)
        else (tr("The axis layer states the design of {} of {} axes itself").format(stated, len(axes)))
    )
    return [
        (
            "fact",
            tr(
                "{} ({}), with its controls and its tolerance where they are filled in. That takes precedence over "
                "the answers here."
            ).format(who, listed(stored_text("design", design) for design in own)),
        )
    ]


def heights(looks, settings, layer):
    """How many, where, at what spacing, and what the heights suggest."""
    unit = settings.height_unit
    every = np.concatenate([look.heights for look in looks]) if looks else np.array([])
    known = every[np.isfinite(every)]
    total = counted(len(every), tr("station"), tr("stations"))
    found = []
    if len(known):
        found.append(
            (
                "fact",
                tr("{} on {}, heights from {} to {}.").format(
                    total,
                    counted(len(looks), tr("axis"), tr("axes")),
                    height_text(known.min(), unit),
                    full_height(known.max(), unit),
                ),
            )
        )
    else:
        found.append(
            ("problem", tr("{} on {}, none with a height.").format(total, counted(len(looks), tr("axis"), tr("axes"))))
        )
    for look in looks[:_MOST]:
        found += _of_axis(look, settings, len(looks) > 1)
    if len(looks) > _MOST:
        found.append(("fact", tr("{} more axes.").format(len(looks) - _MOST)))
    return found


def _of_axis(look, settings, several):
    """One sentence on what there is, one on what is missing or stands out."""
    unit = settings.chainage_unit or settings.height_unit
    name = tr("{}: ").format(look.name) if several else ""
    first, last = shown_station(look.stations[0]), shown_station(look.stations[-1])
    told = tr("{} from {} to {}").format(name + counted(len(look.stations), tr("station"), tr("stations")), first, last)
    if not several:
        # How many there are stands in the sentence before.
        told = tr("From {} to {}").format(first, last)
    if np.isfinite(look.spacing.step):
        told += tr(", usually every {}").format(_distance(look.spacing.step, unit))
    kind, suggested = _shape(look, settings)
    found = [(kind, told + (". " + suggested if suggested else "."))]
    doubts = _doubts(look, unit)
    if doubts:
        text = name + "; ".join(doubts) + "."
        found.append(("doubt", capitalised(text) if not several else text))
    return found


def _doubts(look, unit):
    stations = shown_stations(look.stations)
    empty = [text for text, height in zip(stations, look.heights) if not np.isfinite(height)]
    found = []
    if empty and len(empty) < len(look.stations):
        found.append(tr("no height at {}").format(listed(empty, _MOST)))
    if look.spacing.gaps:
        per = metres_per(unit)
        gaps = [
            tr("{} to {}").format(*(shown_station(station_text(end / per, unit)) for end in gap))
            for gap in look.spacing.gaps
        ]
        word = tr("gap") if len(gaps) == 1 else tr("gaps")
        found.append(tr("{} between stations: {}").format(word, listed(gaps, _MOST)))
    if look.twice:
        found.append(tr("there more than once, all kept: {}").format(listed(shown_stations(look.twice), _MOST)))
    if look.shape.outstanding:
        found.append(
            tr("heights that do not fit the others: {}").format(
                listed([stations[k] for k in look.shape.outstanding], _MOST)
            )
        )
    return found


def _shape(look, settings):
    """(kind, sentence) on the shape that the heights suggest."""
    shape, unit = look.shape, settings.height_unit
    if shape.suggests == "few":
        return "fact", tr("Too few heights to suggest a shape.") if np.isfinite(shape.range) else ""
    varying = tr("Heights vary by {} over {}").format(amounts_for(unit).with_unit(shape.range), _length(shape.length))
    endings = {
        "straight": tr(", as those of a straight line would."),
        "level": tr(", along the level surface, as water would."),
        "undecided": tr("; too short or too rough to tell straight from level."),
        "between": tr(" and bend {} times as much as a straight line would, neither straight nor level."),
        "feet": tr(" and bend {} times as much as a straight line would. Are they in feet?"),
    }
    kind = "doubt" if shape.suggests in ("between", "feet") else "fact"
    return kind, varying + endings[shape.suggests].format(number_text(shape.factor, 2))


def rejected(said):
    """Rows that a list's run will not place, by its Messages: headings and remarks among the rows are none of them."""
    rows = [one.about for one in said if one.code == ROW_REJECTED]
    if not rows:
        return []
    number = sum(count for count, _, _ in rows)
    named = [(row, reason) for count, row, reason in rows if count == 1 and reason][:_MOST]
    first = "; ".join(tr("row {}: {}").format(row, reason.rstrip(".")) for row, reason in named)
    return [("doubt", tr("{} cannot be placed: {}.").format(counted(number, tr("row"), tr("rows")), first))]


def unit_doubts(looks, axes, settings):
    """{answer: sentence} where lengths, or the way stations are written, speak against the units chosen."""
    unit = settings.chainage_unit or settings.height_unit
    answer = "chainage_unit"
    lengths = {axis.name: axis.length for axis in axes}
    for look in looks:
        span = float(np.ptp(look.chainages))
        wrong = data_check.unit_by_length(span, lengths.get(look.name, 0.0))
        if wrong and (wrong == "metre") != (unit == "metre"):
            word = tr("feet") if wrong == "foot" else tr("metres")
            return {
                answer: tr("The stations run over {} of an axis of {}: they may be in {}.").format(
                    _length(span), _length(lengths[look.name]), word
                )
            }
    return {}
