"""The real window on a screen of its own: driven by a script of this folder, what it saw read as JSON. Where the host
has no application, a plain window of its library takes its place (``plain_window.py``).

A script waits for what it wants to see, each condition with a limit of its own (``stage.py``); the limit here is for a
window that stands still where no script can tell, and for a busy machine: it costs nothing where the window ends.
"""

import contextlib
import hashlib
import json
import os
import shutil
import signal
import subprocess
import sys
from pathlib import Path

import pytest

HERE = Path(__file__).resolve().parent
ROOT = HERE.parents[1]
SAMPLES = ROOT / "sample_layers" / "range"
LIMIT = 1200
APPLICATION = shutil.which("qgis.bin") or shutil.which("qgis")


@contextlib.contextmanager
def virtual_screen(log):
    """A virtual screen while the block runs; gives its name, such as ':3'. ``log``: path of what the server says."""
    reading, writing = os.pipe()
    with open(log, "wb") as told:
        server = subprocess.Popen(
            ["Xvfb", "-displayfd", str(writing), "-screen", "0", "1600x1000x24", "-nolisten", "tcp"],
            pass_fds=[writing],
            stdout=told,
            stderr=told,
        )
        os.close(writing)
        with os.fdopen(reading) as answer:
            # Ends with a number when the screen is there, or with nothing when the server has died.
            number = answer.readline().strip()
        try:
            assert number, f"Xvfb did not start; see {log}"
            yield f":{number}"
        finally:
            server.terminate()
            server.wait(LIMIT)


@pytest.fixture(scope="session")
def screen(tmp_path_factory):
    with virtual_screen(tmp_path_factory.mktemp("screen") / "log.txt") as name:
        yield name


def _environment(screen, folder):
    environment = {
        key: value
        for key, value in os.environ.items()
        # A host of one's own building may need to be told where it lies.
        if not key.startswith(("QGIS_", "QT_")) or key == "QGIS_PREFIX_PATH"
    }
    for name in ("home", "runtime", "temporary"):
        (folder / name).mkdir(mode=0o700)
    environment.update(
        DISPLAY=screen,
        QT_QPA_PLATFORM="xcb",
        HOME=str(folder / "home"),
        LC_ALL="C.UTF-8",
        XDG_RUNTIME_DIR=str(folder / "runtime"),
        TMPDIR=str(folder / "temporary"),
        PYTHONDONTWRITEBYTECODE="1",
        # For ``stage.py``, which every script imports.
        PYTHONPATH=os.pathsep.join(filter(None, [str(HERE), os.environ.get("PYTHONPATH")])),
        TAUTLINE_SEEN=str(folder / "seen.json"),
        TAUTLINE_ROOT=str(ROOT),
        TAUTLINE_LIMIT=str(LIMIT),
    )
    return environment


def _window(plain):
    """The host's application; a ``plain`` window, or where the host has no application, that of plain_window.py."""
    if plain or APPLICATION is None:
        return [sys.executable, str(HERE / "plain_window.py")]
    return [APPLICATION, "--nologo", "--noversioncheck"]


def driven(screen, folder, script, archive=None, scale=1, language=None, plain=False):
    """Start the window with its profile in ``folder``, let ``script`` (a file of this folder) drive it; give what it
    saw. The profile has the checkout as plugin or, where an ``archive`` is to be installed, nothing. ``scale``: pixels
    of the screen in one of the window; ``language``: of the window, where it is not the host's own; ``plain``: without
    the host's application.
    """
    plugins = folder / "profiles" / "profiles" / "default" / "python" / "plugins"
    plugins.mkdir(parents=True)
    environment = _environment(screen, folder)
    if scale != 1:
        environment["QT_SCALE_FACTOR"] = str(scale)
    if archive is None:
        (plugins / "tautline").symlink_to(ROOT)
    else:
        environment["TAUTLINE_ARCHIVE"] = str(archive)
    command = [*_window(plain), "--profiles-path", str(folder / "profiles"), "--code", str(HERE / script)]
    if language is not None:
        command += ["--lang", language]
    with open(folder / "output.txt", "wb") as output:
        window = subprocess.Popen(
            command, env=environment, cwd=folder, stdout=output, stderr=output, start_new_session=True
        )
        try:
            code = window.wait(LIMIT)
        except subprocess.TimeoutExpired:
            code = f"still running after {LIMIT} s"
        finally:
            if window.poll() is None:
                os.killpg(window.pid, signal.SIGKILL)
                window.wait()
    told = (folder / "output.txt").read_text(errors="replace")[-4000:]
    if (folder / "seen.stack").is_file():
        told += (folder / "seen.stack").read_text(errors="replace")[:6000]
    assert (folder / "seen.json").is_file(), f"the window ended with {code} and reported nothing:\n{told}"
    found = json.loads((folder / "seen.json").read_text())
    assert "error" not in found, f"{found['error']}\n{told}"
    return found


@pytest.fixture(scope="session")
def drive(screen, tmp_path_factory):
    """A function that runs a script of this folder in a new window and gives what it saw."""
    return lambda script, scale=1: driven(screen, tmp_path_factory.mktemp("window"), script, scale=scale)


@pytest.fixture(scope="session")
def drive_installed(screen, tmp_path_factory):
    """The same for a window with an empty profile, in which the script installs an archive."""
    return lambda script, archive, language=None: driven(
        screen, tmp_path_factory.mktemp("window"), script, archive, language=language
    )


@pytest.fixture
def application():
    """For what only the host's application has."""
    if APPLICATION is None:
        pytest.skip("This host has no application: a plain window has neither its menus nor its dark theme.")


@pytest.fixture(scope="session")
def drive_plain(screen, tmp_path_factory):
    """The same in a plain window, whether the host has its application or not."""
    return lambda script: driven(screen, tmp_path_factory.mktemp("window"), script, plain=True)


@pytest.fixture(scope="session")
def expected():
    """The sample's stations as computed without the plugin; see sample_layers/README.md."""
    return json.loads((SAMPLES / "expected.json").read_text())["stations"]


def _digests():
    return {path.name: hashlib.sha256(path.read_bytes()).hexdigest() for path in SAMPLES.iterdir() if path.is_file()}


@pytest.fixture(scope="session", autouse=True)
def originals():
    """Digests of the sample's files before any window has seen them."""
    return _digests()


@pytest.fixture
def sample_digests():
    """Digests of the sample's files now."""
    return _digests()
