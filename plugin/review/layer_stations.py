"""Stations of a layer as arrays: whatever point layer has a chainage and a residual or a design height."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from qgis.core import QgsVectorLayer, QgsWkbTypes

from ...algorithms.core.moved_stretches import in_stretch, moved_stretches
from ...algorithms.core.profile_views import AxisProfile, severity, worst_first
from ...algorithms.core.residuals import ASIDE
from ...algorithms.entry.layer_records import record_of_layer
from ...algorithms.entry.run_record import RunRecord
from ...algorithms.language.decision_words import SUSPECTED, flag_of
from ...algorithms.structure.reviewed_stations import (
    LayerColumns,
    columns_again,
    layer_columns,
    recorded_tolerance,
    review_fields,
    suspicions,
)
from .tested_flags import OF_HEIGHTS, OF_LINE, tested_flags

# Of the profile's heights in its own order.
HEIGHTS = ("design_h", "flat_h", "residual", "sd")
LENGTHS = (*HEIGHTS, "lateral")
NUMBERS = ("chainage", *LENGTHS, "w", "lat_w")
TEXTS = ("axis", "station", "status", "flag", "side", "lat_flag")
OUT_OF_TOLERANCE = ("high", "low")


def is_reviewable(layer):
    """Whether a map layer has what a profile is drawn from."""
    if not isinstance(layer, QgsVectorLayer) or not layer.isValid():
        return False
    if layer.geometryType() != QgsWkbTypes.GeometryType.PointGeometry:
        return False
    index = review_fields(layer)
    return index["chainage"] >= 0 and (index["residual"] >= 0 or index["design_h"] >= 0)


@dataclass(frozen=True)
class LayerStations:
    """The stations of a layer, sorted by axis and chainage: arrays (n,).

    ``ids`` of the features; ``x``, ``y`` in the layer's CRS; ``chainage`` and ``heights`` {'design_h', 'flat_h',
    'residual', 'sd', 'lateral'} in metres, NaN where missing; ``tolerance``, ``line_tolerance``: metres, NaN for none;
    texts as in the layer; ``w``, ``flag`` of the height, ``lat_w``, ``lat_flag`` of the line.
    ``read``: the rows as they were read, in the layer's units.
    """

    ids: np.ndarray
    x: np.ndarray
    y: np.ndarray
    chainage: np.ndarray
    heights: dict
    w: np.ndarray
    lat_w: np.ndarray
    axis: np.ndarray
    station: np.ndarray
    status: np.ndarray
    flag: np.ndarray
    side: np.ndarray
    lat_flag: np.ndarray
    tolerance: np.ndarray
    line_tolerance: np.ndarray
    height_unit: str
    chainage_unit: str
    record: RunRecord
    read: LayerColumns

    def __len__(self):
        return len(self.ids)

    @cached_property
    def axes(self):
        """Names of the axes in their order."""
        return list(dict.fromkeys(self.axis.tolist()))

    def rows_of(self, axis):
        """Indices of the stations of one axis, by rising chainage."""
        return np.flatnonzero(self.axis == axis)

    def profile(self, rows):
        """The Profile of stations of one axis."""
        return AxisProfile(
            self.chainage[rows],
            *(self.heights[name][rows] for name in HEIGHTS),
            tolerance=_first_known(self.tolerance[rows]),
            lateral=self.heights["lateral"][rows] if self.has_line else None,
            line_tolerance=_first_known(self.line_tolerance[rows]),
        )

    @cached_property
    def has_line(self):
        """Whether any station was judged by line."""
        return bool(np.isfinite(self.heights["lateral"]).any())

    @cached_property
    def suspected(self):
        """Mask (n,) of the stations suspected of a blunder in height, where the suspicion holds."""
        return suspicions(self._numbers, self.w, self.heights["residual"], _suspected(self.flag))[0]

    @cached_property
    def line_suspected(self):
        """Mask (n,) of the stations suspected of a blunder in plan, where the suspicion holds."""
        return suspicions(self._numbers, self.lat_w, self.heights["lateral"], _suspected(self.lat_flag))[0]

    @cached_property
    def moved(self):
        """Mask (n,) of the suspected stations that neighbours are suspected with on one side: a stretch has moved."""
        return self._in_stretch("residual", self.suspected)

    @cached_property
    def line_moved(self):
        """The same in plan."""
        return self._in_stretch("lateral", self.line_suspected)

    @cached_property
    def _numbers(self):
        """Index of each station's axis (n,)."""
        number = {name: k for k, name in enumerate(self.axes)}
        return np.array([number[name] for name in self.axis.tolist()], int)

    def _in_stretch(self, name, suspected):
        return in_stretch(len(self), moved_stretches(self._numbers, self.chainage, self.heights[name], suspected))

    def flagged(self):
        """Indices of the stations out of tolerance or suspected of a blunder, in height or in line, the worst
        first."""
        flagged = np.isin(self.status, OUT_OF_TOLERANCE) | np.isin(self.side, ASIDE)
        flagged |= self.suspected | self.line_suspected
        residual = self.heights["residual"]
        in_height = severity(residual, self.tolerance, self.w, self.suspected)
        in_line = severity(self.heights["lateral"], self.line_tolerance, self.lat_w, self.line_suspected)
        return worst_first(flagged, np.fmax(in_height, in_line), residual)


def read_stations(layer):
    """Read a layer for which ``is_reviewable`` holds; unsaved edits are seen, rows without a chainage left out."""
    read = layer_columns(layer, record_of_layer(layer))
    _take_flags(read)
    return _stations(read)


def stations_again(before, layer, ids):
    """LayerStations ``before`` of a layer with only the features of these ``ids`` (a set) read again: what
    ``read_stations`` gives, where nothing else has changed since."""
    read = columns_again(before.read, layer, ids)
    if read is None:
        return read_stations(layer)
    _keep_flags(before.read, read)
    return _stations(read)


def _stations(read):
    """LayerStations of LayerColumns."""
    columns = read.columns
    rows = _sorted(columns["axis"], columns["chainage"])
    return LayerStations(
        read.ids[rows],
        read.x[rows],
        read.y[rows],
        columns["chainage"][rows] * read.units.chainage,
        {name: columns[name][rows] * read.units.height for name in LENGTHS},
        *(columns[name][rows] for name in ("w", "lat_w")),
        *(columns[name][rows] for name in TEXTS),
        np.array([read.tolerances[axis] for axis in columns["axis"].tolist()], float)[rows],
        _line_tolerances(read)[rows],
        read.units.height_name,
        read.units.chainage_name,
        read.record,
        read,
    )


def _line_tolerances(read):
    """Tolerance of the line at each row of LayerColumns, metres, NaN for none."""
    axes = list(read.columns["axis"])
    known = {axis: recorded_tolerance(read.record, axis, read.units, "line_tolerance") for axis in dict.fromkeys(axes)}
    return np.array([np.nan if known[axis] is None else known[axis] for axis in axes], float)


def _suspected(flags):
    """Mask (n,) of the ``flags`` (texts) that say so."""
    meant = {text: flag_of(text) == SUSPECTED for text in set(flags.tolist())}
    return np.array([meant[text] for text in flags.tolist()], bool)


def _first_known(values):
    known = values[np.isfinite(values)]
    return float(known[0]) if len(known) else None


@dataclass(frozen=True)
class _Named:
    axis: list
    station: list


def _take_flags(read):
    """Put what a test of the same stations found into LayerColumns that say nothing of it."""
    for value, word in _untold(read):
        named = _Named(read.columns["axis"].tolist(), read.columns["station"].tolist())
        for row, (w, flag) in tested_flags(named, read.record, (value, word)).items():
            read.columns[value][row], read.columns[word][row] = w, flag


def _untold(read):
    """The fields of a test that LayerColumns do not have of their own."""
    return [names for names in (OF_HEIGHTS, OF_LINE) if read.fields[names[1]] < 0]


def _keep_flags(before, read):
    """The same for columns of which a few features were read again; the test is looked up anew only where its stations
    may be others now."""
    same = np.array_equal(before.ids, read.ids)
    if same and all(np.array_equal(before.columns[name], read.columns[name]) for name in ("axis", "station")):
        read.columns.update({name: before.columns[name] for names in _untold(read) for name in names})
    else:
        _take_flags(read)


def _sorted(axes, chainages):
    """Indices by axis, in the order the axes first occur, then by chainage; those without a chainage are left out."""
    order = {axis: k for k, axis in enumerate(dict.fromkeys(axes.tolist()))}
    number = np.array([order[axis] for axis in axes.tolist()], int)
    rows = np.lexsort((chainages, number))
    return rows[np.isfinite(chainages[rows])]
