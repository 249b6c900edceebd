"""Those elements of the inverse of a sparse normal matrix that variances need: the diagonal and one for each line.

The whole inverse of 10,000 heights would be dense; the elements within the pattern of the factor follow from each
other, from the last column back. Source: Takahashi, Fagan and Chen (1973), Formation of a sparse bus impedance matrix;
Erisman and Tinney (1975), Comm. ACM 18(3).
"""

import numpy as np

_STEP = 512


def selected_inverse(solver, first, second, result):
    """Fill ``result`` with the diagonal of the inverse (n,) and its elements at (``first``, ``second``) (m,); yields
    the share done.

    ``solver``: SuperLU factor, without pivoting, of a symmetric positive definite matrix with no positive element off
    the diagonal: no element of such a factor cancels, so that each column's pattern lies within that of the next one in
    it. ``first``, ``second``: columns (m,); pairs must be in the matrix's own pattern; -1 gives 0. ``result``: an empty
    list.
    """
    lower, order = solver.L.tocsc(), solver.perm_c
    lower.sort_indices()
    number = lower.shape[0]
    pivots = solver.U.diagonal()
    starts, rows, values = lower.indptr.tolist(), lower.indices, lower.data
    patterns, fronts = [None] * number, [None] * number
    diagonal = np.empty(number)
    for count, j in enumerate(range(number - 1, -1, -1), 1):
        below = slice(starts[j] + 1, starts[j + 1])
        pattern = rows[starts[j] : starts[j + 1]]
        front = np.empty((len(pattern), len(pattern)))
        if len(pattern) > 1:
            above = int(pattern[1])
            at = np.searchsorted(patterns[above], pattern[1:])
            inner = fronts[above][at[:, None], at]
            column = -(inner @ values[below])
            front[1:, 1:], front[0, 1:], front[1:, 0] = inner, column, column
            front[0, 0] = 1.0 / pivots[j] - column @ values[below]
        else:
            front[0, 0] = 1.0 / pivots[j]
        patterns[j], fronts[j], diagonal[j] = pattern, front, front[0, 0]
        if count % _STEP == 0:
            yield count / number
    result += [diagonal[order], _pairs(order, patterns, fronts, first, second)]
    yield 1.0


def _pairs(order, patterns, fronts, first, second):
    found = np.zeros(len(first))
    inside = np.flatnonzero((first >= 0) & (second >= 0))
    a, b = order[first[inside]], order[second[inside]]
    for k, i, j in zip(inside.tolist(), np.minimum(a, b).tolist(), np.maximum(a, b).tolist()):
        found[k] = fronts[i][0, int(np.searchsorted(patterns[i], j))]
    return found
