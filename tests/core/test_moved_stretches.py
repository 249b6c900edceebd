"""Stretches that have moved: one side, one axis, three neighbours."""

import numpy as np
import pytest

from tautline.algorithms.core.moved_stretches import flags_hold, in_stretch, many_flagged, moved_stretches


def test_one_side_one_axis_and_stations_without_a_height_passed_over():
    axes = [0] * 8 + [1] * 3
    chainage = [0, 50, 100, 150, 200, 250, 300, 350, 0, 50, 100]
    residuals = np.array([1, -9, -8, np.nan, -9, 9, 9, -9, -9, -9, 1.0])
    found = moved_stretches(axes, chainage, residuals, np.abs(residuals) > 5)
    assert [rows.tolist() for rows in found] == [[1, 2, 4]]
    assert np.flatnonzero(in_stretch(11, found)).tolist() == [1, 2, 4]


@pytest.mark.parametrize(
    "residuals, stretches",
    [
        ([0.0, 0.05, -0.05, 0.05, 0.0], []),
        ([0.0, 0.05, 0.05, 0.05, 0.0], [[1, 2, 3]]),
        ([0.05, 0.05, 0.05, -0.05, -0.05, -0.05], [[0, 1, 2], [3, 4, 5]]),
        ([0.05, 0.05, 0.001, 0.05, 0.05], []),
        ([0.05, 0.05], []),
    ],
    ids=["both sides", "one side", "two stretches", "one between is not flagged", "two only"],
)
def test_each_of_three_neighbours_is_flagged_on_one_side(residuals, stretches):
    residuals = np.array(residuals)
    found = moved_stretches(np.zeros(len(residuals), int), np.arange(len(residuals)), residuals, residuals**2 > 1e-4)
    assert [rows.tolist() for rows in found] == stretches


def test_a_flagged_residual_of_zero_is_on_neither_side():
    assert moved_stretches([0] * 3, [0.0, 1.0, 2.0], [0.0, 0.0, 0.0], [True] * 3) == []


def test_stretches_go_by_chainage_and_not_by_row():
    order = [4, 1, 3, 0, 2]
    chainage, residuals = np.arange(5.0)[order], np.array([0.0, 9, 9, 9, 0])[order]
    (found,) = moved_stretches(np.zeros(5, int), chainage, residuals, residuals > 5)
    assert chainage[found].tolist() == [1.0, 2.0, 3.0]
    assert moved_stretches([], [], [], []) == []


def test_a_station_without_a_chainage_is_nobodys_neighbour():
    assert moved_stretches([0] * 3, [0.0, np.nan, 2.0], [9.0, 9.0, 9.0], [True] * 3) == []


def test_flags_of_a_fit_that_does_not_hold():
    """method page 6: more than 10 % flagged is a deformation; two of five are no crowd."""
    axes = np.repeat([0, 1, 2], [30, 20, 5])
    suspected = np.zeros(55, bool)
    suspected[[0, 5, 9, 30, 35, 40, 50, 51]] = True
    assert flags_hold(axes, np.ones(55, bool), suspected).tolist() == [True] * 30 + [False] * 20 + [True] * 5


@pytest.mark.parametrize("flagged, tested, many", [(2, 5, False), (3, 30, False), (3, 29, True), (0, 0, False)])
def test_many(flagged, tested, many):
    assert many_flagged(flagged, tested) is many
