"""fitreference with LINE through the registry: the line in plan beside the heights, its tests, fields, reference and
bad inputs."""

import json

import numpy as np
import pytest

pyproj = pytest.importorskip("pyproj")
qgis_core = pytest.importorskip("qgis.core")

WGS, FOOT, RADIUS = pyproj.Geod(ellps="WGS84"), 0.3048, 6_380_000.0
LINE_FIELDS = ["lateral", "lat_w", "lat_redund", "lat_blund", "lat_flag"]
SIGMA = 0.003
# Errors of 31 stations, 100 m apart: upwards and sideways, metres.
UP, SIDE = np.random.default_rng(5).normal(0.0, SIGMA, (2, 31))


def straight_heights(number=31, spacing=100.0, height=100.0):
    """Ellipsoidal heights of a straight line level in its middle: s^2 / 2R above it, R by Euler at 50 degrees north in
    azimuth 40 to a thousandth, which leaves 0.2 mm at 1.5 km."""
    s = spacing * (np.arange(number) - (number - 1) / 2)
    return height + s**2 / (2 * 6_379_300.0)


def stations(up=UP, side=SIDE, start=(50.0, 8.0, 40.0), name="wall", spacing=100.0, unit=1.0, **columns):
    """Rows of stations beside the geodesic from ``start``, and the ends of it; ``columns``: values, or lists."""
    heights, (lat, lon, azimuth), rows, on_axis = straight_heights(len(up), spacing) + up, start, [], []
    for k, aside in enumerate(np.asarray(side) / (1 + 100.0 / RADIUS)):
        x, y, back = WGS.fwd(lon, lat, azimuth, spacing * k) if k else (lon, lat, azimuth + 180.0)
        on_axis.append((x, y))
        more = {key: value[k] if isinstance(value, list) else value for key, value in columns.items()}
        place = WGS.fwd(x, y, back - 90.0, aside)[:2]
        rows.append({"at": place, "name": f"{name}{k}", "height": float(heights[k]) / unit, **more})
    return rows, [on_axis[0], on_axis[-1]]


def site(toolbox, *given, **more):
    rows, ends = stations(*given, **more)
    return {"STATIONS": toolbox.points(rows), "AXIS": toolbox.lines([{"at": ends, "name": more.get("name", "wall")}])}


def fit(toolbox, layers, **more):
    options = {"SIGMA": SIGMA, "SIGMA_LINE": SIGMA, "UNDULATION": "ellipsoidal", "REFERENCE": "memory:"}
    options.update(LINE="fitted", **more)
    return toolbox.run("fitreference", **options, **layers)


def less_line(values, weight=None):
    x = np.arange(len(values)) - (len(values) - 1) / 2
    return values - np.polyval(np.polyfit(x, values, 1, w=weight), x)


# Both components ----------------------------------------------------------------------------------------------------


def test_line_beside_the_heights(toolbox):
    layers = site(toolbox)
    run = fit(toolbox, layers)
    heights = toolbox.run("fitreference", SIGMA=SIGMA, UNDULATION="ellipsoidal", REFERENCE="memory:", **layers)
    rows, before = run.rows(), heights.rows()
    # What is said of the heights is what it is without a line.
    assert [{k: v for k, v in row.items() if k not in LINE_FIELDS} for row in rows] == before
    assert list(rows[0])[-5:] == LINE_FIELDS and list(rows[0])[: len(before[0])] == list(before[0])
    lateral = np.array(run.column("lateral"))
    assert lateral == pytest.approx(less_line(SIDE), abs=2e-8)
    # Equal weights: h = 1/n + x^2 / S, r = 1 - h, w = v / (sigma sqrt r), 4.13 sigma / sqrt r.
    x = np.arange(31) - 15.0
    r = 1.0 - 1.0 / 31 - x**2 / np.sum(x**2)
    assert run.column("lat_redund") == pytest.approx(r.tolist(), abs=1e-7)
    assert run.column("lat_w") == pytest.approx((lateral / SIGMA / np.sqrt(r)).tolist(), rel=1e-6)
    assert run.column("lat_blund") == pytest.approx((4.1321 * SIGMA / np.sqrt(r)).tolist(), rel=1e-4)
    assert set(run.column("lat_flag")) == {"kept"}
    results = run.results
    assert (results["LINE_COUNT"], results["LINE_SUSPECTED"]) == (31, 0)
    assert results["LINE_RMS"] == pytest.approx(np.sqrt(np.mean(lateral**2)), rel=1e-12)


def test_the_reference_says_where_the_line_runs(toolbox):
    layers = site(toolbox)
    run, heights = fit(toolbox, layers), toolbox.run("fitreference", SIGMA=SIGMA, REFERENCE="memory:", **layers)
    row, before = run.rows("REFERENCE")[0], heights.rows("REFERENCE")[0]
    assert [name for name in row if name not in before] == [
        *("lin_lat", "lin_lon", "lin_az", "lin_sd", "lin_sd_az", "lin_number", "lin_susp", "lin_aside", "lin_var"),
        "lin_test",
    ]
    assert list(row)[-1] == "record"
    x = 100.0 * (np.arange(31) - 15.0)
    lon, lat, back = WGS.fwd(8.0, 50.0, 40.0, 1500.0)
    slope, shift = np.polyfit(x, SIDE, 1)
    assert WGS.inv(lon, lat, row["lin_lon"], row["lin_lat"])[2] == pytest.approx(abs(shift), abs=1e-6)
    # The vertical plane is that of stations 100 m up: an azimuth to a target at the height h is e^2 h cos^2 phi sin 2A
    # / 2M less than to its foot (skew of the normals; Bomford, Geodesy, 1980, from memory).
    skew = 0.00669438 * 100.0 * np.cos(np.radians(lat)) ** 2 * np.sin(np.radians(2 * 40.0)) / (2 * 6_372_700.0)
    assert row["lin_az"] == pytest.approx((back + 180.0) % 360.0 + np.degrees(slope - skew), abs=2e-8)
    assert row["lin_sd"] == pytest.approx(SIGMA / np.sqrt(31), rel=1e-9)
    assert row["lin_sd_az"] == pytest.approx(np.degrees(SIGMA / np.sqrt(np.sum(x**2))), rel=1e-4)
    assert (row["lin_number"], row["lin_susp"], row["lin_aside"], row["lin_test"]) == (31, 0, 0, "passed")
    assert row["lin_var"] == pytest.approx(np.sum(less_line(SIDE) ** 2) / SIGMA**2 / 29, rel=1e-6)
    # The zones and departures of straightness are the same with and without it, where nothing is set aside.
    for name in ("str_lat", "rng_lat", "str_comb", "max_comb", "zon_lat", "zon_cyl", "str_vert", "zon_vert"):
        assert row[name] == pytest.approx(before[name], abs=1e-8), name
    assert row["str_lat"] == pytest.approx(run.results["LINE_RMS"], rel=1e-12)
    assert "Line in plan 'wall': azimuth 40.0" in run.said and "Line in plan 'wall': 31 stations, RMS" in run.said
    typical = 4.1321 * SIGMA / np.sqrt(1 - 1 / 31 - 8.0**2 / np.sum((x / 100.0) ** 2))
    (told,) = [text for text in run.info if text.startswith("Line in plan 'wall': no blunder is suspected")]
    assert told.endswith(f"at a typical station is {1e3 * typical:.1f} mm.")


def test_a_knocked_tripod_shows_sideways(toolbox):
    """The height of that station stays, and the zones sideways are those of the others."""
    side = SIDE.copy()
    side[11] += 0.06
    run = fit(toolbox, site(toolbox, UP, side))
    assert [k for k, flag in enumerate(run.column("lat_flag")) if flag != "kept"] == [11]
    assert set(run.column("flag")) == {"kept"} and run.column("lat_flag")[11] == "suspected blunder"
    assert (run.results["SUSPECTED"], run.results["LINE_SUSPECTED"], run.results["LINE_COUNT"]) == (0, 1, 30)
    (told,) = [text for text in run.warnings if "suspected blunder at" in text]
    assert told.startswith("Line in plan 'wall': suspected blunder at 1+100.0") and " mm right, w = +" in told
    assert told.endswith(", set aside.")
    keep, x = np.arange(31) != 11, np.arange(31.0)
    expected = side - np.polyval(np.polyfit(x[keep], side[keep], 1), x)
    assert run.column("lateral") == pytest.approx(expected.tolist(), abs=2e-8)
    row = run.rows("REFERENCE")[0]
    assert (row["number"], row["removed"], row["lin_number"], row["lin_aside"]) == (31, 0, 30, 1)
    assert row["rng_lat"] == pytest.approx(np.ptp(expected[keep]), abs=5e-8)
    assert row["zon_lat"] <= row["rng_lat"] and row["zon_cyl"] <= 2 * row["max_comb"] < 0.05
    only_flagged = fit(toolbox, site(toolbox, UP, side), REMOVE_BLUNDERS=False)
    assert only_flagged.column("lat_flag")[11] == "suspected blunder" and only_flagged.results["LINE_COUNT"] == 31


def test_either_part_by_itself(toolbox):
    """A misread staff is none of the line's, a knock none of the heights'."""
    up, side = UP.copy(), SIDE.copy()
    up[4] -= 0.05
    side[20] -= 0.05
    run = fit(toolbox, site(toolbox, up, side))
    flags = [(k, name) for name in ("flag", "lat_flag") for k, v in enumerate(run.column(name)) if v != "kept"]
    assert flags == [(4, "flag"), (20, "lat_flag")]
    row = run.rows("REFERENCE")[0]
    assert (row["removed"], row["lin_aside"]) == (1, 1)
    told = [text for text in run.warnings if "suspected blunder at" in text]
    assert len(told) == 2 and told[0].startswith("Line 'wall'") and " mm left, w = " in told[1]


def test_a_stretch_moved_sideways_is_told_with_its_side(toolbox):
    side = SIDE.copy()
    side[10:13] -= 0.04
    run = fit(toolbox, site(toolbox, UP, side))
    assert any(
        "Line in plan 'wall': 3 neighbours from 1+000.0" in text and "of 'wall' lie left, by " in text
        for text in run.warnings
    )
    assert not any("lie high" in text or "lie low" in text for text in run.warnings)


def test_a_bend_in_plan_is_another_shape(toolbox):
    run = fit(toolbox, site(toolbox, UP, SIDE + 0.3 * np.linspace(-1.0, 1.0, 31) ** 2))
    assert any(
        "these positions do not have the shape of one straight line within their standard deviations" in text
        for text in run.warnings
    )
    assert run.rows("REFERENCE")[0]["lin_test"] == "failed" and run.rows("REFERENCE")[0]["lin_aside"] == 0


def test_accuracy_not_stated_is_estimated(toolbox):
    run = fit(toolbox, site(toolbox), SIGMA_LINE=None)
    row, left = run.rows("REFERENCE")[0], less_line(SIDE)
    estimated = np.sqrt(np.sum(left**2) / 29)
    assert row["lin_test"] == "none" and row["lin_sd"] == pytest.approx(estimated / np.sqrt(31), rel=1e-6)
    assert f"standard deviation of one lateral position estimated as {1e3 * estimated:.1f} mm" in run.said
    assert "Line in plan: standard deviation not stated" in run.said


# Accuracies ---------------------------------------------------------------------------------------------------------


def test_deviations_of_points_weigh_the_line(toolbox, tmp_path):
    """A chain: points with standard deviations of east and north, measured, then fitted."""
    sigma = np.where(np.arange(31) % 3 == 0, 0.012, 0.002)
    rows, ends = stations(sd_e=sigma.tolist(), sd_n=sigma.tolist())
    axis, out = toolbox.lines([{"at": ends, "name": "wall"}]), str(tmp_path / "measured.gpkg")
    toolbox.run("measurestations", STATIONS=toolbox.points(rows), AXIS=axis, OUTPUT=out)
    run = fit(toolbox, {"STATIONS": out, "AXIS": axis}, SIGMA_LINE=None)
    assert "Line in plan: standard deviations from the field 'sd_line'" in run.said
    assert run.column("lateral") == pytest.approx(less_line(SIDE, 1.0 / sigma).tolist(), abs=2e-8)
    left = less_line(SIDE, 1.0 / sigma) / sigma
    assert run.rows("REFERENCE")[0]["lin_var"] == pytest.approx(np.sum(left**2) / 29, rel=1e-5)
    # One value in the form goes before the field, unless the field is named.
    typed = fit(toolbox, {"STATIONS": out, "AXIS": axis}, SIGMA_LINE=0.002)
    assert typed.column("lateral") == pytest.approx(less_line(SIDE).tolist(), abs=2e-8)
    named = fit(toolbox, {"STATIONS": out, "AXIS": axis}, SIGMA_LINE_FIELD="sd_n")
    assert named.column("lateral") == pytest.approx(run.column("lateral"), abs=1e-12)


def test_in_feet(toolbox):
    """Lateral departures, their deviations and blunders are in the unit of heights."""
    metric = fit(toolbox, site(toolbox))
    options = {"SIGMA": SIGMA / FOOT, "SIGMA_LINE": SIGMA / FOOT, "HEIGHT_UNIT": "foot"}
    feet = fit(toolbox, site(toolbox, unit=FOOT), **options)
    for name, scale in (("lateral", FOOT), ("lat_blund", FOOT), ("lat_w", 1.0), ("lat_redund", 1.0)):
        found = [value * scale for value in feet.column(name)]
        assert found == pytest.approx(metric.column(name), rel=1e-6, abs=1e-9), name
    row, before = feet.rows("REFERENCE")[0], metric.rows("REFERENCE")[0]
    assert row["lin_sd"] * FOOT == pytest.approx(before["lin_sd"], rel=1e-9) and row["lin_az"] == before["lin_az"]
    assert " ft; global test" in feet.said


def test_a_chain_in_feet(toolbox, tmp_path):
    """Points with heights and deviations in feet, measured, fitted: the record carries the unit."""
    sigma = np.where(np.arange(31) % 3 == 0, 0.012, 0.002)
    deviations = (sigma / FOOT).tolist()
    rows, ends = stations(unit=FOOT, sd_e=deviations, sd_n=deviations)
    axis, out = toolbox.lines([{"at": ends, "name": "wall"}]), str(tmp_path / "measured.gpkg")
    toolbox.run("measurestations", STATIONS=toolbox.points(rows), AXIS=axis, OUTPUT=out, HEIGHT_UNIT="foot")
    run = fit(toolbox, {"STATIONS": out, "AXIS": axis}, SIGMA=SIGMA / FOOT, SIGMA_LINE=None)
    lateral = [value * FOOT for value in run.column("lateral")]
    assert lateral == pytest.approx(less_line(SIDE, 1.0 / sigma).tolist(), abs=2e-8)
    left = less_line(SIDE, 1.0 / sigma) / sigma
    assert run.rows("REFERENCE")[0]["lin_var"] == pytest.approx(np.sum(left**2) / 29, rel=1e-5)


def test_over_the_geoid(toolbox):
    """Undulations of a field lift the stations; a line in plan does not care."""
    rows, ends = stations(n=[40.0 + 0.002 * k for k in range(31)])
    for row in rows:
        row["height"] -= row["n"]
    axis = toolbox.lines([{"at": ends, "name": "wall"}])
    over = fit(toolbox, {"STATIONS": toolbox.points(rows), "AXIS": axis}, UNDULATION="field", UNDULATION_FIELD="n")
    plain = fit(toolbox, site(toolbox))
    for name in ("lateral", "lat_w"):
        assert over.column(name) == pytest.approx(plain.column(name), abs=1e-8), name
    # Not knowing N moves them by what 40 m of height do a few millimetres beside the line: nothing.
    unknown = fit(toolbox, {"STATIONS": toolbox.points(rows), "AXIS": axis}, UNDULATION="unknown")
    assert unknown.column("lateral") == pytest.approx(plain.column("lateral"), abs=1e-6)


# Axes, legs, edits --------------------------------------------------------------------------------------------------


def test_many_axes_are_as_each_by_itself(toolbox):
    dice, rows, axes, alone = np.random.default_rng(11), [], [], []
    for k in range(12):
        up, side = dice.normal(0.0, SIGMA, (2, 9))
        side[k % 9] += 0.1 * (k % 2)
        more, ends = stations(up, side, start=(40.0 + k, 8.0, 30.0 * k), name=f"axis {k} ")
        rows += more
        axes.append({"at": ends, "name": f"axis {k}"})
        alone.append(fit(toolbox, {"STATIONS": toolbox.points(more), "AXIS": toolbox.lines(axes[-1:])}).by("name"))
    order = dice.permutation(len(rows)).tolist()
    run = fit(toolbox, {"STATIONS": toolbox.points([rows[k] for k in order]), "AXIS": toolbox.lines(axes)})
    for row in run.rows():
        own = alone[int(row["name"].split()[1])][row["name"]]
        assert row["lat_flag"] == own["lat_flag"] and row["lateral"] == pytest.approx(own["lateral"], abs=2e-9)
        assert row["lat_w"] == pytest.approx(own["lat_w"], rel=1e-5)
    assert len(run.rows("REFERENCE")) == 12 and run.results["LINE_SUSPECTED"] == 6


def test_legs_of_a_bent_axis_have_lines_of_their_own(toolbox):
    """The corner belongs to both and is told by the first."""
    first, ends = stations(UP[:11], np.zeros(11))
    corner = ends[1]
    azimuth = WGS.inv(*ends[0], *corner)[1] + 180.0 + 20.0
    second, others = stations(UP[10:21], np.zeros(11), start=(corner[1], corner[0], azimuth), name="second")
    rows = first + second[1:]
    rows[14]["at"] = WGS.fwd(*rows[14]["at"], azimuth + 90.0, 0.08)[:2]
    axis = toolbox.lines([{"at": [*ends, others[1]], "name": "wall"}])
    run = fit(toolbox, {"STATIONS": toolbox.points(rows), "AXIS": axis})
    lateral = run.column("lateral")
    assert run.column("name", "REFERENCE") == ["wall, leg 1", "wall, leg 2"]
    assert [k for k, flag in enumerate(run.column("lat_flag")) if flag != "kept"] == [14]
    assert [abs(v) for k, v in enumerate(lateral) if k != 14] == pytest.approx([0.0] * 20, abs=1e-6)
    assert lateral[14] == pytest.approx(0.08, abs=2e-6)
    azimuths = run.column("lin_az", "REFERENCE")
    assert azimuths[1] - azimuths[0] == pytest.approx(20.0, abs=0.02)


def test_stations_without_a_height_and_off_the_axis_are_not_judged(toolbox):
    rows, ends = stations()
    rows[3]["height"] = None
    rows[7]["at"] = (8.5, 50.5)
    axis = toolbox.lines([{"at": ends, "name": "wall"}])
    run = fit(toolbox, {"STATIONS": toolbox.points(rows), "AXIS": axis}, MAX_DISTANCE=100.0)
    assert [run.column("lat_flag")[k] for k in (3, 7)] == ["no height", "off axis"]
    assert [run.column("lateral")[k] for k in (3, 7)] == [None, None] and run.results["LINE_COUNT"] == 29


@pytest.mark.parametrize("sigma", [SIGMA, None])
def test_two_stations_make_a_line_that_nothing_tests(toolbox, sigma):
    run = fit(toolbox, site(toolbox, UP[:2], SIDE[:2]), SIGMA=sigma, SIGMA_LINE=sigma)
    assert run.column("lateral") == pytest.approx([0.0, 0.0], abs=1e-8) and run.column("lat_w") == [None, None]
    row = run.rows("REFERENCE")[0]
    assert row["lin_test"] == "none" and (row["lin_sd"] is None) == (sigma is None)
    assert "Line in plan 'wall': too few redundant stations to test for blunders." in run.said


def test_after_an_edit(toolbox, tmp_path):
    """A place that is corrected in an open edit session counts; the record notices that its input has changed."""
    from tautline.algorithms.entry.run_record import RunRecord
    from tautline.algorithms.entry.stale_inputs import stale_inputs

    side = SIDE.copy()
    side[11] += 0.06
    layers = site(toolbox, UP, side)
    layers["STATIONS"] = toolbox.saved(layers["STATIONS"], tmp_path / "stations.gpkg")
    layers["AXIS"] = toolbox.saved(layers["AXIS"], tmp_path / "axis.gpkg")
    before = fit(toolbox, layers, OUTPUT=str(tmp_path / "fit.gpkg"), REFERENCE=str(tmp_path / "reference.gpkg"))
    assert before.column("lat_flag")[11] == "suspected blunder"
    record = RunRecord.read(json.dumps(json.loads(before.rows("REFERENCE")[0]["record"])))
    assert record.parameters["LINE"] == "fitted" and stale_inputs(record) == []
    right = stations()[0][11]["at"]
    feature = list(layers["STATIONS"].getFeatures())[11]
    layers["STATIONS"].startEditing()
    point = qgis_core.QgsGeometry.fromPointXY(qgis_core.QgsPointXY(*right))
    assert layers["STATIONS"].changeGeometry(feature.id(), point)
    edited = fit(toolbox, layers)
    assert set(edited.column("lat_flag")) == {"kept"}
    assert edited.column("lateral") == pytest.approx(less_line(SIDE).tolist(), abs=2e-8)
    assert layers["STATIONS"].commitChanges()
    assert [one.key for one in stale_inputs(record)] == ["STATIONS"]


# Heights only -------------------------------------------------------------------------------------------------------


def test_nothing_of_line_where_only_heights_are_asked_for(toolbox):
    for more in ({}, {"LINE": "none"}):
        run = toolbox.run("fitreference", SIGMA=SIGMA, REFERENCE="memory:", **more, **site(toolbox, sd_line=0.002))
        assert not set(LINE_FIELDS) & set(run.rows()[0])
        assert not [name for name in run.rows("REFERENCE")[0] if name.startswith("lin_")]
        assert not [key for key in run.results if key.startswith("LINE")]
        assert "in plan" not in run.said and "sd_line" not in run.said
    entry = qgis_core.QgsApplication.processingRegistry().algorithmById("tautline:fitreference")
    defaults = {d.name(): d.defaultValue() for d in entry.parameterDefinitions()}
    assert defaults["LINE"] is None and defaults["SIGMA_LINE"] is None and defaults["SIGMA_LINE_FIELD"] is None


def test_a_later_run_for_heights_alone_leaves_no_line_behind(toolbox, tmp_path):
    layers, first = site(toolbox), str(tmp_path / "a.gpkg")
    fit(toolbox, layers, OUTPUT=first)
    again = fit(toolbox, {**layers, "STATIONS": first})
    assert [list(again.rows()[0]).count(name) for name in LINE_FIELDS] == [1] * 5
    heights = toolbox.run("fitreference", SIGMA=SIGMA, REFERENCE="memory:", STATIONS=first, AXIS=layers["AXIS"])
    assert not set(LINE_FIELDS) & set(heights.rows()[0])


def test_a_verdict_on_the_designs_line_does_not_stand_beside_a_fitted_one(toolbox, tmp_path):
    """'side' judges the lateral departure from the design's line, which the one from the fitted line replaces."""
    layers = site(toolbox)
    given = {**layers, "DESIGN": "level", "UNDULATION": "ellipsoidal", "LINE": "axis", "LINE_TOLERANCE": 0.004}
    designed = toolbox.run("designheights", OUTPUT=str(tmp_path / "d.gpkg"), **given)
    assert {"left", "right"} & set(designed.column("side"))
    again = fit(toolbox, {**layers, "STATIONS": designed.results["OUTPUT"]}).rows()
    assert "side" not in again[0]
    assert [row["lateral"] for row in again] == pytest.approx(less_line(SIDE), abs=2e-8)
    # A field of that name that somebody else has filled gets another, and the verdict stays where only heights are
    # fitted.
    rows = [{**row, "side": "shore"} for row in stations()[0]]
    own = fit(toolbox, {**layers, "STATIONS": toolbox.points(rows)})
    assert set(own.column("side_2")) == {"shore"} and "side" not in own.rows()[0]
    alone = toolbox.run("fitreference", REFERENCE="memory:", **{**layers, "STATIONS": designed.results["OUTPUT"]})
    assert alone.column("side") == designed.column("side")


def test_a_reference_with_a_line_still_serves_designheights(toolbox):
    layers = site(toolbox)
    run = fit(toolbox, layers)
    designed = toolbox.run(
        "designheights", DESIGN="reference", REFERENCE=run.layer("REFERENCE"), UNDULATION="ellipsoidal", **layers
    )
    assert designed.column("residual") == pytest.approx(run.column("residual"), abs=1e-6)


# What people see ----------------------------------------------------------------------------------------------------


def test_titles_marks_labels_and_tips(toolbox, tmp_path):
    up, side = UP.copy(), SIDE.copy()
    side[11] += 0.06
    options = {"OUTPUT": str(tmp_path / "a.gpkg"), "REFERENCE": str(tmp_path / "r.gpkg")}
    run = fit(toolbox, site(toolbox, up, side), **options)
    titles = run.titles()
    assert (titles["lateral"], titles["lat_flag"]) == ("Lateral departure (m)", "Flag of the line")
    assert run.titles("REFERENCE")["lin_az"] == "Azimuth of the line (°)"
    layer = run.layer()
    layer.loadDefaultStyle()
    features = list(layer.getFeatures())

    def context(k):
        found = qgis_core.QgsExpressionContext(qgis_core.QgsExpressionContextUtils.globalProjectLayerScopes(layer))
        found.setFeature(features[k])
        return found

    rules = {rule.label(): rule for rule in layer.renderer().rootRule().children()}
    ring = rules["Suspected blunder in line"]
    assert [_true(ring, context(k)) for k in (10, 11)] == [False, True]
    labels = layer.labeling().rootRule().children()
    text = qgis_core.QgsExpression(labels[0].settings().fieldName).evaluate(context(11))
    assert text.split("\n")[2].strip().endswith(" mm right")
    assert [_true(labels[0], context(k)) for k in (10, 11)] == [False, True]
    assert [_true(labels[1], context(k)) for k in (10, 11)] == [True, False]
    tip = qgis_core.QgsExpression.replaceExpressionText(layer.mapTipTemplate(), context(11))
    assert "In plan: suspected blunder, 54.7 mm right. Test value w = 17.9. " in tip
    heights = toolbox.run(
        "fitreference", SIGMA=SIGMA, OUTPUT=str(tmp_path / "h.gpkg"), REFERENCE="memory:", **site(toolbox)
    )
    plain = heights.layer()
    plain.loadDefaultStyle()
    assert "In plan" not in plain.mapTipTemplate()
    assert "Suspected blunder in line" not in [rule.label() for rule in plain.renderer().rootRule().children()]


def _true(rule, context):
    return bool(qgis_core.QgsExpression(rule.filterExpression()).evaluate(context))


# Bad inputs ---------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "columns, form, words",
    [
        ({}, {"FIT": "plane"}, ("LINE 'fitted' goes with FIT 'line'",)),
        ({}, {"SIGMA_LINE": 0.0}, ("SIGMA_LINE is 0; it must be positive",)),
        ({}, {"SIGMA_LINE": -0.002}, ("SIGMA_LINE",)),
        ({}, {"SIGMA_LINE": "abc"}, ("SIGMA_LINE", "abc")),
        ({}, {"LINE": "chord"}, ("LINE", "chord")),
        ({"sd_line": 0.0}, {"SIGMA_LINE": None}, ("'stations', row 1", "in the field 'sd_line' is 0; it must be")),
        ({"sd_line": [0.002] * 4 + [None] + [0.002] * 26}, {"SIGMA_LINE": None}, ("row 5", "'sd_line' is missing")),
        ({"sd_line": "x"}, {"SIGMA_LINE": None}, ("'sd_line'", "row 1", "'x' is not a number")),
        ({}, {"SIGMA_LINE_FIELD": "sideways"}, ("no field 'sideways'", "SIGMA_LINE_FIELD")),
    ],
)
def test_bad_values_are_refused(toolbox, columns, form, words):
    given = {"SIGMA": SIGMA, "SIGMA_LINE": SIGMA, "LINE": "fitted", "REFERENCE": "memory:", **form}
    text = toolbox.refusal("fitreference", **given, **site(toolbox, **columns))
    for word in words:
        assert word in text, text


def test_stations_at_one_place_give_no_line(toolbox):
    rows, ends = stations(UP[:5], np.zeros(5), spacing=0.0)
    axis = toolbox.lines([{"at": [ends[0], WGS.fwd(*ends[0], 40.0, 100.0)[:2]], "name": "wall"}])
    text = toolbox.refusal(
        "fitreference", SIGMA=SIGMA, LINE="fitted", REFERENCE="memory:", STATIONS=toolbox.points(rows), AXIS=axis
    )
    assert "'wall'" in text


def test_a_deviation_without_line_is_told(toolbox):
    run = toolbox.run("fitreference", SIGMA=SIGMA, SIGMA_LINE=0.002, REFERENCE="memory:", **site(toolbox))
    assert any("standard deviation of a lateral position is given, but not used" in text for text in run.warnings)
    assert "lateral" not in run.rows()[0]
