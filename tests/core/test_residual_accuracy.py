"""Accuracy of residuals from stations of the same survey, against propagation with full matrices and a simulation."""

import numpy as np
import pytest

from tautline.algorithms.core.conformance import conformance
from tautline.algorithms.core.residual_accuracy import control_shares, residual_deviations

CHAINAGE = np.linspace(0.0, 1000.0, 11)


@pytest.mark.parametrize("controls", [(0, 10), (2, 7), (4,), (0, -1)])
@pytest.mark.parametrize("levelled", [False, True])
def test_deviations_by_full_matrices(controls, levelled):
    variances = np.linspace(1e-6, 9e-6, 11)
    matrix = np.diag(variances)
    if levelled:
        matrix = matrix + 2e-9 * np.minimum.outer(CHAINAGE, CHAINAGE)
    shares = control_shares(CHAINAGE, [CHAINAGE[row] for row in controls])
    design = np.zeros((11, 11))
    for k, row in enumerate(controls):
        if row >= 0:
            design[:, row] += shares[:, k]
    left = np.eye(11) - design
    found = residual_deviations(np.diag(matrix), np.array(controls), shares, matrix if levelled else None)
    wanted = np.sqrt(np.diag(left @ matrix @ left.T))
    assert found == pytest.approx(wanted, abs=2e-9)


def test_chance_within_is_kept_by_simulated_surveys():
    """A chord through the end stations, 3 mm each: of residuals on their stated 95 % limit, 95 % are truly within; with
    the station's own error alone 98 % would be stated for as many."""
    random, sigma, middle = np.random.default_rng(3), 0.003, 5
    spread = residual_deviations(np.full(11, sigma**2), np.array([0, 10]), control_shares(CHAINAGE, (0.0, 1000.0)))
    # The true residual is any with the same chance, as the rule takes it; kept are those with this residual found.
    true = random.uniform(-0.03, 0.03, 200_000)
    errors = random.normal(0.0, sigma, (3, len(true)))
    found = true + errors[0] - 0.5 * (errors[1] + errors[2])
    limit, residual = 0.010, 0.010 - 1.6448536 * spread[middle]
    near = np.abs(found - residual) < 2e-4
    assert np.mean(np.abs(true[near]) <= limit) == pytest.approx(0.95, abs=0.01)
    assert conformance(residual, limit, spread[middle])[0] == pytest.approx(0.95, abs=2e-4)
    assert conformance(residual, limit, sigma)[0] > 0.975


def test_a_control_is_certain_and_the_unknown_unknown():
    variances = np.full(11, 4e-6)
    variances[3] = np.nan
    found = residual_deviations(variances, np.array([0, 10]), control_shares(CHAINAGE, (0.0, 1000.0)))
    assert found[0] == found[10] == pytest.approx(1e-9) and np.isnan(found[3])
    assert found[5] == pytest.approx(2e-3 * 1.5**0.5, rel=1e-12)
