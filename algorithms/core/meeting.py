"""Which axes meet: their ends lie within 10 m of one another (method page 6)."""

import itertools

import numpy as np

# Metres between ends that count as one place.
MEETING = 10.0


def meeting_axes(ends):
    """Axes that hang together by their ends: a list of lists of axis indices, each rising, by their first axis.

    ``ends``: Earth-centred first and last points of the axes (n, 2, 3), metres. An axis that meets none stands alone.
    The cost grows with the number of ends, unless many of them lie at one place.
    """
    ends = np.asarray(ends, float).reshape(-1, 2, 3)
    group, cells = list(range(len(ends))), {}

    def first_of(axis):
        while group[axis] != axis:
            group[axis] = group[group[axis]]
            axis = group[axis]
        return axis

    for axis, places in enumerate(ends):
        for place in places:
            cell = tuple(np.floor(place / MEETING).astype(int).tolist())
            for step in itertools.product((-1, 0, 1), repeat=3):
                for other, there in cells.get(tuple(c + s for c, s in zip(cell, step)), ()):
                    if np.linalg.norm(there - place) <= MEETING:
                        one, two = sorted((first_of(axis), first_of(other)))
                        group[two] = one
            cells.setdefault(cell, []).append((axis, place))
    found = {}
    for axis in range(len(ends)):
        found.setdefault(first_of(axis), []).append(axis)
    return list(found.values())
