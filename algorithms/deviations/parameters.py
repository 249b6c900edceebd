"""Parameters of the drawn deviations."""

from qgis.core import QgsProcessingParameterFeatureSink, QgsProcessingParameterFeatureSource

from ..entry.parameter_builders import SOURCE, advanced, choice_parameter, number_parameter, with_help
from ..language.translation import tr


def stations_with_residuals():
    return with_help(
        QgsProcessingParameterFeatureSource("STATIONS", tr("Stations with residuals"), [SOURCE.TypeVectorPoint]),
        tr("Output of 'Design heights and residuals': its fields residual, chainage, design_h and flat_h are used."),
    )


def drawn_tolerance():
    return number_parameter(
        "TOLERANCE",
        tr("Tolerance"),
        tr(
            "Half the width of the band, in the unit of heights: 0.01 in metres, drawn 10,000 times larger, "
            "reaches 100 m to each side. Empty: that of the run that computed the stations. A field 'tolerance' "
            "of an axis layer with designs overrides it."
        ),
        None,
        0.0,
    )


def exaggeration():
    return number_parameter(
        "EXAGGERATION",
        tr("Exaggeration of the bars"),
        tr(
            "How many times larger than in truth a residual is drawn on the ground: with 10000 a bar of 10 m "
            "stands for 1 mm. Empty: a round number by which an ordinary large residual, or the tolerance, takes "
            "up to a twentieth of the structure's length."
        ),
        None,
        0.0,
    )


def high_side():
    return choice_parameter(
        "HIGH_SIDE",
        tr("Side of stations built high"),
        tr(
            "Bars of stations built high point to this side of the axis looking up-chainage, those built low to the "
            "other."
        ),
        ("right", "left"),
        "right",
    )


def longest_bar():
    return advanced(
        number_parameter(
            "LONGEST_BAR",
            tr("Longest bar (metres)"),
            tr(
                "Length on the ground beyond which a bar is cut and marked. Empty: a sixth of the structure's "
                "length, 433 of 2,600 m."
            ),
            None,
            0.0,
        )
    )


def view():
    return choice_parameter(
        "VIEW",
        tr("Strip shows heights from"),
        tr(
            "level: from the level surface, where a straight structure is a curve. straight: from the straight line of "
            "the design, where the level surface is the curve. The heights are the same."
        ),
        ("level", "straight"),
        "level",
    )


def strip_side():
    return choice_parameter(
        "SIDE",
        tr("Side of the strip"),
        tr("Looking up-chainage. automatic: away from the other axes; of one axis alone, where the bars are shorter."),
        ("automatic", "left", "right"),
        "automatic",
    )


def strip_distance():
    return advanced(
        number_parameter(
            "DISTANCE",
            tr("Distance of the strip from the axis (metres)"),
            tr(
                "On the ground, from the axis to the strip's datum line, for example 300. Empty: clear of bars "
                "and band."
            ),
            None,
            0.0,
        )
    )


def strip_exaggeration():
    return advanced(
        number_parameter(
            "STRIP_EXAGGERATION",
            tr("Exaggeration of the strip"),
            tr(
                "With 500 a height of 200 mm is drawn 100 m high. Empty: a round number by which the highest "
                "strip takes up to a sixth of the structure's length."
            ),
            None,
            0.0,
        )
    )


def line():
    """Parameters of what is drawn of the line; empty, as whoever has heights only leaves them."""
    return (
        advanced(
            number_parameter(
                "LINE_TOLERANCE",
                tr("Tolerance of the line"),
                tr(
                    "Limits in the plan strip, in the unit of heights: 0.01 in metres, drawn 5,000 times larger, is 50 "
                    "m to each side of its line. Empty: that of the run that computed the stations. A field "
                    "'line_tol' of an axis layer with designs overrides it."
                ),
                None,
                0.0,
            )
        ),
        advanced(
            number_parameter(
                "LINE_EXAGGERATION",
                tr("Exaggeration of the lateral bars"),
                tr(
                    "With 2000 a bar of 10 m stands for 5 mm beside the line. Empty: a round number found as that of "
                    "the residual bars is, from the lateral departures."
                ),
                None,
                0.0,
            )
        ),
        advanced(
            number_parameter(
                "PLAN_EXAGGERATION",
                tr("Exaggeration across the plan strip"),
                tr(
                    "Along the axis the strip is true to scale. With 5000 a departure of 12 mm is drawn 60 m from the "
                    "strip's line. Empty: a round number by which the widest strip takes up to a sixth of the "
                    "structure's length."
                ),
                None,
                0.0,
            )
        ),
    )


def drawn_layer(key, label, text, kind, *, optional=False, by_default=True):
    """An output layer of SourceType ``kind``, made by default in the form also where it is optional, unless
    ``by_default`` is False."""
    sink = QgsProcessingParameterFeatureSink(key, label, kind, optional=optional, createByDefault=by_default)
    return with_help(sink, text)
