"""The example: the sample scenario 'range' as a project of its own, run through the toolbox and ready to go on."""

import shutil
import tempfile
from pathlib import Path

from qgis.core import QgsProcessingException, QgsProject, QgsRasterLayer, QgsVectorLayer
from qgis.PyQt.QtWidgets import QFileDialog, QMessageBox

from ..algorithms.language.translation import tr
from ..algorithms.styles import axis_line
from . import example_guide, toolbox

SAMPLES = Path(__file__).resolve().parents[1] / "sample_layers" / "range"
FOLDER = "tautline_example"
DRAWING = "tautline:drawdeviations"
READ_ME = "read_me_first.html"
# The original and its name in the example. All vector layers come into the one GeoPackage.
FILES = {
    "axis.gpkg": "range.gpkg",
    "imagery.tif": "imagery.tif",
    "heights.csv": "heights.csv",
    "heights.csvt": "heights.csvt",
    "heights_later.csv": "heights_later.csv",
    "heights_later.csvt": "heights_later.csvt",
}


class ExampleFailed(Exception):
    """The example could not be opened; the text is one sentence that says why."""


def ask_place(window):
    """Ask where the example may be written; return the folder as text, '' where the user gave up."""
    box = QMessageBox(
        QMessageBox.Icon.Question,
        tr("Open the example"),
        tr("Where should the example be put?"),
        QMessageBox.StandardButton.NoButton,
        window,
    )
    box.setInformativeText(
        tr(
            "It gets a folder of its own with the project, the layers and the results, about 2 MB. A temporary folder "
            "is enough to look around."
        )
    )
    choose = box.addButton(tr("Choose a place…"), QMessageBox.ButtonRole.ActionRole)
    temporary = box.addButton(tr("Temporary folder"), QMessageBox.ButtonRole.AcceptRole)
    box.addButton(QMessageBox.StandardButton.Cancel)
    box.setDefaultButton(temporary)
    box.exec()
    if box.clickedButton() is choose:
        return QFileDialog.getExistingDirectory(window, tr("Place for the example"), str(Path.home()))
    return tempfile.mkdtemp(prefix="tautline_") if box.clickedButton() is temporary else ""


def _own_folder(place):
    """Make a new folder for the example in ``place``; an earlier example stays as it is."""
    folder, number = Path(place) / FOLDER, 1
    while folder.exists():
        number += 1
        folder = Path(place) / f"{FOLDER}_{number}"
    folder.mkdir()
    return folder


def _copy(folder):
    for original, name in FILES.items():
        # The contents only: originals that are read-only must not make read-only copies.
        shutil.copyfile(SAMPLES / original, folder / name)


def _source(folder, table):
    return f"{folder / 'range.gpkg'}|layername={table}"


def _destination(folder, table, geometry="geom"):
    return toolbox.geopackage_table(folder / "range.gpkg", table, geometry)


def _compute(folder):
    """Place the height list, fit the common plane, compare with the design and draw it, all by the toolbox; return the
    runs."""
    axis, stations = _source(folder, "axis"), _source(folder, "stations")
    runs = [
        toolbox.run(
            "tautline:placestations",
            {
                "INPUT": str(folder / "heights.csv"),
                "AXIS": axis,
                # Stated where the list is read: every later step on these stations takes both from there.
                "HEIGHT_UNIT": "metre",
                "UNDULATION": "field",
                "OUTPUT": _destination(folder, "stations"),
            },
        ),
        # 3 mm for a reading, 0.7 mm over 1 km of levelling: what the invented survey was made with.
        toolbox.run(
            "tautline:fitreference",
            {
                "STATIONS": stations,
                "AXIS": axis,
                "FIT": "plane",
                "SIGMA": 0.003,
                "SIGMA_KM": 0.7,
                "UNDULATION": "field",
                "REFERENCE": _destination(folder, "plane"),
                "OUTPUT": _destination(folder, "tested"),
                "ELLIPSE": _destination(folder, "ellipses"),
            },
        ),
        toolbox.run(
            "tautline:designheights",
            {
                "STATIONS": stations,
                "AXIS": axis,
                "UNDULATION": "field",
                # The axis was drawn by hand on the imagery: the line is judged by the stations themselves.
                "LINE": "fitted",
                "LINE_TOLERANCE": 0.01,
                "OUTPUT": _destination(folder, "residuals"),
                "SUMMARY": _destination(folder, "summary", ""),
            },
        ),
    ]
    if toolbox.has(DRAWING):
        runs.append(
            toolbox.run(
                DRAWING,
                {
                    "STATIONS": _source(folder, "residuals"),
                    "AXIS": axis,
                    # Narrow, and a strip for each sector between the runs: three runs leave little room at their hub.
                    "LONGEST_BAR": 220.0,
                    "SIDE": "left",
                    "DISTANCE": 260.0,
                    "STRIP_EXAGGERATION": 400.0,
                    "BARS": _destination(folder, "bars"),
                    "BAND": _destination(folder, "band"),
                    "STRIP": _destination(folder, "strip"),
                },
            )
        )
    return runs


def _drawn(folder, table, name):
    """A layer of drawdeviations; its style's name says by how much it exaggerates."""
    layer = QgsVectorLayer(_source(folder, table), name, "ogr")
    styles = layer.listStylesInDatabase()[2] if layer.isValid() else []
    if styles:
        layer.setName(styles[0])
    return layer


def _layers(folder):
    """Return the example's layers by key, the topmost first."""
    found = {
        "residuals": QgsVectorLayer(_source(folder, "residuals"), tr("Residuals"), "ogr"),
        "bars": None,
        "strip": None,
        "plane": QgsVectorLayer(_source(folder, "plane"), tr("Fitted plane"), "ogr"),
        "ellipses": QgsVectorLayer(_source(folder, "ellipses"), tr("Tangent and level points, 95 % ellipses"), "ogr"),
        "tested": QgsVectorLayer(_source(folder, "tested"), tr("Tested stations"), "ogr"),
        "stations": QgsVectorLayer(_source(folder, "stations"), tr("Placed stations"), "ogr"),
        "axis": QgsVectorLayer(_source(folder, "axis"), tr("Axis"), "ogr"),
        "band": None,
        "summary": QgsVectorLayer(_source(folder, "summary"), tr("Summary of residuals"), "ogr"),
        "heights": QgsVectorLayer(str(folder / "heights.csv"), tr("Height list"), "ogr"),
        "imagery": QgsRasterLayer(str(folder / "imagery.tif"), tr("Imagery"), "gdal"),
    }
    for key, name in (("bars", tr("Residual bars")), ("strip", tr("Profile strip")), ("band", tr("Tolerance band"))):
        if toolbox.has(DRAWING):
            found[key] = _drawn(folder, key, name)
        else:
            del found[key]
    for layer in found.values():
        if not layer.isValid():
            raise ExampleFailed(tr("Its layer '{}' cannot be read.").format(layer.name()))
    found["axis"].setRenderer(axis_line.axis_renderer())
    found["axis"].setLabeling(axis_line.axis_labeling("name"))
    found["axis"].setLabelsEnabled(True)
    found["axis"].setDisplayExpression('"name"')
    return found


def _group(project, found):
    """Put the layers into a group of their own on top of the project."""
    group = project.layerTreeRoot().insertGroup(0, tr("Example: range"))
    for key, layer in found.items():
        project.addMapLayer(layer, False)
        node = group.addLayer(layer)
        node.setExpanded(key == "residuals")
        # The same points as the residuals: two symbols and two labels in one place say less than one.
        node.setItemVisibilityChecked(key not in ("stations", "tested"))


def show_map(iface, found):
    """Zoom to the structure, and make the stations the layer that forms choose first."""
    # Now, not when the host next comes to it: with its first layers it zooms to all of the imagery.
    iface.layerTreeCanvasBridge().setCanvasLayers()
    extent = found["axis"].extent()
    for key in ("bars", "strip"):
        if key in found:
            extent.combineExtentWith(found[key].extent())
    extent.scale(1.06 if "strip" in found else 1.15)
    # The message lies over the map's upper edge.
    extent.setYMaximum(extent.yMaximum() + 0.12 * extent.height())
    iface.mapCanvas().setExtent(extent)
    iface.mapCanvas().refresh()
    iface.setActiveLayer(found["residuals"])


def prepared(place):
    """Copy and compute the example in a new folder in ``place``; return folder, runs and layers by key.

    Leaves nothing behind where it fails. Raises ExampleFailed.
    """
    folder = None
    try:
        folder = _own_folder(place)
        _copy(folder)
        (folder / READ_ME).write_text(example_guide.page(toolbox.has(DRAWING)), encoding="utf-8")
        return folder, _compute(folder), _layers(folder)
    except (OSError, QgsProcessingException, ExampleFailed) as error:
        if folder is not None:
            shutil.rmtree(folder, ignore_errors=True)
        reason = getattr(error, "strerror", None) or str(error)
        raise ExampleFailed(tr("The example could not be made in '{}': {}").format(place, reason)) from None


def open_example(iface, place):
    """Open the example as a new project in a new folder in ``place`` and return its layers by key.

    The host asks what to do with a changed project; where the user gives up then, nothing has changed and None is
    returned. Raises ExampleFailed.
    """
    folder, runs, found = prepared(place)
    if not iface.newProject(True):
        found.clear()
        shutil.rmtree(folder, ignore_errors=True)
        return None
    for run in runs:
        toolbox.note(run)
    project = QgsProject.instance()
    project.setCrs(found["axis"].crs(), True)
    project.setTitle(tr("Example: range"))
    _group(project, found)
    show_map(iface, found)
    if not project.write(str(folder / "range.qgz")):
        raise ExampleFailed(tr("The example's project could not be saved in '{}': {}").format(folder, project.error()))
    return found


def story():
    """One sentence on what the map shows."""
    return tr("\u25b2 stand over 10 mm too high, \u25bc too low; more in 'Read me first'.")


def run_again(found):
    """Parameters that repeat the example's main run in the form; design and tolerance are those of the axis layer."""
    return {
        "STATIONS": found["stations"].id(),
        "AXIS": found["axis"].id(),
        "UNDULATION": "field",
        "DESIGN": "inclined",
        "TOLERANCE": 0.01,
        "LINE": "fitted",
        "LINE_TOLERANCE": 0.01,
    }
