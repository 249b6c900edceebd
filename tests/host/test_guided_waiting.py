"""The guided run waits for other runs before it opens placed stations, and hears of a cancel meanwhile."""

from types import SimpleNamespace

import pytest

pytest.importorskip("qgis.core")


@pytest.fixture
def waiting(host, window_library, monkeypatch):
    """A GuidedRun of a list while another run goes on: the run, ``going`` to be emptied, and what it told."""
    from tautline.algorithms.core.errors import InputError
    from tautline.plugin.guided import running

    going, told = [True], []
    monkeypatch.setattr(running.needed, "counting", lambda settings, _understood: settings)
    monkeypatch.setattr(running.toolbox, "runs_going", lambda: bool(going))

    def opened(*_given):
        told.append("opened")
        raise InputError("The end of this test.")

    monkeypatch.setattr(running.kept_edits, "answer", opened)
    settings = SimpleNamespace(place="/nowhere/else.gpkg", heights="", drawn=False, axis=None)
    run = running.GuidedRun(settings, SimpleNamespace(is_list=True), "a run")
    monkeypatch.setattr(run, "_check_place", lambda: None)
    run.progressed.connect(lambda title, _percent: told.append(title))
    run.ended.connect(lambda outcome, text, _answer: told.append((outcome, text)))
    run.begin()
    return run, going, told


def lived(told, number):
    from qgis.PyQt.QtCore import QCoreApplication, QElapsedTimer, QEventLoop

    since = QElapsedTimer()
    since.start()
    while len(told) < number and since.elapsed() < 20_000:
        QCoreApplication.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 20)
    return told


def test_nothing_is_opened_until_the_other_run_has_ended(waiting):
    _run, going, told = waiting
    assert set(lived(told, 3)) == {"Waiting for another run to end"}
    going.clear()
    lived(told, len(told) + 2)
    assert told[-2:] == ["opened", (None, "The end of this test.")]


def test_a_cancel_is_heard_meanwhile(waiting):
    run, _going, told = waiting
    run.cancel()
    assert lived(told, 2)[-1] == (None, "Cancelled; no output was written.") and "opened" not in told


def test_a_forgotten_run_says_nothing_more(waiting):
    run, going, told = waiting
    run.forget()
    going.clear()
    assert not run._waiting.isActive() and told == ["Waiting for another run to end"]
