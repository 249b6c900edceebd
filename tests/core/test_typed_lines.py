"""Doubts about typed lines: each slip made on purpose is named on its line, and a clean list is left in peace."""

import numpy as np
import pytest

from tautline.algorithms.core.typed_lines import doubts

N = 20


def lines(heights=None, stations=None):
    s = np.arange(N) * 50.0 if stations is None else np.array(stations, float)
    written = [f"{148.2 + 0.001 * k + 0.0003 * (k % 3):.4f}" for k in range(len(s))]
    for row, text in (heights or {}).items():
        written[row] = text
    return s, np.full(len(s), np.nan), np.array([float(text or "nan") for text in written]), written


def told(*columns, axis=None):
    return [(one.row, one.kind) for one in doubts(*columns, axis or [""] * len(columns[0]))]


def test_a_clean_list_has_no_doubts_upwards_or_downwards():
    assert told(*lines()) == [] and told(*lines(stations=np.arange(N)[::-1] * 50.0)) == []


@pytest.mark.parametrize(
    "text, kind, instead",
    [
        ("184.2073", "transposed digits", 148.2073),
        ("1482.073", "slipped decimal point", 148.2073),
        ("486.244", "unit", 148.2072),
        ("149.3", "height", 148.2075),
    ],
)
def test_a_height_out_of_line_is_named_alone_with_what_would_fit(text, kind, instead):
    (doubt,) = doubts(*lines(heights={7: text}), [""] * N)
    assert (doubt.row, doubt.kind) == (7, kind) and doubt.instead == pytest.approx(instead, abs=0.001)


def test_a_height_out_of_line_says_how_far_and_to_which_side():
    (doubt,) = doubts(*lines(heights={7: "147.2075"}), [""] * N)
    assert doubt.found == pytest.approx(-1.0, abs=0.001)


def test_a_step_that_is_not_the_usual_one_is_named_once():
    s = np.arange(N) * 50.0
    s[6] = 330.0
    (doubt,) = doubts(*lines(stations=s), [""] * N)
    assert (doubt.row, doubt.kind, doubt.found, doubt.instead) == (6, "spacing", 80.0, 50.0)
    assert told(*lines(stations=np.delete(np.arange(N + 1) * 50.0, 9))) == [(9, "spacing")]


def test_stations_at_no_usual_distance_are_not_doubted():
    assert told(*lines(stations=np.cumsum(10.0 + 7.0 * (np.arange(N) % 5)))) == []


def test_going_backwards_and_doubled_stations_are_named():
    s = np.arange(N) * 50.0
    s[8] = 40.0
    assert told(*lines(stations=s)) == [(8, "order")]
    s = np.arange(N) * 50.0
    s[8] = s[7]
    assert (8, "doubled") in told(*lines(stations=s))
    (doubt,) = [one for one in doubts(*lines(stations=s), [""] * N) if one.kind == "doubled"]
    assert doubt.instead == 7


def test_left_and_right_of_one_station_are_not_doubled():
    s = np.repeat(np.arange(N // 2) * 50.0, 2)
    columns = lines(stations=s)
    assert told(columns[0], np.tile([-3.0, 3.0], N // 2), *columns[2:]) == []


def test_each_axis_has_its_own_order_and_heights():
    s, offset, height, written = lines()
    both = (np.tile(s, 2), np.tile(offset, 2), np.append(height, height + 900.0), written + [f"9{t}" for t in written])
    assert told(*both, axis=["north"] * N + ["east"] * N) == []


def test_lines_without_station_or_height_are_passed_over():
    s, offset, height, written = lines(heights={3: "", 11: ""})
    s[5] = np.nan
    assert [one for one in told(s, offset, height, written) if one[1] != "spacing"] == []
