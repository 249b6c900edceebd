"""Which recorded runs are run again after a change, and in which order; what was written, and whether it was edited."""

import pytest

qgis_core = pytest.importorskip("qgis.core")

from tautline.algorithms.core.input_record import InputRecord  # noqa: E402
from tautline.algorithms.entry.recorded_chain import MadeLayer, recorded_chain, stale_line  # noqa: E402
from tautline.algorithms.entry.run_record import RunRecord  # noqa: E402
from tautline.algorithms.entry.written_rows import rows_reading  # noqa: E402


def made(name, entry, inputs, *, changed=(), edited=False, parameters=None):
    record = RunRecord(
        f"tautline:{entry}",
        parameters or {"of": entry},
        inputs={key: (InputRecord(f"/p/a.gpkg|layername={source}"),) for key, source in inputs.items()},
    )
    return MadeLayer(name, name, f"/p/a.gpkg|layername={name}", record, tuple(changed), edited)


def chain_of(stations_changed=(), list_changed=(), edited=False):
    return [
        made("bars", "drawdeviations", {"STATIONS": "residuals", "AXIS": "axis"}),
        made("strip", "drawdeviations", {"STATIONS": "residuals", "AXIS": "axis"}),
        made("residuals", "designheights", {"STATIONS": "stations"}, changed=stations_changed),
        made("tested", "fitreference", {"STATIONS": "stations"}, changed=stations_changed),
        made("stations", "placestations", {"INPUT": "list"}, changed=list_changed, edited=edited),
    ]


def names(steps):
    return [[layer.name for layer in step.layers] for step in steps]


def test_nothing_changed_is_no_step():
    assert recorded_chain(chain_of()) == [] and stale_line([]) == ""


def test_from_the_first_layer_that_changed_in_order():
    steps = recorded_chain(chain_of(stations_changed=["stations"]))
    assert names(steps) == [["residuals"], ["bars", "strip"], ["tested"]]
    assert [step.causes for step in steps] == [("stations",), ("residuals",), ("stations",)]
    assert stale_line(steps) == (
        "Out of date: 'residuals', 'tested' older than 'stations'; 'bars', 'strip' older than 'residuals'."
    )


def test_a_changed_list_comes_first_and_tells_of_hand_edits():
    steps = recorded_chain(chain_of(list_changed=["list"], edited=True))
    assert names(steps)[0] == ["stations"] and len(steps) == 4
    assert [layer.name for layer in steps[0].edited] == ["stations"]
    assert names(steps).index(["residuals"]) < names(steps).index(["bars", "strip"])


def test_a_ring_of_a_damaged_record_ends():
    ring = [made("a", "one", {"X": "b"}, changed=["z"]), made("b", "two", {"X": "a"})]
    assert ["a"] in names(recorded_chain(ring))


@pytest.fixture
def placed(toolbox, tmp_path):
    _, axis = toolbox.straight()
    axis = toolbox.saved(axis, tmp_path / "axis.gpkg")
    rows = [{"station": f"0+{k}00", "height": 50.0 + 0.001 * k, "note": "x"} for k in range(1, 10)]
    rows = toolbox.saved(toolbox.table(rows), tmp_path / "list.gpkg")
    path = str(tmp_path / "placed.gpkg")
    return toolbox.run("placestations", INPUT=rows, AXIS=axis, OUTPUT=path).layer(), axis


def record_of(layer):
    return RunRecord.read(layer.customProperty("tautline/record"))


def test_what_was_written_is_recorded_and_an_edit_by_hand_is_known(placed, toolbox):
    layer, _ = placed
    record = record_of(layer)
    assert record.output == "OUTPUT" and record.written.rows == 9 and len(record.written.hash) == 32
    context = qgis_core.QgsProcessingContext()
    assert rows_reading(layer, context).hash == record.written.hash
    index = layer.fields().indexOf("note")
    first = next(layer.getFeatures())
    assert layer.dataProvider().changeAttributeValues({first.id(): {index: "edited"}})
    assert rows_reading(layer, context).hash != record.written.hash, "any column counts"


def test_of_a_trial_the_rows_are_not_read_again(toolbox, tmp_path):
    from tautline.algorithms.entry.trial_runs import is_trial, mark_as_trial
    from tautline.tests.host.conftest import Log

    _, axis = toolbox.straight()
    rows = toolbox.table([{"station": f"0+{k}00", "height": 50.0} for k in range(1, 10)])
    feedback, found = Log(), []
    assert not is_trial(feedback)
    for name in ("kept", "trial"):
        given = {"INPUT": rows, "AXIS": axis, "OUTPUT": str(tmp_path / f"{name}.gpkg")}
        found.append(record_of(toolbox.run("placestations", feedback, **given).layer()))
        mark_as_trial(feedback)
    assert is_trial(feedback) and [one.entry for one in found] == ["tautline:placestations"] * 2
    assert found[0].written.rows == 9 and found[1].written is None


def test_every_entry_with_a_result_as_input_says_it_is_older(placed, toolbox, tmp_path):
    layer, axis = placed
    residuals = str(tmp_path / "residuals.gpkg")
    toolbox.run("designheights", STATIONS=layer, AXIS=axis, TOLERANCE=0.01, OUTPUT=residuals)
    first = next(layer.getFeatures())
    assert layer.dataProvider().changeAttributeValues({first.id(): {layer.fields().indexOf("height"): 51.0}})
    for entry, parameters in (
        ("drawdeviations", {"STATIONS": residuals, "AXIS": axis, "BARS": "memory:", "OUTPUT": None}),
        ("comparesurveys", {"SURVEYS": [residuals, residuals]}),
    ):
        try:
            warnings = toolbox.run(entry, **parameters).warnings
        except qgis_core.QgsProcessingException:
            continue
        assert any("older than what it was made from" in text for text in warnings), entry


def test_the_report_never_says_two_things_of_one_station(placed, toolbox, tmp_path):
    """The reported sequence: corrected, residuals made anew, the test is still of the old height."""
    layer, axis = placed
    height = layer.fields().indexOf("height")
    fifth = list(layer.getFeatures())[4]
    assert layer.dataProvider().changeAttributeValues({fifth.id(): {height: 50.155}})
    tested, residuals = str(tmp_path / "tested.gpkg"), str(tmp_path / "residuals.gpkg")
    toolbox.run("fitreference", STATIONS=layer, AXIS=axis, SIGMA=0.003, REFERENCE="memory:", OUTPUT=tested)
    assert layer.dataProvider().changeAttributeValues({fifth.id(): {height: 50.005}})
    toolbox.run("designheights", STATIONS=layer, AXIS=axis, TOLERANCE=0.05, OUTPUT=residuals)
    page = str(tmp_path / "report.html")
    run = toolbox.run("reviewreport", STATIONS=residuals, TESTED=tested, HTML=page, OUTPUT=None)
    text = open(page, encoding="utf-8").read()
    assert "suspected blunder" not in text.split("Terms and signs")[0]
    assert "tested' (TESTED) is older than what it was made from" in text.replace("&#39;", "'")
    assert "were not made from the same heights" in text
    assert any("TESTED" in one and "older than" in one for one in run.warnings)
    toolbox.run("fitreference", STATIONS=layer, AXIS=axis, SIGMA=0.003, REFERENCE="memory:", OUTPUT=tested)
    toolbox.run("reviewreport", STATIONS=residuals, TESTED=tested, HTML=page, OUTPUT=None)
    text = open(page, encoding="utf-8").read()
    assert "is older than" not in text and "not made from the same heights" not in text
