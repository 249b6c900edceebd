"""The record of a run: written and read back, of older versions, damaged; what the entries do with it."""

import json

import numpy as np
import pytest

from tautline.algorithms.core.input_record import InputRecord
from tautline.algorithms.entry.run_record import RunRecord

PROPERTY = "tautline/record"
# What a project file, a hand or another program may have left: (text, what is still believed).
DAMAGED = {
    "number": ("5", ""),
    "list": ("[]", ""),
    "no JSON": ("{'entry': ", ""),
    "units a number": ('{"units": 3, "entry": "tautline:designheights"}', "tautline:designheights"),
    "axes a list": ('{"axes": [1], "entry": "tautline:designheights"}', "tautline:designheights"),
    "parameters a text": ('{"parameters": "x", "entry": "tautline:designheights"}', "tautline:designheights"),
    "entry a dict": ('{"entry": {"a": 1}}', ""),
    "infinity": ('{"axes": {"line": {"tolerance": 1e999, "design": "chord"}}, "factor": 1e999}', ""),
    "many digits": ('{"axes": {"line": {"tolerance": 1%s}}}' % ("0" * 400), ""),
    "too many digits": ('{"axes": {"line": {"tolerance": 1%s}}}' % ("0" * 6000), ""),
    "unit unknown": ('{"units": {"height_name": "furlong"}}', ""),
    "unit a list": ('{"units": {"height_name": ["metre"]}}', ""),
    "controls": ('{"axes": {"line": {"controls": [3, {"chainage": "a"}, {"chainage": 1, "height": null}]}}}', ""),
    "axis a text": ('{"axes": {"line": "x"}}', ""),
    "deep": ('{"more": %s}' % ("[" * 30 + "]" * 30), ""),
    "deeper than any parser": ('{"more": %s}' % ("[" * 100000 + "]" * 100000), ""),
    "deep dicts": ('{"made_from": %s}' % ('{"a": ' * 50 + "1" + "}" * 50), ""),
    "inputs": ('{"inputs": {"STATIONS": [3, {"rows": "many", "numbers": [1], "window": [true, 2]}], "AXIS": "x"}}', ""),
    "versions": ('{"versions": [1]}', ""),
    "accuracy": ('{"accuracy": {"sigma": "small"}, "reference_system": 7, "covariance": []}', ""),
    "schema": ('{"schema": "new", "entry": "tautline:designheights"}', "tautline:designheights"),
    "schema to come": ('{"schema": 99, "entry": "tautline:designheights"}', "tautline:designheights"),
}


@pytest.mark.parametrize("case", DAMAGED)
def test_a_damaged_record_is_one_sentence_and_never_an_error(case):
    text, entry = DAMAGED[case]
    record = RunRecord.read(text)
    assert record.entry == entry
    assert record.doubt.startswith("the record of the run that made it is damaged") and record.doubt.endswith(".")
    assert "\n" not in record.doubt and len(record.doubt) < 200
    # Whatever is left can be asked for, written and read again, then without a doubt.
    assert record.axis_number("line", "tolerance") is None and record.height_unit == ""
    assert record.parameter("AXIS") == "" and record.parameter_number("SIGMA") is None
    again = RunRecord.read(record.text())
    assert again.text() == record.text() and not again.doubt


@pytest.mark.parametrize("given", [None, "", "  ", "{}", {}])
def test_no_record_is_empty_and_raises_no_doubt(given):
    record = RunRecord.read(given)
    assert not record and record.doubt == "" and record.axes == {} and record.inputs == {}


def test_what_is_written_is_read_back():
    read = InputRecord("/a.gpkg|layername=s", 3, ("height",), ("axis",), "point", (), "00ff")
    raster = InputRecord("/g.tif", 2, shape="raster", window=(0, 2), hash="11", part=True)
    record = RunRecord(
        "tautline:designheights",
        {"TOLERANCE": 0.5, "SURVEYS": ["a", "b"], "FLAG": True, "AXIS": "x"},
        "foot",
        "us_foot",
        "grid",
        "EGM96",
        "EPSG:32631",
        "WGS 84",
        {"sigma": 0.003, "field": "sd"},
        "/c.gpkg|layername=covariance",
        {"Tautline": "1"},
        {"line": {"design": "chord", "tolerance": 0.02, "controls": [{"chainage": 0.0, "height": 1.0, "typed": True}]}},
        {"STATIONS": (read,), "GEOID": (raster,)},
        {"factor": 10.0, "surveys": ["a"]},
    )
    text = record.text()
    assert "\n" not in text and json.loads(text)["schema"] == 1
    assert RunRecord.read(text) == record and RunRecord.read(json.loads(text)) == record
    assert record.axis_number("line", "tolerance") == 0.02 and record.parameter_number("TOLERANCE") == 0.5


def test_numbers_of_arrays_are_written_as_numbers_and_infinity_as_none():
    record = RunRecord(
        "tautline:x", more={"k": np.float64(0.13), "n": np.int64(3), "all": np.arange(2), "lost": np.inf}
    )
    told = json.loads(record.text())
    assert (told["k"], told["n"], told["all"], told["lost"]) == (0.13, 3, [0, 1], None)


def test_records_of_before_the_schema_are_read():
    old = {
        "entry": "tautline:designheights",
        "parameters": {"STATIONS": "a"},
        "units": {"height_name": "foot", "chainage_name": "metre"},
        "versions": {"Tautline": "0.1.0"},
        "height_system": "unknown",
        "axes": {"line": {"tolerance": None, "slope": 0.1, "controls": []}},
    }
    record = RunRecord.read(json.dumps(old))
    assert record and not record.doubt and record.schema == 0
    assert (record.height_unit, record.chainage_unit, record.height_system) == ("foot", "metre", "unknown")
    # The oldest told units in the form alone.
    record = RunRecord.read({"entry": "tautline:placestations", "parameters": {"HEIGHT_UNIT": "foot"}})
    assert (record.height_unit, record.chainage_unit) == ("foot", "foot")


# --- the entries


@pytest.fixture
def reviewed(toolbox, tmp_path):
    stations, axis = toolbox.straight()
    run = toolbox.run(
        "designheights", STATIONS=stations, AXIS=axis, TOLERANCE=0.01, OUTPUT=str(tmp_path / "reviewed.gpkg")
    )
    return run.layer(), axis


@pytest.mark.parametrize("case", DAMAGED)
@pytest.mark.parametrize("entry", ["reviewreport", "scheduleadjustments", "drawdeviations", "comparesurveys"])
def test_every_entry_that_reads_a_record_survives_a_damaged_one(toolbox, reviewed, tmp_path, entry, case):
    layer, axis = reviewed
    second = toolbox.saved(layer, tmp_path / "second.gpkg")
    second.setName("OUTPUT")
    for one in (layer, second):
        one.setCustomProperty(PROPERTY, DAMAGED[case][0])
    given = {
        "reviewreport": {"STATIONS": layer, "TESTED": None, "HTML": str(tmp_path / "r.html"), "OUTPUT": None},
        "scheduleadjustments": {"STATIONS": layer, "SHEET": str(tmp_path / "s.html")},
        "drawdeviations": {"STATIONS": layer, "AXIS": axis, "OUTPUT": None, "BARS": "memory:"},
        "comparesurveys": {"SURVEYS": [layer, second], "REPORT": str(tmp_path / "c.html")},
    }[entry]
    run = toolbox.run(entry, **given)
    doubts = [text for text in run.warnings if "is damaged" in text]
    assert doubts and all(text.startswith("Layer 'OUTPUT': the record of the run") for text in doubts), run.warnings
    assert len(doubts) == (2 if entry == "comparesurveys" else 1)


@pytest.mark.parametrize("case", DAMAGED)
def test_damaged_records_in_the_rows_of_tables(toolbox, reviewed, tmp_path, case):
    # Without a record of its own, so that the summary's is asked for.
    layer = toolbox.saved(reviewed[0], tmp_path / "bare.gpkg")
    long = {"record": "string(0)"}
    record = DAMAGED[case][0]
    run = toolbox.run(
        "reviewreport",
        OUTPUT=None,
        STATIONS=layer,
        SUMMARY=toolbox.table([{"axis": "line", "tolerance": 0.02, "record": record}], "summary", long),
        REFERENCE=toolbox.table([{"name": "line", "kind": "line", "record": record}], "reference", long),
        CURVATURE=toolbox.table([{"axis": "line", "verdict": "level", "record": record}], "curvature", long),
        HTML=str(tmp_path / "r.html"),
    )
    said = "\n".join(run.warnings)
    for name in ("summary", "reference", "curvature"):
        assert f"Layer '{name}': the record of the run that made it is damaged" in said


@pytest.mark.parametrize("case", DAMAGED)
def test_docks_and_forms_survive_a_damaged_record(toolbox, reviewed, case, window_library):
    from tautline.plugin.follow_up_forms import known
    from tautline.plugin.review.layer_stations import read_stations
    from tautline.plugin.review.run_again import CannotRunAgain, RunAgain

    layer, _ = reviewed
    layer.setCustomProperty(PROPERTY, DAMAGED[case][0])
    stations = read_stations(layer)
    assert len(stations) == 11 and stations.record.doubt and stations.height_unit == "metre"
    assert np.all(np.isnan(stations.tolerance))
    assert known("tautline:drawdeviations", layer)["STATIONS"] == layer.id()
    with pytest.raises(CannotRunAgain, match="is damaged"):
        RunAgain(layer)


@pytest.mark.parametrize("value", [5, 1.5, ["a"], {"entry": 3}])
def test_a_property_that_is_no_text(toolbox, reviewed, value):
    layer, axis = reviewed
    layer.setCustomProperty(PROPERTY, value)
    run = toolbox.run("drawdeviations", STATIONS=layer, AXIS=axis, OUTPUT=None, BARS="memory:")
    assert any("is damaged" in text for text in run.warnings)


def test_units_reference_system_and_accuracy_are_recorded(toolbox, tmp_path):
    stations, axis = toolbox.straight(sd=0.01)
    run = toolbox.run(
        "fitreference",
        STATIONS=stations,
        AXIS=axis,
        HEIGHT_UNIT="foot",
        SIGMA_KM=2.0,
        REFERENCE="memory:",
        OUTPUT=str(tmp_path / "f.gpkg"),
    )
    record = RunRecord.read(run.layer().customProperty(PROPERTY))
    assert (record.height_unit, record.chainage_unit, record.crs, record.datum) == (
        "foot",
        "foot",
        "EPSG:32631",
        "WGS 84",
    )
    assert record.accuracy == {"sigma_km": 2.0, "field": "sd"} and record.covariance == ""
    run = toolbox.run(
        "measurestations", STATIONS=stations, AXIS=axis, CHAINAGE_UNIT="us_foot", OUTPUT=str(tmp_path / "m.gpkg")
    )
    record = RunRecord.read(run.layer().customProperty(PROPERTY))
    assert record.chainage_unit == "us_foot" and record.crs == "EPSG:32631"


def test_adjusted_points_name_the_table_of_their_covariance(toolbox, tmp_path):
    """From the net's points the fit is told where their covariance stands."""
    places = [{"at": (500000.0 + 100 * k, 5540000.0), "name": name} for k, name in enumerate("abcd")]
    stations = toolbox.points(places, "EPSG:32631")
    legs = [("a", "b", 0.1), ("b", "c", 0.1), ("c", "d", 0.1), ("a", "d", 0.301)]
    book = toolbox.table(
        [{"from_pt": a, "to_pt": b, "dh": dh, "length": 100.0, "sd": 0.001} for a, b, dh in legs], "book"
    )
    fixed = toolbox.table([{"name": "a", "height": 50.0}], "fixed")
    points = str(tmp_path / "points.gpkg")
    file, table = tmp_path / "net.gpkg", f"ogr:dbname='{tmp_path / 'net.gpkg'}' table=\"covariance\" (geom)"
    run = toolbox.run(
        "adjustlevelling", INPUT=book, BENCHMARKS=fixed, STATIONS=stations, POINTS=points, COVARIANCE=table
    )
    record = RunRecord.read(run.layer("POINTS").customProperty(PROPERTY))
    assert record.covariance == f"{file}|layername=covariance"
    _, axis = toolbox.straight(4)
    fit = toolbox.run(
        "fitreference",
        STATIONS=run.layer("POINTS"),
        AXIS=axis,
        COVARIANCE=record.covariance,
        SIGMA=0.001,
        REFERENCE="memory:",
        OUTPUT=str(tmp_path / "fit.gpkg"),
    )
    assert "covariance of the heights from the layer" in fit.said
    again = RunRecord.read(fit.layer().customProperty(PROPERTY))
    assert again.covariance == record.covariance and again.inputs["COVARIANCE"][0].rows == 4
    run = toolbox.run(
        "adjustlevelling", INPUT=book, BENCHMARKS=fixed, STATIONS=stations, POINTS=points, COVARIANCE="memory:"
    )
    assert RunRecord.read(run.layer("POINTS").customProperty(PROPERTY)).covariance == ""


def test_the_chain_in_feet(toolbox, tmp_path):
    """Tolerance and residuals of the sheet and of the report are those of the run in feet."""
    stations, axis = toolbox.straight()
    run = toolbox.run(
        "designheights",
        STATIONS=stations,
        AXIS=axis,
        HEIGHT_UNIT="foot",
        TOLERANCE=0.0015,
        OUTPUT=str(tmp_path / "r.gpkg"),
    )
    layer = run.layer()
    report = toolbox.run("reviewreport", OUTPUT=None, STATIONS=layer, HTML=str(tmp_path / "r.html"))
    assert report.results["MAX_ABS"] == pytest.approx(run.results["MAX_ABS"], abs=1e-12)
    assert report.results["WITHIN"] == run.results["WITHIN"] > 0 and "heights in ft, with the record" in report.said
    words = (tmp_path / "r.html").read_text("utf-8")
    assert "international foot (0.3048 m)" in words and "±0.0015" in words
    schedule = toolbox.run(
        "scheduleadjustments",
        STATIONS=layer,
        METHOD="least",
        HEIGHT_UNIT="foot",
        STEP=0.0001,
        OUTPUT=str(tmp_path / "s.gpkg"),
    )
    rows = schedule.rows()
    outside = [abs(row["residual"]) > 0.0015 for row in rows]
    assert any(outside) and [bool(row["move"]) for row in rows] == outside
    assert all(abs(row["predicted"]) <= 0.0015 + 1e-9 for row in rows)
    record = RunRecord.read(schedule.layer().customProperty(PROPERTY))
    assert record.axis_number("line", "tolerance") == pytest.approx(0.0015, abs=1e-12)
    assert record.more["made_from"]["units"]["height_name"] == "foot"


def test_a_recorded_tolerance_stays_in_the_unit_it_was_recorded_in(toolbox, tmp_path):
    """A later entry counts in the layer's own unit, and so does its record; a form that says metre is refused."""
    stations, axis = toolbox.straight()
    layer = toolbox.run(
        "designheights",
        STATIONS=stations,
        AXIS=axis,
        HEIGHT_UNIT="foot",
        TOLERANCE=0.01,
        OUTPUT=str(tmp_path / "r.gpkg"),
    ).layer()
    run = toolbox.run("scheduleadjustments", STATIONS=layer, OUTPUT=str(tmp_path / "s.gpkg"))
    record = RunRecord.read(run.layer().customProperty(PROPERTY))
    assert record.height_unit == "foot" and record.axis_number("line", "tolerance") == pytest.approx(0.01, abs=1e-12)
    text = toolbox.refusal("scheduleadjustments", STATIONS=layer, HEIGHT_UNIT="metre")
    assert "foot" in text and "HEIGHT_UNIT" in text


def test_the_record_of_many_axes_is_brief(toolbox, tmp_path):
    """A style is read at each opening: thousands of axes say once what they have alike, and their controls stand in
    the summary alone; what is asked of an axis is answered as before."""
    places = [(500000.0, 5540000.0 + 1000.0 * k) for k in range(120)]
    stations = [{"at": (x + 100.0 * k, y), "height": 50.0} for x, y in places for k in range(4)]
    axes = [{"at": [(x, y), (x + 300.0, y)], "name": f"a{k}"} for k, (x, y) in enumerate(places)]
    run = toolbox.run(
        "designheights",
        STATIONS=toolbox.points(stations, "EPSG:32631"),
        AXIS=toolbox.lines(axes, "EPSG:32631"),
        TOLERANCE=0.02,
        OUTPUT=str(tmp_path / "many.gpkg"),
        SUMMARY="memory:",
    )
    layer = run.layer()
    layer.loadDefaultStyle()
    text = layer.customProperty(PROPERTY)
    record = RunRecord.read(text)
    assert len(text) < 10_000 and not record.doubt and "controls" not in text
    assert record.axis("a7")["design"] == "chord" and record.axis_number("a119", "tolerance") == 0.02
    assert record.axis_number("a119", "chainage_height") == 50.0
    assert record.known_axes()[0]["from_stations"] is True
    row = run.by("axis", "SUMMARY")["a7"]
    assert len(RunRecord.read(row["record"]).axis("a7")["controls"]) == 2
    page = tmp_path / "report.html"
    toolbox.run("reviewreport", OUTPUT=None, STATIONS=layer, HTML=str(page))
    assert "0.02" in page.read_text(encoding="utf-8") or "20" in page.read_text(encoding="utf-8")
