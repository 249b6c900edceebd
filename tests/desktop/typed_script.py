"""Runs inside the real window: types and pastes height lists as a person does, and writes down what it saw."""

import math
import os
from time import perf_counter

from qgis.core import QgsGeometry, QgsPointXY, QgsProject
from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtGui import QColor, QGuiApplication, QPalette
from qgis.PyQt.QtTest import QTest
from qgis.PyQt.QtWidgets import QApplication, QMessageBox
from stage import (
    PLACE,
    SEEN,
    Clicker,
    added_layer,
    load_plugin,
    looked,
    panel,
    picture,
    play,
    residuals_by_station,
    settle,
    trigger,
    until,
    widen,
)

KEY, CONTROL, NONE = Qt.Key, Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.NoModifier
STEP, NUMBER = 50.0, 21


def heights(per=1.0):
    """A level surface of 148.2 m but for a wave of 2 mm, as texts in units of ``per`` metres."""
    return [f"{(148.2 + 0.002 * math.sin(k)) / per:.4f}" for k in range(NUMBER)]


def typed():
    return panel().typed


def view():
    return typed().view


def press(key, modifier=NONE):
    """A key to whatever has the keyboard in the window of the list."""
    QTest.keyClick(typed().focusWidget(), key, modifier)
    QApplication.processEvents()


def type_text(text):
    for letter in text:
        QTest.keyClick(typed().focusWidget(), letter)
    QApplication.processEvents()


def enter(*texts):
    for text in texts:
        type_text(text)
        press(KEY.Key_Return)
    settle()


def paste(text):
    QGuiApplication.clipboard().setText(text)
    view().setFocus()
    press(KEY.Key_V, CONTROL)


def said():
    """{line from 1: (kind, sentence)}, once the lines are checked."""
    until(lambda: not typed().model()._timer.isActive(), "the lines checked")
    return {row + 1: list(told) for row, told in typed().model().result.told.items()}


def lines():
    return [[line[key] for key in ("station", "height", "offset", "remark")] for line in typed().model().lines()]


def open_list():
    panel().heights.typed_button.click()
    until(lambda: typed().isVisible(), "the list's window")
    typed().activateWindow()
    view().setFocus()


def residuals():
    """Run, and give the residuals by station."""
    looked()
    panel().run_button.click()
    until(lambda: panel().run is not None or panel().outcome.told(), "the run begun")
    until(lambda: panel().run is None, "the run's end")
    settle()
    outcome = panel().outcome.told()
    found = QgsProject.instance().mapLayersByName("Residuals")
    assert found, outcome
    return residuals_by_station(found[0])


def papers(name):
    """Sheet, report and slide of the residuals, by the forms of the panel's menu as it fills them."""
    import processing

    from tautline.plugin import follow_up_forms

    layer = QgsProject.instance().mapLayersByName("Residuals")[0]
    made = {
        key: str(PLACE / f"{name}{ending}") for key, ending in (("CSV", ".csv"), ("HTML", ".html"), ("SLIDE", ".png"))
    }

    def run(entry, **more):
        return processing.run(entry, {**follow_up_forms.known(entry, layer), **more})

    scheduled = run("tautline:scheduleadjustments", OUTPUT="memory:", CSV=made["CSV"])
    run("tautline:reviewreport", HTML=made["HTML"], SLIDE=made["SLIDE"])
    with open(made["CSV"], encoding="utf-8-sig") as sheet, open(made["HTML"], encoding="utf-8") as page:
        told = {"sheet": sheet.read().splitlines(), "page": page.read()}
    unit = [word for word in ("US ft", "ft", "m") if f"({word})" in told["page"]]
    return {
        "moves": [f["move"] for f in scheduled["OUTPUT"].getFeatures()],
        "sheet": told["sheet"][:3],
        "unit": unit[0],
        "slide": os.path.getsize(made["SLIDE"]),
    }


# --- the steps


def load():
    assert load_plugin()
    line = QgsGeometry.fromPolylineXY([QgsPointXY(500_000, 5_000_000), QgsPointXY(501_200, 5_000_000)])
    added_layer("Axis", "LineString?crs=EPSG:32633", ["name:string(20)"], [(["pier"], line)])
    trigger("tautline_guided_run")
    panel().accuracy.place.setFilePath(str(PLACE / "results.gpkg"))
    panel().design.fill(panel().settings().__class__(design="level", height_a="148.2"))
    looked()


def typing():
    open_list()
    written = heights()
    for k in range(6):
        enter(f"0+{50 * k:03d}", written[k])
    SEEN["typed"] = lines()
    SEEN["clean"] = said()
    # Digits exchanged, an order broken, a station doubled, a step too wide, no station.
    enter("0+300", "184.2001", "0+250", "148.2000", "0+500", "148.2000")
    type_text("abc")
    press(KEY.Key_Tab)
    type_text("148.2")
    press(KEY.Key_Return)
    settle()
    SEEN["doubts"] = said()
    SEEN["doubts_outcome"] = typed().outcome.told()
    view().go_to(6, 1)
    settle()
    picture("typed_doubts", typed())
    before = lines()
    view().go_to(7, 0)
    press(KEY.Key_D, CONTROL)
    after_delete = lines()
    press(KEY.Key_Z, CONTROL)
    press(KEY.Key_I, CONTROL)
    after_insert = lines()
    press(KEY.Key_Z, CONTROL)
    view().go_to(6, 1)
    press(KEY.Key_Delete)
    after_clear = lines()
    press(KEY.Key_Z, CONTROL)
    SEEN["undo"] = [before == lines(), len(before) - len(after_delete), len(after_insert) - len(before), after_clear[6]]
    view().selectAll()
    press(KEY.Key_C, CONTROL)
    SEEN["copied"] = QGuiApplication.clipboard().text().splitlines()[0].split("\t")[:4]
    press(KEY.Key_D, CONTROL)
    SEEN["emptied"] = lines()


def pasting():
    rows = ["Sta\tElev (ft)\tRemarks\tClerk"]
    rows += [f"{k // 2}+{50 * (k % 2):02d}\t{text}\tsheet {k}\tJ" for k, text in enumerate(heights(0.3048))]
    paste("\r\n".join(rows))
    SEEN["feet"] = {"lines": lines()[:2], "told": said(), "unit": typed().units().height_name}
    SEEN["feet"]["notes"] = typed().notes.told()
    typed().keep.click()
    SEEN["feet"]["visible"] = typed().isVisible()
    looked()
    layer = QgsProject.instance().mapLayer(panel().settings().heights)
    SEEN["kept"] = [layer.providerType(), layer.source().split("/")[-1], layer.featureCount(), layer.isSpatial()]
    panel().design.fill(panel().settings().__class__(design="level", height_a=f"{148.2 / 0.3048:.9f}"))
    looked()
    SEEN["feet"]["settings"] = vars(panel().settings())
    picture("typed_panel", panel())
    SEEN["feet"]["residuals"] = residuals()
    SEEN["feet"]["papers"] = papers("feet")


def editing():
    """The same list again: one table, written anew; then in metres with decimal commas."""
    open_list()
    SEEN["reopened"] = lines()[:1]
    view().selectAll()
    press(KEY.Key_D, CONTROL)
    view().go_to(0, 0)
    text = "\n".join(f"{int(STEP) * k};{text.replace('.', ',')}" for k, text in enumerate(heights()))
    paste(f"Station (m);Level (m)\n{text}")
    SEEN["metres_notes"] = typed().notes.told()
    SEEN["metres_told"] = said()
    second_typing()
    typed().keep.click()
    looked()
    panel().design.fill(panel().settings().__class__(design="level", height_a="148.2"))
    looked()
    SEEN["metres_settings"] = vars(panel().settings())
    SEEN["metres_residuals"] = residuals()
    SEEN["metres_papers"] = papers("metres")
    layers = [layer for layer in QgsProject.instance().mapLayers().values() if layer.name() == "Typed list"]
    SEEN["one_layer"] = [len(layers), layers[0].featureCount()]


def second_typing():
    typed().again.click()
    SEEN["blind"] = {"lines": lines(), "shown": view().model() is typed().second}
    other = heights()
    other[3], other[5] = other[3].replace("148", "184"), "148.9"
    rows = [f"{int(STEP) * k}\t{text}" for k, text in enumerate(other) if k != 9]
    paste("\n".join(rows))
    picture("typed_second", typed())
    typed().compare.click()
    differences = typed().differences
    SEEN["differences"] = [
        [differences.index(row, column).data() for column in range(4)] for row in range(differences.rowCount())
    ]
    SEEN["compared"] = typed().outcome.told()
    SEEN["take_closed"] = not typed().take.isEnabled()
    table = typed().differing
    table.setFocus()
    press(KEY.Key_Return)
    table.setCurrentIndex(differences.index(1, 4))
    type_text("148,201")
    press(KEY.Key_Return)
    settle()
    table.setCurrentIndex(differences.index(2, 2))
    picture("typed_compared", typed())
    press(KEY.Key_Space)
    SEEN["choices"] = differences.choices
    typed().take.click()
    SEEN["taken"] = lines()


def reopened():
    """The project saved, closed and opened: the list is there, and is still one that can be typed on."""
    project = QgsProject.instance()
    path = str(PLACE / "typed.qgz")
    assert project.write(path)
    project.clear()
    settle()
    assert project.read(path)
    looked()
    open_list()
    SEEN["after_reopening"] = [len(lines()), lines()[3]]
    press(KEY.Key_Escape)
    SEEN["left"] = typed().isVisible()


def bad_inputs():
    open_list()
    view().selectAll()
    press(KEY.Key_D, CONTROL)
    typed().keep.click()
    SEEN["nothing"] = [typed().isVisible(), typed().notes.told()]
    paste("1+000\t1,345\n1+050\t1,346\n")
    SEEN["open_sign"] = [said(), typed().outcome.told()]
    press(KEY.Key_Z, CONTROL)
    paste(" \n ")
    SEEN["blank_paste"] = typed().notes.told()
    paste("1+000\tx\ty\tz\tleft out\n")
    SEEN["letters"] = [said(), typed().notes.told()]
    press(KEY.Key_Z, CONTROL)
    paste("1+000\t148.2\t\t" + "r" * 300)
    typed().keep.click()
    SEEN["long"] = [typed().isVisible(), typed().notes.told()]
    typed().reject()
    SEEN["asked"] = QUESTIONS.done()["asked"]


def many_rows():
    panel().heights.box.setLayer(None)
    looked()
    open_list()
    rows = "\n".join(f"{10 * k}\t{148.2 + 0.002 * math.sin(k):.4f}" for k in range(20_000))
    began = perf_counter()
    paste(rows)
    after = perf_counter()
    SEEN["many"] = [typed().model().rowCount(), said()]
    view().go_to(10_000, 1)
    type_text("184.2")
    press(KEY.Key_Return)
    edited = perf_counter()
    typed().model().check()
    checked = perf_counter()
    SEEN["many_doubt"] = said()
    typed().keep.click()
    SEEN["seconds"] = [after - began, edited - after, checked - edited, perf_counter() - checked]
    SEEN["many_kept"] = QgsProject.instance().mapLayer(panel().heights.values()["heights"]).source().split("=")[-1]


def dark_picture():
    if not os.environ.get("TAUTLINE_PICTURES"):
        return
    palette, roles = QPalette(), QPalette.ColorRole
    for role, colour in (
        (roles.Window, "#2b2b2b"),
        (roles.WindowText, "#eeeeee"),
        (roles.Base, "#1e1e1e"),
        (roles.AlternateBase, "#262626"),
        (roles.Text, "#eeeeee"),
        (roles.Button, "#3a3a3a"),
        (roles.ButtonText, "#eeeeee"),
        (roles.Highlight, "#2a82da"),
        (roles.HighlightedText, "#ffffff"),
    ):
        palette.setColor(role, QColor(colour))
    QApplication.setPalette(palette)
    open_list()
    view().go_to(10_000, 1)
    settle()
    picture("typed_dark", typed())


QUESTIONS = Clicker(QMessageBox.StandardButton.Discard)
play(widen, load, typing, pasting, editing, reopened, bad_inputs, many_rows, dark_picture)
