"""The guided run in the real window; what ``guided_script.py`` saw there."""

import json
import re

import pytest

ENTRIES = ["placestations", "designheights", "fitreference", "testcurvature", "drawdeviations"]


@pytest.fixture(scope="module")
def guided(drive):
    return drive("guided_script.py")


def sentences(found):
    return " ".join(text for _, text in found)


def entries(commands):
    return [re.search(r"tautline:(\w+)", command)[1] for command in commands if "tautline:" in command]


def test_panel_opens_and_asks_for_what_is_missing(guided):
    found = guided["empty"]
    assert guided["dock"] == "Guided run" and not found["can_run"]
    assert "Alder (2.60 km), Birch (1.90 km), Cedar (1.30 km)" in sentences(found["structure"])
    assert "Choose a layer or open a file" in sentences(found["heights"])
    # What is still to be done has no green tick.
    assert [kind for kind, _ in found["heights"]] == ["todo"]
    assert found["why"] == found["tip"] == "To run, choose the heights."


def test_says_at_once_what_it_understood_of_the_list(guided, expected):
    found, text = guided["list"], sentences(guided["list"]["heights"])
    assert found["can_run"] and found["beside"] == {}
    assert f"{len(expected)} stations on 3 axes" in text and "heights from 3742.5741 to 3742.9118 m" in text
    for words in (
        "53 stations from 0+000 to 2+600, usually every 50 m",
        "over 2.60 km, as those of a straight line would",
        "over 1.90 km, as those of a straight line would",
        "no height at 2+300",
        "no height at 0+700",
        "heights that do not fit the others: 0+850",
        "heights that do not fit the others: 1+150",
        "Columns: station from field 'station', offset from field 'offset', height from field 'height'",
    ):
        assert words in text, words
    assert "states the design itself (inclined)" in sentences(found["design"])
    shown = guided["list_placeholders"]
    assert shown.pop("tolerance") == "from the axis layer" and set(shown.values()) == {""}


def test_finds_the_columns_of_the_list_by_itself(guided):
    found = guided["list_settings"]
    columns = {
        "station": "station",
        "height": "height",
        "offset": "offset",
        "axis_name": "axis",
        "undulation": "undulation",
    }
    assert {key: found[f"{key}_field"] for key in columns} == columns
    assert (found["undulation"], found["height_unit"], found["design"]) == ("field", "metre", "chord")


def test_tab_key_reaches_every_answer(guided):
    assert guided["tabs"]["missed"] == [] and guided["tabs"]["reached"] > 15


def test_run_from_the_list_has_the_residuals_computed_without_the_plugin(guided, expected):
    wanted = {f"{s['axis']} {s['station']}": s["residual"] for s in expected}
    assert guided["list_residuals"] == {
        station: None if residual is None else pytest.approx(residual, abs=1e-6) for station, residual in wanted.items()
    }
    within = sum(s["status"] == "within" for s in expected)
    number = sum(s["residual"] is not None for s in expected)
    first = guided["list_run"]["outcome"][0][1]
    assert f"within the tolerance of ±10.0 mm: {within} of {number} stations with a height are within it." in first
    assert first.startswith("Structure of Alder, Birch, Cedar was not built to its design")
    assert not [text for kind, text in guided["list_run"]["outcome"] if kind == "problem"]


def test_verdicts_stand_first_each_with_what_to_do(guided):
    """Residuals, shape, fit and its test, blunders against stretches; the panel shows them from the top."""
    told = [text for _, text in guided["list_run"]["outcome"]]
    order = ["was not built to its design"]
    order += [f"Axis '{name}' is straight in space" for name in ("Alder", "Birch", "Cedar")]
    order += ["Line 'Alder': 48 stations", "Line 'Birch': 38 stations", "Line 'Cedar': 26 stations"]
    order += ["3 neighbours from 1+600 to 1+700"]
    order += ["suspected blunder at 0+850", "suspected blunder at 1+150"]
    assert [next(k for k, text in enumerate(told) if words in text) for words in order] == list(range(len(order)))
    assert all("\n→ " in text for text in told[: len(order)])
    assert "global test passed" in told[4] and "lie low" in told[7] and guided["list_scrolled"] == 0


def test_axes_are_fitted_alone_unless_said_to_share_a_plane(guided):
    assert guided["plane_asked"]["hint"].startswith("The axes meet: do they share one plane?")
    assert guided["plane_asked"]["box"] is False
    assert guided["list_fits"] == [["line", name] for name in ("Alder", "Birch", "Cedar")]
    assert guided["plane_fits"] == [["plane", "Alder; Birch; Cedar"]]
    assert any("Plane 'common plane'" in text for _, text in guided["plane_run"]["outcome"])
    assert guided["apart_hint"].startswith("The axes do not all meet")
    assert guided["apart_fits"] == [["line", "north beam"], ["line", "south beam"]]


def test_failed_global_test_and_moved_stretch_are_not_hidden(guided):
    """13 neighbours are one stretch, one reading is a blunder; the heights agree better than the 2 mm stated."""
    told = [text for _, text in guided["apart"]["outcome"]]
    assert any("13 neighbours from 0+450 to 0+810 of 'north beam' lie low" in text for text in told)
    assert sum("suspected blunder at" in text for text in told) == 1
    failed = [text for text in told if "global test failed" in text]
    assert len(failed) == 2 and all("agree better than stated" in text for text in failed)
    assert any("'north beam' bends on average like a straight line" in text for text in told)


def test_answer_to_reference_holds_references_only_and_never_chooses_by_itself(guided):
    wanted = {"there": ["", "Reference"], "chosen": ""}
    assert guided["references"] == guided["references_after"] == wanted


def test_result_of_earlier_answers_says_so(guided):
    assert guided["older"] == [False, True]


def test_layers_that_come_later_are_proposed_points_with_z_too(guided):
    assert not guided["later_before"]["can_run"]
    assert guided["later_chosen"] == ["line", "points"] and guided["later"]["can_run"]
    assert "21 stations on 1 axis, heights from 5.0000 to 5.0200 m" in sentences(guided["later"]["heights"])
    assert guided["later_kept"] == "points" and guided["later_gone"] == ""


def test_panel_fits_a_small_screen(guided):
    """600 pixels at 200 % are 300 of the window's own."""
    assert guided["least_height"] <= 300


def test_window_lives_while_it_runs(guided):
    """The panel came back from starting the run with its cancel button shown and the answers closed."""
    for run in ("list_run", "points_run"):
        assert guided[run]["during"] == {"cancel": True, "answers": False}


def test_results_are_one_group_of_styled_layers_in_the_geopackage(guided):
    ((name, layers),) = guided["list_groups"].items()
    assert name == "Guided run: heights"
    assert [table for _, _, table in layers] == [
        "bars",
        "residuals",
        "strip",
        "band",
        "tested_stations",
        "reference",
        "ellipses",
        "stations",
        "summary",
        "curvature",
    ]
    assert [table for _, shown, table in layers if not shown] == ["tested_stations", "stations"]
    assert guided["list_style"][0] == "High: above the tolerance" and guided["list_record"] == "tautline:designheights"
    assert guided["in_view"] and guided["profile"]


def test_what_it_ran_is_in_the_history_and_what_it_looked_at_is_not(guided):
    assert sorted(entries(guided["list_history"])) == sorted(ENTRIES)
    assert guided["points_commands"] == 1 and sorted(entries(guided["points_history"])) == sorted(
        3 * ENTRIES + ["designheights"]
    )


def test_second_run_replaces_the_layers_of_the_first(guided):
    assert guided["again_groups"] == guided["list_groups"] and guided["again_layers"] == 0
    assert guided["again"]["outcome"] == guided["list_run"]["outcome"]


def test_answers_are_kept_in_the_project(guided):
    assert guided["kept"]["closed"] == 6
    assert guided["new_project"]["heights"] == guided["new_project"]["sigma"] == guided["new_project"]["place"] == ""
    assert not guided["new_project"]["can_run"] and not guided["new_project"]["offered"]
    assert guided["kept"]["offered"] == "Residuals"
    kept = guided["kept"]
    assert kept["settings"] == kept["wanted"] and kept["settings"]["sigma"] == "0,003" and kept["settings"]["fit"]
    assert kept["can_run"] and not kept["dirty"]


def test_points_without_a_line_layer_get_an_axis_from_the_first_to_the_last(guided):
    assert "have the axis drawn" in sentences(guided["points_before"]["structure"])
    assert "1 axis: axis, 2.60 km" in sentences(guided["points"]["structure"]) and guided["points"]["can_run"]
    begin, _end = guided["points_axis"]
    assert guided["points_ends"] == [begin]
    assert [table for _, _, table in guided["points_groups"]["Guided run: points"]] == ["memory"] * 3


def test_points_in_feet_are_understood_by_their_column(guided):
    found, text = guided["points_settings"], sentences(guided["points"]["heights"])
    assert (found["height_field"], found["height_unit"], found["drawn"]) == ("elev_ft", "foot", True)
    # 3742.574 m and 2,600 m, measured at the median height, in international feet of 0.3048 m (NIST).
    assert "heights from 12278.786" in text and "From 0+00 to 85+30" in text and "every 164 ft" in text
    assert guided["points_placeholders"]["chainage_a"] == "0+00" and guided["points_placeholders"]["height_a"].endswith(
        " ft"
    )


def test_chord_through_plain_points_begins_and_ends_at_zero(guided):
    values = guided["points_values"]
    assert values["number"] == 53 and values["first"][1] == pytest.approx(0.0, abs=1e-6)
    assert values["last"] == pytest.approx([2600.0 / 0.3048, 0.0], abs=0.2)
    # The built-in slip of 0.1 m is what stands out.
    assert "tolerance of ±0.060 ft: 50 of 52 stations" in sentences(guided["points_run"]["outcome"])


def test_looks_again_when_the_points_are_edited(guided):
    assert "to 99999.000 ft" in sentences(guided["points_edited"]["heights"])


@pytest.mark.parametrize(
    ("case", "field", "words"),
    [
        ("no_station", "station_field", "has no field 'station' or 'chainage'"),
        ("no_height", "height_field", "has no column of heights"),
        ("feet", "chainage_unit", "they may be in feet"),
        ("no_number", "height_a", "'abc' is not a number"),
        ("no_notation", "chainage_a", "'12+5' is not a station"),
        ("no_folder", "place", "There is no folder"),
        ("no_file", "heights", "cannot be read as a table or layer"),
    ],
)
def test_problem_stands_beside_its_field(guided, case, field, words):
    assert list(guided["wrong"][case]["beside"]) == [field]
    assert words in guided["wrong"][case]["beside"][field]


@pytest.mark.parametrize(
    ("case", "why"),
    [
        ("no_slope", "To run, give ‘Slope’."),
        ("no_reference", "To run, give ‘Reference layer’."),
        ("no_number", "To run, put right what is marked at ‘Height at A’."),
        ("no_notation", "To run, put right what is marked at ‘Station A’."),
        ("no_height", "To run, put right what is marked at ‘Height’."),
        ("far", "To run, put right what is marked under ‘Heights’."),
        ("line_gone", "To run, choose the axis layer or have the axis drawn."),
    ],
)
def test_closed_button_says_why(guided, case, why):
    found = guided["wrong"][case]
    assert not found["can_run"] and found["why"] == found["tip"] == why


@pytest.mark.parametrize(
    ("case", "question", "words"),
    [
        ("text_heights", "heights", "row 2: The height 'x' is not a number"),
        ("one_bad_row", "heights", "row 4: 'here' is not a station"),
        ("far", "heights", "farther than 100 m from every axis"),
        ("drawn_from_list", "structure", "A list has no places"),
        ("line_gone", "structure", "Choose the line layer"),
        ("cancelled", "outcome", "Cancelled; no output was written"),
    ],
)
def test_other_problems_stand_below_their_question(guided, case, question, words):
    assert words in sentences(guided["wrong"][case][question])


def test_headings_and_remarks_in_a_list_are_no_warnings(guided):
    found = guided["wrong"]["remarks"]
    assert found["can_run"] and "3 stations on 1 axis" in sentences(found["heights"])
    assert "3 rows are no reading" in sentences(found["heights"])
    # The one doubt is about the line, which the projection draws a little short.
    assert [text[:28] for kind, text in found["heights"] if kind != "fact"] == ["Axis 'line': 1 row lies beyo"]


def test_what_cannot_run_is_not_run_and_nothing_is_left(guided):
    wrong = guided["wrong"]
    assert not any(
        wrong[case]["can_run"] for case in ("no_station", "no_height", "drawn_from_list", "far", "line_gone")
    )
    assert wrong["left"] == [] and wrong["left_by_cancel"] == 0


def test_sentences_have_no_names_of_parameters(guided):
    """What the person reads is in the panel's words."""
    told = json.dumps([guided["wrong"], guided["list_run"], guided["points_run"]], ensure_ascii=False)
    assert re.findall(r"\b[A-Z]+_[A-Z_]+\b|\bchain_[ab]\b|ROBUST|Traceback|scratch", told) == []


def test_example_leads_into_the_guided_run(guided):
    assert guided["in_example"]["can_run"] and "3 axes" in sentences(guided["in_example"]["structure"])
    assert guided["in_example_settings"]["heights"].startswith("Placed_stations")
    assert guided["in_example_settings"]["place"].endswith("tautline_results.gpkg")


def test_new_project_takes_what_was_said_of_the_example_away(guided):
    assert len(guided["example_said"]) == 1 and guided["said_after_new_project"] == []


def test_unloads_without_leftovers_while_a_run_goes_on(guided):
    assert [turn["going"] for turn in guided["rounds"]] == [True, False]
    for turn in guided["rounds"]:
        assert turn["unloaded"] and turn["docks"] == [] and turn["modules"] == [] and turn["again"]


def test_no_question_of_the_host_stood_in_the_way(guided):
    assert guided["asked"] == []


def test_sample_files_stay_as_they_are(guided, originals, sample_digests):
    assert sample_digests == originals
