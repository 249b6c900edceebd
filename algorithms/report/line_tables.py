"""Tables and facts of a review report on the line; nothing where none was judged."""

import numpy as np

from ..core.conformance import figures
from ..core.residuals import ASIDE
from ..core.units import metres_per
from ..documents.blocks import Column, Table
from ..language.stored_words import described, stored_text
from ..language.translation import tr
from .statistics_table import count_cells, figures_cells, groups, statistics_columns

MARKS = {"left": "◀ ", "right": "▶ "}


def line_statistics(found):
    """Blocks: a table of the lateral departures, and one of heights and line together where they are judged so."""
    if found.line is None:
        return []
    one, amounts = found.reviewed, found.line.amounts
    counts = (tr("Within"), tr("Left"), tr("Right"))
    columns = statistics_columns(amounts, counts, (36, 17, 16, 16, 18, 18, 22, 15, 14, 14))
    rows = [
        figures_cells(one, amounts, name, one.line.lateral, some) + count_cells(one.line.side[some], ("within", *ASIDE))
        for name, some in groups(one)
    ]
    caption = tr("Lateral departures from the line, + is right. St. dev. is the standard deviation about the mean.")
    return [Table(columns, rows, caption), *_together(found)]


def _together(found):
    both, one, amounts = found.line.together, found.reviewed, found.amounts
    if both is None:
        return []
    v = both.verdict
    beyond = v.out | v.doubted | v.accepted
    rows = []
    for name, some in groups(one):
        numbers = figures(both.departure[some])
        rows.append(
            [
                name,
                str(numbers.number),
                amounts.text(numbers.rms),
                amounts.text(numbers.greatest),
                "" if numbers.greatest_at is None else one.station[some[numbers.greatest_at]],
                str(int(np.sum((v.judged & ~beyond)[some]))),
                str(int(np.sum(beyond[some]))),
            ]
        )
    columns = (
        Column(tr("Axis"), "", 46),
        Column(tr("Stations"), "n", 22),
        Column(tr("RMS ({})").format(amounts.label), "n", 24),
        Column(tr("Greatest ({})").format(amounts.label), "n", 26),
        Column(tr("at"), "k", 28),
        Column(tr("Within"), "n", 20),
        Column(tr("Beyond"), "n", 20),
    )
    caption = tr("Height and line together, √(v² + l²), against the radial tolerance of {}.")
    return [Table(columns, rows, caption.format(amounts.with_unit(one.line.radial)))]


def line_columns(found):
    """Columns of a table of stations."""
    if found.line is None:
        return []
    columns = [Column(tr("Lateral ({})").format(found.line.amounts.label), "n", 14), Column(tr("Side"), "k", 14)]
    return columns + ([Column(tr("Probability within tolerance, line"), "n", 13)] if found.line.has_probability else [])


def line_cells(found, row, percent):
    """Cells of one station in those columns; ``percent``: the text of a probability."""
    if found.line is None:
        return []
    line = found.reviewed.line
    side = str(line.side[row])
    cells = [found.line.amounts.signed(line.lateral[row]), MARKS.get(side, "") + stored_text("side", side)]
    return cells + ([percent(found.line.probability[row])] if found.line.has_probability else [])


def counted_against(found):
    """Mask (n,) of the stations counted against the structure, in height or in line."""
    out = found.verdict.out
    if found.line is None:
        return out
    both = found.line.together
    return out | found.line.verdict.out | (False if both is None else both.verdict.out)


def line_facts(found, axis):
    """(name, value) of the line of one axis as its record tells."""
    record = found.reviewed.record
    kind = record.axis(axis).get("line")
    if found.line is None or kind in (None, "none"):
        return
    yield tr("Line"), described("line", kind) or str(kind)
    limit = record.axis_number(axis, "line_tolerance")
    if limit is not None:
        unit = record.height_unit or found.reviewed.units.height_name
        yield tr("Tolerance of the line"), "±" + found.line.amounts.with_unit(limit * metres_per(unit))
