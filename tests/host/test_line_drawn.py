"""drawdeviations of stations judged by line: lateral bars, the plan strip, their looks and bad inputs.

Places are laid out and measured back by geographiclib alone.
"""

import json
import math

import pytest
from geographiclib.geodesic import Geodesic

qgis_core = pytest.importorskip("qgis.core")
pyproj = pytest.importorskip("pyproj")

GEOD = Geodesic.WGS84
LATERAL = [0.0, 0.004, -0.003, 0.002, -0.006, 0.012, None, 0.001, -0.004, 0.003, 0.0]
PLACES = [
    ("EPSG:4326", (50.0, 8.0, 40.0)),
    ("EPSG:32631", (50.0, 33.0, 130.0)),
    ("EPSG:4326", (89.99, 10.0, 80.0)),
    ("EPSG:4326", (-10.0, 179.995, 90.0)),
]
KEYS = ("BARS", "BAND", "STRIP", "LINE_BARS", "PLAN")


def structure(toolbox, crs="EPSG:4326", start=(50.0, 8.0, 40.0), lateral=LATERAL, unit=1.0, axis=None, **more):
    """Stations every 200 m of a geodesic as designheights leaves them with a line, and the axis."""
    lat, lon, azimuth = start
    to_map = pyproj.Transformer.from_crs("EPSG:4326", crs, always_xy=True).transform
    rows, ends = [], []
    for k, value in enumerate(lateral):
        at = GEOD.Direct(lat, lon, azimuth, 200.0 * k)
        ends.append(to_map(at["lon2"], at["lat2"]))
        rows.append(
            {
                "at": ends[-1],
                "axis": "line",
                "chainage": 200.0 * k / unit,
                "residual": 0.002 * (-1) ** k / unit,
                "design_h": 100.0 / unit,
                "flat_h": 100.0 / unit,
                "lateral": None if value is None else value / unit,
                "side": "no tolerance",
                **more,
            }
        )
    lines = toolbox.lines([{"at": [ends[0], ends[-1]], "name": "line", **(axis or {})}], crs)
    return {"STATIONS": toolbox.points(rows, crs, types={"lateral": "double"}), "AXIS": lines}


def draw(toolbox, given, *keys, **more):
    return toolbox.run("drawdeviations", OUTPUT=None, **given, **dict.fromkeys(("BARS", *keys), "memory:"), **more)


def refusal(toolbox, given, *keys, **more):
    outputs = dict.fromkeys(("BARS", *keys), "memory:")
    return toolbox.refusal("drawdeviations", OUTPUT=None, **given, **outputs, **more)


def drawn(run, key):
    """(attributes, parts as latitude and longitude) of each feature."""
    layer, found = run.layer(key), []
    back = pyproj.Transformer.from_crs("EPSG:4326", layer.crs().authid(), always_xy=True)
    for feature in layer.getFeatures():
        shape = feature.geometry()
        parts = shape.asMultiPolyline() if shape.isMultipart() else [shape.asPolyline()]
        placed = [[back.transform(p.x(), p.y(), direction="INVERSE")[::-1] for p in part] for part in parts]
        found.append((dict(zip(layer.fields().names(), feature.attributes())), placed))
    return found


def along_and_across(start, place):
    """Distance along a geodesic and offset from it, positive right."""
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
@pytest.mark.parametrize("high_side", ("left", "right"))
def test_lateral_bars_point_to_their_side_in_metres_on_the_ground(toolbox, crs, start, high_side):
    """Whatever side heights are drawn to: right is right."""
    given = structure(toolbox, crs, start)
    run = draw(toolbox, given, "LINE_BARS", LINE_EXAGGERATION=10_000, HIGH_SIDE=high_side)
    bars = drawn(run, "LINE_BARS")
    want = {200.0 * k: value for k, value in enumerate(LATERAL) if value is not None}
    assert len(bars) == len(want) == 10 and run.results["LINE_FACTOR"] == 10_000
    for row, ((foot, tip),) in bars:
        at, off = along_and_across(start, foot)
        assert abs(off) < 1e-3 and at == pytest.approx(row["chainage"], abs=1e-3)
        assert row["lateral"] == want[round(at)] and row["side"] == "no tolerance"
        assert along_and_across(start, tip)[1] == pytest.approx(10_000 * want[round(at)], rel=1e-6, abs=2e-3)


def test_sides_by_the_tolerance_and_what_is_said(toolbox):
    # 12 mm is the greatest of ten, 6 mm the next: 2000 m / 20 / 0.006 m = 16,667.
    run = draw(toolbox, structure(toolbox), "LINE_BARS", LINE_TOLERANCE=0.0035)
    assert run.column("side", "LINE_BARS").count("right") == 2 and run.column("side", "LINE_BARS").count("left") == 2
    assert "Lateral bars are dashed and drawn \u00d7 10,000: 200 m stand for 20.0 mm." in run.said
    assert "stands for 12.0 mm right at 1+000 of axis 'line'; it is 120.0 m long." in run.said and not run.warnings


def test_where_the_tolerance_comes_from(toolbox):
    """The axis layer's before the form's before the record's; of the line, not of heights."""
    record = {"entry": "tautline:designheights", "height_unit": "metre", "axes": {"line": {"line_tolerance": 0.0035}}}

    def sides(axis=None, recorded=True, **more):
        given = structure(toolbox, axis=axis)
        if recorded:
            given["STATIONS"].setCustomProperty("tautline/record", json.dumps(record))
        return draw(toolbox, given, "LINE_BARS", TOLERANCE=0.0005, **more).column("side", "LINE_BARS")

    assert sides(recorded=False).count("no tolerance") == 10
    assert sides().count("within") == 6
    assert sides(LINE_TOLERANCE=0.0055).count("within") == 8
    assert sides(axis={"design": "chord", "line_tol": 0.02}, LINE_TOLERANCE=0.0055).count("within") == 10
    given = structure(toolbox, axis={"design": "chord", "line_tol": -1.0})
    assert "the tolerance \u22121 is negative" in refusal(toolbox, given, "LINE_BARS")


def test_a_bar_that_is_cut_is_told(toolbox):
    run = draw(toolbox, structure(toolbox), "LINE_BARS", LINE_EXAGGERATION=10_000, LONGEST_BAR=100)
    assert run.column("cut", "LINE_BARS").count(1) == 1
    assert (
        "1 bar is cut at 100 m, with a mark: 12.0 mm right at 1+000 of axis 'line'. LINE_EXAGGERATION 5000" in run.said
    )


# --- the plan


def offsets(run, part, start=(50.0, 8.0, 40.0)):
    ((_, parts),) = [item for item in drawn(run, "PLAN") if item[0]["part"] == part]
    return [along_and_across(start, place) for places in parts for place in places]


@pytest.mark.parametrize("side, sign", (("right", 1), ("left", -1)))
def test_the_plan_is_true_to_scale_along_and_right_is_right(toolbox, side, sign):
    run = draw(toolbox, structure(toolbox), "PLAN", SIDE=side, PLAN_EXAGGERATION=5000, LINE_TOLERANCE=0.005)
    line = offsets(run, "line")[0][1]
    assert line * sign > 0
    # An end of the axis may lie between two points that are one.
    built = sorted({(round(at, 2), round(off, 2)) for at, off in offsets(run, "as-built")})
    want = [(200.0 * k, value) for k, value in enumerate(LATERAL) if value is not None]
    assert [at for at, _ in built] == pytest.approx([at for at, _ in want], abs=0.01)
    assert [off for _, off in built] == pytest.approx([line + 5000 * value for _, value in want], abs=0.02)
    limits = sorted({round(off, 1) for _, off in offsets(run, "tolerance")})
    assert limits == pytest.approx([line - 25.0, line + 25.0], abs=0.1)
    rows = run.rows("PLAN")
    (frame,) = [row for row in rows if row["part"] == "frame"]
    assert frame["label"] == "line: plan, across the line \u00d7 5,000, tolerance \u00b15.0 mm"
    grid = [row["label"] for row in rows if row["part"] in ("grid", "datum")]
    assert grid[0].endswith("mm left") and grid[-1].endswith("mm right") and "0 mm" in grid
    assert run.results["PLAN_FACTOR"] == 5000 and "true to scale along the axis and \u00d7 5,000 across it" in run.said


def test_the_plan_stands_beyond_the_profile_strip(toolbox):
    run = draw(toolbox, structure(toolbox), "STRIP", "PLAN", SIDE="left")
    edges = {}
    for key in ("STRIP", "PLAN"):
        ((_, (ring,)),) = [item for item in drawn(run, key) if item[0]["part"] == "frame"]
        off = [along_and_across((50.0, 8.0, 40.0), place)[1] for place in ring]
        edges[key] = (min(off), max(off))
    assert edges["PLAN"][1] < edges["STRIP"][0] < edges["STRIP"][1] < 0.0


def test_plans_of_many_axes_stand_away_from_the_others(toolbox):
    """42 walls side by side: those in the west have their plan on the left, those in the east on the right; the log
    tells of 40."""
    rows, lines, starts = [], [], {f"wall {k}": (50.0, 8.0 + 0.02 * k, 0.0) for k in range(42)}
    for name, (lat, lon, azimuth) in starts.items():
        places = [GEOD.Direct(lat, lon, azimuth, along) for along in (0.0, 200.0, 400.0)]
        ends = [(place["lon2"], place["lat2"]) for place in places]
        lines.append({"at": [ends[0], ends[-1]], "name": name})
        rows += [
            {"at": at, "axis": name, "chainage": 200.0 * k, "residual": 0.0, "lateral": 0.002 * k, "side": "within"}
            for k, at in enumerate(ends)
        ]
    given = {"STATIONS": toolbox.points(rows, types={"lateral": "double"}), "AXIS": toolbox.lines(lines)}
    run = draw(toolbox, given, "PLAN", PLAN_EXAGGERATION=1000)
    off = {}
    for row, parts in drawn(run, "PLAN"):
        if row["part"] in ("line", "as-built"):
            off[row["axis"], row["part"]] = [along_and_across(starts[row["axis"]], place)[1] for place in parts[0]]
    assert len(off) == 2 * 42
    for k, name in enumerate(starts):
        line, built = off[name, "line"], off[name, "as-built"]
        assert max(line) < 0.0 if k < 21 else min(line) > 0.0
        assert max(line) - min(line) < 1e-3 and max(built) == pytest.approx(line[0] + 1000 * 0.004, abs=1e-2)
    assert run.said.count(": plan strip on the ") == 40 and "2 axes more have a strip of the same scale." in run.said


def test_a_departure_far_beyond_the_others_is_cut_at_the_edge(toolbox):
    run = draw(toolbox, structure(toolbox, lateral=[0.001, -0.001, 0.002, -0.002] * 5 + [0.5]), "PLAN")
    assert "stations far from the line leave the plan strip" in run.said
    (built,) = [row for row in run.rows("PLAN") if row["part"] == "as-built"]
    assert built["cut"] == 1


def test_feet(toolbox):
    given = structure(toolbox, unit=0.3048)
    units = {"HEIGHT_UNIT": "foot", "CHAINAGE_UNIT": "foot"}
    run = draw(toolbox, given, "LINE_BARS", "PLAN", LINE_EXAGGERATION=10_000, LINE_TOLERANCE=0.02, **units)
    tips = {
        row["chainage"]: along_and_across((50.0, 8.0, 40.0), tip)[1] for row, ((_, tip),) in drawn(run, "LINE_BARS")
    }
    assert max(tips.values()) == pytest.approx(120.0, abs=0.01)
    assert "0.039 ft right" in run.said and any(
        "tolerance \u00b10.020 ft" in (r["label"] or "") for r in run.rows("PLAN")
    )


# --- looks


def saved(toolbox, tmp_path):
    """All five layers as tables of one GeoPackage, each with the style saved in it."""
    path = tmp_path / "drawn.gpkg"
    places = {key: f"ogr:dbname='{path}' table=\"{key.lower()}\" (geom)" for key in KEYS}
    toolbox.run("drawdeviations", OUTPUT=None, **structure(toolbox), **places, TOLERANCE=0.005, LINE_TOLERANCE=0.0035)
    found = {}
    for key in KEYS:
        found[key] = qgis_core.QgsVectorLayer(f"{path}|layername={key.lower()}", key, "ogr")
        assert found[key].loadDefaultStyle()[1], key
    return found


def strokes(layer):
    """(colour, dashed, offset property) of the lines of all rules."""
    for rule in layer.renderer().rootRule().children()[0].children():
        for one in rule.symbol().symbolLayers():
            if one.layerType() == "SimpleLine":
                beside = one.dataDefinedProperties().property(qgis_core.QgsSymbolLayer.Property.PropertyOffset)
                yield rule.label(), one.color().name(), one.useCustomDashPattern(), beside.expressionString()


def test_nobody_takes_a_lateral_bar_for_a_height(toolbox, tmp_path):
    """Own colour, dashed, beside the bar of the height; bars of heights are solid and stand at their station."""
    from tautline.algorithms.styles import palette

    found = saved(toolbox, tmp_path)
    lateral, heights = list(strokes(found["LINE_BARS"])), list(strokes(found["BARS"]))
    own = {palette.LINE.dark}
    assert {color for _, color, dashed, _ in lateral if dashed} == own and all(beside for *_, beside in lateral)
    assert not any(dashed or beside for _, _, dashed, beside in heights)
    assert not own & {color for _, color, *_ in heights}
    labels = {label for label, *_ in lateral}
    assert labels == {
        "Left of the line, beyond its tolerance",
        "Right of the line, beyond its tolerance",
        "Within the tolerance of the line",
    }


def test_legends_and_titles(toolbox, tmp_path):
    found = saved(toolbox, tmp_path)

    def words(key):
        return [item.label() for item in found[key].renderer().legendSymbolItems()]

    assert words("LINE_BARS")[0] == "Lateral departures \u00d7 10,000: 100 m on the ground stand for 10.0 mm"
    assert words("PLAN")[0].startswith("Plan, true to scale along, across \u00d7 ")
    assert "Tolerance of the line" in words("PLAN") and any(
        word.startswith("Scale bar across: ") for word in words("PLAN")
    )
    assert any(word.startswith("Scale bar of the heights: ") for word in words("STRIP"))
    titles = {key: found[key].listStylesInDatabase()[2][0] for key in ("LINE_BARS", "PLAN")}
    assert titles["LINE_BARS"] == "Lateral bars \u00d7 10,000" and titles["PLAN"].startswith("Plan strip \u00d7 ")
    fields = found["PLAN"].fields()
    assert found["PLAN"].attributeAlias(fields.indexOf("value")) == "Lateral departure (m)"
    assert found["LINE_BARS"].attributeAlias(found["LINE_BARS"].fields().indexOf("lateral")) == "Lateral departure (m)"


def test_every_expression_works(toolbox, tmp_path):
    found = saved(toolbox, tmp_path)
    for key in ("LINE_BARS", "PLAN"):
        layer = found[key]
        labels = [rule.settings().fieldName for rule in layer.labeling().rootRule().children()]
        filters = [rule.filterExpression() for rule in layer.renderer().rootRule().children()[0].children()]
        for feature in layer.getFeatures():
            scopes = qgis_core.QgsExpressionContextUtils.globalProjectLayerScopes(layer)
            context = qgis_core.QgsExpressionContext(scopes)
            context.setFeature(feature)
            for text in (*labels, *filters):
                expression = qgis_core.QgsExpression(text)
                value = expression.evaluate(context)
                assert not expression.hasParserError() and not expression.hasEvalError(), text
            if key == "LINE_BARS" and feature["lateral"] == -0.006:
                value = qgis_core.QgsExpression(labels[0]).evaluate(context)
                assert value.strip("\u00a0") == "6.0 mm left"
                tip = qgis_core.QgsExpression.replaceExpressionText(layer.mapTipTemplate(), context)
                assert "Lateral departure 6.0 mm left" in tip


# --- bad inputs, and heights alone


def without(layer, *names):
    provider = layer.dataProvider()
    assert provider.deleteAttributes([layer.fields().indexOf(name) for name in names])
    layer.updateFields()
    return layer


@pytest.mark.parametrize("key", ("LINE_BARS", "PLAN"))
@pytest.mark.parametrize("gone", (("lateral", "side"), ("side",), ()), ids=("none", "no side", "no value"))
def test_stations_without_a_line_are_refused(toolbox, key, gone):
    """A field 'lateral' alone may be anybody's; one without any value tells nothing."""
    given = structure(toolbox, lateral=LATERAL if gone else [None] * 11)
    if gone:
        without(given["STATIONS"], *gone)
    text = refusal(toolbox, given, key)
    assert text.startswith("Layer 'stations' has no lateral departures (fields 'lateral' and 'side')") and key in text
    assert "with LINE first" in text


@pytest.mark.parametrize("key", ("LINE_EXAGGERATION", "PLAN_EXAGGERATION"))
def test_sizes_of_nothing_are_refused(toolbox, key):
    text = refusal(toolbox, structure(toolbox), "LINE_BARS", "PLAN", **{key: 0})
    assert text == f"{key} is 0, but must be above 0; leave it empty for the automatic value."


def test_heights_alone_hear_nothing_of_a_line(toolbox):
    """The same layers, log and numbers as of stations whose fields tell nothing of a line."""
    plain = structure(toolbox)
    without(plain["STATIONS"], "lateral", "side")
    runs = [draw(toolbox, given, "BAND", "STRIP", TOLERANCE=0.005) for given in (plain, structure(toolbox))]
    for key in ("BARS", "BAND", "STRIP"):
        assert runs[0].rows(key) == runs[1].rows(key) and runs[0].rows(key)
    # All but the host's own line, which names the layers it has made.
    said = [[line for line in run.said.splitlines() if "Results: " not in line] for run in runs]
    assert said[0] == said[1] and len(said[0]) > 4 and "lateral" not in "".join(said[0]).lower()
    assert (
        set(runs[0].results)
        == set(runs[1].results)
        == {"BARS", "BAND", "STRIP", "COUNT", "CUT", "FACTOR", "STRIP_FACTOR"}
    )
