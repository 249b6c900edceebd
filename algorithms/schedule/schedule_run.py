"""One run of scheduleadjustments: the movements of the supports, their table and their sheets."""

from collections import namedtuple
from dataclasses import replace

import numpy as np

from ..boundary.fields import SCHEDULED, SCHEDULED_LINE
from ..boundary.output_rows import OutputTable
from ..core.errors import InputError
from ..core.residuals import sides, statuses
from ..core.schedule import Rules, movements, neighbouring
from ..documents.files import Document
from ..entry.base import Result
from ..entry.stated_units import stated_units
from ..language.number_text import listed
from ..language.translation import tr
from ..structure.recorded_covariance import adjustment_doubt
from ..structure.reviewed_stations import recorded_tolerance
from ..styles.layer_kinds import StyleSpec
from .messages import HEIGHTS, LINE, Schedule, tell_schedule
from .sheets import schedule_csv, schedule_sheet, setting_out_sheet
from .supports import checked_positive, read_supports

_ENTRY = "tautline:scheduleadjustments"
# Parameters of the heights, and those of the line.
_Keys = namedtuple("_Keys", "step up down smoothness tolerance")
_HEIGHTS = _Keys("STEP", "LIMIT", "LIMIT_DOWN", "SMOOTHNESS", "TOLERANCE")
_LINE = _Keys("STEP_LINE", "LIMIT_LINE", "LIMIT_LEFT", "SMOOTHNESS_LINE", "LINE_TOLERANCE")


class ScheduleRun:
    """One run of the entry: a schedule of the heights, and where it is asked for one of the line."""

    def __init__(self, asked):
        self.asked, self.made = asked, asked.record_of("STATIONS")
        self.units = stated_units(asked, self.made, asked.source("STATIONS").sourceName())

    def result(self):
        asked = self.asked
        supports = read_supports(asked, self.units)
        asked.progress(30)
        doubt = adjustment_doubt(self.made, supports.points.name)
        schedule = replace(self._schedule(supports, _HEIGHTS), doubt=doubt)
        if supports.line:
            schedule = replace(schedule, line=self._schedule(supports.line, _LINE))
        elif any(asked.number(key) is not None for key in _LINE):
            asked.warn(
                tr(
                    "Increment, travel, tolerance or limit between neighbours of the line is given, but not used "
                    "without LINE."
                ),
                keys=(*_LINE, "LINE"),
            )
        record = asked.record(
            units=self.units,
            crs=supports.points.crs,
            height_system=self.made.height_system,
            axes=schedule.record(),
            made_from=self.made,
        )
        tell_schedule(schedule, asked)
        title = asked.text("TITLE") or supports.points.name
        documents = [Document("CSV", schedule_csv(schedule))]
        if asked.given("SHEET"):
            documents.append(Document("SHEET", schedule_sheet(schedule, title, record)))
        if asked.given("SETOUT"):
            documents.append(Document("SETOUT", setting_out_sheet(schedule, title, record)))
        return Result([self._table(schedule, record)], schedule.numbers(), documents)

    def _rules(self, keys):
        asked, unit = self.asked, self.units.height
        up, down, smooth = (asked.number(key) for key in (keys.up, keys.down, keys.smoothness))
        down = up if down is None else down
        up, down, smooth = (None if value is None else value * unit for value in (up, down, smooth))
        return Rules(asked.choice("METHOD"), checked_positive(asked, keys.step, unit), up, down, smooth)

    def _tolerances(self, supports, rules, keys):
        typed = self.asked.number(keys.tolerance)
        by_axis = {
            axis: recorded_tolerance(self.made, axis, self.units, keys.tolerance.lower())
            if typed is None
            else typed * self.units.height
            for axis in set(supports.axis)
        }
        missing = sorted(axis for axis, value in by_axis.items() if value is None)
        if missing and rules.method == "least":
            named = tr(" ({})").format(listed(missing)) if any(missing) else ""
            raise InputError(
                tr("METHOD 'least' needs a {}; layer '{}' does not record the one it was made with{}.").format(
                    keys.tolerance, supports.points.name, named
                ),
                keys=(keys.tolerance, "METHOD"),
            )
        return np.array([np.nan if by_axis[axis] is None else by_axis[axis] for axis in supports.axis], float)

    def _schedule(self, supports, keys):
        """The Schedule of the heights or of the line, by the parameters ``keys``."""
        rules, way = self._rules(keys), HEIGHTS if keys is _HEIGHTS else LINE
        tolerances = self._tolerances(supports, rules, keys)
        residual = np.where(np.isin(supports.action, ("", "keep")), supports.residual, np.nan)
        pairs = None
        if rules.smoothness is not None:
            lost = np.flatnonzero(np.isfinite(residual) & ~np.isfinite(supports.chainage))
            if len(lost):
                raise InputError(
                    tr("Layer '{}', row {}: {} needs the order along the axis, but there is no chainage.").format(
                        supports.points.name, lost[0] + 1, keys.smoothness
                    ),
                    keys=(keys.smoothness,),
                )
            _, axes = np.unique(np.array(supports.axis, dtype=object).astype(str), return_inverse=True)
            pairs = neighbouring(axes, supports.chainage, np.isfinite(residual))
        found = movements(residual, rules, tolerances=tolerances, movable=supports.action == "", neighbours=pairs)
        after = np.full(len(supports), "", dtype=object)
        known = np.isfinite(found.predicted)
        for limit in np.unique(tolerances[known]):  # NaN, for none, comes once at the end
            rows = known & ((tolerances == limit) | (np.isnan(limit) & np.isnan(tolerances)))
            judged = sides if way.sideways else statuses
            after[rows] = judged(found.predicted[rows], None if np.isnan(limit) else limit)
        return Schedule(supports, rules, tolerances, self.units, found, after, way)

    def _table(self, schedule, record):
        supports, unit, known = schedule.supports, schedule.units, schedule.tolerances[np.isfinite(schedule.tolerances)]
        columns = {}
        for one, names in zip(schedule.both, (SCHEDULED, SCHEDULED_LINE)):
            values = (
                one.found.move / unit.height,
                one.actions.tolist(),
                one.found.predicted / unit.height,
                [text or None for text in one.after],
                [text or None for text in one.reasons],
            )
            columns.update(zip(names, values))
        style = StyleSpec(
            "schedule",
            tr("Adjustment schedule"),
            unit.height_name,
            unit.chainage_name,
            float(known.max()) / unit.height if len(known) else None,
            record.text(),
        )
        source = supports.source
        return OutputTable.beside(
            "OUTPUT",
            columns,
            style,
            source,
            np.arange(len(supports)),
            supports.points,
            # Nobody may take an earlier schedule's movements sideways for this one's.
            replaced=SCHEDULED_LINE if self.made.entry == _ENTRY else (),
        )
