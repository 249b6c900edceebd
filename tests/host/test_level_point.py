"""Tangent point and level point of a run, a stated slope of the geoid, and grids by name."""

import math
import re

import numpy as np
import pytest

pyproj = pytest.importorskip("pyproj")

GEOD = pyproj.Geod(ellps="WGS84")
SECOND = math.pi / 648_000.0
SLOPE = 80e-6


def straight(toolbox, *, azimuth=70.0, undulation=None, height=120.0, level_at=1500.0):
    """31 stations on 3 km with heights of a parabola; ``undulation``: rise per metre along."""
    s = np.arange(0.0, 3001.0, 100.0)
    lon, lat, _ = GEOD.fwd(np.full(31, 8.0), np.full(31, 50.0), np.full(31, azimuth), s)
    places = list(zip(lon.tolist(), lat.tolist()))
    rows = [{"at": at, "height": height + (along - level_at) ** 2 / 12.76e6} for at, along in zip(places, s.tolist())]
    if undulation is not None:
        for row, along in zip(rows, s.tolist()):
            row["undulation"] = 47.0 + undulation * along
    axis = toolbox.lines([{"at": [places[0], places[-1]], "name": "A"}])
    return {"STATIONS": toolbox.points(rows), "AXIS": axis}, rows, places


def test_the_level_point_of_the_fit_is_that_of_the_design(toolbox):
    """A geoid that rises by 80 microradians, as a field: heights of the design 'tangent' at 2+010 are fitted, and the
    fit says 2+010, to the millimetre; the tangent point lies 510 m before."""
    given, rows, _ = straight(toolbox, undulation=SLOPE)
    common = {"UNDULATION": "field", "CHAINAGE_HEIGHT": 167.0}
    design = toolbox.run("designheights", DESIGN="tangent", CHAINAGE_A="2010", HEIGHT_A=120.0, **common, **given)
    assert "horizon of the geoid" in design.said
    for row, height in zip(rows, design.column("design_h")):
        row["height"] = height
    given["STATIONS"] = toolbox.points(rows)
    run = toolbox.run("fitreference", FIT="line", REFERENCE="memory:", SIGMA=0.003, **common, **given)
    (reference,) = run.rows("REFERENCE")
    assert reference["rms"] < 1e-7
    assert reference["lev_chain"] == pytest.approx(2010.0, abs=0.001)
    assert reference["tan_chain"] == pytest.approx(2010.0 - SLOPE * 6.385e6, abs=3.0)
    assert "level, against the horizon, at 2+010," in run.said
    assert "the tangent point needs the slope of the geoid, from the stations' own undulations" in run.said
    again = toolbox.run("designheights", DESIGN="reference", REFERENCE=run.layer("REFERENCE"), **common, **given)
    assert max(abs(row["residual"]) for row in again.rows()) < 1e-6


@pytest.mark.parametrize(
    "more, horizon",
    [
        ({"UNDULATION": "ellipsoidal"}, "the ellipsoid's horizon"),
        ({"UNDULATION": "field"}, "the ellipsoid's horizon"),
        ({"UNDULATION": "unknown"}, "the level surface"),
        ({"UNDULATION": "constant", "UNDULATION_VALUE": 47.0}, "the level surface"),
    ],
)
def test_the_slope_says_what_it_is_against(toolbox, more, horizon):
    """A geoid that rises by 80 microradians under heights above it that are level at 1+500: the slope that they show
    by themselves is one against the level surface, with the undulations of a field one of 80 microradians more."""
    given, _, _ = straight(toolbox, undulation=SLOPE)
    run = toolbox.run("fitreference", FIT="line", REFERENCE="memory:", SIGMA=0.003, **more, **given)
    (told,) = re.findall(r"slope at the origin of A ([\u2212+][\d.]+) \u00b1 [\d.]+, against ([^,;]+), 95 %;", run.said)
    rise = float(told[0].replace("\u2212", "-"))
    # s^2 / 2R falls at its origin, 1500 m before the middle, by 1500 m / R; R to a thousandth.
    level = -1500.0 / 6.38e6
    assert rise == pytest.approx(level + (SLOPE if more["UNDULATION"] == "field" else 0.0), abs=5e-6)
    assert told[1] == horizon
    assert ("the level point rests on the heights alone" in run.said) == (more["UNDULATION"] != "ellipsoidal")


def test_a_stated_slope_sets_the_horizon_of_ellipsoidal_heights(toolbox):
    """The horizon leans by 10 seconds to the east: along an axis to the east the design rises by their tangent. The fit
    of these heights is level at the control, and tangent to the ellipsoid R times as far before it."""
    given, rows, _ = straight(toolbox, azimuth=90.0)
    stated = {"UNDULATION": "ellipsoidal", "GEOID_SLOPE_E": 10.0, "GEOID_SLOPE_N": -3.0, "CHAINAGE_HEIGHT": 120.0}
    design = {"DESIGN": "tangent", "CHAINAGE_A": "1000", "HEIGHT_A": 120.0, "CHAINAGE_HEIGHT": 120.0}
    plain = toolbox.run("designheights", UNDULATION="ellipsoidal", **design, **given)
    run = toolbox.run("designheights", GEOID_SLOPE_SIGMA=1.0, **{**design, **stated}, **given)
    rise = np.subtract(run.column("design_h"), plain.column("design_h"))
    along = np.array([row["chainage"] for row in run.rows()])
    assert rise == pytest.approx(10.0 * SECOND * (along - 1000.0), abs=2e-4)
    # Far from the control 2 km times one second.
    assert (
        "+10.00\u2033 to the east, \u22123.00\u2033 to the north" in run.said and "is 9.7 mm at the station" in run.said
    )
    for row, height in zip(rows, run.column("design_h")):
        row["height"] = height
    given["STATIONS"] = toolbox.points(rows)
    fit = toolbox.run("fitreference", REFERENCE="memory:", SIGMA=0.001, GEOID_SLOPE_SIGMA=1.0, **stated, **given)
    (reference,) = fit.rows("REFERENCE")
    assert reference["lev_chain"] == pytest.approx(1000.0, abs=0.01)
    assert reference["tan_chain"] == pytest.approx(1000.0 - 10.0 * SECOND * 6.39e6, abs=1.0)
    assert reference["lev_sd"] > 30.9 and reference["tan_sd"] < 5.0
    assert "the level point needs the slope of the geoid, as stated" in fit.said


def test_a_stated_slope_leaves_heights_above_the_geoid_alone(toolbox):
    """They count from its horizon already; it is the tangent point that moves."""
    given, _, _ = straight(toolbox, azimuth=90.0)
    stated = {"GEOID_SLOPE_E": 10.0, "GEOID_SLOPE_N": 0.0}
    design = {"DESIGN": "tangent", "CHAINAGE_A": "1000", "HEIGHT_A": 120.0}
    plain = toolbox.run("designheights", **design, **given)
    run = toolbox.run("designheights", **stated, **design, **given)
    assert run.column("design_h") == plain.column("design_h") and "changes no design height" in run.said
    fit = toolbox.run("fitreference", REFERENCE="memory:", SIGMA=0.001, GEOID_SLOPE_SIGMA=0.5, **stated, **given)
    (reference,) = fit.rows("REFERENCE")
    assert reference["tan_chain"] - reference["lev_chain"] == pytest.approx(-10.0 * SECOND * 6.39e6, abs=1.0)


@pytest.mark.parametrize(
    "entry, given, said",
    [
        ("designheights", {"GEOID_SLOPE_E": 3.0}, "GEOID_SLOPE_N is missing"),
        ("fitreference", {"GEOID_SLOPE_N": 3.0, "GEOID_SLOPE_SIGMA": 1.0}, "GEOID_SLOPE_E is missing"),
        ("fitreference", {"GEOID_SLOPE_E": 3.0, "GEOID_SLOPE_N": 3.0}, "GEOID_SLOPE_SIGMA is missing"),
        ("designheights", {"GEOID_SLOPE_E": 300.0, "GEOID_SLOPE_N": 3.0}, "no geoid slopes by more than 200"),
        ("designheights", {"GEOID_SLOPE_E": 3.0, "GEOID_SLOPE_N": 3.0, "UNDULATION": "grid"}, "'grid' brings a slope"),
        (
            "fitreference",
            {"GEOID_SLOPE_E": 3.0, "GEOID_SLOPE_N": 3.0, "GEOID_SLOPE_SIGMA": 1.0, "UNDULATION": "field"},
            "'field' brings a slope",
        ),
    ],
)
def test_stated_slopes_that_are_refused(toolbox, entry, given, said):
    layers, _, _ = straight(toolbox, undulation=SLOPE)
    sinks = {"REFERENCE": "memory:"} if entry == "fitreference" else {}
    assert said in toolbox.refusal(entry, **layers, **sinks, **given)


def test_a_grid_of_the_library_by_its_file_name(toolbox):
    """The host reads the file as a raster: the same undulations as by the library's own transformation."""
    given, _, _ = straight(toolbox)
    named = toolbox.run("designheights", UNDULATION="grid", GEOID_NAME="egm96_15.gtx", DESIGN="tangent", **given)
    plain = toolbox.run("designheights", UNDULATION="grid", DESIGN="tangent", **given)
    assert named.column("design_h") == pytest.approx(plain.column("design_h"), abs=1e-5)
    for run in (named, plain):
        assert "accuracy of an undulation 1.00 m as PROJ states it" in run.said
        # 15 minutes are 28 km, and the axis 3.
        assert "too coarse to show bending: its cells are 27.8 km long" in run.said
    assert "the grid egm96_15.gtx of PROJ" in named.said
    heights = toolbox.run("convertheights", STATIONS=given["STATIONS"], GEOID_NAME="egm96_15.gtx")
    # The first station is a node of the grid, where PROJ's own bilinear reading is exact.
    to_geoid = pyproj.Transformer.from_crs("EPSG:4979", "EPSG:4326+5773", always_xy=True, allow_ballpark=False)
    assert heights.rows()[0]["undulation"] == pytest.approx(-to_geoid.transform(8.0, 50.0, 0.0)[2], abs=1e-5)
    assert "as PROJ states it" in heights.said


@pytest.mark.parametrize(
    "more, said",
    [
        ({"GEOID_NAME": "no_such_grid.tif"}, "PROJ has no grid 'no_such_grid.tif'"),
        ({"GEOID_NAME": "../proj/egm96_15.gtx"}, "PROJ has no grid"),
        ({"GEOID_NAME": "egm96_15.gtx", "GEOID": "file"}, "GEOID and GEOID_NAME are both given"),
    ],
)
def test_grids_by_name_that_are_refused(toolbox, more, said):
    from tautline.algorithms.core.geodesy import installed_grid

    given, _, _ = straight(toolbox)
    more = {**more, **({"GEOID": installed_grid("egm96_15.gtx")} if "GEOID" in more else {})}
    assert said in toolbox.refusal("designheights", UNDULATION="grid", **given, **more)


def test_tangent_is_level_in_the_heights_it_is_compared_with(toolbox):
    """Near 36 N 140 E the geoid slopes by several seconds. Heights of a level structure stand 1.5 km to both sides of
    the control by the same amount below the tangent, but for what the geoid bends: 33 mm apart with the ellipsoid's
    horizon, a few with the geoid's."""
    lon, lat, _ = GEOD.fwd(np.full(3, 140.0), np.full(3, 36.0), [115.0, 115.0, 115.0], [-1500.0, 0.0, 1500.0])
    places = list(zip(lon.tolist(), lat.tolist()))
    given = {
        "STATIONS": toolbox.points([{"at": at, "height": 50.0} for at in places]),
        "AXIS": toolbox.lines([{"at": [places[0], places[-1]], "name": "A"}]),
        "UNDULATION": "grid",
    }
    run = toolbox.run("designheights", DESIGN="tangent", CHAINAGE_A="1500", HEIGHT_A=50.0, **given)
    first, middle, last = run.column("design_h")
    assert middle == pytest.approx(50.0, abs=1e-6) and abs(first - last) < 0.003
    bare = {**given, "UNDULATION": "ellipsoidal"}
    undulation = [
        row["undulation"] for row in toolbox.run("convertheights", STATIONS=given["STATIONS"], UNDULATION="grid").rows()
    ]
    raised = toolbox.points([{"at": at, "height": 50.0 + n} for at, n in zip(places, undulation)])
    upright = toolbox.run(
        "designheights",
        DESIGN="tangent",
        CHAINAGE_A="1500",
        HEIGHT_A=50.0 + undulation[1],
        **{**bare, "STATIONS": raised},
    )
    ends = np.subtract(upright.column("design_h"), undulation)
    assert abs(ends[0] - ends[2]) > 0.03


def test_a_hole_near_the_structure_is_told(toolbox, tmp_path):
    """A node 8 cells away is unknown: the smooth surface ends there, and the log names the place."""
    gdal, osr = pytest.importorskip("osgeo.gdal"), pytest.importorskip("osgeo.osr")
    path = str(tmp_path / "geoid.tif")
    data = gdal.GetDriverByName("GTiff").Create(path, 80, 80, 1, gdal.GDT_Float64)
    data.SetGeoTransform((7.0, 0.025, 0.0, 51.0, 0.0, -0.025))
    system = osr.SpatialReference()
    system.ImportFromEPSG(4326)
    data.SetProjection(system.ExportToWkt())
    values = 40.0 + np.hypot(*np.mgrid[0:80, 0:80]) * 0.01
    values[40, 48] = -9999.0  # 49.9875 N, 8.2125 E
    data.GetRasterBand(1).WriteArray(values)
    data.GetRasterBand(1).SetNoDataValue(-9999.0)
    data.FlushCache()
    del data
    given, _, _ = straight(toolbox)
    run = toolbox.run("designheights", UNDULATION="grid", GEOID=path, **given)
    (told,) = [text for text in run.warnings if "no value" in text]
    assert "49.9875\u00b0, longitude 8.2125\u00b0, within twelve cells" in told
    # 2.5 minutes are 2.8 km: 3 km are not two of them.
    assert "too coarse to show bending" in run.said


def test_a_grid_by_name_is_carried_to_the_next_entry(toolbox, tmp_path):
    """Converted heights go back by the grid of their record; another one beside it is refused."""
    given, _, _ = straight(toolbox)
    stations, axis = str(tmp_path / "first.gpkg"), given["AXIS"]
    toolbox.run("designheights", UNDULATION="grid", GEOID_NAME="egm96_15.gtx", OUTPUT=stations, **given)
    again = toolbox.run("designheights", STATIONS=stations, AXIS=axis, HEIGHT_FIELD="height")
    assert "the grid egm96_15.gtx of PROJ" in again.said
    text = toolbox.refusal(
        "designheights", STATIONS=stations, AXIS=axis, HEIGHT_FIELD="height", UNDULATION="grid", GEOID_NAME="other.tif"
    )
    assert "GEOID_NAME is given, but the record of layer" in text and "the grid egm96_15.gtx of PROJ" in text
