"""Whether the vertical part of the stations' reference system and the form say the same of their heights
(method page 5)."""

from ..boundary.reference_systems import definition
from ..core.errors import InputError
from ..core.geodesy import vertical_part
from ..core.units import metres_per
from ..entry.recorded_system import height_kind
from ..language.number_text import plain_text
from ..language.translation import tr
from ..language.units import UNIT_LABELS

# What 'Convert heights' calls ellipsoidal heights: they stay on a layer whose reference system tells of its Z.
CONVERTED = "height_ell"


def check_vertical(asked, points, unit_name, field, *, key="UNDULATION", said=""):
    """InputError where the two contradict each other; a warning where only the unit does.

    ``points``: boundary.points.Points; ``unit_name``: unit of heights; ``field``: name of the field with the heights,
    '' where they are the points' own Z, of which the reference system speaks first; ``key``: the choice that is
    'ellipsoidal' or something else; ``said``: what it is, by default the height system of the run.
    """
    part = vertical_part(definition(points.crs))
    if part is None:
        return
    said = said or height_kind(asked)
    if part.ellipsoidal and said != "ellipsoidal" and not field:
        raise InputError(
            tr(
                "Layer '{}': by its reference system '{}' Z is ellipsoidal, but {} is '{}', which is above a geoid."
            ).format(points.name, part.name, key, said),
            keys=(key,),
        )
    if not part.ellipsoidal and said == "ellipsoidal" and field.lower() != CONVERTED:
        raise InputError(
            tr("Layer '{}': by its reference system heights are '{}', above a geoid, but {} is 'ellipsoidal'.").format(
                points.name, part.name, key
            ),
            keys=(key,),
        )
    if not field:
        _check_axis(asked, points, unit_name, part)


def _check_axis(asked, points, unit_name, part):
    """Direction and unit of Z."""
    if part.down:
        raise InputError(
            tr("Layer '{}': the Z of its reference system '{}' counts downwards; heights count upwards.").format(
                points.name, part.name
            ),
            keys=("HEIGHT_FIELD",),
        )
    if abs(part.metres / metres_per(unit_name) - 1.0) > 1e-9:
        asked.warn(
            tr("Layer '{}': by its reference system '{}' one unit of Z is {} m, but HEIGHT_UNIT says {}.").format(
                points.name, part.name, plain_text(part.metres, 9), UNIT_LABELS[unit_name]
            ),
            keys=("HEIGHT_UNIT",),
        )
