"""scheduleadjustments through the registry: the range example, decisions, documents, bad input."""

import csv
import html.parser
import io
import json
import pathlib
import re

import pytest

RANGE = pathlib.Path(__file__).resolve().parents[2] / "sample_layers" / "range"
MINUS = "\u2212"


@pytest.fixture
def light_range(toolbox, tmp_path):
    placed = toolbox.run("placestations", INPUT=str(RANGE / "heights.csv"), AXIS=str(RANGE / "axis.gpkg"))
    run = toolbox.run(
        "designheights",
        STATIONS=placed.layer(),
        AXIS=str(RANGE / "axis.gpkg"),
        UNDULATION="field",
        UNDULATION_FIELD="undulation",
        OUTPUT=str(tmp_path / "residuals.gpkg"),
    )
    return run.results["OUTPUT"]


def reviewed(toolbox, residuals, **more):
    """Stations every 10 m of one axis with residuals in metres, None for no height."""
    rows = [
        {
            "at": (500000.0 + 10 * k, 5540000.0),
            "axis": "a",
            "station": f"0+{10 * k:03d}",
            "chainage": 10.0 * k,
            "design_h": 50.0,
            "residual": value,
            **{key: values[k] for key, values in more.items()},
        }
        for k, value in enumerate(residuals)
    ]
    return toolbox.points(rows, "EPSG:32631")


class Page(html.parser.HTMLParser):
    """The cells of a page's tables, its text, and the tags it is made of."""

    def __init__(self, text):
        super().__init__()
        self.rows, self.tags, self.text = [], [], []
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        self.tags.append(tag)
        if tag == "tr":
            self.rows.append([])
        if tag in ("td", "th") and self.rows:
            self.rows[-1].append("")

    def handle_data(self, data):
        self.text.append(data)
        if self.rows and self.rows[-1]:
            self.rows[-1][-1] += data


def page(path):
    return Page(pathlib.Path(path).read_text(encoding="utf-8"))


def cells(path):
    text = pathlib.Path(path).read_bytes()
    assert text.startswith(b"\xef\xbb\xbf")
    return list(csv.DictReader(io.StringIO(text.decode("utf-8-sig"), newline="")))


def test_range_needs_nothing_but_its_stations(toolbox, light_range):
    run = toolbox.run("scheduleadjustments", STATIONS=light_range)
    rows = run.rows()
    assert run.results["COUNT"] == len(rows) == 119
    # The greatest is a slip of the reading: without a test it would be scheduled, and the run must say so.
    assert len(run.warnings) == 1 and "not tested for blunders" in run.warnings[0]
    assert f"{MINUS}100.5 mm at Alder 0+850" in run.warnings[0]
    for row in rows:
        if row["residual"] is None:
            assert (row["action"], row["move"], row["predicted"], row["after"]) == ("no height", None, None, None)
        else:
            # Without a step the full correction is minus the residual.
            assert row["move"] == pytest.approx(-row["residual"], abs=1e-12) and row["predicted"] == pytest.approx(
                0.0, abs=1e-12
            )
            assert row["after"] == "within" and row["action"] == ("raise" if row["residual"] < 0 else "lower")
    assert run.results["TOTAL"] == pytest.approx(
        sum(abs(row["residual"]) for row in rows if row["residual"] is not None), abs=1e-9
    )


def test_range_least_movement_moves_what_is_out_of_tolerance_only(toolbox, light_range):
    """The example's own README names what is out of tolerance; the tolerance of 10 mm is in the record of the run
    before."""
    run = toolbox.run("scheduleadjustments", STATIONS=light_range, METHOD="least", STEP=0.002)
    moved = {(row["axis"], row["station"]): row for row in run.rows() if row["move"]}
    assert set(moved) == {("Alder", s) for s in ("0+850", "1+600", "1+650", "1+700")} | {("Birch", "1+150")}
    for row in moved.values():
        assert abs(row["predicted"]) <= 0.010 + 1e-9 and abs(row["residual"]) > 0.010
        steps = row["move"] / 0.002
        assert steps == pytest.approx(round(steps), abs=1e-9)
        # One step less would not do.
        assert abs(row["predicted"] - 0.002 * (1 if row["move"] > 0 else -1)) > 0.010
    assert run.results["OUTSIDE"] == 0 and run.results["MOVED"] == 5 and "tolerance 10.0 mm" in run.said


def decisions(toolbox, rows, name="decisions"):
    return toolbox.table([{"axis": "", "station": "", "decision": "", "note": "", **row} for row in rows], name)


def test_decisions_leave_out_and_take_in(toolbox):
    stations = reviewed(
        toolbox,
        [0.02, 0.1, -0.1, 0.03, None, 0.004],
        flag=["kept", "kept", "suspected blunder", "suspected blunder", "no height", "kept"],
    )
    table = decisions(
        toolbox,
        [
            {"axis": "a", "station": "0+000", "decision": "Accept", "note": "client agrees"},
            {"axis": "a", "station": "10", "decision": "measure again"},
            {"axis": "a", "station": "0+030", "decision": "move the support"},
            {"axis": "", "station": "0+050", "decision": "reading error"},
            {"station": "9+000", "decision": "accept"},
            {"axis": "a", "station": "0+020"},
        ],
    )
    run = toolbox.run("scheduleadjustments", STATIONS=stations, DECISIONS=table, TOLERANCE=0.005)
    by = run.by("station")
    assert [by[f"0+0{k}0"]["action"] for k in range(6)] == [
        "keep",
        "measure again",
        "left out",
        "lower",
        "no height",
        "left out",
    ]
    assert by["0+000"]["move"] == 0.0 and by["0+000"]["after"] == "high"
    assert by["0+000"]["reason"] == "decision: accept, client agrees; stays out of tolerance"
    assert by["0+020"]["reason"] == "flag: suspected blunder" and by["0+010"]["move"] is None
    assert any("decides about stations that layer 'stations' does not have: 9+000" in text for text in run.warnings)
    assert any("1 support stays out of tolerance" in text and "a 0+000 (15.0 mm" in text for text in run.warnings)
    assert "To be measured again: a 0+010." in run.info and "No as-built height: a 0+040." in run.info


def test_later_decision_counts_and_an_unknown_one_is_refused(toolbox):
    stations = reviewed(toolbox, [0.02, 0.01])
    table = decisions(
        toolbox, [{"station": "0+000", "decision": "accept"}, {"station": "0+000", "decision": "move the support"}]
    )
    run = toolbox.run("scheduleadjustments", STATIONS=stations, DECISIONS=table)
    assert run.by("station")["0+000"]["action"] == "lower" and any(
        "two decisions for a 0+000" in text for text in run.warnings
    )
    text = toolbox.refusal(
        "scheduleadjustments",
        STATIONS=stations,
        DECISIONS=decisions(
            toolbox, [{"station": "0+000", "decision": "accept"}, {"station": "0+010", "decision": "maybe"}]
        ),
    )
    assert text.startswith("Layer 'decisions', field 'decision', row 2: 'maybe' is not known; known are accept, ")
    text = toolbox.refusal(
        "scheduleadjustments", STATIONS=stations, DECISIONS=toolbox.table([{"station": "0+000"}], "notes")
    )
    assert text == "Layer 'notes' holds no decisions: it lacks the field decision."


def test_a_decision_without_its_axis_must_be_clear(toolbox):
    rows = [
        {"at": (500000.0 + k, 5540000.0), "axis": axis, "station": "0+000", "residual": 0.01}
        for k, axis in enumerate("ab")
    ]
    text = toolbox.refusal(
        "scheduleadjustments",
        STATIONS=toolbox.points(rows, "EPSG:32631"),
        DECISIONS=decisions(toolbox, [{"station": "0+000", "decision": "accept"}]),
    )
    assert "row 1: station 0+000 is on several axes (a, b); name the axis." in text


def test_limits_and_smoothness(toolbox):
    pytest.importorskip("scipy")
    stations = reviewed(toolbox, [0.0, 0.0, 0.030, 0.0, 0.0])
    run = toolbox.run(
        "scheduleadjustments",
        STATIONS=stations,
        METHOD="least",
        STEP=0.001,
        LIMIT=0.015,
        LIMIT_DOWN=0.010,
        TOLERANCE=0.012,
        SMOOTHNESS=0.006,
    )
    moves = [row["move"] for row in run.rows()]
    worst = run.rows()[2]
    assert moves[2] == -0.010 and worst["reason"] == "beyond the jack's travel" and worst["after"] == "high"
    assert (
        all(-0.010 <= move <= 0.015 for move in moves)
        and moves[1] > 0
        and run.rows()[1]["reason"] == "for its neighbours"
    )
    assert any("a 0+020 (8.0 mm, beyond the jack's travel)" in text for text in run.warnings)
    assert any("of neighbours differ by more than 6.0 mm" in text for text in run.warnings)


def test_units_of_feet(toolbox):
    stations = reviewed(toolbox, [0.043, -0.018])
    run = toolbox.run("scheduleadjustments", STATIONS=stations, HEIGHT_UNIT="foot", STEP=0.005, TOLERANCE=0.03)
    assert [row["move"] for row in run.rows()] == pytest.approx([-0.045, 0.020], abs=1e-12)
    assert "whole increments of 0.005 ft" in run.said


def test_the_unit_that_the_layer_was_made_in(toolbox, light_range):
    assert "HEIGHT_UNIT is 'foot', but the record of layer 'residuals' says 'metre'" in toolbox.refusal(
        "scheduleadjustments", STATIONS=light_range, HEIGHT_UNIT="foot"
    )


def test_one_place_with_two_movements_is_told(toolbox):
    rows = [
        {"at": (500000.0, 5540000.0), "axis": axis, "station": "0+000", "residual": value}
        for axis, value in (("a", 0.01), ("b", 0.03))
    ]
    run = toolbox.run("scheduleadjustments", STATIONS=toolbox.points(rows, "EPSG:32631"))
    assert run.warnings[:-1] == [
        f"More than one movement at one position: a 0+000 ({MINUS}10.0 mm) and b 0+000 ({MINUS}30.0 mm); decide on one."
    ]


def test_tested_stations_leave_blunders_out_and_keep_what_has_moved(toolbox, light_range, tmp_path):
    """The range's two slips of the reading stand alone; its settled stretch is three flagged neighbours."""
    tested = str(tmp_path / "tested.gpkg")
    toolbox.run(
        "fitreference",
        STATIONS=light_range,
        AXIS=str(RANGE / "axis.gpkg"),
        FIT="plane",
        SIGMA=0.003,
        HEIGHT_FIELD="height",
        UNDULATION="field",
        REFERENCE="memory:",
        OUTPUT=tested,
    )
    sheet = tmp_path / "sheet.html"
    run = toolbox.run("scheduleadjustments", STATIONS=light_range, TESTED=tested, STEP=0.001, SHEET=str(sheet))
    rows = {(row["axis"], row["station"]): row for row in run.rows()}
    assert [key for key, row in rows.items() if row["action"] == "left out"] == [("Alder", "0+850"), ("Birch", "1+150")]
    assert all(rows["Alder", station]["action"] == "raise" for station in ("1+600", "1+650", "1+700"))
    assert run.results["GREATEST"] < 0.022 and not any("not tested" in text for text in run.warnings)
    assert "not tested for blunders" not in sheet.read_text("utf-8")
    bare = tmp_path / "bare.html"
    toolbox.run("scheduleadjustments", STATIONS=light_range, STEP=0.001, SHEET=str(bare))
    assert "not tested for blunders" in bare.read_text("utf-8")


def test_tested_stations_of_another_layer_are_refused(toolbox, light_range):
    with pytest.raises(Exception, match="lacks the field station, flag"):
        toolbox.run("scheduleadjustments", STATIONS=light_range, TESTED=toolbox.table([{"name": "x"}], "other"))
    foreign = toolbox.table([{"axis": "x", "station": "9+999", "flag": "kept"}], "foreign")
    with pytest.raises(Exception, match=r"No station of layer 'foreign' \(TESTED\) is one of layer 'residuals'"):
        toolbox.run("scheduleadjustments", STATIONS=light_range, TESTED=foreign)


# --- documents


def test_sheet_and_set_out_sheet(toolbox, light_range, tmp_path):
    sheet, setout, table = (str(tmp_path / name) for name in ("sheet.html", "setout.html", "schedule.csv"))
    run = toolbox.run(
        "scheduleadjustments",
        STATIONS=light_range,
        STEP=0.002,
        LIMIT=0.05,
        SHEET=sheet,
        SETOUT=setout,
        CSV=table,
        TITLE="Range, first pass",
    )
    assert [run.results[key] for key in ("SHEET", "SETOUT", "CSV")] == [sheet, setout, table]
    paper, heights = page(sheet), page(setout)
    supports = [row for row in paper.rows if row and re.fullmatch(r"\d\+\d{3}", row[0])]
    assert len(supports) == 119 and "Range, first pass" in "".join(paper.text)
    worst = next(row for row in supports if row[0] == "0+850" and "beyond" in row[8])
    assert worst[3:8] == ["+100.5", "▼ Lower 50.0", "25", "+50.5", "high"]
    assert "licensed surveyor or engineer decides" in "".join(paper.text) and "For review" in "".join(heights.text)
    design = [row for row in heights.rows if row and re.fullmatch(r"\d\+\d{3}", row[0])]
    assert (
        len(design) == 119
        and sum(row[4] == "" for row in design) == 2
        and all(re.fullmatch(r"\d{4}\.\d{4}", row[3]) for row in design)
    )
    assert "119 design heights, 2 without an as-built height." in heights.text
    assert "in m, above the geoid" in heights.text
    # Self-contained: nothing is loaded, nothing runs.
    for text in (pathlib.Path(sheet).read_text(encoding="utf-8"), pathlib.Path(setout).read_text(encoding="utf-8")):
        assert (
            not re.search(r"<script|<link|src=|url\(|https?:", text) and "e-0" not in text and "nan" not in text.lower()
        )
        assert text.count("<thead>") == text.count("</thead>") == 3 and "table-header-group" in text
    rows = cells(table)
    assert len(rows) == 119 and list(rows[0])[:4] == ["axis", "station_m", "chainage_m", "as_built_m"]
    for row, one in zip(rows, run.rows()):
        assert (
            row["move_m"] == "" if one["move"] is None else float(row["move_m"]) == pytest.approx(one["move"], abs=5e-5)
        )


FORMULAS = ["=1+1", "+1", "-0+050", "@SUM(A1)", "\tx", "\rx", "  =1", "＝1"]


def test_text_that_would_run_is_made_text_and_numbers_stay_numbers(toolbox, tmp_path):
    rows = [
        {
            "at": (500000.0 + k, 5540000.0),
            "axis": "-a",
            "station": text,
            "chainage": float(k),
            "residual": -0.01 * (k - 2),
        }
        for k, text in enumerate(FORMULAS)
    ]
    path = str(tmp_path / "s.csv")
    toolbox.run(
        "scheduleadjustments",
        STATIONS=toolbox.points(rows, "EPSG:32631"),
        CSV=path,
        DECISIONS=decisions(toolbox, [{"axis": "-a", "station": "=1+1", "decision": "accept", "note": "=cmd"}]),
    )
    found = cells(path)
    assert len(found) == len(FORMULAS)
    for row in found:
        assert row["axis"] == "'-a" and (
            row["station_m"][0] == "'" or row["station_m"] == "x"
        )  # blanks are trimmed in reading
        assert float(row["move_m"]) is not None and re.fullmatch(r"-?\d+\.\d+", row["residual_m"])
    assert {float(row["residual_m"]) < 0 for row in found} == {True, False}
    assert not any(cell.startswith(("=", "+", "@", "\t", "\r")) for row in found for cell in row.values())


def test_cells_of_a_spreadsheet():
    from tautline.algorithms.documents.csv_file import number_cell, plain_cell

    assert all(plain_cell(text) == "'" + text for text in FORMULAS)
    assert [plain_cell(text) for text in ("0+050", "a-b", "", "pier 3")] == ["0+050", "a-b", "", "pier 3"]
    assert [number_cell(value, 3) for value in (-0.0001, -1.5, float("nan"), 12345678.9)] == [
        "0.000",
        "-1.500",
        "",
        "12345678.900",
    ]


def test_what_came_from_data_is_escaped(toolbox, tmp_path):
    evil = "<script>alert(1)</script>"
    rows = [
        {
            "at": (500000.0, 5540000.0),
            "axis": evil,
            "station": '"><img src=x>',
            "chainage": 0.0,
            "design_h": 1.0,
            "residual": 0.01,
        }
    ]
    layer = toolbox.points(rows, "EPSG:32631", name=evil)
    paths = [str(tmp_path / name) for name in ("a.html", "b.html")]
    toolbox.run(
        "scheduleadjustments",
        STATIONS=layer,
        SHEET=paths[0],
        SETOUT=paths[1],
        DECISIONS=decisions(
            toolbox, [{"axis": evil, "station": '"><img src=x>', "decision": "accept", "note": "<b>&"}]
        ),
    )
    for path in paths:
        found = page(path)
        assert "script" not in found.tags and "img" not in found.tags and "b" not in found.tags
        assert evil in "".join(found.text)


def test_documents_of_5_and_of_5000_stations(toolbox, tmp_path):
    for number in (5, 5000):
        path = str(tmp_path / f"{number}.html")
        rows = [
            {
                "at": (500000.0 + k, 5540000.0),
                "axis": "a",
                "chainage": float(k),
                "design_h": 50.0,
                "residual": 0.001 * (k % 7 - 3),
            }
            for k in range(number)
        ]
        run = toolbox.run("scheduleadjustments", STATIONS=toolbox.points(rows, "EPSG:32631"), STEP=0.001, SHEET=path)
        assert run.results["COUNT"] == number
        assert sum(1 for row in page(path).rows if row and re.fullmatch(r"\d\+\d{3}", row[0])) == number


def test_documents_are_written_whole_or_not_at_all(toolbox, tmp_path, monkeypatch):
    """The second of two documents cannot be written: the first one's old content and the old layer stay."""
    from qgis.core import QgsProcessingException

    stations, sheet, table = reviewed(toolbox, [0.01]), tmp_path / "sheet.html", tmp_path / "s.csv"
    sheet.write_text("old", encoding="utf-8")
    output = str(tmp_path / "out.gpkg")
    toolbox.run("scheduleadjustments", STATIONS=reviewed(toolbox, [0.01, 0.02]), OUTPUT=output)
    from tautline.algorithms.boundary import stage_folder

    real = stage_folder.os.replace
    monkeypatch.setattr(
        stage_folder.os,
        "replace",
        lambda a, b: (
            (_ for _ in ()).throw(OSError(28, "No space left on device")) if str(b) == str(table) else real(a, b)
        ),
    )
    with pytest.raises(QgsProcessingException, match="CSV.*No space left"):
        toolbox.run("scheduleadjustments", STATIONS=stations, SHEET=str(sheet), CSV=str(table), OUTPUT=output)
    monkeypatch.undo()
    assert sheet.read_text(encoding="utf-8") == "old" and not table.exists()
    assert toolbox.run("scheduleadjustments", STATIONS=output).results["COUNT"] == 2
    assert sorted(path.name for path in tmp_path.iterdir() if path.name.startswith(".")) == []


def test_a_document_does_not_take_the_place_of_an_input_or_output(toolbox, tmp_path):
    stations = toolbox.saved(reviewed(toolbox, [0.01]), tmp_path / "in.gpkg")
    assert "place of the input STATIONS" in toolbox.refusal(
        "scheduleadjustments", STATIONS=stations, CSV=str(tmp_path / "in.gpkg")
    )
    same = str(tmp_path / "x.html")
    assert "are the same place" in toolbox.refusal("scheduleadjustments", STATIONS=stations, SHEET=same, SETOUT=same)
    assert "there is no folder" in toolbox.refusal(
        "scheduleadjustments", STATIONS=stations, SHEET=str(tmp_path / "no" / "x.html")
    )
    assert sorted(path.name for path in tmp_path.iterdir()) == ["in.gpkg"]


# --- bad input


def test_bad_stations(toolbox):
    point = {"at": (500000.0, 5540000.0)}
    assert toolbox.refusal(
        "scheduleadjustments", STATIONS=toolbox.points([{**point, "height": 5.0}], "EPSG:32631")
    ) == ("Layer 'stations' has no field 'residual'; run 'Design heights and residuals' first and give its output.")
    assert toolbox.refusal("scheduleadjustments", STATIONS=reviewed(toolbox, [None, None])) == (
        "Layer 'stations': no station has a residual; there is nothing to schedule."
    )
    text = toolbox.points([{**point, "residual": "0.1"}, {**point, "residual": "high"}], "EPSG:32631")
    assert (
        toolbox.refusal("scheduleadjustments", STATIONS=text)
        == "Layer 'stations', field 'residual', row 2: 'high' is not a number."
    )


def test_bad_parameters(toolbox, tmp_path):
    stations = reviewed(toolbox, [0.01, 0.02])
    for given, said in (
        ({"STEP": 0.0}, "STEP is 0; it must be greater than zero, or empty."),
        ({"STEP": -1}, "STEP is -1, but must be at least 0."),
        ({"LIMIT": -1}, "LIMIT is -1, but must be at least 0."),
        ({"METHOD": "best"}, "METHOD is 'best', but can only be full, least."),
        (
            {"METHOD": "least"},
            "METHOD 'least' needs a TOLERANCE; layer 'stations' does not record the one it was made with (a).",
        ),
        ({"STEPS": 1}, "There is no parameter STEPS"),
    ):
        assert toolbox.refusal("scheduleadjustments", STATIONS=stations, **given).startswith(said)
    rows = [{"at": (500000.0 + k, 5540000.0), "residual": 0.01} for k in range(2)]
    bare = toolbox.points(rows, "EPSG:32631")
    assert "row 1: SMOOTHNESS needs the order along the axis" in toolbox.refusal(
        "scheduleadjustments", STATIONS=bare, SMOOTHNESS=0.001
    )
    assert "no design heights (field 'design_h')" in toolbox.refusal(
        "scheduleadjustments", STATIONS=bare, SETOUT=str(tmp_path / "s.html")
    )
    assert list(tmp_path.iterdir()) == [] and toolbox.run("scheduleadjustments", STATIONS=bare).results["MOVED"] == 2


def test_record_style_and_second_run(toolbox, light_range, tmp_path):
    """The schedule is an input again: its own fields are replaced, not doubled; style and record travel in the file."""
    first, second = str(tmp_path / "one.gpkg"), str(tmp_path / "two.gpkg")
    toolbox.run("scheduleadjustments", STATIONS=light_range, METHOD="least", STEP=0.001, OUTPUT=first)
    run = toolbox.run("scheduleadjustments", STATIONS=first, METHOD="least", STEP=0.001, OUTPUT=second)
    names = [field.name() for field in run.layer().fields()]
    assert len(names) == len(set(names)) and names[-5:] == ["move", "action", "predicted", "after", "reason"]
    layer = run.layer()
    assert layer.loadDefaultStyle()[1] and layer.attributeAlias(names.index("move")) == "Movement (m)"
    record = json.loads(layer.customProperty("tautline/record"))
    assert record["entry"] == "tautline:scheduleadjustments" and record["axes"]["Alder"]["tolerance"] == 0.01
    legend = [item.label() for item in layer.renderer().legendSymbolItems()]
    assert "Raise" in legend and "Lower" in legend and "Measure again" not in legend


def test_cancel_leaves_nothing(toolbox, log, tmp_path):
    from qgis.core import QgsProcessingException

    stations = reviewed(toolbox, [0.01] * 50)
    with pytest.raises(QgsProcessingException, match="Cancelled"):
        toolbox.run(
            "scheduleadjustments",
            feedback=log(cancel_at=1),
            STATIONS=stations,
            OUTPUT=str(tmp_path / "o.gpkg"),
            SHEET=str(tmp_path / "s.html"),
        )
    assert list(tmp_path.iterdir()) == []


def test_flags_that_are_too_many_and_stretches_are_scheduled_and_told(toolbox, tmp_path):
    """One rule for fit, report and schedule: more than a tenth flagged is no blunders, nor are three neighbours."""
    residuals = [0.001 * (k % 3 - 1) for k in range(30)]
    for k, value in {4: 0.05, 11: -0.05, 18: 0.05, 25: -0.05}.items():
        residuals[k] = value
    flags = ["suspected blunder" if abs(value) > 0.01 else "kept" for value in residuals]
    stations = reviewed(toolbox, residuals, flag=flags, w=[value / 0.002 for value in residuals])
    sheet = tmp_path / "sheet.html"
    run = toolbox.run("scheduleadjustments", STATIONS=stations, SHEET=str(sheet))
    told = "Axis 'a': 4 of 30 stations are flagged, more than a tenth"
    assert any(text.startswith(told) for text in run.warnings) and "4 of 30 stations are flagged" in sheet.read_text()
    assert run.column("action").count("left out") == 0
    # Three of thirty are not more than a tenth: doubted readings, left out.
    flags[25] = "kept"
    run = toolbox.run("scheduleadjustments", STATIONS=reviewed(toolbox, residuals, flag=flags, w=[1.0] * 30))
    assert run.column("action").count("left out") == 3 and not any("flagged" in text for text in run.warnings)
    residuals[4:7], flags = [0.05] * 3, ["suspected blunder" if 4 <= k < 7 else "kept" for k in range(30)]
    run = toolbox.run(
        "scheduleadjustments", STATIONS=reviewed(toolbox, residuals, flag=flags, w=[1.0] * 30), SHEET=str(sheet)
    )
    told = "Axis 'a': 0+040 to 0+060: 3 neighbours are flagged on one side; a stretch that has moved"
    assert any(text.startswith(told) for text in run.warnings) and "0+040 to 0+060" in sheet.read_text()
    assert run.column("action").count("left out") == 0
