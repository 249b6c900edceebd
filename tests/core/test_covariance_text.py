"""A covariance as text: what is written is read back, in another order and in part; damaged rows are refused."""

import numpy as np
import pytest

from tautline.algorithms.core.covariance_text import MOST_POINTS, covariance_of, covariance_texts
from tautline.algorithms.core.errors import InputError


def covariance(number=6):
    root = np.random.default_rng(2).normal(size=(number, number)) * 1e-3
    return root @ root.T


def test_written_and_read_back_in_another_order():
    matrix, names = covariance(), list("abcdef")
    found = covariance_of(names, covariance_texts(matrix), ["e", "a", "c"])
    assert np.allclose(found, matrix[np.ix_([4, 0, 2], [4, 0, 2])], rtol=1e-11, atol=0.0)


def test_rows_are_square_millimetres():
    """Standard deviations of 1 mm and 2 mm, correlation one half: 1, 1 and 4 square millimetres."""
    assert covariance_texts(np.array([[1e-6, 1e-6], [1e-6, 4e-6]])) == ["1", "1 4"]


def test_damage_is_refused():
    texts = covariance_texts(covariance(3))
    for names, rows, wanted, words in (
        (["a", "a", "c"], texts, ["a"], "twice"),
        (["a", "b", "c"], texts, ["d"], "no point 'd'"),
        (["a", "b", "c"], [texts[0], texts[0], texts[2]], ["a"], "not complete"),
        (["a", "b", "c"], [texts[0], "x y", texts[2]], ["a"], "not complete"),
    ):
        with pytest.raises(InputError, match=words):
            covariance_of(names, rows, wanted)
    with pytest.raises(InputError, match="at most"):
        covariance_texts(np.zeros((MOST_POINTS + 1, 1)))
