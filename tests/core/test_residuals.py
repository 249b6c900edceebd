"""Status against the tolerance, statistics, accuracy at 95 %."""

import numpy as np
import pytest

from tautline.algorithms.core.residuals import statistics, statuses, vertical_accuracy_95

RESIDUALS = [0.003, -0.005, np.nan, 0.0051, -0.012, 0.0]


def test_statuses():
    """The tolerance itself is within, also where 64.125 - 64.12 is 0.00499999999999545."""
    assert list(statuses(RESIDUALS, 0.005)) == ["within", "within", "no height", "high", "low", "within"]
    assert list(statuses([64.125 - 64.12, 1.005 - 1.0, 0.1 + 0.2 - 0.3], 0.005)) == ["within"] * 3
    assert list(statuses([0.1 + 0.2 - 0.3, 1e-6], 0.0)) == ["within", "high"]
    assert list(statuses(RESIDUALS)) == ["no tolerance", "no tolerance", "no height"] + ["no tolerance"] * 3


def test_statistics_by_hand():
    found = statistics([0.003, -0.004, np.nan, 0.0, -0.012], 0.005)
    assert found.number == 4 and found.no_height == 1 and (found.within, found.high, found.low) == (3, 0, 1)
    assert found.rms == pytest.approx(0.0065, abs=1e-12)  # 9 + 16 + 0 + 144 = 169 = 4 * 6.5^2
    assert found.mean == pytest.approx(-0.00325, abs=1e-12)
    assert found.greatest == 0.012 and found.greatest_at == 4


def test_statistics_without_heights_or_tolerance():
    empty = statistics([np.nan, np.nan], 0.005)
    assert empty.number == 0 and empty.no_height == 2 and empty.greatest_at is None and np.isnan(empty.rms)
    assert (empty.within, empty.high, empty.low) == (0, 0, 0)
    free = statistics([0.1, -0.2])
    assert (free.number, free.within, free.high, free.low) == (2, 0, 0, 0) and free.greatest == 0.2
    assert statistics([]).number == 0


def test_vertical_accuracy():
    """RP-02. Source: FGDC-STD-007.3-1998, sec. 3.2 and app. 3-A (factors from memory): 1.96, and the horizontal ones.

    The factors are the radii that hold 95 % of errors with standard deviation 1 in one direction; of two.
    """
    from scipy.stats import chi2, norm

    assert vertical_accuracy_95(1.0) == pytest.approx(1.96, abs=5e-5)
    assert vertical_accuracy_95(0.004) == pytest.approx(0.004 * norm.ppf(0.975), abs=2e-7)
    assert np.sqrt(chi2.ppf(0.95, 2)) == pytest.approx(2.4477, abs=5e-5)
    assert np.sqrt(chi2.ppf(0.95, 2) / 2.0) == pytest.approx(1.7308, abs=5e-5)
