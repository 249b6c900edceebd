"""The deviation across a line against the axes of the error ellipse."""

import numpy as np
import pytest

from tautline.algorithms.core.sideways_sigma import sideways_sigma


def test_against_the_axes_of_the_ellipse():
    """An ellipse with semi-axes a, b in azimuth t: across a direction u it is a^2 cos^2(u - t) + b^2 sin^2(u - t)."""
    dice = np.random.default_rng(2)
    a, b, t, u = dice.uniform(0.004, 0.02, 40), dice.uniform(0.001, 0.004, 40), *dice.uniform(0.0, 2 * np.pi, (2, 40))
    east = np.sqrt((a * np.sin(t)) ** 2 + (b * np.cos(t)) ** 2)
    north = np.sqrt((a * np.cos(t)) ** 2 + (b * np.sin(t)) ** 2)
    correlation = (a**2 - b**2) * np.sin(t) * np.cos(t) / (east * north)
    found = sideways_sigma(east, north, correlation, 250.0 * np.sin(u), 250.0 * np.cos(u))
    expected = np.sqrt((a * np.cos(u - t)) ** 2 + (b * np.sin(u - t)) ** 2)
    assert found == pytest.approx(expected, rel=1e-12)


def test_a_circle_is_the_same_all_around_and_an_unknown_one_stays_unknown():
    turn = np.linspace(0.0, 6.0, 7)
    circle = sideways_sigma(np.full(7, 0.005), np.full(7, 0.005), np.zeros(7), np.cos(turn), np.sin(turn))
    assert circle == pytest.approx([0.005] * 7, rel=1e-12)
    # Fully correlated errors lie on a line: across it there is none, and rounding must not make it a root below zero.
    assert sideways_sigma(0.003, 0.004, 1.0, 0.004, -0.003) == pytest.approx(0.0, abs=1e-10)
    assert np.isnan(sideways_sigma(np.array([np.nan]), np.array([0.004]), np.zeros(1), np.ones(1), np.ones(1)))[0]
