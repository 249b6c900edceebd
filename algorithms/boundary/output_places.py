"""Where an output goes, and whether that is the place of an input or of another output."""

import os
from urllib.parse import unquote

from qgis.core import (
    QgsDataSourceUri,
    QgsMapLayer,
    QgsProcessingException,
    QgsProcessingFeatureSourceDefinition,
    QgsProcessingOutputLayerDefinition,
    QgsProcessingUtils,
    QgsProviderRegistry,
    QgsVectorFileWriter,
    QgsVectorLayer,
    QgsWkbTypes,
)

from ..language.decision_words import ENDING
from ..language.translation import tr

_TEMPORARY = ("TEMPORARY_OUTPUT", "memory:")


# Formats that cut texts at 254 characters.
SHORT_TEXTS = (".shp", ".dbf", ".tab", ".mif")


# --- where an output goes, and what stands there already


def destination_text(value):
    """The destination of an output parameter as text; '' for none."""
    if isinstance(value, QgsProcessingOutputLayerDefinition):
        value = value.sink.staticValue()
    return value if isinstance(value, str) else ""


def place_of(text):
    """(real path, table name or '') of a destination or source text; None for temporary and other places.

    A plain path stands for all tables of its file: writing to it removes the others.
    """
    if not text or text.startswith(_TEMPORARY):
        return None
    if text.startswith("ogr:"):
        parts = QgsProviderRegistry.instance().decodeUri("ogr", ogr_uri(text))
        path, name = parts.get("path") or "", parts.get("layerName") or ""
    elif text.startswith(("postgres:", "postgis:", "spatialite:", "mssql:")):
        return None
    else:
        path, name = QgsProviderRegistry.instance().decodeUri("ogr", text).get("path") or text, ""
        if not QgsVectorFileWriter.driverForExtension(os.path.splitext(path)[1]):
            path += ".gpkg"  # as the host does
    return (_whole(os.path.realpath(path)), name) if path else None


def source_of(text):
    """The source of the layer that will stand at a destination text, as the host opens it; '' for temporary places and
    those that are no file."""
    place = place_of(text)
    return "" if place is None else place[0] + (f"|layername={place[1]}" if place[1] else "")


def place_of_file(text):
    """(real path, '') of a document's destination text; None for a temporary one."""
    return None if not text or text.startswith(_TEMPORARY) else (os.path.realpath(text), "")


def _whole(path):
    """The Shapefile that a path to its table means, else the path."""
    stem, ending = os.path.splitext(path)
    return stem + ".shp" if ending.lower() == ".dbf" else path


def ogr_uri(text):
    """'ogr:dbname='file' table="name" (geom)' as the host's own uri, file|layername=name."""

    uri = QgsDataSourceUri(text[4:])
    return f"{uri.database()}|layername={uri.table()}"


def place_of_layer(value, context):
    """(real path, table) of an input parameter's layer; None where it is no file."""
    if isinstance(value, QgsProcessingFeatureSourceDefinition):
        value = value.source.staticValue()
    layer = value if isinstance(value, QgsMapLayer) else None
    if layer is None and isinstance(value, str) and value:
        layer = QgsProcessingUtils.mapLayerFromString(value, context)
    if layer is None or not hasattr(layer, "source"):
        return None
    parts = QgsProviderRegistry.instance().decodeUri(layer.providerType(), layer.source())
    path = parts.get("path")
    if not path:
        return None
    if layer.providerType() == "delimitedtext" and not os.path.exists(path):
        path = unquote(path[7:] if path.startswith("file://") else path)
    return _whole(os.path.realpath(path)), parts.get("layerName") or ""


def same_place(a, b):
    """True where two places are one file and one table, a missing table name standing for all of the file."""
    return a is not None and b is not None and a[0] == b[0] and (not a[1] or not b[1] or a[1].lower() == b[1].lower())


def unfit_place(key, text):
    """Why nothing can be written at an output's destination, as a sentence; '' where it can be tried."""
    place = place_of(text)
    if place is None or place[0].startswith("/vsi"):
        return ""
    folder = os.path.dirname(place[0])
    if os.path.isdir(text):
        return tr("{} is the folder {}; give the name of a file in it.").format(key, text)
    if not os.path.isdir(folder):
        return tr("{} cannot be written: there is no folder {}.").format(key, folder)
    if os.path.basename(place[0]).lower().endswith(ENDING):
        return tr("{} is {}, where decisions are kept; no run writes there. Choose another name.").format(key, place[0])
    return ""


def check_written(asked, destination, table):
    """QgsProcessingException where the closed file does not hold all rows: a full disk shows only now.

    ``asked``: the parameter's text; ``destination``: what the host made of it.
    """
    if place_of(asked) is None or place_of(destination) is None:
        return
    uri = ogr_uri(destination) if destination.startswith("ogr:") else destination
    if table.wkb == QgsWkbTypes.Type.NoGeometry and uri.lower().endswith(".shp"):
        uri = uri[:-4] + ".dbf"  # all that there is of a Shapefile without geometry
    layer = QgsVectorLayer(uri, "check", "ogr")
    if not layer.isValid() or layer.featureCount() != len(table):
        arrived = max(layer.featureCount(), 0) if layer.isValid() else 0
        raise QgsProcessingException(
            tr("The output {} is not complete: {} of {} rows arrived. Is the place full?").format(
                table.key, arrived, len(table)
            )
        )
