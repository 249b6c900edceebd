"""designheights with LINE through the registry: lateral departures, sides, overrides, summary, log and bad inputs."""

import json

import pytest

pyproj = pytest.importorskip("pyproj")
GEOD = pyproj.Geod(ellps="WGS84")
FOOT = 0.3048


def beside(offsets, lat=50.0, lon=8.0, azimuth=40.0, spacing=250.0, heights=100.0, **more):
    """Stations every ``spacing`` metres of the geodesic, ``offsets`` metres right of it, and the two ends of its axis."""
    rows, places = [], []
    for k, offset in enumerate(offsets):
        x, y, back = GEOD.fwd(lon, lat, azimuth, spacing * k)
        places.append((x, y))
        x, y, _ = GEOD.fwd(x, y, back + 270.0, offset) if False else GEOD.fwd(x, y, back - 90.0, offset)
        rows.append({"at": (x, y), "name": f"P{k}", "height": heights, **more})
    return rows, places


OFFSETS = (0.0, 0.003, -0.006, 0.004, 0.0, 0.0051, -0.004, 0.002, 0.0)


@pytest.fixture
def line(toolbox):
    rows, places = beside(OFFSETS)
    return {"STATIONS": toolbox.points(rows), "AXIS": toolbox.lines([{"at": [places[0], places[-1]], "name": "line"}])}


@pytest.mark.parametrize("kind", ["axis", "chord", "fitted"])
def test_try(toolbox, line, kind):
    run = toolbox.run("designheights", LINE=kind, LINE_TOLERANCE=0.005, SUMMARY="memory:", **line)
    print(run.said)
    print(run.results)
    for row in run.rows():
        print(row["station"], row["offset"], row["lateral"], row["side"])
    print(run.rows("SUMMARY"))
    assert 0
