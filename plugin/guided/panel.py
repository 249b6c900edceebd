"""The guided run's panel: four questions, what was understood, and a button."""

from pathlib import Path

from qgis.core import QgsProject
from qgis.gui import QgsDockWidget, QgsFileWidget
from qgis.PyQt.QtCore import QSize, Qt, QTimer, pyqtSignal
from qgis.PyQt.QtWidgets import QFrame, QHBoxLayout, QProgressBar, QPushButton, QScrollArea, QVBoxLayout, QWidget

from ...algorithms.language.translation import tr
from ...algorithms.language.units import Units
from . import report, running
from .data_questions import HeightsQuestion, StructureQuestion
from .design_questions import AccuracyQuestion, DesignQuestion
from .settings import Settings, save, saved
from .typed_list import TypedList
from .typed_list_layer import is_typed_list
from .understanding import Understanding
from .widgets import Sentences, wrapped

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
        self.understanding = Understanding(self)
        self.understanding.changed.connect(self._show_understood)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_WAIT)
        self._timer.timeout.connect(self._keep_and_look)
        self._build()
        project = QgsProject.instance()
        for signal, slot in ((project.readProject, self.fill), (project.cleared, self.fill)):
            signal.connect(slot)
        self._filling = False
        self.fill()

    # --- what it looks like

    def _build(self):
        place = QgsFileWidget()
        place.setStorageMode(QgsFileWidget.StorageMode.SaveFile)
        place.setFilter("GeoPackage (*.gpkg)")
        place.lineEdit().setPlaceholderText(tr("temporary layers"))
        self.structure, self.heights = StructureQuestion(), HeightsQuestion()
        self.design, self.accuracy = DesignQuestion(), AccuracyQuestion(place)
        self.questions = (self.structure, self.heights, self.design, self.accuracy)
        column = QVBoxLayout()
        column.setContentsMargins(10, 10, 10, 10)
        column.setSpacing(14)
        for question in self.questions:
            question.answered.connect(self._answered)
            column.addWidget(question)
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
        self.heights.typed_button.clicked.connect(self.type_list)
        self.answers = {}
        for question in self.questions[1:]:
            self.answers.update(question.answers)

    def _foot(self):
        """What stays in sight: progress, outcome and buttons."""
        foot = QFrame()
        foot.setFrameShape(QFrame.Shape.NoFrame)
        column = QVBoxLayout(foot)
        column.setContentsMargins(10, 6, 10, 10)
        column.setSpacing(6)
        line = QFrame()
        line.setFrameShape(QFrame.Shape.HLine)
        line.setFrameShadow(QFrame.Shadow.Sunken)
        self.outcome, self.progress, self.doing = Sentences(), QProgressBar(), wrapped()
        self.progress.setTextVisible(False)
        self.progress.setRange(0, 100)
        self.run_button, self.cancel_button = QPushButton(tr("&Run")), QPushButton(tr("Cancel"))
        self.profile_button = QPushButton(tr("Open the profile"))
        self.run_button.clicked.connect(self.start)
        self.cancel_button.clicked.connect(self._cancel)
        self.profile_button.clicked.connect(lambda: self.profile_wanted.emit(self._result))
        self.follow_up_button = QPushButton(tr("&Papers"))
        self.follow_up_button.setToolTip(tr("Report, schedule and comparison of the result: opens their forms."))
        self._result = None
        buttons = QHBoxLayout()
        buttons.addWidget(self.profile_button)
        buttons.addWidget(self.follow_up_button)
        buttons.addStretch()
        for button in (self.cancel_button, self.run_button):
            buttons.addWidget(button)
        for widget in (line, self.outcome, self.doing, self.progress):
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
        self.outcome.tell([])
        self.profile_button.setVisible(False)
        self.follow_up_button.setVisible(False)
        self.look()

    def _answered(self):
        if self._filling:
            return
        if any(kind == "problem" for kind, _ in self.outcome.told()):
            self.outcome.tell([])
        self._timer.start()

    def _keep_and_look(self):
        save(self.settings())
        self.look()

    def look(self):
        """Look at the data with the answers as they stand."""
        self._timer.stop()
        settings = self.settings()
        self._watch(QgsProject.instance().mapLayer(settings.heights))
        self.understanding.look(settings)

    def type_list(self):
        """Open the table in which a height list is typed or pasted: the chosen one, or a new one."""
        settings = self.settings()
        names = [axis.name for axis in self.understanding.found.axes]
        units = Units(settings.height_unit, settings.chainage_unit or settings.height_unit)
        layer = QgsProject.instance().mapLayer(settings.heights)
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
        for key, answer in self.answers.items():
            answer.say(found.beside.get(key, ""))
        self.design.set_overridden([axis.design for axis in found.axes])
        self.design.suggest(found.looks, settings.height_unit)
        self.accuracy.show_unit(settings.height_unit)
        self.run_button.setEnabled(found.ready and self.run is None)
        self.run_button.setToolTip("" if found.ready else tr("Structure and heights are needed first."))

    # --- the run

    def start(self):
        """Run the entries with the answers as they stand."""
        if self.run is not None or not self.understanding.found.ready:
            return
        if self._timer.isActive() or self.understanding.settings != self.settings():
            self.look()
            return
        settings = self.settings()
        save(settings)
        self.outcome.tell([])
        self.profile_button.setVisible(False)
        self.follow_up_button.setVisible(False)
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
        self.run_button.setEnabled(True)
        self.run_button.setFocus()
        if outcome is None:
            if answer in self.answers:
                self.answers[answer].say(message)
                # When the sentence has its room.
                QTimer.singleShot(0, lambda: self._show_answer(answer))
            self.outcome.tell([("wait" if run.cancelled else "problem", message)])
            return
        running.show(outcome, run.title, run.settings.place)
        report.bring_into_view(self.iface, outcome.layers["residuals"])
        self.outcome.tell(report.outcome_sentences(outcome, run.settings, run.understood))
        self._result = outcome.layers["residuals"]
        self.follow_up_button.setVisible(self.follow_up_button.menu() is not None)
        self.finished.emit(outcome)

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
        return next((layer for layer in QgsProject.instance().mapLayers().values() if layer is self._result), None)

    def leave(self):
        """Let go of everything before the plugin goes."""
        self.understanding.stop()
        self._timer.stop()
        if self.run is not None:
            self.run.forget()
            self.run = None
        self._unwatch()
        project = QgsProject.instance()
        for signal in (project.readProject, project.cleared):
            signal.disconnect(self.fill)
