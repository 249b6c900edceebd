"""What a run of designheights says of the line: what it stands on, and how far the stations are beside it."""

import numpy as np

from ..core.design import KINK
from ..language.height_text import side_text, small_text
from ..language.number_text import counted
from ..language.stored_words import described
from ..language.translation import tr


def tell_line_of(run, report):
    """The sentence of one axis that is judged by line; and a doubt where a straight line cannot serve it."""
    line = report.line
    if line is None:
        return
    text = run.notation.shown
    sentence = tr("Axis '{}': line from {}: {}, RMS {}, greatest {} at {}").format(
        report.name,
        _stands_on(run, line),
        counted(line.number, tr("station"), tr("stations")),
        small_text(line.rms, run.units),
        side_text(line.greatest, run.units),
        text(run.chainage[line.greatest_at]),
    )
    if line.tolerance is not None:
        sentence += tr("; {} within {}, {} left, {} right").format(
            line.within, small_text(line.tolerance, run.units), line.left, line.right
        )
    without = int(np.sum(~np.isfinite(run.height[report.rows])))
    if without and line.kind != "axis":
        sentence += tr("; {} without a height, taken at the design height").format(without)
    run.asked.say(sentence + ".")


def _stands_on(run, line):
    if line.kind == "axis":
        return described("line", "axis")
    if line.kind == "fitted":
        words = tr("the vertical plane that fits {} stations best").format(line.counted)
        return f"{words} ({run.line.weighed})" if run.line.weighed else words
    ends = [run.notation.shown(run.chainage[row]) for row in (line.first, line.last)]
    return tr("the vertical plane through its stations {} and {}").format(*ends)


def tell_lines(run, reports):
    """What holds for the line of all axes, and what of it was given in vain."""
    lines = [report.line for report in reports if report.line is not None]
    if not run.line.judged:
        if run.designs.line_tolerance_given:
            run.asked.warn(
                tr("A tolerance of the line is given, but not used, since no axis has a LINE."),
                keys=("LINE_TOLERANCE", "LINE"),
            )
        return
    if any(line.kind == "axis" for line in lines):
        run.asked.say(
            tr(
                "LINE 'axis' stands on the axis as drawn in layer '{}': it judges the line only where that axis was "
                "surveyed or designed. An axis drawn by hand on imagery is no basis for judging; 'chord' and 'fitted' "
                "need the stations alone."
            ).format(run.structure.axis_source.sourceName())
        )
    for report in reports:
        line = report.line
        if line is not None and line.bend > KINK * np.ptp(run.chainage[report.rows]):
            run.asked.warn(
                tr(
                    "Axis '{}' bends: its vertices lie up to {} beside the vertical plane of LINE '{}', which is "
                    "straight; judge each leg by itself, or by LINE 'axis'."
                ).format(report.name, small_text(line.bend, run.units), line.kind),
                keys=("LINE",),
            )
