"""A height list typed and pasted in the real window; what ``typed_script.py`` saw there."""

import math

import pytest

NUMBER = 21
# The heights of the script, less the 148.2 m of its level design: nothing of the plugin's own arithmetic.
WAVE = [round(148.2 + 0.002 * math.sin(k), 4) - 148.2 for k in range(NUMBER)]


@pytest.fixture(scope="module")
def seen(drive):
    return drive("typed_script.py")


def sentences(found):
    return " ".join(text for _, text in found)


def test_enter_goes_from_station_to_height_to_the_next_line(seen):
    assert [line[0] for line in seen["typed"]] == [f"0+{50 * k:03d}" for k in range(6)]
    assert seen["typed"][0] == ["0+000", "148.2000", "", ""] and seen["clean"] == {}


def test_each_doubt_stands_beside_its_line(seen):
    told = seen["doubts"]
    assert told["7"][0] == "doubt" and "Digits exchanged? 148.2001 m would fit" in told["7"][1]
    assert "out of order" in told["7"][1] and "The same station as in row 6" in told["8"][1]
    assert told["10"][0] == "problem" and "'abc' is not a station" in told["10"][1]
    assert "1 row cannot be placed" in sentences(seen["doubts_outcome"])


def test_lines_are_inserted_deleted_cleared_and_all_of_it_undone(seen):
    assert seen["undo"] == [True, 1, 1, ["0+300", "", "", ""]]
    assert seen["copied"] == ["0+000", "148.2000", "", ""] and seen["emptied"] == []


def test_a_pasted_table_is_understood_by_its_headings(seen):
    found = seen["feet"]
    assert found["lines"][1] == ["0+50", f"{(148.2 + 0.002 * math.sin(1)) / 0.3048:.4f}", "", "sheet 1"]
    assert found["unit"] == "foot" and found["told"] == {}
    assert "height: Elev (ft)" in sentences(found["notes"]) and "left out: Clerk" in sentences(found["notes"])


def test_the_list_is_a_table_of_the_geopackage_and_the_answer_of_the_panel(seen):
    assert seen["kept"] == ["ogr", "results.gpkg|layername=typed_list", NUMBER, False]
    settings = seen["feet"]["settings"]
    assert (settings["station_field"], settings["height_field"]) == ("station", "height")
    assert (settings["height_unit"], settings["offset_field"]) == ("foot", "offset")


def test_residuals_in_feet_are_those_of_the_typed_heights(seen):
    found = seen["feet"]["residuals"]
    assert list(found) == [f"pier {k // 2}+{50 * (k % 2):02d}" for k in range(NUMBER)]
    wanted = [round((148.2 + 0.002 * math.sin(k)) / 0.3048, 4) - 148.2 / 0.3048 for k in range(NUMBER)]
    assert [value or 0.0 for value in found.values()] == pytest.approx(wanted, abs=1e-6)


def test_second_typing_is_blind_and_its_differences_stand_side_by_side(seen):
    assert seen["blind"] == {"lines": [], "shown": True}
    wave = [f"{148.2 + 0.002 * math.sin(k):.4f}" for k in range(NUMBER)]
    assert [row[1] for row in seen["differences"]] == ["height", "height", "whole row"]
    assert seen["differences"][0][2:] == [wave[3].replace(".", ","), wave[3].replace("148", "184")]
    assert seen["differences"][2][3] == "no such row" and seen["take_closed"]
    assert "18 rows agree" in sentences(seen["compared"])


def test_every_choice_is_carried_out(seen):
    assert seen["choices"] == ["first", ["148,201"], "first"]
    assert len(seen["taken"]) == NUMBER and seen["taken"][5][1] == "148,201" and seen["taken"][9][0] == "450"


def test_residuals_in_metres_follow_the_edited_list(seen):
    found = [value or 0.0 for value in seen["metres_residuals"].values()]
    wanted = list(WAVE)
    wanted[5] = 0.001
    assert found == pytest.approx(wanted, abs=1e-6)
    assert seen["metres_settings"]["height_unit"] == "metre" and seen["one_layer"] == [1, NUMBER]


def test_after_reopening_the_list_is_there(seen):
    assert seen["after_reopening"][0] == NUMBER and seen["after_reopening"][1][0] == "150" and not seen["left"]


def test_bad_inputs_are_told_in_a_sentence_and_nothing_is_lost(seen):
    assert seen["nothing"][0] and "no row with a reading" in sentences(seen["nothing"][1])
    assert "decimal comma or a group of thousands" in sentences(seen["open_sign"][1])
    assert "no text to paste" in sentences(seen["blank_paste"])
    assert "'y' is not a number" in seen["letters"][0]["1"][1] and "left out: 5" in sentences(seen["letters"][1])
    assert seen["long"][0] and "longer than the 254 letters" in sentences(seen["long"][1])
    assert len(seen["asked"]) == 1 and "Discard what was typed" in seen["asked"][0]


def test_many_rows_are_checked_as_few_are(seen):
    assert seen["many"] == [20_001, {}]
    assert list(seen["many_doubt"]) == ["10001"] and seen["many_kept"] == "typed_list_2"


@pytest.mark.parametrize("key, unit, per", [("feet", "ft", 0.3048), ("metres", "m", 1.0)])
def test_from_the_typed_list_to_sheet_report_and_slide(seen, key, unit, per):
    """The unit that the list was typed in is that of every paper, by the forms as the menu fills them."""
    found = seen["feet"]["papers"] if key == "feet" else seen["metres_papers"]
    residuals = seen["feet"]["residuals"] if key == "feet" else seen["metres_residuals"]
    assert found["unit"] == unit and f"move_{unit}" in found["sheet"][0] and f"station_{unit}" in found["sheet"][0]
    assert found["moves"] == pytest.approx([-(value or 0.0) for value in residuals.values()], abs=1e-9)
    assert max(map(abs, found["moves"])) * per == pytest.approx(0.002, abs=2e-4)
    assert found["slide"] > 100_000
