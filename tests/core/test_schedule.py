"""Movements of supports: by hand, by enumeration of every possible movement, and at the size of a real structure."""

import itertools

import numpy as np
import pytest

from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.schedule import METHODS, Rules, movements, neighbouring

MM = 1e-3


def row(number):
    return neighbouring([0] * number, range(number), np.ones(number, bool))


def millimetres(values):
    return np.round(np.asarray(values) / MM, 6).tolist()


def test_full_correction_by_hand():
    """Nearest step of 2 mm to minus the residual; a tie goes to the smaller movement."""
    found = movements(np.array([7.1, -4.9, 0.9, 1.0, 3.0, 0.0]) * MM, Rules("full", 2 * MM))
    assert millimetres(found.move) == [-8, 4, 0, 0, -2, 0]
    assert millimetres(found.predicted) == [-0.9, -0.9, 0.9, 1.0, 1.0, 0.0]
    assert found.total == pytest.approx(14 * MM, abs=1e-12) and list(found.why) == [""] * 6


def test_travel_is_kept_in_both_directions():
    found = movements(
        np.array([20.0, -20.0, 3.0]) * MM, Rules("full", 2 * MM, up=9 * MM, down=5 * MM), tolerances=np.full(3, 10 * MM)
    )
    assert millimetres(found.move) == [-4, 8, -2]  # whole steps within 5 and 9
    assert list(found.why) == ["travel", "travel", ""]


def test_least_movement_by_hand():
    """Each support alone: the first whole step within the tolerance."""
    residuals = np.array([12.0, -12.1, 10.0, -3.0, 15.0]) * MM
    found = movements(residuals, Rules("least", 2 * MM), tolerances=np.full(5, 10 * MM))
    assert millimetres(found.move) == [-2, 4, 0, 0, -6]
    # A hundredth of a millimetre beyond is beyond.
    assert millimetres(
        movements(residuals - 0.01 * MM, Rules("least", 2 * MM), tolerances=np.full(5, 10 * MM)).move
    ) == [-2, 4, 0, 0, -6]
    assert (
        millimetres(movements(-residuals - 0.01 * MM, Rules("least", 2 * MM), tolerances=np.full(5, 10 * MM)).move)[2]
        == 2
    )
    exact = movements(residuals, Rules("least"), tolerances=np.full(5, 10 * MM))
    assert millimetres(exact.move) == [-2, 2.1, 0, 0, -5]


def test_tolerance_to_the_last_digit_is_within():
    """0.012 - 0.002 is not 0.010 in binary; a step more would be wrong."""
    for step in (0.001, 0.0005, 0.0001):
        found = movements(
            np.array([0.012, 0.0107, 0.3]), Rules("least", step), tolerances=np.array([0.010, 0.0097, 0.1])
        )
        assert found.move == pytest.approx([-0.002, -0.001, -0.2], abs=1e-12)


def test_steps_that_are_whole_but_for_their_binary_form():
    """0.3/0.1 is 2.9999999999999996, and (0.1 - 0.3)/0.1 is below -2."""
    assert movements(np.array([-0.5]), Rules("full", 0.1, up=0.3)).move == pytest.approx([0.3], abs=1e-12)
    found = movements(np.array([3 * 0.1]), Rules("least", 0.1), tolerances=np.array([0.1]))
    assert found.move == pytest.approx([-0.2], abs=1e-12)


def test_step_too_coarse_for_the_tolerance():
    """Residual 5 mm, steps of 10: +5 or -5, never within 2; it moves only if that brings it nearer."""
    found = movements(np.array([5.0, 5.5, 4.0]) * MM, Rules("least", 10 * MM), tolerances=np.full(3, 2 * MM))
    assert millimetres(found.move) == [0, -10, 0] and list(found.why) == ["step"] * 3


def test_linear_programme_by_hand():
    """Residuals 9, 0, 0 mm, tolerance 5, neighbours at most 2 apart: p1 - p2 <= 2 and p2 - p3 <= 2.

    Moving 1 by -a, 2 by +b and 3 by +c needs 9 - a - b <= 2 and b - c <= 2, so a + b >= 7 and the sum is at least 7.
    The dual agrees: multiplier 1 on the first limit gives 9 - 2 = 7.
    """
    pytest.importorskip("scipy")
    for step in (None, 1 * MM):
        found = movements(
            np.array([9.0, 0.0, 0.0]) * MM,
            Rules("least", step, smoothness=2 * MM),
            tolerances=np.full(3, 5 * MM),
            neighbours=row(3),
        )
        assert found.total == pytest.approx(7 * MM, abs=1e-9) and len(found.steep) == 0
        assert np.all(np.abs(np.diff(found.predicted)) <= 2 * MM + 1e-9)
        # Among these the one with the smallest residuals is chosen: the first support alone.
        assert found.move == pytest.approx([-7 * MM, 0, 0], abs=1e-8)


def best_by_enumeration(residuals, step, limit, tolerance, smoothness, movable, method):
    """Every combination of whole steps: (least sum beyond the limits, then the method's own measure)."""
    reach = int(limit / step + 1e-9)
    steps = np.array(list(itertools.product(*[range(-reach, reach + 1) if free else [0] for free in movable])))
    predicted = residuals + steps * step
    return cost(predicted, steps * step, step, tolerance, smoothness, method).min()


def steps_beyond(residuals, moves, step, tolerance):
    """Whole steps from each movement to the nearest that brings its support within the tolerance (or nearest, without
    one)."""
    steps = np.arange(-60, 61)
    left = np.abs(residuals[..., None] + steps * step)
    good = left <= tolerance + 1e-9
    good = np.where(good.any(axis=-1, keepdims=True), good, left <= left.min(axis=-1, keepdims=True) + 1e-12)
    return np.where(good, np.abs(steps - np.rint(moves / step)[..., None]), 999).min(axis=-1)


def cost(predicted, moves, step, tolerance, smoothness, method):
    beyond = steps_beyond(predicted - moves, moves, step, tolerance).sum(axis=-1) * step
    missed = np.maximum(np.abs(np.diff(predicted, axis=-1)) - smoothness - 1e-9, 0.0)
    beyond = beyond + (np.ceil(missed / step - 1e-7) * step).sum(axis=-1)
    measure = np.abs(moves).sum(axis=-1) if method == "least" else np.abs(predicted).sum(axis=-1)
    return 2 * (predicted.shape[-1] + 1) * beyond + measure


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("case", range(12))
def test_linked_supports_against_enumeration(method, case):
    """The programme over whole steps is exact: no combination of steps is better."""
    pytest.importorskip("scipy")
    random = np.random.default_rng(case)
    step, tolerance = [1.0, 2.0, 3.0][case % 3] * MM, [1.2, 2.0, 4.0][case % 3] * MM
    smoothness, limit = [1.5, 3.0, 2.5, 0.4][case % 4] * MM, (3 + case % 2) * step
    residuals, movable = np.round(random.normal(0, 5, 5), 1) * MM, random.random(5) > 0.2
    found = movements(
        residuals,
        Rules(method, step, limit, limit, smoothness),
        tolerances=np.full(5, tolerance),
        movable=movable,
        neighbours=row(5),
    )
    assert found.move / step == pytest.approx(np.rint(found.move / step), abs=1e-9)
    assert np.all(np.abs(found.move) <= limit + 1e-12) and np.all(found.move[~movable] == 0.0)
    mine = cost(found.predicted, found.move, step, tolerance, smoothness, method)
    # The tie-break is 1e-4 of a movement.
    assert mine <= best_by_enumeration(residuals, step, limit, tolerance, smoothness, movable, method) + 3e-4 * limit


def test_fixed_neighbours_bind_and_unknown_ones_do_not():
    pytest.importorskip("scipy")
    residuals = np.array([10.0, 0.0, np.nan, 0.0]) * MM
    rules, free = Rules("full", 1 * MM, smoothness=3 * MM), np.array([False, True, True, True])
    pairs = neighbouring([0] * 4, range(4), np.isfinite(residuals))
    found = movements(residuals, rules, tolerances=np.full(4, 20 * MM), movable=free, neighbours=pairs)
    assert millimetres(found.predicted[[0, 1, 3]]) == [10, 7, 4] and np.isnan(found.move[2])


def test_what_cannot_be_kept_is_told():
    pytest.importorskip("scipy")
    residuals = np.array([30.0, 0.0]) * MM
    found = movements(
        residuals, Rules("least", 1 * MM, 5 * MM, 5 * MM, 4 * MM), tolerances=np.full(2, 10 * MM), neighbours=row(2)
    )
    assert millimetres(found.move) == [-5, 5] and list(found.why) == ["travel", ""] and found.steep.tolist() == [[0, 1]]
    pulled = movements(
        np.array([12.0, 0.0]) * MM,
        Rules("full", 1 * MM, smoothness=1 * MM),
        tolerances=np.full(2, 2 * MM),
        movable=np.array([False, True]),
        neighbours=row(2),
    )
    assert pulled.why[0] == "fixed" and len(pulled.steep) + (pulled.why[1] == "neighbours") > 0


def test_neighbours_follow_the_chainage_on_each_axis():
    pairs = neighbouring([0, 1, 0, 0, 1], [300.0, 10.0, 100.0, 200.0, 5.0], np.array([True, True, True, False, True]))
    assert sorted(map(tuple, pairs.tolist())) == [(2, 0), (4, 1)]
    assert len(neighbouring([0], [1.0], np.array([True]))) == 0 and len(neighbouring([], [], np.zeros(0, bool))) == 0


def test_a_long_structure():
    """5,000 supports in one programme: all within, whole steps, neighbours together."""
    pytest.importorskip("scipy")
    residuals = np.cumsum(np.random.default_rng(4).normal(0, 0.3, 5000)) * MM
    residuals -= residuals.mean()
    found = movements(
        residuals, Rules("least", 0.5 * MM, smoothness=2 * MM), tolerances=np.full(5000, 3 * MM), neighbours=row(5000)
    )
    assert np.abs(found.predicted).max() <= 3 * MM + 1e-9 and np.abs(np.diff(found.predicted)).max() <= 2 * MM + 1e-9
    alone = movements(residuals, Rules("least", 0.5 * MM), tolerances=np.full(5000, 3 * MM))
    assert found.total >= alone.total - 1e-9


def test_bad_rules():
    for arguments, word in (
        (("most",), "unknown"),
        (("full", 0.0), "increment"),
        (("full", 1e-300), "at least 0.001 mm"),
        (("full", -1.0), "increment"),
        (("full", np.nan), "increment"),
        (("full", None, -1.0), "raise"),
        (("full", None, None, -1.0), "lowering"),
        (("full", None, None, None, -0.1), "limit between neighbours"),
    ):
        with pytest.raises(InputError, match=word):
            Rules(*arguments)
    with pytest.raises(InputError, match="tolerance"):
        movements(np.array([1.0, 2.0]), Rules("least"), tolerances=np.array([1.0, np.nan]))


def test_nothing_known():
    found = movements(np.full(3, np.nan), Rules("full", 1.0))
    assert np.isnan(found.move).all() and found.total == 0.0 and list(found.why) == [""] * 3
