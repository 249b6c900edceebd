"""Toolbox entry placestations: a height list along an axis becomes points; nothing is dropped."""

from .entry import parameters as p
from .entry.base import ToolboxEntry
from .language.translation import tr


class PlaceStations(ToolboxEntry):
    """A table of station notation and heights, and axes, in; points with chainage and height out."""

    ID = "placestations"
    TITLE = "Place a height list along an axis"
    GROUP, GROUP_ID = "Stations", "stations"
    TAGS = ("station", "chainage", "height list", "levelling", "stationing", "place", "offset")
    HELP = (
        "Puts the rows of a height list on the map: each row's station is measured along its axis, its offset across "
        "it, on the ellipsoid at the chainage height.\n\n"
        "Station notation: 12+50 has two digits after the plus and counts stations of 100 units; 1+250 has three and "
        "counts stations of 1000; a bare number is a distance; a sign or a label such as Sta or Ch may stand before "
        "it. Offsets are positive to the right looking up-chainage; some exchange formats count left positive: check "
        "yours.\n\n"
        "Lists are read as people keep them: decimal commas, thousands in groups, feet and inches with fractions, a "
        "heading further down, blank and comment rows, an axis named once above its rows. The log says how each column "
        "was read. Readings that look like slips (digits exchanged, a slipped decimal point, a wrong unit, a station "
        "out of order) are named with their rows; nothing is changed.\n\n"
        "A unit in a heading counts, as in 'Elev (ft)'; one that the form contradicts is refused. Units and height "
        "system stated here go with the points: later steps take them from there.\n\n"
        "Undulations, where given, serve the chainage height only here.\n\n"
        "A row that cannot be placed goes to REJECTED with its row number and the reason. Without that output the log "
        "names them."
    )

    def entry_parameters(self):
        return [
            p.height_list(),
            p.axis(),
            p.station_field(),
            p.offset_field(),
            p.height_field("INPUT"),
            p.height_unit(),
            p.station_axis_field("INPUT"),
            p.axis_field(),
            p.chainage_unit(),
            p.chainage_start(),
            p.chainage_height(),
            p.equations(),
            p.decimal_sign(),
            *p.height_system("INPUT"),
            p.sink(
                "OUTPUT",
                tr("Placed stations"),
                tr("A point for each row that could be placed, with its columns; stations with no height stay."),
            ),
            p.table(
                "REJECTED",
                tr("Rejected rows"),
                tr("Rows that could not be placed, with their number, counted from 1, and the reason."),
            ),
        ]

    def result_numbers(self):
        return {"COUNT": tr("Placed rows"), "REJECTED_COUNT": tr("Rejected rows")}

    def computing(self):
        from .structure.placement_run import PlacementRun

        return PlacementRun
