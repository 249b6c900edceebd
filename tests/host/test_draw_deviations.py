"""drawdeviations through the registry: bars on the ground in any reference system, band, strip, styles, bad inputs."""

import json
import math

import numpy as np
import pytest
from geographiclib.geodesic import Geodesic

pyproj = pytest.importorskip("pyproj")
qgis_core = pytest.importorskip("qgis.core")

FOOT, GEOD = 0.3048, Geodesic.WGS84
RESIDUALS = [0.0, 0.004, -0.003, 0.002, -0.006, 0.012, None, 0.001, -0.004, 0.003, 0.0]
# Reference system, start (lat, lon, azimuth): in and far out of its zone, poles, antimeridian, and not conformal.
PLACES = [
    ("EPSG:4326", (50.0, 8.0, 40.0)),
    ("EPSG:32632", (50.0, 8.0, 40.0)),
    ("EPSG:32631", (50.0, 33.0, 130.0)),
    ("EPSG:32734", (-29.0, 22.3, -16.0)),
    ("EPSG:3857", (64.0, 20.0, 75.0)),
    ("EPSG:4087", (40.0, -8.0, 200.0)),
    ("EPSG:4326", (89.99, 10.0, 80.0)),
    ("EPSG:3413", (89.995, 10.0, 10.0)),
    ("EPSG:4326", (-10.0, 179.995, 90.0)),
    ("EPSG:3031", (-89.99, 100.0, 170.0)),
]


def transform(x, y, crs, back=False):
    way = pyproj.Transformer.from_crs("EPSG:4326", crs, always_xy=True)
    return way.transform(x, y, direction="INVERSE" if back else "FORWARD")


def structure(
    toolbox,
    crs="EPSG:4326",
    start=(50.0, 8.0, 40.0),
    residuals=RESIDUALS,
    spacing=200.0,
    unit=1.0,
    slope=0.0,
    name="line",
):
    """Stations on a geodesic as designheights would leave them, a chord by the rule s(L - s)/2R; and the axis."""
    lat, lon, azimuth = start
    length, rows, places = spacing * (len(residuals) - 1), [], []
    for k, residual in enumerate(residuals):
        s = spacing * k
        at = GEOD.Direct(lat, lon, azimuth, s)
        places.append(transform(at["lon2"], at["lat2"], crs))
        design = 100.0 + slope * s - s * (length - s) / 2 / 6_380_000.0
        rows.append(
            {
                "at": places[-1],
                "axis": name,
                "chainage": s / unit,
                "residual": None if residual is None else residual / unit,
                "design_h": design / unit,
                "flat_h": (100.0 + slope * s) / unit,
            }
        )
    axis = [{"at": [places[0], places[-1]], "name": name}]
    return {"STATIONS": toolbox.points(rows, crs, types={"residual": "double"}), "AXIS": toolbox.lines(axis, crs)}


def draw(toolbox, given, *keys, **more):
    outputs = dict.fromkeys(("BARS", *keys), "memory:")
    return toolbox.run("drawdeviations", OUTPUT=None, **given, **outputs, **more)


def refusal(toolbox, given, *keys, **more):
    outputs = dict.fromkeys(("BARS", *keys), "memory:")
    return toolbox.refusal("drawdeviations", OUTPUT=None, **given, **outputs, **more)


def shapes(run, key):
    """Features of an output: (attributes, list of parts as latitude and longitude)."""
    layer = run.layer(key)
    names = [f.name() for f in layer.fields()]
    found = []
    for feature in layer.getFeatures():
        shape = feature.geometry()
        if key == "BAND":
            parts = shape.asPolygon()
        else:
            parts = shape.asMultiPolyline() if shape.isMultipart() else [shape.asPolyline()]
        placed = []
        for part in parts:
            lon, lat = transform([p.x() for p in part], [p.y() for p in part], layer.crs().authid(), back=True)
            placed.append(list(zip(lat, lon)))
        found.append((dict(zip(names, feature.attributes())), placed))
    return found


def along_and_across(start, place):
    """Distance along and offset (positive right) of a place from a geodesic, by geographiclib alone."""
    lat, lon, azimuth = start
    along = 0.0
    for _ in range(8):
        foot = GEOD.Direct(lat, lon, azimuth, along)
        seen = GEOD.Inverse(foot["lat2"], foot["lon2"], *place)
        turn = math.radians(seen["azi1"] - foot["azi2"])
        along += seen["s12"] * math.cos(turn)
    return along, math.copysign(seen["s12"], math.sin(turn))


# --- bars


@pytest.mark.parametrize("crs, start", PLACES)
def test_bars_are_in_metres_on_the_ground_in_any_reference_system(toolbox, crs, start):
    run = draw(toolbox, structure(toolbox, crs, start), EXAGGERATION=10_000)
    bars = shapes(run, "BARS")
    assert len(bars) == 10 == run.results["COUNT"]
    want = {200.0 * k: r for k, r in enumerate(RESIDUALS) if r is not None}
    for row, ((foot, tip),) in bars:
        at, off = along_and_across(start, foot)
        assert abs(off) < 1e-3 and at == pytest.approx(row["chainage"], abs=1e-3)
        residual = want[round(at)]
        _, length = along_and_across(start, tip)
        assert length == pytest.approx(10_000 * residual, rel=1e-6, abs=2e-3)
        assert row["bar_m"] == pytest.approx(abs(10_000 * residual), rel=1e-9) and row["residual"] == residual


def test_bars_across_the_antimeridian_do_not_run_around_the_earth(toolbox):
    given = structure(toolbox, "EPSG:4326", (-10.0, 179.9995, 0.0))
    run = draw(toolbox, given, "BAND", "STRIP", TOLERANCE=0.005, SIDE="right")
    for key in ("BARS", "BAND", "STRIP"):
        for feature in run.layer(key).getFeatures():
            assert feature.geometry().boundingBox().width() < 0.1


def test_automatic_factor_and_what_is_said(toolbox):
    # 12 mm is the greatest of ten, 6 mm the next: 2000 m / 20 / 0.006 m = 16,667.
    run = draw(toolbox, structure(toolbox))
    assert run.results["FACTOR"] == 10_000 and run.results["CUT"] == 0
    assert "Bars are drawn \u00d7 10,000 on the ground: 200 m stand for 20.0 mm" in run.said
    assert "The longest bar drawn whole stands for +12.0 mm at 1+000 of axis 'line'; it is 120.0 m long." in run.said
    assert "1 station has no as-built height" in run.said and not run.warnings
    # With a tolerance that is larger it sets the scale: 2000 / 20 / 0.03 = 3,333.
    assert draw(toolbox, structure(toolbox), TOLERANCE=0.03).results["FACTOR"] == 2000
    assert draw(toolbox, structure(toolbox), EXAGGERATION=123.5).results["FACTOR"] == 123.5


def test_a_blunder_is_cut_and_marked_not_hidden(toolbox):
    residuals = [*RESIDUALS[:5], 40.0, *RESIDUALS[6:]]
    run = draw(toolbox, structure(toolbox, residuals=residuals), "STRIP")
    assert run.results["FACTOR"] == 10_000 and run.results["CUT"] == 1
    (row,) = [row for row in run.rows("BARS") if row["cut"]]
    assert row["residual"] == 40.0 and row["bar_m"] == pytest.approx(2000.0 / 6, rel=1e-4)
    assert "1 bar is cut at 333 m, with a mark: +40.0000 m at 1+000 of axis 'line'. EXAGGERATION 5 would" in run.said
    (built,) = [row for row in run.rows("STRIP") if row["part"] == "as-built"]
    assert built["cut"] == 1 and any("leave the strip" in text for text in run.warnings)
    assert draw(toolbox, structure(toolbox, residuals=residuals), LONGEST_BAR=1e6).results["CUT"] == 0


@pytest.mark.parametrize("side, sign", [("right", 1), ("left", -1)])
def test_side_of_stations_built_high(toolbox, side, sign):
    run = draw(toolbox, structure(toolbox), HIGH_SIDE=side)
    for row, ((_, tip),) in shapes(run, "BARS"):
        _, across = along_and_across((50.0, 8.0, 40.0), tip)
        if row["residual"]:
            assert math.copysign(1, across) == sign * math.copysign(1, row["residual"])
    assert f"High is to the {side}" in run.said


def test_status_follows_the_tolerance(toolbox):
    run = draw(toolbox, structure(toolbox), TOLERANCE=0.005)
    by = {row["station"]: row["status"] for row in run.rows("BARS")}
    assert (by["1+000"], by["0+800"], by["0+200"]) == ("high", "low", "within")
    assert set(draw(toolbox, structure(toolbox)).column("status", "BARS")) == {"no tolerance"}


# --- after designheights


def test_units_tolerance_and_stations_come_from_the_recorded_run(toolbox, tmp_path):
    given = structure(toolbox, unit=FOOT)
    rows = [
        {"at": tuple(f.geometry().asPoint()), "height": 300.0 + 0.01 * k}
        for k, f in enumerate(given["STATIONS"].getFeatures())
    ]
    path = str(tmp_path / "residuals.gpkg")
    axis = given["AXIS"]
    toolbox.run(
        "designheights",
        STATIONS=toolbox.points(rows),
        AXIS=axis,
        HEIGHT_UNIT="foot",
        TOLERANCE=0.05,
        CHAINAGE_START="10+00",
        OUTPUT=path,
    )
    run = draw(toolbox, {"STATIONS": path, "AXIS": axis}, "BAND")
    assert "heights in ft, chainages in ft" in run.said
    assert run.rows("BAND")[0]["tolerance"] == pytest.approx(0.05)
    assert run.column("station", "BARS")[0] == "10+00"
    assert run.column("chainage", "BARS")[0] == pytest.approx(1000.0, abs=1e-6)
    longest = max(run.rows("BARS"), key=lambda row: row["bar_m"])
    assert longest["bar_m"] == pytest.approx(abs(longest["residual"]) * FOOT * run.results["FACTOR"])
    # What is said in the form goes before the record.
    other = draw(toolbox, {"STATIONS": path, "AXIS": axis}, "BAND", TOLERANCE=0.1)
    assert other.rows("BAND")[0]["tolerance"] == pytest.approx(0.1)


def test_tolerance_of_the_axis_layer_goes_first(toolbox):
    given = structure(toolbox)
    line = next(given["AXIS"].getFeatures()).geometry().asWkt(12)
    given["AXIS"] = toolbox.lines([{"at": line, "name": "line", "design": "chord", "tolerance": 0.004}])
    assert draw(toolbox, given, "BAND", TOLERANCE=0.1).rows("BAND")[0]["tolerance"] == pytest.approx(0.004)


# --- band


def test_band_is_the_tolerance_to_either_side(toolbox):
    given = structure(toolbox, "EPSG:32631", (50.0, 33.0, 130.0))
    run = draw(toolbox, given, "BAND", TOLERANCE=0.005, EXAGGERATION=1000)
    ((row, (ring,)),) = shapes(run, "BAND")
    assert row["axis"] == "line" and row["factor"] == 1000
    across = [along_and_across((50.0, 33.0, 130.0), place)[1] for place in ring]
    assert np.abs(across) == pytest.approx(np.full(len(ring), 5.0), abs=1e-3)
    assert min(across) < 0 < max(across) and next(run.layer("BAND").getFeatures()).geometry().isGeosValid()


def test_without_tolerance_there_is_no_band(toolbox):
    run = draw(toolbox, structure(toolbox), "BAND")
    assert run.rows("BAND") == [] and any("No tolerance is known" in text for text in run.warnings)


# --- strip


def strip_offsets(run, part, start=(50.0, 8.0, 40.0)):
    ((_, parts),) = [item for item in shapes(run, "STRIP") if item[0]["part"] == part]
    return [[along_and_across(start, place) for place in places] for places in parts]


@pytest.mark.parametrize("view", ["level", "straight"])
@pytest.mark.parametrize("side, sign", [("right", 1), ("left", -1)])
def test_strip_shows_curve_and_straight_line(toolbox, view, side, sign):
    run = draw(toolbox, structure(toolbox), "STRIP", VIEW=view, SIDE=side, DISTANCE=300, STRIP_EXAGGERATION=1000)
    datum = strip_offsets(run, "datum")[0]
    assert np.array(datum)[:, 1] == pytest.approx(np.full(len(datum), sign * 300.0), rel=1e-4)
    heights = {
        part: np.array([np.abs(np.array(places)[:, 1]) for places in strip_offsets(run, part)][0])
        for part in ("design", "level", "flat")
    }
    straight, curved = ("level", "design") if view == "level" else ("design", "level")
    assert np.ptp(heights[straight]) < 0.01
    # A chord of 2 km lies s(L - s)/2R = 78.4 mm below the level surface at its middle: 78.4 m on this strip.
    assert np.ptp(heights[curved]) == pytest.approx(78.4, abs=0.1)
    middle, end = heights[curved][len(heights[curved]) // 2], heights[curved][0]
    assert (middle < end) == (view == "level")
    assert heights["flat"] == pytest.approx(heights["level"], abs=0.01), "a chord between equal heights"


def test_strip_has_grid_stations_and_a_scale_bar_of_its_own(toolbox):
    run = draw(toolbox, structure(toolbox), "STRIP", SIDE="right")
    rows = run.rows("STRIP")
    assert {row["part"] for row in rows} == {
        "frame",
        "grid",
        "datum",
        "tick",
        "flat",
        "level",
        "design",
        "as-built",
        "scale",
    }
    assert [row["label"] for row in rows if row["part"] == "tick"] == ["0+000", "0+500", "1+000", "1+500", "2+000"]
    (scale,) = [row for row in rows if row["part"] == "scale"]
    main, *teeth = strip_offsets(run, "scale")
    assert abs(main[1][1] - main[0][1]) == pytest.approx(scale["value"] * scale["factor"], rel=1e-4) and len(teeth) == 2
    assert scale["label"] == f"{scale['value'] * 1000:.0f} mm" and run.results["STRIP_FACTOR"] == scale["factor"]
    assert main[0][0] > 2000.0, "beyond the last station"
    assert f"its scale bar stands for {scale['label']}" in run.said


def test_a_gap_in_the_survey_is_a_gap_in_the_as_built_line(toolbox):
    parts = strip_offsets(draw(toolbox, structure(toolbox), "STRIP"), "as-built")
    assert [round(part[0][0]) for part in parts] == [0, 1400] and [round(part[-1][0]) for part in parts] == [1000, 2000]
    alone = structure(toolbox, residuals=[0.001, None, 0.002, None, 0.0])
    assert len(strip_offsets(draw(toolbox, alone, "STRIP"), "as-built")) == 3


def test_strips_of_several_axes_keep_apart(toolbox):
    one = structure(toolbox, start=(50.0, 8.0, 0.0), name="north")
    two = structure(toolbox, start=(50.0, 8.0, 70.0), name="east")
    stations = [
        {"at": f.geometry().asWkt(12), **dict(zip([c.name() for c in layer.fields()], f.attributes()))}
        for layer in (one["STATIONS"], two["STATIONS"])
        for f in layer.getFeatures()
    ]
    stations = [{k: None if v == qgis_core.NULL else v for k, v in row.items()} for row in stations]
    axes = [
        {"at": next(layer.getFeatures()).geometry().asWkt(12), "name": name}
        for layer, name in ((one["AXIS"], "north"), (two["AXIS"], "east"))
    ]
    given = {"STATIONS": toolbox.points(stations), "AXIS": toolbox.lines(axes)}
    run = draw(toolbox, given, "STRIP", "BAND", TOLERANCE=0.01)
    assert run.results["COUNT"] == 20 and {row["axis"] for row in run.rows("BAND")} == {"north", "east"}
    assert "Axis 'north': strip on the left" in run.said and "Axis 'east': strip on the right" in run.said
    assert len({row["factor"] for row in run.rows("STRIP")}) == 1, "one scale for all"


@pytest.mark.parametrize("turn", [40.0, -40.0])
def test_kinked_axis(toolbox, turn):
    """Bars stand at their own leg; band and strip follow the bend without crossing themselves."""
    lat, lon, places, stations = 50.0, 8.0, [(8.0, 50.0)], []
    azimuth = 30.0
    for leg in (0, 1):
        for k in range(0 if leg == 0 else 1, 6):
            at = GEOD.Direct(lat, lon, azimuth, 200.0 * k)
            stations.append(
                {"at": (at["lon2"], at["lat2"]), "residual": 0.002 * (-1) ** k, "design_h": 10.0, "flat_h": 10.0}
            )
        lat, lon, azimuth = at["lat2"], at["lon2"], at["azi2"] + turn
        places.append((lon, lat))
    given = {"STATIONS": toolbox.points(stations), "AXIS": toolbox.lines([{"at": places, "name": "bent"}])}
    run = draw(toolbox, given, "BAND", "STRIP", TOLERANCE=0.004)
    assert not run.warnings and run.results["COUNT"] == 11
    for feature in [*run.layer("BAND").getFeatures(), *run.layer("STRIP").getFeatures()]:
        assert feature.geometry().isGeosValid()
    (frame,) = [f for f in run.layer("STRIP").getFeatures() if f["part"] == "frame"]
    axis = next(given["AXIS"].getFeatures()).geometry()
    assert frame.geometry().isSimple() and not frame.geometry().intersects(axis)


def test_one_station_alone(toolbox):
    given = structure(toolbox)
    feature = list(given["STATIONS"].getFeatures())[5]
    given["STATIONS"] = toolbox.points(
        [
            {
                "at": tuple(feature.geometry().asPoint()),
                "residual": 0.012,
                "chainage": 1000.0,
                "design_h": 5.0,
                "flat_h": 5.0,
            }
        ]
    )
    run = draw(toolbox, given, "BAND", "STRIP", TOLERANCE=0.01)
    assert run.results["COUNT"] == 1 and len(run.rows("BAND")) == 1 and run.rows("STRIP") == []
    assert any("no strip; it needs design heights at two stations" in text for text in run.warnings)
    assert run.results["STRIP_FACTOR"] is None


def test_off_axis_and_empty_axes_are_named(toolbox):
    given = structure(toolbox)
    lines = [
        {"at": next(given["AXIS"].getFeatures()).geometry().asWkt(12), "name": "line"},
        {"at": [(9.0, 50.0), (9.0, 50.01)], "name": "far"},
    ]
    given["AXIS"] = toolbox.lines(lines)
    features = list(given["STATIONS"].getFeatures())
    rows = [{"at": tuple(f.geometry().asPoint()), "residual": 0.001, "design_h": 1.0, "flat_h": 1.0} for f in features]
    rows.append({"at": (8.0, 50.02), "residual": None, "design_h": None, "flat_h": None})
    given["STATIONS"] = toolbox.points(rows)
    run = draw(toolbox, given, "STRIP")
    assert run.results["COUNT"] == len(features)
    assert "Not drawn: 1 station lies off axis." in run.said and "Axis 'far': no station belongs to it." in run.said


def test_all_residuals_zero(toolbox):
    run = draw(toolbox, structure(toolbox, residuals=[0.0] * 4), "STRIP")
    assert run.results["FACTOR"] == 1 and run.results["COUNT"] == 4 and run.results["STRIP_FACTOR"] > 0
    assert all(f.geometry().isGeosValid() for f in run.layer("BARS").getFeatures())


def test_a_slope_that_hides_the_curvature_is_pointed_out(toolbox):
    run = draw(toolbox, structure(toolbox, slope=0.01), "STRIP")
    assert "the design's slope hides its curvature here; VIEW 'straight' shows it" in run.said
    run = draw(toolbox, structure(toolbox, slope=0.01), "STRIP", VIEW="straight")
    assert "the level line leaves the strip" in run.said
    (level,) = [row for row in run.rows("STRIP") if row["part"] == "level"]
    assert level["cut"] == 1


# --- styles


def saved(toolbox, tmp_path, **more):
    path = tmp_path / "drawn.gpkg"
    places = {key: f"ogr:dbname='{path}' table=\"{key.lower()}\" (geom)" for key in ("BARS", "BAND", "STRIP")}
    run = toolbox.run("drawdeviations", OUTPUT=None, **structure(toolbox), **places, TOLERANCE=0.005, **more)
    found = {}
    for key in places:
        found[key] = qgis_core.QgsVectorLayer(f"{path}|layername={key.lower()}", key, "ogr")
        assert found[key].loadDefaultStyle()[1], key
    return run, found


def legend(layer):
    return [item.label() for item in layer.renderer().legendSymbolItems()]


def test_styles_travel_in_the_geopackage_and_say_the_exaggeration(toolbox, tmp_path):
    run, found = saved(toolbox, tmp_path)
    for key, title in (
        ("BARS", "Residual bars \u00d7 10,000"),
        ("BAND", "Tolerance band \u00d7 10,000"),
        ("STRIP", "Profile strip \u00d7 2,000"),
    ):
        assert found[key].listStylesInDatabase()[2][0] == title and len(title) <= 30
        record = json.loads(found[key].customProperty("tautline/record"))
        assert record["entry"] == "tautline:drawdeviations" and record["factor"] == 10_000
    assert legend(found["BARS"])[:2] == [
        "Residuals \u00d7 10,000: 100 m on the ground stand for 10.0 mm",
        "Built high, above the tolerance: right of the axis",
    ]
    assert legend(found["BAND"]) == ["Tolerance \u00b15.0 mm, drawn \u00d7 10,000"]
    words = legend(found["STRIP"])
    assert words[0] == "Heights \u00d7 2,000 above the level line" and "As built" in words
    assert any(word.startswith("Scale bar of the heights: ") and word.endswith(" mm") for word in words)
    assert found["BARS"].attributeAlias(found["BARS"].fields().indexOf("residual")) == "Residual (m)"


def context_of(layer, feature):
    context = qgis_core.QgsExpressionContext(qgis_core.QgsExpressionContextUtils.globalProjectLayerScopes(layer))
    context.setFeature(feature)
    return context


def evaluated(text, layer, feature):
    expression = qgis_core.QgsExpression(text)
    value = expression.evaluate(context_of(layer, feature))
    assert not expression.hasParserError() and not expression.hasEvalError(), (text, expression.evalErrorString())
    return value


def test_every_line_has_its_rule_and_every_expression_works(toolbox, tmp_path):
    _, found = saved(toolbox, tmp_path)
    for key in ("BARS", "STRIP"):
        layer = found[key]
        (head,) = layer.renderer().rootRule().children()
        rules, labels = head.children(), layer.labeling().rootRule().children()
        for feature in layer.getFeatures():
            assert sum(bool(evaluated(rule.filterExpression(), layer, feature)) for rule in rules) == 1
            for rule in labels:
                if not evaluated(rule.filterExpression(), layer, feature):
                    continue
                settings = rule.settings()
                assert evaluated(settings.fieldName, layer, feature).strip("\u00a0")
                if settings.geometryGeneratorEnabled:
                    assert not evaluated(settings.geometryGenerator, layer, feature).isEmpty()
                order = settings.dataDefinedProperties().property(settings.Property.PredefinedPositionOrder)
                if order.expressionString():
                    assert evaluated(order.expressionString(), layer, feature)
    template = found["BARS"].mapTipTemplate()
    feature = next(found["BARS"].getFeatures())
    context = context_of(found["BARS"], feature)
    assert "Bar on the ground" in qgis_core.QgsExpression.replaceExpressionText(template, context)


def test_titles_of_the_columns(toolbox, tmp_path):
    """The factor of bars, band and strip is how much they are exaggerated; that of testcurvature is another."""
    run, _ = saved(toolbox, tmp_path)
    bars, band, strip = (run.titles(key) for key in ("BARS", "BAND", "STRIP"))
    assert bars["factor"] == band["factor"] == strip["factor"] == "Exaggeration"
    assert (bars["residual"], bars["bar_m"]) == ("Residual (m)", "Bar on the ground (m)")
    assert (band["tolerance"], strip["value"]) == ("Tolerance (m)", "Height in the strip (m)")


def test_the_cut_mark_is_in_the_legend_only_where_a_bar_is_cut(toolbox, tmp_path):
    _, whole = saved(toolbox, tmp_path)
    assert "Cut: the bar would be longer" not in legend(whole["BARS"])
    (tmp_path / "cut").mkdir()
    run, cut = saved(toolbox, tmp_path / "cut", LONGEST_BAR=50)
    assert run.results["CUT"] == 2 and "Cut: the bar would be longer" in legend(cut["BARS"])
    layer = cut["BARS"]
    text = layer.labeling().rootRule().children()[0].settings().fieldName
    told = {evaluated(text, layer, f).strip("\u00a0") for f in layer.getFeatures() if f["cut"]}
    assert told == {"+12.0 mm (cut)", "\u22126.0 mm (cut)"}


def test_layers_render(toolbox, tmp_path):
    """Something of each layer's own colours reaches a picture."""
    from qgis.PyQt.QtCore import QSize
    from qgis.PyQt.QtGui import QColor

    from tautline.algorithms.styles import palette

    _, found = saved(toolbox, tmp_path)
    for key, color in (("BARS", palette.HIGH.dark), ("STRIP", palette.DESIGN.light), ("BAND", palette.PAPER)):
        settings = qgis_core.QgsMapSettings()
        settings.setLayers([found[key]])
        settings.setDestinationCrs(qgis_core.QgsCoordinateReferenceSystem("EPSG:32632"))
        way = qgis_core.QgsCoordinateTransform(
            found[key].crs(), settings.destinationCrs(), qgis_core.QgsProject.instance()
        )
        settings.setExtent(way.transformBoundingBox(found[key].extent()))
        settings.setOutputSize(QSize(600, 600))
        settings.setBackgroundColor(settings.backgroundColor().fromRgb(90, 120, 90))
        job = qgis_core.QgsMapRendererSequentialJob(settings)
        job.start()
        job.waitForFinished()
        picture = job.renderedImage()
        seen = {picture.pixelColor(x, y).getRgb()[:3] for x in range(600) for y in range(600)}
        assert any(max(abs(a - b) for a, b in zip(one, QColor(color).getRgb())) <= 24 for one in seen), key


# --- bad inputs


def test_layers_that_cannot_be_drawn(toolbox):
    given = structure(toolbox)
    places = [tuple(f.geometry().asPoint()) for f in given["STATIONS"].getFeatures()]
    plain = toolbox.points([{"at": at, "height": 1.0} for at in places])
    assert "has no field 'residual'; run 'Design heights and residuals' first" in refusal(
        toolbox, {**given, "STATIONS": plain}
    )
    only = toolbox.points([{"at": at, "residual": 0.001} for at in places])
    assert draw(toolbox, {**given, "STATIONS": only}).results["COUNT"] == 11
    assert "has no field 'design_h'" in refusal(toolbox, {**given, "STATIONS": only}, "STRIP")
    empty = toolbox.points([{"at": at, "residual": None} for at in places], types={"residual": "double"})
    assert "has no station with a residual on an axis" in refusal(toolbox, {**given, "STATIONS": empty})
    assert "has points, but lines are expected here" in refusal(toolbox, {**given, "AXIS": given["STATIONS"]})


@pytest.mark.parametrize("key", ["EXAGGERATION", "STRIP_EXAGGERATION", "LONGEST_BAR", "DISTANCE"])
def test_sizes_must_be_above_zero(toolbox, key):
    assert f"{key} is 0, but must be above 0" in refusal(toolbox, structure(toolbox), "STRIP", **{key: 0})
    assert f"{key} is -3, but must be at least 0" in refusal(toolbox, structure(toolbox), "STRIP", **{key: -3})


def test_unknown_words(toolbox):
    for key, text in (("SIDE", "automatic, left, right"), ("VIEW", "level, straight"), ("HIGH_SIDE", "right, left")):
        assert f"{key} is 'up', but can only be {text}" in refusal(toolbox, structure(toolbox), "STRIP", **{key: "up"})


def test_chainages_of_another_unit_or_direction_are_noticed(toolbox):
    given = structure(toolbox, unit=FOOT)
    text = refusal(toolbox, given)
    assert "field 'chainage', row 1" in text and "check CHAINAGE_UNIT" in text
    assert draw(toolbox, given, HEIGHT_UNIT="foot").results["COUNT"] == 10
    turned = structure(toolbox)
    points = next(turned["AXIS"].getFeatures()).geometry().asPolyline()
    turned["AXIS"] = toolbox.lines([{"at": [tuple(p) for p in reversed(points)], "name": "line"}])
    assert "the direction of the axis" in refusal(toolbox, turned)


def test_negative_tolerance_of_an_axis(toolbox):
    given = structure(toolbox)
    line = next(given["AXIS"].getFeatures()).geometry().asWkt(12)
    given["AXIS"] = toolbox.lines([{"at": line, "name": "line", "design": "chord", "tolerance": -0.004}])
    assert "Axis 'line': the tolerance \u22120.004 is negative" in refusal(toolbox, given)


def test_residual_that_is_no_number(toolbox):
    given = structure(toolbox)
    rows = [
        {"at": tuple(f.geometry().asPoint()), "residual": "high" if k == 2 else "0.001"}
        for k, f in enumerate(given["STATIONS"].getFeatures())
    ]
    text = refusal(toolbox, {**given, "STATIONS": toolbox.points(rows)})
    assert "field 'residual', row 3: 'high' is not a number" in text


def test_cancelled_run_writes_nothing(toolbox, log, tmp_path):
    path = tmp_path / "bars.gpkg"
    text = toolbox.refusal("drawdeviations", log(cancel_at=3), OUTPUT=None, BARS=str(path), **structure(toolbox))
    assert "Cancelled" in text and not path.exists()
