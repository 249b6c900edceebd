"""convertheights through the registry: h = H + N from a grid, a raster, a field or one value."""

import pytest

# Undulations of EGM96 at 0 N 0 E and 40 N 75 W by PROJ's own grid, seen on three releases of it.
EGM96 = {(0.0, 0.0): 17.1616, (-75.0, 40.0): -34.040}


def test_grid_of_the_projection_library(toolbox):
    points = toolbox.points([{"at": at, "height": 100.0} for at in EGM96])
    run = toolbox.run("convertheights", STATIONS=points)
    assert run.column("undulation") == pytest.approx(list(EGM96.values()), abs=1e-3)
    for row in run.rows():
        assert row["height_ell"] == 100.0 and row["height_geo"] == pytest.approx(100.0 - row["undulation"], abs=1e-12)
    assert list(run.rows()[0]) == ["height", "undulation", "height_ell", "height_geo"] and run.results["COUNT"] == 2
    assert "EGM96" in run.said


def test_the_other_way(toolbox):
    points = toolbox.points([{"at": (0.0, 0.0), "height": 100.0}])
    (row,) = toolbox.run("convertheights", STATIONS=points, HEIGHTS_ARE="geoid").rows()
    assert row["height_geo"] == 100.0 and row["height_ell"] == pytest.approx(117.1616, abs=1e-3)


@pytest.mark.parametrize("lon", [185.0, -175.0])
def test_longitude_a_turn_away(toolbox, lon):
    run = toolbox.run("convertheights", STATIONS=toolbox.points([{"at": (lon, 10.0), "height": 0.0}]))
    there = toolbox.run("convertheights", STATIONS=toolbox.points([{"at": (-175.0, 10.0), "height": 0.0}]))
    assert run.column("undulation") == pytest.approx(there.column("undulation"), abs=1e-9)


def test_constant_and_feet(toolbox):
    points = toolbox.points([{"at": (0.0, 0.0), "height": 100.0}, {"at": (0.0, 0.0), "height": None}])
    run = toolbox.run(
        "convertheights", STATIONS=points, UNDULATION="constant", UNDULATION_VALUE=-30.5, HEIGHT_UNIT="foot"
    )
    assert run.column("undulation") == pytest.approx([-30.5, -30.5], abs=1e-12)
    assert run.column("height_geo") == [pytest.approx(130.5, abs=1e-12), None]
    assert run.column("height_ell") == [100.0, None]
    assert run.results["COUNT"] == 1 and "1 height converted; 1 point has none." in run.info


def test_grid_in_feet(toolbox):
    points = toolbox.points([{"at": (0.0, 0.0), "height": 100.0}])
    run = toolbox.run("convertheights", STATIONS=points, HEIGHT_UNIT="us_foot")
    assert run.column("undulation") == [pytest.approx(17.1616 * 3937 / 1200, abs=4e-3)]


def test_field(toolbox):
    points = toolbox.points([{"at": (0.0, 0.0), "height": 100.0, "n": 5.0}])
    (row,) = toolbox.run("convertheights", STATIONS=points, UNDULATION="field", UNDULATION_FIELD="n").rows()
    assert row["undulation"] == 5.0 and row["height_geo"] == 95.0 and row["n"] == 5.0


def test_z(toolbox):
    points = toolbox.points([{"at": (0.0, 0.0, 100.0)}], kind="PointZ")
    run = toolbox.run("convertheights", STATIONS=points)
    assert run.column("height_geo") == [pytest.approx(100.0 - 17.1616, abs=1e-3)]
    assert next(run.layer().getFeatures()).geometry().constGet().z() == 100.0


def test_projected_points(toolbox):
    points = toolbox.points([{"at": (166021.4, 0.0), "height": 0.0}], "EPSG:32631")
    assert toolbox.run("convertheights", STATIONS=points).column("undulation") == [pytest.approx(17.1616, abs=2e-2)]


def test_unknown_is_no_choice_here(toolbox):
    points = toolbox.points([{"at": (0.0, 0.0), "height": 0.0}])
    assert "UNDULATION is 'unknown', but can only be grid, field, constant." in toolbox.refusal(
        "convertheights", STATIONS=points, UNDULATION="unknown"
    )


def test_rasters_that_do_not_serve(toolbox, tmp_path):
    gdal, osr = pytest.importorskip("osgeo.gdal"), pytest.importorskip("osgeo.osr")
    points = toolbox.points([{"at": (8.0, 50.0), "height": 0.0}])

    def raster(name, epsg, transform, value):
        data = gdal.GetDriverByName("GTiff").Create(str(tmp_path / name), 4, 4, 1, gdal.GDT_Float32)
        data.SetGeoTransform(transform)
        system = osr.SpatialReference()
        system.ImportFromEPSG(epsg)
        data.SetProjection(system.ExportToWkt())
        data.GetRasterBand(1).SetNoDataValue(-9999.0)
        data.GetRasterBand(1).Fill(value)
        data.FlushCache()
        del data
        return str(tmp_path / name)

    degrees = (7.0, 0.5, 0.0, 51.0, 0.0, -0.5)
    for name, path, said in (
        (
            "projected",
            raster("m.tif", 32632, (4e5, 1000.0, 0.0, 6e6, 0.0, -1000.0), 40.0),
            "not in latitude and longitude",
        ),
        ("holes", raster("h.tif", 4326, degrees, -9999.0), "beside latitude 50.00000, longitude 8.00000"),
        (
            "elsewhere",
            raster("e.tif", 4326, (17.0, 0.5, 0.0, 51.0, 0.0, -0.5), 40.0),
            "does not reach latitude 50.00000",
        ),
    ):
        assert said in toolbox.refusal("convertheights", STATIONS=points, GEOID=path), name
    run = toolbox.run("convertheights", STATIONS=points, GEOID=raster("g.tif", 4326, degrees, 40.0))
    assert run.column("height_geo") == [pytest.approx(-40.0, abs=1e-9)] and "raster 'g'" in run.said
