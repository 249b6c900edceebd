"""Whether heights look as if they were read in another unit: worth a warning, never a silent correction."""

import numpy as np

FOOT_RATIO = 1.0 / 0.3048


def unit_doubt(stations, design, spec):
    """A sentence where the heights look as if they were in feet and read as metres, or the other way, else ''.

    ``stations``: DesignStations; ``design``: DesignHeights; ``spec``: DesignSpec. Two signs: typed control heights
    against the stations' own, and for a straight design on the ellipsoid the curvature that the heights show.
    """
    heights = stations.height[np.isfinite(stations.height)]
    typed = [h for h in (spec.height_a, spec.height_b if spec.uses_b else None) if h is not None]
    if len(heights) and typed and min(abs(h) for h in typed) > 1.0:
        ratio = np.median(heights) / np.median(typed)
        for factor, guess in ((FOOT_RATIO, "in feet"), (1.0 / FOOT_RATIO, "in metres")):
            if abs(ratio / factor - 1.0) < 0.02:
                return _sentence(stations, f"are about {factor:.2f} times the controls' heights", guess)
    factor, deviation = curvature_shown(stations, design)
    if deviation < 0.1 and design.flat_h is not None and spec.earth == "ellipsoid":
        for wrong, guess in ((FOOT_RATIO, "in feet"), (1.0 / FOOT_RATIO, "in metres")):
            if abs(factor - wrong) < max(4.0 * deviation, 0.03) and abs(factor - 1.0) > 6.0 * deviation:
                return _sentence(stations, f"bend {factor:.2f} times as much as a straight structure does", guess)
    return ""


def curvature_shown(stations, design):
    """Coefficient of the design's curvature effect in the as-built heights and its standard deviation, without unit.

    ``stations``: DesignStations; ``design``: DesignHeights. The deviation is inf where the coefficient is not
    known.
    """
    known = np.isfinite(stations.height) & np.isfinite(design.design_h)
    bend = (design.design_h - design.flat_h)[known]
    if known.sum() < 8 or np.ptp(bend) < 0.02:
        return 1.0, np.inf
    s = stations.chainage[known] - stations.chainage[known].mean()
    bend, heights = _off_line(s, bend), _off_line(s, stations.height[known])
    power = float(np.sum(bend**2))
    # A bend that a straight line explains shows no curvature: two places only, or a level design.
    if power < 1e-6 * len(s):
        return 1.0, np.inf
    factor = float(np.sum(bend * heights)) / power
    variance = float(np.sum((heights - factor * bend) ** 2)) / (len(s) - 3) / power
    return factor, float(np.sqrt(variance))


def _off_line(s, values):
    """What is left of ``values`` beside their best straight line over centred ``s``; sums only, so that a thousand axes
    do not wait for a linear-algebra library to start its threads."""
    values = values - values.mean()
    spread = float(np.sum(s**2))
    return values - s * (float(np.sum(s * values)) / spread) if spread > 0.0 else values


def _sentence(stations, what, guess):
    return f"Axis '{stations.name}': the heights {what}; they may be {guess}, read in another unit. Check HEIGHT_UNIT."
