"""What leaves the desk: forms of report, schedule and comparison, filled with what is known of the stations shown."""

import os

from qgis.core import QgsProcessingContext, QgsProcessingUtils, QgsProject, QgsRasterLayer, QgsVectorLayer
from qgis.PyQt.QtWidgets import QMenu

from ..algorithms.boundary.output_places import place_of_layer, same_place
from ..algorithms.entry.layer_records import record_of_layer
from ..algorithms.entry.recorded_system import recorded_kind
from ..algorithms.language.translation import tr
from . import toolbox
from .decisions import decision_store

# Fields by which a layer of the project is known for what another run has left.
_SIGNS = {
    "SUMMARY": {"design", "max_abs", "max_at"},
    "REFERENCE": {"nx", "ny", "nz", "h0"},
    "TESTED": {"w", "redund", "flag", "chainage"},
    "CURVATURE": {"factor", "verdict", "factor_lo"},
}


def _entries():
    return (
        ("tautline:reviewreport", tr("Review &report…")),
        ("tautline:scheduleadjustments", tr("Adjustment &schedule…")),
        ("tautline:comparesurveys", tr("&Compare with another survey…")),
        ("tautline:drawdeviations", tr("&Draw deviations…")),
    )


def menu(parent, layer, open_form):
    """A menu of the follow-up forms. ``layer()``: the stations as they are when an item is chosen, or None;
    ``open_form(parameters, entry)`` opens a form."""
    made = QMenu(parent)
    for entry, text in _entries():
        if toolbox.has(entry):
            action = made.addAction(text)
            action.setData(entry)
            action.triggered.connect(lambda _checked=False, entry=entry: open_form(known(entry, layer()), entry))
    return made


def known(entry, layer):
    """Parameters of the form of ``entry`` for the stations in ``layer``; what is not certain is left to the user."""
    if layer is None:
        return {}
    algorithm = toolbox.entry(entry)
    asked = {definition.name() for definition in algorithm.parameterDefinitions()}
    found = {
        "SURVEYS": [layer.id()],
        "STATIONS": layer.id(),
        "AXIS": _recorded_axis(layer),
        "DECISIONS": _decisions(layer),
        "IMAGERY": _imagery(),
        **_siblings(layer),
    }
    if "STATIONS" in asked:
        found.update(_recorded_units(layer))
    return {key: value for key, value in found.items() if key in asked and value}


def _recorded_units(layer):
    """Units and height system as the record says; of several surveys each has its own."""
    record = record_of_layer(layer)
    return {
        "HEIGHT_UNIT": record.height_unit,
        "CHAINAGE_UNIT": record.chainage_unit,
        "UNDULATION": recorded_kind(record),
    }


def _recorded_axis(layer):
    """The project's layer that the recorded run took for the axis, else its source where it can still be read."""
    source = record_of_layer(layer).parameter("AXIS")
    # The context owns what it has opened: it must live as long as the layer is looked at.
    context = QgsProcessingContext()
    axis = QgsProcessingUtils.mapLayerFromString(source, context) if source else None
    if axis is None:
        return None
    place = place_of_layer(axis, None)
    for other in QgsProject.instance().mapLayers().values():
        if isinstance(other, QgsVectorLayer) and other.isSpatial() and same_place(place, place_of_layer(other, None)):
            return other.id()
    return source


def _decisions(layer):
    place = decision_store.place_of(layer)
    return f"{place}|layername=decisions" if place and os.path.isfile(place) else None


def _imagery():
    """The one raster of the project; of several none, since only the user knows which is meant."""
    rasters = [one.id() for one in QgsProject.instance().mapLayers().values() if isinstance(one, QgsRasterLayer)]
    return rasters[0] if len(rasters) == 1 else None


def _siblings(layer):
    """Results of other runs, known by their fields, where the project has one of a kind."""
    found = {}
    for key, signs in _SIGNS.items():
        alike = [
            one.id()
            for one in QgsProject.instance().mapLayers().values()
            if isinstance(one, QgsVectorLayer) and one is not layer and signs <= set(one.fields().names())
        ]
        found[key] = alike[0] if len(alike) == 1 else None
    return found
