"""Best-fit lines in the plane: the sum of the squares of the distances across each line is least (method page 4).

About the weighted mean, tan 2a = 2 S_xy / (S_xx - S_yy); along the line so turned S_xy is 0, so that it is the
regression on it too. Source: Pearson (1901), On lines and planes of closest fit.
"""

from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True)
class BestLines:
    """Lines of m groups; arrays (m,). ``middle``, ``shift``: their weighted mean along and aside, metres; ``turn``: how
    far they are turned from along to aside, radians; ``along2``, ``aside2``: mean squares about the mean, before
    turning."""

    middle: np.ndarray
    shift: np.ndarray
    turn: np.ndarray
    along2: np.ndarray
    aside2: np.ndarray

    def coordinates(self, group, along, aside):
        """Distances along the lines of ``group`` (indices (n,)) from their middle and across them, metres (n,)."""
        x, y = along - self.middle[group], aside - self.shift[group]
        sine, cosine = np.sin(self.turn)[group], np.cos(self.turn)[group]
        return cosine * x + sine * y, cosine * y - sine * x


def best_lines(group, along, aside, weight, number):
    """BestLines of ``number`` groups of points: ``group`` indices, ``along`` and ``aside`` metres, ``weight``, (n,)
    each. A group without weight has its line through the origin, unturned."""
    total = np.maximum(np.bincount(group, weight, number), np.finfo(float).tiny)

    def mean(values):
        return np.bincount(group, weight * values, number) / total

    middle, shift = mean(along), mean(aside)
    x, y = along - middle[group], aside - shift[group]
    xx, yy, xy = mean(x * x), mean(y * y), mean(x * y)
    return BestLines(middle, shift, 0.5 * np.arctan2(2.0 * xy, xx - yy), xx, yy)
