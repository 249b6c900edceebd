"""Marks of places: what was moved by the last bit is found, and nothing else."""

import base64

import numpy as np

from tautline.algorithms.core.place_marks import MOST_MARKED, place_marks, rows_elsewhere

X, Y = np.linspace(0.0, 1.0, 50), np.linspace(5e6, 5.1e6, 50)


def test_rows_that_were_moved_by_the_last_bit_or_added():
    x, y = X.copy(), Y.copy()
    x[7], y[30] = np.nextafter(x[7], 2.0), np.nextafter(y[30], 0.0)
    now = place_marks(np.append(x, 3.0), np.append(y, 4.0))
    assert rows_elsewhere(place_marks(X, Y), now).tolist() == [7, 30, 50]


def test_order_absence_and_the_sign_of_nought_do_not_count():
    before = place_marks(X, Y)
    assert not len(rows_elsewhere(before, place_marks(X[::-1], Y[::-1])))
    assert not len(rows_elsewhere(before, place_marks(X[10:20], Y[10:20])))
    assert not len(rows_elsewhere(before, place_marks(np.array([-0.0]), Y[:1])))
    assert rows_elsewhere(before, place_marks(Y, X)).tolist() == list(range(50))


def test_what_holds_no_marks_tells_nothing():
    many = np.zeros(MOST_MARKED + 1)
    assert place_marks(many, many) == ""
    now = place_marks(X, Y)
    for damaged in ("", "no marks", "AAA=", base64.b64encode(b"12345").decode(), "é"):
        assert rows_elsewhere(damaged, now).tolist() == [] and rows_elsewhere(now, damaged).tolist() == []
