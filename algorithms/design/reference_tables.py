"""The reference layer of a fit, and the ellipses of its tangent points."""

import numpy as np
from qgis.core import QgsGeometry, QgsPointXY, QgsWkbTypes

from ..boundary.fields import ELLIPSE, REFERENCE
from ..boundary.output_rows import OutputTable
from ..boundary.points import placed_points
from ..boundary.reference_systems import definition
from ..core.errors import InputError
from ..core.geodesy import datum_name
from ..core.units import metres_per
from ..structure.height_system import undulation_text
from .fit_messages import lies_within, slope_deviation


def reference_table(run, fits, crs, record, style):
    """The references as an OutputTable: a point where the plane or line is level, else at its own place."""
    rows = [_reference_row(run, fit, record) for fit in fits]
    lat, lon = (np.array([_mark(fit)[k] for fit in fits]) for k in (0, 1))
    x, y = _safe_points(fits, lat, lon, crs)
    columns = {name: [row[name] for row in rows] for name in REFERENCE}
    return OutputTable("REFERENCE", columns, crs, QgsWkbTypes.Type.Point, style, points=(x, y))


def _mark(fit):
    if fit.level is not None:
        return fit.level.lat, fit.level.lon
    if fit.tangent.well_determined:
        return fit.tangent.lat, fit.tangent.lon
    return fit.surface.frame.lat, fit.surface.frame.lon


def _safe_points(fits, lat, lon, crs):
    """Map coordinates of the marks; a mark outside the projection's domain goes to the fit's own place."""
    x, y = np.empty(len(fits)), np.empty(len(fits))
    for k, fit in enumerate(fits):
        for place in ((lat[k], lon[k]), (fit.surface.frame.lat, fit.surface.frame.lon)):
            try:
                px, py = placed_points(np.array([place[0]]), np.array([place[1]]), crs)
            except InputError:
                continue
            if np.isfinite(px[0]) and np.isfinite(py[0]):
                x[k], y[k] = px[0], py[0]
                break
    return x, y


def _reference_row(run, fit, record):
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
        datum=datum_name(definition(run.structure.points.crs)),
        azimuth=frame.azimuth,
        slopes="; ".join(f"{run.structure.names[k]} {slope:+.10f}" for k, slope in zip(fit.axes, fit.slopes)),
        sd_h=float(solution.deviations[0]) / unit.height,
        sd_slope=slope_deviation(fit),
        number=int(surface.search.kept.sum()),
        suspected=int(fit.suspected.sum()),
        removed=int(np.sum(~surface.search.kept)),
        rms=surface.rms / unit.height,
        var_factor=float(solution.variance_factor),
        first_date=first or None,
        last_date=last or None,
        global_t="none" if test is None else "passed" if test[3] else "failed",
        record=record.text(),
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
    row.update(_level_columns(run, fit))
    return row


def _level_columns(run, fit):
    inside, outside = "inside", "outside"
    if fit.level is not None:
        level = fit.level
        return {
            "tan_lat": level.lat,
            "tan_lon": level.lon,
            "tan_chain": level.chainage / run.units.chainage,
            "tan_sd": level.sd / run.units.chainage,
            "tan_state": inside if lies_within(run, fit) else outside,
        }
    if not fit.tangent.well_determined:
        return {"tan_state": "poorly determined"}
    spread = float(np.sqrt(max(fit.tangent.covariance[0, 0], fit.tangent.covariance[1, 1])))
    return {
        "tan_lat": fit.tangent.lat,
        "tan_lon": fit.tangent.lon,
        "tan_sd": spread / run.units.chainage,
        "tan_state": inside if fit.inside else outside,
    }


def ellipse_table(run, fits, crs, style):
    """The 95 % ellipses of all well-determined planes as an OutputTable of polygons, true on the ellipsoid."""
    rows, shapes = [], []
    for fit in fits:
        if fit.tangent is None:
            continue
        for kind, ellipse in (("geoid", fit.tangent.geoid), ("levelling", fit.tangent.levelling)):
            if ellipse is None:
                continue
            lat, lon = ellipse.outline(fit.tangent.lat, fit.tangent.lon, run.ellipsoid)
            x, y = placed_points(lat, lon, crs)
            if not np.all(np.isfinite(x + y)):
                continue
            shapes.append(QgsGeometry.fromPolygonXY([[QgsPointXY(a, b) for a, b in zip(x.tolist(), y.tolist())]]))
            metre = metres_per(run.units.chainage_name)
            rows.append(
                {
                    "name": fit.name,
                    "kind": kind,
                    "semi_a": ellipse.semi_a / metre,
                    "semi_b": ellipse.semi_b / metre,
                    "azimuth": ellipse.azimuth,
                }
            )
    columns = {name: [row[name] for row in rows] for name in ELLIPSE}
    return OutputTable("ELLIPSE", columns, crs, QgsWkbTypes.Type.Polygon, style, shapes=shapes)
