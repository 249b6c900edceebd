"""Run again: the run that made a layer, with its recorded settings, on the stations as they are now."""

import os

from qgis.core import (
    QgsApplication,
    QgsProcessingContext,
    QgsProcessingOutputLayerDefinition,
    QgsProcessingParameterFeatureSource,
    QgsProcessingParameterMapLayer,
    QgsProcessingParameterMultipleLayers,
    QgsProcessingParameterRasterLayer,
    QgsProcessingUtils,
    QgsProject,
    QgsVectorLayer,
)

from ...algorithms.boundary.output_places import destination_text, place_of, place_of_layer, same_place
from ...algorithms.entry.layer_records import record_of_layer
from ...algorithms.entry.recorded_chain import run_key
from ...algorithms.language.number_text import listed
from ...algorithms.language.translation import tr
from ...algorithms.styles.record_property import RECORD_PROPERTY
from .. import toolbox
from .comparing import has_own_edits

_LAYERS = (
    QgsProcessingParameterFeatureSource,
    QgsProcessingParameterMapLayer,
    QgsProcessingParameterMultipleLayers,
    QgsProcessingParameterRasterLayer,
)


PROVIDER = "tautline"


class CannotRunAgain(Exception):
    """Why the run cannot be repeated, in one sentence."""


class RunAgain:
    """The recorded run of a layer, ready to be repeated. Raises CannotRunAgain where it cannot be.

    All layers of the run that the project holds are made anew where they are, so that none stands there twice.
    ``unsaved``: layers of the project that the run reads and that hold edits which are not saved.
    """

    def __init__(self, layer):
        record = record_of_layer(layer)
        given = record.parameters
        if record.doubt:
            raise CannotRunAgain(tr("Layer '{}': {}").format(layer.name(), record.doubt))
        if not record.entry or not given:
            raise CannotRunAgain(tr("Layer '{}' carries no record of the run that made it.").format(layer.name()))
        self.layer, self.entry = layer, record.entry
        self._context = QgsProcessingContext()
        self._context.setProject(QgsProject.instance())
        algorithm = QgsApplication.processingRegistry().createAlgorithmById(self.entry)
        # A record comes with the layer, from anybody: an entry that is not ours could do anything, anywhere.
        if algorithm is None or algorithm.provider() is None or algorithm.provider().id() != PROVIDER:
            raise CannotRunAgain(
                tr("Layer '{}' was made by '{}', which is not a Tautline entry; only these are run again.").format(
                    layer.name(), self.entry
                )
            )
        self.title = algorithm.displayName()
        self.unsaved, self.parameters = [], dict(given)
        for definition in algorithm.parameterDefinitions():
            name = definition.name()
            if name in given and isinstance(definition, _LAYERS):
                self.parameters[name] = self._input(name, given[name])
        self.outputs = [d.name() for d in algorithm.destinationParameterDefinitions() if d.name() in given]
        self._settle_outputs(record)

    def _input(self, name, value):
        """The layer of the project that a recorded source is, else the source itself where it can be read."""
        if isinstance(value, (list, tuple)):
            return [self._input(name, one) for one in value]
        place = place_of_layer(value, self._context)
        for layer in QgsProject.instance().mapLayers().values():
            if layer.source() == value or (place is not None and place == place_of_layer(layer, self._context)):
                if isinstance(layer, QgsVectorLayer) and layer.isEditable() and layer.isModified():
                    self.unsaved.append(layer)
                return layer.id()
        if QgsProcessingUtils.mapLayerFromString(value, self._context) is None:
            raise CannotRunAgain(tr("The layer of {} no longer exists: {}.").format(name, value))
        return value

    def _settle_outputs(self, record):
        """Results come into the places where their layers are: files, also one that a temporary layer was kept in
        since, and layers in memory, which keep their ids and get the new rows. Other temporary ones do not come."""
        recorded = {name: place_of(str(self.parameters[name])) for name in self.outputs}
        for name in self.outputs:
            if recorded[name] is None:
                del self.parameters[name]
        self._refilled = []
        for layer in _layers_of(record):
            key, place = record_of_layer(layer).output, place_of_layer(layer, self._context)
            if any(same_place(place, one) for one in recorded.values()) or recorded.get(key) is not None:
                continue
            if key not in recorded:
                raise CannotRunAgain(
                    tr("Layer '{}' does not record which output of its run it is; run that step from its form.").format(
                        layer.name()
                    )
                )
            if place is None:
                self._refilled.append((key, layer))
            else:
                self.parameters[key] = _destination(*place)
        temporary = [key for key, _ in self._refilled] + ["OUTPUT"] * ("OUTPUT" in self.outputs)
        for key in temporary:
            made = QgsProcessingOutputLayerDefinition("TEMPORARY_OUTPUT", QgsProject.instance())
            self.parameters.setdefault(key, made)
        self.results = [
            layer
            for layer in QgsProject.instance().mapLayers().values()
            if isinstance(layer, QgsVectorLayer)
            and any(same_place(place_of_layer(layer, self._context), place) for place in self._places())
        ]
        for layer in (*self.results, *(layer for _, layer in self._refilled)):
            if layer.isEditable() and layer.isModified():
                raise CannotRunAgain(
                    tr("Layer '{}' would be overwritten, but holds edits that are not saved.").format(layer.name())
                )

    def _places(self):
        """Places in files that the run writes to."""
        places = [place_of(destination_text(self.parameters.get(name))) for name in self.outputs]
        return [place for place in places if place is not None]

    def question(self):
        """What it will do, in a few lines of plain text; '' where it writes over nothing that stands."""
        over = [_place_text(place) for place in self._places() if os.path.exists(place[0])]
        over += [tr("layer '{}', in memory").format(layer.name()) for _, layer in self._refilled]
        if not over:
            return ""
        read = [
            layer.name()
            for layer in QgsProject.instance().mapLayers().values()
            if layer.id() in [value for value in self.parameters.values() if isinstance(value, str)]
        ]
        lines = [
            tr("'{}' runs with the settings that layer '{}' was made with.").format(self.title, self.layer.name()),
            tr("It reads: {}.").format(", ".join(sorted(read)) or tr("no layer of this project")),
            tr("It writes over:"),
            *over,
            *self._undone(),
        ]
        return "\n".join(lines)

    def _undone(self):
        """A line on the layers that were edited by hand since their run, and will not be any more."""
        layers = [*self.results, *(layer for _, layer in self._refilled)]
        names = [f"'{layer.name()}'" for layer in layers if has_own_edits(layer)]
        return [tr("Edited by hand since, which this undoes: {}.").format(listed(names))] if names else []

    def save_edits(self):
        """Save the edits of the layers that the run reads; CannotRunAgain where one refuses."""
        for layer in self.unsaved:
            if not layer.commitChanges(False):
                raise CannotRunAgain(
                    tr("The edits of layer '{}' could not be saved: {}").format(
                        layer.name(), " ".join(layer.commitErrors())
                    )
                )
        self.unsaved = []

    def run(self):
        """Repeat the run. Raises QgsProcessingException."""
        self.take(toolbox.run(self.entry, self.parameters))

    def take(self, done):
        """Let the layers of the project show what a Run of these parameters has written."""
        toolbox.note(done)
        for layer in self.results:
            _open_anew(layer)
        waiting = done.context.layersToLoadOnCompletion()
        for key, layer in self._refilled:
            made = QgsProcessingUtils.mapLayerFromString(done.results.get(key) or "", done.context)
            details = waiting.get(done.results.get(key))
            if made is not None:
                if details is not None and details.postProcessor() is not None:
                    details.postProcessor().postProcessLayer(made, done.context, done.feedback)
                _refill(layer, made)


def _layers_of(record):
    """The layers of the project that the recorded run has made."""
    layers = [one for one in QgsProject.instance().mapLayers().values() if isinstance(one, QgsVectorLayer)]
    marked = [one for one in layers if one.customProperty(RECORD_PROPERTY, "")]
    return [one for one in marked if run_key(record_of_layer(one)) == run_key(record)]


def _destination(path, table):
    """The text of a destination that writes over a layer in a file and leaves its other tables alone."""
    if not path.lower().endswith(".gpkg"):
        return path
    # Opened without a name it is the only table, which mostly has the file's name.
    return toolbox.geopackage_table(path, table or os.path.splitext(os.path.basename(path))[0])


def _place_text(place):
    path, table = place
    return f"{path}, {table}" if table else path


def _refill(layer, made):
    """Give a layer in memory the rows, fields and record of another."""
    provider = layer.dataProvider()
    provider.truncate()
    if layer.fields().names() != made.fields().names():
        provider.deleteAttributes(list(range(len(layer.fields()))))
        provider.addAttributes(list(made.fields()))
        layer.updateFields()
    provider.addFeatures(list(made.getFeatures()))
    layer.updateExtents()
    layer.setCustomProperty(RECORD_PROPERTY, made.customProperty(RECORD_PROPERTY, ""))
    # Nobody hears of rows that come by the provider, and what was compared would be kept.
    layer.dataChanged.emit()
    layer.triggerRepaint()


def _open_anew(layer):
    """Let a layer of the project see its file as it is now: the old one may have been replaced under it."""
    layer.setDataSource(layer.source(), layer.name(), layer.providerType())
    fresh = QgsVectorLayer(layer.source(), layer.name(), layer.providerType())
    # The symbols stay the user's own; the record is that of the new run.
    if fresh.isValid() and fresh.customProperty(RECORD_PROPERTY, ""):
        layer.setCustomProperty(RECORD_PROPERTY, fresh.customProperty(RECORD_PROPERTY))
    layer.triggerRepaint()
