"""The line that is tried, as the chart paints it over the heights: one colour for what is tried, dashes for which."""

from matplotlib.lines import Line2D

from ...algorithms.core.profile_views import thinned
from ...algorithms.language.translation import tr
from ...algorithms.styles.palette import FLAT, LEVEL, TRIED

_PIECES = 600


class TriedLine:
    """Artists of an Overlay on one chart of matplotlib; ``look``: Colours."""

    def __init__(self, chart, look):
        self.chart = chart
        if chart.get_legend() is not None:
            chart.get_legend().remove()
        plain = TRIED.in_chart(look.is_dark)
        self._looks = {
            name: {**plain, "linestyle": style}
            for name, style in (
                ("level", LEVEL.in_chart()["linestyle"]),
                ("flat", FLAT.in_chart()["linestyle"]),
                ("straight", "solid"),
            )
        }
        self._lines = {
            name: chart.plot([], [], animated=True, scalex=False, scaley=False, **how)[0]
            for name, how in self._looks.items()
        }
        (self._ends,) = chart.plot(
            [],
            [],
            linestyle="none",
            marker="s",
            markersize=8,
            markerfacecolor=look.back,
            markeredgecolor=plain["color"],
            markeredgewidth=2.0,
            animated=True,
            scalex=False,
            scaley=False,
        )
        self._legend = self._made_legend(look)

    def _made_legend(self, look):
        words = {"straight": tr("What if: straight"), "flat": tr("no curvature"), "level": tr("level through A")}
        legend = self.chart.legend(
            handles=[Line2D([], [], **self._looks[name], label=text) for name, text in words.items()],
            fontsize=look.size,
            labelcolor=look.text,
            facecolor=look.back,
            edgecolor=look.back,
            framealpha=0.9,
            ncol=3,
            handlelength=3.2,
            columnspacing=1.2,
            borderpad=0.1,
            borderaxespad=0.0,
            # Above the heights, beside the chart's title.
            loc="lower right",
            bbox_to_anchor=(1.0, 1.0),
        )
        return legend

    def show_legend(self, visible):
        """Whether the legend is there when the chart is next drawn."""
        self._legend.set_visible(visible)

    def paint(self, over, x_range):
        """Paint an Overlay onto what the canvas holds; ``x_range``: chainages in view."""
        for name, line in self._lines.items():
            y = over.lines.get(name, over.x[:0])
            rows = thinned(over.x[: len(y)], y, *x_range, _PIECES)
            line.set_data(over.x[rows], y[rows])
            self.chart.draw_artist(line)
        self._ends.set_data(*over.ends)
        self.chart.draw_artist(self._ends)
