"""The review report as a list of blocks, from which the screen's and the paper's document are both written."""

from dataclasses import replace

import numpy as np

from ..core.units import metres_per
from ..documents.blocks import MOST_AXES_DRAWN, Caution, Code, Column, Facts, Heading, Paragraph, Signatures, Table
from ..entry.recorded_paths import common_folder
from ..language.decision_words import decision_label, line_doubt
from ..language.height_text import height_text
from ..language.number_text import counted, number_text, signed_text
from ..language.stored_words import stored_text
from ..language.translation import tr
from ..language.units import UNIT_LABELS
from .commands import command_lines, python_lines, usable, versions_text
from .facts import axis_facts, run_facts
from .line_sentences import line_headline, line_sentences, line_terms, together_sentence
from .line_tables import counted_against, line_cells, line_columns, line_statistics
from .profile_chart import profile_picture
from .sentences import accuracy_sentence, caution_texts, glossary, headline, system_warning, verdict_sentences
from .statistics_table import count_cells, figures_cells, groups, statistics_columns

_MOST_AXES = 40
MARKS = {"high": "▲ ", "low": "▼ "}


def content(found, titles, drawn, records, *, crs, screen=True, paper=True, old=()):
    """All blocks in their order. ``titles``: of the title block by key; ``drawn``: the Map; ``records``: of all runs;
    ``crs``: of the stations as the core takes it; ``screen``, ``paper``: what the pictures are for; ``old``: sentences
    on what is older than its input."""
    one = found.reviewed
    structure = titles["STRUCTURE"]
    parts = [_title_block(titles, structure), Heading(tr("Verdict"))]
    parts += [
        Paragraph(" ".join(text for text in verdict_sentences(found) if text), "lead", headline(found, structure))
    ]
    lead = line_headline(found, structure)
    parts += [Paragraph(" ".join(line_sentences(found)), "lead", lead)] if lead else []
    together = together_sentence(found)
    parts += [Paragraph(together)] if together else []
    parts += [Paragraph(row["sentence"]) for row in one.curvatures if row["sentence"]]
    if not one.curvatures:
        parts.append(
            Paragraph(tr("Which shape was built was not tested: no table of curvature was supplied."), "small")
        )
    warning = system_warning(found)
    parts += [Paragraph(warning, "warn")] if warning else []
    parts += [Caution((*old, caution_texts()[0])), Heading(tr("Map")), drawn]
    parts += _profiles(found, screen, paper) + _statistics(found) + _flagged(found)
    parts += [Heading(tr("What was computed")), Facts(tuple(run_facts(found, titles, crs)))] + _axes(found)
    parts += _reproduce(records) + [
        Heading(tr("Terms and signs")),
        Facts((*glossary(), *line_terms(found))),
        Heading(tr("Cautions")),
        Caution((*old, *caution_texts())),
    ]
    return parts + _all_stations(found)


def _title_block(titles, structure):
    people = ((tr("Prepared by"), titles["PREPARED_BY"]), (tr("Checked by"), titles["CHECKED_BY"]))
    pairs = [
        (tr("Project"), titles["PROJECT"]),
        (tr("Structure"), structure),
        (tr("Date of the report"), titles["DATE"]),
    ]
    return Signatures(tuple(pair for pair in pairs if pair[1]), people)


def _profiles(found, screen, paper):
    axes = [axis for axis in found.reviewed.axes if len(found.reviewed.rows(axis))]
    parts = [Heading(tr("Profile in both views"))]
    for axis in axes[:MOST_AXES_DRAWN]:
        picture = profile_picture(found, axis, screen=screen, paper=paper)
        title = tr("Axis '{}'").format(axis) if axis else tr("All stations")
        if picture is None:
            parts.append(
                Paragraph(
                    tr(
                        "{}: there are no two stations with a chainage and a design height, so there is no profile."
                    ).format(title),
                    "small",
                )
            )
        else:
            parts += [Heading(title, 3), picture]
    if len(axes) > MOST_AXES_DRAWN:
        parts.append(
            Paragraph(
                tr("Profiles of the first {} of {} are shown.").format(
                    MOST_AXES_DRAWN, counted(len(axes), tr("axis"), tr("axes"))
                ),
                "small",
            )
        )
    return parts


def _figures_row(found, name, rows):
    one = found.reviewed
    return [
        *figures_cells(one, found.amounts, name, one.residual, rows),
        *count_cells(one.status[rows], ("within", "high", "low")),
        str(int(np.sum(one.status[rows] == "no height"))),
    ]


def _statistics(found):
    one = found.reviewed
    on = np.flatnonzero(one.status != "off axis")
    rows = [_figures_row(found, *some) for some in groups(one)]
    aside = int(np.sum(found.doubt[on] & np.isfinite(one.residual[on])))
    if aside:
        rows.append(_figures_row(found, tr("without {} doubted").format(aside), on[~found.doubt[on]]))
    counts = (tr("Within"), tr("High"), tr("Low"), tr("No as-built height"))
    columns = statistics_columns(found.amounts, counts, (36, 17, 14, 15, 16, 18, 20, 14, 11, 11, 14))
    caption = tr("Residuals, as-built minus design. St. dev. is the standard deviation about the mean.")
    return [
        Heading(tr("Statistics")),
        Table(columns, rows, caption),
        Paragraph(accuracy_sentence(found)),
        *line_statistics(found),
        *_straightness(found),
    ]


_STRAIGHTNESS = ("str_vert", "rng_vert", "str_lat", "rng_lat", "str_comb", "max_comb", "zon_vert", "zon_lat", "zon_cyl")


def _straightness(found):
    lines = [row for row in found.reviewed.references if np.isfinite(row["str_vert"])]
    if not found.reviewed.references:
        return [Paragraph(tr("Straightness: not given, since no reference was supplied."), "small")]
    if not lines:
        return [
            Paragraph(
                tr("Straightness: not given, since the reference is a plane; it belongs to a line (FIT 'line')."),
                "small",
            )
        ]
    amounts = found.amounts
    rows = []
    for row in lines:
        unit = metres_per(row["h_unit"]) if row["h_unit"] in UNIT_LABELS else found.reviewed.units.height
        rows.append(
            [row["name"], number_text(row["number"], 0)] + [amounts.text(row[name] * unit) for name in _STRAIGHTNESS]
        )
    small = amounts.label
    columns = (
        Column(tr("Line"), "", 36),
        Column(tr("Stations"), "n", 15),
        *(
            Column(text.format(small), "n", 15)
            for text in (
                tr("Vertical RMS ({})"),
                tr("Vertical range ({})"),
                tr("Lateral RMS ({})"),
                tr("Lateral range ({})"),
                tr("Combined RMS ({})"),
                tr("Combined greatest ({})"),
                tr("Vertical zone ({})"),
                tr("Lateral zone ({})"),
                tr("Zone, cylinder ({})"),
            )
        ),
    )
    caption = tr(
        "Straightness: departures from the best-fit line, blunders set aside. Zone: minimum zone by ISO 12780-1 and "
        "ISO 1101, the least distance between two parallel lines, or the least diameter of a cylinder, that holds all "
        "of them."
    )
    return [Table(columns, rows, caption)]


def _remark(found, row, counts):
    """Flag and decision of one station as text, and whether it ``counts`` against the structure, which no shade tells
    everybody."""
    one = found.reviewed
    texts = []
    if found.suspected[row]:
        moved = any(row in rows for rows in found.moved)
        texts.append(tr("suspected; stretch that moved") if moved else tr("suspected blunder"))
    if found.lat_suspected[row]:
        told, w = line_doubt(moved=any(row in rows for rows in found.lat_moved)), one.lat_w[row]
        texts.append(tr("{}, w = {}").format(told, signed_text(w, 1)) if np.isfinite(w) else told)
    if row in one.decided:
        decided = one.decided[row]
        decision, note, by, at = decided.word, decided.note, decided.by, decided.at
        who = ", ".join(text for text in (by, at) if text)
        texts.append(
            tr("decision: {}").format(decision_label(decision))
            + (f" ({who})" if who else "")
            + (f": {note}" if note else "")
        )
    return "; ".join(texts + ([tr("counts")] if counts else []))


def _station_columns(found, with_axis, with_remark):
    one, small = found.reviewed, found.amounts.label
    unit = UNIT_LABELS[one.units.height_name]
    columns = [Column(tr("Axis"), "", 20)] if with_axis else []
    columns += [
        Column(tr("Station ({})").format(one.units.chainage_label), "k", 18),
        Column(tr("As-built ({})").format(unit), "n", 20),
        Column(tr("Design ({})").format(unit), "n", 20),
        Column(tr("Residual ({})").format(small), "n", 16),
    ]
    columns += [] if with_axis else [Column(tr("Curvature effect ({})").format(small), "n", 18)]
    columns += [Column(tr("Status"), "k", 20)]
    if found.line is not None:
        # More columns: full heights and status a little narrower, so that the remarks keep their room.
        wide = (*range(1 + with_axis), 3 + with_axis)
        columns = [replace(c, width=c.width if k in wide else 0.8 * c.width) for k, c in enumerate(columns)]
    columns += line_columns(found) + ([Column(tr("w"), "n", 12)] if one.has_tested else [])
    columns += [Column(tr("Probability within tolerance"), "n", 15)] if found.has_probability else []
    left = 186.0 - sum(column.width for column in columns)
    if with_remark:
        return (*columns, Column(tr("Flag and decision"), "", left))
    return tuple(replace(column, width=column.width + left / len(columns)) for column in columns)


def _station_row(found, row, with_axis, with_remark, counts):
    one, amounts = found.reviewed, found.amounts
    status = str(one.status[row])
    cells = [one.axis[row]] if with_axis else []
    cells += [
        one.station[row] or str(int(one.order[row]) + 1),
        height_text(one.built[row], one.units.height_name),
        height_text(one.design[row], one.units.height_name),
        amounts.signed(one.residual[row]),
    ]
    cells += [] if with_axis else [amounts.signed(one.design[row] - one.flat[row])]
    cells += [MARKS.get(status, "") + stored_text("status", status), *line_cells(found, row, _percent)]
    cells += [_test_text(one.w[row])] if one.has_tested else []
    if found.has_probability:
        cells.append(_percent(found.probability[row]))
    return cells + ([_remark(found, row, counts)] if with_remark else [])


def _test_text(w):
    """A test value: its tenths where it is near what it is compared with."""
    return "" if not np.isfinite(w) else number_text(w, 1 if abs(w) < 99.95 else 0)


def _percent(probability):
    """A probability in whole percent, never rounded to certainty."""
    if not np.isfinite(probability):
        return ""
    if probability > 0.99:
        return "> 99 %"
    return "< 1 %" if probability < 0.01 else f"{100.0 * probability:.0f} %"


def _flagged(found):
    one, rows = found.reviewed, found.flagged.tolist()
    parts = [Heading(tr("Stations needing attention"))]
    if not one.has_tested:
        parts.append(Paragraph(tr("Blunders: not tested; no tested stations were supplied."), "small"))
    elif int(np.sum(one.suspected & ~found.suspected)):
        parts.append(
            Paragraph(
                tr(
                    "Blunders: the test flags {} of {}. So many mean that the structure has another shape than the one "
                    "fitted, so these flags are not taken for blunders."
                ).format(
                    int(np.sum(one.suspected & ~found.suspected)),
                    counted(int(np.sum(np.isfinite(one.w))), tr("station"), tr("stations")),
                ),
                "warn",
            )
        )
    many = int(np.sum(one.lat_suspected & ~found.lat_suspected))
    if many:
        parts.append(
            Paragraph(
                tr(
                    "Blunders in line: the test flags {} of {}. So many mean that the structure runs otherwise in plan "
                    "than the line fitted, so these flags are not taken for blunders."
                ).format(many, counted(int(np.sum(np.isfinite(one.lat_w))), tr("station"), tr("stations"))),
                "warn",
            )
        )
    if not one.has_decisions:
        parts.append(Paragraph(tr("Decisions: none were supplied."), "small"))
    if not rows:
        return parts + [Paragraph(tr("No station is out of tolerance, flagged or without an as-built height."))]
    rows.sort(key=lambda row: -np.nan_to_num(abs(one.residual[row]), nan=-1.0))
    many, against = len(one.axes) > 1, counted_against(found)
    kinds = tuple("out" if against[row] else "" for row in rows)
    return parts + [
        Table(
            _station_columns(found, many, True),
            [_station_row(found, row, many, True, against[row]) for row in rows],
            _flagged_caption(found),
            kinds,
        )
    ]


def _flagged_caption(found):
    if found.line is None:
        text = tr(
            "Out of tolerance, flagged, decided about or without an as-built height; the greatest residual first."
        )
    else:
        text = tr(
            "Out of tolerance in height or in line, flagged, decided about or without an as-built height; the greatest "
            "residual first."
        )
    return f"{text} {_shading()}"


def _shading():
    return tr("Shaded, and marked 'counts': counted against the structure.")


def _axes(found):
    parts = []
    for axis in found.reviewed.axes:
        facts = tuple(axis_facts(found, axis))
        if facts:
            parts += [Heading(tr("Axis '{}'").format(axis) if axis else tr("The axis"), 3), Facts(facts)]
    if len(parts) > 2 * _MOST_AXES:
        return parts[: 2 * _MOST_AXES] + [
            Paragraph(
                tr("Designs of the first {} axes are shown; the summary has them all.").format(_MOST_AXES), "small"
            )
        ]
    return parts


def _reproduce(records):
    calls = [record for record in records if usable(record)]
    parts = [Heading(tr("Reproducing the results"))]
    if not calls:
        return parts + [
            Paragraph(tr("The layers carry no record of the runs that made them, so the calls are not known."), "small")
        ]
    folder = common_folder(calls)
    parts.append(
        Paragraph(
            tr("The same inputs, versions and calls give the same numbers. Recorded with: {}.").format(
                versions_text(calls[0])
            )
        )
    )
    return parts + [
        Code(command_lines(calls, folder), tr("On the command line")),
        Code(python_lines(calls, folder), tr("In Python")),
    ]


def _all_stations(found):
    one, against = found.reviewed, counted_against(found)
    parts = [Heading(tr("All stations"))]
    for axis in one.axes:
        rows = one.rows(axis).tolist()
        if not rows:
            continue
        kinds = tuple("out" if against[row] else "" for row in rows)
        counting = bool(np.any(against[rows]))
        remarks = one.has_tested or one.has_decisions or bool(np.any(against))
        caption = (tr("Axis '{}': {}.") if axis else "{}{}.").format(
            axis, counted(len(rows), tr("station"), tr("stations"))
        )
        parts.append(
            Table(
                _station_columns(found, False, remarks),
                [_station_row(found, row, False, remarks, against[row]) for row in rows],
                f"{caption} {_shading()}" if counting else caption,
                kinds,
            )
        )
    return parts
