"""Speed, as ratios within one run: /usr/bin/python3 tests/benchmarks/speed.py [core|run|place|load] [STATIONS]

core: design heights against one pyproj geographic-to-geocentric transform of the same points, and chainage and offset
against one inverse geodesic for each point. run: the whole designheights, GeoPackage to GeoPackage, from 1,000 to
1,000,000 stations on one axis and on 1,000 axes, against the host's own native:refactorfields that computes nine
fields and native:fieldcalculator that computes one. place: placestations of a list of 200,000 rows against the host's
own native:createpointslayerfromtable. load: what the host's start costs beyond numpy and pyproj, the median of 15.

Each run in a process of its own, the runs of one size by turns: processor seconds of the fastest of three, and the
greatest memory over that of the idle host.
"""

import importlib
import json
import os
import pathlib
import resource
import statistics
import subprocess
import sys
import tempfile
import time

import numpy as np

ROOT = pathlib.Path(__file__).resolve().parents[2]
_COMPILED = tempfile.TemporaryDirectory()
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


def make_list(folder, number):
    """A list of ``number`` rows along the first axis as text, and one with coordinates for the host's own entry."""
    random = np.random.default_rng(8)
    with open(os.path.join(folder, "list.csv"), "w", encoding="utf-8") as file:
        file.write("station,height,remark,x,y\n")
        for k, height in enumerate(random.normal(250.0, 0.003, number).tolist()):
            metres = k * 2990.0 / number
            place = f"400000.0,{5_000_000.0 + metres:.3f}"
            file.write(f"{int(metres) // 1000}+{metres % 1000:07.3f},{height:.4f},m{k},{place}\n")


def _fields(name, expression, kind, word):
    return {
        "expression": expression,
        "length": 0,
        "name": name,
        "precision": 0,
        "type": kind,
        "type_name": word,
        "sub_type": 0,
    }


def entry_and_parameters(folder, what, axes):
    """(id, parameters) of a timed run."""
    stations, axis = (os.path.join(folder, f"{name}_{axes}.gpkg") for name in ("stations", "axis"))
    out = os.path.join(folder, f"out_{what}_{axes}.gpkg")
    kept = (("mark", 10, "text"), ("height", 6, "double precision"), ("sd", 6, "double precision"))
    mapping = [_fields(name, f'"{name}"', kind, word) for name, kind, word in kept]
    mapping += [_fields(f"f{k}", f'"height" * {k} + "sd"', 6, "double precision") for k in range(1, 10)]
    listed = os.path.join(folder, "list.csv")
    return {
        "designheights": (
            "tautline:designheights",
            {"STATIONS": stations, "AXIS": axis, "TOLERANCE": 0.01, "OUTPUT": out},
        ),
        "refactorfields": ("native:refactorfields", {"INPUT": stations, "FIELDS_MAPPING": mapping, "OUTPUT": out}),
        "fieldcalculator": (
            "native:fieldcalculator",
            {"INPUT": stations, "FIELD_NAME": "f", "FIELD_TYPE": 0, "FORMULA": '"height" * 2', "OUTPUT": out},
        ),
        "placestations": ("tautline:placestations", {"INPUT": listed, "AXIS": axis, "OUTPUT": out}),
        "pointsfromtable": (
            "native:createpointslayerfromtable",
            {"INPUT": listed, "XFIELD": "x", "YFIELD": "y", "TARGET_CRS": "EPSG:32633", "OUTPUT": out},
        ),
    }[what]


def _memory():
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def one(folder, what, axes):
    """One timed run in this process; prints JSON with processor seconds, of a second run too, and memory in MB."""
    host = _host()
    next(host)
    import processing

    if what == "make":
        make(folder, int(sys.argv[5]), axes)
        print("{}", flush=True)
        os._exit(0)
    entry, parameters = entry_and_parameters(folder, what, axes)
    idle, seconds = _memory(), []
    for _ in range(1 if os.path.getsize(parameters.get("STATIONS", parameters.get("INPUT"))) > 5e6 else 8):
        start = time.process_time()
        processing.run(entry, parameters)
        seconds.append(time.process_time() - start)
    print(json.dumps({"cpu": min(seconds), "mb": _memory() - idle}), flush=True)
    os._exit(0)


def loaded():
    """Load the plugin as the command line does, then what its window begins with; prints JSON with processor seconds
    beyond numpy and pyproj, and our modules."""
    from qgis.testing import start_app

    start_app(cleanup=False)
    sys.path.append("/usr/share/qgis/python/plugins")
    import pyproj  # noqa: F401 - the host's own toolbox does not load it, but it is no part of ours
    from processing.core.Processing import Processing

    Processing.initialize()
    start = time.process_time()
    sys.modules[conftest.NAME].classFactory(None).initProcessing()
    seconds = time.process_time() - start
    own = sum(name.startswith(conftest.NAME) for name in sys.modules)
    start = time.process_time()
    importlib.import_module(f"{conftest.NAME}.plugin.review.docks")
    window = time.process_time() - start
    print(json.dumps({"cpu": seconds, "modules": own, "window": window}), flush=True)
    os._exit(0)


def _child(*words):
    # Compiled once, as the host keeps an installed plugin.
    kept = {"PYTHONPYCACHEPREFIX": _COMPILED.name, "PYTHONDONTWRITEBYTECODE": ""}
    done = subprocess.run(
        [sys.executable, __file__, *map(str, words)],
        capture_output=True,
        text=True,
        check=True,
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen", **kept},
    )
    return json.loads(done.stdout.strip().splitlines()[-1])


def _compared(folder, names, axes, owed):
    """Time the first of ``names`` against the others by turns, and print one line."""
    runs = {name: [] for name in names}
    for _ in range(3):
        for name in names:
            runs[name].append(_child("one", folder, name, axes))
    cpu, memory = (
        {name: chosen(one[key] for one in found) for name, found in runs.items()}
        for key, chosen in (("cpu", min), ("mb", max))
    )
    ours, *others = names
    ratios = ", ".join(f"/ {name} {cpu[ours] / cpu[name]:.2f}" for name in others)
    seconds = ", ".join(f"{name} {cpu[name]:.2f} s {memory[name]:.0f} MB" for name in names)
    print(f"{ours} {ratios}{owed}   ({seconds})", flush=True)


def run(numbers=(1_000, 10_000, 100_000, 300_000, 1_000_000)):
    many = [(300_000, 1_000)] if 300_000 in numbers else []
    for number, axes in [*((number, 1) for number in numbers), *many]:
        with tempfile.TemporaryDirectory() as folder:
            _child("one", folder, "make", axes, number)
            print(f"{number} stations on {axes} axes: ", end="")
            owed = " owed at most 1.00 of refactorfields" if number >= 300_000 else ""
            _compared(folder, ("designheights", "refactorfields", "fieldcalculator"), axes, owed)


def place(number=200_000):
    with tempfile.TemporaryDirectory() as folder:
        _child("one", folder, "make", 1, 1_000)
        make_list(folder, number)
        print(f"{number} rows: ", end="")
        _compared(folder, ("placestations", "pointsfromtable"), 1, "")


def load():
    found = [_child("loaded") for _ in range(16)][1:]
    load, window = (statistics.median(one[key] for one in found) for key in ("cpu", "window"))
    print(
        f"load: {load:.3f} s for {found[0]['modules']} modules, {window:.3f} s more in the window (owed at most 0.060)"
    )


if __name__ == "__main__":
    task = sys.argv[1] if len(sys.argv) > 1 else "all"
    if task == "one":
        one(sys.argv[2], sys.argv[3], int(sys.argv[4]))
    if task == "loaded":
        loaded()
    size = int(sys.argv[2]) if len(sys.argv) > 2 else None
    if task in ("core", "all"):
        core(*([size] if size else []))
    if task in ("run", "all"):
        run(*([(size,)] if size else []))
    if task in ("place", "all"):
        place(*([size] if size and task == "place" else []))
    if task in ("load", "all"):
        load()
