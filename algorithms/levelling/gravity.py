"""The gravity correction of levelled lines: latitudes of their ends, heights above the sea, and what it comes to."""

from dataclasses import dataclass, replace

import numpy as np
from qgis.core import QgsWkbTypes

from ..boundary.input_fields import named_field
from ..boundary.points import read_points
from ..core.errors import InputError
from ..core.normal_gravity import normal_orthometric_correction
from ..language.translation import tr
from ..structure.named_points import NAMES


@dataclass(frozen=True)
class Gravity:
    """Of the lines of a net (n,), metres: ``correction``, added to each, NaN where it cannot be told; ``applied``: True
    where the net holds it. ``datum_height``: of the heights' zero above the sea, metres."""

    applied: bool
    correction: np.ndarray
    datum_height: float = 0.0


def with_gravity(asked, lines, benchmarks, named, unit):
    """LevelInput whose differences are corrected where GRAVITY is 'normal', and its Gravity.

    ``unit``: metres per unit of heights. InputError where a line's latitudes or height above the sea are not known.
    """
    zero = (asked.number("DATUM_HEIGHT") or 0.0) * unit
    applied = asked.choice("GRAVITY") == "normal"
    net = lines.net
    latitudes = _latitudes(asked, named, net.names, from_benchmarks=applied)
    index = {name: k for k, name in enumerate(net.names)}
    given = {index[name]: mark.height for name, mark in benchmarks.items() if name in index}
    heights = net.approximate_heights(given) + zero
    if applied:
        _check(asked, lines, latitudes, heights)
    correction = np.full(len(net), np.nan)
    mean = 0.5 * (heights[net.start] + heights[net.end])
    known = np.isfinite(latitudes[net.start] + latitudes[net.end] + mean)
    if not applied:
        # Only to say where it would matter: heights that are none of the sea's are no reason to stop.
        known &= np.abs(np.nan_to_num(mean)) < 9000.0
        known &= mean > -1000.0
    correction[known] = normal_orthometric_correction(
        latitudes[net.start[known]], latitudes[net.end[known]], mean[known]
    )
    if applied:
        lines = replace(lines, net=replace(net, difference=net.difference + correction))
    return lines, Gravity(applied, correction, zero)


def _latitudes(asked, named, names, *, from_benchmarks):
    """Latitude of each point of the net, degrees (p,): of STATIONS, else of BENCHMARKS where these are points; NaN.

    ``from_benchmarks``: whether these are read for it, which their places must stand.
    """
    found = {}
    source = asked.optional_source("BENCHMARKS") if from_benchmarks else None
    if source is not None and QgsWkbTypes.geometryType(source.wkbType()) == QgsWkbTypes.GeometryType.PointGeometry:
        field = named_field(source, asked.text("BENCHMARK_FIELD"), "BENCHMARK_FIELD", (*NAMES, "benchmark"))
        points = read_points(source, asked.feedback, texts={"name": field})
        found.update(zip(points.columns["name"], points.lat.tolist()))
    if named is not None:
        found.update((name, float(named.points.lat[row])) for name, row in named.place.items())
    return np.array([found.get(name, np.nan) for name in names])


def _check(asked, lines, latitudes, heights):
    net = lines.net
    if not np.any(np.isfinite(latitudes)):
        raise InputError(
            tr(
                "GRAVITY 'normal' needs the latitudes of the points: give them as STATIONS, points with the names of "
                "the net."
            ),
            keys=("STATIONS", "GRAVITY"),
        )
    for bad, text, keys in (
        (
            np.isnan(latitudes),
            tr(
                "Layer '{}', row {}: the point '{}' is not among STATIONS, and GRAVITY 'normal' needs the latitude of "
                "every point."
            ),
            ("STATIONS", "GRAVITY"),
        ),
        (
            np.isnan(heights),
            tr(
                "Layer '{}', row {}: the point '{}' reaches no benchmark, and GRAVITY 'normal' needs heights above the "
                "sea."
            ),
            ("BENCHMARKS", "GRAVITY"),
        ),
    ):
        lacking = np.flatnonzero(bad[net.start] | bad[net.end])
        if len(lacking):
            line = int(lacking[0])
            point = net.start[line] if bad[net.start[line]] else net.end[line]
            raise InputError(text.format(lines.source.sourceName(), lines.used[line] + 1, net.names[point]), keys=keys)
