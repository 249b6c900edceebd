"""Chart of compared surveys: chainage against change, and against bending, one line for each survey with 95 %
intervals."""

import io
from dataclasses import dataclass

import numpy as np

from ..core.errors import InputError
from ..core.quantiles import NORMAL_95
from ..documents.svg import svg_file
from ..language.number_text import counted
from ..language.stored_words import capitalised
from ..language.ticks import plain_ticks
from ..language.translation import tr
from ..styles import palette

MOST_AXES = 6
MOST_BARS = 80
_MARKS = ("o", "s", "^", "D", "v", "P", "X")


@dataclass(frozen=True)
class Chart:
    """A figure, and what it shows in words for those who do not see it."""

    figure: object
    words: str

    def svg(self):
        """As SVG text for a page."""
        return self._saved("svg", Date=None).decode("utf-8")

    def file(self, ending):
        """As a file of its own, bytes; ``ending``: '.svg' or '.png'."""
        if ending == ".svg":
            return svg_file(self.svg(), self.words)
        return self._saved("png", Software=None, Description=self.words)

    def _saved(self, kind, **metadata):
        file = io.BytesIO()
        self.figure.savefig(file, format=kind, dpi=150, metadata=metadata)
        return file.getvalue()


def _plain(text):
    """Text that the drawing library takes as it is: no formula, no hidden legend entry."""
    text = text.replace("\\", "\\\\").replace("$", r"\$")
    return " " + text if text.startswith("_") else text


def charts_of_page(report):
    """Charts of the first axes, one for each and, where it has any, one for its line."""
    return [
        drawn(report, [axis], [one], alone=False)
        for axis in report.compared.axes[:MOST_AXES]
        for one in report.reports
        if _kinds(one, axis)
    ]


def drawn(report, axes, reports=None, *, alone=True):
    """The Chart of a comparison, of some of its axes; ``reports``: of heights and line, all where not given; ``alone``:
    whether axes that it leaves out are shown nowhere else. InputError where matplotlib is missing."""
    try:
        from matplotlib.backends.backend_agg import FigureCanvasAgg
        from matplotlib.figure import Figure
    except ImportError:
        raise InputError(
            tr("The chart needs matplotlib in QGIS's own Python; install it (python3-matplotlib on Debian and Ubuntu).")
        ) from None
    compared = report.compared
    reports = reports or report.reports
    rows = [(axis, one, kind) for axis in axes for one in reports for kind in _kinds(one, axis)]
    legend_height = 0.28 * (1 + (len(compared.surveys) - 2) // 3)
    figure = Figure(figsize=(9.6, legend_height + 2.45 * len(rows)), layout="constrained")
    FigureCanvasAgg(figure)
    # The legend has a row of its own: over or inside the panels it would hide readings.
    legend, *panels = figure.subplots(
        len(rows) + 1, 1, gridspec_kw={"height_ratios": [legend_height, *[2.45] * len(rows)]}
    )
    for panel, (axis, one, kind) in zip(panels, rows):
        _draw(panel, one, axis, kind)
    handles, labels = panels[0].get_legend_handles_labels()
    legend.legend(handles, labels, loc="center left", ncol=3, frameon=False, fontsize=9, borderaxespad=0.0)
    legend.set_axis_off()
    return Chart(figure, _words(report, axes, reports, alone))


def _kinds(report, axis):
    """What is drawn of one axis: of the line nothing where no station of it has any."""
    c, own = report.compared, report.compared.first.axis == axis
    if report.what.sideways and not np.any(np.isfinite(c.change[own])):
        return ()
    return ("change", "bending") if np.any(np.isfinite(c.bending)) else ("change",)


def _draw(panel, report, axis, kind):
    compared, amounts = report.compared, report.amounts
    scale = 1.0 / amounts.metres
    values, deviations = (
        (compared.change, compared.sd_change) if kind == "change" else (compared.bending, compared.sd_bending)
    )
    rows = np.flatnonzero((compared.first.axis == axis) & np.isfinite(compared.first.chainage))
    rows = rows[np.argsort(compared.first.chainage[rows], kind="stable")]
    x = compared.first.chainage[rows] / report.units.chainage
    panel.axhline(0.0, color=palette.INK, linewidth=0.9, zorder=1)
    for number in range(1, len(compared.surveys)):
        look, mark = palette.SURVEYS[(number - 1) % len(palette.SURVEYS)], _MARKS[(number - 1) % len(_MARKS)]
        y, half = values[rows, number] * scale, NORMAL_95 * deviations[rows, number] * scale
        size = 4.0 if len(rows) <= 200 else 0.0
        label = _plain(tr("{} against {}").format(compared.surveys[number].label, compared.first.label))
        if len(rows) <= MOST_BARS and np.any(np.isfinite(half)):
            panel.errorbar(
                x,
                y,
                np.nan_to_num(half),
                **look.in_chart(),
                marker=mark,
                markersize=size,
                elinewidth=0.8,
                capsize=1.8,
                label=label,
                zorder=3,
            )
        else:
            panel.fill_between(x, y - half, y + half, color=look.light, alpha=0.22, linewidth=0, zorder=2)
            panel.plot(x, y, **look.in_chart(), marker=mark, markersize=size, label=label, zorder=3)
    title = tr("change")
    if kind == "bending":
        title = (
            tr("differential movement, common shift and tilt removed")
            if report.tilted
            else tr("differential movement, common shift removed")
        )
    if report.what.sideways:
        title = _line_title(report, kind)
        # Another ground, so that nobody takes left and right for up and down.
        panel.set_facecolor(palette.SIDEWAYS)
    panel.set_title(
        _plain(f"{axis}: {title}" if axis else capitalised(title)), loc="left", fontsize=10, fontweight="bold"
    )
    up = tr("right +") if report.what.sideways else tr("up +")
    panel.set_ylabel(f"{up} ({amounts.label})", fontsize=9)
    panel.set_xlabel(tr("Chainage ({})").format(report.units.chainage_label), fontsize=9)
    panel.grid(True, color=palette.GRID, linewidth=0.6)
    panel.tick_params(labelsize=8.5)
    for side in ("top", "right"):
        panel.spines[side].set_visible(False)
    for numbers in (panel.xaxis, panel.yaxis):
        numbers.set_major_formatter(plain_ticks)


def _line_title(report, kind):
    if kind == "change":
        return tr("lateral change")
    if report.tilted:
        return tr("lateral differential movement, common shift and rotation removed")
    return tr("lateral differential movement, common shift removed")


def has_intervals(reports):
    """Whether any change has a standard deviation, so that intervals are drawn."""
    return any(np.any(np.isfinite(one.compared.sd_change)) for one in reports)


def _words(report, axes, reports, alone):
    """What the chart shows, in words."""
    compared = report.compared
    sentences = [
        one.axis_sentence(motion) for one in reports for motion in one.compared.motions if motion.axis in axes
    ][:12]
    more = len(compared.axes) - len(axes)
    if more > 0 and alone:
        sentences.append(tr("{} not drawn.").format(counted(more, tr("further axis"), tr("further axes"))))
    about = tr("Line chart of change against chainage, a line for each survey; up is positive.")
    if has_intervals(reports):
        about += " " + tr("Bars or bands are 95 % intervals.")
    if reports[-1].what.sideways:
        about += " " + tr("On a tinted ground the lateral change; right is positive.")
    return " ".join([about, *sentences])
