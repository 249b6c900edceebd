"""The window in which a height list is typed or pasted, checked, typed a second time, and kept as a layer."""

import csv

from qgis.PyQt.QtCore import Qt, pyqtSignal
from qgis.PyQt.QtWidgets import (
    QDialog,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QMessageBox,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
)

from ...algorithms.core.errors import InputError
from ...algorithms.core.pasted_text import pasted_rows
from ...algorithms.language.core_sentences import worded
from ...algorithms.language.number_text import counted
from ...algorithms.language.translation import tr
from ...algorithms.language.units import Units, said_units
from .data_questions import choice_box
from .typed_list_checks import summary, understood
from .typed_list_layer import lines_of, written
from .typed_list_model import TypedListModel
from .typed_list_second import DifferencesModel, DifferencesView
from .typed_list_view import TypedListView
from .widgets import Sentences, wrapped

_TYPING, _SECOND, _COMPARING = range(3)


class TypedList(QDialog):
    """``layer``: a typed list to go on with, None for a new one; ``axis_names``; ``units``: Units; ``place``: the
    GeoPackage of the guided run, '' for none. ``kept``: carries the layer and its Units."""

    kept = pyqtSignal(object, object)

    def __init__(self, layer, axis_names, units, place, parent=None):
        super().__init__(parent)
        self.setWindowTitle(tr("Height list, typed or pasted"))
        self.layer, self.axis_names, self.place = layer, axis_names, place
        self.first = TypedListModel(axis_names, units, lines_of(layer) if layer is not None else (), self)
        self.second, self.differences, self._state, self._settled = None, None, _TYPING, False
        self._build()
        self._show(_TYPING)
        letter, line = self.fontMetrics().averageCharWidth(), self.fontMetrics().height()
        self.resize(min(letter * 135, 1100), min(line * 36, 680))

    # --- what it looks like

    def _build(self):
        self.view, self.differing = TypedListView(), DifferencesView()
        self.view.pasted.connect(self.take_text)
        self.pages = QStackedWidget()
        for page in (self.view, self.differing):
            self.pages.addWidget(page)
        self.hint, self.beside, self.notes, self.outcome = wrapped(), Sentences(), Sentences(), Sentences()
        column = QVBoxLayout(self)
        column.addWidget(self.hint)
        column.addLayout(self._units_row())
        column.addLayout(self._tools())
        column.addWidget(self.pages, 1)
        for sentences in (self.beside, self.notes, self.outcome):
            column.addWidget(sentences)
        column.addLayout(self._buttons())

    def _units_row(self):
        units = list(said_units().items())
        self.height_unit, self.chainage_unit = choice_box(units), choice_box(units)
        self._set_units(self.first.units)
        row = QGridLayout()
        for place, (text, box) in enumerate(
            ((tr("Heights are &in"), self.height_unit), (tr("Stations and o&ffsets are in"), self.chainage_unit))
        ):
            label = QLabel(text)
            label.setBuddy(box)
            row.addWidget(label, 0, 2 * place)
            row.addWidget(box, 0, 2 * place + 1)
            row.setColumnStretch(2 * place + 1, 1)
            box.currentIndexChanged.connect(self._units_changed)
        return row

    def _tools(self):
        view = self.view
        row = QHBoxLayout()
        self.tools = []
        for text, keys, slot in (
            (tr("Pas&te"), "Ctrl+V", view.paste),
            (tr("&Copy"), "Ctrl+C", view.copy),
            (tr("In&sert a row"), "Ctrl+I", view.insert_line),
            (tr("&Delete rows"), "Ctrl+D", view.delete_lines),
            (tr("&Undo"), "Ctrl+Z", view.undo),
            (tr("&Redo"), "Ctrl+Y", view.redo),
        ):
            button = QPushButton(text)
            button.setAutoDefault(False)
            button.setToolTip(keys)
            button.clicked.connect(slot)
            row.addWidget(button)
            self.tools.append(button)
        row.addStretch()
        return row

    def _buttons(self):
        self.again = QPushButton(tr("Second t&yping…"))
        self.again.setToolTip(tr("Type the same sheets once more without seeing the first, and compare."))
        self.back, self.cancel = QPushButton(tr("&Back to the first typing")), QPushButton(tr("Cancel"))
        self.compare, self.take = QPushButton(tr("Co&mpare")), QPushButton(tr("&Apply the choices"))
        self.keep = QPushButton(tr("&Keep the list"))
        row = QHBoxLayout()
        row.addWidget(self.again)
        row.addWidget(self.back)
        row.addStretch()
        for button in (self.cancel, self.compare, self.take, self.keep):
            row.addWidget(button)
        for button, slot in (
            (self.again, self.type_again),
            (self.back, self.return_to_first),
            (self.cancel, self.reject),
            (self.compare, self.compare_typings),
            (self.take, self.take_over),
            (self.keep, self.accept),
        ):
            button.setAutoDefault(False)
            button.clicked.connect(slot)
        return row

    def _show(self, state):
        """Show the first typing, the second (the first is out of sight), or their differences."""
        self._state = state
        model = self.model()
        self.pages.setCurrentWidget(self.differing if state == _COMPARING else self.view)
        for button, states in (
            (self.again, (_TYPING,)),
            (self.keep, (_TYPING,)),
            (self.back, (_SECOND, _COMPARING)),
            (self.compare, (_SECOND,)),
            (self.take, (_COMPARING,)),
        ):
            button.setVisible(state in states)
        for widget in (*self.tools, self.height_unit, self.chainage_unit):
            widget.setEnabled(state != _COMPARING)
        self.notes.tell([])
        if state == _COMPARING:
            self.hint.setText(
                tr(
                    "Look at the sheet and choose for each difference: Space or Enter on the first or the second "
                    "typing, or type a third value. Remarks are not compared."
                )
            )
            self.beside.tell([])
            self.differing.use(self.differences)
            self.differing.setFocus()
            self._tell_differences()
            return
        start = tr("Second typing: the first is not shown. ") if state == _SECOND else ""
        self.hint.setText(
            start
            + tr(
                "Stations such as 12+50, 1+250 or a distance; offsets right positive. Enter goes from the station to "
                "the height and from there to the next row, Tab to the next cell. A pasted table may have headings."
            )
        )
        model.looked.connect(self._looked)
        self.view.use(model)
        self.view.selectionModel().currentChanged.connect(self._tell_line)
        self.view.setFocus()
        self._looked()

    def model(self):
        """The typing that is shown or was shown last."""
        return self.second if self._state == _SECOND else self.first

    # --- what is said

    def _looked(self):
        if self._state != _COMPARING:
            self._tell_line()
            self.outcome.tell(summary(self.model().result) + self._where())

    def _tell_line(self, *_):
        """What is said of the line under the cursor, in full."""
        row = self.view.currentIndex().row()
        said = self.model().result.told.get(row)
        self.beside.tell([(said[0], tr("Row {}: {}").format(row + 1, said[1]))] if said else [])

    def _where(self):
        if self._state == _SECOND or self.layer is not None:
            return []
        if self.place:
            return [("wait", tr("Kept as a table in {}.").format(self.place))]
        return [
            ("doubt", tr("The guided run has no GeoPackage yet: the list becomes a temporary layer, lost on closing."))
        ]

    def _tell_differences(self):
        comparison = self.differences.comparison
        told = [("fact", counted(comparison.agreeing, tr("row agrees."), tr("rows agree.")))]
        number = len(comparison.differences)
        if number:
            words = counted(number, tr("difference"), tr("differences"))
            still = self.differences.open()
            told.append(
                ("doubt", tr("{}, {} still without a choice.").format(words, still))
                if still
                else ("fact", tr("{}, each with its choice.").format(words))
            )
        self.outcome.tell(told)
        self.take.setEnabled(not self.differences.open())
        self.take.setToolTip(tr("Each difference needs a choice first.") if self.differences.open() else "")

    # --- units and pasting

    def _set_units(self, units):
        for box, name in ((self.height_unit, units.height_name), (self.chainage_unit, units.chainage_name)):
            box.setCurrentIndex(box.findData(name))

    def units(self):
        return Units(self.height_unit.currentData(), self.chainage_unit.currentData())

    def _units_changed(self, *_):
        for model in filter(None, (self.first, self.second)):
            model.set_units(self.units())

    def take_text(self, text, row, column):
        """Write pasted ``text`` into the table from the line ``row`` and the column number ``column`` on."""
        try:
            rows = pasted_rows(text)
        except csv.Error as error:
            self.notes.tell([("problem", tr("The pasted text cannot be split into cells: {}.").format(error))])
            return
        if not rows:
            self.notes.tell([("wait", tr("There is no text to paste."))])
            return
        model = self.model()
        try:
            found = understood(rows, model.columns, model.columns[column])
        except InputError as error:
            self.notes.tell([("problem", worded(error))])
            return
        notes = list(found.notes)
        if found.units:
            height = found.units.get("height", self.units().height_name)
            self._set_units(Units(height, found.units.get("station", height)))
            notes.append(tr("The unit is taken from the headings; see above the table."))
        model.paste(row, found.lines)
        model.check()
        self.notes.tell([("wait", note) for note in notes])
        self.view.go_to(row + len(found.lines), column)

    # --- the second typing

    def type_again(self):
        """Begin the second typing, or go on with it."""
        self.first.check()
        if not self.first.result.number:
            self.notes.tell([("problem", tr("There is no first typing to compare with yet."))])
            return
        self.second = self.second or TypedListModel(self.axis_names, self.units(), (), self)
        self._show(_SECOND)

    def return_to_first(self):
        self._show(_TYPING)

    def compare_typings(self):
        """Show where the typings differ."""
        lists = []
        for model in (self.first, self.second):
            model.check()
            if model.result.problem:
                self.notes.tell([("problem", model.result.problem)])
                return
            lists.append(model.readings())
        self.differences = DifferencesModel(*lists, self)
        self.differences.dataChanged.connect(lambda *_: self._tell_differences())
        self._show(_COMPARING)

    def take_over(self):
        """Make the chosen cells the list; one change, which can be undone."""
        self.first.replace(0, self.first.rowCount() - 1, self.differences.lines())
        self.first.check()
        self.second = None
        self._show(_TYPING)
        self.notes.tell([("fact", tr("The two typings are one list now."))])

    # --- the end

    def accept(self):
        """Keep the list as a layer; what hinders it is said, and nothing typed is lost."""
        lines = self.first.lines()
        self.first.check()
        if self.first.result.problem:
            self.notes.tell([("problem", self.first.result.problem)])
            return
        if not self.first.result.number:
            self.notes.tell([("problem", tr("There is no row with a reading to keep."))])
            return
        try:
            layer = written(self.layer, lines, self.place)
        except InputError as error:
            self.notes.tell([("problem", worded(error))])
            return
        super().accept()
        self.kept.emit(layer, self.units())

    def reject(self):
        """Leave; what was typed is given up only when asked."""
        if self.first.changed() or self.second is not None and self.second.changed():
            buttons = QMessageBox.StandardButton
            answer = QMessageBox.question(
                self,
                tr("Height list"),
                tr("Discard what was typed since the list was opened?"),
                buttons.Discard | buttons.Cancel,
                buttons.Cancel,
            )
            if answer != buttons.Discard:
                return
        super().reject()

    def keyPressEvent(self, event):  # noqa: N802 - the host's name
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            # A line's Enter never closes the window.
            focus = self.focusWidget()
            if isinstance(focus, QPushButton):
                focus.click()
            return
        super().keyPressEvent(event)
