"""Styles of the output layers: put on a layer, saved into its GeoPackage, or put on by the desktop after a run."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from qgis.core import (
    QgsDataSourceUri,
    QgsExpressionContextUtils,
    QgsProcessingLayerPostProcessorInterface,
    QgsProviderRegistry,
    QgsVectorLayer,
)

from .fields import (
    BAND,
    BARS,
    CHANGES,
    COMPARED,
    CONVERTED,
    COVARIANCE,
    CURVATURE,
    DESIGNED,
    ELLIPSE,
    FITTED,
    GENERATED,
    GEOID_ALONG,
    LEVELLED,
    LINES,
    MEASURED,
    MISCLOSURES,
    MOTIONS,
    PLACED,
    REDUCED,
    REFERENCE,
    REJECTED,
    SCHEDULED,
    STRIP,
    SUMMARY,
    UNIT_LABELS,
    UNMATCHED,
)
from .styles import change_look, deviations, level_lines, reference_marks, schedule_look
from .styles.review_labels import review_labeling
from .styles.review_symbols import FULL_SIZE_VARIABLE, residual_at_full_size, review_renderer
from .styles.review_tip import review_tip
from .styles.station_marks import station_labeling, station_renderer, station_tip
from .styles.table_columns import name_columns, order_columns, own_fields

RECORD_PROPERTY = "tautline/record"

_FIELDS = {
    "stations_review": DESIGNED,
    "stations": tuple(dict.fromkeys(PLACED + GENERATED + MEASURED)),
    "converted": CONVERTED,
    "summary": SUMMARY,
    "rejected": REJECTED,
    "deviation_bars": BARS,
    "tolerance_band": BAND,
    "profile_strip": STRIP,
    "schedule": SCHEDULED,
    "compared": COMPARED,
    "changes": CHANGES,
    "unmatched": UNMATCHED,
    "motions": MOTIONS,
    "fitted": FITTED,
    "reference": REFERENCE,
    "ellipse": ELLIPSE,
    "curvature": CURVATURE,
    "reduced": REDUCED,
    "levelled": LEVELLED,
    "level_lines": LINES,
    "misclosures": MISCLOSURES,
    "covariance": COVARIANCE,
    "geoid_along": GEOID_ALONG,
}
_DISPLAY = {
    "deviation_bars": "station",
    "tolerance_band": "axis",
    "profile_strip": "label",
    "stations_review": "station",
    "stations": "station",
    "converted": "height_geo",
    "summary": "axis",
    "rejected": "reason",
    "fitted": "station",
    "reference": "name",
    "ellipse": "name",
    "curvature": "axis",
    "reduced": "from_pt",
    "levelled": "point",
    "level_lines": "from_pt",
    "misclosures": "path",
    "covariance": "point",
    "geoid_along": "station",
    "schedule": "station",
    "compared": "station",
    "changes": "station",
    "unmatched": "station",
    "motions": "axis",
}


class StyleNotSaved(RuntimeError):
    """The layer was written, but its style could not be saved beside it; the text says why."""


@dataclass(frozen=True)
class StyleSpec:
    """What a layer's style depends on.

    ``kind`` is one of the keys of ``_FIELDS``; ``title`` the layer's name in the desktop and the style's name in a
    GeoPackage; units are 'metre', 'foot' or 'us_foot'; ``tolerance`` is in the height unit, None without one;
    ``record`` is the record of the run (JSON) or ''. Raises ValueError for an unknown kind or unit, an empty title or a
    negative tolerance.
    """

    kind: str
    title: str
    height_unit: str = "metre"
    chainage_unit: str = "metre"
    tolerance: float | None = None
    record: str = ""
    # Of drawn deviations: how many times larger heights are, the side of those built high, what the strip starts from.
    exaggeration: float | None = None
    high_side: str = "right"
    view: str = ""

    def __post_init__(self):
        if self.kind not in _FIELDS:
            raise ValueError(f"unknown kind of style: {self.kind}")
        if not self.title:
            raise ValueError("a style needs a title")
        for unit in (self.height_unit, self.chainage_unit):
            if unit not in UNIT_LABELS:
                raise ValueError(f"unknown unit: {unit}")
        if self.tolerance is not None and not self.tolerance >= 0:
            raise ValueError(f"the tolerance is {self.tolerance}; it cannot be negative")


def _dress_review(layer, spec, _own):
    full_size = residual_at_full_size(layer, spec.tolerance)
    QgsExpressionContextUtils.setLayerVariable(layer, FULL_SIZE_VARIABLE, full_size)
    layer.setRenderer(review_renderer(layer, spec.tolerance))
    layer.setLabeling(review_labeling(layer.fields(), spec.height_unit))
    layer.setLabelsEnabled(True)
    layer.setMapTipTemplate(review_tip(layer.fields(), spec.height_unit))


def _dress_stations(layer, spec, own):
    layer.setRenderer(station_renderer())
    layer.setLabeling(station_labeling(layer.fields()))
    layer.setLabelsEnabled(True)
    layer.setMapTipTemplate(station_tip(own, spec.height_unit, spec.chainage_unit))


def _dress_fitted(layer, spec, _own):
    layer.setRenderer(reference_marks.fitted_renderer(layer.fields()))
    layer.setLabeling(reference_marks.fitted_labeling(layer.fields(), spec.height_unit))
    layer.setLabelsEnabled(True)
    layer.setMapTipTemplate(reference_marks.fitted_tip(layer.fields(), spec.height_unit))


def _dress_reference(layer, spec, _own):
    layer.setRenderer(reference_marks.reference_renderer())
    layer.setLabeling(reference_marks.reference_labeling(layer.fields()))
    layer.setLabelsEnabled(True)
    layer.setMapTipTemplate(reference_marks.reference_tip(layer.fields(), spec.height_unit))


def _dress_ellipse(layer, _spec, _own):
    layer.setRenderer(reference_marks.ellipse_renderer())


def _dress_reduced(layer, _spec, _own):
    layer.setRenderer(level_lines.reduced_renderer())


def _dress_levelled(layer, spec, _own):
    layer.setRenderer(level_lines.height_renderer(layer.fields()))
    layer.setLabeling(level_lines.height_labeling(layer.fields(), spec.height_unit))
    layer.setLabelsEnabled(True)
    layer.setMapTipTemplate(level_lines.height_tip(layer.fields(), spec.height_unit))


def _dress_level_lines(layer, spec, _own):
    layer.setRenderer(level_lines.line_renderer(layer.fields()))
    layer.setLabeling(level_lines.line_labeling(layer.fields()))
    layer.setLabelsEnabled(True)
    layer.setMapTipTemplate(level_lines.line_tip(layer.fields(), spec.height_unit))


def _dress_schedule(layer, spec, _own):
    layer.setRenderer(schedule_look.schedule_renderer(layer))
    layer.setLabeling(schedule_look.schedule_labeling(layer, spec.height_unit))
    layer.setLabelsEnabled(True)
    layer.setMapTipTemplate(schedule_look.schedule_tip(layer.fields(), spec.height_unit))


def _dress_compared(layer, spec, _own):
    layer.setRenderer(change_look.change_renderer(layer))
    layer.setLabeling(change_look.change_labeling(layer, spec.height_unit))
    layer.setLabelsEnabled(True)
    layer.setMapTipTemplate(change_look.change_tip(layer.fields(), spec.height_unit))


# What draws the layers of each kind; tables need nothing.
_DRESSERS = {
    "deviation_bars": deviations.dress_bars,
    "tolerance_band": deviations.dress_band,
    "profile_strip": deviations.dress_strip,
    "stations_review": _dress_review,
    "stations": _dress_stations,
    "converted": _dress_stations,
    "fitted": _dress_fitted,
    "reference": _dress_reference,
    "ellipse": _dress_ellipse,
    "schedule": _dress_schedule,
    "compared": _dress_compared,
    "reduced": _dress_reduced,
    "levelled": _dress_levelled,
    "level_lines": _dress_level_lines,
    "geoid_along": _dress_stations,
}


def dress(layer, spec):
    """Give ``layer`` (QgsVectorLayer) the style that ``spec`` (StyleSpec) asks for.

    Symbols, labels and map tip for points; for every layer aliases with units, decimals and order of the columns and,
    as a custom property, the record of the run. The layer's name stays.
    """
    own = own_fields(layer.fields(), _FIELDS[spec.kind])
    if layer.isSpatial() and spec.kind in _DRESSERS:
        _DRESSERS[spec.kind](layer, spec, own)
    name_columns(layer, own, spec.height_unit, spec.chainage_unit)
    order_columns(layer, own)
    if layer.fields().indexOf(_DISPLAY[spec.kind]) >= 0:
        layer.setDisplayExpression(f'"{_DISPLAY[spec.kind]}"')
    layer.setCustomProperty(RECORD_PROPERTY, spec.record)


def _table(destination):
    """Return (path, table) that ``destination`` names; the table is '' where only a file is named."""
    if destination.startswith("ogr:"):
        uri = QgsDataSourceUri(destination[len("ogr:") :])
        return uri.database(), uri.table()
    parts = QgsProviderRegistry.instance().decodeUri("ogr", destination)
    return parts.get("path") or "", parts.get("layerName") or ""


def geopackage_layer(destination):
    """Return the written table as a new QgsVectorLayer, or None where ``destination`` is not in a GeoPackage.

    ``destination`` is a file's path, with or without ``|layername=``, or the host's ``ogr:dbname='..' table=".."``.
    """
    path, table = _table(destination)
    if Path(path).suffix.lower() != ".gpkg" or not Path(path).is_file():
        return None
    # A plain path is written as a table of the file's name; a second output may have joined it in the same file.
    for source in (f"{path}|layername={table or Path(path).stem}", "" if table else path):
        layer = QgsVectorLayer(source, table or Path(path).stem, "ogr") if source else None
        if layer is not None and layer.isValid():
            return layer
    return None


def _delete_style(layer, name):
    number, ids, names, _descriptions, _message = layer.listStylesInDatabase()
    # Styles of this table come first; the rest of the list are those of other tables.
    for style_id, style_name in list(zip(ids, names))[: max(number, 0)]:
        if style_name == name:
            deleted, message = layer.deleteStyleFromDatabase(style_id)
            if not deleted:
                raise StyleNotSaved(message)


def save_into_geopackage(destination, spec):
    """Save the style of ``spec`` as the default of the table ``destination`` (see ``geopackage_layer``).

    Returns False, and does nothing, where it is not in a GeoPackage; only there can a file hold a style. The layer must
    have been written and closed. Works in any thread. Raises StyleNotSaved.
    """
    layer = geopackage_layer(destination)
    if layer is None:
        return False
    dress(layer, spec)
    # Up to 3.22 the host asks in a window before it replaces a style, and waits for ever where there is none.
    _delete_style(layer, spec.title)
    message = layer.saveStyleToDatabase(spec.title, "", True, "")
    if message:
        raise StyleNotSaved(message)
    return True


class LayerDresser(QgsProcessingLayerPostProcessorInterface):
    """Dresses one layer when the desktop loads it; the host calls it in the main thread."""

    # The host keeps no reference of its own: an object nobody holds is never called. By destination, so that a run
    # that was cancelled leaves nothing that piles up.
    waiting = {}

    def __init__(self, destination, spec):
        super().__init__()
        self._destination = destination
        self._spec = spec
        LayerDresser.waiting[destination] = self

    def postProcessLayer(self, layer, context, feedback):  # noqa: N802 - the host calls it by this name
        """Put the style on ``layer``: the one saved in its GeoPackage, else a new one."""
        LayerDresser.waiting.pop(self._destination, None)
        if not isinstance(layer, QgsVectorLayer):
            return
        _message, loaded = layer.loadDefaultStyle() if layer.storageType() == "GPKG" else ("", False)
        if not loaded or layer.customProperty(RECORD_PROPERTY, "") != self._spec.record:
            dress(layer, self._spec)
        layer.setName(self._spec.title)


def attach(context, destination, spec):
    """Have the layer ``destination`` dressed when the desktop loads it; return whether it will load it."""
    if not context.willLoadLayerOnCompletion(destination):
        return False
    context.layerToLoadOnCompletionDetails(destination).setPostProcessor(LayerDresser(destination, spec))
    return True
