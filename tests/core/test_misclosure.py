"""Published limits n sqrt(K) of levelling."""

import numpy as np
import pytest

from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.misclosure import CLASSES, levelling_class, misclosure_limit

FIRST_1 = "first order class I"
SECOND_1, SECOND_2, THIRD = "second order class I", "second order class II", "third order"


@pytest.mark.parametrize(
    "name, kind, kilometres, millimetres, tolerance",
    [
        # RP-03. Source: FGCC 1984 as given in Civil Engineering Formulas, eqs 7.22-7.24.
        (FIRST_1, "accuracy", 4.0, 1.0, 1e-9),
        (SECOND_1, "accuracy", 4.0, 2.0, 1e-9),
        (SECOND_2, "accuracy", 4.0, 2.6, 1e-9),
        (THIRD, "accuracy", 4.0, 4.0, 1e-9),
        # RP-04. Sources: FGCC 1984 as two others give it (level networks after FGDC; USACE EM 1110-1-1005); problem
        # 5.37.
        (THIRD, "loop", 20.0, 53.7, 0.05),
        (SECOND_1, "section", 10.0, 19.0, 0.05),
        (FIRST_1, "loop", 30.0, 21.9, 0.05),
        (THIRD, "section", 20.0, 53.7, 0.05),
        (FIRST_1, "section", 1.0, 3.0, 1e-9),
        (SECOND_2, "loop", 4.0, 16.0, 1e-9),
        (SECOND_2, "section", 1.0, 8.0, 1e-9),
    ],
)
def test_published_limits(name, kind, kilometres, millimetres, tolerance):
    limit = misclosure_limit(levelling_class(name, kind).factor, 1000.0 * kilometres)
    assert 1000.0 * limit == pytest.approx(millimetres, abs=tolerance)


def test_every_class_has_its_source_and_is_found():
    for entry in CLASSES:
        assert entry.source.endswith(", 1984") and levelling_class(entry.name, entry.kind) is entry


def test_arrays():
    assert np.allclose(misclosure_limit(4.0, [0.0, 250.0, 4000.0]), [0.0, 0.002, 0.008], rtol=0.0, atol=1e-12)


def test_what_there_is_not():
    with pytest.raises(InputError, match="'fourth order' is unknown for 'loop'; known are first order class I"):
        levelling_class("fourth order", "loop")
    with pytest.raises(InputError, match="known are none"):
        levelling_class(THIRD, "net")


@pytest.mark.parametrize("factor, length", [(4.0, -1.0), (-4.0, 1.0), (np.nan, 1.0), (4.0, np.inf)])
def test_bad_limits(factor, length):
    with pytest.raises(InputError, match="not negative"):
        misclosure_limit(factor, length)
