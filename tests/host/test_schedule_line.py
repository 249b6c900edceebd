"""scheduleadjustments with LINE through the registry: moves left and right by other solutions, papers, bad input."""

import csv
import html.parser
import io
import itertools
import json
import re

import numpy as np
import pytest

pyproj = pytest.importorskip("pyproj")
qgis_core = pytest.importorskip("qgis.core")

FOOT = 0.3048
WGS = pyproj.Geod(ellps="WGS84")
RESIDUAL = [0.006, -0.002, 0.001, -0.007, 0.0, 0.003]
LATERAL = [0.0093, -0.0061, 0.0042, -0.0004, 0.0121, -0.0055]


def stations_of(toolbox, lateral=LATERAL, residual=RESIDUAL, **more):
    rows = [
        {
            "at": (500000.0 + 10.0 * k, 5540000.0),
            "axis": "a",
            "station": f"0+{10 * k:03d}",
            "chainage": 10.0 * k,
            "design_h": 50.0,
            "residual": residual[k],
            "lateral": beside,
            "side": "no tolerance",
            **{key: values[k] for key, values in more.items()},
        }
        for k, beside in enumerate(lateral)
    ]
    return toolbox.points(rows, "EPSG:32631", types={"lateral": "double", "residual": "double"})


def column(run, name):
    return [row[name] for row in run.rows()]


# What is found ------------------------------------------------------------------------------------------------------


def test_who_stands_right_moves_left(toolbox):
    run = toolbox.run("scheduleadjustments", STATIONS=stations_of(toolbox), LINE="lateral", LINE_TOLERANCE=0.005)
    assert column(run, "lat_move") == pytest.approx([-v for v in LATERAL], abs=1e-15)
    assert column(run, "lat_action") == ["left" if v > 0 else "right" for v in LATERAL]
    assert column(run, "lat_pred") == pytest.approx([0.0] * 6, abs=1e-15) and set(column(run, "lat_after")) == {
        "within"
    }
    results = run.results
    assert (results["LINE_MOVED"], results["LINE_OUTSIDE"], results["LINE_GREATEST"]) == (6, 0, 0.0121)
    assert results["LINE_TOTAL"] == pytest.approx(sum(map(abs, LATERAL)), abs=1e-15)
    assert "Line: Move right 3, left 3, keep 0; sum of movements 37.6 mm, greatest 12.1 mm." in run.said
    assert any(
        "the stations were not tested for lateral blunders" in t and "12.1 mm left at a 0+040" in t
        for t in run.warnings
    )


def test_step_and_travel_of_its_own(toolbox):
    """Least movement of each support by trying every whole number of steps."""
    step, right, left, tolerance = 0.0005, 0.003, 0.005, 0.004
    run = toolbox.run(
        "scheduleadjustments",
        STATIONS=stations_of(toolbox),
        LINE="lateral",
        METHOD="least",
        TOLERANCE=0.005,
        STEP=0.002,
        LIMIT=0.004,
        LINE_TOLERANCE=tolerance,
        STEP_LINE=step,
        LIMIT_LINE=right,
        LIMIT_LEFT=left,
    )
    for beside, move, after, reason in zip(
        LATERAL, column(run, "lat_move"), column(run, "lat_after"), column(run, "lat_reason")
    ):
        tried = [step * k for k in range(-10, 7)]
        good = [m for m in tried if abs(beside + m) <= tolerance + 1e-9]
        assert move == pytest.approx(
            min(good, key=abs) if good else min(tried, key=lambda m: abs(beside + m)), abs=1e-12
        )
        assert (after == "within") == bool(good) and (reason == "beyond the lateral travel") != bool(good)
    assert column(run, "lat_after").count("right") == 2 and run.results["LINE_OUTSIDE"] == 2
    assert any(t.startswith("Line: 2 supports stay out of tolerance") and "0+040 (3.1 mm" in t for t in run.warnings)
    # Heights in steps and travel of theirs.
    assert column(run, "move") == [-0.002, 0.0, 0.0, 0.002, 0.0, 0.0]
    assert "whole increments of 0.5 mm; to the right at most 3.0 mm; to the left at most 5.0 mm" in run.said


def test_neighbours_sideways_by_trying_all(toolbox):
    """The least sum within tolerance and smoothness, against every combination of whole steps."""
    lateral, step, tolerance, smooth = [0.008, 0.001, -0.004, 0.006], 0.002, 0.004, 0.003
    run = toolbox.run(
        "scheduleadjustments",
        STATIONS=stations_of(toolbox, lateral),
        LINE="lateral",
        METHOD="least",
        TOLERANCE=0.01,
        LINE_TOLERANCE=tolerance,
        STEP_LINE=step,
        SMOOTHNESS_LINE=smooth,
    )
    best = np.inf
    for counts in itertools.product(range(-5, 6), repeat=4):
        after = np.array(lateral) + step * np.array(counts)
        if np.all(np.abs(after) <= tolerance + 1e-9) and np.all(np.abs(np.diff(after)) <= smooth + 1e-9):
            best = min(best, step * float(np.abs(counts).sum()))
    assert run.results["LINE_TOTAL"] == pytest.approx(best, abs=1e-12) and np.isfinite(best)
    after = np.array(column(run, "lat_pred"))
    assert np.all(np.abs(after) <= tolerance + 1e-9) and np.all(np.abs(np.diff(after)) <= smooth + 1e-9)
    assert "for its neighbours" in column(run, "lat_reason")


def test_heights_are_what_they_are_without_line(toolbox):
    form = {"METHOD": "least", "TOLERANCE": 0.004, "STEP": 0.001, "SMOOTHNESS": 0.003}
    both = toolbox.run(
        "scheduleadjustments", STATIONS=stations_of(toolbox), LINE="lateral", LINE_TOLERANCE=0.003, **form
    )
    alone = toolbox.run("scheduleadjustments", STATIONS=stations_of(toolbox), **form)
    for row, bare in zip(both.rows(), alone.rows()):
        assert {name: row[name] for name in bare} == bare
    assert {k: both.results[k] for k in ("MOVED", "TOTAL", "OUTSIDE")} == {
        k: alone.results[k] for k in ("MOVED", "TOTAL", "OUTSIDE")
    }


def test_what_is_doubted_or_decided_holds_for_both(toolbox):
    stations = stations_of(
        toolbox,
        [0.01, 0.01, 0.01, None, 0.01, 0.01],
        [0.01, 0.01, 0.01, 0.01, None, 0.01],
        flag=["kept", "kept", "suspected blunder", "kept", "no height", "suspected blunder"],
        status=["high"] * 5 + ["high"],
    )
    table = toolbox.table(
        [
            {"axis": "a", "station": "0+000", "decision": "accept", "note": ""},
            {"axis": "a", "station": "0+010", "decision": "measure again", "note": ""},
            {"axis": "a", "station": "0+050", "decision": "move the support", "note": ""},
        ]
    )
    run = toolbox.run("scheduleadjustments", STATIONS=stations, DECISIONS=table, LINE="lateral", LINE_TOLERANCE=0.02)
    assert column(run, "action") == ["keep", "measure again", "left out", "lower", "no height", "lower"]
    # 'set aside', since 'left out' would be read as left.
    assert column(run, "lat_action") == ["keep", "measure again", "set aside", "no line", "left", "left"]
    assert column(run, "lat_reason")[0] == "decision: accept" and column(run, "lat_move")[1:4] == [None] * 3
    assert "Line: No lateral departure: a 0+030." in run.said


def test_one_place_with_two_movements_is_told(toolbox):
    rows = [
        {"at": (8.0, 50.0), "axis": axis, "station": "0+000", "residual": 0.0, "lateral": beside, "side": ""}
        for axis, beside in (("a", 0.004), ("b", -0.003))
    ]
    run = toolbox.run("scheduleadjustments", STATIONS=toolbox.points(rows), LINE="lateral")
    told = (
        "Line: More than one movement at one position: a 0+000 (4.0 mm left) and b 0+000 (3.0 mm right); decide on one."
    )
    assert told in run.warnings


# Chains of entries --------------------------------------------------------------------------------------------------


def chain(toolbox, tmp_path, offsets, unit=1.0, **more):
    """Stations at known offsets of a geodesic (the library's), designed with a line."""
    rows, ends = [], []
    for k, offset in enumerate(offsets):
        x, y, back = WGS.fwd(8.0, 50.0, 130.0, 200.0 * k) if k else (8.0, 50.0, 310.0)
        ends.append((x, y))
        x, y, _ = WGS.fwd(x, y, back - 90.0, offset)
        rows.append({"at": (x, y), "name": f"P{k}", "height": 90.0 / unit, "undulation": 45.0 / unit})
    axis = toolbox.lines([{"at": [ends[0], ends[-1]], "name": "wall"}])
    stations = toolbox.saved(toolbox.points(rows), tmp_path / "raw.gpkg")
    path = str(tmp_path / "designed.gpkg")
    toolbox.run("designheights", STATIONS=stations, AXIS=axis, OUTPUT=path, **more)
    return path, stations, axis


OFFSETS = (0.0, 0.009, -0.006, 0.004, 0.0)


@pytest.mark.parametrize("unit, name", [(1.0, "metre"), (FOOT, "foot")])
def test_the_tolerance_of_the_run_before_in_its_unit_over_the_geoid(toolbox, tmp_path, unit, name):
    path, stations, axis = chain(
        toolbox,
        tmp_path,
        OFFSETS,
        unit,
        LINE="chord",
        LINE_TOLERANCE=0.005 / unit,
        HEIGHT_UNIT=name,
        UNDULATION="field",
        UNDULATION_FIELD="undulation",
    )
    form = {"METHOD": "least", "TOLERANCE": 1.0, "LINE": "lateral", "STEP_LINE": 0.001 / unit}
    run = toolbox.run("scheduleadjustments", STATIONS=path, OUTPUT=str(tmp_path / "s.gpkg"), **form)
    # Whole millimetres that bring 9 and -6 within 5; at 135 m an offset is longer by 135 m / R.
    moved = np.array(column(run, "lat_move")) * unit
    lifted = np.array(OFFSETS) * (1 + 135.0 / 6_381_000.0)
    for beside, move in zip(lifted, moved):
        least = next(k for k in range(20) if abs(beside) - 0.001 * k <= 0.005 + 1e-9)
        assert move == pytest.approx(-np.sign(beside) * 0.001 * least, abs=1e-9)
    assert run.titles()["lat_move"] == f"Lateral movement ({'m' if unit == 1.0 else 'ft'})"
    record = json.loads(run.layer().customProperty("tautline/record") or dressed(run).customProperty("tautline/record"))
    assert record["axes"]["wall"]["line_tolerance"] == 0.005 / unit
    # A station moved on the ground, and the chain run again.
    feature = next(f for f in stations.getFeatures() if f["name"] == "P3")
    at, back = feature.geometry().asPoint(), WGS.fwd(8.0, 50.0, 130.0, 600.0)[2]
    x, y, _ = WGS.fwd(at.x(), at.y(), back - 90.0, 0.0033)
    assert stations.startEditing()
    stations.changeGeometry(feature.id(), qgis_core.QgsGeometry.fromPointXY(qgis_core.QgsPointXY(x, y)))
    assert stations.commitChanges()
    again = str(tmp_path / "again.gpkg")
    toolbox.run(
        "designheights",
        STATIONS=stations,
        AXIS=axis,
        OUTPUT=again,
        LINE="chord",
        LINE_TOLERANCE=0.005 / unit,
        HEIGHT_UNIT=name,
        UNDULATION="field",
        UNDULATION_FIELD="undulation",
    )
    after = toolbox.run("scheduleadjustments", STATIONS=again, **form)
    assert np.array(column(after, "lat_move")) * unit - moved == pytest.approx([0, 0, 0, -0.003, 0], abs=1e-9)


def dressed(run):
    layer = run.layer()
    layer.loadDefaultStyle()
    return layer


def test_a_later_schedule_of_heights_leaves_no_line_behind(toolbox, tmp_path):
    first = str(tmp_path / "first.gpkg")
    toolbox.run("scheduleadjustments", STATIONS=stations_of(toolbox), LINE="lateral", OUTPUT=first)
    again = toolbox.run("scheduleadjustments", STATIONS=first, LINE="lateral")
    assert list(again.rows()[0]).count("lat_move") == 1
    heights = toolbox.run("scheduleadjustments", STATIONS=first)
    names = set(heights.rows()[0])
    assert not {n for n in names if n.startswith("lat_")} and "lateral" in names


# Heights only -------------------------------------------------------------------------------------------------------


def test_nothing_of_line_where_only_heights_are_scheduled(toolbox, tmp_path):
    sheet, table = tmp_path / "s.html", tmp_path / "s.csv"
    rows = [{"at": (8.0, 50.0 + k), "axis": "a", "station": f"0+{k}", "residual": 0.01} for k in range(3)]
    run = toolbox.run(
        "scheduleadjustments",
        STATIONS=toolbox.points(rows),
        SHEET=str(sheet),
        CSV=str(table),
        OUTPUT=str(tmp_path / "o.gpkg"),
    )
    text = re.sub(r"<style.*?</style>", "", sheet.read_text(encoding="utf-8"), flags=re.DOTALL)
    for said in (run.said, text, table.read_text(encoding="utf-8"), dressed(run).mapTipTemplate(), str(run.results)):
        assert not re.search(
            r"\b(lateral|sideways|left|right|Line|LINE\w*|lat_\w*)\b", re.sub(r"or left\.|left out", "", said)
        )
    assert not [name for name in run.rows()[0] if name.startswith("lat")]
    record = json.loads(dressed(run).customProperty("tautline/record"))
    assert not [key for key in (*record["parameters"], *record["axes"]["a"]) if "line" in key.lower()]
    assert "A4 landscape" not in sheet.read_text(encoding="utf-8")


# Papers and map -----------------------------------------------------------------------------------------------------


class Cells(html.parser.HTMLParser):
    """Rows of cells of a page."""

    def __init__(self, text):
        super().__init__()
        self.rows = []
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        if tag == "tr":
            self.rows.append([])
        if tag in ("td", "th") and self.rows:
            self.rows[-1].append("")

    def handle_data(self, data):
        if self.rows and self.rows[-1]:
            self.rows[-1][-1] += data


def test_one_sheet_with_both(toolbox, tmp_path):
    sheet, table = tmp_path / "s.html", tmp_path / "s.csv"
    stations = stations_of(toolbox, flag=["kept"] * 5 + ["suspected blunder"])
    run = toolbox.run(
        "scheduleadjustments",
        STATIONS=stations,
        LINE="lateral",
        TOLERANCE=0.005,
        LINE_TOLERANCE=0.005,
        STEP=0.001,
        STEP_LINE=0.0005,
        LIMIT_LINE=0.004,
        SHEET=str(sheet),
        CSV=str(table),
        OUTPUT=str(tmp_path / "o.gpkg"),
    )
    text = sheet.read_text(encoding="utf-8")
    rows = Cells(text).rows
    groups = next(row for row in rows if "HEIGHT: up and down" in row)
    assert groups[2] == "LINE: left and right, looking up-chainage"
    heads = rows[rows.index(groups) + 1]
    assert heads[4:7] == ["Raise or lower (mm)", "Increments of 1.0 mm", "Predicted (mm)"]
    assert heads[7:11] == ["Stands (mm)", "Move left or right (mm)", "Increments of 0.5 mm", "Predicted (mm)"]
    by = {row[0]: row for row in rows if row and row[0].startswith("0+")}
    assert by["0+000"][3:11] == ["+6.0", "▼ Lower 6.0", "6", "0.0", "9.3 right", "◀ Left 4.0", "8", "5.3 right"]
    assert by["0+000"][11] == "Line: stays right, beyond the lateral travel"
    assert by["0+030"][4:9] == ["▲ Raise 7.0", "7", "0.0", "0.4 left", "▶ Right 0.5"]
    assert by["0+050"][4] == by["0+050"][8] == "Set aside" and by["0+050"][11] == "flag: suspected blunder"
    # On a page with directions no other cell begins with the word left.
    assert not [cell for row in by.values() for cell in row if cell.lower().startswith("left")]
    assert "A4 landscape" in text and "looking up-chainage" in text and "Line: Move right" in text
    lines = list(csv.DictReader(io.StringIO(table.read_bytes().decode("utf-8-sig"), newline="")))
    first = lines[0]
    assert (
        first["lateral_m"],
        first["lat_action"],
        first["lat_move_m"],
        first["lat_predicted_m"],
        first["lat_after"],
    ) == ("0.0093", "left", "-0.0040", "0.0053", "right")
    assert (first["residual_m"], first["action"], first["move_m"]) == ("0.0060", "lower", "-0.0060")
    sums = sum(abs(float(line["lat_move_m"] or 0)) for line in lines)
    assert sums == pytest.approx(run.results["LINE_TOTAL"], abs=1e-9)
    layer = dressed(run)
    context = layer.createExpressionContext()
    context.setFeature(next(f for f in layer.getFeatures() if f["station"] == "0+000"))
    bold = next(r for r in layer.labeling().rootRule().children() if r.settings().format().font().bold())
    label = qgis_core.QgsExpression(bold.settings().fieldName).evaluate(context).replace("\xa0", "")
    assert label.split("\n") == ["0+000", "lower 6.0 mm", "move left 4.0 mm"]
    tip = qgis_core.QgsExpression.replaceExpressionText(layer.mapTipTemplate(), context)
    assert "Line: move left 4.0 mm" in tip and "Stands 9.3 mm right, predicted 5.3 mm right (right)" in tip
    assert "Move left or right as well" in [rule.label() for rule in layer.renderer().rootRule().children()]


def test_feet_on_the_sheet(toolbox, tmp_path):
    sheet = tmp_path / "s.html"
    toolbox.run(
        "scheduleadjustments",
        STATIONS=stations_of(toolbox),
        HEIGHT_UNIT="foot",
        LINE="lateral",
        STEP_LINE=0.002,
        SHEET=str(sheet),
    )
    rows = Cells(sheet.read_text(encoding="utf-8")).rows
    row = next(row for row in rows if row and row[0] == "0+040")
    assert ["0.012 right", "◀ Left 0.012", "6", "0.000"] == row[6:10]


# Bad inputs ---------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "form, words",
    [
        ({"LINE": "sideways"}, ("LINE", "sideways")),
        ({"LINE": "lateral", "STEP_LINE": 0.0}, ("STEP_LINE is 0", "greater than zero")),
        ({"LINE": "lateral", "LIMIT_LINE": -0.001}, ("LIMIT_LINE",)),
        ({"LINE": "lateral", "LIMIT_LEFT": -0.001}, ("LIMIT_LEFT",)),
        ({"LINE": "lateral", "LINE_TOLERANCE": "abc"}, ("LINE_TOLERANCE", "abc")),
        ({"LINE": "lateral", "METHOD": "least", "TOLERANCE": 0.01}, ("METHOD 'least' needs a LINE_TOLERANCE",)),
    ],
)
def test_bad_values_are_refused(toolbox, form, words):
    text = toolbox.refusal("scheduleadjustments", STATIONS=stations_of(toolbox), **form)
    for word in words:
        assert word in text


def test_stations_without_a_line_are_refused(toolbox):
    none = stations_of(toolbox, [None] * 6)
    text = toolbox.refusal("scheduleadjustments", STATIONS=none, LINE="lateral")
    assert "Layer 'stations' has no lateral departures" in text and "with LINE first" in text
    lost = stations_of(toolbox, chainage=[0.0, 10.0, None, 30.0, 40.0, 50.0])
    text = toolbox.refusal("scheduleadjustments", STATIONS=lost, LINE="lateral", SMOOTHNESS_LINE=0.01)
    assert "row 3: SMOOTHNESS_LINE needs the order along the axis" in text


def test_a_step_of_the_line_without_line_is_told(toolbox):
    run = toolbox.run("scheduleadjustments", STATIONS=stations_of(toolbox), STEP_LINE=0.001)
    assert any("given, but not used" in text for text in run.warnings) and "lat_move" not in run.rows()[0]
