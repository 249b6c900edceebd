"""What a review report is written about: stations with residuals, flags and decisions, and the records of the runs."""

from dataclasses import dataclass

import numpy as np

from ..boundary.input_fields import named_field
from ..boundary.points import read_points
from ..boundary.tables import read_table
from ..core.errors import InputError
from ..core.matching import name_key
from ..core.residuals import statuses
from ..core.station_notation import station_texts
from ..core.units import metres_per
from ..entry.run_record import clean_record, recorded_number, recorded_unit
from ..language.decision_words import ACCEPT, MEASURE_AGAIN, READING_ERROR
from ..language.number_text import listed
from ..language.translation import tr
from ..language.units import Units

_NUMBERS = ("residual", "design_h", "flat_h", "chainage", "offset", "sd")
_TEXTS = ("axis", "station", "status", "date")
SUSPECTED = "suspected blunder"
# What others write for the same decisions.
_ALIKE = {
    "accepted": ACCEPT,
    "keep": ACCEPT,
    "blunder": READING_ERROR,
    "leave out": READING_ERROR,
    "left out": READING_ERROR,
}
REFERENCE_NUMBERS = (
    "number",
    "removed",
    "rms",
    "sd_h",
    "str_vert",
    "rng_vert",
    "str_lat",
    "rng_lat",
    "str_comb",
    "max_comb",
    "tan_lat",
    "tan_lon",
    "tan_chain",
    "tan_sd",
)
REFERENCE_TEXTS = ("name", "kind", "axes", "h_unit", "global_t", "tan_state", "record")
CURVATURE_NUMBERS = ("factor", "factor_lo", "factor_hi")
CURVATURE_TEXTS = ("axis", "verdict", "sentence", "record")


@dataclass(frozen=True)
class Reviewed:
    """Stations by axis and chainage; metres, arrays (n,), NaN where there is none; texts as lists (n,).

    ``points``: as read, in their own order; ``order``: their rows as they stand here; ``decided``: {row: (decision,
    note, by, at)}; ``record``: of the run that computed them; ``references``, ``curvatures``: rows as dicts.
    """

    points: object
    order: np.ndarray
    axis: list
    station: list
    chainage: np.ndarray
    offset: np.ndarray
    residual: np.ndarray
    design: np.ndarray
    flat: np.ndarray
    sd: np.ndarray
    sd_source: str
    tolerance: np.ndarray
    status: np.ndarray
    date: list
    w: np.ndarray
    suspected: np.ndarray
    decided: dict
    units: Units
    record: dict
    references: list
    curvatures: list
    has_tested: bool
    has_decisions: bool

    def __len__(self):
        return len(self.residual)

    @property
    def built(self):
        return self.design + self.residual

    @property
    def axes(self):
        """Names of the axes in their order."""
        return list(dict.fromkeys(self.axis))

    def rows(self, axis):
        """Indices of the stations on one axis, without those that are off every axis."""
        on = self.status != "off axis"
        return np.flatnonzero(np.array([name == axis for name in self.axis], bool) & on)

    def decision(self, row):
        return self.decided.get(row, ("", "", "", ""))[0]

    def named(self, row, *, alone=False):
        """'1+650 of north arm', or the station alone where there is one axis."""
        text = self.station[row] or tr("row {}").format(int(self.order[row]) + 1)
        alone = alone or len(self.axes) < 2 or not self.axis[row]
        return text if alone else tr("{} of {}").format(text, self.axis[row])


def read_reviewed(asked, record):
    """Read all inputs but the map's; ``record``: of the run that made STATIONS. InputError for stations without
    residuals.
    """
    source = asked.source("STATIONS")
    index = {key: named_field(source, "", "", (key,)) for key in (*_NUMBERS, *_TEXTS)}
    if index["residual"] < 0:
        raise InputError(
            tr(
                "Layer '{}' has no field 'residual'; run 'Design heights and residuals' first and give its output."
            ).format(source.sourceName())
        )
    record = record or _summary_record(asked)
    units = _units(asked, record)
    points = read_points(
        source, asked.feedback, {key: index[key] for key in _NUMBERS}, {key: index[key] for key in _TEXTS}
    )
    columns = points.columns
    if not np.any(np.isfinite(columns["residual"])):
        raise InputError(
            tr("Layer '{}': no station has a residual; there is nothing to review.").format(source.sourceName())
        )
    names = list(dict.fromkeys(columns["axis"]))
    number = np.array([names.index(name) for name in columns["axis"]], int)
    order = np.lexsort((columns["chainage"], number))
    station = columns["station"]
    if index["station"] < 0:
        known = index["chainage"] >= 0
        station = station_texts(columns["chainage"], units.chainage_name) if known else [""] * len(points)
    axis, station, date = (
        [column[k] for k in order.tolist()] for column in (columns["axis"], station, columns["date"])
    )
    residual, design, flat, sd = (
        columns[key][order] * units.height for key in ("residual", "design_h", "flat_h", "sd")
    )
    tolerance = _tolerances(asked, axis, record) * units.height
    status = _statuses(columns["status"], order, residual, tolerance)
    keys = _keys(axis, station)
    has_tested, w, suspected, tested = _tested(asked, keys, source.sourceName())
    sd, sd_source = _deviations(asked, units, sd, tested, source.sourceName())
    has_decisions, decided = _decisions(asked, keys, source.sourceName())
    return Reviewed(
        points,
        order,
        axis,
        station,
        columns["chainage"][order] * units.chainage,
        columns["offset"][order] * units.chainage,
        residual,
        design,
        flat,
        sd,
        sd_source,
        tolerance,
        status,
        date,
        w,
        suspected,
        decided,
        units,
        record,
        _rows(asked, "REFERENCE", "name", REFERENCE_NUMBERS, REFERENCE_TEXTS),
        _rows(asked, "CURVATURE", "verdict", CURVATURE_NUMBERS, CURVATURE_TEXTS),
        has_tested,
        has_decisions,
    )


def _units(asked, record):
    height, chainage = (asked.choice(key) for key in ("HEIGHT_UNIT", "CHAINAGE_UNIT"))
    height = height or recorded_unit(record, "height_name") or chainage or "metre"
    return Units(height, chainage or recorded_unit(record, "chainage_name") or height)


def _statuses(given, order, residual, tolerance):
    """Statuses as the run gave them; computed where the layer has none."""
    found = np.full(len(residual), "", dtype=object)
    for row, k in enumerate(order.tolist()):
        limit = None if np.isnan(tolerance[row]) else tolerance[row]
        found[row] = given[k] or str(statuses(residual[row : row + 1], limit)[0])
    return found


def _summary_record(asked):
    """The record in a summary: that of its first row with the axes of all rows."""
    rows = _rows(asked, "SUMMARY", "axis", (), ("record",))
    records = [row["record"] for row in rows if row["record"]]
    axes = {name: one for record in records for name, one in record["axes"].items()}
    return {**records[0], "axes": axes} if records else {}


def _tolerances(asked, axis, record):
    """Tolerance of each station in the unit of heights, NaN where none is known."""
    by_axis = {name: recorded_number(record, name, "tolerance") for name in set(axis)}
    if any(value is None for value in by_axis.values()):
        for row in _rows(asked, "SUMMARY", "axis", ("tolerance",), ("axis",)):
            if by_axis.get(row["axis"], 0) is None and np.isfinite(row["tolerance"]):
                by_axis[row["axis"]] = row["tolerance"]
    return np.array([np.nan if by_axis[name] is None else by_axis[name] for name in axis], float)


def _rows(asked, key, needed, numbers, texts):
    """Rows of an optional table as dicts, [] without it; its record, where asked for, as a dict."""
    source = asked.optional_source(key)
    if source is None:
        return []
    if named_field(source, "", "", (needed,)) < 0:
        raise InputError(
            tr("Layer '{}' ({}) lacks the field '{}'.").format(source.sourceName(), key, needed), keys=(key,)
        )
    columns = read_table(
        source,
        {name: named_field(source, "", "", (name,)) for name in numbers},
        {name: named_field(source, "", "", (name,)) for name in texts},
        asked.feedback,
    ).columns
    rows = [dict(zip(columns, values)) for values in zip(*columns.values())]
    for row in rows:
        row.update({name: float(row[name]) for name in numbers})
        if "record" in row:
            row["record"] = clean_record(row["record"])
    return rows


def _keys(axis, station):
    return [(name, name_key(text)) for name, text in zip(axis, station)]


def _places(keys):
    places = {}
    for row, key in enumerate(keys):
        places.setdefault(key, []).append(row)
    return places


def _tested(asked, keys, layer):
    """Whether there are tested stations, w (n,), suspected (n,), and the record of the run that tested them."""
    w, suspected = np.full(len(keys), np.nan), np.zeros(len(keys), bool)
    found = asked.optional_source("TESTED")
    if found is None:
        return False, w, suspected, {}
    rows = _rows(asked, "TESTED", "flag", ("w",), ("axis", "station", "flag"))
    places, strange = _places(keys), 0
    for row in rows:
        at = places.get((row["axis"], name_key(row["station"])), [])
        strange += not at
        for k in at:
            w[k] = row["w"]
            suspected[k] |= row["flag"].casefold() == SUSPECTED
    if strange == len(rows):
        raise InputError(
            tr("No station of layer '{}' (TESTED) is one of layer '{}'; axis and station must agree.").format(
                found.sourceName(), layer
            ),
            keys=("TESTED",),
        )
    if strange:
        asked.warn(
            tr("Layer '{}' (TESTED) has {} stations that layer '{}' does not have.").format(
                found.sourceName(), strange, layer
            )
        )
    return True, w, suspected, clean_record(asked.record_of("TESTED"))


def _deviations(asked, units, given, tested, layer):
    """Standard deviations (n,), metres, and where they come from, '' for nowhere."""
    typed = asked.number("SIGMA")
    if typed is not None and not typed > 0.0:
        raise InputError(tr("SIGMA is {:g}; it must be greater than zero, or empty.").format(typed), keys=("SIGMA",))
    if typed is None and np.any(np.isfinite(given)):
        bad = np.flatnonzero(given <= 0.0)
        if len(bad):
            raise InputError(
                tr("Layer '{}', field 'sd': a standard deviation is {:g}; it must be positive.").format(
                    layer, given[bad[0]] / units.height
                )
            )
        return given, tr("the stations' field 'sd'")
    if typed is not None:
        return np.full(len(given), typed * units.height), tr("as stated for this report")
    try:
        value = float(tested.get("parameters", {}).get("SIGMA", "nan"))
    except (TypeError, ValueError):
        value = float("nan")
    if value > 0.0 and np.isfinite(value):
        unit = recorded_unit(tested, "height_name") or units.height_name
        return np.full(len(given), value * metres_per(unit)), tr("as stated for the run that tested the stations")
    return np.full(len(given), np.nan), ""


def _decisions(asked, keys, layer):
    """Whether there are decisions, and {row: (decision, note, by, at)}; the later of two counts."""
    found = asked.optional_source("DECISIONS")
    if found is None:
        return False, {}
    rows = _rows(asked, "DECISIONS", "decision", (), ("axis", "station", "decision", "note", "by", "at"))
    places, decided, strange = _places(keys), {}, []
    for row in rows:
        decision = row["decision"].casefold()
        if not decision:
            continue
        at = places.get((row["axis"], name_key(row["station"])), [])
        if not at:
            strange.append(f"{row['axis']} {row['station']}".strip())
        for k in at:
            decided[k] = (_ALIKE.get(decision, decision), row["note"], row["by"], row["at"])
    if strange:
        asked.warn(
            tr("Layer '{}' decides about stations that layer '{}' does not have: {}.").format(
                found.sourceName(), layer, listed(strange)
            )
        )
    return True, decided


def doubtful(reviewed, suspected):
    """Mask (n,) of stations whose height is not believed, or not yet: the ``suspected`` (mask (n,)) without a decision,
    and those decided to be measured again or a reading error. A decision goes before a flag."""
    decisions = [reviewed.decision(row) for row in range(len(reviewed))]
    undecided = np.array([not text for text in decisions], bool)
    doubted = np.array([text in (MEASURE_AGAIN, READING_ERROR) for text in decisions], bool)
    return doubted | (undecided & suspected)


def accepted(reviewed):
    return np.array([reviewed.decision(row) == ACCEPT for row in range(len(reviewed))], bool)
