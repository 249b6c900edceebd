"""Readings that look like slips of the pen: named with what would explain them, never changed."""

from dataclasses import dataclass

import numpy as np

# A reading is looked at where it stands off its neighbours by this many times their usual scatter, and by this much.
FAR, LEAST = 8.0, 0.02
# An explanation is believed where it brings the reading this near, in parts of the distance it stands off.
NEAR = 0.1
_CHUNK = 50_000
_UNITS = ((0.3048, "feet taken for metres"), (1.0 / 0.3048, "metres taken for feet"))


@dataclass(frozen=True)
class Suspicion:
    """``row``: index of the reading; ``kind``: 'transposed digits', 'slipped decimal point' or a confusion of units;
    ``instead``: the value that would fit, for the reader to look for, not to use."""

    row: int
    kind: str
    instead: float


def suspicious_readings(chainage, height, written):
    """Suspicions among heights along one axis, list in order of rows.

    ``chainage``, ``height``: one unit each (n,), NaN for none; ``written``: the heights as text, for the digits.
    """
    return explained(off_their_neighbours(chainage, height), height, written)


def explained(standing_off, height, written):
    """Suspicions among ``standing_off``, a list as off_their_neighbours returns it; ``height`` (n,) and ``written``
    (n,) as for suspicious_readings."""
    found = []
    for row, expected, off in standing_off:
        best = _explanation(height[row], expected, off, written[row])
        if best is not None:
            found.append(Suspicion(row, *best))
    return found


def off_their_neighbours(chainage, height):
    """Readings that stand off the line of their neighbours: list of (row, height expected there, distance off it), in
    order of rows. Arguments as for suspicious_readings."""
    order = np.argsort(chainage, kind="stable")
    order = order[np.isfinite(height[order]) & np.isfinite(chainage[order])]
    if len(order) < 5:
        return []
    s, h = chainage[order], height[order]
    every = np.arange(len(s))
    expected = _expected(s, h, every, every)
    off = np.abs(h - expected)
    least = max(FAR * 1.4826 * np.median(off), LEAST)
    far = np.flatnonzero(off > least)
    others = np.delete(every, far)
    if len(others) >= 4:
        # Those that stand off, judged by the others alone: where two wild ones turn a line, it is nobody else's fault.
        expected[far] = _expected(s, h, far, others)
        off[far] = np.abs(h[far] - expected[far])
        far = far[off[far] > least]
    return sorted((int(order[k]), float(expected[k]), float(off[k])) for k in far)


def _expected(s, h, asked, among):
    """Height of the readings ``asked`` (indices) from the two nearest on either side ``among`` others (indices, rising;
    what is asked itself left out): a line by repeated medians (Siegel, Biometrika 69, 1982), which one wild reading of
    the four cannot turn; two can."""
    expected = np.empty(len(asked))
    for first in range(0, len(asked), _CHUNK):
        part = slice(first, first + _CHUNK)
        k = asked[part]
        at = np.searchsorted(among, k)
        itself = (at < len(among)) & (among[np.minimum(at, len(among) - 1)] == k)
        rank = np.clip(at - 2, 0, len(among) - 4 - itself)[:, None] + np.arange(4)
        near = among[rank + (itself[:, None] & (rank >= at[:, None]))]
        sn, hn = s[near], h[near]
        ds, dh = sn[:, None, :] - sn[:, :, None], hn[:, None, :] - hn[:, :, None]
        slopes = np.where(ds != 0.0, dh / np.where(ds != 0.0, ds, 1.0), np.nan)
        slope = _medians(_medians(slopes))
        slope[np.isnan(slope)] = 0.0  # all at one place
        expected[part] = np.median(hn - slope[:, None] * (sn - s[k][:, None]), axis=1)
    return expected


def _medians(values):
    """Medians along the last axis of what is no NaN; NaN where all are."""
    values, known = np.sort(values, axis=-1), np.sum(~np.isnan(values), axis=-1)
    low, high = np.maximum(known - 1, 0) // 2, known // 2
    pick = np.stack([low, np.minimum(high, values.shape[-1] - 1)], axis=-1)
    return np.take_along_axis(values, pick, axis=-1).mean(axis=-1)


def _explanation(value, expected, off, text):
    """(kind, value that would fit) of the explanation that fits best, None where none does."""
    candidates = [("transposed digits", swapped) for swapped in _transposed(text)]
    candidates += [("slipped decimal point", value * 10.0**power) for power in (-3, -2, -1, 1, 2, 3)]
    candidates += [(words, value * factor) for factor, words in _UNITS]
    kind, instead = min(candidates, key=lambda item: abs(item[1] - expected))
    return (kind, float(instead)) if abs(instead - expected) < NEAR * off else None


def _transposed(text):
    """Values of a number as written with two neighbouring digits exchanged."""
    body = text.strip().replace("\u2212", "-").replace(",", ".")
    values = []
    places = [k for k, letter in enumerate(body) if letter.isdigit()]
    for a, b in zip(places, places[1:]):
        if body[a] != body[b]:
            letters = list(body)
            letters[a], letters[b] = letters[b], letters[a]
            try:
                values.append(float("".join(letters)))
            except ValueError:
                continue
    return values


def out_of_order(chainage):
    """Indices of readings that break an otherwise rising or falling list (n,): where leaving one out mends it. A list
    in which many do is in no order, and none is named."""
    s = np.asarray(chainage, float)
    if len(s) < 3:
        return []
    steps = np.sign(np.diff(s))
    way = 1.0 if np.sum(steps > 0) >= np.sum(steps < 0) else -1.0
    breaks = np.flatnonzero(steps * way < 0)
    if not 0 < len(breaks) <= max(1, len(s) // 10):
        return []
    found = []
    for k in breaks:
        # Of the two readings at the break the one whose neighbours are in order without it.
        for row in (k, k + 1):
            rest = s[[j for j in (row - 2, row - 1, row + 1, row + 2) if 0 <= j < len(s)]]
            if np.all(np.diff(rest) * way >= 0):
                found.append(int(row))
                break
    return found
