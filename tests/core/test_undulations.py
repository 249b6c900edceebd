"""Undulations: one value, the stations' own, a grid; and the geoid's slope."""

import numpy as np
import pytest

from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.undulations import (
    ConstantUndulation,
    Grid,
    SmoothGrid,
    StationUndulations,
    SurfaceUndulation,
    library_grid,
)


def test_constant():
    """Its slope is not known, which is not the same as none, unless it is stated."""
    assert ConstantUndulation(5.0, (1e-5, -2e-5)).slope(45.0, 7.0, 100.0, 30.0) == (1e-5, -2e-5)
    assert ConstantUndulation(-31.6).at(45.0, 7.0, 100.0) == -31.6 and ConstantUndulation().at(0.0, 0.0, 0.0) == 0.0
    assert ConstantUndulation(5.0).slope(45.0, 7.0, 100.0, 30.0) is None


def test_station_values_between_stations():
    n = StationUndulations([1000.0, 0.0, 500.0], [48.2, 48.0, 48.1])
    assert n.at(0.0, 0.0, 250.0) == pytest.approx(48.05, abs=1e-12)
    assert n.at(0.0, 0.0, 750.0) == pytest.approx(48.15, abs=1e-12)
    assert n.at(0.0, 0.0, -100.0) == 48.0 and n.at(0.0, 0.0, 5000.0) == 48.2


@pytest.mark.parametrize("azimuth", [0.0, 90.0, 217.0])
def test_slope_of_station_values(azimuth):
    """Along the axis from the stations within 500 m, nothing across: a jump farther away does not count."""
    s = np.arange(0.0, 3001.0, 100.0)
    n = StationUndulations(s, np.where(s > 1700.0, 60.0, 48.0 + 2e-5 * s))
    east, north = n.slope(0.0, 0.0, 1200.0, azimuth)
    ahead = np.array([np.sin(np.radians(azimuth)), np.cos(np.radians(azimuth))])
    assert np.array([east, north]) @ ahead == pytest.approx(2e-5, abs=1e-12)
    assert east * ahead[1] - north * ahead[0] == pytest.approx(0.0, abs=1e-15)


def test_slope_is_not_known_from_one_place():
    assert StationUndulations([0.0, 2000.0], [1.0, 2.0]).slope(0.0, 0.0, 0.0, 0.0) is None
    assert StationUndulations([0.0, 0.5], [1.0, 2.0]).slope(0.0, 0.0, 0.0, 0.0) is None
    two = StationUndulations([0.0, 400.0], [1.0, 1.004])
    assert two.slope(0.0, 0.0, 100.0, 90.0) == pytest.approx((1e-5, 0.0), abs=1e-16)


def _plane(lat, lon):
    return 40.0 + 2.0 * (np.asarray(lat) - 45.0) - 3.0 * (np.asarray(lon) - 7.0)


def _grid():
    rows, columns = np.mgrid[0:9, 0:11]
    return Grid(_plane(46.0 - 0.25 * rows, 6.0 + 0.2 * columns), west=6.0, north=46.0, step_lon=0.2, step_lat=0.25)


def test_grid_is_bilinear():
    grid, rng = _grid(), np.random.default_rng(2)
    lat, lon = rng.uniform(44.0, 46.0, 50), rng.uniform(6.0, 8.0, 50)
    assert np.allclose(grid(lat, lon), _plane(lat, lon), rtol=0.0, atol=1e-12)
    assert np.allclose(grid(lat, lon - 360.0), _plane(lat, lon), rtol=0.0, atol=1e-9)
    corners = np.array([44.0, 44.0, 46.0, 46.0]), np.array([6.0, 8.0, 6.0, 8.0])
    assert np.allclose(grid(*corners), _plane(*corners), rtol=0.0, atol=1e-12)
    saddle = Grid(np.array([[0.0, 1.0], [1.0, 0.0]]), 0.0, 1.0, 1.0, 1.0)
    assert saddle(np.array([0.5, 0.75]), np.array([0.5, 0.5])) == pytest.approx([0.5, 0.5], abs=1e-15)
    assert saddle(np.array([0.75]), np.array([0.25]))[0] == pytest.approx(0.375, abs=1e-15)


@pytest.mark.parametrize("lat, lon", [(43.99, 7.0), (46.01, 7.0), (45.0, 5.99), (45.0, 8.01), (45.0, 187.0)])
def test_outside_the_grid(lat, lon):
    with pytest.raises(InputError, match=f"does not reach latitude {lat:.5f}, longitude {lon:.5f}"):
        _grid()(np.array([45.0, lat]), np.array([7.0, lon]))


def test_hole_in_the_grid():
    grid = _grid()
    grid.values[4, 5] = np.nan  # 45.0, 7.0
    assert np.isfinite(grid(np.array([45.4]), np.array([7.0])))[0]
    with pytest.raises(InputError, match="no value at latitude 45.10000, longitude 7.10000"):
        grid(np.array([45.4, 45.1]), np.array([7.0, 7.1]))


@pytest.mark.parametrize("columns", [360, 361])
def test_whole_turn(columns):
    """Around the globe, with and without the first column repeated at the end: no seam at the antimeridian."""
    lon = -180.0 + np.arange(columns)
    values = np.cos(np.radians(lon))[None, :] * np.array([[1.0], [2.0]])
    grid = Grid(values, -180.0, 1.0, 1.0, 1.0)
    east = grid(np.full(4, 1.0), np.array([179.0, 179.5, 180.0, 180.5]))
    assert east[1] == pytest.approx(0.5 * (east[0] + east[2]), abs=1e-12) and east[2] == pytest.approx(-1.0, abs=1e-12)
    west = grid(np.full(3, 1.0), np.array([-180.5, -180.0, -179.5]))
    assert np.allclose(west, east[[1, 2, 3]], rtol=0.0, atol=1e-12)


def test_slope_of_a_surface(wgs84):
    """Per metre to the east and north, the same across cell edges; radii of WGS 84 at 45 degrees by hand (EL-03)."""
    source = SurfaceUndulation(_grid(), 0.25, wgs84)
    assert source.at(45.1, 7.1, 0.0) == pytest.approx(_plane(45.1, 7.1), abs=1e-12)
    for lon in (6.99, 7.0, 7.01):
        east, north = source.slope(45.0, lon, 0.0, 123.0)
        assert east == pytest.approx(-3.0 / np.radians(4517590.879), rel=1e-7)
        assert north == pytest.approx(2.0 / np.radians(6367381.816), rel=1e-5)


def test_slope_at_the_pole(wgs84):
    """A geoid that rises by 1e-5 to one side of the pole keeps about that slope in all frames there."""

    def surface(lat, lon):
        return 20.0 + 1e-5 * 6.4e6 * np.cos(np.radians(lat)) * np.cos(np.radians(lon))

    source = SurfaceUndulation(surface, 0.25, wgs84)
    for lon in (0.0, 77.0, -160.0):
        east, north = source.slope(90.0, lon, 0.0, 0.0)
        assert np.hypot(east, north) == pytest.approx(1e-5, rel=0.02)
        assert np.arctan2(-east, -north) == pytest.approx(np.radians(lon), abs=0.02)


# Between the nodes --------------------------------------------------------------------------------------------------


def _second_differences(surface, lat, lon, half):
    return surface(lat - half, lon) + surface(lat + half, lon) - 2.0 * surface(lat, lon)


def test_spline_has_the_nodes_and_no_kinks():
    """Against scipy's own spline over the whole grid; a plane stays a plane; wrapped in longitude without a seam."""
    from scipy.interpolate import RectBivariateSpline

    rng = np.random.default_rng(5)
    values = rng.normal(size=(160, 150)).cumsum(axis=0).cumsum(axis=1) * 1e-3
    grid = Grid(values, 6.0, 60.0, 0.1, 0.1)
    smooth = SmoothGrid(grid)
    lat, lon = rng.uniform(45.0, 59.0, 400), rng.uniform(7.0, 20.0, 400)
    whole = RectBivariateSpline(np.arange(160.0), np.arange(150.0), values, s=0.0)
    assert np.allclose(smooth(lat, lon), whole.ev((60.0 - lat) / 0.1, (lon - 6.0) / 0.1), rtol=0.0, atol=2e-6)
    nodes = np.array([59.9, 53.6, 44.2]), np.array([6.1, 12.4, 20.8])
    assert np.allclose(smooth(*nodes), grid(*nodes), rtol=0.0, atol=1e-9)
    plane = SmoothGrid(_grid())
    assert np.allclose(plane(lat * 0.1 + 39.5, lon * 0.1 + 5.5), _plane(lat * 0.1 + 39.5, lon * 0.1 + 5.5), atol=1e-9)
    east, north = plane.gradient(np.array([45.1]), np.array([7.05]))
    assert (east[0], north[0]) == (pytest.approx(-3.0, abs=1e-9), pytest.approx(2.0, abs=1e-9))
    round_ = SmoothGrid(Grid(np.cos(np.radians(np.mgrid[0:181, 0:360][1] * 1.0)), -180.0, 90.0, 1.0, 1.0))
    assert round_(np.array([10.0, 10.0]), np.array([179.5, -180.5])) == pytest.approx([0.99996192] * 2, abs=1e-6)


def test_gradient_is_that_of_the_surface():
    smooth, half = SmoothGrid(library_grid()), 1e-4
    lat, lon = np.array([36.0, -12.3, 64.9]), np.array([140.0, 15.2, -151.7])
    east, north = smooth.gradient(lat, lon)
    assert np.allclose(north, (smooth(lat + half, lon) - smooth(lat - half, lon)) / (2 * half), rtol=0.0, atol=1e-5)
    assert np.allclose(east, (smooth(lat, lon + half) - smooth(lat, lon - half)) / (2 * half), rtol=0.0, atol=1e-5)


def test_holes_and_edges():
    values = _grid().values.copy()
    values[0, 0] = np.nan
    smooth = SmoothGrid(Grid(values, 6.0, 46.0, 0.2, 0.25))
    assert smooth(np.array([44.6]), np.array([7.5])) == pytest.approx(_plane(44.6, 7.5), abs=1e-9)
    assert smooth.shortened[0] == (44.6, 7.5, 46.0, 6.0)
    with pytest.raises(InputError, match="no value at latitude 46.00000, longitude 6.00000, beside latitude 45.90000"):
        smooth(np.array([45.9]), np.array([6.1]))
    with pytest.raises(InputError, match="does not reach"):
        smooth(np.array([46.6]), np.array([6.1]))


def test_a_hole_far_away_takes_no_cell_for_bilinear():
    """One node of 160 x 150 unknown: beyond twelve cells the surface is the spline as before, to 1e-6; nearer the
    margin shrinks and says where; beside the hole it is refused, and N never reads as 0."""
    rng = np.random.default_rng(5)
    values = 40.0 + rng.normal(size=(160, 150)).cumsum(axis=0).cumsum(axis=1) * 1e-3
    whole = SmoothGrid(Grid(values.copy(), 6.0, 60.0, 0.1, 0.1))
    values[75, 70] = np.nan  # 52.5, 13.0
    holed = SmoothGrid(Grid(values, 6.0, 60.0, 0.1, 0.1))
    lat, lon = rng.uniform(51.0, 54.0, 200), rng.uniform(11.0, 15.0, 200)
    away = np.maximum(np.abs(lat - 52.5), np.abs(lon - 13.0)) / 0.1
    far, near = away > 14.0, (away > 3.0) & (away < 10.0)
    assert far.sum() > 10 and near.sum() > 10
    assert np.allclose(holed(lat[far], lon[far]), whole(lat[far], lon[far]), rtol=0.0, atol=1e-6)
    assert holed.shortened == ()
    bilinear = holed.grid(lat[near], lon[near])
    smooth = holed(lat[near], lon[near])
    # With one cell of margin a spline is still nearer to the truth than bilinear cells are, which are no spline at all.
    assert (
        np.abs(smooth - whole(lat[near], lon[near])).max() < 0.5 * np.abs(bilinear - whole(lat[near], lon[near])).max()
    )
    assert holed.shortened and all(place[2:] == pytest.approx((52.5, 13.0), abs=1e-9) for place in holed.shortened)
    for reader in (holed, holed.gradient):
        with pytest.raises(
            InputError, match="no value at latitude 52.50000, longitude 13.00000, beside latitude 52.55"
        ):
            reader(np.array([52.55]), np.array([13.02]))


def test_a_grid_too_small_for_a_smooth_surface_is_refused():
    small = SmoothGrid(Grid(np.ones((3, 9)), 6.0, 46.0, 0.2, 0.25))
    with pytest.raises(InputError, match="3 by 9 nodes; .* needs 4 by 4. Set GEOID_BETWEEN to bilinear"):
        small(np.array([45.8]), np.array([6.3]))


@pytest.mark.parametrize(
    "lat, lon, undulation",
    [
        # GE-03. Source: agency OUTPUT.DAT / readme test set, quoted in four code bases; interpolated by splines or
        # summed up: a spline agrees to 3 mm, where bilinear cells are off by up to 56 mm.
        (38.628155, 269.779155, -31.628),
        (-14.621217, 305.021114, -2.969),
        (46.874319, 102.448729, -43.575),
        (-23.617446, 133.874712, 15.871),
        (38.625473, 359.9995, 50.066),
        (-0.466744, 0.0023, 17.329),
    ],
)
def test_published_undulations(lat, lon, undulation):
    assert SmoothGrid(library_grid())(np.array([lat]), np.array([lon]))[0] == pytest.approx(undulation, abs=0.003)


def test_kinks_at_the_edges_of_cells_are_gone():
    """Lines of 3 km north-south, centred on grid rows: what a straight line shows as residual is half of the second
    difference of N. Bilinear cells: 162 mm near a steep island; the true bending there is a twentieth."""
    rng, half = np.random.default_rng(6), 1500.0 / 111_000.0
    lat, lon = np.round(rng.uniform(-60.0, 60.0, 2000) * 4.0) / 4.0, rng.uniform(-180.0, 180.0, 2000)
    lat[0], lon[0] = 28.25, -16.75
    smooth = _second_differences(SmoothGrid(library_grid()), lat, lon, half)
    bilinear = _second_differences(library_grid(), lat, lon, half)
    assert abs(0.5 * bilinear[0]) == pytest.approx(0.162, abs=0.001) and abs(0.5 * smooth[0]) < 0.012
    assert np.sqrt(np.mean(bilinear**2)) > 10.0 * np.sqrt(np.mean(smooth**2))
    assert np.abs(bilinear).max() > 10.0 * np.abs(smooth).max()
