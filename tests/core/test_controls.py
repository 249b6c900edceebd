"""Controls of many axes: which station serves, by looking at each in turn, and where typed ones lie (geographiclib)."""

import numpy as np
import pytest
from geographiclib.geodesic import Geodesic

from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.controls import CONTROL_REACH, DesignStations, Rows, controls_of, station_at
from tautline.algorithms.core.design import DesignSpec
from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.undulations import ConstantUndulation


def stations(wgs84, seed, number=25):
    random = np.random.default_rng(seed)
    axis = Axis(AxisLine(f"axis {seed}", [40.0 + seed, 40.01 + seed], [7.0, 7.0], wgs84), 0.0, 100.0)
    s = 100.0 + np.round(random.uniform(0.0, 1000.0, number))
    offset = np.round(random.normal(0.0, 1.0, number), 1)
    lat, lon, _ = axis.place(s, offset)
    height = np.where(random.uniform(size=number) < 0.3, np.nan, random.normal(50.0, 1.0, number))
    return DesignStations(axis, lat, lon, s, offset, height, np.full(number, 40.0))


def serving(one, closeness):
    """The station that serves, one after another: least closeness, then least offset, then the earlier row."""
    best = None
    for k in np.flatnonzero(np.isfinite(one.height)).tolist():
        if best is None or (closeness[k], abs(one.offset[k])) < (closeness[best], abs(one.offset[best])):
            best = k
    return best


def test_the_station_that_serves_each_axis(wgs84):
    several = [stations(wgs84, seed) for seed in range(8)]
    specs = [DesignSpec("chord"), DesignSpec("tangent")] * 4
    a, b = controls_of(specs, several, Rows(several), [ConstantUndulation()] * 8)
    for k, one in enumerate(several):
        s = one.chainage[np.isfinite(one.height)]
        middle = np.abs(one.chainage - 0.5 * (s.min() + s.max()))
        assert a.one(k).station == serving(one, middle if k % 2 else one.chainage)
        assert (b.one(k) is None) if k % 2 else b.one(k).station == serving(one, -one.chainage)
        assert a.one(k).height == one.height[a.one(k).station] and a.one(k).undulation == 40.0
        assert a.each()[k] == a.one(k)


def test_a_typed_control_lies_on_its_axis(wgs84):
    several = [stations(wgs84, seed) for seed in (1, 2)]
    specs = [DesignSpec("level", 600.0, 12.5), DesignSpec("level", 350.0, 7.5)]
    a, _ = controls_of(specs, several, Rows(several), [ConstantUndulation(3.0), ConstantUndulation(4.0)])
    for k, (seed, away) in enumerate(((1, 500.0), (2, 250.0))):
        true = Geodesic(wgs84.a, wgs84.f).Direct(40.0 + seed, 7.0, 0.0, away)
        assert a.one(k).lat == pytest.approx(true["lat2"], abs=1e-11) and a.one(k).station is None
        assert a.one(k).undulation == 3.0 + k and a.above[k] == pytest.approx((15.5, 11.5)[k])


def test_a_station_near_a_chainage_or_none(wgs84):
    one = stations(wgs84, 3)
    for k in range(25):
        distance = np.abs(one.chainage - one.chainage[k] - 0.4)
        expected = serving(one, np.round(distance, 6))
        expected = expected if distance[expected] <= CONTROL_REACH else None
        assert station_at(one, one.chainage[k] + 0.4) == expected
    assert station_at(one, 5000.0) is None
    with pytest.raises(InputError, match="'axis 3': control A at chainage 5000 m has no height"):
        controls_of([DesignSpec("level", 5000.0)], [one], Rows([one]), [ConstantUndulation()])
