"""Residuals, their status against the tolerance, and their statistics."""

from dataclasses import dataclass
from typing import Optional

import numpy as np

# In the order of the codes of ``status_codes``.
STATUSES = ("within", "high", "low", "no height", "no tolerance", "off axis")
_SIDES = ("within", "right", "left", "", "no tolerance")
# Those of a station beyond the tolerance of the line.
ASIDE = ("left", "right")
_WITHIN, _ABOVE, _BELOW, _UNKNOWN, _WITHOUT = range(5)


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


def status_codes(values, tolerance=None):
    """Status of each residual (n,), metres, as its index in STATUSES, one byte each: see ``statuses``. ``tolerance``:
    one, or of each (n,), None or NaN for none."""
    values, limit = np.asarray(values, float), np.asarray(np.nan if tolerance is None else tolerance, float)
    codes = np.full(values.shape, _WITHIN, np.uint8)
    codes[np.broadcast_to(np.isnan(limit), values.shape)] = _WITHOUT
    # A value that is the tolerance to the last digit of a drawing is within, whatever its binary form.
    out = np.abs(values) > limit + 1e-9
    codes[out] = np.where(values[out] > 0, _ABOVE, _BELOW)
    codes[~np.isfinite(values)] = _UNKNOWN
    return codes


def statuses(residuals, tolerance=None):
    """Status of each residual (n,), metres: 'within', 'high', 'low', 'no height' for NaN, 'no tolerance'
    without one.
    """
    return np.array(STATUSES)[status_codes(residuals, tolerance)]


def sides(lateral, tolerance=None):
    """Side of each lateral departure (n,), metres, positive right: 'within', 'left', 'right', '' for NaN, 'no
    tolerance' without one. ``tolerance``: one, or of each (n,), NaN for none."""
    return np.array(_SIDES)[status_codes(lateral, tolerance)]


def statistics(residuals, tolerance=None):
    """Statistics of residuals (n,), metres; NaN where there is no height."""
    residuals = np.asarray(residuals, float)
    known = np.isfinite(residuals)
    values, numbers = residuals[known], np.bincount(status_codes(residuals, tolerance), minlength=len(STATUSES))
    count = {name: int(numbers[STATUSES.index(name)]) for name in ("within", "high", "low")}
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


def statistics_of_axes(residuals, status, bounds):
    """Statistics of each of many axes: a list. ``residuals`` (n,): metres, axis after axis, NaN where there is no
    height; ``status`` (n,): its codes, see status_codes; ``bounds`` (m + 1,): where the rows of each axis begin, and
    where all end."""
    number, axis = len(bounds) - 1, np.repeat(np.arange(len(bounds) - 1), np.diff(bounds))
    known, own, values = slice(None), axis, residuals
    if not np.isfinite(residuals).all():
        known = np.isfinite(residuals)
        own, values = axis[known], residuals[known]
    codes = {"within": _WITHIN, "high": _ABOVE, "low": _BELOW}
    counts = {name: np.bincount(axis[status == code], minlength=number) for name, code in codes.items()}
    counts["no_height"] = np.diff(bounds) - np.bincount(own, minlength=number)
    total = np.bincount(own, minlength=number)
    with np.errstate(invalid="ignore"):
        rms, mean = np.sqrt(np.bincount(own, values**2, number) / total), np.bincount(own, values, number) / total
    greatest, at = np.full(number, np.nan), np.full(number, -1)
    if len(own):
        first = np.concatenate([[0], np.flatnonzero(own[1:] != own[:-1]) + 1])
        greatest[own[first]] = np.maximum.reduceat(np.abs(values), first)
        worst = np.flatnonzero(np.abs(values) == (greatest if number == 1 else greatest[own]))
        found, leading = np.unique(own[worst], return_index=True)
        at[found] = np.arange(len(axis))[known][worst[leading]] - bounds[found]
    columns = (total, rms, mean, greatest, at, *counts.values())
    return [
        Statistics(n, r, m, g, k if n else None, *more)
        for n, r, m, g, k, *more in zip(*(column.tolist() for column in columns))
    ]


def vertical_accuracy_95(rms):
    """Vertical accuracy at 95 % confidence, 1.96 times the root mean square error; in the unit of ``rms``.

    Holds for errors that are normal and free of bias. Source: FGDC-STD-007.3-1998, appendix 3-A (from memory).
    """
    return 1.96 * rms
