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
_FIRST, _MORE = 12, 6


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
        lines, radii = _narrowest(*points.some(rows))
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
        """Places (k, m) and departures (2, k, m) of some of the points, at least one of each axis, the last of these
        again where an axis has fewer than k: so all axes have as many. ``rows``: booleans (n,)."""
        counts, order = self.sums(rows.astype(int)), np.flatnonzero(rows)
        at = order[np.cumsum(counts) - counts + np.minimum(np.arange(counts.max())[:, None], counts - 1)]
        return self.x[at], self.e[:, at]

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
        """Departures (2, n) from lines (4, m): of each axis, up and aside, place and slope."""
        return self.e - _on(lines[:, self.axis], self.x)


def _on(lines, x):
    """Places, up and aside, of ``lines`` (4, ...) at ``x`` (..., ...)."""
    return np.stack([lines[k] + lines[k + 1] * x for k in (0, 2)])


def _narrowest(x, e):
    """The lines (4, m) whose greatest distance from the points of their own axes is least, and these distances (m,).

    ``x`` (k, m), ``e`` (2, k, m): of k points of each axis. Newton on t r - sum log(r^2 - |e|^2), t growing; each
    barrier of a cone counts 2, so that 2 k / t bounds the gap. An axis that is done is left out of the further steps.
    """
    number, axes = x.shape
    found, t = np.concatenate([np.full((1, axes), 1.5), np.zeros((4, axes))]), np.full(axes, 2.0 * number)
    open_, own, up = np.arange(axes), x, e
    for _ in range(_MOST_STEPS):
        place, weight = found[:, open_], t[open_]
        away = up - _on(place[1:], own)
        slack = place[0] ** 2 - away[0] ** 2 - away[1] ** 2
        step, decrease = _newton(own, slack, away, place[0], weight)
        place += _shares(own, slack, away, place[0], step, decrease, weight) * step
        found[:, open_] = place
        near = decrease < 0.05
        done = near & (weight * place[0] >= 2.0 * number / GAP)
        t[open_[near & ~done]] *= _GROWTH
        if np.any(done):
            open_, own, up = open_[~done], own[:, ~done], up[:, :, ~done]
            if not len(open_):
                break
    return found[1:], np.hypot(*(e - _on(found[1:], x))).max(axis=0)


def _newton(x, slack, e, radii, t):
    """Newton's steps (5, m), radius, line up, line aside; and their squared decrements (m,). ``slack`` (k, m): r^2 -
    |e|^2; ``e`` (2, k, m): departures."""
    inside = 2.0 / slack
    # Rows of the slack's gradient over the slack itself.
    rows = np.stack([radii * inside, *(e[k] * b * inside for k in (0, 1) for b in (1.0, x))])
    gradient = -rows.sum(axis=1).T
    gradient[:, 0] += t
    hessian = np.empty((len(radii), 5, 5))
    for i in range(5):
        hessian[:, i, i:] = np.sum(rows[i] * rows[i:], axis=1).T
        hessian[:, i:, i] = hessian[:, i, i:]
    own = [np.sum(inside * power, axis=0) for power in (1.0, x, x**2)]
    hessian[:, 0, 0] -= own[0]
    for k in (1, 3):
        hessian[:, k, k] += own[0]
        hessian[:, k, k + 1] += own[1]
        hessian[:, k + 1, k] += own[1]
        # Of points at one place the slope is free; it stays.
        hessian[:, k + 1, k + 1] += np.where(own[2] > 0.0, own[2], 1.0)
    step = -solved(hessian, gradient)
    return step.T, -np.einsum("mk,mk->m", gradient, step)


def _shares(x, slack, e, radii, step, decrease, t):
    """The shares (m,) of Newton's steps (5, m) that are gone, each halved until its barrier falls as it should.

    Along a step the slack of a point is a parabola, so that nothing but its logarithm is left to each trial.
    """
    away, radius = _on(step[1:], x), step[0]
    linear = 2.0 * (radii * radius + e[0] * away[0] + e[1] * away[1]) / slack
    square = (radius**2 - away[0] ** 2 - away[1] ** 2) / slack
    shares, open_ = np.ones(len(radii)), np.arange(len(radii))
    for _ in range(60):
        own = shares[open_]
        change = own * (linear + own * square)
        safe = (change.min(axis=0) > -1.0) & (radii[open_] + own * radius[open_] > 0.0)
        rise = own * t[open_] * radius[open_] - np.sum(np.log1p(np.where(change > -1.0, change, 0.0)), axis=0)
        bad = ~(safe & (rise <= -0.1 * own * decrease[open_]))
        if not np.any(bad):
            return shares
        open_, linear, square = open_[bad], linear[:, bad], square[:, bad]
        shares[open_] *= 0.5
    shares[open_] = 0.0
    return shares
