"""The three sample scenarios end to end: place the list, run the design, and compare with the expected results.

Source of the expected results: make_samples.py computes them without the plugin, by formulas of its own.
"""

import json
import pathlib

import pytest

SAMPLES = pathlib.Path(__file__).resolve().parents[2] / "sample_layers"
UNITS = {"range": {}, "tank": {}, "track": {"HEIGHT_UNIT": "foot", "CHAINAGE_UNIT": "foot"}}
DESIGN = {"range": {"UNDULATION": "field", "UNDULATION_FIELD": "undulation"}, "tank": {}, "track": {}}


@pytest.fixture(scope="module")
def expected():
    return {name: json.loads((SAMPLES / name / "expected.json").read_text(encoding="utf-8")) for name in UNITS}


def runs(toolbox, name, **places):
    axis = str(SAMPLES / name / "axis.gpkg")
    placed = toolbox.run(
        "placestations", INPUT=str(SAMPLES / name / "heights.csv"), AXIS=axis, REJECTED="memory:", **UNITS[name]
    )
    design = toolbox.run(
        "designheights", STATIONS=placed.layer(), AXIS=axis, SUMMARY="memory:", **UNITS[name], **DESIGN[name]
    )
    return placed, design


@pytest.mark.parametrize("name", UNITS)
def test_scenario(toolbox, expected, name):
    want = expected[name]
    placed, design = runs(toolbox, name)
    assert placed.results["COUNT"] == len(want["stations"]) and placed.results["REJECTED_COUNT"] == want["rejected"]
    assert design.layer().crs().authid() == want["crs"]
    rows = {(row["axis"], row["station"]): row for row in design.rows()}
    assert len(rows) == len(want["stations"])
    for station in want["stations"]:
        row = rows[station["axis"], station["station"]]
        for key in ("chainage", "offset", "design_h", "flat_h", "curv_eff"):
            assert row[key] == pytest.approx(station[key], abs=2e-6), (station["station"], key)
        if station["residual"] is None:
            assert row["residual"] is None and row["adjust"] is None
        else:
            assert row["residual"] == pytest.approx(station["residual"], abs=2e-6)
            assert row["adjust"] == -row["residual"]
        assert row["status"] == station["status"]


@pytest.mark.parametrize("name", UNITS)
def test_scenario_summary(toolbox, expected, name):
    want = expected[name]
    _, design = runs(toolbox, name)
    summary = design.by("axis", "SUMMARY")
    assert set(summary) == set(want["axes"])
    for axis, one in want["axes"].items():
        row = summary[axis]
        assert row["design"] == one["controls"]["design"]
        for key in ("rms", "max_abs"):
            assert row[key] == pytest.approx(one[key], abs=2e-6)
        assert [row[key] for key in ("number", "max_at", "within", "high", "low", "no_height")] == [
            one[key] for key in ("number", "max_at", "within", "high", "low", "no height")
        ]
        for key, value in one["controls"].items():
            if key not in ("design", "chain_0") and value is not None:
                assert row[key] == pytest.approx(value, abs=2e-6), key
        assert f"'{axis}'" in design.said and one["max_at"] in design.said
    assert design.results["COUNT"] == sum(one["number"] for one in want["axes"].values())
    assert design.results["WITHIN"] == sum(one["within"] for one in want["axes"].values())
    assert design.results["MAX_ABS"] == pytest.approx(max(one["max_abs"] for one in want["axes"].values()), abs=2e-6)
    squares = sum(one["number"] * one["rms"] ** 2 for one in want["axes"].values())
    assert design.results["RMS"] == pytest.approx((squares / design.results["COUNT"]) ** 0.5, abs=2e-6)


def test_line_of_the_range(toolbox, expected):
    """One support of one run knocked aside, right in height; the same heights as without a line."""
    want, axis = expected["range"], str(SAMPLES / "range" / "axis.gpkg")
    placed, plain = runs(toolbox, "range")
    judged = {"LINE": want["line"], "LINE_TOLERANCE": want["line_tolerance"]}
    run = toolbox.run(
        "designheights", STATIONS=placed.layer(), AXIS=axis, SUMMARY="memory:", **DESIGN["range"], **judged
    )
    rows = run.rows()
    for row, station in zip(rows, want["stations"]):
        assert (row["axis"], row["station"]) == (station["axis"], station["station"])
        assert row["lateral"] == pytest.approx(station["lateral"], abs=2e-6) and row["side"] == station["side"]
    out = [(row["axis"], row["station"], row["side"], row["status"]) for row in rows if row["side"] != "within"]
    assert out == [(one["axis"], one["station"], "left", "within") for one in want["truth"]["aside"]]
    assert [row["residual"] for row in rows] == [row["residual"] for row in plain.rows()]
    summary = run.by("axis", "SUMMARY")
    for name, one in want["axes"].items():
        row, line = summary[name], one["line"]
        assert (row["lat_rms"], abs(row["lat_max"])) == pytest.approx((line["rms"], line["max_abs"]), abs=2e-6)
        assert [row[key] for key in ("lat_number", "lat_max_at", "lat_within", "left", "right")] == [
            line[key] for key in ("number", "max_at", "within", "left", "right")
        ]
    assert run.results["LINE_COUNT"] == sum(one["line"]["number"] for one in want["axes"].values())


def test_positions_of_the_placed_stations(toolbox, expected):
    from qgis.core import QgsCoordinateReferenceSystem, QgsCoordinateTransform, QgsProject

    placed, _ = runs(toolbox, "range")
    layer = placed.layer()
    to_degrees = QgsCoordinateTransform(layer.crs(), QgsCoordinateReferenceSystem("EPSG:4326"), QgsProject.instance())
    for feature, station in zip(layer.getFeatures(), expected["range"]["stations"]):
        point = to_degrees.transform(feature.geometry().asPoint())
        # 1e-11 degree is a micrometre.
        assert (point.y(), point.x()) == pytest.approx((station["lat"], station["lon"]), abs=2e-11)


def test_hub_of_three_axes_is_a_row_for_each(toolbox):
    """Each run lists the hub; without names each of the three rows belongs to all three axes."""
    placed, _ = runs(toolbox, "range")
    layer = placed.layer()
    hub = [row for row in placed.rows() if row["station"] == "0+000"]
    assert [row["axis"] for row in hub] == ["Alder", "Birch", "Cedar"]
    layer.dataProvider().deleteAttributes([layer.fields().indexOf("axis")])
    layer.updateFields()
    run = toolbox.run("measurestations", STATIONS=layer, AXIS=str(SAMPLES / "range" / "axis.gpkg"))
    assert len(run.rows()) == len(placed.rows()) + 6


def test_axes_of_the_samples_and_of_the_tests_have_no_name_in_common(expected):
    """A test that makes axes of its own must not look as if it spoke of a sample."""
    names = [name for one in expected.values() for name in one["axes"]]
    others = [
        text
        for path in pathlib.Path(__file__).resolve().parents[1].rglob("*.py")
        if path.parent.name in ("core", "host", "language", "benchmarks")
        and "sample_layers" not in (text := path.read_text(encoding="utf-8"))
    ]
    assert len(others) > 50 and len(names) == 5
    assert not [name for name in names for text in others if f'"{name}"' in text or f"'{name}'" in text]
