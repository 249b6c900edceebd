"""Places of a layer's stations for a line that is tried: undulations as the recorded run had them, or refused."""

import numpy as np
import pytest

qgis_core = pytest.importorskip("qgis.core")


def layer_of(number=4, **fields):
    layer = qgis_core.QgsVectorLayer(
        "Point?crs=EPSG:32631&field=chainage:double&field=geoid:double", "stations", "memory"
    )
    rows = []
    for k in range(number):
        row = qgis_core.QgsFeature(layer.fields())
        row.setAttributes([10.0 * k, fields.get("geoid", [150.0 + k for k in range(number)])[k]])
        row.setGeometry(qgis_core.QgsGeometry.fromPointXY(qgis_core.QgsPointXY(500000.0 + 10 * k, 5540000.0)))
        rows.append(row)
    layer.dataProvider().addFeatures(rows)
    return layer


def places(host, layer, record):
    from tautline.algorithms.entry.run_record import RunRecord
    from tautline.algorithms.structure.what_if_places import LayerPlaces

    entry = qgis_core.QgsApplication.processingRegistry().algorithmById("tautline:designheights")
    rows = [(one.id(), one.geometry().asPoint()) for one in layer.getFeatures()]
    ids = np.array([number for number, _ in rows])
    x, y = (np.array([getattr(at, name)() for _, at in rows]) for name in ("x", "y"))
    return LayerPlaces(entry, layer, RunRecord.read(record), ids, x, y)


def record(kind, unit="metre", **parameters):
    return {
        "schema": 1,
        "entry": "tautline:designheights",
        "parameters": {"UNDULATION": kind, **parameters},
        "units": {"height_name": unit, "chainage_name": unit},
        "height_system": kind,
    }


def test_without_a_record_the_geoid_is_not_known(host):
    found = places(host, layer_of(), "")
    assert np.all(found.undulation == 0.0) and "not recorded" in found.described
    assert found.lat == pytest.approx([50.01] * 4, abs=0.01) and found.lon == pytest.approx([3.0] * 4, abs=1e-3)


def test_undulations_are_those_of_the_recorded_run_in_its_unit(host):
    """A foot is 0.3048 m exactly."""
    found = places(host, layer_of(), record("field", "foot", UNDULATION_FIELD="geoid"))
    assert found.undulation == pytest.approx(np.array([150.0, 151.0, 152.0, 153.0]) * 0.3048, abs=1e-12)
    found = places(host, layer_of(), record("constant", "foot", UNDULATION_VALUE=100.0))
    assert found.undulation == pytest.approx([30.48] * 4)
    assert np.all(places(host, layer_of(), record("ellipsoidal")).undulation == 0.0)


def test_a_missing_undulation_never_reads_as_zero(host):
    from tautline.algorithms.core.errors import InputError

    layer = layer_of(geoid=[150.0, None, 152.0, 153.0])
    with pytest.raises(InputError, match="row 2"):
        places(host, layer, record("field", UNDULATION_FIELD="geoid"))
    with pytest.raises(InputError, match="no field"):
        places(host, layer, record("field"))
