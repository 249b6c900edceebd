"""An adjustment schedule as computed: its actions and reasons in words, the sentences of its log, its numbers."""

from dataclasses import dataclass
from functools import cached_property
from typing import Optional

import numpy as np

from ..core.schedule import SAME, Movements, Rules
from ..language.height_text import Amounts, amounts_for, sided
from ..language.number_text import counted, listed
from ..language.translation import tr
from ..language.units import Units


@dataclass(frozen=True)
class Way:
    """The two directions that supports are moved in: ``up`` and ``down``, actions on a positive and a negative
    movement; ``outside``: what a support is called that stays beyond its tolerance; ``sideways``: True for the line."""

    up: str
    down: str
    outside: tuple
    sideways: bool = False


HEIGHTS, LINE = Way("raise", "lower", ("high", "low")), Way("right", "left", ("right", "left"), True)


@dataclass(frozen=True)
class Schedule:
    """Movements found under rules for ``supports``, a Supports. ``tolerances``: metres (n,), NaN for none; ``after``:
    status of each once moved, '' for those left out; ``line``: the schedule of the same supports sideways where that
    was asked for, else None; ``doubt``: a sentence on the adjustment that the heights are from, '' for none."""

    supports: object
    rules: Rules
    tolerances: np.ndarray
    units: Units
    found: Movements
    after: np.ndarray
    way: Way = HEIGHTS
    line: Optional["Schedule"] = None
    doubt: str = ""

    @property
    def both(self):
        """This one and that of the line."""
        return [self] if self.line is None else [self, self.line]

    @cached_property
    def amounts(self) -> Amounts:
        return amounts_for(self.units.height_name, self.rules.step)

    @cached_property
    def actions(self):
        """(n,) texts: one of the way's two, keep, or why there is no movement."""
        move = self.found.move
        computed = np.select([move > SAME, move < -SAME], [self.way.up, self.way.down], "keep")
        return np.where(self.supports.action == "", computed, self.supports.action).astype(object)

    @cached_property
    def outside(self):
        """Rows that stay out of tolerance."""
        return np.flatnonzero(np.isin(self.after, self.way.outside))

    @cached_property
    def reasons(self):
        """(n,) texts: what the input says of a support, and what keeps it out of tolerance."""
        texts = self.supports.reason.copy()
        words = {
            "travel": tr("beyond the lateral travel") if self.way.sideways else tr("beyond the jack's travel"),
            "step": tr("no multiple of the increment falls within the tolerance"),
            "neighbours": tr("held by its neighbours"),
            "fixed": tr("stays out of tolerance"),
        }
        if self.rules.method == "least" and self.rules.smoothness is not None:
            pulled = np.isin(self.actions, (self.way.up, self.way.down)) & (
                np.abs(self.supports.residual) <= self.tolerances + SAME
            )
            texts[pulled & (texts == "")] = tr("for its neighbours")
        for row in self.outside:
            texts[row] = "; ".join(filter(None, (texts[row], words.get(self.found.why[row], ""))))
        return texts

    def count(self, *actions):
        return int(np.isin(self.actions, actions).sum())

    def excess(self, row):
        """By how much a support stays out of tolerance, metres."""
        return abs(self.found.predicted[row]) - self.tolerances[row]

    def numbers(self):
        move = np.abs(self.found.move[np.isfinite(self.found.move)]) / self.units.height
        found = {
            "MOVED": self.count(self.way.up, self.way.down),
            "TOTAL": float(move.sum()),
            "GREATEST": float(move.max()) if len(move) else None,
            "OUTSIDE": len(self.outside),
        }
        if self.way.sideways:
            return {f"LINE_{key}": value for key, value in found.items()}
        return {"COUNT": len(self.supports), **found, **(self.line.numbers() if self.line else {})}

    def signed(self, value):
        """A movement in metres with its unit and direction, for a sentence."""
        return (
            sided(self.amounts.with_unit(abs(value)), value)
            if self.way.sideways
            else self.amounts.with_unit(value, True)
        )

    def said(self, sentence):
        """A sentence, marked where it is about the line."""
        return tr("Line: {}").format(sentence) if self.way.sideways else sentence

    def record(self):
        """Per axis what was found, for the record of the run, in its unit."""
        tolerances = {
            axis: float(value) / self.units.height
            for axis, value in zip(self.supports.axis, self.tolerances)
            if np.isfinite(value)
        }
        axes = {axis: {"tolerance": tolerances.get(axis)} for axis in sorted(set(self.supports.axis))}
        for axis, one in self.line.record().items() if self.line else ():
            axes[axis]["line_tolerance"] = one["tolerance"]
        return axes

    def infeasible(self):
        """Sentences on what could not be kept, each naming the supports; [] where all could be."""
        return [self.said(text) for text in self._infeasible()]

    def _infeasible(self):
        said = []
        if len(self.outside):
            names = [
                f"{self.supports.named(row)} ({self.amounts.with_unit(self.excess(row))}, {self.reasons[row]})"
                for row in sorted(self.outside, key=self.excess, reverse=True)
            ]
            said.append(
                tr("{} out of tolerance after the adjustment, by the amount given: {}.").format(
                    counted(len(names), tr("support stays"), tr("supports stay")), listed(names, 8)
                )
            )
        if len(self.found.steep):
            predicted = self.found.predicted
            names = [
                tr("{} and {} ({})").format(
                    self.supports.named(a),
                    self.supports.named(b),
                    self.amounts.with_unit(abs(predicted[a] - predicted[b])),
                )
                for a, b in self.found.steep.tolist()
            ]
            said.append(
                tr("{} of neighbours differ by more than {}: {}.").format(
                    counted(len(names), tr("pair"), tr("pairs")),
                    self.amounts.with_unit(self.rules.smoothness),
                    listed(names, 8),
                )
            )
        torn = self.torn()
        return said + ([torn] if torn else [])

    def untested(self):
        """A sentence where nothing tells blunders from movements, with the greatest movement; '' otherwise."""
        move = np.nan_to_num(np.abs(self.found.move))
        if self.supports.tested or not len(move) or move.max() == 0.0:
            return ""
        row = int(np.argmax(move))
        if self.way.sideways:
            return tr(
                "Line: the stations were not tested for lateral blunders: a blunder becomes a movement. The "
                "greatest is {} at {}."
            ).format(self.signed(self.found.move[row]), self.supports.named(row))
        return tr(
            "The stations were not tested for blunders: a blunder becomes a movement. The greatest is {} at {}. Give "
            "TESTED, stations of 'Fit a straight line or plane', or DECISIONS."
        ).format(self.signed(self.found.move[row]), self.supports.named(row))

    def torn(self):
        """A sentence on supports that stand in the layer once for each axis and would be moved differently;
        '' without.
        """
        points, places = self.supports.points, {}
        for row in np.flatnonzero(np.isfinite(self.found.move)).tolist():
            places.setdefault((round(float(points.x[row]), 9), round(float(points.y[row]), 9)), []).append(row)
        found = [rows for rows in places.values() if len(rows) > 1 and np.ptp(self.found.move[rows]) > SAME]
        return (
            tr("More than one movement at one position: {}; decide on one.").format(
                listed(
                    [
                        tr(" and ").join(
                            f"{self.supports.named(row)} ({self.signed(self.found.move[row])})" for row in rows
                        )
                        for rows in found
                    ]
                )
            )
            if found
            else ""
        )

    def method_sentence(self):
        """What was asked for, in one sentence."""
        text, rules = self.amounts.with_unit, self.rules
        up, down, linked = (
            tr("raise at most {}"),
            tr("lower at most {}"),
            tr("neighbours' predicted residuals differ by at most {}"),
        )
        if self.way.sideways:
            up, down = tr("to the right at most {}"), tr("to the left at most {}")
            linked = tr("neighbours' predicted lateral departures differ by at most {}")
        parts = [
            tr("least sum of movements that brings all within tolerance")
            if rules.method == "least"
            else tr("full correction")
        ]
        parts.append(tr("whole increments of {}").format(text(rules.step)) if rules.step else tr("no increment"))
        limits = [up.format(text(rules.up))] if rules.up is not None else []
        limits += [down.format(text(rules.down))] if rules.down is not None else []
        parts += limits or [tr("no limit of travel")]
        known = np.unique(self.tolerances[np.isfinite(self.tolerances)])
        parts.append(
            tr("tolerance {}").format(tr(" to ").join(dict.fromkeys(map(text, known[[0, -1]]))))
            if len(known)
            else tr("no tolerance")
        )
        if rules.smoothness is not None:
            parts.append(linked.format(text(rules.smoothness)))
        return "; ".join(parts)

    def result_sentence(self):
        """What is to be done, in one sentence."""
        text = self.amounts.with_unit
        move = np.abs(self.found.move[np.isfinite(self.found.move)])
        todo = tr("Raise {}, lower {}, keep {}; sum of movements {}, greatest {}.")
        if self.way.sideways:
            todo = tr("Move right {}, left {}, keep {}; sum of movements {}, greatest {}.")
        sentence = (
            todo.format(
                *(self.count(one) for one in (self.way.up, self.way.down, "keep")), text(move.sum()), text(move.max())
            )
            if len(move)
            else tr("No support can be scheduled.")
        )
        if np.any(np.isfinite(self.tolerances)) and len(move):
            within = int(np.sum(self.after == "within"))
            sentence += " " + tr("Predicted: {} within tolerance, {} outside.").format(within, len(self.outside))
        return self.said(sentence)

    def warnings(self):
        """Sentences that stand out in log and sheet."""
        told = (
            text
            for one in self.both
            for text in (*map(one.said, one.supports.moved), *one.infeasible(), one.untested())
        )
        return [text for text in (self.doubt, *told) if text]

    def left_out(self):
        """What is not scheduled, by action, as sentences."""
        words = {
            "measure again": tr("To be measured again"),
            "left out": tr("Left out"),
            "no height": tr("No as-built height"),
            "off axis": tr("Off axis"),
        }
        if self.way.sideways:
            words = {"no line": tr("No lateral departure")}
        rows = [(word, np.flatnonzero(self.actions == action)) for action, word in words.items()]
        # What else is left out is left out of both, and told with the heights.
        rows.append((tr("Set aside"), self.supports.alone))
        return [
            self.said(tr("{}: {}.").format(word, listed([self.supports.named(row) for row in some], 8)))
            for word, some in rows
            if len(some)
        ]


def tell_schedule(schedule, asked):
    """Push the sentences of a run; what could not be kept as warnings."""
    points = schedule.supports.points
    asked.say(
        tr("Understood: {} of layer '{}'; {}.").format(
            counted(len(points), tr("station"), tr("stations")), points.name, schedule.method_sentence()
        )
    )
    if schedule.line:
        asked.say(schedule.line.said(f"{schedule.line.method_sentence()}."))
    for sentence in (text for one in schedule.both for text in (one.result_sentence(), *one.left_out())):
        asked.say(sentence)
    for sentence in schedule.warnings():
        asked.warn(sentence)
