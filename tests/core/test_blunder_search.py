"""The quick search for blunders against brute force: at each step the whole fit, by dense algebra."""

import numpy as np
import pytest

from tautline.algorithms.core.blunder_search import set_aside
from tautline.algorithms.core.covariance import independent
from tautline.algorithms.core.least_squares import Solution


def brute_force(design, observed, sigma, most):
    """Rows set aside one by one by whole fits; no row is taken back in these examples. None where too many would go."""
    kept = np.ones(len(observed), bool)
    while True:
        a, y = design[kept] / sigma[kept, None], observed[kept] / sigma[kept]
        left = np.eye(kept.sum()) - a @ np.linalg.pinv(a)
        w = np.abs(left @ y) / np.sqrt(np.diag(left))
        if w.max() <= 3.2905267314919255:
            return kept
        if np.sum(~kept) >= most:
            return None
        kept[np.flatnonzero(kept)[int(np.argmax(w))]] = False


@pytest.mark.parametrize("blunders", [0, 2, 4, 9])
def test_the_rows_that_whole_fits_set_aside(blunders):
    rng, number = np.random.default_rng(blunders), 60
    design = np.column_stack([np.ones(number), np.linspace(-1.0, 1.0, number)])
    sigma = rng.uniform(0.5e-3, 2e-3, number)
    observed = rng.normal(0.0, sigma)
    rows = rng.choice(number, blunders, replace=False)
    observed[rows] += rng.choice([-1.0, 1.0], blunders) * rng.uniform(0.03, 0.09, blunders)
    weight = 1.0 / sigma
    parameters = np.linalg.lstsq(design * weight[:, None], observed * weight, rcond=None)[0]
    solution = Solution(design, observed - design @ parameters, independent(sigma), True, parameters)
    kept, too_many = set_aside(solution, number, most=6)
    expected = brute_force(design, observed, sigma, 6)
    assert too_many == (expected is None)
    assert np.array_equal(kept, np.ones(number, bool) if expected is None else expected)
    assert too_many == (blunders > 6)
