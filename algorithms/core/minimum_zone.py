"""Minimum zones of straightness, as geometrical tolerancing defines them (ISO 12780-1; ISO 1101; method page 6).

The zone between two parallel lines that hold a profile, and the cylinder that holds an axis, each as narrow as it can
be. A zone is never larger than the range from the best-fit line, which is one of the lines it chooses from.
"""

import numpy as np

from .hull_chains import hull_chains
from .segments import Segments
from .small_matrices import solved

# Departures below this, metres, are none: they are the rounding of coordinates of the Earth's size.
NO_DEPARTURE = 1e-9
# The cylinder's diameter is exact to this share of itself.
GAP = 1e-8
_GROWTH, _MOST_STEPS = 30.0, 400
# So many of the points of an axis are looked at to begin with, those farthest out, and so many more each time.
_FIRST, _MORE = 30, 12


def profile_zone(along, across):
    """Least distance of two parallel lines along a profile that hold it, metres: see profile_zones.

    ``along``, ``across``: places and departures of its points, metres (n,), in any order.
    """
    return float(profile_zones(Segments([len(along)]), *(np.asarray(v, float) for v in (along, across)))[0])


def profile_zones(legs, along, across):
    """Least distances of two parallel lines along profiles that hold them, metres (m,).

    ``legs``: Segments of n rows; ``along``, ``across``: places and departures of their points, metres (n,), in any
    order on each. Exact: the narrowest strip lies on an edge of the convex hull. 0 for fewer than three points.
    """
    zones = np.zeros(len(legs.counts))
    if not len(along):
        return zones
    filled = np.flatnonzero(legs.counts)
    legs = Segments(legs.counts[filled])
    x, y, tilt = _less_lines(legs, along, across)
    (left, width), (low, height) = legs.range(x), legs.range(y)
    # Where all stand at one place there is no line along: what is between two points there is the zone.
    found = np.where((width == 0.0) & (legs.counts > 2), height, 0.0)
    wide = (legs.counts > 2) & (height >= NO_DEPARTURE) & (width > 0.0)
    if np.any(wide):
        rows, own = wide[legs.which], np.flatnonzero(wide)
        part = Segments(legs.counts[own])
        # Points in a unit square: metres up are thousandths of metres along.
        x, y = x[rows] - left[own][part.which], y[rows] - low[own][part.which]
        x, y = x / width[own][part.which], y / height[own][part.which]
        found[own] = _narrowest_strips(*hull_chains(part, x, y), width[own], height[own], tilt[own])
    zones[filled] = found
    return zones


def _narrowest_strips(lower, upper, width, height, tilt):
    """Widths (m,), metres, of the narrowest strips on the edges of hulls in unit squares ``width`` by ``height``,
    metres (m,), on lines that rise by ``tilt``."""
    chains = (lower, upper)
    slopes = np.concatenate([chain.slopes for chain in chains])
    which = np.concatenate([chain.legs.which for chain in chains])
    below = np.concatenate([np.ones(len(lower.x), bool), np.zeros(len(upper.x), bool)])
    order = np.lexsort((slopes, which))
    order = order[np.isfinite(slopes[order])]
    slopes, which, below = slopes[order], which[order], below[order]
    # At each slope the strip is held by one corner of either chain: where the chain's own slope passes it.
    passed = np.cumsum(below)
    before = np.concatenate([[0], np.cumsum(lower.legs.counts - 1)])
    foot = lower.legs.first[which] + passed - before[which]
    left = np.cumsum(~below)
    after = np.cumsum(upper.legs.counts - 1)
    roof = upper.legs.first[which] + after[which] - left
    open_by = (upper.y[roof] - slopes * upper.x[roof]) - (lower.y[foot] - slopes * lower.x[foot])
    size, run = height[which], width[which]
    strips = size * open_by / np.hypot(1.0, tilt[which] + slopes * size / run)
    return np.minimum.reduceat(strips, np.searchsorted(which, np.arange(len(width))))


def cylinder_zone(along, up, aside):
    """Least diameter of a cylinder along an axis that holds its points, metres: see cylinder_zones."""
    values = (np.asarray(v, float) for v in (along, up, aside))
    return float(cylinder_zones(Segments([len(along)]), *values)[0])


def cylinder_zones(legs, along, up, aside):
    """Least diameters of the cylinders along axes that hold their points, metres (m,), all found at once.

    ``legs``: Segments of n rows; ``along``, ``up``, ``aside``: places and departures from a line near each, metres
    (n,); the departures are small against the length. min over lines of the greatest |e_i| is convex, and is found by
    an interior-point method (Boyd and Vandenberghe, Convex Optimization, ch. 11) to GAP of itself.
    """
    zones, filled = np.zeros(len(legs.counts)), np.flatnonzero(legs.counts)
    if not len(filled):
        return zones
    legs = Segments(legs.counts[filled])
    x, up, _ = _less_lines(legs, along, up)
    _, aside, _ = _less_lines(legs, along, aside)
    (left, width), sizes = legs.range(x), np.maximum.reduceat(np.hypot(up, aside), legs.first)
    wanted = (legs.counts > 1) & (sizes >= NO_DEPARTURE)
    if not np.any(wanted):
        return zones
    rows, part = wanted[legs.which], Segments(legs.counts[wanted])
    half, sizes = 0.5 * width[wanted], sizes[wanted]
    # Where all stand at one place there is no slope to find: x = 0 leaves it as it is.
    x = (x[rows] - (left[wanted] + half)[part.which]) / np.where(half > 0.0, half, 1.0)[part.which]
    points = _Points(x, np.stack([up[rows], aside[rows]]) / sizes[part.which], part.counts)
    zones[filled[wanted]] = 2.0 * sizes * np.minimum(1.0, _widest(points))
    return zones


def _widest(points):
    """The least greatest distance (m,) of the points of each axis from one line, by those few that hold it.

    What is found for some of the points is never more than for all, and it is for all where no other lies beyond it;
    those that do are taken in. Source: active sets, for example Boyd and Vandenberghe, section 11.9.
    """
    found, open_ = np.zeros(len(points.counts)), np.ones(len(points.counts), bool)
    rows = points.farthest(points.e[0] ** 2 + points.e[1] ** 2, _FIRST)
    while True:
        some = points.some(rows)
        lines = _narrowest(some)
        radii = some.greatest(np.hypot(*some.departures(lines)))
        distances = np.hypot(*points.departures(lines))
        beyond = distances > (radii * (1.0 + GAP))[points.axis]
        more = points.sums(beyond.astype(int)) > 0
        found[np.flatnonzero(open_)[~more]] = points.greatest(distances)[~more]
        if not np.any(more):
            return found
        open_[np.flatnonzero(open_)[~more]] = False
        rows = (rows | beyond & points.farthest(distances, _MORE))[np.repeat(more, points.counts)]
        points = points.part(more)


def _less_lines(legs, along, across):
    """Places and departures less the best-fit line of each of ``legs``, metres (n,), and its slope (m,): what is left
    is small."""
    x, y = (values - (legs.sums(values) / legs.counts)[legs.which] for values in (along, across))
    spread = legs.sums(x**2)
    slope = np.where(spread > 0.0, legs.sums(x * y) / np.where(spread > 0.0, spread, 1.0), 0.0)
    return x, y - slope[legs.which] * x, slope


class _Points:
    """The points of many axes one after another: ``x``, -1 to 1 on each axis, and departures ``e`` (2, n), 1 at most.

    ``counts``: points of each axis (m,); ``first``: index of its first (m,); ``axis``: that of each point (n,).
    """

    def __init__(self, x, e, counts):
        self.x, self.e, self.counts = x, e, counts
        self.first = np.concatenate([[0], np.cumsum(counts)[:-1]])
        self.axis = np.repeat(np.arange(len(counts)), counts)

    def farthest(self, distances, number):
        """The ``number`` of each axis of the greatest ``distances`` (n,), all of one with fewer: booleans (n,)."""
        order = np.lexsort((-distances, self.axis))
        found = np.zeros(len(self.x), bool)
        found[order[np.arange(len(order)) - np.repeat(self.first, self.counts) < number]] = True
        return found

    def some(self, rows):
        """Some of the points, at least one of each axis; ``rows``: booleans (n,)."""
        return _Points(self.x[rows], self.e[:, rows], self.sums(rows.astype(int)))

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
