"""For everybody, in the real window: every field has a name and is reached by the Tab key, no letter is taken twice,
and everything works by keys."""

import pytest


@pytest.fixture(scope="module")
def seen(drive):
    return drive("access_script.py")


def test_every_window_was_walked(seen):
    assert {
        "tautline_guided_run",
        "tautline_flagged",
        "tautline_profile",
        "tautline_example_guide",
        "TypedList",
    } == set(seen["windows"])
    least = {"tautline_guided_run": 30, "tautline_flagged": 10, "tautline_profile": 20, "TypedList": 10}
    for name, number in least.items():
        assert seen["windows"][name]["count"] >= number, name


def test_every_field_has_a_name(seen):
    assert {name: one["nameless"] for name, one in seen["windows"].items() if one["nameless"]} == {}
    assert all(one["title"] for one in seen["windows"].values())
    assert all(text for text in seen["chart"]) and "Space" in seen["chart"][1]


def test_every_field_is_reached_by_tab(seen):
    assert {name: one["not by Tab"] for name, one in seen["windows"].items() if one["not by Tab"]} == {}


def test_tab_goes_from_top_to_bottom(seen):
    """Never up to a field that ends above where the one before begins, within one column."""
    for name, one in seen["windows"].items():
        back = [
            (before[3], after[3])
            for before, after in zip(one["chain"], one["chain"][1:])
            if after[4] == before[4] and after[0] + after[2] <= before[0] and after[1] <= before[1]
        ]
        assert back == [], name
        assert len(one["chain"]) > 1


def test_no_letter_is_taken_twice(seen, application):
    """Panels stand in the host's window, whose menus have most letters, others in each language: they have none. A
    window of its own has each letter once, and so has each menu."""
    assert len(seen["host"]) > 8
    for name, one in seen["windows"].items():
        letters = [letter for letter, _ in one["mnemonics"]]
        if name == "TypedList":
            assert len(letters) == len(set(letters)) > 5, one["mnemonics"]
        else:
            assert letters == [], (name, one["mnemonics"])
    assert len(seen["menus"]) >= 3
    assert all(len(letters) == len(set(letters)) for letters in seen["menus"]), seen["menus"]


def test_everything_works_by_keys(seen):
    found = seen["by keys"]
    assert found["second"] == 1 and found["selected"] != [] and len(found["selected"]) == 1
    number, current, count = found["two selected"]
    assert number == 2 and current == count - 1 and found["ten back"] == count - 11 and found["zoomed"]
    assert found["trying"] and found["follows"] and found["points"] == [2, True] and found["left"]
    assert found["table"] == [1, 1] and found["listed"]
    assert found["designs"] == ["chord", "tangent", "inclined", "reference", "level", "grade"]


def test_what_is_typed_can_be_read_in_both_themes(seen, application):
    assert {theme for theme, _, _ in seen["contrast"]} == {"default", "Night Mapping"} and len(seen["contrast"]) > 16
    assert [one for one in seen["contrast"] if one[2] < 4.5] == []
