"""What the search for blunders has found among the rows of a fit, upwards or sideways: one rule for both."""

from dataclasses import dataclass

import numpy as np

from ..core.least_squares import Search
from ..core.moved_stretches import many_flagged, moved_stretches
from ..core.quantiles import BAARDA
from ..core.segments import Segments, joined


@dataclass(frozen=True)
class TestedPart:
    """``suspected``: booleans of the fit's own rows; ``moved``: runs of three and more neighbours flagged on one side,
    tuples of these rows; ``many``: more than a tenth of all is flagged. Both look like deformation rather than like
    blunders."""

    search: Search
    suspected: np.ndarray
    moved: tuple
    many: bool

    @property
    def residuals(self):
        """As found minus fitted, metres (n,), of all rows, those set aside too."""
        return self.search.fitted.residuals

    @property
    def rms(self):
        """Root mean square of the kept residuals, metres."""
        return float(np.sqrt(np.mean(self.residuals[self.search.kept] ** 2)))


def tested_parts(searches, axes, chainages):
    """TestedPart of each of many Searches, a list; ``axes``, ``chainages``: of each the axis indices and chainages,
    metres, of its rows (n,)."""
    legs = Segments([len(found.kept) for found in searches])
    limits = np.array([_limit(found) for found in searches])[legs.which]
    flagged = ~joined([found.kept for found in searches])
    flagged |= np.abs(np.nan_to_num(joined([found.w for found in searches]))) > limits
    return [_part(*one) for one in zip(searches, legs.parts(flagged), axes, chainages, legs.sums(flagged).tolist())]


def _part(found, flagged, axis, chainage, number):
    """TestedPart of a Search; ``flagged``: of its rows by their tests, ``number`` of them."""
    for row in (*found.guarded, *(row for pair in found.twins for row in pair)):
        flagged[row] = True
    if not number and not np.any(flagged):
        return TestedPart(found, flagged, (), False)
    moved = moved_stretches(axis, chainage, found.fitted.residuals, flagged)
    return TestedPart(
        found, flagged, tuple(tuple(part.tolist()) for part in moved), many_flagged(flagged.sum(), len(flagged))
    )


def _limit(found):
    """What |w| of all rows is compared with; the set-aside ones are suspected anyway."""
    return found.solution.critical if np.isfinite(found.solution.critical) else BAARDA * 1e9
