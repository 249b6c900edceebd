"""Standard deviation of a place across a line, from those of its two coordinates (method page 6)."""

import numpy as np


def sideways_sigma(sigma_x, sigma_y, correlation, right_x, right_y):
    """Standard deviation (n,) of the offset from a line, in the unit of ``sigma_x`` and ``sigma_y`` (n,).

    These are of the coordinates x and y, ``correlation`` between them -1 to 1; ``right_x``, ``right_y`` (n,): the
    direction to the right of the line in the same coordinates, of any length. NaN where one of them is.
    """
    size = np.hypot(right_x, right_y)
    x, y = sigma_x * right_x / size, sigma_y * right_y / size
    return np.sqrt(np.maximum(x * x + y * y + 2.0 * correlation * x * y, 0.0))
