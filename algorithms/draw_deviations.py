"""Toolbox entry drawdeviations: residual bars, tolerance band and profile strip as map layers."""

from qgis.core import QgsProcessing

from .boundary.cancel import check_cancel
from .core.errors import InputError
from .deviations import parameters as own
from .entry import parameters as p
from .entry.base import Result, ToolboxEntry
from .language.number_text import counted
from .language.translation import tr

_SOURCE = QgsProcessing.SourceType


class DrawDeviations(ToolboxEntry):
    """Stations with residuals in; bars across the axis, the tolerance as a band and a profile beside the axis out."""

    ID = "drawdeviations"
    TITLE = "Draw deviations on the map"
    GROUP, GROUP_ID = "Review", "review"
    TAGS = ("residual", "bars", "profile", "exaggeration", "tolerance", "map", "review")
    HELP = (
        "Draws what 'Design heights and residuals' has found, over any map. Give its output and the same axis.\n\n"
        "Bars stand across the axis at each station and are as long as the residual, exaggerated: 10,000 times "
        "larger, 1 mm is 10 m. The band shows the tolerance with the same exaggeration: a bar that leaves it is "
        "out of tolerance. The strip beside the axis is a profile with a scale bar of its own: as-built heights, "
        "the design, the level line through the design's first station, and the design as if the Earth were "
        "flat. Heights grow away from the axis.\n\n"
        "All is drawn in metres on the ground, whatever the coordinate reference system. Bars that would be too "
        "long are cut and marked; the table has the true value.\n\n"
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
        ]

    def result_numbers(self):
        return {
            "COUNT": tr("Bars"),
            "CUT": tr("Bars that are cut"),
            "FACTOR": tr("Exaggeration of the bars"),
            "STRIP_FACTOR": tr("Exaggeration of the strip"),
        }

    def computed(self, asked):
        from .deviations.bars import band_table, bar_scale, bars_table, tell_bars
        from .deviations.drawn_axes import left_out, read_drawn
        from .deviations.strip import StripWish, strip_table

        factor, longest, distance, strip_factor = (
            self._size(asked, key) for key in ("EXAGGERATION", "LONGEST_BAR", "DISTANCE", "STRIP_EXAGGERATION")
        )
        with_strip = asked.given("STRIP")
        drawn = read_drawn(asked, with_design=with_strip)
        asked.say(
            tr("Understood: {} of layer '{}' on {}; heights in {}, chainages in {}.").format(
                counted(drawn.stations, tr("station"), tr("stations")),
                drawn.layer,
                counted(len(drawn.axes), tr("axis"), tr("axes")),
                drawn.units.height_label,
                drawn.units.chainage_label,
            )
        )
        empty = [tr("Axis '{}': no station belongs to it.").format(name) for name in drawn.empty]
        for sentence in (left_out(drawn), *empty):
            if sentence:
                asked.say(sentence)
        scale = bar_scale(drawn, factor, longest, 1 if asked.choice("HIGH_SIDE") == "right" else -1)
        record = asked.record(units=drawn.units, crs=drawn.crs, factor=scale.factor).text()
        tables = [bars_table(drawn, scale, record)]
        cut = tell_bars(drawn, scale, asked)
        check_cancel(asked.feedback)
        if asked.given("BAND"):
            tables.append(band_table(drawn, scale, record, asked))
        drawn_factor = None
        if with_strip:
            side = {"right": 1, "left": -1}.get(asked.choice("SIDE"), 0)
            wish = StripWish(asked.choice("VIEW"), side, distance, strip_factor)
            table, drawn_factor = strip_table(drawn, scale, wish, record, asked)
            tables.append(table)
        return Result(
            tables, {"COUNT": len(tables[0]), "CUT": cut, "FACTOR": scale.factor, "STRIP_FACTOR": drawn_factor}
        )

    def _size(self, asked, key):
        """A number that must be above zero, None where it is empty."""
        value = asked.number(key)
        if value is not None and not value > 0.0:
            raise InputError(
                tr("{} is {:g}, but must be above 0; leave it empty for the automatic value.").format(key, value),
                keys=(key,),
            )
        return value
