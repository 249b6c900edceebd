"""The papers of an adjustment schedule: the sheet for the crew, the set-out sheet of design heights, and the CSV."""

from datetime import date

import numpy as np

from ..core.errors import InputError
from ..documents.blocks import Blanks, Column, Facts, Heading, Paragraph, SideBySide, Table, cautions
from ..documents.csv_file import csv_bytes
from ..documents.html import html_page
from ..language.height_text import height_text
from ..language.number_text import counted, number_text
from ..language.translation import tr
from ..language.units import UNIT_LABELS


def _system(made):
    """The height system that the record of the stations' run tells, '' without."""
    return {
        "ellipsoidal": tr("above the ellipsoid"),
        "unknown": tr("above the geoid; its undulation was not known to the run"),
        "field": tr("above the geoid"),
        "grid": tr("above the geoid"),
        "constant": tr("above the geoid"),
    }.get(made.height_system, "")


def _order(supports):
    """{axis: rows by chainage}, axes in their input order; rows without chainage last."""
    axes = list(dict.fromkeys(supports.axis))
    chainage = np.where(np.isfinite(supports.chainage), supports.chainage, np.inf)
    names = np.array(supports.axis, dtype=object)
    return {
        axis: (lambda rows: rows[np.argsort(chainage[rows], kind="stable")])(np.flatnonzero(names == axis))
        for axis in axes
    }


def _about(schedule, record):
    """What the heights are, and what made the sheet."""
    made = record.more["made_from"]
    unit, facts = UNIT_LABELS[schedule.units.height_name], []
    system = _system(made)
    facts.append((tr("Heights"), tr("in {}").format(unit) + (", " + system if system else "")))
    if not made.height_unit:
        facts.append((tr("Unit"), tr("as stated for this sheet; the stations carry no record of their run")))
    facts.append((tr("Stations and chainages"), tr("in {}").format(schedule.units.chainage_label)))
    designs = {one.get("design") for one in made.axes.values()} - {None}
    if designs:
        facts.append((tr("Design"), ", ".join(sorted(designs))))
    facts.append((tr("Stations from"), schedule.supports.points.name))
    versions = record.versions
    facts.append(
        (
            tr("Made"),
            tr("{} with Tautline {}, QGIS {}").format(date.today().isoformat(), versions["Tautline"], versions["QGIS"]),
        )
    )
    return SideBySide(
        (
            Facts(tuple(facts)),
            Blanks((tr("Prepared by"), tr("Checked by"), tr("Instrument, benchmark"), tr("Date of work"))),
        )
    )


def _movement(schedule, row):
    """The movement as the crew reads it: 'Raise 12.0'."""
    action, amount = schedule.actions[row], schedule.amounts
    words = {
        "raise": tr("▲ Raise"),
        "lower": tr("▼ Lower"),
        "keep": tr("Keep"),
        "measure again": tr("Measure again"),
        "left out": tr("Left out"),
        "no height": tr("No as-built height"),
        "off axis": tr("Off axis"),
    }
    text = words[action]
    return f"{text} {amount.text(abs(schedule.found.move[row]))}" if action in ("raise", "lower") else text


def _row(schedule, row):
    supports, found, unit = schedule.supports, schedule.found, schedule.units.height_name
    cells = [
        supports.station[row] or str(row + 1),
        height_text(supports.design[row] + supports.residual[row], unit),
        height_text(supports.design[row], unit),
        schedule.amounts.signed(supports.residual[row]),
        _movement(schedule, row),
    ]
    if schedule.rules.step:
        steps = found.move[row] / schedule.rules.step
        cells.append(number_text(abs(steps), 0) if steps == steps and abs(steps) > 0.5 else "")
    return cells + [
        schedule.amounts.signed(found.predicted[row]),
        schedule.after[row].replace("no tolerance", ""),
        schedule.reasons[row],
        "",
    ]


def _kind(schedule, row):
    """How a row is set: shaded, in bold or in grey."""
    if schedule.after[row] in ("high", "low") or schedule.actions[row] in ("measure again", "left out"):
        return "out act" if schedule.actions[row] in ("raise", "lower") else "out"
    return "quiet" if schedule.actions[row] in ("keep", "no height") else "act"


def schedule_sheet(schedule, title, record):
    """The schedule as a page to print, bytes."""
    unit, small = UNIT_LABELS[schedule.units.height_name], schedule.amounts.label
    columns = [
        Column(tr("Station ({})").format(schedule.units.chainage_label), "k"),
        Column(tr("As built ({})").format(unit), "n"),
        Column(tr("Design ({})").format(unit), "n"),
        Column(tr("Residual ({})").format(small), "n"),
        Column(tr("Movement ({})").format(small), "k"),
    ]
    columns += (
        [Column(tr("Steps of {}").format(schedule.amounts.with_unit(schedule.rules.step)), "n")]
        if schedule.rules.step
        else []
    )
    columns += [
        Column(tr("Predicted ({})").format(small), "n"),
        Column(tr("After")),
        Column(tr("Remark")),
        Column(tr("Reading after ({}), initials").format(unit), "b"),
    ]
    parts = [
        Paragraph(schedule.result_sentence(), "lead"),
        Paragraph(tr("Asked for: {}.").format(schedule.method_sentence())),
    ]
    parts += [
        Paragraph(text, "warn")
        for text in filter(None, (*schedule.supports.moved, schedule.untested(), *schedule.infeasible()))
    ] + [Paragraph(text) for text in schedule.left_out()]
    parts += [
        cautions(
            tr(
                "Check the controls, the height system and the unit before anything is moved. Move in small passes, "
                "and read neighbouring supports again after each: a structure that is continuous moves with them."
            )
        ),
        _about(schedule, record),
        Paragraph(
            tr(
                "Signs: residual is as-built minus design, + is built high. Movement is up for raise (▲), down for "
                "lower (▼). Predicted is the residual after the movement. Steps are counts of the shims' step."
            ),
            "small",
        ),
    ]
    for axis, rows in _order(schedule.supports).items():
        rows = rows[schedule.actions[rows] != "off axis"]
        if not len(rows):
            continue
        kinds = tuple(_kind(schedule, row) for row in rows.tolist())
        parts += [
            Heading(tr("Axis {}").format(axis) if axis else tr("Supports")),
            Table(
                tuple(columns),
                [_row(schedule, row) for row in rows.tolist()],
                tr("{}. Shaded: out of tolerance after the movement, or not to be moved.").format(
                    counted(len(rows), tr("support"), tr("supports"))
                ),
                kinds,
            ),
        ]
    return html_page(tr("Adjustment schedule: {}").format(title), parts)


def setting_out_sheet(schedule, title, record):
    """Design heights of all stations as a page to print, bytes; InputError where there are none."""
    supports, unit = schedule.supports, schedule.units.height_name
    chainage_unit = UNIT_LABELS[schedule.units.chainage_name]
    if not np.any(np.isfinite(supports.design)):
        raise InputError(
            tr("Layer '{}' has no design heights (field 'design_h'), so there is no sheet of them.").format(
                supports.points.name
            )
        )
    label = UNIT_LABELS[unit]
    columns = [
        Column(tr("Station ({})").format(chainage_unit), "k"),
        Column(tr("Chainage ({})").format(chainage_unit), "n"),
        Column(tr("Offset ({})").format(chainage_unit), "n"),
        Column(tr("Design height ({})").format(label), "n"),
        Column(tr("As built ({})").format(label), "n"),
        Column(tr("Reading ({})").format(label), "b"),
        Column(tr("Difference ({})").format(label), "b"),
        Column(tr("Checked by"), "b"),
    ]
    count = int(np.isfinite(supports.design).sum())
    missing = int(np.sum(np.isfinite(supports.design) & ~np.isfinite(supports.residual)))
    parts = [
        Paragraph(
            tr("{}, {} without an as-built height.").format(
                counted(count, tr("design height"), tr("design heights")), missing
            ),
            "lead",
        ),
        cautions(
            tr(
                "Design heights are computed at each station's own position. They hold in the height system and unit "
                "named here and for no other; a licensed surveyor checks them against the project's benchmarks before "
                "they are set out."
            )
        ),
        _about(schedule, record),
        Paragraph(
            tr("Offset is positive to the right looking up-chainage. An empty 'As built' has not been read yet."),
            "small",
        ),
    ]
    for axis, rows in _order(supports).items():
        rows = rows[np.isfinite(supports.design[rows])]
        if len(rows):
            parts += [
                Heading(tr("Axis {}").format(axis) if axis else tr("Stations")),
                Table(
                    tuple(columns),
                    [
                        [
                            supports.station[row] or str(row + 1),
                            number_text(supports.chainage[row], 3) if np.isfinite(supports.chainage[row]) else "",
                            number_text(supports.offset[row], 3) if np.isfinite(supports.offset[row]) else "",
                            height_text(supports.design[row], unit),
                            height_text(supports.design[row] + supports.residual[row], unit),
                            "",
                            "",
                            "",
                        ]
                        for row in rows.tolist()
                    ],
                ),
            ]
    return html_page(tr("Design heights: {}").format(title), parts)


def schedule_csv(schedule):
    """The schedule as CSV, bytes: heights and movements in the unit of the run, named in the headings."""
    supports, unit = schedule.supports, schedule.units
    h, c = (
        name.replace("us_foot", "usft").replace("foot", "ft").replace("metre", "m")
        for name in (unit.height_name, unit.chainage_name)
    )
    fine = schedule.amounts.height_decimals
    order = np.concatenate(list(_order(supports).values()))

    def column(name, values, decimals):
        return name, [values[row] for row in order.tolist()], decimals

    return csv_bytes(
        [
            column("axis", supports.axis, None),
            column(f"station_{c}", supports.station, None),
            column(f"chainage_{c}", supports.chainage, 3),
            column(f"as_built_{h}", (supports.design + supports.residual) / unit.height, 4),
            column(f"design_h_{h}", supports.design / unit.height, 4),
            column(f"residual_{h}", supports.residual / unit.height, fine),
            column("action", schedule.actions, None),
            column(f"move_{h}", schedule.found.move / unit.height, fine),
            column(f"predicted_{h}", schedule.found.predicted / unit.height, fine),
            column("after", schedule.after, None),
            column("reason", schedule.reasons, None),
        ]
    )
