"""What is under review: layer, stations, current station and selection; shared by chart, list and map."""

import numpy as np
from qgis.core import Qgis, QgsMessageLog, QgsProject
from qgis.PyQt.QtCore import QObject, QTimer, pyqtSignal

from ...algorithms.language.translation import tr
from ...algorithms.styles.record_property import RECORD_PROPERTY
from ..toolbox import runs_going
from .layer_stations import is_reviewable, read_stations, stations_again

# Where the project keeps the id of the layer under review.
SCOPE, KEY = "tautline", "review/layer"
# Edits come one by one; the layer is read again once they pause.
PAUSE = 150
# Of more features than this share reading all of them is quicker.
_FEW = 0.1
# What says that the layer as a whole may be another.
_WHOLE = ("dataSourceChanged", "subsetStringChanged", "updatedFields", "crsChanged", "dataChanged")


class Subject(QObject):
    """The layer under review. Rows are indices into ``stations``; ``current`` is -1 without a current station."""

    changed = pyqtSignal()
    current_changed = pyqtSignal()
    selection_changed = pyqtSignal()
    candidates_changed = pyqtSignal()

    def __init__(self, parent=None):
        super().__init__(parent)
        self.layer = self.stations = None
        self.current = -1
        # Features that were edited: since the layer was last read, and since its edits were last saved or given up.
        self._touched, self._edited, self._whole = set(), set(), False
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(PAUSE)
        self._timer.timeout.connect(self._catch_up)
        project = QgsProject.instance()
        project.layersWillBeRemoved.connect(self._forget)
        project.layersAdded.connect(self._tell_candidates)
        project.layersRemoved.connect(self._tell_candidates)
        project.writeProject.connect(self._keep_in_project)
        project.readProject.connect(self._take_kept)

    def close(self):
        """Let go of the project and of the layer."""
        project = QgsProject.instance()
        project.layersWillBeRemoved.disconnect(self._forget)
        project.layersAdded.disconnect(self._tell_candidates)
        project.layersRemoved.disconnect(self._tell_candidates)
        project.writeProject.disconnect(self._keep_in_project)
        project.readProject.disconnect(self._take_kept)
        self._release()
        self.deleteLater()

    # --- the layer

    @staticmethod
    def candidates():
        """Layers of the project that can be reviewed, by name."""
        found = [layer for layer in QgsProject.instance().mapLayers().values() if is_reviewable(layer)]
        return sorted(found, key=lambda layer: layer.name().casefold())

    def set_layer(self, layer):
        """Review another layer; one that has not the fields changes nothing. None ends the review."""
        if layer is self.layer or (layer is not None and not is_reviewable(layer)):
            return
        self._release()
        self.layer, self.current = layer, -1
        if layer is not None:
            for signal, slot in self._edits(layer):
                signal.connect(slot)
            layer.selectionChanged.connect(self._selected)
        if layer is not None and runs_going():
            self._read_later()
            self.changed.emit()
        else:
            self._read_first()

    @property
    def is_waiting(self):
        """Whether the layer will be read as soon as no run goes on."""
        return self.layer is not None and self.stations is None

    def _read_first(self):
        self.read()
        if self.stations is not None and self.stations.record.doubt:
            text = tr("Layer '{}': {}").format(self.layer.name(), self.stations.record.doubt)
            QgsMessageLog.logMessage(text, "Tautline", Qgis.MessageLevel.Warning)

    def choose_one(self, preferred=None):
        """Take the preferred layer, else one that can be reviewed, where there is none under review."""
        if preferred is not None and is_reviewable(preferred):
            self.set_layer(preferred)
        elif self.layer is None and not self._take_kept():
            found = self.candidates()
            judged = [layer for layer in found if layer.fields().indexOf("status") >= 0]
            self.set_layer((judged or found or [None])[0])

    def _keep_in_project(self, *_):
        """Tell the project that is being saved what is under review; looking at another layer changes no project."""
        if self.layer is not None:
            QgsProject.instance().writeEntry(SCOPE, KEY, self.layer.id())

    def _take_kept(self, *_):
        """Review the layer that the project was saved with, where it is there; return whether it is."""
        kept, found = QgsProject.instance().readEntry(SCOPE, KEY, "")
        layer = QgsProject.instance().mapLayer(kept) if found and kept else None
        if layer is None or not is_reviewable(layer):
            return False
        self.set_layer(layer)
        return True

    def _release(self):
        self._timer.stop()
        self._touched, self._edited, self._whole = set(), set(), False
        if self.layer is not None:
            for signal, slot in self._edits(self.layer):
                signal.disconnect(slot)
            self.layer.selectionChanged.disconnect(self._selected)
        self.layer = self.stations = None

    def _forget(self, ids):
        if self.layer is not None and self.layer.id() in ids:
            self.set_layer(None)

    def _tell_candidates(self, *_):
        self.candidates_changed.emit()

    def _selected(self, *_):
        self.selection_changed.emit()

    # --- what is edited

    def _edits(self, layer):
        """(signal, slot) of all that may change the stations of a layer."""
        return [
            (layer.attributeValueChanged, self._touch),
            (layer.geometryChanged, self._touch),
            (layer.featureAdded, self._touch),
            (layer.featuresDeleted, self._touch_all),
            (layer.afterCommitChanges, self._edits_ended),
            (layer.afterRollBack, self._edits_ended),
            (layer.customPropertyChanged, self._property_changed),
            *((getattr(layer, name), self._read_later) for name in _WHOLE),
        ]

    def _touch(self, feature, *_):
        self._touch_all((feature,))

    def _touch_all(self, features):
        self._touched.update(features)
        self._edited.update(features)
        self._timer.start()

    def _edits_ended(self):
        # A file may hold a value otherwise than it was typed.
        self._touched |= self._edited
        self._edited = set()
        self._timer.start()

    def _property_changed(self, key, *_):
        if key == RECORD_PROPERTY:
            self._whole = True
        self._timer.start()

    def _read_later(self, *_):
        self._whole = True
        self._timer.start()

    def _catch_up(self):
        """Read what was edited, as soon as no run goes on that may be opening layers."""
        if runs_going():
            self._timer.start()
        elif self.stations is None:
            self._read_first()
        elif self._whole or len(self._touched) > max(_FEW * len(self.stations), 1) or not is_reviewable(self.layer):
            self.read()
        else:
            self._take(stations_again(self.stations, self.layer, self._touched) if self._touched else self.stations)

    def read(self):
        """Read the layer; the current station stays the same one where it is still there."""
        alive = self.layer is not None and is_reviewable(self.layer)
        self._take(read_stations(self.layer) if alive else None)

    def _take(self, stations):
        self._timer.stop()
        kept = None
        if self.current >= 0 and self.stations is not None:
            kept = (int(self.stations.ids[self.current]), *self.name_of(self.current))
        self.stations = stations
        self._touched, self._whole = set(), False
        self.current = -1 if kept is None else self._same(*kept)
        self.changed.emit()

    def _same(self, feature_id, axis, station):
        """Row of the station that was there before: by its feature where the name agrees, else by its name alone."""
        row = next(iter(self._rows_of([feature_id]).tolist()), -1)
        return row if row >= 0 and self.name_of(row) == (axis, station) else self.row_named(axis, station)

    # --- stations

    def name_of(self, row):
        """(axis, station) of a row."""
        return self.stations.axis[row], self.stations.station[row]

    def row_named(self, axis, station):
        """Row of a station by its axis and name, -1 where there is none."""
        if self.stations is None:
            return -1
        rows = np.flatnonzero((self.stations.axis == axis) & (self.stations.station == station))
        return int(rows[0]) if len(rows) else -1

    def set_current(self, row):
        """Make a row the current station; -1 for none."""
        row = int(row)
        if row != self.current and self.stations is not None and -1 <= row < len(self.stations):
            self.current = row
            self.current_changed.emit()

    def selected(self):
        """Rows of the features selected in the layer (k,), rising."""
        if self.stations is None:
            return np.zeros(0, int)
        return self._rows_of(self.layer.selectedFeatureIds())

    def _rows_of(self, ids):
        """Rows of the features of these ``ids`` that are stations (k,), rising."""
        if self.stations is None:
            return np.zeros(0, int)
        return np.flatnonzero(np.isin(self.stations.ids, np.array(ids, np.int64)))

    def select(self, rows, toggle=False):
        """Select rows in the layer, or turn their selection over."""
        ids = self.stations.ids[np.asarray(rows, int)].tolist()
        if toggle:
            before = set(self.layer.selectedFeatureIds())
            ids = list(before.symmetric_difference(ids))
        self.layer.selectByIds(ids)
