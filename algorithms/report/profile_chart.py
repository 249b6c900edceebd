"""The profile of one axis in both views, as a picture for the screen and one for paper."""

import io

import numpy as np

from ..core.errors import InputError
from ..core.profile_views import AxisProfile, thinned, widened
from ..core.station_notation import station_text
from ..documents.blocks import Picture
from ..language.height_text import sided
from ..language.shown_stations import shown_station
from ..language.ticks import plain_ticks
from ..language.translation import tr
from ..language.units import UNIT_LABELS
from ..styles import palette
from .line_chart import draw_line, line_caption

# As on the map: colour and shape say the same; all are dark enough on white.
LOOKS = {
    "high": ("^", palette.HIGH.light),
    "low": ("v", palette.LOW.light),
    "within": ("o", palette.WITHIN.light),
    "no tolerance": ("D", palette.UNJUDGED.light),
}
_WIDTH, _HEIGHT = 6.6, 5.0
# What a chart of the line needs below, as high as that of the residuals.
_LINE_HEIGHT = 2.1
_BINS = 500
# Points of all type: on paper the picture is made smaller, and is to be read there.
_TYPE = 9.8


def profile_picture(found, axis, *, screen, paper):
    """Picture of one axis, for the screen and for paper as asked for; None where it has no two stations with a design
    height.
    """
    one = found.reviewed
    profile, rows = axis_profile(one, axis)
    if profile is None:
        return None
    alt = _in_words(found, profile, rows, axis)
    caption = _caption(profile, bool(np.any(found.doubt[rows])))
    if profile.has_line:
        caption += " " + line_caption(profile)
    svg, png = _drawn(found, profile, rows, screen, paper)
    return Picture(svg, alt, caption, png, _height(profile) / _WIDTH)


def _in_words(found, profile, rows, axis):
    """What the picture shows, for those who do not see it: by its numbers."""
    one, residual = found.reviewed, found.reviewed.residual[rows]
    name, known = axis or tr("the axis"), np.flatnonzero(np.isfinite(residual))
    texts = [
        tr(
            "Profile of {} from {} to {} in two views. Above, heights above the level surface: design and as-built "
            "heights over the station."
        ).format(name, one.station[rows[0]], one.station[rows[-1]])
    ]
    if len(known):
        ends = known[np.argmin(residual[known])], known[np.argmax(residual[known])]
        places = [(found.amounts.with_unit(float(residual[k]), True), one.station[rows[k]]) for k in ends]
        texts.append(
            tr("Below, heights from the design: the lowest {} at {}, the highest {} at {}.").format(
                *places[0], *places[1]
            )
        )
    else:
        texts.append(tr("Below, heights from the design: no as-built height is known."))
    status = one.status[rows].astype(str)
    if np.any(np.isin(status, ("within", "high", "low"))):
        counts = (int(np.sum(status == word)) for word in ("within", "high", "low"))
        texts.append(tr("{} are within the tolerance, {} too high, {} too low.").format(*counts))
    lateral = profile.lateral if profile.has_line else np.zeros(0)
    if np.any(np.isfinite(lateral)):
        k = int(np.nanargmax(np.abs(lateral)))
        amount = sided(found.line.amounts.with_unit(abs(float(lateral[k]))), lateral[k])
        texts.append(
            tr("At the bottom, the lateral departures from the line: at most {}, at {}.").format(
                amount, one.station[rows[k]]
            )
        )
    return " ".join(texts)


def _height(profile):
    return _HEIGHT + (_LINE_HEIGHT if profile.has_line else 0.0)


def axis_profile(one, axis):
    """(AxisProfile, rows of ``one``, a Reviewed) of an axis; None for the profile where no two stations have a
    design height."""
    rows = one.rows(axis)
    rows = rows[np.isfinite(one.chainage[rows]) & np.isfinite(one.design[rows])]
    if len(rows) < 2 or not np.ptp(one.chainage[rows]) > 0.0:
        return None, rows
    rows = rows[np.argsort(one.chainage[rows], kind="stable")]
    flat = np.where(np.isfinite(one.flat[rows]), one.flat[rows], one.design[rows])
    tolerance = one.tolerance[rows][0]
    limit = None if np.isnan(tolerance) else float(tolerance)
    columns = (one.chainage[rows], one.design[rows], flat, one.residual[rows], one.sd[rows], limit)
    if one.line is None:
        return AxisProfile(*columns), rows
    limit = one.line.tolerance[rows][0]
    return AxisProfile(*columns, one.line.lateral[rows], None if np.isnan(limit) else float(limit)), rows


def _caption(profile, doubted):
    """What is to be seen, and no more."""
    texts = [tr("Above: heights above the level surface through the first station.")]
    if profile.is_straight:
        texts.append(tr("The dashed line is the design with no curvature."))
    texts.append(tr("Below: the same heights seen from the design."))
    if profile.tolerance:
        texts.append(tr("The band is the tolerance."))
    if profile.is_straight:
        texts.append(tr("The dash-dotted line is the level surface, as far as it lies in the picture."))
    return " ".join(texts + ([tr("Crosses are doubted heights.")] if doubted else []))


def _drawn(found, profile, rows, screen, paper):
    try:
        from matplotlib import rc_context
        from matplotlib.backends.backend_agg import FigureCanvasAgg
        from matplotlib.backends.backend_svg import FigureCanvasSVG
        from matplotlib.figure import Figure
    except ImportError:
        raise InputError(
            tr("The report's profiles need matplotlib in QGIS's own Python (python3-matplotlib on Debian and Ubuntu).")
        ) from None
    look = {
        "svg.fonttype": "path",
        "svg.hashsalt": "tautline",
        "font.size": _TYPE,
        "font.family": "DejaVu Sans",
        "axes.unicode_minus": True,
        "axes.spines.right": False,
        "axes.spines.top": False,
    }
    with rc_context(look):
        figure = Figure(figsize=(_WIDTH, _height(profile)), layout="constrained")
        FigureCanvasSVG(figure)
        above, below, *line = figure.subplots(3 if profile.has_line else 2, 1, sharex=True)
        _draw_level(above, found, profile)
        _draw_straight(below, found, profile, rows)
        for axes in line:
            draw_line(axes, found, profile, rows, lambda values: _thin(profile, values))
            _common(axes, found, axes.get_ylabel(), 1.0)
        figure.axes[-1].set_xlabel(tr("station"))
        text, image = io.StringIO(), io.BytesIO()
        if screen:
            figure.savefig(text, format="svg", metadata={"Date": None, "Creator": None})
        if paper:
            FigureCanvasAgg(figure)
            figure.savefig(image, format="png", dpi=300, metadata={"Software": None})
    return text.getvalue(), image.getvalue()


def _common(axes, found, unit_text, scale):
    units = found.reviewed.units
    axes.grid(color=palette.GRID, linewidth=0.7)
    axes.set_axisbelow(True)
    axes.xaxis.set_major_formatter(lambda value, _place: shown_station(station_text(value, units.chainage_name)))
    axes.set_ylabel(unit_text)
    return scale


def _thin(profile, values):
    return thinned(profile.chainage, values, profile.chainage[0], profile.chainage[-1], _BINS)


def _draw_level(axes, found, profile):
    units, lines = found.reviewed.units, profile.lines("level")
    unit = UNIT_LABELS[units.height_name]
    s = profile.chainage / units.chainage
    ticks = axes.yaxis
    axes.axhline(0.0, **palette.LEVEL.in_chart(), label=tr("level surface"))
    flat = (("flat", palette.FLAT, tr("no curvature")),) if profile.is_straight else ()
    for name, look, label in (*flat, ("design", palette.DESIGN, tr("design"))):
        k = _thin(profile, lines[name])
        axes.plot(s[k], lines[name][k] / units.height, **look.in_chart(), label=label)
    k = _thin(profile, lines["as-built"])
    built = lines["as-built"][k] / units.height
    axes.plot(s[k], built, ".", color=palette.BUILT.light, markersize=4.5, label=tr("as built"))
    low, high = (value / units.height for value in widened(*profile.shown_range("level")))
    axes.set_ylim(low, high)
    axes.set_xlim(*widened(s[0], s[-1], 0.015))
    _common(axes, found, tr("above level ({})").format(unit), 1.0)
    ticks.set_major_formatter(plain_ticks)
    axes.legend(
        frameon=False,
        fontsize=_TYPE,
        ncols=4,
        loc="lower left",
        bbox_to_anchor=(0.0, 1.0),
        borderaxespad=0.1,
        handlelength=2.2,
    )


def _draw_straight(axes, found, profile, rows):
    one, amounts = found.reviewed, found.amounts
    factor = 1.0 / amounts.metres
    s, y = profile.chainage / one.units.chainage, profile.residual * factor
    low, high = (value * factor for value in widened(*profile.residual_range(), 0.1))
    if profile.tolerance:
        axes.axhspan(-profile.tolerance * factor, profile.tolerance * factor, color=palette.BAND.light, zorder=0)
        for side in (-1, 1):
            axes.axhline(side * profile.tolerance * factor, color=palette.WITHIN.light, linewidth=0.8, zorder=1)
    axes.axhline(0.0, **palette.DESIGN.in_chart(), zorder=1)
    if profile.is_straight:
        level = profile.lines("straight")["level"] * factor
        axes.plot(s, np.where((level >= low) & (level <= high), level, np.nan), **palette.LEVEL.in_chart(), zorder=1)
    shown = np.zeros(len(rows), bool)
    shown[_thin(profile, y)] = True
    shown |= np.isin(one.status[rows].astype(str), ("high", "low"))
    shown &= np.isfinite(y)
    for status, (shape, color) in LOOKS.items():
        k = shown & (one.status[rows] == status)
        axes.plot(
            s[k],
            np.clip(y[k], low, high),
            shape,
            color=color,
            markersize=4.5 if status == "within" else 6,
            zorder=3,
            clip_on=False,
        )
    doubt = found.doubt[rows] & np.isfinite(y)
    axes.plot(
        s[doubt],
        np.clip(y[doubt], low, high),
        "x",
        color=palette.INK,
        markersize=9,
        markeredgewidth=1.4,
        zorder=4,
        clip_on=False,
    )
    for k in np.flatnonzero(shown & ((y > high) | (y < low)))[:12]:
        axes.annotate(
            amounts.signed(profile.residual[k]),
            (s[k], np.clip(y[k], low, high)),
            xytext=(8, -3 if y[k] > 0 else 3),
            textcoords="offset points",
            fontsize=_TYPE,
        )
    for artist in (*axes.lines, *axes.texts):
        artist.set_in_layout(False)  # what stands at the edge must not make the picture smaller
    axes.set_ylim(low, high)
    _common(axes, found, tr("from design ({})").format(amounts.label), factor)
    axes.yaxis.set_major_formatter(plain_ticks)
