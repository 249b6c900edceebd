"""Values of parameters read strictly: what is typed, computed or handed in is what is meant, or it is refused.

The host itself takes '1_0' for 0, 'no' for yes and a failing expression for the default, without a word.
"""

import math

import numpy as np
from qgis.core import (
    QgsMapLayer,
    QgsProcessingFeatureSourceDefinition,
    QgsProcessingParameterBoolean,
    QgsProcessingParameterDefinition,
    QgsProcessingParameterEnum,
    QgsProcessingParameterFeatureSource,
    QgsProcessingParameterField,
    QgsProcessingParameterFileDestination,
    QgsProcessingParameterNumber,
    QgsProcessingParameterRasterLayer,
    QgsProcessingParameterString,
    QgsProcessingUtils,
    QgsProperty,
    QgsRasterLayer,
)

from ..boundary.cells import is_null, shortened
from ..core.errors import InputError
from ..core.plain_number import plain_number
from ..language.number_text import plain_text
from ..language.translation import tr

# Greatest size of a number that anybody means, in whatever unit.
GREATEST = 1e12
_YES, _NO = ("true", "yes", "on", "1"), ("false", "no", "off", "0")


def value_of(definition: QgsProcessingParameterDefinition, value, context):
    """The value itself: an expression evaluated, NULL as None, numbers as Python has them, the default where nothing
    is given. InputError for an expression that fails."""
    if isinstance(value, QgsProperty):
        if not value.isActive():
            value = None
        elif value.propertyType() == QgsProperty.Type.StaticProperty:
            value = value.staticValue()
        else:
            found, valid = value.value(context.expressionContext())
            if not valid:
                raise _refused(definition, value.asExpression(), tr("an expression that gives a value"))
            value = found
    if isinstance(value, np.generic):
        value = value.item()
    if is_null(value):
        value = definition.defaultValue()
        value = None if is_null(value) else value
    return value


def number_of(definition, value, context):
    """A number parameter as float, None where it is empty; InputError for all else and out of its bounds."""
    value = value_of(definition, value, context)
    if value is None or value == "":
        return None
    number = plain_number(value) if isinstance(value, str) else value
    if isinstance(number, bool) or not isinstance(number, (int, float)):
        raise InputError(
            tr("{} is '{}', which is not a number.").format(definition.name(), shortened(value)),
            keys=(definition.name(),),
        )
    try:
        number = float(number)
    except OverflowError:
        number = math.inf
    if not math.isfinite(number):
        raise InputError(
            tr("{} is {}, which is not a finite number.").format(definition.name(), shortened(value)),
            keys=(definition.name(),),
        )
    low, high = max(definition.minimum(), -GREATEST), min(definition.maximum(), GREATEST)
    if not low <= number <= high:
        bound = tr("at least {}").format(plain_text(low)) if number < low else tr("at most {}").format(plain_text(high))
        raise InputError(
            tr("{} is {}, but must be {}.").format(definition.name(), shortened(value), bound),
            keys=(definition.name(),),
        )
    return number


def flag_of(definition, value, context):
    """A yes-or-no parameter; InputError for what is neither."""
    value = value_of(definition, value, context)
    if isinstance(value, bool):
        return value
    word = str(value).strip().lower() if isinstance(value, (str, int)) else ""
    if word in _YES or word in _NO:
        return word in _YES
    if value is None or value == "":
        return False
    raise _refused(definition, value, tr("yes or no"))


def choice_of(definition, value, context):
    """The text of an enumeration, '' where it is empty; InputError for what it does not offer."""
    value = value_of(definition, value, context)
    if value is None or value == "":
        return ""
    if not isinstance(value, str) or value not in definition.options():
        raise InputError(
            tr("{} is '{}', but can only be {}.").format(
                definition.name(), shortened(value), ", ".join(filter(None, definition.options()))
            ),
            keys=(definition.name(),),
        )
    return value


def text_of(definition, value, context):
    """A text parameter without blanks around it, '' where it is empty; InputError for what is no text."""
    value = value_of(definition, value, context)
    if value is None:
        return ""
    if isinstance(value, bool) or not isinstance(value, (str, int, float)):
        raise _refused(definition, value, tr("a text"))
    if "\0" in str(value):
        raise _refused(definition, value, tr("a text without control characters"))
    return str(value).strip()


def _check_raster(definition, value, context):
    value = value_of(definition, value, context)
    if value is None or value == "":
        return
    layer = QgsProcessingUtils.mapLayerFromString(value, context) if isinstance(value, str) else value
    if not isinstance(layer, QgsRasterLayer):
        raise _refused(definition, value, tr("a raster layer"))


def _check_source(definition, value, context):
    inner = value.source if isinstance(value, QgsProcessingFeatureSourceDefinition) else value
    inner = value_of(definition, inner, context)
    if inner is None or inner == "" or isinstance(inner, QgsMapLayer):
        return
    if not isinstance(inner, str) or QgsProcessingUtils.mapLayerFromString(inner, context) is None:
        raise unreadable(definition.name(), inner)


def unreadable(key, value):
    """The refusal of an input that cannot be opened; ``value``: its source."""
    return InputError(
        tr("{}: '{}' cannot be opened as a layer; is it missing, damaged or of another kind?").format(
            key, shortened(value)
        ),
        keys=(key,),
    )


_READERS = (
    (QgsProcessingParameterNumber, number_of),
    (QgsProcessingParameterBoolean, flag_of),
    (QgsProcessingParameterEnum, choice_of),
    (QgsProcessingParameterField, text_of),
    (QgsProcessingParameterString, text_of),
    (QgsProcessingParameterFileDestination, text_of),
    (QgsProcessingParameterRasterLayer, _check_raster),
    (QgsProcessingParameterFeatureSource, _check_source),
)


def check_value(definition, value, context):
    """InputError naming the parameter, its value and what is allowed, where the value cannot be read."""
    for kind, read in _READERS:
        if isinstance(definition, kind):
            read(definition, value, context)
            return


def _refused(definition, value, wanted):
    return InputError(
        tr("{} is '{}', but must be {}.").format(definition.name(), shortened(value), wanted), keys=(definition.name(),)
    )
