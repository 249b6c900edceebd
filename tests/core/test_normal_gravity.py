"""Normal gravity against published values, its correction against closed forms and a loop without misclosure."""

import numpy as np
import pytest

from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.normal_gravity import normal_gravity, normal_orthometric_correction, water_height


@pytest.mark.parametrize(
    "lat, published",
    # Source: Moritz, Geodetic Reference System 1980 (The Geodesist's Handbook), section 'numerical values' and the
    # table of normal gravity: equator, 45 degrees, pole.
    [(0.0, 9.7803267715), (45.0, 9.806199203), (-45.0, 9.806199203), (90.0, 9.8321863685), (-90.0, 9.8321863685)],
)
def test_published_normal_gravity(lat, published):
    assert normal_gravity(lat) == pytest.approx(published, abs=1.1e-9)


def test_series_of_the_same_source():
    """Chebyshev-like series of the Handbook, 0.1 micrometre per second squared: 9.7803267715 (1 + 0.0052790414 sin^2 +
    0.0000232718 sin^4 + 0.0000001262 sin^6 + 0.0000000007 sin^8)."""
    lat = np.linspace(-90.0, 90.0, 61)
    s = np.sin(np.radians(lat)) ** 2
    series = 9.7803267715 * (1 + 0.0052790414 * s + 0.0000232718 * s**2 + 0.0000001262 * s**3 + 0.0000000007 * s**4)
    assert np.allclose(normal_gravity(lat), series, rtol=0.0, atol=2e-9)


def test_correction_of_a_section():
    """17 mm over 10 km north-south at 2,000 m and 45 degrees: -0.0053 sin(2 phi) H dphi with the classical 0.0053."""
    step = np.degrees(10e3 / 6.371e6)
    found = normal_orthometric_correction(45.0 - 0.5 * step, 45.0 + 0.5 * step, 2000.0)
    assert found == pytest.approx(-0.0053 * 2000.0 * np.radians(step), abs=2e-4) and found == pytest.approx(
        -0.0166, abs=1e-4
    )
    back = normal_orthometric_correction(45.0 + 0.5 * step, 45.0 - 0.5 * step, 2000.0)
    assert back == -found
    assert normal_orthometric_correction(-45.0, 45.0, 2000.0) == pytest.approx(0.0, abs=1e-12)
    assert normal_orthometric_correction(10.0, 10.0, 2000.0) == 0.0


def test_a_loop_in_normal_gravity_closes():
    """Levelled up at one latitude and down at another, flat at two heights along still water: in normal gravity 9.8
    (1 - 2 h/R..) the levelled sum does not close, by what its correction takes off. A potential gamma(phi) h stands
    for it: water is where that product is one, so that the way along it at height H falls by H dgamma/gamma."""
    south, north, low, high = 46.0, 46.5, 300.0, 2300.0
    g = {lat: normal_gravity(lat) for lat in (south, north)}
    # From (south, low) along water north, up by a plumb line to high water, back south, down.
    low_north, high_north = low * g[south] / g[north], high * g[south] / g[north]
    levelled = [0.0, high_north - low_north, 0.0, low - high]
    ends = [(south, north, low), (north, north, high), (north, south, high), (south, south, low)]
    means = [0.5 * (low + low_north), 0.0, 0.5 * (high + high_north), 0.0]
    corrected = sum(d + normal_orthometric_correction(a, b, m) for d, (a, b, _), m in zip(levelled, ends, means))
    assert sum(levelled) == pytest.approx(-0.0053 * 2000 * np.sin(np.radians(92.5)) * np.radians(0.5), rel=0.02)
    assert corrected == pytest.approx(0.0, abs=1e-9)


def test_water_falls_towards_the_pole_by_the_same_formula():
    lat = np.array([45.0, 45.1, 46.0, 44.0])
    found = water_height(1500.0, 45.0, lat)
    assert found[0] == 1500.0 and found[1] < 1500.0 < found[3]
    for at, height in zip(lat, found):
        step = normal_orthometric_correction(45.0, at, 0.5 * (1500.0 + height))
        assert height - 1500.0 == pytest.approx(step, abs=1e-9)


@pytest.mark.parametrize(
    "call, words",
    [
        (lambda: normal_gravity(91.0), "latitude"),
        (lambda: normal_gravity(np.nan), "latitude"),
        (lambda: normal_orthometric_correction(45.0, 46.0, np.nan), "above the sea"),
        (lambda: water_height(30_000.0, 45.0, 46.0), "above the sea"),
    ],
)
def test_bad_input(call, words):
    with pytest.raises(InputError, match=words):
        call()
