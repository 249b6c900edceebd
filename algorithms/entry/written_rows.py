"""What was written into an output, in a few numbers: from these an edit made by hand since is known."""

from qgis.core import QgsProcessingUtils, QgsVectorLayer, QgsWkbTypes

from ..boundary.stored_rows import remember, stored_layer
from ..boundary.tables import read_table
from ..core.errors import InputError

# Reading back costs a tenth of the writing; of larger layers it is not known whether they were edited.
_MOST_ROWS = 200_000
# Given anew with every writing.
_KEY = "fid"


def written_reading(destination, layer, context):
    """InputRecord of the rows of a written output of points; None where there is no such, or none is to be made.

    Only layers that hold a record are read: those in GeoPackages, ``layer``, and in memory, where that is None. Works
    in the run's thread.
    """
    if layer is None:
        layer = QgsProcessingUtils.mapLayerFromString(destination, context, False)
    if not isinstance(layer, QgsVectorLayer) or layer.geometryType() != QgsWkbTypes.GeometryType.PointGeometry:
        return None
    return None if layer.featureCount() > _MOST_ROWS else rows_reading(layer, context)


def rows_reading(layer, context):
    """InputRecord of all columns and points of a vector layer; None where they cannot be read so."""
    source = QgsProcessingUtils.variantToSource(layer, context)
    if source is None:
        return None
    remember(source, stored_layer(layer))
    fields = [(k, field) for k, field in enumerate(source.fields()) if field.name().lower() != _KEY]
    numbers = {field.name(): k for k, field in fields if field.isNumeric()}
    texts = {field.name(): k for k, field in fields if not field.isNumeric()}
    try:
        return read_table(source, numbers, texts, None, geometry=True).read
    except InputError:
        return None
