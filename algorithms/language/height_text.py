"""How heights are worded, everywhere: small ones in millimetres or feet, full ones in the run's unit.

A small height (a residual, a movement, a standard deviation) is written to 0.1 mm or 0.001 ft, finer where a step, an
accuracy or levelling needs it; a metre and more in metres, for that is a blunder or a wrong unit and nobody reads it in
millimetres. A full height is written to 0.1 mm or 0.001 ft too. In a sentence a height that is not known is 'none'; in
a cell of a table, where a number stands without its unit, it is empty. The labels of the map say the same in the
host's expressions, see styles/wording.py.
"""

import math
from dataclasses import dataclass

from ..core.conformance import decimals_for
from ..core.units import metres_per
from .number_text import number_text, signed_text
from .translation import tr
from .units import UNIT_LABELS

# Decimals of full heights in each unit, and the fewest and most of small ones in millimetres or feet.
HEIGHT_DECIMALS = {"metre": 4, "foot": 3, "us_foot": 3}
_LEAST = {"metre": 1, "foot": 3, "us_foot": 3}
_MOST = {"metre": 3, "foot": 5, "us_foot": 5}
# From here on, in metres, a small height is none and is written as a full one; where heights are metric.
FULL_FROM = 1.0


def _known(value):
    return value is not None and math.isfinite(value)


@dataclass(frozen=True)
class Amounts:
    """How small heights (metres) are written in a run whose heights are in ``unit``; ``decimals`` of the text."""

    unit: str
    decimals: int

    @property
    def metres(self):
        """The metres in one of what small heights are counted in: millimetres or feet."""
        return 1e-3 if self.unit == "metre" else metres_per(self.unit)

    @property
    def label(self):
        return "mm" if self.unit == "metre" else UNIT_LABELS[self.unit]

    @property
    def height_decimals(self):
        """Decimals that say the same in the unit of full heights, where a column needs one unit."""
        return self.decimals + (3 if self.unit == "metre" else 0)

    def _scaled(self, value):
        return value * 1000.0 if self.unit == "metre" else value / self.metres

    def text(self, value):
        """The number alone, for a cell under a heading with ``label``; '' where there is none."""
        return number_text(self._scaled(value), self.decimals) if _known(value) else ""

    def signed(self, value):
        """The same with a plus sign before positive numbers."""
        return signed_text(self._scaled(value), self.decimals) if _known(value) else ""

    def with_unit(self, value, sign=False):
        """The number with its unit, for a sentence."""
        write = signed_text if sign else number_text
        if not _known(value):
            return number_text(value, 0)
        if self.unit == "metre" and abs(value) >= FULL_FROM:
            return f"{write(value, HEIGHT_DECIMALS[self.unit])} {UNIT_LABELS[self.unit]}"
        return f"{write(self._scaled(value), self.decimals)} {self.label}"

    def alike(self, values, signs=()):
        """Texts of the heights that stand in one sentence, all in one unit: metres where one of them is a metre.

        ``signs``: True for those that show a plus sign; none does where it is left out.
        """
        signs = tuple(signs) or (False,) * len(values)
        whole = self.unit == "metre" and any(abs(value) >= FULL_FROM for value in values if _known(value))
        if not whole:
            return [self.with_unit(value, sign) for value, sign in zip(values, signs)]
        decimals = HEIGHT_DECIMALS[self.unit]
        texts = [(signed_text if sign else number_text)(value, decimals) for value, sign in zip(values, signs)]
        return [f"{text} {UNIT_LABELS[self.unit]}" if _known(v) else text for text, v in zip(texts, values)]

    def span(self, low, high):
        """(low, high with its unit) of a range, both in one unit."""
        if self.unit == "metre" and abs(high) >= FULL_FROM:
            return height_text(low, self.unit), self.with_unit(high)
        return self.text(low), self.with_unit(high)


class _Ratios:
    """How a rise per length, without unit, is written: in parts per million, the same whatever the run's unit is."""

    label = "ppm"

    @staticmethod
    def text(value):
        """The number alone; '' where there is none."""
        return number_text(value * 1e6, 1) if _known(value) else ""

    @staticmethod
    def signed(value):
        """The same with a plus sign before positive numbers."""
        return signed_text(value * 1e6, 1) if _known(value) else ""


RATIOS = _Ratios()


def amounts_for(unit, finest=None):
    """Amounts for heights in ``unit``: 0.1 mm or 0.001 ft, finer where a step of ``finest`` metres needs it."""
    least, most = _LEAST[unit], _MOST[unit]
    size = 0.0 if finest is None else Amounts(unit, least)._scaled(finest)
    decimals = next((d for d in range(least, most) if abs(round(size, d) - size) < 1e-7 * max(size, 1e-9)), most)
    return Amounts(unit, decimals)


def exact_text(metres, unit):
    """A height that somebody chose, a tolerance or a scale, with its ``unit``, as fine as it needs."""
    return amounts_for(unit, metres).with_unit(metres)


def amounts_within(unit, size):
    """Amounts that show a tenth of ``size`` (metres, an accuracy or a tolerance; None where none is known)."""
    shown = None if size is None else Amounts(unit, _LEAST[unit])._scaled(size)
    return Amounts(unit, decimals_for(shown, least=_LEAST[unit], most=_MOST[unit]))


def levelled_amounts(unit):
    """Amounts for levelled height differences, which are read finer: 0.01 mm or 0.0001 ft."""
    return Amounts(unit, _LEAST[unit] + 1)


def small_text(value, units, sign=False):
    """A small height in metres with its unit, for a sentence; ``units``: the run's Units."""
    return amounts_for(units.height_name).with_unit(value, sign)


def side_text(value, units, amounts=None):
    """A lateral departure in metres, positive right, with its unit and side: '5.0 mm right'; no side where it is
    written as zero. ``amounts``: how it is written, as small heights of the run's ``units`` if not told."""
    amounts = amounts or amounts_for(units.height_name)
    size = amounts.with_unit(abs(value))
    return sided(size, value if _known(value) and size != amounts.with_unit(0.0) else 0)


def sided(text, value):
    """A size as ``text`` with the side of ``value``, positive right; no side at 0."""
    if not value:
        return text
    return tr("{} right").format(text) if value > 0 else tr("{} left").format(text)


def small_texts(values, units, signs=()):
    """Small heights of one sentence, metres, all in one unit: see Amounts.alike."""
    return amounts_for(units.height_name).alike(values, signs)


def height_text(value, unit, sign=False):
    """A full height in metres as a number in ``unit``, for a cell; '' where there is none."""
    write = signed_text if sign else number_text
    return write(value / metres_per(unit), HEIGHT_DECIMALS[unit]) if _known(value) else ""


def full_height(value, unit):
    """A full height in metres with its ``unit``, for a sentence."""
    return f"{height_text(value, unit)} {UNIT_LABELS[unit]}" if _known(value) else number_text(value, 0)


def height_with_unit(value, units):
    """The same for the run's Units."""
    return full_height(value, units.height_name)


def grid_text(value, step, unit, sign=False):
    """A height of a grid, metres, with its unit and as few decimals as its ``step`` (metres) needs: round numbers in
    one unit all over the grid, millimetres below a step of 1 m.
    """
    write = signed_text if sign else number_text
    if unit == "metre" and step < 0.9999:
        return write(value * 1000.0, 0 if step > 0.0009 else 2) + " mm"
    decimals = max(0, math.ceil(-math.log10(step / metres_per(unit)) - 1e-9))
    return write(value / metres_per(unit), decimals) + " " + UNIT_LABELS[unit]
