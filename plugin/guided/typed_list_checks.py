"""What is said beside each line of a typed list: read by the reader of files, doubted by the core, told in words."""

from dataclasses import dataclass, field
from itertools import repeat

import numpy as np

from ...algorithms.core.errors import InputError
from ...algorithms.core.headings import unit_in_heading
from ...algorithms.core.number_reading import decimals_written, has_digits
from ...algorithms.core.second_typing import Line
from ...algorithms.core.station_notation import notation
from ...algorithms.core.typed_lines import doubts
from ...algorithms.language.core_sentences import worded
from ...algorithms.language.number_text import counted, listed, number_text
from ...algorithms.language.translation import tr
from ...algorithms.language.units import UNIT_LABELS, said_unit
from ...algorithms.structure.height_list import KEYS, heading_columns, read_height_list

_REMARKS = ("remark", "remarks", "note", "notes", "comment", "comments")
_FIRST_ROWS = 12


@dataclass(frozen=True)
class Read:
    """Lines as the reader of files takes them: texts and numbers (n,), NaN for none; ``told``: what hinders each line,
    (kind, sentence) or None; ``quiet``: whether it is no reading (n,)."""

    station: list
    axis: list
    written: list
    chainage: np.ndarray
    offset: np.ndarray
    height: np.ndarray
    told: list
    quiet: list

    def spliced(self, row, number, part):
        """These lines with those of ``part`` (Read) in place of ``number`` from ``row`` on."""
        new = {}
        for name in ("station", "axis", "written", "told", "quiet"):
            new[name] = list(getattr(self, name))
            new[name][row : row + number] = getattr(part, name)
        for name in ("chainage", "offset", "height"):
            whole = getattr(self, name)
            new[name] = np.concatenate([whole[:row], getattr(part, name), whole[row + number :]])
        return Read(**new)


@dataclass(frozen=True)
class Checked:
    """``told``: {line: (kind, sentence)}, kind 'problem', 'doubt' or 'wait'; ``problem``: with a whole column, '' for
    none; ``number``: of lines with a reading; ``doubtful``, ``refused``: of lines with doubts and of those that cannot
    be placed."""

    told: dict = field(default_factory=dict)
    problem: str = ""
    number: int = 0
    doubtful: int = 0
    refused: int = 0


def alone(cells):
    """Whether cells (texts) are read the same way whatever the rest of their column holds: no decimal sign to tell."""
    cells = list(cells)
    commas = any(map(str.__contains__, cells, repeat(",")))
    return not commas and max(map(str.count, cells, repeat(".")), default=0) < 2


def read(columns, axis_names, units):
    """Read of ``columns`` {key: texts} of a list on these axes in ``units`` (Units). InputError where the decimal sign
    of a column is open."""
    columns = {**{key: [""] * len(columns["station"]) for key in KEYS}, **columns}
    found = read_height_list({key: columns[key] for key in KEYS}, axis_names, units, "")
    told, chainage = [None] * len(found.station), np.full(len(found.station), np.nan)
    for row, station in enumerate(found.station):
        if row in found.quiet:
            if any(columns[key][row] for key in KEYS):
                told[row] = ("wait", found.reasons[row])
            continue
        try:
            _needs_axis(found.axis[row], axis_names)
            if not station:
                raise InputError(tr("The row has no station."))
            chainage[row] = notation(station)[0]
            if row in found.reasons:
                raise InputError(found.reasons[row])
        except InputError as error:
            told[row] = ("problem", worded(error))
        else:
            if np.isnan(found.height[row]):
                told[row] = ("wait", tr("No height: placed without one."))
    quiet = [row in found.quiet for row in range(len(told))]
    return Read(found.station, found.axis, found.written, chainage, found.offset, found.height, told, quiet)


def checked(lines, units):
    """Checked of lines (Read)."""
    told = {row: one for row, one in enumerate(lines.told) if one is not None}
    refused = sum(kind == "problem" for kind, _ in told.values())
    said = {}
    for doubt in doubts(lines.chainage, lines.offset, lines.height, lines.written, lines.axis):
        said.setdefault(doubt.row, []).append(_sentence(doubt, units, lines.written[doubt.row]))
    for row, sentences in said.items():
        kind, first = told.get(row, ("doubt", ""))
        told[row] = ("problem" if kind == "problem" else "doubt", " ".join(filter(None, [first, *sentences])))
    return Checked(told, "", len(lines.quiet) - sum(lines.quiet), len(said), refused)


def compared_lines(cells, lines):
    """Core Lines of those of ``cells`` [{column: text}] that are readings; ``lines``: their Read."""
    return [_line(one, lines, row) for row, one in enumerate(cells) if not lines.quiet[row]]


def _needs_axis(name, names):
    if name and names and name not in names:
        raise InputError(tr("There is no axis '{}'; the axes are {}.").format(name, listed(names)))
    if not name and len(names) > 1:
        raise InputError(tr("The row names no axis, and there are {}.").format(len(names)))


def _line(cells, lines, row):
    """The line as the comparison of two typings takes it: by number where it is one, else as typed."""

    def value(number, text):
        return round(float(number), 9) if np.isfinite(number) else text.strip() or None

    values = {
        "station": value(lines.chainage[row], lines.station[row]),
        "height": value(lines.height[row], cells["height"]),
        "offset": value(lines.offset[row], cells["offset"]) or None,
        "axis": lines.axis[row],
    }
    return Line((values["axis"], values["station"], values["offset"]), dict(cells), values)


def _sentence(doubt, units, text):
    """A doubt in words, with the number that raised it; ``text``: the height as typed, for its decimals."""
    chainage, height = UNIT_LABELS[units.chainage_name], UNIT_LABELS[units.height_name]
    if doubt.kind == "spacing":
        return tr("{} {} from the row above; usual is {} {}.").format(
            number_text(doubt.found, 2), chainage, number_text(doubt.instead, 2), chainage
        )
    if doubt.kind == "order":
        return tr("The station is out of order.")
    if doubt.kind == "doubled":
        return tr("The same station as in row {}.").format(int(doubt.instead) + 1)
    if doubt.kind == "height":
        side = tr("above") if doubt.found > 0 else tr("below")
        return tr("{} {} {} the line of its neighbours.").format(number_text(abs(doubt.found), 3), height, side)
    question = {
        "transposed digits": tr("Digits exchanged? {} {} would fit the neighbours."),
        "slipped decimal point": tr("Decimal point slipped? {} {} would fit the neighbours."),
        "unit": tr("Read in another unit? {} {} would fit the neighbours."),
    }[doubt.kind]
    return question.format(number_text(doubt.instead, min(max(decimals_written(text), 3), 6)), height)


def summary(result):
    """[(kind, sentence)] on the whole list."""
    if result.problem:
        return [("problem", result.problem), ("wait", tr("One height with a further decimal shows which it is."))]
    if not result.number:
        return [("wait", tr("No row yet: type a station and a height, or paste a table."))]
    told = [("wait", counted(result.number, tr("row"), tr("rows")) + ".")]
    if result.refused:
        words = counted(result.refused, tr("row cannot be placed"), tr("rows cannot be placed"))
        told.append(("problem", tr("{}: see the column Check.").format(words)))
    if result.doubtful:
        words = counted(result.doubtful, tr("row with a doubt"), tr("rows with doubts"))
        told.append(("doubt", tr("{}: compare with the drawing. The list can be used as it is.").format(words)))
    elif not result.refused:
        told.append(("fact", tr("No doubts.")))
    return told


@dataclass(frozen=True)
class Pasted:
    """``lines``: [{column: text}]; ``units``: {'height' or 'station': unit} that headings tell; ``notes``: sentences
    on what was left out or taken from headings."""

    lines: list
    units: dict
    notes: list


def understood(rows, columns, first):
    """Pasted of ``rows`` of cells: by their heading row where they have one, else from the column ``first`` of
    ``columns`` on. InputError for headings in a unit that no list is read in."""
    at, by_heading = _heading(rows)
    if at < 0:
        places = dict(enumerate(columns[columns.index(first) :]))
        left = [str(number + 1) for number in range(len(places), len(rows[0]))]
        units, notes = {}, []
    else:
        places = {number: column for column, number in by_heading.items() if number >= 0 and column in columns}
        left = [rows[at][number] or str(number + 1) for number in range(len(rows[at])) if number not in places]
        units = {
            key: unit_in_heading(rows[at][by_heading[key]]) for key in ("height", "station") if by_heading[key] >= 0
        }
        units = {key: unit for key, unit in units.items() if unit}
        for key, unit in units.items():
            if unit not in UNIT_LABELS:
                raise InputError(
                    tr("The heading '{}' is in {}, but lists are read in metres or feet; nothing was pasted.").format(
                        rows[at][by_heading[key]], said_unit(unit)
                    )
                )
        names = [f"{column}: {rows[at][number]}" for number, column in places.items()]
        notes = [tr("Columns by their headings, {}.").format(listed(names, 6))]
        if at:
            notes.append(tr("{} above the headings left out.").format(counted(at, tr("row"), tr("rows"))))
    if left:
        notes.append(tr("Columns without a place here, left out: {}.").format(listed(left, 6)))
    lines = [{column: row[number] for number, column in places.items() if number < len(row)} for row in rows[at + 1 :]]
    return Pasted(lines, units, notes)


def _heading(rows):
    """(row of the headings, {column: cell}), (-1, {}) where there are none."""
    for at, row in enumerate(rows[:_FIRST_ROWS]):
        found = heading_columns(row)
        alone = at == 0 and max(found.values()) >= 0 and not any(map(has_digits, row))
        if alone or found["station"] >= 0 and found["height"] >= 0:
            remark = next((k for k, cell in enumerate(row) if cell.lower().strip(" :") in _REMARKS), -1)
            return at, {**found, "remark": remark}
    return -1, {}
