"""Curvature and refraction of sights: levelled, trigonometric and reciprocal (method page 8).

Lengths are metres, angles degrees; arrays broadcast. The coefficient of refraction ``k`` is the Earth's radius over
that of the line of sight, without unit; it is always given, never assumed: it changes with place and hour, and
near warm ground it is negative. Sources: Torge and Mueller, Geodesy (4th ed.); for the coefficient from the
temperature, the literature named at ``refraction_coefficient``.
"""

from dataclasses import dataclass

import numpy as np

from .errors import InputError, Word

# Radius of the sphere that has the Earth's volume, rounded, for sights whose place is not known.
MEAN_RADIUS = 6_371_000.0
# Below this, metres, a radius was given in another unit.
LEAST_RADIUS = 1000.0


def sight_radius(ellipsoid, lat, azimuth=np.nan):
    """Radius of the Earth under a sight, metres.

    Euler's radius where ``lat`` and ``azimuth`` (degrees) are numbers, sqrt(M nu) where only ``lat`` is one, else
    MEAN_RADIUS: NaN stands for not known.
    """
    lat, azimuth = np.broadcast_arrays(np.asarray(lat, float), np.asarray(azimuth, float))
    if np.any(np.abs(lat) > 90.0):
        raise InputError("A latitude lies beyond 90 degrees.")
    gaussian = np.sqrt(ellipsoid.radius_meridian(lat) * ellipsoid.radius_across(lat))
    radius = np.where(np.isfinite(azimuth), ellipsoid.euler_radius(lat, azimuth), gaussian)
    radius = np.where(np.isfinite(lat), radius, MEAN_RADIUS)
    return float(radius) if radius.ndim == 0 else radius


def sight_correction(distance, *, k, radius=MEAN_RADIUS):
    """Curvature less refraction of a sight, (1 - k) D^2 / 2R, metres.

    Added to a height from a single trigonometric sight; a staff is read too high by it. ``distance``: horizontal,
    metres, not negative; ``radius``: metres. InputError for a distance, k or radius that cannot be.
    """
    distance, k, radius = _checked("distance", distance), _coefficient(k), _radius(radius)
    return _plain((1.0 - k) * distance**2 / (2.0 * radius))


def arc_height_difference(arc, altitude, *, k, radius=MEAN_RADIUS, height=0.0):
    """Height of the far point above the instrument over an ``arc`` on the ellipsoid, metres.

    (R + H) (cos a / cos(t + a) - 1), t = arc / R, a the ``altitude`` (degrees) less k t / 2, H the instrument's
    ``height`` above the ellipsoid, metres. Exact on the sphere of ``radius`` metres; D tan a + (1 - k) D^2 / 2R errs by
    D^2 tan^2 a / R beside it. InputError for an arc, k or radius that cannot be, or a line of sight that never
    arrives.
    """
    arc, k, radius = _checked("distance", arc), _coefficient(k), _radius(radius)
    height = _number("height", height)
    return _plain((radius + height) * (_ratio_of_radii(arc / radius, altitude, k) - 1.0))


def arc_height_difference_midway(arc, altitude, *, k, radius=MEAN_RADIUS, height=0.0):
    """The same, metres, where ``height`` is that midway between both ends: sights both ways then agree exactly.

    With q the ratio of the radii of both ends, arc_height_difference is (R + H) (q - 1); here H is ``height`` less half
    the difference itself, hence 2 (R + height) (q - 1) / (q + 1).
    """
    arc, k, radius = _checked("distance", arc), _coefficient(k), _radius(radius)
    ratio = _ratio_of_radii(arc / radius, altitude, k)
    return _plain(2.0 * (radius + _number("height", height)) * (ratio - 1.0) / (ratio + 1.0))


def _ratio_of_radii(centre, altitude, k):
    """Radius of the far end over that of the near one; ``centre``: angle at the Earth's centre, radians."""
    rise = np.radians(np.asarray(altitude, float)) - 0.5 * k * centre
    if not np.all(np.cos(rise) > 0.0) or not np.all(np.cos(centre + rise) > 0.0):
        raise InputError("A line of sight is so steep that it never arrives above the far point.")
    return np.cos(rise) / np.cos(centre + rise)


def level_setup_correction(back_distance, fore_distance, *, k, radius=MEAN_RADIUS):
    """What is added to (back - fore) of one levelling setup, metres: that of the fore sight less that of the back.

    Zero where both sights are equally long.
    """
    back = sight_correction(back_distance, k=k, radius=radius)
    return _plain(np.asarray(sight_correction(fore_distance, k=k, radius=radius)) - back)


def distance_for_correction(correction, *, k, radius=MEAN_RADIUS):
    """Length of the sight whose sight_correction is ``correction`` metres. InputError where k is 1 or more."""
    correction, radius = _checked("correction", correction), _radius(radius)
    return _plain(np.sqrt(2.0 * radius * correction / (1.0 - _bending_down(k))))


def horizon_distance(height, *, k, radius=MEAN_RADIUS):
    """Distance of the visible horizon from an eye ``height`` metres above the level surface, metres.

    sqrt(2 R h / (1 - k)), for heights small against the radius. InputError where k is 1 or more: the line of
    sight then follows the Earth and there is no horizon.
    """
    return distance_for_correction(_checked("height", height), k=k, radius=radius)


def refraction_coefficient(pressure, temperature, gradient):
    """Coefficient k of refraction from the air at the sight, 503 p / T^2 (0.0343 + dT/dz), without unit.

    ``pressure`` p: hPa; ``temperature`` T: kelvin; ``gradient`` dT/dz: kelvin per metre, positive where it is
    warmer above. Source: the refraction literature (Brunner; Bahnert; Joeckel et al.), formula as quoted there.
    """
    pressure, temperature = _checked("pressure", pressure), _checked("temperature", temperature)
    gradient = np.asarray(gradient, float)
    if np.any(temperature < 150.0):
        raise InputError("An air temperature is below 150 K; it is given in kelvin.")
    if not np.all(np.isfinite(gradient)):
        raise InputError("A temperature gradient is not a number.")
    return _plain(503.0 * pressure / temperature**2 * (0.0343 + gradient))


@dataclass(frozen=True)
class Reciprocal:
    """Sights from both ends of one line; metres.

    ``difference``: height of B less that of A, free of curvature, of refraction where it was the same both ways, and
    of collimation. ``error``: by how much each sight shows the far end too low: curvature less refraction, plus
    collimation times distance.
    """

    difference: float
    error: float


def reciprocal(forward, backward):
    """Height difference and error of one sight from reciprocal observations.

    ``forward``: rise from A to B as observed at A, ``backward``: rise from B to A as observed at B, metres, not
    corrected; for a level, reading at the near staff less reading at the far one. Returns Reciprocal.
    """
    forward, backward = np.asarray(forward, float), np.asarray(backward, float)
    if not (np.all(np.isfinite(forward)) and np.all(np.isfinite(backward))):
        raise InputError("A reciprocal observation is not a number.")
    return Reciprocal(_plain(0.5 * (forward - backward)), _plain(-0.5 * (forward + backward)))


def solved_refraction(error, distance, *, collimation=0.0, radius=MEAN_RADIUS):
    """Coefficient k that explains the ``error`` of reciprocal sights, without unit.

    ``error``: see Reciprocal, metres; ``distance``: metres; ``collimation``: rise of the line of sight per length,
    without unit (0.004 m down in 100 m: -0.00004). InputError for a distance that is not positive.
    """
    distance, radius = _positive_distance(distance), _radius(radius)
    explained = np.asarray(error, float) - np.asarray(collimation, float) * distance
    return _plain(1.0 - explained * 2.0 * radius / distance**2)


def solved_collimation(error, distance, *, k, radius=MEAN_RADIUS):
    """Rise of the line of sight per length, without unit, that explains what k leaves of ``error`` metres."""
    distance = _positive_distance(distance)
    return _plain((np.asarray(error, float) - sight_correction(distance, k=k, radius=radius)) / distance)


def _plain(values):
    values = np.asarray(values)
    return float(values) if values.ndim == 0 else values


def _checked(name, values):
    values = np.asarray(values, float)
    if not np.all(np.isfinite(values)) or np.any(values < 0.0):
        raise InputError("A {} is negative or not a number.", Word(name))
    return values


def _number(name, values):
    values = np.asarray(values, float)
    if not np.all(np.isfinite(values)):
        raise InputError("A {} is not a number.", Word(name))
    return values


def _positive_distance(distance):
    distance = _checked("distance", distance)
    if np.any(distance == 0.0):
        raise InputError("A distance is zero.")
    return distance


def _radius(radius):
    radius = np.asarray(radius, float)
    if not np.all(np.isfinite(radius)) or np.any(radius < LEAST_RADIUS):
        raise InputError("A radius of the Earth is below 1000 m or not a number; it is given in metres.")
    return radius


def _coefficient(k):
    k = np.asarray(k, float)
    # Mirages reach k = 10; beyond that, metres or seconds of arc were given.
    if not np.all(np.isfinite(k)) or np.any(np.abs(k) > 20.0):
        raise InputError("The coefficient of refraction k is not a number near 0, such as 0.13.")
    return k


def _bending_down(k):
    k = _coefficient(k)
    if np.any(k >= 1.0):
        raise InputError("With a coefficient of refraction of 1 or more the line of sight follows the Earth.")
    return k
