"""Changes between surveys of one structure: their significance, what is common to all stations, and the rate.

Heights of different surveys, and of different stations in one survey, are taken as independent; a benchmark that moved
or an error that all stations of a survey share comes out as the common shift (and tilt), not as bending. Sources:
significance of single displacements against their standard deviation, Caspary, Concepts of network and deformation
analysis (1987), from memory; limit for many stations, Baarda (1968).
"""

from dataclasses import dataclass

import numpy as np

from .quantiles import BAARDA, NORMAL_95

CHANGE_VERDICTS = ("risen", "settled", "possible", "not shown", "no sd")
LEAST_FOR_SHIFT, LEAST_FOR_TILT = 2, 3
HUBER = 1.5
_MAD = 1.4826
_ROUNDS = 100
DAYS_PER_YEAR = 365.25


def change(first, second, sd_first, sd_second):
    """Change second − first and its standard deviation; metres, arrays (n,), NaN where unknown."""
    return second - first, np.sqrt(sd_first**2 + sd_second**2)


def test_values(changes, deviations):
    """Changes over their standard deviations (n,); NaN where there is none."""
    with np.errstate(divide="ignore", invalid="ignore"):
        return np.where(deviations > 0, changes / deviations, np.nan)


def verdicts(changes, deviations):
    """One of CHANGE_VERDICTS for each change, (n,) of texts. ``changes``, ``deviations``: metres (n,).

    Beyond 3.29 standard deviations (Baarda, 0.1 % of a station that has not moved, for many stations looked at
    together) it has 'risen' or 'settled'; beyond 1.96 (95 % for one station by itself) it is 'possible'; below that,
    'not shown'.
    """
    size = np.abs(test_values(changes, deviations))
    known = np.isfinite(size)
    size = np.nan_to_num(size)
    return np.select(
        [~known, (size > BAARDA) & (changes > 0), size > BAARDA, size > NORMAL_95],
        ["no sd", "risen", "settled", "possible"],
        "not shown",
    ).astype(object)


@dataclass(frozen=True)
class CommonMotion:
    """What all stations of an axis have in common; metres. ``shift`` at the mean position ``middle``; ``tilt``: per
    metre, rising with the chainage, 0 where not asked for; ``sd_shift``, ``sd_tilt``: NaN without standard deviations.
    ``rest``, ``sd_rest``: the bending of each station (n,). ``weights``: (n,) from 0 to 1, below 1 where the robust
    estimate gave a station less say."""

    shift: float
    tilt: float
    sd_shift: float
    sd_tilt: float
    middle: float
    rest: np.ndarray
    sd_rest: np.ndarray
    weights: np.ndarray


def common_motion(positions, changes, deviations, *, tilt=False, robust=True):
    """Separate the common shift, and the tilt where asked for, from the bending of one axis.

    ``positions``, ``changes``, ``deviations``: metres (n,), all finite, but ``deviations`` all NaN where unknown; n at
    least 2, with a tilt 3 at different positions, else None. Weighted least squares with 1/sd²; ``robust``: Huber's
    estimate with k = 1.5 on 1.4826 MAD, so that a stretch which has settled does not pass for a shift of the rest.
    Standard deviations are those of a linear estimate with the final weights.
    """
    number = len(changes)
    if number < (LEAST_FOR_TILT if tilt else LEAST_FOR_SHIFT) or tilt and np.ptp(positions) < 1e-6:
        return None
    sd_known = bool(np.all(np.isfinite(deviations)))
    sigma = deviations if sd_known else np.ones(number)
    weights, columns = np.ones(number), _columns(positions, sigma, tilt)
    if robust:
        start = changes - np.median(changes)
        if tilt:
            start = changes - columns @ _solved(columns, changes, 1.0 / sigma**2)[0]
        weights = _huber(columns, changes, sigma, start)
    parameters, inverse = _solved(columns, changes, weights / sigma**2)
    rest = changes - columns @ parameters
    deviation, sd_rest = _propagated(columns, weights, sigma, inverse)
    if not sd_known:
        deviation, sd_rest = np.full(2, np.nan), np.full(number, np.nan)
    return CommonMotion(
        float(parameters[0]),
        float(parameters[1]) if tilt else 0.0,
        float(deviation[0]),
        float(deviation[1]) if tilt else (0.0 if sd_known else np.nan),
        _middle(positions, sigma),
        rest,
        sd_rest,
        weights,
    )


def _middle(positions, sigma):
    return float(np.average(positions, weights=1.0 / sigma**2))


def _columns(positions, sigma, tilt):
    ones = np.ones(len(positions))
    return np.column_stack((ones, positions - _middle(positions, sigma))) if tilt else ones[:, None]


def _inverse(normals):
    """Of a 1 × 1 or 2 × 2 matrix, in closed form: no LAPACK call for each axis and survey."""
    if len(normals) == 1:
        return 1.0 / normals
    (a, b), (_, d) = normals
    return np.array([[d, -b], [-b, a]]) / (a * d - b * b)


def _solved(columns, changes, weights):
    inverse = _inverse((columns * weights[:, None]).T @ columns)
    return inverse @ (columns.T @ (weights * changes)), inverse


def _huber(columns, changes, sigma, start):
    """Weights of Huber's estimate by iteration from the residuals ``start``."""
    rest = start
    for _ in range(_ROUNDS):
        size = np.abs(rest / sigma)
        scale = max(_MAD * float(np.median(size)), 1e-9 / float(np.max(sigma)))
        weights = np.minimum(1.0, HUBER * scale / np.maximum(size, 1e-300))
        parameters, _ = _solved(columns, changes, weights / sigma**2)
        new = changes - columns @ parameters
        if np.max(np.abs(new - rest)) < 1e-9:
            break
        rest = new
    return weights


def _propagated(columns, weights, sigma, inverse):
    """Standard deviations of the parameters and of the residuals (n,) of a linear estimate with these weights."""
    scaled = columns * (weights / sigma)[:, None]
    covariance = inverse @ (scaled.T @ scaled) @ inverse
    own = np.einsum("ij,jk,ik->i", columns, inverse, columns) * weights
    fitted = np.einsum("ij,jk,ik->i", columns, covariance, columns)
    return np.sqrt(np.diag(covariance)), np.sqrt(np.maximum(sigma**2 - 2.0 * own + fitted, 0.0))


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
