"""reducesights through the toolbox: published examples, reciprocal sights, books, bad rows."""

import numpy as np
import pytest

FOOT = 0.3048
SECOND = np.pi / 180.0 / 3600.0


def test_reciprocal_levelling_1530_m(toolbox):
    """CR-13. Source: civilexperiences.com 'two points A and B are 1530 m apart': B lies 1.545 m below A, and with the
    line of sight 4 mm down in 100 m refraction is 0.0228 m (0.0225 where the curvature is not rounded to 0.184 first).
    """
    rows = [
        {"from": "A", "to": "B", "back": 2.165, "fore": 3.810, "back_len": 0.0, "fore_len": 1530.0},
        {"from": "B", "to": "A", "back": 2.355, "fore": 0.910, "back_len": 0.0, "fore_len": 1530.0},
    ]
    run = toolbox.run(
        "reducesights", INPUT=toolbox.table(rows), COLLIMATION=float(np.degrees(np.arctan(-0.004 / 100.0)) * 3600.0)
    )
    (row,) = run.rows()
    assert (row["from_pt"], row["to_pt"], row["kind"], row["rows"]) == ("A", "B", "reciprocal", "1, 2")
    assert row["dh"] == pytest.approx(-1.545, abs=1e-9)
    curvature = 1530.0**2 / (2.0 * 6_371_000.0)
    assert row["k_solved"] * curvature == pytest.approx(0.0228, abs=5e-4)
    assert row["curv_corr"] == pytest.approx(0.1612, abs=1e-4) and row["sd"] is None
    assert run.results["PAIRS"] == 1 and run.results["K_SOLVED"] == row["k_solved"]


def test_reciprocal_levelling_315_m_with_labels_exchanged(toolbox):
    """CR-15. Source: Surveying (university press textbook, fliphtml5.com/eziky/puvl/surveying-chandra1/93), Ex. 3.8.

    Trap: with the readings as labelled A would lie above B; only with the staffs exchanged do the printed results
    follow, 0.303 and RL of A 54.88 from RL of B 55.18.
    """
    rows = [
        {"from": "A", "to": "B", "back": 1.485, "fore": 1.190, "back_len": 0.0, "fore_len": 315.0},
        {"from": "B", "to": "A", "back": 1.415, "fore": 1.725, "back_len": 0.0, "fore_len": 315.0},
    ]
    (row,) = toolbox.run("reducesights", INPUT=toolbox.table(rows)).rows()
    assert row["dh"] == pytest.approx(0.303, abs=1e-3) and 55.18 - row["dh"] == pytest.approx(54.88, abs=5e-3)
    assert row["curv_corr"] == pytest.approx(0.008, abs=1e-3)


def test_reciprocal_levelling_780_m(toolbox):
    """CR-17. Source: exam question transtutors.com 4785512 (answer computed): 0.323 m, refraction 0.162 of
    curvature.
    """
    rows = [
        {"from": "A", "to": "B", "back": 1.472, "fore": 1.835, "back_len": 0.0, "fore_len": 780.0},
        {"from": "B", "to": "A", "back": 1.496, "fore": 1.213, "back_len": 0.0, "fore_len": 780.0},
    ]
    run = toolbox.run("reducesights", INPUT=toolbox.table(rows), READING_SIGMA=1.0)
    (row,) = run.rows()
    assert row["dh"] == pytest.approx(-0.323, abs=1e-9) and row["k_solved"] == pytest.approx(0.162, abs=2e-3)
    # Four readings of 1 mm, the mean of two differences: 1 mm.
    assert row["sd"] == pytest.approx(0.001, abs=1e-9)
    assert "taken as level" in run.said


def _exact_sight(rise, distance, k, radius=6_371_000.0):
    """Zenith angle (degrees) and slope distance of a sight on a sphere, straight with k = 0: exact triangle
    geometry.
    """
    angle = distance / radius
    x, z = (radius + rise) * np.sin(angle), (radius + rise) * np.cos(angle) - radius
    return float(np.degrees(np.arctan2(x, z)) - np.degrees(0.5 * k * angle)), float(np.hypot(x, z))


@pytest.mark.parametrize("unit", ["degree", "dms", "packed", "gon"])
@pytest.mark.parametrize("face", ["first", "second"])
def test_single_sight_against_exact_geometry(toolbox, unit, face):
    """1,200 m and 8 m of rise against the exact triangle on a sphere, refraction bending the ray by half of k times the
    angle at the Earth's centre (Torge and Mueller, Geodesy). method page 8's D is horizontal: good to 1 mm here."""
    zenith, slope = _exact_sight(8.0, 1200.0, 0.13)
    zenith = zenith if face == "first" else 360.0 - zenith
    degrees, rest = divmod(zenith, 1.0)
    minutes, seconds = divmod(rest * 60.0, 1.0)
    text = {
        "degree": f"{zenith:.8f}",
        "gon": f"{zenith / 0.9:.8f}",
        "dms": f"{degrees:.0f}°{minutes:.0f}'{seconds * 60:.4f}\"",
        "packed": f"{degrees:.0f}.{minutes:02.0f}{seconds * 6e5:06.0f}",
    }[unit]
    rows = [{"from": "P", "to": "Q", "slope_dist": slope, "zenith": text, "hi": 1.55, "ht": 1.55}]
    (row,) = toolbox.run("reducesights", INPUT=toolbox.table(rows), ANGLE_UNIT=unit, REFRACTION=0.13).rows()
    assert row["dh"] == pytest.approx(8.0, abs=1e-3) and row["k"] == 0.13
    assert row["curv_corr"] == pytest.approx(0.87 * 1200.0**2 / 2.0 / 6_371_000.0, abs=2e-5)


def test_reciprocal_trigonometric_sights_give_the_difference_and_k(toolbox):
    """Both ways on the sphere with k = 0.171 and different heights of instrument and target."""
    there, slope = _exact_sight(23.0, 1500.0, 0.171)
    back, other = _exact_sight(-23.0, 1500.0, 0.171)
    rows = [
        {"from": "P", "to": "Q", "slope_dist": slope, "zenith": there, "hi": 1.6, "ht": 1.6, "day": "1"},
        {"from": "Q", "to": "P", "slope_dist": other, "zenith": back, "hi": 1.5, "ht": 1.5, "day": "1"},
        {"from": "P", "to": "S", "slope_dist": slope, "zenith": there, "hi": 1.6, "ht": 1.6, "day": "1"},
    ]
    run = toolbox.run(
        "reducesights", INPUT=toolbox.table(rows), REFRACTION_SOLVED=True, ANGLE_SIGMA=1.0, REFRACTION_SIGMA=0.05
    )
    both, single = run.rows()
    assert both["dh"] == pytest.approx(23.0, abs=1e-3) and both["k_solved"] == pytest.approx(0.171, abs=2e-3)
    assert single["k"] == both["k_solved"] and single["dh"] == pytest.approx(23.0, abs=1e-3)
    # One second at 1,500 m is 7.27 mm, both ways 5.14; k's error of 0.05 is 8.83 mm and cancels in the pair.
    assert both["sd"] == pytest.approx(1500.0 * SECOND / np.sqrt(2.0), rel=1e-3)
    assert single["sd"] == pytest.approx(np.hypot(1500.0 * SECOND, 0.05 * 1500.0**2 / 2 / 6_371_000.0), rel=1e-3)
    assert both["k_sd"] == pytest.approx(1500.0 * SECOND / np.sqrt(2.0) * 2 * 6_371_000.0 / 1500.0**2, rel=1e-3)


def test_both_ways_on_different_days_keep_the_error_of_k(toolbox):
    rows = [
        {"from": "P", "to": "Q", "horiz_dist": 1000.0, "zenith": 90.0, "day": "1"},
        {"from": "Q", "to": "P", "horiz_dist": 1000.0, "zenith": 90.0, "day": "2"},
    ]
    (row,) = toolbox.run("reducesights", INPUT=toolbox.table(rows), ANGLE_SIGMA=0.0001, REFRACTION_SIGMA=0.1).rows()
    assert row["sd"] == pytest.approx(0.1 * 1e6 / 2 / 6_371_000.0 / np.sqrt(2.0), rel=1e-3) and row["day"] == "1, 2"


@pytest.mark.parametrize(
    "test, per_100_m",
    [
        # Source: curioustab.com 66998: 25 m to A and 50 m to B, difference 0.615 read and 0.630 true; as balanced setup
        # 0.630.
        ("3.000, 2.370, 20, 20; 3.462, 2.847, 50, 25", -0.060),
        # Source: transtutors.com 7098647: pegs 40 m apart, 1.476 and 1.432; 10 m beyond, 1.556 and 1.472: 0.001 m per
        # metre.
        ("1.476, 1.432, 20, 20; 1.556, 1.472, 50, 10", 0.100),
    ],
)
def test_two_peg_test_corrects_the_setups(toolbox, test, per_100_m):
    rows = [{"from": "A", "to": "B", "back": 1.0, "fore": 1.0, "back_len": 20.0, "fore_len": 120.0}]
    run = toolbox.run("reducesights", INPUT=toolbox.table(rows), PEG_TEST=test, REFRACTION=1.0)
    (row,) = run.rows()
    # k = 1: without curvature, as the sources compute. The fore sight is 100 m longer and reads c * 100 m too much.
    assert row["coll_corr"] == pytest.approx(per_100_m, abs=5e-4) and row["dh"] == row["coll_corr"]
    assert "Two-peg test: the level's line of sight points " + ("up" if per_100_m > 0 else "down") in run.said


def test_unbalanced_setup_in_feet(toolbox):
    """0.0239 F^2 ft of curvature, F in thousands of feet (Civil Engineering Formulas, ch. 7; from memory to 4
    digits)."""
    rows = [{"from": "A", "to": "B", "back": 5.0, "fore": 4.0, "back_len": 100.0, "fore_len": 1000.0}]
    run = toolbox.run("reducesights", INPUT=toolbox.table(rows), HEIGHT_UNIT="foot", REFRACTION=0.0)
    (row,) = run.rows()
    assert row["curv_corr"] == pytest.approx(0.0239 * (1.0 - 0.01), abs=1e-4) and row["dh"] == 1.0 + row["curv_corr"]
    assert row["length"] == pytest.approx(1100.0, abs=1e-9) and row["imbalance"] == pytest.approx(900.0, abs=1e-9)
    assert "Greatest imbalance of sights: 900.0 ft" in run.said


def test_levelling_book(toolbox):
    """Common practice, no source: difference = sum of back less sum of fore sights, turning points without a name."""
    book = [
        ("BM1", 1.500, None, None),
        ("", 1.700, None, 0.300),
        ("K1", None, 1.250, None),
        ("P", 0.900, None, 1.100),
        ("", None, None, None),
        ("BM2", None, None, 1.400),
    ]
    rows = [{"point": p, "back": b, "inter": i, "fore": f} for p, b, i, f in book]
    run = toolbox.run("reducesights", INPUT=toolbox.table(rows), REJECTED="memory:", READING_SIGMA=0.5)
    found = {(row["from_pt"], row["to_pt"]): row for row in run.rows()}
    assert found["BM1", "P"]["dh"] == pytest.approx(1.2 + 0.6, abs=1e-12) and found["BM1", "P"]["setups"] == 2
    assert found["BM1", "K1"]["dh"] == pytest.approx(1.2 + 0.45, abs=1e-12)
    assert found["P", "BM2"]["dh"] == pytest.approx(-0.5, abs=1e-12)
    assert found["BM1", "P"]["sd"] == pytest.approx(0.0005 * 2.0, rel=1e-9) and found["BM1", "P"]["rows"] == "1, 2, 4"
    assert run.column("reason", "REJECTED") == ["In the levelling book the row has no reading."]


def test_no_section_leads_across_an_unreadable_row(toolbox):
    book = [("BM1", "1.500", ""), ("T", "1.700", "0,3x"), ("BM2", "", "1.400"), ("BM3", "1.0", ""), ("BM4", "", "0.5")]
    rows = [{"point": p, "back": b, "fore": f} for p, b, f in book]
    run = toolbox.run("reducesights", INPUT=toolbox.table(rows), REJECTED="memory:")
    (row,) = run.rows()
    assert (row["from_pt"], row["to_pt"]) == ("BM3", "BM4")
    assert run.column("row", "REJECTED") == [1, 2, 3]


def test_rejected_rows_say_why(toolbox):
    # 10 m need no k, 100 m do: 0.8 mm.
    good = {"from": "A", "to": "B", "slope_dist": "10.0", "zenith": "90"}
    rows = [
        good,
        {**good, "zenith": "90x"},
        {**good, "slope_dist": "-5"},
        {**good, "to": ""},
        {**good, "to": "A"},
        {**good, "zenith": ""},
        {**good, "zenith": "0"},
        {**good, "to": "C", "slope_dist": "100"},
    ]
    run = toolbox.run("reducesights", INPUT=toolbox.table(rows), REJECTED="memory:")
    reasons = dict(zip(run.column("row", "REJECTED"), run.column("reason", "REJECTED")))
    assert len(run.rows()) == 1 and sorted(reasons) == [2, 3, 4, 5, 6, 7, 8]
    for row, words in (
        (2, "not a number"),
        (3, "negative"),
        (4, "names no point"),
        (5, "starts and ends at 'A'"),
        (6, "neither a distance"),
        (7, "not a sight"),
        (8, "coefficient of refraction"),
    ):
        assert words in reasons[row]


def test_points_give_the_radius_and_the_lines(toolbox):
    """Euler's radius by M and nu of WGS 84 at 60° north (Torge and Mueller: 6,383,453.8 m across, 6,383,...): with
    k = 0 a sight of 2 km is corrected by D^2/2R, along the meridian and across it, against closed formulas."""
    a, e2, lat = 6378137.0, 0.0066943799901413, np.radians(60.0)
    nu = a / np.sqrt(1.0 - e2 * np.sin(lat) ** 2)
    meridian = a * (1.0 - e2) / (1.0 - e2 * np.sin(lat) ** 2) ** 1.5
    stations = toolbox.points(
        [
            {"at": (10.0, 59.99), "name": "S"},
            {"at": (10.0, 60.01), "name": "N"},
            {"at": (9.98, 60.0), "name": "W"},
            {"at": (10.02, 60.0), "name": "E"},
        ]
    )
    rows = [{"from": p, "to": q, "horiz_dist": 2000.0, "zenith": 90.0} for p, q in (("S", "N"), ("W", "E"), ("N", "X"))]
    run = toolbox.run("reducesights", INPUT=toolbox.table(rows), STATIONS=stations, REFRACTION=0.0, LATITUDE=45.0)
    found = run.rows()
    for row, radius in zip(found, (meridian, nu)):
        assert row["curv_corr"] == pytest.approx(2000.0**2 / 2.0 / radius, abs=1e-6)
    assert found[2]["curv_corr"] == pytest.approx(2000.0**2 / 2.0 / 6378101.0, abs=1e-6)  # sqrt(M nu) at 45 degrees
    drawn = [feature.geometry().asWkt(2) for feature in run.layer().getFeatures()]
    assert drawn[0] == "LineString (10 59.99, 10 60.01)" and drawn[2] == ""


def test_k_by_sight_by_day_and_for_all(toolbox):
    rows = [
        {"from": "A", "to": "B", "horiz_dist": 1000.0, "zenith": 90.0, "k": k, "day": day}
        for k, day in ((0.2, "mon"), (None, "mon"), (None, "tue"))
    ]
    run = toolbox.run("reducesights", INPUT=toolbox.table(rows), REFRACTION=0.13, REFRACTION_DAYS="mon=0.07")
    assert run.column("k") == [0.2, 0.07, 0.13] and "k 0.070 to 0.200" in run.said


@pytest.mark.parametrize(
    "change, words",
    [
        ({"drop": ("from",)}, "has no fields 'from' and 'to', nor a field 'point'"),
        ({"drop": ("to",)}, "has no fields 'from' and 'to'"),
        ({"drop": ("horiz_dist",)}, "has angles but no distance"),
        ({"drop": ("horiz_dist", "zenith")}, "neither a distance"),
        ({"REFRACTION_DAYS": "mon 0.1"}, "REFRACTION_DAYS: 'mon 0.1' is not day=k."),
        ({"REFRACTION_DAYS": "sun=0.1"}, "no row of layer 'list' has the day 'sun'"),
        ({"PEG_TEST": "1 2 3"}, "The two-peg test '1 2 3' is not two setups of four numbers"),
        ({"PEG_TEST": "1 1 5 5; 1 1 20 5", "COLLIMATION": 3.0}, "COLLIMATION and PEG_TEST are both given"),
        ({"REFRACTION": 130.0}, "coefficient of refraction"),
        ({"ANGLE_SIGMA": -1.0}, "ANGLE_SIGMA is -1.0, but must be at least 0"),
        ({"ZENITH_FIELD": "z"}, "has no field 'z' (ZENITH_FIELD)"),
        ({"LATITUDE": 95.0}, "beyond 90 degrees"),
        ({"RADIUS": 6371.0 / 10.0}, "RADIUS is 637.1; it must be the Earth's radius in metres"),
    ],
)
def test_bad_input(toolbox, change, words):
    row = {"from": "A", "to": "B", "horiz_dist": 1000.0, "zenith": 90.0, "day": "mon"}
    drop = change.pop("drop", ()) if isinstance(change, dict) else ()
    table = toolbox.table([{key: value for key, value in row.items() if key not in drop}])
    assert words in toolbox.refusal("reducesights", INPUT=table, **{"REFRACTION": 0.13, **change})


STEEP = [
    {"from": "A", "to": "B", "horiz_dist": 1411.402, "vertical": "6 32 58.3"},
    {"from": "B", "to": "A", "horiz_dist": 1411.402, "vertical": "-6 33 36.7"},
]


def test_what_a_horizontal_distance_is_must_be_said_on_a_steep_line(toolbox):
    """Surveying (university press textbook, fliphtml5.com/eziky/puvl/surveying-chandra1/93), Example 3.9, whose
    distance is an arc and whose radius is 6383.393 km: k = 2 x 0.079 by its own angles."""
    table = toolbox.table(STEEP)
    said = toolbox.refusal("reducesights", INPUT=table, ANGLE_UNIT="dms")
    assert "Layer 'list', field 'horiz_dist', row" in said and "2.1 mm" in said and "(HORIZONTAL_AT)" in said
    said = toolbox.refusal("reducesights", INPUT=table, ANGLE_UNIT="dms", HORIZONTAL_AT="ellipsoid")
    assert "2.5 mm for each 100 m" in said and "(SITE_HEIGHT)" in said
    options = {"ANGLE_UNIT": "dms", "RADIUS": 6_383_393.0, "SITE_HEIGHT": 197.8}
    run = toolbox.run("reducesights", INPUT=table, HORIZONTAL_AT="ellipsoid", **options)
    (row,) = run.rows()
    assert row["k_solved"] == pytest.approx(0.1581, abs=2e-4) and "Earth's radius 6383.393 km as given" in run.said
    assert "arcs on the ellipsoid, the sights 197.8000 m above it" in run.said
    (row,) = toolbox.run("reducesights", INPUT=table, HORIZONTAL_AT="instrument", **options).rows()
    assert row["k_solved"] == pytest.approx(0.147, abs=1e-3)


def test_readings_in_the_other_unit_are_doubted(toolbox):
    rows = [{"from": "A", "to": "B", "slope_dist": 100.0, "zenith": 99.5}]
    run = toolbox.run("reducesights", INPUT=toolbox.table(rows), REFRACTION=0.13)
    (doubt,) = [text for text in run.warnings if "check the unit" in text]
    assert "read in degrees (ANGLE_UNIT), and look like gon: their middle is 99.50" in doubt
    run = toolbox.run("reducesights", INPUT=toolbox.table(rows), REFRACTION=0.13, ANGLE_UNIT="gon")
    assert not any("look like" in text for text in run.warnings)
    rows = [{"from": "A", "to": "B", "slope_dist": 100.0, "zenith": 90.5}]
    run = toolbox.run("reducesights", INPUT=toolbox.table(rows), REFRACTION=0.13, ANGLE_UNIT="gon")
    assert any("look like degrees: their middle is 90.50" in text for text in run.warnings)


def test_doubtful_sights_are_warned_of(toolbox):
    rows = [{"from": "A", "to": "B", "horiz_dist": 100.0, "zenith": 2.5}]
    run = toolbox.run("reducesights", INPUT=toolbox.table(rows), REFRACTION=0.13, HORIZONTAL_AT="instrument")
    assert any("zenith or vertical angles" in text for text in run.warnings)
    feet = [{"from": "A", "to": "B", "back": 14.2, "fore": 3.0}]
    run = toolbox.run("reducesights", INPUT=toolbox.table(feet))
    assert any("longer than a staff: row 1" in text for text in run.warnings)
    assert any("without both sight lengths" in text for text in run.warnings)
