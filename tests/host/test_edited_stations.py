"""Stations under review after edits: reading again only what was edited gives what reading everything gives."""

import json

import numpy as np
import pytest

pytest.importorskip("qgis.core")

FIELDS = ("axis:string", "station:string", "chainage:double", "design_h:double", "residual:double", "status:string")


def made(folder, kind, with_station):
    from qgis.core import (
        QgsCoordinateTransformContext,
        QgsFeature,
        QgsGeometry,
        QgsPointXY,
        QgsProject,
        QgsVectorFileWriter,
        QgsVectorLayer,
    )

    fields = [field for field in FIELDS if with_station or not field.startswith("station")]
    layer = QgsVectorLayer("&".join(["Point?crs=EPSG:32734", *(f"field={one}" for one in fields)]), "edited", "memory")
    features = []
    for k in range(100):
        feature = QgsFeature(layer.fields())
        values = ["ab"[k % 2], f"{k}+000", 10.0 * (k // 3), 100.0, 0.001 * (k - 50), "within"]
        feature.setAttributes([value for value, field in zip(values, FIELDS) if field in fields])
        feature.setGeometry(QgsGeometry.fromPointXY(QgsPointXY(500000.0 + k, 6500000.0)))
        features.append(feature)
    layer.dataProvider().addFeatures(features)
    if kind == "gpkg":
        options = QgsVectorFileWriter.SaveVectorOptions()
        options.driverName = "GPKG"
        write = getattr(QgsVectorFileWriter, "writeAsVectorFormatV3", None) or QgsVectorFileWriter.writeAsVectorFormatV2
        write(layer, str(folder / "edited.gpkg"), QgsCoordinateTransformContext(), options)
        layer = QgsVectorLayer(str(folder / "edited.gpkg"), "edited", "ogr")
    record = {"units": {"height_name": "metre", "chainage_name": "metre"}, "axes": {"a": {"tolerance": 0.01}}}
    layer.setCustomProperty("tautline/record", json.dumps(record))
    QgsProject.instance().addMapLayer(layer)
    return layer


@pytest.fixture(params=[("gpkg", True), ("memory", True), ("memory", False)], ids=str)
def subject(host, window_library, tmp_path, request):
    from qgis.core import QgsProject

    from tautline.plugin.review.subject import Subject

    layer = made(tmp_path, *request.param)
    found = Subject()
    found.set_layer(layer)
    yield found
    found.close()
    QgsProject.instance().removeMapLayer(layer.id())


def caught_up(subject):
    """Let the subject read what was edited; its stations must be those of a whole reading."""
    from tautline.plugin.review.layer_stations import read_stations

    assert subject._timer.isActive()
    subject._catch_up()
    assert not subject._timer.isActive()
    whole = read_stations(subject.layer)
    for name in ("ids", "x", "y", "chainage", "axis", "station", "status", "tolerance"):
        np.testing.assert_array_equal(getattr(subject.stations, name), getattr(whole, name), err_msg=name)
    for name, values in whole.heights.items():
        np.testing.assert_array_equal(subject.stations.heights[name], values, err_msg=name)
    return whole


@pytest.fixture
def no_whole_reading(monkeypatch):
    """From here on only the features that were edited may be read."""
    from tautline.plugin.review import layer_stations, subject

    def refuse(*_):
        raise AssertionError("all was read again")

    real = layer_stations.read_stations
    monkeypatch.setattr(subject, "read_stations", refuse)
    monkeypatch.setattr(layer_stations, "read_stations", lambda layer: real(layer))


def new_feature(layer, chainage, axis="a"):
    from qgis.core import QgsFeature, QgsGeometry, QgsPointXY

    feature = QgsFeature(layer.fields())
    feature["axis"], feature["chainage"], feature["design_h"], feature["residual"] = axis, chainage, 100.0, 0.004
    feature.setGeometry(QgsGeometry.fromPointXY(QgsPointXY(500100.0, 6500000.0)))
    return feature


class TestEdits:
    def test_values_places_and_undo(self, subject, no_whole_reading):
        from qgis.core import QgsGeometry, QgsPointXY

        layer, ids = subject.layer, subject.stations.ids.tolist()
        residual, chainage = (layer.fields().indexOf(name) for name in ("residual", "chainage"))
        layer.startEditing()
        layer.changeAttributeValue(ids[3], residual, 0.5)
        assert 0.5 in caught_up(subject).heights["residual"]
        layer.changeAttributeValue(ids[4], chainage, -5.0)  # to the front of its axis
        layer.changeGeometry(ids[5], QgsGeometry.fromPointXY(QgsPointXY(1.0, 2.0)))
        assert 1.0 in caught_up(subject).x
        layer.changeAttributeValue(ids[6], chainage, None)  # no station any more
        assert len(caught_up(subject)) == 99
        for _ in range(4):
            layer.undoStack().undo()
        assert len(caught_up(subject)) == 100
        layer.rollBack()

    def test_features_come_and_go(self, subject, no_whole_reading):
        layer, ids = subject.layer, subject.stations.ids.tolist()
        layer.startEditing()
        layer.addFeature(new_feature(layer, 42.0))
        layer.addFeature(new_feature(layer, 42.0, "new axis"))
        assert "new axis" in caught_up(subject).axes
        layer.deleteFeature(ids[0])
        caught_up(subject)
        assert layer.commitChanges()
        assert len(caught_up(subject)) == 101

    def test_edits_given_up(self, subject, no_whole_reading):
        layer, ids = subject.layer, subject.stations.ids.tolist()
        layer.startEditing()
        layer.addFeature(new_feature(layer, 42.0))
        layer.deleteFeature(ids[7])
        layer.changeAttributeValue(ids[8], layer.fields().indexOf("axis"), "c")
        caught_up(subject)
        layer.rollBack()
        assert caught_up(subject).ids.tolist() == ids

    def test_the_current_station_stays(self, subject, no_whole_reading):
        layer = subject.layer
        subject.set_current(9)
        name = subject.name_of(9)
        layer.startEditing()
        layer.deleteFeature(int(subject.stations.ids[2]))
        caught_up(subject)
        assert subject.current == 8 and subject.name_of(8) == name
        layer.rollBack()

    def test_another_record_reads_all_of_it(self, subject):
        record = {"units": {"height_name": "foot", "chainage_name": "metre"}}
        subject.layer.setCustomProperty("tautline/record", json.dumps(record))
        assert caught_up(subject).height_unit == subject.stations.height_unit == "foot"
        assert subject.stations.heights["design_h"][0] == pytest.approx(30.48)  # 100 ft, the foot of 1959

    def test_many_edits_read_all_of_it(self, subject):
        layer = subject.layer
        layer.startEditing()
        for feature in list(layer.getFeatures()):
            layer.changeAttributeValue(feature.id(), layer.fields().indexOf("residual"), 0.25)
        assert set(caught_up(subject).heights["residual"].tolist()) == {0.25}
        layer.rollBack()


def test_nothing_is_read_while_a_run_goes_on(subject, monkeypatch):
    """Two openings of one GeoPackage at once can wait for each other for ever on the oldest host."""
    from qgis.core import QgsProject

    from tautline.plugin.review import subject as module

    layer = subject.layer
    monkeypatch.setattr(module, "runs_going", lambda: True)
    layer.startEditing()
    layer.changeAttributeValue(int(subject.stations.ids[0]), layer.fields().indexOf("residual"), 0.5)
    subject._catch_up()
    assert 0.5 not in subject.stations.heights["residual"] and subject._timer.isActive()
    subject.set_layer(None)
    subject.set_layer(layer)
    assert subject.is_waiting and QgsProject.instance().mapLayer(layer.id()) is layer
    monkeypatch.setattr(module, "runs_going", lambda: False)
    subject._catch_up()
    assert not subject.is_waiting and 0.5 in subject.stations.heights["residual"]
    layer.rollBack()
