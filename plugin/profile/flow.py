"""A layout that sets widgets in rows, as many as fit the width: a dock may be wide or narrow."""

from qgis.PyQt.QtCore import QPoint, QRect, QSize, Qt
from qgis.PyQt.QtWidgets import QLayout


class FlowLayout(QLayout):
    """Widgets from left to right, in a further row where one is full."""

    def __init__(self, parent=None, spacing=6):
        super().__init__(parent)
        self._items = []
        self.setContentsMargins(6, 4, 6, 4)
        self.setSpacing(spacing)

    def addItem(self, item):  # noqa: N802 - the host's name
        self._items.append(item)

    def count(self):
        return len(self._items)

    def itemAt(self, index):  # noqa: N802 - the host's name
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index):  # noqa: N802 - the host's name
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self):  # noqa: N802 - the host's name
        return Qt.Orientation.Horizontal

    def hasHeightForWidth(self):  # noqa: N802 - the host's name
        return True

    def heightForWidth(self, width):  # noqa: N802 - the host's name
        return self._arrange(QRect(0, 0, width, 0), False)

    def setGeometry(self, rect):  # noqa: N802 - the host's name
        super().setGeometry(rect)
        self._arrange(rect, True)

    def sizeHint(self):  # noqa: N802 - the host's name
        return self.minimumSize()

    def minimumSize(self):  # noqa: N802 - the host's name
        size = QSize()
        for item in self._items:
            size = size.expandedTo(item.minimumSize())
        margins = self.contentsMargins()
        return size + QSize(margins.left() + margins.right(), margins.top() + margins.bottom())

    def _arrange(self, rect, place):
        """Height needed in ``rect``; with ``place`` the widgets are put there."""
        margins = self.contentsMargins()
        area = rect.adjusted(margins.left(), margins.top(), -margins.right(), -margins.bottom())
        x, y, row, line = area.x(), area.y(), 0, []
        for item in self._items:
            if item.widget() is not None and not item.widget().isVisibleTo(self.parentWidget()):
                continue
            size = item.sizeHint()
            size.setWidth(min(size.width(), max(area.width(), item.minimumSize().width())))
            if line and x + size.width() > area.right() + 1:
                self._set_row(line, row, place)
                x, y, row, line = area.x(), y + row + self.spacing(), 0, []
            line.append((item, QPoint(x, y), size))
            x += size.width() + self.spacing()
            row = max(row, size.height())
        self._set_row(line, row, place)
        return y + row - rect.y() + margins.bottom()

    @staticmethod
    def _set_row(line, height, place):
        if place:
            for item, at, size in line:
                item.setGeometry(QRect(at + QPoint(0, (height - size.height()) // 2), size))
