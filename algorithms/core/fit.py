"""Fits of a straight line and of a plane to surveyed heights, on the exact model (method page 6)."""

from dataclasses import dataclass
from functools import cached_property
from typing import Optional

import numpy as np

from .axis import Axis, AxisLine, places_on
from .covariance import Covariance
from .errors import InputError, Length
from .geodesy import Ellipsoid, east_north, foot_and_normal, geographic
from .least_squares import MOST_ASIDE, Fitted, Search, Solution, huber_weights, search
from .measure import measure
from .plane import Plane
from .segments import row_products

# Huber's estimate holds against less than half; what less than half agrees on is chance.
MOST_ASIDE_ROBUST = 0.5
STEPS = 2
# Of the normals with unit diagonal; beyond it nothing is determined.
MOST_CONDITION = 1e15
ONE_GEODESIC = 1e-3


@dataclass(frozen=True)
class Frame:
    """Where a fit is parametrised: a place ``lat``, ``lon``, degrees, and the ``azimuth`` of a line, None
    for a plane.
    """

    lat: float
    lon: float
    ellipsoid: Ellipsoid
    azimuth: Optional[float] = None

    @cached_property
    def directions(self):
        """Horizontal unit vectors along which the slopes count: east and north, or ahead only; (k, 3)."""
        east, north = east_north(self.lat, self.lon)
        if self.azimuth is None:
            return np.stack([east, north])
        turn = np.radians(self.azimuth)
        return (np.sin(turn) * east + np.cos(turn) * north)[None, :]

    @cached_property
    def _place(self):
        return foot_and_normal(self.lat, self.lon, self.ellipsoid)

    @property
    def foot(self):
        """Earth-centred foot point of the place, metres (3,)."""
        return self._place[0]

    @property
    def up(self):
        """Normal of the ellipsoid at the place, unit vector (3,)."""
        return self._place[1]

    def normal(self, slopes):
        """n = U - g_E E - g_N N, or U - g a for a line: not of unit length; (3,). ``slopes``: rise per metre (k,)."""
        return self.up - np.asarray(slopes, float) @ self.directions

    def plane(self, height, slopes):
        """The plane through ``height`` metres over the place with these slopes against the ellipsoid's horizon."""
        return Plane(self.foot + height * self.up, self.normal(slopes))


@dataclass(frozen=True)
class Heights:
    """Heights to fit; arrays (n,): ``lat``, ``lon`` degrees; ``height`` ellipsoidal, metres; ``covariance``: C.

    ``known``: True where C is in square metres. ``datums``: index of the height unknown that each station shares beyond
    the first, 0 for the first: arms levelled separately; None where there is one datum.
    """

    lat: np.ndarray
    lon: np.ndarray
    height: np.ndarray
    covariance: Covariance
    known: bool = True
    datums: Optional[np.ndarray] = None

    def __len__(self):
        return len(self.height)


@dataclass(frozen=True)
class SurfaceFit:
    """A fitted line or plane. ``height``: metres at the frame's place; ``slopes``: against the ellipsoid's horizon
    there, along the frame's directions; ``offsets``: of the further datums, metres; ``search``: solution and tests,
    whose first parameters are height and slopes.
    """

    frame: Frame
    height: float
    slopes: np.ndarray
    offsets: np.ndarray
    search: Search
    robust: bool = False

    @cached_property
    def plane(self):
        """The fitted Plane."""
        return self.frame.plane(self.height, self.slopes)

    @property
    def solution(self):
        """The least_squares.Solution of the kept stations."""
        return self.search.solution

    @property
    def residuals(self):
        """As-built minus fitted, metres (n,), of all rows, those set aside too."""
        return self.search.fitted.residuals

    @cached_property
    def rms(self):
        """Root mean square of the kept residuals, metres."""
        return float(np.sqrt(np.mean(self.residuals[self.search.kept] ** 2)))


def surface_normals(fits):
    """n of each of many SurfaceFits, all of lines or all of planes, see Frame.normal: (m, 3)."""
    up, directions = (np.array([getattr(fit.frame, name) for fit in fits]) for name in ("up", "directions"))
    return up - np.einsum("mk,mkx->mx", np.array([fit.slopes for fit in fits]), directions)


def unit_normals(fits):
    """Unit normals (m, 3) of many SurfaceFits, away from the Earth: those of their Planes."""
    n, frames = surface_normals(fits), [fit.frame for fit in fits]
    up, foot = (np.array([getattr(frame, name) for frame in frames]) for name in ("up", "foot"))
    points = foot + np.array([fit.height for fit in fits])[:, None] * up
    return n / np.copysign(np.linalg.norm(n, axis=1), row_products(n, points))[:, None]


def line_frame(axis: Axis, first, last):
    """Frame of a line fit between two chainages, metres: the axis' point in the middle, in its azimuth there."""
    return line_frames([axis], np.array([0.5 * (first + last)]))[0]


def line_frames(axes, middles):
    """Frames of fits of lines to many axes, all on one ellipsoid: each axis' point at its chainage of ``middles``
    (m,), metres, in its azimuth there. A list; what their places need is computed in one go."""
    ellipsoid, (lat, lon, azimuth) = axes[0].line.ellipsoid, places_on(axes, middles)
    (east, north), turn = east_north(lat, lon), np.radians(azimuth)[:, None]
    ahead = (np.sin(turn) * east + np.cos(turn) * north)[:, None, :]
    places = zip(*foot_and_normal(lat, lon, ellipsoid))
    frames = [
        Frame(*place, ellipsoid, azimuth) for *place, azimuth in zip(lat.tolist(), lon.tolist(), azimuth.tolist())
    ]
    for frame, directions, place in zip(frames, ahead, places):
        vars(frame).update(directions=directions, _place=place)
    return frames


def plane_frame(lat, lon, ellipsoid):
    """Frame of a plane fit: the centre of the stations at ``lat``, ``lon`` degrees (n,)."""
    centre = foot_and_normal(np.asarray(lat, float), np.asarray(lon, float), ellipsoid)[0].mean(axis=0)
    lat0, lon0, _ = geographic(centre, ellipsoid)
    return Frame(float(lat0), float(lon0), ellipsoid)


def check_spread(lat, lon, ellipsoid):
    """InputError where stations at ``lat``, ``lon`` degrees (n,) lie within 1/1000 of their extent of one geodesic:
    they determine a line, not a plane."""
    feet = foot_and_normal(np.asarray(lat, float), np.asarray(lon, float), ellipsoid)[0]
    far = int(np.argmax(np.linalg.norm(feet - feet[0], axis=1)))
    other = int(np.argmax(np.linalg.norm(feet - feet[far], axis=1)))
    extent = float(np.linalg.norm(feet[other] - feet[far]))
    if extent < 0.001:
        raise InputError("All stations are at one place; a plane needs stations apart.")
    line = AxisLine("the stations", [lat[far], lat[other]], [lon[far], lon[other]], ellipsoid)
    away = float(np.abs(measure([line], lat, lon).across).max())
    if away <= ONE_GEODESIC * extent:
        raise InputError(
            "The stations lie on one line (none is more than {} from it over {}), which "
            "determines no plane; fit a line, or add an axis in another direction.",
            Length(away),
            Length(extent),
        )


def fit_surface(frame, heights, *, remove=False, robust=False, sections=()):
    """Fit the plane or line that ``frame`` parametrises to Heights (n,), metres; returns SurfaceFit.

    ``remove``: set suspected blunders aside, a tenth of the stations at most; ``robust``: begin from
    Huber's fit, which may leave up to half of them aside, since it is asked for where a stretch has moved.
    ``sections``: rows along levelled arms, see least_squares.suspected_step. InputError for fewer stations
    than unknowns.
    """
    columns = 1 + len(frame.directions) + (0 if heights.datums is None else int(heights.datums.max()))
    if len(heights) < columns:
        raise InputError(
            "A fit of {} unknowns needs at least {} stations with heights; there are {}.",
            columns,
            columns,
            len(heights),
        )

    places = foot_and_normal(heights.lat, heights.lon, frame.ellipsoid)

    def fit(keep):
        return _gauss_newton(frame, heights, keep, columns, places)

    found = searched(fit, heights, remove=remove, robust=robust, sections=sections)
    parameters = found.solution.parameters
    slopes = 1 + len(frame.directions)
    return SurfaceFit(frame, float(parameters[0]), parameters[1:slopes], parameters[slopes:], found, robust)


def searched(fit, observed, *, remove, robust, sections=()):
    """The Search for blunders among ``observed`` (n,): Heights, or what has their ``covariance``, ``known`` and length.

    ``fit``: see least_squares.search; the options as in fit_surface.
    """
    start = _robust_start(fit, observed) if robust else None
    share = MOST_ASIDE_ROBUST if robust else MOST_ASIDE
    return search(fit, len(observed), remove=remove, start=start, sections=sections, share=share)


def _gauss_newton(frame, heights, keep, columns, places):
    """Two steps on the exact model from the level plane at the kept stations' mean height (measured: enough)."""
    if keep.sum() < columns:
        raise InputError("A fit of {} unknowns is left with {} stations.", columns, int(keep.sum()))
    covariance = heights.covariance.part(keep)
    parameters = np.zeros(columns)
    parameters[0] = heights.height[keep].mean()
    for _ in range(STEPS + 1):
        design, computed = linearised(frame, heights, parameters, places)
        residuals = heights.height - computed
        solution = Solution(design[keep], residuals[keep], covariance, heights.known, parameters)
        if solution.condition > MOST_CONDITION:
            raise InputError("The stations do not determine the fit: they are at one place or on one line.")
        step = solution.cofactors @ (design[keep].T @ covariance.weighted(residuals[keep]))
        parameters = parameters + step
    design, computed = linearised(frame, heights, parameters, places)
    residuals = heights.height - computed
    solution = Solution(design[keep], residuals[keep], covariance, heights.known, parameters)
    return Fitted(solution, design, residuals, heights.covariance, keep.copy())


def linearised(frame, heights, parameters, places=None):
    """Derivatives (n, p) and computed heights (n,), metres, at ``parameters`` (p,): height, slopes, offsets.

    ``frame``: Frame; ``heights``: Heights; ``places``: foot points and normals of these, where they are known already,
    see geodesy.foot_and_normal. InputError where the surface does not pass over a station.
    """
    directions = frame.directions
    slopes = parameters[1 : 1 + len(directions)]
    origin = frame.foot + parameters[0] * frame.up
    feet, normals = places or foot_and_normal(heights.lat, heights.lon, frame.ellipsoid)
    n = frame.normal(slopes)
    over = normals @ n
    if np.any(over <= 0.0):
        raise InputError("The fitted plane does not pass over all stations; the heights or places are wrong.")
    computed = ((origin - feet) @ n) / over
    points = feet - origin + computed[:, None] * normals
    # dn = -direction for each slope, so the height gains direction . (X - P) / (n . u).
    design = np.column_stack([(frame.up @ n) / over, (points @ directions.T) / over[:, None]])
    if heights.datums is not None and heights.datums.max() > 0:
        shares = heights.datums[:, None] == np.arange(1, heights.datums.max() + 1)
        design = np.column_stack([design, shares.astype(float)])
        computed = computed + shares @ parameters[1 + len(directions) :]
    return design, computed


def _robust_start(fit, heights):
    """Rows that a Huber fit (k = 1.5 on 1.4826 MAD) does not hold for blunders."""
    everything = np.ones(len(heights), bool)
    fitted = fit(everything)
    design, residuals, weights = fitted.design, fitted.residuals, np.ones(len(heights))
    parameters = np.zeros(design.shape[1])
    scale = 0.0
    for _ in range(50):
        left = residuals - design @ parameters
        weights, scale = huber_weights(left / np.sqrt(heights.covariance.variance))
        if scale == 0.0:
            # Most lie as they should to the last digit, as of two stations on a line: there is nothing to weigh.
            break
        root = np.sqrt(weights / heights.covariance.variance)
        size = np.sqrt(np.sum((design * root[:, None]) ** 2, axis=0))
        new = np.linalg.lstsq(design * root[:, None] / size, residuals * root, rcond=None)[0] / size
        if np.allclose(new, parameters, rtol=0.0, atol=1e-12):
            break
        parameters = new
    left = np.abs(residuals - design @ parameters) / np.sqrt(heights.covariance.variance)
    start = left <= 3.29 * (1.0 if heights.known else max(scale, 1e-300))
    return start if start.sum() > design.shape[1] + 1 else everything
