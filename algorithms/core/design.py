"""Designs of one axis: their controls, and the height each station should have (method page 4)."""

from dataclasses import dataclass, field
from typing import Optional

import numpy as np

from .axis import Axis, AxisLine
from .choices import DESIGNS, EARTHS
from .controls import Rows, controls_of
from .curves import CHUNK
from .earth_models import sphere_chord, sphere_inclined, sphere_tangent
from .errors import Chainage, InputError, Length, Sentence, Word
from .measure import measure
from .normal_gravity import water_height
from .plane import Plane, chord_plane, chord_planes, heights_over, inclined_plane, inclined_planes
from .undulations import AlongAxis, ConstantUndulation

STRAIGHT = ("chord", "tangent", "inclined", "reference")
KINK = 1e-3
_NO_UNDULATION = ConstantUndulation()


@dataclass(frozen=True)
class DesignSpec:
    """What the structure was meant to be; metres; None where it is to be found from the stations.

    ``slope``: rise of the design height per chainage at control A, without unit. ``refraction``: coefficient k.
    ``earth``: 'ellipsoid', 'sphere' of ``radius`` metres (None: Euler's radius at the axis' middle), or 'flat'.
    ``plane``: of a reference. ``datum_height``: of a level surface of water, the height of the heights' zero above
    the sea; None: level is a constant height. InputError where a control is missing or two contradict each other.
    """

    kind: str
    chainage_a: Optional[float] = None
    height_a: Optional[float] = None
    chainage_b: Optional[float] = None
    height_b: Optional[float] = None
    slope: Optional[float] = None
    refraction: float = 0.0
    earth: str = "ellipsoid"
    radius: Optional[float] = None
    plane: Optional[Plane] = None
    datum_height: Optional[float] = None

    def __post_init__(self):
        if self.kind not in DESIGNS:
            raise InputError("The design '{}' is unknown; known are {}.", self.kind, ", ".join(DESIGNS))
        if self.earth not in EARTHS:
            raise InputError("The Earth model '{}' is unknown; known are {}.", self.earth, ", ".join(EARTHS))
        for name in ("chainage_a", "height_a", "chainage_b", "height_b", "slope", "refraction", "radius"):
            value = getattr(self, name)
            if value is not None and not np.isfinite(value):
                raise InputError("The design's {} is not a number.", Word(name.replace("_", " ")))
        self._check_controls()

    def _check_controls(self):
        if self.kind == "reference" and self.plane is None:
            raise InputError("The design 'reference' needs a reference.")
        if self.kind == "reference" and self.earth != "ellipsoid":
            raise InputError("A reference holds on the ellipsoid only; the Earth model must be 'ellipsoid'.")
        if self.kind == "inclined" and self.slope is None:
            raise InputError("The design 'inclined' needs a slope.")
        if self.slope is not None and abs(self.slope) > 1.0:
            raise InputError(
                "A slope of {:g} is steeper than 45 degrees: it is a rise per length without unit, 0.003 "
                "for 3 mm per metre.",
                self.slope,
            )
        has_b = self.chainage_b is not None or self.height_b is not None
        if self.kind == "grade" and self.slope is not None and has_b:
            raise InputError("The design 'grade' has a slope and a second control: give one of them.")
        if (
            self.uses_b
            and self.chainage_a is not None
            and self.chainage_b is not None
            and abs(self.chainage_a - self.chainage_b) < 0.001
        ):
            raise InputError("Both controls are at chainage {}; they must be apart.", Chainage(self.chainage_a))
        if self.radius is not None and self.radius < 100_000.0:
            raise InputError("A sphere of radius {:g} m is not that of the Earth; RADIUS is in metres.", self.radius)

    @property
    def uses_b(self):
        """True where the design runs through a second control."""
        return self.kind == "chord" or (self.kind == "grade" and self.slope is None)

    @property
    def unused(self):
        """Names of given values that this design does not use: a sorted list of texts."""
        given = {
            name
            for name in ("chainage_a", "height_a", "chainage_b", "height_b", "slope")
            if getattr(self, name) is not None
        }
        used = {
            "chord": {"chainage_a", "height_a", "chainage_b", "height_b"},
            "tangent": {"chainage_a", "height_a"},
            "inclined": {"chainage_a", "height_a", "slope"},
            "reference": set(),
            "level": {"chainage_a", "height_a"},
            "grade": given,
        }[self.kind]
        return sorted(given - used)


@dataclass(frozen=True)
class DesignHeights:
    """Result for one axis; arrays (n,), metres, in the input's height system.

    ``controls``: as used; ``slope``: of the design at control A in the input's terms, or None; ``horizon_known``:
    True where the geoid's slope went into the horizon; ``warnings``: Sentences.
    """

    design_h: np.ndarray
    flat_h: np.ndarray
    controls: tuple
    slope: Optional[float] = None
    horizon_known: bool = False
    warnings: tuple = field(default=())


def design_heights(spec, stations, undulation: AlongAxis = _NO_UNDULATION):
    """Design heights of one axis' stations (n,): returns DesignHeights, metres in the input's height system.

    ``spec``: DesignSpec; ``stations``: DesignStations; ``undulation``: an undulations.AlongAxis, source of N at
    points between stations. InputError where a control cannot be found.
    """
    return designs_heights([spec], [stations], [undulation])[0]


def designs_heights(specs, stations, undulations):
    """Design heights of many axes at once: a list of DesignHeights. Each argument is a list (m,), see design_heights;
    all axes are on one ellipsoid."""
    rows = Rows(stations)
    controls = controls_of(specs, stations, rows, undulations)
    work = _Work(specs, stations, rows, controls, undulations)
    for kinds, compute in ((("reference",), _reference), (("level",), _level), (("grade",), _grade)):
        work.fill(kinds, compute)
    work.fill(("chord", "tangent", "inclined"), _straight)
    return work.results()


class _Work:
    """Designs being computed: of all rows ``design`` and ``flat`` (n,), metres; of each axis (m,) ``slope``,
    ``horizon`` (whether the geoid's slope went into it) and ``warnings``. ``a``, ``b``: the controls as ControlArrays;
    ``shared``: k, the refraction."""

    def __init__(self, specs, stations, rows, controls, undulations):
        self.specs, self.stations, self.rows, self.undulations = specs, stations, rows, undulations
        self.a, self.b = controls
        self.design, self.flat = np.full(len(rows.axis), np.nan), np.full(len(rows.axis), np.nan)
        self.slope, self.horizon = np.full(len(specs), np.nan), np.zeros(len(specs), bool)
        self.warnings, self.refraction = {}, np.array([spec.refraction for spec in specs])
        self.ellipsoid = stations[0].axis.line.ellipsoid if stations else None

    def fill(self, kinds, compute):
        """Let ``compute`` fill the axes of some kinds: it gets their indices and their rows."""
        mine = np.array([spec.kind in kinds for spec in self.specs], bool)
        if np.any(mine):
            compute(self, np.flatnonzero(mine), np.flatnonzero(mine[self.rows.axis]))

    def set(self, rows, flat, heights):
        """Flat heights, and those with refraction, of some rows: design_h = flat_h + (1 - k)(plane - flat_h)."""
        self.flat[rows] = flat
        self.design[rows] = flat + (1.0 - self.refraction[self.rows.axis[rows]]) * (heights - flat)

    def results(self):
        """A DesignHeights for each axis."""
        slopes, horizons = self.slope.tolist(), self.horizon.tolist()
        parts = zip(self.rows.parts(self.design), self.rows.parts(self.flat), self.a.each(), self.b.each())
        return [
            DesignHeights(
                design,
                flat,
                tuple(control for control in controls if control is not None),
                None if spec.kind == "reference" else slopes[k],
                horizons[k],
                self.warnings.get(k, ()),
            )
            for k, (spec, (design, flat, *controls)) in enumerate(zip(self.specs, parts))
        ]


def _level(work, axes, rows):
    work.slope[axes] = 0.0
    work.flat[rows] = work.a.height[work.rows.axis[rows]]
    for k in axes:
        if work.specs[k].datum_height is not None:
            mine = work.rows.of(k)
            work.flat[mine] = level_heights(work.a.one(k), work.rows.lat[mine], work.specs[k].datum_height)
    work.design[rows] = work.flat[rows]


def _grade(work, axes, rows):
    own, a, b = work.rows.axis[rows], work.a, work.b
    typed = np.array([np.nan if work.specs[k].slope is None else work.specs[k].slope for k in axes])
    with np.errstate(invalid="ignore"):
        mean = (b.height[axes] - a.height[axes]) / (b.chainage[axes] - a.chainage[axes])
    work.slope[axes] = np.where(np.isnan(typed), mean, typed)
    heights = a.height[own] + work.slope[own] * (work.rows.chainage[rows] - a.chainage[own])
    work.design[rows] = work.flat[rows] = heights


def level_heights(control, lat, datum_height):
    """Heights (n,) of the level surface through a Control at ``lat`` degrees, metres: constant, or, where
    ``datum_height`` is a number, normal-orthometric heights of still water, which fall towards the poles."""
    if datum_height is None:
        return np.full(len(lat), control.height)
    return water_height(control.height + datum_height, control.lat, np.asarray(lat, float)) - datum_height


def _straight(work, axes, rows):
    specs, a, b = work.specs, work.a, work.b
    x, x_b = _along_designs(work, axes)
    chord = np.array([spec.kind == "chord" for spec in specs], bool)
    inclined = np.array([specs[k].slope if specs[k].kind == "inclined" else 0.0 for k in axes])
    with np.errstate(invalid="ignore"):
        work.slope[axes] = np.where(chord[axes], (b.height[axes] - a.height[axes]) / x_b[axes], inclined)
    geoid = _geoid_slopes(work, axes, chord)
    earth = np.array([spec.earth for spec in specs], dtype=object)
    planes = _planes(work, axes, chord, geoid) if np.any(earth[axes] == "ellipsoid") else ()
    for first in range(0, len(rows), CHUNK):
        part = rows[first : first + CHUNK]
        own = work.rows.axis[part]
        flat = a.height[own] + work.slope[own] * x[part]
        heights, on = flat.copy(), np.flatnonzero((earth == "ellipsoid")[own])
        if len(on):
            heights[on] = _over_planes(work, planes, part[on])
        for k in np.unique(own[(earth == "sphere")[own]]):
            mine = slice(*np.searchsorted(own, [k, k + 1]))
            heights[mine] = _on_sphere(work, k, part[mine])
        work.set(part, flat, heights)


def _over_planes(work, planes, rows):
    """Heights of rows over their planes (points and normals), in the heights' own system."""
    of = work.rows
    over = heights_over(*planes, of.axis[rows], of.lat[rows], of.lon[rows], work.ellipsoid)
    return over - of.undulation[rows]


def _geoid_slopes(work, axes, chord):
    """Slope of the geoid to the east and to the north at control A of each axis (m, 2), 0 where it is not known."""
    geoid = np.zeros((len(work.specs), 2))
    for k in axes[~chord[axes]]:
        a = work.a
        found = work.undulations[k].slope(*(float(v[k]) for v in (a.lat, a.lon, a.chainage, a.azimuth)))
        work.horizon[k] = found is not None
        geoid[k] = found or (0.0, 0.0)
    return geoid


def _planes(work, axes, chord, geoid):
    """Points and normals of the designs' planes, arrays (m, 3), NaN for axes without one."""
    a, b, ellipsoid = work.a, work.b, work.ellipsoid
    points, normals = (np.full((len(work.specs), 3), np.nan) for _ in range(2))
    two, one = axes[chord[axes]], axes[~chord[axes]]
    if len(two):
        lat, lon, height = (np.stack([getattr(c, name)[two] for c in (a, b)]) for name in ("lat", "lon", "above"))
        points[two], normals[two] = chord_planes(lat, lon, height, ellipsoid)
    if len(one):
        place = (values[one] for values in (a.lat, a.lon, a.above, a.azimuth, work.slope))
        points[one], normals[one] = inclined_planes(*place, ellipsoid, geoid[one].T)
    return points, normals


def straight_plane(spec, controls, ellipsoid, geoid_slope, slope):
    """The Plane of a chord, tangent or inclined design through ``controls``, a tuple of Control.

    ``geoid_slope``: see plane.horizon_normal, zeros where not known; ``slope``: rise per metre against the horizon,
    without unit.
    """
    a = controls[0]
    if spec.kind == "chord":
        b = controls[1]
        return chord_plane(
            (a.lat, b.lat), (a.lon, b.lon), (a.height + a.undulation, b.height + b.undulation), ellipsoid
        )
    return inclined_plane(a.lat, a.lon, a.height + a.undulation, a.azimuth, slope, ellipsoid, geoid_slope)


def _along_designs(work, axes):
    """Distances from A along the designs' own geodesics: of all rows (n,), and of B of each axis (m,), NaN without one;
    where an axis departs too far from its geodesic, a warning is kept."""
    x = work.rows.chainage - work.a.chainage[work.rows.axis]
    x_b = work.b.chainage - work.a.chainage
    for k in axes.tolist():
        if len(work.stations[k].axis.line.lat) == 2:
            continue
        controls = [c for c in (work.a.one(k), work.b.one(k)) if c is not None]
        x[work.rows.of(k)], end, departure, extent = _along_design(work.stations[k], controls)
        x_b[k] = np.nan if end is None else end
        if departure > KINK * extent:
            bends = Sentence(
                "Axis '{}' bends: it departs {} from the geodesic of its design, so a straight structure ('{}') "
                "cannot follow it; check each leg by itself.",
                work.stations[k].name,
                Length(departure),
                Word(work.specs[k].kind),
            )
            work.warnings[k] = (bends,)
    return x, x_b


def _along_design(stations, controls):
    """Of one axis with several legs: distances of the stations (n,) and of B (or None) from A along the design's own
    geodesic, and how far the axis departs from that geodesic over which extent, metres."""
    axis, ends = stations.axis, [c.chainage for c in controls]
    if len(ends) == 1 and len(stations.chainage):
        ends += [float(stations.chainage.min()), float(stations.chainage.max())]
    own = Axis(_design_line(stations, controls, max(ends) - min(ends)), axis.chainage_height)
    origin, *b = _chainages_on(own, [c.lat for c in controls], [c.lon for c in controls])[0]
    x, _ = _chainages_on(own, stations.lat, stations.lon)
    inner = (axis.vertex_chainages > min(ends)) & (axis.vertex_chainages < max(ends))
    lat, lon = axis.line.lat[inner], axis.line.lon[inner]
    if not b:  # through one control: the axis departs most where the stations end, not at a vertex
        end_lat, end_lon, _ = axis.place([min(ends), max(ends)])
        lat, lon = np.append(lat, end_lat), np.append(lon, end_lon)
    away = np.abs(_chainages_on(own, lat, lon)[1]).max(initial=0.0)
    return x - origin, (b[0] - origin) if b else None, float(away), max(ends) - min(ends)


def _design_line(stations, controls, reach):
    """The geodesic of the design: A to B, or through A in its azimuth over about the stations' extent."""
    a, ellipsoid = controls[0], stations.axis.line.ellipsoid
    if len(controls) == 2:
        return AxisLine(stations.name, [a.lat, controls[1].lat], [a.lon, controls[1].lon], ellipsoid)
    reach = max(reach, 1000.0)
    lat, lon, _ = ellipsoid.forward(a.lat, a.lon, a.azimuth, np.array([-reach, reach]))
    return AxisLine(stations.name, lat, lon, ellipsoid)


def _chainages_on(axis, lat, lon):
    if not len(lat):
        return np.zeros(0), np.zeros(0)
    feet = measure([axis.line], lat, lon)
    return axis.chainages(feet.leg, feet.along), axis.offsets(feet.leg, feet.across)


def middle_radius(axis):
    """Euler's radius at the axis' middle in its azimuth, metres: the default sphere."""
    lat, _, azimuth = axis.place(axis.start + 0.5 * axis.length)
    return float(axis.line.ellipsoid.euler_radius(lat[0], azimuth[0]))


def _on_sphere(work, k, rows):
    """By chainage, offsets ignored; heights above the sphere are H + N as on the ellipsoid."""
    spec, axis, a = work.specs[k], work.stations[k].axis, work.a.one(k)
    radius = spec.radius if spec.radius is not None else middle_radius(axis)
    along, h_a, h_c = work.rows.chainage[rows] - a.chainage, a.height + a.undulation, axis.chainage_height
    if spec.kind == "chord":
        b = work.b.one(k)
        heights = sphere_chord(along, h_a, b.height + b.undulation, b.chainage - a.chainage, radius, h_c)
    elif spec.kind == "tangent":
        heights = sphere_tangent(along, h_a, radius, h_c)
    else:
        heights = sphere_inclined(along, h_a, float(work.slope[k]), radius, h_c)
    return heights - work.rows.undulation[rows]


def _reference(work, axes, rows):
    """The plane of a reference; flat is the chord through the heights of each axis' first and last station."""
    if not len(rows):
        return
    points, normals = (np.full((len(work.specs), 3), np.nan) for _ in range(2))
    for k in axes:
        points[k], normals[k] = work.specs[k].plane.point, work.specs[k].plane.normal
    own, s = work.rows.axis[rows], work.rows.chainage[rows]
    place = work.rows.lat[rows], work.rows.lon[rows]
    heights = heights_over(points, normals, own, *place, work.ellipsoid) - work.rows.undulation[rows]
    # Of several at one chainage the first by input order, as in s.argmin().
    first, last = (
        np.lexsort((sign * s, own))[np.minimum(np.searchsorted(own, np.arange(len(points))), len(own) - 1)]
        for sign in (1.0, -1.0)
    )
    run = s[last] - s[first]
    apart = run > 0.001
    slope = np.where(apart, (heights[last] - heights[first]) / np.where(apart, run, 1.0), 0.0)
    work.set(rows, heights[first][own] + slope[own] * (s - s[first][own]), heights)
