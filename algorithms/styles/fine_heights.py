"""Movements and changes in host expressions: tenths of a millimetre, or thousandths of a foot."""

from .wording import METRIC, MINUS


def fine_height(expression, height_unit):
    """Return the size of a small height, without its sign, as expression text; NULL stays NULL."""
    if height_unit == METRIC:
        return f"(format_number(abs({expression}) * 1000, 1) || ' mm')"
    return f"(format_number(abs({expression}), 3) || ' ft')"


def signed_fine_height(expression, height_unit):
    """The same with its sign; none where it rounds to zero. NULL stays NULL."""
    finest = 10000 if height_unit == METRIC else 1000
    return (
        f"(CASE WHEN round({expression} * {finest}) > 0 THEN '+' WHEN round({expression} * {finest}) < 0 THEN "
        f"'{MINUS}' "
        f"ELSE '' END || {fine_height(expression, height_unit)})"
    )
