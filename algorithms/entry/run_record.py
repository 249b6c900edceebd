"""The record that an earlier run left with its layer: units, tolerances and controls as they were used."""

import json

from qgis.core import QgsMapLayer, QgsProcessingFeatureSourceDefinition, QgsProcessingUtils, QgsVectorLayer

from ..core.units import METRES
from ..language.translation import tr
from ..styles.layer_kinds import RECORD_PROPERTY


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


def warn_of_unit(record, name, unit, asked):
    """Warn where the ``record`` of the run that made layer ``name`` tells another unit of heights than ``unit``."""
    made = recorded_unit(record, "height_name") or recorded_parameter(record, "HEIGHT_UNIT")
    if made and made != unit:
        asked.warn(
            tr("Layer '{}' was made with heights in '{}', but HEIGHT_UNIT is '{}'; check it.").format(name, made, unit),
            keys=("HEIGHT_UNIT",),
        )


_TEXTS = ("entry", "height_system", "undulation_source")


_AXIS_NUMBERS = ("slope", "chainage_height", "refraction", "tolerance")


_AXIS_TEXTS = ("design", "earth", "horizon")


def _dict(value):
    return value if isinstance(value, dict) else {}


def _number(value):
    return isinstance(value, (int, float)) and not isinstance(value, bool) and value == value


def _axis(given):
    axis = {key: given[key] for key in _AXIS_TEXTS if isinstance(given.get(key), str)}
    axis.update({key: float(given[key]) for key in _AXIS_NUMBERS if _number(given.get(key))})
    controls = given.get("controls")
    axis["controls"] = (
        [
            one
            for one in controls
            if isinstance(one, dict) and _number(one.get("chainage")) and _number(one.get("height"))
        ]
        if isinstance(controls, list)
        else []
    )
    return axis


def clean_record(given):
    """A record with texts, numbers and dicts where these are due; all else is left out. ``given``: a dict, or JSON
    text.
    """
    if isinstance(given, str):
        try:
            given = json.loads(given or "{}")
        except ValueError:
            given = {}
    given = _dict(given)
    record = {key: given[key] for key in _TEXTS if isinstance(given.get(key), str)}
    record["axes"] = {str(name): _axis(one) for name, one in _dict(given.get("axes")).items() if isinstance(one, dict)}
    for key in ("units", "versions"):
        record[key] = {str(name): value for name, value in _dict(given.get(key)).items() if isinstance(value, str)}
    record["parameters"] = {
        str(name): value
        for name, value in _dict(given.get("parameters")).items()
        if isinstance(value, (str, int, float, bool))
    }
    return record if "entry" in record or record["axes"] else {}
