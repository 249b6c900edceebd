"""GeoPackages that are empty, cut off, of another kind or locked, as an output's place and as an input."""

import sqlite3

import pytest

qgis_core = pytest.importorskip("qgis.core")

DAMAGED = {
    "empty": lambda whole: b"",
    "cut off": lambda whole: whole[: len(whole) // 2],
    "header only": lambda whole: whole[:100],
    "text": lambda whole: b"this is no database\n" * 40,
    "zeros": lambda whole: bytes(4096),
}


@pytest.fixture
def straight(toolbox):
    stations, axis = toolbox.straight()
    return {"STATIONS": stations, "AXIS": axis}


@pytest.fixture
def damaged(toolbox, straight, tmp_path):
    def made(kind, name="there.gpkg"):
        whole = tmp_path / "whole.gpkg"
        toolbox.saved(straight["STATIONS"], whole)
        path = tmp_path / name
        path.write_bytes(DAMAGED[kind](whole.read_bytes()))
        return path

    return made


@pytest.mark.parametrize("kind", DAMAGED)
def test_a_damaged_file_is_replaced_as_a_whole(toolbox, straight, damaged, kind):
    """A plain path stands for the whole file, whatever it is."""
    path = damaged(kind)
    run = toolbox.run("designheights", OUTPUT=str(path), **straight)
    assert len(run.rows()) == 11
    with sqlite3.connect(path) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)


@pytest.mark.parametrize("kind", DAMAGED)
def test_no_table_is_written_into_a_damaged_file(toolbox, straight, damaged, kind):
    path = damaged(kind)
    before = path.read_bytes()
    text = toolbox.refusal("designheights", OUTPUT=f"ogr:dbname='{path}' table=\"new\" (geom)", **straight)
    assert "OUTPUT" in text and str(path) in text and len(text) < 400
    assert path.read_bytes() == before and not list(path.parent.glob(".tautline-*"))


@pytest.mark.parametrize("kind", DAMAGED)
@pytest.mark.parametrize("key", ["STATIONS", "AXIS"])
def test_a_damaged_input(toolbox, straight, damaged, kind, key):
    path = damaged(kind)
    before = path.read_bytes()
    text = toolbox.refusal("designheights", **{**straight, key: str(path)})
    assert key in text and str(path) in text and "Traceback" not in text
    assert path.read_bytes() == before


@pytest.fixture
def locked():
    """Keep a GeoPackage locked for writing, as another program does in a long transaction."""
    held = []

    def lock(path):
        connection = sqlite3.connect(path, isolation_level=None)
        connection.execute("BEGIN EXCLUSIVE")
        held.append(connection)

    yield lock
    for connection in held:
        connection.execute("ROLLBACK")
        connection.close()


def test_a_locked_file_as_place_of_a_table(toolbox, straight, tmp_path, locked):
    path = tmp_path / "kept.gpkg"
    toolbox.saved(straight["STATIONS"], path)
    place = f"ogr:dbname='{path}' table=\"new\" (geom)"
    locked(path)
    before = path.read_bytes()
    text = toolbox.refusal("designheights", OUTPUT=place, **straight)
    assert "in use by another program" in text and str(path) in text and "full" not in text
    assert path.read_bytes() == before


def test_a_path_with_a_control_character(toolbox, straight, tmp_path):
    for key, path in (("OUTPUT", f"{tmp_path}/a\0b.gpkg"), ("SUMMARY", f"{tmp_path}/a\nb\0.csv")):
        text = toolbox.refusal("designheights", **{**straight, key: path})
        assert key in text and "control character" in text
    assert "HTML" in toolbox.refusal("testcurvature", HTML=f"{tmp_path}/x\0.html", **straight)
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize("ending", [".gpkg", ".shp", ".SHP", ".csv"])
def test_a_document_in_the_name_of_a_layer(toolbox, straight, tmp_path, ending):
    """A page called like a GeoPackage would replace all that is in it."""
    text = toolbox.refusal("testcurvature", HTML=str(tmp_path / f"page{ending}"), **straight)
    assert f"HTML ends in '{ending.lower()}'" in text and ".html" in text


@pytest.mark.parametrize("place", ["memory:", "ogr:dbname='/tmp/x.gpkg' table=\"t\"", "postgres:x"])
def test_a_document_where_layers_are_kept(toolbox, straight, place):
    assert "a document goes into a file" in toolbox.refusal("testcurvature", HTML=place, **straight)


def test_a_missing_spatial_index_is_told(toolbox, straight, tmp_path, monkeypatch):
    """The host says nothing where the index of a written layer could not be made."""
    from tautline.algorithms.boundary import written_check

    looked = written_check.rows_and_index

    def without_index(path, name):
        with sqlite3.connect(path) as connection:
            connection.execute("DELETE FROM gpkg_extensions WHERE extension_name = 'gpkg_rtree_index'")
            connection.execute("DROP TABLE rtree_plain_geom")
        return looked(path, name)

    run = toolbox.run("designheights", OUTPUT=str(tmp_path / "indexed.gpkg"), **straight)
    assert "spatial index" not in run.said
    monkeypatch.setattr(written_check, "rows_and_index", without_index)
    run = toolbox.run("designheights", OUTPUT=str(tmp_path / "plain.gpkg"), **straight)
    assert [text for text in run.warnings if "OUTPUT has no spatial index" in text]
