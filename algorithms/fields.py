"""The output fields of all toolbox entries: name (ten characters at most), type, unit, meaning."""

from dataclasses import dataclass

TEXT, REAL, WHOLE = "text", "real", "whole"
HEIGHT, CHAINAGE, DEGREE, NONE = "height", "chainage", "degree", ""


@dataclass(frozen=True)
class OutputField:
    """One output field. ``unit`` says which of the run's units its numbers are in."""

    name: str
    kind: str
    unit: str
    label: str
    meaning: str


_ALL = (
    OutputField("axis", TEXT, NONE, "Axis", "Name of the axis the station belongs to"),
    OutputField("station", TEXT, NONE, "Station", "Station in normal notation, 1+250 or 12+50"),
    OutputField("chainage", REAL, CHAINAGE, "Chainage", "Distance along the axis at the chainage height"),
    OutputField("offset", REAL, CHAINAGE, "Offset", "Distance from the axis, positive right looking up-chainage"),
    OutputField("height", REAL, HEIGHT, "As-built height", "Surveyed height, in the input's height system"),
    OutputField("azimuth", REAL, DEGREE, "Azimuth", "Azimuth of the axis at the station, clockwise from north"),
    OutputField("row", WHOLE, NONE, "Row", "Row of the input table, counted from 1"),
    OutputField("reason", TEXT, NONE, "Reason", "Why the row could not be placed"),
    OutputField("design_h", REAL, HEIGHT, "Design height", "Height the station should have under the design"),
    OutputField("residual", REAL, HEIGHT, "Residual", "As-built minus design; positive is built high"),
    OutputField("adjust", REAL, HEIGHT, "Adjustment", "Minus the residual; positive is raise, negative is lower"),
    OutputField("flat_h", REAL, HEIGHT, "Design height as if flat", "Design height as if the Earth were flat"),
    OutputField("curv_eff", REAL, HEIGHT, "Curvature effect", "Design height minus design height as if flat"),
    OutputField("status", TEXT, NONE, "Status", "within, high, low, no height, no tolerance or off axis"),
    OutputField("design", TEXT, NONE, "Design", "The design used for this axis"),
    OutputField("chain_a", REAL, CHAINAGE, "Chainage of control A", "Chainage of the first control"),
    OutputField("height_a", REAL, HEIGHT, "Height of control A", "Height of the first control"),
    OutputField("chain_b", REAL, CHAINAGE, "Chainage of control B", "Chainage of the second control"),
    OutputField("height_b", REAL, HEIGHT, "Height of control B", "Height of the second control"),
    OutputField("slope", REAL, NONE, "Slope", "Rise of the design height per chainage at control A"),
    OutputField("chain_h", REAL, HEIGHT, "Chainage height", "Height at which chainages are measured"),
    OutputField("tolerance", REAL, HEIGHT, "Tolerance", "Greatest residual that counts as within"),
    OutputField("number", WHOLE, NONE, "Stations", "Stations with a residual"),
    OutputField("rms", REAL, HEIGHT, "RMS residual", "Root mean square of the residuals"),
    OutputField("max_abs", REAL, HEIGHT, "Greatest residual", "Greatest residual without its sign"),
    OutputField("max_at", TEXT, NONE, "Greatest residual at", "Station of the greatest residual"),
    OutputField("within", WHOLE, NONE, "Within tolerance", "Stations within the tolerance"),
    OutputField("high", WHOLE, NONE, "High", "Stations above the tolerance"),
    OutputField("low", WHOLE, NONE, "Low", "Stations below the tolerance"),
    OutputField("no_height", WHOLE, NONE, "Without height", "Stations without an as-built height"),
    OutputField("record", TEXT, NONE, "Record of the run", "Entry, parameters, controls and versions, as JSON"),
    OutputField("w", REAL, NONE, "Test value w", "Residual over its standard deviation as the test of blunders sees it"),
    OutputField("redund", REAL, NONE, "Redundancy", "Share of a blunder here that shows in the residual here"),
    OutputField("min_blund", REAL, HEIGHT, "Smallest detectable blunder", "Blunder found here with a chance of 80 percent"),
    OutputField("flag", TEXT, NONE, "Flag", "kept, suspected blunder, no height or off axis"),
    OutputField("name", TEXT, NONE, "Name", "Name of the reference: an axis, a leg of it, or a group of axes"),
    OutputField("kind", TEXT, NONE, "Kind", "line or plane; of an ellipse: levelling, or geoid with the geoid's slope error"),
    OutputField("axes", TEXT, NONE, "Axes", "Names of the axes it was fitted to, separated by semicolons"),
    OutputField("lat0", REAL, DEGREE, "Latitude of the point", "Latitude of the point of the plane"),
    OutputField("lon0", REAL, DEGREE, "Longitude of the point", "Longitude of the point of the plane"),
    OutputField("h0", REAL, HEIGHT, "Ellipsoidal height of the point", "Height of the plane at its point"),
    OutputField("nx", REAL, NONE, "Normal x", "Earth-centred unit normal of the plane, x"),
    OutputField("ny", REAL, NONE, "Normal y", "Earth-centred unit normal of the plane, y"),
    OutputField("nz", REAL, NONE, "Normal z", "Earth-centred unit normal of the plane, z"),
    OutputField("h_unit", TEXT, NONE, "Unit of heights", "Unit of h0 and of all heights in this row"),
    OutputField("h_system", TEXT, NONE, "Height system", "ellipsoidal, or above the geoid"),
    OutputField("undul", TEXT, NONE, "Undulation", "Where the undulations came from; a run that uses the row must agree"),
    OutputField("slopes", TEXT, NONE, "Slopes", "Slope along each axis at its origin against the ellipsoid's horizon"),
    OutputField("sd_h", REAL, HEIGHT, "Standard deviation of the height", "Of the height at the point"),
    OutputField("sd_slope", REAL, NONE, "Standard deviation of the slope", "Of the slope; of a plane the greater of both"),
    OutputField("suspected", WHOLE, NONE, "Suspected blunders", "Stations suspected of a blunder"),
    OutputField("removed", WHOLE, NONE, "Set aside", "Stations set aside as suspected blunders"),
    OutputField("str_vert", REAL, HEIGHT, "Straightness upwards, RMS", "RMS departure from the best-fit line, vertical"),
    OutputField("rng_vert", REAL, HEIGHT, "Straightness upwards, range", "Range of the vertical departures"),
    OutputField("str_lat", REAL, HEIGHT, "Straightness sideways, RMS", "RMS departure from the best-fit line, lateral"),
    OutputField("rng_lat", REAL, HEIGHT, "Straightness sideways, range", "Range of the lateral departures"),
    OutputField("str_comb", REAL, HEIGHT, "Straightness together, RMS", "RMS of vertical and lateral departures together"),
    OutputField("max_comb", REAL, HEIGHT, "Straightness together, greatest", "Greatest departure of both together"),
    OutputField("var_factor", REAL, NONE, "Variance factor", "1 where the stated accuracies hold; where none was stated, the "
                                                             "variance of one height in square metres"),
    OutputField("global_t", TEXT, NONE, "Global test", "passed, failed, or none where no accuracy was stated"),
    OutputField("tan_lat", REAL, DEGREE, "Latitude where level", "Latitude of the tangent point"),
    OutputField("tan_lon", REAL, DEGREE, "Longitude where level", "Longitude of the tangent point"),
    OutputField("tan_chain", REAL, CHAINAGE, "Chainage where level", "Chainage of the line's zero slope"),
    OutputField("tan_sd", REAL, CHAINAGE, "Its standard deviation", "Of the tangent point, its greater part; levelling only"),
    OutputField("tan_state", TEXT, NONE, "Tangent point", "inside, outside or poorly determined"),
    OutputField("first_date", TEXT, NONE, "First day of survey", "From the stations' field 'date', where there is one"),
    OutputField("last_date", TEXT, NONE, "Last day of survey", "From the stations' field 'date', where there is one"),
    OutputField("semi_a", REAL, CHAINAGE, "Longer semi-axis", "Of the 95 percent ellipse"),
    OutputField("semi_b", REAL, CHAINAGE, "Shorter semi-axis", "Of the 95 percent ellipse"),
    OutputField("undulation", REAL, HEIGHT, "Undulation", "Geoid height above the ellipsoid, h = H + N"),
    OutputField("height_ell", REAL, HEIGHT, "Ellipsoidal height", "Height above the ellipsoid"),
    OutputField("height_geo", REAL, HEIGHT, "Height above the geoid", "Height above the geoid"),
)

FIELDS = {field.name: field for field in _ALL}

PLACED = ("axis", "station", "chainage", "offset", "height")
REJECTED = ("row", "reason")
GENERATED = ("axis", "station", "chainage", "offset", "azimuth")
MEASURED = ("axis", "station", "chainage", "offset")
CONVERTED = ("undulation", "height_ell", "height_geo")
DESIGNED = ("axis", "station", "chainage", "offset", "design_h", "residual", "adjust", "flat_h", "curv_eff", "status")
SUMMARY = ("axis", "design", "chain_a", "height_a", "chain_b", "height_b", "slope", "chain_h", "tolerance",
           "number", "rms", "max_abs", "max_at", "within", "high", "low", "no_height", "record")

REFERENCE = ("name", "kind", "axes", "lat0", "lon0", "h0", "nx", "ny", "nz", "h_unit", "h_system", "undul", "azimuth", "slopes",
             "sd_h", "sd_slope", "number", "suspected", "removed", "rms", "str_vert", "rng_vert", "str_lat", "rng_lat",
             "str_comb", "max_comb", "var_factor", "global_t", "tan_lat", "tan_lon", "tan_chain", "tan_sd", "tan_state",
             "first_date", "last_date", "record")
ELLIPSE = ("name", "kind", "semi_a", "semi_b", "azimuth")
FITTED = ("axis", "station", "chainage", "offset", "residual", "w", "redund", "min_blund", "flag")

STATUSES = ("within", "high", "low", "no tolerance", "no height", "off axis")
UNIT_LABELS = {"metre": "m", "foot": "ft", "us_foot": "US ft"}


def label_with_unit(name, height_unit, chainage_unit):
    """Return the alias of field ``name`` with its unit, for example 'Residual (m)'."""
    field = FIELDS[name]
    unit = {HEIGHT: UNIT_LABELS[height_unit], CHAINAGE: UNIT_LABELS[chainage_unit], DEGREE: "°"}.get(field.unit)
    return f"{field.label} ({unit})" if unit else field.label
