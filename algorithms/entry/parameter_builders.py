"""Builders of one parameter each: number, text, field, choice, file; all with their help."""

from qgis.core import (
    QgsProcessing,
    QgsProcessingParameterDefinition,
    QgsProcessingParameterEnum,
    QgsProcessingParameterField,
    QgsProcessingParameterFileDestination,
    QgsProcessingParameterNumber,
    QgsProcessingParameterString,
)


def file_parameter(key, label, text, file_filter, by_default=False):
    """An optional output file; ``file_filter`` such as 'HTML files (*.html)'; ``by_default``: made by the
    form unasked.
    """
    parameter = QgsProcessingParameterFileDestination(
        key, label, file_filter, optional=True, createByDefault=by_default
    )
    parameter.setHelp(text)
    return parameter


_FIELD = QgsProcessingParameterField.DataType


SOURCE = QgsProcessing.SourceType


_REAL = QgsProcessingParameterNumber.Type.Double


def advanced(parameter):
    """The same parameter, shown under the form's advanced parameters."""
    parameter.setFlags(parameter.flags() | QgsProcessingParameterDefinition.Flag.FlagAdvanced)
    return parameter


def with_help(parameter, text):
    parameter.setHelp(text)
    return parameter


def number_parameter(key, label, text, default=None, least=None):
    parameter = QgsProcessingParameterNumber(key, label, _REAL, optional=True)
    parameter.setDefaultValue(default)
    if least is not None:
        parameter.setMinimum(least)
    return with_help(parameter, text)


def text_parameter(key, label, text, multiline=False):
    return with_help(
        QgsProcessingParameterString(key, label, defaultValue=None, optional=True, multiLine=multiline), text
    )


def field_parameter(key, label, text, parent, kind=None):
    return with_help(
        QgsProcessingParameterField(
            key,
            label,
            defaultValue=None,
            parentLayerParameterName=parent,
            type=_FIELD.Any if kind is None else kind,
            optional=True,
        ),
        text,
    )


def choice_parameter(key, label, text, options, default=None):
    parameter = QgsProcessingParameterEnum(
        key, label, options=list(options), usesStaticStrings=True, defaultValue=default, optional=default is None
    )
    return with_help(parameter, text)
