"""Runs inside the real window: the line from the guided run's question to profile and flagged stations. See
``test_line_window.py``."""

from qgis.core import QgsApplication, QgsGeometry, QgsPoint, QgsPointXY, QgsProject, QgsVectorLayer
from qgis.PyQt.QtCore import QEvent, QPoint, QPointF, Qt
from qgis.PyQt.QtGui import QWheelEvent
from qgis.PyQt.QtTest import QTest
from qgis.PyQt.QtWidgets import QApplication
from qgis.utils import iface
from stage import (
    PLACE,
    SEEN,
    added_layer,
    click,
    load_plugin,
    looked,
    mouse,
    panel,
    picture,
    play,
    plugin,
    settle,
    trigger,
    unload_plugin,
    until,
    widen,
)

NUMBER, SPACING = 31, 50.0
# Millimetres right of the line, and high: one station beside the line, three neighbours, one too high.
ASIDE = {6: -14.0, 15: 11.0, 16: 12.0, 17: 10.0}
HIGH = {20: 18.0}
THINGS = {}


def stations(beside=True):
    """(attributes, point) along a meridian, where the chord of the axis is the meridian itself."""
    from tautline.algorithms.core.geodesy import Ellipsoid

    earth, rows = Ellipsoid(6378137.0, 1 / 298.257223563), []
    for k in range(NUMBER):
        lat, lon, _ = earth.forward(50.0, 8.0, 0.0, SPACING * k)
        s, length = SPACING * k, SPACING * (NUMBER - 1)
        height = 2.0 - s * (length - s) / 2 / 6_380_000.0 + HIGH.get(k, 0.4 * (k % 3)) / 1000.0
        aside = (ASIDE.get(k, 1.0 - k % 3) if 0 < k < NUMBER - 1 and beside else 0.0) / 1000.0
        lat2, lon2, _ = earth.forward(lat, lon, 90.0, aside)
        rows.append(((f"P{k}", height), QgsGeometry.fromPointXY(QgsPointXY(float(lon2), float(lat2)))))
    return rows


def load():
    assert load_plugin()
    ends = [rows[1].asPoint() for rows in (stations(False)[0], stations(False)[-1])]
    line = QgsGeometry.fromPolyline([QgsPoint(point) for point in ends])
    THINGS["axis"] = added_layer("axis", "LineString?crs=EPSG:4326", ["name:string"], [(("wall",), line)])
    fields = ["name:string", "height:double"]
    THINGS["flat"] = added_layer("heights only", "Point?crs=EPSG:4326", fields, stations(False))
    THINGS["beside"] = added_layer("positions", "Point?crs=EPSG:4326", fields, stations())
    trigger("tautline_guided_run")


def questions():
    accuracy = panel().accuracy
    return [accuracy.answers[key].isVisible() for key in ("line", "line_tolerance")]


def guided():
    guided = panel()
    guided.structure.box.setLayer(THINGS["axis"])
    guided.heights.box.setLayer(THINGS["flat"])
    looked()
    SEEN["asked_of_heights"] = questions()
    guided.heights.box.setLayer(THINGS["beside"])
    looked()
    SEEN["asked_of_positions"] = questions()
    guided.accuracy.line.setCurrentIndex(guided.accuracy.line.findData("chord"))
    guided.accuracy.edits["tolerance"].setText("0.01")
    guided.accuracy.edits["line_tolerance"].setText("none")
    looked()
    SEEN["asked_then"] = questions()
    SEEN["unreadable"] = [guided.run_button.isEnabled(), guided.answers["line_tolerance"].problem.told()[0][1]]
    guided.accuracy.edits["line_tolerance"].setText("0.008")
    guided.accuracy.more["draw"].setChecked(True)
    guided.accuracy.place.setFilePath(str(PLACE / "results.gpkg"))
    looked()
    guided.scroll.verticalScrollBar().setValue(guided.scroll.verticalScrollBar().maximum())
    settle()
    picture("question", guided)
    guided.run_button.click()
    until(lambda: guided.run is None and guided.outcome.told(), "the run's end")
    settle()
    SEEN["outcome"] = guided.outcome.told() + guided.trouble.told()
    group = QgsProject.instance().layerTreeRoot().findGroups()[0]
    SEEN["layers"] = [node.name() for node in group.findLayers()]
    picture("outcome", guided)
    THINGS["residuals"] = next(node.layer() for node in group.findLayers() if node.name().startswith("Residuals"))


# --- profile


def review():
    return plugin().review


def profile():
    return review().docks["profile"]


def chart():
    return profile().chart


def place_named(station):
    return chart().shown.station.tolist().index(station)


def in_line(place):
    canvas = chart()
    x, y = canvas._place_of(place, canvas.drawing.line)
    ratio = canvas.devicePixelRatioF()
    return QPoint(round(x / ratio), round(canvas.height() - y / ratio))


def state():
    drawing = chart().drawing
    return {
        "button": profile().beside.isVisible(),
        "on": profile().beside.isChecked(),
        "chart": drawing.line.get_visible(),
        "range": profile().ranges_panel._labels["l"].parentWidget().isVisibleTo(profile().ranges_panel),
        "table": [title for title, _, _ in profile().table.model()._columns],
        "legend": [text.get_text() for one in drawing.figure.legends for text in one.get_texts()],
        "xlabels": [one.get_xlabel() for one in (drawing.lower, drawing.line)],
        "list": [
            review().docks["flagged"].model.headerData(k, Qt.Orientation.Horizontal)
            for k in range(review().docks["flagged"].model.columnCount())
        ],
    }


def open_docks():
    trigger("tautline_profile_open")
    trigger("tautline_flagged_open")
    iface.setActiveLayer(THINGS["residuals"])
    until(lambda: review().subject.layer is THINGS["residuals"], "the result under review")
    panel().hide()
    settle()
    chart().draw()
    SEEN["off"] = state()
    picture("line_off")


def switch_on():
    # By the keyboard: the button stands in the order of the Tab key.
    profile().beside.setFocus()
    QTest.keyClick(profile().beside, Qt.Key.Key_Space)
    settle()
    chart().draw()
    SEEN["on"] = state()
    drawing = chart().drawing
    SEEN["chart"] = {
        "title": drawing.line.get_title(loc="left"),
        "shared": drawing.line.get_xlim() == drawing.lower.get_xlim(),
        "down": drawing.line.get_ylim()[0] > drawing.line.get_ylim()[1],
        "ticks": [drawing.line.yaxis.get_major_formatter()(value, 0) for value in (-5.0, 0.0, 12.5)],
        "apart": [one.get_position().y0 for one in drawing.charts] + [drawing.lower.get_position().y1],
    }
    picture("line_on")


def point_and_pick():
    canvas, at = chart(), place_named("0+300")
    mouse(canvas, QEvent.Type.MouseMove, in_line(at))
    SEEN["hover"] = [canvas.hover == at, profile().story.text(), review().link.marked("hover") is not None]
    click(canvas, in_line(at))
    SEEN["picked"] = [
        [f["station"] for f in THINGS["residuals"].selectedFeatures()],
        str(review().subject.name_of(review().subject.current)[1]),
    ]
    start = in_line(place_named("0+750")) + QPoint(-8, -8)
    end = in_line(place_named("0+850")) + QPoint(8, 8)
    mouse(canvas, QEvent.Type.MouseButtonPress, start, Qt.MouseButton.LeftButton, Qt.MouseButton.LeftButton)
    for step in (0.3, 0.7, 1.0):
        mouse(canvas, QEvent.Type.MouseMove, start + (end - start) * step, buttons=Qt.MouseButton.LeftButton)
    mouse(canvas, QEvent.Type.MouseButtonRelease, end, Qt.MouseButton.LeftButton)
    SEEN["boxed"] = sorted(f["station"] for f in THINGS["residuals"].selectedFeatures())
    canvas.setFocus()
    QTest.keyClick(canvas, Qt.Key.Key_Right)
    SEEN["stepped"] = str(review().subject.name_of(review().subject.current)[1])
    before, where = canvas.ranges, QPointF(in_line(at))
    turn = (QPoint(0, 120), QPoint(0, 120), Qt.MouseButton.NoButton, Qt.KeyboardModifier.ControlModifier)
    place = (where, QPointF(canvas.mapToGlobal(where.toPoint())))
    QApplication.sendEvent(canvas, QWheelEvent(*place, *turn, Qt.ScrollPhase.NoScrollPhase, False))
    low, high = canvas.ranges.l
    SEEN["wheel"] = [(high - low) / (before.l[1] - before.l[0]), canvas.ranges.r == before.r, low < -14.0 < high]
    profile().show_whole()
    SEEN["whole"] = canvas.ranges.l == before.l


def flagged():
    dock = review().docks["flagged"]
    model = dock.model
    SEEN["flagged"] = [
        [model.data(model.index(line, column)) for column in range(model.columnCount())]
        for line in range(model.rowCount())
    ]
    dock._go(0)
    SEEN["story"] = dock.story.text()
    dock.list.setFocus()
    first = str(review().subject.name_of(review().subject.current)[1])
    QTest.keyClick(dock.list, Qt.Key.Key_4)
    SEEN["decided"] = [first, [d.decision for d in dock.decisions.values()], len(dock.decisions)]
    settle()


def dark():
    QgsApplication.setUITheme("Night Mapping")
    QApplication.processEvents()
    settle()
    chart().restyle()
    chart().draw()
    picture("line_dark")
    QgsApplication.setUITheme("default")
    settle()


def export():
    from tautline.plugin.profile.export import chart_bytes

    shown, ranges = chart().shown, chart().ranges
    SEEN["exported"] = [word in chart_bytes(shown, ranges, ".svg").decode() for word in ("Line, seen", "Residual")]


def tested():
    """A test of line and heights joins the project: at 3.8 mm only the station 14 mm left is suspected in plan."""
    from tautline.plugin import toolbox
    from tautline.plugin.profile.legend import legend_handles

    place = str(PLACE / "tested.gpkg")
    options = {"SIGMA": 0.01, "SIGMA_LINE": 0.0038, "LINE": "fitted", "REFERENCE": "TEMPORARY_OUTPUT"}
    given = {"STATIONS": THINGS["beside"], "AXIS": THINGS["axis"], "OUTPUT": place}
    toolbox.run("tautline:fitreference", {**options, **given})
    layer = QgsVectorLayer(place, "Tested", "ogr")
    QgsProject.instance().addMapLayer(layer, False)
    review().subject.read()
    settle()
    chart().draw()
    model = review().docks["flagged"].model
    SEEN["tested"] = [[model.data(model.index(line, column)) for column in (0, 3)] for line in range(model.rowCount())]
    # The figure leaves its legend out where there is little room.
    SEEN["tested_legend"] = [one.get_label() for one in legend_handles(chart().shown, chart().drawing.look)]
    picture("line_tested")
    QgsProject.instance().removeMapLayer(layer.id())
    review().subject.read()
    settle()


def remembered():
    assert unload_plugin()
    assert load_plugin()
    trigger("tautline_flagged_open")
    iface.setActiveLayer(THINGS["residuals"])
    trigger("tautline_profile_open")
    until(lambda: review().subject.layer is THINGS["residuals"], "the result under review")
    settle()
    SEEN["remembered"] = {key: state()[key] for key in ("button", "on", "chart")}


def heights_only():
    """The same run without a line: the docks know of none, though the chart of the line is switched on."""
    from tautline.plugin import toolbox

    place = str(PLACE / "heights_only.gpkg")
    toolbox.run(
        "tautline:designheights",
        {"STATIONS": THINGS["beside"], "AXIS": THINGS["axis"], "TOLERANCE": 0.01, "OUTPUT": place},
    )
    layer = QgsVectorLayer(place, "Heights", "ogr")
    QgsProject.instance().addMapLayer(layer)
    iface.setActiveLayer(layer)
    until(lambda: review().subject.layer is layer, "heights under review")
    settle()
    chart().draw()
    SEEN["heights_only"] = state()
    at = place_named("0+300")
    review().subject.set_current(profile().rows[at])
    SEEN["heights_story"] = profile().story.text()
    picture("heights_only")


play(
    widen, load, guided, open_docks, switch_on, point_and_pick, flagged, dark, export, tested, remembered, heights_only
)
