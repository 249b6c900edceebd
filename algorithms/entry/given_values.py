"""What a run is given: the names of its parameters that have a value, its inputs, and values as a record takes them."""

import os

from qgis.core import (
    QgsProcessingFeatureSourceDefinition,
    QgsProcessingParameterFeatureSource,
    QgsProcessingParameterMultipleLayers,
    QgsProcessingParameterRasterLayer,
)

SOURCE = QgsProcessingParameterFeatureSource
INPUTS = (SOURCE, QgsProcessingParameterRasterLayer, QgsProcessingParameterMultipleLayers)


def given_keys(entry, kind, parameters):
    """Names of the parameters of a ``kind`` of the host's that have a value."""
    return [d.name() for d in entry.parameterDefinitions() if isinstance(d, kind) and parameters.get(d.name())]


def given_inputs(entry, parameters):
    """(name, layer) of every input, a list of layers one by one."""
    for name in given_keys(entry, INPUTS, parameters):
        value = parameters[name]
        yield from ((name, one) for one in (value if isinstance(value, (list, tuple)) else [value]))


def layer_text(value):
    """The text by which a value names a layer; the value itself where it is none."""
    return value.source.staticValue() if isinstance(value, QgsProcessingFeatureSourceDefinition) else value


def recorded_value(value, context):
    """A parameter's value as JSON takes it: layers by their source."""
    if isinstance(value, (bool, int, float, str)):
        layer = context.getMapLayer(value) if isinstance(value, str) else None
        return layer.source() if layer is not None else value
    if isinstance(value, (list, tuple)):
        return [recorded_value(one, context) for one in value]
    for part in ("source", "sink"):
        inner = getattr(value, part, None)
        if hasattr(inner, "staticValue"):
            return recorded_value(inner.staticValue() or inner.asExpression(), context)
    return value.source() if hasattr(value, "source") and callable(value.source) else str(value)


def input_source(value, context):
    """The source of an input, a file by its full path: the record may be read in another folder."""
    text = recorded_value(value, context)
    path, bar, rest = text.partition("|")
    return os.path.abspath(path) + bar + rest if os.path.isfile(path) else text


def is_part(value):
    """Whether only some rows of a layer are handed to the run: a selection, a filter, a limit."""
    if not isinstance(value, QgsProcessingFeatureSourceDefinition):
        return False
    return bool(value.selectedFeaturesOnly or value.featureLimit > 0 or getattr(value, "filterExpression", ""))
