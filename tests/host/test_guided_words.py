"""What the guided run says of a result, and why it cannot begin; the rules, without a window."""

from types import SimpleNamespace

import numpy as np
import pytest

pytest.importorskip("qgis.gui")

from tautline.algorithms.core.errors import InputError  # noqa: E402 - needs the host
from tautline.algorithms.entry import messages as m  # noqa: E402
from tautline.algorithms.language.height_text import amounts_for  # noqa: E402
from tautline.algorithms.report.sentences import moved_sentences  # noqa: E402
from tautline.plugin.guided import needed, requests, verdicts  # noqa: E402
from tautline.plugin.guided.settings import Settings  # noqa: E402
from tautline.plugin.guided.understanding import AxisKnown, Understood  # noqa: E402


def fit(name, side=""):
    code = m.GLOBAL_TEST_FAILED if side else m.FIT_FOUND
    return m.Message(m.DOUBT if side else m.FACT, code, f"Line '{name}': ...", (), (name, side) if side else (name,))


def suspect(name, station):
    return m.Message(m.DOUBT, m.SUSPECTED_BLUNDER, f"at {station}", (), (name, name, station, "+50.0 mm"))


def stretch(name, first, last):
    text = f"13 neighbours from {first} to {last} of '{name}' lie low"
    return m.Message(m.DOUBT, m.STRETCH_MOVED, text, (), (name, name, first, last))


def test_every_failed_global_test_is_told_however_many_there_are():
    said = [fit(f"ok {k}") for k in range(50)] + [fit(f"rough {k}", "above") for k in range(40)] + [fit("f", "below")]
    told = verdicts.of_fits(said)
    assert [kind for kind, _ in told] == ["doubt", "doubt", "fact"]
    assert told[0][1].startswith("The global test failed in 40 fits") and all(
        f"rough {k}" in told[0][1] for k in range(40)
    )
    assert told[1][1] == "Line 'f': ...\n→ The heights agree better than stated: check the accuracy stated."
    assert (
        told[2][1].startswith("50 fits pass the global test, or were not tested: ok 0, ok 1,") and "ok 49" in told[2][1]
    )


def test_suspects_of_a_fit_are_one_sentence_that_names_all():
    said = [suspect("north", f"0+{k:03d}") for k in range(100, 130)] + [suspect("east", "1+150")]
    told = verdicts.of_blunders(said)
    assert len(told) == 2 and told[0][1].startswith("'north': 30 suspected blunders: 0+100 of 'north' (+50.0 mm), ")
    assert all(f"0+{k:03d}" in told[0][1] for k in range(100, 130)) and told[1][1].startswith("at 1+150")


def test_stretches_come_before_blunders_and_many_are_grouped():
    few = [suspect("north", "0+100"), stretch("north", "0+450", "0+810")]
    assert [text.split("\n")[0] for _, text in verdicts.of_blunders(few)] == [
        "13 neighbours from 0+450 to 0+810 of 'north' lie low",
        "at 0+100",
    ]
    many = [stretch("north", f"{k}+000", f"{k}+200") for k in range(7)]
    ((kind, text),) = verdicts.of_blunders(many)
    assert kind == "doubt" and text.startswith("7 stretches seem to have moved") and "6+000 to 6+200 of 'north'" in text


def test_what_the_shape_test_sets_aside_is_told_where_no_fit_tells_it():
    aside = m.Message(m.DOUBT, m.SET_ASIDE, "set aside: 0+100", (), ("north",))
    assert [text for _, text in verdicts.of_blunders([aside])] == ["set aside: 0+100"]
    assert verdicts.of_blunders([fit("north"), aside]) == []


@pytest.mark.parametrize(
    ("verdict", "design", "kind", "to_do"),
    [
        ("straight", "chord", "fact", "Nothing"),
        ("straight", "level", "doubt", "ask which of the two was meant"),
        ("level", "grade", "fact", "Nothing"),
        ("level", "tangent", "doubt", "ask which of the two was meant"),
        ("neither", "chord", "doubt", "Check unit"),
        ("undecided", "chord", "doubt", "Do not call it straight or level"),
        ("straight on average", "chord", "doubt", "a stretch may have moved"),
    ],
)
def test_verdict_on_the_shape_against_the_design(verdict, design, kind, to_do):
    row = {"axis": "north", "verdict": verdict, "sentence": "The shape."}
    ((found, text),) = verdicts.of_shapes([row], {"north": design, "": None})
    assert found == kind and text.startswith("The shape.\n→ ") and to_do in text


def test_shape_of_an_axis_without_a_known_design_is_not_compared():
    row = {"axis": "north, leg 1", "verdict": "level", "sentence": "The shape."}
    assert verdicts.of_shapes([row], {"north": "chord", "": None}) == [("fact", "The shape.")]


def test_many_shapes_are_one_sentence_for_each_verdict():
    rows = [{"axis": f"a{k}", "verdict": "straight", "sentence": "S."} for k in range(20)]
    rows += [{"axis": "b", "verdict": "level", "sentence": "Axis 'b' follows the level surface."}]
    told = verdicts.of_shapes(rows, {"": "chord"})
    assert len(told) == 2 and told[0][1].startswith("20 axes or legs are straight in space: a0, a1,")
    assert told[1] == ("doubt", told[1][1]) and told[1][1].startswith("Axis 'b' follows")


def test_every_verdict_on_shapes_has_words_for_many():
    from tautline.algorithms.core.curvature import SHAPE_VERDICTS

    for verdict in SHAPE_VERDICTS:
        rows = [{"axis": f"a{k}", "verdict": verdict, "sentence": "S."} for k in range(6)]
        ((_, text),) = verdicts.of_shapes(rows, {"": "chord"})
        assert "6 axes or legs" in text and "a5" in text


# --- why there is no run


def understood(**more):
    return Understood(**{"ready": True, "axes": [AxisKnown("north", 100.0, "", None)], **more})


@pytest.mark.parametrize(
    ("settings", "found", "why"),
    [
        ({"axis": ""}, {}, "choose the axis layer"),
        ({"heights": ""}, {}, "choose the heights"),
        ({}, {"busy": True}, "Looking"),
        ({}, {"ready": False, "beside": {"height_field": "?"}}, "‘Height’"),
        ({}, {"ready": False, "structure": [("problem", "?")]}, "‘Structure’"),
        ({"design": "inclined"}, {}, "give ‘Slope’"),
        ({"design": "reference"}, {}, "give ‘Reference layer’"),
        ({"undulation": "constant"}, {}, "give ‘Undulation’"),
        ({"undulation": "field"}, {}, "give ‘Undulation’"),
        ({"tolerance": "ten"}, {}, "‘Tolerance’"),
        ({"chainage_b": "12+5"}, {}, "‘Station B’"),
        ({"sigma": "1,234"}, {}, "‘Accuracy of a height’"),
    ],
)
def test_a_run_stays_closed_and_says_why(settings, found, why):
    assert why in needed.why_not(Settings(**{"axis": "a", "heights": "h", **settings}), understood(**found))


@pytest.mark.parametrize(
    "settings",
    [
        {},
        {"axis": "", "drawn": True},
        {"design": "inclined", "slope": "0,003"},
        {"design": "level", "chainage_b": "nonsense of another design"},
        {"tolerance": "0,01", "chainage_a": "0+000", "chainage_b": "1+250,5"},
    ],
)
def test_a_run_is_open_where_nothing_that_counts_is_missing(settings):
    assert needed.why_not(Settings(**{"axis": "a", "heights": "h", **settings}), understood()) == ""


def test_designs_of_the_axis_layer_need_no_answers_on_the_design():
    stated = understood(axes=[AxisKnown("north", 100.0, "inclined", None)])
    assert needed.why_not(Settings(axis="a", heights="h", design="inclined", height_a="x"), stated) == ""
    some = understood(axes=[AxisKnown("n", 1.0, "inclined", None), AxisKnown("e", 1.0, "", None)])
    assert "Slope" in needed.why_not(Settings(axis="a", heights="h", design="inclined"), some)


# --- what is typed


@pytest.mark.parametrize(
    ("name", "text", "value"),
    [
        ("height_a", "1104,25", 1104.25),
        ("tolerance", "0.01", 0.01),
        ("slope", "\u22120,003", -0.003),
        ("chainage_a", "1+250,5", "1+250.5"),
        ("chainage_a", "12+50", "12+50"),
        ("chainage_b", "1250,5", "1250.5"),
        ("chainage_b", "", None),
    ],
)
def test_typed_answers(name, text, value):
    assert requests.read_answer(Settings(**{name: text}), name) == value


def test_a_comma_that_could_be_either_is_the_user_s_own(monkeypatch):
    from qgis.PyQt.QtCore import QLocale

    before = QLocale()
    try:
        QLocale.setDefault(QLocale("de_DE"))
        assert requests.read_answer(Settings(height_a="1,234"), "height_a") == 1.234
        QLocale.setDefault(QLocale("en_US"))
        with pytest.raises(InputError, match="decimal comma or a group"):
            requests.read_answer(Settings(height_a="1,234"), "height_a")
    finally:
        QLocale.setDefault(before)


def test_typed_numbers_reach_the_entries_as_numbers():
    settings = Settings(design="chord", chainage_a="0+010,5", height_a="5,25", tolerance="0,01", sigma="0,003")
    given = requests.comparing(settings, "stations", "axis", placed=True)
    assert (given["CHAINAGE_A"], given["HEIGHT_A"], given["TOLERANCE"]) == ("0+010.5", 5.25, 0.01)
    assert requests.fitting(settings, "s", "a", True, True)["FIT"] == "line"
    shared = Settings(one_plane=True)
    assert requests.fitting(shared, "s", "a", True, True)["FIT"] == "plane"
    assert requests.fitting(shared, "s", "a", True, False)["FIT"] == "line"


# --- stretches of the report, which the panel tells too


def stretches_found(number, size=13):
    """Findings with ``number`` stretches of ``size`` stations that lie 12 to 30 mm low, 30 m apart."""
    total = number * size
    residual = -np.linspace(0.012, 0.030, total)
    station = [f"0+{30 * k % 1000:03d}" for k in range(total)]
    reviewed = SimpleNamespace(
        residual=residual,
        status=np.array(["low"] * total),
        axis=["north"] * total,
        named=lambda row, alone=False: station[row],
    )
    parts = [np.arange(k * size, (k + 1) * size) for k in range(number)]
    return SimpleNamespace(
        reviewed=reviewed,
        moved=parts,
        amounts=amounts_for("metre"),
        verdict=SimpleNamespace(kind="nothing to judge", judged=np.zeros(0, bool)),
    )


def test_a_stretch_is_one_sentence_with_its_number_of_stations():
    (text,) = moved_sentences(stretches_found(1))
    assert text.startswith("0+000 to 0+360 lie low together, 13 stations by up to 30.0 mm: ")


def test_many_stretches_are_one_sentence_and_none_is_cut():
    (text,) = moved_sentences(stretches_found(9, 3))
    assert text.startswith("9 stretches have moved: ") and text.count("lie low together") == 9
    assert len(moved_sentences(stretches_found(6, 3))) == 6


def test_the_panel_tells_the_report_s_stretches_where_the_fit_does_not():
    found = stretches_found(1)
    alone = verdicts.of_residuals(found, "north")
    assert len(alone) == 2 and "lie low together" in alone[1][1] and "\n→ Look there in the profile" in alone[1][1]
    assert len(verdicts.of_residuals(found, "north", ["north"])) == 1
