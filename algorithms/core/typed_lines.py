"""Doubts about the lines of a typed list, each a question to whoever typed it: nothing is changed by them."""

from dataclasses import dataclass

import numpy as np

from .suspicious_readings import explained, off_their_neighbours, out_of_order

KINDS = ("spacing", "order", "doubled", "height", "transposed digits", "slipped decimal point", "unit")
# A usual spacing is one that this part of the steps shares, to within this part of it.
_SHARED, _SAME = 2.0 / 3.0, 0.01
_UNITS = ("feet taken for metres", "metres taken for feet")


@dataclass(frozen=True)
class Doubt:
    """``row``: index of the line; ``kind``: of KINDS. ``found``, ``instead``: for 'spacing' the step to the line before
    and the usual one; for 'doubled' ``instead`` is the row of the first of the same station; for 'height' how far off
    (up positive) and the height expected; for a slip the height and what would fit; NaN where there is none."""

    row: int
    kind: str
    found: float = np.nan
    instead: float = np.nan


def doubts(chainage, offset, height, written, axis):
    """Doubts about lines, in order of rows; cost linear but for one sort.

    ``chainage``, ``offset``, ``height``: numbers in the list's units (n,), NaN for none; ``written``: the heights as
    typed; ``axis``: a name for each line, checked axis by axis.
    """
    chainage, offset, height = (np.asarray(values, float) for values in (chainage, offset, height))
    rows_of = {}
    for row, name in enumerate(axis):
        rows_of.setdefault(name, []).append(row)
    found = []
    for rows in rows_of.values():
        rows = np.array(rows)
        rows = rows[np.isfinite(chainage[rows])]
        if len(rows):
            found += _of_axis(rows, chainage[rows], offset[rows], height[rows], [written[row] for row in rows.tolist()])
    return sorted(found, key=lambda doubt: (doubt.row, KINDS.index(doubt.kind)))


def _of_axis(rows, s, y, h, written):
    """Doubts about the lines ``rows`` of one axis."""
    twice = _doubled(s, y)
    turned = sorted(set(out_of_order(s)))
    found = [Doubt(int(rows[k]), "doubled", instead=float(rows[first])) for k, first in twice]
    found += [Doubt(int(rows[k]), "order") for k in turned]
    found += [Doubt(int(rows[k]), "spacing", step, usual) for k, step, usual in _spacing(s, set(turned))]
    standing_off = off_their_neighbours(s, h)
    slips = {one.row: one for one in explained(standing_off, h, written)}
    for k, expected, _ in standing_off:
        if k in slips:
            kind = "unit" if slips[k].kind in _UNITS else slips[k].kind
            found.append(Doubt(int(rows[k]), kind, float(h[k]), slips[k].instead))
        else:
            found.append(Doubt(int(rows[k]), "height", float(h[k]) - expected, expected))
    return found


def _doubled(s, y):
    """[(line, the first line with its chainage and offset)]."""
    places = np.round(s, 6) + 1j * np.round(np.nan_to_num(y), 6)
    _, first, of = np.unique(places, return_index=True, return_inverse=True)
    first = first[of.reshape(-1)]
    return [(k, int(first[k])) for k in np.flatnonzero(first != np.arange(len(s))).tolist()]


def _spacing(s, turned):
    """[(line, its step, the usual step)] of lines whose distance from the line before is not the usual one, where the
    list has a usual one. Of two lines that one wrong station explains only the first is named."""
    # A line out of order is told as that, and so are the steps to it and from it.
    steps = np.abs(np.diff(s))
    steps[[k for row in turned for k in (row - 1, row) if 0 <= k < len(steps)]] = 0.0
    keep = np.flatnonzero(steps > 1e-6) + 1
    if len(keep) < 3:
        return []
    steps = steps[keep - 1]
    usual = float(np.median(steps))
    same = np.abs(steps - usual) <= _SAME * usual
    if np.mean(same) < _SHARED:
        return []
    found, explained = [], -1
    for k in np.flatnonzero(~same).tolist():
        if k == explained:
            continue
        if k + 1 < len(steps) and keep[k + 1] == keep[k] + 1:
            explained = k + 1 if abs(steps[k] + steps[k + 1] - 2.0 * usual) <= _SAME * usual else -1
        found.append((int(keep[k]), float(steps[k]), usual))
    return found
