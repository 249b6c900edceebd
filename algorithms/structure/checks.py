"""What looks wrong in the stations of a run: one station twice, one beyond the ends of its axis."""

import numpy as np

from ..entry.messages import BEYOND_ENDS, STATION_TWICE
from ..language.number_text import counted, listed, number_text
from ..language.translation import tr

SAME_STATION = 0.001
# A station this far past an end of its axis still stands at it, metres.
BEYOND = 0.01


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
            tr("Layer '{}' has stations at one position more than once, all kept: rows {}.").format(
                name, listed([tr("{} and {}").format(*sorted(pair)) for pair in pairs])
            ),
            STATION_TWICE,
        )


def warn_beyond_ends(asked, name, chainages, ends, words, notation, units):
    """Warn of ``chainages`` (n,) that lie beyond the ``ends`` (first, last) of the axis ``name``, all metres, and of
    how far; ``words``: what lies, one and many."""
    past = np.maximum(ends[0] - chainages, chainages - ends[1])
    beyond = np.flatnonzero(past > BEYOND)
    if len(beyond):
        asked.warn(
            tr("Axis '{}': {} beyond its ends, by up to {} {}, on its continuation: {}.").format(
                name,
                counted(len(beyond), *words),
                number_text(past.max() / units.chainage, 2),
                units.chainage_label,
                listed(notation.all_shown(chainages[beyond[:6]]), total=len(beyond)),
            ),
            BEYOND_ENDS,
        )
