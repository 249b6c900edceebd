"""Look of the plan strip: the light panel of a profile strip, and on it lines in the look of the line alone."""

from qgis.PyQt.QtGui import QColor

from ..language.translation import tr
from . import palette
from .strip_lines import panel, panel_line, panel_renderer, scale_bar, strip_labeling, thin_line
from .strokes import line_symbol, stroke

_ORDER = ("frame", "grid", "datum", "tick", "tolerance", "line", "as-built", "scale")


def _looks(scale):
    """(part, legend text, symbol) of every part, in the order of the legend."""
    ink = QColor(palette.PANEL_INK)
    across = tr("Scale bar across: {}").format(scale) if scale else tr("Scale bar across")
    return (
        ("as-built", tr("As built, seen from above"), panel_line(palette.LINE)),
        ("line", tr("The line"), line_symbol(stroke(ink, 0.6))),
        ("tolerance", tr("Tolerance of the line"), line_symbol(stroke(ink, 0.35, dash=(0.6, 0.9)))),
        ("scale", across, scale_bar()),
        ("datum", tr("Edge on the axis' side"), thin_line()),
        ("grid", tr("Grid of lateral departures"), thin_line()),
        ("tick", tr("Stations along the axis"), thin_line()),
        ("frame", tr("Strip: right of the line is drawn right"), panel()),
    )


def plan_renderer(layer, heading, scale):
    """Return the rule-based renderer. ``heading``: the first line of the legend, with the exaggeration; ``scale``: what
    the scale bar stands for, a text or ''."""
    return panel_renderer(layer, heading, _looks(scale), _ORDER)


def plan_labeling(fields):
    """Return the labelling, as of a profile strip."""
    return strip_labeling(fields, ("as-built", "line", "tolerance"))
