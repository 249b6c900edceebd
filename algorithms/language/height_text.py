"""Small heights as tables and sentences show them: millimetres, or feet, with decimals that fit the step."""

from dataclasses import dataclass

from ..core.units import metres_per
from .number_text import number_text, signed_text
from .units import UNIT_LABELS


@dataclass(frozen=True)
class Amounts:
    """How small heights (metres) are written in a run whose heights are in ``unit``; ``decimals`` of the text."""

    unit: str
    decimals: int

    @property
    def label(self):
        return "mm" if self.unit == "metre" else UNIT_LABELS[self.unit]

    def _scaled(self, value):
        return value * 1000.0 if self.unit == "metre" else value / metres_per(self.unit)

    def text(self, value):
        return number_text(self._scaled(value), self.decimals) if value == value else ""

    def signed(self, value):
        return signed_text(self._scaled(value), self.decimals) if value == value else ""

    def with_unit(self, value, sign=False):
        return f"{self.signed(value) if sign else self.text(value)} {self.label}"


def amounts_for(unit, finest=None):
    """Amounts for heights in ``unit``: 0.1 mm or 0.001 ft, finer where a step of ``finest`` metres needs it."""
    least, most = (1, 3) if unit == "metre" else (3, 5)
    size = 0.0 if finest is None else finest * 1000.0 if unit == "metre" else finest / metres_per(unit)
    decimals = next((d for d in range(least, most) if abs(round(size, d) - size) < 1e-7 * max(size, 1e-9)), most)
    return Amounts(unit, decimals)


def height_text(value, unit):
    """A height in metres as a number in ``unit``: 4 decimals of a metre or a foot; '' for NaN."""
    return number_text(value / metres_per(unit), 4) if value == value else ""


def small_text(value, units, sign=False):
    """A small height difference in metres as a sentence shows it: mm, or thousandths of a foot."""
    write = signed_text if sign else number_text
    if units.height_name == "metre":
        # A metre and more is a blunder or a wrong unit; nobody reads that in millimetres.
        return write(value, 3) + " m" if abs(value) >= 1.0 else write(value * 1000.0, 1) + " mm"
    return write(value / units.height, 4) + " " + UNIT_LABELS[units.height_name]


def height_with_unit(value, units):
    """A height in metres in the run's unit, to 0.1 mm or 0.001 ft."""
    decimals = 4 if units.height_name == "metre" else 3
    return number_text(value / units.height, decimals) + " " + UNIT_LABELS[units.height_name]
