"""Two typings of one sheet: differing cells are found wherever a line was missed, and every choice is carried out."""

import numpy as np
import pytest

from tautline.algorithms.core.second_typing import FIRST, SECOND, WHOLE, Line, compared, settled


def typed(*rows):
    return [Line((float(s),), {"station": s, "height": h}, {"station": float(s), "height": float(h)}) for s, h in rows]


FIRST_SHEET = typed(("0", "12.10"), ("50", "12.20"), ("100", "12.35"), ("150", "12.40"))


def found(comparison):
    return [(one.first, one.second, one.column) for one in comparison.differences]


def test_the_same_numbers_agree_however_they_are_written():
    same = compared(FIRST_SHEET, typed(("0", "12.1"), ("50", "12.200"), ("100.0", "12.35"), ("150", "12.4")))
    assert same.agreeing == 4 and same.differences == ()


def test_a_differing_height_is_one_difference():
    other = compared(FIRST_SHEET, typed(("0", "12.10"), ("50", "12.02"), ("100", "12.35"), ("150", "12.40")))
    assert other.agreeing == 3 and found(other) == [(1, 1, "height")]


def test_a_missed_line_shifts_no_other():
    other = compared(FIRST_SHEET, typed(("0", "12.10"), ("100", "12.35"), ("150", "12.40")))
    assert other.agreeing == 3 and found(other) == [(1, None, WHOLE)]
    back = compared(typed(("0", "12.10"), ("100", "12.35"), ("150", "12.40")), FIRST_SHEET)
    assert back.agreeing == 3 and found(back) == [(None, 1, WHOLE)]


def test_a_differing_station_is_paired_by_its_neighbours():
    other = compared(FIRST_SHEET, typed(("0", "12.10"), ("500", "12.20"), ("100", "12.35"), ("150", "12.40")))
    assert found(other) == [(1, 1, "station")] and other.agreeing == 3


def test_equal_keys_belong_together_in_their_order():
    one, other = typed(("0", "1"), ("0", "2")), typed(("0", "1"), ("0", "3"))
    assert found(compared(one, other)) == [(1, 1, "height")]


@pytest.mark.parametrize("choice, height", [(FIRST, "12.20"), (SECOND, "12.02"), (("12.22",), "12.22")])
def test_the_chosen_cell_stands_in_the_list(choice, height):
    other = typed(("0", "12.10"), ("50", "12.02"), ("100", "12.35"), ("150", "12.40"))
    lines = settled(compared(FIRST_SHEET, other), FIRST_SHEET, other, [choice])
    assert [line["height"] for line in lines] == ["12.10", height, "12.35", "12.40"]


@pytest.mark.parametrize("choice, stations", [(FIRST, "0 50 100 150"), (SECOND, "0 100 150")])
def test_a_line_of_one_typing_stays_or_goes(choice, stations):
    other = typed(("0", "12.10"), ("100", "12.35"), ("150", "12.40"))
    lines = settled(compared(FIRST_SHEET, other), FIRST_SHEET, other, [choice])
    assert " ".join(line["station"] for line in lines) == stations
    lines = settled(compared(other, FIRST_SHEET), other, FIRST_SHEET, [SECOND if choice == FIRST else FIRST])
    assert " ".join(line["station"] for line in lines) == stations


def test_random_slips_are_all_found_and_settled_as_the_second_typing():
    random = np.random.default_rng(7)
    one = typed(*((str(50 * k), f"{h:.3f}") for k, h in enumerate(random.uniform(10, 12, 400))))
    rows = [(line.cells["station"], line.cells["height"]) for line in one]
    for k in random.choice(400, 30, replace=False).tolist():
        rows[k] = (rows[k][0], f"{float(rows[k][1]) + 1:.3f}")
    del rows[123], rows[20]
    other = typed(*rows)
    comparison = compared(one, other)
    lines = settled(comparison, one, other, [SECOND] * len(comparison.differences))
    assert [(line["station"], line["height"]) for line in lines] == rows
    assert comparison.agreeing + len({(d.first, d.second) for d in comparison.differences}) == 400
