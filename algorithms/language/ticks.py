"""Numbers at the axes of charts, without zeros that say nothing."""

from .height_text import sided
from .translation import decimal_sign


def plain_ticks(value, _place):
    """A height, a length or a factor: '5', '0', '−0.2'."""
    text = f"{value:.6f}".rstrip("0").rstrip(".")
    return ("0" if text in ("-0", "") else text).replace("-", "\u2212").replace(".", decimal_sign())


def side_ticks(value, _place):
    """A lateral departure, positive right: '5 left', '0', '5 right'."""
    text = plain_ticks(abs(value), _place)
    return sided(text, 0 if text == "0" else value)
