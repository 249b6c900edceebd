"""Small matrices without LAPACK: its threads cost milliseconds to start, which thousands of axes would pay each.

Source: Gauss and Jordan's elimination, for example Golub and Van Loan (2013), Matrix Computations, section 3.2.
"""

import math

import numpy as np

# Of this size and above the library is as fast.
_LARGE = 7


def inverse(matrix):
    """Inverse of a symmetric positive definite matrix (p, p); LinAlgError where it is singular.

    No pivots are sought: with such a matrix none is needed.
    """
    size = len(matrix)
    if size >= _LARGE:
        return np.linalg.inv(matrix)
    rows = matrix.tolist()
    for i in range(size):
        pivot = rows[i][i]
        if not pivot > 0.0:
            raise np.linalg.LinAlgError("not positive definite")
        rows[i][i] = 1.0
        own = rows[i] = [value / pivot for value in rows[i]]
        for j in range(size):
            if j != i:
                share, rows[j][i] = rows[j][i], 0.0
                rows[j] = [a - share * b for a, b in zip(rows[j], own)]
    return np.array(rows)


def condition(matrix):
    """Condition of a symmetric matrix (p, p) with a unit diagonal, of two rows and mostly of three in closed form.

    Eigenvalues of three rows by the angle of their cubic: Smith (1961), Comm. ACM 4(4). They are good to 1e-15 of the
    greatest, so that a condition above a million is left to the library.
    """
    if len(matrix) == 2:
        share = abs(float(matrix[0, 1]))
        return (1.0 + share) / (1.0 - share) if share < 1.0 else float("inf")
    if len(matrix) == 3:
        (_, a, b), (_, _, c) = matrix[0].tolist(), matrix[1].tolist()
        spread = math.sqrt((a * a + b * b + c * c) / 3.0)
        if spread == 0.0:
            return 1.0
        turn = math.acos(max(-1.0, min(1.0, a * b * c / spread**3))) / 3.0
        least, greatest = (1.0 + 2.0 * spread * math.cos(turn + shift) for shift in (2.0 * math.pi / 3.0, 0.0))
        if least > 1e-6 * greatest:
            return greatest / least
    return float(np.linalg.cond(matrix))


def solved(matrices, right):
    """Solutions (m, p) of symmetric positive definite systems (m, p, p) with right sides (m, p), all at once."""
    rows = np.concatenate([matrices, right[:, :, None]], axis=2)
    size = right.shape[1]
    for i in range(size):
        share = rows[:, i + 1 :, i] / rows[:, i, i][:, None]
        rows[:, i + 1 :, i:] -= share[:, :, None] * rows[:, None, i, i:]
    found = np.empty_like(right)
    for i in reversed(range(size)):
        rest = np.einsum("mk,mk->m", rows[:, i, i + 1 : size], found[:, i + 1 :])
        found[:, i] = (rows[:, i, size] - rest) / rows[:, i, i]
    return found
