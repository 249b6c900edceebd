"""The outputs of one run: written beside their places under names of their own, and put there together when whole.

So a run that is refused, fails, is cancelled or killed leaves what stood there before, whole.
"""

import os
import secrets
import shutil
from dataclasses import dataclass

from qgis.core import QgsDataSourceUri

from ..core.errors import InputError
from ..language.translation import tr
from .geopackage_tables import NotReplaced, check_writable, drop_table, put_in_place, settle
from .output_places import SIDECARS, files_of, place_of
from .stage_folder import TABLE_PREFIX, StageFolder, settle_leftovers


@dataclass
class _Staged:
    """One file on its way: ``path``, ``slot``: where it will stand and the folder it is written in; ``keys``: of the
    outputs in it."""

    path: str
    slot: str
    folder: StageFolder
    keys: tuple


class OutputStage:
    """Places to write the outputs of one run at, and the step that puts them where they were asked for.

    ``say``: called with a sentence where the leftovers of a killed run were dealt with.
    """

    def __init__(self, say):
        self._say = say
        self._folders = {}
        self._files = {}
        self._tables = {}

    def layer(self, key, text):
        """The destination to write a layer at that was asked for at ``text``; '' where it goes there directly: a
        temporary layer, a database."""
        place = place_of(text)
        if place is None or place[0].startswith("/vsi"):
            return ""
        path, table = place
        if not table:
            return self._file(key, path, os.path.basename(text.partition("|")[0]))
        if os.path.exists(path) and path not in self._files and path.lower().endswith(".gpkg"):
            return self._table(key, path, table, text)
        return _table_text(text, self._file(key, path, os.path.basename(path), copied=True), table)

    def document(self, key, path):
        """The path to write a document at that was asked for at ``path``."""
        return self._file(key, os.path.realpath(path), os.path.basename(os.path.realpath(path)))

    def commit(self):
        """Put everything into its place; InputError naming the output and the place where that cannot be.

        Tables of a GeoPackage change in one transaction; files are moved, each at once.
        """
        for one in self._files.values():
            self._settled(one.path, one.keys, settle, one.path)
            # The written file can have another ending than was asked for: the host adds that of its format.
            written = {name for name in os.listdir(one.slot) if not name.endswith(SIDECARS)}
            one.folder.files += [(os.path.join(os.path.basename(one.slot), name), name) for name in sorted(written)]
            if os.path.basename(one.path) in written:
                one.folder.gone += sorted({os.path.basename(found) for found in files_of(one.path)} - written)
        for path, tables in self._tables.items():
            self._settled(path, tuple(key for key, _, _ in tables), put_in_place, path, [one[1:] for one in tables])
        for folder in self._folders.values():
            try:
                folder.move()
            except OSError as error:
                keys = tuple(key for one in self._files.values() if one.folder is folder for key in one.keys)
                raise InputError(
                    tr("The output {} cannot be written to {}: {}.").format(
                        ", ".join(keys), folder.place, error.strerror or error
                    ),
                    keys=keys,
                ) from None
        self._remove_folders()

    def discard(self):
        """The run failed: remove what it wrote. What stood at the places was never touched."""
        for path, tables in self._tables.items():
            for _, written, _ in tables:
                try:
                    drop_table(path, written)
                except NotReplaced as error:
                    self._say(
                        tr(
                            "The run failed, and its unfinished table '{}' is still in {}: {}; the next run removes it."
                        ).format(written, path, error)
                    )
                    self._folders.pop(os.path.dirname(path), None)
        self._remove_folders()

    def _remove_folders(self):
        for folder in self._folders.values():
            folder.remove()
        self._folders, self._files, self._tables = {}, {}, {}

    def _file(self, key, path, name, *, copied=False):
        """The path in a slot of its own; ``copied``: with what stands there, where other tables of it stay."""
        if path not in self._files:
            folder = self._folder(key, path)
            self._files[path] = _Staged(path, folder.slot(), folder, ())
            if copied and os.path.exists(path):
                shutil.copy2(path, os.path.join(self._files[path].slot, name))
        self._files[path].keys += (key,)
        return os.path.join(self._files[path].slot, name)

    def _table(self, key, path, table, text):
        """The destination of a table beside the one of its name, in a GeoPackage that other layers may have open: it
        stays the same file."""
        self._settled(path, (key,), check_writable, path)
        written = TABLE_PREFIX + secrets.token_hex(4)
        self._folder(key, path).note_table(os.path.basename(path), written)
        self._tables.setdefault(path, []).append((key, written, table))
        return _table_text(text, path, written)

    def _folder(self, key, path):
        place = os.path.dirname(path)
        if place not in self._folders:
            try:
                ended, removed = settle_leftovers(place)
                self._folders[place] = StageFolder(place)
            except OSError as error:
                raise InputError(
                    tr("The output {} cannot be written to {}: {}.").format(key, path, error.strerror or error),
                    keys=(key,),
                ) from None
            if ended:
                self._say(
                    tr(
                        "An earlier run was stopped before its outputs in {} were complete; they have been completed: "
                        "{}."
                    ).format(place, ", ".join(ended))
                )
            elif removed:
                self._say(tr("What an earlier run that was stopped left unfinished in {} was removed.").format(place))
        return self._folders[place]

    @staticmethod
    def _settled(path, keys, step, *given):
        try:
            step(*given)
        except NotReplaced as error:
            raise InputError(
                tr("The output {} cannot be written to {}: {}.").format(", ".join(keys), path, error), keys=keys
            ) from None


def _table_text(text, path, table):
    """The destination ``text`` of a table, with another file and table."""
    asked, uri = QgsDataSourceUri(text[4:]), QgsDataSourceUri()
    uri.setDatabase(path)
    uri.setDataSource(asked.schema(), table, asked.geometryColumn() or "")
    return "ogr:" + uri.uri(False)
