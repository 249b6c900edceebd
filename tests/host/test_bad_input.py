"""Bad input ends in one clear sentence that names the layer, the field and the row; doubtful input is warned of."""

import math

import pytest

UTM = "EPSG:32631"
X, Y = 500000.0, 5540000.0


@pytest.fixture
def straight(toolbox):
    stations, axis = toolbox.straight()
    return {"STATIONS": stations, "AXIS": axis}


def places(number=5, step=100.0, **more):
    return [{"at": (X + step * k, Y), "height": 50.0, **more} for k in range(number)]


ENTRIES = ("designheights", "measurestations")


# --- layers


@pytest.mark.parametrize("entry", ENTRIES)
@pytest.mark.parametrize("key, name", [("STATIONS", "stations"), ("AXIS", "axis")])
def test_no_coordinate_reference_system(toolbox, straight, entry, key, name):
    good = straight[key]
    shapes = [{"at": f.geometry().asWkt(12), "height": 1.0} for f in good.getFeatures()]
    straight[key] = toolbox.layer(name, "Point" if key == "STATIONS" else "LineString", "", shapes)
    assert toolbox.refusal(entry, **straight) == f"Layer '{name}' has no coordinate reference system; set it first."


@pytest.mark.parametrize("entry", ENTRIES)
def test_kinds_of_geometry(toolbox, straight, entry):
    table = toolbox.table([{"height": 1.0}])
    polygon = toolbox.layer("site", "Polygon", UTM, [{"at": "Polygon((0 0, 1 0, 1 1, 0 0))"}])
    stations, axis = straight["STATIONS"], straight["AXIS"]
    for given, text in (
        ((table, axis), "Layer 'list' has no geometry, but points are expected here."),
        ((axis, axis), "Layer 'axis' has lines, but points are expected here."),
        ((polygon, axis), "Layer 'site' has polygons, but points are expected here."),
        ((stations, table), "Layer 'list' has no geometry, but lines are expected here."),
        ((stations, stations), "Layer 'stations' has points, but lines are expected here."),
        ((stations, polygon), "Layer 'site' has polygons, but lines are expected here."),
        ((axis, stations), "Layer 'axis' has lines, but points are expected here."),
    ):
        assert toolbox.refusal(entry, STATIONS=given[0], AXIS=given[1]) == text


@pytest.mark.parametrize("entry", ENTRIES)
def test_row_without_geometry(toolbox, straight, entry):
    rows = places()
    rows[2]["at"] = None
    text = toolbox.refusal(entry, STATIONS=toolbox.points(rows, UTM), AXIS=straight["AXIS"])
    assert text == "Layer 'stations', row 3 (feature 3) has no geometry."
    axis = toolbox.lines([{"at": [(X, Y), (X + 9, Y)], "name": "a"}, {"at": None, "name": "b"}], UTM)
    assert toolbox.refusal(entry, STATIONS=straight["STATIONS"], AXIS=axis) == (
        "Layer 'axis', row 2: axis 'b' has no geometry."
    )


def test_empty_layers(toolbox, straight):
    nothing = toolbox.points([], UTM, types={"height": "double"})
    assert (
        toolbox.refusal("designheights", STATIONS=nothing, AXIS=straight["AXIS"]) == "Layer 'stations' has no stations."
    )
    nothing = toolbox.lines([], UTM, types={"name": "string"})
    assert toolbox.refusal("designheights", STATIONS=straight["STATIONS"], AXIS=nothing) == "Layer 'axis' has no axis."
    nothing = toolbox.table([], types={"station": "string"})
    assert toolbox.refusal("placestations", INPUT=nothing, AXIS=straight["AXIS"]) == "Layer 'list' has no rows."


def test_more_points_than_one_in_a_row(toolbox, straight):
    stations = toolbox.points([{"at": f"MultiPoint(({X} {Y}),({X + 1} {Y}))", "height": 1.0}], UTM, "MultiPoint")
    assert toolbox.refusal("designheights", STATIONS=stations, AXIS=straight["AXIS"]) == (
        "Layer 'stations', row 1 has 2 points; one is expected."
    )


# A point without a number for x is an empty point to the host.
@pytest.mark.parametrize(
    "bad, said",
    [((math.nan, Y), " (feature 2) has no geometry."), ((X, math.inf), " has coordinates that are not numbers.")],
)
def test_coordinates_that_are_no_numbers(toolbox, straight, bad, said):
    rows = places()
    rows[1]["at"] = bad
    assert toolbox.refusal("designheights", STATIONS=toolbox.points(rows, UTM), AXIS=straight["AXIS"]) == (
        "Layer 'stations', row 2" + said
    )


@pytest.mark.parametrize("at", [(8.0, 95.0), (8.0, -90.5), (1234567.0, 50.0)])
def test_latitude_beyond_the_pole(toolbox, at):
    """Eastings and northings under a geographic system are the usual cause."""
    stations = toolbox.points([{"at": (8.0, 50.0), "height": 1.0}, {"at": at, "height": 1.0}])
    axis = toolbox.lines([{"at": [(8.0, 50.0), (8.1, 50.0)], "name": "a"}])
    text = toolbox.refusal("designheights", STATIONS=stations, AXIS=axis)
    assert text.startswith("Layer 'stations', row 2: ") and "not a place on Earth" in text
    axis = toolbox.lines([{"at": [(8.0, 50.0), at], "name": "a"}])
    stations = toolbox.points([{"at": (8.0, 50.0), "height": 1.0}])
    assert "Layer 'axis', row 1" in toolbox.refusal("designheights", STATIONS=stations, AXIS=axis)


def test_datum_that_only_a_ballpark_step_reaches(toolbox, straight):
    """From a datum without a known way, metres would be lost silently."""
    from qgis.core import QgsCoordinateReferenceSystem

    unknown = QgsCoordinateReferenceSystem.fromProj("+proj=longlat +ellps=bessel +no_defs")
    axis = toolbox.lines([{"at": [(2.9, 50.0), (3.1, 50.0)], "name": "a"}])
    axis.setCrs(unknown)
    text = toolbox.refusal("designheights", STATIONS=straight["STATIONS"], AXIS=axis)
    assert "ballpark" in text and "Layer 'axis'" in text


# --- fields


@pytest.mark.parametrize(
    "key, layer, entry",
    [
        ("HEIGHT_FIELD", "stations", "designheights"),
        ("STATION_AXIS_FIELD", "stations", "designheights"),
        ("AXIS_FIELD", "axis", "designheights"),
        ("AXIS_FIELD", "axis", "generatestations"),
        ("STATION_AXIS_FIELD", "stations", "measurestations"),
        ("HEIGHT_FIELD", "stations", "convertheights"),
    ],
)
def test_missing_field(toolbox, straight, key, layer, entry):
    given = {"generatestations": {"AXIS": straight["AXIS"]}, "convertheights": {"STATIONS": straight["STATIONS"]}}.get(
        entry, straight
    )
    text = toolbox.refusal(entry, **{key: "nope"}, **given)
    has = "height" if layer == "stations" else "name"
    assert text == f"Layer '{layer}' has no field 'nope' ({key}); it has {has}."


@pytest.mark.parametrize("key", ["STATION_FIELD", "OFFSET_FIELD", "HEIGHT_FIELD", "STATION_AXIS_FIELD"])
def test_missing_field_of_a_list(toolbox, straight, key):
    rows = toolbox.table([{"station": "0+100", "height": 1.0}])
    assert toolbox.refusal("placestations", INPUT=rows, AXIS=straight["AXIS"], **{key: "nope"}) == (
        f"Layer 'list' has no field 'nope' ({key}); it has station, height."
    )


def test_no_field_with_heights(toolbox, straight):
    stations = toolbox.points([{"at": (X, Y), "as_measured": 5.0}], UTM)
    for entry, more in (("designheights", {"AXIS": straight["AXIS"]}), ("convertheights", {})):
        text = toolbox.refusal(entry, STATIONS=stations, **more)
        assert (
            "Layer 'stations' has no field 'height' and its points have no Z" in text
            and "(HEIGHT_FIELD) among as_measured" in text
        )


def test_list_without_stations(toolbox, straight):
    text = toolbox.refusal("placestations", INPUT=toolbox.table([{"km": 1.0}]), AXIS=straight["AXIS"])
    assert "Layer 'list' has no field 'station' or 'chainage'" in text and "STATION_FIELD" in text


def test_text_where_a_number_is_due(toolbox, straight):
    rows = places(height="50")
    rows = [{**row, "height": "5O.2" if k == 3 else "50.2"} for k, row in enumerate(rows)]
    assert toolbox.refusal("designheights", STATIONS=toolbox.points(rows, UTM), AXIS=straight["AXIS"]) == (
        "Layer 'stations', field 'height', row 4: '5O.2' is not a number."
    )


def test_decimal_comma(toolbox, straight):
    rows = [{**row, "height": "50,2"} for row in places()]
    assert "row 1: '50,2' is not a number." in toolbox.refusal(
        "designheights", STATIONS=toolbox.points(rows, UTM), AXIS=straight["AXIS"]
    )


@pytest.mark.parametrize("value", [math.inf, -math.inf])
def test_infinite_height(toolbox, straight, value):
    rows = places()
    rows[4]["height"] = value
    assert toolbox.refusal("designheights", STATIONS=toolbox.points(rows, UTM), AXIS=straight["AXIS"]) == (
        "Layer 'stations', field 'height', row 5: the value is infinite."
    )
    rows = [{"at": (X + 100.0 * k, Y, value if k == 1 else 5.0)} for k in range(3)]
    assert toolbox.refusal("designheights", STATIONS=toolbox.points(rows, UTM, "PointZ"), AXIS=straight["AXIS"]) == (
        "Layer 'stations', row 2: the point's Z is infinite."
    )


def test_station_of_an_axis_there_is_not(toolbox, straight):
    rows = [{**row, "axis": "line" if k else "Line"} for k, row in enumerate(places())]
    assert toolbox.refusal("designheights", STATIONS=toolbox.points(rows, UTM), AXIS=straight["AXIS"]) == (
        "Layer 'stations', field 'axis', row 1: there is no axis 'Line'; the axes are line."
    )


# --- stations that stay


def test_no_height_is_a_status(toolbox, straight):
    rows = places()
    rows[1]["height"], rows[3]["height"] = None, math.nan
    run = toolbox.run(
        "designheights", STATIONS=toolbox.points(rows, UTM), AXIS=straight["AXIS"], TOLERANCE=1.0, SUMMARY="memory:"
    )
    assert run.column("status") == ["within", "no height", "within", "no height", "within"]
    assert run.column("residual")[1] is None and run.column("adjust")[3] is None
    assert all(isinstance(h, float) for h in run.column("design_h"))
    assert (
        run.results["COUNT"] == 3
        and run.rows("SUMMARY")[0]["no_height"] == 2
        and "2 without an as-built height" in run.said
    )


def test_no_height_at_all(toolbox, straight):
    stations = toolbox.points([{**row, "height": None} for row in places()], UTM)
    text = toolbox.refusal("designheights", STATIONS=stations, AXIS=straight["AXIS"])
    assert "Axis 'line': control A has no chainage" in text
    run = toolbox.run(
        "designheights",
        STATIONS=stations,
        AXIS=straight["AXIS"],
        DESIGN="level",
        CHAINAGE_A="0",
        HEIGHT_A=7.0,
        SUMMARY="memory:",
    )
    assert run.column("design_h") == [7.0] * 5 and run.results["COUNT"] == 0 and run.results["RMS"] is None
    (row,) = run.rows("SUMMARY")
    assert row["rms"] is None and row["max_abs"] is None and row["number"] == 0
    assert "design heights only" in run.said


def test_duplicate_stations_are_warned_of(toolbox, straight):
    rows = places()
    rows.append({**rows[1], "height": 60.0})
    run = toolbox.run("designheights", STATIONS=toolbox.points(rows, UTM), AXIS=straight["AXIS"])
    assert len(run.rows()) == 6 and any("rows 2 and 6" in text and "'stations'" in text for text in run.warnings)


def test_stations_beyond_the_ends_stay(toolbox, straight):
    rows = [{"at": (X - 50.0, Y), "height": 50.0}, *places(), {"at": (X + 1050.0, Y), "height": 50.0}]
    run = toolbox.run("designheights", STATIONS=toolbox.points(rows, UTM), AXIS=straight["AXIS"], CHAINAGE_HEIGHT=0.0)
    # The scale of the zone at its central meridian is 0.9996.
    assert run.column("chainage")[0] == pytest.approx(-50.0 / 0.9996, abs=1e-3)
    assert run.column("station")[0] == "-0+050.020"
    assert any("'line': 2 stations lie beyond its ends" in text for text in run.warnings)


def test_station_far_from_every_axis(toolbox, straight):
    rows = places()
    rows[2]["at"] = (X + 200.0, Y + 150.0)
    stations = toolbox.points(rows, UTM)
    run = toolbox.run("designheights", STATIONS=stations, AXIS=straight["AXIS"])
    assert run.column("status")[2] == "off axis" and run.column("design_h")[2] is None and run.results["COUNT"] == 4
    assert any("'stations'" in text and "row 3" in text and "100 m" in text for text in run.warnings)
    assert "off axis" not in toolbox.run(
        "designheights", STATIONS=stations, AXIS=straight["AXIS"], MAX_DISTANCE=200.0
    ).column("status")
    measured = toolbox.run("measurestations", STATIONS=stations, AXIS=straight["AXIS"])
    assert measured.rows()[2]["chainage"] is None and measured.rows()[2]["axis"] is None


@pytest.mark.parametrize("entry", ENTRIES)
def test_all_stations_far_from_every_axis(toolbox, straight, entry):
    stations = toolbox.points([{"at": (X, Y + 1234.0), "height": 1.0}], UTM)
    text = toolbox.refusal(entry, STATIONS=stations, AXIS=straight["AXIS"])
    assert "All stations of layer 'stations'" in text and "1234 m" in text and "MAX_DISTANCE" in text


# --- axes


@pytest.mark.parametrize("entry", ["designheights", "measurestations", "generatestations"])
@pytest.mark.parametrize(
    "shape, said",
    [
        (f"LineString({X} {Y}, {X} {Y})", "zero length"),
        (f"LineString({X} {Y})", "only one vertex"),
        (f"LineString({X} {Y}, {X + 100} {Y}, {X + 100} {Y + 100}, {X} {Y})", "is closed"),
    ],
)
def test_axis_that_is_no_line(toolbox, straight, entry, shape, said):
    axis = toolbox.lines(
        [{"at": f"LineString({X} {Y}, {X + 1000} {Y})", "name": "good"}, {"at": shape, "name": "bad"}], UTM
    )
    more = {} if entry == "generatestations" else {"STATIONS": straight["STATIONS"]}
    text = toolbox.refusal(entry, AXIS=axis, **more)
    assert text.startswith("Layer 'axis', row 2: Axis 'bad' ") and said in text


def test_axis_in_parts_that_do_not_meet(toolbox, straight):
    axis = toolbox.lines(
        [{"at": f"MultiLineString(({X} {Y}, {X + 100} {Y}),({X + 101} {Y}, {X + 300} {Y}))", "name": "a"}],
        UTM,
        "MultiLineString",
    )
    text = toolbox.refusal("designheights", STATIONS=straight["STATIONS"], AXIS=axis)
    assert "Layer 'axis', row 1" in text and "part 2 begins 1.000 m from the end of part 1" in text


def test_curved_axis(toolbox, straight):
    axis = toolbox.lines(
        [{"at": f"CircularString({X} {Y}, {X + 50} {Y + 50}, {X + 100} {Y})", "name": "a"}], UTM, "CompoundCurve"
    )
    assert "curved" in toolbox.refusal("designheights", STATIONS=straight["STATIONS"], AXIS=axis)


def test_two_axes_of_one_name(toolbox, straight):
    axis = toolbox.lines(
        [{"at": [(X, Y), (X + 900, Y)], "name": "a"}, {"at": [(X, Y), (X, Y + 900)], "name": "a"}], UTM
    )
    assert toolbox.refusal("designheights", STATIONS=straight["STATIONS"], AXIS=axis) == (
        "Layer 'axis' has two axes named 'a', rows 1 and 2; give them different names or choose another AXIS_FIELD."
    )


# --- designs


def with_fields(toolbox, **fields):
    types = {name: "string" if isinstance(value, str) else "double" for name, value in fields.items()}
    return toolbox.lines([{"at": [(X, Y), (X + 1000.0, Y)], "name": "line", **fields}], UTM, types=types)


@pytest.mark.parametrize(
    "fields, said",
    [
        ({"design": "inclined"}, "Axis 'line': The design 'inclined' needs a slope."),
        (
            {"design": "straight"},
            "Layer 'axis', field 'design', row 1: 'straight' is not known; known are chord, tangent, inclined, "
            "reference, level, grade.",
        ),
        (
            {"design": "grade", "slope": 0.001, "chain_b": "1+000"},
            "The design 'grade' has a slope and a second control",
        ),
        ({"design": "chord", "chain_a": "0+100", "chain_b": "0+100"}, "they must be apart"),
        (
            {"design": "chord", "chain_a": "0+150"},
            "Axis 'line': control A at chainage 0+150 has no height, and no station with a height lies within 1 m "
            "of it.",
        ),
        ({"design": "chord", "chain_a": "abc"}, "Axis 'line', chain_a: 'abc' is not a station"),
        ({"design": "grade", "slope": 2.5}, "steeper than 45 degrees"),
        ({"design": "level", "tolerance": -0.01}, "Axis 'line': the tolerance \u22120.01 is negative."),
        ({"design": "level", "height_a": "high"}, "Layer 'axis', field 'height_a', row 1: 'high' is not a number."),
        ({"design": "level", "chain_h": 1e9}, "'line': a chainage height of 1e+09 m is not on Earth"),
        (
            {"design": "level", "chain_0": "begin"},
            "Chainage of the first vertex of axis 'line': 'begin' is not a station",
        ),
        ({"design": "reference"}, "Axis 'line': the design 'reference' needs a reference layer (REFERENCE)."),
    ],
)
def test_design_of_an_axis_that_contradicts_itself(toolbox, straight, fields, said):
    assert said in toolbox.refusal("designheights", STATIONS=straight["STATIONS"], AXIS=with_fields(toolbox, **fields))


@pytest.mark.parametrize(
    "given, said",
    [
        ({"DESIGN": "inclined"}, "needs a slope"),
        ({"DESIGN": "grade", "SLOPE": 0.1, "HEIGHT_B": 5.0}, "give one of them"),
        ({"CHAINAGE_A": "12+5"}, "'12+5' is not a station"),
        ({"CHAINAGE_A": "0+500", "CHAINAGE_B": "500"}, "must be apart"),
        ({"SLOPE": 3.0, "DESIGN": "inclined"}, "steeper"),
        ({"EARTH": "sphere", "RADIUS": 6371.0}, "RADIUS is in metres"),
        ({"EQUATIONS": "12+50"}, "expected back=ahead"),
        ({"CHAINAGE_START": "1+1"}, "'1+1' is not a station"),
    ],
)
def test_form_that_contradicts_itself(toolbox, straight, given, said):
    assert said in toolbox.refusal("designheights", **straight, **given)


def test_equations_belong_to_one_axis(toolbox, straight):
    axis = toolbox.lines([{"at": [(X, Y), (X + 900, Y)], "name": n} for n in "ab"], UTM)
    assert "but there are 2" in toolbox.refusal(
        "designheights", STATIONS=straight["STATIONS"], AXIS=axis, EQUATIONS="0+100=0+200"
    )


def test_values_a_design_does_not_use_are_warned_of(toolbox, straight):
    run = toolbox.run("designheights", DESIGN="tangent", SLOPE=0.01, **straight)
    assert any("the design 'tangent' does not use slope" in text for text in run.warnings)


@pytest.mark.parametrize(
    "given, said",
    [
        ({"UNDULATION_VALUE": 40.0}, "UNDULATION_VALUE is given, but not used, since UNDULATION is not 'constant'."),
        ({"UNDULATION_FIELD": "height"}, "UNDULATION_FIELD is given, but not used, since UNDULATION is not 'field'."),
        ({"RADIUS": 6371000.0}, "RADIUS is given, but not used, since EARTH is not 'sphere'."),
    ],
)
def test_values_a_choice_leaves_unused_are_warned_of(toolbox, straight, given, said):
    """A field of undulations without UNDULATION 'field' would be a wrong result without a word."""
    assert toolbox.run("designheights", **given, **straight).warnings == [said]


def test_reference_without_its_design_is_warned_of(toolbox, straight):
    reference = toolbox.table([{"name": "p", "lat0": 50.0, "lon0": 3.0, "h0": 1.0, "nx": 1.0, "ny": 0.0, "nz": 1.0}])
    assert toolbox.run("designheights", REFERENCE=reference, **straight).warnings == [
        "REFERENCE is given, but not used, since no axis has the design 'reference'."
    ]


def test_level_on_ellipsoidal_heights_is_warned_of(toolbox, straight):
    run = toolbox.run("designheights", DESIGN="level", UNDULATION="ellipsoidal", **straight)
    assert any("not a level surface" in text for text in run.warnings)


# --- units


def test_heights_in_feet_read_as_metres(toolbox, straight):
    rows = [{**row, "height": 50.0 / 0.3048} for row in places()]
    run = toolbox.run(
        "designheights",
        STATIONS=toolbox.points(rows, UTM),
        AXIS=straight["AXIS"],
        DESIGN="level",
        CHAINAGE_A="0",
        HEIGHT_A=50.0,
    )
    assert any("3.28 times" in text and "'line'" in text and "HEIGHT_UNIT" in text for text in run.warnings)
    assert len(run.rows()) == 5


def test_name_of_the_field_tells_another_unit(toolbox, straight):
    rows = [{"at": row["at"], "elev_ft": 160.0} for row in places()]
    assert "HEIGHT_UNIT is 'metre', but the heading 'elev_ft' of layer 'stations' says 'foot'" in toolbox.refusal(
        "designheights",
        STATIONS=toolbox.points(rows, UTM),
        AXIS=straight["AXIS"],
        HEIGHT_FIELD="elev_ft",
        HEIGHT_UNIT="metre",
    )
    feet = toolbox.run(
        "designheights",
        STATIONS=toolbox.points(rows, UTM),
        AXIS=straight["AXIS"],
        HEIGHT_FIELD="elev_ft",
        HEIGHT_UNIT="foot",
    )
    assert not any("sounds" in text for text in feet.warnings)


# --- parameters


@pytest.mark.parametrize(
    "given, said",
    [
        ({"HIGHT_FIELD": "height"}, "There is no parameter HIGHT_FIELD; there are"),
        ({"HEIGHT_UNIT": "yard"}, "HEIGHT_UNIT is 'yard', but can only be metre, foot, us_foot."),
        ({"DESIGN": 1}, "DESIGN is '1', but can only be chord"),
        ({"UNDULATION": "EGM96"}, "UNDULATION is 'EGM96', but can only be"),
        ({"TOLERANCE": "1 cm"}, "TOLERANCE is '1 cm', which is not a number."),
        ({"HEIGHT_A": "5,5"}, "HEIGHT_A is '5,5', which is not a number."),
        ({"TOLERANCE": math.nan}, "TOLERANCE is nan, which is not a finite number."),
        ({"MAX_DISTANCE": math.inf}, "MAX_DISTANCE is inf"),
        ({"TOLERANCE": -0.01}, "TOLERANCE is -0.01, but must be at least 0."),
    ],
)
def test_values_the_host_would_take(toolbox, straight, given, said):
    """The host ignores unknown names, and reads text that is no number as 0."""
    assert said in toolbox.refusal("designheights", **straight, **given)


def test_numbers_given_as_text(toolbox, straight):
    assert toolbox.run("designheights", TOLERANCE="0.5", **straight).results["WITHIN"] == 11


def test_nothing_asked_for(toolbox, straight):
    assert "INTERVAL, CHAINAGES, or AT_VERTICES" in toolbox.refusal(
        "generatestations", AXIS=straight["AXIS"], AT_VERTICES=False
    )
    assert "more than 2000000 stations" in toolbox.refusal("generatestations", AXIS=straight["AXIS"], INTERVAL=1e-6)
    assert "beyond the axes" in toolbox.refusal(
        "generatestations", AXIS=straight["AXIS"], AT_VERTICES=False, CHAINAGES="99+000"
    )
    assert "'x' is not a station" in toolbox.refusal("generatestations", AXIS=straight["AXIS"], CHAINAGES="0+100; x")


def test_input_is_not_touched(toolbox, straight, tmp_path):
    stations = toolbox.saved(straight["STATIONS"], tmp_path / "in.gpkg")
    before = [(f.id(), f.attributes(), f.geometry().asWkt(12)) for f in stations.getFeatures()]
    toolbox.run("designheights", STATIONS=stations, AXIS=straight["AXIS"], OUTPUT=str(tmp_path / "out.gpkg"))
    assert "nope" in toolbox.refusal(
        "designheights", STATIONS=stations, AXIS=straight["AXIS"], HEIGHT_FIELD="nope", OUTPUT=str(tmp_path / "no.gpkg")
    )
    assert [(f.id(), f.attributes(), f.geometry().asWkt(12)) for f in stations.getFeatures()] == before
    assert not (tmp_path / "no.gpkg").exists()


WIDE, ARABIC = "\uff11\uff12", "\u0661\u0662"


@pytest.mark.parametrize(
    "entry, given, said",
    [
        ("designheights", {"HEIGHT_A": "1_0"}, "HEIGHT_A is '1_0', which is not a number."),
        ("designheights", {"HEIGHT_A": WIDE}, f"HEIGHT_A is '{WIDE}', which is not a number."),
        ("designheights", {"CHAINAGE_A": ARABIC}, f"'{ARABIC}' is not a station"),
        ("designheights", {"HEIGHT_A": [1.0, 2.0]}, "HEIGHT_A is '[1.0, 2.0]', which is not a number."),
        ("designheights", {"HEIGHT_A": b"12"}, "HEIGHT_A is "),
        ("designheights", {"HEIGHT_A": True}, "HEIGHT_A is 'True', which is not a number."),
        ("designheights", {"HEIGHT_A": 1e308}, "HEIGHT_A is 1e+308, but must be at most 1e+12."),
        ("designheights", {"HEIGHT_A": 10**400}, "which is not a finite number."),
        ("designheights", {"HEIGHT_A": "x" * 10_000}, "HEIGHT_A is 'xxx"),
        ("generatestations", {"AT_VERTICES": "perhaps"}, "AT_VERTICES is 'perhaps', but must be yes or no."),
        ("generatestations", {"AT_VERTICES": 2}, "AT_VERTICES is '2', but must be yes or no."),
        ("designheights", {"DESIGN": ["chord"]}, "DESIGN is '['chord']', but can only be chord, tangent"),
        ("designheights", {"DESIGN": "Chord"}, "DESIGN is 'Chord', but can only be chord, tangent"),
        ("designheights", {"HEIGHT_FIELD": "he\0ight"}, "HEIGHT_FIELD is "),
    ],
)
def test_a_value_is_never_taken_for_another(toolbox, straight, entry, given, said):
    known = straight if entry == "designheights" else {"AXIS": straight["AXIS"]}
    text = toolbox.refusal(entry, **{**known, **given})
    assert said in text and len(text) < 400


def test_expressions_are_read_as_strictly(toolbox, straight):
    """An expression that fails, or gives a word that the choice does not have, never runs with the default."""
    from qgis.core import QgsProperty

    for key, expression, said in (
        ("HEIGHT_A", "1 + 'x'", "HEIGHT_A is '1 + 'x'', but must be an expression that gives a value."),
        ("HEIGHT_A", "'1_0'", "HEIGHT_A is '1_0', which is not a number."),
        ("DESIGN", "'arch'", "DESIGN is 'arch', but can only be chord"),
        ("TOLERANCE", "-1", "TOLERANCE is -1, but must be at least 0."),
    ):
        given = {key: QgsProperty.fromExpression(expression)}
        assert said in toolbox.refusal("designheights", **straight, **given)
    given = {"HEIGHT_A": QgsProperty.fromExpression("25 * 2"), "CHAINAGE_A": 0.0, "DESIGN": "level"}
    run = toolbox.run("designheights", **straight, **given)
    assert {row["design_h"] for row in run.rows()} == {50.0}


@pytest.mark.parametrize("word, number", [("no", 4), ("false", 4), (False, 4), ("yes", 6), ("1", 6), (True, 6)])
def test_yes_and_no(toolbox, word, number):
    axis = toolbox.lines(
        [{"at": [(500000.0, 5540000.0), (500150.0, 5540000.0), (500300.0, 5540000.0)], "name": "a"}], "EPSG:32631"
    )
    run = toolbox.run("generatestations", AXIS=axis, INTERVAL=100.0, AT_VERTICES=word)
    assert len(run.rows()) == number


def test_a_geoid_that_is_no_raster(toolbox, straight):
    for given in (5, "no such raster"):
        text = toolbox.refusal("designheights", UNDULATION="grid", GEOID=given, **straight)
        assert "GEOID" in text and str(given) in text


@pytest.mark.parametrize("cell", ["1_000", WIDE, ARABIC, "0x10", "1e400"])
def test_cells_that_are_no_plain_numbers(toolbox, straight, cell):
    rows = [{"at": (500000.0 + 100.0 * k, 5540000.0), "height": cell if k == 3 else "50.0"} for k in range(11)]
    text = toolbox.refusal("designheights", STATIONS=toolbox.points(rows), AXIS=straight["AXIS"])
    assert "field 'height', row 4" in text and len(text) < 300


def test_a_cell_that_is_yes_or_no(toolbox, straight):
    from qgis.core import QgsFeature, QgsField, QgsVectorLayer
    from qgis.PyQt.QtCore import QVariant

    layer = QgsVectorLayer("Point?crs=EPSG:32631&field=height:bool", "flags", "memory")
    if layer.fields()[0].type() != QVariant.Bool:
        pytest.skip("this host has no yes-or-no fields in memory layers")
    for source in straight["STATIONS"].getFeatures():
        feature = QgsFeature(layer.fields())
        feature.setGeometry(source.geometry())
        feature["height"] = True
        layer.dataProvider().addFeature(feature)
    assert isinstance(layer.fields()[0], QgsField)
    assert "is not a number" in toolbox.refusal("designheights", STATIONS=layer, AXIS=straight["AXIS"])


# --- the field that was named


def twins(toolbox, *names):
    """Stations with several fields whose names differ by case, the first 50 m high, the second 60 m and so on."""
    rows = [
        {"at": (500000.0 + 100.0 * k, 5540000.0), **{name: 50.0 + 10.0 * i for i, name in enumerate(names)}}
        for k in range(11)
    ]
    return toolbox.points(rows, "EPSG:32631")


@pytest.mark.parametrize(
    "names, given, height",
    [
        (("HEIGHT", "height"), "height", 60.0),
        (("HEIGHT", "height"), "HEIGHT", 50.0),
        (("HEIGHT", "height"), None, 60.0),
        (("HEIGHT", "other"), "height", 50.0),
        (("HEIGHT", "other"), None, 50.0),
    ],
)
def test_the_field_that_was_named(toolbox, straight, names, given, height):
    more = {"HEIGHT_FIELD": given} if given else {}
    stations = twins(toolbox, *names)
    run = toolbox.run("designheights", STATIONS=stations, AXIS=straight["AXIS"], DESIGN="level", **more)
    assert {row["design_h"] for row in run.rows()} == {height}


@pytest.mark.parametrize("given", ["height", None])
def test_fields_that_differ_by_case_alone(toolbox, straight, given):
    more = {"HEIGHT_FIELD": given} if given else {}
    text = toolbox.refusal("designheights", STATIONS=twins(toolbox, "HEIGHT", "Height"), AXIS=straight["AXIS"], **more)
    assert "the fields HEIGHT, Height, which differ by case only" in text and "HEIGHT_FIELD" in text


def test_axis_overrides_under_names_that_differ_by_case(toolbox, straight):
    axis = toolbox.lines(
        [{"at": [(500000.0, 5540000.0), (501000.0, 5540000.0)], "name": "a", "DESIGN": "nonsense", "design": "level"}],
        "EPSG:32631",
    )
    run = toolbox.run("designheights", STATIONS=straight["STATIONS"], AXIS=axis)
    assert len({row["design_h"] for row in run.rows()}) == 1


@pytest.mark.parametrize("given", [True, 5, [], b"ab", 0.5])
@pytest.mark.parametrize(
    "entry, key", [("convertheights", "AXIS"), ("designheights", "STATIONS"), ("designheights", "REFERENCE")]
)
def test_an_input_that_is_no_layer(toolbox, straight, entry, key, given):
    known = {"STATIONS": straight["STATIONS"], **(straight if entry == "designheights" else {})}
    assert f"{key}: " in toolbox.refusal(entry, **{**known, key: given})
