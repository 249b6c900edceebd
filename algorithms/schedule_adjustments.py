"""Toolbox entry scheduleadjustments: raise or lower per support, within the shims' step and the jack's travel, and on
request left or right."""

from collections import namedtuple
from dataclasses import replace

import numpy as np

from .boundary.fields import SCHEDULED, SCHEDULED_LINE
from .boundary.output_rows import OutputTable
from .core.errors import InputError
from .core.residuals import sides, statuses
from .core.schedule import Rules, movements, neighbouring
from .documents.files import Document
from .entry import parameters as p
from .entry.base import Result, ToolboxEntry
from .entry.parameter_builders import file_parameter
from .entry.stated_units import stated_units
from .language.number_text import listed
from .language.translation import tr
from .schedule import parameters as own
from .schedule.messages import HEIGHTS, LINE, Schedule, tell_schedule
from .schedule.sheets import schedule_csv, schedule_sheet, setting_out_sheet
from .schedule.supports import checked_positive, read_supports
from .structure.reviewed_stations import recorded_tolerance
from .styles.layer_kinds import StyleSpec

# Parameters of the heights, and those of the line.
_Keys = namedtuple("_Keys", "step up down smoothness tolerance")
_HEIGHTS = _Keys("STEP", "LIMIT", "LIMIT_DOWN", "SMOOTHNESS", "TOLERANCE")
_LINE = _Keys("STEP_LINE", "LIMIT_LINE", "LIMIT_LEFT", "SMOOTHNESS_LINE", "LINE_TOLERANCE")


class ScheduleAdjustments(ToolboxEntry):
    """Stations with residuals in; the same with a movement for each support out, and sheets for the crew."""

    ID = "scheduleadjustments"
    TITLE = "Schedule adjustments"
    GROUP, GROUP_ID = "Review", "review"
    TAGS = ("adjustment", "shim", "jack", "raising", "lowering", "alignment", "setting out", "schedule")
    HELP = (
        "Says for each support by how much to raise or lower it, from the residuals of 'Design heights and "
        "residuals': in whole shims, within the travel of the jack. Movement is positive for raise: at a residual of "
        "-21.0 mm the support is raised by 21.0 mm.\n\n"
        "'full' brings every support as near to its design height as increment and travel allow. 'least' finds the "
        "smallest sum of movements that brings every support within the tolerance; supports within it stay. A limit "
        "between neighbours keeps the difference of their predicted residuals small, which is the kink that remains "
        "in the finished structure; both methods then solve a linear programme over whole increments, so nothing is "
        "rounded afterwards. Increment and travel are always kept. Where tolerance and limit between neighbours "
        "cannot both be kept, the sum of what lies beyond them is made least, and those supports are named.\n\n"
        "With LINE supports are moved left and right as well, by their lateral departures and in an increment and a "
        "travel of their own: one that stands right moves left, looking up-chainage. The sheet then has both.\n\n"
        "Stations to be measured again and suspected blunders are left out; decisions go before flags. An accepted "
        "station stays as it is and still binds its neighbours.\n\n"
        "Results are for review. Field work follows local codes, and a licensed surveyor or engineer decides."
    )

    def entry_parameters(self):
        return [
            p.reviewed_stations(),
            own.adjustment_method(),
            own.step(),
            *own.travel(),
            own.adjusted_tolerance(),
            own.smoothness(),
            *own.line(),
            own.tested_stations(),
            own.decisions(),
            p.height_unit(),
            p.chainage_unit(),
            p.title(),
            p.sink(
                "OUTPUT",
                tr("Adjustment schedule"),
                tr(
                    "The stations with movement, action and the residual predicted after it: move "
                    "0.021 in metres is raise by 21 mm."
                ),
            ),
            file_parameter(
                "SHEET",
                tr("Schedule to print"),
                tr("A page with a row for each support, for the crew."),
                tr("HTML files (*.html)"),
                True,
            ),
            file_parameter(
                "CSV",
                tr("Schedule as CSV"),
                tr("For a spreadsheet; text that it would run as a formula is made text."),
                tr("CSV files (*.csv)"),
            ),
            file_parameter(
                "SETOUT",
                tr("Design heights to print"),
                tr("A page with the design height of every station, those without an as-built height among them."),
                tr("HTML files (*.html)"),
            ),
        ]

    def result_numbers(self):
        return {
            "COUNT": tr("Stations"),
            "MOVED": tr("Supports to move"),
            "TOTAL": tr("Sum of movements"),
            "GREATEST": tr("Greatest movement"),
            "OUTSIDE": tr("Supports that stay out of tolerance"),
            "LINE_MOVED": tr("Supports to move laterally"),
            "LINE_TOTAL": tr("Sum of lateral movements"),
            "LINE_GREATEST": tr("Greatest lateral movement"),
            "LINE_OUTSIDE": tr("Supports that stay out of the line's tolerance"),
        }

    def computed(self, asked):
        made = asked.record_of("STATIONS")
        run_units = stated_units(asked, made, asked.source("STATIONS").sourceName())
        supports = read_supports(asked, run_units)
        asked.progress(30)
        schedule = self._schedule(asked, supports, run_units, _HEIGHTS)
        if supports.line:
            schedule = replace(schedule, line=self._schedule(asked, supports.line, run_units, _LINE))
        elif any(asked.number(key) is not None for key in _LINE):
            asked.warn(
                tr(
                    "Increment, travel, tolerance or limit between neighbours of the line is given, but not used "
                    "without LINE."
                ),
                keys=(*_LINE, "LINE"),
            )
        record = asked.record(
            units=run_units,
            crs=supports.points.crs,
            height_system=made.height_system,
            axes=schedule.record(),
            made_from=made,
        )
        tell_schedule(schedule, asked)
        title = asked.text("TITLE") or supports.points.name
        documents = [Document("CSV", schedule_csv(schedule))]
        if asked.given("SHEET"):
            documents.append(Document("SHEET", schedule_sheet(schedule, title, record)))
        if asked.given("SETOUT"):
            documents.append(Document("SETOUT", setting_out_sheet(schedule, title, record)))
        return Result([self._table(schedule, record, asked)], schedule.numbers(), documents)

    @staticmethod
    def _rules(asked, unit, keys):
        up, down, smooth = (asked.number(key) for key in (keys.up, keys.down, keys.smoothness))
        down = up if down is None else down
        up, down, smooth = (None if value is None else value * unit for value in (up, down, smooth))
        return Rules(asked.choice("METHOD"), checked_positive(asked, keys.step, unit), up, down, smooth)

    @staticmethod
    def _tolerances(asked, supports, run_units, rules, keys):
        typed, made = asked.number(keys.tolerance), asked.record_of("STATIONS")
        by_axis = {
            axis: recorded_tolerance(made, axis, run_units, keys.tolerance.lower())
            if typed is None
            else typed * run_units.height
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

    def _schedule(self, asked, supports, run_units, keys):
        """The Schedule of the heights or of the line, by the parameters ``keys``."""
        rules, way = self._rules(asked, run_units.height, keys), HEIGHTS if keys is _HEIGHTS else LINE
        tolerances = self._tolerances(asked, supports, run_units, rules, keys)
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
        return Schedule(supports, rules, tolerances, run_units, found, after, way)

    def _table(self, schedule, record, asked):
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
        return OutputTable(
            "OUTPUT",
            columns,
            source.sourceCrs(),
            source.wkbType(),
            style,
            source,
            np.arange(len(supports)),
            supports.points.ids,
            features=supports.points.features,
            # Nobody may take an earlier schedule's movements sideways for this one's.
            replaced=SCHEDULED_LINE if asked.record_of("STATIONS").entry == f"tautline:{self.ID}" else (),
        )
