"""Minimum zones against linear programmes, closed forms and a search by brute force."""

import numpy as np
import pytest

from tautline.algorithms.core.minimum_zone import cylinder_zone, cylinder_zones, profile_zone, profile_zones
from tautline.algorithms.core.segments import Segments


def zone_by_programme(along, across):
    """The narrowest strip as a linear programme (Chebyshev's line), in units of the length and the departures."""
    from scipy.optimize import linprog

    x, size = 2.0 * (along - along.mean()) / np.ptp(along), np.abs(across).max()
    one = np.ones(len(x))
    sides = np.vstack([np.column_stack([one, x, -one]), np.column_stack([-one, -x, -one])])
    limits = np.concatenate([across, -across]) / size
    return 2.0 * size * linprog([0, 0, 1], A_ub=sides, b_ub=limits, bounds=[(None, None)] * 3).x[2]


def cylinder_by_programme(along, up, aside, sides=720):
    """The narrowest prism of many sides around the points as a linear programme: within 1/cos(pi/sides) below the
    cylinder."""
    from scipy.optimize import linprog

    x, size = 2.0 * (along - along.mean()) / np.ptp(along), np.hypot(up, aside).max()
    turn = np.linspace(0.0, 2.0 * np.pi, sides, endpoint=False)
    c, s = np.cos(turn), np.sin(turn)
    rows = [np.column_stack([-c, -c * one, -s, -s * one, -np.ones(sides)]) for one in x]
    limits = np.concatenate([-(c * u + s * a) / size for u, a in zip(up, aside)])
    found = linprog([0, 0, 0, 0, 1], A_ub=np.vstack(rows), b_ub=limits, bounds=[(None, None)] * 5)
    return 2.0 * size * found.x[4]


def profile(number, seed):
    rng = np.random.default_rng(seed)
    return np.sort(rng.uniform(0.0, 3000.0, number)), rng.normal(0.0, 0.01, number), rng.normal(0.0, 0.005, number)


@pytest.mark.parametrize("number", [3, 4, 10, 41])
@pytest.mark.parametrize("seed", [1, 2, 3])
def test_against_linear_programmes(number, seed):
    along, up, aside = profile(number, seed)
    assert profile_zone(along, up) == pytest.approx(zone_by_programme(along, up), abs=1e-11)
    # On an inclined line the strip is measured across itself.
    inclined = zone_by_programme(along, aside) / np.hypot(1.0, 0.02)
    assert profile_zone(along, aside + 0.02 * along) == pytest.approx(inclined, rel=1e-5)
    expected = cylinder_by_programme(along, up, aside)
    assert cylinder_zone(along, up, aside) == pytest.approx(expected, rel=2e-5)
    assert cylinder_zone(along, up, aside) >= expected


@pytest.mark.parametrize("seed", range(6))
def test_never_larger_than_about_the_best_fit_line(seed):
    """Of the same points, and never smaller than their own parts: a cylinder holds both profiles."""
    along, up, aside = profile(25, seed)
    lines = [y - np.polyval(np.polyfit(along, y, 1), along) for y in (up, aside)]
    zones = [profile_zone(along, y) for y in (up, aside)]
    assert zones[0] <= np.ptp(lines[0]) and zones[1] <= np.ptp(lines[1])
    assert max(zones) * (1 - 1e-12) <= cylinder_zone(along, up, aside) <= 2.0 * np.hypot(*lines).max()


def test_level_profile():
    """Peak to valley of a parabola is its sagitta, also as minimum zone (Legendre expansion of t^2); least squares
    gives a third and two thirds of it, no more together."""
    x = np.linspace(0.0, 4000.0, 20_001)
    level = 0.3 * (x / 2000.0 - 1.0) ** 2
    assert profile_zone(x, level) == pytest.approx(0.3, abs=1e-9)
    assert cylinder_zone(x, level, np.zeros(len(x))) == pytest.approx(0.3, rel=1e-7)


def test_one_point_out_of_line():
    """A triangle: two ends on the line and one point h above, anywhere: the zone is h, where least squares sees more or
    less of it; with one point up and another as far out sideways the cylinder is that of three lines of force."""
    x = np.array([0.0, 700.0, 1000.0])
    assert profile_zone(x, [0.0, 0.01, 0.0]) == pytest.approx(0.01, abs=1e-12)
    assert cylinder_zone(x, [0.0, 0.01, 0.0], np.zeros(3)) == pytest.approx(0.01, rel=1e-7)


def test_helix():
    """A full turn on a circle of radius a about a straight line: the cylinder is the circle's own, since four points a
    quarter of a turn apart, at every place along, hold it."""
    x = np.linspace(0.0, 1000.0, 4001)
    turn = 2.0 * np.pi * 20.0 * x / 1000.0
    assert cylinder_zone(x, 0.004 * np.cos(turn), 0.004 * np.sin(turn)) == pytest.approx(0.008, rel=1e-3)


def test_the_strip_is_measured_across_its_own_lines():
    """A square on its corner, 45 degrees: its width across the edges is side, not its height at one place."""
    assert profile_zone([0.0, 1.0, 1.0, 0.0], [0.0, 0.0, 1.0, 1.0]) == pytest.approx(1.0, abs=1e-12)
    angle = np.radians(10.0)
    x, y = np.array([0.0, 10.0, 10.0, 0.0]), np.array([0.0, 0.0, 1.0, 1.0])
    turned = np.cos(angle) * x - np.sin(angle) * y, np.sin(angle) * x + np.cos(angle) * y
    assert profile_zone(*turned) == pytest.approx(1.0, rel=2e-3)


def test_little_or_nothing_to_hold():
    assert profile_zone([], []) == 0.0 and cylinder_zone([], [], []) == 0.0
    assert profile_zone([1.0], [5.0]) == 0.0 and cylinder_zone([1.0], [5.0], [1.0]) == 0.0
    assert profile_zone([0.0, 10.0], [5.0, 6.0]) == 0.0 and cylinder_zone([0.0, 10.0], [5.0, 6.0], [0.0, 1.0]) == 0.0
    x = np.linspace(0.0, 1000.0, 11)
    assert profile_zone(x, 3.0 + 0.001 * x) == 0.0 and cylinder_zone(x, 3.0 + 0.001 * x, 0.1 * x) == 0.0
    # Two readings at one place.
    assert profile_zone([0.0, 0.0, 1000.0, 1000.0], [0.0, 0.01, 0.0, 0.01]) == pytest.approx(0.01, abs=1e-12)
    assert profile_zone([5.0, 5.0, 5.0], [0.0, 0.01, 0.004]) == pytest.approx(0.01)


def test_order_does_not_matter():
    along, up, aside = profile(30, 7)
    mixed = np.random.default_rng(3).permutation(30)
    assert profile_zone(along[mixed], up[mixed]) == pytest.approx(profile_zone(along, up), abs=1e-14)
    assert cylinder_zone(along[mixed], up[mixed], aside[mixed]) == pytest.approx(
        cylinder_zone(along, up, aside), rel=1e-7
    )


def test_many_axes_at_once():
    """Axes of every kind beside each other, those without a zone among them: each as alone, and as its programme."""
    axes = [profile(number, number) for number in (40, 3, 1, 12, 60)]
    x = np.linspace(0.0, 1000.0, 30)
    axes += [(x, 0.001 * x, 0.0 * x), (np.full(3, 5.0), np.array([0.0, 0.01, 0.004]), np.zeros(3)), (x, 0.01 * x**2, x)]
    axes += [([], [], []), (x * 10.0, 1e-4 * np.sin(x), 1e3 * np.cos(x / 50.0))]
    legs, joined = Segments([len(axis[0]) for axis in axes]), [np.concatenate(values) for values in zip(*axes)]
    found = cylinder_zones(legs, *joined)
    assert found == pytest.approx([cylinder_zone(*axis) for axis in axes], rel=3e-8, abs=1e-15)
    for number in (0, 1, 3, 4):
        assert found[number] == pytest.approx(cylinder_by_programme(*axes[number]), rel=2e-5)
    assert found[6] == pytest.approx(0.01, rel=1e-7) and found[2] == found[5] == found[8] == 0.0
    assert len(cylinder_zones(Segments([]), [], [], [])) == 0 and len(profile_zones(Segments([]), [], [])) == 0
    strips = profile_zones(legs, *joined[:2])
    assert strips == pytest.approx([profile_zone(*axis[:2]) for axis in axes], rel=1e-12, abs=1e-15)
    for number in (0, 1, 3, 4):
        assert strips[number] == pytest.approx(zone_by_programme(*axes[number][:2]), abs=1e-11)


def test_points_within_the_others_change_nothing():
    """60 points, and 5,000 more that lie between four of them each: a cylinder that holds the former holds all."""
    random = np.random.default_rng(9)
    outer = np.stack([np.linspace(0.0, 900.0, 60), *random.normal(0.0, 0.004, (2, 60))])
    shares = random.dirichlet(np.ones(4), 5000)
    inner = np.einsum("ckj,kj->ck", outer[:, random.integers(0, 60, (5000, 4))], shares)
    everything = np.concatenate([outer, inner], axis=1)[:, random.permutation(5060)]
    assert cylinder_zone(*everything) == pytest.approx(cylinder_zone(*outer), rel=3e-8)
    flat = everything * np.array([1.0, 1.0, 0.0])[:, None]
    assert cylinder_zone(*flat) == pytest.approx(cylinder_zone(outer[0], outer[1], np.zeros(60)), rel=3e-8)
