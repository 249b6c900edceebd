"""designheights with LINE through the registry: lateral departures, sides, overrides, summary, log and bad inputs."""

import json

import numpy as np
import pytest

pyproj = pytest.importorskip("pyproj")
qgis_core = pytest.importorskip("qgis.core")

FOOT, RADIUS = 0.3048, 6_380_000.0
WGS = pyproj.Geod(ellps="WGS84")
OFFSETS = (0.0, 0.003, -0.006, 0.004, 0.0, 0.0051, -0.004, 0.002, 0.0)
KINDS = ("axis", "chord", "fitted")
# What an independent line fit leaves of the offsets, equally spaced.
LEFT_BY_FIT = np.array(OFFSETS) - np.polyval(np.polyfit(np.arange(9), OFFSETS, 1), np.arange(9))
EXPECTED = {"axis": OFFSETS, "chord": OFFSETS, "fitted": LEFT_BY_FIT}


def beside(offsets, start=(50.0, 8.0, 40.0), spacing=250.0, geod=WGS, to_map=None, height=100.0, **more):
    """Rows of stations every ``spacing`` metres of the geodesic from ``start`` (lat, lon, azimuth), ``offsets`` metres
    right of it, and the ends of the geodesic; by the library's geodesics, in degrees unless ``to_map`` changes them."""
    to_map = to_map or (lambda lon, lat: (lon, lat))
    rows, on_axis, (lat, lon, azimuth) = [], [], start
    for k, offset in enumerate(offsets):
        x, y, back = geod.fwd(lon, lat, azimuth, spacing * k) if k else (lon, lat, azimuth + 180.0)
        on_axis.append(to_map(x, y))
        x, y, _ = geod.fwd(x, y, back - 90.0, offset)
        rows.append({"at": to_map(x, y), "name": f"P{k}", "height": height, **more})
    return rows, [on_axis[0], on_axis[-1]]


def layers(toolbox, offsets=OFFSETS, crs="EPSG:4326", axis_fields=None, **more):
    rows, ends = beside(offsets, **more)
    axis = toolbox.lines([{"at": ends, "name": "wall", **(axis_fields or {})}], crs)
    return {"STATIONS": toolbox.points(rows, crs), "AXIS": axis}


@pytest.fixture
def wall(toolbox):
    return layers(toolbox)


def of(run, name):
    """A column by the names of the stations, P0 first."""
    return [row[name] for row in sorted(run.rows(), key=lambda row: int(row["name"][1:]))]


def test_deviations_of_points_weigh_a_fitted_line_as_in_fitreference(toolbox):
    """A fit by the library with the weights of the field 'sd_line'; the entry that tests the line finds the same."""
    sigma = np.where(np.arange(9) % 3 == 0, 0.012, 0.002)
    rows, ends = beside(OFFSETS)
    rows = [{**row, "sd_line": float(one)} for row, one in zip(rows, sigma)]
    given = {"STATIONS": toolbox.points(rows), "AXIS": toolbox.lines([{"at": ends, "name": "wall"}])}
    run = toolbox.run("designheights", LINE="fitted", **given)
    x, scale = np.arange(9), 1 + 100.0 / RADIUS
    expected = np.array(OFFSETS) - np.polyval(np.polyfit(x, OFFSETS, 1, w=1.0 / sigma), x)
    assert of(run, "lateral") == pytest.approx((expected * scale).tolist(), abs=2e-8)
    assert "fits 9 stations best (standard deviations from the field 'sd_line')" in run.said
    tested = toolbox.run("fitreference", LINE="fitted", REFERENCE="memory:", REMOVE_BLUNDERS=False, **given)
    assert of(run, "lateral") == pytest.approx(of(tested, "lateral"), abs=1e-8)
    # What does not rest on a fit needs none.
    rows[4]["sd_line"] = 0.0
    given["STATIONS"] = toolbox.points(rows)
    assert of(toolbox.run("designheights", LINE="chord", **given), "lateral")[0] == pytest.approx(0.0, abs=1e-9)
    refusal = toolbox.refusal("designheights", LINE="fitted", **given)
    assert "row 5: the standard deviation in the field 'sd_line' is 0; it must be positive" in refusal


# What is found ------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", KINDS)
def test_departures_sides_and_counts(toolbox, wall, kind):
    run = toolbox.run("designheights", LINE=kind, LINE_TOLERANCE=0.005, SUMMARY="memory:", **wall)
    lateral, side = of(run, "lateral"), of(run, "side")
    # A departure at 100 m is 100 m / R longer than its shadow on the ellipsoid.
    assert lateral == pytest.approx([v * (1 + 100.0 / RADIUS) for v in EXPECTED[kind]], abs=2e-8)
    assert list(run.rows()[0])[-2:] == ["lateral", "side"]
    words = ["within" if abs(v) <= 0.005 else "left" if v < 0 else "right" for v in EXPECTED[kind]]
    assert side == words
    row = run.rows("SUMMARY")[0]
    found = (row["lat_number"], row["lat_within"], row["left"], row["right"])
    assert found == (9, words.count("within"), words.count("left"), words.count("right"))
    worst = max(lateral, key=abs)
    assert (row["line"], row["line_tol"], row["lat_max"]) == (kind, 0.005, abs(worst))
    assert row["lat_max_at"] == of(run, "station")[lateral.index(worst)]
    rms = np.sqrt(np.mean(np.square(lateral)))
    assert row["lat_rms"] == pytest.approx(rms, rel=1e-12)
    ends = [of(run, "station")[k] for k in (0, -1)] if kind == "chord" else [None, None]
    assert [row["line_from"], row["line_to"]] == ends
    results = run.results
    assert (results["LINE_COUNT"], results["LINE_WITHIN"]) == (9, words.count("within"))
    assert results["LINE_RMS"] == pytest.approx(rms, rel=1e-12) and results["LINE_MAX_ABS"] == abs(worst)
    assert "greatest 6.0 mm left" in run.said if kind != "fitted" else "greatest 6.4 mm left" in run.said
    assert ("no basis for judging" in run.said) == (kind == "axis")
    assert list(row)[-1] == "record" and json.loads(row["record"])["axes"]["wall"]["line"] == kind
    assert json.loads(row["record"])["axes"]["wall"]["line_tolerance"] == 0.005


@pytest.mark.parametrize(
    "start", [(-45.0, 170.0, 200.0), (-17.0, 179.995, 80.0), (65.0, -179.998, 265.0), (0.0, 10.0, 0.0)]
)
@pytest.mark.parametrize("kind", KINDS)
def test_everywhere_on_earth(toolbox, start, kind):
    run = toolbox.run("designheights", LINE=kind, **layers(toolbox, start=start))
    assert of(run, "lateral") == pytest.approx([v * (1 + 100.0 / RADIUS) for v in EXPECTED[kind]], abs=5e-8)
    assert set(of(run, "side")) == {"no tolerance"}


def grads_from_paris(lon, lat):
    return (lon - 2.5969213 * 0.9) / 0.9, lat / 0.9


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("crs", ["EPSG:4807", "EPSG:27572", "EPSG:32632"])
def test_reference_systems(toolbox, kind, crs):
    """Grads from Paris, a projection of these, and UTM, where the line is not straight on the map (1.8 mm here)."""
    to_map = pyproj.Transformer.from_crs("EPSG:4275" if crs != "EPSG:32632" else "EPSG:4326", crs, always_xy=True)
    to_map = grads_from_paris if crs == "EPSG:4807" else to_map.transform
    geod = WGS if crs == "EPSG:32632" else pyproj.Geod(a=6378249.2, b=6356515.0)
    given = layers(toolbox, crs=crs, geod=geod, to_map=to_map, start=(48.0, 5.5, 75.0), spacing=400.0)
    run = toolbox.run("designheights", LINE=kind, **given)
    assert of(run, "lateral") == pytest.approx([v * (1 + 100.0 / RADIUS) for v in EXPECTED[kind]], abs=2e-7)


def test_departures_are_in_the_unit_of_heights(toolbox):
    given = layers(toolbox, height=300.0)
    run = toolbox.run(
        "designheights", LINE="chord", LINE_TOLERANCE=0.0165, HEIGHT_UNIT="foot", CHAINAGE_UNIT="metre", **given
    )
    metres = [v * (1 + 300.0 * FOOT / RADIUS) for v in OFFSETS]
    assert of(run, "lateral") == pytest.approx([v / FOOT for v in metres], abs=1e-7)
    assert of(run, "offset") == pytest.approx(metres, abs=2e-8)
    assert of(run, "side").count("right") == 1 and "0.020 ft left" in run.said


def test_a_field_of_undulations_lifts_the_stations(toolbox):
    """Heights above the geoid with N give what the same heights above the ellipsoid give."""
    with_n = layers(toolbox, height=1000.0, undulation=48.25)
    lifted = layers(toolbox, height=1048.25)
    for kind in ("chord", "fitted"):
        geoid = toolbox.run("designheights", LINE=kind, UNDULATION="field", UNDULATION_FIELD="undulation", **with_n)
        plain = toolbox.run("designheights", LINE=kind, UNDULATION="ellipsoidal", **lifted)
        assert of(geoid, "lateral") == of(plain, "lateral")
    # 48 m lengthen a departure of 60 m by 0.45 mm.
    offsets = (0.0, 60.0, 0.0)
    two = [
        of(
            toolbox.run("designheights", LINE="chord", UNDULATION="ellipsoidal", **layers(toolbox, offsets, height=h)),
            "lateral",
        )
        for h in (1000.0, 1048.25)
    ]
    assert two[1][1] - two[0][1] == pytest.approx(60.0 * 48.25 / RADIUS, abs=2e-6)


def test_stations_without_a_height_stand_at_their_design_height(toolbox):
    rows, ends = beside(OFFSETS)
    for k in (0, 2, 8):
        rows[k]["height"] = None
    given = {"STATIONS": toolbox.points(rows), "AXIS": toolbox.lines([{"at": ends, "name": "wall"}])}
    run = toolbox.run("designheights", LINE="chord", LINE_TOLERANCE=0.005, SUMMARY="memory:", **given)
    stations = of(run, "station")
    row = run.rows("SUMMARY")[0]
    # The line runs through the first and the last station that were surveyed.
    assert [row["line_from"], row["line_to"]] == [stations[1], stations[7]] and row["lat_number"] == 9
    expected = [v - (0.003 + (k - 1) * (0.002 - 0.003) / 6) for k, v in enumerate(OFFSETS)]
    assert of(run, "lateral") == pytest.approx(expected, abs=2e-7)
    assert of(run, "status")[2] == "no height" and of(run, "side")[2] == "left"
    assert "3 without a height, taken at the design height" in run.said


def test_a_chord_runs_through_the_stations_at_typed_controls(toolbox, wall):
    typed = {"CHAINAGE_A": "250", "HEIGHT_A": 100.0, "CHAINAGE_B": "1750.5", "HEIGHT_B": 100.0}
    far = {"at": (8.0, 50.05), "name": "P9", "height": 100.0}
    with_far = toolbox.points([far, *beside(OFFSETS)[0]])
    run = toolbox.run("designheights", LINE="chord", SUMMARY="memory:", **typed, STATIONS=with_far, AXIS=wall["AXIS"])
    stations, row = of(run, "station"), run.rows("SUMMARY")[0]
    assert [row["line_from"], row["line_to"]] == [stations[1], stations[7]]
    assert [of(run, "lateral")[k] for k in (1, 7)] == pytest.approx([0.0, 0.0], abs=1e-9)
    # No station within a metre of B: the last one.
    run = toolbox.run("designheights", LINE="chord", SUMMARY="memory:", **{**typed, "CHAINAGE_B": "1800"}, **wall)
    assert run.rows("SUMMARY")[0]["line_to"] == stations[8]


def test_a_bent_axis(toolbox):
    """From the axis as drawn every leg is judged by itself; a plane warns by how much the axis bends."""
    rows, ends = beside(OFFSETS[:5])
    corner = ends[1]
    azimuth = WGS.inv(*ends[0], *corner)[1] + 180.0 + 3.0
    more, second = beside(OFFSETS, start=(corner[1], corner[0], azimuth))
    rows += [{**row, "name": f"P{k + 4}"} for k, row in enumerate(more) if k]
    given = {"STATIONS": toolbox.points(rows), "AXIS": toolbox.lines([{"at": [*ends, second[1]], "name": "wall"}])}
    run = toolbox.run("designheights", LINE="axis", **given)
    expected = [*OFFSETS[:4], 0.0, *OFFSETS[1:]]
    assert of(run, "lateral") == pytest.approx([v * (1 + 100.0 / RADIUS) for v in expected], abs=2e-8)
    assert "beside the vertical plane" not in run.said
    for kind in ("chord", "fitted"):
        run = toolbox.run("designheights", LINE=kind, **given)
        assert any("beside the vertical plane of LINE" in text and "'wall'" in text for text in run.warnings)
    # A chord within the first leg has nothing to do with what bends beyond it.
    beyond = WGS.fwd(*second[1], azimuth + 30.0, 500.0)[:2]
    given["AXIS"] = toolbox.lines([{"at": [*ends, second[1], beyond], "name": "wall"}])
    typed = {"CHAINAGE_A": "0", "HEIGHT_A": 100.0, "CHAINAGE_B": "1000", "HEIGHT_B": 100.0}
    run = toolbox.run("designheights", LINE="chord", **typed, **given)
    assert "beside the vertical plane" not in run.said


def test_off_axis_stations_and_axes_without_line_have_none(toolbox):
    rows, ends = beside(OFFSETS)
    other, others = beside(OFFSETS, start=(50.1, 8.0, 40.0))
    far = {"at": (8.0, 50.05), "name": "P18", "height": 100.0}
    rows = [*rows, *({**row, "name": f"P{k + 9}"} for k, row in enumerate(other)), far]
    axes = [
        {"at": ends, "name": "a", "design": "chord", "line": "fitted", "line_tol": 0.0045},
        {"at": others, "name": "b", "design": "level", "line": "none", "line_tol": None},
    ]
    run = toolbox.run(
        "designheights",
        LINE="axis",
        LINE_TOLERANCE=0.001,
        SUMMARY="memory:",
        STATIONS=toolbox.points(rows),
        AXIS=toolbox.lines(axes, types={"line_tol": "double"}),
    )
    assert of(run, "lateral")[9:] == [None] * 10 and of(run, "side")[9:] == [None] * 10
    assert of(run, "lateral")[:9] == pytest.approx([v * (1 + 100.0 / RADIUS) for v in LEFT_BY_FIT], abs=2e-8)
    assert of(run, "side")[:9].count("within") == sum(abs(v) <= 0.0045 for v in LEFT_BY_FIT)
    summary = run.by("axis", "SUMMARY")
    assert summary["b"]["line"] == "none" and summary["b"]["lat_number"] is None and summary["a"]["line_tol"] == 0.0045
    assert "Axis 'a': the axis layer overrides design, line, line_tol." in run.said
    assert run.results["LINE_COUNT"] == 9


def test_without_a_field_design_the_axis_layer_overrides_nothing(toolbox):
    """Many a layer has a field 'line'."""
    given = layers(toolbox, axis_fields={"line": "Northern Railway", "line_tol": -1.0})
    run = toolbox.run("designheights", LINE="axis", LINE_TOLERANCE=0.005, **given)
    assert of(run, "side").count("within") == 7 and "overrides" not in run.said


# Heights only -------------------------------------------------------------------------------------------------------


def test_nothing_of_line_where_only_heights_are_asked_for(toolbox, wall):
    run = toolbox.run("designheights", SUMMARY="memory:", **wall)
    assert not {"lateral", "side"} & set(run.rows()[0])
    row = run.rows("SUMMARY")[0]
    assert not [name for name in row if name.startswith("la") or "line" in name] and not {"left", "right"} & set(row)
    assert not [key for key in run.results if key.startswith("LINE")]
    assert "line" not in run.said.lower().replace("polyline", "") and "lateral" not in run.said
    defaults = {
        d.name(): d.defaultValue()
        for d in qgis_core.QgsApplication.processingRegistry()
        .algorithmById("tautline:designheights")
        .parameterDefinitions()
    }
    assert defaults["LINE"] is None and defaults["LINE_TOLERANCE"] is None
    record = json.loads(row["record"])
    assert not [key for key in (*record["axes"]["wall"], *record["parameters"]) if "line" in key.lower()]


def test_a_later_run_for_heights_alone_leaves_no_line_behind(toolbox, wall, tmp_path):
    first = str(tmp_path / "a.gpkg")
    toolbox.run("designheights", LINE="chord", OUTPUT=first, **wall)
    again = toolbox.run("designheights", LINE="chord", STATIONS=first, AXIS=wall["AXIS"])
    names = list(again.rows()[0])
    assert names.count("lateral") == names.count("side") == 1
    heights = toolbox.run("designheights", STATIONS=first, AXIS=wall["AXIS"])
    assert not {"lateral", "side"} & set(heights.rows()[0])


def test_a_field_of_somebody_else_stays(toolbox):
    run = toolbox.run("designheights", **layers(toolbox, side="north", lateral="B 12"))
    assert of(run, "side")[0] == "north" and of(run, "lateral")[0] == "B 12"


# Bad inputs ---------------------------------------------------------------------------------------------------------


def test_a_tolerance_without_line_is_told(toolbox, wall):
    run = toolbox.run("designheights", LINE_TOLERANCE=0.005, **wall)
    assert any("tolerance of the line is given, but not used" in text for text in run.warnings)
    assert "lateral" not in run.rows()[0]


@pytest.mark.parametrize(
    "axis_fields, form, words",
    [
        ({"design": "chord", "line": "chrod"}, {}, ("'axis', field 'line', row 1: 'chrod' is not known", "fitted")),
        ({"design": "chord", "line_tol": -0.005}, {"LINE": "axis"}, ("'wall'", "tolerance of the line", "negative")),
        ({"design": "chord", "line_tol": "x"}, {"LINE": "axis"}, ("'line_tol', row 1: 'x' is not a number",)),
        ({}, {"LINE": "axis", "LINE_TOLERANCE": -0.005}, ("LINE_TOLERANCE",)),
        ({}, {"LINE": "straight"}, ("LINE", "straight")),
        ({}, {"LINE": "axis", "LINE_TOLERANCE": "abc"}, ("LINE_TOLERANCE", "abc")),
    ],
)
def test_bad_values_are_refused(toolbox, axis_fields, form, words):
    text = toolbox.refusal("designheights", **form, **layers(toolbox, axis_fields=axis_fields))
    for word in words:
        assert word in text


@pytest.mark.parametrize("kind, offsets, need", [("fitted", OFFSETS[:2], 3), ("chord", OFFSETS[:1], 2)])
def test_too_few_stations_are_refused(toolbox, kind, offsets, need):
    rows, _ = beside(offsets)
    _, ends = beside(OFFSETS)
    given = {"STATIONS": toolbox.points(rows), "AXIS": toolbox.lines([{"at": ends, "name": "wall"}])}
    text = toolbox.refusal("designheights", DESIGN="level", LINE=kind, **given)
    assert f"'wall': the line '{kind}' needs {need} stations; it has {len(offsets)}." in text
    assert of(toolbox.run("designheights", DESIGN="level", LINE="axis", **given), "lateral")[0] == pytest.approx(
        0.0, abs=1e-8
    )


# What others read ---------------------------------------------------------------------------------------------------


def evaluated(layer, expression, number):
    parsed = qgis_core.QgsExpression(expression)
    found = parsed.evaluate(context_of(layer, number))
    assert not parsed.hasParserError() and not parsed.hasEvalError(), parsed.evalErrorString()
    return found


def test_titles_labels_and_tips(toolbox, wall, tmp_path):
    from tautline.algorithms.styles.review_labels import review_label

    path = str(tmp_path / "a.gpkg")
    run = toolbox.run(
        "designheights", LINE="axis", LINE_TOLERANCE=0.005, OUTPUT=path, SUMMARY=str(tmp_path / "s.gpkg"), **wall
    )
    titles = run.titles()
    assert (titles["lateral"], titles["side"]) == ("Lateral departure (m)", "Side")
    assert run.titles("SUMMARY")["lat_rms"] == "RMS lateral departure (m)"
    layer = run.layer()
    layer.loadDefaultStyle()
    label = review_label(layer.fields(), "metre")
    assert evaluated(layer, label, 2).split("\n")[2] == "6.0 mm left"
    assert evaluated(layer, label, 5).split("\n")[2] == "5.1 mm right"
    assert evaluated(layer, label, 0).split("\n")[2] == "0.0 mm"
    # Off its line a station is as notable as off its height; here no height is judged, and none is far off.
    bold = [evaluated(layer, bold_filter(layer), k) for k in (1, 2, 5)]
    assert bold == [0, 1, 1]
    tip = layer.mapTipTemplate()
    told = qgis_core.QgsExpression.replaceExpressionText(tip, context_of(layer, 2))
    assert "Line: 6.0 mm left, beyond the tolerance of the line." in told
    told = qgis_core.QgsExpression.replaceExpressionText(tip, context_of(layer, 1))
    assert "Line: 3.0 mm right, within the tolerance of the line." in told
    heights = toolbox.run("designheights", OUTPUT=str(tmp_path / "h.gpkg"), **wall).layer()
    heights.loadDefaultStyle()
    assert "ine:" not in heights.mapTipTemplate() and "side" not in bold_filter(heights)


def bold_filter(layer):
    rules = layer.labeling().rootRule().children()
    return next(r for r in rules if r.settings().format().font().bold()).filterExpression()


def context_of(layer, number):
    context = layer.createExpressionContext()
    context.setFeature(next(f for f in layer.getFeatures() if f["name"] == f"P{number}"))
    return context


def test_reviewers_read_line_and_its_tolerance(toolbox, wall, tmp_path):
    from tautline.algorithms.entry.layer_records import record_of_layer
    from tautline.algorithms.structure.reviewed_stations import layer_columns, recorded_tolerance, review_fields

    path = str(tmp_path / "a.gpkg")
    run = toolbox.run("designheights", LINE="chord", LINE_TOLERANCE=0.005, OUTPUT=path, **wall)
    layer = run.layer()
    layer.loadDefaultStyle()
    record = record_of_layer(layer, qgis_core.QgsProcessingContext())
    read = layer_columns(layer, record)
    assert list(read.columns["lateral"]) == run.column("lateral") and list(read.columns["side"]) == run.column("side")
    assert recorded_tolerance(record, "wall", read.units, "line_tolerance") == 0.005
    assert record.parameter("LINE") == "chord" and record.axis("wall")["line"] == "chord"
    # A field of either name alone is somebody else's.
    alone = toolbox.points([{"at": (8.0, 50.0), "residual": 0.0, "side": "north"}])
    assert review_fields(alone)["side"] == review_fields(alone)["lateral"] == -1
