"""One slide of the stations shown: asks for its file, makes it in the background, and says where it is."""

from pathlib import Path

from qgis.core import Qgis, QgsCoordinateTransform, QgsCsException, QgsProject, QgsRasterLayer
from qgis.PyQt.QtWidgets import QFileDialog

from ..algorithms.language.translation import tr
from . import follow_up_forms, toolbox
from .message_bar import tell

REPORT = "tautline:reviewreport"


def ask(parent, layer, axis=""):
    """Ask where to keep the slide of ``layer`` and make it. ``parent``: a panel with the host's ``iface``; ``axis``:
    whose profile is shown, '' for that of the greatest residual."""
    if layer is None:
        return
    name = " ".join(filter(None, (layer.name(), axis, tr("slide")))).replace("/", "-")
    kinds = f"{tr('PNG picture')} (*.png);;{tr('PDF page')} (*.pdf)"
    path, kind = QFileDialog.getSaveFileName(parent, tr("Save one slide"), str(Path.home() / f"{name}.png"), kinds)
    if not path:
        return
    if Path(path).suffix.lower() not in (".png", ".pdf"):
        path += ".pdf" if "*.pdf" in kind else ".png"
    make(parent, layer, path, axis)


def make(parent, layer, path, axis=""):
    """Make the slide in a task of the host's; return the Started, None where it cannot begin."""
    bar = parent.iface.messageBar()

    def ended(_done, refusal):
        if refusal is None:
            tell(bar, tr("The slide is saved as {}.").format(path), Qgis.MessageLevel.Success, 6)
        else:
            tell(bar, refusal.text, Qgis.MessageLevel.Critical)

    try:
        started = toolbox.start(REPORT, parameters(parent.iface.mapCanvas(), layer, path, axis), ended)
    except toolbox.Refused as error:
        ended(None, error.refusal)
        return None
    # It lives as long as the panel that asked for it.
    parent.destroyed.connect(lambda: started.forget())
    return started


def parameters(canvas, layer, path, axis):
    """Parameters of the report for the slide alone, with the imagery that the map shows under the stations."""
    known = follow_up_forms.known(REPORT, layer)
    return {**known, "IMAGERY": _imagery(canvas, layer), "SLIDE": str(path), "SLIDE_AXIS": axis or None}


def _imagery(canvas, layer):
    """The raster that lies uppermost of those which the map shows and which meet the stations; None without one."""
    for one in canvas.layers():
        if not isinstance(one, QgsRasterLayer):
            continue
        there = QgsCoordinateTransform(layer.crs(), one.crs(), QgsProject.instance())
        try:
            if one.extent().intersects(there.transformBoundingBox(layer.extent())):
                return one.id()
        except QgsCsException:
            continue
    return None
