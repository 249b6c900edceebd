"""Designs of one axis: their controls, and the height each station should have (method page 4)."""

from dataclasses import dataclass, field
from typing import Optional

import numpy as np

from .axis import Axis, AxisLine
from .earth_models import sphere_chord, sphere_inclined, sphere_tangent
from .errors import InputError
from .measure import measure
from .normal_gravity import water_height
from .plane import Plane, chord_plane, inclined_plane
from .undulations import AlongAxis, ConstantUndulation

DESIGNS = ("chord", "tangent", "inclined", "reference", "level", "grade")
STRAIGHT = ("chord", "tangent", "inclined", "reference")
EARTHS = ("ellipsoid", "sphere", "flat")
CONTROL_REACH = 1.0
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
            raise InputError(f"The design '{self.kind}' is unknown; known are {', '.join(DESIGNS)}.")
        if self.earth not in EARTHS:
            raise InputError(f"The Earth model '{self.earth}' is unknown; known are {', '.join(EARTHS)}.")
        for name in ("chainage_a", "height_a", "chainage_b", "height_b", "slope", "refraction", "radius"):
            value = getattr(self, name)
            if value is not None and not np.isfinite(value):
                raise InputError(f"The design's {name.replace('_', ' ')} is not a number.")
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
                f"A slope of {self.slope:g} is steeper than 45 degrees: it is a rise per length without "
                "unit, 0.003 for 3 mm per metre."
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
            raise InputError(f"Both controls are at chainage {self.chainage_a:g} m; they must be apart.")
        if self.radius is not None and self.radius < 100_000.0:
            raise InputError(f"A sphere of radius {self.radius:g} m is no Earth; RADIUS is in metres.")

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
class DesignStations:
    """Stations of one axis; arrays (n,): ``lat``, ``lon`` degrees; ``chainage``, ``offset``, ``height`` metres.

    ``height``: in the input's height system, NaN where there is none. ``undulation``: N of each station, metres,
    zeros where heights are ellipsoidal or N is not known.
    """

    axis: Axis
    lat: np.ndarray
    lon: np.ndarray
    chainage: np.ndarray
    offset: np.ndarray
    height: np.ndarray
    undulation: np.ndarray

    @property
    def name(self):
        """Name of the axis."""
        return self.axis.line.name


@dataclass(frozen=True)
class Control:
    """A control as used: metres and degrees; ``height`` in the input's system; ``station``: its index, or None."""

    chainage: float
    height: float
    lat: float
    lon: float
    azimuth: float
    undulation: float
    station: Optional[int] = None


@dataclass(frozen=True)
class DesignHeights:
    """Result for one axis; arrays (n,), metres, in the input's height system.

    ``controls``: as used; ``slope``: of the design at control A in the input's terms, or None; ``horizon_known``:
    True where the geoid's slope went into the horizon; ``warnings``: sentences.
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
    if spec.kind == "reference":
        return _reference(spec, stations)
    controls = resolved_controls(spec, stations, undulation)
    if spec.kind == "level":
        flat = level_heights(controls[0], stations.lat, spec.datum_height)
        return DesignHeights(flat, flat.copy(), controls, 0.0)
    if spec.kind == "grade":
        a = controls[0]
        slope = spec.slope if spec.slope is not None else _mean_slope(*controls)
        flat = a.height + slope * (stations.chainage - a.chainage)
        return DesignHeights(flat, flat.copy(), controls, slope)
    return _straight(spec, stations, controls, undulation)


def level_heights(control, lat, datum_height):
    """Heights (n,) of the level surface through a Control at ``lat`` degrees, metres: constant, or, where
    ``datum_height`` is a number, normal-orthometric heights of still water, which fall towards the poles."""
    if datum_height is None:
        return np.full(len(lat), control.height)
    return water_height(control.height + datum_height, control.lat, np.asarray(lat, float)) - datum_height


def _mean_slope(a, b):
    return (b.height - a.height) / (b.chainage - a.chainage)


def resolved_controls(spec, stations, undulation):
    """The controls as used, a tuple of one or two: typed ones on the axis, the others at stations (method page 4)."""
    first = {"tangent": "middle"}.get(spec.kind, "first")
    controls = [_control("A", spec.chainage_a, spec.height_a, first, stations, undulation)]
    if spec.uses_b:
        controls.append(_control("B", spec.chainage_b, spec.height_b, "last", stations, undulation))
        if abs(controls[1].chainage - controls[0].chainage) < 0.001:
            raise InputError(
                f"Axis '{stations.name}': controls A and B are at the same chainage; a {spec.kind} needs "
                "two that are apart."
            )
    return tuple(controls)


def _control(letter, chainage, height, default, stations, undulation):
    station = None
    if chainage is None:
        station = _default_station(letter, default, stations)
        chainage = float(stations.chainage[station])
    if height is None:
        if station is None:
            station = _station_near(letter, chainage, stations)
        lat, lon = float(stations.lat[station]), float(stations.lon[station])
        chainage, height = float(stations.chainage[station]), float(stations.height[station])
        n = float(stations.undulation[station])
    else:
        station = None
        lat, lon = (float(v[0]) for v in stations.axis.place(chainage)[:2])
        n = float(undulation.at(lat, lon, chainage))
    azimuth = float(stations.axis.place(chainage)[2][0])
    return Control(chainage, float(height), lat, lon, azimuth, n, station)


def _best(stations, closeness):
    """The station with a height of least ``closeness``; several: least offset, then input order."""
    with_height = np.flatnonzero(np.isfinite(stations.height))
    rounded = np.round(closeness[with_height], 6)
    nearest = with_height[rounded == rounded.min()]
    return int(nearest[np.argmin(np.abs(stations.offset[nearest]))])


def _default_station(letter, which, stations):
    with_height = np.isfinite(stations.height)
    if not np.any(with_height):
        raise InputError(
            f"Axis '{stations.name}': control {letter} has no chainage, and no station of the axis has a "
            "height to take it from."
        )
    s = stations.chainage
    if which == "middle":
        middle = 0.5 * (s[with_height].min() + s[with_height].max())
        return _best(stations, np.abs(s - middle))
    return _best(stations, s if which == "first" else -s)


def station_at(stations, chainage):
    """Index of the station with a height nearest to ``chainage`` metres, None where none is within CONTROL_REACH."""
    distance = np.abs(stations.chainage - chainage)
    # A measured chainage has noise of 1e-8 m, which must not decide about a station that is 1 m away.
    reachable = np.isfinite(stations.height) & (distance <= CONTROL_REACH + 1e-6)
    return _best(stations, distance) if np.any(reachable) else None


def _station_near(letter, chainage, stations):
    found = station_at(stations, chainage)
    if found is None:
        raise InputError(
            f"Axis '{stations.name}': control {letter} at chainage {chainage:.3f} m has no height, and no "
            f"station with a height lies within {CONTROL_REACH:g} m of it."
        )
    return found


def _straight(spec, stations, controls, undulation):
    a = controls[0]
    x, x_b, departure, extent = _along_design(spec, stations, controls)
    if spec.kind == "chord":
        slope = (controls[1].height - a.height) / x_b
    else:
        slope = spec.slope if spec.kind == "inclined" else 0.0
    flat = a.height + slope * x
    geoid_slope = None if spec.kind == "chord" else undulation.slope(a.lat, a.lon, a.chainage, a.azimuth)
    if spec.earth == "flat":
        heights = flat.copy()
    elif spec.earth == "sphere":
        heights = _on_sphere(spec, stations, controls, slope)
    else:
        plane = straight_plane(spec, controls, stations.axis.line.ellipsoid, geoid_slope or (0.0, 0.0), slope)
        heights = plane.heights(stations.lat, stations.lon, stations.axis.line.ellipsoid) - stations.undulation
    design = flat + (1.0 - spec.refraction) * (heights - flat)
    warnings = []
    if departure > KINK * extent:
        warnings.append(
            f"Axis '{stations.name}' bends: it departs {departure:.3f} m from the geodesic of its design, so "
            f"a straight structure ('{spec.kind}') cannot follow it; check each leg by itself."
        )
    return DesignHeights(design, flat, controls, slope, geoid_slope is not None, tuple(warnings))


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


def _along_design(spec, stations, controls):
    """Distances from A along the design's own geodesic: of the stations (n,), of B (or None); and how far the axis
    departs from that geodesic over which extent, metres."""
    a, axis = controls[0], stations.axis
    ends = [c.chainage for c in controls]
    if len(ends) == 1:
        ends = (
            [*ends, *stations.chainage[[stations.chainage.argmin(), stations.chainage.argmax()]]]
            if len(stations.chainage)
            else ends
        )
    if len(axis.line.lengths) == 1:
        return stations.chainage - a.chainage, controls[-1].chainage - a.chainage, 0.0, 1.0
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


def _on_sphere(spec, stations, controls, slope):
    """By chainage, offsets ignored; heights above the sphere are H + N as on the ellipsoid."""
    a, h_c = controls[0], stations.axis.chainage_height
    radius = spec.radius if spec.radius is not None else middle_radius(stations.axis)
    along, h_a = stations.chainage - a.chainage, a.height + a.undulation
    if spec.kind == "chord":
        b = controls[1]
        heights = sphere_chord(along, h_a, b.height + b.undulation, b.chainage - a.chainage, radius, h_c)
    elif spec.kind == "tangent":
        heights = sphere_tangent(along, h_a, radius, h_c)
    else:
        heights = sphere_inclined(along, h_a, slope, radius, h_c)
    return heights - stations.undulation


def _reference(spec, stations):
    ellipsoid = stations.axis.line.ellipsoid
    heights = spec.plane.heights(stations.lat, stations.lon, ellipsoid) - stations.undulation
    if not len(heights):
        return DesignHeights(heights, heights.copy(), ())
    first, last = int(np.argmin(stations.chainage)), int(np.argmax(stations.chainage))
    run = stations.chainage[last] - stations.chainage[first]
    slope = (heights[last] - heights[first]) / run if run > 0.001 else 0.0
    flat = heights[first] + slope * (stations.chainage - stations.chainage[first])
    return DesignHeights(flat + (1.0 - spec.refraction) * (heights - flat), flat, ())
