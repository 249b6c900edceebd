"""Which texts of a window do not fit where they stand; for scripts that run inside the real window."""

from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtWidgets import (
    QAbstractButton,
    QComboBox,
    QGroupBox,
    QHeaderView,
    QLabel,
    QTabBar,
    QToolButton,
    QWidget,
)

# Pixels that a hint may ask for beyond what the letters need.
SPARE = 2


def clipped(window):
    """[(kind, text, pixels there, pixels needed)] of the visible widgets of ``window``, itself included."""
    found = []
    for widget in [window, *window.findChildren(QWidget)]:
        if widget.isVisible():
            found += [(type(widget).__name__, *one) for one in _clipped(widget)]
    return found


def _clipped(widget):
    if isinstance(widget, QLabel):
        yield from _label(widget)
    elif isinstance(widget, QHeaderView):
        yield from _header(widget)
    elif isinstance(widget, QTabBar):
        for number in range(widget.count()):
            text = widget.tabText(number)
            if widget.elideMode() != Qt.TextElideMode.ElideNone or widget.usesScrollButtons():
                there, needed = widget.tabRect(number).width(), widget.fontMetrics().horizontalAdvance(text)
                if text and there + SPARE < needed:
                    yield text, there, needed
    elif isinstance(widget, QComboBox):
        needed = widget.fontMetrics().horizontalAdvance(widget.currentText())
        there = widget.width() - widget.height() // 2
        if not widget.isEditable() and there + SPARE < needed:
            yield widget.currentText(), there, needed
    elif isinstance(widget, QAbstractButton) and widget.text() and not _icon_only(widget):
        needed = widget.minimumSizeHint().width()
        if widget.width() + SPARE < needed:
            yield widget.text(), widget.width(), needed
    elif isinstance(widget, QGroupBox) and widget.title():
        needed = widget.fontMetrics().horizontalAdvance(widget.title())
        if widget.width() + SPARE < needed:
            yield widget.title(), widget.width(), needed


def _icon_only(button):
    return isinstance(button, QToolButton) and button.toolButtonStyle() == Qt.ToolButtonStyle.ToolButtonIconOnly


def _label(label):
    if not label.text() or label.pixmap() is not None and not label.pixmap().isNull():
        return
    if label.wordWrap():
        needed = label.heightForWidth(label.width())
        if label.height() + SPARE < needed:
            yield label.text(), label.height(), needed
    elif label.width() + SPARE < label.sizeHint().width():
        yield label.text(), label.width(), label.sizeHint().width()


def _header(header):
    model = header.model()
    if model is None or header.orientation() != Qt.Orientation.Horizontal:
        return
    for number in range(header.count()):
        text = model.headerData(number, Qt.Orientation.Horizontal)
        there, needed = header.sectionSize(number), header.fontMetrics().horizontalAdvance(str(text or ""))
        if text and not header.isSectionHidden(number) and there + SPARE < needed:
            yield str(text), there, needed
