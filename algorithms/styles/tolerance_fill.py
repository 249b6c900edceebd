"""Look of the tolerance band: a pale fill that leaves the imagery visible, with edges to compare the bars with."""

from qgis.core import QgsFillSymbol, QgsRuleBasedRenderer, QgsSimpleFillSymbolLayer

from . import palette
from .markers import CLEAR, HALO, INK, tinted
from .strokes import stroke


def tolerance_renderer(label):
    """Return the renderer; ``label``: the text of the legend."""
    fill = QgsSimpleFillSymbolLayer(tinted(palette.PAPER, 55))
    fill.setStrokeColor(CLEAR)
    symbol = QgsFillSymbol()
    # As with markers: the layers must not be handed to the constructor.
    symbol.changeSymbolLayer(0, fill)
    symbol.appendSymbolLayer(stroke(HALO, 0.8))
    symbol.appendSymbolLayer(stroke(INK, 0.3, dash=(2.4, 1.4)))
    root = QgsRuleBasedRenderer.Rule(None)
    root.appendChild(QgsRuleBasedRenderer.Rule(symbol, label=label))
    return QgsRuleBasedRenderer(root)
