"""Upper and lower convex hulls of many profiles at once, without a loop over them.

A point below the line through any other two, one on either side of it, is not on the upper hull. Points are compared
with neighbours ever nearer, from half the profile down to the next one, until nothing goes any more: what is left is
convex, and so the hull. Halving the reach leaves few points after the first round. Source of the turn of three points:
Andrew (1979), Another efficient algorithm for convex hulls in two dimensions, Inf. Proc. Letters 9(5).
"""

from dataclasses import dataclass

import numpy as np

from .segments import Segments


@dataclass(frozen=True)
class Chains:
    """Corners of one hull of each of m profiles: ``x``, ``y`` (k,) by rising x, in the units given; ``legs``: Segments
    of these."""

    x: np.ndarray
    y: np.ndarray
    legs: Segments

    @property
    def slopes(self):
        """Slopes of the edges, each at its left corner (k,); those of the right ends are NaN."""
        run, rise = self.legs.steps(self.x), self.legs.steps(self.y)
        return np.where(run > 0.0, rise / np.where(run > 0.0, run, 1.0), np.nan)


def hull_chains(legs, x, y):
    """Lower and upper Chains of the profiles ``x``, ``y`` (n,), any unit each, on ``legs``, Segments of n rows."""
    order = np.lexsort((y, x, legs.which))
    lower = _upper(legs.which[order], x[order], -y[order], first=True)
    upper = _upper(legs.which[order], x[order], y[order], first=False)
    return Chains(lower.x, -lower.y, lower.legs), upper


def _upper(which, x, y, first):
    """Upper Chains of points by rising x; ``first``: whether the first of several at one place is the highest."""
    same = (np.diff(which) == 0) & (np.diff(x) == 0.0)
    keep = np.concatenate([[True], ~same] if first else [~same, [True]])
    which, x, y = which[keep], x[keep], y[keep]
    reaches = 2 ** np.arange(int(np.bincount(which).max()).bit_length())[::-1]
    number = -1
    while number != len(x):
        number = len(x)
        for reach in reaches.tolist():
            keep = _outer(Segments(np.bincount(which)), x, y, reach)
            which, x, y = which[keep], x[keep], y[keep]
    return Chains(x, y, Segments(np.bincount(which)))


def _outer(legs, x, y, reach):
    """Points that do not lie on or below the line between those ``reach`` places to either side, booleans (n,)."""
    at = np.arange(len(x))
    left = np.maximum(at - reach, legs.first[legs.which])
    right = np.minimum(at + reach, legs.last[legs.which])
    turn = (y - y[left]) * (x[right] - x) - (y[right] - y) * (x - x[left])
    return (turn > 0.0) | (left == at) | (right == at)
