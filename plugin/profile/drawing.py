"""The chart itself on a matplotlib figure: profile above, residuals below, one chainage; on the screen and in files."""

import textwrap
from dataclasses import dataclass, replace
from typing import Optional

import numpy as np
from matplotlib.lines import Line2D
from matplotlib.patches import Patch
from matplotlib.ticker import FuncFormatter, MaxNLocator, ScalarFormatter

from ...algorithms.core import profile_views
from ...algorithms.core.profile_views import thinned, widened
from ...algorithms.core.station_notation import station_text
from ...algorithms.core.units import METRES
from ...algorithms.fields import UNIT_LABELS
from ...algorithms.texts import number_text, tr
from .texts import small, small_unit, view_sentence

# Pieces that the chainages in view are thinned to, each with up to four points; more than a screen has columns.
PIECES = 1500
MOST_LABELS = 10
MOST_BARS = 1500


@dataclass(frozen=True)
class Ranges:
    """What the chart shows, (lowest, highest) in display units: chainages, heights, residuals."""

    x: tuple
    y: tuple
    r: tuple


@dataclass(frozen=True)
class Shown:
    """One axis as displayed: heights in their unit, residuals in mm or feet. Arrays (n,)."""

    name: str
    profile: object
    status: np.ndarray
    suspected: np.ndarray
    station: np.ndarray
    height_unit: str
    chainage_unit: str
    view: str

    @property
    def x(self):
        return self.profile.chainage / METRES[self.chainage_unit]

    @property
    def lines(self):
        return {name: value / METRES[self.height_unit] for name, value in self.profile.lines(self.view).items()}

    @property
    def residual(self):
        return self.profile.residual / small_unit(self.height_unit)[0]

    def whole(self):
        """Ranges that show all of it."""
        x = self.x
        low, high = (x.min(), x.max()) if len(x) else (0.0, 1.0)
        low, high = (low, high) if high > low else (low - 1.0, high + 1.0)
        y = np.array(self.profile.shown_range(self.view)) / METRES[self.height_unit]
        r = np.array(self.profile.residual_range()) / small_unit(self.height_unit)[0]
        return Ranges(widened(low, high, 0.02), widened(*y.tolist(), 0.08), widened(*r.tolist(), 0.12))

    def station_at(self, chainage):
        return station_text(chainage / METRES[self.chainage_unit], self.chainage_unit)


class Drawing:
    """Draws one axis onto a figure; ``upper`` and ``lower`` are the two charts, ``upper`` hidden without design heights."""

    def __init__(self, figure, look):
        self.figure, self.look = figure, look
        self.upper, self.lower = figure.subplots(2, 1, sharex=True)
        self.shown: Optional[Shown] = None
        self.x = self.built = self.residual = np.zeros(0)

    def draw(self, shown, ranges, look):
        """Draw anew."""
        self.shown, self.look = shown, look
        self.x, self.residual = shown.x, shown.residual
        lines = shown.lines
        self.built = lines["as-built"]
        self._clear()
        self.upper.set_visible(shown.profile.has_design)
        self._frame(ranges)
        if shown.profile.has_design:
            self._draw_profile(lines, ranges)
        self._draw_residuals(ranges)
        self._head()

    def place(self):
        """Fit the margins to the figure's size; True where the head had to be written anew."""
        if self.shown is not None:
            self._head()

    @property
    def factor(self):
        """Vertical exaggeration of the upper chart, None without it."""
        if self.shown is None or not self.upper.get_visible():
            return None
        (x1, x2), (y1, y2), box = self.upper.get_xlim(), self.upper.get_ylim(), self.upper.bbox
        return profile_views.exaggeration(box.width, (x2 - x1) * METRES[self.shown.chainage_unit], box.height,
                                          (y2 - y1) * METRES[self.shown.height_unit])

    def at_factor(self, ranges, factor):
        """Ranges with the heights exaggerated ``factor`` times, about the middle of those shown."""
        box, metres = self.upper.bbox, METRES[self.shown.chainage_unit]
        span = profile_views.span_at(factor, box.width, (ranges.x[1] - ranges.x[0]) * metres, box.height)
        middle, half = 0.5 * sum(ranges.y), 0.5 * span / METRES[self.shown.height_unit]
        return replace(ranges, y=(middle - half, middle + half))

    # --- pieces

    def _clear(self):
        for chart in (self.upper, self.lower):
            chart.cla()
        for old in [*self.figure.texts, *self.figure.legends]:
            old.remove()

    def _frame(self, ranges):
        look, shown = self.look, self.shown
        self.figure.set_facecolor(look.back)
        unit = UNIT_LABELS[shown.height_unit]
        titles = {"level": tr("Above level ({})"), "straight": tr("From design ({})")}
        for chart, low_high, title in ((self.upper, ranges.y, titles[shown.view].format(unit)),
                                       (self.lower, ranges.r, tr("Residual ({})").format(small_unit(shown.height_unit)[1]))):
            chart.set_facecolor(look.back)
            chart.set_xlim(*ranges.x)
            chart.set_ylim(*low_high)
            chart.grid(True, color=look.grid, linewidth=0.8)
            chart.set_axisbelow(True)
            chart.set_ylabel(title, color=look.text, fontsize=look.size)
            chart.tick_params(colors=look.faint, labelcolor=look.text, labelsize=look.size)
            chart.yaxis.set_major_locator(MaxNLocator(4, steps=[1, 2, 5, 10]))
            chart.yaxis.set_major_formatter(ScalarFormatter(useOffset=False))
            for side, spine in chart.spines.items():
                spine.set_color(look.faint)
                spine.set_visible(side in ("left", "bottom"))
        self.upper.tick_params(axis="x", labelbottom=not self.lower.get_visible(), length=0)
        self.lower.xaxis.set_major_locator(MaxNLocator(8, steps=[1, 2, 5, 10]))
        self.lower.xaxis.set_major_formatter(FuncFormatter(lambda x, _: station_text(x, shown.chainage_unit).replace("-", "\u2212")))
        self.lower.set_xlabel(tr("Station on {}").format(shown.name) if shown.name else tr("Station"), color=look.text,
                              fontsize=look.size)
        self.figure.align_ylabels([self.upper, self.lower])

    def _thin(self, y, ranges):
        return thinned(self.x, y, *ranges.x, PIECES)

    def _line(self, chart, y, ranges, **how):
        rows = self._thin(y, ranges)
        chart.plot(self.x[rows], y[rows], **how)

    def _draw_profile(self, lines, ranges):
        look, shown, chart = self.look, self.shown, self.upper
        tolerance = shown.profile.tolerance
        if tolerance:
            rows, half = self._thin(lines["design"], ranges), tolerance / METRES[shown.height_unit]
            chart.fill_between(self.x[rows], lines["design"][rows] - half, lines["design"][rows] + half, color=look.band, linewidth=0)
        self._line(chart, lines["level"], ranges, color=look.level, linewidth=1.4, linestyle=(0, (8, 2, 2, 2)))
        if shown.profile.is_straight:
            self._line(chart, lines["flat"], ranges, color=look.flat, linewidth=1.4, linestyle=(0, (5, 3)))
        self._line(chart, lines["design"], ranges, color=look.design, linewidth=1.6)
        self._line(chart, self.built, ranges, color=look.built, linewidth=0.8)
        self._error_bars(chart, self.built, shown.profile.sd / METRES[shown.height_unit], ranges)
        missing = ~np.isfinite(shown.profile.residual) & np.isfinite(lines["design"])
        self._markers(chart, np.where(missing, lines["design"], np.nan), ranges, "o", look.back, look.text, 4.0)
        self._stations(chart, self.built, ranges)

    def _draw_residuals(self, ranges):
        look, shown, chart = self.look, self.shown, self.lower
        metres = small_unit(shown.height_unit)[0]
        if shown.profile.tolerance:
            half = shown.profile.tolerance / metres
            chart.axhspan(-half, half, color=look.band, linewidth=0)
        chart.axhline(0.0, color=look.design, linewidth=1.6)
        inside = np.clip(self.residual, *widened(*ranges.r, -0.03))
        rows = self._thin(inside, ranges)
        if len(rows) <= MOST_BARS:
            chart.vlines(self.x[rows], 0.0, inside[rows], color=look.faint, linewidth=0.7)
        self._error_bars(chart, self.residual, shown.profile.sd / metres, ranges)
        self._stations(chart, inside, ranges)
        self._labels(chart, inside, ranges)

    def _error_bars(self, chart, y, sd, ranges):
        rows = self._thin(y, ranges)
        rows = rows[np.isfinite(sd[rows])]
        if 0 < len(rows) <= MOST_BARS:
            chart.errorbar(self.x[rows], y[rows], yerr=sd[rows], fmt="none", ecolor=self.look.built, elinewidth=0.9, capsize=2)

    def _markers(self, chart, y, ranges, shape, fill, edge, size, width=0.6):
        rows = self._thin(y, ranges)
        chart.plot(self.x[rows], y[rows], linestyle="none", marker=shape, markersize=size, markerfacecolor=fill,
                   markeredgecolor=edge, markeredgewidth=width)

    def _stations(self, chart, y, ranges):
        look, status = self.look, self.shown.status
        dense = 3.0 if len(self.x) > 2000 else 4.2
        other = ~np.isin(status, ("high", "low"))
        judged = "within" in status or self.shown.profile.tolerance
        self._markers(chart, np.where(other, y, np.nan), ranges, "o", look.within if judged else look.built, look.edge, dense, 0.4)
        self._markers(chart, np.where(status == "high", y, np.nan), ranges, "^", look.high, look.edge, dense + 3.0)
        self._markers(chart, np.where(status == "low", y, np.nan), ranges, "v", look.low, look.edge, dense + 3.0)
        self._markers(chart, np.where(self.shown.suspected, y, np.nan), ranges, "x", look.text, look.text, dense + 3.0, 1.4)

    def _labels(self, chart, y, ranges):
        """Names of the worst flagged stations, as many as stand clear of each other."""
        shown, look = self.shown, self.look
        flagged = np.flatnonzero((np.isin(shown.status, ("high", "low")) | shown.suspected) & np.isfinite(self.residual)
                                 & (self.x >= ranges.x[0]) & (self.x <= ranges.x[1]))
        taken = []
        apart = 9.0 * self.em / max(chart.bbox.width, 1.0) * (ranges.x[1] - ranges.x[0])
        for row in flagged[np.argsort(-np.abs(self.residual[flagged]), kind="stable")]:
            if len(taken) >= MOST_LABELS:
                break
            if any(abs(self.x[row] - other) < apart for other in taken):
                continue
            taken.append(self.x[row])
            text = shown.station[row] + "  " + small(shown.profile.residual[row], shown.height_unit)
            # Away from the zero line there is room only while the point is not at the chart's edge: beside it, then.
            right = self.x[row] < ranges.x[1] - 1.1 * apart
            chart.annotate(text, (self.x[row], y[row]), xytext=(7 if right else -7, 0), textcoords="offset points", va="center",
                           ha="left" if right else "right", fontsize=look.size * 0.92, color=look.text,
                           bbox={"facecolor": look.back, "edgecolor": "none", "pad": 1.0, "alpha": 0.8})

    # --- head and margins

    @property
    def em(self):
        """Height of the text, pixels."""
        return self.look.size * self.figure.dpi / 72.0

    def _legend(self):
        look, shown = self.look, self.shown
        judged = bool(shown.profile.tolerance) or bool(np.isin(shown.status, ("high", "low", "within")).any())

        def mark(shape, fill, edge, text, size=7.0):
            return Line2D([], [], linestyle="none", marker=shape, markersize=size, markerfacecolor=fill, markeredgecolor=edge,
                          markeredgewidth=0.6, label=text)

        found = []
        if shown.profile.has_design:
            sd = bool(np.isfinite(shown.profile.sd).any())
            found += [Line2D([], [], color=look.built, linewidth=0.9, marker="o", markersize=4,
                             markerfacecolor=look.within if judged else look.built, markeredgecolor=look.edge, markeredgewidth=0.4,
                             label=tr("As-built ± 1 sd") if sd else tr("As-built")),
                      Line2D([], [], color=look.design, linewidth=1.6, label=tr("Design"))]
            if shown.profile.is_straight:
                found.append(Line2D([], [], color=look.flat, linewidth=1.4, linestyle=(0, (5, 3)), label=tr("As if the Earth were flat")))
            found.append(Line2D([], [], color=look.level, linewidth=1.4, linestyle=(0, (8, 2, 2, 2)), label=tr("Level surface")))
        if shown.profile.tolerance:
            found.append(Patch(facecolor=look.band, edgecolor=look.faint, linewidth=0.5,
                               label=tr("Tolerance ± {}").format(small(shown.profile.tolerance, shown.height_unit, False))))
        if judged:
            found += [mark("^", look.high, look.edge, tr("Too high")), mark("v", look.low, look.edge, tr("Too low"))]
        if shown.suspected.any():
            found.append(Line2D([], [], linestyle="none", marker="x", markersize=6, markeredgecolor=look.text, markeredgewidth=1.4,
                                label=tr("Suspected blunder")))
        if np.any(~np.isfinite(shown.profile.residual)) and shown.profile.has_design:
            found.append(mark("o", look.back, look.text, tr("Not measured"), 5.0))
        return found

    def _head(self):
        """Sentence, legend and margins for the figure's present size."""
        for old in [*self.figure.texts, *self.figure.legends]:
            old.remove()
        width, height = self.figure.bbox.width, self.figure.bbox.height
        look, em = self.look, self.em
        sentence = textwrap.wrap(view_sentence(self.shown.profile, self.shown.view, self.shown.station_at,
                                               self.shown.height_unit),
                                 max(int((width - 2 * em) / (0.56 * em)), 20))
        handles = self._legend()
        columns = self._columns([handle.get_label() for handle in handles], width - 2 * em)
        rows = -(-len(handles) // columns)
        top = em * (1.45 * len(sentence) + 1.7 * rows + 0.9)
        left, right = 5.6 * em / width, 1.0 - 1.2 * em / width
        bottom, ceiling = 3.6 * em / height, 1.0 - top / height
        ceiling = max(ceiling, bottom + 0.2)
        self.figure.text(0.9 * em / width, 1.0 - 0.5 * em / height, "\n".join(sentence), va="top", ha="left", color=look.text,
                         fontsize=look.size, linespacing=1.3)
        if handles:
            self.figure.legend(handles=handles, loc="upper left", bbox_to_anchor=(0.4 * em / width, 1.0 - em * (1.45 * len(sentence) + 0.4) / height),
                               ncol=columns, frameon=False, fontsize=look.size, labelcolor=look.text, handlelength=2.4,
                               columnspacing=1.4, handletextpad=0.5, borderpad=0.3, borderaxespad=0.0)
        self._split(left, right, bottom, ceiling, 0.9 * em / height)
        self._tell_factor()

    def _columns(self, labels, width):
        """Columns of the legend that fit into ``width`` pixels."""
        most = max((len(label) for label in labels), default=1)
        whole = sum(0.56 * self.em * len(label) + 4.4 * self.em for label in labels)
        if whole <= width:
            return max(len(labels), 1)
        return max(min(int(width / (0.56 * self.em * most + 4.4 * self.em)), len(labels)), 1)

    def _split(self, left, right, bottom, top, gap):
        """Place both charts, or the lower one alone."""
        room = max(top - bottom, 0.1)
        if not self.upper.get_visible():
            self.lower.set_position([left, bottom, right - left, room])
            return
        lower = 0.40 * (room - gap)
        self.lower.set_position([left, bottom, right - left, lower])
        self.upper.set_position([left, bottom + lower + gap, right - left, room - lower - gap])

    def _tell_factor(self):
        """Write the vertical exaggeration into the upper chart."""
        factor = self.factor
        if factor is None:
            return
        box, em = self.upper.get_position(), self.em
        text = tr("Heights exaggerated {} times").format(factor_text(factor))
        self.figure.text(box.x1 - 0.3 * em / self.figure.bbox.width, box.y1 - 0.2 * em / self.figure.bbox.height, text, va="top",
                         ha="right", color=self.look.faint, fontsize=self.look.size,
                         bbox={"facecolor": self.look.back, "edgecolor": "none", "pad": 1.5, "alpha": 0.8})


def factor_text(factor):
    """An exaggeration to three digits: 1.25, 12.5, 640, 12,300."""
    digits = max(2 - int(np.floor(np.log10(factor))), 0)
    rounded = round(factor, 2 - int(np.floor(np.log10(factor))))
    return number_text(rounded, digits) if rounded < 10000 else f"{rounded:,.0f}"
