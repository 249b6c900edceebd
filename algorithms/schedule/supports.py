"""What an adjustment schedule begins with: supports with their residuals, flags and decisions."""

from dataclasses import dataclass

import numpy as np

from ..boundary.input_fields import named_field
from ..boundary.points import read_points
from ..boundary.tables import read_table
from ..core.errors import InputError
from ..core.matching import name_key
from ..core.station_notation import notation, station_texts
from ..language.decision_words import ACCEPT, MEASURE_AGAIN, MOVE, READING_ERROR
from ..language.number_text import listed
from ..language.translation import tr

# What a decision means: '' for taken in although flagged, else the action.
MEANINGS = {
    ACCEPT: "keep",
    MOVE: "",
    MEASURE_AGAIN: "measure again",
    READING_ERROR: "left out",
    "blunder": "left out",
    "leave out": "left out",
}
_NUMBERS = ("residual", "design_h", "chainage", "offset")
_MOVED_TOGETHER = 3
_TEXTS = ("axis", "station", "flag", "status")


@dataclass(frozen=True)
class Supports:
    """Supports as read: ``points``; ``residual``, ``design``: metres (n,), NaN where there is none; ``chainage``,
    ``offset`` in their unit as read; ``axis``, ``station``: texts; ``action``: '' where one is to be computed, else
    why there is none; ``reason``: texts; ``tested``: False where nothing tells which readings are blunders."""

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

    def __len__(self):
        return len(self.residual)

    def named(self, row):
        """'north arm 1+650' for a sentence."""
        return " ".join(filter(None, (self.axis[row], self.station[row] or tr("row {}").format(row + 1))))


def read_supports(asked, run_units):
    """Read STATIONS and DECISIONS; InputError for stations without residuals and for decisions that cannot be
    understood."""
    source = asked.source("STATIONS")
    index = {key: named_field(source, "", "", (key,)) for key in (*_NUMBERS, *_TEXTS)}
    if index["residual"] < 0:
        raise InputError(
            tr("Layer '{}' has no field 'residual'; run 'Design heights and residuals' first.").format(
                source.sourceName()
            )
        )
    points = read_points(
        source, asked.feedback, {key: index[key] for key in _NUMBERS}, {key: index[key] for key in _TEXTS}
    )
    columns, unit = points.columns, run_units.height
    chainage = columns["chainage"] if index["chainage"] >= 0 else _chainages(columns["station"])
    station = columns["station"]
    if index["station"] < 0:
        station = station_texts(columns["chainage"], run_units.chainage_name)
    supports = Supports(
        source,
        points,
        columns["residual"] * unit,
        columns["design_h"] * unit,
        chainage,
        columns["offset"],
        columns["axis"],
        station,
        np.full(len(points), "", dtype=object),
        np.full(len(points), "", dtype=object),
        index["flag"] >= 0 or any(asked.given(key) for key in ("TESTED", "DECISIONS")),
    )
    _take_flags(asked, supports, columns)
    decided = _decisions(asked, supports)
    _leave_out(supports, columns, decided)
    if not np.any(np.isfinite(supports.residual)):
        raise InputError(
            tr("Layer '{}': no station has a residual; there is nothing to schedule.").format(source.sourceName())
        )
    return supports


def _take_flags(asked, supports, columns):
    """Put the flags of TESTED into ``columns``, by axis and station. Three and more flagged neighbours are a stretch
    that has moved and is to be adjusted; a station that is flagged alone or with one neighbour is a doubted reading.
    """
    source = asked.optional_source("TESTED")
    if source is None:
        return
    index = {key: named_field(source, "", "", (key,)) for key in ("axis", "station", "flag")}
    missing = [key for key in ("station", "flag") if index[key] < 0]
    if missing:
        raise InputError(
            tr("Layer '{}' (TESTED) holds no tested stations: it lacks the field {}.").format(
                source.sourceName(), listed(missing)
            ),
            keys=("TESTED",),
        )
    rows = read_table(source, {}, index, asked.feedback).columns
    flags = {(axis, name_key(station)): flag for axis, station, flag in zip(*(rows[k] for k in index))}
    keys = [(axis, name_key(station)) for axis, station in zip(supports.axis, supports.station)]
    if not any(key in flags for key in keys):
        raise InputError(
            tr("No station of layer '{}' (TESTED) is one of layer '{}'; axis and station must agree.").format(
                source.sourceName(), supports.points.name
            ),
            keys=("TESTED",),
        )
    flagged = np.array([flags.get(key, "").casefold() == "suspected blunder" for key in keys])
    order = np.lexsort((supports.chainage, np.array(supports.axis, dtype=object).astype(str)))
    order = order[np.isfinite(supports.residual[order])]
    together, run = set(), []
    for row in [*order.tolist(), None]:
        if run and (row is None or not flagged[row] or supports.axis[row] != supports.axis[run[-1]]):
            together.update(run if len(run) >= _MOVED_TOGETHER else ())
            run = []
        if row is not None and flagged[row]:
            run.append(row)
    for row in np.flatnonzero(flagged).tolist():
        columns["flag"][row] = "" if row in together else "suspected blunder"


def _chainages(stations):
    """Chainages read from station notation, NaN where it is unreadable."""
    values = []
    for text in stations:
        try:
            values.append(notation(text)[0])
        except InputError:
            values.append(np.nan)
    return np.array(values, float)


def _leave_out(supports, columns, decided):
    """Fill the actions of supports that no movement is computed for; a decision goes before a flag."""
    for row in range(len(supports)):
        decision, note = decided.get((supports.axis[row], name_key(supports.station[row])), (None, ""))
        meaning = None if decision is None else MEANINGS[decision]
        told = tr("decision: {}").format(decision) + (f", {note}" if note else "") if decision else ""
        if columns["status"][row] == "off axis":
            action, reason = "off axis", ""
        elif not np.isfinite(supports.residual[row]):
            action, reason = ("measure again" if meaning == "measure again" else "no height"), told
        elif meaning is not None:
            action, reason = meaning, told
        elif columns["flag"][row].casefold() in ("suspected blunder", "blunder"):
            action, reason = "left out", tr("flag: {}").format(columns["flag"][row])
        elif "measure again" in (columns["flag"][row].casefold(), columns["status"][row].casefold()):
            action, reason = "measure again", tr("flagged")
        else:
            action, reason = "", ""
        supports.action[row], supports.reason[row] = action, reason


def _decisions(asked, supports):
    """{(axis, station key): (decision, note)} of DECISIONS; {} without."""
    source = asked.optional_source("DECISIONS")
    if source is None:
        return {}
    index = {key: named_field(source, "", "", (key,)) for key in ("axis", "station", "decision", "note")}
    missing = [key for key in ("station", "decision") if index[key] < 0]
    if missing:
        raise InputError(
            tr("Layer '{}' holds no decisions: it lacks the field {}.").format(source.sourceName(), listed(missing))
        )
    columns = read_table(source, {}, index, asked.feedback).columns
    known = {(axis, name_key(station)) for axis, station in zip(supports.axis, supports.station)}
    by_name = {}
    for axis, key in known:
        by_name.setdefault(key, []).append(axis)
    found, strangers = {}, []
    for row, (axis, station, text, note) in enumerate(
        zip(*(columns[key] for key in ("axis", "station", "decision", "note"))), 1
    ):
        decision = text.casefold()
        if not decision:
            continue
        if decision not in MEANINGS:
            raise InputError(
                tr("Layer '{}', field 'decision', row {}: '{}' is not known; known are {}.").format(
                    source.sourceName(), row, text, ", ".join(MEANINGS)
                )
            )
        key = name_key(station)
        if not axis and len(by_name.get(key, ())) > 1:
            raise InputError(
                tr("Layer '{}', row {}: station {} is on several axes ({}); name the axis.").format(
                    source.sourceName(), row, station, listed(sorted(by_name[key]))
                )
            )
        axis = axis or next(iter(by_name.get(key, ())), "")
        if (axis, key) not in known:
            strangers.append(f"{axis} {station}".strip())
            continue
        if (axis, key) in found and found[axis, key][0] != decision:
            asked.warn(
                tr("Layer '{}' has two decisions for {} {}; the later one, '{}', counts.").format(
                    source.sourceName(), axis, station, text
                )
            )
        found[axis, key] = (decision, note)
    if strangers:
        asked.warn(
            tr("Layer '{}' decides about stations that layer '{}' does not have: {}.").format(
                source.sourceName(), supports.source.sourceName(), listed(strangers)
            )
        )
    return found


def checked_positive(asked, key, unit):
    """An optional number as metres; InputError where it is zero or below, None where it is empty."""
    value = asked.number(key)
    if value is not None and not value > 0.0:
        raise InputError(tr("{} is {:g}; it must be greater than zero, or empty.").format(key, value), keys=(key,))
    return None if value is None else value * unit
