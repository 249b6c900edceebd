"""The line of one axis as the third chart of its profile: seen from above, left of the line up, right of it down."""

import numpy as np

from ..core.profile_views import widened
from ..core.residuals import ASIDE
from ..language.height_text import sided
from ..language.ticks import side_ticks
from ..language.translation import tr
from ..styles import palette

# Most departures written at the edge that they lie beyond.
_MOST_BEYOND = 12


def draw_line(axes, found, profile, rows, thin):
    """Draw the lateral departures of an AxisProfile; ``rows``: of the report; ``thin``: function of values (n,) that
    gives the indices to draw."""
    one, amounts, look = found.reviewed, found.line.amounts, palette.LINE
    s, y = profile.chainage / one.units.chainage, profile.lateral / amounts.metres
    low, high = (value / amounts.metres for value in widened(*profile.lateral_range(), 0.1))
    if profile.line_tolerance:
        half = profile.line_tolerance / amounts.metres
        axes.axhspan(-half, half, color=palette.BAND.light, zorder=0)
        for side in (-half, half):
            axes.axhline(side, color=palette.WITHIN.light, linewidth=0.8, zorder=1)
    axes.axhline(0.0, color=look.light, linewidth=1.0, zorder=1)
    inside, k = np.clip(y, low, high), thin(y)
    axes.plot(s[k], inside[k], **look.in_chart(), zorder=2)
    beside = np.isin(one.line.side[rows].astype(str), ASIDE)
    shown = np.zeros(len(rows), bool)
    shown[k] = True
    for mask, fill, size in ((shown & ~beside, palette.PAPER, 3.2), (beside, look.light, 5.0)):
        axes.plot(
            s[mask],
            inside[mask],
            "s",
            color=fill,
            markeredgecolor=look.light,
            markersize=size,
            markeredgewidth=0.9,
            zorder=3,
            clip_on=False,
        )
    for at in np.flatnonzero((beside | shown) & ((y > high) | (y < low)))[:_MOST_BEYOND]:
        axes.annotate(
            sided(amounts.text(abs(profile.lateral[at])), profile.lateral[at]),
            (s[at], inside[at]),
            xytext=(8, 3 if y[at] > 0 else -3),
            textcoords="offset points",
        )
    for artist in (*axes.lines, *axes.texts):
        artist.set_in_layout(False)
    # As in a plan with the chainage to the right: what is right of the line lies below it.
    axes.set_ylim(high, low)
    axes.set_ylabel(tr("lateral ({})").format(amounts.label))
    axes.yaxis.set_major_formatter(side_ticks)


def line_caption(profile):
    """What is to be seen, and no more."""
    text = tr("At the bottom the line seen from above, dashed: left of it up, right of it down.")
    if profile.line_tolerance:
        text += " " + tr("Filled squares lie beyond its tolerance.")
    return text
