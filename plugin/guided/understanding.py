"""What the panel understood of the data: found by quiet runs of toolbox entries while the window lives."""

from dataclasses import dataclass, field

import numpy as np
from qgis.core import QgsProcessingContext, QgsProcessingFeatureSource, QgsProcessingFeedback, QgsProject
from qgis.PyQt.QtCore import QObject, pyqtSignal

from ...algorithms.boundary.axes import read_axes
from ...algorithms.boundary.height_column import height_column
from ...algorithms.boundary.slices import finished
from ...algorithms.boundary.tables import table_in_slices
from ...algorithms.core import data_check
from ...algorithms.core.errors import InputError
from ...algorithms.core.geodesy import foot_and_normal
from ...algorithms.core.meeting import meeting_axes
from ...algorithms.core.row_ranges import rows_of_each
from ...algorithms.core.units import metres_per
from ...algorithms.entry.messages import DOUBT, NO_AXIS_NAMED, READING, ROW_REJECTED, STATION_TWICE
from ...algorithms.language.core_sentences import worded
from ...algorithms.language.translation import tr
from ...algorithms.structure.axis_overrides import AxisFields
from ...algorithms.structure.checks import duplicate_rows
from .. import toolbox
from . import drawn_axis, requests, sentences

# Beyond this a line layer is a road network rather than a structure: only its number of lines is told.
_MOST_AXES = 300
# Metres beside the axis that no placing leaves.
_BESIDE = 1e-5


@dataclass
class Understood:
    """Sentences for each question: lists of (kind, sentence), kind 'fact', 'doubt' or 'problem'; ``beside``: {answer:
    sentence} of problems with one field; ``meet``: all axes hang together by their ends; ``ready``: the data are known
    well enough for a run."""

    structure: list = field(default_factory=list)
    heights: list = field(default_factory=list)
    design: list = field(default_factory=list)
    beside: dict = field(default_factory=dict)
    looks: list = field(default_factory=list)
    axes: list = field(default_factory=list)
    rejected: int = 0
    is_list: bool = False
    drawn: object = None
    meet: bool = False
    busy: bool = False
    ready: bool = False

    @property
    def has_positions(self):
        """Whether stations were surveyed sideways too: those that a list puts onto the axis stand on any line."""
        return any(look.offset > _BESIDE for look in self.looks)


@dataclass(frozen=True)
class AxisKnown:
    """An axis of the layer: ``name``, ``length`` on the ellipsoid in metres, the ``design`` it states itself or '';
    ``ends``: Earth-centred, metres (2, 3); ``tolerance``: whether it states its own."""

    name: str
    length: float
    design: str
    ends: np.ndarray
    tolerance: bool = False


@dataclass(frozen=True)
class AxisLook:
    """The stations of one axis at a first look; ``stations``: texts, in order of chainage; metres."""

    name: str
    stations: list
    chainages: np.ndarray
    heights: np.ndarray
    spacing: object
    shape: object
    twice: list
    offset: float

    def with_height(self, which):
        """(station, height in metres) of the 'first' or 'last' station with a height, or of the one nearest to the
        'middle' between them; None where there is none."""
        known = np.flatnonzero(np.isfinite(self.heights))
        if not len(known):
            return None
        at = known[0] if which == "first" else known[-1]
        if which == "middle":
            middle = 0.5 * (self.chainages[known[0]] + self.chainages[known[-1]])
            at = known[np.argmin(np.abs(self.chainages[known] - middle))]
        return self.stations[at], float(self.heights[at])


def known_axes(layer):
    """AxisKnown of a line layer's lines. Raises InputError for what cannot be an axis."""
    context = QgsProcessingContext()
    context.setProject(QgsProject.instance())
    source = QgsProcessingFeatureSource(layer, context)
    own = AxisFields(source)
    return [
        AxisKnown(
            axis.line.name,
            float(axis.line.lengths.sum()),
            own.text(axis, "design"),
            _ends(axis.line),
            own.text(axis, "tolerance") != "",
        )
        for axis in read_axes(source, "", QgsProcessingFeedback(False))
    ]


def _ends(line):
    return foot_and_normal(line.lat[[0, -1]], line.lon[[0, -1]], line.ellipsoid)[0]


def looks_at(layer, height_field, unit, chainage_unit):
    """AxisLook of each axis of stations with axis, station, chainage and offset; works in any thread.

    ``layer``: a result of placestations or measurestations.
    """
    context = QgsProcessingContext()
    source = QgsProcessingFeatureSource(layer, context)
    names = [f.name().lower() for f in source.fields()]
    column = height_column(source, height_field)
    numbers = {key: names.index(key) for key in ("chainage", "offset")}
    numbers["height"] = column.index
    texts = {key: names.index(key) for key in ("axis", "station")}
    table = finished(table_in_slices(source, numbers, texts, None, geometry=column.index < 0))
    heights = (table.xyz[2] if column.index < 0 else table.columns["height"]) * metres_per(unit)
    per = metres_per(chainage_unit)
    chainages, offsets = table.columns["chainage"] * per, table.columns["offset"] * per
    stations = np.array(table.columns["station"], dtype=object)
    found = []
    for name, rows in rows_of_each(list(table.columns["axis"])).items():
        rows = rows[np.isfinite(chainages[rows])]
        if len(rows):
            rows = rows[np.argsort(chainages[rows], kind="stable")]
            found.append(_look(name, stations[rows].tolist(), chainages[rows], heights[rows], offsets[rows]))
    return found


def _look(name, stations, chainages, heights, offsets):
    pairs = duplicate_rows(np.zeros(len(stations), int), chainages, offsets, np.arange(len(stations)))
    return AxisLook(
        name,
        stations,
        chainages,
        heights,
        data_check.spacing(chainages),
        data_check.shape(chainages, heights),
        list(dict.fromkeys(stations[a - 1] for a, _ in pairs)),
        float(np.abs(offsets).max()),
    )


class Understanding(QObject):
    """Looks at the data for one set of answers at a time; says ``changed`` whenever it knows more."""

    changed = pyqtSignal()

    def __init__(self, parent=None):
        super().__init__(parent)
        self.settings, self.found = None, Understood()
        self._running = None

    def stop(self):
        """Forget what is going on."""
        if self._running is not None:
            self._running.forget()
            self._running = None

    def look(self, settings):
        """Begin anew with these Settings."""
        self.stop()
        self.settings, self.found = settings, Understood()
        try:
            self._begin()
        except InputError as error:
            self._refused(worded(error), error.keys)
        self.changed.emit()

    # --- step by step

    def _begin(self):
        project, found = QgsProject.instance(), self.found
        heights = project.mapLayer(self.settings.heights)
        found.is_list = heights is not None and not heights.isSpatial()
        if not self.settings.drawn:
            self._structure(project.mapLayer(self.settings.axis))
        if heights is None:
            found.heights.append(("todo", tr("Choose a layer or open a file: a height list, or points with heights.")))
            return
        if self.settings.drawn:
            self._draw(heights)
        elif found.axes or not any(kind == "problem" for kind, _ in found.structure) and self.settings.axis:
            self._preview(self.settings.axis)
        else:
            number = heights.featureCount()
            found.heights.append(("todo", sentences.rows_waiting(number)))

    def _structure(self, axis):
        found = self.found
        if axis is None:
            found.structure.append(("todo", tr("Choose the line layer of the structure, or have the axis drawn.")))
            return
        if axis.featureCount() > _MOST_AXES:
            found.structure.append(("doubt", sentences.many_lines(axis.featureCount())))
            return
        try:
            found.axes = known_axes(axis)
        except InputError as error:
            found.structure.append(("problem", requests.in_panel_words(worded(error))))
            return
        found.structure += sentences.structure(found.axes)
        found.design += sentences.own_designs(found.axes)

    def _draw(self, heights):
        if self.found.is_list:
            raise InputError(
                tr(
                    "A list has no places to draw an axis between; choose the line layer of the structure, or points "
                    "instead of the list."
                ),
                keys=("AXIS",),
            )
        crs = heights.crs()
        if not crs.isValid():
            raise InputError(tr("Layer '{}' has no coordinate reference system; set it first.").format(heights.name()))
        station = self.settings.station_field

        def ended(places, error):
            if error is not None:
                self._ended_badly(error)
                return
            self.found.drawn = drawn_axis.line_layer(places, crs)
            self._structure(self.found.drawn)
            self._preview(self.found.drawn)
            self.changed.emit()

        self._busy(toolbox.aside(tr("Looking at the stations"), lambda: drawn_axis.read_ends(heights, station), ended))

    def _preview(self, axis):
        """Place or measure the stations without a trace, as a run would."""
        settings = self.settings
        if self.found.is_list:
            entry, parameters = "tautline:placestations", requests.placing(settings, axis)
            parameters.update(OUTPUT="TEMPORARY_OUTPUT", REJECTED="TEMPORARY_OUTPUT")
        else:
            entry, parameters = "tautline:measurestations", requests.measuring(settings, axis)
            parameters["OUTPUT"] = "TEMPORARY_OUTPUT"
        try:
            self._busy(toolbox.start(entry, parameters, self._previewed, trial=True))
        except toolbox.Refused as error:
            self._refused(error.refusal.text, error.refusal.keys)

    def _previewed(self, done, refusal):
        self._running = None
        if done is None:
            self._refused(refusal.text, refusal.keys)
            self.changed.emit()
            return
        layer = done.context.getMapLayer(done.results["OUTPUT"])
        rejected = done.context.getMapLayer(done.results.get("REJECTED", ""))
        self.found.rejected = rejected.featureCount() if rejected is not None else 0
        settings = self.settings
        height_field = "height" if self.found.is_list else settings.height_field
        chainage_unit = settings.chainage_unit or settings.height_unit
        doubts, readings = done.feedback.of_kind(DOUBT), done.feedback.of_kind(READING)

        def ended(looks, error):
            if error is not None:
                self._ended_badly(error)
                return
            self._understood(looks, doubts, readings)

        def look():
            return looks_at(layer, height_field, settings.height_unit, chainage_unit)

        self._busy(toolbox.aside(tr("Looking at the heights"), look, ended))
        # Until it has ended, its layers live in the run's context.
        self._running.kept.append(done)

    def _understood(self, looks, doubts, readings):
        found, settings = self.found, self.settings
        self._running, found.busy, found.looks = None, False, looks
        with_stations = {look.name for look in looks}
        ends = [axis.ends for axis in found.axes if axis.name in with_stations]
        found.meet = len(ends) > 1 and len(meeting_axes(ends)) == 1
        heights = QgsProject.instance().mapLayer(settings.heights)
        found.heights += sentences.heights(looks, settings, heights.name() if heights is not None else "")
        found.heights += [("fact", reading.text) for reading in readings]
        found.heights += sentences.rejected(doubts)
        for doubt in doubts:
            if settings.drawn and doubt.code == NO_AXIS_NAMED:
                continue  # The drawn axis has no name to be named by.
            if doubt.code in (ROW_REJECTED, STATION_TWICE):
                continue  # Said above, in one sentence for all.
            words, answer = requests.in_panel_words(doubt.text), requests.answer_of(doubt.keys)
            if answer in ("height_unit", "chainage_unit"):
                found.beside[answer] = words
            else:
                found.heights.append(("doubt", words))
        found.beside.update(sentences.unit_doubts(looks, found.axes, settings))
        if not any(np.isfinite(look.heights).any() for look in looks):
            found.beside["height_field"] = tr("No station has a height; choose the column with the heights.")
        found.ready = "height_field" not in found.beside
        self.changed.emit()

    # --- how it ends

    def _busy(self, started):
        self._running, self.found.busy = started, True

    def _ended_badly(self, error):
        if not isinstance(error, InputError):
            self.found.busy = False
            raise error
        self._refused(worded(error), error.keys)
        self.changed.emit()

    def _refused(self, text, keys):
        self._running, self.found.busy = None, False
        words, answer = requests.in_panel_words(text), requests.answer_of(keys)
        if answer in ("", "heights", "place"):
            self.found.heights.append(("problem", words))
        elif answer == "axis":
            self.found.structure.append(("problem", words))
        else:
            self.found.beside[answer] = words
