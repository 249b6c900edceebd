"""The chart as a file or a picture: always dark on white, in a size of its own."""

import io
from pathlib import Path

from qgis.PyQt.QtGui import QImage

from ...algorithms.language.translation import tr, translatable
from .colours import print_look

INCHES, DOTS, POINTS = (11.0, 6.2), 200, 9.0
KINDS = {".png": translatable("PNG picture"), ".svg": translatable("SVG drawing"), ".pdf": translatable("PDF page")}


def chart_bytes(shown, ranges, kind, note=""):
    """The chart of ``shown`` in ``ranges`` as the bytes of a file of ``kind`` ('.png', '.svg', '.pdf')."""
    import matplotlib
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    from .drawing import Drawing

    look = print_look(POINTS)
    figure = Figure(figsize=INCHES, dpi=DOTS if kind == ".png" else 72)
    FigureCanvasAgg(figure)
    drawing = Drawing(figure, look)
    drawing.draw(shown, ranges, look)
    if note:
        figure.text(0.995, 0.008, note, ha="right", va="bottom", fontsize=7, color=look.faint)
    target = io.BytesIO()
    # Text stays text in drawings and pages, so that it can be found and changed there.
    with matplotlib.rc_context({"svg.fonttype": "none", "pdf.fonttype": 42}):
        figure.savefig(target, format=kind[1:], dpi=figure.dpi, facecolor=look.back)
    return target.getvalue()


def write_chart(path, shown, ranges, note=""):
    """Write the chart to ``path``, whose ending says the kind; OSError where it cannot be written.

    ValueError for another ending. A file that was there stays whole where writing fails.
    """
    path = Path(path)
    if path.suffix.lower() not in KINDS:
        raise ValueError(tr("'{}' ends in none of {}.").format(path.name, ", ".join(KINDS)))
    content = chart_bytes(shown, ranges, path.suffix.lower(), note)
    spare = path.with_name(f".{path.name}.new")
    try:
        spare.write_bytes(content)
        spare.replace(path)
    finally:
        spare.unlink(missing_ok=True)


def chart_image(shown, ranges, note=""):
    """The chart as a QImage, for the clipboard."""
    return QImage.fromData(chart_bytes(shown, ranges, ".png", note))
