"""What leaves the desk: forms of report, schedule and comparison, filled with what is known of the stations shown."""

import os

from qgis.core import QgsProcessingContext, QgsProcessingUtils, QgsProject, QgsRasterLayer, QgsVectorLayer
from qgis.PyQt.QtWidgets import QMenu

from ..algorithms.boundary.input_fields import field_indices
from ..algorithms.boundary.output_places import place_of_layer, same_place
from ..algorithms.entry.layer_records import record_of_layer
from ..algorithms.entry.recorded_chain import place_key
from ..algorithms.entry.recorded_system import recorded_kind
from ..algorithms.language.translation import tr
from ..algorithms.structure.reviewed_stations import units_of
from . import toolbox
from .decisions import decision_store

DESIGN = "tautline:designheights"
# Fields by which a layer of the project is known for what another run has left.
_SIGNS = {
    "SUMMARY": {"design", "max_abs", "max_at"},
    "REFERENCE": {"nx", "ny", "nz", "h0"},
    "TESTED": {"w", "redund", "flag", "chainage"},
    "CURVATURE": {"factor", "verdict", "factor_lo"},
}
# What may rest on other stations than those that are judged by it.
_OF_OTHERS = ("REFERENCE",)


def _entries():
    return (
        ("tautline:reviewreport", tr("Review &report…")),
        ("tautline:scheduleadjustments", tr("Adjustment &schedule…")),
        ("tautline:comparesurveys", tr("&Compare with another survey…")),
        ("tautline:drawdeviations", tr("&Draw deviations…")),
    )


def menu(parent, layer, open_form, save_slide=None):
    """A menu of the follow-up forms. ``layer()``: the stations as they are when an item is chosen, or None;
    ``open_form(parameters, entry)`` opens a form; ``save_slide(layer)`` asks for the file of a slide."""
    made = QMenu(parent)
    for entry, text in _entries():
        if toolbox.has(entry):
            action = made.addAction(text)
            action.setData(entry)
            action.triggered.connect(lambda _checked=False, entry=entry: open_form(known(entry, layer()), entry))
    if save_slide is not None:
        made.addSeparator()
        action = made.addAction(tr("One s&lide…"))
        action.setObjectName("tautline_slide")
        action.triggered.connect(lambda: save_slide(layer()))
    return made


def known(entry, layer):
    """Parameters of the form of ``entry`` for the stations in ``layer``; what is not certain is left to the user."""
    if layer is None:
        return {}
    algorithm = toolbox.entry(entry)
    asked = {definition.name() for definition in algorithm.parameterDefinitions()}
    found = {
        "SURVEYS": [_survey(layer)],
        "STATIONS": layer.id(),
        "AXIS": _recorded_layer(layer, "AXIS"),
        "DECISIONS": _decisions(layer),
        "IMAGERY": _imagery(),
        **_siblings(layer),
    }
    if "STATIONS" in asked:
        found.update(_recorded_units(layer))
    return {key: value for key, value in found.items() if key in asked and value}


def _survey(layer):
    """The layer of one survey that a comparison begins with: the placed stations that the run has read, where the
    project has them with what a comparison reads; the later survey will be such a layer. Else the layer itself."""
    record = record_of_layer(layer)
    stations = QgsProject.instance().mapLayer(_recorded_layer(layer, "STATIONS") or "")
    if stations is None or (record.parameter("HEIGHT_FIELD") or "height").lower() != "height":
        return layer.id()
    fields = field_indices(stations)
    placed = "height" in fields and ("chainage" in fields or "station" in fields)
    return stations.id() if placed else layer.id()


def _recorded_units(layer):
    """Units and height system as the record says; of several surveys each has its own."""
    record = record_of_layer(layer)
    return {
        "HEIGHT_UNIT": record.height_unit,
        "CHAINAGE_UNIT": record.chainage_unit,
        "UNDULATION": recorded_kind(record),
    }


# What a design heights form takes from the run that made the stations, besides its layers and its design.
_KEPT = ("HEIGHT_FIELD", "STATION_AXIS_FIELD", "AXIS_FIELD", "MAX_DISTANCE", "CHAINAGE_START", "CHAINAGE_HEIGHT")
_KEPT += ("EQUATIONS", "UNDULATION", "UNDULATION_FIELD", "UNDULATION_VALUE", "GEOID", "GEOID_BETWEEN", "TOLERANCE")


def chord(layer, controls, axis):
    """(parameters, doubt) of the form of designheights for the stations of ``layer`` and the chord through two core
    Controls on the axis named ``axis``; ``doubt``: '' or a sentence on what the form cannot keep others from."""
    record = record_of_layer(layer)
    units = units_of(record)
    kept = {key: record.parameters[key] for key in _KEPT if record.parameters.get(key) not in (None, "")}
    found = {
        **(kept if record.entry == DESIGN else {}),
        "STATIONS": layer.id(),
        "AXIS": _recorded_layer(layer, "AXIS"),
        "HEIGHT_UNIT": units.height_name,
        "CHAINAGE_UNIT": units.chainage_name,
        "DESIGN": "chord",
    }
    stations = _recorded_layer(layer, "STATIONS")
    if record.entry == DESIGN and stations in QgsProject.instance().mapLayers():
        found["STATIONS"] = stations
    for letter, control in zip("AB", controls):
        found[f"CHAINAGE_{letter}"] = f"{control.chainage / units.chainage:.4f}"
        found[f"HEIGHT_{letter}"] = round(control.height / units.height, 6)
    return {key: value for key, value in found.items() if value is not None}, _overridden(found["AXIS"], axis)


def _overridden(axis_layer, axis):
    """A sentence where the axis layer states designs of its own, which go before the form; '' elsewhere."""
    layer = QgsProject.instance().mapLayer(axis_layer or "")
    if layer is None or "design" not in [field.name().lower() for field in layer.fields()]:
        return ""
    return tr(
        "Axis layer '{}' has a field 'design': what it states for {} takes precedence over the chord in the form. "
        "Clear it there, or use an axis without it."
    ).format(layer.name(), tr("axis '{}'").format(axis) if axis else tr("the axis"))


def _recorded_layer(layer, key):
    """The project's layer that the recorded run took for ``key``, else its source where it can still be read."""
    source = record_of_layer(layer).parameter(key)
    # A layer in memory is in no place; opened by its source it would be another, without rows.
    same = [other.id() for other in QgsProject.instance().mapLayers().values() if source and other.source() == source]
    if same:
        return same[0]
    # The context owns what it has opened: it must live as long as the layer is looked at.
    context = QgsProcessingContext()
    found = QgsProcessingUtils.mapLayerFromString(source, context) if source else None
    if found is None:
        return None
    place = place_of_layer(found, None)
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
    """Results of other runs, known by their fields, where the project has one of a kind, or one of those that were made
    from the same stations; of several alike none, since only the user knows which is meant. What was made from other
    stations is none of them."""
    found, own = {}, _stations_of(layer)
    for key, signs in _SIGNS.items():
        alike = [
            one
            for one in QgsProject.instance().mapLayers().values()
            if isinstance(one, QgsVectorLayer) and one is not layer and signs <= set(one.fields().names())
        ]
        if len(alike) > 1:
            alike = [one for one in alike if own & _stations_of(one)]
        elif key not in _OF_OTHERS:
            alike = [one for one in alike if not own or not _stations_of(one) or own & _stations_of(one)]
        found[key] = alike[0].id() if len(alike) == 1 else None
    return found


def _stations_of(layer):
    """Places of the stations that the recorded run of a layer has read: a set, empty where it is not known."""
    return {place_key(one.source) for one in record_of_layer(layer).inputs.get("STATIONS", ())}
