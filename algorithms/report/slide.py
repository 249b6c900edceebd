"""One slide of a review: map, profile, the verdict in a sentence and the caution, to be read from the last row.

16:9. Type is at least LEAST points on 16 inches, which is 24 pixels on a screen of 1920. Lines differ by their dashes
and stations by their shapes, so that it can be read in grey and by every common kind of colour vision.
"""

import io
import textwrap

import numpy as np

from ..core.errors import InputError
from ..core.profile_views import exaggeration, thinned, widened
from ..core.station_notation import station_text
from ..documents.pdf_properties import with_properties
from ..language.number_text import times
from ..language.shown_stations import shown_station
from ..language.ticks import plain_ticks
from ..language.translation import language, tr
from ..language.units import UNIT_LABELS
from ..styles import palette
from .line_sentences import line_headline
from .map_layers import beside_line, beside_line_text
from .profile_chart import LOOKS, axis_profile
from .sentences import caution_texts, headline

# Inches, and dots per inch of the picture: 3840 by 2160 pixels.
SIZE, DOTS = (16.0, 9.0), 240
LEAST = 15.0
# Points of the verdict, the first whose lines fit the room above the legend, in points.
_VERDICT, _ROOM = (27.0, 23.0, 20.0, 17.0), 62.0
# Of the figure: left, bottom, width, height.
_MAP, _ABOVE, _BELOW = (0.02, 0.135, 0.36, 0.645), (0.465, 0.475, 0.515, 0.25), (0.465, 0.23, 0.515, 0.16)
# Millimetres of the map: so small that its smallest type, 8 points, is LEAST on the slide.
_MAP_WIDTH = 78.0
_BINS = 700
_MOST_BEYOND = 4
KINDS = ("png", "pdf")


def slide(found, chart, structure, kind, axis=""):
    """The slide as the bytes of a file of ``kind``, see KINDS. ``found``: Findings; ``chart``: the ReportMap; ``axis``:
    whose profile is shown, '' for that of the greatest residual. InputError for an axis without a profile."""
    try:
        from matplotlib import rc_context
    except ImportError:
        raise InputError(
            tr("The slide needs matplotlib in QGIS's own Python (python3-matplotlib on Debian and Ubuntu)."),
            keys=("SLIDE",),
        ) from None
    with rc_context(_look()):
        figure = slide_figure(found, chart, structure, axis)
        target = io.BytesIO()
        title = tr("Review of {}: one slide").format(structure)
        named = {"Creator": None, "Producer": None, "CreationDate": None, "Title": title}
        named = named if kind == "pdf" else {"Software": None, "Title": title}
        figure.savefig(target, format=kind, dpi=DOTS, metadata=named)
    if kind == "pdf":
        return with_properties(target.getvalue(), language=language())
    return target.getvalue()


def _look():
    return {
        "font.family": "DejaVu Sans",
        "font.size": LEAST,
        "axes.unicode_minus": True,
        "axes.spines.right": False,
        "axes.spines.top": False,
        "pdf.fonttype": 42,
    }


def slide_figure(found, chart, structure, axis=""):
    """The slide as a matplotlib Figure; see ``slide``."""
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    axis = _axis_shown(found, axis)
    profile, rows = axis_profile(found.reviewed, axis)
    if profile is None:
        raise InputError(
            tr("Axis '{}' has no two stations with a design height, so there is no profile to show.").format(axis),
            keys=("SLIDE", "SLIDE_AXIS"),
        )
    figure = Figure(figsize=SIZE, dpi=DOTS, facecolor=palette.PAPER)
    FigureCanvasAgg(figure)
    _write_verdict(figure, " ".join(filter(None, (headline(found, structure), line_headline(found, structure)))))
    _draw_map(figure, chart)
    if beside_line(found.reviewed).any():
        _write_map_legend(figure)
    above, below = figure.add_axes(_ABOVE), figure.add_axes(_BELOW)
    below.sharex(above)
    _draw_heights(above, found, profile)
    _draw_residuals(below, found, profile, rows)
    _write_legend(figure, found, profile, rows)
    _write_foot(figure, found, profile, above, axis)
    return figure


def _axis_shown(found, axis):
    one = found.reviewed
    if axis:
        if axis not in one.axes:
            raise InputError(
                tr("There is no axis '{}' among the stations; there are {}.").format(axis, ", ".join(one.axes)),
                keys=("SLIDE_AXIS",),
            )
        return axis
    return one.axis[found.all.greatest_at] if found.all.number else one.axes[0]


# --- sentences


def _lines(text, points, share):
    """A text in lines that fit ``share`` of the slide's width; letters are about 0.58 of their size wide."""
    return textwrap.wrap(text, int(share * SIZE[0] * 72.0 / (0.58 * points)))


def _write_verdict(figure, text):
    for points in _VERDICT:
        # Bold type is wider.
        lines = _lines(text, 1.12 * points, 0.96)
        if len(lines) * points <= _ROOM:
            break
    figure.text(
        0.02,
        0.965,
        "\n".join(lines),
        fontsize=points,
        fontweight="bold",
        va="top",
        color=palette.INK,
        linespacing=1.25,
        gid="verdict",
    )


def _write_foot(figure, found, profile, above, axis):
    units = found.reviewed.units
    (x1, x2), (y1, y2), box = above.get_xlim(), above.get_ylim(), above.get_window_extent()
    factor = exaggeration(box.width, (x2 - x1) * units.chainage, box.height, (y2 - y1) * units.height)
    shown = times(round(factor, 1 - int(np.floor(np.log10(factor)))))
    texts = [
        tr("Profile of {}, heights exaggerated {}.").format(axis, shown)
        if axis
        else tr("Profile, heights exaggerated {}.").format(shown)
    ]
    if profile.is_straight:
        texts.append(
            tr("Straight in space is a curve above the level surface; a drawing that ignores curvature leaves it out.")
        )
    figure.text(_ABOVE[0] - 0.06, 0.155, "\n".join(_lines(" ".join(texts), LEAST, 0.57)), fontsize=LEAST, va="top")
    caution = "\n".join(_lines(caution_texts()[0], LEAST, 0.94))
    figure.text(
        0.02,
        0.02,
        caution,
        fontsize=LEAST,
        va="bottom",
        color=palette.INK,
        linespacing=1.2,
        gid="caution",
        style="italic",
    )


# --- map


def _draw_map(figure, chart):
    from matplotlib.image import imread

    left, bottom, width, height = _MAP
    shape = (height * SIZE[1]) / (width * SIZE[0])
    dots = width * SIZE[0] * DOTS / _MAP_WIDTH * 25.4
    place = figure.add_axes(_MAP, gid="map")
    place.imshow(imread(io.BytesIO(chart.rendered(_MAP_WIDTH, _MAP_WIDTH * shape, round(dots)))), aspect="equal")
    place.set_axis_off()


def _write_map_legend(figure):
    """What the square on the map is, over its upper left corner."""
    from matplotlib.lines import Line2D

    square = Line2D([], [], linestyle="none", marker="s", markersize=13.0, label=beside_line_text())
    square.set(markerfacecolor="none", markeredgecolor=palette.LINE.light, markeredgewidth=2.2)
    legend = figure.legend(
        handles=[square],
        loc="upper left",
        bbox_to_anchor=(_MAP[0] - 0.01, 0.845),
        frameon=False,
        fontsize=LEAST,
        handletextpad=0.3,
        borderaxespad=0.0,
    )
    legend.set_gid("map legend")


# --- profile


def _frame(axes, units):
    axes.grid(color=palette.GRID, linewidth=1.2)
    axes.set_axisbelow(True)
    axes.xaxis.set_major_formatter(lambda value, _place: shown_station(station_text(value, units.chainage_name)))
    axes.yaxis.set_major_formatter(plain_ticks)
    axes.tick_params(labelsize=LEAST)


def _thin(profile, values):
    return thinned(profile.chainage, values, profile.chainage[0], profile.chainage[-1], _BINS)


def _thick(look):
    """A line of the palette as wide as a slide needs."""
    how = look.in_chart()
    return {**how, "linewidth": 1.7 * how["linewidth"]}


def _lines_of(profile):
    flat = (("flat", palette.FLAT),) if profile.is_straight else ()
    return (*flat, ("level", palette.LEVEL), ("design", palette.DESIGN))


def _draw_heights(axes, found, profile):
    from matplotlib.ticker import MaxNLocator

    units, lines = found.reviewed.units, profile.lines("level")
    s = profile.chainage / units.chainage
    for name, look in _lines_of(profile):
        k = _thin(profile, lines[name])
        axes.plot(s[k], lines[name][k] / units.height, **_thick(look))
    k = _thin(profile, lines["as-built"])
    axes.plot(
        s[k], lines["as-built"][k] / units.height, "o", color=palette.BUILT.light, markersize=4.5, linestyle="none"
    )
    axes.set_ylim(*(value / units.height for value in widened(*profile.shown_range("level"), 0.1)))
    axes.set_xlim(*widened(s[0], s[-1], 0.02))
    _frame(axes, units)
    axes.tick_params(axis="x", labelbottom=False)
    axes.yaxis.set_major_locator(MaxNLocator(4, steps=[1, 2, 5, 10]))
    axes.set_title(
        tr("Height above the level surface ({})").format(UNIT_LABELS[units.height_name]),
        loc="left",
        fontsize=LEAST + 1.0,
        pad=8.0,
    )
    if profile.is_straight:
        _tell_gap(axes, found, profile, lines)


def _tell_gap(axes, found, profile, lines):
    """The greatest distance of the straight line from the flat drawing, as an arrow with its size."""
    units, effect = found.reviewed.units, profile.curvature_effect
    at = int(np.nanargmax(np.abs(effect)))
    s = profile.chainage[at] / units.chainage
    low, high = sorted((lines["flat"][at] / units.height, lines["design"][at] / units.height))
    axes.annotate("", (s, low), (s, high), arrowprops={"arrowstyle": "<->", "linewidth": 1.6, "color": palette.INK})
    left = profile.chainage[at] > 0.5 * (profile.chainage[0] + profile.chainage[-1])
    axes.annotate(
        found.amounts.with_unit(abs(float(effect[at]))),
        (s, 0.5 * (low + high)),
        xytext=(-8 if left else 8, 0),
        textcoords="offset points",
        ha="right" if left else "left",
        va="center",
        fontsize=LEAST + 2.0,
        fontweight="bold",
        bbox={"facecolor": palette.PAPER, "edgecolor": "none", "pad": 1.5, "alpha": 0.85},
    )


def _draw_residuals(axes, found, profile, rows):
    from matplotlib.ticker import MaxNLocator

    one, amounts = found.reviewed, found.amounts
    s, y = profile.chainage / one.units.chainage, profile.residual / amounts.metres
    low, high = (value / amounts.metres for value in widened(*profile.residual_range(), 0.1))
    if profile.tolerance:
        half = profile.tolerance / amounts.metres
        axes.axhspan(-half, half, color=palette.BAND.light, zorder=0)
        for side in (-half, half):
            axes.axhline(side, color=palette.WITHIN.light, linewidth=1.2, zorder=1)
    axes.axhline(0.0, **_thick(palette.DESIGN), zorder=1)
    shown = np.zeros(len(rows), bool)
    shown[_thin(profile, y)] = True
    shown |= np.isin(one.status[rows].astype(str), ("high", "low"))
    shown &= np.isfinite(y)
    for status, (shape, colour) in LOOKS.items():
        k = shown & (one.status[rows] == status)
        size = 5.5 if status == "within" else 10.0
        axes.plot(
            s[k],
            np.clip(y[k], low, high),
            shape,
            color=colour,
            markersize=size,
            markeredgecolor=palette.INK,
            markeredgewidth=0.5,
            zorder=3,
            clip_on=False,
        )
    for k in np.flatnonzero(shown & ((y > high) | (y < low)))[:_MOST_BEYOND]:
        # Beside its mark at the edge, for what it is.
        place = (s[k], np.clip(y[k], low, high))
        up = 1 if y[k] > 0 else -1
        axes.annotate(
            amounts.with_unit(profile.residual[k], True),
            place,
            xytext=(10, -4 * up),
            textcoords="offset points",
            va="top" if up > 0 else "bottom",
            fontsize=LEAST,
        )
    axes.set_ylim(low, high)
    _frame(axes, one.units)
    axes.yaxis.set_major_locator(MaxNLocator(3, steps=[1, 2, 5, 10]))
    axes.xaxis.set_major_locator(MaxNLocator(5, steps=[1, 2, 5, 10]))
    title = tr("As-built minus design ({})").format(amounts.label)
    if profile.tolerance:
        title += tr(", tolerance ±{}").format(amounts.with_unit(profile.tolerance))
    axes.set_title(title, loc="left", fontsize=LEAST + 1.0, pad=8.0)


def _write_legend(figure, found, profile, rows):
    """What each line and mark is, in two rows over the profile: only what is there."""
    from matplotlib.lines import Line2D

    words = {"design": tr("design"), "level": tr("level surface"), "flat": tr("no curvature")}
    if profile.is_straight:
        words["design"] = tr("straight design")
    handles = [Line2D([], [], **_thick(look), label=words[name]) for name, look in reversed(_lines_of(profile))]
    handles.append(_mark("o", palette.BUILT.light, 5.0, tr("as built")))
    if np.any(found.reviewed.status == "no height"):
        handles.append(_mark("o", palette.PAPER, 7.0, tr("no as-built height")))
    states = {"within": tr("within"), "high": tr("too high"), "low": tr("too low"), "no tolerance": tr("not judged")}
    status = found.reviewed.status[rows]
    handles += [
        _mark(shape, colour, 6.0 if name == "within" else 10.0, states[name])
        for name, (shape, colour) in LOOKS.items()
        if np.any(status == name)
    ]
    figure.legend(
        handles=handles,
        loc="upper left",
        bbox_to_anchor=(_ABOVE[0] - 0.065, 0.845),
        ncol=4,
        frameon=False,
        fontsize=LEAST,
        handlelength=2.6,
        columnspacing=1.0,
        handletextpad=0.5,
        borderaxespad=0.0,
    )


def _mark(shape, colour, size, text):
    from matplotlib.lines import Line2D

    return Line2D(
        [],
        [],
        linestyle="none",
        marker=shape,
        color=colour,
        markersize=size,
        markeredgecolor=palette.INK,
        markeredgewidth=0.5,
        label=text,
    )
