"""Movements of supports within step and travel: full correction, or the least total that meets the tolerance.

A movement is positive for raise. The predicted residual is residual + movement. Without a limit between neighbours each
support stands alone. With one it is a linear programme whose rows are differences of two movements: its matrix is
totally unimodular, so a vertex solution in whole steps exists and the simplex method finds it (Schrijver, Theory of
Linear and Integer Programming, 1986, ch. 19, from memory). Movements are therefore never rounded after they were
chosen.
"""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from .errors import InputError, Word

METHODS = ("full", "least")
# A residual that is the tolerance to the last digit of a drawing is within it (as in residuals.statuses).
SAME = 1e-9
# Decides between solutions that are equally good; too small to outweigh anything else, large enough for the solver to
# see.
_TIE = 1e-4
_NO_STEP_UNIT = 1e-3
# Metres; no shim is so thin, and whole numbers of smaller steps are more than a double holds.
SMALLEST_STEP = 1e-6


@dataclass(frozen=True)
class Rules:
    """What holds for every support; metres. ``method``: 'full' brings each residual as near to zero as can be, 'least'
    keeps the sum of absolute movements least. ``step``: of the shims, None for any movement; ``up``, ``down``:
    greatest raise and lowering, None without a limit; ``smoothness``: greatest difference of predicted residuals of
    neighbours, or None.

    InputError for an unknown method, a step below a micrometre, and negative limits.
    """

    method: str
    step: Optional[float] = None
    up: Optional[float] = None
    down: Optional[float] = None
    smoothness: Optional[float] = None

    def __post_init__(self):
        if self.method not in METHODS:
            raise InputError("The method '{}' is unknown; known are {}.", self.method, ", ".join(METHODS))
        if self.step is not None and not (np.isfinite(self.step) and self.step >= SMALLEST_STEP):
            raise InputError("The shim increment must be at least 0.001 mm; leave it empty for any movement.")
        for value, name in (
            (self.up, Word("greatest raise")),
            (self.down, Word("greatest lowering")),
            (self.smoothness, Word("limit between neighbours")),
        ):
            if value is not None and not (np.isfinite(value) and value >= 0.0):
                raise InputError("The {} cannot be negative.", name)


@dataclass(frozen=True)
class Movements:
    """``move``, ``predicted``: metres (n,), NaN where the residual is unknown. ``why``: (n,) texts, what keeps a
    support out of tolerance: 'travel', 'step', 'fixed', 'neighbours', '' where it is within or has no tolerance.
    ``steep``: pairs of neighbours (k, 2) that differ by more than the limit between neighbours."""

    move: np.ndarray
    predicted: np.ndarray
    why: np.ndarray
    steep: np.ndarray

    @property
    def total(self):
        """Sum of the absolute movements, metres."""
        return float(np.nansum(np.abs(self.move)))


def neighbouring(axes, chainages, known):
    """Pairs (k, 2) of supports that follow each other along their axis, those without a known residual passed over.

    ``axes``: index of the axis (n,); ``chainages`` (n,) in any one unit; ``known``: (n,) of booleans.
    """
    rows = np.flatnonzero(known)
    rows = rows[np.lexsort((np.asarray(chainages, float)[rows], np.asarray(axes)[rows]))]
    pairs = np.column_stack((rows[:-1], rows[1:]))
    return pairs[np.asarray(axes)[pairs[:, 0]] == np.asarray(axes)[pairs[:, 1]]] if len(pairs) else pairs


def movements(residuals, rules, *, tolerances=None, movable=None, neighbours=None):
    """Movements of supports under ``rules``.

    ``residuals``: (n,) metres, NaN unknown; ``tolerances``: (n,) metres, NaN for none; ``movable``: (n,), the others
    stay and only bind their neighbours; ``neighbours``: pairs (k, 2), needed where the rules limit the smoothness.
    Step and travel are always kept. Where tolerance and smoothness cannot be, the sum of what lies beyond them is made
    least first, in whole steps where there are any; a support for which no step falls within its tolerance goes to the
    nearest. InputError for 'least' without a tolerance, and where scipy is missing.
    """
    residuals = np.asarray(residuals, float)
    known = np.isfinite(residuals)
    tolerances = np.full(len(residuals), np.nan) if tolerances is None else np.asarray(tolerances, float)
    movable = known & (np.ones(len(residuals), bool) if movable is None else np.asarray(movable, bool))
    if rules.method == "least" and np.any(np.isnan(tolerances[movable])):
        raise InputError("The least movement needs a tolerance.")
    pairs = np.zeros((0, 2), int) if rules.smoothness is None or neighbours is None else np.asarray(neighbours, int)
    pairs = pairs[known[pairs].all(axis=1)] if len(pairs) else pairs.reshape(0, 2)
    unit = rules.step or _NO_STEP_UNIT
    rows = np.flatnonzero(known)
    costs = _Costs(residuals[rows] / unit, tolerances[rows] / unit, rules, movable[rows], unit)
    if len(pairs):
        place = np.full(len(residuals), -1)
        place[rows] = np.arange(len(rows))
        chosen = _linked(costs, place[pairs], rules.smoothness / unit, rules.step is not None)
    else:
        chosen = costs.best_alone()
    move = np.full(len(residuals), np.nan)
    move[rows] = (np.rint(chosen) if rules.step else chosen) * unit + 0.0
    predicted = residuals + move
    steep = pairs[np.abs(predicted[pairs[:, 0]] - predicted[pairs[:, 1]]) > (rules.smoothness or 0.0) + SAME]
    return Movements(
        move, predicted, _reasons(residuals, predicted, tolerances, movable, rules, costs.bounds(), unit, rows), steep
    )


class _Costs:
    """Cost of a movement of each support, convex and piecewise linear in units of the step; in whole steps between
    neighbouring integers it is interpolated, so that its kinks are integers too."""

    def __init__(self, residuals, tolerances, rules, movable, unit):
        self.residuals, self.tolerances, self.whole = residuals, tolerances, rules.step is not None
        self.along, self.left = (_TIE, 1.0) if rules.method == "full" else (1.0, _TIE)
        # Above any movement that could spare it: where supports are linked, one unit beyond may take a unit at every
        # support.
        self.beyond = 2.0 * (len(residuals) + 1)
        self.same = SAME / unit
        self.least, self.most = self._within()
        limits = [np.inf if limit is None else limit / unit for limit in (rules.up, rules.down)]
        if self.whole:
            limits = [np.floor(limit + self.same) for limit in limits]
        self.high, self.low = np.where(movable, limits[0], 0.0), np.where(movable, -limits[1], 0.0)

    def bounds(self):
        return self.low, self.high

    def _within(self):
        """Least and greatest movement that brings each support within its tolerance; infinite without one."""
        tolerances = np.where(np.isnan(self.tolerances), np.inf, self.tolerances)
        least, most = -self.residuals - tolerances, -self.residuals + tolerances
        if self.whole:
            # In whole steps, so that what lies beyond, however little, is a whole step beyond.
            least, most = np.ceil(least - self.same), np.floor(most + self.same)
            nearest = -np.sign(self.residuals) * np.ceil(np.abs(self.residuals) - 0.5 - self.same)
            least, most = np.where(least > most, nearest, least), np.where(least > most, nearest, most)
        return least, most

    def at(self, moves):
        """Cost at movements (n,) or (k, n)."""
        beyond = np.maximum(np.maximum(self.least - moves, moves - self.most), 0.0)
        return self.along * np.abs(moves) + self.left * np.abs(self.residuals + moves) + self.beyond * beyond

    def kinks(self):
        """Movements (k, n), sorted, between which the cost is linear; 0 and the limits among them."""
        near = -self.residuals
        marks = [np.floor(near + self.same), np.ceil(near - self.same)] if self.whole else [near]
        marks += [np.where(np.isinf(limit), 0.0, limit) for limit in (self.least, self.most)]
        marks = np.vstack([np.zeros(len(near)), *marks])
        return np.sort(np.clip(marks, self.low, self.high), axis=0)

    def best_alone(self):
        """The best movement of each support by itself: the best of the kinks."""
        kinks = self.kinks()
        return np.take_along_axis(kinks, np.argmin(self.at(kinks), axis=0)[None], axis=0)[0]

    def segments(self):
        """(support, sign, length, cost) of pieces that a movement is made of, counted from 0 outwards."""
        kinks = self.kinks()
        inner = np.concatenate([kinks, np.where(np.isinf(self.high), kinks[-1] + 1.0, self.high)[None]])
        inner = np.concatenate([np.where(np.isinf(self.low), kinks[0] - 1.0, self.low)[None], inner])
        cost, length = self.at(inner), np.diff(inner, axis=0)
        slope = np.diff(cost, axis=0) / np.where(length > 0, length, 1.0)
        length[-1, np.isinf(self.high)], length[0, np.isinf(self.low)] = np.inf, np.inf
        piece, support = np.nonzero(length > 0)
        sign = np.where(inner[piece + 1, support] > 0, 1.0, -1.0)
        return support, sign, length[piece, support], sign * slope[piece, support]


def _linked(costs, pairs, smoothness, whole):
    """Movements (n,) that keep neighbours together: the linear programme."""
    try:
        from scipy.optimize import linprog
        from scipy.sparse import coo_matrix
    except ImportError:
        raise InputError(
            "A limit between neighbours needs scipy in QGIS's own Python; install it (python3-scipy on Debian and "
            "Ubuntu)."
        ) from None
    support, sign, length, cost = costs.segments()
    across = costs.residuals[pairs[:, 0]] - costs.residuals[pairs[:, 1]]
    upper, lower = smoothness - across, -smoothness - across
    if whole:
        upper, lower = np.floor(upper + costs.same), np.ceil(lower - costs.same)
    number, count = len(pairs), len(costs.residuals)
    links = coo_matrix(
        (np.concatenate([np.ones(number), -np.ones(number)]), (np.tile(np.arange(number), 2), pairs.T.ravel())),
        shape=(number, count),
    ).tocsr()
    moves = coo_matrix((sign, (support, np.arange(len(support)))), shape=(count, len(support)))
    rows = (links @ moves).tocoo()
    # One row for each side of a limit, each with what it is missed by as a variable of its own.
    missed = coo_matrix((-np.ones(2 * number), (np.arange(2 * number), np.arange(2 * number))))
    from scipy.sparse import bmat, vstack

    matrix = bmat([[vstack([rows, -rows]), missed]], format="csc")
    found = linprog(
        np.concatenate([cost, np.full(2 * number, costs.beyond)]),
        A_ub=matrix,
        b_ub=np.concatenate([upper, -lower]),
        bounds=np.column_stack([np.zeros(matrix.shape[1]), np.concatenate([length, np.full(2 * number, np.inf)])]),
        method="highs-ds",
    )
    if found.status != 0:
        raise InputError("The movements could not be determined: {}.", found.message.strip().rstrip("."))
    return np.bincount(support, sign * found.x[: len(support)], minlength=count)


def _reasons(residuals, predicted, tolerances, movable, rules, bounds, unit, rows):
    """What keeps each support out of tolerance, see Movements."""
    low, high = (np.zeros(len(residuals)) for _ in range(2))
    low[rows], high[rows] = bounds[0] * unit, bounds[1] * unit
    least, most = -residuals - tolerances - SAME, -residuals + tolerances + SAME
    out = np.abs(predicted) > tolerances + SAME
    travel = (least > high) | (most < low)
    step = np.floor(most / unit) < np.ceil(least / unit) if rules.step else np.zeros(len(out), bool)
    return np.select([~out, ~movable, step, travel], ["", "fixed", "step", "travel"], "neighbours").astype(object)
