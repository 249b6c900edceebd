"""The output fields of all toolbox entries: name (ten characters at most), type, unit, meaning."""

from dataclasses import dataclass

from ..language.translation import tr
from ..language.units import UNIT_LABELS

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
    OutputField(
        "sd_line", REAL, HEIGHT, "Standard deviation across the axis", "Of the place, from those of east and north"
    ),
    OutputField("row", WHOLE, NONE, "Row", "Row of the input table, counted from 1"),
    OutputField(
        "reason", TEXT, NONE, "Reason", "Why the row was not placed or not matched, or the support is out of tolerance"
    ),
    OutputField("design_h", REAL, HEIGHT, "Design height", "Height the station should have under the design"),
    OutputField("residual", REAL, HEIGHT, "Residual", "As-built minus design; positive is built high"),
    OutputField("adjust", REAL, HEIGHT, "Adjustment", "Minus the residual; positive is raise, negative is lower"),
    OutputField("flat_h", REAL, HEIGHT, "Design height, no curvature", "Design height as if the Earth were flat"),
    OutputField("curv_eff", REAL, HEIGHT, "Curvature effect", "Design height minus design height as if flat"),
    OutputField("status", TEXT, NONE, "Status", "within, high, low, no height, no tolerance or off axis"),
    OutputField(
        "lateral", REAL, HEIGHT, "Lateral departure", "Distance from the line, positive right looking up-chainage"
    ),
    OutputField("side", TEXT, NONE, "Side", "Against the tolerance of the line: within, left, right or no tolerance"),
    OutputField("design", TEXT, NONE, "Design", "The design used for this axis"),
    OutputField("chain_a", REAL, CHAINAGE, "Chainage of control A", "Chainage of the first control"),
    OutputField("height_a", REAL, HEIGHT, "Height of control A", "Height of the first control"),
    OutputField("chain_b", REAL, CHAINAGE, "Chainage of control B", "Chainage of the second control"),
    OutputField("height_b", REAL, HEIGHT, "Height of control B", "Height of the second control"),
    OutputField("slope", REAL, NONE, "Slope", "Rise of the design height per chainage at control A"),
    OutputField("chain_h", REAL, HEIGHT, "Chainage height", "Ellipsoidal height at which chainages are measured"),
    OutputField("tolerance", REAL, HEIGHT, "Tolerance", "Greatest residual that counts as within"),
    OutputField("number", WHOLE, NONE, "Stations", "Stations with a residual"),
    OutputField("rms", REAL, HEIGHT, "RMS residual", "Root mean square of the residuals"),
    OutputField("max_abs", REAL, HEIGHT, "Greatest residual", "Greatest residual without its sign"),
    OutputField("max_at", TEXT, NONE, "Greatest residual at", "Station of the greatest residual"),
    OutputField("within", WHOLE, NONE, "Within tolerance", "Stations within the tolerance"),
    OutputField("high", WHOLE, NONE, "High", "Stations above the tolerance"),
    OutputField("low", WHOLE, NONE, "Low", "Stations below the tolerance"),
    OutputField("no_height", WHOLE, NONE, "No as-built height", "Stations without an as-built height"),
    OutputField("line", TEXT, NONE, "Line", "What the line was judged by: none, axis, chord or fitted"),
    OutputField("line_from", TEXT, NONE, "Line from", "First of the two stations that the line runs through"),
    OutputField("line_to", TEXT, NONE, "Line to", "Second of the two stations that the line runs through"),
    OutputField("line_tol", REAL, HEIGHT, "Tolerance of the line", "Greatest lateral departure that counts as within"),
    OutputField("lat_number", WHOLE, NONE, "Stations judged in line", "Stations with a lateral departure"),
    OutputField("lat_rms", REAL, HEIGHT, "RMS lateral departure", "Root mean square of the lateral departures"),
    OutputField("lat_max", REAL, HEIGHT, "Greatest lateral departure", "Without its sign"),
    OutputField("lat_max_at", TEXT, NONE, "Greatest lateral departure at", "Station of the greatest departure"),
    OutputField("lat_within", WHOLE, NONE, "Within the line's tolerance", "Stations within the line's tolerance"),
    OutputField("left", WHOLE, NONE, "Left", "Stations left of the line's tolerance"),
    OutputField("right", WHOLE, NONE, "Right", "Stations right of the line's tolerance"),
    OutputField("record", TEXT, NONE, "Record of the run", "Entry, parameters, controls and versions, as JSON"),
    OutputField(
        "w", REAL, NONE, "Test value w", "Residual over its standard deviation as the test of blunders sees it"
    ),
    OutputField("redund", REAL, NONE, "Redundancy", "Share of a blunder here that shows in the residual here"),
    OutputField(
        "min_blund", REAL, HEIGHT, "Smallest detectable blunder", "Blunder found here with a chance of 80 percent"
    ),
    OutputField("flag", TEXT, NONE, "Flag", "kept, suspected blunder, not fitted, no height or off axis"),
    OutputField("lat_w", REAL, NONE, "Lateral test value w", "As w, of the lateral departure"),
    OutputField("lat_redund", REAL, NONE, "Lateral redundancy", "As the redundancy, of the lateral departure"),
    OutputField(
        "lat_blund", REAL, HEIGHT, "Smallest detectable lateral blunder", "Found here with a chance of 80 percent"
    ),
    OutputField("lat_flag", TEXT, NONE, "Flag of the line", "As the flag, of the lateral departure"),
    OutputField("lin_lat", REAL, DEGREE, "Latitude of the line's middle", "Of the line in plan, at its kept stations"),
    OutputField("lin_lon", REAL, DEGREE, "Longitude of the line's middle", "Of the line in plan, at its kept stations"),
    OutputField("lin_az", REAL, DEGREE, "Azimuth of the line", "Of the line in plan, at its middle"),
    OutputField("lin_sd", REAL, HEIGHT, "Lateral standard deviation of the line", "Of its place at its middle"),
    OutputField("lin_sd_az", REAL, DEGREE, "Standard deviation of its azimuth", "Of the line in plan"),
    OutputField("lin_number", WHOLE, NONE, "Stations of the line in plan", "Stations with a lateral departure, kept"),
    OutputField("lin_susp", WHOLE, NONE, "Suspected blunders in line", "Stations suspected of a blunder sideways"),
    OutputField("lin_aside", WHOLE, NONE, "Set aside in plan", "Stations set aside sideways as suspected blunders"),
    OutputField("lin_var", REAL, NONE, "Variance factor in plan", "Of the lateral departures, 1 if the accuracy holds"),
    OutputField("lin_test", TEXT, NONE, "Global test in plan", "passed, failed, or none where no accuracy was stated"),
    OutputField("name", TEXT, NONE, "Name", "Name of the reference: an axis, a leg of it, or a group of axes"),
    OutputField("kind", TEXT, NONE, "Kind", "line or plane; of an ellipse: tangent or level, the point it belongs to"),
    OutputField("axes", TEXT, NONE, "Axes", "Names of the axes it was fitted to, separated by semicolons"),
    OutputField("lat0", REAL, DEGREE, "Latitude of the point", "Latitude of the point of the plane"),
    OutputField("lon0", REAL, DEGREE, "Longitude of the point", "Longitude of the point of the plane"),
    OutputField("h0", REAL, HEIGHT, "Ellipsoidal height of the point", "Height of the plane at its point"),
    OutputField("nx", REAL, NONE, "Normal x", "Earth-centred unit normal of the plane, x"),
    OutputField("ny", REAL, NONE, "Normal y", "Earth-centred unit normal of the plane, y"),
    OutputField("nz", REAL, NONE, "Normal z", "Earth-centred unit normal of the plane, z"),
    OutputField("h_unit", TEXT, NONE, "Unit of heights", "Unit of h0 and of all heights in this row"),
    OutputField("h_system", TEXT, NONE, "Height system", "ellipsoidal, or above the geoid"),
    OutputField(
        "undul", TEXT, NONE, "Undulation", "Where the undulations came from; a run that uses the row must agree"
    ),
    OutputField(
        "datum", TEXT, NONE, "Datum", "Geographic reference system of the point; a run on another one is refused"
    ),
    OutputField(
        "slopes",
        TEXT,
        NONE,
        "Slopes",
        "Slope along each axis at its origin against the ellipsoid's horizon; against the level surface where heights "
        "above the geoid have no undulations, or one for all",
    ),
    OutputField("sd_h", REAL, HEIGHT, "Standard deviation of the height", "Of the height at the point"),
    OutputField(
        "sd_slope", REAL, NONE, "Standard deviation of the slope", "Of the slope; of a plane the greater of both"
    ),
    OutputField("suspected", WHOLE, NONE, "Suspected blunders", "Stations suspected of a blunder"),
    OutputField("removed", WHOLE, NONE, "Set aside", "Stations set aside as suspected blunders"),
    OutputField(
        "str_vert", REAL, HEIGHT, "Vertical straightness, RMS", "RMS departure from the best-fit line, vertical"
    ),
    OutputField("rng_vert", REAL, HEIGHT, "Vertical straightness, range", "Range of the vertical departures"),
    OutputField("str_lat", REAL, HEIGHT, "Lateral straightness, RMS", "RMS departure from the best-fit line, lateral"),
    OutputField("rng_lat", REAL, HEIGHT, "Lateral straightness, range", "Range of the lateral departures"),
    OutputField(
        "str_comb", REAL, HEIGHT, "Combined straightness, RMS", "RMS of vertical and lateral departures together"
    ),
    OutputField("max_comb", REAL, HEIGHT, "Combined straightness, greatest", "Greatest departure of both together"),
    OutputField(
        "zon_vert", REAL, HEIGHT, "Vertical minimum zone", "Least distance of two parallel lines that hold the profile"
    ),
    OutputField(
        "zon_lat", REAL, HEIGHT, "Lateral minimum zone", "Least distance of two parallel lines that hold the plan"
    ),
    OutputField("zon_cyl", REAL, HEIGHT, "Minimum zone, cylinder", "Least diameter of a cylinder that holds the axis"),
    OutputField(
        "var_factor",
        REAL,
        NONE,
        "Variance factor",
        "1 where the stated accuracies hold; where none was stated, the variance of one height in square metres",
    ),
    OutputField("global_t", TEXT, NONE, "Global test", "passed, failed, or none where no accuracy was stated"),
    OutputField("tan_lat", REAL, DEGREE, "Tangent point, latitude", "Where the normal is that of the ellipsoid"),
    OutputField("tan_lon", REAL, DEGREE, "Tangent point, longitude", "Where the normal is that of the ellipsoid"),
    OutputField("tan_chain", REAL, CHAINAGE, "Tangent point, chainage", "Where the line's slope on the ellipsoid is 0"),
    OutputField(
        "tan_sd",
        REAL,
        CHAINAGE,
        "Tangent point, standard deviation",
        "All that is uncertain; of a plane the greater one",
    ),
    OutputField("tan_state", TEXT, NONE, "Tangent point", "inside, outside or poorly determined"),
    OutputField("lev_lat", REAL, DEGREE, "Level point, latitude", "Where the normal is that of the horizon"),
    OutputField("lev_lon", REAL, DEGREE, "Level point, longitude", "Where the normal is that of the horizon"),
    OutputField(
        "lev_chain", REAL, CHAINAGE, "Level point, chainage", "Where the line's slope against the horizon is 0"
    ),
    OutputField(
        "lev_sd", REAL, CHAINAGE, "Level point, standard deviation", "All that is uncertain; of a plane the greater one"
    ),
    OutputField("lev_state", TEXT, NONE, "Level point", "inside, outside or poorly determined"),
    OutputField("first_date", TEXT, NONE, "First day of survey", "From the stations' field 'date', where there is one"),
    OutputField("last_date", TEXT, NONE, "Last day of survey", "From the stations' field 'date', where there is one"),
    OutputField("semi_a", REAL, CHAINAGE, "Longer semi-axis", "Of the 95 percent ellipse"),
    OutputField("semi_b", REAL, CHAINAGE, "Shorter semi-axis", "Of the 95 percent ellipse"),
    OutputField("factor", REAL, NONE, "Exaggeration", "How many times larger than on the ground heights are drawn"),
    OutputField("bar_m", REAL, NONE, "Bar on the ground (m)", "Length of the bar as drawn, in metres on the ground"),
    OutputField(
        "cut", WHOLE, NONE, "Cut", "1 where the drawing stops short of the value: the true value is in the table"
    ),
    OutputField(
        "part", TEXT, NONE, "Part", "What the line is: as-built, design, level, flat, datum, grid, tick, scale, frame"
    ),
    OutputField("value", REAL, HEIGHT, "Height in the strip", "Above the level line, or from the straight line"),
    OutputField("label", TEXT, NONE, "Label", "What is written at the line"),
    OutputField("length", REAL, CHAINAGE, "Length", "Length over the stations"),
    OutputField(
        "factor_sd", REAL, NONE, "Standard deviation of the curvature factor", "From the accuracy of the heights"
    ),
    OutputField("geoid_sd", REAL, NONE, "The geoid's share", "What the geoid's bending adds to it"),
    OutputField("factor_lo", REAL, NONE, "Curvature factor, from", "95 percent interval"),
    OutputField("factor_hi", REAL, NONE, "Curvature factor, to", "95 percent interval"),
    OutputField("radius", REAL, CHAINAGE, "Radius of the Earth", "Euler's radius along the axis"),
    OutputField("imp_radius", REAL, CHAINAGE, "Implied radius", "Radius of the Earth over the curvature factor"),
    OutputField(
        "radius_lo",
        REAL,
        CHAINAGE,
        "Implied radius, from",
        "95 percent interval; on either side, or level, where there is no upper end",
    ),
    OutputField("radius_hi", REAL, CHAINAGE, "Implied radius, to", "95 percent interval; empty where it has no end"),
    OutputField("sentence", TEXT, NONE, "In words", "The verdict in one sentence"),
    OutputField("rms_level", REAL, HEIGHT, "RMS, level", "Residuals from a constant height"),
    OutputField("rms_grade", REAL, HEIGHT, "RMS, grade", "Residuals from a constant slope above the level surface"),
    OutputField("rms_strght", REAL, HEIGHT, "RMS, straight", "Residuals from a straight line in space"),
    OutputField("rms_rule", REAL, HEIGHT, "RMS, 8-inch rule", "Residuals from 8 inches per mile squared"),
    OutputField("rms_sphere", REAL, HEIGHT, "RMS, sphere", "Residuals from a straight line over a sphere"),
    OutputField("rms_free", REAL, HEIGHT, "RMS, free", "Residuals with the curvature factor left free"),
    OutputField("chi_level", REAL, NONE, "Chi squared, level", "Weighted sum of squares"),
    OutputField("chi_grade", REAL, NONE, "Chi squared, grade", "Weighted sum of squares"),
    OutputField("chi_strght", REAL, NONE, "Chi squared, straight", "Weighted sum of squares"),
    OutputField("chi_rule", REAL, NONE, "Chi squared, 8-inch rule", "Weighted sum of squares"),
    OutputField("chi_sphere", REAL, NONE, "Chi squared, sphere", "Weighted sum of squares"),
    OutputField("chi_free", REAL, NONE, "Chi squared, free", "Weighted sum of squares"),
    OutputField(
        "move", REAL, HEIGHT, "Movement", "Scheduled movement of the support; positive is raise, negative is lower"
    ),
    OutputField("action", TEXT, NONE, "Action", "raise, lower, keep, measure again, left out, no height or off axis"),
    OutputField("predicted", REAL, HEIGHT, "Predicted residual", "Residual after the movement; positive is high"),
    OutputField(
        "after", TEXT, NONE, "Predicted status", "within, high, low or no tolerance, once the movement is made"
    ),
    OutputField(
        "lat_move", REAL, HEIGHT, "Lateral movement", "Scheduled; positive is to the right, negative to the left"
    ),
    OutputField(
        "lat_action", TEXT, NONE, "Lateral action", "left, right, keep, measure again, set aside, no line or off axis"
    ),
    OutputField("lat_pred", REAL, HEIGHT, "Predicted lateral departure", "After the movement; positive stands right"),
    OutputField("lat_after", TEXT, NONE, "Predicted side", "within, left, right or no tolerance, once it is moved"),
    OutputField("lat_reason", TEXT, NONE, "Reason, lateral", "Why it is not moved sideways, or stays out of tolerance"),
    OutputField("survey", TEXT, NONE, "Survey", "Name of the survey: its date, else its layer's name"),
    OutputField("surveys", WHOLE, NONE, "Surveys", "Surveys in which the station was found, the first among them"),
    OutputField(
        "last_seen", TEXT, NONE, "Latest survey", "The latest survey that has the station; the change ends there"
    ),
    OutputField("h_first", REAL, HEIGHT, "Height in the first survey", "Surveyed height in the survey compared with"),
    OutputField("h_last", REAL, HEIGHT, "Height in the later survey", "Surveyed height in the survey named"),
    OutputField("change", REAL, HEIGHT, "Change", "Later minus first height; positive is risen"),
    OutputField("sd_change", REAL, HEIGHT, "Standard deviation of the change", "Root of the sum of both variances"),
    OutputField("ratio", REAL, NONE, "Change over its standard deviation", "Change over its standard deviation"),
    OutputField(
        "verdict",
        TEXT,
        NONE,
        "Verdict",
        "risen or settled (beyond 3.29 deviations), possible (1.96), not significant, no sd",
    ),
    OutputField("rate", REAL, HEIGHT, "Rate per year", "Slope of a weighted line through all surveys over time"),
    OutputField("sd_rate", REAL, HEIGHT, "Standard deviation of the rate", "Per year, from those of the heights"),
    OutputField(
        "common", REAL, HEIGHT, "Change common to the axis", "Common shift, and tilt where asked for, at this station"
    ),
    OutputField("bending", REAL, HEIGHT, "Differential movement", "Change without what is common to the axis"),
    OutputField(
        "sd_bend", REAL, HEIGHT, "Standard deviation of the differential movement", "That of the common shift included"
    ),
    OutputField(
        "bend_verd",
        TEXT,
        NONE,
        "Verdict on the differential movement",
        "As that on the change; a run of neighbours is judged as one",
    ),
    OutputField("date", TEXT, NONE, "Date", "Day of the survey, year-month-day"),
    OutputField("years", REAL, NONE, "Years", "Time since the first survey in years of 365.25 days"),
    OutputField("stable", WHOLE, NONE, "Stable", "Stations that have not moved among themselves"),
    OutputField("chi2", REAL, NONE, "Chi squared", "Of all changes, against none at all; with what levelling shares"),
    OutputField("chi2_limit", REAL, NONE, "Limit of chi squared", "95 % quantile: beyond it something has changed"),
    OutputField("shift", REAL, HEIGHT, "Common shift", "At the mean position of the axis' stations"),
    OutputField("sd_shift", REAL, HEIGHT, "Standard deviation of the shift", "From those of the heights"),
    OutputField(
        "shift_verd",
        TEXT,
        NONE,
        "Verdict on the shift",
        "significant (beyond 1.96 deviations), not significant, not judged",
    ),
    OutputField("tilt_verd", TEXT, NONE, "Verdict on the tilt", "As that on the shift"),
    OutputField("tilt", REAL, NONE, "Common tilt", "Rise of the change per chainage, without unit"),
    OutputField("sd_tilt", REAL, NONE, "Standard deviation of the tilt", "From those of the heights"),
    OutputField("risen", WHOLE, NONE, "Risen", "Stations whose change is beyond 3.29 deviations, upwards"),
    OutputField("settled", WHOLE, NONE, "Settled", "Stations whose change is beyond 3.29 deviations, downwards"),
    OutputField("possible", WHOLE, NONE, "Possible", "Stations whose change is between 1.96 and 3.29 deviations"),
    OutputField(
        "bent", WHOLE, NONE, "Stations with differential movement", "Stations whose bending is beyond 3.29 deviations"
    ),
    OutputField("lat_first", REAL, HEIGHT, "Lateral position in the first survey", "Positive right"),
    OutputField("lat_last", REAL, HEIGHT, "Lateral position in the later survey", "Positive right"),
    OutputField("lat_change", REAL, HEIGHT, "Lateral change", "Later minus first; positive is to the right"),
    OutputField("sd_lat", REAL, HEIGHT, "Standard deviation of the lateral change", "Empty with lines of their own"),
    OutputField("lat_ratio", REAL, NONE, "Lateral change over its standard deviation", "Over its standard deviation"),
    OutputField(
        "lat_verd",
        TEXT,
        NONE,
        "Verdict on the lateral change",
        "left or right (beyond 3.29 deviations), possible (1.96), not significant, no sd",
    ),
    OutputField("lat_rate", REAL, HEIGHT, "Lateral rate per year", "As that of the heights; positive is to the right"),
    OutputField("sd_lrate", REAL, HEIGHT, "Standard deviation of the lateral rate", "Per year"),
    OutputField(
        "lat_common",
        REAL,
        HEIGHT,
        "Lateral change common to the axis",
        "Common shift, and rotation where it is separated",
    ),
    OutputField(
        "lat_bend", REAL, HEIGHT, "Lateral differential movement", "Lateral change without what is common to the axis"
    ),
    OutputField(
        "sd_lbend", REAL, HEIGHT, "Standard deviation of the lateral differential movement", "Common shift included"
    ),
    OutputField(
        "lbend_verd", TEXT, NONE, "Verdict on the lateral differential movement", "As that on the lateral change"
    ),
    OutputField("lat_stable", WHOLE, NONE, "Laterally stable", "Stations that have not moved among themselves"),
    OutputField("lat_shift", REAL, HEIGHT, "Common lateral shift", "At the mean position; positive is to the right"),
    OutputField("sd_lshift", REAL, HEIGHT, "Standard deviation of the lateral shift", "From those of the stations"),
    OutputField("lat_turn", REAL, NONE, "Common rotation in plan", "Per chainage, without unit; positive is clockwise"),
    OutputField("sd_lturn", REAL, NONE, "Standard deviation of the rotation", "From those of the stations"),
    OutputField("lat_poss", WHOLE, NONE, "Possible, lateral", "Lateral changes between 1.96 and 3.29 deviations"),
    OutputField(
        "lat_bent",
        WHOLE,
        NONE,
        "Stations with lateral differential movement",
        "Stations whose lateral bending is beyond 3.29 deviations",
    ),
    OutputField("from_pt", TEXT, NONE, "From", "Point where the line starts"),
    OutputField("to_pt", TEXT, NONE, "To", "Point where the line ends"),
    OutputField("dh", REAL, HEIGHT, "Height difference", "Height of the end less that of the start, corrected"),
    OutputField("sd", REAL, HEIGHT, "Standard deviation", "By propagation of what was stated"),
    OutputField("setups", WHOLE, NONE, "Setups", "Setups or sights it is made of"),
    OutputField("curv_corr", REAL, HEIGHT, "Curvature and refraction", "What was added for curvature and refraction"),
    OutputField("coll_corr", REAL, HEIGHT, "Collimation", "What was added for the level's collimation"),
    OutputField("imbalance", REAL, CHAINAGE, "Imbalance", "Fore sights longer than back sights by this much"),
    OutputField("k", REAL, NONE, "Refraction coefficient k", "As used; without unit"),
    OutputField("k_solved", REAL, NONE, "Solved k", "Coefficient of refraction from reciprocal sights"),
    OutputField("k_sd", REAL, NONE, "Standard deviation of k", "Of the solved coefficient"),
    OutputField("day", TEXT, NONE, "Day", "As in the input"),
    OutputField("rows", TEXT, NONE, "Rows", "Rows of the input table, counted from 1"),
    OutputField("point", TEXT, NONE, "Point", "Name of the point"),
    OutputField("role", TEXT, NONE, "Role", "fixed, weighted, held, adjusted, no benchmark or not in the net"),
    OutputField("given_h", REAL, HEIGHT, "Given height", "Height of the benchmark as given"),
    OutputField("given_diff", REAL, HEIGHT, "Adjusted minus given", "Adjusted height less the height given"),
    OutputField("grav_corr", REAL, HEIGHT, "Gravity correction", "Normal-orthometric, as added to the line"),
    OutputField("adj_dh", REAL, HEIGHT, "Adjusted difference", "Height difference from the adjusted heights"),
    OutputField("v", REAL, HEIGHT, "Observed minus adjusted", "Residual of the line"),
    OutputField("loop", WHOLE, NONE, "Number", "Number of the misclosure"),
    OutputField("path", TEXT, NONE, "Route", "Points the route leads through"),
    OutputField("misclosure", REAL, HEIGHT, "Misclosure", "What the way adds up to and should not"),
    OutputField("limit", REAL, HEIGHT, "Limit", "n times the root of the length in kilometres"),
    OutputField("covar", TEXT, NONE, "Covariance", "With the points of the rows to this one, in square millimetres"),
    OutputField(
        "n_change",
        REAL,
        HEIGHT,
        "Change of the undulation",
        "Undulation less that at the axis' start: what one value hides",
    ),
    OutputField(
        "n_bend", REAL, HEIGHT, "Bending of the geoid", "Undulation above the straight line between the axis' ends"
    ),
    OutputField("undulation", REAL, HEIGHT, "Undulation", "Geoid height above the ellipsoid, h = H + N"),
    OutputField("height_ell", REAL, HEIGHT, "Ellipsoidal height", "Height above the ellipsoid"),
    OutputField("height_geo", REAL, HEIGHT, "Orthometric height", "Height above the geoid, H = h - N"),
)


def _by_name(*fields):
    """{name: field}; ValueError where a name stands twice, for the later one would silently hide the other."""
    found = {field.name: field for field in fields}
    if len(found) < len(fields):
        names = [field.name for field in fields]
        raise ValueError(f"fields that stand twice: {sorted({name for name in names if names.count(name) > 1})}")
    return found


FIELDS = _by_name(*_ALL)


# The names are the contract, and a few say another thing in another layer: there they have a title of their own.
OF_CURVATURE = _by_name(
    OutputField(
        "factor", REAL, NONE, "Curvature factor", "1 is straight in space, 0 a constant slope above the level surface"
    ),
    OutputField("verdict", TEXT, NONE, "Verdict", "straight, level, either only on average, neither, undecided"),
)


OF_LINE_BARS = _by_name(
    OutputField(
        "factor", REAL, NONE, "Exaggeration", "How many times larger than on the ground lateral departures are drawn"
    )
)


OF_PLAN = _by_name(
    OF_LINE_BARS["factor"],
    OutputField("part", TEXT, NONE, "Part", "What it is: as-built, line, tolerance, datum, grid, tick, scale, frame"),
    OutputField("value", REAL, HEIGHT, "Lateral departure", "Distance from the line, positive right"),
)


OF_LEVELLED = _by_name(OutputField("height", REAL, HEIGHT, "Adjusted height", "Height from the adjustment of the net"))


OF_MOTIONS = _by_name(
    OutputField("rms", REAL, HEIGHT, "RMS, shift removed", "Root mean square of the bending, else of the change"),
    OutputField("lat_number", WHOLE, NONE, "Stations compared in line", "Stations with a lateral change"),
    OutputField("lat_rms", REAL, HEIGHT, "Lateral RMS, shift removed", "As that of the heights"),
    OutputField("right", WHOLE, NONE, "Moved right", "Stations whose lateral change is beyond 3.29 deviations"),
    OutputField("left", WHOLE, NONE, "Moved left", "Stations whose lateral change is beyond 3.29 deviations"),
)


OF_UNMATCHED = _by_name(OutputField("height", REAL, HEIGHT, "Height", "Height in the survey named"))


PLACED = ("axis", "station", "chainage", "offset", "height")


REJECTED = ("row", "reason")


GENERATED = ("axis", "station", "chainage", "offset", "azimuth")


MEASURED = ("axis", "station", "chainage", "offset")


# Only where the points bring standard deviations of their own.
MEASURED_LINE = ("sd_line",)


CONVERTED = ("undulation", "height_ell", "height_geo")


DESIGNED = ("axis", "station", "chainage", "offset", "design_h", "residual", "adjust", "flat_h", "curv_eff", "status")


# What a design says of its residuals, and of none but these.
OF_DESIGN = ("design_h", "adjust", "flat_h", "curv_eff", "status")


# Only where the line is judged too.
DESIGNED_LINE = ("lateral", "side")


SUMMARY_LINE = (
    "line",
    "line_from",
    "line_to",
    "line_tol",
    "lat_number",
    "lat_rms",
    "lat_max",
    "lat_max_at",
    "lat_within",
    "left",
    "right",
)


SUMMARY = (
    "axis",
    "design",
    "chain_a",
    "height_a",
    "chain_b",
    "height_b",
    "slope",
    "chain_h",
    "tolerance",
    "number",
    "rms",
    "max_abs",
    "max_at",
    "within",
    "high",
    "low",
    "no_height",
    "record",
)


REFERENCE = (
    "name",
    "kind",
    "axes",
    "lat0",
    "lon0",
    "h0",
    "nx",
    "ny",
    "nz",
    "h_unit",
    "h_system",
    "undul",
    "datum",
    "azimuth",
    "slopes",
    "sd_h",
    "sd_slope",
    "number",
    "suspected",
    "removed",
    "rms",
    "str_vert",
    "rng_vert",
    "str_lat",
    "rng_lat",
    "str_comb",
    "max_comb",
    "zon_vert",
    "zon_lat",
    "zon_cyl",
    "var_factor",
    "global_t",
    "tan_lat",
    "tan_lon",
    "tan_chain",
    "tan_sd",
    "tan_state",
    "lev_lat",
    "lev_lon",
    "lev_chain",
    "lev_sd",
    "lev_state",
    "first_date",
    "last_date",
    "record",
)


CURVATURE = (
    "axis",
    "number",
    "removed",
    "length",
    "factor",
    "factor_sd",
    "geoid_sd",
    "factor_lo",
    "factor_hi",
    "radius",
    "imp_radius",
    "radius_lo",
    "radius_hi",
    "verdict",
    "sentence",
    "rms_level",
    "rms_grade",
    "rms_strght",
    "rms_rule",
    "rms_sphere",
    "rms_free",
    "chi_level",
    "chi_grade",
    "chi_strght",
    "chi_rule",
    "chi_sphere",
    "chi_free",
    "record",
)


ELLIPSE = ("name", "kind", "semi_a", "semi_b", "azimuth")


FITTED = ("axis", "station", "chainage", "offset", "residual", "w", "redund", "min_blund", "flag")


# Only where the line in plan is fitted too.
FITTED_LINE = ("lateral", "lat_w", "lat_redund", "lat_blund", "lat_flag")


REFERENCE_LINE = (
    "lin_lat",
    "lin_lon",
    "lin_az",
    "lin_sd",
    "lin_sd_az",
    "lin_number",
    "lin_susp",
    "lin_aside",
    "lin_var",
    "lin_test",
)


BARS = ("axis", "station", "chainage", "residual", "status", "factor", "bar_m", "cut")


LINE_BARS = ("axis", "station", "chainage", "lateral", "side", "factor", "bar_m", "cut")


BAND = ("axis", "tolerance", "factor")


STRIP = ("axis", "part", "station", "chainage", "value", "label", "factor", "cut")


SCHEDULED = ("move", "action", "predicted", "after", "reason")


# Only where the supports are moved sideways too, each in place of the one above.
SCHEDULED_LINE = ("lat_move", "lat_action", "lat_pred", "lat_after", "lat_reason")


COMPARED = (
    "axis",
    "station",
    "chainage",
    "offset",
    "surveys",
    "first_date",
    "last_date",
    "last_seen",
    "h_first",
    "h_last",
    "change",
    "sd_change",
    "ratio",
    "verdict",
    "rate",
    "sd_rate",
    "common",
    "bending",
    "sd_bend",
    "bend_verd",
)


CHANGES = (
    "survey",
    "date",
    "axis",
    "station",
    "chainage",
    "h_first",
    "h_last",
    "change",
    "sd_change",
    "ratio",
    "verdict",
    "common",
    "bending",
    "sd_bend",
    "bend_verd",
)


UNMATCHED = ("survey", "row", "axis", "station", "chainage", "height", "reason")


MOTIONS = (
    "axis",
    "survey",
    "date",
    "years",
    "number",
    "stable",
    "chi2",
    "chi2_limit",
    "shift",
    "sd_shift",
    "shift_verd",
    "tilt",
    "sd_tilt",
    "tilt_verd",
    "rms",
    "risen",
    "settled",
    "possible",
    "bent",
    "record",
)


# Only where the line is compared too.
CHANGES_LINE = (
    "lat_first",
    "lat_last",
    "lat_change",
    "sd_lat",
    "lat_ratio",
    "lat_verd",
    "lat_common",
    "lat_bend",
    "sd_lbend",
    "lbend_verd",
)


COMPARED_LINE = (*CHANGES_LINE[:6], "lat_rate", "sd_lrate", *CHANGES_LINE[6:])


MOTIONS_LINE = (
    "lat_number",
    "lat_stable",
    "lat_shift",
    "sd_lshift",
    "lat_turn",
    "sd_lturn",
    "lat_rms",
    "right",
    "left",
    "lat_poss",
    "lat_bent",
)


REDUCED = (
    "from_pt",
    "to_pt",
    "dh",
    "sd",
    "length",
    "setups",
    "kind",
    "curv_corr",
    "coll_corr",
    "imbalance",
    "k",
    "k_solved",
    "k_sd",
    "day",
    "rows",
)


LEVELLED = ("point", "height", "sd", "role", "given_h", "given_diff", "w")


LINES = ("from_pt", "to_pt", "dh", "sd", "length", "grav_corr", "adj_dh", "v", "w", "redund", "min_blund", "flag")


MISCLOSURES = ("loop", "kind", "path", "length", "misclosure", "sd", "limit", "status")


COVARIANCE = ("point", "covar")


GEOID_ALONG = ("axis", "station", "chainage", "undulation", "n_change", "n_bend")


def label_with_unit(field, height_unit, chainage_unit):
    """Return the alias of an OutputField with its unit, for example 'Residual (m)'."""
    unit = {HEIGHT: UNIT_LABELS[height_unit], CHAINAGE: UNIT_LABELS[chainage_unit], DEGREE: "°"}.get(field.unit)
    return f"{tr(field.label)} ({unit})" if unit else tr(field.label)
