"""comparesurveys through the registry: surveys of the range example with known motion, documents, bad input."""

import json
import pathlib
import re

import numpy as np
import pytest

RANGE = pathlib.Path(__file__).resolve().parents[2] / "sample_layers" / "range"
UTM = "EPSG:32631"


def survey(toolbox, heights, name="first", axis="a", date="2025-03-11", sd=0.001, step=10.0, **more):
    """Stations every ``step`` metres of chainage with heights, None for not read."""
    rows = [
        {
            "at": (500000.0 + step * k, 5540000.0),
            "axis": axis,
            "station": f"0+{int(step * k):03d}",
            "chainage": step * k,
            "offset": 0.0,
            "height": value,
            "date": date,
            "sd": sd,
            **{key: values[k] for key, values in more.items()},
        }
        for k, value in enumerate(heights)
    ]
    return toolbox.points(rows, UTM, name=name, types={"height": "double", "sd": "double", "date": "string"})


def moved(heights, change):
    return [None if h is None else h + c for h, c in zip(heights, change)]


FLAT = [50.0] * 11
SETTLED = [0.002] * 5 + [-0.008] + [0.002] * 5


def test_change_shift_bending_rate_by_hand(toolbox):
    """All risen by 2 mm in two years of 365.25 days but one station, settled by 8 mm; each survey good to 1 mm."""
    later = survey(toolbox, moved(FLAT, SETTLED), "second", date="2027-03-11")
    run = toolbox.run(
        "comparesurveys",
        SURVEYS=[later, survey(toolbox, FLAT)],
        MOTIONS="memory:",
        CHANGES="memory:",
        UNMATCHED="memory:",
    )
    row = run.by("station")["0+050"]
    sd = 2**0.5 * 1e-3
    assert (row["change"], row["sd_change"], row["ratio"]) == pytest.approx((-0.008, sd, -0.008 / sd), abs=1e-8)
    assert (row["bending"], row["common"]) == pytest.approx((-0.010, 0.002), abs=1e-6)
    assert row["verdict"] == row["bend_verd"] == "settled"
    assert row["rate"] == pytest.approx(-0.008 / (730 / 365.25), abs=1e-9)
    assert (row["first_date"], row["last_date"], row["last_seen"], row["surveys"]) == (
        "2025-03-11",
        "2027-03-11",
        "2027-03-11",
        2,
    )
    other = run.by("station")["0+000"]
    assert other["verdict"] == "not significant" and other["bending"] == pytest.approx(0.0, abs=1e-6)
    motion = run.rows("MOTIONS")[0]
    assert (motion["axis"], motion["survey"], motion["number"], motion["settled"], motion["risen"], motion["bent"]) == (
        "a",
        "2027-03-11",
        11,
        1,
        0,
        1,
    )
    assert motion["shift"] == pytest.approx(0.002, abs=1e-6) and motion["years"] == pytest.approx(
        730 / 365.25, abs=1e-9
    )
    assert len(run.rows("CHANGES")) == 11 and run.rows("UNMATCHED") == [] and not run.warnings
    assert (
        run.results["COUNT"] == 11
        and run.results["CHANGED"] == 1
        and run.results["MAX_ABS"] == pytest.approx(0.008, abs=1e-9)
    )
    assert "greatest change \u22128.0 mm at 0+050; 1 settled, 0 risen, 0 possible; " in run.said
    assert (
        "moved against the rest and set aside: 0+050; common shift +2.0 mm (not judged); differential movement RMS"
        in run.said
    )
    assert (motion["stable"], motion["shift_verd"], motion["chi2"]) == (10, "not judged", None)


def test_mean_shift_and_tilt_against_numpy(toolbox):
    """A constructed motion solved by numpy's polyfit."""
    change = 0.003 + 2e-5 * 10.0 * np.arange(11) + np.random.default_rng(1).normal(0, 1e-3, 11)
    run = toolbox.run(
        "comparesurveys",
        SURVEYS=[survey(toolbox, FLAT), survey(toolbox, moved(FLAT, change.tolist()), "second", date="2026-01-01")],
        SHIFT="mean",
        TILT=True,
        MOTIONS="memory:",
    )
    x = 10.0 * np.arange(11) - 50.0
    tilt, shift = np.polyfit(x, change, 1)
    motion = run.rows("MOTIONS")[0]
    assert (motion["shift"], motion["tilt"]) == pytest.approx((shift, tilt), abs=1e-9)
    assert motion["sd_tilt"] == pytest.approx(2**0.5 * 1e-3 / np.sqrt(np.sum(x**2)), rel=1e-6)
    assert run.column("bending") == pytest.approx((change - shift - tilt * x).tolist(), abs=1e-9)
    none = toolbox.run(
        "comparesurveys",
        SURVEYS=[survey(toolbox, FLAT), survey(toolbox, moved(FLAT, SETTLED), "second", date="2026-01-01")],
        SHIFT="none",
        MOTIONS="memory:",
    )
    assert none.column("bending") == none.column("bend_verd") == [None] * 11
    assert none.rows("MOTIONS")[0]["shift"] is None


def test_accuracies_of_each_survey_by_matrices(toolbox):
    """Levelled with 1 and 2 mm over 1 km, heights good to 0.2 and 0.3 mm: shift, deviations and chi squared with full
    matrices."""
    d = 100.0 * np.arange(11)
    matrix = (1e-3**2 + 2e-3**2) / 1000.0 * np.minimum.outer(d, d) + np.eye(11) * (2e-4**2 + 3e-4**2)
    change = 0.004 + np.linalg.cholesky(matrix) @ np.random.default_rng(2).normal(size=11)
    first = survey(toolbox, FLAT, step=100.0)
    layers = [first, survey(toolbox, moved(FLAT, change.tolist()), "second", date="2026-01-01", step=100.0)]
    stated = {"SIGMAS": "0.0002; 0.0003", "SIGMA_KM": 1.0, "SIGMAS_KM": " ;2"}
    run = toolbox.run("comparesurveys", SURVEYS=layers, TILT=True, MOTIONS="memory:", **stated)
    a, w = np.column_stack((np.ones(11), d - 500.0)), np.linalg.inv(matrix)
    q = np.linalg.inv(a.T @ w @ a)
    motion, solution = run.rows("MOTIONS")[0], q @ a.T @ w @ change
    assert (motion["shift"], motion["tilt"]) == pytest.approx(tuple(solution), rel=1e-6)
    assert (motion["sd_shift"], motion["sd_tilt"]) == pytest.approx(tuple(np.sqrt(np.diag(q))), rel=1e-8)
    # 95 % of chi squared with 11 degrees of freedom: 19.675, tables.
    assert (motion["chi2"], motion["chi2_limit"]) == pytest.approx((change @ w @ change, 19.675), rel=1e-4)
    beyond = np.abs(solution) > 1.959964 * np.sqrt(np.diag(q))
    assert [motion["shift_verd"], motion["tilt_verd"]] == [
        "significant" if one else "not significant" for one in beyond
    ]
    assert run.column("sd_change") == pytest.approx(np.sqrt(np.diag(matrix)).tolist(), rel=1e-8)
    left = np.eye(11) - a @ q @ a.T @ w
    assert run.column("sd_bend") == pytest.approx(np.sqrt(np.diag(left @ matrix @ left.T)).tolist(), rel=1e-6)
    assert "(95 %, " in run.said and "not judged" not in run.said
    # Levelled from the middle, both ways.
    middle = toolbox.run("comparesurveys", SURVEYS=layers, LEVELLED_FROM=500.0, **stated)
    sd = np.sqrt(2e-4**2 + 3e-4**2 + 5e-9 * np.abs(d - 500.0))
    assert middle.column("sd_change") == pytest.approx(sd.tolist(), rel=1e-8)


def test_half_an_axis_has_moved(toolbox):
    later = survey(toolbox, moved([50.0] * 12, [0.0] * 6 + [-0.02] * 6), "second", date="2026-01-01")
    run = toolbox.run("comparesurveys", SURVEYS=[survey(toolbox, [50.0] * 12), later], MOTIONS="memory:")
    assert "it cannot be told which part has moved: no common shift is removed" in run.said
    motion = run.rows("MOTIONS")[0]
    assert motion["shift"] is motion["shift_verd"] is motion["bent"] is None
    assert set(run.column("bending")) == {None} and run.column("verdict").count("settled") == 6


def test_settled_third_leaves_its_neighbours_alone(toolbox):
    """Five of fifteen stations settle by 12 mm, heights good to 1 mm: the common shift is that of the others."""
    later = survey(toolbox, moved([50.0] * 15, [0.003] * 10 + [-0.009] * 5), "second", date="2026-01-01")
    run = toolbox.run("comparesurveys", SURVEYS=[survey(toolbox, [50.0] * 15), later], SIGMA_KM=0.1, MOTIONS="memory:")
    assert run.column("bend_verd") == ["not significant"] * 10 + ["settled"] * 5
    assert run.column("bending") == pytest.approx([0.0] * 10 + [-0.012] * 5, abs=1e-9)
    assert "set aside: 0+100 to 0+140 (5 stations); common shift +3.0" in run.said and "(95 %, significant)" in run.said
    assert run.rows("MOTIONS")[0]["shift_verd"] == "significant"


@pytest.mark.parametrize("by", ["chainage", "name"])
def test_stations_of_one_survey_only_are_listed(toolbox, by):
    """A station that both surveys have and one of them has not read is told once, by the survey without a height."""
    first = survey(toolbox, [50.0, 50.0, None, 50.0, 50.0, None])
    second = survey(toolbox, [50.001, None, 50.0, 50.002], "second", date="2026-01-01")
    third = survey(toolbox, [50.001, 50.0, 50.0, 50.002, None, None, 50.0], "third", date="2027-01-01")
    run = toolbox.run("comparesurveys", SURVEYS=[first, second, third], MATCH=by, UNMATCHED="memory:")
    listed = sorted((row["survey"], row["row"], row["station"], row["reason"]) for row in run.rows("UNMATCHED"))
    assert listed == [
        ("2025-03-11", 3, "0+020", "no height in this survey"),
        ("2025-03-11", 5, "0+040", "not in survey 2026-01-01"),
        ("2025-03-11", 6, "0+050", "no height in this survey"),
        ("2026-01-01", 2, "0+010", "no height in this survey"),
        ("2027-01-01", 5, "0+040", "no height in this survey"),
        ("2027-01-01", 6, "0+050", "no height in this survey"),
        ("2027-01-01", 7, "0+060", "not in the first survey, 2025-03-11"),
    ]
    assert run.results["UNMATCHED_COUNT"] == 7 and run.results["COUNT"] == 3 and len(run.rows()) == 6
    assert run.by("station")["0+040"]["change"] is None and run.by("station")["0+040"]["verdict"] is None


def test_titles_of_the_columns(toolbox, tmp_path):
    layers = [survey(toolbox, FLAT), survey(toolbox, moved(FLAT, SETTLED), "second", date="2026-01-01")]
    keys = ("OUTPUT", "CHANGES", "MOTIONS", "UNMATCHED")
    places = {key: f"ogr:dbname='{tmp_path / 'out.gpkg'}' table=\"{key.lower()}\" (geom)" for key in keys}
    run = toolbox.run("comparesurveys", SURVEYS=layers, **places)
    stations, changes, motions, unmatched = (run.titles(key) for key in keys)
    assert stations["verdict"] == changes["verdict"] == "Verdict" and stations["change"] == "Change (m)"
    assert motions["rms"] == "RMS, shift removed (m)" and unmatched["height"] == "Height (m)"


def test_three_surveys_rate_through_all(toolbox):
    values = [[50.0, 50.0], [49.996, 50.001], [49.994, None]]
    layers = [survey(toolbox, heights, f"s{k}", date=f"{2024 + k}-06-01") for k, heights in enumerate(values)]
    run = toolbox.run("comparesurveys", SURVEYS=layers, CHANGES="memory:")
    years = [(np.datetime64(f"{2024 + k}-06-01") - np.datetime64("2024-06-01")).astype(int) / 365.25 for k in range(3)]
    rows = run.rows()
    assert rows[0]["rate"] == pytest.approx(np.polyfit(years, [0, -0.004, -0.006], 1)[0], abs=1e-9)
    assert rows[0]["surveys"] == 3 and rows[1]["surveys"] == 2 and rows[1]["last_seen"] == "2025-06-01"
    assert rows[1]["change"] == pytest.approx(0.001, abs=1e-9) and len(run.rows("CHANGES")) == 3


def test_matching_by_name_and_by_chainage(toolbox):
    first = survey(toolbox, [50.0, 50.1, 50.2], station=["P1", "P2", "P3"])
    second = survey(toolbox, [50.2, 50.1, 50.0], "second", date="2026-01-01", station=["p3", "P2 ", "P1"])
    by_name = toolbox.run("comparesurveys", SURVEYS=[first, second], MATCH="name")
    assert by_name.column("change") == pytest.approx([0.0] * 3, abs=1e-9)
    by_place = toolbox.run("comparesurveys", SURVEYS=[first, second])
    assert by_place.column("change") == pytest.approx([0.2, 0.0, -0.2], abs=1e-9)
    doubled = survey(toolbox, [50.0, 50.0, 50.0], "third", date="2026-01-01", station=["P1", "P2", "P1"])
    assert toolbox.refusal("comparesurveys", SURVEYS=[first, doubled], MATCH="name") == (
        "Layer 'third' has stations twice (rows in brackets): P1 (1, 3); to match by name each must occur once."
    )


def test_heights_from_design_and_residual_and_from_z(toolbox):
    designed = toolbox.points(
        [
            {"at": (500000.0 + k, 5540000.0), "chainage": 10.0 * k, "design_h": 50.0, "residual": 0.001 * k}
            for k in range(3)
        ],
        UTM,
        name="designed",
    )
    solid = toolbox.points(
        [{"at": (500000.0 + k, 5540000.0, 50.0), "chainage": 10.0 * k} for k in range(3)], UTM, "PointZ", name="solid"
    )
    run = toolbox.run("comparesurveys", SURVEYS=[designed, solid], DATES="2025-01-01; 2026-01-01", SIGMA=0.001)
    assert run.column("change") == pytest.approx([0.0, -0.001, -0.002], abs=1e-9)
    assert run.rows()[0]["sd_change"] == pytest.approx(2**0.5 * 0.001) and run.rows()[0]["axis"] is None


def test_without_dates_and_deviations(toolbox):
    first, second = (survey(toolbox, [50.0, 50.1], name, date=None, sd=None) for name in ("one", "two"))
    run = toolbox.run("comparesurveys", SURVEYS=[first, second])
    assert set(run.column("verdict")) == {"no sd"} and set(run.column("rate")) == set(run.column("sd_change")) == {None}
    assert any("Not all surveys have a date" in text for text in run.warnings) and "changes are not judged" in run.said
    assert run.column("last_seen") == ["two", "two"]


def test_dates_of_a_date_column(toolbox, tmp_path):
    """A date column, not text; a GeoPackage keeps it."""
    from qgis.PyQt.QtCore import QDate

    layers = []
    for name, year in (("later", 2027), ("earlier", 2025)):
        rows = [{"at": (500000.0 + k, 5540000.0), "chainage": 10.0 * k, "height": 50.0, "date": None} for k in range(3)]
        layer = toolbox.points(rows, UTM, name=name, types={"date": "date"})
        layer.startEditing()
        for feature in layer.getFeatures():
            layer.changeAttributeValue(feature.id(), layer.fields().indexOf("date"), QDate(year, 5, 6))
        assert layer.commitChanges()
        layers.append(toolbox.saved(layer, tmp_path / f"{name}.gpkg"))
    run = toolbox.run("comparesurveys", SURVEYS=layers)
    assert set(run.column("first_date")) == {"2025-05-06"} and set(run.column("last_date")) == {"2027-05-06"}


def test_feet(toolbox):
    first, second = (
        survey(toolbox, [50.0] * 3, sd=0.004),
        survey(toolbox, [50.02] * 3, "second", date="2026-01-01", sd=0.004),
    )
    run = toolbox.run("comparesurveys", SURVEYS=[first, second], HEIGHT_UNIT="foot", CHAINAGE_UNIT="foot")
    assert run.column("change") == pytest.approx([0.02] * 3, abs=1e-9) and "+0.020 ft" in run.said
    # 0.5 m is 1.64 ft.
    assert "chainage within 1.640 ft" in run.said


def test_doubts(toolbox):
    first = survey(toolbox, [50.0 + 0.1 * k for k in range(6)])
    feet = survey(toolbox, [(50.0 + 0.1 * k) / 0.3048 for k in range(6)], "feet", date="2026-01-01")
    assert any(
        "half of the changes are beyond 500.0 mm" in text
        for text in toolbox.run("comparesurveys", SURVEYS=[first, feet]).warnings
    )
    aside = survey(
        toolbox,
        [50.0 + 0.1 * k for k in range(6)],
        "aside",
        date="2026-01-01",
        chainage=[10.0 * k + 0.3 for k in range(6)],
    )
    run = toolbox.run("comparesurveys", SURVEYS=[first, aside])
    assert any("readings up to 0.30 m apart" in text and "that alone makes 3.0 mm" in text for text in run.warnings)


@pytest.fixture
def epochs(toolbox, tmp_path):
    """The range surveyed again: all 3 mm lower, a bowl of 12 mm at Alder 1+650; placed and designed like the
    first."""
    paths = []
    lines = (RANGE / "heights.csv").read_text(encoding="utf-8").splitlines()
    head = lines[0].split(",")
    for number, date in enumerate(("2025-03-11", "2026-09-11")):
        rows = []
        for line in lines[1:]:
            row = dict(zip(head, line.split(",")))
            chainage = int(row["station"].replace("+", ""))
            bowl = max(0.0, 1 - abs(chainage - 1650) / 200) if row["axis"] == "Alder" else 0.0
            height = None if not row["height"] else float(row["height"]) - number * (0.003 + 0.012 * bowl)
            rows.append(
                {
                    "axis": row["axis"],
                    "station": row["station"],
                    "offset": float(row["offset"]),
                    "height": height,
                    "undulation": float(row["undulation"]),
                    "sd": 0.001,
                    "date": date,
                }
            )
        placed = toolbox.run(
            "placestations", INPUT=toolbox.table(rows, types={"height": "double"}), AXIS=str(RANGE / "axis.gpkg")
        )
        path = str(tmp_path / f"epoch{number}.gpkg")
        toolbox.run(
            "designheights",
            STATIONS=placed.layer(),
            AXIS=str(RANGE / "axis.gpkg"),
            UNDULATION="field",
            UNDULATION_FIELD="undulation",
            OUTPUT=path,
        )
        paths.append(path)
    return paths


def test_range_surveyed_again(toolbox, epochs, tmp_path):
    output = str(tmp_path / "changes.gpkg")
    run = toolbox.run(
        "comparesurveys",
        SURVEYS=epochs,
        OUTPUT=output,
        MOTIONS="memory:",
        REPORT=str(tmp_path / "c.html"),
        CHART=str(tmp_path / "c.svg"),
    )
    worst = next(row for row in run.rows() if (row["axis"], row["station"]) == ("Alder", "1+650"))
    assert worst["change"] == pytest.approx(-0.015, abs=1e-7) and worst["bending"] == pytest.approx(-0.012, abs=2e-4)
    assert all(row["shift"] == pytest.approx(-0.003, abs=2e-4) for row in run.rows("MOTIONS"))
    layer = run.layer()
    assert layer.loadDefaultStyle()[1] and "Settled" in [item.label() for item in layer.renderer().legendSymbolItems()]
    record = json.loads(layer.customProperty("tautline/record"))
    assert record["surveys"] == ["2025-03-11", "2026-09-11"] and record["parameters"]["SURVEYS"] == epochs
    text = (tmp_path / "c.html").read_text(encoding="utf-8")
    assert text.count('role="img" aria-label="Line chart of change against chainage') == text.count("<svg") == 3
    assert "licensed surveyor or engineer decides" in text and "greatest change \u221215.0 mm at 1+650" in text
    assert not re.search(r"<script|<link|<img|@import", text) and ">nan<" not in text.lower()
    svg = (tmp_path / "c.svg").read_text(encoding="utf-8")
    assert svg.startswith("<?xml") and 'role="img"' in svg and svg.rstrip().endswith("</svg>")
    import xml.etree.ElementTree as tree

    assert tree.fromstring(svg).tag.endswith("svg")


def test_the_chart_shows_the_bowl(toolbox, epochs, tmp_path):
    """Read back as a picture: not blank, and in the survey's colour lowest where the bowl is."""
    from qgis.PyQt.QtGui import QColor, QImage

    from tautline.algorithms.styles import palette

    path = str(tmp_path / "c.png")
    toolbox.run("comparesurveys", SURVEYS=epochs, CHART=path, SHIFT="none")
    picture, colour = QImage(path), QColor(palette.SURVEYS[0].light).rgb()
    assert picture.width() > 1200 and picture.height() > 700 and picture.text("Description").startswith("Line chart")
    # Of three panels, one an axis, the first is Alder's.
    first = picture.height() // 3
    found = [(y, x) for x in range(0, picture.width(), 2) for y in range(0, first) if picture.pixel(x, y) == colour]
    lowest = max(found)
    # 1+650 of 2+600, the panel being somewhat wider than the axis.
    assert 0.58 < lowest[1] / picture.width() < 0.72 and len(found) > 200


def test_evil_names(toolbox, tmp_path):
    evil = "<script>$x_1$</script>"
    layers = [survey(toolbox, [50.0, 50.1, 50.0], f"_{evil}{k}", axis=evil, date=None) for k in range(2)]
    run = toolbox.run(
        "comparesurveys", SURVEYS=layers, REPORT=str(tmp_path / "c.html"), CHART=str(tmp_path / "c.png"), TITLE=evil
    )
    text = (tmp_path / "c.html").read_text(encoding="utf-8")
    assert "<script" not in text and "&lt;script&gt;" in text and run.results["COUNT"] == 3


# --- bad input


def test_a_copy_is_no_second_survey(toolbox):
    """The same heights at every station under another name and date, whatever the order of the rows."""
    first = survey(toolbox, SETTLED)
    backwards = [
        {"at": (500000.0 + 10.0 * k, 5540000.0), "axis": "a", "chainage": 10.0 * k, "offset": 0.0, "height": SETTLED[k]}
        for k in reversed(range(11))
    ]
    copy = toolbox.points(backwards, UTM, name="copy", types={"height": "double"})
    doubt = (
        "Layers 'first' and 'copy' have the same heights at every station; check that one survey is not given twice."
    )
    said = toolbox.run("comparesurveys", SURVEYS=[first, copy], DATES="2025-03-11;2026-01-01").warnings
    assert doubt in said
    read_anew = survey(toolbox, moved(SETTLED, [0.0] * 10 + [1e-4]), "second", date="2026-01-01")
    assert not toolbox.run("comparesurveys", SURVEYS=[first, read_anew]).warnings


def test_bad_surveys(toolbox):
    first, second = survey(toolbox, FLAT), survey(toolbox, FLAT, "second", date="2026-01-01")
    assert toolbox.refusal("comparesurveys", SURVEYS=[first, first]) == (
        "Layers 'first' and 'first' are the same survey; a survey has not changed against itself."
    )
    bare = toolbox.points([{"at": (500000.0, 5540000.0), "chainage": 1.0}], UTM, name="bare")
    assert "Layer 'bare' has no field 'height', no design_h and residual" in toolbox.refusal(
        "comparesurveys", SURVEYS=[first, bare]
    )
    nowhere = toolbox.points([{"at": (500000.0, 5540000.0), "height": 1.0}], UTM, name="nowhere")
    assert "Layer 'nowhere' has neither a field 'chainage' nor 'station'" in toolbox.refusal(
        "comparesurveys", SURVEYS=[first, nowhere]
    )
    empty = survey(toolbox, [None, None], "empty")
    assert toolbox.refusal("comparesurveys", SURVEYS=[first, empty]) == "Layer 'empty' has no heights."
    other = survey(toolbox, FLAT, "other", axis="b", date="2026-01-01")
    assert toolbox.refusal("comparesurveys", SURVEYS=[first, other]).startswith(
        "No station of layer 'other' is found in layer 'first'; "
    )
    zero = survey(toolbox, FLAT, "zero", date="2026-01-01", sd=0.0)
    assert toolbox.refusal("comparesurveys", SURVEYS=[first, zero]).startswith(
        "Layer 'zero', field 'sd', row 1: 0 is not a standard deviation"
    )
    axis = toolbox.lines([{"at": [(0, 0), (1, 1)], "height": 1.0, "chainage": 1.0}], UTM)
    assert "has lines, but points are expected here" in toolbox.refusal("comparesurveys", SURVEYS=[first, axis])
    assert toolbox.refusal("comparesurveys", SURVEYS=[first, second], HEIGHT_FIELD="nope").startswith(
        "Layer 'first' has no field 'nope' (HEIGHT_FIELD); it has "
    )


def test_a_survey_that_is_not_there_is_named(toolbox, tmp_path):
    first, lost, text = survey(toolbox, FLAT), str(tmp_path / "lost.gpkg"), tmp_path / "notes.txt"
    text.write_text("no layer", "utf-8")
    assert toolbox.refusal("comparesurveys", SURVEYS=[first, lost]).endswith(
        f"SURVEYS: no layer can be read from '{lost}'; check the path."
    )
    said = toolbox.refusal("comparesurveys", SURVEYS=[lost, first, str(text)])
    assert said.endswith(f"SURVEYS: no layer can be read from '{lost}', '{text}'; check the path."), said
    assert toolbox.refusal("comparesurveys", SURVEYS=lost).endswith(f"'{lost}'; check the path.")


def test_bad_dates_and_numbers(toolbox):
    layers = [survey(toolbox, FLAT), survey(toolbox, FLAT, "second", date="2026-01-01")]
    for given, said in (
        ({"DATES": "2025-01-01"}, "DATES has 1 date, but there are 2 surveys."),
        ({"DATES": "2025-01-01; 03/09/26"}, "DATES: '03/09/26' is not a date; expected year-month-day"),
        ({"SIGMA": 0}, "SIGMA is 0; it must be greater than zero, or empty."),
        ({"MATCH_TOLERANCE": 0}, "Matching needs a tolerance greater than zero."),
        ({"SIGMA": -1}, "SIGMA is -1, but must be at least 0."),
        ({"SHIFT": "some"}, "SHIFT is 'some'"),
        ({"SIGMAS": "0.001"}, "SIGMAS has 1 value, but there are 2 surveys."),
        (
            {"SIGMAS_KM": "1; much"},
            "SIGMAS_KM: 'much' is not a standard deviation; it must be a number greater than zero.",
        ),
        ({"SIGMA_KM": 0}, "SIGMA_KM is 0; it must be greater than zero, or empty."),
    ):
        assert toolbox.refusal("comparesurveys", SURVEYS=layers, **given).startswith(said)
    layers[1] = survey(toolbox, FLAT, "second", date="spring")
    assert toolbox.refusal("comparesurveys", SURVEYS=layers).startswith("Layer 'second', row 1: 'spring' is not a date")


def test_one_survey_and_unreadable_ones(toolbox, tmp_path):
    from qgis.core import QgsProcessingException

    first = survey(toolbox, FLAT)
    for given in ([first], [first, str(tmp_path / "none.gpkg")], []):
        with pytest.raises(QgsProcessingException):
            toolbox.run("comparesurveys", SURVEYS=given)


def test_a_chart_of_another_kind_is_refused(toolbox, tmp_path):
    layers = [survey(toolbox, FLAT), survey(toolbox, FLAT, "second", date="2026-01-01")]
    assert "a chart is written as .png or .svg." in toolbox.refusal(
        "comparesurveys", SURVEYS=layers, CHART=str(tmp_path / "c.jpg")
    )
    assert list(tmp_path.iterdir()) == []


def test_an_output_does_not_take_the_place_of_a_survey(toolbox, epochs):
    text = toolbox.refusal("comparesurveys", SURVEYS=epochs, OUTPUT=epochs[1])
    assert "OUTPUT is the place of the input SURVEYS" in text


def test_5000_stations(toolbox, tmp_path):
    first = survey(toolbox, [50.0] * 5000, step=2.0)
    second = survey(toolbox, [50.0 + 0.001 * (k % 3) for k in range(5000)], "second", date="2026-01-01", step=2.0)
    run = toolbox.run("comparesurveys", SURVEYS=[first, second], REPORT=str(tmp_path / "c.html"))
    assert run.results["COUNT"] == 5000
    assert (tmp_path / "c.html").read_text(encoding="utf-8").count("</tr>") > 5000


def test_in_a_worker_thread(host, toolbox, epochs, tmp_path):
    """As the form runs it: surveys are layers of the project, chart and page are made off the main thread."""
    from qgis.core import (
        QgsApplication,
        QgsProcessingAlgRunnerTask,
        QgsProcessingContext,
        QgsProcessingFeedback,
        QgsProject,
        QgsVectorLayer,
    )
    from qgis.PyQt.QtCore import QEventLoop, QTimer

    context, feedback, answer, loop = QgsProcessingContext(), QgsProcessingFeedback(False), [], QEventLoop()
    context.setProject(QgsProject.instance())
    layers = [QgsVectorLayer(path, f"epoch {k}", "ogr") for k, path in enumerate(epochs)]
    QgsProject.instance().addMapLayers(layers, False)
    try:
        page, output = tmp_path / "c.html", str(tmp_path / "c.gpkg")
        entry = QgsApplication.processingRegistry().algorithmById("tautline:comparesurveys").create()
        task = QgsProcessingAlgRunnerTask(
            entry,
            {"SURVEYS": [layer.id() for layer in layers], "OUTPUT": output, "REPORT": str(page)},
            context,
            feedback,
        )
        task.executed.connect(lambda well, results: (answer.append((well, results)), loop.quit()))
        QTimer.singleShot(300_000, loop.quit)
        QgsApplication.taskManager().addTask(task)
        loop.exec()
        assert answer and answer[0][0] and answer[0][1]["COUNT"] == 117
        assert "epoch 1" in page.read_text(encoding="utf-8")
    finally:
        QgsProject.instance().removeMapLayers([layer.id() for layer in layers])


def test_cancel_leaves_nothing(toolbox, log, tmp_path):
    from qgis.core import QgsProcessingException

    layers = [survey(toolbox, FLAT), survey(toolbox, FLAT, "second", date="2026-01-01")]
    with pytest.raises(QgsProcessingException, match="Cancelled"):
        toolbox.run(
            "comparesurveys",
            feedback=log(cancel_at=1),
            SURVEYS=layers,
            OUTPUT=str(tmp_path / "o.gpkg"),
            REPORT=str(tmp_path / "c.html"),
        )
    assert list(tmp_path.iterdir()) == []
