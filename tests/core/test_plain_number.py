"""What counts as a plain number, by hand: the grammar of a C locale's decimal literal (ISO/IEC 9899, strtod)."""

import math

import pytest

from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.number_reading import read_column
from tautline.algorithms.core.plain_number import plain_number, plain_numbers
from tautline.algorithms.core.station_notation import notation


@pytest.mark.parametrize(
    "text, value", [("12", 12.0), (" -0.5 ", -0.5), ("+.5e3", 500.0), ("7.", 7.0), ("1E-2", 0.01), ("-inf", -math.inf)]
)
def test_a_number(text, value):
    assert plain_number(text) == value


@pytest.mark.parametrize(
    "text", ["", "1_000", "1,5", "\uff11\uff12", "\u0661\u0662", "0x10", "1 000", "True", "1e", "--1", "1.2.3", "infin"]
)
def test_no_number(text):
    assert plain_number(text) is None
    assert text == "" or plain_numbers(["1", text]) is None


def test_a_column():
    assert plain_numbers(["1", "2.5"]) == [1.0, 2.5] and math.isnan(plain_numbers([""])[0])


@pytest.mark.parametrize("text", ["1_000", "\uff11\uff12.5", "\u0661\u0662"])
def test_lists_take_no_other_digits(text):
    read = read_column(["1.5", text])
    assert list(read.reasons) == [1] and math.isnan(read.values[1])


@pytest.mark.parametrize("text", ["\u0661+\u0662\u0663\u0664", "1_0+250", "\uff11+250"])
def test_stations_take_no_other_digits(text):
    with pytest.raises(InputError, match="is not a station"):
        notation(text)
