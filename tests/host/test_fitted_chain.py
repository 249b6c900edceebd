"""Through the registry, designheights -> fitreference -> drawdeviations -> reviewreport: a fit of stations that have a
design's numbers already keeps none of these beside its own."""

import json
import pathlib
import re

import pytest

from .test_fitted_line import SIDE, fit, less_line, stations, straight_heights

pytest.importorskip("pyproj")
DESIGN = {"DESIGN": "level", "UNDULATION": "ellipsoidal", "TOLERANCE": 0.004}
LINE = {"LINE": "axis", "LINE_TOLERANCE": 0.004}
OF_DESIGN = {"design_h", "adjust", "flat_h", "curv_eff", "status"}


def site(toolbox, **columns):
    """Stations with more columns of somebody else; their heights stand in 'elev'."""
    rows, ends = stations()
    for k, row in enumerate(rows):
        row["elev"] = row.pop("height")
        row.update({name: value[k] if isinstance(value, list) else value for name, value in columns.items()})
    return {"STATIONS": toolbox.points(rows), "AXIS": toolbox.lines([{"at": ends, "name": "wall"}])}


@pytest.fixture
def chain(toolbox, tmp_path):
    """A function: ({name: path}, the designed and the fitted run) of stations that have a field 'side' of their own."""

    def made(**more):
        layers = site(toolbox, shore="east", side="north", **more)
        paths = {name: str(tmp_path / f"{name}.gpkg") for name in ("designed", "tested", "bars")}
        designed = toolbox.run("designheights", OUTPUT=paths["designed"], **layers, **DESIGN, **LINE)
        fitted = fit(toolbox, {**layers, "STATIONS": paths["designed"]}, OUTPUT=paths["tested"])
        return layers["AXIS"], paths, designed, fitted

    return made


def test_the_fit_keeps_no_number_of_the_design_beside_its_own(chain):
    axis, paths, designed, fitted = chain()
    assert OF_DESIGN <= set(designed.rows()[0]) and set(designed.column("side")) <= {"within", "left", "right"}
    row = fitted.rows()[0]
    assert not OF_DESIGN & set(row) and "side" not in row and row["shore"] == "east"
    assert fitted.column("lateral") == pytest.approx(less_line(SIDE), abs=2e-8)
    words = "Layer 'designed': design_h, adjust, flat_h, curv_eff, status belong to the residuals of an earlier run"
    assert f"{words} and are left out." in fitted.said
    assert "tautline:fitreference" == json.loads(fitted.layer().customProperty("tautline/record"))["entry"]


def test_no_height_is_made_of_the_numbers_of_two_runs(toolbox, chain):
    """comparesurveys takes design_h + residual for the height where both are there."""
    axis, paths, designed, fitted = chain()
    surveys = {"SURVEYS": [paths["designed"], paths["tested"]], "DATES": "2025-01-01;2026-01-01"}
    refusal = toolbox.refusal("comparesurveys", **surveys)
    assert "Layer 'tested' has no field 'height', no design_h and residual" in refusal
    same = toolbox.run("comparesurveys", HEIGHT_FIELD="elev", **surveys)
    assert same.column("h_last") == pytest.approx(designed.column("elev"), abs=1e-9)


def test_bars_and_report_of_the_chain(toolbox, chain, tmp_path):
    axis, paths, designed, fitted = chain()
    bars = toolbox.run(
        "drawdeviations", STATIONS=paths["tested"], AXIS=axis, OUTPUT=None, BARS=paths["bars"], TOLERANCE=0.004
    )
    by_station = {row["station"]: row["residual"] for row in fitted.rows()}
    drawn = {row["station"]: row for row in bars.rows("BARS")}
    assert {name: row["residual"] for name, row in drawn.items()} == pytest.approx(by_station, abs=1e-12)
    assert all((row["status"] == "within") == (abs(row["residual"]) <= 0.004) for row in drawn.values())
    html = str(tmp_path / "report.html")
    toolbox.run("reviewreport", OUTPUT=None, STATIONS=paths["designed"], TESTED=paths["tested"], HTML=html)
    words = re.sub(r"<[^>]*>", " ", pathlib.Path(html).read_text("utf-8"))
    within = designed.column("status").count("within")
    assert f"{within} of 31 stations with a height are within it" in " ".join(words.split())


def test_a_field_of_that_name_from_elsewhere_gets_another(toolbox):
    """Beside a lateral departure 'side' is the verdict on it; 'status' means nothing but with design_h."""
    fitted = fit(toolbox, site(toolbox, side="shore", status="built"))
    assert set(fitted.column("side_2")) == {"shore"} and set(fitted.column("status")) == {"built"}
    heights = toolbox.run("fitreference", REFERENCE="memory:", **site(toolbox, side="shore"))
    assert set(heights.column("side")) == {"shore"} and "left out" not in heights.said


def test_heights_named_by_the_form_stay(toolbox):
    """Whoever fits the design itself keeps what was fitted."""
    rows = {"design_h": straight_heights().tolist(), "residual": 0.0, "status": "within"}
    fitted = fit(toolbox, site(toolbox, **rows), HEIGHT_FIELD="design_h")
    assert "design_h" in fitted.rows()[0] and "status" not in fitted.rows()[0]
