"""Pieces of host expressions that put heights and chainages into words; each function returns expression text."""

METRIC = "metre"
MINUS = "\u2212"  # the typographic minus: a hyphen is lost beside digits at label size


def literal(text):
    """Return ``text`` as an expression's string literal; translations may hold quotes and backslashes."""
    return "'" + text.replace("\\", "\\\\").replace("'", "''").replace("\n", "\\n") + "'"


def column(fields, name):
    """Return the reference to field ``name`` of ``fields`` (QgsFields), or ``NULL`` where there is none.

    An expression with an unknown field fails as a whole, and its rule or label with it; with NULL the rest still works.
    """
    return f'"{name}"' if fields.indexOf(name) >= 0 else "NULL"


def escaped(expression):
    """Return the text of ``expression`` made safe for HTML; NULL becomes an empty text."""
    text = f"to_string(coalesce({expression}, ''))"
    for plain, entity in (("&", "&amp;"), ("<", "&lt;"), (">", "&gt;"), ('"', "&quot;")):
        text = f"replace({text}, '{plain}', '{entity}')"
    return text


def decimal(expression, places, unit):
    """Return ``expression`` in the user's number format with ``places`` decimals, a true minus, and ``unit`` (text)."""
    number = f"format_number(abs({expression}), {places})"
    negative = f"round({expression}, {places}) < 0"
    return f"(if({negative}, '{MINUS}', '') || {number} || {literal(' ' + unit)})"


def small_height(expression, height_unit):
    """Return the size of a small height, without its sign: whole millimetres, or feet to three decimals.

    ``height_unit`` ('metre', 'foot', 'us_foot') is the unit ``expression`` is in.
    """
    if height_unit == METRIC:
        return f"(format_number(abs({expression}) * 1000, 0) || ' mm')"
    return f"(format_number(abs({expression}), 3) || ' ft')"


def signed_height(expression, height_unit):
    """Return a small height with its sign; what rounds to zero has none, since '+0 mm' would claim a direction."""
    size = small_height(expression, height_unit)
    return (
        f"(CASE WHEN round({expression} * 1000) > 0 THEN '+' WHEN round({expression} * 1000) < 0 THEN '{MINUS}' "
        f"ELSE '' END || {size})"
    )
