"""The reference layer of a fit, and the ellipses of its tangent and level points."""

import numpy as np
from qgis.core import QgsGeometry, QgsPointXY, QgsWkbTypes

from ..boundary.fields import ELLIPSE, REFERENCE, REFERENCE_LINE
from ..boundary.output_rows import OutputTable
from ..boundary.points import placed_points
from ..boundary.reference_systems import definition
from ..core.errors import InputError
from ..core.fit import unit_normals
from ..core.geodesy import datum_name
from ..core.segments import Segments, joined
from ..core.tangent_point import LinePlace
from ..core.units import metres_per
from ..structure.height_system import undulation_text
from .fit_messages import leading_covariances, slope_deviations


def reference_table(run, fits, crs, record, style):
    """The references as an OutputTable: of each the level point and the tangent point, in this order, those that are
    well determined; else its own place."""
    datum = datum_name(definition(run.structure.points.crs))
    shapes = [QgsGeometry.fromMultiPointXY(points) for points in _marks(fits, crs)]
    names = (*REFERENCE[:-1], *REFERENCE_LINE, REFERENCE[-1]) if run.line.judged else REFERENCE
    found = {
        **_surface_columns(run, fits, datum),
        **_straightness_columns(fits, run.units),
        **_point_columns(run, "tan", [(fit.tangent, fit.inside[0]) for fit in fits]),
        **_point_columns(run, "lev", [(fit.level, fit.inside[1]) for fit in fits]),
        **_line_columns(run, fits),
        "record": [record.text()] * len(fits),
    }
    columns = {name: found.get(name, [None] * len(fits)) for name in names}
    return OutputTable("REFERENCE", columns, crs, QgsWkbTypes.Type.MultiPoint, style, shapes=shapes)


def _marks(fits, crs):
    """Map coordinates of the marks of each fit; in one call where all lie in the projection's domain."""
    places = [[one for one in (fit.level, fit.tangent) if is_known(one)] or [fit.surface.frame] for fit in fits]
    every = [one for some in places for one in some]
    try:
        x, y = placed_points(np.array([one.lat for one in every]), np.array([one.lon for one in every]), crs)
        if np.all(np.isfinite(x + y)):
            points = iter([QgsPointXY(*at) for at in zip(x.tolist(), y.tolist())])
            return [[next(points) for _ in some] for some in places]
    except InputError:
        pass  # One is outside: each by itself.
    return [[_safe_point(one, fit.surface.frame, crs) for one in some] for fit, some in zip(fits, places)]


def _safe_point(place, own, crs):
    """Map coordinates of a mark; one outside the projection's domain goes to the fit's own place."""
    for one in (place, own):
        try:
            x, y = placed_points(np.array([one.lat]), np.array([one.lon]), crs)
        except InputError:
            continue
        if np.isfinite(x[0]) and np.isfinite(y[0]):
            return QgsPointXY(float(x[0]), float(y[0]))
    return QgsPointXY()


def is_known(place):
    """True for a place of a line, and for one of a plane that is well determined."""
    return isinstance(place, LinePlace) or place.well_determined


def _surface_columns(run, fits, datum):
    """Columns of the surfaces themselves: where they are, how they slope, and what their tests found."""
    unit, names, surfaces = run.units, run.structure.names, [fit.surface for fit in fits]
    frames, solutions = [one.frame for one in surfaces], [one.solution for one in surfaces]
    legs, kept = Segments([len(fit.rows) for fit in fits]), joined([one.search.kept for one in surfaces])
    suspected = joined([fit.upwards.suspected for fit in fits])
    dates = [run.dates(run.structure.feet.station[fit.rows]) for fit in fits]
    covariances, tests = leading_covariances(fits), [solution.global_test for solution in solutions]
    system = "ellipsoidal" if run.system.kind == "ellipsoidal" else "above the geoid"
    same = {"h_unit": unit.height_name, "h_system": system, "undul": undulation_text(run.system), "datum": datum}
    return {
        "name": [fit.name for fit in fits],
        "kind": [fit.kind for fit in fits],
        "axes": ["; ".join(names[k] for k in fit.axes) for fit in fits],
        "lat0": [frame.lat for frame in frames],
        "lon0": [frame.lon for frame in frames],
        "h0": [one.height / unit.height for one in surfaces],
        **dict(zip(("nx", "ny", "nz"), unit_normals(surfaces).T)),
        **{name: [value] * len(fits) for name, value in same.items()},
        "azimuth": [frame.azimuth for frame in frames],
        "slopes": ["; ".join(f"{names[k]} {g:+.10f}" for k, g in zip(fit.axes, fit.slopes)) for fit in fits],
        "sd_h": np.sqrt(covariances[:, 0, 0]) / unit.height,
        "sd_slope": slope_deviations(covariances),
        "number": legs.sums(kept.astype(int)),
        "suspected": legs.sums(suspected.astype(int)),
        "removed": legs.sums((~kept).astype(int)),
        "rms": [one.rms / unit.height for one in surfaces],
        "var_factor": [float(solution.variance_factor) for solution in solutions],
        "first_date": [first or None for first, _ in dates],
        "last_date": [last or None for _, last in dates],
        "global_t": ["none" if test is None else "passed" if test[3] else "failed" for test in tests],
    }


def _straightness_columns(fits, unit):
    """Columns of the straightness of lines, {} for planes; ``unit``: the run's Units."""
    if fits[0].straightness is None:
        return {}
    every = [fit.straightness for fit in fits]
    values = {
        "str_vert": [s.vertical.rms for s in every],
        "rng_vert": [s.vertical.range for s in every],
        "str_lat": [s.lateral.rms for s in every],
        "rng_lat": [s.lateral.range for s in every],
        "str_comb": [s.combined.rms for s in every],
        "max_comb": [s.combined.range for s in every],
        "zon_vert": [s.vertical_zone for s in every],
        "zon_lat": [s.lateral_zone for s in every],
        "zon_cyl": [s.cylinder for s in every],
    }
    return {name: np.array(column) / unit.height for name, column in values.items()}


def _point_columns(run, name, found):
    """Columns of one of the two points, ``name`` 'tan' or 'lev'; ``found``: of each fit its place, and whether that is
    inside."""
    rows = [_point_row(run.units.chainage, *one) for one in found]
    return dict(zip((f"{name}_{part}" for part in ("lat", "lon", "chain", "sd", "state")), zip(*rows)))


def _point_row(metres, place, inside):
    if not is_known(place):
        return None, None, None, None, "poorly determined"
    line = isinstance(place, LinePlace)
    chainage, deviation = (place.chainage / metres, place.sd) if line else (None, place.deviation)
    return place.lat, place.lon, chainage, deviation / metres, "inside" if inside else "outside"


def _line_columns(run, fits):
    """Columns of the lines in plan, {} where they are not judged."""
    rows = [run.line.reference(fit, run) for fit in fits] if run.line.judged else []
    return {name: [row.get(name) for row in rows] for name in REFERENCE_LINE} if rows else {}


def ellipse_table(run, fits, crs, style):
    """The 95 % ellipses of the well-determined points of planes: an OutputTable of polygons, true on the ellipsoid."""
    rows, shapes, metre = [], [], metres_per(run.units.chainage_name)
    for fit in fits:
        if fit.kind != "plane":
            continue
        found = [(kind, place) for kind, place in (("tangent", fit.tangent), ("level", fit.level)) if is_known(place)]
        # The wider one first, so that it does not cover the other.
        for kind, place in sorted(found, key=lambda one: -one[1].ellipse.semi_a):
            lat, lon = place.ellipse.outline(place.lat, place.lon, run.ellipsoid)
            x, y = placed_points(lat, lon, crs)
            if not np.all(np.isfinite(x + y)):
                continue
            shapes.append(QgsGeometry.fromPolygonXY([[QgsPointXY(a, b) for a, b in zip(x.tolist(), y.tolist())]]))
            rows.append(
                {
                    "name": fit.name,
                    "kind": kind,
                    "semi_a": place.ellipse.semi_a / metre,
                    "semi_b": place.ellipse.semi_b / metre,
                    "azimuth": place.ellipse.azimuth,
                }
            )
    columns = {name: [row[name] for row in rows] for name in ELLIPSE}
    return OutputTable("ELLIPSE", columns, crs, QgsWkbTypes.Type.Polygon, style, shapes=shapes)
