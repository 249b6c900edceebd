"""Pages of paper that are written from top to bottom: painted as they come, so that only one is held at a time."""

from qgis.PyQt.QtCore import QByteArray, QMarginsF, QPointF, QRectF, Qt
from qgis.PyQt.QtGui import QBrush, QColor, QImage, QPageSize, QPainter, QPdfWriter, QPen

from ..core.errors import InputError
from ..language.translation import tr
from .pdf_text import FAMILY, ascent, font_of, line_height, text_width, wrapped

LEFT, RIGHT, TOP, BOTTOM = 12.0, 198.0, 14.0, 278.0
WIDTH = RIGHT - LEFT
INK, QUIET = "#1b1b1f", "#45454d"
LEAST = 8.0  # points: no text but code is smaller
_DOTS = 300  # to the inch, of pictures and of the grid that all is placed on
_FOOT = 284.0
_LOSSLESS = getattr(QPainter.RenderHint, "LosslessImageRendering", None)  # not in the oldest hosts


class Sheets:
    """A PDF of A4 pages that is painted on; millimetres from the upper left corner. ``path``: where it is written."""

    def __init__(self, path, title, creator):
        self._writer = QPdfWriter(str(path))
        self._writer.setResolution(_DOTS)
        self._writer.setPageSize(QPageSize(QPageSize.PageSizeId.A4))
        self._writer.setPageMargins(QMarginsF(0.0, 0.0, 0.0, 0.0))
        self._writer.setTitle(title)
        self._writer.setCreator(creator)
        self.painter = QPainter()
        if not self.painter.begin(self._writer):
            raise InputError(tr("The PDF could not be written."))

    def turn(self):
        if not self._writer.newPage():
            raise InputError(tr("The PDF could not be written."))

    def close(self):
        """End the file; it may be called again."""
        if self.painter.isActive():
            self.painter.end()

    def line(self, text, x, baseline, font, color):
        self.painter.setFont(font)
        self.painter.setPen(QColor(color))
        self.painter.drawText(QPointF(_dots(x), _dots(baseline)), text)

    def box(self, x, y, width, height, fill, outline=None):
        self.painter.setBrush(QBrush(QColor(fill)))
        self.painter.setPen(QPen(QColor(outline), _dots(0.3)) if outline else QPen(Qt.PenStyle.NoPen))
        self.painter.drawRect(_frame(x, y, width, height))

    def picture(self, image, x, y, width, height):
        self.painter.save()
        if _LOSSLESS is not None:
            self.painter.setRenderHint(_LOSSLESS)  # lines and letters, which the map's compression would blur
        self.painter.drawImage(_frame(x, y, width, height), QImage.fromData(QByteArray(image)))
        self.painter.restore()

    def foreign(self, paint):
        """Have ``paint(painter)`` paint on the page, whatever it leaves behind in the painter."""
        self.painter.save()
        paint(self.painter)
        self.painter.restore()


class NoSheets:
    """Takes what Sheets takes and keeps nothing: how many pages there will be is known after a first writing."""

    def __getattr__(self, _name):
        return lambda *_given: None


class Paper:
    """Pages written from top to bottom on ``sheets``; ``y`` is where the next piece goes, millimetres; ``of``: how
    many pages there will be, for their feet.
    """

    def __init__(self, sheets, title, check_cancel, of=0):
        self.sheets, self.title, self.check_cancel, self.of = sheets, title, check_cancel, of
        self.pages, self.y = 1, TOP

    def new_page(self):
        self.check_cancel()
        self.end_page()
        self.sheets.turn()
        self.pages, self.y = self.pages + 1, TOP

    def end_page(self):
        """The foot of a page: title, caution, number of the page."""
        number = tr("page {} of {}").format(self.pages, self.of)
        short = wrapped(self.title, LEAST, 86.0)
        self.lines(short[:1], LEFT, _FOOT, LEAST, color=QUIET)
        self.lines([tr("For review, not for setting out.")], 104.0, _FOOT, LEAST, color=QUIET)
        self.lines([number], RIGHT - text_width(number, LEAST), _FOOT, LEAST, color=QUIET)

    def room(self, height):
        """Go to a new page where less than ``height`` is left; what is higher than a page begins where it is."""
        if self.y + height > BOTTOM and self.y > TOP:
            self.new_page()

    def lines(self, lines, x, y, size, *, bold=False, color=INK, family=FAMILY):
        """Lines that are wrapped already, below each other from ``y``."""
        font = font_of(family, size, bold)
        for number, text in enumerate(lines):
            self.sheets.line(text, x, y + number * line_height(size) + ascent(size, family), font, color)

    def text(self, text, size, *, bold=False, color=INK, family=FAMILY, after=1.5):
        """A paragraph, over several pages where it has to be."""
        lines = wrapped(text, size, WIDTH, bold=bold, family=family)
        while lines:
            fits = max(int((BOTTOM - self.y) / line_height(size)), 0)
            if fits < min(len(lines), 2) and self.y > TOP:
                self.new_page()
                continue
            part, lines = lines[:fits], lines[fits:]
            self.lines(part, LEFT, self.y, size, bold=bold, color=color, family=family)
            self.y += len(part) * line_height(size)
            if lines:
                self.new_page()
        self.y += after

    def box(self, x, y, width, height, fill, outline=None):
        self.sheets.box(x, y, width, height, fill, outline)

    def picture(self, image, x, y, width, height):
        self.sheets.picture(image, x, y, width, height)


def _dots(millimetres):
    return millimetres * _DOTS / 25.4


def _frame(x, y, width, height):
    return QRectF(_dots(x), _dots(y), _dots(width), _dots(height))
