"""The state of the search among levelled heights, against dense algebra."""

import numpy as np
import pytest

from tautline.algorithms.core.covariance import Covariance, levelled
from tautline.algorithms.core.levelled_blunders import LevelledRows


def test_levelled_rows_as_they_come_and_go(monkeypatch, dense):
    """Two arms from the origin and rows in any order: after each row that goes or comes back the test values of all
    rows and the greatest step are those of the inverse of the covariance of the rows kept. Numbers are made anew in
    between."""
    monkeypatch.setattr("tautline.algorithms.core.blunder_states.AFRESH", 17)
    rng, number = np.random.default_rng(8), 40
    arms, distances = rng.integers(0, 2, number), rng.uniform(0.0, 3000.0, number)
    distances[[2, 5]], distances[[8, 9]], arms[[8, 9]] = 0.0, 700.0, 1
    covariance = levelled(rng.uniform(0.2e-3, 1e-3, number), arms, distances, 0.001)
    side = np.where(arms == 0, 1.0, 0.3)
    design = np.column_stack([np.ones(number), distances * side, distances * (1.0 - side)])
    observed, given = rng.normal(0.0, 0.002, number), Covariance(covariance.variance, covariance.matrix)
    sections = [np.flatnonzero(arms == arm)[np.argsort(distances[arms == arm], kind="stable")] for arm in (0, 1)]
    state = LevelledRows(dense.solution(design, observed, covariance), sections)
    kept = np.ones(number, bool)
    for row in rng.permutation(np.repeat(rng.permutation(number)[:30], 2)).tolist():
        column = state.column(row)
        kept[row] = not kept[row]
        state.change(row, kept, column, aside=not kept[row])
        tests, steps = np.empty(number), []
        for one in range(number):
            rows = kept | (np.arange(number) == one)
            fitted = dense.solution(design[rows], observed[rows], given.part(rows))
            tests[one] = dense.tests(fitted)[int(np.sum(rows[:one]))]
        assert np.sqrt(state.tests(state.variances(kept))) == pytest.approx(tests, rel=1e-6, abs=1e-6)
        fitted = dense.solution(design[kept], observed[kept], given.part(kept))
        places = np.cumsum(kept) - 1
        steps = [dense.tests(fitted, places[rows[kept[rows]]]).max() for rows in sections]
        assert np.sqrt(state.step(kept)) == pytest.approx(max(steps), rel=1e-6)
