"""Runs inside the real window: uses the plugin as a person does and writes down what it saw. See ``conftest.py``."""

import base64
import faulthandler
import json
import os
import shutil
import sys
import tempfile
import traceback
from collections import Counter
from pathlib import Path
from time import monotonic

import qgis.utils
from qgis.core import (
    QgsApplication,
    QgsCoordinateReferenceSystem,
    QgsCoordinateTransform,
    QgsLayerTreeLayer,
    QgsPointXY,
    QgsProject,
    QgsSettings,
    QgsVectorLayer,
)
from qgis.gui import QgsGui, QgsMessageBarItem, QgsProcessingAlgorithmDialogBase
from qgis.PyQt.QtCore import QCoreApplication, QEvent, QEventLoop, QTimer
from qgis.PyQt.QtWidgets import QApplication, QDockWidget, QMessageBox, QPushButton, QTextBrowser
from qgis.utils import iface

LIMIT = 20
SEEN = {}
# Where a window that stands still was, for whoever reads the failure.
STACK = open(Path(os.environ["TAUTLINE_SEEN"]).with_suffix(".stack"), "w")
faulthandler.dump_traceback_later(60, file=STACK)
PLACE = Path(tempfile.gettempdir())
# The German translation of 'Open the example', as the translation tools compile it.
GERMAN = (
    "PLhkGMrvnJXNIRy/YKG93acAAAACZGVCAAAACAyZyIUAAAAAaQAAAFMDAAAAJgBEAGEAcwAgAEIAZQBpAHMAcABpAG"
    "UAbAAgAPYAZgBmAG4AZQBuCAAAAAAGAAAAEE9wZW4gdGhlIGV4YW1wbGUHAAAACFRhdXRsaW5lAYgAAAACAQE="
)


# --- waiting and clicking


def until(condition, what):
    """Let the window live until ``condition()`` is true; return its value."""
    end = monotonic() + LIMIT
    while True:
        value = condition()
        if value:
            return value
        if monotonic() > end:
            raise AssertionError(f"not seen within {LIMIT} s: {what}")
        QCoreApplication.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 20)


def settle():
    """Let the host destroy what was given up, and draw the map."""
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    QCoreApplication.processEvents()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


class Clicker:
    """Answers, one after the other, the questions that stop the script: (words in it, button to click)."""

    def __init__(self, *answers):
        self.answers, self.asked = list(answers), []
        self.timer = QTimer()
        self.timer.timeout.connect(self.look)
        self.timer.start(30)

    def look(self):
        box = QApplication.activeModalWidget()
        if not isinstance(box, QMessageBox) or not box.isVisible():
            return
        self.asked.append(box.text())
        wanted = self.answers.pop(0) if self.answers else QMessageBox.StandardButton.Cancel
        if isinstance(wanted, str):
            button = next(button for button in box.buttons() if button.text().replace("&", "").startswith(wanted))
        else:
            button = box.button(wanted)
        button.click()

    def done(self):
        self.timer.stop()
        return {"asked": self.asked, "unanswered": [str(answer) for answer in self.answers]}


# --- what is there


def menu():
    """The submenu 'Tautline' of the menu of plugins, None without one."""
    menus = (a.menu() for a in iface.pluginMenu().actions() if a.menu() and a.text().replace("&", "") == "Tautline")
    return next(menus, None)


def menu_texts():
    return [action.text() for action in menu().actions()] if menu() else []


def action(name):
    return next(a for a in menu().actions() if a.objectName() == name)


def leftovers():
    """What of the plugin the window still holds."""
    provider = QgsApplication.processingRegistry().providerById("tautline")
    actions = [a.objectName() for a in iface.mainWindow().findChildren(type(iface.actionNewProject()))]
    translated = QCoreApplication.translate("Tautline", "Open the example")
    return {
        "provider": provider is not None,
        "menu": menu_texts(),
        "messages": messages(),
        "text": translated,
        "actions": [name for name in actions if name.startswith("tautline")],
        "forms": [form.windowTitle() for form in forms()],
        "docks": [
            d.objectName()
            for d in iface.mainWindow().findChildren(QDockWidget)
            if d.objectName().startswith("tautline")
        ],
        "modules": sorted(name for name in sys.modules if name.split(".")[0] == "tautline"),
    }


def forms():
    """The toolbox's forms that are open."""
    windows = QApplication.topLevelWidgets()
    return [w for w in windows if isinstance(w, QgsProcessingAlgorithmDialogBase) and w.isVisible()]


def messages():
    """Texts in the message bar that are the plugin's."""
    bar = iface.messageBar()
    return [item.text() for item in bar.findChildren(QgsMessageBarItem) if item.title() == "Tautline"]


def entries():
    provider = QgsApplication.processingRegistry().providerById("tautline")
    return sorted(a.id() for a in provider.algorithms()) if provider else []


def history():
    """Commands of the host's history of runs."""
    if hasattr(QgsGui, "historyProviderRegistry"):
        return [entry.entry.get("python_command", "") for entry in QgsGui.historyProviderRegistry().queryEntries()]
    from processing.core.ProcessingLog import ProcessingLog

    return [entry.text for entry in ProcessingLog.getLogEntries()]


def statuses(layer):
    return dict(Counter(feature["status"] for feature in layer.getFeatures()))


def residuals_by_station(layer):
    return {f"{f['axis']} {f['station']}": f["residual"] or None for f in layer.getFeatures()}


def layer_story(layer):
    return {
        "name": layer.name(),
        "valid": layer.isValid(),
        "source": layer.source(),
        "crs": layer.crs().authid(),
        "count": layer.featureCount() if isinstance(layer, QgsVectorLayer) else -1,
    }


def docks():
    """The plugin's docks that one sees."""
    found = iface.mainWindow().findChildren(QDockWidget)
    return sorted(
        (d for d in found if d.objectName().startswith("tautline") and d.isVisible()), key=lambda d: d.objectName()
    )


def guide_text():
    return next(
        (d.findChild(QTextBrowser).toPlainText() for d in docks() if d.objectName() == "tautline_example_guide"), ""
    )


def corner(axis):
    """Latitude and longitude where the arms begin."""
    crs = QgsCoordinateReferenceSystem("EPSG:4326")
    to = QgsCoordinateTransform(axis.crs(), crs, QgsProject.instance())
    feature = next(f for f in axis.getFeatures() if f["name"] == "north arm")
    point = to.transform(QgsPointXY(feature.geometry().vertexAt(0)))
    return [point.y(), point.x()]


def examples():
    return sorted(str(path.relative_to(PLACE)) for path in PLACE.glob("**/tautline_example*") if path.is_dir())


# --- the steps


def widen():
    """A window as large as the screen; and a user whose new projects do not take the CRS of their first layer."""
    QgsSettings().setValue("app/projections/newProjectCrsBehavior", "UsePresetCrs")
    iface.mainWindow().setGeometry(QApplication.primaryScreen().availableGeometry())
    until(lambda: iface.mainWindow().width() > 1500, "a wide window")


def load():
    SEEN["before"] = leftovers()
    SEEN["loaded"] = qgis.utils.loadPlugin("tautline") and qgis.utils.startPlugin("tautline")
    SEEN["menu"], SEEN["entries"] = menu_texts(), entries()
    SEEN["menu_has_icon"] = not menu().icon().isNull()


def give_up():
    """A changed project, and second thoughts: at the first question, then at the host's own."""
    QgsProject.instance().setTitle("of the user")
    QgsProject.instance().setDirty(True)
    cancel = QMessageBox.StandardButton.Cancel
    for name, answers in (("gave_up_at_place", (cancel,)), ("gave_up_at_save", ("Temporary folder", cancel))):
        clicker = Clicker(*answers)
        action("tautline_open_example").trigger()
        SEEN[name] = {
            **clicker.done(),
            "title": QgsProject.instance().title(),
            "dirty": QgsProject.instance().isDirty(),
            "examples": examples(),
        }


def fail():
    """A place that cannot take the example, as the place chosen."""
    from tautline.plugin import example

    ask, taken = example.ask_place, PLACE / "a file"
    taken.write_text("no folder")
    example.ask_place = lambda window: str(taken)
    try:
        action("tautline_open_example").trigger()
    finally:
        example.ask_place = ask
    settle()
    SEEN["failed"] = {"messages": messages(), "title": QgsProject.instance().title()}


def open_example():
    started, clicker = monotonic(), Clicker("Temporary folder", QMessageBox.StandardButton.Discard)
    action("tautline_open_example").trigger()
    SEEN["opened"] = {**clicker.done(), "seconds": monotonic() - started}
    project = QgsProject.instance()
    assert project.layerTreeRoot().children(), messages()
    group = project.layerTreeRoot().children()[0]
    nodes = [node for node in group.children() if isinstance(node, QgsLayerTreeLayer)]
    named = {node.layer().name(): node.layer() for node in nodes}
    residuals, axis = named["Residuals"], named["Axis"]
    QCoreApplication.processEvents()
    drawn = []
    iface.mapCanvas().renderComplete.connect(lambda _painter: drawn.append(True))
    iface.mapCanvas().refreshAllLayers()
    until(lambda: drawn and not iface.mapCanvas().isDrawing(), "the map drawn")
    settle()
    SEEN["example"] = {
        "top": len(project.layerTreeRoot().children()),
        "group": group.name(),
        "messages": messages(),
        "layers": [layer_story(node.layer()) for node in nodes],
        "shown": [node.isVisible() for node in nodes],
        "crs": project.crs().authid(),
        "units": project.crs().mapUnits() == iface.mapCanvas().mapUnits(),
        "ellipsoid": project.ellipsoid(),
        "rules": [rule.label() for rule in residuals.renderer().rootRule().children()],
        "statuses": statuses(residuals),
        "residuals": residuals_by_station(residuals),
        "record": bool(residuals.customProperty("tautline/record")),
        "plane": [
            {name: f[name] for name in ("kind", "tan_lat", "tan_lon")} for f in named["Fitted plane"].getFeatures()
        ],
        "ellipses": sorted(f["kind"] for f in named["Tangent point, 95 % ellipses"].getFeatures()),
        "corner": corner(axis),
        "curvature": {f"{f['axis']} {f['station']}": f["curv_eff"] for f in residuals.getFeatures()},
        "docks": [dock.windowTitle() for dock in docks()],
        "guide": guide_text(),
        "read_me": (Path(project.fileName()).parent / "read_me_first.html").read_text(encoding="utf-8"),
        "axis_labelled": axis.labelsEnabled(),
        "axis_strokes": axis.renderer().symbol().symbolLayerCount(),
        "all_in_view": iface.mapCanvas().extent().contains(axis.extent()),
        "fills_view": iface.mapCanvas().extent().height() < 1.6 * axis.extent().height(),
        "dirty": project.isDirty(),
        "file": Path(project.fileName()).name,
        "history": history(),
        "active": iface.activeLayer().name(),
    }
    SEEN["map"] = colours()
    iface.mainWindow().grab().save(str(Path(os.environ["TAUTLINE_SEEN"]).with_suffix(".png")))


def colours():
    """What is drawn: number of colours, and pixels in the colours of a high and a low station."""
    image = iface.mapCanvas().grab().toImage()
    pixels = Counter(image.pixelColor(x, y).name() for x in range(image.width()) for y in range(image.height()))
    return {
        "colours": len(pixels),
        "high": pixels["#ff8a1f"],
        "low": pixels["#2f8fff"],
        "white": pixels["#ffffff"],
        "pixels": image.width() * image.height(),
    }


def reopen():
    """The saved project, moved elsewhere, in a project of its own."""
    folder = Path(QgsProject.instance().fileName()).parent
    moved = PLACE / "moved"
    shutil.copytree(folder, moved)
    project = QgsProject()
    read = project.read(str(moved / "gallery.qgz"))
    found = project.mapLayers().values()
    SEEN["reopened"] = {
        "read": read,
        "layers": [layer_story(layer) for layer in found],
        "inside": all(str(moved) in layer.source() for layer in found),
        "files": sorted(os.listdir(moved)),
    }
    residuals = next(layer for layer in found if layer.name() == "Residuals")
    SEEN["reopened"]["rules"] = [rule.label() for rule in residuals.renderer().rootRule().children()]


def run_form():
    """The form from the message's button, and a run from it."""
    button = next(b for b in iface.messageBar().findChildren(QPushButton) if b.text() == "Open its form…")
    button.click()
    form = until(forms, "the form")[0]
    SEEN["form"] = {"visible": visible_parameters(form), "unexplained": unexplained(form.algorithm())}
    before = set(QgsProject.instance().mapLayers())
    form.runButton().click()
    new = until(
        lambda: (
            set(QgsProject.instance().mapLayers()) - before
            if len(set(QgsProject.instance().mapLayers()) - before) == 2
            else None
        ),
        "the run's two layers",
    )
    result = next(layer for layer in map(QgsProject.instance().mapLayer, new) if layer.isSpatial())
    until(lambda: result.name() == "Residuals", "the run's layer dressed")
    SEEN["run"] = {
        "residuals": residuals_by_station(result),
        "rules": [r.label() for r in result.renderer().rootRule().children()],
    }


def visible_parameters(form):
    """Names of the parameters whose widgets one sees without opening the advanced ones."""
    found = []
    for name, wrapper in form.mainWidget().wrappers.items():
        widget = wrapper.wrappedWidget() if hasattr(wrapper, "wrappedWidget") else wrapper.widget
        if widget.isVisible():
            found.append(name)
    return found


def unexplained(algorithm):
    return [d.name() for d in algorithm.parameterDefinitions() if not d.help() and not d.isDestination()]


def unload_and_reload():
    action("tautline_design_heights").trigger()
    SEEN["forms_open"] = len(leftovers()["forms"])
    rounds = []
    for _ in range(2):
        unloaded = qgis.utils.unloadPlugin("tautline")
        settle()
        gone = leftovers()
        loaded = qgis.utils.loadPlugin("tautline") and qgis.utils.startPlugin("tautline")
        rounds.append(
            {"unloaded": unloaded, "gone": gone, "loaded": loaded, "menu": menu_texts(), "entries": entries()}
        )
    SEEN["rounds"] = rounds
    qgis.utils.unloadPlugin("tautline")
    settle()


def translate():
    """The plugin in another language, and no word of it after it is gone."""
    import tautline.plugin.main as main

    folder = PLACE / "i18n"
    folder.mkdir()
    (folder / "tautline_de.qm").write_bytes(base64.b64decode(GERMAN))
    main.TRANSLATIONS = folder
    QgsSettings().setValue("locale/overrideFlag", True)
    QgsSettings().setValue("locale/userLocale", "de_DE")
    plugin = main.TautlinePlugin(iface)
    plugin.initGui()
    SEEN["translated"] = menu_texts()
    plugin.unload()
    settle()
    SEEN["after_translation"] = leftovers()


def without_window():
    """As the command line loads it."""
    from tautline import classFactory

    plugin = classFactory(None)
    plugin.initProcessing()
    plugin.initGui()
    SEEN["without_window"] = {"entries": entries(), "menu": menu_texts()}
    plugin.unload()
    SEEN["without_window_after"] = entries()


def failed(kind, error, trace):
    """In place of the host's window with the traceback, which would stand still for ever."""
    SEEN["error"] = "".join(traceback.format_exception(kind, error, trace))
    end()


def end():
    Path(os.environ["TAUTLINE_SEEN"]).write_text(json.dumps(SEEN, default=str))
    # Leaving the host's own shutdown out: what is tested ends here.
    os._exit(0)


def main():
    sys.excepthook = failed
    try:
        for step in STEPS:
            step()
            SEEN.setdefault("steps", {})[step.__name__] = round(monotonic() - STARTED, 1)
    except BaseException:
        SEEN["error"] = traceback.format_exc()
        iface.mainWindow().grab().save(str(Path(os.environ["TAUTLINE_SEEN"]).with_suffix(".png")))
    end()


STEPS = (widen, load, give_up, fail, open_example, reopen, run_form, unload_and_reload, translate, without_window)
STARTED = monotonic()
QTimer.singleShot(0, main)
