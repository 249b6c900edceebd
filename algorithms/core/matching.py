"""Which stations of two surveys are one: by place along the axis, or by name."""

import re

import numpy as np

from .errors import InputError
from .row_ranges import rows_of_each
from .station_notation import notation

MOST_PAIRS = 5_000_000


def matched_by_place(first, second, tolerance):
    """Pairs (k, 2) of indices into two surveys whose stations lie within ``tolerance`` of each other, one to one.

    ``first``, ``second``: (axes, chainages, offsets), arrays (n,) and (m,): axis index, metres, metres (NaN unknown).
    The distance counts offsets where both are known, so that two rails at one chainage stay apart; the closest pairs
    first. InputError for a tolerance that is not positive or so large that everything matches.
    """
    if not (np.isfinite(tolerance) and tolerance > 0.0):
        raise InputError("Matching needs a tolerance greater than zero.")
    (axes, chainages, offsets), (axes_2, chainages_2, offsets_2) = first, second
    found = []
    on_axis, on_axis_2 = rows_of_each(axes.tolist()), rows_of_each(axes_2.tolist())
    for axis in sorted(on_axis.keys() & on_axis_2.keys()):
        mine, others = on_axis[axis], on_axis_2[axis]
        others = others[np.argsort(chainages_2[others], kind="stable")]
        sorted_2 = chainages_2[others]
        start = np.searchsorted(sorted_2, chainages[mine] - tolerance - 1e-9)
        count = np.searchsorted(sorted_2, chainages[mine] + tolerance + 1e-9, side="right") - start
        if count.sum() > MOST_PAIRS:
            raise InputError(
                "The matching tolerance takes too many stations for one; make it smaller than half of their spacing."
            )
        at = np.repeat(start - np.concatenate(([0], np.cumsum(count)[:-1])), count) + np.arange(count.sum())
        found.append(np.column_stack((np.repeat(mine, count), others[at])))
    pairs = np.concatenate(found) if found else np.zeros((0, 2), int)
    across = np.nan_to_num(offsets[pairs[:, 0]] - offsets_2[pairs[:, 1]])
    distance = np.hypot(chainages[pairs[:, 0]] - chainages_2[pairs[:, 1]], across)
    near = distance <= tolerance + 1e-9
    pairs, distance = pairs[near], distance[near]
    return _one_to_one(pairs[np.lexsort((pairs[:, 1], pairs[:, 0], distance))])


def _one_to_one(pairs):
    """The pairs in their order, without those of which one is taken; sorted by the first index."""
    taken, taken_2, kept = set(), set(), []
    for a, b in pairs.tolist():
        if a not in taken and b not in taken_2:
            taken.add(a)
            taken_2.add(b)
            kept.append((a, b))
    return np.array(sorted(kept), int).reshape(-1, 2)


def name_key(name):
    """What a station's name is matched by: its distance where it is one in station notation ('0+850' and '850'), else
    the text without case."""
    text = str(name).strip()
    try:
        value, region = notation(text)
    except InputError:
        return text.casefold()
    return round(value, 6), region


def matched_by_name(first, second):
    """Pairs (k, 2) of indices into two lists of keys, one to one. Keys must occur once in each list; empty ones match
    none."""
    place = {key: k for k, key in enumerate(second)}
    return np.array([(k, place[key]) for k, key in enumerate(first) if key in place], int).reshape(-1, 2)


def near_names(wanted, known):
    """Pairs (wanted, known) of names that differ by case, blanks or signs only, in the order of ``wanted``, a list."""

    def plain(name):
        # A sign between two digits tells points apart, beside a letter it is a matter of writing.
        return re.sub(r"(?<!\d)[\s._-]+|[\s._-]+(?!\d)", "", name.lower())

    by_plain = {plain(name): name for name in known}
    return [
        (name, by_plain[plain(name)]) for name in wanted if plain(name) in by_plain and by_plain[plain(name)] != name
    ]
