"""measurestations through the registry: chainage and offset, points left or moved onto the axis."""

import pytest

pyproj = pytest.importorskip("pyproj")
EQUATOR = 6378137.0 / 57.29577951308232


@pytest.fixture
def axis(toolbox):
    """About 2.2 km along the equator, where a geodesic is the parallel and one degree is pi a / 180."""
    return toolbox.lines([{"at": [(0.0, 0.0), (0.02, 0.0)], "name": "line"}])


def test_on_the_equator(toolbox, axis):
    points = toolbox.points([{"at": (0.01, 0.0), "n": 1}, {"at": (-0.005, 0.0), "n": 2}, {"at": (0.025, 0.0), "n": 3}])
    run = toolbox.run("measurestations", STATIONS=points, AXIS=axis, CHAINAGE_START="1+000", MAX_DISTANCE=1000.0)
    assert run.column("chainage") == pytest.approx([1000.0 + EQUATOR * lon for lon in (0.01, -0.005, 0.025)], abs=1e-6)
    assert list(run.rows()[0]) == ["n", "axis", "station", "chainage", "offset"]
    assert run.column("station")[0] == "2+113.195" and run.column("offset") == pytest.approx([0.0] * 3, abs=1e-8)
    assert run.results["COUNT"] == 3


def test_sign_of_the_offset(toolbox, axis):
    """South of an axis that runs east is right of it. Meridional radius at the equator: a(1 - e^2)."""
    metre = 57.29577951308232 / (6378137.0 * (1 - 0.0066943799901413165))
    points = toolbox.points([{"at": (0.01, -25 * metre)}, {"at": (0.01, 25 * metre)}])
    run = toolbox.run("measurestations", STATIONS=points, AXIS=axis)
    assert run.column("offset") == pytest.approx([25.0, -25.0], abs=1e-6)


def test_no_height_is_needed_and_z_serves(toolbox, axis):
    points = toolbox.points([{"at": (0.01, 0.0, 1000.0)}], kind="PointZ")
    run = toolbox.run("measurestations", STATIONS=points, AXIS=axis)
    assert run.column("chainage") == [pytest.approx(EQUATOR * 0.01 * (1 + 1000.0 / 6378137.0), abs=1e-6)]
    assert "chainage height 1000.0000 m (median of the heights, standing in for ellipsoidal ones)" in run.said
    flat = toolbox.run("measurestations", STATIONS=toolbox.points([{"at": (0.01, 0.0)}]), AXIS=axis)
    assert flat.column("chainage") == [pytest.approx(EQUATOR * 0.01, abs=1e-6)]
    assert "(on the ellipsoid, since no heights are known)" in flat.said


def test_heights_of_a_column_serve_as_those_of_z(toolbox, axis):
    """Their median is the chainage height, as in the run that compares them; 3,740 m lengthen 2.6 km by 1.5 m."""
    want = pytest.approx(EQUATOR * 0.01 * (1 + 1000.0 / 6378137.0), abs=1e-6)
    for name in ("height", "elev"):
        rows = [{"at": (0.01, 0.0), name: value} for value in (990.0, 1000.0, 1010.0)]
        assert toolbox.run("measurestations", STATIONS=toolbox.points(rows), AXIS=axis).column("chainage") == [want] * 3
    feet = toolbox.points([{"at": (0.01, 0.0), "elev_ft": 1000.0 / 0.3048}])
    run = toolbox.run("measurestations", STATIONS=feet, AXIS=axis)
    assert run.column("chainage") == [pytest.approx(EQUATOR * 0.01 * (1 + 1000.0 / 6378137.0) / 0.3048, abs=1e-5)]


def test_a_column_that_may_be_no_height_is_none(toolbox, axis):
    on_the_ellipsoid = [pytest.approx(EQUATOR * 0.01, abs=1e-6)]
    for columns in ({"level": "ground floor"}, {"elev": 990.0, "elev_m": 1000.0}):
        points = toolbox.points([{"at": (0.01, 0.0), **columns}])
        assert toolbox.run("measurestations", STATIONS=points, AXIS=axis).column("chainage") == on_the_ellipsoid
    named = toolbox.run("measurestations", STATIONS=points, AXIS=axis, HEIGHT_FIELD="elev_m")
    assert "chainage height 1000.0000 m" in named.said


@pytest.mark.parametrize(
    "kind, shape, want",
    [
        ("Point", "Point (0.01 0.0001)", (None, None)),
        ("PointZ", "PointZ (0.01 0.0001 7)", (7.0, None)),
        ("PointM", "PointM (0.01 0.0001 9)", (None, 9.0)),
        ("PointZM", "PointZM (0.01 0.0001 7 9)", (7.0, 9.0)),
        ("MultiPoint", "MultiPoint ((0.01 0.0001))", (None, None)),
        ("MultiPointZM", "MultiPointZM ((0.01 0.0001 7 9))", (7.0, 9.0)),
    ],
)
def test_onto_the_axis_with_all_a_point_carries(toolbox, axis, tmp_path, kind, shape, want):
    points = toolbox.points([{"at": shape, "n": 1}], kind=kind)
    for output in ("memory:", str(tmp_path / "out.gpkg")):
        run = toolbox.run(
            "measurestations", STATIONS=points, AXIS=axis, ONTO_AXIS=True, CHAINAGE_HEIGHT=0.0, OUTPUT=output
        )
        geometry = next(run.layer().getFeatures()).geometry()
        assert geometry.wkbType() == points.wkbType() == run.layer().wkbType()
        shape_ = geometry.constGet()
        point = shape_.geometryN(0) if geometry.isMultipart() else shape_
        assert (point.x(), point.y()) == pytest.approx((0.01, 0.0), abs=1e-9)
        assert (point.z() if want[0] else None, point.m() if want[1] else None) == want
    left = toolbox.run("measurestations", STATIONS=points, AXIS=axis)
    assert next(left.layer().getFeatures()).geometry().asWkt() == next(points.getFeatures()).geometry().asWkt()


def test_onto_the_axis_leaves_points_that_are_off_it(toolbox, axis):
    points = toolbox.points([{"at": (0.01, 0.0)}, {"at": (0.01, 0.5)}])
    run = toolbox.run("measurestations", STATIONS=points, AXIS=axis, ONTO_AXIS=True)
    assert [f.geometry().asPoint().y() for f in run.layer().getFeatures()] == [0.0, 0.5]
    assert run.results["COUNT"] == 1 and run.column("chainage")[1] is None and run.column("station")[1] is None


def test_equally_near_axes(toolbox):
    axes = toolbox.lines(
        [
            {"at": [(0.0, 0.0), (0.01, 0.0)], "name": "a"},
            {"at": [(0.0, 0.0), (0.0, 0.01)], "name": "b"},
            {"at": [(0.02, 0.0), (0.03, 0.0)], "name": "c"},
        ]
    )
    run = toolbox.run("measurestations", STATIONS=toolbox.points([{"at": (0.0, 0.0)}]), AXIS=axes)
    assert run.column("axis") == ["a", "b"] and run.results["COUNT"] == 2
    assert "Axis 'c': no point belongs to it." in run.info


def test_axis_named_by_the_point(toolbox):
    axes = toolbox.lines(
        [{"at": [(0.0, 0.0), (0.01, 0.0)], "name": "a"}, {"at": [(0.0, 0.0), (0.0, 0.01)], "name": "b"}]
    )
    points = toolbox.points([{"at": (0.0002, 0.0), "arm": "b"}])
    run = toolbox.run("measurestations", STATIONS=points, AXIS=axes, STATION_AXIS_FIELD="arm")
    assert run.column("axis") == ["b"] and run.column("offset") == [pytest.approx(EQUATOR * 0.0002, abs=1e-6)]


def test_across_the_antimeridian(toolbox):
    axis = toolbox.lines([{"at": [(179.99, 0.0), (-179.99, 0.0)], "name": "line"}])
    points = toolbox.points([{"at": (180.0, 0.0)}, {"at": (-180.0, 0.0)}, {"at": (-179.995, 0.0)}])
    run = toolbox.run("measurestations", STATIONS=points, AXIS=axis)
    assert run.column("chainage") == pytest.approx([EQUATOR * 0.01, EQUATOR * 0.01, EQUATOR * 0.015], abs=1e-6)


def test_place_and_measure_give_the_list_back(toolbox, axis):
    rows = [{"station": f"{k}+{137 * k:03d}", "offset": 1.5 * k} for k in range(2)]
    rows.append({"station": "-0+020", "offset": -3.0})
    placed = toolbox.run("placestations", INPUT=toolbox.table(rows), AXIS=axis, CHAINAGE_HEIGHT=500.0)
    measured = toolbox.run("measurestations", STATIONS=placed.layer(), AXIS=axis, CHAINAGE_HEIGHT=500.0)
    assert measured.column("station") == [row["station"] for row in rows]
    assert measured.column("offset") == pytest.approx([row["offset"] for row in rows], abs=1e-7)
