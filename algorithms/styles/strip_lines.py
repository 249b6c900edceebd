"""Look of the profile strip: a light panel with a grid, four lines told apart by colour and dash, and a scale bar."""

from qgis.core import (
    QgsFeatureRequest,
    QgsFillSymbol,
    QgsGeometryGeneratorSymbolLayer,
    QgsLabeling,
    QgsPalLayerSettings,
    QgsProperty,
    QgsRuleBasedLabeling,
    QgsRuleBasedRenderer,
    QgsSimpleFillSymbolLayer,
    QgsSymbol,
    QgsUnitTypes,
    QgsWkbTypes,
)
from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtGui import QColor

from ..language.translation import tr
from . import palette
from .label_settings import TEN_THOUSAND, text_format
from .markers import HALO, INK, tinted
from .strokes import line_symbol, positions_towards, stroke
from .wording import column

GRID = tinted(palette.PANEL_INK, 110)
PANEL = tinted(palette.PAPER, 205)
SMALLEST_SCALE = 26000
ORDER = ("frame", "grid", "datum", "tick", "flat", "level", "design", "as-built", "scale")
_FIRST = "geometry_n($geometry, 1)"


def panel():
    """The light ground of a strip, from its frame's ring."""
    fill = QgsSimpleFillSymbolLayer(PANEL)
    fill.setStrokeColor(tinted(palette.PANEL_INK, 200))
    fill.setStrokeWidth(0.15)
    inner = QgsFillSymbol()
    inner.changeSymbolLayer(0, fill)
    ground = QgsGeometryGeneratorSymbolLayer.create({})
    ground.setSymbolType(QgsSymbol.SymbolType.Fill)
    ground.setGeometryExpression(f"make_polygon({_FIRST})")
    ground.setSubSymbol(inner)
    return line_symbol(ground)


def scale_bar():
    return line_symbol(stroke(HALO, 1.7, cap=Qt.PenCapStyle.SquareCap), stroke(INK, 0.8))


def thin_line():
    """A line of the grid."""
    return line_symbol(stroke(GRID, 0.2))


def panel_line(look):
    """The line of one thing on the panel, which is light."""
    return line_symbol(stroke(QColor(look.light), look.millimetres, dash=look.dash_millimetres))


def _looks(view, scale):
    """(part, legend text, symbol) of every part, in the order of the legend."""
    level = tr("Level line through the design's first station")
    design = tr("Design") if view == "level" else tr("Design: the straight line")
    return (
        ("as-built", tr("As built"), panel_line(palette.BUILT)),
        ("design", design, panel_line(palette.DESIGN)),
        ("level", level, panel_line(palette.LEVEL)),
        ("flat", tr("Design with no curvature"), panel_line(palette.FLAT)),
        (
            "scale",
            tr("Scale bar of the heights: {}").format(scale) if scale else tr("Scale bar of the heights"),
            scale_bar(),
        ),
        ("datum", tr("Datum line, on the axis' side"), line_symbol(stroke(QColor(palette.PANEL_INK), 0.4))),
        ("grid", tr("Grid of heights"), thin_line()),
        ("tick", tr("Stations along the axis"), thin_line()),
        ("frame", tr("Strip: heights grow away from the axis"), panel()),
    )


def strip_renderer(layer, heading, view, scale):
    """Return the rule-based renderer. ``heading``: the first line of the legend, with the exaggeration; ``scale``: what
    the scale bar stands for, a text or ''."""
    return panel_renderer(layer, heading, _looks(view, scale), ORDER)


def panel_renderer(layer, heading, looks, order):
    """The renderer of any strip. ``looks``: (part, legend text, symbol) of each part; ``order``: of the parts, the
    lowest first."""
    part = column(layer.fields(), "part")
    root, head = QgsRuleBasedRenderer.Rule(None), QgsRuleBasedRenderer.Rule(None, label=heading)
    root.appendChild(head)
    for value, label, symbol in looks:
        head.appendChild(QgsRuleBasedRenderer.Rule(symbol, filterExp=f"{part} = '{value}'", label=label))
    renderer = QgsRuleBasedRenderer(root)
    listed = ", ".join(f"'{value}'" for value in order)
    # What lies under is drawn first, whatever order a file gives its rows in.
    renderer.setOrderBy(
        QgsFeatureRequest.OrderBy([QgsFeatureRequest.OrderByClause(f"array_find(array({listed}), {part})", True)])
    )
    renderer.setOrderByEnabled(True)
    return renderer


def _outer_edge():
    """Expression of the first half of the frame's ring."""
    last = f"to_int((num_points({_FIRST}) - 1) / 2)"
    return f"make_line(array_foreach(generate_series(1, {last}), point_n({_FIRST}, @element)))"


def _settings(field, points, bold):
    settings = QgsPalLayerSettings()
    settings.fieldName, settings.isExpression = f"'\u00a0' || {field} || '\u00a0'", True
    settings.distUnits = QgsUnitTypes.RenderUnit.RenderMillimeters
    settings.setFormat(text_format(points, bold))
    return settings


def _at_point(field, point, towards, points, priority, bold=False):
    """A label at ``point`` that goes on in the direction of ``towards``, a pair of point expressions."""
    settings = _settings(field, points, bold)
    settings.placement = QgsPalLayerSettings.Placement.OrderedPositionsAroundPoint
    settings.dist = 0.6
    settings.geometryGenerator = point
    settings.geometryGeneratorType = QgsWkbTypes.GeometryType.PointGeometry
    settings.geometryGeneratorEnabled = True
    settings.priority = priority
    properties = settings.dataDefinedProperties()
    properties.setProperty(
        settings.Property.PredefinedPositionOrder, QgsProperty.fromExpression(positions_towards(*towards))
    )
    settings.setDataDefinedProperties(properties)
    return settings


def _along(field, points, bold, flags, distance=0.0):
    settings = _settings(field, points, bold)
    settings.placement = QgsPalLayerSettings.Placement.Line
    line = settings.lineSettings()
    line.setPlacementFlags(flags)
    settings.setLineSettings(line)
    settings.dist = distance
    return settings


def strip_labeling(fields, named=("as-built", "design", "level", "flat")):
    """Return the labelling: title, scale bar, stations and grid from 1:25,000, the names of the lines ``named`` from
    1:10,000."""
    part, label = column(fields, "part"), column(fields, "label")
    flag = QgsLabeling.LinePlacementFlag
    beside = flag.AboveLine | flag.BelowLine | flag.MapOrientation
    start, end = f"start_point({_FIRST})", f"end_point({_FIRST})"
    tooth = "geometry_n($geometry, 2)"
    scale = _at_point(label, f"centroid({_FIRST})", (f"start_point({tooth})", f"end_point({tooth})"), 8.5, 10, True)
    scale.dist = 2.2
    title = _along(label, 8.5, True, flag.AboveLine, 0.8)
    title.geometryGenerator, title.geometryGeneratorEnabled = _outer_edge(), True
    title.geometryGeneratorType = QgsWkbTypes.GeometryType.LineGeometry
    title.priority = 9
    rules = (
        ("frame", title, SMALLEST_SCALE),
        ("scale", scale, SMALLEST_SCALE),
        ("tick", _at_point(label, start, (end, start), 7.0, 6), SMALLEST_SCALE),
        ("grid", _at_point(label, start, (end, start), 7.0, 4), SMALLEST_SCALE),
        ("datum", _at_point(label, start, (end, start), 7.0, 5), SMALLEST_SCALE),
        *((value, _along(label, 7.5, False, beside, 0.6), TEN_THOUSAND) for value in named),
    )
    root = QgsRuleBasedLabeling.Rule(None)
    for value, settings, smallest in rules:
        root.appendChild(QgsRuleBasedLabeling.Rule(settings, 0, smallest, f"{part} = '{value}'"))
    return QgsRuleBasedLabeling(root)
