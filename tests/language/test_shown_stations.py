"""Stations as people read them."""

import pytest

from tautline.algorithms.language.shown_stations import shown_station, shown_stations


@pytest.mark.parametrize(
    "stored, shown",
    [
        ("-0+050", "−0+050"),
        ("-12+50.25 (2)", "−12+50.25 (2)"),
        ("-7.5", "−7.5"),
        ("1+250", "1+250"),
        ("A-3", "A-3"),
        ("-A3", "-A3"),
        ("-", "-"),
        ("", ""),
    ],
)
def test_the_hyphen_before_a_figure_is_a_minus(stored, shown):
    assert shown_station(stored) == shown and shown_stations([stored, ""]) == [shown, ""]
