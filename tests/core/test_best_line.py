"""Best-fit lines in the plane against Pearson's worked example, singular values and a regression."""

import numpy as np
import pytest

from tautline.algorithms.core.best_line import best_lines


def alone(x, y, weight=None):
    group = np.zeros(len(x), int)
    lines = best_lines(group, x, y, np.ones(len(x)) if weight is None else weight, 1)
    return lines, *lines.coordinates(group, x, y)


def test_pearsons_line(pearson):
    lines, _, across = alone(pearson.x, pearson.y)
    slope = np.tan(lines.turn[0])
    assert round(slope, 3) == pearson.slope
    assert round(lines.shift[0] - slope * lines.middle[0], 3) == pearson.intercept
    # His mean square residual of the points from that line is 0.061827 (the lesser axis of the ellipse, squared).
    assert np.mean(across**2) == pytest.approx(0.0618, abs=1e-4)


@pytest.mark.parametrize("seed", range(5))
def test_against_singular_values(seed):
    """The line is the first singular vector of the weighted points about their mean (numpy's SVD)."""
    dice = np.random.default_rng(seed)
    x, weight, turn = dice.uniform(0.0, 3000.0, 25), dice.uniform(0.2, 5.0, 25), dice.uniform(-0.7, 0.7)
    y = np.tan(turn) * x + dice.normal(0.0, 3.0, 25)
    lines, along, across = alone(x, y, weight)
    points = np.column_stack([x, y])
    points = points - np.average(points, axis=0, weights=weight)
    ahead = np.linalg.svd(points * np.sqrt(weight)[:, None])[2][0]
    ahead = ahead * np.sign(ahead[0])
    assert along == pytest.approx(points @ ahead, abs=1e-9)
    assert across == pytest.approx(points @ [-ahead[1], ahead[0]], abs=1e-9)
    # Along the line so turned the regression is zero: that is what a least-squares solution rests on.
    assert np.sum(weight * along * across) == pytest.approx(0.0, abs=1e-6)


def test_groups_are_each_by_itself_and_an_empty_one_is_unturned():
    dice = np.random.default_rng(3)
    group = np.array([0] * 6 + [2] * 9)
    x, y = dice.normal(0.0, 100.0, 15), dice.normal(0.0, 0.1, 15)
    order = dice.permutation(15)
    lines = best_lines(group[order], x[order], y[order], np.ones(15), 3)
    along, across = lines.coordinates(group[order], x[order], y[order])
    for number in (0, 2):
        mine = group[order] == number
        _, own_along, own_across = alone(x[order][mine], y[order][mine])
        assert along[mine] == pytest.approx(own_along, abs=1e-12)
        assert across[mine] == pytest.approx(own_across, abs=1e-12)
    assert (lines.middle[1], lines.shift[1], lines.turn[1]) == (0.0, 0.0, 0.0)
