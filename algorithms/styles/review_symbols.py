"""Symbols of the reviewed stations: shape and colour by status, size by the residual, the worst on top."""

from qgis.core import QgsFeatureRequest, QgsRuleBasedRenderer
from qgis.PyQt.QtGui import QColor

from ..language.translation import tr
from . import palette
from .markers import HALO, OTHER, Shape, marker
from .sizes import zoomed
from .wording import column

# As on imagery; the shapes say the same again.
HIGH, LOW, WITHIN = (QColor(look.dark) for look in (palette.HIGH, palette.LOW, palette.WITHIN))

FULL_SIZE_VARIABLE = "residual_at_full_size"
TOLERANCES_AT_FULL_SIZE = 4.0


def _size_by_residual(residual, smallest, largest):
    # By the square root, so that the area of the symbol is in proportion to the residual.
    share = f"sqrt(abs({residual}) / @{FULL_SIZE_VARIABLE})"
    return zoomed(f"clamp({smallest}, {largest} * {share}, {largest})")


def notable_size(residual):
    """Return the expression of the size (mm) of a station out of tolerance, from that of its residual."""
    return _size_by_residual(residual, 2.8, 6.0)


def residual_at_full_size(tolerance, greatest):
    """Return the residual drawn at full size, in the height unit: four tolerances, else the greatest.

    ``tolerance`` is None, or the tolerance in the height unit; ``greatest`` of the layer's residuals. Without
    residuals it is 1.
    """
    return TOLERANCES_AT_FULL_SIZE * tolerance if tolerance else greatest or 1.0


def _looks(residual):
    """Return (status, condition on the residual, legend text, symbol) of every look, in the order of the legend."""
    any_size = _size_by_residual(residual, 2.8, 6.0)
    small = zoomed("2")
    return (
        (
            "high",
            "",
            tr("High: above the tolerance"),
            marker(Shape.EquilateralTriangle, 4.2, fill=HIGH, size_expression=notable_size(residual)),
        ),
        (
            "low",
            "",
            tr("Low: below the tolerance"),
            marker(Shape.EquilateralTriangle, 4.2, fill=LOW, angle=180.0, size_expression=notable_size(residual)),
        ),
        (
            "within",
            "",
            tr("Within the tolerance"),
            marker(Shape.Circle, 2.0, fill=WITHIN, halo=0.25, size_expression=small),
        ),
        (
            "no tolerance",
            f"{residual} >= 0",
            tr("Built high, no tolerance"),
            marker(Shape.EquilateralTriangle, 3.6, fill=HIGH, size_expression=any_size, cored=True),
        ),
        (
            "no tolerance",
            f"{residual} < 0",
            tr("Built low, no tolerance"),
            marker(Shape.EquilateralTriangle, 3.6, fill=LOW, angle=180.0, size_expression=any_size, cored=True),
        ),
        (
            "no height",
            "",
            tr("No as-built height"),
            # White inside, not open: the axis drawn below would cross it out.
            marker(Shape.Circle, 2.6, fill=HALO, outline=0.35, halo=0.35, size_expression=zoomed("2.6")),
        ),
        (
            "off axis",
            "",
            tr("Off axis: not reviewed"),
            marker(Shape.Cross2, 2.4, outline=0.4, halo=0.35, size_expression=zoomed("2.4")),
        ),
    )


def _shown(layer, tolerance):
    """Return the statuses worth a place in the legend: those this layer can hold."""
    index = layer.fields().indexOf("status")
    present = layer.uniqueValues(index) if index >= 0 else set()
    judged, unjudged = {"within", "high", "low"}, {"no tolerance"}
    shown = present & {"no height", "off axis"}
    # Axes may have tolerances of their own, so both kinds can stand in one layer.
    if tolerance is not None or present & judged:
        shown |= judged
    if tolerance is None or present & unjudged:
        shown |= unjudged
    return shown


def review_renderer(layer, tolerance, greatest):
    """Return the rule-based renderer of reviewed stations.

    ``layer`` has the fields ``status`` and ``residual``; one missing leaves its stations to the last rule, so that no
    station vanishes. ``tolerance``, ``greatest`` as in ``residual_at_full_size``, whose value the layer needs as the
    variable ``FULL_SIZE_VARIABLE``.
    """
    status, residual = column(layer.fields(), "status"), column(layer.fields(), "residual")
    shown = _shown(layer, tolerance)
    root = QgsRuleBasedRenderer.Rule(None)
    for value, condition, label, symbol in _looks(residual):
        if value in shown:
            test = f"{status} = '{value}'" + (f" AND {condition}" if condition else "")
            root.appendChild(QgsRuleBasedRenderer.Rule(symbol, filterExp=test, label=label))
    other = marker(Shape.Square, 1.6, fill=OTHER, size_expression=zoomed("1.6"))
    root.appendChild(QgsRuleBasedRenderer.Rule(other, label=tr("Other"), elseRule=True))
    renderer = QgsRuleBasedRenderer(root)
    # Drawn last is seen first: the worst on top. A station without a height is a gap in the survey, and lies over those
    # that are well.
    gap = residual_at_full_size(tolerance, greatest) / TOLERANCES_AT_FULL_SIZE
    worst_last = QgsFeatureRequest.OrderByClause(f"coalesce(abs({residual}), {gap!r})", True)
    renderer.setOrderBy(QgsFeatureRequest.OrderBy([worst_last]))
    renderer.setOrderByEnabled(True)
    return renderer
