"""Runs inside the plain window: opens each window of the plugin once, and takes its picture. See ``test_plain.py``."""

from pathlib import Path

from qgis.core import QgsApplication, QgsProject
from qgis.gui import QgsProcessingAlgorithmDialogBase
from qgis.PyQt.QtCore import QObject, Qt, QUrl, pyqtSlot
from qgis.PyQt.QtGui import QDesktopServices
from qgis.PyQt.QtTest import QTest
from qgis.PyQt.QtWidgets import QApplication, QMessageBox
from qgis.utils import iface
from stage import (
    PLACE,
    RANGE,
    SEEN,
    Clicker,
    dock_names,
    load_plugin,
    looked,
    messages,
    panel,
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


class Browser(QObject):
    """In place of the user's browser: keeps what it is to show."""

    def __init__(self):
        super().__init__()
        self.shown = []

    @pyqtSlot(QUrl)
    def show(self, url):
        self.shown.append(url.toLocalFile())


def forms():
    windows = QApplication.topLevelWidgets()
    return [w for w in windows if isinstance(w, QgsProcessingAlgorithmDialogBase) and w.isVisible()]


def example():
    SEEN["kind"] = type(iface).__name__
    assert load_plugin()
    clicker = Clicker("Temporary folder")
    trigger("tautline_open_example")
    SEEN["asked"] = clicker.done()
    until_drawn()
    settle()
    SEEN["layers"] = len(QgsProject.instance().mapLayers())
    picture("plain_example")


def flagged():
    trigger("tautline_flagged_open")
    subject, dock = plugin().review.subject, plugin().review.docks["flagged"]
    subject.set_current(subject.row_named("Alder", "0+850"))
    settle()
    dock.decide("reading error", "")
    subject.set_current(subject.row_named("Alder", "1+650"))
    settle()
    plugin().review.docks["profile"].chart.draw()
    SEEN["flagged"] = {"listed": dock.list.model().rowCount(), "messages": messages()}
    picture("plain_flagged")


def what_if():
    profile = plugin().review.docks["profile"]
    profile.line.click()
    profile.what_if.pick(3)
    profile.what_if.pick(40)
    profile.chart.draw()
    SEEN["what_if"] = profile.what_if.bar.isVisible()
    picture("plain_what_if")
    profile.what_if.leave()


def table():
    profile = plugin().review.docks["profile"]
    profile.values.click()
    settle()
    picture("plain_table")
    profile.values.click()


def follow_up():
    """Each form of the menu of reports, filled."""
    SEEN["forms"] = {}
    for action in plugin().review.docks["profile"].follow_up.menu().actions():
        if not action.data():
            continue
        before = len(forms())
        action.trigger()
        form = until(lambda before=before: len(forms()) > before and plugin().forms[-1], action.text())
        settle()
        SEEN["forms"][form.algorithm().id()] = form.windowTitle()
        picture(f"plain_{form.algorithm().name()}", form)
        form.close()
        settle()


def guided():
    trigger("tautline_guided_run")
    panel().heights.take_file(str(RANGE / "heights.csv"))
    looked()
    picture("plain_guided")
    panel().run_button.click()
    until(lambda: panel().run is not None or panel().outcome.told(), "the run begun")
    until(lambda: panel().run is None, "the run's end")
    settle()
    SEEN["guided"] = panel().outcome.told()
    picture("plain_guided_result")


def typed():
    """A list typed for the axis that is there, of three lines."""
    panel().heights.typed_button.click()
    window = until(lambda: panel().typed if panel().typed and panel().typed.isVisible() else None, "the list's window")
    QApplication.clipboard().setText("Alder\t0+000\t2450.10\nAlder\t0+050\t2450.11\nAlder\there\t2450.12")
    window.activateWindow()
    window.view.setFocus()
    QTest.keyClick(window.view, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    until(lambda: not window.model()._timer.isActive(), "the lines checked")
    settle()
    SEEN["typed"] = [list(told) for told in window.model().result.told.values()]
    picture("plain_typed", window)
    clicker = Clicker(QMessageBox.StandardButton.Discard)
    window.close()
    SEEN["given_up"] = clicker.done()
    settle()


def guide_pages():
    """Both entries of the menu that show a page of the guide."""
    browser = Browser()
    QDesktopServices.setUrlHandler("file", browser, "show")
    try:
        for name in ("tautline_guide", "tautline_method"):
            trigger(name)
    finally:
        QDesktopServices.unsetUrlHandler("file")
    SEEN["pages"] = [Path(path).is_file() and Path(path).name for path in browser.shown]


def slide():
    from tautline.plugin import slide as maker

    dock, path = plugin().review.docks["profile"], PLACE / "slide.png"
    started = maker.make(dock, plugin().review.subject.layer, str(path), dock.axis)
    SEEN["told"] = until(lambda: [text for text in messages() if "slide.png" in text], "the message", messages)
    SEEN["slide"] = [started is not None, path.is_file()]


def dark():
    QgsApplication.setUITheme("Night Mapping")
    settle()
    plugin().review.docks["profile"].chart.draw()
    picture("plain_dark_guided")
    plugin().review.docks["flagged"].setUserVisible(True)
    settle()
    picture("plain_dark")
    QgsApplication.setUITheme("default")
    settle()


def leave():
    SEEN["docks"] = dock_names(hidden=True)
    SEEN["unloaded"] = unload_plugin()
    SEEN["left"] = dock_names(hidden=True)


play(widen, example, flagged, what_if, table, follow_up, guided, typed, guide_pages, slide, dark, leave)
