"""Toolbox entry reviewreport: one document for the screen and one for paper, from stations with residuals."""

from .core.errors import InputError
from .entry.base import ToolboxEntry
from .language.translation import tr
from .report.parameters import report_parameters


class ReviewReport(ToolboxEntry):
    """Stations with residuals in; an HTML file, a PDF and a slide out."""

    ID = "reviewreport"
    TITLE = "Write the review report"
    GROUP, GROUP_ID = "Review", "review"
    TAGS = ("report", "review", "verdict", "as-built", "residual", "statistics", "HTML", "PDF", "print", "line")
    HELP = (
        "Writes what was found about a structure as one HTML file that opens offline and as a PDF of A4 pages: a "
        "verdict in plain words with its certainty, the map, the profile in both views, statistics, stations needing "
        "attention and all stations, what was computed with which versions, the commands that reproduce the results, "
        "terms with their signs, and cautions.\n\n"
        "Stations with residuals are enough. Tested stations, references, the table of curvature and decisions add "
        "what they know; where one is missing the report says so. SLIDE puts map, profile and verdict into one "
        "picture for a talk.\n\n"
        "The verdict counts a station against the structure where it is out of tolerance and its height is not "
        "doubted. Suspected blunders, readings decided to be errors and stations to be measured again are named but "
        "not counted, unless at least three neighbours depart together. With standard deviations of the heights it "
        "says of how many stations it is certain: with 3 mm a residual of 8 mm is within 10 mm with a probability of "
        "75 %.\n\n"
        "Stations that were judged in line too (LINE of 'Design heights and residuals') get a second verdict, chart "
        "and columns on it, and a third verdict on both together where RADIAL_TOLERANCE states a limit.\n\n"
        "The report is for review. Field work follows local codes, and a licensed surveyor or engineer decides."
    )

    def entry_parameters(self):
        return report_parameters()

    def result_numbers(self):
        return {
            "COUNT": tr("Stations with a residual"),
            "WITHIN": tr("Stations within tolerance"),
            "FLAGGED": tr("Stations needing attention"),
            "RMS": tr("RMS residual"),
            "MAX_ABS": tr("Greatest residual"),
            "LINE_COUNT": tr("Stations judged in line"),
            "LINE_WITHIN": tr("Stations within the line's tolerance"),
            "LINE_RMS": tr("RMS lateral departure"),
            "LINE_MAX_ABS": tr("Greatest lateral departure"),
            "RADIAL_WITHIN": tr("Stations within the radial tolerance"),
            "RADIAL_MAX": tr("Greatest departure in height and line together"),
        }

    def prepared(self, asked):
        from .report.commands import records_behind

        # Here, in the main thread: a layer's own properties and rasters must not be touched from the run's.
        self.records = {key: asked.record_of(key) for key in ("STATIONS", "TESTED")}
        self._behind = records_behind(asked, self.records.values())
        self._imagery = asked.raster("IMAGERY")
        if asked.given("IMAGERY") and self._imagery is None:
            raise InputError(
                tr("IMAGERY cannot be read as a raster: {}.").format(asked.given("IMAGERY")), keys=("IMAGERY",)
            )

    def computing(self):
        from .report.report_run import ReportRun

        return lambda asked: ReportRun(asked, self.records, self._behind, self._imagery)
