"""What a run knows of the geoid around each of its fits: slope, its accuracy, and bending (method page 6)."""

from dataclasses import dataclass

import numpy as np

from ..core.curvature import GEOID_BENDING, GEOID_LENGTH
from ..core.errors import InputError
from ..core.fit import surface_normals
from ..core.geodesy import east_north, is_like_wgs84
from ..core.geoid_slope import GeoidSlope, default_sigma, upright
from ..core.tangent_point import fitted_slopes, stations_extents
from ..core.undulations import SmoothGrid, SurfaceUndulation, library_grid
from ..language.translation import tr
from ..structure.stated_slope import stated_slope

# Whence the slope of the geoid is known.
STATED, FIELD, GRID, EGM96, NOTHING = "stated", "field", "grid", "EGM96", "nothing"


@dataclass(frozen=True)
class FitGeoid:
    """``slope``: the GeoidSlope around one fit; ``source``: of STATED, FIELD, GRID, EGM96, NOTHING; ``reached``: False
    where its grid ends before the fit's points, so that the slope at the stations' centre stands in."""

    slope: GeoidSlope
    source: str
    reached: bool = True


class RunGeoid:
    """The geoid of one run of fits. ``asked``: Request; ``system``: HeightSystem; ``ellipsoid``: of the stations."""

    def __init__(self, asked, system, ellipsoid):
        self._system, self._ellipsoid = system, ellipsoid
        self._stated = stated_slope(asked, system.kind)
        self._typed = asked.number("GEOID_SLOPE_SIGMA")
        if self._stated is not None and self._typed is None:
            raise InputError(
                tr(
                    "GEOID_SLOPE_SIGMA is missing: a stated slope of the geoid needs its standard deviation, without "
                    "which the ellipses of the points would be guessed."
                ),
                keys=("GEOID_SLOPE_SIGMA",),
            )
        if self._typed is not None and self._typed < 0.0:
            raise InputError(tr("GEOID_SLOPE_SIGMA is negative."), keys=("GEOID_SLOPE_SIGMA",))
        wanted = self._stated is None and system.kind not in ("field", "grid") and is_like_wgs84(ellipsoid)
        self._library = SurfaceUndulation(SmoothGrid(library_grid()), 0.25, ellipsoid) if wanted else None

    def around(self, fits, stations, undulations):
        """FitGeoids of SurfaceFits: a list. ``stations``: of each ``lat``, ``lon`` degrees (n,); ``undulations``: of
        these, metres (n,)."""
        found = [None] * len(fits)
        if self._system.kind == "grid":
            found = self._surface_slopes(self._system.along(None, None, self._ellipsoid), fits)
        elif self._library is not None:
            found = self._surface_slopes(self._library, fits)
            if None in found:
                # PROJ has no EGM96 here, or scipy is missing: nothing is known.
                self._library, found = None, [None] * len(fits)
        kept = [[values[fit.search.kept] for values in places] for fit, places in zip(fits, stations)]
        extents = stations_extents(kept, self._ellipsoid).tolist()
        return [self._one(*one) for one in zip(fits, extents, undulations, found)]

    def _one(self, fit, extent, undulation, shown):
        """FitGeoid of one fit. ``extent``: of its kept stations, metres; ``shown``: slope of the surface around it and
        whether it reaches the points, or None."""
        applied = known = upright
        source, reached = NOTHING, True
        if self._stated is not None:
            source, known = STATED, self._steady(self._stated)
        elif self._system.kind == "field":
            source = FIELD
            applied = known = self._of_field(fit, undulation)
        elif self._system.kind == "grid":
            source = GRID
            # A small raster tells no slope by bilinear cells; its values at the stations do.
            applied, reached = shown or (self._of_field(fit, undulation), False)
            known = applied
        elif shown is not None:
            source, (known, reached) = EGM96, shown
        sigma = default_sigma(self._system.kind, self._system.cell, source == EGM96)
        slope = GeoidSlope(
            self._system.kind == "ellipsoidal",
            applied,
            known,
            sigma if self._typed is None else self._typed,
            0.0 if self._system.shows_bending(extent) and reached else _bending(extent, fit.frame),
        )
        return FitGeoid(slope, source, reached)

    @staticmethod
    def _steady(slope):
        return lambda lat, lon: slope

    @staticmethod
    def _of_field(fit, undulation):
        """The plane, or the line, through the stations' own undulations, with the weights of the fit: so the level
        point is that of the heights alone, however the geoid slopes."""
        vector = fitted_slopes(fit, undulation[fit.search.kept]) @ fit.frame.directions

        def slope(lat, lon):
            east, north = east_north(lat, lon)
            return east @ vector, north @ vector

        return slope

    def _surface_slopes(self, source, fits, slope=None):
        """For each fit the slope of a surface from place to place, and True; where it ends, that at the centre, and
        False; None where it does not even reach the centre. All are asked at once, then in halves where one ends."""
        slope = slope or (lambda lat, lon: source.slope(lat, lon, 0.0, 0.0))
        lat, lon = (np.array([getattr(fit.frame, name) for fit in fits]) for name in ("lat", "lon"))
        n = surface_normals(fits)
        upright_lat, upright_lon = np.degrees(
            [np.arctan2(n[:, 2], np.hypot(n[:, 0], n[:, 1])), np.arctan2(n[:, 1], n[:, 0])]
        )
        centre = None
        try:
            centre = slope(lat, lon)
            # The points lie within some kilometres of where the fit itself is upright.
            for up, aside in ((0.0, 0.0), (0.05, 0.05), (0.05, -0.05), (-0.05, 0.05), (-0.05, -0.05)):
                slope(np.clip(upright_lat + up, -90.0, 90.0), upright_lon + aside)
        except InputError:
            if len(fits) > 1:
                half = len(fits) // 2
                return [one for part in (fits[:half], fits[half:]) for one in self._surface_slopes(source, part, slope)]
            return [None if centre is None else (self._steady(tuple(float(v[0]) for v in centre)), False)]
        return [(slope, True)] * len(fits)


def _bending(extent, frame):
    """Standard deviation of each second derivative of N, 1/m: u_N of the curvature factor over R."""
    radius = np.sqrt(frame.ellipsoid.radius_across(frame.lat) * frame.ellipsoid.radius_meridian(frame.lat))
    return float(GEOID_BENDING * GEOID_LENGTH / max(extent, 1.0) / radius)
