"""What a review report says in numbers: statistics, 95 % accuracy, certainty of each station, the verdict."""

from dataclasses import dataclass
from math import erfc, pi, sqrt
from typing import Optional

import numpy as np

from .curves import CHUNK
from .errors import InputError
from .residuals import ASIDE, statistics, vertical_accuracy_95

# Least number of check points. Source: FGDC-STD-007.3-1998, section 3.2.2 (from memory).
FEWEST = 20
# Critical value at 5 % of the modified statistic, mean and deviation estimated. Source: D'Agostino and Stephens (1986),
# Goodness-of-fit techniques, table 4.7 (from memory).
NORMAL_LIMIT = 0.752
# A mean farther from zero than this many of its standard errors is a bias.
BIAS_LIMIT = 2.0
CERTAIN = 0.95
# Words for a station beyond a tolerance: of heights, of the line, and of both together.
BEYOND = ("high", "low", *ASIDE, "beyond")
# Nodes of the quadrature over a circle: 1e-14 of its probability, measured.
_NODES = 64

_normal = np.vectorize(lambda z: 0.5 * erfc(-z / sqrt(2.0)), otypes=[float])


@dataclass(frozen=True)
class Figures:
    """Statistics of residuals; metres. ``sd`` about the mean, NaN for fewer than two; ``greatest`` with its sign;
    ``greatest_at``: its index, or None; ``within``, ``high``, ``low``, ``no_height``: numbers of stations."""

    number: int
    rms: float
    mean: float
    sd: float
    greatest: float
    greatest_at: Optional[int]


def figures(residuals):
    """Figures of residuals (n,), metres; NaN where there is no height."""
    residuals = np.asarray(residuals, float)
    found = statistics(residuals)
    values = residuals[np.isfinite(residuals)]
    greatest = float("nan") if found.greatest_at is None else float(residuals[found.greatest_at])
    return Figures(
        found.number,
        found.rms,
        found.mean,
        float(values.std(ddof=1)) if len(values) > 1 else float("nan"),
        greatest,
        found.greatest_at,
    )


def conformance(residuals, tolerance, sd):
    """Probability (n,) that a station is within ``tolerance``, given its residual and the standard deviation of its
    height.

    Metres; NaN where one of them is missing. A normal error and no knowledge beforehand. Source: JCGM 106:2012, The
    role of measurement uncertainty in conformity assessment, section 7.4, two-sided tolerance interval (from memory).
    InputError for a standard deviation that is not positive or a tolerance below zero.
    """
    residuals, tolerance, sd = np.broadcast_arrays(
        *(np.atleast_1d(np.asarray(v, float)) for v in (residuals, tolerance, sd))
    )
    if np.any(sd <= 0.0) or np.any(tolerance < 0.0):
        raise InputError("A probability needs a positive standard deviation and a tolerance that is not negative.")
    known = np.isfinite(residuals) & np.isfinite(tolerance) & np.isfinite(sd)
    found = np.full(residuals.shape, np.nan)
    if np.any(known):
        r, t, s = residuals[known], tolerance[known], sd[known]
        found[known] = _normal((t - r) / s) - _normal((-t - r) / s)
    return found


def radial_conformance(first, second, tolerance, sd_first, sd_second):
    """Probability (n,) that a station lies within a circle of ``tolerance`` about its design: departures in two
    directions at right angles (height and line) and the standard deviation of each.

    Metres; NaN where one of them is missing. Normal errors, independent of each other, and no knowledge beforehand: the
    integral over the circle, across by the normal distribution and along by Gauss and Legendre within nine standard
    deviations. InputError as in ``conformance``.
    """
    first, second, tolerance, sd_first, sd_second = np.broadcast_arrays(
        *(np.atleast_1d(np.asarray(v, float)) for v in (first, second, tolerance, sd_first, sd_second))
    )
    if np.any(sd_first <= 0.0) or np.any(sd_second <= 0.0) or np.any(tolerance < 0.0):
        raise InputError("A probability needs a positive standard deviation and a tolerance that is not negative.")
    found = np.full(first.shape, np.nan)
    known = np.flatnonzero(np.isfinite(first) & np.isfinite(second) & np.isfinite(tolerance * sd_first * sd_second))
    # Along the direction that is known better: there the nodes lie where the density is.
    turned = sd_first > sd_second
    first, second = np.where(turned, second, first), np.where(turned, first, second)
    sd_first, sd_second = np.minimum(sd_first, sd_second), np.maximum(sd_first, sd_second)
    for part in np.array_split(known, max(len(known) // CHUNK, 1)):
        found[part] = _in_circle(*(v[part] for v in (first, second, tolerance, sd_first, sd_second)))
    return found


def _in_circle(first, second, tolerance, sd_first, sd_second):
    """Probabilities (n,) of ``radial_conformance``: over the circle's angle, so that its edge is smooth."""
    nodes, weights = np.polynomial.legendre.leggauss(_NODES)
    radius = np.maximum(tolerance, np.finfo(float).tiny)
    ends = [np.arcsin(np.clip((first + side * 9.0 * sd_first) / radius, -1.0, 1.0)) for side in (-1.0, 1.0)]
    middle, half = 0.5 * (ends[0] + ends[1]), 0.5 * (ends[1] - ends[0])
    angle = middle[:, None] + half[:, None] * nodes
    place, reach = tolerance[:, None] * np.sin(angle), tolerance[:, None] * np.cos(angle)
    across = sum(side * _normal((side * reach - second[:, None]) / sd_second[:, None]) for side in (1.0, -1.0))
    density = np.exp(-0.5 * ((place - first[:, None]) / sd_first[:, None]) ** 2) / (sd_first[:, None] * sqrt(2.0 * pi))
    return np.minimum(half * np.sum(weights * density * across * reach, axis=1), 1.0)


def normality(values):
    """Anderson and Darling's statistic of ``values`` (n,), modified for an estimated mean and deviation; inf where all
    are equal.

    Compare with NORMAL_LIMIT. Source: D'Agostino and Stephens (1986), section 4.8.5 (from memory). InputError below 8
    values.
    """
    values = np.sort(np.asarray(values, float))
    number = len(values)
    if number < 8 or not np.all(np.isfinite(values)):
        raise InputError("The test of normality needs at least 8 values.")
    if not np.ptp(values) > 0.0:
        return float("inf")
    z = (values - values.mean()) / values.std(ddof=1)
    # The upper tail by the lower of the mirrored value: 1 - F would lose all digits there.
    lower, upper = _normal(z), _normal(-z[::-1])
    with np.errstate(divide="ignore"):
        terms = (2 * np.arange(1, number + 1) - 1) * (np.log(lower) + np.log(upper))
    return float((-number - terms.mean()) * (1.0 + 0.75 / number + 2.25 / number**2))


@dataclass(frozen=True)
class Accuracy:
    """Vertical accuracy at 95 %, metres. ``value``: 1.96 times the RMSE; ``against``: conditions that do not hold, of
    'few', 'bias', 'not normal', 'own heights'; ``standard_errors``: of the mean from zero."""

    value: float
    against: tuple
    standard_errors: float

    @property
    def holds(self):
        """True where the test is met: enough points, bias within its limit, normal errors, an independent source."""
        return not self.against


def accuracy_95(residuals, *, own_heights=False):
    """Accuracy of residuals (n,), metres, blunders left out beforehand. ``own_heights``: the design was taken from
    these heights.

    Source: FGDC-STD-007.3-1998, section 3.2 and appendix 3-A: at least 20 points, blunders and bias removed, normal
    errors, checked against an independent source (from memory).
    """
    values = np.asarray(residuals, float)
    values = values[np.isfinite(values)]
    found = figures(values)
    error = found.sd / sqrt(found.number) if found.number > 1 else float("nan")
    away = abs(found.mean) / error if error > 0.0 else float("nan")
    against = ["few"] if found.number < FEWEST else []
    if away > BIAS_LIMIT:
        against.append("bias")
    if found.number >= 8 and normality(values) > NORMAL_LIMIT:
        against.append("not normal")
    if own_heights:
        against.append("own heights")
    return Accuracy(float(vertical_accuracy_95(found.rms)), tuple(against), float(away))


CONFORMANCE_VERDICTS = (
    "nothing to judge",
    "no tolerance",
    "not within",
    "not within, not certain",
    "doubtful",
    "accepted",
    "within, not certain",
    "within",
)


@dataclass(frozen=True)
class Verdict:
    """``kind``: one of CONFORMANCE_VERDICTS. Masks (n,): ``judged``: have a residual and a tolerance; ``out``: beyond
    it and neither doubted nor accepted; ``doubted``: beyond it, but suspected, to be measured again or a reading error;
    ``accepted``: beyond it and accepted; ``sure_in``, ``sure_out``, ``unsure``: by their probability, none without
    accuracies."""

    kind: str
    judged: np.ndarray
    out: np.ndarray
    doubted: np.ndarray
    accepted: np.ndarray
    sure_in: np.ndarray
    sure_out: np.ndarray
    unsure: np.ndarray


def verdict(residuals, status, probability, *, doubtful, accepted):
    """The verdict on stations (n,): ``status`` as core.residuals gives it, or 'within' and one of BEYOND;
    ``probability`` from ``conformance``; masks ``doubtful`` (not to be believed, or not yet) and ``accepted`` (by a
    decision)."""
    status, probability = np.asarray(status, dtype=object).astype(str), np.asarray(probability, float)
    known = np.isfinite(np.asarray(residuals, float))
    beyond = known & np.isin(status, BEYOND)
    judged = beyond | known & (status == "within")
    accepted = beyond & np.asarray(accepted, bool)
    doubted = beyond & np.asarray(doubtful, bool) & ~accepted
    out = beyond & ~doubted & ~accepted
    believed = judged & ~np.asarray(doubtful, bool)
    sure_in, sure_out = believed & (probability >= CERTAIN), believed & (probability <= 1.0 - CERTAIN)
    unsure = believed & np.isfinite(probability) & ~sure_in & ~sure_out
    masks = (judged, out, doubted, accepted, sure_in, sure_out, unsure)
    return Verdict(_kind(known, *masks), *masks)


def _kind(known, judged, out, doubted, accepted, _sure_in, sure_out, unsure):
    if not np.any(judged):
        return "no tolerance" if np.any(known) else "nothing to judge"
    if np.any(out):
        # Where no accuracy is known the numbers are taken as they stand.
        return "not within" if np.any(out & (sure_out | ~unsure)) else "not within, not certain"
    if np.any(doubted):
        return "doubtful"
    if np.any(accepted):
        return "accepted"
    return "within, not certain" if np.any(unsure) else "within"


def decimals_for(size, *, least, most):
    """Decimals that show a tenth of ``size`` (a standard deviation or a tolerance, in the unit shown), between least
    and most.
    """
    if not (size is not None and np.isfinite(size) and size > 0.0):
        return least
    return int(np.clip(np.ceil(-np.log10(0.1 * size) - 1e-9), least, most))
