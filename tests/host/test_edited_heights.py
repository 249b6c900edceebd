"""Heights edited by hand after residuals were computed from them: told by all who read the residuals."""

import pathlib

import pytest

pyproj = pytest.importorskip("pyproj")
qgis_core = pytest.importorskip("qgis.core")

from tautline.algorithms.boundary.slices import finished  # noqa: E402
from tautline.algorithms.entry.layer_records import record_of_layer  # noqa: E402
from tautline.algorithms.entry.written_rows import rows_now_in_slices  # noqa: E402

WGS = pyproj.Geod(ellps="WGS84")
TOLD = "is not design height plus residual"
READERS = ["drawdeviations", "scheduleadjustments", "reviewreport"]


def survey(toolbox, unit, field="height", with_z=False):
    """Seven stations every 100 m along a geodesic (the library's), heights in ``unit`` metres, and the axis."""
    rows, ahead, types = [], 40.0, {field: "double"}
    for k in range(7):
        lon, lat = WGS.fwd(8.0, 50.0, ahead, 100.0 * k)[:2] if k else (8.0, 50.0)
        height = (120.0 + 0.01 * (k % 3)) / unit
        rows.append({"at": (lon, lat, height) if with_z else (lon, lat), "name": f"p{k}"})
        if not with_z:
            rows[-1][field] = height
    axis = toolbox.lines([{"at": [rows[0]["at"][:2], rows[-1]["at"][:2]], "name": "wall"}])
    return toolbox.points(rows, kind="PointZ" if with_z else "Point", types={} if with_z else types), axis


def designed(toolbox, tmp_path, unit="metre", **more):
    metres = {"metre": 1.0, "foot": 0.3048}[unit]
    stations, axis = survey(toolbox, metres, **more)
    given = {"HEIGHT_UNIT": unit, "TOLERANCE": 0.05, "OUTPUT": str(tmp_path / "designed.gpkg")}
    return toolbox.run("designheights", STATIONS=stations, AXIS=axis, **given).layer(), axis


def more_of(entry, axis, tmp_path):
    return {
        "drawdeviations": {"AXIS": axis, "BARS": "memory:", "OUTPUT": None},
        "scheduleadjustments": {"TOLERANCE": 0.05},
        "reviewreport": {"HTML": str(tmp_path / "r.html"), "OUTPUT": None},
    }[entry]


def edit(layer, row, name, by):
    feature = list(layer.getFeatures())[row]
    value = None if by is None else feature[name] + by
    assert layer.dataProvider().changeAttributeValues({feature.id(): {layer.fields().indexOf(name): value}})


@pytest.mark.parametrize("unit", ["metre", "foot"])
@pytest.mark.parametrize("entry", READERS)
def test_every_reader_of_residuals_tells_edited_heights(toolbox, tmp_path, entry, unit):
    layer, axis = designed(toolbox, tmp_path, unit)
    more = more_of(entry, axis, tmp_path)
    assert TOLD not in toolbox.run(entry, STATIONS=layer, **more).said
    edit(layer, 3, "height", 0.2)
    edit(layer, 5, "height", 2e-5 / (1.0 if unit == "metre" else 0.3048))  # two hundredths of a millimetre
    run = toolbox.run(entry, STATIONS=layer, **more)
    (sentence,) = [text for text in run.warnings if TOLD in text]
    assert sentence.startswith(
        "Layer 'OUTPUT': the height of 2 stations is not design height plus residual, the first in row 4 (field "
        "'height'): it was changed after the run; 'Design heights and residuals' on this layer computes anew."
    )
    if entry == "reviewreport":
        assert TOLD in pathlib.Path(more["HTML"]).read_text("utf-8")
    # What it advises helps.
    anew = toolbox.run("designheights", STATIONS=layer, AXIS=axis, TOLERANCE=0.05, OUTPUT=str(tmp_path / "anew.gpkg"))
    assert TOLD not in anew.said + toolbox.run(entry, STATIONS=anew.layer(), **more).said


def test_a_height_taken_out_is_told_and_what_rounding_makes_is_not(toolbox, tmp_path):
    layer, _ = designed(toolbox, tmp_path)
    edit(layer, 1, "height", 4e-6)
    assert TOLD not in toolbox.run("scheduleadjustments", STATIONS=layer).said
    edit(layer, 2, "height", None)
    assert "the height of 1 station is not design height plus residual, the first in row 3" in (
        toolbox.run("scheduleadjustments", STATIONS=layer).said
    )


def test_heights_are_those_that_the_record_names(toolbox, tmp_path):
    layer, axis = designed(toolbox, tmp_path, field="as_built")
    # A field 'height' that came later is not what the residuals are of.
    layer.dataProvider().addAttributes([qgis_core.QgsField("height", layer.fields().field("as_built").type())])
    layer.updateFields()
    assert TOLD not in toolbox.run("scheduleadjustments", STATIONS=layer).said
    stations, axis = survey(toolbox, 1.0, field="as_built")
    given = {"HEIGHT_FIELD": "as_built", "OUTPUT": str(tmp_path / "named.gpkg")}
    layer = toolbox.run("designheights", STATIONS=stations, AXIS=axis, **given).layer()
    edit(layer, 0, "as_built", -0.1)
    assert "the first in row 1 (field 'as_built')" in toolbox.run("scheduleadjustments", STATIONS=layer).said
    assert layer.dataProvider().deleteAttributes([layer.fields().indexOf("as_built")])
    layer.updateFields()
    assert TOLD not in toolbox.run("scheduleadjustments", STATIONS=layer).said


def test_heights_of_z(toolbox, tmp_path):
    layer, axis = designed(toolbox, tmp_path, with_z=True)
    more = more_of("drawdeviations", axis, tmp_path)
    assert TOLD not in toolbox.run("drawdeviations", STATIONS=layer, **more).said
    feature = list(layer.getFeatures())[6]
    point = feature.geometry().constGet().clone()
    point.setZ(point.z() + 0.03)
    assert layer.dataProvider().changeGeometryValues({feature.id(): qgis_core.QgsGeometry(point)})
    assert "the first in row 7 (the points' Z)" in toolbox.run("drawdeviations", STATIONS=layer, **more).said


def test_the_docks_compare_the_same_rows(toolbox, tmp_path):
    layer, _ = designed(toolbox, tmp_path, "foot")
    record, context = record_of_layer(layer, qgis_core.QgsProcessingContext()), qgis_core.QgsProcessingContext()
    assert finished(rows_now_in_slices(layer, record, context)).edited == ()
    edit(layer, 3, "height", 0.2)
    now = finished(rows_now_in_slices(layer, record, context))
    assert now.edited == (3,) and now.reading.hash != record.written.hash
