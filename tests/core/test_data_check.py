"""A first look at heights: spacing, gaps, the shape they suggest, ends, names and units of columns."""

import math

import numpy as np
import pytest

from tautline.algorithms.core.data_check import (
    FOOT,
    counts_hundreds,
    ends,
    guessed_column,
    guessed_unit,
    shape,
    spacing,
    unit_by_length,
)
from tautline.algorithms.core.errors import InputError

# Mean Earth radius and the rule of thumb 0.0785 K² m for the curvature of sights, K in km: common handbook figures.
RULE = 0.0785


def heights(s, kind, noise=0.0):
    """Heights by the rule of thumb: straight, touching the level surface in the middle; or along the level surface."""
    scatter = noise * np.sin(12.9898 * np.arange(len(s)) ** 2 + 1.0)
    bend = RULE * ((s - s.mean()) / 1000.0) ** 2
    return 250.0 + 0.0004 * s + scatter + (bend if kind == "straight" else 0.0)


def test_spacing_finds_step_and_gaps():
    s = np.r_[np.arange(0.0, 500.0, 50.0), 650.0, 700.0, 700.0]
    found = spacing(s[::-1])
    assert found.step == 50.0 and found.gaps == ((450.0, 650.0),)


@pytest.mark.parametrize("s", [[100.0], [100.0, 100.0]])
def test_one_place_has_no_step(s):
    found = spacing(s)
    assert math.isnan(found.step) and found.gaps == ()


def test_spacing_of_no_numbers_is_refused():
    with pytest.raises(InputError):
        spacing([0.0, np.nan])


@pytest.mark.parametrize(("kind", "factor"), [("straight", 1.0), ("level", 0.0)])
@pytest.mark.parametrize("noise", [0.0, 0.003])
def test_shape_of_two_kilometres(kind, factor, noise):
    s = np.arange(0.0, 2401.0, 50.0)
    found = shape(s, heights(s, kind, noise))
    assert found.suggests == kind and found.outstanding == ()
    assert found.factor == pytest.approx(factor, abs=0.05)
    assert (found.length, found.range) == (2400.0, pytest.approx(np.ptp(heights(s, kind, noise))))


def test_heights_in_feet_bend_too_much():
    s = np.arange(0.0, 3001.0, 50.0)
    found = shape(s, heights(s, "straight", 0.003) / FOOT)
    assert found.suggests == "feet" and found.factor == pytest.approx(1.0 / FOOT, abs=0.1)


def test_half_the_bend_is_neither():
    s = np.arange(0.0, 5001.0, 50.0)
    assert shape(s, 0.5 * (heights(s, "straight") + heights(s, "level"))).suggests == "between"


def test_short_or_rough_heights_say_nothing():
    s = np.arange(0.0, 301.0, 20.0)
    assert shape(s, heights(s, "straight", 0.003)).suggests == "undecided"


def test_few_heights_say_nothing():
    s = np.arange(0.0, 2401.0, 400.0)
    assert shape(s, heights(s, "straight")).suggests == "few"
    assert shape(np.array([0.0]), np.array([np.nan])).suggests == "few"
    assert shape(np.full(20, 5.0), np.arange(20.0)).suggests == "few"


def test_a_slip_stands_out_and_does_not_bend_the_rest():
    s = np.arange(0.0, 2401.0, 50.0)
    h = heights(s, "straight", 0.003)
    wanted = np.ptp(h)
    h[17] += 100.0
    h[30] = np.nan
    found = shape(s, h)
    assert found.range == pytest.approx(wanted, abs=0.01)
    assert found.outstanding == (17,) and found.suggests == "straight"


def test_ends_of_points_in_any_order():
    x = np.array([300.0, 900.0, 0.0, 600.0])
    feet = np.column_stack([x, 0.001 * x, np.zeros(4)])
    assert ends(feet) == (1, 2)
    assert ends(feet, np.array([30.0, np.nan, 0.0, 60.0])) == (2, 3)
    # Chainages that say nothing do not count.
    assert ends(feet, np.zeros(4)) == (1, 2)


@pytest.mark.parametrize("feet", [np.zeros((1, 3)), np.zeros((3, 3))])
def test_one_place_has_no_ends(feet):
    with pytest.raises(InputError):
        ends(feet)


@pytest.mark.parametrize(
    ("name", "unit"),
    [
        ("height_ft", "foot"),
        ("H [m]", "metre"),
        ("Elev (US ft)", "us_foot"),
        ("elev_usft", "us_foot"),
        ("height", ""),
        ("team", ""),
        ("shift", ""),
    ],
)
def test_units_in_names(name, unit):
    assert guessed_unit(name) == unit


@pytest.mark.parametrize(
    ("names", "kind", "found"),
    [
        (["Id", "Elevation_ft", "Sta"], "height", "Elevation_ft"),
        (["Id", "Sta"], "station", "Sta"),
        (["height", "elevation"], "height", "height"),
        (["id", "remark"], "height", ""),
        (["H (m)"], "height", "H (m)"),
        (["N"], "undulation", ""),  # as often a northing
        (["US ft", "level_us_ft"], "height", "level_us_ft"),
    ],
)
def test_columns_by_name(names, kind, found):
    assert guessed_column(names, kind) == found


def test_hundreds_and_thousands():
    assert counts_hundreds(["12+50", "13+00.5", "Sta 14+00"])
    assert not counts_hundreds(["1+250", "1+300"]) and not counts_hundreds(["1250", ""])


def test_length_tells_feet_from_metres():
    # 17,060 ft are 5,200 m (international foot, NIST).
    assert unit_by_length(17_060.0, 5_200.0) == "foot" and unit_by_length(5_200.0 * FOOT, 5_200.0) == "metre"
    assert unit_by_length(5_190.0, 5_200.0) == "" and unit_by_length(100.0, 0.0) == ""
