"""Calls from threads that Python has not made go to one that it has."""

import _thread
import threading

import pytest

from tautline.algorithms.core import geodesy
from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.python_thread import in_python_thread


@in_python_thread
def name_of_thread():
    return threading.current_thread().name


@in_python_thread
def nested():
    return name_of_thread()


def elsewhere(function):
    """Call ``function`` in a thread that the module threading knows nothing of; its result or its error."""
    answer, done = [], threading.Lock()
    done.acquire()

    def run():
        try:
            answer.append(function())
        except Exception as error:  # noqa: BLE001 - handed on
            answer.append(error)
        done.release()

    _thread.start_new_thread(run, ())
    assert done.acquire(timeout=20)
    return answer[0]


def test_main_thread_stays():
    assert name_of_thread() == threading.main_thread().name and nested() == threading.main_thread().name


def test_foreign_thread_is_left():
    assert elsewhere(name_of_thread).startswith("tautline") and elsewhere(nested).startswith("tautline")
    assert elsewhere(name_of_thread) == elsewhere(nested), "always the same thread"


def test_results_and_errors_come_back():
    def way():
        return geodesy.to_latitude_longitude([500000.0], [0.0], "EPSG:32631")

    lat, lon = elsewhere(way)
    assert (lat[0], lon[0]) == pytest.approx((0.0, 3.0), abs=1e-12)
    assert isinstance(elsewhere(lambda: geodesy.ellipsoid_of("EPSG:nope")), InputError)
