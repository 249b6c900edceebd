"""Runs inside the real window: opens the example and takes its pictures. See ``pictures.py``."""

from pathlib import Path

from qgis.core import QgsProject
from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtWidgets import QDockWidget
from qgis.utils import iface
from stage import load_plugin, picture, play, plugin, settle, trigger, until, until_drawn

SIZE = (1600, 1000)


def bare_window():
    """The window without the host's own panels, which name vendors and the user's folders; the layers stay."""
    load_plugin()
    window = iface.mainWindow()
    for dock in window.findChildren(QDockWidget):
        if dock.objectName() != "Layers":
            dock.close()
    window.showNormal()
    window.setGeometry(0, 0, *SIZE)
    until(lambda: (window.width(), window.height()) == SIZE, "the window's size")


def opened():
    from tautline.plugin import example

    # Beside the profile: layers in a temporary folder would carry the host's mark for those.
    example.ask_place = lambda window: str(Path.home())
    trigger("tautline_open_example")
    room(layers=340, right=370, below=485)
    show_all()
    picture("example")


def review():
    """Two stations decided, the third under review; none with its date in sight."""
    plugin()._close_guide()
    trigger("tautline_flagged_open")
    settle()
    dock = plugin().review.docks["flagged"]
    room(layers=230, right=565, below=485)
    iface.messageBar().clearWidgets()
    subject = plugin().review.subject
    for axis, station, word in (("Alder", "0+850", "reading error"), ("Birch", "1+150", "measure again")):
        subject.set_current(subject.row_named(axis, station))
        settle()
        dock.decide(word, "")
    subject.set_current(subject.row_named("Alder", "1+650"))
    settle()
    show_all()
    picture("review")


def room(layers, right, below):
    """Widths of the layer tree and of the panels on the right, and the height of the profile."""
    window = iface.mainWindow()
    shown = {dock.objectName(): dock for dock in window.findChildren(QDockWidget) if dock.isVisible()}
    side = [name for name in shown if name in ("tautline_example_guide", "tautline_flagged")]
    wide = [shown[name] for name in ["Layers", *side]]
    window.resizeDocks(wide, [layers] + [right] * len(side), Qt.Orientation.Horizontal)
    window.resizeDocks([shown["tautline_profile"]], [below], Qt.Orientation.Vertical)
    settle()


def show_all():
    """The whole structure on the map that is left, drawn."""
    from tautline.plugin import example

    names = {"Residuals": "residuals", "Axis": "axis"}
    found = {names[one.name()]: one for one in QgsProject.instance().mapLayers().values() if one.name() in names}
    for one in QgsProject.instance().mapLayers().values():
        for key, word in (("bars", "Residual bars"), ("strip", "Profile strip")):
            if one.name().startswith(word):
                found[key] = one
    example.show_map(iface, found)
    until_drawn()
    plugin().review.docks["profile"].chart.draw()
    settle()


play(bare_window, opened, review)
