"""The method page: well-formed, complete by itself, and every section that the code cites is there."""

import pathlib
import re
from html.parser import HTMLParser

import pytest

ROOT = pathlib.Path(__file__).resolve().parents[1]
GUIDE = ROOT / "plugin" / "guide"
VOID = {"meta", "link", "br", "img", "hr"}
CITED = re.compile(r"method page,? (?:section )?(\d)(?: (?:and|to) (\d))?")


class Reader(HTMLParser):
    """Keeps ids, links and headings; ``open`` is empty at the end of a well-formed page."""

    def __init__(self):
        super().__init__()
        self.open, self.ids, self.links, self.wrong, self.cells = [], [], [], [], []

    def handle_starttag(self, tag, attributes):
        found = dict(attributes)
        if tag not in VOID:
            self.open.append(tag)
        if "id" in found:
            self.ids.append(found["id"])
        self.links += [found[key] for key in ("href", "src") if key in found]
        if tag == "th":
            self.cells.append(found.get("scope"))

    def handle_endtag(self, tag):
        if not self.open or self.open.pop() != tag:
            self.wrong.append((tag, self.getpos()))


@pytest.fixture(scope="module")
def page():
    reader = Reader()
    reader.feed((GUIDE / "method.html").read_text(encoding="utf-8"))
    reader.close()
    return reader


def sources():
    folders = ("algorithms", "plugin", "tests", "sample_layers")
    return [
        path for folder in folders for path in sorted((ROOT / folder).rglob("*.py")) if path != pathlib.Path(__file__)
    ]


def test_well_formed_and_alone(page):
    assert not page.open and not page.wrong
    assert len(page.ids) == len(set(page.ids)) and page.cells and all(page.cells)
    for link in page.links:
        assert "://" not in link, link
        assert (link[1:] in page.ids) if link.startswith("#") else (GUIDE / link).is_file(), link


def test_sections_that_the_code_cites_are_there(page):
    cited = {
        number for path in sources() for found in CITED.findall(path.read_text(encoding="utf-8")) for number in found
    }
    cited.discard("")
    assert {"2", "3", "4", "5", "6", "8", "9"} <= cited
    assert {f"section-{number}" for number in cited} <= set(page.ids)


@pytest.mark.parametrize("path", sources(), ids=lambda path: str(path.relative_to(ROOT)))
def test_nothing_else_is_cited(path):
    """A page that is not in the repository cannot be read by whoever has the repository."""
    assert not re.search(r"\bMETHOD(?:'s)?(?: sections?)? (?:\d|measured|share)", path.read_text(encoding="utf-8"))
