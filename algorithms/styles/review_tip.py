"""Map tip of a reviewed station: its story in a few sentences."""

from ..language.translation import tr
from .wording import column, escaped, full_height, height_sign, literal, side_text, small_height, station_name, word

STYLE = "font-family: sans-serif; max-width: 26em"


def _joined(*pieces):
    return " || ".join(pieces)


def _heading(fields):
    station = f"coalesce(nullif({escaped(station_name(fields))}, ''), {literal(tr('Station'))})"
    axis = escaped(column(fields, "axis"))
    on_axis = f"if({axis} = '', '', {_joined(literal(tr(' on axis ')), axis)})"
    return _joined("'<b>'", station, "'</b>'", on_axis)


def _heights(design, residual, height_unit):
    """As-built and design height; the as-built one is design + residual, since its own field may bear any name."""
    built = _joined(
        literal(tr("As built ")),
        full_height(f"({design} + {residual})", height_unit),
        literal(tr(", design ")),
        full_height(design, height_unit),
        "'. '",
    )
    planned = _joined(
        literal(tr("Design ")), full_height(design, height_unit), literal(tr("; no as-built height here. "))
    )
    return f"CASE WHEN {design} IS NULL THEN '' WHEN {residual} IS NULL THEN {planned} ELSE {built} END"


def _verdict(status, residual, height_unit):
    size, sign = small_height(residual, height_unit), height_sign(residual, height_unit)
    judged = (
        f"CASE WHEN {status} = 'high' THEN {literal(tr(', above the tolerance'))} "
        f"WHEN {status} = 'low' THEN {literal(tr(', below the tolerance'))} "
        f"WHEN {status} = 'within' THEN {literal(tr(', within the tolerance'))} ELSE '' END"
    )
    high = _joined(literal(tr("Built high by ")), size, judged)
    low = _joined(literal(tr("Built low by ")), size, judged)
    level = _joined(literal(tr("Built at its design height")), judged)
    return (
        f"CASE WHEN {residual} IS NULL THEN '' "
        f"WHEN {sign} > 0 THEN {_joined(high, literal('. '))} "
        f"WHEN {sign} < 0 THEN {_joined(low, literal('. '))} "
        f"ELSE {_joined(level, literal('. '))} END"
    )


def _what_to_do(status, adjust, height_unit):
    size = small_height(adjust, height_unit)
    return (
        f"CASE WHEN {adjust} IS NULL OR {height_sign(adjust, height_unit)} = 0 THEN '' "
        f"WHEN {status} = 'within' THEN {literal(tr('No adjustment needed. '))} "
        f"WHEN {adjust} > 0 THEN {_joined(literal(tr('Raise by ')), size, literal('. '))} "
        f"ELSE {_joined(literal(tr('Lower by ')), size, literal('. '))} END"
    )


def _curvature(curv_eff, height_unit):
    size, sign = small_height(curv_eff, height_unit), height_sign(curv_eff, height_unit)
    end = literal(tr(" here, compared with no curvature."))
    raised = _joined(literal(tr("Curvature raises the design by ")), size, end)
    lowered = _joined(literal(tr("Curvature lowers the design by ")), size, end)
    return (
        f"CASE WHEN {curv_eff} IS NULL THEN '' "
        f"WHEN {sign} > 0 THEN {raised} WHEN {sign} < 0 THEN {lowered} "
        f"ELSE {literal(tr('Curvature makes no difference here.'))} END"
    )


def _line(fields, height_unit):
    """How far beside its line, '' in a layer that was not judged by line."""
    if fields.indexOf("lateral") < 0:
        return "''"
    lateral, side = column(fields, "lateral"), column(fields, "side")
    judged = (
        f"CASE WHEN {side} IN ('left', 'right') THEN {literal(tr(', beyond the tolerance of the line'))} "
        f"WHEN {side} = 'within' THEN {literal(tr(', within the tolerance of the line'))} ELSE '' END"
    )
    return f"coalesce({_joined(literal(tr('Line: ')), side_text(lateral, height_unit), judged, literal('. '))}, '')"


def review_tip(fields, height_unit):
    """Return the HTML template of the map tip.

    ``fields`` (QgsFields) of the layer; a missing or NULL one leaves its sentence out. ``height_unit`` ('metre',
    'foot', 'us_foot') of its heights. The tolerance is not put in figures: axes may have tolerances of their own.
    """
    status, design, residual, adjust, curv_eff = (
        column(fields, name) for name in ("status", "design_h", "residual", "adjust", "curv_eff")
    )
    reviewed = _joined(
        *(
            f"({part})"
            for part in (
                _heights(design, residual, height_unit),
                "'<b>'",
                _verdict(status, residual, height_unit),
                _what_to_do(status, adjust, height_unit),
                _line(fields, height_unit),
                "'</b>'",
                _curvature(curv_eff, height_unit),
            )
        )
    )
    off_axis = literal(tr("Too far from every axis to be reviewed."))
    story = f"if({status} = 'off axis', {off_axis}, {reviewed})"
    return (
        f'<div style="{STYLE}">[% {_heading(fields)} %]<br>[% {story} %]<br>'
        f"<small>{tr('Status')}: [% {escaped(word(fields, 'status'))} %]</small></div>"
    )
