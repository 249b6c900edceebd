"""Changes between surveys of one structure: their significance, what is common to all stations, and the rate.

Heights of one survey share the errors of its levelling, heights of different surveys share none. A benchmark that moved
or an error that all stations of a survey share comes out as the common shift (and tilt), not as bending. Sources:
significance of single displacements against their standard deviation, and the global test of congruency, Caspary,
Concepts of network and deformation analysis (1987), from memory; limit for many stations, Baarda (1968).
"""

from dataclasses import dataclass

import numpy as np

from .quantiles import BAARDA, NORMAL_95, chi_squared
from .stable_part import inverse_normals, solved, stable_part

# Verdicts on a change that is beyond doubt, upwards and downwards, or sideways, positive right.
MOVED_UP, MOVED_SIDEWAYS = ("risen", "settled"), ("right", "left")
CHANGE_VERDICTS = (*MOVED_UP, "possible", "not significant", "no sd")
LEAST_FOR_SHIFT, LEAST_FOR_TILT = 2, 3
HUBER = 1.5
_MAD = 1.4826
_ROUNDS = 100
DAYS_PER_YEAR = 365.25
CONGRUENT = 0.95


def change(first, second, sd_first, sd_second):
    """Change second − first and its standard deviation; metres, arrays (n,), NaN where unknown."""
    return second - first, np.sqrt(sd_first**2 + sd_second**2)


def test_values(changes, deviations):
    """Changes over their standard deviations (n,); NaN where there is none."""
    with np.errstate(divide="ignore", invalid="ignore"):
        return np.where(deviations > 0, changes / deviations, np.nan)


def verdicts(changes, deviations, moved=None, words=MOVED_UP):
    """One of CHANGE_VERDICTS for each change, (n,) of texts. ``changes``, ``deviations``: metres (n,); ``words``: what
    a positive and a negative change beyond doubt is called, MOVED_UP or MOVED_SIDEWAYS.

    Beyond 3.29 standard deviations (Baarda, 0.1 % of a station that has not moved, for many stations looked at
    together) it has 'risen' or 'settled'; beyond 1.96 (95 % for one station by itself) it is 'possible'; below that,
    'not shown'. ``moved``: 1 or -1 where the run of neighbours that a station belongs to has risen or settled as a
    whole, else 0 (n,).
    """
    size = np.abs(test_values(changes, deviations))
    known = np.isfinite(size)
    size = np.nan_to_num(size)
    run = np.zeros(np.shape(changes)) if moved is None else moved
    return np.select(
        [~known, run > 0, run < 0, (size > BAARDA) & (changes > 0), size > BAARDA, size > NORMAL_95],
        ["no sd", *words, *words, "possible"],
        "not significant",
    ).astype(object)


@dataclass(frozen=True)
class Congruency:
    """Global test whether anything changed: ``chi`` = d^T W d of all changes, ``limit``: the 95 % quantile of chi
    squared with as many degrees of freedom as changes."""

    chi: float
    limit: float

    @property
    def holds(self):
        """True where the surveys agree within chance."""
        return self.chi <= self.limit


def congruency(changes, covariance):
    """Congruency of the changes (n,), metres, of one axis with their ``covariance``, LevelledChanges or
    GivenChanges."""
    return Congruency(float(changes @ covariance.weighted(changes)), chi_squared(CONGRUENT, len(changes)))


@dataclass(frozen=True)
class CommonMotion:
    """What all stations of an axis have in common; metres. ``shift`` at the mean position ``middle``; ``tilt``: per
    metre, rising with the chainage, 0 where not asked for; ``sd_shift``, ``sd_tilt``: NaN without standard deviations.
    ``rest``, ``sd_rest``: departure of each station (n,). ``run``: number of the run of neighbours with which a station
    was set aside, else -1 (n,). ``told``: False where half the stations or more were set aside, so that no common
    movement can be told: shift, tilt and departures are NaN."""

    shift: float
    tilt: float
    sd_shift: float
    sd_tilt: float
    middle: float
    rest: np.ndarray
    sd_rest: np.ndarray
    run: np.ndarray
    told: bool = True

    @property
    def moved(self):
        """1 or -1 where the run that a station was set aside with has risen or settled, by its mean departure, 0
        elsewhere (n,)."""
        found = np.zeros(len(self.run))
        for number in range(int(self.run.max(initial=-1)) + 1 if self.told else 0):
            one = self.run == number
            found[one] = np.sign(np.mean(self.rest[one]))
        return found


def common_motion(positions, changes, covariance, *, tilt=False, robust=True):
    """Separate the common shift, and the tilt where asked for, from the bending of one axis.

    ``positions``, ``changes``: metres (n,), in the order of the chainage, all finite; ``covariance``: LevelledChanges
    or GivenChanges, None where no standard deviations are known. n at least 2, with a tilt 3 at different positions,
    else None. Generalised least squares, with ``robust`` on the stations that have not moved among themselves: see
    stable_part. Without standard deviations nothing can be set aside: ``robust`` then is Huber's estimate with k = 1.5
    on 1.4826 MAD.
    """
    number = len(changes)
    if number < (LEAST_FOR_TILT if tilt else LEAST_FOR_SHIFT) or tilt and np.ptp(positions) < 1e-6:
        return None
    middle = float(np.mean(positions))
    # Positions in units of the axis' extent, so that the columns are of one size.
    extent = float(np.ptp(positions)) if tilt else 1.0
    columns = np.ones((number, 1))
    if tilt:
        columns = np.column_stack((columns, (positions - middle) / extent))
    if covariance is None:
        return _unjudged(columns, changes, middle, extent, robust)
    part = stable_part(changes, columns, covariance) if robust else None
    run = part.run if robust else np.full(number, -1)
    keep = run < 0
    if robust and (not part.told or tilt and np.ptp(positions[keep]) < 1e-6):
        nothing = np.full(number, np.nan)
        return CommonMotion(np.nan, np.nan, np.nan, np.nan, middle, nothing, nothing, run, False)
    parameters, inverse, weighted = solved(
        changes[keep], columns[keep], covariance if np.all(keep) else covariance.part(keep)
    )
    rest = changes - columns @ parameters
    deviations = np.sqrt(np.diag(inverse))
    return CommonMotion(
        float(parameters[0]),
        float(parameters[1] / extent) if tilt else 0.0,
        float(deviations[0]),
        float(deviations[1] / extent) if tilt else 0.0,
        middle,
        rest,
        _departure_deviations(columns, inverse, weighted, keep, covariance),
        run,
    )


def _departure_deviations(columns, inverse, weighted, keep, covariance):
    """Standard deviations of the departures of all stations from a common movement solved on the kept ones (n,)."""
    # Covariance of each change with A^T W d of the kept ones: A for these, what they share for the others.
    shared = np.zeros_like(columns)
    shared[keep] = weighted
    shared = covariance.times(shared)
    variance = covariance.variance + np.einsum("ij,jk,ik->i", columns - 2.0 * shared, inverse, columns)
    return np.sqrt(np.maximum(variance, 0.0))


def _unjudged(columns, changes, middle, extent, robust):
    """The common movement where no standard deviation is known: every station counts the same, or by Huber."""
    weights = np.ones(len(changes))
    if robust:
        start = changes - np.median(changes)
        if columns.shape[1] > 1:
            start = changes - columns @ _weighted_solution(columns, changes, weights)
        weights = _huber(columns, changes, start)
    parameters = _weighted_solution(columns, changes, weights)
    return CommonMotion(
        float(parameters[0]),
        float(parameters[1] / extent) if len(parameters) > 1 else 0.0,
        np.nan,
        np.nan,
        middle,
        changes - columns @ parameters,
        np.full(len(changes), np.nan),
        np.full(len(changes), -1),
    )


def _weighted_solution(columns, changes, weights):
    return inverse_normals((columns * weights[:, None]).T @ columns) @ (columns.T @ (weights * changes))


def _huber(columns, changes, start):
    """Weights of Huber's estimate by iteration from the residuals ``start``."""
    rest = start
    for _ in range(_ROUNDS):
        size = np.abs(rest)
        scale = max(_MAD * float(np.median(size)), 1e-9)
        weights = np.minimum(1.0, HUBER * scale / np.maximum(size, 1e-300))
        new = changes - columns @ _weighted_solution(columns, changes, weights)
        if np.max(np.abs(new - rest)) < 1e-9:
            break
        rest = new
    return weights


def rates(years, heights, deviations):
    """Rate of each station by a weighted straight line of its heights over time, and its standard deviation; metres a
    year.

    ``years``: (k,); ``heights``, ``deviations``: (n, k), NaN where not surveyed or unknown. NaN where fewer than two
    surveys of different dates have a height, or dates are unknown.
    """
    seen = np.isfinite(heights) & np.isfinite(years)
    known = seen & np.isfinite(deviations)
    usable = np.all(known == seen, axis=1)
    weight = np.where(
        known & usable[:, None], 1.0 / np.where(known, deviations, 1.0) ** 2, np.where(usable[:, None], 0.0, 1.0 * seen)
    )
    total = weight.sum(axis=1)
    with np.errstate(divide="ignore", invalid="ignore"):
        middle = (weight * np.nan_to_num(years)).sum(axis=1) / total
        lever = np.where(seen, years - middle[:, None], 0.0)
        # About each station's mean: squares of heights above the sea would lose the millimetres.
        level = (weight * np.nan_to_num(heights)).sum(axis=1) / total
        size = (weight * lever**2).sum(axis=1)
        good = (seen.sum(axis=1) >= 2) & (size > 1e-12 * total)
        rate = np.where(
            good, (weight * lever * np.where(seen, heights - level[:, None], 0.0)).sum(axis=1) / size, np.nan
        )
        return rate, np.where(good & usable, np.sqrt(1.0 / size), np.nan)
