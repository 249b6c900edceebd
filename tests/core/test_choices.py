"""Every word that a form offers is one that the core takes, and no other is."""

import numpy as np
import pytest

from tautline.algorithms.core import choices
from tautline.algorithms.core.angles import angle
from tautline.algorithms.core.design import DesignSpec
from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.lateral import FEWEST
from tautline.algorithms.core.number_reading import read_column


def test_designs_and_earths():
    given = {"inclined": {"slope": 0.01}, "reference": {"plane": object()}}
    for kind in choices.DESIGNS:
        assert DesignSpec(kind, **given.get(kind, {})).kind == kind
    for earth in choices.EARTHS:
        assert DesignSpec("chord", earth=earth).earth == earth
    for wrong in ({"kind": "curved"}, {"kind": "chord", "earth": "cube"}):
        with pytest.raises(InputError, match="unknown"):
            DesignSpec(**wrong)


def test_lines_that_stations_are_counted_for():
    assert set(FEWEST) < set(choices.LINES)


def test_units_of_angles():
    same = {"degree": "10.5", "dms": "10 30 0", "packed": "10.30", "gon": "11.6666667"}
    assert [angle(same[unit], unit) for unit in choices.ANGLE_UNITS] == pytest.approx([10.5] * 4)
    with pytest.raises(InputError, match="unknown"):
        angle("10.5", "turn")


def test_decimal_signs():
    found = {sign: read_column(["1,345"], sign=sign).values[0] for sign in choices.SIGNS}
    assert found == {"point": 1345.0, "comma": 1.345} and not np.isnan(list(found.values())).any()
