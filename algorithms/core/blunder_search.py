"""The search for blunders, one by one, without a fit for each (method page 6).

A row that is set aside is a row with an unknown of its own (a shift of its mean), so that all other test values follow
from one column of P = W Q_v W. With b = W v, setting row i aside gives

    b_j - P_ji b_i / P_ii    and    P_jk - P_ji P_ik / P_ii,

which costs one column instead of a fit. Source: the equivalence of deletion and mean shift, for example
Cook and Weisberg (1982), Residuals and Influence in Regression, section 2.2; for correlated heights
Baarda's (1968) conventional alternatives. The design is held as it is in the fit of all rows; whoever uses
the result fits it once more (measured: the set is the same).
"""

from functools import lru_cache

import numpy as np

from .blunder_states import AFRESH, Correlated, Independent, SomeRows
from .levelled_blunders import LevelledRows
from .levelled_weights import Levelled
from .quantiles import critical_value

LEAST_REDUNDANCY = 0.05
SAME_SUSPECT = 0.999
# Of so many independent rows and more only the loud ones are looked at in each step, those beyond this share of the
# limit: what takes a row aside moves the others by a hair. Where one row has this share of its own fitted height, rows
# may be alike or unchecked, and all of them are looked at.
_MANY, _LOUD, _LEVERAGE = 2_000, 0.75, 0.4


@lru_cache(maxsize=4096)
def _limit(freedom, known):
    return critical_value(freedom, known)


def set_aside(solution, number, *, most, start=None, sections=()):
    """Rows that are set aside, one by one, the greatest first: (kept (n,), beyond).

    ``solution``: least_squares.Solution of all ``number`` rows; where their errors are correlated, sigma must be known;
    ``most``: how many may go. ``start``: rows to begin with (n,), default all; ``sections``: rows along levelled arms:
    no row goes for what is a step. ``beyond``: True where one more would have to go; then all rows are kept. Rows of
    which two cannot be told apart, and those without which too little would be left, stay, as in least_squares.search.
    """
    correlated = solution.covariance.correlated
    if number >= _MANY and not correlated:
        found = _among_loud(solution, number, most, start)
        if found is not None:
            return found
    state = _state(solution, sections)
    kept = np.ones(number, bool)
    freedom, known = solution.freedom, solution.known
    checked_before = state.variances(kept) >= LEAST_REDUNDANCY * state.own
    if start is not None and not np.all(start):
        kept = np.array(start, bool)
        freedom -= int(np.sum(~kept))
        state.begin(kept)
    fixed, seen = np.zeros(number, bool), set()
    while True:
        variances = state.variances(kept)
        tests = state.tests(variances)
        row, back = _next(tests, kept, fixed, state, freedom, known)
        if row is None:
            return kept, False
        if correlated and not back and sections:
            step = state.step(kept)
            if step > _limit(freedom, known) ** 2 and step * SAME_SUSPECT**2 > np.max(tests[kept]):
                return kept, False
        column = state.column(row)
        if not back:
            alike = np.where(kept, column * column, 0.0) > SAME_SUSPECT**2 * variances[row] * variances
            alike[row] = False
            if np.any(alike):
                fixed[row] = fixed[int(np.argmax(alike))] = True
                continue
            # What is left of each row's redundancy without this one.
            share = 1.0 / variances[row]
            left = variances - share * column * column
            unchecked = kept & checked_before & (left < LEAST_REDUNDANCY * state.own) & (not correlated)
            unchecked[row] = False
            if freedom - 1 < 2 or np.any(unchecked):
                fixed[row] = True
                continue
            if number - np.count_nonzero(kept) >= most:
                return np.ones(number, bool), True
        kept[row] = back
        freedom += 1 if back else -1
        state.change(row, kept, column, aside=not back)
        if not back:
            mark = hash(kept.tobytes())
            if mark in seen:
                return kept, False
            seen.add(mark)


def _among_loud(solution, number, most, start):
    """The same of many independent rows, a step at the cost of the loud ones; None where it may not be the same.

    Every AFRESH steps, and at the end, all rows are looked at: where one that was quiet has become a suspect meanwhile,
    the order of the steps may have been another.
    """
    whole, known = Independent(solution), solution.known
    kept, freedom, quiet, seen = np.ones(number, bool), solution.freedom, None, set()
    if start is not None and not np.all(start):
        kept = np.array(start, bool)
        freedom -= int(np.sum(~kept))
        whole.begin(kept)
    while True:
        if np.any(kept & (whole.reach > _LEVERAGE * whole.own)):
            return None
        limit = _limit(freedom, known) ** 2 * (1.0 if known else whole.quadratic(kept) / freedom)
        tests = whole.tests(whole.variances(kept))
        if quiet is not None and np.any(tests[quiet] > limit):
            return None
        loud = ~kept | (tests > _LOUD**2 * limit)
        rows = np.flatnonzero(loud)
        on, steps, beyond = _stepped(SomeRows(whole, rows, kept), rows, kept[rows], freedom, known, most, seen)
        if beyond:
            return np.ones(number, bool), True
        freedom += int(np.sum(on)) - int(np.sum(kept[rows]))
        kept[rows], quiet = on, ~loud
        if not steps:
            return kept, False
        whole.begin(kept)


def _stepped(state, rows, kept, freedom, known, most, seen):
    """AFRESH steps among some ``rows`` (k,), or fewer where no more are due: what is ``kept`` of them (k,), the number
    of steps, and whether one more would have to go than may. ``seen``: marks of the sets that were there."""
    free = np.zeros(len(rows), bool)
    for steps in range(AFRESH):
        row, back = _next(state.tests(state.variances(kept)), kept, free, state, freedom, known)
        if row is None:
            return kept, steps, False
        if not back and len(kept) - np.count_nonzero(kept) >= most:
            return kept, steps, True
        column = state.column(row)
        kept[row] = back
        freedom += 1 if back else -1
        state.change(row, kept, column, aside=not back)
        if not back:
            mark = hash(rows[~kept].tobytes())
            if mark in seen:
                return kept, 0, False
            seen.add(mark)
    return kept, AFRESH, False


def _state(solution, sections):
    if isinstance(solution.covariance, Levelled):
        return LevelledRows(solution, sections)
    return Correlated(solution, sections) if solution.covariance.correlated else Independent(solution)


def _next(squares, kept, fixed, state, freedom, known):
    """The row that is taken back (the clearest) or that goes (the greatest), and whether it is taken back;
    (None, False) for none. ``squares``: of the test values (n,).
    """
    quadratic = 0.0 if known else state.quadratic(kept)
    aside = np.flatnonzero(~kept)
    if len(aside):
        limit = _limit(freedom + 1, known)
        best = aside[int(np.argmin(squares[aside]))]
        if np.isfinite(limit) and squares[best] < limit**2 * (1.0 if known else quadratic / freedom):
            return int(best), True
    row = int(np.argmax(np.where(kept & ~fixed, squares, 0.0)))
    value = float(squares[row]) if kept[row] and not fixed[row] else 0.0
    if not known:
        if freedom < 2:
            return None, False
        rest = max(quadratic - value, 0.0) / (freedom - 1)
        value = value / rest if rest > 0.0 else (np.inf if value > 0.0 else 0.0)
    return (row, False) if value > _limit(freedom, known) ** 2 else (None, False)
