"""Small matrices against the library's own decompositions."""

import numpy as np
import pytest

from tautline.algorithms.core.small_matrices import condition, inverse, solved


def positive(size, seed):
    root = np.random.default_rng(seed).normal(size=(size, size))
    return root @ root.T + 0.1 * np.eye(size)


@pytest.mark.parametrize("size", [1, 2, 3, 5, 8])
def test_inverse(size):
    matrix = positive(size, size)
    assert inverse(matrix) == pytest.approx(np.linalg.inv(matrix), rel=1e-11, abs=1e-12)
    assert inverse(matrix) @ matrix == pytest.approx(np.eye(size), abs=1e-11)


def test_a_singular_matrix_has_none():
    with pytest.raises(np.linalg.LinAlgError):
        inverse(np.ones((2, 2)))
    with pytest.raises(np.linalg.LinAlgError):
        inverse(np.full((3, 3), np.nan))


@pytest.mark.parametrize("share", [0.0, -0.3, 0.999, 1.0 - 1e-9])
def test_condition_by_singular_values(share):
    matrix = np.array([[1.0, share], [share, 1.0]])
    assert condition(matrix) == pytest.approx(np.linalg.cond(matrix), rel=1e-6)
    assert condition(np.ones((2, 2))) == np.inf
    three = np.array([[1.0, share, 0.0], [share, 1.0, 0.0], [0.0, 0.0, 1.0]])
    assert condition(three) == pytest.approx(np.linalg.cond(three), rel=1e-6)


@pytest.mark.parametrize("seed", range(5))
def test_condition_of_three_rows(seed):
    matrix = positive(3, seed)
    size = np.sqrt(np.diag(matrix))
    matrix = matrix / np.outer(size, size)
    assert condition(matrix) == pytest.approx(np.linalg.cond(matrix), rel=1e-8)
    assert condition(np.eye(3)) == 1.0
    near = np.array([[1.0, 1.0 - 1e-9, 0.5], [1.0 - 1e-9, 1.0, 0.5], [0.5, 0.5, 1.0]])
    assert condition(near) == pytest.approx(np.linalg.cond(near), rel=1e-6)


def test_many_systems_at_once():
    matrices = np.stack([positive(5, seed) for seed in range(7)])
    right = np.random.default_rng(9).normal(size=(7, 5))
    assert solved(matrices, right) == pytest.approx(np.linalg.solve(matrices, right[..., None])[..., 0], rel=1e-9)
