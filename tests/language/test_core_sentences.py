"""Refusals of the core are told in the user's language, and nobody shows the core's own English."""

import ast
import pathlib

import numpy as np
import pytest

from tautline.algorithms.core.angles import zenith_angle
from tautline.algorithms.core.design import DesignSpec
from tautline.algorithms.core.errors import InputError, Word
from tautline.algorithms.core.number_reading import read_column
from tautline.algorithms.core.sights import sight_correction
from tautline.algorithms.language import translation
from tautline.algorithms.language.core_sentences import WORDS, worded

ROOT = pathlib.Path(__file__).resolve().parents[2]
SHOWN = [path for room in ("algorithms", "plugin") for path in sorted((ROOT / room).rglob("*.py"))]
SHOWN = [path for path in SHOWN if ROOT / "algorithms" / "core" not in path.parents]


@pytest.fixture
def german():
    """A function that has the texts of a dictionary translated; what was before comes back."""
    before = translation._TRANSLATE[0], translation.language(), translation.decimal_sign()
    yield lambda texts: translation.speak_by(lambda context, text: texts.get(text, text), "de", ",")
    translation.speak_by(*before)


def test_in_english_it_is_the_sentence_itself():
    error = InputError("The {} '{}' lies at {:.3f} m of {:g}, {}.", Word("height"), "1.5", -1.25, np.float64(0.5), 7)
    assert worded(error) == str(error) == "The height '1.5' lies at -1.250 m of 0.5, 7."


def test_words_and_numbers_are_those_of_the_language(german):
    german({"The {} '{}' lies at {:.3f} m of {:g}, {}.": "{} '{}' liegt bei {:.3f} m von {:g}, {}.", "height": "Höhe"})
    error = InputError("The {} '{}' lies at {:.3f} m of {:g}, {}.", Word("height"), "height 1.5", -1.25, 0.5, 2.5)
    # What the user wrote stays as it was written.
    assert worded(error) == "Höhe 'height 1.5' liegt bei -1,250 m von 0,5, 2,5."
    assert str(error) == "The height 'height 1.5' lies at -1.250 m of 0.5, 2.5."


def test_a_sentence_worded_already_stays(german):
    german({"Row {}: {}": "Zeile {}: {}"})
    for text in ("Layer '{0}': {}", "Layer 'a{': 50 %, %n, %1", ""):
        assert worded(InputError(text)) == text
        assert worded(InputError("The net has no lines.").reworded(text)) == text


def test_refusals_of_the_core_are_translated(german):
    german(
        {
            "The zenith angle '{}' is not a sight from one point to another.": "Zenitwinkel '{}'",
            "The design's {} is not a number.": "{} keine Zahl",
            "height b": "Höhe B",
            "A {} is negative or not a number.": "{} negativ",
            "distance": "Strecke",
            "The {} '{}' is infinite.": "{} '{}' unendlich",
        }
    )
    for said, call in (
        ("Zenitwinkel '0.5'", lambda: zenith_angle("0.5", "degree", vertical=False)),
        ("Höhe B keine Zahl", lambda: DesignSpec("chord", height_b=float("nan"))),
        ("Strecke negativ", lambda: sight_correction(-1.0, k=0.13)),
    ):
        with pytest.raises(InputError) as caught:
            call()
        assert worded(caught.value) == said
    assert worded(read_column(["inf"], name="Höhe").reasons[0]) == "Höhe 'inf' unendlich"


def test_words_that_the_core_puts_together_are_marked():
    numbers = ("chainage_a", "height_a", "chainage_b", "height_b", "slope", "refraction", "radius")
    from tautline.algorithms.core.lateral import FEWEST
    from tautline.algorithms.core.sight_reduction import Precision

    named = {name.replace("_", " ") for name in (*numbers, *vars(Precision()))}
    assert named | {kind for kind in FEWEST if kind != "none"} <= set(WORDS)


def english(tree):
    """Lines on which the handler of an InputError shows it as it is."""
    found = []
    for handler in ast.walk(tree):
        if not isinstance(handler, ast.ExceptHandler) or handler.name is None or handler.type is None:
            continue
        if "InputError" not in {getattr(part, "id", "") for part in ast.walk(handler.type)}:
            continue
        for node in ast.walk(handler):
            if isinstance(node, ast.FormattedValue):
                shown = [node.value]
            elif isinstance(node, ast.Call) and getattr(node.func, "id", getattr(node.func, "attr", "")) in _SHOWING:
                shown = node.args
            else:
                continue
            found += [one.lineno for one in shown if getattr(one, "id", "") == handler.name]
    return found


_SHOWING = ("str", "format", "repr", "print", "InputError")


def test_the_watch_sees_what_is_shown():
    begin = "try:\n    a()\nexcept InputError as error:\n    "
    assert (
        english(ast.parse(begin + "tell(str(error))")) == english(ast.parse(begin + "tell('{}'.format(error))")) == [4]
    )
    assert english(ast.parse(begin + "tell(f'{error}')")) == [4]
    assert english(ast.parse(begin + "tell(worded(error), error.keys)")) == []


@pytest.mark.parametrize("path", SHOWN, ids=lambda path: path.stem)
def test_nobody_shows_the_english_of_the_core(path):
    assert english(ast.parse(path.read_text(encoding="utf-8"))) == []
