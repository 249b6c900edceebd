"""Covariance of observed heights: independent, levelled along arms, or given (method page 6)."""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from .errors import InputError

MOST_DENSE = 6_000
_BLOCK = 128


@dataclass(frozen=True)
class Covariance:
    """Covariance C of n heights, square metres (or of any scale where sigma is unknown).

    ``variance``: (n,), its diagonal; ``matrix``: (n, n), or None where heights are independent; ``inverse``: that of
    the matrix where it is known already. InputError where it is no covariance: a variance that is not positive, or a
    matrix that is not positive definite.
    """

    variance: np.ndarray
    matrix: Optional[np.ndarray] = None
    inverse: Optional[np.ndarray] = None

    def __post_init__(self):
        if not np.all(np.isfinite(self.variance) & (self.variance > 0.0)):
            raise InputError("A standard deviation is zero, negative or not a number.")
        weight = self.inverse
        if self.matrix is not None and weight is None:
            try:
                if not np.all(np.isfinite(self.matrix)):
                    raise np.linalg.LinAlgError  # some LAPACKs let NaN pass
                root = np.linalg.cholesky(self.matrix)
            except np.linalg.LinAlgError:
                raise InputError("The covariance of the heights is not positive definite.") from None
            half = np.linalg.solve(root, np.eye(len(self.matrix)))
            weight = half.T @ half
        object.__setattr__(self, "_weight", weight)

    def __len__(self):
        return len(self.variance)

    @property
    def weight_diagonal(self):
        """Diagonal of W, the inverse of C: (n,)."""
        return 1.0 / self.variance if self._weight is None else np.diag(self._weight).copy()

    @property
    def weight(self):
        """W, the inverse of C, as a matrix (n, n); None where heights are independent."""
        return self._weight

    def weighted(self, values):
        """W times ``values``, (n,) or (n, k)."""
        if self._weight is not None:
            return self._weight @ values
        return (values.T / self.variance).T

    def times(self, values):
        """C times ``values``, (n,) or (n, k)."""
        if self.matrix is not None:
            return self.matrix @ values
        return (values.T * self.variance).T

    def part(self, keep):
        """Covariance of the kept observations only: ``keep``, (n,) of booleans."""
        keep = np.asarray(keep, bool)
        if self.matrix is None or np.all(keep):
            return Covariance(self.variance[keep], self.matrix, self._weight)
        matrix = self.matrix[np.ix_(keep, keep)]
        if 4 * np.sum(~keep) > len(keep):
            return Covariance(self.variance[keep], matrix)
        # The inverse of a part by the inverse of the whole, W_kk - W_ka W_aa^-1 W_ak: a search leaves out few of many.
        across = self._weight[np.ix_(keep, ~keep)]
        weight = self._weight[np.ix_(keep, keep)]
        weight -= across @ np.linalg.solve(self._weight[np.ix_(~keep, ~keep)], across.T)
        return Covariance(self.variance[keep], matrix, weight)


@dataclass(frozen=True)
class _Levelled(Covariance):
    """A part of it is levelled as well, which costs less than the part of a matrix. ``sources``: what levelled was
    given."""

    sources: tuple = ()

    def part(self, keep):
        keep = np.asarray(keep, bool)
        *arrays, sigma_km = self.sources
        return self if np.all(keep) else levelled(*(values[keep] for values in arrays), sigma_km)


def independent(sigmas):
    """Covariance of independent heights with standard deviations ``sigmas`` (n,), metres."""
    return Covariance(np.asarray(sigmas, float) ** 2)


def levelled(sigmas, arms, distances, sigma_km):
    """Covariance of heights levelled outwards along arms from a common origin.

    C_ij = sigma_i^2 [i = j] + sigma_km^2 min(d_i, d_j) / 1 km on one arm, 0 between arms. ``sigmas``: metres (n,);
    ``arms``: index of each station's arm (n,); ``distances``: metres along the levelling from its origin (n,), not
    negative; ``sigma_km``: standard deviation over 1 km of the run as used, metres. InputError for more than 6,000
    stations.
    """
    sigmas, distances = np.asarray(sigmas, float), np.asarray(distances, float)
    if len(sigmas) > MOST_DENSE:
        raise InputError(f"With SIGMA_KM a fit takes at most {MOST_DENSE} stations, and there are {len(sigmas)}.")
    # In place, and all at once where there is one arm: each of these matrices takes 0.3 GB.
    matrix = np.minimum.outer(distances, distances)
    matrix *= sigma_km**2 / 1000.0
    arms, arm = np.unique(arms, return_inverse=True)
    if len(arms) > 1:
        matrix[np.not_equal.outer(arm, arm)] = 0.0
    matrix[np.diag_indices(len(sigmas))] += sigmas**2
    if not (np.all(np.isfinite(sigmas + distances)) and np.all(sigmas > 0.0) and np.all(distances >= 0.0)):
        return Covariance(np.diag(matrix).copy(), matrix)
    sources = sigmas, arm, distances, sigma_km
    order = np.lexsort((distances, arm))
    parts = np.split(order, np.flatnonzero(np.diff(arm[order])) + 1)
    weights = [_levelled_weight(sigmas[rows] ** 2, distances[rows], sigma_km**2 / 1000.0) for rows in parts]
    if len(parts) == 1 and np.all(np.diff(order) == 1):
        return _Levelled(np.diag(matrix).copy(), matrix, weights[0], sources)
    weight = np.zeros_like(matrix)
    for rows, own in zip(parts, weights):
        weight[np.ix_(rows, rows)] = own
    return _Levelled(np.diag(matrix).copy(), matrix, weight, sources)


def _levelled_weight(variance, distances, per_metre):
    """Inverse of the covariance of one arm, by rising distance, (n, n), at a cost of n^2 instead of n^3.

    The differences of neighbours, y = E h with E = I less its lower neighbours, have a covariance T of three diagonals,
    so that W = E^T T^-1 E; T = L D L^T is solved row by row.
    """
    pivots = np.diff(distances, prepend=0.0) * per_metre + variance
    pivots[1:] += variance[:-1]
    number, below = len(pivots), np.zeros(len(pivots))
    for j in range(1, number):
        below[j] = -variance[j - 1] / pivots[j - 1]
        pivots[j] += below[j] * variance[j - 1]
    # Rows of the lower half need no more than those: E, L^-1, D^-1, L^-T and E^T from the left.
    found = np.eye(number)
    found[np.arange(1, number), np.arange(number - 1)] = -1.0
    for j in range(1, number):
        found[j, :j] -= below[j] * found[j - 1, :j]
    found /= pivots[:, None]
    for j in range(number - 2, -1, -1):
        found[j, : j + 1] -= below[j + 1] * found[j + 1, : j + 1]
    for j in range(number - 1):
        found[j, : j + 1] -= found[j + 1, : j + 1]
    _mirror(found)
    return found


def _mirror(matrix):
    """Copy the lower half of a matrix (n, n) to the upper, block by block, so that memory is read along its rows."""
    number = len(matrix)
    for first in range(0, number, _BLOCK):
        last = min(first + _BLOCK, number)
        matrix[first:last, last:] = matrix[last:, first:last].T
        own = np.tril(matrix[first:last, first:last])
        matrix[first:last, first:last] = own + np.tril(own, -1).T
