"""Look of lateral bars: thin, dashed, in the colour of the line, a square at the tip, beside the bar of the height."""

from qgis.core import (
    QgsMarkerLineSymbolLayer,
    QgsProperty,
    QgsRuleBasedRenderer,
    QgsSymbolLayer,
    QgsTemplatedLineSymbolLayerBase,
)
from qgis.PyQt.QtGui import QColor

from ..language.translation import tr
from . import palette
from .bar_strokes import any_cut, break_mark, tip_labeling, tip_of_bar
from .markers import HALO, INK, Shape, marker
from .strokes import line_symbol, stroke
from .wording import column, literal, side_text

# As on imagery.
COLOR = QColor(palette.LINE.dark)
_WIDTH, _BESIDE = 0.7, 1.3


def _beside(layer, lateral):
    """The symbol layer moved along the axis, so that it does not lie on the bar of the same station's height."""
    offset = QgsProperty.fromExpression(f"if({lateral} < 0, {_BESIDE}, -{_BESIDE})")
    layer.setDataDefinedProperty(QgsSymbolLayer.Property.PropertyOffset, offset)
    return layer


def _tip(lateral, size, fill):
    layer = QgsMarkerLineSymbolLayer(True)
    layer.setPlacement(QgsTemplatedLineSymbolLayerBase.Placement.LastVertex)
    layer.setSubSymbol(marker(Shape.Square, size, fill=fill, outline=0.35))
    return _beside(layer, lateral)


def _symbol(lateral, size, fill=COLOR):
    strokes = (stroke(HALO, _WIDTH + 0.9), stroke(INK, _WIDTH + 0.35), stroke(COLOR, _WIDTH, dash=palette.LINE.dash))
    return line_symbol(*(_beside(one, lateral) for one in strokes), _tip(lateral, size, fill))


def _looks(lateral):
    """(side, legend text, symbol) of every look."""
    return (
        ("left", tr("Left of the line, beyond its tolerance"), _symbol(lateral, 2.6)),
        ("right", tr("Right of the line, beyond its tolerance"), _symbol(lateral, 2.6)),
        ("within", tr("Within the tolerance of the line"), _symbol(lateral, 1.6, QColor(palette.PAPER))),
        ("no tolerance", tr("Left or right of the line"), _symbol(lateral, 1.6)),
    )


def lateral_renderer(layer, heading):
    """Return the rule-based renderer. ``heading``: what a length stands for, the first line of the legend."""
    side, lateral, cut = (column(layer.fields(), name) for name in ("side", "lateral", "cut"))
    index = layer.fields().indexOf("side")
    present = layer.uniqueValues(index) if index >= 0 else set()
    if present & {"left", "right", "within"}:
        present = present | {"left", "right", "within"}
    root, head = QgsRuleBasedRenderer.Rule(None), QgsRuleBasedRenderer.Rule(None, label=heading)
    root.appendChild(head)
    for value, label, symbol in _looks(lateral):
        if value in present:
            head.appendChild(QgsRuleBasedRenderer.Rule(symbol, filterExp=f"{side} = '{value}'", label=label))
    if any_cut(layer):
        mark = break_mark()
        _beside(mark.symbolLayer(0), lateral)
        head.appendChild(
            QgsRuleBasedRenderer.Rule(mark, filterExp=f"{cut} = 1", label=tr("Cut: the bar would be longer"))
        )
    return QgsRuleBasedRenderer(root)


def lateral_labeling(fields, height_unit):
    """Return the labelling: how far and to which side at the tip, notable ones at smaller scales and in bold type."""
    side, lateral, cut = (column(fields, name) for name in ("side", "lateral", "cut"))
    text = f"{side_text(lateral, height_unit)} || if({cut} = 1, {literal(tr(' (cut)'))}, '')"
    return tip_labeling(text, f"coalesce({side} IN ('left', 'right') OR {cut} = 1, false)", cut)


def lateral_tip(fields, height_unit):
    """Return the HTML template of the map tip: station, departure and side, and the bar's length on the ground."""
    return tip_of_bar(fields, tr("Lateral departure"), side_text(column(fields, "lateral"), height_unit))
