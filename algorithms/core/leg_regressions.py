"""Regressions of the heights of many legs on the shapes that may have been built, all at once (method page 6)."""

from dataclasses import dataclass

import numpy as np

from .axis import places_on
from .earth_models import FIELD_RULE_RADIUS, sphere_tangent
from .errors import InputError
from .geodesy import foot_and_normal
from .plane import heights_over
from .quantiles import BAARDA, critical_value
from .segments import Segments
from .shape_fit import orthonormal, whitened

MODELS = ("level", "grade", "straight", "8-inch rule", "sphere", "free")
# How many of the columns 1, s and c each model leaves free.
_COLUMNS = {"level": 1, "free": 3}
_MOST_CONDITION = 1e12
# A test value this near to its limit is left to the search, and so is one that hardly anything checks.
_NEARLY, _NO_REDUNDANCY = 1.0 - 1e-6, 1e-9


class LegRows:
    """Stations of many legs, by chainage on each: ``legs``, Segments of n rows, and ``order`` (n,), the row of each in
    the order given. ``profiles``: list of curvature.SurveyedLeg (m,), all on one ellipsoid.

    ``along`` (n,): chainage from the middle, and ``half`` (m,) the greatest, metres; ``c`` (n,): height of the line
    that is tangent at mid chainage above the level surface through its point, metres; ``radius`` (m,): of the Earth in
    the azimuth there, metres.
    """

    def __init__(self, profiles):
        self.profiles, self.legs = profiles, Segments([len(one.height) for one in profiles])
        legs, s = self.legs, self._joined("chainage")
        self.order = np.lexsort((s, legs.which))
        self.chainage, self.height = s[self.order], self._joined("height")[self.order]
        low, high = self.chainage[legs.first], self.chainage[legs.last]
        self.middle, self.half = 0.5 * (low + high), 0.5 * (high - low)
        self.along = self.chainage - self.middle[legs.which]
        self._bend()

    def _joined(self, name):
        return np.concatenate([np.asarray(getattr(one, name), float) for one in self.profiles])

    def as_given(self, values):
        """``values`` (n,), by chainage, in the order given."""
        found = np.empty_like(values)
        found[self.order] = values
        return found

    def _bend(self):
        legs, axes = self.legs, [one.axis for one in self.profiles]
        ellipsoid = axes[0].line.ellipsoid
        undulation = self._joined("undulation")[self.order]
        n_middle = self._at_middle(undulation)
        height = self._at_middle(self.height) + n_middle
        lat, lon, azimuth = places_on(axes, self.middle)
        self.radius = ellipsoid.euler_radius(lat, azimuth)
        foot, up = foot_and_normal(lat, lon, ellipsoid)
        places = (self._joined(name)[self.order] for name in ("lat", "lon"))
        tangent = heights_over(foot + height[:, None] * up, up, legs.which, *places, ellipsoid)
        self.c = tangent - height[legs.which] - (undulation - n_middle[legs.which])

    def _at_middle(self, values):
        """Values (m,) at mid chainage, by the straight line between the stations around it."""
        before = self.legs.first + self.legs.sums((self.along <= 0.0).astype(int)) - 1
        rise = (values[before + 1] - values[before]) / (self.along[before + 1] - self.along[before])
        return values[before] - self.along[before] * rise

    def sphere(self):
        """Height of the same tangent over a sphere with the radius at the middle of the axis, metres (n,)."""
        axes = [one.axis for one in self.profiles]
        middles = np.array([axis.start + 0.5 * axis.length for axis in axes])
        lat, _, azimuth = places_on(axes, middles)
        radius = axes[0].line.ellipsoid.euler_radius(lat, azimuth)
        heights, which = np.array([axis.chainage_height for axis in axes]), self.legs.which
        return sphere_tangent(self.along, 0.0, radius[which], heights[which])


@dataclass(frozen=True)
class ManyFitted:
    """One model fitted to each of many legs. ``white``, ``residuals`` (n,): whitened and as they are, metres, by
    chainage; ``parameters`` (m, p): of the columns 1, s over half the length, and c; ``quadratic`` (m,): v^T W v;
    ``freedom`` (m,).
    """

    white: np.ndarray
    residuals: np.ndarray
    parameters: np.ndarray
    quadratic: np.ndarray
    freedom: np.ndarray


@dataclass(frozen=True)
class Regressions:
    """All models on many legs. ``rows``: LegRows; ``fitted``: ManyFitted by name of MODELS; ``basis`` (n, 3):
    orthonormal columns of the whitened design; ``cofactor`` (m,): of the factor of c; ``scale`` (m,): 1 where sigma is
    known, else the variance factor of the free model.
    """

    rows: LegRows
    fitted: dict
    basis: np.ndarray
    cofactor: np.ndarray
    scale: np.ndarray

    def doubtful(self):
        """Legs (m,) on which the search for blunders may find one: a test value of the free model comes near its limit,
        or errors are correlated, whose test values take the whole covariance."""
        free, legs = self.fitted["free"], self.rows.legs
        left = 1.0 - np.sum(self.basis**2, axis=1)
        w = np.where(left > _NO_REDUNDANCY, free.white**2 / np.maximum(left, _NO_REDUNDANCY), np.inf)
        greatest = np.maximum.reduceat(w, legs.first)
        profiles = self.rows.profiles
        known = np.array([one.known for one in profiles])
        limits = np.array([BAARDA if k else critical_value(m, k) for k, m in zip(known, free.freedom.tolist())])
        with np.errstate(divide="ignore", invalid="ignore"):
            others = np.where(known, 1.0, (free.quadratic - greatest) / (free.freedom - 1))
            near = ~(greatest < (_NEARLY * limits) ** 2 * others)
        return near | np.array([one.covariance.correlated for one in profiles])


def regressions(profiles):
    """Regress the heights of each leg on 1, s and c, and on the single models; returns Regressions.

    ``profiles``: list of curvature.SurveyedLeg, not empty, all on one ellipsoid. InputError, naming the axis, where the
    stations are at too few places to show a bend.
    """
    rows = LegRows(profiles)
    legs = rows.legs
    design = np.column_stack([np.ones_like(rows.c), rows.along / rows.half[legs.which], rows.c])
    rule = rows.along**2 / (2.0 * FIELD_RULE_RADIUS)
    given = {"": 0.0, "straight": rows.c, "8-inch rule": rule, "sphere": rows.sphere()}
    observed = {name: rows.height - effect for name, effect in given.items()}
    covariances = [one.covariance for one in profiles]
    white = whitened(covariances, legs, rows.order, np.column_stack([design, *observed.values()]))
    of_name = {name: (observed[name], white[:, 3 + k]) for k, name in enumerate(given)}
    _check_condition(rows, white[:, :3])
    basis = orthonormal(legs, white[:, :3])
    triangle = legs.products(basis, white[:, :3])
    fitted = {}
    for name in MODELS:
        heights, own = of_name.get(name, of_name[""])
        fitted[name] = _fitted(legs, design, basis, triangle, _COLUMNS.get(name, 2), heights, own)
    known, free = np.array([one.known for one in profiles]), fitted["free"]
    scale = np.where(known, 1.0, free.quadratic / free.freedom)
    return Regressions(rows, fitted, basis, 1.0 / triangle[:, 2, 2] ** 2, scale)


def _check_condition(rows, columns):
    normals = rows.legs.products(columns, columns)
    size = np.sqrt(np.diagonal(normals, axis1=1, axis2=2))
    size = np.where(size > 0.0, size, 1.0)
    condition = np.linalg.cond(normals / (size[:, :, None] * size[:, None, :]))
    for k in np.flatnonzero(~(condition <= _MOST_CONDITION)):
        raise InputError(
            "Axis '{}': the stations are at too few places to show a bend.", rows.profiles[k].axis.line.name
        )


def _fitted(legs, design, basis, triangle, columns, observed, white):
    """ManyFitted of what was ``observed`` (n,), metres, with the first ``columns`` of the design."""
    # A second step takes out what the first loses to heights of kilometres beside millimetres.
    basis, shares = basis[:, :columns], 0.0
    for _ in range(2):
        more = legs.products(basis, white[:, None])[:, :, 0]
        white, shares = white - legs.times(basis, more), shares + more
    parameters = np.empty_like(shares)
    for i in reversed(range(columns)):
        after = np.sum(triangle[:, i, i + 1 : columns] * parameters[:, i + 1 :], axis=1)
        parameters[:, i] = (shares[:, i] - after) / triangle[:, i, i]
    residuals = observed - legs.times(design[:, :columns], parameters)
    return ManyFitted(white, residuals, parameters, legs.sums(white**2), legs.counts - columns)


def bends_of(factors, half_widths):
    """What the factors (m,) with half their 95 % intervals say of how the heights bend on average: a list of
    'straight', 'level', 'neither', 'undecided'."""
    not_straight, not_level = np.abs(factors - 1.0) > half_widths, np.abs(factors) > half_widths
    words = {(False, True): "straight", (True, False): "level", (True, True): "neither", (False, False): "undecided"}
    return [words[pair] for pair in zip(not_straight.tolist(), not_level.tolist())]
