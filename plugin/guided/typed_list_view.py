"""The table in which a list is typed: keys alone are enough."""

from qgis.PyQt.QtCore import Qt, pyqtSignal
from qgis.PyQt.QtGui import QGuiApplication, QKeySequence
from qgis.PyQt.QtWidgets import QAbstractItemDelegate, QAbstractItemView, QHeaderView, QTableView

from ...algorithms.core.pasted_text import copied_text
from ...algorithms.language.translation import tr
from ..readable_text import ReadableCells

_KEY, _HINT, _STANDARD = Qt.Key, QAbstractItemDelegate.EndEditHint, QKeySequence.StandardKey


class TypedListView(QTableView):
    """``pasted``: text of the clipboard, for the row and the column number under the cursor."""

    pasted = pyqtSignal(str, int, int)

    def __init__(self, parent=None):
        super().__init__(parent)
        triggers = QAbstractItemView.EditTrigger
        self.setEditTriggers(triggers.AnyKeyPressed | triggers.DoubleClicked | triggers.EditKeyPressed)
        self.setAlternatingRowColors(True)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setAccessibleName(tr("Height list"))
        self.setItemDelegate(ReadableCells(self))
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)

    def use(self, model):
        """Show ``model``, its columns as wide as they need, the cursor in the first empty line."""
        self.setModel(model)
        letter = self.fontMetrics().averageCharWidth()
        for number, column in enumerate(model.columns):
            width = letter * {"remark": 15, "axis": 14, "offset": 12}.get(column, 15)
            # No narrower than its heading, which is longer in some languages.
            self.setColumnWidth(number, max(width, self.horizontalHeader().sectionSizeHint(number)))
        self.horizontalHeader().setStretchLastSection(True)
        self.setCurrentIndex(model.index(model.rowCount() - 1, 0))

    def go_to(self, row, column):
        model = self.model()
        index = model.index(min(max(row, 0), model.rowCount() - 1), min(max(column, 0), len(model.columns) - 1))
        self.setCurrentIndex(index)
        self.scrollTo(index)

    # --- moving

    def _enter(self):
        """From the station (or the axis) to the next cell; from the height on to the next line."""
        row, column, columns = self._place()
        name = columns[min(column, len(columns) - 1)]
        if name in ("axis", "station"):
            self.go_to(row, column + 1)
        else:
            self.go_to(row + 1, columns.index("station"))

    def _step(self, by):
        row, column, columns = self._place()
        place = row * len(columns) + min(column, len(columns) - 1) + by
        self.go_to(*divmod(max(place, 0), len(columns)))

    def _place(self):
        index = self.currentIndex()
        return max(index.row(), 0), max(index.column(), 0), self.model().columns

    def closeEditor(self, editor, hint):  # noqa: N802 - the host's name
        super().closeEditor(editor, _HINT.NoHint)
        if hint == _HINT.SubmitModelCache:
            self._enter()
        elif hint in (_HINT.EditNextItem, _HINT.EditPreviousItem):
            self._step(1 if hint == _HINT.EditNextItem else -1)

    def keyPressEvent(self, event):  # noqa: N802 - the host's name
        if self.state() == QAbstractItemView.State.EditingState:
            # The cell's own keys; what it leaves over must not reach the window's buttons.
            event.accept()
            return
        row, column, columns = self._place()
        control = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
        if event.matches(_STANDARD.Paste):
            self.paste()
        elif event.matches(_STANDARD.Copy):
            self.copy()
        elif event.matches(_STANDARD.Undo):
            self.undo()
        elif event.matches(_STANDARD.Redo) or control and event.key() == _KEY.Key_Y:
            self.redo()
        elif control and event.key() == _KEY.Key_I:
            self.insert_line()
        elif control and event.key() in (_KEY.Key_D, _KEY.Key_Minus):
            self.delete_lines()
        elif event.key() in (_KEY.Key_Delete, _KEY.Key_Backspace):
            self.model().clear_cells([(i.row(), i.column()) for i in self.selectedIndexes()])
        elif event.key() in (_KEY.Key_Return, _KEY.Key_Enter):
            self._enter()
        elif event.key() == _KEY.Key_Tab and not control and self._inside(1):
            self._step(1)
        elif event.key() == _KEY.Key_Backtab and self._inside(-1):
            self._step(-1)
        else:
            super().keyPressEvent(event)
            return
        event.accept()

    def _inside(self, by):
        """Whether Tab finds another cell; from the last cell, and the first, it leaves the table."""
        row, column, columns = self._place()
        place = row * len(columns) + min(column, len(columns) - 1) + by
        return 0 <= place < self.model().rowCount() * len(columns)

    def focusNextPrevChild(self, forward):  # noqa: N802 - the host's name
        return False if self._inside(1 if forward else -1) else super().focusNextPrevChild(forward)

    # --- the clipboard and whole lines

    def paste(self):
        row, column, columns = self._place()
        self.pasted.emit(QGuiApplication.clipboard().text(), row, min(column, len(columns) - 1))

    def copy(self):
        """The selected cells as text for a spreadsheet."""
        indexes = self.selectedIndexes()
        if not indexes:
            return
        rows = sorted({index.row() for index in indexes})
        columns = sorted({index.column() for index in indexes})
        texts = {(index.row(), index.column()): index.data() or "" for index in indexes}
        QGuiApplication.clipboard().setText(
            copied_text([[texts.get((row, column), "") for column in columns] for row in rows])
        )

    def insert_line(self):
        row, column, _ = self._place()
        self.model().replace(min(row, self.model().rowCount() - 1), 0, [{}])
        self.go_to(row, column)

    def delete_lines(self):
        """Delete the lines of the selected cells, those of one stretch together."""
        row, column, _ = self._place()
        rows = {index.row() for index in self.selectedIndexes()} or {row}
        rows = [row for row in rows if row < self.model().rowCount() - 1]
        if rows:
            lines = self.model().lines_from(min(rows), max(rows) + 1)
            gone = set(rows)
            kept = [line for number, line in enumerate(lines, min(rows)) if number not in gone]
            self.model().replace(min(rows), len(lines), kept)
            self.go_to(min(rows), column)

    def undo(self):
        self._show_change(self.model().undo())

    def redo(self):
        self._show_change(self.model().redo())

    def _show_change(self, row):
        if row is not None:
            self.go_to(row, self._place()[1])
