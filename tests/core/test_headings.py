"""Headings of columns: which quantity, in which unit."""

import pytest

from tautline.algorithms.core.headings import column_kind, columns_of, plain_heading, unit_in_heading, units_agree


@pytest.mark.parametrize(
    ("heading", "kind", "unit"),
    [
        ("Sta", "station", ""),
        ("Sta. (ft)", "station", "foot"),
        ("Elev (ft)", "height", "foot"),
        ("Elev. [m]", "height", "metre"),
        ("ELEV (ft NAVD88)", "height", "foot"),
        ("Elev (US ft)", "height", "us_foot"),
        ("elev_usft", "height", "us_foot"),
        ("Height (US survey feet)", "height", "us_foot"),
        ("height_ft", "height", "foot"),
        ("Height (international ft)", "height", "foot"),
        ("Level", "height", ""),
        ("Reduced Level (m a.s.l.)", "height", "metre"),
        ("RL (mm)", "height", "mm"),
        ("Elev (above the datum)", "height", ""),
        ("arm", "axis", ""),
        ("Alignment", "axis", ""),
        ("Offset_m", "offset", "metre"),
        ("team", "", ""),
        ("tied in", "", ""),
        ("h2ft", "", ""),
        ("platform", "", ""),
        ("", "", ""),
    ],
)
def test_kind_and_unit(heading, kind, unit):
    assert (column_kind(heading), unit_in_heading(heading)) == (kind, unit)


def test_words_without_unit_and_marks():
    assert plain_heading("  Reduced_Level (m): ") == "reduced level"


def test_the_first_word_of_the_table_counts_and_an_alias_too():
    assert columns_of([("z",), ("elev_ft", "Elev (ft)"), ("remark",)], "height") == [1]
    assert columns_of([("f1", "Elev (ft)"), ("f2", "Elev (m)")], "height") == [0, 1]
    assert columns_of([("a",)], "height") == []


def test_ft_stands_for_either_foot():
    assert units_agree("foot", "us_foot") and units_agree("", "metre") and not units_agree("foot", "metre")
