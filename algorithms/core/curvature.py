"""The curvature factor: which shape was built, straight in space, along the level surface, or neither
(method page 6).
"""

import math
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Optional

import numpy as np

from .axis import Axis
from .covariance import Covariance
from .errors import InputError
from .least_squares import Fitted, Solution, search
from .leg_regressions import bends_of, regressions
from .quantiles import NORMAL_95, interval_factor
from .shape_fit import ShapeFit, shape_fits

# The geoid bends by about this much of the Earth's curvature over 3 km without being told; it shrinks with length.
GEOID_BENDING, GEOID_LENGTH = 0.04, 3_000.0
DECIDING = 0.255
LEAST_STATIONS = 4
# Where the curve has the bend of a shape, but the heights do not follow it, nothing 'is' that shape.
SHAPE_VERDICTS = ("straight", "level", "neither", "undecided", "straight on average", "level on average")


@dataclass(frozen=True)
class SurveyedLeg:
    """As-built heights of one axis or leg, in the input's height system; arrays (n,), metres.

    ``undulation``: N of each station (zeros where not known); ``covariance``: C; ``known``: True where it is in square
    metres. ``fine_grid``: True where N came from a grid with cells shorter than half the length. ``bending``: the
    geoid's share u_N of the factor's uncertainty, None for the method page's (6). InputError for fewer than 4 stations.
    """

    axis: Axis
    lat: np.ndarray
    lon: np.ndarray
    chainage: np.ndarray
    height: np.ndarray
    undulation: np.ndarray
    covariance: Covariance
    known: bool = True
    fine_grid: bool = False
    bending: Optional[float] = None

    def __post_init__(self):
        if len(self.height) < LEAST_STATIONS:
            raise InputError(
                "Axis '{}': a curvature factor needs at least {} stations with heights; there are {}.",
                self.axis.line.name,
                LEAST_STATIONS,
                len(self.height),
            )
        if self.length < 0.001:
            raise InputError("Axis '{}': all stations are at one chainage.", self.axis.line.name)

    @cached_property
    def length(self):
        """Length over the stations, metres."""
        return float(self.chainage.max() - self.chainage.min())

    @property
    def geoid_share(self):
        """u_N of the curvature factor, without unit."""
        if self.bending is not None:
            return self.bending
        share = GEOID_BENDING * GEOID_LENGTH / self.length
        return 0.5 * share if self.fine_grid else share

    def part(self, keep):
        """The profile of some of its stations; ``keep``: booleans (n,)."""
        if np.all(keep):
            return self
        arrays = {name: getattr(self, name)[keep] for name in ("lat", "lon", "chainage", "height", "undulation")}
        return replace(self, covariance=self.covariance.part(keep), **arrays)


@dataclass(frozen=True)
class Model:
    """A shape fitted to the heights: ``name`` of MODELS; ``curve``: fitted heights (n,), metres; ``rms`` of its
    residuals, metres; ``chi_squared``: v^T W v (in units of the variance factor where sigma is unknown); ``freedom``.
    """

    name: str
    curve: np.ndarray
    rms: float
    chi_squared: float
    freedom: int


@dataclass(frozen=True)
class CurvatureTest:
    """``factor`` f: 1 straight in space, 0 constant slope above the level surface. ``sd``: from the
    observations, with ``geoid`` u_N and ``uncertainty`` u together; ``half_width``: of its 95 % interval, by Student's
    t where sigma is unknown, on the observations' share; ``radius``: R of the Earth along the axis, metres. ``bend``:
    what the factor alone says of how the heights bend on average, see leg_regressions.bends_of. ``models``: tuple of
    Model; ``curvature``: c of each station, metres, the height of the line that is tangent at mid chainage above the
    level surface through its point; ``variance_factor``: of the free model, v^T W v / m.

    ``shape``: whether the heights follow the curve that the factor stands for (ShapeFit, metres): a + bs for level,
    else a + bs + f c, with f left free also for straight: the geoid's bending alone would reject a third of straight
    ones. ``doubtful``: True where a search for blunders may find one.
    """

    profile: SurveyedLeg
    factor: float
    sd: float
    geoid: float
    half_width: float
    radius: float
    bend: str
    models: tuple
    curvature: np.ndarray
    variance_factor: float
    shape: ShapeFit
    doubtful: bool

    @property
    def uncertainty(self):
        """Standard uncertainty u of the factor, the observations' and the geoid's share together; without unit."""
        return float(np.hypot(self.sd, self.geoid))

    @property
    def interval(self):
        """(least, greatest) factor of the 95 % interval, without unit."""
        return self.factor - self.half_width, self.factor + self.half_width

    @cached_property
    def verdict(self):
        """One of SHAPE_VERDICTS: the bend, and whether the heights follow it."""
        averaged = self.bend in ("straight", "level") and not self.shape.fits
        return f"{self.bend} on average" if averaged else self.bend

    @property
    def implied_radius(self):
        """R / f, metres; negative where the structure bends the other way; inf for f = 0."""
        return self.radius / self.factor if self.factor else np.inf

    @property
    def implied_interval(self):
        """(least, greatest) implied radius, metres. Where the factor's interval holds 0 the radius is above the first
        on either side, or the structure is level: (r, inf)."""
        low, high = self.interval
        if low <= 0.0 <= high:
            return self.radius / max(abs(low), abs(high)), np.inf
        return tuple(sorted((self.radius / low, self.radius / high)))

    @property
    def deciding(self):
        """(standard deviation of one height, length), metres, at which u would be 0.255, each with the other as it is;
        None where the geoid's share alone is more, for the first, or where no accuracy is known."""
        room = DECIDING**2 - self.geoid**2
        sigma = float(np.sqrt(np.mean(self.profile.covariance.variance)))
        if not self.profile.known:
            sigma *= float(np.sqrt(self.variance_factor))
        accuracy = sigma * np.sqrt(room) / self.sd if room > 0 and self.sd > 0 else None
        # sd falls with the square of the length and the geoid's share with the length: one equation, by halving.
        low, high = self.profile.length, 1000.0 * self.profile.length
        for _ in range(80):
            middle = 0.5 * (low + high)
            ratio = middle / self.profile.length
            short = math.hypot(self.sd / ratio**2, self.geoid / ratio) > DECIDING
            low, high = (middle, high) if short else (low, middle)
        return accuracy, high


def test_curvature(profile: SurveyedLeg):
    """Regress the heights on 1, s and c(s), and on the single models; returns CurvatureTest, its factor without unit.

    InputError, naming the axis, where the stations are at too few places to show a bend.
    """
    return test_curvatures([profile])[0]


def test_curvatures(profiles):
    """The same of many legs, a list of SurveyedLeg on one ellipsoid: a list of CurvatureTest."""
    if not profiles:
        return []
    found = regressions(profiles)
    free, legs = found.fitted["free"], found.rows.legs
    known = np.array([one.known for one in profiles])
    geoid = np.array([one.geoid_share for one in profiles])
    factor, sd = free.parameters[:, 2], np.sqrt(found.cofactor * found.scale)
    widths = np.array([interval_factor(m, k) for m, k in zip(free.freedom.tolist(), known)])
    half = np.hypot(widths * sd, NORMAL_95 * geoid)
    bends = bends_of(factor, half)
    numbers = (factor, sd, geoid, half, found.rows.radius)
    return [
        CurvatureTest(*row)
        for row in zip(
            profiles,
            *(values.tolist() for values in numbers),
            bends,
            _models(found),
            legs.parts(found.rows.as_given(found.rows.c)),
            (free.quadratic / free.freedom).tolist(),
            _shapes(found, np.array(bends) == "level", known),
            found.doubtful().tolist(),
        )
    ]


def _shapes(found, level, known):
    """ShapeFit of each leg, of its grade where ``level`` (m,), else of the free model."""
    legs, grade, free = found.rows.legs, found.fitted["grade"], found.fitted["free"]
    own = level[legs.which]
    basis = found.basis.copy()
    basis[own, 2] = 0.0
    white, residuals = (np.where(own, *pair) for pair in ((grade.white, free.white), (grade.residuals, free.residuals)))
    freedom = np.where(level, grade.freedom, free.freedom)
    return shape_fits(legs, white, basis, freedom, known, residuals, found.rows.chainage)


def _models(found):
    """The models of each leg: a list of tuples of Model."""
    rows, columns = found.rows, []
    for name, fit in found.fitted.items():
        rms = np.sqrt(rows.legs.sums(fit.residuals**2) / rows.legs.counts)
        chi = np.divide(fit.quadratic, found.scale, out=np.full(len(rms), np.nan), where=found.scale > 0.0)
        curves = rows.legs.parts(rows.as_given(rows.height - fit.residuals))
        values = zip(curves, rms.tolist(), chi.tolist(), fit.freedom.tolist())
        columns.append([Model(name, *row) for row in values])
    return list(zip(*columns))


# pytest would collect functions of these names where a test module imports them.
test_curvature.__test__ = test_curvatures.__test__ = False


def search_free(tested: CurvatureTest):
    """Search the free model, a + bs + f c, of a leg for blunders: returns least_squares.Search of its stations (n,).

    InputError where too few stations, or stations at too few places, are left.
    """
    profile = tested.profile
    x = (profile.chainage - profile.chainage.min()) / (0.5 * profile.length) - 1.0
    design = np.column_stack([np.ones_like(x), x, tested.curvature])

    def fit(keep):
        covariance = profile.covariance.part(keep)
        if keep.sum() < design.shape[1]:
            raise InputError("Too few stations are left.")
        start = Solution(design[keep], profile.height[keep], covariance, profile.known, np.zeros(3))
        if start.condition > 1e12:
            raise InputError("The stations are at too few places to show a bend.")
        parameters = start.cofactors @ (design[keep].T @ covariance.weighted(profile.height[keep]))
        left = profile.height - design @ parameters
        parameters = parameters + start.cofactors @ (design[keep].T @ covariance.weighted(left[keep]))
        left = profile.height - design @ parameters
        return Fitted(
            Solution(design[keep], left[keep], covariance, profile.known, parameters),
            design,
            left,
            profile.covariance,
            keep.copy(),
        )

    return search(fit, len(profile.height))
