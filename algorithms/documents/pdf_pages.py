"""Pages of paper that are written from top to bottom, in the host's print layout."""

from qgis.core import (
    QgsFillSymbol,
    QgsLayoutItemLabel,
    QgsLayoutItemPage,
    QgsLayoutItemPicture,
    QgsLayoutItemShape,
    QgsLayoutPoint,
    QgsLayoutSize,
    QgsPrintLayout,
    QgsTextFormat,
    QgsUnitTypes,
)
from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtGui import QColor, QFont

from ..language.translation import tr
from .pdf_text import FAMILY, line_height, plain, wrapped

MM = QgsUnitTypes.LayoutUnit.LayoutMillimeters
LEFT, RIGHT, TOP, BOTTOM = 12.0, 198.0, 14.0, 278.0
WIDTH = RIGHT - LEFT
INK, QUIET = "#1b1b1f", "#45454d"


class Paper:
    """Pages that are written from top to bottom; ``y`` is where the next piece goes, millimetres."""

    def __init__(self, title, project, check_cancel):
        self.title, self.check_cancel = title, check_cancel
        self.layout = QgsPrintLayout(project)
        self.layout.initializeDefaults()
        self.layout.pageCollection().page(0).setPageSize("A4", QgsLayoutItemPage.Orientation.Portrait)
        self.pages, self.y = 1, TOP

    def new_page(self):
        self.check_cancel()
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
        item.setSymbol(
            QgsFillSymbol.createSimple(
                {"color": fill, "outline_style": outline, "outline_width": "0.3", "outline_color": INK}
            )
        )
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
            self.lines(
                [tr("page {} of {}").format(page + 1, self.pages)],
                158.0,
                284.0,
                7.0,
                color=QUIET,
                page=page,
                width=40.0,
                align=Qt.AlignmentFlag.AlignRight,
            )


def _dress_label(item, size, bold, color, family):
    font = QFont(family)
    font.setPointSizeF(size)
    font.setBold(bold)
    if hasattr(item, "setTextFormat"):
        item.setTextFormat(text_format(font, size, color))
    else:
        item.setFont(font)
        item.setFontColor(QColor(color))


def text_format(font, size, color):
    form = QgsTextFormat()
    form.setFont(font)
    form.setSize(size)
    form.setColor(QColor(color))
    return form
