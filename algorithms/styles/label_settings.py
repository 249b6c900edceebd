"""Settings of a point label: buffered type beside its symbol, never over another label."""

from qgis.core import (
    QgsCallout,
    QgsLineSymbol,
    QgsPalLayerSettings,
    QgsProperty,
    QgsSimpleLineCallout,
    QgsSimpleLineSymbolLayer,
    QgsTextBufferSettings,
    QgsTextFormat,
    QgsUnitTypes,
)

from .markers import HALO, INK

# Straight above or below first: beside the symbol, a label on a row of stations reads as its neighbour's.
POSITIONS = "T,B,R,L,TL,BR,TR,BL"
# For labels at 1:10,000 and larger: a map set to that scale is often at 1:10,000.001.
TEN_THOUSAND = 10100
PAD = "\u00a0"


def text_format(points, bold):
    """Return dark type of ``points`` in a light halo."""
    buffer = QgsTextBufferSettings()
    buffer.setEnabled(True)
    buffer.setSize(0.7)
    buffer.setSizeUnit(QgsUnitTypes.RenderUnit.RenderMillimeters)
    buffer.setColor(HALO)
    text = QgsTextFormat()
    font = text.font()
    font.setBold(bold)
    text.setFont(font)
    text.setSize(points)
    text.setSizeUnit(QgsUnitTypes.RenderUnit.RenderPoints)
    text.setLineHeight(0.95)
    text.setColor(INK)
    text.setBuffer(buffer)
    return text


def _padded(expression):
    """Lines with a no-break space on either side: labels that touch would read as one."""
    return f"'{PAD}' || replace({expression}, '\\n', '{PAD}\\n{PAD}') || '{PAD}'"


def _leader(gap):
    """A short line from the label to the edge of its station's symbol, dark in a light halo like the symbols."""
    symbol = QgsLineSymbol()
    # As with markers: the layers must not be handed to the constructor.
    symbol.changeSymbolLayer(0, QgsSimpleLineSymbolLayer(HALO, 0.7))
    symbol.appendSymbolLayer(QgsSimpleLineSymbolLayer(INK, 0.25))
    leader = QgsSimpleLineCallout()
    leader.setLineSymbol(symbol)
    leader.setEnabled(True)
    leader.dataDefinedProperties().setProperty(QgsCallout.Property.OffsetFromAnchor, QgsProperty.fromExpression(gap))
    return leader


def point_label(expression, *, points, priority, radius, bold=False):
    """Return label settings for the text ``expression``.

    ``points`` is the type size; ``priority``, an expression giving 0 to 10, decides who yields where room is short.
    The label's leader line ends at ``radius``, an expression giving that of the symbol in millimetres.
    """
    settings = QgsPalLayerSettings()
    settings.fieldName = _padded(expression)
    settings.isExpression = True
    settings.placement = QgsPalLayerSettings.Placement.OrderedPositionsAroundPoint
    settings.offsetType = QgsPalLayerSettings.OffsetType.FromSymbolBounds
    settings.dist = 1.4
    settings.distUnits = QgsUnitTypes.RenderUnit.RenderMillimeters
    settings.multilineAlign = QgsPalLayerSettings.MultiLineAlign.MultiFollowPlacement
    settings.setCallout(_leader(f"({radius}) + 0.25"))
    settings.setFormat(text_format(points, bold))
    properties = settings.dataDefinedProperties()
    properties.setProperty(QgsPalLayerSettings.Property.Priority, QgsProperty.fromExpression(priority))
    properties.setProperty(QgsPalLayerSettings.Property.PredefinedPositionOrder, QgsProperty.fromValue(POSITIONS))
    settings.setDataDefinedProperties(properties)
    return settings
