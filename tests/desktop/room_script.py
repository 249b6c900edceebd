"""Runs inside the real window, at 100 % and at 200 %: how much room the docks need, what they remember, and the slide
they make. See ``test_room.py``.
"""

import shutil

from qgis.core import QgsApplication, QgsProject, QgsRasterLayer, QgsVectorLayer
from qgis.PyQt.QtCore import QCoreApplication
from qgis.PyQt.QtGui import QImage
from qgis.PyQt.QtWidgets import QApplication
from qgis.utils import iface
from stage import (
    PLACE,
    RANGE,
    SEEN,
    dock_names,
    docks,
    load_plugin,
    messages,
    picture,
    play,
    plugin,
    settle,
    trigger,
    until,
    until_drawn,
)

THINGS = {}


def size():
    """1600 by 1000 at 100 %, 1280 by 800 pixels of the screen at 200 %."""
    window = iface.mainWindow()
    ratio = SEEN["ratio"] = window.devicePixelRatioF()
    wide, high = (1600, 1000) if ratio == 1.0 else (round(1280 / ratio), round(800 / ratio))
    SEEN["asked"] = [wide, high]
    window.showNormal()
    window.setGeometry(0, 0, wide, high)
    until(lambda: window.height() <= max(high, window.minimumSizeHint().height()), "the window's size")
    SEEN["bare"] = [window.minimumSizeHint().width(), window.minimumSizeHint().height()]


def compute():
    load_plugin()
    from tautline.plugin import toolbox

    folder = THINGS["folder"] = PLACE / "work"
    folder.mkdir()
    for name in ("axis.gpkg", "heights.csv", "heights.csvt", "imagery.tif"):
        shutil.copyfile(RANGE / name, folder / name)
    axis, stations = f"{folder / 'axis.gpkg'}|layername=axis", str(folder / "stations.gpkg")
    toolbox.run("tautline:placestations", {"INPUT": str(folder / "heights.csv"), "AXIS": axis, "OUTPUT": stations})
    project = QgsProject.instance()
    project.addMapLayer(QgsRasterLayer(str(folder / "imagery.tif"), "Imagery"))
    for name in ("A first result", "The second result"):
        path = str(folder / f"{name.split()[1]}.gpkg")
        toolbox.run(
            "tautline:designheights", {"STATIONS": stations, "AXIS": axis, "UNDULATION": "field", "OUTPUT": path}
        )
        THINGS[name] = QgsVectorLayer(path, name, "ogr")
        project.addMapLayer(THINGS[name])
        # Ten stations more that are flagged; the axis layer states the tolerance.
        layer = THINGS[name]
        assert layer.startEditing()
        for feature in list(layer.getFeatures("\"status\" = 'within'"))[:10]:
            layer.changeAttributeValue(feature.id(), layer.fields().indexOf("status"), "high")
        assert layer.commitChanges()
    layer = THINGS["The second result"]
    project.setCrs(layer.crs())
    extent = layer.extent()
    extent.scale(1.2)
    iface.mapCanvas().setExtent(extent)


def open_all():
    """All docks of the plugin at once."""
    trigger("tautline_guided_run")
    trigger("tautline_flagged_open")
    trigger("tautline_profile_open")
    plugin().review.subject.set_layer(THINGS["The second result"])
    settle()
    until_drawn()
    dock, window = plugin().review.docks["flagged"], iface.mainWindow()
    dock.raise_()
    dock.setUserVisible(True)
    settle()
    QCoreApplication.processEvents()
    profile = plugin().review.docks["profile"]
    profile.chart.draw()
    view = dock.list
    rows = [
        line
        for line in range(view.model().rowCount())
        if view.visualRect(view.model().index(line, 0)).bottom() < view.viewport().height()
    ]
    area = dock.pages.currentWidget()
    SEEN["room"] = {
        "docks": dock_names(hidden=True),
        "least": {one.objectName(): one.minimumSizeHint().height() for one in docks(hidden=True)},
        "window": [
            window.width(),
            window.height(),
            window.minimumSizeHint().width(),
            window.minimumSizeHint().height(),
        ],
        "rows": len(rows),
        "listed": view.model().rowCount(),
        "list_in_sight": view.mapTo(area, view.rect().bottomLeft()).y() <= area.height(),
        "tabbed": sorted(one.objectName() for one in window.tabifiedDockWidgets(dock)),
        "chart": [profile.chart.width(), profile.chart.height()],
    }
    picture("room")
    profile.line.click()
    profile.chart.setFocus()
    tried = profile.what_if
    tried.pick(3)
    tried.pick(40)
    profile.chart.draw()
    picture("room_what_if")
    tried.leave()


def dark():
    QgsApplication.setUITheme("Night Mapping")
    settle()
    plugin().review.docks["profile"].chart.draw()
    picture("room_dark")
    QgsApplication.setUITheme("default")
    settle()


def slide():
    """The slide of the axis shown, made in the background."""
    from tautline.plugin import slide as maker

    found, dock = {}, plugin().review.docks["profile"]
    found["actions"] = [action.objectName() for action in dock.export.menu().actions() if action.objectName()]
    path = THINGS["folder"] / "slide.png"
    given = maker.parameters(iface.mapCanvas(), plugin().review.subject.layer, path, dock.axis)
    found["imagery"] = QgsProject.instance().mapLayer(given["IMAGERY"]).name()
    found["axis"] = given["SLIDE_AXIS"]
    before = len(messages())
    THINGS["started"] = maker.make(dock, plugin().review.subject.layer, str(path), dock.axis)
    found["in the background"] = not path.exists()
    until(lambda: len(messages()) > before, "the message")
    found["told"] = messages()[-1]
    image = QImage(str(path))
    found["size"] = [image.width(), image.height()]
    shutil.copyfile(path, PLACE.parent / "slide_made.png")
    iface.messageBar().clearWidgets()
    settle()
    maker.make(dock, plugin().review.subject.layer, str(THINGS["folder"] / "slide.gif"), dock.axis)
    until(lambda: any("SLIDE" in text for text in messages()), "the refusal", messages)
    found["refused"] = messages()[-1]
    iface.messageBar().clearWidgets()
    SEEN["slide"] = found


def reopen():
    """Saved and opened again: the docks show what they showed."""
    project, found = QgsProject.instance(), {}
    path = str(THINGS["folder"] / "project.qgz")
    assert project.write(path)
    found["clean"] = not project.isDirty()
    plugin().review.subject.set_layer(THINGS["A first result"])
    plugin().review.subject.set_layer(THINGS["The second result"])
    found["still clean"] = not project.isDirty()
    iface.newProject(False)
    settle()
    found["none"] = plugin().review.subject.layer is None
    assert project.read(path)
    settle()
    until(lambda: plugin().review.subject.layer is not None, "a layer under review")
    dock = plugin().review.docks["profile"]
    found["shown"] = [plugin().review.subject.layer.name(), dock.layers.currentText()]
    # The docks closed, opened when the project is there already.
    plugin().review.close()
    settle()
    iface.setActiveLayer(None)
    trigger("tautline_profile_open")
    found["opened later"] = plugin().review.subject.layer.name()
    SEEN["reopened"] = found
    SEEN["screens"] = [one.size().width() for one in QApplication.screens()]


play(size, compute, open_all, dark, slide, reopen)
