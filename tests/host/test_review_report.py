"""Toolbox entry reviewreport: both documents read back, the numbers in them, names that are code, bad inputs."""

import json
import re
import shlex
import shutil
import subprocess
from html import unescape
from html.parser import HTMLParser
from pathlib import Path

import pytest

qgis_core = pytest.importorskip("qgis.core")

SAMPLE = Path(__file__).resolve().parents[2] / "sample_layers" / "range"
MINUS = "\u2212"
LONG = {"record": "string(0)"}  # texts of any length


def read_with(tool, *arguments):
    """Output of a tool of poppler-utils, which tests/run.sh installs."""
    if shutil.which(tool) is None:
        pytest.skip(f"{tool} is not installed (package poppler-utils), so the PDF cannot be read back")
    return subprocess.run([tool, *map(str, arguments)], capture_output=True, check=True).stdout


def pdf_pages(path):
    """Text of each page."""
    return read_with("pdftotext", "-layout", path, "-").decode("utf-8").split("\f")[:-1]


def pixels(path, page, folder):
    """A page as the host's image."""
    from qgis.PyQt.QtGui import QImage

    read_with("pdftoppm", "-r", "40", "-f", page, "-l", page, "-png", "-singlefile", path, folder / f"page{page}")
    image = QImage(str(folder / f"page{page}.png"))
    assert not image.isNull()
    return image


def colours(image, left=0.0, top=0.0, right=1.0, bottom=1.0):
    """Different colours in a part of an image."""
    return {
        image.pixel(x, y)
        for x in range(int(left * image.width()), int(right * image.width()))
        for y in range(int(top * image.height()), int(bottom * image.height()))
    }


class Page(HTMLParser):
    """Rows of tables, sources of pictures, names of tags, and the text of a page."""

    def __init__(self, path):
        super().__init__()
        self.rows, self.sources, self.alts, self.tags, self.text, self._cell = [], [], [], [], [], None
        self.source = Path(path).read_text("utf-8")
        self.feed(self.source)

    def handle_starttag(self, tag, attrs):
        self.tags.append(tag)
        given = dict(attrs)
        if tag == "tr":
            self.rows.append([])
        if tag in ("td", "th"):
            self._cell = []
        if tag == "img":
            self.alts.append(given.get("alt"))
        self.sources += [given[key] for key in ("src", "href", "xlink:href") if key in given]

    def handle_endtag(self, tag):
        if tag in ("td", "th") and self._cell is not None:
            self.rows[-1].append("".join(self._cell))
            self._cell = None

    def handle_data(self, data):
        self.text.append(data)
        if self._cell is not None:
            self._cell.append(data)

    @property
    def words(self):
        return " ".join(" ".join(self.text).split())


@pytest.fixture(scope="module")
def light_range(host, tmp_path_factory):
    """The range from its height list to its report: folder, results and expected figures."""
    import processing

    folder = tmp_path_factory.mktemp("range")
    axis, out = str(SAMPLE / "axis.gpkg"), {}

    def run(entry, **parameters):
        return processing.run(f"tautline:{entry}", parameters, feedback=qgis_core.QgsProcessingFeedback(False))

    place = {name: str(folder / f"{name}.gpkg") for name in ("stations", "residuals", "tested", "lines", "curvature")}
    run("placestations", INPUT=str(SAMPLE / "heights.csv"), AXIS=axis, OUTPUT=place["stations"])
    run("designheights", STATIONS=place["stations"], AXIS=axis, UNDULATION="field", OUTPUT=place["residuals"])
    run(
        "fitreference",
        STATIONS=place["stations"],
        AXIS=axis,
        FIT="line",
        SIGMA=0.003,
        UNDULATION="field",
        OUTPUT=place["tested"],
        REFERENCE=place["lines"],
    )
    run(
        "testcurvature",
        STATIONS=place["stations"],
        AXIS=axis,
        SIGMA=0.003,
        UNDULATION="field",
        OUTPUT=place["curvature"],
    )
    out = run(
        "reviewreport",
        STATIONS=place["residuals"],
        AXIS=axis,
        IMAGERY=str(SAMPLE / "imagery.tif"),
        TESTED=place["tested"],
        REFERENCE=place["lines"],
        CURVATURE=place["curvature"],
        PROJECT="Invented project",
        STRUCTURE="Range",
        PREPARED_BY="Prepared Person",
        CHECKED_BY="Checking Person",
        HTML=str(folder / "report.html"),
        PDF=str(folder / "report.pdf"),
    )
    expected = json.loads((SAMPLE / "expected.json").read_text("utf-8"))
    return {**place, "results": out, "html": out["HTML"], "pdf": out["PDF"], "expected": expected, "folder": folder}


def expected_rows(light_range):
    return light_range["expected"]["stations"]


def test_numbers_out(light_range):
    rows = [row for row in expected_rows(light_range) if row["residual"] is not None]
    found = light_range["results"]
    assert found["COUNT"] == len(rows) and found["WITHIN"] == sum(row["status"] == "within" for row in rows)
    assert found["MAX_ABS"] == pytest.approx(max(abs(row["residual"]) for row in rows), abs=1e-6)


def test_every_station_of_the_sample_is_in_the_page_with_its_residual(light_range):
    """Against expected.json, which is computed without the plugin."""
    page = Page(light_range["html"])
    cells = [row for row in page.rows if len(row) > 6]
    for row in expected_rows(light_range):
        text = "" if row["residual"] is None else f"{1000 * row['residual']:+.1f}".replace("-", MINUS)
        text = "0.0" if text in ("+0.0", MINUS + "0.0") else text
        assert any(cell[0] == row["station"] and cell[3] == text for cell in cells), row


def test_the_verdict_of_the_sample(light_range):
    """What the sample's README says was built in: two blunders, and a stretch that has settled."""
    words = Page(light_range["html"]).words
    assert "Range was not built to its design within the tolerance of ±10.0 mm: 112 of 117 stations" in words
    assert "1+600 to 1+700 of Alder lie low together" in words
    doubted = words[words.index("but doubted") : words.index("No as-built height")]
    assert "0+850" in doubted and "1+150" in doubted and "1+650" not in doubted
    assert "2+300 of Alder; 0+700 of Cedar" in words
    assert "Axis 'Alder' is straight in space" in words


def test_the_page_stands_alone_and_is_accessible(light_range):
    page = Page(light_range["html"])
    assert page.sources and all(source.startswith(("data:", "#")) for source in page.sources)
    assert not {"script", "link", "iframe", "object", "video"} & set(page.tags)
    assert [alt for alt in page.alts if alt] and page.source.count('role="img"') == page.tags.count("svg") == 3
    assert page.tags.count("h1") == 1 and page.tags.count("h2") >= 9
    assert "thead { display: table-header-group; }" in page.source and 'lang="en"' in page.source
    assert not re.search(r"\d[eE][-+]\d\d", page.words)
    assert "page 1" not in page.words and "None" not in page.words and "nan" not in page.words.split()


def test_what_was_computed_is_told(light_range):
    words = Page(light_range["html"]).words
    for text in (
        "inclined: straight",
        "0+000, 3742.6000 m (stated)",
        MINUS + "0.00008180",
        "of the geoid",
        "3786.0000 m",
        "a = 6378137.000 m",
        "above the geoid, undulations of the stations from a field",
        "EPSG:32719",
        "PROJ",
        "Tautline",
        "QGIS",
        "2025-03-11",
        "licensed surveyor or engineer",
        "local codes",
        "as-built minus design",
        "Prepared Person",
        "Checking Person",
        "Vertical RMS (mm)",
    ):
        assert text in words, text


def test_the_pdf_says_the_same(light_range):
    pages = pdf_pages(light_range["pdf"])
    text = "\n".join(pages)
    for number, page in enumerate(pages, 1):
        assert f"page {number} of {len(pages)}" in page and "For review, not for setting out." in page
    flat = " ".join(text.split())
    assert "112 of 117 stations with a height are within it." in flat and "straight in space" in flat
    for row in expected_rows(light_range):
        if row["residual"] is not None and abs(row["residual"]) > 0.0001:
            size = f"{1000 * row['residual']:+.1f}".replace("-", MINUS)
            assert re.search(re.escape(row["station"]) + r"\s.*" + re.escape(size) + r"\s", text), row
    assert not re.search(r"\d[eE][-+]\d\d", flat)


def test_the_map_is_not_blank(light_range, tmp_path):
    pages = pdf_pages(light_range["pdf"])
    number = next(k for k, page in enumerate(pages, 1) if "High: above the tolerance" in page)
    assert len(colours(pixels(light_range["pdf"], number, tmp_path), 0.1, 0.6, 0.9, 0.8)) > 500


def test_nothing_is_cut_off_on_paper(light_range):
    """Every word lies within the page, by its box."""
    boxes = read_with("pdftotext", "-bbox", light_range["pdf"], "-").decode("utf-8")
    words = [
        tuple(map(float, found))
        for found in re.findall(
            r'<word xMin="([-\d.]+)" yMin="([-\d.]+)" '
            r'xMax="([-\d.]+)" yMax="([-\d.]+)"',
            boxes,
        )
    ]
    assert len(words) > 1000
    assert all(x1 > 30 and y1 > 30 and x2 < 567 and y2 < 830 for x1, y1, x2, y2 in words)


def test_the_calls_make_it_again(light_range, tmp_path):
    """The lines are read as a shell reads them, and run."""
    import processing

    page = Page(light_range["html"])
    lines = re.search(r"<pre[^>]*>(.*?)</pre>", page.source, re.DOTALL)[1]
    words = shlex.split(unescape(lines).replace("\\\n", " "), comments=False)
    entries = [words[k + 2] for k, word in enumerate(words) if word == "qgis_process"]
    assert entries == [
        f"tautline:{name}"
        for name in ("placestations", "designheights", "fitreference", "testcurvature", "reviewreport")
    ]
    folder = words[1]
    start = words.index("tautline:designheights")
    given = dict(word[2:].split("=", 1) for word in words[start + 1 : words.index("qgis_process", start)])
    given = {
        key: value if Path(value.split("|")[0]).is_absolute() or "." not in value else folder + value
        for key, value in given.items()
    }
    found = processing.run(
        words[start], {**given, "OUTPUT": str(tmp_path / "again.gpkg")}, feedback=qgis_core.QgsProcessingFeedback(False)
    )
    assert found["COUNT"] == 117 and found["WITHIN"] == 112


def reviewed(number, axis="line", name="stations", spacing=10.0, **more):
    """Rows like those of designheights: a sine of residuals, in millimetres within ±4."""
    import math

    return [
        {
            "at": (500000.0 + spacing * k, 5540000.0),
            "axis": axis,
            "station": f"{k // 100}+{k % 100 * 10:03d}",
            "chainage": spacing * k,
            "offset": 0.0,
            "design_h": 50.0,
            "residual": 0.004 * math.sin(7.0 * k),
            "flat_h": 50.0,
            "curv_eff": 0.0,
            "status": "no tolerance",
            **more,
        }
        for k in range(number)
    ]


def write(toolbox, folder, rows, name="stations", feedback=None, **more):
    layer = toolbox.points(rows, "EPSG:32631", name=name)
    return toolbox.run(
        "reviewreport",
        feedback,
        OUTPUT=None,
        STATIONS=layer,
        HTML=str(folder / "r.html"),
        PDF=str(folder / "r.pdf"),
        **more,
    )


@pytest.mark.parametrize(
    "path", ["/a/b c.gpkg", "/a/it's.gpkg", "/a/back\\slash.gpkg", 'C:/x "y".gpkg', "/a/plain.gpkg"]
)
def test_the_file_of_a_destination_is_read_as_the_host_reads_it(path):
    from tautline.algorithms.entry.recorded_paths import database_path

    uri = qgis_core.QgsDataSourceUri()
    uri.setDatabase(path)
    uri.setTable("stations")
    assert database_path("ogr:" + uri.uri()) == path == qgis_core.QgsDataSourceUri(uri.uri()).database()
    assert database_path("TEMPORARY_OUTPUT") == ""


def test_five_stations_and_nothing_else(toolbox, tmp_path):
    run = write(toolbox, tmp_path, reviewed(5))
    words = Page(run.results["HTML"]).words
    for text in (
        "No tolerance was stated",
        "no table of curvature was supplied",
        "Blunders: not tested",
        "Decisions: none were supplied",
        "No imagery was supplied",
        "only 5 stations are left",
        "no reference was supplied",
        "carry no record",
    ):
        assert text in words, text
    assert run.results["COUNT"] == 5 and not run.warnings and "Axis 'line' How to" not in words
    pages = pdf_pages(run.results["PDF"])
    assert 2 <= len(pages) <= 5 and "No tolerance was stated" in " ".join(pages[0].split())


def test_five_thousand_stations(toolbox, tmp_path):
    rows = reviewed(5000)
    run = write(toolbox, tmp_path, rows)
    assert Path(run.results["HTML"]).stat().st_size < 4e6
    pages = pdf_pages(run.results["PDF"])
    first = next(k for k, page in enumerate(pages) if "All stations" in page)
    table = pages[first:]
    assert all("As-built (m)" in page and "Design (m)" in page for page in table), "the heading is repeated"
    found = [line.split()[0] for page in table for line in page.splitlines() if re.match(r"\s*\d+\+\d{3}\s", line)]
    assert found == [row["station"] for row in rows], "each once, in order, none lost at the end of a page"
    assert f"page {len(pages)} of {len(pages)}" in pages[-1]


def test_the_file_tells_its_title_and_not_the_users_name(light_range):
    told = read_with("pdfinfo", light_range["pdf"]).decode("utf-8")
    assert re.search(r"Title:\s+Review report: Range\n", told) and re.search(r"Author:\s+Prepared Person\n", told)


def test_the_file_tells_its_language_and_shows_its_title(light_range, tmp_path):
    """In the catalog that its last trailer names; it is not tagged, which the host's writer of PDF cannot do."""
    import processing

    slide = tmp_path / "slide.pdf"
    processing.run(
        "tautline:reviewreport",
        {"STATIONS": light_range["residuals"], "STRUCTURE": "Range", "SLIDE": str(slide)},
        feedback=qgis_core.QgsProcessingFeedback(False),
    )
    assert "Title:           Review of Range: one slide\n" in read_with("pdfinfo", slide).decode("utf-8")
    for place in (light_range["pdf"], slide):
        pdf = Path(place).read_bytes()
        root = re.findall(rb"/Root (\d+) 0 R", pdf)[-1]
        catalog = pdf[pdf.rindex(b"\n" + root + b" 0 obj") :]
        catalog = catalog[: catalog.index(b"endobj")]
        assert b"/Lang (en)" in catalog and b"/DisplayDocTitle true" in catalog and b"/Pages" in catalog
        told = read_with("pdfinfo", place).decode("utf-8")
        assert re.search(r"Pages:\s+[1-9]", told) and len(pdf_pages(place)) == int(
            re.search(r"Pages:\s+(\d+)", told)[1]
        )


def test_no_text_on_paper_is_small(light_range):
    """At least 8 points, code 7.5: by the boxes of the words, which are 1.164 times as high in the fonts used."""
    boxes = read_with("pdftotext", "-bbox", light_range["pdf"], "-").decode("utf-8")
    words = re.findall(r'<word xMin="[-\d.]+" yMin="([-\d.]+)" xMax="[-\d.]+" yMax="([-\d.]+)">(.*?)</word>', boxes)
    sizes = [((float(low) - float(high)) / 1.164, word) for high, low, word in words]
    assert len(sizes) > 1000 and min(sizes)[0] > 7.4
    code = re.findall(r"<pre[^>]*>(.*?)</pre>", Path(light_range["html"]).read_text("utf-8"), re.DOTALL)
    typed = "".join(unescape("".join(code)).split())
    assert [word for size, word in sizes if size < 7.7 and unescape(word) not in typed] == []


def test_no_text_in_charts_on_paper_is_small():
    from tautline.algorithms.documents import pdf
    from tautline.algorithms.report import profile_chart

    assert profile_chart._TYPE * pdf._CHART / (25.4 * profile_chart._WIDTH) >= 8.0


def test_the_author_is_written_in_any_script_and_left_out_where_there_is_none(toolbox, tmp_path):
    for author in ("\u010capek \u5f20 (\\)", ""):
        run = write(toolbox, tmp_path, reviewed(3), PREPARED_BY=author)
        told = read_with("pdfinfo", run.results["PDF"]).decode("utf-8")
        assert re.findall(r"Author:\s+(.*)\n", told) == [author] * bool(author) and "Title:  " in told
        assert (
            Path(run.results["PDF"]).read_bytes().rstrip().endswith(b"%%EOF") and len(pdf_pages(run.results["PDF"])) > 1
        )


def test_pages_are_not_kept(toolbox, tmp_path):
    """Ten times the pages take ten times the time, not a hundred times, and hardly more room."""
    from resource import RUSAGE_SELF, getrusage
    from time import process_time

    write(toolbox, tmp_path, reviewed(5))
    layer, used = toolbox.points(reviewed(4000), "EPSG:32631"), []
    room = getrusage(RUSAGE_SELF).ru_maxrss
    for rows in (toolbox.points(reviewed(400), "EPSG:32631"), layer):
        start = process_time()
        toolbox.run("reviewreport", OUTPUT=None, STATIONS=rows, PDF=str(tmp_path / "long.pdf"))
        used.append(process_time() - start)
    assert used[1] < 25.0 * used[0] and getrusage(RUSAGE_SELF).ru_maxrss - room < 150_000, "kilobytes"


def test_a_pdf_that_is_cut_short_is_refused(toolbox, tmp_path, monkeypatch):
    """As on a full disk, of which the painter says nothing."""
    from tautline.algorithms.documents import pdf

    class Full(pdf.Sheets):
        def close(self):
            super().close()
            whole = self.path.read_bytes()
            self.path.write_bytes(whole[: len(whole) // 2])

        def __init__(self, path, *more):
            self.path = path
            super().__init__(path, *more)

    monkeypatch.setattr(pdf, "Sheets", Full)
    place = tmp_path / "r.pdf"
    layer = toolbox.points(reviewed(3), "EPSG:32631")
    text = toolbox.refusal("reviewreport", OUTPUT=None, STATIONS=layer, PDF=str(place))
    assert "The PDF could not be written." in text and not place.exists()


def decided(rows):
    """A table of decisions; the toolbox's own way of making tables takes 'at' for a place."""
    fields = "&".join(f"field={name}:string(0)" for name in ("axis", "station", "decision", "note", "by", "at"))
    layer = qgis_core.QgsVectorLayer(f"NoGeometry?{fields}", "decisions", "memory")
    for row in rows:
        feature = qgis_core.QgsFeature(layer.fields())
        feature.setAttributes(list(row))
        assert layer.dataProvider().addFeature(feature)
    return layer


NAUGHTY = "<script>alert(1)</script>"
FORMULA = "[% 40 + 2 %]"


def test_names_that_are_code_are_shown_as_text(toolbox, tmp_path):
    rows = reviewed(6, axis=FORMULA)
    rows[2]["station"] = '<img src="x">'
    decisions = decided([(FORMULA, '<img src="x">', "accept", NAUGHTY, "& <b>", "")])
    run = write(
        toolbox,
        tmp_path,
        rows,
        name=NAUGHTY,
        DECISIONS=decisions,
        PROJECT=FORMULA,
        STRUCTURE=NAUGHTY,
        PREPARED_BY="<i>P</i>",
        CHECKED_BY="$x^2$ \\alpha",
    )
    page = Page(run.results["HTML"])
    assert not {"script", "i"} & set(page.tags) and NAUGHTY not in page.source and NAUGHTY in page.words
    assert '<img src="x">' in [row[0] for row in page.rows if row] and "x" not in page.sources
    text = " ".join(" ".join(pdf_pages(run.results["PDF"])).split())
    assert NAUGHTY in text and "<i>P</i>" in text and "$x^2$" in text
    assert "40 + 2" in text and " 42 " not in text, "an expression in a name is not run"


def test_feet_and_decisions(toolbox, tmp_path):
    rows = reviewed(12, status="within", sd=0.01)
    for row in rows:
        row.update(design_h=120.0, residual=0.01, status="within")
    rows[4].update(residual=0.2, status="high")
    rows[7].update(residual=-0.3, status="low")
    rows[9].update(residual=0.25, status="high")
    decide = [(4, "accept", "shim on order"), (7, "reading error", ""), (9, "measure again", "")]
    decisions = decided(
        [("line", rows[k]["station"], word, note, "Somebody", "2026-01-02") for k, word, note in decide]
    )
    summary = toolbox.table([{"axis": "line", "tolerance": 0.1, "record": ""}])
    run = write(toolbox, tmp_path, rows, HEIGHT_UNIT="foot", DECISIONS=decisions, SUMMARY=summary)
    page = Page(run.results["HTML"])
    assert "cannot be said yet" in page.words and "±0.100 ft" in page.words and "international foot" in page.words
    assert "Beyond the tolerance and accepted by decision: 0+040 (+0.200 ft)" in page.words
    (row,) = [row for row in page.rows if len(row) > 6 and row[0] == "0+040"][-1:]
    assert (
        row[1:4] == ["120.200", "120.000", "+0.200"]
        and "Somebody, 2026-01-02" in row[-1]
        and "shim on order" in row[-1]
    )
    assert "standard deviation of 0.010 ft" in page.words


def test_the_record_may_come_from_the_summary(toolbox, tmp_path):
    record = {
        "entry": "tautline:designheights",
        "parameters": {"DESIGN": "chord"},
        "units": {"height_name": "us_foot", "chainage_name": "us_foot"},
        "versions": {"Tautline": "9.9.9"},
        "height_system": "unknown",
        "axes": {
            "line": {
                "design": "chord",
                "tolerance": 0.02,
                "controls": [{"chainage": 0.0, "height": 50.0, "typed": False}],
            }
        },
    }
    summary = toolbox.table([{"axis": "line", "tolerance": 0.02, "record": json.dumps(record)}], types=LONG)
    words = Page(write(toolbox, tmp_path, reviewed(30, status="within"), SUMMARY=summary).results["HTML"]).words
    assert "US survey foot" in words and "Tautline 9.9.9" in words and "chord: straight between two controls" in words
    assert "the design was taken from the heights themselves" in words
    assert "5 seconds of arc" in words, "an unknown undulation is warned of"


def test_a_record_that_is_no_record_does_no_harm(toolbox, tmp_path):
    record = json.dumps(
        {
            "entry": "tautline:x; rm -rf /",
            "axes": {"line": {"controls": [3, {"chainage": "a"}], "design": ["x"]}},
            "units": 5,
            "versions": [1],
            "parameters": "text",
            "height_system": {"a": 1},
        }
    )
    summary = toolbox.table(
        [{"axis": "line", "tolerance": None, "record": record}], types={"tolerance": "double", **LONG}
    )
    page = Page(write(toolbox, tmp_path, reviewed(6), SUMMARY=summary).results["HTML"])
    assert "rm -rf" not in page.words


def test_statuses_without_the_tolerance_they_came_from(toolbox, tmp_path):
    rows = reviewed(6, status="within")
    rows[2].update(residual=0.3, status="high")
    words = Page(write(toolbox, tmp_path, rows, SIGMA=0.002).results["HTML"]).words
    assert "was not built to its design within the tolerance of its run (not recorded): 5 of 6 stations" in words
    assert "Certainty: not known, since the tolerance is not recorded" in words


def test_a_note_longer_than_a_page_is_cut_on_paper_and_marked(toolbox, tmp_path):
    rows = reviewed(4, status="within")
    run = write(
        toolbox,
        tmp_path,
        rows,
        DECISIONS=decided([("line", rows[1]["station"], "accept", "words " * 900 + "last", "", "")]),
    )
    assert "words last" in Page(run.results["HTML"]).words
    text = " ".join(" ".join(pdf_pages(run.results["PDF"])).split())
    assert "… (cut)" in text and all(re.search(re.escape(row["station"]) + r".{0,80}within", text) for row in rows)


def test_many_axes_long_names_and_stations_off_axis(toolbox, tmp_path):
    rows = [
        row
        for k in range(15)
        for row in reviewed(4, axis=f"axis {k} " + "of a very long name " * (8 if k == 1 else 0), status="within")
    ]
    for row in rows[:4]:
        row.update(residual=None, design_h=None, status="off axis")
    rows[9].update(axis="Unbroken" * 30)
    run = write(toolbox, tmp_path, rows, name="name " * 40, PREPARED_BY="Somebody " * 30)
    words = Page(run.results["HTML"]).words
    assert "Off axis and not reviewed: 4 stations." in words
    assert "Profiles of the first 12 of 15 axes are shown." in words
    boxes = read_with("pdftotext", "-bbox", run.results["PDF"], "-").decode("utf-8")
    assert all(float(right) < 567 for right in re.findall(r'xMax="([-\d.]+)"', boxes)), (
        "names that are too long are parted"
    )


def test_in_degrees_and_across_the_globe(toolbox, tmp_path):
    rows = reviewed(8)
    for k, row in enumerate(rows):
        row["at"] = (10.0 + 0.001 * k, 60.0)
    layer = toolbox.points(rows, "EPSG:4326")
    run = toolbox.run("reviewreport", OUTPUT=None, STATIONS=layer, PDF=str(tmp_path / "r.pdf"))
    assert "HTML" not in run.results and Path(run.results["PDF"]).read_bytes().startswith(b"%PDF")


def test_imagery_elsewhere_is_left_out_with_a_warning(toolbox, tmp_path):
    run = write(toolbox, tmp_path, reviewed(5), IMAGERY=str(SAMPLE / "imagery.tif"))
    assert any("does not cover the stations" in text for text in run.warnings)
    assert "No imagery was supplied" in Page(run.results["HTML"]).words


@pytest.mark.parametrize("at", [1, 3, 8])
def test_cancel_leaves_nothing(toolbox, log, tmp_path, at):
    layer = toolbox.points(reviewed(40), "EPSG:32631")
    text = toolbox.refusal(
        "reviewreport",
        log(cancel_at=at),
        OUTPUT=None,
        STATIONS=layer,
        HTML=str(tmp_path / "r.html"),
        PDF=str(tmp_path / "r.pdf"),
    )
    assert "Cancelled" in text and not list(tmp_path.iterdir())


def test_a_fit_of_another_shape_flags_no_blunders(toolbox, tmp_path):
    rows = reviewed(30, status="within")
    rows[3].update(residual=0.02, status="high")
    tested = toolbox.table(
        [
            {"axis": "line", "station": row["station"], "flag": "suspected blunder" if k % 2 else "kept", "w": 5.0}
            for k, row in enumerate(rows)
        ],
        name="t",
    )
    summary = toolbox.table([{"axis": "line", "tolerance": 0.01, "record": ""}])
    words = Page(write(toolbox, tmp_path, rows, TESTED=tested, SUMMARY=summary).results["HTML"]).words
    assert "the test flags 15 of 30 stations" in words
    assert "was not built to its design" in words and "but doubted" not in words


def test_in_a_worker_thread(host, light_range, tmp_path):
    from qgis.core import (
        QgsApplication,
        QgsProcessingAlgRunnerTask,
        QgsProcessingContext,
        QgsProcessingFeedback,
        QgsProject,
    )
    from qgis.PyQt.QtCore import QEventLoop, QTimer

    context, feedback = QgsProcessingContext(), QgsProcessingFeedback(False)
    context.setProject(QgsProject.instance())
    entry = QgsApplication.processingRegistry().algorithmById("tautline:reviewreport")
    parameters = {
        "STATIONS": light_range["residuals"],
        "AXIS": str(SAMPLE / "axis.gpkg"),
        "IMAGERY": str(SAMPLE / "imagery.tif"),
        "HTML": str(tmp_path / "r.html"),
        "PDF": str(tmp_path / "r.pdf"),
    }
    answer, loop = [], QEventLoop()
    task = QgsProcessingAlgRunnerTask(entry, parameters, context, feedback)
    task.executed.connect(lambda well, results: (answer.append((well, results)), loop.quit()))
    QTimer.singleShot(60_000, loop.quit)
    QgsApplication.taskManager().addTask(task)
    loop.exec()
    assert answer and answer[0][0], feedback.textLog()
    assert len(colours(pixels(parameters["PDF"], 1, tmp_path), 0.1, 0.6, 0.9, 0.8)) > 500


def unreadable(toolbox):
    return {
        "no residual": ({"rows": [{"at": (0.0, 0.0), "height": 1.0}], "types": {}}, {}, "no field 'residual'"),
        "none": ({"rows": reviewed(3, residual=None)}, {}, "no station has a residual"),
        "nowhere": ({}, {"HTML": None, "PDF": None}, "Neither HTML nor PDF"),
        "sigma": ({}, {"SIGMA": 0.0}, "SIGMA is 0"),
        "sd": ({"rows": reviewed(3, sd=-0.001)}, {}, "field 'sd'"),
        "tested": (
            {},
            {
                "TESTED": toolbox.table(
                    [{"axis": "other", "station": "9+999", "flag": "kept", "w": 0.1}], name="elsewhere"
                )
            },
            "No station of layer 'elsewhere'",
        ),
        "not tested": (
            {},
            {"TESTED": toolbox.table([{"axis": "line", "station": "0+000"}], name="plain")},
            "'plain' (TESTED) holds no tested stations: it lacks the field flag",
        ),
        "w": (
            {},
            {"TESTED": toolbox.table([{"axis": "line", "station": "0+000", "flag": "kept", "w": "many"}], name="t")},
            "row 1: 'many' is not a number",
        ),
        "decisions": (
            {},
            {"DECISIONS": toolbox.table([{"axis": "line"}], name="d")},
            "lacks the field station, decision",
        ),
        "reference": ({}, {"REFERENCE": toolbox.table([{"axis": "line"}], name="r")}, "lacks the field 'name'"),
        "curvature": ({}, {"CURVATURE": toolbox.table([{"axis": "line"}], name="c")}, "lacks the field 'verdict'"),
        "axis": ({}, {"AXIS": toolbox.points([{"at": (0.0, 0.0)}], name="dots")}, "Layer 'dots' has points"),
        "one place": ({}, {"HTML": "same.html", "PDF": "same.html"}, "the same place"),
    }


@pytest.mark.parametrize(
    "case",
    [
        "no residual",
        "none",
        "nowhere",
        "sigma",
        "sd",
        "tested",
        "not tested",
        "w",
        "decisions",
        "reference",
        "curvature",
        "axis",
        "one place",
    ],
)
def test_bad_input(toolbox, tmp_path, case):
    given, more, wanted = unreadable(toolbox)[case]
    layer = toolbox.points(
        given.get("rows", reviewed(3)), "EPSG:32631", types=given.get("types", {"residual": "double"})
    )
    parameters = {"HTML": str(tmp_path / "r.html"), "PDF": str(tmp_path / "r.pdf"), **more}
    for key in ("HTML", "PDF"):
        if parameters[key] == "same.html":
            parameters[key] = str(tmp_path / "same.html")
    text = toolbox.refusal("reviewreport", OUTPUT=None, STATIONS=layer, **parameters)
    assert wanted in text, text
    assert not list(tmp_path.iterdir()), "nothing half written"


def test_what_stood_there_stays_where_one_document_cannot_be_written(toolbox, tmp_path):
    (tmp_path / "r.html").write_text("before")
    layer = toolbox.points(reviewed(3), "EPSG:32631")
    blocked = tmp_path / "folder.pdf"
    blocked.mkdir()
    (blocked / "full").write_text("x")
    toolbox.refusal("reviewreport", OUTPUT=None, STATIONS=layer, HTML=str(tmp_path / "r.html"), PDF=str(blocked))
    assert (tmp_path / "r.html").read_text() == "before" and (blocked / "full").exists()


@pytest.mark.parametrize(
    "names, title",
    [
        (("left rail",), "left rail"),
        (("left rail", "right rail"), "Structure of left rail and right rail"),
        (("a", "b", "c", "d"), "Structure of a, b, c and 1 more"),
        ((None,), "Axis 1"),
    ],
)
def test_the_report_is_titled_by_its_axes(toolbox, tmp_path, names, title):
    """Never by the layer, which every run calls 'Residuals'."""
    axes = [{"at": [(8.0, 50.0 + 0.1 * k), (8.02, 50.0 + 0.1 * k)], "name": n} for k, n in enumerate(names)]
    places = [(8.0 + 0.005 * j, 50.0 + 0.1 * k) for k in range(len(names)) for j in range(4)]
    stations = toolbox.points([{"at": at, "height": 5.0} for at in places])
    run = toolbox.run("designheights", STATIONS=stations, AXIS=toolbox.lines(axes), TOLERANCE=1.0)
    layer = run.layer()
    layer.setName("Residuals")
    page = tmp_path / "report.html"
    toolbox.run("reviewreport", OUTPUT=None, STATIONS=layer, HTML=str(page))
    text = page.read_text("utf-8")
    assert f"<title>Review report: {title}</title>" in text
    assert "Residuals was" not in text and f"{title} was built to its design" in Page(page).words


def test_chance_within_counts_the_controls(toolbox, tmp_path):
    """Midway between two stations of 2 mm, as good itself: 2 mm times the root of 1.5 against a tolerance of 4 mm is
    90 %; with heights that were typed for the chord, 95 %. By the normal distribution of the standard library."""
    from statistics import NormalDist

    stations, axis = toolbox.straight(sd=0.002)
    shares = {}
    for name, typed in (("stations", {}), ("typed", {"HEIGHT_A": 50.0, "HEIGHT_B": 50.0})):
        path, page = str(tmp_path / f"{name}.gpkg"), str(tmp_path / f"{name}.html")
        run = toolbox.run(
            "designheights",
            STATIONS=stations,
            AXIS=axis,
            TOLERANCE=0.004,
            UNDULATION="ellipsoidal",
            DESIGN="grade",
            OUTPUT=path,
            **typed,
        )
        toolbox.run("reviewreport", OUTPUT=None, STATIONS=path, HTML=page)
        read = Page(page)
        head = next(row for row in read.rows if "Probability within tolerance" in row)
        middle = run.rows()[5]
        line = next(row for row in read.rows if row and row[0] == middle["station"])
        shares[name] = line[head.index("Probability within tolerance")]
        spread = NormalDist(middle["residual"], 0.002 * (1.5**0.5 if name == "stations" else 1.0))
        wanted = 100.0 * (spread.cdf(0.004) - spread.cdf(-0.004))
        assert shares[name] == f"{wanted:.0f} %"
        said = "stations that the design goes through are counted" if name == "stations" else "taken as exact"
        assert said in read.words
    assert shares["stations"] != shares["typed"]


def test_an_axis_with_an_invalid_line_does_not_end_the_host(toolbox, tmp_path):
    """The host's own check of geometries throws out of the loop that reads them, which no Python survives."""
    stations, axis = toolbox.straight()
    results = str(tmp_path / "r.gpkg")
    toolbox.run("designheights", STATIONS=stations, AXIS=axis, OUTPUT=results)
    crs = stations.crs().authid()
    doubled = toolbox.lines([{"at": [(500000.0, 5540000.0), (500000.0, 5540000.0)], "name": "a"}], crs)
    toolbox.run("reviewreport", OUTPUT=None, STATIONS=results, AXIS=doubled, HTML=str(tmp_path / "r.html"))
    assert (tmp_path / "r.html").read_text("utf-8").endswith("</html>")
    far = toolbox.lines([{"at": [(500000.0, 5540000.0), (500100.0, 5540000.0)], "name": "a"}], "EPSG:4902")
    refused = toolbox.refusal("reviewreport", OUTPUT=None, STATIONS=results, AXIS=far, HTML=str(tmp_path / "far.html"))
    assert refused == "Layer 'axis', row 1: a vertex has no place on the map of the stations."
    assert not (tmp_path / "far.html").exists()


def test_the_calls_stand_in_the_order_in_which_they_are_needed(toolbox, tmp_path):
    """Also those on which the stations rest from further behind, and the fit whose reference they were judged by."""
    stations, axis = toolbox.straight(15)
    placed = toolbox.saved(stations, tmp_path / "points.gpkg").source()
    names = ("measured", "plane", "residuals")
    made = {name: str(tmp_path / f"{name}.gpkg") for name in names}
    toolbox.run("measurestations", STATIONS=placed, AXIS=axis, OUTPUT=made["measured"])
    toolbox.run("fitreference", STATIONS=made["measured"], AXIS=axis, SIGMA=0.003, REFERENCE=made["plane"])
    given = {"STATIONS": made["measured"], "AXIS": axis, "DESIGN": "reference", "REFERENCE": made["plane"]}
    toolbox.run("designheights", **given, TOLERANCE=0.01, OUTPUT=made["residuals"])
    page = tmp_path / "report.html"
    toolbox.run("reviewreport", OUTPUT=None, STATIONS=made["residuals"], HTML=str(page))
    called = re.findall(r"qgis_process run tautline:(\w+)", page.read_text("utf-8"))
    assert called == ["measurestations", "fitreference", "designheights", "reviewreport"]
