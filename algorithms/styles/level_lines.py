"""Look of an adjusted level net: its lines by the size of their test value, its points by what they are."""

from qgis.core import (
    QgsLineSymbol,
    QgsPalLayerSettings,
    QgsProperty,
    QgsRuleBasedLabeling,
    QgsRuleBasedRenderer,
    QgsSimpleLineSymbolLayer,
    QgsSingleSymbolRenderer,
    QgsUnitTypes,
)
from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtGui import QColor

from ..language.height_text import levelled_amounts
from ..language.translation import tr
from . import palette
from .label_settings import TEN_THOUSAND, point_label, text_format
from .markers import HALO, INK, OTHER, Shape, marker
from .review_tip import STYLE
from .wording import MINUS, column, escaped, full_height, literal, signed_height, small_height, word

# Steps that differ in lightness too, wider as they matter more: they hold for colour-blind eyes and in grey.
QUIET, NOTICEABLE, SUSPECT = (QColor(look.dark) for look in (palette.WITHIN, palette.NOTICE, palette.SUSPECT))
BENCHMARK, ADJUSTED = NOTICEABLE, QUIET
LIMIT, NOTICED = "3.29", "1.96"


def _stroke(color, width, style=Qt.PenStyle.SolidLine):
    stroke = QgsSimpleLineSymbolLayer(color, width, style)
    stroke.setPenCapStyle(Qt.PenCapStyle.FlatCap)
    stroke.setPenJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return stroke


def _line(color, width, style=Qt.PenStyle.SolidLine):
    """A line with a dark edge in a light halo."""
    symbol = QgsLineSymbol()
    symbol.changeSymbolLayer(0, _stroke(HALO, width + 1.1))
    symbol.appendSymbolLayer(_stroke(INK, width + 0.45))
    symbol.appendSymbolLayer(_stroke(color, width, style))
    return symbol


def line_renderer(fields):
    """Return the renderer of lines: quiet where |w| is small, wide and warm where a blunder is suspected, dashed where
    no other line checks them, dotted where no benchmark is reached."""
    w, flag = column(fields, "w"), column(fields, "flag")
    looks = (
        (f"{flag} = 'no benchmark'", tr("No benchmark reached: not adjusted"), _line(OTHER, 0.5, Qt.PenStyle.DotLine)),
        (f"{w} IS NULL", tr("Checked by no other line"), _line(QColor(palette.PAPER), 0.6, Qt.PenStyle.DashLine)),
        (f"abs({w}) <= {NOTICED}", tr("|w| up to 1.96"), _line(QUIET, 0.6)),
        (
            f"abs({w}) > {NOTICED} AND {flag} <> 'suspected blunder'",
            tr("|w| 1.96 to the limit"),
            _line(NOTICEABLE, 0.9),
        ),
        (f"{flag} = 'suspected blunder'", tr("|w| beyond the limit: blunder suspected"), _line(SUSPECT, 1.5)),
    )
    root = QgsRuleBasedRenderer.Rule(None)
    taken = []
    for condition, label, symbol in looks:
        test = " AND ".join([f"({condition})", *(f"NOT coalesce({earlier}, false)" for earlier in taken[:2])])
        root.appendChild(QgsRuleBasedRenderer.Rule(symbol, filterExp=test, label=label))
        taken.append(condition)
    renderer = QgsRuleBasedRenderer(root)
    renderer.setUsingSymbolLevels(False)
    return renderer


def reduced_renderer():
    """Return the renderer of reduced sights: one quiet line each."""
    return QgsSingleSymbolRenderer(_line(QUIET, 0.6))


def _test_value(w):
    """A test value in one decimal with its sign."""
    return f"(CASE WHEN {w} < 0 THEN '{MINUS}' ELSE '+' END || format_number(abs({w}), 1))"


def line_labeling(fields):
    """Return the labelling: the test value of noticeable lines, along the line."""
    w = column(fields, "w")
    settings = QgsPalLayerSettings()
    settings.fieldName = f"'w ' || {_test_value(w)}"
    settings.isExpression = True
    settings.placement = QgsPalLayerSettings.Placement.Line
    settings.dist = 1.0
    settings.distUnits = QgsUnitTypes.RenderUnit.RenderMillimeters
    settings.setFormat(text_format(8.5, True))
    # The points' names may lie over the lines: where many meet, nothing else is left for them.
    obstacle = settings.obstacleSettings()
    obstacle.setIsObstacle(False)
    settings.setObstacleSettings(obstacle)
    properties = settings.dataDefinedProperties()
    properties.setProperty(
        QgsPalLayerSettings.Property.Priority, QgsProperty.fromExpression(f"least(10, 2 * abs({w}))")
    )
    settings.setDataDefinedProperties(properties)
    rule = QgsRuleBasedLabeling.Rule(settings)
    rule.setFilterExpression(f"abs({w}) > {NOTICED}")
    root = QgsRuleBasedLabeling.Rule(None)
    root.appendChild(rule)
    return QgsRuleBasedLabeling(root)


def line_tip(fields, height_unit):
    """Return the HTML template of a line's map tip."""
    start, end, flag = (
        escaped(text) for text in (column(fields, "from_pt"), column(fields, "to_pt"), word(fields, "flag"))
    )
    v, w, least, dh = (column(fields, name) for name in ("v", "w", "min_blund", "dh"))
    fine = levelled_amounts(height_unit)
    checked = (
        f"coalesce({literal(tr('Test value w = '))} || {_test_value(w)} || '. ' || "
        f"{literal(tr('A blunder of '))} || {small_height(least, height_unit, fine)} || "
        f"{literal(tr(' would be found with a probability of 80 %.'))}, {literal(tr('No other line checks it.'))})"
    )
    return (
        f'<div style="{STYLE}"><b>[% {start} %] \u2013 [% {end} %]</b>, [% {flag} %]<br>'
        f"[% {literal(tr('Observed '))} || {full_height(dh, height_unit)} || "
        f"coalesce({literal(tr(', observed minus adjusted '))} || {signed_height(v, height_unit, fine)}, '') || "
        f"'. ' %]"
        f"[% {checked} %]</div>"
    )


def height_renderer(fields):
    """Return the renderer of points with adjusted heights: benchmarks triangular, adjusted ones round."""
    role = column(fields, "role")
    looks = (
        (f"{role} = 'adjusted'", tr("Adjusted height"), marker(Shape.Circle, 2.2, fill=ADJUSTED, halo=0.3)),
        (
            f"{role} IN ('fixed', 'held')",
            tr("Benchmark, held fixed"),
            marker(Shape.EquilateralTriangle, 4.2, fill=BENCHMARK),
        ),
        (
            f"{role} IN ('weighted', 'checked')",
            tr("Benchmark, adjusted with the lines"),
            marker(Shape.EquilateralTriangle, 4.2, fill=ADJUSTED, cored=True),
        ),
        (
            f"{role} IN ('no benchmark', 'not in the net')",
            tr("No adjusted height"),
            marker(Shape.Cross2, 2.4, outline=0.4, halo=0.35),
        ),
    )
    root = QgsRuleBasedRenderer.Rule(None)
    for condition, label, symbol in looks:
        root.appendChild(QgsRuleBasedRenderer.Rule(symbol, filterExp=condition, label=label))
    other = marker(Shape.Square, 1.6, fill=OTHER)
    root.appendChild(QgsRuleBasedRenderer.Rule(other, label=tr("Other"), elseRule=True))
    return QgsRuleBasedRenderer(root)


def height_labeling(fields, height_unit):
    """Return the labelling: the point's name, closer up with its height; benchmarks first where room is short."""
    point, height, role = (column(fields, name) for name in ("point", "height", "role"))
    priority = f"if({role} = 'adjusted', 4, 9)"
    near = f"{point} || coalesce('\\n' || {full_height(height, height_unit)}, '')"
    root = QgsRuleBasedLabeling.Rule(None)
    root.appendChild(
        QgsRuleBasedLabeling.Rule(point_label(near, points=8, priority=priority, radius="1.5"), 0, TEN_THOUSAND)
    )
    root.appendChild(
        QgsRuleBasedLabeling.Rule(point_label(point, points=8, priority=priority, radius="1.5"), TEN_THOUSAND, 50_000)
    )
    return QgsRuleBasedLabeling(root)


def height_tip(fields, height_unit):
    """Return the HTML template of a point's map tip."""
    point, role = escaped(column(fields, "point")), escaped(word(fields, "role"))
    height, sd, difference = (column(fields, name) for name in ("height", "sd", "given_diff"))
    fine = levelled_amounts(height_unit)
    return (
        f'<div style="{STYLE}"><b>[% {point} %]</b>, [% {role} %]<br>'
        f"[% coalesce({literal(tr('Height '))} || {full_height(height, height_unit)} || "
        f"coalesce({literal(tr(', standard deviation '))} || {small_height(sd, height_unit, fine)}, '') || '. ', "
        f"{literal(tr('No height: no line ties it to a benchmark. '))}) %]"
        f"[% coalesce({literal(tr('Adjusted minus given '))} || {signed_height(difference, height_unit, fine)} || "
        f"'.', '') %]</div>"
    )
