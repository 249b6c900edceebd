"""fitreference through the registry: planes and lines, accuracies, blunders, tangent points, and references
used later.
"""

import json
import math
import pathlib

import numpy as np
import pytest

pyproj = pytest.importorskip("pyproj")
qgis_core = pytest.importorskip("qgis.core")
GEOD = pyproj.Geod(ellps="WGS84")
SAMPLES = pathlib.Path(__file__).resolve().parents[2] / "sample_layers"
FOOT = 0.3048
ADDED = ["axis", "station", "chainage", "offset", "residual", "w", "redund", "min_blund", "flag"]


def arm(lat, lon, azimuth, distances, geod=GEOD):
    return [tuple(map(float, geod.fwd(lon, lat, azimuth, d)[:2])) for d in distances]


def plane_heights(places, slopes=(1e-4, -5e-5), height=100.0, lat0=50.0, lon0=8.0):
    """Ellipsoidal heights of a plane through a place, by Earth-centred coordinates of PROJ and a dot product."""
    to_earth = pyproj.Transformer.from_crs(4979, 4978, always_xy=True)
    lam, phi = math.radians(lon0), math.radians(lat0)
    up = np.array([math.cos(phi) * math.cos(lam), math.cos(phi) * math.sin(lam), math.sin(phi)])
    east = np.array([-math.sin(lam), math.cos(lam), 0.0])
    normal = up - slopes[0] * east - slopes[1] * np.cross(up, east)
    point, heights = np.array(to_earth.transform(lon0, lat0, height)), []
    for lon, lat in places:
        foot, above = (np.array(to_earth.transform(lon, lat, h)) for h in (0.0, 1000.0))
        heights.append(1000.0 * float(normal @ (point - foot)) / float(normal @ (above - foot)))
    return heights


class Site:
    """Two arms at 50 degrees north, 8 degrees east, 2 km and 1.5 km long, 70 degrees apart, heights of one plane with
    errors."""

    def __init__(self, toolbox, sigma=0.003, seed=1, blunders=(), **columns):
        self.first, self.second = (
            arm(50.0, 8.0, a, np.linspace(0, length, n)) for a, length, n in ((40.0, 2000.0, 21), (110.0, 1500.0, 16))
        )
        random = np.random.default_rng(seed)
        places = self.first + self.second[1:]
        heights = [h + e for h, e in zip(plane_heights(places), random.normal(0.0, sigma, 36).tolist())]
        for row, size in blunders:
            heights[row] += size
        self.rows = [{"at": at, "mark": k, "height": h, **columns} for k, (at, h) in enumerate(zip(places, heights))]
        self.stations = toolbox.points(self.rows)
        self.axis = toolbox.lines(
            [
                {"at": [self.first[0], self.first[-1]], "name": "A", "group": "one"},
                {"at": [self.second[0], self.second[-1]], "name": "B", "group": "one"},
            ]
        )

    def run(self, toolbox, **more):
        given = {
            "STATIONS": self.stations,
            "AXIS": self.axis,
            "REFERENCE": "memory:",
            "ELLIPSE": "memory:",
            "SIGMA": 0.003,
            "UNDULATION": "ellipsoidal",
            "FIT": "plane",
            **more,
        }
        return toolbox.run("fitreference", **given)


def truth():
    """Where the site's true plane is level: latitude and longitude, degrees."""
    places = [(8.0 + dx, 50.0 + dy) for dx in (-0.02, 0.0, 0.02) for dy in (-0.02, 0.0, 0.02)]
    heights = np.array(plane_heights(places))
    x, y = np.array(places).T - np.array([[8.0], [50.0]])
    a = np.linalg.lstsq(np.column_stack([np.ones(9), x, y, x * x, x * y, y * y]), heights, rcond=None)[0]
    dx, dy = np.linalg.solve([[2 * a[3], a[4]], [a[4], 2 * a[5]]], [-a[1], -a[2]])
    return 50.0 + dy, 8.0 + dx


def holds(ellipse, reference, lat, lon, point="tan"):
    azimuth, _, distance = GEOD.inv(reference[f"{point}_lon"], reference[f"{point}_lat"], lon, lat)
    turn = math.radians(azimuth - ellipse["azimuth"])
    along, aside = distance * math.cos(turn), distance * math.sin(turn)
    return math.hypot(along / ellipse["semi_a"], aside / ellipse["semi_b"]) <= 1.0


@pytest.fixture(scope="module")
def expected():
    return json.loads((SAMPLES / "range" / "expected.json").read_text(encoding="utf-8"))


@pytest.fixture
def light_range(toolbox):
    axis = str(SAMPLES / "range" / "axis.gpkg")
    placed = toolbox.run("placestations", INPUT=str(SAMPLES / "range" / "heights.csv"), AXIS=axis, REJECTED="memory:")
    return {
        "STATIONS": placed.layer(),
        "AXIS": axis,
        "UNDULATION": "field",
        "REFERENCE": "memory:",
        "ELLIPSE": "memory:",
    }


def test_range_plane(toolbox, light_range, expected):
    """Both blunders at their stations, the settled stretch told as moved, the tangent point within its ellipse of the
    truth."""
    run, told = toolbox.run("fitreference", FIT="plane", **light_range), expected["truth"]
    flagged = {(r["axis"], r["station"]): r for r in run.rows() if r["flag"] == "suspected blunder"}
    blunders = {(b["axis"], b["station"]): b["size"] for b in told["blunders"]}
    settled = {("Alder", s["station"]) for s in told["settlement"]["stations"] if s["depth"] > 0.01}
    assert set(flagged) == set(blunders) | settled
    for key, size in blunders.items():
        assert flagged[key]["residual"] == pytest.approx(size, abs=0.01)
    warned = "\n".join(run.warnings)
    for _, station in blunders:
        assert f"suspected blunder at {station}" in warned
    assert "3 neighbours from 1+600 to 1+700 of 'Alder'" in warned and "has moved, not like blunders" in warned
    assert warned.count("suspected blunder") == 2
    (reference,) = run.rows("REFERENCE")
    true_lat, true_lon = told["common_plane"]["tangent_lat"], told["common_plane"]["tangent_lon"]
    ellipses = run.by("kind", "ELLIPSE")
    assert holds(ellipses["tangent"], reference, true_lat, true_lon)
    # 2.5 seconds of arc in each component, of a field: 2.45 x 2.5 x 31 m, and some per cent for bending.
    assert 190.0 < ellipses["tangent"]["semi_a"] < 205.0
    assert reference["tan_state"] == reference["lev_state"] == "inside" and "inside the area" in run.said
    # Bending of the geoid alone moves the level point: 0.04 x 3 km / extent of its distance from the centre, and 2.45.
    assert 20.0 < ellipses["level"]["semi_a"] < 120.0
    assert "the tangent point needs the slope of the geoid, from the stations' own undulations" in run.said
    assert reference["global_t"] == "passed" and reference["var_factor"] == pytest.approx(1.0, abs=0.35)
    n = told["common_plane"]["normal"]
    # 3 mm over 4 km with 110 stations: better than a second of arc.
    assert [reference[k] for k in ("nx", "ny", "nz")] == pytest.approx(n, abs=5e-6)
    assert (reference["first_date"], reference["last_date"]) == ("2025-03-11", "2025-03-13")


def test_range_hub_listed_three_times_counts_once(toolbox, light_range):
    run = toolbox.run("fitreference", FIT="plane", **light_range)
    heights = sum(row["height"] is not None for row in run.rows())
    (reference,) = run.rows("REFERENCE")
    assert run.results["COUNT"] == reference["number"] == heights - 2 - reference["removed"]
    hub = [(row["residual"], row["w"]) for row in run.rows() if row["station"] == "0+000"]
    assert len(hub) == 3 and len(set(hub)) == 1


def test_range_lines(toolbox, light_range, expected):
    run = toolbox.run("fitreference", FIT="line", **light_range)
    references = run.by("name", "REFERENCE")
    assert set(references) == {"Alder", "Birch", "Cedar"} and run.rows("ELLIPSE") == []
    plane = expected["truth"]["common_plane"]
    turn, _, away = GEOD.inv(*(plane[key] for key in ("lon0", "lat0", "tangent_lon", "tangent_lat")))
    for name, reference in references.items():
        controls = expected["axes"][name]["controls"]
        slope, deviation = float(reference["slopes"].rsplit(" ", 1)[1]), reference["sd_slope"]
        # The design's slope counts from the geoid's horizon at the hub, the reference's from the ellipsoid's.
        want = controls["slope"] + expected["axes"][name]["geoid_slope_at_a"]
        assert slope == pytest.approx(want, abs=4 * deviation) and deviation < 2e-6
        # Where the plane's tangent point lies as seen along the run: beside Alder and Birch, behind the hub for Cedar.
        along = away * math.cos(math.radians(turn - expected["axes"][name]["azimuth_at_a"]))
        assert (along > 0.0) == (name != "Cedar") and reference["kind"] == "line"
        for point in ("tan", "lev"):
            inside = 0.0 <= reference[f"{point}_chain"] <= expected["axes"][name]["length"]
            assert reference[f"{point}_state"] == ("inside" if inside else "outside")
        assert reference["tan_chain"] == pytest.approx(along, abs=2.0 * reference["tan_sd"])
        # One microradian is 6.4 m: both chainages are apart by the slope of the invented geoid.
        apart = reference["tan_chain"] - reference["lev_chain"]
        assert apart == pytest.approx(-6.38e6 * expected["axes"][name]["geoid_slope_at_a"], rel=0.2)
        # The level point needs no slope of the geoid; where it lies far outside, bending makes it the less sure.
        assert reference["lev_sd"] > 0.0 and (reference["tan_sd"] > reference["lev_sd"] or name == "Cedar")
        assert reference["str_comb"] == pytest.approx(math.hypot(reference["str_vert"], reference["str_lat"]), rel=1e-9)
        assert reference["str_vert"] == pytest.approx(reference["rms"], rel=1e-9)
        for zone, ranged in (("zon_vert", "rng_vert"), ("zon_lat", "rng_lat")):
            assert 0.0 < reference[zone] <= reference[ranged]
            assert reference[zone] <= reference["zon_cyl"] * (1 + 1e-9) <= 2.0 * reference["max_comb"]
    assert "minimum zone (ISO 12780-1; ISO 1101), the least that holds all stations kept: vertical" in run.said
    # The narrowest strip that holds the kept residuals, as a linear programme of its own.
    from tests.core.test_minimum_zone import zone_by_programme

    for name, reference in references.items():
        rows = [row for row in run.rows() if row["axis"] == name and row["flag"] == "kept"]
        along, up = (np.array([row[key] for row in rows]) for key in ("chainage", "residual"))
        assert reference["zon_vert"] == pytest.approx(zone_by_programme(along, up), rel=1e-4)
    assert "level, against the horizon, at 0+5" in run.said and "tangent to the ellipsoid at 0+6" in run.said


def test_robust_range_does_not_propose_what_was_done(toolbox, light_range):
    plain, robust = (toolbox.run("fitreference", FIT="plane", ROBUST=flag, **light_range) for flag in (False, True))
    assert "(ROBUST)" in plain.said and "(ROBUST)" not in robust.said
    assert plain.results["SUSPECTED"] == robust.results["SUSPECTED"] == 5


def test_plane_of_two_arms(toolbox):
    site = Site(toolbox)
    run = site.run(toolbox)
    (reference,) = run.rows("REFERENCE")
    lat, lon = truth()
    ellipses = run.by("kind", "ELLIPSE")
    assert set(ellipses) == {"tangent", "level"} and holds(ellipses["tangent"], reference, lat, lon)
    assert ellipses["level"]["semi_a"] > 2.4 * 4.0 * 31.0 > ellipses["tangent"]["semi_a"]
    assert reference["axes"] == "A; B" and reference["name"] == "one" and reference["undul"] == "ellipsoidal"
    assert reference["h_system"] == "ellipsoidal" and reference["h_unit"] == "metre"
    assert run.results["COUNT"] == 36 and run.results["SUSPECTED"] == 0
    residuals = [row["residual"] for row in run.rows() if row["axis"] == "A" or row["mark"] > 0]
    assert run.results["RMS"] == pytest.approx(math.sqrt(sum(r * r for r in residuals) / 36), rel=1e-9)
    (place,) = run.layer("REFERENCE").getFeatures()
    for at, name in zip(place.geometry().asMultiPoint(), ("lev", "tan")):
        assert (at.y(), at.x()) == pytest.approx((reference[f"{name}_lat"], reference[f"{name}_lon"]), abs=1e-9)


def test_ellipse_on_the_map_has_its_size_in_another_crs(toolbox):
    """In a projected CRS the outline comes from the ellipsoid: its area is that of the ellipse, by the ellipsoidal
    area."""
    site = Site(toolbox)
    to_map = qgis_core.QgsCoordinateTransform(
        qgis_core.QgsCoordinateReferenceSystem("EPSG:4326"),
        qgis_core.QgsCoordinateReferenceSystem("EPSG:25832"),
        qgis_core.QgsProject.instance(),
    )
    to_degrees = qgis_core.QgsCoordinateTransform(
        to_map.destinationCrs(), to_map.sourceCrs(), qgis_core.QgsProject.instance()
    )
    rows = [{**row, "at": tuple(to_map.transform(*row["at"]))} for row in site.rows]
    run = site.run(toolbox, STATIONS=toolbox.points(rows, "EPSG:25832"), UNDULATION="unknown")
    for feature in run.layer("ELLIPSE").getFeatures():
        ring = feature.geometry().asPolygon()[0]
        back = [to_degrees.transform(p) for p in ring]
        area, _ = GEOD.polygon_area_perimeter([p.x() for p in back], [p.y() for p in back])
        # 180 corners: the polygon lacks 2 parts in 10,000 of the ellipse.
        assert abs(area) == pytest.approx(math.pi * feature["semi_a"] * feature["semi_b"], rel=5e-4)


def test_fields_and_numbers(toolbox):
    site = Site(toolbox, W=7.0, FLAG="mine")
    site.rows.append({"at": (9.0, 51.0), "mark": 98, "height": 1.0})
    site.rows.append({"at": site.first[3], "mark": 99, "height": None})
    run = site.run(toolbox, STATIONS=toolbox.points(site.rows))
    rows = run.rows()
    assert list(rows[0]) == ["mark", "height", *ADDED]
    flags = {row["mark"]: row for row in rows}
    assert flags[98]["flag"] == "off axis" and flags[98]["residual"] is None
    assert flags[99]["flag"] == "no height" and flags[99]["residual"] is None
    assert flags[5]["flag"] == "kept" and 0.0 < flags[5]["redund"] < 1.0
    # Smallest detectable blunder 4.13 sigma / sqrt(r); w = v / (sigma sqrt(r)).
    assert flags[5]["min_blund"] == pytest.approx(4.1321 * 0.003 / math.sqrt(flags[5]["redund"]), rel=1e-4)
    assert flags[5]["w"] == pytest.approx(flags[5]["residual"] / (0.003 * math.sqrt(flags[5]["redund"])), rel=1e-9)
    reference = run.layer("REFERENCE").fields().names()
    for name in (
        "name",
        "kind",
        "lat0",
        "lon0",
        "h0",
        "nx",
        "ny",
        "nz",
        "h_system",
        "undul",
        "tan_lat",
        "tan_lon",
        "lev_lat",
        "lev_lon",
        "sd_h",
        "rms",
        "var_factor",
        "global_t",
        "slopes",
        "record",
    ):
        assert name in reference
    assert run.layer("ELLIPSE").fields().names() == ["name", "kind", "semi_a", "semi_b", "azimuth"]
    record = json.loads(run.rows("REFERENCE")[0]["record"])
    assert record["entry"] == "tautline:fitreference" and "SIGMA" in json.dumps(record)


def test_blunders_flagged_only(toolbox):
    site = Site(toolbox, blunders=((7, 0.05),))
    aside, only = site.run(toolbox), site.run(toolbox, REMOVE_BLUNDERS=False)
    for run, removed in ((aside, 1), (only, 0)):
        (reference,) = run.rows("REFERENCE")
        assert reference["removed"] == removed and reference["suspected"] >= 1
        assert {row["mark"]: row["flag"] for row in run.rows()}[7] == "suspected blunder"
    assert "set aside" in "\n".join(aside.warnings) and "set aside" not in "\n".join(only.warnings)
    assert only.rows("REFERENCE")[0]["global_t"] == "failed" and "times as wide" in only.said


def test_sigma_from_field_constant_and_unknown(toolbox):
    site = Site(toolbox, sd=0.003)
    constant, field = site.run(toolbox, SIGMA=0.003), site.run(toolbox, SIGMA=None)
    named = site.run(toolbox, SIGMA=None, SIGMA_FIELD="sd")
    assert constant.rows("REFERENCE")[0]["sd_h"] == pytest.approx(field.rows("REFERENCE")[0]["sd_h"], rel=1e-12)
    assert field.column("w") == named.column("w") and "from a field" in field.said
    unknown = Site(toolbox).run(toolbox, SIGMA=None)
    one, two = constant.rows("REFERENCE")[0], unknown.rows("REFERENCE")[0]
    assert two["global_t"] == "none" and "estimated as" in unknown.said
    assert math.sqrt(two["var_factor"]) == pytest.approx(0.003, rel=0.3)
    assert two["sd_h"] == pytest.approx(one["sd_h"] * math.sqrt(one["var_factor"]), rel=1e-6)


def test_levelled_heights_have_wider_ellipses(toolbox):
    site = Site(toolbox)
    independent, levelled = site.run(toolbox), site.run(toolbox, SIGMA=0.001, SIGMA_KM=3.0)
    narrow, wide = (run.by("kind", "ELLIPSE")["tangent"] for run in (independent, levelled))
    assert wide["semi_a"] > 1.5 * narrow["semi_a"]
    assert "give SIGMA_KM" in independent.said and "give SIGMA_KM" not in levelled.said


def test_levelling_starts_where_the_arms_meet_however_they_are_drawn(toolbox):
    """Drawn towards the corner instead of from it, or in feet, the arm gives the same ellipse and the same tests."""
    site = Site(toolbox)
    turned = toolbox.lines(
        [
            {"at": [site.first[-1], site.first[0]], "name": "A", "group": "one"},
            {"at": [site.second[0], site.second[-1]], "name": "B", "group": "one"},
        ]
    )
    feet = toolbox.points([{**row, "height": row["height"] / FOOT} for row in site.rows])
    given = {"SIGMA": 0.001, "SIGMA_KM": 3.0, "CHAINAGE_HEIGHT": 100.0, "CHAINAGE_UNIT": "metre"}
    runs = [
        site.run(toolbox, **given),
        site.run(toolbox, AXIS=turned, **given),
        site.run(
            toolbox,
            STATIONS=feet,
            HEIGHT_UNIT="foot",
            **{**given, "SIGMA": 0.001 / FOOT, "CHAINAGE_HEIGHT": 100.0 / FOOT},
        ),
    ]
    first, *others = ((run.rows("ELLIPSE")[0], {row["mark"]: row["w"] for row in run.rows()}) for run in runs)
    for ellipse, w in others:
        assert ellipse["semi_a"] == pytest.approx(first[0]["semi_a"], rel=1e-6)
        assert ellipse["azimuth"] == pytest.approx(first[0]["azimuth"], abs=1e-4)
        assert w == pytest.approx(first[1], abs=1e-5)


@pytest.mark.parametrize("given, seconds", [({}, 4.0), ({"GEOID_SLOPE_SIGMA": 8.0}, 8.0)])
def test_slope_error_of_the_geoid(toolbox, given, seconds):
    run = Site(toolbox, sigma=1e-5).run(toolbox, SIGMA=1e-5, UNDULATION="unknown", **given)
    ellipse = run.by("kind", "ELLIPSE")["tangent"]
    # Factor of a 95 % ellipse, root of 5.99, times the Earth's radius times the angle; bending adds a few per cent.
    want = 5.991**0.5 * 6.38e6 * math.radians(seconds / 3600)
    assert want < ellipse["semi_a"] < 1.05 * want
    assert f"standard deviation of {seconds:.2f}\u2033 for each component" in run.said


def test_a_slope_that_is_sure_leaves_the_bending(toolbox):
    ellipse = (
        Site(toolbox, sigma=1e-5)
        .run(toolbox, SIGMA=1e-5, UNDULATION="unknown", GEOID_SLOPE_SIGMA=0.0)
        .by("kind", "ELLIPSE")["tangent"]
    )
    assert 1.0 < ellipse["semi_a"] < 100.0


def test_a_step_in_the_levelling_is_told_and_no_station_removed(toolbox):
    """From the 11th station of arm A on 12 mm were lost: a misread section, not a dozen blunders."""
    site = Site(toolbox, sigma=0.0003)
    for row in site.rows[11:21]:
        row["height"] -= 0.012
    run = site.run(toolbox, STATIONS=toolbox.points(site.rows), SIGMA=0.0003, SIGMA_KM=1.0)
    (step,) = [text for text in run.warnings if "step" in text]
    assert "of 'A', from 1+100" in step and "T = −" in step
    assert run.results["COUNT"] == 36 and run.rows("REFERENCE")[0]["removed"] == 0
    assert "step" not in Site(toolbox, sigma=0.0003).run(toolbox, SIGMA=0.0003, SIGMA_KM=1.0).said


def test_arms_that_do_not_meet_are_levelled_separately(toolbox):
    """The second arm's heights are all 0.35 m off: with a height unknown of its own the plane does not care."""
    site = Site(toolbox)
    far = arm(50.004, 8.004, 110.0, np.linspace(0, 1500, 16))
    rows = site.rows[:21] + [
        {"at": at, "mark": 50 + k, "height": h + 0.35 + e}
        for k, (at, h, e) in enumerate(
            zip(far, plane_heights(far), np.random.default_rng(2).normal(0.0, 0.003, 16).tolist())
        )
    ]
    given = {
        "STATIONS": toolbox.points(rows),
        "AXIS": toolbox.lines(
            [{"at": [site.first[0], site.first[-1]], "name": "A"}, {"at": [far[0], far[-1]], "name": "B"}]
        ),
    }
    run = site.run(toolbox, **given, SIGMA_KM=1.0)
    assert "1 axis does not meet the others within 10 m" in run.said
    (reference,) = run.rows("REFERENCE")
    assert reference["global_t"] == "passed" and reference["number"] == 37
    assert holds(run.rows("ELLIPSE")[0], reference, *truth())


def test_groups(toolbox):
    """GROUP_FIELD: axes that share a plane; here each arm has its own group, with a side arm each."""
    site = Site(toolbox)
    side = arm(*site.first[10][::-1], 130.0, np.linspace(0, 800, 9))
    heights = plane_heights(side)
    rows = site.rows + [{"at": at, "mark": 60 + k, "height": h} for k, (at, h) in enumerate(zip(side, heights))][1:]
    axis = toolbox.lines(
        [
            {"at": [site.first[0], site.first[-1]], "name": "A", "hall": "x"},
            {"at": [site.second[0], site.second[-1]], "name": "B", "hall": "y"},
            {"at": [side[0], side[-1]], "name": "C", "hall": "x"},
        ]
    )
    given = {"STATIONS": toolbox.points(rows), "AXIS": axis}
    text = toolbox.refusal("fitreference", REFERENCE="memory:", FIT="plane", GROUP_FIELD="hall", **given)
    assert text.startswith("Plane 'y': The stations lie on one line")
    run = site.run(toolbox, **given)
    assert [r["name"] for r in run.rows("REFERENCE")] == ["common plane"]
    given["AXIS"] = toolbox.lines(
        [
            {"at": [site.first[0], site.first[-1]], "name": "A", "hall": "x"},
            {"at": [side[0], side[-1]], "name": "C", "hall": "x"},
            {"at": [site.second[0], site.second[7], side[-1]], "name": "B", "hall": "y"},
        ]
    )
    run = site.run(toolbox, **given, GROUP_FIELD="hall", MAX_DISTANCE=5.0)
    references = run.by("name", "REFERENCE")
    assert set(references) == {"x", "y"} and references["x"]["axes"] == "A; C"


def bent(toolbox, second):
    """An axis of 1 km and a leg of ``second`` stations 40 degrees to the right, a straight line on each leg."""
    first = arm(50.0, 8.0, 40.0, np.linspace(0, 1000, 11))
    azimuth = GEOD.inv(*first[-1], *first[0])[0] + 180.0 + 40.0
    leg = arm(*first[-1][::-1], azimuth, 100.0 * np.arange(second + 1))
    heights = plane_heights(first)
    start, *rest = plane_heights(leg, slopes=(4e-4, 2e-4))
    heights += [h - start + heights[-1] for h in rest]
    rows = [{"at": at, "mark": k, "height": h} for k, (at, h) in enumerate(zip(first + leg[1:], heights))]
    axis = toolbox.lines([{"at": [first[0], first[-1], leg[-1]], "name": "bent"}])
    return {
        "STATIONS": toolbox.points(rows),
        "AXIS": axis,
        "REFERENCE": "memory:",
        "SIGMA": 0.003,
        "UNDULATION": "ellipsoidal",
        "REMOVE_BLUNDERS": False,
    }


def test_legs_of_a_bent_axis(toolbox):
    run = toolbox.run("fitreference", **bent(toolbox, 6))
    references = run.by("name", "REFERENCE")
    assert set(references) == {"bent, leg 1", "bent, leg 2"}
    assert references["bent, leg 1"]["number"] == 11 and references["bent, leg 2"]["number"] == 7
    assert all(r["axes"] == "bent" for r in references.values())
    # The first leg is one straight line in space.
    assert references["bent, leg 1"]["rms"] < 1e-5
    assert all(row["flag"] == "kept" for row in run.rows())


def test_a_leg_with_too_few_stations_is_told_and_not_called_kept(toolbox):
    run = toolbox.run("fitreference", **bent(toolbox, 2))
    assert "bent, leg 2: 3 stations with heights; a leg needs 4 and was not fitted." in run.warnings
    rows = run.rows()
    assert [row["flag"] for row in rows] == ["kept"] * 11 + ["not fitted"] * 2
    assert rows[-1]["residual"] is None


def test_reference_serves_this_survey_and_a_later_one(toolbox):
    """Residuals from the reference are those of the fit; a later survey is compared with the same plane."""
    site = Site(toolbox)
    run = site.run(toolbox)
    given = {"AXIS": site.axis, "DESIGN": "reference", "REFERENCE": run.layer("REFERENCE"), "UNDULATION": "ellipsoidal"}
    same = toolbox.run("designheights", STATIONS=site.stations, **given)
    fitted = {(r["mark"], r["axis"]): r["residual"] for r in run.rows()}
    for row in same.rows():
        assert row["residual"] == pytest.approx(fitted[row["mark"], row["axis"]], abs=1e-8)
    later = [{**row, "height": row["height"] - 0.02} for row in site.rows]
    for row in toolbox.run("designheights", STATIONS=toolbox.points(later), **given).rows():
        assert row["residual"] == pytest.approx(fitted[row["mark"], row["axis"]] - 0.02, abs=1e-8)


@pytest.mark.parametrize("unit, size", [("foot", FOOT), ("us_foot", 1200 / 3937)])
def test_reference_in_feet(toolbox, unit, size):
    site = Site(toolbox)
    metres = site.run(toolbox)
    rows = [{**row, "height": row["height"] / size} for row in site.rows]
    feet = site.run(toolbox, STATIONS=toolbox.points(rows), SIGMA=0.003 / size, HEIGHT_UNIT=unit)
    one, two = metres.rows("REFERENCE")[0], feet.rows("REFERENCE")[0]
    assert two["h_unit"] == unit and two["h0"] * size == pytest.approx(one["h0"], abs=1e-8)
    assert two["tan_sd"] * size == pytest.approx(one["tan_sd"], rel=1e-6)
    assert [two[k] for k in ("nx", "ny", "nz")] == pytest.approx([one[k] for k in ("nx", "ny", "nz")], abs=1e-13)
    label = {"foot": " ft", "us_foot": " US ft"}[unit]
    sizes = [text for text in feet.info if "semi-axes" in text]
    assert len(sizes) == 2 and all(label in text and " m " not in text for text in sizes)
    # A reference in feet serves a survey in metres, and its own.
    for layer, name, scale in ((site.stations, "metre", 1.0), (toolbox.points(rows), unit, size)):
        design = toolbox.run(
            "designheights",
            STATIONS=layer,
            AXIS=site.axis,
            DESIGN="reference",
            HEIGHT_UNIT=name,
            REFERENCE=feet.layer("REFERENCE"),
            UNDULATION="ellipsoidal",
        )
        want = {(r["mark"], r["axis"]): r["residual"] for r in metres.rows()}
        for row in design.rows():
            assert row["residual"] * scale == pytest.approx(want[row["mark"], row["axis"]], abs=1e-8)


def test_a_reference_of_another_height_system_is_refused(toolbox):
    site = Site(toolbox)
    reference = site.run(toolbox).layer("REFERENCE")
    given = {"STATIONS": site.stations, "AXIS": site.axis, "DESIGN": "reference", "REFERENCE": reference}
    text = toolbox.refusal("designheights", UNDULATION="unknown", **given)
    assert "'ellipsoidal'" in text and "'unknown'" in text
    constant = site.run(toolbox, UNDULATION="constant", UNDULATION_VALUE=45.0).layer("REFERENCE")
    given["REFERENCE"] = constant
    text = toolbox.refusal("designheights", UNDULATION="constant", UNDULATION_VALUE=44.0, **given)
    assert "constant 45 m" in text and "constant 44 m" in text


def test_a_reference_is_found_by_name(toolbox):
    """Line references are matched to their axes by name; one that names no axis of the run is refused, naming what
    there is."""
    site = Site(toolbox)
    lines = site.run(toolbox, FIT="line")
    given = {"DESIGN": "reference", "REFERENCE": lines.layer("REFERENCE"), "UNDULATION": "ellipsoidal"}
    design = toolbox.run("designheights", STATIONS=site.stations, AXIS=site.axis, **given)
    want = {(r["mark"], r["axis"]): r["residual"] for r in lines.rows()}
    for row in design.rows():
        assert row["residual"] == pytest.approx(want[row["mark"], row["axis"]], abs=1e-8)
    other = toolbox.lines([{"at": [site.first[0], site.first[-1]], "name": "Z"}])
    text = toolbox.refusal("designheights", STATIONS=site.stations, AXIS=other, **given)
    assert "'Z'" in text and "A" in text and "B" in text


def test_styled_in_a_geopackage(toolbox, tmp_path):
    site = Site(toolbox, blunders=((7, 0.05),))
    path = str(tmp_path / "fit.gpkg")
    places = {key: f"ogr:dbname='{path}' table=\"{key.lower()}\" (geom)" for key in ("OUTPUT", "REFERENCE", "ELLIPSE")}
    run = site.run(toolbox, **places, UNDULATION="unknown")
    for key, kind in (("OUTPUT", "RuleRenderer"), ("REFERENCE", "RuleRenderer"), ("ELLIPSE", "categorizedSymbol")):
        layer = run.layer(key)
        assert layer.featureCount() > 0 and layer.renderer().type() == kind, key
        assert layer.customProperty("tautline/record") or "record" in " ".join(layer.customPropertyKeys()), key


def test_lines_leave_the_ellipse_layer_empty(toolbox):
    """Fits without ellipses leave an empty ellipse layer, and an optional ELLIPSE may be left out."""
    site = Site(toolbox)
    assert site.run(toolbox, FIT="line").rows("ELLIPSE") == []
    run = toolbox.run("fitreference", STATIONS=site.stations, AXIS=site.axis, REFERENCE="memory:", FIT="plane")
    assert "ELLIPSE" not in run.results


# Facts of the trade: common practice, no source.
ARMS_FT = ((64.12, 63.00, 64.09), (64.12, 61.05, 60.04))
AT_FT = (0.0, 6500.0, 13100.0)
SPHERE_FT = 20_903_520.0


def trade_case(toolbox, crs, geod):
    arms = [arm(40.0, -100.0, azimuth, [s * FOOT for s in AT_FT], geod) for azimuth in (0.0, 90.0)]
    rows = [
        {"at": at, "axis": name, "height": h}
        for name, places, heights in zip("12", arms, ARMS_FT)
        for at, h in zip(places, heights)
    ]
    stations, axis = (
        toolbox.points(rows, "EPSG:4326"),
        toolbox.lines([{"at": [places[0], places[-1]], "name": name} for name, places in zip("12", arms)], "EPSG:4326"),
    )
    for layer in (stations, axis):
        layer.setCrs(crs)
    return {"STATIONS": stations, "AXIS": axis, "HEIGHT_UNIT": "foot"}


@pytest.mark.parametrize("earth", ["sphere", "ellipsoid"])
def test_two_arms_of_the_trade(toolbox, earth):
    """The common plane touches beside the middle of the first arm, almost as far out as the second arm's end."""
    if earth == "sphere":
        crs = qgis_core.QgsCoordinateReferenceSystem.fromProj(f"+proj=longlat +R={SPHERE_FT * FOOT} +no_defs")
        geod = pyproj.Geod(a=SPHERE_FT * FOOT, b=SPHERE_FT * FOOT)
    else:
        crs, geod = qgis_core.QgsCoordinateReferenceSystem("EPSG:4326"), GEOD
    given = trade_case(toolbox, crs, geod)
    options = {"FIT": "plane", "SIGMA": 0.02, "REMOVE_BLUNDERS": False, "REFERENCE": "memory:", "ELLIPSE": "memory:"}
    run = toolbox.run("fitreference", **options, **given)
    (reference,) = run.rows("REFERENCE")
    assert reference["number"] == 5
    # Levelled heights: they know where the plane is level.
    azimuth, _, distance = geod.inv(-100.0, 40.0, reference["lev_lon"], reference["lev_lat"])
    # In coordinates of the arms: along the first, to the north, and along the second, to the east.
    first, second = (distance / FOOT * f(math.radians(azimuth)) for f in (math.cos, math.sin))
    margin = 1.0 if earth == "sphere" else 70.0
    assert (first, second) == (pytest.approx(6594.0, abs=margin), pytest.approx(13019.0, abs=margin))
    (bare,) = toolbox.run("fitreference", UNDULATION="ellipsoidal", **options, **given).rows("REFERENCE")
    assert bare["tan_sd"] == pytest.approx(43.0, abs=1.0) and reference["lev_sd"] > bare["tan_sd"]
    assert reference["lev_state"] == "outside"
    place = [text for text in run.info if "seen from the axes" in text][1]
    assert "level point" in run.said and "outside the area that the stations span" in run.said
    assert "ft to the right" in place
    assert ("1 65+" in place or "1 66+" in place) and ("2 130+" in place or "2 129+" in place)
    chord = toolbox.run("designheights", DESIGN="chord", **given)
    middle = {row["axis"]: row["residual"] for row in chord.rows() if abs(row["chainage"] - 6500.0) < 10.0}
    assert middle["1"] == pytest.approx(-0.08, abs=0.01)


# One clear sentence for each bad input.


def refused(toolbox, site, **more):
    given = {"STATIONS": site.stations, "AXIS": site.axis, "REFERENCE": "memory:", **more}
    return toolbox.refusal("fitreference", **given)


def test_fewer_stations_than_unknowns(toolbox):
    site = Site(toolbox)
    text = refused(toolbox, site, STATIONS=toolbox.points(site.rows[:1]), FIT="line")
    assert text == "Line 'A': A fit of 2 unknowns needs at least 2 stations with heights; there are 1."
    text = refused(toolbox, site, STATIONS=toolbox.points([site.rows[5], site.rows[30]]), FIT="plane")
    assert text.startswith("Plane 'one': ") and "determines no plane" in text


def test_an_axis_with_one_station_does_not_stop_the_others(toolbox):
    """Only arm A was surveyed, from the corner on, which is a station of arm B too."""
    site = Site(toolbox)
    run = site.run(toolbox, STATIONS=toolbox.points(site.rows[:21]), FIT="line")
    assert "Axis 'B': 1 station with a height; a line needs 2 and was not fitted." in run.warnings
    assert [r["name"] for r in run.rows("REFERENCE")] == ["A"]
    assert {row["axis"]: row["flag"] for row in run.rows()} == {"A": "kept", "B": "not fitted"}


def test_all_at_one_place(toolbox):
    site = Site(toolbox)
    same = toolbox.points([{**row, "at": site.first[4]} for row in site.rows[:6]])
    assert "at one place" in refused(toolbox, site, STATIONS=same, FIT="line")
    assert "at one place" in refused(toolbox, site, STATIONS=same, FIT="plane")


@pytest.mark.parametrize("value", [0.0, -0.003, math.nan, math.inf])
def test_sigma_that_is_none(toolbox, value):
    text = refused(toolbox, Site(toolbox), SIGMA=value)
    assert text.startswith("SIGMA is ")


@pytest.mark.parametrize(
    "value, word", [(0.0, "is 0;"), (-0.003, "is -0.003;"), (math.nan, "is missing;"), (None, "is missing;")]
)
def test_a_standard_deviation_that_is_none_names_the_row(toolbox, value, word):
    site = Site(toolbox, sd=0.003)
    site.rows[6]["sd"] = value
    text = refused(toolbox, site, STATIONS=toolbox.points(site.rows))
    assert text.startswith("Layer 'stations', row 7: the standard deviation ") and word in text


def test_a_standard_deviation_of_a_station_without_height_does_not_matter(toolbox):
    site = Site(toolbox, sd=0.003)
    site.rows[6].update(sd=0.0, height=None)
    assert site.run(toolbox, STATIONS=toolbox.points(site.rows), SIGMA=None).results["COUNT"] == 35


def test_stations_on_one_geodesic_in_a_plane_fit(toolbox):
    site = Site(toolbox)
    axis = toolbox.lines([{"at": [site.first[0], site.first[-1]], "name": "A"}])
    text = refused(toolbox, site, STATIONS=toolbox.points(site.rows[:21]), AXIS=axis, FIT="plane")
    assert text.startswith("Plane 'A': The stations lie on one line") and text.endswith("in another direction.")


def test_sigma_km_without_sigma(toolbox):
    text = refused(toolbox, Site(toolbox), SIGMA_KM=1.0)
    assert text.startswith("SIGMA_KM needs the standard deviation")
    assert refused(toolbox, Site(toolbox), SIGMA_KM=0.0, SIGMA=0.001) == "SIGMA_KM is 0; it must be positive."


def test_no_heights(toolbox):
    site = Site(toolbox)
    empty = toolbox.points([{"at": row["at"], "height": None} for row in site.rows], types={"height": "double"})
    assert refused(toolbox, site, STATIONS=empty) == "Layer 'stations': no station on an axis has a height."
    none = toolbox.points([{"at": row["at"], "mark": 1} for row in site.rows])
    assert "HEIGHT_FIELD" in refused(toolbox, site, STATIONS=none)


@pytest.mark.parametrize("robust", [False, True])
def test_where_most_stations_would_be_blunders_none_is_set_aside(toolbox, robust):
    """Heights that lie metres from any line, with 1 mm stated: what a few of them agree on is chance, and
    is not given.
    """
    site = Site(toolbox, sigma=5.0)
    run = site.run(toolbox, SIGMA=0.001, ROBUST=robust)
    test, text = run.warnings
    assert "global test failed" in test
    assert f"more than {18 if robust else 3} of 36 stations would have to be set aside as blunders, so none was" in text
    (reference,) = run.rows("REFERENCE")
    assert reference["number"] == 36 and reference["removed"] == 0 and reference["global_t"] == "failed"


def test_a_level_structure_is_no_line_with_blunders(toolbox):
    """2 km along the level surface: 78 mm off a chord at the middle. Stations are flagged, and the text says shape,
    not blunder."""
    places = arm(50.0, 8.0, 40.0, np.linspace(0, 2000, 41))
    stations = toolbox.points([{"at": at, "height": 100.0} for at in places])
    axis = toolbox.lines([{"at": [places[0], places[-1]], "name": "rail"}])
    run = toolbox.run("fitreference", STATIONS=stations, AXIS=axis, REFERENCE="memory:", SIGMA=0.003)
    assert "which shape was built" in "\n".join(run.warnings)
    assert run.rows("REFERENCE")[0]["global_t"] == "failed"


def test_two_stations_say_that_nothing_is_left_over(toolbox):
    site = Site(toolbox)
    run = site.run(toolbox, STATIONS=toolbox.points([site.rows[5], site.rows[20]]), FIT="line", SIGMA=None)
    assert "no redundant station is left to estimate" in run.said and "too few redundant stations" in run.said
    assert "none m" not in run.said and "± none" not in run.said
    (reference,) = run.rows("REFERENCE")
    assert reference["var_factor"] is None and reference["sd_h"] is None
