"""Look of residual bars: the stations' colours by status, a break mark where a bar is cut, the residual at its tip."""

from qgis.core import (
    QgsMarkerLineSymbolLayer,
    QgsMarkerSymbol,
    QgsProperty,
    QgsRuleBasedLabeling,
    QgsRuleBasedRenderer,
    QgsSimpleMarkerSymbolLayer,
    QgsTemplatedLineSymbolLayerBase,
    QgsWkbTypes,
)
from qgis.PyQt.QtCore import QPointF

from ..language.translation import tr
from .label_settings import point_label
from .markers import HALO, INK, Shape
from .review_symbols import HIGH, LOW, WITHIN
from .review_tip import STYLE
from .strokes import cased, line_symbol, positions_towards
from .wording import column, decimal, escaped, literal, signed_height, station_name

SMALLEST_SCALE = 26000
SMALLEST_SCALE_QUIET = 5100
WIDTH, WIDTH_WITHIN = 1.1, 0.6


def break_mark():
    """Two slashes across the line near its tip: the bar would go on."""
    mark = QgsMarkerSymbol()
    gap = QgsSimpleMarkerSymbolLayer(Shape.Square, 1.5)
    gap.setColor(HALO)
    gap.setStrokeColor(HALO)
    mark.changeSymbolLayer(0, gap)
    for shift in (-0.75, 0.75):
        for color, width in ((HALO, 0.9), (INK, 0.4)):
            slash = QgsSimpleMarkerSymbolLayer(Shape.Line, 3.4, 25.0)
            slash.setStrokeColor(color)
            slash.setStrokeWidth(width)
            slash.setOffset(QPointF(shift, 0.0))
            mark.appendSymbolLayer(slash)
    layer = QgsMarkerLineSymbolLayer(True)
    layer.setPlacement(QgsTemplatedLineSymbolLayerBase.Placement.LastVertex)
    layer.setOffsetAlongLine(2.6)
    layer.setSubSymbol(mark)
    return line_symbol(layer)


def _looks(residual, right):
    """(status, condition, legend text, colour) of every look; ``right``: those built high point to the right."""
    high, low = (tr("right"), tr("left")) if right else (tr("left"), tr("right"))
    return (
        ("high", "", tr("Built high, above the tolerance: {} of the axis").format(high), HIGH),
        ("low", "", tr("Built low, below the tolerance: {} of the axis").format(low), LOW),
        ("within", "", tr("Within the tolerance"), WITHIN),
        ("no tolerance", f" AND {residual} >= 0", tr("Built high: {} of the axis").format(high), HIGH),
        ("no tolerance", f" AND {residual} < 0", tr("Built low: {} of the axis").format(low), LOW),
    )


def any_cut(layer):
    """Whether a bar of the layer is cut."""
    index = layer.fields().indexOf("cut")
    return index >= 0 and 1 in layer.uniqueValues(index)


def bar_renderer(layer, heading, right):
    """Return the rule-based renderer. ``heading``: what a length stands for, the first line of the legend."""
    status, residual, cut = (column(layer.fields(), name) for name in ("status", "residual", "cut"))
    index = layer.fields().indexOf("status")
    present = layer.uniqueValues(index) if index >= 0 else set()
    if present & {"high", "low", "within"}:
        present = present | {"high", "low", "within"}
    root, head = QgsRuleBasedRenderer.Rule(None), QgsRuleBasedRenderer.Rule(None, label=heading)
    root.appendChild(head)
    for value, condition, label, color in _looks(residual, right):
        if value in present:
            test = f"{status} = '{value}'{condition}"
            # Thinner where all is well: which bars are out of tolerance is to be seen without their colours.
            symbol = cased(color, WIDTH_WITHIN if value == "within" else WIDTH)
            head.appendChild(QgsRuleBasedRenderer.Rule(symbol, filterExp=test, label=label))
    # A rule of its own, on top of the bar's, so that the legend explains the mark where there is one.
    if any_cut(layer):
        head.appendChild(
            QgsRuleBasedRenderer.Rule(break_mark(), filterExp=f"{cut} = 1", label=tr("Cut: the bar would be longer"))
        )
    return QgsRuleBasedRenderer(root)


def bar_labeling(fields, height_unit):
    """Return the labelling: the residual at the tip, notable ones at smaller scales and in bold type."""
    status, residual, cut, length = (column(fields, name) for name in ("status", "residual", "cut", "bar_m"))
    text = f"{signed_height(residual, height_unit)} || if({cut} = 1, {literal(tr(' (cut)'))}, '')"
    large = f"{length} >= 0.5 * maximum({length})" if length != "NULL" else "false"
    notable = f"coalesce({status} IN ('high', 'low') OR {status} = 'no tolerance' AND {large} OR {cut} = 1, false)"
    return tip_labeling(text, notable, cut)


def tip_labeling(text, notable, cut):
    """The labelling of any bars, all expressions: ``text`` at the tip, bold and from smaller scales on where it is
    ``notable``, kept where the bar is ``cut``."""
    root = QgsRuleBasedLabeling.Rule(None)
    for test, points, bold, smallest in (
        (notable, 8.5, True, SMALLEST_SCALE),
        (f"NOT {notable}", 7.0, False, SMALLEST_SCALE_QUIET),
    ):
        priority = f"if({cut} = 1, 10, 8)" if bold else "2"
        settings = point_label(text, points=points, priority=priority, radius="0.4", bold=bold)
        settings.geometryGenerator = "end_point($geometry)"
        settings.geometryGeneratorType = QgsWkbTypes.GeometryType.PointGeometry
        settings.geometryGeneratorEnabled = True
        settings.dist, settings.offsetType = 0.9, settings.OffsetType.FromPoint
        # The bar itself leads to its label.
        settings.callout().setEnabled(False)
        properties = settings.dataDefinedProperties()
        properties.setProperty(
            settings.Property.PredefinedPositionOrder,
            QgsProperty.fromExpression(positions_towards("start_point($geometry)", "end_point($geometry)")),
        )
        settings.setDataDefinedProperties(properties)
        root.appendChild(QgsRuleBasedLabeling.Rule(settings, 0, smallest, test))
    return QgsRuleBasedLabeling(root)


def bar_tip(fields, height_unit):
    """Return the HTML template of the map tip: station, residual, and the bar's length on the ground."""
    return tip_of_bar(fields, tr("Residual"), signed_height(column(fields, "residual"), height_unit))


def tip_of_bar(fields, name, value):
    """The template of a bar's map tip; ``name`` of what it shows, and the expression of its ``value`` in words."""
    length, cut = column(fields, "bar_m"), column(fields, "cut")
    station, axis = escaped(station_name(fields)), escaped(column(fields, "axis"))
    drawn = f"{decimal(length, 1, 'm')} || if({cut} = 1, {literal(tr(', cut'))}, '')"
    return (
        f'<div style="{STYLE}"><b>[% {station} %]</b> [% {axis} %]<br>{name} '
        f"[% coalesce({value}, '') %]<br>"
        f"<small>{tr('Bar on the ground')}: [% coalesce({drawn}, '') %]</small></div>"
    )
