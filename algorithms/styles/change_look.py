"""Look of compared surveys: triangles up where the structure has risen, down where it has settled, sized by
the change.
"""

from qgis.core import QgsFeatureRequest, QgsRuleBasedLabeling, QgsRuleBasedRenderer
from qgis.PyQt.QtGui import QColor

from ..language.translation import tr
from . import palette
from .label_settings import TEN_THOUSAND, point_label
from .markers import Shape, marker
from .review_symbols import HIGH, LOW
from .review_tip import STYLE
from .sizes import greatest, zoomed
from .wording import column, escaped, literal, side_text, signed_height, small_height, station_name, word

QUIET, NOTICE = QColor(palette.UNCHANGED.dark), QColor(palette.NOTICE.dark)
SMALLEST_SCALE = 25000


def change_renderer(layer):
    """Return the rule-based renderer by verdict; only verdicts that the layer has stand in the legend."""
    fields, most = layer.fields(), greatest(layer, "change") or 1.0
    verdict, change = column(fields, "verdict"), column(fields, "change")
    sized = zoomed(f"2.6 + 3.4 * sqrt(coalesce(abs({change}), 0) / {most!r})")
    small = zoomed(f"1.8 + 1.4 * sqrt(coalesce(abs({change}), 0) / {most!r})")
    index = fields.indexOf("verdict")
    present = layer.uniqueValues(index) if index >= 0 else set()
    triangle, diamond = Shape.EquilateralTriangle, Shape.Diamond
    looks = (
        ("risen", "", tr("Risen"), marker(triangle, 4.2, fill=HIGH, size_expression=sized)),
        ("settled", "", tr("Settled"), marker(triangle, 4.2, fill=LOW, angle=180.0, size_expression=sized)),
        ("possible", "", tr("Possible change"), marker(diamond, 3.0, fill=NOTICE, size_expression=small)),
        (
            "not significant",
            "",
            tr("No significant change"),
            marker(Shape.Circle, 2.0, fill=QUIET, halo=0.25, size_expression=zoomed("2")),
        ),
        (
            "no sd",
            f"{change} >= 0",
            tr("Higher than before, not judged"),
            marker(triangle, 3.4, fill=HIGH, size_expression=sized, cored=True),
        ),
        (
            "no sd",
            f"{change} < 0",
            tr("Lower than before, not judged"),
            marker(triangle, 3.4, fill=LOW, angle=180.0, size_expression=sized, cored=True),
        ),
    )
    root = QgsRuleBasedRenderer.Rule(None)
    for value, condition, label, symbol in looks:
        if value in present:
            test = f"{verdict} = '{value}'" + (f" AND {condition}" if condition else "")
            root.appendChild(QgsRuleBasedRenderer.Rule(symbol, filterExp=test, label=label))
    if fields.indexOf("lat_verd") >= 0:
        # Rules draw over each other: a ring, since on the map left and right turn with the axis.
        ring = marker(Shape.Circle, 6.0, outline=0.5, size_expression=zoomed("6"))
        rule = QgsRuleBasedRenderer.Rule(ring, filterExp=_moved_sideways(fields), label=tr("Moved left or right"))
        root.appendChild(rule)
    only_once = marker(Shape.Cross2, 2.4, outline=0.4, size_expression=zoomed("2.4"))
    root.appendChild(QgsRuleBasedRenderer.Rule(only_once, label=tr("Not compared"), elseRule=True))
    renderer = QgsRuleBasedRenderer(root)
    renderer.setOrderBy(
        QgsFeatureRequest.OrderBy([QgsFeatureRequest.OrderByClause(f"coalesce(abs({change}), 0)", True)])
    )
    renderer.setOrderByEnabled(True)
    return renderer


def _moved_sideways(fields):
    """Whether a station has moved beyond doubt in plan, itself or against its neighbours."""
    told = (f"coalesce({column(fields, name)} IN ('left', 'right'), false)" for name in ("lat_verd", "lbend_verd"))
    return f"({' OR '.join(told)})"


def change_labeling(layer, height_unit):
    """Return the labelling: station and change, in bold where it is beyond doubt, the greatest first."""
    fields = layer.fields()
    verdict, change, station = column(fields, "verdict"), column(fields, "change"), station_name(fields)
    text = (
        f"coalesce({station} || '\\n', '') || CASE WHEN {change} IS NULL THEN {literal(tr('not compared'))} "
        f"ELSE {signed_height(change, height_unit)} END"
    )
    sure = f"coalesce({verdict} IN ('risen', 'settled'), false)"
    if fields.indexOf("lat_change") >= 0:
        text += f" || coalesce('\\n' || {side_text(column(fields, 'lat_change'), height_unit)}, '')"
        sure = f"({sure} OR {_moved_sideways(fields)})"
    bold = point_label(
        text, points=8.5, priority=f"4 + 6 * abs({change}) / {greatest(layer, 'change')!r}", bold=True, radius="2.2"
    )
    root = QgsRuleBasedLabeling.Rule(None)
    root.appendChild(QgsRuleBasedLabeling.Rule(bold, 0, SMALLEST_SCALE, sure))
    root.appendChild(
        QgsRuleBasedLabeling.Rule(
            point_label(text, points=7.0, priority="2", radius="1.2"), 0, TEN_THOUSAND, f"NOT {sure}"
        )
    )
    return QgsRuleBasedLabeling(root)


def _after(start, expression, height_unit, plus_minus=None, worded=signed_height):
    spread = f" || coalesce(' ± ' || {small_height(plus_minus, height_unit)}, '')" if plus_minus else ""
    return f"[% coalesce({literal(start)} || {worded(expression, height_unit)}{spread} || '. ', '') %]"


def _line(fields, height_unit):
    """What the tip says of the line, '' in a layer of heights only."""
    if fields.indexOf("lat_change") < 0:
        return ""
    names = (
        "lat_change",
        "sd_lat",
        "lat_verd",
        "lat_common",
        "lat_bend",
        "sd_lbend",
        "lbend_verd",
        "lat_rate",
        "sd_lrate",
    )
    change, sd, verdict, common, bending, sd_bend, bend_verdict, rate, sd_rate = (
        column(fields, name) for name in names
    )
    return (
        "<br><b>"
        + _after(tr("Line: change "), change, height_unit, sd, side_text)
        + f"</b>[% {escaped(word(fields, 'verdict'))} %]<br>"
        + _after(tr("Common to the axis "), common, height_unit, None, side_text)
        + _after(tr("Differential movement "), bending, height_unit, sd_bend, side_text)
        + f"[% {escaped(bend_verdict)} %] "
        + _after(tr("Rate per year "), rate, height_unit, sd_rate, side_text)
    )


def change_tip(fields, height_unit):
    """Return the HTML template of the map tip; ± is one standard deviation."""
    change, sd, rate, sd_rate, common, bending, sd_bend, axis, first, last = (
        column(fields, name)
        for name in (
            "change",
            "sd_change",
            "rate",
            "sd_rate",
            "common",
            "bending",
            "sd_bend",
            "axis",
            "first_date",
            "last_seen",
        )
    )
    return (
        f'<div style="{STYLE}"><b>[% {escaped(station_name(fields))} %]</b> [% {escaped(axis)} %]<br>'
        f"[% {escaped(first)} %] – [% {escaped(last)} %]<br><b>"
        + _after(tr("Change "), change, height_unit, sd)
        + f"</b>[% {escaped(word(fields, 'verdict'))} %]<br>"
        + _after(tr("Common to the axis "), common, height_unit)
        + _after(tr("Differential movement "), bending, height_unit, sd_bend)
        + _after(tr("Rate per year "), rate, height_unit, sd_rate)
        + _line(fields, height_unit)
        + f"<br><small>{tr('± is one standard deviation.')}</small></div>"
    )
