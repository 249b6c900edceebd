"""What stood at the outputs' places is put aside, and given back where the run fails."""

import os
import shutil
from dataclasses import dataclass, field

from qgis.core import QgsProcessingException, QgsProviderConnectionException, QgsProviderRegistry

from ..language.translation import tr
from .output_places import files_of, place_of


@dataclass
class OutputBackup:
    """Puts what stood at the outputs' places aside, and gives it back where the run fails."""

    aside: list = field(default_factory=list)
    opened: list = field(default_factory=list)
    tables: list = field(default_factory=list)

    def prepare(self, text):
        """Before a sink is opened at ``text``: move the files there aside (a table's file is copied)."""
        place = place_of(text)
        if place is None:
            return
        path, name = place
        if any(opened == path for opened, _ in self.opened):
            # The run's second table in one file: what stood there before the run is aside already, or was nothing.
            return
        if name and os.path.exists(path) and not geopackage_connection(path).tableExists("", name):
            # Other layers may have the file open: it must stay the same file, so that only the new table goes again.
            self.tables.append(place)
            return
        existed = os.path.exists(path)
        for found in files_of(path):
            spare = os.path.join(os.path.dirname(found), f".{os.path.basename(found)}.before")
            try:
                (shutil.copy2 if name else os.replace)(found, spare)
            except OSError as error:
                raise QgsProcessingException(
                    tr("The output {} cannot be replaced: {}.").format(path, error.strerror)
                ) from None
            self.aside.append((found, spare))
        self.opened.append((path, existed))

    def keep(self):
        """The run went well: drop what was put aside."""
        for _, spare in self.aside:
            _remove(spare)

    def restore(self):
        """The run failed: remove what it opened and give back what stood there."""
        spared = {original for original, _ in self.aside}
        for path, existed in self.opened:
            if not existed or path in spared:
                for found in files_of(path):
                    _remove(found)
        for original, spare in self.aside:
            if os.path.exists(spare):
                os.replace(spare, original)
        for path, name in self.tables:
            _drop_table(path, name)


def geopackage_connection(path):
    return QgsProviderRegistry.instance().providerMetadata("ogr").createConnection(path, {})


def _drop_table(path, name):
    try:
        connection = geopackage_connection(path)
        if connection.tableExists("", name):
            connection.dropVectorTable("", name)
    except QgsProviderConnectionException as error:
        raise QgsProcessingException(
            tr("The run failed, and the incomplete table '{}' in {} could not be removed; delete it: {}").format(
                name, path, error
            )
        ) from None


def _remove(path):
    if os.path.exists(path):
        os.remove(path)
