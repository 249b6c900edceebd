"""Fresh parameters of the entries that bring field books to heights: reducesights and adjustlevelling."""

from qgis.core import (
    QgsProcessing,
    QgsProcessingParameterBoolean,
    QgsProcessingParameterFeatureSink,
    QgsProcessingParameterFeatureSource,
)

from ..core.choices import ANGLE_UNITS
from ..core.misclosure import CLASSES
from ..core.units import METRES
from ..entry.parameter_builders import (
    advanced,
    choice_parameter,
    field_parameter,
    file_parameter,
    number_parameter,
    text_parameter,
    with_help,
)
from ..language.translation import tr

_SOURCE = QgsProcessing.SourceType

_IN_VIEW = ("FROM_FIELD", "TO_FIELD", "SLOPE_FIELD", "ZENITH_FIELD", "BACK_FIELD", "FORE_FIELD")


def sight_field_table():
    """Fields of reducesights: key, label, names found by default, help."""
    return (
        (
            "FROM_FIELD",
            tr("Field with the point sighted from"),
            ("from_pt", "from", "from_point"),
            tr("Name of the point under the instrument, or of the back staff."),
        ),
        (
            "TO_FIELD",
            tr("Field with the point sighted to"),
            ("to_pt", "to", "to_point"),
            tr("Name of the target's point, or of the fore staff."),
        ),
        (
            "SLOPE_FIELD",
            tr("Field with the slope distance"),
            ("slope_dist", "slope_distance"),
            tr("Along the line of sight."),
        ),
        (
            "HORIZONTAL_FIELD",
            tr("Field with the horizontal distance"),
            ("horiz_dist", "horizontal_distance", "hor_dist"),
            tr("Used where there is no slope distance; HORIZONTAL_AT says where it lies."),
        ),
        (
            "ZENITH_FIELD",
            tr("Field with the zenith angle"),
            ("zenith", "zenith_angle"),
            tr("Counted from the zenith: a level sight has 90 degrees. Second-face readings are turned."),
        ),
        (
            "VERTICAL_FIELD",
            tr("Field with the vertical angle"),
            ("vertical", "vertical_angle"),
            tr("Counted from the horizon, positive up. Used where there is no zenith angle."),
        ),
        (
            "INSTRUMENT_FIELD",
            tr("Field with the instrument height"),
            ("inst_h", "instrument_height", "hi"),
            tr("Above the point sighted from; 0 without one."),
        ),
        (
            "TARGET_FIELD",
            tr("Field with the target height"),
            ("target_h", "target_height", "ht"),
            tr("Above the point sighted to; 0 without one."),
        ),
        (
            "BACK_FIELD",
            tr("Field with the back sight"),
            ("back", "backsight", "bs"),
            tr("Reading on the back staff of a level."),
        ),
        (
            "FORE_FIELD",
            tr("Field with the fore sight"),
            ("fore", "foresight", "fs"),
            tr("Reading on the fore staff of a level."),
        ),
        (
            "BACK_LENGTH_FIELD",
            tr("Field with the length of the back sight"),
            ("back_len", "back_length", "back_dist"),
            tr("From the level to the back staff; 0 where the reading is the instrument's own height above the point."),
        ),
        (
            "FORE_LENGTH_FIELD",
            tr("Field with the length of the fore sight"),
            ("fore_len", "fore_length", "fore_dist"),
            tr("From the level to the fore staff."),
        ),
        (
            "POINT_FIELD",
            tr("Field with the staff's point, in a levelling book"),
            ("point",),
            tr(
                "For a book with one row for each staff point: back, intermediate and fore sights in columns. Turning "
                "points may stay without a name; sections run from one name to the next. Used where there is no field "
                "with 'from'."
            ),
        ),
        (
            "INTER_FIELD",
            tr("Field with the intermediate sight"),
            ("inter", "intermediate"),
            tr("Of a levelling book; its length stands where that of the fore sight does."),
        ),
        (
            "K_FIELD",
            tr("Field with the coefficient of refraction"),
            ("k",),
            tr("For each sight; an empty cell takes that of the day, else REFRACTION."),
        ),
        ("DAY_FIELD", tr("Field with the day"), ("day", "date"), tr("Any text; sights of one text share a day.")),
    )


def sights():
    return with_help(
        QgsProcessingParameterFeatureSource("INPUT", tr("Sights"), [_SOURCE.TypeVector]),
        tr(
            "A table: a row for each sight of a theodolite or total station, for each setup of a level, or for each "
            "staff point of a levelling book. Fields with usual names are found, and the log says how each was read."
        ),
    )


def sight_fields():
    """The field parameters of reducesights, usual ones in view."""
    made = [
        field_parameter(
            key,
            label,
            tr("{} Empty: a field {}.").format(text, tr(" or ").join(f"'{name}'" for name in names)),
            "INPUT",
        )
        for key, label, names, text in sight_field_table()
    ]
    return [one if one.name() in _IN_VIEW else advanced(one) for one in made]


def angle_unit():
    return choice_parameter(
        "ANGLE_UNIT",
        tr("Unit of angles"),
        tr(
            "degree: 88.3875. dms: degrees, minutes and seconds, 88 23 15. packed: 88.2315 for 88\u00b023'15\". gon: "
            "98.2083."
        ),
        ANGLE_UNITS,
        "degree",
    )


def distance_unit():
    return advanced(choice_parameter("DISTANCE_UNIT", tr("Unit of distances"), tr("Empty: as the heights."), METRES))


def sight_refraction():
    return number_parameter(
        "REFRACTION",
        tr("Coefficient of refraction k"),
        tr(
            "The Earth's radius over that of the line of sight. By day over land 0.13 is usual; near warm ground it "
            "can be negative. Empty: from a field, for the day, or from reciprocal sights; sights that need one and "
            "have none are rejected."
        ),
    )


def refraction_of_days():
    return advanced(
        text_parameter(
            "REFRACTION_DAYS",
            tr("Coefficient of refraction for each day"),
            tr("Pairs day=k separated by semicolons, for example 2026-05-01=0.13; 2026-05-02=0.08."),
        )
    )


def refraction_solved():
    parameter = QgsProcessingParameterBoolean(
        "REFRACTION_SOLVED", tr("Use k from reciprocal sights"), defaultValue=False
    )
    return advanced(
        with_help(
            parameter,
            tr(
                "Single sights take the mean k that the same day's reciprocal sights give, where no k is stated for "
                "the sight or its day."
            ),
        )
    )


HORIZONTAL_AT = ("instrument", "ellipsoid")


def horizontal_at():
    return advanced(
        choice_parameter(
            "HORIZONTAL_AT",
            tr("Where horizontal distances lie"),
            tr(
                "instrument: at the height of the instrument, as it shows them, the slope distance times the sine of "
                "the zenith angle. ellipsoid: arcs on the ellipsoid, as from coordinates (not grid distances: those "
                "carry the scale of the projection). On steep lines the two give other heights, 102 mm apart at 3 km "
                "and 15\u00b0. Empty: refused where it matters by more than 0.1 mm."
            ),
            HORIZONTAL_AT,
        )
    )


def site_height():
    return advanced(
        number_parameter(
            "SITE_HEIGHT",
            tr("Height of the sights above the ellipsoid"),
            tr(
                "In the unit of heights, midway between the ends of a sight; for HORIZONTAL_AT 'ellipsoid', since an "
                "arc there is shorter than the line at height. An error of 100 m changes a rise of 100 m by 1.6 mm. "
                "Empty: refused where 100 m matter by more than 0.1 mm."
            ),
        )
    )


def sight_radius():
    return advanced(
        number_parameter(
            "RADIUS",
            tr("Radius of the Earth (metres)"),
            tr(
                "Taken for every sight, in place of that of the points' positions or of LATITUDE; for example "
                "6371000, to repeat a computation made with another radius."
            ),
        )
    )


def latitude():
    return advanced(
        number_parameter(
            "LATITUDE",
            tr("Latitude (degrees)"),
            tr(
                "For the Earth's radius under the sights, on WGS 84. Empty: 6,371 km; the difference is below 0.6 "
                "percent of the correction."
            ),
        )
    )


def collimation():
    return advanced(
        number_parameter(
            "COLLIMATION",
            tr("Collimation of the level (seconds of arc)"),
            tr(
                "Positive: the line of sight points up; 2 reads 0.5 mm too high at 50 m. Empty: from the two-peg "
                "test, else 0."
            ),
        )
    )


def peg_test():
    return advanced(
        text_parameter(
            "PEG_TEST",
            tr("Two-peg test"),
            tr(
                "Two setups over the same pegs, each with both readings and both sight lengths in the units of this "
                "run, for example 1.476, 1.432, 20, 20; 1.556, 1.472, 50, 10. Its collimation corrects the setups."
            ),
        )
    )


def sight_sigmas():
    """Standard deviations of the instruments."""
    return [
        number_parameter(
            "ANGLE_SIGMA",
            tr("Standard deviation of an angle (seconds of arc)"),
            tr("Of a zenith or vertical angle as used; 1 is 1.5 mm at 300 m. Empty: sights get no standard deviation."),
            None,
            0.0,
        ),
        number_parameter(
            "READING_SIGMA",
            tr("Standard deviation of a staff reading (mm)"),
            tr("With 0.3 the difference of two readings has 0.4 mm. Empty: setups get no standard deviation."),
            None,
            0.0,
        ),
        advanced(
            number_parameter(
                "DISTANCE_SIGMA",
                tr("Standard deviation of a distance (mm)"),
                tr("The part that does not depend on the distance: 2 of an instrument quoted as 2 mm + 3 ppm."),
                0.0,
                0.0,
            )
        ),
        advanced(
            number_parameter(
                "DISTANCE_PPM",
                tr("Standard deviation of a distance (mm/km)"),
                tr("Its part that grows with the distance: 3 of the same instrument, 6 mm in 2 km."),
                0.0,
                0.0,
            )
        ),
        advanced(
            number_parameter(
                "HEIGHT_SIGMA",
                tr("Standard deviation of an instrument or target height (mm)"),
                tr("Of each of the two, as measured with a tape; 1.5 makes 2.1 mm of both together."),
                0.0,
                0.0,
            )
        ),
        advanced(
            number_parameter(
                "REFRACTION_SIGMA",
                tr("Standard deviation of k"),
                tr(
                    "0.05 makes 4 mm of a sight of 1 km. It cancels in reciprocal sights of one day, and in "
                    "setups with sights alike."
                ),
                0.0,
                0.0,
            )
        ),
    ]


def level_lines():
    return with_help(
        QgsProcessingParameterFeatureSource("INPUT", tr("Height differences"), [_SOURCE.TypeVector]),
        tr(
            "A table with a row for each levelled line: from, to, height difference, and length, number of setups or "
            "standard deviation. The output of 'Reduce sights' fits."
        ),
    )


def line_field_table():
    """Fields of adjustlevelling: key, label, names found by default, help."""
    return (
        (
            "FROM_FIELD",
            tr("Field with the start"),
            ("from_pt", "from", "from_point"),
            tr("Name of the point where a line starts."),
        ),
        ("TO_FIELD", tr("Field with the end"), ("to_pt", "to", "to_point"), tr("Name of the point where a line ends.")),
        (
            "DIFFERENCE_FIELD",
            tr("Field with the height difference"),
            ("dh", "difference", "height_difference"),
            tr("Height of the end less that of the start."),
        ),
        ("LENGTH_FIELD", tr("Field with the length"), ("length", "distance", "dist"), tr("Length of the line.")),
        ("SETUPS_FIELD", tr("Field with the number of setups"), ("setups",), tr("Setups of the line.")),
        (
            "SIGMA_FIELD",
            tr("Field with the standard deviation"),
            ("sd",),
            tr("Of the height difference, in the unit of heights."),
        ),
    )


def line_fields():
    """The field parameters of adjustlevelling."""
    made = [
        field_parameter(
            key,
            label,
            tr("{} Empty: a field {}.").format(text, tr(" or ").join(f"'{name}'" for name in names)),
            "INPUT",
        )
        for key, label, names, text in line_field_table()
    ]
    return [made[0], made[1], made[2], *map(advanced, made[3:])]


WEIGHTS = ("line", "km", "setup", "equal")


def weights():
    return choice_parameter(
        "WEIGHTS",
        tr("Accuracy of the lines"),
        tr(
            "line: each line's own standard deviation. km: grows with the square root of the length. setup: grows "
            "with the square root of the number of setups. equal: one for all. Empty: by what is typed, else by what "
            "the fields hold."
        ),
        WEIGHTS,
    )


def line_sigmas():
    return [
        number_parameter(
            "SIGMA_KM",
            tr("Standard deviation over 1 km (mm)"),
            tr(
                "Of a line as it is in the table; at 0.7 a line of 4 km has 1.4 mm. Empty: lengths give the weights, "
                "and the scale is estimated from the misclosures."
            ),
            None,
            0.0,
        ),
        advanced(
            number_parameter(
                "SIGMA_SETUP",
                tr("Standard deviation of a setup (mm)"),
                tr(
                    "At 0.1 a line of 16 setups has 0.4 mm. Empty: numbers of setups give the weights, and the "
                    "scale is estimated."
                ),
                None,
                0.0,
            )
        ),
        advanced(
            number_parameter(
                "SIGMA",
                tr("Standard deviation of every line"),
                tr(
                    "In the unit of heights, for WEIGHTS 'equal': 0.001 in metres is 1 mm for each line, long or "
                    "short. Empty: estimated."
                ),
                None,
                0.0,
            )
        ),
    ]


def benchmarks():
    parameter = QgsProcessingParameterFeatureSource("BENCHMARKS", tr("Benchmarks"), [_SOURCE.TypeVector], optional=True)
    return with_help(
        parameter,
        tr(
            "A table or points with name and height; with a standard deviation where the height is not to be held "
            "fixed. Needed, unless the adjustment is free."
        ),
    )


def benchmark_fields():
    return [
        advanced(field_parameter(key, label, text, "BENCHMARKS"))
        for key, label, text in (
            (
                "BENCHMARK_FIELD",
                tr("Field with the benchmark's name"),
                tr("Empty: a field 'point', 'name', 'station' or 'benchmark'."),
            ),
            (
                "BENCHMARK_HEIGHT_FIELD",
                tr("Field with the benchmark's height"),
                tr("Empty: a field 'height', else the point's Z."),
            ),
            (
                "BENCHMARK_SIGMA_FIELD",
                tr("Field with the benchmark's standard deviation"),
                tr(
                    "In the unit of heights; an empty cell or 0 holds the height fixed. Empty: a field 'sd', else all "
                    "are fixed."
                ),
            ),
        )
    ]


def free_adjustment():
    parameter = QgsProcessingParameterBoolean("FREE", tr("Free adjustment"), defaultValue=False)
    return with_help(
        parameter,
        tr(
            "Holds one point only in each part of the net, the first benchmark there, and compares the others with "
            "their given heights: it shows the lines' own quality and benchmarks that have moved. A part without a "
            "benchmark starts from 0."
        ),
    )


def free_point():
    return advanced(
        text_parameter(
            "FREE_POINT",
            tr("Point held in the free adjustment"),
            tr("Name of a point. Empty: the first benchmark of each part."),
        )
    )


def named_stations():
    parameter = QgsProcessingParameterFeatureSource(
        "STATIONS", tr("Stations"), [_SOURCE.TypeVectorPoint], optional=True
    )
    return with_help(
        parameter,
        tr(
            "Points that get the adjusted heights by their name, and between which the lines are drawn. They need not "
            "carry heights. Unit and undulations that their record tells hold for the adjusted heights too."
        ),
    )


def stations_with_heights():
    parameter = QgsProcessingParameterFeatureSink(
        "POINTS", tr("Stations with adjusted heights"), _SOURCE.TypeVectorPoint, optional=True, createByDefault=True
    )
    return with_help(
        parameter, tr("The points of STATIONS with height and sd from the adjustment; made where STATIONS is given.")
    )


def station_name_field():
    return advanced(
        field_parameter(
            "NAME_FIELD",
            tr("Field with the station's name"),
            tr("Empty: a field 'point', 'name' or 'station'."),
            "STATIONS",
        )
    )


def levelling_class():
    names = list(dict.fromkeys(entry.name for entry in CLASSES if entry.kind != "accuracy"))
    return choice_parameter(
        "CLASS",
        tr("Class of levelling"),
        tr(
            "Limits n times the square root of the length in kilometres, in mm, for sections and for loops: Federal "
            "Geodetic Control Committee, Standards and Specifications for Geodetic Control Networks, 1984. Empty: no "
            "limit; for any other, type its n (LIMIT_FACTOR)."
        ),
        names,
    )


def limit_factor():
    return number_parameter(
        "LIMIT_FACTOR",
        tr("Limit n of misclosures (mm over 1 km)"),
        tr(
            "Typed instead of a class: a misclosure may reach n times the square root of the length in kilometres. 4 "
            "allows 4 mm over 1 km and 8 mm over 4 km."
        ),
        None,
        0.0,
    )


def covariance_table():
    parameter = QgsProcessingParameterFeatureSink(
        "COVARIANCE", tr("Covariance of the heights"), _SOURCE.TypeVector, optional=True, createByDefault=False
    )
    return with_help(
        parameter,
        tr(
            "A table with a row for each point (each station, where STATIONS is given): its covariances with the "
            "points of the rows before it, in square millimetres. Heights of one net share errors."
        ),
    )


def levelling_summary():
    return file_parameter(
        "SUMMARY",
        tr("Summary of the adjustment"),
        tr("One page with tests, misclosures, lines and heights; opens in any browser."),
        tr("HTML files (*.html)"),
        True,
    )
