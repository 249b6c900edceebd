"""The decisions as they are kept: a table in a GeoPackage of its own beside the result, which no run ever opens."""

import os
from dataclasses import dataclass
from pathlib import Path

from qgis.core import QgsFeature, QgsProject, QgsProviderRegistry, QgsVectorFileWriter, QgsVectorLayer

from ...algorithms.boundary.cells import as_text, is_null
from ...algorithms.core.matching import name_key
from ...algorithms.language.decision_words import ENDING, FIELDS, TABLE
from ...algorithms.language.translation import tr

# Where a person has chosen another place; it stays with the layer in the project.
PLACE_PROPERTY = "tautline/decisions"
_NEW = "NoGeometry?" + "&".join(f"field={name}:{'double' if name == 'chainage' else 'string'}" for name in FIELDS)


class DecisionsNotSaved(Exception):
    """The decisions cannot be read or written; the text is one sentence that says why."""


@dataclass(frozen=True)
class Decision:
    """One row: ``chainage`` in the unit of the layer's chainages; ``decision`` '' for a note alone; ``at`` ISO time."""

    axis: str
    station: str
    chainage: float
    decision: str
    note: str = ""
    by: str = ""
    at: str = ""

    @property
    def key(self):
        return key_of(self.axis, self.station)


def key_of(axis, station):
    """What a decision is found again by, whatever run made the layer."""
    return str(axis), name_key(station)


def place_beside(layer):
    """Where the decisions on a layer belong: ``<name>_decisions.gpkg`` beside its file, '' where it is in no file."""
    parts = QgsProviderRegistry.instance().decodeUri(layer.providerType(), layer.source())
    path = parts.get("path") or ""
    if layer.providerType() != "ogr" or not os.path.isfile(path):
        return ""
    return str(Path(path).with_name(Path(path).stem + ENDING))


def place_of(layer):
    """Where the decisions on a layer are: the place chosen for it, else beside its file, else ''."""
    return layer.customProperty(PLACE_PROPERTY, "") or place_beside(layer)


class DecisionStore:
    """The decisions in one GeoPackage. The file is made with the first decision."""

    def __init__(self, path):
        self.path = str(path)

    def _layer(self):
        """The table, None where there is none yet. Opened for each use: other programs may use the file as well."""
        if not os.path.isfile(self.path):
            return None
        layer = QgsVectorLayer(f"{self.path}|layername={TABLE}", TABLE, "ogr")
        if not layer.isValid():
            return None
        missing = [name for name in FIELDS if layer.fields().indexOf(name) < 0]
        if missing:
            raise DecisionsNotSaved(
                tr("The table '{}' in {} is not a table of decisions: it lacks the field {}.").format(
                    TABLE, self.path, ", ".join(missing)
                )
            )
        return layer

    def read(self):
        """{key: Decision}; a later row counts where a station occurs twice. BookFailed."""
        layer = self._layer()
        found = {}
        for feature in layer.getFeatures() if layer is not None else ():
            decision = _decision(feature)
            found[decision.key] = decision
        return found

    def put(self, decision):
        """Write one decision in the place of any other on that station. BookFailed, with the file as it was."""
        layer = self._layer() or self._made()
        rows = self._rows(layer, decision.key)
        values = [getattr(decision, name) for name in FIELDS]
        if rows:
            changes = {layer.fields().indexOf(name): value for name, value in zip(FIELDS, values)}
            done = layer.dataProvider().changeAttributeValues(dict.fromkeys(rows, changes))
        else:
            feature = QgsFeature(layer.fields())
            for name, value in zip(FIELDS, values):
                feature[name] = value
            done = layer.dataProvider().addFeatures([feature])[0]
        self._check(done, layer)

    def drop(self, key):
        """Take the decision on a station out. BookFailed."""
        layer = self._layer()
        rows = self._rows(layer, key) if layer is not None else []
        if rows:
            self._check(layer.dataProvider().deleteFeatures(rows), layer)

    def _check(self, done, layer):
        if not done:
            reason = "; ".join(layer.dataProvider().errors()).strip().rstrip(".")
            layer.dataProvider().clearErrors()
            raise DecisionsNotSaved(
                tr("The decision could not be saved in {}: {}.").format(
                    self.path, reason or tr("the place is read-only")
                )
            )

    @staticmethod
    def _rows(layer, key):
        return [feature.id() for feature in layer.getFeatures() if _decision(feature).key == key]

    def _made(self):
        """A new, empty table; BookFailed where the place cannot be written."""
        if os.path.isdir(self.path):
            raise DecisionsNotSaved(
                tr("The decisions cannot be saved as {}: there is a folder of that name.").format(self.path)
            )
        if not self.path.lower().endswith(".gpkg"):
            raise DecisionsNotSaved(
                tr("The decisions cannot be saved as {}: its name must end in .gpkg.").format(self.path)
            )
        existed = os.path.exists(self.path)
        options = QgsVectorFileWriter.SaveVectorOptions()
        options.driverName, options.layerName = "GPKG", TABLE
        if existed:
            options.actionOnExistingFile = QgsVectorFileWriter.ActionOnExistingFile.CreateOrOverwriteLayer
        empty = QgsVectorLayer(_NEW, TABLE, "memory")
        error, message = QgsVectorFileWriter.writeAsVectorFormatV3(
            empty, self.path, QgsProject.instance().transformContext(), options
        )[:2]
        layer = self._layer() if error == QgsVectorFileWriter.WriterError.NoError else None
        if layer is None:
            if not existed and os.path.isfile(self.path):
                os.remove(self.path)
            raise DecisionsNotSaved(
                tr("The decisions cannot be saved as {}: {}.").format(
                    self.path, " ".join((message or tr("the place is read-only")).split()).rstrip(".")
                )
            )
        return layer


def _decision(feature):
    texts = {name: as_text(feature[name]) for name in FIELDS if name != "chainage"}
    chainage = feature["chainage"]
    return Decision(chainage=None if is_null(chainage) else float(chainage), **texts)


class History:
    """What can be undone: steps (key, decision before, decision after), None for no decision."""

    def __init__(self):
        self._done, self._undone = [], []

    def add(self, before, after):
        self._done.append((before, after))
        self._undone.clear()

    def clear(self):
        self._done.clear()
        self._undone.clear()

    @property
    def can_undo(self):
        return bool(self._done)

    @property
    def can_redo(self):
        return bool(self._undone)

    def undo(self, store):
        """Write the state before the last step; return the decision of the station that changed. BookFailed."""
        before, after = self._done[-1]
        _restore(store, before, after)
        self._undone.append(self._done.pop())
        return before or after

    def redo(self, store):
        """Write the state after the step that was undone last. BookFailed."""
        before, after = self._undone[-1]
        _restore(store, after, before)
        self._done.append(self._undone.pop())
        return after or before


def _restore(store, wanted, other):
    if wanted is None:
        store.drop(other.key)
    else:
        store.put(wanted)
