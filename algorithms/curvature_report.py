"""What a run of testcurvature says and writes: verdicts in sentences, and the table of factors and models."""

from dataclasses import dataclass

import numpy as np

from .base import record_text
from .core.curvature import CurvatureTest, Profile
from .design_report import small_text
from .fields import CURVATURE, UNIT_LABELS
from .texts import listed, number_text, tr

MOST_TOLD = 40
_COLUMN = {
    "level": "level",
    "grade": "grade",
    "straight": "strght",
    "field rule": "rule",
    "sphere": "sphere",
    "free": "free",
}


@dataclass(frozen=True)
class Tested:
    """An axis or leg as tested: ``test`` of the kept stations; ``profile`` of all; ``kept``: booleans."""

    name: str
    test: CurvatureTest
    profile: Profile
    kept: np.ndarray


def length_text(metres):
    """A length in words: metres below 2 km, else kilometres."""
    return number_text(metres, 0) + " m" if metres < 2000.0 else number_text(metres / 1000.0, 1) + " km"


def factor_text(test):
    """The factor with its 95 % half width."""
    return tr("curvature factor {} ± {}").format(number_text(test.factor, 3), number_text(test.half_width, 3))


def verdict_sentence(name, test, units):
    """The verdict in one sentence."""
    if test.verdict == "straight":
        return tr("{} is straight in space: {}, where 1 is straight and 0 follows the level surface.").format(
            name, factor_text(test)
        )
    if test.verdict == "level":
        slope = _grade(test)
        return tr(
            "{} follows the level surface at a constant grade of {}: {}, where 1 is straight and 0 follows the level "
            "surface."
        ).format(name, number_text(slope, 6), factor_text(test))
    if test.verdict == "neither":
        return tr(
            "{} is neither straight in space nor at a constant grade above the level surface: {}, and its 95 % "
            "interval holds neither 1 nor 0."
        ).format(name, factor_text(test))
    accuracy, length = test.deciding
    longer = tr("a length of {} with the same spacing and accuracy").format(length_text(length))
    better = "" if accuracy is None else tr("heights good to {}, or ").format(small_text(accuracy, units))
    return tr(
        "Whether {} is straight or level is undecided: {}, and its 95 % interval holds both 1 and 0. {}{} would decide."
    ).format(
        name, factor_text(test), better[:1].upper() + better[1:], longer if better else longer[:1].upper() + longer[1:]
    )


def _grade(test):
    """Slope of the fitted grade against the level surface, without unit."""
    model = next(m for m in test.models if m.name == "grade")
    s = test.profile.chainage
    first, last = int(np.argmin(s)), int(np.argmax(s))
    return float((model.curve[last] - model.curve[first]) / (s[last] - s[first]))


def radius_sentence(test):
    """The implied radius with its interval."""
    low, high = test.implied_interval
    if np.isinf(high):
        return tr(
            "Implied radius: above {} km, on either side, or level (the Earth's along this axis is {} km)."
        ).format(number_text(low / 1000.0, 0), number_text(test.radius / 1000.0, 1))
    return tr("Implied radius: {} km, 95 % between {} and {} km (the Earth's along this axis is {} km).").format(
        *(number_text(v / 1000.0, 0) for v in (test.implied_radius, low, high)), number_text(test.radius / 1000.0, 1)
    )


def geoid_sentence(test):
    """How much of the uncertainty is the geoid's."""
    return tr("Standard deviation of the factor: {} from the heights, {} from the bending of the geoid.").format(
        number_text(test.sd, 3), number_text(test.geoid, 3)
    )


def tell(run, tested):
    """Push the sentences of a run."""
    say, points = run.feedback.pushInfo, run.structure.points
    say(
        tr("Understood: {} stations of layer '{}'; heights from {} in {}; {}.").format(
            len(points),
            points.name,
            run.heights.described,
            UNIT_LABELS[run.units.height_name],
            run.accuracies.described,
        )
    )
    say(run.system.described)
    for one in tested[:MOST_TOLD]:
        say(verdict_sentence(_title(one), one.test, run.units))
        say(radius_sentence(one.test) + " " + geoid_sentence(one.test))
        say(
            tr("RMS: {}.").format(
                ", ".join(tr("{} {}").format(tr(m.name), small_text(m.rms, run.units)) for m in one.test.models)
            )
        )
        aside = np.flatnonzero(~one.kept)
        if len(aside):
            run.feedback.pushWarning(
                tr("{}: suspected of a blunder and set aside: {}.").format(
                    _title(one), listed(run.notation.texts(one.profile.chainage[aside]))
                )
            )
    if len(tested) > MOST_TOLD:
        say(tr("{} more: see the table.").format(len(tested) - MOST_TOLD))


def _title(one):
    return tr("Axis '{}'").format(one.name)


def curvature_table(run, tested, record):
    """Columns of the output table, a row for each axis or leg; in the run's units."""
    rows = [_row(run, one, record) for one in tested]
    return {name: [row[name] for row in rows] for name in CURVATURE}


def _row(run, one, record):
    test, unit = one.test, run.units
    low, high = test.implied_interval
    row = {
        "axis": one.name,
        "number": int(one.kept.sum()),
        "removed": int(np.sum(~one.kept)),
        "length": test.profile.length / unit.chainage,
        "factor": test.factor,
        "factor_sd": test.sd,
        "geoid_sd": test.geoid,
        "factor_lo": test.interval[0],
        "factor_hi": test.interval[1],
        "radius": test.radius / unit.chainage,
        "imp_radius": test.implied_radius / unit.chainage if np.isfinite(test.implied_radius) else None,
        "radius_lo": low / unit.chainage,
        "radius_hi": high / unit.chainage if np.isfinite(high) else None,
        "verdict": test.verdict,
        "sentence": verdict_sentence(_title(one), test, unit),
        "record": record_text(record),
    }
    for model in test.models:
        row[f"rms_{_COLUMN[model.name]}"] = model.rms / unit.height
        row[f"chi_{_COLUMN[model.name]}"] = model.chi_squared
    return row
