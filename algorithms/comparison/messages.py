"""What a comparison of surveys says: sentences, tables, numbers."""

from dataclasses import dataclass
from typing import Optional

import numpy as np

from ..core.comparison import test_values
from ..core.quantiles import NORMAL_95
from ..language.height_text import RATIOS, Amounts, side_text, sided
from ..language.number_text import counted, listed, number_text
from ..language.shown_stations import shown_station, shown_stations
from ..language.stored_words import stored_text
from ..language.translation import tr
from ..language.units import Units
from .changes import Comparison

LARGE_SHIFT = 0.5


@dataclass(frozen=True)
class ComparisonReport:
    """A comparison with how its numbers are written and how it was asked for; ``line``: that of the line, where asked
    for."""

    compared: Comparison
    units: Units
    amounts: Amounts
    asked: dict
    line: Optional["ComparisonReport"] = None

    @property
    def what(self):
        return self.compared.what

    @property
    def tilted(self):
        """Whether a tilt, or a rotation of the line, was separated."""
        return self.asked["tilt"] or self.what.own_lines

    @property
    def reports(self):
        """This one and that of the line."""
        return [self] if self.line is None else [self, self.line]

    def counts(self, motion, verdicts):
        """{verdict: number} of the stations of one axis and survey."""
        found = verdicts[motion.rows, motion.number]
        return {name: int(np.sum(found == name)) for name in (self.what.up, self.what.down, "possible", "no sd")}

    def signed(self, value):
        """A change in metres with its unit and direction, for a sentence."""
        return side_text(value, self.units) if self.what.sideways else self.amounts.with_unit(value, True)

    def rms(self, motion):
        """RMS of what is left: bending where a shift was separated, else the change; metres, NaN without stations."""
        values = self.compared.change if motion.told is None else self.compared.bending
        values = values[motion.rows, motion.number]
        return float(np.sqrt(np.mean(values**2))) if len(values) else np.nan

    def axis_sentence(self, motion):
        """What one axis did between the first and one later survey."""
        c, text = self.compared, self.amounts
        name = tr("Axis '{}'").format(motion.axis) if motion.axis else tr("The structure")
        name = tr("{}, line").format(name) if self.what.sideways else name
        if not len(motion.rows):
            return tr("{}, {}: no station in common.").format(name, c.surveys[motion.number].label)
        changes = c.change[motion.rows, motion.number]
        at = motion.rows[int(np.argmax(np.abs(changes)))]
        parts = [
            tr("{}, {} against {}: {}, greatest change {} at {}").format(
                name,
                c.surveys[motion.number].label,
                c.first.label,
                counted(len(motion.rows), tr("station"), tr("stations")),
                self.signed(c.change[at, motion.number]),
                shown_station(c.first.station[at]),
            )
        ]
        if motion.congruency is not None:
            parts.append(self.congruency_words(motion.congruency))
        count = self.counts(motion, c.verdicts)
        if count["no sd"] < len(motion.rows):
            said = (
                tr("{} left, {} right, {} possible") if self.what.sideways else tr("{} settled, {} risen, {} possible")
            )
            parts.append(said.format(count[self.what.down], count[self.what.up], count["possible"]))
        if motion.told is not None:
            parts += self.set_aside_words(motion)
            parts.append(self.common_words(motion))
            rest = np.abs(motion.motion.rest)
            worst = motion.rows[int(np.argmax(rest))]
            bent = self.counts(motion, c.bend_verdicts)
            parts.append(
                tr("differential movement RMS {}, greatest {} at {}").format(
                    text.with_unit(self.rms(motion)),
                    self.signed(c.bending[worst, motion.number]),
                    shown_station(c.first.station[worst]),
                )
                + (
                    tr(", {} significant").format(bent[self.what.up] + bent[self.what.down])
                    if bent["no sd"] < len(motion.rows)
                    else ""
                )
            )
        elif motion.motion is not None:
            parts.append(
                tr(
                    "half of the stations or more stand out, so it cannot be told which part has moved: no common "
                    "shift is removed"
                )
            )
        elif self.asked["shift"] != "none":
            parts.append(tr("too few stations to separate a common shift"))
        return "; ".join(parts) + "."

    @staticmethod
    def congruency_words(found):
        """Whether anything at all has changed."""
        text = (
            tr("the surveys do not differ significantly (chi squared {}, limit {} at 95 %)")
            if found.holds
            else tr("the surveys differ significantly (chi squared {}, limit {} at 95 %)")
        )
        return text.format(number_text(found.chi, 1), number_text(found.limit, 1))

    def set_aside_words(self, motion):
        """Which runs of neighbours the common shift does not come from: a list of at most one text."""
        run, stations = motion.motion.run, shown_stations(self.compared.first.station)
        places = []
        for number in range(int(run.max(initial=-1)) + 1):
            rows = motion.rows[run == number]
            places.append(
                stations[rows[0]]
                if len(rows) == 1
                else tr("{} to {} ({} stations)").format(stations[rows[0]], stations[rows[-1]], len(rows))
            )
        return [tr("moved against the rest and set aside: {}").format(listed(places, 8))] if places else []

    def common_words(self, motion):
        """Shift and tilt, with intervals and whether they are beyond chance where they can be judged."""
        found = motion.motion
        text = tr("common shift {}").format(self._interval(found.shift, found.sd_shift, motion.judged))
        if self.tilted:
            tilt = self._interval(found.tilt, found.sd_tilt, motion.judged, RATIOS)
            text += (tr(", rotation {}") if self.what.sideways else tr(", tilt {}")).format(tilt)
        return text if motion.judged else text + tr(" (not judged)")

    def _interval(self, value, sd, judged, amounts=None):
        """A common movement as '+2.0 ± 0.8 mm (95 %, beyond chance)'; ``amounts``: how it is written, as heights are if
        not told."""
        text = amounts or self.amounts
        if self.what.sideways:
            return sided(f"{text.text(abs(value))} {text.label}", value)
        if not judged:
            return f"{text.signed(value)} {text.label}"
        said = stored_text("shift_verd", self._shown(value, sd, judged))
        return tr("{} ± {} {} (95 %, {})").format(text.signed(value), text.text(NORMAL_95 * sd), text.label, said)

    def judged_sentence(self):
        """By what the changes are judged, in plain words."""
        known = np.isfinite(self.compared.sd_change) & np.isfinite(self.compared.change)
        number = int(known.sum())
        if not number:
            return tr("No standard deviations were given (SIGMA, or a field 'sd'), so the changes are not judged.")
        text = tr(
            "Judged by the change over its standard deviation: beyond 3.29 risen or settled (Baarda's limit, one false "
            "alarm in a thousand stations), 1.96 to 3.29 possible (95 % for a single station), below that not "
            "significant. "
            "Without any movement, of {} about {} would be called possible and {} risen or settled by chance."
        ).format(
            counted(number, tr("change"), tr("changes")), number_text(0.049 * number, 1), number_text(0.001 * number, 2)
        )
        if self.asked["shift"] == "robust":
            text += " " + tr(
                "A part that moved by less than about three standard deviations of a change, or that is half an axis "
                "or more, cannot be told from the rest."
            )
        return text if all(motion.judged for motion in self.compared.motions) else text + " " + self._unshared()

    def _unshared(self):
        """What is missing for a verdict on the common movement."""
        names = [survey.label for survey in self.compared.surveys if not survey.accuracy.shares]
        return tr(
            "The levelling errors that neighbours share are not known of {}: these alone look like a common shift and "
            "tilt, so shift and tilt are not judged, nor whether the surveys agree as a whole. Give SIGMA_KM or a "
            "covariance."
        ).format(listed(names, 4))

    def line_sentence(self):
        """What is compared of the line, by what it is judged, and what is not."""
        known = np.isfinite(self.compared.sd_bending if self.what.own_lines else self.compared.sd_change).any()
        if self.what.own_lines:
            said = tr(
                "Line: lateral departures, in each survey from its own line (a chord or a fit). A lateral movement of "
                "the whole is not in them, so changes are not judged; the differential movement, shift and rotation "
                "removed, does not depend on the lines."
            )
        elif self.asked["line"] == "lateral":
            said = tr("Line: lateral departures from the axis, one line for all surveys.")
        else:
            said = tr("Line: offsets from the axis, one line for all surveys, so that a movement of the whole shows.")
        parts = [said, tr("Changes are positive to the right, looking up-chainage.")]
        parts.append(
            tr("The limits are those of the heights, 3.29 and 1.96 standard deviations.")
            if known
            else tr(
                "No standard deviation of a lateral position was given (SIGMA_LINE, or a field 'sd_line'): the line "
                "is not judged."
            )
        )
        parts.append(
            tr(
                "The lateral errors that a whole survey shares, from its tie and its orientation, are in no station's "
                "standard deviation: a change of all stations to one side may be such an error, so common shift and "
                "rotation are given, not judged."
            )
        )
        return " ".join(parts)

    def assumed_sentence(self):
        """What is taken for granted, and what ± means."""
        known = [survey.accuracy.shares for survey in self.compared.surveys]
        return " ".join(
            (
                tr("Surveys are taken as independent of each other.")
                if all(known)
                else tr(
                    "Surveys are taken as independent of each other, and heights of one survey where no levelling is "
                    "known."
                ),
                tr(
                    "A benchmark that moved, or an error that a whole survey shares, shows as common shift, not as "
                    "differential movement. Intervals and ± are 95 %."
                ),
            )
        )

    def unmatched_sentence(self):
        c, lists = self.compared, {}
        for number, row, reason in c.unmatched:
            lists.setdefault((c.surveys[number].label, reason), []).append(
                " ".join(filter(None, (c.surveys[number].axis[row], shown_station(c.surveys[number].station[row]))))
            )
        return [
            tr("Survey {}, {}: {}.").format(label, reason, listed(names, 8)) for (label, reason), names in lists.items()
        ]

    def doubts(self):
        """Sentences that question the input."""
        c, said = self.compared, []
        for motion in c.motions:
            if len(motion.rows) and abs(np.median(c.change[motion.rows, motion.number])) > LARGE_SHIFT:
                said.append(
                    (
                        tr(
                            "{}, survey {}: half of the lateral changes are beyond {}; check unit and axis of both "
                            "surveys."
                        )
                        if self.what.sideways
                        else tr(
                            "{}, survey {}: half of the changes are beyond {}; check the unit, the height system and "
                            "the benchmark of both surveys."
                        )
                    ).format(
                        motion.axis or tr("The structure"),
                        c.surveys[motion.number].label,
                        self.amounts.with_unit(LARGE_SHIFT),
                    )
                )
            if motion.number == 1 and len(motion.rows) > 1 and not self.what.sideways:
                said += self._slope_doubt(motion)
        return said + (self.line.doubts() if self.line else [])

    def _slope_doubt(self, motion):
        """Readings of one station at different places of a sloping structure are no change."""
        c = self.compared
        chainage, height = c.first.chainage[motion.rows], c.first.height[motion.rows]
        if not np.all(np.isfinite(chainage)) or np.ptp(chainage) < 1.0:
            return []
        a, b = np.argmin(chainage), np.argmax(chainage)
        false = abs((height[b] - height[a]) / (chainage[b] - chainage[a])) * c.farthest
        if false < 1e-4:
            return []
        return [
            tr(
                "{}: readings up to {} {} apart along the axis are matched as one station; on its mean slope that "
                "alone makes {}."
            ).format(
                motion.axis or tr("The structure"),
                number_text(c.farthest / self.units.chainage, 2),
                self.units.chainage_label,
                self.amounts.with_unit(false),
            )
        ]

    def numbers(self):
        c = self.compared
        latest = np.where(c.latest > 0, c.verdicts[np.arange(len(c.latest)), c.latest], "")
        changes = c.of_latest(c.change)
        changes = np.abs(changes[np.isfinite(changes)]) / self.units.height
        found = {
            "COUNT": len(changes),
            "CHANGED": int(np.isin(latest, (self.what.up, self.what.down)).sum()),
            "POSSIBLE": int(np.sum(latest == "possible")),
            "MAX_ABS": float(changes.max()) if len(changes) else None,
        }
        if self.what.sideways:
            return {f"LINE_{key}": value for key, value in found.items()}
        return {**found, "UNMATCHED_COUNT": len(c.unmatched), **(self.line.numbers() if self.line else {})}

    # --- columns of the tables, in the run's units

    def station_columns(self):
        c, s = self.compared, self.units.chainage
        label = [c.surveys[k].label if k else None for k in c.latest.tolist()]
        day = [c.surveys[k].day.isoformat() if k and c.surveys[k].day else None for k in c.latest.tolist()]
        columns = {
            "axis": [name or None for name in c.first.axis],
            "station": list(c.first.station),
            "chainage": c.first.chainage / s,
            "offset": c.first.offset / s,
            "surveys": np.isfinite(c.value).sum(axis=1),
            "first_date": [c.first.day.isoformat() if c.first.day else None] * len(c.first),
            "last_date": day,
            "last_seen": label,
        }
        for report in self.reports:
            columns.update(report.what.renamed(report._latest_columns()))
        return columns

    def _latest_columns(self):
        """Of each station to its latest survey, by the names that they have for heights."""
        c, h = self.compared, self.units.height
        rows, (rate, sd_rate) = np.arange(len(c.first)), c.rates
        change, sd, bending = (c.of_latest(values) for values in (c.change, c.sd_change, c.bending))

        def verdict(values, of):
            told = zip(values[rows, c.latest].tolist(), np.isfinite(of).tolist())
            return [value if there else None for value, there in told]

        return {
            "h_first": c.value[:, 0] / h,
            "h_last": c.of_latest(c.value) / h,
            "change": change / h,
            "sd_change": sd / h,
            "ratio": test_values(change, sd),
            "verdict": verdict(c.verdicts, change),
            "rate": rate / h,
            "sd_rate": sd_rate / h,
            "common": c.of_latest(c.common) / h,
            "bending": bending / h,
            "sd_bend": c.of_latest(c.sd_bending) / h,
            "bend_verd": verdict(c.bend_verdicts, bending),
        }

    def change_columns(self):
        """A row for each station and later survey that has it."""
        c = self.compared
        survey, row = (part for part in np.nonzero(np.isfinite(c.change).T))
        days = [c.surveys[k].day.isoformat() if c.surveys[k].day else None for k in survey.tolist()]
        columns = {
            "survey": [c.surveys[k].label for k in survey.tolist()],
            "date": days,
            "axis": [c.first.axis[k] or None for k in row.tolist()],
            "station": [c.first.station[k] for k in row.tolist()],
            "chainage": c.first.chainage[row] / self.units.chainage,
        }
        for report in self.reports:
            columns.update(report.what.renamed(report._change_columns((row, survey))))
        return columns

    def _change_columns(self, pick):
        """Of the changes ``pick`` (rows, numbers of surveys), by the names that they have for heights."""
        c, h = self.compared, self.units.height

        def verdict(values, of):
            return [v if there else None for v, there in zip(values[pick].tolist(), np.isfinite(of[pick]).tolist())]

        return {
            "h_first": c.value[pick[0], 0] / h,
            "h_last": c.value[pick] / h,
            "change": c.change[pick] / h,
            "sd_change": c.sd_change[pick] / h,
            "ratio": test_values(c.change[pick], c.sd_change[pick]),
            "verdict": verdict(c.verdicts, c.change),
            "common": c.common[pick] / h,
            "bending": c.bending[pick] / h,
            "sd_bend": c.sd_bending[pick] / h,
            "bend_verd": verdict(c.bend_verdicts, c.bending),
        }

    def unmatched_columns(self):
        c = self.compared
        rows = [(c.surveys[number], row, reason) for number, row, reason in c.unmatched]
        return {
            "survey": [survey.label for survey, _, _ in rows],
            "row": [row + 1 for _, row, _ in rows],
            "axis": [survey.axis[row] or None for survey, row, _ in rows],
            "station": [survey.station[row] for survey, row, _ in rows],
            "chainage": [float(survey.chainage[row]) / self.units.chainage for survey, row, _ in rows],
            "height": [float(survey.height[row]) / self.units.height for survey, row, _ in rows],
            "reason": [reason for _, _, reason in rows],
        }

    def motion_columns(self, record):
        """A row for each axis and later survey; ``record``: of the run, as text."""
        columns = self._motion_columns()
        if self.line:
            columns.update(self.line.what.renamed(self.line._motion_columns(), motions=True))
        return {**columns, "record": [record] * len(self.compared.motions)}

    def _motion_columns(self):
        c, h = self.compared, self.units.height
        rows = []
        for m in c.motions:
            found, count, bent = m.told, self.counts(m, c.verdicts), self.counts(m, c.bend_verdicts)
            day, tilted = c.surveys[m.number].day, m.told if self.tilted else None
            rows.append(
                {
                    "axis": m.axis or None,
                    "survey": c.surveys[m.number].label,
                    "date": day.isoformat() if day else None,
                    "years": float(c.years[m.number]),
                    "number": len(m.rows),
                    "stable": int(np.sum(m.motion.run < 0)) if m.motion else None,
                    "chi2": m.congruency.chi if m.congruency else None,
                    "chi2_limit": m.congruency.limit if m.congruency else None,
                    "shift": found.shift / h if found else None,
                    "sd_shift": found.sd_shift / h if found else None,
                    "shift_verd": self._shown(found.shift, found.sd_shift, m.judged) if found else None,
                    "tilt": tilted.tilt if tilted else None,
                    "sd_tilt": tilted.sd_tilt if tilted else None,
                    "tilt_verd": self._shown(tilted.tilt, tilted.sd_tilt, m.judged) if tilted else None,
                    "rms": self.rms(m) / h,
                    self.what.up: count[self.what.up],
                    self.what.down: count[self.what.down],
                    "possible": count["possible"],
                    "bent": bent[self.what.up] + bent[self.what.down] if found else None,
                }
            )
        return {name: [row[name] for row in rows] for name in rows[0]}

    @staticmethod
    def _shown(value, sd, judged):
        """Verdict on a common movement."""
        if not judged:
            return "not judged"
        return "significant" if abs(value) > NORMAL_95 * sd else "not significant"


def tell_comparison(report, asked):
    """Push the sentences of a run; doubts as warnings."""
    c = report.compared
    asked.say(
        tr("Understood: {}, compared with {} ({}); matched by {}.").format(
            counted(len(c.surveys), tr("survey"), tr("surveys")),
            c.first.label,
            counted(len(c.first), tr("station"), tr("stations")),
            report.asked["match"],
        )
    )
    for sentence in [
        *map(report.axis_sentence, c.motions[:40]),
        report.judged_sentence(),
        *(map(report.line.axis_sentence, report.line.compared.motions[:40]) if report.line else ()),
        *([report.line.line_sentence()] if report.line else ()),
        *report.unmatched_sentence()[:40],
    ]:
        asked.say(sentence)
    for sentence in report.doubts():
        asked.warn(sentence)
