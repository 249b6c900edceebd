"""The line in the real window, from the guided run's question to the docks; what ``line_script.py`` saw there.

Where the stations stand is laid out by the script along a meridian: 14.0 mm left at 0+300, 11.0, 12.0 and 10.0 mm right
at 0+750 to 0+850, 18.0 mm high at 1+000, all else within 1 mm of line and design.
"""

import pytest

OF_HEIGHTS = ["Station", "Residual", "Why", "Decision"]


@pytest.fixture(scope="module")
def seen(drive):
    return drive("line_script.py")


def test_the_line_is_asked_about_where_it_can_be_judged(seen):
    assert seen["asked_of_heights"] == [False, False]
    assert seen["asked_of_positions"] == [True, False] and seen["asked_then"] == [True, True]
    can_run, why = seen["unreadable"]
    assert not can_run and "'none' is not a number" in why


def test_the_run_tells_a_verdict_of_its_own_and_draws_the_line(seen):
    told = [text for _, text in seen["outcome"]]
    assert told[0].startswith("Wall was not built to its design within the tolerance of ±10.0 mm: 30 of 31 stations")
    assert told[1].startswith("Wall is not in line within the tolerance of ±8.0 mm: 27 of 31 stations")
    assert told[2].startswith("0+750 to 0+850 stand right together, 3 stations by up to 12.0 mm") and len(told) == 3
    names = [name.split(" ×")[0] for name in seen["layers"]]
    assert names[:4] == ["Lateral bars", "Residual bars", "Residuals", "Plan strip"]


def test_the_third_chart_is_off_until_it_is_asked_for(seen):
    off, on = seen["off"], seen["on"]
    assert (off["button"], off["on"], off["chart"], off["range"]) == (True, False, False, False)
    assert (on["on"], on["chart"], on["range"]) == (True, True, True)
    assert off["xlabels"] == ["Station on wall", ""] and on["xlabels"] == ["", "Station on wall"]
    assert on["legend"] == [*off["legend"], "Lateral departure", "Beyond its tolerance ± 8.0 mm"]


def test_the_chart_is_a_plan(seen):
    found = seen["chart"]
    assert found["title"] == "Line, seen from above (mm)" and found["shared"] and found["down"] == "True"
    assert found["ticks"] == ["5 left", "0", "12.5 right"]
    upper, lower, line, top_of_lower = found["apart"]
    assert line < lower < top_of_lower < upper


def test_the_chart_is_linked_by_mouse_and_keyboard(seen):
    there, story, marked = seen["hover"]
    assert there and marked and "14.0 mm left of the line, beyond its tolerance" in story
    assert seen["picked"] == [["0+300"], "0+300"] and seen["boxed"] == ["0+750", "0+800", "0+850"]
    assert seen["stepped"] == "0+350"
    share, others_stay, around_pointer = seen["wheel"]
    assert share == pytest.approx(0.8) and others_stay and around_pointer == "True" and seen["whole"]


def test_flagged_stations_show_sides_and_are_decided_on(seen):
    assert [row[:4] for row in seen["flagged"]] == [
        ["1+000", "+18.0 mm", "1.0 mm left", "Too high"],
        ["0+300", "0.0 mm", "14.0 mm left", "Left of the line"],
        ["0+800", "+0.4 mm", "12.0 mm right", "Right of the line"],
        ["0+750", "0.0 mm", "11.0 mm right", "Right of the line"],
        ["0+850", "+0.8 mm", "10.0 mm right", "Right of the line"],
    ]
    assert "too high, 1.0 mm left of the line, within its tolerance" in seen["story"]
    assert seen["decided"] == ["1+000", ["move the support"], 1]


def test_a_station_suspected_in_plan_says_so(seen):
    assert ["0+300", "Suspected blunder in line"] in seen["tested"]
    assert sum("suspected" in why.lower() for _, why in seen["tested"]) == 1 and len(seen["tested"]) == 5
    assert seen["tested_legend"] == [*seen["on"]["legend"], "Suspected blunder in line"]


def test_the_chart_is_saved_with_the_line_and_remembered(seen):
    assert seen["exported"] == [True, True]
    assert seen["remembered"] == {"button": True, "on": True, "chart": True}


def test_whoever_has_heights_only_sees_nothing_of_it(seen):
    found = seen["heights_only"]
    assert (found["button"], found["chart"], found["range"]) == (False, False, False)
    assert found["list"] == OF_HEIGHTS and found["legend"] == seen["off"]["legend"]
    assert found["table"] == [title for title in seen["off"]["table"] if title not in ("Lateral (mm)", "Side")]
    assert "line" not in seen["heights_story"]
