"""The ellipsoid, Earth-centred positions, radii, geodesics and datums: the only importer of pyproj.

Angles are degrees, lengths metres; arrays broadcast. Sources: method page 2 and 3; Torge and
Mueller, Geodesy (4th ed.), for M, nu and Euler's radius; geodesics by Karney (2013) through PROJ.
"""

import os
import pathlib
import sqlite3
from contextlib import closing
from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np
import pyproj
from pyproj.exceptions import CRSError, ProjError
from pyproj.transformer import TransformerGroup

from .errors import InputError
from .python_thread import in_python_thread

# Cell of the EGM96 grid that PROJ uses, degrees.
EGM96_CELL = 0.25


@dataclass(frozen=True)
class Ellipsoid:
    """An oblate ellipsoid or sphere: semi-major axis ``a`` in metres, flattening ``f`` without unit.

    Raises InputError where ``a`` is not positive or ``f`` outside 0 to 0.1.
    """

    a: float
    f: float

    def __post_init__(self):
        object.__setattr__(self, "a", float(self.a))
        object.__setattr__(self, "f", float(self.f))
        if not (np.isfinite(self.a) and self.a > 0 and 0 <= self.f < 0.1):
            raise InputError("An ellipsoid with a = {} m and f = {} is not an Earth ellipsoid.", self.a, self.f)

    @property
    def e2(self):
        """First eccentricity squared, without unit."""
        return self.f * (2.0 - self.f)

    @cached_property
    def geod(self):
        """pyproj.Geod of this ellipsoid (exact to about 1e-8 m)."""
        return pyproj.Geod(a=self.a, f=self.f)

    def radius_across(self, lat):
        """Radius of curvature nu in the prime vertical at ``lat`` degrees, metres."""
        return self.a / np.sqrt(1.0 - self.e2 * np.sin(np.radians(lat)) ** 2)

    def radius_meridian(self, lat):
        """Radius of curvature M in the meridian at ``lat`` degrees, metres."""
        return self.a * (1.0 - self.e2) / (1.0 - self.e2 * np.sin(np.radians(lat)) ** 2) ** 1.5

    def euler_radius(self, lat, azimuth):
        """Radius of curvature of the normal section in ``azimuth`` degrees at ``lat`` degrees, metres."""
        north = np.cos(np.radians(azimuth)) ** 2
        return 1.0 / (north / self.radius_meridian(lat) + (1.0 - north) / self.radius_across(lat))

    def inverse(self, lat1, lon1, lat2, lon2):
        """Geodesic from points 1 to points 2: azimuths at 1 and at 2 (both ahead) in degrees, metres."""
        scalar = np.ndim(lat1) == np.ndim(lon1) == np.ndim(lat2) == np.ndim(lon2) == 0
        lat1, lon1, lat2, lon2 = np.broadcast_arrays(*np.atleast_1d(lat1, lon1, lat2, lon2))
        ahead, back, length = self.geod.inv(lon1, lat1, lon2, lat2)
        ahead, at_end = np.asarray(ahead), np.asarray(back) + 180.0
        return (ahead[0], at_end[0], length[0]) if scalar else (ahead, at_end, np.asarray(length))

    def forward(self, lat, lon, azimuth, distance):
        """Point at ``distance`` metres (negative: behind) on the geodesic: lat, lon, azimuth there."""
        scalar = np.ndim(lat) == np.ndim(lon) == np.ndim(azimuth) == np.ndim(distance) == 0
        lat, lon, azimuth, distance = np.broadcast_arrays(*np.atleast_1d(lat, lon, azimuth, distance))
        lon2, lat2, back = (np.asarray(v) for v in self.geod.fwd(lon, lat, azimuth, distance))
        return (lat2[0], lon2[0], back[0] + 180.0) if scalar else (lat2, lon2, back + 180.0)


# Below this number of angles, and beyond this spread in radians, the library's own functions are as fast or needed.
_FEW_ANGLES, _WIDE = 256, 0.08


def _sine_cosine(angle):
    """Sine and cosine of angles in radians.

    Stations of one structure lie close together: their angles are few from the middle one, where short series to the
    eleventh power are exact to the last digit (0.04^12 / 12! < 1e-25) and twice as fast as four library calls.
    """
    if np.ndim(angle) == 0 or np.size(angle) < _FEW_ANGLES:
        return np.sin(angle), np.cos(angle)
    low, high = np.min(angle), np.max(angle)
    if not high - low < _WIDE:
        return np.sin(angle), np.cos(angle)
    middle = 0.5 * (low + high)
    sine, cosine = np.sin(middle), np.cos(middle)
    away = angle - middle
    square = away * away
    odd, even = square / 362880.0, square / -3628800.0
    for series, terms in (
        (odd, (-1.0 / 5040.0, 1.0 / 120.0, -1.0 / 6.0, 1.0)),
        (even, (1.0 / 40320.0, -1.0 / 720.0, 1.0 / 24.0, -0.5)),
    ):
        series += terms[0]
        for term in terms[1:]:
            series *= square
            series += term
    odd *= away
    even *= square
    return sine + (sine * even + cosine * odd), cosine + (cosine * even - sine * odd)


def foot_components(lat, lon, ellipsoid):
    """The same as foot_and_normal by components, for loops over chunks that stay in the cache.

    ``lat``, ``lon``: degrees (n,). Returns x, y, z in metres and the normal's x, y, z: six arrays (n,).
    """
    up_z, parallel = _sine_cosine(np.radians(lat))
    up_y, up_x = _sine_cosine(np.radians(lon))
    up_x, up_y = parallel * up_x, parallel * up_y
    nu = ellipsoid.a / np.sqrt(1.0 - ellipsoid.e2 * (up_z * up_z))
    return nu * up_x, nu * up_y, (nu * (1.0 - ellipsoid.e2)) * up_z, up_x, up_y, up_z


def foot_and_normal(lat, lon, ellipsoid):
    """Earth-centred foot points (height 0) and unit ellipsoid normals.

    ``lat``, ``lon``: degrees, shape (n,) or scalars. Returns two arrays of shape (n, 3) or (3,), metres
    and without unit.
    """
    parts = foot_components(np.asarray(lat, float), np.asarray(lon, float), ellipsoid)
    return np.stack(np.broadcast_arrays(*parts[:3]), axis=-1), np.stack(np.broadcast_arrays(*parts[3:]), axis=-1)


def position(lat, lon, height, ellipsoid):
    """Earth-centred position of points at ellipsoidal ``height`` metres: shape (n, 3) or (3,), metres."""
    foot, normal = foot_and_normal(lat, lon, ellipsoid)
    return foot + np.asarray(height, float)[..., None] * normal


@in_python_thread
def geographic(xyz, ellipsoid):
    """Latitude, longitude (degrees) and ellipsoidal height (metres) of Earth-centred ``xyz`` (n, 3) or (3,)."""
    shape = f"+a={ellipsoid.a!r} +rf={1.0 / ellipsoid.f!r}" if ellipsoid.f else f"+R={ellipsoid.a!r}"
    cart = pyproj.Transformer.from_pipeline(f"+proj=cart {shape}")
    xyz = np.asarray(xyz, float)
    lon, lat, height = cart.transform(xyz[..., 0], xyz[..., 1], xyz[..., 2], direction="INVERSE")
    return lat, lon, height


def east_north(lat, lon):
    """Unit vectors east and north at ``lat``, ``lon`` degrees: two arrays of shape (..., 3)."""
    lat, lon = np.radians(lat), np.radians(lon)
    zero = np.zeros_like(lat + lon)
    east = np.stack([-np.sin(lon) + zero, np.cos(lon) + zero, zero], axis=-1)
    north = np.stack([-np.sin(lat) * np.cos(lon), -np.sin(lat) * np.sin(lon), np.cos(lat) + zero], axis=-1)
    return east, north


# A run asks for the same few systems again and again, and each time PROJ would look them up.
_KEPT = 64


def _crs(definition):
    try:
        crs = pyproj.CRS.from_user_input(definition)
    except CRSError as error:
        raise InputError("The coordinate reference system is not understood: {}", str(error)) from None
    while crs.is_bound or crs.is_compound:
        crs = crs.source_crs if crs.is_bound else crs.sub_crs_list[0]
    return crs


def _base(definition):
    crs = _crs(definition)
    # Of a geographic system itself: what PROJ calls its base is another object, to which it may know a shift.
    base = crs if crs.is_geographic and not crs.is_derived else crs.geodetic_crs
    if crs.is_geocentric or base is None or base.ellipsoid is None:
        raise InputError("The coordinate reference system '{}' has no latitude and longitude behind it.", crs.name)
    return base


@dataclass(frozen=True)
class _Angles:
    """How a geographic reference system counts: radians per unit, signs of its axes, its meridian in degrees."""

    latitude: float
    longitude: float
    meridian: float

    def degrees(self, lon, lat):
        """Latitude and longitude, degrees, north, east of Greenwich, of the system's own numbers."""
        return np.degrees(np.asarray(lat) * self.latitude), np.degrees(np.asarray(lon) * self.longitude) + self.meridian

    def own(self, lat, lon):
        """The system's own longitude and latitude of degrees."""
        return np.radians(np.asarray(lon) - self.meridian) / self.longitude, np.radians(lat) / self.latitude


# Most systems count in degrees from Greenwich, and their numbers pass untouched, to the last bit.
_PLAIN = _Angles(np.pi / 180.0, np.pi / 180.0, 0.0)


def _angles(base):
    """_Angles of a geographic reference system, by its own unit and prime meridian; None where it counts plainly."""
    factors = {"north": None, "east": None}
    for axis in base.axis_info:
        way = {"south": "north", "west": "east"}.get(axis.direction, axis.direction)
        if way in factors:
            factors[way] = axis.unit_conversion_factor * (1.0 if way == axis.direction else -1.0)
    meridian = base.prime_meridian
    angle = np.degrees(meridian.longitude * meridian.unit_conversion_factor) if meridian is not None else 0.0
    found = _Angles(factors["north"] or _PLAIN.latitude, factors["east"] or _PLAIN.longitude, angle)
    plain = all(abs(a - b) < 1e-15 for a, b in zip(vars(found).values(), vars(_PLAIN).values()))
    return None if plain else found


@lru_cache(_KEPT)
@in_python_thread
def ellipsoid_of(definition):
    """Ellipsoid of a coordinate reference system as a text (WKT or authority code); InputError where it has none."""
    body = _base(definition).ellipsoid
    flattening = 1.0 / body.inverse_flattening if body.inverse_flattening else 0.0
    return Ellipsoid(body.semi_major_metre, flattening)


@lru_cache(_KEPT)
@in_python_thread
def datum_name(definition):
    """Name of the geographic coordinate reference system behind ``definition``, a text (WKT or authority code)."""
    return _base(definition).name


@in_python_thread
def mapping(source, target=None):
    """The way from map coordinates of ``source`` to latitude and longitude on the datum of ``target`` (default its
    own): degrees, from the equator and from Greenwich, whatever unit and meridian the reference systems count in.

    Returns a function of x, y (easting or longitude, northing or latitude) to lat, lon in degrees, which raises
    InputError where a point has no image. InputError where the way between the datums is only a ballpark step.
    """
    start, goal = _crs(source), _base(target if target is not None else source)
    name, angles = start.name, _angles(goal)

    def refusal():
        return InputError(
            "From '{}' to '{}' only a ballpark transformation is known here, which can be wrong by "
            "metres: give both layers the same datum, or install the transformation's grid.",
            name,
            goal.name,
        )

    try:
        way = pyproj.Transformer.from_crs(start, goal, always_xy=True, allow_ballpark=False)
    except ProjError:
        raise refusal() from None

    @in_python_thread
    def to_latitude_longitude(x, y):
        try:
            lon, lat = way.transform(np.asarray(x, float), np.asarray(y, float))
        except ProjError:
            raise refusal() from None
        if not (np.all(np.isfinite(lon)) and np.all(np.isfinite(lat))):
            raise InputError("Some coordinates lie outside the domain of '{}'.", name)
        return (lat, lon) if angles is None else angles.degrees(lon, lat)

    return to_latitude_longitude


@lru_cache(_KEPT)
def _same_datum(source, target):
    return _base(source) == _base(target)


@in_python_thread
def shift_accuracy(source, target, x, y):
    """Accuracy, metres, that PROJ states of the shift from the datum of ``source`` to that of ``target`` at a place
    ``x``, ``y`` of ``source``; 0 where the datum is the same, NaN where none is stated."""
    if _same_datum(source, target):
        return 0.0
    goal = _base(target)
    way = pyproj.Transformer.from_crs(_crs(source), goal, always_xy=True, allow_ballpark=False)
    way.transform(float(x), float(y))
    # Of several ways the library takes the one for the place; where there is one only, or in older releases, it does
    # not tell which.
    try:
        used = way.get_last_used_operation()
    except (AttributeError, ProjError):
        used = way
    return float(used.accuracy) if used.accuracy >= 0.0 else float("nan")


@dataclass(frozen=True)
class VerticalPart:
    """The vertical part of a reference system: its ``name``; ``ellipsoidal``: else above a geoid or the sea; ``metres``
    in one unit; ``down``: True for depths."""

    name: str
    ellipsoidal: bool
    metres: float
    down: bool


@lru_cache(_KEPT)
@in_python_thread
def vertical_part(definition):
    """VerticalPart of a compound, vertical or three-dimensional reference system as a text (WKT or authority code);
    None where it has none."""
    try:
        crs = pyproj.CRS.from_user_input(definition)
    except CRSError as error:
        raise InputError("The coordinate reference system is not understood: {}", str(error)) from None
    while crs.is_bound:
        crs = crs.source_crs
    part = next((one for one in crs.sub_crs_list if one.is_vertical), None) if crs.is_compound else crs
    if part is None or part.is_geocentric:
        return None
    axes = [axis for axis in part.axis_info if axis.direction in ("up", "down")]
    if not axes:
        return None
    axis = axes[0]
    return VerticalPart(part.name, not part.is_vertical, axis.unit_conversion_factor, axis.direction == "down")


def to_latitude_longitude(x, y, source, target=None):
    """Map coordinates x, y (arrays) to latitude and longitude in degrees: see mapping."""
    return mapping(source, target)(x, y)


@in_python_thread
def from_latitude_longitude(lat, lon, target):
    """The way back: latitude and longitude (degrees) of the base of ``target`` to its map x and y."""
    base = _base(target)
    way, angles = pyproj.Transformer.from_crs(base, _crs(target), always_xy=True, allow_ballpark=False), _angles(base)
    lon, lat = (lon, lat) if angles is None else angles.own(lat, lon)
    return way.transform(np.asarray(lon, float), np.asarray(lat, float))


def library_versions():
    """Versions of pyproj and PROJ, for the record of a run: {name: text}."""
    return {"pyproj": pyproj.__version__, "PROJ": pyproj.proj_version_str}


@in_python_thread
def library_undulation(lat, lon, geoid="EPSG:5773"):
    """Undulations of a geoid known to PROJ, metres (n,), at lat, lon degrees on WGS 84.

    ``geoid``: a vertical reference system, default EGM96. InputError where its grid is not installed: PROJ would
    silently offer a 'ballpark' step that reads as N = 0.
    """
    lat, lon = np.atleast_1d(np.asarray(lat, float)), np.atleast_1d(np.asarray(lon, float))
    try:
        shift = pyproj.Transformer.from_crs(
            "EPSG:4979", f"EPSG:4326+{geoid.split(':')[-1]}", always_xy=True, allow_ballpark=False
        )
        # Longitudes beyond half a turn are the same places to the user, but not to every grid.
        minus_n = shift.transform((lon + 180.0) % 360.0 - 180.0, lat, np.zeros_like(lat + lon))[2]
    except ProjError:
        raise InputError(
            "The geoid grid EGM96 is not installed, so undulations cannot be found: install PROJ's grids (package "
            "proj-data on Debian and Ubuntu), or give a geoid raster, a field or one value."
        ) from None
    if not np.all(np.isfinite(minus_n)):
        raise InputError("The geoid grid has no value at some of the stations.")
    return -np.asarray(minus_n)


class LibraryNodes:
    """Nodes of the EGM96 grid of PROJ, indexed like an array (721, 1440) from 90 N, 180 W; metres.

    At its nodes the library's own bilinear reading is the grid's value. InputError as library_undulation.
    """

    shape = (721, 1440)
    west, north = -180.0, 90.0

    def __getitem__(self, index):
        rows, columns = np.broadcast_arrays(*index)
        lat, lon = self.north - EGM96_CELL * rows, self.west + EGM96_CELL * columns
        return library_undulation(lat.ravel(), lon.ravel()).reshape(rows.shape)


@in_python_thread
def library_geoid(geoid="EPSG:5773"):
    """Name of the grid behind library_undulation and its accuracy as PROJ states it, metres (NaN where it does not)."""
    found = TransformerGroup("EPSG:4979", f"EPSG:4326+{geoid.split(':')[-1]}", always_xy=True, allow_ballpark=False)
    if not found.transformers:
        return "", float("nan")
    way = found.transformers[0]
    grids = [grid.short_name for step in way.operations or () for grid in step.grids]
    return ", ".join(grids), way.accuracy if way.accuracy >= 0.0 else float("nan")


def grid_folders():
    """Folders in which PROJ looks for grids: list of paths."""
    return [*pyproj.datadir.get_data_dir().split(os.pathsep), pyproj.datadir.get_user_data_dir()]


def installed_grid(name):
    """Path of the grid file ``name``, a text, that PROJ has installed; None where it has none."""
    if os.path.basename(name) != name:
        return None
    paths = [os.path.join(folder, name) for folder in grid_folders()]
    return next((path for path in paths if os.path.isfile(path)), None)


def grid_accuracy(name):
    """Accuracy that PROJ's database states for undulations from a grid file, metres; NaN where it states none.

    Of several operations by one grid the most cautious counts.
    """
    paths = [os.path.join(folder, "proj.db") for folder in grid_folders()]
    path = next((path for path in paths if os.path.isfile(path)), None)
    if path is None:
        return float("nan")
    # The library's own interface answers for pairs of reference systems only, not for a grid.
    try:
        with closing(sqlite3.connect(pathlib.Path(path).as_uri() + "?mode=ro", uri=True)) as database:
            found = database.execute(_ACCURACY, (name, name, name)).fetchone()
    except sqlite3.Error:
        return float("nan")
    return float("nan") if found[0] is None else float(found[0])


_ACCURACY = """
    SELECT max(g.accuracy) FROM grid_transformation g
    LEFT JOIN grid_alternatives a ON a.original_grid_name = g.grid_name
    WHERE NOT g.deprecated AND (g.grid_name = ? OR a.proj_grid_name = ? OR a.old_proj_grid_name = ?)
"""


def is_like_wgs84(ellipsoid):
    """True for ellipsoids within a centimetre of WGS 84, to which global geoid grids refer."""
    return abs(ellipsoid.a - 6378137.0) < 0.01 and abs(ellipsoid.f - 1.0 / 298.257223563) < 1e-9
