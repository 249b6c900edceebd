"""The three layers of drawn deviations, dressed from their StyleSpec."""

from ..core.units import metres_per
from ..language.height_text import amounts_for
from ..language.number_text import times
from ..language.translation import tr
from .bar_strokes import bar_labeling, bar_renderer, bar_tip
from .strip_lines import strip_labeling, strip_renderer
from .tolerance_fill import tolerance_renderer


def _exact(metres, unit):
    """A height chosen by somebody for a legend, as fine as it needs."""
    return amounts_for(unit, metres).with_unit(metres)


def dress_bars(layer, spec, _own):
    """Bars: the legend says what 100 m on the ground stand for."""
    heading = tr("Residuals")
    if spec.exaggeration:
        heading = tr("Residuals {}: 100 m on the ground stand for {}").format(
            times(spec.exaggeration), _exact(100.0 / spec.exaggeration, spec.height_unit)
        )
    layer.setRenderer(bar_renderer(layer, heading, spec.high_side != "left"))
    layer.setLabeling(bar_labeling(layer.fields(), spec.height_unit))
    layer.setLabelsEnabled(True)
    layer.setMapTipTemplate(bar_tip(layer.fields(), spec.height_unit))


def dress_band(layer, spec, _own):
    """Band: the legend says the tolerance where it is one."""
    index = layer.fields().indexOf("tolerance")
    values = {value for value in layer.uniqueValues(index) if isinstance(value, float)} if index >= 0 else set()
    label = tr("Tolerance of each axis")
    if len(values) == 1:
        label = tr("Tolerance \u00b1{}").format(_exact(values.pop() * metres_per(spec.height_unit), spec.height_unit))
    if spec.exaggeration:
        label += ", " + tr("drawn {}").format(times(spec.exaggeration))
    layer.setRenderer(tolerance_renderer(label))


def dress_strip(layer, spec, _own):
    """Strip: the legend says from what its heights are and how much they are exaggerated."""
    words = {"straight": tr("Heights {} from the design line"), "level": tr("Heights {} above the level line")}
    heading = words.get(spec.view, tr("Heights {}")).format(times(spec.exaggeration) if spec.exaggeration else "")
    layer.setRenderer(strip_renderer(layer, heading, spec.view))
    layer.setLabeling(strip_labeling(layer.fields()))
    layer.setLabelsEnabled(True)
