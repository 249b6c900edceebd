"""Readings that look like slips: made on purpose in a smooth list, and found again with what would fit."""

import numpy as np
import pytest

from tautline.algorithms.core.suspicious_readings import off_their_neighbours, out_of_order, suspicious_readings


def listed(**wrong):
    s = np.arange(0.0, 1000.0, 50.0)
    heights = [f"{148.2 + 0.001 * k + 0.0003 * (k % 3):.4f}" for k in range(20)]
    for row, text in wrong.items():
        heights[int(row[1:])] = text
    return s, np.array(heights, float), heights


def test_a_clean_list_is_not_suspected():
    assert suspicious_readings(*listed()) == [] and list(out_of_order(np.arange(20.0))) == []


@pytest.mark.parametrize(
    "text, kind",
    [("184.2073", "transposed digits"), ("1482.073", "slipped decimal point"), ("486.244", "feet taken for metres")],
)
def test_slips_are_named_with_what_would_fit(text, kind):
    (found,) = [one for one in suspicious_readings(*listed(r7=text)) if one.row == 7]
    assert found.kind == kind and found.instead == pytest.approx(148.2073, abs=0.01)


def test_a_chainage_out_of_order_is_found():
    s = np.arange(0.0, 500.0, 50.0)
    s[4], s[5] = s[5], s[4]
    assert len(list(out_of_order(s))) >= 1


@pytest.mark.parametrize("row", range(20))
@pytest.mark.parametrize("wild", [30.0, -30.0, 0.5])
def test_one_wild_reading_makes_none_of_its_neighbours_suspect(row, wild):
    s, heights, _ = listed()
    heights[row] += wild
    assert [one for one, _, _ in off_their_neighbours(s, heights)] == [row]


def test_the_height_expected_is_that_of_the_line_through_the_others():
    s = np.array([0.0, 40.0, 90.0, 110.0, 200.0, 230.0])
    heights = 12.0 - 0.01 * s
    heights[3] = 99.0
    ((row, expected, off),) = off_their_neighbours(s, heights)
    # By hand: 12 - 0.01 * 110.
    assert row == 3 and expected == pytest.approx(10.9, abs=1e-9) and off == pytest.approx(88.1, abs=1e-9)


def test_readings_at_one_place_have_no_slope_between_them():
    heights = np.array([5.0, 5.0, 5.0, 5.0, 9.0])
    assert [row for row, _, _ in off_their_neighbours(np.zeros(5), heights)] == [4]


def test_order_is_judged_from_the_third_reading_on():
    assert out_of_order([0.0, 50.0]) == [] and len(out_of_order([0.0, 100.0, 50.0])) == 1


def test_a_reading_far_beyond_a_wild_one_and_a_doubled_place_is_not_suspected():
    s = np.array([0.0, 50.0, 100.0, 150.0, 200.0, 250.0, 300.0, 250.0, 500.0])
    heights = np.array([148.2, 148.202, 148.199, 148.201, 148.2, 148.198, 184.2, 148.2, 148.2])
    assert [row for row, _, _ in off_their_neighbours(s, heights)] == [6]


def test_two_wild_neighbours_are_both_found_and_nobody_else():
    s, heights, _ = listed()
    heights[[8, 9]] += 20.0
    assert [row for row, _, _ in off_their_neighbours(s, heights)] == [8, 9]
