"""What was written into an output, in a few numbers: from these an edit made by hand since is known.

The points' places are marked one by one, so that those that were moved can be named.
"""

from dataclasses import replace

from qgis.core import QgsProcessingUtils, QgsVectorLayer, QgsWkbTypes

from ..boundary.stored_rows import remember, stored_layer
from ..boundary.tables import read_table, table_in_slices
from ..core.errors import InputError
from ..core.place_marks import place_marks

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
        # By its id there: the project is not to be asked, see ``run_context``.
        layer = context.temporaryLayerStore().mapLayer(destination)
    if not isinstance(layer, QgsVectorLayer) or layer.geometryType() != QgsWkbTypes.GeometryType.PointGeometry:
        return None
    return None if layer.featureCount() > _MOST_ROWS else rows_reading(layer, context)


def rows_reading(layer, context):
    """InputRecord of all columns and points of a vector layer; None where they cannot be read so."""
    source = QgsProcessingUtils.variantToSource(layer, context)
    if source is None:
        return None
    remember(source, stored_layer(layer))
    try:
        return _marked(read_table(source, *_columns(source), None, geometry=True))
    except InputError:
        return None


def rows_reading_in_slices(layer, context):
    """The same in slices, see ``finished``; the layer must stay meanwhile."""
    source = QgsProcessingUtils.variantToSource(layer, context)
    if source is None:
        return None
    try:
        table = yield from table_in_slices(source, *_columns(source), None, geometry=True)
    except InputError:
        return None
    return _marked(table)


def _marked(table):
    return replace(table.read, marks=place_marks(*table.xyz[:2]))


def _columns(source):
    """All fields of a source but the host's own key: those of numbers and those of texts, {name: index} each."""
    fields = [(k, field) for k, field in enumerate(source.fields()) if field.name().lower() != _KEY]
    return (
        {field.name(): k for k, field in fields if field.isNumeric()},
        {field.name(): k for k, field in fields if not field.isNumeric()},
    )
