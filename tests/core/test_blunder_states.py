"""What the search for blunders knows of each row, against fits made anew by the library's least squares."""

import numpy as np
import pytest

from tautline.algorithms.core.blunder_states import Independent
from tautline.algorithms.core.covariance import independent
from tautline.algorithms.core.least_squares import Solution


def fitted(design, observed, sigmas, rows):
    """Residuals of all rows from the fit of some, and the cofactors of its parameters."""
    a, weight = design[rows] / sigmas[rows, None], 1.0 / sigmas[rows]
    parameters = np.linalg.lstsq(a, observed[rows] * weight, rcond=None)[0]
    return observed - design @ parameters, np.linalg.inv(a.T @ a)


@pytest.mark.parametrize("afresh", [3, 256])
def test_independent_rows_as_they_come_and_go(monkeypatch, afresh):
    """After each row that goes or comes back: residuals, variances and v^T W v are those of a fit of the rows kept."""
    monkeypatch.setattr("tautline.algorithms.core.blunder_states.AFRESH", afresh)
    rng, number = np.random.default_rng(4), 25
    sigmas, observed = rng.uniform(0.5e-3, 2e-3, number), rng.normal(0.0, 2e-3, number)
    design = np.column_stack([np.ones(number), np.linspace(-900.0, 1100.0, number)])
    everything = np.ones(number, bool)
    residuals, _ = fitted(design, observed, sigmas, everything)
    state = Independent(Solution(design, residuals, independent(sigmas), True, np.zeros(2)))
    kept = everything.copy()
    for row in (3, 17, 3, 8, 24, 17, 0):
        column = state.column(row)
        kept[row] = not kept[row]
        state.change(row, kept, column, aside=not kept[row])
        residuals, cofactors = fitted(design, observed, sigmas, kept)
        reach = np.einsum("ij,jk,ik->i", design, cofactors, design)
        assert state.v == pytest.approx(residuals, abs=1e-12)
        assert state.variances(kept) == pytest.approx(sigmas**2 + np.where(kept, -reach, reach), rel=1e-9)
        assert state.quadratic(kept) == pytest.approx(np.sum((residuals[kept] / sigmas[kept]) ** 2), rel=1e-9)
