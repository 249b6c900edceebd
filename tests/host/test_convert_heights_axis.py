"""convertheights with an axis: the geoid's slope and bending along it, the grid's name and accuracy."""

import numpy as np
import pytest


@pytest.fixture
def site(toolbox):
    points = toolbox.points(
        [
            {"at": (20.0, 10.0 + 0.001 * k), "height": 100.0, "undulation": 30.0 + 0.001 * k + 0.0001 * k * k}
            for k in range(11)
        ]
    )
    axis = toolbox.lines([{"at": [(20.0, 10.0), (20.0, 10.01)], "name": "north"}])
    return {"STATIONS": points, "AXIS": axis}


def test_grid_of_the_projection_library_is_named_and_too_coarse(toolbox, site):
    """Cells of 15' are 27.8 km: 1.1 km show no bending. EGM96 is stated to 1 m by PROJ."""
    run = toolbox.run("convertheights", **site, CURVE="memory:")
    assert (
        "us_nga_egm96_15" in run.said and "cells of 15.0\u2032" in run.said and "1.00 m as PROJ states it" in run.said
    )
    assert "too coarse to show bending" in run.said and "Axis 'north': over its 1106 m the geoid" in run.said
    rows = run.rows("CURVE")
    assert len(rows) == 41 and {row["n_bend"] for row in rows} == {None} and rows[0]["n_change"] == 0.0
    assert rows[0]["station"] == "0+000" and rows[-1]["chainage"] == pytest.approx(1106.0, abs=1.0)
    assert run.results["COUNT"] == 11


def test_stations_with_their_own_undulations(toolbox, site):
    """0.001 k + 0.0001 k^2 over ten steps: 20 mm from end to end, and 2.5 mm below the chord in the middle."""
    run = toolbox.run("convertheights", **site, UNDULATION="field", CURVE="memory:")
    rows = run.rows("CURVE")
    assert rows[-1]["n_change"] == pytest.approx(0.020, abs=1e-9) and rows[5]["n_bend"] == pytest.approx(
        -0.0025, abs=1e-6
    )
    assert "rises by 20.0 mm" in run.said and "bends by \u22122.5 mm" in run.said and "at 0+553" in run.said


def test_raster_finer_than_half_the_axis(toolbox, site, tmp_path):
    """A raster of 0.001 degrees (two cells are 221 m) with 0.4 m per square degree: 0.01 mm over 0.01 degrees."""
    from osgeo import gdal, osr

    path, n = str(tmp_path / "fine.tif"), 60
    lat = 10.04 - 0.001 * (np.arange(n) + 0.5)
    data = gdal.GetDriverByName("GTiff").Create(path, n, n, 1, gdal.GDT_Float64)
    data.SetGeoTransform((19.97, 0.001, 0.0, 10.04, 0.0, -0.001))
    reference = osr.SpatialReference()
    reference.ImportFromEPSG(4326)
    data.SetProjection(reference.ExportToWkt())
    data.GetRasterBand(1).WriteArray(np.repeat((20.0 + 400.0 * (lat - 10.005) ** 2)[:, None], n, axis=1))
    data = None
    run = toolbox.run("convertheights", **site, GEOID=path, CURVE="memory:")
    bends = [row["n_bend"] for row in run.rows("CURVE")]
    # 400 m per square degree: 0.01 degrees bend by 400 * 0.005^2 = 10 mm; the bilinear cells add at most 0.1 mm.
    assert min(bends) == pytest.approx(-0.010, abs=2e-4)
    assert "the raster 'fine'" in run.said and "does not state its accuracy" in run.said


def test_constant_hides_it_and_says_so(toolbox, site):
    run = toolbox.run("convertheights", **site, UNDULATION="constant", UNDULATION_VALUE=17.0, CURVE="memory:")
    assert run.rows("CURVE") == [] and any("hides the geoid's slope" in text for text in run.warnings)


def test_axis_in_feet(toolbox, site):
    run = toolbox.run("convertheights", **site, UNDULATION="field", HEIGHT_UNIT="foot", CURVE="memory:")
    assert run.rows("CURVE")[-1]["n_change"] == pytest.approx(0.020, abs=1e-9)  # the field is in feet then
    assert run.rows("CURVE")[-1]["chainage"] == pytest.approx(1106.0 / 0.3048, abs=3.0)


def test_curve_without_an_axis(toolbox, site):
    assert (
        toolbox.refusal("convertheights", STATIONS=site["STATIONS"], CURVE="memory:")
        == "CURVE needs an axis: give AXIS."
    )


def test_points_too_far_from_the_axis_say_nothing(toolbox, site):
    far = toolbox.lines([{"at": [(21.0, 10.0), (21.0, 10.01)], "name": "far"}])
    run = toolbox.run("convertheights", STATIONS=site["STATIONS"], AXIS=far, UNDULATION="field", CURVE="memory:")
    assert any("Axis 'far'" in text and "two places" in text for text in run.warnings)
