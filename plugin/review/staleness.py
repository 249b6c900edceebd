"""What in the project is older than what it was made from: compared one by one, kept, and shown at the layers."""

import os

from qgis.core import QgsApplication, QgsProject, QgsVectorLayer
from qgis.gui import QgsLayerTreeViewIndicator
from qgis.PyQt.QtCore import QObject, QTimer, pyqtSignal

from ...algorithms.entry.recorded_chain import MadeLayer, recorded_chain, short_stale_line, stale_line
from ...algorithms.entry.run_record import RunRecord
from ...algorithms.styles.record_property import RECORD_PROPERTY
from ..toolbox import runs_going

# Milliseconds after the last change: edits are saved and runs load their layers in a burst.
_WAIT = 400
_EDITS = ("afterCommitChanges", "dataSourceChanged", "dataChanged", "nameChanged")


class Staleness(QObject):
    """``steps``: ChainSteps to be run again, in their order; ``moved``: {id of a layer that can be reviewed: sentence
    that tells which of its points were moved, and which heights edited, by hand since its run}; ``changed`` when they
    are others than before; ``held``: True while nothing is to be read. ``line``: all of it in words, ``short_line``:
    for one line.

    What was compared is kept until the file or the layer behind it changes, so that looking again costs nothing.
    """

    changed = pyqtSignal()
    looked = pyqtSignal()

    def __init__(self, iface, parent=None):
        super().__init__(parent)
        self.iface, self.steps, self.moved, self.line, self.short_line = iface, [], {}, "", ""
        self._states, self._versions, self._records, self._marks = {}, {}, {}, []
        self._watched, self._task, self._again, self.held = set(), None, False, False
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_WAIT)
        self._timer.timeout.connect(self.look)
        project = QgsProject.instance()
        project.layersAdded.connect(self._watch)
        project.layersWillBeRemoved.connect(self._let_go)
        project.layersRemoved.connect(self._forget)
        self._watch(project.mapLayers().values())

    def close(self):
        """Let go of project, layers and marks."""
        project = QgsProject.instance()
        project.layersAdded.disconnect(self._watch)
        project.layersWillBeRemoved.disconnect(self._let_go)
        project.layersRemoved.disconnect(self._forget)
        for layer in project.mapLayers().values():
            if layer.id() in self._watched:
                for name in _EDITS:
                    if hasattr(layer, name):
                        getattr(layer, name).disconnect(self._layer_changed)
                layer.customPropertyChanged.disconnect(self._property_changed)
        self._timer.stop()
        if self._task is not None:
            self._task.forget()
            self._task = None
        self._unmark()
        self.deleteLater()

    # --- when to look

    @property
    def busy(self):
        """Whether it is looking, or is about to."""
        return self._task is not None or self._timer.isActive()

    def later(self, *_):
        """Look soon."""
        self._timer.start()

    def _watch(self, layers):
        for layer in layers:
            if isinstance(layer, QgsVectorLayer) and layer.id() not in self._watched:
                self._watched.add(layer.id())
                for name in _EDITS:
                    if hasattr(layer, name):
                        getattr(layer, name).connect(self._layer_changed)
                layer.customPropertyChanged.connect(self._property_changed)
        self.later()

    def _let_go(self, _ids):
        if self._task is not None:
            self._task.let_go()

    def _forget(self, ids):
        # A project that is opened again brings other layers under the same ids.
        self._watched -= set(ids)
        self.later()

    def _layer_changed(self, *_):
        layer = self.sender()
        if isinstance(layer, QgsVectorLayer):
            self._versions[layer.id()] = self._versions.get(layer.id(), 0) + 1
        self.later()

    def _property_changed(self, key, *_):
        if key == RECORD_PROPERTY:
            self.later()

    # --- looking

    def look(self):
        """Compare, a slice of one input at a turn of the window's loop, what has changed since it was last compared."""
        self._timer.stop()
        if self._task is not None:
            self._again = True
            return
        if self._wait():
            self.later()
            return
        self._watched &= set(QgsProject.instance().mapLayers())
        made, wanted = self._made(), {}
        by_source = {layer.source(): layer for layer in _vector_layers()}
        for layer, record in made:
            for one in [one for many in record.inputs.values() for one in many if one.hash and not one.part]:
                wanted[(one.source, one.hash)] = (one, by_source.get(one.source))
            if record.written is not None:
                wanted[(layer.source(), record.written.hash, "written")] = (record, layer)
        stamps = {key: self._stamp(key[0], layer) for key, (_, layer) in wanted.items()}
        due = [key for key in wanted if self._states.get(key, (None,))[0] != stamps[key]]
        if not due:
            self._take(made, wanted)
            return
        # A copy of what is in memory: edits between two turns do not count.
        copies = {}
        for key in due:
            layer = wanted[key][1]
            if layer is not None and layer.providerType() == "memory" and key[0] not in copies:
                copies[key[0]] = layer.clone()
        jobs = [(key, wanted[key][0], copies.get(key[0])) for key in due]

        def ended(states):
            self._task = None
            self._states.update({key: (stamps[key], state) for key, state in states.items()})
            self._states = {key: state for key, state in self._states.items() if key in wanted}
            self._take(self._made(), wanted)
            if self._again:
                self._again = False
                self.later()

        # Here: most projects hold no layer of ours when the host starts.
        from .comparing import Comparing

        self._task = Comparing(jobs, ended, self._wait)

    def _wait(self):
        """Whether no layer is to be opened now."""
        return self.held or runs_going()

    def _made(self):
        """[(layer, RunRecord)] of the layers of the project that hold a record."""
        found = []
        for layer in _vector_layers():
            text = layer.customProperty(RECORD_PROPERTY, "")
            if isinstance(text, str) and text:
                if text not in self._records:
                    self._records[text] = RunRecord.read(text)
                if self._records[text].entry:
                    found.append((layer, self._records[text]))
        return found

    def _stamp(self, source, layer):
        """What changes whenever the rows behind a source may have."""
        if layer is not None and layer.providerType() == "memory":
            return self._versions.get(layer.id(), 0)
        path, stamp = source.split("|")[0], []
        for name in (path, path + "-wal"):
            if os.path.isfile(name):
                found = os.stat(name)
                stamp.append((found.st_mtime_ns, found.st_size))
        return tuple(stamp)

    def _take(self, made, wanted):
        state = {key: self._states[key][1] for key in wanted if key in self._states}
        names = {layer.source(): layer.name() for layer in _vector_layers()}
        found, moved, short = [], {}, []
        for layer, record in made:
            readings = [one for many in record.inputs.values() for one in many]
            changed = [
                names.get(one.source, os.path.basename(one.source.split("|")[0]))
                for one in readings
                if state.get((one.source, one.hash)) == "changed"
            ]
            edited = False
            if record.written is not None:
                read = state.get((layer.source(), record.written.hash, "written"))
                edited = read is None or read.reading.hash != record.written.hash
                told = _moved(layer, record, read) if edited and read is not None else ()
                if told:
                    moved[layer.id()] = told[0]
                    short.append(told[1])
            found.append(MadeLayer(layer.id(), layer.name(), layer.source(), record, tuple(changed), edited))
        before = self.steps, self.moved, self.line
        self.steps, self.moved = recorded_chain(found), moved
        self.line = " ".join(filter(None, [stale_line(self.steps), *moved.values()]))
        self.short_line = short_stale_line(self.steps) or "".join(short[:1])
        if before != (self.steps, self.moved, self.line):
            self._mark()
            self.changed.emit()
        self.looked.emit()

    # --- at the layers

    def _mark(self):
        self._unmark()
        view, root = self.iface.layerTreeView(), QgsProject.instance().layerTreeRoot()
        tips = {}
        for step in self.steps:
            for layer in step.layers:
                tips[layer.key] = stale_line([step])
        for key, sentence in self.moved.items():
            tips[key] = " ".join(filter(None, [tips.get(key, ""), sentence]))
        for key, tip in tips.items():
            node = root.findLayer(key)
            if node is None:
                continue
            mark = QgsLayerTreeViewIndicator(view)
            mark.setIcon(QgsApplication.getThemeIcon("/mIconWarning.svg"))
            mark.setToolTip(tip)
            view.addIndicator(node, mark)
            self._marks.append((key, mark))

    def _unmark(self):
        view, root = self.iface.layerTreeView(), QgsProject.instance().layerTreeRoot()
        for key, mark in self._marks:
            node = root.findLayer(key)
            if node is not None:
                view.removeIndicator(node, mark)
            mark.deleteLater()
        self._marks = []


def _moved(layer, record, read):
    """Two texts, the second short, where points of a layer that can be reviewed were moved, or the heights of its
    residuals edited, by hand; else (). ``read``: RowsNow."""
    # Here: most projects hold no layer of ours when the host starts.
    from ...algorithms.entry.edited_heights import edited_sentence, residual_heights, short_edited_sentence
    from ...algorithms.entry.moved_points import moved_rows, moved_sentence, short_moved_sentence
    from .layer_stations import is_reviewable

    if not is_reviewable(layer):
        return ()
    name, rows = layer.name(), moved_rows(record, layer.crs(), read.reading.marks)
    told = [(moved_sentence(name, rows), short_moved_sentence(name, rows))] if len(rows) else []
    if len(read.edited):
        told.append(
            (
                edited_sentence(name, residual_heights(record, layer), read.edited),
                short_edited_sentence(name, read.edited),
            )
        )
    return (" ".join(long for long, _ in told), told[0][1]) if told else ()


def _vector_layers():
    return [one for one in QgsProject.instance().mapLayers().values() if isinstance(one, QgsVectorLayer)]
