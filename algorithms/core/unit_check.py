"""Whether heights look as if they were read in another unit: worth a warning, never a silent correction."""

import numpy as np

from .errors import Sentence
from .segments import joined

FOOT_RATIO = 1.0 / 0.3048
_RADIUS = 6_371_000.0


def unit_doubt(stations, design, spec):
    """A Sentence where the heights look as if they were in feet and read as metres, or the other way, else ''.

    ``stations``: DesignStations; ``design``: DesignHeights; ``spec``: DesignSpec. Two signs: typed control heights
    against the stations' own, and for a straight design on the ellipsoid the curvature that the heights show.
    """
    return unit_doubts([stations], [design], [spec])[0]


def unit_doubts(stations, designs, specs):
    """The same of many axes (m): a list of Sentences and ''."""
    values = [joined([getattr(one, name) for one in stations]) for name in ("chainage", "height")]
    values += [joined([getattr(one, name) for one in designs]) for name in ("design_h", "flat_h")]
    axis = np.repeat(np.arange(len(stations)), [len(one.chainage) for one in stations])
    factors, deviations = curvatures_shown(axis, len(stations), *values)
    doubts = []
    for one, spec, factor, deviation in zip(stations, specs, factors.tolist(), deviations.tolist()):
        text = _against_typed(one, spec)
        if not text and deviation < 0.1 and spec.earth == "ellipsoid":
            for wrong in (FOOT_RATIO, 1.0 / FOOT_RATIO):
                if (
                    not text
                    and abs(factor - wrong) < max(4.0 * deviation, 0.03)
                    and abs(factor - 1.0) > 6.0 * deviation
                ):
                    text = Sentence(
                        "Axis '{}': the heights bend {:.2f} times as much as a straight structure does; they may be in "
                        "feet, read in another unit. Check HEIGHT_UNIT."
                        if wrong > 1.0
                        else "Axis '{}': the heights bend {:.2f} times as much as a straight structure does; they may "
                        "be in metres, read in another unit. Check HEIGHT_UNIT.",
                        one.name,
                        factor,
                    )
        doubts.append(text)
    return doubts


def _against_typed(stations, spec):
    typed = [h for h in (spec.height_a, spec.height_b if spec.uses_b else None) if h is not None]
    if not typed or min(abs(h) for h in typed) <= 1.0:
        return ""
    heights = stations.height[np.isfinite(stations.height)]
    if len(heights):
        ratio = np.median(heights) / np.median(typed)
        for factor in (FOOT_RATIO, 1.0 / FOOT_RATIO):
            if abs(ratio / factor - 1.0) < 0.02:
                return Sentence(
                    "Axis '{}': the heights are about {:.2f} times the controls' heights; they may be in feet, read in "
                    "another unit. Check HEIGHT_UNIT."
                    if factor > 1.0
                    else "Axis '{}': the heights are about {:.2f} times the controls' heights; they may be in metres, "
                    "read in another unit. Check HEIGHT_UNIT.",
                    stations.name,
                    factor,
                )
    return ""


def unit_by_bend(chainage, curv_eff):
    """The unit that numbers of a straight design are in, by the bend of its curvature effect: 'metre', 'foot'; '' where
    it shows too little of it.

    ``chainage``: metres (n,); ``curv_eff``: design height minus flat height, unit in question (n,); NaN where there is
    none. A straight line in space rises over the level surface by s^2/2R: mean radius of the Earth, 0.7 % at most off.
    """
    known = np.isfinite(chainage) & np.isfinite(curv_eff)
    s, bend = chainage[known] - (chainage[known].mean() if np.any(known) else 0.0), curv_eff[known]
    if len(s) < 4 or np.ptp(bend) < 0.02:
        return ""
    curve = _off_line(s, s**2 / (2.0 * _RADIUS))
    power = float(np.sum(curve**2))
    if power <= 0.0:
        return ""
    factor = float(np.sum(curve * _off_line(s, bend))) / power
    left = _off_line(s, bend) - factor * curve
    if float(np.sum(left**2)) > 0.01 * float(np.sum(_off_line(s, bend) ** 2)):
        return ""
    return next((unit for unit, size in (("metre", 1.0), ("foot", FOOT_RATIO)) if abs(factor / size - 1.0) < 0.05), "")


def unit_by_distance(chainage, x, y, axis):
    """The unit that ``chainage`` (n,) is in, by the distances between the places ``x``, ``y`` (n,), metres, of
    neighbours on one axis (``axis``: index (n,)): 'metre', 'foot'; '' where neither fits."""
    rows = np.flatnonzero(np.isfinite(chainage) & np.isfinite(x) & np.isfinite(y))
    rows = rows[np.lexsort((chainage[rows], axis[rows]))]
    step = np.diff(chainage[rows])
    same = (np.diff(axis[rows]) == 0) & (step > 0.0)
    if not np.any(same):
        return ""
    # Offsets make a distance longer than a step of chainage; the usual pair of neighbours has none.
    ratio = float(np.median(step[same] / np.maximum(np.hypot(np.diff(x[rows]), np.diff(y[rows]))[same], 1e-9)))
    return next((unit for unit, size in (("metre", 1.0), ("foot", FOOT_RATIO)) if abs(ratio / size - 1.0) < 0.03), "")


def curvature_shown(stations, design):
    """Coefficient of the design's curvature effect in the as-built heights and its standard deviation, without unit.

    ``stations``: DesignStations; ``design``: DesignHeights. The deviation is inf where the coefficient is not
    known.
    """
    axis, values = np.zeros(len(stations.chainage), int), (stations.chainage, stations.height)
    found = curvatures_shown(axis, 1, *values, design.design_h, design.flat_h)
    return tuple(float(one[0]) for one in found)


def curvatures_shown(axis, number, chainage, height, design_h, flat_h):
    """The same of ``number`` axes: two arrays (m,). ``axis``: index of each station, rising; the others metres; arrays
    (n,)."""
    known, bend, s = np.isfinite(height) & np.isfinite(design_h), design_h - flat_h, chainage
    if not known.all():
        axis, height, bend, s = axis[known], height[known], bend[known], s[known]
    counts, factors, deviations = np.bincount(axis, minlength=number), np.ones(number), np.full(number, np.inf)
    if not len(axis):
        return factors, deviations

    def sums(values):
        return values.sum(keepdims=True) if number == 1 else np.bincount(axis, values, number)

    def each(values):
        # One value serves all stations of a single axis: a million need no array of their own.
        return values if number == 1 else values[axis]

    def centred(values):
        return values - each(sums(values) / np.maximum(counts, 1))

    def off_line(values):
        values = centred(values)
        values -= s * each(sums(s * values) / spread)
        return values

    first = np.concatenate([[0], np.flatnonzero(axis[1:] != axis[:-1]) + 1])
    extent = np.zeros(number)
    extent[axis[first]] = np.maximum.reduceat(bend, first) - np.minimum.reduceat(bend, first)
    s = centred(s)
    spread = sums(s**2)
    spread = np.where(spread > 0.0, spread, np.inf)
    # One after the other: the first is given up before the second is begun.
    bend = off_line(bend)
    height = off_line(height)
    power = sums(bend**2)
    # A bend that a straight line explains shows no curvature: two places only, or a level design.
    shown = (counts >= 8) & (extent >= 0.02) & (power >= 1e-6 * counts)
    with np.errstate(invalid="ignore", divide="ignore"):
        factor = sums(bend * height) / power
        height -= each(factor) * bend
        variance = sums(height**2) / (counts - 3) / power
        factors[shown], deviations[shown] = factor[shown], np.sqrt(variance[shown])
    return factors, deviations


def _off_line(s, values):
    """What is left of ``values`` beside their best straight line over centred ``s``; sums only, so that a thousand axes
    do not wait for a linear-algebra library to start its threads."""
    values = values - values.mean()
    spread = float(np.sum(s**2))
    return values - s * (float(np.sum(s * values)) / spread) if spread > 0.0 else values
