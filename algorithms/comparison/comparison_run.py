"""One run of comparesurveys: the surveys read, compared, told, and put into tables, a page and a chart."""

import os

from qgis.core import QgsWkbTypes

from ..boundary.output_rows import OutputTable
from ..core.errors import InputError
from ..documents.files import Document
from ..entry.base import Result
from ..language.height_text import amounts_for
from ..language.number_text import number_text
from ..language.translation import tr
from ..styles.layer_kinds import StyleSpec
from .changes import MATCH_METRES, compared
from .chart import MOST_AXES, charts_of_page, drawn
from .line_readings import differing_axes
from .messages import ComparisonReport, tell_comparison
from .page import comparison_page
from .parameters import FIELDS
from .surveys import read_surveys, units_of_surveys


class ComparisonRun:
    """One run: the changes of heights, and where it is asked for those of the line."""

    def __init__(self, asked):
        self.asked = asked

    def result(self):
        asked = self.asked
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
            OutputTable.bare("MOTIONS", report.motion_columns(text), style("motions", tr("Each axis and survey"))),
            OutputTable.bare("CHANGES", report.change_columns(), style("changes", tr("Every change"))),
            OutputTable.bare(
                "UNMATCHED", report.unmatched_columns(), style("unmatched", tr("Stations of one survey only"))
            ),
        ]
