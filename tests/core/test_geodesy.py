"""Ellipsoids, radii, Earth-centred positions and datums, against published tables and worked examples."""

import os
import shutil
import subprocess
import sys
import textwrap

import numpy as np
import pyproj
import pytest

from tautline.algorithms.core.errors import InputError
from tautline.algorithms.core.geodesy import (
    Ellipsoid,
    datum_name,
    east_north,
    ellipsoid_of,
    foot_and_normal,
    from_latitude_longitude,
    geographic,
    is_like_wgs84,
    library_undulation,
    library_versions,
    position,
    shift_accuracy,
    to_latitude_longitude,
    vertical_part,
)

GRS80 = Ellipsoid(6378137.0, 1.0 / 298.257222101)
WGS84 = Ellipsoid(6378137.0, 1.0 / 298.257223563)
BESSEL = Ellipsoid(6377397.155, 1.0 / 299.1528128)


def degrees(text):
    """Degrees of '53 48 33.820', south and west with a minus in front."""
    whole, minutes, seconds = (float(part) for part in text.strip("-").split())
    return (-1.0 if text.startswith("-") else 1.0) * (whole + minutes / 60.0 + seconds / 3600.0)


def _polar_radius(ellipsoid):
    return position(90.0, 0.0, 0.0, ellipsoid)[2]


def _authalic_radius(ellipsoid):
    """Radius of the sphere of equal area: area = integral of M nu cos(phi), from the radii of the core."""
    nodes, weights = np.polynomial.legendre.leggauss(40)
    lat = 45.0 * (nodes + 1.0)
    strips = ellipsoid.radius_meridian(lat) * ellipsoid.radius_across(lat) * np.cos(np.radians(lat))
    return np.sqrt(np.radians(45.0) * weights @ strips)


def test_grs80_constants():
    """EL-01. Source: Moritz, Geodetic Reference System 1980, Bulletin Geodesique 54:3; values in geodis.dgfi.badw.de.

    Trap: R2 and the quadrant are printed one unit too high in the fourth decimal (7.1810 and 65.7293; exact are
    7.18088 and 65.72923), so the printed digits are not what is right.
    """
    a, b = GRS80.a, _polar_radius(GRS80)
    assert b == pytest.approx(6356752.3141, abs=1e-4)
    assert GRS80.e2 == pytest.approx(0.0066943800229, abs=1e-14)
    assert (2.0 * a + b) / 3.0 == pytest.approx(6371008.7714, abs=1e-4)
    assert np.cbrt(a * a * b) == pytest.approx(6371000.7900, abs=1e-4)
    assert GRS80.radius_meridian(90.0) == pytest.approx(6399593.6259, abs=1e-4)
    assert GRS80.radius_across(90.0) == pytest.approx(6399593.6259, abs=1e-4)
    assert GRS80.radius_meridian(0.0) == pytest.approx(6335439.3271, abs=1e-4)
    authalic, quadrant = _authalic_radius(GRS80), GRS80.inverse(0.0, 0.0, 90.0, 0.0)[2]
    assert authalic == pytest.approx(6371007.180884, abs=2e-6)
    assert quadrant == pytest.approx(10001965.72923, abs=1e-5)
    assert round(authalic, 4) != 6371007.1810 and round(quadrant, 4) != 10001965.7293


def test_wgs84_constants():
    """EL-02. Source: NIMA TR8350.2 (3rd ed., Table 3.3 from memory)."""
    a, b = WGS84.a, _polar_radius(WGS84)
    assert b == pytest.approx(6356752.3142, abs=1e-4)
    assert WGS84.e2 == pytest.approx(0.00669437999014, abs=1e-14)
    assert (a * a - b * b) / (b * b) == pytest.approx(0.00673949674228, abs=1e-14)
    assert (2.0 * a + b) / 3.0 == pytest.approx(6371008.7714, abs=1e-4)
    assert np.cbrt(a * a * b) == pytest.approx(6371000.7900, abs=1e-4)
    assert WGS84.radius_across(-90.0) == pytest.approx(6399593.6258, abs=1e-4)
    assert a * np.sqrt(WGS84.e2) == pytest.approx(521854.0084, abs=1e-4)


def test_radii_at_0_45_90():
    """EL-03. Source: pymap3d 3.2.0 tests/test_rcurve.py (PyPI)."""
    assert np.allclose(
        WGS84.radius_meridian(np.array([0.0, 45.0, 90.0])),
        [6335439.327, 6367381.8156, 6399593.6258],
        rtol=0.0,
        atol=1e-3,
    )
    foot, _ = foot_and_normal(45.0, 30.0, WGS84)
    assert np.hypot(*foot[:2]) == pytest.approx(4517590.87884893, abs=1e-5)


def test_radii_on_bessel():
    """EL-05. Source: IOGP/EPSG Guidance Note 7-2, Oblique Stereographic (method 9809) example, numbers from memory.

    1/R of azimuths 45 degrees off the meridian is the mean of 1/M and 1/nu; the Gaussian radius is their mean too.
    """
    lat = degrees("52 09 22.178")
    meridian, across = BESSEL.radius_meridian(lat), BESSEL.radius_across(lat)
    assert meridian == pytest.approx(6374588.71, abs=5e-3) and across == pytest.approx(6390710.613, abs=1e-3)
    assert np.sqrt(meridian * across) == pytest.approx(6382644.571, abs=1e-3)
    assert BESSEL.euler_radius(lat, 0.0) == pytest.approx(6374588.71, abs=5e-3)
    assert BESSEL.euler_radius(lat, -90.0) == pytest.approx(6390710.613, abs=1e-3)
    assert BESSEL.euler_radius(lat, 45.0) == pytest.approx(2.0 / (1.0 / 6374588.71 + 1.0 / 6390710.613), abs=5e-3)


# EL-07 to EL-10. Source: EPSG Guidance Note 7-2, methods 9602, 9836 and 9837 (epsg.io; sec. 4.1.3).
POINT = (degrees("53 48 33.820"), degrees("2 07 46.380"), 73.0)
POINT_XYZ = np.array([3771793.968, 140253.342, 5124304.349])
ORIGIN_XYZ = np.array([3652755.3058, 319574.6799, 5201547.3536])
TOPOCENTRIC = [-189013.869, -128642.040, -4220.171]


def _topocentric(xyz, origin_xyz, lat, lon):
    east, north = east_north(lat, lon)
    up = foot_and_normal(lat, lon, WGS84)[1]
    return np.stack([east, north, up]) @ (xyz - origin_xyz)


def test_geographic_to_geocentric():
    """EL-07, lat, lon and h from memory, confirmed."""
    assert np.allclose(position(*POINT, WGS84), POINT_XYZ, rtol=0.0, atol=1e-3)


def test_geocentric_to_geographic():
    """EL-10. The source's h is that of coordinates printed to 0.1 mm."""
    lat, lon, height = geographic(ORIGIN_XYZ, WGS84)
    assert np.radians(lat) == pytest.approx(0.9599310885, abs=2e-10)
    assert np.radians(lon) == pytest.approx(0.0872664625, abs=2e-10)
    assert height == pytest.approx(200.0, abs=1e-3)
    p = np.hypot(*ORIGIN_XYZ[:2])
    q = np.arctan2(ORIGIN_XYZ[2] * WGS84.a, p * _polar_radius(WGS84))
    assert p == pytest.approx(3666708.2376, abs=1e-4) and q == pytest.approx(0.9583523313, abs=1e-10)


def test_topocentric():
    """EL-08 (from geocentric) and EL-09 (from geographic; origin 55 N, 5 E, 200 m)."""
    lat, lon, _ = geographic(ORIGIN_XYZ, WGS84)
    assert np.allclose(_topocentric(POINT_XYZ, ORIGIN_XYZ, lat, lon), TOPOCENTRIC, rtol=0.0, atol=1e-3)
    origin = position(55.0, 5.0, 200.0, WGS84)
    assert np.allclose(_topocentric(position(*POINT, WGS84), origin, 55.0, 5.0), TOPOCENTRIC, rtol=0.0, atol=1e-3)


@pytest.mark.parametrize(
    "place, xyz, tolerance",
    [
        # ST-V1-XYZ, ST-G1-XYZ, ST-K1-XYZ. Source: site constants as packaged in PyPI bilby 2.8.2, gw/detector/detectors
        # (V1, GEO600, K1); the positions from the same sites' published constants, heights in single precision.
        ((43.63141447207, 10.5044966112, 51.88399887), (4546374.099, 842989.697626, 4378576.96241), 5e-4),
        ((52.24514666663, 9.807192777776, 114.4250031), (3856309.94926, 666598.956317, 5019641.41725), 5e-4),
        ((36.41186033946, 137.3059560115, 414.1809998), (-3777336.024, 3484898.411, 3765313.697), 2e-3),
    ],
)
def test_published_sites(place, xyz, tolerance):
    assert np.allclose(position(*place, WGS84), xyz, rtol=0.0, atol=tolerance)


def test_tunnel_benchmark():
    """ST-K1-NO100: h = H + N = 372.0 + 40.9809 m, and the Earth-centred position on GRS 1980.

    Source: slides 'Vacuum system layout' 2012-07-31, slide 3, copy slideplayer.com/slide/9393029.
    """
    place = degrees("36 24 42.69671"), degrees("137 18 21.4418"), 372.0 + 40.9809
    xyz = position(*place, GRS80)
    assert np.allclose(xyz, [-3777335.323, 3484897.761, 3765312.972], rtol=0.0, atol=1e-3)
    assert geographic(xyz, GRS80)[2] == pytest.approx(412.9809, abs=1e-6)


def test_positions_to_50_digits(world, exact, owed):
    """Foot points and normals everywhere; the way back too."""
    true, errors, back = exact(world.ellipsoid), [], []
    for lat, lon, height, _ in world.axes:
        xyz = position(lat, lon, height, world.ellipsoid)
        errors += [float(p) - float(q) for p, q in zip(xyz, true.position(lat, lon, height))]
        lat2, lon2, height2 = geographic(xyz, world.ellipsoid)
        back += [np.radians(lat2 - lat) * world.ellipsoid.a, height2 - height]
        if abs(lat) < 89.9999:
            back.append(np.radians((lon2 - lon + 180.0) % 360.0 - 180.0) * world.ellipsoid.a * np.cos(np.radians(lat)))
    owed("Earth-centred position", errors, 5e-9)
    owed("latitude, longitude and height from a position", back, 1e-8)


def test_geodesics_against_another_solution(world, owed):
    """Ends and lengths of geodesics against geographiclib, poles and antimeridian among them."""
    lengths, places = [], []
    for lat, lon, azimuth, distance in world.axes:
        true = world.geodesic.Direct(lat, lon, azimuth, distance)
        lat2, lon2, azimuth2 = world.ellipsoid.forward(lat, lon, azimuth, distance)
        places.append(
            np.linalg.norm(
                foot_and_normal(lat2, lon2, world.ellipsoid)[0]
                - foot_and_normal(true["lat2"], true["lon2"], world.ellipsoid)[0]
            )
        )
        ahead, at_end, length = world.ellipsoid.inverse(lat, lon, true["lat2"], true["lon2"])
        lengths.append(length - distance)
        if distance > 1000.0 and abs(true["lat2"]) < 89.0 and abs(lat) < 89.0:
            assert abs((azimuth2 - true["azi2"] + 180.0) % 360.0 - 180.0) < 1e-8
            assert abs((at_end - true["azi2"] + 180.0) % 360.0 - 180.0) < 1e-8
            assert abs((ahead - azimuth + 180.0) % 360.0 - 180.0) < 1e-8
    owed("geodesic, forward", places, 2e-8)
    owed("geodesic, length", lengths, 2e-8)


def test_scalars_stay_scalars():
    assert all(np.ndim(v) == 0 for v in WGS84.inverse(1.0, 2.0, 3.0, 4.0) + WGS84.forward(1.0, 2.0, 3.0, 4.0))
    lat, lon, azimuth = WGS84.forward(1.0, 2.0, np.array([0.0, 90.0]), 1000.0)
    assert lat.shape == lon.shape == azimuth.shape == (2,)


@pytest.mark.parametrize(
    "a, f",
    [
        (0.0, 0.0),
        (-1.0, 0.0),
        (np.nan, 0.0),
        (6378137.0, 298.257),
        (6378137.0, -0.003),
        (np.inf, 0.0),
        (6378137.0, np.nan),
    ],
)
def test_no_ellipsoid(a, f):
    with pytest.raises(InputError, match="not an Earth ellipsoid"):
        Ellipsoid(a, f)


def test_ellipsoid_and_datum_of_a_reference_system():
    assert ellipsoid_of("EPSG:32632") == ellipsoid_of("EPSG:4326") and is_like_wgs84(ellipsoid_of("EPSG:32632"))
    assert ellipsoid_of("EPSG:31467").a == 6377397.155 and not is_like_wgs84(ellipsoid_of("EPSG:31467"))
    assert is_like_wgs84(ellipsoid_of("EPSG:25832"))
    assert ellipsoid_of("EPSG:25832+7837").f == pytest.approx(1.0 / 298.257222101, abs=1e-15)
    assert ellipsoid_of("+proj=longlat +R=6371000 +no_defs") == Ellipsoid(6371000.0, 0.0)
    assert datum_name("EPSG:32632") == "WGS 84"


@pytest.mark.parametrize("definition", ["", "EPSG:999999", "EPSG:4978", "EPSG:5773"])
def test_reference_systems_without_latitude_and_longitude(definition):
    with pytest.raises(InputError, match="coordinate reference system"):
        ellipsoid_of(definition)


def test_utm_worked_example():
    """Central meridian: easting 500 000 m, northing 0.9996 times the meridian arc; the arc by integrating M."""
    nodes, weights = np.polynomial.legendre.leggauss(40)
    arc = np.radians(24.0) * weights @ WGS84.radius_meridian(24.0 * (nodes + 1.0))
    lat, lon = to_latitude_longitude([500000.0], [0.9996 * arc], "EPSG:32632")
    assert lat[0] == pytest.approx(48.0, abs=1e-10) and lon[0] == pytest.approx(9.0, abs=1e-12)
    x, y = from_latitude_longitude(lat, lon, "EPSG:32632")
    assert x[0] == pytest.approx(500000.0, abs=1e-6) and y[0] == pytest.approx(0.9996 * arc, abs=1e-6)


def test_ballpark_between_datums_is_refused():
    """WGS 84 to an ellipsoid that belongs to no datum: only a ballpark step is known."""
    with pytest.raises(InputError, match="ballpark"):
        to_latitude_longitude([9.0], [48.0], "EPSG:4326", "EPSG:4001")


def test_point_outside_the_projection():
    with pytest.raises(InputError, match="outside the domain"):
        to_latitude_longitude([1e12], [1e12], "EPSG:32632")


def test_versions_are_told():
    assert set(library_versions()) == {"pyproj", "PROJ"} and all(library_versions().values())


# The EGM96 grid of 15 minutes; Debian has it in the package proj-data, so a missing grid is a failure there.


@pytest.mark.parametrize(
    "lat, lon, undulation, tolerance",
    [
        # GE-01, bilinear. Source: unit test of a Python EGM96 package (load_embedded_egm96_grid15).
        (37.12378643088312, 138.2839817085188, 39.27814, 1e-4),
        (0.0, 0.0, 17.16158, 1e-4),
        # GE-03. Source: agency OUTPUT.DAT / readme test set, quoted in four code bases. It was interpolated by splines
        # or
        # summed up, so the bilinear values differ by 0.003 to 0.056 m. Longitudes run from 0 to 360.
        (38.628155, 269.779155, -31.628, 0.06),
        (-14.621217, 305.021114, -2.969, 0.06),
        (46.874319, 102.448729, -43.575, 0.06),
        (-23.617446, 133.874712, 15.871, 0.06),
        (38.625473, 359.9995, 50.066, 0.06),
        (-0.466744, 0.0023, 17.329, 0.06),
    ],
)
def test_egm96(lat, lon, undulation, tolerance):
    assert library_undulation(lat, lon)[0] == pytest.approx(undulation, abs=tolerance)


def test_egm96_across_the_antimeridian():
    """No seam: between 179.75 and 180 degrees east the grid is bilinear as everywhere, and 180 is -180."""
    n = library_undulation(np.full(5, 10.0), np.array([179.75, 179.85, 180.0, -180.0, 540.0]))
    assert n[1] == pytest.approx(0.6 * n[0] + 0.4 * n[2], abs=1e-5) and n[2] == n[3] == n[4]


def test_missing_grid_never_reads_as_zero(tmp_path):
    """With a PROJ data folder that holds the database and no grid, the undulation is refused, not zero.

    In a process of its own: PROJ keeps grids it has once opened.
    """
    folders = [os.path.join(folder, "proj.db") for folder in pyproj.datadir.get_data_dir().split(os.pathsep)]
    shutil.copy(next(path for path in folders if os.path.exists(path)), tmp_path)
    code = """
        import importlib.util, sys
        import pyproj
        pyproj.datadir.set_data_dir(sys.argv[1])
        spec = importlib.util.spec_from_file_location("tautline", sys.argv[2] + "/__init__.py",
                                                      submodule_search_locations=[sys.argv[2]])
        sys.modules["tautline"] = importlib.util.module_from_spec(spec)
        from tautline.algorithms.core.geodesy import InputError, library_undulation
        try:
            print("value", library_undulation(48.0, 9.0))
        except InputError as error:
            print("refused", error)
        """
    root = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
    command = [sys.executable, "-c", textwrap.dedent(code), str(tmp_path), root]
    done = subprocess.run(command, capture_output=True, text=True, env={**os.environ, "PROJ_NETWORK": "OFF"})
    assert done.returncode == 0, done.stderr
    assert done.stdout.startswith("refused The geoid grid EGM96 is not installed")


@pytest.mark.parametrize("lat, lon", [(0.0, 0.0), (45.3, -123.4), (89.9, 179.9), (-88.0, 12.0), (31.0, 361.0)])
def test_many_points_close_together_as_one_by_one(lat, lon):
    """Long arrays take short series around their middle: the same places as by mpmath, 50 digits, to 4e-9 m."""
    mpmath = pytest.importorskip("mpmath")
    ellipsoid = Ellipsoid(6378137.0, 1.0 / 298.257223563)
    spread = np.linspace(-1.0, 1.0, 1001)
    lats, lons = np.clip(lat + 2.2 * spread, -90.0, 90.0), lon + 2.2 * spread[::-1]
    feet, normals = foot_and_normal(lats, lons, ellipsoid)
    with mpmath.workdps(50):
        e2 = mpmath.mpf(ellipsoid.f) * (2 - mpmath.mpf(ellipsoid.f))
        for k in range(0, 1001, 125):
            phi, lam = (mpmath.radians(mpmath.mpf(float(v[k]))) for v in (lats, lons))
            nu = mpmath.mpf(ellipsoid.a) / mpmath.sqrt(1 - e2 * mpmath.sin(phi) ** 2)
            up = (mpmath.cos(phi) * mpmath.cos(lam), mpmath.cos(phi) * mpmath.sin(lam), mpmath.sin(phi))
            wanted = (nu * up[0], nu * up[1], nu * (1 - e2) * up[2])
            assert max(abs(float(mpmath.mpf(float(v)) - w)) for v, w in zip(feet[k], wanted)) < 4e-9
            assert max(abs(float(mpmath.mpf(float(v)) - w)) for v, w in zip(normals[k], up)) < 6e-16


def _geographic_systems():
    """(authority, code) of every geographic reference system that PROJ knows on the Earth."""
    from pyproj.database import query_crs_info
    from pyproj.enums import PJType

    kinds = [PJType.GEOGRAPHIC_2D_CRS, PJType.GEOGRAPHIC_3D_CRS]
    return [
        (info.auth_name, info.code)
        for authority in ("EPSG", "ESRI", "IGNF", "OGC")
        for info in query_crs_info(auth_name=authority, pj_types=kinds)
    ]


def test_every_geographic_system_gives_degrees_from_greenwich():
    """Units and meridians by pyproj's own conversion: the same system written out with degrees, and the meridian's
    longitude as the EPSG registry gives it in its own unit."""
    systems, counted = _geographic_systems(), set()
    assert len(systems) > 1000
    for number, (authority, code) in enumerate(systems):
        crs = pyproj.CRS.from_authority(authority, code)
        unit = crs.axis_info[0].unit_name
        plain = unit == "degree" and crs.prime_meridian.name == "Greenwich"
        if plain and number % 20 and not os.environ.get("TAUTLINE_ALL"):
            continue  # a thousand alike: all of them pass with TAUTLINE_ALL set
        in_degrees = crs.to_json_dict()
        in_degrees.pop("id", None)
        for axis in in_degrees["coordinate_system"]["axis"]:
            if axis["direction"] in ("north", "east"):
                axis["unit"] = "degree"
        way = pyproj.Transformer.from_crs(crs, pyproj.CRS.from_json_dict(in_degrees), always_xy=True)
        lon, lat = way.transform(5.0, 40.0)
        meridian = crs.prime_meridian
        turn = {"grad": 400.0, "degree": 360.0}[meridian.unit_name]
        found = to_latitude_longitude(5.0, 40.0, f"{authority}:{code}")
        assert np.allclose(found, (lat, lon + meridian.longitude * 360.0 / turn), rtol=0.0, atol=1e-12), (
            authority,
            code,
        )
        assert np.allclose(from_latitude_longitude(*found, f"{authority}:{code}"), (5.0, 40.0), rtol=0.0, atol=1e-12)
        counted.add((unit, meridian.name))
    assert {("grad", "Paris"), ("degree", "Greenwich"), ("degree", "Ferro"), ("degree", "Jakarta")} <= counted


@pytest.mark.parametrize("code", ["EPSG:27561", "EPSG:27562", "EPSG:27563", "EPSG:27571", "EPSG:27572", "EPSG:27573"])
def test_projected_systems_that_count_in_grads(code):
    """3,000 m on the map are 3,000 m on the ground but for the grid's scale; the ends agree with PROJ's way to
    the same datum in degrees from Greenwich (EPSG:4275, longitude rotation of EPSG)."""
    centre = pyproj.Transformer.from_crs("EPSG:4275", code, always_xy=True).transform(2.5, 46.5)
    x, y = centre[0] + np.array([0.0, 3000.0]), np.full(2, centre[1])
    lat, lon = to_latitude_longitude(x, y, code)
    lon_there, lat_there = pyproj.Transformer.from_crs(code, "EPSG:4275", always_xy=True).transform(x, y)
    assert np.allclose(lat, lat_there, rtol=0.0, atol=1e-10)
    # Paris is 2.5969213 gon east; the registry's rotation has it in seconds with three decimals: 0.3 mm.
    assert np.allclose(lon, lon_there, rtol=0.0, atol=1e-8)
    length = ellipsoid_of(code).inverse(lat[0], lon[0], lat[1], lon[1])[2]
    assert length == pytest.approx(3000.0, rel=2e-3)
    assert np.allclose(from_latitude_longitude(lat, lon, code), (x, y), rtol=0.0, atol=1e-6)


@pytest.mark.parametrize(
    "source, target, place, stated",
    [
        # EPSG's own accuracies of the operations: ED50 to WGS 84 (1) 10 m over all of Europe, (18) 1 m in the North
        # Sea's German part, DHDN to WGS 84 (2) 3 m; the null transformation from ETRS89 1 m.
        ("EPSG:4230", "EPSG:4326", (24.0, 38.0), (5.0, 10.0)),
        ("EPSG:31467", "EPSG:4326", (3500000.0, 5500000.0), (1.0, 3.0)),
        ("EPSG:25832", "EPSG:4326", (500000.0, 5500000.0), (1.0, 1.0)),
        ("EPSG:32632", "EPSG:4326", (500000.0, 5500000.0), (0.0, 0.0)),
    ],
)
def test_accuracy_of_a_shift_between_datums(source, target, place, stated):
    low, high = stated
    assert low <= shift_accuracy(source, target, *place) <= high


@pytest.mark.parametrize(
    "definition, expected",
    [
        ("EPSG:4326", None),
        ("EPSG:32632", None),
        ("EPSG:4978", None),
        ("EPSG:4979", (True, 1.0, False)),
        ("EPSG:7415", (False, 1.0, False)),  # Amersfoort / RD New + NAP height
        ("EPSG:2263+6360", (False, 1200 / 3937, False)),  # NAVD88 height (ftUS)
        ("EPSG:32632+5831", (False, 1.0, True)),  # a depth
    ],
)
def test_vertical_part(definition, expected):
    part = vertical_part(definition)
    found = None if part is None else (part.ellipsoidal, part.metres, part.down)
    assert found == (expected if expected is None else pytest.approx(expected))
