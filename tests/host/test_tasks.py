"""Runs in tasks of the host, started as the window does and forgotten by whoever started them."""

import gc
import threading

import pytest
from qgis.core import QgsApplication, QgsExpressionContextUtils, QgsProcessingFeatureSourceDefinition, QgsProject
from qgis.PyQt.QtCore import QCoreApplication, QEventLoop


def until_no_task():
    from tautline.plugin.toolbox import runs_going

    while QgsApplication.taskManager().countActiveTasks() or runs_going():
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


def test_one_task_of_ours_at_a_time_is_with_the_host(window_library):
    """The next begins when the one before has ended; what is forgotten before it began never does."""
    from tautline.plugin import toolbox as plugin_toolbox

    def of_the_host():
        return len([task for task in QgsApplication.taskManager().tasks() if task.description() == "aside"])

    begun, then, ended = [], [], []
    for number in range(4):
        started = plugin_toolbox.aside(
            "aside", lambda number=number: begun.append(number), lambda *_: ended.append(then.append(of_the_host()))
        )
        # The first may have ended, of which the window hears later.
        assert of_the_host() == 1 and (number == 0 or plugin_toolbox.runs_going())
        if number == 2:
            started.forget()
    until_no_task()
    assert begun == [0, 1, 3] and then == [1, 1, 1] and len(ended) == 3


def test_something_aside_that_nobody_holds_lives_to_its_end(window_library):
    from tautline.plugin import toolbox as plugin_toolbox

    ended = []
    for number in range(5):
        plugin_toolbox.aside("aside", lambda number=number: number, lambda value, error: ended.append((value, error)))
        gc.collect()
    until_no_task()
    assert sorted(ended) == [(number, None) for number in range(5)]


@pytest.mark.parametrize("aside", [False, True])
def test_no_run_clears_away_what_is_the_windows(toolbox, window_library, aside):
    """A layer of the window's, destroyed in a run's thread, ends the host."""
    from tautline.plugin import toolbox as plugin_toolbox

    cleared, ended = [], []

    class Circle:
        def __init__(self):
            self.itself = self

        def __del__(self):
            cleared.append(threading.get_ident())

    axis = toolbox.lines([{"at": [(20.0, 40.0), (20.0, 40.02)], "name": "axis"}])
    QgsProject.instance().addMapLayer(axis)
    wait, kept = QEventLoop.ProcessEventsFlag.WaitForMoreEvents, gc.get_threshold()
    gc.set_threshold(30)
    try:
        if aside:
            plugin_toolbox.aside(
                "aside", lambda: sum(Circle() is None for _ in range(100)), lambda value, error: ended.append(error)
            )
        else:
            parameters = {"AXIS": axis.id(), "INTERVAL": 1.0, "OUTPUT": "TEMPORARY_OUTPUT"}
            plugin_toolbox.start("tautline:generatestations", parameters, lambda done, refusal: ended.append(refusal))
        while not ended:
            Circle()
            QCoreApplication.processEvents(wait)
        until_no_task()
    finally:
        gc.set_threshold(*kept)
        QgsProject.instance().removeMapLayer(axis.id())
    gc.collect()
    assert ended == [None] and set(cleared) == {threading.main_thread().ident}
    assert gc.isenabled()


def project_path():
    """What the project keeps ready for expressions says of its place."""
    return QgsExpressionContextUtils.projectScope(QgsProject.instance()).variable("project_path")


def test_no_run_throws_away_what_the_project_keeps_for_expressions(toolbox, window_library, monkeypatch, tmp_path):
    """The window may be drawing its map with it, and finding nothing there ends the host."""
    from tautline.algorithms.entry import run_sequence
    from tautline.plugin import toolbox as plugin_toolbox

    run, kept, ended = run_sequence.run, [], []

    def watched(entry, *given):
        # The project does not notice this change of its place: it is told anew only where it is asked for layers.
        QgsProject.instance().setOriginalPath("before")
        assert threading.current_thread() is not threading.main_thread() and project_path() == "before"
        QgsProject.instance().setOriginalPath("after")
        try:
            return run(entry, *given)
        finally:
            kept.append((entry.name(), project_path()))

    def make(entry, **given):
        before = len(ended)
        plugin_toolbox.start(f"tautline:{entry}", given, lambda done, refusal: ended.append(refusal))
        while len(ended) == before:
            QCoreApplication.processEvents(QEventLoop.ProcessEventsFlag.WaitForMoreEvents)

    monkeypatch.setattr(run_sequence, "run", watched)
    stations, axis = toolbox.straight()
    stations = toolbox.saved(stations, tmp_path / "stations.gpkg")
    QgsProject.instance().addMapLayers([stations, axis])
    residuals, later = (str(tmp_path / name) for name in ("residuals.gpkg", "later.gpkg"))
    make("designheights", STATIONS=stations.id(), AXIS=axis.id(), TOLERANCE=0.01, OUTPUT=residuals)
    # Compared with what it was made from, which is in the project, and in no project.
    make("scheduleadjustments", STATIONS=residuals, OUTPUT="TEMPORARY_OUTPUT")
    stations.selectByIds(stations.allFeatureIds()[:8])
    part = QgsProcessingFeatureSourceDefinition(stations.id(), True)
    make("designheights", STATIONS=part, AXIS=axis.id(), TOLERANCE=0.01, OUTPUT=later)
    make("comparesurveys", SURVEYS=[residuals, later], OUTPUT="TEMPORARY_OUTPUT")
    QgsProject.instance().removeMapLayers([stations.id(), axis.id()])
    QgsProject.instance().setOriginalPath("")
    assert ended == [None] * 4
    names = ("designheights", "scheduleadjustments", "designheights", "comparesurveys")
    assert kept == [(name, "before") for name in names]
