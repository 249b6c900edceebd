"""What a run of fitreference says and writes beside its stations: sentences, references, ellipses."""

import numpy as np

from ..entry.messages import FIT_FOUND, GLOBAL_TEST_FAILED
from ..language.height_text import height_with_unit, small_text, small_texts
from ..language.number_text import listed, number_text, signed_text
from ..language.translation import tr
from ..language.units import UNIT_LABELS
from ..structure.geoid_grid import say_coarse
from .plan_messages import line_doubted, tell_line, tell_line_accuracy
from .point_messages import known_slopes, tell_points
from .search_messages import (
    MOST_TOLD,
    failed_side,
    give_or_take,
    set_aside_text,
    tell_suspects,
    test_failed,
    variance_sentence,
    words_of_heights,
)


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
                "The errors of the heights are taken as independent; heights levelled along an axis share errors, so "
                "give SIGMA_KM for ellipses and intervals that hold."
            )
        )
    tell_line_accuracy(run)
    # Of many only what is well is left to the layer: no failed test and no suspect is cut off by a number.
    told = [fit for number, fit in enumerate(fits) if number < MOST_TOLD or _doubted(fit)]
    for fit, slope in zip(told, known_slopes(told)):
        _tell_fit(run, fit, slope)
    if len(fits) > len(told):
        say(tr("{} more with nothing suspected: see the reference layer.").format(len(fits) - len(told)))
    say_coarse(run.asked, run.system, [run.axes[k].length for fit in fits for k in fit.axes])


def _counted(number):
    return tr("1 axis") if number == 1 else tr("{} axes").format(number)


def _doubted(fit):
    found = fit.surface.search
    upwards = np.any(fit.upwards.suspected) or found.beyond or fit.step is not None or test_failed(found.solution)
    return bool(upwards) or line_doubted(fit)


def _tell_fit(run, fit, geoid_slope):
    say, units, found = run.asked.say, run.units, fit.surface.search
    solution = found.solution
    words = words_of_heights(fit.kind)
    kind, failed = words.kind, test_failed(solution)
    tell = run.asked.warn if failed else say
    tell(
        tr("{} '{}': {} stations on {}, RMS {}{}; {}.").format(
            kind,
            fit.name,
            int(found.kept.sum()),
            listed([run.structure.names[k] for k in fit.axes]),
            small_text(fit.surface.rms, units),
            set_aside_text(found),
            variance_sentence(run, solution, words),
        ),
        GLOBAL_TEST_FAILED if failed else FIT_FOUND,
        about=(fit.name, *([failed_side(solution)] if failed else [])),
    )
    slopes = [
        run.structure.names[k]
        + " "
        + signed_text(slope, 8)
        + give_or_take(_slope_width(fit), number_text(_slope_width(fit), 8))
        for k, slope in zip(fit.axes, fit.slopes)
    ]
    width = solution.interval_factor * solution.deviations[0]
    say(
        tr("{} '{}': slope at the origin of {}, against {}{}; height {}{} at its point.").format(
            kind,
            fit.name,
            listed(slopes),
            _horizon(run.system),
            tr(", 95 %") if np.isfinite(width) else "",
            height_with_unit(fit.surface.height, units),
            give_or_take(width, small_text(width, units)),
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
                "Line '{}': straightness, RMS and range: vertical {} and {}, lateral {} and {}; combined RMS {}, "
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
                "Line '{}': minimum zone (ISO 12780-1; ISO 1101), the least that holds all stations kept: vertical "
                "{}, lateral {}, cylinder {} in diameter."
            ).format(fit.name, *small_texts((s.vertical_zone, s.lateral_zone, s.cylinder), units))
        )
    tell_points(run, fit, geoid_slope)
    tell_suspects(run, fit, fit.upwards, words)
    tell_line(run, fit)


def _horizon(system):
    """What the slopes are against: undulations that differ from station to station turn heights above the geoid into
    ellipsoidal ones; without them the heights tell of the level surface alone."""
    return tr("the ellipsoid's horizon") if system.knows_ellipsoid else tr("the level surface")


def _slope_width(fit):
    """Half of the slope's 95 % interval, of a plane in its worst direction."""
    solution = fit.surface.solution
    return solution.interval_factor * float(slope_deviations(leading_covariances([fit]))[0])


def leading_covariances(fits):
    """Covariances of height and slopes of many fits of one kind: (m, 2, 2), of planes (m, 3, 3)."""
    size = 1 + len(fits[0].surface.slopes)
    return np.array([fit.surface.solution.parameter_covariance[:size, :size] for fit in fits])


def slope_deviations(covariances):
    """Standard deviations (m,) of slopes, of planes in their worst directions; see leading_covariances."""
    part = covariances[:, 1:, 1:]
    # Of a symmetric 2 x 2, the greater eigenvalue.
    mean, half = 0.5 * (part[:, 0, 0] + part[:, -1, -1]), 0.5 * (part[:, 0, 0] - part[:, -1, -1])
    across = part[:, 0, 1] if part.shape[1] > 1 else 0.0
    return np.sqrt(mean + np.hypot(half, across))
