"""Readings that look like slips: made on purpose in a smooth list, and found again with what would fit."""

import numpy as np
import pytest

from tautline.algorithms.core.suspicious_readings import out_of_order, suspicious_readings


def listed(**wrong):
    s = np.arange(0.0, 1000.0, 50.0)
    heights = [f"{148.2 + 0.001 * k + 0.0003 * (k % 3):.4f}" for k in range(20)]
    for row, text in wrong.items():
        heights[int(row[1:])] = text
    return s, np.array(heights, float), heights


def test_a_clean_list_is_not_suspected():
    assert suspicious_readings(*listed()) == [] and list(out_of_order(np.arange(20.0))) == []


@pytest.mark.parametrize(
    "text, kind",
    [("184.2073", "transposed digits"), ("1482.073", "slipped decimal point"), ("486.244", "feet taken for metres")],
)
def test_slips_are_named_with_what_would_fit(text, kind):
    (found,) = [one for one in suspicious_readings(*listed(r7=text)) if one.row == 7]
    assert found.kind == kind and found.instead == pytest.approx(148.2073, abs=0.01)


def test_a_chainage_out_of_order_is_found():
    s = np.arange(0.0, 500.0, 50.0)
    s[4], s[5] = s[5], s[4]
    assert len(list(out_of_order(s))) >= 1
