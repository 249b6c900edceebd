"""Exaggeration: round numbers by trying them all, and bars that no blunder sets the scale of."""

import numpy as np
import pytest

from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.exaggeration import bar_factor, bar_lengths, ordinary_size, round_number


def test_round_number_is_the_greatest_that_is_not_above():
    steps = sorted(step * 10.0**power for step in (1, 2, 5) for power in range(-6, 9))
    for limit in np.exp(np.random.default_rng(1).uniform(np.log(1e-5), np.log(1e8), 300)):
        assert round_number(limit) == pytest.approx(max(step for step in steps if step <= limit), rel=1e-12)
    assert round_number(0.2) == 0.2 and round_number(1000.0) == 1000.0
    for wrong in (0.0, -1.0, np.nan, np.inf):
        with pytest.raises(InputError):
            round_number(wrong)


def test_one_blunder_does_not_set_the_scale():
    residuals = np.array([*np.linspace(-0.010, 0.010, 41), 3.0, np.nan])
    assert ordinary_size(residuals) <= 0.010 and ordinary_size(residuals, 0.020) == 0.020
    assert ordinary_size(np.array([np.nan])) == 0.0 and bar_factor(np.zeros(5), 2000.0) == 1.0
    # 10 mm drawn over at most a twentieth of 2,000 m: 10,000 times.
    assert bar_factor(np.array([0.01, -0.01, 0.01]), 2000.0) == pytest.approx(10_000.0)


def test_bars_beyond_the_longest_are_cut_and_marked():
    lengths, cut = bar_lengths([0.01, -0.5, 0.02], 1000.0, 100.0)
    assert lengths.tolist() == [10.0, -100.0, 20.0] and cut.tolist() == [False, True, False]
