"""The three layers of drawn deviations, dressed from their StyleSpec."""

from ..core.units import metres_per
from ..language.number_text import number_text, times
from ..language.translation import tr
from ..language.units import UNIT_LABELS
from .bar_strokes import bar_labeling, bar_renderer, bar_tip
from .strip_lines import strip_labeling, strip_renderer
from .tolerance_fill import tolerance_renderer
from .wording import METRIC

# From here on a tenth of a millimetre can be seen in a bar, and its label tells it.
FINE = 20_000.0


def _small(value, unit):
    """A small height for a legend, at most three digits after the point of a millimetre or foot."""
    if unit == METRIC:
        value, word = value * 1000.0, "mm"
    else:
        word = UNIT_LABELS[unit]
    text = number_text(value, 3 if unit == METRIC else 4).rstrip("0").rstrip(".")
    return f"{text} {word}"


def dress_bars(layer, spec, _own):
    """Bars: the legend says what 100 m on the ground stand for."""
    heading = tr("Residuals")
    if spec.exaggeration:
        value = 100.0 / spec.exaggeration / metres_per(spec.height_unit)
        heading = tr("Residuals {}: 100 m on the ground stand for {}").format(
            times(spec.exaggeration), _small(value, spec.height_unit)
        )
    layer.setRenderer(bar_renderer(layer, heading, spec.high_side != "left"))
    fine = (spec.exaggeration or 0.0) >= FINE
    layer.setLabeling(bar_labeling(layer.fields(), spec.height_unit, fine=fine))
    layer.setLabelsEnabled(True)
    layer.setMapTipTemplate(bar_tip(layer.fields(), spec.height_unit))


def dress_band(layer, spec, _own):
    """Band: the legend says the tolerance where it is one."""
    index = layer.fields().indexOf("tolerance")
    values = {value for value in layer.uniqueValues(index) if isinstance(value, float)} if index >= 0 else set()
    label = tr("Tolerance of each axis")
    if len(values) == 1:
        label = tr("Tolerance \u00b1{}").format(_small(values.pop(), spec.height_unit))
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
