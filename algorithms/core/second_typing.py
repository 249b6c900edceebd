"""Two typings of the same sheets, compared line by line; which of two cells is right is chosen by a person."""

from dataclasses import dataclass

FIRST, SECOND = "first", "second"
WHOLE = ""


@dataclass(frozen=True)
class Line:
    """A typed line: ``key``: what tells it from the others (axis, chainage, offset); ``cells``: {column: text as
    typed}; ``values``: {column: what counts when two are compared}, such as a number where the text is one."""

    key: tuple
    cells: dict
    values: dict


@dataclass(frozen=True)
class Difference:
    """``first``, ``second``: rows of the two typings, None where it has no such line; ``column``: that differs, WHOLE
    for a line that only one has."""

    first: object
    second: object
    column: str


@dataclass(frozen=True)
class Comparison:
    """``agreeing``: number of lines alike in both; ``differences``: in the order of the first typing; ``pairs``:
    [(row of first or None, row of second or None)] of all lines, in that order."""

    agreeing: int
    differences: tuple
    pairs: tuple


def compared(first, second):
    """Comparison of two lists of Line.

    Lines belong together by their key, the earlier of equal ones first; those left over between the same two
    neighbours belong together in their order. Cost linear.
    """
    partner = _by_key(first, second)
    _by_place(first, second, partner)
    taken, after, last = set(partner.values()), {}, None
    by_second = {b: a for a, b in partner.items()}
    for b in range(len(second)):
        if b in taken:
            last = by_second[b]
        else:
            after.setdefault(last, []).append((None, b))
    pairs = after.pop(None, [])
    for a in range(len(first)):
        pairs.append((a, partner.get(a)))
        pairs += after.get(a, [])
    differences, agreeing = [], 0
    for a, b in pairs:
        found = _differing(first, second, a, b)
        differences += found
        agreeing += not found
    return Comparison(agreeing, tuple(differences), tuple(pairs))


def _by_key(first, second):
    """{row of first: row of second} of lines with equal keys."""
    places = {}
    for b in reversed(range(len(second))):
        places.setdefault(second[b].key, []).append(b)
    return {a: places[line.key].pop() for a, line in enumerate(first) if places.get(line.key)}


def _by_place(first, second, partner):
    """Add to ``partner`` the lines left over that follow the same pair."""
    open_lines, last = {}, None
    for a in range(len(first)):
        if a in partner:
            last = partner[a]
        else:
            open_lines.setdefault(last, []).append(a)
    taken, last = set(partner.values()), None
    waiting = {place: iter(rows) for place, rows in open_lines.items()}
    for b in range(len(second)):
        if b in taken:
            last = b
            continue
        a = next(waiting.get(last, iter(())), None)
        if a is not None:
            partner[a] = b


def _differing(first, second, a, b):
    if a is None or b is None:
        return [Difference(a, b, WHOLE)]
    one, other = first[a].values, second[b].values
    return [Difference(a, b, column) for column in one if one[column] != other.get(column)]


def settled(comparison, first, second, choices):
    """The one list of cells [{column: text}] after a choice for each difference.

    ``choices``: in the order of ``comparison.differences``: FIRST, SECOND, or a third text as (text,). For a line that
    only one typing has, the other typing's choice leaves the line out, and a third text does not exist.
    """
    chosen = {}
    for difference, choice in zip(comparison.differences, choices):
        chosen.setdefault((difference.first, difference.second), {})[difference.column] = choice
    lines = []
    for a, b in comparison.pairs:
        choice = chosen.get((a, b), {})
        if WHOLE in choice:
            if (choice[WHOLE] == FIRST) == (b is None):
                lines.append(dict((first[a] if b is None else second[b]).cells))
            continue
        cells = dict(first[a].cells)
        for column, which in choice.items():
            if which != FIRST:
                cells[column] = second[b].cells[column] if which == SECOND else which[0]
        lines.append(cells)
    return lines
