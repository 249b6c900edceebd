"""The review report for paper: A4 pages, painted one after the other; the map by the host's print layout."""

import tempfile
from pathlib import Path

from qgis.core import Qgis, QgsFillSymbol, QgsLayoutExporter, QgsLayoutItemPage, QgsPrintLayout, QgsProject

from ..core.errors import InputError
from ..language.translation import language, tr
from .blocks import Caution, Code, Column, Facts, Heading, Map, Paragraph, Picture, Signatures, Table
from .pdf_pages import BOTTOM, INK, LEFT, QUIET, RIGHT, TOP, WIDTH, NoSheets, Paper, Sheets
from .pdf_properties import with_properties
from .pdf_tables import write_table
from .pdf_text import MONO, line_height, text_width, wrapped

_SIZES = {"": 9.0, "lead": 10.0, "small": 8.0, "warn": 9.0}
# Heights of the map: at most, at least where it is made smaller to fit the page, and of its legend.
_MAP, _LEAST_MAP, _LEGEND = 125.0, 80.0, 20.0
_CHART = 140.0


def paper_document(title, blocks, check_cancel, project=None, *, author=""):
    """The PDF as bytes. ``project``: of the map, whose layers are drawn; ``author``: for the file's properties.

    ``check_cancel()`` is called for each block and page. InputError where the PDF cannot be written.
    """
    # Written twice: the foot of the first page says how many there are.
    counted = Paper(NoSheets(), title, check_cancel)
    _write(counted, title, blocks, None)
    with tempfile.TemporaryDirectory(prefix="tautline_") as folder:
        path = Path(folder) / "report.pdf"
        sheets = Sheets(path, title, f"QGIS {Qgis.version()}")
        try:
            paper = Paper(sheets, title, check_cancel, counted.pages)
            _write(paper, title, blocks, project or QgsProject())
        finally:
            sheets.close()
        pdf = path.read_bytes()
    if not pdf.rstrip().endswith(b"%%EOF"):
        raise InputError(tr("The PDF could not be written."))  # the painter does not say that the disk is full
    return with_properties(pdf, author=author, language=language())


def _write(paper, title, blocks, project):
    paper.project = project
    paper.text(title, 17.0, bold=True, after=2.0)
    for number, block in enumerate(blocks):
        paper.check_cancel()
        _WRITERS[type(block)](paper, block, blocks[number + 1] if number + 1 < len(blocks) else None)
    paper.end_page()


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
    columns = (Column("", "", 52.0), Column("", "", WIDTH - 52.0))
    write_table(paper, Table(columns, [list(pair) for pair in block.pairs]), headed=False)


def _signatures(paper, block, following):
    _facts(paper, Facts(block.facts), following)
    for role, name in block.people:
        lines = wrapped(name, 9.0, 66.0) or [""]
        height = max(len(lines) * line_height(9.0), 8.0)
        paper.room(height)
        paper.lines([role], LEFT + 0.7, paper.y + 3.0, 8.0, bold=True)
        paper.lines(lines, LEFT + 52.0, paper.y + 2.6, 9.0)
        paper.lines([tr("signature, date")], LEFT + 122.0, paper.y + height - 0.2, 8.0, color=QUIET)
        paper.box(LEFT + 122.0, paper.y + height - 0.6, WIDTH - 122.0, 0.2, INK)
        paper.y += height + 3.0


def _picture(paper, block, _following):
    width = _CHART
    caption = wrapped(block.caption, 8.0, WIDTH)
    height = width * block.shape
    paper.room(height + len(caption) * line_height(8.0) + 2.0)
    paper.picture(block.png, LEFT, paper.y, width, height)
    paper.y += height + 0.5
    paper.text(block.caption, 8.0, color=QUIET, after=2.5)


def _map(paper, block, _following):
    height = block.chart.height(WIDTH, _MAP)
    left = BOTTOM - paper.y - _LEGEND
    if height > left >= _LEAST_MAP:
        height = left
    paper.room(height + _LEGEND)
    top = paper.y
    paper.sheets.foreign(lambda painter: _paint_map(painter, block.chart, paper.project, top, height))
    paper.y += height + 1.5
    x = LEFT
    for text, image in block.legend:
        width = text_width(text, 8.0) + 10.0
        if x + width > RIGHT:
            x, paper.y = LEFT, paper.y + 5.0
        paper.picture(image, x, paper.y - 0.6, 4.6, 4.6)
        paper.lines([text], x + 5.6, paper.y, 8.0)
        x += width
    paper.y += 5.5
    paper.text(block.caption, 8.0, color=QUIET, after=2.5)


def _paint_map(painter, chart, project, y, height):
    """The map on a page of the host's print layout that is empty but for it."""
    layout = QgsPrintLayout(project)
    layout.initializeDefaults()
    page = layout.pageCollection().page(0)
    page.setPageSize("A4", QgsLayoutItemPage.Orientation.Portrait)
    page.setPageStyleSymbol(QgsFillSymbol.createSimple({"style": "no", "outline_style": "no"}))
    layout.renderContext().setDpi(painter.device().logicalDpiX())
    layout.renderContext().setTextRenderFormat(Qgis.TextRenderFormat.AlwaysText)
    chart.place(layout, 0, LEFT, y, WIDTH, height)
    QgsLayoutExporter(layout).renderPage(painter, 0)


def _code(paper, block, _following):
    paper.room(20.0)
    paper.text(block.caption, 9.0, bold=True, after=0.8)
    size = 7.5  # no less than what is read to be typed
    lines = [line for text in block.text.split("\n") for line in (wrapped(text, size, WIDTH - 1, family=MONO) or [""])]
    paper.text("\n".join(lines), size, family=MONO, after=2.5)


def _caution(paper, block, _following):
    texts = [wrapped(text, 9.0, WIDTH - 8.0) for text in block.texts]
    lines = [line for text in texts for line in text]
    height = (len(lines) + 1) * line_height(9.0) + 4.0
    paper.room(height)
    paper.box(LEFT, paper.y, WIDTH, height, "white", INK)
    paper.box(LEFT, paper.y, 1.8, height, INK)
    paper.lines([tr("Caution")], LEFT + 4.5, paper.y + 1.6, 9.0, bold=True)
    paper.lines(lines, LEFT + 4.5, paper.y + 1.6 + line_height(9.0), 9.0)
    paper.y += height + 2.5


_WRITERS = {
    Heading: _heading,
    Paragraph: _paragraph,
    Facts: _facts,
    Signatures: _signatures,
    Table: lambda paper, block, _following: write_table(paper, block),
    Picture: _picture,
    Map: _map,
    Code: _code,
    Caution: _caution,
}
