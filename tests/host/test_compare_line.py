"""comparesurveys with LINE through the registry: lateral changes by other solutions, chains, documents, bad input."""

import json
import pathlib
import re

import mpmath
import numpy as np
import pytest

pyproj = pytest.importorskip("pyproj")
qgis_core = pytest.importorskip("qgis.core")

from tautline.algorithms.core.place_marks import place_marks  # noqa: E402
from tautline.algorithms.entry.moved_points import moved_rows  # noqa: E402
from tautline.algorithms.entry.run_record import RunRecord  # noqa: E402

UTM, FOOT = "EPSG:32631", 0.3048
WGS = pyproj.Geod(ellps="WGS84")
DICE = np.random.default_rng(7)
FIRST = np.round(DICE.normal(0.0, 0.004, 13), 5)
# A shift of 3 mm to the right, a rotation of 0.02 mm in 1 m, and three neighbours pushed 9 mm to the left.
PUSH = np.where(np.isin(np.arange(13), (5, 6, 7)), -0.009, 0.0)
LATER = np.round(FIRST + 0.003 + 2e-5 * (10.0 * np.arange(13) - 60.0) + PUSH + DICE.normal(0.0, 0.0005, 13), 5)
CHANGE, KEPT = LATER - FIRST, PUSH == 0.0
SIGMA = 0.0007


def survey(toolbox, beside, name="first", date="2025-03-11", step=10.0, heights=None, field="offset", **more):
    """Stations every ``step`` metres, ``beside`` the line by a field; None for one that has no such value."""
    rows = [
        {
            "at": (500000.0 + step * k, 5540000.0),
            "axis": "a",
            "station": f"0+{int(step * k):03d}",
            "chainage": step * k,
            field: None if value is None else float(value),
            "height": 50.0 if heights is None else heights[k],
            "date": date,
            "sd": 0.001,
            **{key: values[k] for key, values in more.items()},
        }
        for k, value in enumerate(beside)
    ]
    return toolbox.points(rows, UTM, name=name, types={field: "double", "height": "double", "date": "string"})


def pair(toolbox, **more):
    return [survey(toolbox, FIRST, **more), survey(toolbox, LATER, "second", "2027-03-11", **more)]


def column(run, name):
    return np.array([np.nan if v is None else v for v in (row[name] for row in run.rows())], float)


def exact_motion(changes, kept, step=10.0):
    """Shift, rotation, their deviations and the departures with theirs, of independent changes of one accuracy, by
    normal equations in 50 digits (Gauss): covariance of a departure C - A Q A^T where it was kept, C + A Q A^T else."""
    with mpmath.workdps(50):
        s = [mpmath.mpf(step) * k for k in range(len(changes))]
        middle = sum(s) / len(s)
        rows = [(mpmath.mpf(1), value - middle) for value in s]
        used = [k for k in range(len(s)) if kept[k]]
        normal, right = mpmath.zeros(2), mpmath.zeros(2, 1)
        for k in used:
            for i in range(2):
                right[i] += rows[k][i] * mpmath.mpf(float(changes[k]))
                for j in range(2):
                    normal[i, j] += rows[k][i] * rows[k][j]
        inverse = normal**-1
        found, variance = inverse * right, 2 * mpmath.mpf(SIGMA) ** 2
        rest, sd = [], []
        for k, (_, lever) in enumerate(rows):
            rest.append(float(mpmath.mpf(float(changes[k])) - found[0] - found[1] * lever))
            form = inverse[0, 0] + 2 * lever * inverse[0, 1] + lever**2 * inverse[1, 1]
            sd.append(float(mpmath.sqrt(variance * (1 + (-form if kept[k] else form)))))
        deviations = [float(mpmath.sqrt(variance * inverse[k, k])) for k in range(2)]
        return float(found[0]), float(found[1]), deviations, np.array(rest), np.array(sd)


# What is found ------------------------------------------------------------------------------------------------------


def test_lateral_change_shift_rotation_and_bending(toolbox):
    """sd of a difference: root of both variances (Caspary 1987); 3.29: Baarda 1968."""
    run = toolbox.run(
        "comparesurveys",
        SURVEYS=pair(toolbox),
        LINE="offset",
        SIGMA_LINE=SIGMA,
        TILT=True,
        MOTIONS="memory:",
        CHANGES="memory:",
    )
    assert column(run, "lat_change") == pytest.approx(CHANGE, abs=1e-15)
    assert column(run, "lat_first") == pytest.approx(FIRST, abs=0.0) and column(run, "lat_last")[3] == LATER[3]
    sd = SIGMA * 2**0.5
    assert column(run, "sd_lat") == pytest.approx(sd, rel=1e-12)
    assert column(run, "lat_ratio") == pytest.approx(CHANGE / sd, rel=1e-12)
    words = ["not significant" if abs(r) <= 1.96 else "possible" if abs(r) <= 3.29 else None for r in CHANGE / sd]
    words = [word or ("right" if change > 0 else "left") for word, change in zip(words, CHANGE)]
    assert [row["lat_verd"] for row in run.rows()] == words and {"left", "right"} <= set(words)
    shift, turn, (sd_shift, sd_turn), rest, sd_rest = exact_motion(CHANGE, KEPT)
    motion = run.rows("MOTIONS")[0]
    assert (motion["lat_shift"], motion["lat_turn"]) == pytest.approx((shift, turn), rel=1e-10)
    assert (motion["sd_lshift"], motion["sd_lturn"]) == pytest.approx((sd_shift, sd_turn), rel=1e-10)
    assert column(run, "lat_bend") == pytest.approx(rest, abs=1e-14)
    assert column(run, "sd_lbend") == pytest.approx(sd_rest, rel=1e-10)
    assert column(run, "lat_common") == pytest.approx(CHANGE - rest, abs=1e-14)
    assert [row["lbend_verd"] for row in run.rows()] == ["not significant" if kept else "left" for kept in KEPT]
    assert (motion["lat_number"], motion["lat_stable"], motion["lat_bent"]) == (13, 10, 3)
    assert (motion["left"], motion["right"]) == (words.count("left"), words.count("right"))
    assert motion["lat_rms"] == pytest.approx(np.sqrt(np.mean(rest**2)), rel=1e-12)
    years = 730 / 365.25
    assert column(run, "lat_rate") == pytest.approx(CHANGE / years, rel=1e-9)
    assert column(run, "sd_lrate") == pytest.approx(sd / years, rel=1e-9)
    assert list(motion)[-1] == "record" and len(run.rows("CHANGES")) == 13
    assert run.rows("CHANGES")[6]["lat_bend"] == pytest.approx(rest[6], abs=1e-14)
    results = run.results
    assert (results["LINE_COUNT"], results["LINE_CHANGED"]) == (13, words.count("left") + words.count("right"))
    assert results["LINE_MAX_ABS"] == pytest.approx(np.abs(CHANGE).max(), abs=1e-15)
    assert "set aside: 0+050 to 0+070 (3 stations)" in run.said and "given, not judged" in run.said
    assert re.search(r"common shift \d\.\d mm right, rotation \d+\.\d ppm right \(not judged\)", run.said)


def test_heights_are_what_they_are_without_line(toolbox):
    surveys = pair(toolbox, heights=[50.0 + v for v in DICE.normal(0.0, 0.002, 13).tolist()])
    with_line = toolbox.run(
        "comparesurveys", SURVEYS=surveys, LINE="offset", SIGMA_LINE=SIGMA, MOTIONS="memory:", CHANGES="memory:"
    )
    alone = toolbox.run("comparesurveys", SURVEYS=surveys, MOTIONS="memory:", CHANGES="memory:")
    for output in ("OUTPUT", "MOTIONS", "CHANGES"):
        for row, bare in zip(with_line.rows(output), alone.rows(output)):
            assert {k: row[k] for k in bare if k != "record"} == {k: bare[k] for k in bare if k != "record"}
    assert len(alone.said) < len(with_line.said)


@pytest.mark.parametrize("tilt", [False, True])
def test_each_survey_with_its_own_accuracy(toolbox, tilt):
    """A field 'sd_line' in one survey and a place of SIGMAS_LINE for the other, by full matrices (numpy)."""
    own = [0.0004 + 0.0001 * (k % 4) for k in range(13)]
    later = FIRST + 0.002 + DICE.normal(0.0, 0.0006, 13)
    surveys = [survey(toolbox, FIRST, sd_line=own), survey(toolbox, later, "second", "2027-03-11", sd_line=own)]
    run = toolbox.run(
        "comparesurveys",
        SURVEYS=surveys,
        LINE="offset",
        SIGMAS_LINE=" ; 0.0008",
        TILT=tilt,
        SHIFT="mean",
        MOTIONS="memory:",
    )
    covariance = np.diag(np.square(own) + 0.0008**2)
    columns = np.vander(np.arange(13) * 10.0 - 60.0, 2 if tilt else 1)[:, ::-1]
    weight = np.linalg.inv(covariance)
    inverse = np.linalg.inv(columns.T @ weight @ columns)
    found = inverse @ columns.T @ weight @ (later - FIRST)
    motion = run.rows("MOTIONS")[0]
    assert motion["lat_shift"] == pytest.approx(found[0], rel=1e-9)
    assert motion["sd_lshift"] == pytest.approx(np.sqrt(inverse[0, 0]), rel=1e-9)
    if tilt:
        assert motion["lat_turn"] == pytest.approx(found[1], rel=1e-9)
    else:
        assert motion["lat_turn"] is None
    rest = np.sqrt(np.diag(covariance - columns @ inverse @ columns.T))
    assert column(run, "sd_lbend") == pytest.approx(rest, rel=1e-9)


def test_three_surveys_and_stations_without_line(toolbox):
    third = [None if k == 2 else v + 0.004 for k, v in enumerate(LATER.tolist())]
    surveys = [*pair(toolbox), survey(toolbox, third, "third", "2029-03-11")]
    run = toolbox.run("comparesurveys", SURVEYS=surveys, LINE="offset", SIGMA_LINE=SIGMA, CHANGES="memory:")
    rows = run.by("station")
    # Its height was read in the last survey, its offset was not: nothing of an earlier one stands in its place.
    assert rows["0+020"]["last_seen"] == "2029-03-11" and rows["0+020"]["change"] == 0.0
    assert [rows["0+020"][name] for name in ("lat_change", "lat_verd", "lat_bend", "lbend_verd")] == [None] * 4
    of_second = [row for row in run.rows("CHANGES") if row["survey"] == "2027-03-11" and row["station"] == "0+020"]
    assert of_second[0]["lat_change"] == pytest.approx(CHANGE[2], abs=1e-15)
    years = np.array([0.0, 730.0, 1461.0]) / 365.25
    expected = np.polyfit(years, [FIRST[6], LATER[6], third[6]], 1)[0]
    assert rows["0+060"]["lat_rate"] == pytest.approx(expected, rel=1e-9)
    assert run.results["LINE_COUNT"] == 12


# Chains of entries --------------------------------------------------------------------------------------------------


def placed(toolbox, offsets, unit=1.0, crs="EPSG:4326", name="first", **more):
    """Stations at known offsets of a geodesic (the library's), heights in ``unit`` metres, and the axis."""
    ahead = 40.0
    rows, ends = [], []
    to_map = pyproj.Transformer.from_crs("EPSG:4326", crs, always_xy=True).transform
    for k, offset in enumerate(offsets):
        x, y, back = WGS.fwd(8.0, 50.0, ahead, 100.0 * k) if k else (8.0, 50.0, ahead + 180.0)
        ends.append(to_map(x, y))
        x, y, _ = WGS.fwd(x, y, back - 90.0, float(offset))
        rows.append({"at": to_map(x, y), "height": 120.0 / unit, "undulation": (47.0 + 0.002 * k) / unit, **more})
    axis = toolbox.lines([{"at": [ends[0], ends[-1]], "name": "wall"}], crs)
    return toolbox.points(rows, crs, name=name), axis


def designed(toolbox, offsets, kind, name, **more):
    stations, axis = placed(toolbox, offsets, name=name, unit=more.pop("unit", 1.0), crs=more.pop("crs", "EPSG:4326"))
    return toolbox.run("designheights", STATIONS=stations, AXIS=axis, LINE=kind, **more).layer()


@pytest.mark.parametrize("kinds", [("chord", "chord"), ("fitted", "fitted"), ("chord", "fitted"), ("axis", "axis")])
@pytest.mark.parametrize("over", ["metres", "feet, over the geoid"])
def test_bending_is_that_of_the_offsets_whatever_line_the_surveys_had(toolbox, tmp_path, kinds, over):
    """A line of its own shifts and turns: without shift and rotation the same bending is left, to second order."""
    feet = "feet" in over
    more = (
        {"HEIGHT_UNIT": "foot", "UNDULATION": "field", "UNDULATION_FIELD": "undulation", "unit": FOOT} if feet else {}
    )
    unit = FOOT if feet else 1.0
    surveys = []
    for number, (kind, offsets) in enumerate(zip(kinds, (FIRST, LATER)), 1):
        path = str(tmp_path / f"s{number}.gpkg")
        surveys.append(designed(toolbox, offsets, kind, f"s{number}", OUTPUT=path, **more))
    given = {"SURVEYS": surveys, "SIGMA_LINE": SIGMA / unit, "DATES": "2025-03-11; 2027-03-11", "TILT": True}
    run = toolbox.run("comparesurveys", LINE="lateral", MOTIONS="memory:", **given)
    _, turn, (_, sd_turn), rest, sd_rest = exact_motion(CHANGE, KEPT, step=100.0)
    lifted = 1.0 + (120.0 + 47.0 * feet) / 6_381_000.0
    assert column(run, "lat_bend") * unit == pytest.approx(rest * lifted, abs=2e-7)
    assert column(run, "sd_lbend") * unit == pytest.approx(sd_rest, rel=1e-6)
    assert [row["lbend_verd"] for row in run.rows()] == ["not significant" if kept else "left" for kept in KEPT]
    motion = run.rows("MOTIONS")[0]
    assert motion["sd_lturn"] == pytest.approx(sd_turn, rel=1e-4)
    if kinds == ("axis", "axis"):
        assert motion["lat_turn"] == pytest.approx(turn, abs=2e-10) and "from the axis, one line" in run.said
        assert column(run, "lat_change") * unit == pytest.approx(CHANGE * lifted, abs=2e-7)
    else:
        # What a station did is not in a departure from the survey's own line.
        assert {row["lat_verd"] for row in run.rows()} == {"no sd"} and run.results["LINE_CHANGED"] == 0
        assert "in each survey from its own line" in run.said
    # The rotation of lines of their own is separated whether the heights' tilt is or not.
    again = toolbox.run("comparesurveys", LINE="lateral", MOTIONS="memory:", **{**given, "TILT": False})
    assert (again.rows("MOTIONS")[0]["lat_turn"] is None) == (kinds == ("axis", "axis"))
    if kinds != ("axis", "axis"):
        assert column(again, "lat_bend") == pytest.approx(column(run, "lat_bend"), abs=0.0)


def test_offsets_of_the_chain_and_an_edit_between(toolbox, tmp_path):
    """Offsets in feet of chainage; after a station was moved by hand and the chain run again, the change follows."""
    layers, axes = zip(*(placed(toolbox, offsets, FOOT, UTM) for offsets in (FIRST, LATER)))
    files = [toolbox.saved(layer, tmp_path / f"raw{k}.gpkg") for k, layer in enumerate(layers)]
    axis = toolbox.saved(axes[0], tmp_path / "axis.gpkg")

    def compared():
        made = [
            toolbox.run(
                "designheights", STATIONS=raw, AXIS=axis, HEIGHT_UNIT="foot", OUTPUT=str(tmp_path / f"made{k}.gpkg")
            ).layer()
            for k, raw in enumerate(files)
        ]
        given = {"SURVEYS": made, "DATES": "2025-03-11; 2027-03-11", "LINE": "offset", "SIGMA_LINE": SIGMA / FOOT}
        return toolbox.run("comparesurveys", OUTPUT=str(tmp_path / "compared.gpkg"), **given)

    run = compared()
    before = column(run, "lat_change") * FOOT
    assert before == pytest.approx(CHANGE * (1 + 120.0 / 6_381_000.0), abs=2e-7)
    assert run.titles()["lat_change"] == "Lateral change (ft)"
    # Moved 20 mm to the right of the line on the ground, by the library's geodesic.
    to_map = pyproj.Transformer.from_crs("EPSG:4326", UTM, always_xy=True)
    feature = next(f for f in files[1].getFeatures() if f.id() == list(files[1].getFeatures())[3].id())
    lon, lat = to_map.transform(*feature.geometry().asPoint(), direction="INVERSE")
    on_axis = WGS.fwd(8.0, 50.0, 40.0, 300.0)
    x, y = to_map.transform(*WGS.fwd(lon, lat, on_axis[2] - 90.0, 0.02)[:2])
    assert files[1].startEditing()
    files[1].changeGeometry(feature.id(), qgis_core.QgsGeometry.fromPointXY(qgis_core.QgsPointXY(x, y)))
    assert files[1].commitChanges()
    after = column(compared(), "lat_change") * FOOT
    assert after - before == pytest.approx(np.where(np.arange(13) == 3, 0.02, 0.0), abs=2e-6)


def test_points_moved_after_the_run_that_measured_them_are_told(toolbox, tmp_path):
    (first, axis), (later, _) = (placed(toolbox, offsets) for offsets in (FIRST, LATER))
    made = [
        toolbox.run("measurestations", STATIONS=one, AXIS=axis, OUTPUT=str(tmp_path / f"p{k}.gpkg")).layer()
        for k, one in enumerate((first, later))
    ]
    told = "Chainage, offset and what was computed there are those of the former place"
    assert told not in toolbox.run("comparesurveys", SURVEYS=made, LINE="offset").said
    features = list(made[1].getFeatures())
    place = features[3].geometry().asPoint()
    there = qgis_core.QgsGeometry.fromPointXY(qgis_core.QgsPointXY(place.x() + 1e-6, place.y()))
    assert made[1].dataProvider().changeGeometryValues({features[3].id(): there})
    assert made[1].dataProvider().deleteFeatures([features[0].id()])
    run = toolbox.run("comparesurveys", SURVEYS=made, LINE="offset")
    (sentence,) = [text for text in run.warnings if told in text]
    assert "1 point was moved or added since its run, the first in row 3" in sentence and "OUTPUT" in sentence
    # Measured anew on its own points it is silent, and the change is there.
    anew = toolbox.run("measurestations", STATIONS=made[1], AXIS=axis, OUTPUT=str(tmp_path / "anew.gpkg"))
    assert told not in anew.said
    again = toolbox.run("comparesurveys", SURVEYS=[made[0], anew.layer()], LINE="offset")
    assert told not in again.said
    moved = column(again, "lat_change")[3] - column(run, "lat_change")[3]
    assert 0.04 < abs(moved) < 0.06  # a millionth of a degree of longitude at 50 degrees north, across a line at 40
    # The docks look at copies too: one in another reference system has moved nothing.
    record = RunRecord.read(made[0].customProperty("tautline/record"))
    elsewhere = place_marks(np.zeros(3), np.zeros(3))
    assert len(moved_rows(record, made[0].crs(), elsewhere)) == 3
    assert not len(moved_rows(record, qgis_core.QgsCoordinateReferenceSystem("EPSG:4258"), elsewhere))


@pytest.mark.parametrize("entry", ["drawdeviations", "scheduleadjustments", "reviewreport", "convertheights"])
def test_every_reader_of_stored_columns_tells_it(toolbox, tmp_path, entry):
    stations, axis = placed(toolbox, FIRST)
    given = {"STATIONS": stations, "AXIS": axis, "TOLERANCE": 0.01, "OUTPUT": str(tmp_path / "designed.gpkg")}
    layer = toolbox.run("designheights", **given).layer()
    more = {
        "drawdeviations": {"AXIS": axis, "BARS": "memory:", "OUTPUT": None},
        "scheduleadjustments": {"TOLERANCE": 0.01},
        "reviewreport": {"HTML": str(tmp_path / "r.html"), "OUTPUT": None},
        "convertheights": {"UNDULATION": "constant", "UNDULATION_VALUE": 40.0, "HEIGHTS_ARE": "geoid"},
    }[entry]
    told = "Layer 'OUTPUT': 1 point was moved or added since its run, the first in row 5. Chainage, offset and"
    assert told not in toolbox.run(entry, STATIONS=layer, **more).said
    feature = list(layer.getFeatures())[4]
    place = feature.geometry().asPoint()
    there = qgis_core.QgsGeometry.fromPointXY(qgis_core.QgsPointXY(place.x() + 1e-7, place.y()))
    assert layer.dataProvider().changeGeometryValues({feature.id(): there})
    assert sum(told in text for text in toolbox.run(entry, STATIONS=layer, **more).warnings) == 1
    if entry == "reviewreport":
        assert "1 point was moved or added since its run, the first in row 5" in pathlib.Path(more["HTML"]).read_text(
            "utf-8"
        )
    # Who measures anew has nothing to tell.
    assert told not in toolbox.run("designheights", STATIONS=layer, AXIS=axis).said


def test_surveys_on_different_axes_are_doubted(toolbox, tmp_path):
    made = []
    for number, offsets in enumerate((FIRST, LATER)):
        stations, axis = placed(toolbox, offsets)
        if number:
            corners = [(8.0, 50.0), WGS.fwd(8.0, 50.0, 40.001, 1200.0)[:2]]
            axis = toolbox.lines([{"at": corners, "name": "wall"}])
        path = str(tmp_path / f"m{number}.gpkg")
        made.append(toolbox.run("measurestations", STATIONS=stations, AXIS=axis, OUTPUT=path).results["OUTPUT"])
    run = toolbox.run("comparesurveys", SURVEYS=made, LINE="offset")
    assert any("lateral changes include the difference between the axes" in text for text in run.warnings)
    assert not any("axes differ" in text for text in toolbox.run("comparesurveys", SURVEYS=made).warnings)
    stations, axis = placed(toolbox, LATER)
    path = str(tmp_path / "m2.gpkg")
    made[1] = toolbox.run("measurestations", STATIONS=stations, AXIS=axis, OUTPUT=path).results["OUTPUT"]
    run = toolbox.run("comparesurveys", SURVEYS=made, LINE="offset")
    assert not any("axes differ" in text for text in run.warnings)


# Heights only -------------------------------------------------------------------------------------------------------


def test_nothing_of_line_where_only_heights_are_compared(toolbox, tmp_path):
    report = str(tmp_path / "r.html")
    given = {"SURVEYS": pair(toolbox), "MOTIONS": "memory:", "CHANGES": "memory:", "UNMATCHED": "memory:"}
    run = toolbox.run("comparesurveys", REPORT=report, OUTPUT=str(tmp_path / "o.gpkg"), **given)
    for output in ("OUTPUT", "MOTIONS", "CHANGES"):
        names = set(run.rows(output)[0])
        assert not {n for n in names if n.startswith(("lat_", "lbend")) or n in ("left", "right", "sd_lat", "sd_lbend")}
    text = re.sub(r"<(style|svg).*?</\1>", "", pathlib.Path(report).read_text(encoding="utf-8"), flags=re.DOTALL)
    for said in (run.said, text):
        assert not re.search(r"\b(lateral|sideways|left|rotation|offsets?)\b", said.replace("or left.", ""))
        assert "Line:" not in said
    assert not [key for key in run.results if key.startswith("LINE")]
    record = json.loads(run.rows("MOTIONS")[0]["record"])
    assert not [key for key in record["parameters"] if "LINE" in key]
    assert record["inputs"]["SURVEYS"][0]["numbers"] == ["chainage", "height", "offset", "sd"]
    layer = run.layer()
    layer.loadDefaultStyle()
    assert "Line" not in layer.mapTipTemplate()
    definitions = (
        qgis_core.QgsApplication.processingRegistry().algorithmById("tautline:comparesurveys").parameterDefinitions()
    )
    assert {d.name(): d.defaultValue() for d in definitions if "LINE" in d.name()} == {
        "LINE": None,
        "SIGMA_LINE": None,
        "SIGMAS_LINE": None,
    }


# Documents and map --------------------------------------------------------------------------------------------------


def test_page_and_chart_keep_line_and_height_apart(toolbox, tmp_path):
    report, chart = str(tmp_path / "r.html"), str(tmp_path / "c.svg")
    run = toolbox.run(
        "comparesurveys",
        SURVEYS=pair(toolbox),
        LINE="offset",
        SIGMA_LINE=SIGMA,
        TILT=True,
        REPORT=report,
        CHART=chart,
        OUTPUT=str(tmp_path / "o.gpkg"),
    )
    page = pathlib.Path(report).read_text(encoding="utf-8")
    for heading in (
        "Line: each axis and survey",
        "Line: each station, latest survey",
        "Lateral differential movement (mm)",
    ):
        assert heading in page
    assert "Rotation in plan (ppm)" in page and "Common lateral shift (mm)" in page
    assert page.count("<svg") == 2 and "◀ left" in page and "right ▶" in page
    drawn = pathlib.Path(chart).read_text(encoding="utf-8")
    assert "right is positive" in drawn and drawn.count("#f2eefa") == 2
    layer = run.layer()
    layer.loadDefaultStyle()
    context = layer.createExpressionContext()
    context.setFeature(next(f for f in layer.getFeatures() if f["station"] == "0+060"))
    told = qgis_core.QgsExpression.replaceExpressionText(layer.mapTipTemplate(), context)
    assert f"Line: change {abs(CHANGE[6]) * 1000:.1f} mm left ± 1.0 mm." in told and "Differential movement 9" in told
    bold = next(r for r in layer.labeling().rootRule().children() if r.settings().format().font().bold())
    label = qgis_core.QgsExpression(bold.settings().fieldName)
    assert label.evaluate(context).split("\n")[2].strip("\xa0") == f"{abs(CHANGE[6]) * 1000:.1f} mm left"
    assert qgis_core.QgsExpression(bold.filterExpression()).evaluate(context) == 1
    assert "Moved left or right" in [rule.label() for rule in layer.renderer().rootRule().children()]


def test_titles_of_the_columns(toolbox, tmp_path):
    run = toolbox.run(
        "comparesurveys",
        SURVEYS=pair(toolbox),
        LINE="offset",
        OUTPUT=str(tmp_path / "o.gpkg"),
        MOTIONS=str(tmp_path / "m.gpkg"),
    )
    titles = run.titles("MOTIONS")
    assert (titles["left"], titles["right"], titles["lat_rms"]) == (
        "Moved left",
        "Moved right",
        "Lateral RMS, shift removed (m)",
    )
    assert run.titles()["sd_lbend"] == "Standard deviation of the lateral differential movement (m)"
    # Without a deviation nothing is judged, and it is said.
    assert {row["lat_verd"] for row in run.rows()} == {
        "no sd"
    } and "No standard deviation of a lateral position" in run.said


# Bad inputs ---------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "form, words",
    [
        ({"LINE": "lateral"}, ("Layer 'first'", "'lateral'", "Design heights and residuals")),
        ({"LINE": "chord"}, ("LINE", "chord")),
        ({"LINE": "offset", "SIGMA_LINE": 0.0}, ("SIGMA_LINE is 0", "greater than zero")),
        ({"LINE": "offset", "SIGMA_LINE": -0.001}, ("SIGMA_LINE",)),
        ({"LINE": "offset", "SIGMAS_LINE": "0.001"}, ("SIGMAS_LINE has 1 value", "2 surveys")),
        ({"LINE": "offset", "SIGMAS_LINE": "0.001; good"}, ("SIGMAS_LINE", "'good'")),
    ],
)
def test_bad_values_are_refused(toolbox, form, words):
    text = toolbox.refusal("comparesurveys", SURVEYS=pair(toolbox), **form)
    for word in words:
        assert word in text


def test_bad_columns_are_refused(toolbox):
    bare = survey(toolbox, [None] * 13)
    text = toolbox.refusal("comparesurveys", SURVEYS=[survey(toolbox, FIRST), bare], LINE="offset")
    assert "no values in a field 'offset'" in text
    wrong = survey(toolbox, LATER, "second", "2027-03-11", sd_line=[0.001] * 12 + [0.0])
    text = toolbox.refusal("comparesurveys", SURVEYS=[survey(toolbox, FIRST), wrong], LINE="offset")
    assert "Layer 'second', field 'sd_line', row 13: 0 is not a standard deviation" in text
    words = survey(toolbox, LATER, "second", "2027-03-11", lateral=["x"] * 13)
    text = toolbox.refusal("comparesurveys", SURVEYS=[words, survey(toolbox, FIRST)], LINE="lateral")
    assert "'lateral'" in text and "row 1" in text


def test_a_deviation_without_line_is_told(toolbox):
    run = toolbox.run("comparesurveys", SURVEYS=pair(toolbox), SIGMA_LINE=SIGMA)
    assert any("given, but not used" in text for text in run.warnings) and "lat_change" not in run.rows()[0]


def test_a_wrong_unit_is_doubted(toolbox):
    far = survey(toolbox, FIRST + 1.5, "second", "2027-03-11")
    run = toolbox.run("comparesurveys", SURVEYS=[survey(toolbox, FIRST), far], LINE="offset", MATCH="name")
    assert any("half of the lateral changes" in text and "check unit and axis" in text for text in run.warnings)
