"""Movements as the crew reads them in a cell, and the columns of a sheet with heights and line beside each other."""

from ..documents.blocks import Column
from ..language.height_text import height_text, sided
from ..language.number_text import number_text
from ..language.stored_words import stored_text
from ..language.translation import tr
from ..language.units import UNIT_LABELS

_SIDE = " side"


def movement(schedule, row):
    """The movement of one support: '▲ Raise 12.0', '◀ Left 5.0'."""
    action, amount = schedule.actions[row], schedule.amounts
    moves = {"raise": tr("▲ Raise {}"), "lower": tr("▼ Lower {}"), "left": tr("◀ Left {}"), "right": tr("▶ Right {}")}
    words = {
        "keep": tr("Keep"),
        "measure again": tr("Measure again"),
        # Beside a column of left and right nothing else begins with 'left'.
        "left out": tr("Set aside") if schedule.line else tr("Left out"),
        "set aside": tr("Set aside"),
        "no height": tr("No as-built height"),
        "no line": tr("No lateral departure"),
        "off axis": tr("Off axis"),
    }
    if action in moves:
        return moves[action].format(amount.text(abs(schedule.found.move[row])))
    return words[action]


def after_text(schedule, row):
    """How one support stands to its tolerance once it is moved; '' where there is none."""
    after = schedule.after[row]
    return "" if after in ("", "no tolerance") else stored_text("side" if schedule.way.sideways else "status", after)


def steps(schedule, row):
    """How many steps the movement is, '' for none."""
    number = abs(schedule.found.move[row] / schedule.rules.step)
    return number_text(number, 0) if number > 0.5 else ""


def line_signs():
    """What the columns of the line mean, in a sentence."""
    return tr(
        "Line, on the tinted ground: left and right looking up-chainage. 'Stands' is where a support is now, '◀ Left' "
        "and '▶ Right' where it is to be moved."
    )


def line_groups(schedule):
    """Headings over the columns: (text, columns that it stands over)."""
    own = [4 if one.rules.step else 3 for one in schedule.both]
    return (
        (tr("Support"), 3),
        (tr("HEIGHT: up and down"), own[0]),
        (tr("LINE: left and right, looking up-chainage"), own[1]),
        (tr("Afterwards"), 2),
    )


def line_columns(schedule):
    """Columns of the sheet with both."""
    full, small = UNIT_LABELS[schedule.units.height_name], schedule.amounts.label
    columns = [
        Column(tr("Station ({})").format(schedule.units.chainage_label), "k"),
        Column(tr("As-built ({})").format(full), "n"),
        Column(tr("Design ({})").format(full), "n"),
    ]
    for one in schedule.both:
        side, stands, move = "", tr("Residual ({})"), tr("Raise or lower ({})")
        if one.way.sideways:
            side, stands, move = _SIDE, tr("Stands ({})"), tr("Move left or right ({})")
        columns += [Column(stands.format(small), "n" + side), Column(move.format(small), "k" + side)]
        if one.rules.step:
            columns.append(Column(tr("Increments of {}").format(one.amounts.with_unit(one.rules.step)), "n" + side))
        columns.append(Column(tr("Predicted ({})").format(small), "n" + side))
    return [*columns, Column(tr("Remark")), Column(tr("Readings, initials"), "b")]


def line_cells(schedule, row):
    """Cells of one support under ``line_columns``."""
    supports, unit = schedule.supports, schedule.units.height_name
    cells = [
        supports.cell(row),
        height_text(supports.design[row] + supports.residual[row], unit),
        height_text(supports.design[row], unit),
    ]
    for one in schedule.both:
        cells += [_departure(one, one.supports.residual[row]), movement(one, row)]
        if one.rules.step:
            cells.append(steps(one, row))
        cells.append(_departure(one, one.found.predicted[row]))
    return [*cells, _remark(schedule, row), ""]


def _departure(one, value):
    """A residual with its sign, a lateral departure with its side."""
    if not one.way.sideways:
        return one.amounts.signed(value)
    size = one.amounts.text(abs(value))
    return size if size in ("", one.amounts.text(0.0)) else sided(size, value)


def _remark(schedule, row):
    """Why a support is not moved, or stays out of tolerance; once where it holds for height and line."""
    texts = []
    for one in schedule.both:
        stays = tr("stays {}").format(after_text(one, row)) if one.after[row] in one.way.outside else ""
        texts.append(", ".join(filter(None, (stays, one.reasons[row]))))
    if texts[0] == texts[1]:
        return texts[0]
    marks = (tr("Height: {}"), tr("Line: {}"))
    return "; ".join(mark.format(text) for mark, text in zip(marks, texts) if text)
