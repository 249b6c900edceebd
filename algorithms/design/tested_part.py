"""What the search for blunders has found among the rows of a fit, upwards or sideways: one rule for both."""

from dataclasses import dataclass

import numpy as np

from ..core.least_squares import Search
from ..core.moved_stretches import many_flagged, moved_stretches
from ..core.quantiles import BAARDA


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


def tested_part(found, axis, chainage):
    """TestedPart of a Search ``found`` among rows with ``axis`` (indices) and ``chainage``, metres (n,)."""
    flagged = ~found.kept | (np.abs(np.nan_to_num(found.w)) > _limit(found))
    for row in (*found.guarded, *(row for pair in found.twins for row in pair)):
        flagged[row] = True
    if not np.any(flagged):
        return TestedPart(found, flagged, (), False)
    moved = moved_stretches(axis, chainage, found.fitted.residuals, flagged)
    return TestedPart(
        found, flagged, tuple(tuple(part.tolist()) for part in moved), many_flagged(flagged.sum(), len(flagged))
    )


def _limit(found):
    """What |w| of all rows is compared with; the set-aside ones are suspected anyway."""
    return found.solution.critical if np.isfinite(found.solution.critical) else BAARDA * 1e9
