"""Toolbox entry scheduleadjustments: raise or lower per support, within the shims' step and the jack's travel, and on
request left or right."""

from .entry import parameters as p
from .entry.base import ToolboxEntry
from .entry.parameter_builders import file_parameter
from .language.translation import tr
from .schedule import parameters as own


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

    def computing(self):
        from .schedule.schedule_run import ScheduleRun

        return ScheduleRun
