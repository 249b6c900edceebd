"""Heights that were edited by hand after a run wrote residuals from them: the one rule for all who read these.

'Design heights and residuals' on such a layer computes anew. Who takes residuals from the column takes those of the
heights that were there then.
"""

from dataclasses import dataclass

import numpy as np

from ..boundary.height_column import height_column
from ..core.errors import InputError
from ..core.units import metres_per
from ..language.number_text import counted
from ..language.translation import tr

# The only entry whose residuals are a height of the same row minus a design height of it.
_ENTRY = "tautline:designheights"
# Metres; no height is set so finely, and a field of five decimals in feet is written rounded to 1.5 micrometres.
_ROUNDING = 1e-5


@dataclass(frozen=True)
class ResidualHeights:
    """Where the heights of a layer's residuals are: ``index`` of the field, -1 for the points' Z; ``described``: in
    words; ``rounding``: least difference that counts, in the layer's unit of heights."""

    index: int
    described: str
    rounding: float

    def edited_rows(self, heights, designs, residuals):
        """Rows (indices, rising) whose height is not design height plus residual, all (n,) in the unit of the layer; a
        row without one of the latter two does not count, nor does a layer in which no height can be read."""
        told = np.isfinite(designs) & np.isfinite(residuals)
        if not np.any(np.isfinite(heights[told])):
            return np.zeros(0, int)
        return np.flatnonzero(told & ~(np.abs(heights - designs - residuals) <= self.rounding))


def edited_sentence(name, heights, rows):
    """What a person is told of the edited ``rows`` of the layer ``name`` with these ResidualHeights; '' without any."""
    if not len(rows):
        return ""
    return tr(
        "Layer '{}': the height of {} is not design height plus residual, the first in row {} ({}): it was changed "
        "after the run; 'Design heights and residuals' on this layer computes anew."
    ).format(name, _stations(rows), rows[0] + 1, heights.described)


def short_edited_sentence(name, rows):
    """The same in a few words, for where there is room for one line."""
    if not len(rows):
        return ""
    return tr("Layer '{}': the height of {} was changed since its run, the first in row {}.").format(
        name, _stations(rows), rows[0] + 1
    )


def _stations(rows):
    return counted(len(rows), tr("station"), tr("stations"))


def residual_heights(record, source):
    """ResidualHeights of a layer or source as the ``record`` of its run tells them; None where it does not, or where
    they are not there any more."""
    if record.entry != _ENTRY or not record.height_unit:
        return None
    read = {name.lower() for one in record.inputs.get("STATIONS", ()) for name in one.fields}
    try:
        found = height_column(source, record.parameter("HEIGHT_FIELD"))
    except InputError:
        return None
    # A field that was renamed or taken out since leaves another one, or Z, to be found in its place.
    name = "height" if found.index < 0 else source.fields()[found.index].name().lower()
    if (name in read) == (found.index < 0):
        return None
    return ResidualHeights(found.index, found.described, _ROUNDING / metres_per(record.height_unit))


def warn_of_edited_heights(asked, key, heights, points):
    """Warn where heights of a layer of ``key`` were edited since; returns the sentence, '' without. ``heights``:
    ResidualHeights or None; ``points``: read with the columns 'height' (of the field, where there is one), 'design_h'
    and 'residual', in the unit of the layer."""
    if heights is None:
        return ""
    columns = points.columns
    given = points.z if heights.index < 0 else columns["height"]
    rows = heights.edited_rows(given, columns["design_h"], columns["residual"])
    sentence = edited_sentence(points.name, heights, rows)
    if sentence:
        asked.warn(sentence, keys=(key,))
    return sentence
