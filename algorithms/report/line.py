"""What a review report reads and finds of the line: its verdict, stretches beside it, and heights and line together."""

from dataclasses import dataclass
from functools import cached_property
from typing import Optional

import numpy as np

from ..core.conformance import Figures, Verdict, conformance, figures, radial_conformance, verdict
from ..core.errors import InputError
from ..core.moved_stretches import moved_stretches
from ..core.residual_accuracy import control_shares, residual_deviations
from ..core.residuals import ASIDE, sides
from ..core.units import metres_per
from ..language.height_text import Amounts, amounts_within
from ..language.number_text import plain_text
from ..language.translation import tr
from ..structure.reviewed_stations import recorded_tolerance

# The chord's ends are stations at these chainages, metres.
_SAME_PLACE = 0.01


@dataclass(frozen=True)
class ReviewedLine:
    """The line of the reviewed stations, in their order; metres, arrays (n,), NaN where there is none. ``lateral``:
    positive right; ``side``: words (n,), '' for none; ``sd``: of a lateral position, NaN where not known; ``radial``:
    the tolerance of heights and line together, None without one."""

    lateral: np.ndarray
    side: np.ndarray
    tolerance: np.ndarray
    sd: float
    sd_source: str
    radial: Optional[float]


def read_line(asked, stations, order, axis, record, tested):
    """ReviewedLine of ReviewedStations in an ``order``, None where none was judged by line. ``axis``: of each, in that
    order; ``record``, ``tested``: of the runs that made and that tested them. InputError for numbers that need a line
    where there is none, or that are not above zero."""
    unit, typed = stations.units.height, {key: asked.number(key) for key in ("SIGMA_LINE", "RADIAL_TOLERANCE")}
    lateral = stations.lateral[order]
    for key, value in typed.items():
        if value is not None and not value > 0.0:
            raise InputError(
                tr("{} is {}; it must be greater than zero, or empty.").format(key, plain_text(value)), keys=(key,)
            )
        if value is not None and not np.any(np.isfinite(lateral)):
            raise InputError(
                tr(
                    "{} is given, but layer '{}' has no lateral departures (fields 'lateral' and 'side'); run 'Design "
                    "heights and residuals' with LINE first."
                ).format(key, stations.name),
                keys=(key,),
            )
    if not np.any(np.isfinite(lateral)):
        return None
    limits = {name: recorded_tolerance(record, name, stations.units, "line_tolerance") for name in set(axis)}
    tolerance = np.array([np.nan if limits[name] is None else limits[name] for name in axis], float)
    given = np.array([stations.side[k] for k in order.tolist()], dtype=object)
    side = np.where(given != "", given, sides(lateral, tolerance).astype(object))
    radial = typed["RADIAL_TOLERANCE"]
    sd, source = _sigma(typed["SIGMA_LINE"], tested, stations.units)
    return ReviewedLine(lateral, side, tolerance, sd, source, None if radial is None else radial * unit)


def _sigma(typed, tested, units):
    """Standard deviation of a lateral position, metres, and where it is from; NaN and '' where it is not known."""
    if typed is not None:
        return typed * units.height, tr("as stated for this report")
    value = tested.parameter_number("SIGMA_LINE")
    if value is not None and value > 0.0:
        unit = metres_per(tested.height_unit or units.height_name)
        return value * unit, tr("as stated for the run that tested the stations")
    return np.nan, ""


class WithProbability:
    """``probability``: of each station, NaN where it is not known (n,)."""

    @cached_property
    def has_probability(self):
        """Whether any station has one; found once, as it is asked for at every row of a table."""
        return bool(np.any(np.isfinite(self.probability)))


@dataclass(frozen=True)
class Together(WithProbability):
    """Heights and line of stations that have both: ``departure`` \u221a(v\u00b2 + l\u00b2), metres (n,)."""

    departure: np.ndarray
    verdict: Verdict
    probability: np.ndarray
    all: Figures


@dataclass(frozen=True)
class LineFindings(WithProbability):
    """As Findings, of the line. ``kinds``: what the axes are judged by; ``through_stations``: whether the errors of the
    stations that a chord runs through are in the probabilities; ``together``: None without a radial tolerance."""

    verdict: Verdict
    probability: np.ndarray
    moved: list
    all: Figures
    amounts: Amounts
    kinds: tuple
    through_stations: bool
    together: Optional[Together]


def departed_in_line(one, number, suspected):
    """Stretches of neighbours that stand beside the line together, index arrays; without a tolerance it is the test
    that says which depart. ``number``: of each station's axis (n,); ``suspected``: mask (n,) of blunders in plan."""
    line = one.line
    if line is None:
        return []
    beyond = np.isin(line.side.astype(str), ASIDE) | (suspected & np.isnan(line.tolerance))
    return moved_stretches(number, one.chainage, line.lateral, beyond)


def line_findings(one, moved, decided, spread, doubt):
    """LineFindings of Reviewed stations, None without a line. ``moved``: as ``departed_in_line`` gives them;
    ``decided``: masks (n,) of the positions that are doubted, by decision or by a test of the line, and of those that
    are accepted; ``spread``: standard deviations of the residuals, metres (n,); ``doubt``: mask (n,) of heights that
    are not believed."""
    line = one.line
    if line is None:
        return None
    doubted, accepted = decided
    beside = np.isin(line.side.astype(str), ASIDE)
    deviations, through = _deviations(one)
    probability = conformance(line.lateral, line.tolerance, deviations)
    # A decision that a height is wrong says nothing against a position that is within.
    said = verdict(line.lateral, line.side, probability, doubtful=doubted & beside, accepted=accepted)
    sizes = line.tolerance if np.isnan(line.sd) else np.array([line.sd])
    size = float(np.nanmin(sizes)) if np.any(np.isfinite(sizes)) else None
    return LineFindings(
        said,
        probability,
        moved,
        figures(line.lateral),
        amounts_within(one.units.height_name, size),
        tuple(dict.fromkeys(filter(None, (one.record.axis(name).get("line") for name in one.axes)))),
        through,
        None if line.radial is None else _together(one, deviations, spread, doubt | doubted, accepted),
    )


def _together(one, deviations, spread, doubt, accepted):
    line = one.line
    departure = np.where(one.status == "off axis", np.nan, np.hypot(one.residual, line.lateral))
    # What equals the tolerance to the last digit of a drawing is within.
    beyond = departure > line.radial + 1e-9
    status = np.where(np.isfinite(departure), np.where(beyond, "beyond", "within"), "")
    probability = radial_conformance(one.residual, line.lateral, line.radial, spread, deviations)
    said = verdict(departure, status, probability, doubtful=doubt & beyond, accepted=accepted)
    return Together(departure, said, probability, figures(departure))


def _deviations(one):
    """Standard deviations of the lateral departures, metres (n,), NaN where not known, and whether those of a chord's
    ends are in them."""
    found, any_chord = np.full(len(one), one.line.sd), False
    if np.isnan(one.line.sd):
        return found, False
    for axis in one.axes:
        ends = one.record.axis(axis).get("line_ends")
        rows = one.rows(axis)
        rows = rows[np.isfinite(one.line.lateral[rows])]
        at = [_station(one, rows, end) for end in ends] if isinstance(ends, list) and len(ends) == 2 else []
        if len(at) != 2 or min(at) < 0 or at[0] == at[1]:
            continue
        any_chord = True
        shares = control_shares(one.chainage[rows], one.chainage[rows[at]])
        found[rows] = residual_deviations(np.full(len(rows), one.line.sd**2), np.array(at), shares)
    return found, any_chord


def _station(one, rows, chainage):
    """Position in ``rows`` of the station at a recorded chainage, -1 where there is none: of several the one on the
    line itself."""
    if not isinstance(chainage, (int, float)) or not len(rows):
        return -1
    away = np.abs(one.chainage[rows] - chainage * one.units.chainage)
    nearest = int(np.lexsort((np.abs(one.line.lateral[rows]), np.round(away, 3)))[0])
    return nearest if away[nearest] <= _SAME_PLACE else -1
