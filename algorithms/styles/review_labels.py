"""Labels of the reviewed stations: the station and how far it was built from its design."""

from qgis.core import QgsRuleBasedLabeling

from .label_settings import point_label
from .wording import column, literal, signed_height, tr

SMALLEST_SCALE = 25000
SMALLEST_SCALE_WITHIN = 12500


def review_label(fields, height_unit):
    """Return the expression of a label: the station and, on a second line, its signed residual or why it has none.

    ``fields`` (QgsFields) of the layer; ``height_unit`` ('metre', 'foot', 'us_foot') of the residual.
    """
    status, station, residual = (column(fields, name) for name in ("status", "station", "residual"))
    second = (f"CASE WHEN {status} = 'off axis' THEN {literal(tr('off axis'))} "
              f"WHEN {residual} IS NULL THEN {literal(tr('no height'))} "
              f"ELSE {signed_height(residual, height_unit)} END")
    return f"coalesce({station} || '\\n', '') || {second}"


def review_labeling(fields, height_unit):
    """Return the labelling; stations out of tolerance come first, those within in small type and at larger scales only."""
    text, status = review_label(fields, height_unit), column(fields, "status")
    root = QgsRuleBasedLabeling.Rule(None)
    for values, points, priority, bold, scale in (
            ("'high', 'low'", 8.5, 10, True, SMALLEST_SCALE),
            ("'no tolerance'", 8.0, 6, False, SMALLEST_SCALE),
            ("'no height', 'off axis'", 7.0, 3, False, SMALLEST_SCALE_WITHIN),
            ("'within'", 7.0, 1, False, SMALLEST_SCALE_WITHIN)):
        settings = point_label(text, points=points, priority=priority, bold=bold)
        root.appendChild(QgsRuleBasedLabeling.Rule(settings, 0, scale, f"{status} IN ({values})"))
    return QgsRuleBasedLabeling(root)
