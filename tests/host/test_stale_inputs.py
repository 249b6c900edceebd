"""Which inputs have changed since a run: every kind of input, edits that are not saved, what is gone."""

import os

import pytest

qgis_core = pytest.importorskip("qgis.core")

from tautline.algorithms.entry.run_record import RunRecord  # noqa: E402
from tautline.algorithms.entry.stale_inputs import stale_inputs  # noqa: E402

PROPERTY = "tautline/record"


def record_of(layer):
    return RunRecord.read(layer.customProperty(PROPERTY))


def edit(layer, row, field, value):
    """Change one cell in the file."""
    feature = list(layer.getFeatures())[row]
    index = layer.fields().indexOf(field)
    assert layer.dataProvider().changeAttributeValues({feature.id(): {index: value}})


def move(layer, row, to):
    feature = list(layer.getFeatures())[row]
    geometry = qgis_core.QgsGeometry.fromPointXY(qgis_core.QgsPointXY(*to))
    assert layer.dataProvider().changeGeometryValues({feature.id(): geometry})


@pytest.fixture
def made(toolbox, tmp_path):
    """(stations, axis, record) of a run on files."""
    stations, axis = toolbox.straight(note="as measured")
    stations = toolbox.saved(stations, tmp_path / "stations.gpkg")
    axis = toolbox.saved(axis, tmp_path / "axis.gpkg")
    run = toolbox.run("designheights", STATIONS=stations, AXIS=axis, TOLERANCE=0.01, OUTPUT=str(tmp_path / "made.gpkg"))
    return stations, axis, record_of(run.layer())


def states(record, *arguments):
    return sorted((one.key, one.state) for one in stale_inputs(record, *arguments))


def test_untouched_inputs_are_not_named(made):
    stations, _, record = made
    assert states(record) == []
    (read,) = record.inputs["STATIONS"]
    assert read.source == stations.source() and read.rows == 11 and read.numbers == ("height",)
    assert read.shape == "point" and len(read.hash) == 32 and record.inputs["AXIS"][0].shape == "line"


def test_a_changed_height_is_named(made):
    stations, _, record = made
    edit(stations, 3, "height", 50.1)
    (found,) = stale_inputs(record)
    assert (found.key, found.state, found.name) == ("STATIONS", "changed", "stations")
    assert found.sentence == "the input STATIONS, 'stations', has changed since"
    edit(stations, 3, "height", 50.0)
    assert states(record) == [], "changed back"


def test_a_field_that_was_not_read_does_not_count(made):
    stations, _, record = made
    edit(stations, 3, "note", "looked at again")
    assert states(record) == []


def test_a_moved_point_and_a_changed_axis(made):
    stations, axis, record = made
    move(stations, 3, (500300.5, 5540000.0))
    assert states(record) == [("STATIONS", "changed")]
    feature = next(axis.getFeatures())
    line = qgis_core.QgsGeometry.fromPolylineXY(
        [qgis_core.QgsPointXY(500000, 5540000), qgis_core.QgsPointXY(501001, 5540000)]
    )
    assert axis.dataProvider().changeGeometryValues({feature.id(): line})
    assert states(record) == [("AXIS", "changed"), ("STATIONS", "changed")]


def test_a_row_more_and_a_field_that_is_gone(made, toolbox, tmp_path):
    stations, _, record = made
    feature = qgis_core.QgsFeature(next(stations.getFeatures()))
    feature.setId(99)
    feature["fid"] = 99
    assert stations.dataProvider().addFeatures([feature])[0]
    assert states(record) == [("STATIONS", "changed")]
    assert stations.dataProvider().deleteAttributes([stations.fields().indexOf("height")])
    assert states(record) == [("STATIONS", "changed")]


def test_an_input_that_is_gone_is_said_to_be(made):
    stations, _, record = made
    os.remove(stations.source().split("|")[0])
    (found,) = stale_inputs(record)
    assert (found.key, found.state) == ("STATIONS", "gone") and "no longer exists" in found.sentence
    assert states(record, {stations.source(): None}) == [("STATIONS", "gone")]


def test_edits_that_are_not_saved_count(made, host):
    stations, _, record = made
    project = qgis_core.QgsProject.instance()
    project.addMapLayer(stations)
    try:
        assert states(record) == []
        assert stations.startEditing()
        feature = list(stations.getFeatures())[3]
        index = stations.fields().indexOf("height")
        assert stations.changeAttributeValue(feature.id(), index, 50.1)
        assert states(record) == [("STATIONS", "changed")]
        assert stations.rollBack()
        assert states(record) == []
    finally:
        project.takeMapLayer(stations)


def test_a_layer_in_memory(toolbox, tmp_path):
    stations, axis = toolbox.straight()
    run = toolbox.run("designheights", STATIONS=stations, AXIS=axis, OUTPUT=str(tmp_path / "made.gpkg"))
    record = record_of(run.layer())
    source = record.inputs["STATIONS"][0].source
    layers = {source: stations, record.inputs["AXIS"][0].source: axis}
    assert states(record, layers) == []
    assert states(record) == [("AXIS", "gone"), ("STATIONS", "gone")], "it lives in its project only"
    edit(stations, 0, "height", 51.0)
    assert states(record, layers) == [("STATIONS", "changed")]


def test_a_selection_is_not_compared_with_the_whole_layer(toolbox, tmp_path):
    stations, axis = toolbox.straight()
    project = qgis_core.QgsProject.instance()
    project.addMapLayer(stations)
    try:
        stations.selectByIds([f.id() for f in stations.getFeatures()][:5])
        chosen = qgis_core.QgsProcessingFeatureSourceDefinition(stations.id(), True)
        context = qgis_core.QgsProcessingContext()
        context.setProject(project)
        run = toolbox.run(
            "designheights", context=context, STATIONS=chosen, AXIS=axis, OUTPUT=str(tmp_path / "made.gpkg")
        )
        record = RunRecord.read(run.layer().customProperty(PROPERTY))
        assert record.inputs["STATIONS"][0].part and record.inputs["STATIONS"][0].rows == 5
        assert ("STATIONS", "changed") not in states(record)
    finally:
        project.takeMapLayer(stations)


def test_every_key_has_its_inputs(toolbox, tmp_path):
    """Reference, tested stations, decisions and each of several surveys; a height list of texts."""

    def place(name):
        return str(tmp_path / f"{name}.gpkg")

    stations, axis = toolbox.straight()
    fit = toolbox.run("fitreference", STATIONS=stations, AXIS=axis, SIGMA=0.001, REFERENCE="memory:")
    reference = fit.layer("REFERENCE")
    first = toolbox.run(
        "designheights", STATIONS=stations, AXIS=axis, DESIGN="reference", REFERENCE=reference, OUTPUT=place("first")
    )
    record = record_of(first.layer())
    assert set(record.inputs) == {"STATIONS", "AXIS", "REFERENCE"} and record.inputs["REFERENCE"][0].rows == 1
    given = {"STATIONS": stations, "AXIS": axis, "REFERENCE": reference}
    layers = {record.inputs[key][0].source: layer for key, layer in given.items()}
    assert len(layers) == 3 and states(record, layers) == []
    edit(reference, 0, "h0", 49.0)
    assert states(record, layers) == [("REFERENCE", "changed")]
    surveys = [toolbox.saved(first.layer(), tmp_path / f"{k}.gpkg") for k in "ab"]
    compared = record_of(toolbox.run("comparesurveys", SURVEYS=surveys, OUTPUT=place("compared")).layer())
    assert [one.source for one in compared.inputs["SURVEYS"]] == [one.source() for one in surveys]
    edit(surveys[1], 2, "design_h", 1.0)
    assert [(one.key, one.name) for one in stale_inputs(compared)] == [("SURVEYS", "b")]
    tested = toolbox.table([{"axis": "line", "station": first.column("station")[1], "flag": "kept", "w": 0.1}], "t")
    scheduled = record_of(
        toolbox.run("scheduleadjustments", STATIONS=surveys[0], TESTED=tested, OUTPUT=place("scheduled")).layer()
    )
    assert scheduled.inputs["TESTED"][0].texts == ("axis", "flag", "station") and scheduled.inputs["STATIONS"][0].hash
    rows = toolbox.saved(toolbox.table([{"station": "0+100", "height": 5.0}]), tmp_path / "list.gpkg")
    placed = record_of(toolbox.run("placestations", INPUT=rows, AXIS=axis, OUTPUT=place("placed")).layer())
    edit(rows, 0, "height", 5.5)
    assert ("INPUT", "changed") in states(placed)


def test_a_geoid_raster(toolbox, tmp_path):
    from osgeo import gdal, osr

    path = str(tmp_path / "geoid.tif")

    def write(value):
        raster = gdal.GetDriverByName("GTiff").Create(path, 20, 20, 1, gdal.GDT_Float32)
        raster.SetGeoTransform((2.0, 0.2, 0.0, 52.0, 0.0, -0.2))
        system = osr.SpatialReference()
        system.ImportFromEPSG(4326)
        raster.SetProjection(system.ExportToWkt())
        raster.GetRasterBand(1).Fill(value)
        raster.FlushCache()

    write(45.0)
    stations, axis = toolbox.straight()
    run = toolbox.run(
        "designheights", STATIONS=stations, AXIS=axis, UNDULATION="grid", GEOID=path, OUTPUT=str(tmp_path / "made.gpkg")
    )
    record = record_of(run.layer())
    assert record.inputs["GEOID"][0].window == (0, 20)
    layers = {record.inputs["STATIONS"][0].source: stations, record.inputs["AXIS"][0].source: axis}
    assert states(record, layers) == []
    write(45.5)
    assert states(record, layers) == [("GEOID", "changed")]


def test_servers_and_files_that_name_others_are_not_opened(made):
    _, _, record = made
    from dataclasses import replace

    (read,) = record.inputs["STATIONS"]
    for source in (
        "dbname='x' host=example.invalid",
        "/tmp/any.vrt",
        "//server/share/a.gpkg",
        "https://example.invalid/a",
    ):
        asked = replace(record, inputs={"STATIONS": (read.of(source),)})
        assert stale_inputs(asked) == []


@pytest.mark.parametrize("entry", ["reviewreport", "scheduleadjustments"])
def test_report_and_schedule_say_what_is_older_than_its_input(made, toolbox, tmp_path, entry):
    stations, axis, _ = made
    residuals = str(tmp_path / "residuals.gpkg")
    toolbox.run("designheights", STATIONS=stations, AXIS=axis, TOLERANCE=0.01, OUTPUT=residuals)
    given = {"reviewreport": {"OUTPUT": None, "HTML": str(tmp_path / "r.html")}}.get(entry, {})
    run = toolbox.run(entry, STATIONS=residuals, **given)
    assert not any("older than" in text for text in run.warnings)
    edit(stations, 3, "height", 50.1)
    run = toolbox.run(entry, STATIONS=residuals, **given)
    (said,) = [text for text in run.warnings if "older than" in text]
    assert said == (
        "Layer 'residuals' (STATIONS) is older than what it was made from: the input STATIONS, 'stations', has changed "
        "since; run that step again."
    )
