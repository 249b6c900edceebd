"""Parameters of the entries that state, fit or test a design."""

from qgis.core import QgsProcessingParameterBoolean, QgsProcessingParameterFeatureSource

from ..core.choices import DESIGNS, EARTHS, LINES
from ..entry.parameter_builders import (
    SOURCE,
    advanced,
    choice_parameter,
    field_parameter,
    number_parameter,
    text_parameter,
    with_help,
)
from ..language.translation import tr


def design():
    return choice_parameter(
        "DESIGN",
        tr("Design"),
        tr(
            "chord: straight between two controls. tangent: straight, level at one control. inclined: straight, rising "
            "by SLOPE at one control. reference: a fitted or fixed plane. level: follows the level surface. grade: "
            "constant slope above the level surface, or from A to B where SLOPE is empty."
        ),
        DESIGNS,
        "chord",
    )


def control(letter):
    """Parameters CHAINAGE_x and HEIGHT_x of control 'A' or 'B'."""
    return (
        text_parameter(
            f"CHAINAGE_{letter}",
            tr("Chainage of control {}").format(letter),
            tr(
                "A distance or a station such as 12+50. Empty: found from the stations that have a height: the first "
                "for A (tangent: nearest to the middle), the last for B."
            ),
        ),
        number_parameter(
            f"HEIGHT_{letter}",
            tr("Height of control {}").format(letter),
            tr(
                "Design height there, for example 3742.600. Empty: the as-built height of the station nearest to "
                "that chainage, at most 1 m away, so that its residual is 0."
            ),
        ),
    )


def slope():
    return number_parameter(
        "SLOPE",
        tr("Slope"),
        tr(
            "Rise of the design height per chainage at control A, without unit: 0.003 for 3 mm per metre, which "
            "is 0.3 percent. For the designs inclined and grade."
        ),
    )


def reference():
    parameter = QgsProcessingParameterFeatureSource("REFERENCE", tr("Reference"), [SOURCE.TypeVector], optional=True)
    return advanced(
        with_help(
            parameter,
            tr(
                "Layer with the planes for the design 'reference': fields name, lat0, lon0, h0, nx, ny, nz, h_system, "
                "undul. Its name matches an axis; a single row serves all axes."
            ),
        )
    )


def refraction():
    return advanced(
        number_parameter(
            "REFRACTION",
            tr("Refraction coefficient k"),
            tr(
                "Share of the curvature effect that refraction takes away from a line of sight: 0 for a structure, "
                "0.13 is usual by day over land for a sight, and it can be negative near warm ground. 0.13 takes away "
                "10 of the 78 mm of the first kilometre."
            ),
            0.0,
        )
    )


def earth():
    return advanced(
        choice_parameter(
            "EARTH",
            tr("Earth model"),
            tr("ellipsoid: exact. sphere, and flat (no curvature): for comparison only."),
            EARTHS,
            "ellipsoid",
        )
    )


def tolerance():
    return number_parameter(
        "TOLERANCE",
        tr("Tolerance"),
        tr(
            "Greatest residual that counts as within, in the unit of heights: 0.01 in metres is 10 mm. Empty: no "
            "status within, high or low is given."
        ),
        None,
        0.0,
    )


def line():
    """Parameters LINE and LINE_TOLERANCE. Empty is none: a default would stand in the record of whoever has heights
    only."""
    return (
        advanced(
            choice_parameter(
                "LINE",
                tr("Line"),
                tr(
                    "What the line in plan is judged by, beside the height. Empty or none: not at all. axis: the "
                    "offset from the axis as drawn, which must be surveyed or designed; an axis drawn by hand on "
                    "imagery is no basis for judging. chord: the vertical plane through the stations at the design's "
                    "two controls, else through the first and the last station. fitted: the vertical plane that fits "
                    "the stations best. Adds the fields lateral (positive is right, looking up-chainage) and side."
                ),
                LINES,
            )
        ),
        advanced(
            number_parameter(
                "LINE_TOLERANCE",
                tr("Tolerance of the line"),
                tr(
                    "Greatest lateral departure that counts as within, in the unit of heights: 0.01 in metres is 10 mm "
                    "to each side. Empty: no side within, left or right is given."
                ),
                None,
                0.0,
            )
        ),
    )


def fitted_line():
    """Parameters LINE of a fit, SIGMA_LINE and SIGMA_LINE_FIELD."""
    return (
        advanced(
            choice_parameter(
                "LINE",
                tr("Line"),
                tr(
                    "Whether the line in plan is fitted and tested beside the heights, with FIT 'line'. Empty or "
                    "none: not at all. fitted: the vertical plane that fits the stations best. Adds the fields "
                    "lateral (positive is right, looking up-chainage), lat_w, lat_redund, lat_blund and lat_flag, and "
                    "the line's position, azimuth and tests to the reference."
                ),
                ("none", "fitted"),
            )
        ),
        advanced(
            number_parameter(
                "SIGMA_LINE",
                tr("Standard deviation of a lateral position"),
                tr(
                    "Across the line, one value for all stations, in the unit of heights; at 0.002 departures from "
                    "about 0.0066 on are suspected. Empty: from a field, else estimated from the lateral departures."
                ),
                None,
                0.0,
            )
        ),
        advanced(
            field_parameter(
                "SIGMA_LINE_FIELD",
                tr("Field with the standard deviation of the lateral positions"),
                tr(
                    "In the unit of heights; 'Measure chainage and offset' gives it from those of east and north. "
                    "Empty: SIGMA_LINE, else a field 'sd_line', else the accuracy is estimated from the departures."
                ),
                "STATIONS",
            )
        ),
    )


def sigma_field(parent="STATIONS"):
    return advanced(
        field_parameter(
            "SIGMA_FIELD",
            tr("Field with the heights' standard deviation"),
            tr(
                "In the unit of heights. Empty: SIGMA, else a field 'sd', else the accuracy is estimated from the "
                "residuals."
            ),
            parent,
        )
    )


def sigma():
    return number_parameter(
        "SIGMA",
        tr("Standard deviation of a height"),
        tr(
            "One value for all stations, in the unit of heights: 0.003 in metres where a height is good to 3 mm. "
            "Empty: from a field, else estimated."
        ),
        None,
        0.0,
    )


def sigma_km():
    return advanced(
        number_parameter(
            "SIGMA_KM",
            tr("Standard deviation of the levelling over 1 km (mm)"),
            tr(
                "Of the levelling as used; where a section was levelled once, the value quoted for double levelling "
                "times 1.41, so that 0.5 becomes 0.7. Heights levelled along an axis share errors, at 0.7 and 4 km "
                "1.4 mm; an ellipse that ignores this holds the truth far less often than the 95 % that it states."
            ),
            None,
            0.0,
        )
    )


def given_covariance():
    """Parameters COVARIANCE and NAME_FIELD."""
    parameter = QgsProcessingParameterFeatureSource(
        "COVARIANCE", tr("Covariance of the heights"), [SOURCE.TypeVector], optional=True
    )
    return (
        advanced(
            with_help(
                parameter,
                tr(
                    "Table that 'Adjust levelled height differences' writes: fields point and covar. It has "
                    "precedence over SIGMA_FIELD and SIGMA_KM; SIGMA, where given, is that of a height apart from the "
                    "levelling and is added; where it is empty, a point held fixed gets 0.1 mm. Empty: the table that "
                    "the record of the stations' layer names, if any."
                ),
            )
        ),
        advanced(
            field_parameter(
                "NAME_FIELD",
                tr("Field with the station's name"),
                tr("Finds each station in COVARIANCE. Empty: a field 'point', 'name' or 'station'."),
                "STATIONS",
            )
        ),
    )


def fit_kind():
    return choice_parameter(
        "FIT",
        tr("Fit"),
        tr(
            "line: for each axis, or each leg of a bent one. plane: one for each group of axes, counting a common "
            "corner once."
        ),
        ("line", "plane"),
        "line",
    )


def group_field():
    return advanced(
        field_parameter(
            "GROUP_FIELD",
            tr("Field that names the group, in the axis layer"),
            tr("Axes of one group share a plane. Empty: a field 'group', else all axes are one group."),
            "AXIS",
        )
    )


def robust():
    return advanced(
        with_help(
            QgsProcessingParameterBoolean("ROBUST", tr("Robust start"), defaultValue=False),
            tr(
                "Begin the search for blunders from a robust fit (Huber): for many suspects, or where a stretch of the "
                "structure has moved and no standard deviation is given. Works only where suspected blunders are set "
                "aside."
            ),
        )
    )


def remove_blunders():
    return with_help(
        QgsProcessingParameterBoolean("REMOVE_BLUNDERS", tr("Set suspected blunders aside"), defaultValue=True),
        tr("One by one, the greatest first; each is listed and stays in the output. Off: they are only flagged."),
    )


def geoid_slope():
    """A slope of the geoid that the project knows, by components, and the accuracy of whatever slope is used."""
    parts = (
        ("GEOID_SLOPE_E", tr("Slope of the geoid to the east (seconds of arc)"), tr("east"), "\u03b7"),
        ("GEOID_SLOPE_N", tr("Slope of the geoid to the north (seconds of arc)"), tr("north"), "\u03be"),
    )
    text = tr(
        "Rise of the undulation N towards the {}, at the structure, where the project knows its deflection of "
        "the vertical: the slope is the deflection's component {} with the opposite sign. It sets horizon, level "
        "point and tangent point. Not with UNDULATION 'field' or 'grid', which bring a slope of their own. 5 "
        "seconds raise N by 73 mm in 3 km."
    )
    return (
        *(advanced(number_parameter(key, label, text.format(side, sign))) for key, label, side, sign in parts),
        advanced(
            number_parameter(
                "GEOID_SLOPE_SIGMA",
                tr("Standard deviation of the geoid's slope (seconds of arc)"),
                tr(
                    "For each component; one second is 31 m of the point that needs the slope. Empty: 4 for EGM96, 2.5 "
                    "for grids of 5 minutes or finer and for a field of undulations, 8 where nothing is known. Needed "
                    "with a stated slope."
                ),
                None,
                0.0,
            )
        ),
    )


def geoid_bending():
    return advanced(
        number_parameter(
            "GEOID_BENDING",
            tr("Share of the geoid's bending"),
            tr(
                "Standard deviation that the bending of the geoid adds to the curvature factor. Empty: 0.04 at 3 km, "
                "less for longer structures, half where a fine grid of undulations is applied."
            ),
            None,
            0.0,
        )
    )
