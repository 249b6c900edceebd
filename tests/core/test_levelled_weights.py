"""Levelled heights weighed along their walk, against inverses by 60 digits and dense algebra."""

import mpmath
import numpy as np
import pytest

from tautline.algorithms.core.covariance import Covariance, levelled
from tautline.algorithms.core.levelled_weights import Followed


def exact_inverse(matrix):
    """By 60 digits."""
    with mpmath.workdps(60):
        return np.array((mpmath.matrix(matrix.tolist()) ** -1).tolist(), float)


def heights_levelled(seed, number=30):
    """On two arms in any order: two stations at one distance, two at the origin; readings and levelling by turns the
    greater, by up to four powers of ten."""
    random = np.random.default_rng(seed)
    arms = random.integers(0, 2, number) * 3 + 1
    distances = random.uniform(0.0, 4000.0, number)
    distances[[3, 7, 8]], distances[[4, 9]], arms[[4, 9]], arms[[3, 7]] = 0.0, 512.0, 1, 4
    sigmas = random.uniform(2e-4, 3e-3, number) * 10.0 ** (seed - 3)
    return sigmas, arms, distances


def near(found, want, share=1e-9):
    return np.abs(found - want).max() <= share * np.abs(want).max()


@pytest.mark.parametrize("seed", range(6))
def test_levelled_heights_against_sixty_digits(seed):
    """Everything that a fit asks of a levelled covariance, by the inverse of its matrix."""
    sigmas, arms, distances = heights_levelled(seed)
    found = levelled(sigmas, arms, distances, 0.0015)
    matrix = np.where(np.equal.outer(arms, arms), np.minimum.outer(distances, distances), 0.0) * (0.0015**2 / 1000.0)
    matrix = matrix + np.diag(sigmas**2)
    weight, values = exact_inverse(matrix), np.random.default_rng(seed).normal(size=(30, 3))
    assert np.array_equal(found.matrix, matrix) and found.variance == pytest.approx(np.diag(matrix), rel=1e-12)
    assert np.all(np.abs(found.weight_diagonal / np.diag(weight) - 1.0) < 1e-9)
    columns = np.column_stack([found.weight_column(row) for row in range(30)])
    assert near(columns, weight) and near(found.weighted(values), weight @ values)
    assert near(found.weighted(values[:, 0]), weight @ values[:, 0])
    assert near(found.times(values), matrix @ values) and near(found.times(values[:, 0]), matrix @ values[:, 0])
    for arm in (1, 4):
        rows = np.flatnonzero(arms == arm)
        rows = rows[np.argsort(distances[rows], kind="stable")]
        tails = np.triu(np.ones((len(rows),) * 2))
        want = np.einsum("ri,ij,rj->r", tails, weight[np.ix_(rows, rows)], tails)
        assert np.all(np.abs(found.tail_forms(rows) / want - 1.0) < 1e-9)
        given = Covariance(np.diag(matrix), matrix).tail_forms(rows)
        assert near(given, want)


@pytest.mark.parametrize("seed", range(6))
def test_what_kept_heights_tell_of_the_others(seed):
    sigmas, arms, distances = heights_levelled(seed)
    whole, random = levelled(sigmas, arms, distances, 0.0015), np.random.default_rng(seed)
    matrix, values = whole.matrix, random.normal(size=(30, 2))
    for aside in ([4], [3, 7, 9, 20], random.permutation(30)[:22]):
        kept = np.ones(30, bool)
        kept[aside] = False
        across = matrix[np.ix_(~kept, kept)] @ exact_inverse(matrix[np.ix_(kept, kept)])
        left, variances = whole.predicted(kept, whole.part(kept), values)
        assert near(left, values[~kept] - across @ values[kept])
        want = np.diag(matrix)[~kept] - np.einsum("ij,ij->i", across, matrix[np.ix_(~kept, kept)])
        assert np.all(np.abs(variances - want) < 1e-9 * want + 1e-14 * np.diag(matrix)[~kept])
        as_given = Covariance(np.diag(matrix), matrix)
        again = as_given.predicted(kept, as_given.part(kept), values)
        assert near(again[0], left, 1e-6) and near(again[1], variances, 1e-4)


@pytest.mark.parametrize("seed", range(6))
def test_whitened_along_the_axis(seed):
    """In the order of the chainage one arm is met inwards and the other outwards, as Cholesky's root takes them."""
    sigmas, arms, distances = heights_levelled(seed)
    covariance, values = levelled(sigmas, arms, distances, 0.0015), np.random.default_rng(seed).normal(size=(30, 2))
    order = np.argsort(np.where(arms == 4, -distances, distances), kind="stable")
    with mpmath.workdps(60):
        root = mpmath.cholesky(mpmath.matrix(covariance.matrix[np.ix_(order, order)].tolist()))
        want = np.array((root**-1 * mpmath.matrix(values.tolist())).tolist(), float)
    assert near(covariance.whitened(order, values), want)
    assert near(covariance.whitened(order, values[:, 1]), want[:, 1])


@pytest.mark.parametrize("seed", range(4))
def test_the_walk_as_it_is_known(seed):
    """Its covariance given the readings that are seen, B - B (B + D)^-1 B, while readings go and come back."""
    sigmas, arms, distances = heights_levelled(seed)
    covariance, random = levelled(sigmas, arms, distances, 0.0015), np.random.default_rng(seed)
    order, kept = covariance.order, np.ones(30, bool)
    walk = (covariance.matrix - np.diag(sigmas**2))[np.ix_(order, order)]
    followed = Followed(covariance.outwards, kept)
    for at in random.integers(0, 30, 25).tolist():
        kept[at] = not kept[at]
        followed.change(at, bool(kept[at]))
        known = walk[:, kept] @ exact_inverse((walk + np.diag(sigmas[order] ** 2))[np.ix_(kept, kept)])
        want = walk - known @ walk[kept]
        assert np.all(np.abs(followed.variances - np.diag(want)) <= 1e-9 * np.diag(walk))
        for place in (0, at, 29):
            first, column = followed.column(place)
            found = np.zeros(30)
            found[first : first + len(column)] = column
            assert np.all(np.abs(found - want[place]) <= 1e-9 * np.diag(walk).max())


def test_one_levelled_height():
    one = levelled([0.003], [7], [1000.0], 0.004)
    assert one.matrix == pytest.approx(np.array([[2.5e-5]])) and one.variance == pytest.approx([2.5e-5])
    assert one.weighted(np.array([2.5])) == pytest.approx([1e5]) and one.times(np.array([2.0])) == pytest.approx([5e-5])
    assert one.weight_diagonal == pytest.approx([4e4]) and one.tail_forms(np.array([0])) == pytest.approx([4e4])
    assert one.whitened(np.array([0]), np.array([0.005])) == pytest.approx([1.0])


def test_levelling_that_adds_next_to_nothing():
    """20,000 readings and hardly a walk: their weights are those of independent ones, and all weigh n together."""
    number = 20_000
    covariance = levelled(np.full(number, 0.003), np.zeros(number), np.linspace(1.0, 3e4, number), 1e-12)
    assert covariance.weight_diagonal == pytest.approx(np.full(number, 1.0 / 9e-6), rel=1e-9)
    assert covariance.tail_forms(np.arange(number))[0] == pytest.approx(number / 9e-6, rel=1e-9)
    assert covariance.weighted(np.ones(number)).sum() == pytest.approx(number / 9e-6, rel=1e-9)
