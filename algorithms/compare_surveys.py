"""Toolbox entry comparesurveys: change per station between surveys, its significance, rate per year, shift
and bending.
"""

import os

from qgis.core import QgsCoordinateReferenceSystem, QgsWkbTypes

from .boundary.output_rows import OutputTable
from .comparison import parameters as own
from .core.errors import InputError
from .documents.files import Document
from .entry import parameters as p
from .entry.base import Result, ToolboxEntry
from .entry.parameter_builders import file_parameter
from .language.height_text import amounts_for
from .language.number_text import number_text
from .language.translation import tr
from .styles.layer_kinds import StyleSpec


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

    def computed(self, asked):
        from .comparison.changes import MATCH_METRES, compared
        from .comparison.messages import ComparisonReport, tell_comparison
        from .comparison.surveys import read_surveys, units_of_surveys

        units = units_of_surveys(asked)
        run_units, surveys = units[0], read_surveys(asked, units)
        made = list(zip((layer.name() for layer in asked.layers("SURVEYS")), asked.records.get("SURVEYS", ())))
        self._warn_of_systems(made, asked)
        self._warn_of_lines(made, asked)
        tolerance = asked.number("MATCH_TOLERANCE")
        tolerance = MATCH_METRES if tolerance is None else tolerance * run_units.chainage
        by, shift = (asked.choice(key) for key in ("MATCH", "SHIFT"))
        tilt = asked.flag("TILT")
        wording = {
            "match": by
            if by == "name"
            else tr("chainage within {} {}").format(
                number_text(tolerance / run_units.chainage, 3), run_units.chainage_label
            ),
            "shift": shift,
            "tilt": tilt,
            "line": asked.choice("LINE"),
        }
        origin = (asked.number("LEVELLED_FROM") or 0.0) * run_units.chainage
        found, line = compared(
            surveys, by=by, tolerance=tolerance, shift=shift, tilt=tilt, origin=origin, feedback=asked.feedback
        )
        amounts = amounts_for(run_units.height_name)
        line = None if line is None else ComparisonReport(line, run_units, amounts, wording)
        report = ComparisonReport(found, run_units, amounts, wording, line)
        asked.progress(50)
        tell_comparison(report, asked)
        record = asked.record(units=run_units, crs=surveys[0].crs, surveys=[survey.label for survey in surveys])
        return Result(self._tables(report, record), report.numbers(), self._documents(report, asked, record))

    @staticmethod
    def _warn_of_systems(made, asked):
        systems = {record.height_system: name for name, record in made if record.height_system}
        if "ellipsoidal" in systems and len(systems) > 1:
            asked.warn(
                tr("The surveys are in different height systems: {}; their difference includes the undulation.").format(
                    ", ".join(f"{name} ({system})" for system, name in systems.items())
                )
            )

    @staticmethod
    def _warn_of_lines(made, asked):
        from .comparison.line_readings import FIELDS, differing_axes

        kind = asked.choice("LINE")
        if kind not in FIELDS and (asked.given("SIGMA_LINE") or asked.text("SIGMAS_LINE")):
            asked.warn(
                tr("A standard deviation of a lateral position is given, but not used without LINE."),
                keys=("SIGMA_LINE", "LINE"),
            )
        differing = differing_axes(kind, made)
        if differing:
            asked.warn(
                tr(
                    "The axis of layer '{}' is not that of layer '{}': lateral changes include the difference "
                    "between the axes."
                ).format(*differing),
                keys=("LINE",),
            )

    def _documents(self, report, asked, record):
        if not (asked.given("REPORT") or asked.given("CHART")):
            return []
        from .comparison.chart import MOST_AXES, charts_of_page, drawn
        from .comparison.page import comparison_page

        title = asked.text("TITLE") or report.compared.first.name
        axes = report.compared.axes[:MOST_AXES]
        documents = []
        if asked.given("REPORT"):
            charts = charts_of_page(report)
            documents.append(
                Document(
                    "REPORT", comparison_page(report, charts, tr("Comparison of surveys: {}").format(title), record)
                )
            )
        if asked.given("CHART"):
            ending = os.path.splitext(asked.file("CHART"))[1].lower()
            if ending not in (".png", ".svg"):
                raise InputError(
                    tr("CHART ends in '{}'; a chart is written as .png or .svg.").format(ending), keys=("CHART",)
                )
            documents.append(Document("CHART", drawn(report, axes).file(ending)))
        return documents

    @staticmethod
    def _tables(report, record):
        first, unit, text = report.compared.first, report.units, record.text()
        none, bare = QgsCoordinateReferenceSystem(), QgsWkbTypes.Type.NoGeometry

        def style(kind, title):
            return StyleSpec(kind, title, unit.height_name, unit.chainage_name, None, text)

        return [
            OutputTable(
                "OUTPUT",
                report.station_columns(),
                first.crs,
                QgsWkbTypes.Type.Point,
                style("compared", tr("Compared stations")),
                points=(first.points.x, first.points.y),
            ),
            OutputTable(
                "MOTIONS", report.motion_columns(text), none, bare, style("motions", tr("Each axis and survey"))
            ),
            OutputTable("CHANGES", report.change_columns(), none, bare, style("changes", tr("Every change"))),
            OutputTable(
                "UNMATCHED",
                report.unmatched_columns(),
                none,
                bare,
                style("unmatched", tr("Stations of one survey only")),
            ),
        ]
