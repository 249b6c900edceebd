"""Collimation of a level from a two-peg test."""

from dataclasses import dataclass

import numpy as np

from .errors import InputError
from .sights import level_setup_correction


@dataclass(frozen=True)
class PegSetup:
    """One setup of a two-peg test: readings on the two staffs and the lengths of their sights, metres. InputError where
    a reading is no number or a length negative."""

    first: float
    second: float
    first_length: float
    second_length: float

    def __post_init__(self):
        if not np.all(np.isfinite([self.first, self.second])):
            raise InputError("A reading of the two-peg test is not a number.")
        if not (0.0 <= self.first_length < np.inf and 0.0 <= self.second_length < np.inf):
            raise InputError("A sight length of the two-peg test is negative or not a number.")

    @property
    def imbalance(self):
        """Length of the sight to the second staff less that to the first, metres."""
        return self.second_length - self.first_length

    def difference(self, *, k, radius):
        """Height of the second peg above the first, free of curvature and refraction, with collimation; metres."""
        correction = level_setup_correction(self.first_length, self.second_length, k=k, radius=radius)
        return self.first - self.second + correction


@dataclass(frozen=True)
class PegTest:
    """Result: ``collimation``, rise of the line of sight per length (positive: it points up), without unit, its
    ``deviation`` (NaN where no reading precision is stated), and the ``difference`` of the pegs, metres."""

    collimation: float
    deviation: float
    difference: float


def two_peg_test(one, other, *, k, radius, reading=np.nan):
    """Collimation from two setups (PegSetup) over the same pegs; ``reading``: standard deviation of a reading, metres.

    The line of sight reads c D too much at distance D, so a setup shows the difference c times its imbalance too low.
    InputError where both setups are equally unbalanced, so that nothing can be told.
    """
    base = one.imbalance - other.imbalance
    if abs(base) < 1.0:
        raise InputError("The two setups of the two-peg test have sights alike; one must be balanced, the other not.")
    shown = one.difference(k=k, radius=radius), other.difference(k=k, radius=radius)
    collimation = (shown[1] - shown[0]) / base
    return PegTest(collimation, 2.0 * reading / abs(base), shown[0] + collimation * one.imbalance)


def peg_setups(text):
    """The two PegSetups of a text 'reading, reading, length, length; reading, reading, length, length', metres.

    InputError where it is not that.
    """
    setups = [part for part in text.replace("\n", ";").split(";") if part.strip()]
    try:
        numbers = [[float(word) for word in part.replace(",", " ").split()] for part in setups]
    except ValueError:
        numbers = []
    if len(numbers) != 2 or any(len(row) != 4 for row in numbers):
        raise InputError(
            "The two-peg test '{}' is not two setups of four numbers each: both readings and both "
            "sight lengths, as in 1.476, 1.432, 20, 20; 1.556, 1.472, 50, 10.",
            text.strip(),
        )
    return tuple(PegSetup(*row) for row in numbers)
