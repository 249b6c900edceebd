"""A net of levelled lines: its points, its parts, and approximate heights."""

from collections import deque
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from .errors import InputError


@dataclass(frozen=True)
class LevelNet:
    """Lines between points. ``names``: of the points (p,); ``start``, ``end``: indices of each line's points (n,);
    ``difference``: height of the end less that of the start, metres (n,); ``length``: metres (n,), NaN where not known;
    ``deviation``: standard deviation of the difference, metres, or of any one scale where that is to be estimated (n,).

    InputError, with the line counted from 1, for a line from a point to itself, a difference that is no number, a
    negative length, or a standard deviation that is not positive.
    """

    names: tuple
    start: np.ndarray
    end: np.ndarray
    difference: np.ndarray
    length: np.ndarray
    deviation: np.ndarray

    def __post_init__(self):
        if not len(self.start):
            raise InputError("The net has no lines.")
        for line in self._named(self.start == self.end):
            raise InputError("Line {} ({} to {}) starts and ends at one point.", *line)
        for line in self._named(~np.isfinite(self.difference)):
            raise InputError("Line {} ({} to {}) has no height difference.", *line)
        for line in self._named(self.length < 0.0):
            raise InputError("Line {} ({} to {}) has a negative length.", *line)
        for line in self._named(~(np.isfinite(self.deviation) & (self.deviation > 0.0))):
            raise InputError("Line {} ({} to {}) has a standard deviation that is zero, negative or no number.", *line)

    def _named(self, bad):
        """Number from 1 and the points' names of each line of the mask ``bad`` (n,)."""
        for k in np.flatnonzero(bad).tolist():
            yield k + 1, self.names[self.start[k]], self.names[self.end[k]]

    def __len__(self):
        return len(self.start)

    @property
    def variance(self):
        """Square of the deviations (n,)."""
        return self.deviation**2

    @cached_property
    def neighbours(self):
        """For each point, in a tuple of its own, (line, other point, +1 from start to end or -1): indices."""
        found = [[] for _ in self.names]
        for line, (a, b) in enumerate(zip(self.start.tolist(), self.end.tolist())):
            found[a].append((line, b, 1))
            found[b].append((line, a, -1))
        return tuple(map(tuple, found))

    @cached_property
    def parts(self):
        """Number of the part, from 0, that each point is in (p,): points that lines join are in one."""
        part = [-1] * len(self.names)
        number = 0
        for root in range(len(self.names)):
            if part[root] < 0:
                for point, _, _ in self.reached([root]):
                    part[point] = number
                number += 1
        return np.array(part, int)

    def reached(self, roots):
        """Points reached from ``roots`` (indices) in steps of one line, nearest first, as (point, line, point before);
        roots have line -1."""
        seen, queue = set(roots), deque((root, -1, -1) for root in roots)
        while queue:
            step = queue.popleft()
            yield step
            for line, other, _ in self.neighbours[step[0]]:
                if other not in seen:
                    seen.add(other)
                    queue.append((other, line, step[0]))

    def approximate_heights(self, heights):
        """Heights of all points reached from those with a given one; ``heights``: {point: metres}. NaN elsewhere."""
        found = np.full(len(self.names), np.nan)
        for point, value in heights.items():
            found[point] = value
        for point, line, before in self.reached(list(heights)):
            if line >= 0:
                step = self.difference[line] if self.end[line] == point else -self.difference[line]
                found[point] = found[before] + step
        return found


def level_net(starts, ends, difference, length, deviation):
    """LevelNet of lines by names: ``starts``, ``ends``: texts (n,); points in order of their first line."""
    numbers = {}
    for name in (name for pair in zip(starts, ends) for name in pair):
        numbers.setdefault(name, len(numbers))
    as_numbers = [np.array([numbers[name] for name in side], int) for side in (starts, ends)]
    return LevelNet(tuple(numbers), *as_numbers, *(np.asarray(v, float) for v in (difference, length, deviation)))
