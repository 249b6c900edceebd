"""The sentences of a review report on the line: its verdict with its certainty, and heights and line together."""

import numpy as np

from ..language.height_text import side_text
from ..language.number_text import counted
from ..language.translation import tr
from .sentences import named_rows, stretch_sentences, sure_text, tolerance_text


def _stations(number):
    return counted(number, tr("station"), tr("stations"))


def departure_text(found, value):
    """A lateral departure in metres with unit and side, as fine as the report's of the line."""
    return side_text(value, found.reviewed.units, found.line.amounts)


def line_headline(found, structure):
    """The verdict on the line in one sentence; '' where none was judged."""
    if found.line is None:
        return ""
    v, line = found.line.verdict, found.reviewed.line
    if v.kind == "no tolerance":
        return tr(
            "No tolerance of the line was stated for {}, so there is no verdict on it: the lateral departures of {} "
            "are given as they are, RMS {}, greatest {} at {}."
        ).format(
            structure,
            _stations(found.line.all.number),
            found.line.amounts.with_unit(found.line.all.rms),
            departure_text(found, found.line.all.greatest),
            found.reviewed.named(found.line.all.greatest_at),
        )
    within, number = int(np.sum(line.side == "within")), int(v.judged.sum())
    texts = {
        "not within": tr("{} is not in line within {}: {}."),
        "not within, not certain": tr(
            "{} does not appear to be in line within {}, but the positions are not accurate enough to be certain: {}."
        ),
        "doubtful": tr(
            "Whether {} is in line within {} cannot be said yet: {}, and every position beyond it is doubted."
        ),
        "accepted": tr("{} is not in line within {} everywhere, but every departure has been accepted: {}."),
        "within, not certain": tr(
            "{} is in line within {} as measured, but some stations lie too near the limit to be certain: {}."
        ),
        "within": tr("{} is in line within {}: {}."),
    }
    held = tr("{} of {} are within it").format(within, _stations(number))
    return texts[v.kind].format(structure, tolerance_text(line.tolerance, found.line.amounts), held)


def line_sentences(found):
    """The sentences after that headline; [] where none was judged."""
    if found.line is None:
        return []
    v, lateral = found.line.verdict, found.reviewed.line.lateral

    def named(mask):
        return named_rows(found, np.flatnonzero(mask), lateral, lambda value: departure_text(found, value))

    doubted = tr("Beyond it, but doubted by decision and not counted against the structure: {}.")
    if np.any(v.doubted & found.lat_suspected):
        doubted = tr(
            "Beyond it, but doubted (suspected blunders in line, or by decision) and not counted against the "
            "structure: {}."
        )
    said = [
        words.format(named(mask))
        for mask, words in (
            (v.out, tr("Beyond the tolerance of the line: {}.")),
            (v.doubted, doubted),
            (v.accepted, tr("Beyond it and accepted by decision: {}.")),
        )
        if np.any(mask)
    ]
    return [*said, *line_stretches(found), *line_basis(found), _certainty(found)]


def line_stretches(found):
    """A sentence on each stretch of neighbours that stand beside the line on one side."""
    words = (tr("{} to {} stand right together, {} by up to {}"), tr("{} to {} stand left together, {} by up to {}"))
    return stretch_sentences(found, found.line.moved, found.reviewed.line.lateral, words, found.line.amounts)


def line_basis(found):
    """What the line is worth where it is the axis as drawn."""
    if "axis" not in found.line.kinds:
        return []
    return [tr("The line is the axis as drawn: it judges only where that axis was surveyed or designed.")]


def _certainty(found):
    v, line = found.line.verdict, found.reviewed.line
    if not np.any(v.judged):
        return tr("Certainty of the line: there is none to state without a tolerance.")
    if np.isnan(line.sd):
        return tr(
            "Certainty of the line: not known, since no accuracy of the positions was stated; the numbers are taken as "
            "they stand."
        )
    if not found.line.has_probability:
        return tr(
            "Certainty of the line: not known, since its tolerance is not recorded with the stations; the sides are "
            "taken as they stand."
        )
    text = tr("Certainty of the line: a lateral position has a standard deviation of {} ({}). ").format(
        found.line.amounts.with_unit(line.sd), line.sd_source
    )
    return text + sure_text(v) + _own_errors(found.line)


def _own_errors(line):
    if line.through_stations:
        return tr(" The errors of the stations that the line runs through are counted.")
    if set(line.kinds) & {"chord", "fitted"}:
        return tr(" The line comes from these stations; its own errors are not counted.")
    return tr(" The line is taken as exact.")


def together_sentence(found):
    """Heights and line together against the radial tolerance, with its certainty; '' without one."""
    both = found.line.together if found.line is not None else None
    if both is None or not np.any(both.verdict.judged):
        return ""
    v, amounts = both.verdict, found.amounts
    number = int(v.judged.sum())
    within = number - int(np.sum(v.out | v.doubted | v.accepted))
    held = tr("{} of {} with both are").format(within, _stations(number))
    greatest = tr("greatest {} at {}").format(
        amounts.with_unit(both.all.greatest), found.reviewed.named(both.all.greatest_at)
    )
    texts = {
        "not within": tr("Height and line together, √(v² + l²), are not within the radial tolerance of {}: {}, {}."),
        "not within, not certain": tr(
            "Height and line together, √(v² + l²), do not appear to be within the radial tolerance of {}, but are not "
            "accurate enough to be certain: {}, {}."
        ),
        "doubtful": tr(
            "Whether height and line together, √(v² + l²), are within the radial tolerance of {} cannot be said yet, "
            "since all beyond it are doubted: {}, {}."
        ),
        "accepted": tr(
            "Height and line together, √(v² + l²), are not within the radial tolerance of {} everywhere, but every "
            "departure has been accepted: {}, {}."
        ),
        "within, not certain": tr(
            "Height and line together, √(v² + l²), are within the radial tolerance of {} as measured, but some "
            "stations lie too near the limit to be certain: {}, {}."
        ),
        "within": tr("Height and line together, √(v² + l²), are within the radial tolerance of {}: {}, {}."),
    }
    text = texts[v.kind].format(amounts.with_unit(found.reviewed.line.radial), held, greatest)
    if np.any(v.out):
        text += tr(" Beyond it: {}.").format(
            named_rows(found, np.flatnonzero(v.out), both.departure, amounts.with_unit)
        )
    if both.has_probability:
        return f"{text} {sure_text(v)}"
    return text + tr(" Their certainty is not known, since the accuracy of heights and positions was not stated.")


def line_terms(found):
    """(term, meaning) of what the report says of the line; nothing where none was judged."""
    if found.line is None:
        return ()
    told = (
        (
            tr("lateral departure"),
            tr("distance of the station from the line in plan, + to the right looking up-chainage"),
        ),
        (tr("side"), tr("left or right: beyond the tolerance of the line; within: not beyond it")),
    )
    if found.line.together is None:
        return told
    return (
        *told,
        (tr("together"), tr("√(v² + l²) of residual v and lateral departure l, against the radial tolerance")),
    )
