"""Look of fitted references: their level points and tangent points with the ellipses, and the tested stations."""

from qgis.core import (
    QgsCategorizedSymbolRenderer,
    QgsFillSymbol,
    QgsGeometryGeneratorSymbolLayer,
    QgsMarkerSymbol,
    QgsProperty,
    QgsRendererCategory,
    QgsRuleBasedLabeling,
    QgsRuleBasedRenderer,
    QgsSimpleFillSymbolLayer,
    QgsSymbol,
    QgsWkbTypes,
)
from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtGui import QColor

from ..language.decision_words import SUSPECTED
from ..language.translation import tr
from . import palette
from .label_settings import TEN_THOUSAND, point_label
from .markers import CLEAR, HALO, INK, OTHER, Shape, marker, tinted
from .review_tip import STYLE
from .station_marks import SIZE
from .wording import column, decimal, escaped, literal, side_text, signed_height, small_height, station_name, word

SUSPECT = QColor(palette.SUSPECT.dark)
KEPT = QColor(palette.WITHIN.dark)


# A reference's geometry holds its level point first and its tangent point last, or the one that is known.
_LEVEL_AT, _TANGENT_AT = "geometry_n($geometry, 1)", "geometry_n($geometry, num_geometries($geometry))"
# The host keeps labels off each other, but knows nothing of a generated mark: the northern point's label stands above
# it, the southern one's below, so that neither covers the other's mark.
_NORTHERN, _SOUTHERN = "'T,R,L,TR,TL,BR,BL,B'", "'B,R,L,BR,BL,TR,TL,T'"


def _points(fields):
    """(filter, place, label, text on the map, marker) of the level point, of the tangent point and of neither.

    Apart by shape, not by colour: the triangle that plans put on a water level, and a cross.
    """
    level, tangent = (column(fields, name) for name in ("lev_lat", "tan_lat"))
    return (
        (
            f"{tangent} IS NOT NULL",
            _TANGENT_AT,
            tr("Tangent point: parallel to the ellipsoid"),
            _text(fields, tr("tangent point"), "tan_state"),
            marker(Shape.Cross2, 4.4, outline=0.9, halo=0.6),
        ),
        (
            f"{level} IS NOT NULL",
            _LEVEL_AT,
            tr("Level point: water stands still"),
            _text(fields, tr("level point"), "lev_state"),
            marker(Shape.EquilateralTriangle, 5.4, angle=180.0, outline=0.8, halo=0.6),
        ),
        (
            f"{level} IS NULL AND {tangent} IS NULL",
            _LEVEL_AT,
            tr("Fitted; where it is level is poorly determined"),
            _text(fields, tr("fitted"), ""),
            marker(Shape.Diamond, 4.4, outline=0.8, halo=0.6),
        ),
    )


def _text(fields, words, state):
    name = column(fields, "name")
    if not state:
        return f"{name} || '\\n' || {literal(words)}"
    outside = f"CASE WHEN {column(fields, state)} = 'outside' THEN {literal(tr(', outside the stations'))} ELSE '' END"
    return f"{name} || '\\n' || {literal(words)} || {outside}"


def _at(place, mark):
    """A symbol that draws the marker ``mark`` at one part of the geometry, an expression."""
    layer = QgsGeometryGeneratorSymbolLayer.create({"geometryModifier": place})
    layer.setSymbolType(QgsSymbol.SymbolType.Marker)
    layer.setSubSymbol(mark)
    symbol = QgsMarkerSymbol()
    symbol.changeSymbolLayer(0, layer)
    return symbol


def reference_renderer(fields):
    """Return the renderer of references: a mark each for the level point and the tangent point."""
    root = QgsRuleBasedRenderer.Rule(None)
    for condition, place, label, _, mark in _points(fields):
        root.appendChild(QgsRuleBasedRenderer.Rule(_at(place, mark), filterExp=condition, label=label))
    return QgsRuleBasedRenderer(root)


def reference_labeling(fields):
    """Return the labelling: the name, and which of the two points it is."""
    root = QgsRuleBasedLabeling.Rule(None)
    for condition, place, _, text, _ in _points(fields):
        settings = point_label(text, points=8.5, priority="8", radius="2.7")
        # A generated place has no symbol whose bounds the host would keep clear of.
        settings.offsetType = settings.OffsetType.FromPoint
        settings.dist = 4.0
        other = _LEVEL_AT if place == _TANGENT_AT else _TANGENT_AT
        settings.dataDefinedProperties().setProperty(
            settings.Property.PredefinedPositionOrder,
            QgsProperty.fromExpression(f"CASE WHEN y({place}) < y({other}) THEN {_SOUTHERN} ELSE {_NORTHERN} END"),
        )
        settings.geometryGenerator = place
        settings.geometryGeneratorType = QgsWkbTypes.GeometryType.PointGeometry
        settings.geometryGeneratorEnabled = True
        rule = QgsRuleBasedLabeling.Rule(settings)
        rule.setFilterExpression(condition)
        root.appendChild(rule)
    return QgsRuleBasedLabeling(root)


def reference_tip(fields, height_unit):
    """Return the HTML template of a reference's map tip."""
    name, kind, axes = (
        escaped(text) for text in (column(fields, "name"), word(fields, "kind"), column(fields, "axes"))
    )
    rms, number, removed = (column(fields, field) for field in ("rms", "number", "removed"))
    test = escaped(word(fields, "global_t"))
    return (
        f'<div style="{STYLE}"><b>[% {name} %]</b> [% {kind} %]<br>[% {axes} %]. '
        f"[% {number} || {literal(tr(' stations, RMS '))} || {small_height(rms, height_unit)} || "
        f"{literal(tr('; set aside: '))} || {removed} %]. {tr('Global test:')} [% {test} %].</div>"
    )


def _outline(color, width, style, fill):
    symbol = QgsFillSymbol()
    casing = QgsSimpleFillSymbolLayer(fill, Qt.BrushStyle.SolidPattern, HALO, Qt.PenStyle.SolidLine, width + 0.8)
    symbol.changeSymbolLayer(0, casing)
    symbol.appendSymbolLayer(QgsSimpleFillSymbolLayer(CLEAR, Qt.BrushStyle.NoBrush, color, style, width))
    return symbol


def ellipse_renderer():
    """Return the renderer of ellipses: solid around the level point, dashed around the tangent point."""
    categories = (
        ("level", tr("Level point, 95 %"), _outline(INK, 0.6, Qt.PenStyle.SolidLine, tinted(palette.NOTICE.dark, 90))),
        ("tangent", tr("Tangent point, 95 %"), _outline(INK, 0.5, Qt.PenStyle.DashLine, tinted(palette.PAPER, 40))),
    )
    return QgsCategorizedSymbolRenderer(
        "kind", [QgsRendererCategory(*category[::2], category[1]) for category in categories]
    )


def _suspected(fields, name):
    """The expression that is true where the flag ``name`` suspects a blunder, never NULL."""
    return f"coalesce({column(fields, name)}, '') = {literal(SUSPECTED)}"


def fitted_renderer(fields):
    """Return the renderer of tested stations: suspected blunders stand out, the kept ones are quiet; a ring
    where the line in plan suspects one."""
    flag = column(fields, "flag")
    looks = (
        ("kept", tr("Kept"), marker(Shape.Circle, 2.0, fill=KEPT, halo=0.25, size_expression=SIZE)),
        ("no height", tr("No as-built height"), marker(Shape.Circle, 2.4, outline=0.35, halo=0.35)),
        ("not fitted", tr("Not fitted: too few on its leg"), marker(Shape.Square, 2.0, outline=0.35, halo=0.35)),
        ("off axis", tr("Off axis: not fitted"), marker(Shape.Cross, 2.4, outline=0.4, halo=0.35)),
        ("suspected blunder", tr("Suspected blunder"), marker(Shape.Star, 4.6, fill=SUSPECT)),
    )
    root = QgsRuleBasedRenderer.Rule(None)
    if fields.indexOf("lat_flag") >= 0:
        # Around the mark of the height, which it does not hide: the one may be doubted and the other not. A ring, as on
        # all maps of the line, since left and right turn with the axis.
        ring = marker(Shape.Circle, 6.4, outline=0.5, halo=0.35)
        label = tr("Suspected blunder in line")
        root.appendChild(QgsRuleBasedRenderer.Rule(ring, filterExp=_suspected(fields, "lat_flag"), label=label))
    for value, label, symbol in looks:
        root.appendChild(QgsRuleBasedRenderer.Rule(symbol, filterExp=f"{flag} = '{value}'", label=label))
    other = marker(Shape.Square, 1.6, fill=OTHER)
    root.appendChild(QgsRuleBasedRenderer.Rule(other, label=tr("Other"), elseRule=True))
    return QgsRuleBasedRenderer(root)


def fitted_labeling(fields, height_unit):
    """Return the labelling: suspects with station and residual to 1:25,000, the rest from 1:10,000 on."""
    station, residual = station_name(fields), column(fields, "residual")
    text = f"{station} || coalesce('\\n' || {signed_height(residual, height_unit)}, '')"
    doubted = _suspected(fields, "flag")
    if fields.indexOf("lateral") >= 0 and fields.indexOf("lat_flag") >= 0:
        beside = side_text(column(fields, "lateral"), height_unit)
        text += f" || if({_suspected(fields, 'lat_flag')}, coalesce('\\n' || {beside}, ''), '')"
        doubted += f" OR {_suspected(fields, 'lat_flag')}"
    root = QgsRuleBasedLabeling.Rule(None)
    suspects = QgsRuleBasedLabeling.Rule(point_label(text, points=8.5, priority="9", radius="2.3"), 0, 25_200)
    suspects.setFilterExpression(doubted)
    others = QgsRuleBasedLabeling.Rule(
        point_label(station, points=7.5, priority="3", radius=f"0.5 * {SIZE}"), 0, TEN_THOUSAND
    )
    others.setFilterExpression(f"NOT ({doubted})")
    for rule in (suspects, others):
        root.appendChild(rule)
    return QgsRuleBasedLabeling(root)


def fitted_tip(fields, height_unit):
    """Return the HTML template of a tested station's map tip."""
    station, axis, flag = (
        escaped(text) for text in (station_name(fields), column(fields, "axis"), word(fields, "flag"))
    )
    residual, w, least = (column(fields, name) for name in ("residual", "w", "min_blund"))
    return (
        f'<div style="{STYLE}"><b>[% {station} %]</b> [% {axis} %], [% {flag} %]<br>'
        f"[% coalesce({literal(tr('Residual from the fit '))} || {signed_height(residual, height_unit)} || '. ', '') %]"
        f"{_test_tip(w, least, height_unit)}{_line_tip(fields, height_unit)}</div>"
    )


def _line_tip(fields, height_unit):
    """What the line in plan says of a station, nothing in a layer without one."""
    if fields.indexOf("lateral") < 0 or fields.indexOf("lat_flag") < 0:
        return ""
    lateral, w, least = (column(fields, name) for name in ("lateral", "lat_w", "lat_blund"))
    return (
        f"<br>[% coalesce({literal(tr('In plan: '))} || {escaped(word(fields, 'lat_flag'))} || ', ' || "
        f"{side_text(lateral, height_unit)} || '. ', '') %]{_test_tip(w, least, height_unit)}"
    )


def _test_tip(w, least, height_unit):
    """Test value and smallest detectable blunder, each left out where it is NULL."""
    return (
        f"[% coalesce({literal(tr('Test value w = '))} || {decimal(w, 1, '')} || '. ', '') %]"
        f"[% coalesce({literal(tr('A blunder of '))} || {small_height(least, height_unit)} || "
        f"{literal(tr(' would be found here with a probability of 80 %.'))}, '') %]"
    )
