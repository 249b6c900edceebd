"""Toolbox entry measurestations: axis, chainage and offset of any points."""

from .entry import parameter_builders as build
from .entry import parameters as p
from .entry.base import ToolboxEntry
from .language.translation import tr


class MeasureStations(ToolboxEntry):
    """Points and axes in; the same points with axis, station, chainage and offset out."""

    ID = "measurestations"
    TITLE = "Measure chainage and offset"
    GROUP, GROUP_ID = "Stations", "stations"
    TAGS = ("chainage", "offset", "station", "linear referencing", "stationing")
    HELP = (
        "Measures points against the axis they belong to: chainage along it and offset from it, positive to the right "
        "looking up-chainage, on the ellipsoid at the chainage height. A point beyond an end gets a chainage beyond "
        "it, negative before the origin. A point within 0.01 m of equally near to several axes gets a row for each.\n\n"
        "Points farther from every axis than the greatest distance stay, without chainage.\n\n"
        "Points of any reference system do: neither the scale of a projection nor the bend of its straight lines "
        "enters. Where they bring standard deviations of east and north, 'sd_line' is what these are across the axis; "
        "'Fit a straight line or plane' takes it with LINE."
    )

    def entry_parameters(self):
        return [
            p.any_points(),
            p.axis(),
            p.onto_axis(),
            p.max_distance(tr("Points farther from every axis stay in the output without axis and chainage.")),
            build.advanced(p.height_field()),
            build.advanced(p.height_unit()),
            p.chainage_unit(),
            p.axis_field(),
            p.station_axis_field(),
            p.chainage_start(),
            p.chainage_height(),
            p.equations(),
            *p.place_sigmas(),
            p.sink(
                "OUTPUT",
                tr("Measured points"),
                tr("The points with axis, station, chainage and offset: -0.35 is 0.35 to the left."),
            ),
        ]

    def result_numbers(self):
        return {"COUNT": tr("Measured points")}

    def computing(self):
        from .structure.measurement_run import MeasurementRun

        return MeasurementRun
