"""Where the heights of a layer of points come from: a field, or the points' Z."""

from dataclasses import dataclass

from qgis.core import QgsWkbTypes

from ..core.errors import InputError
from ..language.number_text import listed
from ..language.translation import tr
from .input_fields import field_of_kind, headings_of, named_field


@dataclass(frozen=True)
class HeightColumn:
    """Where heights come from: the field's index, -1 for the point's Z; ``described`` for the log; ``headings``: the
    field's name and alias."""

    index: int
    described: str
    headings: tuple = ()


def height_column(source, given, needed=True):
    """The field with heights: the one given, 'height', or another of core.headings; the points' Z goes before those.

    InputError where there is neither field nor Z. Unless ``needed``, none is no error then, nor are several that may
    be meant, and what is not a number by its type is taken for no height.
    """
    index = named_field(source, given, "HEIGHT_FIELD", ("height",))
    with_z = QgsWkbTypes.hasZ(source.wkbType())
    if index < 0 and not with_z:
        index = field_of_kind(source, "", "HEIGHT_FIELD", "height", ambiguous_refused=needed)
    if index >= 0 and not (needed or given or source.fields()[index].isNumeric()):
        index = -1
    if index >= 0:
        return HeightColumn(index, tr("field '{}'").format(source.fields()[index].name()), headings_of(source, index))
    if with_z:
        return HeightColumn(-1, tr("the points' Z"))
    if not needed:
        return HeightColumn(-1, tr("none"))
    raise InputError(
        tr(
            "Layer '{}' has no field 'height' and its points have no Z; choose the field with the heights "
            "(HEIGHT_FIELD) among {}."
        ).format(source.sourceName(), listed([field.name() for field in source.fields()], 12) or tr("no field")),
        keys=("HEIGHT_FIELD",),
    )
