"""The chart on a matplotlib figure: profile, residuals and, if asked, the line; on the screen and in files."""

import textwrap
from dataclasses import replace
from typing import Optional

import numpy as np
from matplotlib.ticker import FuncFormatter, MaxNLocator

from ...algorithms.core import profile_views
from ...algorithms.core.profile_views import thinned, widened
from ...algorithms.core.station_notation import station_text
from ...algorithms.core.units import METRES
from ...algorithms.language.height_text import amounts_for
from ...algorithms.language.shown_stations import shown_station
from ...algorithms.language.ticks import plain_ticks, side_ticks
from ...algorithms.language.translation import tr
from ...algorithms.language.units import UNIT_LABELS
from ...algorithms.styles.palette import BUILT, DESIGN, FLAT, LEVEL
from ..review.station_texts import factor_text, view_sentence
from .axis_view import AxisView
from .legend import legend_handles
from .line_chart import draw_line, line_title

# Pieces that the chainages in view are thinned to, each with up to four points; more than a screen has columns.
PIECES = 1500
MOST_LABELS = 10
MOST_BARS = 1500
# Heights of text that both charts need together; where the legend leaves less, it is left out.
LEAST_ROOM = 14.0


class Drawing:
    """Draws one axis onto a figure; ``upper``, ``lower`` and ``line`` are its charts, ``upper`` hidden without design
    heights, ``line`` where it is not asked for."""

    def __init__(self, figure, look):
        self.figure, self.look = figure, look
        self.upper, self.lower, self.line = figure.subplots(3, 1, sharex=True)
        self.charts = (self.upper, self.lower, self.line)
        self.shown: Optional[AxisView] = None
        self._coloured = None
        self.x = self.built = self.residual = self.lateral = np.zeros(0)

    def draw(self, shown, ranges, look):
        """Draw anew."""
        self.shown, self.look = shown, look
        self.x, self.residual, self.lateral = shown.x, shown.residual, shown.lateral
        lines = shown.lines
        self.built = lines["as-built"]
        self._clear()
        self.upper.set_visible(shown.profile.has_design)
        self.line.set_visible(shown.with_line)
        self._frame(ranges)
        if shown.profile.has_design:
            self._draw_profile(lines, ranges)
        self._draw_residuals(ranges)
        if shown.with_line:
            draw_line(self, ranges)
        self._head()

    def place(self):
        """Fit head and margins to the figure's size."""
        if self.shown is not None:
            self._head()

    @property
    def factor(self):
        """Vertical exaggeration of the upper chart, None without it."""
        if self.shown is None or not self.upper.get_visible():
            return None
        (x1, x2), (y1, y2), box = self.upper.get_xlim(), self.upper.get_ylim(), self.upper.bbox
        return profile_views.exaggeration(
            box.width,
            (x2 - x1) * METRES[self.shown.chainage_unit],
            box.height,
            (y2 - y1) * METRES[self.shown.height_unit],
        )

    def at_factor(self, ranges, factor):
        """Ranges with the heights exaggerated ``factor`` times, about the middle of those shown."""
        box, metres = self.upper.bbox, METRES[self.shown.chainage_unit]
        span = profile_views.span_at(factor, box.width, (ranges.x[1] - ranges.x[0]) * metres, box.height)
        middle, half = 0.5 * sum(ranges.y), 0.5 * span / METRES[self.shown.height_unit]
        return replace(ranges, y=(middle - half, middle + half))

    # --- parts of the chart

    def _clear(self):
        """Take off what was drawn; the charts' frames stay, since making them anew takes the longest."""
        for chart in self.charts:
            # Error bars are lines and collections too; their container only lists them.
            chart.containers.clear()
            for artist in [*chart.lines, *chart.collections, *chart.patches, *chart.texts]:
                artist.remove()

    def _frame(self, ranges):
        """Ranges, titles and the colours of the frames."""
        look, shown = self.look, self.shown
        unit = UNIT_LABELS[shown.height_unit]
        titles = {"level": tr("Height above the level surface ({})"), "straight": tr("Height from the design ({})")}
        for chart, low_high, title in (
            (self.upper, ranges.y, titles[shown.view].format(unit)),
            (self.lower, ranges.r, tr("Residual ({})").format(amounts_for(shown.height_unit).label)),
            (self.line, ranges.l[::-1], line_title(shown)),
        ):
            chart.set_xlim(*ranges.x)
            chart.set_ylim(*low_high)
            # Level and above: turned titles run into each other where the dock is low.
            chart.set_title(title, loc="left", color=look.text, fontsize=look.size, y=1.0, pad=0.35 * look.size)
        self.lower.xaxis.set_major_formatter(
            FuncFormatter(lambda x, _: shown_station(station_text(x, shown.chainage_unit)))
        )
        for chart in (self.lower, self.line):
            last = chart is (self.line if shown.with_line else self.lower)
            title = tr("Station on {}").format(shown.name) if shown.name else tr("Station")
            chart.set_xlabel(title if last else "", color=look.text, fontsize=look.size)
            chart.tick_params(axis="x", labelbottom=last, length=3.5 if last else 0)
        if self._coloured != look:
            self._colour()

    def _colour(self):
        look, self._coloured = self.look, self.look
        self.figure.set_facecolor(look.back)
        for chart in self.charts:
            chart.set_facecolor(look.back)
            chart.grid(True, color=look.grid, linewidth=0.8)
            chart.set_axisbelow(True)
            chart.tick_params(colors=look.faint, labelcolor=look.text, labelsize=look.size)
            chart.yaxis.set_major_formatter(FuncFormatter(plain_ticks))
            for side, spine in chart.spines.items():
                spine.set_color(look.faint)
                spine.set_visible(side in ("left", "bottom"))
        self.upper.tick_params(axis="x", labelbottom=False, length=0)
        self.line.yaxis.set_major_formatter(FuncFormatter(side_ticks))

    def thin(self, y, ranges):
        """Indices of what is drawn of ``y``."""
        return thinned(self.x, y, *ranges.x, PIECES)

    def _line(self, chart, y, ranges, **how):
        rows = self.thin(y, ranges)
        chart.plot(self.x[rows], y[rows], **how)

    def _draw_profile(self, lines, ranges):
        look, shown, chart = self.look, self.shown, self.upper
        tolerance = shown.profile.tolerance
        if tolerance:
            rows, half = self.thin(lines["design"], ranges), tolerance / METRES[shown.height_unit]
            chart.fill_between(
                self.x[rows], lines["design"][rows] - half, lines["design"][rows] + half, color=look.band, linewidth=0
            )
            for side in (-half, half):
                self._line(chart, lines["design"] + side, ranges, **look.band_edge)
        self._line(chart, lines["level"], ranges, **LEVEL.in_chart(look.is_dark))
        if shown.profile.is_straight:
            self._line(chart, lines["flat"], ranges, **FLAT.in_chart(look.is_dark))
        self._line(chart, lines["design"], ranges, **DESIGN.in_chart(look.is_dark))
        self._line(chart, self.built, ranges, **BUILT.in_chart(look.is_dark))
        self._error_bars(chart, self.built, shown.profile.sd / METRES[shown.height_unit], ranges)
        missing = ~np.isfinite(shown.profile.residual) & np.isfinite(lines["design"])
        self.markers(chart, np.where(missing, lines["design"], np.nan), ranges, "o", look.back, look.text, 4.0)
        self._stations(chart, self.built, ranges)

    def _draw_residuals(self, ranges):
        look, shown, chart = self.look, self.shown, self.lower
        metres = amounts_for(shown.height_unit).metres
        if shown.profile.tolerance:
            half = shown.profile.tolerance / metres
            chart.axhspan(-half, half, color=look.band, linewidth=0)
            for side in (-half, half):
                chart.axhline(side, **look.band_edge)
        chart.axhline(0.0, **DESIGN.in_chart(look.is_dark))
        inside = np.clip(self.residual, *widened(*ranges.r, -0.03))
        rows = self.thin(inside, ranges)
        if len(rows) <= MOST_BARS:
            chart.vlines(self.x[rows], 0.0, inside[rows], color=look.faint, linewidth=0.7)
        self._error_bars(chart, self.residual, shown.profile.sd / metres, ranges)
        self._stations(chart, inside, ranges)
        self._labels(chart, inside, ranges)

    def _error_bars(self, chart, y, sd, ranges):
        rows = self.thin(y, ranges)
        rows = rows[np.isfinite(sd[rows])]
        if 0 < len(rows) <= MOST_BARS:
            chart.errorbar(
                self.x[rows], y[rows], yerr=sd[rows], fmt="none", ecolor=self.look.built, elinewidth=0.9, capsize=2
            )

    def markers(self, chart, y, ranges, shape, fill, edge, size, width=0.6):
        rows = self.thin(y, ranges)
        chart.plot(
            self.x[rows],
            y[rows],
            linestyle="none",
            marker=shape,
            markersize=size,
            markerfacecolor=fill,
            markeredgecolor=edge,
            markeredgewidth=width,
        )

    def _stations(self, chart, y, ranges):
        look, status = self.look, self.shown.status
        dense = 3.0 if len(self.x) > 2000 else 4.2
        other = ~np.isin(status, ("high", "low"))
        judged = "within" in status or self.shown.profile.tolerance
        self.markers(
            chart, np.where(other, y, np.nan), ranges, "o", look.within if judged else look.built, look.edge, dense, 0.4
        )
        self.markers(chart, np.where(status == "high", y, np.nan), ranges, "^", look.high, look.edge, dense + 3.0)
        self.markers(chart, np.where(status == "low", y, np.nan), ranges, "v", look.low, look.edge, dense + 3.0)
        self.markers(
            chart, np.where(self.shown.suspected, y, np.nan), ranges, "x", look.text, look.text, dense + 3.0, 1.4
        )

    def _labels(self, chart, y, ranges):
        """Names of the worst flagged stations, as many as stand clear of each other."""
        shown = self.shown
        flagged = np.flatnonzero(
            (np.isin(shown.status, ("high", "low")) | shown.suspected)
            & np.isfinite(self.residual)
            & (self.x >= ranges.x[0])
            & (self.x <= ranges.x[1])
        )
        taken = []
        apart = 9.0 * self.em / max(chart.bbox.width, 1.0) * (ranges.x[1] - ranges.x[0])
        for row in flagged[np.argsort(-np.abs(self.residual[flagged]), kind="stable")]:
            if len(taken) >= MOST_LABELS:
                break
            if any(abs(self.x[row] - other) < apart for other in taken):
                continue
            taken.append(self.x[row])
            text = (
                shown.station[row] + "  " + amounts_for(shown.height_unit).with_unit(shown.profile.residual[row], True)
            )
            if y[row] != self.residual[row]:
                text += " \u2191" if self.residual[row] > 0 else " \u2193"  # the value lies beyond the chart
            self._label(chart, row, y[row], text, ranges, apart)

    def _label(self, chart, row, y, text, ranges, apart):
        """Write a station's name beyond its point, or beside it where the chart ends there."""
        up = 1 if y >= 0 else -1
        (low, high), look = ranges.r, self.look
        room = (high - y if up > 0 else y - low) / (high - low) * chart.bbox.height
        inside = ranges.x[0] + 0.5 * apart < self.x[row] < ranges.x[1] - 0.5 * apart
        if room > 1.8 * self.em and inside:
            how = {"xytext": (0, 6 * up), "ha": "center", "va": "bottom" if up > 0 else "top"}
        else:
            right = self.x[row] < ranges.x[1] - 1.1 * apart
            how = {"xytext": (11 if right else -11, 0), "ha": "left" if right else "right", "va": "center"}
        chart.annotate(
            text,
            (self.x[row], y),
            textcoords="offset points",
            fontsize=look.size * 0.92,
            color=look.text,
            bbox={"facecolor": look.back, "edgecolor": "none", "pad": 0.6, "alpha": 0.75},
            **how,
        )

    # --- head and margins

    @property
    def em(self):
        """Height of the text, pixels."""
        return self.look.size * self.figure.dpi / 72.0

    def _head(self):
        """Sentence, legend and margins for the figure's present size."""
        for old in [*self.figure.texts, *self.figure.legends]:
            old.remove()
        width, height = self.figure.bbox.width, self.figure.bbox.height
        look, em = self.look, self.em
        rows = self._legend_rows(width - 1.5 * em)
        # With a number of the usual length: how the text breaks must not depend on how much room it leaves.
        lines = self._sentence("1,000", width)
        if height - em * (1.45 * len(lines) + 1.6 * len(rows) + 5.8) < LEAST_ROOM * em:
            rows = []
        head = em * (1.45 * len(lines) + 1.6 * len(rows) + 0.8)
        bottom, top = 3.5 * em / height, max(1.0 - (head + 1.5 * em) / height, 4.5 * em / height)
        # The line's numbers have their side beside them.
        left = 6.2 if self.shown.with_line else 5.0
        self._split(left * em / width, 1.0 - 2.4 * em / width, bottom, top, 2.1 * em / height)
        factor = self.factor
        lines = self._sentence(factor_text(factor) if factor is not None else "", width)
        self.figure.text(
            0.9 * em / width,
            1.0 - 0.5 * em / height,
            "\n".join(lines),
            va="top",
            ha="left",
            color=look.text,
            fontsize=look.size,
            linespacing=1.3,
        )
        for number, handles in enumerate(rows):
            at = 1.0 - em * (1.45 * len(lines) + 0.5 + 1.6 * number) / height
            self.figure.legend(
                handles=handles,
                loc="upper left",
                bbox_to_anchor=(0.4 * em / width, at),
                ncol=len(handles),
                frameon=False,
                fontsize=look.size,
                labelcolor=look.text,
                handlelength=2.2,
                columnspacing=1.3,
                handletextpad=0.5,
                borderpad=0.3,
                borderaxespad=0.0,
            )

    def _sentence(self, factor, width):
        """The sentence on the view and the exaggeration, in lines that fit the width."""
        shown = self.shown
        text = view_sentence(shown.profile, shown.view, shown.station_at, shown.height_unit)
        if factor and shown.profile.has_design:
            text += " " + tr("Heights are exaggerated {} times.").format(factor)
        return textwrap.wrap(text, max(int((width - 2 * self.em) / (0.56 * self.em)), 20))

    def _legend_rows(self, width):
        """The legend's entries in rows, each as full as ``width`` (pixels) allows."""
        rows, used = [], width
        for handle in legend_handles(self.shown, self.look):
            needed = 0.54 * self.em * len(handle.get_label()) + 4.0 * self.em
            if used + needed > width:
                rows.append([])
                used = 0.0
            rows[-1].append(handle)
            used += needed
        return rows

    def _split(self, left, right, bottom, top, gap):
        """Place the charts that are shown; the residuals alone take all, and the line as much as they do."""
        below = [self.line, self.lower] if self.shown.with_line else [self.lower]
        with_upper, room = self.upper.get_visible(), max(top - bottom, 0.1)
        share = (0.40 if len(below) == 1 else 0.29) if with_upper else 1.0 / len(below)
        each = share * (room - gap * (len(below) - 1 + with_upper))
        for number, chart in enumerate(below):
            chart.set_position([left, bottom + number * (each + gap), right - left, each])
        under = len(below) * (each + gap)
        self.upper.set_position([left, bottom + under, right - left, max(room - under, 0.01)])
        for chart in self.charts:
            # A low chart has room for one label or two, and the library would write two at least.
            ticks = int(np.clip(chart.bbox.height / (2.6 * self.em), 1, 6))
            chart.yaxis.set_major_locator(MaxNLocator(ticks, steps=[1, 2, 5, 10], min_n_ticks=1))
        self.lower.xaxis.set_major_locator(
            MaxNLocator(int(np.clip(self.lower.bbox.width / (7 * self.em), 2, 8)), steps=[1, 2, 5, 10])
        )
