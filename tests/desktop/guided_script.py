"""Runs inside the real window: goes through the guided run as a person does and writes down what it saw."""

import json
import shutil
import tempfile

from qgis.core import QgsApplication, QgsGeometry, QgsPoint, QgsPointXY, QgsProject, QgsProviderRegistry, QgsVectorLayer
from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtTest import QTest
from qgis.PyQt.QtWidgets import QApplication
from qgis.utils import iface
from stage import (
    PLACE,
    RANGE,
    SEEN,
    Clicker,
    added_layer,
    dock_names,
    history,
    load_plugin,
    looked,
    messages,
    modules,
    panel,
    picture,
    play,
    plugin,
    residuals_by_station,
    rule_labels,
    settle,
    trigger,
    unload_plugin,
    until,
    widen,
)


def told():
    """What the panel says when it has looked at the answers as they stand."""
    looked()
    return said()


def said():
    """All sentences of the panel, as one sees them."""
    guided = panel()
    return {
        "structure": guided.structure.notes.told(),
        "heights": guided.heights.notes.told(),
        "design": guided.design.notes.told(),
        "outcome": guided.outcome.told() + guided.trouble.told(),
        "why": guided.why_closed.text(),
        "tip": guided.run_button.toolTip(),
        "beside": {key: answer.problem.told()[0][1] for key, answer in guided.answers.items() if answer.problem.told()},
        "can_run": guided.run_button.isEnabled() and guided.run_button.isVisible(),
    }


def run():
    """Press the button and wait for the end."""
    panel().run_button.click()
    until(lambda: panel().run is not None or said()["outcome"], "the run begun")
    during = {"cancel": panel().cancel_button.isVisible(), "answers": panel().scroll.isEnabled()}
    until(lambda: panel().run is None, "the run's end")
    settle()
    return {**said(), "during": during}


def groups():
    """{group: [[layer, shown, table or source]]} of the layer tree."""
    found = {}
    for group in QgsProject.instance().layerTreeRoot().findGroups():
        found[group.name()] = [
            [node.name(), node.itemVisibilityChecked(), table(node.layer())] for node in group.findLayers()
        ]
    return found


def table(layer):
    parts = QgsProviderRegistry.instance().decodeUri(layer.providerType(), layer.source())
    return parts.get("layerName") or layer.providerType()


def layer(name):
    return QgsProject.instance().mapLayersByName(name)[0]


def type_into(edit, text):
    edit.setFocus()
    edit.clear()
    QTest.keyClicks(edit, text)


def panel_picture(name):
    settle()
    picture(name, panel())


# --- the steps


def load():
    assert load_plugin()
    for original in RANGE.iterdir():
        if original.is_file():
            shutil.copyfile(original, PLACE / original.name)
    QgsProject.instance().addMapLayer(QgsVectorLayer(f"{PLACE / 'axis.gpkg'}|layername=axis", "axis", "ogr"))
    trigger("tautline_guided_run")
    SEEN["empty"] = told()
    SEEN["dock"] = panel().isVisible() and panel().windowTitle()


def list_of_the_range():
    guided = panel()
    guided.heights.take_file(str(PLACE / "heights.csv"))
    SEEN["list"] = told()
    SEEN["list_settings"] = vars(guided.settings())
    edits = {**guided.design.edits, "tolerance": guided.accuracy.edits["tolerance"]}
    SEEN["list_placeholders"] = {key: edit.placeholderText() for key, edit in edits.items()}
    SEEN["tabs"] = tab_order()
    for box in guided.accuracy.more.values():
        box.click()
    type_into(guided.accuracy.edits["sigma"], "0,003")
    guided.accuracy.place.setFilePath(str(PLACE / "results.gpkg"))
    looked()
    SEEN["plane_asked"] = {
        "hint": guided.accuracy.plane_hint.isVisible() and guided.accuracy.plane_hint.text(),
        "box": guided.accuracy.one_plane.isVisible() and guided.accuracy.one_plane.isChecked(),
    }
    SEEN["list_run"] = run()
    SEEN["list_scrolled"] = guided.scroll.verticalScrollBar().value()
    SEEN["least_height"] = guided.minimumSizeHint().height()
    SEEN["list_fits"] = sorted([row["kind"], row["name"]] for row in layer("Reference").getFeatures())
    SEEN["list_groups"], SEEN["list_history"] = groups(), history()
    SEEN["list_residuals"] = residuals_by_station(layer("Residuals"))
    SEEN["list_style"] = rule_labels(layer("Residuals"))
    SEEN["list_record"] = json.loads(layer("Residuals").customProperty("tautline/record"))["entry"]
    SEEN["in_view"] = all(
        iface.mapCanvas().extent().contains(node.layer().extent())
        for node in QgsProject.instance().layerTreeRoot().findLayers()
        if table(node.layer()) in ("residuals", "bars", "strip")
    )
    SEEN["profile"] = "tautline_profile" in dock_names()
    panel_picture("guided_list")


def one_plane_when_said():
    """The axes meet: the same run with one plane for both, then back; and what stands in the box of references."""
    guided = panel()
    box = guided.design.reference
    SEEN["references"] = {"there": [box.itemText(k) for k in range(box.count())], "chosen": box.currentText()}
    guided.accuracy.one_plane.click()
    SEEN["older"] = [guided.older.isVisible(), told() and guided.older.isVisible()]
    SEEN["plane_run"] = run()
    SEEN["plane_fits"] = [[row["kind"], row["axes"]] for row in layer("Reference").getFeatures()]
    SEEN["references_after"] = {"there": [box.itemText(k) for k in range(box.count())], "chosen": box.currentText()}
    guided.accuracy.one_plane.click()
    looked()


def tab_order():
    """What the tab key reaches from the first answer on, by class and text, until it comes round."""
    guided = panel()
    found, now = [], guided.structure.by_layer
    while True:
        now = now.nextInFocusChain()
        if now is guided.structure.by_layer:
            break
        if (
            guided.isAncestorOf(now)
            and now.isVisible()
            and now.isEnabled()
            and now.focusPolicy() & Qt.FocusPolicy.TabFocus
        ):
            found.append(now)
    reached = set(found) | {w.parentWidget() for w in found}
    wanted = [
        *guided.heights.columns.values(),
        guided.heights.box,
        guided.heights.open_button,
        guided.heights.height_unit,
        guided.heights.chainage_unit,
        guided.heights.system,
        *guided.accuracy.edits.values(),
        guided.run_button,
        guided.accuracy.more["fit"],
        guided.accuracy.place.lineEdit(),
        guided.structure.box,
    ]
    missed = [
        w.accessibleName() or w.objectName() or type(w).__name__
        for w in wanted
        if w.isVisible() and w.isEnabled() and w not in reached
    ]
    return {"reached": len(found), "missed": missed}


def again_and_reopened():
    """The same run again replaces its layers; the saved project has the answers."""
    before = len(QgsProject.instance().mapLayers())
    SEEN["again"] = run()
    SEEN["again_groups"] = groups()
    SEEN["again_layers"] = len(QgsProject.instance().mapLayers()) - before
    settings = panel().settings()
    project = QgsProject.instance()
    project.setFileName(str(PLACE / "kept.qgz"))
    assert project.write(), project.error()
    iface.newProject(False)
    SEEN["new_project"] = {
        **vars(panel().settings()),
        "can_run": panel().run_button.isEnabled(),
        "offered": panel().profile_button.isVisible(),
    }
    assert project.read(str(PLACE / "kept.qgz"))
    looked()
    SEEN["kept"] = {
        "settings": vars(panel().settings()),
        "wanted": vars(settings),
        "dirty": project.isDirty(),
        "can_run": panel().run_button.isEnabled(),
        "offered": panel().profile_button.isVisible() and panel()._kept_result().name(),
    }
    # Closing a project that holds results crashed the window now and then: its layers are gone when the panel hears of
    # it.
    for _ in range(6):
        panel().structure.propose()
        iface.newProject(False)
        QApplication.processEvents()
        assert project.read(str(PLACE / "kept.qgz"))
        looked()
    SEEN["kept"]["closed"] = 6


def plain_points():
    """Points with heights in feet, in no order, without chainages, and no line layer."""
    source = layer("Placed stations")
    rows = [f for f in source.getFeatures() if f["axis"] == "Alder"]
    rows = rows[7:] + rows[:7]
    crs = source.crs()
    iface.newProject(False)
    added_layer(
        "points",
        f"Point?crs={crs.authid()}",
        ["id:integer", "elev_ft:double"],
        [
            ([number, row["height"] / 0.3048 if row["height"] else None], QgsGeometry(row.geometry()))
            for number, row in enumerate(rows)
        ],
    )
    guided = panel()
    guided.fill()
    SEEN["points_before"] = told()
    guided.structure.by_stations.click()
    SEEN["points"] = told()
    SEEN["points_settings"] = vars(guided.settings())
    SEEN["points_placeholders"] = {key: edit.placeholderText() for key, edit in guided.design.edits.items()}
    type_into(guided.accuracy.edits["tolerance"], "0.06")
    looked()
    panel_picture("guided_points")
    commands = len(history())
    SEEN["points_run"] = run()
    SEEN["points_groups"] = groups()
    SEEN["points_history"] = history()
    SEEN["points_commands"] = len(SEEN["points_history"]) - commands
    result, axis = layer("Residuals"), layer("Drawn axis")
    SEEN["points_axis"] = (
        [[p.x(), p.y()] for p in axis.getFeature(1).geometry().asPolyline()] if axis.featureCount() else []
    )
    SEEN["points_ends"] = [
        [f.geometry().asPoint().x(), f.geometry().asPoint().y()] for f in result.getFeatures() if f["station"] == "0+00"
    ]
    values = sorted((f["chainage"], f["residual"] or 0.0) for f in result.getFeatures())
    SEEN["points_values"] = {"first": values[0], "last": values[-1], "number": len(values)}
    edited = guided.heights.box.currentLayer()
    edited.startEditing()
    edited.changeAttributeValue(next(edited.getFeatures()).id(), 1, 99999.0)
    SEEN["points_edited"] = told()
    edited.rollBack()


# --- what goes wrong


def table_layer(name, fields, rows):
    return added_layer(name, "NoGeometry?", fields, [(row, None) for row in rows])


def wrong_inputs():
    iface.newProject(False)
    axis = QgsGeometry.fromPolylineXY([QgsPointXY(300000, 6500000), QgsPointXY(300000, 6502000)])
    line = added_layer("line", "LineString?crs=EPSG:32734", ["name:string"], [(["line"], axis)])
    good = [("0+000", 5.0), ("1+000", 5.1), ("2+000", 5.2)]
    guided, wrong = panel(), {}
    guided.fill()
    guided.structure.box.setLayer(line)

    guided.heights.box.setLayer(table_layer("no station", ["height:double", "what:string"], [(5.0, "a")]))
    wrong["no_station"] = told()
    guided.heights.box.setLayer(table_layer("no height", ["station:string", "what:string"], [("0+000", "a")]))
    wrong["no_height"] = told()
    guided.heights.box.setLayer(
        table_layer("text", ["station:string", "height:string"], [("0+000", "4,5"), ("1+000", "x")])
    )
    wrong["text_heights"] = told()
    guided.heights.box.setLayer(table_layer("one bad", ["station:string", "height:double"], [*good, ("here", 5.0)]))
    wrong["one_bad_row"] = told()
    remarks = [("Station", None), *good[:2], ("", None), ("# read twice", None), good[2]]
    guided.heights.box.setLayer(table_layer("remarks", ["station:string", "height:double"], remarks))
    wrong["remarks"] = told()
    feet = [(f"{k}+00", 100.0) for k in range(0, 66)]
    guided.heights.box.setLayer(table_layer("feet", ["station:string", "height:double"], feet))
    wrong["feet"] = told()

    guided.heights.box.setLayer(table_layer("good", ["station:string", "height:double"], good))
    assert told()["can_run"]
    layers = set(QgsProject.instance().mapLayers())
    guided.design.buttons["inclined"].click()
    wrong["no_slope"] = told()
    guided.design.buttons["reference"].click()
    wrong["no_reference"] = told()
    guided.design.buttons["chord"].click()
    type_into(guided.design.edits["height_a"], "abc")
    wrong["no_number"] = told()
    guided.design.edits["height_a"].clear()
    type_into(guided.design.edits["chainage_a"], "12+5")
    wrong["no_notation"] = told()
    guided.design.edits["chainage_a"].clear()
    guided.accuracy.place.setFilePath(str(PLACE / "nowhere" / "results.gpkg"))
    looked()
    wrong["no_folder"] = run()
    guided.accuracy.place.setFilePath("")
    guided.structure.by_stations.click()
    wrong["drawn_from_list"] = told()
    guided.structure.by_layer.click()
    guided.heights.take_file(str(PLACE / "axis.gpkg" / "nothing.csv"))
    wrong["no_file"] = said()
    looked()
    wrong["left"] = sorted(
        QgsProject.instance().mapLayer(i).name() for i in set(QgsProject.instance().mapLayers()) - layers
    )
    looked()
    guided.run_button.click()
    guided.cancel_button.click()
    until(lambda: guided.run is None, "the cancelled run's end")
    wrong["cancelled"] = said()
    wrong["left_by_cancel"] = len(set(QgsProject.instance().mapLayers()) - layers)

    places = [QgsGeometry(QgsPoint(350000, 6500000 + 100 * k, 5.0)) for k in range(5)]
    far = added_layer("far", "PointZ?crs=EPSG:32734", [], [([], place) for place in places])
    guided.heights.box.setLayer(far)
    wrong["far"] = told()
    QgsProject.instance().removeMapLayer(line.id())
    wrong["line_gone"] = told()
    SEEN["wrong"] = wrong


def layers_that_come_later():
    """A line and points with Z join an empty project while the panel is open; then results of a run, which do not."""
    iface.newProject(False)
    guided = panel()
    guided.fill()
    SEEN["later_before"] = told()
    line = QgsGeometry.fromPolylineXY([QgsPointXY(300000, 6500000), QgsPointXY(300000, 6502000)])
    record = {"entry": "tautline:placestations"}
    added_layer("result", "LineString?crs=EPSG:32734", [], [([], line)], record)
    added_layer("line", "LineString?crs=EPSG:32734", ["name:string"], [(["line"], line)])
    places = [QgsGeometry(QgsPoint(300000, 6500000 + 100 * k, 5.0 + 0.001 * k)) for k in range(21)]
    added_layer("result points", "PointZ?crs=EPSG:32734", [], [([], place) for place in places], record)
    added_layer("points", "PointZ?crs=EPSG:32734", [], [([], place) for place in places])
    SEEN["later"] = told()
    SEEN["later_chosen"] = [box.currentText() for box in (guided.structure.box, guided.heights.box)]
    other = added_layer("other", "PointZ?crs=EPSG:32734", [], [([], place) for place in places])
    looked()
    SEEN["later_kept"] = guided.heights.box.currentText()
    guided.heights.box.setLayer(other)
    QgsProject.instance().removeMapLayer(other.id())
    looked()
    SEEN["later_gone"] = guided.heights.box.currentText()


def two_axes_apart():
    """Two axes that do not meet, straight in space within 1 mm: 13 neighbours of the one have sunk by 30 mm, one
    reading of the other is 60 mm off. Stated with 2 mm."""
    iface.newProject(False)
    guided = panel()
    guided.fill()
    axes, rows = [], []
    for name, east, number in (("north beam", 300000, 151), ("south beam", 305000, 101)):
        ends = [QgsPointXY(east, 6500000), QgsPointXY(east, 6500000 + 30 * (number - 1))]
        axes.append(([name], QgsGeometry.fromPolylineXY(ends)))
        for k in range(number):
            # Straight in space: above the level surface of its middle by s²/2R; and 1 mm of a pattern without a bend.
            s = 30.0 * (k - 0.5 * (number - 1))
            height = 50.0 + s * s / 2 / 6371000.0 + 0.001 * ((k * k * 37) % 17 - 8) / 8.0
            height -= 0.030 if name == "north beam" and 15 <= k <= 27 else 0.0
            height += 0.060 if name == "south beam" and k == 60 else 0.0
            rows.append(([name, f"{30 * k // 1000}+{30 * k % 1000:03d}", height], None))
    line = added_layer("beams", "LineString?crs=EPSG:32734", ["name:string"], axes)
    list_ = added_layer("list", "NoGeometry?", ["axis:string", "station:string", "height:double"], rows)
    guided.structure.box.setLayer(line)
    guided.heights.box.setLayer(list_)
    looked()
    for key in ("test_shape", "fit"):
        guided.accuracy.more[key].setChecked(True)
    type_into(guided.accuracy.edits["tolerance"], "0,01")
    type_into(guided.accuracy.edits["sigma"], "0.002")
    looked()
    SEEN["apart_hint"] = guided.accuracy.plane_hint.text()
    SEEN["apart"] = run()
    SEEN["apart_fits"] = sorted([row["kind"], row["name"]] for row in layer("Reference").getFeatures())
    panel_picture("guided_apart")
    iface.newProject(False)


def example_then_guided():
    """From the example's own text into the guided run, as a beginner goes."""
    from tautline.plugin import example

    ask = example.ask_place
    example.ask_place = lambda window: tempfile.mkdtemp(prefix="example_")
    iface.newProject(False)
    try:
        plugin().open_example()
    finally:
        example.ask_place = ask
    settle()
    plugin().guide.guided_button.click()
    panel().fill()
    SEEN["in_example"] = told()
    SEEN["in_example_settings"] = vars(panel().settings())
    SEEN["example_said"] = messages()
    iface.newProject(False)
    settle()
    SEEN["said_after_new_project"] = messages()


def unload_while_it_goes():
    """The panel open and a run going, when the plugin is taken away; then again without one."""
    assert QgsProject.instance().read(str(PLACE / "kept.qgz"))
    looked()
    rounds = []
    for going in (True, False):
        if going:
            panel().run_button.click()
            assert panel().run is not None
        unloaded = unload_plugin()
        # What the run left going must end too.
        until(lambda: not QgsApplication.taskManager().countActiveTasks(), "the tasks ended")
        settle()
        rounds.append({"unloaded": unloaded, "going": going, "docks": dock_names(hidden=True), "modules": modules()})
        assert load_plugin()
        plugin().open_guided()
        rounds[-1]["again"] = panel().isVisible()
    SEEN["rounds"] = rounds


def no_questions():
    """Nothing has asked since the play began."""
    SEEN["asked"] = QUESTIONS.done()["asked"]


# A question of the host's that nobody answers would stand still for ever.
QUESTIONS = Clicker()
play(
    widen,
    load,
    list_of_the_range,
    one_plane_when_said,
    again_and_reopened,
    plain_points,
    wrong_inputs,
    layers_that_come_later,
    two_axes_apart,
    example_then_guided,
    unload_while_it_goes,
    no_questions,
)
