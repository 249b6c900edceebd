"""What a run of designheights says: the sentences of its log and the rows of its summary."""

import numpy as np

from ..core.design import STRAIGHT, level_heights
from ..core.errors import InputError
from ..language.height_text import height_with_unit, small_text, small_texts
from ..language.number_text import counted, number_text
from ..language.translation import tr
from ..structure.checks import warn_beyond_ends

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
    for name, fields in run.designs.overridden[:MOST_AXES_TOLD]:
        say(tr("Axis '{}': the axis layer overrides {}.").format(name, ", ".join(fields)))
    for report in reports[:MOST_AXES_TOLD]:
        _tell_axis(run, report)
    if len(reports) > MOST_AXES_TOLD:
        say(tr("{} more: see the summary.").format(counted(len(reports) - MOST_AXES_TOLD, tr("axis"), tr("axes"))))
    if run.asked.given("REFERENCE") and all(r.spec is None or r.spec.kind != "reference" for r in reports):
        run.asked.warn(
            tr("REFERENCE is given, but not used, since no axis has the design 'reference'."), keys=("REFERENCE",)
        )
    if run.asked.choice("GRAVITY") == "normal" and all(r.spec is None or r.spec.kind != "level" for r in reports):
        run.asked.warn(tr("GRAVITY is given, but not used, since no axis has the design 'level'."), keys=("GRAVITY",))
    for report in reports:
        for sentence in (*(report.found.warnings if report.found else ()), report.doubt):
            if sentence:
                run.asked.warn(sentence)
        if report.spec is not None:
            _warn_axis(run, report)


def _tell_axis(run, report):
    say, text = run.asked.say, run.notation.text
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
        sentence += tr("; {} without a height").format(statistics.no_height)
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
                letter, run.notation.text(control.chainage), height_with_unit(control.height, run.units), where
            )
        )
    if report.spec.kind in ("inclined", "grade"):
        parts.append(tr("slope {}").format(number_text(report.found.slope, 8)))
    if report.spec.kind in ("tangent", "inclined") and report.spec.earth == "ellipsoid":
        parts.append(tr("horizon of the geoid") if report.found.horizon_known else tr("horizon of the ellipsoid"))
    if report.spec.refraction:
        parts.append(tr("refraction k = {}").format(number_text(report.spec.refraction, 3)))
    if report.spec.earth != "ellipsoid":
        parts.append(tr("Earth model: {}, for comparison only").format(report.spec.earth))
    if report.spec.datum_height is not None:
        parts.append(
            tr("water in normal gravity on GRS 80, {}").format(
                tr("heights taken as above the sea")
                if not report.spec.datum_height
                else tr("the datum {} above the sea").format(height_with_unit(report.spec.datum_height, run.units))
            )
        )
    return tr("Design {}: {}.").format(report.spec.kind, "; ".join(parts) or tr("as the reference"))


def _warn_axis(run, report):
    warn, chainages = run.asked.warn, run.chainage[report.rows]
    first, last = report.axis.vertex_chainages[[0, -1]]
    words = tr("station lies"), tr("stations lie")
    warn_beyond_ends(run.asked, report.name, chainages, (first, last), words, run.notation, run.units)
    if report.spec.kind == "level" and run.system.kind == "ellipsoidal":
        warn(
            tr(
                "Axis '{}': a constant ellipsoidal height is no level surface; water and instruments follow the geoid."
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
