"""Numbers and lists as sentences show them."""

import math
from decimal import ROUND_HALF_UP, Context, Decimal

from .translation import decimal_sign, tr

# Digits enough for any double: nothing is rounded twice.
_EXACT = Context(prec=1200)


def number_text(value, decimals):
    """A number for a sentence: fixed decimals, a true minus sign, no '-0'; 'none' for None and NaN.

    What lies exactly in the middle is rounded away from zero, as printed tables do and the host in its labels.
    """
    if value is None or not math.isfinite(value):
        return tr("none")
    text = _rounded(value, decimals)
    return text.replace("-", "\u2212").replace(".", decimal_sign())


def _rounded(value, decimals):
    text = format(Decimal(float(value)).quantize(Decimal(1).scaleb(-decimals), ROUND_HALF_UP, _EXACT), "f")
    return text.lstrip("-") if float(text) == 0.0 else text


def signed_text(value, decimals):
    """The same with a plus sign before positive numbers."""
    text = number_text(value, decimals)
    positive = value is not None and math.isfinite(value) and float(_rounded(value, decimals)) > 0.0
    return "+" + text if positive else text


def plain_text(value, digits=6):
    """A number as it was given, for a sentence: to so many significant digits, no zeros that say nothing, a true minus;
    what is to be typed back is written with a point instead."""
    return f"{value:.{digits}g}".replace("-", "\u2212").replace(".", decimal_sign())


def times(factor):
    """An exaggeration as texts show it: '× 10,000'."""
    text = f"{factor:,.0f}" if factor >= 100 or factor == round(factor) else f"{factor:,.4g}"
    # Where the comma is the decimal sign, a space stands between thousands: SI brochure, 5.4.4.
    return "\u00d7 " + (text if decimal_sign() == "." else text.replace(",", "\u202f").replace(".", decimal_sign()))


def counted(number, one, many):
    """A number with its noun: '1 axis', '2 axes'."""
    return f"{number} {one if number == 1 else many}"


def listed(items, most=5, total=None):
    """The first few items in a sentence: 'a, b and 3 more'; ``total``: how many there are, where not all are handed
    over.
    """
    items = [str(item) for item in items]
    total = len(items) if total is None else total
    if total <= most:
        return ", ".join(items)
    return ", ".join(items[:most]) + " " + tr("and {} more").format(total - most)
