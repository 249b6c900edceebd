"""Normal gravity, and what it does to levelled heights (method page 5).

Level surfaces draw together towards the poles, where gravity is greater: levelled differences, and the height of still
water, depend on latitude. Sources: Moritz, Geodetic Reference System 1980 (Bulletin Geodesique 54:3, and The
Geodesist's Handbook) for Somigliana's formula and its constants; Torge and Mueller, Geodesy (4th ed.), for
normal-orthometric heights.
"""

import numpy as np

from .errors import InputError

# GRS 80: normal gravity at the equator, m/s^2; k and first eccentricity squared, without unit.
EQUATOR = 9.7803267715
K = 0.001931851353
E2 = 0.00669438002290
# Beyond these, metres, a height is none of the sea's: another unit, or a local datum.
_HEIGHTS = (-1000.0, 10_000.0)


def normal_gravity(lat):
    """Normal gravity on the ellipsoid GRS 80 by Somigliana's formula, m/s^2, at ``lat`` degrees; arrays broadcast.

    Within 1e-9 m/s^2 of the published values. InputError for a latitude beyond 90 degrees.
    """
    lat = np.asarray(lat, float)
    if not np.all(np.abs(lat) <= 90.0):
        raise InputError("A latitude is beyond 90 degrees or not a number.")
    sine2 = np.sin(np.radians(lat)) ** 2
    gravity = EQUATOR * (1.0 + K * sine2) / np.sqrt(1.0 - E2 * sine2)
    return float(gravity) if gravity.ndim == 0 else gravity


def normal_orthometric_correction(lat_a, lat_b, height):
    """What is added to a levelled height difference from A to B, metres: -(gamma_B - gamma_A) / gamma_m H.

    ``lat_a``, ``lat_b``: degrees; ``height``: mean height of both ends above the sea, metres. About -0.0053 sin 2 phi H
    dphi: 17 mm over 10 km northwards at 2,000 m. InputError for a height that is none of the sea's.
    """
    height = _above_the_sea(height)
    gravity_a, gravity_b = normal_gravity(lat_a), normal_gravity(lat_b)
    return -(gravity_b - gravity_a) / (0.5 * (gravity_a + gravity_b)) * height


def water_height(height, lat_a, lat):
    """Normal-orthometric height, metres, at ``lat`` of the still water that stands at ``height`` at ``lat_a``, degrees.

    The same correction, from A to each place, with the mean of both heights: so height gamma_A / gamma. ``height``:
    above the sea, metres. InputError as above.
    """
    return _above_the_sea(height) * normal_gravity(lat_a) / normal_gravity(lat)


def _above_the_sea(height):
    height = np.asarray(height, float)
    if not np.all((height >= _HEIGHTS[0]) & (height <= _HEIGHTS[1])):
        raise InputError(
            "A height is not between -1000 m and 10,000 m: the gravity correction needs heights above the sea, not "
            "above a local datum."
        )
    return float(height) if height.ndim == 0 else height
