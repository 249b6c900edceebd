"""Translations are whole: every text is found, none is worded before its language is known, and no translation loses a
place for a number."""

import ast
import importlib.util
import pathlib
import re
import sys

import pytest

spec = importlib.util.spec_from_file_location("release_translation", pathlib.Path(__file__).with_name("translation.py"))
translation = importlib.util.module_from_spec(spec)
sys.modules["release_translation"] = translation
spec.loader.exec_module(translation)

LANGUAGES = translation.files()
# What is filled in, markup, and keys of the form: the same in both languages.
PLACES = re.compile(r"\{[^{}]*\}|<[^<>]+>|&[a-z]+;")
KEYS = re.compile(r"\b[A-Z]{3,}(?:_[A-Z0-9]+)+\b")


def test_texts_are_found():
    texts = translation.texts()
    assert {"Design heights and residuals", "transposed digits", "Chainage height", "Station A"} <= set(texts)
    assert all(text.strip() for text in texts)


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_translation_is_in_step_and_whole(language):
    path = LANGUAGES[language]
    translations = translation.kept(path)
    assert path.read_text(encoding="utf-8") == translation.document(language, translations), "run translation.py"
    assert [text for text in translation.texts() if text not in translations] == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_translation_keeps_places_and_keys(language):
    for text, translated in translation.kept(LANGUAGES[language]).items():
        assert sorted(PLACES.findall(text)) == sorted(PLACES.findall(translated)), (text, translated)
        assert set(KEYS.findall(text)) == set(KEYS.findall(translated)), (text, translated)
        edges = [(one[:1].isspace(), one[-1:].isspace()) for one in (text, translated)]
        assert edges[0] == edges[1], (text, translated)


def calls_on_import(tree):
    """Lines with a call of ``tr`` outside every function."""
    found = []

    def look(node):
        for child in ast.iter_child_nodes(node):
            if isinstance(child, (ast.FunctionDef, ast.Lambda)):
                # Its defaults and decorators run on import, its body does not.
                for part in [*child.args.defaults, *filter(None, child.args.kw_defaults)]:
                    look(ast.Expression(part))
                continue
            if translation.called(child) == "tr":
                found.append(child.lineno)
            look(child)

    look(tree)
    return found


def test_the_watch_sees_a_call_on_import():
    assert calls_on_import(ast.parse("A = tr('a')\n")) == [1]
    assert calls_on_import(ast.parse("def f(a=tr('a')):\n    return tr('b')\n")) == [1]


@pytest.mark.parametrize("path", translation.sources(), ids=lambda path: path.stem)
def test_nothing_is_worded_before_its_language_is_known(path):
    assert calls_on_import(ast.parse(path.read_text(encoding="utf-8"))) == []
