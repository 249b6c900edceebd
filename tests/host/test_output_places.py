"""Where outputs go: formats, tables, places that are taken, read-only or full; written whole or not at all."""

import os
import subprocess

import pytest
from osgeo import gdal
from qgis.core import QgsVectorFileWriter

FAILING = {"HEIGHT_FIELD": "nope"}


@pytest.fixture
def straight(toolbox):
    stations, axis = toolbox.straight()
    return {"STATIONS": stations, "AXIS": axis}


def table(path, name, geometry=True):
    return f"ogr:dbname='{path}' table=\"{name}\"{' (geom)' if geometry else ''}"


def contents(folder):
    """Every file in a folder with its bytes."""
    return {name: (folder / name).read_bytes() for name in sorted(os.listdir(folder)) if (folder / name).is_file()}


# --- formats


@pytest.mark.parametrize("ending", ["gpkg", "shp", "geojson", "csv", "tab", "xlsx", "gml", "kml"])
def test_formats(toolbox, straight, tmp_path, ending):
    given = {
        "TOLERANCE": 0.01,
        "OUTPUT": str(tmp_path / f"out.{ending}"),
        "SUMMARY": str(tmp_path / f"sum.{ending}"),
        **straight,
    }
    if ending == "kml" and gdal.GetDriverByName("LIBKML") is None:
        # The plain driver takes rows without geometry and writes none: told, and nothing is left.
        assert "The output SUMMARY is not complete: 0 of 1 rows" in toolbox.refusal("designheights", **given)
        assert contents(tmp_path) == {}
        return
    run = toolbox.run("designheights", **given)
    rows = run.rows()
    memory = toolbox.run("designheights", TOLERANCE=0.01, **straight)
    assert [row["status"] for row in rows] == memory.column("status")
    assert [float(row["residual"]) for row in rows] == pytest.approx(memory.column("residual"), abs=1e-7)
    if ending != "shp":
        (summary,) = run.rows("SUMMARY")
        assert float(summary["rms"]) == pytest.approx(memory.results["RMS"], rel=1e-6)
    assert ("254 characters" in run.said) == (ending in ("shp", "tab"))


def test_table_of_a_shapefile(toolbox, straight, tmp_path):
    """A Shapefile without geometry is its table only."""
    from qgis.core import QgsVectorLayer

    toolbox.run("designheights", SUMMARY=str(tmp_path / "sum.shp"), **straight)
    layer = QgsVectorLayer(str(tmp_path / "sum.dbf"), "sum", "ogr")
    assert layer.featureCount() == 1 and max(len(f.name()) for f in layer.fields()) <= 10


def test_null_in_a_file_is_null_in_memory(toolbox, straight, tmp_path):
    rows = [{"at": (500000.0 + 100 * k, 5540000.0), "height": None if k == 1 else 5.0} for k in range(4)]
    stations = toolbox.points(rows, "EPSG:32631")
    for output in ("memory:", str(tmp_path / "out.gpkg"), str(tmp_path / "out.geojson")):
        run = toolbox.run("designheights", STATIONS=stations, AXIS=straight["AXIS"], OUTPUT=output)
        assert run.column("residual")[1] is None and run.column("status")[1] == "no height"


def test_two_tables_of_one_new_geopackage(toolbox, straight, tmp_path):
    path = tmp_path / "both.gpkg"
    run = toolbox.run(
        "designheights", OUTPUT=table(path, "residuals"), SUMMARY=table(path, "summary", False), **straight
    )
    assert len(run.rows()) == 11 and len(run.rows("SUMMARY")) == 1
    for key in ("OUTPUT", "SUMMARY"):
        assert run.layer(key).loadDefaultStyle()[1], key


def test_further_table_beside_the_input(toolbox, straight, tmp_path):
    path = tmp_path / "project.gpkg"
    stations = toolbox.saved(straight["STATIONS"], path, "stations")
    run = toolbox.run("designheights", STATIONS=stations, AXIS=straight["AXIS"], OUTPUT=table(path, "residuals"))
    assert len(run.rows()) == 11 and stations.featureCount() == 11 and len(list(stations.getFeatures())) == 11
    again = toolbox.run(
        "designheights", STATIONS=stations, AXIS=straight["AXIS"], OUTPUT=table(path, "residuals"), TOLERANCE=1.0
    )
    assert again.column("status") == ["within"] * 11 and len(list(stations.getFeatures())) == 11
    assert again.layer().loadDefaultStyle()[1]


@pytest.mark.parametrize("name", ["result", "result.", "re.sult", "result.2026"])
def test_name_without_a_known_ending_is_a_geopackage(toolbox, straight, tmp_path, name):
    run = toolbox.run("designheights", OUTPUT=str(tmp_path / name), **straight)
    assert len(run.rows()) == 11 and os.listdir(tmp_path) == [name + ".gpkg"]


# --- places that are taken


def test_output_in_the_place_of_an_input(toolbox, straight, tmp_path):
    path = tmp_path / "in.gpkg"
    stations = toolbox.saved(straight["STATIONS"], path, "stations")
    axis = toolbox.saved(straight["AXIS"], tmp_path / "axis.gpkg", "axis")
    (tmp_path / "link.gpkg").symlink_to(path)
    os.makedirs(tmp_path / "sub")
    before = contents(tmp_path)
    for output in (
        str(path),
        str(tmp_path / "link.gpkg"),
        str(tmp_path / "sub" / ".." / "in.gpkg"),
        os.path.relpath(path),
        table(path, "stations"),
        table(path, "STATIONS"),
        table(tmp_path / "link.gpkg", "stations"),
        f"{path}|layername=other",
        str(path)[:-5],
        str(tmp_path / "axis.gpkg"),
    ):
        for given in (stations, f"{path}|layername=stations"):
            text = toolbox.refusal("designheights", STATIONS=given, AXIS=axis, OUTPUT=output)
            assert "is the place of the input" in text and "would be lost" in text, output
    text = toolbox.refusal("designheights", STATIONS=stations, AXIS=axis, SUMMARY=str(path))
    assert text.startswith("SUMMARY is the place of the input STATIONS")
    assert {n: b for n, b in contents(tmp_path).items() if not n.endswith(("-wal", "-shm"))} == before


def test_output_in_the_place_of_a_list(toolbox, straight, tmp_path, providers):
    providers("delimitedtext")
    path = tmp_path / "list of heights.csv"
    path.write_text("station,height\n0+100,5.0\n0+200,5.1\n", encoding="utf-8")
    for given in (str(path), f"delimitedtext://{path.as_uri()}?type=csv"):
        for key in ("OUTPUT", "REJECTED"):
            assert f"{key} is the place of the input INPUT" in toolbox.refusal(
                "placestations", **{"INPUT": given, "AXIS": straight["AXIS"], key: str(path)}
            )
    assert path.read_text(encoding="utf-8").startswith("station,height\n0+100")


def test_output_in_the_place_of_a_shapefile(toolbox, straight, tmp_path):
    stations = toolbox.saved(straight["STATIONS"], tmp_path / "in.shp")
    before = contents(tmp_path)
    given = {"STATIONS": stations, "AXIS": straight["AXIS"]}
    assert "is the place of the input" in toolbox.refusal("designheights", SUMMARY=str(tmp_path / "in.shp"), **given)
    for document in ("in.dbf", "in.shx", "in.prj"):
        assert "is the place of the input" in toolbox.refusal(
            "testcurvature", OUTPUT="memory:", HTML=str(tmp_path / document), **given
        )
    assert contents(tmp_path) == before
    # The host makes 'in.dbf.dbf' of this, so the input stays.
    toolbox.run("designheights", SUMMARY=str(tmp_path / "in.dbf"), **given)
    after = contents(tmp_path)
    assert {name: after[name] for name in before} == before and "in.dbf.dbf" in after


@pytest.mark.parametrize(
    "asked, made",
    [
        ("st.json", "st.json.geojson"),
        ("st.mif", "st.mif.tab"),
        ("st.txt", "st.txt.gxt"),
        ("st.dbf", "st.dbf.shp"),
        ("st.xyz", "st.xyz.gpkg"),
        ("st", "st.gpkg"),
    ],
)
def test_the_place_that_the_host_makes_of_a_name(toolbox, straight, tmp_path, asked, made):
    """An older output there comes back where a run fails; an input there is not written over; two outputs
    are not one.
    """
    if asked == "st.txt" and QgsVectorFileWriter.driverForExtension("txt") == "VDV":
        pytest.skip("this host writes tables without geometry under that name")
    path = tmp_path / asked
    run = toolbox.run("designheights", OUTPUT=str(path), **straight)
    assert made in os.listdir(tmp_path) and len(run.rows()) == 11
    before = contents(tmp_path)
    there = run.layer()
    twin = tmp_path / made
    refused = toolbox.refusal("designheights", STATIONS=there, AXIS=straight["AXIS"], OUTPUT=str(path))
    assert refused.startswith("OUTPUT is the place of the input STATIONS")
    assert toolbox.refusal("designheights", OUTPUT=str(path), SUMMARY=str(twin), **straight).startswith(
        "OUTPUT and SUMMARY are the same place"
    )
    toolbox.refusal("designheights", OUTPUT=str(path), **{**straight, **FAILING})
    assert contents(tmp_path) == before


def test_an_input_under_another_name(toolbox, straight, tmp_path, providers):
    """A hard link, a folder of Shapefiles, a virtual file, a join and a virtual layer lead to the input all
    the same.
    """
    from qgis.core import QgsVectorLayer, QgsVectorLayerJoinInfo

    providers("virtual")
    stations = toolbox.saved(straight["STATIONS"], tmp_path / "in.shp")
    given = {"STATIONS": stations, "AXIS": straight["AXIS"]}
    for ending in ("shp", "shx", "dbf", "prj", "cpg"):
        os.link(tmp_path / f"in.{ending}", tmp_path / f"linked.{ending}")
    (tmp_path / "in.vrt").write_text(
        '<OGRVRTDataSource><OGRVRTLayer name="in"><SrcDataSource relativeToVRT="1">in.shp</SrcDataSource>'
        "</OGRVRTLayer></OGRVRTDataSource>"
    )
    before = contents(tmp_path)
    memory = QgsVectorLayer(straight["STATIONS"].source(), "joined", "memory")
    join = QgsVectorLayerJoinInfo()
    join.setJoinLayer(stations)
    memory.addJoin(join)
    virtual = QgsVectorLayer(f"?layer=ogr:{tmp_path / 'in.shp'}:t:UTF-8&query=select * from t", "virtual", "virtual")
    assert virtual.isValid()
    inputs = [
        (stations, "linked.shp"),
        (f"{tmp_path}|layername=in", "in.shp"),
        (str(tmp_path / "in.vrt"), "in.shp"),
        (memory, "in.shp"),
        (virtual, "in.shp"),
    ]
    for source, name in inputs:
        text = toolbox.refusal("designheights", **{**given, "STATIONS": source}, OUTPUT=str(tmp_path / name))
        assert text.startswith("OUTPUT is the place of the input STATIONS"), (name, text)
    assert contents(tmp_path) == before


def test_output_in_the_place_of_the_geoid(toolbox, straight, tmp_path):
    path = str(tmp_path / "geoid.gpkg")
    data = gdal.GetDriverByName("GPKG").Create(path, 4, 4, 1, gdal.GDT_Byte)
    data.SetGeoTransform((2.0, 0.5, 0.0, 51.0, 0.0, -0.5))
    del data
    from qgis.core import QgsRasterLayer

    for given in (path, QgsRasterLayer(path, "geoid")):
        assert "is the place of the input GEOID" in toolbox.refusal(
            "designheights", GEOID=given, UNDULATION="grid", OUTPUT=path, **straight
        )


def test_two_outputs_in_one_place(toolbox, straight, tmp_path):
    path = tmp_path / "out.gpkg"
    for one, other in (
        (str(path), str(path)),
        (str(path), table(path, "summary", False)),
        (str(path), str(path)[:-5]),
        (table(path, "a"), table(path, "A", False)),
        (str(tmp_path / "x.json"), str(tmp_path / "x.json.geojson")),
    ):
        text = toolbox.refusal("designheights", OUTPUT=one, SUMMARY=other, **straight)
        assert text.startswith("OUTPUT and SUMMARY are the same place")
    assert not list(tmp_path.iterdir())


def test_folder_that_is_not_there(toolbox, straight, tmp_path):
    assert toolbox.refusal("designheights", OUTPUT=str(tmp_path / "no" / "x.gpkg"), **straight) == (
        f"OUTPUT cannot be written: there is no folder {tmp_path / 'no'}."
    )
    assert "is the folder" in toolbox.refusal("designheights", OUTPUT=str(tmp_path), **straight)
    assert "SUMMARY cannot be written" in toolbox.refusal(
        "designheights", SUMMARY=str(tmp_path / "no" / "x.csv"), **straight
    )


# --- a run that fails


@pytest.mark.parametrize("ending", ["gpkg", "shp", "geojson", "csv", "tab"])
def test_older_output_survives_a_refused_run(toolbox, straight, tmp_path, ending):
    path = str(tmp_path / f"out.{ending}")
    toolbox.run("designheights", OUTPUT=path, **straight)
    before = contents(tmp_path)
    assert "nope" in toolbox.refusal("designheights", OUTPUT=path, **FAILING, **straight)
    assert contents(tmp_path) == before


@pytest.mark.parametrize("ending", ["gpkg", "shp", "geojson", "csv", "tab"])
def test_older_output_survives_a_run_that_fails_while_writing(toolbox, straight, tmp_path, ending, monkeypatch):
    from tautline.algorithms.boundary import output_rows

    path = str(tmp_path / f"out.{ending}")
    toolbox.run("designheights", OUTPUT=path, **straight)
    before = contents(tmp_path)
    asked = []

    def refused(sink, table, feedback, progress):
        asked.append(sorted(os.listdir(tmp_path)))
        raise output_rows.QgsProcessingException(output_rows.not_written(table.key, "no space"))

    monkeypatch.setattr(output_rows, "write_rows", refused)
    assert toolbox.refusal("designheights", OUTPUT=path, **straight) == (
        "The output OUTPUT could not be written (no space). Is the disk full or read-only?"
    )
    assert asked and contents(tmp_path) == before


def test_second_output_that_fails_takes_the_first_with_it(toolbox, straight, tmp_path, monkeypatch):
    from tautline.algorithms.boundary import output_rows

    write = output_rows.write_rows

    def second_refused(sink, table, feedback, progress):
        if table.key == "SUMMARY":
            raise output_rows.QgsProcessingException("The output SUMMARY could not be written.")
        write(sink, table, feedback, progress)

    monkeypatch.setattr(output_rows, "write_rows", second_refused)
    both = tmp_path / "both.gpkg"
    for one, other in (
        (str(tmp_path / "a.gpkg"), str(tmp_path / "b.csv")),
        (table(both, "a"), table(both, "b", False)),
    ):
        toolbox.refusal("designheights", OUTPUT=one, SUMMARY=other, **straight)
        assert not list(tmp_path.iterdir())


def test_failed_run_leaves_the_other_tables_of_a_geopackage(toolbox, straight, tmp_path, monkeypatch):
    """The file may be open elsewhere: it stays the same file, and only the new table goes again."""
    from qgis.core import QgsVectorLayer

    from tautline.algorithms.boundary import output_rows

    path = tmp_path / "project.gpkg"
    stations = toolbox.saved(straight["STATIONS"], path, "stations")
    older = toolbox.run("designheights", STATIONS=stations, AXIS=straight["AXIS"], OUTPUT=table(path, "older")).rows()
    inode = os.stat(path).st_ino
    write = output_rows.write_rows

    def refused(sink, table, feedback, progress):
        write(sink, table, feedback, progress)
        raise output_rows.QgsProcessingException("The output could not be written.")

    monkeypatch.setattr(output_rows, "write_rows", refused)
    toolbox.refusal("designheights", STATIONS=stations, AXIS=straight["AXIS"], OUTPUT=table(path, "new"))
    assert os.stat(path).st_ino == inode and stations.featureCount() == 11
    assert not QgsVectorLayer(f"{path}|layername=new", "new", "ogr").isValid()
    # A table that was there before comes back as it was.
    toolbox.refusal(
        "designheights", STATIONS=stations, AXIS=straight["AXIS"], TOLERANCE=9.0, OUTPUT=table(path, "older")
    )
    layer = QgsVectorLayer(f"{path}|layername=older", "older", "ogr")
    assert [f["status"] for f in layer.getFeatures()] == [row["status"] for row in older]
    assert not [name for name in os.listdir(tmp_path) if name.endswith(".before")]


def test_rows_that_do_not_arrive_are_noticed(toolbox, straight, tmp_path, monkeypatch):
    from tautline.algorithms.boundary import output_rows

    monkeypatch.setattr(output_rows, "write_rows", lambda sink, table, feedback, progress: None)
    text = toolbox.refusal("designheights", OUTPUT=str(tmp_path / "out.gpkg"), **straight)
    assert "OUTPUT is not complete: 0 of 11 rows" in text and not list(tmp_path.iterdir())


@pytest.fixture
def small_disk(tmp_path):
    """A file system of 512 kB of its own, and a function that makes it read-only."""
    place = tmp_path / "small"
    place.mkdir()
    if subprocess.run(["mount", "-t", "tmpfs", "-o", "size=512k", "tmpfs", str(place)], capture_output=True).returncode:
        pytest.skip("mounting a small file system is not allowed here")
    try:
        yield place, lambda: subprocess.run(["mount", "-o", "remount,ro", str(place)], check=True)
    finally:
        subprocess.run(["umount", "-l", str(place)], check=True)


@pytest.mark.parametrize("ending", ["gpkg", "shp", "geojson", "csv"])
def test_full_disk(toolbox, small_disk, ending):
    place, _ = small_disk
    few, axis = toolbox.straight()
    many, _ = toolbox.straight(4001, 0.25)
    path = str(place / f"out.{ending}")
    toolbox.run("designheights", STATIONS=few, AXIS=axis, OUTPUT=path)
    before = contents(place)
    text = toolbox.refusal("designheights", STATIONS=many, AXIS=axis, OUTPUT=path)
    assert "The output OUTPUT" in text and "full" in text and len(text) < 400
    assert contents(place) == before


def test_full_disk_without_an_older_output(toolbox, small_disk):
    place, _ = small_disk
    many, axis = toolbox.straight(4001, 0.25)
    for ending in ("gpkg", "csv", "shp"):
        toolbox.refusal("designheights", STATIONS=many, AXIS=axis, OUTPUT=str(place / f"out.{ending}"))
        assert not list(place.iterdir())


@pytest.mark.parametrize("ending", ["gpkg", "csv"])
def test_read_only_place(toolbox, straight, small_disk, ending):
    place, lock = small_disk
    older, newer = str(place / f"old.{ending}"), str(place / f"new.{ending}")
    toolbox.run("designheights", OUTPUT=older, **straight)
    lock()
    before = contents(place)
    for path in (older, newer):
        text = toolbox.refusal("designheights", OUTPUT=path, **straight)
        assert path in text and ("Read-only" in text or "read-only" in text)
    assert contents(place) == before


# --- what reaches a feature


def test_no_numpy_scalar_reaches_a_feature(toolbox, straight, monkeypatch):
    """The oldest host drops such a row without an error."""
    import numpy as np

    from tautline.algorithms.boundary import output_rows

    plain, seen = output_rows._plain, []
    monkeypatch.setattr(output_rows, "_plain", lambda *given: seen.append(plain(*given)) or seen[-1])
    toolbox.run("designheights", TOLERANCE=0.01, SUMMARY="memory:", **straight)
    toolbox.run("measurestations", ONTO_AXIS=True, **straight)
    toolbox.run("generatestations", AXIS=straight["AXIS"])
    toolbox.run("convertheights", STATIONS=straight["STATIONS"])
    rows = [{"station": "0+100", "height": None}, {"station": "x", "height": 1.0}, {"station": "0+200", "height": 1.0}]
    rows = toolbox.table(rows)
    toolbox.run("placestations", INPUT=rows, AXIS=straight["AXIS"], REJECTED="memory:")
    assert {type(value) for column in seen for value in column} == {str, float, int, type(None)}
    assert plain(np.array([1.5, np.nan]), slice(0, 2)) == [1.5, None]
    assert [type(v) for v in plain([np.float64(1.5), np.int64(2), np.bool_(True), np.float64("nan")], slice(0, 4))] == [
        float,
        int,
        bool,
        type(None),
    ]
