"""What if: the straight line through two points of a profile, level surface and flat drawing (method page 4)."""

from dataclasses import dataclass

import numpy as np

from .controls import Control
from .design import DesignSpec, straight_plane
from .earth_models import field_rule_between
from .errors import Chainage, InputError
from .geodesy import Ellipsoid

# Controls nearer to each other than this make no line: a design refuses them too.
_APART = 0.001


@dataclass(frozen=True)
class ProfilePlaces:
    """Stations of one axis by rising chainage, arrays (n,): ``lat``, ``lon`` degrees, NaN where a station has no place;
    ``chainage``, ``height`` (as-built, in the layer's height system, NaN where there is none) and ``undulation``:
    metres.
    """

    ellipsoid: Ellipsoid
    lat: np.ndarray
    lon: np.ndarray
    chainage: np.ndarray
    height: np.ndarray
    undulation: np.ndarray

    def station(self, row):
        """The control at the station of index ``row``, at its own place and height; InputError without them."""
        if not np.isfinite(self.height[row] + self.lat[row] + self.undulation[row]):
            raise InputError("The station at chainage {} has no height or no place.", Chainage(self.chainage[row]))
        values = (self.chainage, self.height, self.lat, self.lon)
        s, height, lat, lon = (float(value[row]) for value in values)
        return Control(s, height, lat, lon, np.nan, float(self.undulation[row]), int(row))

    def point(self, chainage, height):
        """The control at any ``chainage`` and ``height``, metres: its place lies between the two stations beside it.

        InputError beyond the stations, where nothing says which way the axis runs on.
        """
        known = np.isfinite(self.lat + self.undulation)
        s = self.chainage[known]
        if len(s) < 2 or not s[0] <= chainage <= s[-1]:
            raise InputError("Chainage {} lies beyond the stations.", Chainage(chainage))
        lat, lon, n = (
            float(np.interp(chainage, s, values))
            for values in (self.lat[known], np.unwrap(self.lon[known], period=360.0), self.undulation[known])
        )
        return Control(float(chainage), float(height), lat, lon, np.nan, n)


@dataclass(frozen=True)
class LineThrough:
    """The line through two controls, over the stations and the controls themselves, by rising chainage.

    ``controls``: (A, B), A at the lesser chainage. Arrays (m,), metres: ``chainage``; heights in the layer's system of
    the ``straight`` line, of the ``level`` surface through A and of the ``flat`` drawing, a straight line on a sheet on
    which the Earth is flat; ``rule``: what the rule of thumb gives for ``gap``; ``rows``: where the stations are, (n,).
    """

    controls: tuple
    chainage: np.ndarray
    straight: np.ndarray
    level: np.ndarray
    flat: np.ndarray
    rule: np.ndarray
    rows: np.ndarray

    @property
    def gap(self):
        """Straight line less flat drawing, metres (m,): below 0 between the controls, above beyond them."""
        return self.straight - self.flat

    @property
    def lines(self):
        """Heights of the three lines: {'flat', 'level', 'straight': array (m,)}, metres."""
        return {"flat": self.flat, "level": self.level, "straight": self.straight}

    @property
    def greatest_gap(self):
        """(gap, index) where straight and flat lie farthest apart between the controls; metres."""
        between = (self.chainage >= self.controls[0].chainage) & (self.chainage <= self.controls[1].chainage)
        size = np.where(between, np.nan_to_num(np.abs(self.gap)), -1.0)
        at = int(np.argmax(size))
        return float(self.gap[at]), at


def line_through(places, one, other):
    """The LineThrough two controls of ``places`` (ProfilePlaces), in any order, each by ``station`` or ``point``.

    The straight line is the plane of the design 'chord', on each station's own latitude and longitude, less its
    undulation: metres, 1e-8 m as the design. The flat drawing is straight over the chainage. InputError for controls
    at one place.
    """
    a, b = sorted((one, other), key=lambda control: control.chainage)
    if b.chainage - a.chainage < _APART:
        raise InputError("Both points are at one chainage; a line needs two that are apart.")
    added = [control for control in (a, b) if control.station is None]
    s = np.concatenate([places.chainage, [control.chainage for control in added]])
    order = np.argsort(s, kind="stable")
    lat, lon, n = (
        np.concatenate([values, [getattr(control, name) for control in added]])[order]
        for name, values in (("lat", places.lat), ("lon", places.lon), ("undulation", places.undulation))
    )
    s = s[order]
    plane = straight_plane(DesignSpec("chord"), (a, b), places.ellipsoid, (0.0, 0.0), 0.0)
    straight = plane.heights(lat, lon, places.ellipsoid) - n
    flat = a.height + (b.height - a.height) / (b.chainage - a.chainage) * (s - a.chainage)
    rows = np.empty(len(s), int)
    rows[order] = np.arange(len(s))
    return LineThrough(
        (a, b),
        s,
        straight,
        np.full(len(s), a.height),
        flat,
        field_rule_between(s - a.chainage, b.chainage - s),
        rows[: len(places.chainage)],
    )
