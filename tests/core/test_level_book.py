"""A levelling book becomes setups and sections: a page done by hand."""

import numpy as np
import pytest

from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.level_book import book_sections, book_setups

NAN = np.nan


def test_a_page_by_hand():
    """BM1 - turning point - A (with an intermediate sight to the pipe P) - B."""
    names = ["BM1", "", "P", "A", "B"]
    back = np.array([1.5, 1.2, NAN, 0.9, NAN])
    inter = np.array([NAN, NAN, 1.0, NAN, NAN])
    fore = np.array([NAN, 0.8, NAN, 1.1, 1.7])
    setups, refused = book_setups(back, inter, fore, np.zeros(5, bool))
    assert not refused
    assert [(s.back, s.fore, s.intermediate) for s in setups] == [
        (0, 1, False),
        (1, 2, True),
        (1, 3, False),
        (3, 4, False),
    ]
    sections, loose = book_sections(setups, names)
    assert not loose
    assert [(s.start, s.end, s.setups) for s in sections] == [
        ("BM1", "P", (0, 1)),
        ("BM1", "A", (0, 2)),
        ("A", "B", (3,)),
    ]


def test_rows_that_lead_nowhere_are_told():
    setups, refused = book_setups(
        np.array([1.0, NAN, 2.0]), np.array([NAN, NAN, 1.0]), np.array([NAN, NAN, NAN]), np.array([False, False, False])
    )
    assert not setups and set(refused) == {0, 1, 2} and "no reading" in refused[1]
    setups, _ = book_setups(np.array([1.0, NAN]), np.array([NAN, 1.0]), np.full(2, NAN), np.zeros(2, bool))
    with pytest.raises(InputError, match="Row 2"):
        book_sections(setups, ["BM1", ""])
