"""The slope of the geoid that a project states, from its deflection of the vertical (method pages 4 and 6)."""

from ..core.errors import InputError
from ..core.geoid_slope import ARC_SECOND
from ..language.number_text import plain_text, signed_text
from ..language.translation import tr

# Deflections of the vertical reach some 100 seconds beside the steepest mountains and islands.
_STEEPEST = 200.0
_KEYS = ("GEOID_SLOPE_E", "GEOID_SLOPE_N")


def stated_slope(asked, kind):
    """Rise of N per metre to the east and to the north as stated, (2,) without unit; None where it is not.

    ``kind``: of UNDULATION. InputError where one component is missing, or the undulations have a slope of their own.
    """
    given = [asked.number(key) for key in _KEYS]
    if given == [None, None]:
        return None
    if None in given:
        missing = _KEYS[given.index(None)]
        raise InputError(
            tr("{} is missing: a stated slope of the geoid needs GEOID_SLOPE_E and GEOID_SLOPE_N.").format(missing),
            keys=(missing,),
        )
    if kind in ("field", "grid"):
        raise InputError(
            tr(
                "GEOID_SLOPE_E and GEOID_SLOPE_N are given, but UNDULATION '{}' brings a slope of the geoid of its "
                "own; leave them empty, or choose another UNDULATION."
            ).format(kind),
            keys=(*_KEYS, "UNDULATION"),
        )
    for key, value in zip(_KEYS, given):
        if abs(value) > _STEEPEST:
            raise InputError(
                tr("{} is {}: no geoid slopes by more than {} seconds of arc.").format(
                    key, plain_text(value), plain_text(_STEEPEST)
                ),
                keys=(key,),
            )
    return tuple(value * ARC_SECOND for value in given)


def slope_text(slope):
    """A slope of the geoid (2,), without unit, in words: '+3.10″ to the east, −1.00″ to the north'."""
    return tr("{}\u2033 to the east, {}\u2033 to the north").format(
        *(signed_text(float(value) / ARC_SECOND, 2) for value in slope)
    )
