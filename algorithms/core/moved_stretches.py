"""Stretches that have moved: neighbours that depart together are deformation, one alone is a blunder (method page 6).

One rule for fit, report, schedule and the test of the shape: a stretch has moved where three or more neighbours, each
of them, are flagged on one side. Three neighbours at +50, -50 and +50 mm are none: they are three doubtful readings.
"""

import numpy as np

# As many neighbours flagged on one side are a movement, not blunders.
FEWEST_NEIGHBOURS = 3
# Where more than this share of all is flagged, another shape was built than the one fitted.
MANY_FLAGGED = 0.1


def moved_stretches(axes, chainages, residuals, flagged):
    """Stretches of at least three neighbours that are each ``flagged`` (mask (n,)) on one side of zero.

    ``axes``: index of each station's axis (n,); ``chainages``, ``residuals``: (n,), any one unit each, NaN where there
    is none. Stations without a residual or chainage are passed over, a residual of exactly 0 is on neither side.
    Returns a list of index arrays, each by rising chainage.
    """
    axes, chainages, residuals = np.asarray(axes), np.asarray(chainages, float), np.asarray(residuals, float)
    rows = np.flatnonzero(np.isfinite(residuals) & np.isfinite(chainages))
    if not len(rows):
        return []
    rows = rows[np.lexsort((chainages[rows], axes[rows]))]
    side = np.where(np.asarray(flagged, bool)[rows], np.sign(residuals[rows]), 0.0)
    cuts = np.flatnonzero((np.diff(side) != 0) | (np.diff(axes[rows]) != 0)) + 1
    return [
        part
        for part, first in zip(np.split(rows, cuts), np.concatenate([[0], cuts]))
        if side[first] != 0 and len(part) >= FEWEST_NEIGHBOURS
    ]


def in_stretch(number, stretches):
    """Mask (n,) of the stations, ``number`` of them, that lie in one of ``stretches``, as ``moved_stretches``
    gives them."""
    mask = np.zeros(number, bool)
    for rows in stretches:
        mask[rows] = True
    return mask


def many_flagged(flagged, tested):
    """Whether so many are flagged that the structure has another shape than was fitted: three and more, and over a
    tenth of those ``tested``; two numbers, or two arrays of numbers of one shape. Returns a boolean or such an array.
    """
    flagged, tested = np.asarray(flagged), np.asarray(tested)
    found = (flagged >= FEWEST_NEIGHBOURS) & (flagged > MANY_FLAGGED * tested)
    return found if found.ndim else bool(found)


def flags_hold(axes, tested, suspected):
    """Whether the ``suspected`` (mask (n,)) of each station's axis may be blunders: mask (n,), False where they are
    many (see ``many_flagged``) of those ``tested`` (mask (n,)) on their axis. ``axes``: axis index (n,)."""
    axes = np.asarray(axes, int)
    count = np.bincount(axes, np.asarray(suspected, bool))
    return ~many_flagged(count, np.bincount(axes, np.asarray(tested, bool)))[axes]
