"""The record that an earlier run left with its layer: units, tolerances and controls as they were used."""

import json

from qgis.core import QgsMapLayer, QgsProcessingFeatureSourceDefinition, QgsProcessingUtils, QgsVectorLayer

from .core.units import METRES
from .styling import RECORD_PROPERTY


def _layer(value, context):
    if isinstance(value, QgsProcessingFeatureSourceDefinition):
        value = value.source.staticValue()
    if isinstance(value, QgsMapLayer) or not isinstance(value, str) or not value:
        return value if isinstance(value, QgsMapLayer) else None
    return QgsProcessingUtils.mapLayerFromString(value, context)


def recorded_run(value, context):
    """The record of the run that made the layer of an input parameter's ``value``, as a dict; {} where there is none.

    A layer of the project carries it; of a GeoPackage it is read from the style saved there.
    """
    layer = _layer(value, context)
    if layer is None:
        return {}
    text = layer.customProperty(RECORD_PROPERTY, "")
    if not text and layer.providerType() == "ogr":
        # A layer given by its file is opened without its style; the project's own are left as they are.
        saved = QgsVectorLayer(layer.source(), layer.name(), "ogr")
        text = saved.customProperty(RECORD_PROPERTY, "") if saved.isValid() else ""
    try:
        record = json.loads(text or "{}")
    except ValueError:
        return {}
    return record if isinstance(record, dict) else {}


def recorded_unit(record, name):
    """Recorded 'height_name' or 'chainage_name', '' where there is none that is known."""
    units = record.get("units")
    unit = units.get(name) if isinstance(units, dict) else None
    return unit if unit in METRES else ""


def recorded_number(record, axis, name):
    """Recorded number of one axis, in the recorded unit; None where there is none."""
    axes = record.get("axes")
    one = axes.get(axis) if isinstance(axes, dict) else None
    value = one.get(name) if isinstance(one, dict) else None
    return float(value) if isinstance(value, (int, float)) and not isinstance(value, bool) else None


def recorded_parameter(record, key):
    """A parameter of the recorded run as text, '' where it was not given."""
    given = record.get("parameters")
    value = given.get(key) if isinstance(given, dict) else None
    return value if isinstance(value, str) else ""
