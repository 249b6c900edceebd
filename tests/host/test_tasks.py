"""Runs in tasks of the host, started as the window does and forgotten by whoever started them."""

import gc

from qgis.core import QgsApplication, QgsProject
from qgis.PyQt.QtCore import QCoreApplication, QEventLoop


def until_no_task():
    while QgsApplication.taskManager().countActiveTasks():
        QCoreApplication.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 20)
        gc.collect()
    QCoreApplication.processEvents()


def test_a_run_that_nobody_holds_lives_to_its_end(toolbox, window_library, monkeypatch):
    """Python's collection of garbage must not clear away what a thread of the host is working with."""
    from tautline.plugin import toolbox as plugin_toolbox

    swallowed, ended = [], []
    monkeypatch.setattr("sys.excepthook", lambda *error: swallowed.append(error))
    axis = toolbox.lines([{"at": [(20.0, 40.0), (20.0, 40.02)], "name": "axis"}])
    QgsProject.instance().addMapLayer(axis)
    for _ in range(5):
        parameters = {"AXIS": axis.id(), "INTERVAL": 1.0, "OUTPUT": "TEMPORARY_OUTPUT"}
        plugin_toolbox.start("tautline:generatestations", parameters, lambda done, refusal: ended.append(refusal))
        gc.collect()
    until_no_task()
    QgsProject.instance().removeMapLayer(axis.id())
    assert swallowed == [] and ended == [None] * 5


def test_something_aside_that_nobody_holds_lives_to_its_end(window_library):
    from tautline.plugin import toolbox as plugin_toolbox

    ended = []
    for number in range(5):
        plugin_toolbox.aside("aside", lambda number=number: number, lambda value, error: ended.append((value, error)))
        gc.collect()
    until_no_task()
    assert sorted(ended) == [(number, None) for number in range(5)]
