"""Station notation and station equations."""

import random

import numpy as np
import pytest

from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.station_notation import StationEquations, notation, station_equations, station_text


@pytest.mark.parametrize(
    "text, distance",
    [
        ("12+50", 1250.0),
        ("1+250", 1250.0),
        ("0+00", 0.0),
        ("0+000", 0.0),
        ("12+38.28", 1238.28),
        ("1+256.02", 1256.02),
        ("12+50.", 1250.0),
        (" 12 + 50 ", 1250.0),
        ("Sta 12+50", 1250.0),
        ("STA. 12+50", 1250.0),
        ("sta12+50", 1250.0),
        ("Station 12+50", 1250.0),
        ("Ch 1+250", 1250.0),
        ("CH: 1+250", 1250.0),
        ("chainage 1+250.5", 1250.5),
        ("-0+050", -50.0),
        ("\u22120+50", -50.0),
        ("+12+50", 1250.0),
        ("Sta -1+00", -100.0),
        ("1250", 1250.0),
        ("-3.5", -3.5),
        (".5", 0.5),
        ("1250.25", 1250.25),
        (1250.25, 1250.25),
        (7, 7.0),
        (-0.5, -0.5),
        ("123456+789.125", 123456789.125),
    ],
)
def test_readable(text, distance):
    assert notation(text) == (distance, None)


@pytest.mark.parametrize(
    "number", [2.3e-9, -4e-7, 1e-300, 0.0, 1.5e17, np.float64(3e-9), np.float32(0.25), np.int64(5)]
)
def test_numbers_of_any_size(number):
    """A measured chainage of the origin is 2.3e-09 rather than 0: a number field must not stumble over its own text."""
    assert notation(number) == (float(number), None)


@pytest.mark.parametrize(
    "text, expected", [("12+50 (2)", (1250.0, 2)), ("12+50(13)", (1250.0, 13)), ("1250 (1)", (1250.0, 1))]
)
def test_regions(text, expected):
    assert notation(text) == expected


@pytest.mark.parametrize(
    "text",
    [
        "",
        " ",
        "+",
        "12+",
        "+50+",
        "12+5",
        "12+5000",
        "12+0050",
        "12+50+00",
        "12++50",
        "12+-50",
        "--5",
        "1.5+00",
        "12+5.0",
        "abc",
        "Sta",
        "Sta 12+50 m",
        "km 12+50",
        "12,50",
        "12+50,5",
        "nan",
        "inf",
        "1e3",
        "12+50 ()",
        "12+50 (a)",
        "12+50 (-1)",
        "0x10",
        "12-50",
        "None",
        None,
        float("nan"),
        float("inf"),
        "12+50\n13+00",
        "12+50 (2) (3)",
        True,
    ],
)
def test_unreadable(text):
    with pytest.raises(InputError, match="is not a station"):
        notation(text)


def test_random_texts_are_read_or_refused():
    """Whatever is typed, there is a finite distance or the one error; nothing else escapes."""
    dice, read = random.Random(5), 0
    for _ in range(4000):
        text = "".join(dice.choice("0123456789+-.() StaCh:=;,e\u2212\u00e9") for _ in range(dice.randint(0, 9)))
        try:
            distance, region = notation(text)
        except InputError as error:
            assert repr(text)[1:-1] in str(error) or text in str(error)
        else:
            read += 1
            assert np.isfinite(distance) and (region is None or region >= 0)
    assert 100 < read < 3000


def test_imperial_difference():
    """RP-06: 16+56.85 less 12+38.28 is 418.57 ft. Source: open-access surveying course, alignment chapter A."""
    assert notation("16+56.85")[0] - notation("12+38.28")[0] == pytest.approx(418.57, abs=1e-9)


def test_metric_notations():
    """RP-07: 1256.02 m is 1+256.02 and 12+56.02. Source: the same page.

    Trap: it prints 12+26.02 for the second, a typing slip, which is another place 30 m away.
    """
    assert notation("1+256.02")[0] == notation("12+56.02")[0] == 1256.02
    assert notation("12+26.02")[0] == 1226.02
    assert station_text(1256.02, "metre") == "1+256.020" and station_text(1256.02, "foot") == "12+56.02"


@pytest.mark.parametrize(
    "distance, unit, text",
    [
        (1250.0, "metre", "1+250"),
        (1250.0, "foot", "12+50"),
        (1250.0, "us_foot", "12+50"),
        (0.0, "metre", "0+000"),
        (-0.0, "metre", "0+000"),
        (-0.0004, "metre", "0+000"),
        (-50.0, "metre", "-0+050"),
        (5.5, "metre", "0+005.500"),
        (999.9996, "metre", "1+000"),
        (1999.9994, "metre", "1+999.999"),
        (99.996, "foot", "1+00"),
        (99.994, "foot", "0+99.99"),
        (1250.3, "metre", "1+250.300"),
        (-1250.3, "foot", "-12+50.30"),
        (1e6 + 0.25, "metre", "1000+000.250"),
        (float("nan"), "metre", ""),
        (float("inf"), "foot", ""),
    ],
)
def test_text(distance, unit, text):
    assert station_text(distance, unit) == text


@pytest.mark.parametrize("unit, rounding", [("metre", 5.01e-4), ("foot", 5.01e-3)])
def test_text_reads_back(unit, rounding):
    for distance in np.random.default_rng(1).uniform(-20_000.0, 20_000.0, 500):
        assert notation(station_text(distance, unit))[0] == pytest.approx(distance, abs=rounding)


# Station equations: a gap of 100 at chainage 1000, then an overlap of 50 at chainage 2000.
GAP_AND_OVERLAP = "1+000 = 1+100; 2+100 = 2+050"


def test_gap_and_overlap():
    equations = station_equations(GAP_AND_OVERLAP)
    assert equations.chainage(999.0) == 999.0 and equations.chainage(1100.5) == 1000.5
    assert equations.chainage(2200.0) == 2150.0
    with pytest.raises(InputError, match="1050 does not exist.*gap"):
        equations.chainage(1050.0)
    with pytest.raises(InputError, match=r"2070 occurs 2 times.*12\+50 \(2\)"):
        equations.chainage(2070.0)
    assert equations.chainage(2070.0, 2) == 1970.0 and equations.chainage(2070.0, 3) == 2020.0
    with pytest.raises(InputError, match="Stretch 4 does not exist: there are 3"):
        equations.chainage(2070.0, 4)
    with pytest.raises(InputError, match="does not exist"):
        equations.chainage(1050.0, 2)


def test_stations_of_chainages():
    equations = station_equations(GAP_AND_OVERLAP)
    assert equations.station(500.0) == (500.0, None) and equations.station(1500.0) == (1600.0, None)
    assert equations.station(1970.0) == (2070.0, 2) and equations.station(2020.0) == (2070.0, 3)
    assert equations.text(2020.0, "metre") == "2+070 (3)" and equations.text(500.0, "metre") == "0+500"
    assert equations.station(-25.0) == (-25.0, None)
    assert equations.station(1000.0) == (1100.0, None)  # at the equation itself the notation ahead


def test_equations_there_and_back():
    equations = station_equations(GAP_AND_OVERLAP + "; 3+000 = 0+000")
    for chainage in np.linspace(-100.0, 4000.0, 257):
        assert equations.chainage(*equations.station(chainage)) == pytest.approx(chainage, abs=1e-9)


def test_an_equation_itself_is_one_place():
    """Both of its sides name the place of the equation, back in the region before it, ahead in the one behind."""
    equations = station_equations(GAP_AND_OVERLAP)
    assert equations.chainage(1000.0) == equations.chainage(1100.0) == 1000.0
    assert equations.chainage(2100.0, 2) == equations.chainage(2050.0, 3) == 2000.0


@pytest.mark.parametrize("text", ["", None, " ", ";", " ; ; "])
def test_no_equations(text):
    equations = station_equations(text)
    assert equations.pairs == () and equations.chainage(-5.0) == -5.0 and equations.text(1250.0, "foot") == "12+50"


@pytest.mark.parametrize(
    "text, words",
    [
        ("1+000", "expected back=ahead"),
        ("1+000=1+100=1+200", "expected back=ahead"),
        ("1+000=abc", "'abc' is not a station"),
        ("=", "is not a station"),
        ("1+000=1+100; 1+050=1+200", "lies behind"),
        ("1+000=1+100; 1+100=1+200", "lies behind"),
    ],
)
def test_unreadable_equations(text, words):
    with pytest.raises(InputError, match=words.replace("+", r"\+")):
        station_equations(text)


def test_equations_in_order_of_place():
    assert StationEquations(((100.0, 50.0), (60.0, 200.0))).chainage(210.0) == 120.0
