"""The lines of a typed list as the host's tables show them: one empty line at the end, every change can be undone."""

from qgis.PyQt.QtCore import QAbstractTableModel, QModelIndex, Qt, QTimer, pyqtSignal

from ...algorithms.core.errors import InputError
from ...algorithms.language.core_sentences import worded
from ...algorithms.language.translation import tr
from .requests import in_panel_words
from .typed_list_checks import Checked, alone, checked, compared_lines, read
from .widgets import sign_icon

_WAIT = 120  # Milliseconds after the last change before the lines are checked.


class TypedListModel(QAbstractTableModel):
    """Texts as typed. ``axis_names``: of the axis layer; ``units``: Units. ``looked``: the lines were checked."""

    looked = pyqtSignal()

    def __init__(self, axis_names, units, lines=(), parent=None):
        super().__init__(parent)
        self.columns = (["axis"] if len(axis_names) > 1 else []) + ["station", "height", "offset", "remark"]
        self.axis_names, self.units, self.result = list(axis_names), units, Checked()
        self._titles = {
            "axis": tr("Axis"),
            "station": tr("Station"),
            "height": tr("Height"),
            "offset": tr("Offset"),
            "remark": tr("Remark"),
        }
        self._lines = [self._line(line) for line in lines]
        self._done, self._undone, self._read, self._sign_open = [], [], None, False
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_WAIT)
        self._timer.timeout.connect(self.check)
        self.check()

    def _line(self, cells):
        return [cells.get(column, "") for column in self.columns]

    # --- what it holds

    def lines(self):
        """[{column: text}] without the empty lines at the end."""
        lines = list(self._lines)
        while lines and not any(lines[-1]):
            lines.pop()
        return [dict(zip(self.columns, line)) for line in lines]

    def lines_from(self, first, end):
        """[{column: text}] of the lines ``first`` to before ``end``."""
        return [dict(zip(self.columns, line)) for line in self._lines[first:end]]

    def changed(self):
        """Whether anything was changed that is not undone."""
        return bool(self._done)

    def set_units(self, units):
        self.units, self._read = units, None
        self._timer.start()
        self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, len(self.columns))

    def readings(self):
        """Core Lines of the lines with a reading, [] where a column cannot be read."""
        return compared_lines(self.lines_from(0, len(self._lines)), self._read) if self._read is not None else []

    def _read_lines(self, lines):
        columns = {column: [line[k] for line in lines] for k, column in enumerate(self.columns)}
        return read(columns, self.axis_names, self.units)

    def _read_change(self, row, number, new):
        """Read the changed lines alone, where nothing in them or around them hangs on the rest of a column."""
        cells = [text for line in new for text in line[:-1]]
        if self._read is None or self._sign_open or "axis" in self.columns or not alone(cells):
            self._read = None
        else:
            self._read = self._read.spliced(row, number, self._read_lines(new))

    def check(self):
        """Check the lines now; only lines of which something else is said are drawn again."""
        self._timer.stop()
        before = self.result.told
        try:
            if self._read is None:
                self._sign_open = not alone(text for line in self._lines for text in line[:-1])
                self._read = self._read_lines(self._lines)
            self.result = checked(self._read, self.units)
        except InputError as error:
            self.result = Checked(problem=in_panel_words(worded(error)))
        told = self.result.told
        rows = [row for row in {**before, **told} if before.get(row) != told.get(row)]
        if rows:
            at = len(self.columns)
            last = min(max(rows), self.rowCount() - 1)
            self.dataChanged.emit(self.index(min(min(rows), last), at), self.index(last, at))
        self.looked.emit()

    # --- changes

    def replace(self, row, number, cells):
        """Put lines ``cells`` [{column: text}] in place of ``number`` lines from ``row`` on."""
        self._change(row, number, [self._line(line) for line in cells], self._done)
        self._undone.clear()

    def _change(self, row, number, new, memory):
        old = self._lines[row : row + number]
        if old == new:
            return
        memory.append((row, len(new), old))
        self._read_change(row, len(old), new)
        both = min(len(old), len(new))
        if both:
            self._lines[row : row + both] = new[:both]
            self.dataChanged.emit(self.index(row, 0), self.index(row + both - 1, len(self.columns)))
        if len(new) > both:
            # At the end the empty line is filled, and a new empty one follows: a cursor in it stays.
            first = row + both + (row + both == len(self._lines))
            self.beginInsertRows(QModelIndex(), first, first + len(new) - both - 1)
            self._lines[row + both : row + both] = new[both:]
            self.endInsertRows()
            self.dataChanged.emit(self.index(row, 0), self.index(row + len(new) - 1, len(self.columns)))
        elif len(old) > both:
            self.beginRemoveRows(QModelIndex(), row + both, row + len(old) - 1)
            del self._lines[row + both : row + len(old)]
            self.endRemoveRows()
        self._timer.start()

    def undo(self):
        """Take the last change back; the row where it was, None where there is none."""
        return self._back(self._done, self._undone)

    def redo(self):
        return self._back(self._undone, self._done)

    def _back(self, one, other):
        if not one:
            return None
        row, number, old = one.pop()
        self._change(row, number, old, other)
        return row

    def clear_cells(self, places):
        """Empty the cells (row, column number); one change."""
        places = [(row, column) for row, column in places if row < len(self._lines) and column < len(self.columns)]
        if places:
            first, last = min(row for row, _ in places), max(row for row, _ in places)
            lines = [list(line) for line in self._lines[first : last + 1]]
            for row, column in places:
                lines[row - first][column] = ""
            self.replace(first, len(lines), [dict(zip(self.columns, line)) for line in lines])

    def paste(self, row, lines):
        """Write ``lines`` [{column: text}] over the lines from ``row`` on, adding lines where there are none."""
        over = [dict(zip(self.columns, line)) for line in self._lines[row : row + len(lines)]]
        new = [{**old, **line} for old, line in zip(over, lines)]
        self.replace(row, len(over), new + lines[len(over) :])

    # --- the host's table

    def rowCount(self, parent=QModelIndex()):  # noqa: N802,B008 - the host's name and default
        return 0 if parent.isValid() else len(self._lines) + 1

    def columnCount(self, parent=QModelIndex()):  # noqa: N802,B008 - the host's name and default
        return 0 if parent.isValid() else len(self.columns) + 1

    def headerData(self, section, orientation, role=Qt.ItemDataRole.DisplayRole):  # noqa: N802 - the host's name
        if role != Qt.ItemDataRole.DisplayRole:
            return None
        if orientation == Qt.Orientation.Vertical:
            return str(section + 1)
        if section == len(self.columns):
            return tr("Check")
        column = self.columns[section]
        unit = {"height": self.units.height_label, "offset": self.units.chainage_label}.get(column, "")
        return self._titles[column] + (f" ({unit})" if unit else "")

    def flags(self, index):
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        return flags | Qt.ItemFlag.ItemIsEditable if index.column() < len(self.columns) else flags

    def data(self, index, role=Qt.ItemDataRole.DisplayRole):
        row, column = index.row(), index.column()
        if column == len(self.columns):
            return self._check_data(row, role)
        if role == Qt.ItemDataRole.TextAlignmentRole and self.columns[column] in ("station", "height", "offset"):
            flags = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
            return int(getattr(flags, "value", flags))  # Qt 6 has enumerations with a value
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.EditRole) and row < len(self._lines):
            return self._lines[row][column]
        return None

    def _check_data(self, row, role):
        kind, sentence = self.result.told.get(row, ("", ""))
        if not kind or row >= len(self._lines):
            return None
        if role == Qt.ItemDataRole.DecorationRole:
            return sign_icon(kind)
        return sentence if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole) else None

    def setData(self, index, value, role=Qt.ItemDataRole.EditRole):  # noqa: N802 - the host's name
        row, column = index.row(), index.column()
        if role != Qt.ItemDataRole.EditRole or column >= len(self.columns):
            return False
        text, there = str(value).strip(), row < len(self._lines)
        line = dict(zip(self.columns, self._lines[row])) if there else {}
        if text == line.get(self.columns[column], ""):
            return False
        self.replace(row, int(there), [{**line, self.columns[column]: text}])
        return True
