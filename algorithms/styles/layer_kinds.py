"""The looks of the output layers: which fields are its own, how it is drawn, by the kind of layer."""

from dataclasses import dataclass

from qgis.core import QgsExpressionContextUtils

from ..boundary.fields import (
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
    UNMATCHED,
)
from ..language.units import UNIT_LABELS
from . import change_look, deviations, level_lines, reference_marks, schedule_look
from .review_labels import review_labeling
from .review_symbols import FULL_SIZE_VARIABLE, residual_at_full_size, review_renderer
from .review_tip import review_tip
from .station_marks import station_labeling, station_renderer, station_tip
from .table_columns import name_columns, order_columns, own_fields

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
