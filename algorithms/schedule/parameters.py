"""Parameters of the adjustment schedule."""

from qgis.core import QgsProcessingParameterFeatureSource

from ..entry.parameter_builders import SOURCE, advanced, choice_parameter, number_parameter, with_help
from ..language.translation import tr


def adjustment_method():
    return choice_parameter(
        "METHOD",
        tr("Method"),
        tr(
            "What is aimed at. full: every support as near to its design height as increment and travel allow. "
            "least: the smallest sum of movements that brings every support within the tolerance; those within "
            "it stay."
        ),
        ("full", "least"),
        "full",
    )


def step():
    return number_parameter(
        "STEP",
        tr("Shim increment"),
        tr(
            "Movements are whole multiples of it, in the unit of heights: with 0.001 in metres a residual of "
            "-20.6 mm is raised by 21 mm. Empty: any movement."
        ),
        None,
        0.0,
    )


def travel():
    return (
        number_parameter(
            "LIMIT",
            tr("Greatest movement"),
            tr(
                "Travel of the jack, up and down, in the unit of heights: 0.05 in metres is 50 mm each way. "
                "Empty: no limit."
            ),
            None,
            0.0,
        ),
        advanced(
            number_parameter(
                "LIMIT_DOWN",
                tr("Greatest lowering"),
                tr(
                    "Where it differs from the greatest raise, for example 0 where supports can only be shimmed up. "
                    "Empty: as the greatest movement."
                ),
                None,
                0.0,
            )
        ),
    )


def adjusted_tolerance():
    return number_parameter(
        "TOLERANCE",
        tr("Tolerance"),
        tr(
            "Greatest residual that counts as within, in the unit of heights: 0.01 in metres is 10 mm. Empty: "
            "that of the run that made the stations, for each axis."
        ),
        None,
        0.0,
    )


def smoothness():
    return advanced(
        number_parameter(
            "SMOOTHNESS",
            tr("Limit between neighbours"),
            tr(
                "Greatest difference of the predicted residuals of supports that follow each other on an axis, "
                "in the unit of heights: the kink that stays in the finished structure. With 0.002 in metres +1 "
                "mm and -1 mm may be neighbours, +2 mm and -1 mm not. Supports that are left out are passed "
                "over. Empty: no limit."
            ),
            None,
            0.0,
        )
    )


def line():
    """Parameters of the movement sideways. Empty is none: a default would stand in the record of whoever has heights
    only."""
    sideways = (
        (
            "STEP_LINE",
            tr("Increment of the lateral movement"),
            tr(
                "Movements left and right are whole multiples of it, in the unit of heights: 0.0005 in metres is "
                "half a millimetre. Empty: any movement."
            ),
        ),
        (
            "LIMIT_LINE",
            tr("Greatest lateral movement"),
            tr(
                "Travel to the right and to the left, in the unit of heights: 0.02 in metres is 20 mm each way. "
                "Empty: no limit."
            ),
        ),
        (
            "LIMIT_LEFT",
            tr("Greatest movement to the left"),
            tr(
                "Where it differs from that to the right, for example 0 where supports cannot go left. Empty: as "
                "the greatest lateral movement."
            ),
        ),
        (
            "LINE_TOLERANCE",
            tr("Tolerance of the line"),
            tr(
                "Greatest lateral departure that counts as within, in the unit of heights: 0.01 in metres is 10 "
                "mm to each side. Empty: that of the run that made the stations, for each axis."
            ),
        ),
        (
            "SMOOTHNESS_LINE",
            tr("Lateral limit between neighbours"),
            tr(
                "Greatest difference of their predicted lateral departures, in the unit of heights: 0.002 in "
                "metres is 2 mm. Empty: no limit."
            ),
        ),
    )
    choice = choice_parameter(
        "LINE",
        tr("Line"),
        tr(
            "Whether there is lateral movement too. Empty or none: no. lateral: by the stations' field "
            "'lateral', which 'Design heights and residuals' writes with LINE: a support that stands right is "
            "moved left, in increment and travel of its own, by the same method. Left and right are meant "
            "looking up-chainage."
        ),
        ("none", "lateral"),
    )
    return [advanced(choice), *(advanced(number_parameter(*one, None, 0.0)) for one in sideways)]


def tested_stations():
    parameter = QgsProcessingParameterFeatureSource("TESTED", tr("Tested stations"), [SOURCE.TypeVector], optional=True)
    return with_help(
        parameter,
        tr(
            "Output of 'Fit a straight line or plane': stations suspected of a blunder are left out. Three and more "
            "suspected neighbours on one side are a stretch that has moved, and are scheduled; so are all of an axis "
            "where more than a tenth of its stations is suspected. Those suspected in line are left out of the "
            "lateral movement, by the same rules."
        ),
    )


def decisions():
    parameter = QgsProcessingParameterFeatureSource("DECISIONS", tr("Decisions"), [SOURCE.TypeVector], optional=True)
    return with_help(
        parameter,
        tr(
            "Table with the fields axis, station, decision, note. Decisions: accept (stays as it is), move the "
            "support (included although flagged), measure again, reading error, blunder, leave out."
        ),
    )
