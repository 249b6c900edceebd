"""A covariance of heights as text, one row for each point: the way from adjustlevelling to a fit.

Row i holds the point's covariances with the points of rows 1 to i, in square millimetres, separated by blanks.
"""

import numpy as np

from .errors import InputError

MOST_POINTS = 2_000
_SQUARE_MILLIMETRES = 1e6


def covariance_texts(matrix):
    """The rows of a covariance (n, n) in square metres as texts (n,). InputError for more than 2,000 points."""
    if len(matrix) > MOST_POINTS:
        raise InputError("A covariance is written for at most {} points, and there are {}.", MOST_POINTS, len(matrix))
    return [" ".join(f"{value:.12g}" for value in row[: k + 1] * _SQUARE_MILLIMETRES) for k, row in enumerate(matrix)]


def covariance_of(names, texts, wanted):
    """Covariance (k, k), square metres, of the points ``wanted`` from rows as written.

    ``names``, ``texts``: of the rows in order (n,). InputError for a point that is not there or twice, or a row that is
    not complete.
    """
    place = {name: k for k, name in enumerate(names)}
    if len(place) != len(names):
        raise InputError("The covariance names a point twice.")
    missing = [name for name in wanted if name not in place]
    if missing:
        raise InputError("The covariance has no point '{}'.", missing[0])
    matrix = np.zeros((len(names), len(names)))
    for k, text in enumerate(texts):
        try:
            row = np.array(text.split(), float)
        except ValueError:
            row = np.zeros(0)
        if len(row) != k + 1 or not np.all(np.isfinite(row)):
            raise InputError("The covariance of point '{}' is not complete: {} numbers are expected.", names[k], k + 1)
        matrix[k, : k + 1] = matrix[: k + 1, k] = row
    at = [place[name] for name in wanted]
    return matrix[np.ix_(at, at)] / _SQUARE_MILLIMETRES
