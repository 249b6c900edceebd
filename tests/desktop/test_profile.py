"""Profile and flagged stations in the real window; what ``profile_script.py`` saw there."""

import pytest


@pytest.fixture(scope="module")
def seen(drive):
    return drive("profile_script.py")


@pytest.fixture(scope="module")
def worst(expected):
    """(axis station, residual) out of tolerance, the greatest first, as computed without the plugin."""
    flagged = [(f"{s['axis']} {s['station']}", s["residual"]) for s in expected if s["status"] in ("high", "low")]
    return sorted(flagged, key=lambda item: -abs(item[1]))


def millimetres(residual):
    return f"{residual * 1000:+.1f} mm".replace("-", "\u2212")


def test_charts_are_loaded_when_first_asked_for(seen):
    assert seen["loaded"] and not seen["charts_after_loading"]


def test_empty_project_says_what_to_do(seen):
    found = seen["empty"]
    assert found["docks"] == ["tautline_flagged", "tautline_profile"] and found["page"] == 1 and found["list"] == 1
    assert all("Design heights and residuals" in found[text] for text in ("text", "list_text"))


def test_profile_follows_the_active_layer_and_ignores_others(seen):
    assert seen["stays"] is True
    found = seen["opened"]
    assert found["layers"] == ["Residuals"] and found["axes"] == ["Alder", "Birch", "Cedar"] and found["page"] == 0


def test_chart_explains_itself(seen, expected, worst):
    found = seen["opened"]
    assert found["stations"] == sum(station["axis"] == "Alder" for station in expected)
    assert found["legend"] == [
        "As-built ± 1 standard deviation",
        "Design",
        "Design with no curvature",
        "Level surface",
        "Tolerance ± 10.0 mm",
        "Too high",
        "Too low",
        "No as-built height",
    ]
    # sample_layers/README.md: at 2+600 the design is 0.52 m above the design with no curvature.
    assert "at 2+600 it lies 523.4 mm above the design with no curvature" in found["sentence"]
    assert {"0+000", "0+500", "2+000"} <= set(found["ticks"]) and found["shared"]
    assert found["titles"] == ["Height above the level surface (m)", "Residual (mm)"] and found["bars"] == 1
    assert found["labels"][0].startswith(f"0+850  {millimetres(worst[0][1])}")
    assert (
        f"exaggerated {found['factor']:.0f} times" in found["sentence"]
        and found["factor_text"] == f"× {found['factor']:.0f}"
    )


def test_pointing_in_the_chart_marks_the_map_and_back(seen):
    assert seen["hover"]["place"] and seen["hover"]["distance"] == pytest.approx(0.0, abs=1e-6)
    assert "Alder 1+650" in seen["hover"]["story"] and seen["hover"]["selected"] == []
    assert seen["hover_gone"] is True
    assert seen["map_hover"]["place"] and "Alder 1+650" in seen["map_hover"]["story"]


def test_selecting_in_the_chart(seen):
    found = seen["pick"]
    assert found["click"] == [["Alder 1+650"], "Alder 1+650"]
    assert found["more"] == ["Alder 1+650", "Alder 1+700"]
    assert found["upper"] == ["Alder 0+200"]
    assert found["box"] == ["Alder 1+600", "Alder 1+650", "Alder 1+700"]
    assert found["nothing"] == [] and found["panned"] < -20.0


def test_selecting_in_the_map_shows_the_axis_and_zooms(seen):
    found = seen["pick"]
    assert found["from_map"] == {"axis": "Birch", "rings": ["1+100", "1+150", "1+200"], "lines": True}
    before, after, inside = found["zoomed"]
    assert after < before / 3 and inside


def test_two_ways_of_looking(seen):
    """One view flattens the level surface, the other the design; the curves differ by the same in both."""
    found = seen["straight"]
    assert found["level_heights"]["level"] == 0.0 and found["level_heights"]["design"] > 0.2
    assert found["heights"]["design"] == 0.0 and found["heights"]["level"] == pytest.approx(
        found["level_heights"]["design"], abs=1e-9
    )
    assert found["heights"]["flat"] == pytest.approx(0.5234, abs=1e-4)
    assert (
        "level surface, where water would stand, is the curve" in found["sentence"]
        and found["title"] == "Height from the design (m)"
    )


def test_exaggeration_and_ranges(seen):
    assert seen["scaled"]["factor"] == pytest.approx(10**2.5, rel=1e-6) and seen["scaled"]["same_x"]
    assert seen["scaled"]["text"] == "× 316"
    kept = seen["kept"]
    assert kept["x"] == [1000.0, 2000.0] and kept["r"] == kept["limits"] == [-30.0, 30.0]
    assert kept["field"] == 30.0 and kept["panel"]
    assert seen["typed"] == [-30.0, 45.0]
    assert seen["whole"] == pytest.approx([-52.0, 2652.0], abs=1e-3)


def test_keyboard(seen):
    found = seen["keys"]
    assert [found[key] for key in ("home", "right", "right again", "left", "end")] == [
        f"Alder {station}" for station in ("0+000", "0+050", "0+100", "0+050", "2+600")
    ]
    assert found["closer"] == pytest.approx(0.8)
    assert found["tab"] == [
        "Layer",
        "Axis",
        "View",
        "Exaggeration",
        "Show all",
        "Zoom map",
        "Ranges",
        "Table",
        "Export",
        "Profile chart",
    ]


@pytest.mark.parametrize("kind, first", [("png", "\x89PNG"), ("svg", "<?xml"), ("pdf", "%PDF")])
def test_exported_files(seen, kind, first):
    size, start = seen["export"][kind]
    assert size > 10000 and start.startswith(first)


def test_export_copies_and_failure(seen, expected):
    found = seen["export"]
    assert found["svg_text"] and found["copied"] == 2200
    assert (
        "nowhere" in found["failed"] and "could not be saved" in found["failed"] and "Traceback" not in found["failed"]
    )
    along = [station for station in expected if station["axis"] == "Alder"]
    assert len(found["table"]) == len(along) + 1
    header, rows = found["table"][0].split("\t"), [line.split("\t") for line in found["table"][1:]]
    assert header[:3] == ["Station (m)", "Residual (mm)", "Status"]
    for station, row in zip(along, rows):
        residual = "" if station["residual"] is None else millimetres(station["residual"]).replace(" mm", "")
        assert row[0] == station["station"]
        # Half a last digit may fall either way.
        assert row[1] == residual or abs(float(row[1].replace("\u2212", "-")) - 1000 * station["residual"]) < 0.0501


def test_table_is_linked(seen):
    assert seen["export"]["table_shown"] == 53
    assert seen["export"]["by_table"] == [["Alder 0+150"], "Alder 0+150"]


def test_chart_follows_edits_of_the_layer(seen):
    assert seen["edited"] == 25.0


def test_flagged_stations_worst_first(seen, worst):
    assert [(row[0], row[1]) for row in seen["decide"]["list"]] == [
        (name, millimetres(residual)) for name, residual in worst
    ]
    assert {row[2] for row in seen["decide"]["list"]} == {"Too high", "Too low"} and all(
        row[3] == "" for row in seen["decide"]["list"]
    )


def test_decisions_by_key_are_kept_in_their_own_file(seen):
    found = seen["decide"]
    assert found["before"] is False and found["first"] == "Alder 0+850"
    assert found["second"] == ["Birch 1+150", "Birch", ["Birch 1+150"], True]
    (axis, station, chainage, decision, note, by, at), second = found["kept"]
    assert (axis, station, decision, note) == ("Alder", "0+850", "reading error", "slip of 0.1 m in the field book")
    assert chainage == pytest.approx(850.0, abs=0.01) and by and at.count(":") >= 2 and "T" in at
    assert second[:2] == ["Birch", "1+150"] and second[3] == "measure again"


def test_undo_and_redo(seen):
    found = seen["decide"]
    assert [row[3] for row in found["undone"]] == ["reading error"]
    assert [row[3] for row in found["redone"]] == ["reading error", "measure again"]
    assert found["all_undone"] == [[], False, False]
    assert found["back"] == ["Alder 0+850", "slip of 0.1 m in the field book", "5 stations, 2 decided", True]
    assert found["open"] == [row[0] for row in found["list"][2:]]


def test_run_again_after_an_edit(seen):
    """The slip of 0.1 m is corrected; the station is within now, and what was decided about it is still listed."""
    found = seen["again"]
    assert (
        found["refused"]["unanswered"] == []
        and "not saved" in found["refused"]["asked"][0]
        and found["not_run"] == ["Too high"]
    )
    assert found["second_thoughts"]["unanswered"] == [] and found["still_not_run"] == ["Too high"]
    assert found["question"]["unanswered"] == [] and found["layer"]
    asked = found["question"]["asked"][1]
    assert "It writes over:" in asked and "residuals.gpkg" in asked and "It reads: " in asked
    rows = {row[0]: row[2:] for row in found["list"]}
    assert rows["Alder 0+850"] == ["Within now", "Reading error"] and rows["Birch 1+150"] == [
        "Too low",
        "Measure again",
    ]
    assert len(rows) == 5 and "run again" in found["messages"][0]


def test_a_foreign_record_is_never_run(seen):
    """A layer of a stranger whose record names an entry of others and a path."""
    found = seen["again"]
    assert len(found["foreign"]) == 1 and "'native:savefeatures', which is not a Tautline entry" in found["foreign"][0]
    assert not found["foreign_wrote"]


def test_no_run_touches_the_decisions(seen):
    found = seen["again"]
    assert found["same_file"] and found["same_after_toolbox"]
    assert found["found_again"] == {"Alder 0+850": "Reading error", "Birch 1+150": "Measure again"}


def test_place_is_asked_for_where_there_is_none(seen):
    found = seen["places"]
    assert "asked where to keep" in found["place_text"]
    assert found["gave_up"]["decided"] == [] and len(found["gave_up"]["asked"]) == 1
    assert found["memory"]["unanswered"] == [] and [row[3] for row in found["memory"]["kept"]] == ["accept"]
    assert found["memory"]["property"].endswith("elsewhere.gpkg")


def test_place_is_asked_for_where_it_cannot_be_written(seen):
    found = seen["places"]["taken"]
    assert found["unanswered"] == [] and "residuals_decisions.gpkg" in found["asked"][0]
    assert [row[3] for row in found["kept"]] == ["move the support"]


def test_layer_removed_while_open(seen):
    assert seen["removed"] == {"shown": True, "subject": True, "profile": 1, "list": 1, "mark": None}


def test_feet_and_a_design_without_curve(seen):
    found = seen["feet"]
    assert found["titles"] == ["Height above the level surface (ft)", "Residual (ft)"] and "13+00" in found["ticks"]
    assert "shows no curve" in found["sentence"] and "Design with no curvature" not in found["legend"]
    assert found["tolerance"] == pytest.approx(0.03 * 0.3048) and found["range"] == pytest.approx([1189.0, 1761.0])
    assert found["list"] == "All stations with an as-built height are within the tolerance; no blunder is suspected."


def test_layer_of_a_fit_shows_residuals_alone(seen):
    found = seen["fit"]
    assert found["upper"] is False and found["views"] is False and "only the residuals" in found["sentence"]
    assert found["list"] == [["4+000", "+200.0 mm", "Suspected blunder", ""]]
    assert found["labels"] == ["4+000  +200.0 mm \u2191"]


def test_many_stations(seen):
    """Drawn thinned, picked exactly. The seconds are told, not judged."""
    found = seen["many"]
    print("\n100,000 stations, seconds:", found["seconds"])
    assert found["picked"] == 54321 and found["selected"] == 1
    assert found["drawn"] < 7000 and found["whole"] == 603
    assert found["list"][0][1] == "+90.0 mm"


def test_colours_follow_the_theme(seen):
    assert seen["theme"] == ["#ffffff", "#202020", "#eeeeee"]


def test_unloads_without_leftovers_and_loads_again(seen):
    assert len(seen["rounds"]) == 2
    for turn in seen["rounds"]:
        assert turn == {
            "unloaded": True,
            "docks": [],
            "all_docks": [],
            "marks": 0,
            "modules": [],
            "again": ["tautline_flagged", "tautline_profile"],
        }


def test_follow_up_forms_open_filled(seen):
    found = seen["follow_up_forms"]
    forms = {entry: form["values"] for entry, form in found["forms"].items()}
    assert set(forms) == {
        "tautline:reviewreport",
        "tautline:scheduleadjustments",
        "tautline:comparesurveys",
        "tautline:drawdeviations",
    }
    for entry in ("tautline:reviewreport", "tautline:scheduleadjustments", "tautline:drawdeviations"):
        assert forms[entry]["STATIONS"] == found["layer"]
    # The placed stations, as the guide has it; the older host's list of layers gives their files.
    surveys = forms["tautline:comparesurveys"]["SURVEYS"]
    assert found["stations"] in surveys or "stations.gpkg" in surveys
    assert forms["tautline:drawdeviations"]["AXIS"].endswith("axis.gpkg|layername=axis")
    for entry in ("tautline:reviewreport", "tautline:scheduleadjustments"):
        assert "residuals_decisions.gpkg" in forms[entry]["DECISIONS"]
    assert found["open"] == 0
