"""Flagged stations are suspected blunders where a test of the same stations in the project says so."""

import pytest

qgis_core = pytest.importorskip("qgis.core")


def test_residuals_take_the_flags_of_the_tested_stations(toolbox, tmp_path):
    from tautline.plugin.review.layer_stations import read_stations
    from tautline.plugin.review.station_texts import why_flagged

    project = qgis_core.QgsProject.instance()
    heights = [5.0 + 0.001 * (-1) ** k for k in range(21)]
    heights[8] += 0.05
    rows = [{"at": (8.0 + 0.0001 * k, 50.0), "height": h, "axis": "line"} for k, h in enumerate(heights)]
    stations, axis = toolbox.points(rows), toolbox.lines([{"at": [(8.0, 50.0), (8.002, 50.0)], "name": "line"}])
    given = {"STATIONS": stations, "AXIS": axis}
    place = {name: str(tmp_path / f"{name}.gpkg") for name in ("residuals", "tested", "elsewhere")}
    residuals = toolbox.run("designheights", TOLERANCE=0.01, OUTPUT=place["residuals"], **given).layer()
    assert not read_stations(residuals).suspected.any()
    fit = {"SIGMA": 0.002, "REFERENCE": "memory:"}
    tested = toolbox.run("fitreference", OUTPUT=place["tested"], **fit, **given)
    other = toolbox.points([{**row, "height": 5.0} for row in rows], name="other")
    more = {"STATIONS": other, "AXIS": axis, "OUTPUT": place["elsewhere"]}
    layer, elsewhere = tested.layer(), toolbox.run("fitreference", **fit, **more).layer()
    project.addMapLayers([layer, elsewhere])
    try:
        found = read_stations(residuals)
        suspected = [row["station"] for row in tested.rows() if row["flag"] == "suspected blunder"]
        assert len(suspected) == 1 and found.station[found.suspected].tolist() == suspected
        row = int(found.suspected.argmax())
        assert why_flagged(found.status[row], found.flag[row], found.moved[row]) == "Suspected blunder"
        assert not found.moved.any() and why_flagged("high", "blunder", True) == "Stretch that moved"
        assert [why_flagged(word, "kept") for word in ("high", "low", "within")] == [
            "Too high",
            "Too low",
            "Within now",
        ]
        assert abs(found.w[row]) > 3.29 and row in found.flagged().tolist()
        # The layer itself is left as it is.
        assert "flag" not in [field.name() for field in residuals.fields()]
    finally:
        project.removeMapLayers([layer.id(), elsewhere.id()])
