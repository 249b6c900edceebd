"""The review report for paper: A4 pages in the host's print layout; no HTML frames, which newer hosts cannot draw."""

import tempfile
from pathlib import Path

from qgis.core import Qgis, QgsLayoutExporter, QgsProject

from ..core.errors import InputError
from ..language.translation import tr
from .blocks import Caution, Code, Facts, Heading, Map, Paragraph, Picture, Signatures, Table
from .pdf_pages import BOTTOM, INK, LEFT, QUIET, RIGHT, TOP, WIDTH, Paper
from .pdf_tables import write_table
from .pdf_text import MONO, line_height, text_width, wrapped

_SIZES = {"": 9.0, "lead": 10.0, "small": 8.0, "warn": 9.0}
# Heights of the map: at most, at least where it is made smaller to fit the page, and of its legend.
_MAP, _LEAST_MAP, _LEGEND = 125.0, 80.0, 20.0
_CHART = 140.0


def paper_document(title, blocks, check_cancel, project=None, *, author=""):
    """The PDF as bytes. ``project``: of the map, whose layers are drawn; ``author``: for the file's properties.
    InputError where the host cannot write it.
    """
    project = project or QgsProject()
    with tempfile.TemporaryDirectory(prefix="tautline_") as folder:
        paper = Paper(title, project, check_cancel)
        paper.folder = Path(folder)
        paper.text(title, 17.0, bold=True, after=2.0)
        for number, block in enumerate(blocks):
            check_cancel()
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
    write_table(paper, Table((_Bare(52.0), _Bare(WIDTH - 52.0)), [list(pair) for pair in block.pairs]), headed=False)


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
        paper.lines([role], LEFT + 0.7, paper.y + 3.0, 8.0, bold=True)
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
