"""The plugin in the real window; what ``window_script.py`` saw there."""

from collections import Counter

import pytest
from geographiclib.geodesic import Geodesic

MENU = [
    "Open the example",
    "Guided run",
    "Design heights and residuals…",
    "Axis profile",
    "Flagged stations",
    "Guide",
    "How it is computed",
]
LAYERS = [
    "Residuals",
    "Residual bars",
    "Profile strip",
    "Fitted plane",
    "Tangent and level points, 95 % ellipses",
    "Tested stations",
    "Placed stations",
    "Axis",
    "Tolerance band",
    "Summary of residuals",
    "Height list",
    "Imagery",
]
FORM = {
    "STATIONS",
    "AXIS",
    "HEIGHT_FIELD",
    "HEIGHT_UNIT",
    "DESIGN",
    "CHAINAGE_A",
    "HEIGHT_A",
    "CHAINAGE_B",
    "HEIGHT_B",
    "SLOPE",
    "TOLERANCE",
    "OUTPUT",
    "SUMMARY",
}


@pytest.fixture(scope="module")
def seen(drive):
    return drive("window_script.py")


@pytest.fixture(scope="module")
def statuses(expected):
    """Number of stations of each status."""
    return dict(Counter(station["status"] for station in expected))


def test_loads_into_toolbox_and_menu(seen):
    assert seen["before"]["provider"] is False and seen["before"]["menu"] == []
    assert seen["loaded"] is True
    assert seen["menu"] == MENU and seen["menu_has_icon"]
    assert {"tautline:placestations", "tautline:designheights"} <= set(seen["entries"])


@pytest.mark.parametrize("where", ["gave_up_at_place", "gave_up_at_save"])
def test_second_thoughts_leave_the_project_and_no_folder(seen, where):
    found = seen[where]
    assert found["unanswered"] == []
    assert (found["title"], found["dirty"], found["examples"]) == ("of the user", True, [])


def test_failure_is_one_sentence_in_the_message_bar(seen):
    assert len(seen["failed"]["messages"]) == 1
    text = seen["failed"]["messages"][0]
    assert "could not be made in" in text and "a file" in text and "\n" not in text and "Traceback" not in text
    assert seen["failed"]["title"] == "of the user"


def test_example_opens_as_a_project(seen, statuses):
    found = seen["example"]
    assert seen["opened"]["unanswered"] == [] and len(seen["opened"]["asked"]) == 2
    assert (found["group"], found["top"]) == ("Example: range", 1)
    assert [layer["name"].split(" × ")[0] for layer in found["layers"]] == LAYERS
    assert all(layer["valid"] for layer in found["layers"])
    assert [name for name, shown in zip(LAYERS, found["shown"]) if not shown] == ["Tested stations", "Placed stations"]
    assert found["crs"] == "EPSG:32719" and found["units"] and found["ellipsoid"] not in ("", "NONE")
    assert found["all_in_view"] and found["fills_view"]
    assert found["statuses"] == statuses
    assert (found["file"], found["dirty"], found["active"]) == ("range.qgz", False, "Residuals")


def test_example_has_the_residuals_computed_without_the_plugin(seen, expected):
    wanted = {f"{station['axis']} {station['station']}": station["residual"] for station in expected}
    assert seen["example"]["residuals"] == {
        station: None if residual is None else pytest.approx(residual, abs=1e-6) for station, residual in wanted.items()
    }


def test_example_is_styled_from_its_geopackage(seen):
    found = seen["example"]
    assert found["rules"] == [
        "High: above the tolerance",
        "Low: below the tolerance",
        "Within the tolerance",
        "No as-built height",
        "Other",
    ]
    assert found["record"] and found["axis_labelled"] and found["axis_strokes"] == 2


def test_example_says_what_is_seen_in_one_line(seen):
    assert len(seen["example"]["messages"]) == 1
    assert "\u25b2" in seen["example"]["messages"][0] and len(seen["example"]["messages"][0]) < 110


def test_example_ran_through_the_history(seen):
    commands = seen["example"]["history"]
    for entry in (
        "tautline:placestations",
        "tautline:fitreference",
        "tautline:designheights",
        "tautline:drawdeviations",
    ):
        assert sum(entry in command for command in commands) == 1, commands


def test_example_shows_the_plane_and_where_it_is_level(seen):
    """825 m from the hub, computed without the plugin (sample_layers/README.md), within the ellipse of hundreds of
    metres.
    """
    (plane,) = seen["example"]["plane"]
    line = Geodesic.WGS84.Inverse(*seen["example"]["hub"], plane["tan_lat"], plane["tan_lon"])
    assert plane["kind"] == "plane" and line["s12"] == pytest.approx(825.0, abs=120.0)
    assert seen["example"]["ellipses"] == ["level", "tangent"]


def test_example_teaches_with_its_own_figures(seen):
    found = seen["example"]
    assert "Read me first" in found["docks"] and "Axis profile" in found["docks"]
    assert found["curvature"]["Alder 2+600"] == pytest.approx(0.52, abs=0.005) and "0.52 m" in found["guide"]
    assert max((v for v in found["residuals"].items() if v[1]), key=lambda v: abs(v[1]))[0] == "Alder 0+850"
    for words in ("Straight is not level", "0+850", "tangent point", "What to try", "surveyor or engineer decides"):
        assert words in found["guide"] and words in found["read_me"]


def test_map_shows_imagery_and_flagged_stations(seen):
    found = seen["map"]
    assert found["colours"] > 5000
    assert found["white"] < 0.4 * found["pixels"]
    assert found["high"] > 20 and found["low"] > 80


def test_saved_project_opens_elsewhere(seen):
    found = seen["reopened"]
    assert found["read"] and found["inside"] and len(found["layers"]) == len(LAYERS)
    assert all(layer["valid"] for layer in found["layers"])
    assert found["rules"] == seen["example"]["rules"]
    vectors = [layer["source"] for layer in found["layers"] if "|layername=" in layer["source"]]
    assert len(vectors) == 10 and all("range.gpkg|" in source for source in vectors)
    assert not [name for name in found["files"] if name.endswith((".before", ".axis.gpkg"))]


def test_form_shows_what_the_job_needs_and_no_more(seen):
    assert set(seen["form"]["visible"]) == FORM and len(seen["form"]["visible"]) == len(FORM)
    assert seen["form"]["unexplained"] == []


def test_run_from_the_form_gives_the_same_styled_result(seen):
    assert seen["run"]["residuals"] == seen["example"]["residuals"]
    assert seen["run"]["rules"] == seen["example"]["rules"]


def test_unloads_without_leftovers_and_loads_again_twice(seen):
    assert seen["forms_open"] == 2 and len(seen["rounds"]) == 2
    for turn in seen["rounds"]:
        assert turn["unloaded"] and turn["loaded"]
        assert turn["gone"] == {
            "provider": False,
            "menu": [],
            "actions": [],
            "forms": [],
            "messages": [],
            "docks": [],
            "text": "Open the example",
            "modules": [],
        }
        assert turn["menu"] == MENU and turn["entries"] == seen["entries"]


def test_translation_comes_and_goes(seen):
    assert seen["translated"] == ["Das Beispiel öffnen", *MENU[1:]]
    assert seen["after_translation"]["text"] == "Open the example" and seen["after_translation"]["menu"] == []


def test_without_window_there_is_only_the_toolbox(seen):
    assert seen["without_window"] == {"entries": seen["entries"], "menu": []}
    assert seen["without_window_after"] == []


def test_sample_files_stay_as_they_are(seen, originals, sample_digests):
    assert sample_digests == originals
