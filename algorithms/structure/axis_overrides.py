"""What the axis layer says of each axis itself, and the axis at its chainage height."""

import numpy as np

from ..boundary.cells import as_text, optional_number
from ..boundary.input_fields import field_indices
from ..core.axis import Axis
from ..core.errors import InputError
from ..language.translation import tr


class AxisFields:
    """The per-axis override fields of the axis layer; none counts where the layer has no field 'design'."""

    def __init__(self, source):
        self._source = source
        names = set(field_indices(source))
        self.names = names if "design" in names else set()

    def number(self, axis, row, name):
        """The override as a number, None where there is none."""
        if name not in self.names:
            return None
        return optional_number(axis.values[name], self._source, name, row)

    def text(self, axis, name):

        return as_text(axis.values[name]) if name in self.names else ""


def axis_at_height(asked, axis, row, fields, notation_, run_units, heights):
    """The axis with its chainage height and start, and a word on where the height is from.

    ``heights``: ellipsoidal heights of its stations as far as known, metres (n,), NaN where there is none.
    """
    typed = fields.number(axis, row, "chain_h")
    if typed is None:
        typed = asked.number("CHAINAGE_HEIGHT")
    known = heights[np.isfinite(heights)]
    if typed is not None:
        height, word = typed * run_units.height, tr("as given")
    elif len(known):
        height, word = float(np.round(np.median(known))), tr("median of the heights")
    else:
        height, word = 0.0, tr("no heights")
    start = fields.text(axis, "chain_0") or asked.text("CHAINAGE_START")
    try:
        return Axis(axis.line, height, notation_.chainage(start) if start else 0.0), word
    except InputError as error:
        raise error.reworded(
            tr("Chainage of the first vertex of axis '{}': {}").format(axis.line.name, error)
        ) from None
