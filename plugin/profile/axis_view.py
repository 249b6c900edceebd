"""What the chart shows of one axis, in the units that are displayed, and the ranges it is shown in."""

from dataclasses import dataclass, replace

import numpy as np

from ...algorithms.core.profile_views import widened
from ...algorithms.core.station_notation import station_text
from ...algorithms.core.units import METRES
from ...algorithms.language.height_text import amounts_for
from ...algorithms.language.shown_stations import shown_station


@dataclass(frozen=True)
class Ranges:
    """What the chart shows, (lowest, highest) in display units: chainages, heights, residuals; lateral departures."""

    x: tuple
    y: tuple
    r: tuple
    l: tuple = (-1.0, 1.0)  # noqa: E741 - one letter as the others


@dataclass(frozen=True)
class Overlay:
    """A line that is tried over the chart, in display units: ``x`` (m,), ``lines`` {'flat', 'level', 'straight': (m,)},
    none without a line; ``ends``: (x, y) of its points."""

    x: np.ndarray
    lines: dict
    ends: tuple


@dataclass(frozen=True)
class AxisView:
    """One axis as displayed: heights in their unit, residuals and lateral departures in mm or feet. Arrays (n,).
    ``side``: how each stands to the line; ``line_suspected``: mask of blunders in plan; ``with_line``: whether the line
    is shown."""

    name: str
    profile: object
    status: np.ndarray
    suspected: np.ndarray
    station: np.ndarray
    height_unit: str
    chainage_unit: str
    view: str
    side: np.ndarray
    line_suspected: np.ndarray
    with_line: bool = False

    @property
    def x(self):
        return self.profile.chainage / METRES[self.chainage_unit]

    @property
    def lines(self):
        return {name: value / METRES[self.height_unit] for name, value in self.profile.lines(self.view).items()}

    @property
    def residual(self):
        return self.profile.residual / amounts_for(self.height_unit).metres

    @property
    def lateral(self):
        """Positive right, NaN where the line was not judged."""
        if self.profile.lateral is None:
            return np.full(len(self.profile), np.nan)
        return self.profile.lateral / amounts_for(self.height_unit).metres

    def whole(self):
        """Ranges that show all of it."""
        x = self.x
        low, high = (x.min(), x.max()) if len(x) else (0.0, 1.0)
        low, high = (low, high) if high > low else (low - 1.0, high + 1.0)
        y = np.array(self.profile.shown_range(self.view)) / METRES[self.height_unit]
        r = np.array(self.profile.residual_range()) / amounts_for(self.height_unit).metres
        found = Ranges(widened(low, high, 0.02), widened(*y.tolist(), 0.08), widened(*r.tolist(), 0.12))
        if not self.profile.has_line:
            return found
        beside = np.array(self.profile.lateral_range()) / amounts_for(self.height_unit).metres
        return replace(found, l=widened(*beside.tolist(), 0.12))

    def overlay(self, line, points):
        """A core LineThrough (or None) and its points, Controls, as this view shows them: an Overlay."""
        s, metres = np.array([point.chainage for point in points]), METRES[self.height_unit]
        ends = self.profile.seen(s, np.array([point.height for point in points]), self.view) / metres
        known = np.zeros(0) if line is None else line.chainage
        lines = {} if line is None else line.lines
        seen = {name: self.profile.seen(known, value, self.view) / metres for name, value in lines.items()}
        return Overlay(known / METRES[self.chainage_unit], seen, (s / METRES[self.chainage_unit], ends))

    def place_of(self, x, y):
        """(chainage, height) in metres of a point of the upper chart."""
        chainage = x * METRES[self.chainage_unit]
        return chainage, float(self.profile.base_at(chainage, self.view)) + y * METRES[self.height_unit]

    def with_room(self, ranges, over):
        """The ``ranges`` with heights widened so that an Overlay is seen between its ends."""
        inside = (over.x >= over.ends[0].min()) & (over.x <= over.ends[0].max())
        values = np.concatenate([over.ends[1], *(y[inside] for y in over.lines.values())])
        values = values[np.isfinite(values)]
        if not len(values):
            return ranges
        low, high = widened(float(values.min()), float(values.max()), 0.05)
        return replace(ranges, y=(min(low, ranges.y[0]), max(high, ranges.y[1])))

    def station_at(self, chainage):
        return shown_station(station_text(chainage / METRES[self.chainage_unit], self.chainage_unit))
