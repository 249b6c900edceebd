"""Exaggeration: how many times larger than on the ground a height is drawn on a map. Common practice, no source."""

import numpy as np

from .errors import InputError
from .segments import Segments

# Of the structure's length: the bar of an ordinary large residual, and the longest bar that is drawn whole.
ORDINARY_SHARE = 1.0 / 20.0
LONGEST_SHARE = 1.0 / 6.0
_SLACK = 1e-9


def round_number(limit):
    """The greatest of 1, 2, 5 times a power of ten not above ``limit``, in the unit of ``limit``; InputError where that
    is not positive."""
    if not (np.isfinite(limit) and limit > 0.0):
        raise InputError("No round number lies below {:g}.", limit)
    # A limit that is round but for its binary form is its own round number.
    limit = limit * (1.0 + _SLACK)
    power = 10.0 ** np.floor(np.log10(limit))
    # Powers of ten below one are not exact; one that came out too large would be above the limit.
    power = power if power <= limit else power / 10.0
    step = max(step for step in (1, 2, 5) if step * power <= limit)
    exponent = int(np.rint(np.log10(power)))
    return float(step * 10**exponent) if exponent >= 0 else float(step / 10**-exponent)


def ordinary_sizes(values, rows):
    """Size of an ordinary large one of the ``values`` (n,) of each of many pieces, metres (m,): the 95th percentile of
    the sizes.

    ``rows``: their Segments; NaN where there is none. The percentile is one of the sizes, and of two or more never the
    greatest, so that one blunder does not set the scale. 0 without any.
    """
    known = np.isfinite(values)
    own, sizes = rows.which[known], np.abs(values[known])
    sizes = sizes[np.lexsort((sizes, own))]
    counts = np.bincount(own, minlength=len(rows.counts))
    last, some, found = np.cumsum(counts) - 1, counts > 0, np.zeros(len(counts))
    at = last - counts + 1 + (0.95 * (counts - 1)).astype(int)
    found[some] = sizes[at[some]]
    empty = some & (found == 0.0)
    found[empty] = sizes[last[empty]]
    return found


def ordinary_size(residuals, tolerance=None):
    """The same of one piece, or the tolerance if that is larger; ``residuals``: metres (n,), NaN for none."""
    return float(max(ordinary_sizes(residuals, Segments([len(residuals)]))[0], tolerance or 0.0))


def bar_factor(residuals, length, tolerance=None):
    """Automatic factor of residual bars: round, the bar of ``ordinary_size`` at most a twentieth of ``length``.

    ``length``: of the structure, metres. 1 where there is nothing to exaggerate.
    """
    size = ordinary_size(residuals, tolerance)
    return round_number(length * ORDINARY_SHARE / size) if size > 0.0 else 1.0


def bar_lengths(residuals, factor, longest):
    """Signed bar lengths (n,) on the ground, and which of them are cut to ``longest``; metres."""
    lengths = np.asarray(residuals, float) * factor
    cut = np.abs(lengths) > longest * (1.0 + _SLACK)
    return np.where(cut, np.copysign(longest, lengths), lengths), cut
