"""What a run of fitreference says of its tests: the same sentences for the heights and for the line in plan."""

from dataclasses import dataclass
from typing import Callable

import numpy as np

from ..core.quantiles import BAARDA
from ..entry.messages import MANY_FLAGGED, NO_BLUNDER, OTHER_SHAPE, STEP_SUSPECTED, STRETCH_MOVED, SUSPECTED_BLUNDER
from ..language.height_text import side_text, small_text, small_texts
from ..language.number_text import listed, number_text, signed_text
from ..language.translation import tr

MOST_TOLD = 40


@dataclass(frozen=True)
class PartWords:
    """The words of one part of a fit, upwards or in plan. ``kind``: what begins its sentences; ``small``, ``spans``:
    functions of a residual, or of the least and greatest one, and the run's units to text; the rest are sentences."""

    kind: str
    small: Callable
    spans: Callable
    none_left: str
    estimated: str
    beyond: str
    above: str
    below: str
    many: str


def words_of_heights(kind):
    """PartWords of the heights of a fit of ``kind`` 'line' or 'plane'."""
    return PartWords(
        tr("Plane") if kind == "plane" else tr("Line"),
        lambda value, units: small_text(value, units, True),
        lambda both, units: small_texts(both, units, (True, True)),
        tr("no redundant station is left to estimate the accuracy of a height"),
        tr("standard deviation of one height estimated as {}"),
        tr(
            "{} '{}': more than {} of {} stations would have to be set aside as blunders, so none was: these heights "
            "do not have the shape of one plane within their standard deviations. Check heights, units and standard "
            "deviations, or test which shape was built. Flagged as they stand: {}."
        )
        if kind == "plane"
        else tr(
            "{} '{}': more than {} of {} stations would have to be set aside as blunders, so none was: these heights "
            "do not have the shape of one straight line within their standard deviations. Check heights, units and "
            "standard deviations, or test which shape was built. Flagged as they stand: {}."
        ),
        tr(
            "{} '{}': {} neighbours from {} to {} of '{}' lie high, residuals {} to {}: that looks like a stretch that "
            "has moved, not like blunders. Look at the profile{}."
        ),
        tr(
            "{} '{}': {} neighbours from {} to {} of '{}' lie low, residuals {} to {}: that looks like a stretch that "
            "has moved, not like blunders. Look at the profile{}."
        ),
        tr(
            "{} '{}': more than a tenth of the stations is flagged; that looks like deformation or another shape, not "
            "like blunders. Test which shape was built{}."
        ),
    )


def words_of_plan():
    """PartWords of the line in plan."""
    return PartWords(
        tr("Line in plan"),
        side_text,
        lambda both, units: small_texts([abs(value) for value in both], units),
        tr("no redundant station is left to estimate the accuracy of a lateral position"),
        tr("standard deviation of one lateral position estimated as {}"),
        tr(
            "{} '{}': more than {} of {} stations would have to be set aside as blunders, so none was: these "
            "positions do not have the shape of one straight line within their standard deviations. Check positions, "
            "units and standard deviations, and the vertices of the axis. Flagged as they stand: {}."
        ),
        tr(
            "{} '{}': {} neighbours from {} to {} of '{}' lie right, by {} to {}: that looks like a stretch that has "
            "moved, not like blunders. Look at them in plan{}."
        ),
        tr(
            "{} '{}': {} neighbours from {} to {} of '{}' lie left, by {} to {}: that looks like a stretch that has "
            "moved, not like blunders. Look at them in plan{}."
        ),
        tr(
            "{} '{}': more than a tenth of the stations is flagged; that looks like deformation or a bend in plan, not "
            "like blunders. Look at them in plan{}."
        ),
    )


def test_failed(solution):
    """Whether a Solution's global test has failed."""
    return solution.known and solution.global_test is not None and not solution.global_test[3]


def failed_side(solution):
    """On which side of its limits a failed global test lies."""
    value, low, _high, _passed = solution.global_test
    return "below" if value < low else "above"


def give_or_take(width, text):
    """' ± ...', or nothing where no station is left over to know a width."""
    return f" ± {text}" if np.isfinite(width) else ""


def set_aside_text(found):
    """', 2 set aside', nothing where all are kept."""
    number = int(np.sum(~found.kept))
    return tr(", {} set aside").format(number) if number else ""


def variance_sentence(run, solution, part):
    """How the accuracy as stated bears the residuals, or what these say of it. ``part``: PartWords."""
    if not solution.known:
        if solution.freedom < 1:
            return part.none_left
        return part.estimated.format(small_text(np.sqrt(solution.variance_factor), run.units))
    if solution.global_test is None:
        return tr("no redundant station is left for a test")
    value, low, high, passed = solution.global_test
    text = tr("global test {}: {} between {} and {}") if passed else tr("global test {}: {} not between {} and {}")
    text = text.format(tr("passed") if passed else tr("failed"), *(number_text(v, 1) for v in (value, low, high)))
    if not passed:
        text += tr("; with the accuracy that the residuals show, intervals are {} times as wide").format(
            number_text(np.sqrt(solution.variance_factor), 2)
        )
    return text


def _flagged_runs(run, fit, suspected):
    """The flagged stations in words, neighbours together: '0+100 to 0+900 of 'north' (9)'."""
    axis, chainage = run.structure.feet.axis[fit.rows], run.chainage[fit.rows]
    order, words, k = np.lexsort((chainage, axis)), [], 0
    while k < len(order):
        end = k
        while end < len(order) and suspected[order[end]] and axis[order[end]] == axis[order[k]]:
            end += 1
        if end > k:
            first, last = (run.notation.shown(chainage[order[j]]) for j in (k, end - 1))
            name = run.structure.names[axis[order[k]]]
            text = (
                tr("{} of '{}'").format(first, name)
                if end == k + 1
                else tr("{} to {} of '{}' ({})").format(first, last, name, end - k)
            )
            words.append(text)
        k = max(end, k + 1)
    return words


def tell_suspects(run, fit, tested, part):
    """The sentences on the stations of one part that a test doubts. ``tested``: its TestedPart; ``part``: PartWords."""
    say, found = run.asked.say, tested.search
    kind, step = part.kind, fit.step if tested is fit.upwards else None
    if found.solution.freedom < 1 or not np.isfinite(found.solution.critical):
        text = tr("{} '{}': too few redundant stations to test for blunders.").format(kind, fit.name)
        say(text, NO_BLUNDER, about=(fit.name,))
        return
    if found.beyond:
        flagged = listed(_flagged_runs(run, fit, tested.suspected), MOST_TOLD) or tr("none")
        text = part.beyond.format(kind, fit.name, found.beyond, len(fit.rows), flagged)
        run.asked.warn(text, OTHER_SHAPE, about=(fit.name,))
        return
    _tell_single(run, fit, tested, part)
    robust = "" if fit.surface.robust else tr(", and try the robust start (ROBUST)")
    _tell_stretches(run, fit, tested, part, robust)
    for pair in found.twins:
        run.asked.warn(
            tr("{} '{}': {} and {} cannot be told apart; neither is set aside.").format(
                kind, fit.name, *(run.notation.shown(run.chainage[fit.rows[k]]) for k in pair)
            )
        )
    if tested.many:
        run.asked.warn(part.many.format(kind, fit.name, robust), MANY_FLAGGED, about=(fit.name,))
    if step is not None:
        _tell_step(run, fit, kind)
    if not np.any(tested.suspected) and step is None:
        say(
            tr("{} '{}': no blunder is suspected; the smallest that would be found at a typical station is {}.").format(
                kind, fit.name, small_text(float(np.median(found.detectable)), run.units)
            ),
            NO_BLUNDER,
            about=(fit.name,),
        )


def _tell_single(run, fit, tested, part):
    """Suspects that are in no stretch, one by one."""
    together, found = {k for stretch in tested.moved for k in stretch}, tested.search
    for k in (k for k in np.flatnonzero(tested.suspected) if k not in together):
        row, residual = fit.rows[k], part.small(tested.residuals[k], run.units)
        axis, station = run.structure.names[run.structure.feet.axis[row]], run.notation.shown(run.chainage[row])
        run.asked.warn(
            tr("{} '{}': suspected blunder at {} of '{}', residual {}, w = {}{}.").format(
                part.kind,
                fit.name,
                station,
                axis,
                residual,
                signed_text(found.w[k], 1),
                "" if found.kept[k] else tr(", set aside"),
            ),
            SUSPECTED_BLUNDER,
            about=(fit.name, axis, station, residual),
        )


def _tell_stretches(run, fit, tested, part, robust):
    """Neighbours flagged on one side."""
    for stretch in tested.moved:
        rows, residuals = fit.rows[list(stretch)], tested.residuals[list(stretch)]
        axis = run.structure.names[run.structure.feet.axis[rows[0]]]
        first, last = (run.notation.shown(place(run.chainage[rows])) for place in (np.min, np.max))
        # A stretch lies on one side.
        sentence = part.above if residuals[0] > 0 else part.below
        spans = part.spans((residuals.min(), residuals.max()), run.units)
        run.asked.warn(
            sentence.format(part.kind, fit.name, len(stretch), first, last, axis, *spans, robust),
            STRETCH_MOVED,
            about=(fit.name, axis, first, last),
        )


def _tell_step(run, fit, kind):
    """A blunder of a section of levelling."""
    run.asked.warn(
        tr(
            "{} '{}': a step is suspected in the levelling of '{}', from {} on (T = {}, limit {}): a blunder of the "
            "section, for which no station is set aside."
        ).format(
            kind,
            fit.name,
            run.structure.names[fit.step.axis],
            run.notation.shown(fit.step.chainage),
            signed_text(fit.step.value, 1),
            number_text(BAARDA, 2),
        ),
        STEP_SUSPECTED,
        about=(fit.name, run.structure.names[fit.step.axis]),
    )
