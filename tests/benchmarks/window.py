"""The window at size, as ratios within one run: /usr/bin/python3 tests/benchmarks/window.py [PART] [STATIONS]

Parts: profile, guided, typed, comparing. The docks live in a window without a screen, on layers in a GeoPackage. Each
measure stands against the host reading the same stations once, all fields and points (for typed lists: splitting the
same text into cells). ``all``: CPU of the window's own thread; ``at once``: the longest the window's loop was held, in
CPU time of its thread; with what others did while it waited for them, at most; and by the clock, which other work on
the machine lengthens. ``all threads``: with what goes on beside the window.
"""

import argparse
import math
import os
import pathlib
import subprocess
import sys
import tempfile
import time

ROOT = pathlib.Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "tests"))
import conftest  # noqa: E402  (registers the package by its name)

PARTS = {"profile": 100_000, "guided": 100_000, "typed": 20_000, "comparing": 100_000}
_TICK = 0.005
_KEPT = []


def _host():
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    start = getattr(conftest.host, "__wrapped__", None) or conftest.host.__pytest_wrapped__.obj
    host = start()
    next(host)
    _KEPT.append(host)


def _window():
    """What the docks ask of the host's window: a stand-in with its own main window, map and bars."""
    from qgis.core import QgsLayerTreeModel, QgsProject
    from qgis.gui import QgsLayerTreeView, QgsMapCanvas, QgsMessageBar
    from qgis.PyQt.QtCore import QObject, pyqtSignal
    from qgis.PyQt.QtWidgets import QMainWindow

    class Window(QObject):
        currentLayerChanged = pyqtSignal(object)

        def __init__(self):
            super().__init__()
            self.window, self.canvas, self.bar = QMainWindow(), QgsMapCanvas(), QgsMessageBar()
            self.window.setCentralWidget(self.canvas)
            self.window.resize(1600, 1000)
            self.tree = QgsLayerTreeView(self.window)
            self.model = QgsLayerTreeModel(QgsProject.instance().layerTreeRoot(), self)
            self.tree.setModel(self.model)
            self.active = None

        def mainWindow(self):  # noqa: N802 - the host's names, here and below
            return self.window

        def mapCanvas(self):  # noqa: N802
            return self.canvas

        def messageBar(self):  # noqa: N802
            return self.bar

        def layerTreeView(self):  # noqa: N802
            return self.tree

        def activeLayer(self):  # noqa: N802
            return self.active

        def addDockWidget(self, area, dock):  # noqa: N802
            self.window.addDockWidget(area, dock)

    window = Window()
    window.window.show()
    _KEPT.append(window)
    return window


class Held:
    """Lets the window's loop go on until ``done()``, and notes how long the loop was held."""

    def __init__(self):
        self.cpu = self.clock = self.whole = self.own = self.every = self.beside = 0.0

    def until(self, begin, done, most=600.0):
        from qgis.PyQt.QtCore import QEventLoop, QTimer

        loop, timer, started = QEventLoop(), QTimer(), []

        def tick():
            now = time.perf_counter(), time.thread_time(), time.process_time()
            if self._last is not None:
                self.clock = max(self.clock, now[0] - self._last[0])
                self.cpu = max(self.cpu, now[1] - self._last[1])
                self.beside = max(self.beside, now[2] - self._last[2])
            self._last = now
            if not started:
                started.append(now)
                begin()
            elif done() or now[0] - started[0][0] > most:
                loop.quit()

        self._last, process = None, time.process_time()
        timer.timeout.connect(tick)
        timer.start(int(1000 * _TICK))
        loop.exec()
        timer.stop()
        end = time.perf_counter(), time.thread_time()
        self.whole, self.own = end[0] - started[0][0], end[1] - started[0][1]
        self.every = time.process_time() - process
        return self


def said(name, held, unit, owed=""):
    """One line: what was held, in units of ``unit`` seconds and in milliseconds."""
    whole, once, every = (f"{value / unit:6.2f} ({1000 * value:6.0f} ms)" for value in (held.own, held.cpu, held.every))
    print(
        f"{name:42s} all {whole}   at once {once}, waiting too {1000 * held.beside:4.0f} ms, "
        f"clock {1000 * held.clock:4.0f} ms   all threads {every}, clock {held.whole:5.2f} s   {owed}",
        flush=True,
    )


# --- layers


def make(folder, number):
    """An axis, ``number`` stations with heights as points and as a list, and the residuals that a run gives: a straight
    line of 10 km, as-built up to 3 mm off it."""
    line = [(["long"], [(450_000.0, 5_000_000.0), (450_000.0, 5_010_000.0)])]
    _written(folder, "axis", "LineString?crs=EPSG:32633&field=name:string", line)
    places = [(450_000.0, 5_000_000.0 + 10_000.0 * k / (number - 1)) for k in range(number)]
    heights = [250.0] * number
    for _ in range(2):
        rows = [([f"p{k}", height], [place]) for k, (height, place) in enumerate(zip(heights, places))]
        _written(folder, "points", "Point?crs=EPSG:32633&field=mark:string&field=height:double", rows)
        design, chainages = _residuals(folder)
        # The line runs through the first and the last of them.
        heights = [value + 0.003 * math.sin(math.pi * 0.45 * k) for k, value in enumerate(design)]
        heights[-1] = design[-1]
    rows = [([f"{int(at // 1000)}+{at % 1000:07.3f}", height], []) for at, height in zip(chainages, heights)]
    _written(folder, "list", "NoGeometry?field=station:string&field=height:double", rows)


def _residuals(folder):
    """Run designheights on the points; the design heights and chainages, metres, in the order of the points."""
    import processing
    from qgis.core import QgsVectorLayer

    parameters = {"STATIONS": "points", "AXIS": "axis", "OUTPUT": "residuals"}
    parameters = {key: os.path.join(folder, f"{name}.gpkg") for key, name in parameters.items()}
    processing.run("tautline:designheights", {**parameters, "TOLERANCE": 0.00299})
    layer = QgsVectorLayer(parameters["OUTPUT"], "residuals", "ogr")
    return zip(*((feature["design_h"], abs(feature["chainage"])) for feature in layer.getFeatures()))


def _written(folder, name, kind, rows):
    """A GeoPackage of rows (attributes, points of its line or point)."""
    from qgis.core import (
        QgsCoordinateTransformContext,
        QgsFeature,
        QgsGeometry,
        QgsPointXY,
        QgsVectorFileWriter,
        QgsVectorLayer,
    )

    layer, features = QgsVectorLayer(kind, name, "memory"), []
    for attributes, places in rows:
        feature = QgsFeature(layer.fields())
        feature.setAttributes(attributes)
        if places:
            points = [QgsPointXY(*place) for place in places]
            line = QgsGeometry.fromPolylineXY(points) if len(points) > 1 else QgsGeometry.fromPointXY(points[0])
            feature.setGeometry(line)
        features.append(feature)
    layer.dataProvider().addFeatures(features)
    options = QgsVectorFileWriter.SaveVectorOptions()
    options.driverName = "GPKG"
    writer = getattr(QgsVectorFileWriter, "writeAsVectorFormatV3", None) or QgsVectorFileWriter.writeAsVectorFormatV2
    writer(layer, os.path.join(folder, f"{name}.gpkg"), QgsCoordinateTransformContext(), options)


def opened(folder, name):
    """A layer of the folder, in the project."""
    from qgis.core import QgsProject, QgsVectorLayer

    layer = QgsVectorLayer(os.path.join(folder, f"{name}.gpkg"), name, "ogr")
    assert layer.isValid(), name
    layer.loadDefaultStyle()
    QgsProject.instance().addMapLayer(layer, False)
    return layer


def reading(layer):
    """CPU seconds of the host reading all features of a layer once, the least of three times."""
    times = []
    for _ in range(3):
        start = time.thread_time()
        for feature in layer.getFeatures():
            feature.attributes(), feature.geometry()
        times.append(time.thread_time() - start)
    return min(times)


# --- parts


def profile(folder, number):
    """The profile's dock and that of flagged stations: first picture, pointing, an edit, a selection."""
    from qgis.PyQt.QtCore import QCoreApplication, QEvent, QPointF, Qt
    from qgis.PyQt.QtGui import QMouseEvent
    from qgis.PyQt.QtWidgets import QApplication

    from tautline.plugin.review.docks import Review

    window = _window()
    layer = opened(folder, "residuals")
    unit = reading(layer)
    review = Review(window, lambda parameters: None)
    _KEPT.append(review)
    review.open_profile()
    QCoreApplication.processEvents()
    chart, subject, drawn = review.docks["profile"].chart, review.subject, []
    subject.set_layer(None)
    # What compares the layers with their inputs is measured by itself.
    Held().until(lambda: None, lambda: not review.staleness.busy)
    chart.mpl_connect("draw_event", lambda _event: drawn.append(True))

    def until_drawn(begin, name, owed=""):
        drawn.clear()
        said(name, Held().until(begin, lambda: drawn and not subject._timer.isActive()), unit, owed)

    until_drawn(lambda: subject.set_layer(layer), "profile: first picture", "owed 1 s")
    best, lower = [], chart.drawing.lower
    row, high = chart._residual_inside(), chart.figure.bbox.height
    for first in range(5):
        start = time.thread_time()
        for k in range(20):
            # Up and down the chart, from station to station.
            place = first + (k * 7919) % number
            x, y = lower.transData.transform((chart.drawing.x[place], row[place]))
            at = QPointF(x, high - y)
            QApplication.sendEvent(
                chart,
                QMouseEvent(
                    QEvent.Type.MouseMove,
                    at,
                    QPointF(chart.mapToGlobal(at.toPoint())),
                    Qt.MouseButton.NoButton,
                    Qt.MouseButton.NoButton,
                    Qt.KeyboardModifier.NoModifier,
                ),
            )
            QCoreApplication.processEvents()
            assert chart.hover >= 0
        best.append((time.thread_time() - start) / 20)
    print(f"{'profile: pointing, each':42s} all {min(best) / unit:6.2f} ({1000 * min(best):6.1f} ms)   owed 30 ms")
    layer.startEditing()
    ids = subject.stations.ids
    at = layer.fields().indexOf("residual")
    until_drawn(
        lambda: layer.changeAttributeValue(int(ids[number // 2]), at, 0.011), "profile: a residual changed by hand"
    )
    until_drawn(lambda: layer.deleteFeature(int(ids[5])), "profile: a station deleted")
    until_drawn(lambda: layer.commitChanges(), "profile: edits saved")
    review.open_flagged()
    QCoreApplication.processEvents()
    subject.set_layer(None)
    until_drawn(lambda: subject.set_layer(layer), "both docks: first picture")
    layer.startEditing()
    until_drawn(
        lambda: layer.changeAttributeValue(int(ids[number // 3]), at, 0.012), "both docks: a residual changed by hand"
    )
    until_drawn(lambda: layer.undoStack().undo(), "both docks: the edit undone")
    layer.rollBack()
    held = Held().until(lambda: layer.selectAll(), lambda: True)
    said("both docks: all stations selected", held, unit)


def guided(folder, number):
    """The guided run's first look at points and at a list of as many rows."""
    from tautline.plugin.guided.panel import GuidedPanel

    window = _window()
    panel = GuidedPanel(window)
    _KEPT.append(panel)
    from qgis.PyQt.QtCore import Qt

    window.addDockWidget(Qt.DockWidgetArea.RightDockWidgetArea, panel)
    axis = opened(folder, "axis")
    panel.structure.box.setLayer(axis)

    def quiet():
        return (
            not panel._timer.isActive()
            and not panel.understanding.found.busy
            and panel.understanding.settings == panel.settings()
        )

    Held().until(lambda: None, quiet)
    for name in ("points", "list"):
        layer = opened(folder, name)
        Held().until(lambda: panel.heights.box.setLayer(None), quiet)
        unit = reading(layer)
        held = Held().until(lambda layer=layer: panel.heights.box.setLayer(layer), quiet)
        assert panel.understanding.found.ready, panel.understanding.found
        said(f"guided run: first look at {name}", held, unit, "owed 1 s, 0.1 s at once")


def typed(folder, number):
    """Pasting into the typed list, one change after it, keeping it."""
    from qgis.PyQt.QtWidgets import QApplication

    from tautline.algorithms.language.units import Units
    from tautline.plugin.guided.typed_list import TypedList

    text = "\n".join(f"{10 * k}\t{148.2 + 0.002 * math.sin(k):.4f}" for k in range(number))
    times = []
    for _ in range(3):
        start = time.thread_time()
        [line.split("\t") for line in text.split("\n")]
        times.append(time.thread_time() - start)
    unit = min(times)
    window = _window()
    dialog = TypedList(None, ["long"], Units("metre", "metre"), "", window.mainWindow())
    _KEPT.append(dialog)
    dialog.open()
    QApplication.clipboard().setText(text)
    model = dialog.model()

    def quiet():
        return not model._timer.isActive() and not getattr(model, "busy", False)

    said(f"typed list: {number} rows pasted", Held().until(dialog.view.paste, quiet), unit, "owed 0.3 s at once")
    cell = model.index(number // 2, 1)
    said("typed list: one height changed", Held().until(lambda: model.setData(cell, "184.2"), quiet), unit)
    said("typed list: the change undone", Held().until(model.undo, quiet), unit)
    said("typed list: the paste undone", Held().until(model.undo, quiet), unit)
    said("typed list: pasted again (redo)", Held().until(model.redo, quiet), unit)
    said("typed list: kept", Held().until(dialog.accept, lambda: True), unit)


def comparing(folder, number):
    """Comparing the residuals with the points and the axis that they were made from."""
    from tautline.plugin.review.staleness import Staleness

    window = _window()
    layer = opened(folder, "residuals")
    unit = reading(layer)
    staleness = Staleness(window)
    _KEPT.append(staleness)
    looked = []
    staleness.looked.connect(lambda: looked.append(True))
    held = Held().until(staleness.look, lambda: looked and not staleness.busy)
    assert not staleness.steps, staleness.line
    said("comparing a layer with its inputs", held, unit, "owed 0.1 s at once")


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("part", nargs="?", choices=sorted([*PARTS, "all", "make"]), default="all")
    parser.add_argument("stations", nargs="?", type=int)
    parser.add_argument("--in", dest="folder", help="folder with layers made before")
    asked = parser.parse_args()
    if asked.folder and asked.part != "all":
        _host()
        if asked.part == "make":
            make(asked.folder, asked.stations)
        else:
            globals()[asked.part](asked.folder, asked.stations or PARTS[asked.part])
        sys.stdout.flush()
        os._exit(0)
    for part in PARTS if asked.part == "all" else [asked.part]:
        size = str(asked.stations or PARTS[part])
        with tempfile.TemporaryDirectory() as place:
            for step in ("make", part) if part != "typed" else (part,):
                subprocess.run([sys.executable, __file__, step, size, "--in", place], check=True)
