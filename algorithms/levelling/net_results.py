"""One run of adjustlevelling: datum, adjustment, misclosures and what they mean for each line and point."""

from functools import cached_property

import numpy as np

from ..boundary.cancel import check_cancel
from ..core.errors import InputError
from ..core.levelling import Datum, adjusted
from ..core.loops import loop_misclosures, section_misclosures
from ..core.misclosure import CLASSES, misclosure_limit
from ..core.quantiles import BAARDA
from ..core.row_ranges import rows_of_each
from ..language.number_text import listed
from ..language.translation import tr

_LONGEST_PATH = 12


class LevellingRun:
    """Everything a run has found, metres. Points are indices into ``lines.net.names``."""

    def __init__(self, asked, lines, benchmarks, named, units, gravity):
        self.gravity = gravity
        self.asked, self.lines, self.benchmarks, self.named, self.units = (asked, lines, benchmarks, named, units)
        self.free = asked.flag("FREE")
        self.level_class = asked.choice("CLASS")
        self.factor = asked.number("LIMIT_FACTOR")
        self.index = {name: k for k, name in enumerate(lines.net.names)}
        self.tied = {self.index[name]: mark for name, mark in benchmarks.items() if name in self.index}
        self.held = self._held(asked.text("FREE_POINT"))
        self.adjustment = adjusted(lines.net, self._datum(), known=lines.known)
        for share in self.adjustment.computing():
            check_cancel(asked.feedback)
            asked.progress(20 + 30 * share)
        fixed = {point: mark.height for point, mark in self.tied.items() if mark.deviation == 0.0}
        self.misclosures = section_misclosures(lines.net) + loop_misclosures(lines.net, fixed)
        asked.progress(60)

    # --- what the heights hang on

    def _held(self, wanted):
        """Points held in a free adjustment, {point: height}; {} otherwise."""
        net = self.lines.net
        if wanted and wanted not in self.index:
            raise InputError(
                tr("FREE_POINT: no line of layer '{}' touches '{}'.").format(self.lines.source.sourceName(), wanted),
                keys=("FREE_POINT",),
            )
        if not self.free:
            if wanted:
                self.asked.warn(
                    tr("FREE_POINT is given, but not used, since the adjustment is not free."), keys=("FREE_POINT",)
                )
            return {}
        held = {}
        if wanted:
            held[int(net.parts[self.index[wanted]])] = self.index[wanted]
        for point in [*sorted(self.tied), *range(len(net.names))]:
            held.setdefault(int(net.parts[point]), point)
        return {point: self.tied[point].height if point in self.tied else 0.0 for point in held.values()}

    def _datum(self):
        if self.free:
            return Datum(self.held, {})
        if not self.tied:
            names = listed(self.lines.net.names)
            known = tr("no benchmark is given")
            if self.benchmarks:
                known = tr("the benchmarks are {}").format(listed(self.benchmarks))
            raise InputError(
                tr(
                    "No line of layer '{}' reaches a benchmark: its points are {}, and {}. Give BENCHMARKS, or run a "
                    "free adjustment."
                ).format(self.lines.source.sourceName(), names, known),
                keys=("BENCHMARKS",),
            )
        weighted = {point: (mark.height, mark.deviation) for point, mark in self.tied.items() if mark.deviation > 0.0}
        if weighted and not self.lines.known:
            raise InputError(
                tr(
                    "Benchmarks with a standard deviation need lines with one too: give SIGMA_KM, SIGMA_SETUP, SIGMA "
                    "or a field 'sd'."
                ),
                keys=("SIGMA_KM", "SIGMA_SETUP", "SIGMA"),
            )
        return Datum({point: mark.height for point, mark in self.tied.items() if mark.deviation == 0.0}, weighted)

    @cached_property
    def loose_parts(self):
        """Names of the points of each part that reaches no benchmark."""
        net = self.lines.net
        lost = np.isnan(self.adjustment.heights)
        points = rows_of_each(net.parts.tolist())
        return [[net.names[k] for k in points[part].tolist()] for part in np.unique(net.parts[lost]).tolist()]

    # --- points

    @cached_property
    def given(self):
        """Heights of the benchmarks (p,), NaN for others."""
        found = np.full(len(self.lines.net.names), np.nan)
        for point, mark in self.tied.items():
            found[point] = mark.height
        return found

    @cached_property
    def roles(self):
        """What each point is."""
        roles = ["adjusted" if np.isfinite(height) else "no benchmark" for height in self.adjustment.heights]
        for point, mark in self.tied.items():
            roles[point] = "checked" if self.free else "weighted" if mark.deviation > 0.0 else "fixed"
        for point in self.held:
            roles[point] = "held"
        return roles

    @cached_property
    def point_w(self):
        """Test values of benchmarks (p,): of weighted ones as observations, of those a free adjustment checks their
        difference over its standard deviation."""
        found = np.full(len(self.lines.net.names), np.nan)
        if self.free:
            other = np.array([self.tied[k].deviation if k in self.tied else 0.0 for k in range(len(found))])
            size = np.hypot(self.adjustment.height_deviations, other)
            good = np.isfinite(self.given) & (size > 0.0)
            found[good] = (self.adjustment.heights - self.given)[good] / size[good]
        number = len(self.adjustment.benchmarks)
        if number:
            found[list(self.adjustment.benchmarks)] = self.adjustment.w[-number:]
        return found

    # --- lines

    def of_lines(self, values):
        """Values of observations (m,) for all lines of the net (n,), NaN for those that take no part."""
        found = np.full(len(self.lines.net), np.nan)
        rows = self.adjustment.observed
        found[rows[rows >= 0]] = values[rows >= 0]
        return found

    @property
    def adjusted_differences(self):
        """Height differences from the adjusted heights, of observations (m,)."""
        net, rows = self.lines.net, self.adjustment.observed
        return np.where(rows >= 0, net.difference[rows], np.nan) - self.adjustment.residuals

    @property
    def line_deviations(self):
        """Standard deviations of the lines (n,), metres; with the estimated scale where none was stated."""
        return self.lines.net.deviation * np.sqrt(self.adjustment.scale)

    @cached_property
    def suspected(self):
        """True for observations with |w| beyond the limit (m,)."""
        return np.abs(np.nan_to_num(self.adjustment.w)) > self.adjustment.critical

    @cached_property
    def flags(self):
        """What each line is (n,)."""
        rows = self.adjustment.observed
        flags = np.full(len(self.lines.net), "no benchmark", dtype=object)
        kinds = np.where(
            self.suspected, "suspected blunder", np.where(self.adjustment.redundancies > 0.0, "kept", "unchecked")
        )
        flags[rows[rows >= 0]] = kinds[rows >= 0]
        return flags

    # --- misclosures

    def _factor(self, kind):
        """n of the limit n sqrt(K) of a 'section' or a 'loop', None where none is set."""
        if self.factor is not None or not self.level_class:
            return self.factor
        return next((c.factor for c in CLASSES if (c.name, c.kind) == (self.level_class, kind)), None)

    @property
    def has_limit(self):
        return self._factor("section") is not None

    @cached_property
    def line_tolerances(self):
        """What each line may be wrong by (n,), metres: its limit as a section, else 3.29 of its standard deviations;
        NaN where neither is known."""
        factor, net = self._factor("section"), self.lines.net
        if factor is None:
            return BAARDA * self.line_deviations
        found = np.full(len(net), np.nan)
        known = net.length > 0.0
        found[known] = misclosure_limit(factor, net.length[known])
        return found

    def limit(self, misclosure):
        """Limit of one, metres; NaN where none is set or a length is not known."""
        factor = self._factor("section" if misclosure.kind == "section" else "loop")
        if factor is None or not np.isfinite(misclosure.length):
            return np.nan
        return misclosure_limit(factor, misclosure.length)

    def status(self, misclosure):
        limit = self.limit(misclosure)
        return "no limit" if np.isnan(limit) else "within" if abs(misclosure.value) <= limit else "beyond"

    @cached_property
    def beyond(self):
        """Misclosures beyond their limit."""
        return [one for one in self.misclosures if self.status(one) == "beyond"]

    @staticmethod
    def path(misclosure):
        """The way as text, long ones in their first and last points."""
        names = list(misclosure.path)
        if len(names) > _LONGEST_PATH:
            half = _LONGEST_PATH // 2
            names = [*names[:half], tr("({} more)").format(len(names) - 2 * half), *names[-half:]]
        return " \u2013 ".join(names)
