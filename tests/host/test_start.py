"""What the host's start imports: identities and forms. What a run needs comes when it first runs.

That is what keeps the start short on any machine; a time could not be asserted.
"""

import os
import pathlib
import subprocess
import sys

import pytest

pytest.importorskip("qgis.core")
ROOT = pathlib.Path(__file__).resolve().parents[2]
ENTRIES = {path.stem for path in (ROOT / "algorithms").glob("*.py")}
# Beside the entries and the parameters of their families: what forms are made of, and what is said at once. The core's
# geodesy, since pyproj is not to be imported first in a thread that Qt made.
AT_START = {
    "core.choices",
    "core.errors",
    "core.geodesy",
    "core.misclosure",
    "core.python_thread",
    "core.units",
    "entry.base",
    "entry.collector",
    "entry.parameter_builders",
    "language.translation",
}
# And where there is a window: what tells from a project's layers whether one of them was made by a run.
IN_THE_WINDOW = {
    "core.input_record",
    "entry.messages",
    "entry.recorded_chain",
    "entry.run_record",
    "entry.trial_runs",
    "styles.record_property",
}


def imported_by(doing):
    """Modules of algorithms, rooms left out, that a fresh host has imported after ``doing``, code that has a
    ``plugin``."""
    code = (
        "import sys, os; sys.path.insert(0, sys.argv[1]); import tests.conftest as conftest\n"
        "from qgis.testing import start_app\n"
        "start_app(cleanup=False)\n"
        "plugin = sys.modules[conftest.NAME].classFactory(None)\n"
        f"{doing}\n"
        "rooms = [name for name, one in sys.modules.items() if hasattr(one, '__path__')]\n"
        "print('imported', *(set(sys.modules) - set(rooms)), flush=True); os._exit(0)\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, str(ROOT)],
        capture_output=True,
        text=True,
        check=True,
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
    )
    told = [line for line in done.stdout.splitlines() if line.startswith("imported ")]
    package = "tautline.algorithms."
    return {name[len(package) :] for name in told[-1].split() if name.startswith(package)}


def is_light(name):
    return name in ENTRIES or name in AT_START or name.endswith(".parameters")


def test_entries_are_made_without_what_their_runs_need():
    found = imported_by("plugin.initProcessing()")
    assert ENTRIES - {"__init__"} <= found and AT_START <= found
    assert not [name for name in found if not is_light(name)]


def test_the_window_begins_without_readers_and_looks(window_library):
    found = imported_by("plugin.initProcessing(); import tautline.plugin.review.docks")
    assert IN_THE_WINDOW <= found
    assert not [name for name in found - IN_THE_WINDOW if not is_light(name)]
