"""Section and loop misclosures of a level net."""

import heapq
from dataclasses import dataclass

import numpy as np

# Roots times edges up to which the shortest independent loops are searched; beyond, those of one spanning tree are
# taken.
MOST_CANDIDATES = 40_000


@dataclass(frozen=True)
class Misclosure:
    """What a closed way through the net adds up to.

    ``kind``: 'section' (one line levelled twice), 'loop', or 'benchmarks' (between fixed ones); ``path``: names of the
    points where ways meet, in order; ``lines``: (line, +1 or -1) in order; ``length``: metres: of a section the mean of
    its runs, else the sum, NaN where a line has none; ``value``: metres; ``deviation``: standard deviation expected of
    it.
    """

    kind: str
    path: tuple
    lines: tuple
    length: float
    value: float
    deviation: float


@dataclass(frozen=True)
class _Way:
    """Lines joined at points where nothing else meets; of fixed benchmarks, the step between their heights."""

    a: int
    b: int
    lines: tuple
    value: float
    length: float
    variance: float


def section_misclosures(net):
    """Misclosures of lines levelled more than once: each further run against the first, list of Misclosure."""
    runs, found = {}, []
    for line, pair in enumerate(zip(np.minimum(net.start, net.end).tolist(), np.maximum(net.start, net.end).tolist())):
        runs.setdefault(pair, []).append(line)
    for lines in runs.values():
        first = lines[0]
        for other in lines[1:]:
            against = 1 if net.start[other] == net.end[first] else -1
            value = net.difference[first] + against * net.difference[other]
            found.append(
                Misclosure(
                    "section",
                    (net.names[net.start[first]], net.names[net.end[first]]),
                    ((first, 1), (other, against)),
                    float(0.5 * (net.length[first] + net.length[other])),
                    float(value),
                    float(np.sqrt(net.variance[first] + net.variance[other])),
                )
            )
    return found


def loop_misclosures(net, fixed):
    """Misclosures of independent loops, list of Misclosure.

    ``fixed``: {point: height, metres} of fixed benchmarks: ways between two of them close too. Lines levelled more than
    once count in their first run. The shortest independent loops, or in large nets those of one spanning tree.
    """
    ways = _ways(net, fixed)
    if not ways:
        return []
    candidates = _candidates(ways)
    candidates.sort()
    number = len(ways) - len({p for w in ways for p in (w.a, w.b)}) + _parts(ways)
    return [_misclosure(net, ways, mask) for mask in _independent(candidates, number)]


def _first_runs(net):
    seen, kept = set(), []
    for line, (a, b) in enumerate(zip(net.start.tolist(), net.end.tolist())):
        pair = (a, b) if a < b else (b, a)
        if pair not in seen:
            seen.add(pair)
            kept.append(line)
    return kept


def _ways(net, fixed):
    lines = _first_runs(net)
    around = {}
    for line in lines:
        for point, other, sign in ((net.start[line], net.end[line], 1), (net.end[line], net.start[line], -1)):
            around.setdefault(int(point), []).append((line, int(other), sign))
    junctions = {point for point, steps in around.items() if len(steps) != 2 or point in fixed}
    used, ways = set(), []
    # A ring without a junction is left over by the first pass; any of its points then serves.
    for point in [*sorted(junctions), *around]:
        for step in around[point]:
            if step[0] not in used:
                junctions.add(point)
                ways.append(_walked(net, point, step, around, junctions, used))
    held = sorted(set(fixed) & set(around))
    ways += [_Way(held[0], other, (), fixed[other] - fixed[held[0]], 0.0, 0.0) for other in held[1:]]
    return ways


def _walked(net, start, step, around, junctions, used):
    """The way from a junction along one line to the next junction."""
    lines = []
    while True:
        line, point, sign = step
        used.add(line)
        lines.append((line, sign))
        if point in junctions:
            break
        step = next(found for found in around[point] if found[0] != line)
    index, signs = np.array([line for line, _ in lines]), np.array([sign for _, sign in lines], float)
    return _Way(
        start,
        point,
        tuple(lines),
        float(signs @ net.difference[index]),
        float(net.length[index].sum()),
        float(net.variance[index].sum()),
    )


def _weights(ways):
    """What makes a loop short: length, else the number of lines."""
    length = np.array([way.length for way in ways])
    number = np.array([len(way.lines) for way in ways], float)
    return np.where(np.isfinite(length).all(), length, number).tolist()


def _parts(ways):
    owner = {}

    def root(point):
        while owner.setdefault(point, point) != point:
            owner[point] = point = owner[owner[point]]
        return point

    for way in ways:
        owner[root(way.a)] = root(way.b)
    return sum(1 for point in list(owner) if root(point) == point)


def _candidates(ways):
    """Closed ways as (weight, bit mask of ways): for each root, every way that its tree of shortest ways leaves out."""
    weights, around = _weights(ways), {}
    for k, way in enumerate(ways):
        around.setdefault(way.a, []).append((k, way.b))
        around.setdefault(way.b, []).append((k, way.a))
    roots = list(around)
    if len(roots) * len(ways) > MOST_CANDIDATES:
        roots = _one_root_each(around)
    found = {}
    for root in roots:
        mask, tree = _shortest(root, around, weights)
        for k, way in enumerate(ways):
            if k not in tree and way.a in mask:
                closed = mask[way.a] ^ mask[way.b] ^ (1 << k)
                found.setdefault(closed, None)
    return [(_weight(closed, weights), closed) for closed in found]


def _one_root_each(around):
    seen, roots = set(), []
    for point in around:
        if point not in seen:
            roots.append(point)
            stack = [point]
            while stack:
                here = stack.pop()
                if here not in seen:
                    seen.add(here)
                    stack += [other for _, other in around[here]]
    return roots


def _shortest(root, around, weights):
    """Bit masks of the shortest ways from ``root`` to every point, {point: mask}, and the ways they use."""
    mask, tree, queue = {}, set(), [(0.0, 0, root, -1, 0)]
    count = 0
    while queue:
        distance, _, point, by, before = heapq.heappop(queue)
        if point in mask:
            continue
        mask[point] = before | (1 << by) if by >= 0 else 0
        if by >= 0:
            tree.add(by)
        for k, other in around[point]:
            if other not in mask:
                count += 1
                heapq.heappush(queue, (distance + weights[k], count, other, k, mask[point]))
    return mask, tree


def _bits(mask):
    while mask:
        low = mask & -mask
        yield low.bit_length() - 1
        mask ^= low


def _weight(mask, weights):
    return sum(weights[k] for k in _bits(mask))


def _independent(candidates, number):
    """The first ``number`` masks that are no sum of earlier ones: elimination over two elements."""
    pivots, kept = {}, []
    for _, mask in candidates:
        rest = mask
        while rest:
            top = rest.bit_length()
            if top not in pivots:
                pivots[top] = rest
                kept.append(mask)
                break
            rest ^= pivots[top]
        if len(kept) == number:
            break
    return kept


def _misclosure(net, ways, mask):
    """Add up the ways of one loop in order of walking it."""
    left = {k: ways[k] for k in _bits(mask)}
    # The step between two benchmarks first: the way then reads from one of them to the other.
    k, way = next(((k, w) for k, w in left.items() if not w.lines), next(iter(left.items())))
    begins = not way.lines
    path, lines, value = [way.a], [], 0.0
    point = way.a
    while left:
        k = k if k in left else next(k for k, w in left.items() if point in (w.a, w.b))
        way = left.pop(k)
        forward = way.a == point
        point = way.b if forward else way.a
        lines += way.lines if forward else [(line, -sign) for line, sign in reversed(way.lines)]
        value += way.value if forward else -way.value
        path.append(point)
        k = -1
    members = [ways[k] for k in _bits(mask)]
    kind = "loop" if all(w.lines for w in members) else "benchmarks"
    return Misclosure(
        kind,
        tuple(net.names[p] for p in path[begins:]),
        tuple(lines),
        float(sum(w.length for w in members)),
        float(value),
        float(np.sqrt(sum(w.variance for w in members))),
    )
