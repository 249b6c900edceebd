"""placestations on tidy lists: headings by any usual name, with the unit in them, wherever they stand; rows as the file
counts them."""

import pytest

qgis_core = pytest.importorskip("qgis.core")
FOOT = 0.3048


@pytest.fixture
def axis(toolbox):
    ends = [(500000.0, 5540000.0), (503000.0, 5540000.0)]
    return toolbox.lines([{"at": ends, "name": "east"}], "EPSG:32631")


@pytest.fixture
def arms(toolbox):
    places = {"East": (503000.0, 5540000.0), "North": (500000.0, 5543000.0)}
    rows = [{"at": [(500000.0, 5540000.0), end], "name": name} for name, end in places.items()]
    return toolbox.lines(rows, "EPSG:32631")


def placed(toolbox, axis, source, **more):
    return toolbox.run("placestations", INPUT=source, AXIS=axis, REJECTED="memory:", **more)


def written(tmp_path, text, name="list.csv"):
    (tmp_path / name).write_text(text, encoding="utf-8")
    return str(tmp_path / name)


def read_by(kind, path):
    """The file as the host opens it in one of its two ways."""
    return path if kind == "ogr" else f"delimitedtext://file://{path}?delimiter=;&detectTypes=yes"


@pytest.mark.parametrize("kind", ["ogr", "delimitedtext"])
def test_short_headings_with_their_unit_on_the_first_line(toolbox, axis, tmp_path, kind, providers):
    providers(kind)
    path = written(tmp_path, "Sta (ft);Elev (ft)\n1+00;10.5\n2+00;11.5\n")
    run = placed(toolbox, axis, read_by(kind, path), CHAINAGE_HEIGHT=0.0)
    assert run.column("height") == [10.5, 11.5] and run.column("chainage") == [100.0, 200.0]
    x = [f.geometry().asPoint().x() for f in run.layer().getFeatures()]
    assert x[1] - x[0] == pytest.approx(100.0 * FOOT * 0.9996, abs=0.01), "feet on the ground, by UTM's scale"
    assert "heights in ft, chainages in ft" in run.said


@pytest.mark.parametrize("ending", ["xlsx", "ods"])
def test_level_in_a_spreadsheet(toolbox, axis, tmp_path, ending):
    table = toolbox.table([{"Station": "0+100", "Level": 5.5}, {"Station": "0+20x", "Level": 5.6}])
    source = toolbox.saved(table, tmp_path / f"list.{ending}").source()
    run = placed(toolbox, axis, source)
    assert run.column("height") == [5.5] and "height from field 'Level'" in run.said
    assert run.column("row", "REJECTED") == [3], "the second reading is in the third row of the sheet"


def test_a_column_arm_names_the_axis(toolbox, arms):
    rows = [{"arm": "North", "sta": "0+100", "rl": 1.0}, {"arm": "East", "sta": "0+100", "rl": 2.0}]
    assert placed(toolbox, arms, toolbox.table(rows)).column("axis") == ["North", "East"]


def test_no_height_anywhere_lists_the_columns(toolbox, axis, tmp_path):
    table = toolbox.table([{"station": "0+100", "as_measured": 5.0, "remark": "a"}])
    said = toolbox.refusal("placestations", INPUT=table, AXIS=axis)
    assert said == (
        "Layer 'list' has no column of heights; choose it (HEIGHT_FIELD) among 'station', 'as_measured', 'remark'."
    )
    empty = toolbox.table([{"station": "0+100", "height": None}], types={"height": "double"})
    said = toolbox.refusal("placestations", INPUT=empty, AXIS=axis)
    assert said == "Layer 'list', field 'height': no row has a height; the columns are 'station', 'height'."
    # Nothing but stations: a list to be set out.
    assert placed(toolbox, axis, toolbox.table([{"station": "0+100"}])).column("height") == [None]


def test_the_unit_in_a_heading_counts_wherever_it_stands(toolbox, axis):
    rows = [{"a": "Survey of the wall", "b": None}, {"a": "Station", "b": "Elev. (ft)"}, {"a": "1+00", "b": "10.5"}]
    run = placed(toolbox, axis, toolbox.table(rows), CHAINAGE_UNIT="foot")
    assert run.column("height") == [10.5] and "heights in ft" in run.said
    said = toolbox.refusal("placestations", INPUT=toolbox.table(rows), AXIS=axis, HEIGHT_UNIT="metre")
    assert said == (
        "HEIGHT_UNIT is 'metre', but the heading 'Elev. (ft)' of layer 'list' says 'foot'; they cannot both be right."
    )
    further = [{"station": "1+00", "height": "10.5"}, {"station": "Station", "height": "Height (ft)"}]
    said = toolbox.refusal("placestations", INPUT=toolbox.table(further), AXIS=axis, HEIGHT_UNIT="metre")
    assert "the heading 'Height (ft)'" in said
    # 'ft' is either foot; the form says which.
    assert "heights in US ft" in placed(toolbox, axis, toolbox.table(rows), HEIGHT_UNIT="us_foot").said


def test_units_that_are_not_read_and_headings_that_contradict(toolbox, axis):
    said = toolbox.refusal("placestations", INPUT=toolbox.table([{"sta": "0+100", "height_mm": 5.0}]), AXIS=axis)
    assert said.startswith("Layer 'list': the heading 'height_mm' says millimetres; metres and feet are read")
    rows = [{"sta_ft": "100", "offset_m": 5.0, "elev_ft": 1.0}]
    assert "'sta_ft'" in toolbox.refusal("placestations", INPUT=toolbox.table(rows), AXIS=axis)
    rows = [{"sta_ft": "100", "elev": 1.0}]
    said = toolbox.refusal("placestations", INPUT=toolbox.table(rows), AXIS=axis)
    assert said == "Layer 'list': its chainages are in 'foot', and nothing states the unit of heights; give it."


def test_an_alias_tells_column_and_unit(toolbox, axis):
    stations = toolbox.points([{"at": (500000.0 + 300.0 * k, 5540000.0), "f1": 160.0} for k in range(9)], "EPSG:32631")
    stations.setFieldAlias(0, "Elev (ft)")
    run = toolbox.run("designheights", STATIONS=stations, AXIS=axis)
    assert "field 'f1'" in run.said and " ft" in run.said
    bent = run.column("curv_eff")
    # 2400 m chord: L^2/8R = 0.1127 m at its middle, in feet.
    assert min(bent) == pytest.approx(-((2400.0 / 0.9996) ** 2) / (8.0 * 6.38e6) / FOOT, rel=0.01)
    said = toolbox.refusal("designheights", STATIONS=stations, AXIS=axis, HEIGHT_UNIT="metre")
    assert "the heading 'Elev (ft)' of layer 'stations' says 'foot'" in said


def test_two_columns_of_one_meaning_are_asked(toolbox, axis):
    rows = [{"station": "0+100", "elev_ft": 10.0, "elev_m": 3.0}]
    said = toolbox.refusal("placestations", INPUT=toolbox.table(rows), AXIS=axis)
    assert "has the fields 'elev_ft', 'elev_m', and each may be the height; name the one" in said
    run = placed(toolbox, axis, toolbox.table(rows), HEIGHT_FIELD="elev_m")
    assert run.column("height") == [3.0] and "heights in m" in run.said


@pytest.mark.parametrize("kind", ["ogr", "delimitedtext"])
def test_rows_are_counted_as_in_the_file(toolbox, axis, tmp_path, kind, providers):
    providers(kind)
    path = written(tmp_path, "station;height\n\n0+100;5.1\n# page 2\n\n0+2x0;5.2\n0+300;5.3\n")
    run = placed(toolbox, axis, read_by(kind, path))
    assert run.column("height") == [5.1, 5.3] and run.column("row", "REJECTED") == [4, 6]
    (said,) = [text for text in run.warnings if "rejected" in text]
    assert ", row 6 is rejected: '0+2x0' is not a station" in said
    assert any("row 4" in text for text in run.info), "a comment is told, and is no warning"
