"""adjustlevelling through the toolbox: published nets, names, parts, outputs, bad input."""

import numpy as np
import pytest

LS02 = [
    ("1", "2", -0.749, 1.1),
    ("1", "3", -1.274, 1.8),
    ("1", "4", -2.89, 1.4),
    ("2", "3", -0.53, 1.5),
    ("2", "4", -2.141, 1.9),
    ("3", "4", -1.614, 0.9),
]


def lines(rows, **more):
    return [{"from_pt": a, "to_pt": b, "dh": dh, "length": 1000.0 * km, **more} for a, b, dh, km in rows]


def benchmarks(toolbox, heights, sds=None, name="benchmarks"):
    return toolbox.table([{"name": k, "height": h, "sd": (sds or {}).get(k)} for k, h in heights.items()], name)


@pytest.fixture
def ls02(toolbox):
    """LS-02. Source: OSGeoLabBp tutorials, level_net.rst: it weights by 1/L^2 (0.7 mm per km times L), not by 1/L."""
    rows = [{**row, "sd": 0.0007 * row["length"] / 1000.0} for row in lines(LS02)]
    return {"INPUT": toolbox.table(rows), "BENCHMARKS": benchmarks(toolbox, {"4": 101.345})}


def test_published_net_with_data_snooping(toolbox, ls02, tmp_path):
    """LS-02, all printed digits: heights, residuals (adjusted minus observed there), w, redundancies, v^T P v."""
    page = tmp_path / "page.html"
    run = toolbox.run("adjustlevelling", **ls02, LINES="memory:", MISCLOSURES="memory:", SUMMARY=str(page))
    heights = {row["point"]: row for row in run.rows()}
    for point, height, sd in (("1", 104.235, 1.13), ("2", 103.4868, 1.19), ("3", 102.9588, 0.91)):
        assert heights[point]["height"] == pytest.approx(height, abs=5e-5)
        # The source scales by its m0 = 1.65; the accuracy of the lines is stated, so the plugin does not.
        assert heights[point]["sd"] * np.sqrt(run.results["VARIANCE_FACTOR"]) == pytest.approx(sd * 1e-3, abs=5e-6)
    assert run.results["VARIANCE_FACTOR"] * 3 == pytest.approx(8.217, abs=5e-4) and run.results["FREEDOM"] == 3
    found = run.rows("LINES")
    assert [-row["v"] * 1e3 for row in found] == pytest.approx([0.81, -2.18, 0.0, 2.01, -0.81, 0.18], abs=5e-3)
    assert [abs(row["w"]) for row in found] == pytest.approx([1.9, 2.1, 0.0, 2.6, 0.7, 0.6], abs=0.05)
    assert [row["redund"] for row in found] == pytest.approx([0.3, 0.7, 0.5, 0.5, 0.7, 0.2], abs=0.05)
    assert {row["flag"] for row in found} == {"kept"} and run.results["SUSPECTED"] == 0
    assert sorted(abs(row["misclosure"]) for row in run.rows("MISCLOSURES")) == pytest.approx(
        [0.002, 0.003, 0.005], abs=1e-9
    )
    text = page.read_text("utf-8")
    assert "104.2350" in text and "licensed surveyor" in text and "http" not in text.replace("http-equiv", "")


def test_textbook_net_weighted_and_not(toolbox):
    """LS-05. Source: Ghilani (Wolf), Adjustment Computations, ch. 12, from memory; unweighted, then weighted by
    12/miles."""
    rows = [
        ("X", "A", 5.1, 4),
        ("A", "Y", 2.34, 3),
        ("Y", "C", -1.25, 2),
        ("C", "X", -6.13, 3),
        ("A", "B", -0.68, 2),
        ("B", "Y", 3.0, 2),
        ("B", "C", 1.7, 2),
    ]
    table = toolbox.table([{"from": a, "to": b, "dh": dh, "length": float(miles)} for a, b, dh, miles in rows])
    marks = benchmarks(toolbox, {"X": 100.0, "Y": 107.5})
    for weights, expected, s0, scale in (
        ("equal", (105.141, 104.483, 106.188), 0.050, 0.3048),
        ("km", (105.15, 104.489, 106.197), 0.107, None),
    ):
        run = toolbox.run("adjustlevelling", INPUT=table, BENCHMARKS=marks, WEIGHTS=weights, HEIGHT_UNIT="foot")
        heights = {row["point"]: row["height"] for row in run.rows()}
        assert [heights[k] for k in "ABC"] == pytest.approx(expected, abs=5e-4)
        unit = np.sqrt(run.results["VARIANCE_FACTOR"])
        # Unit weight: one line, in feet; or 12 units of length, here feet taken for miles, of 1 mm over 1 km each.
        found = unit / 0.3048 if scale else unit * 1e-3 * np.sqrt(12.0 * 0.3048e-3) / 0.3048
        assert found == pytest.approx(s0, abs=5e-4)


def test_published_circuit_with_four_benchmarks(toolbox):
    """Source: J. Mahun, Open Access Surveying Library, Least Squares Lite, matrix method, example of section 4: eight
    lines of one weight; benchmarks from its adjusted lines. Q 815.418, R 802.962, their deviations 0.013 and 0.014, So
    0.028.

    Trap: its own adjusted lines give So = 0.029 (0.02905), not the printed 0.028, with which it goes on.
    """
    rows = [
        ("BMA", "Q", 8.91),
        ("BMB", "Q", -2.92),
        ("BMC", "Q", -4.67),
        ("BMD", "Q", -8.66),
        ("BMA", "R", -3.56),
        ("BMC", "R", -17.12),
        ("BMD", "R", -21.10),
        ("Q", "R", -12.47),
    ]
    table = toolbox.table([{"from_pt": a, "to_pt": b, "dh": dh} for a, b, dh in rows])
    marks = benchmarks(toolbox, {"BMA": 806.52, "BMB": 818.32, "BMC": 820.12, "BMD": 824.04})
    run = toolbox.run("adjustlevelling", INPUT=table, BENCHMARKS=marks, LINES="memory:", HEIGHT_UNIT="foot")
    heights = {row["point"]: row for row in run.rows()}
    unit = np.sqrt(run.results["VARIANCE_FACTOR"]) / 0.3048
    assert unit == pytest.approx(0.02905, abs=5e-6)
    for point, height, sd in (("Q", 815.418, 0.013), ("R", 802.962, 0.014)):
        assert heights[point]["height"] == pytest.approx(height, abs=5e-4)
        assert heights[point]["sd"] * 0.028 / unit == pytest.approx(sd, abs=5e-4)
    assert [row["adj_dh"] for row in run.rows("LINES")] == pytest.approx(
        [8.898, -2.902, -4.702, -8.622, -3.558, -17.158, -21.078, -12.456], abs=6e-4
    )


def test_published_net_with_stated_deviations(toolbox):
    """Source: lecture slides to Adjustment Computations, ch. 12 ('another weighted adjustment', slidetodoc.com): data
    seen, B 448.1087, C 453.4685, D 444.9436 from memory of the book's example 12.3."""
    rows = [
        ("A", "B", 10.509, 6),
        ("B", "C", 5.360, 4),
        ("C", "D", -8.523, 5),
        ("D", "A", -7.348, 3),
        ("B", "D", -3.167, 4),
        ("A", "C", 15.881, 12),
    ]
    table = toolbox.table([{"from_pt": a, "to_pt": b, "dh": dh, "sd": 1e-3 * mm} for a, b, dh, mm in rows])
    run = toolbox.run("adjustlevelling", INPUT=table, BENCHMARKS=benchmarks(toolbox, {"A": 437.596}))
    heights = {row["point"]: row["height"] for row in run.rows()}
    assert [heights[k] for k in "BCD"] == pytest.approx([448.1087, 453.4685, 444.9436], abs=5e-5)


def test_a_blunder_is_named_with_those_that_look_the_same(toolbox):
    """A single loop: every line has the same w, so that the blunder cannot be placed. Common practice, no source."""
    rows = [("A", "B", 1.0, 1.0), ("B", "C", 1.0, 1.0), ("C", "A", -2.05, 1.0)]
    run = toolbox.run(
        "adjustlevelling",
        INPUT=toolbox.table(lines(rows)),
        BENCHMARKS=benchmarks(toolbox, {"A": 10.0}),
        SIGMA_KM=1.0,
        LINES="memory:",
        MISCLOSURES="memory:",
        CLASS="third order",
    )
    assert {row["flag"] for row in run.rows("LINES")} == {"suspected blunder"}
    assert [abs(row["w"]) for row in run.rows("LINES")] == pytest.approx([50.0 / np.sqrt(3.0)] * 3, rel=1e-6)
    assert any("would look the same" in text for text in run.warnings)
    (loop,) = run.rows("MISCLOSURES")
    # FGCC 1984, third order: 12 mm times the root of 3 km.
    assert loop["limit"] == pytest.approx(0.012 * np.sqrt(3.0), abs=1e-12) and loop["status"] == "beyond"
    assert loop["misclosure"] == pytest.approx(-0.05, abs=1e-12) and run.results["BEYOND"] == 1
    assert any("global test fails" in text for text in run.warnings)


def test_sections_against_a_class(toolbox):
    """FGCC 1984, second order class I: sections 6, loops 6 mm; first order class I: 3 and 4 (as misclosure.py has
    them)."""
    rows = [("A", "B", 1.000, 2.0), ("B", "A", -1.005, 2.0), ("B", "C", 0.5, 1.0), ("C", "A", -1.5, 1.0)]
    run = toolbox.run(
        "adjustlevelling",
        INPUT=toolbox.table(lines(rows)),
        BENCHMARKS=benchmarks(toolbox, {"A": 10.0}),
        SIGMA_KM=1.0,
        MISCLOSURES="memory:",
        CLASS="first order class I",
    )
    section, loop = run.rows("MISCLOSURES")
    assert (section["kind"], section["status"], section["length"]) == ("section", "beyond", 2000.0)
    assert section["misclosure"] == pytest.approx(-0.005, abs=1e-12)
    assert section["limit"] == pytest.approx(0.003 * np.sqrt(2.0), abs=1e-12)
    assert loop["kind"] == "loop" and loop["limit"] == pytest.approx(0.008, abs=1e-12) and loop["status"] == "within"


def test_way_between_benchmarks(toolbox):
    rows = [("BM1", "P", 1.0, 1.0), ("P", "BM2", 1.0, 3.0)]
    run = toolbox.run(
        "adjustlevelling",
        INPUT=toolbox.table(lines(rows)),
        BENCHMARKS=benchmarks(toolbox, {"BM1": 10.0, "BM2": 12.008}),
        SIGMA_KM=2.0,
        MISCLOSURES="memory:",
    )
    (way,) = run.rows("MISCLOSURES")
    assert way["kind"] == "benchmarks" and abs(way["misclosure"]) == pytest.approx(0.008, abs=1e-12)
    # Spread with the length: a quarter of 8 mm in the first kilometre.
    assert {row["point"]: row["height"] for row in run.rows()}["P"] == pytest.approx(11.002, abs=1e-12)


def test_weighted_benchmark(toolbox):
    """The weighted mean of two ways to P, by hand: 11.000 +- 1 mm over the line from the fixed one, 11.010 +- 2 mm
    given."""
    rows = [("A", "P", 1.0, 1.0)]
    run = toolbox.run(
        "adjustlevelling",
        INPUT=toolbox.table(lines(rows)),
        SIGMA_KM=1.0,
        BENCHMARKS=benchmarks(toolbox, {"A": 10.0, "P": 11.010}, {"P": 0.002}),
    )
    point = {row["point"]: row for row in run.rows()}["P"]
    assert point["height"] == pytest.approx(11.0 + 0.010 / 5.0, abs=1e-12) and point["role"] == "weighted"
    assert point["sd"] == pytest.approx(0.001 * np.sqrt(0.8), rel=1e-9)
    assert point["given_diff"] == pytest.approx(-0.008, abs=1e-12)
    assert point["w"] == pytest.approx(0.010 / np.hypot(0.001, 0.002), rel=1e-9)


def test_free_adjustment_shows_a_moved_benchmark(toolbox):
    rows = [("A", "B", 1.0, 1.0), ("B", "C", 1.0, 1.0), ("C", "A", -2.0, 1.0), ("X", "Y", 0.5, 1.0)]
    given = {"table": toolbox.table(lines(rows)), "marks": benchmarks(toolbox, {"B": 11.0, "C": 12.030})}
    run = toolbox.run("adjustlevelling", INPUT=given["table"], BENCHMARKS=given["marks"], SIGMA_KM=1.0, FREE=True)
    points = {row["point"]: row for row in run.rows()}
    assert points["B"]["role"] == "held" and points["C"]["role"] == "checked"
    assert points["C"]["given_diff"] == pytest.approx(-0.030, abs=1e-12) and points["X"]["height"] == 0.0
    assert any("Benchmark C comes out 30.00 mm lower than given" in text for text in run.warnings)
    moved = toolbox.run(
        "adjustlevelling", INPUT=given["table"], BENCHMARKS=given["marks"], SIGMA_KM=1.0, FREE=True, FREE_POINT="A"
    )
    assert {row["point"]: row for row in moved.rows()}["A"]["height"] == 0.0


def test_parts_without_a_benchmark_are_named(toolbox):
    rows = [("A", "B", 1.0, 1.0), ("P7", "P8", 1.0, 1.0), ("P8", "P9", 1.0, 1.0)]
    run = toolbox.run(
        "adjustlevelling",
        INPUT=toolbox.table(lines(rows)),
        LINES="memory:",
        SIGMA_KM=1.0,
        BENCHMARKS=benchmarks(toolbox, {"A": 10.0, "p-8": 5.0, "BM9": 1.0}),
    )
    points = {row["point"]: row for row in run.rows()}
    assert points["P7"]["height"] is None and points["P7"]["role"] == "no benchmark"
    assert [row["flag"] for row in run.rows("LINES")] == ["unchecked", "no benchmark", "no benchmark"]
    assert any("with P7, P8, P9 (3 points) reaches no benchmark" in text for text in run.warnings)
    assert any("No line touches the benchmarks: p-8, BM9" in text for text in run.warnings)
    assert any("'p-8' and 'P8'" in text for text in run.warnings)


def test_stations_get_heights_and_lines_by_name(toolbox, ls02):
    stations = toolbox.points(
        [
            {"at": (10.0 + 0.01 * k, 50.0 + 0.005 * (k % 2)), "name": str(k), "height": 1.0, "note": f"n{k}"}
            for k in (4, 3, 2, 1, 9)
        ]
    )
    run = toolbox.run("adjustlevelling", **ls02, STATIONS=stations, POINTS="memory:", LINES="memory:")
    points = {row["name"]: row for row in run.rows("POINTS")}
    assert points["1"]["height"] == pytest.approx(104.235, abs=5e-5) and points["1"]["note"] == "n1"
    assert points["9"]["height"] is None and points["9"]["role"] == "not in the net" and points["4"]["sd"] == 0.0
    drawn = [feature.geometry().asWkt(3) for feature in run.layer("LINES").getFeatures()]
    assert drawn[0].startswith("LineString (10.01 50.005, 10.02 50") and len(drawn) == 6


def test_covariance_table_against_a_dense_solution(toolbox, ls02):
    """The inverse of the dense normal matrix, by numpy alone."""
    from tautline.algorithms.core.covariance_text import covariance_of

    run = toolbox.run("adjustlevelling", **ls02, COVARIANCE="memory:")
    rows = run.rows("COVARIANCE")
    found = covariance_of([r["point"] for r in rows], [r["covar"] for r in rows], ["1", "2", "3"])
    design, sigma = np.zeros((6, 4)), np.array([0.0007 * km for *_, km in LS02])
    for k, (a, b, _, _) in enumerate(LS02):
        design[k, int(a) - 1], design[k, int(b) - 1] = -1.0, 1.0
    dense = np.linalg.inv(design[:, :3].T @ np.diag(sigma**-2) @ design[:, :3])
    assert np.allclose(found, dense, rtol=1e-9, atol=0.0)


def test_the_output_of_reducesights_fits(toolbox):
    rows = [
        {"from": "A", "to": "B", "back": 1.5, "fore": 0.5, "back_len": 30.0, "fore_len": 30.0},
        {"from": "B", "to": "A", "back": 0.6, "fore": 1.601, "back_len": 30.0, "fore_len": 30.0},
    ]
    first = toolbox.run("reducesights", INPUT=toolbox.table(rows), READING_SIGMA=0.5)
    run = toolbox.run("adjustlevelling", INPUT=first.layer(), BENCHMARKS=benchmarks(toolbox, {"A": 10.0}))
    point = {row["point"]: row for row in run.rows()}["B"]
    assert point["height"] == pytest.approx(11.0005, abs=1e-9) and point["sd"] == pytest.approx(0.0005, rel=1e-9)


@pytest.mark.parametrize(
    "change, words",
    [
        (
            {"INPUT": [{"from_pt": "A", "to_pt": "A", "dh": 1.0}]},
            "Layer 'list', row 1: the line starts and ends at 'A'.",
        ),
        ({"INPUT": [{"from_pt": "A", "dh": 1.0}]}, "Layer 'list' has no field 'to_pt'; choose it (TO_FIELD)."),
        ({"INPUT": [{"from_pt": "A", "to_pt": "B", "dh": "1,x"}]}, "row 1: '1,x' is not a number"),
        ({"INPUT": [{"from_pt": "A", "to_pt": "B", "dh": None}]}, "no row has both points and a height difference"),
        ({"SIGMA_KM": 0.0}, "SIGMA_KM is 0.000000; it must be positive."),
        ({"WEIGHTS": "setup"}, "row 1: WEIGHTS 'setup' needs a positive number (SETUPS_FIELD: none)."),
        (
            {"BENCHMARKS": [{"name": "Z", "height": 1.0}]},
            "reaches a benchmark: its points are A, B, and the benchmarks are Z.",
        ),
        ({"BENCHMARKS": None}, "no benchmark is given. Give BENCHMARKS, or run a free adjustment."),
        (
            {"BENCHMARKS": [{"name": "A", "height": 1.0}, {"name": "A", "height": 2.0}]},
            "rows 1 and 2: the benchmark 'A' is given twice",
        ),
        (
            {"BENCHMARKS": [{"name": "A", "height": 1.0, "sd": -1.0}]},
            "the standard deviation of the benchmark 'A' is negative",
        ),
        (
            {"BENCHMARKS": [{"name": "A", "height": 1.0, "sd": 0.1}]},
            "Benchmarks with a standard deviation need lines with one too",
        ),
        ({"BENCHMARKS": [{"name": "A", "high": 1.0}]}, "has no field 'height' and no Z"),
        ({"FREE": True, "FREE_POINT": "Q"}, "FREE_POINT: no line of layer 'list' touches 'Q'."),
        ({"CLASS": "fourth order"}, "CLASS is 'fourth order', but can only be"),
        ({"DIFFERENCE_FIELD": "rise"}, "has no field 'rise' (DIFFERENCE_FIELD)"),
    ],
)
def test_bad_input(toolbox, change, words):
    given = {
        "INPUT": [{"from_pt": "A", "to_pt": "B", "dh": 1.0, "length": 1000.0}],
        "BENCHMARKS": [{"name": "A", "height": 1.0}],
        **change,
    }
    for key in ("INPUT", "BENCHMARKS"):
        if given[key] is not None:
            given[key] = toolbox.table(given[key], "list" if key == "INPUT" else "marks")
    assert words in toolbox.refusal("adjustlevelling", **given)


def test_every_line_and_point_has_its_look(toolbox):
    """The rule whose symbol each feature gets, by the legend's text."""
    from qgis.core import QgsRenderContext

    # Three lines that misclose by 4.5 mm have w = 2.6, by 50 mm 29; none where nothing checks them.
    rows = [
        ("A", "B", 1.0, 1.0),
        ("B", "C", 1.0, 1.0),
        ("C", "A", -2.0045, 1.0),
        ("C", "D", 1.0, 1.0),
        ("D", "E", 1.0, 1.0),
        ("E", "C", -2.05, 1.0),
        ("E", "F", 1.0, 1.0),
        ("X", "Y", 1.0, 1.0),
        ("F", "G", 1.0, 1.0),
        ("G", "F", -1.0, 1.0),
    ]
    stations = toolbox.points(
        [{"at": (10.0 + 0.01 * k, 50.0 + 0.01 * (k % 2)), "name": name} for k, name in enumerate("ABCDEFGXYZ")]
    )
    run = toolbox.run(
        "adjustlevelling",
        INPUT=toolbox.table(lines(rows)),
        BENCHMARKS=benchmarks(toolbox, {"A": 1.0}),
        SIGMA_KM=1.0,
        STATIONS=stations,
        POINTS="memory:",
        LINES="memory:",
    )
    from tautline.algorithms.styles.layer_kinds import StyleSpec, dress

    for key, kind, names in (
        (
            "LINES",
            "level_lines",
            [
                *["1.96 to the limit"] * 3,
                *["blunder suspected"] * 3,
                "Checked by no",
                "No benchmark",
                *["up to 1.96"] * 2,
            ],
        ),
        ("POINTS", "levelled", ["held fixed", *["Adjusted height"] * 6, *["No adjusted height"] * 3]),
    ):
        layer = run.layer(key)
        dress(layer, StyleSpec(kind, "t"))
        renderer, context = layer.renderer().clone(), QgsRenderContext()
        context.setExpressionContext(layer.createExpressionContext())
        renderer.startRender(context, layer.fields())
        for feature, words in zip(layer.getFeatures(), names):
            context.expressionContext().setFeature(feature)
            keys = renderer.legendKeysForFeature(feature, context)
            labels = [rule.label() for rule in renderer.rootRule().children() if rule.ruleKey() in keys]
            assert len(labels) == 1 and words in labels[0], (feature.attributes(), labels)
        renderer.stopRender(context)


def test_cancel_leaves_nothing(toolbox, tmp_path):
    from tautline.tests.host.conftest import Log

    place = tmp_path / "heights.gpkg"
    text = toolbox.refusal(
        "adjustlevelling",
        Log(cancel_at=1),
        INPUT=toolbox.table(lines(LS02)),
        SIGMA_KM=1.0,
        BENCHMARKS=benchmarks(toolbox, {"4": 1.0}),
        OUTPUT=str(place),
        SUMMARY=str(tmp_path / "s.html"),
    )
    assert text == "Cancelled; no output was written." and not list(tmp_path.iterdir())


def test_lines_that_are_drawn_stay_drawn(toolbox):
    """The output of reducesights with points is a line layer; without STATIONS its lines stay where they are."""
    layer = toolbox.lines(
        [{"at": [(10.0, 50.0), (10.01, 50.0)], "from_pt": "A", "to_pt": "B", "dh": 1.0, "length": 700.0}]
    )
    run = toolbox.run("adjustlevelling", INPUT=layer, BENCHMARKS=benchmarks(toolbox, {"A": 1.0}), LINES="memory:")
    (drawn,) = run.layer("LINES").getFeatures()
    assert drawn.geometry().asWkt(2) == "LineString (10 50, 10.01 50)"
    assert run.layer("LINES").crs().authid() == "EPSG:4326"


NORTH = [{"at": (10.0, 46.0), "name": "S"}, {"at": (10.0, 46.05), "name": "M"}, {"at": (10.0, 46.1), "name": "N"}]


def test_gravity_corrects_each_line(toolbox):
    """Independent: -0.0053 sin(2 phi) H dphi (the classical series 0.0053024), and the height of water at the far end:
    H gamma_S / gamma_N with the published series of GRS 80 (Moritz)."""

    def gamma(lat):
        s = np.sin(np.radians(lat)) ** 2
        return 9.7803267715 * (1 + 0.0052790414 * s + 0.0000232718 * s**2 + 0.0000001262 * s**3)

    rows = lines([("S", "M", 0.0, 5.56), ("M", "N", 0.0, 5.56)])
    more = {"INPUT": toolbox.table(rows), "BENCHMARKS": benchmarks(toolbox, {"S": 2000.0}), "SIGMA_KM": 1.0}
    stations = toolbox.points(NORTH, name="points")
    plain = toolbox.run("adjustlevelling", STATIONS=stations, LINES="memory:", **more)
    assert plain.by("point")["N"]["height"] == 2000.0 and plain.column("grav_corr", "LINES") == [0.0, 0.0]
    assert any("more than a tenth of" in text and "GRAVITY 'normal' does it" in text for text in plain.warnings)
    run = toolbox.run("adjustlevelling", STATIONS=stations, GRAVITY="normal", LINES="memory:", **more)
    height = run.by("point")["N"]["height"]
    assert height == pytest.approx(2000.0 * gamma(46.0) / gamma(46.1), abs=2e-6) and height < 1999.983
    assert run.column("grav_corr", "LINES") == pytest.approx(
        [-0.0053024 * np.sin(np.radians(2 * lat)) * 2000.0 * np.radians(0.05) for lat in (46.025, 46.075)], rel=0.01
    )
    assert "Gravity: normal-orthometric correction of \u22129." in run.said and not run.warnings
    low = toolbox.run(
        "adjustlevelling", STATIONS=stations, GRAVITY="normal", DATUM_HEIGHT=-1900.0, LINES="memory:", **more
    )
    assert low.by("point")["N"]["height"] - 2000.0 == pytest.approx((height - 2000.0) / 20.0, rel=1e-3)


def test_gravity_takes_latitudes_of_benchmarks_too(toolbox):
    marks = toolbox.points([{"at": (10.0, 46.0), "name": "S", "height": 2000.0}], name="marks")
    stations = toolbox.points(NORTH[1:], name="points")
    table = toolbox.table(lines([("S", "M", 0.0, 5.56), ("M", "N", 0.0, 5.56)]))
    run = toolbox.run("adjustlevelling", INPUT=table, BENCHMARKS=marks, STATIONS=stations, GRAVITY="normal")
    fall = 0.0053024 * 2000.0 * np.radians(0.1) * np.sin(np.radians(92.1))
    assert run.by("point")["N"]["height"] == pytest.approx(2000.0 - fall, abs=1e-4)


@pytest.mark.parametrize(
    "stations, marks, words",
    [
        (None, {"S": 2000.0}, "GRAVITY 'normal' needs the latitudes of the points: give them as STATIONS"),
        (NORTH[:2], {"S": 2000.0}, "Layer 'list', row 2: the point 'N' is not among STATIONS"),
        (
            NORTH,
            {},
            "Layer 'list', row 1: the point 'S' reaches no benchmark, and GRAVITY 'normal' needs heights above",
        ),
        (NORTH, {"S": 20_000.0}, "needs heights above the sea, not above a local datum"),
    ],
)
def test_gravity_without_what_it_needs_is_refused(toolbox, stations, marks, words):
    given = {"INPUT": toolbox.table(lines([("S", "M", 0.0, 5.56), ("M", "N", 0.0, 5.56)])), "GRAVITY": "normal"}
    if stations:
        given["STATIONS"] = toolbox.points(stations, name="points")
    given.update({"BENCHMARKS": benchmarks(toolbox, marks)} if marks else {"FREE": True})
    assert words in toolbox.refusal("adjustlevelling", **given)
