"""Which inputs of a recorded run have changed since: what was read then is compared with what there is to read now."""

import os
from dataclasses import dataclass

from qgis.core import QgsProcessingContext, QgsProcessingUtils, QgsProject, QgsRasterLayer, QgsVectorLayer

from ..boundary.axes import read_lines
from ..boundary.rasters import read_window
from ..boundary.slices import finished
from ..boundary.stored_rows import remember, stored_layer
from ..boundary.tables import read_table, table_in_slices
from ..core.errors import InputError
from ..language.translation import tr
from .layer_records import layer_of
from .run_record import RunRecord

# What a record names is data from outside: beside the project's layers only plain files are opened, and nothing
# that asks a server or names further files.
_FILES = (".gpkg", ".shp", ".geojson", ".json", ".fgb", ".csv", ".tif", ".tiff", ".gtx")


@dataclass(frozen=True)
class StaleInput:
    """An input that is not what it was: ``key`` of the parameter, ``source`` as recorded, ``name`` of the layer or
    file, ``state``: 'changed', or 'gone' where it cannot be found or read any more."""

    key: str
    source: str
    name: str
    state: str

    @property
    def sentence(self):
        """What a person is told of it."""
        if self.state == "gone":
            return tr("the input {}, '{}', no longer exists").format(self.key, self.name)
        return tr("the input {}, '{}', has changed since").format(self.key, self.name)


def stale_inputs(record: RunRecord, layers=None, context=None, feedback=None, stored=None):
    """Inputs of the run of ``record`` that have changed since or are gone: list of StaleInput, each source of a key
    once.

    ``layers``: {recorded source: map layer, or None for one that is gone} where the caller knows them; all others are
    looked for among the layers of the context's project (edits that are not saved count) and in plain files. What
    cannot be compared is left out: inputs of which no hash was recorded, of which only some rows were read, and sources
    on a server that are not in the project. ``stored``: {id of a map layer: its StoredLayer} of layers of another
    thread.
    """
    return finished(_stale_inputs(record, layers, context, feedback, stored or {}))


def stale_inputs_in_slices(record, layers=None, context=None, feedback=None):
    """The same in slices, see ``finished``; the layers must stay meanwhile."""
    return _stale_inputs(record, layers, context, feedback, None)


def _stale_inputs(record, layers, context, feedback, stored):
    """In slices; where there is ``stored``, what can be is read in bulk, at once."""
    context = context if context is not None else _context()
    layers, found = layers or {}, []
    for key, readings in record.inputs.items():
        told = set()
        for one in readings:
            if not one.hash or one.part or one.source in told:
                continue
            if one.source in layers:
                layer = layers[one.source]
                sought = True
            else:
                layer, sought = layer_behind(one.source, context)
            if layer is None:
                state = "gone" if sought else ""
            else:
                now = yield from _hash_now(layer, one, context, feedback, stored)
                state = "" if now == one.hash else "changed"
            if state:
                told.add(one.source)
                name = layer.name() if layer is not None else os.path.basename(one.source.split("|")[0])
                found.append(StaleInput(key, one.source, name, state))
    return found


def _context():
    context = QgsProcessingContext()
    context.setProject(QgsProject.instance())
    return context


def layer_behind(source, context):
    """(layer or None, whether its absence means that it is gone) of a ``source`` as a record names it."""
    project = context.project()
    for layer in project.mapLayers().values() if project is not None else ():
        if layer.source() == source:
            return layer, True
    path = source.split("|")[0]
    if not os.path.isabs(path) or path.startswith(("//", "\\\\")):
        # A memory layer lives in its project only; of a server's table nothing is known.
        return None, "uid={" in source
    if not path.lower().endswith(_FILES):
        return None, False
    if not os.path.isfile(path):
        return None, True
    return QgsProcessingUtils.mapLayerFromString(source, context), True


def _hash_now(layer, one, context, feedback, stored):
    """Hash of what would be read of a layer now, in slices; '' where it cannot be read in that way."""
    try:
        if isinstance(layer, QgsRasterLayer):
            return read_window(layer, *one.window).hash if one.shape == "raster" and one.window else ""
        if not isinstance(layer, QgsVectorLayer) or one.shape == "raster":
            return ""
        source = QgsProcessingUtils.variantToSource(layer, context)
        index = {field.name(): k for k, field in enumerate(source.fields())}
        if not set(one.fields) <= set(index):
            return ""
        if one.shape == "line":
            return read_lines(source, one.texts, feedback).hash
        numbers, texts = ({name: index[name] for name in names} for names in (one.numbers, one.texts))
        # A field may be read both as number and as text, which are two columns.
        texts = {("text", name): k for name, k in texts.items()}
        if stored is None:
            table = yield from table_in_slices(source, numbers, texts, feedback, geometry=one.shape == "point")
        else:
            remember(source, stored.get(layer.id()) or stored_layer(layer))
            table = read_table(source, numbers, texts, feedback, geometry=one.shape == "point")
        return table.read.hash
    except InputError:
        return ""


def changed_inputs(asked, key):
    """[(name of the layer, StaleInput)] of the layers of an input ``key`` that are older than what they were made from;
    what is gone cannot be compared and is left out."""
    found = []
    for record, name in zip(asked.records.get(key, ()), _names(asked, key)):
        stale = stale_inputs(record, asked.known_layers, asked.context, asked.feedback, asked.stored)
        found += [(name, one) for one in stale if one.state == "changed"]
    return found


def _names(asked, key):
    value = asked.given(key)
    values = value if isinstance(value, (list, tuple)) else [value]
    layers = [layer_of(one, asked.context) for one in values]
    return [layer.name() if layer is not None else key for layer in layers]


def warn_of_stale_inputs(asked, key):
    """Warn where inputs of the runs that made the layers of ``key`` still exist and have changed since."""
    for name, one in changed_inputs(asked, key):
        asked.warn(
            tr("Layer '{}' ({}) is older than what it was made from: {}; run that step again.").format(
                name, key, one.sentence
            ),
            keys=(key,),
        )
