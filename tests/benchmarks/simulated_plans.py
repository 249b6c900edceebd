"""Simulated surveys of a line in plan whose truth is known: how often an interval and a test keep their word.

Used by ``honesty.py`` with 2,000 surveys each, and by the tests with fewer. Truth is a straight line beside the axis
as drawn, which is shifted and turned against it; places by the library's geodesics.
"""

from collections import Counter

import numpy as np
from simulated_surveys import EARTH, flagged
from simulated_tally import Tally

from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.covariance import independent
from tautline.algorithms.core.lateral import LineStations, planes_through_ends
from tautline.algorithms.core.lateral_fit import Sideways, fit_sideways

LEAST_SIGMA, MOST_SIGMA = 0.001, 0.004


def plan(dice, stations=31):
    """A line at a random place: (axis, chainage (n,), true offset (n,), standard deviations (n,)), degrees, metres."""
    lat, lon = float(np.degrees(np.arcsin(dice.uniform(-0.97, 0.97)))), float(dice.uniform(-180.0, 180.0))
    lat, lon, _ = EARTH.forward(
        np.full(2, lat), np.full(2, lon), np.full(2, dice.uniform(0.0, 360.0)), [0.0, dice.uniform(1500.0, 3000.0)]
    )
    axis = Axis(AxisLine("plan", lat, lon, EARTH), float(dice.uniform(0.0, 2000.0)))
    chainage = np.linspace(0.0, axis.length, stations)
    true = dice.uniform(-3.0, 3.0) + dice.uniform(-1e-4, 1e-4) * chainage
    return axis, chainage, true, dice.uniform(LEAST_SIGMA, MOST_SIGMA, stations)


def placed(axis, chainage, offsets):
    """LineStations at ``offsets`` from an axis, metres (n,)."""
    lat, lon, _ = axis.place(chainage, offsets)
    zero = np.zeros(len(chainage), int)
    height = np.full(len(chainage), axis.chainage_height)
    return LineStations(zero, lat, lon, height, chainage, offsets, zero == 0, EARTH)


def fitted(axis, chainage, offsets, sigma, *, known, remove):
    """LateralFit of stations at ``offsets``; where sigma is not known only its ratios are told."""
    planes, along, aside = planes_through_ends(["plan"], placed(axis, chainage, offsets))
    covariance = independent(sigma if known else sigma / LEAST_SIGMA)
    return fit_sideways("plan", Sideways(planes, along, aside, covariance, known), remove=remove)


def coverage(fit, axis, chainage, true):
    """Which intervals of a LateralFit hold the true line: {name: bool}."""
    ends = placed(axis, chainage[[0, -1]], true[[0, -1]])
    along, aside = fit.plane.coordinates(ends.axis, ends.lat, ends.lon, ends.height, EARTH)
    turn = (aside[1] - aside[0]) / (along[1] - along[0])
    half = fit.solution.interval_factor * fit.solution.deviations
    return {"place sideways": abs(aside[0] - turn * along[0]) <= half[0], "azimuth": abs(turn) <= half[1]}


def lines(dice, number, *, known, remove=False):
    """Tally of coverage, and of stations flagged though no blunder is there."""
    held = Counter()
    for _ in range(number):
        axis, chainage, true, sigma = plan(dice)
        fit = fitted(axis, chainage, true + dice.normal(0.0, sigma), sigma, known=known, remove=remove)
        held.update({name: int(value) for name, value in coverage(fit, axis, chainage, true).items()})
        if remove:
            held["false alarms"] += int(flagged(fit.search).sum())
    return Tally(number, held)


def knocks(dice, number, *, known):
    """How often a knock of the smallest detectable blunder, and one of twice that, is flagged at its station."""
    held = Counter()
    for _ in range(number):
        axis, chainage, true, sigma = plan(dice)
        offsets, row = true + dice.normal(0.0, sigma), int(dice.integers(len(chainage)))
        least = fitted(axis, chainage, offsets, sigma, known=known, remove=False).search.detectable
        for name, size in (("the smallest", 1.0), ("twice that", 2.0)):
            knocked = offsets.copy()
            knocked[row] += size * least[row] * dice.choice([-1.0, 1.0])
            found = flagged(fitted(axis, chainage, knocked, sigma, known=known, remove=True).search)
            held[f"{name}, found"] += int(found[row])
    return Tally(number, held)
