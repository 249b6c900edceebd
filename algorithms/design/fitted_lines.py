"""The line in plan of a run of fitreference: fitted beside the heights where LINE asks for it (method page 6)."""

import numpy as np

from ..boundary.fields import DESIGNED_LINE, FITTED_LINE, REFERENCE_LINE
from ..core.covariance import independent
from ..core.errors import InputError
from ..core.lateral import LineStations, VerticalPlanes, planes_through_ends
from ..core.lateral_fit import Sideways, fit_sideways
from ..language.decision_words import SUSPECTED
from ..language.translation import tr
from ..structure.reviewed_stations import review_fields
from .height_accuracies import for_all_text, line_sigmas, sigma_index, typed_sigma

# The entry whose fields these are.
_ENTRY = "tautline:fitreference"


class FittedLines:
    """Whether the line is ``judged``, and how accurate places in plan are: ``sigma``, metres of each station (n,), ones
    where it is not ``known``; ``described``: the words for it. ``columns``: what is read for it, see read_structure."""

    def __init__(self, asked):
        self._asked, self.judged = asked, asked.choice("LINE") == "fitted"
        self.sigma, self.known, self.described = None, False, ""
        if self.judged and asked.choice("FIT") == "plane":
            raise InputError(
                tr("LINE 'fitted' goes with FIT 'line': a plane has no line in plan. Choose one or leave LINE empty."),
                keys=("FIT", "LINE"),
            )
        self._field = sigma_index(asked, "SIGMA_LINE", "sd_line")
        self.columns = {"sigma_line": self._field} if self.judged else {}
        if not self.judged and (asked.number("SIGMA_LINE") is not None or asked.text("SIGMA_LINE_FIELD")):
            asked.warn(
                tr("A standard deviation of a lateral position is given, but not used without LINE."),
                keys=("SIGMA_LINE", "LINE"),
            )

    def read(self, run):
        """Take the accuracies of the stations of a run. InputError for one that is not positive, naming the row."""
        if not self.judged:
            return
        points, unit = run.structure.points, run.units.height
        typed, source = typed_sigma(self._asked, "SIGMA_LINE"), run.structure.source
        index = self._field(source)
        if index >= 0:
            needed = np.zeros(len(points), bool)
            needed[run.structure.feet.station[run.usable]] = True
            self.sigma, self.described = line_sigmas(points, unit, needed, source, index)
            self.known = True
        elif typed is not None:
            self.sigma = np.full(len(points), typed * unit)
            self.known, self.described = True, for_all_text(typed * unit, run.units)
        else:
            self.sigma = np.ones(len(points))
            self.described = tr("standard deviation not stated, estimated from the departures")

    def fitted(self, run, groups, **options):
        """The LateralFit of each of the ``groups`` of lines, None where the line is not judged."""
        if not self.judged or not groups:
            return [None] * len(groups)
        names, rows = [group.name for group in groups], np.concatenate([group.rows for group in groups])
        stations = _line_stations(run, np.repeat(np.arange(len(groups)), [len(g.rows) for g in groups]), rows)
        found, end = [], 0
        try:
            planes, along, aside = planes_through_ends(names, stations)
            for number, group in enumerate(groups):
                run.asked.check_cancel()
                first, end = end, end + len(group.rows)
                plane = VerticalPlanes(*(v[number : number + 1] for v in (planes.point, planes.ahead, planes.right)))
                covariance = independent(self.sigma[run.structure.feet.station[group.rows]])
                part = Sideways(plane, along[first:end], aside[first:end], covariance, self.known)
                found.append(fit_sideways(group.name, part, **options))
        except InputError as error:
            # The core knows no parameters.
            raise InputError(error.text, *error.values, keys=("LINE",)) from None
        return found

    def fields(self, fits, run, flag):
        """The fields of the stations, {} where the line is not judged. ``flag``: words of the rows, as they are without
        a line: where the line suspects a station, they say so too."""
        if not self.judged:
            return {}
        values = [np.full(len(flag), np.nan) for _ in range(4)]
        words = flag.copy()
        words[words == SUSPECTED] = "kept"
        for fit in fits:
            # A bent axis' corner takes part in both legs: the first tells.
            fresh = np.isnan(values[0][fit.all_rows])
            rows, at, found = fit.all_rows[fresh], fit.at[fresh], fit.sideways.search
            shown = np.where(np.isfinite(found.detectable), found.detectable, np.nan)
            for column, part in zip(values, (fit.sideways.residuals, found.w, found.redundancies, shown)):
                column[rows] = part[at]
            words[rows[fit.sideways.suspected[at]]] = SUSPECTED
        unit = run.units.height
        lateral, w, redundancy, detectable = values
        return dict(zip(FITTED_LINE, (lateral / unit, w, redundancy, detectable / unit, words.tolist())))

    def replaced(self):
        """Fields of the stations' layer that must not stay: the verdict of a design on a lateral departure that is
        another one here, or what an earlier run of this entry said of the line."""
        if self.judged:
            known = review_fields(self._asked.source("STATIONS"))
            return DESIGNED_LINE if known["side"] >= 0 else ()
        return FITTED_LINE if self._asked.record_of("STATIONS").entry == _ENTRY else ()

    def reserved(self):
        """Names that a field of somebody else must not have in the output: beside a lateral departure 'side' is the
        verdict on it."""
        return DESIGNED_LINE if self.judged else ()

    def reference(self, fit, run):
        """The columns of a reference, {} where the line is not judged."""
        if fit.line is None:
            return {}
        solution, found, test = fit.line.solution, fit.sideways, fit.line.solution.global_test
        deviations = solution.deviations
        lat, lon, azimuth = fit.line.place(run.ellipsoid)
        values = (
            lat,
            lon,
            azimuth,
            float(deviations[0]) / run.units.height,
            float(np.degrees(deviations[1])),
            int(found.search.kept.sum()),
            int(found.suspected.sum()),
            int(np.sum(~found.search.kept)),
            float(solution.variance_factor),
            "none" if test is None else "passed" if test[3] else "failed",
        )
        return dict(zip(REFERENCE_LINE, values))

    def numbers(self, fits, unit):
        """Number outputs, none where the line is not judged. ``unit``: the run's Units."""
        if not self.judged:
            return {}
        kept = np.concatenate([fit.sideways.residuals[fit.sideways.search.kept] for fit in fits]) / unit.height
        return {
            "LINE_COUNT": len(kept),
            "LINE_SUSPECTED": int(sum(fit.sideways.suspected.sum() for fit in fits)),
            "LINE_RMS": float(np.sqrt(np.mean(kept**2))),
        }


def _line_stations(run, axis, rows):
    """LineStations of output ``rows`` on the lines ``axis`` (indices)."""
    station, points = run.structure.feet.station[rows], run.structure.points
    return LineStations(
        axis,
        points.lat[station],
        points.lon[station],
        run.height[rows] + run.n[rows],
        run.chainage[rows],
        run.offset[rows],
        np.ones(len(rows), bool),
        run.ellipsoid,
    )
