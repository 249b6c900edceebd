"""Which field of a layer is meant: named by the user, or found by its usual names."""

from dataclasses import dataclass

from qgis.core import QgsWkbTypes

from ..core.errors import InputError
from ..language.number_text import listed
from ..language.translation import tr


def named_field(source, given, key, defaults=()):
    """Index of the field ``given`` by the user, else of the first of ``defaults`` there is; -1 for none.

    Names match without case. InputError where a given field does not exist.
    """
    names = [field.name().lower() for field in source.fields()]
    if given:
        if given.lower() not in names:
            raise InputError(
                tr("Layer '{}' has no field '{}' ({}); it has {}.").format(
                    source.sourceName(), given, key, listed([f.name() for f in source.fields()], 12) or tr("none")
                ),
                keys=(key,),
            )
        return names.index(given.lower())
    return next((names.index(name) for name in defaults if name in names), -1)


@dataclass(frozen=True)
class HeightColumn:
    """Where heights come from: the field's index, -1 for the point's Z; ``described`` for the log."""

    index: int
    described: str


def height_column(source, given, use_z=True):
    """The field with heights by METHOD's defaults; InputError where there is neither field nor Z."""
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
