"""Functions that return a fresh parameter each, so that one key means and says the same in every entry."""

from qgis.core import (
    QgsProcessing,
    QgsProcessingParameterBoolean,
    QgsProcessingParameterDefinition,
    QgsProcessingParameterEnum,
    QgsProcessingParameterFeatureSink,
    QgsProcessingParameterFeatureSource,
    QgsProcessingParameterField,
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
    return _with_help(QgsProcessingParameterString(key, label, defaultValue=None, optional=True, multiLine=multiline), text)


def _field(key, label, text, parent, kind=None):
    return _with_help(QgsProcessingParameterField(key, label, defaultValue=None, parentLayerParameterName=parent,
                                                  type=_FIELD.Any if kind is None else kind, optional=True), text)


def _choice(key, label, text, options, default=None):
    parameter = QgsProcessingParameterEnum(key, label, options=list(options), usesStaticStrings=True, defaultValue=default,
                                           optional=default is None)
    return _with_help(parameter, text)


def stations():
    return _with_help(QgsProcessingParameterFeatureSource("STATIONS", tr("Stations"), [_SOURCE.TypeVectorPoint]),
                      tr("Points of the structure whose heights were surveyed."))


def any_points():
    return _with_help(QgsProcessingParameterFeatureSource("STATIONS", tr("Points"), [_SOURCE.TypeVectorPoint]),
                      tr("Any points: surveyed stations, targets, supports."))


def height_list():
    return _with_help(QgsProcessingParameterFeatureSource("INPUT", tr("Height list"), [_SOURCE.TypeVector]),
                      tr("A table with a station and a height in each row, for example a CSV file. Points are taken too; "
                         "their own place is not used."))


def axis():
    return _with_help(QgsProcessingParameterFeatureSource("AXIS", tr("Axis"), [_SOURCE.TypeVectorLine]),
                      tr("Line of the structure in plan, one feature for each axis, drawn in the direction of rising "
                         "chainage. Where it has a field 'design', its fields design, chain_a, height_a, chain_b, height_b, "
                         "slope, tolerance, chain_h and chain_0 override this form for that axis."))


def axis_field():
    return advanced(_field("AXIS_FIELD", tr("Field that names the axis, in the axis layer"),
                           tr("Empty: a field 'axis' or 'name', else the feature's number."), "AXIS"))


def station_axis_field(parent="STATIONS"):
    return advanced(_field("STATION_AXIS_FIELD", tr("Field that names the axis, at the stations"),
                           tr("Empty: a field 'axis', else each station belongs to the nearest axis."), parent))


def station_field():
    return _field("STATION_FIELD", tr("Field with the station"),
                  tr("Station notation such as 12+50 (stations of 100) or 1+250 (of 1000), or a distance. Empty: a field "
                     "'station' or 'chainage'."), "INPUT")


def offset_field():
    return _field("OFFSET_FIELD", tr("Field with the offset"),
                  tr("Distance from the axis, positive to the right looking up-chainage. Empty: a field 'offset', else 0."),
                  "INPUT")


def height_field(parent="STATIONS"):
    text = (tr("Empty: a field 'height', else the point's Z.") if parent == "STATIONS"
            else tr("Empty: a field 'height', else the rows have no height."))
    return _field("HEIGHT_FIELD", tr("Field with the as-built height"), text, parent)


def height_unit():
    return _choice("HEIGHT_UNIT", tr("Unit of heights"),
                   tr("Unit of heights in and out: metre, international foot, or US survey foot. Tolerance, typed "
                      "undulations and residuals are in it too."), METRES, "metre")


def chainage_unit():
    return advanced(_choice("CHAINAGE_UNIT", tr("Unit of chainages and offsets"), tr("Empty: as the heights."), METRES))


def max_distance():
    return advanced(_number("MAX_DISTANCE", tr("Greatest distance from the axis (metres)"),
                            tr("Stations farther from every axis stay in the output with the status 'off axis'."), 100.0, 0.0))


def chainage_start():
    return advanced(_text("CHAINAGE_START", tr("Chainage of the axis' first vertex"),
                          tr("A distance or a station such as 10+00. Empty: 0.")))


def chainage_height():
    return advanced(_number("CHAINAGE_HEIGHT", tr("Chainage height"),
                            tr("Height at which chainages are measured, in the unit of heights: a structure at height is "
                               "longer than its shadow on the ellipsoid. Empty: the median height of the axis' stations, "
                               "rounded to 1 m; give it, so that two surveys get the same chainages.")))


def equations():
    return advanced(_text("EQUATIONS", tr("Station equations"),
                          tr("Pairs back=ahead in order, separated by semicolons, for example 12+50=13+00. One axis only.")))


def undulation():
    return advanced(_choice(
        "UNDULATION", tr("Height system"),
        tr("What the heights are: 'ellipsoidal'; or above the geoid, with the undulation from a 'field', a 'grid' or one "
           "'constant'; 'unknown' takes heights above the geoid for ellipsoidal ones, and the log says so."),
        UNDULATIONS, "unknown"))


def undulation_field(parent="STATIONS"):
    return advanced(_field("UNDULATION_FIELD", tr("Field with the undulation"),
                           tr("Geoid height above the ellipsoid at each station, in the unit of heights. Used with "
                              "UNDULATION 'field'. Empty: a field 'undulation'."), parent))


def undulation_value():
    return advanced(_number("UNDULATION_VALUE", tr("Undulation"),
                            tr("One geoid height for all stations, in the unit of heights. Used with UNDULATION "
                               "'constant'; it hides the geoid's slope and bending.")))


def geoid():
    parameter = QgsProcessingParameterRasterLayer("GEOID", tr("Geoid raster"), optional=True)
    return advanced(_with_help(parameter, tr("Raster of geoid undulations in metres, in latitude and longitude. Used with "
                                             "UNDULATION 'grid'. Empty: the EGM96 grid that PROJ has.")))


def design():
    return _choice(
        "DESIGN", tr("Design"),
        tr("chord: straight between two controls. tangent: straight, level at one control. inclined: straight, rising by "
           "SLOPE at one control. reference: a fitted or fixed plane. level: follows the level surface. grade: constant "
           "slope above the level surface, or from A to B where SLOPE is empty."), DESIGNS, "chord")


def control(letter):
    """Parameters CHAINAGE_x and HEIGHT_x of control 'A' or 'B'."""
    return (_text(f"CHAINAGE_{letter}", tr("Chainage of control {}").format(letter),
                  tr("A distance or a station such as 12+50. Empty: found from the stations that have a height: the first "
                     "for A (tangent: nearest to the middle), the last for B.")),
            _number(f"HEIGHT_{letter}", tr("Height of control {}").format(letter),
                    tr("Design height there. Empty: the as-built height of the station nearest to that chainage, at most "
                       "1 m away, so that its residual is 0.")))


def slope():
    return _number("SLOPE", tr("Slope"), tr("Rise of the design height per chainage at control A, without unit: 0.003 for "
                                            "3 mm per metre. For the designs inclined and grade."))


def reference():
    parameter = QgsProcessingParameterFeatureSource("REFERENCE", tr("Reference"), [_SOURCE.TypeVector], optional=True)
    return advanced(_with_help(parameter, tr("Layer with the planes for the design 'reference': fields name, lat0, lon0, h0, "
                                             "nx, ny, nz, h_system, undul. Its name matches an axis; a single row serves "
                                             "all axes.")))


def refraction():
    return advanced(_number("REFRACTION", tr("Refraction coefficient k"),
                            tr("Share of the curvature effect that a bent line of sight takes away: 0 for a structure, 0.13 "
                               "is usual by day over land for a sight, and it can be negative near warm ground."), 0.0))


def earth():
    return advanced(_choice("EARTH", tr("Earth model"),
                            tr("ellipsoid: exact. sphere and flat: for comparison only."), EARTHS, "ellipsoid"))


def radius():
    return advanced(_number("RADIUS", tr("Radius of the sphere (metres)"),
                            tr("Empty: Euler's radius of curvature at the axis' middle in its azimuth.")))


def tolerance():
    return _number("TOLERANCE", tr("Tolerance"),
                   tr("Greatest residual that counts as within, in the unit of heights. Empty: no status within, high or "
                      "low is given."), None, 0.0)


def interval():
    return _number("INTERVAL", tr("Interval"), tr("Chainage between stations, in the unit of chainages; stations stand at "
                                                  "its multiples. Empty: none."), None, 0.0)


def at_vertices():
    return _with_help(QgsProcessingParameterBoolean("AT_VERTICES", tr("At vertices"), defaultValue=True),
                      tr("Stations at both ends and at every bend of the axis."))


def chainages():
    return _text("CHAINAGES", tr("Listed chainages"),
                 tr("Stations or distances separated by semicolons or line breaks, for example 0+500; 1+250."), True)


def onto_axis():
    return _with_help(QgsProcessingParameterBoolean("ONTO_AXIS", tr("Move the points onto the axis"), defaultValue=False),
                      tr("Off: the points stay where they are."))


def sink(key, label, kind=None, optional=False):
    """An output layer of SourceType ``kind`` (default: points)."""
    return QgsProcessingParameterFeatureSink(key, label, _SOURCE.TypeVectorPoint if kind is None else kind,
                                             optional=optional, createByDefault=not optional)


def table(key, label):
    """An optional output table without geometry, made by default in the form."""
    return QgsProcessingParameterFeatureSink(key, label, _SOURCE.TypeVector, optional=True, createByDefault=True)


def sigma_field(parent="STATIONS"):
    return advanced(_field("SIGMA_FIELD", tr("Field with the heights' standard deviation"),
                           tr("In the unit of heights. Empty: SIGMA, else a field 'sd', else the accuracy is estimated from "
                              "the residuals."), parent))


def sigma():
    return _number("SIGMA", tr("Standard deviation of a height"),
                   tr("One value for all stations, in the unit of heights. Empty: from a field, else estimated."), None, 0.0)


def sigma_km():
    return advanced(_number("SIGMA_KM", tr("Standard deviation of the levelling over 1 km (mm)"),
                            tr("Of the run as used: for a single run the value quoted for a double run, times 1.41. Heights "
                               "levelled along an arm share errors; an ellipse that ignores this holds the truth in 15 to "
                               "60 percent of cases instead of 95."), None, 0.0))


def fit_kind():
    return _choice("FIT", tr("Fit"), tr("line: for each axis, or each leg of a bent one. plane: one for each group of axes, "
                                        "counting a common corner once."), ("line", "plane"), "line")


def group_field():
    return advanced(_field("GROUP_FIELD", tr("Field that names the group, in the axis layer"),
                           tr("Axes of one group share a plane. Empty: a field 'group', else all axes are one group."),
                           "AXIS"))


def robust():
    return advanced(_with_help(QgsProcessingParameterBoolean("ROBUST", tr("Robust start"), defaultValue=False),
                               tr("Begin the search for blunders from a robust fit (Huber): for many suspects, or where a "
                                  "stretch of the structure has moved.")))


def remove_blunders():
    return _with_help(QgsProcessingParameterBoolean("REMOVE_BLUNDERS", tr("Set suspected blunders aside"), defaultValue=True),
                      tr("One by one, the greatest first; each is listed and stays in the output. Off: they are only "
                         "flagged."))


def geoid_slope_sigma():
    return advanced(_number("GEOID_SLOPE_SIGMA", tr("Standard deviation of the geoid's slope (seconds of arc)"),
                            tr("For each component; one second moves the tangent point by 31 m. Empty: 4 for EGM96-like grids "
                               "and unknown undulations, 2.5 for grids of 5 minutes or finer."), None, 0.0))
