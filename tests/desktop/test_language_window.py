"""The window in each language that there is: what ``language_script.py`` saw of cut and of English texts."""

import importlib.util
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


def release(name):
    """A module of tests/release."""
    spec = importlib.util.spec_from_file_location(f"release_{name}", ROOT / "tests" / "release" / f"{name}.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


translation = release("translation")


@pytest.fixture(scope="module", params=sorted(translation.files()))
def language(request):
    return request.param


@pytest.fixture(scope="module")
def translations(language):
    return translation.kept(translation.files()[language])


@pytest.fixture(scope="module")
def seen(drive_installed, language, tmp_path_factory):
    if not (ROOT / ".git").exists():
        pytest.skip("an archive is made of what is under version control, and this is a copy without it")
    archive = release("archive").made(tmp_path_factory.mktemp("archive"))
    return drive_installed("language_script.py", archive, language)


def test_no_text_is_cut_off(seen):
    assert len(seen["clipped"]) > 15
    assert {name: found for name, found in seen["clipped"].items() if found} == {}


def test_nothing_is_left_in_english(seen, translations):
    due = {text.replace("&", "") for text, translated in translations.items() if text != translated}
    # Words that are also German, or that the other language uses for something else.
    due -= {translated.replace("&", "") for translated in translations.values()}
    shown = {name: {text.replace("&", "") for text in texts} for name, texts in seen["texts"].items()}
    assert sum(map(len, shown.values())) > 300
    assert {name: sorted(texts & due) for name, texts in shown.items() if texts & due} == {}
    assert [text for texts in seen["menus"].values() for text in texts if text.replace("&", "") in due] == []


def test_the_page_is_in_that_language(seen, language, translations):
    page = seen["page"]
    assert f'<html lang="{language}"' in page
    assert translations["Reproducing the results"] in page
    if language == "de":
        # Numbers with a unit, outside what programs read and the pictures' coordinates.
        told = re.sub(r"<(code|pre|svg|style)\b.*?</\1>", "", page, flags=re.DOTALL)
        assert re.search(r"\d,\d mm", told) and not re.search(r"\d\.\d+ mm", told)


def test_the_layers_are_named_in_it(seen, translations):
    assert translations["Residuals"] in seen["layers"]
