"""Point symbols that stay readable on dark and on bright imagery: a dark outline inside a light halo."""

from qgis.core import QgsMarkerSymbol, QgsProperty, QgsSimpleMarkerSymbolLayer, QgsSimpleMarkerSymbolLayerBase
from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtGui import QColor

from . import palette

Shape = QgsSimpleMarkerSymbolLayerBase.Shape

INK = QColor(palette.INK)
HALO = QColor(255, 255, 255, 235)
CLEAR = QColor(0, 0, 0, 0)
OTHER = QColor(palette.UNJUDGED.dark)


def tinted(name, alpha):
    """A QColor of the palette (hex) with ``alpha``, 0 to 255."""
    color = QColor(name)
    color.setAlpha(alpha)
    return color


def _layer(shape, size, angle, fill, stroke, width):
    layer = QgsSimpleMarkerSymbolLayer(shape, size, angle)
    layer.setColor(fill)
    layer.setStrokeColor(stroke)
    layer.setStrokeWidth(width)
    # Round joins keep a halo from growing spikes at the corners of triangles.
    layer.setPenJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return layer


def marker(shape, size, *, fill=None, angle=0.0, outline=0.3, halo=0.4, size_expression=None, cored=False):
    """Return a marker symbol of ``shape`` (``Shape``) with outline and halo.

    ``size``, ``outline`` and ``halo`` (the width seen outside the outline) are millimetres, ``angle`` is degrees
    clockwise. ``fill`` None leaves the inside open. ``size_expression`` (millimetres) overrides ``size`` per
    station; where it gives NULL, ``size`` holds. ``cored``: with a light spot in the middle, for what was not judged.
    """
    under = _layer(shape, size, angle, CLEAR if fill is None else HALO, HALO, outline + 2 * halo)
    over = _layer(shape, size, angle, CLEAR if fill is None else fill, INK, outline)
    symbol = QgsMarkerSymbol()
    # Layers handed to the constructor stay Python's on some hosts, and the symbol is left with dangling ones.
    symbol.changeSymbolLayer(0, under)
    symbol.appendSymbolLayer(over)
    if cored:
        symbol.appendSymbolLayer(_layer(Shape.Circle, 0.26 * size, 0.0, HALO, CLEAR, 0.0))
    if size_expression is not None:
        symbol.setDataDefinedSize(QgsProperty.fromExpression(size_expression))
    return symbol
