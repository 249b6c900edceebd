"""How stations are written in a run."""

from dataclasses import dataclass

import numpy as np

from ..core.errors import InputError
from ..core.station_notation import StationEquations, notation, station_equations
from ..language.shown_stations import shown_station, shown_stations
from ..language.translation import tr


@dataclass(frozen=True)
class Notation:
    """How stations are written in this run: ``unit`` in metres and by name, and the station equations."""

    name: str
    unit: float
    equations: StationEquations

    def chainage(self, text):
        """Chainage in metres of a station or distance as written."""
        value, region = notation(text)
        return self.equations.chainage(value, region) * self.unit if self.equations.pairs else value * self.unit

    def texts(self, chainages):
        """Normal notation of chainages (n,) in metres, for a field; '' for NaN."""
        return self.equations.texts(chainages / self.unit, self.name)

    def text(self, chainage):
        """That of one chainage, for a field."""
        return self.texts(np.array([chainage]))[0]

    def shown(self, chainage):
        """Normal notation of a chainage in metres as people read it."""
        return shown_station(self.text(chainage))

    def all_shown(self, chainages):
        """The same of chainages (n,)."""
        return shown_stations(self.texts(chainages))


def station_style(asked, run_units, axis_count):
    """Notation of the run; InputError for equations with several axes, of which they would be ambiguous."""
    text = asked.text("EQUATIONS")
    if text and axis_count > 1:
        raise InputError(
            tr("Station equations belong to one axis, but there are {}; run that axis alone.").format(axis_count)
        )
    return Notation(run_units.chainage_name, run_units.chainage, station_equations(text))
