"""The reference layer of a fit, and the ellipses of its tangent and level points."""

import numpy as np
from qgis.core import QgsGeometry, QgsPointXY, QgsWkbTypes

from ..boundary.fields import ELLIPSE, REFERENCE, REFERENCE_LINE
from ..boundary.output_rows import OutputTable
from ..boundary.points import placed_points
from ..boundary.reference_systems import definition
from ..core.errors import InputError
from ..core.geodesy import datum_name
from ..core.tangent_point import LinePlace
from ..core.units import metres_per
from ..structure.height_system import undulation_text
from .fit_messages import slope_deviation


def reference_table(run, fits, crs, record, style):
    """The references as an OutputTable: of each the level point and the tangent point, in this order, those that are
    well determined; else its own place."""
    datum = datum_name(definition(run.structure.points.crs))
    told = record.text()
    rows = [_reference_row(run, fit, told, datum) for fit in fits]
    shapes = [QgsGeometry.fromMultiPointXY(points) for points in _marks(fits, crs)]
    names = (*REFERENCE[:-1], *REFERENCE_LINE, REFERENCE[-1]) if run.line.judged else REFERENCE
    columns = {name: [row[name] for row in rows] for name in names}
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


def _reference_row(run, fit, told, datum):
    surface, frame, unit, solution = fit.surface, fit.surface.frame, run.units, fit.surface.solution
    normal = surface.plane.normal
    first, last = run.dates(run.structure.feet.station[fit.rows])
    test = solution.global_test
    row = dict.fromkeys(REFERENCE)
    row.update(
        name=fit.name,
        kind=fit.kind,
        axes="; ".join(run.structure.names[k] for k in fit.axes),
        lat0=frame.lat,
        lon0=frame.lon,
        h0=surface.height / unit.height,
        nx=float(normal[0]),
        ny=float(normal[1]),
        nz=float(normal[2]),
        h_unit=unit.height_name,
        h_system="ellipsoidal" if run.system.kind == "ellipsoidal" else "above the geoid",
        undul=undulation_text(run.system),
        datum=datum,
        azimuth=frame.azimuth,
        slopes="; ".join(f"{run.structure.names[k]} {slope:+.10f}" for k, slope in zip(fit.axes, fit.slopes)),
        sd_h=float(solution.deviations[0]) / unit.height,
        sd_slope=slope_deviation(fit),
        number=int(surface.search.kept.sum()),
        suspected=int(fit.upwards.suspected.sum()),
        removed=int(np.sum(~surface.search.kept)),
        rms=surface.rms / unit.height,
        var_factor=float(solution.variance_factor),
        first_date=first or None,
        last_date=last or None,
        global_t="none" if test is None else "passed" if test[3] else "failed",
        record=told,
    )
    if fit.straightness is not None:
        s = fit.straightness
        for name, value in (
            ("str_vert", s.vertical.rms),
            ("rng_vert", s.vertical.range),
            ("str_lat", s.lateral.rms),
            ("rng_lat", s.lateral.range),
            ("str_comb", s.combined.rms),
            ("max_comb", s.combined.range),
            ("zon_vert", s.vertical_zone),
            ("zon_lat", s.lateral_zone),
            ("zon_cyl", s.cylinder),
        ):
            row[name] = value / unit.height
    for name, place, inside in zip(("tan", "lev"), (fit.tangent, fit.level), fit.inside):
        row.update(_point_columns(run, name, place, inside))
    row.update(run.line.reference(fit, run))
    return row


def _point_columns(run, name, place, inside):
    """Columns of one of the two points: ``name`` is 'tan' or 'lev'."""
    if not is_known(place):
        return {f"{name}_state": "poorly determined"}
    line = isinstance(place, LinePlace)
    return {
        f"{name}_lat": place.lat,
        f"{name}_lon": place.lon,
        f"{name}_chain": place.chainage / run.units.chainage if line else None,
        f"{name}_sd": (place.sd if line else place.deviation) / run.units.chainage,
        f"{name}_state": "inside" if inside else "outside",
    }


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
