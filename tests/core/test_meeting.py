"""Which axes meet. Expected groups are by hand, from ends on a plane."""

import numpy as np

from tautline.algorithms.core.meeting import meeting_axes


def ends(*lines):
    return np.array([[(*first, 0.0), (*last, 0.0)] for first, last in lines], float)


def test_an_axis_alone_and_no_axis():
    assert meeting_axes(ends(((0, 0), (100, 0)))) == [[0]]
    assert meeting_axes(np.zeros((0, 2, 3))) == []


def test_ends_within_ten_metres_meet_and_farther_ones_do_not():
    near = ends(((0, 0), (100, 0)), ((106, 8), (200, 0)))
    assert meeting_axes(near) == [[0, 1]]
    assert meeting_axes(near + [[[0, 0, 0]] * 2, [[0.1, 0.1, 0]] * 2]) == [[0], [1]]


def test_a_chain_hangs_together_in_any_order():
    lines = ends(((300, 0), (200, 0)), ((0, 0), (100, 0)), ((900, 0), (999, 0)), ((205, 3), (100, 6)))
    assert meeting_axes(lines) == [[0, 1, 3], [2]]


def test_crossing_away_from_the_ends_is_no_meeting():
    assert meeting_axes(ends(((0, 0), (100, 0)), ((50, -50), (50, 50)))) == [[0], [1]]


def test_across_the_edge_of_a_cell():
    assert meeting_axes(ends(((-50, 0), (-0.1, 9.95)), ((0.1, 10.05), (60, 0)))) == [[0, 1]]
