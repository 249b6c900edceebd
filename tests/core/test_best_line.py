"""Best-fit lines in the plane against Pearson's worked example, singular values and a regression."""

import numpy as np
import pytest

from tautline.algorithms.core.best_line import best_lines

# Source: K. Pearson, On lines and planes of closest fit to systems of points in space, Philosophical Magazine 2 (1901),
# worked example: the line that makes the perpendicular distances least is y = 5.784 - 0.546 x.
PEARSON_X = np.array([0.0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4])
PEARSON_Y = np.array([5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5])


def alone(x, y, weight=None):
    group = np.zeros(len(x), int)
    lines = best_lines(group, x, y, np.ones(len(x)) if weight is None else weight, 1)
    return lines, *lines.coordinates(group, x, y)


def test_pearsons_line():
    lines, _, across = alone(PEARSON_X, PEARSON_Y)
    slope = np.tan(lines.turn[0])
    assert round(slope, 3) == -0.546
    assert round(lines.shift[0] - slope * lines.middle[0], 3) == 5.784
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
