"""designheights through the registry: designs, units, axes, height systems, fields and layers of many kinds."""

import json
import math

import pytest

pyproj = pytest.importorskip("pyproj")
FOOT, US_FOOT = 0.3048, 1200 / 3937
RADIUS = 6_380_000.0


def geodesic_points(lat, lon, azimuth, distances):
    geod = pyproj.Geod(ellps="WGS84")
    places = [geod.fwd(lon, lat, azimuth, s)[:2] for s in distances]
    return [(float(x), float(y)) for x, y in places]


@pytest.fixture
def line(toolbox):
    """Nine stations every 250 m of ellipsoid from 50° N, 8° E to the north-east, all 100 m high, and their axis."""
    places = geodesic_points(50.0, 8.0, 40.0, [250.0 * k for k in range(9)])
    stations = toolbox.points([{"at": at, "name": f"P{k}", "height": 100.0} for k, at in enumerate(places)])
    return {"STATIONS": stations, "AXIS": toolbox.lines([{"at": [places[0], places[-1]], "name": "line"}])}


def column(run, name):
    return dict(zip(run.column("name"), run.column(name)))


def test_two_layers_are_enough(toolbox, line):
    run = toolbox.run("designheights", **line)
    rows = run.rows()
    assert list(rows[0]) == [
        "name",
        "height",
        "axis",
        "station",
        "chainage",
        "offset",
        "design_h",
        "residual",
        "adjust",
        "flat_h",
        "curv_eff",
        "status",
    ]
    assert [row["status"] for row in rows] == ["no tolerance"] * 9
    # s^2/8R of 2000 m: a chord lies 78 mm below the level surface at its middle.
    assert rows[4]["design_h"] == pytest.approx(100.0 - 2000.0**2 / 8 / RADIUS, abs=2e-4)
    assert rows[4]["residual"] == pytest.approx(2000.0**2 / 8 / RADIUS, abs=2e-4)
    assert run.results["COUNT"] == 9 and run.results["WITHIN"] == 0
    residuals = [row["residual"] for row in rows]
    assert run.results["MAX_ABS"] == max(map(abs, residuals))
    assert run.results["RMS"] == pytest.approx(math.sqrt(sum(r * r for r in residuals) / 9), rel=1e-12)


def test_a_straight_structure_rises_on_both_sides_of_its_tangent_point(toolbox, line):
    run = toolbox.run("designheights", DESIGN="tangent", HEIGHT_A=100.0, CHAINAGE_A="1000", **line)
    effects = run.column("curv_eff")
    assert effects[0] == pytest.approx(1000.0**2 / 2 / RADIUS, abs=2e-4)
    assert effects[8] == pytest.approx(effects[0], abs=1e-4)
    assert min(effects) == pytest.approx(0.0, abs=1e-6)
    assert "drop" not in run.said


def test_tangent_default_is_the_station_nearest_the_middle(toolbox, line):
    (summary,) = toolbox.run("designheights", DESIGN="tangent", SUMMARY="memory:", **line).rows("SUMMARY")
    assert summary["chain_a"] == pytest.approx(1000.0 * (1 + 100.0 / RADIUS), abs=1e-3) and summary["chain_b"] is None


@pytest.mark.parametrize(
    "design, want",
    [
        ("level", {"P0": 100.0, "P8": 100.0}),
        ("grade", {"P0": 100.0, "P8": 100.0}),
        ("inclined", {"P0": 100.0, "P8": 100.0 + 0.01 * 2000.0 + 2000.0**2 / 2 / RADIUS}),
    ],
)
def test_designs(toolbox, line, design, want):
    run = toolbox.run("designheights", DESIGN=design, SLOPE=0.01 if design == "inclined" else None, **line)
    heights = column(run, "design_h")
    for name, height in want.items():
        assert heights[name] == pytest.approx(height, abs=2e-3)
    if design != "inclined":
        assert run.column("curv_eff") == [0.0] * 9


def test_grade_with_a_slope(toolbox, line):
    run = toolbox.run("designheights", DESIGN="grade", CHAINAGE_A="0+000", HEIGHT_A=90.0, SLOPE=-0.002, **line)
    for row in run.rows():
        assert row["design_h"] == pytest.approx(90.0 - 0.002 * row["chainage"], abs=1e-9)


def test_refraction_takes_its_share_of_the_effect(toolbox, line):
    plain = toolbox.run("designheights", **line).column("curv_eff")
    bent = toolbox.run("designheights", REFRACTION=0.13, **line).column("curv_eff")
    assert bent == pytest.approx([0.87 * effect for effect in plain], abs=1e-9)


def test_earth_models(toolbox, line):
    exact = toolbox.run("designheights", **line).column("design_h")
    sphere = toolbox.run("designheights", EARTH="sphere", **line)
    assert sphere.column("design_h") == pytest.approx(exact, abs=1e-4) and "for comparison only" in sphere.said
    small = toolbox.run("designheights", EARTH="sphere", RADIUS=RADIUS / 2, **line)
    assert small.column("curv_eff")[4] == pytest.approx(2 * sphere.column("curv_eff")[4], rel=2e-3)
    flat = toolbox.run("designheights", EARTH="flat", **line)
    assert flat.column("curv_eff") == [0.0] * 9


# --- units


def test_feet_in_and_out(toolbox, line):
    metres = toolbox.run("designheights", TOLERANCE=0.05, **line)
    rows = [{"at": tuple(f.geometry().asPoint()), "height": 100.0 / FOOT} for f in line["STATIONS"].getFeatures()]
    feet = toolbox.run(
        "designheights",
        STATIONS=toolbox.points(rows),
        AXIS=line["AXIS"],
        HEIGHT_UNIT="foot",
        TOLERANCE=0.05 / FOOT,
        SUMMARY="memory:",
    )
    for one, other in zip(metres.rows(), feet.rows()):
        for name in ("chainage", "offset", "design_h", "residual", "adjust", "flat_h", "curv_eff"):
            assert other[name] * FOOT == pytest.approx(one[name], abs=1e-8), name
        assert other["status"] == one["status"]
    assert feet.rows()[8]["station"].startswith("65+61.")
    assert feet.rows("SUMMARY")[0]["rms"] == pytest.approx(metres.results["RMS"] / FOOT, rel=1e-9)
    assert feet.results["MAX_ABS"] == pytest.approx(metres.results["MAX_ABS"] / FOOT, rel=1e-9)
    assert "in ft, chainages in ft" in feet.said and "metre" not in feet.said


def test_chainage_unit_apart_from_height_unit(toolbox, line):
    metres = toolbox.run("designheights", CHAINAGE_HEIGHT=0.0, **line)
    both = toolbox.run("designheights", CHAINAGE_HEIGHT=0.0, CHAINAGE_UNIT="us_foot", **line)
    assert both.column("design_h") == pytest.approx(metres.column("design_h"), abs=1e-9)
    assert [s * US_FOOT for s in both.column("chainage")] == pytest.approx(metres.column("chainage"), abs=1e-8)


def test_us_foot_is_not_the_foot(toolbox, line):
    """2 ppm: 4 mm in 2 km."""
    chainages = [
        toolbox.run("designheights", CHAINAGE_UNIT=unit, **line).column("chainage")[8] for unit in ("foot", "us_foot")
    ]
    assert chainages[0] / chainages[1] - 1 == pytest.approx(2e-6, rel=1e-3)


def test_chainage_height_lengthens_the_structure(toolbox, line):
    low = toolbox.run("designheights", CHAINAGE_HEIGHT=0.0, **line).column("chainage")[8]
    high = toolbox.run("designheights", CHAINAGE_HEIGHT=1000.0, **line).column("chainage")[8]
    assert low == pytest.approx(2000.0, abs=1e-6) and high / low - 1 == pytest.approx(1000.0 / RADIUS, rel=3e-3)


def test_chainage_start_and_equations(toolbox, line):
    run = toolbox.run("designheights", CHAINAGE_START="5+000", EQUATIONS="5+900 = 6+000", CHAINAGE_HEIGHT=0.0, **line)
    assert run.column("station") == ["5+000", "5+250", "5+500", "5+750", "6+100", "6+350", "6+600", "6+850", "7+100"]
    assert run.column("chainage") == pytest.approx([5000.0 + 250.0 * k for k in range(9)], abs=1e-6)


def test_control_in_the_notation_of_the_equations(toolbox, line):
    run = toolbox.run(
        "designheights",
        DESIGN="tangent",
        CHAINAGE_A="6+100",
        CHAINAGE_START="5+000",
        SUMMARY="memory:",
        EQUATIONS="5+900=6+000",
        CHAINAGE_HEIGHT=0.0,
        **line,
    )
    assert run.rows("SUMMARY")[0]["chain_a"] == pytest.approx(6000.0, abs=1e-6)


# --- axes


@pytest.fixture
def corner(toolbox):
    """Two arms from one corner, four stations on each, the corner once."""
    east, north = (geodesic_points(50.0, 8.0, azimuth, [0.0, 300.0, 600.0, 900.0]) for azimuth in (90.0, 0.0))
    rows = [{"at": at, "fid": k, "height": 100.0 + 0.001 * k} for k, at in enumerate(east + north[1:], 1)]
    axes = [{"at": [east[0], east[-1]], "name": "east"}, {"at": [north[0], north[-1]], "name": "north"}]
    return {"STATIONS": toolbox.points(rows), "AXIS": toolbox.lines(axes)}


def test_corner_station_is_a_row_on_each_axis(toolbox, corner, tmp_path):
    """In a GeoPackage the copied row number would occur twice."""
    saved = toolbox.saved(corner["STATIONS"], tmp_path / "in.gpkg")
    run = toolbox.run("designheights", STATIONS=saved, AXIS=corner["AXIS"], OUTPUT=str(tmp_path / "out.gpkg"))
    rows = run.rows()
    assert [(row["axis"], row["station"]) for row in rows[:2]] == [("east", "0+000"), ("north", "0+000")]
    assert len(rows) == 8 and len({row["fid"] for row in rows}) == 8


def test_row_numbers_stay_where_each_row_is_once(toolbox, line, tmp_path):
    saved = toolbox.saved(line["STATIONS"], tmp_path / "in.gpkg")
    assert saved.dataProvider().deleteFeatures([2, 3])
    run = toolbox.run("designheights", STATIONS=saved, AXIS=line["AXIS"], OUTPUT=str(tmp_path / "out.gpkg"))
    assert run.column("fid") == [1, 4, 5, 6, 7, 8, 9]


@pytest.mark.parametrize("numbers, types", [([1, 1, 2], None), ([1, None, 2], None), (["a", "b", "b"], None)])
def test_a_column_fid_of_the_users_own(toolbox, numbers, types, tmp_path):
    """A GeoPackage keeps its row number in the column fid; a merged table has one that is not unique."""
    stations, axis = toolbox.straight(3)
    rows = [{"at": (500000.0 + 100 * k, 5540000.0), "height": 5.0, "fid": v} for k, v in enumerate(numbers)]
    run = toolbox.run(
        "designheights", STATIONS=toolbox.points(rows, "EPSG:32631"), AXIS=axis, OUTPUT=str(tmp_path / "out.gpkg")
    )
    assert run.column("fid_2") == numbers and run.column("fid") == [1, 2, 3]


def test_names_that_differ_by_case_only(toolbox, tmp_path):
    _, axis = toolbox.straight(3)
    rows = [{"at": (500000.0 + 100 * k, 5540000.0), "height": 5.0, "Remark": "a", "remark": "b"} for k in range(3)]
    run = toolbox.run(
        "designheights", STATIONS=toolbox.points(rows, "EPSG:32631"), AXIS=axis, OUTPUT=str(tmp_path / "out.gpkg")
    )
    assert run.column("Remark") == ["a"] * 3 and run.column("remark_2") == ["b"] * 3


def test_axis_named_at_the_station(toolbox, corner):
    layer = corner["STATIONS"]
    rows = [
        {"at": tuple(f.geometry().asPoint()), "height": f["height"], "arm": "north" if k == 0 else None}
        for k, f in enumerate(layer.getFeatures())
    ]
    run = toolbox.run(
        "designheights",
        STATIONS=toolbox.points(rows, types={"arm": "string"}),
        AXIS=corner["AXIS"],
        STATION_AXIS_FIELD="arm",
    )
    assert run.column("axis") == ["north"] + ["east"] * 3 + ["north"] * 3


def test_field_axis_that_names_none_is_not_taken_for_it(toolbox, corner):
    rows = [
        {"at": tuple(f.geometry().asPoint()), "height": 5.0, "axis": "B7"} for f in corner["STATIONS"].getFeatures()
    ]
    run = toolbox.run("designheights", STATIONS=toolbox.points(rows), AXIS=corner["AXIS"])
    assert len(run.rows()) == 8 and "names an axis" in run.said


@pytest.mark.parametrize(
    "fields, given, name",
    [
        ({"axis": "a", "name": "n", "id": "i"}, None, "a"),
        ({"name": "n", "id": "i"}, None, "n"),
        ({"id": "i"}, None, "1"),
        ({"id": "i", "NAME": "n"}, None, "n"),
        ({"name": "n", "id": 7}, "id", "7"),
        ({"name": None, "id": "i"}, None, "1"),
    ],
)
def test_name_of_the_axis(toolbox, line, fields, given, name):
    geometry = next(line["AXIS"].getFeatures()).geometry().asWkt(12)
    axis = toolbox.lines([{"at": geometry, **fields}], types={"name": "string"} if "name" in fields else None)
    run = toolbox.run("designheights", STATIONS=line["STATIONS"], AXIS=axis, AXIS_FIELD=given)
    assert set(run.column("axis")) == {name}


def test_axis_layer_overrides_the_form(toolbox, corner):
    # Read as the layer writes them: name and design as text, the rest as numbers or text.
    rows = [
        {
            "at": f.geometry().asWkt(12),
            "name": f["name"],
            "design": design,
            "chain_a": "0+300",
            "height_a": 101.0,
            "slope": 0.002,
            "tolerance": 0.05,
            "chain_h": 200.0,
            "chain_0": "1+000",
        }
        for f, design in zip(corner["AXIS"].getFeatures(), ("level", None))
    ]
    for name in list(rows[1])[3:]:
        rows[1][name] = None
    run = toolbox.run(
        "designheights",
        STATIONS=corner["STATIONS"],
        AXIS=toolbox.lines(rows),
        SUMMARY="memory:",
        DESIGN="grade",
        SLOPE=0.001,
        CHAINAGE_A="0+300",
        HEIGHT_A=99.0,
        TOLERANCE=10.0,
    )
    refused = "slope" in run.said
    east, north = run.by("axis", "SUMMARY")["east"], run.by("axis", "SUMMARY")["north"]
    assert (east["design"], east["chain_a"], east["height_a"], east["tolerance"], east["chain_h"]) == (
        "level",
        300.0,
        101.0,
        0.05,
        200.0,
    )
    assert (north["design"], north["chain_a"], north["height_a"], north["tolerance"], north["slope"]) == (
        "grade",
        300.0,
        99.0,
        10.0,
        0.001,
    )
    assert run.by("axis")["east"]["station"].startswith("1+900") and refused
    assert "Axis 'east': the axis layer overrides" in run.said and "Axis 'north': the axis layer" not in run.said


def test_fields_of_that_name_do_not_count_without_a_field_design(toolbox, line):
    """Many a road layer has a slope in percent."""
    geometry = next(line["AXIS"].getFeatures()).geometry().asWkt(12)
    axis = toolbox.lines([{"at": geometry, "name": "line", "slope": 250.0, "tolerance": -1.0, "chain_a": "x"}])
    run = toolbox.run("designheights", STATIONS=line["STATIONS"], AXIS=axis)
    assert run.column("design_h") == toolbox.run("designheights", **line).column("design_h")


def test_axis_the_other_way_round(toolbox, line):
    """Chainage runs from the other end and offsets change their sign; the design is the same."""
    forward = toolbox.run("designheights", CHAINAGE_HEIGHT=0.0, **line)
    places = next(line["AXIS"].getFeatures()).geometry().asPolyline()
    axis = toolbox.lines([{"at": [tuple(p) for p in reversed(places)], "name": "line"}])
    backward = toolbox.run("designheights", STATIONS=line["STATIONS"], AXIS=axis, CHAINAGE_HEIGHT=0.0)
    length = forward.column("chainage")[8]
    assert [length - s for s in backward.column("chainage")] == pytest.approx(forward.column("chainage"), abs=1e-6)
    assert backward.column("design_h") == pytest.approx(forward.column("design_h"), abs=1e-9)


def test_offset_is_positive_to_the_right(toolbox, line):
    (at,) = geodesic_points(50.0, 8.0, 40.0, [500.0])
    (right,) = geodesic_points(at[1], at[0], 130.0, [7.0])
    rows = [{"at": right, "height": 100.0}, {"at": at, "height": 100.0}]
    run = toolbox.run(
        "designheights",
        STATIONS=toolbox.points(rows),
        AXIS=line["AXIS"],
        CHAINAGE_HEIGHT=0.0,
        HEIGHT_A=100.0,
        CHAINAGE_A="0",
        CHAINAGE_B="2000",
        HEIGHT_B=100.0,
    )
    assert run.column("offset") == pytest.approx([7.0, 0.0], abs=1e-4)


def test_kinked_axis_warns(toolbox):
    places = [(8.0, 50.0), (8.01, 50.0), (8.02, 50.002)]
    stations = toolbox.points([{"at": at, "height": 10.0} for at in places])
    run = toolbox.run("designheights", STATIONS=stations, AXIS=toolbox.lines([{"at": places, "name": "bent"}]))
    assert any("'bent' bends" in text for text in run.warnings)


# --- layers of many kinds


@pytest.mark.parametrize("crs", ["EPSG:32632", "EPSG:4258", "EPSG:3857", "EPSG:4979", "EPSG:25832"])
def test_axis_in_another_system(toolbox, line, crs):
    """Same place, other system or a datum that differs by less than is known: same chainages and heights."""
    from qgis.core import QgsCoordinateReferenceSystem, QgsCoordinateTransform, QgsProject

    transform = QgsCoordinateTransform(
        QgsCoordinateReferenceSystem("EPSG:4326"), QgsCoordinateReferenceSystem(crs), QgsProject.instance()
    )
    geometry = next(line["AXIS"].getFeatures()).geometry()
    geometry.transform(transform)
    run = toolbox.run("designheights", STATIONS=line["STATIONS"], AXIS=toolbox.lines([{"at": geometry.asWkt(12)}], crs))
    own = toolbox.run("designheights", **line)
    assert run.column("chainage") == pytest.approx(own.column("chainage"), abs=1e-3)
    assert run.column("design_h") == pytest.approx(own.column("design_h"), abs=1e-6)


@pytest.mark.parametrize("crs", ["EPSG:32632", "EPSG:31467"])
def test_stations_in_a_projection(toolbox, line, crs):
    """Both layers projected: the map's scale must not reach chainages; Bessel's ellipsoid makes another line."""
    from qgis.core import QgsCoordinateReferenceSystem, QgsCoordinateTransform, QgsProject

    base = "EPSG:4326" if crs == "EPSG:32632" else "EPSG:4314"
    transform = QgsCoordinateTransform(
        QgsCoordinateReferenceSystem(base), QgsCoordinateReferenceSystem(crs), QgsProject.instance()
    )
    moved = {}
    for key, layer in line.items():
        rows = []
        for feature in layer.getFeatures():
            geometry = feature.geometry()
            geometry.transform(transform)
            rows.append(
                {"at": geometry.asWkt(12), "name": feature["name"], **({"height": 100.0} if key == "STATIONS" else {})}
            )
        moved[key] = toolbox.layer(key, "Point" if key == "STATIONS" else "LineString", crs, rows)
    run = toolbox.run("designheights", CHAINAGE_HEIGHT=0.0, **moved)
    ellipsoid = pyproj.Geod(ellps="WGS84" if base == "EPSG:4326" else "bessel")
    ends = [tuple(p) for p in next(line["AXIS"].getFeatures()).geometry().asPolyline()]
    length = ellipsoid.inv(*ends[0], *ends[1])[2]
    assert run.column("chainage")[8] == pytest.approx(length, abs=1e-4)
    assert run.layer().crs().authid() == crs


def test_heights_from_z_and_z_and_m_stay(toolbox, line):
    places = [f.geometry().asPoint() for f in line["STATIONS"].getFeatures()]
    rows = [{"at": f"PointZM ({p.x()!r} {p.y()!r} 100 {k})"} for k, p in enumerate(places)]
    run = toolbox.run("designheights", STATIONS=toolbox.points(rows, kind="PointZM"), AXIS=line["AXIS"])
    own = toolbox.run("designheights", **line)
    assert run.column("design_h") == pytest.approx(own.column("design_h"), abs=1e-9)
    shapes = [f.geometry().constGet() for f in run.layer().getFeatures()]
    assert [(s.z(), s.m()) for s in shapes] == [(100.0, float(k)) for k in range(9)] and "Z" in run.said


def test_point_without_z_has_no_height(toolbox, line):
    places = [f.geometry().asPoint() for f in line["STATIONS"].getFeatures()]
    rows = [{"at": f"PointZ ({p.x()!r} {p.y()!r} {'nan' if k == 4 else 100})"} for k, p in enumerate(places)]
    stations = toolbox.points(rows[:4] + [{"at": (places[4].x(), places[4].y(), math.nan)}] + rows[5:], kind="PointZ")
    assert toolbox.run("designheights", STATIONS=stations, AXIS=line["AXIS"]).column("status")[4] == "no height"


def test_multipoints_and_multilines_of_one_part(toolbox, line, tmp_path):
    places = [f.geometry().asPoint() for f in line["STATIONS"].getFeatures()]
    stations = toolbox.points(
        [{"at": f"MultiPoint(({p.x()!r} {p.y()!r}))", "height": 100.0} for p in places], kind="MultiPoint"
    )
    middle = places[4]
    halves = (
        f"MultiLineString(({places[0].x()!r} {places[0].y()!r}, {middle.x()!r} {middle.y()!r}),"
        f"({middle.x()!r} {middle.y()!r}, {places[8].x()!r} {places[8].y()!r}))"
    )
    axis = toolbox.lines([{"at": halves}], kind="MultiLineString")
    run = toolbox.run("designheights", STATIONS=stations, AXIS=axis, OUTPUT=str(tmp_path / "out.gpkg"))
    own = toolbox.run("designheights", **line)
    assert run.column("design_h") == pytest.approx(own.column("design_h"), abs=1e-7)
    assert run.layer().wkbType() == stations.wkbType()


def test_selected_stations_only(toolbox, line):
    from qgis.core import QgsProcessingFeatureSourceDefinition, QgsProject

    layer = line["STATIONS"]
    QgsProject.instance().addMapLayer(layer, False)
    try:
        layer.selectByIds([f.id() for f in layer.getFeatures()][2:6])
        source = QgsProcessingFeatureSourceDefinition(layer.id(), True)
        run = toolbox.run("designheights", STATIONS=source, AXIS=line["AXIS"])
        residuals = dict(sorted(column(run, "residual").items()))
        assert list(residuals) == ["P2", "P3", "P4", "P5"]
        assert residuals["P2"] == pytest.approx(0.0, abs=1e-9) and residuals["P5"] == pytest.approx(0.0, abs=1e-9)
    finally:
        QgsProject.instance().removeMapLayer(layer.id())


def test_old_results_in_the_input_are_replaced(toolbox, line, tmp_path):
    """A second run on the first one's output: the same columns, not a second set."""
    first = toolbox.run("designheights", TOLERANCE=0.01, OUTPUT=str(tmp_path / "one.gpkg"), **line)
    second = toolbox.run("designheights", STATIONS=first.layer(), AXIS=line["AXIS"], OUTPUT=str(tmp_path / "two.gpkg"))
    assert list(second.rows()[0]) == list(first.rows()[0])
    assert second.column("status") == ["no tolerance"] * 9 and second.column("residual") == first.column("residual")


def test_equally_named_columns_in_capitals_are_replaced(toolbox, line):
    rows = [
        {"at": tuple(f.geometry().asPoint()), "HEIGHT": 100.0, "Residual": "old", "AXIS": "line"}
        for f in line["STATIONS"].getFeatures()
    ]
    run = toolbox.run("designheights", STATIONS=toolbox.points(rows), AXIS=line["AXIS"])
    assert list(run.rows()[0])[:3] == ["HEIGHT", "axis", "station"] and "Residual" not in run.rows()[0]


def test_heights_as_text_are_read(toolbox, line):
    rows = [
        {"at": tuple(f.geometry().asPoint()), "height": " 100.0 " if k else ""}
        for k, f in enumerate(line["STATIONS"].getFeatures())
    ]
    run = toolbox.run("designheights", STATIONS=toolbox.points(rows), AXIS=line["AXIS"])
    assert run.column("status") == ["no height"] + ["no tolerance"] * 8


# --- reference


def reference_rows(lat, lon, height, system=""):
    lat_, lon_ = math.radians(lat), math.radians(lon)
    normal = (math.cos(lat_) * math.cos(lon_), math.cos(lat_) * math.sin(lon_), math.sin(lat_))
    return {
        "name": "plane",
        "lat0": lat,
        "lon0": lon,
        "h0": height,
        "nx": normal[0],
        "ny": normal[1],
        "nz": normal[2],
        "h_system": "",
        "undul": system,
    }


def test_reference_plane(toolbox, line):
    """The plane that touches at the middle is the tangent design there."""
    middle = list(line["STATIONS"].getFeatures())[4].geometry().asPoint()
    reference = toolbox.table([reference_rows(middle.y(), middle.x(), 100.0)])
    run = toolbox.run("designheights", DESIGN="reference", REFERENCE=reference, SUMMARY="memory:", **line)
    tangent = toolbox.run("designheights", DESIGN="tangent", **line)
    assert run.column("design_h") == pytest.approx(tangent.column("design_h"), abs=1e-7)
    assert run.rows("SUMMARY")[0]["design"] == "reference" and run.rows("SUMMARY")[0]["chain_a"] is None


def test_reference_of_another_height_system_is_refused(toolbox, line):
    reference = toolbox.table([reference_rows(50.0, 8.0, 100.0, "grid")])
    text = toolbox.refusal("designheights", DESIGN="reference", REFERENCE=reference, **line)
    assert "'grid'" in text and "'unknown'" in text and "'plane'" in text


def test_reference_that_is_none(toolbox, line):
    assert "needs a reference" in toolbox.refusal("designheights", DESIGN="reference", **line)
    text = toolbox.refusal("designheights", DESIGN="reference", REFERENCE=toolbox.table([{"name": "x"}], "odd"), **line)
    assert "'odd' is not a reference layer" in text and "lat0" in text
    text = toolbox.refusal(
        "designheights",
        DESIGN="reference",
        EARTH="sphere",
        REFERENCE=toolbox.table([reference_rows(50.0, 8.0, 1.0)]),
        **line,
    )
    assert "ellipsoid" in text


# --- height systems


@pytest.fixture
def geoid(tmp_path):
    """A raster of undulations in latitude and longitude that rises by 1 m per degree of longitude: N = lon - 8 + 40."""
    gdal, osr = pytest.importorskip("osgeo.gdal"), pytest.importorskip("osgeo.osr")
    path = str(tmp_path / "geoid.tif")
    data = gdal.GetDriverByName("GTiff").Create(path, 20, 20, 1, gdal.GDT_Float32)
    data.SetGeoTransform((7.5, 0.05, 0.0, 50.5, 0.0, -0.05))
    system = osr.SpatialReference()
    system.ImportFromEPSG(4326)
    data.SetProjection(system.ExportToWkt())
    import numpy as np

    undulations = 7.5 + 0.05 * (np.arange(20) + 0.5) - 8.0 + 40.0
    data.GetRasterBand(1).WriteArray(np.tile(undulations, (20, 1)).astype("float32"))
    data.GetRasterBand(1).SetNoDataValue(-9999.0)
    data.FlushCache()
    del data
    return path


def test_constant_undulation_changes_the_design_little(toolbox, line):
    """One N for all lifts the chord as a whole; only the radius grows by it."""
    plain = toolbox.run("designheights", UNDULATION="ellipsoidal", **line).column("design_h")
    run = toolbox.run("designheights", UNDULATION="constant", UNDULATION_VALUE=50.0, **line)
    assert run.column("design_h") == pytest.approx(plain, abs=2e-6) and "not known" in run.said


def test_geoid_raster(toolbox, line, geoid):
    run = toolbox.run(
        "designheights", UNDULATION="grid", GEOID=geoid, DESIGN="tangent", CHAINAGE_A="0", HEIGHT_A=100.0, **line
    )
    plain = toolbox.run(
        "designheights", UNDULATION="ellipsoidal", DESIGN="tangent", CHAINAGE_A="0", HEIGHT_A=100.0, **line
    )
    # The geoid's slope goes into the horizon, so that its rise cancels but for what its bending leaves.
    assert run.column("design_h") == pytest.approx(plain.column("design_h"), abs=2e-4)
    assert "undulations from the raster 'geoid'" in run.said
    chord = toolbox.run("designheights", UNDULATION="grid", GEOID=geoid, **line).column("design_h")
    assert chord == pytest.approx(toolbox.run("designheights", **line).column("design_h"), abs=2e-4)


def test_undulation_field_equals_the_raster(toolbox, line, geoid):
    rows = [
        {"at": tuple(f.geometry().asPoint()), "height": 100.0, "undulation": f.geometry().asPoint().x() + 32.0}
        for f in line["STATIONS"].getFeatures()
    ]
    stations = toolbox.points(rows)
    field = toolbox.run("designheights", STATIONS=stations, AXIS=line["AXIS"], UNDULATION="field")
    raster = toolbox.run("designheights", STATIONS=stations, AXIS=line["AXIS"], UNDULATION="grid", GEOID=geoid)
    assert field.column("design_h") == pytest.approx(raster.column("design_h"), abs=1e-5)


def test_grid_of_the_projection_library(toolbox, line):
    run = toolbox.run("designheights", UNDULATION="grid", DESIGN="tangent", **line)
    assert "EGM96" in run.said and "horizon of the geoid" in run.said
    # The geoid bends by far less than a millimetre here: the tangent is that of the ellipsoid to a few millimetres.
    plain = toolbox.run("designheights", UNDULATION="ellipsoidal", DESIGN="tangent", **line)
    assert run.column("design_h") == pytest.approx(plain.column("design_h"), abs=0.02)


def test_unknown_undulation_is_said(toolbox, line):
    assert "undulation is not known" in toolbox.run("designheights", **line).said
    assert "The heights are ellipsoidal." in toolbox.run("designheights", UNDULATION="ellipsoidal", **line).said


@pytest.mark.parametrize(
    "given, said",
    [
        ({"UNDULATION": "constant"}, "UNDULATION_VALUE"),
        ({"UNDULATION": "field"}, "no field 'undulation'"),
        ({"UNDULATION": "field", "UNDULATION_FIELD": "nope"}, "no field 'nope'"),
    ],
)
def test_undulation_without_its_source(toolbox, line, given, said):
    assert said in toolbox.refusal("designheights", **given, **line)


def test_undulation_missing_at_one_station(toolbox, line):
    rows = [
        {"at": tuple(f.geometry().asPoint()), "height": 100.0, "n": None if k == 3 else 40.0}
        for k, f in enumerate(line["STATIONS"].getFeatures())
    ]
    text = toolbox.refusal(
        "designheights", STATIONS=toolbox.points(rows), AXIS=line["AXIS"], UNDULATION="field", UNDULATION_FIELD="n"
    )
    assert "'stations', row 4" in text and "undulation" in text


def test_geoid_raster_that_does_not_reach(toolbox, geoid):
    stations, axis = toolbox.straight()
    assert "does not reach" in toolbox.refusal(
        "designheights", STATIONS=stations, AXIS=axis, UNDULATION="grid", GEOID=geoid
    )


def test_stations_on_a_datum_of_their_own_get_no_global_geoid(toolbox):
    stations, axis = toolbox.straight(crs="EPSG:31467")
    text = toolbox.refusal("designheights", STATIONS=stations, AXIS=axis, UNDULATION="grid")
    assert "datum" in text and "'stations'" in text


# --- the record


def test_record_lists_what_was_used(toolbox, line, tmp_path):
    run = toolbox.run(
        "designheights", TOLERANCE=0.05, OUTPUT=str(tmp_path / "out.gpkg"), SUMMARY=str(tmp_path / "sum.gpkg"), **line
    )
    record = json.loads(run.rows("SUMMARY")[0]["record"])
    assert record["entry"] == "tautline:designheights" and record["parameters"]["TOLERANCE"] == 0.05
    assert set(record["versions"]) == {"Tautline", "QGIS", "PROJ", "pyproj"}
    first, last = record["axes"]["line"]["controls"]
    assert (first["height"], last["height"]) == (100.0, 100.0) and not first["typed"]
    layer = run.layer()
    assert layer.loadDefaultStyle()[1]
    assert json.loads(layer.customProperty("tautline/record"))["axes"]["line"]["controls"] == [first, last]


# --- layers too large to be kept in memory are read twice


@pytest.fixture
def read_twice(monkeypatch):
    from tautline.algorithms.boundary import tables

    monkeypatch.setattr(tables, "MOST_KEPT", 0)


def test_second_reading_gives_the_same(toolbox, line, corner, tmp_path, read_twice, monkeypatch):
    saved = toolbox.saved(line["STATIONS"], tmp_path / "in.gpkg")
    run = toolbox.run("designheights", STATIONS=saved, AXIS=line["AXIS"])
    twice = toolbox.run("designheights", **corner)
    list_ = toolbox.table([{"station": s, "height": 5.0, "remark": s} for s in ("0+100", "x", "0+200", "y")])
    placed = toolbox.run("placestations", INPUT=list_, AXIS=line["AXIS"], REJECTED="memory:")
    moved = toolbox.run("measurestations", STATIONS=saved, AXIS=line["AXIS"], ONTO_AXIS=True)
    assert placed.column("remark") == ["0+100", "0+200"] and placed.column("remark", "REJECTED") == ["x", "y"]
    monkeypatch.undo()
    assert run.rows() == toolbox.run("designheights", STATIONS=saved, AXIS=line["AXIS"]).rows()
    assert twice.rows() == toolbox.run("designheights", **corner).rows() and len(twice.rows()) == 8
    kept = toolbox.run("measurestations", STATIONS=saved, AXIS=line["AXIS"], ONTO_AXIS=True)
    assert [f.geometry().asWkt(9) for f in moved.layer().getFeatures()] == [
        f.geometry().asWkt(9) for f in kept.layer().getFeatures()
    ]


@pytest.mark.parametrize("change", ["DELETE FROM stations WHERE fid = 4", "UPDATE stations SET fid = 99 WHERE fid = 9"])
def test_layer_that_changes_between_the_readings(toolbox, line, tmp_path, read_twice, monkeypatch, change):
    """Rows would get the heights of others."""
    from tautline.algorithms.boundary import output_rows

    ogr = pytest.importorskip("osgeo.ogr")
    ogr.UseExceptions()
    saved = toolbox.saved(line["STATIONS"], tmp_path / "in.gpkg", "stations")
    write = output_rows.write_rows

    def late(*given):
        file = ogr.Open(str(tmp_path / "in.gpkg"), 1)
        file.ExecuteSQL(change)
        del file
        return write(*given)

    monkeypatch.setattr(output_rows, "write_rows", late)
    text = toolbox.refusal("designheights", STATIONS=saved, AXIS=line["AXIS"], OUTPUT=str(tmp_path / "out.gpkg"))
    assert "'stations' changed while it was read; run again." in text and not (tmp_path / "out.gpkg").exists()


def test_grads_are_no_degrees(toolbox):
    """A chord on a map whose latitudes count in grads from Paris (EPSG:27572) has the chainages and design
    heights of the same places in degrees from Greenwich (EPSG:4275, by PROJ).
    """
    import pyproj

    x, y = [600000.0 + 300.0 * k for k in range(11)], 2200000.0
    stations = [{"at": (at, y), "height": 100.0} for at in x]
    way = pyproj.Transformer.from_crs("EPSG:27572", "EPSG:4275", always_xy=True)
    there = [{"at": way.transform(at, y), "height": 100.0} for at in x]
    chord = {"HEIGHT_A": 100.0, "HEIGHT_B": 100.0}
    on_map = toolbox.run(
        "designheights",
        STATIONS=toolbox.points(stations, "EPSG:27572"),
        AXIS=toolbox.lines([{"at": [(x[0], y), (x[-1], y)], "name": "line"}], "EPSG:27572"),
        **chord,
    )
    in_degrees = toolbox.run(
        "designheights",
        STATIONS=toolbox.points(there, "EPSG:4275"),
        AXIS=toolbox.lines([{"at": [there[0]["at"], there[-1]["at"]], "name": "line"}], "EPSG:4275"),
        **chord,
    )
    chainages = on_map.column("chainage")
    assert chainages[-1] == pytest.approx(3000.0, abs=1.0)
    assert chainages == pytest.approx(in_degrees.column("chainage"), abs=1e-5)
    assert on_map.column("design_h") == pytest.approx(in_degrees.column("design_h"), abs=1e-8)
    # Half-way the chord lies s^2 / 8R below the level surface through its ends.
    assert min(on_map.column("residual") + [0.0]) == pytest.approx(0.0, abs=1e-9)
    assert max(on_map.column("residual")) == pytest.approx(3000.0**2 / 8.0 / 6.38e6, abs=1e-3)


def test_a_tangent_is_level_in_the_heights_it_is_compared_with(toolbox):
    """Near 36 N 140 E, EGM96 (bilinear differences over two cells: 33 mm in 3 km): the design rises by s^2/2R on both
    sides of A alike, since N and its slope are of one surface."""
    lat, points = 36.0, []
    for k in range(-3, 4):
        points.append({"at": (140.0, lat + k * 500.0 / 110_950.0), "height": 20.0})
    stations, axis = toolbox.points(points), toolbox.lines([{"at": [points[0]["at"], points[-1]["at"]], "name": "a"}])
    run = toolbox.run(
        "designheights",
        STATIONS=stations,
        AXIS=axis,
        DESIGN="tangent",
        UNDULATION="grid",
        CHAINAGE_A="1500",
        HEIGHT_A=20.0,
    )
    rows = run.rows()
    near = [row["design_h"] - 20.0 for row in rows if abs(row["chainage"] - 1500.0) < 600.0]
    # 500 m to either side: s^2/2R is 19.6 mm; what is left of the geoid is its bending, which is alike on both.
    assert near[0] == pytest.approx(near[-1], abs=5e-4) and near[0] == pytest.approx(500.0**2 / 2 / 6.36e6, abs=3e-3)
    assert "smooth between its nodes" in run.said


def test_heights_reduced_by_bilinear_cells_go_back_by_them(toolbox, tmp_path):
    """convertheights by bilinear cells, then the chord on its output: the record says which, and is followed."""
    points = [{"at": (-16.75, 28.25 + k * 300.0 / 110_850.0), "height": 100.0} for k in range(-5, 6)]
    axis = toolbox.lines([{"at": [points[0]["at"], points[-1]["at"]], "name": "a"}])
    sunk = {}
    for between in ("bilinear", "smooth"):
        converted = toolbox.run(
            "convertheights",
            STATIONS=toolbox.points(points),
            UNDULATION="grid",
            GEOID_BETWEEN=between,
            OUTPUT=str(tmp_path / f"{between}.gpkg"),
        )
        run = toolbox.run(
            "designheights", STATIONS=converted.layer(), AXIS=axis, HEIGHT_FIELD="height_geo", UNDULATION="grid"
        )
        assert f"{between} between its nodes" in run.said
        sunk[between] = max(abs(residual) for residual in run.column("residual"))
    # Heights on one ellipsoidal height are no chord: both show the sagitta of 3 km, and nothing of a kink.
    sagitta = 3000.0**2 / 8.0 / 6.36e6
    assert sunk["bilinear"] == pytest.approx(sagitta, abs=2e-3) and sunk["smooth"] == pytest.approx(sagitta, abs=2e-3)


def test_level_by_normal_gravity_is_a_surface_of_water(toolbox, tmp_path):
    """10 km northwards at 2,000 m: still water falls by H (1 - gamma_A / gamma), by the published series of GRS 80
    (Moritz); a constant height is 17 mm off, which is said where it is more than a tenth of the tolerance."""

    def gamma(lat):
        s = math.sin(math.radians(lat)) ** 2
        return 9.7803267715 * (1 + 0.0052790414 * s + 0.0000232718 * s**2 + 0.0000001262 * s**3)

    places = geodesic_points(46.0, 8.0, 0.0, [0.0, 5000.0, 10_000.0])
    stations = toolbox.points([{"at": at, "name": f"P{k}", "height": 2000.0} for k, at in enumerate(places)])
    given = {"STATIONS": stations, "AXIS": toolbox.lines([{"at": [places[0], places[-1]]}]), "DESIGN": "level"}
    plain = toolbox.run("designheights", TOLERANCE=0.1, **given)
    assert plain.column("design_h") == [2000.0] * 3
    assert any("GRAVITY 'normal' follows it" in t and "\u221216.6 mm" in t for t in plain.warnings)
    assert not any("GRAVITY" in t for t in toolbox.run("designheights", TOLERANCE=0.2, **given).warnings)
    residuals, page = str(tmp_path / "residuals.gpkg"), tmp_path / "page.html"
    run = toolbox.run("designheights", TOLERANCE=0.1, GRAVITY="normal", OUTPUT=residuals, **given)
    toolbox.run("reviewreport", OUTPUT=None, STATIONS=residuals, HTML=str(page))
    assert "normal on GRS 80: still water" in page.read_text("utf-8")
    wanted = [2000.0 * gamma(46.0) / gamma(at[1]) for at in places]
    assert run.column("design_h") == pytest.approx(wanted, abs=2e-6) and wanted[2] == pytest.approx(1999.9834, abs=1e-4)
    assert run.column("curv_eff") == [0.0] * 3
    assert "water in normal gravity on GRS 80, heights taken as above the sea" in run.said
    assert not any("GRAVITY" in t for t in run.warnings)
    low = toolbox.run("designheights", GRAVITY="normal", DATUM_HEIGHT=-1900.0, **given).column("design_h")
    assert [h - 2000.0 for h in low] == pytest.approx([(h - 2000.0) / 20.0 for h in wanted], abs=1e-7)
    said = toolbox.refusal("designheights", GRAVITY="normal", UNDULATION="ellipsoidal", **given)
    assert "GRAVITY 'normal' needs heights above the sea, but these are ellipsoidal." in said
    chord = toolbox.run("designheights", **{**given, "DESIGN": "chord"}, GRAVITY="normal")
    assert any("GRAVITY is given, but not used" in t for t in chord.warnings)


def test_heights_adjusted_with_gravity_are_compared_with_water(toolbox, tmp_path):
    """The chain: levelled along still water, adjusted with GRAVITY 'normal', compared with 'level' without a word more:
    the record of the heights says what they are, and the residuals are nothing."""
    places = geodesic_points(46.0, 8.0, 0.0, [0.0, 5000.0, 10_000.0])
    points = toolbox.points([{"at": at, "name": f"P{k}"} for k, at in enumerate(places)])
    lines = [{"from": f"P{k}", "to": f"P{k + 1}", "dh": 0.0, "length": 5000.0} for k in range(2)]
    out = str(tmp_path / "points.gpkg")
    toolbox.run(
        "adjustlevelling",
        INPUT=toolbox.table(lines),
        BENCHMARKS=toolbox.table([{"name": "P0", "height": 2000.0}], name="marks"),
        STATIONS=points,
        POINTS=out,
        SIGMA_KM=1.0,
        GRAVITY="normal",
    )
    axis = toolbox.lines([{"at": [places[0], places[-1]]}])
    run = toolbox.run("designheights", STATIONS=out, AXIS=axis, DESIGN="level")
    assert run.column("residual") == pytest.approx([0.0] * 3, abs=1e-7)
    assert run.column("height")[2] == pytest.approx(1999.9834, abs=1e-4)
    off = toolbox.run("designheights", STATIONS=out, AXIS=axis, DESIGN="level", GRAVITY="none")
    assert off.column("residual")[2] == pytest.approx(-0.0166, abs=1e-4)


def test_vertical_part_of_the_reference_system_is_heeded(toolbox, line):
    """EPSG:7415 is RD New with NAP heights, above a geoid; EPSG:4979 has ellipsoidal heights in its Z."""
    way = pyproj.Transformer.from_crs("EPSG:4326", "EPSG:28992", always_xy=True)
    places = [tuple(map(float, way.transform(5.0 + 0.002 * k, 52.0))) for k in range(5)]
    stations = toolbox.points([{"at": at, "height": 5.0} for at in places], crs="EPSG:7415")
    given = {"STATIONS": stations, "AXIS": toolbox.lines([{"at": [places[0], places[-1]]}], crs="EPSG:28992")}
    assert toolbox.run("designheights", **given).results["COUNT"] == 5
    said = toolbox.refusal("designheights", UNDULATION="ellipsoidal", **given)
    assert "Layer 'stations': by its reference system heights are 'NAP height', above a geoid, but" in said
    assert "UNDULATION is 'ellipsoidal'" in said
    # What 'Convert heights' has made of them stays usable.
    converted = toolbox.points([{"at": at, "height": 5.0, "height_ell": 48.0} for at in places], crs="EPSG:7415")
    ours = {**given, "STATIONS": converted, "HEIGHT_FIELD": "height_ell"}
    assert toolbox.run("designheights", UNDULATION="ellipsoidal", **ours).results["COUNT"] == 5
    said = toolbox.refusal("convertheights", STATIONS=stations, UNDULATION="constant", UNDULATION_VALUE=43.0)
    assert "'NAP height', above a geoid, but HEIGHTS_ARE is 'ellipsoidal'" in said
    wkt = [f"PointZ (8.0{k} 50 100)" for k in range(5)]
    stations = toolbox.points([{"at": text} for text in wkt], crs="EPSG:4979", kind="PointZ")
    given = {"STATIONS": stations, "AXIS": toolbox.lines([{"at": [(8.0, 50.0), (8.04, 50.0)]}])}
    said = toolbox.refusal("designheights", **given)
    assert "by its reference system 'WGS 84' Z is ellipsoidal, but UNDULATION is 'unknown'" in said
    assert toolbox.run("designheights", UNDULATION="ellipsoidal", **given).results["COUNT"] == 5
    fields = toolbox.points([{"at": text, "height": 50.0} for text in wkt], crs="EPSG:4979", kind="PointZ")
    assert toolbox.run("designheights", **{**given, "STATIONS": fields}).results["COUNT"] == 5


def test_shift_between_datums_that_is_worse_than_a_metre_is_told(toolbox):
    """ED50 in Greece: EPSG gives its shifts to WGS 84 to 5 to 10 m."""
    ends = [(24.0, 38.0), (24.02, 38.0)]
    stations = toolbox.points([{"at": (24.0 + 0.005 * k, 38.0), "height": 5.0} for k in range(5)])
    axis = toolbox.lines([{"at": ends}], crs="EPSG:4230")
    run = toolbox.run("designheights", STATIONS=stations, AXIS=axis, MAX_DISTANCE=500.0)
    (doubt,) = [text for text in run.warnings if "as PROJ states it" in text]
    assert "Layer 'axis': the shift to the datum of the stations, WGS 84, is good to" in doubt
    run = toolbox.run("designheights", STATIONS=stations, AXIS=toolbox.lines([{"at": ends}]))
    assert not any("as PROJ states it" in text for text in run.warnings)


def test_a_drawn_line_that_is_no_geodesic_is_told(toolbox):
    """Along the parallel of 60 degrees over 20 km: it departs from the geodesic by L^2 tan(phi) / 8R = 13.6 m; in UTM,
    near its central meridian and north-south, by nothing."""
    length = 20_000.0
    east = math.degrees(length / (6_394_209.0 * math.cos(math.radians(60.0))))
    stations = toolbox.points([{"at": (8.0 + share * east, 60.0), "height": 5.0} for share in (0.0, 0.5, 1.0)])
    run = toolbox.run(
        "designheights", STATIONS=stations, AXIS=toolbox.lines([{"at": [(8.0, 60.0), (8.0 + east, 60.0)], "name": "p"}])
    )
    (doubt,) = [text for text in run.warnings if "the line as drawn departs" in text]
    assert "Axis 'p'" in doubt
    told = float(doubt.split("by up to ")[1].split(" m")[0])
    assert told == pytest.approx(length**2 * math.tan(math.radians(60.0)) / 8 / 6_394_209.0, abs=0.06)
    stations = toolbox.points(
        [{"at": (500_000.0, 5_500_000.0 + s), "height": 5.0} for s in (0, 9e3, 2e4)], "EPSG:32632"
    )
    axis = toolbox.lines([{"at": [(500_000.0, 5_500_000.0), (500_000.0, 5_520_000.0)]}], "EPSG:32632")
    run = toolbox.run("designheights", STATIONS=stations, AXIS=axis)
    assert not any("as drawn" in text for text in run.warnings)


def test_the_axis_layer_wins_and_the_log_says_so(toolbox, line):
    places = geodesic_points(50.0, 8.0, 40.0, [0.0, 2000.0])
    axis = {"at": places, "name": "line", "design": "chord", "chain_h": 3000.0, "chain_0": "1+000"}
    given = {"STATIONS": line["STATIONS"], "AXIS": toolbox.lines([axis])}
    run = toolbox.run("designheights", CHAINAGE_HEIGHT=120.0, CHAINAGE_START="2+000", **given)
    assert any(
        "Axis 'line': chain_h 3000 m of the axis layer is taken, not CHAINAGE_HEIGHT 120" in t for t in run.warnings
    )
    assert any("chain_0 1+000 of the axis layer is taken, not CHAINAGE_START 2+000" in t for t in run.warnings)
    assert "chainage height 3000.0000 m (ellipsoidal, chain_h of the axis layer)" in run.said
    run = toolbox.run("designheights", **given)
    assert not any("is taken, not" in text for text in run.warnings)
    plain = toolbox.run("designheights", CHAINAGE_HEIGHT=120.0, **line)
    assert "chainage height 120.0000 m (ellipsoidal, as given)" in plain.said


def test_a_reference_fitted_with_undulations_of_a_field_serves_ellipsoidal_heights(toolbox, line, tmp_path):
    """The plane lies where H + N lies: the same points by their ellipsoidal heights have the same residuals."""
    rows = [dict(zip(("at", "height", "undulation"), row)) for row in _sloping(line)]
    levelled = toolbox.points(rows)
    out = str(tmp_path / "reference.gpkg")
    fitted = toolbox.run("fitreference", STATIONS=levelled, AXIS=line["AXIS"], UNDULATION="field", REFERENCE=out)
    heights = [{"at": row["at"], "height": row["height"] + row["undulation"]} for row in rows]
    given = {"AXIS": line["AXIS"], "DESIGN": "reference", "REFERENCE": out}
    run = toolbox.run("designheights", STATIONS=toolbox.points(heights), UNDULATION="ellipsoidal", **given)
    assert run.column("residual") == pytest.approx(fitted.column("residual"), abs=1e-9)
    said = toolbox.refusal("designheights", STATIONS=levelled, UNDULATION="unknown", **given)
    assert "was made with UNDULATION 'field'" in said


def _sloping(line):
    """Place, height above the geoid and undulation of each station: N slopes by 40 microradians, heights wave."""
    for k, feature in enumerate(line["STATIONS"].getFeatures()):
        point = feature.geometry().asPoint()
        yield (point.x(), point.y()), 100.0 + 0.004 * math.sin(k), 48.0 + 0.01 * k
