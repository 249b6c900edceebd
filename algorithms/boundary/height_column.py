"""Where the heights of a layer of points come from: a field, or the points' Z."""

from dataclasses import dataclass

from qgis.core import QgsWkbTypes

from ..core.errors import InputError
from ..language.translation import tr
from .input_fields import named_field


@dataclass(frozen=True)
class HeightColumn:
    """Where heights come from: the field's index, -1 for the point's Z; ``described`` for the log."""

    index: int
    described: str


def height_column(source, given, use_z=True):
    """The field with heights by the usual names; InputError where there is neither field nor Z."""
    index = named_field(source, given, "HEIGHT_FIELD", ("height",))
    if index >= 0:
        return HeightColumn(index, tr("field '{}'").format(source.fields()[index].name()))
    if use_z and QgsWkbTypes.hasZ(source.wkbType()):
        return HeightColumn(-1, tr("the points' Z"))
    if not use_z:
        return HeightColumn(-1, tr("none"))
    raise InputError(
        tr(
            "Layer '{}' has no field 'height' and its points have no Z; choose the field with the heights "
            "(HEIGHT_FIELD)."
        ).format(source.sourceName()),
        keys=("HEIGHT_FIELD",),
    )
