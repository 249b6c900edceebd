"""Sights of a run, sorted into single sights, reciprocal pairs and sections, and reduced to height differences."""

from dataclasses import dataclass

import numpy as np

from ..core import sight_reduction as sr
from ..core.errors import InputError
from ..core.geodesy import ellipsoid_of
from ..core.level_book import book_sections, book_setups
from ..core.plain_number import plain_number
from ..core.sights import LEAST_RADIUS, MEAN_RADIUS, sight_radius
from ..core.two_peg import PegSetup, peg_setups, two_peg_test
from ..language.height_text import small_text
from ..language.number_text import plain_text
from ..language.translation import tr

SECOND = 1.0 / 3600.0
# A level whose fore sight is this many times its back sight looks across to the far point.
ACROSS = 5.0
SAME_LENGTH = 0.01
# Below this it does not matter where a horizontal distance lies, metres; and what it is tried with for a height.
NO_MATTER = 1e-4
TRIAL_HEIGHT = 100.0
TRIGONOMETRIC, SETUP, SECTION, BOTH_WAYS = "trigonometric", "level setup", "section", "reciprocal"


@dataclass(frozen=True)
class Differences:
    """Height differences of a run, arrays and lists (n,), metres; ``pairs``: number of reciprocal ones; ``mean_k``:
    their weighted mean, None without; ``day_k``: {day: (mean, its standard deviation, number)}."""

    start: list
    end: list
    difference: np.ndarray
    deviation: np.ndarray
    length: np.ndarray
    setups: np.ndarray
    kind: list
    curvature: np.ndarray
    collimation: np.ndarray
    imbalance: np.ndarray
    k: np.ndarray
    k_solved: np.ndarray
    k_deviation: np.ndarray
    day: list
    rows: list
    day_k: dict

    @property
    def pairs(self):
        return self.kind.count(BOTH_WAYS)

    @property
    def mean_k(self):
        """Weighted mean of the solved coefficients; None without."""
        return weighted_k(self.k_solved, self.k_deviation, self.length)[0] if self.pairs else None


def weighted_k(k, deviation, length):
    """Mean of coefficients, its standard deviation (NaN where none is stated): weights by deviation, else length^4."""
    known = np.isfinite(k)
    k, deviation, length = k[known], deviation[known], length[known]
    stated = np.all(np.isfinite(deviation) & (deviation > 0.0))
    weight = deviation**-2.0 if stated else length**4.0
    return float(weight @ k / weight.sum()), float(weight.sum() ** -0.5) if stated else np.nan


class Reduction:
    """One run: what was stated, and the sights it applies to."""

    def __init__(self, asked, table, named, units):
        self.asked = asked
        self.table, self.named, self.units = table, named, units
        self.days_k = self._days_k()
        self.k = asked.number("REFRACTION")
        self.solve = asked.flag("REFRACTION_SOLVED")
        self.horizontal_at = asked.choice("HORIZONTAL_AT")
        self.site_height = self._number("SITE_HEIGHT", units.height)
        self.radius = self._number("RADIUS")
        if self.radius < LEAST_RADIUS or np.isinf(self.radius):
            raise InputError(
                tr("RADIUS is {}; it must be the Earth's radius in metres, such as 6371000.").format(
                    plain_text(self.radius)
                ),
                keys=("RADIUS",),
            )
        self.pairs_of_rows = []
        self.unpaired, self._day_k = [], {}
        self.peg = self._peg_test()
        self.precision = self._precision()

    def _number(self, key, scale=1.0, default=np.nan):
        value = self.asked.number(key)
        return default if value is None else value * scale

    def _precision(self):
        return sr.Precision(
            angle=self._number("ANGLE_SIGMA", SECOND),
            distance=self._number("DISTANCE_SIGMA", 1e-3, 0.0),
            distance_ratio=self._number("DISTANCE_PPM", 1e-6, 0.0),
            height=self._number("HEIGHT_SIGMA", 1e-3, 0.0),
            reading=self._number("READING_SIGMA", 1e-3),
            k=self._number("REFRACTION_SIGMA", 1.0, 0.0),
            collimation=0.0 if self.peg is None else np.nan_to_num(self.peg.deviation),
        )

    def _days_k(self):
        text, found = self.asked.text("REFRACTION_DAYS"), {}
        for part in filter(str.strip, text.replace("\n", ";").split(";")):
            day, _, value = part.rpartition("=")
            number = plain_number(value)
            if number is None:
                day = ""
            found[day.strip()] = number
            if not day.strip():
                raise InputError(
                    tr("REFRACTION_DAYS: '{}' is not day=k.").format(part.strip()), keys=("REFRACTION_DAYS",)
                )
        unknown = sorted(set(found) - set(self.table.day))
        if unknown:
            raise InputError(
                tr("REFRACTION_DAYS: no row of layer '{}' has the day '{}'.").format(
                    self.table.source.sourceName(), unknown[0]
                ),
                keys=("REFRACTION_DAYS",),
            )
        return found

    def _peg_test(self):
        text = self.asked.text("PEG_TEST")
        if not text:
            return None
        if self.asked.number("COLLIMATION") is not None:
            raise InputError(
                tr("COLLIMATION and PEG_TEST are both given; give one of them."), keys=("COLLIMATION", "PEG_TEST")
            )
        height, distance = self.units.height, self.units.chainage
        setups = [
            PegSetup(s.first * height, s.second * height, s.first_length * distance, s.second_length * distance)
            for s in peg_setups(text)
        ]
        return two_peg_test(
            *setups, k=self.k or 0.0, radius=self._mean_radius, reading=self._number("READING_SIGMA", 1e-3)
        )

    @property
    def _mean_radius(self):
        return MEAN_RADIUS if np.isnan(self.radius) else self.radius

    @property
    def collimation(self):
        """Rise of the level's line of sight per length, without unit."""
        typed = self.asked.number("COLLIMATION")
        if typed is not None:
            return float(np.tan(np.radians(typed * SECOND)))
        return 0.0 if self.peg is None else self.peg.collimation

    @property
    def collimation_seconds(self):
        """The same in seconds of arc."""
        return float(np.degrees(np.arctan(self.collimation)) / SECOND)

    # --- the sights

    def _radius(self, starts, ends):
        """Radius of the Earth under each sight, metres (n,): RADIUS, else Euler's between known points, else by
        LATITUDE.
        """
        if np.isfinite(self.radius):
            return np.full(len(starts), self.radius)
        latitude = self._number("LATITUDE")
        lat, azimuth = np.full(len(starts), latitude), np.full(len(starts), np.nan)
        ellipsoid = ellipsoid_of("EPSG:4326")
        if self.named is not None:
            ellipsoid = self.named.ellipsoid
            found, azimuth = self.named.latitudes_and_azimuths(starts, ends)
            lat = np.where(np.isfinite(found), found, lat)
        return np.asarray(sight_radius(ellipsoid, lat, azimuth), float).reshape(len(starts))

    def result(self):
        """Differences; InputError where no row can be used."""
        parts = self._book() if self.table.is_book else self._sights()
        if not parts:
            row = min(self.table.rejected)
            raise InputError(
                tr("Layer '{}': no row can be used; row {}: {}").format(
                    self.table.source.sourceName(), row + 1, self.table.rejected[row]
                )
            )
        return _joined(parts, self._day_k)

    def _reject(self, row, reason):
        self.table.rejected.setdefault(int(row), reason)

    def _sorted_rows(self):
        """Rows with a trigonometric sight and rows with a setup of a level; the others are rejected."""
        table, c = self.table, self.table.columns
        both = [], []
        for row in table.usable():
            if not table.start[row] or not table.end[row]:
                self._reject(row, tr("The row names no point at one of its ends."))
            elif table.start[row] == table.end[row]:
                self._reject(row, tr("The row starts and ends at '{}'.").format(table.start[row]))
            elif np.isfinite(c["back"][row]) and np.isfinite(c["fore"][row]):
                both[1].append(row)
            elif np.isfinite(table.zenith[row]) and not np.isnan([c["slope"][row], c["horizontal"][row]]).all():
                both[0].append(row)
            else:
                self._reject(row, tr("The row has neither a distance and an angle nor a back and a fore sight."))
        return tuple(np.array(rows, int) for rows in both)

    def _sights(self):
        trigonometric, level = self._sorted_rows()
        parts = []
        for rows, kind in ((trigonometric, TRIGONOMETRIC), (level, SETUP)):
            if len(rows):
                parts.append((rows, kind, self._observed(rows, kind)))
        paired = [self._paired(*part) for part in parts]
        for _, pairs in paired:
            if pairs is not None:
                self._note_days(pairs)
        # Only now is the day's k known.
        singles = [
            self._single(rows[left], kind, observed.rows(left))
            for (rows, kind, observed), (left, _) in zip(parts, paired)
        ]
        return [part for part in (*singles, *(pairs for _, pairs in paired)) if part is not None]

    def _observed(self, rows, kind):
        table, c = self.table, {name: values[rows] for name, values in self.table.columns.items()}
        radius = self._radius([table.start[k] for k in rows], [table.end[k] for k in rows])
        if kind == SETUP:
            return sr.level_setups(c["back"], c["fore"], c["back_length"], c["fore_length"], radius, self.precision)
        slope = np.isfinite(c["slope"])
        distance, zenith = np.where(slope, c["slope"], c["horizontal"]), table.zenith[rows]
        ends = np.nan_to_num(c["instrument"]), np.nan_to_num(c["target"])
        self._ask_where_distances_lie(rows[~slope], distance[~slope], zenith[~slope], radius[~slope])
        observed = sr.trigonometric(distance, slope, zenith, *ends, radius, self.precision)
        if self.horizontal_at != "ellipsoid" or np.all(slope):
            return observed
        height = np.nan_to_num(self.site_height)
        return sr.chosen(slope, observed, sr.over_arcs(distance, zenith, *ends, radius, height, self.precision))

    def _ask_where_distances_lie(self, rows, distance, zenith, radius):
        """InputError where it is not said what a horizontal distance is, or how high an arc's ends are, and matters."""
        height, source = np.nan_to_num(self.site_height), self.table.source
        if not self.horizontal_at:
            differ = sr.kinds_of_distance_differ(distance, zenith, radius, height)
            if np.any(differ > NO_MATTER):
                at = int(np.argmax(differ))
                raise InputError(
                    tr(
                        "Layer '{}', field '{}', row {}: this height changes by {} with what the horizontal distance "
                        "is; say whether it lies at the instrument or is an arc on the ellipsoid (HORIZONTAL_AT)."
                    ).format(
                        source.sourceName(),
                        self.table.described("HORIZONTAL_FIELD"),
                        rows[at] + 1,
                        small_text(differ[at], self.units),
                    ),
                    keys=("HORIZONTAL_AT",),
                )
        elif self.horizontal_at == "ellipsoid" and np.isnan(self.site_height):
            change = np.abs(distance / np.tan(np.radians(zenith))) * TRIAL_HEIGHT / radius
            if np.any(change > NO_MATTER):
                at = int(np.argmax(change))
                raise InputError(
                    tr(
                        "Layer '{}', row {}: over an arc on the ellipsoid this height changes by {} for each 100 m "
                        "that the line lies higher; give the height of the sights above the ellipsoid (SITE_HEIGHT)."
                    ).format(source.sourceName(), rows[at] + 1, small_text(change[at], self.units)),
                    keys=("SITE_HEIGHT",),
                )

    def _paired(self, rows, kind, observed):
        """Indices into ``rows`` left single, and the part of the reciprocal pairs (None without)."""
        table = self.table
        able = np.isfinite(observed.length) & (observed.lift > 0.0)
        if kind == SETUP:
            able &= table.columns["fore_length"][rows] > ACROSS * table.columns["back_length"][rows]
        found = sr.reciprocal_pairs(
            [table.start[k] for k in rows], [table.end[k] for k in rows], [table.day[k] for k in rows], able
        )
        alike = [
            pair
            for pair in found
            if abs(observed.length[pair[0]] - observed.length[pair[1]]) <= SAME_LENGTH * observed.length[pair[0]]
        ]
        self.pairs_of_rows += [(int(rows[i]), int(rows[j])) for i, j, _ in found]
        self.unpaired += [(int(rows[i]), int(rows[j])) for i, j, across in found if (i, j, across) not in alike]
        if not alike:
            return np.arange(len(rows)), None
        first, second = (np.array([pair[k] for pair in alike], int) for k in (0, 1))
        tilt = np.full(len(first), self.collimation if kind == SETUP else 0.0)
        pairs = sr.combined(
            observed.rows(first),
            observed.rows(second),
            tilt,
            np.array([pair[2] for pair in alike], bool),
            self.precision,
        )
        left = np.setdiff1d(np.arange(len(rows)), np.concatenate([first, second]))
        length = 0.5 * (observed.length[first] + observed.length[second])
        imbalance = observed.imbalance[first] if kind == SETUP else np.full(len(first), np.nan)
        days = [
            table.day[rows[i]]
            if table.day[rows[i]] == table.day[rows[j]]
            else f"{table.day[rows[i]]}, {table.day[rows[j]]}"
            for i, j in zip(first, second)
        ]
        part = _Part(
            [table.start[rows[i]] for i in first],
            [table.end[rows[i]] for i in first],
            pairs.reduced,
            length,
            np.full(len(first), 2),
            BOTH_WAYS,
            imbalance,
            np.full(len(first), np.nan),
            pairs.k,
            pairs.k_deviation,
            days,
            [[int(rows[i]), int(rows[j])] for i, j in zip(first, second)],
        )
        return left, part

    def _note_days(self, part):
        for day in dict.fromkeys(part.day):
            mine = np.array([d == day for d in part.day])
            mean, deviation = weighted_k(part.k_solved[mine], part.k_deviation[mine], part.length[mine])
            self._day_k[day] = (mean, deviation, int(mine.sum()))

    def k_of(self, rows):
        """Coefficient of refraction of some rows: the row's own, its day's, the solved one, REFRACTION; NaN
        for none.
        """
        k = self.table.columns["k"][rows].copy()
        solved = {day: value[0] for day, value in self._day_k.items()} if self.solve else {}
        for at in np.flatnonzero(np.isnan(k)):
            day = self.table.day[rows[at]]
            k[at] = self.days_k.get(day, solved.get(day, np.nan if self.k is None else self.k))
        return k

    def _single(self, rows, kind, observed):
        k = self.k_of(rows)
        lacking = sr.needs_k(observed, k)
        for row in rows[lacking]:
            self._reject(row, tr("The sight needs a coefficient of refraction k and has none; give REFRACTION."))
        rows, observed, k = rows[~lacking], observed.rows(~lacking), k[~lacking]
        if not len(rows):
            return None
        level = kind == SETUP
        done = sr.reduced(observed, k, np.full(len(rows), self.collimation if level else 0.0), self.precision)
        table, nothing = self.table, np.full(len(rows), np.nan)
        imbalance = np.where(np.isfinite(observed.length), observed.imbalance, np.nan) if level else nothing
        return _Part(
            [table.start[k] for k in rows],
            [table.end[k] for k in rows],
            done,
            observed.length,
            observed.setups,
            kind,
            imbalance,
            k,
            nothing,
            nothing,
            [table.day[k] for k in rows],
            [[int(row)] for row in rows],
        )

    def _book(self):
        """Sections of a levelling book."""
        table, usable, c = self.table, np.arange(len(self.table)), self.table.columns
        broken = np.isin(usable, list(table.rejected))
        setups, refused = book_setups(c["back"], c["inter"], c["fore"], broken)
        for row, reason in refused.items():
            self._reject(usable[row], tr("In the levelling book {}.").format(tr(reason)))
        if not setups:
            return []
        names = [table.point[row] for row in usable]
        sections, loose = book_sections(setups, names)
        for row in {row for k in loose for row in (setups[k].back, setups[k].fore)}:
            self._reject(usable[row], tr("The section here starts or ends at a point without a name."))
        return [self._sections(usable, setups, sections, c)] if sections else []

    def _sections(self, usable, setups, sections, c):
        table = self.table
        back, fore = (np.array([getattr(s, side) for s in setups], int) for side in ("back", "fore"))
        readings = np.where([s.intermediate for s in setups], c["inter"][fore], c["fore"][fore])
        observed = sr.level_setups(
            c["back"][back],
            readings,
            c["back_length"][back],
            c["fore_length"][fore],
            self._radius([""] * len(back), [""] * len(back)),
            self.precision,
        )
        k = self.k_of(usable[back])
        lacking = sr.needs_k(observed, k)
        if np.any(lacking):
            row = int(usable[back[np.flatnonzero(lacking)[0]]])
            raise InputError(
                tr(
                    "Layer '{}', row {}: the setup's sights are unlike and there is no coefficient of refraction k; "
                    "give REFRACTION."
                ).format(table.source.sourceName(), row + 1),
                keys=("REFRACTION",),
            )
        members = np.concatenate([section.setups for section in sections]).astype(int)
        groups = np.repeat(np.arange(len(sections)), [len(section.setups) for section in sections])
        each = sr.reduced(observed.rows(members), k[members], np.full(len(members), self.collimation), self.precision)
        sums = observed.rows(members).sums(groups, len(sections))
        tilt = np.full(len(sections), self.collimation)
        deviation = sr.reduced(sums, np.zeros(len(sections)), tilt, self.precision).deviation
        added = [
            np.bincount(groups, values, len(sections)) for values in (each.difference, each.curvature, each.collimation)
        ]
        nothing = np.full(len(sections), np.nan)
        first = np.array([usable[setups[section.setups[0]].back] for section in sections], int)
        used_k = self.k_of(first)
        rows = [
            sorted({int(usable[row]) for k in section.setups for row in (setups[k].back, setups[k].fore)})
            for section in sections
        ]
        return _Part(
            [s.start for s in sections],
            [s.end for s in sections],
            sr.Reduced(added[0], deviation, added[1], added[2]),
            sums.length,
            sums.setups,
            SECTION,
            np.where(np.isfinite(sums.length), sums.imbalance, np.nan),
            used_k,
            nothing,
            nothing,
            [table.day[row] for row in first],
            rows,
        )


@dataclass(frozen=True)
class _Part:
    """Height differences of one kind; ``rows``: lists of input rows from 0."""

    start: list
    end: list
    reduced: sr.Reduced
    length: np.ndarray
    setups: np.ndarray
    kind: str
    imbalance: np.ndarray
    k: np.ndarray
    k_solved: np.ndarray
    k_deviation: np.ndarray
    day: list
    rows: list


def _rows_text(rows):
    """'3', '3, 7', '3 to 9'."""
    if len(rows) > 2 and rows[-1] - rows[0] == len(rows) - 1:
        return tr("{} to {}").format(rows[0] + 1, rows[-1] + 1)
    return ", ".join(str(row + 1) for row in rows)


def _joined(parts, day_k):
    """Differences of all parts in the order of their first rows."""
    rows = [row for part in parts for row in part.rows]
    order = sorted(range(len(rows)), key=lambda k: rows[k])

    def texts(name):
        flat = [value for part in parts for value in getattr(part, name)]
        return [flat[k] for k in order]

    def numbers(name, inner=False):
        return np.concatenate([getattr(part.reduced if inner else part, name) for part in parts])[order]

    kinds = [part.kind for part in parts for _ in part.rows]
    return Differences(
        texts("start"),
        texts("end"),
        numbers("difference", True),
        numbers("deviation", True),
        numbers("length"),
        numbers("setups"),
        [kinds[k] for k in order],
        numbers("curvature", True),
        numbers("collimation", True),
        numbers("imbalance"),
        numbers("k"),
        numbers("k_solved"),
        numbers("k_deviation"),
        texts("day"),
        [_rows_text(rows[k]) for k in order],
        day_k,
    )
