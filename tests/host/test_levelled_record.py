"""What the record of levelled heights says of them: unit, height system and how their adjustment went, in chains in US
survey feet with the geoid from a field."""

import numpy as np
import pytest

from tautline.algorithms.entry.layer_records import record_of_layer
from tautline.algorithms.entry.run_record import RunRecord
from tautline.algorithms.structure.recorded_covariance import adjustment_doubt
from tautline.algorithms.styles.record_property import RECORD_PROPERTY

pyproj = pytest.importorskip("pyproj")
qgis_core = pytest.importorskip("qgis.core")
GEOD = pyproj.Geod(ellps="WGS84")
US_FOOT = 1200 / 3937
NUMBER, SPACING = 9, 300.0
NAMES = [f"K{k}" for k in range(NUMBER)]
CHAINAGES = SPACING * np.arange(NUMBER)
N = -72.0 + 2e-4 * CHAINAGES


class Chain:
    """Stations placed in US survey feet with undulations of their own, and their levelling out and back."""

    def __init__(self, toolbox, folder):
        self.toolbox, self.folder = toolbox, folder
        places = [GEOD.fwd(8.0, 50.0, 40.0, d * US_FOOT)[:2] for d in CHAINAGES.tolist()]
        self.axis = toolbox.lines([{"at": [places[0], places[-1]], "name": "A"}])
        self.heights = 5210.0 + 0.01 * np.sin(np.arange(NUMBER))
        rows = [
            {
                "axis": "A",
                "station": f"{d:g}",
                "offset": 0.0,
                "height": h,
                "undulation": n,
                "point": name,
                "sd": 0.008,
                "gps": h,
            }
            for d, h, n, name in zip(CHAINAGES.tolist(), self.heights.tolist(), N.tolist(), NAMES)
        ]
        self.list, self.places = toolbox.table(rows), places

    def file(self, name):
        return str(self.folder / name)

    def record(self, name):
        return record_of_layer(qgis_core.QgsVectorLayer(self.file(name), name, "ogr"))

    def placed(self, **system):
        path = self.file("placed.gpkg")
        given = {"UNDULATION": "field", "HEIGHT_UNIT": "us_foot", **system}
        self.toolbox.run("placestations", INPUT=self.list, AXIS=self.axis, OUTPUT=path, **given)
        return path

    def book(self, blunder=0.0, noise=0.0004):
        random, rows = np.random.default_rng(3), []
        for k in range(NUMBER - 1):
            for a, b in ((k, k + 1), (k + 1, k)):
                dh = float(self.heights[b] - self.heights[a] + random.normal(0.0, noise)) + blunder * (
                    a == 3 and b == 4
                )
                rows.append({"from": NAMES[a], "to": NAMES[b], "dh": dh, "length": SPACING})
        return self.toolbox.table(rows, "lines")

    def levelled(self, stations, book=None, **more):
        marks = self.toolbox.table([{"name": "K4", "height": float(self.heights[4])}], "marks")
        given = {
            "INPUT": self.book() if book is None else book,
            "BENCHMARKS": marks,
            "STATIONS": stations,
            "SIGMA_KM": 0.7,
            "OUTPUT": self.file("adjusted.gpkg"),
            "POINTS": self.file("levelled.gpkg"),
            "COVARIANCE": self.file("covariance.gpkg"),
            **more,
        }
        return self.toolbox.run("adjustlevelling", **given)


@pytest.fixture
def chain(toolbox, tmp_path):
    return Chain(toolbox, tmp_path)


# --- unit


def test_unit_of_the_stations_is_followed(toolbox, chain):
    """Without HEIGHT_UNIT in feet: 0.7 mm over 1 km is a standard deviation in feet beside the benchmark."""
    run = chain.levelled(chain.placed())
    assert chain.record("levelled.gpkg").height_unit == "us_foot" and "taken as metre" not in run.said
    sd = {row["point"]: row["sd"] for row in run.rows()}["K5"]
    assert sd == pytest.approx(0.0007 * np.sqrt(SPACING * US_FOOT / 1000.0 / 2.0) / US_FOOT, rel=1e-9)
    toolbox.run("testcurvature", STATIONS=chain.file("levelled.gpkg"), AXIS=chain.axis, OUTPUT=chain.file("c.gpkg"))
    assert chain.record("c.gpkg").height_unit == "us_foot"


def test_another_unit_than_that_of_stations_or_benchmarks_is_refused(toolbox, chain):
    placed = chain.placed()
    given = {"INPUT": chain.book(), "SIGMA_KM": 0.7, "STATIONS": placed}
    marks = toolbox.table([{"name": "K4", "height": 5210.0}], "marks")
    text = toolbox.refusal("adjustlevelling", BENCHMARKS=marks, HEIGHT_UNIT="metre", **given)
    assert "HEIGHT_UNIT is 'metre', but the record of layer 'placed' says 'us_foot'" in text
    # Benchmarks of an earlier adjustment, in another foot than the stations.
    chain.levelled(None, HEIGHT_UNIT="foot", POINTS=None)
    text = toolbox.refusal("adjustlevelling", BENCHMARKS=chain.file("adjusted.gpkg"), **given)
    assert "'us_foot', but the record of layer 'adjusted' says 'foot'" in text
    del given["STATIONS"]
    again = chain.file("again.gpkg")
    toolbox.run("adjustlevelling", BENCHMARKS=chain.file("adjusted.gpkg"), FREE=True, OUTPUT=again, **given)
    assert chain.record("again.gpkg").height_unit == "foot"


def test_chainages_of_the_stations_keep_their_unit(toolbox, chain):
    """Lengths of lines in metres say nothing of the column 'chainage', which goes along in feet."""
    run = chain.levelled(chain.placed(), DISTANCE_UNIT="metre")
    record, heights = (chain.record(name) for name in ("levelled.gpkg", "adjusted.gpkg"))
    assert (record.chainage_unit, heights.chainage_unit) == ("us_foot", "metre")
    assert run.column("chainage", "POINTS") == pytest.approx(CHAINAGES.tolist(), abs=1e-6)


# --- height system


def test_levelled_heights_keep_the_undulations_of_their_stations(toolbox, chain):
    """Converted without a word of the height system: H + N of the list, not H less the N of some grid."""
    run = chain.levelled(chain.placed())
    assert "UNDULATION is 'field', as the record of layer 'placed' says" in run.said
    levelled = chain.file("levelled.gpkg")
    rows = toolbox.run("convertheights", STATIONS=levelled).by("point")
    for k, name in enumerate(NAMES):
        row = rows[name]
        assert row["height_geo"] == pytest.approx(row["height"], abs=1e-9)
        assert row["height_ell"] == pytest.approx(row["height"] + N[k], abs=1e-9)
    for entry, more in (("designheights", {}), ("fitreference", {"REFERENCE": "memory:"}), ("testcurvature", {})):
        run = toolbox.run(entry, STATIONS=levelled, AXIS=chain.axis, **more)
        assert "each station's own undulation from a field" in run.said, entry
        text = toolbox.refusal(entry, STATIONS=levelled, AXIS=chain.axis, UNDULATION="ellipsoidal", **more)
        assert "UNDULATION is 'ellipsoidal', but the record of layer 'levelled' says 'field'" in text
    assert "HEIGHTS_ARE" in toolbox.refusal("convertheights", STATIONS=levelled, HEIGHTS_ARE="ellipsoidal")
    # The table of heights lacks the column; its heights are above the geoid all the same.
    assert chain.record("adjusted.gpkg").height_system == "unknown"


def test_one_undulation_for_all_goes_along(toolbox, chain):
    chain.levelled(chain.placed(UNDULATION="constant", UNDULATION_VALUE=-71.5))
    rows = toolbox.run("convertheights", STATIONS=chain.file("levelled.gpkg")).rows()
    assert [row["height_ell"] - row["height"] for row in rows] == pytest.approx([-71.5] * NUMBER, abs=1e-9)


@pytest.mark.parametrize("system", ["ellipsoidal", "unknown", "none", "column gone"])
def test_levelled_heights_are_above_the_geoid_whatever_the_stations_had(toolbox, chain, system):
    """Heights of the stations by satellite, without a system, without a record, and without their column any more."""
    if system == "none":
        rows = [{"at": at, "point": name} for at, name in zip(chain.places, NAMES)]
        stations = toolbox.points(rows)
    else:
        stations = chain.placed(UNDULATION="field" if system == "column gone" else system)
    if system == "column gone":
        layer = qgis_core.QgsVectorLayer(stations, "placed", "ogr")
        layer.setCustomProperty(RECORD_PROPERTY, record_of_layer(layer).text())
        assert layer.dataProvider().deleteAttributes([layer.fields().indexOf("undulation")])
        layer.updateFields()
        stations = layer
    run = chain.levelled(stations, HEIGHT_UNIT="us_foot")
    assert chain.record("levelled.gpkg").height_system == "unknown"
    assert ("says that its heights are ellipsoidal" in "\n".join(run.warnings)) == (system == "ellipsoidal")
    assert ("no longer holds the undulations" in run.said) == (system == "column gone")
    given = {"STATIONS": chain.file("levelled.gpkg"), "UNDULATION": "constant", "UNDULATION_VALUE": -72.0}
    converted = toolbox.run("convertheights", **given)
    assert "taken as above the geoid" in converted.said


# --- how the adjustment went

FAILED = "rests on an adjustment whose global test failed (variance factor {}, {}): "


def reviewed(toolbox, chain, levelled):
    """What the entries that take the heights or their covariance say as doubts: {entry: one text}; pages by name."""
    common = {"STATIONS": levelled, "AXIS": chain.axis}
    residuals, page, sheet = chain.file("residuals.gpkg"), chain.file("report.html"), chain.file("sheet.html")
    measured, later = chain.file("measured.gpkg"), chain.placed()
    runs = {
        "designheights": toolbox.run("designheights", TOLERANCE=0.01, OUTPUT=residuals, **common),
        "fitreference": toolbox.run("fitreference", REFERENCE="memory:", **common),
        "testcurvature": toolbox.run("testcurvature", **common),
        "scheduleadjustments": toolbox.run("scheduleadjustments", STATIONS=residuals, SHEET=sheet),
        "reviewreport": toolbox.run("reviewreport", OUTPUT=None, STATIONS=residuals, HTML=page),
    }
    toolbox.run("measurestations", OUTPUT=measured, **common)
    given = {"SURVEYS": [measured, later], "DATES": "2025-03-11; 2026-03-09"}
    runs["comparesurveys"] = toolbox.run("comparesurveys", **given)
    pages = {name: (chain.folder / name).read_text("utf-8") for name in ("report.html", "sheet.html")}
    return {entry: "\n".join(run.warnings) for entry, run in runs.items()}, pages


def test_a_failed_adjustment_is_told_wherever_its_heights_are_taken(toolbox, chain):
    """The factor is that which adjustlevelling gives; each entry says it once, the pages too."""
    run = chain.levelled(chain.placed(), chain.book(blunder=0.03))
    factor, suspected = run.results["VARIANCE_FACTOR"], run.results["SUSPECTED"]
    assert factor > 3.0 and suspected == 2
    assert [chain.record(f"{name}.gpkg").adjustment for name in ("adjusted", "levelled", "covariance")] == [
        (True, pytest.approx(factor, rel=1e-12), suspected)
    ] * 3
    said, pages = reviewed(toolbox, chain, chain.file("levelled.gpkg"))
    wanted = (
        FAILED.format(f"{factor:.3f}", "2 suspected blunders") + "accuracies and verdicts that rest on it are too good"
    )
    assert {entry: text.count(wanted) for entry, text in said.items()} == dict.fromkeys(said, 1)
    assert {name: "whose global test failed" in text for name, text in pages.items()} == dict.fromkeys(pages, True)


def test_a_good_adjustment_raises_no_doubt(toolbox, chain):
    run = chain.levelled(chain.placed(), chain.book(noise=0.0007))
    assert run.results["SUSPECTED"] == 0 and "Global test passed" in run.said
    said, pages = reviewed(toolbox, chain, chain.file("levelled.gpkg"))
    assert not any("rests on an adjustment" in text for text in (*said.values(), *pages.values()))


def test_a_table_of_covariances_tells_of_its_adjustment_by_itself(toolbox, chain):
    """Stations without a record, whose covariance is given; and another column than the adjusted heights."""
    chain.levelled(chain.placed(), chain.book(blunder=0.03))
    layer = qgis_core.QgsVectorLayer(chain.file("levelled.gpkg"), "bare", "ogr")
    bare = toolbox.saved(layer, chain.folder / "bare.gpkg")
    given = {"AXIS": chain.axis, "HEIGHT_UNIT": "us_foot", "UNDULATION": "field", "REFERENCE": "memory:"}
    run = toolbox.run("fitreference", STATIONS=bare, COVARIANCE=chain.file("covariance.gpkg"), **given)
    assert sum("Layer 'covariance' rests on an adjustment" in text for text in run.warnings) == 1
    run = toolbox.run("fitreference", STATIONS=layer.source(), HEIGHT_FIELD="gps", SIGMA=0.01, **given)
    assert "rests on an adjustment" not in run.said


@pytest.mark.parametrize(
    "told, words",
    [
        ({"global_test": "passed", "variance_factor": 1.2, "suspected": 1}, "with 1 suspected blunder left in it"),
        ({"global_test": "failed", "variance_factor": 0.2, "suspected": 0}, "(variance factor 0.200, 0 suspected"),
        ({"global_test": "failed", "variance_factor": 0.2}, "accuracies that rest on it are too poor"),
        ({"global_test": "failed", "variance_factor": "big", "suspected": [3]}, ""),
        ({"global_test": ["failed"], "variance_factor": True}, ""),
        ("failed", ""),
        (None, ""),
    ],
)
def test_what_a_record_tells_of_an_adjustment_is_doubted(told, words):
    """As runs write it, and as a hand may have left it."""
    sentence = adjustment_doubt(RunRecord.read({"entry": "tautline:adjustlevelling", "adjustment": told}), "levelled")
    assert words in sentence and bool(words) == bool(sentence)
