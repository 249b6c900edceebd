"""What was read of an input: its fingerprint changes with every bit that counts, and with nothing else."""

import numpy as np

from tautline.algorithms.core.input_record import fingerprint


def test_the_same_rows_have_the_same_fingerprint():
    numbers, texts = [np.array([1.0, np.nan, 3.0]), np.arange(3)], [["a", "", "c"]]
    assert fingerprint(numbers, texts) == fingerprint([column.copy() for column in numbers], [list(texts[0])])
    assert len(fingerprint(numbers, texts)) == 32


def test_every_change_shows():
    base = [np.array([1.0, 2.0, 3.0])]
    marks = {
        fingerprint(base),
        fingerprint([np.array([1.0, 2.0, 3.0000000000000004])]),
        fingerprint([np.array([1.0, 3.0, 2.0])]),
        fingerprint([np.array([1.0, 2.0]), np.array([3.0])]),
        fingerprint(base, [["a", "b"]]),
        fingerprint(base, [["ab", ""]]),
        fingerprint(base, [["a"], ["b"]]),
    }
    assert len(marks) == 7
