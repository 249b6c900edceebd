"""Toolbox entry generatestations: points along an axis at an interval, at vertices and at listed chainages."""

from .entry import parameter_builders as build
from .entry import parameters as p
from .entry.base import ToolboxEntry
from .language.translation import tr


class GenerateStations(ToolboxEntry):
    """Axes in; stations with chainage and azimuth out."""

    ID = "generatestations"
    TITLE = "Generate stations along an axis"
    GROUP, GROUP_ID = "Stations", "stations"
    TAGS = ("station", "chainage", "stationing", "interval", "set out")
    HELP = (
        "Makes stations along each axis: at the multiples of an interval (50 gives 0+050, 0+100 and so on), at "
        "the axis' vertices, and at listed chainages. Chainage is measured on the ellipsoid at the chainage "
        "height, never in the map projection.\n\n"
        "Run the result through 'Design heights and residuals' to get the design heights to set out."
    )

    def entry_parameters(self):
        return [
            p.axis(),
            p.interval(),
            p.at_vertices(),
            p.chainages(),
            build.advanced(p.height_unit()),
            p.chainage_unit(),
            p.axis_field(),
            p.chainage_start(),
            p.chainage_height(),
            p.equations(),
            p.sink(
                "OUTPUT",
                tr("Generated stations"),
                tr("Points with axis, station, chainage, and the azimuth of the axis there: 90 is to the east."),
            ),
        ]

    def result_numbers(self):
        return {"COUNT": tr("Stations")}

    def computing(self):
        from .structure.generation_run import GenerationRun

        return GenerationRun
