"""Runs inside the real window: a height is corrected, what is older is named and brought up to date; a hand edit."""

import shutil

from qgis.core import QgsGeometry, QgsPointXY, QgsProject, QgsVectorLayer
from qgis.utils import iface
from stage import (
    PLACE,
    RANGE,
    SEEN,
    Clicker,
    load_plugin,
    looked,
    messages,
    panel,
    picture,
    play,
    plugin,
    settle,
    trigger,
    until,
    widen,
)


def staleness():
    return plugin().review.staleness


def compared():
    settle()
    until(lambda: not staleness().busy, "layers compared with their inputs")
    settle()
    return staleness().line


def layer(name):
    return QgsProject.instance().mapLayersByName(name)[0]


def run():
    panel().run_button.click()
    until(lambda: panel().run is not None or panel().outcome.told() or panel().trouble.told(), "the run begun")
    until(lambda: panel().run is None, "the run's end")
    settle()


def value(name, station, field):
    (found,) = [f[field] for f in layer(name).getFeatures() if f["axis"] == "Alder" and f["station"] == station]
    return found


def change(name, station, field, new):
    """Type a value as a person does: open the edits, change the cell, save."""
    edited = layer(name)
    (feature,) = [f for f in edited.getFeatures() if f["axis"] == "Alder" and f["station"] == station]
    assert edited.startEditing()
    assert edited.changeAttributeValue(feature.id(), edited.fields().indexOf(field), new)
    assert edited.commitChanges()


def guided_run():
    assert load_plugin()
    widen()
    for original in RANGE.iterdir():
        if original.is_file():
            shutil.copyfile(original, PLACE / original.name)
    QgsProject.instance().addMapLayer(QgsVectorLayer(f"{PLACE / 'axis.gpkg'}|layername=axis", "axis", "ogr"))
    trigger("tautline_guided_run")
    looked()
    panel().heights.take_file(str(PLACE / "heights.csv"))
    looked()
    for box in panel().accuracy.more.values():
        box.click()
    panel().accuracy.edits["sigma"].setText("0.003")
    panel().accuracy.place.setFilePath(str(PLACE / "results.gpkg"))
    looked()
    run()
    trigger("tautline_flagged_open")
    SEEN["fresh"] = compared()
    SEEN["names"] = sorted(one.name() for one in QgsProject.instance().mapLayers().values())
    SEEN["before"] = [value("Residuals", "0+850", "residual"), value("Tested stations", "0+850", "w")]


def correct_and_see():
    change("Placed stations", "0+850", "height", value("Placed stations", "0+800", "height"))
    SEEN["line"] = compared()
    docks = [panel(), *plugin().review.docks.values()]
    SEEN["shown"] = {dock.objectName(): line_of(dock).isVisible() for dock in docks}
    SEEN["marked"] = marked("older")
    picture("stale_line")


def marked(word):
    """Names of the layers in the tree with a mark whose tip has the word."""
    view, root = iface.layerTreeView(), QgsProject.instance().layerTreeRoot()
    return sorted(
        node.name() for node in root.findLayers() if any(word in mark.toolTip() for mark in view.indicators(node))
    )


def line_of(dock):
    from qgis.PyQt.QtWidgets import QWidget

    return dock.findChild(QWidget, "tautline_stale")


def renewed(*answers):
    """Press 'Bring up to date'; what was asked and told."""
    iface.messageBar().clearWidgets()
    clicker = Clicker(*answers)
    line_of(panel()).button.click()
    told = until(messages, "the message at the end")
    return {**clicker.done(), "told": told}


def bring_up_to_date():
    ids = sorted(QgsProject.instance().mapLayers())
    SEEN["renewed"] = renewed("Bring up to date")
    SEEN["after_line"] = compared()
    SEEN["same_layers"] = ids == sorted(QgsProject.instance().mapLayers())
    SEEN["after"] = [value("Residuals", "0+850", "residual"), value("Tested stations", "0+850", "w")]
    SEEN["flag"] = value("Tested stations", "0+850", "flag")
    subject = plugin().review.subject
    row = subject.row_named("Alder", "0+850")
    SEEN["dock"] = float(subject.stations.heights["residual"][row]) if row >= 0 else None
    SEEN["panel"] = [text for _, text in panel().outcome.told()]
    picture("brought_up_to_date")


def run_asked(*answers):
    """Press Run, which asks before it begins; what was asked."""
    clicker = Clicker(*answers)
    panel().run_button.click()
    until(lambda: panel().run is None, "the run's end")
    settle()
    return clicker.done()


def guided_run_again():
    iface.messageBar().clearWidgets()
    looked()
    height = value("Placed stations", "0+850", "height")
    SEEN["asked"], SEEN["kept"] = [], []
    for answer in ("Cancel", "Keep my edits"):
        before = panel().outcome.told()
        SEEN["asked"].append(run_asked(answer))
        if answer == "Cancel":
            SEEN["cancelled"] = before != [] and panel().outcome.told() == before and panel().trouble.told()
        SEEN["kept"].append(value("Placed stations", "0+850", "height") == height)
    SEEN["asked"].append(run_asked("Place again"))
    SEEN["anew"] = value("Placed stations", "0+850", "height") != height
    SEEN["unasked"] = run_asked()["asked"]
    SEEN["end_line"] = compared()


def moved_by_hand():
    edited = layer("Residuals")
    (feature,) = [f for f in edited.getFeatures() if f["axis"] == "Alder" and f["station"] == "0+100"]
    before = QgsGeometry(feature.geometry())
    place = before.asPoint()
    for key, geometry in (
        ("moved", QgsGeometry.fromPointXY(QgsPointXY(place.x() + 0.5, place.y()))),
        ("moved_back", before),
    ):
        assert edited.startEditing() and edited.changeGeometry(feature.id(), geometry) and edited.commitChanges()
        line = compared()
        SEEN[key] = {"line": line, "short": line_of(panel()).text.text()}
        SEEN[key]["button"] = line_of(panel()).button.isVisible()
        SEEN[key]["marked"] = marked("moved or added")


def kept_and_gone():
    change("Placed stations", "0+900", "height", value("Placed stations", "0+850", "height"))
    change("Residuals", "0+100", "residual", 0.5)
    compared()
    SEEN["skipped"] = renewed("Bring up to date")
    SEEN["edit_kept"] = value("Residuals", "0+100", "residual")
    change("Placed stations", "0+950", "height", value("Placed stations", "0+900", "height"))
    compared()
    axis = layer("axis")
    QgsProject.instance().removeMapLayer(axis.id())
    (PLACE / "axis.gpkg").unlink()
    compared()
    SEEN["gone"] = renewed("Bring up to date")


play(guided_run, correct_and_see, bring_up_to_date, guided_run_again, moved_by_hand, kept_and_gone)
