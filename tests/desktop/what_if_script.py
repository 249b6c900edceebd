"""Runs inside the real window: tries straight lines in the profile as a person does. See ``test_what_if.py``."""

import hashlib
import shutil
from time import process_time

import numpy as np
from qgis.core import QgsApplication, QgsGeometry, QgsPointXY, QgsProject, QgsVectorLayer
from qgis.PyQt.QtCore import QCoreApplication, QEvent, QPoint, Qt
from qgis.PyQt.QtTest import QTest
from qgis.PyQt.QtWidgets import QApplication
from qgis.utils import iface
from stage import (
    PLACE,
    RANGE,
    SEEN,
    added_layer,
    click,
    load_plugin,
    messages,
    mouse,
    picture,
    play,
    plugin,
    settle,
    trigger,
    until,
    until_drawn,
    widen,
)

CONTROL = Qt.KeyboardModifier.ControlModifier
THINGS = {}


def profile():
    return plugin().review.docks["profile"]


def tried():
    return profile().what_if


def at(station, chart=None):
    """Point of the canvas widget at a station of the chart."""
    canvas = profile().chart
    x, y = canvas._place_of(canvas.shown.station.tolist().index(station), chart or canvas.drawing.upper)
    ratio = canvas.devicePixelRatioF()
    return QPoint(round(x / ratio), round(canvas.height() - y / ratio))


def point_at(station):
    mouse(profile().chart, QEvent.Type.MouseMove, at(station))


def digest():
    return hashlib.sha256((THINGS["folder"] / "residuals.gpkg").read_bytes()).hexdigest()


def compute():
    """The range's result, and its layers in the project."""
    load_plugin()
    from tautline.plugin import toolbox

    folder = THINGS["folder"] = PLACE / "work"
    folder.mkdir()
    for name in ("axis.gpkg", "heights.csv", "heights.csvt"):
        shutil.copyfile(RANGE / name, folder / name)
    axis, stations = f"{folder / 'axis.gpkg'}|layername=axis", str(folder / "stations.gpkg")
    toolbox.run("tautline:placestations", {"INPUT": str(folder / "heights.csv"), "AXIS": axis, "OUTPUT": stations})
    residuals = str(folder / "residuals.gpkg")
    toolbox.run(
        "tautline:designheights", {"STATIONS": stations, "AXIS": axis, "UNDULATION": "field", "OUTPUT": residuals}
    )
    project = QgsProject.instance()
    for name, source in (("axis", axis), ("stations", stations), ("residuals", residuals)):
        THINGS[name] = QgsVectorLayer(source, name.capitalize(), "ogr")
        project.addMapLayer(THINGS[name])
    project.setCrs(THINGS["residuals"].crs())
    extent = THINGS["residuals"].extent()
    extent.scale(1.2)
    iface.mapCanvas().setExtent(extent)
    trigger("tautline_profile_open")
    iface.setActiveLayer(THINGS["residuals"])
    until_drawn()
    until(lambda: plugin().review.subject.layer is THINGS["residuals"], "the layer under review")
    # A late reading lays the chart out anew, and what was pointed at lies elsewhere.
    until(lambda: not plugin().review.staleness.busy, "layers compared with their inputs")
    settle()
    profile().chart.draw()
    SEEN["bar_before"] = tried().bar.isVisible()


def choose():
    """The first station, the pointer on the way, the second; then the gap at a third."""
    dock, chart, found = profile(), profile().chart, {}
    THINGS["ranges"], before = chart.ranges, digest()
    dock.line.click()
    chart.draw()
    found["asked"] = tried().bar.text.text()
    found["visible"] = tried().bar.isVisible() and dock.line.isChecked()
    click(chart, at("0+200"))
    found["first"] = (tried().bar.text.text(), len(tried().points), tried().line is None)
    point_at("1+650")
    found["follows"] = [control.chainage for control in tried().line.controls]
    point_at("2+150")
    found["follows"] += [control.chainage for control in tried().line.controls]
    found["not yet"] = tried().bar.use.isEnabled()
    click(chart, at("2+150"))
    found["selected"] = THINGS["residuals"].selectedFeatureCount()
    found["told"] = tried().bar.text.text()
    point_at("1+250")
    found["story"] = dock.story.text()
    line = tried().line
    layer_places = tried()._layer_places
    rows = dock.rows
    found["controls"] = [control.station for control in line.controls]
    found["places"] = {
        "lat": layer_places.lat[rows].tolist(),
        "lon": layer_places.lon[rows].tolist(),
        "height": chart.shown.profile.built.tolist(),
        "undulation": layer_places.undulation[rows].tolist(),
        "straight": line.straight[line.rows].tolist(),
        "flat": line.flat[line.rows].tolist(),
        "chainage": chart.shown.profile.chainage.tolist(),
    }
    found["drawn"] = {
        name: [len(artist.get_xdata()), str(artist.get_linestyle()), artist._unscaled_dash_pattern[1]]
        for name, artist in chart._tried._lines.items()
    }
    found["described"] = tried().bar.text.toolTip()
    chart.draw()
    picture("what_if")
    THINGS["level"] = {name: values.copy() for name, values in chart.over.lines.items()}
    dock.views.setCurrentIndex(1)
    chart.draw()
    found["straight view"] = [
        float(np.nanmax(np.abs(chart.over.lines[name] - THINGS["level"][name]))) for name in ("straight", "flat")
    ]
    found["design above level"] = float(np.nanmax(np.abs(chart.shown.profile.design - chart.shown.profile.level)))
    picture("what_if_straight")
    dock.views.setCurrentIndex(0)
    found["read anew"] = read_anew()
    found["same file"] = digest() == before
    SEEN["choose"] = found


def read_anew(filtered=""):
    """The layer is read again, with all stations or some: the chainages of the points chosen then."""
    review, layer = plugin().review, THINGS["residuals"]
    before = review.subject.stations
    if layer.subsetString() != filtered:
        layer.setSubsetString(filtered)
    else:
        review.subject.read()
    until(lambda: review.subject.stations is not before, "the layer read anew")
    return [point.chainage for point in tried().points]


def hand_over():
    """The button opens the form with the chord."""
    tried().bar.use.click()
    form = until(lambda: plugin().forms and plugin().forms[-1], "the form")
    parameters = form.createProcessingParameters()
    SEEN["form"] = {
        "entry": form.algorithm().id(),
        "given": {key: str(parameters.get(key)) for key in ("DESIGN", "CHAINAGE_A", "CHAINAGE_B", "HEIGHT_UNIT")},
        "heights": [parameters.get("HEIGHT_A"), parameters.get("HEIGHT_B")],
        "controls": [[control.chainage, control.height] for control in tried().line.controls],
        "stations": str(parameters.get("STATIONS")),
        "layer": THINGS["stations"].id(),
        "undulation": str(parameters.get("UNDULATION")),
        "messages": messages(),
    }
    form.close()
    iface.messageBar().clearWidgets()


def leave():
    dock, chart, found = profile(), profile().chart, {}
    iface.mainWindow().activateWindow()
    chart.setFocus()
    QTest.keyClick(chart, Qt.Key.Key_Escape)
    found["left"] = [tried().active, tried().bar.isVisible(), dock.line.isChecked(), chart.over is not None]
    found["ranges"] = chart.ranges == THINGS["ranges"]
    click(chart, at("1+250"))
    found["selects again"] = THINGS["residuals"].selectedFeatureCount()
    # Two selected stations are the line at once; with Ctrl the very point of the chart is taken.
    click(chart, at("0+450"))
    click(chart, at("2+000"), CONTROL)
    dock.line.click()
    found["of the selection"] = [control.chainage for control in tried().line.controls]
    QTest.keyClick(chart, Qt.Key.Key_Escape)
    dock.line.click()
    for station, up in (("0+425", 15), ("1+975", 45)):
        there = at(station) if station in chart.shown.station else None
        x, y = chart.drawing.upper.transData.transform((float(station.replace("+", "")), float(chart.drawing.built[5])))
        there = there or QPoint(round(x), round(chart.height() - y - up))
        THINGS.setdefault("pixels", []).append(there)
        click(chart, there, CONTROL)
    found["points"] = [[c.chainage, c.height, c.station] for c in tried().points]
    found["ends"] = [values.tolist() for values in chart.over.ends]
    # The keyboard alone: to the ends with Home and End, taken with Enter.
    QTest.keyClick(chart, Qt.Key.Key_Escape)
    dock.line.click()
    for key in (Qt.Key.Key_Home, Qt.Key.Key_Return, Qt.Key.Key_End, Qt.Key.Key_Return):
        QTest.keyClick(chart, key)
    found["keys"] = [control.chainage for control in tried().line.controls]
    click(chart, at("1+000"))
    found["third begins anew"] = [len(tried().points), tried().line is None]
    click(chart, at("1+000"))
    found["the same twice"] = [len(tried().points), tried().bar.text.text()]
    found["station gone"] = [read_anew("station <> '2+100'"), read_anew("station <> '1+000'"), read_anew()]
    dock.axes.setCurrentIndex(dock.axes.findData("Birch"))
    dock.axes.activated.emit(dock.axes.currentIndex())
    found["another axis"] = [tried().active, len(tried().points), chart.over is None]
    tried().bar.leave.click()
    found["left by the button"] = [tried().active, dock.line.isChecked()]
    SEEN["leave"] = found


def dark():
    """The same in the host's dark theme; two stations of Birch."""
    QgsApplication.setUITheme("Night Mapping")
    QCoreApplication.processEvents()
    dock, chart = profile(), profile().chart
    dock.line.click()
    stations = chart.shown.station
    for station in (stations[0], stations[-1]):
        click(chart, at(station))
    point_at(stations[len(stations) // 2])
    chart.draw()
    picture("what_if_dark")
    QTest.keyClick(chart, Qt.Key.Key_Escape)
    QgsApplication.setUITheme("default")


def many():
    """20,000 stations: what the pointer asks for while the second point follows it."""
    count = 20_000
    rows = [
        (["long", 1.0 * k, 50.0, 0.001 * (k % 7)], QgsGeometry.fromPointXY(QgsPointXY(500000.0 + k, 5540000.0)))
        for k in range(count)
    ]
    layer = added_layer(
        "Many",
        "Point?crs=EPSG:32631",
        ("axis:string", "chainage:double", "design_h:double", "residual:double"),
        rows,
        {"units": {"height_name": "metre", "chainage_name": "metre"}},
    )
    plugin().review.subject.set_layer(layer)
    dock, chart = profile(), profile().chart
    chart.draw()
    dock.line.click()
    started = process_time()
    tried().pick(100)
    first = process_time() - started
    width = chart.width()
    places = [QPoint(round(width * (0.3 + 0.5 * k / 40)), chart.height() // 4) for k in range(40)]
    mouse(chart, QEvent.Type.MouseMove, places[0])
    started = process_time()
    for place in places[1:]:
        mouse(chart, QEvent.Type.MouseMove, place)
    SEEN["many"] = {
        "first": round(first, 3),
        "each": round((process_time() - started) / 39, 4),
        "line": len(tried().line.chainage),
        "follows": tried().line.controls[1].station == chart.hover,
    }
    QTest.keyClick(chart, Qt.Key.Key_Escape)
    SEEN["scale"] = QApplication.primaryScreen().devicePixelRatio()


play(widen, compute, choose, hand_over, leave, dark, many)
