"""The output tables of adjustlevelling."""

import numpy as np
from qgis.core import QgsWkbTypes

from ..boundary.output_rows import OutputTable
from ..core.covariance_text import covariance_texts
from ..language.translation import tr
from ..styles.layer_kinds import StyleSpec


class NetTables:
    """The output tables of a run, in its units. ``record``: RunRecord of the run; ``points_record``: of POINTS."""

    def __init__(self, run, record, points_record):
        self.run, self.units = run, run.units
        self.record, self.points_record = record, points_record

    def made(self, with_covariance):
        tables = [self._heights(), self._lines(), self._misclosures()]
        if self.run.named is not None:
            tables.append(self._points())
        return tables + ([self._covariance()] if with_covariance else [])

    def _style(self, kind, title, record=None):
        record = record or self.record
        return StyleSpec(kind, title, record.height_unit, record.chainage_unit, None, record.text())

    def _columns(self, points):
        """Columns of the heights of net points, an index -1 standing for a point that is not in the net."""
        run, unit = self.run, self.units.height
        inside = points >= 0

        def numbers(values):
            return np.where(inside, values[points], np.nan) / unit

        roles = [run.roles[k] if k >= 0 else "not in the net" for k in points]
        return {
            "height": numbers(run.adjustment.heights),
            "sd": numbers(run.adjustment.height_deviations),
            "role": roles,
            "given_h": numbers(run.given),
            "given_diff": numbers(run.adjustment.heights - run.given),
            "w": np.where(inside, run.point_w[points], np.nan),
        }

    def _heights(self):
        net = self.run.lines.net
        columns = {"point": list(net.names), **self._columns(np.arange(len(net.names)))}
        return OutputTable.bare("OUTPUT", columns, self._style("levelled", tr("Adjusted heights")))

    def _points(self):
        named, run = self.run.named, self.run
        points = np.array([run.index.get(name, -1) for name in named.names], int)
        columns = {"point": list(named.names), **self._columns(points)}
        style = self._style("levelled", tr("Stations with adjusted heights"), self.points_record)
        return OutputTable.beside("POINTS", columns, style, named.source, np.arange(len(points)), named.points)

    def _lines(self):
        run, lines, unit = self.run, self.run.lines, self.units.height
        rows = len(lines.table.ids)

        def spread(values, scale=1.0):
            column = np.full(rows, np.nan)
            column[lines.used] = values / scale
            return column

        flags = np.full(rows, "not used", dtype=object)
        flags[lines.used] = run.flags
        starts, ends = lines.table.columns["FROM_FIELD"], lines.table.columns["TO_FIELD"]
        columns = {
            "from_pt": list(starts),
            "to_pt": list(ends),
            "dh": lines.table.columns["DIFFERENCE_FIELD"],
            "sd": spread(run.line_deviations, unit),
            "length": lines.table.columns["LENGTH_FIELD"],
            "grav_corr": spread(run.gravity.correction if run.gravity.applied else np.zeros(len(lines.net)), unit),
            "adj_dh": spread(run.of_lines(run.adjusted_differences), unit),
            "v": spread(run.of_lines(run.adjustment.residuals), unit),
            "w": spread(run.of_lines(run.adjustment.w)),
            "redund": spread(run.of_lines(run.adjustment.redundancies)),
            "min_blund": spread(
                run.of_lines(np.where(np.isfinite(run.adjustment.detectable), run.adjustment.detectable, np.nan)), unit
            ),
            "flag": flags.tolist(),
        }
        named = run.named
        drawn = {} if named is None else {"crs": named.points.crs, "wkb": QgsWkbTypes.Type.LineString}
        if named is not None:
            drawn["shapes"] = named.lines(starts, ends)
        style = self._style("level_lines", tr("Adjusted lines"))
        return OutputTable.beside("LINES", columns, style, lines.source, np.arange(rows), lines.table, **drawn)

    def _misclosures(self):
        run, unit = self.run, self.units.height
        found = run.misclosures
        columns = {
            "loop": list(range(1, len(found) + 1)),
            "kind": [one.kind for one in found],
            "path": [run.path(one) for one in found],
            "length": np.array([one.length for one in found]) / self.units.chainage,
            "misclosure": np.array([one.value for one in found]) / unit,
            "sd": np.array([one.deviation if run.lines.known else np.nan for one in found]) / unit,
            "limit": np.array([run.limit(one) for one in found]) / unit,
            "status": [run.status(one) for one in found],
        }
        return OutputTable.bare("MISCLOSURES", columns, self._style("misclosures", tr("Misclosures")))

    def _covariance(self):
        run = self.run
        names = [
            name
            for name in (run.named.names if run.named is not None else run.lines.net.names)
            if name in run.index and np.isfinite(run.adjustment.heights[run.index[name]])
        ]
        texts = covariance_texts(run.adjustment.covariance([run.index[name] for name in names]))
        style = self._style("covariance", tr("Covariance of the heights"))
        return OutputTable.bare("COVARIANCE", {"point": names, "covar": texts}, style)
