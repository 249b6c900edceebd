"""Each of the plugin's windows in a plain window, without the host's application; what ``plain_script.py`` saw there.

The other tests of this folder run so too where the host has no application.
"""

import importlib.util

import pytest

FORMS = {
    "tautline:reviewreport": "Write the review report",
    "tautline:scheduleadjustments": "Schedule adjustments",
    "tautline:comparesurveys": "Compare surveys",
    "tautline:drawdeviations": "Draw deviations on the map",
}


@pytest.fixture(scope="module")
def seen(drive_plain):
    if importlib.util.find_spec("qgis._gui") is None:
        pytest.skip("this host was built without its window library")
    return drive_plain("plain_script.py")


def test_the_window_is_plain_and_shows_the_example(seen):
    assert seen["kind"] == "PlainInterface" and seen["asked"]["unanswered"] == []
    assert seen["layers"] == 12
    assert len(seen["flagged"]["messages"]) == 1 and "Read me first" in seen["flagged"]["messages"][0]


def test_docks_and_forms_open(seen):
    assert seen["docks"] == ["tautline_example_guide", "tautline_flagged", "tautline_guided_run", "tautline_profile"]
    assert seen["flagged"]["listed"] == 6 and seen["what_if"]
    # Newer hosts put the entry's group before its title.
    assert {entry: title.split(" - ")[-1] for entry, title in seen["forms"].items()} == FORMS


def test_guided_run_and_typed_list(seen):
    assert [kind for kind, _ in seen["guided"]] == ["doubt", "doubt"] and "112 of 117" in seen["guided"][0][1]
    assert [kind for kind, _ in seen["typed"]] == ["problem"] and "'here'" in seen["typed"][0][1]
    assert len(seen["given_up"]["asked"]) == 1 and seen["given_up"]["unanswered"] == []


def test_guide_and_slide(seen):
    assert seen["pages"] == ["index.html", "method.html"]
    assert seen["slide"] == [True, True] and len(seen["told"]) == 1


def test_nothing_is_left(seen):
    assert seen["unloaded"] and seen["left"] == []
