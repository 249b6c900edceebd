"""The guided run's panel: four questions, what was understood, and a button."""

from pathlib import Path

from qgis.core import QgsProject
from qgis.gui import QgsDockWidget, QgsFileWidget
from qgis.PyQt.QtCore import QSize, Qt, QTimer, pyqtSignal
from qgis.PyQt.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QProgressBar,
    QPushButton,
    QScrollArea,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from ...algorithms.language.translation import tr
from ...algorithms.language.units import Units
from ..readable_text import ReadableFields
from . import needed, report, running
from .data_questions import HeightsQuestion, StructureQuestion
from .design_questions import AccuracyQuestion, DesignQuestion
from .settings import Settings, save, saved
from .typed_list import TypedList
from .typed_list_layer import is_typed_list
from .understanding import Understanding
from .widgets import Sentences, heading_label, wrapped

_WAIT = 200  # Milliseconds after the last key before the data are looked at.


class _Column(QWidget):
    """What is scrolled: as high as its sentences need at the panel's width, not at the narrowest."""

    def minimumSizeHint(self):  # noqa: N802 - the host's name
        return QSize(super().minimumSizeHint().width(), 0)


class GuidedPanel(QgsDockWidget):
    """The dock. ``finished``: a run has put its layers into the project; carries the Outcome."""

    finished = pyqtSignal(object)
    profile_wanted = pyqtSignal(object)

    def __init__(self, iface):
        super().__init__(tr("Guided run"), iface.mainWindow())
        self.setObjectName("tautline_guided_run")
        self.iface, self.run, self._watched, self._filling = iface, None, None, True
        self.typed = None
        self._axes_asked_about, self._answered_since = None, False
        self.understanding = Understanding(self)
        self.understanding.changed.connect(self._show_understood)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_WAIT)
        self._timer.timeout.connect(self._keep_and_look)
        project = QgsProject.instance()
        # Before there are boxes: they hear in this order, and one that has lost its layer shows another at once.
        project.layersWillBeRemoved.connect(self._layers_going)
        self._build()
        later = ((project.readProject, self.fill), (project.cleared, self.fill))
        later += ((project.layersAdded, self._layers_added),)
        for signal, slot in later:
            signal.connect(slot)
        self._heard = ((project.layersWillBeRemoved, self._layers_going), *later)
        self._filling = False
        self.fill()

    # --- what it looks like

    def _build(self):
        place = QgsFileWidget()
        place.setStorageMode(QgsFileWidget.StorageMode.SaveFile)
        place.setFilter("GeoPackage (*.gpkg)")
        place.lineEdit().setPlaceholderText(tr("temporary layers"))
        place.lineEdit().setAccessibleName(tr("Keep the results in"))
        for button in place.findChildren(QToolButton):
            button.setAccessibleName(tr("Choose the file"))
            button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.structure, self.heights = StructureQuestion(), HeightsQuestion()
        self.design, self.accuracy = DesignQuestion(), AccuracyQuestion(place)
        self.questions = (self.structure, self.heights, self.design, self.accuracy)
        column = QVBoxLayout()
        column.setContentsMargins(10, 10, 10, 10)
        column.setSpacing(14)
        column.addWidget(self._result_part())
        for question in self.questions:
            question.answered.connect(self._answered)
            column.addWidget(question)
        self.structure.answered.connect(self._other_axes)
        column.addStretch(1)
        inside = _Column()
        inside.setLayout(column)
        inside.setMaximumWidth(44 * self.fontMetrics().averageCharWidth() + 300)
        # The panel has one background, whatever the theme makes of the insides of a scrolled area.
        inside.setAutoFillBackground(False)
        self.scroll = QScrollArea()
        self.scroll.setWidgetResizable(True)
        self.scroll.setFrameShape(QFrame.Shape.NoFrame)
        self.scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.scroll.setWidget(inside)
        # Never narrower than its fields: a panel that is cut at the right hides the half of what it asks.
        bar = self.scroll.verticalScrollBar().sizeHint().width()
        self.scroll.setMinimumWidth(inside.minimumSizeHint().width() + bar)
        whole = QVBoxLayout()
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self.scroll, 1)
        whole.addWidget(self._foot())
        body = QWidget()
        body.setLayout(whole)
        self.setWidget(body)
        ReadableFields(self)
        self.heights.typed_button.clicked.connect(self.type_list)
        self.answers = {}
        for question in self.questions[1:]:
            self.answers.update(question.answers)

    def _result_part(self):
        """The verdicts of a run, above the questions and scrolled with them: they may be many."""
        part = QWidget()
        column = QVBoxLayout(part)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        self.result_title, self.outcome = heading_label(tr("Result")), Sentences()
        self.older = wrapped(tr("The answers below have changed since: run again to bring it up to date."))
        line = QFrame()
        line.setFrameShape(QFrame.Shape.HLine)
        line.setFrameShadow(QFrame.Shadow.Sunken)
        for widget in (self.result_title, self.older, self.outcome, line):
            column.addWidget(widget)
        self.result_part, self._told_of = part, None
        part.setVisible(False)
        return part

    def _tell_result(self, told, settings=None):
        """Show the verdicts of a run with these ``settings``; [] for none."""
        self.outcome.tell(told)
        self._told_of = settings
        self.result_part.setVisible(bool(told))
        self.older.setVisible(False)

    def tell_renewed(self):
        """The layers were brought up to date: what was told of this run's no longer holds."""
        if self.outcome.told():
            text = tr(
                "The results were brought up to date since this run: see axis profile, flagged stations and report."
            )
            self._tell_result([("wait", text)], self._told_of)

    def _foot(self):
        """What stays in sight: progress, why there is no run, and buttons."""
        foot = QFrame()
        foot.setFrameShape(QFrame.Shape.NoFrame)
        column = QVBoxLayout(foot)
        column.setContentsMargins(10, 6, 10, 10)
        column.setSpacing(6)
        line = QFrame()
        line.setFrameShape(QFrame.Shape.HLine)
        line.setFrameShadow(QFrame.Shadow.Sunken)
        self.trouble, self.progress, self.doing = Sentences(), QProgressBar(), wrapped()
        self.why_closed = wrapped()
        self.progress.setTextVisible(False)
        self.progress.setRange(0, 100)
        self.run_button, self.cancel_button = QPushButton(tr("Run")), QPushButton(tr("Cancel"))
        self.profile_button = QPushButton(tr("Open the profile"))
        self.run_button.clicked.connect(self.start)
        self.cancel_button.clicked.connect(self._cancel)
        self.profile_button.clicked.connect(lambda: self.profile_wanted.emit(self._result))
        self.follow_up_button = QPushButton(tr("Reports"))
        self.follow_up_button.setToolTip(tr("Report, schedule and comparison of the result: opens their forms."))
        self._result = None
        buttons = QHBoxLayout()
        buttons.addWidget(self.profile_button)
        buttons.addWidget(self.follow_up_button)
        buttons.addStretch()
        for button in (self.cancel_button, self.run_button):
            buttons.addWidget(button)
        for widget in (line, self.trouble, self.doing, self.progress, self.why_closed):
            column.addWidget(widget)
        column.addLayout(buttons)
        self._show_running(False)
        self.profile_button.setVisible(False)
        self.follow_up_button.setVisible(False)
        return foot

    def _show_running(self, going):
        for widget in (self.doing, self.progress, self.cancel_button):
            widget.setVisible(going)
        self.run_button.setVisible(not going)
        self.why_closed.setVisible(not going)
        self.scroll.setEnabled(not going)

    # --- answers

    def settings(self):
        """The answers as they stand: Settings."""
        values = {}
        for question in self.questions:
            values.update(question.values())
        return Settings(**values)

    def fill(self, *_):
        """Take the answers kept in the project, or what a new one suggests."""
        if self.run is not None:
            self.run.forget()
            self.run = None
            self._show_running(False)
        self._filling = True
        kept = saved()
        for question in self.questions:
            question.fill(kept or Settings())
        if kept is None:
            self.structure.propose()
            self.heights.propose(self.iface.activeLayer())
            home = QgsProject.instance().homePath()
            self.accuracy.place.setFilePath(str(Path(home) / "tautline_results.gpkg") if home else "")
        self._filling = False
        self.trouble.tell([])
        self._tell_result([])
        self._offer(running.kept_result())
        self.look()

    def _offer(self, result):
        """Offer profile and papers of the layer ``result``, None for none."""
        self._result = result
        self.profile_button.setVisible(result is not None)
        self.follow_up_button.setVisible(result is not None and self.follow_up_button.menu() is not None)

    def _layers_added(self, layers):
        """New layers are proposed where nothing is chosen yet."""
        for box in self._layer_boxes():
            box.update_layers()
        if self._filling or self.run is not None:
            return
        # A proposal is no answer, and is not kept as one.
        answered = self._answered_since
        self.structure.propose_of(layers)
        self.heights.propose_of(layers)
        self._answered_since = answered

    def _layers_going(self, ids):
        for box in self._layer_boxes():
            box.let_go(ids)
        if self._result is not None and self._result.id() in ids:
            self._offer(None)

    def _layer_boxes(self):
        return self.structure.box, self.heights.box, self.design.reference

    def _other_axes(self):
        """That several axes share a plane was said of those that were chosen."""
        axis = (self.structure.values()["axis"], self.structure.by_stations.isChecked())
        if axis != self._axes_asked_about and not self._filling:
            self.accuracy.one_plane.setChecked(False)
        self._axes_asked_about = axis

    def _answered(self):
        if self._filling:
            return
        self.trouble.tell([])
        # The host's boxes also speak up where nothing has changed.
        if self.settings() != self.understanding.settings:
            self._answered_since = True
            self._timer.start()

    def _keep_and_look(self):
        if self._answered_since:
            save(self.settings())
        self.look()

    def look(self):
        """Look at the data with the answers as they stand."""
        self._timer.stop()
        self._answered_since = False
        settings = self.settings()
        self._watch(QgsProject.instance().mapLayer(settings.heights))
        self.understanding.look(settings)

    def type_list(self):
        """Open the table in which a height list is typed or pasted: the chosen one, or a new one."""
        settings = self.settings()
        names = [axis.name for axis in self.understanding.found.axes]
        units = Units(settings.height_unit, settings.chainage_unit or settings.height_unit)
        layer = QgsProject.instance().mapLayer(settings.heights)
        if self.typed is not None:
            self.typed.deleteLater()
        self.typed = TypedList(layer if is_typed_list(layer) else None, names, units, settings.place, self)
        self.typed.kept.connect(self.heights.take_list)
        self.typed.open()

    def _watch(self, layer):
        """Look again when the stations are edited."""
        if layer is self._watched:
            return
        self._unwatch()
        if layer is not None:
            layer.layerModified.connect(self._timer.start)
            layer.willBeDeleted.connect(self._lost)
        self._watched = layer

    def _lost(self):
        self._watched = None

    def _unwatch(self):
        if self._watched is not None:
            self._watched.layerModified.disconnect(self._timer.start)
            self._watched.willBeDeleted.disconnect(self._lost)
        self._watched = None

    def _show_understood(self):
        found, settings = self.understanding.found, self.understanding.settings
        waiting = [("wait", tr("Looking at the data…"))] if found.busy else []
        self.structure.notes.tell(found.structure)
        self.heights.notes.tell(found.heights + waiting)
        self.design.notes.tell(found.design)
        stated = [axis.design for axis in found.axes]
        beside = {**found.beside, **needed.unreadable(needed.counting(settings, found), stated)}
        for key, answer in self.answers.items():
            answer.say(beside.get(key, ""))
        if not found.busy:
            self.accuracy.ask_for_plane(len(found.looks), found.meet)
            self.accuracy.ask_for_line(found.has_positions)
        self.older.setVisible(self._told_of not in (None, settings))
        self.design.set_overridden([axis.design for axis in found.axes])
        self.design.suggest(found.looks, settings.height_unit)
        self.accuracy.show_unit(settings.height_unit)
        self.accuracy.show_stated(bool(found.axes) and all(axis.tolerance for axis in found.axes))
        self._open_or_close()

    def _open_or_close(self):
        """The button stays closed while something is missing, and says what."""
        why = needed.why_not(self.understanding.settings, self.understanding.found)
        self.run_button.setEnabled(not why and self.run is None)
        self.run_button.setToolTip(why)
        # Always a line: what comes and goes there would move the answers under the pointer.
        self.why_closed.setText(why or tr("Ready to run."))

    # --- the run

    def start(self):
        """Run the entries with the answers as they stand."""
        if self.run is not None or not self.run_button.isEnabled():
            return
        if self._timer.isActive() or self.understanding.settings != self.settings():
            self.look()
            return
        settings = self.settings()
        save(settings)
        self.trouble.tell([])
        self._before = self.outcome.told(), self._told_of, self._result
        self._tell_result([])
        self._offer(None)
        for answer in self.answers.values():
            answer.say("")
        self.run = running.GuidedRun(settings, self.understanding.found, self._title(), self)
        self.run.progressed.connect(self._progressed)
        self.run.ended.connect(self._ended)
        self._show_running(True)
        self.cancel_button.setFocus()
        self.run.begin()

    def _title(self):
        layer = QgsProject.instance().mapLayer(self.understanding.settings.heights)
        return tr("Guided run: {}").format(layer.name())

    def _progressed(self, title, percent):
        self.doing.setText(title + "…")
        self.progress.setValue(int(percent))

    def _cancel(self):
        self.doing.setText(tr("Stopping…"))
        self.run.cancel()

    def _ended(self, outcome, message, answer):
        run, self.run = self.run, None
        run.deleteLater()
        self._show_running(False)
        self._open_or_close()
        self.run_button.setFocus()
        if outcome is None:
            if answer in self.answers:
                self.answers[answer].say(message)
                # When the sentence has its room.
                QTimer.singleShot(0, lambda: self._show_answer(answer))
            self.trouble.tell([("wait" if run.cancelled else "problem", message)])
            if not run.outcome.layers:
                # Nothing was written: what the run before has told still holds.
                told, told_of, result = self._before
                self._tell_result(told, told_of)
                self._offer(result if self._kept(result) else None)
            return
        running.show(outcome, run.title, run.settings.place)
        report.bring_into_view(self.iface, outcome.layers)
        self._tell_result(report.outcome_sentences(outcome, run.settings, run.understood), run.settings)
        self._offer(outcome.layers["residuals"])
        self.profile_button.setVisible(False)
        self.scroll.verticalScrollBar().setValue(0)
        self.finished.emit(outcome)
        # Again when the profile has taken its room from the map.
        QTimer.singleShot(0, lambda: self._show_outcome(outcome))

    def _show_outcome(self, outcome):
        """Let the map show all that a run has drawn, where it is still there."""
        there = QgsProject.instance().mapLayers().values()
        found = {table: layer for table, layer in outcome.layers.items() if layer in there}
        if "residuals" in found:
            report.bring_into_view(self.iface, found)

    def _show_answer(self, answer):
        self.scroll.ensureWidgetVisible(self.answers[answer], 0, 30)
        self.answers[answer].field.setFocus()

    def offer_profile(self):
        """Show the button that opens the profile."""
        self.profile_button.setVisible(True)

    def offer_follow_up_forms(self, make_menu):
        """Give the button of the follow-up forms its menu: ``make_menu`` takes a function that returns the layer."""
        self.follow_up_button.setMenu(make_menu(self._kept_result))

    def _kept_result(self):
        """The layer of the last result, None where it was removed from the project since."""
        return self._kept(self._result)

    @staticmethod
    def _kept(result):
        return next((layer for layer in QgsProject.instance().mapLayers().values() if layer is result), None)

    def leave(self):
        """Let go of everything before the plugin goes."""
        self.understanding.stop()
        self._timer.stop()
        if self.run is not None:
            self.run.forget()
            self.run = None
        self._unwatch()
        for signal, slot in self._heard:
            signal.disconnect(slot)
