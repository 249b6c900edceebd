"""What a run of designheights has found on one axis."""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from ..core.axis import Axis
from ..core.design import DesignHeights, DesignSpec
from ..core.residuals import Statistics


@dataclass(frozen=True)
class LineResult:
    """What was found of the line of one axis, metres, NaN and -1 where there is none: ``kind``: of choices.LINES;
    ``greatest``: with its sign; ``greatest_at``, ``first``, ``last``: output rows; ``counted``: stations that the plane
    rests on; ``bend``: how far the axis' own vertices lie beside the plane; ``ends``: chainages that a chord runs
    through."""

    kind: str
    tolerance: Optional[float]
    number: int
    rms: float
    greatest: float
    greatest_at: int
    within: int
    left: int
    right: int
    first: int
    last: int
    counted: int
    bend: float
    ends: tuple = ()


@dataclass(frozen=True)
class AxisResult:
    """What was understood and found on one axis; metres. ``rows``: indices of its output rows that are on the axis."""

    axis: Axis
    height_word: str
    spec: Optional[DesignSpec]
    found: Optional[DesignHeights]
    statistics: Optional[Statistics]
    tolerance: Optional[float]
    rows: np.ndarray
    doubt: str = ""
    line: Optional[LineResult] = None

    @property
    def name(self):
        return self.axis.line.name

    def record(self, units):
        """The design and the controls as used, in the run's units."""
        controls = [
            {
                "chainage": c.chainage / units.chainage,
                "height": c.height / units.height,
                "lat": c.lat,
                "lon": c.lon,
                "typed": c.station is None,
            }
            for c in self.found.controls
        ]
        return {
            "design": self.spec.kind,
            "controls": controls,
            "slope": self.found.slope,
            "chainage_height": self.axis.chainage_height / units.height,
            "refraction": self.spec.refraction,
            "earth": self.spec.earth,
            "horizon": "geoid" if self.found.horizon_known else "ellipsoid",
            "tolerance": None if self.tolerance is None else self.tolerance / units.height,
            **self._line_record(units),
        }

    def _line_record(self, units):
        if self.line is None:
            return {}
        tolerance = self.line.tolerance
        found = {"line": self.line.kind, "line_tolerance": None if tolerance is None else tolerance / units.height}
        # A review counts the errors of the stations that a chord runs through.
        ends = {"line_ends": [end / units.chainage for end in self.line.ends]} if self.line.ends else {}
        return {**found, **ends}
