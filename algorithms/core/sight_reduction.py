"""Height differences from sights, with their standard deviations by propagation (method page 8).

Lengths metres, angles degrees, arrays (n,). What several sights share, k and the collimation, stays apart from what
each has alone, so that sums and reciprocal means propagate it rightly.
"""

from dataclasses import dataclass

import numpy as np

from .errors import InputError, Word
from .sights import arc_height_difference_midway, reciprocal, sight_correction

# Below this a setup without a k counts as balanced, metres.
NO_MATTER = 1e-5
# Mirages reach k = 10; beyond that, something else was given.
MOST_K = 20.0
_FIELDS = ("rise", "length", "lift", "imbalance", "own", "setups")


@dataclass(frozen=True)
class Precision:
    """Standard deviations: ``angle`` degrees; ``distance`` metres and ``distance_ratio`` per metre; ``height`` of each
    instrument and target height, ``reading`` of a staff, metres; ``k``; ``collimation`` rise per length. NaN: not
    stated. InputError for a negative one."""

    angle: float = np.nan
    distance: float = 0.0
    distance_ratio: float = 0.0
    height: float = 0.0
    reading: float = np.nan
    k: float = 0.0
    collimation: float = 0.0

    def __post_init__(self):
        for name, value in vars(self).items():
            if value < 0.0:
                raise InputError("The standard deviation of the {} is negative.", Word(name.replace("_", " ")))


@dataclass(frozen=True)
class Observed:
    """Sights or setups before they are corrected, arrays (n,).

    ``rise``: from the first to the second point as observed, metres; ``length``: of the line, horizontal, metres;
    ``lift``: D^2/2R of the fore sight less that of the back sight, metres: (1 - k) lift is added; ``imbalance``: length
    of the fore sight less that of the back sight, metres: collimation times it is added; ``own``: variance of ``rise``
    from the instrument, square metres, NaN where not stated; ``setups``: number.
    """

    rise: np.ndarray
    length: np.ndarray
    lift: np.ndarray
    imbalance: np.ndarray
    own: np.ndarray
    setups: np.ndarray

    def __len__(self):
        return len(self.rise)

    def rows(self, rows):
        """Observed of some ``rows``: indices (k,), or a mask (n,)."""
        return Observed(*(getattr(self, name)[rows] for name in _FIELDS))

    def sums(self, groups, number):
        """Setups added up: ``groups``, index of each setup's sum (n,), of ``number`` sums."""
        return Observed(*(np.bincount(groups, getattr(self, name), number) for name in _FIELDS))


def trigonometric(distance, slope, zenith, instrument, target, radius, precision):
    """Observed of trigonometric sights.

    ``distance``: metres; ``slope``: True where it is along the line of sight, else horizontal at the instrument, that
    is the slope distance times the sine of the zenith angle; ``zenith``: degrees, 0 to 180; ``instrument``, ``target``:
    heights above the points, metres; ``radius``: metres. That the correction depends on the distance's own error
    is left out: 1e-4 of that error.
    """
    z = np.radians(zenith)
    horizontal = np.where(slope, distance * np.sin(z), distance)
    rise = np.where(slope, distance * np.cos(z), distance / np.tan(z)) + instrument - target
    lift = np.asarray(sight_correction(horizontal, k=0.0, radius=radius), float)
    by_distance = np.where(slope, np.cos(z), 1.0 / np.tan(z))
    by_angle = np.where(slope, horizontal, horizontal / np.sin(z) ** 2)
    return _sighted(distance, horizontal, rise, lift, by_distance, by_angle, precision)


def over_arcs(arc, zenith, instrument, target, radius, height, precision):
    """Observed of trigonometric sights whose distance is an ``arc`` on the ellipsoid, metres (n,).

    ``height``: midway between the ends above the ellipsoid, metres; the others as for ``trigonometric``. ``rise`` is
    that of a line of sight with k = 1, and ``lift`` what is added to it where k = 0: between them a height is taken
    as linear in k, which errs by 1e-5 m over 3 km at 15 degrees. On a steep line ``lift`` is D^2/2R over cos^2 of
    the altitude.
    """
    level = {k: _over_arc(arc, zenith, k, radius, height) for k in (0.0, 1.0)}
    z = np.radians(zenith)
    rise, lift = level[1.0] + instrument - target, level[0.0] - level[1.0]
    return _sighted(arc, arc, rise, lift, 1.0 / np.tan(z), arc / np.sin(z) ** 2, precision)


def _over_arc(arc, zenith, k, radius, height):
    altitude = 90.0 - np.asarray(zenith, float)
    return np.asarray(arc_height_difference_midway(arc, altitude, k=k, radius=radius, height=height), float)


def kinds_of_distance_differ(distance, zenith, radius, height):
    """By how much a height depends on whether a horizontal ``distance`` lies at the instrument or is an arc on the
    ellipsoid, metres (n,), never negative. ``height`` as for ``over_arcs``."""
    z = np.radians(np.asarray(zenith, float))
    at_instrument = distance / np.tan(z) + sight_correction(distance, k=0.0, radius=radius)
    return np.abs(_over_arc(distance, zenith, 0.0, radius, height) - at_instrument)


def _sighted(distance, horizontal, rise, lift, by_distance, by_angle, precision):
    sigma = precision.distance + precision.distance_ratio * distance
    own = (by_distance * sigma) ** 2 + (by_angle * np.radians(precision.angle)) ** 2 + 2.0 * precision.height**2
    return Observed(rise, horizontal, lift, horizontal.copy(), own, np.ones(len(rise)))


def chosen(mask, first, second):
    """Observed of the rows of ``first`` where ``mask`` is True (n,), else those of ``second``."""
    return Observed(*(np.where(mask, getattr(first, name), getattr(second, name)) for name in _FIELDS))


def level_setups(back, fore, back_length, fore_length, radius, precision):
    """Observed of levelling setups; readings and lengths in metres, lengths NaN where not measured.

    A setup without both lengths gets no correction; its length is NaN.
    """
    known = np.isfinite(back_length) & np.isfinite(fore_length)
    near, far = np.where(known, back_length, 0.0), np.where(known, fore_length, 0.0)
    lift = np.asarray(sight_correction(far, k=0.0, radius=radius)) - sight_correction(near, k=0.0, radius=radius)
    length = np.where(known, near + far, np.nan)
    own = np.full(len(back), 2.0 * precision.reading**2)
    return Observed(back - fore, length, lift, far - near, own, np.ones(len(back)))


@dataclass(frozen=True)
class Reduced:
    """Height differences: ``difference``, ``deviation`` (NaN: not stated), ``curvature`` and ``collimation`` (what was
    added for them), metres (n,)."""

    difference: np.ndarray
    deviation: np.ndarray
    curvature: np.ndarray
    collimation: np.ndarray


def reduced(observed, k, collimation, precision):
    """Reduced of single sights and setups. ``k``: (n,), NaN where not known: InputError where it is needed or no
    coefficient; ``collimation``: rise of the level's line of sight per length, (n,), 0 for trigonometric sights."""
    if np.any(needs_k(observed, k)):
        raise InputError("A sight has no coefficient of refraction k.")
    if np.any(np.abs(np.nan_to_num(k)) > MOST_K):
        raise InputError("The coefficient of refraction k is not a number near 0, such as 0.13.")
    factor = 1.0 - np.where(np.isnan(k), 0.0, k)
    curvature, tilt = factor * observed.lift, collimation * observed.imbalance
    shared = (observed.lift * precision.k) ** 2 + np.where(
        collimation != 0.0, observed.imbalance * precision.collimation, 0.0
    ) ** 2
    return Reduced(observed.rise + curvature + tilt, np.sqrt(observed.own + shared), curvature, tilt)


def needs_k(observed, k):
    """True where a sight needs a coefficient of refraction and has none (n,)."""
    return np.isnan(k) & (np.abs(observed.lift) > NO_MATTER)


@dataclass(frozen=True)
class Pairs:
    """Reciprocal sights combined: as Reduced, and ``k`` solved with its standard deviation ``k_deviation`` (n,)."""

    reduced: Reduced
    k: np.ndarray
    k_deviation: np.ndarray


def combined(forward, backward, collimation, separate, precision):
    """Pairs of reciprocal sights.

    ``forward``, ``backward``: Observed (n,), A to B and B to A; ``collimation``: (n,); ``separate``: True where the two
    were observed on different days, so that the error of k does not cancel (n,). The mean is free of curvature, of
    refraction as far as it was the same both ways, and of collimation.
    """
    mean = reciprocal(forward.rise, backward.rise)
    lift = 0.5 * (forward.lift + backward.lift)
    imbalance = 0.5 * (forward.imbalance + backward.imbalance)
    own = 0.25 * (forward.own + backward.own)
    shared = 0.25 * ((forward.lift * precision.k) ** 2 + (backward.lift * precision.k) ** 2) * separate
    tilt = collimation * imbalance
    # As solved_refraction, but of the lift: with a level the near sight takes a little off the far one's D^2/2R.
    k = 1.0 - (mean.error - tilt) / lift
    # The mean is free of the collimation, k is not: 5 seconds of arc at 780 m are 0.4 in k.
    tilt_variance = np.where(collimation != 0.0, imbalance * precision.collimation, 0.0) ** 2
    return Pairs(
        Reduced(np.asarray(mean.difference), np.sqrt(own + shared), mean.error - tilt, tilt),
        k,
        np.sqrt(own + tilt_variance) / lift,
    )


def reciprocal_pairs(starts, ends, days, able):
    """Rows of reciprocal sights: pairs (forward, backward) in order of observing, within one day before across days.

    ``starts``, ``ends``, ``days``: texts (n,); ``able``: True where the sight can be one of a pair (n,). Returns a list
    of (row, row, True where on different days).
    """
    waiting, found, used = {}, [], set()
    for across in (False, True):
        waiting.clear()
        for row, (start, end, day) in enumerate(zip(starts, ends, days)):
            if not able[row] or row in used:
                continue
            key = "" if across else day
            partners = waiting.get((end, start, key))
            if partners:
                first = partners.pop(0)
                found.append((first, row, across))
                used.update((first, row))
            else:
                waiting.setdefault((start, end, key), []).append(row)
    return sorted(found)
