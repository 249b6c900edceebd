"""What the panel says and shows when a run has ended."""

from qgis.core import QgsCoordinateTransform, QgsProcessingContext, QgsProcessingFeedback, QgsProject, QgsRectangle

from ...algorithms.boundary.cells import as_text
from ...algorithms.core.errors import InputError
from ...algorithms.core.units import metres_per
from ...algorithms.entry import messages
from ...algorithms.entry.layer_records import record_of_layer
from ...algorithms.entry.request import Request
from ...algorithms.language.height_text import amounts_for
from ...algorithms.language.number_text import counted
from ...algorithms.language.stored_words import capitalised
from ...algorithms.language.translation import tr
from ...algorithms.report.data import read_reviewed, structure_name
from ...algorithms.report.findings import findings
from .. import toolbox
from . import verdicts
from .requests import in_panel_words

# What stands above in sentences of the panel's own: rows that were rejected, stations there twice or beyond the ends.
_SAID = (messages.ROW_REJECTED, messages.STATION_TWICE, messages.BEYOND_ENDS)
# More stations than these are judged by the report, in a thread of its own; here only their numbers are told.
_MOST_JUDGED = 100_000
# What a run draws along the structure; an ellipse may lie far from it.
_DRAWN = ("residuals", "bars", "band", "strip", "lateral_bars", "plan")
_REPORT = "tautline:reviewreport"


def outcome_sentences(outcome, settings, understood):
    """(kind, sentence) of the Outcome: verdicts first, then what else was doubted or failed."""
    told = _of_residuals(outcome, settings)
    if "curvature" in outcome.layers:
        told += verdicts.of_shapes(_shapes(outcome.layers["curvature"]), _designs(settings, understood))
    told += verdicts.of_fits(outcome.said) + verdicts.of_blunders(outcome.said)
    known = (*verdicts.VERDICT_CODES, *(_SAID if understood.looks else ()))
    told += [("doubt", one.text) for one in outcome.doubts if one.code not in known]
    words = [(kind, in_panel_words(text)) for kind, text in told]
    return [(kind, capitalised(text)) for kind, text in words] + [("problem", one) for one in outcome.failed]


def _of_residuals(outcome, settings):
    """The verdict on the residuals, as the report gives it."""
    numbers, unit = outcome.numbers, settings.height_unit
    count = int(numbers.get("COUNT") or 0)
    if not count:
        return [("doubt", tr("No station has a residual; the design heights are computed."))]
    if count > _MOST_JUDGED:
        greatest = amounts_for(unit).with_unit(numbers["MAX_ABS"] * metres_per(unit))
        total = counted(count, tr("station"), tr("stations"))
        text = tr("{} of {} within the tolerance, greatest residual {}; the report judges them.")
        return [("todo", text.format(int(numbers["WITHIN"]), total, greatest))]
    found = _findings(outcome.layers["residuals"], outcome.layers.get("tested_stations"))
    by_fit = [one.about[1] for one in outcome.said if one.code == messages.STRETCH_MOVED]
    structure = structure_name(found.reviewed)
    return verdicts.of_residuals(found, structure, by_fit) + verdicts.of_line(found, structure)


def _findings(residuals, tested):
    """The report's Findings of the layers of a run."""
    layers = {"STATIONS": residuals, **({} if tested is None else {"TESTED": tested})}
    context = QgsProcessingContext()
    context.setProject(QgsProject.instance())
    records = {key: [record_of_layer(layer)] for key, layer in layers.items()}
    asked = Request(toolbox.entry(_REPORT), layers, context, QgsProcessingFeedback(False), records)
    try:
        return findings(read_reviewed(asked, records["STATIONS"][0]))
    except InputError:
        if tested is None:
            raise
        return _findings(residuals, None)  # The fit was of other stations; its own sentences tell of it.


def _shapes(layer):
    """Rows of the table of curvatures."""
    return [{key: as_text(row[key]) for key in ("axis", "verdict", "sentence")} for row in layer.getFeatures()]


def _designs(settings, understood):
    """{axis: the design it was compared with}; under '' that of all, None where they differ."""
    found = {axis.name: axis.design or settings.design for axis in understood.axes}
    every = set(found.values())
    # A leg has a name of its own: its axis' design is known where all have the same.
    return {**found, "": every.pop() if len(every) == 1 else None}


def bring_into_view(iface, layers):
    """Zoom to what a run has drawn, {table: layer}, where the map does not show all of it."""
    layer = layers["residuals"]
    project, canvas = QgsProject.instance(), iface.mapCanvas()
    if not project.crs().isValid():
        project.setCrs(layer.crs())
    iface.layerTreeCanvasBridge().setCanvasLayers()
    extent = QgsRectangle()
    for drawn in (layers[table] for table in _DRAWN if table in layers):
        transform = QgsCoordinateTransform(drawn.crs(), project.crs(), project)
        extent.combineExtentWith(transform.transformBoundingBox(drawn.extent()))
    if not canvas.extent().contains(extent) or canvas.extent().width() > 20 * max(extent.width(), extent.height()):
        extent.scale(1.15)
        canvas.setExtent(extent)
    canvas.refresh()
    iface.setActiveLayer(layer)
