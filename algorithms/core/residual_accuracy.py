"""Accuracy of residuals whose design goes through stations of the same survey: the errors of these are in each of them.

A residual is h_i - sum_k a_ik h_k over the controls k, so that its variance is that of this sum. Where the controls are
typed, only the height's own error is left.
"""

import numpy as np

# Of a control itself the residual is 0 by definition: a number so small stands for certainty.
CERTAINLY = 1e-9


def control_shares(chainage, controls):
    """Share of each control's height in the design height of each station: (n, k).

    ``chainage``: metres (n,); ``controls``: chainages of one or two controls, metres. Two are the ends of a chord or of
    a grade, one the only height that moves the whole design.
    """
    if len(controls) == 1:
        return np.ones((len(chainage), 1))
    to_second = (chainage - controls[0]) / (controls[1] - controls[0])
    return np.column_stack((1.0 - to_second, to_second))


def residual_deviations(variances, controls, shares, matrix=None):
    """Standard deviations of the residuals (n,), metres.

    ``variances``: of the heights, square metres (n,), NaN where not known; ``controls``: index of each control's
    station (k,), -1 for one with a typed height, which has no error; ``shares``: see ``control_shares`` (n, k);
    ``matrix``: covariance of the heights (n, n), where they share errors.
    """
    found = variances.astype(float)
    used = [(row, shares[:, k]) for k, row in enumerate(controls) if row >= 0]
    for row, share in used:
        across = np.where(np.arange(len(found)) == row, variances, 0.0) if matrix is None else matrix[:, row]
        found = found - 2.0 * share * across
        for other, second in used:
            both = (variances[row] if row == other else 0.0) if matrix is None else matrix[row, other]
            found = found + share * second * both
    return np.sqrt(np.maximum(found, CERTAINLY**2))
