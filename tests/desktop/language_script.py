"""Runs inside the real window in another language, with the archive installed: opens what the plugin shows, looks for
texts that do not fit and for texts left in English. See ``test_language_window.py``.
"""

import os
from pathlib import Path

from clipping import clipped
from qgis.core import QgsApplication, QgsProject, QgsVectorLayer
from qgis.PyQt.QtWidgets import (
    QApplication,
    QComboBox,
    QHeaderView,
    QPushButton,
    QTabBar,
    QTextEdit,
    QToolButton,
    QWidget,
)
from stage import (
    PLACE,
    SEEN,
    docks,
    looked,
    panel,
    picture,
    play,
    plugin,
    settle,
    tasks,
    trigger,
    until,
    until_drawn,
    widen,
)


def note(name, widget, choices=True):
    """Take the picture of a window, and what is cut off in it."""
    settle()
    SEEN.setdefault("clipped", {})[name] = clipped(widget)
    SEEN.setdefault("texts", {})[name] = [widget.windowTitle(), *texts(widget, choices)]
    picture(name, widget)


def texts(window, choices=True):
    """Every text of the widgets of a window, seen or waiting to be. ``choices``: those of lists too, but for lists of
    layers and fields; the lists of a form hold words of the command line.
    """
    found = []
    for widget in window.findChildren(QWidget):
        for name in ("text", "title", "toolTip", "placeholderText", "accessibleName"):
            said = getattr(widget, name, None)
            if callable(said) and not isinstance(widget, QTextEdit):
                found.append(said())
        if isinstance(widget, QTabBar):
            found += [widget.tabText(number) for number in range(widget.count())]
        if choices and type(widget) is QComboBox:
            found += [widget.itemText(number) for number in range(widget.count())]
        if isinstance(widget, QHeaderView) and widget.model() is not None:
            asked = range(widget.count())
            found += [str(widget.model().headerData(number, widget.orientation())) for number in asked]
    return [text for text in found if text]


def sample(name):
    """A file of the example, as installed."""
    import tautline

    return Path(tautline.__file__).parent / "sample_layers" / "range" / name


def install():
    import qgis.utils
    from pyplugin_installer import instance

    instance().installFromZipFile(os.environ["TAUTLINE_ARCHIVE"])
    until(lambda: "tautline" in qgis.utils.active_plugins, "the plugin installed and started")
    SEEN["language"] = QgsApplication.instance().translation()
    widen()


def example():
    from tautline.plugin import example

    example.ask_place = lambda window: str(PLACE)
    trigger("tautline_open_example")
    until_drawn()
    trigger("tautline_flagged_open")
    settle()
    for dock in docks():
        note(dock.objectName(), dock)
    picture("example")
    SEEN["layers"] = sorted(layer.name() for layer in QgsProject.instance().mapLayers().values())


def flagged():
    """Each page of the docks that shows on demand."""
    dock = plugin().review.docks["flagged"]
    dock.raise_()
    subject = plugin().review.subject
    subject.set_current(subject.row_named("Alder", "0+850"))
    settle()
    note("decision", dock)


def menus():
    """Texts of the menus that buttons of the docks open."""
    SEEN["menus"] = {}
    for dock in docks():
        for button in [*dock.findChildren(QToolButton), *dock.findChildren(QPushButton)]:
            if button.menu() is not None:
                SEEN["menus"][f"{dock.objectName()} {button.text()}"] = [one.text() for one in button.menu().actions()]


def guided():
    trigger("tautline_guided_run")
    panel().heights.take_file(str(sample("heights.csv")))
    looked()
    note("guided", panel())
    panel().run_button.click()
    until(lambda: panel().run is not None or panel().outcome.told(), "the run begun")
    until(lambda: panel().run is None, "the run's end", tasks)
    note("guided_ended", panel())


def typed():
    panel().heights.typed_button.click()
    until(lambda: panel().typed.isVisible(), "the list's window")
    note("typed", panel().typed)
    panel().typed.close()


def forms():
    """The form of each toolbox entry, at the size the host gives it."""
    from tautline.plugin import toolbox

    for entry in sorted(one.id() for one in plugin().provider.algorithms()):
        form = toolbox.form(entry, {})
        form.show()
        QApplication.processEvents()
        note(entry.replace(":", "_"), form, choices=False)
        form.close()
        settle()


def documents():
    """The pages that tell the result in the other language."""
    import processing

    layers = QgsProject.instance().mapLayers().values()
    vectors = [one for one in layers if isinstance(one, QgsVectorLayer)]
    layer = next(one for one in vectors if one.fields().indexOf("design_h") >= 0)
    made = {"HTML": str(PLACE / "report.html"), "PDF": str(PLACE / "report.pdf")}
    processing.run("tautline:reviewreport", {"STATIONS": layer, **made})
    SEEN["page"] = Path(made["HTML"]).read_text(encoding="utf-8")


play(install, example, flagged, menus, guided, typed, forms, documents)
