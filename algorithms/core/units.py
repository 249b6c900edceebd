"""Length units of heights and chainages. Source: NIST, 84 FR 55562 (2019) and 85 FR 62698 (2020)."""

from .errors import InputError

METRES = {"metre": 1.0, "foot": 0.3048, "us_foot": 1200.0 / 3937.0}


def metres_per(unit):
    """Return the metres in one ``unit`` ('metre', 'foot', 'us_foot'); InputError for any other."""
    try:
        return METRES[unit]
    except KeyError:
        raise InputError("The unit '{}' is unknown; known are {}.", unit, ", ".join(METRES)) from None
