"""Simulated chains from levelled lines through their adjustment to a line's height and to the chance within."""

from collections import Counter

import numpy as np
from simulated_tally import Tally

from tautline.algorithms.core.conformance import conformance
from tautline.algorithms.core.covariance import Covariance, independent
from tautline.algorithms.core.level_net import level_net
from tautline.algorithms.core.levelling import Datum, adjusted
from tautline.algorithms.core.residual_accuracy import control_shares, residual_deviations

KM, MARK = 0.0007, 1e-4
SPACING = 100.0


def chain(dice, number, *, stations=21):
    """A line levelled out and back from a benchmark that is its first station, adjusted, and a straight line fitted to
    the heights: whether the intervals of its height midway and of its slope hold the truth."""
    names = [f"P{k}" for k in range(stations)]
    starts, ends = names[:-1] + names[1:], names[1:] + names[:-1]
    deviation = np.full(len(starts), KM * np.sqrt(SPACING / 1000.0))
    distance = SPACING * np.arange(stations)
    columns = np.column_stack((np.ones(stations), distance - distance.mean()))
    held = Counter()
    for _ in range(number):
        net = level_net(starts, ends, dice.normal(0.0, deviation), np.full(len(starts), SPACING), deviation)
        found = adjusted(net, Datum({net.names.index("P0"): 0.0}, {}))
        points = [net.names.index(name) for name in names]
        heights, matrix = found.heights[points], found.covariance(points)
        matrix[0, 0] = MARK**2
        # A line through zero is the truth; setting up on the benchmark is good to a tenth of a millimetre.
        heights[0] += dice.normal(0.0, MARK)
        for title, covariance in (
            ("with the covariance", Covariance(np.diag(matrix).copy(), matrix)),
            ("standard deviations alone", independent(np.sqrt(np.diag(matrix)))),
        ):
            weighted = covariance.weighted(columns)
            inverse = np.linalg.inv(columns.T @ weighted)
            within = np.abs(inverse @ weighted.T @ heights) <= 1.959964 * np.sqrt(np.diag(inverse))
            held[f"height, {title}"] += int(within[0])
            held[f"slope, {title}"] += int(within[1])
    return Tally(number, held)


def chances(dice, number, *, sigma=0.003, tolerance=0.010, stations=11):
    """A station midway between the two that its chord goes through: of those whose chance within is stated as 94 to
    96 %, the share that is within, by the errors of all three and by its own alone."""
    chainage = SPACING * np.arange(stations)
    shares = control_shares(chainage, (chainage[0], chainage[-1]))
    spread = residual_deviations(np.full(stations, sigma**2), np.array([0, stations - 1]), shares)[stations // 2]
    tries = 200 * number
    true = dice.uniform(-3.0 * tolerance, 3.0 * tolerance, tries)
    errors = dice.normal(0.0, sigma, (3, tries))
    residual, within = true + errors[0] - 0.5 * (errors[1] + errors[2]), np.abs(true) <= tolerance
    held = Counter()
    for title, deviation in (("with the controls' errors", spread), ("its own error alone", sigma)):
        stated = np.abs(conformance(residual, tolerance, deviation) - 0.95) <= 0.01
        held[f"within, {title}"] = float(number * within[stated].mean())
    return Tally(number, held)
