"""Stations that a run has measured and another measures anew: told where the columns contradict what is measured."""

import numpy as np
import pytest

pyproj = pytest.importorskip("pyproj")
qgis_core = pytest.importorskip("qgis.core")

WGS = pyproj.Geod(ellps="WGS84")
METRES = {"metre": 1.0, "foot": 0.3048, "us_foot": 1200.0 / 3937.0}
NUMBER, STEP = 13, 100.0
ELSEWHERE, TURNED = "stand elsewhere than their column", "runs the other way"
MEASURING = ["measurestations", "designheights", "fitreference", "testcurvature"]


def corners(k_first=0, k_last=NUMBER - 1):
    """Two places on a geodesic (the library's) from 8° E 50° N, ``STEP`` metres times k along it."""
    return [WGS.fwd(8.0, 50.0, 40.0, STEP * k)[:2] for k in (k_first, k_last)]


def survey(toolbox, unit, high=1500.0):
    """Stations 3 m right of the axis, far above the ellipsoid, so that a kilometre is 0.24 m longer up there."""
    rows = []
    for k in range(NUMBER):
        lon, lat, back = WGS.fwd(8.0, 50.0, 40.0, STEP * k) if k else (8.0, 50.0, 220.0)
        place = WGS.fwd(lon, lat, back - 90.0, 3.0)[:2]
        rows.append({"at": place, "height": (high + 0.01 * (k % 4)) / METRES[unit], "undulation": 0.0})
    return toolbox.points(rows), toolbox.lines([{"at": corners(), "name": "wall"}])


def measured(toolbox, tmp_path, unit, entry="measurestations", **more):
    stations, axis = survey(toolbox, unit)
    given = {"HEIGHT_UNIT": unit, "OUTPUT": str(tmp_path / "first.gpkg"), **more}
    run = toolbox.run(entry, STATIONS=stations, AXIS=axis, **given)
    assert ELSEWHERE not in run.said
    return run.layer(), axis


def more_of(entry):
    return {} if entry != "fitreference" else {"REFERENCE": "memory:"}


def move(layer, row, metres):
    """Move a point along the axis."""
    feature = list(layer.getFeatures())[row]
    place = feature.geometry().asPoint()
    there = qgis_core.QgsPointXY(*WGS.fwd(place.x(), place.y(), 40.0, metres)[:2])
    assert layer.dataProvider().changeGeometryValues({feature.id(): qgis_core.QgsGeometry.fromPointXY(there)})


def turned(toolbox):
    return toolbox.lines([{"at": corners()[::-1], "name": "wall"}])


def contradictions(run):
    return [text for text in run.warnings if ELSEWHERE in text or "the other way" in text]


@pytest.mark.parametrize("unit", ["metre", "us_foot"])
@pytest.mark.parametrize("entry", MEASURING)
def test_a_point_moved_along_the_axis_is_told(toolbox, tmp_path, entry, unit):
    layer, axis = measured(toolbox, tmp_path, unit)
    run = toolbox.run(entry, STATIONS=layer, AXIS=axis, **more_of(entry))
    assert contradictions(run) == []
    move(layer, 8, 15.5)
    (told,) = contradictions(toolbox.run(entry, STATIONS=layer, AXIS=axis, **more_of(entry)))
    # 800 and 815.5 m on the ellipsoid, longer by the height over the radius of a normal section (Euler), 6386 km here.
    scale = 1.0 + 1500.0 / 6_386_000.0
    texts = []
    for metres in (800.0 * scale, 815.5 * scale):
        value = round(metres / METRES[unit], 3 if unit == "metre" else 2)
        size = 1000 if unit == "metre" else 100
        texts.append((int(value // size), value % size))
    assert told.startswith(
        "1 of 13 stations of layer 'OUTPUT' stand elsewhere than their column 'chainage' says, the first in row 9 ("
    )
    was, now = told.split("(")[1].split(")")[0].split(", now ")
    for text, (whole, rest) in zip((was, now), texts):
        left, _, right = text.partition("+")
        assert int(left) == whole and float(right) == pytest.approx(rest, abs=0.02)
    assert told.endswith("they are measured anew.")


@pytest.mark.parametrize("unit", ["metre", "foot"])
@pytest.mark.parametrize("entry", MEASURING)
def test_an_axis_that_was_turned_is_told_and_no_station_beside(toolbox, tmp_path, entry, unit):
    layer, _ = measured(toolbox, tmp_path, unit)
    (told,) = contradictions(toolbox.run(entry, STATIONS=layer, AXIS=turned(toolbox), **more_of(entry)))
    assert told == (
        "Axis 'wall' runs the other way than when layer 'OUTPUT' was measured: chainages count from its other end, "
        "left and right are exchanged."
    )


def test_two_turned_axes_are_one_warning(toolbox, tmp_path):
    stations, _ = survey(toolbox, "metre")
    ends = [corners(0, 5), corners(7, 12)]
    axes = [{"at": at, "name": name} for at, name in zip(ends, ("low", "high"))]
    first = toolbox.run(
        "measurestations", STATIONS=stations, AXIS=toolbox.lines(axes), OUTPUT=str(tmp_path / "first.gpkg")
    )
    back = toolbox.lines([{**one, "at": one["at"][::-1]} for one in axes])
    (told,) = contradictions(toolbox.run("designheights", STATIONS=first.layer(), AXIS=back))
    assert told.startswith("Axes 'low', 'high' run the other way than when layer 'OUTPUT' was measured")


def test_heights_and_starts_of_chainages_are_no_other_place(toolbox, tmp_path):
    layer, axis = measured(toolbox, tmp_path, "foot")
    for given in ({"CHAINAGE_HEIGHT": 0.0}, {"CHAINAGE_START": "10+00"}):
        run = toolbox.run("designheights", STATIONS=layer, AXIS=axis, **given)
        assert contradictions(run) == []
        # The columns are others all the same.
        was, now = (np.array([f["chainage"] for f in one.getFeatures()]) for one in (layer, run.layer()))
        assert np.abs(now - was).max() > 0.9
    # An axis that begins elsewhere, unsaid: every station is told.
    longer = toolbox.lines([{"at": [WGS.fwd(8.0, 50.0, 220.0, 50.0)[:2], corners()[1]], "name": "wall"}])
    (told,) = contradictions(toolbox.run("designheights", STATIONS=layer, AXIS=longer))
    assert told.startswith("13 of 13 stations of layer 'OUTPUT' stand elsewhere") and "row 1 (0+00, now 1+64" in told


def test_a_layer_without_a_record_tells_nothing(toolbox, tmp_path):
    layer, axis = measured(toolbox, tmp_path, "metre")
    layer.removeCustomProperty("tautline/record")
    copy = qgis_core.QgsVectorLayer("Point?crs=EPSG:4326", "copy", "memory")
    copy.dataProvider().addAttributes(layer.fields().toList()[1:])
    copy.updateFields()
    features = []
    for feature in layer.getFeatures():
        other = qgis_core.QgsFeature(copy.fields())
        other.setGeometry(feature.geometry())
        other.setAttributes(feature.attributes()[1:])
        features.append(other)
    copy.dataProvider().addFeatures(features)
    move(copy, 4, 20.0)
    assert contradictions(toolbox.run("designheights", STATIONS=copy, AXIS=axis)) == []


@pytest.mark.parametrize("unit", ["metre", "us_foot"])
def test_the_geoid_along_a_turned_axis(toolbox, tmp_path, unit):
    layer, axis = measured(toolbox, tmp_path, unit, CHAINAGE_START="10+00")
    given = {"STATIONS": layer, "UNDULATION": "field", "HEIGHTS_ARE": "geoid"}
    assert contradictions(toolbox.run("convertheights", AXIS=axis, **given)) == []
    (told,) = contradictions(toolbox.run("convertheights", AXIS=turned(toolbox), **given))
    assert told.startswith("Axis 'wall' runs the other way than when layer 'OUTPUT' was measured")
