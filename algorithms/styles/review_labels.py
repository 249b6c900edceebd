"""Labels of the reviewed stations: the station and how far it was built from its design."""

from qgis.core import QgsPalLayerSettings, QgsRuleBasedLabeling

from ..language.translation import tr
from .label_settings import TEN_THOUSAND, point_label
from .review_symbols import FULL_SIZE_VARIABLE, notable_size
from .wording import column, literal, side_text, signed_height, station_name

SMALLEST_SCALE = 25000
SMALLEST_SCALE_QUIET = TEN_THOUSAND
QUIET_RADIUS = "1.2"
# The layer's greatest residual, and from which share of it on a station is among the worst.
GREATEST_VARIABLE = "greatest_residual"
WORST = 0.4


def review_label(fields, height_unit):
    """Return the expression of a label: the station and, on a second line, its signed residual or why it has none; on a
    third the lateral departure, where the layer has one.

    ``fields`` (QgsFields) of the layer; ``height_unit`` ('metre', 'foot', 'us_foot') of the residual.
    """
    status, residual, station = column(fields, "status"), column(fields, "residual"), station_name(fields)
    second = (
        f"CASE WHEN {status} = 'off axis' THEN {literal(tr('off axis'))} "
        f"WHEN {residual} IS NULL THEN {literal(tr('no as-built height'))} "
        f"ELSE {signed_height(residual, height_unit)} END"
    )
    label = f"coalesce({station} || '\\n', '') || {second}"
    if fields.indexOf("lateral") < 0:
        return label
    return f"{label} || coalesce('\\n' || {side_text(column(fields, 'lateral'), height_unit)}, '')"


def _notable(fields):
    """Out of tolerance, in height or sideways, or, where there is none, with at least half of the layer's greatest
    residual."""
    status, residual = column(fields, "status"), column(fields, "residual")
    large = f"abs({residual}) >= 0.5 * coalesce(@{FULL_SIZE_VARIABLE}, 0)"
    notable = f"coalesce({status} IN ('high', 'low') OR {status} = 'no tolerance' AND {large}, false)"
    if fields.indexOf("side") < 0:
        return notable
    return f"({notable} OR coalesce({column(fields, 'side')} IN ('left', 'right'), false))"


def review_labeling(fields, height_unit):
    """Return the labelling: notable stations first and in bold type, the others in small type at larger scales only,
    the worst of the notable at every scale.

    The layer needs the variables ``FULL_SIZE_VARIABLE``, see ``review_renderer``, and ``GREATEST_VARIABLE``.
    """
    text, residual = review_label(fields, height_unit), column(fields, "residual")
    notable = _notable(fields)
    share = f"coalesce(clamp(0, abs({residual}) / @{FULL_SIZE_VARIABLE}, 1), 0)"
    bold = point_label(
        text, points=8.5, priority=f"6 + 4 * {share}", bold=True, radius=f"0.5 * {notable_size(residual)}"
    )
    small = point_label(text, points=8.0, priority=f"1 + 4 * {share}", radius=QUIET_RADIUS)
    # Between the two scales the quiet stations have no label, but those of the others keep off their symbols.
    silent = point_label(text, points=8.0, priority="0", radius=QUIET_RADIUS)
    silent.drawLabels = False
    worst = f"{notable} AND abs({residual}) >= {WORST} * coalesce(@{GREATEST_VARIABLE}, 0)"
    root = QgsRuleBasedLabeling.Rule(None)
    for settings, largest, smallest, test in (
        (bold, 0, SMALLEST_SCALE, notable),
        (small, 0, SMALLEST_SCALE_QUIET, f"NOT {notable}"),
        (silent, SMALLEST_SCALE_QUIET, SMALLEST_SCALE, f"NOT {notable}"),
        (QgsPalLayerSettings(bold), SMALLEST_SCALE, 0, worst),
    ):
        root.appendChild(QgsRuleBasedLabeling.Rule(settings, largest, smallest, test))
    return QgsRuleBasedLabeling(root)
