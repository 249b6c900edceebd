"""Toolbox entry adjustlevelling: levelled height differences become heights with standard deviations."""

import numpy as np
from qgis.core import QgsCoordinateReferenceSystem, QgsWkbTypes

from .boundary.output_places import destination_text, source_of
from .boundary.output_rows import OutputTable
from .documents.files import Document
from .entry import parameter_builders as build
from .entry import parameters as p
from .entry.base import Result, ToolboxEntry
from .language.translation import tr
from .levelling import parameters as lp
from .styles.layer_kinds import StyleSpec

_TABLE = QgsWkbTypes.Type.NoGeometry


class AdjustLevelling(ToolboxEntry):
    """Levelled lines and benchmarks in; adjusted heights, tested lines and misclosures out."""

    ID = "adjustlevelling"
    TITLE = "Adjust levelled height differences"
    GROUP, GROUP_ID = "Heights", "heights"
    TAGS = ("levelling", "least squares", "network adjustment", "benchmark", "misclosure", "loop", "network", "blunder")
    HELP = (
        "Adjusts levelled height differences as one net by least squares. Benchmarks are held fixed, or take part "
        "with their own standard deviation; a free adjustment holds one point only and shows benchmarks that have "
        "moved.\n\n"
        "Before it, sections levelled twice and loops are added up and compared with a class of levelling, n times "
        "the square root of the length in kilometres. After it, w is each line's residual over its standard "
        "deviation: beyond 3.29 a blunder is suspected. The smallest blunder that would be found, with a probability "
        "of 80 %, tells how well the net checks the line. A line that no other checks has no w. Nothing is left out "
        "of the adjustment.\n\n"
        "Parts of the net that reach no benchmark get no heights, and are named. Stations get their heights by name: "
        "the fields height and sd are those that 'Fit a straight line or plane' looks for. COVARIANCE keeps what the "
        "heights share.\n\n"
        "Results are for review; field work follows local codes, and a licensed surveyor or engineer decides."
    )

    def entry_parameters(self):
        fields = lp.line_fields()
        return [
            lp.level_lines(),
            *fields,
            p.height_unit(),
            lp.benchmarks(),
            lp.free_adjustment(),
            *lp.line_sigmas(),
            lp.levelling_class(),
            lp.named_stations(),
            *lp.benchmark_fields(),
            lp.station_name_field(),
            build.advanced(lp.weights()),
            build.advanced(lp.limit_factor()),
            lp.distance_unit(),
            lp.free_point(),
            p.gravity(
                tr(
                    "Corrects each line by the latitudes of its ends, which STATIONS or benchmarks that are points "
                    "must hold. Empty: none."
                )
            ),
            p.datum_height(),
            p.table(
                "OUTPUT",
                tr("Adjusted heights"),
                tr(
                    "A row for each point: adjusted height, standard deviation, and for a benchmark "
                    "adjusted less given height."
                ),
                optional=False,
            ),
            lp.stations_with_heights(),
            p.table(
                "LINES",
                tr("Adjusted lines"),
                tr(
                    "A row for each line: v is observed less adjusted, w is v over its standard deviation, a blunder "
                    "is suspected beyond 3.29."
                ),
            ),
            p.table(
                "MISCLOSURES",
                tr("Misclosures"),
                tr(
                    "Sections levelled twice and loops with what they add up to, and the limit of "
                    "the class: 8 mm over 4 km where n is 4."
                ),
            ),
            lp.covariance_table(),
            lp.levelling_summary(),
        ]

    def result_numbers(self):
        return {
            "COUNT": tr("Adjusted heights"),
            "FREEDOM": tr("Degrees of freedom"),
            "VARIANCE_FACTOR": tr("Variance factor"),
            "SUSPECTED": tr("Suspected blunders"),
            "BEYOND": tr("Misclosures beyond the limit"),
        }

    def computed(self, asked):
        from .levelling.gravity import with_gravity
        from .levelling.net_input import read_benchmarks, read_lines
        from .levelling.net_messages import tell_net
        from .levelling.net_page import levelling_page
        from .levelling.net_results import LevellingRun
        from .structure.named_points import read_named_points

        units = lp.field_book_units(asked)
        lines = read_lines(asked, units)
        benchmarks = read_benchmarks(asked, units.height)
        named = read_named_points(asked)
        asked.progress(20)
        lines, gravity = with_gravity(asked, lines, benchmarks, named, units.height)
        run = LevellingRun(asked, lines, benchmarks, named, units, gravity)
        record = self._record(asked, run)
        sentences = tell_net(run)
        if named is None and asked.given("POINTS"):
            asked.say(tr("POINTS is not made, since there are no STATIONS."))
        tables = _Tables(run, record.text()).made(asked.given("COVARIANCE"))
        page = levelling_page(run, sentences, record) if asked.given("SUMMARY") else b""
        adjustment = run.adjustment
        return Result(
            tables,
            {
                "COUNT": len(adjustment.points),
                "FREEDOM": adjustment.freedom,
                "VARIANCE_FACTOR": adjustment.variance_factor if adjustment.freedom > 0 else None,
                "SUSPECTED": int(run.suspected.sum()),
                "BEYOND": len(run.beyond),
            },
            [Document("SUMMARY", page)],
        )

    @staticmethod
    def _record(asked, run):
        """The record of the run; it names the table with the covariance, so that whoever takes the points finds it."""
        crs = run.named.points.crs if run.named is not None else None
        table = source_of(destination_text(asked.given("COVARIANCE")))
        gravity = "normal" if run.gravity.applied else "none"
        return asked.record(
            keeps_heights=False,
            units=run.units,
            crs=crs,
            covariance=table,
            weights=run.lines.weights,
            free=run.free,
            gravity=gravity,
        )


class _Tables:
    """The output tables of a run, in its units."""

    def __init__(self, run, record):
        self.run, self.record, self.units = run, record, run.units

    def made(self, with_covariance):
        tables = [self._heights(), self._lines(), self._misclosures()]
        if self.run.named is not None:
            tables.append(self._points())
        return tables + ([self._covariance()] if with_covariance else [])

    def _style(self, kind, title):
        return StyleSpec(kind, title, self.units.height_name, self.units.chainage_name, None, self.record)

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
        return OutputTable(
            "OUTPUT", columns, QgsCoordinateReferenceSystem(), _TABLE, self._style("levelled", tr("Adjusted heights"))
        )

    def _points(self):
        named, run = self.run.named, self.run
        points = np.array([run.index.get(name, -1) for name in named.names], int)
        columns = {"point": list(named.names), **self._columns(points)}
        return OutputTable(
            "POINTS",
            columns,
            named.points.crs,
            named.source.wkbType(),
            self._style("levelled", tr("Stations with adjusted heights")),
            named.source,
            np.arange(len(points)),
            named.points.ids,
            features=named.points.features,
        )

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
        crs, wkb = (
            (lines.source.sourceCrs(), lines.source.wkbType())
            if named is None
            else (named.points.crs, QgsWkbTypes.Type.LineString)
        )
        return OutputTable(
            "LINES",
            columns,
            crs,
            wkb,
            self._style("level_lines", tr("Adjusted lines")),
            lines.source,
            np.arange(rows),
            lines.table.ids,
            features=lines.table.features,
            shapes=None if named is None else named.lines(starts, ends),
        )

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
        return OutputTable(
            "MISCLOSURES",
            columns,
            QgsCoordinateReferenceSystem(),
            _TABLE,
            self._style("misclosures", tr("Misclosures")),
        )

    def _covariance(self):
        run = self.run
        names = [
            name
            for name in (run.named.names if run.named is not None else run.lines.net.names)
            if name in run.index and np.isfinite(run.adjustment.heights[run.index[name]])
        ]
        from .core.covariance_text import covariance_texts

        texts = covariance_texts(run.adjustment.covariance([run.index[name] for name in names]))
        return OutputTable(
            "COVARIANCE",
            {"point": names, "covar": texts},
            QgsCoordinateReferenceSystem(),
            _TABLE,
            self._style("covariance", tr("Covariance of the heights")),
        )
