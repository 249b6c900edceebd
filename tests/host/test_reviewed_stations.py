"""Stations with residuals as report, schedule and docks read them: one set of fields, flags, decisions and matches."""

import pytest


def stations(toolbox, residuals, name="stations", axis="a", **more):
    """Stations every 10 m of one axis with residuals in metres; ``more``: {field: value of each}."""
    rows = [
        {
            "at": (500000.0 + 10 * k, 5540000.0),
            "axis": axis,
            "station": f"0+{10 * k:03d}",
            "chainage": 10.0 * k,
            "design_h": 50.0,
            "residual": value,
            **{key: values[k] for key, values in more.items()},
        }
        for k, value in enumerate(residuals)
    ]
    return toolbox.points(rows, "EPSG:32631", name=name)


def flagged(toolbox, which, number=30, flag="suspected blunder", axis="a"):
    rows = [
        {"axis": axis, "station": str(10 * k), "flag": flag if k in which else "kept", "w": 5.0 if k in which else 0.1}
        for k in range(number)
    ]
    return toolbox.table(rows, "tested")


def report(toolbox, folder, layer, **more):
    run = toolbox.run("reviewreport", OUTPUT=None, STATIONS=layer, HTML=str(folder / "r.html"), **more)
    return run, (folder / "r.html").read_text("utf-8")


def actions(toolbox, layer, **more):
    return toolbox.run("scheduleadjustments", STATIONS=layer, **more).column("action")


@pytest.mark.parametrize("own", [True, False], ids=["flags of their own", "TESTED"])
@pytest.mark.parametrize(
    "signs, moved", [((1, -1, 1), False), ((1, 1, 1), True), ((-1, -1, -1), True), ((1, 1, -1), False)]
)
def test_three_neighbours_on_both_sides_are_no_stretch(toolbox, own, signs, moved):
    residuals = [0.0] * 30
    residuals[10:13] = [0.05 * sign for sign in signs]
    if own:
        more = {"flag": ["suspected blunder" if value else "kept" for value in residuals]}
        layer, given = stations(toolbox, residuals, **more), {}
    else:
        layer, given = stations(toolbox, residuals), {"TESTED": flagged(toolbox, (10, 11, 12))}
    found = actions(toolbox, layer, **given)
    assert (found[10:13] == ["left out"] * 3) != moved and ("left out" in found) != moved


def test_the_same_rule_in_a_fit(toolbox):
    """Three slips of the reading side by side, on both sides, are named one by one; three on one side as a stretch."""

    def fitted(signs):
        points, axis = toolbox.straight(41, 10.0)
        heights = [feature["height"] for feature in points.getFeatures()]
        for k, sign in zip((20, 21, 22), signs):
            heights[k] += 0.05 * sign
        ids = [feature.id() for feature in points.getFeatures()]
        index = points.fields().indexOf("height")
        assert points.dataProvider().changeAttributeValues({i: {index: h} for i, h in zip(ids, heights)})
        return toolbox.run("fitreference", STATIONS=points, AXIS=axis, SIGMA=0.004, REFERENCE="memory:")

    both, one = fitted((1, -1, 1)), fitted((1, 1, 1))
    assert sum("suspected blunder at" in text for text in both.warnings) == 3, both.said
    assert not any("a stretch that has moved" in text for text in both.warnings)
    assert any("3 neighbours from" in text and "a stretch that has moved" in text for text in one.warnings)
    assert not any("suspected blunder at" in text for text in one.warnings)


def test_the_test_of_the_shape_names_a_stretch(toolbox):
    points, axis = toolbox.straight(41)
    ids = [feature.id() for feature in points.getFeatures()]
    index = points.fields().indexOf("height")
    assert points.dataProvider().changeAttributeValues({ids[k]: {index: 50.05} for k in (20, 21, 22)})
    run = toolbox.run("testcurvature", STATIONS=points, AXIS=axis, SIGMA=0.002)
    assert any("3 neighbours from" in text and "a stretch that has moved" in text for text in run.warnings)


@pytest.mark.parametrize("word", ["suspected blunder", "Suspected Blunder", " blunder "])
def test_a_flag_in_any_case_counts_everywhere(toolbox, tmp_path, word):
    from tautline.plugin.review.layer_stations import read_stations

    residuals = [0.0] * 30
    residuals[7] = 0.08
    layer = stations(toolbox, residuals, flag=[word if value else "kept" for value in residuals])
    assert actions(toolbox, layer)[7] == "left out"
    run, text = report(toolbox, tmp_path, layer)
    assert run.results["FLAGGED"] == 1 and "suspected blunder" in text
    found = read_stations(layer)
    assert found.suspected.tolist() == [value > 0 for value in residuals] and found.flagged().tolist() == [7]
    # The other table is read in the same way.
    bare = stations(toolbox, residuals)
    assert actions(toolbox, bare, TESTED=flagged(toolbox, (7,), flag=word))[7] == "left out"


def test_tested_goes_before_the_flags_of_the_stations(toolbox):
    residuals = [0.0] * 30
    residuals[7] = residuals[9] = 0.08
    layer = stations(toolbox, residuals, flag=["blunder" if value else "" for value in residuals])
    found = actions(toolbox, layer, TESTED=flagged(toolbox, (9,)))
    assert found[7] == "lower" and found[9] == "left out"


@pytest.mark.parametrize("entry", ["reviewreport", "scheduleadjustments"])
class TestDecisions:
    """The same words, the same refusals and the same warnings, whoever reads the decisions."""

    def _run(self, toolbox, folder, entry, rows, layer=None, **more):
        layer = layer or stations(toolbox, [0.02, 0.01, 0.0])
        more = {**({"HTML": str(folder / "r.html"), "OUTPUT": None} if entry == "reviewreport" else {}), **more}
        return {"STATIONS": layer, "DECISIONS": toolbox.table(rows, "decisions"), **more}

    def test_an_unknown_word_is_refused(self, toolbox, tmp_path, entry):
        given = self._run(toolbox, tmp_path, entry, [{"axis": "a", "station": "0+010", "decision": "maybe"}])
        text = toolbox.refusal(entry, **given)
        assert text.startswith("Layer 'decisions', field 'decision', row 1: 'maybe' is not known; known are accept, ")

    def test_a_station_of_the_only_axis_needs_none(self, toolbox, tmp_path, entry):
        given = self._run(toolbox, tmp_path, entry, [{"axis": "", "station": "10", "decision": "Keep"}])
        run = toolbox.run(entry, **given)
        assert not any("does not have" in text for text in run.warnings)
        if entry == "reviewreport":
            assert "Accept as it is" in (tmp_path / "r.html").read_text("utf-8")
        else:
            assert run.column("reason")[1] == "decision: accept"

    def test_of_several_axes_one_must_be_named(self, toolbox, tmp_path, entry):
        rows = [
            {"at": (500000.0 + k, 5540000.0), "axis": axis, "station": "0+000", "chainage": 0.0, "residual": 0.01}
            for k, axis in enumerate("ab")
        ]
        layer = toolbox.points(rows, "EPSG:32631")
        given = self._run(toolbox, tmp_path, entry, [{"station": "0+000", "decision": "accept"}], layer)
        assert "station 0+000 is on several axes (a, b); name the axis." in toolbox.refusal(entry, **given)

    def test_the_later_of_two_counts_and_is_told(self, toolbox, tmp_path, entry):
        rows = [{"axis": "a", "station": "0+000", "decision": word} for word in ("accept", "move the support")]
        run = toolbox.run(entry, **self._run(toolbox, tmp_path, entry, rows))
        assert any("two decisions for a 0+000; the later one, 'move the support'" in text for text in run.warnings)

    def test_a_table_without_stations_is_refused(self, toolbox, tmp_path, entry):
        given = self._run(toolbox, tmp_path, entry, [{"axis": "a", "decision": "accept"}])
        assert toolbox.refusal(entry, **given) == "Layer 'decisions' holds no decisions: it lacks the field station."

    def test_tested_stations_that_are_not_there_are_told(self, toolbox, tmp_path, entry):
        given = self._run(toolbox, tmp_path, entry, [{"axis": "a", "station": "0", "decision": ""}])
        run = toolbox.run(entry, **given, TESTED=flagged(toolbox, (), 5))
        assert any("(TESTED) has 2 stations that layer 'stations' does not have" in text for text in run.warnings)


def test_sigma_is_a_name_of_sd_for_report_and_dock(toolbox, tmp_path):
    from tautline.plugin.review.layer_stations import read_stations

    layer = stations(toolbox, [0.0, 0.001, 0.002], sigma=[0.003] * 3)
    _, text = report(toolbox, tmp_path, layer)
    assert "the stations&#x27; field &#x27;sigma&#x27;" in text or "the stations' field 'sigma'" in text.replace(
        "&#39;", "'"
    )
    assert read_stations(layer).heights["sd"].tolist() == [0.003] * 3


def test_chainages_are_read_from_the_stations_where_there_is_no_field(toolbox, tmp_path):
    rows = [
        {"at": (500000.0 + 10 * k, 5540000.0), "axis": "a", "station": f"0+{10 * k:03d}", "residual": 0.001 * k}
        for k in (2, 0, 1)
    ]
    run, text = report(toolbox, tmp_path, toolbox.points(rows, "EPSG:32631"))
    table = text[text.rindex("<table") :]
    assert run.results["COUNT"] == 3
    assert table.index("0+000<") < table.index("0+010<") < table.index("0+020<")
