"""The run itself: toolbox entries one after the other in tasks of the host's, their layers in one group."""

import os
from dataclasses import dataclass, field

from qgis.core import (
    QgsLayerTreeGroup,
    QgsProcessingOutputLayerDefinition,
    QgsProcessingUtils,
    QgsProject,
    QgsProviderRegistry,
    QgsVectorLayer,
)
from qgis.PyQt.QtCore import QObject, QTimer, pyqtSignal

from ...algorithms.core.errors import InputError
from ...algorithms.entry.layer_records import record_of_layer
from ...algorithms.entry.messages import DOUBT
from ...algorithms.language.core_sentences import worded
from ...algorithms.language.number_text import listed
from ...algorithms.language.translation import tr
from .. import toolbox
from ..decisions.decision_store import PLACE_PROPERTY
from ..distinct_names import distinct
from ..review.comparing import has_own_edits
from . import drawn_axis, kept_edits, needed, requests

GROUP_MARK = "tautline/guided"
# On a layer: which of a run's results it is.
TABLE_MARK = "tautline/guided_table"
# On a group: the id of its layer with the residuals, for whoever opens the project again.
RESULT_MARK = "tautline/guided_result"
# The layers of the group, the topmost first; those that repeat others are there, but not drawn.
_ORDER = (
    "lateral_bars",
    "bars",
    "residuals",
    "plan",
    "strip",
    "band",
    "tested_stations",
    "reference",
    "ellipses",
    "stations",
    "drawn_axis",
    "summary",
    "curvature",
    "rejected_rows",
)
_HIDDEN = ("stations", "tested_stations")
# Milliseconds until it is tried again while another run goes on.
_WAIT = 50


@dataclass
class Step:
    """One entry to run: its id, a function that gives its parameters, {output key: table}; ``needed`` by the rest."""

    entry: str
    title: str
    parameters: object
    outputs: dict
    needed: bool = True


@dataclass
class Outcome:
    """What came out: layers by table, sentences on steps that failed, the numbers of the main run; Messages: the
    ``doubts`` of all, and all that the entries ``said`` with a code, each once."""

    layers: dict = field(default_factory=dict)
    failed: list = field(default_factory=list)
    numbers: dict = field(default_factory=dict)
    doubts: list = field(default_factory=list)
    said: list = field(default_factory=list)


class GuidedRun(QObject):
    """One run of the panel's answers; ``ended`` comes once, in the main thread, with an Outcome or a sentence."""

    progressed = pyqtSignal(str, float)
    ended = pyqtSignal(object, str, str)

    def __init__(self, settings, understood, title, parent=None):
        super().__init__(parent)
        self.settings, self.understood, self.title = needed.counting(settings, understood), understood, title
        self.outcome, self._steps, self._number, self._started = Outcome(), [], 0, None
        self.cancelled = False
        self._waiting = QTimer(self)
        self._waiting.setSingleShot(True)
        self._waiting.timeout.connect(self.begin)

    def begin(self):
        """Start; what does not fit is told by ``ended`` like all else."""
        # Placed stations are opened, which waits for other runs: a look at the data that was given up goes on until it
        # hears of it.
        if self.understood.is_list and self.settings.place and toolbox.runs_going() and not self.cancelled:
            self.progressed.emit(tr("Waiting for another run to end"), 0.0)
            self._waiting.start(_WAIT)
            return
        try:
            self._check_place()
            kept = not self.cancelled and self._kept_stations()
            axis = self._axis() if not self.cancelled else None
        except InputError as error:
            self._end_badly(worded(error), error.keys)
            return
        if self.cancelled:
            self._end_badly(tr("Cancelled; no output was written."), ())
            return
        self._steps = [step for step in self._planned(axis) if not kept or step.entry != "tautline:placestations"]
        self._next()

    def cancel(self):
        self.cancelled = True
        if self._started is not None:
            self._started.cancel()

    def forget(self):
        """Stop without a word, when the panel goes."""
        self._waiting.stop()
        if self._started is not None:
            self._started.forget()

    # --- what is run

    def _check_place(self):
        place = self.settings.place
        if not place:
            return
        if not os.path.isdir(os.path.dirname(place) or "."):
            raise InputError(tr("There is no folder '{}' for OUTPUT.").format(os.path.dirname(place)), keys=("OUTPUT",))
        for layer in _layers_in(place):
            if layer.isEditable():
                raise InputError(
                    tr("The layer '{}' of an earlier run is being edited; save or discard its changes first.").format(
                        layer.name()
                    )
                )

    def _kept_stations(self):
        """Whether placed stations that were edited by hand are taken as they are; the user may also cancel."""
        if not self.understood.is_list:
            return False
        found = kept_edits.answer(self.settings.place, "stations", self.parent())
        self.cancelled = found == kept_edits.CANCEL
        if found == kept_edits.KEEP:
            # As it was shown: nothing dresses a layer that no run has written.
            layer = self._layer("stations", "", None)
            layer.loadDefaultStyle()
            shown = [one.name() for one in _layers_in(self.settings.place) if _table_of(one) == "stations"]
            layer.setName((shown or [tr("Placed stations")])[0])
            self.outcome.layers["stations"] = layer
        return found == kept_edits.KEEP

    def _axis(self):
        if not self.settings.drawn:
            return self.settings.axis
        layer = self.understood.drawn
        if self.settings.place:
            layer = drawn_axis.kept(layer, self.settings.place, "drawn_axis")
        self.outcome.layers["drawn_axis"] = layer
        return layer

    def _planned(self, axis):
        settings, placed = self.settings, self.understood.is_list
        several, layers = len(self.understood.looks) > 1, self.outcome.layers

        def stations():
            return layers["stations"] if placed else settings.heights

        steps = []
        if placed:
            outputs = {"OUTPUT": "stations"}
            if self.understood.rejected:
                outputs["REJECTED"] = "rejected_rows"
            steps.append(
                Step(
                    "tautline:placestations",
                    tr("Placing the height list"),
                    lambda: requests.placing(settings, axis),
                    outputs,
                )
            )
        steps.append(
            Step(
                "tautline:designheights",
                tr("Comparing with the design"),
                lambda: requests.comparing(settings, stations(), axis, placed),
                {"OUTPUT": "residuals", "SUMMARY": "summary"},
            )
        )
        if settings.fit:
            steps.append(
                Step(
                    "tautline:fitreference",
                    tr("Fitting"),
                    lambda: requests.fitting(settings, stations(), axis, placed, several),
                    {"REFERENCE": "reference", "OUTPUT": "tested_stations", "ELLIPSE": "ellipses"},
                    False,
                )
            )
        if settings.test_shape:
            steps.append(
                Step(
                    "tautline:testcurvature",
                    tr("Testing the shape"),
                    lambda: requests.testing(settings, stations(), axis, placed),
                    {"OUTPUT": "curvature"},
                    False,
                )
            )
        if settings.draw:
            steps.append(
                Step(
                    "tautline:drawdeviations",
                    tr("Drawing the deviations"),
                    lambda: {"STATIONS": layers["residuals"], "AXIS": axis},
                    {
                        **{"BARS": "bars", "BAND": "band", "STRIP": "strip"},
                        **({"LINE_BARS": "lateral_bars", "PLAN": "plan"} if settings.line else {}),
                    },
                    False,
                )
            )
        return [step for step in steps if step.needed or toolbox.has(step.entry)]

    def _destination(self, table):
        """Where a table goes; as forms give it, so that the entry prepares the style it will be shown in."""
        place = self.settings.place
        geometry = "" if table in ("summary", "curvature", "rejected_rows") else "geom"
        text = toolbox.geopackage_table(place, table, geometry) if place else "TEMPORARY_OUTPUT"
        return QgsProcessingOutputLayerDefinition(text, QgsProject.instance())

    # --- one after the other

    def _next(self):
        if self._number == len(self._steps):
            self._started = None
            self.ended.emit(self.outcome, "", "")
            return
        step = self._steps[self._number]
        self.progressed.emit(step.title, 100.0 * self._number / len(self._steps))
        parameters = {**step.parameters(), **{key: self._destination(table) for key, table in step.outputs.items()}}
        try:
            self._started = toolbox.start(
                step.entry, parameters, lambda done, refusal: self._stepped(step, done, refusal)
            )
        except toolbox.Refused as error:
            self._stepped(step, None, error.refusal)
            return
        share = 1.0 / len(self._steps)
        first, started = 100.0 * self._number * share, self._started
        started.task.progressChanged.connect(
            lambda value: self._tell_progress(started, step.title, first + value * share)
        )

    def _tell_progress(self, started, title, value):
        if started is self._started and started.ended is not None:
            self.progressed.emit(title, value)

    def _stepped(self, step, done, refusal):
        if done is None and (step.needed or self.cancelled):
            self._end_badly(self._cancelled() if self.cancelled else refusal.text, refusal.keys)
            return
        if done is None:
            self.outcome.failed.append(tr("{} failed: {}").format(step.title, requests.in_panel_words(refusal.text)))
        else:
            self._take(step, done)
        self._number += 1
        self._next()

    def _cancelled(self):
        """What is told of a run that was cancelled: of the steps before, what they have written stays."""
        before = [step.title for step in self._steps[: self._number]]
        if not before:
            return tr("Cancelled; no output was written.")
        return tr("Cancelled. Done before that, and written: {}.").format(listed([f"'{title}'" for title in before]))

    def _take(self, step, done):
        """Keep the run's layers, dressed as the host would, and note the run in the history."""
        toolbox.note(done)
        waiting = done.context.layersToLoadOnCompletion()
        for key, table in step.outputs.items():
            destination = done.results.get(key)
            if not destination:
                continue
            owned = self._layer(table, destination, done.context)
            details = waiting.get(destination)
            if details is not None and details.postProcessor() is not None:
                details.postProcessor().postProcessLayer(owned, done.context, done.feedback)
            self.outcome.layers[table] = owned
        doubts = done.feedback.of_kind(DOUBT)
        self.outcome.doubts += [doubt for doubt in doubts if doubt not in self.outcome.doubts]
        self.outcome.said += [one for one in done.feedback.messages if one.code and one not in self.outcome.said]
        if step.entry == "tautline:designheights":
            self.outcome.numbers = {key: done.results.get(key) for key in ("COUNT", "WITHIN", "RMS", "MAX_ABS")}

    def _layer(self, table, destination, context):
        """The written layer as our own: by its file where it has one, for the project may show an older state of it."""
        if self.settings.place:
            return QgsVectorLayer(f"{self.settings.place}|layername={table}", table, "ogr")
        return context.takeResultLayer(QgsProcessingUtils.mapLayerFromString(destination, context).id())

    def _end_badly(self, text, keys):
        self._started = None
        self.ended.emit(None, requests.in_panel_words(text), requests.answer_of(keys))


def _layers_in(place):
    """Layers of the project that are tables of the GeoPackage ``place``."""
    registry, found = QgsProviderRegistry.instance(), []
    for layer in QgsProject.instance().mapLayers().values():
        path = registry.decodeUri(layer.providerType(), layer.source()).get("path") or ""
        if path and os.path.realpath(path) == os.path.realpath(place):
            found.append(layer)
    return found


def _table_of(layer):
    return QgsProviderRegistry.instance().decodeUri(layer.providerType(), layer.source()).get("layerName") or ""


def show(outcome, title, place):
    """Put the Outcome's layers into a group of their own on top of the project; return the group.

    An earlier group loses the layers that this run has made anew, in memory as in the file; one with other layers
    stays, but is not drawn. A name that a layer of the project has already gets a number.
    """
    project = QgsProject.instance()
    root = project.layerTreeRoot()
    replaced = {layer: _table_of(layer) for layer in _layers_in(place)} if place else {}
    replaced = {layer: table for layer, table in replaced.items() if _in_own_group(root, layer.id())}
    replaced.update(_in_memory(root, title))
    read = {
        one.source for new in outcome.layers.values() for many in record_of_layer(new).inputs.values() for one in many
    }
    for layer, table in replaced.items():
        new = outcome.layers.get(table)
        if new is None or new is layer or (layer.providerType() == "memory" and layer.source() in read):
            continue
        # Where the decisions on these stations are kept was chosen by hand.
        if layer.customProperty(PLACE_PROPERTY, ""):
            new.setCustomProperty(PLACE_PROPERTY, layer.customProperty(PLACE_PROPERTY))
        project.removeMapLayer(layer)
    for group in root.findGroups():
        if group.customProperty(GROUP_MARK, False):
            if group.children():
                group.setItemVisibilityChecked(False)
                group.setExpanded(False)
            else:
                root.removeChildNode(group)
    group = root.insertGroup(0, distinct(title, [group.name() for group in root.findGroups()]))
    group.setCustomProperty(GROUP_MARK, title)
    group.setCustomProperty(RESULT_MARK, outcome.layers["residuals"].id())
    for table in (table for table in _ORDER if table in outcome.layers):
        layer = outcome.layers[table]
        layer.setName(distinct(layer.name(), _names_beside(layer)))
        layer.setCustomProperty(TABLE_MARK, table)
        project.addMapLayer(layer, False)
        node = group.addLayer(layer)
        node.setExpanded(table == "residuals")
        node.setItemVisibilityChecked(table not in _HIDDEN)
    return group


def _in_memory(root, title):
    """{layer in memory: table} of what earlier runs under this ``title`` have left, without what was edited by hand."""
    groups = [one for one in root.findGroups() if one.customProperty(GROUP_MARK, "") == title]
    left = [node.layer() for group in groups for node in group.findLayers() if node.layer() is not None]
    return {
        layer: layer.customProperty(TABLE_MARK, "")
        for layer in left
        if layer.providerType() == "memory" and not has_own_edits(layer)
    }


def _names_beside(layer):
    return [other.name() for other in QgsProject.instance().mapLayers().values() if other is not layer]


def kept_result():
    """The layer with the residuals of the last run that the project holds, None for none."""
    project = QgsProject.instance()
    marks = [group.customProperty(RESULT_MARK, "") for group in project.layerTreeRoot().findGroups()]
    return next((layer for layer in map(project.mapLayer, filter(None, marks)) if layer is not None), None)


def _in_own_group(root, layer_id):
    node = root.findLayer(layer_id)
    parent = node.parent() if node is not None else None
    return isinstance(parent, QgsLayerTreeGroup) and bool(parent.customProperty(GROUP_MARK, False))
