"""Simulated surveys of a structure whose truth is known: how often an interval, an ellipse and a test keep their word.

Used by ``honesty.py`` with 2,000 surveys each, and by the tests with fewer. Needs the package registered as
``tautline`` (``tests/conftest.py``). Truth is a plane in space; the heights over the stations are its own, checked
against 50-digit arithmetic in ``tests/core/test_plane.py``.
"""

from collections import Counter
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from simulated_tally import Tally

from tautline.algorithms.core.axis import Axis, AxisLine
from tautline.algorithms.core.covariance import Covariance, independent, levelled
from tautline.algorithms.core.curvature import SurveyedLeg, test_curvature
from tautline.algorithms.core.fit import Frame, Heights, fit_surface, line_frame, plane_frame
from tautline.algorithms.core.geodesy import Ellipsoid, east_north, foot_and_normal
from tautline.algorithms.core.least_squares import suspected_step
from tautline.algorithms.core.plane import inclined_plane
from tautline.algorithms.core.tangent_point import level_place, tangent_point

EARTH = Ellipsoid(6378137.0, 1 / 298.257223563)
ARC_SECOND = np.pi / (180.0 * 3600.0)
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
        found = tangent_point(fit, one.lat, one.lon)
        held["tangent point, ellipse"] = found.well_determined and _holds(
            found.levelling, (found.lat, found.lon), one.true_tangent
        )
    else:
        middle = 0.5 * float(one.chainage.min() + one.chainage.max())
        place = level_place(fit, one.arms[0], middle)
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


def geoid_ellipses(dice, number, *, known, sigma=4.0):
    """Planes over a geoid that slopes by ``sigma`` seconds of arc in each component, which the fit is not told."""
    held = Counter()
    for _ in range(number):
        one = survey(dice, 2, correlated=True)
        east, north = east_north(one.lat[0], one.lon[0])
        away = foot_and_normal(one.lat, one.lon, EARTH)[0] - foot_and_normal(one.lat[0], one.lon[0], EARTH)[0]
        slope = dice.normal(0.0, sigma * ARC_SECOND, 2)
        undulation = away @ east * slope[0] + away @ north * slope[1]
        fit = one.fit(one.errors(dice) - undulation, known=known, remove=False)
        found = tangent_point(fit, one.lat, one.lon, geoid_slope_sigma=sigma)
        ellipses = {"with the geoid's slope error": found.geoid, "from the heights alone": found.levelling}
        for name, ellipse in ellipses.items():
            held[name] += int(ellipse is not None and _holds(ellipse, (found.lat, found.lon), one.true_tangent))
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
