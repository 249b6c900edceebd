"""A comparison of surveys as one page: verdicts, chart, tables, what was compared and how."""

from datetime import date

import numpy as np

from ..core.quantiles import NORMAL_95
from ..documents.blocks import Column, Facts, Heading, Paragraph, Picture, Table, cautions
from ..documents.html import html_page
from ..language.height_text import RATIOS, height_text
from ..language.number_text import counted, number_text
from ..language.shown_stations import shown_station
from ..language.translation import tr, translatable
from ..language.units import UNIT_LABELS
from .chart import MOST_AXES, has_intervals

_WORDS = {
    "risen": translatable("▲ risen"),
    "settled": translatable("▼ settled"),
    "left": translatable("◀ left"),
    "right": translatable("right ▶"),
    "possible": translatable("possible"),
    "not significant": translatable("not significant"),
    "no sd": translatable("not judged"),
}


def comparison_page(report, charts, title, record):
    """The page as bytes; ``charts``: of the axes that are drawn."""
    c = report.compared
    parts = [
        Paragraph(one.axis_sentence(motion), "lead" if len(c.motions) < 5 else "")
        for one in report.reports
        for motion in one.compared.motions[:40]
    ]
    parts += [Paragraph(text, "warn") for text in report.doubts()]
    parts.append(Paragraph(report.judged_sentence()))
    parts += [Paragraph(report.line.line_sentence())] if report.line else []
    intervals = tr("Bars or bands are 95 % intervals.") if has_intervals(report.reports) else ""
    parts += [
        Picture(
            chart.svg(),
            chart.words,
            " ".join(
                filter(
                    None,
                    (
                        tr("Chainage against change since {}; a gap is a station not found.").format(c.first.label),
                        intervals,
                    ),
                )
            ),
        )
        for chart in charts
    ]
    if len(c.axes) > MOST_AXES:
        parts.append(
            Paragraph(
                tr("{} not drawn; its numbers are below.").format(
                    counted(len(c.axes) - MOST_AXES, tr("further axis"), tr("further axes"))
                ),
                "small",
            )
        )
    parts += [
        cautions(
            tr(
                "A change within its interval is not significant, which is no proof that nothing moved. Before "
                "anything is concluded, check the benchmarks that both surveys were tied to."
            )
        ),
        Heading(tr("Each axis and survey")),
        _motions(report),
        Heading(tr("Each station, latest survey")),
    ]
    parts += [_stations(report, axis) for axis in c.axes]
    if report.line:
        parts += [Heading(tr("Line: each axis and survey")), _motions(report.line)]
        parts.append(Heading(tr("Line: each station, latest survey")))
        parts += [_stations(report.line, axis) for axis in c.axes]
    if c.unmatched:
        parts += [Heading(tr("Not compared")), _unmatched(report)]
    parts += [
        Heading(tr("What was compared")),
        _about(report, record),
        Paragraph(
            tr(
                "Signs: change is later minus first, + is risen. Differential movement is the change less what all "
                "stations of the axis share."
            )
            + (" " + tr("For the line, + is to the right looking up-chainage.") if report.line else "")
            + " "
            + report.assumed_sentence(),
            "small",
        ),
    ]
    return html_page(title, parts)


def _motions(report):
    c, text, small = report.compared, report.amounts, report.amounts.label
    tilt, (low, high) = report.tilted, (report.what.down, report.what.up)
    shift, turn = tr("Common shift ({})"), tr("Tilt ({})")
    if report.what.sideways:
        shift, turn = tr("Common lateral shift ({})"), tr("Rotation in plan ({})")
    columns = [
        Column(tr("Axis"), "k"),
        Column(tr("Survey"), "k"),
        Column(tr("Years"), "n"),
        Column(tr("Stations"), "n"),
        Column(tr("Set aside"), "n"),
        Column(shift.format(small), "n"),
        Column(tr("± 95 % ({})").format(small), "n"),
        *([Column(heading.format(RATIOS.label), "n") for heading in (turn, tr("± 95 % ({})"))] if tilt else []),
        Column(tr("RMS, shift removed ({})").format(small), "n"),
        *(Column(heading, "n") for heading in _sides_of(report)),
        Column(tr("Possible"), "n"),
        Column(tr("Stations with differential movement"), "n"),
    ]
    rows = []
    for m in c.motions:
        found, count, bent = m.told, report.counts(m, c.verdicts), report.counts(m, c.bend_verdicts)
        judged = count["no sd"] < len(m.rows)
        years = c.years[m.number]
        rows.append(
            [
                m.axis,
                c.surveys[m.number].label,
                number_text(years, 2) if years == years else "",
                str(len(m.rows)),
                str(int(np.sum(m.motion.run >= 0))) if m.motion else "",
                text.signed(found.shift) if found else "",
                text.text(NORMAL_95 * found.sd_shift) if found and m.judged else "",
                *(
                    [
                        RATIOS.signed(found.tilt) if found else "",
                        RATIOS.text(NORMAL_95 * found.sd_tilt) if found and m.judged else "",
                    ]
                    if tilt
                    else []
                ),
                text.text(report.rms(m)),
                *(str(count[key]) if judged else "" for key in (low, high, "possible")),
                str(bent[low] + bent[high]) if found and bent["no sd"] < len(m.rows) else "",
            ]
        )
    return Table(tuple(columns), rows)


def _sides_of(report):
    """Headings of the counts of both directions."""
    return (tr("Left"), tr("Right")) if report.what.sideways else (tr("Settled"), tr("Risen"))


def _stations(report, axis):
    c, text, small, unit = report.compared, report.amounts, report.amounts.label, report.units.height_name
    # Heights are full ones; beside a line a station stands by a small amount.
    full = (lambda value: height_text(value, unit)) if not report.what.sideways else text.signed
    label = small if report.what.sideways else UNIT_LABELS[unit]
    changed, bending_of = tr("Change ({})"), tr("Differential movement ({})")
    if report.what.sideways:
        changed, bending_of = tr("Lateral change ({})"), tr("Lateral differential movement ({})")
    columns = [
        Column(tr("Station"), "k"),
        Column(tr("First ({})").format(label), "n"),
        Column(tr("Latest ({})").format(label), "n"),
        Column(tr("Survey"), "k"),
        Column(changed.format(small), "n"),
        Column(tr("± 95 % ({})").format(small), "n"),
        Column(tr("Verdict"), "k"),
        Column(bending_of.format(small), "n"),
        Column(tr("± 95 % ({})").format(small), "n"),
        Column(tr("Verdict"), "k"),
        Column(tr("Rate ({} a year)").format(small), "n"),
    ]
    rows, kinds = [], []
    values = [c.of_latest(part) for part in (c.value, c.change, c.sd_change, c.bending, c.sd_bending)]
    own = np.flatnonzero((c.first.axis == axis) & np.isfinite(values[1]))
    own = own[np.argsort(c.first.chainage[own], kind="stable")]
    for row in own.tolist():
        height, change, sd, bending, sd_bending = (part[row] for part in values)
        verdict, bent = c.verdicts[row, c.latest[row]], c.bend_verdicts[row, c.latest[row]]
        rows.append(
            [
                shown_station(c.first.station[row]),
                full(c.value[row, 0]),
                full(height),
                c.surveys[c.latest[row]].label,
                text.signed(change),
                text.text(NORMAL_95 * sd),
                tr(_WORDS[verdict]),
                text.signed(bending),
                text.text(NORMAL_95 * sd_bending),
                tr(_WORDS[bent]) if bending == bending else "",
                text.signed(c.rates[0][row]),
            ]
        )
        telling = bent if report.what.own_lines else verdict
        sure = (report.what.up, report.what.down)
        kinds.append("act" if telling in sure else "quiet" if telling == "not significant" else "")
    return Table(
        tuple(columns),
        rows,
        (tr("Axis {}: ").format(axis) if axis else "")
        + (
            tr("{} compared. In bold: moved left or right.")
            if report.what.sideways
            else tr("{} compared. In bold: risen or settled.")
        ).format(counted(len(rows), tr("station"), tr("stations"))),
        tuple(kinds),
    )


def _unmatched(report):
    columns = report.unmatched_columns()
    rows = [
        [
            survey,
            str(row),
            axis or "",
            station,
            number_text(chainage, 3) if chainage == chainage else "",
            height_text(height * report.units.height, report.units.height_name),
            reason,
        ]
        for survey, row, axis, station, chainage, height, reason in zip(*columns.values())
    ]
    return Table(
        (
            Column(tr("Survey"), "k"),
            Column(tr("Row"), "n"),
            Column(tr("Axis"), "k"),
            Column(tr("Station"), "k"),
            Column(tr("Chainage ({})").format(report.units.chainage_label), "n"),
            Column(tr("Height ({})").format(report.units.height_label), "n"),
            Column(tr("Reason")),
        ),
        rows,
    )


def _about(report, record):
    c, asked = report.compared, report.asked
    facts = [
        (
            tr("Survey {}").format(number),
            f"{survey.label}: {survey.name}, " + counted(len(survey), tr("row"), tr("rows")),
        )
        for number, survey in enumerate(c.surveys, 1)
    ]
    facts += [
        (tr("Matched by"), asked["match"]),
        *(
            (tr("Standard deviations, survey {}").format(number), survey.accuracy.described)
            for number, survey in enumerate(c.surveys, 1)
        ),
        (tr("Common shift"), asked["shift"] + (tr(", with tilt") if asked["tilt"] else "")),
        *_about_line(report),
        (tr("Units"), tr("heights {}, chainages {}").format(report.units.height_label, report.units.chainage_label)),
        (
            tr("Made"),
            tr("{} with Tautline {}, QGIS {}").format(
                date.today().isoformat(), record.versions["Tautline"], record.versions["QGIS"]
            ),
        ),
    ]
    return Facts(tuple(facts))


def _about_line(report):
    if not report.line:
        return []
    turned = tr(", with rotation") if report.line.tilted else ""
    return [
        (tr("Line"), report.asked["line"]),
        *(
            (tr("Standard deviations of lateral positions, survey {}").format(number), survey.line.accuracy.described)
            for number, survey in enumerate(report.compared.surveys, 1)
        ),
        (tr("Common lateral shift"), report.asked["shift"] + turned),
    ]
