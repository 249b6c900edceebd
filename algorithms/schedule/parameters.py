"""Parameters of the adjustment schedule."""

from qgis.core import QgsProcessingParameterFeatureSource

from ..entry.parameter_builders import SOURCE, advanced, choice_parameter, number_parameter, with_help
from ..language.translation import tr


def adjustment_method():
    return choice_parameter(
        "METHOD",
        tr("Method"),
        tr(
            "What is aimed at. full: every support as near to its design height as step and travel allow. least: the "
            "smallest sum of movements that brings every support within the tolerance; those within it stay."
        ),
        ("full", "least"),
        "full",
    )


def step():
    return number_parameter(
        "STEP",
        tr("Step of the shims"),
        tr("Movements are whole multiples of it, in the unit of heights. Empty: any movement."),
        None,
        0.0,
    )


def travel():
    return (
        number_parameter(
            "LIMIT",
            tr("Greatest movement"),
            tr("Travel of the jack, up and down, in the unit of heights. Empty: no limit."),
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
            "Greatest residual that counts as within, in the unit of heights. Empty: that of the run that made the "
            "stations, for each axis."
        ),
        None,
        0.0,
    )


def smoothness():
    return advanced(
        number_parameter(
            "SMOOTHNESS",
            tr("Greatest difference between neighbours"),
            tr(
                "Between the predicted residuals of supports that follow each other on an axis, in the unit of "
                "heights: the kink that stays in the finished structure. Supports that are left out are passed over. "
                "Empty: no limit."
            ),
            None,
            0.0,
        )
    )


def tested_stations():
    parameter = QgsProcessingParameterFeatureSource("TESTED", tr("Tested stations"), [SOURCE.TypeVector], optional=True)
    return with_help(
        parameter,
        tr(
            "Output of 'Fit a straight line or plane': stations suspected of a blunder are left out. Three and more "
            "suspected neighbours on one side are a stretch that has moved, and are scheduled; so are all of an axis "
            "where more than a tenth of its stations is suspected."
        ),
    )


def decisions():
    parameter = QgsProcessingParameterFeatureSource("DECISIONS", tr("Decisions"), [SOURCE.TypeVector], optional=True)
    return with_help(
        parameter,
        tr(
            "Table with the fields axis, station, decision, note. Decisions: accept (stays as it is), move the support "
            "(taken in although flagged), measure again, reading error, blunder, leave out."
        ),
    )
