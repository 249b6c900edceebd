"""Runs inside the real window: walks every field of every window of the plugin, and works them by keys alone. See
``test_access.py``.
"""

import re
import shutil

from qgis.core import QgsApplication, QgsProject, QgsRasterLayer, QgsVectorLayer
from qgis.PyQt.QtCore import QPoint, Qt
from qgis.PyQt.QtTest import QTest
from qgis.PyQt.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractSlider,
    QAbstractSpinBox,
    QApplication,
    QComboBox,
    QHeaderView,
    QLabel,
    QLineEdit,
    QMenu,
    QPlainTextEdit,
    QScrollArea,
    QScrollBar,
    QTextEdit,
    QWidget,
)
from qgis.utils import iface
from stage import (
    PLACE,
    RANGE,
    SEEN,
    docks,
    load_plugin,
    looked,
    panel,
    picture,
    play,
    plugin,
    settle,
    trigger,
    until,
    widen,
)

FIELDS = (QAbstractButton, QAbstractItemView, QAbstractSlider, QAbstractSpinBox, QComboBox, QLineEdit)
FIELDS += (QPlainTextEdit, QTextEdit)
# Parts of a field that is named itself: the line of a box, the list that it opens, the heads of a table.
PARTS = (QComboBox, QAbstractSpinBox, QHeaderView)
MNEMONIC = re.compile("(?<!&)&([^&\\s])")
KEY, CONTROL = Qt.Key, Qt.KeyboardModifier.ControlModifier
THINGS = {}


def compute():
    widen()
    load_plugin()
    from tautline.plugin import toolbox

    folder = PLACE / "work"
    folder.mkdir()
    for name in ("axis.gpkg", "heights.csv", "heights.csvt", "imagery.tif"):
        shutil.copyfile(RANGE / name, folder / name)
    axis, stations = f"{folder / 'axis.gpkg'}|layername=axis", str(folder / "stations.gpkg")
    toolbox.run("tautline:placestations", {"INPUT": str(folder / "heights.csv"), "AXIS": axis, "OUTPUT": stations})
    path = str(folder / "residuals.gpkg")
    asked = {"STATIONS": stations, "AXIS": axis, "UNDULATION": "field", "LINE": "fitted", "LINE_TOLERANCE": 0.01}
    toolbox.run("tautline:designheights", {**asked, "OUTPUT": path})
    project, layer = QgsProject.instance(), QgsVectorLayer(path, "Residuals", "ogr")
    project.addMapLayer(QgsRasterLayer(str(folder / "imagery.tif"), "Imagery"))
    project.addMapLayer(QgsVectorLayer(axis, "Axis", "ogr"))
    project.addMapLayer(layer)
    project.setCrs(layer.crs())
    THINGS["layer"] = layer


def open_all():
    trigger("tautline_guided_run")
    trigger("tautline_flagged_open")
    trigger("tautline_profile_open")
    plugin().review.subject.set_layer(THINGS["layer"])
    plugin()._open_guide(dict.fromkeys(("residuals", "axis", "stations", "bars"), THINGS["layer"]))
    profile = plugin().review.docks["profile"]
    for button in (profile.fix, profile.beside, profile.values):
        if not button.isChecked():
            button.click()
    settle()
    looked()
    panel().type_list()
    settle()
    SEEN["docks"] = [dock.objectName() for dock in docks(hidden=True)]


def words_of(widget):
    """What is said of a field, besides what it holds."""
    if widget.accessibleName():
        return widget.accessibleName()
    window = widget.window()
    buddies = [label.text() for label in window.findChildren(QLabel) if label.buddy() is widget]
    if buddies:
        return buddies[0]
    return widget.text() if isinstance(widget, QAbstractButton) else ""


def fields(window):
    """The fields of a dock or a dialog, whether they are shown just now or not."""
    for widget in window.findChildren(QWidget):
        if not isinstance(widget, FIELDS) or isinstance(widget, (QScrollBar, QHeaderView)):
            continue
        parents, at = [], widget.parentWidget()
        while at is not None and at is not window:
            parents.append(at)
            at = at.parentWidget()
        if widget.window() is not window.window():
            continue  # of a dialog that hangs on the dock
        part = any(isinstance(one, PARTS) or one.inherits("QComboBoxPrivateContainer") for one in parents)
        host = widget.objectName().startswith("qt_") or widget.parentWidget().inherits("QgsDockWidgetTitleBar")
        inner = type(widget).__name__ in ("QLineEditIconButton",) or widget.inherits("QLineEditIconButton")
        corner = widget.inherits("QTableCornerButton")
        if not (part or host or inner or corner):
            yield widget


def told(widget):
    kind = type(widget).__name__
    text = widget.text() if isinstance(widget, (QAbstractButton,)) else ""
    return f"{kind} {widget.objectName()} {text}".strip()


def mnemonics(window):
    """[(letter, text)] of what one sees in a window."""
    found = []
    for widget in window.findChildren(QWidget):
        text = ""
        if isinstance(widget, QLabel) and widget.buddy() is not None or isinstance(widget, QAbstractButton):
            text = widget.text()
        if widget.isVisibleTo(window) and widget.window() is window.window():
            found += [(letter.lower(), text) for letter in MNEMONIC.findall(text)]
    return found


def scrolled_in(widget):
    """The scrolled area around a field, 0 for none: what is scrolled stands where it is scrolled to."""
    while widget is not None and not isinstance(widget.parentWidget(), QScrollArea):
        widget = widget.parentWidget()
    return 0 if widget is None else id(widget.parentWidget())


def chain(window):
    """Places of the fields in the order of the Tab key, as one sees them from the window's corner."""
    found, first = [], window
    at = first.nextInFocusChain()
    inside = {id(one): one for one in fields(window)}
    while at is not first and len(found) < 500:
        if id(at) in inside and at.isVisibleTo(window) and at.focusPolicy() != Qt.FocusPolicy.NoFocus:
            place = at.mapTo(window, QPoint(0, 0))
            found.append([place.y(), place.x(), at.height(), told(at), scrolled_in(at)])
        at = at.nextInFocusChain()
    return found


def walk():
    """Names, focus and mnemonics of every field; menus; the host's letters."""
    bar = iface.mainWindow().menuBar()
    SEEN["host"] = sorted({one.lower() for action in bar.actions() for one in MNEMONIC.findall(action.text())})
    SEEN["windows"] = {}
    for window in [*docks(hidden=True), panel().typed]:
        name = window.objectName() or type(window).__name__
        mine = list(fields(window))
        SEEN["windows"][name] = {
            "count": len(mine),
            "nameless": [told(one) for one in mine if not words_of(one).strip()],
            "not by Tab": [
                told(one) for one in mine if not int(getattr(one.focusPolicy(), "value", one.focusPolicy())) & 1
            ],
            "mnemonics": mnemonics(window),
            "chain": chain(window),
            "title": window.windowTitle(),
        }
    menus = [menu for window in docks(hidden=True) for menu in window.findChildren(QMenu)]
    menus += [action.menu() for action in iface.pluginMenu().actions() if action.text() == "Tautline"]
    SEEN["menus"] = [
        [one.lower() for action in menu.actions() for one in MNEMONIC.findall(action.text())]
        for menu in menus
        if menu is not None and any(action.text() for action in menu.actions())
    ]
    chart = plugin().review.docks["profile"].chart
    SEEN["chart"] = [chart.accessibleName(), chart.accessibleDescription()]


def press(widget, key, modifier=Qt.KeyboardModifier.NoModifier):
    QTest.keyClick(widget, key, modifier)
    QApplication.processEvents()


def by_keys():
    """Chart, table, list and 'What if' without a pointer."""
    panel().typed.done(0)
    profile, flagged = plugin().review.docks["profile"], plugin().review.docks["flagged"]
    subject, chart, found = plugin().review.subject, profile.chart, {}
    profile.setUserVisible(True)
    iface.mainWindow().activateWindow()
    until(iface.mainWindow().isActiveWindow, "the window in front")
    chart.setFocus()
    chart.drawing.figure.canvas.draw()
    press(chart, KEY.Key_Home)
    press(chart, KEY.Key_Right)
    found["second"] = chart.current
    press(chart, KEY.Key_Space)
    found["selected"] = subject.selected().tolist()
    press(chart, KEY.Key_End)
    press(chart, KEY.Key_Space, CONTROL)
    found["two selected"] = [len(subject.selected()), chart.current, len(chart.drawing.x)]
    press(chart, KEY.Key_PageUp)
    found["ten back"] = chart.current
    ranges = chart.ranges
    press(chart, KEY.Key_Plus)
    found["zoomed"] = bool(chart.ranges.x[1] - chart.ranges.x[0] < ranges.x[1] - ranges.x[0])
    profile.show_whole()
    # A line through two stations, taken back by Escape.
    subject.select([])
    press(profile.line, KEY.Key_Space)
    found["trying"] = profile.what_if.active
    chart.setFocus()
    press(chart, KEY.Key_Home)
    press(chart, KEY.Key_Space)
    press(chart, KEY.Key_End)
    found["follows"] = profile.what_if.line is not None and len(profile.what_if.points) == 1
    press(chart, KEY.Key_Return)
    found["points"] = [len(profile.what_if.points), profile.what_if.line is not None]
    picture("access_what_if")
    press(chart, KEY.Key_Escape)
    found["left"] = not profile.what_if.active
    table = profile.table
    table.setFocus()
    table.setCurrentIndex(table.model().index(0, 0))
    press(table, KEY.Key_Down)
    found["table"] = [table.currentIndex().row(), int(subject.current == profile.rows[1])]
    flagged.setUserVisible(True)
    flagged.list.setFocus()
    flagged.step(1)
    before = subject.current
    press(flagged.list, KEY.Key_Down)
    found["listed"] = subject.current != before
    # Radio buttons of the guided run answer to arrows.
    guided = panel()
    guided.setUserVisible(True)
    # The axes of the sample state a design, which greys the question out: without them it is asked.
    guided.structure.by_stations.setChecked(True)
    looked()
    guided.design.buttons["chord"].setChecked(True)
    guided.design.buttons["chord"].setFocus()
    found["designs"] = [guided.design.shown()]
    for _step in range(5):
        press(guided.design.buttons[guided.design.shown()], KEY.Key_Down)
        found["designs"].append(guided.design.shown())
    guided.structure.by_layer.setChecked(True)
    looked()
    SEEN["by keys"] = found


def is_line(widget):
    return isinstance(widget, QLineEdit)


def contrast(edit, theme):
    """[theme, what is typed in, ratio of its text to its ground] as WCAG 2.1 defines it."""
    edit.ensurePolished()
    palette, found = edit.palette(), []
    for color in (palette.text().color(), palette.base().color()):
        parts = (color.redF(), color.greenF(), color.blueF())
        linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
        found.append(0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2])
    low, high = sorted(found)
    return [theme, words_of(edit) or told(edit), round((high + 0.05) / (low + 0.05), 2)]


def looks():
    """Pictures of all of it, bright and dark."""
    for theme in ("default", "Night Mapping"):
        QgsApplication.setUITheme(theme)
        settle()
        looked()
        for dock in docks(hidden=True):
            dock.setUserVisible(True)
            settle()
            if dock.objectName() == "tautline_profile":
                dock.chart.draw()
            picture(f"access_{theme.split()[0].lower()}_{dock.objectName()}", dock)
            SEEN.setdefault("contrast", []).extend(contrast(one, theme) for one in fields(dock) if is_line(one))
        panel().type_list()
        settle()
        view = panel().typed.view
        for letter in "0+000":
            QTest.keyClick(panel().typed.focusWidget() or view, letter)
        settle()
        picture(f"access_{theme.split()[0].lower()}_typed", panel().typed)
        SEEN["contrast"] += [contrast(one, theme) for one in view.findChildren(QLineEdit)]
        panel().typed.done(0)
    QgsApplication.setUITheme("default")
    settle()


play(compute, open_all, walk, by_keys, looks)
