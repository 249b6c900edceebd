"""Rows of many pieces, against a loop over the pieces."""

import numpy as np
import pytest

from tautline.algorithms.core.segments import Segments, ranges

COUNTS = (4, 1, 7, 2)


@pytest.fixture
def pieces():
    random = np.random.default_rng(5)
    return [(random.normal(size=(n, 3)), random.normal(size=(n, 2))) for n in COUNTS]


def test_sums_products_steps_and_the_greatest(pieces):
    segments = Segments(COUNTS)
    left, right = (np.concatenate([pair[k] for pair in pieces]) for k in (0, 1))
    assert segments.which.tolist() == [0] * 4 + [1] + [2] * 7 + [3] * 2
    assert segments.sums(left) == pytest.approx(np.array([a.sum(axis=0) for a, _ in pieces]), abs=1e-14)
    assert segments.products(left, right) == pytest.approx(np.array([a.T @ b for a, b in pieces]), abs=1e-14)
    steps = [np.vstack([np.diff(a, axis=0), np.zeros(3)]) for a, _ in pieces]
    assert np.array_equal(segments.steps(left), np.concatenate(steps))
    first = np.cumsum([0, *COUNTS[:-1]])
    assert segments.greatest(left[:, 0]).tolist() == [f + int(np.argmax(a[:, 0])) for f, (a, _) in zip(first, pieces)]
    factors = np.arange(12.0).reshape(4, 3)
    assert segments.times(left, factors) == pytest.approx(
        np.concatenate([a @ row for (a, _), row in zip(pieces, factors)]), abs=1e-13
    )
    assert [part.tolist() for part in segments.parts(right)] == [b.tolist() for _, b in pieces]


def test_places_and_ranges():
    assert Segments([3, 1, 2]).places.tolist() == [0, 1, 2, 0, 0, 1]
    assert ranges([5, 0, 2], [2, 0, 3]).tolist() == [5, 6, 2, 3, 4]


def test_of_several_greatest_the_first():
    assert Segments([3, 2]).greatest(np.array([1.0, 2.0, 2.0, 5.0, 5.0])).tolist() == [1, 3]
