"""A corrected height in the real window, until all that rests on it agrees; what ``stale_script.py`` saw there."""

import pytest


@pytest.fixture(scope="module")
def seen(drive):
    return drive("stale_script.py")


def test_nothing_is_old_after_a_run(seen):
    assert seen["fresh"] == "" and seen["end_line"] == ""


def test_a_corrected_height_names_the_layers_that_are_older(seen):
    line = seen["line"]
    assert "'Residuals'" in line and "'Tested stations'" in line and "older than 'Placed stations'" in line
    assert "older than 'Residuals'" in line
    assert set(seen["shown"].values()) == {True} and len(seen["shown"]) == 3
    assert {"Residuals", "Tested stations"} <= set(seen["marked"]) and "Placed stations" not in seen["marked"]


def test_brought_up_to_date_all_agree(seen):
    renewed = seen["renewed"]
    assert renewed["unanswered"] == [] and "It writes over:" in renewed["asked"][0]
    assert len(renewed["told"]) == 1 and "Brought up to date: " in renewed["told"][0]
    assert seen["after_line"] == "" and seen["same_layers"]
    assert abs(seen["before"][0]) > 0.1 > abs(seen["after"][0]) and abs(seen["before"][1]) > 4 > abs(seen["after"][1])
    assert len(seen["panel"]) == 1 and "brought up to date since" in seen["panel"][0]
    assert seen["flag"] == "kept" and seen["dock"] == pytest.approx(seen["after"][0], abs=1e-9)


def test_hand_edits_are_asked_about_by_the_guided_run(seen):
    assert [len(one["asked"]) for one in seen["asked"]] == [1, 1, 1]
    assert "edited by hand" in seen["asked"][0]["asked"][0] and all(not one["unanswered"] for one in seen["asked"])
    assert seen["kept"] == [True, True] and seen["anew"] and seen["unasked"] == []


def test_a_cancelled_run_leaves_what_the_run_before_has_told(seen):
    assert seen["cancelled"] == [["wait", "Cancelled; no output was written."]]


def test_points_moved_by_hand_are_told_in_docks_and_layer_tree(seen):
    moved, back = seen["moved"], seen["moved_back"]
    assert " Layer 'Residuals': 1 point was moved or added since its run, the first in row " in moved["line"]
    # What was drawn from the layer can be drawn anew; the layer itself is no step of that.
    assert "'Measure chainage and offset'" in moved["line"] and "older than 'Residuals'." in moved["line"]
    assert "'Residuals' older" not in moved["line"] and moved["button"] and moved["marked"] == ["Residuals"]
    assert back == {"line": "", "short": "", "button": False, "marked": []}


def test_a_layer_edited_by_hand_is_kept_and_said_so(seen):
    (told,) = seen["skipped"]["told"]
    assert "'Residuals' was edited by hand and is kept as it is" in told and "Brought up to date: " in told
    assert seen["edit_kept"] == 0.5


def test_what_cannot_run_for_want_of_its_input_says_so(seen):
    (told,) = seen["gone"]["told"]
    assert "axis" in told and "Brought up to date: " not in told
