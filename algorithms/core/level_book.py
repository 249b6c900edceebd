"""A levelling book with one row for each staff point: back, intermediate and fore sights become setups and sections."""

from dataclasses import dataclass

import numpy as np

from .errors import InputError


@dataclass(frozen=True)
class BookSetup:
    """A back sight in row ``back`` and a fore or intermediate sight in row ``fore``, counted from 0."""

    back: int
    fore: int
    intermediate: bool


def book_setups(back, intermediate, fore, broken):
    """Setups of a book, and the rows that could not be used: (list of BookSetup, {row: reason}).

    ``back``, ``intermediate``, ``fore``: readings (n,), NaN for none, rows in the order of observing; ``broken``: True
    for rows that are not readable (n,): no setup leads across them. A turning point has a fore and a back sight in one
    row.
    """
    setups, refused, open_row = [], {}, None
    for row, (has_back, has_inter, has_fore) in enumerate(zip(*(np.isfinite(v) for v in (back, intermediate, fore)))):
        beside = has_inter and (has_back or has_fore)
        if broken[row] or beside:
            if beside:
                refused[row] = "an intermediate sight stands beside a back or a fore sight"
            if open_row is not None:
                refused[open_row] = "no fore sight follows it"
            open_row = None
            continue
        if not (has_back or has_inter or has_fore):
            refused[row] = "the row has no reading"
            continue
        if has_inter or has_fore:
            if open_row is None:
                refused[row] = "no back sight goes before it"
            else:
                setups.append(BookSetup(open_row, row, bool(has_inter)))
        if has_fore:
            open_row = None
        if has_back:
            if open_row is not None:
                refused[open_row] = "no fore sight follows it"
            open_row = row
    if open_row is not None:
        refused[open_row] = "no fore sight follows it"
    used = {row for setup in setups for row in (setup.back, setup.fore)}
    return setups, {row: reason for row, reason in refused.items() if row not in used}


@dataclass(frozen=True)
class Section:
    """Setups between two named points: ``setups``, their indices; ``start``, ``end``: names."""

    start: str
    end: str
    setups: tuple


def book_sections(setups, names):
    """Sections of a book from one named point to the next, and setups that end at no name: (list of Section, list).

    ``names``: of the rows' points, '' for a turning point that has none. InputError for an intermediate sight without
    name.
    """
    sections, chain, start, loose = [], [], "", []
    for k, setup in enumerate(setups):
        end = names[setup.fore]
        if setup.intermediate:
            if not end:
                raise InputError("Row {}: an intermediate sight needs a point's name.", setup.fore + 1)
            if start or names[setup.back]:
                here = chain if not names[setup.back] else []
                sections.append(Section(names[setup.back] or start, end, (*here, k)))
            else:
                loose.append(k)
            continue
        if names[setup.back] or not chain or setups[chain[-1]].fore != setup.back:
            loose += chain
            chain, start = [], names[setup.back]
        chain.append(k)
        if end:
            if start:
                sections.append(Section(start, end, tuple(chain)))
            else:
                loose += chain
            chain, start = [], end
    return sections, loose + chain
