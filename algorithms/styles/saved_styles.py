"""Styles saved into a GeoPackage, or put on by the desktop after a run."""

from pathlib import Path

from qgis.core import QgsDataSourceUri, QgsProcessingLayerPostProcessorInterface, QgsProviderRegistry, QgsVectorLayer

from .layer_kinds import dress
from .record_property import RECORD_PROPERTY

# The host's table of styles holds names of so many letters; of longer ones, also translated ones, GDAL warns.
_LONGEST_NAME = 30


class StyleNotSaved(RuntimeError):
    """The layer was written, but its style could not be saved beside it; the text says why."""


def _table(destination):
    """Return (path, table) that ``destination`` names; the table is '' where only a file is named."""
    if destination.startswith("ogr:"):
        uri = QgsDataSourceUri(destination[len("ogr:") :])
        return uri.database(), uri.table()
    parts = QgsProviderRegistry.instance().decodeUri("ogr", destination)
    return parts.get("path") or "", parts.get("layerName") or ""


def file_of(destination):
    """The path that ``destination`` names, see ``geopackage_layer``; the text itself for a layer in memory."""
    return _table(destination)[0] or destination


def geopackage_layer(destination):
    """Return the written table as a new QgsVectorLayer, or None where ``destination`` is not in a GeoPackage.

    ``destination`` is a file's path, with or without ``|layername=``, or the host's ``ogr:dbname='..' table=".."``.
    """
    path, table = _table(destination)
    if Path(path).suffix.lower() != ".gpkg" or not Path(path).is_file():
        return None
    # A plain path is written as a table of the file's name; a second output may have joined it in the same file.
    for source in (f"{path}|layername={table or Path(path).stem}", "" if table else path):
        layer = QgsVectorLayer(source, table or Path(path).stem, "ogr") if source else None
        if layer is not None and layer.isValid():
            return layer
    return None


def _delete_style(layer, name):
    number, ids, names, _descriptions, _message = layer.listStylesInDatabase()
    # Styles of this table come first; the rest of the list are those of other tables.
    for style_id, style_name in list(zip(ids, names))[: max(number, 0)]:
        if style_name == name:
            deleted, message = layer.deleteStyleFromDatabase(style_id)
            if not deleted:
                raise StyleNotSaved(message)


def save_into_geopackage(destination, spec):
    """Save the style of ``spec`` as the default of the table ``destination`` (see ``geopackage_layer``).

    Returns False, and does nothing, where it is not in a GeoPackage; only there can a file hold a style. The layer must
    have been written and closed. Works in any thread. Raises StyleNotSaved.
    """
    return save_style(geopackage_layer(destination), spec)


def save_style(layer, spec):
    """Save the style of ``spec`` as the default of ``layer``, as ``geopackage_layer`` has found it; False for None."""
    if layer is None:
        return False
    dress(layer, spec)
    # Up to 3.22 the host asks in a window before it replaces a style, and waits for ever where there is none.
    name = spec.title[:_LONGEST_NAME].rstrip()
    for known in dict.fromkeys((name, spec.title)):
        _delete_style(layer, known)
    message = layer.saveStyleToDatabase(name, "", True, "")
    if message:
        raise StyleNotSaved(message)
    return True


class LayerDresser(QgsProcessingLayerPostProcessorInterface):
    """Dresses one layer when the desktop loads it; the host calls it in the main thread."""

    # The host keeps no reference of its own: an object nobody holds is never called. By destination, so that a run
    # that was cancelled leaves nothing that piles up.
    waiting = {}

    def __init__(self, destination, spec):
        super().__init__()
        self._destination = destination
        self._spec = spec
        LayerDresser.waiting[destination] = self

    def postProcessLayer(self, layer, context, feedback):  # noqa: N802 - the host calls it by this name
        """Put the style on ``layer``: the one saved in its GeoPackage, else a new one."""
        LayerDresser.waiting.pop(self._destination, None)
        if not isinstance(layer, QgsVectorLayer):
            return
        _message, loaded = layer.loadDefaultStyle() if layer.storageType() == "GPKG" else ("", False)
        if not loaded or layer.customProperty(RECORD_PROPERTY, "") != self._spec.record:
            dress(layer, self._spec)
        layer.setName(self._spec.title)


def attach(context, destination, spec):
    """Have the layer ``destination`` dressed when the desktop loads it; return whether it will load it."""
    if not context.willLoadLayerOnCompletion(destination):
        return False
    context.layerToLoadOnCompletionDetails(destination).setPostProcessor(LayerDresser(destination, spec))
    return True
