"""The line of one survey: lateral departures or offsets of its stations, and how accurate they are."""

import numpy as np

from ..core.errors import InputError
from ..language.translation import tr
from .parameters import FIELDS
from .survey import Readings
from .survey_accuracy import SurveyAccuracy, checked_deviations

SD_FIELD = "sd_line"


def read_line(kind, columns, source, units, sigma):
    """Readings of the line of one survey, None where ``kind`` is 'none'.

    ``columns``: of the layer, in its Units ``units``; ``sigma``: stated for this survey, metres, or None. InputError
    where there are no values.
    """
    if kind not in FIELDS:
        return None
    field = FIELDS[kind]
    value = columns[field] * (units.height if kind == "lateral" else units.chainage)
    if not np.any(np.isfinite(value)):
        text = (
            tr(
                "Layer '{}' has no values in a field 'lateral', which LINE 'lateral' compares; run 'Design heights and "
                "residuals' with LINE first, or compare the offsets."
            )
            if kind == "lateral"
            else tr(
                "Layer '{}' has no values in a field 'offset', which LINE 'offset' compares; run 'Measure chainage and "
                "offset' first."
            )
        )
        raise InputError(text.format(source.sourceName()), keys=("LINE",))
    accuracy = _accuracy(columns, source, units, sigma)
    return Readings(value, accuracy.deviations(np.zeros(len(value))), accuracy)


def _accuracy(columns, source, units, sigma):
    """What is stated of the line of a survey, else what its field has, each station by itself."""
    if sigma is not None:
        own = np.full(len(columns[SD_FIELD]), sigma)
        return SurveyAccuracy(own, None, None, f"{sigma / units.height:g} {units.height_label}")
    own = checked_deviations(columns[SD_FIELD] * units.height, source, SD_FIELD, units)
    known = np.any(np.isfinite(own))
    return SurveyAccuracy(own, None, None, tr("field '{}'").format(SD_FIELD) if known else tr("not known"))


def is_own_line(kind, record):
    """Whether a survey's departures are from a line of its own, and not from the axis: LINE of the run that made it was
    not 'axis' everywhere, or is not known."""
    kinds = [one.get("line") for one in record.known_axes()]
    return kind == "lateral" and not (kinds and all(one in ("axis", "none") for one in kinds))


def differing_axes(kind, made):
    """Names of two surveys whose offsets were measured from axes that differ, None without; ``made``: (name, record) of
    each."""
    seen = {}
    for name, record in made:
        for read in record.inputs.get("AXIS", ())[:1] if kind in FIELDS else ():
            alike = seen.setdefault((record.entry, read.fields, read.part), (name, read.hash))
            if read.hash and alike[1] and alike[1] != read.hash:
                return alike[0], name
    return None
