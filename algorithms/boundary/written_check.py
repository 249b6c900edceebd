"""Whether an output that was written and closed is all there: a full disk shows only then."""

from qgis.core import QgsVectorLayer, QgsWkbTypes

from ..core.errors import InputError
from ..language.translation import tr
from .geopackage_tables import rows_and_index
from .output_places import ogr_uri, place_of


def check_written(asked, destination, table):
    """InputError where the closed file does not hold all rows. Else a sentence on what is missing beside them, '' for
    nothing.

    ``asked``: the parameter's text; ``destination``: what the host made of it.
    """
    if place_of(asked) is None or place_of(destination) is None:
        return ""
    arrived, indexed = _rows_and_index(destination, table)
    if arrived != len(table):
        raise InputError(
            tr("The output {} is not complete: {} of {} rows arrived. Is the disk full?").format(
                table.key, arrived, len(table)
            ),
            keys=(table.key,),
        )
    return "" if indexed else tr("{} has no spatial index; make one, or the map draws it slowly.").format(table.key)


def _rows_and_index(destination, table):
    """(number of rows, False where there should be a spatial index and is none)."""
    uri = ogr_uri(destination) if destination.startswith("ogr:") else destination
    path, _, name = uri.partition("|layername=")
    if path.lower().endswith(".gpkg"):
        return rows_and_index(path, name)
    if table.wkb == QgsWkbTypes.Type.NoGeometry and uri.lower().endswith(".shp"):
        uri = uri[:-4] + ".dbf"  # all that there is of a Shapefile without geometry
    layer = QgsVectorLayer(uri, "check", "ogr")
    return max(layer.featureCount(), 0) if layer.isValid() else 0, True
