"""Two ways of looking, ranges, thinning, picking, the worst first: against hand computation and brute force."""

import numpy as np
import pytest

from tautline.algorithms.core import profile_views as views
from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.profile_views import AxisProfile

RADIUS = 6371000.0


def tangent(residual=None, tolerance=0.01):
    """A tangent at chainage 0 of a sphere, 0 to 3 km: the level surface falls away by s squared over 2 R."""
    s = np.linspace(0.0, 3000.0, 31)
    residual = np.zeros(31) if residual is None else residual
    return AxisProfile(s, 100.0 + s**2 / (2 * RADIUS), np.full(31, 100.0), residual, np.full(31, np.nan), tolerance)


def test_straight_structure_is_a_curve_above_the_level_surface():
    """Rule of thumb: 0.0785 K² metres, K in kilometres (method page 8, common practice, no source)."""
    lines = tangent().lines("level")
    assert np.all(lines["level"] == 0.0) and np.all(lines["flat"] == 0.0)
    assert lines["design"][-1] == pytest.approx(0.0785 * 9, rel=1e-3)


def test_level_surface_is_the_curve_seen_from_the_straight_line():
    residual = np.zeros(31)
    residual[7] = 0.02
    lines = tangent(residual).lines("straight")
    assert np.all(lines["design"] == 0.0)
    assert lines["level"][-1] == pytest.approx(-0.0785 * 9, rel=1e-3)
    assert lines["as-built"][7] == pytest.approx(0.02, abs=1e-12)


def test_both_views_differ_by_the_design_above_level_alone():
    profile = tangent(np.linspace(-0.01, 0.01, 31))
    level, straight = profile.lines("level"), profile.lines("straight")
    for name in level:
        assert level[name] - straight[name] == pytest.approx(profile.design - 100.0, abs=1e-12)


def test_design_that_keeps_to_its_flat_twin_is_not_straight():
    s = np.linspace(0.0, 100.0, 5)
    grade = AxisProfile(s, 10 + 0.01 * s, 10 + 0.01 * s, np.zeros(5), np.full(5, np.nan))
    assert tangent().is_straight and not grade.is_straight


def test_level_line_starts_at_the_first_design_height_that_is_known():
    profile = AxisProfile(
        np.arange(3.0), np.array([np.nan, 7.0, 8.0]), np.full(3, np.nan), np.zeros(3), np.full(3, np.nan)
    )
    assert profile.level == 7.0 and profile.has_design and not profile.is_straight
    blank = AxisProfile(np.arange(3.0), *(np.full(3, np.nan) for _ in range(4)))
    assert np.isnan(blank.level) and not blank.has_design


@pytest.mark.parametrize("chainage, length", [([0.0, 2.0, 1.0], 3), ([0.0, np.nan, 1.0], 3), ([0.0, 1.0], 3)])
def test_profiles_that_are_none_are_refused(chainage, length):
    with pytest.raises(InputError):
        AxisProfile(np.array(chainage), *(np.zeros(length) for _ in range(4)))


def test_unknown_view_is_refused():
    with pytest.raises(InputError, match="sideways"):
        tangent().lines("sideways")


def test_blunder_does_not_set_the_range():
    residual = np.tile([0.003, -0.003], 16)[:31]
    residual[4] = 5.0
    low, high = tangent(residual).residual_range()
    assert high == -low == pytest.approx(0.015)  # one and a half tolerances
    assert tangent(residual, None).residual_range()[1] == pytest.approx(0.012)  # four ordinary ones
    assert tangent(residual).shown_range("level")[1] < 1.0


def test_ordinary_greatest_residual_sets_the_range():
    residual = np.tile([0.02, -0.02], 16)[:31]
    residual[4] = 0.05
    assert tangent(residual).residual_range() == pytest.approx((-0.05, 0.05))


def test_range_without_residuals_is_none_of_length_zero():
    blank = AxisProfile(np.arange(3.0), *(np.full(3, np.nan) for _ in range(4)))
    assert blank.residual_range() == (-0.001, 0.001) and blank.shown_range("level") == (-0.001, 0.001)
    assert tangent(np.zeros(31), None).residual_range() == (-0.001, 0.001)


def test_thinning_keeps_every_extreme_and_both_ends():
    rng = np.random.default_rng(5)
    x = np.sort(rng.uniform(0, 1000, 50000))
    y = rng.normal(size=50000)
    y[31234] = 99.0
    rows = views.thinned(x, y, 0.0, 1000.0, 100)
    assert len(rows) <= 4 * 102 and np.all(np.diff(rows) > 0)
    piece = np.clip((x / 10).astype(int), 0, 99)
    for number in range(100):
        inside = np.flatnonzero(piece == number)
        for extreme in (inside[0], inside[-1], inside[np.argmin(y[inside])], inside[np.argmax(y[inside])]):
            assert extreme in rows


def test_few_points_are_all_drawn_with_one_beyond_each_end():
    x = np.arange(10.0)
    y = np.where(np.arange(10) == 5, np.nan, 1.0)
    assert views.thinned(x, y, 3.5, 6.5, 100).tolist() == [3, 4, 6, 7]


def test_nearest_is_that_of_brute_force():
    rng = np.random.default_rng(6)
    x, y = rng.uniform(0, 100, 500), rng.uniform(0, 100, 500)
    for at_x, at_y in rng.uniform(0, 100, (20, 2)):
        distances = [((a - at_x) ** 2 + (0.5 * (b - at_y)) ** 2, k) for k, (a, b) in enumerate(zip(x, y))]
        assert views.nearest(x, y, at_x, at_y, across=0.5) == min(distances)[1]
    assert views.nearest(np.zeros(0), np.zeros(0), 1, 1) == -1


def test_point_without_height_is_found_by_its_chainage():
    assert views.nearest(np.array([0.0, 10.0, 20.0]), np.array([0.0, np.nan, 0.0]), 9.0, 50.0, across=0.3) == 1


def test_rectangle_takes_its_points_whichever_corner_comes_first():
    x, y = np.array([1.0, 2.0, 3.0, 2.0]), np.array([1.0, 5.0, 1.0, np.nan])
    assert views.within_box(x, y, (2.5, 6.0), (0.5, 0.0)).tolist() == [True, True, False, False]


def test_exaggeration_and_its_inverse():
    """2 km on 1000 px and 1 m on 200 px: 0.5 px and 200 px for a metre, 400 times."""
    assert views.exaggeration(1000, 2000.0, 200, 1.0) == pytest.approx(400.0)
    assert views.span_at(400.0, 1000, 2000.0, 200) == pytest.approx(1.0)
    with pytest.raises(InputError):
        views.exaggeration(1000, 0.0, 200, 1.0)


def test_worst_first():
    residual = np.array([0.02, -0.05, 0.011, np.nan, 0.004, 0.001])
    tolerance = np.array([0.01, 0.01, 0.01, 0.01, np.nan, np.nan])
    w = np.array([np.nan, np.nan, np.nan, np.nan, 8.0, np.nan])
    suspected = np.array([False, False, False, False, True, True])
    found = views.severity(residual, tolerance, w, suspected)
    assert (
        found[:3] == pytest.approx([2.0, 5.0, 1.1])
        and np.isnan(found[3])
        and found[4:] == pytest.approx([8 / 3.29, 1.0])
    )
    flagged = np.array([True, True, True, False, True, True])
    assert views.worst_first(flagged, found, residual).tolist() == [1, 4, 0, 2, 5]


def test_equally_bad_stations_keep_their_order():
    assert views.worst_first(np.ones(3, bool), np.full(3, np.nan), np.array([0.1, -0.1, 0.2])).tolist() == [2, 0, 1]


def test_any_height_as_a_view_shows_it():
    """Heights between the stations and beyond the known design: counted from the same line as the stations'."""
    profile = tangent(np.linspace(-0.01, 0.01, 31))
    for view in views.VIEWS:
        lines = profile.lines(view)
        assert profile.seen(profile.chainage, profile.built, view) == pytest.approx(lines["as-built"], abs=1e-12)
        assert profile.seen(profile.chainage, profile.flat, view) == pytest.approx(lines["flat"], abs=1e-12)
    assert profile.base_at(np.array([50.0]), "straight")[0] == pytest.approx(0.5 * sum(profile.design[:2]))
    assert profile.base_at(np.array([50.0, 9e9]), "level").tolist() == [100.0, 100.0]
    blank = AxisProfile(np.arange(3.0), *(np.full(3, np.nan) for _ in range(4)))
    assert np.all(np.isnan(blank.seen(np.arange(2.0), np.ones(2), "level")))
    with pytest.raises(InputError, match="view"):
        profile.base_at(np.zeros(1), "sideways")


def test_the_line_has_a_range_of_its_own():
    s, zero = np.arange(5.0), np.zeros(5)
    lateral = np.array([0.001, -0.002, np.nan, 0.004, 0.5])
    profile = AxisProfile(s, zero, zero, zero, zero, 0.02, lateral, 0.003)
    assert profile.has_line and profile.residual_range() == (-0.03, 0.03)
    # 4 mm is the ordinary one of four; the wild one does not set the range.
    assert profile.lateral_range() == pytest.approx((-0.016, 0.016))
    assert AxisProfile(s, zero, zero, zero, zero, 0.02, zero, 0.01).lateral_range() == pytest.approx((-0.015, 0.015))
    assert not AxisProfile(s, zero, zero, zero, zero).has_line
    assert not AxisProfile(s, zero, zero, zero, zero, lateral=np.full(5, np.nan)).has_line
    with pytest.raises(InputError):
        AxisProfile(s, zero, zero, zero, zero, lateral=np.zeros(4))
