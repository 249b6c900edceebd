"""Minimum zones of straightness, as geometrical tolerancing defines them (ISO 12780-1; ISO 1101; method page 6).

The zone between two parallel lines that hold a profile, and the cylinder that holds an axis, each as narrow as it can
be. A zone is never larger than the range from the best-fit line, which is one of the lines it chooses from.
"""

import numpy as np

# Departures below this, metres, are none: they are the rounding of coordinates of the Earth's size.
NO_DEPARTURE = 1e-9
# The cylinder's diameter is exact to this share of itself.
GAP = 1e-8
_GROWTH, _MOST_STEPS = 30.0, 400


def profile_zone(along, across):
    """Least distance of two parallel lines along a profile that hold it, metres.

    ``along``, ``across``: places and departures of its points, metres (n,), in any order. Exact: the narrowest strip
    lies on an edge of the convex hull. Needs scipy. 0 for fewer than three points.
    """
    if len(along) < 3:
        return 0.0
    x, y, tilt = _less_line(along, across)
    height, width = float(np.ptp(y)), float(np.ptp(x))
    if height < NO_DEPARTURE or width == 0.0:
        return 0.0 if width else height
    # Points in a unit square: metres up are thousandths of metres along.
    lower, upper = _chains((x - x.min()) / width, (y - y.min()) / height)
    slopes = np.concatenate([_slopes(lower), _slopes(upper)])
    # At each slope the strip is held by one point of either chain: where the chain's own slope passes it.
    below = lower[np.searchsorted(_slopes(lower), slopes)]
    above = upper[np.searchsorted(-_slopes(upper), -slopes)]
    open_by = (above[:, 1] - slopes * above[:, 0]) - (below[:, 1] - slopes * below[:, 0])
    return float(np.min(height * open_by / np.hypot(1.0, tilt + slopes * height / width)))


def cylinder_zone(along, up, aside):
    """Least diameter of a cylinder along an axis that holds its points, metres.

    ``along``, ``up``, ``aside``: places and departures from a line near it, metres (n,); the departures are small
    against the length. min over lines of the greatest |e_i| is convex, and is found by an interior-point method (Boyd
    and Vandenberghe, Convex Optimization, ch. 11) to GAP of itself.
    """
    if len(along) < 2:
        return 0.0
    x, up, _ = _less_line(along, up)
    _, aside, _ = _less_line(along, aside)
    size, width = float(np.max(np.hypot(up, aside))), float(np.ptp(x))
    if size < NO_DEPARTURE:
        return 0.0
    x = (x - 0.5 * (x.max() + x.min())) / (0.5 * width) if width else np.zeros(len(x))
    departures = np.stack([up, aside]) / size
    base = np.stack([np.ones(len(x)), x]) if width else np.ones((1, len(x)))
    line = _narrowest(base, departures)
    return 2.0 * size * float(min(1.0, np.max(np.hypot(*(departures - line @ base)))))


def _less_line(along, across):
    """Places and departures less the best-fit line, metres (n,), and its slope: what is left is small."""
    x, y = np.asarray(along, float), np.asarray(across, float)
    x, y = x - x.mean(), y - y.mean()
    spread = float(np.sum(x**2))
    slope = float(np.sum(x * y)) / spread if spread > 0.0 else 0.0
    return x, y - slope * x, slope


def _chains(x, y):
    """Lower and upper convex hull, each (k, 2) by rising x; vertical edges belong to neither."""
    from scipy.spatial import ConvexHull

    points = np.column_stack([x, y])
    try:
        ring = points[ConvexHull(points).vertices]
    except RuntimeError:  # QhullError, which not every release exports
        # Flat as far as numbers go: the points themselves, few of which count.
        ring = points[np.argsort(x, kind="stable")]
        return ring[[0, -1]], ring[[0, -1]]
    # Counter-clockwise: the lower chain runs from the leftmost lowest to the rightmost lowest.
    first = int(np.lexsort((ring[:, 1], ring[:, 0]))[0])
    ring = np.roll(ring, -first, axis=0)
    last = int(np.lexsort((-ring[:, 1], ring[:, 0]))[-1])
    lower, upper = ring[: last + 1], np.concatenate([ring[last:], ring[:1]])[::-1]
    return _moving(lower), _moving(upper)


def _moving(chain):
    """The chain without vertical edges at its ends."""
    steps = np.diff(chain[:, 0]) > 0.0
    keep = np.concatenate([steps, [False]]) | np.concatenate([[False], steps])
    return chain[keep]


def _slopes(chain):
    return np.diff(chain[:, 1]) / np.diff(chain[:, 0])


def _narrowest(base, departures):
    """Coefficients (2, k) of the lines on ``base`` (k, n) whose greatest distance from ``departures`` (2, n) is least.

    Newton on t r - sum log(r^2 - |e|^2), t growing; each barrier of a cone counts 2, so that 2 n / t bounds the gap.
    """
    k, n = base.shape
    line, radius = np.zeros((2, k)), 1.5
    t, most = 2.0 * n, 2.0 * n / GAP
    for _ in range(_MOST_STEPS):
        step, decrease = _newton(base, departures, line, radius, t)
        line, radius = _searched(base, departures, line, radius, step, decrease, t)
        if decrease < 0.05:
            if t * radius >= most:
                break
            t *= _GROWTH
    return line


def _newton(base, departures, line, radius, t):
    """Newton's step, (2k + 1,): radius, then both lines; and its squared decrement."""
    e = departures - line @ base
    slack = radius**2 - e[0] ** 2 - e[1] ** 2
    # Rows of the slack's gradient over the slack itself.
    rows = np.vstack([np.full((1, len(slack)), 2.0 * radius), 2.0 * e[0] * base, 2.0 * e[1] * base]) / slack
    gradient = -rows.sum(axis=1)
    gradient[0] += t
    hessian = rows @ rows.T
    hessian[0, 0] -= 2.0 * float(np.sum(1.0 / slack))
    k = len(base)
    own = 2.0 * (base / slack) @ base.T
    hessian[1 : k + 1, 1 : k + 1] += own
    hessian[k + 1 :, k + 1 :] += own
    step = -_solved(hessian, gradient)
    return step, float(-gradient @ step)


def _solved(matrix, right):
    """Solution of a small positive definite system by elimination: LAPACK would start threads for each axis."""
    rows = [[*row, value] for row, value in zip(matrix.tolist(), right.tolist())]
    size = len(rows)
    for i in range(size):
        for j in range(i + 1, size):
            share = rows[j][i] / rows[i][i]
            rows[j] = [a - share * b for a, b in zip(rows[j], rows[i])]
    found = [0.0] * size
    for i in reversed(range(size)):
        found[i] = (rows[i][size] - sum(rows[i][j] * found[j] for j in range(i + 1, size))) / rows[i][i]
    return np.array(found)


def _searched(base, departures, line, radius, step, decrease, t):
    """Line and radius a way along ``step``, halved until the barrier falls as it should."""

    def barrier(line, radius):
        e = departures - line @ base
        slack = radius**2 - e[0] ** 2 - e[1] ** 2
        return t * radius - float(np.sum(np.log(slack))) if radius > 0.0 and np.all(slack > 0.0) else np.inf

    start, share = barrier(line, radius), 1.0
    move = step[1:].reshape(2, -1)
    for _ in range(60):
        new = line + share * move, radius + share * step[0]
        if barrier(*new) <= start - 0.1 * share * decrease:
            return new
        share *= 0.5
    return line, radius
