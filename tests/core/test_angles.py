"""Angles as field books hold them: every way of writing one angle gives the degrees that pencil and paper give."""

import pytest

from tautline.algorithms.core.angles import angle, zenith_angle
from tautline.algorithms.core.errors import InputError

# 88 degrees 23 minutes 15 seconds by hand: 88 + 23/60 + 15/3600.
SAME = 88.0 + 23.0 / 60.0 + 15.0 / 3600.0


@pytest.mark.parametrize(
    "text, unit",
    [
        ("88.3875", "degree"),
        ("88,3875", "degree"),
        ("88 23 15", "dms"),
        ("88°23'15\"", "dms"),
        ("88-23-15.0", "dms"),
        ("88 23.25", "dms"),
        ("88.2315", "packed"),
        ("98.2083333333", "gon"),
    ],
)
def test_one_angle_in_every_notation(text, unit):
    assert angle(text, unit) == pytest.approx(SAME, abs=1e-9)
    assert angle("\u2212" + text, unit) == pytest.approx(-SAME, abs=1e-9)


@pytest.mark.parametrize(
    "text, unit", [("88 60 0", "dms"), ("88.2360", "packed"), ("north", "degree"), ("88", "dms"), ("88", "turn")]
)
def test_what_is_no_angle_is_refused(text, unit):
    with pytest.raises(InputError):
        angle(text, unit)


def test_second_face_and_vertical_angles_become_zenith_angles():
    assert zenith_angle("271 36 45", "dms", vertical=False) == pytest.approx(360.0 - (271.0 + 36.75 / 60.0), abs=1e-9)
    assert zenith_angle("-1.5", "degree", vertical=True) == pytest.approx(91.5, abs=1e-12)
    with pytest.raises(InputError, match="not a sight"):
        zenith_angle("0.2", "degree", vertical=False)
