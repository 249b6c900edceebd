"""Stations with residuals, as a run has left them, with their flags and decisions: the one reader for all who review.

Report, schedule, bars, profile and flagged stations take from here which fields are meant, which units hold, what a
flag or a decision says, and which station a row of another table is about.
"""

from dataclasses import dataclass, replace
from typing import Optional

import numpy as np
from qgis.core import QgsFeatureRequest, QgsPoint

from ..boundary.cells import as_text
from ..boundary.fields import DESIGNED_LINE
from ..boundary.input_fields import field_indices, named_field
from ..boundary.points import Points, read_points
from ..boundary.tables import read_table
from ..core.errors import InputError
from ..core.matching import name_key
from ..core.moved_stretches import flags_hold
from ..core.plain_number import plain_number
from ..core.station_notation import notation, station_texts
from ..core.units import metres_per
from ..entry.edited_heights import residual_heights, warn_of_edited_heights
from ..entry.moved_points import warn_of_moved_points
from ..entry.run_record import RunRecord
from ..language.decision_words import SUSPECTED, decision_of, flag_of
from ..language.number_text import listed
from ..language.stored_words import typed_words
from ..language.translation import tr
from ..language.units import Units

HEIGHTS = ("residual", "design_h", "flat_h", "sd", "lateral")
NUMBERS = (*HEIGHTS, "chainage", "offset", "w", "lat_w")
TEXTS = ("axis", "station", "status", "flag", "date", "side", "lat_flag")
_TEST_VALUES = ("w", "lat_w")
# Fields that others name otherwise, the first that there is counts; all others go by our own name.
OTHER_NAMES = {"sd": ("sd", "sigma")}
_NOWHERE = QgsPoint(np.nan, np.nan)


def review_fields(source):
    """{our name: index of the field} of a source or a layer, without regard to case; -1 where there is none. 'lateral'
    and 'side' are ours only where both are there: others may have a field of either name."""
    found = field_indices(source)
    if not all(name in found for name in DESIGNED_LINE):
        found = {name: index for name, index in found.items() if name not in DESIGNED_LINE}
    return {
        name: next((found[other] for other in OTHER_NAMES.get(name, (name,)) if other in found), -1)
        for name in (*NUMBERS, *TEXTS)
    }


def units_of(record):
    """Units of a layer by the ``record`` of its run, else metres; chainages as heights where nothing tells them."""
    height = record.height_unit or "metre"
    return Units(height, record.chainage_unit or height)


def recorded_tolerance(record, axis, units, name="tolerance"):
    """Tolerance of an axis in metres as the ``record`` tells it, None where it does not; ``name``: 'line_tolerance' for
    that of the line. A record that knows its unit is right about its own numbers; else these are in the unit of
    heights."""
    value = record.axis_number(axis, name)
    return None if value is None else value * metres_per(record.height_unit or units.height_name)


# --- the stations


@dataclass(frozen=True)
class ReviewedStations:
    """Stations in the order of their layer, arrays and lists (n,), NaN and '' where there is none.

    ``residual``, ``design``, ``flat``, ``sd``, ``lateral``: metres; ``chainage``, ``offset``: as read, in the unit of
    chainages; ``w``: of a test; ``status``, ``side``, ``date``: as in the layer; ``flag``: as language.decision_words
    has it, of the height; ``lat_w``, ``lat_flag``: the same of the line; ``fields``: {our name: index of the field};
    ``units``: of the layer; ``record``: of the run that made it; ``moved``, ``edited``: a sentence where points were
    moved, or heights edited, by hand since, else ''.
    """

    source: object
    points: Points
    axis: list
    station: list
    chainage: np.ndarray
    offset: np.ndarray
    residual: np.ndarray
    design: np.ndarray
    flat: np.ndarray
    sd: np.ndarray
    lateral: np.ndarray
    w: np.ndarray
    lat_w: np.ndarray
    status: list
    flag: list
    lat_flag: list
    date: list
    side: list
    fields: dict
    units: Units
    record: RunRecord
    moved: str = ""
    edited: str = ""

    def __len__(self):
        return len(self.residual)

    @property
    def name(self):
        return self.points.name

    @property
    def axis_numbers(self):
        """Index of each station's axis, in the order in which they occur (n,)."""
        names = {name: number for number, name in enumerate(dict.fromkeys(self.axis))}
        return np.array([names[name] for name in self.axis], int)


def read_reviewed_stations(asked, units, record):
    """STATIONS: ReviewedStations. InputError for a layer without a field 'residual'."""
    source = asked.source("STATIONS")
    index = review_fields(source)
    if index["residual"] < 0:
        raise InputError(
            tr(
                "Layer '{}' has no field 'residual'; run 'Design heights and residuals' first and give its output."
            ).format(source.sourceName())
        )
    made, numbers = asked.record_of("STATIONS"), {key: index[key] for key in NUMBERS}
    heights = residual_heights(made, source)
    if heights is not None:
        numbers["height"] = heights.index
    points = read_points(source, asked.feedback, numbers, {key: index[key] for key in TEXTS})
    columns = points.columns
    station = columns["station"]
    if index["station"] < 0:
        known = index["chainage"] >= 0
        station = station_texts(columns["chainage"], units.chainage_name) if known else [""] * len(points)
    return ReviewedStations(
        source,
        points,
        columns["axis"],
        station,
        columns["chainage"] if index["chainage"] >= 0 else _chainages(columns["station"]),
        columns["offset"],
        *(columns[key] * units.height for key in HEIGHTS),
        columns["w"],
        columns["lat_w"],
        columns["status"],
        *([flag_of(text) for text in columns[name]] for name in ("flag", "lat_flag")),
        columns["date"],
        columns["side"],
        index,
        units,
        record,
        warn_of_moved_points(asked, "STATIONS", made, points),
        warn_of_edited_heights(asked, "STATIONS", heights, points),
    )


def _chainages(stations):
    """Chainages read from station notation, NaN where it is unreadable."""
    values = []
    for text in stations:
        try:
            values.append(notation(text)[0])
        except InputError:
            values.append(np.nan)
    return np.array(values, float)


# --- which station another table is about


class StationIndex:
    """Finds stations by axis and station, however these are written: '1+650' and '1650' are one."""

    def __init__(self, stations):
        self._rows, self._axes = {}, {}
        for row, (axis, station) in enumerate(zip(stations.axis, stations.station)):
            key = name_key(station)
            self._rows.setdefault((axis, key), []).append(row)
            self._axes.setdefault(key, {})[axis] = True

    def rows(self, axis, station, layer, row):
        """Rows of the stations that are meant, [] for none. A row without an axis means the only axis that has such a
        station; InputError where several have, naming ``layer`` and ``row``."""
        key = name_key(station)
        if not axis:
            axes = list(self._axes.get(key, ()))
            if len(axes) > 1:
                raise InputError(
                    tr("Layer '{}', row {}: station {} is on several axes ({}); name the axis.").format(
                        layer, row, station, listed(sorted(axes))
                    )
                )
            axis = axes[0] if axes else ""
        return self._rows.get((axis, key), [])


def _columns(asked, key, needed, optional, what):
    """(source, rows as dicts of texts and the numbers w and lat_w) of a table about stations."""
    source = asked.optional_source(key)
    index = {name: named_field(source, "", "", (name,)) for name in (*needed, *optional, *_TEST_VALUES)}
    missing = [name for name in needed if index[name] < 0]
    if missing:
        raise InputError(what.format(source.sourceName(), listed(missing)), keys=(key,))
    texts = {name: index[name] for name in (*needed, *optional)}
    columns = read_table(source, {name: index[name] for name in _TEST_VALUES}, texts, asked.feedback).columns
    return source, [dict(zip(columns, values)) for values in zip(*columns.values())]


# --- what a test has found


@dataclass(frozen=True)
class StationFlags:
    """What a test says of the heights, or of the line. ``known``: whether anything tells which stations are suspected;
    ``w`` (n,), ``flag`` (list (n,)) of each station; ``record``: of the run that tested them; ``line``: StationFlags of
    the line beside those of the heights, which never speak of it."""

    known: bool
    w: np.ndarray
    flag: list
    record: RunRecord
    line: Optional["StationFlags"] = None

    @property
    def suspected(self):
        """Mask (n,) of the stations suspected of a blunder."""
        return np.array([text == SUSPECTED for text in self.flag], bool)


def suspicions(axes, values, departures, suspected):
    """Which of the ``suspected`` (mask (n,)) may be blunders, and which stations count as tested: two masks (n,).

    Where an axis has more suspects than blunders are, its shape is another one, and none is (method page 6). One rule
    for report, schedule, profile and list. ``axes``: index of each station's axis; ``values``: of the test, NaN for
    none; ``departures``: residuals or lateral departures that it speaks of; (n,).
    """
    # Where no test values are there, every station with a departure counts as tested.
    tested = np.isfinite(values if np.any(np.isfinite(values)) else departures) | suspected
    return suspected & flags_hold(axes, tested, suspected), tested


def read_tested(asked, stations):
    """What TESTED says of the stations, else what they say themselves. InputError for a table that is none of tested
    stations, and where no row of it is about one of these."""
    if not asked.given("TESTED"):
        return _own_flags(stations, "w", "flag", _own_flags(stations, "lat_w", "lat_flag"))
    source, rows = _columns(
        asked,
        "TESTED",
        ("station", "flag"),
        ("axis", "lat_flag"),
        tr("Layer '{}' (TESTED) holds no tested stations: it lacks the field {}."),
    )
    index = StationIndex(stations)
    places = [
        index.rows(row["axis"], row["station"], source.sourceName(), number) for number, row in enumerate(rows, 1)
    ]
    strange = sum(not at for at in places)
    if strange == len(rows):
        raise InputError(
            tr("No station of layer '{}' (TESTED) is one of layer '{}'; axis and station must agree.").format(
                source.sourceName(), stations.name
            ),
            keys=("TESTED",),
        )
    if strange:
        asked.warn(
            tr("Layer '{}' (TESTED) has {} stations that layer '{}' does not have.").format(
                source.sourceName(), strange, stations.name
            )
        )
    line, record = _own_flags(stations, "lat_w", "lat_flag"), asked.record_of("TESTED")
    if named_field(source, "", "", ("lat_flag",)) >= 0:
        line = _told_flags(line, rows, places, "lat_w", "lat_flag", record)
    return _told_flags(_own_flags(stations, "w", "flag", line), rows, places, "w", "flag", record)


def _own_flags(stations, value, word, line=None):
    """StationFlags that the stations' own fields ``value`` and ``word`` tell."""
    known = stations.fields[word] >= 0
    return StationFlags(known, getattr(stations, value), getattr(stations, word), stations.record, line)


def _told_flags(own, rows, places, value, word, record):
    """StationFlags ``own`` with what the ``rows`` of a table tell of the stations at their ``places``."""
    w, flag, told = own.w.copy(), list(own.flag), set()
    for row, at in zip(rows, places):
        for k in at:
            w[k] = row[value]
            # A station that is tested twice is suspected where one of the two says so.
            if k not in told or flag[k] != SUSPECTED:
                flag[k] = flag_of(row[word])
            told.add(k)
    return replace(own, known=True, w=w, flag=flag, record=record)


# --- what has been decided


@dataclass(frozen=True)
class Decided:
    """A decision on one station: its word as language.decision_words has it; texts, '' where there is none."""

    word: str
    note: str = ""
    by: str = ""
    at: str = ""


def read_decisions(asked, stations):
    """{row: Decided} of DECISIONS, the later of two counting; None where there is no such table. InputError for a table
    without decisions and for a word that is not known."""
    if not asked.given("DECISIONS"):
        return None
    source, rows = _columns(
        asked,
        "DECISIONS",
        ("station", "decision"),
        ("axis", "note", "by", "at"),
        tr("Layer '{}' holds no decisions: it lacks the field {}."),
    )
    layer, index, decided, strangers = source.sourceName(), StationIndex(stations), {}, []
    for number, row in enumerate(rows, 1):
        if not row["decision"]:
            continue
        word = decision_of(row["decision"])
        if word is None:
            raise InputError(
                tr("Layer '{}', field 'decision', row {}: '{}' is not known; known are {}.").format(
                    layer, number, row["decision"], typed_words("decision")
                )
            )
        at = index.rows(row["axis"], row["station"], layer, number)
        if not at:
            strangers.append(f"{row['axis']} {row['station']}".strip())
        for k in at:
            if k in decided and decided[k].word != word:
                asked.warn(
                    tr("Layer '{}' has two decisions for {} {}; the later one, '{}', counts.").format(
                        layer, stations.axis[k], row["station"], row["decision"]
                    )
                )
            decided[k] = Decided(word, row["note"], row["by"], row["at"])
    if strangers:
        asked.warn(
            tr("Layer '{}' decides about stations that layer '{}' does not have: {}.").format(
                layer, stations.name, listed(strangers)
            )
        )
    return decided


# --- a layer as it stands on the screen


@dataclass(frozen=True)
class LayerColumns:
    """All rows of a map layer in the order of reading, arrays (n,): ``ids`` of the features, ``x``, ``y`` in its CRS,
    NaN without a point; ``columns`` {our name: numbers or texts}, NaN and '' for what is missing or cannot be read;
    ``fields``: as ``review_fields`` has them; ``units``, ``record``, and ``tolerances`` {axis: metres, NaN for
    none}."""

    ids: np.ndarray
    x: np.ndarray
    y: np.ndarray
    columns: dict
    fields: dict
    units: Units
    record: RunRecord
    tolerances: dict


def layer_columns(layer, record, names=None):
    """Read a map layer for a chart or a list, which leave out what they cannot read: LayerColumns. Edits that are not
    saved are seen. ``record``: of the run that made it; ``names``: of the columns that are wanted, without places; None
    for all of it."""
    index, request = review_fields(layer), QgsFeatureRequest()
    if names is not None:
        index = {name: k if name in names else -1 for name, k in index.items()}
        request.setFlags(QgsFeatureRequest.Flag.NoGeometry)
    return _requested(layer, record, index, request)


def columns_again(before, layer, ids):
    """LayerColumns ``before`` of a map layer with the features of these ``ids`` read again, some of which may be new
    or gone. None where the layer gives its features in an order of its own: then only reading all of them tells the
    place of one."""
    if np.any(np.diff(_order_key(before.ids)) <= 0):
        return None
    part = _requested(layer, before.record, before.fields, QgsFeatureRequest().setFilterFids(list(ids)))
    stay = ~np.isin(before.ids, np.array(list(ids), np.int64))
    order = np.argsort(_order_key(np.concatenate([before.ids[stay], part.ids])), kind="stable")

    def joined(old, new):
        return np.concatenate([old[stay], new])[order]

    return replace(
        before,
        ids=joined(before.ids, part.ids),
        x=joined(before.x, part.x),
        y=joined(before.y, part.y),
        columns={name: joined(old, part.columns[name]) for name, old in before.columns.items()},
        tolerances={**before.tolerances, **part.tolerances},
    )


def _order_key(ids):
    """What rises in the host's order of features (n,): those added and not saved, whose ids fall below zero, then the
    others by their ids."""
    return np.where(ids < 0, np.iinfo(np.int64).min - ids, ids)


def _requested(layer, record, index, request):
    """LayerColumns of the features of a ``request``."""
    columns, ids, x, y = _layer_rows(layer, index, request)
    units = units_of(record)
    if index["station"] < 0:
        columns["station"] = _text_array(station_texts(columns["chainage"], units.chainage_name))
    tolerances = {axis: recorded_tolerance(record, axis, units) for axis in dict.fromkeys(columns["axis"].tolist())}
    tolerances = {axis: np.nan if value is None else value for axis, value in tolerances.items()}
    return LayerColumns(ids, x, y, columns, index, units, record, tolerances)


def _layer_rows(layer, index, request):
    """The fields, ids and coordinates of the features of a ``request`` as arrays, in one pass."""
    request.setSubsetOfAttributes(sorted({k for k in index.values() if k >= 0}))
    columns = {name: [] for name in index}
    ids, x, y = [], [], []
    numbers = [(columns[name].append, index[name]) for name in NUMBERS if index[name] >= 0]
    texts = [(columns[name].append, index[name]) for name in TEXTS if index[name] >= 0]
    for feature in layer.getFeatures(request):
        ids.append(feature.id())
        place = _place(feature.geometry())
        x.append(place.x())
        y.append(place.y())
        for append, k in numbers:
            value = feature[k]
            append(value if type(value) is float else _number(value))
        for append, k in texts:
            append(as_text(feature[k]))
    for name, values in columns.items():
        values = values if index[name] >= 0 else [np.nan if name in NUMBERS else ""] * len(ids)
        columns[name] = np.array(values, float) if name in NUMBERS else _text_array(values)
    return columns, np.array(ids, np.int64), np.array(x, float), np.array(y, float)


def _text_array(texts):
    return np.array(list(texts), dtype=object)


def _place(geometry):
    """The point of a geometry, without coordinates where there is none."""
    shape = geometry.constGet()
    if type(shape) is QgsPoint:
        return shape
    # The centre of a multi-point of one point is that point.
    return _NOWHERE if shape is None or shape.isEmpty() else geometry.boundingBox().center()


def _number(value):
    """A cell as a finite number, NaN for all else."""
    if isinstance(value, str):
        value = plain_number(value)
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        return np.nan
    return float(value) if np.isfinite(value) else np.nan
