"""Covariance of observed heights: against inversion by scipy or by many digits, and against simulated levelling."""

import numpy as np
import pytest
from scipy import linalg

from tautline.algorithms.core.covariance import Covariance, independent, independent_pieces, levelled
from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.segments import Segments


def test_weights_of_a_full_covariance():
    random = np.random.default_rng(1)
    root = random.normal(size=(9, 9))
    matrix = root @ root.T + np.eye(9)
    covariance = Covariance(np.diag(matrix).copy(), matrix)
    inverse = linalg.inv(matrix)
    values = random.normal(size=(9, 3))
    assert covariance.weighted(values) == pytest.approx(inverse @ values, abs=1e-12)
    assert covariance.weighted(values[:, 0]) == pytest.approx(inverse @ values[:, 0], abs=1e-12)
    assert covariance.weight_diagonal == pytest.approx(np.diag(inverse), abs=1e-12)
    keep = np.array([True, False, True, True, False, True, True, True, False])
    part = covariance.part(keep)
    assert len(part) == 6
    assert part.weight == pytest.approx(linalg.inv(matrix[keep][:, keep]), abs=1e-12)


def test_independent_heights_of_many_pieces():
    """Of each the weights of numpy's inverse of its own diagonal; one wrong standard deviation of all is refused."""
    sigmas, legs = np.linspace(0.001, 0.009, 9), Segments([4, 1, 4])
    values = np.arange(18.0).reshape(9, 2)
    for one, own, part in zip(independent_pieces(sigmas, legs), legs.parts(sigmas), legs.parts(values)):
        want = np.linalg.inv(np.diag(own**2)) @ part
        assert len(one) == len(own) and not one.correlated and one.weight is None
        assert one.weighted(part) == pytest.approx(want, rel=1e-12)
        assert one.part(own > own[0]).variance.tolist() == (own[1:] ** 2).tolist()
    sigmas[6] = np.nan
    with pytest.raises(InputError, match="not a number"):
        independent_pieces(sigmas, legs)


@pytest.mark.parametrize("as_levelled", [True, False])
@pytest.mark.parametrize("left_out", [0, 1, 3, 20])
def test_weights_of_a_part_of_levelled_heights(left_out, as_levelled):
    """As levelled ones, by the inverse of the whole or anew: a reading of 0.1 mm beside levelling of 3 mm over 1 km on
    two arms, the hard case."""
    distances, arms = np.linspace(0.0, 3000.0, 40), np.repeat([4, 2], [25, 15])
    whole = levelled(np.full(40, 0.0001), arms, distances, 0.003)
    matrix = whole.matrix
    if not as_levelled:
        whole = Covariance(whole.variance, matrix)
    keep = np.ones(40, bool)
    keep[np.random.default_rng(left_out).choice(40, left_out, replace=False)] = False
    part = whole.part(keep)
    want = linalg.inv(matrix[np.ix_(keep, keep)])
    assert np.abs(part.weighted(np.eye(len(part))) - want).max() < 1e-9 * np.abs(want).max()
    assert part.matrix == pytest.approx(matrix[np.ix_(keep, keep)]) and len(part) == 40 - left_out


def test_weights_of_independent_heights():
    covariance = independent([0.001, 0.002, 0.004])
    assert covariance.weight is None and not covariance.correlated
    assert covariance.weight_diagonal == pytest.approx([1e6, 2.5e5, 6.25e4])
    assert covariance.weighted(np.ones((3, 2))) == pytest.approx(np.outer([1e6, 2.5e5, 6.25e4], [1, 1]))
    assert covariance.part(np.array([True, False, True])).variance == pytest.approx([1e-6, 1.6e-5])


def test_levelled_against_simulated_runs():
    """20,000 simulated runs of levelling outwards along two arms: sums of section errors, a reading error at each
    station."""
    random, repeats, km = np.random.default_rng(2), 20_000, 0.0015
    arms = np.array([0, 0, 0, 0, 1, 1, 1])
    distances = np.array([0.0, 300.0, 900.0, 2500.0, 400.0, 700.0, 1900.0])
    sigmas = np.array([1.0, 0.5, 1.0, 2.0, 1.0, 0.7, 1.0]) * 1e-3
    heights = random.normal(size=(repeats, 7)) * sigmas
    for arm in (0, 1):
        mine = np.flatnonzero(arms == arm)
        sections = np.diff(np.concatenate([[0.0], distances[mine]]))
        errors = random.normal(size=(repeats, len(mine))) * km * np.sqrt(sections / 1000.0)
        heights[:, mine] += np.cumsum(errors, axis=1)
    sampled = np.cov(heights.T)
    want = levelled(sigmas, arms, distances, km)
    # Standard deviation of a sampled covariance: sqrt((C_ii C_jj + C_ij^2) / n); 49 values, so 5 of them are allowed.
    spread = np.sqrt((np.outer(want.variance, want.variance) + want.matrix**2) / repeats)
    assert np.all(np.abs(sampled - want.matrix) < 5.0 * spread)
    assert np.all(want.matrix[:4, 4:] == 0.0)
    assert want.variance == pytest.approx(np.diag(want.matrix))
    assert want.matrix[2, 3] == pytest.approx(km**2 * 0.9)


@pytest.mark.parametrize("sigmas", [[0.001, 0.0], [0.001, np.nan], [np.inf, 0.001]])
def test_no_standard_deviation(sigmas):
    with pytest.raises(InputError, match="standard deviation is zero, negative or not a number"):
        independent(sigmas)


@pytest.mark.parametrize("matrix", [[[1.0, 2.0], [2.0, 1.0]], [[1.0, 1.0], [1.0, 1.0]], [[1.0, np.nan], [np.nan, 1.0]]])
def test_no_covariance(matrix):
    matrix = np.array(matrix)
    with pytest.raises(InputError, match="positive definite"):
        Covariance(np.ones(2), matrix)


@pytest.mark.parametrize(
    "sigma, distance, words",
    [
        (0.0, 5.0, "standard deviation is zero"),
        (np.nan, 5.0, "no number"),
        (0.001, -1.0, "distance along the levelling is negative"),
        (0.001, np.inf, "distance along the levelling is negative or no number"),
    ],
)
def test_no_levelling(sigma, distance, words):
    with pytest.raises(InputError, match=words):
        levelled([0.001, sigma], [0, 0], [0.0, distance], 0.001)
