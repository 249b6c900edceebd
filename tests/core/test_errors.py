"""The one error of the core."""

import ast
import pathlib

import pytest

from tautline.algorithms.core.errors import Chainage, InputError, Length, Sentence, Word
from tautline.algorithms.language.core_sentences import worded
from tautline.algorithms.language.units import Units

CORE = pathlib.Path(__file__).resolve().parents[2] / "algorithms" / "core"


def test_a_refusal_carries_its_sentence_code_and_parameters():
    error = InputError("SIGMA is 0; it must be positive.", code="x", keys=("SIGMA",))
    assert isinstance(error, ValueError) and str(error) == "SIGMA is 0; it must be positive."
    again = error.reworded("The standard deviation is 0.")
    assert (str(again), again.code, again.keys) == ("The standard deviation is 0.", "x", ("SIGMA",))
    assert InputError("plain").code == "" and InputError("plain").keys == ()


def test_values_fill_the_places_of_a_sentence():
    error = InputError("The {} '{}' is {:.3f} m.", Word("height"), "{a}", 1.0, keys=("SIGMA",))
    assert str(error) == "The height '{a}' is 1.000 m." and error.keys == ("SIGMA",)
    assert error.text == "The {} '{}' is {:.3f} m." and error.values == ("height", "{a}", 1.0)
    # A sentence that was worded before may hold braces of the user's.
    again = error.reworded("Layer '{}': it is open.")
    assert (str(again), again.values) == ("Layer '{}': it is open.", ())
    doubt = Sentence("Axis '{}' bends by {:g} m.", "{a}", 2.0)
    assert doubt == "Axis '{a}' bends by 2 m." and doubt.text == "Axis '{}' bends by {:g} m."
    assert doubt.values == ("{a}", 2.0) and str(doubt.refused()) == doubt


def test_lengths_are_told_in_the_units_of_the_run():
    """500 US survey feet of 1200/3937 m; what nobody knows the units of is in metres."""
    foot = 1200.0 / 3937.0
    error = InputError("Control {} at {} lies {} off.", "A", Chainage(500.0 * foot), Length(2.5 * foot))
    assert str(error) == worded(error) == "Control A at 152.4 m lies 0.762 m off."
    told = worded(error, lambda metres: f"{metres / foot:.0f} of it", Units("metre", "us_foot"))
    assert told == "Control A at 500 of it lies 2.5 US ft off."


def glued(tree):
    """Lines of a tree with an InputError or a Sentence that is no literal, or has not as many places as values."""
    found = []
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and getattr(node.func, "id", "") in ("InputError", "Sentence"):
            first, *values = node.args or [None]
            whole = [first.body, first.orelse] if isinstance(first, ast.IfExp) else [first]
            if not all(isinstance(text, ast.Constant) and isinstance(text.value, str) for text in whole):
                found.append(node.lineno)
            elif not any(isinstance(value, ast.Starred) for value in values):
                if any(text.value.count("{") != len(values) for text in whole):
                    found.append(node.lineno)
    return found


def test_the_watch_sees_glued_sentences():
    for sentence in ("f'{a} is open'", "'a' + b", "'a {}'.format(b)", "a", "'a {}'", "'a', b", "'a' if c else d"):
        assert glued(ast.parse(f"raise InputError({sentence})")), sentence
    for sentence in ("'a'", "'a {}', b", "'a {} {}', *b", "'a' if c else 'b'", "'a {:g}' if c else 'b {}', d"):
        assert not glued(ast.parse(f"raise InputError({sentence})")), sentence


@pytest.mark.parametrize("path", sorted(CORE.glob("*.py")), ids=lambda path: path.stem)
def test_what_the_core_says_is_one_sentence_that_can_be_translated(path):
    if path.name != "errors.py":
        assert glued(ast.parse(path.read_text(encoding="utf-8"))) == []
