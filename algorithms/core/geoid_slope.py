"""What is known of the geoid's slope around a fit, and how well (method pages 4 and 6)."""

from dataclasses import dataclass
from typing import Callable

import numpy as np

from .errors import InputError

ARC_SECOND = np.pi / (180.0 * 3600.0)
# Standard deviation of a slope component, seconds of arc: of EGM96, of a field or of a grid whose cells are at most
# FINE_CELL, and where nothing is known. Measured: EGM96's own slopes are 5 RMS worldwide, 8 in Japan.
EGM96_SIGMA, FINE_SIGMA, UNKNOWN_SIGMA = 4.0, 2.5, 8.0
FINE_CELL = 5.0 / 60.0


def upright(lat, lon):
    """A geoid without slope: rise per metre to the east and to the north at ``lat``, ``lon`` degrees, both 0."""
    return 0.0, 0.0


@dataclass(frozen=True)
class GeoidSlope:
    """The geoid around the stations of one fit. Slopes are rises of N per metre to the east and to the north.

    ``ellipsoidal``: True where the heights were measured above the ellipsoid. ``applied``: function of lat, lon,
    degrees, that gives the slope of the undulations which made heights above the geoid ellipsoidal; ``known``: the best
    that is known of the slope there. ``sigma``: standard deviation of each component of ``known``, seconds of arc.
    ``bending``: standard deviation of each second derivative of N that nothing shows, 1/m. InputError for a negative
    or missing one.
    """

    ellipsoidal: bool = True
    applied: Callable = upright
    known: Callable = upright
    sigma: float = 0.0
    bending: float = 0.0

    def __post_init__(self):
        if not (np.isfinite(self.sigma) and self.sigma >= 0.0 and np.isfinite(self.bending) and self.bending >= 0.0):
            raise InputError("The accuracy of the geoid's slope and bending must be a number that is not negative.")

    def tangent_tilt(self, lat, lon):
        """Slope (2,), of places (m,) (2, m), that the fitted surface shows against the ellipsoid where in truth it has
        none."""
        if self.ellipsoidal:
            return np.zeros((2, *np.shape(lat)))
        return np.array([a - b for a, b in zip(self.applied(lat, lon), self.known(lat, lon))])

    def level_tilt(self, lat, lon):
        """Slope (2,), of places (m,) also (2, m), that the fitted surface shows against the ellipsoid where it lies in
        the horizon."""
        return np.asarray(self.known(lat, lon) if self.ellipsoidal else self.applied(lat, lon), float)

    @property
    def slope_variance(self):
        """Variance of each component of the slope, without unit."""
        return (self.sigma * ARC_SECOND) ** 2


def default_sigma(kind, cell, shown):
    """Standard deviation of a slope component where none is stated, seconds of arc.

    ``kind``: of UNDULATION; ``cell``: of its grid, degrees; ``shown``: True where EGM96 tells the slope for a kind that
    brings none.
    """
    if kind == "field" or (kind == "grid" and cell <= FINE_CELL + 1e-9):
        return FINE_SIGMA
    return EGM96_SIGMA if kind == "grid" or shown else UNKNOWN_SIGMA
