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

from .blunder_states import Correlated, Independent
from .levelled_blunders import LevelledRows
from .levelled_weights import Levelled
from .quantiles import critical_value

LEAST_REDUNDANCY = 0.05
SAME_SUSPECT = 0.999


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
