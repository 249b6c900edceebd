"""Speed, as ratios within one run: /usr/bin/python3 tests/benchmarks/speed.py [core|run] [STATIONS]

core: design heights against one pyproj geographic-to-geocentric transform of the same points, and chainage and offset
against one inverse geodesic for each point. run: the whole designheights, GeoPackage to GeoPackage, on 1 and on 1,000
axes, against the host's own native:refactorfields that computes nine fields; each in a process of its own.
"""

import json
import os
import pathlib
import resource
import subprocess
import sys
import tempfile
import time

import numpy as np

ROOT = pathlib.Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "tests"))
import conftest  # noqa: E402  (registers the package by its name)


def fastest(work, repeats=5):
    """Least seconds of several repeats: the one least disturbed by other work."""
    times = []
    for _ in range(repeats):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return min(times)


def core(number=1_000_000):
    import pyproj

    from tautline.algorithms.core.axis import Axis, AxisLine
    from tautline.algorithms.core.geodesy import Ellipsoid
    from tautline.algorithms.core.measure import measure
    from tautline.algorithms.core.plane import chord_plane

    earth = Ellipsoid(6378137.0, 1 / 298.257223563)
    line = AxisLine("a", [46.0, 46.0 + 0.8], [8.0, 9.0], earth)
    axis = Axis(line)
    lat, lon, _ = axis.place(np.linspace(0.0, axis.length, number), np.linspace(-90.0, 90.0, number))
    plane = chord_plane(line.lat, line.lon, [400.0, 420.0], earth)
    cart = pyproj.Transformer.from_pipeline(
        "+proj=pipeline +step +proj=unitconvert +xy_in=deg +xy_out=rad +step +proj=cart +ellps=WGS84"
    )
    height = np.zeros(number)
    design = fastest(lambda: plane.heights(lat, lon, earth))
    geocentric = fastest(lambda: cart.transform(lon, lat, height))
    measuring = fastest(lambda: measure([line], lat, lon))
    first = np.full(number, line.lat[0]), np.full(number, line.lon[0])
    inverse = fastest(lambda: earth.inverse(*first, lat, lon))
    print(f"{number} points on one axis of {axis.length / 1000:.0f} km")
    print(f"design heights / geographic to geocentric: {design / geocentric:.2f}   (owed at most 0.50)")
    print(f"chainage and offset / inverse geodesic:    {measuring / inverse:.2f}   (owed at most 0.50)")


def _host():
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    start = getattr(conftest.host, "__wrapped__", None) or conftest.host.__pytest_wrapped__.obj
    return start()


def make(folder, number, axes):
    """Stations with id, height and date in a GeoPackage, and ``axes`` parallel lines."""
    from qgis.core import (
        QgsCoordinateTransformContext,
        QgsFeature,
        QgsGeometry,
        QgsPointXY,
        QgsVectorFileWriter,
        QgsVectorLayer,
    )

    lines = QgsVectorLayer("LineString?crs=EPSG:32633&field=name:string", "axis", "memory")
    points = QgsVectorLayer(
        "Point?crs=EPSG:32633&field=mark:string&field=height:double&field=sd:double", "stations", "memory"
    )
    random = np.random.default_rng(7)
    share = number // axes
    features = []
    for k in range(axes):
        x0, y0 = 400_000.0 + 200.0 * (k % 100), 5_000_000.0 + 4_000.0 * (k // 100)
        line = QgsFeature(lines.fields())
        line.setAttributes([f"axis {k}"])
        line.setGeometry(QgsGeometry.fromPolylineXY([QgsPointXY(x0, y0), QgsPointXY(x0, y0 + 3000.0)]))
        lines.dataProvider().addFeature(line)
        for y, dx, h in zip(
            np.linspace(0.0, 3000.0, share).tolist(),
            random.normal(0, 0.01, share).tolist(),
            random.normal(250.0, 0.003, share).tolist(),
        ):
            point = QgsFeature(points.fields())
            point.setAttributes([f"p{len(features)}", h, 0.003])
            point.setGeometry(QgsGeometry.fromPointXY(QgsPointXY(x0 + dx, y0 + y)))
            features.append(point)
    points.dataProvider().addFeatures(features)
    for layer, name in ((lines, f"axis_{axes}.gpkg"), (points, f"stations_{axes}.gpkg")):
        options = QgsVectorFileWriter.SaveVectorOptions()
        options.driverName = "GPKG"
        writer = (
            getattr(QgsVectorFileWriter, "writeAsVectorFormatV3", None) or QgsVectorFileWriter.writeAsVectorFormatV2
        )
        writer(layer, os.path.join(folder, name), QgsCoordinateTransformContext(), options)


def one(folder, what, axes):
    """One timed run in this process; prints JSON with seconds and peak memory in MB."""
    host = _host()
    next(host)
    import processing

    stations, out = os.path.join(folder, f"stations_{axes}.gpkg"), os.path.join(folder, f"out_{what}_{axes}.gpkg")
    if what == "make":
        make(folder, int(sys.argv[5]), axes)
        print("{}", flush=True)
        os._exit(0)
    if what == "tautline":
        entry, parameters = (
            "tautline:designheights",
            {"STATIONS": stations, "AXIS": os.path.join(folder, f"axis_{axes}.gpkg"), "TOLERANCE": 0.01, "OUTPUT": out},
        )
    else:
        computed = [
            {
                "expression": f'"height" * {k} + "sd"',
                "length": 0,
                "name": f"f{k}",
                "precision": 0,
                "type": 6,
                "type_name": "double precision",
                "sub_type": 0,
            }
            for k in range(1, 10)
        ]
        kept = [
            {"expression": f'"{n}"', "length": 0, "name": n, "precision": 0, "type": t, "type_name": w, "sub_type": 0}
            for n, t, w in (("mark", 10, "text"), ("height", 6, "double precision"), ("sd", 6, "double precision"))
        ]
        entry, parameters = (
            "native:refactorfields",
            {"INPUT": stations, "FIELDS_MAPPING": kept + computed, "OUTPUT": out},
        )
    start = time.perf_counter()
    processing.run(entry, parameters)
    seconds = time.perf_counter() - start
    print(json.dumps({"seconds": seconds, "mb": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024}), flush=True)
    os._exit(0)


def _child(*words):
    done = subprocess.run(
        [sys.executable, __file__, "one", *map(str, words)], capture_output=True, text=True, check=True
    )
    return json.loads(done.stdout.strip().splitlines()[-1])


def run(number=300_000):
    with tempfile.TemporaryDirectory() as folder:
        for count, axes in ((number, 1), (number, 1000), (number // 3, 1)):
            _child(folder, "make", axes, count)
            ours, native = ([_child(folder, what, axes) for _ in range(3)] for what in ("tautline", "native"))
            best, other = (min(r["seconds"] for r in runs) for runs in (ours, native))
            print(
                f"{count} stations on {axes} axes: designheights / refactorfields {best / other:.2f}   "
                f"(owed at most 1.00)   {best:.1f} s / {other:.1f} s, peak memory {max(r['mb'] for r in ours):.0f} MB"
                f" / {max(r['mb'] for r in native):.0f} MB"
            )


if __name__ == "__main__":
    task = sys.argv[1] if len(sys.argv) > 1 else "all"
    if task == "one":
        one(sys.argv[2], sys.argv[3], int(sys.argv[4]))
    size = int(sys.argv[2]) if len(sys.argv) > 2 else None
    if task in ("core", "all"):
        core(*([size] if size else []))
    if task in ("run", "all"):
        run(*([size] if size else []))
