"""Lines that stay readable on imagery: colour inside a dark edge inside a light halo, thinner at small scales."""

from qgis.core import QgsLineSymbol, QgsProperty, QgsSimpleLineSymbolLayer, QgsSymbolLayer
from qgis.PyQt.QtCore import Qt

from .markers import HALO, INK

# The eight directions clockwise from north, and where a label stands that goes on in that direction.
_AROUND = ("T,TR,TL", "TR,R,T", "R,TR,BR", "BR,R,B", "B,BR,BL", "BL,L,B", "L,BL,TL", "TL,L,T")


def scaled(width):
    """Expression of a width (mm) that is full at 1:5,000 and a good half at 1:25,000."""
    return f"({width} * scale_linear(coalesce(@map_scale, 5000), 5000, 25000, 1, 0.55))"


def stroke(color, width, *, dash=None, cap=Qt.PenCapStyle.FlatCap):
    """A simple line of ``width`` mm that grows with the scale; ``dash``: mm on, off."""
    layer = QgsSimpleLineSymbolLayer(color, width)
    layer.setPenCapStyle(cap)
    layer.setPenJoinStyle(Qt.PenJoinStyle.RoundJoin)
    layer.setDataDefinedProperty(QgsSymbolLayer.Property.PropertyStrokeWidth, QgsProperty.fromExpression(scaled(width)))
    if dash:
        layer.setUseCustomDashPattern(True)
        layer.setCustomDashVector(list(dash))
    return layer


def line_symbol(*layers):
    """A line symbol of these layers, the lowest first."""
    symbol = QgsLineSymbol()
    # As with markers: the layers must not be handed to the constructor.
    symbol.changeSymbolLayer(0, layers[0])
    for layer in layers[1:]:
        symbol.appendSymbolLayer(layer)
    return symbol


def cased(color, width):
    """Colour inside a dark edge inside a light halo."""
    return line_symbol(stroke(HALO, width + 0.8), stroke(INK, width + 0.35), stroke(color, width))


def positions_towards(start, end):
    """Expression of the order of label positions at a point, going on from ``start`` to ``end`` (point expressions)."""
    listed = ", ".join(f"'{order}'" for order in _AROUND)
    return f"array_get(array({listed}), to_int(round(degrees(azimuth({start}, {end})) / 45)) % 8)"
