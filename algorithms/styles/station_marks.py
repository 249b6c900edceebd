"""Look of stations not yet reviewed: a quiet ring with the station beside it."""

from qgis.core import QgsRuleBasedLabeling, QgsSingleSymbolRenderer

from ..language.translation import tr
from ..language.units import UNIT_LABELS
from . import palette
from .label_settings import TEN_THOUSAND, point_label
from .markers import Shape, marker, tinted
from .review_tip import STYLE
from .wording import column, decimal, escaped, full_height, literal, station_name

SIZE = "(2.2 * scale_linear(coalesce(@map_scale, 5000), 5000, 30000, 1, 0.6))"


def station_renderer():
    """Return the renderer: one ring for every station, smaller at small scales."""
    ring = marker(Shape.Circle, 2.2, fill=tinted(palette.PAPER, 110), outline=0.3, halo=0.25, size_expression=SIZE)
    return QgsSingleSymbolRenderer(ring)


def station_labeling(fields):
    """Return the labelling: the station, at 1:10,000 and larger."""
    settings = point_label(station_name(fields), points=7.5, priority="4", radius=f"0.5 * {SIZE}")
    root = QgsRuleBasedLabeling.Rule(None)
    root.appendChild(QgsRuleBasedLabeling.Rule(settings, 0, TEN_THOUSAND))
    return QgsRuleBasedLabeling(root)


def _sentence(expression, start, text):
    if expression == "NULL":
        return ""
    return f"[% if({expression} IS NULL, '', {literal(start)} || {text} || '. ') %]"


def station_tip(fields, height_unit, chainage_unit):
    """Return the HTML template of the map tip; ``fields`` (QgsFields) are those the run wrote, units as in the spec."""
    chainage, offset, height, azimuth = (column(fields, name) for name in ("chainage", "offset", "height", "azimuth"))
    unit = UNIT_LABELS[chainage_unit]
    side = (
        f"CASE WHEN round({offset}, 3) > 0 THEN {literal(tr(' right of the axis'))} "
        f"WHEN round({offset}, 3) < 0 THEN {literal(tr(' left of the axis'))} ELSE '' END"
    )
    station, axis = escaped(station_name(fields)), escaped(column(fields, "axis"))
    return (
        f'<div style="{STYLE}"><b>[% {station} %]</b> [% {axis} %]<br>'
        + _sentence(chainage, tr("Chainage "), decimal(chainage, 3, unit))
        + _sentence(offset, tr("Offset "), f"{decimal(f'abs({offset})', 3, unit)} || {side}")
        + _sentence(height, tr("Height "), full_height(height, height_unit))
        + _sentence(azimuth, tr("Azimuth of the axis "), decimal(azimuth, 4, "°"))
        + "</div>"
    )
