"""A net of levelled lines: parts and approximate heights against a search by hand; what is no line is refused."""

import numpy as np
import pytest

from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.level_net import level_net

ONE = np.ones(5)


def net(**wrong):
    given = {
        "starts": list("ABCXY"),
        "ends": list("BCAYX"),
        "difference": np.array([1.0, 2.0, -3.0, 5.0, -5.0]),
        "length": 100.0 * ONE,
        "deviation": 0.001 * ONE,
    }
    given.update(wrong)
    return level_net(*given.values())


def test_parts_and_approximate_heights():
    found = net()
    assert found.names == ("A", "B", "C", "X", "Y") and found.parts.tolist() == [0, 0, 0, 1, 1]
    heights = found.approximate_heights({found.names.index("B"): 10.0})
    assert heights[:3].tolist() == [9.0, 10.0, 12.0] and np.all(np.isnan(heights[3:]))
    assert [point for point, _, _ in found.reached([3])] == [3, 4]


@pytest.mark.parametrize(
    "wrong, words",
    [
        ({"ends": list("BCAYY")}, "Line 5 .Y to Y. starts and ends"),
        ({"difference": np.array([1.0, np.nan, 0.0, 0.0, 0.0])}, "Line 2 .B to C. has no height difference"),
        ({"length": -ONE}, "negative length"),
        ({"deviation": 0.0 * ONE}, "standard deviation"),
    ],
)
def test_what_is_no_line_is_refused(wrong, words):
    with pytest.raises(InputError, match=words):
        net(**wrong)
