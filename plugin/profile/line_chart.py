"""The third chart: the line seen from above, in the look of the line alone; left of it up, right of it down."""

import numpy as np

from ...algorithms.core.profile_views import widened
from ...algorithms.core.residuals import ASIDE
from ...algorithms.language.decision_words import line_doubt
from ...algorithms.language.height_text import amounts_for
from ...algorithms.language.stored_words import capitalised
from ...algorithms.language.translation import tr
from ...algorithms.styles.palette import LINE


def line_title(shown):
    """What stands over the chart of an AxisView."""
    return tr("Line, seen from above ({})").format(amounts_for(shown.height_unit).label)


def inside_line(lateral, ranges):
    """Lateral departures (n,) as drawn: what lies beyond the chart stands at its edge."""
    return np.clip(lateral, *widened(*ranges.l, -0.03))


def draw_line(drawing, ranges):
    """Draw the lateral departures of a Drawing's axis."""
    chart, look, shown = drawing.line, drawing.look, drawing.shown
    color = LINE.on(look.is_dark)
    if shown.profile.line_tolerance:
        half = shown.profile.line_tolerance / amounts_for(shown.height_unit).metres
        chart.axhspan(-half, half, color=look.band, linewidth=0)
        for side in (-half, half):
            chart.axhline(side, **look.band_edge)
    chart.axhline(0.0, color=color, linewidth=1.0)
    inside = inside_line(drawing.lateral, ranges)
    rows = drawing.thin(inside, ranges)
    chart.plot(drawing.x[rows], inside[rows], **LINE.in_chart(look.is_dark))
    beside = np.isin(shown.side, ASIDE)
    for mask, fill, size in ((~beside, look.back, 3.6), (beside, color, 6.0)):
        drawing.markers(chart, np.where(mask, inside, np.nan), ranges, "s", fill, color, size, 1.0)
    doubted = np.where(shown.line_suspected, inside, np.nan)
    drawing.markers(chart, doubted, ranges, "x", look.text, look.text, 9.0, 1.8)


def line_marks(shown, look, mark):
    """Entries of the legend; ``mark``: makes one of shape, fill, edge and text."""
    color = LINE.on(look.is_dark)
    found = [mark("s", look.back, color, tr("Lateral departure"), 5.0)]
    if shown.profile.line_tolerance:
        limit = amounts_for(shown.height_unit).with_unit(shown.profile.line_tolerance)
        found.append(mark("s", color, color, tr("Beyond its tolerance ± {}").format(limit), 6.5))
    if shown.line_suspected.any():
        words = line_doubt()
        found.append(mark("x", look.text, look.text, capitalised(words), 6.0))
        found[-1].set_markeredgewidth(1.4)
    return found
