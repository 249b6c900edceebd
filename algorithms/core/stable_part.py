"""The stations of an axis that have not moved among themselves: runs of neighbours set aside (method page 7).

A median or a consensus of single stations takes the movement of a third at one end for a tilt, and then flags the
unmoved neighbours. So whole runs are tested, T = |e^T W v| / sqrt(e^T W Q_v W e) with e = 1 on the run, and the run of
the greatest T is set aside, the shortest of those that are equally great. T is the test value of Baarda (1968), A
testing procedure for use in geodetic networks, for an alternative hypothesis of one dimension; the limit is for all
runs of an axis together, found by simulation.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

# Of axes up to 31 stations; longer ones have more runs, as the square of their stations where heights are levelled.
RUN_LIMIT, _STATIONS_OF_LIMIT = 4.4, 31
# Difference of T that does not tell two runs apart.
_EQUALLY = 0.15
# Up to so many stations every run is tested; beyond, long runs are tried at a 32nd of their length, and between the
# places where a step stands out most (the ends of a run of levelled heights are seen nowhere else), then refined.
_EVERY_RUN = 512
_SHORT = 64
_MOST_STEPS, _STEP_APART, _STEP_REFINED = 256, 8, 4
# On such long axes runs apart from each other, all but as great as the greatest, go in one pass.
_ALIKE = 0.9
_MOST_AT_ONCE = 2_000


@dataclass(frozen=True)
class StablePart:
    """``run``: number of the run with which a station was set aside, from 0 in the order found, else -1 (n,);
    ``told``: False where half the stations or more were set aside, so that nobody can tell which part moved."""

    run: np.ndarray
    told: bool

    @property
    def stable(self):
        """Stations still in, booleans (n,)."""
        return self.run < 0


def run_limit(number):
    """Limit of T, without unit, on an axis with ``number`` stations: 4.4, rising beyond 31 stations.

    So the chance of a false run on the whole axis stays below 0.5 % (simulated, up to 1,000 stations); 4.4 alone sets a
    run aside on 68 % of levelled axes of 1,000 stations that moved nowhere.
    """
    return float(np.sqrt(RUN_LIMIT**2 + 4.0 * np.log(max(number / _STATIONS_OF_LIMIT, 1.0))))


def inverse_normals(normals):
    """Inverse of ``normals``, (1, 1) or (2, 2), in closed form: no LAPACK call for each axis and survey."""
    if len(normals) == 1:
        return 1.0 / normals
    (a, b), (_, d) = normals
    return np.array([[d, -b], [-b, a]]) / (a * d - b * b)


def solved(changes, columns, covariance):
    """Generalised least squares: parameters (p,), Q = (A^T W A)^-1 and W A (n, p).

    ``changes``: metres (n,); ``columns``: A (n, p), of p = 1 or 2; ``covariance``: LevelledChanges or GivenChanges.
    """
    weighted = covariance.weighted(columns)
    inverse = inverse_normals(weighted.T @ columns)
    return inverse @ (weighted.T @ changes), inverse, weighted


def stable_part(changes, columns, covariance):
    """Set aside runs of neighbours until none stands out; returns StablePart.

    ``changes``: metres (n,), in the order of the chainage; ``columns``, ``covariance``: as for ``solved``.
    """
    number = len(changes)
    run, found, limit = np.full(number, -1), 0, run_limit(number)
    while True:
        rows = np.flatnonzero(run < 0)
        if 2 * len(rows) <= number or len(rows) <= columns.shape[1]:
            return StablePart(run, False)
        one = covariance if len(rows) == number else covariance.part(run < 0)
        runs = _standing_out(changes[rows], columns[rows], one, limit)
        if not runs:
            return StablePart(run, True)
        for first, last in runs:
            run[rows[first:last]] = found
            found += 1


def _standing_out(changes, columns, covariance, limit):
    """The runs to set aside next, pairs (first, before last): the one of the greatest T beyond the limit; on long axes
    those that are nearly as great and do not touch it as well."""
    parameters, inverse, weighted = solved(changes, columns, covariance)
    rest = covariance.weighted(changes - columns @ parameters)
    sums, levers = np.concatenate(([0.0], np.cumsum(rest))), np.zeros((len(changes) + 1, columns.shape[1]))
    np.cumsum(weighted, axis=0, out=levers[1:])

    def sizes(first, last):
        """T squared of runs; 0 where the common movement takes all of a run."""
        lever = levers[last] - levers[first]
        form = covariance.forms(first, last)
        left = form - np.einsum("ij,jk,ik->i", lever, inverse, lever)
        usable = left > 1e-6 * form
        return np.where(usable, (sums[last] - sums[first]) ** 2 / np.where(usable, left, 1.0), 0.0)

    if len(changes) <= _EVERY_RUN:
        first, last = _every_run(len(changes))
        size = sizes(first, last)
        greatest = float(np.sqrt(size.max(initial=0.0)))
        if greatest <= limit:
            return []
        # Two runs may explain the changes all but equally: then the one by which fewer stations have moved.
        equal = np.flatnonzero(size >= max(greatest - _EQUALLY, limit) ** 2 * (1.0 - 1e-12))
        best = equal[np.lexsort((-size[equal], (last - first)[equal]))[0]]
        return [(int(first[best]), int(last[best]))]
    return _of_a_long_axis(len(changes), sizes, limit)


@lru_cache(maxsize=64)
def _every_run(number):
    """First station and the one after the last of every run up to half of ``number`` stations."""
    first, last = np.triu_indices(number + 1, 1)
    short = last - first <= number // 2
    return first[short], last[short]


def _of_a_long_axis(number, sizes, limit):
    kept, greatest = [], limit**2
    for first, last, step in (*_tried_runs(number), _between_steps(number, sizes)):
        if not len(first):
            continue
        size = sizes(first, last)
        greatest = max(greatest, float(size.max()))
        standing = np.flatnonzero(size >= _ALIKE**2 * greatest)
        kept.append(np.column_stack((size[standing], first[standing], last[standing], np.full(len(standing), step))))
    kept = np.concatenate(kept)
    kept = kept[kept[:, 0] >= max(_ALIKE**2 * greatest, limit**2)]
    chosen, free = [], np.ones(number + 2, bool)
    for _, first, last, step in kept[np.argsort(-kept[:, 0], kind="stable")][:_MOST_AT_ONCE].astype(int).tolist():
        # A neighbour of a run that goes may stand out for its sake alone: it is looked at again without it.
        if np.all(free[max(first - step, 0) : last + step + 2]):
            first, last = _refined(first, last, step, number, sizes)
            if np.all(free[first : last + 2]):
                chosen.append((first, last))
                free[first : last + 2] = False
    return chosen


def _tried_runs(number):
    """(first, before last, step) of the runs tried on a long axis: all short ones, longer ones on a grid."""
    for length in range(1, _SHORT + 1):
        first = np.arange(number - length + 1)
        yield first, first + length, 1
    step = 2
    while step * (_SHORT // 2 + 1) <= number // 2:
        for length in range(step * (_SHORT // 2 + 1), min(step * _SHORT, number // 2) + 1, step):
            first = np.arange(0, number - length + 1, step)
            yield first, first + length, step
        step *= 2


def _between_steps(number, sizes):
    """(first, before last, step) of the long runs between the places from which a step stands out most."""
    places = np.arange(1, number)
    size = sizes(places, np.full(number - 1, number))
    # The greatest of each group of neighbours, whatever T it has.
    groups = np.pad(size, (0, -len(size) % _STEP_APART), constant_values=-1.0).reshape(-1, _STEP_APART)
    peaks = _STEP_APART * np.arange(len(groups)) + np.argmax(groups, axis=1)
    peaks = np.sort(peaks[np.argsort(-size[peaks], kind="stable")[:_MOST_STEPS]])
    ends = np.concatenate(([0], places[peaks], [number]))
    first, last = (ends[index] for index in np.triu_indices(len(ends), 1))
    long = (last - first > _SHORT) & (last - first <= number // 2)
    return first[long], last[long], _STEP_REFINED


def _refined(first, last, step, number, sizes):
    """The run of the greatest T whose ends are within a step of the given."""
    if step == 1:
        return first, last
    shifts = np.arange(-step, step + 1)
    firsts, lasts = np.meshgrid(first + shifts, last + shifts, indexing="ij")
    firsts, lasts = firsts.ravel(), lasts.ravel()
    inside = (firsts >= 0) & (lasts <= number) & (lasts - firsts <= number // 2) & (lasts > firsts)
    firsts, lasts = firsts[inside], lasts[inside]
    best = int(np.argmax(sizes(firsts, lasts)))
    return int(firsts[best]), int(lasts[best])
