"""Stations of a layer as arrays: whatever point layer has a chainage and a residual or a design height."""

from dataclasses import dataclass

import numpy as np
from qgis.core import QgsFeatureRequest, QgsVectorLayer, QgsWkbTypes

from ...algorithms.boundary.cells import as_text
from ...algorithms.core.profile_views import AxisProfile, severity, worst_first
from ...algorithms.core.station_notation import station_texts
from ...algorithms.core.units import METRES
from ...algorithms.entry.run_record import recorded_number, recorded_run, recorded_unit

HEIGHTS = ("design_h", "flat_h", "residual", "sd")
NUMBERS = ("chainage", *HEIGHTS, "w")
TEXTS = ("axis", "station", "status", "flag")
OTHER_NAMES = {"sd": ("sd", "sigma")}
OUT_OF_TOLERANCE = ("high", "low")
SUSPECTED = "suspected blunder"


def field_indices(layer):
    """{our name: index of the field}, without regard to case, -1 where there is none."""
    found = {field.name().lower(): k for k, field in enumerate(layer.fields())}
    return {
        name: next((found[other] for other in OTHER_NAMES.get(name, (name,)) if other in found), -1)
        for name in (*NUMBERS, *TEXTS)
    }


def is_reviewable(layer):
    """Whether a map layer has what a profile is drawn from."""
    if not isinstance(layer, QgsVectorLayer) or not layer.isValid():
        return False
    if layer.geometryType() != QgsWkbTypes.GeometryType.PointGeometry:
        return False
    index = field_indices(layer)
    return index["chainage"] >= 0 and (index["residual"] >= 0 or index["design_h"] >= 0)


@dataclass(frozen=True)
class LayerStations:
    """The stations of a layer, sorted by axis and chainage: arrays (n,).

    ``ids`` of the features; ``x``, ``y`` in the layer's CRS; ``chainage`` and ``heights`` {'design_h', 'flat_h',
    'residual', 'sd'} in metres, NaN where missing; ``tolerance``: metres, NaN for none; texts as in the layer.
    """

    ids: np.ndarray
    x: np.ndarray
    y: np.ndarray
    chainage: np.ndarray
    heights: dict
    w: np.ndarray
    axis: np.ndarray
    station: np.ndarray
    status: np.ndarray
    flag: np.ndarray
    tolerance: np.ndarray
    height_unit: str
    chainage_unit: str
    record: dict

    def __len__(self):
        return len(self.ids)

    @property
    def axes(self):
        """Names of the axes in their order."""
        return list(dict.fromkeys(self.axis.tolist()))

    def rows_of(self, axis):
        """Indices of the stations of one axis, by rising chainage."""
        return np.flatnonzero(self.axis == axis)

    def profile(self, rows):
        """The Profile of stations of one axis."""
        known = self.tolerance[rows][np.isfinite(self.tolerance[rows])]
        return AxisProfile(
            self.chainage[rows],
            *(self.heights[name][rows] for name in HEIGHTS),
            tolerance=float(known[0]) if len(known) else None,
        )

    @property
    def suspected(self):
        return self.flag == SUSPECTED

    def flagged(self):
        """Indices of the stations out of tolerance or suspected of a blunder, the worst first."""
        flagged = np.isin(self.status, OUT_OF_TOLERANCE) | self.suspected
        residual = self.heights["residual"]
        return worst_first(flagged, severity(residual, self.tolerance, self.w, self.suspected), residual)


def read_stations(layer):
    """Read a layer for which ``is_reviewable`` holds; unsaved edits are seen, rows without a chainage left out."""
    index = field_indices(layer)
    record = recorded_run(layer, None)
    columns, ids, x, y = _columns(layer, index)
    height_unit = recorded_unit(record, "height_name") or "metre"
    chainage_unit = recorded_unit(record, "chainage_name") or height_unit
    numbers = {name: np.array(columns[name], float) for name in NUMBERS}
    texts = {name: np.array(columns[name], dtype=object) for name in TEXTS}
    if index["station"] < 0:
        texts["station"] = np.array(station_texts(numbers["chainage"], chainage_unit), dtype=object)
    tolerances = {
        axis: _metres(recorded_number(record, axis, "tolerance"), height_unit)
        for axis in dict.fromkeys(columns["axis"])
    }
    rows = _sorted(texts["axis"], numbers["chainage"])
    metres = METRES[height_unit]
    return LayerStations(
        np.array(ids, np.int64)[rows],
        np.array(x, float)[rows],
        np.array(y, float)[rows],
        numbers["chainage"][rows] * METRES[chainage_unit],
        {name: numbers[name][rows] * metres for name in HEIGHTS},
        numbers["w"][rows],
        *(texts[name][rows] for name in TEXTS),
        np.array([tolerances[axis] for axis in columns["axis"]], float)[rows],
        height_unit,
        chainage_unit,
        record,
    )


def _metres(value, unit):
    return np.nan if value is None else value * METRES[unit]


def _sorted(axes, chainages):
    """Indices by axis, in the order the axes first occur, then by chainage; those without a chainage are left out."""
    order = {axis: k for k, axis in enumerate(dict.fromkeys(axes.tolist()))}
    number = np.array([order[axis] for axis in axes.tolist()], int)
    rows = np.lexsort((chainages, number))
    return rows[np.isfinite(chainages[rows])]


def _columns(layer, index):
    """The fields as lists, ids and coordinates of all features, in one pass."""
    request = QgsFeatureRequest()
    request.setSubsetOfAttributes(sorted({k for k in index.values() if k >= 0}))
    columns = {name: [] for name in index}
    ids, x, y = [], [], []
    numbers = [(columns[name].append, index[name]) for name in NUMBERS if index[name] >= 0]
    texts = [(columns[name].append, index[name]) for name in TEXTS if index[name] >= 0]
    for feature in layer.getFeatures(request):
        ids.append(feature.id())
        geometry = feature.geometry()
        # The centre of a multi-point of one point is that point.
        centre = geometry.boundingBox().center() if not geometry.isEmpty() else None
        x.append(centre.x() if centre is not None else np.nan)
        y.append(centre.y() if centre is not None else np.nan)
        for append, k in numbers:
            value = feature[k]
            append(value if type(value) is float else _number(value))
        for append, k in texts:
            append(as_text(feature[k]))
    for name, values in columns.items():
        if index[name] < 0:
            values.extend([np.nan if name in NUMBERS else ""] * len(ids))
    return columns, ids, x, y


def _number(value):
    """A cell as a finite number, NaN for all else: a chart leaves out what it cannot read."""
    try:
        number = float(value)
    except (TypeError, ValueError):
        return np.nan
    return number if np.isfinite(number) else np.nan
