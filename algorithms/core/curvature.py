"""The curvature factor: which shape was built, straight in space, along the level surface, or neither
(method page 6).
"""

from dataclasses import dataclass, replace
from functools import cached_property
from typing import Optional

import numpy as np

from .axis import Axis
from .covariance import Covariance
from .design import middle_radius
from .earth_models import FIELD_RULE_RADIUS, sphere_tangent
from .errors import InputError
from .fit import line_frame
from .least_squares import Fitted, Solution, search
from .quantiles import NORMAL_95
from .shape_fit import ShapeFit, shape_fit

# The geoid bends by about this much of the Earth's curvature over 3 km without being told; it shrinks with length.
GEOID_BENDING, GEOID_LENGTH = 0.04, 3_000.0
DECIDING = 0.255
LEAST_STATIONS = 4
# Where the curve has the bend of a shape, but the heights do not follow it, nothing 'is' that shape.
SHAPE_VERDICTS = ("straight", "level", "neither", "undecided", "straight on average", "level on average")
MODELS = ("level", "grade", "straight", "field rule", "sphere", "free")


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
                f"Axis '{self.axis.line.name}': a curvature factor needs at least {LEAST_STATIONS} stations with "
                f"heights; there are {len(self.height)}."
            )
        if self.length < 0.001:
            raise InputError(f"Axis '{self.axis.line.name}': all stations are at one chainage.")

    @cached_property
    def length(self):
        """Length over the stations, metres."""
        return float(np.ptp(self.chainage))

    @cached_property
    def middle(self):
        """Chainage halfway between the first and the last station, metres."""
        return 0.5 * float(self.chainage.min() + self.chainage.max())

    @cached_property
    def frame(self):
        """Frame at the middle, in the azimuth of the axis there: where radius and curvature are taken."""
        return line_frame(self.axis, self.middle, self.middle)

    @cached_property
    def curvature(self):
        """c of each station, metres (n,): see curvature_of."""
        return curvature_of(self)

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
    observations, with ``geoid`` u_N and ``uncertainty`` u together; ``radius``: R of the Earth along the
    axis, metres. ``verdict``: of SHAPE_VERDICTS. ``models``: tuple of Model; ``curvature``: c of each station,
    metres; ``solution``: of the free model, ``grade``: of a constant slope above the level surface.
    """

    profile: SurveyedLeg
    factor: float
    sd: float
    geoid: float
    radius: float
    models: tuple
    curvature: np.ndarray
    solution: Solution
    grade: Solution

    @cached_property
    def shape(self) -> ShapeFit:
        """Whether the heights follow the curve that the factor stands for (ShapeFit, metres): a + bs for
        level, else a + bs + f c, with f left free also for straight: the geoid's bending alone would reject
        a third of straight ones.
        """
        followed, leg = self.grade if self.bend == "level" else self.solution, self.profile
        return shape_fit(followed.design, followed.residuals, leg.covariance, leg.chainage, known=leg.known)

    @property
    def uncertainty(self):
        """Standard uncertainty u of the factor, the observations' and the geoid's share together; without unit."""
        return float(np.hypot(self.sd, self.geoid))

    @property
    def half_width(self):
        """Half of the 95 % interval of the factor; Student's t where sigma is unknown, on the observations' share."""
        return float(np.hypot(self.solution.interval_factor * self.sd, NORMAL_95 * self.geoid))

    @property
    def interval(self):
        """(least, greatest) factor of the 95 % interval, without unit."""
        return self.factor - self.half_width, self.factor + self.half_width

    @cached_property
    def bend(self):
        """What the factor alone says of how the heights bend on average: 'straight', 'level', 'neither',
        'undecided'.
        """
        not_straight, not_level = abs(self.factor - 1.0) > self.half_width, abs(self.factor) > self.half_width
        return {
            (False, True): "straight",
            (True, False): "level",
            (True, True): "neither",
            (False, False): "undecided",
        }[not_straight, not_level]

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
            sigma *= float(np.sqrt(self.solution.variance_factor))
        accuracy = sigma * np.sqrt(room) / self.sd if room > 0 and self.sd > 0 else None
        # sd falls with the square of the length and the geoid's share with the length: one equation, by halving.
        low, high = self.profile.length, 1000.0 * self.profile.length
        for _ in range(80):
            middle = 0.5 * (low + high)
            ratio = middle / self.profile.length
            short = np.hypot(self.sd / ratio**2, self.geoid / ratio) > DECIDING
            low, high = (middle, high) if short else (low, middle)
        return accuracy, high


def curvature_of(profile: SurveyedLeg):
    """c(s), metres (n,): height of the straight line tangent at mid chainage above the level surface
    through its point.
    """
    order, frame = np.argsort(profile.chainage), profile.frame
    n_mid = float(np.interp(profile.middle, profile.chainage[order], profile.undulation[order]))
    height = float(np.interp(profile.middle, profile.chainage[order], profile.height[order])) + n_mid
    plane = frame.plane(height, [0.0]).heights(profile.lat, profile.lon, frame.ellipsoid)
    return plane - height - (profile.undulation - n_mid)


def test_curvature(profile: SurveyedLeg):
    """Regress the heights on 1, s and c(s), and on the single models; returns CurvatureTest, its factor without unit.

    InputError where the stations are at too few places to show a bend.
    """
    x = (profile.chainage - profile.middle) / (0.5 * profile.length)
    one, c = np.ones_like(x), profile.curvature
    free = _regressed(profile, [one, x, c], np.zeros_like(x))
    if free.condition > 1e12:
        raise InputError(f"Axis '{profile.axis.line.name}': the stations are at too few places to show a bend.")
    along = profile.chainage - profile.middle
    radius = _radius(profile)
    sphere = sphere_tangent(along, 0.0, middle_radius(profile.axis), profile.axis.chainage_height)
    columns = {
        "level": ([one], 0.0),
        "grade": ([one, x], 0.0),
        "straight": ([one, x], c),
        "field rule": ([one, x], along**2 / (2.0 * FIELD_RULE_RADIUS)),
        "sphere": ([one, x], sphere),
    }
    solutions = {name: _regressed(profile, parts, given) for name, (parts, given) in columns.items()}
    solutions["free"] = free
    models = tuple(_model(name, profile, solution, free) for name, solution in solutions.items())
    factor, sd = float(free.parameters[2]), float(free.deviations[2])
    return CurvatureTest(profile, factor, sd, profile.geoid_share, radius, models, c, free, solutions["grade"])


# pytest would collect a function of this name where a test module imports it.
test_curvature.__test__ = False


def search_free(profile: SurveyedLeg):
    """Search the free model, a + bs + f c, for blunders: returns least_squares.Search of the leg's stations (n,).

    InputError where too few stations, or stations at too few places, are left.
    """
    x = (profile.chainage - profile.middle) / (0.5 * profile.length)
    design = np.column_stack([np.ones_like(x), x, profile.curvature])

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


def _radius(profile):
    frame = profile.frame
    return float(frame.ellipsoid.euler_radius(frame.lat, frame.azimuth))


def _regressed(profile, columns, given):
    design = np.column_stack(columns)
    observed = profile.height - given
    if design.shape[0] < design.shape[1]:
        raise InputError(f"Axis '{profile.axis.line.name}': too few stations.")
    empty = Solution(design, observed, profile.covariance, profile.known, np.zeros(design.shape[1]))
    parameters = empty.cofactors @ (design.T @ profile.covariance.weighted(observed))
    # A second step takes out what the first loses to heights of kilometres beside millimetres.
    parameters = parameters + empty.cofactors @ (design.T @ profile.covariance.weighted(observed - design @ parameters))
    return Solution(design, observed - design @ parameters, profile.covariance, profile.known, parameters)


def _model(name, profile, solution, free):
    scale = 1.0 if profile.known else free.variance_factor
    chi = solution.quadratic / scale if scale > 0 else np.nan
    return Model(
        name,
        profile.height - solution.residuals,
        float(np.sqrt(np.mean(solution.residuals**2))),
        float(chi),
        solution.freedom,
    )
