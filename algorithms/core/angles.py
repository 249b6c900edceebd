"""Angles as field books hold them: decimal degrees, degrees with minutes and seconds, gon."""

import re

from .errors import InputError

ANGLE_UNITS = ("degree", "dms", "packed", "gon")
_NUMBER = re.compile(r"[0-9]+(?:[.,][0-9]+)?")
_BETWEEN = re.compile(r"[\s°º'\"′″’”:dmsDMS\-]*")


def angle(text, unit):
    """Degrees of an angle as written.

    ``unit``: 'degree' (88.3875), 'dms' (88 23 15, 88°23'15", 88-23-15.0; minutes may carry the decimals), 'packed'
    (88.2315 is 88°23'15"), 'gon' (98.2083). A minus sign, typed or typographic, may stand before it; decimals after a
    point or a comma. InputError where it is none of that, or minutes or seconds reach 60.
    """
    if unit not in ANGLE_UNITS:
        raise InputError(f"The unit of angles '{unit}' is unknown; known are {', '.join(ANGLE_UNITS)}.")
    written = text.strip()
    sign = -1.0 if written[:1] in ("-", "\u2212") else 1.0
    body = written.lstrip("+-\u2212 ")
    if unit == "dms":
        return sign * _sexagesimal(_parts(body, written), written)
    if not _NUMBER.fullmatch(body):
        raise InputError(f"The angle '{written}' is not a number.")
    number = body.replace(",", ".")
    if unit == "packed":
        return sign * _sexagesimal(_unpacked(number), written)
    return sign * float(number) * (0.9 if unit == "gon" else 1.0)


def _parts(body, written):
    """Degrees, minutes and seconds of a text with separators between them."""
    numbers = _NUMBER.findall(body)
    rest = _NUMBER.sub("", body)
    if (
        not 2 <= len(numbers) <= 3
        or not _BETWEEN.fullmatch(rest)
        or any(not number.isdigit() for number in numbers[:-1])
    ):
        raise InputError(f"The angle '{written}' is not degrees, minutes and seconds, such as 88 23 15.")
    values = [float(number.replace(",", ".")) for number in numbers]
    return values + [0.0] * (3 - len(values))


def _unpacked(number):
    whole, _, digits = number.partition(".")
    digits = digits.ljust(4, "0")
    return [float(whole), float(digits[:2]), float(digits[2:4] + "." + (digits[4:] or "0"))]


def _sexagesimal(parts, written):
    degrees, minutes, seconds = parts
    if minutes >= 60.0 or seconds >= 60.0:
        raise InputError(f"The angle '{written}' has minutes or seconds of 60 or more.")
    return degrees + minutes / 60.0 + seconds / 3600.0


def zenith_angle(text, unit, *, vertical):
    """Zenith angle in degrees, between 0 and 180, of a zenith or (``vertical``) a vertical angle as written.

    A zenith reading of the second face, above 180 degrees, is turned to the first. InputError where the line of sight
    would point to the zenith or the nadir, within a degree.
    """
    value = angle(text, unit)
    zenith = 90.0 - value if vertical else (360.0 - value if value > 180.0 else value)
    if not 1.0 <= zenith <= 179.0:
        kind = "vertical" if vertical else "zenith"
        raise InputError(f"The {kind} angle '{text.strip()}' is no sight from one point to another.")
    return zenith
