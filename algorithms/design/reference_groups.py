"""What is fitted together: each axis or leg as a line, or the axes of a group as a plane; and the result of a fit."""

from dataclasses import dataclass, field
from typing import Optional, Union

import numpy as np

from ..core.errors import InputError
from ..core.fit import Heights, SurfaceFit, check_spread, fit_surface, line_frames, plane_frame, surface_normals
from ..core.geodesy import east_north, foot_and_normal
from ..core.lateral_fit import LateralFit
from ..core.least_squares import suspected_step
from ..core.legs import LEAST_ON_LEG, rows_on
from ..core.many_lines import fit_lines
from ..core.segments import Segments, joined
from ..core.straightness import Straightness, straightness_of_lines
from ..core.tangent_point import LinePlace, SurfacePoint, places_of_lines, plane_points
from ..language.core_sentences import worded
from ..language.translation import tr
from .fit_geoid import FitGeoid
from .height_accuracies import levelling_arms
from .tested_part import TestedPart, tested_parts

SAME_PLACE = 0.01


@dataclass(frozen=True)
class Step:
    """A step along an arm: all stations from ``chainage`` on are shifted against those before; ``value``: its T."""

    axis: int
    chainage: float
    value: float


@dataclass(frozen=True)
class Fit:
    """A fitted line or plane. ``axes``: indices; ``all_rows``: output rows it tells of, and ``at`` the index of each
    into the fit's own rows (a corner listed twice is fitted once); ``upwards``: what the tests found in the heights;
    ``line``, ``sideways``: the same fit in plan and what its tests found, None where it is not asked for. ``tangent``:
    where it is tangent to the ellipsoid, ``level``: where it lies in the horizon; ``inside``: of both in that order,
    True within the stations.
    """

    name: str
    kind: str
    axes: tuple
    surface: SurfaceFit
    rows: np.ndarray
    all_rows: np.ndarray
    at: np.ndarray
    upwards: TestedPart
    slopes: tuple
    tangent: Union[SurfacePoint, LinePlace]
    level: Union[SurfacePoint, LinePlace]
    inside: tuple
    geoid: FitGeoid
    straightness: Optional[Straightness] = None
    step: Optional[Step] = None
    arms_apart: int = 0
    line: Optional[LateralFit] = None
    sideways: Optional[TestedPart] = None


@dataclass(frozen=True)
class Group:
    """Rows to be fitted together. ``stretch``: of a line, metres of chainage."""

    name: str
    kind: str
    axes: tuple
    rows: np.ndarray
    all_rows: np.ndarray = field(repr=False)
    at: np.ndarray = field(repr=False)
    stretch: object = None

    def named(self, run, function, *given, **options):
        """What ``function`` gives; an InputError of it names the axis or group, in the units of the ``run``."""
        try:
            return function(*given, **options)
        except InputError as error:
            kind, reason = tr("Plane") if self.kind == "plane" else tr("Line"), worded(error, units=run.units)
            raise error.reworded(tr("{} '{}': {}").format(kind, self.name, reason)) from None

    def observed(self, run, station, lat, lon, height, undulation, covariance):
        """The Heights of the rows of ``run``, and its sections: see fit.fit_surface. The arrays: of its rows, see
        SurveyedHeights.pieces."""
        sections, datums = (), None
        if covariance is None:
            covariance, sections, datums = self._accuracy(run, self.rows, station)
        return Heights(lat, lon, height + undulation, covariance, run.accuracies.known, datums), sections

    def plane_frame(self, run, heights):
        """Frame of a plane through Heights; InputError where they determine none."""
        check_spread(heights.lat, heights.lon, run.ellipsoid)
        return plane_frame(heights.lat, heights.lon, run.ellipsoid)

    def _accuracy(self, run, rows, station):
        if not run.accuracies.by_arms:
            return run.accuracies.covariance(station, None, None), (), None
        index = np.searchsorted(self.axes, run.structure.feet.axis[rows])
        arms, distances, datums = levelling_arms([run.axes[k] for k in self.axes], index, run.chainage[rows])
        covariance = run.accuracies.covariance(station, arms, distances)
        outwards = np.lexsort((distances, arms))
        sections = tuple(np.split(outwards, np.flatnonzero(np.diff(arms[outwards])) + 1))
        return covariance, sections, datums if datums.max() > 0 else None


@dataclass(frozen=True)
class _Surface:
    """A group with its surface fitted. ``heights``: of its rows; ``sections``: see fit.fit_surface."""

    group: Group
    fit: SurfaceFit
    heights: Heights
    sections: tuple

    @property
    def stations(self):
        """Latitudes and longitudes of the rows, degrees."""
        return self.heights.lat, self.heights.lon

    def found(self, run, line, geoid, more, slopes, upwards, sideways):
        """The Fit. ``line``: LateralFit or None; ``geoid``: FitGeoid; ``more``: the points found; ``slopes``: along its
        axes; ``upwards``, ``sideways``: TestedPart, the latter None without a line."""
        group, rows, datums = self.group, self.group.rows, self.heights.datums
        return Fit(
            group.name,
            group.kind,
            group.axes,
            self.fit,
            rows,
            group.all_rows,
            group.at,
            upwards,
            slopes,
            step=_step(run, rows, self.fit, self.sections),
            arms_apart=0 if datums is None else int(datums.max()),
            geoid=geoid,
            line=line,
            sideways=sideways,
            **more,
        )


def fitted_groups(run, groups, *, remove, robust):
    """Fits of all groups: a list of Fit. What many lines share is computed once for all, since a run may have thousands
    of axes."""
    surfaces = _surfaces(run, groups, remove=remove, robust=robust)
    geoids = run.geoid.around(
        [one.fit for one in surfaces], [one.stations for one in surfaces], [run.n[one.group.rows] for one in surfaces]
    )
    lines = run.line.fitted(run, groups, remove=remove, robust=robust)
    points = (_plane_points if groups[0].kind == "plane" else _line_points)(run, surfaces, geoids, lines)
    slopes = _slopes(run, surfaces)
    rows = [one.group.rows for one in surfaces]
    along = [run.structure.feet.axis[own] for own in rows], [run.chainage[own] for own in rows]
    upwards = tested_parts([one.fit.search for one in surfaces], *along)
    sideways = lines if lines[0] is None else tested_parts([line.search for line in lines], *along)
    every = zip(surfaces, lines, geoids, points, slopes, upwards, sideways)
    return [one.found(run, *more) for one, *more in every]


def _surfaces(run, groups, *, remove, robust):
    """The _Surface of each group."""
    pieces = zip(groups, *run.pieces([group.rows for group in groups]))
    observed = [group.named(run, group.observed, run, *own) for group, *own in pieces]
    heights, sections = zip(*observed)

    def fitted(number, *given, **options):
        run.asked.check_cancel()
        return groups[number].named(run, fit_surface, *given, **options)

    if groups[0].kind == "plane":
        frames = [group.named(run, group.plane_frame, run, one) for group, one in zip(groups, heights)]
        options = {"remove": remove, "robust": robust}
        fits = [
            fitted(k, *one, sections=own, **options) for k, (*one, own) in enumerate(zip(frames, heights, sections))
        ]
    else:
        middles = np.array([0.5 * (group.stretch.first + group.stretch.last) for group in groups])
        frames = line_frames([run.axes[group.axes[0]] for group in groups], middles)
        fits = fit_lines(frames, heights, remove=remove, robust=robust, sections=sections, fitted=fitted)
    return [_Surface(*one) for one in zip(groups, fits, heights, sections)]


def _plane_points(run, surfaces, geoids, _lines):
    """Tangent and level point of each plane, and whether they lie among the stations: a list of dicts."""
    points = []
    for one, geoid in zip(surfaces, geoids):
        found = plane_points(one.fit, *one.stations, geoid.slope)
        inside = tuple(
            _inside(place.lat, place.lon, *one.stations, run.ellipsoid) for place in (found.tangent, found.level)
        )
        points.append({"tangent": found.tangent, "level": found.level, "inside": inside})
    return points


def _line_points(run, surfaces, geoids, lines):
    """The same of each line, and its straightness. ``lines``: of each its LateralFit, or None."""
    fits, spans = [one.fit for one in surfaces], [one.group.stretch for one in surfaces]
    found = places_of_lines(
        fits,
        [run.axes[one.group.axes[0]] for one in surfaces],
        np.array([0.5 * (span.first + span.last) for span in spans]),
        [one.stations for one in surfaces],
        [geoid.slope for geoid in geoids],
    )
    kept = [one.fit.search.kept for one in surfaces]
    straight = straightness_of_lines(
        fits, [(one.heights.lat[k], one.heights.lon[k], one.heights.height[k]) for one, k in zip(surfaces, kept)], lines
    )
    legs = Segments([len(one.group.rows) for one in surfaces])
    low, size = legs.range(run.chainage[joined([one.group.rows for one in surfaces])])
    points = []
    for places, straightness, first, last in zip(found, straight, low.tolist(), (low + size).tolist()):
        inside = tuple(first <= place.chainage <= last for place in (places.tangent, places.level))
        points.append(
            {"tangent": places.tangent, "level": places.level, "inside": inside, "straightness": straightness}
        )
    return points


def groups_of_lines(run):
    """A Group for each axis that has stations with heights, or for each of its legs with at least four."""
    groups, rows_of = [], run.rows_of_axes(run.usable)
    several = max(len(rows) for rows in rows_of) > 1
    for axis, rows, stretches, number in zip(run.axes, rows_of, run.stretches(rows_of), range(len(rows_of))):
        if not len(rows):
            run.asked.say(tr("Axis '{}': no station with a height belongs to it.").format(axis.line.name))
            continue
        if len(rows) == 1 and several:
            run.asked.warn(
                tr("Axis '{}': 1 station with a height; a line needs 2 and was not fitted.").format(axis.line.name)
            )
            continue
        s = run.chainage[rows]
        for stretch in stretches:
            mine = rows[rows_on(stretch, s)]
            name = axis.line.name if not stretch.leg else tr("{}, leg {}").format(axis.line.name, stretch.leg)
            if stretch.leg and len(mine) < LEAST_ON_LEG:
                run.asked.warn(
                    tr("{}: {} stations with heights; a leg needs {} and was not fitted.").format(
                        name, len(mine), LEAST_ON_LEG
                    )
                )
                continue
            groups.append(Group(name, "line", (number,), mine, mine, np.arange(len(mine)), stretch))
    return _some(groups)


def groups_of_axes(run):
    """A Group for each group of axes that has stations with heights."""
    names = {}
    for number, axis in enumerate(run.structure.axes):
        names.setdefault(run.group_name(axis), []).append(number)
    groups, rows_of = [], run.rows_of_axes(run.usable)
    for name, members in names.items():
        present = tuple(k for k in members if len(rows_of[k]))
        if not present:
            continue
        rows = np.sort(np.concatenate([rows_of[k] for k in present]))
        kept, at = _counted_once(run, rows)
        title = name or (run.structure.names[present[0]] if len(present) == 1 else tr("common plane"))
        groups.append(Group(title, "plane", present, rows[kept], rows, at))
    return _some(groups)


def _some(groups):
    if not groups:
        raise InputError(tr("Nothing can be fitted: no axis or leg has enough stations with heights."))
    return groups


def _counted_once(run, rows):
    """Indices of the rows that count, and for each row the place of its like among these: one station on two axes, or a
    corner that both arms list with the same reading, counts once."""
    if len(np.unique(run.structure.feet.axis[rows])) == 1:
        return np.arange(len(rows)), np.arange(len(rows))
    points, station = run.structure.points, run.structure.feet.station[rows]
    feet = foot_and_normal(points.lat[station], points.lon[station], run.ellipsoid)[0]
    kept, at = [], np.empty(len(rows), int)
    seen = {}
    for k, (place, height) in enumerate(zip(feet, run.height[rows].tolist())):
        cell = tuple(np.floor(place / (4 * SAME_PLACE)).astype(int).tolist())
        near = [
            j
            for dx in (-1, 0, 1)
            for dy in (-1, 0, 1)
            for dz in (-1, 0, 1)
            for j in seen.get((cell[0] + dx, cell[1] + dy, cell[2] + dz), ())
            if np.linalg.norm(feet[kept[j]] - place) <= SAME_PLACE
            and run.height[rows[kept[j]]] == height
            and run.structure.feet.axis[rows[kept[j]]] != run.structure.feet.axis[rows[k]]
        ]
        if near:
            at[k] = near[0]
            continue
        at[k] = len(kept)
        seen.setdefault(cell, []).append(len(kept))
        kept.append(k)
    return np.array(kept, int), at


def _step(run, rows, surface, sections):
    """The step suspected along an arm, None without one or without levelled correlation."""
    found = suspected_step(surface.search.fitted, sections) if sections else None
    if found is None:
        return None
    value, row = found
    return Step(int(run.structure.feet.axis[rows[row]]), float(run.chainage[rows[row]]), value)


def _slopes(run, surfaces):
    """Slopes of each fitted surface along its axes at their origins, without unit: a list of tuples. Against the
    ellipsoid's horizon there, which stands for the level surface where the heights know no other: see
    HeightSystem.knows_ellipsoid."""
    counts = [len(one.group.axes) for one in surfaces]
    lines = [run.axes[k].line for one in surfaces for k in one.group.axes]
    lat, lon, turn = (
        np.array([getattr(line, name)[0] for line in lines], float) for name in ("lat", "lon", "azimuths")
    )
    east, north = east_north(lat, lon)
    turn = np.radians(turn)[:, None]
    ahead, up = np.sin(turn) * east + np.cos(turn) * north, foot_and_normal(lat, lon, run.ellipsoid)[1]
    n = np.repeat(surface_normals([one.fit for one in surfaces]), counts, axis=0)
    slopes = iter((-np.einsum("ij,ij->i", n, ahead) / np.einsum("ij,ij->i", n, up)).tolist())
    return [tuple(next(slopes) for _ in range(count)) for count in counts]


def _inside(lat, lon, station_lat, station_lon, ellipsoid):
    """True where a place lies within the convex hull of the stations in plan."""
    feet, origin = foot_and_normal(station_lat, station_lon, ellipsoid)[0], foot_and_normal(lat, lon, ellipsoid)[0]
    east, north = east_north(lat, lon)
    x, y = (feet - origin) @ east, (feet - origin) @ north
    turn = np.sort(np.arctan2(y, x))
    # Inside, the stations are seen all around: no gap between their directions is half a turn wide.
    gaps = np.diff(np.concatenate([turn, turn[:1] + 2.0 * np.pi]))
    return bool(gaps.max() < np.pi)
