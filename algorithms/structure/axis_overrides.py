"""What the axis layer says of each axis itself, and the axis at its chainage height."""

import numpy as np

from ..boundary.cells import as_text, cell_place, optional_number
from ..boundary.input_fields import field_indices
from ..core.axis import Axis
from ..core.errors import InputError
from ..entry.recorded_system import UNKNOWN, height_kind
from ..language.translation import tr

# Of how many axes a run tells that their own fields win.
MOST_TOLD = 40


class AxisFields:
    """The per-axis override fields of the axis layer; none counts where the layer has no field 'design'."""

    def __init__(self, source):
        self._source, self._told = source, 0
        names = set(field_indices(source))
        self.names = names if "design" in names else set()

    def number(self, axis, row, name):
        """The override as a number, None where there is none."""
        if name not in self.names:
            return None
        return optional_number(axis.values[name], self._source, name, row)

    def choice(self, axis, row, name, known):
        """The override as one of the words ``known``, '' where there is none; InputError for any other word."""
        text = self.text(axis, name)
        if text and text not in known:
            place = cell_place(self._source, field_indices(self._source)[name], row)
            raise InputError(tr("{}: '{}' is not known; known are {}.").format(place, text, ", ".join(known)))
        return text

    def tell(self, asked, axis, name, own, key, given):
        """Say that an axis' own value wins over what the form was given, texts both, of the parameter ``key``."""
        self._told += 1
        if self._told <= MOST_TOLD:
            asked.warn(
                tr("Axis '{}': {} {} of the axis layer is taken, not {} {}.").format(
                    axis.line.name, name, own, key, given
                ),
                keys=(key,),
            )

    def text(self, axis, name):
        """The override as a text, '' where there is none."""
        return as_text(axis.values[name]) if name in self.names else ""


def axis_at_height(asked, axis, row, fields, notation_, run_units, heights):
    """The axis with its chainage height and start, and words on what the height is and where it is from.

    ``heights``: ellipsoidal heights of its stations as far as known, metres (n,), NaN where there is none.
    """
    own, form = fields.number(axis, row, "chain_h"), asked.number("CHAINAGE_HEIGHT")
    if own is not None and form is not None and own != form:
        fields.tell(asked, axis, "chain_h", f"{own:g} {run_units.height_label}", "CHAINAGE_HEIGHT", f"{form:g}")
    typed = form if own is None else own
    known = heights[np.isfinite(heights)]
    if typed is not None:
        height = typed * run_units.height
        word = tr("ellipsoidal, as given") if own is None else tr("ellipsoidal, chain_h of the axis layer")
    elif len(known):
        height, word = float(np.round(np.median(known))), _median_words(asked)
    else:
        height, word = 0.0, tr("on the ellipsoid, since no heights are known")
    start = fields.text(axis, "chain_0")
    given = asked.text("CHAINAGE_START")
    if start and given and start != given:
        fields.tell(asked, axis, "chain_0", start, "CHAINAGE_START", given)
    start = start or given
    try:
        return Axis(axis.line, height, notation_.chainage(start) if start else 0.0), word
    except InputError as error:
        raise error.reworded(
            tr("Chainage of the first vertex of axis '{}': {}").format(axis.line.name, error)
        ) from None


def _median_words(asked):
    """What the median of a run's heights is: ellipsoidal only where N is known."""
    known = asked.has("UNDULATION") and height_kind(asked) != UNKNOWN
    if known:
        return tr("ellipsoidal, median of the heights")
    return tr("median of the heights, standing in for ellipsoidal ones")
