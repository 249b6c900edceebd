"""Which axes meet: their ends lie within 10 m of one another (method page 6)."""

import itertools

import numpy as np

# Metres between ends that count as one place.
MEETING = 10.0


def pairs_that_meet(places):
    """Pairs of Earth-centred places (n, 3), metres, within MEETING of one another, as indices, the later one first."""
    cells = {}
    for number, place in enumerate(places):
        cell = tuple(np.floor(place / MEETING).astype(int).tolist())
        for step in itertools.product((-1, 0, 1), repeat=3):
            for other in cells.get(tuple(c + s for c, s in zip(cell, step)), ()):
                if np.linalg.norm(places[other] - place) <= MEETING:
                    yield number, other
        cells.setdefault(cell, []).append(number)


def meeting_axes(ends):
    """Axes that hang together by their ends: a list of lists of axis indices, each rising, by their first axis.

    ``ends``: Earth-centred first and last points of the axes (n, 2, 3), metres. An axis that meets none stands alone.
    The cost grows with the number of ends, unless many of them lie at one place.
    """
    ends = np.asarray(ends, float).reshape(-1, 2, 3)
    group = list(range(len(ends)))

    def first_of(axis):
        while group[axis] != axis:
            group[axis] = group[group[axis]]
            axis = group[axis]
        return axis

    for end, other in pairs_that_meet(ends.reshape(-1, 3)):
        one, two = sorted((first_of(end // 2), first_of(other // 2)))
        group[two] = one
    found = {}
    for axis in range(len(ends)):
        found.setdefault(first_of(axis), []).append(axis)
    return list(found.values())
