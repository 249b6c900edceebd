"""Parameters of the comparison of surveys."""

from qgis.core import QgsProcessingParameterBoolean, QgsProcessingParameterMultipleLayers

from ..entry.parameter_builders import SOURCE, advanced, choice_parameter, number_parameter, text_parameter, with_help
from ..language.translation import tr


def surveys():
    parameter = QgsProcessingParameterMultipleLayers("SURVEYS", tr("Surveys"), SOURCE.TypeVectorPoint)
    parameter.setMinimumNumberInputs(2)
    return with_help(
        parameter,
        tr(
            "Two or more layers of stations of one structure with axis, station, chainage and height, for example "
            "outputs of 'Design heights and residuals'. The earliest is compared with."
        ),
    )


def dates():
    return text_parameter(
        "DATES",
        tr("Dates"),
        tr(
            "Of the surveys in their order, year-month-day, separated by semicolons: 2025-03-11; 2026-03-09. Empty: "
            "from each layer's field 'date'."
        ),
    )


def date_field():
    return advanced(
        text_parameter("DATE_FIELD", tr("Field with the date"), tr("In every survey. Empty: a field 'date'."))
    )


def compared_height_field():
    return advanced(
        text_parameter(
            "HEIGHT_FIELD",
            tr("Field with the height"),
            tr("In every survey. Empty: a field 'height', else design_h plus residual, else the point's Z."),
        )
    )


def matching():
    return choice_parameter(
        "MATCH",
        tr("Match stations by"),
        tr(
            "How one station is known again. chainage: the nearest of the same axis within the matching tolerance. "
            "name: the same axis and station."
        ),
        ("chainage", "name"),
        "chainage",
    )


def match_tolerance():
    return number_parameter(
        "MATCH_TOLERANCE",
        tr("Matching tolerance"),
        tr(
            "Greatest distance along the axis, and across where offsets are known, in the unit of chainages, between "
            "two readings of one station. Empty: 0.5 m."
        ),
        None,
        0.0,
    )


def compared_sigma():
    return number_parameter(
        "SIGMA",
        tr("Standard deviation of a height"),
        tr(
            "One value for all, in the unit of heights. Empty: from each survey's field 'sd'; without one, changes are "
            "given but not judged."
        ),
        None,
        0.0,
    )


def common_shift():
    return choice_parameter(
        "SHIFT",
        tr("Common shift"),
        tr(
            "What all stations of an axis share, separated from bending. robust: stretches that have moved have little "
            "say in it. mean: weighted mean. none: not separated."
        ),
        ("robust", "mean", "none"),
        "robust",
    )


def common_tilt():
    return with_help(
        QgsProcessingParameterBoolean("TILT", tr("Separate a common tilt too"), defaultValue=False),
        tr(
            "A rise along the axis in proportion to the chainage, as from a levelling error or a rotation of the whole."
        ),
    )
