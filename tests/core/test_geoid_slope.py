"""What is known of the geoid's slope: which point it tilts, and how well it is known where nobody says."""

import numpy as np
import pytest

from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.geoid_slope import ARC_SECOND, GeoidSlope, default_sigma, upright


def applied(lat, lon):
    return 1e-5, 2e-5


def known(lat, lon):
    return 4e-5, 4e-5


def test_ellipsoidal_heights_need_the_slope_for_the_level_point():
    geoid = GeoidSlope(True, known=known, sigma=1.0)
    assert tuple(geoid.tangent_tilt(0.0, 0.0)) == (0.0, 0.0) and tuple(geoid.level_tilt(0.0, 0.0)) == (4e-5, 4e-5)
    assert geoid.slope_variance == pytest.approx((np.pi / 648000) ** 2, rel=1e-12)


def test_heights_above_the_geoid_need_it_for_the_tangent_point():
    """The level point lies where the surface has the slope of the undulations that went into the heights."""
    geoid = GeoidSlope(False, applied, known)
    assert tuple(geoid.level_tilt(0.0, 0.0)) == (1e-5, 2e-5)
    assert tuple(geoid.tangent_tilt(0.0, 0.0)) == pytest.approx((-3e-5, -2e-5), abs=1e-18)
    assert tuple(GeoidSlope(False, known, known).tangent_tilt(0.0, 0.0)) == (0.0, 0.0)
    assert upright(48.0, 11.0) == (0.0, 0.0) and ARC_SECOND == pytest.approx(4.8481e-6, abs=1e-10)


@pytest.mark.parametrize(
    "kind, cell, shown, seconds",
    [
        ("grid", 0.25, False, 4.0),
        ("grid", 5.0 / 60.0, False, 2.5),
        ("grid", 1.0 / 60.0, False, 2.5),
        ("field", 0.0, False, 2.5),
        ("unknown", 0.0, True, 4.0),
        ("unknown", 0.0, False, 8.0),
        ("ellipsoidal", 0.0, True, 4.0),
        ("constant", 0.0, False, 8.0),
    ],
)
def test_accuracy_where_none_is_stated(kind, cell, shown, seconds):
    """The method page's figures (6)."""
    assert default_sigma(kind, cell, shown) == seconds


@pytest.mark.parametrize("given", [{"sigma": -1.0}, {"sigma": np.nan}, {"bending": -1e-9}])
def test_an_accuracy_that_is_none(given):
    with pytest.raises(InputError, match="must be a number that is not negative"):
        GeoidSlope(False, **given)
