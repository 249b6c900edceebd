"""The record of a run on its layer: read off the layer itself, or of the style saved with it in the GeoPackage."""

import os

from qgis.core import QgsMapLayer, QgsProcessingFeatureSourceDefinition, QgsProcessingUtils, QgsVectorLayer

from ..boundary.geopackage_tables import has_table
from ..styles.record_property import RECORD_PROPERTY
from .run_record import RunRecord


def layer_of(value, context):
    """The map layer of an input parameter's ``value``, None where there is none."""
    if isinstance(value, QgsProcessingFeatureSourceDefinition):
        value = value.source.staticValue()
    if isinstance(value, QgsMapLayer) or not isinstance(value, str) or not value:
        return value if isinstance(value, QgsMapLayer) else None
    layer = context.getMapLayer(value)
    return layer if layer is not None else QgsProcessingUtils.mapLayerFromString(value, context)


def record_of_layer(value, context=None):
    """The record of the run that made the layer of an input parameter's ``value`` (RunRecord), an empty one where there
    is none.

    A layer of the project carries it; of a GeoPackage it is read from the style saved there. In the host's main thread
    only: the layer's own properties are asked.
    """
    layer = layer_of(value, context)
    if layer is None:
        return RunRecord()
    text = layer.customProperty(RECORD_PROPERTY, "")
    if text in ("", None) and layer.providerType() == "ogr" and not _has_no_style(layer):
        # A layer given by its file is opened without its style; the project's own are left as they are.
        saved = QgsVectorLayer(layer.source(), layer.name(), "ogr")
        text = saved.customProperty(RECORD_PROPERTY, "") if saved.isValid() else ""
    # The host turns a property that looks like a number or a list into one.
    return RunRecord.read(text if isinstance(text, (str, dict)) or text is None else str(text))


def _has_no_style(layer):
    """True for a layer in a GeoPackage beside which no style is kept: looking costs a third of opening it."""
    if layer.storageType() != "GPKG" or os.path.exists(layer.styleURI()):
        return False
    return not has_table(layer.source().split("|")[0], "layer_styles")
