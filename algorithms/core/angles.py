"""Angles as field books hold them: decimal degrees, degrees with minutes and seconds, gon."""

import re

import numpy as np

from .choices import ANGLE_UNITS
from .errors import InputError

_NUMBER = re.compile(r"[0-9]+(?:[.,][0-9]+)?")
_BETWEEN = re.compile(r"[\s°º'\"′″’”:dmsDMS\-]*")


def angle(text, unit):
    """Degrees of an angle as written.

    ``unit``: 'degree' (88.3875), 'dms' (88 23 15, 88°23'15", 88-23-15.0; minutes may carry the decimals), 'packed'
    (88.2315 is 88°23'15"), 'gon' (98.2083). A minus sign, typed or typographic, may stand before it; decimals after a
    point or a comma. InputError where it is none of that, or minutes or seconds reach 60.
    """
    if unit not in ANGLE_UNITS:
        raise InputError("The unit of angles '{}' is unknown; known are {}.", unit, ", ".join(ANGLE_UNITS))
    written = text.strip()
    sign = -1.0 if written[:1] in ("-", "\u2212") else 1.0
    body = written.lstrip("+-\u2212 ")
    if unit == "dms":
        return sign * _sexagesimal(_parts(body, written), written)
    if not _NUMBER.fullmatch(body):
        raise InputError("The angle '{}' is not a number.", written)
    number = body.replace(",", ".")
    if unit == "packed":
        return sign * _sexagesimal(_unpacked(number), written)
    return sign * float(number) * (0.9 if unit == "gon" else 1.0)


# Zenith angles of level sights, degrees, as they come out where the readings are in the other unit: first and second
# face. 100 gon read as degrees is 100, 300 gon 360 - 300; 90 degrees read as gon are 81, 270 degrees 360 - 243.
_LEVEL_IN_THE_OTHER_UNIT = {"degree": (100.0, 60.0), "packed": (100.0, 60.0), "gon": (81.0, 117.0)}
_PAIR_IN_THE_OTHER_UNIT = {"degree": 200.0, "packed": 200.0, "gon": 162.0}


def reads_like_the_other_unit(zenith, unit, pairs=()):
    """True where zenith angles in degrees, read in ``unit``, lie where gon would if degrees are said, or the reverse.

    ``zenith``: (n,), NaN for none; ``pairs``: index pairs of sights both ways, whose angles add up to 180 degrees and
    so decide it, however steep the line; without them the median tells: level sights have 90 degrees.
    """
    if unit not in _LEVEL_IN_THE_OTHER_UNIT:
        return False
    zenith = np.asarray(zenith, float)
    sums = np.array([zenith[i] + zenith[j] for i, j in pairs], float)
    sums = sums[np.isfinite(sums)]
    if len(sums):
        return bool(np.median(np.abs(sums - _PAIR_IN_THE_OTHER_UNIT[unit])) < np.median(np.abs(sums - 180.0)))
    zenith = zenith[np.isfinite(zenith)]
    if not len(zenith):
        return False
    other = np.min([np.abs(zenith - level) for level in _LEVEL_IN_THE_OTHER_UNIT[unit]], axis=0)
    return bool(np.median(other) < np.median(np.abs(zenith - 90.0)))


def _parts(body, written):
    """Degrees, minutes and seconds of a text with separators between them."""
    numbers = _NUMBER.findall(body)
    rest = _NUMBER.sub("", body)
    if (
        not 2 <= len(numbers) <= 3
        or not _BETWEEN.fullmatch(rest)
        or any(not number.isdigit() for number in numbers[:-1])
    ):
        raise InputError("The angle '{}' is not degrees, minutes and seconds, such as 88 23 15.", written)
    values = [float(number.replace(",", ".")) for number in numbers]
    return values + [0.0] * (3 - len(values))


def _unpacked(number):
    whole, _, digits = number.partition(".")
    digits = digits.ljust(4, "0")
    return [float(whole), float(digits[:2]), float(digits[2:4] + "." + (digits[4:] or "0"))]


def _sexagesimal(parts, written):
    degrees, minutes, seconds = parts
    if minutes >= 60.0 or seconds >= 60.0:
        raise InputError("The angle '{}' has minutes or seconds of 60 or more.", written)
    return degrees + minutes / 60.0 + seconds / 3600.0


def zenith_angle(text, unit, *, vertical):
    """Zenith angle in degrees, between 0 and 180, of a zenith or (``vertical``) a vertical angle as written.

    A zenith reading of the second face, above 180 degrees, is turned to the first. InputError where the line of sight
    would point to the zenith or the nadir, within a degree.
    """
    value = angle(text, unit)
    zenith = 90.0 - value if vertical else (360.0 - value if value > 180.0 else value)
    if not 1.0 <= zenith <= 179.0:
        raise InputError(
            "The vertical angle '{}' is not a sight from one point to another."
            if vertical
            else "The zenith angle '{}' is not a sight from one point to another.",
            text.strip(),
        )
    return zenith
