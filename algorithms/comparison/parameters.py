"""Parameters of the comparison of surveys."""

from qgis.core import (
    QgsProcessingParameterBoolean,
    QgsProcessingParameterFeatureSource,
    QgsProcessingParameterMultipleLayers,
)

from ..entry.parameter_builders import SOURCE, advanced, choice_parameter, number_parameter, text_parameter, with_help
from ..language.translation import tr

# What LINE takes, and the field that it stands in.
FIELDS = {"offset": "offset", "lateral": "lateral"}
# Tables of further surveys are found by the records of their layers.
MOST_COVARIANCES = 4


def surveys():
    parameter = QgsProcessingParameterMultipleLayers("SURVEYS", tr("Surveys"), SOURCE.TypeVectorPoint)
    parameter.setMinimumNumberInputs(2)
    return with_help(
        parameter,
        tr(
            "Two or more layers of stations of one structure with axis, station, chainage and height, for example "
            "outputs of 'Design heights and residuals'. The others are compared with the earliest."
        ),
    )


def dates():
    return text_parameter(
        "DATES",
        tr("Dates"),
        tr(
            "One for each survey in their order, year-month-day, separated by semicolons: 2025-03-11; 2026-03-09. "
            "Empty: from each layer's field 'date'."
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
            "How stations are matched. chainage: the nearest of the same axis within the matching tolerance. "
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
            "One value for all, in the unit of heights: of a height by itself, in addition to what levelling adds. "
            "With 0.0008 in metres a change has a standard deviation of 1.1 mm, and is significant beyond 3.7 mm. "
            "Empty: from each survey's field 'sd'; without one, changes are given but not judged. With a covariance "
            "it is that of setting up on a mark and is added; where it is empty, a point held fixed gets 0.1 mm."
        ),
        None,
        0.0,
    )


def sigmas():
    return advanced(
        text_parameter(
            "SIGMAS",
            tr("Standard deviation of a height, for each survey"),
            tr(
                "A number for each of the surveys in their order, as in DATES, separated by semicolons: 0.001; "
                "0.0007. Left empty between semicolons: SIGMA."
            ),
        )
    )


def compared_sigma_km():
    return number_parameter(
        "SIGMA_KM",
        tr("Standard deviation of the levelling over 1 km (mm)"),
        tr(
            "One value for all surveys, each levelled outwards along the axis: of the levelling as used; where a "
            "section was levelled once, the value quoted for double levelling times 1.41, so that 0.5 becomes 0.7. "
            "Levelled heights share errors, and these look like a common shift and tilt: without SIGMA_KM or a "
            "covariance both are given, but not judged."
        ),
        None,
        0.0,
    )


def sigmas_km():
    return advanced(
        text_parameter(
            "SIGMAS_KM",
            tr("The same over 1 km (mm), for each survey"),
            tr("As SIGMAS. Left empty between semicolons: SIGMA_KM."),
        )
    )


def line():
    """Parameters of the line. Empty is none: a default would stand in the record of whoever has heights only."""
    return (
        advanced(
            choice_parameter(
                "LINE",
                tr("Line"),
                tr(
                    "What is compared of the line in plan, beside the heights of the same stations. Empty or "
                    "none: nothing. offset: the offset from the axis, one line for all surveys, so that a "
                    "movement of the whole shows too; all must be measured from the same axis. lateral: the "
                    "field that 'Design heights and residuals' writes; from a chord or a fit it starts from each "
                    "survey's own line, and then only differential movement is judged. Positive is right, "
                    "looking up-chainage."
                ),
                ("none", *FIELDS),
            )
        ),
        advanced(
            number_parameter(
                "SIGMA_LINE",
                tr("Standard deviation of a lateral position"),
                tr(
                    "Of a lateral departure or an offset, one value for all surveys, in the unit of heights: how well "
                    "the position of a station is known relative to its neighbours. With 0.0008 in metres a movement "
                    "is significant beyond 3.7 mm. Empty: from each survey's field 'sd_line'; without one, changes "
                    "are given but not judged."
                ),
                None,
                0.0,
            )
        ),
        advanced(
            text_parameter(
                "SIGMAS_LINE",
                tr("Standard deviation of a lateral position, for each survey"),
                tr("As SIGMAS. Left empty between semicolons: SIGMA_LINE."),
            )
        ),
    )


def levelled_from():
    return advanced(
        number_parameter(
            "LEVELLED_FROM",
            tr("Chainage where the levelling began"),
            tr(
                "With SIGMA_KM, in the unit of chainages: on both sides errors grow from there; 1300 where it "
                "began at 1+300. Empty: 0."
            ),
        )
    )


def covariances():
    """Parameters COVARIANCE_1 to COVARIANCE_4."""
    return [
        advanced(
            with_help(
                QgsProcessingParameterFeatureSource(
                    f"COVARIANCE_{number}",
                    tr("Covariance of the heights of survey {}").format(number),
                    [SOURCE.TypeVector],
                    optional=True,
                ),
                tr(
                    "Table that 'Adjust levelled height differences' writes, fields point and covar, for survey {} in "
                    "the order of the list. It has precedence over SIGMA_KM and a field 'sd'. Empty: the table that "
                    "the record of the survey's layer names, if any. Stations are found by a field 'point', 'name' or "
                    "'station'."
                ).format(number),
            )
        )
        for number in range(1, MOST_COVARIANCES + 1)
    ]


def common_shift():
    return choice_parameter(
        "SHIFT",
        tr("Common shift"),
        tr(
            "What all stations of an axis share, separated from differential movement. robust: from the stations that "
            "have not moved among themselves; stretches of neighbours that stand out are set aside; where that is "
            "half an axis or more, no common movement is removed. mean: from all stations. none: not separated."
        ),
        ("robust", "mean", "none"),
        "robust",
    )


def common_tilt():
    return with_help(
        QgsProcessingParameterBoolean("TILT", tr("Separate a common tilt too"), defaultValue=False),
        tr(
            "A rise along the axis in proportion to the chainage, as from a levelling error or a rotation of the "
            "whole: 0.000002 is 2 mm in a kilometre, 2 ppm; with LINE also a rotation in plan; where each survey has "
            "its own line, that is always separated."
        ),
    )
