"""What the panel says and shows when a run has ended."""

from qgis.core import QgsCoordinateTransform, QgsProject

from ...algorithms.core.units import metres_per
from ...algorithms.entry import messages
from ...algorithms.language.height_text import amounts_for
from ...algorithms.language.number_text import counted
from ...algorithms.language.translation import tr
from .requests import in_panel_words

# What stands above in sentences of the panel's own: rows that were rejected, stations there twice or beyond the ends.
_SAID = (messages.ROW_REJECTED, messages.STATION_TWICE, messages.BEYOND_ENDS)


def outcome_sentences(outcome, settings, understood):
    """(kind, sentence) of the Outcome: the numbers, what else failed, and the caution."""
    numbers, unit = outcome.numbers, settings.height_unit
    count = int(numbers.get("COUNT") or 0)
    if not count:
        return [("doubt", tr("No station has a residual; the design heights are computed."))]
    greatest = tr("greatest residual {}").format(amounts_for(unit).with_unit(numbers["MAX_ABS"] * metres_per(unit)))
    judged = {feature["status"] for feature in outcome.layers["residuals"].getFeatures()} if count <= 100_000 else set()
    total = counted(count, tr("station"), tr("stations"))
    if judged & {"no tolerance"} and not judged & {"within", "high", "low"}:
        told = [("fact", tr("{} compared, {}. Without a tolerance none is judged.").format(total, greatest))]
    else:
        within = int(numbers["WITHIN"])
        sentence = tr("{} of {} within the tolerance, {}.").format(within, total, greatest)
        told = [("fact" if within == count else "doubt", sentence)]
    new = [doubt for doubt in outcome.doubts if not (understood.looks and doubt.code in _SAID)]
    told += [("doubt", in_panel_words(doubt.text)) for doubt in new[:3]]
    told += [("problem", text) for text in outcome.failed]
    return told


def _extent(layer, project):
    """Extent of a layer on the project's map."""
    return QgsCoordinateTransform(layer.crs(), project.crs(), project).transformBoundingBox(layer.extent())


def bring_into_view(iface, layer, others=()):
    """Zoom to the layer where the map does not show all of it; ``others``: what else the run has made and the map
    draws, such as the strip beside the axis."""
    project, canvas = QgsProject.instance(), iface.mapCanvas()
    if not project.crs().isValid():
        project.setCrs(layer.crs())
    iface.layerTreeCanvasBridge().setCanvasLayers()
    extent = _extent(layer, project)
    drawn = set(canvas.layers())
    for other in others:
        if other is not layer and other in drawn and other.isSpatial() and other.featureCount():
            extent.combineExtentWith(_extent(other, project))
    if not canvas.extent().contains(extent) or canvas.extent().width() > 20 * max(extent.width(), extent.height()):
        extent.scale(1.15)
        canvas.setExtent(extent)
    canvas.refresh()
    iface.setActiveLayer(layer)
