"""The units of a run by name, as texts write them, and in metres."""

from dataclasses import dataclass

from ..core.units import metres_per

UNIT_LABELS = {"metre": "m", "foot": "ft", "us_foot": "US ft"}


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
