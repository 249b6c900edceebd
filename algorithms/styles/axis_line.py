"""Look of an axis: a dark line in a light casing, with its name and the direction of rising chainage."""

from qgis.core import (
    QgsLabelLineSettings,
    QgsLineSymbol,
    QgsPalLayerSettings,
    QgsSimpleLineSymbolLayer,
    QgsSingleSymbolRenderer,
    QgsUnitTypes,
    QgsVectorLayerSimpleLabeling,
)
from qgis.PyQt.QtCore import Qt

from .label_settings import text_format
from .markers import HALO, INK


def _stroke(color, width):
    stroke = QgsSimpleLineSymbolLayer(color, width)
    stroke.setPenCapStyle(Qt.PenCapStyle.RoundCap)
    stroke.setPenJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return stroke


def axis_renderer():
    """Return the renderer: one line for every axis, readable on dark and on bright imagery."""
    symbol = QgsLineSymbol()
    # As with markers: the layers must not be handed to the constructor.
    symbol.changeSymbolLayer(0, _stroke(HALO, 1.3))
    symbol.appendSymbolLayer(_stroke(INK, 0.5))
    return QgsSingleSymbolRenderer(symbol)


def axis_labeling(field):
    """Return the labelling: the text field named ``field`` along the line, with an arrow up-chainage."""
    settings = QgsPalLayerSettings()
    settings.fieldName = field
    settings.placement = QgsPalLayerSettings.Placement.Line
    settings.dist = 3.5
    settings.distUnits = QgsUnitTypes.RenderUnit.RenderMillimeters
    line = QgsLabelLineSettings()
    line.setAddDirectionSymbol(True)
    line.setLeftDirectionSymbol("◀ ")
    line.setRightDirectionSymbol(" ▶")
    settings.setLineSettings(line)
    settings.setFormat(text_format(9.5, True))
    return QgsVectorLayerSimpleLabeling(settings)
