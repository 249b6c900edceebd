"""Adjustment of level nets against a dense solution and the fits' own least squares."""

import numpy as np
import pytest

from tautline.algorithms.core.covariance import independent
from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.least_squares import Solution
from tautline.algorithms.core.level_net import level_net
from tautline.algorithms.core.levelling import Datum, adjusted
from tautline.algorithms.core.quantiles import BAARDA


def grid_net(rows, columns, chain, seed=3):
    """A net of streets whose blocks are levelled in ``chain`` lines each, with noise and true heights."""
    rng = np.random.default_rng(seed)
    starts, ends = [], []
    for i in range(rows):
        for j in range(columns):
            for di, dj in ((0, 1), (1, 0)):
                if i + di < rows and j + dj < columns:
                    names = [f"{i}.{j}", *(f"{i}.{j}.{di}.{c}" for c in range(1, chain)), f"{i + di}.{j + dj}"]
                    starts += names[:-1]
                    ends += names[1:]
    length = rng.uniform(200.0, 900.0, len(starts))
    heights = {name: rng.uniform(0.0, 30.0) for name in (*starts, *ends)}
    sigma = 0.001 * np.sqrt(length / 1000.0)
    dh = np.array([heights[b] - heights[a] for a, b in zip(starts, ends)]) + rng.normal(0.0, sigma)
    return level_net(starts, ends, dh, length, sigma), heights


def dense(net, fixed, weighted):
    """Design matrix, observations and variances of the same net, without the fixed columns."""
    n, p = len(net), len(net.names)
    a = np.zeros((n + len(weighted), p))
    a[np.arange(n), net.end] += 1.0
    a[np.arange(n), net.start] -= 1.0
    y, variance = list(net.difference), list(net.variance)
    for k, point in enumerate(sorted(weighted)):
        a[n + k, point] = 1.0
        y.append(weighted[point][0])
        variance.append(weighted[point][1] ** 2)
    known = np.zeros(p)
    for point, height in fixed.items():
        known[point] = height
    free = [k for k in range(p) if k not in fixed]
    return a[:, free], np.array(y) - a @ known, np.array(variance), free


@pytest.mark.parametrize("known", [True, False])
def test_everything_against_a_dense_solution(known):
    """numpy's dense normal equations for heights and covariance; the fits' Solution for w, redundancy and blunders."""
    net, _ = grid_net(4, 3, 2)
    fixed, weighted = {0: 100.0, 5: 100.3}, {7: (98.0, 0.5)} if known else {}
    a, y, variance, free = dense(net, fixed, weighted)
    weight = np.diag(1.0 / variance)
    q = np.linalg.inv(a.T @ weight @ a)
    x = q @ a.T @ weight @ y
    found = adjusted(net, Datum(fixed, weighted), known=known)
    assert np.allclose(found.heights[free], x, rtol=0.0, atol=1e-10)
    solution = Solution(a, y - a @ x, independent(np.sqrt(variance)), known, x)
    assert np.allclose(found.residuals, solution.residuals, rtol=0.0, atol=1e-10)
    assert np.allclose(found.redundancies, solution.redundancies, rtol=0.0, atol=1e-9)
    assert np.allclose(found.w, solution.w, rtol=1e-6, atol=1e-7, equal_nan=True)
    assert np.allclose(found.detectable, solution.detectable, rtol=1e-6, atol=0.0)
    assert found.critical == pytest.approx(solution.critical) and found.freedom == solution.freedom
    assert np.allclose(found.height_deviations[free], solution.deviations, rtol=1e-9, atol=0.0)
    assert np.all(found.height_deviations[list(fixed)] == 0.0)
    assert np.allclose(found.covariance(free), solution.parameter_covariance, rtol=1e-8, atol=1e-18)
    if known:
        assert found.global_test == pytest.approx(solution.global_test)
    else:
        assert found.global_test is None


def test_true_heights_come_back_within_their_standard_deviations():
    """Simulated levelling, known truth: the share within 1.96 standard deviations over 60 nets is 95 percent, give or
    take three times the spread that correlated heights allow."""
    inside = total = 0
    for seed in range(60):
        net, truth = grid_net(4, 4, 1, seed)
        found = adjusted(net, Datum({0: truth[net.names[0]]}, {}))
        off = found.heights - np.array([truth[name] for name in net.names])
        inside += int(np.sum(np.abs(off[1:]) < 1.96 * found.height_deviations[1:]))
        total += len(off) - 1
    assert inside / total == pytest.approx(0.95, abs=0.04)


def test_covariance_of_a_single_line_is_the_shorter_way():
    """method page 6: levelled outwards from one origin, covariance sigma_km^2 min(d_i, d_j)."""
    sigma = 0.0012
    net = level_net(
        ["O", "1", "2"], ["1", "2", "3"], [1.0, 1.0, 1.0], [500.0, 700.0, 300.0], sigma * np.sqrt([0.5, 0.7, 0.3])
    )
    found = adjusted(net, Datum({0: 10.0}, {})).covariance([1, 2, 3])
    d = np.array([0.5, 1.2, 1.5])
    assert np.allclose(found, sigma**2 * np.minimum.outer(d, d), rtol=1e-12, atol=0.0)


def test_blunder_and_its_twins():
    """In a chain between junctions every line has the same w: common practice, no source."""
    net, _ = grid_net(3, 3, 3)
    difference = net.difference.copy()
    difference[4] += 0.02
    spoiled = level_net(
        [net.names[k] for k in net.start], [net.names[k] for k in net.end], difference, net.length, net.deviation
    )
    found = adjusted(spoiled, Datum({0: 0.0}, {}))
    worst = int(np.argmax(np.abs(found.w)))
    assert abs(found.w[worst]) > BAARDA
    chain = set(range(6))  # both ways from the corner, at which nothing else meets
    assert worst in chain and set(found.twins(worst)) == chain - {worst}
    assert np.allclose(np.abs(found.w[:6]), abs(found.w[worst]), rtol=1e-9)


def test_bridges_are_not_checked():
    net = level_net(list("ABC") + ["C"], list("BCA") + ["D"], [1.0, 1.0, -2.001, 3.0], [1e3] * 4, [0.001] * 4)
    found = adjusted(net, Datum({0: 0.0}, {}))
    assert found.redundancies[3] == 0.0 and np.isnan(found.w[3]) and np.isinf(found.detectable[3])
    assert found.heights[3] == pytest.approx(found.heights[2] + 3.0, abs=1e-12)


def test_parts_without_benchmark_stay_without_height():
    net = level_net(["A", "X"], ["B", "Y"], [1.0, 2.0], [1e3, 1e3], [0.001, 0.001])
    found = adjusted(net, Datum({0: 5.0}, {}))
    assert found.heights[1] == 6.0 and np.all(np.isnan(found.heights[2:]))
    assert np.all(np.isnan(found.height_deviations[2:]))
    assert list(net.parts) == [0, 0, 1, 1] and list(found.observed) == [0]
    with pytest.raises(InputError, match="no covariance"):
        found.covariance([2])


def test_all_points_fixed():
    net = level_net(["A"], ["B"], [1.002], [1e3], [0.001])
    found = adjusted(net, Datum({0: 5.0, 1: 6.0}, {}))
    assert (
        found.freedom == 1
        and found.residuals[0] == pytest.approx(0.002, abs=1e-12)
        and found.w[0] == pytest.approx(2.0)
    )


def test_only_weighted_benchmarks():
    net = level_net(["A"], ["B"], [1.0], [1e3], [0.001])
    found = adjusted(net, Datum({}, {0: (5.0, 0.002), 1: (6.003, 0.002)}))
    # By hand: the misfit of 3 mm is shared as the variances 4, 1, 4.
    assert found.heights == pytest.approx([5.0 + 0.003 * 4 / 9, 6.003 - 0.003 * 4 / 9], abs=1e-12)


@pytest.mark.parametrize(
    "call, words",
    [
        (lambda: level_net(["A"], ["A"], [1.0], [1.0], [1.0]), r"Line 1 \(A to A\) starts and ends at one point"),
        (lambda: level_net(["A"], ["B"], [np.nan], [1.0], [1.0]), "has no height difference"),
        (lambda: level_net(["A"], ["B"], [1.0], [-1.0], [1.0]), "negative length"),
        (lambda: level_net(["A"], ["B"], [1.0], [1.0], [0.0]), "zero, negative"),
        (lambda: level_net([], [], [], [], []), "no lines"),
        (lambda: Datum({0: np.nan}, {}), "not a number"),
        (lambda: Datum({}, {0: (1.0, 0.0)}), "not positive"),
        (lambda: Datum({0: 1.0}, {0: (1.0, 1.0)}), "both as fixed"),
        (lambda: adjusted(grid_net(2, 2, 1)[0], Datum({}, {})), "no benchmark"),
        (lambda: adjusted(grid_net(2, 2, 1)[0], Datum({}, {0: (1.0, 1.0)}), known=False), "need lines with standard"),
    ],
)
def test_bad_input(call, words):
    with pytest.raises(InputError, match=words):
        call()
