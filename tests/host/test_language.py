"""What is worded at run time is what the translations are made from; numbers follow the language where people read."""

import importlib
import importlib.util
import pathlib
import re
import sys
from xml.etree import ElementTree

import pytest

ROOT = pathlib.Path(__file__).resolve().parents[2]


def module(name):
    return importlib.import_module(f"tautline.algorithms.{name}")


@pytest.fixture
def spoken():
    """A function that has texts translated by another one; what was before comes back."""
    translation = module("language.translation")
    before = translation._TRANSLATE[0], translation.language(), translation.decimal_sign()
    yield translation.speak_by
    translation.speak_by(*before)


@pytest.fixture(scope="module")
def known():
    spec = importlib.util.spec_from_file_location("told_texts", ROOT / "tests" / "release" / "translation.py")
    found = importlib.util.module_from_spec(spec)
    sys.modules["told_texts"] = found
    spec.loader.exec_module(found)
    return set(found.texts())


def test_words_of_the_core_are_marked():
    words = module("language.core_words")
    headings, shapes = module("core.headings"), module("core.leg_regressions")
    suspicions = module("core.suspicious_readings")
    assert set(words.COLUMNS) == set(headings.HEADINGS) and set(words.SHAPES) == set(shapes.MODELS)
    assert {word for _, word in suspicions._UNITS} < set(words.SUSPICIONS)


def test_every_text_of_a_whole_job_is_known(toolbox, tmp_path, spoken, known):
    asked = set()

    def translate(context, text):
        assert context == "Tautline"
        asked.add(text)
        return text

    spoken(translate)
    heights = [50.0 + 0.002 * (k % 5) for k in range(31)]
    heights[7] = 50.2
    rows = [{"station": f"{k // 10}+{100 * (k % 10):03d}", "height": h} for k, h in enumerate(heights)]
    axis = toolbox.lines([{"at": [(500000.0, 5540000.0), (503100.0, 5540000.0)], "name": "line"}], "EPSG:32631")
    place = {name: str(tmp_path / f"{name}.gpkg") for name in ("placed", "later", "designed", "tested", "plane")}
    toolbox.run("placestations", INPUT=toolbox.table(rows), AXIS=axis, OUTPUT=place["placed"])
    toolbox.run("placestations", INPUT=toolbox.table(rows[:-1]), AXIS=axis, OUTPUT=place["later"])
    on_axis = {"STATIONS": place["placed"], "AXIS": axis}
    toolbox.run("designheights", **on_axis, TOLERANCE=0.01, OUTPUT=place["designed"])
    toolbox.run("fitreference", **on_axis, SIGMA=0.003, OUTPUT=place["tested"], REFERENCE=place["plane"])
    toolbox.run("testcurvature", **on_axis, SIGMA=0.003, HTML=str(tmp_path / "shape.html"))
    toolbox.run("drawdeviations", OUTPUT=None, STATIONS=place["designed"], AXIS=axis, BARS="memory:", STRIP="memory:")
    toolbox.run("scheduleadjustments", STATIONS=place["designed"], SHEET=str(tmp_path / "sheets.html"))
    toolbox.run(
        "comparesurveys",
        SURVEYS=[place["placed"], place["later"]],
        DATES="2024-01-01; 2025-01-01",
        REPORT=str(tmp_path / "change.html"),
    )
    pages = {"HTML": str(tmp_path / "report.html"), "PDF": str(tmp_path / "report.pdf")}
    toolbox.run("reviewreport", OUTPUT=None, STATIONS=place["designed"], TESTED=place["tested"], AXIS=axis, **pages)
    assert len(asked) > 400 and asked - known == set()


def test_units_of_headings_are_said_as_people_say_them(known):
    headings, units = module("core.headings"), module("language.units")
    assert set(units._SAID) == {unit for unit, _ in headings._WRITTEN} and set(units._SAID.values()) <= known


def test_words_to_be_typed_stand_as_they_are_typed_with_their_meaning_beside(spoken):
    words = module("language.stored_words")
    assert words.typed_words("line") == "none, axis, chord, fitted"
    spoken(lambda context, text: {"chord": "Sehne"}.get(text, text), "de", ",")
    assert words.typed_words("line") == "none, axis, chord (Sehne), fitted"


def test_german_help_tells_what_each_choice_means(host, spoken):
    """Choices are the same words in every language; the help has the German of each in brackets behind it."""
    from qgis.core import QgsApplication

    listed = ElementTree.parse(ROOT / "plugin" / "i18n" / "tautline_de.ts").iter("message")
    german = {one.findtext("source"): one.findtext("translation") for one in listed}
    spoken(lambda context, text: german.get(text) or text, "de", ",")
    registry, seen, bare = QgsApplication.processingRegistry(), 0, set()
    for entry in registry.providerById("tautline").algorithms():
        spoken_entry = registry.createAlgorithmById(entry.id())  # Its parameters live as long as it does.
        for one in spoken_entry.parameterDefinitions():
            # Units of chainages and distances are those of the heights, told there.
            if one.type() == "enum" and one.name() not in ("CHAINAGE_UNIT", "DISTANCE_UNIT"):
                words = {word for word in one.options() if word} - {"bilinear", "gon"}  # The same word in German.
                seen += len(words)
                bare |= {(one.name(), word) for word in words if not re.search(rf"\b{word}'? \(", one.help())}
    assert seen > 60 and bare == set()


def test_numbers_follow_the_language_where_people_read(spoken):
    numbers, csv = module("language.number_text"), module("documents.csv_file")
    spoken(lambda context, text: text, "de", ",")
    assert numbers.number_text(-1234.5, 2) == "\u22121234,50" and numbers.signed_text(0.25, 1) == "+0,3"
    assert numbers.signed_text(0.04, 1) == "0,0" and numbers.signed_text(None, 1) == "none"
    assert numbers.times(10000) == "\u00d7 10\u202f000" and numbers.times(2.5) == "\u00d7 2,5"
    assert csv.number_cell(-1234.5, 2) == "-1234.50"


def test_refusals_and_warnings_of_the_core_are_told_in_the_language(toolbox, spoken, known):
    asked = {
        "Axis '{}' has zero length: all its vertices are at one place.": "Achse '{}' hat die Länge null.",
        "Layer '{}', row {}: {}": "Layer '{}', Zeile {}: {}",
        "The {} '{}' is not a number.": "{} '{}' ist keine Zahl.",
        "height": "Höhe",
    }
    assert set(asked) <= known
    spoken(lambda context, text: asked.get(text, text), "de", ",")
    rows = toolbox.table([{"station": "0+010", "height": "5O.2"}, {"station": "0+020", "height": "50.2"}])
    point = [(500000.0, 5540000.0)] * 2
    nowhere = toolbox.lines([{"at": point, "name": "{a}"}], "EPSG:32631")
    text = toolbox.refusal("placestations", INPUT=rows, AXIS=nowhere)
    assert "Zeile 1: Achse '{a}' hat die Länge null." in text
    axis = toolbox.lines([{"at": [point[0], (503100.0, 5540000.0)], "name": "{a}"}], "EPSG:32631")
    run = toolbox.run("placestations", INPUT=rows, AXIS=axis)
    assert any("Höhe '5O.2' ist keine Zahl." in warning for warning in run.warnings), run.warnings
