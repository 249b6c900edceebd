"""The covariance of the stations' heights from an adjustment of their levelling, matched by name (method page 6): of a
table given, or of that which the record of the stations' layer names."""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from ..boundary.input_fields import named_field
from ..boundary.tables import read_table
from ..core.covariance import Covariance
from ..core.covariance_text import covariance_of
from ..core.errors import InputError
from ..entry.run_record import RunRecord
from ..language.core_sentences import worded
from ..language.height_text import exact_text
from ..language.number_text import counted, listed, number_text
from ..language.translation import tr
from .named_points import NAMES

# Field of the heights that the covariance is about.
_HEIGHT = "height"
# Accuracy of setting up on a mark, metres, where none is stated: a point held fixed in an adjustment has no other.
MARK_SIGMA = 1e-4


@dataclass(frozen=True)
class GivenCovariance:
    """``names``, ``texts``: rows of the table; ``stations``: name of each station (n,); ``sigma``: of a height beside
    the levelling, as of setting up on a mark, metres, None where it is not stated; ``layer``: name of the table.
    """

    names: list
    texts: list
    stations: list
    sigma: Optional[float]
    layer: str

    def covariance(self, rows):
        """Covariance of some stations, square metres; InputError for one that the table lacks.

        ``sigma`` is added for every station; where it is not stated, MARK_SIGMA for those that were held fixed.
        """
        wanted = [self.stations[row] for row in rows]
        try:
            matrix = covariance_of(self.names, self.texts, wanted)
        except InputError as error:
            raise error.reworded(tr("Layer '{}': {}").format(self.layer, worded(error))) from None
        if self.sigma is not None:
            matrix = matrix + np.eye(len(matrix)) * self.sigma**2
        else:
            held = np.flatnonzero(np.diag(matrix) <= 0.0)
            matrix[held, held] = MARK_SIGMA**2
        return Covariance(np.diag(matrix).copy(), matrix)


def added_text(given, units):
    """What a GivenCovariance has beside the table, in words that follow its name; '' for nothing. ``units``: Units."""
    if given.sigma is None:
        return ""
    return tr(", plus a standard deviation of {} for every height by itself").format(
        exact_text(given.sigma, units.height_name)
    )


def with_marks(deviations, record: RunRecord):
    """Standard deviations (n,), metres, of a layer with this ``record``: of adjusted heights those held fixed get that
    of setting up on a mark instead of 0."""
    return np.where(deviations == 0.0, MARK_SIGMA, deviations) if record.adjusted else deviations


def given_covariance(asked, source, sigma, height_field, *, key="COVARIANCE", record=None):
    """The covariance of the heights of some stations as GivenCovariance: of the table of the parameter ``key``, else of
    that which the record of their layer names; None without either.

    ``source``: the stations; ``sigma``: SIGMA in metres, or None; ``height_field``: name of the field that the heights
    are read from, '' for the points' Z; ``record``: of the stations' layer, by default that of STATIONS. InputError
    where the table is another one than the record's.
    """
    record = asked.record_of("STATIONS") if record is None else record
    stations = "STATIONS" if asked.has("STATIONS") else "SURVEYS"
    doubted = warn_of_adjustment(asked, stations, record, source.sourceName(), height_field)
    if not doubted and asked.given(key):
        warn_of_adjustment(asked, key, asked.record_of(key), asked.optional_source(key).sourceName())
    if not asked.given(key):
        return covariance_behind(asked, record, source, sigma, height_field, key=key)
    given = _of_table(asked, asked.optional_source(key), source, sigma)
    place = _place(record, height_field)
    table = _table_at(asked, place)
    if table is None:
        return given
    recorded = _of_table(asked, table, source, sigma)
    if (given.names, given.texts) != (recorded.names, recorded.texts):
        raise InputError(
            tr(
                "{0} is the layer '{1}', but the record of layer '{2}' says that the covariance of its heights is in "
                "'{3}', which holds another one; leave {0} empty, or give that table."
            ).format(key, given.layer, source.sourceName(), place),
            keys=(key, "STATIONS"),
        )
    return given


def covariance_behind(asked, record: RunRecord, source, sigma, height_field, *, key="COVARIANCE"):
    """The GivenCovariance of the table that the ``record`` of a layer of stations names; None where it names none, and
    where the heights are read from another field than the adjusted one.

    ``source``: the stations; ``sigma``, ``height_field``: as of ``given_covariance``. Where the heights were adjusted
    and no table tells their covariance, a warning says that the correlation of the heights is ignored.
    """
    place = _place(record, height_field)
    table = _table_at(asked, place)
    if table is not None:
        return _of_table(asked, table, source, sigma)
    if place or (record.adjusted and height_field.lower() == _HEIGHT):
        why = (
            tr("the table with their covariance, '{}', no longer exists").format(place)
            if place
            else tr("their covariance was not kept in a file")
        )
        asked.warn(
            tr("Layer '{}': its heights are from an adjustment, but {}; their correlation is ignored.").format(
                source.sourceName(), why
            ),
            keys=(key,),
        )
    return None


def warn_of_adjustment(asked, key, record: RunRecord, layer, height_field=_HEIGHT):
    """Warn of the adjustment behind a layer of ``key``, see ``adjustment_doubt``; returns the sentence, '' without."""
    text = adjustment_doubt(record, layer, height_field)
    if text:
        asked.warn(text, keys=(key,))
    return text


def adjustment_doubt(record: RunRecord, layer, height_field=_HEIGHT):
    """A sentence where the ``record`` of a layer tells that the adjustment which its heights or covariances come from
    failed its global test, or suspects blunders; '' without.

    ``layer``: its name; ``height_field``: that the heights are read from, of which another is not the adjusted one.
    """
    failed, factor, suspected = record.adjustment
    if height_field.lower() != _HEIGHT or not (failed or suspected):
        return ""
    blunders = counted(suspected, tr("suspected blunder"), tr("suspected blunders"))
    if not failed:
        return tr(
            "Layer '{}' rests on an adjustment with {} left in it: heights there may be wrong, and their accuracies do "
            "not tell it."
        ).format(layer, blunders)
    if factor > 1.0:
        return tr(
            "Layer '{}' rests on an adjustment whose global test failed (variance factor {}, {}): accuracies and "
            "verdicts that rest on it are too good."
        ).format(layer, number_text(factor, 3), blunders)
    return tr(
        "Layer '{}' rests on an adjustment whose global test failed (variance factor {}, {}): its lines agree better "
        "than was stated of them, and accuracies that rest on it are too poor."
    ).format(layer, number_text(factor, 3), blunders)


def _place(record, height_field):
    """Source of the table with the covariance of the heights in a field, '' for none."""
    return record.covariance if height_field.lower() == _HEIGHT else ""


def _table_at(asked, place):
    """The feature source of a recorded place, None where it is not there any more."""
    layer = asked.layer_behind(place) if place else None
    return None if layer is None else asked.source_of("COVARIANCE", layer)


def _of_table(asked, table, source, sigma):
    """The GivenCovariance of a ``table`` with fields point and covar. InputError where it is none."""
    fields = {name: named_field(table, "", "", (name,)) for name in ("point", "covar")}
    missing = [name for name, field in fields.items() if field < 0]
    if missing:
        raise InputError(
            tr("Layer '{}' is not a table of covariances: it lacks the field {}.").format(
                table.sourceName(), listed(missing)
            )
        )
    naming = named_field(source, asked.text("NAME_FIELD"), "NAME_FIELD", NAMES)
    if naming < 0:
        raise InputError(
            tr("Layer '{}' has no field {}; choose the field with the stations' names (NAME_FIELD).").format(
                source.sourceName(), listed([f"'{name}'" for name in NAMES])
            ),
            keys=("NAME_FIELD",),
        )
    rows = read_table(table, {}, fields, asked.feedback).columns
    stations = read_table(source, {}, {"name": naming}, asked.feedback).columns["name"]
    return GivenCovariance(rows["point"], rows["covar"], stations, sigma, table.sourceName())
