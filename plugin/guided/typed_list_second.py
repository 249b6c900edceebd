"""The lines in which two typings differ, side by side, with a choice for each cell."""

from qgis.PyQt.QtCore import QAbstractTableModel, QModelIndex, Qt
from qgis.PyQt.QtWidgets import QAbstractItemView, QHeaderView, QTableView

from ...algorithms.core.second_typing import FIRST, SECOND, WHOLE, compared, settled
from ...algorithms.language.translation import tr
from ..readable_text import ReadableCells

_LINE, _WHAT, _FIRST, _SECOND, _THIRD = range(5)
_CHOICES = {_FIRST: FIRST, _SECOND: SECOND}


class DifferencesModel(QAbstractTableModel):
    """``first``, ``second``: lists of core Line."""

    def __init__(self, first, second, parent=None):
        super().__init__(parent)
        self.first, self.second = first, second
        self.comparison = compared(first, second)
        self.choices = [None] * len(self.comparison.differences)
        self._words = {
            "station": tr("station"),
            "height": tr("height"),
            "offset": tr("offset"),
            "axis": tr("axis"),
            WHOLE: tr("whole row"),
        }

    def open(self):
        """How many differences have no choice yet."""
        return sum(choice is None for choice in self.choices)

    def lines(self):
        """[{column: text}] of the one list, every difference having its choice."""
        return settled(self.comparison, self.first, self.second, self.choices)

    def choose(self, row, choice):
        self.choices[row] = choice
        self.dataChanged.emit(self.index(row, 0), self.index(row, _THIRD))

    def rowCount(self, parent=QModelIndex()):  # noqa: N802,B008 - the host's name and default
        return 0 if parent.isValid() else len(self.choices)

    def columnCount(self, parent=QModelIndex()):  # noqa: N802,B008 - the host's name and default
        return 0 if parent.isValid() else 5

    def headerData(self, section, orientation, role=Qt.ItemDataRole.DisplayRole):  # noqa: N802 - the host's name
        if orientation != Qt.Orientation.Horizontal or role != Qt.ItemDataRole.DisplayRole:
            return None
        return (tr("Row"), tr("What"), tr("First typing"), tr("Second typing"), tr("Third value"))[section]

    def flags(self, index):
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        if index.column() in _CHOICES:
            return flags | Qt.ItemFlag.ItemIsUserCheckable
        whole = self.comparison.differences[index.row()].column == WHOLE
        return flags | Qt.ItemFlag.ItemIsEditable if index.column() == _THIRD and not whole else flags

    def _text(self, lines, row, column):
        if row is None:
            return tr("no such row")
        cells = lines[row].cells
        if column != WHOLE:
            return cells.get(column, "") or tr("empty")
        return "  ".join(cells[key] for key in ("axis", "station", "height", "offset") if cells.get(key))

    def data(self, index, role=Qt.ItemDataRole.DisplayRole):
        row, column = index.row(), index.column()
        one, choice = self.comparison.differences[row], self.choices[row]
        if role == Qt.ItemDataRole.CheckStateRole and column in _CHOICES:
            state = Qt.CheckState.Checked if choice == _CHOICES[column] else Qt.CheckState.Unchecked
            return int(getattr(state, "value", state))
        if role == Qt.ItemDataRole.EditRole and column == _THIRD:
            return choice[0] if isinstance(choice, tuple) else ""
        if role not in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole):
            return None
        if column == _LINE:
            place = self.first[one.first] if one.first is not None else self.second[one.second]
            return " ".join(filter(None, (place.cells.get("axis"), place.cells.get("station")))) or "–"
        if column == _WHAT:
            return self._words[one.column]
        if column == _FIRST:
            return self._text(self.first, one.first, one.column)
        if column == _SECOND:
            return self._text(self.second, one.second, one.column)
        return choice[0] if isinstance(choice, tuple) else None

    def setData(self, index, value, role=Qt.ItemDataRole.EditRole):  # noqa: N802 - the host's name
        if role == Qt.ItemDataRole.CheckStateRole and index.column() in _CHOICES:
            self.choose(index.row(), _CHOICES[index.column()])
            return True
        if role == Qt.ItemDataRole.EditRole and index.column() == _THIRD:
            text = str(value).strip()
            self.choose(index.row(), (text,) if text else None)
            return True
        return False


class DifferencesView(QTableView):
    """Space or Enter on a cell of the first or the second typing chooses it; typing into the third chooses that."""

    def __init__(self, parent=None):
        super().__init__(parent)
        triggers = QAbstractItemView.EditTrigger
        self.setEditTriggers(triggers.AnyKeyPressed | triggers.DoubleClicked | triggers.EditKeyPressed)
        self.setAlternatingRowColors(True)
        # Tab leaves the table, or the buttons could not be reached by it.
        self.setTabKeyNavigation(False)
        self.setAccessibleName(tr("Differences between the two typings"))
        self.setItemDelegate(ReadableCells(self))
        self.verticalHeader().setVisible(False)

    def use(self, model):
        self.setModel(model)
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        if model.rowCount():
            self.setCurrentIndex(model.index(0, _FIRST))

    def keyPressEvent(self, event):  # noqa: N802 - the host's name
        if self.state() == QAbstractItemView.State.EditingState:
            event.accept()
            return
        index = self.currentIndex()
        if event.key() in (Qt.Key.Key_Space, Qt.Key.Key_Return, Qt.Key.Key_Enter) and index.column() in _CHOICES:
            self.model().choose(index.row(), _CHOICES[index.column()])
            if index.row() + 1 < self.model().rowCount():
                self.setCurrentIndex(self.model().index(index.row() + 1, index.column()))
            event.accept()
            return
        super().keyPressEvent(event)
