"""Simulated surveys of a structure whose truth is known: how often an interval, an ellipse and a test keep their word.

Used by ``honesty.py`` with 2,000 surveys each, and by the tests with fewer. Needs the package registered as
``tautline`` (``tests/conftest.py``). Truth is a plane in space; the heights over the stations are its own, checked
against 50-digit arithmetic in ``tests/core/test_plane.py``.
"""

from collections import Counter
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
from simulated_tally import Tally

from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.covariance import Covariance, independent, levelled
from tautline.algorithms.core.curvature import SurveyedLeg, test_curvature
from tautline.algorithms.core.fit import Frame, Heights, fit_surface, line_frame, plane_frame
from tautline.algorithms.core.geodesy import Ellipsoid, foot_and_normal
from tautline.algorithms.core.geoid_slope import ARC_SECOND, GeoidSlope
from tautline.algorithms.core.least_squares import suspected_step
from tautline.algorithms.core.plane import inclined_plane
from tautline.algorithms.core.tangent_point import line_places, plane_points, stations_extent

EARTH = Ellipsoid(6378137.0, 1 / 298.257223563)
INDEPENDENT_SIGMA, READING_SIGMA, SIGMA_KM = 0.003, 0.0005, 0.0015


@dataclass(frozen=True)
class Survey:
    """Stations of one or two arms, the true heights over them and their covariance; degrees and metres."""

    arms: tuple
    arm: np.ndarray
    chainage: np.ndarray
    lat: np.ndarray
    lon: np.ndarray
    truth: object
    covariance: Covariance

    @cached_property
    def heights(self):
        return self.truth.heights(self.lat, self.lon, EARTH)

    @cached_property
    def _root(self):
        matrix = self.covariance.matrix
        return None if matrix is None else np.linalg.cholesky(matrix)

    def errors(self, dice):
        normal = dice.normal(size=len(self.lat))
        return normal * np.sqrt(self.covariance.variance) if self._root is None else self._root @ normal

    @property
    def frame(self):
        if len(self.arms) == 2:
            return plane_frame(self.lat, self.lon, EARTH)
        return line_frame(self.arms[0], self.chainage.min(), self.chainage.max())

    def fit(self, errors, *, known, remove, covariance=None):
        given = covariance or self.covariance
        return fit_surface(
            self.frame,
            Heights(self.lat, self.lon, self.heights + errors, given, known),
            remove=remove,
            sections=self.sections,
        )

    @property
    def sections(self):
        """Rows along each arm, outwards, of levelled heights."""
        if self.covariance.matrix is None:
            return ()
        return tuple(np.flatnonzero(self.arm == number) for number in range(len(self.arms)))

    @property
    def true_tangent(self):
        """Latitude and longitude, degrees, where the true plane is level."""
        n = self.truth.normal
        return float(np.degrees(np.arctan2(n[2], np.hypot(n[0], n[1])))), float(np.degrees(np.arctan2(n[1], n[0])))

    def true_slopes(self, frame):
        """Slopes of the true plane at a frame, along its directions."""
        n = self.truth.normal
        return -(frame.directions @ n) / (n @ frame.up)

    def true_level(self):
        """Chainage where the true line's slope against the horizon is zero, by the secant rule on the slope itself."""
        axis = self.arms[0]

        def slope(chainage):
            lat, lon, azimuth = (float(v[0]) for v in axis.place(chainage))
            return float(self.true_slopes(Frame(lat, lon, EARTH, azimuth))[0])

        first, second = 0.0, 1000.0
        while abs(second - first) > 1e-3:
            first, second = second, second - slope(second) * (second - first) / (slope(second) - slope(first))
        return second


def survey(dice, arms, *, correlated, stations=31):
    """A survey at a random place: one arm with so many ``stations``, or two at 50 to 130 degrees with 26 each and one
    at the corner."""
    lat0, lon0 = float(np.degrees(np.arcsin(dice.uniform(-0.97, 0.97)))), float(dice.uniform(-180.0, 180.0))
    azimuth, height = float(dice.uniform(0.0, 360.0)), float(dice.uniform(0.0, 2000.0))
    turns = [0.0] if arms == 1 else [0.0, float(dice.uniform(50.0, 130.0) * dice.choice([-1.0, 1.0]))]
    lengths = dice.uniform(1500.0, 3000.0, arms)
    axes, parts = [], []
    for number, (turn, length) in enumerate(zip(turns, lengths)):
        lat, lon, _ = EARTH.forward(np.full(2, lat0), np.full(2, lon0), np.full(2, azimuth + turn), [0.0, length])
        axis = Axis(AxisLine(f"arm {number}", lat, lon, EARTH), height)
        chainage = np.linspace(0.0, axis.length, stations if arms == 1 else 27)[number:]
        parts.append((np.full(len(chainage), number), chainage, *axis.place(chainage)[:2]))
        axes.append(axis)
    arm, chainage, lat, lon = (np.concatenate([part[k] for part in parts]) for k in range(4))
    truth = inclined_plane(
        lat0,
        lon0,
        height,
        azimuth + float(dice.uniform(0.0, 360.0)) * (arms == 2),
        float(dice.uniform(-4e-4, 4e-4)),
        EARTH,
    )
    covariance = (
        levelled(np.full(len(arm), READING_SIGMA), arm, chainage, SIGMA_KM)
        if correlated
        else independent(np.full(len(arm), INDEPENDENT_SIGMA))
    )
    return Survey(tuple(axes), arm, chainage, lat, lon, truth, covariance)


def _holds(ellipse, at, truth):
    """True where the ellipse around ``at`` holds the truth; latitudes and longitudes in degrees."""
    azimuth, _, distance = EARTH.inverse(*at, *truth)
    turn = np.radians(azimuth - ellipse.azimuth)
    return (distance * np.cos(turn) / ellipse.semi_a) ** 2 + (distance * np.sin(turn) / ellipse.semi_b) ** 2 <= 1.0


def fit_coverage(one, fit):
    """Which intervals and ellipses of a fit hold the truth: {name: bool}."""
    frame, solution = fit.frame, fit.solution
    half = solution.interval_factor * solution.deviations
    height = float(one.truth.heights(frame.lat, frame.lon, EARTH)[0])
    held = {"height": abs(fit.height - height) <= half[0]}
    slopes = np.abs(fit.slopes - one.true_slopes(frame)) <= half[1:]
    held.update(zip(("slope east", "slope north") if len(slopes) == 2 else ("slope",), slopes.tolist()))
    if len(one.arms) == 2:
        found = plane_points(fit, one.lat, one.lon).tangent
        held["tangent point, ellipse"] = found.well_determined and _holds(
            found.ellipse, (found.lat, found.lon), one.true_tangent
        )
    else:
        middle = 0.5 * float(one.chainage.min() + one.chainage.max())
        place = line_places(fit, one.arms[0], middle, one.lat, one.lon).level
        held["chainage where level"] = abs(place.chainage - one.true_level()) <= solution.interval_factor * place.sd
    return {name: bool(value) for name, value in held.items()}


def fits(dice, number, arms, *, correlated, known, remove=False):
    """Tally of coverage, false alarms (stations flagged though no blunder is there) and poorly determined ones."""
    held = Counter()
    for _ in range(number):
        one = survey(dice, arms, correlated=correlated)
        fit = one.fit(one.errors(dice), known=known, remove=remove)
        held.update({name: int(value) for name, value in fit_coverage(one, fit).items()})
        if remove:
            held["false alarms"] += int(flagged(fit.search).sum())
            if correlated:
                held["steps suspected"] += int(suspected_step(fit.search.fitted, one.sections) is not None)
    return Tally(number, held)


def flagged(found):
    """Stations set aside or suspected, booleans (n,)."""
    return ~found.kept | (np.abs(np.nan_to_num(found.w)) > found.solution.critical)


def blunders(dice, number, arms, *, correlated, known):
    """How often a blunder of twice the smallest detectable is flagged, and flagged alone, at the right station."""
    held = Counter()
    for _ in range(number):
        one = survey(dice, arms, correlated=correlated)
        errors = one.errors(dice)
        detectable = one.fit(errors, known=known, remove=False).search.detectable
        row = int(dice.choice(np.flatnonzero(np.isfinite(detectable))))
        errors[row] += 2.0 * detectable[row] * dice.choice([-1.0, 1.0])
        found = flagged(one.fit(errors, known=known, remove=True).search)
        held["found"] += int(found[row])
        held["found, no other station flagged"] += int(found[row] and found.sum() == 1)
    return Tally(number, held)


def ignored_correlation(dice, number):
    """Planes levelled along two arms, fitted as if independent: sigma estimated, and sigma the true deviation of each
    height."""
    held = Counter()
    for _ in range(number):
        one = survey(dice, 2, correlated=True)
        errors = one.errors(dice)
        for name, covariance, known in (
            ("from the residuals", independent(np.ones(len(one.lat))), False),
            ("of the reading alone", independent(np.full(len(one.lat), READING_SIGMA)), True),
            ("of each height", independent(np.sqrt(one.covariance.variance)), True),
            ("correlation regarded", one.covariance, True),
        ):
            fit = one.fit(errors, known=known, remove=False, covariance=covariance)
            held[name] += int(fit_coverage(one, fit)["tangent point, ellipse"])
    return Tally(number, held)


# The method page's bending of the geoid along 3 km, as a share of the Earth's curvature.
BENDING, BENDING_LENGTH = 0.04, 3000.0


@dataclass(frozen=True)
class Bent:
    """A geoid that slopes by ``slope`` (2,) at a frame's place and bends by ``second`` (3,): d2N/de2, d2N/dedn,
    d2N/dn2, 1/m; N, metres, at latitudes and longitudes in degrees."""

    frame: Frame
    slope: np.ndarray
    second: np.ndarray

    def __call__(self, lat, lon):
        x, y = self._plan(lat, lon)
        bend = 0.5 * self.second[0] * x**2 + self.second[1] * x * y + 0.5 * self.second[2] * y**2
        return self.slope[0] * x + self.slope[1] * y + bend

    def _plan(self, lat, lon):
        feet = foot_and_normal(np.asarray(lat, float), np.asarray(lon, float), EARTH)[0]
        return ((feet - foot_and_normal(self.frame.lat, self.frame.lon, EARTH)[0]) @ self.frame.directions.T).T


def standing_water(plane, undulation, start):
    """Where a plane's height above the geoid is least, so that water would stand still there: lat, lon, degrees.

    By the parabola through nine heights about the place, moved to its vertex until it stays, nothing of the code that
    is tested.
    """
    lat, lon = start
    turn, reach = np.array([0.0, 45.0, 90.0, 135.0, 180.0, 225.0, 270.0, 315.0]), 3000.0
    for _ in range(4):
        at_lat, at_lon, _ = EARTH.forward(np.full(8, lat), np.full(8, lon), turn, np.full(8, reach))
        at_lat, at_lon = np.append(at_lat, lat), np.append(at_lon, lon)
        height = plane.heights(at_lat, at_lon, EARTH) - undulation(at_lat, at_lon)
        x = np.append(np.sin(np.radians(turn)), 0.0)
        y = np.append(np.cos(np.radians(turn)), 0.0)
        a = np.linalg.lstsq(np.column_stack([np.ones(9), x, y, x * x, x * y, y * y]), height, rcond=None)[0]
        dx, dy = np.linalg.solve([[2 * a[3], a[4]], [a[4], 2 * a[5]]], [-a[1], -a[2]])
        lat, lon, _ = EARTH.forward(lat, lon, float(np.degrees(np.arctan2(dx, dy))), reach * float(np.hypot(dx, dy)))
        lat, lon = float(lat), float(lon)
    return lat, lon


def both_points(dice, number, *, ellipsoidal, known, correlated, sigma, away=None):
    """Planes over a geoid that slopes by ``sigma`` seconds of arc in each component and bends by the method page's
    share, of which the fit is told no more than this: coverage of the ellipses of both points, and of those that leave
    the bending out. ``ellipsoidal``: heights above the ellipsoid, else above the geoid; ``away``: metres of the tangent
    point from the stations' centre, None for anywhere within some 2.5 km.
    """
    held = Counter()
    for _ in range(number):
        one = survey(dice, 2, correlated=correlated)
        frame = one.frame
        if away is not None:
            turn = dice.uniform(0.0, 2.0 * np.pi)
            slopes = away / float(EARTH.radius_across(frame.lat)) * np.array([np.sin(turn), np.cos(turn)])
            one = replace(one, truth=frame.plane(float(dice.uniform(0.0, 2000.0)), slopes))
        extent = stations_extent(one.lat, one.lon, EARTH)
        second = BENDING * BENDING_LENGTH / extent / 6.371e6
        geoid = Bent(frame, dice.normal(0.0, sigma * ARC_SECOND, 2), dice.normal(0.0, second, 3))
        errors = one.errors(dice) - (0.0 if ellipsoidal else geoid(one.lat, one.lon))
        fit = one.fit(errors, known=known, remove=False)
        found = plane_points(fit, one.lat, one.lon, GeoidSlope(ellipsoidal, sigma=sigma, bending=second))
        stiff = plane_points(fit, one.lat, one.lon, GeoidSlope(ellipsoidal, sigma=sigma))
        level = standing_water(one.truth, geoid, one.true_tangent)
        for name, point, truth in (
            ("tangent point", found.tangent, one.true_tangent),
            ("level point", found.level, level),
            ("level point, bending left out", stiff.level, level),
        ):
            held[name] += int(point.well_determined and _holds(point.ellipse, (point.lat, point.lon), truth))
    return Tally(number, held)


def both_chainages(dice, number, *, ellipsoidal, correlated, sigma):
    """Lines over such a geoid: coverage of 1.96 standard deviations of both chainages, sigma of the heights known."""
    held = Counter()
    for _ in range(number):
        one = survey(dice, 1, correlated=correlated)
        axis, length = one.arms[0], float(np.ptp(one.chainage))
        second = BENDING * BENDING_LENGTH / length / 6.371e6
        slope, bend = dice.normal(0.0, sigma * ARC_SECOND), dice.normal(0.0, second)

        def undulation(chainage, slope=slope, bend=bend, middle=0.5 * length):
            return slope * (chainage - middle) + 0.5 * bend * (chainage - middle) ** 2

        errors = one.errors(dice) - (0.0 if ellipsoidal else undulation(one.chainage))
        fit = one.fit(errors, known=True, remove=False)
        geoid = GeoidSlope(ellipsoidal, sigma=sigma, bending=second)
        found = line_places(fit, axis, 0.5 * length, one.lat, one.lon, geoid)
        s = np.linspace(-4000.0, length + 4000.0, 9)
        heights = one.truth.heights(*axis.place(s)[:2], EARTH)
        for name, place, below in (("tangent", found.tangent, 0.0), ("level", found.level, undulation(s))):
            a = np.polyfit(s / 1000.0, heights - below, 2)
            held[name] += int(abs(place.chainage + 500.0 * a[1] / a[0]) <= 1.96 * place.sd)
    return Tally(number, held)


def curvature_factors(dice, number, *, correlated, known, bent):
    """Straight structures and structures along the level surface, half each; ``bent``: with a geoid that
    bends by the method page's share of the Earth's curvature. Coverage of the factor's interval, and
    verdicts of the wrong shape.
    """
    held = Counter()
    for _ in range(number):
        one, truth = survey(dice, 1, correlated=correlated), float(dice.integers(0, 2))
        axis, x = one.arms[0], one.chainage - one.chainage.mean()
        profile = SurveyedLeg(
            axis,
            one.lat,
            one.lon,
            one.chainage,
            one.heights,
            np.zeros(len(x)),
            one.covariance,
            known,
            bending=None if bent else 0.0,
        )
        bend = test_curvature(profile).curvature
        share = dice.normal(0.0, profile.geoid_share) if bent else 0.0
        heights = one.heights + (truth - 1.0 + share) * bend + one.errors(dice)
        found = test_curvature(
            SurveyedLeg(
                axis,
                one.lat,
                one.lon,
                one.chainage,
                heights,
                np.zeros(len(x)),
                one.covariance,
                known,
                bending=None if bent else 0.0,
            )
        )
        low, high = found.interval
        held["factor"] += int(low <= truth <= high)
        held["other shape's verdict"] += int(found.verdict == ("level" if truth else "straight"))
        held["right verdict"] += int(found.verdict == ("straight" if truth else "level"))
    return Tally(number, held)
