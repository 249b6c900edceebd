"""What a run of fitreference says and writes beside its stations: sentences, references, ellipses."""

import numpy as np

from ..core.measure import measure
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
    if run.system.kind in ("constant", "unknown"):
        say(
            tr("The geoid's slope is not known to this run; the figures with its slope error allow for it.")
            if run.geoid_sigma is not None
            else tr("The geoid's slope is not known to this run, and no figure allows for it.")
        )


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
    _tell_level(run, fit)
    _tell_suspects(run, fit)


def _give_or_take(width, text):
    """' ± ...', or nothing where no station is left over to know a width."""
    return f" ± {text}" if np.isfinite(width) else ""


def _length_text(metres, run, decimals):
    """A distance along or across the ground, in the unit of chainages."""
    return f"{number_text(metres / run.units.chainage, decimals)} {run.units.chainage_label}"


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


def _tell_level(run, fit):
    say = run.asked.say
    if fit.level is not None:
        level = fit.level
        where = tr("inside the surveyed stretch") if lies_within(run, fit) else tr("outside the surveyed stretch")
        accuracy = ""
        if np.isfinite(level.sd):
            accuracy = tr("; standard deviation {}").format(_length_text(level.sd, run, 1))
            if level.geoid_sd is not None:
                accuracy += tr(", {} with the geoid's slope error").format(_length_text(level.geoid_sd, run, 1))
        say(
            tr(
                "Line '{}': level at {}, {}{}. On both sides of it the straight line rises above the level surface."
            ).format(fit.name, run.notation.text(level.chainage), where, accuracy)
        )
        return
    tangent = fit.tangent
    if not tangent.well_determined:
        say(tr("Plane '{}': where it is level is poorly determined; no ellipse is given.").format(fit.name))
        return
    beside = [_beside(run, run.axes[k], tangent) for k in fit.axes]
    state = (
        tr("inside the area that the stations span")
        if fit.inside
        else tr("outside the area that the stations span, {} from the nearest one").format(
            _length_text(tangent.distance, run, 0)
        )
    )
    say(
        tr("Plane '{}': level at latitude {}°, longitude {}°, {}; seen from the axes: {}.").format(
            fit.name, number_text(tangent.lat, 6), number_text(tangent.lon, 6), state, listed(beside)
        )
    )
    sizes = tr("semi-axes of the 95 % ellipse {} and {}").format(
        *(_length_text(v, run, 0) for v in (tangent.levelling.semi_a, tangent.levelling.semi_b))
    )
    if tangent.geoid is not None:
        sizes += tr(" from the heights alone, {} and {} with the geoid's slope error").format(
            *(_length_text(v, run, 0) for v in (tangent.geoid.semi_a, tangent.geoid.semi_b))
        )
    say(
        tr("Plane '{}': {}. From there the plane rises above the level surface in every direction.").format(
            fit.name, sizes
        )
    )


def lies_within(run, fit):
    s = run.chainage[fit.rows]
    return bool(s.min() <= fit.level.chainage <= s.max())


def _beside(run, axis, tangent):
    feet = measure([axis.line], tangent.lat, tangent.lon)
    s, y = float(axis.chainages(feet.leg, feet.along)[0]), float(axis.offsets(feet.leg, feet.across)[0])
    side = tr("right") if y > 0 else tr("left")
    return tr("{} {}, {} to the {}").format(axis.line.name, run.notation.text(s), _length_text(abs(y), run, 0), side)


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
