"""Toolbox entry drawdeviations: bars of heights and line, tolerance band, profile and plan strip as map layers."""

from types import SimpleNamespace

from qgis.core import QgsProcessing

from .boundary.cancel import check_cancel
from .core.errors import InputError
from .deviations import parameters as own
from .entry import parameters as p
from .entry.base import Result, ToolboxEntry
from .language.number_text import counted, plain_text
from .language.translation import tr

_SOURCE = QgsProcessing.SourceType
_LINE_SIZES = ("LINE_EXAGGERATION", "PLAN_EXAGGERATION")


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
        return lambda asked: SimpleNamespace(result=lambda: self.computed(asked))

    def computed(self, asked):
        from .deviations.bars import band_reach, band_table, bars_table, lateral_bars, reach, residual_bars, tell_bars
        from .deviations.plan import plan_table
        from .deviations.strip import StripWish, strip_table

        drawn, record = self._read(asked)
        scale = self._scale(asked, drawn, residual_bars(), "EXAGGERATION")
        record = record(factor=scale.factor)
        tables = [bars_table(drawn, residual_bars(), scale, record)]
        cut = tell_bars(drawn, residual_bars(), scale, asked)
        check_cancel(asked.feedback)
        if asked.given("BAND"):
            tables.append(band_table(drawn, scale, record, asked))
        aside = None
        if asked.given("LINE_BARS"):
            aside = self._scale(asked, drawn, lateral_bars(), "LINE_EXAGGERATION")
            tables.append(bars_table(drawn, lateral_bars(), aside, record))
            tell_bars(drawn, lateral_bars(), aside, asked)

        def room(one, side):
            lateral = reach(one, lateral_bars(), aside, side) if aside else 0.0
            return max(reach(one, residual_bars(), scale, side), band_reach(one, scale), lateral)

        drawn_factor, frames = None, {}
        side = {"right": 1, "left": -1}.get(asked.choice("SIDE"), 0)
        if asked.given("STRIP"):
            wish = StripWish(
                asked.choice("VIEW"), side, self._size(asked, "DISTANCE"), self._size(asked, "STRIP_EXAGGERATION")
            )
            table, drawn_factor, frames = strip_table(drawn, scale, wish, room, record, asked)
            tables.append(table)
        numbers = {"COUNT": len(tables[0]), "CUT": cut, "FACTOR": scale.factor, "STRIP_FACTOR": drawn_factor}
        if aside:
            numbers["LINE_FACTOR"] = aside.factor
        if asked.given("PLAN"):
            wish = StripWish("", side, None, self._size(asked, "PLAN_EXAGGERATION"))
            table, numbers["PLAN_FACTOR"] = plan_table(drawn, scale, wish, room, frames, record, asked)
            tables.append(table)
        return Result(tables, numbers)

    def _read(self, asked):
        """What is drawn, and a function that gives the record of the run; every size that is given is checked first."""
        from .deviations.drawn_axes import left_out, read_drawn

        for key in ("EXAGGERATION", "LONGEST_BAR", "DISTANCE", "STRIP_EXAGGERATION", *_LINE_SIZES):
            self._size(asked, key)
        drawn = read_drawn(asked, with_design=asked.given("STRIP"))
        for key in ("LINE_BARS", "PLAN"):
            if asked.given(key) and not drawn.with_line:
                raise InputError(
                    tr(
                        "Layer '{}' has no lateral departures (fields 'lateral' and 'side') to draw as {}; run 'Design "
                        "heights and residuals' with LINE first."
                    ).format(drawn.layer, key),
                    keys=(key,),
                )
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
        return drawn, lambda factor: asked.record(units=drawn.units, crs=drawn.crs, factor=factor).text()

    def _scale(self, asked, drawn, kind, key):
        """BarScale of a kind of bars; what is high goes to the side asked for, what is right goes right."""
        from .deviations.bars import bar_scale

        to_left = kind.key == "BARS" and asked.choice("HIGH_SIDE") != "right"
        factor, longest = self._size(asked, key), self._size(asked, "LONGEST_BAR")
        return bar_scale(drawn, kind, factor, longest, -1 if to_left else 1)

    def _size(self, asked, key):
        """A number that must be above zero, None where it is empty."""
        value = asked.number(key)
        if value is not None and not value > 0.0:
            raise InputError(
                tr("{} is {}, but must be above 0; leave it empty for the automatic value.").format(
                    key, plain_text(value)
                ),
                keys=(key,),
            )
        return value
