"""How heights are worded: decimals, units, sign, and what is not known. Runs without the host."""

import numpy as np
import pytest

from tautline.algorithms.core.units import metres_per
from tautline.algorithms.language import height_text as ht
from tautline.algorithms.language.units import Units

NAN = float("nan")
MINUS = "\u2212"
FOOT = metres_per("foot")


@pytest.mark.parametrize(
    "unit, value, plain, signed",
    (
        ("metre", 0.0182, "18.2 mm", "+18.2 mm"),
        ("metre", -0.0182, f"{MINUS}18.2 mm", f"{MINUS}18.2 mm"),
        ("metre", 0.00004, "0.0 mm", "0.0 mm"),
        ("metre", -0.00004, "0.0 mm", "0.0 mm"),
        ("metre", 0.00025, "0.3 mm", "+0.3 mm"),
        ("metre", -0.00125, f"{MINUS}1.3 mm", f"{MINUS}1.3 mm"),
        ("metre", 0.9, "900.0 mm", "+900.0 mm"),
        ("metre", 1.0, "1.0000 m", "+1.0000 m"),
        ("metre", -1.23456, f"{MINUS}1.2346 m", f"{MINUS}1.2346 m"),
        ("foot", 0.065 * FOOT, "0.065 ft", "+0.065 ft"),
        ("foot", -0.0004 * FOOT, "0.000 ft", "0.000 ft"),
        ("foot", 12.5 * FOOT, "12.500 ft", "+12.500 ft"),
        ("us_foot", -0.25 * metres_per("us_foot"), f"{MINUS}0.250 US ft", f"{MINUS}0.250 US ft"),
    ),
)
def test_small_heights(unit, value, plain, signed):
    amounts = ht.amounts_for(unit)
    assert (amounts.with_unit(value), amounts.with_unit(value, True)) == (plain, signed)
    assert ht.small_text(value, Units(unit, "metre"), True) == signed


def test_cells_stay_in_the_unit_of_their_heading():
    """A column headed 'mm' has no metres in it."""
    amounts = ht.amounts_for("metre")
    assert (amounts.text(-1.23456), amounts.signed(0.0182), amounts.label) == (f"{MINUS}1234.6", "+18.2", "mm")
    assert amounts.metres == 0.001 and ht.amounts_for("foot").metres == FOOT


@pytest.mark.parametrize("unit", ("metre", "foot", "us_foot"))
@pytest.mark.parametrize("value", (NAN, None, float("inf"), np.float64("nan")))
def test_what_is_not_known(unit, value):
    """'none' in a sentence, never 'none mm'; an empty cell."""
    amounts = ht.amounts_for(unit)
    assert amounts.with_unit(value, True) == ht.full_height(value, unit) == "none"
    assert amounts.text(value) == amounts.signed(value) == ht.height_text(value, unit) == ""


@pytest.mark.parametrize(
    "unit, step, decimals",
    (
        ("metre", None, 1),
        ("metre", 0.005, 1),
        ("metre", 0.00025, 2),
        ("metre", 1e-7, 3),
        ("foot", 0.01 * FOOT, 3),
        ("foot", 0.0005 * FOOT, 4),
        ("us_foot", None, 3),
    ),
)
def test_finer_where_a_step_needs_it(unit, step, decimals):
    assert ht.amounts_for(unit, step).decimals == decimals


def test_finer_where_an_accuracy_or_levelling_needs_it():
    assert [ht.amounts_within("metre", size).decimals for size in (None, 0.02, 0.001, 0.0001, 1e-6)] == [1, 1, 1, 2, 3]
    assert [ht.amounts_within("foot", size).decimals for size in (None, 0.01, 0.001, 1e-5)] == [3, 3, 4, 5]
    assert ht.levelled_amounts("metre").with_unit(0.000123) == "0.12 mm"
    assert ht.levelled_amounts("foot").with_unit(0.0123 * FOOT) == "0.0123 ft"
    assert [ht.amounts_for(unit).height_decimals for unit in ("metre", "foot")] == [4, 3]


def test_full_heights():
    assert ht.full_height(100.0, "metre") == "100.0000 m" and ht.full_height(-0.00001, "metre") == "0.0000 m"
    assert ht.height_with_unit(-5.0 * FOOT, Units("foot", "metre")) == f"{MINUS}5.000 ft"
    assert ht.height_text(0.5, "metre", sign=True) == "+0.5000"


def test_a_range_has_one_unit():
    assert ht.amounts_for("metre").span(0.003, 0.01) == ("3.0", "10.0 mm")
    assert ht.amounts_for("metre").span(0.003, 1.5) == ("0.0030", "1.5000 m")


@pytest.mark.parametrize(
    "unit, value, step, text",
    (
        ("metre", 0.02, 0.01, "+20 mm"),
        ("metre", -0.0005, 0.00025, f"{MINUS}0.50 mm"),
        ("metre", 0.0, 0.01, "0 mm"),
        ("metre", 1.5, 0.5, "+1500 mm"),
        ("metre", 10.0, 5.0, "+10 m"),
        ("foot", 0.02 * FOOT, 0.01 * FOOT, "+0.02 ft"),
        ("foot", 20.0 * FOOT, 10.0 * FOOT, "+20 ft"),
    ),
)
def test_a_grid_has_round_numbers(unit, value, step, text):
    assert ht.grid_text(value, step, unit, sign=True) == text


def test_heights_of_one_sentence_share_a_unit():
    """A blunder of more than a metre beside millimetres: all in metres, to the same 0.1 mm."""
    metric, feet = ht.amounts_for("metre"), ht.amounts_for("foot")
    assert metric.alike((0.0041, 1.2034), (False, True)) == ["0.0041 m", "+1.2034 m"]
    assert metric.alike((0.0041, -0.2034)) == ["4.1 mm", f"{MINUS}203.4 mm"]
    assert metric.alike((0.0041, 1.5, None)) == ["0.0041 m", "1.5000 m", "none"]
    assert feet.alike((0.01 * FOOT, 5.0 * FOOT)) == ["0.010 ft", "5.000 ft"]
    assert ht.small_texts((0.5, 1.0), Units("metre", "metre")) == ["0.5000 m", "1.0000 m"]


def test_lateral_departures_as_fine_as_told():
    units, fine = Units("metre", "metre"), ht.amounts_for("metre", 0.00005)
    assert ht.side_text(-0.01234, units, fine) == "12.34 mm left" and ht.side_text(-0.01234, units) == "12.3 mm left"
    assert ht.side_text(0.00001, units, fine) == "0.01 mm right" and ht.side_text(0.00001, units) == "0.0 mm"
    assert ht.sided("5", 1.0) == "5 right" and ht.sided("5", -1.0) == "5 left"
    assert ht.sided("0", 0) == "0"
