"""The papers of an adjustment schedule: the sheet for the crew, the set-out sheet of design heights, and the CSV."""

from datetime import date

import numpy as np

from ..core.errors import InputError
from ..core.row_ranges import rows_of_each
from ..documents.blocks import Blanks, Column, Facts, Heading, Paragraph, SideBySide, Table, cautions
from ..documents.csv_file import csv_bytes
from ..documents.html import html_page
from ..language.height_text import height_text
from ..language.number_text import counted, number_text
from ..language.stored_words import stored_text, words_of
from ..language.translation import tr
from ..language.units import UNIT_LABELS
from .movement_cells import after_text, line_cells, line_columns, line_groups, line_signs, movement, steps


def _order(supports):
    """{axis: rows by chainage}, axes in their input order; rows without chainage last."""
    chainage = np.where(np.isfinite(supports.chainage), supports.chainage, np.inf)
    own = rows_of_each(supports.axis)
    return {axis: rows[np.argsort(chainage[rows], kind="stable")] for axis, rows in own.items()}


def _about(schedule, record):
    """What the heights are, and what made the sheet."""
    made = record.more["made_from"]
    unit, facts = UNIT_LABELS[schedule.units.height_name], []
    system = words_of("height_system").get(made.height_system, "")
    facts.append((tr("Heights"), tr("in {}").format(unit) + (", " + system if system else "")))
    if not made.height_unit:
        facts.append((tr("Unit"), tr("as stated for this sheet; the stations carry no record of their run")))
    facts.append((tr("Stations and chainages"), tr("in {}").format(schedule.units.chainage_label)))
    designs = {one.get("design") for one in made.axes.values()} - {None}
    if designs:
        facts.append((tr("Design"), ", ".join(stored_text("design", one) for one in sorted(designs))))
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


def _row(schedule, row):
    supports, found, unit = schedule.supports, schedule.found, schedule.units.height_name
    cells = [
        supports.cell(row),
        height_text(supports.design[row] + supports.residual[row], unit),
        height_text(supports.design[row], unit),
        schedule.amounts.signed(supports.residual[row]),
        movement(schedule, row),
    ]
    if schedule.rules.step:
        cells.append(steps(schedule, row))
    return cells + [schedule.amounts.signed(found.predicted[row]), after_text(schedule, row), schedule.reasons[row], ""]


def _kind(schedule, row):
    """How a row is set: shaded, in bold or in grey."""
    moves = any(one.actions[row] in (one.way.up, one.way.down) for one in schedule.both)
    out = any(one.after[row] in one.way.outside for one in schedule.both)
    if out or schedule.actions[row] in ("measure again", "left out"):
        return "out act" if moves else "out"
    return "act" if moves else "quiet"


def schedule_sheet(schedule, title, record):
    """The schedule as a page to print, bytes."""
    unit, small = UNIT_LABELS[schedule.units.height_name], schedule.amounts.label
    columns = [
        Column(tr("Station ({})").format(schedule.units.chainage_label), "k"),
        Column(tr("As-built ({})").format(unit), "n"),
        Column(tr("Design ({})").format(unit), "n"),
        Column(tr("Residual ({})").format(small), "n"),
        Column(tr("Movement ({})").format(small), "k"),
    ]
    columns += (
        [Column(tr("Increments of {}").format(schedule.amounts.with_unit(schedule.rules.step)), "n")]
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
        *(Paragraph(one.result_sentence(), "lead") for one in schedule.both),
        *(Paragraph(one.said(tr("Asked for: {}.").format(one.method_sentence()))) for one in schedule.both),
    ]
    parts += [Paragraph(text, "warn") for text in schedule.warnings()]
    parts += [Paragraph(text) for one in schedule.both for text in one.left_out()]
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
                "lower (▼). Predicted is the residual after the movement. Increments are counts of the shim increment."
            ),
            "small",
        ),
        *([Paragraph(line_signs(), "small")] if schedule.line else []),
    ]
    cells, groups = _row, ()
    if schedule.line:
        columns, cells, groups = line_columns(schedule), line_cells, line_groups(schedule)
    for axis, rows in _order(schedule.supports).items():
        rows = rows[schedule.actions[rows] != "off axis"]
        if not len(rows):
            continue
        kinds = tuple(_kind(schedule, row) for row in rows.tolist())
        parts += [
            Heading(tr("Axis {}").format(axis) if axis else tr("Supports")),
            Table(
                tuple(columns),
                [cells(schedule, row) for row in rows.tolist()],
                tr("{}. Shaded: out of tolerance after the movement, or not to be moved.").format(
                    counted(len(rows), tr("support"), tr("supports"))
                ),
                kinds,
                groups,
            ),
        ]
    return html_page(tr("Adjustment schedule: {}").format(title), parts, across=schedule.line is not None)


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
        Column(tr("As-built ({})").format(label), "n"),
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
                            supports.cell(row),
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
    order = np.concatenate(list(_order(supports).values()))

    def column(name, values, decimals):
        return name, [values[row] for row in order.tolist()], decimals

    columns = [
        column("axis", supports.axis, None),
        column(f"station_{c}", supports.station, None),
        column(f"chainage_{c}", supports.chainage, 3),
        column(f"as_built_{h}", (supports.design + supports.residual) / unit.height, 4),
        column(f"design_h_{h}", supports.design / unit.height, 4),
    ]
    # Of the line: lateral_m, positive right, and lat_move_m, so that no column has two meanings.
    for one, departure, mark in zip(schedule.both, ("residual", "lateral"), ("", "lat_")):
        fine = one.amounts.height_decimals
        columns += [
            column(f"{departure}_{h}", one.supports.residual / unit.height, fine),
            column(f"{mark}action", one.actions, None),
            column(f"{mark}move_{h}", one.found.move / unit.height, fine),
            column(f"{mark}predicted_{h}", one.found.predicted / unit.height, fine),
            column(f"{mark}after", one.after, None),
            column(f"{mark}reason", one.reasons, None),
        ]
    return csv_bytes(columns)
