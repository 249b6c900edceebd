"""Published positions and arm geometries of long straight structures through the toolbox.

Heights are of straight lines in space: computed here from vertex, azimuth and altitude with 40 digits, and compared
with numbers computed elsewhere (checks of the project, recomputed with two libraries).
"""

import mpmath
import pytest

mpmath.mp.dps = 40
A, F = mpmath.mpf(6378137), 1 / mpmath.mpf("298.257223563")
E2 = F * (2 - F)

# GPS positions of the tower centres BS and NE, WGS 84: degrees, minutes, seconds, ellipsoidal height in metres.
# Source: site page 'Location of ...' of 2015-12-10, copy workarea.ego-gw.it/ego2/virgo/data-analysis/location-of-virgo.
BS = ((43, 37, 53.0880), (10, 30, 16.1885), 53.238)
NE = ((43, 39, 24.9479), (10, 31, 0.8264), 53.069)
TANGENT_AT_NE, BUILT_MINUS_TANGENT, CHORD_MIDDLE, CHORD_SAG = 53.9476323, -0.8786323, 52.976092, 0.177408
AZIMUTH, CHORD = 19.432768, 3006.399135

# Vertex lat, lon, h; azimuth clockwise from north and altitude at the vertex; length; heights at 0, 1/4 .. 1 of it.
# Source of the geometry: package bilby 2.8.2, files V1, GEO600, K1.interferometer (azimuths there run counter-clockwise
# from east); heights computed from it with 30 digits and again with PROJ, agreeing to 1e-7 m.
ARMS = {
    "V1 X": (
        43.63141447207,
        10.5044966112,
        51.88399887,
        19.432600236,
        0.0,
        3000.0,
        (51.88399887, 51.92816235, 52.06065271, 52.28146985, 52.59061366),
    ),
    "V1 Y": (
        43.63141447207,
        10.5044966112,
        51.88399887,
        289.43259921,
        0.0,
        3000.0,
        (51.88399887, 51.92804133, 52.06016868, 52.28038089, 52.58867791),
    ),
    "G1 X": (
        52.24514666663,
        9.807192777776,
        114.4250031,
        68.388300423,
        0.0,
        600.0,
        (114.4250031, 114.4267638, 114.4320459, 114.4408495, 114.4531745),
    ),
    "G1 Y": (
        52.24514666663,
        9.807192777776,
        114.4250031,
        334.05690249,
        0.0,
        600.0,
        (114.4250031, 114.4267668, 114.4320579, 114.4408764, 114.4532224),
    ),
    "K1 X": (
        36.41186033946,
        137.3059560115,
        414.1809998,
        60.396227774,
        0.00314139994,
        3026.50708,
        (414.1809998, 416.6027332, 419.1142065, 421.7154197, 424.4063726),
    ),
}


def place(lat, lon, height):
    lat, lon = mpmath.radians(mpmath.mpf(lat)), mpmath.radians(mpmath.mpf(lon))
    nu = A / mpmath.sqrt(1 - E2 * mpmath.sin(lat) ** 2)
    ring = (nu + height) * mpmath.cos(lat)
    return [ring * mpmath.cos(lon), ring * mpmath.sin(lon), (nu * (1 - E2) + height) * mpmath.sin(lat)]


def latitude_longitude(x, y, z):
    """Degrees, by iteration until nothing changes."""
    ring, lat = mpmath.hypot(x, y), mpmath.atan2(z, mpmath.hypot(x, y) * (1 - E2))
    for _ in range(30):
        nu = A / mpmath.sqrt(1 - E2 * mpmath.sin(lat) ** 2)
        lat = mpmath.atan2(z + E2 * nu * mpmath.sin(lat), ring)
    return float(mpmath.degrees(lat)), float(mpmath.degrees(mpmath.atan2(y, x)))


def along_line(lat, lon, height, azimuth, altitude, distance):
    """Latitude and longitude of the point of the straight line at ``distance`` from the vertex."""
    phi, lam = mpmath.radians(mpmath.mpf(lat)), mpmath.radians(mpmath.mpf(lon))
    az = mpmath.radians(mpmath.mpf(azimuth))
    sin, cos = mpmath.sin, mpmath.cos
    east = [-sin(lam), cos(lam), 0]
    north = [-sin(phi) * cos(lam), -sin(phi) * sin(lam), cos(phi)]
    up = [cos(phi) * cos(lam), cos(phi) * sin(lam), sin(phi)]
    step = [cos(altitude) * (sin(az) * e + cos(az) * n) + sin(altitude) * u for e, n, u in zip(east, north, up)]
    return latitude_longitude(*(p + distance * s for p, s in zip(place(lat, lon, height), step)))


def degrees(parts):
    return parts[0] + parts[1] / 60 + parts[2] / 3600


@pytest.fixture
def tower_layers(toolbox):
    ends = [(degrees(lat), degrees(lon), h) for lat, lon, h in (BS, NE)]
    middle = latitude_longitude(*((p + q) / 2 for p, q in zip(place(*ends[0]), place(*ends[1]))))
    stations = [{"at": (lon, lat), "name": name, "height": h} for name, (lat, lon, h) in zip(("BS", "NE"), ends)] + [
        {"at": middle[::-1], "name": "middle", "height": None}
    ]
    axis = [{"at": [(lon, lat) for lat, lon, _ in ends], "name": "BS to NE"}]
    return {"STATIONS": toolbox.points(stations), "AXIS": toolbox.lines(axis), "UNDULATION": "ellipsoidal"}


def test_tangent_at_the_beam_splitter_tower(toolbox, tower_layers):
    run = toolbox.run("designheights", DESIGN="tangent", CHAINAGE_A="0", **tower_layers)
    rows = run.by("name")
    assert rows["NE"]["design_h"] == pytest.approx(TANGENT_AT_NE, abs=1e-6)
    assert rows["NE"]["residual"] == pytest.approx(BUILT_MINUS_TANGENT, abs=1e-6)
    assert rows["NE"]["adjust"] == pytest.approx(-BUILT_MINUS_TANGENT, abs=1e-6)
    assert rows["NE"]["flat_h"] == pytest.approx(BS[2], abs=1e-12)
    assert rows["BS"]["residual"] == pytest.approx(0.0, abs=1e-9)
    assert rows["middle"]["residual"] is None and rows["middle"]["status"] == "no height"


def test_chord_between_the_towers(toolbox, tower_layers):
    rows = toolbox.run("designheights", **tower_layers).by("name")
    assert rows["middle"]["design_h"] == pytest.approx(CHORD_MIDDLE, abs=1e-6)
    # The chord lies below the level surface between its ends: the effect is negative.
    assert rows["middle"]["curv_eff"] == pytest.approx(-CHORD_SAG, abs=1e-6)
    assert rows["NE"]["residual"] == pytest.approx(0.0, abs=1e-9)


def test_azimuth_and_chord_of_the_towers(toolbox, tower_layers):
    run = toolbox.run("generatestations", AXIS=tower_layers["AXIS"], CHAINAGE_HEIGHT=53.15)
    first, last = run.rows()
    # The page prints the azimuth to 1e-6 degree from positions printed to 1e-4 second: 1.5e-5 degree between them.
    assert first["azimuth"] == pytest.approx(AZIMUTH, abs=1.5e-5)
    # The chord is shorter than the arc at its height by s^3/24R^2, 0.03 mm; printed to 1e-6 m.
    assert last["chainage"] - CHORD == pytest.approx(CHORD**3 / 24 / 6.372e6**2, abs=1e-4)


@pytest.mark.parametrize("name", ARMS)
def test_packaged_arm_geometry(toolbox, name):
    lat, lon, h, azimuth, altitude, length, expected = ARMS[name]
    places = [along_line(lat, lon, h, azimuth, altitude, length * k / 4) for k in range(5)]
    stations = toolbox.points([{"at": at[::-1], "height": built} for at, built in zip(places, expected)])
    axis = toolbox.lines([{"at": [places[0][::-1], places[-1][::-1]], "name": name}])
    common = {"STATIONS": stations, "AXIS": axis, "UNDULATION": "ellipsoidal", "CHAINAGE_A": "0", "HEIGHT_A": h}
    run = toolbox.run("designheights", DESIGN="inclined", SLOPE=float(mpmath.tan(altitude)), **common)
    assert run.column("design_h") == pytest.approx(expected, abs=1e-6)
    assert run.column("residual") == pytest.approx([0.0] * 5, abs=1e-6)
    assert all(abs(offset) < 1e-3 for offset in run.column("offset"))
    if altitude == 0.0:
        run = toolbox.run("designheights", DESIGN="tangent", **common)
        assert run.column("design_h") == pytest.approx(expected, abs=1e-6)
        # A straight structure rises above the level surface on both sides of its tangent point.
        assert all(effect > 0.0 for effect in run.column("curv_eff")[1:])
