"""Minimum zones of straightness, as geometrical tolerancing defines them (ISO 12780-1; ISO 1101; method page 6).

The zone between two parallel lines that hold a profile, and the cylinder that holds an axis, each as narrow as it can
be. A zone is never larger than the range from the best-fit line, which is one of the lines it chooses from.
"""

import numpy as np

from .small_matrices import solved

# Departures below this, metres, are none: they are the rounding of coordinates of the Earth's size.
NO_DEPARTURE = 1e-9
# The cylinder's diameter is exact to this share of itself.
GAP = 1e-8
_GROWTH, _MOST_STEPS = 30.0, 400
# Of more points those within the hull of the others are left out first: a cylinder that holds the hull holds them.
_MANY = 400


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
    """Least diameter of a cylinder along an axis that holds its points, metres: see cylinder_zones."""
    return float(cylinder_zones([(along, up, aside)])[0])


def cylinder_zones(axes):
    """Least diameters of the cylinders along axes that hold their points, metres (m,), all found at once.

    ``axes``: for each (along, up, aside), places and departures from a line near it, metres (n,); the departures are
    small against the length. min over lines of the greatest |e_i| is convex, and is found by an interior-point method
    (Boyd and Vandenberghe, Convex Optimization, ch. 11) to GAP of itself.
    """
    zones, places, departures, sizes, which = np.zeros(len(axes)), [], [], [], []
    for number, (along, up, aside) in enumerate(axes):
        if len(along) < 2:
            continue
        x, up, _ = _less_line(along, up)
        _, aside, _ = _less_line(along, aside)
        size, width = float(np.max(np.hypot(up, aside))), float(np.ptp(x))
        if size < NO_DEPARTURE:
            continue
        which.append(number)
        sizes.append(size)
        # Where all stand at one place there is no slope to find: x = 0 leaves it as it is.
        place = (x - 0.5 * (x.max() + x.min())) / (0.5 * width) if width else np.zeros(len(x))
        outer = _outermost(np.stack([place, up / size, aside / size]))
        places.append(outer[0])
        departures.append(outer[1:])
    if which:
        counts = np.array([len(place) for place in places])
        points = _Points(np.concatenate(places), np.concatenate(departures, axis=1), counts)
        widest = points.greatest(np.hypot(*points.departures(_narrowest(points))))
        zones[which] = 2.0 * np.array(sizes) * np.minimum(1.0, widest)
    return zones


def _outermost(points):
    """Of many points (3, n) those on their convex hull; all where they are flat."""
    if points.shape[1] <= _MANY:
        return points
    from scipy.spatial import ConvexHull

    try:
        return points[:, ConvexHull(points.T).vertices]
    except RuntimeError:  # QhullError, which not every release exports
        return points


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


class _Points:
    """The points of many axes one after another: ``x``, -1 to 1 on each axis, and departures ``e`` (2, n), 1 at most.

    ``counts``: points of each axis (m,); ``first``: index of its first (m,); ``axis``: that of each point (n,).
    """

    def __init__(self, x, e, counts):
        self.x, self.e, self.counts = x, e, counts
        self.first = np.concatenate([[0], np.cumsum(counts)[:-1]])
        self.axis = np.repeat(np.arange(len(counts)), counts)

    def part(self, axes):
        """The points of some axes only; ``axes``: booleans (m,)."""
        rows = np.repeat(axes, self.counts)
        return _Points(self.x[rows], self.e[:, rows], self.counts[axes])

    def sums(self, values):
        """Sums over each axis of values (..., n): (..., m)."""
        return np.add.reduceat(values, self.first, axis=-1)

    def greatest(self, values):
        """Greatest of values (n,) on each axis (m,)."""
        return np.maximum.reduceat(values, self.first)

    def departures(self, lines):
        """Departures (2, n) from lines (m, 2, 2): of each axis, up and aside, place and slope."""
        own = lines[self.axis]
        return np.stack([self.e[k] - own[:, k, 0] - own[:, k, 1] * self.x for k in (0, 1)])

    def slack(self, lines, radii):
        """r^2 - |e|^2 of each point (n,), and its departures (2, n)."""
        e = self.departures(lines)
        return radii[self.axis] ** 2 - e[0] ** 2 - e[1] ** 2, e


def _narrowest(points):
    """The lines (m, 2, 2) whose greatest distance from their own points is least.

    Newton on t r - sum log(r^2 - |e|^2), t growing; each barrier of a cone counts 2, so that 2 n / t bounds the gap.
    An axis that is done is left out of the further steps.
    """
    lines, radii = np.zeros((len(points.counts), 2, 2)), np.full(len(points.counts), 1.5)
    t, open_, part = 2.0 * points.counts, np.ones(len(radii), bool), points
    for _ in range(_MOST_STEPS):
        rows = np.flatnonzero(open_)
        step, decrease = _newton(part, lines[rows], radii[rows], t[rows])
        lines[rows], radii[rows] = _searched(part, lines[rows], radii[rows], step, decrease, t[rows])
        near = decrease < 0.05
        done = near & (t[rows] * radii[rows] >= 2.0 * points.counts[rows] / GAP)
        t[rows[near & ~done]] *= _GROWTH
        if np.any(done):
            open_[rows[done]] = False
            if not np.any(open_):
                break
            part = part.part(~done)
    return lines


def _newton(points, lines, radii, t):
    """Newton's steps (m, 5), radius, line up, line aside; and their squared decrements (m,)."""
    slack, e = points.slack(lines, radii)
    inside, base = 1.0 / slack, (1.0, points.x)
    # Rows of the slack's gradient over the slack itself.
    rows = np.stack([2.0 * radii[points.axis] * inside, *(2.0 * e[k] * b * inside for k in (0, 1) for b in base)])
    gradient = -points.sums(rows).T
    gradient[:, 0] += t
    hessian = np.empty((len(radii), 5, 5))
    for i in range(5):
        hessian[:, i, i:] = points.sums(rows[i] * rows[i:]).T
        hessian[:, i:, i] = hessian[:, i, i:]
    own = points.sums(2.0 * np.stack([inside, points.x * inside, points.x**2 * inside]))
    hessian[:, 0, 0] -= own[0]
    for k in (1, 3):
        hessian[:, k, k] += own[0]
        hessian[:, k, k + 1] += own[1]
        hessian[:, k + 1, k] += own[1]
        # Of points at one place the slope is free; it stays.
        hessian[:, k + 1, k + 1] += np.where(own[2] > 0.0, own[2], 1.0)
    step = -solved(hessian, gradient)
    return step, -np.einsum("mk,mk->m", gradient, step)


def _searched(points, lines, radii, step, decrease, t):
    """Lines and radii a way along ``step``, each halved until its barrier falls as it should."""

    def barrier(part, lines, radii, t):
        slack = part.slack(lines, radii)[0]
        safe = (part.greatest(-slack) < 0.0) & (radii > 0.0)
        fall = part.sums(np.log(np.where(slack > 0.0, slack, 1.0)))
        return np.where(safe, t * radii - fall, np.inf)

    start, share = barrier(points, lines, radii, t), 1.0
    move, rows, part = step[:, 1:].reshape(-1, 2, 2), np.arange(len(radii)), points
    found = lines.copy(), radii.copy()
    for _ in range(60):
        new = lines[rows] + share * move[rows], radii[rows] + share * step[rows, 0]
        good = barrier(part, *new, t[rows]) <= start[rows] - 0.1 * share * decrease[rows]
        found[0][rows[good]], found[1][rows[good]] = new[0][good], new[1][good]
        if np.all(good):
            break
        part, rows, share = (part.part(~good) if np.any(good) else part), rows[~good], 0.5 * share
    return found
