"""Functions that return a fresh parameter each, so that one key means and says the same in every entry."""

from qgis.core import (
    QgsProcessing,
    QgsProcessingParameterBoolean,
    QgsProcessingParameterDefinition,
    QgsProcessingParameterEnum,
    QgsProcessingParameterFeatureSink,
    QgsProcessingParameterFeatureSource,
    QgsProcessingParameterField,
    QgsProcessingParameterMultipleLayers,
    QgsProcessingParameterNumber,
    QgsProcessingParameterRasterLayer,
    QgsProcessingParameterString,
)

from .core.design import DESIGNS, EARTHS
from .core.units import METRES
from .texts import tr

UNDULATIONS = ("unknown", "ellipsoidal", "field", "grid", "constant")
_FIELD = QgsProcessingParameterField.DataType
_SOURCE = QgsProcessing.SourceType
_REAL = QgsProcessingParameterNumber.Type.Double


def advanced(parameter):
    """The same parameter, shown under the form's advanced parameters."""
    parameter.setFlags(parameter.flags() | QgsProcessingParameterDefinition.Flag.FlagAdvanced)
    return parameter


def _with_help(parameter, text):
    parameter.setHelp(text)
    return parameter


def _number(key, label, text, default=None, least=None):
    parameter = QgsProcessingParameterNumber(key, label, _REAL, optional=True)
    parameter.setDefaultValue(default)
    if least is not None:
        parameter.setMinimum(least)
    return _with_help(parameter, text)


def _text(key, label, text, multiline=False):
    return _with_help(
        QgsProcessingParameterString(key, label, defaultValue=None, optional=True, multiLine=multiline), text
    )


def _field(key, label, text, parent, kind=None):
    return _with_help(
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


def _choice(key, label, text, options, default=None):
    parameter = QgsProcessingParameterEnum(
        key, label, options=list(options), usesStaticStrings=True, defaultValue=default, optional=default is None
    )
    return _with_help(parameter, text)


def stations():
    return _with_help(
        QgsProcessingParameterFeatureSource("STATIONS", tr("Stations"), [_SOURCE.TypeVectorPoint]),
        tr("Points of the structure whose heights were surveyed."),
    )


def stations_with_residuals():
    return _with_help(
        QgsProcessingParameterFeatureSource("STATIONS", tr("Stations with residuals"), [_SOURCE.TypeVectorPoint]),
        tr("Output of 'Design heights and residuals': its fields residual, chainage, design_h and flat_h are used."),
    )


def any_points():
    return _with_help(
        QgsProcessingParameterFeatureSource("STATIONS", tr("Points"), [_SOURCE.TypeVectorPoint]),
        tr("Any points: surveyed stations, targets, supports."),
    )


def height_list():
    return _with_help(
        QgsProcessingParameterFeatureSource("INPUT", tr("Height list"), [_SOURCE.TypeVector]),
        tr(
            "A table with a station and a height in each row, for example a CSV file. Points are taken too; their own "
            "place is not used."
        ),
    )


def axis():
    return _with_help(
        QgsProcessingParameterFeatureSource("AXIS", tr("Axis"), [_SOURCE.TypeVectorLine]),
        tr(
            "Line of the structure in plan, one feature for each axis, drawn in the direction of rising chainage. "
            "Where it has a field 'design', its fields design, chain_a, height_a, chain_b, height_b, slope, tolerance, "
            "chain_h and chain_0 override this form for that axis."
        ),
    )


def axis_field():
    return advanced(
        _field(
            "AXIS_FIELD",
            tr("Field that names the axis, in the axis layer"),
            tr("Empty: a field 'axis' or 'name', else the feature's number."),
            "AXIS",
        )
    )


def station_axis_field(parent="STATIONS"):
    return advanced(
        _field(
            "STATION_AXIS_FIELD",
            tr("Field that names the axis, at the stations"),
            tr("Empty: a field 'axis', else each station belongs to the nearest axis."),
            parent,
        )
    )


def station_field():
    return _field(
        "STATION_FIELD",
        tr("Field with the station"),
        tr(
            "Station notation such as 12+50 (stations of 100) or 1+250 (of 1000), or a distance. Empty: a field "
            "'station' or 'chainage'."
        ),
        "INPUT",
    )


def offset_field():
    return _field(
        "OFFSET_FIELD",
        tr("Field with the offset"),
        tr("Distance from the axis, positive to the right looking up-chainage. Empty: a field 'offset', else 0."),
        "INPUT",
    )


def height_field(parent="STATIONS"):
    text = (
        tr("Empty: a field 'height', else the point's Z.")
        if parent == "STATIONS"
        else tr("Empty: a field 'height', else the rows have no height.")
    )
    return _field("HEIGHT_FIELD", tr("Field with the as-built height"), text, parent)


def height_unit():
    return _choice(
        "HEIGHT_UNIT",
        tr("Unit of heights"),
        tr(
            "Unit of heights in and out: metre, international foot, or US survey foot. Tolerance, typed undulations "
            "and residuals are in it too."
        ),
        METRES,
        "metre",
    )


def chainage_unit():
    return advanced(_choice("CHAINAGE_UNIT", tr("Unit of chainages and offsets"), tr("Empty: as the heights."), METRES))


def max_distance():
    return advanced(
        _number(
            "MAX_DISTANCE",
            tr("Greatest distance from the axis (metres)"),
            tr("Stations farther from every axis stay in the output with the status 'off axis'."),
            100.0,
            0.0,
        )
    )


def chainage_start():
    return advanced(
        _text(
            "CHAINAGE_START",
            tr("Chainage of the axis' first vertex"),
            tr("A distance or a station such as 10+00. Empty: 0."),
        )
    )


def chainage_height():
    return advanced(
        _number(
            "CHAINAGE_HEIGHT",
            tr("Chainage height"),
            tr(
                "Height at which chainages are measured, in the unit of heights: a structure at height is longer than "
                "its shadow on the ellipsoid. Empty: the median height of the axis' stations, rounded to 1 m; give it, "
                "so that two surveys get the same chainages."
            ),
        )
    )


def equations():
    return advanced(
        _text(
            "EQUATIONS",
            tr("Station equations"),
            tr("Pairs back=ahead in order, separated by semicolons, for example 12+50=13+00. One axis only."),
        )
    )


def undulation():
    return advanced(
        _choice(
            "UNDULATION",
            tr("Height system"),
            tr(
                "What the heights are: 'ellipsoidal'; or above the geoid, with the undulation from a 'field', a 'grid' "
                "or one 'constant'; 'unknown' takes heights above the geoid for ellipsoidal ones, and the log says so."
            ),
            UNDULATIONS,
            "unknown",
        )
    )


def undulation_field(parent="STATIONS"):
    return advanced(
        _field(
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
        _number(
            "UNDULATION_VALUE",
            tr("Undulation"),
            tr(
                "One geoid height for all stations, in the unit of heights. Used with UNDULATION 'constant'; it hides "
                "the geoid's slope and bending."
            ),
        )
    )


def geoid():
    parameter = QgsProcessingParameterRasterLayer("GEOID", tr("Geoid raster"), optional=True)
    return advanced(
        _with_help(
            parameter,
            tr(
                "Raster of geoid undulations in metres, in latitude and longitude. Used with UNDULATION 'grid'. Empty: "
                "the EGM96 grid that PROJ has."
            ),
        )
    )


def design():
    return _choice(
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
        _text(
            f"CHAINAGE_{letter}",
            tr("Chainage of control {}").format(letter),
            tr(
                "A distance or a station such as 12+50. Empty: found from the stations that have a height: the first "
                "for A (tangent: nearest to the middle), the last for B."
            ),
        ),
        _number(
            f"HEIGHT_{letter}",
            tr("Height of control {}").format(letter),
            tr(
                "Design height there. Empty: the as-built height of the station nearest to that chainage, at most 1 m "
                "away, so that its residual is 0."
            ),
        ),
    )


def slope():
    return _number(
        "SLOPE",
        tr("Slope"),
        tr(
            "Rise of the design height per chainage at control A, without unit: 0.003 for 3 mm per metre. For the "
            "designs inclined and grade."
        ),
    )


def reference():
    parameter = QgsProcessingParameterFeatureSource("REFERENCE", tr("Reference"), [_SOURCE.TypeVector], optional=True)
    return advanced(
        _with_help(
            parameter,
            tr(
                "Layer with the planes for the design 'reference': fields name, lat0, lon0, h0, nx, ny, nz, h_system, "
                "undul. Its name matches an axis; a single row serves all axes."
            ),
        )
    )


def refraction():
    return advanced(
        _number(
            "REFRACTION",
            tr("Refraction coefficient k"),
            tr(
                "Share of the curvature effect that a bent line of sight takes away: 0 for a structure, 0.13 is usual "
                "by day over land for a sight, and it can be negative near warm ground."
            ),
            0.0,
        )
    )


def earth():
    return advanced(
        _choice(
            "EARTH",
            tr("Earth model"),
            tr("ellipsoid: exact. sphere and flat: for comparison only."),
            EARTHS,
            "ellipsoid",
        )
    )


def radius():
    return advanced(
        _number(
            "RADIUS",
            tr("Radius of the sphere (metres)"),
            tr("Empty: Euler's radius of curvature at the axis' middle in its azimuth."),
        )
    )


def tolerance():
    return _number(
        "TOLERANCE",
        tr("Tolerance"),
        tr(
            "Greatest residual that counts as within, in the unit of heights. Empty: no status within, high or low is "
            "given."
        ),
        None,
        0.0,
    )


def interval():
    return _number(
        "INTERVAL",
        tr("Interval"),
        tr("Chainage between stations, in the unit of chainages; stations stand at its multiples. Empty: none."),
        None,
        0.0,
    )


def at_vertices():
    return _with_help(
        QgsProcessingParameterBoolean("AT_VERTICES", tr("At vertices"), defaultValue=True),
        tr("Stations at both ends and at every bend of the axis."),
    )


def chainages():
    return _text(
        "CHAINAGES",
        tr("Listed chainages"),
        tr("Stations or distances separated by semicolons or line breaks, for example 0+500; 1+250."),
        True,
    )


def onto_axis():
    return _with_help(
        QgsProcessingParameterBoolean("ONTO_AXIS", tr("Move the points onto the axis"), defaultValue=False),
        tr("Off: the points stay where they are."),
    )


def sink(key, label, kind=None, optional=False):
    """An output layer of SourceType ``kind`` (default: points)."""
    return QgsProcessingParameterFeatureSink(
        key, label, _SOURCE.TypeVectorPoint if kind is None else kind, optional=optional, createByDefault=not optional
    )


def table(key, label, optional=True):
    """An output table without geometry, made by default in the form."""
    return QgsProcessingParameterFeatureSink(key, label, _SOURCE.TypeVector, optional=optional, createByDefault=True)


def sigma_field(parent="STATIONS"):
    return advanced(
        _field(
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
    return _number(
        "SIGMA",
        tr("Standard deviation of a height"),
        tr("One value for all stations, in the unit of heights. Empty: from a field, else estimated."),
        None,
        0.0,
    )


def sigma_km():
    return advanced(
        _number(
            "SIGMA_KM",
            tr("Standard deviation of the levelling over 1 km (mm)"),
            tr(
                "Of the run as used: for a single run the value quoted for a double run, times 1.41. Heights levelled "
                "along an arm share errors; an ellipse that ignores this holds the truth in 15 to 60 percent of cases "
                "instead of 95."
            ),
            None,
            0.0,
        )
    )


def given_covariance():
    """Parameters COVARIANCE and NAME_FIELD."""
    parameter = QgsProcessingParameterFeatureSource(
        "COVARIANCE", tr("Covariance of the heights"), [_SOURCE.TypeVector], optional=True
    )
    return (
        advanced(
            _with_help(
                parameter,
                tr(
                    "Table that 'Adjust levelled height differences' writes: fields point and covar. It has precedence "
                    "over SIGMA_FIELD and SIGMA_KM; SIGMA, where given, is that of a height beside the levelling and "
                    "is added."
                ),
            )
        ),
        advanced(
            _field(
                "NAME_FIELD",
                tr("Field with the station's name"),
                tr("Finds each station in COVARIANCE. Empty: a field 'point', 'name' or 'station'."),
                "STATIONS",
            )
        ),
    )


def fit_kind():
    return _choice(
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
        _field(
            "GROUP_FIELD",
            tr("Field that names the group, in the axis layer"),
            tr("Axes of one group share a plane. Empty: a field 'group', else all axes are one group."),
            "AXIS",
        )
    )


def robust():
    return advanced(
        _with_help(
            QgsProcessingParameterBoolean("ROBUST", tr("Robust start"), defaultValue=False),
            tr(
                "Begin the search for blunders from a robust fit (Huber): for many suspects, or where a stretch of the "
                "structure has moved and no standard deviation is given. Works only where suspected blunders are set "
                "aside."
            ),
        )
    )


def remove_blunders():
    return _with_help(
        QgsProcessingParameterBoolean("REMOVE_BLUNDERS", tr("Set suspected blunders aside"), defaultValue=True),
        tr("One by one, the greatest first; each is listed and stays in the output. Off: they are only flagged."),
    )


def reviewed_stations():
    return _with_help(
        QgsProcessingParameterFeatureSource("STATIONS", tr("Stations with residuals"), [_SOURCE.TypeVectorPoint]),
        tr(
            "Output of 'Design heights and residuals': points with a field 'residual', and axis, station, chainage, "
            "design_h where there are."
        ),
    )


def adjustment_method():
    return _choice(
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
    return _number(
        "STEP",
        tr("Step of the shims"),
        tr("Movements are whole multiples of it, in the unit of heights. Empty: any movement."),
        None,
        0.0,
    )


def travel():
    return (
        _number(
            "LIMIT",
            tr("Greatest movement"),
            tr("Travel of the jack, up and down, in the unit of heights. Empty: no limit."),
            None,
            0.0,
        ),
        advanced(
            _number(
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
    return _number(
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
        _number(
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
    parameter = QgsProcessingParameterFeatureSource(
        "TESTED", tr("Tested stations"), [_SOURCE.TypeVector], optional=True
    )
    return _with_help(
        parameter,
        tr(
            "Output of 'Fit a straight line or plane': stations suspected of a blunder are left out. Three and more "
            "suspected neighbours are a stretch that has moved, and are scheduled."
        ),
    )


def decisions():
    parameter = QgsProcessingParameterFeatureSource("DECISIONS", tr("Decisions"), [_SOURCE.TypeVector], optional=True)
    return _with_help(
        parameter,
        tr(
            "Table with the fields axis, station, decision, note. Decisions: accept (stays as it is), move the support "
            "(taken in although flagged), measure again, reading error, blunder, leave out."
        ),
    )


def title():
    return _text(
        "TITLE", tr("Title"), tr("Heading of the printed sheets: project, structure. Empty: the layer's name.")
    )


def surveys():
    parameter = QgsProcessingParameterMultipleLayers("SURVEYS", tr("Surveys"), _SOURCE.TypeVectorPoint)
    parameter.setMinimumNumberInputs(2)
    return _with_help(
        parameter,
        tr(
            "Two or more layers of stations of one structure with axis, station, chainage and height, for example "
            "outputs of 'Design heights and residuals'. The earliest is compared with."
        ),
    )


def dates():
    return _text(
        "DATES",
        tr("Dates"),
        tr(
            "Of the surveys in their order, year-month-day, separated by semicolons: 2025-03-11; 2026-03-09. Empty: "
            "from each layer's field 'date'."
        ),
    )


def date_field():
    return advanced(_text("DATE_FIELD", tr("Field with the date"), tr("In every survey. Empty: a field 'date'.")))


def compared_height_field():
    return advanced(
        _text(
            "HEIGHT_FIELD",
            tr("Field with the height"),
            tr("In every survey. Empty: a field 'height', else design_h plus residual, else the point's Z."),
        )
    )


def matching():
    return _choice(
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
    return _number(
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
    return _number(
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
    return _choice(
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
    return _with_help(
        QgsProcessingParameterBoolean("TILT", tr("Separate a common tilt too"), defaultValue=False),
        tr(
            "A rise along the axis in proportion to the chainage, as from a levelling error or a rotation of the whole."
        ),
    )


def geoid_slope_sigma():
    return advanced(
        _number(
            "GEOID_SLOPE_SIGMA",
            tr("Standard deviation of the geoid's slope (seconds of arc)"),
            tr(
                "For each component; one second moves the tangent point by 31 m. Empty: 4 for EGM96-like grids and "
                "unknown undulations, 2.5 for grids of 5 minutes or finer."
            ),
            None,
            0.0,
        )
    )


def geoid_bending():
    return advanced(
        _number(
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


def recorded_units():
    """Parameters HEIGHT_UNIT and CHAINAGE_UNIT of an entry that goes on from a run with a record."""
    return (
        advanced(
            _choice(
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
            _choice(
                "CHAINAGE_UNIT",
                tr("Unit of chainages and offsets"),
                tr("Empty: that of the run that computed the stations, else as the heights."),
                METRES,
            )
        ),
    )


def drawn_tolerance():
    return _number(
        "TOLERANCE",
        tr("Tolerance"),
        tr(
            "Half the width of the band, in the unit of heights. Empty: that of the run that computed the stations. A "
            "field 'tolerance' of an axis layer with designs overrides it."
        ),
        None,
        0.0,
    )


def exaggeration():
    return _number(
        "EXAGGERATION",
        tr("Exaggeration of the bars"),
        tr(
            "How many times larger than in truth a residual is drawn on the ground. Empty: a round number by which an "
            "ordinary large residual, or the tolerance, takes up to a twentieth of the structure's length."
        ),
        None,
        0.0,
    )


def high_side():
    return _choice(
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
        _number(
            "LONGEST_BAR",
            tr("Longest bar (metres)"),
            tr("Length on the ground beyond which a bar is cut and marked. Empty: a sixth of the structure's length."),
            None,
            0.0,
        )
    )


def view():
    return _choice(
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
    return _choice(
        "SIDE",
        tr("Side of the strip"),
        tr("Looking up-chainage. automatic: away from the other axes; of one axis alone, where the bars are shorter."),
        ("automatic", "left", "right"),
        "automatic",
    )


def strip_distance():
    return advanced(
        _number(
            "DISTANCE",
            tr("Distance of the strip from the axis (metres)"),
            tr("On the ground, from the axis to the strip's datum line. Empty: clear of bars and band."),
            None,
            0.0,
        )
    )


def strip_exaggeration():
    return advanced(
        _number(
            "STRIP_EXAGGERATION",
            tr("Exaggeration of the strip"),
            tr("Empty: a round number by which the highest strip takes up to a sixth of the structure's length."),
            None,
            0.0,
        )
    )


def drawn_layer(key, label, kind, optional=False):
    """An output layer of SourceType ``kind``, made by default in the form also where it is optional."""
    return QgsProcessingParameterFeatureSink(key, label, kind, optional=optional, createByDefault=True)
