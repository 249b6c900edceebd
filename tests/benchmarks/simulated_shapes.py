"""Simulated shapes of known truth: how often the second half of the verdict rejects a pure shape and tells waves, and
how often a blunder of the smallest detectable size is found where sigma is not known."""

from collections import Counter

import numpy as np
from simulated_surveys import INDEPENDENT_SIGMA, survey
from simulated_tally import Tally

from tautline.algorithms.core.curvature import SurveyedLeg, test_curvature
from tautline.algorithms.core.quantiles import detectable_factor

# Waves of three standard deviations: the shortest in station spacings, by whether sigma is known; the longest is 0.6
# of the axis.
SHORTEST_WAVE, LONGEST_WAVE, WAVE = {True: 2.5, False: 7.0}, 0.6, 3.0


def _tested(one, heights, known):
    """CurvatureTest of heights over the stations of a survey, over a geoid that does not bend."""
    nothing = np.zeros(len(heights))
    return test_curvature(
        SurveyedLeg(one.arms[0], one.lat, one.lon, one.chainage, heights, nothing, one.covariance, known, bending=0.0)
    )


def shapes(dice, number, *, correlated, known, waves=False, stations=31):
    """Straight structures and such along the level surface, half each; 'shape does not fit': what the second half of
    the verdict says; 'called straight or level': the verdict itself."""
    held = Counter()
    for _ in range(number):
        one, straight = survey(dice, 1, correlated=correlated, stations=stations), float(dice.integers(0, 2))
        heights = one.heights + (straight - 1.0) * _tested(one, one.heights, known).curvature + one.errors(dice)
        if waves:
            length = dice.uniform(
                SHORTEST_WAVE[known] * one.arms[0].length / (stations - 1), LONGEST_WAVE * one.arms[0].length
            )
            phase = dice.uniform(0.0, 2.0 * np.pi)
            heights = heights + WAVE * INDEPENDENT_SIGMA * np.sin(2.0 * np.pi * one.chainage / length + phase)
        found = _tested(one, heights, known)
        held["shape does not fit"] += int(not found.shape.fits)
        held["called straight or level"] += int(found.verdict in ("straight", "level"))
    return Tally(number, held)


def least_blunders(dice, number, *, stations):
    """How often the test finds a blunder of the smallest detectable size, where sigma is not stated; of the size that
    Baarda's 4.13 gives for comparison. Sizes are of the true sigma."""
    held = Counter()
    for _ in range(number):
        one = survey(dice, 1, correlated=False, stations=stations)
        errors, row, sign = one.errors(dice), int(dice.integers(0, stations)), dice.choice([-1.0, 1.0])
        solution = one.fit(errors, known=False, remove=False).search.solution
        for name, known in (("found", False), ("found, of 4.13", True)):
            changed = errors.copy()
            size = detectable_factor(solution.freedom, known) * INDEPENDENT_SIGMA
            changed[row] += sign * size / np.sqrt(solution.redundancies[row])
            found = one.fit(changed, known=False, remove=False).search.solution
            held[name] += int(abs(found.w[row]) > found.critical)
    return Tally(number, held)
