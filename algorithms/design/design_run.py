"""One run of designheights: stations measured, their design heights and residuals, and the tables of it."""

import numpy as np

from ..boundary.derived_columns import Derived, numbers, words
from ..boundary.output_rows import OutputTable
from ..boundary.reference_systems import definition
from ..core.controls import DesignStations
from ..core.design import designs_heights
from ..core.errors import InputError
from ..core.geodesy import datum_name
from ..core.residuals import STATUSES, statistics_of_axes, status_codes
from ..core.row_ranges import as_slice, as_slices
from ..core.segments import joined
from ..core.unit_check import unit_doubts
from ..entry.base import Result
from ..language.core_sentences import worded
from ..language.translation import tr
from ..structure.axis_overrides import AxisFields
from ..structure.checks import duplicate_rows, warn_duplicates
from ..structure.height_system import height_system, undulation_index
from ..structure.notation import station_style
from ..structure.recorded_covariance import warn_of_adjustment
from ..structure.stated_slope import stated_slope
from ..structure.structure import read_structure, units_of_stations
from ..styles.layer_kinds import StyleSpec
from .axis_designs import Designs
from .axis_result import AxisResult
from .design_messages import tell_designs
from .line_review import LineReview
from .summary_table import summary_table


class DesignRun:
    """One run of the entry: the arrays of its output rows, filled axis by axis; metres."""

    def __init__(self, asked):
        self.asked = asked
        self.units = units_of_stations(asked)
        find = undulation_index(asked)
        self.structure, self.heights = read_structure(
            asked, self.units, more_numbers={"undulation": find, **LineReview.read(asked)}, places=False
        )
        field = self.heights.index
        warn_of_adjustment(
            asked,
            "STATIONS",
            asked.record_of("STATIONS"),
            self.structure.source.sourceName(),
            self.structure.source.fields()[field].name() if field >= 0 else "",
        )
        self.notation = station_style(asked, self.units, len(self.structure.axes))
        self.fields = AxisFields(self.structure.axis_source)
        feet, points = self.structure.feet, self.structure.points
        needed = np.zeros(len(points), bool)
        needed[feet.station[~self.structure.off]] = True
        self.system = height_system(asked, points, self.units.height, needed)
        self.stated = stated_slope(asked, self.system.kind)
        self.designs = Designs(
            asked, self.fields, self.notation, self.units, self.system, datum_name(definition(points.crs))
        )
        self.height = points.columns["height"][as_slice(feet.station)] * self.units.height
        self.n = self.system.undulation[as_slice(feet.station)]
        rows = len(feet.station)
        self.placed = self.structure.placed(asked, self.fields, self.notation, self.units, self.height + self.n)
        self.chainage, self.offset = self.placed.chainage, self.placed.offset
        self.design = self.flat = None
        self.status = np.full(rows, STATUSES.index("off axis"), np.uint8)
        self.line = LineReview(asked, self.designs, len(self.structure.axes))

    def result(self):
        self.reports = self._reports()
        self.line.judge(self)
        used = as_slice(np.flatnonzero(~self.structure.off))
        warn_duplicates(
            duplicate_rows(
                self.structure.feet.axis[used],
                self.chainage[used],
                self.offset[used],
                self.structure.feet.station[used],
            ),
            self.structure.points.name,
            self.asked,
        )
        record = self.asked.record(
            units=self.units, crs=self.structure.points.crs, gravity=self.designs.gravity, **self.system.recorded
        )
        tell_designs(self, self.reports)
        numbers = self._numbers()
        return Result(self._tables(record, numbers["MAX_ABS"]), numbers)

    def _reports(self):
        """An AxisResult for each axis; what they share is computed for all at once."""
        placed, off = self.placed, self.structure.off
        rows = self.structure.rows_on_axes(~off)
        used = [number for number, on in enumerate(rows) if len(on)]
        self.asked.check_cancel()
        stations = self._stations([placed.axes[number] for number in used], [rows[number] for number in used])
        axes = [(self.structure.axes[number], number + 1) for number in used]
        specs, tolerances = [self.designs.spec(*one) for one in axes], [self.designs.tolerance(*one) for one in axes]
        ellipsoid = self.structure.axes[0].line.ellipsoid
        undulations = [self.system.along(one.chainage, one.undulation, ellipsoid, self.stated) for one in stations]
        try:
            found = designs_heights(specs, stations, undulations)
        except InputError as error:
            raise error.reworded(worded(error, self.notation.shown, self.units)) from None
        self.asked.check_cancel()
        self.asked.progress(50)
        statistics = self._judged([rows[number] for number in used], found, tolerances)
        doubts = unit_doubts(stations, found, specs)
        for number, one, design in zip(used, stations, found):
            self.line.note(number, self.structure.axes[number], one, design, rows[number])
        self.tolerances = tolerances
        results = dict(zip(used, zip(specs, found, statistics, tolerances, doubts)))
        nothing = (None, None, None, None, "")
        return [
            AxisResult(axis, word, *results.get(number, nothing)[:4], on, results.get(number, nothing)[4])
            for number, (axis, word, on) in enumerate(zip(placed.axes, placed.words, rows))
        ]

    def _stations(self, axes, rows):
        """DesignStations of axes on each of which there are some; ``rows``: of each, a list (m,)."""
        points, bounds = self.structure.points, np.cumsum([0, *map(len, rows)])
        rows = joined(rows) if rows else np.empty(0, int)
        found = zip(axes, as_slices(self.structure.feet.station[rows], bounds), as_slices(rows, bounds))
        own = self.chainage, self.offset, self.height, self.n
        return [
            DesignStations(axis, points.lat[station], points.lon[station], *(column[at] for column in own))
            for axis, station, at in found
        ]

    def _judged(self, rows, found, tolerances):
        """Fill design heights and statuses; the Statistics of each axis. ``rows``: of each axis with stations."""
        bounds, rows = np.concatenate([[0], np.cumsum([len(on) for on in rows])]), as_slice(np.concatenate(rows))
        self.design, self.flat = (
            self._placed(rows, [getattr(one, name) for one in found]) for name in ("design_h", "flat_h")
        )
        residuals = self.height[rows] - self.design[rows]
        limits = np.array([np.nan if t is None else t for t in tolerances])
        limits = np.repeat(limits, np.diff(bounds)) if len(limits) > 1 else limits
        status = status_codes(residuals, limits)
        self.status[rows] = status
        return statistics_of_axes(residuals, status, bounds)

    def _placed(self, rows, parts):
        """The ``parts`` of all axes with stations as one column of all rows, NaN beside the ``rows`` of these."""
        values, number = joined(parts), len(self.height)
        if len(values) == number and isinstance(rows, slice):
            return values
        column = np.full(number, np.nan)
        column[rows] = values
        return column

    def _tables(self, record, greatest):
        feet, unit = self.structure.feet, self.units
        # Of the run itself the columns hold nothing more than they are made from: the rest goes before it is written.
        rows, notation, chainage, offset = len(feet.station), self.notation, self.chainage, self.offset
        height, design, flat = self.height, self.design, self.flat
        columns = {
            "axis": words(self.structure.names, feet.axis),
            "station": Derived(rows, lambda part: notation.texts(chainage[part])),
            "chainage": numbers(rows, lambda part: chainage[part] / unit.chainage),
            "offset": numbers(rows, lambda part: offset[part] / unit.chainage),
            "design_h": numbers(rows, lambda part: design[part] / unit.height),
            "residual": numbers(rows, lambda part: (height[part] - design[part]) / unit.height),
            "adjust": numbers(rows, lambda part: 0.0 - (height[part] - design[part]) / unit.height),
            "flat_h": numbers(rows, lambda part: flat[part] / unit.height),
            "curv_eff": numbers(rows, lambda part: (design[part] - flat[part]) / unit.height),
            "status": words(STATUSES, self.status),
            **self.line.columns(unit),
        }
        known = [t for t in self.tolerances if t is not None]
        tolerance = max(known) / unit.height if known else None
        source = self.structure.source
        controls = {r.axis.line.name: r.record(unit) for r in self.reports if r.found is not None}
        style = StyleSpec(
            "stations_review",
            tr("Residuals"),
            unit.height_name,
            unit.chainage_name,
            tolerance,
            record.with_axes(controls).brief().text(),
            greatest=greatest,
        )
        points, replaced = self.structure.points, self.line.replaced(self.asked)
        stations = OutputTable.beside("OUTPUT", columns, style, source, feet.station, points, replaced=replaced)
        summary = OutputTable.bare(
            "SUMMARY",
            summary_table(self.reports, self.notation, unit, record, controls, self.chainage),
            StyleSpec(
                "summary", tr("Summary of residuals"), unit.height_name, unit.chainage_name, tolerance, record.text()
            ),
        )
        return [stations, summary]

    def _numbers(self):
        residual = (self.height - self.design)[np.isfinite(self.height - self.design)] / self.units.height
        return {
            "COUNT": len(residual),
            "WITHIN": int(np.sum(self.status == STATUSES.index("within"))),
            "RMS": float(np.sqrt(np.mean(residual**2))) if len(residual) else None,
            "MAX_ABS": float(np.abs(residual).max()) if len(residual) else None,
            **self.line.numbers(self.units),
        }
