"""What the axis layer says of each axis itself, and the axis at its chainage height."""

from contextlib import contextmanager

import numpy as np

from ..boundary.cells import as_text, cell_place, optional_number
from ..boundary.input_fields import field_indices
from ..core.axis import axes_at, check_axis
from ..core.errors import InputError
from ..entry.recorded_system import UNKNOWN, height_kind
from ..language.core_sentences import worded
from ..language.number_text import plain_text
from ..language.stored_words import typed_words
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
            raise InputError(tr("{}: '{}' is not known; known are {}.").format(place, text, typed_words(name)))
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
    known = heights[np.isfinite(heights)]
    median = float(np.median(known)) if len(known) else np.nan
    (placed,), (word,) = axes_at_heights(asked, [axis], fields, notation_, run_units, [median], row)
    return placed, word


def axes_at_heights(asked, axes, fields, notation_, run_units, medians, first_row=1):
    """The same of many ``axes``, rows of the axis layer: a list of core Axis, and one of words.

    ``medians``: of the heights of each axis' stations, metres (m,), NaN where there is none.
    """
    form, given, words = asked.number("CHAINAGE_HEIGHT"), asked.text("CHAINAGE_START"), _median_words(asked)
    heights, starts, told = [], [], []
    typed_start = _start(axes[0], given, notation_) if given else 0.0
    for row, (axis, median) in enumerate(zip(axes, medians), first_row):
        own, start = fields.number(axis, row, "chain_h"), fields.text(axis, "chain_0")
        if own is not None and form is not None and own != form:
            fields.tell(
                asked,
                axis,
                "chain_h",
                f"{plain_text(own)} {run_units.height_label}",
                "CHAINAGE_HEIGHT",
                plain_text(form),
            )
        if own is not None or form is not None:
            heights.append((form if own is None else own) * run_units.height)
            told.append(tr("ellipsoidal, as given") if own is None else tr("ellipsoidal, chain_h of the axis layer"))
        else:
            heights.append(0.0 if np.isnan(median) else float(np.round(median)))
            told.append(tr("on the ellipsoid, since no heights are known") if np.isnan(median) else words)
        if start and given and start != given:
            fields.tell(asked, axis, "chain_0", start, "CHAINAGE_START", given)
        starts.append(_start(axis, start, notation_) if start else typed_start)
        with _named(axis):
            check_axis(axis.line.name, heights[-1], starts[-1])
    return axes_at([axis.line for axis in axes], heights, starts), told


def _start(axis, text, notation_):
    with _named(axis):
        return notation_.chainage(text)


@contextmanager
def _named(axis):
    try:
        yield
    except InputError as error:
        raise error.reworded(
            tr("Chainage of the first vertex of axis '{}': {}").format(axis.line.name, worded(error))
        ) from None


def medians_of_axes(axis, heights, number):
    """Median of the ``heights`` (n,) of each of ``number`` axes, NaN where it has none; ``axis``: index of each (n,).

    NaN among the heights is none.
    """
    known = np.isfinite(heights)
    order = np.lexsort((heights[known], axis[known]))
    axis, heights = axis[known][order], heights[known][order]
    bounds = np.searchsorted(axis, np.arange(number + 1))
    counts, found = np.diff(bounds), np.full(number, np.nan)
    some = counts > 0
    low, high = (bounds[:-1] + (counts - 1) // 2)[some], (bounds[:-1] + counts // 2)[some]
    found[some] = 0.5 * (heights[low] + heights[high])
    return found


def _median_words(asked):
    """What the median of a run's heights is: ellipsoidal only where N is known."""
    known = asked.has("UNDULATION") and height_kind(asked) != UNKNOWN
    if known:
        return tr("ellipsoidal, median of the heights")
    return tr("median of the heights, standing in for ellipsoidal ones")
