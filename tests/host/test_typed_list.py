"""A typed list read by the reader of files: what is said beside lines, what a pasted heading means, and its layer."""

import pytest

pytest.importorskip("qgis.core")

METRES = ("metre", "metre")


@pytest.fixture
def parts(host):
    from tautline.algorithms.language.units import Units
    from tautline.plugin.guided import typed_list_checks, typed_list_layer, typed_list_model

    return Units, typed_list_checks, typed_list_model, typed_list_layer


def model_of(parts, lines, axes=("pier",), units=METRES):
    return parts[2].TypedListModel(list(axes), parts[0](*units), [dict(zip(("station", "height"), x)) for x in lines])


def test_feet_and_inches_count_in_feet_only(parts):
    lines = [("0+00", "12'-6\""), ("0+50", "12'-6 3/4\""), ("1+00", "12.5")]
    assert model_of(parts, lines, units=("foot", "foot")).result.told == {}
    told = model_of(parts, lines).result.told
    assert {row: kind for row, (kind, _) in told.items()} == {0: "problem", 1: "problem"}
    assert "not in the unit of the run" in told[0][1]


def test_comments_and_headings_are_no_readings_and_no_problems(parts):
    result = model_of(parts, [("Sta", "Elev (ft)"), ("# by the tower", ""), ("0+00", "12.5"), ("0+50", "")]).result
    assert [result.told[row][0] for row in (0, 1, 3)] == ["wait"] * 3 and 2 not in result.told
    assert (result.number, result.refused) == (2, 0)


def test_several_axes_are_asked_for_by_name(parts):
    model = parts[2].TypedListModel(
        ["north", "east"],
        parts[0](*METRES),
        [
            {"axis": "north", "station": "0", "height": "5"},
            {"station": "0", "height": "5"},
            {"axis": "west", "station": "0", "height": "5"},
            {"axis": "north", "station": "50", "height": "5"},
        ],
    )
    assert set(model.result.told) == {1, 2}
    assert "names no axis" in model.result.told[1][1] and "no axis 'west'" in model.result.told[2][1]


@pytest.mark.parametrize("cell", ["184.2", "148,2", "1.482.0", "x", "", "148.2001"])
@pytest.mark.parametrize("row", [0, 7, 19])
def test_a_changed_line_is_judged_as_if_all_were_read_again(parts, row, cell):
    lines = [(str(50 * k), f"{148.2 + 0.002 * (k % 3):.4f}") for k in range(20)]
    model = model_of(parts, lines)
    model.setData(model.index(row, 1), cell)
    model.check()
    lines[row] = (lines[row][0], cell)
    assert model.result == model_of(parts, lines).result
    model.undo()
    model.check()
    assert model.result.told == {}


def test_insertions_and_deletions_are_judged_as_if_all_were_read_again(parts):
    lines = [(str(50 * k), f"{148.2 + 0.002 * (k % 3):.4f}") for k in range(20)]
    model = model_of(parts, lines)
    model.replace(4, 3, [])
    model.replace(10, 0, [{"station": "5", "height": "abc"}, {}])
    model.check()
    wanted = lines[:4] + lines[7:]
    wanted[10:10] = [("5", "abc"), ("", "")]
    assert model.result == model_of(parts, wanted).result and model.result.refused == 1


def test_an_open_decimal_sign_is_asked_in_the_words_of_the_panel(parts):
    result = model_of(parts, [("0", "1,345"), ("50", "1,346")]).result
    assert "decimal comma" in result.problem and "DECIMAL_SIGN" not in result.problem


def test_pasted_headings_say_column_and_unit(parts):
    columns = ["station", "height", "offset", "remark"]
    found = parts[1].understood([["Level no. 3", ""], ["Elev (ft)", "Sta"], ["12.5", "0+00"]], columns, "offset")
    assert found.lines == [{"height": "12.5", "station": "0+00"}] and found.units == {"height": "foot"}
    found = parts[1].understood([["3.5", "by the tower", "more"]], columns, "offset")
    assert found.lines == [{"offset": "3.5", "remark": "by the tower"}] and "left out: 3" in found.notes[0]


def test_headings_in_a_unit_that_is_not_read_are_refused(parts):
    with pytest.raises(Exception, match="'Elev \\(mm\\)' is in millimetres, but lists are read in metres or feet"):
        parts[1].understood(
            [["Sta", "Elev (mm)"], ["0", "148200"]], ["station", "height", "offset", "remark"], "station"
        )


def test_a_kept_list_is_written_anew_into_its_own_table(parts, tmp_path):
    from qgis.core import QgsProject

    place, layers = str(tmp_path / "results.gpkg"), parts[3]
    first = layers.written(None, [{"station": "0+00", "height": "12,5"}], place)
    other = layers.written(None, [{"station": "1+00", "height": "1"}], place)
    again = layers.written(first, [{"station": "0+00", "height": "12,6", "remark": "r"}], place)
    try:
        assert again is first and layers.is_typed_list(first)
        assert [(x["station"], x["height"], x["remark"]) for x in layers.lines_of(first)] == [("0+00", "12,6", "r")]
        assert first.source() != other.source() and layers.lines_of(other)[0]["station"] == "1+00"
        first.startEditing()
        with pytest.raises(Exception, match="is being edited"):
            layers.written(first, [], place)
        first.rollBack()
    finally:
        QgsProject.instance().removeMapLayers([first.id(), other.id()])


def test_a_folder_that_is_not_there_is_told(parts, tmp_path):
    with pytest.raises(Exception, match="no folder"):
        parts[3].written(None, [{"station": "0", "height": "1"}], str(tmp_path / "gone" / "results.gpkg"))
