"""The accuracies of a run: standard deviations of the heights, and what levelling makes them share (method page 6)."""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from ..boundary.input_fields import named_field
from ..core.covariance import independent, independent_pieces, levelled
from ..core.errors import InputError
from ..core.geodesy import foot_and_normal
from ..core.meeting import pairs_that_meet
from ..language.height_text import exact_text
from ..language.number_text import plain_text
from ..language.translation import tr
from ..structure.recorded_covariance import added_text, with_marks


@dataclass(frozen=True)
class Accuracies:
    """``sigma``: of each station, metres (n,), ones where it is not known; ``km``: of levelling over 1 km, metres, or
    None; ``given``: a GivenCovariance, which has precedence, or None.
    """

    sigma: np.ndarray
    known: bool
    km: Optional[float]
    described: str
    given: Optional[object] = None

    @property
    def by_arms(self):
        """True where the covariance needs to know how the stations were levelled along the arms."""
        return self.km is not None and self.given is None

    @property
    def independent(self):
        """True where the errors of the heights are taken as independent."""
        return self.km is None and self.given is None

    def covariance(self, rows, arms, distances):
        """Covariance of some stations. ``arms``, ``distances``: of their levelling, see core.covariance.levelled."""
        if self.given is not None:
            return self.given.covariance(rows)
        if self.km is None:
            return independent(self.sigma[rows])
        return levelled(self.sigma[rows], arms, distances, self.km)

    def of_pieces(self, rows, legs):
        """Covariances of the stations ``rows`` (n,) of many pieces, ``legs``, Segments of them: a list, None for each
        where these are not ``independent``."""
        return independent_pieces(self.sigma[rows], legs) if self.independent else [None] * len(legs.counts)


def sigma_index(asked, key="SIGMA", usual="sd"):
    """A function that finds the field with standard deviations in a source, named by the parameter ``key``_FIELD, else
    called ``usual``: -1 where the run uses none."""
    given = asked.text(f"{key}_FIELD")
    typed = asked.number(key) is not None

    def find(source):
        return named_field(source, given, f"{key}_FIELD", () if typed else (usual,))

    return find


def typed_sigma(asked, key):
    """What the parameter ``key`` gives, None where it is empty. InputError where it is not positive."""
    typed = asked.number(key)
    if typed is not None and not typed > 0:
        raise InputError(tr("{} is {}; it must be positive.").format(key, plain_text(typed)), keys=(key,))
    return typed


def for_all_text(sigma, units):
    """The words for one standard deviation of all stations, as somebody chose it: ``sigma``, metres."""
    return tr("standard deviation {} for all").format(exact_text(sigma, units.height_name))


def checked_sigmas(values, points, unit, needed, field):
    """Standard deviations ``values`` of all stations, metres (n,), from the ``field``, with ones where there is none.

    InputError naming layer, row and field for the first of those ``needed`` (mask (n,)) that is not positive.
    """
    bad = np.flatnonzero(needed & ~(values > 0))
    if len(bad):
        value = tr("missing") if np.isnan(values[bad[0]]) else f"{values[bad[0]] / unit:g}"
        raise InputError(
            tr("Layer '{}', row {}: the standard deviation in the field '{}' is {}; it must be positive.").format(
                points.name, bad[0] + 1, field, value
            )
        )
    return np.where(values > 0, values, 1.0)


def line_sigmas(points, unit, needed, source, index):
    """Standard deviations in plan, metres (n,), of the column 'sigma_line' read from the field ``index``, and the words
    for it; InputError as ``checked_sigmas``."""
    name = source.fields()[index].name()
    sigmas = checked_sigmas(points.columns["sigma_line"] * unit, points, unit, needed, name)
    return sigmas, tr("standard deviations from the field '{}'").format(name)


def accuracies(asked, points, units, needed, field, given=None):
    """Accuracies of the run. ``units``: Units; ``needed``: stations that take part (n,); ``field``:
    with their standard deviations, '' for none; ``given``: a GivenCovariance, which has precedence.

    InputError for a standard deviation that is zero, negative, missing or no number, naming the row.
    """
    typed, km, unit = typed_sigma(asked, "SIGMA"), typed_sigma(asked, "SIGMA_KM"), units.height
    km = None if km is None else km / 1000.0
    if given is not None:
        described = tr("covariance of the heights from the layer '{}'").format(given.layer) + added_text(given, units)
        return Accuracies(np.ones(len(points)), True, None, described, given)
    if field:
        values = with_marks(points.columns["sigma"] * unit, asked.record_of("STATIONS"))
        sigmas = checked_sigmas(values, points, unit, needed, field)
        return Accuracies(sigmas, True, km, tr("standard deviations from a field"))
    if typed is not None:
        return Accuracies(np.full(len(points), typed * unit), True, km, for_all_text(typed * unit, units))
    if km is not None:
        raise InputError(
            tr("SIGMA_KM needs the standard deviation of a height too: give SIGMA or SIGMA_FIELD."),
            keys=("SIGMA", "SIGMA_FIELD", "SIGMA_KM"),
        )
    return Accuracies(
        np.ones(len(points)), False, None, tr("standard deviation not stated, estimated from the residuals")
    )


def levelling_arms(axes, axis_index, chainage):
    """How heights of a group were levelled: arm (n,) and distance from the origin, metres (n,), of each station, and
    the index of its height unknown (n,).

    ``axes``: core Axis objects of the group; ``axis_index``: of each station into these. Axes whose ends meet within 10
    m start from the meeting point; the others from their first vertex, with a height unknown each.
    """
    origins, datum = _origins(axes)
    along = chainage - np.array(origins)[axis_index]
    # Stations on both sides of the origin were levelled in two directions: nothing is shared.
    arms = 2 * axis_index + (along < 0)
    return arms, np.abs(along), np.array(datum)[axis_index]


def _origins(axes):
    """Chainage of each axis' levelling origin, and the number of its datum."""
    first = [axis.vertex_chainages[0] for axis in axes]
    best = _most_meeting(axes) if len(axes) > 1 else {}
    if len(best) < 2:
        best = {0: first[0]}
    origins, datum, number = [], [], 0
    for k, chainage in enumerate(first):
        number += k not in best
        origins.append(best.get(k, chainage))
        datum.append(0 if k in best else number)
    return origins, datum


def _most_meeting(axes):
    """{axis: chainage of its end there} of the end at which most axes meet, the first of several."""
    ends = [(k, s) for k, axis in enumerate(axes) for s in axis.vertex_chainages[[0, -1]].tolist()]
    lat, lon = (np.array([getattr(axis.line, name)[[0, -1]] for axis in axes]).ravel() for name in ("lat", "lon"))
    near = [[] for _ in ends]
    for end, other in pairs_that_meet(foot_and_normal(lat, lon, axes[0].line.ellipsoid)[0]):
        near[end].append(other)
        near[other].append(end)
    best = {}
    for (k, s), others in zip(ends, near):
        meeting = {k: s}
        for other in sorted(others):
            meeting.setdefault(*ends[other])
        if len(meeting) > len(best):
            best = meeting
    return best
