"""Settings of a point label: buffered type beside its symbol, never over another label."""

from qgis.core import QgsPalLayerSettings, QgsTextBufferSettings, QgsTextFormat, QgsUnitTypes

from .markers import HALO, INK


def _text_format(points, bold):
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


def point_label(expression, *, points, priority, bold=False):
    """Return label settings for the text ``expression``.

    ``points`` is the type size; ``priority`` 0 to 10, or an expression giving that, decides who yields where room is short.
    """
    settings = QgsPalLayerSettings()
    settings.fieldName = expression
    settings.isExpression = True
    settings.placement = QgsPalLayerSettings.Placement.OrderedPositionsAroundPoint
    settings.offsetType = QgsPalLayerSettings.OffsetType.FromSymbolBounds
    settings.dist = 0.5
    settings.distUnits = QgsUnitTypes.RenderUnit.RenderMillimeters
    settings.multilineAlign = QgsPalLayerSettings.MultiLineAlign.MultiFollowPlacement
    settings.priority = priority
    settings.setFormat(_text_format(points, bold))
    return settings
