"""What thousands of axes cost: /usr/bin/python3 tests/benchmarks/many_axes.py [ENTRY ...] [--stations N] [--axes N]

Each entry on many axes against the same entry on one axis with as many stations, GeoPackage to GeoPackage, in one run:
CPU seconds of the run alone, and the peak of memory of its process. fitreference is also run on each kind of heights
that a structure may have, against the host's own native:fieldcalculator on the same stations.
"""

import argparse
import json
import os
import pathlib
import resource
import subprocess
import sys
import tempfile

import numpy as np

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
import conftest  # noqa: E402  (registers the package by its name)

# Each entry: parameters beside the layers, and the outputs that are written.
ENTRIES = {
    "designheights": ({"TOLERANCE": 0.01}, ("OUTPUT", "SUMMARY")),
    "fitreference": ({"SIGMA": 0.003}, ("OUTPUT", "REFERENCE")),
    "testcurvature": ({"SIGMA": 0.003}, ("OUTPUT",)),
    # A million stations on one axis are 30 mm apart.
    "comparesurveys": ({"SIGMA": 0.003, "MATCH_TOLERANCE": 0.01}, ("OUTPUT", "MOTIONS", "CHANGES")),
    "measurestations": ({}, ("OUTPUT",)),
    "drawdeviations": ({}, ("BARS", "STRIP")),
    "scheduleadjustments": ({}, ("OUTPUT",)),
    "reviewreport": ({}, ("HTML",)),
}
# Those that begin with what designheights has made.
REVIEWED = ("comparesurveys", "drawdeviations", "scheduleadjustments", "reviewreport")
SHAPES = ("straight", "level", "wavy", "few blunders", "many blunders", "a step")
# How fitreference is asked for each kind of heights.
ASKED = {
    "SIGMA": {"SIGMA": 0.003},
    "SIGMA not stated": {},
    "ROBUST": {"SIGMA": 0.003, "ROBUST": True},
    "SIGMA_KM": {"SIGMA": 0.001, "SIGMA_KM": 1.0},
}
OWED_RATIO = 1.3
_RADIUS, _SCALE, _SIGMA = 6_370_000.0, 0.99972, 0.003


def heights(shape, along, length, random):
    """Heights (n,) of stations at ``along`` metres on an axis of ``length``, metres, of a structure of that shape."""
    height = 250.0 + random.normal(0.0, _SIGMA, len(along))
    if shape == "level":
        return height
    height += (along / _SCALE - 0.5 * length) ** 2 / (2.0 * _RADIUS)
    if shape == "wavy":
        height += 0.02 * np.sin(along / 80.0)
    if shape.endswith("blunders"):
        share = 0.02 if shape == "few blunders" else 0.095
        wrong = random.permutation(len(along))[: int(share * len(along))]
        height[wrong] += random.choice([-1.0, 1.0], len(wrong)) * random.uniform(0.03, 0.3, len(wrong))
    if shape == "a step":
        height[along > 0.6 * length] += 0.02
    return height


def make(folder, number, axes, shape="straight"):
    """``number`` stations with heights on ``axes`` parallel lines: the files axis.gpkg and stations.gpkg."""
    from osgeo import ogr, osr

    random, share = np.random.default_rng(7), number // axes
    length = float(np.clip(share, 3_000.0, 30_000.0))
    system = osr.SpatialReference()
    system.ImportFromEPSG(32633)
    opened = []
    for name, kind, fields in (
        ("axis", ogr.wkbLineString, (("name", ogr.OFTString),)),
        ("stations", ogr.wkbPoint, (("mark", ogr.OFTString), ("height", ogr.OFTReal))),
    ):
        file = ogr.GetDriverByName("GPKG").CreateDataSource(os.path.join(folder, f"{name}.gpkg"))
        layer = file.CreateLayer(name, system, kind)
        for field, of in fields:
            layer.CreateField(ogr.FieldDefn(field, of))
        layer.StartTransaction()
        opened.append((file, layer))
    (_, lines), (_, points) = opened
    for k in range(axes):
        x, y = 400_000.0 + 200.0 * (k % 100), 5_000_000.0 + 4_000.0 * (k // 100)
        _add(lines, f"LINESTRING ({x} {y}, {x} {y + length})", [f"axis {k}"])
        along = np.linspace(0.0, length, share)
        aside = random.normal(0.0, 0.01, share).tolist()
        for s, dx, h in zip(along.tolist(), aside, heights(shape, along, length, random).tolist()):
            _add(points, f"POINT ({x + dx} {y + s})", ["p", h])
    for _, layer in opened:
        layer.CommitTransaction()


def _add(layer, shape, values):
    from osgeo import ogr

    feature = ogr.Feature(layer.GetLayerDefn())
    for k, value in enumerate(values):
        feature.SetField(k, value)
    feature.SetGeometry(ogr.CreateGeometryFromWkt(shape))
    layer.CreateFeature(feature)


def parameters(entry, folder, more=()):
    """Parameters of a run in ``folder``; what the entry begins with is there already."""
    given, outputs = ENTRIES[entry]
    layers = {name: os.path.join(folder, f"{name}.gpkg") for name in ("axis", "stations", "reviewed")}
    found = dict(given)
    found["STATIONS"] = layers["reviewed" if entry in REVIEWED else "stations"]
    if entry not in ("comparesurveys", "scheduleadjustments"):
        found["AXIS"] = layers["axis"]
    if entry == "comparesurveys":
        found["SURVEYS"], found["DATES"] = (
            [found.pop("STATIONS"), os.path.join(folder, "later.gpkg")],
            "2026-05-01; 2027-05-01",
        )
    for key in outputs:
        ending = "html" if key == "HTML" else "gpkg"
        found[key] = os.path.join(folder, f"{entry}_{key}.{ending}")
    return {**found, **dict(more)}


def one(entry, folder, more):
    """One run in this process: prints JSON with its CPU seconds, peak memory in MB and how the memory began."""
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    start = getattr(conftest.host, "__wrapped__", None) or conftest.host.__pytest_wrapped__.obj
    host = start()
    next(host)
    import processing
    from qgis.core import QgsProcessingFeedback

    if entry == "native":
        name = "native:fieldcalculator"
        given = {"INPUT": os.path.join(folder, "stations.gpkg"), "FIELD_NAME": "f", "FORMULA": '"height" * 2'}
        given["OUTPUT"] = os.path.join(folder, "native.gpkg")
    else:
        name, given = f"tautline:{entry}", parameters(entry, folder, more)
    idle = resource.getrusage(resource.RUSAGE_SELF)
    processing.run(name, given, feedback=QgsProcessingFeedback(False))
    used = resource.getrusage(resource.RUSAGE_SELF)
    seconds = used.ru_utime + used.ru_stime - idle.ru_utime - idle.ru_stime
    print(json.dumps({"cpu": seconds, "mb": used.ru_maxrss / 1024, "idle": idle.ru_maxrss / 1024}), flush=True)
    os._exit(0)


def child(entry, folder, more=None, repeats=1):
    """The least of several runs, each in a process of its own: {'cpu': seconds, 'mb': peak}."""
    words = [sys.executable, __file__, "--one", entry, folder, json.dumps(more or {})]
    runs = []
    for _ in range(repeats):
        done = subprocess.run(words, capture_output=True, text=True, check=False)
        if done.returncode:
            raise SystemExit(f"{entry} failed:\n{done.stderr[-2000:]}")
        runs.append(json.loads(done.stdout.strip().splitlines()[-1]))
    return min(runs, key=lambda run: run["cpu"])


def reviewed(folder):
    """What designheights makes of the stations, twice, for the entries that begin with it."""
    for name in ("reviewed", "later"):
        child("designheights", folder, {"OUTPUT": os.path.join(folder, f"{name}.gpkg")})


def many(entries, number, axes):
    """Each entry on one axis and on ``axes``."""
    with tempfile.TemporaryDirectory() as one, tempfile.TemporaryDirectory() as other:
        folders = {1: one, axes: other}
        for count, folder in folders.items():
            make(folder, number, count)
            if set(entries) & set(REVIEWED):
                reviewed(folder)
        for entry in entries:
            found = {count: child(entry, folder) for count, folder in folders.items()}
            single, several = found[1], found[axes]
            print(
                f"{entry:20} {number} stations on 1 and {axes} axes: {single['cpu']:.2f} s and {several['cpu']:.2f} s, "
                f"ratio {several['cpu'] / single['cpu']:.2f} (owed at most {OWED_RATIO}); peak "
                f"{single['mb'] - single['idle']:.0f} MB and {several['mb'] - several['idle']:.0f} MB over the idle",
                flush=True,
            )


def fits(number, axes):
    """fitreference on every kind of heights, on one axis and on many short ones."""
    for count, size in ((1, number), (axes, 50 * axes)):
        for shape in SHAPES:
            for words, more in ASKED.items():
                with tempfile.TemporaryDirectory() as folder:
                    make(folder, size, count, shape)
                    fit, native = child("fitreference", folder, more), child("native", folder)
                    print(
                        f"fitreference, {shape}, {words}: {size} stations on {count} axes {fit['cpu']:.2f} s, "
                        f"{fit['cpu'] / native['cpu']:.1f} field calculators; peak {fit['mb']:.0f} MB",
                        flush=True,
                    )


if __name__ == "__main__":
    if sys.argv[1:2] == ["--one"]:
        one(sys.argv[2], sys.argv[3], json.loads(sys.argv[4]))
    reader = argparse.ArgumentParser(description=__doc__)
    reader.add_argument("entries", nargs="*", default=[*ENTRIES, "fits"])
    reader.add_argument("--stations", type=int, default=100_000)
    reader.add_argument("--axes", type=int, default=1_000)
    given = reader.parse_args()
    if wanted := [entry for entry in given.entries if entry in ENTRIES]:
        many(wanted, given.stations, given.axes)
    if "fits" in given.entries:
        fits(20_000, 1_000)
