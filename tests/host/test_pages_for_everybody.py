"""Every page that is written, as those meet it who do not see it, or do not see its colours: landmarks, headings,
tables, pictures in words that are true by their numbers, and no row that a shade alone tells apart."""

import importlib
import json
import re
from pathlib import Path

import pytest

from tests.guide_reader import Page

qgis_core = pytest.importorskip("qgis.core")

ROOT = Path(__file__).resolve().parents[2]
SAMPLE = ROOT / "sample_layers" / "range"
MINUS = "\u2212"
WRITTEN = ("report", "untold", "curvature", "sheet", "both", "setout", "compare", "levelling", "read_me")
GUIDE = sorted(path.name for path in (ROOT / "plugin" / "guide").glob("*.html"))


@pytest.fixture(scope="module")
def pages(host, tmp_path_factory):
    """{name: Page} of all that entries write of the range, and of the guide."""
    import processing

    folder = tmp_path_factory.mktemp("pages")
    axis = str(SAMPLE / "axis.gpkg")

    def run(entry, **parameters):
        processing.run(f"tautline:{entry}", parameters, feedback=qgis_core.QgsProcessingFeedback(False))

    def table(name):
        return str(folder / f"{name}.gpkg")

    def page(name):
        return str(folder / f"{name}.html")

    for name, heights in (("stations", "heights.csv"), ("later", "heights_later.csv")):
        run("placestations", INPUT=str(SAMPLE / heights), AXIS=axis, OUTPUT=table(name))
    start = {"STATIONS": table("stations"), "AXIS": axis, "UNDULATION": "field"}
    run("designheights", **start, LINE="fitted", LINE_TOLERANCE=0.01, OUTPUT=table("residuals"))
    run("designheights", **start, OUTPUT=table("heights"))
    run("fitreference", **start, SIGMA=0.003, OUTPUT=table("tested"), REFERENCE=table("lines"))
    run("testcurvature", **start, SIGMA=0.003, OUTPUT=table("curvature"), HTML=page("curvature"))
    run(
        "reviewreport",
        STATIONS=table("residuals"),
        AXIS=axis,
        TESTED=table("tested"),
        REFERENCE=table("lines"),
        CURVATURE=table("curvature"),
        HTML=page("report"),
    )
    layer = qgis_core.QgsVectorLayer(table("heights"), "untold", "ogr").materialize(qgis_core.QgsFeatureRequest())
    status = layer.fields().indexOf("status")
    layer.dataProvider().changeAttributeValues(
        {
            one.id(): {status: "no tolerance"}
            for one in layer.getFeatures()
            if one["status"] in ("within", "high", "low")
        }
    )
    run("reviewreport", STATIONS=layer, HTML=page("untold"))
    run("scheduleadjustments", STATIONS=table("heights"), STEP=0.001, OUTPUT="memory:", SHEET=page("sheet"))
    run("scheduleadjustments", STATIONS=table("residuals"), OUTPUT="memory:", SHEET=page("both"), SETOUT=page("setout"))
    run("comparesurveys", SURVEYS=[table("stations"), table("later")], REPORT=page("compare"), OUTPUT="memory:")
    levelled = {"INPUT": str(SAMPLE / "levelling.csv"), "BENCHMARKS": str(SAMPLE / "benchmarks.csv")}
    run("adjustlevelling", **levelled, LIMIT_FACTOR=0.1, OUTPUT="memory:", SUMMARY=page("levelling"))
    try:
        example = importlib.import_module("tautline.plugin.example_guide")
        (folder / "read_me.html").write_text(example.page(True), encoding="utf-8")
    except ImportError:  # a host without its window library
        pass
    found = {path.stem: Page(path) for path in folder.glob("*.html")}
    return {**found, **{name: Page(ROOT / "plugin" / "guide" / name) for name in GUIDE}}


@pytest.fixture(params=[*WRITTEN, *GUIDE])
def page(request, pages):
    if request.param == "read_me" and request.param not in pages:
        pytest.skip("this host was built without its window library")
    return pages[request.param]


def test_language_title_landmark_and_headings(page):
    assert page.wrong == [] and page.source.startswith("<!DOCTYPE html>")
    html, title, main, body = (list(page.root.all(tag)) for tag in ("html", "title", "main", "body"))
    assert len(html) == len(title) == len(main) == 1 and html[0].attributes["lang"] == "en" and title[0].text
    headings = list(page.root.all("h1", "h2", "h3", "h4", "h5", "h6"))
    levels = [int(node.tag[1]) for node in headings]
    assert levels[0] == 1 and levels.count(1) == 1 and all(node.text for node in headings)
    assert all(below - above <= 1 for above, below in zip(levels, levels[1:]))
    # All that is read stands in the landmark, but for the guide's own links from page to page.
    outside = [node for node in body[0].children if getattr(node, "tag", "main") not in ("main", "nav")]
    assert outside == [] and all(node.within("main") is main[0] for node in headings)
    assert all(node.attributes.get("aria-label") for node in page.root.all("nav"))


def test_ids_are_unique_and_what_is_referred_to_is_there(page):
    ids = set(page.ids)
    assert len(page.ids) == len(ids)
    for node in page.root.all():
        for key in ("aria-labelledby", "aria-describedby", "for", "headers"):
            assert set(node.attributes.get(key, "").split()) <= ids, node.attributes
    inside = re.findall(r'(?:xlink:href="#|url\(#)([^")]+)', page.source)
    assert set(inside) <= ids


def test_tables_say_what_their_cells_are_of(page):
    for table in page.root.all("table"):
        heads = list(table.all("th"))
        assert heads and all(node.attributes.get("scope") in ("col", "row", "colgroup") for node in heads)
        assert all(node.text for node in heads), page.name
        rows = [row for row in table.all("tr") if any(cell.tag == "td" for cell in row.all("td", "th"))]
        # Each cell has a heading above it, or one before it.
        above = [node for node in heads if node.attributes["scope"] == "col"]
        for row in rows:
            cells = list(row.all("td", "th"))
            before = cells[0].tag == "th" and cells[0].attributes["scope"] == "row"
            assert before or len(above) == len(cells), page.name


def test_pictures_have_words_and_captions_are_not_hidden(page):
    for node in page.root.all():
        if node.attributes.get("role") == "img":
            assert node.tag == "svg" and len(node.attributes["aria-label"].split()) > 8
            assert not list(node.all("figcaption", "title"))
        assert node.attributes.get("aria-hidden") != "true"
    for node in page.root.all("svg"):
        assert node.attributes.get("role") == "img" and re.search(r"\d", node.attributes["aria-label"])
    for node in page.root.all("figure"):
        assert [child.tag for child in node.all("figcaption")] == ["figcaption"] and node.attributes.get("role") is None
        assert next(node.all("figcaption")).text and len(list(node.all("svg", "img"))) >= 1
    for node in page.root.all("img"):
        # A legend's symbol stands before its words.
        beside = node.parent.text if node.parent.tag == "li" else ""
        assert "alt" in node.attributes and (len(node.attributes["alt"].split()) > 3 or beside)
        assert not (beside and node.attributes["alt"])


def test_what_scrolls_can_be_reached_by_keys(page):
    for node in page.root.all("div", "pre"):
        if "wide" in node.classes or node.tag == "pre" and page.name not in GUIDE:
            assert node.attributes.get("tabindex") == "0"
    assert not [node for node in page.root.all() if int(node.attributes.get("tabindex", 0)) > 0]


# --- what the pictures show, by the numbers of the sample, which are computed without the plugin


def known(axis, *statuses):
    rows = json.loads((SAMPLE / "expected.json").read_text("utf-8"))["stations"]
    return [row for row in rows if axis in (row["axis"], "") and (not statuses or row["status"] in statuses)]


def millimetres(value):
    return f"{1000 * value:+.1f} mm".replace("-", MINUS)


def test_profiles_in_words(pages):
    words = [node.attributes["aria-label"] for node in pages["report"].root.all("svg")]
    assert len(words) == 3
    for axis, text in zip(("Alder", "Birch", "Cedar"), words):
        rows = known(axis)
        measured = sorted((row for row in rows if row["residual"] is not None), key=lambda row: row["residual"])
        counts = [len(known(axis, status)) for status in ("within", "high", "low")]
        lowest, highest = measured[0], measured[-1]
        assert f"Profile of {axis} from {rows[0]['station']} to {rows[-1]['station']}" in text
        for row in (lowest, highest):
            assert f"{millimetres(row['residual'])} at {row['station']}" in text
        assert "{} are within the tolerance, {} too high, {} too low.".format(*counts) in text
    assert "at most 14.6 mm left, at 0+900" in words[2]
    assert not any("tolerance" in node.attributes["aria-label"] for node in pages["untold"].root.all("svg"))


def test_maps_in_words(pages):
    counts = [len(known("", status)) for status in ("within", "high", "low", "no height")]
    alt = next(node.attributes["alt"] for node in pages["report"].root.all("img") if node.attributes["alt"])
    assert alt.startswith("Map of the stations along Alder, Birch, Cedar")
    assert "{} within the tolerance, {} high, {} low. {} without".format(*counts) in alt
    alt = next(node.attributes["alt"] for node in pages["untold"].root.all("img") if node.attributes["alt"])
    assert f"{sum(counts[:3])} stations" in alt and "no tolerance was stated" in alt


def test_changes_in_words(pages):
    """The heights of the list have a standard deviation each, so there are intervals; the sentences are the log's."""
    figures = list(pages["compare"].root.all("figure"))
    assert figures
    text = pages["compare"].root.text
    for figure in figures:
        words = next(figure.all("svg")).attributes["aria-label"]
        assert "95 % intervals" in words and "95 % intervals" in next(figure.all("figcaption")).text
        said = re.split(r"(?<=\.) (?=[A-Z])", words)
        assert any(sentence in text for sentence in said[2:]), words


def test_no_intervals_are_told_where_none_are_drawn(toolbox, tmp_path):
    def survey(name, shift):
        rows = [
            {"at": (500000.0 + 10 * k, 5540000.0), "axis": "a", "station": f"0+0{k}0", "chainage": 10.0 * k}
            for k in range(8)
        ]
        return toolbox.points(
            [{**row, "height": 50.0 + shift * k} for k, row in enumerate(rows)], "EPSG:32631", name=name
        )

    place = tmp_path / "page.html"
    toolbox.run("comparesurveys", SURVEYS=[survey("one", 0.0), survey("two", 0.002)], REPORT=str(place))
    page = Page(place)
    assert list(page.root.all("svg"))
    assert all("interval" not in node.attributes["aria-label"] for node in page.root.all("svg"))
    assert all("intervals" not in node.text for node in page.root.all("figcaption"))


# --- no row is told apart by its shade alone

SHADED = {
    "report": {"out": ("counts",)},
    "untold": {},
    "sheet": {"out": ("high", "low", "Measure again", "Left out"), "act": ("▲", "▼"), "quiet": ("Keep", "No as-built")},
    "both": {"out": ("stays", "Measure again", "Set aside"), "act": ("▲", "▼", "◀", "▶"), "quiet": ("Keep", "No ")},
    "compare": {"act": ("▲", "▼", "◀", "▶"), "quiet": ("not significant", "not judged")},
    "levelling": {"out": ("beyond", "suspected blunder"), "quiet": ("no benchmark",)},
}


@pytest.mark.parametrize("name", SHADED)
def test_what_is_shaded_is_written_too(pages, name):
    seen = set()
    for row in pages[name].root.all("tr"):
        for kind in row.classes:
            seen.add(kind)
            assert any(word in row.text for word in SHADED[name][kind]), (kind, row.text)
    assert not SHADED[name] or seen


def test_counts_stands_in_shaded_rows_alone(pages):
    rows = [row for row in pages["report"].root.all("tr") if list(row.all("td"))]
    marked = [row for row in rows if row.text.endswith("counts")]
    assert len(marked) >= 8 and all("out" in row.classes for row in marked)
    assert sum("out" in row.classes for row in rows) == len(marked)
