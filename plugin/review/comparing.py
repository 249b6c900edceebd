"""Reads what is in the project again, to compare it with what its records say."""

from qgis.core import QgsProcessingContext, QgsVectorLayer
from qgis.PyQt.QtCore import QTimer

from ...algorithms.entry.run_record import RunRecord
from ...algorithms.entry.stale_inputs import stale_inputs_in_slices
from ...algorithms.entry.written_rows import rows_now_in_slices, rows_reading
from ...algorithms.styles.record_property import RECORD_PROPERTY

# Milliseconds until it is tried again while a run is going.
_WAIT = 400


class Comparing:
    """Compares inputs one by one, a slice of one at each turn of the window's loop at which ``wait()`` is false;
    ``ended(states)`` once, unless forgotten.

    Not in a thread: the window opens layers at any time, see ``runs_going``.
    """

    def __init__(self, jobs, ended, wait):
        self._jobs, self._ended, self._wait, self._states = list(jobs), ended, wait, {}
        self._reading = None
        QTimer.singleShot(0, self._next)

    def forget(self):
        """Stop without a word."""
        self._ended = None
        self.let_go()

    def let_go(self):
        """Let go of the layer that is being read; it is read from its beginning at the next turn."""
        self._reading = None

    def _next(self):
        if self._ended is None:
            return
        if not self._jobs:
            self._ended(self._states)
            return
        if self._wait():
            # A run may have begun since the last turn.
            self.let_go()
            QTimer.singleShot(_WAIT, self._next)
            return
        key = self._jobs[0][0]
        self._reading = self._reading or _state(*self._jobs[0])
        try:
            next(self._reading)
        except StopIteration as end:
            self._states[key], self._reading = end.value, None
            self._jobs.pop(0)
        QTimer.singleShot(0, self._next)


def _state(key, reading, copy):
    """What becomes of one comparison, in slices: the state of an input as its InputRecord ``reading`` had it, or where
    that is the RunRecord of a written layer its RowsNow, None where they cannot be read; ``copy``: of a layer in
    memory, or None."""
    context = QgsProcessingContext()
    if isinstance(reading, RunRecord):
        layer = copy if copy is not None else QgsVectorLayer(key[0], "", "ogr")
        return (yield from rows_now_in_slices(layer, reading, context)) if layer.isValid() else None
    record = RunRecord(inputs={"": (reading,)})
    states = yield from stale_inputs_in_slices(record, {key[0]: copy} if copy is not None else None, context)
    return states[0].state if states else ""


def edited_by_hand(source):
    """Whether the layer at ``source`` exists and its rows are not those that its recorded run has written, or whether
    that cannot be told."""
    layer = QgsVectorLayer(source, "", "ogr")
    if not layer.isValid():
        return False
    written = _written(layer)
    return layer.featureCount() > 0 if written is None else _differs(layer, written)


def has_own_edits(layer):
    """Whether a layer of the project holds edits, saved or not, that its recorded run has not written, as far as the
    record tells."""
    written = _written(layer)
    return (layer.isEditable() and layer.isModified()) or (written is not None and _differs(layer, written))


def _written(layer):
    text = layer.customProperty(RECORD_PROPERTY, "")
    return RunRecord.read(text if isinstance(text, str) else "").written


def _differs(layer, written):
    read = rows_reading(layer, QgsProcessingContext())
    return read is None or read.hash != written.hash
