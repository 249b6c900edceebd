"""Look of the tolerance band: a pale fill that leaves the imagery visible, with edges to compare the bars with."""

from qgis.core import QgsFillSymbol, QgsRuleBasedRenderer, QgsSimpleFillSymbolLayer
from qgis.PyQt.QtGui import QColor

from .markers import HALO, INK
from .strokes import stroke


def tolerance_renderer(label):
    """Return the renderer; ``label``: the text of the legend."""
    fill = QgsSimpleFillSymbolLayer(QColor(255, 255, 255, 55))
    fill.setStrokeColor(QColor(0, 0, 0, 0))
    symbol = QgsFillSymbol()
    # As with markers: the layers must not be handed to the constructor.
    symbol.changeSymbolLayer(0, fill)
    symbol.appendSymbolLayer(stroke(HALO, 0.8))
    symbol.appendSymbolLayer(stroke(INK, 0.3, dash=(2.4, 1.4)))
    root = QgsRuleBasedRenderer.Rule(None)
    root.appendChild(QgsRuleBasedRenderer.Rule(symbol, label=label))
    return QgsRuleBasedRenderer(root)
