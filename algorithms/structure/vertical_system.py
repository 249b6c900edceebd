"""Whether the vertical part of the stations' reference system and UNDULATION say the same (method page 5)."""

from ..boundary.reference_systems import definition
from ..core.errors import InputError
from ..core.geodesy import vertical_part
from ..core.units import metres_per
from ..language.translation import tr
from ..language.units import UNIT_LABELS


def check_vertical(asked, points, unit_name, *, from_z):
    """InputError where the two contradict each other; a warning where only the unit does.

    ``points``: boundary.points.Points; ``unit_name``: unit of heights; ``from_z``: True where heights are the points'
    own Z, of which the reference system speaks first.
    """
    part = vertical_part(definition(points.crs))
    if part is None:
        return
    said = asked.choice("UNDULATION")
    if part.ellipsoidal and said != "ellipsoidal" and from_z:
        raise InputError(
            tr(
                "Layer '{}': its reference system '{}' has ellipsoidal heights, but UNDULATION is '{}', which says "
                "that "
                "they are above the geoid."
            ).format(points.name, part.name, said),
            keys=("UNDULATION",),
        )
    if not part.ellipsoidal and said == "ellipsoidal":
        raise InputError(
            tr(
                "Layer '{}': its reference system has heights by '{}', above a geoid, but UNDULATION is 'ellipsoidal'."
            ).format(points.name, part.name),
            keys=("UNDULATION",),
        )
    if not from_z:
        return
    if part.down:
        raise InputError(
            tr("Layer '{}': the Z of its reference system '{}' counts downwards; heights count upwards.").format(
                points.name, part.name
            ),
            keys=("HEIGHT_FIELD",),
        )
    if abs(part.metres / metres_per(unit_name) - 1.0) > 1e-9:
        asked.warn(
            tr("Layer '{}': by its reference system '{}' one unit of Z is {:.9g} m, but HEIGHT_UNIT says {}.").format(
                points.name, part.name, part.metres, UNIT_LABELS[unit_name]
            ),
            keys=("HEIGHT_UNIT",),
        )
