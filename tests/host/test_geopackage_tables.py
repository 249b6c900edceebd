"""Tables put in each other's place: the same whether GDAL tells a failure by what it returns or by raising."""

import os

import pytest

qgis_core = pytest.importorskip("qgis.core")
gdal = pytest.importorskip("osgeo.gdal")
ogr = pytest.importorskip("osgeo.ogr")


@pytest.fixture(params=[False, True], ids=["returning", "raising"])
def tables(request):
    """The module, with GDAL as it is and as another plugin may have set it."""
    from tautline.algorithms.boundary import geopackage_tables

    changed = [one for one in (gdal, ogr) if bool(one.GetUseExceptions()) != request.param]
    for module in changed:
        module.UseExceptions() if request.param else module.DontUseExceptions()
    yield geopackage_tables
    # GDAL takes them back in the reverse order only; the second may have gone with the first.
    for module in changed[::-1]:
        if bool(module.GetUseExceptions()) == request.param:
            module.DontUseExceptions() if request.param else module.UseExceptions()


@pytest.fixture
def file(tmp_path):
    """A GeoPackage with the tables 'old', two rows, and 'new', one row."""
    place = str(tmp_path / "file.gpkg")
    data = ogr.GetDriverByName("GPKG").CreateDataSource(place)
    for name, number in (("old", 2), ("new", 1)):
        layer = data.CreateLayer(name, geom_type=ogr.wkbNone)
        for _ in range(number):
            layer.CreateFeature(ogr.Feature(layer.GetLayerDefn()))
    del layer, data
    return place


def test_one_takes_the_place_of_the_other(tables, file):
    tables.put_in_place(file, [("new", "old")])
    assert tables.has_table(file, "OLD") and not tables.has_table(file, "new")
    assert tables.rows_and_index(file, "old")[0] == 1
    tables.drop_table(file, "old")
    tables.drop_table(file, "old")
    assert not tables.has_table(file, "old")


def test_all_stays_where_one_is_gone(tables, file):
    with pytest.raises(tables.NotReplaced, match="the table 'gone'"):
        tables.put_in_place(file, [("new", "old"), ("gone", "new")])
    assert [tables.rows_and_index(file, name)[0] for name in ("old", "new")] == [2, 1]


def test_what_cannot_be_opened_is_refused_in_words(tables, tmp_path):
    for name, text in (("none.gpkg", None), ("text.gpkg", "no database")):
        place = str(tmp_path / name)
        if text is not None:
            (tmp_path / name).write_text(text)
        for change in (lambda path: tables.put_in_place(path, [("a", "b")]), lambda path: tables.drop_table(path, "a")):
            with pytest.raises(tables.NotReplaced, match="is in use by another program"):
                change(place)
        assert not tables.has_table(place, "a") and tables.rows_and_index(place, "a") == (0, True)
        assert os.path.exists(place) == (text is not None)
