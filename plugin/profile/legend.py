"""The legend of the chart."""

import numpy as np
from matplotlib.lines import Line2D
from matplotlib.patches import Patch

from ...algorithms.language.height_text import amounts_for
from ...algorithms.language.translation import tr
from ...algorithms.styles.palette import BUILT, DESIGN, FLAT, LEVEL
from .line_chart import line_marks


def legend_handles(shown, look):
    """What the legend lists for an AxisView: only what can be seen in the chart."""
    judged = bool(shown.profile.tolerance) or bool(np.isin(shown.status, ("high", "low", "within")).any())

    def mark(shape, fill, edge, text, size=7.0):
        return Line2D(
            [],
            [],
            linestyle="none",
            marker=shape,
            markersize=size,
            markerfacecolor=fill,
            markeredgecolor=edge,
            markeredgewidth=0.6,
            label=text,
        )

    found = []
    if shown.profile.has_design:
        sd = bool(np.isfinite(shown.profile.sd).any())
        found += [
            Line2D(
                [],
                [],
                **BUILT.in_chart(look.is_dark),
                marker="o",
                markersize=4,
                markerfacecolor=look.within if judged else look.built,
                markeredgecolor=look.edge,
                markeredgewidth=0.4,
                label=tr("As-built ± 1 standard deviation") if sd else tr("As-built"),
            ),
            Line2D([], [], **DESIGN.in_chart(look.is_dark), label=tr("Design")),
        ]
        if shown.profile.is_straight:
            found.append(Line2D([], [], **FLAT.in_chart(look.is_dark), label=tr("Design with no curvature")))
        found.append(Line2D([], [], **LEVEL.in_chart(look.is_dark), label=tr("Level surface")))
    if shown.profile.tolerance:
        found.append(
            Patch(
                facecolor=look.band,
                edgecolor=look.within,
                linewidth=0.8,
                label=tr("Tolerance ± {}").format(amounts_for(shown.height_unit).with_unit(shown.profile.tolerance)),
            )
        )
    if judged:
        found += [mark("^", look.high, look.edge, tr("Too high")), mark("v", look.low, look.edge, tr("Too low"))]
    if shown.suspected.any():
        found.append(
            Line2D(
                [],
                [],
                linestyle="none",
                marker="x",
                markersize=6,
                markeredgecolor=look.text,
                markeredgewidth=1.4,
                label=tr("Suspected by the test"),
            )
        )
    if np.any(~np.isfinite(shown.profile.residual)) and shown.profile.has_design:
        found.append(mark("o", look.back, look.text, tr("No as-built height"), 5.0))
    return found + (line_marks(shown, look, mark) if shown.with_line else [])
