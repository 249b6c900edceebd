"""Look of an adjustment schedule: arrows up for raise and down for lower, sized by the movement; what is left out
stands apart."""

from qgis.core import QgsFeatureRequest, QgsRuleBasedLabeling, QgsRuleBasedRenderer
from qgis.PyQt.QtGui import QColor

from ..language.stored_words import stored_text
from ..language.translation import tr
from . import palette
from .label_settings import TEN_THOUSAND, point_label
from .markers import OTHER, Shape, marker
from .review_symbols import HIGH, LOW, WITHIN
from .review_tip import STYLE
from .sizes import greatest, zoomed
from .wording import column, escaped, literal, side_text, signed_height, small_height, station_name, word

AGAIN = QColor(palette.NOTICE.dark)
SMALLEST_SCALE = 25000


def schedule_renderer(layer):
    """Return the rule-based renderer; only actions that the layer has stand in the legend, and nothing vanishes."""
    fields, size = layer.fields(), greatest(layer, "move") or 1.0
    action, move, after = (column(fields, name) for name in ("action", "move", "after"))
    arrow = zoomed(f"3.2 + 3.2 * sqrt(coalesce(abs({move}), 0) / {size!r})")
    index = fields.indexOf("action")
    present = layer.uniqueValues(index) if index >= 0 else set()
    out = f"{after} IN ('high', 'low')"
    looks = (
        ("raise", "", tr("Raise"), marker(Shape.Arrow, 4.6, fill=LOW, size_expression=arrow)),
        ("lower", "", tr("Lower"), marker(Shape.Arrow, 4.6, fill=HIGH, angle=180.0, size_expression=arrow)),
        (
            "keep",
            f"NOT coalesce({out}, false)",
            tr("Keep"),
            marker(Shape.Circle, 2.0, fill=WITHIN, halo=0.25, size_expression=zoomed("2")),
        ),
        (
            "keep",
            out,
            tr("Keep, out of tolerance"),
            marker(Shape.Square, 2.8, fill=AGAIN, size_expression=zoomed("2.8")),
        ),
        (
            "measure again",
            "",
            tr("Measure again"),
            marker(Shape.Diamond, 4.2, fill=AGAIN, size_expression=zoomed("4.2")),
        ),
        (
            "left out",
            "",
            tr("Left out: suspected blunder"),
            marker(Shape.Cross2, 3.0, outline=0.6, size_expression=zoomed("3")),
        ),
        (
            "no height",
            "",
            tr("No as-built height"),
            marker(Shape.Circle, 2.6, fill=QColor(palette.PAPER), outline=0.35, size_expression=zoomed("2.6")),
        ),
        (
            "off axis",
            "",
            tr("Off axis: not scheduled"),
            marker(Shape.Cross2, 2.2, outline=0.35, size_expression=zoomed("2.2")),
        ),
    )
    root = QgsRuleBasedRenderer.Rule(None)
    for value, condition, label, symbol in looks:
        if value in present:
            test = f"{action} = '{value}'" + (f" AND {condition}" if condition else "")
            root.appendChild(QgsRuleBasedRenderer.Rule(symbol, filterExp=test, label=label))
    if fields.indexOf("lat_action") >= 0:
        # Rules draw over each other: a ring, since on the map left and right turn with the axis.
        ring = marker(Shape.Circle, 6.0, outline=0.5, size_expression=zoomed("6"))
        test = f"{column(fields, 'lat_action')} IN ('left', 'right')"
        root.appendChild(QgsRuleBasedRenderer.Rule(ring, filterExp=test, label=tr("Move left or right as well")))
    other = marker(Shape.Square, 1.6, fill=OTHER)
    root.appendChild(QgsRuleBasedRenderer.Rule(other, label=tr("Other"), elseRule=True))
    renderer = QgsRuleBasedRenderer(root)
    renderer.setOrderBy(
        QgsFeatureRequest.OrderBy([QgsFeatureRequest.OrderByClause(f"coalesce(abs({move}), {size / 2!r})", True)])
    )
    renderer.setOrderByEnabled(True)
    return renderer


def _told(fields, height_unit):
    """The action in words: 'raise 12 mm', 'measure again'."""
    action, move = column(fields, "action"), column(fields, "move")
    return (
        f"CASE WHEN {action} IN ('raise', 'lower') THEN if({action} = 'raise', {literal(tr('raise '))}, "
        f"{literal(tr('lower '))}) "
        f"|| {small_height(move, height_unit)} ELSE coalesce({word(fields, 'action')}, '') END"
    )


def _told_sideways(fields, height_unit):
    """The lateral action in words: 'move left 5 mm', 'keep'."""
    action, move = column(fields, "lat_action"), column(fields, "lat_move")
    left, right = literal(tr("move left ")), literal(tr("move right "))
    return (
        f"CASE WHEN {action} IN ('left', 'right') THEN if({action} = 'left', {left}, {right}) "
        f"|| {small_height(move, height_unit)} ELSE coalesce({word(fields, 'lat_action')}, '') END"
    )


def schedule_labeling(layer, height_unit):
    """Return the labelling: station and action, in bold what is to be done, the greatest first; the rest at larger
    scales only."""
    fields = layer.fields()
    action, move, station = column(fields, "action"), column(fields, "move"), station_name(fields)
    text = f"coalesce({station} || '\\n', '') || {_told(fields, height_unit)}"
    busy = f"coalesce({action} IN ('raise', 'lower', 'measure again', 'left out'), false)"
    if fields.indexOf("lat_action") >= 0:
        moves = f"coalesce({column(fields, 'lat_action')} IN ('left', 'right'), false)"
        # Beside left and right nothing else begins with 'left'.
        out, aside = literal(stored_text("action", "left out")), literal(stored_text("lat_action", "set aside"))
        text = f"replace({text}, {out}, {aside})"
        text += f" || if({moves}, '\\n' || {_told_sideways(fields, height_unit)}, '')"
        busy = f"({busy} OR {moves})"
    most = greatest(layer, "move") or 1.0
    priority = f"4 + 6 * coalesce(abs({move}) / {most!r}, 0.5)"
    bold = point_label(text, points=8.5, priority=priority, bold=True, radius="2.4")
    quiet = point_label(station, points=7.0, priority="2", radius="1.2")
    root = QgsRuleBasedLabeling.Rule(None)
    root.appendChild(QgsRuleBasedLabeling.Rule(bold, 0, SMALLEST_SCALE, busy))
    root.appendChild(QgsRuleBasedLabeling.Rule(quiet, 0, TEN_THOUSAND, f"NOT {busy}"))
    return QgsRuleBasedLabeling(root)


def schedule_tip(fields, height_unit):
    """Return the HTML template of the map tip."""
    station = station_name(fields)
    action, move, predicted, reason, axis, residual = (
        column(fields, name) for name in ("action", "move", "predicted", "reason", "axis", "residual")
    )
    return (
        f'<div style="{STYLE}"><b>[% {escaped(station)} %]</b> [% {escaped(axis)} %]<br>'
        f"<b>[% {_told(fields, height_unit)} %]</b><br>"
        f"[% CASE WHEN {predicted} IS NULL THEN '' ELSE {literal(tr('Residual now '))} || "
        f"{signed_height(residual, height_unit)} || "
        f"{literal(tr(', predicted '))} || {signed_height(predicted, height_unit)} || ' (' || "
        f"coalesce({word(fields, 'after')}, '') || ')' END %]"
        f"<br><small>[% {escaped(reason)} %]</small>{_line_tip(fields, height_unit)}</div>"
    )


def _line_tip(fields, height_unit):
    """What the tip says of the line, '' in a schedule of heights only."""
    if fields.indexOf("lat_action") < 0:
        return ""
    lateral, predicted, reason = (column(fields, name) for name in ("lateral", "lat_pred", "lat_reason"))
    return (
        f"<br><b>{tr('Line: ')}[% {_told_sideways(fields, height_unit)} %]</b><br>"
        f"[% coalesce({literal(tr('Stands '))} || {side_text(lateral, height_unit)} || {literal(tr(', predicted '))} "
        f"|| {side_text(predicted, height_unit)} || ' (' || coalesce({word(fields, 'lat_after')}, '') || ')', '') %]"
        f"<br><small>[% {escaped(reason)} %]</small>"
    )
