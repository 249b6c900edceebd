"""What the chart shows of one axis, in the units that are displayed, and the ranges it is shown in."""

from dataclasses import dataclass

import numpy as np

from ...algorithms.core.profile_views import widened
from ...algorithms.core.station_notation import station_text
from ...algorithms.core.units import METRES
from ...algorithms.language.height_text import amounts_for


@dataclass(frozen=True)
class Ranges:
    """What the chart shows, (lowest, highest) in display units: chainages, heights, residuals."""

    x: tuple
    y: tuple
    r: tuple


@dataclass(frozen=True)
class AxisView:
    """One axis as displayed: heights in their unit, residuals in mm or feet. Arrays (n,)."""

    name: str
    profile: object
    status: np.ndarray
    suspected: np.ndarray
    station: np.ndarray
    height_unit: str
    chainage_unit: str
    view: str

    @property
    def x(self):
        return self.profile.chainage / METRES[self.chainage_unit]

    @property
    def lines(self):
        return {name: value / METRES[self.height_unit] for name, value in self.profile.lines(self.view).items()}

    @property
    def residual(self):
        return self.profile.residual / amounts_for(self.height_unit).metres

    def whole(self):
        """Ranges that show all of it."""
        x = self.x
        low, high = (x.min(), x.max()) if len(x) else (0.0, 1.0)
        low, high = (low, high) if high > low else (low - 1.0, high + 1.0)
        y = np.array(self.profile.shown_range(self.view)) / METRES[self.height_unit]
        r = np.array(self.profile.residual_range()) / amounts_for(self.height_unit).metres
        return Ranges(widened(low, high, 0.02), widened(*y.tolist(), 0.08), widened(*r.tolist(), 0.12))

    def station_at(self, chainage):
        return station_text(chainage / METRES[self.chainage_unit], self.chainage_unit)
