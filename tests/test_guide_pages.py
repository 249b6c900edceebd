"""The pages of the guide: well-formed, complete by themselves, and every section that the code cites is there."""

import ast
import configparser
import math
import pathlib
import re

import pytest

ROOT = pathlib.Path(__file__).resolve().parents[1]
GUIDE = ROOT / "plugin" / "guide"
CITED = re.compile(r"method page,? (?:section )?(\d)(?: (?:and|to) (\d))?")
PAGES = sorted(path.name for path in GUIDE.glob("*.html"))
# Names in the window that are the host's own.
HOST = (
    "Plugins, Manage and Install Plugins…, Install from ZIP, Install Plugin, Installed, Processing Toolbox, Run, "
    "Advanced Parameters, Save to File…, Layer CRS, Remove Layer…"
).split(", ")
RADIUS = 6_371_000.0  # Of the Earth, in metres: mean radius of GRS 80 (Moritz 2000), to 1 km.
SECOND = math.pi / 648_000
NUMBER = re.compile(r"(?<![\w.,])[-+−]?\d+(?:[.,]\d+)*")
# Numbers in the sentences of the guide that no run prints: what each is. Quantiles of the normal distribution:
# Abramowitz and Stegun, Handbook of Mathematical Functions, tables 26.5 and 26.6.
WORKED = {
    "3.29": 3.29053,  # two-sided 0.1 %
    "1.96": 1.95996,  # two-sided 5 %
    "31": RADIUS * SECOND,  # a second of arc on the ground, m
    "78": 1000.0**2 / (2 * RADIUS) * 1000,  # level surface below the horizon at 1 km, mm
    "20": 1000.0**2 / (8 * RADIUS) * 1000,  # sagitta of 1 km, mm
    "0.16": 1000.0 / RADIUS * 1000,  # 1 km one metre higher, mm
    "73": 5 * SECOND * 3000 * 1000,  # 5 seconds over 3 km, mm
}
# Probabilities of intervals and of finding a blunder (the method page, section 6), the two shapes' curvature factors,
# and the numbers that those above are worked from.
STATED = {"95", "80", "0", "1", "3", "5"}


@pytest.fixture(params=PAGES)
def page(request, guide):
    return guide[request.param]


def sources():
    folders = ("algorithms", "plugin", "tests", "sample_layers")
    return [
        path for folder in folders for path in sorted((ROOT / folder).rglob("*.py")) if path != pathlib.Path(__file__)
    ]


def test_well_formed(page):
    assert page.wrong == []
    html, title, heading = (list(page.root.all(tag)) for tag in ("html", "title", "h1"))
    assert len(html) == len(title) == len(heading) == 1 and html[0].attributes["lang"] == "en" and title[0].text
    assert page.source.startswith("<!DOCTYPE html>\n") and len(page.ids) == len(set(page.ids))
    levels = [int(node.tag[1]) for node in page.root.all("h1", "h2", "h3", "h4")]
    assert all(below - above <= 1 for above, below in zip(levels, levels[1:]))


def test_for_everybody(page):
    """Pictures have a text, tables a caption, heads a scope, lists of links a name."""
    for node in page.root.all("img"):
        assert len(node.attributes.get("alt", "").split()) > 3, node.attributes
    for node in page.root.all("table"):
        assert node.children and [child.text for child in node.all("caption")][:1] > [""], page.name
    assert all(node.attributes.get("scope") in ("col", "row") for node in page.root.all("th"))
    assert all(node.attributes.get("aria-label") for node in page.root.all("nav"))
    assert not list(page.root.all("script", "iframe", "font", "center"))


def test_links_lead_somewhere(page, guide):
    """Within the guide and nowhere else: nothing is fetched from a network."""
    assert "//" not in re.sub(r"/\*.*?\*/", "", page.source)
    for link in page.links:
        name, _, anchor = link.partition("#")
        assert name == "" or (GUIDE / name).is_file(), link
        assert not anchor or anchor in guide[name or page.name].ids, link


def test_every_page_can_be_reached(guide):
    seen, due = set(), ["index.html"]
    while due:
        name = due.pop()
        if name not in seen:
            seen.add(name)
            due += [link.partition("#")[0] for link in guide[name].links if ".html" in link and link[0] != "#"]
    assert seen == set(PAGES)
    assert "@import" not in (GUIDE / "guide.css").read_text() and "url(" not in (GUIDE / "guide.css").read_text()


def test_no_place_of_anybody(page):
    assert not re.search(r"(?<![\w.<])(/(home|usr|tmp|opt|root|work|srv|mnt)\b|~/|[A-Z]:\\)", page.source)


def strings():
    """All texts in the sources of the window and the toolbox, without mnemonics."""
    found = set()
    for path in sources():
        if path.relative_to(ROOT).parts[0] in ("plugin", "algorithms"):
            for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
                if isinstance(node, ast.Constant) and isinstance(node.value, str):
                    found.add(node.value.replace("&", ""))
    return found


def test_names_in_the_window_are_those_of_the_window(guide):
    known = strings()
    named = {(page.name, node.text) for page in guide.values() for node in page.root.all("b")}
    assert len(named) > 40
    assert [one for one in sorted(named) if one[1] not in known and one[1] not in HOST] == []


def test_numbers_in_sentences_are_known(guide):
    """A number is printed by a run (there it stands in samp and is looked for), typed (code), or known here."""
    minimum = configparser.ConfigParser(interpolation=None)
    minimum.read(ROOT / "metadata.txt", encoding="utf-8")
    known = {*WORKED, *STATED, minimum["general"]["qgisMinimumVersion"]}
    found = set()
    for page in guide.values():
        if page.name != "method.html":
            body = next(page.root.all("body"))
            text = " ".join(" ".join(body.texts(without=("samp", "pre", "code", "b"))).split())
            found |= {(page.name, number) for number in NUMBER.findall(text)}
    assert [one for one in sorted(found) if one[1] not in known] == []
    assert set(WORKED) <= {number for _, number in found}


@pytest.mark.parametrize("text, value", WORKED.items())
def test_worked_numbers(text, value):
    assert text == f"{value:.{len(text.partition('.')[2])}f}"


def test_sections_that_the_code_cites_are_there(guide):
    cited = {
        number for path in sources() for found in CITED.findall(path.read_text(encoding="utf-8")) for number in found
    }
    cited.discard("")
    assert {"2", "3", "4", "5", "6", "8", "9"} <= cited
    assert {f"section-{number}" for number in cited} <= set(guide["method.html"].ids)


@pytest.mark.parametrize("path", sources(), ids=lambda path: str(path.relative_to(ROOT)))
def test_nothing_else_is_cited(path):
    """A page that is not in the repository cannot be read by whoever has the repository."""
    assert not re.search(r"\bMETHOD(?:'s)?(?: sections?)? (?:\d|measured|share)", path.read_text(encoding="utf-8"))
