"""What the test of the line suspects, through the registry: the report, the schedule and the docks' reader know it, and
what is said and done of the heights stays as it is."""

import pathlib
import re

import numpy as np
import pytest

qgis_core = pytest.importorskip("qgis.core")

NUMBER, KNOCKED, SIGMA = 31, 11, 0.003
# A straight line bends up from the level surface by s^2 / 2N along the prime vertical, N at 50 degrees north.
STRAIGHT = (100.0 * (np.arange(NUMBER) - 15.0)) ** 2 / (2 * 6_390_702.0)
# Errors of the stations upwards and sideways, metres; one tripod was knocked.
UP, SIDE = np.random.default_rng(5).normal(0.0, SIGMA, (2, NUMBER))
TESTS = {"SIGMA": SIGMA, "SIGMA_LINE": SIGMA, "LINE": "fitted", "REFERENCE": "memory:"}
PLAN = "suspected blunder in line"


def knocked(*rows, by=0.05):
    side = SIDE.copy()
    side[list(rows)] += by
    return side


@pytest.fixture
def chain(toolbox, tmp_path):
    """A function: placed at offsets, designed and tested by height and line; ({name: place}, the tested run)."""

    def made(side, name="", up=UP, **more):
        place = {key: str(tmp_path / f"{key}{name}.gpkg") for key in ("placed", "designed", "tested")}
        rows = [
            {"station": f"{k // 10}+{k % 10}00", "height": 50.0 + float(STRAIGHT[k] + up[k]), "offset": float(side[k])}
            for k in range(NUMBER)
        ]
        axis = toolbox.lines([{"at": [(500000.0, 5540000.0), (503000.0, 5540000.0)], "name": "wall"}], "EPSG:32631")
        toolbox.run("placestations", INPUT=toolbox.table(rows), AXIS=axis, OUTPUT=place["placed"])
        given = {"STATIONS": place["placed"], "AXIS": axis}
        design = {"TOLERANCE": 0.5, "LINE_TOLERANCE": 0.02, "LINE": "fitted", **more}
        toolbox.run("designheights", OUTPUT=place["designed"], **given, **design)
        return place, toolbox.run("fitreference", OUTPUT=place["tested"], **TESTS, **given)

    return made


def page(run):
    text = pathlib.Path(run.results["HTML"]).read_text("utf-8")
    text = re.sub(r"<(style|svg|script).*?</\1>", " ", text, flags=re.S)
    return " ".join(re.sub(r"<[^>]*>", " ", text).split())


def report(toolbox, folder, place, **more):
    html = str(folder / "report.html")
    return toolbox.run("reviewreport", OUTPUT=None, STATIONS=place["designed"], HTML=html, **more)


def schedule(toolbox, place, **more):
    return toolbox.run("scheduleadjustments", STATIONS=place["designed"], **more)


def without_plan(toolbox, run):
    """The tested stations without what is said of the line."""
    rows = run.rows()
    return toolbox.table([{name: row[name] for name in ("axis", "station", "w", "flag")} for row in rows], "tested")


def names(rows):
    return [f"{k // 10}+{k % 10}00" for k in rows]


# One station suspected in plan alone --------------------------------------------------------------------------------


def test_the_report_lists_it_and_doubts_it_in_line_alone(toolbox, chain, tmp_path):
    place, tested = chain(knocked(KNOCKED))
    assert set(tested.column("flag")) == {"kept"}
    assert [k for k, word in enumerate(tested.column("lat_flag")) if word != "kept"] == [KNOCKED]
    run = report(toolbox, tmp_path, place, TESTED=place["tested"])
    bare = report(toolbox, tmp_path, place, TESTED=without_plan(toolbox, tested))
    # The knocked one is beside the line in either, so that it is listed in both; the reason is the test's.
    assert run.results["FLAGGED"] == bare.results["FLAGGED"] == 1
    again = report(toolbox, tmp_path, place, TESTED=place["tested"])  # the page of the other is overwritten
    w = tested.column("lat_w")[KNOCKED]
    assert f"{PLAN}, w = {'+' if w > 0 else '−'}{abs(w):.1f}" in page(again)
    assert "but doubted (suspected blunders in line, or by decision)" in again.said
    assert (
        "Beyond the tolerance of the line: 1+100" in bare.said and "Beyond the tolerance of the line:" not in again.said
    )
    line = {"LINE_COUNT", "LINE_WITHIN", "LINE_RMS", "LINE_MAX_ABS"}
    heights = [key for key in run.results if key not in {"HTML", *line}]
    assert {key: run.results[key] for key in heights} == {key: bare.results[key] for key in heights}


def test_within_its_tolerance_it_is_listed_all_the_same(toolbox, chain, tmp_path):
    place, tested = chain(knocked(KNOCKED), LINE_TOLERANCE=0.2)
    run = report(toolbox, tmp_path, place, TESTED=place["tested"])
    assert run.results["FLAGGED"] == 1 and PLAN in page(run)
    bare = report(toolbox, tmp_path, place, TESTED=without_plan(toolbox, tested))
    assert bare.results["FLAGGED"] == 0 and PLAN not in page(bare)


def test_the_schedule_holds_it_sideways_alone(toolbox, chain):
    place, tested = chain(knocked(KNOCKED))
    run = schedule(toolbox, place, TESTED=place["tested"], LINE="lateral")
    bare = schedule(toolbox, place, TESTED=without_plan(toolbox, tested), LINE="lateral")
    assert [k for k, word in enumerate(run.column("lat_action")) if word == "set aside"] == [KNOCKED]
    assert run.column("lat_move")[KNOCKED] is None and run.column("lat_reason")[KNOCKED] == f"flag: {PLAN}"
    assert "set aside" not in bare.column("lat_action")
    for name in ("action", "move", "reason"):
        assert run.column(name) == bare.column(name), name
    assert "Line: Set aside: wall 1+100." in run.said and "Set aside" not in bare.said
    untested = "the stations were not tested for lateral blunders"
    assert untested in bare.said and untested not in run.said


def test_a_decision_goes_before_it(toolbox, chain):
    place, _ = chain(knocked(KNOCKED))
    told = toolbox.table([{"axis": "wall", "station": "1+100", "decision": "move the support", "note": ""}])
    run = schedule(toolbox, place, TESTED=place["tested"], LINE="lateral", DECISIONS=told)
    assert run.column("lat_action")[KNOCKED] == "left" and "Set aside" not in run.said


# Stretches, and too many --------------------------------------------------------------------------------------------


def test_neighbours_on_one_side_are_a_stretch_and_are_moved(toolbox, chain):
    """At most a tenth, so that the flags hold: three of 31."""
    place, tested = chain(knocked(10, 11, 12))
    table = toolbox.table(
        [
            {"axis": "wall", "station": name, "flag": "kept", "w": 0.1, "lat_flag": word, "lat_w": w}
            for name, word, w in (
                (name, *(("suspected blunder", 9.0) if k in (10, 11, 12) else ("kept", 0.2)))
                for k, name in enumerate(tested.column("station"))
            )
        ],
        "tested",
    )
    run = schedule(toolbox, place, TESTED=table, LINE="lateral")
    assert [run.column("lat_action")[k] for k in (10, 11, 12)] == ["left"] * 3
    assert any(t.startswith("Line: Axis 'wall': 1+000 to 1+200: 3 neighbours are flagged") for t in run.warnings)


@pytest.mark.parametrize("number, listed", [(3, 3), (4, 0)])
def test_more_than_a_tenth_are_not_taken_for_blunders(toolbox, chain, tmp_path, number, listed):
    """The guard counts the plan's flags by themselves: of 31 tested, three are less than a tenth and four are more."""
    place, tested = chain(SIDE, LINE_TOLERANCE=0.2)
    rows = [2, 9, 17, 24][:number]
    table = toolbox.table(
        [
            {
                "axis": "wall",
                "station": name,
                "flag": "suspected blunder" if k == 5 else "kept",
                "w": 5.0,
                "lat_flag": "suspected blunder" if k in rows else "kept",
                "lat_w": 5.0,
            }
            for k, name in enumerate(tested.column("station"))
        ],
        "tested",
    )
    run = report(toolbox, tmp_path, place, TESTED=table)
    # One in height beside them.
    assert run.results["FLAGGED"] == listed + 1
    text = page(run)
    assert (f"Blunders in line: the test flags {number} of 31 stations." in text) == (listed == 0)
    assert "Blunders: the test flags" not in text
    moves = schedule(toolbox, place, TESTED=table, LINE="lateral")
    held = [k for k, word in enumerate(moves.column("lat_action")) if word == "set aside"]
    # What is doubted in height is not moved sideways either.
    assert held == sorted([5, *rows][: listed + 1]) and moves.column("action").count("left out") == 1


def test_two_rows_of_one_station_and_words_of_others(toolbox, chain):
    """Suspected where one of the two says so; 'blunder' means the same."""
    place, _ = chain(SIDE)
    rows = [("1+000", "blunder"), ("1+000", "kept"), ("1+100", "kept")]
    table = toolbox.table([{"station": name, "flag": "kept", "w": 0.1, "lat_flag": word} for name, word in rows])
    run = schedule(toolbox, place, TESTED=table, LINE="lateral")
    assert [k for k, word in enumerate(run.column("lat_action")) if word == "set aside"] == [10]


# Fields of the stations' own, and the docks ---------------------------------------------------------------------------


def test_own_fields_tell_too(toolbox, chain, tmp_path):
    place, tested = chain(knocked(KNOCKED))
    axis = toolbox.lines([{"at": [(500000.0, 5540000.0), (503000.0, 5540000.0)], "name": "wall"}], "EPSG:32631")
    place["designed"] = str(tmp_path / "again.gpkg")
    toolbox.run("designheights", STATIONS=place["tested"], AXIS=axis, LINE="fitted", OUTPUT=place["designed"])
    run = schedule(toolbox, place, LINE="lateral")
    assert run.column("lat_action")[KNOCKED] == "set aside" and set(run.column("action")) <= {"raise", "lower", "keep"}
    assert PLAN in page(report(toolbox, tmp_path, place))


def test_the_docks_take_it_from_a_tested_layer_in_the_project(toolbox, chain):
    from tautline.plugin.review.layer_stations import read_stations, stations_again
    from tautline.plugin.review.station_texts import doubt_in_line, station_story, why_flagged

    place, tested = chain(knocked(KNOCKED), LINE_TOLERANCE=0.2)
    layer = qgis_core.QgsVectorLayer(place["designed"], "designed")
    before = read_stations(layer)
    assert not before.line_suspected.any() and not len(before.flagged())
    project, found = qgis_core.QgsProject.instance(), tested.layer()
    project.addMapLayers([found])
    try:
        read = read_stations(layer)
        assert np.flatnonzero(read.line_suspected).tolist() == read.flagged().tolist() == [KNOCKED]
        assert not read.suspected.any() and not read.line_moved.any()
        assert read.lat_w[KNOCKED] == pytest.approx(tested.column("lat_w")[KNOCKED])
        told = doubt_in_line(read, KNOCKED)
        why = why_flagged(read.status[KNOCKED], read.flag[KNOCKED], False, read.side[KNOCKED], told)
        assert (told, why) == (PLAN, "Suspected blunder in line") and PLAN in station_story(read, KNOCKED)
        assert doubt_in_line(read, 3) == "" and PLAN not in station_story(read, 3)
        part = stations_again(read, layer, {int(read.ids[KNOCKED])})
        assert np.flatnonzero(part.line_suspected).tolist() == [KNOCKED]
    finally:
        project.removeMapLayers([found.id()])
    # The tested layer itself is shown by what it says.
    assert np.flatnonzero(read_stations(tested.layer()).line_suspected).tolist() == [KNOCKED]


@pytest.mark.parametrize("number, listed", [(3, 3), (4, 0)])
def test_the_docks_list_what_the_report_lists(toolbox, number, listed):
    """More than a tenth flagged is another shape and no blunders, in height and in line each; with or without w."""
    from tautline.plugin.review.layer_stations import read_stations

    rows = [2, 9, 17, 24][:number]
    for values in ({"w": 5.0, "lat_w": 5.0}, {}):
        layer = toolbox.points(
            [
                {
                    "at": (500000.0 + 100.0 * k, 5540000.0),
                    "axis": "wall",
                    "station": f"{k // 10}+{k % 10}00",
                    "chainage": 100.0 * k,
                    "residual": float(UP[k]),
                    "lateral": float(SIDE[k]),
                    "side": "within",
                    "flag": "suspected blunder" if k == 5 else "kept",
                    "lat_flag": "suspected blunder" if k in rows else "kept",
                    **values,
                }
                for k in range(NUMBER)
            ],
            "EPSG:32631",
        )
        read = read_stations(layer)
        assert np.flatnonzero(read.suspected).tolist() == [5]
        assert np.flatnonzero(read.line_suspected).tolist() == rows[:listed]
        assert sorted(read.flagged().tolist()) == sorted([5, *rows[:listed]])


def test_a_later_test_of_the_heights_hides_nothing_of_the_line(toolbox, chain, tmp_path):
    from tautline.plugin.review.layer_stations import read_stations

    place, tested = chain(knocked(KNOCKED))
    axis = toolbox.lines([{"at": [(500000.0, 5540000.0), (503000.0, 5540000.0)], "name": "wall"}], "EPSG:32631")
    heights = {"STATIONS": place["placed"], "AXIS": axis, "OUTPUT": str(tmp_path / "heights.gpkg")}
    later = toolbox.run("fitreference", SIGMA=SIGMA, REFERENCE="memory:", **heights)
    layers = [tested.layer(), later.layer()]
    project = qgis_core.QgsProject.instance()
    for layer in layers:
        project.addMapLayer(layer)
    try:
        read = read_stations(qgis_core.QgsVectorLayer(place["designed"], "designed"))
        assert np.flatnonzero(read.line_suspected).tolist() == [KNOCKED]
    finally:
        project.removeMapLayers([layer.id() for layer in layers])


@pytest.mark.parametrize(
    "given, words",
    [
        (("high", "kept", False, "right", PLAN), "Too high, suspected blunder in line"),
        (("high", "suspected blunder", True, "", "stretch that moved in line"), "Stretch that moved, stretch that"),
        (("within", "kept", False, "left", ""), "Left of the line"),
        (("within", "kept"), "Within now"),
    ],
)
def test_why_a_station_is_in_the_list(given, words):
    from tautline.plugin.review.station_texts import why_flagged

    assert why_flagged(*given).startswith(words)
