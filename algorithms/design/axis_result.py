"""What a run of designheights has found on one axis."""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from ..core.axis import Axis
from ..core.design import DesignHeights, DesignSpec
from ..core.residuals import Statistics


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
        }
