"""The review report for paper: A4 pages in the host's print layout; no HTML frames, which newer hosts cannot draw."""

import tempfile
from pathlib import Path

from qgis.core import (Qgis, QgsLayoutExporter, QgsLayoutFrame, QgsLayoutItemLabel, QgsLayoutItemManualTable, QgsLayoutItemPage,
                       QgsLayoutItemPicture, QgsLayoutItemShape, QgsLayoutPoint, QgsLayoutSize, QgsLayoutTable,
                       QgsFillSymbol, QgsPrintLayout, QgsProject, QgsTableCell, QgsTextFormat, QgsUnitTypes)
from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtGui import QColor, QFont

from .core.errors import InputError
from .layers import check_cancel
from .report_blocks import Caution, Code, Facts, Heading, Map, Paragraph, Picture, Signatures, Table
from .report_text import FAMILY, MONO, line_height, plain, text_width, wrapped
from .texts import tr

MM = QgsUnitTypes.LayoutUnit.LayoutMillimeters
LEFT, RIGHT, TOP, BOTTOM = 12.0, 198.0, 14.0, 278.0
WIDTH = RIGHT - LEFT
INK, QUIET = "#1b1b1f", "#45454d"
_SIZES = {"": 9.0, "lead": 10.0, "small": 8.0, "warn": 9.0}
_CELL, _MARGIN, _STROKE = 7.0, 0.7, 0.12
_GROUND = {"out": "#fdeee4", "head": "#ececf0"}
# Measured on 3.22 and 3.40: the height of a cell of one line, of its type's size.
_FIRST_LINE = 0.94
# Heights of the map: at most, at least where it is made smaller to fit the page, and of its legend.
_MAP, _LEAST_MAP, _LEGEND = 125.0, 80.0, 20.0
_CHART = 140.0
_MOST_LINES = 40


class Paper:
    """Pages that are written from top to bottom; ``y`` is where the next piece goes, millimetres."""

    def __init__(self, title, project, feedback):
        self.title, self.feedback = title, feedback
        self.layout = QgsPrintLayout(project)
        self.layout.initializeDefaults()
        self.layout.pageCollection().page(0).setPageSize("A4", QgsLayoutItemPage.Orientation.Portrait)
        self.pages, self.y = 1, TOP

    def new_page(self):
        check_cancel(self.feedback)
        page = QgsLayoutItemPage(self.layout)
        page.setPageSize("A4", QgsLayoutItemPage.Orientation.Portrait)
        self.layout.pageCollection().addPage(page)
        self.pages, self.y = self.pages + 1, TOP

    def room(self, height):
        """Go to a new page where less than ``height`` is left; what is higher than a page begins where it is."""
        if self.y + height > BOTTOM and self.y > TOP:
            self.new_page()

    def place(self, item, x, y, width, height, page=None):
        item.attemptResize(QgsLayoutSize(width, height, MM))
        item.attemptMove(QgsLayoutPoint(x, y, MM), True, False, self.pages - 1 if page is None else page)
        return item

    def lines(self, lines, x, y, size, *, bold=False, color=INK, family=FAMILY, page=None, width=None, align=None):
        """Lines that are wrapped already, one label."""
        item = QgsLayoutItemLabel(self.layout)
        self.layout.addLayoutItem(item)
        item.setText(plain("\n".join(lines)))
        _dress_label(item, size, bold, color, family)
        item.setMarginX(0.0)
        item.setMarginY(0.0)
        if align is not None:
            item.setHAlign(align)
        height = len(lines) * line_height(size)
        return self.place(item, x, y, width or RIGHT - x + 2.0, height + 1.5, page)

    def text(self, text, size, *, bold=False, color=INK, family=FAMILY, x=LEFT, width=WIDTH, after=1.5):
        """A paragraph, over several pages where it has to be."""
        lines = wrapped(text, size, width, bold=bold, family=family)
        while lines:
            fits = max(int((BOTTOM - self.y) / line_height(size)), 0)
            if fits < min(len(lines), 2) and self.y > TOP:
                self.new_page()
                continue
            part, lines = lines[:fits], lines[fits:]
            self.lines(part, x, self.y, size, bold=bold, color=color, family=family)
            self.y += len(part) * line_height(size)
            if lines:
                self.new_page()
        self.y += after

    def box(self, x, y, width, height, fill, outline="no"):
        item = QgsLayoutItemShape(self.layout)
        self.layout.addLayoutItem(item)
        item.setShapeType(QgsLayoutItemShape.Shape.Rectangle)
        item.setSymbol(QgsFillSymbol.createSimple({"color": fill, "outline_style": outline, "outline_width": "0.3",
                                                   "outline_color": INK}))
        return self.place(item, x, y, width, height)

    def picture(self, path, x, y, width, height):
        item = QgsLayoutItemPicture(self.layout)
        self.layout.addLayoutItem(item)
        self.place(item, x, y, width, height)
        item.setPicturePath(str(path))
        return item

    def number(self):
        """Foot of every page: title, caution, number of the page."""
        for page in range(self.pages):
            short = wrapped(self.title, 7.0, 86.0)[0]
            self.lines([short], LEFT, 284.0, 7.0, color=QUIET, page=page, width=90.0)
            self.lines([tr("For review, not for setting out.")], 104.0, 284.0, 7.0, color=QUIET, page=page, width=60.0)
            self.lines([tr("page {} of {}").format(page + 1, self.pages)], 158.0, 284.0, 7.0, color=QUIET, page=page, width=40.0,
                       align=Qt.AlignmentFlag.AlignRight)


def _dress_label(item, size, bold, color, family):
    font = QFont(family)
    font.setPointSizeF(size)
    font.setBold(bold)
    if hasattr(item, "setTextFormat"):
        item.setTextFormat(_format(font, size, color))
    else:
        item.setFont(font)
        item.setFontColor(QColor(color))


def _format(font, size, color):
    form = QgsTextFormat()
    form.setFont(font)
    form.setSize(size)
    form.setColor(QColor(color))
    return form


def paper_document(title, blocks, feedback, project=None, *, author=""):
    """The PDF as bytes. ``project``: of the map, whose layers are drawn; ``author``: for the file's properties. InputError where the host cannot write it."""
    project = project or QgsProject()
    with tempfile.TemporaryDirectory(prefix="tautline_") as folder:
        paper = Paper(title, project, feedback)
        paper.folder = Path(folder)
        paper.text(title, 17.0, bold=True, after=2.0)
        for number, block in enumerate(blocks):
            check_cancel(feedback)
            _WRITERS[type(block)](paper, block, blocks[number + 1] if number + 1 < len(blocks) else None)
        paper.number()
        settings = QgsLayoutExporter.PdfExportSettings()
        settings.dpi = 200
        settings.textRenderFormat = Qgis.TextRenderFormat.AlwaysText
        described = project.metadata()
        described.setTitle(title)
        described.setAuthor(author)  # else the host takes the name of the computer's user
        project.setMetadata(described)
        path = paper.folder / "report.pdf"
        if QgsLayoutExporter(paper.layout).exportToPdf(str(path), settings) != QgsLayoutExporter.ExportResult.Success:
            raise InputError(tr("The PDF could not be written."))
        return path.read_bytes()


def _least(block):
    """The height that has to stay with the heading above it."""
    if isinstance(block, Heading):
        return 9.0 + _CHART  # a section that begins with its first part, a chart
    if isinstance(block, Picture):
        return _CHART * block.shape + 16.0
    return {Map: _LEAST_MAP + _LEGEND, Table: 40.0, Code: 30.0}.get(type(block), 20.0)


def _heading(paper, block, following):
    size = 12.5 if block.level == 2 else 9.5
    paper.y += 3.5 if block.level == 2 and paper.y > TOP else 0.0
    paper.room(_least(following) + 9.0)
    paper.text(block.text, size, bold=True, after=1.2)


def _paragraph(paper, block, _following):
    size = _SIZES[block.kind]
    if block.kind in ("lead", "warn"):
        lines, first = wrapped(block.text, size, WIDTH - 8.0), wrapped(block.strong, size, WIDTH - 8.0, bold=True)
        height = (len(lines) + len(first)) * line_height(size) + 3.5 + (1.0 if first else 0.0)
        paper.room(height)
        paper.box(LEFT, paper.y, WIDTH, height, "#f3f4f6" if block.kind == "lead" else "#fdeee4")
        paper.box(LEFT, paper.y, 1.4, height, INK if block.kind == "lead" else "#b3400a")
        below = len(first) * line_height(size) + 1.0 if first else 0.0
        if first:
            paper.lines(first, LEFT + 4.0, paper.y + 1.6, size, bold=True)
        paper.lines(lines, LEFT + 4.0, paper.y + 1.6 + below, size)
        paper.y += height + 2.0
    else:
        paper.text(block.text, size, color=QUIET if block.kind == "small" else INK)


def _facts(paper, block, _following):
    _table(paper, Table((_Bare(52.0), _Bare(WIDTH - 52.0)), [list(pair) for pair in block.pairs]), None, headed=False)


class _Bare:
    """A column without a heading."""

    heading, kind = "", ""

    def __init__(self, width):
        self.width = width


def _signatures(paper, block, following):
    _facts(paper, Facts(block.facts), following)
    for role, name in block.people:
        lines = wrapped(name, 9.0, 66.0) or [""]
        height = max(len(lines) * line_height(9.0), 8.0)
        paper.room(height)
        paper.lines([role], LEFT + _MARGIN, paper.y + 3.0, 8.0, bold=True)
        paper.lines(lines, LEFT + 52.0, paper.y + 2.6, 9.0)
        paper.lines([tr("signature, date")], LEFT + 122.0, paper.y + height - 0.2, 6.5, color=QUIET)
        paper.box(LEFT + 122.0, paper.y + height - 0.6, WIDTH - 122.0, 0.2, INK)
        paper.y += height + 3.0


def _picture(paper, block, _following):
    width = _CHART
    caption = wrapped(block.caption, 8.0, WIDTH)
    height = width * block.shape
    paper.room(height + len(caption) * line_height(8.0) + 2.0)
    path = paper.folder / f"picture{id(block)}.png"
    path.write_bytes(block.png)
    paper.picture(path, LEFT, paper.y, width, height)
    paper.y += height + 0.5
    paper.text(block.caption, 8.0, color=QUIET, after=2.5)


def _map(paper, block, _following):
    height = block.chart.height(WIDTH, _MAP)
    left = BOTTOM - paper.y - _LEGEND
    if height > left >= _LEAST_MAP:
        height = left
    paper.room(height + _LEGEND)
    block.chart.place(paper.layout, paper.pages - 1, LEFT, paper.y, WIDTH, height)
    paper.y += height + 1.5
    x = LEFT
    for number, (text, image) in enumerate(block.legend):
        width = text_width(text, 8.0) + 10.0
        if x + width > RIGHT:
            x, paper.y = LEFT, paper.y + 5.0
        path = paper.folder / f"legend{number}.png"
        path.write_bytes(image)
        paper.picture(path, x, paper.y - 0.6, 4.6, 4.6)
        paper.lines([text], x + 5.6, paper.y, 8.0)
        x += width
    paper.y += 5.5
    paper.text(block.caption, 8.0, color=QUIET, after=2.5)


def _code(paper, block, _following):
    paper.room(20.0)
    paper.text(block.caption, 9.0, bold=True, after=0.8)
    lines = [line for text in block.text.split("\n") for line in (wrapped(text, 6.5, WIDTH, family=MONO) or [""])]
    paper.text("\n".join(lines), 6.5, family=MONO, width=WIDTH + 1.0, after=2.5)


def _caution(paper, block, _following):
    texts = [wrapped(text, 9.0, WIDTH - 8.0) for text in block.texts]
    lines = [line for text in texts for line in text]
    height = (len(lines) + 1) * line_height(9.0) + 4.0
    paper.room(height)
    paper.box(LEFT, paper.y, WIDTH, height, "white", "solid")
    paper.box(LEFT, paper.y, 1.8, height, INK)
    paper.lines([tr("Caution")], LEFT + 4.5, paper.y + 1.6, 9.0, bold=True)
    paper.lines(lines, LEFT + 4.5, paper.y + 1.6 + line_height(9.0), 9.0)
    paper.y += height + 2.5


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


def _table(paper, block, _following, headed=True):
    """A table, broken over pages between its rows, its heading repeated on each."""
    if block.caption:
        paper.room(35.0)
        paper.text(block.caption, 8.0, color=QUIET, after=1.0)
    head = [_indented(block, k, wrapped(column.heading, _CELL, _inner(block, k), bold=True)) for k, column in enumerate(block.columns)]
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
    """The rows of one page under the heading, which is a table of its own: the oldest host cuts headings of two lines."""
    if rows and head is not None:
        _write_rows(paper, block, [(head, "head")], bold=True)
    if rows:
        _write_rows(paper, block, rows)


def _write_rows(paper, block, rows, *, bold=False):
    table = QgsLayoutItemManualTable.create(paper.layout)
    paper.layout.addMultiFrame(table)
    table.setTableContents([[_cell(lines, column, kind) for lines, column in zip(cells, block.columns)] for cells, kind in rows])
    table.setColumnWidths([column.width - 2.0 * _MARGIN for column in block.columns])
    table.setWrapBehavior(QgsLayoutTable.WrapBehavior.TruncateText)
    table.setCellMargin(_MARGIN)
    table.setGridStrokeWidth(_STROKE)
    table.setGridColor(QColor("#9a9aa0"))
    table.setVerticalGrid(False)
    font = QFont(FAMILY)
    font.setPointSizeF(_CELL)
    font.setBold(bold)
    table.setContentTextFormat(_format(font, _CELL, INK))
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


_WRITERS = {Heading: _heading, Paragraph: _paragraph, Facts: _facts, Signatures: _signatures, Table: _table, Picture: _picture, Map: _map,
            Code: _code, Caution: _caution}
