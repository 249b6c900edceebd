"""Surveys matched and compared: changes of every station and survey, what is common to an axis, rates."""

from dataclasses import dataclass, replace
from functools import cached_property
from typing import Optional

import numpy as np

from ..boundary.cancel import check_cancel
from ..core.comparison import (
    DAYS_PER_YEAR,
    CommonMotion,
    Congruency,
    change,
    common_motion,
    congruency,
    rates,
    verdicts,
)
from ..core.errors import InputError
from ..core.matching import matched_by_name, matched_by_place, name_key
from ..core.row_ranges import rows_of_each
from ..language.translation import tr
from .quantity import HEIGHTS, Quantity, of_line
from .survey import check_names
from .survey_accuracy import change_covariance

MATCH_METRES = 0.5


@dataclass(frozen=True)
class AxisMotion:
    """What one axis did from the first survey to survey ``number``: ``rows`` of the first survey, in the order of
    their chainage; ``motion`` and ``congruency``, or None; ``judged``: whether it is known of both surveys what their
    heights share, without which levelling alone invents a shift and a tilt.
    """

    axis: str
    number: int
    rows: np.ndarray
    motion: Optional[CommonMotion]
    congruency: Optional[Congruency]
    judged: bool

    @property
    def told(self):
        """The common motion where it can be told, else None."""
        return self.motion if self.motion is not None and self.motion.told else None


@dataclass(frozen=True)
class Comparison:
    """All surveys against the first, of one quantity ``what``. Arrays (n, k) by station of the first survey and survey,
    metres, NaN where not found: ``value``, ``sd``, ``change`` (NaN for the first), ``sd_change``, ``common``,
    ``bending``, ``sd_bending``, ``moved`` (1 or -1 where a station's run of neighbours has moved as a whole, else 0);
    ``unmatched``: (survey, row index, reason) in order; ``farthest``: greatest distance along the axis between matched
    readings; ``latest``: number of the latest survey that has each station, 0 where none but the first has (n,)."""

    what: Quantity
    surveys: list
    value: np.ndarray
    sd: np.ndarray
    change: np.ndarray
    sd_change: np.ndarray
    common: np.ndarray
    bending: np.ndarray
    sd_bending: np.ndarray
    moved: np.ndarray
    motions: list
    unmatched: list
    farthest: float
    latest: np.ndarray

    @property
    def first(self):
        return self.surveys[0]

    @cached_property
    def axes(self):
        """Names of the axes in their order."""
        return list(dict.fromkeys(self.first.axis.tolist()))

    @cached_property
    def years(self):
        """Years since the first survey (k,), NaN without dates."""
        if not all(survey.day for survey in self.surveys):
            return np.full(len(self.surveys), np.nan)
        return np.array([(survey.day - self.first.day).days / DAYS_PER_YEAR for survey in self.surveys])

    def of_latest(self, values):
        """From (n, k), the value of each station's latest survey; NaN where no later survey has it."""
        picked = np.take_along_axis(values, self.latest[:, None], axis=1)[:, 0]
        return np.where(self.latest > 0, picked, np.nan)

    @cached_property
    def rates(self):
        """Rate of each station, metres a year, and its standard deviation."""
        return rates(self.years, self.value, self.sd)

    @cached_property
    def verdicts(self):
        """(n, k) verdicts on the changes."""
        return verdicts(self.change, self.sd_change, words=(self.what.up, self.what.down))

    @cached_property
    def bend_verdicts(self):
        return verdicts(self.bending, self.sd_bending, self.moved, (self.what.up, self.what.down))


class _Matcher:
    """Finds the stations of the first of ``surveys`` in the others, ``by`` name, or by place within ``tolerance``
    metres."""

    def __init__(self, surveys, by, tolerance):
        self._by, self._tolerance = by, tolerance
        self._keys = [list(zip(survey.axis.tolist(), map(name_key, survey.station))) for survey in surveys]
        index = {axis: k for k, axis in enumerate(dict.fromkeys(axis for part in self._keys for axis, _ in part))}
        self._places = [
            (np.array([index[axis] for axis, _ in part], int), survey.chainage, survey.offset)
            for part, survey in zip(self._keys, surveys)
        ]

    def pairs(self, rows, number, others):
        """Which of the ``rows`` of the first survey and of the ``others`` of survey ``number`` are one station: rows of
        both."""
        if self._by == "name":
            found = matched_by_name([self._keys[0][k] for k in rows], [self._keys[number][k] for k in others])
        else:
            found = matched_by_place(
                tuple(one[rows] for one in self._places[0]),
                tuple(one[others] for one in self._places[number]),
                self._tolerance,
            )
        return rows[found[:, 0]], others[found[:, 1]]

    def unread(self, surveys, partner):
        """(rows of the first survey, rows of the other) for each later survey: stations that both have, one of them
        without a height."""
        for number, survey in enumerate(surveys[1:], 1):
            rows = np.flatnonzero(partner[:, number] < 0)
            others = np.setdiff1d(np.arange(len(survey)), partner[:, number])
            if self._by != "name":
                rows, others = (
                    rows[np.isfinite(surveys[0].chainage[rows])],
                    others[np.isfinite(survey.chainage[others])],
                )
            yield self.pairs(rows, number, others)


def _matches(surveys, by, matcher, feedback):
    """For each later survey the pairs (rows of the first, rows of it) that have heights."""
    if by == "name":
        for survey in surveys:
            check_names(survey)
    else:
        for survey in surveys:
            lost = np.flatnonzero(np.isfinite(survey.height) & ~np.isfinite(survey.chainage))
            if len(lost):
                raise InputError(
                    tr("Layer '{}', row {}: there is no chainage to match by.").format(survey.name, lost[0] + 1)
                )
    used = [np.flatnonzero(np.isfinite(survey.height)) for survey in surveys]
    for number in range(1, len(surveys)):
        pairs = matcher.pairs(used[0], number, used[number])
        if not len(pairs[0]):
            raise InputError(
                tr(
                    "No station of layer '{}' is found in layer '{}'; check axis, chainage and the matching tolerance, "
                    "or match by name."
                ).format(surveys[number].name, surveys[0].name)
            )
        yield number, *pairs


@dataclass(frozen=True)
class _Asked:
    """How the common movement is separated: ``shift``: robust, mean, none; ``tilt``; ``origin`` of the levelling,
    metres."""

    shift: str
    tilt: bool
    origin: float


def compared(surveys, *, by, tolerance, shift, tilt, origin, feedback):
    """Comparisons of the heights and of the line, None where it was not asked for, of surveys, the first of them the
    one compared with. ``tolerance``: metres; ``shift``: robust, mean, none; ``origin``: chainage where the levelling
    began, metres."""
    partner = np.full((len(surveys[0]), len(surveys)), -1)
    matcher = _Matcher(surveys, by, tolerance)
    for number, rows, others in _matches(surveys, by, matcher, feedback):
        partner[rows, number] = others
    unmatched = _unmatched(surveys, partner, list(matcher.unread(surveys, partner)))
    asked = _Asked(shift, tilt, origin)
    line = None
    if surveys[0].line is not None:
        what = of_line(any(survey.own_line for survey in surveys))
        # Lines of their own turn against each other whether anything moved or not.
        turned = replace(asked, tilt=tilt or what.own_lines)
        line = _comparison(what, surveys, [survey.line for survey in surveys], partner, unmatched, turned, feedback)
    heights = [survey.heights for survey in surveys]
    return _comparison(HEIGHTS, surveys, heights, partner, unmatched, asked, feedback), line


def _unmatched(surveys, partner, unread):
    """(survey, row, reason) of the readings without a partner, and the greatest distance of two partners, metres.
    ``unread``: of each later survey, stations that both have, one of them without a height: see _Matcher."""
    first, farthest = surveys[0], 0.0
    found = [(0, int(row), tr("no height in this survey")) for row in np.flatnonzero(np.isnan(first.height))]
    for number, (survey, (known, there)) in enumerate(zip(surveys[1:], unread), 1):
        rows = np.flatnonzero(partner[:, number] >= 0)
        others = partner[rows, number]
        apart = np.abs(first.chainage[rows] - survey.chainage[others])
        farthest = max(farthest, float(np.nanmax(apart)) if np.any(np.isfinite(apart)) else 0.0)
        # A station that is there and was not read is told once, where it has no height.
        missing = np.setdiff1d(np.flatnonzero(np.isfinite(first.height)), np.union1d(rows, known))
        found += [(0, int(row), tr("not in survey {}").format(survey.label)) for row in missing]
        unread_first = there[np.isfinite(survey.height[there])]
        extra = np.setdiff1d(np.arange(len(survey)), np.union1d(others, unread_first))
        found += [
            (
                number,
                int(row),
                tr("not in the first survey, {}").format(first.label)
                if np.isfinite(survey.height[row])
                else tr("no height in this survey"),
            )
            for row in extra
        ]
    return found, farthest


def _comparison(what, surveys, readings, partner, unmatched, asked, feedback):
    """The Comparison of one Quantity. ``readings``: of each survey; ``partner`` (n, k): row of each station of the
    first survey in the others, -1 for none; ``unmatched``: see _unmatched."""
    first, shape = surveys[0], partner.shape
    value, sd = np.full(shape, np.nan), np.full(shape, np.nan)
    value[:, 0] = readings[0].value
    # By the stations' own deviations nobody can judge a change that holds what two lines have done.
    sd[:, 0] = np.nan if what.own_lines else readings[0].sd
    for number in range(1, len(surveys)):
        rows = np.flatnonzero(partner[:, number] >= 0)
        value[rows, number] = readings[number].value[partner[rows, number]]
        sd[rows, number] = np.nan if what.own_lines else readings[number].sd[partner[rows, number]]
    changes, deviations = change(value[:, :1], value, sd[:, :1], sd)
    changes[:, 0] = np.nan
    deviations[:, 0] = np.nan
    common, bending, sd_bending = (np.full(shape, np.nan) for _ in range(3))
    moved = np.zeros(shape)
    motions = []
    for axis, own in rows_of_each(first.axis.tolist()).items():
        own = own[np.argsort(first.chainage[own], kind="stable")]
        for number in range(1, len(surveys)):
            check_cancel(feedback)
            rows = own[np.isfinite(changes[own, number])]
            accuracies = readings[0].accuracy, readings[number].accuracy
            pair = rows, partner[rows, number]
            one = _axis_motion(axis, first, number, accuracies, pair, changes[rows, number], asked)
            motions.append(one)
            if one.told is not None:
                bending[rows, number], sd_bending[rows, number] = one.motion.rest, one.motion.sd_rest
                common[rows, number] = changes[rows, number] - one.motion.rest
                moved[rows, number] = one.motion.moved
    found = (value, sd, changes, deviations, common, bending, sd_bending, moved, motions)
    latest = np.max(np.where(partner >= 0, np.arange(len(surveys)), 0), axis=1)
    return Comparison(what, surveys, *found, *unmatched, latest)


def _axis_motion(axis, first, number, accuracies, pair, changes, asked):
    """AxisMotion of the matched stations of two surveys; ``accuracies``: of the two; ``pair``: their rows in each;
    ``changes``: theirs, metres."""
    rows, others = pair
    position = first.chainage[rows]
    if asked.tilt and asked.shift != "none" and not np.all(np.isfinite(position)):
        raise InputError(tr("Layer '{}': TILT needs the chainage of every station.").format(first.name), keys=("TILT",))
    covariance = change_covariance(accuracies[0], rows, accuracies[1], others, position - asked.origin)
    judged = covariance is not None and accuracies[0].shares and accuracies[1].shares
    motion = None
    if asked.shift != "none":
        place = position if asked.tilt else np.zeros(len(rows))
        motion = common_motion(place, changes, covariance, tilt=asked.tilt, robust=asked.shift == "robust")
    whole = congruency(changes, covariance) if judged and len(rows) else None
    return AxisMotion(axis, number, rows, motion, whole, judged)
