"""The line of stations in plan by least squares, with its search for blunders: the sideways half of a straight line in
space (method page 6).

Observed is the distance of each station from a vertical plane near it; unknown are the plane's shift and rotation. The
errors upwards and sideways are independent, and so are both halves: a metre of height moves nothing sideways (method
page 4). Search, guard and tests are those of the heights.
"""

from dataclasses import dataclass

import numpy as np

from .best_line import best_lines
from .covariance import Covariance
from .errors import InputError
from .fit import searched
from .geodesy import east_north, geographic
from .lateral import VerticalPlanes, check_lines
from .least_squares import Fitted, Search, Solution


@dataclass(frozen=True)
class Sideways:
    """Stations of one line in plan; arrays (n,): ``along``, ``aside`` of the vertical ``plane`` (one of
    VerticalPlanes), metres; ``covariance``: C of ``aside``; ``known``: True where C is in square metres."""

    plane: VerticalPlanes
    along: np.ndarray
    aside: np.ndarray
    covariance: Covariance
    known: bool = True

    def __len__(self):
        return len(self.aside)


@dataclass(frozen=True)
class LateralFit:
    """The fitted line in plan. ``plane``: VerticalPlanes of one, at the middle of the kept stations; ``along`` (n,):
    metres from there; ``search``: solution and tests, whose parameters are the shift, metres, and the rotation,
    radians, both from the plane that was given."""

    plane: VerticalPlanes
    along: np.ndarray
    search: Search

    @property
    def solution(self):
        """The least_squares.Solution of the kept stations."""
        return self.search.solution

    @property
    def residuals(self):
        """Lateral departures, metres (n,), positive right, of all stations, those set aside too."""
        return self.search.fitted.residuals

    @property
    def rms(self):
        """Root mean square of the kept departures, metres."""
        return float(np.sqrt(np.mean(self.residuals[self.search.kept] ** 2)))

    def place(self, ellipsoid):
        """Latitude, longitude and azimuth of the line at its middle, degrees."""
        lat, lon, _ = (float(v) for v in geographic(self.plane.point[0], ellipsoid))
        east, north = east_north(lat, lon)
        ahead = self.plane.ahead[0]
        return lat, lon, float(np.degrees(np.arctan2(ahead @ east, ahead @ north)) % 360.0)


def fit_sideways(name, stations, *, remove=False, robust=False):
    """Fit the line in plan of Sideways (n,): a LateralFit; options as in fit.fit_surface. InputError naming the axis
    ``name`` where the stations do not lie along a line."""

    def fit(keep):
        return _fitted(name, stations, keep)

    found = searched(fit, stations, remove=remove, robust=robust)
    lines = _lines(name, stations, found.kept)
    along, _ = lines.coordinates(np.zeros(len(stations), int), stations.along, stations.aside)
    return LateralFit(stations.plane.turned(np.zeros(1, int), lines), along, found)


def _lines(name, stations, keep):
    if keep.sum() < 2:
        raise InputError("Axis '{}': a line in plan needs 2 stations, and is left with {}.", name, int(keep.sum()))
    weight = keep / stations.covariance.variance
    lines = best_lines(np.zeros(len(stations), int), stations.along, stations.aside, weight, 1)
    check_lines(lines, np.zeros(1, int), [name])
    return lines


def _fitted(name, stations, keep):
    """The least-squares line of the kept stations: on the line so turned the regression of what is left is zero."""
    lines = _lines(name, stations, keep)
    along, aside = lines.coordinates(np.zeros(len(stations), int), stations.along, stations.aside)
    design = np.column_stack([np.ones(len(along)), along])
    parameters = np.array([lines.shift[0], lines.turn[0]])
    covariance = stations.covariance.part(keep)
    solution = Solution(design[keep], aside[keep], covariance, stations.known, parameters)
    return Fitted(solution, design, aside, stations.covariance, keep.copy())
