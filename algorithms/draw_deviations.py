"""Toolbox entry drawdeviations: bars of heights and line, tolerance band, profile and plan strip as map layers."""

from qgis.core import QgsProcessing

from .deviations import parameters as own
from .entry import parameters as p
from .entry.base import ToolboxEntry
from .language.translation import tr

_SOURCE = QgsProcessing.SourceType


class DrawDeviations(ToolboxEntry):
    """Stations with residuals in; bars across the axis, the tolerance as a band and a profile beside the axis out."""

    ID = "drawdeviations"
    TITLE = "Draw deviations on the map"
    GROUP, GROUP_ID = "Review", "review"
    TAGS = ("residual", "bars", "profile", "exaggeration", "tolerance", "map", "review", "line", "plan")
    HELP = (
        "Draws what 'Design heights and residuals' has found, over any map. Give its output and the same axis.\n\n"
        "Bars stand across the axis at each station and are as long as the residual, exaggerated: 10,000 times "
        "larger, 1 mm is 10 m. The band shows the tolerance with the same exaggeration: a bar that leaves it is out "
        "of tolerance. The strip beside the axis is a profile with a scale bar of its own: as-built heights, the "
        "design, the level line through the design's first station, and the design with no curvature. Heights grow "
        "away from the axis.\n\n"
        "Stations that were judged in line too can have lateral bars, dashed and in a colour of their own, and a plan "
        "strip: true to scale along the axis, exaggerated across it, with the tolerance of the line.\n\n"
        "All is drawn in metres on the ground, whatever the coordinate reference system. Bars that would be too long "
        "are cut and marked; the table has the true value.\n\n"
        "Results are for review. Field work follows local codes, and a licensed surveyor or engineer decides."
    )

    def entry_parameters(self):
        return [
            own.stations_with_residuals(),
            p.axis("drawing"),
            own.exaggeration(),
            own.drawn_tolerance(),
            own.high_side(),
            own.view(),
            own.strip_side(),
            own.strip_distance(),
            own.strip_exaggeration(),
            own.longest_bar(),
            *own.line(),
            *p.recorded_units(),
            p.axis_field(),
            p.station_axis_field(),
            p.max_distance(),
            p.equations(),
            own.drawn_layer(
                "BARS",
                tr("Residual bars"),
                tr(
                    "A line across the axis for each station; its field residual holds the true "
                    "value, also where the bar is cut."
                ),
                _SOURCE.TypeVectorLine,
            ),
            own.drawn_layer(
                "BAND",
                tr("Tolerance band"),
                tr(
                    "The tolerance on both sides of the axis, with the exaggeration of the bars: 10 "
                    "mm drawn 10,000 times larger is 100 m."
                ),
                _SOURCE.TypeVectorPolygon,
                optional=True,
            ),
            own.drawn_layer(
                "STRIP",
                tr("Profile strip"),
                tr(
                    "The profile beside the axis as lines: as-built, design, level line, design "
                    "with no curvature, scale bar."
                ),
                _SOURCE.TypeVectorLine,
                optional=True,
            ),
            own.drawn_layer(
                "LINE_BARS",
                tr("Lateral bars"),
                tr(
                    "For stations with the fields lateral and side, from a run with LINE: a dashed line across the "
                    "axis for each, to the side on which it stands."
                ),
                _SOURCE.TypeVectorLine,
                optional=True,
                by_default=False,
            ),
            own.drawn_layer(
                "PLAN",
                tr("Plan strip"),
                tr(
                    "For the same stations: the line seen from above, beside the axis and beyond the profile strip, as "
                    "lines: as-built, line, tolerance, scale bar."
                ),
                _SOURCE.TypeVectorLine,
                optional=True,
                by_default=False,
            ),
        ]

    def result_numbers(self):
        return {
            "COUNT": tr("Bars"),
            "CUT": tr("Bars that are cut"),
            "FACTOR": tr("Exaggeration of the bars"),
            "STRIP_FACTOR": tr("Exaggeration of the strip"),
            "LINE_FACTOR": tr("Exaggeration of the lateral bars"),
            "PLAN_FACTOR": tr("Exaggeration across the plan strip"),
        }

    def computing(self):
        from .deviations.deviations_run import DeviationsRun

        return DeviationsRun
