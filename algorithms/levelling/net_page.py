"""The page of a levelling adjustment: one self-contained HTML file."""

import numpy as np

from ..core.misclosure import CLASSES
from ..documents.blocks import Bullets, Column, Facts, Heading, Paragraph, Table, cautions
from ..documents.html import html_page
from ..entry.recorded_paths import common_folder, shortened
from ..language.height_text import height_text, levelled_amounts
from ..language.number_text import counted, number_text, signed_text
from ..language.stored_words import stored_text
from ..language.translation import tr

# Rows of a table on the page; the layers hold all.
_MOST = 300


def levelling_page(run, sentences, record):
    """The page as bytes. ``sentences``: (understood and found, doubtful) as the log has them; ``record``:
    of the run.
    """
    said, doubts = sentences
    parts = [Paragraph(_lead(run), "lead"), cautions()]
    parts += [Paragraph(text, "warn") for text in doubts]
    parts += [Heading(tr("What was done")), Bullets(tuple(said))]
    parts += [*_misclosures(run), *_lines(run), *_heights(run), Heading(tr("Record of the run")), _record(record)]
    return html_page(tr("Adjustment of the levelling"), parts)


def _lead(run):
    suspects = int(run.suspected.sum())
    parts = [
        counted(len(run.adjustment.points), tr("adjusted height"), tr("adjusted heights")),
        tr("no blunder suspected")
        if not suspects
        else counted(suspects, tr("suspected blunder"), tr("suspected blunders")),
    ]
    if run.misclosures and (run.level_class or run.factor is not None):
        parts.append(
            tr("all misclosures within their limits")
            if not run.beyond
            else counted(len(run.beyond), tr("misclosure beyond its limit"), tr("misclosures beyond their limits"))
        )
    return tr("{}.").format(", ".join(parts))


def _limits(run):
    if run.factor is not None:
        return tr("Limit: {} mm times the square root of the length in kilometres, as typed.").format(
            number_text(run.factor, 2)
        )
    found = [c for c in CLASSES if c.name == run.level_class and c.kind != "accuracy"]
    if not found:
        return tr("No limit was asked for.")
    return tr("Limits of '{}': {}.").format(
        run.level_class,
        "; ".join(
            tr("{}: {} mm times the square root of the length in kilometres ({})").format(
                c.kind, number_text(c.factor, 1), c.source
            )
            for c in found
        ),
    )


def _misclosures(run):
    if not run.misclosures:
        return [Heading(tr("Misclosures")), Paragraph(tr("No section was levelled twice and no loop closes."))]
    amounts, units = levelled_amounts(run.units.height_name), run.units
    order = sorted(run.misclosures, key=lambda m: (run.status(m) != "beyond", -abs(m.value)))[:_MOST]
    rows = [
        [
            _kind(m),
            run.path(m),
            number_text(m.length / units.chainage, 0) if np.isfinite(m.length) else "",
            amounts.signed(m.value),
            amounts.text(run.limit(m)),
            stored_text("misclosure", run.status(m)),
        ]
        for m in order
    ]
    columns = [
        Column(tr("Kind"), "k"),
        Column(tr("Route")),
        Column(tr("Length ({})").format(units.chainage_label), "n"),
        Column(tr("Misclosure ({})").format(amounts.label), "n"),
        Column(tr("Limit ({})").format(amounts.label), "n"),
        Column(tr("Status"), "k"),
    ]
    kinds = ["out" if run.status(m) == "beyond" else "" for m in order]
    return [
        Heading(tr("Misclosures")),
        Paragraph(_limits(run), "small"),
        Table(tuple(columns), rows, _caption(len(order), len(run.misclosures), "MISCLOSURES"), tuple(kinds)),
    ]


def _kind(misclosure):
    return {"section": tr("section"), "loop": tr("loop"), "benchmarks": tr("between benchmarks")}[misclosure.kind]


def _caption(shown, number, key):
    return "" if shown == number else tr("The first {} of {}; {} holds all.").format(shown, number, key)


def _lines(run):
    net, amounts, units = run.lines.net, levelled_amounts(run.units.height_name), run.units
    w, v, r, least, adjusted = (
        run.of_lines(values)
        for values in (
            run.adjustment.w,
            run.adjustment.residuals,
            run.adjustment.redundancies,
            run.adjustment.detectable,
            run.adjusted_differences,
        )
    )
    order = sorted(range(len(net)), key=lambda k: -abs(np.nan_to_num(w[k], nan=-0.0)))[:_MOST]
    sd = run.line_deviations
    rows = [
        [
            net.names[net.start[k]],
            net.names[net.end[k]],
            height_text(net.difference[k], units.height_name),
            amounts.text(sd[k]),
            height_text(adjusted[k], units.height_name),
            amounts.signed(v[k]),
            signed_text(w[k], 2) if np.isfinite(w[k]) else "\u2013",
            number_text(r[k], 2) if np.isfinite(r[k]) else "",
            amounts.text(least[k]) if np.isfinite(least[k]) else "\u2013",
            stored_text("flag", run.flags[k]),
        ]
        for k in order
    ]
    columns = [
        Column(tr("From"), "k"),
        Column(tr("To"), "k"),
        Column(tr("Observed ({})").format(units.height_label), "n"),
        Column(tr("Standard deviation ({})").format(amounts.label), "n"),
        Column(tr("Adjusted ({})").format(units.height_label), "n"),
        Column(tr("Observed minus adjusted ({})").format(amounts.label), "n"),
        Column(tr("w"), "n"),
        Column(tr("Redundancy"), "n"),
        Column(tr("Smallest detectable blunder ({})").format(amounts.label), "n"),
        Column(tr("Flag"), "k"),
    ]
    kinds = [
        "out" if run.flags[k] == "suspected blunder" else "quiet" if run.flags[k] == "no benchmark" else ""
        for k in order
    ]
    return [
        Heading(tr("Lines, the greatest test value first")),
        Table(tuple(columns), rows, _caption(len(order), len(net), "LINES"), tuple(kinds)),
    ]


def _heights(run):
    net, amounts, units, a = run.lines.net, levelled_amounts(run.units.height_name), run.units, run.adjustment
    shown = list(range(len(net.names)))[:_MOST]
    half = a.interval_factor * a.height_deviations
    rows = [
        [
            net.names[k],
            height_text(a.heights[k], units.height_name),
            amounts.text(a.height_deviations[k]),
            amounts.text(half[k]) if np.isfinite(half[k]) else "",
            stored_text("role", run.roles[k]),
            height_text(run.given[k], units.height_name),
            amounts.signed(a.heights[k] - run.given[k]) if k in run.tied else "",
        ]
        for k in shown
    ]
    columns = [
        Column(tr("Point"), "k"),
        Column(tr("Height ({})").format(units.height_label), "n"),
        Column(tr("Standard deviation ({})").format(amounts.label), "n"),
        Column(tr("95 percent, \u00b1 ({})").format(amounts.label), "n"),
        Column(tr("Role"), "k"),
        Column(tr("Given ({})").format(units.height_label), "n"),
        Column(tr("Adjusted minus given ({})").format(amounts.label), "n"),
    ]
    kinds = ["quiet" if run.roles[k] == "no benchmark" else "" for k in shown]
    return [
        Heading(tr("Heights")),
        Table(tuple(columns), rows, _caption(len(shown), len(net.names), "OUTPUT"), tuple(kinds)),
    ]


def _record(record):
    pairs = [
        (tr("Entry"), record.entry),
        *shortened(record.parameters, common_folder([record])).items(),
        *((name, version) for name, version in record.versions.items()),
    ]
    return Facts(tuple(pairs))
