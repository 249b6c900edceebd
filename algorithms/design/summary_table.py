"""The summary of a run of designheights: a row for each axis."""

from ..boundary.fields import SUMMARY, SUMMARY_LINE


def summary_table(reports, notation, units, record, chainage):
    """Columns of the summary, a row for each axis, those without stations too; in the run's units. Those of the line
    only where one axis is judged by it."""
    rows = [
        _empty_row(report, units, record)
        if report.found is None
        else _summary_row(report, notation, units, record, chainage)
        for report in reports
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


def _empty_row(report, units, record):
    """An axis to which no station belongs: it was not surveyed, which is worth a row."""
    counts = dict.fromkeys(("number", "within", "high", "low", "no_height"), 0)
    return {
        **dict.fromkeys(SUMMARY),
        **counts,
        "axis": report.name,
        "record": record.text(),
        "chain_h": report.axis.chainage_height / units.height,
    }


def _summary_row(report, notation, units, record, chainage):
    controls = [*report.found.controls, None, None][:2]
    row = {"axis": report.name, "design": report.spec.kind}
    for letter, control in zip("ab", controls):
        row[f"chain_{letter}"] = None if control is None else control.chainage / units.chainage
        row[f"height_{letter}"] = None if control is None else control.height / units.height
    statistics = report.statistics
    at = "" if statistics.greatest_at is None else notation.text(chainage[report.rows[statistics.greatest_at]])
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
        record=record.with_axes({report.name: report.record(units)}).text(),
    )
    return row
