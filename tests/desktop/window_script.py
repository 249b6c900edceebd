"""Runs inside the real window: uses the plugin as a person does and writes down what it saw. See ``conftest.py``."""

import base64
import os
import shutil
from collections import Counter
from pathlib import Path
from time import monotonic

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
from qgis.gui import QgsProcessingAlgorithmDialogBase
from qgis.PyQt.QtCore import QCoreApplication
from qgis.PyQt.QtWidgets import QApplication, QMessageBox, QPushButton, QTextBrowser
from qgis.utils import iface
from stage import (
    PLACE,
    SEEN,
    Clicker,
    actions,
    dock_names,
    docks,
    history,
    load_plugin,
    messages,
    modules,
    picture,
    play,
    residuals_by_station,
    rule_labels,
    settle,
    trigger,
    unload_plugin,
    until,
    until_drawn,
    widen,
)

# The German translation of 'Open the example', as the translation tools compile it.
GERMAN = (
    "PLhkGMrvnJXNIRy/YKG93acAAAACZGVCAAAACAyZyIUAAAAAaQAAAFMDAAAAJgBEAGEAcwAgAEIAZQBpAHMAcABpAG"
    "UAbAAgAPYAZgBmAG4AZQBuCAAAAAAGAAAAEE9wZW4gdGhlIGV4YW1wbGUHAAAACFRhdXRsaW5lAYgAAAACAQE="
)


# --- what is there


def menu():
    """The submenu 'Tautline' of the menu of plugins, None without one."""
    menus = (a.menu() for a in iface.pluginMenu().actions() if a.menu() and a.text().replace("&", "") == "Tautline")
    return next(menus, None)


def menu_texts():
    return [action.text() for action in menu().actions()] if menu() else []


def leftovers():
    """What of the plugin the window still holds."""
    provider = QgsApplication.processingRegistry().providerById("tautline")
    translated = QCoreApplication.translate("Tautline", "Open the example")
    return {
        "provider": provider is not None,
        "menu": menu_texts(),
        "messages": messages(),
        "text": translated,
        "actions": [a.objectName() for a in actions() if a.objectName().startswith("tautline")],
        "forms": [form.windowTitle() for form in forms()],
        "docks": dock_names(hidden=True),
        "modules": modules(),
    }


def forms():
    """The toolbox's forms that are open."""
    windows = QApplication.topLevelWidgets()
    return [w for w in windows if isinstance(w, QgsProcessingAlgorithmDialogBase) and w.isVisible()]


def entries():
    provider = QgsApplication.processingRegistry().providerById("tautline")
    return sorted(a.id() for a in provider.algorithms()) if provider else []


def statuses(layer):
    return dict(Counter(feature["status"] for feature in layer.getFeatures()))


def layer_story(layer):
    return {
        "name": layer.name(),
        "valid": layer.isValid(),
        "source": layer.source(),
        "crs": layer.crs().authid(),
        "count": layer.featureCount() if isinstance(layer, QgsVectorLayer) else -1,
    }


def guide_text():
    return next(
        (d.findChild(QTextBrowser).toPlainText() for d in docks() if d.objectName() == "tautline_example_guide"), ""
    )


def hub(axis):
    """Latitude and longitude where the runs begin."""
    crs = QgsCoordinateReferenceSystem("EPSG:4326")
    to = QgsCoordinateTransform(axis.crs(), crs, QgsProject.instance())
    feature = next(f for f in axis.getFeatures() if f["name"] == "Alder")
    point = to.transform(QgsPointXY(feature.geometry().vertexAt(0)))
    return [point.y(), point.x()]


def examples():
    return sorted(str(path.relative_to(PLACE)) for path in PLACE.glob("**/tautline_example*") if path.is_dir())


# --- the steps


def prefer_no_crs():
    """A user whose new projects do not take the CRS of their first layer."""
    QgsSettings().setValue("app/projections/newProjectCrsBehavior", "UsePresetCrs")


def load():
    SEEN["before"] = leftovers()
    SEEN["loaded"] = load_plugin()
    SEEN["menu"], SEEN["entries"] = menu_texts(), entries()
    SEEN["menu_has_icon"] = not menu().icon().isNull()


def give_up():
    """A changed project, and second thoughts: at the first question, then at the host's own."""
    QgsProject.instance().setTitle("of the user")
    QgsProject.instance().setDirty(True)
    cancel = QMessageBox.StandardButton.Cancel
    for name, answers in (("gave_up_at_place", (cancel,)), ("gave_up_at_save", ("Temporary folder", cancel))):
        clicker = Clicker(*answers)
        trigger("tautline_open_example")
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
        trigger("tautline_open_example")
    finally:
        example.ask_place = ask
    settle()
    SEEN["failed"] = {"messages": messages(), "title": QgsProject.instance().title()}


def open_example():
    started, clicker = monotonic(), Clicker("Temporary folder", QMessageBox.StandardButton.Discard)
    trigger("tautline_open_example")
    SEEN["opened"] = {**clicker.done(), "seconds": monotonic() - started}
    project = QgsProject.instance()
    assert project.layerTreeRoot().children(), messages()
    group = project.layerTreeRoot().children()[0]
    nodes = [node for node in group.children() if isinstance(node, QgsLayerTreeLayer)]
    named = {node.layer().name(): node.layer() for node in nodes}
    residuals, axis = named["Residuals"], named["Axis"]
    until_drawn()
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
        "rules": rule_labels(residuals),
        "statuses": statuses(residuals),
        "residuals": residuals_by_station(residuals),
        "record": bool(residuals.customProperty("tautline/record")),
        "plane": [
            {name: f[name] for name in ("kind", "tan_lat", "tan_lon")} for f in named["Fitted plane"].getFeatures()
        ],
        "ellipses": sorted(f["kind"] for f in named["Tangent and level points, 95 % ellipses"].getFeatures()),
        "hub": hub(axis),
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
    picture("example")


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
    read = project.read(str(moved / "range.qgz"))
    found = project.mapLayers().values()
    SEEN["reopened"] = {
        "read": read,
        "layers": [layer_story(layer) for layer in found],
        "inside": all(str(moved) in layer.source() for layer in found),
        "files": sorted(os.listdir(moved)),
    }
    residuals = next(layer for layer in found if layer.name() == "Residuals")
    SEEN["reopened"]["rules"] = rule_labels(residuals)


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
    SEEN["run"] = {"residuals": residuals_by_station(result), "rules": rule_labels(result)}


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
    trigger("tautline_design_heights")
    SEEN["forms_open"] = until(lambda: len(forms()) == 2 and len(forms()), "both forms")
    rounds = []
    for _ in range(2):
        unloaded = unload_plugin()
        gone = leftovers()
        loaded = load_plugin()
        rounds.append(
            {"unloaded": unloaded, "gone": gone, "loaded": loaded, "menu": menu_texts(), "entries": entries()}
        )
    SEEN["rounds"] = rounds
    unload_plugin()


def translate():
    """The plugin in another language, and no word of it after it is gone."""
    import tautline.plugin.main as main

    folder = PLACE / "i18n"
    folder.mkdir()
    (folder / "tautline_de.qm").write_bytes(base64.b64decode(GERMAN))
    main.TRANSLATIONS = folder
    QgsApplication.setTranslation("de_DE")
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


play(
    widen,
    prefer_no_crs,
    load,
    give_up,
    fail,
    open_example,
    reopen,
    run_form,
    unload_and_reload,
    translate,
    without_window,
)
