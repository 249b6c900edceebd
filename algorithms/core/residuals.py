"""Residuals, their status against the tolerance, and their statistics."""

from dataclasses import dataclass
from typing import Optional

import numpy as np


@dataclass(frozen=True)
class Statistics:
    """Of the residuals that are numbers; metres. ``greatest_at``: index of the greatest |residual|, or None."""

    number: int
    rms: float
    mean: float
    greatest: float
    greatest_at: Optional[int]
    within: int
    high: int
    low: int
    no_height: int


def statuses(residuals, tolerance=None):
    """Status of each residual (n,), metres: 'within', 'high', 'low', 'no height' for NaN, 'no tolerance'
    without one.
    """
    residuals = np.asarray(residuals, float)
    known = np.isfinite(residuals)
    if tolerance is None:
        return np.where(known, "no tolerance", "no height")
    # A residual that is the tolerance to the last digit of a drawing is within, whatever its binary form.
    out = np.abs(residuals) > tolerance + 1e-9
    return np.select([~known, out & (residuals > 0), out], ["no height", "high", "low"], "within")


def statistics(residuals, tolerance=None):
    """Statistics of residuals (n,), metres; NaN where there is no height."""
    residuals = np.asarray(residuals, float)
    known = np.isfinite(residuals)
    values, status = residuals[known], statuses(residuals, tolerance)
    count = {name: int(np.sum(status == name)) for name in ("within", "high", "low")}
    if not len(values):
        return Statistics(0, np.nan, np.nan, np.nan, None, **count, no_height=int(np.sum(~known)))
    at = int(np.flatnonzero(known)[np.argmax(np.abs(values))])
    return Statistics(
        len(values),
        float(np.sqrt(np.mean(values**2))),
        float(values.mean()),
        float(np.abs(residuals[at])),
        at,
        **count,
        no_height=int(np.sum(~known)),
    )


def vertical_accuracy_95(rms):
    """Vertical accuracy at 95 % confidence, 1.96 times the root mean square error; in the unit of ``rms``.

    Holds for errors that are normal and free of bias. Source: FGDC-STD-007.3-1998, appendix 3-A (from memory).
    """
    return 1.96 * rms
