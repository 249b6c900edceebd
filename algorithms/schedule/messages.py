"""An adjustment schedule as computed: its actions and reasons in words, the sentences of its log, its numbers."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from ..core.schedule import SAME, Movements, Rules
from ..language.height_text import Amounts, amounts_for
from ..language.number_text import counted, listed
from ..language.translation import tr
from ..language.units import Units


@dataclass(frozen=True)
class Schedule:
    """Movements found under rules for ``supports``, a Supports. ``tolerances``: metres (n,), NaN for none; ``after``:
    status of each once moved, '' for those left out."""

    supports: object
    rules: Rules
    tolerances: np.ndarray
    units: Units
    found: Movements
    after: np.ndarray

    @cached_property
    def amounts(self) -> Amounts:
        return amounts_for(self.units.height_name, self.rules.step)

    @cached_property
    def actions(self):
        """(n,) texts: raise, lower, keep, or why there is no movement."""
        move = self.found.move
        computed = np.select([move > SAME, move < -SAME], ["raise", "lower"], "keep")
        return np.where(self.supports.action == "", computed, self.supports.action).astype(object)

    @cached_property
    def outside(self):
        """Rows that stay out of tolerance."""
        return np.flatnonzero(np.isin(self.after, ("high", "low")))

    @cached_property
    def reasons(self):
        """(n,) texts: what the input says of a support, and what keeps it out of tolerance."""
        texts = self.supports.reason.copy()
        words = {
            "travel": tr("beyond the jack's travel"),
            "step": tr("no whole step falls within the tolerance"),
            "neighbours": tr("held by its neighbours"),
            "fixed": tr("stays out of tolerance"),
        }
        if self.rules.method == "least" and self.rules.smoothness is not None:
            pulled = np.isin(self.actions, ("raise", "lower")) & (
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
        return {
            "COUNT": len(self.supports),
            "MOVED": self.count("raise", "lower"),
            "TOTAL": float(move.sum()),
            "GREATEST": float(move.max()) if len(move) else None,
            "OUTSIDE": len(self.outside),
        }

    def record(self):
        """Per axis what was found, for the record of the run, in its unit."""
        tolerances = {
            axis: float(value) / self.units.height
            for axis, value in zip(self.supports.axis, self.tolerances)
            if np.isfinite(value)
        }
        return {axis: {"tolerance": tolerances.get(axis)} for axis in sorted(set(self.supports.axis))}

    def infeasible(self):
        """Sentences on what could not be kept, each naming the supports; [] where all could be."""
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
        return tr(
            "The stations were not tested for blunders: a slip of the reading becomes a movement. The greatest is {} "
            "at {}. Give TESTED, stations of 'Fit a straight line or plane', or DECISIONS."
        ).format(self.amounts.with_unit(self.found.move[row], True), self.supports.named(row))

    def torn(self):
        """A sentence on supports that stand in the layer once for each axis and would be moved differently;
        '' without.
        """
        points, places = self.supports.points, {}
        for row in np.flatnonzero(np.isfinite(self.found.move)).tolist():
            places.setdefault((round(float(points.x[row]), 9), round(float(points.y[row]), 9)), []).append(row)
        found = [rows for rows in places.values() if np.ptp(self.found.move[rows]) > SAME]
        return (
            tr("One place, more than one movement: {}; decide on one.").format(
                listed(
                    [
                        tr(" and ").join(
                            f"{self.supports.named(row)} ({self.amounts.with_unit(self.found.move[row], True)})"
                            for row in rows
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
        parts = [
            tr("least sum of movements that brings all within tolerance")
            if rules.method == "least"
            else tr("full correction")
        ]
        parts.append(tr("whole steps of {}").format(text(rules.step)) if rules.step else tr("no step"))
        limits = [tr("raise at most {}").format(text(rules.up))] if rules.up is not None else []
        limits += [tr("lower at most {}").format(text(rules.down))] if rules.down is not None else []
        parts += limits or [tr("no limit of travel")]
        known = np.unique(self.tolerances[np.isfinite(self.tolerances)])
        parts.append(
            tr("tolerance {}").format(tr(" to ").join(dict.fromkeys(map(text, known[[0, -1]]))))
            if len(known)
            else tr("no tolerance")
        )
        if rules.smoothness is not None:
            parts.append(tr("neighbours' predicted residuals differ by at most {}").format(text(rules.smoothness)))
        return "; ".join(parts)

    def result_sentence(self):
        """What is to be done, in one sentence."""
        numbers, text = self.numbers(), self.amounts.with_unit
        move = np.abs(self.found.move[np.isfinite(self.found.move)])
        sentence = (
            tr("Raise {}, lower {}, keep {}; sum of movements {}, greatest {}.").format(
                self.count("raise"), self.count("lower"), self.count("keep"), text(move.sum()), text(move.max())
            )
            if len(move)
            else tr("No support can be scheduled.")
        )
        if np.any(np.isfinite(self.tolerances)) and len(move):
            within = int(np.sum(self.after == "within"))
            sentence += " " + tr("Predicted: {} within tolerance, {} outside.").format(within, numbers["OUTSIDE"])
        return sentence

    def left_out(self):
        """What is not scheduled, by action, as sentences."""
        words = {
            "measure again": tr("To be measured again"),
            "left out": tr("Left out"),
            "no height": tr("Without an as-built height"),
            "off axis": tr("Off axis"),
        }
        return [
            tr("{}: {}.").format(
                word, listed([self.supports.named(row) for row in np.flatnonzero(self.actions == action)], 8)
            )
            for action, word in words.items()
            if self.count(action)
        ]


def tell_schedule(schedule, asked):
    """Push the sentences of a run; what could not be kept as warnings."""
    points = schedule.supports.points
    asked.say(
        tr("Understood: {} of layer '{}'; {}.").format(
            counted(len(points), tr("station"), tr("stations")), points.name, schedule.method_sentence()
        )
    )
    for sentence in (schedule.result_sentence(), *schedule.left_out()):
        asked.say(sentence)
    for sentence in filter(None, (*schedule.supports.moved, *schedule.infeasible(), schedule.untested())):
        asked.warn(sentence)
