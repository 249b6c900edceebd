"""measurestations on points of a projection: scale and arc-to-chord never enter, against a published formula and 50
digits; and the standard deviations that points bring, carried across the axis."""

import functools

import mpmath
import numpy as np
import pytest

pyproj = pytest.importorskip("pyproj")
pytest.importorskip("qgis.core")

# WGS 84; zone 32 of the Universal Transverse Mercator: scale at its meridian (9 degrees east) and its false easting.
A, F = mpmath.mpf(6378137), 1 / mpmath.mpf("298.257223563")
E2, K0, FALSE_EAST, MERIDIAN = F * (2 - F), mpmath.mpf("0.9996"), 500000, 9
WGS = pyproj.Geod(ellps="WGS84")


# 50 digits, from the definitions ------------------------------------------------------------------------------------


def digits(number):
    """A function that runs with so many digits."""

    def decorated(function):
        @functools.wraps(function)
        def run(*given):
            with mpmath.workdps(number):
                return function(*given)

        return run

    return decorated


def radii(lat):
    """(M, nu): radii of the meridian and across it."""
    root = mpmath.sqrt(1 - E2 * mpmath.sin(lat) ** 2)
    return A * (1 - E2) / root**3, A / root


@digits(50)
def unprojected(east, north):
    """Latitude and longitude, radians, of a place of the grid.

    The projection is the meridian's length as an analytic function: N + iE = k0 m(phi) of the complex latitude whose
    isometric latitude is psi + i lambda (Gauss; exact, without a series).
    """
    target = mpmath.mpc(north, east - FALSE_EAST) / K0

    def meridian(lat):
        sine = mpmath.sin(lat)
        flat = E2 * sine * mpmath.cos(lat) / mpmath.sqrt(1 - E2 * sine**2)
        return A * (mpmath.ellipe(lat, E2) - flat)

    lat, e = target / A, mpmath.sqrt(E2)
    for _ in range(7):
        lat -= (meridian(lat) - target) / radii(lat)[0]
    isometric = mpmath.atanh(mpmath.sin(lat)) - e * mpmath.atanh(e * mpmath.sin(lat))
    psi, real = isometric.real, lat.real
    for _ in range(8):
        miss = mpmath.atanh(mpmath.sin(real)) - e * mpmath.atanh(e * mpmath.sin(real)) - psi
        m, nu = radii(real)
        real -= miss * nu * mpmath.cos(real) / m
    return real, isometric.imag + mpmath.radians(MERIDIAN)


def geodesic(lat, lon, azimuth):
    """A function of the distance to latitude, longitude and azimuth on the geodesic, radians, by its integrals on the
    auxiliary sphere (Karney 2013, Algorithms for geodesics, J. Geodesy 87, equations 5 to 14), without a series."""
    beta = mpmath.atan((1 - F) * mpmath.tan(lat))
    sine0 = mpmath.sin(azimuth) * mpmath.cos(beta)
    cosine0 = mpmath.hypot(mpmath.cos(azimuth), mpmath.sin(azimuth) * mpmath.sin(beta))
    begin = mpmath.atan2(mpmath.sin(beta), mpmath.cos(azimuth) * mpmath.cos(beta))
    square = E2 / (1 - E2) * cosine0**2

    def root(sigma):
        return mpmath.sqrt(1 + square * mpmath.sin(sigma) ** 2)

    def omega(sigma):
        return mpmath.atan2(sine0 * mpmath.sin(sigma), mpmath.cos(sigma))

    def place(s):
        sigma, want = begin + s / A, s / (A * (1 - F))
        for _ in range(7):
            sigma -= (mpmath.quad(root, [begin, sigma]) - want) / root(sigma)
        turned = mpmath.quad(lambda t: (2 - F) / (1 + (1 - F) * root(t)), [begin, sigma])
        sine, cosine = mpmath.sin(sigma), mpmath.cos(sigma)
        reduced = mpmath.atan2(cosine0 * sine, mpmath.hypot(cosine0 * cosine, sine0))
        return (
            mpmath.atan(mpmath.tan(reduced) / (1 - F)),
            lon + omega(sigma) - omega(begin) - F * sine0 * turned,
            mpmath.atan2(sine0, cosine0 * cosine),
        )

    return place


def away(line, s, place):
    """(ahead, right) of the point of a geodesic at ``s`` to a place near it, metres on the ellipsoid."""
    lat, lon, azimuth = line(s)
    north, east = radii(lat)[0] * (place[0] - lat), radii(lat)[1] * mpmath.cos(lat) * (place[1] - lon)
    c, t = mpmath.cos(azimuth), mpmath.sin(azimuth)
    return north * c + east * t, east * c - north * t


@digits(50)
def on_the_geodesic(places):
    """Chainage and offset of all places from the geodesic between the first and the last one, metres."""
    (lat, lon), end = places[0], places[-1]
    azimuth, _, length = WGS.inv(*(float(mpmath.degrees(v)) for v in (lon, lat, end[1], end[0])))
    azimuth, s = mpmath.radians(mpmath.mpf(azimuth)), mpmath.mpf(length)
    for _ in range(3):
        line = geodesic(lat, lon, azimuth)
        ahead, right = away(line, s, end)
        s, azimuth = s + ahead, azimuth + right / s
    found = []
    for share, place in zip(np.linspace(0.0, 1.0, len(places)), places):
        at = s * mpmath.mpf(share)
        for _ in range(2):
            ahead, right = away(line, at, place)
            at += ahead
        found.append((float(at), float(right)))
    return found


# Lines of the grid --------------------------------------------------------------------------------------------------


def grid_line(start, bearing, number=5, spacing=2500.0):
    """Places of a straight line of the grid: easting, northing (number,)."""
    along, turn = spacing * np.arange(number), np.radians(bearing)
    return start[0] + along * np.sin(turn), start[1] + along * np.cos(turn)


def bowed(east, north):
    """Offsets of a straight line of the grid from the geodesic between its ends, metres on the ground, right of it.

    From the arc-to-chord correction at both ends, t - T = (2 E1 + E2)(N1 - N2) / 6 R^2 with eastings from the meridian
    and R^2 = rho nu k0^2 (Ordnance Survey, Constants, Formulae and Methods Used in the Transverse Mercator Projection,
    1950, from memory; the same in Redfearn 1948), t the bearing of the chord and T that of the geodesic: it leaves the
    chord by these angles, its curvature growing evenly between them.
    """
    lat = float(unprojected(float(east.mean()), float(north.mean()))[0])
    m, nu = (float(v) for v in radii(lat))
    first, last = (float(east[k]) - FALSE_EAST for k in (0, -1))
    square, rise = m * nu * float(K0) ** 2, float(north[0] - north[-1])
    begin, end = (2 * first + last) * rise / (6 * square), (2 * last + first) * rise / (6 * square)
    length = np.hypot(east[-1] - east[0], north[-1] - north[0])
    s = np.linspace(0.0, length, len(east))
    scale = float(K0) * (1 + (east - FALSE_EAST) ** 2 / (2 * square))
    return s * (length - s) * (begin * (length - s) + end * s) / length**2 / scale


def measured(toolbox, east, north, **more):
    crs = "EPSG:32632"
    points = toolbox.points([{"at": at, **more} for at in zip(east.tolist(), north.tolist())], crs)
    axis = toolbox.lines([{"at": [(east[0], north[0]), (east[-1], north[-1])], "name": "grid"}], crs)
    return toolbox.run("measurestations", STATIONS=points, AXIS=axis, CHAINAGE_HEIGHT=0.0)


@pytest.mark.parametrize(
    "start, bearing",
    [((720000.0, 5_600_000.0), 0.0), ((290000.0, 5_600_000.0), 30.0), ((650000.0, 1_200_000.0), 200.0)],
)
def test_a_straight_line_of_the_grid_bows_from_the_geodesic(toolbox, start, bearing):
    """10 km in a strip of the grid, up to 68 mm beside the geodesic and up to 2 m from the length of the grid."""
    east, north = grid_line(start, bearing)
    run = measured(toolbox, east, north)
    exact = on_the_geodesic([unprojected(*at) for at in zip(east.tolist(), north.tolist())])
    assert run.column("offset") == pytest.approx([y for _, y in exact], abs=1e-8)
    assert run.column("chainage") == pytest.approx([s for s, _ in exact], abs=1e-8)
    formula = bowed(east, north)
    # The formula leaves out terms of the fourth order.
    assert np.abs(formula).max() > 0.02
    assert run.column("offset") == pytest.approx(formula.tolist(), abs=0.001 * np.abs(formula).max())
    assert abs(run.column("chainage")[-1] - 10_000.0) > 0.5


def test_a_straight_line_in_space_is_straight_in_any_system(toolbox):
    """Points along a geodesic, drawn in a zone whose grid bends it: no offset, and a fit finds none."""
    lon, lat, azimuth, rows = 12.0, 50.0, 17.0, []
    to_grid = pyproj.Transformer.from_crs("EPSG:4326", "EPSG:32632", always_xy=True).transform
    for k in range(11):
        x, y, _ = WGS.fwd(lon, lat, azimuth, 1000.0 * k) if k else (lon, lat, None)
        rows.append({"at": to_grid(x, y), "height": 100.0})
    axis = toolbox.lines([{"at": [rows[0]["at"], rows[-1]["at"]], "name": "line"}], "EPSG:32632")
    given = {"STATIONS": toolbox.points(rows, "EPSG:32632"), "AXIS": axis}
    run = toolbox.run("measurestations", CHAINAGE_HEIGHT=0.0, **given)
    assert run.column("offset") == pytest.approx([0.0] * 11, abs=2e-8)
    assert run.column("chainage") == pytest.approx(1000.0 * np.arange(11), abs=2e-8)
    # The geodesic and the vertical plane part by 4e-8 m on 4 km, and by the cube of the length.
    run = toolbox.run("fitreference", LINE="fitted", REFERENCE="memory:", **given)
    assert run.column("lateral") == pytest.approx([0.0] * 11, abs=1e-6)


# Standard deviations that points bring ------------------------------------------------------------------------------


def test_deviations_are_carried_across_the_axis(toolbox):
    """On a grid its own north counts: 3 degrees east of the meridian it is 2.3 degrees off the true one. The direction
    of the axis is that of its two vertices, to the bow of the line."""
    sd = {"sd_e": 0.004, "sd_n": 0.001}
    for bearing in (0.0, 35.0, 90.0, 200.0):
        run = measured(toolbox, *grid_line((720000.0, 5_600_000.0), bearing, 3), **sd)
        turn = np.radians(bearing)
        expected = np.hypot(0.004 * np.cos(turn), 0.001 * np.sin(turn))
        assert run.column("sd_line") == pytest.approx([expected] * 3, rel=2e-5)
        assert "across the axis" in run.said
    run = measured(toolbox, *grid_line((720000.0, 5_600_000.0), 45.0, 3), cor_en=0.9, **sd)
    # C = [[16, 3.6], [3.6, 1]] mm^2 across u = (1, -1) / sqrt 2: (16 + 1 - 7.2) / 2.
    assert run.column("sd_line") == pytest.approx([1e-3 * np.sqrt(4.9)] * 3, rel=2e-5)


def test_deviations_in_degrees_are_of_true_east_and_north(toolbox):
    """A geographic system: the axis runs in azimuth 30 degrees at its beginning."""
    end = WGS.fwd(8.0, 50.0, 30.0, 2000.0)[:2]
    points = toolbox.points([{"at": (8.0, 50.0), "E error": 0.004, "N error": 0.001, "c": 0.5}])
    run = toolbox.run(
        "measurestations",
        STATIONS=points,
        AXIS=toolbox.lines([{"at": [(8.0, 50.0), end], "name": "line"}]),
        SIGMA_EAST_FIELD="E error",
        SIGMA_NORTH_FIELD="N error",
        CORRELATION_FIELD="c",
    )
    c, s = np.cos(np.radians(30.0)), np.sin(np.radians(30.0))
    expected = np.sqrt((0.004 * c) ** 2 + (0.001 * s) ** 2 - 2 * 0.5 * 0.004 * 0.001 * s * c)
    assert run.column("sd_line") == pytest.approx([expected], rel=1e-9)


def test_points_without_deviations_hear_nothing_of_them(toolbox):
    run = measured(toolbox, *grid_line((720000.0, 5_600_000.0), 0.0, 3), sd_e=0.004)
    assert "sd_line" not in run.rows()[0] and "deviation" not in run.said


def test_a_point_without_a_deviation_has_none_across(toolbox):
    crs = "EPSG:32632"
    rows = [
        {"at": (720000.0, 5_600_000.0), "sd_e": 0.004, "sd_n": 0.001},
        {"at": (720000.0, 5_601_000.0), "sd_e": None, "sd_n": 0.001},
        {"at": (725000.0, 5_601_000.0), "sd_e": 0.004, "sd_n": 0.001},
    ]
    axis = toolbox.lines([{"at": [(720000.0, 5_600_000.0), (720000.0, 5_602_000.0)], "name": "grid"}], crs)
    run = toolbox.run("measurestations", STATIONS=toolbox.points(rows, crs), AXIS=axis, MAX_DISTANCE=100.0)
    assert run.column("sd_line") == [pytest.approx(0.004, rel=1e-4), None, None]


@pytest.mark.parametrize(
    "row, form, words",
    [
        ({"sd_e": -0.004, "sd_n": 0.001}, {}, ("'stations', row 1", "'sd_e' is \u22120.004; it must not be negative")),
        ({"sd_e": 0.004, "sd_n": -1.0}, {}, ("row 1", "'sd_n' is \u22121")),
        ({"sd_e": 0.004, "sd_n": 0.001, "cor_en": 1.5}, {}, ("row 1", "'cor_en' is 1.5; it must be from -1 to 1")),
        ({"a": 0.004}, {"SIGMA_EAST_FIELD": "a"}, ("both standard deviations count", "SIGMA_EAST_FIELD")),
        ({"a": 0.004}, {"SIGMA_EAST_FIELD": "b"}, ("no field 'b'", "SIGMA_EAST_FIELD")),
        ({"sd_e": "x", "sd_n": 0.001}, {}, ("'sd_e'", "row 1", "'x' is not a number")),
    ],
)
def test_bad_deviations_are_refused(toolbox, row, form, words):
    points = toolbox.points([{"at": (0.01, 0.0), **row}])
    axis = toolbox.lines([{"at": [(0.0, 0.0), (0.02, 0.0)], "name": "line"}])
    text = toolbox.refusal("measurestations", STATIONS=points, AXIS=axis, **form)
    for word in words:
        assert word in text
