"""Fields to type in stay readable where the host's theme gives their text the lightness of its ground."""

from qgis.PyQt.QtCore import QEvent, QObject
from qgis.PyQt.QtWidgets import QLineEdit, QStyledItemDelegate

from .profile.colours import ground_and_text


def make_readable(edit):
    """Give a line field another colour of text where that of the theme cannot be read on its ground."""
    edit.setStyleSheet("")
    edit.ensurePolished()
    _ground, text = ground_and_text(edit.palette())
    if text != edit.palette().text().color():
        edit.setStyleSheet(f"color: {text.name()};")


class ReadableFields(QObject):
    """Keeps all line fields within ``panel`` readable, also when the theme changes."""

    def __init__(self, panel):
        super().__init__(panel)
        self._busy = False
        for edit in panel.findChildren(QLineEdit):
            # The lines of boxes have the colours of their boxes.
            if not edit.objectName().startswith("qt_") and not edit.parent().inherits("QComboBox"):
                edit.installEventFilter(self)
                self._mend(edit)

    def eventFilter(self, edit, event):  # noqa: N802 - the host's name
        if event.type() == QEvent.Type.StyleChange:
            self._mend(edit)
        return super().eventFilter(edit, event)

    def _mend(self, edit):
        if not self._busy:
            # What is set here is a change of style again.
            self._busy = True
            make_readable(edit)
            self._busy = False


class ReadableCells(QStyledItemDelegate):
    """Cells of a table are typed in readable colours."""

    def createEditor(self, parent, option, index):  # noqa: N802 - the host's name
        editor = super().createEditor(parent, option, index)
        if isinstance(editor, QLineEdit):
            make_readable(editor)
        return editor
