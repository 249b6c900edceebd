"""The summary of a run of designheights: a row for each axis."""

import numpy as np

from ..boundary.fields import SUMMARY, SUMMARY_LINE


def summary_table(reports, notation, units, record, used, chainage):
    """Columns of the summary, a row for each axis, those without stations too; in the run's units. Those of the line
    only where one axis is judged by it. ``record``: of the run; ``used``: {name of an axis with stations: its part of
    the record}."""
    bare = record.text()
    told = iter(record.texts_with_axes(used.items()))
    worst = [r.rows[r.statistics.greatest_at] if r.statistics and r.statistics.number else -1 for r in reports]
    texts = notation.texts(np.where(np.array(worst) < 0, np.nan, chainage[worst]))
    rows = [
        _empty_row(report, units, bare) if report.found is None else _summary_row(report, units, at, next(told))
        for report, at in zip(reports, texts)
    ]
    fields = SUMMARY
    if any(report.line is not None for report in reports):
        rows = [{**row, **_line_row(report, notation, units, chainage)} for row, report in zip(rows, reports)]
        fields = (*SUMMARY[:-1], *SUMMARY_LINE, SUMMARY[-1])
    return {name: [row[name] for row in rows] for name in fields}


def _line_row(report, notation, units, chainage):
    line, row = report.line, dict.fromkeys(SUMMARY_LINE)
    if line is None:
        return {**row, "line": None if report.found is None else "none"}
    first, last, at = (
        notation.text(chainage[k]) if k >= 0 else None for k in (line.first, line.last, line.greatest_at)
    )
    row.update(
        line=line.kind,
        line_from=first,
        line_to=last,
        line_tol=None if line.tolerance is None else line.tolerance / units.height,
        lat_number=line.number,
        lat_rms=line.rms / units.height,
        lat_max=abs(line.greatest) / units.height,
        lat_max_at=at,
        lat_within=line.within,
        left=line.left,
        right=line.right,
    )
    return row


def _empty_row(report, units, told):
    """An axis to which no station belongs: it was not surveyed, which is worth a row."""
    counts = dict.fromkeys(("number", "within", "high", "low", "no_height"), 0)
    return {
        **dict.fromkeys(SUMMARY),
        **counts,
        "axis": report.name,
        "record": told,
        "chain_h": report.axis.chainage_height / units.height,
    }


def _summary_row(report, units, at, told):
    controls = [*report.found.controls, None, None][:2]
    row = {"axis": report.name, "design": report.spec.kind}
    for letter, control in zip("ab", controls):
        row[f"chain_{letter}"] = None if control is None else control.chainage / units.chainage
        row[f"height_{letter}"] = None if control is None else control.height / units.height
    statistics = report.statistics
    row.update(
        slope=report.found.slope,
        chain_h=report.axis.chainage_height / units.height,
        tolerance=None if report.tolerance is None else report.tolerance / units.height,
        number=statistics.number,
        rms=statistics.rms / units.height,
        max_abs=statistics.greatest / units.height,
        max_at=at,
        within=statistics.within,
        high=statistics.high,
        low=statistics.low,
        no_height=statistics.no_height,
        record=told,
    )
    return row
