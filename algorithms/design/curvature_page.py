"""The page of testcurvature: one HTML file that opens offline, with a sentence, a picture and the numbers."""

import io
import json

import numpy as np

from ..core.errors import InputError
from ..core.quantiles import NORMAL_95
from ..documents.blocks import MOST_AXES_DRAWN, Caution, Code, Column, Fold, Heading, Paragraph, Picture, Table
from ..documents.html import html_page
from ..entry.recorded_paths import common_folder, shortened
from ..language.height_text import amounts_for, small_text
from ..language.number_text import counted, number_text, signed_text
from ..language.ticks import plain_ticks
from ..language.translation import tr
from ..styles import palette
from .curvature_sentences import geoid_sentence, length_text, radius_sentence, verdict_sentence

_LINES = {"level": palette.LEVEL, "grade": palette.GRADE, "straight": palette.DESIGN, "free": palette.FREE}


def curvature_page(run, tested, record):
    """The page as bytes (UTF-8). ``tested``: an AxisResult for each axis; ``record``: of the run."""
    folder = common_folder([record])
    parts = [
        Paragraph(
            tr(
                "Straight in space is not level: the Earth curves away under a straight line, by about 8 cm over the "
                "first kilometre, 31 cm over two. The heights of a long structure therefore show which of the two it "
                "follows. The curvature factor measures it: 1 is straight in space, 0 is a constant slope above the "
                "level surface, which water follows."
            )
        ),
        Paragraph(
            tr("Heights of the layer ‘{}’; {}. {}").format(
                run.structure.points.name, run.accuracies.described, shortened(run.system.described, folder)
            ),
            "small",
        ),
    ]
    for number, one in enumerate(tested):
        parts += _axis(run, one, drawn=number < MOST_AXES_DRAWN)
    if len(tested) > MOST_AXES_DRAWN:
        text = tr("The first {} of {} are drawn; the numbers of all are above.")
        parts.append(Paragraph(text.format(MOST_AXES_DRAWN, counted(len(tested), tr("axis"), tr("axes"))), "small"))
    parts += [
        Heading(tr("How to read it")),
        Paragraph(
            tr(
                "The verdict is the sentence above, not a ranking of the shapes. It is straight where the 95 % "
                "interval of the factor holds 1 and not 0, level where it holds 0 and not 1, neither where it holds "
                "none of them, and undecided where it holds both. The factor is one number and says nothing of waves: "
                "where chi squared or the order of the residuals shows that the heights do not follow the curve, it "
                "is straight or level on average only. A straight line computed with no curvature and a constant "
                "grade on the real Earth are the same curve; no survey of heights can tell them apart."
            )
        ),
        Caution((tr("For review. Field work follows local codes, and a licensed surveyor or engineer decides."),)),
        Fold(
            tr("How this was computed"),
            (
                Paragraph(", ".join(f"{name} {value}" for name, value in record.versions.items()), "small"),
                Code(json.dumps(shortened(record.as_dict(), folder), ensure_ascii=False, indent=1)),
            ),
        ),
    ]
    return html_page(tr("Which shape was built?"), parts)


def _axis(run, one, drawn):
    """The pieces about one axis; ``drawn``: with its picture."""
    test, units = one.test, run.units
    sentence = verdict_sentence(tr("Axis '{}'").format(one.name), test, run)
    columns = (
        Column(tr("shape"), "k"),
        Column(tr("RMS"), "n"),
        Column("χ²", "n"),
        Column(tr("degrees of freedom"), "n"),
        Column(tr("what it is")),
    )
    rows = [
        [tr(m.name), small_text(m.rms, units), number_text(m.chi_squared, 1), str(m.freedom), _about(m.name)]
        for m in test.models
    ]
    return [
        Heading(one.name),
        Paragraph(sentence, "lead"),
        *([_picture(run, one, sentence)] if drawn else []),
        Paragraph(" ".join(text for text in (radius_sentence(test), geoid_sentence(test)) if text)),
        Table(columns, rows),
    ]


def _picture(run, one, sentence):
    alt = tr(
        "Heights of {} less their mean, over chainage, with four curves: level, constant grade, straight in space, and "
        "curvature left free. Curvature factor {}, 95 percent between {} and {}. {}"
    ).format(one.name, number_text(one.test.factor, 3), *(number_text(v, 3) for v in one.test.interval), sentence)
    return Picture(_drawn(run, one), alt, _caption(run, one))


def _caption(run, one):
    text = tr(
        "Above: the heights less their mean, with the shapes fitted to them. Below: the curvature factor; the bar "
        "contains the true value in 95 of 100 cases. {} stations over {}."
    ).format(int(one.kept.sum()), length_text(one.test.profile.length, run.units))
    aside = run.notation.all_shown(one.profile.chainage[~one.kept])
    return text + (" " + tr("Set aside by the test: {}.").format(", ".join(aside)) if len(aside) else "")


def _about(name):
    return {
        "level": tr("a constant height"),
        "grade": tr("a constant slope above the level surface; the same curve as a straight line with no curvature"),
        "straight": tr("straight in space"),
        "8-inch rule": tr("straight, by the 8-inch rule (8 inches per mile squared)"),
        "sphere": tr("straight, over a sphere"),
        "free": tr("curvature left free"),
    }[name]


def _drawn(run, one):
    """Two panels as SVG: the heights with the models' curves, and the factor with its interval."""
    try:
        from matplotlib import rc_context
        from matplotlib.backends.backend_svg import FigureCanvasSVG
        from matplotlib.figure import Figure
    except ImportError:
        raise InputError(
            tr(
                "The page needs matplotlib in QGIS's own Python (python3-matplotlib on Debian and Ubuntu); leave HTML "
                "empty to go without."
            ),
            keys=("HTML",),
        ) from None
    with rc_context({"svg.fonttype": "path", "svg.hashsalt": "tautline", "font.size": 10, "axes.unicode_minus": True}):
        figure = Figure(figsize=(9.2, 6.0), layout="constrained")
        FigureCanvasSVG(figure)
        heights, factor = figure.subplots(2, 1, gridspec_kw={"height_ratios": [4, 1]})
        _draw_heights(heights, run, one)
        _draw_factor(factor, one.test)
        sink = io.StringIO()
        figure.savefig(sink, format="svg", metadata={"Date": None, "Creator": None})
    return sink.getvalue()


def _unit(units):
    """Factor from metres and name of the unit of small heights."""
    amounts = amounts_for(units.height_name)
    return 1.0 / amounts.metres, amounts.label


def _draw_heights(axes, run, one):
    test, profile = one.test, one.profile
    scale, unit = _unit(run.units)
    mean = next(m for m in test.models if m.name == "level").curve.mean()
    order = np.argsort(test.profile.chainage)
    s = test.profile.chainage[order] / run.units.chainage
    for model in test.models:
        if model.name in _LINES:
            axes.plot(
                s,
                (model.curve[order] - mean) * scale,
                **_LINES[model.name].in_chart(),
                label={
                    "level": tr("level"),
                    "grade": tr("constant grade"),
                    "straight": tr("straight in space"),
                    "free": tr("curvature left free"),
                }[model.name],
                zorder=2,
            )
    sigma = np.sqrt(profile.covariance.variance)
    if not profile.known:
        sigma = sigma * np.sqrt(test.variance_factor)
    y = (profile.height - mean) * scale
    kept = one.kept
    axes.errorbar(
        profile.chainage[kept] / run.units.chainage,
        y[kept],
        yerr=NORMAL_95 * sigma[kept] * scale,
        fmt="o",
        markersize=4,
        color=palette.INK,
        ecolor=palette.UNCHANGED.light,
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
            color=palette.SUSPECT.light,
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
        axes.plot([], [], "x", color=palette.SUSPECT.light, markersize=8, markeredgewidth=2, label=tr("set aside"))
        axes.set_ylim(low, high)
    axes.set_ylabel(tr("height less the mean, {}").format(unit))
    axes.xaxis.set_major_formatter(lambda value, _place: run.notation.shown(value * run.units.chainage))
    axes.set_xlabel(tr("station"))
    axes.grid(color=palette.GRID)
    axes.legend(frameon=False, fontsize=9, ncols=3, loc="lower center", bbox_to_anchor=(0.5, 1.0))


def _draw_factor(axes, test):
    low, high = test.interval
    axes.axvline(0.0, **_LINES["grade"].in_chart())
    axes.axvline(1.0, **_LINES["straight"].in_chart())
    axes.errorbar(
        [test.factor],
        [0],
        xerr=[[test.factor - low], [high - test.factor]],
        fmt="o",
        color=palette.INK,
        capsize=6,
        elinewidth=2.5,
        markersize=7,
    )
    axes.set_xlim(min(-0.3, low - 0.1), max(1.3, high + 0.1))
    axes.set_ylim(-1, 1)
    axes.set_yticks([])
    axes.xaxis.set_major_formatter(plain_ticks)
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
