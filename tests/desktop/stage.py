"""What the scripts that run inside the real window share: waiting, clicking, looking around, and telling what was seen.

A script is a list of steps given to ``play``. It puts what it saw into ``SEEN``, which ends as JSON beside the window's
output; ``conftest.py`` starts the window, with this folder on Python's path, and reads that file.
"""

import faulthandler
import json
import os
import sys
import tempfile
import traceback
from pathlib import Path
from time import monotonic

import qgis.utils
from qgis.core import QgsApplication, QgsFeature, QgsProject, QgsVectorLayer
from qgis.gui import QgsGui
from qgis.PyQt.QtCore import QCoreApplication, QEvent, QEventLoop, QPointF, Qt, QTimer
from qgis.PyQt.QtGui import QMouseEvent
from qgis.PyQt.QtWidgets import QApplication, QDockWidget, QMessageBox
from qgis.utils import iface

# Seconds for one condition: so long that only what never comes reaches it, however busy the machine. It costs nothing
# where the condition comes.
LIMIT = 300
SEEN = {}
PLACE = Path(tempfile.gettempdir())
RANGE = Path(os.environ["TAUTLINE_ROOT"]) / "sample_layers" / "range"
_TOLD = Path(os.environ["TAUTLINE_SEEN"])
_STARTED = monotonic()
# Where a window that stands still was, for whoever reads the failure: shortly before it is given up.
_STACK = open(_TOLD.with_suffix(".stack"), "w")
faulthandler.dump_traceback_later(0.9 * float(os.environ["TAUTLINE_LIMIT"]), file=_STACK)


# --- waiting


def until(condition, what, beside=lambda: ""):
    """Let the window live until ``condition()`` is true; return its value. ``beside``: what a failure tells as well."""
    end = monotonic() + LIMIT
    while True:
        value = condition()
        if value:
            return value
        if monotonic() > end:
            raise AssertionError(f"not seen within {LIMIT} s: {what} {beside()}")
        QCoreApplication.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 20)


def tasks():
    """What goes on in the host's threads, for whoever reads a failure."""
    return [(task.description(), task.status(), task.progress()) for task in QgsApplication.taskManager().tasks()]


def settle():
    """Let the host destroy what was given up, which can give up more."""
    for _ in range(3):
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
        QCoreApplication.processEvents()


def until_drawn():
    """Until the map has been drawn anew."""
    canvas, drawn = iface.mapCanvas(), []

    def note(_painter):
        drawn.append(True)

    canvas.renderComplete.connect(note)
    canvas.refreshAllLayers()
    until(lambda: drawn and not canvas.isDrawing(), "the map drawn")
    canvas.renderComplete.disconnect(note)


# --- answering


class Clicker:
    """Answers, one after the other, the questions that stop the script: by the words a button begins with, or by a
    standard button. Further questions are turned down.
    """

    def __init__(self, *answers):
        self.answers, self.asked = list(answers), []
        self._timer = QTimer()
        self._timer.timeout.connect(self._look)
        self._timer.start(30)

    def _look(self):
        box = QApplication.activeModalWidget()
        if not isinstance(box, QMessageBox) or not box.isVisible():
            return
        self.asked.append(f"{box.text()} {box.informativeText()}")
        wanted = self.answers.pop(0) if self.answers else QMessageBox.StandardButton.Cancel
        if isinstance(wanted, str):
            button = next(button for button in box.buttons() if button.text().replace("&", "").startswith(wanted))
        else:
            button = box.button(wanted)
        if button is None:
            box.reject()
        else:
            button.click()

    def done(self):
        self._timer.stop()
        return {"asked": self.asked, "unanswered": [str(answer) for answer in self.answers]}


LEFT, NO_BUTTON, PLAIN = Qt.MouseButton.LeftButton, Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier


def mouse(widget, kind, at, button=NO_BUTTON, buttons=NO_BUTTON, modifiers=PLAIN):
    position = QPointF(at)
    QApplication.sendEvent(
        widget, QMouseEvent(kind, position, QPointF(widget.mapToGlobal(at)), button, buttons, modifiers)
    )
    QCoreApplication.processEvents()


def click(widget, at, modifiers=PLAIN):
    mouse(widget, QEvent.Type.MouseButtonPress, at, LEFT, LEFT, modifiers)
    mouse(widget, QEvent.Type.MouseButtonRelease, at, LEFT, NO_BUTTON, modifiers)


def trigger(name):
    """Choose an entry of the menu, by its action's name."""
    next(action for action in actions() if action.objectName() == name).trigger()
    QCoreApplication.processEvents()


# --- the guided run's panel


def panel():
    return plugin().guided


def looked():
    """Until the panel has looked at the answers as they stand."""

    def quiet():
        guided = panel()
        return (
            not guided._timer.isActive()
            and not guided.understanding.found.busy
            and guided.understanding.settings == guided.settings()
        )

    until(quiet, "the panel quiet", lambda: panel().understanding.found)


# --- what is there


def plugin():
    return qgis.utils.plugins["tautline"]


def load_plugin():
    return qgis.utils.loadPlugin("tautline") and qgis.utils.startPlugin("tautline")


def unload_plugin():
    gone = qgis.utils.unloadPlugin("tautline")
    settle()
    return gone


def modules():
    """The plugin's modules that Python still holds."""
    return sorted(name for name in sys.modules if name.split(".")[0] == "tautline")


def actions():
    return iface.mainWindow().findChildren(type(iface.actionNewProject()))


def docks(*, hidden=False):
    """The plugin's docks that one sees, or that there are, in order of their names."""
    found = iface.mainWindow().findChildren(QDockWidget)
    return sorted(
        (dock for dock in found if dock.objectName().startswith("tautline") and (hidden or dock.isVisible())),
        key=lambda dock: dock.objectName(),
    )


def dock_names(*, hidden=False):
    return [dock.objectName() for dock in docks(hidden=hidden)]


def messages():
    """Texts in the message bar that are the plugin's."""
    return [item.text() for item in iface.messageBar().items() if item.title() == "Tautline"]


def history():
    """Commands of the host's history of runs."""
    if hasattr(QgsGui, "historyProviderRegistry"):
        return [entry.entry.get("python_command", "") for entry in QgsGui.historyProviderRegistry().queryEntries()]
    from processing.core.ProcessingLog import ProcessingLog

    return [entry.text for entry in ProcessingLog.getLogEntries()]


def residuals_by_station(layer):
    return {f"{f['axis']} {f['station']}": f["residual"] or None for f in layer.getFeatures()}


def rule_labels(layer):
    return [rule.label() for rule in layer.renderer().rootRule().children()]


# --- making layers


def added_layer(name, kind, fields, rows, record=None):
    """A memory layer in the project. ``kind``: with its CRS, as 'Point?crs=EPSG:32734'; ``fields``: as 'height:double';
    ``rows``: (attributes, geometry or None); ``record``: of the run that is to have made it.
    """
    layer = QgsVectorLayer("&".join([kind, *(f"field={field}" for field in fields)]), name, "memory")
    features = []
    for attributes, geometry in rows:
        feature = QgsFeature(layer.fields())
        feature.setAttributes(list(attributes))
        if geometry is not None:
            feature.setGeometry(geometry)
        features.append(feature)
    assert layer.dataProvider().addFeatures(features)[0]
    layer.updateExtents()
    if record is not None:
        # Before the project has it: who looks at new layers reads it once.
        layer.setCustomProperty("tautline/record", json.dumps(record))
    QgsProject.instance().addMapLayer(layer)
    return layer


# --- the play


def widen():
    """A window as large as the screen."""
    iface.mainWindow().setGeometry(QApplication.primaryScreen().availableGeometry())
    until(lambda: iface.mainWindow().width() > 1500, "a wide window")


def picture(name, widget=None):
    """What a widget shows (the window, unless told), as ``name``.png beside the window's output."""
    (widget or iface.mainWindow()).grab().save(str(_TOLD.with_name(f"{name}.png")))


def _end():
    _TOLD.write_text(json.dumps(SEEN, default=str))
    # Leaving the host's own shutdown out: what is tested ends here.
    os._exit(0)


def _failed(kind, error, trace):
    """In place of the host's window with the traceback, which would stand still for ever."""
    SEEN["error"] = "".join(traceback.format_exception(kind, error, trace))
    _TOLD.write_text(json.dumps(SEEN, default=str))
    try:
        picture("failed")
    finally:
        _end()


def play(*steps):
    """Take the steps as soon as the window lives, tell what was seen, and end it. An error in a slot ends it too."""

    def main():
        sys.excepthook = _failed
        try:
            for step in steps:
                step()
                SEEN.setdefault("steps", {})[step.__name__] = round(monotonic() - _STARTED, 1)
        except BaseException:
            _failed(*sys.exc_info())
        _end()

    QTimer.singleShot(0, main)
