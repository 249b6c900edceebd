"""Rebuild the three sample scenarios: range, tank and track.

    /usr/bin/python3 sample_layers/make_samples.py [--no-imagery] [FOLDER]

Writes ``axis.gpkg``, ``heights.csv`` (its column types in ``heights.csvt``), ``expected.json`` and ``imagery.tif`` into
one folder per scenario, below FOLDER (default: the folder of this file). Everything in it is invented; seeds are fixed,
so a second run gives the same bytes of list and expected results.
Needs numpy, scipy, pyproj, mpmath and GDAL; no network.

The expected results are a check on the plugin, so nothing of the plugin is imported. Positions come from pyproj's
geodesics, design heights from 50-digit arithmetic (mpmath) by these formulas:

- chainage s and offset y to a position: sigma = s / (1 + h_c / R_m) along the geodesic from the first vertex, then
  y / (1 + h_c / R_q) along the geodesic to the right of it; h_c the chainage height, R_m and R_q Euler's radii along
  and across the axis at its middle, 1/R = cos^2(azimuth)/M + sin^2(azimuth)/nu;
- a plane through P with unit normal n has above the foot point F (h = 0, unit ellipsoid normal u) the ellipsoidal
  height h = n.(P - F) / (n.u), and the height above the geoid H = h - N;
- inclined design: N against s in a least-squares straight line over the axis' own stations within 500 m of control A
  gives the geoid's slope g; the horizon at A along the axis is t0 turned up by atan(g); t is that turned up by
  atan(SLOPE); the normal is c x t with c = t0 x u level across;
- level: constant. Grade: h_A + SLOPE (s - s_A);
- line of the range's runs: each station X = F + h u in space, h its height (the design's where it was not read), seen
  along and across the level direction half-way between the first and the last; the line runs through the mean of those
  that were read, across the direction in which they scatter least (the lesser eigenvector of their sums of squares);
  the lateral departure is the distance from it, positive right looking up-chainage.
"""

import csv
import json
import math
import os
import sys
from dataclasses import dataclass
from pathlib import Path

import mpmath as mp
import numpy as np
from osgeo import gdal, ogr, osr
from pyproj import CRS, Geod, Transformer

mp.mp.dps = 50
gdal.UseExceptions()
ogr.UseExceptions()
FOOT = 0.3048
# Without it every rebuild of axis.gpkg would differ by the time written into it.
gdal.SetConfigOption("OGR_CURRENT_DATE", "2025-06-01T00:00:00.000Z")

AXIS_FIELDS = ("design", "chain_a", "height_a", "chain_b", "height_b", "slope", "tolerance", "chain_h", "chain_0")


# ------------------------------------------------------------------------------------------------------ geometry


@dataclass(frozen=True)
class Ellipsoid:
    """Semi-major axis in metres and inverse flattening, as text so that no digit is lost in a float."""

    name: str
    a: str
    rf: str

    @property
    def geod(self):
        return Geod(a=float(self.a), rf=float(self.rf))

    @property
    def e2(self):
        f = 1 / mp.mpf(self.rf)
        return f * (2 - f)

    def radius(self, latitude, azimuth):
        """Euler's radius (m) at ``latitude`` in ``azimuth``, both in degrees."""
        a, e2, sin2 = float(self.a), float(self.e2), math.sin(math.radians(latitude)) ** 2
        nu, meridian = a / math.sqrt(1 - e2 * sin2), a * (1 - e2) / (1 - e2 * sin2) ** 1.5
        azimuth = math.radians(azimuth)
        return 1 / (math.cos(azimuth) ** 2 / meridian + math.sin(azimuth) ** 2 / nu)

    def foot_and_normal(self, latitude, longitude):
        """Earth-centred foot point (h = 0) and unit ellipsoid normal, 50 digits; degrees in."""
        phi, lam = mp.radians(mp.mpf(latitude)), mp.radians(mp.mpf(longitude))
        normal = mp.matrix([mp.cos(phi) * mp.cos(lam), mp.cos(phi) * mp.sin(lam), mp.sin(phi)])
        nu = mp.mpf(self.a) / mp.sqrt(1 - self.e2 * mp.sin(phi) ** 2)
        return mp.matrix([nu * normal[0], nu * normal[1], nu * (1 - self.e2) * normal[2]]), normal


WGS84 = Ellipsoid("WGS 84", "6378137", "298.257223563")
GRS80 = Ellipsoid("GRS 1980", "6378137", "298.257222101")


def dot(p, q):
    return p[0] * q[0] + p[1] * q[1] + p[2] * q[2]


def cross(p, q):
    return mp.matrix([p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]])


def unit(p):
    return p / mp.sqrt(dot(p, p))


def direction(latitude, longitude, azimuth):
    """Unit vector in the ellipsoid's horizon at (latitude, longitude) towards ``azimuth``; degrees."""
    phi, lam, az = (mp.radians(mp.mpf(value)) for value in (latitude, longitude, azimuth))
    north = mp.matrix([-mp.sin(phi) * mp.cos(lam), -mp.sin(phi) * mp.sin(lam), mp.cos(phi)])
    east = mp.matrix([-mp.sin(lam), mp.cos(lam), mp.mpf(0)])
    return mp.cos(az) * north + mp.sin(az) * east


def plane_height(ellipsoid, point, normal, latitude, longitude):
    """Ellipsoidal height (m) of the plane above (latitude, longitude)."""
    foot, up = ellipsoid.foot_and_normal(latitude, longitude)
    return dot(normal, point - foot) / dot(normal, up)


@dataclass(frozen=True)
class Axis:
    """One leg between two vertices (layer CRS); ``chain_h`` and ``chain_0``, the chainage of its origin, in metres."""

    name: str
    vertices: tuple
    crs: str
    ellipsoid: Ellipsoid
    chain_h: float
    chain_0: float = 0.0

    def inverse(self):
        """Latitude, longitude, azimuth at the origin, length on the ellipsoid, scale factors along and across."""
        projected = CRS.from_user_input(self.crs)
        to_geographic = Transformer.from_crs(projected, projected.geodetic_crs, always_xy=True)
        (lon_0, lat_0), (lon_1, lat_1) = (to_geographic.transform(*vertex) for vertex in self.vertices)
        azimuth, _, length = self.ellipsoid.geod.inv(lon_0, lat_0, lon_1, lat_1)
        lon_m, lat_m, back = self.ellipsoid.geod.fwd(lon_0, lat_0, azimuth, length / 2)
        along = 1 + self.chain_h / self.ellipsoid.radius(lat_m, back + 180)
        across = 1 + self.chain_h / self.ellipsoid.radius(lat_m, back + 90)
        return lat_0, lon_0, azimuth, length, along, across

    def position(self, chainage, offset):
        """Latitude and longitude (degrees) of a chainage and an offset in metres."""
        lat_0, lon_0, azimuth, _, along, across = self.inverse()
        lon, lat, back = self.ellipsoid.geod.fwd(lon_0, lat_0, azimuth, (chainage - self.chain_0) / along)
        if offset:
            lon, lat, _ = self.ellipsoid.geod.fwd(lon, lat, back + 180 + 90, offset / across)
        return lat, lon


def end_vertex(crs, ellipsoid, start, azimuth, length, chain_h):
    """Vertex (rounded to 0.1 mm) ``length`` metres at the chainage height from ``start`` in ``azimuth``."""
    projected = CRS.from_user_input(crs)
    to_geographic = Transformer.from_crs(projected, projected.geodetic_crs, always_xy=True)
    lon, lat = to_geographic.transform(*start)
    sigma = length / (1 + chain_h / ellipsoid.radius(lat, azimuth))
    lon, lat, _ = ellipsoid.geod.fwd(lon, lat, azimuth, sigma)
    east, north = to_geographic.transform(lon, lat, direction="INVERSE")
    return round(east, 4), round(north, 4)


def notation(chainage, per_plus, decimals=0):
    """``1+250`` for per_plus 1000, ``12+50`` for per_plus 100."""
    plus, rest = divmod(round(chainage, decimals), per_plus)
    digits = len(str(per_plus)) - 1
    width = digits + (decimals + 1 if decimals else 0)
    return f"{int(plus)}+{rest:0{width}.{decimals}f}"


def laterals(ellipsoid, places, read):
    """Distances (m, right positive) from the vertical plane that fits those of the ``places`` best that were ``read``.

    ``places``: latitude, longitude (degrees) and ellipsoidal height (m) of each station, by chainage.
    """
    feet = [ellipsoid.foot_and_normal(lat, lon) for lat, lon, _ in places]
    points = [foot + height * up for (foot, up), (_, _, height) in zip(feet, places)]
    seen = [k for k, one in enumerate(read) if one]
    first, last = seen[0], seen[-1]
    level = unit(feet[first][1] + feet[last][1])
    right = unit(cross(points[last] - points[first], level))
    ahead = cross(level, right)
    plan = [(dot(p - points[first], ahead), dot(p - points[first], right)) for p in points]
    x_mean, y_mean = (mp.fsum(plan[k][i] for k in seen) / len(seen) for i in (0, 1))
    centred = [(x - x_mean, y - y_mean) for x, y in plan]
    sums = mp.matrix(2, 2)
    for i in (0, 1):
        for j in (0, 1):
            sums[i, j] = mp.fsum(centred[k][i] * centred[k][j] for k in seen)
    # Eigenvalues rise: the first direction is the one across the line.
    _, directions = mp.eigsy(sums)
    across_x, across_y = directions[0, 0], directions[1, 0]
    sign = 1 if across_y > 0 else -1
    return [float(sign * (x * across_x + y * across_y)) for x, y in centred]


def side(lateral, tolerance):
    return "right" if lateral > tolerance else "left" if lateral < -tolerance else "within"


def status(residual, tolerance):
    if residual is None:
        return "no height"
    return "high" if residual > tolerance else "low" if residual < -tolerance else "within"


# ------------------------------------------------------------------------------------------------------- writing


# Standard deviation of a single run of the range's levelling over 1 km, metres.
SINGLE_RUN_KM = 0.0007


def write_axis(path, epsg, rows):
    """Write layer ``axis``; ``rows`` are (Axis, overrides by field name)."""
    path.unlink(missing_ok=True)
    source = ogr.GetDriverByName("GPKG").CreateDataSource(str(path))
    reference = osr.SpatialReference()
    reference.ImportFromEPSG(epsg)
    reference.SetAxisMappingStrategy(osr.OAMS_TRADITIONAL_GIS_ORDER)
    layer = source.CreateLayer("axis", reference, ogr.wkbLineString)
    for name in ("name",) + AXIS_FIELDS:
        layer.CreateField(ogr.FieldDefn(name, ogr.OFTString if name in ("name", "design") else ogr.OFTReal))
    for axis, overrides in rows:
        feature = ogr.Feature(layer.GetLayerDefn())
        line = ogr.Geometry(ogr.wkbLineString)
        for east, north in axis.vertices:
            line.AddPoint_2D(east, north)
        feature.SetGeometry(line)
        feature.SetField("name", axis.name)
        for name, value in overrides.items():
            if value is not None:
                feature.SetField(name, value)
        layer.CreateFeature(feature)
    layer = source = None


def write_list(path, columns, rows):
    # Without the types beside it, the desktop reads every column of a list as text.
    types = {
        "dh": "Real",
        "length": "Real",
        "offset": "Real",
        "height": "Real",
        "undulation": "Real",
        "sd": "Real",
        "date": "Date",
    }
    path.with_suffix(".csvt").write_text(
        ",".join(f'"{types.get(c, "String")}"' for c in columns) + "\n", encoding="utf-8"
    )
    with open(path, "w", newline="", encoding="utf-8") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(columns)
        writer.writerows(rows)


def point_name(axis, number):
    """Name of a support in the levelling: A00 and on along Alder, B00 and on along Birch."""
    return f"{axis[0].upper()}{number:02d}"


def write_levelling(folder, records, seed):
    """The range's levelling: sections between neighbouring supports that were read, out from the hub and back.

    Both runs of a section carry half of their difference with opposite signs, so that their mean is the listed height
    difference. A staff on the wrong mark shows in no loop: both neighbours' sections hold it.
    """
    rng = np.random.default_rng(seed + 1)
    lines, hub = [], []
    for name, date in zip(RUN_NAMES, SURVEY_DATES):
        run = [r for r in records if r["axis"] == name]
        read = [(point_name(name, k), r) for k, r in enumerate(run) if r["height"] is not None]
        hub.append((read[0][0], f"{read[0][1]['height']:.4f}", "hub pillar"))
        back = []
        for (first, a), (second, b) in zip(read, read[1:]):
            length = b["chainage"] - a["chainage"]
            half = round(float(rng.normal(0.0, SINGLE_RUN_KM * (length / 1000.0) ** 0.5 / 2**0.5)), 4)
            rise = b["height"] - a["height"]
            lines.append((first, second, f"{rise + half:.4f}", f"{length:.1f}", date, "out"))
            back.append((second, first, f"{half - rise:.4f}", f"{length:.1f}", date, "back"))
        lines += reversed(back)
    for path, columns, rows in (
        ("levelling.csv", ("from", "to", "dh", "length", "date", "remark"), lines),
        ("benchmarks.csv", ("point", "height", "remark"), hub),
    ):
        write_list(folder / path, columns, rows)


def later_survey(listed, blunders, seed):
    """The range's list a year later: both blunders read right, the settled stretch 40 % deeper, all else as it was
    but for the reading, 0.4 mm.
    """
    rng = np.random.default_rng(seed + 2)
    rows = []
    for axis, station, offset, height, undulation, _sd, _date, _remark, point in listed:
        noise = float(rng.normal(0.0, 0.0004))
        s = sum(int(part) * scale for part, scale in zip(station.split("+"), (1000, 1)))
        if height:
            moved = 0.4 * settlement(s) if axis == SETTLED else 0.0
            height = f"{float(height) - blunders.get((axis, s), 0.0) - moved + (noise if s else 0.0):.4f}"
        date = LATER_DATES[RUN_NAMES.index(axis)]
        rows.append((axis, station, offset, height, undulation, "0.0004", date, "", point))
    return rows


def write_expected(path, record):
    # One station per line: the file stays readable and a change shows as the station that changed.
    head = {key: value for key, value in record.items() if key != "stations"}
    text = json.dumps(head, indent=1, ensure_ascii=False)[:-2]
    lines = ",\n  ".join(json.dumps(row, ensure_ascii=False) for row in record["stations"])
    path.write_text(f'{text},\n "stations": [\n  {lines}\n ]\n}}\n', encoding="utf-8")


def station_record(axis, row, design_h, flat_h, tolerance, extra=None):
    """One row of expected.json, in the units of the list; ``row`` holds what is known before the design."""
    residual = None if row["height"] is None else row["height"] - design_h
    record = dict(row)
    record.update(
        design_h=round(design_h, 10),
        residual=None if residual is None else round(residual, 10),
        flat_h=round(flat_h, 10),
        curv_eff=round(design_h - flat_h, 10),
        status=status(residual, tolerance),
    )
    record.update(extra or {})
    return record


def statistics(records, name):
    """RMS, greatest residual and counts of one axis, as the summary of a run should give them."""
    own = [r for r in records if r["axis"] == name]
    residuals = np.array([r["residual"] for r in own if r["residual"] is not None])
    worst = max((r for r in own if r["residual"] is not None), key=lambda r: abs(r["residual"]))
    counts = {key: sum(r["status"] == key for r in own) for key in ("within", "high", "low", "no height")}
    return {
        "number": len(residuals),
        "rms": round(float(np.sqrt(np.mean(residuals**2))), 10),
        "max_abs": abs(worst["residual"]),
        "max_at": worst["station"],
        **counts,
    }


def line_statistics(records, name):
    """RMS, greatest departure and counts of the line of one axis."""
    own = [r for r in records if r["axis"] == name]
    worst = max(own, key=lambda r: abs(r["lateral"]))
    return {
        "number": len(own),
        "rms": round(float(np.sqrt(np.mean([r["lateral"] ** 2 for r in own]))), 10),
        "max_abs": abs(worst["lateral"]),
        "max_at": worst["station"],
        **{key: sum(r["side"] == key for r in own) for key in ("within", "left", "right")},
    }


def check_margin(records, tolerance, margin):
    """Refuse a draw in which a status hangs on less than ``margin``: no test may turn on rounding."""
    for record in records:
        if record["residual"] is not None and abs(abs(record["residual"]) - tolerance) < margin:
            raise SystemExit(
                f"residual too near the tolerance at {record['axis']} {record['station']}: take another seed"
            )


def check_line_margin(records, tolerance, margin):
    """The same of the line."""
    for record in records:
        if abs(abs(record["lateral"]) - tolerance) < margin:
            raise SystemExit(
                f"departure too near the tolerance at {record['axis']} {record['station']}: take another seed"
            )


# --------------------------------------------------------------------------------------------------------- range


RANGE = {
    "crs": "EPSG:32719",
    "epsg": 32719,
    "hub": (662400.0, 7938600.0),
    "chain_h": 3786.0,
    "height_a": 3742.60,
    "runs": (("Alder", 284.0, 2600.0), ("Birch", 44.0, 1900.0), ("Cedar", 164.0, 1300.0)),
    "tolerance": 0.010,
    "line_tolerance": 0.010,
    "scatter": 0.003,
    "seed": 4,
}
RUN_NAMES = tuple(name for name, _, _ in RANGE["runs"])
SURVEY_DATES = ("2025-03-11", "2025-03-12", "2025-03-13")
LATER_DATES = ("2026-03-10", "2026-03-11", "2026-03-12")
# The run on which a stretch has settled.
SETTLED = "Alder"
# Where the common plane touches the level surface of the ellipsoid: azimuth (degrees) and distance (m) from the hub.
TANGENT = (327.0, 825.0)


def range_undulation(latitude, longitude, hub):
    """Invented geoid (m): about 10" of slope and a gentle bending. ``hub``: its point of reference."""
    x = math.radians(longitude - hub[1]) * 6_378_137.0 * math.cos(math.radians(hub[0])) / 1000
    y = math.radians(latitude - hub[0]) * 6_357_000.0 / 1000
    return 43.6120 + 0.0011 * x - 0.0511 * y + 0.0010 * x * x - 0.0006 * x * y + 0.0008 * y * y


def supports(length, moved):
    """Chainages every 50 m; ``moved`` replaces some.

    The one at 500 m is always moved: the geoid's slope at the hub is taken from stations within 500 m, and no
    expected result may hang on 500.000 against 500.0000001.
    """
    return [moved.get(s, s) for s in range(0, int(length) + 1, 50)]


def settlement(chainage, first=1475.0, last=1825.0, depth=0.018):
    """Settlement (m, downwards) of a trough between two chainages."""
    if not first < chainage < last:
        return 0.0
    return depth * math.sin(math.pi * (chainage - first) / (last - first)) ** 2


def make_range(folder):
    site, ellipsoid = RANGE, WGS84
    axes = [
        Axis(
            name,
            (site["hub"], end_vertex(site["crs"], ellipsoid, site["hub"], azimuth, length, site["chain_h"])),
            site["crs"],
            ellipsoid,
            site["chain_h"],
        )
        for name, azimuth, length in site["runs"]
    ]
    hub = axes[0].inverse()[:2]
    tangent_lon, tangent_lat, _ = ellipsoid.geod.fwd(hub[1], hub[0], *TANGENT)
    foot, up = ellipsoid.foot_and_normal(*hub)
    undulation_a = round(range_undulation(*hub, hub), 4)
    point = foot + up * (mp.mpf(repr(site["height_a"])) + mp.mpf(repr(undulation_a)))
    normal = ellipsoid.foot_and_normal(tangent_lat, tangent_lon)[1]

    rng = np.random.default_rng(site["seed"])
    blunders = {("Alder", 850): 0.100, ("Birch", 1150): -0.045}
    missing = {("Alder", 2300): "cover iced shut, not read", ("Cedar", 700): "target missing, not read"}
    aside = {("Cedar", 900): -0.015}
    moved = {"Alder": {500: 502}, "Birch": {500: 498}, "Cedar": {500: 503}}
    remarks = {
        ("Alder", 0): "hub pillar",
        ("Birch", 0): "hub pillar, same reading as Alder",
        ("Cedar", 0): "hub pillar, same reading as Alder",
        ("Alder", 502): "support moved 2 m, clear of culvert",
        ("Birch", 498): "support moved 2 m, boulder",
        ("Cedar", 503): "support moved 3 m, clear of drain",
        ("Alder", 2600): "end house",
        ("Birch", 1900): "end house",
        ("Cedar", 1300): "end house",
        ("Alder", 1300): "louvre house",
        ("Birch", 950): "louvre house",
        ("Alder", 1650): "crack in footing, photo 14",
        ("Birch", 1150): "second set-up, wind",
        ("Cedar", 900): "wheel marks at footing, photo 31",
        ("Cedar", 1150): "edge of salt crust",
    }
    listed, records, overrides, summary, worst = [], [], [], {}, 0.0
    hub_height = None
    for axis, (name, _, length), date in zip(axes, site["runs"], SURVEY_DATES):
        lat_0, lon_0, azimuth = axis.inverse()[:3]
        stations = []
        for s in supports(length, moved[name]):
            offset = 0.0 if s == 0 else round(float(rng.normal(0, 0.002)) + aside.get((name, s), 0.0), 3) + 0.0
            lat, lon = axis.position(s, offset)
            undulation = round(range_undulation(lat, lon, hub), 4)
            plane_h = plane_height(ellipsoid, point, normal, lat, lon) - mp.mpf(repr(undulation))
            scatter = float(rng.normal(0, site["scatter"]))
            height = float(plane_h) + scatter + blunders.get((name, s), 0.0)
            height -= settlement(s) if name == SETTLED else 0.0
            height = round(height, 4)
            if s == 0:  # one pillar, one reading, listed on every run
                hub_height = height = height if hub_height is None else hub_height
            if (name, s) in missing:
                height = None
            stations.append((s, offset, lat, lon, undulation, plane_h, height))
            listed.append(
                (
                    name,
                    notation(s, 1000),
                    f"{offset:.3f}",
                    "" if height is None else f"{height:.4f}",
                    f"{undulation:.4f}",
                    f"{site['scatter']:.3f}",
                    date,
                    missing.get((name, s), remarks.get((name, s), "")),
                    point_name(name, len(stations) - 1),
                )
            )
        near = np.array([(s, n) for s, _, _, _, n, _, _ in stations if s < 500.5])
        gradient = mp.mpf(float(np.polyfit(near[:, 0], near[:, 1], 1)[0]))
        # The line that the common plane cuts into the vertical plane of the axis at the hub.
        t0, c = direction(lat_0, lon_0, azimuth), cross(direction(lat_0, lon_0, azimuth), up)
        line = unit(cross(normal, c))
        line = line if dot(line, t0) > 0 else -line
        slope = round(float(mp.tan(mp.atan2(dot(line, up), dot(line, t0)) - mp.atan(gradient))), 10)
        # The design as a run computes it: from the slope as stored, not from the common plane.
        angle = mp.atan(gradient) + mp.atan(mp.mpf(repr(slope)))
        run_normal = unit(cross(c, mp.cos(angle) * t0 + mp.sin(angle) * up))
        designed = [
            plane_height(ellipsoid, point, run_normal, lat, lon) - mp.mpf(repr(undulation))
            for _, _, lat, lon, undulation, _, _ in stations
        ]
        heights = [row[6] for row in stations]
        places = [
            (lat, lon, (design_h if height is None else mp.mpf(repr(height))) + mp.mpf(repr(undulation)))
            for (_, _, lat, lon, undulation, _, height), design_h in zip(stations, designed)
        ]
        line_of_run = laterals(ellipsoid, places, [height is not None for height in heights])
        for (s, offset, lat, lon, undulation, plane_h, height), design_h, lateral in zip(
            stations, designed, line_of_run
        ):
            worst = max(worst, abs(float(design_h - plane_h)))
            row = {
                "axis": name,
                "station": notation(s, 1000),
                "chainage": float(s),
                "offset": offset,
                "lat": lat,
                "lon": lon,
                "height": height,
                "undulation": undulation,
            }
            records.append(
                station_record(
                    axis,
                    row,
                    float(design_h),
                    site["height_a"] + slope * s,
                    site["tolerance"],
                    {
                        "common_plane_h": round(float(plane_h), 10),
                        "lateral": round(lateral, 10),
                        "side": side(lateral, site["line_tolerance"]),
                    },
                )
            )
        overrides.append(
            (
                axis,
                {
                    "design": "inclined",
                    "chain_a": 0.0,
                    "height_a": site["height_a"],
                    "slope": slope,
                    "tolerance": site["tolerance"],
                    "chain_h": site["chain_h"],
                    "chain_0": 0.0,
                },
            )
        )
        summary[name] = dict(
            statistics(records, name),
            line=line_statistics(records, name),
            controls=overrides[-1][1],
            geoid_slope_at_a=round(float(gradient), 12),
            azimuth_at_a=round(azimuth, 9),
            length=round(axis.inverse()[3] * axis.inverse()[4], 4),
        )
    check_margin(records, site["tolerance"], 0.0002)
    check_line_margin(records, site["line_tolerance"], 0.0002)
    write_axis(folder / "axis.gpkg", site["epsg"], overrides)
    write_list(
        folder / "heights.csv",
        ("axis", "station", "offset", "height", "undulation", "sd", "date", "remark", "point"),
        listed,
    )
    write_levelling(folder, records, site["seed"])
    write_list(
        folder / "heights_later.csv",
        ("axis", "station", "offset", "height", "undulation", "sd", "date", "remark", "point"),
        later_survey(listed, blunders, site["seed"]),
    )
    settled = [
        {"station": r["station"], "depth": round(settlement(r["chainage"]), 5)}
        for r in records
        if r["axis"] == SETTLED and settlement(r["chainage"]) > 0
    ]
    write_expected(
        folder / "expected.json",
        {
            "scenario": "range",
            "crs": site["crs"],
            "ellipsoid": ellipsoid.name,
            "height_unit": "metre",
            "chainage_unit": "metre",
            "height_system": "above the geoid, undulation from the field 'undulation'",
            "tolerance": site["tolerance"],
            "line": "fitted",
            "line_tolerance": site["line_tolerance"],
            "rejected": 0,
            "axes": summary,
            "truth": {
                "scatter_sd": site["scatter"],
                "blunders": [{"axis": a, "station": notation(s, 1000), "size": v} for (a, s), v in blunders.items()],
                "settlement": {"axis": SETTLED, "from": "1+475", "to": "1+825", "deepest": 0.018, "stations": settled},
                "aside": [{"axis": a, "station": notation(s, 1000), "size": v} for (a, s), v in aside.items()],
                "no_height": [{"axis": a, "station": notation(s, 1000)} for a, s in missing],
                "angles_between_runs": [
                    round((b.inverse()[2] - a.inverse()[2]) % 360, 7) for a, b in zip(axes, axes[1:] + axes[:1])
                ],
                "common_plane": {
                    "point": [float(v) for v in point],
                    "normal": [float(v) for v in normal],
                    "lat0": hub[0],
                    "lon0": hub[1],
                    "h0_ellipsoidal": site["height_a"] + undulation_a,
                    "tangent_lat": tangent_lat,
                    "tangent_lon": tangent_lon,
                    "tangent_distance_from_hub": TANGENT[1],
                },
                "greatest_departure_of_run_designs_from_common_plane": worst,
            },
            "stations": records,
        },
    )
    return axes


# ---------------------------------------------------------------------------------------------------------- tank


TANK = {
    "crs": "EPSG:25833",
    "epsg": 25833,
    "start": (402310.0, 6698240.0),
    "azimuth": 64.0,
    "length": 620.0,
    "chain_h": 84.0,
    "height_a": 84.25,
    "tolerance": 0.0005,
    "scatter": 0.00015,
    "seed": 4,
}


def make_tank(folder):
    site, ellipsoid, name = TANK, GRS80, "guide rail"
    axis = Axis(
        name,
        (
            site["start"],
            end_vertex(site["crs"], ellipsoid, site["start"], site["azimuth"], site["length"], site["chain_h"]),
        ),
        site["crs"],
        ellipsoid,
        site["chain_h"],
    )
    rng = np.random.default_rng(site["seed"])
    joint, dip = 350, -0.0009
    remarks = {
        0: "dock end stop",
        120: "rail joint",
        240: "rail joint",
        350: "rail joint",
        470: "rail joint",
        590: "rail joint",
        620: "beach end stop",
    }
    listed, records = [], []
    for s in range(0, 621, 10):
        offset = round(float(rng.normal(0, 0.0003)), 4) + 0.0
        height = round(site["height_a"] + float(rng.normal(0, site["scatter"])) + (dip if s == joint else 0.0), 4)
        lat, lon = axis.position(s, offset)
        listed.append(
            (
                name,
                notation(s, 1000),
                f"{offset:.4f}",
                f"{height:.4f}",
                f"{site['scatter']:.5f}",
                "2025-05-06",
                remarks.get(s, ""),
            )
        )
        row = {
            "axis": name,
            "station": notation(s, 1000),
            "chainage": float(s),
            "offset": offset,
            "lat": lat,
            "lon": lon,
            "height": height,
        }
        records.append(station_record(axis, row, site["height_a"], site["height_a"], site["tolerance"]))
    check_margin(records, site["tolerance"], 0.00002)
    overrides = {
        "design": "level",
        "chain_a": 0.0,
        "height_a": site["height_a"],
        "tolerance": site["tolerance"],
        "chain_h": site["chain_h"],
        "chain_0": 0.0,
    }
    write_axis(folder / "axis.gpkg", site["epsg"], [(axis, overrides)])
    write_list(folder / "heights.csv", ("axis", "station", "offset", "height", "sd", "date", "remark"), listed)
    # Had the rails been built straight between their ends, the middle would lie lower by this.
    lat_m, _ = axis.position(site["length"] / 2, 0.0)
    sagitta = site["length"] ** 2 / (8 * ellipsoid.radius(lat_m, site["azimuth"]))
    write_expected(
        folder / "expected.json",
        {
            "scenario": "tank",
            "crs": site["crs"],
            "ellipsoid": ellipsoid.name,
            "height_unit": "metre",
            "chainage_unit": "metre",
            "height_system": "above the geoid, undulation not known",
            "tolerance": site["tolerance"],
            "rejected": 0,
            "axes": {
                name: dict(
                    statistics(records, name),
                    controls=overrides,
                    azimuth_at_a=round(axis.inverse()[2], 9),
                    length=round(axis.inverse()[3] * axis.inverse()[4], 4),
                )
            },
            "truth": {
                "scatter_sd": site["scatter"],
                "blunders": [],
                "low_joint": {"axis": name, "station": notation(joint, 1000), "size": dip},
                "sagitta_of_the_whole_length": round(sagitta, 6),
            },
            "stations": records,
        },
    )
    return [axis]


# --------------------------------------------------------------------------------------------------------- track


TRACK = {
    "crs": "EPSG:7853",
    "epsg": 7853,
    "start": (438260.0, 7243480.0),
    "azimuth": 76.0,
    "length_ft": 17060,
    "start_ft": 1200,
    "chain_h_ft": 1478.0,
    "height_a_ft": 1468.2,
    "slope": 0.0012,
    "tolerance_ft": 0.030,
    "scatter_ft": 0.008,
    "seed": 6,
}


def heave(chainage_ft, first=9600.0, last=10600.0, height=0.065):
    """Heave (ft, upwards) where the track crosses swelling clay."""
    if not first < chainage_ft < last:
        return 0.0
    return height * math.sin(math.pi * (chainage_ft - first) / (last - first)) ** 2


def make_track(folder):
    site, ellipsoid, name = TRACK, GRS80, "track"
    chain_h = site["chain_h_ft"] * FOOT
    axis = Axis(
        name,
        (
            site["start"],
            end_vertex(site["crs"], ellipsoid, site["start"], site["azimuth"], site["length_ft"] * FOOT, chain_h),
        ),
        site["crs"],
        ellipsoid,
        chain_h,
        site["start_ft"] * FOOT,
    )
    rng = np.random.default_rng(site["seed"])
    last = site["start_ft"] + site["length_ft"]
    missing = {15000: "rail under repair, not read"}
    remarks = {
        1200: "breech end",
        4000: "camera pad 1",
        8000: "camera pad 2",
        10000: "clay pan",
        12000: "camera pad 3",
        16000: "camera pad 4",
        last: "arrest end",
    }
    listed, records = [], []
    for s in sorted(set(range(site["start_ft"], last + 1, 200)) | {last}):
        offset = round(float(rng.normal(0, 0.01)), 3) + 0.0
        design_h = site["height_a_ft"] + site["slope"] * (s - site["start_ft"])
        height = round(design_h + float(rng.normal(0, site["scatter_ft"])) + heave(s), 3)
        height = None if s in missing else height
        lat, lon = axis.position(s * FOOT, offset * FOOT)
        listed.append(
            (
                name,
                notation(s, 100),
                f"{offset:.3f}",
                "" if height is None else f"{height:.3f}",
                f"{site['scatter_ft']:.3f}",
                "2025-04-29" if s < 9000 else "2025-04-30",
                missing.get(s, remarks.get(s, "")),
            )
        )
        row = {
            "axis": name,
            "station": notation(s, 100),
            "chainage": float(s),
            "offset": offset,
            "lat": lat,
            "lon": lon,
            "height": height,
        }
        records.append(station_record(axis, row, design_h, design_h, site["tolerance_ft"]))
    check_margin(records, site["tolerance_ft"], 0.0005)
    overrides = {
        "design": "grade",
        "chain_a": float(site["start_ft"]),
        "height_a": site["height_a_ft"],
        "slope": site["slope"],
        "tolerance": site["tolerance_ft"],
        "chain_h": site["chain_h_ft"],
        "chain_0": float(site["start_ft"]),
    }
    write_axis(folder / "axis.gpkg", site["epsg"], [(axis, overrides)])
    write_list(folder / "heights.csv", ("axis", "station", "offset", "height", "sd", "date", "remark"), listed)
    heaved = [
        {"station": r["station"], "height": round(heave(r["chainage"]), 5)} for r in records if heave(r["chainage"]) > 0
    ]
    write_expected(
        folder / "expected.json",
        {
            "scenario": "track",
            "crs": site["crs"],
            "ellipsoid": ellipsoid.name,
            "height_unit": "foot",
            "chainage_unit": "foot",
            "height_system": "above the geoid, undulation not known",
            "tolerance": site["tolerance_ft"],
            "rejected": 0,
            "axes": {
                name: dict(
                    statistics(records, name),
                    controls=overrides,
                    azimuth_at_a=round(axis.inverse()[2], 9),
                    length=round(axis.inverse()[3] * axis.inverse()[4] / FOOT, 4),
                )
            },
            "truth": {
                "scatter_sd": site["scatter_ft"],
                "blunders": [],
                "heave": {"axis": name, "from": "96+00", "to": "106+00", "highest": 0.065, "stations": heaved},
                "no_height": [{"axis": name, "station": notation(s, 100)} for s in missing],
            },
            "stations": records,
        },
    )
    return [axis]


def main(arguments):
    imagery = "--no-imagery" not in arguments
    rest = [a for a in arguments if not a.startswith("--")]
    root = Path(rest[0]) if rest else Path(os.path.abspath(__file__)).parent
    for name, make in (("range", make_range), ("tank", make_tank), ("track", make_track)):
        folder = root / name
        folder.mkdir(parents=True, exist_ok=True)
        axes = make(folder)
        if imagery:
            from make_imagery import draw_site

            draw_site(name, folder / "imagery.tif", [axis.vertices for axis in axes])
        print(name, {path.name: path.stat().st_size for path in sorted(folder.iterdir())})


if __name__ == "__main__":
    main(sys.argv[1:])
