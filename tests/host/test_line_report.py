"""reviewreport of stations judged by line: both verdicts, both together, chart, tables, flags, slide, bad inputs.

What is expected is counted by hand from the departures laid out below; probabilities are scipy's.
"""

import json
import re
import shutil
import subprocess

import numpy as np
import pytest

qgis_core = pytest.importorskip("qgis.core")
stats = pytest.importorskip("scipy.stats")

# Millimetres; tolerances are 10 of heights and 8 of the line.
HIGH = [0.0, 2.0, -3.0, 12.0, 1.0, 0.0, 4.0, -2.0, 6.0, 1.0, 0.0]
RIGHT = [0.0, 1.0, -9.0, 3.0, 8.0, -2.0, 11.0, 12.0, 9.0, 7.5, 0.0]
WORDS = ("lateral", "beside", "in line", "radial", "sideways", "◀", "▶", "side ")


def record(line="chord", ends=(0.0, 1000.0), tolerance=0.008, **more):
    """As designheights leaves it on stations every 100 m."""
    axis = {"design": "chord", "tolerance": 0.01}
    axis.update({"line": line, "line_tolerance": tolerance} if line else {})
    axis.update({"line_ends": list(ends)} if line == "chord" else {})
    known = {"units": {"height_name": "metre", "chainage_name": "metre"}, "height_system": "unknown"}
    return {"schema": 1, "entry": "tautline:designheights", **known, "axes": {"wall": axis}, **more}


def stations(toolbox, right=RIGHT, high=HIGH, unit=1.0, told=None, sides=True, **more):
    rows = []
    for k, (v, l) in enumerate(zip(high, right)):  # noqa: E741 - as the formula has it
        status = "within" if abs(v) <= 10.0 else "high" if v > 0 else "low"
        side = "within" if l is None or abs(l) <= 8.0 else "right" if l > 0 else "left"
        line = {"lateral": None if l is None else l / 1000.0 / unit, "side": None if l is None else side}
        rows.append(
            {
                "at": (500000.0 + 100.0 * k, 5540000.0),
                "axis": "wall",
                "station": f"{k // 10}+{k % 10}00",
                "chainage": 100.0 * k / unit,
                "residual": v / 1000.0 / unit,
                "design_h": 50.0 / unit,
                "flat_h": 50.0 / unit,
                "status": status,
                **(line if sides else {}),
                **more,
            }
        )
    layer = toolbox.points(rows, "EPSG:32631", types={"lateral": "double", "side": "string"} if sides else None)
    if told is not None:
        layer.setCustomProperty("tautline/record", json.dumps(told))
    return layer


def write(toolbox, folder, layer, *, keys=("HTML",), **more):
    files = {"HTML": "r.html", "PDF": "r.pdf", "SLIDE": "r.png"}
    given = {key: str(folder / files[key]) for key in keys}
    return toolbox.run("reviewreport", OUTPUT=None, STATIONS=layer, **given, **more)


def text_of(run):
    """Text of the page, without its pictures."""
    page = open(run.results["HTML"], encoding="utf-8").read()
    page = re.sub(r"<(style|svg|script).*?</\1>", " ", page, flags=re.S)
    return " ".join(re.sub(r"<[^>]*>", " ", page).replace("&#x27;", "'").split())


def cells(run, station):
    """Cells of the last row that begins with a station: that of the table of all."""
    page = open(run.results["HTML"], encoding="utf-8").read()
    rows = [re.findall(r"<td[^>]*>(.*?)</td>", row, flags=re.S) for row in re.findall(r"<tr.*?</tr>", page, flags=re.S)]
    return [row for row in rows if row and row[0] == station][-1]


# --- verdicts


def test_both_verdicts_in_sentences_of_their_own(toolbox, tmp_path):
    run = write(toolbox, tmp_path, stations(toolbox, told=record()))
    said, words = run.said, text_of(run)
    for sentence in (
        "wall was not built to its design within the tolerance of ±10.0 mm: 10 of 11 stations with a height are within",
        "wall is not in line within the tolerance of ±8.0 mm: 7 of 11 stations are within it.",
        "Beyond the tolerance of the line: 0+700 (12.0 mm right), 0+600 (11.0 mm right), 0+200 (9.0 mm left), "
        "0+800 (9.0 mm right).",
        "0+600 to 0+800 stand right together, 3 stations by up to 12.0 mm: neighbours that depart to one side",
        "Certainty of the line: not known, since no accuracy of the positions was stated",
    ):
        assert sentence in said and sentence in words, sentence
    results = run.results
    assert (results["LINE_COUNT"], results["LINE_WITHIN"], results["FLAGGED"]) == (11, 7, 5)
    assert results["LINE_RMS"] == pytest.approx(np.sqrt(np.mean(np.square(RIGHT))) / 1000.0, rel=1e-12)
    assert results["LINE_MAX_ABS"] == pytest.approx(0.012) and "RADIAL_WITHIN" not in results


@pytest.mark.parametrize(
    "right, tolerance, decisions, begins",
    [
        ([1.0] * 11, 0.008, {}, "wall is in line within the tolerance of ±8.0 mm: 11 of 11 stations are within it."),
        ([1.0] * 10 + [9.0], 0.008, {"1+000": "accept"}, "wall is not in line within the tolerance of ±8.0 mm ev"),
        ([1.0] * 10 + [9.0], 0.008, {"1+000": "measure again"}, "Whether wall is in line within the tolerance of ±"),
        ([1.0] * 10 + [9.0], 0.008, {"0+100": "reading error"}, "wall is not in line within the tolerance of ±8"),
    ],
    ids=("within", "accepted", "doubted", "decided elsewhere"),
)
def test_kinds_of_the_verdict_and_decisions_on_it(toolbox, tmp_path, right, tolerance, decisions, begins):
    given = {}
    if decisions:
        rows = [{"axis": "wall", "station": station, "decision": word} for station, word in decisions.items()]
        given["DECISIONS"] = toolbox.table(rows, name="decisions")
    run = write(toolbox, tmp_path, stations(toolbox, right, [0.0] * 11, told=record(tolerance=tolerance)), **given)
    assert any(text.startswith(begins) for text in run.info), run.said


def test_without_a_tolerance_there_is_no_verdict_on_it(toolbox, tmp_path):
    rows = stations(toolbox, told=record(tolerance=None), side="no tolerance")
    run = write(toolbox, tmp_path, rows)
    assert "No tolerance of the line was stated for wall" in run.said
    assert "RMS 7.1 mm, greatest 12.0 mm right at 0+700" in run.said and run.results["LINE_WITHIN"] == 0


def test_an_axis_as_drawn_is_said_to_be_one(toolbox, tmp_path):
    run = write(toolbox, tmp_path, stations(toolbox, told=record("axis")))
    sentence = "The line is the axis as drawn: it judges only where that axis was surveyed or designed."
    assert sentence in run.said and "the axis as drawn" in text_of(run)
    run = write(toolbox, tmp_path, stations(toolbox, told=record("fitted")), SIGMA_LINE=0.002)
    assert sentence not in run.said and "its own errors are not counted" in run.said


# --- certainty


def chance(value, limit, sd):
    return stats.norm.cdf((limit - value) / sd) - stats.norm.cdf((-limit - value) / sd)


def test_certainty_counts_the_ends_of_a_chord(toolbox, tmp_path):
    """Of l = x - (1 - t) a - t b the variance is s² (1 + (1 - t)² + t²); of an end it is none."""
    run = write(toolbox, tmp_path, stations(toolbox, told=record()), SIGMA_LINE=0.003)
    assert "The errors of the stations that the line runs through are counted." in run.said
    assert "a lateral position has a standard deviation of 3.0 mm (as stated for this report)" in run.said
    headings = re.findall(r"<th[^>]*>(.*?)</th>", open(run.results["HTML"], encoding="utf-8").read())
    assert "Probability within tolerance, line" in headings
    for k in (2, 4, 8, 9):
        t = k / 10.0
        sd = 3.0 * np.sqrt(1.0 + (1.0 - t) ** 2 + t**2)
        expected = 100.0 * chance(RIGHT[k], 8.0, sd)
        assert f"{expected:.0f} %" in cells(run, f"0+{k}00"), k
    sure = [chance(r, 8.0, 3.0 * np.sqrt(1 + (1 - k / 10) ** 2 + (k / 10) ** 2)) for k, r in enumerate(RIGHT)]
    sure[0] = sure[10] = 1.0
    assert f"{sum(p >= 0.95 for p in sure)} stations are within with at least 95 % probability" in run.said


def test_heights_and_line_together(toolbox, tmp_path):
    run = write(toolbox, tmp_path, stations(toolbox, told=record()), RADIAL_TOLERANCE=0.0122)
    both = np.hypot(HIGH, RIGHT)
    within = int(np.sum(both <= 12.2))
    assert run.results["RADIAL_WITHIN"] == within == 10
    assert run.results["RADIAL_MAX"] == pytest.approx(both.max() / 1000.0, rel=1e-12)
    sentence = "are not within the radial tolerance of 12.2 mm: 10 of 11 stations with both are"
    assert sentence in run.said and "Their certainty is not known" in run.said
    assert f"Beyond it: 0+{int(both.argmax())}00" in run.said
    certain = write(
        toolbox,
        tmp_path,
        stations(toolbox, told=record("axis")),
        RADIAL_TOLERANCE=0.0122,
        SIGMA=0.002,
        SIGMA_LINE=0.002,
    )
    # Source: the noncentral chi-square distribution, which holds where both deviations are one.
    p = stats.ncx2.cdf((12.2 / 2.0) ** 2, 2, (both / 2.0) ** 2)
    told = certain.said[certain.said.index("Height and line together") :]
    assert f"{int(np.sum(p >= 0.95))} stations are within with at least 95 % probability" in told


def test_a_doubted_height_is_not_counted_in_both(toolbox, tmp_path):
    rows = [{"axis": "wall", "station": "0+300", "decision": "reading error"}]
    given = {"DECISIONS": toolbox.table(rows, name="decisions"), "RADIAL_TOLERANCE": 0.0122}
    run = write(toolbox, tmp_path, stations(toolbox, told=record()), **given)
    assert "cannot be said yet, since all beyond it are doubted" in run.said
    assert "7 of 11 stations are within it" in run.said, "the line has a verdict of its own"


# --- what is seen


def test_statistics_columns_chart_and_flags(toolbox, tmp_path):
    layer = stations(toolbox, told=record())
    run = write(toolbox, tmp_path, layer, keys=("HTML", "PDF"), RADIAL_TOLERANCE=0.0122)
    words = text_of(run)
    assert "Lateral departures from the line, + is right." in words
    assert "Height and line together, √(v² + l²), against the radial tolerance of 12.2 mm." in words
    for term in (
        "lateral departure",
        "side",
        "together",
        "Tolerance of the line",
        "Standard deviation of a lateral position",
    ):
        assert term in words, term
    assert cells(run, "0+600")[-3:] == ["+11.0", "▶ right", "counts"]
    assert cells(run, "0+200")[-3:] == ["−9.0", "◀ left", "counts"]
    # Of either: one too high, four beside the line; a station within both is not among them.
    flagged = words[words.index("Stations needing attention") : words.index("What was computed")]
    assert [f"0+{k}00" in flagged for k in range(1, 10)] == [k in (2, 3, 6, 7, 8) for k in range(1, 10)]
    assert "Out of tolerance in height or in line" in flagged
    page = open(run.results["HTML"], encoding="utf-8").read()
    assert page.count("#6b1f5c") > 10 and "At the bottom the line seen from above" in words
    if shutil.which("pdftotext"):
        text = subprocess.run(["pdftotext", "-layout", run.results["PDF"], "-"], capture_output=True, check=True)
        text = " ".join(text.stdout.decode().split())
        assert "wall is not in line within the tolerance of ±8.0 mm" in text and "Side" in text


def test_the_third_chart_is_a_plan(toolbox, tmp_path):
    """Right of the line is drawn below it, where the chainage runs to the right; what lies far off is at the edge."""
    from matplotlib.figure import Figure

    from tautline.algorithms.core.profile_views import AxisProfile
    from tautline.algorithms.language.ticks import side_ticks
    from tautline.algorithms.report.line_chart import draw_line

    class Found:
        pass

    found, one, line = Found(), Found(), Found()
    from tautline.algorithms.language.height_text import amounts_for
    from tautline.algorithms.language.units import Units

    s, lateral = np.arange(11.0) * 100.0, np.array(RIGHT) / 1000.0
    lateral[5] = 0.5
    one.units, one.line, found.reviewed, found.line = Units("metre", "metre"), line, one, line
    line.amounts, line.side = amounts_for("metre"), np.array(["within"] * 11, dtype=object)
    nothing = np.zeros(11)
    profile = AxisProfile(s, nothing, nothing, nothing, nothing, None, lateral, 0.008)
    axes = Figure().subplots()
    draw_line(axes, found, profile, np.arange(11), lambda values: np.flatnonzero(np.isfinite(values)))
    low, high = axes.get_ylim()
    assert low > high and [text.get_text() for text in axes.texts] == ["500.0 right"]
    assert [side_ticks(value, 0) for value in (-12.5, 0.0, 5.0)] == ["12.5 left", "0", "5 right"]


def test_the_slide_says_both(toolbox, tmp_path, monkeypatch):
    from tautline.algorithms.report import slide

    said = []
    monkeypatch.setattr(slide, "_write_verdict", lambda figure, text: said.append(text))
    write(toolbox, tmp_path, stations(toolbox, told=record()), keys=("SLIDE",))
    assert said[0].startswith("wall was not built to its design") and "wall is not in line within" in said[0]


def test_map_and_slide_mark_what_stands_beside_the_line(toolbox, tmp_path, monkeypatch):
    """Four are more than 8 mm beside it; of stations on the line, and of heights alone, nothing is added."""
    from tautline.algorithms.report import map as report_map
    from tautline.algorithms.report import slide

    kept, figures = [], []
    drawn, legend = slide.slide_figure, report_map.ReportMap.legend
    monkeypatch.setattr(slide, "slide_figure", lambda *given: figures.append(drawn(*given)) or figures[-1])
    monkeypatch.setattr(report_map.ReportMap, "legend", lambda chart: kept.append(chart) or legend(chart))
    label = "Beyond the tolerance of the line"
    for right, expected in ((RIGHT, 4), ([0.001] * 11, 0)):
        run = write(toolbox, tmp_path, stations(toolbox, right, told=record()), keys=("HTML", "SLIDE"))
        marked = kept[-1].stations
        assert sum(feature["beside"] for feature in marked.getFeatures()) == expected
        rules = [rule for rule in marked.renderer().rootRule().children() if rule.label() == label]
        assert len(rules) == (1 if expected else 0) and (label in text_of(run)) == bool(expected)
        assert [text for text, _ in legend(kept[-1])].count(label) == len(rules)
        legends = [one for one in figures[-1].legends if one.get_gid() == "map legend"]
        assert [text.get_text() for one in legends for text in one.get_texts()] == [label] * bool(expected)
    assert all(rule.filterExpression() == '"beside" = 1' for rule in rules)


def test_feet(toolbox, tmp_path):
    units = {"height_name": "foot", "chainage_name": "foot"}
    told = record(ends=(0.0, 1000.0 / 0.3048), units=units)
    told["axes"]["wall"].update(line_tolerance=0.008 / 0.3048, tolerance=0.01 / 0.3048)
    run = write(toolbox, tmp_path, stations(toolbox, unit=0.3048, told=told), RADIAL_TOLERANCE=0.0122 / 0.3048)
    assert "0+700 (0.039 ft right)" in run.said and run.results["RADIAL_WITHIN"] == 10
    assert run.results["LINE_MAX_ABS"] == pytest.approx(0.012 / 0.3048)


# --- heights alone, and bad inputs


def test_whoever_has_heights_only_gets_the_same_report(toolbox, tmp_path):
    """Byte for byte that of stations whose fields tell nothing of a line, without a word about one."""
    pages, said = [], []
    for name, layer in (
        ("without", stations(toolbox, sides=False, told=record(line=None))),
        ("empty", stations(toolbox, [None] * 11, told=record(line=None))),
    ):
        (tmp_path / name).mkdir()
        run = write(toolbox, tmp_path / name, layer, DATE="2026-01-01")
        pages.append(open(run.results["HTML"], encoding="utf-8").read().replace(f"/{name}/", "/"))
        said.append([line for line in run.said.splitlines() if "Results: " not in line])
        words = text_of(run).lower().replace("on both sides", "")
        assert not [word for word in WORDS if word in words]
        assert not [key for key in run.results if key.startswith(("LINE", "RADIAL"))]
    assert pages[0] == pages[1] and said[0] == said[1]


@pytest.mark.parametrize("key", ("SIGMA_LINE", "RADIAL_TOLERANCE"))
def test_numbers_that_need_a_line_are_refused_without_one(toolbox, tmp_path, key):
    given = {"HTML": str(tmp_path / "r.html"), key: 0.01}
    text = toolbox.refusal("reviewreport", OUTPUT=None, STATIONS=stations(toolbox, sides=False), **given)
    assert text.startswith(f"{key} is given, but layer 'stations' has no lateral departures") and "with LINE" in text
    given[key] = 0.0
    text = toolbox.refusal("reviewreport", OUTPUT=None, STATIONS=stations(toolbox), **given)
    assert text == f"{key} is 0; it must be greater than zero, or empty."
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize("ends", (None, [], [0.0], ["a", "b"], [0.0, 0.0], [5.0, 995.0], [None, 1000.0]), ids=str)
def test_a_record_that_tells_no_ends_does_no_harm(toolbox, tmp_path, ends):
    told = record()
    told["axes"]["wall"]["line_ends"] = ends
    run = write(toolbox, tmp_path, stations(toolbox, told=told), SIGMA_LINE=0.003)
    assert "The line comes from these stations; its own errors are not counted." in run.said


def test_the_run_records_where_a_chord_ends(toolbox, tmp_path):
    """From designheights to the report: the record of the stations is enough."""
    points, axis = toolbox.straight(11, 100.0)
    out = f"ogr:dbname='{tmp_path / 'out.gpkg'}' table=\"residuals\" (geom)"
    run = toolbox.run(
        "designheights", STATIONS=points, AXIS=axis, LINE="chord", LINE_TOLERANCE=0.005, TOLERANCE=0.01, OUTPUT=out
    )
    layer = run.layer()
    layer.loadDefaultStyle()
    ends = json.loads(layer.customProperty("tautline/record"))["axes"]["line"]["line_ends"]
    rows = sorted(run.rows(), key=lambda row: row["chainage"])
    assert ends == pytest.approx([rows[0]["chainage"], rows[-1]["chainage"]], abs=1e-9)
    assert "that the line runs through are counted" in write(toolbox, tmp_path, layer, SIGMA_LINE=0.002).said
