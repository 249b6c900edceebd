"""Where the stations of a layer are, for a line that is tried on them: in the height system of the run that made it."""

import numpy as np
from qgis.core import QgsFeatureRequest, QgsProcessingContext, QgsProcessingFeedback

from ..boundary.points import Points
from ..boundary.reference_systems import definition
from ..core import geodesy
from ..core.errors import InputError
from ..core.units import metres_per
from ..core.what_if import ProfilePlaces
from ..entry.request import Request
from ..language.translation import tr
from .height_system import height_system, undulation_index

_KEYS = ("UNDULATION", "UNDULATION_FIELD", "UNDULATION_VALUE", "GEOID", "GEOID_BETWEEN")


class LayerPlaces:
    """Places and undulations of the stations of a map layer, arrays (n,) in the order of ``ids``; read once, for any
    number of lines. ``described``: a sentence on the height system. In the host's main thread only.

    ``entry``: the toolbox entry designheights; ``x``, ``y``: in the layer's CRS, NaN without a point; ``record``: of
    the run that made the layer. InputError where an undulation or the recorded grid is missing.
    """

    def __init__(self, entry, layer, record, ids, x, y):
        if not layer.crs().isValid():
            raise InputError(tr("Layer '{}' has no coordinate reference system; set it first.").format(layer.name()))
        crs = definition(layer.crs())
        self.ellipsoid = geodesy.ellipsoid_of(crs)
        placed = np.isfinite(x) & np.isfinite(y)
        self.lat, self.lon = np.full(len(ids), np.nan), np.full(len(ids), np.nan)
        self.lat[placed], self.lon[placed] = geodesy.to_latitude_longitude(x[placed], y[placed], crs)
        placed &= np.isfinite(self.lat) & np.isfinite(self.lon)
        given = {key: record.parameters[key] for key in _KEYS if record.parameters.get(key) is not None}
        if record.height_system and "UNDULATION" not in given:
            given["UNDULATION"] = record.height_system
        asked = Request(entry, given, QgsProcessingContext(), QgsProcessingFeedback(False), {"STATIONS": [record]})
        index = undulation_index(asked)(_Source(layer))
        columns = {"undulation": _column(layer, index, ids)} if index >= 0 else {}
        points = Points(layer.name(), layer.crs(), ids, x, y, np.full(len(ids), np.nan), self.lat, self.lon, columns)
        system = height_system(asked, points, metres_per(record.height_unit or "metre"), placed)
        self.undulation = np.where(placed, system.undulation, np.nan)
        self.described = (
            system.described
            if record.height_system
            else tr("The height system is not recorded; the heights are taken as above a geoid that is not known.")
        )

    def profile(self, rows, chainage, height):
        """The core's ProfilePlaces of the stations ``rows`` of one axis; ``chainage``, ``height``: metres."""
        return ProfilePlaces(self.ellipsoid, self.lat[rows], self.lon[rows], chainage, height, self.undulation[rows])


class _Source:
    """A map layer asked as a source of features is."""

    def __init__(self, layer):
        self.fields, self.sourceName = layer.fields, layer.name


def _column(layer, index, ids):
    """A field's numbers in the order of ``ids``, NaN where there is none."""
    request = QgsFeatureRequest().setSubsetOfAttributes([index])
    request.setFlags(QgsFeatureRequest.Flag.NoGeometry)
    values = {}
    for feature in layer.getFeatures(request):
        try:
            values[feature.id()] = float(feature[index])
        except (TypeError, ValueError):
            continue
    return np.array([values.get(one, np.nan) for one in ids.tolist()], float)
