"""What a run of fitreference says of the tangent point and the level point of each fit, and what each needs."""

import numpy as np

from ..core.measure import measure
from ..core.tangent_point import tilts
from ..language.number_text import listed, number_text
from ..language.translation import tr
from ..structure.stated_slope import slope_text
from .fit_geoid import EGM96, FIELD, GRID, NOTHING, STATED

# Of so many axes a sentence tells how a point is seen from them.
_MOST_AXES = 5


def known_slopes(fits):
    """The slopes (m, 2) of the geoid at the level points of many Fits, asked for together."""
    places = [fit.level for fit in fits]
    lat, lon = (np.array([getattr(place, name) for place in places], float) for name in ("lat", "lon"))
    return tilts([fit.geoid.slope for fit in fits], "known")(lat, lon).T


def tell_points(run, fit, geoid_slope):
    """Push the sentences of both points of a Fit; ``geoid_slope``: see known_slopes."""
    say = run.asked.say
    if fit.kind == "line":
        _tell_line(run, fit)
    else:
        for words, place, inside in zip(_titles(), (fit.tangent, fit.level), fit.inside):
            _tell_point(run, fit, words, place, inside)
    say(_needs(fit, geoid_slope))


def _titles():
    return (
        tr("tangent point, where it touches along the ellipsoid"),
        tr("level point, where it lies in the horizon and water on it would stand still"),
    )


def _tell_line(run, fit):
    parts = []
    for words, place, inside in zip(
        (tr("tangent to the ellipsoid at"), tr("level, against the horizon, at")), (fit.tangent, fit.level), fit.inside
    ):
        text = tr("{} {}, {} the surveyed stretch").format(
            words, run.notation.shown(place.chainage), tr("inside") if inside else tr("outside")
        )
        if np.isfinite(place.sd):
            text += tr(", standard deviation {}").format(_length_text(place.sd, run, 1))
        parts.append(text)
    run.asked.say(
        tr("Line '{}': {}. On both sides of the level point the straight line rises above the level surface.").format(
            fit.name, "; ".join(parts)
        )
    )


def _tell_point(run, fit, words, place, inside):
    if not place.well_determined:
        run.asked.say(
            tr("Plane '{}': {}: poorly determined; neither its position nor an ellipse is given.").format(
                fit.name, words
            )
        )
        return
    state = (
        tr("inside the area that the stations span")
        if inside
        else tr("outside the area that the stations span, {} from the nearest one").format(
            _length_text(place.distance, run, 0)
        )
    )
    run.asked.say(
        tr("Plane '{}': {}: latitude {}°, longitude {}°, {}; semi-axes of its 95 % ellipse {} and {}.").format(
            fit.name,
            words,
            number_text(place.lat, 6),
            number_text(place.lon, 6),
            state,
            *(_length_text(v, run, 0) for v in (place.ellipse.semi_a, place.ellipse.semi_b)),
        )
    )
    shown = [_beside(run, run.axes[k], place) for k in fit.axes[:_MOST_AXES]]
    beside = listed(shown, _MOST_AXES, len(fit.axes))
    run.asked.say(tr("Plane '{}': seen from the axes: {}.").format(fit.name, beside))


def _needs(fit, slope):
    """What each point rests on: the heights alone, or the slope of the geoid as well."""
    kind = tr("Plane") if fit.kind == "plane" else tr("Line")
    geoid = fit.geoid.slope
    source = {
        STATED: tr("as stated: {}").format(slope_text(slope)),
        FIELD: tr("from the stations' own undulations: {}").format(slope_text(slope)),
        GRID: tr("from the grid: {}").format(slope_text(slope)),
        EGM96: tr("from EGM96: {}").format(slope_text(slope)),
        NOTHING: tr("not known to this run, taken as none"),
    }[fit.geoid.source]
    needing, other = (tr("level point"), tr("tangent point"))
    if not geoid.ellipsoidal:
        needing, other = other, needing
    text = tr(
        "{} '{}': the {} needs the slope of the geoid, {}, with a standard deviation of {}\u2033 for each component; "
        "the {} rests on the heights alone."
    ).format(kind, fit.name, needing, source, number_text(geoid.sigma, 2), other)
    if not fit.geoid.reached:
        text += tr(" The grid ends near the points, so the slope among the stations stands in.")
    if geoid.bending:
        text += tr(" Bending of the geoid is allowed for.")
    else:
        text += tr(" The grid shows how the geoid bends.")
    return text


def _length_text(metres, run, decimals):
    """A distance along or across the ground, in the unit of chainages."""
    return f"{number_text(metres / run.units.chainage, decimals)} {run.units.chainage_label}"


def _beside(run, axis, place):
    feet = measure([axis.line], place.lat, place.lon)
    s, y = float(axis.chainages(feet.leg, feet.along)[0]), float(axis.offsets(feet.leg, feet.across)[0])
    side = tr("right") if y > 0 else tr("left")
    return tr("{} {}, {} to the {}").format(axis.line.name, run.notation.shown(s), _length_text(abs(y), run, 0), side)
