"""The page of testcurvature: one HTML file that opens offline, with a sentence, a picture and the numbers."""

import io
import json
from pathlib import Path

import numpy as np

from ..core.errors import InputError
from ..core.quantiles import NORMAL_95
from ..language.height_text import small_text
from ..language.number_text import number_text, signed_text
from ..language.translation import tr
from ..language.units import UNIT_LABELS
from .curvature_sentences import geoid_sentence, length_text, radius_sentence, verdict_sentence

TEMPLATES = Path(__file__).resolve().parents[1] / "documents" / "templates"
# Blue, orange and grey stay apart for every common kind of colour blindness; the dashes say the same again.
_LINES = {
    "level": ("#6b7280", (0, (1, 2)), 1.4),
    "grade": ("#1f6feb", (0, (6, 2)), 2.0),
    "straight": ("#d9630b", "solid", 2.0),
    "free": ("#111827", (0, (2, 1)), 1.2),
}


def page(run, tested, record):
    """The page as bytes (UTF-8). Everything that came from data is escaped by the template."""
    try:
        from jinja2 import Environment, FileSystemLoader
    except ImportError:
        raise InputError(
            tr(
                "The page needs jinja2 in QGIS's own Python (python3-jinja2 on Debian and Ubuntu); leave HTML empty to "
                "go without."
            )
        ) from None
    environment = Environment(
        loader=FileSystemLoader(str(TEMPLATES)), autoescape=True, trim_blocks=True, lstrip_blocks=True
    )
    axes = [_axis(run, one) for one in tested]
    versions = ", ".join(f"{name} {value}" for name, value in record.versions.items())
    text = environment.get_template("curvature.html").render(
        axes=axes,
        layer=run.structure.points.name,
        system=run.system.described,
        accuracy=run.accuracies.described,
        versions=versions,
        record=json.dumps(record.as_dict(), ensure_ascii=False, indent=1),
        tr=tr,
    )
    return text.encode("utf-8")


def _axis(run, one):
    test, units = one.test, run.units
    title = tr("Axis '{}'").format(one.name)
    models = [
        {
            "name": tr(m.name),
            "rms": small_text(m.rms, units),
            "chi": number_text(m.chi_squared, 1),
            "freedom": m.freedom,
            "about": _about(m.name),
        }
        for m in test.models
    ]
    aside = run.notation.texts(one.profile.chainage[~one.kept])
    alt = tr(
        "Heights of {} less their mean, over chainage, with four curves: level, constant grade, straight in space, and "
        "curvature left free. Curvature factor {}, 95 percent between {} and {}. {}"
    ).format(
        one.name,
        number_text(test.factor, 3),
        *(number_text(v, 3) for v in test.interval),
        verdict_sentence(title, test, units),
    )
    return {
        "name": one.name,
        "sentence": verdict_sentence(title, test, units),
        "radius": radius_sentence(test),
        "geoid": geoid_sentence(test),
        "number": int(one.kept.sum()),
        "length": length_text(test.profile.length),
        "aside": ", ".join(aside),
        "models": models,
        "picture": _picture(run, one),
        "alt": alt,
        "verdict": test.verdict,
    }


def _about(name):
    return {
        "level": tr("a constant height"),
        "grade": tr("a constant slope above the level surface; the same curve as straight on a flat Earth"),
        "straight": tr("straight in space"),
        "field rule": tr("straight, by 8 inches per mile squared"),
        "sphere": tr("straight, over a sphere"),
        "free": tr("curvature left free"),
    }[name]


def _picture(run, one):
    """Two panels as inline SVG: the heights with the models' curves, and the factor with its interval."""
    try:
        from matplotlib import rc_context
        from matplotlib.backends.backend_svg import FigureCanvasSVG
        from matplotlib.figure import Figure
    except ImportError:
        raise InputError(
            tr(
                "The page needs matplotlib in QGIS's own Python (python3-matplotlib on Debian and Ubuntu); leave HTML "
                "empty to go without."
            )
        ) from None
    with rc_context({"svg.fonttype": "path", "svg.hashsalt": "tautline", "font.size": 10, "axes.unicode_minus": True}):
        figure = Figure(figsize=(9.2, 6.0), layout="constrained")
        FigureCanvasSVG(figure)
        heights, factor = figure.subplots(2, 1, gridspec_kw={"height_ratios": [4, 1]})
        _draw_heights(heights, run, one)
        _draw_factor(factor, one.test)
        sink = io.StringIO()
        figure.savefig(sink, format="svg", metadata={"Date": None, "Creator": None})
    svg = sink.getvalue()
    return svg[svg.index("<svg") :]


def _unit(units):
    """Factor from metres and name of the unit of small heights."""
    return (1000.0, "mm") if units.height_name == "metre" else (1.0 / units.height, UNIT_LABELS[units.height_name])


def _draw_heights(axes, run, one):
    test, profile = one.test, one.profile
    scale, unit = _unit(run.units)
    mean = next(m for m in test.models if m.name == "level").curve.mean()
    order = np.argsort(test.profile.chainage)
    s = test.profile.chainage[order] / run.units.chainage
    for model in test.models:
        if model.name in _LINES:
            color, dashes, width = _LINES[model.name]
            axes.plot(
                s,
                (model.curve[order] - mean) * scale,
                color=color,
                linestyle=dashes,
                linewidth=width,
                label=tr(
                    {
                        "level": "level",
                        "grade": "constant grade",
                        "straight": "straight in space",
                        "free": "curvature left free",
                    }[model.name]
                ),
                zorder=2,
            )
    sigma = np.sqrt(profile.covariance.variance)
    if not profile.known:
        sigma = sigma * np.sqrt(test.solution.variance_factor)
    y = (profile.height - mean) * scale
    kept = one.kept
    axes.errorbar(
        profile.chainage[kept] / run.units.chainage,
        y[kept],
        yerr=NORMAL_95 * sigma[kept] * scale,
        fmt="o",
        markersize=4,
        color="#111827",
        ecolor="#9ca3af",
        elinewidth=1,
        label=tr("as built, 95 %"),
        zorder=3,
    )
    low, high = axes.get_ylim()
    if np.any(~kept):
        shown = np.clip(y[~kept], low, high)
        axes.plot(
            profile.chainage[~kept] / run.units.chainage,
            shown,
            "x",
            color="#d9630b",
            markersize=9,
            markeredgewidth=2,
            zorder=4,
            clip_on=False,
        )
        # A blunder of decimetres must not flatten the curves: it is drawn at the edge, with its size.
        for k in np.flatnonzero(shown != y[~kept]):
            axes.annotate(
                signed_text(y[~kept][k], 0),
                (profile.chainage[~kept][k] / run.units.chainage, shown[k]),
                xytext=(7, -3),
                textcoords="offset points",
                fontsize=9,
            )
        axes.plot([], [], "x", color="#d9630b", markersize=8, markeredgewidth=2, label=tr("set aside"))
        axes.set_ylim(low, high)
    axes.set_ylabel(tr("height less the mean, {}").format(unit))
    axes.xaxis.set_major_formatter(lambda value, _place: run.notation.text(value * run.units.chainage))
    axes.set_xlabel(tr("station"))
    axes.grid(color="#e5e7eb")
    axes.legend(frameon=False, fontsize=9, ncols=3, loc="lower center", bbox_to_anchor=(0.5, 1.0))


def _draw_factor(axes, test):
    low, high = test.interval
    axes.axvline(0.0, color=_LINES["grade"][0], linestyle=_LINES["grade"][1])
    axes.axvline(1.0, color=_LINES["straight"][0])
    axes.errorbar(
        [test.factor],
        [0],
        xerr=[[test.factor - low], [high - test.factor]],
        fmt="o",
        color="#111827",
        capsize=6,
        elinewidth=2.5,
        markersize=7,
    )
    axes.set_xlim(min(-0.3, low - 0.1), max(1.3, high + 0.1))
    axes.set_ylim(-1, 1)
    axes.set_yticks([])
    axes.text(
        0.0, 1.08, tr("0: constant grade"), ha="center", va="bottom", transform=axes.get_xaxis_transform(), fontsize=9
    )
    axes.text(
        1.0,
        1.08,
        tr("1: straight in space"),
        ha="center",
        va="bottom",
        transform=axes.get_xaxis_transform(),
        fontsize=9,
    )
    axes.set_xlabel(tr("curvature factor with its 95 % interval"))
    for side in ("left", "right", "top"):
        axes.spines[side].set_visible(False)
