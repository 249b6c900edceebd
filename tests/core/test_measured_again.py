"""Stations measured a second time, against chainages made by hand: moved, at another height or start, turned."""

import numpy as np
import pytest

from tautline.algorithms.core.measured_again import measured_again

WAS = np.linspace(-60.0, 3600.0, 62)
ONE = np.zeros(62, int)


def found(now, was=WAS, axis=ONE, starts=(-60.0,), **more):
    again = measured_again(axis, was, now, starts, **more)
    return np.flatnonzero(again.elsewhere).tolist(), again.turned


@pytest.mark.parametrize("height", [0.0, 1600.0, 8800.0, -400.0])
def test_another_chainage_height_is_no_other_place(height):
    # The circumference of a circle grows with its radius: 6371 km, the Earth's mean.
    now = -60.0 + (WAS + 60.0) * (1.0 + height / 6_371_000.0)
    assert found(now) == ([], [])
    now[40] += 0.5
    now[7] = np.nan
    assert found(now) == ([40], [])


def test_tenth_of_a_metre_and_its_share():
    now = WAS.copy()
    now[3] += 0.09
    now[61] += 0.16  # of 3660 m, 0.073 m more
    assert found(now) == ([], [])
    now[3], now[61] = WAS[3] - 0.11, WAS[61] + 0.18
    assert found(now) == ([3, 61], [])


def test_another_start():
    now = WAS + 200.0
    assert found(now) == (list(range(62)), [])
    assert found(now, starts=(140.0,), other_starts=True) == ([], [])
    now[5] += 3.0
    assert found(now, starts=(140.0,), other_starts=True) == ([5], [])


@pytest.mark.parametrize("scale", [1.0, 1.00025])
def test_turned_axes_are_told_and_the_others_beside_them(scale):
    axis = np.repeat([0, 1], 62)
    was, now = np.tile(WAS, 2), np.concatenate([WAS, -60.0 + scale * (3600.0 - WAS)])
    now[4] += 1.0
    now[90] += 40.0  # one moved on the turned axis beside
    mixed = np.random.default_rng(3).permutation(124)
    again = measured_again(axis[mixed], was[mixed], now[mixed], (-60.0, -60.0))
    assert mixed[again.elsewhere].tolist() == [4] and again.turned == [1]


def test_few_stations():
    assert found(np.array([10.0]), np.array([0.0]), ONE[:1], (0.0,)) == ([0], [])
    assert found(np.array([0.0, 115.0]), np.array([0.0, 100.0]), ONE[:2], (0.0,)) == ([1], [])
    # Two that have changed places are no axis that runs the other way.
    assert found(np.array([100.0, 0.0]), np.array([0.0, 100.0]), ONE[:2], (0.0,)) == ([0, 1], [])
    assert found(np.array([200.0, 100.0, 0.0]), np.array([0.0, 100.0, 200.0]), ONE[:3], (0.0,)) == ([], [0])
    assert found(np.array([5.0, 5.0]), np.array([5.0, 5.0]), ONE[:2], (0.0,)) == ([], [])
    assert found(np.array([np.nan]), np.array([5.0]), ONE[:1], (0.0,)) == ([], [])


def test_another_axis_altogether():
    rows, turned = found(WAS * 0.7)
    assert turned == [] and len(rows) > 55
