"""Look of fitted references: where a line or plane is level, the ellipses around it, and the tested stations."""

from qgis.core import (
    QgsCategorizedSymbolRenderer,
    QgsFillSymbol,
    QgsRendererCategory,
    QgsRuleBasedLabeling,
    QgsRuleBasedRenderer,
    QgsSimpleFillSymbolLayer,
    QgsSingleSymbolRenderer,
)
from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtGui import QColor

from ..language.translation import tr
from . import palette
from .label_settings import TEN_THOUSAND, point_label
from .markers import CLEAR, HALO, INK, OTHER, Shape, marker, tinted
from .review_tip import STYLE
from .station_marks import SIZE
from .wording import column, decimal, escaped, literal, signed_height, small_height

SUSPECT = QColor(palette.SUSPECT.dark)
KEPT = QColor(palette.WITHIN.dark)


def reference_renderer():
    """Return the renderer of references: one bold mark where the line or plane is level."""
    return QgsSingleSymbolRenderer(marker(Shape.Cross2, 5.0, outline=0.9, halo=0.6))


def reference_labeling(fields):
    """Return the labelling: the name, and that it is level there."""
    name, state = column(fields, "name"), column(fields, "tan_state")
    place = (
        f"CASE WHEN {column(fields, 'tan_lat')} IS NULL THEN {literal(tr('fitted'))} WHEN {state} = 'outside' "
        f"THEN {literal(tr('level here, outside the stations'))} ELSE {literal(tr('level here'))} END"
    )
    settings = point_label(f"{name} || '\\n' || {place}", points=8.5, priority="8", radius="2.5")
    root = QgsRuleBasedLabeling.Rule(None)
    root.appendChild(QgsRuleBasedLabeling.Rule(settings))
    return QgsRuleBasedLabeling(root)


def reference_tip(fields, height_unit):
    """Return the HTML template of a reference's map tip."""
    name, kind, axes = (escaped(column(fields, field)) for field in ("name", "kind", "axes"))
    rms, number, removed = (column(fields, field) for field in ("rms", "number", "removed"))
    test = escaped(column(fields, "global_t"))
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
    """Return the renderer of ellipses: solid from the heights alone, dashed with the geoid's slope error."""
    categories = (
        (
            "levelling",
            tr("Level here, 95 %: heights alone"),
            _outline(INK, 0.6, Qt.PenStyle.SolidLine, tinted(palette.NOTICE.dark, 90)),
        ),
        (
            "geoid",
            tr("The same with the geoid's slope"),
            _outline(INK, 0.5, Qt.PenStyle.DashLine, tinted(palette.PAPER, 40)),
        ),
    )
    return QgsCategorizedSymbolRenderer(
        "kind", [QgsRendererCategory(*category[::2], category[1]) for category in categories]
    )


def fitted_renderer(fields):
    """Return the renderer of tested stations: suspected blunders stand out, the kept ones are quiet."""
    flag = column(fields, "flag")
    looks = (
        ("kept", tr("Kept"), marker(Shape.Circle, 2.0, fill=KEPT, halo=0.25, size_expression=SIZE)),
        ("no height", tr("No as-built height"), marker(Shape.Circle, 2.4, outline=0.35, halo=0.35)),
        ("not fitted", tr("Not fitted: too few on its leg"), marker(Shape.Square, 2.0, outline=0.35, halo=0.35)),
        ("off axis", tr("Off axis: not fitted"), marker(Shape.Cross, 2.4, outline=0.4, halo=0.35)),
        ("suspected blunder", tr("Suspected blunder"), marker(Shape.Star, 4.6, fill=SUSPECT)),
    )
    root = QgsRuleBasedRenderer.Rule(None)
    for value, label, symbol in looks:
        root.appendChild(QgsRuleBasedRenderer.Rule(symbol, filterExp=f"{flag} = '{value}'", label=label))
    other = marker(Shape.Square, 1.6, fill=OTHER)
    root.appendChild(QgsRuleBasedRenderer.Rule(other, label=tr("Other"), elseRule=True))
    return QgsRuleBasedRenderer(root)


def fitted_labeling(fields, height_unit):
    """Return the labelling: suspects with station and residual to 1:25,000, the rest from 1:10,000 on."""
    station, residual, flag = (column(fields, name) for name in ("station", "residual", "flag"))
    text = f"{station} || coalesce('\\n' || {signed_height(residual, height_unit)}, '')"
    root = QgsRuleBasedLabeling.Rule(None)
    suspects = QgsRuleBasedLabeling.Rule(point_label(text, points=8.5, priority="9", radius="2.3"), 0, 25_200)
    suspects.setFilterExpression(f"{flag} = 'suspected blunder'")
    others = QgsRuleBasedLabeling.Rule(
        point_label(station, points=7.5, priority="3", radius=f"0.5 * {SIZE}"), 0, TEN_THOUSAND
    )
    others.setFilterExpression(f"coalesce({flag}, '') <> 'suspected blunder'")
    for rule in (suspects, others):
        root.appendChild(rule)
    return QgsRuleBasedLabeling(root)


def fitted_tip(fields, height_unit):
    """Return the HTML template of a tested station's map tip."""
    station, axis, flag = (escaped(column(fields, name)) for name in ("station", "axis", "flag"))
    residual, w, least = (column(fields, name) for name in ("residual", "w", "min_blund"))
    return (
        f'<div style="{STYLE}"><b>[% {station} %]</b> [% {axis} %], [% {flag} %]<br>'
        f"[% coalesce({literal(tr('Residual from the fit '))} || {signed_height(residual, height_unit)} || '. ', '') %]"
        f"[% coalesce({literal(tr('Test value w = '))} || {decimal(w, 1, '')} || '. ', '') %]"
        f"[% coalesce({literal(tr('A blunder of '))} || {small_height(least, height_unit)} || "
        f"{literal(tr(' would be found here with a chance of 80 %.'))}, '') %]</div>"
    )
