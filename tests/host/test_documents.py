"""Pages written from blocks: every block, what data may hold, and no markup outside the templates."""

import ast
import importlib
import re
import subprocess
import sys
from dataclasses import fields, is_dataclass
from html.parser import HTMLParser
from pathlib import Path

import pytest

pytest.importorskip("qgis.core")

ROOT = Path(__file__).resolve().parents[2]
EVIL = '<script>alert("1")</script>&amp;'
SVG = (
    '<?xml version="1.0"?>\n<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink">'
    "<metadata>who made it</metadata><!-- a label --><defs><clipPath id='p1'><path id='m1' d='M0 0'/></clipPath></defs>"
    "<g clip-path='url(#p1)'><use xlink:href='#m1'/></g></svg>"
)


class Parsed(HTMLParser):
    """Tags with their attributes, and the text."""

    def __init__(self, source):
        super().__init__()
        self.tags, self.text = [], []
        self.feed(source.decode("utf-8"))

    def handle_starttag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))

    def handle_data(self, data):
        self.text.append(data)

    def all(self, tag):
        return [given for name, given in self.tags if name == tag]


@pytest.fixture
def documents(host):
    return importlib.import_module("tautline.algorithms.documents.blocks"), importlib.import_module(
        "tautline.algorithms.documents.html"
    )


def one_of_each(blocks, text):
    """Every block there is, with ``text`` wherever it takes one."""
    table = blocks.Table(
        tuple(blocks.Column(f"{kind}{text}", kind) for kind in ("k", "n", "b", "")),
        [[text] * 4, ["1"] * 4],
        text,
        ("out act", ""),
    )
    return [
        blocks.Heading(text),
        blocks.Heading(text, 3),
        blocks.Paragraph(text, "lead", text),
        blocks.Bullets((text, text)),
        blocks.Facts(((text, text),)),
        blocks.Signatures(((text, text),), ((text, text),)),
        table,
        blocks.Picture(SVG, text, text),
        blocks.Picture(SVG, text, text),
        blocks.Map(None, b"image", "png", text, text, ((text, b"image"),)),
        blocks.Code(text, text),
        blocks.Caution((text, text)),
        blocks.SideBySide((blocks.Facts(((text, text),)), blocks.Blanks((text,)))),
        blocks.Fold(text, (blocks.Paragraph(text), blocks.Code(text))),
    ]


def nested(pieces):
    for piece in pieces:
        yield piece
        yield from nested(getattr(piece, "blocks", ()))


def test_every_block_is_written_and_all_of_its_text_is_escaped(documents):
    blocks, html = documents
    pieces = one_of_each(blocks, EVIL)
    kinds = {kind for kind in vars(blocks).values() if is_dataclass(kind)} - {blocks.Column}
    assert {type(piece) for piece in nested(pieces)} == kinds, "a block is missing in this test"
    page = Parsed(html.html_page(EVIL, pieces))
    assert not page.all("script")
    texts = sum(text.count(EVIL) for text in page.text)
    # Texts of the blocks and the title twice; what a picture shows in words stands in attributes.
    assert texts == 2 + 1 + 1 + 2 + 2 + 2 + 4 + (4 + 4 + 1) + 2 + 2 + 2 + 2 + (2 + 1) + (1 + 1 + 1)
    assert [given["aria-label"] for given in page.all("svg")] == [EVIL] * 2
    assert [given["alt"] for given in page.all("img")] == [EVIL, ""]


def test_the_page_is_accessible_and_stands_alone(documents):
    blocks, html = documents
    source = html.html_page("T", one_of_each(blocks, "text"))
    page = Parsed(source)
    assert page.all("html") == [{"lang": "en"}] and source.startswith(b"<!DOCTYPE html>")
    assert len(page.all("caption")) == 1 and all(given["scope"] in ("row", "col") for given in page.all("th"))
    assert all("alt" in given for given in page.all("img")) and all(g["role"] == "img" for g in page.all("svg"))
    ids = [given["id"] for _, given in page.tags if "id" in given]
    assert len(ids) == 4 and len(set(ids)) == 4, "two drawings with the same ids in one page"
    links = [given["xlink:href"][1:] for given in page.all("use")]
    clips = [re.fullmatch(r"url\(#(.*)\)", given["clip-path"])[1] for given in page.all("g")]
    assert set(links) | set(clips) == set(ids)
    assert b"a label" not in source and b"who made it" not in source
    assert not {"script", "link", "iframe"} & {tag for tag, _ in page.tags} and not re.search(
        rb"@import|src=.http", source
    )
    rows = [given.get("class") for given in page.all("tr") if given]
    assert rows == ["out act"] and {given.get("class") for given in page.all("td")} >= {"k", "n", "b", None}


def test_the_language_is_that_of_the_texts(documents):
    _, html = documents
    translation = importlib.import_module("tautline.algorithms.language.translation")
    before = translation._TRANSLATE[0], translation.language()
    try:
        translation.speak_by(lambda context, text: text.upper(), "de-AT")
        assert b'<html lang="de-AT">' in html.html_page("T", [])
    finally:
        translation.speak_by(*before)


def test_characters_that_html_forbids_are_dropped(documents):
    blocks, html = documents
    naughty = "a\x00b\x08c\x1bd\x7fe\x9ff\ud800g\ufffeh\ufdd0i\tj\u00a0k\U0001f600"
    source = html.html_page(naughty, one_of_each(blocks, naughty)).decode("utf-8")
    assert source.count("abcdefghi\tj\u00a0k\U0001f600") > 30
    assert not re.search("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ufdd0-\ufdef\ufffe\uffff]", source)
    assert "<script" not in html.html_page("T", [blocks.Paragraph("<\x00script>&\x00lt;")]).decode("utf-8")


def test_a_block_that_the_template_does_not_know_is_no_empty_place(documents):
    _, html = documents
    with pytest.raises(TypeError, match="no macro for the block int"):
        html.html_page("T", [3])


def reviewed(toolbox):
    rows = [
        {
            "at": (500000.0 + k, 5540000.0),
            "axis": "a",
            "station": f"0+00{k}",
            "chainage": float(k),
            "design_h": 50.0,
            "residual": 0.001 * k,
            "status": "within",
            "flat_h": 50.0,
            "curv_eff": 0.0,
        }
        for k in range(5)
    ]
    return toolbox.points(rows, "EPSG:32631")


def test_without_jinja2_one_sentence_says_so(toolbox, tmp_path, monkeypatch):
    stations = reviewed(toolbox)
    for name in [name for name in sys.modules if name.split(".")[0] == "jinja2"] + ["jinja2"]:
        monkeypatch.setitem(sys.modules, name, None)
    for entry, key, output in (
        ("scheduleadjustments", "SHEET", "memory:"),
        ("scheduleadjustments", "SETOUT", "memory:"),
        ("reviewreport", "HTML", None),
    ):
        place = tmp_path / "page.html"
        text = toolbox.refusal(entry, OUTPUT=output, STATIONS=stations, **{key: str(place)})
        assert "need jinja2" in text and "python3-jinja2" in text and not place.exists()
    run = toolbox.run("scheduleadjustments", STATIONS=stations, CSV=str(tmp_path / "s.csv"))
    assert run.rows() and (tmp_path / "s.csv").exists(), "what needs no page works without"


def test_jinja2_is_imported_by_those_who_write_a_page_alone():
    code = "import sys; sys.path.insert(0, sys.argv[1]); import tests.conftest, importlib\n" + (
        "importlib.import_module('tautline.algorithms.documents.html'); sys.exit('jinja2' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", code, str(ROOT)], check=False).returncode == 0


# Names of elements of HTML and SVG in angle brackets; (?P<b>...) of a pattern is none.
TAG = re.compile(
    r"(?<!\?P)</?(html|head|body|title|meta|style|script|link|div|span|p|br|hr|h[1-6]|b|i|u|em|strong|small|sub|sup|"
    r"pre|code|a|img|figure|figcaption|ul|ol|li|table|caption|thead|tbody|tr|th|td|details|summary|section|"
    r"svg|g|path|text)"
    r"(\s[^<]*)?/?>?",
    re.IGNORECASE,
)
ENTITY = re.compile(r"&(nbsp|lt|gt|amp|quot|#\d+);")


def markup_in(source):
    """Constant texts of a Python file, docstrings aside, that hold a tag or an entity."""
    tree = ast.parse(source)
    spoken = {
        id(node.body[0].value)
        for node in ast.walk(tree)
        if isinstance(node, (ast.Module, ast.ClassDef, ast.FunctionDef, ast.AsyncFunctionDef))
        and node.body
        and isinstance(node.body[0], ast.Expr)
    }
    return [
        node.value
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant)
        and isinstance(node.value, str)
        and id(node) not in spoken
        and (TAG.search(node.value) or ENTITY.search(node.value))
    ]


def test_markup_is_found():
    assert (
        markup_in('x = f"<p>{a}"') and markup_in("x = '</td>'") and markup_in("x = '<svg '") and markup_in("'&nbsp;'+a")
    )
    assert not markup_in('"""Doc <p>"""') and not markup_in("x = '(?P<b>c) a < b, <1 %'")


@pytest.mark.parametrize(
    "path",
    # Tips of the map are expressions of the host, which knows no templates.
    [path for path in sorted((ROOT / "algorithms").rglob("*.py")) if path.parent.name != "styles"],
    ids=lambda path: str(path.relative_to(ROOT)),
)
def test_no_markup_outside_the_templates(path):
    assert not markup_in(path.read_text(encoding="utf-8"))


def test_the_template_marks_nothing_as_safe():
    """Autoescape is on for all of it; our own drawings come through one filter."""
    for path in (ROOT / "algorithms/documents/templates").glob("*.html"):
        assert not re.search(r"\|\s*safe|autoescape|Markup|__html__", path.read_text(encoding="utf-8"))
    using = [
        p.name
        for p in (ROOT / "algorithms").rglob("*.py")
        if re.search(r"Markup\(|__html__", p.read_text(encoding="utf-8"))
    ]
    assert using == ["html.py"]


def test_blocks_hold_what_they_are_made_of(documents):
    """A frozen block is a plain record: no method, so that both writers see the same."""
    blocks, _ = documents
    for kind in (kind for kind in vars(blocks).values() if is_dataclass(kind)):
        own = {name for name in vars(kind) if not name.startswith("__")}
        assert own <= {field.name for field in fields(kind)}, kind
