"""An axis drawn from the first to the last station, for projects without a line layer."""

import os

import numpy as np
from qgis.core import (
    QgsCoordinateTransformContext,
    QgsFeature,
    QgsGeometry,
    QgsPointXY,
    QgsProcessingContext,
    QgsProcessingFeatureSource,
    QgsProcessingFeedback,
    QgsVectorFileWriter,
    QgsVectorLayer,
)

from ...algorithms.boundary.input_fields import named_field
from ...algorithms.boundary.points import read_points
from ...algorithms.boundary.reference_systems import definition
from ...algorithms.core.data_check import ends
from ...algorithms.core.errors import InputError
from ...algorithms.core.geodesy import ellipsoid_of, foot_and_normal
from ...algorithms.core.station_notation import notation
from ...algorithms.language.translation import tr


def _chainage(text):
    try:
        return notation(text)[0]
    except InputError:
        return np.nan


def read_ends(heights, station_field):
    """The two points ((x, y), (x, y)), map coordinates, between which the axis of the points ``heights`` (map layer)
    runs.

    In the order of the column ``station_field``, or one named station or chainage; without one, of the layer. Works in
    any thread, and so asks the project for nothing (entry/run_context.py). Raises InputError.
    """
    context = QgsProcessingContext()
    source = QgsProcessingFeatureSource(heights, context)
    naming = named_field(source, station_field, "STATION_FIELD", ("station", "chainage"))
    points = read_points(source, QgsProcessingFeedback(False), texts={"station": naming} if naming >= 0 else {})
    order = np.array([_chainage(text) for text in points.columns["station"]]) if naming >= 0 else None
    feet = foot_and_normal(points.lat, points.lon, ellipsoid_of(definition(points.crs)))[0]
    return tuple((float(points.x[k]), float(points.y[k])) for k in ends(feet, order))


def line_layer(places, crs):
    """A temporary line layer, with a field 'name', through two points (x, y) in ``crs``."""
    layer = QgsVectorLayer("LineString?field=name:string(40)", tr("Drawn axis"), "memory")
    layer.setCrs(crs)
    feature = QgsFeature(layer.fields())
    feature.setGeometry(QgsGeometry.fromPolylineXY([QgsPointXY(x, y) for x, y in places]))
    feature["name"] = tr("axis")
    layer.dataProvider().addFeatures([feature])
    layer.updateExtents()
    return layer


def kept(layer, path, table):
    """``layer`` written as ``table`` of the GeoPackage ``path`` and read from there. Raises InputError."""
    options = QgsVectorFileWriter.SaveVectorOptions()
    options.driverName, options.layerName = "GPKG", table
    action = QgsVectorFileWriter.ActionOnExistingFile
    there = os.path.exists(path)
    options.actionOnExistingFile = action.CreateOrOverwriteLayer if there else action.CreateOrOverwriteFile
    outcome = QgsVectorFileWriter.writeAsVectorFormatV3(layer, path, QgsCoordinateTransformContext(), options)
    if outcome[0] != QgsVectorFileWriter.WriterError.NoError:
        raise InputError(tr("The layer '{}' could not be written into '{}': {}").format(layer.name(), path, outcome[1]))
    return QgsVectorLayer(f"{path}|layername={table}", layer.name(), "ogr")
