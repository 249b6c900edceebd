"""Covariances of changes against matrices written out: W times a vector, C times a vector, e^T W e of every run."""

import numpy as np
import pytest

from tautline.algorithms.core.change_covariance import GivenChanges, LevelledChanges
from tautline.algorithms.core.covariance import Covariance

RANDOM = np.random.default_rng(11)
OWN = RANDOM.uniform(1e-7, 4e-6, 17)


@pytest.mark.parametrize("start", [0.0, 20.0, -60.0, -400.0, -2000.0])
@pytest.mark.parametrize("walk", [0.0, 1e-9, 1e-6])
def test_levelled_changes(start, walk):
    """The origin of the levelling is at an end, beyond it, within the axis, and beyond the other end."""
    distance = start + np.cumsum(RANDOM.uniform(0.0, 100.0, 17)) - (start == 0.0) * 1e-3
    distance[5] = distance[4]
    same = np.sign(distance)[:, None] == np.sign(distance)
    matrix = np.where(same, np.minimum.outer(abs(distance), abs(distance)), 0.0) * walk + np.diag(OWN)
    weight, x = np.linalg.inv(matrix), RANDOM.normal(size=17)
    first, last = np.triu_indices(18)
    runs = ((np.arange(17) >= first[:, None]) & (np.arange(17) < last[:, None])).astype(float)
    forms = np.einsum("ri,ij,rj->r", runs, weight, runs)
    keep = np.arange(17) % 4 != 1
    for one in (LevelledChanges(OWN, distance, walk), GivenChanges(Covariance(np.diag(matrix).copy(), matrix))):
        assert one.variance == pytest.approx(np.diag(matrix), rel=1e-12)
        assert one.weighted(x) == pytest.approx(weight @ x, rel=1e-8, abs=1e-8 * np.abs(weight @ x).max())
        assert one.times(x) == pytest.approx(matrix @ x, rel=1e-10, abs=1e-16)
        assert one.forms(first, last) == pytest.approx(forms, rel=1e-8, abs=1e-8 * forms.max())
        part = np.linalg.inv(matrix[np.ix_(keep, keep)]) @ x[keep]
        assert one.part(keep).weighted(x[keep]) == pytest.approx(part, rel=1e-8, abs=1e-8 * np.abs(part).max())
