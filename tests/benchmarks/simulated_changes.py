"""Simulated pairs of surveys of one axis whose movement is known: how often a comparison keeps its word."""

from collections import Counter

import numpy as np
from simulated_tally import Tally

from tautline.algorithms.core.change_covariance import LevelledChanges
from tautline.algorithms.core.comparison import MOVED_SIDEWAYS, common_motion, congruency, verdicts
from tautline.algorithms.core.quantiles import NORMAL_95

SPACING = 50.0
# Variances of a change, both surveys together: 1 mm each; 0.3 mm each and 1 mm over 1 km of levelling each.
COVARIANCES = {"independent": (2e-6, 0.0), "levelled": (2 * 9e-8, 2e-9)}
# Which stations of a settled structure have moved; places in thirds of the axis.
PARTS = {
    "nothing moves": (0.0, 0.0),
    "a third settles at one end": (0.0, 1 / 3),
    "a third settles in the middle": (1 / 3, 2 / 3),
}


def changes_of_axes(dice, number, *, covariance, part, tilt, stations=31, size=7.0):
    """Tally over ``number`` axes that shift by 5 mm (and tilt by 5 mm over their length, where it is separated).

    ``size``: of the movement, standard deviations of the greatest change. 'unmoved flagged', 'neighbours flagged' (the
    two stations beside a moved stretch on each side): shares of these stations; the others are shares of axes.
    """
    own, walk = COVARIANCES[covariance]
    distance = SPACING * np.arange(stations)
    change = LevelledChanges(np.full(stations, own), distance, walk)
    low, high = (int(round(end * stations)) for end in PARTS[part])
    moved = (np.arange(stations) >= low) & (np.arange(stations) < high)
    near = ~moved & (np.convolve(moved, np.ones(5), "same") > 0)
    settlement = size * float(np.sqrt(change.variance.max())) * moved
    true_tilt = 0.005 / distance[-1] if tilt else 0.0
    common = 0.005 + true_tilt * (distance - distance.mean())
    held, steps = Counter(), np.sqrt(walk * np.diff(distance, prepend=0.0))
    for _ in range(number):
        errors = dice.normal(size=stations) * np.sqrt(own) + np.cumsum(dice.normal(size=stations) * steps)
        found = common_motion(distance, common - settlement + errors, change, tilt=tilt)
        held["not told"] += int(not found.told)
        if not np.any(moved):
            held["not congruent"] += int(not congruency(errors, change).holds)
        if not found.told:
            continue
        flagged = np.isin(verdicts(found.rest, found.sd_rest, found.moved), ("risen", "settled"))
        held["unmoved flagged"] += float(flagged[~moved].mean())
        held["shift false"] += int(abs(found.shift - 0.005) > NORMAL_95 * found.sd_shift)
        held["tilt false"] += int(tilt and abs(found.tilt - true_tilt) > NORMAL_95 * found.sd_tilt)
        if np.any(moved):
            held["neighbours flagged"] += float(flagged[near].mean())
            held["moved found"] += float(flagged[moved].mean())
    return Tally(number, held)


# Lines of the departures: the axis, one for all; through the first and the last station; the best fit.
LINES = ("axis", "chord", "fitted")


def _beside(offsets, distance, line):
    """Departures of ``offsets`` (n,) from a line of their own."""
    if line == "axis":
        return offsets
    if line == "chord":
        ends = np.interp(distance, distance[[0, -1]], offsets[[0, -1]])
        return offsets - ends
    return offsets - np.polyval(np.polyfit(distance, offsets, 1), distance)


def lateral_changes_of_axes(dice, number, *, line, part, stations=31, size=7.0):
    """Tally over ``number`` axes that shift by 5 mm sideways and turn by 5 mm over their length; departures from
    ``line``, good to 1 mm.

    As ``changes_of_axes``; 'changes flagged': by their change alone, of surveys between which nothing has moved, where
    0.1 % are owed (Baarda).
    """
    own, distance = COVARIANCES["independent"][0], SPACING * np.arange(stations)
    change = LevelledChanges(np.full(stations, own), distance, 0.0)
    low, high = (int(round(end * stations)) for end in PARTS[part])
    moved = (np.arange(stations) >= low) & (np.arange(stations) < high)
    common = 0.005 + 0.005 * (distance - distance.mean()) / distance[-1]
    push = size * float(np.sqrt(own)) * moved
    held = Counter()
    for _ in range(number):
        built = dice.normal(size=stations) * 0.004
        surveys = [built, built + common - push], [built, built]
        errors = dice.normal(size=(2, stations)) * np.sqrt(own / 2.0)
        whole, still = (
            np.subtract(*(_beside(survey + error, distance, line) for survey, error in zip(pair[::-1], errors)))
            for pair in surveys
        )
        held["changes flagged"] += float(
            np.isin(verdicts(still, np.full(stations, np.sqrt(own)), words=MOVED_SIDEWAYS), MOVED_SIDEWAYS).mean()
        )
        found = common_motion(distance, whole, change, tilt=True)
        held["not told"] += int(not found.told)
        if not found.told:
            continue
        flagged = np.isin(verdicts(found.rest, found.sd_rest, found.moved, MOVED_SIDEWAYS), MOVED_SIDEWAYS)
        held["unmoved flagged"] += float(flagged[~moved].mean())
        if np.any(moved):
            held["moved found"] += float(flagged[moved].mean())
    return Tally(number, held)
