"""Cells of a layer as numbers and texts: NULL and NaN, dates, text that is no number."""

from typing import Optional

import numpy as np
from qgis.PyQt.QtCore import QDate, QDateTime, Qt

from ..core.errors import InputError
from ..core.plain_number import plain_number
from ..language.translation import tr
from .input_fields import field_indices

# Characters of a value that a sentence shows.
MOST_SHOWN = 80


def cell_place(source, field, row):
    return tr("Layer '{}', field '{}', row {}").format(source.sourceName(), source.fields()[field].name(), row)


def absent(rows):
    """A column of NaN (rows,), to be read only: it takes no room."""
    return np.broadcast_to(np.nan, (rows,))


def as_number(value, source, field, row):
    """A cell as a float, NaN for NULL, NaN and blank text; InputError for all that is no number, and infinity."""
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        number = float(value)
    else:
        text = "" if is_null(value) else str(value).strip()
        if not text:
            return np.nan
        # A yes or no is no 1.0 or 0.0 either.
        number = None if isinstance(value, bool) else plain_number(text)
        if number is None:
            raise InputError(tr("{}: '{}' is not a number.").format(cell_place(source, field, row), shortened(text)))
    if number in (np.inf, -np.inf):
        raise InputError(tr("{}: the value is infinite.").format(cell_place(source, field, row)))
    return number


def shortened(text):
    """A value for a sentence: its beginning where it is long."""
    text = str(text)
    return text if len(text) <= MOST_SHOWN else text[:MOST_SHOWN] + "..."


def is_null(value):
    """True for None and for the host's NULL."""
    return value is None or (hasattr(value, "isNull") and value.isNull())


def as_text(value):
    """A cell as text without blanks around it, '' for NULL; numbers without exponent, whole ones without decimals,
    dates as 2025-03-11."""
    if type(value) is str:
        return value.strip()
    if is_null(value):
        return ""
    if isinstance(value, (QDate, QDateTime)):
        return value.toString(Qt.DateFormat.ISODate)
    if isinstance(value, float):
        return np.format_float_positional(value, trim="-")
    return str(value).strip()


def optional_number(value: Optional[object], source, name, row):
    """A cell of the axis layer as a float, None for NULL; InputError for text that is no number."""
    index = field_indices(source)[name]
    number = as_number(value, source, index, row)
    return None if np.isnan(number) else float(number)
