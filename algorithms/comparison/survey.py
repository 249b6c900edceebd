"""One survey of a structure: heights, their deviations, places along the axis, its date."""

from dataclasses import dataclass
from datetime import date
from typing import Optional

import numpy as np

from ..core.errors import InputError
from ..core.matching import name_key
from ..language.number_text import listed
from ..language.shown_stations import shown_station
from ..language.translation import tr
from .survey_accuracy import SurveyAccuracy


@dataclass(frozen=True)
class Readings:
    """What one survey says of one quantity: ``value``, ``sd``: metres (n,), NaN not read and unknown; ``accuracy``: a
    SurveyAccuracy."""

    value: np.ndarray
    sd: np.ndarray
    accuracy: SurveyAccuracy


@dataclass(frozen=True)
class Survey:
    """One survey. ``day``: date or None; ``label``: its date, else its layer's name; metres, arrays (n,): ``chainage``,
    ``offset`` (NaN unknown), ``height`` (NaN where not read), ``sd`` (NaN unknown), with what levelling adds; ``axis``,
    ``station``: texts; ``accuracy``: a SurveyAccuracy; ``line``: Readings of the line where it was asked for, else
    None; ``own_line``: whether the survey's line is its own, not the axis."""

    name: str
    label: str
    day: Optional[date]
    crs: object
    points: object
    axis: np.ndarray
    station: list
    chainage: np.ndarray
    offset: np.ndarray
    height: np.ndarray
    sd: np.ndarray
    accuracy: SurveyAccuracy
    line: Optional[Readings] = None
    own_line: bool = False

    def __len__(self):
        return len(self.height)

    def fingerprint(self):
        """Bytes that two layers with the same places and heights to 1 µm share, in whatever order their rows are."""
        rows = np.column_stack([self.chainage, self.offset, self.height, self.points.x, self.points.y])
        rows = np.nan_to_num(np.round(rows, 6) + 0.0, nan=np.inf)
        return rows[np.lexsort(rows.T)].tobytes()

    @property
    def heights(self):
        """Readings of the heights."""
        return Readings(self.height, self.sd, self.accuracy)


def check_names(survey):
    """InputError where a station is in a survey twice: matched by name, it must be there once."""
    seen, doubles = {}, []
    for row, key in enumerate(zip(survey.axis, map(name_key, survey.station)), 1):
        if np.isfinite(survey.height[row - 1]) and seen.setdefault(key, row) != row:
            doubles.append(f"{shown_station(survey.station[row - 1])} ({seen[key]}, {row})")
    if doubles:
        raise InputError(
            tr("Layer '{}' has stations twice (rows in brackets): {}; to match by name each must occur once.").format(
                survey.name, listed(doubles)
            )
        )
