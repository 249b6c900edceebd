"""The rows of a field book as read: what each one holds, and why some cannot be used."""

from dataclasses import dataclass, field

import numpy as np

from ..boundary.input_fields import named_field
from ..boundary.tables import read_table
from ..core.angles import zenith_angle
from ..core.errors import InputError
from ..core.plain_number import plain_number
from ..core.sight_reduction import MOST_K
from ..language.core_sentences import worded
from ..language.number_text import listed
from ..language.translation import tr
from .parameters import sight_field_table

_NUMBERS = {
    "SLOPE_FIELD": "slope",
    "HORIZONTAL_FIELD": "horizontal",
    "INSTRUMENT_FIELD": "instrument",
    "TARGET_FIELD": "target",
    "BACK_FIELD": "back",
    "FORE_FIELD": "fore",
    "BACK_LENGTH_FIELD": "back_length",
    "FORE_LENGTH_FIELD": "fore_length",
    "INTER_FIELD": "inter",
    "K_FIELD": "k",
}
_DISTANCES = ("slope", "horizontal", "back_length", "fore_length")
_HEIGHTS = ("instrument", "target", "back", "fore", "inter")


@dataclass
class SightTable:
    """Rows of a source, metres and degrees. ``fields``: {key: index}; ``number``: rows in all; ``columns``: {name:
    (n,)}; ``start``, ``end``, ``point``, ``day``: texts; ``zenith``: degrees, NaN for none; ``rejected``: {row:
    reason}."""

    source: object
    fields: dict
    ids: np.ndarray
    features: list
    columns: dict
    start: list
    end: list
    point: list
    day: list
    zenith: np.ndarray
    rejected: dict = field(default_factory=dict)

    def __len__(self):
        return len(self.ids)

    @property
    def is_book(self):
        """True for a levelling book with one row for each staff point."""
        return self.fields["FROM_FIELD"] < 0 <= self.fields["POINT_FIELD"]

    def described(self, key):
        """The field read for a key, as the log names it; '' for none."""
        index = self.fields[key]
        return "" if index < 0 else self.source.fields()[index].name()

    def usable(self):
        """Rows that are not rejected, rising."""
        return np.array([row for row in range(len(self)) if row not in self.rejected], int)


def read_sights(asked, source, feedback, units):
    """SightTable of INPUT; numbers that are none reject their row. InputError where fields are missing."""
    fields = {key: named_field(source, asked.text(key), key, names) for key, _, names, _ in sight_field_table()}
    _check_fields(source, fields)
    table = read_table(source, {}, fields, feedback)
    if not len(table.ids):
        raise InputError(tr("Layer '{}' has no rows.").format(source.sourceName()))
    texts = table.columns
    rejected, columns = {}, {}
    for key, name in _NUMBERS.items():
        unit = units.chainage if name in _DISTANCES else units.height if name in _HEIGHTS else 1.0
        columns[name] = unit * _numbers(texts[key], name, rejected, name not in _DISTANCES)
    for row in np.flatnonzero(np.abs(np.nan_to_num(columns["k"])) > MOST_K):
        rejected.setdefault(
            int(row),
            tr("The coefficient of refraction '{}' is not a number near 0, such as 0.13.").format(
                texts["K_FIELD"][row]
            ),
        )
    unit = asked.choice("ANGLE_UNIT")
    zenith = _zeniths(texts["ZENITH_FIELD"], texts["VERTICAL_FIELD"], unit, rejected)
    found = SightTable(
        source,
        fields,
        table.ids,
        table.features,
        columns,
        texts["FROM_FIELD"],
        texts["TO_FIELD"],
        texts["POINT_FIELD"],
        texts["DAY_FIELD"],
        zenith,
        rejected,
    )
    return found


def _check_fields(source, fields):
    has = {key for key, index in fields.items() if index >= 0}
    name = source.sourceName()
    if not has & {"FROM_FIELD", "POINT_FIELD"} or "FROM_FIELD" in has and "TO_FIELD" not in has:
        raise InputError(
            tr(
                "Layer '{}' has no fields 'from' and 'to', nor a field 'point' of a levelling book; choose them "
                "(FROM_FIELD, TO_FIELD)."
            ).format(name),
            keys=("FROM_FIELD", "TO_FIELD"),
        )
    level, angle = {"BACK_FIELD", "FORE_FIELD"} <= has, bool(has & {"ZENITH_FIELD", "VERTICAL_FIELD"})
    distance = bool(has & {"SLOPE_FIELD", "HORIZONTAL_FIELD"})
    if angle and not distance and not level:
        raise InputError(
            tr(
                "Layer '{}' has angles but no distance; choose the field and say whether it is along the line of sight "
                "(SLOPE_FIELD) or horizontal (HORIZONTAL_FIELD)."
            ).format(name),
            keys=("SLOPE_FIELD", "HORIZONTAL_FIELD"),
        )
    if not level and not (angle and distance):
        raise InputError(
            tr(
                "Layer '{}' has neither a distance and an angle nor a back and a fore sight; it has {}. Choose the "
                "fields."
            ).format(name, listed([f.name() for f in source.fields()], 12))
        )
    if "FROM_FIELD" not in has and not level:
        raise InputError(
            tr(
                "Layer '{}' has a field 'point' but no back and fore sight; choose them (BACK_FIELD, FORE_FIELD)."
            ).format(name),
            keys=("BACK_FIELD", "FORE_FIELD"),
        )


def _word(name):
    """What a column of numbers is called in a sentence."""
    return {
        "slope": tr("slope distance"),
        "horizontal": tr("horizontal distance"),
        "instrument": tr("instrument height"),
        "target": tr("target height"),
        "back": tr("back sight"),
        "fore": tr("fore sight"),
        "inter": tr("intermediate sight"),
        "back_length": tr("length of the back sight"),
        "fore_length": tr("length of the fore sight"),
        "k": tr("coefficient of refraction"),
    }[name]


def _numbers(texts, name, rejected, negative):
    """Cells as floats (n,), NaN for none; rows whose cell is no number are rejected."""
    values = np.full(len(texts), np.nan)
    for row, text in enumerate(texts):
        if not text or text.lower() == "nan":
            continue
        number = plain_number(text)
        if number is None:
            rejected.setdefault(row, tr("The {} '{}' is not a number.").format(_word(name), text))
            continue
        values[row] = number
        if not np.isfinite(values[row]) or values[row] < 0.0 and not negative:
            rejected.setdefault(row, tr("The {} '{}' is negative or infinite.").format(_word(name), text))
            values[row] = np.nan
    return values


def _zeniths(zenith, vertical, unit, rejected):
    values = np.full(len(zenith), np.nan)
    for row, (first, second) in enumerate(zip(zenith, vertical)):
        try:
            if first or second:
                values[row] = zenith_angle(first or second, unit, vertical=not first)
        except InputError as error:
            rejected.setdefault(row, worded(error))
    return values
