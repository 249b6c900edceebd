"""The line that says what is older than what, with the button that brings it up to date."""

from html import escape

from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from ...algorithms.language.translation import tr


class StaleLine(QWidget):
    """Hidden where nothing is out of date. ``staleness``: the project's Staleness; ``begin()``: brings up to date."""

    def __init__(self, staleness, begin, parent=None):
        super().__init__(parent)
        self.setObjectName("tautline_stale")
        self._staleness = staleness
        self.text, self.button = QLabel(self), QPushButton(tr("Bring up to date"), self)
        self.text.setWordWrap(True)
        self.text.setTextFormat(Qt.TextFormat.PlainText)
        self.text.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.button.setToolTip(tr("Runs the recorded steps again, in their order, from the first layer that changed."))
        self.button.clicked.connect(lambda: begin())
        row = QHBoxLayout(self)
        row.setContentsMargins(8, 4, 8, 4)
        row.addWidget(self.text, 1)
        row.addWidget(self.button)
        staleness.changed.connect(self.refresh)
        self.refresh()

    def refresh(self):
        """Say what is known now."""
        self.text.setText(self._staleness.short_line)
        self.text.setToolTip(escape(self._staleness.line))
        # Points that were moved by hand are told, but are no reason to run their own step again: it would undo that.
        self.button.setVisible(bool(self._staleness.steps))
        self.setVisible(bool(self._staleness.line))

    def release(self):
        """Let go of what outlives the line."""
        self._staleness.changed.disconnect(self.refresh)


def on_top_of(dock, line):
    """Put the line above all that a dock shows."""
    inside, whole = dock.widget(), QWidget(dock)
    column = QVBoxLayout(whole)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(0)
    column.addWidget(line)
    column.addWidget(inside, 1)
    dock.setWidget(whole)
