"""Runs of neighbours set aside, against a search that writes out every matrix, and on long axes of known movement."""

import numpy as np
import pytest

from tautline.algorithms.core.change_covariance import LevelledChanges
from tautline.algorithms.core.stable_part import run_limit, stable_part


def by_matrices(changes, columns, matrix):
    """The rule with a dense matrix for every run: numbers of the runs set aside (n,)."""
    run, found = np.full(len(changes), -1), 0
    while True:
        rows = np.flatnonzero(run < 0)
        if 2 * len(rows) <= len(changes):
            return run
        a, w = columns[rows], np.linalg.inv(matrix[np.ix_(rows, rows)])
        left = w - w @ a @ np.linalg.inv(a.T @ w @ a) @ a.T @ w
        tested = []
        for length in range(1, len(rows) // 2 + 1):
            for first in range(len(rows) - length + 1):
                e = np.zeros(len(rows))
                e[first : first + length] = 1.0
                size = abs(e @ left @ changes[rows]) / np.sqrt(e @ left @ e)
                tested.append((size, length, first))
        best = max(tested)[0]
        if best <= 4.4:
            return run
        # Of those within 0.15 of the greatest the shortest, of these the greatest.
        _, length, first = min(
            (one for one in tested if one[0] >= max(best - 0.15, 4.4)), key=lambda one: (one[1], -one[0])
        )
        run[rows[first : first + length]] = found
        found += 1


@pytest.mark.parametrize("walk", [0.0, 2e-9])
@pytest.mark.parametrize("tilt", [False, True])
def test_the_runs_of_the_rule_by_matrices(walk, tilt):
    random, distance = np.random.default_rng(8), 50.0 * np.arange(20)
    matrix = walk * np.minimum.outer(distance, distance) + np.diag(np.full(20, 2e-7))
    columns = np.column_stack((np.ones(20), distance / 950.0 - 0.5))[:, : 1 + tilt]
    root, covariance = np.linalg.cholesky(matrix), LevelledChanges(np.full(20, 2e-7), distance, walk)
    several = 0
    for case in range(12):
        changes = root @ random.normal(size=20)
        changes[3:6] -= 0.006 * (case % 3 > 0)
        changes[11 : 12 + case % 4] += 0.005 * (case % 2)
        changes[17:] -= 0.004 * (case % 4 > 1)
        found = stable_part(changes, columns, covariance)
        assert np.array_equal(found.run, by_matrices(changes, columns, matrix))
        several += found.run.max() > 0
    assert several >= 3


def test_limit_grows_with_the_stations():
    assert run_limit(8) == run_limit(31) == 4.4 and 5.5 < run_limit(1000) < 6.0


@pytest.mark.parametrize("walk", [0.0, 2e-10, 4e-9])
def test_long_axes_are_searched_by_a_grid_that_finds_the_same(walk):
    """6,000 stations; long and short stretches of known place move by far more than their noise, the rest by none."""
    random, distance = np.random.default_rng(5), 10.0 * np.arange(6000)
    steps = np.sqrt(walk * np.diff(distance, prepend=0.0))
    changes = random.normal(0, 4e-4, 6000) + np.cumsum(random.normal(size=6000) * steps)
    moved = np.zeros(6000, bool)
    for first, last in ((100, 101), (700, 1713), (3001, 3050), (4000, 4333)):
        moved[first:last] = True
    columns = np.column_stack((np.ones(6000), distance / distance[-1] - 0.5))
    found = stable_part(changes - 0.012 * moved, columns, LevelledChanges(np.full(6000, 1.6e-7), distance, walk))
    assert found.told and np.array_equal(~found.stable, moved)


def test_a_standard_deviation_far_too_small_ends_untold():
    """Everything stands out: the search ends when half the stations are set aside."""
    random, distance = np.random.default_rng(6), 10.0 * np.arange(3000)
    changes = random.normal(0, 4e-3, 3000)
    found = stable_part(changes, np.ones((3000, 1)), LevelledChanges(np.full(3000, 1.6e-7), distance, 0.0))
    assert not found.told
