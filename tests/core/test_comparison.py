"""Changes between surveys against independent solutions: numpy's and scipy's least squares, simulated surveys of known
truth."""

import numpy as np
import pytest

from tautline.algorithms.core import comparison
from tautline.algorithms.core.change_covariance import GivenChanges, LevelledChanges
from tautline.algorithms.core.comparison import MOVED_SIDEWAYS, change, common_motion, congruency, rates, verdicts
from tautline.algorithms.core.covariance import Covariance
from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.matching import matched_by_name, matched_by_place, name_key, near_names

POSITIONS = np.arange(30) * 50.0


def simulated(case=1, shift=0.004, tilt=0.0):
    random = np.random.default_rng(case)
    sd = random.uniform(0.5e-3, 2e-3, len(POSITIONS))
    return shift + tilt * POSITIONS + random.normal(0, sd), sd


def test_change_and_its_deviation():
    """3 and 4 give 5."""
    value, sd = change(np.array([10.0, 1.0]), np.array([10.012, np.nan]), np.array([3e-3, 1.0]), np.array([4e-3, 1.0]))
    assert value[0] == pytest.approx(0.012) and sd[0] == pytest.approx(5e-3) and np.isnan(value[1])


def test_verdicts_at_the_published_limits():
    """1.96, RP-02 of the published checks (95 % of a single value, FGDC-STD-007.3-1998), and 3.29, Baarda (1968),
    alpha 0.001."""
    sizes = [1.959, 1.961, -1.961, 3.290, 3.292, -3.292, 0.0, np.nan]
    assert list(verdicts(np.array(sizes), np.ones(8))) == [
        "not significant",
        "possible",
        "possible",
        "possible",
        "risen",
        "settled",
        "not significant",
        "no sd",
    ]
    assert list(verdicts(np.array([5.0, 5.0]), np.array([np.nan, 0.0]))) == ["no sd", "no sd"]
    assert round(comparison.NORMAL_95, 2) == 1.96
    stats = pytest.importorskip("scipy.stats")
    assert 2 * stats.norm.sf(comparison.BAARDA) == pytest.approx(0.001, abs=1e-12)
    assert 2 * stats.norm.sf(comparison.NORMAL_95) == pytest.approx(0.05, abs=1e-12)


def test_verdicts_sideways_have_the_same_limits():
    """Positive is right; a run that moved as a whole is one."""
    sizes = np.array([3.30, -3.30, 3.28, -1.97, 1.95, 0.5, np.nan])
    found = verdicts(sizes, np.ones(7), np.array([0, 0, 0, 0, 0, -1, 0]), MOVED_SIDEWAYS)
    assert found.tolist() == ["right", "left", "possible", "possible", "not significant", "left", "no sd"]


def independent(sd):
    return LevelledChanges(sd**2, POSITIONS[: len(sd)], 0.0)


@pytest.mark.parametrize("tilt", [False, True])
def test_common_motion_against_an_independent_solution(tilt):
    """Weighted least squares by numpy's polyfit with its unscaled covariance."""
    changes, sd = simulated(tilt=2e-6)
    found = common_motion(POSITIONS, changes, independent(sd), tilt=tilt, robust=False)
    x = POSITIONS - POSITIONS.mean()
    parameters, covariance = np.polyfit(x, changes, 1 if tilt else 0, w=1 / sd, cov="unscaled")
    assert found.shift == pytest.approx(parameters[-1], abs=1e-12)
    assert found.sd_shift == pytest.approx(np.sqrt(covariance[-1, -1]), rel=1e-9)
    assert found.rest == pytest.approx(changes - np.polyval(parameters, x), abs=1e-12)
    columns = np.vander(x, 2 if tilt else 1)
    left = np.diag(sd**2) - columns @ covariance @ columns.T
    assert found.sd_rest == pytest.approx(np.sqrt(np.diag(left)), rel=1e-9)
    if tilt:
        assert (found.tilt, found.sd_tilt) == pytest.approx((parameters[0], np.sqrt(covariance[0, 0])), rel=1e-9)
    assert np.all(found.run == -1) and found.told


def walked(number, own, walk):
    """Levelled changes and their covariance as a matrix, written out."""
    distance = 50.0 * np.arange(number)
    matrix = walk * np.minimum.outer(distance, distance) + np.diag(np.full(number, own))
    return distance, LevelledChanges(np.full(number, own), distance, walk), matrix


@pytest.mark.parametrize("given", [False, True])
def test_departures_of_stable_and_moved_stations_by_matrices(given):
    """A third settled, levelled heights: parameters and the sd of every departure by propagation with full matrices."""
    distance, change, matrix = walked(31, 2e-7, 2e-9)
    if given:
        change = GivenChanges(Covariance(np.diag(matrix).copy(), matrix))
    errors = np.linalg.cholesky(matrix) @ np.random.default_rng(4).normal(size=31)
    moved = np.arange(31) >= 21
    found = common_motion(distance, 0.003 - 0.02 * moved + errors, change, tilt=True)
    assert np.array_equal(found.run >= 0, moved) and np.array_equal(found.moved, -1.0 * moved)
    a = np.column_stack((np.ones(31), distance - distance.mean()))
    keep = np.flatnonzero(~moved)
    w = np.linalg.inv(matrix[np.ix_(keep, keep)])
    q = np.linalg.inv(a[keep].T @ w @ a[keep])
    estimate = np.zeros((2, 31))
    estimate[:, keep] = q @ a[keep].T @ w
    left = np.eye(31) - a @ estimate
    assert found.sd_rest == pytest.approx(np.sqrt(np.diag(left @ matrix @ left.T)), rel=1e-8)
    assert (found.sd_shift, found.sd_tilt) == pytest.approx(tuple(np.sqrt(np.diag(q))), rel=1e-8)
    assert found.rest == pytest.approx(left @ (0.003 - 0.02 * moved + errors), abs=1e-12)


@pytest.mark.parametrize("robust", [False, True])
def test_deviations_hold_in_simulated_surveys(robust):
    """500 surveys of a structure that only shifted and tilted: the spread is the one stated."""
    shifts, tilts, rests, found = [], [], [], None
    random, sd = np.random.default_rng(7), np.linspace(0.5e-3, 2e-3, 30)
    covariance = independent(sd)
    for _ in range(500):
        changes = 0.004 + 1e-5 * (POSITIONS - POSITIONS.mean()) + random.normal(0, sd)
        found = common_motion(POSITIONS, changes, covariance, tilt=True, robust=robust)
        shifts.append(found.shift)
        tilts.append(found.tilt)
        rests.append(found.rest)
    # The standard deviation of a standard deviation from 500 is 3.2 %.
    assert np.std(shifts) == pytest.approx(found.sd_shift, rel=0.10)
    assert np.std(tilts) == pytest.approx(found.sd_tilt, rel=0.10)
    assert np.mean(np.std(rests, axis=0) / found.sd_rest) == pytest.approx(1.0, abs=0.05)
    assert np.mean(tilts) == pytest.approx(1e-5, abs=4 * found.sd_tilt / 500**0.5)


def test_a_settled_stretch_does_not_pass_for_a_shift():
    """A third of the structure has settled by 20 mm, the whole has risen by 4 mm: constructed, so the truth
    is known.
    """
    settled = (POSITIONS > 400) & (POSITIONS < 950)
    changes, covariance = 0.004 - 0.020 * settled, independent(np.full(30, 1e-3))
    found = common_motion(POSITIONS, changes, covariance)
    assert found.shift == pytest.approx(0.004, abs=1e-9) and found.rest[settled] == pytest.approx(-0.020, abs=1e-9)
    assert np.array_equal(found.run >= 0, settled)
    mean = common_motion(POSITIONS, changes, covariance, robust=False)
    assert mean.shift == pytest.approx(0.004 - 0.020 * settled.mean(), abs=1e-12)
    tilted = common_motion(POSITIONS, changes + 1e-5 * POSITIONS, covariance, tilt=True)
    assert tilted.tilt == pytest.approx(1e-5, abs=1e-12)
    left = np.array(verdicts(tilted.rest, tilted.sd_rest, tilted.moved))
    assert set(left[settled]) == {"settled"} and set(left[~settled]) == {"not significant"}


def test_where_half_has_moved_nobody_can_tell_which():
    changes = -0.020 * (POSITIONS < 750)
    found = common_motion(POSITIONS, changes, independent(np.full(30, 1e-3)))
    assert not found.told and np.isnan(found.shift) and np.isnan(found.rest).all() and not found.moved.any()
    assert not common_motion(POSITIONS[:2], np.array([0.0, 0.1]), independent(np.full(2, 1e-3))).told


def test_congruency_by_matrices():
    _, change, matrix = walked(12, 2e-7, 2e-9)
    changes = np.random.default_rng(3).normal(0, 1e-3, 12)
    found = congruency(changes, change)
    assert found.chi == pytest.approx(changes @ np.linalg.solve(matrix, changes), rel=1e-9)
    # 95 % of chi squared with 12 degrees of freedom: 21.026, tables.
    assert found.limit == pytest.approx(21.026, abs=1e-3) and not found.holds
    assert congruency(np.zeros(12), change).holds


def test_huber_against_scipy():
    """scipy's least squares with the loss 'huber' at the same scale finds the same shift."""
    optimize = pytest.importorskip("scipy.optimize")
    changes, _ = simulated(3)
    changes[4:9] -= 0.015
    found = common_motion(POSITIONS, changes, None)
    scale = 1.4826 * np.median(np.abs(found.rest))
    other = optimize.least_squares(
        lambda p: changes - p[0], [0.0], loss="huber", f_scale=1.5 * scale, xtol=1e-14, ftol=1e-14
    )
    assert found.shift == pytest.approx(other.x[0], abs=2e-7)


def test_motion_without_deviations_and_with_too_few_stations():
    changes, _ = simulated()
    found = common_motion(POSITIONS, changes, None, robust=False)
    assert found.shift == pytest.approx(changes.mean()) and np.isnan(found.sd_shift) and np.isnan(found.sd_rest).all()
    tilted = common_motion(POSITIONS, changes, None, tilt=True, robust=False)
    assert tilted.tilt == pytest.approx(np.polyfit(POSITIONS, changes, 1)[0], rel=1e-9)
    assert common_motion(POSITIONS[:1], changes[:1], None) is None
    assert common_motion(POSITIONS[:2], changes[:2], None, tilt=True) is None
    assert common_motion(np.zeros(3), changes[:3], None, tilt=True) is None
    same = common_motion(POSITIONS, np.full(30, 0.002), independent(np.full(30, 1e-3)))
    assert same.shift == pytest.approx(0.002, abs=1e-12) and np.all(np.abs(same.rest) < 1e-12)


def test_rates_against_scipy():
    years, random = np.array([0.0, 0.9, 2.1, 3.0]), np.random.default_rng(5)
    heights, sd = 1100.0 + random.normal(0, 2e-3, (6, 4)) - 0.004 * years, random.uniform(1e-3, 2e-3, (6, 4))
    heights[2, 1], heights[3, 1:], heights[4, :3] = np.nan, np.nan, np.nan
    sd[5, 2] = np.nan
    rate, deviation = rates(years, heights, sd)
    for k in (0, 1, 2):
        seen = np.isfinite(heights[k])
        want, covariance = np.polyfit(years[seen], heights[k, seen] - 1100.0, 1, w=1 / sd[k, seen], cov="unscaled")
        assert rate[k] == pytest.approx(want[0], abs=1e-10) and deviation[k] == pytest.approx(
            np.sqrt(covariance[0, 0]), rel=1e-9
        )
    assert np.isnan(rate[[3, 4]]).all() and np.isfinite(rate[5]) and np.isnan(deviation[5])
    assert rate[5] == pytest.approx(np.polyfit(years, heights[5], 1)[0], abs=1e-9)
    assert (
        np.isnan(rates(np.full(4, np.nan), heights, sd)[0]).all() and np.isnan(rates(np.zeros(4), heights, sd)[0]).all()
    )


def test_two_surveys_give_change_over_time():
    rate, deviation = rates(np.array([0.0, 2.0]), np.array([[5.0, 5.006]]), np.array([[3e-3, 4e-3]]))
    assert (rate[0], deviation[0]) == pytest.approx((3e-3, 2.5e-3), abs=1e-12)


def place(axes, chainages, offsets=None):
    return (
        np.array(axes),
        np.array(chainages, float),
        np.full(len(axes), np.nan) if offsets is None else np.array(offsets, float),
    )


def test_matching_by_place():
    first = place([0, 0, 0, 1], [0.0, 50.0, 100.0, 50.0])
    second = place([0, 0, 1, 0, 0], [100.3, 0.2, 50.1, 50.4, 160.0])
    assert matched_by_place(first, second, 0.5).tolist() == [[0, 1], [1, 3], [2, 0], [3, 2]]
    assert matched_by_place(first, second, 0.25).tolist() == [[0, 1], [3, 2]]
    # On either side, to the tolerance itself.
    assert matched_by_place(place([0], [50.0]), place([0], [49.5]), 0.5).tolist() == [[0, 0]]
    assert matched_by_place(place([0], [50.0]), place([0], [50.5]), 0.5).tolist() == [[0, 0]]
    assert len(matched_by_place(place([0], [50.0]), place([0], [49.49]), 0.5)) == 0


def test_matching_is_one_to_one_and_takes_the_nearest():
    first, second = place([0, 0], [0.0, 0.4]), place([0, 0], [0.35, 0.8])
    assert matched_by_place(first, second, 0.5).tolist() == [[1, 0]]


def test_two_rails_stay_apart():
    first = place([0, 0], [100.0, 100.0], [-0.75, 0.75])
    assert matched_by_place(first, place([0, 0], [100.1, 100.05], [0.74, -0.76]), 0.5).tolist() == [[0, 1], [1, 0]]
    # An offset that is not known on one side does not count.
    assert len(matched_by_place(first, place([0], [100.1]), 0.5)) == 1


def test_bad_tolerances():
    for tolerance in (0.0, -1.0, np.nan):
        with pytest.raises(InputError, match="greater than zero"):
            matched_by_place(place([0], [0.0]), place([0], [0.0]), tolerance)
    many = place([0] * 3000, np.arange(3000))
    with pytest.raises(InputError, match="smaller"):
        matched_by_place(many, many, 1e6)


def test_matching_by_name():
    keys = [
        [(axis, name_key(text)) for axis, text in rows]
        for rows in (
            [("a", "0+850"), ("b", "0+850"), ("a", "pier 3"), ("a", "1+000")],
            [("a", "Pier 3"), ("b", "850"), ("a", "1+000.0")],
        )
    ]
    assert matched_by_name(*keys).tolist() == [[1, 1], [2, 0], [3, 2]]
    assert name_key("12+50 (2)") != name_key("12+50")


def test_names_that_differ_in_their_writing():
    assert near_names(["bm 1", "P-2", "1.5"], ["BM1", "P2", "P-3", "15"]) == [("bm 1", "BM1"), ("P-2", "P2")]
    assert near_names(["A", "B"], ["A", "B"]) == []
