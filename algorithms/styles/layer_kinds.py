"""The kinds of output layers: which fields are a layer's own, what names its rows and how it is drawn."""

from dataclasses import dataclass, field
from typing import Callable, Optional

from qgis.core import QgsExpressionContextUtils

from ..boundary import fields as of
from ..language.units import UNIT_LABELS
from . import change_look, deviations, level_lines, reference_marks, schedule_look
from .record_property import RECORD_PROPERTY
from .review_labels import GREATEST_VARIABLE, review_labeling
from .review_symbols import FULL_SIZE_VARIABLE, residual_at_full_size, review_renderer
from .review_tip import review_tip
from .sizes import greatest
from .station_marks import station_labeling, station_renderer, station_tip
from .table_columns import name_columns, order_columns, own_fields


@dataclass(frozen=True)
class LayerKind:
    """One kind of output layer. ``fields``: names of its own fields in their order; ``display``: the one that names a
    row; ``apply``: called with layer, StyleSpec and own fields (QgsFields) to draw it, None for a table; ``titled``:
    {name: OutputField} of the fields that say another thing here than in other layers.
    """

    fields: tuple
    display: str
    apply: Optional[Callable] = None
    titled: dict = field(default_factory=dict)

    def title(self, name):
        """Title of one of its fields, without a unit."""
        return self.titled.get(name, of.FIELDS[name]).label


@dataclass(frozen=True)
class StyleSpec:
    """What a layer's style depends on.

    ``kind`` is one of the keys of ``KINDS``; ``title`` the layer's name in the desktop and the style's name in a
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
    # Of drawn deviations: how many times larger heights are, the side of those built high, what the strip starts from,
    # and what its scale bar stands for: the rows are not asked, since whoever reads a table of a GeoPackage while it is
    # written keeps the style of the next table out of it.
    exaggeration: float | None = None
    high_side: str = "right"
    view: str = ""
    scale: str = ""
    # Of residuals: the greatest without its sign, in the height unit, where it is known without asking the rows.
    greatest: float | None = None

    def __post_init__(self):
        if self.kind not in KINDS:
            raise ValueError(f"unknown kind of style: {self.kind}")
        if not self.title:
            raise ValueError("a style needs a title")
        for unit in (self.height_unit, self.chainage_unit):
            if unit not in UNIT_LABELS:
                raise ValueError(f"unknown unit: {unit}")
        if self.tolerance is not None and not self.tolerance >= 0:
            raise ValueError(f"the tolerance is {self.tolerance}; it cannot be negative")

    @property
    def layer_kind(self):
        return KINDS[self.kind]


def _put_on(layer, renderer, labeling=None, tip=None):
    layer.setRenderer(renderer)
    if labeling is not None:
        layer.setLabeling(labeling)
        layer.setLabelsEnabled(True)
    if tip is not None:
        layer.setMapTipTemplate(tip)


def _review(layer, spec, _own):
    most = greatest(layer, "residual") if spec.greatest is None else spec.greatest
    full_size = residual_at_full_size(spec.tolerance, most)
    QgsExpressionContextUtils.setLayerVariable(layer, FULL_SIZE_VARIABLE, full_size)
    QgsExpressionContextUtils.setLayerVariable(layer, GREATEST_VARIABLE, most)
    fields, unit = layer.fields(), spec.height_unit
    renderer = review_renderer(layer, spec.tolerance, most)
    _put_on(layer, renderer, review_labeling(fields, unit), review_tip(fields, unit))


def _stations(layer, spec, own):
    tip = station_tip(own, spec.height_unit, spec.chainage_unit)
    _put_on(layer, station_renderer(), station_labeling(layer.fields()), tip)


def _fitted(layer, spec, _own):
    look, fields, unit = reference_marks, layer.fields(), spec.height_unit
    _put_on(layer, look.fitted_renderer(fields), look.fitted_labeling(fields, unit), look.fitted_tip(fields, unit))


def _reference(layer, spec, _own):
    look, fields = reference_marks, layer.fields()
    tip = look.reference_tip(fields, spec.height_unit)
    _put_on(layer, look.reference_renderer(fields), look.reference_labeling(fields), tip)


def _ellipse(layer, _spec, _own):
    _put_on(layer, reference_marks.ellipse_renderer())


def _reduced(layer, _spec, _own):
    _put_on(layer, level_lines.reduced_renderer())


def _levelled(layer, spec, _own):
    look, fields, unit = level_lines, layer.fields(), spec.height_unit
    _put_on(layer, look.height_renderer(fields), look.height_labeling(fields, unit), look.height_tip(fields, unit))


def _level_lines(layer, spec, _own):
    look, fields, unit = level_lines, layer.fields(), spec.height_unit
    _put_on(layer, look.line_renderer(fields), look.line_labeling(fields), look.line_tip(fields, unit))


def _schedule(layer, spec, _own):
    look, unit = schedule_look, spec.height_unit
    tip = look.schedule_tip(layer.fields(), unit)
    _put_on(layer, look.schedule_renderer(layer), look.schedule_labeling(layer, unit), tip)


def _compared(layer, spec, _own):
    look, unit = change_look, spec.height_unit
    tip = look.change_tip(layer.fields(), unit)
    _put_on(layer, look.change_renderer(layer), look.change_labeling(layer, unit), tip)


_ALL_STATIONS = tuple(dict.fromkeys(of.PLACED + of.GENERATED + of.MEASURED + of.MEASURED_LINE))
KINDS = {
    "stations_review": LayerKind(of.DESIGNED + of.DESIGNED_LINE, "station", _review),
    "stations": LayerKind(_ALL_STATIONS, "station", _stations),
    "converted": LayerKind(of.CONVERTED, "height_geo", _stations),
    "summary": LayerKind(of.SUMMARY[:-1] + of.SUMMARY_LINE + of.SUMMARY[-1:], "axis"),
    "rejected": LayerKind(of.REJECTED, "reason"),
    "deviation_bars": LayerKind(of.BARS, "station", deviations.dress_bars),
    "lateral_bars": LayerKind(of.LINE_BARS, "station", deviations.dress_lateral_bars, of.OF_LINE_BARS),
    "tolerance_band": LayerKind(of.BAND, "axis", deviations.dress_band),
    "profile_strip": LayerKind(of.STRIP, "label", deviations.dress_strip),
    "plan_strip": LayerKind(of.STRIP, "label", deviations.dress_plan, of.OF_PLAN),
    "schedule": LayerKind(of.SCHEDULED + of.SCHEDULED_LINE, "station", _schedule),
    "compared": LayerKind(of.COMPARED + of.COMPARED_LINE, "station", _compared),
    "changes": LayerKind(of.CHANGES + of.CHANGES_LINE, "station"),
    "unmatched": LayerKind(of.UNMATCHED, "station", titled=of.OF_UNMATCHED),
    "motions": LayerKind(of.MOTIONS[:-1] + of.MOTIONS_LINE + of.MOTIONS[-1:], "axis", titled=of.OF_MOTIONS),
    "fitted": LayerKind(of.FITTED + of.FITTED_LINE, "station", _fitted),
    "reference": LayerKind(of.REFERENCE[:-1] + of.REFERENCE_LINE + of.REFERENCE[-1:], "name", _reference),
    "ellipse": LayerKind(of.ELLIPSE, "name", _ellipse),
    "curvature": LayerKind(of.CURVATURE, "axis", titled=of.OF_CURVATURE),
    "reduced": LayerKind(of.REDUCED, "from_pt", _reduced),
    "levelled": LayerKind(of.LEVELLED, "point", _levelled, of.OF_LEVELLED),
    "level_lines": LayerKind(of.LINES, "from_pt", _level_lines),
    "misclosures": LayerKind(of.MISCLOSURES, "path"),
    "covariance": LayerKind(of.COVARIANCE, "point"),
    "geoid_along": LayerKind(of.GEOID_ALONG, "station", _stations),
}


def dress(layer, spec):
    """Give ``layer`` (QgsVectorLayer) the style that ``spec`` (StyleSpec) asks for.

    Symbols, labels and map tip for points; for every layer aliases with units, decimals and order of the columns and,
    as a custom property, the record of the run. The layer's name stays.
    """
    kind = spec.layer_kind
    own = own_fields(layer.fields(), kind.fields)
    if layer.isSpatial() and kind.apply is not None:
        kind.apply(layer, spec, own)
    name_columns(layer, own, spec.height_unit, spec.chainage_unit, kind.titled)
    order_columns(layer, own)
    if layer.fields().indexOf(kind.display) >= 0:
        layer.setDisplayExpression(f'"{kind.display}"')
    layer.setCustomProperty(RECORD_PROPERTY, spec.record)
