"""Functions that return a fresh parameter each, so that one key means and says the same in every entry."""

from qgis.core import (
    QgsProcessingParameterBoolean,
    QgsProcessingParameterFeatureSink,
    QgsProcessingParameterFeatureSource,
    QgsProcessingParameterRasterLayer,
)

from ..core.choices import SIGNS
from ..core.units import METRES
from ..language.translation import tr
from .parameter_builders import (
    SOURCE,
    advanced,
    choice_parameter,
    field_parameter,
    number_parameter,
    text_parameter,
    with_help,
)

BETWEEN = ("smooth", "bilinear")
UNDULATIONS = ("unknown", "ellipsoidal", "field", "grid", "constant")


def stations():
    return with_help(
        QgsProcessingParameterFeatureSource("STATIONS", tr("Stations"), [SOURCE.TypeVectorPoint]),
        tr("Points of the structure whose heights were surveyed."),
    )


def any_points():
    return with_help(
        QgsProcessingParameterFeatureSource("STATIONS", tr("Points"), [SOURCE.TypeVectorPoint]),
        tr("Any points: surveyed stations, targets, supports."),
    )


def height_list():
    return with_help(
        QgsProcessingParameterFeatureSource("INPUT", tr("Height list"), [SOURCE.TypeVector]),
        tr(
            "A table with a station and a height in each row, for example a CSV file. Points are taken too; their own "
            "positions are not used."
        ),
    )


def axis(overriding="chainage"):
    """``overriding``: which fields of the axis layer override the form in the entry: 'design', all of them; 'drawing',
    those of chainages and the tolerance; 'chainage', those of chainages."""
    fields = {
        "design": tr("design, chain_a, height_a, chain_b, height_b, slope, tolerance, chain_h and chain_0"),
        "drawing": tr("tolerance, chain_h and chain_0"),
        "chainage": tr("chain_h (chainage height) and chain_0 (chainage of the first vertex)"),
    }[overriding]
    return with_help(
        QgsProcessingParameterFeatureSource("AXIS", tr("Axis"), [SOURCE.TypeVectorLine]),
        tr(
            "Line of the structure in plan, one feature for each axis, drawn in the direction of rising chainage. "
            "Where it has a field 'design', its fields {} override this form for that axis."
        ).format(fields),
    )


def axis_field():
    return advanced(
        field_parameter(
            "AXIS_FIELD",
            tr("Field that names the axis, in the axis layer"),
            tr("Empty: a field 'axis' or 'name', else the feature's number."),
            "AXIS",
        )
    )


def station_axis_field(parent="STATIONS"):
    return advanced(
        field_parameter(
            "STATION_AXIS_FIELD",
            tr("Field that names the axis, at the stations"),
            tr("Empty: a field such as axis, arm or line, else each station belongs to the nearest axis."),
            parent,
        )
    )


def station_field():
    return field_parameter(
        "STATION_FIELD",
        tr("Field with the station"),
        tr(
            "Station notation such as 12+50 (stations of 100) or 1+250 (of 1000), or a distance. Empty: a field "
            "such as station, sta or chainage."
        ),
        "INPUT",
    )


def offset_field():
    return field_parameter(
        "OFFSET_FIELD",
        tr("Field with the offset"),
        tr(
            "Distance from the axis, positive to the right looking up-chainage: -0.35 is 0.35 to the left. "
            "Empty: a field such as offset, else 0."
        ),
        "INPUT",
    )


def decimal_sign():
    """The parameter DECIMAL_SIGN."""
    return advanced(
        choice_parameter(
            "DECIMAL_SIGN",
            tr("Decimal sign"),
            tr(
                "Of the numbers in the list. Empty: each column tells; one that leaves it open, such as 1,345 "
                "throughout, is refused."
            ),
            SIGNS,
        )
    )


def height_field(parent="STATIONS"):
    text = (
        tr("Empty: a field 'height', else the point's Z, else a field such as elevation, elev, level or rl.")
        if parent == "STATIONS"
        else tr("Empty: a column such as height, elevation, elev, level or rl, with or without its unit.")
    )
    return field_parameter("HEIGHT_FIELD", tr("Field with the as-built height"), text, parent)


def height_unit():
    return choice_parameter(
        "HEIGHT_UNIT",
        tr("Unit of heights"),
        tr(
            "Unit of heights in and out: metre, international foot, or US survey foot; the two feet are 2 mm "
            "apart in 1,000 m. Tolerance, typed undulations and residuals are in it too. Empty: as the record of "
            "the layer says, or the heading of the heights ('Elev (ft)', height_ft), else metre, and the log "
            "says so."
        ),
        METRES,
    )


def chainage_unit():
    return advanced(
        choice_parameter(
            "CHAINAGE_UNIT",
            tr("Unit of chainages and offsets"),
            tr("Empty: as the record of the layer says, or a heading, else as the heights."),
            METRES,
        )
    )


def max_distance(text=None):
    """``text``: what becomes of stations farther away; None: no output holds them."""
    return advanced(
        number_parameter(
            "MAX_DISTANCE",
            tr("Greatest distance from the axis (metres)"),
            text or tr("Stations farther from every axis take no part; the log names them."),
            100.0,
            0.0,
        )
    )


def chainage_start():
    return advanced(
        text_parameter(
            "CHAINAGE_START",
            tr("Chainage of the axis' first vertex"),
            tr("A distance or a station such as 10+00. Empty: 0."),
        )
    )


def chainage_height():
    return advanced(
        number_parameter(
            "CHAINAGE_HEIGHT",
            tr("Chainage height"),
            tr(
                "Ellipsoidal height at which chainages are measured, in the unit of heights: a structure at "
                "height is longer than its projection on the ellipsoid, a kilometre at 1,000 m by 157 mm. Empty: "
                "the median height of the axis' stations, rounded to 1 m; give it, so that two surveys get the "
                "same chainages. Where undulations are not known, heights above the geoid stand in: 0.16 mm in a "
                "kilometre for each metre."
            ),
        )
    )


def equations():
    return advanced(
        text_parameter(
            "EQUATIONS",
            tr("Station equations"),
            tr(
                "Pairs back=ahead in order, separated by semicolons. With 12+50=13+00 the point that is 12+50 "
                "from behind is 13+00 from there on. One axis only."
            ),
        )
    )


def undulation():
    return advanced(
        choice_parameter(
            "UNDULATION",
            tr("Height system"),
            tr(
                "What the heights are: 'ellipsoidal'; or above the geoid, with the undulation from a 'field', a 'grid' "
                "or one 'constant'; 'unknown' takes heights above the geoid for ellipsoidal ones, and the log says so. "
                "Empty or 'unknown': as the record of the layer says, if it does. A reference system of the stations "
                "whose vertical part says otherwise is refused."
            ),
            UNDULATIONS,
        )
    )


def undulation_field(parent="STATIONS"):
    return advanced(
        field_parameter(
            "UNDULATION_FIELD",
            tr("Field with the undulation"),
            tr(
                "Geoid height above the ellipsoid at each station, in the unit of heights. Used with UNDULATION "
                "'field'. Empty: a field 'undulation'."
            ),
            parent,
        )
    )


def undulation_value():
    return advanced(
        number_parameter(
            "UNDULATION_VALUE",
            tr("Undulation"),
            tr(
                "One geoid height for all stations, in the unit of heights. Used with UNDULATION 'constant'; "
                "43.6 says that the geoid lies 43.6 m above the ellipsoid. It hides the geoid's slope and "
                "bending: 5 seconds of arc are 73 mm in 3 km."
            ),
        )
    )


GRAVITY = ("none", "normal")


def gravity(text):
    """``text``: what GRAVITY 'normal' does in the entry, and what an empty one means."""
    return advanced(
        choice_parameter(
            "GRAVITY",
            tr("Gravity correction"),
            tr(
                "none: heights as levelled. normal: normal-orthometric, by normal gravity on GRS 80. Level surfaces "
                "draw together towards the poles: 17 mm over 10 km north-south at 2,000 m. {}"
            ).format(text),
            GRAVITY,
        )
    )


def datum_height():
    return advanced(
        number_parameter(
            "DATUM_HEIGHT",
            tr("Height of the datum above the sea"),
            tr(
                "Of the zero of these heights, in the unit of heights, for GRAVITY 'normal', which needs heights "
                "above the sea: 200 where they count from a mark 200 m above it. Empty: 0, the heights count "
                "from the sea."
            ),
        )
    )


def on_axes(farther=None):
    """Which axis a station belongs to and how chainage is counted: what every entry that measures stations asks.
    ``farther``: see max_distance."""
    return (
        axis_field(),
        station_axis_field(),
        max_distance(farther),
        chainage_unit(),
        chainage_start(),
        chainage_height(),
        equations(),
    )


def height_system(parent="STATIONS"):
    """The height system and where undulations come from; ``parent``: key of the layer with a field of them."""
    return (undulation(), undulation_field(parent), undulation_value(), geoid(), geoid_name(), geoid_between())


def geoid_between():
    return advanced(
        choice_parameter(
            "GEOID_BETWEEN",
            tr("Between the nodes of the grid"),
            tr(
                "smooth: a bicubic spline, without kinks at the edges of cells. bilinear: for heights that other "
                "software reduced by bilinear cells, so that they go back as they came; their kinks are centimetres in "
                "3 km, more near steep islands. Empty: as the run that made the stations, else smooth."
            ),
            BETWEEN,
        )
    )


def geoid():
    parameter = QgsProcessingParameterRasterLayer("GEOID", tr("Geoid raster"), optional=True)
    return advanced(
        with_help(
            parameter,
            tr(
                "Raster of geoid undulations in metres, in latitude and longitude (GeoTIFF, GTX or any other format "
                "that QGIS reads). Used with UNDULATION 'grid'. Empty: the grid of GEOID_NAME, else the EGM96 grid "
                "that PROJ has."
            ),
        )
    )


def geoid_name():
    return advanced(
        text_parameter(
            "GEOID_NAME",
            tr("Geoid grid of PROJ, by name"),
            tr(
                "File name of a geoid grid that PROJ has installed, for example us_nga_egm08_25.tif, instead of a "
                "raster. Used with UNDULATION 'grid'; nothing is fetched, and a grid that is missing stops the run."
            ),
        )
    )


def radius():
    return advanced(
        number_parameter(
            "RADIUS",
            tr("Radius of the sphere (metres)"),
            tr("The mean one is 6371000. Empty: Euler's radius of curvature at the axis' middle in its azimuth."),
        )
    )


def interval():
    return number_parameter(
        "INTERVAL",
        tr("Interval"),
        tr(
            "Chainage between stations, in the unit of chainages; stations stand at its multiples: 50 gives "
            "0+000, 0+050, 0+100. Empty: none."
        ),
        None,
        0.0,
    )


def at_vertices():
    return with_help(
        QgsProcessingParameterBoolean("AT_VERTICES", tr("At vertices"), defaultValue=True),
        tr("Stations at both ends and at every bend of the axis."),
    )


def chainages():
    return text_parameter(
        "CHAINAGES",
        tr("Listed chainages"),
        tr("Stations or distances separated by semicolons or line breaks, for example 0+500; 1+250."),
        True,
    )


def onto_axis():
    return with_help(
        QgsProcessingParameterBoolean("ONTO_AXIS", tr("Move the points onto the axis"), defaultValue=False),
        tr("Off: the points stay where they are."),
    )


def place_sigmas():
    """Parameters SIGMA_EAST_FIELD, SIGMA_NORTH_FIELD and CORRELATION_FIELD: how accurate places in plan are."""
    text = tr(
        "Of the position of each point, along the {} axis of the points' reference system; both in one unit, that of "
        "heights where 'Fit a straight line or plane' is to take 'sd_line' from them. Empty: a field '{}', if any."
    )
    return (
        advanced(
            field_parameter(
                "SIGMA_EAST_FIELD",
                tr("Field with the standard deviation to the east"),
                text.format(tr("east"), "sd_e"),
                "STATIONS",
            )
        ),
        advanced(
            field_parameter(
                "SIGMA_NORTH_FIELD",
                tr("Field with the standard deviation to the north"),
                text.format(tr("north"), "sd_n"),
                "STATIONS",
            )
        ),
        advanced(
            field_parameter(
                "CORRELATION_FIELD",
                tr("Field with the correlation of east and north"),
                tr("From -1 to 1. Empty: a field 'cor_en', else east and north are taken as independent."),
                "STATIONS",
            )
        ),
    )


def sink(key, label, text, kind=None, optional=False):
    """An output layer of SourceType ``kind`` (default: points)."""
    kind = SOURCE.TypeVectorPoint if kind is None else kind
    return with_help(
        QgsProcessingParameterFeatureSink(key, label, kind, optional=optional, createByDefault=not optional), text
    )


def table(key, label, text, optional=True):
    """An output table without geometry, made by default in the form."""
    kind = SOURCE.TypeVector
    return with_help(QgsProcessingParameterFeatureSink(key, label, kind, optional=optional, createByDefault=True), text)


def reviewed_stations():
    return with_help(
        QgsProcessingParameterFeatureSource("STATIONS", tr("Stations with residuals"), [SOURCE.TypeVectorPoint]),
        tr(
            "Output of 'Design heights and residuals': points with a field 'residual', and axis, station, chainage, "
            "design_h where there are."
        ),
    )


def title():
    return text_parameter(
        "TITLE", tr("Title"), tr("Heading of the printed sheets: project, structure. Empty: the layer's name.")
    )


def recorded_units():
    """Parameters HEIGHT_UNIT and CHAINAGE_UNIT of an entry that goes on from a run with a record."""
    return (
        advanced(
            choice_parameter(
                "HEIGHT_UNIT",
                tr("Unit of heights"),
                tr(
                    "Unit of residuals, heights and tolerance in the stations. Empty: that of the run that computed "
                    "them, as its record says, else metre."
                ),
                METRES,
            )
        ),
        advanced(
            choice_parameter(
                "CHAINAGE_UNIT",
                tr("Unit of chainages and offsets"),
                tr("Empty: that of the run that computed the stations, else as the heights."),
                METRES,
            )
        ),
    )
