"""Collimation of a level: a two-peg test with a known tilt of the line of sight, on a sphere."""

import numpy as np
import pytest

from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.two_peg import PegSetup, peg_setups, two_peg_test

R = 6_371_000.0


def reading(height, eye, distance, tilt):
    """Staff reading of a level whose line of sight rises by ``tilt`` per length, over a curved Earth without
    refraction."""
    return eye + tilt * distance + distance**2 / (2.0 * R) - height


@pytest.mark.parametrize("tilt", [0.0, 5e-5, -2e-4])
def test_a_known_tilt_is_found(tilt):
    pegs = (10.000, 10.437)
    middle = PegSetup(reading(pegs[0], 11.5, 30.0, tilt), reading(pegs[1], 11.5, 30.0, tilt), 30.0, 30.0)
    beside = PegSetup(reading(pegs[0], 11.8, 65.0, tilt), reading(pegs[1], 11.8, 5.0, tilt), 65.0, 5.0)
    found = two_peg_test(middle, beside, k=0.0, radius=R, reading=0.0005)
    assert found.collimation == pytest.approx(tilt, abs=1e-12)
    assert found.difference == pytest.approx(0.437, abs=1e-9)
    assert found.deviation == pytest.approx(2.0 * 0.0005 / 60.0, rel=1e-12)


def test_setups_from_text_and_what_is_none():
    one, other = peg_setups("1.476, 1.432, 20, 20; 1.556, 1.472, 50, 10")
    assert (one.first, other.second_length, other.imbalance) == (1.476, 10.0, -40.0)
    with pytest.raises(InputError, match="two setups of four numbers"):
        peg_setups("1.476, 1.432, 20")
    with pytest.raises(InputError, match="sights alike"):
        two_peg_test(one, one, k=0.0, radius=R)
    with pytest.raises(InputError, match="negative"):
        PegSetup(1.0, 1.0, -1.0, 1.0)
    with pytest.raises(InputError, match="not a number"):
        PegSetup(np.nan, 1.0, 1.0, 1.0)
