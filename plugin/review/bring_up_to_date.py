"""Bring up to date: the recorded runs again, in their order, into the places where their layers are."""

from qgis.core import Qgis, QgsProject
from qgis.PyQt.QtCore import QObject, pyqtSignal

from ...algorithms.language.translation import tr
from .. import toolbox
from ..decisions.questions import may_run, may_save
from ..message_bar import tell
from .run_again import CannotRunAgain, RunAgain


class BringUpToDate(QObject):
    """One passage through the chain; ``ended`` comes once, when the last run has ended or none could begin;
    before it ``renewed``, where layers were made anew."""

    ended = pyqtSignal()
    renewed = pyqtSignal()

    def __init__(self, iface, staleness, parent=None):
        super().__init__(parent)
        self.iface, self.staleness = iface, staleness
        self._runs, self._done, self._left, self._started = [], [], [], None

    def begin(self):
        """Ask, then run in the background."""
        window = self.iface.mainWindow()
        self._plan()
        unsaved = list(dict.fromkeys(layer for again in self._runs for layer in again.unsaved))
        if unsaved and not may_save(window, unsaved):
            self.ended.emit()
            return
        if self._runs and not may_run(window, self._question(), tr("Bring up to date")):
            self.ended.emit()
            return
        self.staleness.held = True
        try:
            for again in self._runs:
                again.save_edits()
        except CannotRunAgain as error:
            self._left.append(str(error))
            self._runs = []
        self._next()

    def forget(self):
        """Stop without a word."""
        if self._started is not None:
            self._started.forget()

    def _plan(self):
        for step in self.staleness.steps:
            layers = [QgsProject.instance().mapLayer(layer.key) for layer in step.layers]
            layers = [layer for layer in layers if layer is not None]
            if not layers:
                continue
            if step.edited:
                self._left.append(
                    tr("Layer '{}' was edited by hand and is kept as it is; its step was not run.").format(
                        step.edited[0].name
                    )
                )
                continue
            try:
                self._runs.append(RunAgain(layers[0]))
            except CannotRunAgain as error:
                # What follows rests on it.
                self._left.append(str(error))
                return

    def _question(self):
        parts = [again.question() or tr("'{}' runs again.").format(again.title) for again in self._runs]
        return "\n\n".join([*parts, *self._left])

    def _next(self):
        if not self._runs:
            self._end()
            return
        again = self._runs.pop(0)
        try:
            self._started = toolbox.start(
                again.entry, again.parameters, lambda done, refusal: self._ran(again, done, refusal)
            )
        except toolbox.Refused as error:
            self._ran(again, None, error.refusal)

    def _ran(self, again, done, refusal):
        self._started = None
        if done is None:
            self._left.append(tr("'{}' could not be run: {}").format(again.title, refusal.text))
            if self._runs:
                self._left.append(tr("What follows was not run: {}.").format(", ".join(a.title for a in self._runs)))
            self._runs = []
        else:
            again.take(done)
            self._done.append(again)
        self._next()

    def _end(self):
        told = []
        if self._done:
            told.append(tr("Brought up to date: {}.").format(", ".join(again.title for again in self._done)))
        level = Qgis.MessageLevel.Warning if self._left else Qgis.MessageLevel.Success
        tell(self.iface.messageBar(), " ".join([*told, *self._left]), level, 0 if self._left else 10)
        self.staleness.held = False
        self.staleness.later()
        if self._done:
            self.renewed.emit()
        self.ended.emit()
