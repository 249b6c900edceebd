"""A height list as people keep it: headings, comments, merged cells and ways of writing numbers, read and told."""

from dataclasses import dataclass, field
from typing import Optional

import numpy as np

from ..boundary.tables import read_table
from ..core.headings import column_kind, columns_of
from ..core.number_reading import read_column
from ..core.row_ranges import rows_of_each
from ..core.suspicious_readings import out_of_order, suspicious_readings
from ..documents.csv_file import text_of_cell
from ..language.core_sentences import worded
from ..language.number_text import counted, listed, number_text
from ..language.translation import tr

KEYS = ("station", "offset", "height", "axis")
_COMMENT = ("#", "//", ";", "*")
_FIRST_ROWS = 12


@dataclass
class HeightList:
    """The columns of a list: ``station`` and ``axis`` texts, ``offset`` and ``height`` numbers as read (n,), NaN for
    none; ``undulation``: likewise, None where no column is read; ``numbers``: of the rows, as the list's file counts
    them (n,); ``reasons``: {row: why it cannot be used}; ``quiet``: rows that are no readings at all; ``notes``: how
    columns were read."""

    station: list
    axis: list
    offset: np.ndarray
    height: np.ndarray
    written: list
    numbers: np.ndarray
    reasons: dict = field(default_factory=dict)
    quiet: set = field(default_factory=set)
    notes: list = field(default_factory=list)
    undulation: Optional[np.ndarray] = None


def heading_columns(cells):
    """{key: index} of the columns that a row of ``cells`` heads, -1 for those it does not name."""
    return {key: next(iter(columns_of([(cell,) for cell in cells], key)), -1) for key in KEYS}


def heading_row(source, fields, feedback):
    """The columns by a heading that stands in one of the first rows: ({key: field index}, its row from 0), (fields, -1)
    where there is none. For spreadsheets whose fields have no names of their own."""
    number = source.fields().count()
    table = read_table(source, {}, {str(k): k for k in range(number)}, feedback)
    for row in range(min(_FIRST_ROWS, len(table.ids))):
        found = heading_columns([table.columns[str(k)][row] for k in range(number)])
        if found["station"] >= 0 and found["height"] >= 0:
            return {key: fields[key] if fields[key] >= 0 else found[key] for key in KEYS}, row
    return fields, -1


def headings_within(columns, first):
    """Headings that stand among the rows of the columns {key: texts}, those before ``first`` and further down:
    (of heights, of chainages and offsets), lists of texts."""
    heights, chainages = [], []
    for row, (station, offset, height, _) in enumerate(zip(*(columns[key] for key in KEYS))):
        if row < first or _is_heading(station, height):
            heights.append(height)
            chainages += [station, offset]
    return heights, chainages


def _is_heading(station, height):
    """Whether a row's cells are headings."""
    return column_kind(station) == "station" or column_kind(height) == "height"


def read_height_list(columns, axis_names, units, sign, first=0, numbers=None, undulation=""):
    """HeightList of the columns {key: texts}; rows before ``first`` are headings. ``numbers``: of the rows in the
    list's file (n,), None: from 1; ``undulation``: name of the field of the column 'undulation', '' where the run
    uses none. InputError where a decimal sign is open."""
    # Of a file that one of our entries has written: '-2+00 is the station -2+00.
    read = (*KEYS, "undulation") if undulation else KEYS
    columns = {key: [text_of_cell(text) for text in columns[key]] for key in read}
    station, axis = list(columns["station"]), list(columns["axis"])
    numbers = np.arange(1, len(station) + 1) if numbers is None else numbers
    found = HeightList(station, axis, np.zeros(0), np.zeros(0), list(columns["height"]), numbers)
    by_case = {name.casefold(): name for name in axis_names}
    current, filled, merged = "", 0, _is_merged(axis)
    for row, cells in enumerate(zip(*(columns[key] for key in KEYS))):
        reason, current = _no_reading(cells, by_case, current, row < first)
        if reason:
            found.reasons[row] = reason
            found.quiet.add(row)
        elif axis[row]:
            current = axis[row] if merged else ""
        elif current and len(axis_names) > 1:
            axis[row], filled = current, filled + 1
    if filled:
        found.notes.append(
            tr("{} without an axis, taken to be on that of the rows above.").format(
                counted(filled, tr("row stands"), tr("rows stand"))
            )
        )
    chainages_in_feet, heights_in_feet = (name != "metre" for name in (units.chainage_name, units.height_name))
    found.offset = _column(found, columns["offset"], tr("offset"), sign, chainages_in_feet)
    found.height = _column(found, columns["height"], tr("height"), sign, heights_in_feet)
    if undulation:
        found.undulation = _column(found, columns["undulation"], tr("undulation"), sign, heights_in_feet, undulation)
    found.station = _stations(found, sign, chainages_in_feet)
    return found


def _is_merged(axis):
    """True where several axes are named once each, as a spreadsheet's merged cells leave them."""
    named = [text for text in axis if text]
    return len(named) == len(set(named)) > 1


def _no_reading(cells, by_case, current, heading):
    """Why a row is no reading, '' where it is one; and the axis for the rows below."""
    station, offset, height, axis = map(str.strip, cells)
    if not (station or offset or height or axis):
        return (tr("The row is a heading.") if heading else tr("The row is empty.")), current
    first = station or axis or height or offset
    if first.startswith(_COMMENT):
        return tr("The row is a comment."), current
    if heading or _is_heading(station, height):
        return tr("The row is a heading."), current
    if not height and not offset and not (station and axis):
        named = by_case.get((station or axis).casefold(), "")
        if named:
            return tr("The row names the axis '{}' for those below it.").format(named), named
    return "", current


def _column(found, texts, name, sign, in_feet, named=""):
    """The numbers of a column of ``texts``, NaN for none; ``named``: the field that a reason must name."""
    texts = ["" if row in found.quiet else text for row, text in enumerate(texts)]
    column = read_column(texts, name=name, sign=sign, in_feet=in_feet)
    for row, reason in column.reasons.items():
        reason = worded(reason)
        found.reasons.setdefault(row, tr("Field '{}': {}").format(named, reason) if named else reason)
    if column.notes:
        found.notes.append(tr("The {} has {}.").format(name, ", ".join(map(tr, column.notes))))
    return column.values


def _stations(found, sign, in_feet):
    """Stations with a decimal point: bare distances as any number, after a plus a comma can only be a decimal one."""
    texts = ["" if row in found.quiet else text.strip() for row, text in enumerate(found.station)]
    bare = [text if "," in text and "+" not in text[1:] else "" for text in texts]
    if not any("," in text for text in texts):
        return texts
    column = read_column(bare, name=tr("station"), sign=sign, in_feet=in_feet)
    if any(bare) and column.notes:
        found.notes.append(tr("The station has {}.").format(", ".join(map(tr, column.notes))))
    plain = []
    for row, text in enumerate(texts):
        if bare[row]:
            plain.append(text if row in column.reasons else np.format_float_positional(column.values[row], trim="-"))
        else:
            plain.append(text.replace(",", ".") if "+" in text else text)
    return plain


def suspicions(rows, listed_rows, names, notation):
    """Sentences on readings that look like slips. ``rows``: lists of placed rows (axis, chainage, height, row), metres
    and heights as read; ``listed_rows``: HeightList."""
    chainage, height, row = (np.array(getattr(rows, key)) for key in ("chainage", "height", "row"))
    for k, mine in sorted(rows_of_each(rows.axis).items()):
        name = names[k]
        written = [listed_rows.written[row[j]] for j in mine]
        for one in suspicious_readings(chainage[mine], height[mine], written)[:10]:
            yield tr(
                "row {} of axis '{}', height {}: looks like {} ({} would fit its neighbours); left as it is"
            ).format(
                listed_rows.numbers[row[mine[one.row]]],
                name,
                written[one.row],
                tr(one.kind),
                number_text(one.instead, 3),
            )
        for j in out_of_order(chainage[mine]):
            yield tr("row {} of axis '{}', station {}: out of the order of the list; left as it is").format(
                listed_rows.numbers[row[mine[j]]], name, notation.shown(chainage[mine[j]])
            )


def told(height_list, source, asked):
    """Say how the columns were read, and how many rows are no readings."""
    for note in height_list.notes:
        asked.read_as(note)
    if height_list.quiet:
        asked.read_as(
            tr("Layer '{}': {} no reading (empty, a heading, a comment or an axis' name): row {}.").format(
                source.sourceName(),
                counted(len(height_list.quiet), tr("row is"), tr("rows are")),
                listed([height_list.numbers[row] for row in sorted(height_list.quiet)], 8),
            )
        )
