"""Tables on paper: broken over pages between their rows, the heading on each."""

from dataclasses import replace

from ..language.translation import tr
from .pdf_pages import BOTTOM, LEAST, LEFT, QUIET, TOP
from .pdf_text import line_height, text_width, wrapped

_CELL, _STROKE = LEAST, 0.12
_MARGIN, _ABOVE = 0.7, 0.45  # beside the text of a cell, and above and below it
_GROUND = {"out": "#fdeee4", "head": "#ececf0"}
_GRID = "#7c7c84"
_INDENT = 1.2  # of text beside a right-aligned number
_MOST_LINES = 40
_LONGEST = 12  # texts of a column that are measured
_WIDEST = 26.0  # millimetres that a cell may ask for
_HEADINGS = (26.0, 19.0, 15.0)  # and a word of a heading, the first of them that fits


def write_table(paper, block, *, headed=True):
    """A table, broken over pages between its rows, its heading repeated on each."""
    if block.caption:
        paper.room(35.0)
        paper.text(block.caption, 8.0, color=QUIET, after=1.0)
    block = _fitted(block) if headed else block
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


def _fitted(table):
    """The table with columns as wide as their longest words need, at the cost of those that have room."""
    widths = [column.width for column in table.columns]
    for most in _HEADINGS:
        needed = [_needed(table, k, most) for k in range(len(widths))]
        if sum(needed) <= sum(widths):
            break
    over = sum(max(pair) for pair in zip(widths, needed)) - sum(widths)
    if over <= 0.0:
        return table
    room = [max(width - least, 0.0) for width, least in zip(widths, needed)]
    share = min(over / sum(room), 1.0) if any(room) else 0.0
    fitted = [max(width - share * spare, least) for width, spare, least in zip(widths, room, needed)]
    # Where nothing is left over, all of them share the want.
    scale = min(sum(widths) / sum(fitted), 1.0)
    columns = tuple(replace(column, width=scale * width) for column, width in zip(table.columns, fitted))
    return replace(table, columns=columns)


def _needed(table, k, most):
    """Millimetres that the column needs: for its longest number or short text, and for the words of its heading, which
    ask for at most ``most`` and are cut where they are longer."""
    texts = [str(row[k]) for row in table.rows]
    if table.columns[k].kind not in ("n", "k"):
        texts = [word for text in texts for word in text.split()]
    # The widest is among the longest.
    longest = sorted(set(texts), key=len)[-_LONGEST:]
    widest = max((text_width(text, _CELL) for text in longest), default=0.0)
    heading = max((text_width(word, _CELL, True) for word in table.columns[k].heading.split()), default=0.0)
    beside = table.columns[k].width - _inner(table, k)
    return max(min(widest, _WIDEST), min(heading, most)) + beside + 0.1


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
