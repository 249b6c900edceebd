"""Numbers as old lists hold them. Expected values are by hand; the ways of writing are common practice, no source."""

import numpy as np
import pytest

from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.number_reading import decimal_sign, read_column, typed_number
from tautline.algorithms.core.suspicious_readings import out_of_order, suspicious_readings


@pytest.mark.parametrize(
    "texts, sign, values",
    [
        (["1102,345", "1102,5", ""], "comma", [1102.345, 1102.5, np.nan]),
        (["1.102,345", "1.103"], "comma", [1102.345, 1103.0]),
        (["1,102.345", "1,103"], "point", [1102.345, 1103.0]),
        (["1 102,3", "1\u00a0103,4"], "comma", [1102.3, 1103.4]),
        (["1'102.35", "1\u2019103.35"], "point", [1102.35, 1103.35]),
        (["1,234,567", "1,000"], "point", [1234567.0, 1000.0]),
        (["0,345", "1,345"], "comma", [0.345, 1.345]),
        (["-5.25", "\u22125.25", "5.25-", "(5.25)", "+5.25"], "point", [-5.25, -5.25, -5.25, -5.25, 5.25]),
        (["12.5 m", "13m"], "point", [12.5, 13.0]),
        (["1e3", "2.5"], "point", [1000.0, 2.5]),
        (["-", "n/a", "3"], "point", [np.nan, np.nan, 3.0]),
    ],
)
def test_columns(texts, sign, values):
    found = read_column(texts)
    assert found.sign == sign and not found.reasons
    assert np.allclose(found.values, values, rtol=0.0, atol=1e-12, equal_nan=True)


@pytest.mark.parametrize(
    "text, feet",
    [
        ("12'-6 3/4\"", 12.0 + 6.75 / 12.0),
        ("12' 6\"", 12.5),
        ("12\u2032 6\u2033", 12.5),
        ("12 ft 6 in", 12.5),
        ('6 3/4"', 6.75 / 12.0),
        ("-3'-0 1/2\"", -(3.0 + 0.5 / 12.0)),
        ("12'6", 12.5),
        ("12'", 12.0),
        ("100'-11 15/16\"", 100.0 + 11.9375 / 12.0),
        ("0'-3/8\"", 0.375 / 12.0),
    ],
)
def test_feet_and_inches(text, feet):
    assert read_column([text], in_feet=True).values[0] == pytest.approx(feet, abs=1e-12)


def test_feet_and_inches_where_the_run_is_in_metres():
    found = read_column(["12'-6\"", "3.5", "12 ft"], name="height")
    assert np.isnan(found.values[0]) and found.reasons == {
        0: "The height '12'-6\"' is not in the unit of the run.",
        2: "The height '12 ft' is not in the unit of the run.",
    }
    assert read_column(["3.5 m"], in_feet=True).reasons


def test_what_was_found_is_said():
    assert read_column(["1.102,5", "1.103,5"]).notes == ("decimal comma", "thousands in groups")
    assert read_column(["12'-6\"", "(4.0)"], in_feet=True).notes == ("feet and inches", "negative numbers in brackets")
    assert read_column(["4.0 m"]).notes == ("units beside the numbers",)


def test_nothing_unreadable_is_guessed():
    found = read_column(["5.0", "5,0", "5O.2", "inf", "1.2.3", "12'-6 3/0\""], name="height", in_feet=True)
    assert found.values[0] == 5.0 and set(found.reasons) == {1, 2, 3, 4, 5}
    assert found.reasons[1] == "The height '5,0' is not a number. The other cells have a decimal point."
    assert found.reasons[2] == "The height '5O.2' is not a number."


def test_a_column_that_leaves_the_sign_open_is_refused():
    with pytest.raises(InputError, match="The height '1,345' may have a decimal comma or a group of thousands"):
        read_column(["1,345", "2,500"], name="height")
    assert list(read_column(["1,345", "2,500"], sign="comma").values) == [1.345, 2.5]
    assert list(read_column(["1,345", "2,500"], sign="point").values) == [1345.0, 2500.0]
    assert decimal_sign(["1.345", "2.500"]) == "point" and decimal_sign([]) == "point"


def profile(n=21):
    s = 50.0 * np.arange(n)
    return s, 1102.300 + 0.0004 * s + 0.002 * np.sin(np.arange(n))


@pytest.mark.parametrize(
    "row, slip, kind",
    [
        (7, "1120.440", "transposed digits"),
        (7, "110.2440", "slipped decimal point"),
        (0, "11023.000", "slipped decimal point"),
        (12, "336.054", "metres taken for feet"),
        (20, "3617.782", "feet taken for metres"),
    ],
)
def test_slips(row, slip, kind):
    s, h = profile()
    texts = [f"{v:.3f}" for v in h]
    texts[row] = slip
    found = suspicious_readings(s, np.array([float(t) for t in texts]), texts)
    assert [(one.row, one.kind) for one in found] == [(row, kind)]
    assert found[0].instead == pytest.approx(h[row], abs=0.01)


def test_a_station_that_is_simply_low_is_no_slip():
    s, h = profile()
    h[9] -= 0.035
    assert suspicious_readings(s, h, [f"{v:.3f}" for v in h]) == []
    assert suspicious_readings(s[:4], h[:4], list("abcd")) == []


def test_gaps_are_no_readings():
    s, h = profile()
    h[3] = np.nan
    texts = [f"{v:.3f}" for v in h]
    texts[10] = "1120.504"
    h[10] = 1120.504
    assert [one.row for one in suspicious_readings(s, h, texts)] == [10]


def test_order():
    s = 50.0 * np.arange(12)
    assert out_of_order(s) == [] and out_of_order(s[::-1]) == []
    for row, wrong in ((5, 700.0), (5, 20.0), (11, 100.0), (0, 400.0)):
        spoiled = s.copy()
        spoiled[row] = wrong
        assert out_of_order(spoiled) == [row]
    assert out_of_order([5.0, 1.0, 4.0, 2.0, 3.0, 9.0]) == []


@pytest.mark.parametrize(
    ("text", "comma", "value"),
    [
        ("12.5", "", 12.5),
        ("12,5", "", 12.5),
        ("12,5", "comma", 12.5),
        ("0,003", "", 0.003),
        ("\u22120,25", "", -0.25),
        ("1.234,5", "", 1234.5),
        ("1,234.5", "comma", 1234.5),
        ("1,234", "comma", 1.234),
        ("1.234", "comma", 1.234),
        ("  7 ", "", 7.0),
        ("1e-3", "", 0.001),
    ],
)
def test_a_typed_number(text, comma, value):
    assert typed_number(text, comma=comma) == pytest.approx(value, abs=1e-15)


def test_a_typed_number_in_feet_and_inches():
    assert typed_number("12'-6\"", in_feet=True) == 12.5
    with pytest.raises(InputError, match="not in the unit of the run"):
        typed_number("12'-6\"")


@pytest.mark.parametrize("text", ["abc", "", "-", "12,5,1", "nan", "inf", "1_0", "1,2.3,4"])
def test_what_is_no_typed_number(text):
    with pytest.raises(InputError):
        typed_number(text)


def test_a_typed_comma_that_could_be_either_is_asked_about():
    with pytest.raises(InputError, match="decimal comma or a group of thousands"):
        typed_number("1,234")


@pytest.mark.parametrize("written, decimals", [("148.20", 2), ("148,2014 ", 4), ("148", 0), ("148.", 0), ("", 0)])
def test_decimals_as_written(written, decimals):
    from tautline.algorithms.core.number_reading import decimals_written, has_digits

    assert decimals_written(written) == decimals and has_digits(written) == bool(written.strip())
    assert not has_digits("Elev (ft)")
