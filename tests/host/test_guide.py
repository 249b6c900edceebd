"""The guide's commands run as they stand, and say what the guide says that they say.

The commands of all pages run in the order of the guide in one folder of the opened example: through the registry, where
the words are taken apart as the host's command line does it, and those of the first page by that command line itself.
"""

import os
import pathlib
import re
import shlex
import shutil
import subprocess
from dataclasses import dataclass, field

import pytest

pytest.importorskip("scipy")
pytest.importorskip("matplotlib")
ROOT = pathlib.Path(__file__).resolve().parents[2]
PROGRAM = shutil.which("qgis_process.bin") or shutil.which("qgis_process")


@dataclass
class Told:
    """What the commands of the pages up to one have said: ``all`` of it, and the refusals ``of`` each command."""

    all: str = ""
    refused: list = field(default_factory=list)


def plain(text):
    return " ".join(text.split())


def parameters(words):
    """{key: value} of ``--KEY=value`` words; a key that comes again makes a list, as on the host's command line."""
    found = {}
    for word in words:
        key, equals, value = word.removeprefix("--").partition("=")
        assert word.startswith("--") and equals, word
        found[key] = (
            value if key not in found else [*([found[key]] if isinstance(found[key], str) else found[key]), value]
        )
    return found


@pytest.fixture(scope="module")
def example(host, tmp_path_factory):
    """The folder that 'Open the example' makes."""
    pytest.importorskip("qgis.gui", reason="this host was built without its window library")
    from tautline.plugin import example

    return example.prepared(tmp_path_factory.mktemp("guide"))[0]


@pytest.fixture(scope="module")
def told(guide, example, log):
    """{name of a page: Told} after the commands of all pages have run, in their order."""
    found, said, here = {}, "", os.getcwd()
    os.chdir(example)
    try:
        for name, page in guide.items():
            refused = []
            for command, bad in page.commands:
                text, failed = outcome(command, log())
                assert failed == bad, (command, text)
                said += "" if bad else f" {text}"
                refused += [text] if bad else []
            found[name] = Told(said, refused)
    finally:
        os.chdir(here)
    return found


def outcome(command, log):
    """(what the command says, whether it was refused)."""
    import processing
    from qgis.core import QgsApplication, QgsProcessingContext, QgsProcessingException

    program, verb, *rest = shlex.split(command)
    assert program == "qgis_process"
    if verb == "plugins":
        return "", rest != ["enable", "tautline"]
    entry = QgsApplication.processingRegistry().createAlgorithmById(rest[0])
    assert entry is not None, command
    if verb == "help":
        return entry.shortHelpString(), rest[1:] != []
    assert verb == "run"
    given = parameters(rest[1:])
    allowed, why = entry.checkParameterValues(given, QgsProcessingContext())
    if not allowed:
        return plain(why), True
    try:
        results = processing.run(rest[0], given, feedback=log)
    except QgsProcessingException as error:
        return plain(str(error)), True
    return plain(" ".join([*log.info, *log.warnings, *(f"{key}: {value}" for key, value in results.items())])), False


def sayings(page):
    """Texts of the page's samp elements that are no cells of a row, each with the place of the refusal before it."""
    place, found = -1, []
    for node in page.root.all("pre", "samp"):
        if node.tag == "pre":
            place += "refused" in node.classes
        elif node.within("table") is None:
            found.append((node.text, place))
    return found


def test_every_page_of_a_task_has_commands(guide):
    tasks = [link for link in guide["index.html"].links if link in guide][:7]
    assert len(tasks) == 7 and all(guide[name].commands and sayings(guide[name]) for name in tasks)


def test_what_the_guide_quotes_was_said(guide, told):
    missing = []
    for name, page in guide.items():
        for text, place in sayings(page):
            within = told[name].refused[place] if place >= 0 else told[name].all
            missing += [(name, text)] if text not in within else []
    assert missing == []


@pytest.mark.parametrize("name", ["fit.html", "shape.html"])
def test_the_steps_in_the_window_say_the_same(name, guide, example, log, tmp_path, monkeypatch):
    """There the stations are those of the example's own project, and the form states no unit and no height system."""
    shutil.copy(example / "range.gpkg", tmp_path)
    monkeypatch.chdir(tmp_path)
    stations, said = '"--STATIONS=range.gpkg|layername=stations"', ""
    for command, _ in guide[name].commands:
        assert "--STATIONS=placed.gpkg" in command and "--UNDULATION" not in command
        text, failed = outcome(command.replace("--STATIONS=placed.gpkg", stations), log())
        assert not failed, text
        said += text
    assert [text for text, _ in sayings(guide[name]) if text not in said] == []


def rows(path):
    from qgis.core import QgsVectorLayer

    layer = QgsVectorLayer(str(path), "rows", "ogr")
    names = layer.fields().names()
    return [dict(zip(names, feature.attributes())) for feature in layer.getFeatures()]


def test_rows_that_the_guide_shows(guide, told, example):
    """Numbers of a row to the digits shown, texts as they stand."""
    shown = [node for page in guide.values() for node in page.root.all("table") if "data-row" in node.attributes]
    assert len(shown) > 1
    for table in shown:
        name, *wanted = table.attributes["data-row"].split("|")
        wanted = dict(one.split("=") for one in wanted)
        found = [row for row in rows(example / name) if all(row[key] == value for key, value in wanted.items())]
        assert len(found) == 1
        for line in table.all("tr"):
            for cell in line.all("samp"):
                key = next(line.all("code")).text
                value = found[0][key]
                digits = len(cell.text.partition(".")[2])
                assert cell.text == (value if isinstance(value, str) else f"{round(value, digits) + 0.0:.{digits}f}"), (
                    key,
                    value,
                )


def test_read_me_first_says_what_the_example_shows(example):
    said = plain((example / "read_me_first.html").read_text(encoding="utf-8"))
    found = rows(f"{example / 'range.gpkg'}|layername=residuals")
    out = {row["station"]: row["axis"] for row in found if row["status"] in ("high", "low")}
    beside = [row for row in found if row["side"] in ("left", "right")]
    assert f"0+850 of {out['0+850']} is one" in said and out["0+850"] == out["1+650"]
    quiet = re.search(r"On (\w+) nothing is out in height", said)[1]
    assert quiet in {row["axis"] for row in found} - set(out.values())
    assert len(beside) == 1 and f"{beside[0]['station']} of {beside[0]['axis']} is right in height" in said
    assert f"knocked it {abs(beside[0]['lateral']) * 1000:.0f} mm to the {beside[0]['side']} of" in said


def test_words_of_fields_are_those_of_the_fields(guide):
    """Of status, side, flag and action the guide tells every value, and of no field one that it has not."""
    from tautline.algorithms.boundary.fields import _ALL

    meaning = {one.name: one.meaning for one in _ALL}
    tables = [node for node in guide["results.html"].root.all("table") if "data-fields" in node.attributes]
    told = {}
    for table in tables:
        names = []
        for line in list(table.all("tr"))[1:]:
            name, *words = [code.text for code in line.all("code")]
            names.append(name)
            told[name] = set(words)
            assert all(re.search(rf"\b{word}\b", meaning[name]) for word in words), name
        assert names == table.attributes["data-fields"].split()
    for name in ("status", "side", "flag", "action"):
        assert told[name] == set(re.split(", | or ", meaning[name].rpartition(": ")[2]))


def test_verdicts_on_the_shape_are_all_told(host, guide):
    from tautline.plugin.guided.verdicts import _shapes_in_words

    body = next(node for node in guide["results.html"].root.all("tbody") if "data-verdicts" in node.attributes)
    heads = list(body.all("th"))
    assert {code.text for node in heads for code in node.all("code")} == set(_shapes_in_words())


def test_first_page_on_the_host_s_own_command_line(guide, example, tmp_path):
    """In a fresh profile, by a shell: the plugin is enabled by the first command, and the others say the same."""
    if PROGRAM is None:
        pytest.skip("the host's command line is not installed")
    (tmp_path / "plugins").mkdir()
    (tmp_path / "plugins" / "tautline").symlink_to(ROOT)
    place = {
        "HOME": str(tmp_path),
        "QGIS_CUSTOM_CONFIG_PATH": str(tmp_path / "config"),
        "QGIS_PLUGINPATH": str(tmp_path / "plugins"),
        "QT_QPA_PLATFORM": "offscreen",
        "PYTHONDONTWRITEBYTECODE": "1",
        "LANG": "C.UTF-8",
        "PROGRAM": PROGRAM,
    }
    said = ""
    for command, _ in guide["first-run.html"].commands:
        ran = subprocess.run(
            ["bash", "-c", 'qgis_process() { "$PROGRAM" "$@"; }; ' + command],
            cwd=example,
            env={**os.environ, **place},
            capture_output=True,
            text=True,
            check=False,
        )
        assert ran.returncode == 0, (command, ran.stderr)
        said += f" {plain(ran.stdout)}"
    assert [text for text, _ in sayings(guide["first-run.html"]) if text not in said] == []
