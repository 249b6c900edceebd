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

STATUSES = ("within", "high", "low", "no tolerance", "no height", "off axis")
UNIT_LABELS = {"metre": "m", "foot": "ft", "us_foot": "US ft"}


def label_with_unit(name, height_unit, chainage_unit):
    """Return the alias of field ``name`` with its unit, for example 'Residual (m)'."""
    field = FIELDS[name]
    unit = {HEIGHT: UNIT_LABELS[height_unit], CHAINAGE: UNIT_LABELS[chainage_unit], DEGREE: "°"}.get(field.unit)
    return f"{field.label} ({unit})" if unit else field.label
