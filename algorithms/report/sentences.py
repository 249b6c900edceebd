"""The sentences of a review report: the verdict with its certainty, the accuracy, the meaning of the terms."""

import numpy as np

from ..core.conformance import BIAS_LIMIT, FEWEST
from ..language.number_text import counted, number_text
from ..language.translation import tr

_MOST = 6


def _stations(number):
    return counted(number, tr("station"), tr("stations"))


def tolerance_text(tolerance, amounts):
    """'±10.0 mm', or that each axis has its own; ``tolerance``: of each station, metres (n,), NaN for none."""
    known = np.unique(np.round(tolerance[np.isfinite(tolerance)], 9))
    if not len(known):
        return tr("the tolerance of its run (not recorded)")
    if len(known) == 1:
        return tr("the tolerance of ±{}").format(amounts.with_unit(float(known[0])))
    low, high = amounts.span(float(known[0]), float(known[-1]))
    return tr("the tolerances of its axes, ±{} to ±{}").format(low, high)


def named_rows(found, rows, values=None, text=None):
    """'1+650 (−21.0 mm) and 1+700 (…) of left rail; 1+150 (…) of right rail' for a sentence, the greatest first.
    ``values``: metres (n,), the residuals if not told; ``text``: of one of them."""
    one = found.reviewed
    values = one.residual if values is None else values
    text = text or (lambda value: found.amounts.with_unit(value, True))
    rows = sorted(np.asarray(rows, int).tolist(), key=lambda row: -abs(np.nan_to_num(values[row])))
    shown, by_axis = rows[:_MOST], {}
    for row in shown:
        size = f" ({text(values[row])})" if np.isfinite(values[row]) else ""
        by_axis.setdefault(one.axis[row], []).append(one.named(row, alone=True) + size)
    parts = [
        ", ".join(texts) + (tr(" of {}").format(axis) if axis and len(one.axes) > 1 else "")
        for axis, texts in by_axis.items()
    ]
    return "; ".join(parts) + (tr(" and {} more").format(len(rows) - len(shown)) if len(rows) > len(shown) else "")


def headline(found, structure):
    """The verdict in one sentence."""
    v, number = found.verdict, int(found.verdict.judged.sum())
    within = int(np.sum(found.reviewed.status == "within"))
    if v.kind == "nothing to judge":
        return tr("Nothing can be said about {}: no station has an as-built height.").format(structure)
    if v.kind == "no tolerance":
        return tr(
            "No tolerance was stated for {}, so there is no verdict: the residuals of {} are given as they are, RMS "
            "{}, greatest {} at {}."
        ).format(
            structure,
            _stations(found.all.number),
            *found.amounts.alike((found.all.rms, found.all.greatest), (False, True)),
            found.reviewed.named(found.all.greatest_at),
        )
    held = tr("{} of {} with a height are within it").format(within, _stations(number))
    texts = {
        "not within": tr("{} was not built to its design within {}: {}."),
        "not within, not certain": tr(
            "{} does not appear to be built to its design within {}, but the heights are not accurate enough to be "
            "certain: {}."
        ),
        "doubtful": tr(
            "Whether {} was built to its design within {} cannot be said yet: {}, and every height beyond it is "
            "doubted."
        ),
        "accepted": tr(
            "{} was not built to its design within {} everywhere, but every departure has been accepted: {}."
        ),
        "within, not certain": tr(
            "{} is within {} as measured, but some stations lie too near the limit to be certain: {}."
        ),
        "within": tr("{} was built to its design within {}: {}."),
    }
    return texts[v.kind].format(structure, tolerance_text(found.reviewed.tolerance, found.amounts), held)


def verdict_sentences(found):
    """The sentences after the headline: what was found, what is doubted, how certain it is."""
    v = found.verdict
    said = []
    if np.any(v.out):
        said.append(tr("Beyond the tolerance: {}.").format(named_rows(found, np.flatnonzero(v.out))))
    said += moved_sentences(found)
    if np.any(v.doubted):
        said.append(
            (
                tr(
                    "Beyond it too, but doubted (suspected blunders, or by decision) and not counted against the "
                    "structure: {}."
                )
                if said
                else tr(
                    "Beyond the tolerance, but doubted (suspected blunders, or by decision) and not counted against "
                    "the structure: {}."
                )
            ).format(named_rows(found, np.flatnonzero(v.doubted)))
        )
    if np.any(v.accepted):
        said.append(
            tr("Beyond the tolerance and accepted by decision: {}.").format(
                named_rows(found, np.flatnonzero(v.accepted))
            )
        )
    said += _not_judged(found)
    said.append(certainty(found))
    return said


def moved_sentences(found):
    """What is said of the stretches that have moved: one sentence each, or one for all where they are many."""
    words = (tr("{} to {} lie high together, {} by up to {}"), tr("{} to {} lie low together, {} by up to {}"))
    return stretch_sentences(found, found.moved, found.reviewed.residual, words, found.amounts)


def stretch_sentences(found, moved, values, words, amounts):
    """The same of any ``values``, metres (n,); ``words``: for those above zero and below."""
    one = found.reviewed
    reason = tr("neighbours that depart to one side are a movement of the structure rather than errors of reading")
    told = []
    for rows in moved:
        greatest = float(values[rows][np.argmax(np.abs(values[rows]))])
        above, below = words
        size = amounts.with_unit(abs(greatest))
        told.append(
            (above if greatest > 0 else below).format(
                one.named(rows[0], alone=True), one.named(rows[-1]), _stations(len(rows)), size
            )
        )
    if len(told) > _MOST:
        return [tr("{} stretches have moved: {}; {}.").format(len(told), "; ".join(told), reason)]
    return [f"{text}: {reason}." for text in told]


def _not_judged(found):
    one = found.reviewed
    without, off = np.flatnonzero(one.status == "no height"), int(np.sum(one.status == "off axis"))
    said = []
    if len(without):
        said.append(
            tr("No as-built height, so that nothing is known of them: {}.").format(
                named_rows(found, without) if len(without) <= _MOST else _stations(len(without))
            )
        )
    if off:
        said.append(tr("Off axis and not reviewed: {}.").format(_stations(off)))
    return said


def deviation_text(found):
    """'3.0 mm', or their range; '' where none is known."""
    sd = found.reviewed.sd[np.isfinite(found.reviewed.sd)]
    if not len(sd):
        return ""
    low, high = float(sd.min()), float(sd.max())
    if high - low < 1e-7:
        return found.amounts.with_unit(low)
    return tr("{} to {}").format(*found.amounts.span(low, high))


def certainty(found):
    """How certain the verdict is, in words."""
    v, deviation = found.verdict, deviation_text(found)
    if not np.any(v.judged):
        return tr("Certainty: there is none to state without a tolerance.") if np.any(found.known) else ""
    if not deviation:
        return tr(
            "Certainty: not known, since no accuracy of the heights was stated; the numbers are taken as they stand."
        )
    if not found.has_probability:
        return tr(
            "Certainty: not known, since the tolerance is not recorded with the stations; the statuses are taken as "
            "they stand."
        )
    text = tr("Certainty: a height has a standard deviation of {} ({}). ").format(deviation, found.reviewed.sd_source)
    text += sure_text(v)
    if found.through_stations:
        return text + tr(" The errors of the stations that the design goes through are counted.")
    if "own heights" in found.accuracy.against:
        return text + tr(" The design comes from these heights; its own errors are not counted.")
    return text + tr(" The design is taken as exact.")


def sure_text(v):
    """Of how many stations a Verdict with probabilities is certain."""
    text = tr("Each taken alone, {} are within with at least 95 % probability and {} beyond").format(
        _stations(int(v.sure_in.sum())), int(v.sure_out.sum()) or tr("none")
    )
    unsure = int(v.unsure.sum())
    return text + (
        tr("; {} too near the limit to tell.").format(counted(unsure, tr("lies"), tr("lie"))) if unsure else "."
    )


def system_warning(found):
    """What an unknown or constant undulation leaves out of a straight design; '' where nothing is."""
    designs = {axis.get("design") for axis in found.reviewed.record.known_axes()}
    straight = bool(designs - {"level", "grade", None})
    if not straight or found.reviewed.record.height_system not in ("unknown", "constant"):
        return ""
    return tr(
        "The geoid's slope and bending were not known to this run. A slope of 5 seconds of arc, which is common, "
        "changes the heights of a straight line by 73 mm in 3 km; where the controls do not take it up, it is in the "
        "residuals."
    )


def accuracy_sentence(found):
    """The 95 % accuracy, or why it is not given."""
    accuracy, amounts = found.accuracy, found.amounts
    number = found.believed.number
    if not number:
        return tr("Accuracy at 95 %: not given, since every height is doubted.")
    why = {
        "few": tr("only {} are left, and {} are needed").format(_stations(number), FEWEST),
        "bias": tr("the mean is not zero: it lies {} of its standard errors from it, and {} are allowed").format(
            number_text(accuracy.standard_errors, 1), number_text(BIAS_LIMIT, 0)
        ),
        "not normal": tr("the residuals are not normally distributed (Anderson and Darling's test at 5 %)"),
        "own heights": tr("the design was taken from the heights themselves, so they do not check it independently"),
    }
    set_aside = int(np.sum(found.doubt & found.known))
    aside = tr(" {} with a doubted height left out.").format(_stations(set_aside)) if set_aside else ""
    rule = tr(
        "(1.96 times the RMS; FGDC-STD-007.3-1998: at least 20 points, no blunders, no bias, normal errors, "
        "independent of the design)"
    )
    if accuracy.holds:
        value = amounts.with_unit(accuracy.value)
        return tr("Accuracy at 95 %: {} {}. Its conditions hold.").format(value, rule) + aside
    reasons = "; ".join(why[key] for key in accuracy.against)
    return tr("Accuracy at 95 %: not given {}, since {}.").format(rule, reasons) + aside


def glossary():
    """(term, meaning) of what the report says, with the signs."""
    return (
        (tr("as-built height"), tr("the surveyed height, in the height system and unit of the input")),
        (
            tr("design height"),
            tr("the height the station should have under the stated design, in the same system and unit"),
        ),
        (tr("residual"), tr("as-built minus design; + is built high, − is built low")),
        (tr("adjustment"), tr("the residual with the other sign; + is raise, − is lower")),
        (
            tr("curvature effect"),
            tr(
                "design height minus the design height with no curvature; a chord lies below the level surface "
                "between its ends (−), a tangent rises above it on both sides of its tangent point (+)"
            ),
        ),
        (
            tr("chainage"),
            tr("distance along the axis from its origin, at the chainage height; also its notation, 12+50 or 1+250"),
        ),
        (tr("offset"), tr("distance from the axis, + to the right looking up-chainage")),
        (
            tr("w"),
            tr(
                "residual of the fit over its standard deviation; beyond 3.29 a blunder is suspected (probability of "
                "a false alarm 0.1 %)"
            ),
        ),
        (
            tr("probability within tolerance"),
            tr(
                "probability that the true height is within the tolerance, from the residual and its standard "
                "deviation (JCGM 106:2012)"
            ),
        ),
        (tr("tolerance"), tr("greatest residual, up or down, that counts as within")),
        (tr("RMS"), tr("square root of the mean of the squared residuals")),
        (tr("undulation"), tr("height of the geoid above the ellipsoid, h = H + N")),
        (tr("curvature factor"), tr("1 for straight in space, 0 for a constant slope above the level surface")),
    )


def caution_texts():
    return (
        tr(
            "For review, not for setting out: nothing is raised, lowered or rebuilt from this report without a "
            "licensed surveyor or engineer, and field work follows local codes, which prevail over it."
        ),
        tr(
            "The residuals hold for the design, the controls, the height system and the units named here, and for no "
            "others; check these first. A station is judged by the height supplied, on the day it was surveyed."
        ),
    )
