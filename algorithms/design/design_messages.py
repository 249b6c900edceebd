"""What a run of designheights says: the sentences of its log and the rows of its summary."""

import numpy as np

from ..core.design import STRAIGHT, level_heights
from ..core.errors import InputError
from ..core.geoid_slope import ARC_SECOND
from ..language.core_sentences import worded
from ..language.height_text import height_with_unit, small_text, small_texts
from ..language.number_text import counted, number_text
from ..language.stored_words import stored_text
from ..language.translation import tr
from ..structure.checks import BEYOND, warn_beyond_ends
from ..structure.geoid_grid import say_coarse
from ..structure.stated_slope import slope_text
from .line_messages import tell_line_of, tell_lines

MOST_AXES_TOLD = 40


def tell_designs(run, reports):
    """Push the sentences of a run: what was understood and what was found, per axis; doubts as warnings."""
    say, units = run.asked.say, run.units
    points, structure = run.structure.points, run.structure
    say(
        tr("Understood: {} of layer '{}' and {}; heights from {} in {}, chainages in {}.").format(
            counted(len(points), tr("station"), tr("stations")),
            points.name,
            counted(len(structure.axes), tr("axis"), tr("axes")),
            run.heights.described,
            units.height_label,
            units.chainage_label,
        )
    )
    say(run.system.described)
    say_coarse(run.asked, run.system, [report.axis.length for report in reports])
    _tell_slope(run, reports)
    for name, fields in run.designs.overridden[:MOST_AXES_TOLD]:
        say(tr("Axis '{}': the axis layer overrides {}.").format(name, ", ".join(fields)))
    for report in reports[:MOST_AXES_TOLD]:
        _tell_axis(run, report)
        tell_line_of(run, report)
    if len(reports) > MOST_AXES_TOLD:
        say(tr("{} more: see the summary.").format(counted(len(reports) - MOST_AXES_TOLD, tr("axis"), tr("axes"))))
    tell_lines(run, reports)
    if run.asked.given("REFERENCE") and all(r.spec is None or r.spec.kind != "reference" for r in reports):
        run.asked.warn(
            tr("REFERENCE is given, but not used, since no axis has the design 'reference'."), keys=("REFERENCE",)
        )
    if run.asked.choice("GRAVITY") == "normal" and all(r.spec is None or r.spec.kind != "level" for r in reports):
        run.asked.warn(tr("GRAVITY is given, but not used, since no axis has the design 'level'."), keys=("GRAVITY",))
    beyond = _beyond_ends(run, reports)
    for number, report in enumerate(reports):
        for sentence in (*(report.found.warnings if report.found else ()), report.doubt):
            if sentence:
                run.asked.warn(worded(sentence, run.notation.shown, run.units))
        if report.spec is not None:
            _warn_axis(run, report, beyond[number])


def _beyond_ends(run, reports):
    """Whether stations of each axis lie beyond its ends, an array (m,): most lie within, so all are asked at once."""
    axis, on = run.structure.feet.axis, ~run.structure.off
    first, last = np.array([report.axis.vertex_chainages[[0, -1]] for report in reports]).T
    past = np.maximum(first[axis] - run.chainage, run.chainage - last[axis]) > BEYOND
    return np.bincount(axis[past & on], minlength=len(reports)) > 0


def _tell_slope(run, reports):
    """What a stated slope of the geoid does to this run."""
    asked, sigma = run.asked, run.asked.number("GEOID_SLOPE_SIGMA")
    if run.stated is None:
        if sigma is not None:
            asked.warn(
                tr("GEOID_SLOPE_SIGMA is given, but not used: no slope of the geoid is stated."),
                keys=("GEOID_SLOPE_SIGMA",),
            )
        return
    leaning = [r for r in reports if r.spec is not None and r.spec.kind in ("tangent", "inclined")]
    if not leaning:
        asked.warn(
            tr("A slope of the geoid is stated, but not used: no axis has the design tangent or inclined."),
            keys=("GEOID_SLOPE_E", "GEOID_SLOPE_N"),
        )
    elif run.system.kind != "ellipsoidal":
        asked.say(
            tr(
                "The stated slope of the geoid ({}) changes no design height: heights above the geoid count from its "
                "horizon already."
            ).format(slope_text(run.stated))
        )
    else:
        text = tr("The horizon leans with the stated slope of the geoid: {}").format(slope_text(run.stated))
        if sigma is not None:
            far = max(
                float(np.abs(run.chainage[r.rows] - r.found.controls[0].chainage).max()) for r in leaning if r.found
            )
            text += tr("; its standard deviation of {}\u2033 is {} at the station farthest from the control").format(
                number_text(sigma, 2), small_text(sigma * ARC_SECOND * far, run.units)
            )
        asked.say(text + ".")


def _tell_axis(run, report):
    say, text = run.asked.say, run.notation.shown
    if report.found is None:
        say(tr("Axis '{}': no station belongs to it.").format(report.name))
        return
    s = run.chainage[report.rows]
    say(
        tr("Axis '{}': {} from {} to {}, chainage height {} ({}). {}").format(
            report.name,
            counted(len(s), tr("station"), tr("stations")),
            text(s.min()),
            text(s.max()),
            height_with_unit(report.axis.chainage_height, run.units),
            report.height_word,
            design_sentence(report, run),
        )
    )
    statistics = report.statistics
    if not statistics.number:
        say(tr("Axis '{}': no station has an as-built height, so there are design heights only.").format(report.name))
        return
    residual = run.height[report.rows][statistics.greatest_at] - run.design[report.rows][statistics.greatest_at]
    rms, greatest, tolerance = small_texts(
        (statistics.rms, residual, report.tolerance), run.units, (False, True, False)
    )
    sentence = tr("Axis '{}': {}, RMS {}, greatest {} at {}").format(
        report.name,
        counted(statistics.number, tr("residual"), tr("residuals")),
        rms,
        greatest,
        text(s[statistics.greatest_at]),
    )
    if report.tolerance is not None:
        sentence += tr("; {} within {}, {} high, {} low").format(
            statistics.within, tolerance, statistics.high, statistics.low
        )
    if statistics.no_height:
        sentence += tr("; {} without an as-built height").format(statistics.no_height)
    effect = run.design[report.rows] - run.flat[report.rows]
    say(
        sentence
        + "."
        + (
            tr(" Curvature effect {} to {}.").format(
                *small_texts((effect.min(), effect.max()), run.units, (True, True))
            )
            if report.spec.kind in STRAIGHT
            else ""
        )
    )


def design_sentence(report, run):
    """The design as used, with its controls, in one sentence."""
    parts = []
    for letter, control in zip("AB", report.found.controls):
        where = tr("typed, on the axis") if control.station is None else tr("as built at a station")
        parts.append(
            tr("control {} at {}, height {} ({})").format(
                letter, run.notation.shown(control.chainage), height_with_unit(control.height, run.units), where
            )
        )
    if report.spec.kind in ("inclined", "grade"):
        parts.append(tr("slope {}").format(number_text(report.found.slope, 8)))
    if report.spec.kind in ("tangent", "inclined") and report.spec.earth == "ellipsoid":
        parts.append(tr("horizon of the geoid") if report.found.horizon_known else tr("horizon of the ellipsoid"))
    if report.spec.refraction:
        parts.append(tr("refraction k = {}").format(number_text(report.spec.refraction, 3)))
    if report.spec.earth != "ellipsoid":
        parts.append(tr("Earth model: {}, for comparison only").format(stored_text("earth", report.spec.earth)))
    if report.spec.datum_height is not None:
        parts.append(
            tr("water in normal gravity on GRS 80, {}").format(
                tr("heights taken as above the sea")
                if not report.spec.datum_height
                else tr("the datum {} above the sea").format(height_with_unit(report.spec.datum_height, run.units))
            )
        )
    return tr("Design {}: {}.").format(
        stored_text("design", report.spec.kind), "; ".join(parts) or tr("as the reference")
    )


def _warn_axis(run, report, beyond):
    warn = run.asked.warn
    if beyond:
        words, ends = (tr("station lies"), tr("stations lie")), report.axis.vertex_chainages[[0, -1]]
        warn_beyond_ends(run.asked, report.name, run.chainage[report.rows], ends, words, run.notation, run.units)
    if report.spec.kind == "level" and run.system.kind == "ellipsoidal":
        warn(
            tr(
                "Axis '{}': a constant ellipsoidal height is not a level surface; water and instruments follow "
                "the geoid."
            ).format(report.name)
        )
    _warn_gravity(run, report)
    if report.spec.unused:
        warn(
            tr("Axis '{}': the design '{}' does not use {}.").format(
                report.name, report.spec.kind, ", ".join(report.spec.unused)
            )
        )


def _warn_gravity(run, report):
    """Where still water departs from a constant height by more than a tenth of the tolerance, and is left out."""
    if report.spec.kind != "level" or report.spec.datum_height is not None or run.system.kind == "ellipsoidal":
        return
    (control,), tolerance = report.found.controls, report.tolerance
    latitudes = run.structure.points.lat[run.structure.feet.station[report.rows]]
    try:
        water = level_heights(control, latitudes, run.designs.datum_height)
    except InputError:  # no height above the sea
        return
    away = water - control.height
    if tolerance and np.max(np.abs(away), initial=0.0) > 0.1 * tolerance:
        run.asked.warn(
            tr(
                "Axis '{}': by normal gravity still water departs from this constant height by up to {}, more than a "
                "tenth of the tolerance (heights taken as above the sea); GRAVITY 'normal' follows it."
            ).format(report.name, small_text(float(away[np.argmax(np.abs(away))]), run.units, True)),
            keys=("GRAVITY",),
        )
