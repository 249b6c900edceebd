"""What the tables of statistics have in common, of the heights and of the line: axes, figures, counts."""

import numpy as np

from ..core.conformance import figures
from ..documents.blocks import Column
from ..language.translation import tr


def groups(one):
    """(name, rows) of each axis with stations of Reviewed ``one``, and of all together where it has several axes."""
    some = [(axis or tr("all"), one.rows(axis)) for axis in one.axes if len(one.rows(axis))]
    return some + ([(tr("together"), np.flatnonzero(one.status != "off axis"))] if len(one.axes) > 1 else [])


def statistics_columns(amounts, counts, widths):
    """Columns of name, figures and ``counts`` (headings); ``widths``: millimetres on paper, of all of them."""
    headings = [
        (tr("Axis"), ""),
        (tr("Stations"), "n"),
        *((text.format(amounts.label), "n") for text in (tr("RMS ({})"), tr("Mean ({})"), tr("St. dev. ({})"))),
        (tr("Greatest ({})").format(amounts.label), "n"),
        (tr("at"), "k"),
        *((text, "n") for text in counts),
    ]
    return tuple(Column(text, kind, width) for (text, kind), width in zip(headings, widths))


def figures_cells(one, amounts, name, values, rows):
    """Cells of name and figures; ``values``: metres (n,) of all stations of Reviewed ``one``."""
    some = figures(values[rows])
    return [
        name,
        str(some.number),
        amounts.text(some.rms),
        amounts.signed(some.mean),
        amounts.text(some.sd),
        amounts.signed(some.greatest),
        "" if some.greatest_at is None else one.station[rows[some.greatest_at]],
    ]


def count_cells(found, words):
    """How many of the verdicts ``found`` (texts (k,)) are each of the ``words``; '' where none was judged."""
    found = found.astype(str)
    judged = np.any(np.isin(found, words))
    return [str(int(np.sum(found == word))) if judged else "" for word in words]
