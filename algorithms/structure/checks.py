"""What looks wrong in the stations of a run: one station twice."""

import numpy as np

from ..entry.messages import STATION_TWICE
from ..language.number_text import listed
from ..language.translation import tr

SAME_STATION = 0.001


def duplicate_rows(axis_index, chainage, offset, station):
    """Pairs of input rows (counted from 1) whose stations stand at one place of one axis, in a list."""
    order = np.lexsort((offset, chainage, axis_index))
    same = (
        (np.diff(axis_index[order]) == 0)
        & (np.diff(chainage[order]) < SAME_STATION)
        & (np.abs(np.diff(offset[order])) < SAME_STATION)
    )
    at = np.flatnonzero(same)
    return [(int(a) + 1, int(b) + 1) for a, b in zip(station[order][at], station[order][at + 1])]


def warn_duplicates(pairs, name, asked):
    """Warn of rows that are one station twice; both stay."""
    if pairs:
        asked.warn(
            tr("Layer '{}' has stations at one place more than once, all kept: rows {}.").format(
                name, listed([tr("{} and {}").format(*sorted(pair)) for pair in pairs])
            ),
            STATION_TWICE,
        )
