"""Which stations of two surveys are one: by place against a search of all pairs, by name however it is written."""

import numpy as np
import pytest

from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.matching import matched_by_name, matched_by_place, name_key, near_names


def test_by_place_as_by_a_search_of_all_pairs():
    rng = np.random.default_rng(3)
    chainages = np.sort(rng.uniform(0.0, 500.0, 40))
    first = (np.zeros(40, int), chainages, np.zeros(40))
    second = (np.zeros(40, int), chainages[::-1] + rng.uniform(-0.2, 0.2, 40), np.zeros(40))
    distance = np.abs(first[1][:, None] - second[1][None, :])
    expected, free, free_2 = set(), set(range(40)), set(range(40))
    for a, b in sorted(np.argwhere(distance <= 0.5).tolist(), key=lambda pair: distance[tuple(pair)]):
        if a in free and b in free_2:
            expected.add((a, b))
            free.remove(a)
            free_2.remove(b)
    assert {tuple(pair) for pair in matched_by_place(first, second, 0.5).tolist()} == expected
    with pytest.raises(InputError):
        matched_by_place(first, second, 0.0)


def test_two_rails_at_one_chainage_stay_apart():
    first = (np.zeros(2, int), np.array([10.0, 10.0]), np.array([-0.75, 0.75]))
    second = (np.zeros(2, int), np.array([10.1, 10.1]), np.array([0.75, -0.75]))
    assert matched_by_place(first, second, 0.5).tolist() == [[0, 1], [1, 0]]


def test_names_however_they_are_written():
    assert name_key("0+850") == name_key("850") == name_key(" 850.0 ") and name_key("Pier A") == name_key("pier a")
    assert matched_by_name(["a", "b", "c"], ["c", "a"]).tolist() == [[0, 1], [2, 0]]
    assert near_names(["P 1", "2-3", "x"], ["p1", "23", "y"]) == [("P 1", "p1")]
