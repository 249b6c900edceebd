"""Covariance of observed heights: independent, levelled along arms, or given (method page 6).

Three kinds of one thing: what is given costs a matrix, the others grow with the heights. Levelled ones are in
levelled_weights.py.
"""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from .errors import InputError
from .levelled_weights import Levelled


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
    def correlated(self):
        """Whether the heights share errors."""
        return self.matrix is not None

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

    def weight_column(self, row):
        """W of one row with all (n,)."""
        if self._weight is not None:
            return self._weight[row]
        found = np.zeros(len(self))
        found[row] = 1.0 / self.variance[row]
        return found

    def tail_forms(self, rows):
        """e^T W e with e = 1 from each of the ``rows`` (k,) on: of one arm, outwards."""
        own = self.weight_diagonal[rows]
        if self._weight is not None:
            own += [2.0 * float(self._weight[row, rows[j:]].sum()) for j, row in enumerate(rows.tolist(), 1)]
        return np.cumsum(own[::-1])[::-1]

    def whitened(self, order, values):
        """L^-1 times ``values``, (n,) or (n, k), which are in the ``order`` (n,) of rows, with C = L L^T in that
        order."""
        if self.matrix is None:
            return (values.T / np.sqrt(self.variance[order])).T
        return np.linalg.solve(np.linalg.cholesky(self.matrix[np.ix_(order, order)]), values)

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

    def predicted(self, kept, part, values):
        """Of the rows not ``kept`` (n,), with ``part``, the covariance of those kept: ``values`` (n, k) less what the
        kept ones tell of them, and the variances of that."""
        left, own = values[~kept], self.variance[~kept]
        if self.matrix is not None and len(own):
            shared = self.matrix[np.ix_(~kept, kept)]
            across = part.weighted(shared.T).T
            left, own = left - across @ values[kept], own - np.einsum("ij,ij->i", across, shared)
        return left, own


def independent(sigmas):
    """Covariance of independent heights with standard deviations ``sigmas`` (n,), metres."""
    return Covariance(np.asarray(sigmas, float) ** 2)


def independent_pieces(sigmas, legs):
    """The same of the heights of many pieces, ``legs``, Segments of n rows: a list, checked in one go."""
    whole = independent(sigmas)
    found = [object.__new__(Covariance) for _ in legs.counts]
    for one, variance in zip(found, legs.parts(whole.variance)):
        vars(one).update(variance=variance, matrix=None, inverse=None, _weight=None)
    return found


def levelled(sigmas, arms, distances, sigma_km):
    """Covariance of heights levelled outwards along arms from a common origin.

    C_ij = sigma_i^2 [i = j] + sigma_km^2 min(d_i, d_j) / 1 km on one arm, 0 between arms. ``sigmas``: metres (n,);
    ``arms``: number of each station's arm (n,); ``distances``: metres along the levelling from its origin (n,), not
    negative; ``sigma_km``: standard deviation over 1 km of the run as used, metres.
    """
    return Levelled(
        np.asarray(sigmas, float) ** 2, np.asarray(arms), np.asarray(distances, float), float(sigma_km) ** 2 / 1000.0
    )
