"""Toolbox entry comparesurveys: change per station between surveys, its significance, rate per year, shift
and bending.
"""

from .comparison import parameters as own
from .entry import parameters as p
from .entry.base import ToolboxEntry
from .entry.parameter_builders import file_parameter
from .language.translation import tr


class CompareSurveys(ToolboxEntry):
    """Two or more surveys of one structure in; changes of each station, tables, a chart and a page out."""

    ID = "comparesurveys"
    TITLE = "Compare surveys"
    GROUP, GROUP_ID = "Review", "review"
    TAGS = ("deformation", "settlement", "change", "monitoring", "epoch", "survey", "rate")
    HELP = (
        "Compares surveys of one structure with the earliest of them: change of each station, its standard "
        "deviation, whether it is significant, and the rate per year from a weighted line through all surveys. "
        "Positive is risen.\n\n"
        "Stations are matched by axis and chainage or by name. A change beyond 3.29 standard deviations has "
        "risen or settled (Baarda's limit for many stations); between 1.96 and 3.29 it is possible (95 % for a "
        "single station). What all stations of an axis share, from a benchmark or the whole structure, is "
        "separated as a common shift, with a tilt if asked for; the rest is differential movement. The shift "
        "comes from the stations that have not moved among themselves.\n\n"
        "Each survey has its own accuracy: of a height by itself (SIGMA), of its levelling (SIGMA_KM), or a "
        "covariance from its adjustment. Levelling alone looks like a shift and a tilt: both are judged where "
        "SIGMA_KM or a covariance of both surveys is known. Surveys are taken as independent of each other. "
        "Intervals are 95 %.\n\n"
        "With LINE the line in plan is compared by the same rules: how far each station moved left or right, "
        "what all share, and the lateral differential movement. Common shift and rotation are then given, not "
        "judged.\n\n"
        "Stations of one survey only are listed in a table. Results are for review; a licensed surveyor or "
        "engineer decides."
    )

    def entry_parameters(self):
        return [
            own.surveys(),
            own.dates(),
            p.height_unit(),
            own.compared_sigma(),
            own.compared_sigma_km(),
            own.matching(),
            own.match_tolerance(),
            own.common_shift(),
            own.common_tilt(),
            own.sigmas(),
            own.sigmas_km(),
            own.levelled_from(),
            *own.line(),
            *own.covariances(),
            own.date_field(),
            own.compared_height_field(),
            p.chainage_unit(),
            p.title(),
            p.sink(
                "OUTPUT",
                tr("Compared stations"),
                tr(
                    "A row for each station with its change from the first to the latest survey "
                    "that has it; -0.0054 in metres has settled by 5.4 mm."
                ),
            ),
            p.table(
                "MOTIONS",
                tr("Each axis and survey"),
                tr(
                    "A row for each axis and later survey: common shift and tilt, greatest change, "
                    "numbers of stations risen and settled."
                ),
            ),
            p.table(
                "CHANGES",
                tr("Every change"),
                tr("A row for each station and later survey: with 3 surveys two rows a station."),
            ),
            p.table(
                "UNMATCHED",
                tr("Stations of one survey only"),
                tr("Stations that only one survey has, or has no height for, with the reason."),
            ),
            file_parameter(
                "REPORT",
                tr("Comparison to print"),
                tr("A page with verdicts, chart and tables."),
                tr("HTML files (*.html)"),
                True,
            ),
            file_parameter(
                "CHART",
                tr("Chart"),
                tr("Chainage against change, a line for each survey with its intervals."),
                tr("PNG files (*.png);;SVG files (*.svg)"),
            ),
        ]

    def result_numbers(self):
        return {
            "COUNT": tr("Stations compared"),
            "CHANGED": tr("Stations risen or settled"),
            "POSSIBLE": tr("Possible changes"),
            "UNMATCHED_COUNT": tr("Readings not compared"),
            "MAX_ABS": tr("Greatest change"),
            "LINE_COUNT": tr("Stations compared in line"),
            "LINE_CHANGED": tr("Stations moved left or right"),
            "LINE_POSSIBLE": tr("Possible lateral changes"),
            "LINE_MAX_ABS": tr("Greatest lateral change"),
        }

    def computing(self):
        from .comparison.comparison_run import ComparisonRun

        return ComparisonRun
