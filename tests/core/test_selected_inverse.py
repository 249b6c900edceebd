"""Selected elements of the inverse of a sparse normal matrix: against the whole inverse."""

import numpy as np
import pytest
from scipy.sparse import csc_matrix
from scipy.sparse.linalg import splu

from tautline.algorithms.core.selected_inverse import selected_inverse


@pytest.mark.parametrize("number", [2, 9, 60])
def test_against_the_dense_inverse(number):
    rng = np.random.default_rng(number)
    first = np.concatenate([np.arange(number - 1), rng.integers(0, number - 1, number)])
    second = np.concatenate([np.arange(1, number), rng.integers(0, number, number)])
    apart = first != second
    first, second = first[apart], second[apart]
    normals = np.diag(rng.uniform(0.5, 1.0, number))
    for a, b, weight in zip(first, second, rng.uniform(0.5, 2.0, len(first))):
        normals[[a, b], [a, b]] += weight
        normals[a, b] -= weight
        normals[b, a] -= weight
    solver = splu(
        csc_matrix(normals), diag_pivot_thresh=0.0, options={"SymmetricMode": True}, permc_spec="MMD_AT_PLUS_A"
    )
    result = []
    shares = list(selected_inverse(solver, np.append(first, -1), np.append(second, 0), result))
    inverse = np.linalg.inv(normals)
    assert shares[-1] == 1.0 and np.allclose(result[0], np.diag(inverse), rtol=1e-10, atol=0.0)
    assert np.allclose(result[1], np.append(inverse[first, second], 0.0), rtol=1e-9, atol=1e-14)
