"""The curvature test in words: verdict, radius, the geoid's share."""

from dataclasses import dataclass

import numpy as np

from ..core.curvature import CurvatureTest, SurveyedLeg
from ..language.height_text import small_text
from ..language.number_text import number_text
from ..language.stored_words import capitalised
from ..language.translation import tr


@dataclass(frozen=True)
class Tested:
    """An axis or leg as tested: ``test`` of the kept stations; ``profile`` of all; ``kept``: booleans;
    ``moved``: stretches of those set aside, index arrays; ``beyond``: how many stations may be set aside,
    where more would have had to go and none was; else 0.
    """

    name: str
    test: CurvatureTest
    profile: SurveyedLeg
    kept: np.ndarray
    moved: tuple = ()
    beyond: int = 0


def length_text(metres, units):
    """A length in words, in the unit of chainages; metres below 2 km, else kilometres."""
    if units.chainage_name != "metre":
        return f"{number_text(metres / units.chainage, 0)} {units.chainage_label}"
    return number_text(metres, 0) + " m" if metres < 2000.0 else number_text(metres / 1000.0, 1) + " km"


def factor_text(test):
    """The factor with its 95 % half width."""
    return tr("curvature factor {} ± {} (95 %)").format(number_text(test.factor, 3), number_text(test.half_width, 3))


def verdict_sentence(name, test, run):
    """The verdict in one or two sentences; never that something is straight or level whose heights do not follow it.
    ``run``: with ``units`` and ``notation``."""
    if test.verdict == "straight on average":
        return tr("{} bends on average like a straight line in space ({}), but does not follow one: {}.").format(
            name, factor_text(test), departure_text(test, run)
        )
    if test.verdict == "level on average":
        return tr(
            "{} follows the level surface on average, at a constant grade of {} ({}), but not from station to station: "
            "{}."
        ).format(name, number_text(_grade(test), 6), factor_text(test), departure_text(test, run))
    sentence = _bend_sentence(name, test, run.units)
    if test.shape.fits:
        return sentence
    return sentence + " " + tr("Nor do the heights follow one curve: {}.").format(departure_text(test, run))


def departure_text(test, run):
    """How far the heights leave the curve, where, and which test says so."""
    shape, reasons = test.shape, []
    if shape.chi > shape.chi_limit:
        reasons.append(
            tr("chi squared {}, limit {}").format(number_text(shape.chi, 0), number_text(shape.chi_limit, 0))
        )
    if shape.ratio < shape.ratio_limit:
        reasons.append(tr("neighbours depart from it together"))
    return tr("departures to ±{} near {} ({})").format(
        small_text(abs(shape.greatest), run.units), run.notation.shown(shape.at), "; ".join(reasons)
    )


def _bend_sentence(name, test, units):
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
    longer = tr("a length of {} with the same spacing and accuracy").format(length_text(length, units))
    better = "" if accuracy is None else tr("heights good to {}, or ").format(small_text(accuracy, units))
    return tr(
        "Whether {} is straight or level is undecided: {}, and its 95 % interval holds both 1 and 0. {}{} would decide."
    ).format(name, factor_text(test), capitalised(better), longer if better else capitalised(longer))


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


def leg_title(one):
    return tr("Axis '{}'").format(one.name)
