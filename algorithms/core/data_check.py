"""A first look at heights along an axis, before anything is decided: spacing, gaps, ends, and the shape they suggest.

Rules of thumb for sentences beside a form, never results: the toolbox entries compute those.
"""

import re
from dataclasses import dataclass

import numpy as np

from .errors import InputError
from .headings import columns_of, unit_in_heading
from .units import METRES

# Mean radius of the Earth, metres; half a percent of it does not change a first look.
RADIUS = 6_371_000.0
FOOT = 0.3048
# How the bend of the geoid itself blurs the shape: as in the curvature test (method page 6).
_GEOID_BENDING, _GEOID_LENGTH = 0.04, 3_000.0
_LEAST, _OUTSTANDING = 8, 6.0
_GAP = 1.75
SHAPES = ("straight", "level", "between", "feet", "undecided", "few")
_HUNDREDS = re.compile(r"^\D*\d+\s*\+\s*\d{2}(\.\d*)?\D*$")


@dataclass(frozen=True)
class Spacing:
    """``step``: usual distance between neighbours, metres (NaN for one station); ``gaps``: ((from, to), ...) of
    chainages in metres between neighbours that stand more than 1.75 steps apart."""

    step: float
    gaps: tuple


def spacing(chainages):
    """Spacing of stations at ``chainages`` (n,), metres, in any order; places within 1 mm count once."""
    s = np.sort(np.asarray(chainages, float))
    if not len(s) or not np.all(np.isfinite(s)):
        raise InputError("A spacing needs chainages that are numbers.")
    s = s[np.concatenate([[True], np.diff(s) > 0.001])]
    if len(s) < 2:
        return Spacing(np.nan, ())
    steps = np.diff(s)
    step = float(np.median(steps))
    wide = np.flatnonzero(steps > _GAP * step)
    return Spacing(step, tuple((float(s[k]), float(s[k + 1])) for k in wide))


@dataclass(frozen=True)
class Shape:
    """What heights along one axis suggest.

    ``range``: greatest minus least height but for those that stand out, ``length``: over the stations with heights,
    metres. ``factor``: their bend in units of the Earth's curvature (1 straight in space, 0 along the level surface),
    ``deviation``: its standard deviation. ``suggests``: of SHAPES. ``outstanding``: indices into the given arrays of
    heights far off their neighbours' curve.
    """

    range: float
    length: float
    factor: float
    deviation: float
    suggests: str
    outstanding: tuple


def shape(chainages, heights):
    """Shape of ``heights`` at ``chainages`` (n,), metres; rows where either is NaN are left out.

    Least squares of 1, s and s²/2R, without those that stand out by more than 6 robust standard deviations.
    """
    s, h = np.asarray(chainages, float), np.asarray(heights, float)
    known = np.flatnonzero(np.isfinite(s) & np.isfinite(h))
    if not len(known):
        return Shape(np.nan, 0.0, np.nan, np.inf, "few", ())
    s, h = s[known], h[known]
    length, height_range = float(np.ptp(s)), float(np.ptp(h))
    if len(known) < _LEAST or length < 1.0 or len(np.unique(np.round(s, 3))) < _LEAST:
        return Shape(height_range, length, np.nan, np.inf, "few", ())
    keep = np.ones(len(s), bool)
    for _ in range(5):
        factor, deviation, left = _bend(s, h, keep)
        centre = np.median(left[keep])
        limit = _OUTSTANDING * max(1.4826 * float(np.median(np.abs(left[keep] - centre))), 1e-4)
        outside = np.abs(left - centre) > limit
        if outside.sum() > 0.2 * len(s) or np.array_equal(~outside, keep):
            break
        keep = ~outside
    deviation = float(np.hypot(deviation, _GEOID_BENDING * _GEOID_LENGTH / length))
    return Shape(
        float(np.ptp(h[keep])),
        length,
        factor,
        deviation,
        _suggested(factor, deviation),
        tuple(int(k) for k in known[~keep]),
    )


def _bend(s, h, keep):
    """Factor of s²/2R, its standard deviation, and what the fit leaves at every station; sums, no linear algebra."""
    x = s - s[keep].mean()
    x2 = x * x - (x[keep] ** 2).mean()
    tilt = float(np.sum(x[keep] * x2[keep]) / np.sum(x[keep] ** 2))
    bend = (x2 - tilt * x) / (2.0 * RADIUS)
    power = float(np.sum(bend[keep] ** 2))
    high = h - h[keep].mean()
    slope = float(np.sum(x[keep] * high[keep]) / np.sum(x[keep] ** 2))
    flat = high - slope * x
    factor = float(np.sum(bend[keep] * flat[keep])) / power
    left = flat - factor * bend
    return factor, float(np.sqrt(np.sum(left[keep] ** 2) / (keep.sum() - 3) / power)), left


def _suggested(factor, deviation):
    if deviation > 0.25:
        return "undecided"
    straight, level = (abs(factor - wanted) <= 1.96 * deviation for wanted in (1.0, 0.0))
    if straight or level:
        return "straight" if straight else "level"
    return "feet" if abs(factor * FOOT - 1.0) <= 1.96 * deviation * FOOT else "between"


def ends(feet, order=None):
    """Indices (first, last) of the stations that an axis is drawn between.

    ``feet``: Earth-centred foot points (n, 3), metres. ``order``: chainages (n,) where they are known, NaN elsewhere;
    then the least and the greatest. Else the two that stand farthest apart along the structure, the one that comes
    earlier in the list first. InputError where all stand at one place.
    """
    feet = np.asarray(feet, float)
    if len(feet) < 2:
        raise InputError("An axis is drawn between two stations; there is only one.")
    if order is not None and np.isfinite(order).sum() >= 2 and np.nanmax(order) > np.nanmin(order):
        first, last = int(np.nanargmin(order)), int(np.nanargmax(order))
    else:
        # Farthest from any point is an end; farthest from that end is the other: true for all that is long and narrow.
        one = int(np.argmax(np.linalg.norm(feet - feet[0], axis=1)))
        other = int(np.argmax(np.linalg.norm(feet - feet[one], axis=1)))
        first, last = min(one, other), max(one, other)
    if np.linalg.norm(feet[first] - feet[last]) < 0.001:
        raise InputError("An axis is drawn between two stations; all stand at one place.")
    return first, last


def guessed_unit(name):
    """Unit that a column's ``name`` tells ('metre', 'foot', 'us_foot'): height_ft, H [m]; '' for none."""
    unit = unit_in_heading(name)
    return unit if unit in METRES else ""


def guessed_column(names, kind):
    """The first of ``names`` that says ``kind`` (of core.headings), with or without a unit; '' for none."""
    found = columns_of([(name,) for name in names], kind)
    return names[found[0]] if found else ""


def counts_hundreds(texts):
    """True where most stations are written in hundreds (12+50), as is usual with feet."""
    with_plus = [text for text in texts if "+" in text]
    return bool(with_plus) and sum(bool(_HUNDREDS.match(text)) for text in with_plus) > 0.5 * len(with_plus)


def unit_by_length(listed, drawn):
    """'foot' where a list read as metres runs 3.28 times as far as the axis is long, 'metre' where one read as feet
    runs 0.3048 times as far; '' else. ``listed``: span of the list's chainages, ``drawn``: length of the axis, metres.
    """
    if not (drawn > 0.0 and listed > 0.0):
        return ""
    ratio = listed / drawn
    return "foot" if abs(ratio * FOOT - 1.0) < 0.03 else "metre" if abs(ratio / FOOT - 1.0) < 0.03 else ""
