"""What was written into an output, in a few numbers: from these an edit made by hand since is known.

The points' places are marked one by one, so that those that were moved can be named.
"""

from dataclasses import dataclass, replace

from qgis.core import QgsProcessingUtils, QgsVectorLayer, QgsWkbTypes

from ..boundary.input_fields import field_indices
from ..boundary.stored_rows import remember, stored_layer
from ..boundary.tables import read_table, table_in_slices
from ..core.errors import InputError
from ..core.input_record import InputRecord
from ..core.place_marks import place_marks
from .edited_heights import residual_heights

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


@dataclass(frozen=True)
class RowsNow:
    """The rows of a written layer as they are now: ``reading``, their InputRecord, and ``edited``, rows (indices) whose
    height was edited since, see edited_heights."""

    reading: InputRecord
    edited: tuple = ()


def rows_now_in_slices(layer, record, context):
    """RowsNow of a vector layer that the run of ``record`` has written, None where they cannot be read, in slices, see
    ``finished``; the layer must stay meanwhile."""
    source = QgsProcessingUtils.variantToSource(layer, context)
    if source is None:
        return None
    try:
        table = yield from table_in_slices(source, *_columns(source), None, geometry=True)
    except InputError:
        return None
    return RowsNow(_marked(table), _edited(record, source, table))


def _edited(record, source, table):
    """Rows of a table of all columns whose height was edited since, a tuple."""
    heights = residual_heights(record, source)
    if heights is None:
        return ()
    fields, columns = source.fields(), table.columns
    given = table.xyz[2] if heights.index < 0 else columns[fields[heights.index].name()]
    names = field_indices(source)
    design, residual = (names.get(name) for name in ("design_h", "residual"))
    if design is None or residual is None:
        return ()
    read = given, columns[fields[design].name()], columns[fields[residual].name()]
    # A column of texts holds no numbers.
    return () if any(isinstance(one, list) for one in read) else tuple(heights.edited_rows(*read).tolist())


def _marked(table):
    return replace(table.read, marks=place_marks(*table.xyz[:2]))


def _columns(source):
    """All fields of a source but the host's own key: those of numbers and those of texts, {name: index} each."""
    fields = [(k, field) for k, field in enumerate(source.fields()) if field.name().lower() != _KEY]
    return (
        {field.name(): k for k, field in fields if field.isNumeric()},
        {field.name(): k for k, field in fields if not field.isNumeric()},
    )
