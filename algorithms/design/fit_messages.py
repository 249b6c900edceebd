"""What a run of fitreference says and writes beside its stations: sentences, references, ellipses."""

import numpy as np

from ..core.quantiles import BAARDA
from ..entry.messages import (
    FIT_FOUND,
    GLOBAL_TEST_FAILED,
    MANY_FLAGGED,
    NO_BLUNDER,
    OTHER_SHAPE,
    STEP_SUSPECTED,
    STRETCH_MOVED,
    SUSPECTED_BLUNDER,
)
from ..language.height_text import height_with_unit, small_text, small_texts
from ..language.number_text import listed, number_text, signed_text
from ..language.translation import tr
from ..language.units import UNIT_LABELS
from ..structure.geoid_grid import say_coarse
from .point_messages import tell_points

MOST_TOLD = 40


def tell_fits(run, fits):
    """Push the sentences of a run: what was understood, found, and how sure it is."""
    say, points = run.asked.say, run.structure.points
    say(
        tr("Understood: {} stations of layer '{}' and {}; heights from {} in {}; {}.").format(
            len(points),
            points.name,
            _counted(len(run.structure.axes)),
            run.heights.described,
            UNIT_LABELS[run.units.height_name],
            run.accuracies.described,
        )
    )
    say(run.system.described)
    if run.accuracies.independent:
        say(
            tr(
                "The errors of the heights are taken as independent; heights levelled along an arm share errors, so "
                "give SIGMA_KM for ellipses and intervals that hold."
            )
        )
    # Of many only what is well is left to the layer: no failed test and no suspect is cut off by a number.
    told = [fit for number, fit in enumerate(fits) if number < MOST_TOLD or _doubted(fit)]
    for fit in told:
        _tell_fit(run, fit)
    if len(fits) > len(told):
        say(tr("{} more, without a doubt: see the reference layer.").format(len(fits) - len(told)))
    say_coarse(run.asked, run.system, [run.axes[k].length for fit in fits for k in fit.axes])


def _counted(number):
    return tr("1 axis") if number == 1 else tr("{} axes").format(number)


def _test_failed(solution):
    return solution.known and solution.global_test is not None and not solution.global_test[3]


def _side(solution):
    """On which side of its limits a failed global test lies."""
    value, low, _high, _passed = solution.global_test
    return "below" if value < low else "above"


def _doubted(fit):
    found = fit.surface.search
    return bool(np.any(fit.suspected) or found.beyond or fit.step is not None or _test_failed(found.solution))


def _tell_fit(run, fit):
    say, units, found = run.asked.say, run.units, fit.surface.search
    solution = found.solution
    kind = tr("Plane") if fit.kind == "plane" else tr("Line")
    failed = _test_failed(solution)
    tell = run.asked.warn if failed else say
    tell(
        tr("{} '{}': {} stations on {}, RMS {}{}; {}.").format(
            kind,
            fit.name,
            int(found.kept.sum()),
            listed([run.structure.names[k] for k in fit.axes]),
            small_text(fit.surface.rms, units),
            _set_aside(found),
            _variance_sentence(run, solution),
        ),
        GLOBAL_TEST_FAILED if failed else FIT_FOUND,
        about=(fit.name, *([_side(solution)] if failed else [])),
    )
    slopes = [
        run.structure.names[k]
        + " "
        + signed_text(slope, 8)
        + _give_or_take(_slope_width(fit), number_text(_slope_width(fit), 8))
        for k, slope in zip(fit.axes, fit.slopes)
    ]
    width = solution.interval_factor * solution.deviations[0]
    say(
        tr("{} '{}': slope at the origin of {}, against the ellipsoid's horizon{}; height {}{} at its point.").format(
            kind,
            fit.name,
            listed(slopes),
            tr(", 95 %") if np.isfinite(width) else "",
            height_with_unit(fit.surface.height, units),
            _give_or_take(width, small_text(width, units)),
        )
    )
    if fit.arms_apart:
        apart = tr("1 axis does") if fit.arms_apart == 1 else tr("{} axes do").format(fit.arms_apart)
        run.asked.warn(
            tr("{} '{}': {} not meet the others within 10 m; a height unknown was added for each.").format(
                kind, fit.name, apart
            )
        )
    if fit.straightness is not None:
        s = fit.straightness
        say(
            tr(
                "Line '{}': straightness, RMS and range: upwards {} and {}, sideways {} and {}; together RMS {}, "
                "greatest {}."
            ).format(
                fit.name,
                *small_texts(
                    (
                        s.vertical.rms,
                        s.vertical.range,
                        s.lateral.rms,
                        s.lateral.range,
                        s.combined.rms,
                        s.combined.range,
                    ),
                    units,
                ),
            )
        )
        say(
            tr(
                "Line '{}': minimum zone (ISO 12780-1; ISO 1101), the least that holds all stations kept: upwards {}, "
                "sideways {}, cylinder {} in diameter."
            ).format(fit.name, *small_texts((s.vertical_zone, s.lateral_zone, s.cylinder), units))
        )
    tell_points(run, fit)
    _tell_suspects(run, fit)


def _give_or_take(width, text):
    """' ± ...', or nothing where no station is left over to know a width."""
    return f" ± {text}" if np.isfinite(width) else ""


def _set_aside(found):
    number = int(np.sum(~found.kept))
    return tr(", {} set aside").format(number) if number else ""


def _slope_width(fit):
    """Half of the slope's 95 % interval, of a plane in its worst direction."""
    solution = fit.surface.solution
    return solution.interval_factor * slope_deviation(fit)


def slope_deviation(fit):
    part = fit.surface.solution.parameter_covariance[1 : 1 + len(fit.surface.slopes), 1 : 1 + len(fit.surface.slopes)]
    # Of a symmetric 2 x 2, the greater eigenvalue.
    if len(part) == 1:
        return float(np.sqrt(part[0, 0]))
    mean, half = 0.5 * (part[0, 0] + part[1, 1]), 0.5 * (part[0, 0] - part[1, 1])
    return float(np.sqrt(mean + np.hypot(half, part[0, 1])))


def _variance_sentence(run, solution):
    if not solution.known:
        if solution.freedom < 1:
            return tr("no station is left over to estimate the accuracy of a height")
        return tr("standard deviation of one height estimated as {}").format(
            small_text(np.sqrt(solution.variance_factor), run.units)
        )
    if solution.global_test is None:
        return tr("no station is left over for a test")
    value, low, high, passed = solution.global_test
    text = tr("global test {}: {} between {} and {}") if passed else tr("global test {}: {} not between {} and {}")
    text = text.format(tr("passed") if passed else tr("failed"), *(number_text(v, 1) for v in (value, low, high)))
    if not passed:
        text += tr("; with the accuracy that the residuals show, intervals are {} times as wide").format(
            number_text(np.sqrt(solution.variance_factor), 2)
        )
    return text


def _flagged_runs(run, fit):
    """The flagged stations in words, neighbours together: '0+100 to 0+900 of 'north' (9)'."""
    axis, chainage = run.structure.feet.axis[fit.rows], run.chainage[fit.rows]
    order, words, k = np.lexsort((chainage, axis)), [], 0
    while k < len(order):
        end = k
        while end < len(order) and fit.suspected[order[end]] and axis[order[end]] == axis[order[k]]:
            end += 1
        if end > k:
            first, last = (run.notation.text(chainage[order[j]]) for j in (k, end - 1))
            name = run.structure.names[axis[order[k]]]
            text = (
                tr("{} of '{}'").format(first, name)
                if end == k + 1
                else tr("{} to {} of '{}' ({})").format(first, last, name, end - k)
            )
            words.append(text)
        k = max(end, k + 1)
    return words


def _tell_suspects(run, fit):
    say, warn, found = run.asked.say, run.asked.warn, fit.surface.search
    kind = tr("Plane") if fit.kind == "plane" else tr("Line")
    if found.solution.freedom < 1 or not np.isfinite(found.solution.critical):
        text = tr("{} '{}': too few stations are left over to test for blunders.").format(kind, fit.name)
        say(text, NO_BLUNDER, about=(fit.name,))
        return
    if found.beyond:
        warn(
            tr(
                "{} '{}': more than {} of {} stations would have to be set aside as blunders, so none was: these "
                "heights do not have the shape of one {} within their standard deviations. Check heights, units and "
                "standard deviations, or test which shape was built. Flagged as they stand: {}."
            ).format(
                kind,
                fit.name,
                found.beyond,
                len(fit.rows),
                tr("plane") if fit.kind == "plane" else tr("straight line"),
                listed(_flagged_runs(run, fit), MOST_TOLD) or tr("none"),
            ),
            OTHER_SHAPE,
            about=(fit.name,),
        )
        return
    together = {k for stretch in fit.moved for k in stretch}
    alone = [k for k in np.flatnonzero(fit.suspected) if k not in together]
    for k in alone:
        row, residual = fit.rows[k], small_text(fit.surface.residuals[k], run.units, True)
        axis, station = run.structure.names[run.structure.feet.axis[row]], run.notation.text(run.chainage[row])
        warn(
            tr("{} '{}': suspected blunder at {} of '{}', residual {}, w = {}{}.").format(
                kind,
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
    robust = "" if fit.surface.robust else tr(", and try the robust start (ROBUST)")
    for stretch in fit.moved:
        rows, residuals = fit.rows[list(stretch)], fit.surface.residuals[list(stretch)]
        axis = run.structure.names[run.structure.feet.axis[rows[0]]]
        first, last = (run.notation.text(place(run.chainage[rows])) for place in (np.min, np.max))
        # A stretch lies on one side.
        sentence = (
            tr(
                "{} '{}': {} neighbours from {} to {} of '{}' lie high, residuals {} to {}: that looks like a stretch "
                "that has moved, not like blunders. Look at the profile{}."
            )
            if residuals[0] > 0
            else tr(
                "{} '{}': {} neighbours from {} to {} of '{}' lie low, residuals {} to {}: that looks like a stretch "
                "that has moved, not like blunders. Look at the profile{}."
            )
        )
        spans = small_texts((residuals.min(), residuals.max()), run.units, (True, True))
        warn(
            sentence.format(kind, fit.name, len(stretch), first, last, axis, *spans, robust),
            STRETCH_MOVED,
            about=(fit.name, axis, first, last),
        )
    for pair in found.twins:
        warn(
            tr("{} '{}': {} and {} cannot be told apart; neither is set aside.").format(
                kind, fit.name, *(run.notation.text(run.chainage[fit.rows[k]]) for k in pair)
            )
        )
    if fit.many:
        warn(
            tr(
                "{} '{}': more than a tenth of the stations is flagged; that looks like deformation or another shape, "
                "not like blunders. Test which shape was built{}."
            ).format(kind, fit.name, robust),
            MANY_FLAGGED,
            about=(fit.name,),
        )
    if fit.step is not None:
        warn(
            tr(
                "{} '{}': a step is suspected in the levelling of '{}', from {} on (T = {}, limit {}): a blunder of "
                "the section, for which no station is set aside."
            ).format(
                kind,
                fit.name,
                run.structure.names[fit.step.axis],
                run.notation.text(fit.step.chainage),
                signed_text(fit.step.value, 1),
                number_text(BAARDA, 2),
            ),
            STEP_SUSPECTED,
            about=(fit.name, run.structure.names[fit.step.axis]),
        )
    if not np.any(fit.suspected) and fit.step is None:
        say(
            tr("{} '{}': no blunder is suspected; the smallest that would be found at a typical station is {}.").format(
                kind, fit.name, small_text(float(np.median(found.detectable)), run.units)
            ),
            NO_BLUNDER,
            about=(fit.name,),
        )
