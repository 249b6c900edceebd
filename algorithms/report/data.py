"""What a review report is written about: reviewed stations in their order, rows of references and curvatures."""

from dataclasses import dataclass
from functools import cached_property
from typing import Optional

import numpy as np

from ..boundary.input_fields import named_field
from ..boundary.tables import read_table
from ..core.errors import InputError
from ..core.residuals import statuses
from ..core.units import metres_per
from ..entry.run_record import RunRecord
from ..entry.stated_units import stated_units
from ..language.decision_words import ACCEPT, MEASURE_AGAIN, READING_ERROR
from ..language.number_text import listed, plain_text
from ..language.shown_stations import shown_stations
from ..language.translation import tr
from ..language.units import Units
from ..structure.recorded_covariance import covariance_behind, with_marks
from ..structure.reviewed_stations import read_decisions, read_reviewed_stations, read_tested, recorded_tolerance
from .line import ReviewedLine, read_line

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
    "zon_vert",
    "zon_lat",
    "zon_cyl",
    "tan_lat",
    "tan_lon",
    "tan_chain",
    "tan_sd",
    "lev_lat",
    "lev_lon",
    "lev_chain",
    "lev_sd",
)
REFERENCE_TEXTS = ("name", "kind", "axes", "h_unit", "global_t", "tan_state", "lev_state", "record")
CURVATURE_NUMBERS = ("factor", "factor_lo", "factor_hi")
CURVATURE_TEXTS = ("axis", "verdict", "sentence", "record")


@dataclass(frozen=True)
class Reviewed:
    """Stations by axis and chainage; metres, arrays (n,), NaN where there is none; texts as lists (n,).

    ``station``: as people read them; ``points``: as read, in their own order; ``order``: their rows as they stand here;
    ``decided``: {row: Decided}; ``w``, ``suspected``: of a test of the heights; ``lat_w``, ``lat_suspected``: of the
    line; ``record``: RunRecord of the run that computed them; ``references``, ``curvatures``: rows as dicts; ``line``:
    None where none was judged by line; ``moved``, ``edited``: a sentence where points were moved, or heights edited, by
    hand since.
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
    covariance: Optional[np.ndarray]
    tolerance: np.ndarray
    status: np.ndarray
    date: list
    w: np.ndarray
    suspected: np.ndarray
    lat_w: np.ndarray
    lat_suspected: np.ndarray
    decided: dict
    units: Units
    record: RunRecord
    references: list
    curvatures: list
    has_tested: bool
    has_decisions: bool
    line: Optional[ReviewedLine] = None
    moved: str = ""
    edited: str = ""

    def __len__(self):
        return len(self.residual)

    @cached_property
    def built(self):
        return self.design + self.residual

    @cached_property
    def axes(self):
        """Names of the axes in their order."""
        return list(dict.fromkeys(self.axis))

    @cached_property
    def _rows(self):
        """{name of an axis: indices of its stations}, found once: a report asks for each axis many times."""
        found = {}
        for row, (name, word) in enumerate(zip(self.axis, self.status.tolist())):
            if word != "off axis":
                found.setdefault(name, []).append(row)
        return {name: np.array(rows, int) for name, rows in found.items()}

    def rows(self, axis):
        """Indices of the stations on one axis, without those that are off every axis."""
        return self._rows.get(axis, np.zeros(0, int))

    def decision(self, row):
        """The word decided on a station, '' for none."""
        return self.decided[row].word if row in self.decided else ""

    def named(self, row, *, alone=False):
        """'1+650 of left rail', or the station alone where there is one axis."""
        text = self.station[row] or tr("row {}").format(int(self.order[row]) + 1)
        alone = alone or len(self.axes) < 2 or not self.axis[row]
        return text if alone else tr("{} of {}").format(text, self.axis[row])


def read_reviewed(asked, record):
    """Read all inputs but the map's; ``record``: RunRecord of STATIONS, or an empty one. InputError for stations
    without residuals.
    """
    record = record or _summary_record(asked) or record
    units = stated_units(asked, record, asked.source("STATIONS").sourceName())
    stations = read_reviewed_stations(asked, units, record)
    if not np.any(np.isfinite(stations.residual)):
        raise InputError(tr("Layer '{}': no station has a residual; there is nothing to review.").format(stations.name))
    order = np.lexsort((stations.chainage, stations.axis_numbers))
    axis, station, date, status = (
        [column[k] for k in order.tolist()]
        for column in (stations.axis, stations.station, stations.date, stations.status)
    )
    residual = stations.residual[order]
    tolerance = _tolerances(asked, axis, record, units)
    tested, decided = read_tested(asked, stations), read_decisions(asked, stations)
    sd, sd_source = _deviations(asked, stations, tested.record)
    covariance = _covariance(asked, stations)
    place = {int(row): here for here, row in enumerate(order)}
    return Reviewed(
        stations.points,
        order,
        axis,
        shown_stations(station),
        stations.chainage[order] * units.chainage,
        stations.offset[order] * units.chainage,
        residual,
        stations.design[order],
        stations.flat[order],
        sd[order],
        sd_source,
        None if covariance is None else covariance[np.ix_(order, order)],
        tolerance,
        _statuses(status, residual, tolerance),
        date,
        tested.w[order],
        tested.suspected[order],
        tested.line.w[order],
        tested.line.suspected[order],
        {place[row]: one for row, one in (decided or {}).items()},
        units,
        record,
        _rows(asked, "REFERENCE", "name", REFERENCE_NUMBERS, REFERENCE_TEXTS),
        _rows(asked, "CURVATURE", "verdict", CURVATURE_NUMBERS, CURVATURE_TEXTS),
        tested.known,
        decided is not None,
        read_line(asked, stations, order, axis, record, tested.record),
        stations.moved,
        stations.edited,
    )


def _statuses(given, residual, tolerance):
    """Statuses as the run gave them; computed where the layer has none."""
    found = np.full(len(residual), "", dtype=object)
    for row, text in enumerate(given):
        limit = None if np.isnan(tolerance[row]) else tolerance[row]
        found[row] = text or str(statuses(residual[row : row + 1], limit)[0])
    return found


def _summary_record(asked):
    """The record in a summary: that of its first row with the axes of all rows; None without."""
    records = [row["record"] for row in _rows(asked, "SUMMARY", "axis", (), ("record",)) if row["record"]]
    axes = {name: one for record in records for name, one in record.axes.items()}
    return records[0].with_axes(axes) if records else None


def _tolerances(asked, axis, record, units):
    """Tolerance of each station in metres, NaN where none is known."""
    by_axis = {name: recorded_tolerance(record, name, units) for name in set(axis)}
    if any(value is None for value in by_axis.values()):
        for row in _rows(asked, "SUMMARY", "axis", ("tolerance",), ("axis",)):
            if by_axis.get(row["axis"], 0) is None and np.isfinite(row["tolerance"]):
                by_axis[row["axis"]] = row["tolerance"] * units.height
    return np.array([np.nan if by_axis[name] is None else by_axis[name] for name in axis], float)


def _rows(asked, key, needed, numbers, texts):
    """Rows of an optional table as dicts, [] without it; its record, where asked for, as a RunRecord."""
    source = asked.optional_source(key)
    if source is None:
        return []
    if named_field(source, "", "", (needed,)) < 0:
        raise InputError(tr("Layer '{}' ({}) lacks the field '{}'.").format(source.sourceName(), key, needed))
    columns = read_table(
        source,
        {name: named_field(source, "", "", (name,)) for name in numbers},
        {name: named_field(source, "", "", (name,)) for name in texts},
        asked.feedback,
    ).columns
    rows = [dict(zip(columns, values)) for values in zip(*columns.values())]
    doubts = {}
    for row in rows:
        row.update({name: float(row[name]) for name in numbers})
        if "record" in row:
            row["record"] = RunRecord.read(row["record"])
            doubts.setdefault(row["record"].doubt)
    for doubt in filter(None, doubts):
        asked.warn(tr("Layer '{}': {}").format(source.sourceName(), doubt))
    return rows


def _deviations(asked, stations, tested):
    """Standard deviations (n,), metres, in the order of the layer, and where they come from, '' for nowhere.
    ``tested``: record of the run that tested the stations."""
    typed, unit = asked.number("SIGMA"), stations.units.height
    given = with_marks(stations.sd, asked.record_of("STATIONS"))
    if typed is not None and not typed > 0.0:
        raise InputError(tr("SIGMA is {}; it must be greater than zero, or empty.").format(plain_text(typed)))
    if typed is None and np.any(np.isfinite(given)):
        name = stations.source.fields()[stations.fields["sd"]].name()
        bad = np.flatnonzero(given <= 0.0)
        if len(bad):
            raise InputError(
                tr("Layer '{}', field '{}': a standard deviation is {}; it must be positive.").format(
                    stations.name, name, plain_text(given[bad[0]] / unit)
                )
            )
        return given, tr("the stations' field '{}'").format(name)
    if typed is not None:
        return np.full(len(given), typed * unit), tr("as stated for this report")
    value = tested.parameter_number("SIGMA")
    if value is not None and value > 0.0:
        unit = metres_per(tested.height_unit or stations.units.height_name)
        return np.full(len(given), value * unit), tr("as stated for the run that tested the stations")
    return np.full(len(given), np.nan), ""


def _covariance(asked, stations):
    """Covariance of the heights (n, n), square metres, in the order of the layer, NaN where there is no residual; None
    where the record names no table with one, or SIGMA says another accuracy."""
    if asked.number("SIGMA") is not None or not np.any(np.isfinite(stations.sd)):
        return None
    given = covariance_behind(asked, asked.record_of("STATIONS"), stations.source, None, "height")
    if given is None:
        return None
    rows, matrix = np.flatnonzero(np.isfinite(stations.residual)), np.full((len(stations),) * 2, np.nan)
    matrix[np.ix_(rows, rows)] = given.covariance(rows).matrix
    return matrix


def doubtful(reviewed, suspected):
    """Mask (n,) of stations whose height, or place in line, is not believed, or not yet: the ``suspected`` (mask (n,))
    of it without a decision, and those decided to be measured again or a reading error. A decision goes before a
    flag."""
    undecided = np.array([not reviewed.decision(row) for row in range(len(reviewed))], bool)
    return doubted(reviewed) | (undecided & suspected)


def doubted(reviewed):
    """Mask (n,) of stations that are not believed by a decision: to be measured again, or a reading error."""
    decisions = [reviewed.decision(row) for row in range(len(reviewed))]
    return np.array([text in (MEASURE_AGAIN, READING_ERROR) for text in decisions], bool)


def accepted(reviewed):
    """Mask (n,) of stations that are accepted as they are."""
    return np.array([reviewed.decision(row) == ACCEPT for row in range(len(reviewed))], bool)


def structure_name(reviewed):
    """What is reviewed, where nobody says: its axes by their names; without any, the layer by its name."""
    names = [name for name in reviewed.axes if name]
    if not names:
        return reviewed.points.name
    if len(names) == 1:
        # A number is the feature's own, and no name.
        return tr("Axis {}").format(names[0]) if names[0].isdigit() else names[0]
    if len(names) == 2:
        return tr("Structure of {} and {}").format(*names)
    return tr("Structure of {}").format(listed(names, 3))
