"""The table of values beside the chart: one row for each station, and what is selected copied as text."""

import numpy as np
from qgis.PyQt.QtCore import QAbstractTableModel, QItemSelection, QItemSelectionModel, QModelIndex, Qt, pyqtSignal
from qgis.PyQt.QtGui import QKeySequence
from qgis.PyQt.QtWidgets import QAbstractItemView, QApplication, QHeaderView, QTableView

from ...algorithms.core.units import METRES
from ...algorithms.language.height_text import amounts_for, height_text
from ...algorithms.language.number_text import number_text
from ...algorithms.language.shown_stations import shown_station
from ...algorithms.language.stored_words import capitalised, stored_text
from ...algorithms.language.translation import tr
from ...algorithms.language.units import UNIT_LABELS


def _word(field, stored):
    return capitalised(stored_text(field, stored))


class StationModel(QAbstractTableModel):
    """Stations of one axis; ``rows`` are their places in the Stations they come from."""

    def __init__(self, parent=None):
        super().__init__(parent)
        self.stations, self.rows, self._columns = None, np.zeros(0, int), []

    def set_stations(self, stations, rows):
        self.beginResetModel()
        self.stations, self.rows = stations, rows
        self._columns = self._made() if stations is not None else []
        self.endResetModel()

    def _made(self):
        """(heading, function of a place in Stations, whether it is a number) of each column worth a place."""
        s = self.stations
        amounts, chainage = amounts_for(s.height_unit), METRES[s.chainage_unit]
        unit = UNIT_LABELS[s.height_unit]
        design, residual = s.heights["design_h"], s.heights["residual"]

        def full(values, sign=False):
            return lambda k: height_text(values[k], s.height_unit, sign)

        def along(k):
            return number_text(s.chainage[k] / chainage, 3) if np.isfinite(s.chainage[k]) else ""

        columns = [
            (tr("Station ({})").format(UNIT_LABELS[s.chainage_unit]), lambda k: shown_station(s.station[k]), False),
            (tr("Residual ({})").format(amounts.label), lambda k: amounts.signed(residual[k]), True),
        ]
        if any(s.status):
            columns.append((tr("Status"), lambda k: _word("status", s.status[k]), False))
        if s.has_line:
            lateral = s.heights["lateral"]
            columns.append((tr("Lateral ({})").format(amounts.label), lambda k: amounts.signed(lateral[k]), True))
            columns.append((tr("Side"), lambda k: _word("side", s.side[k]), False))
        if any(s.flag):
            columns.append((tr("Test of blunders"), lambda k: _word("flag", s.flag[k]), False))
        if np.isfinite(design).any():
            columns += [
                (tr("As-built ({})").format(unit), full(design + residual), True),
                (tr("Design ({})").format(unit), full(design), True),
            ]
        if np.isfinite(s.heights["flat_h"]).any():
            columns.append((tr("Curvature effect ({})").format(unit), full(design - s.heights["flat_h"], True), True))
        if np.isfinite(s.heights["sd"]).any():
            columns.append(
                (tr("Standard deviation ({})").format(amounts.label), lambda k: amounts.text(s.heights["sd"][k]), True)
            )
        columns.append((tr("Chainage ({})").format(UNIT_LABELS[s.chainage_unit]), along, True))
        return columns

    def rowCount(self, parent=QModelIndex()):  # noqa: N802,B008 - the host's name and default
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent=QModelIndex()):  # noqa: N802,B008 - the host's name and default
        return 0 if parent.isValid() else len(self._columns)

    def data(self, index, role=Qt.ItemDataRole.DisplayRole):
        _title, text, is_number = self._columns[index.column()]
        if role == Qt.ItemDataRole.DisplayRole:
            return str(text(int(self.rows[index.row()])))
        if role == Qt.ItemDataRole.TextAlignmentRole and is_number:
            flags = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
            return int(getattr(flags, "value", flags))  # Qt 6 has enumerations with a value
        return None

    def headerData(self, section, orientation, role=Qt.ItemDataRole.DisplayRole):  # noqa: N802 - the host's name
        if role == Qt.ItemDataRole.DisplayRole and orientation == Qt.Orientation.Horizontal:
            return self._columns[section][0]
        return None

    def text_of(self, lines):
        """Lines of the table, headings first, as text that a spreadsheet takes."""
        cells = [[title for title, _, _ in self._columns]]
        cells += [[str(text(int(self.rows[line]))) for _, text, _ in self._columns] for line in lines]
        return "\n".join("\t".join(row) for row in cells)


class StationTable(QTableView):
    """The table; ``chosen`` tells the lines a person has selected, ``entered_line`` the one that became current."""

    chosen = pyqtSignal(object)
    entered_line = pyqtSignal(int)

    def __init__(self, parent=None):
        super().__init__(parent)
        self.setObjectName("tautline_values")
        self.setModel(StationModel(self))
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setAlternatingRowColors(True)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.verticalHeader().hide()
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.verticalHeader().setDefaultSectionSize(int(self.fontMetrics().height() * 1.5))
        self.setAccessibleName(tr("Table of values"))
        self._quiet = False
        self.selectionModel().selectionChanged.connect(self._tell)
        self.selectionModel().currentRowChanged.connect(self._tell_current)

    def show_stations(self, stations, rows):
        self._quiet = True
        self.model().set_stations(stations, rows)
        header = self.horizontalHeader()
        for column in range(self.model().columnCount()):
            # By the heading and the first line: measuring 100,000 lines takes seconds.
            texts = [self.model().headerData(column, Qt.Orientation.Horizontal), "0" * 8]
            if len(rows):
                texts.append(self.model().data(self.model().index(0, column)))
            header.resizeSection(column, max(self.fontMetrics().horizontalAdvance(text) for text in texts) + 24)
        self._quiet = False

    def choose(self, lines, current):
        """Show lines as selected and one as current, without telling anybody."""
        self._quiet = True
        selection, model = QItemSelection(), self.model()
        last = model.columnCount() - 1
        lines = np.asarray(lines, int)
        # Runs of lines, so that a selection of all of them is one piece.
        starts = np.flatnonzero(np.diff(lines, prepend=-2) != 1)
        for start, end in zip(starts.tolist(), [*(starts[1:] - 1).tolist(), len(lines) - 1]):
            selection.select(model.index(int(lines[start]), 0), model.index(int(lines[end]), last))
        self.selectionModel().select(selection, QItemSelectionModel.SelectionFlag.ClearAndSelect)
        if 0 <= current < model.rowCount():
            self.selectionModel().setCurrentIndex(model.index(current, 0), QItemSelectionModel.SelectionFlag.NoUpdate)
            self.scrollTo(model.index(current, 0))
        self._quiet = False

    def _tell(self, *_):
        if not self._quiet:
            lines = [k for part in self.selectionModel().selection() for k in range(part.top(), part.bottom() + 1)]
            self.chosen.emit(np.array(sorted(set(lines)), int))

    def _tell_current(self, index, _before):
        if not self._quiet and index.isValid():
            self.entered_line.emit(index.row())

    def copy(self):
        """Put the selected lines, or all where none is, onto the clipboard."""
        lines = sorted({index.row() for index in self.selectionModel().selectedRows()}) or range(
            self.model().rowCount()
        )
        QApplication.clipboard().setText(self.model().text_of(lines))

    def keyPressEvent(self, event):  # noqa: N802 - the host's name
        if event.matches(QKeySequence.StandardKey.Copy):
            self.copy()
            event.accept()
        else:
            super().keyPressEvent(event)
