"""placestations on lists as people keep them: what is read how is told, what is doubtful is named, nothing
is changed.
"""

import pytest


@pytest.fixture
def axis(toolbox):
    return toolbox.lines([{"at": [(500000.0, 5540000.0), (503000.0, 5540000.0)], "name": "east"}], "EPSG:32631")


@pytest.fixture
def wings(toolbox):
    return toolbox.lines(
        [
            {"at": [(500000.0, 5540000.0), (503000.0, 5540000.0)], "name": "East wing"},
            {"at": [(500000.0, 5540000.0), (500000.0, 5543000.0)], "name": "North wing"},
        ],
        "EPSG:32631",
    )


def run(toolbox, rows, axis, **more):
    return toolbox.run("placestations", INPUT=toolbox.table(rows), AXIS=axis, REJECTED="memory:", **more)


def test_decimal_commas_and_thousands(toolbox, axis):
    found = run(
        toolbox, [{"station": "0+100,5", "height": "1.102,345"}, {"station": "Sta 0+200", "height": "1.103,5"}], axis
    )
    assert found.column("height") == [1102.345, 1103.5] and found.column("chainage") == pytest.approx([100.5, 200.0])
    assert "The height has decimal comma, thousands in groups." in found.info


def test_feet_and_inches(toolbox, axis):
    found = run(
        toolbox,
        [{"station": "12+50", "height": "112'-6 3/4\""}, {"station": "13+00", "height": "112.5"}],
        axis,
        HEIGHT_UNIT="foot",
    )
    assert found.column("height") == pytest.approx([112.5625, 112.5], abs=1e-12)
    assert any("feet and inches" in text for text in found.info)
    metric = run(toolbox, [{"station": "0+100", "height": "112'-6\""}, {"station": "0+200", "height": "34.5"}], axis)
    assert metric.column("height") == [34.5]
    assert "not in the unit of the run" in metric.column("reason", "REJECTED")[0]


def test_headings_comments_and_blank_rows_are_told_and_kept_aside(toolbox, axis):
    rows = [
        {"station": "station", "height": "height (m)"},
        {"station": "# second page", "height": None},
        {"station": None, "height": None},
        {"station": "0+100", "height": "5.1"},
        {"station": "0+200", "height": "x"},
    ]
    found = run(toolbox, rows, axis)
    assert found.column("height") == [5.1]
    reasons = found.column("reason", "REJECTED")
    assert reasons[:3] == ["The row is a heading.", "The row is a comment.", "The row is empty."] and len(reasons) == 4
    assert len([text for text in found.warnings if "is rejected" in text]) == 1
    assert any("3 rows are no reading" in text and "1, 2, 3" in text for text in found.info)


def test_heading_further_down_in_a_spreadsheet_without_field_names(toolbox, axis):
    rows = [
        {"Field1": "Levelling of the tunnel", "Field2": None, "Field3": None},
        {"Field1": None, "Field2": None, "Field3": None},
        {"Field1": "No.", "Field2": "Chainage (m)", "Field3": "Elevation [m]"},
        {"Field1": "1", "Field2": "100", "Field3": "5.1"},
        {"Field1": "2", "Field2": "200", "Field3": "5.2"},
    ]
    found = run(toolbox, rows, axis)
    assert found.column("height") == [5.1, 5.2] and found.column("chainage") == pytest.approx([100.0, 200.0])
    assert "station from field 'Field2'" in found.said and "height from field 'Field3'" in found.said
    assert found.column("row", "REJECTED") == [1, 2, 3]


def test_two_wings_in_one_sheet(toolbox, wings):
    titled = [
        {"station": "NORTH WING", "height": None},
        {"station": "0+100", "height": "5.1"},
        {"station": "0+200", "height": "5.2"},
        {"station": "East wing", "height": None},
        {"station": "0+100", "height": "5.3"},
    ]
    found = run(toolbox, titled, wings)
    assert found.column("axis") == ["North wing", "North wing", "East wing"]
    assert any("3 rows stand without an axis, taken to be on that of the rows above" in text for text in found.info)
    merged = [
        {"axis": "North wing", "station": "0+100", "height": "5.1"},
        {"axis": None, "station": "0+200", "height": "5.2"},
        {"axis": "East wing", "station": "0+100", "height": "5.3"},
        {"axis": None, "station": "0+200", "height": "5.4"},
    ]
    assert run(toolbox, merged, wings).column("axis") == ["North wing", "North wing", "East wing", "East wing"]


def test_a_decimal_sign_that_is_open_is_asked_for(toolbox, axis):
    rows = [{"station": "0+100", "height": "1,102"}, {"station": "0+200", "height": "1,103"}]
    assert "give the decimal sign (DECIMAL_SIGN)" in toolbox.refusal(
        "placestations", INPUT=toolbox.table(rows), AXIS=axis
    )
    assert run(toolbox, rows, axis, DECIMAL_SIGN="point").column("height") == [1102.0, 1103.0]
    assert run(toolbox, rows, axis, DECIMAL_SIGN="comma").column("height") == [1.102, 1.103]


def test_slips_are_named_and_left(toolbox, axis):
    rows = [{"station": f"0+{50 * k:03d}", "height": f"{1102.3 + 0.01 * k:.3f}"} for k in range(15)]
    rows[4]["height"], rows[8]["height"] = "1120.340", "110.2380"
    rows[11]["station"] = "0+050"
    found = run(toolbox, rows, axis)
    assert found.column("height")[4] == 1120.34 and found.column("height")[8] == 110.238
    said = "\n".join(found.warnings)
    assert "row 5 of axis 'east', height 1120.340: looks like transposed digits (1102.340" in said
    assert "row 9 of axis 'east', height 110.2380: looks like slipped decimal point (1102.380" in said
    assert "row 12 of axis 'east', station 0+050: out of the order of the list" in said and "more than once" in said
