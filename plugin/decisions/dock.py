"""The dock of flagged stations: the worst first, one decision for each, undo, and 'Run again'."""

import getpass
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path

import numpy as np
from qgis.core import Qgis, QgsApplication, QgsProcessingException
from qgis.PyQt.QtCore import QEvent, Qt, pyqtSignal
from qgis.PyQt.QtGui import QKeySequence
from qgis.PyQt.QtWidgets import QApplication, QWidget

from ...algorithms.core.units import METRES
from ...algorithms.language.number_text import counted
from ...algorithms.language.translation import tr
from ..message_bar import tell
from ..review.run_again import CannotRunAgain, RunAgain
from ..review.station_texts import station_lines, waiting_text
from .decision_store import PLACE_PROPERTY, Decision, DecisionsNotSaved, DecisionStore, History, key_of, place_of
from .model import STATION, FlaggedModel
from .panel import CHOICES, KEYS, OPEN, FlaggedPanel
from .questions import ask_place, may_run, may_save


class FlaggedDock(FlaggedPanel):
    """Lists the subject's flagged stations; chart and map follow the one that is current here."""

    profile_wanted = pyqtSignal()

    def __init__(self, iface, subject, link):
        super().__init__(tr("Flagged stations"), iface.mainWindow())
        self.setObjectName("tautline_flagged")
        self.iface, self.subject, self.link = iface, subject, link
        self.history, self.decisions, self._seen = History(), {}, None
        self.model = FlaggedModel(self)
        self._build()
        self._connect()
        self.refresh()

    def _connect(self):
        self.subject.changed.connect(self.refresh)
        self.subject.current_changed.connect(self._follow_current)
        self.list.selectionModel().currentRowChanged.connect(self._line_changed)
        self.list.doubleClicked.connect(lambda _index: self._zoom())
        self.filter.currentIndexChanged.connect(lambda _index: self._list())
        self.group.idClicked.connect(lambda number: self.decide(CHOICES[number]))
        self.note.editingFinished.connect(self._note_finished)
        for name, slot in (
            ("previous", lambda: self.step(-1)),
            ("next", lambda: self.step(1)),
            ("back", self.undo),
            ("forward", self.redo),
            ("profile", self.profile_wanted.emit),
            ("again", self.run_again),
        ):
            getattr(self, f"{name}_button").clicked.connect(lambda _checked=False, slot=slot: slot())
        for widget in self.findChildren(QWidget):
            if widget.focusPolicy() != Qt.FocusPolicy.NoFocus:
                widget.installEventFilter(self)

    def release(self):
        """Let go of what outlives the dock."""
        self.subject.changed.disconnect(self.refresh)
        self.subject.current_changed.disconnect(self._follow_current)

    # --- filling

    def refresh(self):
        """List the subject's stations anew, with the decisions found beside it."""
        layer, stations = self.subject.layer, self.subject.stations
        if layer is None or layer.id() != self._seen:
            self.history.clear()
            self._seen = layer.id() if layer is not None else None
        if stations is None or not len(stations):
            self.decisions = {}
            self.model.show(None, np.zeros(0, int), {})
            self._say_empty(
                waiting_text(layer)
                if self.subject.is_waiting
                else tr(
                    "There are no stations to review yet.\n\nRun 'Design heights and residuals' from the toolbox, or "
                    "open the example from the menu Plugins, Tautline."
                )
            )
            return
        with self._told():
            self.decisions = self._read()
        self._list()

    def _read(self):
        path = place_of(self.subject.layer)
        self.decisions = {}
        return DecisionStore(path).read() if path else {}

    @contextmanager
    def _told(self):
        """What cannot be read or written is said in the message bar."""
        try:
            yield
        except DecisionsNotSaved as error:
            tell(self.iface.messageBar(), str(error), Qgis.MessageLevel.Critical)

    def _say_empty(self, text):
        self.empty.setText(text)
        self.pages.setCurrentIndex(1)

    def _list(self):
        """Fill the list: flagged stations, the worst first, then those decided on that are flagged no more."""
        stations = self.subject.stations
        if stations is None or not len(stations):
            return
        flagged = stations.flagged()
        rows = np.concatenate([flagged, self._decided_only(stations, flagged)]).astype(int)
        if not len(rows):
            self._say_empty(self._none_flagged(stations))
            return
        self.pages.setCurrentIndex(0)
        self.model.show(stations, rows, self.decisions)
        if self.filter.currentData() == OPEN:
            rows = np.array([row for row in rows.tolist() if not self._word(row)], int)
            self.model.show(stations, rows, self.decisions)
        self._size_columns()
        self._tell_numbers()
        self._follow_current()

    def _decided_only(self, stations, flagged):
        if not self.decisions:
            return np.zeros(0, int)
        listed = set(flagged.tolist())
        return np.array(
            [
                row
                for row in range(len(stations))
                if row not in listed and key_of(stations.axis[row], stations.station[row]) in self.decisions
            ],
            int,
        )

    @staticmethod
    def _none_flagged(stations):
        if np.isin(stations.status, ("within",)).any():
            return tr("All stations with an as-built height are within the tolerance; no blunder is suspected.")
        return tr(
            "No station is flagged: the run that made this layer had no tolerance and tested for no blunders. Run it "
            "again with a tolerance to have stations judged."
        )

    def _size_columns(self):
        metrics, model = self.list.fontMetrics(), self.model
        for column in range(len(model.columns) - 1):
            texts = [model.headerData(column, Qt.Orientation.Horizontal)]
            texts += [model.data(model.index(line, column)) for line in range(min(model.rowCount(), 50))]
            self.list.setColumnWidth(column, max(metrics.horizontalAdvance(text) for text in texts) + 16)

    def _tell_numbers(self):
        rows = self.model.rows.tolist()
        decided = sum(1 for row in rows if self._word(row))
        self.summary.setText(tr("{}, {} decided").format(counted(len(rows), tr("station"), tr("stations")), decided))
        path = place_of(self.subject.layer)
        self.place.setText(
            tr("Decisions are kept in {}").format(Path(path).name)
            if path
            else tr("This layer is temporary: you will be asked where to keep the decisions.")
        )
        self.place.setToolTip(path)
        self._enable()

    def _enable(self):
        line = self._line()
        self.previous_button.setEnabled(line > 0)
        self.next_button.setEnabled(line + 1 < self.model.rowCount())
        self.back_button.setEnabled(self.history.can_undo)
        self.forward_button.setEnabled(self.history.can_redo)
        self.choice.setEnabled(line >= 0)

    def _word(self, row):
        decision = self.model.decision_of(row)
        return decision.decision if decision is not None else ""

    # --- going from station to station

    def _line(self):
        """Line of the subject's current station in the list, -1 where it is not listed."""
        found = np.flatnonzero(self.model.rows == self.subject.current) if self.subject.current >= 0 else ()
        return int(found[0]) if len(found) else -1

    def step(self, by):
        """Make the next or previous station of the list current; from none to the first."""
        line = self._line()
        self._go(0 if line < 0 else min(max(line + by, 0), self.model.rowCount() - 1))

    def _go(self, line):
        if 0 <= line < self.model.rowCount():
            self.list.setCurrentIndex(self.model.index(line, STATION))

    def _line_changed(self, index, _before):
        if not index.isValid():
            return
        row = int(self.model.rows[index.row()])
        self.subject.select([row])
        self.subject.set_current(row)
        self.link.show(row)
        self._show_station()

    def _follow_current(self):
        line = self._line()
        selection = self.list.selectionModel()
        if line >= 0 and self.list.currentIndex().row() != line:
            selection.blockSignals(True)
            self.list.setCurrentIndex(self.model.index(line, STATION))
            selection.blockSignals(False)
            self.list.viewport().update()
        elif line < 0:
            self.list.clearSelection()
        self._show_station()

    def _show_station(self):
        line, stations = self._line(), self.subject.stations
        decision = None
        if line >= 0:
            row = int(self.model.rows[line])
            decision = self.model.decision_of(row)
            self.story.setText(station_lines(stations, row))
        else:
            self.story.setText(tr("Choose a station: up and down in the list, or click it in the map or the profile."))
        self.radios[decision.decision if decision is not None and decision.decision in self.radios else ""].setChecked(
            True
        )
        if not (self.note.hasFocus() and self.note.isModified()):
            self.note.setText(decision.note if decision is not None else "")
        self.who.setText(_who_and_when(decision))
        self._enable()

    def _zoom(self):
        if self._line() >= 0:
            self.link.zoom_to([self.subject.current])

    # --- deciding

    def decide(self, word, note=None):
        """Write the decision on the current station, with the note as it stands; '' is none yet."""
        if self._line() < 0:
            return
        row, stations = self.subject.current, self.subject.stations
        before = self.model.decision_of(row)
        note = self.note.text().strip() if note is None else note
        self.note.setModified(False)
        if (before.decision, before.note) == (word, note) if before is not None else not word and not note:
            self._show_station()
            return
        after = None
        if word or note:
            after = Decision(
                str(stations.axis[row]),
                str(stations.station[row]),
                float(stations.chainage[row]) / METRES[stations.chainage_unit],
                word,
                note,
                _user(),
                datetime.now().astimezone().isoformat(timespec="seconds"),
            )
        self._write(before, after)

    def _write(self, before, after):
        while True:
            path = place_of(self.subject.layer)
            try:
                if not path:
                    raise DecisionsNotSaved(
                        tr("Layer '{}' is temporary, so decisions cannot be kept beside it.").format(
                            self.subject.layer.name()
                        )
                    )
                store = DecisionStore(path)
                store.drop(before.key) if after is None else store.put(after)
                break
            except DecisionsNotSaved as error:
                if not self._ask_place(str(error)):
                    self._show_station()
                    return
        self.history.add(before, after)
        self._reread()

    def _reread(self):
        with self._told():
            self.decisions = self._read()
        self.model.set_decisions(self.decisions)
        self._tell_numbers()
        self._show_station()

    def _ask_place(self, reason):
        """Ask for another place, with the reason; decisions made so far go there too. False where the user gave up."""
        path = ask_place(self, reason, self.subject.layer.name())
        if not path:
            return False
        try:
            store = DecisionStore(path)
            known = store.read()
            for decision in self.decisions.values():
                if decision.key not in known:
                    store.put(decision)
        except DecisionsNotSaved as error:
            return self._ask_place(str(error))
        self.subject.layer.setCustomProperty(PLACE_PROPERTY, path)
        return True

    def _note_finished(self):
        if self.note.isModified() and self._line() >= 0:
            self.decide(self._word(self.subject.current))

    def undo(self):
        """Take the last decision back."""
        self._step_back(self.history.can_undo, self.history.undo)

    def redo(self):
        """Decide again what was taken back."""
        self._step_back(self.history.can_redo, self.history.redo)

    def _step_back(self, possible, do):
        if not possible:
            return
        with self._told():
            changed = do(DecisionStore(place_of(self.subject.layer)))
            self.note.setModified(False)
            self._reread()
            self.subject.set_current(self.subject.row_named(changed.axis, changed.station))
            self._show_station()

    # --- running again

    def run_again(self):
        """Repeat the recorded run; decisions stay, since they are not in the result."""
        bar, layer = self.iface.messageBar(), self.subject.layer
        if layer is None:
            return
        try:
            again = RunAgain(layer)
            if again.unsaved and not may_save(self, again.unsaved):
                return
            if not may_run(self, again.question()):
                return
            again.save_edits()
            QApplication.setOverrideCursor(Qt.CursorShape.WaitCursor)
            try:
                again.run()
            finally:
                QApplication.restoreOverrideCursor()
        except (CannotRunAgain, QgsProcessingException) as error:
            tell(bar, str(error), Qgis.MessageLevel.Warning)
            return
        self.subject.read()
        tell(bar, tr("'{}' was run again with the same settings.").format(again.title), Qgis.MessageLevel.Success, 6)

    # --- keys

    def eventFilter(self, widget, event):  # noqa: N802 - the host's name
        """Alt+Up and Alt+Down step, Ctrl+Z undoes, figures decide and Enter zooms in the list; the host's keys wait."""
        if event.type() not in (QEvent.Type.ShortcutOverride, QEvent.Type.KeyPress):
            return super().eventFilter(widget, event)
        slot = self._slot(widget, event)
        if slot is None:
            return super().eventFilter(widget, event)
        event.accept()
        if event.type() == QEvent.Type.KeyPress:
            slot()
        return True

    def _slot(self, widget, event):
        key, alt = event.key(), bool(event.modifiers() & Qt.KeyboardModifier.AltModifier)
        if alt and key in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            return lambda: self._leave_note_and_step(-1 if key == Qt.Key.Key_Up else 1)
        if widget is self.note:
            return None
        if event.matches(QKeySequence.StandardKey.Undo):
            return self.undo
        if event.matches(QKeySequence.StandardKey.Redo):
            return self.redo
        if widget is self.list and event.text() in KEYS and not event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            return lambda: self.decide(CHOICES[KEYS.index(event.text())])
        if widget is self.list and key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            return self._zoom
        return None

    def _leave_note_and_step(self, by):
        self._note_finished()
        self.step(by)


def _user():
    """Who decides: the user's name as the host knows it."""
    return QgsApplication.userFullName() or QgsApplication.userLoginName() or getpass.getuser()


def _who_and_when(decision):
    if decision is None or not decision.at:
        return ""
    try:
        when = datetime.fromisoformat(decision.at).strftime("%Y-%m-%d %H:%M")
    except ValueError:
        when = decision.at
    return tr("By {}, {}").format(decision.by, when) if decision.by else when
