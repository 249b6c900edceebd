"""Runs killed at any moment: what stands at the outputs' places afterwards is the old or the new, whole.

A child process runs the entry and is killed after a time drawn from as long as a run takes. ``--long``: 200 kills.
"""

import hashlib
import os
import random
import re
import signal
import sqlite3
import subprocess
import sys
import time

import pytest

qgis_core = pytest.importorskip("qgis.core")
pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="this system has no processes to fork")

ROWS = 400
# Kinds of places: (the entry's outputs by key, in the folder).
PLACES = {
    "GeoPackage": {"OUTPUT": "out.gpkg", "SUMMARY": "summary.gpkg"},
    "tables": {
        "OUTPUT": "ogr:dbname='{}/kept.gpkg' table=\"stations\" (geom)",
        "SUMMARY": "ogr:dbname='{}/kept.gpkg' table=\"per axis\"",
    },
    "Shapefile": {"OUTPUT": "out.shp", "SUMMARY": "summary.csv"},
    "CSV": {"OUTPUT": "out.csv", "SUMMARY": "summary.geojson"},
}


def destination(text, folder):
    return text.format(folder) if text.startswith("ogr:") else str(folder / text)


def killed_after(seconds, action):
    """Run ``action`` in a child process and kill it; True where it had ended by itself."""
    sys.stdout.flush()
    child = os.fork()
    if child == 0:
        devnull = os.open(os.devnull, os.O_WRONLY)
        os.dup2(devnull, 1)
        os.dup2(devnull, 2)
        try:
            action()
        finally:
            os._exit(0)
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if os.waitpid(child, os.WNOHANG) != (0, 0):
            return True
        time.sleep(0.0005)
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    return False


def table(folder, text):
    """What stands at an output's place: sorted rows of (tolerance or design height) as read by the host."""
    asked = destination(text, folder)
    if asked.startswith("ogr:"):
        uri = qgis_core.QgsDataSourceUri(asked[4:])
        asked = f"{uri.database()}|layername={uri.table()}"
    layer = qgis_core.QgsVectorLayer(asked, "there", "ogr")
    assert layer.isValid(), asked
    name = "design_h" if "design_h" in [field.name() for field in layer.fields()] else "height_a"
    return sorted(round(float(feature[name]), 3) for feature in layer.getFeatures())


@pytest.fixture
def killing(toolbox, tmp_path, request):
    stations, axis = toolbox.straight(ROWS, 2.5)
    # Only the design heights are new in each run.
    stations = toolbox.saved(stations, tmp_path / "in.gpkg")
    axis = toolbox.saved(axis, tmp_path / "axis.gpkg")
    folder = tmp_path / "out"
    folder.mkdir()
    toolbox.saved(stations, folder / "kept.gpkg", "bystander")

    def run(height, places):
        import processing

        given = {"STATIONS": stations.source(), "AXIS": axis.source(), "DESIGN": "level", "CHAINAGE_A": 0.0}
        outputs = {key: destination(text, folder) for key, text in places.items()}
        processing.run("tautline:designheights", {**given, "HEIGHT_A": height, **outputs})

    return run, folder, 200 if request.config.getoption("--long") else 4


@pytest.mark.parametrize("kind", PLACES)
def test_a_killed_run_leaves_old_or_new(killing, tmp_path, kind):
    run, folder, kills = killing
    places = PLACES[kind]
    inputs = {path: hashlib.sha256(path.read_bytes()).hexdigest() for path in tmp_path.glob("*.gpkg")}
    draw = random.Random(7)
    run(1.0, places)
    start = time.monotonic()
    run(1.0, places)
    length = time.monotonic() - start
    expected, ended, begun = 1.0, 0, set()
    for k in range(kills):
        new = float(2 + k)
        # A run killed when all was written and nothing moved yet is ended by the next, though that is killed itself.
        begun.add(new)
        ended += killed_after(draw.uniform(0.05, 1.1) * length, lambda height=new: run(height, places))
        found = [table(folder, text) for text in places.values()]
        assert [len(one) for one in found] == [ROWS, 1]
        values = [set(one) for one in found]
        assert all(len(one) == 1 and one <= {expected, *begun} for one in values), (k, values)
        # Both of one run, or the next run puts the second beside the first.
        if values != [{expected}, {expected}]:
            expected, begun = new, set()
            run(new, places)
        if kind == "tables":
            with sqlite3.connect(folder / "kept.gpkg") as connection:
                assert connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)
                assert connection.execute("SELECT count(*) FROM bystander").fetchone() == (ROWS,)
    assert ended < kills
    run(999.0, places)
    assert [set(table(folder, text)) for text in places.values()] == [{999.0}, {999.0}]
    assert not [name for name in os.listdir(folder) if name.startswith(".tautline-")]
    if kind == "tables":
        with sqlite3.connect(folder / "kept.gpkg") as connection:
            names = {name for (name,) in connection.execute("SELECT table_name FROM gpkg_contents")}
        assert not [name for name in names if name.startswith("tautline_unfinished_")]
        assert {"bystander", "stations", "per axis"} <= names
    assert {path: hashlib.sha256(path.read_bytes()).hexdigest() for path in inputs} == inputs


def standing(folder):
    """The run's number in the title of the page and of the PDF that stand in ``folder``, each read to its end."""
    page = (folder / "report.html").read_text()
    assert page.rstrip().endswith("</html>")
    told = subprocess.run(["pdfinfo", str(folder / "report.pdf")], capture_output=True, text=True, check=True).stdout
    assert (folder / "report.pdf").read_bytes().rstrip().endswith(b"%%EOF")
    titles = re.search("<title>(.*)</title>", page).group(1), re.search("Title: +(.*)", told).group(1)
    return [int(re.search(r"run (\d+)", title).group(1)) for title in titles]


def test_a_killed_report_leaves_old_or_new(toolbox, tmp_path, request):
    import processing

    from tests.host.conftest import fingerprints

    stations, axis = toolbox.straight(20, 50.0)
    stations, axis = toolbox.saved(stations, tmp_path / "in.gpkg"), toolbox.saved(axis, tmp_path / "axis.gpkg")
    results, folder = str(tmp_path / "results.gpkg"), tmp_path / "out"
    folder.mkdir()
    toolbox.run("designheights", STATIONS=stations, AXIS=axis, TOLERANCE=0.01, OUTPUT=results)
    inputs = fingerprints(tmp_path.glob("*.gpkg"))

    def run(number):
        outputs = {"HTML": str(folder / "report.html"), "PDF": str(folder / "report.pdf")}
        processing.run("tautline:reviewreport", {"STATIONS": results, "STRUCTURE": f"run {number}", **outputs})

    draw, expected, ended = random.Random(7), 1, 0
    run(1)
    begun = time.monotonic()
    run(1)
    length = time.monotonic() - begun
    kills = 200 if request.config.getoption("--long") else 3
    for new in range(2, 2 + kills):
        ended += killed_after(draw.uniform(0.3, 1.1) * length, lambda number=new: run(number))
        found = standing(folder)
        assert set(found) <= {expected, new}, (new, found)
        # Both of one run, or the next run puts the second beside the first.
        if found != [expected, expected]:
            expected = new
            run(new)
    assert ended < kills
    run(999)
    assert standing(folder) == [999, 999]
    assert sorted(os.listdir(folder)) == ["report.html", "report.pdf"]
    assert fingerprints(inputs) == inputs
