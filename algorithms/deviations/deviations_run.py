"""One run of drawdeviations: what is drawn is read, and the tables of bars, band and strips are made of it."""

import numpy as np

from ..boundary.cancel import check_cancel
from ..core.errors import InputError
from ..entry.base import Result
from ..language.number_text import counted, plain_text
from ..language.translation import tr
from .bars import band_reach, band_table, bar_scale, bars_table, lateral_bars, reach, residual_bars, tell_bars
from .drawn_axes import left_out, read_drawn
from .plan import plan_table
from .strip import StripWish, strip_table

_SIZES = ("EXAGGERATION", "LONGEST_BAR", "DISTANCE", "STRIP_EXAGGERATION", "LINE_EXAGGERATION", "PLAN_EXAGGERATION")


class DeviationsRun:
    """One run of the entry."""

    def __init__(self, asked):
        self.asked = asked
        # Every size that is given is checked before anything is read.
        self.sizes = {key: self._size(key) for key in _SIZES}
        self.side = {"right": 1, "left": -1}.get(asked.choice("SIDE"), 0)
        self.drawn = self._read()
        self.scale = self._scale(residual_bars(), "EXAGGERATION")
        self.record = asked.record(units=self.drawn.units, crs=self.drawn.crs, factor=self.scale.factor).text()
        self.aside = None

    def result(self):
        asked, drawn, scale, record = self.asked, self.drawn, self.scale, self.record
        tables = [bars_table(drawn, residual_bars(), scale, record)]
        cut = tell_bars(drawn, residual_bars(), scale, asked)
        check_cancel(asked.feedback)
        if asked.given("BAND"):
            tables.append(band_table(drawn, scale, record, asked))
        if asked.given("LINE_BARS"):
            self.aside = self._scale(lateral_bars(), "LINE_EXAGGERATION")
            tables.append(bars_table(drawn, lateral_bars(), self.aside, record))
            tell_bars(drawn, lateral_bars(), self.aside, asked)
        numbers = {"COUNT": len(tables[0]), "CUT": cut, "FACTOR": scale.factor, "STRIP_FACTOR": None}
        beyond = {}
        if asked.given("STRIP"):
            wish = StripWish(asked.choice("VIEW"), self.side, self.sizes["DISTANCE"], self.sizes["STRIP_EXAGGERATION"])
            table, numbers["STRIP_FACTOR"], beyond = strip_table(drawn, scale, wish, self._room, record, asked)
            tables.append(table)
        if self.aside:
            numbers["LINE_FACTOR"] = self.aside.factor
        if asked.given("PLAN"):
            wish = StripWish("", self.side, None, self.sizes["PLAN_EXAGGERATION"])
            table, numbers["PLAN_FACTOR"] = plan_table(drawn, scale, wish, self._room, beyond, record, asked)
            tables.append(table)
        return Result(tables, numbers)

    def _room(self, side):
        """How far bars and band reach to one side, from each axis, metres (m,)."""
        drawn = self.drawn
        found = np.maximum(reach(drawn, residual_bars(), self.scale, side), band_reach(drawn, self.scale))
        return np.maximum(found, reach(drawn, lateral_bars(), self.aside, side)) if self.aside else found

    def _read(self):
        """What is drawn."""
        asked = self.asked
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
        return drawn

    def _scale(self, kind, key):
        """BarScale of a kind of bars; what is high goes to the side asked for, what is right goes right."""
        to_left = kind.key == "BARS" and self.asked.choice("HIGH_SIDE") != "right"
        return bar_scale(self.drawn, kind, self.sizes[key], self.sizes["LONGEST_BAR"], -1 if to_left else 1)

    def _size(self, key):
        """A number that must be above zero, None where it is empty."""
        value = self.asked.number(key)
        if value is not None and not value > 0.0:
            raise InputError(
                tr("{} is {}, but must be above 0; leave it empty for the automatic value.").format(
                    key, plain_text(value)
                ),
                keys=(key,),
            )
        return value
