"""Room on small screens, what the docks remember, and the slide they make, in the real window at 100 % and 200 %."""

import pytest


@pytest.fixture(scope="module")
def seen(drive):
    return drive("room_script.py")


@pytest.fixture(scope="module")
def doubled(drive):
    return drive("room_script.py", scale=2)


def test_no_dock_needs_600_pixels_at_200_percent(doubled):
    found = doubled["room"]
    print(found, doubled["bare"])
    assert doubled["ratio"] == 2.0 and {"tautline_flagged", "tautline_profile"} <= set(found["docks"])
    for name, least in found["least"].items():
        assert least * 2 <= 600, name


def test_the_window_with_all_docks_fits_1280_by_800_at_200_percent(doubled):
    wide, high, _, least = doubled["room"]["window"]
    assert least <= 400 and high <= 400, "what is asked of the window is what it gets"


def test_docks_on_the_right_are_tabs(seen, doubled):
    for found in (seen, doubled):
        assert "tautline_guided_run" in found["room"]["tabbed"]


def test_six_flagged_stations_in_sight(seen):
    found = seen["room"]
    print(found)
    assert found["listed"] >= 6 and found["rows"] >= 6 and found["list_in_sight"]


def test_the_chart_stays_large_enough_to_be_read(seen, doubled):
    assert seen["room"]["chart"][1] >= 250
    assert doubled["room"]["chart"][1] >= 180


def test_the_slide_is_made_in_the_background(seen):
    found = seen["slide"]
    assert "tautline_save_slide" in found["actions"] and found["imagery"] == "Imagery" and found["axis"] == "Alder"
    assert found["in the background"] and "The slide is saved as" in found["told"]
    assert found["size"][0] >= 1920 and found["size"][0] * 9 == found["size"][1] * 16
    assert "SLIDE" in found["refused"]


def test_a_project_that_is_opened_again_shows_the_layer_it_showed(seen):
    found = seen["reopened"]
    assert found["none"] and found["shown"] == ["The second result"] * 2
    assert found["opened later"] == "The second result"
    assert found["clean"] and found["still clean"], "looking at a layer is no change of the project"
