"""Stations measured on an axis a second time: which stand elsewhere than their first chainages say, and which axes run
the other way now.

Chainages measured at another height are all longer or shorter by one share, and those from another first chainage by
one amount: neither is another place.
"""

from dataclasses import dataclass

import numpy as np

# Metres, and a share of the distance from the start: what differs by less stands where it stood.
SLACK, SLACK_SHARE = 0.1, 2e-5
# Chainages at sea level and on the highest mountain differ by less than this share.
_SCALE = 1.5e-3
# Of an axis that runs the other way as many stations fit.
_MOST = 0.9
# Fewer stations do not tell a turned axis from stations that were moved.
_FEWEST = 3


@dataclass(frozen=True)
class MeasuredAgain:
    """``elsewhere``: mask (n,) of the rows that stand elsewhere, none of them on a turned axis; ``turned``: indices of
    the axes that run the other way, a list."""

    elsewhere: np.ndarray
    turned: list


def measured_again(axis, before, now, starts, *, other_starts=False):
    """MeasuredAgain of rows with the chainages ``before`` and ``now``, metres (n,), NaN for none. ``axis``: index of
    each row's axis (n,); ``starts``: chainage of each axis' first vertex now, metres (m,); ``other_starts``: whether
    these are known to be others than before, so that an amount common to an axis says nothing."""
    elsewhere, turned = np.zeros(len(axis), bool), []
    told = np.flatnonzero(np.isfinite(before) & np.isfinite(now))
    doubtful = told[np.abs(now[told] - before[told]) > _slack(now[told] - np.asarray(starts, float)[axis[told]])]
    if not len(doubtful):
        return MeasuredAgain(elsewhere, turned)
    told = told[np.lexsort((before[told], axis[told]))]
    bounds = np.searchsorted(axis[told], np.arange(len(starts) + 1))
    for k in np.unique(axis[doubtful]).tolist():
        rows = told[bounds[k] : bounds[k + 1]]
        was, there = before[rows] - starts[k], now[rows] - starts[k]
        slope = _slope(was, there)
        if len(rows) >= _FEWEST and abs(slope + 1.0) <= _SCALE:
            amount = there - slope * was
            if np.mean(np.abs(amount - np.median(amount)) <= _slack(there)) >= _MOST:
                turned.append(k)
                continue
        scale = slope if abs(slope - 1.0) <= _SCALE else 1.0
        amount = there - scale * was
        amount -= np.median(amount) if other_starts else 0.0
        elsewhere[rows] = np.abs(amount) > _slack(there)
    return MeasuredAgain(elsewhere, turned)


def _slack(distances):
    return SLACK + SLACK_SHARE * np.abs(distances)


def _slope(was, there):
    """Change of ``there`` per change of ``was``, rising (n,): the median over pairs half of all rows apart, in which a
    few rows elsewhere do not count; NaN where all are at one place."""
    half = (len(was) + 1) // 2
    run, rise = was[half:] - was[:-half], there[half:] - there[:-half]
    apart = run > 0.0
    return float(np.median(rise[apart] / run[apart])) if np.any(apart) else np.nan
