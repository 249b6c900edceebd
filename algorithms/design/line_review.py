"""The line of the stations of a run of designheights: judged where LINE, or an axis by itself, asks for it."""

from dataclasses import replace

import numpy as np

from ..boundary.fields import DESIGNED_LINE
from ..boundary.input_fields import field_indices
from ..core.controls import station_at
from ..core.errors import InputError
from ..core.lateral import LineStations, counting, line_departures, line_statistics, plan_bends
from ..core.residuals import sides
from .axis_result import LineResult
from .height_accuracies import line_sigmas, sigma_index

# The entry whose fields these are.
_ENTRY = "tautline:designheights"


class LineReview:
    """Collects what each axis is judged by, then judges all at once. ``lateral`` (rows,): metres, NaN for rows that are
    not judged; ``side``: a list of words, None there; ``judged``: whether any axis is; ``weighed``: the words for what
    the stations of a fit weigh by, '' where they weigh alike."""

    def __init__(self, asked, designs, axes):
        self._asked, self.weighed = asked, ""
        self._designs = designs
        self._kinds, self._tolerances = ["none"] * axes, np.full(axes, np.nan)
        self._ends = np.full((axes, 2), -1)
        self.judged, self.lateral, self.side = False, None, None

    @staticmethod
    def read(asked):
        """What is read of the stations for it, see read_structure: how accurate their places are, by the same field as
        in fitreference, where a line may be fitted."""
        own = "line" in field_indices(asked.source("AXIS"))
        return {"sigma_line": _sigma_field(asked)} if own or asked.choice("LINE") == "fitted" else {}

    def note(self, number, axis, stations, found, rows):
        """What one axis is judged by; ``found``: its DesignHeights, ``rows``: output rows of its DesignStations."""
        self._kinds[number], tolerance = self._designs.line(axis, number + 1)
        if self._kinds[number] == "none":
            return
        self.judged = True
        self._tolerances[number] = np.nan if tolerance is None else tolerance
        if self._kinds[number] == "chord" and len(found.controls) == 2:
            at = [c.station if c.station is not None else station_at(stations, c.chainage) for c in found.controls]
            self._ends[number] = [-1 if k is None else rows[k] for k in at]

    def judge(self, run):
        """Fill ``lateral`` and ``side``, and put into the reports of the run what was found on each axis."""
        if not self.judged:
            return
        on = np.flatnonzero(~run.structure.off)
        back = np.full(len(run.structure.off), -1)
        back[on] = np.arange(len(on))
        stations = _line_stations(run, on)
        ends = np.where(self._ends >= 0, back[self._ends], -1)
        weight = self._weight(run, on, stations)
        try:
            line = line_departures(self._kinds, run.structure.names, stations, ends, weight)
        except InputError as error:
            # The core knows no parameters.
            raise InputError(error.text, *error.values, keys=("LINE",)) from None
        side = sides(line.lateral, self._tolerances[stations.axis])
        self.lateral, self.side = np.full(len(back), np.nan), np.full(len(back), None, dtype=object)
        self.lateral[on], self.side[on] = line.lateral, np.where(side == "", None, side)
        found = line_statistics(line.lateral, side, stations.axis, len(self._kinds))
        self._report(run.reports, line, found, on, stations)

    def _weight(self, run, on, stations):
        """Weight of each of the LineStations in a fit, None where all weigh alike. InputError for a standard deviation
        that is not positive, naming the row."""
        structure, fitted = run.structure, np.array(self._kinds, dtype=object) == "fitted"
        if "sigma_line" not in structure.points.columns or not fitted.any():
            return None
        index = _sigma_field(self._asked)(structure.source)
        if index < 0:
            return None
        station, needed = structure.feet.station[on], np.zeros(len(structure.points), bool)
        needed[station[counting(self._kinds, stations) & fitted[stations.axis]]] = True
        sigmas, self.weighed = line_sigmas(structure.points, run.units.height, needed, structure.source, index)
        return sigmas[station] ** -2.0

    def _report(self, reports, line, found, on, stations):
        reach = [self._reach(line, number, stations) for number in range(len(reports))]
        bends = plan_bends(line.planes, [report.axis for report in reports], reach)
        rows = [np.where(at >= 0, on[at], -1) for at in (found.greatest_at, line.first, line.last)]
        for number, report in enumerate(reports):
            if self._kinds[number] == "none" or report.found is None:
                continue
            tolerance = self._tolerances[number]
            result = LineResult(
                self._kinds[number],
                None if np.isnan(tolerance) else float(tolerance),
                int(found.number[number]),
                float(found.rms[number]),
                float(found.greatest[number]),
                int(rows[0][number]),
                *(int(one[number]) for one in (found.within, found.left, found.right)),
                int(rows[1][number]),
                int(rows[2][number]),
                int(line.counted[number]),
                float(bends[number]),
                self._chord_ends(line, number, stations),
            )
            reports[number] = replace(report, line=result)

    def _chord_ends(self, line, number, stations):
        """Chainages of the two stations that a chord runs through, () for another line."""
        return tuple(map(float, self._reach(line, number, stations))) if self._kinds[number] == "chord" else ()

    @staticmethod
    def _reach(line, number, stations):
        if line.first[number] < 0:
            return -np.inf, np.inf
        return stations.chainage[line.first[number]], stations.chainage[line.last[number]]

    def columns(self, unit):
        """The fields of the stations: {} where no axis is judged; ``unit``: the run's Units."""
        return dict(zip(DESIGNED_LINE, (self.lateral / unit.height, self.side.tolist()))) if self.judged else {}

    def replaced(self, asked):
        """Fields of the stations' layer that must not stay: what an earlier run of this entry said of the line."""
        ours = asked.record_of("STATIONS").entry == _ENTRY
        return DESIGNED_LINE if ours and not self.judged else ()

    def numbers(self, unit):
        """Number outputs, none where no axis is judged."""
        if not self.judged:
            return {}
        known = self.lateral[np.isfinite(self.lateral)] / unit.height
        return {
            "LINE_COUNT": len(known),
            "LINE_WITHIN": int(np.sum(self.side == "within")),
            "LINE_RMS": float(np.sqrt(np.mean(known**2))) if len(known) else None,
            "LINE_MAX_ABS": float(np.abs(known).max()) if len(known) else None,
        }


def _sigma_field(asked):
    return sigma_index(asked, "SIGMA_LINE", "sd_line")


def _line_stations(run, on):
    """LineStations of the output rows ``on``; a station without a height stands at its design height."""
    axis, station, points = run.structure.feet.axis[on], run.structure.feet.station[on], run.structure.points
    surveyed = np.isfinite(run.height[on])
    height = np.where(surveyed, run.height[on], run.design[on])
    return LineStations(
        axis,
        points.lat[station],
        points.lon[station],
        np.where(np.isfinite(height), height, 0.0) + run.n[on],
        run.chainage[on],
        run.offset[on],
        surveyed,
        run.structure.axes[0].line.ellipsoid,
    )
