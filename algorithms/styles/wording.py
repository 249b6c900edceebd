"""Pieces of host expressions that put heights and chainages into words; each function returns expression text.

They give the texts of language/height_text.py, which states the rules: a decimal point and no grouping whatever the
user's country, since stations, logs and pages are written so too.
"""

from ..language.height_text import FULL_FROM, HEIGHT_DECIMALS, amounts_for
from ..language.shown_stations import MINUS
from ..language.stored_words import words_of
from ..language.translation import tr
from ..language.units import UNIT_LABELS


def literal(text):
    """Return ``text`` as an expression's string literal; translations may hold quotes and backslashes."""
    return "'" + text.replace("\\", "\\\\").replace("'", "''").replace("\n", "\\n") + "'"


def column(fields, name):
    """Return the reference to field ``name`` of ``fields`` (QgsFields), or ``NULL`` where there is none.

    An expression with an unknown field fails as a whole, and its rule or label with it; with NULL the rest still works.
    """
    return f'"{name}"' if fields.indexOf(name) >= 0 else "NULL"


def station_name(fields):
    """Return the station in field 'station' as people read it, see language/shown_stations.py; NULL stays NULL."""
    value = column(fields, "station")
    return value if value == "NULL" else f"regexp_replace({value}, '^-(?=[0-9])', '{MINUS}')"


def word(fields, name):
    """Return what a person reads for the stored word in field ``name``; one that is not known as it stands, NULL stays
    NULL."""
    value = column(fields, name)
    if value == "NULL":
        return value
    known = " ".join(
        f"WHEN {value} = {literal(stored)} THEN {literal(text)}" for stored, text in words_of(name).items()
    )
    return f"(CASE {known} ELSE {value} END)"


def escaped(expression):
    """Return the text of ``expression`` made safe for HTML; NULL becomes an empty text."""
    text = f"to_string(coalesce({expression}, ''))"
    for plain, entity in (("&", "&amp;"), ("<", "&lt;"), (">", "&gt;"), ('"', "&quot;")):
        text = f"replace({text}, '{plain}', '{entity}')"
    return text


def _number(expression, places):
    """The size of ``expression`` with fixed decimals."""
    return f"replace(format_number(abs({expression}), {places}, 'en'), ',', '')"


def decimal(expression, places, unit):
    """Return ``expression`` with ``places`` decimals, a true minus, no '-0', and ``unit`` (text)."""
    number = _number(expression, places)
    negative = f"{expression} < 0 AND to_real({number}) > 0"
    return f"(if({negative}, '{MINUS}', '') || {number} || {literal(unit and ' ' + unit)})"


def full_height(expression, height_unit):
    """Return a full height with its unit; ``expression`` is in ``height_unit`` ('metre', 'foot', 'us_foot')."""
    return decimal(expression, HEIGHT_DECIMALS[height_unit], UNIT_LABELS[height_unit])


def _small_number(expression, height_unit, amounts):
    """(number, unit) of a small height without its sign, as expressions."""
    if height_unit != "metre":
        return _number(expression, amounts.decimals), literal(" " + amounts.label)
    is_full = f"abs({expression}) >= {FULL_FROM!r}"
    small, full = _number(f"({expression}) * 1000", amounts.decimals), _number(expression, HEIGHT_DECIMALS["metre"])
    return f"if({is_full}, {full}, {small})", f"if({is_full}, ' m', {literal(' ' + amounts.label)})"


def small_height(expression, height_unit, amounts=None):
    """Return the size of a small height with its unit, without its sign; NULL stays NULL.

    ``expression`` is in ``height_unit`` ('metre', 'foot', 'us_foot'); ``amounts``: how small heights are written, to
    0.1 mm or 0.001 ft if not told.
    """
    return "({} || {})".format(*_small_number(expression, height_unit, amounts or amounts_for(height_unit)))


def height_sign(expression, height_unit, amounts=None):
    """Return the sign of a small height as written, -1, 0 or 1: zero where the text is, since '+0.0 mm' would claim a
    direction.
    """
    number, _unit = _small_number(expression, height_unit, amounts or amounts_for(height_unit))
    return f"(CASE WHEN to_real({number}) = 0 THEN 0 WHEN {expression} > 0 THEN 1 WHEN {expression} < 0 THEN -1 END)"


def signed_height(expression, height_unit, amounts=None):
    """Return a small height with its sign and its unit; none where it is written as zero. NULL stays NULL."""
    sign, size = (part(expression, height_unit, amounts) for part in (height_sign, small_height))
    return f"(CASE WHEN {sign} = 1 THEN '+' WHEN {sign} = -1 THEN '{MINUS}' ELSE '' END || {size})"


def side_text(expression, height_unit):
    """Return a lateral departure, positive right, with its unit and side, '5.0 mm right'; NULL stays NULL."""
    sign, size = (part(expression, height_unit) for part in (height_sign, small_height))
    right, left = tr("{} right").split("{}"), tr("{} left").split("{}")
    worded = [f"{literal(before)} || {size} || {literal(after)}" for before, after in (right, left)]
    return f"(CASE WHEN {sign} = 1 THEN {worded[0]} WHEN {sign} = -1 THEN {worded[1]} ELSE {size} END)"
