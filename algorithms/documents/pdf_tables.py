"""Tables on paper: broken over pages between their rows, the heading on each."""

from ..language.translation import tr
from .pdf_pages import BOTTOM, LEFT, QUIET, TOP
from .pdf_text import line_height, text_width, wrapped

_CELL, _STROKE = 7.0, 0.12
_MARGIN, _ABOVE = 0.7, 0.45  # beside the text of a cell, and above and below it
_GROUND = {"out": "#fdeee4", "head": "#ececf0"}
_GRID = "#9a9aa0"
_INDENT = 1.2  # of text beside a right-aligned number
_MOST_LINES = 40


def write_table(paper, block, *, headed=True):
    """A table, broken over pages between its rows, its heading repeated on each."""
    if block.caption:
        paper.room(35.0)
        paper.text(block.caption, 8.0, color=QUIET, after=1.0)
    head = [
        wrapped(column.heading, _CELL, _inner(block, k), bold=True) or [""] for k, column in enumerate(block.columns)
    ]
    waiting = headed  # the heading, for the first row below it
    for number, row in enumerate(block.rows):
        cells = [_cut(wrapped(text, _CELL, _inner(block, k))) for k, text in enumerate(row)]
        height = _height(cells) + (_height(head) if waiting else 0.0)
        if paper.y + height > BOTTOM and paper.y > TOP:
            paper.new_page()
            waiting = headed
        if waiting:
            _write_row(paper, block, head, "head")
            waiting = False
        _write_row(paper, block, cells, block.kinds[number] if block.kinds else "")
    paper.y += 2.5


def _cut(lines):
    """A cell that would not fit on a page ends with a mark; the screen's document has it whole."""
    return lines[:_MOST_LINES] + ([tr("… (cut)")] if len(lines) > _MOST_LINES else [])


def _inner(table, k):
    return table.columns[k].width - 2.0 * _MARGIN - 0.3 - (_INDENT if _after_number(table, k) else 0.0)


def _after_number(table, k):
    return k > 0 and table.columns[k].kind != "n" and table.columns[k - 1].kind == "n"


def _height(cells):
    return max(1, *(len(lines) for lines in cells)) * line_height(_CELL) + 2.0 * _ABOVE


def _write_row(paper, block, cells, kind):
    """One row between its two strokes; the heading's texts stand at its foot, others at the top."""
    height, head = _height(cells), kind == "head"
    width = sum(column.width for column in block.columns)
    ground = next((_GROUND[word] for word in kind.split() if word in _GROUND), None)
    if ground:
        paper.box(LEFT, paper.y, width, height, ground)
    left = LEFT
    for k, (lines, column) in enumerate(zip(cells, block.columns)):
        y = paper.y + _ABOVE + (height - _height([lines]) if head else 0.0)
        for line in lines:
            x = left + _MARGIN + (_INDENT if _after_number(block, k) else 0.0)
            if column.kind == "n":
                x = left + column.width - _MARGIN - text_width(line, _CELL, head)
            paper.lines([line], x, y, _CELL, bold=head)
            y += line_height(_CELL)
        left += column.width
    for y in (paper.y, paper.y + height):
        paper.box(LEFT, y - _STROKE / 2.0, width, _STROKE, _GRID)
    paper.y += height
