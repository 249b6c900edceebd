"""The layers of drawn deviations, dressed from their StyleSpec."""

from ..core.units import metres_per
from ..language.height_text import exact_text
from ..language.number_text import times
from ..language.translation import tr
from .bar_strokes import bar_labeling, bar_renderer, bar_tip
from .lateral_strokes import lateral_labeling, lateral_renderer, lateral_tip
from .plan_lines import plan_labeling, plan_renderer
from .strip_lines import strip_labeling, strip_renderer
from .tolerance_fill import tolerance_renderer


def dress_bars(layer, spec, _own):
    """Bars: the legend says what 100 m on the ground stand for."""
    heading = tr("Residuals")
    if spec.exaggeration:
        heading = tr("Residuals {}: 100 m on the ground stand for {}").format(
            times(spec.exaggeration), exact_text(100.0 / spec.exaggeration, spec.height_unit)
        )
    layer.setRenderer(bar_renderer(layer, heading, spec.high_side != "left"))
    layer.setLabeling(bar_labeling(layer.fields(), spec.height_unit))
    layer.setLabelsEnabled(True)
    layer.setMapTipTemplate(bar_tip(layer.fields(), spec.height_unit))


def dress_lateral_bars(layer, spec, _own):
    """Lateral bars: the same, and that they are no heights."""
    heading = tr("Lateral departures")
    if spec.exaggeration:
        heading = tr("Lateral departures {}: 100 m on the ground stand for {}").format(
            times(spec.exaggeration), exact_text(100.0 / spec.exaggeration, spec.height_unit)
        )
    layer.setRenderer(lateral_renderer(layer, heading))
    layer.setLabeling(lateral_labeling(layer.fields(), spec.height_unit))
    layer.setLabelsEnabled(True)
    layer.setMapTipTemplate(lateral_tip(layer.fields(), spec.height_unit))


def dress_band(layer, spec, _own):
    """Band: the legend says the tolerance where it is one."""
    index = layer.fields().indexOf("tolerance")
    values = {value for value in layer.uniqueValues(index) if isinstance(value, float)} if index >= 0 else set()
    label = tr("Tolerance of each axis")
    if len(values) == 1:
        label = tr("Tolerance \u00b1{}").format(
            exact_text(values.pop() * metres_per(spec.height_unit), spec.height_unit)
        )
    if spec.exaggeration:
        label += ", " + tr("drawn {}").format(times(spec.exaggeration))
    layer.setRenderer(tolerance_renderer(label))


def dress_strip(layer, spec, _own):
    """Strip: the legend says from what its heights are and how much they are exaggerated."""
    words = {"straight": tr("Heights {} from the design line"), "level": tr("Heights {} above the level line")}
    heading = words.get(spec.view, tr("Heights {}")).format(times(spec.exaggeration) if spec.exaggeration else "")
    layer.setRenderer(strip_renderer(layer, heading, spec.view, spec.scale))
    layer.setLabeling(strip_labeling(layer.fields()))
    layer.setLabelsEnabled(True)


def dress_plan(layer, spec, _own):
    """Plan strip: the legend says that it is true to scale along the axis, and how much it is exaggerated across."""
    heading = tr("Plan, true to scale along, across {}").format(times(spec.exaggeration) if spec.exaggeration else "")
    layer.setRenderer(plan_renderer(layer, heading, spec.scale))
    layer.setLabeling(plan_labeling(layer.fields()))
    layer.setLabelsEnabled(True)
