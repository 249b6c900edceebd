"""The demo's chain on the range: levelling lines to heights to residuals to the plane, against what was built in."""

import csv
import json
import pathlib

import numpy as np
import pytest

RANGE = pathlib.Path(__file__).resolve().parents[2] / "sample_layers" / "range"
AXIS = str(RANGE / "axis.gpkg")


@pytest.fixture(scope="module")
def listed():
    with open(RANGE / "heights.csv", encoding="utf-8", newline="") as file:
        return {row["point"]: row for row in csv.DictReader(file)}


@pytest.fixture(scope="module")
def expected():
    return json.loads((RANGE / "expected.json").read_text("utf-8"))


@pytest.fixture
def levelled(toolbox, tmp_path):
    """Placed stations with the heights and the covariance of the adjusted levelling: paths by parameter."""
    placed, files = str(tmp_path / "placed.gpkg"), {k: str(tmp_path / f"{k}.gpkg") for k in ("POINTS", "COVARIANCE")}
    toolbox.run("placestations", INPUT=str(RANGE / "heights.csv"), AXIS=AXIS, UNDULATION="field", OUTPUT=placed)
    run = toolbox.run(
        "adjustlevelling",
        INPUT=str(RANGE / "levelling.csv"),
        BENCHMARKS=str(RANGE / "benchmarks.csv"),
        SIGMA_KM=0.7,
        STATIONS=placed,
        NAME_FIELD="point",
        **files,
    )
    return {**files, "run": run}


def test_levelling_gives_the_listed_heights(levelled, listed):
    """Out and back differ by halves of opposite sign, so that the mean is the list's height to its last digit."""
    heights = {row["point"]: row["height"] for row in levelled["run"].rows("POINTS")}
    assert set(heights) == set(listed)
    for point, row in listed.items():
        if row["height"]:
            assert heights[point] == pytest.approx(float(row["height"]), abs=5e-6)
        else:
            assert heights[point] is None
    assert levelled["run"].results["FREEDOM"] == 114 and levelled["run"].results["SUSPECTED"] == 0
    # A single run of 0.7 mm over 1 km: the variance factor of 114 sections lies within the 99.9 % of chi squared
    # / 114.
    assert 0.61 < levelled["run"].results["VARIANCE_FACTOR"] < 1.49


def test_residuals_and_plane_of_the_levelled_heights(toolbox, levelled, expected):
    run = toolbox.run("designheights", STATIONS=levelled["POINTS"], AXIS=AXIS)
    truth = {(row["axis"], row["station"]): row for row in expected["stations"]}
    for row in run.rows():
        wanted = truth[row["axis"], row["station"]]
        assert row["status"] == wanted["status"]
        if wanted["residual"] is not None:
            assert row["residual"] == pytest.approx(wanted["residual"], abs=1e-5)
    fit = toolbox.run(
        "fitreference",
        STATIONS=levelled["POINTS"],
        AXIS=AXIS,
        FIT="plane",
        SIGMA=0.003,
        COVARIANCE=levelled["COVARIANCE"],
        NAME_FIELD="point",
        REFERENCE="memory:",
        ELLIPSE="memory:",
    )
    flagged = {(row["axis"], row["station"]) for row in fit.rows() if row["flag"] == "suspected blunder"}
    assert {("Alder", "0+850"), ("Birch", "1+150")} <= flagged
    assert any("a stretch that has moved" in text and "1+600 to 1+700" in text for text in fit.warnings)
    assert _inside(fit, expected["truth"]["common_plane"])


def _inside(fit, plane):
    """The truth within the 95 % ellipse of the tangent point."""
    pyproj = pytest.importorskip("pyproj")
    reference = fit.rows("REFERENCE")[0]
    azimuth, _, away = pyproj.Geod(ellps="WGS84").inv(
        reference["tan_lon"], reference["tan_lat"], plane["tangent_lon"], plane["tangent_lat"]
    )
    ellipse = next(row for row in fit.rows("ELLIPSE") if row["kind"] == "tangent")
    turn = np.radians(azimuth - ellipse["azimuth"])
    return (away * np.cos(turn) / ellipse["semi_a"]) ** 2 + (away * np.sin(turn) / ellipse["semi_b"]) ** 2 <= 1.0
