"""A hidden folder beside the outputs of one run, in which they are written before they are moved into place.

What a killed run leaves is such a folder with a list of what was on its way: the next run in the same place ends the
moves that had begun, or removes what was not complete.
"""

import json
import os
import shutil
import tempfile
from contextlib import suppress

from qgis.PyQt.QtCore import QLockFile

from .geopackage_tables import NotReplaced, drop_table

PREFIX = ".tautline-"
# A table on its way in a GeoPackage that stands already; no other name is ever dropped for a folder's list.
TABLE_PREFIX = "tautline_unfinished_"
_LIST = "moves.json"
_LOCK = "lock"


class StageFolder:
    """One such folder in ``place``, an existing folder; it is locked as long as this process has it.

    ``files``: [(path below the folder, name in ``place``)] to be moved, ``gone``: names in ``place`` to be removed,
    ``tables``: [(name of a GeoPackage in ``place``, table as written)].
    """

    def __init__(self, place):
        self.place = place
        self.path = tempfile.mkdtemp(prefix=PREFIX, dir=place)
        self.files, self.gone, self.tables = [], [], []
        self._lock = _lock(self.path)
        self._lock.tryLock(0)

    def slot(self):
        """A new folder in it, for one output and the files that belong to it."""
        return tempfile.mkdtemp(prefix="", dir=self.path)

    def note_table(self, file, table):
        """Before a table is begun in a GeoPackage of ``place``: should the run be killed, the next one removes it."""
        self.tables.append((file, table))
        self._note(ready=False)

    def move(self):
        """Move all files into place. A kill meanwhile leaves what the next run needs to end it."""
        if self.files or self.gone:
            self._note(ready=True)
            _move(self.path, self.place, self.files, self.gone)

    def remove(self):
        """Remove the folder with all that is still in it."""
        self._lock.unlock()
        shutil.rmtree(self.path, ignore_errors=True)

    def _note(self, *, ready):
        text = json.dumps({"ready": ready, "files": self.files, "gone": self.gone, "tables": self.tables})
        begun = os.path.join(self.path, _LIST + ".begun")
        with open(begun, "w", encoding="utf-8") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
        os.replace(begun, os.path.join(self.path, _LIST))


def settle_leftovers(place):
    """End or remove what killed runs left in a folder: (names that were put in place, number of folders removed).

    Folders of runs that are still going are left alone.
    """
    ended, removed = [], 0
    with os.scandir(place) as found:
        folders = [one.path for one in found if one.name.startswith(PREFIX) and one.is_dir(follow_symlinks=False)]
    for folder in folders:
        lock = _lock(folder)
        if not lock.tryLock(0):
            continue
        try:
            noted = _noted(folder)
            if noted["ready"] and not _overtaken(folder, place, noted["files"]):
                _move(folder, place, noted["files"], noted["gone"])
                ended += [name for _, name in noted["files"]]
            for file, table in noted["tables"]:
                drop_table(os.path.join(place, file), table)
        except (OSError, NotReplaced):
            # In use by another program; the next run tries again.
            lock.unlock()
            continue
        lock.unlock()
        shutil.rmtree(folder, ignore_errors=True)
        removed += 1
    return ended, removed


def _overtaken(folder, place, files):
    """Whether no move had begun, and what stands in place was written after the folder's list: a later run's, where
    the folder could not be settled by that one."""
    if not all(os.path.exists(os.path.join(folder, staged)) for staged, _ in files):
        return False
    written = os.stat(os.path.join(folder, _LIST)).st_mtime_ns
    standing = [os.path.join(place, name) for _, name in files]
    return any(os.path.exists(path) and os.stat(path).st_mtime_ns > written for path in standing)


def _lock(folder):
    lock = QLockFile(os.path.join(folder, _LOCK))
    # Only the lock of a process that is gone counts as left behind, however long a run takes.
    lock.setStaleLockTime(0)
    return lock


def _move(folder, place, files, gone):
    """Put files in place and remove what is gone; OSError where one cannot be, with all as it was."""
    kept, undone = tempfile.mkdtemp(prefix="", dir=folder), []
    try:
        # What would be read together with a new file, such as an old index, goes first.
        for name in gone:
            undone.append(_keep(place, name, kept))
            with suppress(FileNotFoundError):
                os.remove(os.path.join(place, name))
        for staged, name in files:
            # Moved already where a killed run's moves are ended.
            if os.path.exists(os.path.join(folder, staged)):
                undone.append(_keep(place, name, kept))
                os.replace(os.path.join(folder, staged), os.path.join(place, name))
    except OSError:
        for name, stood in reversed(undone):
            if stood:
                os.replace(os.path.join(kept, name), os.path.join(place, name))
            elif os.path.exists(os.path.join(place, name)):
                os.remove(os.path.join(place, name))
        raise


def _keep(place, name, kept):
    """A second name in ``kept`` for what stands at a place: (name, whether there was any)."""
    path = os.path.join(place, name)
    if not os.path.exists(path):
        return name, False
    try:
        os.link(path, os.path.join(kept, name))
    except OSError:
        # A file system without second names.
        shutil.copy2(path, os.path.join(kept, name))
    return name, True


def _noted(folder):
    """The folder's list; an empty one where there is none, or where it names anything outside its own place."""
    nothing = {"ready": False, "files": [], "gone": [], "tables": []}
    try:
        with open(os.path.join(folder, _LIST), encoding="utf-8") as file:
            noted = json.load(file)
        files = [(str(staged), str(name)) for staged, name in noted["files"]]
        gone = [str(name) for name in noted["gone"]]
        tables = [(str(file), str(table)) for file, table in noted["tables"]]
        ready = noted["ready"] is True
    except (OSError, ValueError, KeyError, TypeError):
        return nothing
    inside = os.path.realpath(folder) + os.sep
    plain = [name for _, name in files] + gone + [file for file, _ in tables]
    sound = (
        all(name and name == os.path.basename(name) and name not in (".", "..") for name in plain)
        and all(os.path.realpath(os.path.join(folder, staged)).startswith(inside) for staged, _ in files)
        and all(table.startswith(TABLE_PREFIX) for _, table in tables)
    )
    return {"ready": ready, "files": files, "gone": gone, "tables": tables} if sound else nothing
