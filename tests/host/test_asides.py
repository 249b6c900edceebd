"""What goes on beside the window leaves nothing for Python's collector, which may clear it away in any thread."""

import gc
import weakref
from time import monotonic

import pytest

pytest.importorskip("qgis.core")


# Seconds, which cost nothing where what is waited for comes.
LIMIT = 60


class Kept:
    """Stands for a run whose layers belong to the window's thread."""


def let_live(condition):
    from qgis.PyQt.QtCore import QCoreApplication, QEvent, QEventLoop

    end = monotonic() + LIMIT
    while monotonic() < end:
        QCoreApplication.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 10)
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
        if condition():
            return
    raise AssertionError("what was waited for never came")


@pytest.mark.parametrize("forgotten", [False, True])
def test_nothing_is_left_once_it_has_ended(host, window_library, forgotten):
    from tautline.plugin import toolbox

    gc.collect()
    gc.disable()
    try:
        told, kept = [], Kept()
        seen = weakref.ref(kept)
        started = toolbox.aside("counting", lambda: 6 * 7, lambda value, error: told.append((value, error)))
        started.kept.append(kept)
        if forgotten:
            started.forget()
        del kept, started
        let_live(lambda: not toolbox.runs_going() and seen() is None)
        assert told == ([] if forgotten else [(42, None)])
    finally:
        gc.enable()


def test_nothing_is_left_of_a_run(toolbox, window_library):
    """Its context, whose layers belong to the window's thread, goes with the task."""
    from tautline.plugin import toolbox as window

    _, axis = toolbox.straight()
    gc.collect()
    gc.disable()
    try:
        told, kept = [], Kept()
        seen = weakref.ref(kept)
        parameters = {"AXIS": axis, "INTERVAL": 100.0, "OUTPUT": "TEMPORARY_OUTPUT"}
        started = window.start("tautline:generatestations", parameters, lambda done, _: told.append(done is not None))
        started.kept.append(kept)
        del kept, started
        let_live(lambda: not window.runs_going() and seen() is None)
        assert told == [True]
    finally:
        gc.enable()
