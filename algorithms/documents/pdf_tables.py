"""Tables on paper: broken over pages between their rows, the heading on each; the host's own tables with plain text."""

from qgis.core import QgsLayoutFrame, QgsLayoutItemManualTable, QgsLayoutTable, QgsTableCell
from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtGui import QColor, QFont

from ..language.translation import tr
from .pdf_pages import BOTTOM, INK, LEFT, QUIET, TOP, WIDTH, text_format
from .pdf_text import FAMILY, line_height, wrapped

_CELL, _MARGIN, _STROKE = 7.0, 0.7, 0.12
_GROUND = {"out": "#fdeee4", "head": "#ececf0"}
# Measured on 3.22 and 3.40: the height of a cell of one line, of its type's size.
_FIRST_LINE = 0.94
_MOST_LINES = 40


def _cells(table, row):
    """The texts of one row, wrapped to their columns: list of lists of lines."""
    return [_indented(table, k, _cut(wrapped(text, _CELL, _inner(table, k)))) for k, text in enumerate(row)]


def _cut(lines):
    """A cell that would not fit on a page ends with a mark; the screen's document has it whole."""
    return lines if len(lines) <= _MOST_LINES else [*lines[:_MOST_LINES], tr("… (cut)")]


def _inner(table, k):
    return table.columns[k].width - 2.0 * _MARGIN - 0.6 - (2.0 if _after_number(table, k) else 0.0)


def _after_number(table, k):
    return k > 0 and table.columns[k].kind != "n" and table.columns[k - 1].kind == "n"


def _indented(table, k, lines):
    """Text beside a right-aligned number keeps off it."""
    return ["\u2002" + line for line in lines] if _after_number(table, k) and lines else lines or [""]


def _row_height(cells):
    more = max(len(lines) for lines in cells) - 1
    return _FIRST_LINE * _CELL * 25.4 / 72.0 + more * line_height(_CELL) + 2.0 * _MARGIN + _STROKE


def write_table(paper, block, *, headed=True):
    """A table, broken over pages between its rows, its heading repeated on each."""
    if block.caption:
        paper.room(35.0)
        paper.text(block.caption, 8.0, color=QUIET, after=1.0)
    head = [
        _indented(block, k, wrapped(column.heading, _CELL, _inner(block, k), bold=True))
        for k, column in enumerate(block.columns)
    ]
    above = _row_height(head) if headed else 0.0
    kinds = block.kinds or [""] * len(block.rows)
    waiting, height = [], above
    for row, kind in zip(block.rows, kinds):
        cells = _cells(block, row)
        if paper.y + height + _row_height(cells) > BOTTOM and (waiting or paper.y > TOP):
            _write_part(paper, block, head if headed else None, waiting)
            paper.new_page()
            waiting, height = [], above
        waiting.append((cells, kind))
        height += _row_height(cells)
    _write_part(paper, block, head if headed else None, waiting)
    paper.y += 2.5


def _write_part(paper, block, head, rows):
    """The rows of one page under the heading, which is a table of its own: the oldest host cuts headings of
    two lines.
    """
    if rows and head is not None:
        _write_rows(paper, block, [(head, "head")], bold=True)
    if rows:
        _write_rows(paper, block, rows)


def _write_rows(paper, block, rows, *, bold=False):
    table = QgsLayoutItemManualTable.create(paper.layout)
    paper.layout.addMultiFrame(table)
    table.setTableContents(
        [[_cell(lines, column, kind) for lines, column in zip(cells, block.columns)] for cells, kind in rows]
    )
    table.setColumnWidths([column.width - 2.0 * _MARGIN for column in block.columns])
    table.setWrapBehavior(QgsLayoutTable.WrapBehavior.TruncateText)
    table.setCellMargin(_MARGIN)
    table.setGridStrokeWidth(_STROKE)
    table.setGridColor(QColor("#9a9aa0"))
    table.setVerticalGrid(False)
    font = QFont(FAMILY)
    font.setPointSizeF(_CELL)
    font.setBold(bold)
    table.setContentTextFormat(text_format(font, _CELL, INK))
    frame = QgsLayoutFrame(paper.layout, table)
    table.addFrame(frame)
    # A little more than is needed: a row that did not fit would be left out without a word.
    height = sum(_row_height(cells) for cells, _ in rows)
    paper.place(frame, LEFT, paper.y, WIDTH + 1.0, 1.01 * height + 2.0)
    paper.y += height


def _align(column):
    return Qt.AlignmentFlag.AlignRight if column.kind == "n" else Qt.AlignmentFlag.AlignLeft


def _cell(lines, column, kind):
    cell = QgsTableCell("\n".join(lines))
    cell.setHorizontalAlignment(_align(column))
    cell.setVerticalAlignment(Qt.AlignmentFlag.AlignBottom if kind == "head" else Qt.AlignmentFlag.AlignTop)
    if kind in _GROUND:
        cell.setBackgroundColor(QColor(_GROUND[kind]))
    return cell
