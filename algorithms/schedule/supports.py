"""What an adjustment schedule begins with: supports with their residuals, flags and decisions."""

from dataclasses import dataclass, replace
from typing import Optional

import numpy as np

from ..core.errors import InputError
from ..core.moved_stretches import in_stretch, moved_stretches
from ..core.row_ranges import rows_of_each
from ..language.decision_words import ACCEPT, MEASURE_AGAIN, MOVE, READING_ERROR, SUSPECTED, flag_of, line_doubt
from ..language.number_text import plain_text
from ..language.shown_stations import shown_station
from ..language.stored_words import stored_text
from ..language.translation import tr
from ..structure.reviewed_stations import read_decisions, read_reviewed_stations, read_tested, suspicions
from .unit_doubt import check_units

# What a decision means: '' for taken in although flagged, else the action.
MEANINGS = {ACCEPT: "keep", MOVE: "", MEASURE_AGAIN: "measure again", READING_ERROR: "left out"}


@dataclass(frozen=True)
class Supports:
    """Supports as read: ``points``; ``residual``, ``design``: metres (n,), NaN where there is none; ``chainage``,
    ``offset`` in their unit as read; ``axis``, ``station``: texts; ``action``: '' where one is to be computed, else
    why there is none; ``reason``: texts; ``tested``: False where nothing tells which readings are blunders;
    ``moved``: sentences on stretches that have moved and on flags that are too many to be blunders. ``line``: the same
    supports sideways where that was asked for, else None; there ``residual`` is the lateral departure, positive
    right, and ``alone`` the rows that a flag of the line holds and none of the height."""

    source: object
    points: object
    residual: np.ndarray
    design: np.ndarray
    chainage: np.ndarray
    offset: np.ndarray
    axis: list
    station: list
    action: np.ndarray
    reason: np.ndarray
    tested: bool = True
    moved: tuple = ()
    alone: tuple = ()
    line: Optional["Supports"] = None

    def __len__(self):
        return len(self.residual)

    def named(self, row):
        """'left rail 1+650' for a sentence."""
        return " ".join(
            filter(None, (self.axis[row], shown_station(self.station[row]) or tr("row {}").format(row + 1)))
        )

    def cell(self, row):
        """The station for a table on a page."""
        return shown_station(self.station[row]) or str(row + 1)


def read_supports(asked, run_units):
    """Read STATIONS, TESTED and DECISIONS; InputError for stations without residuals and for decisions that cannot be
    understood."""
    stations = read_reviewed_stations(asked, run_units, asked.record_of("STATIONS"))
    check_units(asked, stations, run_units)
    tested, decided = read_tested(asked, stations), read_decisions(asked, stations)
    flags = _Flags(stations, tested, stations.residual)
    supports = Supports(
        stations.source,
        stations.points,
        stations.residual,
        stations.design,
        stations.chainage,
        stations.offset,
        stations.axis,
        stations.station,
        np.full(len(stations), "", dtype=object),
        np.full(len(stations), "", dtype=object),
        tested.known or decided is not None,
        flags.sentences(),
    )
    _leave_out(supports, stations.status, flags.held, decided or {}, "no height")
    if not np.any(np.isfinite(supports.residual)):
        raise InputError(
            tr("Layer '{}': no station has a residual; there is nothing to schedule.").format(stations.name)
        )
    return (
        supports
        if asked.choice("LINE") != "lateral"
        else replace(supports, line=_sideways(supports, stations, flags, tested.line, decided))
    )


def _sideways(supports, stations, flags, tested, decided):
    """The supports as they stand beside the line. What is doubted or decided holds for both: nobody moves sideways what
    is to be measured again. What ``tested``, StationFlags of the line, doubts holds sideways alone."""
    if not np.any(np.isfinite(stations.lateral)):
        raise InputError(
            tr(
                "Layer '{}' has no lateral departures (fields 'lateral' and 'side'); run 'Design heights and "
                "residuals' with LINE first and give its output."
            ).format(stations.name),
            keys=("LINE",),
        )
    empty = np.full((2, len(stations)), "", dtype=object)
    in_line = _Flags(stations, tested, stations.lateral)
    line = replace(
        supports,
        residual=stations.lateral,
        action=empty[0],
        reason=empty[1],
        tested=tested.known,
        moved=in_line.sentences(),
    )
    held = [upwards or sideways for upwards, sideways in zip(flags.held, in_line.held)]
    _leave_out(line, stations.status, held, decided or {}, "no line")
    alone = tuple(
        row
        for row, (upwards, sideways) in enumerate(zip(flags.held, in_line.held))
        if sideways == SUSPECTED and not upwards and line.action[row] == "left out" and row not in (decided or {})
    )
    for row in alone:
        line.reason[row] = tr("flag: {}").format(line_doubt())
    # 'left out' would be read as left.
    line.action[line.action == "left out"] = "set aside"
    return replace(line, alone=alone)


class _Flags:
    """Which flags hold. Neighbours that are suspected together are a stretch that has moved and is to be adjusted, as
    are all of an axis where more than a tenth of it is suspected; one alone or two are doubted readings.
    ``departures``: residuals or lateral departures (n,), which ``tested`` speaks of."""

    def __init__(self, stations, tested, departures):
        self.stations, suspected = stations, tested.suspected
        number = stations.axis_numbers
        # A row without a chainage is nobody's neighbour.
        self.stretches = moved_stretches(number, stations.chainage, departures, suspected)
        held, checked = suspicions(number, tested.w, departures, suspected)
        lifted = suspected & ~held
        self.many = [
            (stations.axis[rows[0]], int(suspected[rows].sum()), int(checked[rows].sum()))
            for rows in rows_of_each(number.tolist()).values()
            if np.any(lifted[rows])
        ]
        lifted |= in_stretch(len(stations), self.stretches)
        self.held = ["" if lifted[row] and flag == SUSPECTED else flag for row, flag in enumerate(tested.flag)]

    def sentences(self):
        """What is told of it, a tuple."""
        said = []
        for rows in self.stretches:
            first, last = (
                shown_station(self.stations.station[row]) or tr("row {}").format(row + 1) for row in rows[[0, -1]]
            )
            said.append(
                tr(
                    "{}{} to {}: {} neighbours are flagged on one side; a stretch that has moved, not blunders; it is "
                    "scheduled."
                ).format(_on(self.stations.axis[rows[0]]), first, last, len(rows))
            )
        for axis, flagged, tested in self.many:
            said.append(
                tr(
                    "{}{} of {} stations are flagged, more than a tenth: the structure has another shape than was "
                    "fitted, and these are not blunders; they are scheduled."
                ).format(_on(axis), flagged, tested)
            )
        return tuple(said)


def _on(axis):
    return tr("Axis '{}': ").format(axis) if axis else ""


def _leave_out(supports, statuses, flags, decided, unknown):
    """Fill the actions of supports that no movement is computed for; a decision goes before a flag. ``unknown``: the
    action where there is nothing to compute it from."""
    for row, (status, flag) in enumerate(zip(statuses, flags)):
        decision = decided.get(row)
        meaning = None if decision is None else MEANINGS[decision.word]
        told = ""
        if decision is not None:
            told = tr("decision: {}").format(stored_text("decision", decision.word)) + (
                f", {decision.note}" if decision.note else ""
            )
        if status == "off axis":
            action, reason = "off axis", ""
        elif not np.isfinite(supports.residual[row]):
            action, reason = ("measure again" if meaning == "measure again" else unknown), told
        elif meaning is not None:
            action, reason = meaning, told
        elif flag == SUSPECTED:
            action, reason = "left out", tr("flag: {}").format(stored_text("flag", flag))
        elif MEASURE_AGAIN in (flag, flag_of(status)):
            action, reason = "measure again", tr("flagged")
        else:
            action, reason = "", ""
        supports.action[row], supports.reason[row] = action, reason


def checked_positive(asked, key, unit):
    """An optional number as metres; InputError where it is zero or below, None where it is empty."""
    value = asked.number(key)
    if value is not None and not value > 0.0:
        raise InputError(
            tr("{} is {}; it must be greater than zero, or empty.").format(key, plain_text(value)), keys=(key,)
        )
    return None if value is None else value * unit
