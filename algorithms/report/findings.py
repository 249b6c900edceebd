"""What a review report finds: figures, stretches that moved, doubts and the verdict; all from the core's pure
functions.
"""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from ..core.conformance import Accuracy, Figures, Verdict, accuracy_95, conformance, figures, verdict
from ..core.moved_stretches import in_stretch, moved_stretches
from ..core.residuals import ASIDE
from ..language.height_text import Amounts, amounts_within
from ..structure.reviewed_stations import suspicions
from .data import Reviewed, accepted, doubtful
from .line import LineFindings, WithProbability, departed_in_line, line_findings
from .residual_errors import deviations_of_residuals


@dataclass(frozen=True)
class Findings(WithProbability):
    """``moved``: list of index arrays, stretches of neighbours beyond the tolerance; ``doubt``: mask (n,) of heights
    that are not believed; ``suspected``: of blunders, without the flags of a fit that does not hold; ``all``,
    ``believed``: Figures with and without those; ``amounts``: how small heights are written; ``through_stations``:
    whether the design goes through stations of the survey, whose errors then are in the probabilities;
    ``lat_suspected``, ``lat_moved``: as ``suspected`` and ``moved``, in plan; ``line``: None where none was judged by
    line."""

    reviewed: Reviewed
    verdict: Verdict
    probability: np.ndarray
    moved: list
    doubt: np.ndarray
    suspected: np.ndarray
    all: Figures
    believed: Figures
    accuracy: Accuracy
    amounts: Amounts
    through_stations: bool
    lat_suspected: np.ndarray
    lat_moved: list
    line: Optional[LineFindings] = None

    @property
    def known(self):
        return np.isfinite(self.reviewed.residual)

    @property
    def flagged(self):
        """Indices of the stations that somebody must look at: beyond the tolerance, suspected, decided, without a
        height.
        """
        one = self.reviewed
        looked = np.isin(one.status.astype(str), ("high", "low", "no height")) | self.suspected
        looked |= self.lat_suspected
        looked[list(one.decided)] = True
        if one.line is not None:
            looked |= np.isin(one.line.side.astype(str), ASIDE)
            together = self.line.together
            looked |= False if together is None else together.verdict.out | together.verdict.doubted
        return np.flatnonzero(looked & (one.status != "off axis"))


def findings(reviewed):
    """Findings of what was read."""
    one = reviewed
    places = {name: k for k, name in enumerate(one.axes)}
    number = np.array([places[name] for name in one.axis], int)
    lateral = np.full(len(one), np.nan) if one.line is None else one.line.lateral
    suspected, _ = suspicions(number, one.w, one.residual, one.suspected)
    lat_suspected, _ = suspicions(number, one.lat_w, lateral, one.lat_suspected)
    # Without a tolerance it is the test that says which stations depart.
    beyond = np.where(np.isfinite(one.tolerance), np.isin(one.status.astype(str), ("high", "low")), suspected)
    moved = moved_stretches(number, one.chainage, one.residual, beyond)
    doubt = doubtful(one, suspected & ~in_stretch(len(one), moved))
    lat_moved = departed_in_line(one, number, lat_suspected)
    lat_doubt = doubtful(one, lat_suspected & ~in_stretch(len(one), lat_moved))
    spread, through_stations = deviations_of_residuals(one)
    probability = conformance(one.residual, one.tolerance, spread)
    on = np.where(one.status == "off axis", np.nan, one.residual)
    believed = np.where(doubt, np.nan, on)
    said = verdict(on, one.status, probability, doubtful=doubt, accepted=accepted(one))
    return Findings(
        one,
        said,
        probability,
        moved,
        doubt,
        suspected,
        figures(on),
        figures(believed),
        accuracy_95(believed, own_heights=own_heights(one)),
        _amounts(one),
        through_stations,
        lat_suspected,
        lat_moved,
        line_findings(one, lat_moved, (lat_doubt, accepted(one)), spread, doubt),
    )


def own_heights(reviewed):
    """Whether the design was taken from the heights it is compared with: a control left empty, or a fitted
    reference.
    """
    fitted = [row["record"].entry == "tautline:fitreference" for row in reviewed.references]
    return any(
        axis.get("from_stations")
        or any(control.get("typed") is False for control in axis.get("controls", ()))
        or axis.get("design") == "reference"
        and (not fitted or any(fitted))
        for axis in reviewed.record.known_axes()
    )


def _amounts(one):
    """Decimals that show a tenth of the heights' accuracy, else of the tolerance."""
    sizes = one.sd if np.any(np.isfinite(one.sd)) else one.tolerance
    size = float(np.nanmin(sizes)) if np.any(np.isfinite(sizes)) else None
    return amounts_within(one.units.height_name, size)
