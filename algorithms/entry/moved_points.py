"""Points that were moved by hand after a run wrote what their columns say of them: the one rule for all who read these.

An entry that takes an axis measures its stations anew. Who takes chainage, offset, residual or lateral departure from
the columns takes what was measured where the points stood then.
"""

from ..core.place_marks import place_marks, rows_elsewhere
from ..language.number_text import counted
from ..language.translation import tr


def moved_rows(record, crs, marks):
    """Rows (indices, rising) of the points with these ``marks``, see place_marks, that do not stand where the run of
    ``record`` wrote a point; none where that is not known. ``crs``: QgsCoordinateReferenceSystem of the points."""
    # A copy of the layer in another reference system has moved nothing.
    if record.written is None or (record.crs and record.crs != (crs.authid() or crs.description())):
        return ()
    return rows_elsewhere(record.written.marks, marks)


def moved_sentence(name, rows):
    """What a person is told of the moved ``rows`` of the layer ``name``; '' without any."""
    if not len(rows):
        return ""
    return f"{short_moved_sentence(name, rows)} " + tr(
        "Chainage, offset and what was computed there are those of the former place; 'Measure chainage and offset' or "
        "'Design heights and residuals' on this layer measures anew."
    )


def short_moved_sentence(name, rows):
    """The same in a few words, for where there is room for one line."""
    if not len(rows):
        return ""
    counts = counted(len(rows), tr("point was moved or added"), tr("points were moved or added"))
    return tr("Layer '{}': {} since its run, the first in row {}.").format(name, counts, rows[0] + 1)


def warn_of_moved_points(asked, key, record, points):
    """Warn where points of a layer of ``key`` were moved by hand since; returns the sentence, '' without."""
    rows = moved_rows(record, points.crs, place_marks(points.x, points.y)) if record.written is not None else ()
    sentence = moved_sentence(points.name, rows)
    if sentence:
        asked.warn(sentence, keys=(key,))
    return sentence
