"""Rows as slices: whatever is indexed by them is what the rows themselves pick."""

import numpy as np
import pytest

from tautline.algorithms.core.row_ranges import as_slice, as_slices, rows_of_each

VALUES = np.arange(100.0, 112.0)


@pytest.mark.parametrize("rows", [[0], [3, 4, 5], list(range(12)), [11]])
def test_consecutive_rows_are_seen(rows):
    found = as_slice(np.array(rows))
    assert found == slice(rows[0], rows[-1] + 1)
    assert np.shares_memory(VALUES[found], VALUES)
    assert VALUES[found].tolist() == [100.0 + row for row in rows]


@pytest.mark.parametrize("rows", [[], [0, 2], [5, 4, 3], [3, 3, 4], [2, 3, 3, 4, 6], [0, 1, 1, 3], [1, 0, 2]])
def test_other_rows_stay_as_they_are(rows):
    rows = np.array(rows, int)
    assert as_slice(rows) is rows
    assert VALUES[as_slice(rows)].tolist() == [100.0 + row for row in rows]


def test_many_parts_are_seen_as_each_is():
    parts = [[3, 4, 5], [6], [9, 11], [5, 4, 3], [4, 5], [2, 3, 3, 4, 6], [7]]
    bounds = np.cumsum([0, *map(len, parts)])
    found = as_slices(np.concatenate(parts), bounds)
    for part, one in zip(parts, found):
        want = as_slice(np.array(part))
        assert one == want if isinstance(want, slice) else one.tolist() == part
    assert [isinstance(one, slice) for one in found] == [True, True, False, False, True, False, True]
    assert as_slices(np.empty(0, int), [0]) == []


def test_rows_of_each_key():
    found = rows_of_each(["b", "", "b", "a", "b"])
    assert {key: rows.tolist() for key, rows in found.items()} == {"b": [0, 2, 4], "": [1], "a": [3]}
    assert list(found) == ["b", "", "a"]
    assert rows_of_each([]) == {}
