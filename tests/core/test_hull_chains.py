"""Hulls of many profiles at once against the hulls that scipy's Qhull finds of each."""

import numpy as np
import pytest

from tautline.algorithms.core.hull_chains import hull_chains
from tautline.algorithms.core.segments import Segments


def corners(x, y):
    """Lower and upper corners by rising x, from Qhull; vertical edges belong to neither."""
    from scipy.spatial import ConvexHull

    ring = np.column_stack([x, y])[ConvexHull(np.column_stack([x, y])).vertices]
    for sign in (1.0, -1.0):
        by_place = ring[np.lexsort((sign * ring[:, 1], ring[:, 0]))]
        outer = by_place[np.concatenate([[True], np.diff(by_place[:, 0]) > 0.0])]
        (left, low), (right, high) = outer[0], outer[-1]
        line = low + (high - low) * (outer[:, 0] - left) / (right - left)
        yield outer[sign * (outer[:, 1] - line) <= 1e-12]


def profiles():
    """Points of every kind: a cloud, an arch, a valley, an arch with a far point at its end, steps, readings at one
    place."""
    random = np.random.default_rng(4)
    x = np.linspace(0.0, 1.0, 60)
    yield random.uniform(0.0, 1.0, 300), random.normal(0.0, 1.0, 300)
    yield x, -((x - 0.5) ** 2)
    yield x, (x - 0.3) ** 2
    yield x, np.where(x < 1.0, -((x - 0.5) ** 2), 3.0)
    yield x, np.floor(5.0 * x) ** 2
    yield np.repeat(x[:20], 3), random.normal(0.0, 1.0, 60)
    yield np.array([0.0, 1.0, 0.5]), np.array([0.0, 0.0, 1.0])


def test_as_the_hull_of_each():
    given = list(profiles())
    legs = Segments([len(x) for x, _ in given])
    found = hull_chains(legs, *(np.concatenate(values) for values in zip(*given)))
    for k, (x, y) in enumerate(given):
        for chain, expected in zip(found, corners(x, y)):
            own = chain.legs.which == k
            assert chain.x[own] == pytest.approx(expected[:, 0], abs=0.0)
            assert chain.y[own] == pytest.approx(expected[:, 1], abs=0.0)


@pytest.mark.parametrize("number", [2_000, 100_000])
def test_an_arch_with_a_far_point_takes_few_rounds(number, monkeypatch):
    """Next neighbours alone would take the arch away one point a round: rounds grow with the digits of the number."""
    from tautline.algorithms.core import hull_chains as module

    rounds, outer = [], module._outer
    monkeypatch.setattr(module, "_outer", lambda *given: rounds.append(1) or outer(*given))
    x = np.linspace(0.0, 1.0, number)
    y = np.where(x < 1.0, -((x - 0.5) ** 2), 3.0)
    lower, upper = hull_chains(Segments([number]), x, y)
    assert lower.x[0] == upper.x[0] == 0.0 and lower.x[-1] == upper.x[-1] == 1.0
    assert np.all(np.diff(upper.slopes[:-1]) < 0.0) and np.all(np.diff(lower.slopes[:-1]) > 0.0)
    assert len(rounds) < 20 * np.log2(number)
