"""Runs inside the real window: uses profile and flagged stations as a person does. See ``test_profile.py``."""

import hashlib
import json
import shutil
import sqlite3
import sys
from dataclasses import replace
from time import monotonic

import numpy as np
from qgis.core import QgsFeatureRequest, QgsGeometry, QgsPointXY, QgsProject, QgsVectorLayer
from qgis.gui import QgsVertexMarker
from qgis.PyQt.QtCore import QCoreApplication, QEvent, QPoint, Qt
from qgis.PyQt.QtGui import QColor, QPalette
from qgis.PyQt.QtTest import QTest
from qgis.PyQt.QtWidgets import QApplication
from qgis.utils import iface
from stage import (
    LEFT,
    NO_BUTTON,
    PLACE,
    RANGE,
    SEEN,
    Clicker,
    added_layer,
    click,
    dock_names,
    load_plugin,
    messages,
    modules,
    mouse,
    picture,
    play,
    plugin,
    settle,
    trigger,
    unload_plugin,
    until,
    until_drawn,
    widen,
)

CONTROL, ALT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.AltModifier
THINGS = {}


def review():
    return plugin().review


def profile():
    return review().docks["profile"]


def flagged():
    return review().docks["flagged"]


def subject():
    return review().subject


def marks():
    return [item for item in iface.mapCanvas().scene().items() if isinstance(item, QgsVertexMarker)]


# --- pointing at the chart


def in_chart(place, chart=None):
    """Point of the canvas widget at a station of the chart."""
    canvas = profile().chart
    x, y = canvas._place_of(place, chart or canvas.drawing.lower)
    ratio = canvas.devicePixelRatioF()
    return QPoint(round(x / ratio), round(canvas.height() - y / ratio))


def drag(widget, start, end):
    mouse(widget, QEvent.Type.MouseButtonPress, start, LEFT, LEFT)
    for step in (0.3, 0.6, 1.0):
        mouse(widget, QEvent.Type.MouseMove, start + (end - start) * step, NO_BUTTON, LEFT)
    mouse(widget, QEvent.Type.MouseButtonRelease, end, LEFT, NO_BUTTON)


def place_named(station):
    return profile().chart.shown.station.tolist().index(station)


def selected():
    return sorted(f"{f['axis']} {f['station']}" for f in THINGS["residuals"].selectedFeatures())


def current():
    return " ".join(map(str, subject().name_of(subject().current))) if subject().current >= 0 else ""


def sentence():
    return profile().chart.figure.texts[0].get_text().replace("\n", " ")


def legend():
    return [text.get_text() for legend_ in profile().chart.figure.legends for text in legend_.get_texts()]


def ticks(chart):
    profile().chart.draw()
    return [label.get_text() for label in chart.get_xticklabels() if label.get_text()]


# --- the steps


def load():
    THINGS["marks"] = len(marks())
    SEEN["charts_before"] = "matplotlib" in sys.modules
    SEEN["loaded"] = load_plugin()
    SEEN["charts_after_loading"] = "matplotlib.backends.backend_qtagg" in sys.modules


def open_empty():
    trigger("tautline_profile_open")
    trigger("tautline_flagged_open")
    SEEN["empty"] = {
        "docks": dock_names(),
        "page": profile().pages.currentIndex(),
        "text": profile().empty.text(),
        "list": flagged().pages.currentIndex(),
        "list_text": flagged().empty.text(),
    }


def compute():
    """The range's result, and its layers in the project."""
    from tautline.plugin import toolbox

    folder = PLACE / "work"
    folder.mkdir()
    for name in ("axis.gpkg", "heights.csv", "heights.csvt"):
        shutil.copyfile(RANGE / name, folder / name)
    axis = f"{folder / 'axis.gpkg'}|layername=axis"
    toolbox.run(
        "tautline:placestations",
        {"INPUT": str(folder / "heights.csv"), "AXIS": axis, "OUTPUT": str(folder / "stations.gpkg")},
    )
    toolbox.run(
        "tautline:designheights",
        {
            "STATIONS": str(folder / "stations.gpkg"),
            "AXIS": axis,
            "UNDULATION": "field",
            "OUTPUT": str(folder / "residuals.gpkg"),
        },
    )
    project = QgsProject.instance()
    for key in ("stations", "residuals"):
        THINGS[key] = QgsVectorLayer(str(folder / f"{key}.gpkg"), key.capitalize(), "ogr")
        project.addMapLayer(THINGS[key])
    THINGS["folder"] = folder
    iface.setActiveLayer(THINGS["stations"])
    SEEN["stays"] = subject().layer is not THINGS["stations"]
    iface.setActiveLayer(THINGS["residuals"])
    extent = THINGS["residuals"].extent()
    extent.scale(1.2)
    project.setCrs(THINGS["residuals"].crs())
    iface.mapCanvas().setExtent(extent)
    until_drawn()
    until(lambda: subject().layer is THINGS["residuals"], "the active layer under review")


def look():
    dock = profile()
    chart = dock.chart
    chart.draw()
    SEEN["opened"] = {
        "layers": [dock.layers.itemText(k) for k in range(dock.layers.count())],
        "page": dock.pages.currentIndex(),
        "axes": [dock.axes.itemText(k) for k in range(dock.axes.count())],
        "stations": len(chart.drawing.x),
        "sentence": sentence(),
        "legend": legend(),
        "ticks": ticks(chart.drawing.lower),
        "factor": chart.drawing.factor,
        "factor_text": dock.factor.text(),
        "titles": [one.get_title(loc="left") for one in (chart.drawing.upper, chart.drawing.lower)],
        "shared": chart.drawing.upper.get_xlim() == chart.drawing.lower.get_xlim(),
        "bars": len(chart.drawing.lower.containers),
        "labels": [text.get_text() for text in chart.drawing.lower.texts],
    }
    picture("profile")


def point():
    chart, at = profile().chart, place_named("1+650")
    mouse(chart, QEvent.Type.MouseMove, in_chart(at))
    mark = review().link.marked("hover")
    feature = next(f for f in THINGS["residuals"].getFeatures() if (f["axis"], f["station"]) == ("Alder", "1+650"))
    SEEN["hover"] = {
        "place": chart.hover == at,
        "story": profile().story.text(),
        "distance": mark.distance(feature.geometry().asPoint()),
        "selected": selected(),
    }
    mouse(chart, QEvent.Type.MouseMove, QPoint(2, 2))
    SEEN["hover_gone"] = chart.hover == -1 and review().link.marked("hover") is None
    place = iface.mapCanvas().getCoordinateTransform().transform(feature.geometry().asPoint())
    mouse(iface.mapCanvas().viewport(), QEvent.Type.MouseMove, QPoint(round(place.x()), round(place.y())))
    SEEN["map_hover"] = {"place": chart.hover == at, "story": profile().story.text()}


def pick():
    chart, found = profile().chart, {}
    click(chart, in_chart(place_named("1+650")))
    found["click"] = (selected(), current())
    click(chart, in_chart(place_named("1+700")), CONTROL)
    found["more"] = selected()
    click(chart, in_chart(place_named("0+200"), chart.drawing.upper))
    found["upper"] = selected()
    ends = [in_chart(place_named(station)) for station in ("1+600", "1+700")]
    drag(
        chart,
        QPoint(ends[0].x() - 4, chart.height() - 4 - round(chart.drawing.lower.bbox.y0) + 1),
        QPoint(ends[1].x() + 4, ends[1].y() - 8),
    )
    found["box"] = selected()
    THINGS["residuals"].selectByExpression('"axis" = \'Birch\' and "chainage" > 1075 and "chainage" < 1225')
    QCoreApplication.processEvents()
    found["from_map"] = {
        "axis": profile().axis,
        "rings": [chart.shown.station[k] for k in chart.chosen],
        "lines": sorted({i.row() for i in profile().table.selectionModel().selectedRows()}) == chart.chosen.tolist(),
    }
    before = iface.mapCanvas().extent().width()
    profile().go.click()
    found["zoomed"] = [
        before,
        iface.mapCanvas().extent().width(),
        iface.mapCanvas().extent().contains(THINGS["residuals"].boundingBoxOfSelected()),
    ]
    click(chart, QPoint(round(chart.width() * 0.5), 3))
    chart.picked.emit(-1, False)
    found["nothing"] = selected()
    dock = profile()
    chart.setFocus()
    before = chart.ranges.x
    mouse(chart, QEvent.Type.MouseButtonPress, in_chart(5), Qt.MouseButton.MiddleButton, Qt.MouseButton.MiddleButton)
    mouse(chart, QEvent.Type.MouseMove, in_chart(5) + QPoint(60, 0), NO_BUTTON, Qt.MouseButton.MiddleButton)
    mouse(chart, QEvent.Type.MouseButtonRelease, in_chart(5), Qt.MouseButton.MiddleButton, NO_BUTTON)
    found["panned"] = chart.ranges.x[0] - before[0]
    dock.whole.click()
    SEEN["pick"] = found


def switch_view():
    dock, chart = profile(), profile().chart
    dock.axes.setCurrentIndex(dock.axes.findData("Alder"))
    dock.axes.activated.emit(dock.axes.currentIndex())

    def heights():
        lines = chart.shown.lines
        return {name: float(np.nanmax(np.abs(value))) for name, value in lines.items()}

    level = heights()
    dock.views.setCurrentIndex(1)
    chart.draw()
    SEEN["straight"] = {
        "heights": heights(),
        "sentence": sentence(),
        "title": chart.drawing.upper.get_title(loc="left"),
        "level_heights": level,
    }
    dock.views.setCurrentIndex(0)


def scale():
    dock, chart = profile(), profile().chart
    x = chart.ranges.x
    dock.scale.setValue(250)
    SEEN["scaled"] = {"factor": chart.drawing.factor, "text": dock.factor.text(), "same_x": chart.ranges.x == x}
    dock.fix.click()
    dock.ranges_panel.typed.emit(replace(chart.ranges, x=(1000.0, 2000.0), r=(-30.0, 30.0)))
    dock.ranges_panel.keep.setChecked(True)
    dock.axes.setCurrentIndex(dock.axes.findData("Birch"))
    dock.axes.activated.emit(dock.axes.currentIndex())
    field = dock.ranges_panel._fields["r"][1]
    SEEN["kept"] = {
        "x": chart.ranges.x,
        "r": chart.ranges.r,
        "limits": chart.drawing.lower.get_ylim(),
        "field": field.value(),
        "panel": dock.ranges_panel.isVisible(),
    }
    field.setValue(45.0)
    SEEN["typed"] = chart.drawing.lower.get_ylim()
    dock.ranges_panel.keep.setChecked(False)
    dock.axes.setCurrentIndex(dock.axes.findData("Alder"))
    dock.axes.activated.emit(dock.axes.currentIndex())
    dock.whole.click()
    SEEN["whole"] = chart.ranges.x
    dock.fix.click()


def keys():
    dock, chart, found = profile(), profile().chart, {}
    iface.mainWindow().activateWindow()
    chart.setFocus()
    for key, name in (
        (Qt.Key.Key_Home, "home"),
        (Qt.Key.Key_Right, "right"),
        (Qt.Key.Key_Right, "right again"),
        (Qt.Key.Key_Left, "left"),
        (Qt.Key.Key_End, "end"),
    ):
        QTest.keyClick(chart, key)
        found[name] = current()
    before = chart.ranges.x
    QTest.keyClick(chart, Qt.Key.Key_Plus)
    found["closer"] = (chart.ranges.x[1] - chart.ranges.x[0]) / (before[1] - before[0])
    dock.whole.click()
    widget, passed = dock.layers, []
    for _ in range(60):
        if widget in (
            dock.layers,
            dock.axes,
            dock.views,
            dock.scale,
            dock.whole,
            dock.go,
            dock.fix,
            dock.values,
            dock.export,
            chart,
        ):
            passed.append(widget.accessibleName() or widget.text().replace("&", ""))
        if widget is chart:
            break
        widget = widget.nextInFocusChain()
    found["tab"] = passed
    SEEN["keys"] = found


def export():
    dock, found = profile(), {}
    for ending in ("png", "svg", "pdf"):
        path = THINGS["folder"] / f"chart.{ending}"
        dock.save_chart(str(path))
        found[ending] = [path.stat().st_size, path.read_bytes()[:8].decode("latin-1")]
    found["svg_text"] = "Design with no curvature" in (THINGS["folder"] / "chart.svg").read_text()
    iface.messageBar().clearWidgets()
    settle()
    before = len(messages())
    dock.save_chart(str(THINGS["folder"] / "nowhere" / "chart.png"))
    found["failed"] = until(lambda: len(messages()) > before and messages(), "the message")[-1]
    dock.copy_chart()
    found["copied"] = QApplication.clipboard().image().width()
    dock.table.copy()
    found["table"] = QApplication.clipboard().text().split("\n")
    iface.messageBar().clearWidgets()
    dock.values.click()
    found["table_shown"] = dock.table.isVisible() and dock.table.model().rowCount()
    dock.table.setFocus()
    settle()
    click(dock.table.viewport(), dock.table.visualRect(dock.table.model().index(3, 0)).center())
    found["by_table"] = (selected(), current())
    dock.values.click()
    SEEN["export"] = found


def edit():
    layer = THINGS["residuals"]
    row = subject().row_named("Alder", "0+100")
    before = float(subject().stations.heights["residual"][row])
    layer.startEditing()
    layer.changeAttributeValue(int(subject().stations.ids[row]), layer.fields().indexOf("residual"), 0.025)
    until(lambda: subject().stations.heights["residual"][row] == 0.025, "the edit read")
    shown = float(profile().chart.drawing.residual[place_named("0+100")])
    layer.rollBack()
    until(lambda: subject().stations.heights["residual"][row] == before, "the edit taken back")
    SEEN["edited"] = shown


# --- decisions


def kept(path):
    """The table as any other program reads it."""
    with sqlite3.connect(f"file:{path}?mode=ro", uri=True) as connection:
        return connection.execute(
            'select "axis", "station", "chainage", "decision", "note", "by", "at" from decisions order by fid'
        ).fetchall()


def listed():
    model = flagged().model
    return [
        [model.data(model.index(line, column)) for column in range(model.columnCount())]
        for line in range(model.rowCount())
    ]


def decide():
    dock, found = flagged(), {}
    path = THINGS["folder"] / "residuals_decisions.gpkg"
    found["before"] = path.exists()
    found["list"] = listed()
    subject().set_current(-1)
    dock.list.clearSelection()
    dock.step(1)
    dock.list.setFocus()
    found["first"] = current()
    QTest.keyClick(dock.list, Qt.Key.Key_3)
    dock.note.setFocus()
    QTest.keyClicks(dock.note, "slip of 0.1 m in the field book")
    QTest.keyClick(dock.note, Qt.Key.Key_Down, ALT)
    found["second"] = (current(), profile().axis, selected(), profile().chart.current == place_named("1+150"))
    dock.radios["measure again"].click()
    found["kept"] = kept(path)
    dock.list.setFocus()
    QTest.keyClick(dock.list, Qt.Key.Key_Z, CONTROL)
    found["undone"] = [row[:4] for row in kept(path)]
    dock.forward_button.click()
    found["redone"] = [row[:4] for row in kept(path)]
    for _ in range(3):
        dock.back_button.click()
    found["all_undone"] = (kept(path), dock.history.can_undo, dock.back_button.isEnabled())
    for _ in range(3):
        dock.forward_button.click()
    QTest.keyClick(dock.list, Qt.Key.Key_Up, ALT)
    found["back"] = (current(), dock.note.text(), dock.summary.text(), dock.radios["reading error"].isChecked())
    dock.filter.setCurrentIndex(1)
    found["open"] = [row[0] for row in listed()]
    dock.filter.setCurrentIndex(0)
    SEEN["decide"] = found
    picture("flagged")


def digest(path):
    return hashlib.sha256(path.read_bytes()).hexdigest()


def follow_up_forms():
    """The forms that the menu of the follow-up forms opens, with what they were filled with."""
    shell, menu, found = plugin(), profile().follow_up.menu(), {}
    for action in menu.actions():
        before = list(shell.forms)
        action.trigger()
        form = until(lambda before=before: [one for one in shell.forms if one not in before], "the form")[0]
        until(form.isVisible, "the form shown")
        widgets = form.mainWidget().wrappers
        values = {}
        for name in ("STATIONS", "SURVEYS", "AXIS", "DECISIONS"):
            wrapper = widgets.get(name)
            value = getattr(wrapper, "parameterValue", getattr(wrapper, "value", lambda: None))()
            source = getattr(value, "source", value)
            values[name] = str(source.staticValue() if hasattr(source, "staticValue") else value)
        found[action.data()] = {"text": action.text(), "values": values}
        form.close()
        until(lambda form=form: form not in shell.forms, "the form closed")
    ids = {"layer": THINGS["residuals"].id(), "stations": THINGS["stations"].id()}
    SEEN["follow_up_forms"] = {"forms": found, **ids, "open": len(shell.forms)}


def run_again():
    """The station's height is corrected in the stations' layer, and the recorded run repeated."""
    dock, stations, found = flagged(), THINGS["stations"], {}
    path = THINGS["folder"] / "residuals_decisions.gpkg"
    before = digest(path), kept(path)
    feature = next(f for f in stations.getFeatures() if (f["axis"], f["station"]) == ("Alder", "0+850"))
    stations.startEditing()
    stations.changeAttributeValue(feature.id(), stations.fields().indexOf("height"), feature["height"] - 0.1)
    clicker = Clicker("Cancel")
    dock.again_button.click()
    found["refused"] = clicker.done()
    found["not_run"] = [row[2] for row in listed() if row[0].endswith("0+850")]
    clicker = Clicker("Save", "Cancel")
    dock.again_button.click()
    found["second_thoughts"] = clicker.done()
    found["still_not_run"] = [row[2] for row in listed() if row[0].endswith("0+850")]
    stranger, before_strange = THINGS["residuals"].customProperty("tautline/record"), digest(path)
    foreign = {"entry": "native:savefeatures", "parameters": {"INPUT": stations.source(), "OUTPUT": str(path)}}
    THINGS["residuals"].setCustomProperty("tautline/record", json.dumps(foreign))
    dock.again_button.click()
    found["foreign"] = until(messages, "the message that a foreign entry is not run")
    found["foreign_wrote"] = digest(path) != before_strange
    iface.messageBar().clearWidgets()
    THINGS["residuals"].setCustomProperty("tautline/record", stranger)
    clicker = Clicker("Save", "Run again")
    dock.again_button.click()
    found["question"] = clicker.done()
    found["list"] = listed()
    found["same_file"] = (digest(path), kept(path)) == before
    found["layer"] = subject().layer is THINGS["residuals"] and THINGS["residuals"].isValid()
    found["messages"] = until(messages, "the message that it was run again")
    iface.messageBar().clearWidgets()
    # And by the toolbox itself, as from its form.
    from tautline.plugin import toolbox

    record = json.loads(THINGS["residuals"].customProperty("tautline/record"))
    toolbox.run(record["entry"], record["parameters"])
    found["same_after_toolbox"] = (digest(path), kept(path)) == before
    fresh = QgsVectorLayer(str(THINGS["folder"] / "residuals.gpkg"), "Fresh", "ogr")
    QgsProject.instance().addMapLayer(fresh)
    subject().set_layer(fresh)
    found["found_again"] = {row[0]: row[3] for row in listed() if row[3]}
    subject().set_layer(THINGS["residuals"])
    QgsProject.instance().removeMapLayer(fresh.id())
    stations.commitChanges()
    SEEN["again"] = found


def other_places():
    """A layer that is in no file, and one whose place is taken by a folder."""
    from tautline.plugin.decisions import questions as module

    found = {}
    ask = module.QFileDialog.getSaveFileName
    try:
        layer = THINGS["residuals"].materialize(QgsFeatureRequest())
        layer.setName("In memory")
        layer.setCustomProperty("tautline/record", THINGS["residuals"].customProperty("tautline/record"))
        QgsProject.instance().addMapLayer(layer)
        subject().set_layer(layer)
        found["place_text"] = flagged().place.text()
        flagged().step(1)
        clicker = Clicker("Cancel")
        flagged().decide("accept")
        found["gave_up"] = {**clicker.done(), "decided": [row[3] for row in listed() if row[3]]}
        chosen = PLACE / "elsewhere.gpkg"
        module.QFileDialog.getSaveFileName = lambda *_: (str(chosen), "")
        clicker = Clicker("Choose")
        flagged().decide("accept")
        found["memory"] = {
            **clicker.done(),
            "kept": [row[:4] for row in kept(chosen)],
            "property": layer.customProperty("tautline/decisions"),
        }
        QgsProject.instance().removeMapLayer(layer.id())
        copied = PLACE / "copied"
        copied.mkdir()
        shutil.copyfile(THINGS["folder"] / "residuals.gpkg", copied / "residuals.gpkg")
        (copied / "residuals_decisions.gpkg").mkdir()
        taken = QgsVectorLayer(str(copied / "residuals.gpkg"), "Taken", "ogr")
        QgsProject.instance().addMapLayer(taken)
        subject().set_layer(taken)
        flagged().step(1)
        chosen_2 = PLACE / "second.gpkg"
        module.QFileDialog.getSaveFileName = lambda *_: (str(chosen_2), "")
        clicker = Clicker("Choose")
        flagged().decide("move the support")
        found["taken"] = {**clicker.done(), "kept": [row[:4] for row in kept(chosen_2)]}
        QgsProject.instance().removeMapLayer(taken.id())
    finally:
        module.QFileDialog.getSaveFileName = ask
    SEEN["places"] = found


def remove_layer():
    subject().set_layer(THINGS["residuals"])
    subject().set_current(3)
    shown = review().link.marked("current") is not None
    QgsProject.instance().removeMapLayers([THINGS["residuals"].id(), THINGS["stations"].id()])
    settle()
    SEEN["removed"] = {
        "shown": shown,
        "subject": subject().layer is None,
        "profile": profile().pages.currentIndex(),
        "list": flagged().pages.currentIndex(),
        "mark": review().link.marked("current"),
    }


# --- other layers


def made(name, fields, rows, record):
    """A memory layer of points on one line."""
    places = [QgsGeometry.fromPointXY(QgsPointXY(500000.0 + number, 6500000.0)) for number in range(len(rows))]
    return added_layer(name, "Point?crs=EPSG:32734", fields, zip(rows, places), record)


def in_feet():
    """A layer in feet without curvature, and one of a fit: no design heights, a suspected blunder."""
    fields = (
        "axis:string",
        "station:string",
        "chainage:double",
        "design_h:double",
        "residual:double",
        "flat_h:double",
        "status:string",
    )
    rows = [
        ["railway", "", 1200.0 + 50.0 * k, 100.0 + 0.06 * k, 0.02 * (-1) ** k, 100.0 + 0.06 * k, "within"]
        for k in range(12)
    ]
    record = {"units": {"height_name": "foot", "chainage_name": "foot"}, "axes": {"railway": {"tolerance": 0.03}}}
    subject().set_layer(made("Feet", fields, rows, record))
    chart = profile().chart
    SEEN["feet"] = {
        "titles": [one.get_title(loc="left") for one in (chart.drawing.upper, chart.drawing.lower)],
        "ticks": ticks(chart.drawing.lower),
        "sentence": sentence(),
        "legend": legend(),
        "list": flagged().empty.text(),
        "tolerance": chart.shown.profile.tolerance,
        "range": chart.ranges.x,
    }
    fields = ("axis:string", "station:string", "chainage:double", "residual:double", "w:double", "flag:string")
    rows = [
        [
            "line",
            f"{k}+000",
            1000.0 * k,
            0.003 if k != 4 else 0.2,
            0.5 if k != 4 else 9.0,
            "kept" if k != 4 else "suspected blunder",
        ]
        for k in range(9)
    ]
    subject().set_layer(made("Fit", fields, rows, {"units": {"height_name": "metre", "chainage_name": "metre"}}))
    chart.draw()
    SEEN["fit"] = {
        "upper": chart.drawing.upper.get_visible(),
        "sentence": sentence(),
        "list": listed(),
        "views": profile().views.isEnabled(),
        "labels": [text.get_text() for text in chart.drawing.lower.texts],
    }


def many():
    """100,000 stations: what it takes, and that a click still finds the right one."""
    count = 100_000
    fields = (
        "axis:string",
        "station:string",
        "chainage:double",
        "design_h:double",
        "residual:double",
        "flat_h:double",
        "status:string",
    )
    wave = 0.003 * np.sin(np.arange(count) * 0.7)
    wave[54321] = 0.09
    rows = [
        ["long", "", float(k), 100.0 + 7.8e-8 * k * k, float(wave[k]), 100.0, "high" if k == 54321 else "within"]
        for k in range(count)
    ]
    layer = made(
        "Many",
        fields,
        rows,
        {"units": {"height_name": "metre", "chainage_name": "metre"}, "axes": {"long": {"tolerance": 0.01}}},
    )
    chart, seconds = profile().chart, {}
    subject().set_layer(layer)
    started = monotonic()
    subject().read()
    seconds["reading and setting out"] = monotonic() - started
    started = monotonic()
    chart.draw()
    seconds["drawing"] = monotonic() - started
    started = monotonic()
    for k in range(20):
        mouse(chart, QEvent.Type.MouseMove, QPoint(200 + 20 * k, chart.height() - 80))
    seconds["pointing, each"] = (monotonic() - started) / 20
    click(chart, in_chart(54321))
    drawn = max(len(line.get_xdata()) for line in chart.drawing.upper.lines)
    peak = max(float(np.nanmax(np.append(line.get_ydata(), -1.0))) for line in chart.drawing.lower.lines)
    started = monotonic()
    chart.set_ranges(replace(chart.ranges, x=(54000.0, 54600.0)))
    chart.draw()
    seconds["zooming"] = monotonic() - started
    whole = max(len(line.get_xdata()) for line in chart.drawing.upper.lines)
    SEEN["many"] = {
        "seconds": {key: round(value, 3) for key, value in seconds.items()},
        "picked": subject().current,
        "drawn": drawn,
        "peak": peak,
        "whole": whole,
        "selected": layer.selectedFeatureCount(),
        "list": listed(),
    }


def theme():
    chart = profile().chart
    light = chart.drawing.look.back
    palette = QPalette(profile().table.palette())
    before = QPalette(palette)
    palette.setColor(QPalette.ColorRole.Base, QColor("#202020"))
    palette.setColor(QPalette.ColorRole.Text, QColor("#eeeeee"))
    profile().table.setPalette(palette)
    chart.restyle()
    SEEN["theme"] = [light, chart.drawing.look.back, chart.drawing.look.text]
    profile().table.setPalette(before)
    chart.restyle()


def unload():
    rounds = []
    for _ in range(2):
        gone = unload_plugin()
        rounds.append(
            {
                "unloaded": gone,
                "docks": dock_names(),
                "marks": len(marks()) - THINGS["marks"],
                "all_docks": dock_names(hidden=True),
                "modules": modules(),
            }
        )
        # What the project and the map still tell must reach nobody.
        layer = made(
            "After", ("axis:string", "chainage:double", "residual:double"), [["a", 1.0, 0.1], ["a", 2.0, 0.2]], {}
        )
        iface.setActiveLayer(layer)
        QgsProject.instance().removeMapLayer(layer.id())
        assert load_plugin()
        trigger("tautline_profile_open")
        trigger("tautline_flagged_open")
        rounds[-1]["again"] = dock_names()
    SEEN["rounds"] = rounds


play(
    widen,
    load,
    open_empty,
    compute,
    look,
    point,
    pick,
    switch_view,
    scale,
    keys,
    export,
    edit,
    decide,
    follow_up_forms,
    run_again,
    other_places,
    remove_layer,
    in_feet,
    many,
    theme,
    unload,
)
