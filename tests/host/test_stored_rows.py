"""Rows read in bulk are to the bit those that the host hands out one by one, which is the outside source here."""

import threading

import numpy as np
import pytest

qgis_core = pytest.importorskip("qgis.core")
gdal = pytest.importorskip("osgeo.gdal")
ogr = pytest.importorskip("osgeo.ogr")

pytestmark = pytest.mark.usefixtures("host")


@pytest.fixture(autouse=True)
def few(monkeypatch):
    """Small layers are read in bulk too, in several batches."""
    from tautline.algorithms.boundary import stored_rows

    monkeypatch.setattr(stored_rows, "_FEWEST", 1)
    monkeypatch.setattr(stored_rows, "_BATCH", 7)
    monkeypatch.setattr(stored_rows, "_TEXT_BATCH", 3)
    bulk = ogr.Layer.GetArrowStreamAsNumPy if hasattr(ogr.Layer, "GetArrowStreamAsNumPy") else None
    if bulk is None:
        pytest.skip("this GDAL has no such stream")


FIELDS = {
    "real": (ogr.OFTReal, ogr.OFSTNone),
    "whole": (ogr.OFTInteger, ogr.OFSTNone),
    "long": (ogr.OFTInteger64, ogr.OFSTNone),
    "words": (ogr.OFTString, ogr.OFSTNone),
    "small": (ogr.OFTInteger, ogr.OFSTInt16),
    "single": (ogr.OFTReal, ogr.OFSTFloat32),
    "yes": (ogr.OFTInteger, ogr.OFSTBoolean),
    "day": (ogr.OFTDate, ogr.OFSTNone),
    "moment": (ogr.OFTDateTime, ogr.OFSTNone),
}
BULK = ("real", "whole", "long", "words")
ROWS = [
    {"real": 0.1, "whole": 7, "long": 2**62 + 1, "words": " a b\t", "small": 3, "single": 0.1, "yes": 1},
    {"real": -0.0, "whole": -(2**31), "long": -(2**63), "words": "é ü 木", "day": "2024/02/29"},
    {},
    {"real": 1e-310, "whole": 0, "long": 2**53 + 1, "words": "", "moment": "2024/02/29 12:30:15.25+01"},
    {"real": 250.123456789012, "words": "x" * 5000, "yes": 0},
    {"real": 1e300, "words": "12.5"},
] * 3


def geopackage(path, kind, points, rows=ROWS, name="points"):
    """A GeoPackage with a table of ``rows`` at ``points`` (well-known texts, None for none), as a map layer."""
    data = gdal.GetDriverByName("GPKG").Create(str(path), 0, 0, 0, gdal.GDT_Unknown)
    layer = data.CreateLayer(name, None, kind)
    for field, (sort, part) in FIELDS.items():
        about = ogr.FieldDefn(field, sort)
        about.SetSubType(part)
        layer.CreateField(about)
    for row, text in zip(rows, points):
        feature = ogr.Feature(layer.GetLayerDefn())
        for field, value in row.items():
            feature.SetField(field, value)
        if text is not None:
            feature.SetGeometry(ogr.CreateGeometryFromWkt(text))
        layer.CreateFeature(feature)
    layer.DeleteFeature(2)  # so that the ids are no row numbers
    del layer, data
    found = qgis_core.QgsVectorLayer(f"{path}|layername={name}", name, "ogr")
    assert found.isValid()
    return found


def both(layer, numbers=(), texts=(), geometry=True):
    """What is read in bulk, None where that is left to the host's way, and the Table read by the host's way."""
    from tautline.algorithms.boundary import stored_rows
    from tautline.algorithms.boundary.tables import read_table

    index = {field.name(): k for k, field in enumerate(layer.fields())}
    asked = [{name: index[name] for name in names} for names in (numbers, texts)]
    context = qgis_core.QgsProcessingContext()
    source = qgis_core.QgsProcessingUtils.variantToSource(layer, context)
    stored_rows.remember(source, stored_rows.stored_layer(layer))
    plain = qgis_core.QgsProcessingUtils.variantToSource(layer, context)
    return stored_rows.read_stored(source, *asked, None, geometry), read_table(plain, *asked, None, geometry)


def assert_same(found, table):
    ids, columns, xyz = found
    assert ids.dtype == table.ids.dtype and ids.tolist() == table.ids.tolist()
    for key, column in table.columns.items():
        if isinstance(column, list):
            assert columns[key] == column, key
        else:
            assert columns[key].dtype == column.dtype and columns[key].tobytes() == column.tobytes(), key
    for one, other in zip(xyz or (), table.xyz or (), strict=True):
        assert one.dtype == other.dtype and one.tobytes() == other.tobytes()
    # And so are the fingerprints that the record of a run keeps.
    assert table.read.rows == len(ids)


PLACES = {
    "flat": (ogr.wkbPoint, "POINT ({x} {y})"),
    "with Z": (ogr.wkbPoint25D, "POINT Z ({x} {y} {z})"),
    "with M": (ogr.wkbPointM, "POINT M ({x} {y} {z})"),
    "with Z and M": (ogr.wkbPointZM, "POINT ZM ({x} {y} {z} 5)"),
    "multipoints": (ogr.wkbMultiPoint, "MULTIPOINT (({x} {y}))"),
    "multipoints with Z": (ogr.wkbMultiPoint25D, "MULTIPOINT Z (({x} {y} {z}))"),
}


def places(text, number=18):
    random = np.random.default_rng(3)
    return [text.format(x=x, y=y, z=z) for x, y, z in random.normal(0.0, 1e5, (number, 3)).tolist()]


@pytest.mark.parametrize("kind", PLACES)
def test_points_of_every_kind(tmp_path, kind):
    sort, text = PLACES[kind]
    found, table = both(geopackage(tmp_path / "a.gpkg", sort, places(text)), ("real",))
    assert found is not None
    assert_same(found, table)


def test_numbers_texts_and_null(tmp_path):
    layer = geopackage(tmp_path / "a.gpkg", ogr.wkbPoint, places("POINT ({x} {y})"))
    found, table = both(layer, ("fid", "real", "whole", "long"))
    assert_same(found, table)
    for geometry in (True, False):
        found, table = both(layer, (), ("fid", "real", "whole", "long", "words"), geometry)
        assert_same(found, table)
        assert (found[2] is None) is not geometry
    assert found[1]["words"][1] == "" and found[1]["long"][0] == str(2**62 + 1)


@pytest.mark.parametrize("field", sorted(set(FIELDS) - set(BULK)))
def test_other_types_are_left_to_the_host(tmp_path, field):
    layer = geopackage(tmp_path / "a.gpkg", ogr.wkbPoint, places("POINT ({x} {y})"))
    found, table = both(layer, (), (field,))
    assert found is None and len(table.ids) == len(ROWS) - 1
    # Another field of such a type beside those asked for does no harm.
    assert both(layer, ("real",))[0] is not None


ODD = {
    "no geometry": [None, "POINT (1 2)"],
    "empty": ["POINT EMPTY", "POINT (1 2)"],
    "two points": ["MULTIPOINT ((1 2),(3 4))", "MULTIPOINT ((1 2))"],
    "an infinite Z": ["POINT Z (1 2 inf)", "POINT Z (1 2 3)"],
}


@pytest.mark.parametrize("what", ODD)
def test_odd_points_are_left_to_the_host_which_refuses_them(tmp_path, what):
    from tautline.algorithms.core.errors import InputError

    sort = {"two points": ogr.wkbMultiPoint, "an infinite Z": ogr.wkbPoint25D}.get(what, ogr.wkbPoint)
    plain = {"two points": "MULTIPOINT ((0 0))", "an infinite Z": "POINT Z (0 0 0)"}.get(what, "POINT (0 0)")
    points = [plain, plain, *ODD[what], *([plain] * 4)]
    if what == "an infinite Z":
        points[2] = None
    layer = geopackage(tmp_path / "a.gpkg", sort, points)
    if what == "an infinite Z":
        feature = next(f for f in layer.getFeatures() if not f.hasGeometry())
        shape = qgis_core.QgsGeometry(qgis_core.QgsPoint(1.0, 2.0, float("inf")))
        assert layer.dataProvider().changeGeometryValues({feature.id(): shape})
    with pytest.raises(InputError, match="row 2"):
        both(layer)
    from tautline.algorithms.boundary import stored_rows

    source = qgis_core.QgsProcessingUtils.variantToSource(layer, qgis_core.QgsProcessingContext())
    stored_rows.remember(source, stored_rows.stored_layer(layer))
    assert stored_rows.read_stored(source, {}, {}, None, True) is None


def test_points_of_another_kind_in_the_table_are_left_to_the_host(tmp_path):
    mixed = [*places("POINT ({x} {y})", 4), *places("POINT Z ({x} {y} {z})", 4)]
    found, table = both(geopackage(tmp_path / "a.gpkg", ogr.wkbUnknown, mixed))
    assert found is None and len(table.ids) == 7


def test_infinite_numbers_are_left_to_the_host(tmp_path):
    from tautline.algorithms.core.errors import InputError

    rows = [{"real": 1.0}, {}, {"real": float("inf")}]
    layer = geopackage(tmp_path / "a.gpkg", ogr.wkbPoint, places("POINT ({x} {y})", 3), rows)
    with pytest.raises(InputError, match="row 2: the value is infinite"):
        both(layer, ("real",))


def test_only_layers_as_stored_are_read_in_bulk(tmp_path):
    from tautline.algorithms.boundary.stored_rows import stored_layer

    path = tmp_path / "a.gpkg"
    layer = geopackage(path, ogr.wkbPoint, places("POINT ({x} {y})"))
    assert stored_layer(layer).table == "points"
    assert stored_layer(qgis_core.QgsVectorLayer(str(path), "a", "ogr")) is not None
    layer.startEditing()
    assert stored_layer(layer) is None
    layer.rollBack()
    assert layer.setSubsetString('"whole" > 0')
    assert stored_layer(layer) is None
    for source in (f'{path}|layername=points|subset="whole" > 0', f"{path}|layername=points|geometrytype=Point"):
        assert stored_layer(qgis_core.QgsVectorLayer(source, "a", "ogr")) is None
    memory = qgis_core.QgsVectorLayer("Point?field=real:double", "m", "memory")
    assert stored_layer(memory) is None and stored_layer(None) is None


@pytest.mark.parametrize("styles", [True, False])
def test_the_only_table_of_a_file_is_known_beside_the_hosts_styles(tmp_path, styles):
    path = tmp_path / "a.gpkg"
    layer = geopackage(path, ogr.wkbPoint, places("POINT ({x} {y})"))
    if styles:
        layer.saveStyleToDatabase("look", "", True, "")
    else:
        gdal.OpenEx(str(path), gdal.OF_VECTOR | gdal.OF_UPDATE).CreateLayer("another", None, ogr.wkbNone)
    assert gdal.OpenEx(str(path), gdal.OF_VECTOR).GetLayerCount() == 2
    found, table = both(qgis_core.QgsVectorLayer(str(path), "a", "ogr"), BULK[:3], BULK[3:])
    assert (found is not None) == styles
    if styles:
        assert_same(found, table)


def test_a_layer_of_another_thread_is_not_asked(tmp_path):
    from tautline.algorithms.boundary.stored_rows import stored_layer

    layer, found = geopackage(tmp_path / "a.gpkg", ogr.wkbPoint, places("POINT ({x} {y})")), []
    one = threading.Thread(target=lambda: found.append(stored_layer(layer)))
    one.start()
    one.join()
    assert found == [None] and stored_layer(layer) is not None


def test_a_virtual_field_is_left_to_the_host(tmp_path):
    layer = geopackage(tmp_path / "a.gpkg", ogr.wkbPoint, places("POINT ({x} {y})"))
    layer.addExpressionField('"real" * 2', qgis_core.QgsField("double_real", layer.fields()[1].type()))
    found, table = both(layer, ("real",))
    assert found is None and len(table.ids) == len(ROWS) - 1


def test_a_table_that_is_gone_is_left_to_the_host(tmp_path):
    from tautline.algorithms.boundary import stored_rows

    layer = geopackage(tmp_path / "a.gpkg", ogr.wkbPoint, places("POINT ({x} {y})"))
    source = qgis_core.QgsProcessingUtils.variantToSource(layer, qgis_core.QgsProcessingContext())
    for gone in (str(tmp_path / "b.gpkg"), "another"):
        stored = (gone, "points") if gone.endswith(".gpkg") else (str(tmp_path / "a.gpkg"), gone)
        stored_rows.remember(source, stored_rows.StoredLayer(*stored))
        assert stored_rows.read_stored(source, {}, {}, None, True) is None


def same_run(toolbox, tmp_path, monkeypatch, **parameters):
    """Rows of one run in bulk and of one by the host's way, and how often the stations were read in bulk."""
    from tautline.algorithms.boundary import stored_rows, tables

    read, bulk = stored_rows.read_stored, []

    def counted(*given):
        found = read(*given)
        bulk.append(found is not None and given[0].sourceName() == "stations")
        return found

    monkeypatch.setattr(tables, "read_stored", counted)
    quick = toolbox.run("designheights", OUTPUT=str(tmp_path / "quick.gpkg"), **parameters)
    number = sum(bulk)
    monkeypatch.setattr(tables, "read_stored", lambda *given: None)
    slow = toolbox.run("designheights", OUTPUT=str(tmp_path / "slow.gpkg"), **parameters)
    assert quick.said.split("Results:")[0] == slow.said.split("Results:")[0]
    assert quick.rows() == slow.rows()
    assert [f.geometry().asWkb() for f in quick.layer().getFeatures()] == [
        f.geometry().asWkb() for f in slow.layer().getFeatures()
    ]
    return number


def test_a_run_in_bulk_is_the_run_by_the_hosts_way(toolbox, tmp_path, monkeypatch):
    stations, axis = toolbox.straight(41)
    saved = toolbox.saved(stations, tmp_path / "stations.gpkg")
    assert same_run(toolbox, tmp_path, monkeypatch, STATIONS=saved, AXIS=axis, TOLERANCE=0.001) >= 1


def test_what_entries_have_written_the_next_one_reads_in_bulk(toolbox, tmp_path, monkeypatch):
    """As it is written: with its style beside it in the file. Read are the surveys and what they were made from."""
    from tautline.algorithms.boundary import stored_rows, tables

    stations, axis = toolbox.straight(41)
    saved = toolbox.saved(stations, tmp_path / "stations.gpkg")
    surveys = [str(tmp_path / f"{name}.gpkg") for name in ("first", "second")]
    for path in surveys:
        toolbox.run("designheights", STATIONS=saved.source(), AXIS=axis, OUTPUT=path)
    read, bulk = stored_rows.read_stored, []

    def watched(source, *given):
        found = read(source, *given)
        bulk.append((source.sourceName(), found is not None))
        return found

    monkeypatch.setattr(tables, "read_stored", watched)
    toolbox.run("comparesurveys", SURVEYS=surveys, SIGMA=0.003, OUTPUT=str(tmp_path / "compared.gpkg"))
    assert {name for name, _ in bulk} >= {"first", "second", "stations"}
    assert [name for name, quick in bulk if not quick] == []


def test_of_a_selection_and_of_edits_that_are_not_saved_the_host_is_asked(toolbox, tmp_path, monkeypatch):
    stations, axis = toolbox.straight(41)
    saved = toolbox.saved(stations, tmp_path / "stations.gpkg")
    qgis_core.QgsProject.instance().addMapLayer(saved)
    try:
        saved.selectByIds([3, 5, 7, 11])
        selected = qgis_core.QgsProcessingFeatureSourceDefinition(saved.id(), True)
        assert same_run(toolbox, tmp_path, monkeypatch, STATIONS=selected, AXIS=axis) == 0
        run = toolbox.run("designheights", STATIONS=selected, AXIS=axis)
        assert len(run.rows()) == 4
        saved.startEditing()
        saved.changeAttributeValue(1, saved.fields().indexOf("height"), 51.0)
        assert same_run(toolbox, tmp_path, monkeypatch, STATIONS=saved, AXIS=axis) == 0
        assert toolbox.run("designheights", STATIONS=saved, AXIS=axis).column("height")[0] == 51.0
        saved.rollBack()
    finally:
        qgis_core.QgsProject.instance().removeMapLayer(saved.id())
