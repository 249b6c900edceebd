"""The units of a run by name, as texts write them, and in metres."""

from dataclasses import dataclass

from ..core.units import metres_per
from .translation import tr, translatable

UNIT_LABELS = {"metre": "m", "foot": "ft", "us_foot": "US ft"}
# As a person says them: those that heights are read in, and those that only headings tell (core.headings).
_SAID = {
    "metre": translatable("metres"),
    "foot": translatable("feet (international)"),
    "us_foot": translatable("US survey feet"),
    "mm": translatable("millimetres"),
    "cm": translatable("centimetres"),
    "inch": translatable("inches"),
    "km": translatable("kilometres"),
    "mile": translatable("miles"),
}
# With what tells the two feet apart.
_DEFINED = {
    "metre": translatable("metre"),
    "foot": translatable("international foot (0.3048 m)"),
    "us_foot": translatable("US survey foot (1200/3937 m)"),
}


def defined_unit(unit):
    """A unit of heights or chainages with its definition, in the user's language."""
    return tr(_DEFINED[unit])


def said_unit(unit):
    """A unit as a person says it, in the user's language: metres, feet (international), millimetres."""
    return tr(_SAID[unit])


def said_units():
    """{unit: the same} of the units that heights and chainages are read in."""
    return {unit: said_unit(unit) for unit in UNIT_LABELS}


@dataclass(frozen=True)
class Units:
    """The run's units by name, and the metres in one of each."""

    height_name: str
    chainage_name: str

    @property
    def height(self):
        return metres_per(self.height_name)

    @property
    def chainage(self):
        return metres_per(self.chainage_name)

    @property
    def height_label(self):
        """As sentences write it: m, ft, US ft."""
        return UNIT_LABELS[self.height_name]

    @property
    def chainage_label(self):
        return UNIT_LABELS[self.chainage_name]
