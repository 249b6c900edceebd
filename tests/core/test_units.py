"""Length units."""

from fractions import Fraction

import pytest

from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.units import metres_per


def test_feet():
    """EL-13. Source: NIST/NGS notices 84 FR 55562 (2019) and 85 FR 62698 (2020)."""
    assert metres_per("us_foot") == float(Fraction(1200, 3937)) and metres_per("foot") == 0.3048
    assert metres_per("us_foot") == pytest.approx(0.3048006096012192, abs=1e-16)
    assert (metres_per("us_foot") / metres_per("foot") - 1.0) * 1e6 == pytest.approx(2.000004, abs=1e-6)
    assert metres_per("metre") == 1.0


@pytest.mark.parametrize("unit", ["feet", "", None, "Metre"])
def test_other_units(unit):
    with pytest.raises(InputError, match="unknown; known are metre, foot, us_foot"):
        metres_per(unit)
