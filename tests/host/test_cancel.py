"""Cancel at any moment: a failure, and no output that looks complete."""

import os

import pytest

CANCELLED = "Cancelled; no output was written."


@pytest.fixture
def often(monkeypatch):
    """Small chunks, so that a small run asks often whether it is cancelled."""
    from tautline.algorithms.boundary import output_rows, tables
    from tautline.algorithms.structure import structure

    monkeypatch.setattr(tables, "CANCEL_EVERY", 3)
    monkeypatch.setattr(structure, "_CHUNK", 4)
    monkeypatch.setattr(output_rows, "CHUNK", 4)


def cancelled_runs(toolbox, log, check, entry, **parameters):
    """Cancel at the first question, the second and so on until a run ends; return how many were cancelled."""
    for number in range(1, 1000):
        feedback = log(cancel_at=number)
        try:
            run = toolbox.run(entry, feedback, **parameters)
        except Exception as error:  # noqa: BLE001 - what it is, is asserted
            assert type(error).__name__ == "QgsProcessingException" and str(error) == CANCELLED
            check()
            continue
        assert run.results["COUNT"] and feedback.asked < number
        return number - 1
    raise AssertionError("never ended")


def entries(toolbox):
    stations, axis = toolbox.straight()
    rows = toolbox.table([{"station": f"0+{k}00", "height": 5.0} for k in range(9)] + [{"station": "x", "height": 5.0}])
    return {
        "designheights": ({"STATIONS": stations, "AXIS": axis}, "SUMMARY", 9),
        "measurestations": ({"STATIONS": stations, "AXIS": axis}, None, 7),
        "placestations": ({"INPUT": rows, "AXIS": axis}, "REJECTED", 5),
        "generatestations": ({"AXIS": axis, "INTERVAL": 100.0}, None, 4),
        "convertheights": ({"STATIONS": stations, "UNDULATION": "constant", "UNDULATION_VALUE": 1.0}, None, 5),
    }


@pytest.mark.parametrize(
    "entry", ["designheights", "measurestations", "placestations", "generatestations", "convertheights"]
)
def test_cancel_at_every_question(toolbox, log, often, tmp_path, entry):
    given, second, least = entries(toolbox)[entry]
    outputs = {"OUTPUT": str(tmp_path / "out.gpkg")}
    if second:
        outputs[second] = str(tmp_path / "second.csv")
    number = cancelled_runs(
        toolbox, log, lambda: os.listdir(tmp_path) == [] or pytest.fail("left something"), entry, **given, **outputs
    )
    assert number >= least


@pytest.mark.parametrize("ending", ["gpkg", "geojson", "shp"])
def test_older_output_comes_back(toolbox, log, often, tmp_path, ending):
    stations, axis = toolbox.straight()
    path = str(tmp_path / f"out.{ending}")
    toolbox.run("designheights", STATIONS=stations, AXIS=axis, TOLERANCE=1.0, OUTPUT=path)
    before = {name: (tmp_path / name).read_bytes() for name in os.listdir(tmp_path)}

    def check():
        assert {name: (tmp_path / name).read_bytes() for name in os.listdir(tmp_path)} == before

    assert cancelled_runs(toolbox, log, check, "designheights", STATIONS=stations, AXIS=axis, OUTPUT=path) >= 8


def test_table_beside_others_goes_again(toolbox, log, often, tmp_path):
    from qgis.core import QgsVectorLayer

    stations, axis = toolbox.straight()
    path = tmp_path / "project.gpkg"
    saved = toolbox.saved(stations, path, "stations")

    def check():
        assert not QgsVectorLayer(f"{path}|layername=residuals", "residuals", "ogr").isValid()
        assert len(list(saved.getFeatures())) == 11
        assert not [name for name in os.listdir(tmp_path) if name.endswith(".before")]

    assert (
        cancelled_runs(
            toolbox,
            log,
            check,
            "designheights",
            STATIONS=saved,
            AXIS=axis,
            OUTPUT=f"ogr:dbname='{path}' table=\"residuals\" (geom)",
        )
        >= 8
    )


def test_cancelled_before_it_starts(toolbox, log, tmp_path):
    stations, axis = toolbox.straight()
    feedback = log()
    feedback.cancel()
    assert (
        toolbox.refusal("designheights", feedback, STATIONS=stations, AXIS=axis, OUTPUT=str(tmp_path / "out.gpkg"))
        == CANCELLED
    )
    assert os.listdir(tmp_path) == []
