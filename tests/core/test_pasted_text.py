"""Pasted text: the signs that part cells, decimal commas, quotes, and ragged lines."""

import pytest

from tautline.algorithms.core.pasted_text import copied_text, pasted_rows

WANTED = [["Sta", "Elev (ft)"], ["1+050", "148.20"], ["1+100", "148.31"]]


@pytest.mark.parametrize(
    "text",
    [
        "Sta\tElev (ft)\r\n1+050\t148.20\r\n1+100\t148.31\r\n",
        "Sta;Elev (ft)\n1+050 ; 148.20\n1+100;148.31",
        'Sta,"Elev (ft)"\n1+050,148.20\n1+100, 148.31\n\n',
    ],
)
def test_tabs_semicolons_and_commas_part_cells(text):
    assert pasted_rows(text) == WANTED


def test_a_decimal_comma_parts_nothing():
    assert pasted_rows("148,20\n148,31\n") == [["148,20"], ["148,31"]]
    assert pasted_rows("1+050\t148,20\n") == [["1+050", "148,20"]]
    assert pasted_rows("1+050;148,20\n") == [["1+050", "148,20"]]


def test_ragged_lines_are_filled_and_nothing_is_nothing():
    assert pasted_rows("1\t2\n3\n") == [["1", "2"], ["3", ""]] and pasted_rows(" \n") == []


def test_what_is_copied_can_be_pasted():
    rows = [["0", "12.1", "", "by the tower"], ["50", "12.2", "3", ""]]
    assert pasted_rows(copied_text(rows)) == rows
