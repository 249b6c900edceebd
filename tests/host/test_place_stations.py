"""placestations through the registry: rows on the map, the others with their reason; nothing is dropped."""

import pytest

pyproj = pytest.importorskip("pyproj")


@pytest.fixture
def axis(toolbox):
    """2 km of ellipsoid to the east from 0°, 0°: on the equator the geodesic is the parallel."""
    end = pyproj.Geod(ellps="WGS84").fwd(0.0, 0.0, 90.0, 2000.0)[:2]
    return toolbox.lines([{"at": [(0.0, 0.0), (float(end[0]), 0.0)], "name": "line"}])


def placed(toolbox, axis, rows, **more):
    types = {name: "string" for name in ("station", "offset", "height", "axis") if any(name in row for row in rows)}
    return toolbox.run("placestations", INPUT=toolbox.table(rows, types=types), AXIS=axis, REJECTED="memory:", **more)


def test_place_on_the_equator(toolbox, axis):
    """Along the equator one degree is pi a / 180; across it, to the right of east, lies the south."""
    run = placed(toolbox, axis, [{"station": "1+000", "offset": "10", "height": "0"}], CHAINAGE_HEIGHT=0.0)
    point = next(run.layer().getFeatures()).geometry().asPoint()
    assert point.x() == pytest.approx(1000.0 / 6378137.0 * 57.29577951308232, abs=1e-12)
    # Meridional radius at the equator: a(1 - e^2).
    assert point.y() == pytest.approx(-10.0 / (6378137.0 * (1 - 0.0066943799901413165)) * 57.29577951308232, abs=1e-12)


def test_columns(toolbox, axis):
    run = toolbox.run(
        "placestations",
        AXIS=axis,
        REJECTED="memory:",
        INPUT=toolbox.table(
            [
                {"no": 7, "Station": "0+500", "height": 5.5, "remark": "x"},
                {"no": 8, "Station": "?", "height": 5.6, "remark": "y"},
            ]
        ),
    )
    (row,) = run.rows()
    assert list(row) == ["no", "remark", "axis", "station", "chainage", "offset", "height"]
    assert row == {
        "no": 7,
        "remark": "x",
        "axis": "line",
        "station": "0+500",
        "chainage": 500.0,
        "offset": 0.0,
        "height": 5.5,
    }
    (rejected,) = run.rows("REJECTED")
    assert list(rejected) == ["no", "Station", "height", "remark", "row", "reason"]
    assert rejected["row"] == 2 and rejected["no"] == 8 and "'?' is not a station" in rejected["reason"]
    assert run.results["COUNT"] == 1 and run.results["REJECTED_COUNT"] == 1


def test_a_bad_undulation_rejects_its_row(toolbox, axis):
    """As a bad height does; the reason names layer, row and field. A heading among the rows is no bad undulation."""
    rows = [{"station": f"{k}+000", "height": "10.5", "N (m)": "-71.5"} for k in range(2)]
    rows.insert(1, {"station": "Station", "height": "Height", "N (m)": "Undulation"})
    rows.append({"station": "0+500", "height": "10.5", "N (m)": "minus 71.8880"})
    types = {"N (m)": "string"}
    table = toolbox.table(rows, types={"station": "string", "height": "string", **types})
    run = toolbox.run(
        "placestations", INPUT=table, AXIS=axis, REJECTED="memory:", UNDULATION="field", UNDULATION_FIELD="N (m)"
    )
    reason = "Field 'N (m)': The undulation 'minus 71.8880' is not a number."
    assert run.column("station") == ["0+000", "1+000"]
    assert [row["reason"] for row in run.rows("REJECTED")] == ["The row is a heading.", reason]
    assert f"Layer 'list', row 4 is rejected: {reason}" in run.warnings


@pytest.mark.parametrize(
    "text, chainage",
    [
        ("0+500", 500.0),
        ("12+50", 1250.0),
        ("Sta 12+50.25", 1250.25),
        ("ch. 1+250", 1250.0),
        ("750", 750.0),
        ("-0+010", -10.0),
        ("2+100.5", 2100.5),
        (" 1+000 ", 1000.0),
    ],
)
def test_notation(toolbox, axis, text, chainage):
    assert placed(toolbox, axis, [{"station": text, "height": "1"}]).column("chainage") == [
        pytest.approx(chainage, abs=1e-9)
    ]


def test_every_reason_for_a_rejection(toolbox, axis):
    rows = [
        {"station": station, "offset": offset, "height": height, "axis": name}
        for station, offset, height, name in (
            ("0+100", "", "5.0", "line"),
            ("1+2", "", "5.0", "line"),
            (None, "", "5.0", "line"),
            ("KM 3", "", "5.0", "line"),
            ("0+200", "left", "5.0", "line"),
            ("0+300", "1.5", "5,0", "line"),
            ("0+400", "inf", "5.0", "line"),
            ("0+500", "", "5.0", "Line"),
            ("0+600", None, None, None),
            ("0+700", "", "nan", ""),
        )
    ]
    run = placed(toolbox, axis, rows)
    assert run.column("station") == ["0+100", "0+600", "0+700"]
    assert run.column("height") == [5.0, None, None] and run.column("offset") == [0.0, 0.0, 0.0]
    reasons = {row["row"]: row["reason"] for row in run.rows("REJECTED")}
    assert list(reasons) == [2, 3, 4, 5, 6, 7, 8]
    for row, said in (
        (2, "'1+2' is not a station"),
        (3, "The row has no station."),
        (4, "'KM 3' is not a station"),
        (5, "The offset 'left' is not a number."),
        (6, "The height '5,0' is not a number."),
        (7, "The offset 'inf' is infinite."),
        (8, "There is no axis 'Line'; the axes are line."),
    ):
        assert said in reasons[row]
        assert any(f"'list', row {row} is rejected" in text and said in text for text in run.warnings)
    assert "3 rows placed, 2 of them without a height; 7 rejected." in run.info


def test_nothing_that_can_be_placed(toolbox, axis):
    text = toolbox.refusal("placestations", INPUT=toolbox.table([{"station": "a"}, {"station": "b"}]), AXIS=axis)
    assert text.startswith("Layer 'list': none of 2 rows can be placed; row 1: 'a' is not a station")


def test_rejected_rows_are_named_without_that_output(toolbox, axis):
    run = toolbox.run("placestations", INPUT=toolbox.table([{"station": "a"}, {"station": "0+100"}]), AXIS=axis)
    assert "REJECTED" not in run.results and any("row 1 is rejected" in text for text in run.warnings)


def test_several_axes_need_their_name(toolbox):
    axes = toolbox.lines(
        [{"at": [(0.0, 0.0), (0.01, 0.0)], "name": "a"}, {"at": [(0.0, 0.0), (0.0, 0.01)], "name": "b"}]
    )
    run = placed(toolbox, axes, [{"station": "0+100", "axis": "b"}, {"station": "0+100", "axis": None}])
    assert run.column("axis") == ["b"]
    assert run.column("reason", "REJECTED") == ["The row names no axis, and there are 2."]


def test_station_and_chainage_as_numbers(toolbox, axis):
    """A chainage measured at the origin is 2.3e-9, not a text that is no station."""
    rows = toolbox.table([{"chainage": value, "height": 1.0} for value in (2.3e-09, 0.0, 1250.0, 1250.125, -3e-05)])
    run = toolbox.run("placestations", INPUT=rows, AXIS=axis, REJECTED="memory:")
    assert run.column("chainage") == pytest.approx([0.0, 0.0, 1250.0, 1250.125, 0.0], abs=1e-4)
    assert run.results["REJECTED_COUNT"] == 0


def test_whole_numbers(toolbox, axis):
    run = toolbox.run("placestations", INPUT=toolbox.table([{"station": 1250, "height": 3}]), AXIS=axis)
    assert run.column("chainage") == [pytest.approx(1250.0, abs=1e-9)] and run.column("height") == [3.0]


def test_units(toolbox, axis):
    """Stations and offsets in one unit, heights in another."""
    run = placed(
        toolbox,
        axis,
        [{"station": "32+80.8399", "offset": "-3.280839895", "height": "10"}],
        CHAINAGE_UNIT="foot",
        HEIGHT_UNIT="metre",
        CHAINAGE_HEIGHT=0.0,
    )
    point = next(run.layer().getFeatures()).geometry().asPoint()
    assert point.x() == pytest.approx(1000.0 / 6378137.0 * 57.29577951308232, abs=1e-9)
    assert run.column("chainage") == [pytest.approx(3280.8399)] and run.column("station") == ["32+80.84"]
    # One metre to the left, the north; meridional radius at the equator: a(1 - e^2).
    assert point.y() * 6378137.0 * (1 - 0.0066943799901413165) / 57.29577951308232 == pytest.approx(1.0, abs=1e-6)
    assert run.column("height") == [10.0] and run.column("offset") == [pytest.approx(-3.280839895, abs=1e-9)]


def test_equations(toolbox, axis):
    run = placed(
        toolbox,
        axis,
        [{"station": s} for s in ("0+900", "1+050", "0+950 (1)", "1+250", "0+400")],
        EQUATIONS="1+000 = 1+200; 1+500 = 1+400",
        CHAINAGE_HEIGHT=0.0,
    )
    assert run.column("chainage") == pytest.approx([900.0, 950.0, 1050.0, 400.0], abs=1e-6)
    assert "gap of a station equation" in run.column("reason", "REJECTED")[0]


def test_stations_that_occur_twice_need_their_region(toolbox, axis):
    run = placed(toolbox, axis, [{"station": "0+950"}, {"station": "0+950 (2)"}], EQUATIONS="1+000=0+900")
    assert "occurs 2 times" in run.column("reason", "REJECTED")[0]
    assert run.column("station") == ["0+950 (2)"] and run.column("chainage") == [pytest.approx(1050.0, abs=1e-6)]


def test_beyond_the_ends_and_twice(toolbox, axis):
    run = placed(toolbox, axis, [{"station": s} for s in ("-0+005", "0+100", "0+100", "2+500")])
    assert len(run.rows()) == 4
    assert any("2 rows lie beyond its ends, by up to 500.00 m, on its" in text for text in run.warnings)
    assert any("rows 2 and 3" in text for text in run.warnings)


def test_median_height_is_the_chainage_height(toolbox, axis):
    run = placed(toolbox, axis, [{"station": "1+000", "height": h} for h in ("999.6", "1000.2", "1500")])
    assert "chainage height 1000.0000 m (median of the heights, standing in for ellipsoidal ones)" in run.said


def test_file_of_the_surveyor(toolbox, axis, tmp_path):
    path = tmp_path / "heights.csv"
    path.write_text("station,height,remark\n0+100,5.01,a\n0+200,,b\n0+2x0,5.03,c\n", encoding="utf-8")
    run = toolbox.run(
        "placestations",
        INPUT=str(path),
        AXIS=axis,
        REJECTED=str(tmp_path / "no.csv"),
        OUTPUT=str(tmp_path / "out.gpkg"),
    )
    assert run.column("height") == [5.01, None] and run.column("remark") == ["a", "b"]
    assert run.column("row", "REJECTED") in ([4], ["4"])  # the heading is the first row of the file


def test_the_crews_table_is_read_back(toolbox, axis, tmp_path):
    """Of a station before the origin a spreadsheet would make a formula: in CSV an apostrophe stands before it."""
    rows = [{"station": f"{s}", "height": f"{50.0 + 0.001 * k}"} for k, s in enumerate((-200, -100, 0, 100, 200))]
    stations = placed(toolbox, axis, rows).layer()
    residuals = toolbox.run("designheights", STATIONS=stations, AXIS=axis, TOLERANCE=0.01).layer()
    table = tmp_path / "schedule.csv"
    toolbox.run("scheduleadjustments", STATIONS=residuals, CSV=str(table))
    assert "'-0+200" in table.read_text("utf-8-sig")
    again = toolbox.run(
        "placestations", INPUT=str(table), AXIS=axis, HEIGHT_FIELD="as_built_m", HEIGHT_UNIT="metre", REJECTED="memory:"
    )
    assert again.rows("REJECTED") == [] and again.column("station")[:2] == ["-0+200", "-0+100"]


def test_nothing_rejected_is_an_empty_table(toolbox, axis, tmp_path):
    for ending in ("gpkg", "csv", "geojson"):
        path = str(tmp_path / f"no.{ending}")
        run = toolbox.run("placestations", INPUT=toolbox.table([{"station": "0+100"}]), AXIS=axis, REJECTED=path)
        assert run.results["REJECTED_COUNT"] == 0 and run.results["REJECTED"] == path


def test_axis_without_rows(toolbox):
    axes = toolbox.lines([{"at": [(0.0, 0.0), (0.01, 0.0)], "name": n} for n in "ab"])
    assert "Axis 'b': no row belongs to it." in placed(toolbox, axes, [{"station": "0+100", "axis": "a"}]).info


def test_points_are_taken_for_a_list(toolbox, axis):
    points = toolbox.points([{"at": (9.0, 9.0), "station": "0+100", "height": 1.0}], "EPSG:3857")
    run = toolbox.run("placestations", INPUT=points, AXIS=axis)
    assert run.layer().crs().authid() == "EPSG:4326"
    assert next(run.layer().getFeatures()).geometry().asPoint().x() == pytest.approx(0.0009, abs=1e-5)


@pytest.mark.parametrize(
    "system",
    [{"UNDULATION": "field"}, {"UNDULATION": "constant", "UNDULATION_VALUE": 47.0}, {"UNDULATION": "grid"}, {}],
)
def test_placed_and_reviewed_at_one_chainage_height(toolbox, system):
    """The chainage height is the median of h = H + N (method page 3), for the list as for the points made
    of it: the same chainages come back. 47 m of undulation would part them by 22 mm in 3 km.
    """
    axis = toolbox.lines([{"at": [(8.0, 50.0), (8.0, 50.027)], "name": "A"}])
    rows = [{"station": f"{k}+000", "height": 300.2 + 0.01 * k, "undulation": 47.1 + 0.1 * k} for k in range(4)]
    placed = toolbox.run("placestations", INPUT=toolbox.table(rows), AXIS=axis, **system)
    reviewed = toolbox.run("designheights", STATIONS=placed.layer(), AXIS=axis, **system)
    assert [row["chainage"] for row in reviewed.rows()] == pytest.approx([0.0, 1000.0, 2000.0, 3000.0], abs=1e-6)
