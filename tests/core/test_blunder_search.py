"""The quick search for blunders against brute force: at each step the whole fit, by dense algebra."""

import numpy as np
import pytest

from tautline.algorithms.core.blunder_search import set_aside
from tautline.algorithms.core.covariance import Covariance, independent, levelled
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


@pytest.mark.parametrize("given", [False, True])
@pytest.mark.parametrize("blunders, step", [(0, 0.0), (1, 0.0), (4, 0.0), (9, 0.0), (3, 0.012), (0, 0.02)])
def test_correlated_rows_that_whole_fits_set_aside(blunders, step, given, dense):
    """Levelled heights: each fit anew by dense algebra, a step along the line looked at before a row goes."""
    rng, number = np.random.default_rng(blunders), 60
    distances, rows = np.linspace(0.0, 3000.0, number), np.arange(number)
    covariance = levelled(np.full(number, 0.0003), np.zeros(number, int), distances, 0.001)
    covariance = Covariance(covariance.variance, covariance.matrix) if given else covariance
    observed = np.linalg.cholesky(covariance.matrix) @ rng.normal(size=number)
    observed[30:] += step
    wrong = rng.choice(np.arange(3, 57), blunders, replace=False)
    observed[wrong] += rng.choice([-1.0, 1.0], blunders) * rng.uniform(0.02, 0.06, blunders)
    design = np.column_stack([np.ones(number), distances / 1500.0 - 1.0])
    kept, beyond = np.ones(number, bool), False
    while True:
        fitted = dense.solution(design[kept], observed[kept], covariance.part(kept))
        w = dense.tests(fitted)
        jump = dense.tests(fitted, np.arange(kept.sum())).max()
        if w.max() <= 3.2905267314919255 or (jump > 3.2905267314919255 and jump * 0.999 > w.max()):
            break
        if np.sum(~kept) >= 6:
            kept, beyond = np.ones(number, bool), True
            break
        kept[np.flatnonzero(kept)[int(np.argmax(w))]] = False
    found, too_many = set_aside(dense.solution(design, observed, covariance), number, most=6, sections=(rows,))
    assert too_many == beyond == (blunders > 6)
    assert np.array_equal(found, kept) and np.sum(~found) == (0 if blunders > 6 else blunders)


@pytest.mark.parametrize("kind", ["independent", "levelled", "given"])
def test_what_was_left_out_to_begin_with_is_taken_back_where_it_clears(kind):
    """Begun from too few rows, the search comes to those that it finds from all."""
    rng, number = np.random.default_rng(5), 60
    distances = np.linspace(0.0, 3000.0, number)
    covariance = levelled(np.full(number, 0.0003), np.zeros(number, int), distances, 0.001)
    covariance = Covariance(covariance.variance, covariance.matrix) if kind == "given" else covariance
    observed = np.linalg.cholesky(covariance.matrix) @ rng.normal(size=number)
    if kind == "independent":
        covariance, observed = independent(np.full(number, 0.001)), rng.normal(0.0, 0.001, number)
    observed[[10, 40]] += 0.05
    design = np.column_stack([np.ones(number), distances / 1500.0 - 1.0])
    parameters = np.linalg.solve(design.T @ covariance.weighted(design), design.T @ covariance.weighted(observed))
    solution = Solution(design, observed - design @ parameters, covariance, True, parameters)
    start = np.ones(number, bool)
    start[[3, 10, 22, 31, 40]] = False
    kept, too_many = set_aside(solution, number, most=6, start=start)
    assert not too_many and list(np.flatnonzero(~kept)) == [10, 40]
    assert np.array_equal(kept, set_aside(solution, number, most=6)[0])


def fits_one_by_one(design, observed, sigma, most, known):
    """Rows set aside one by one by whole fits, the hat values in closed form; None where too many would go. Student's
    quantile by scipy where sigma is not known."""
    from scipy import stats

    kept = np.ones(len(observed), bool)
    while True:
        a, y = design[kept] / sigma[kept, None], observed[kept] / sigma[kept]
        q, r = np.linalg.qr(a)
        v = y - q @ (q.T @ y)
        w, freedom = np.abs(v) / np.sqrt(1.0 - np.sum(q**2, axis=1)), len(y) - a.shape[1]
        limit = 3.2905267314919255
        if not known:
            w = w / np.sqrt((v @ v - w**2) / (freedom - 1))
            limit = stats.t.ppf(1.0 - 0.0005, freedom - 1)
        if w.max() <= limit:
            return kept
        if np.sum(~kept) >= most:
            return None
        kept[np.flatnonzero(kept)[int(np.argmax(w))]] = False


@pytest.mark.parametrize("known", [True, False])
@pytest.mark.parametrize("blunders, sides, most", [(0, 2, 300), (40, 2, 300), (40, 1, 300), (200, 1, 300), (40, 2, 20)])
def test_of_many_rows_the_same_are_set_aside(blunders, sides, most, known, monkeypatch):
    """3,000 rows, of which a step looks at the loud ones only: what whole fits set aside, and what all rows looked at
    give. Blunders on one side draw the line so far that at first most rows are loud."""
    from tautline.algorithms.core import blunder_search as module

    rng, number = np.random.default_rng(blunders + sides), 3_000
    design = np.column_stack([np.ones(number), np.linspace(-1.0, 1.0, number)])
    sigma = rng.uniform(0.5e-3, 2e-3, number)
    observed = rng.normal(0.0, sigma)
    rows = rng.choice(number, blunders, replace=False)
    signs = rng.choice([-1.0, 1.0], blunders) if sides == 2 else np.ones(blunders)
    observed[rows] += signs * rng.uniform(0.03, 0.3, blunders)
    weight = 1.0 / sigma
    parameters = np.linalg.lstsq(design * weight[:, None], observed * weight, rcond=None)[0]
    solution = Solution(design, observed - design @ parameters, independent(sigma), known, parameters)
    kept, too_many = set_aside(solution, number, most=most)
    expected = fits_one_by_one(design, observed, sigma, most, known)
    assert too_many == (expected is None) == (most < blunders)
    assert np.array_equal(kept, np.ones(number, bool) if expected is None else expected)
    start = rng.random(number) > 0.05
    some = set_aside(solution, number, most=most, start=start)
    monkeypatch.setattr(module, "_MANY", 10**9)
    assert np.array_equal(kept, set_aside(solution, number, most=most)[0])
    whole = set_aside(solution, number, most=most, start=start)
    assert some[1] == whole[1] and np.array_equal(some[0], whole[0])


def test_rows_that_hold_the_line_alone_are_all_looked_at(monkeypatch):
    """Two far ends of a crowd may be alike or unchecked: then each step looks at all rows."""
    from tautline.algorithms.core import blunder_search as module

    number = 2_500
    along = np.concatenate([[-1e3, 1e3], np.random.default_rng(2).normal(0.0, 0.01, number - 2)])
    design, observed = np.column_stack([np.ones(number), along]), np.random.default_rng(3).normal(0.0, 1e-3, number)
    observed[0] += 0.5
    parameters = np.linalg.lstsq(design, observed, rcond=None)[0]
    solution = Solution(design, observed - design @ parameters, independent(np.full(number, 1e-3)), True, parameters)
    assert module._among_loud(solution, number, 100, None) is None
    kept, _ = set_aside(solution, number, most=100)
    assert kept[0] and kept[1]
