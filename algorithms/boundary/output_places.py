"""Where an output goes, and whether that is the place of an input or of another output."""

import os
import re
from functools import lru_cache
from urllib.parse import unquote

from qgis.core import (
    QgsDataSourceUri,
    QgsMapLayer,
    QgsProcessingFeatureSourceDefinition,
    QgsProcessingOutputLayerDefinition,
    QgsProcessingUtils,
    QgsProject,
    QgsProviderRegistry,
    QgsVectorFileWriter,
    QgsVectorLayer,
    QgsVirtualLayerDefinition,
)
from qgis.PyQt.QtCore import QUrl
from qgis.PyQt.QtXml import QDomDocument

from ..language.decision_words import ENDING
from ..language.number_text import listed
from ..language.translation import tr

_DATABASES = ("postgres:", "postgis:", "spatialite:", "mssql:")
_TEMPORARY = ("TEMPORARY_OUTPUT", "memory:")
# What a GeoPackage writes beside itself.
SIDECARS = ("-wal", "-shm", "-journal")
# Files that belong to one of the ending, by their own endings.
_COMPANIONS = {
    ".shp": (".shx", ".dbf", ".prj", ".cpg", ".qix", ".sbn", ".sbx", ".qmd", ".shp.xml"),
    ".tab": (".dat", ".map", ".id", ".ind"),
    ".mif": (".mid",),
    ".gml": (".xsd", ".gfs"),
    ".csv": (".csvt", ".prj"),
    ".tif": (".tfw", ".tif.aux.xml", ".tif.ovr"),
    ".tiff": (".tfw", ".tiff.aux.xml", ".tiff.ovr"),
    ".png": (".pgw", ".wld", ".png.aux.xml"),
    ".jpg": (".jgw", ".wld", ".jpg.aux.xml"),
}
# Greatest file that is looked through for the sources it points to.
_MOST_READ = 4_000_000


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
    elif text.startswith(_DATABASES):
        return None
    else:
        path, name = written_path(QgsProviderRegistry.instance().decodeUri("ogr", text).get("path") or text), ""
    return (_whole(os.path.realpath(path)), name) if path else None


def written_path(path):
    """The file that the host makes of a path: it adds an ending where its format does not have the one given
    ('st.json' becomes 'st.json.geojson'), and '.gpkg' where no format has it."""
    endings = _endings(os.path.splitext(path)[1])
    return path if path.lower().endswith(tuple("." + one.lower() for one in endings)) else f"{path}.{endings[0]}"


@lru_cache(64)
def _endings(ending):
    """Endings that the host gives to files of the format that ``ending`` stands for."""
    driver = QgsVectorFileWriter.driverForExtension(ending)
    if not driver:
        return ("gpkg",)
    about = QgsVectorFileWriter.MetaData()
    return tuple(about.ext.split(" ")) if QgsVectorFileWriter.driverMetadata(driver, about) and about.ext else ("",)


def source_of(text):
    """The source of the layer that will stand at a destination text, as the host opens it; '' for temporary places and
    those that are no file."""
    place = place_of(text)
    return "" if place is None else place[0] + (f"|layername={place[1]}" if place[1] else "")


def final_destination(asked, written):
    """The destination of a layer that was asked for at ``asked`` and ``written`` elsewhere under its name."""
    if asked.startswith("ogr:"):
        return asked
    return os.path.join(os.path.dirname(asked), os.path.basename(written))


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
    layer = _input_layer(value, context)
    return None if layer is None else _source_place(layer.providerType(), layer.source())


def places_behind(value, context):
    """Every place that an input parameter's layer is read from: its own, and those behind a virtual layer, a join or a
    file that only points to others (VRT)."""
    found, waiting, seen = [], [_input_layer(value, context)], set()
    while waiting:
        layer = waiting.pop()
        if layer is None or layer.id() in seen:
            continue
        seen.add(layer.id())
        place = _source_place(layer.providerType(), layer.source())
        if place is not None:
            found.append(place)
            found += [(os.path.realpath(path), "") for path in _pointed_to(place[0])]
        if isinstance(layer, QgsVectorLayer):
            waiting += [join.joinLayer() for join in layer.vectorJoins()]
            if layer.providerType() == "virtual":
                behind = QgsVirtualLayerDefinition.fromUrl(QUrl.fromEncoded(layer.source().encode())).sourceLayers()
                waiting += [QgsProject.instance().mapLayer(one.reference()) for one in behind if one.isReferenced()]
                found += [
                    place
                    for one in behind
                    if not one.isReferenced() and (place := _source_place(one.provider(), one.source())) is not None
                ]
    return found


def _input_layer(value, context):
    if isinstance(value, QgsProcessingFeatureSourceDefinition):
        value = value.source.staticValue()
    layer = value if isinstance(value, QgsMapLayer) else None
    if layer is None and isinstance(value, str) and value:
        layer = QgsProcessingUtils.mapLayerFromString(value, context)
    return layer


def _source_place(provider, source):
    """(real path, table) of a source as its provider writes it; None where it is no file."""
    parts = QgsProviderRegistry.instance().decodeUri(provider, source)
    path, name = parts.get("path"), parts.get("layerName") or ""
    if not path:
        return None
    if provider == "delimitedtext" and not os.path.exists(path):
        path = unquote(path[7:] if path.startswith("file://") else path)
    if os.path.isdir(path) and name:
        # A folder of Shapefiles counts as a database of its files.
        file = next((f for f in sorted(os.listdir(path)) if os.path.splitext(f)[0] == name), None)
        path, name = (os.path.join(path, file), "") if file else (path, name)
    return _whole(os.path.realpath(path)), name


def _pointed_to(path):
    """Paths of the files that a virtual file (VRT) is made of."""
    if os.path.splitext(path)[1].lower() != ".vrt" or not os.path.isfile(path) or os.path.getsize(path) > _MOST_READ:
        return []
    document = QDomDocument()
    with open(path, "rb") as file:
        document.setContent(file.read())
    found = []
    for tag in ("SrcDataSource", "SourceFilename", "SourceDataset"):
        nodes = document.elementsByTagName(tag)
        for k in range(nodes.length()):
            element = nodes.at(k).toElement()
            # A relative path counts from the file, or from the working folder of whoever reads it.
            found += [element.text(), os.path.join(os.path.dirname(path), element.text())]
    return [one for one in found if os.path.exists(one)]


def files_of(path):
    """The file and those that belong to it, as far as they exist."""
    return [name for name in _names_of(path) if os.path.isfile(name)]


def _names_of(path):
    stem, ending = os.path.splitext(path)
    tails = _COMPANIONS.get(ending.lower(), ())
    return [path, *(path + tail for tail in SIDECARS), *(stem + tail for tail in tails)]


def same_place(a, b):
    """True where two places are one table, or share a file; a missing table name stands for all of the file.

    One file under two names counts (hard links, mounts), and so do the files that belong to another ('o.dbf' to
    'o.shp')."""
    if a is None or b is None:
        return False
    if a[0] == b[0] or _one_file(a[0], b[0]):
        return not a[1] or not b[1] or a[1].lower() == b[1].lower()
    return b[0] in _names_of(a[0]) or a[0] in _names_of(b[0])


def _one_file(a, b):
    try:
        return os.path.samefile(a, b)
    except (OSError, ValueError):
        return False


def has_control_characters(text):
    """Whether a path has characters that no file's name should have, such as a line's end."""
    return any(ord(character) < 32 for character in text)


def unfit_place(key, text):
    """Why nothing can be written at an output's destination, as a sentence; '' where it can be tried."""
    if has_control_characters(text):
        return tr("{} is a path with a control character in it; give another.").format(key)
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


def unfit_document(key, text, filters):
    """Why a document should not be written at its destination: the name is one of a layer's file, whose other tables
    would be lost; '' where it can. ``filters``: the parameter's own, such as 'HTML files (*.html)'."""
    if text.startswith(("memory:", "ogr:", *_DATABASES)):
        return tr("{} is '{}', where layers are kept; a document goes into a file.").format(key, text)
    ending = os.path.splitext(text)[1].lower()
    own = [one.lower() for one in re.findall(r"\*(\.\w+)", filters)]
    if ending in own or not QgsVectorFileWriter.driverForExtension(ending):
        return ""
    return tr("{} ends in '{}', as a layer's file does; a file that ends in {} is written here.").format(
        key, ending, listed(own)
    )
