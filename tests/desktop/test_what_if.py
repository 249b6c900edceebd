"""A straight line that is tried in the profile, in the real window; what ``what_if_script.py`` saw there."""

import numpy as np
import pyproj
import pytest


@pytest.fixture(scope="module")
def seen(drive):
    return drive("what_if_script.py")


def test_it_is_marked_and_asks_for_the_stations(seen):
    assert seen["bar_before"] is False
    found = seen["choose"]
    assert found["visible"] and "nothing is written" in found["asked"] and "first station" in found["asked"]
    text, points, none_yet = found["first"]
    assert points == 1 and none_yet and "0+200" in text and "second station" in text


def test_the_second_point_follows_the_pointer(seen):
    found = seen["choose"]
    assert found["follows"] == pytest.approx([200.0, 1650.0, 200.0, 2150.0], abs=0.01)
    assert found["not yet"] is False and found["selected"] == 0


def chord_heights(places, a, b):
    """Heights of the plane through stations a and b that is level across half-way, from Earth-centred positions by
    PROJ: along each station's own vertical, which is met where (X - A) has no part along the plane's normal."""
    lat, lon, h = (np.array(places[key]) for key in ("lat", "lon", "height"))
    n = np.array(places["undulation"])
    to_space = pyproj.Transformer.from_crs("EPSG:4979", "EPSG:4978", always_xy=True)
    ground = np.array(to_space.transform(lon, lat, np.zeros(len(lat)))).T
    up = np.array(to_space.transform(lon, lat, np.full(len(lat), 1000.0))).T - ground
    up /= np.linalg.norm(up, axis=1)[:, None]
    ends = [ground[k] + (h[k] + n[k]) * up[k] for k in (a, b)]
    ahead = ends[1] - ends[0]
    across = np.cross(ahead, up[a] + up[b])
    normal = np.cross(across, ahead)
    return ((ends[0] - ground) @ normal) / (up @ normal) - n


def test_the_line_is_the_chord_in_space(seen):
    """On the layer's own places and undulations; PROJ's Earth-centred positions are good to a nanometre or two, and
    the ellipsoids of WGS 84 and of the layer's datum differ by a tenth of a millimetre in size."""
    found = seen["choose"]
    places, (a, b) = found["places"], found["controls"]
    assert places["straight"] == pytest.approx(chord_heights(places, a, b).tolist(), abs=1e-6)
    assert places["straight"][a] == pytest.approx(places["height"][a], abs=1e-9)
    assert len(set(np.round(places["undulation"], 4))) > 3 and "own undulation" in found["described"]


def test_the_gap_and_its_rule_of_thumb_stand_beside_each_other(seen):
    found = seen["choose"]
    places = found["places"]
    k = int(np.argmin(np.abs(np.array(places["chainage"]) - 1250.0)))
    gap = abs(places["straight"][k] - places["flat"][k]) * 1000.0
    # Method page 8: 0.0785 K² for a tangent, so the product of the distances to both ends for a chord.
    rule = 78.5 * 1.05 * 0.90
    assert (
        "What if, 1+250" in found["story"]
        and f"straight line {gap:.1f} mm below the line with no curvature" in found["story"]
    )
    told = float(found["story"].split("8-inch rule ")[1].split()[0])
    assert told == pytest.approx(rule, rel=2e-3) and gap == pytest.approx(rule, rel=0.02)
    assert "as-built" in found["story"] and "level surface through A" in found["story"]
    assert "A 0+200" in found["told"] and "B 2+150" in found["told"] and "8-inch rule" in found["told"]
    assert "geoid" not in found["told"], "the undulations are known"


def test_three_lines_differ_by_their_dashes_and_stay_in_both_views(seen):
    found = seen["choose"]
    assert all(count > 10 for count, _style, _dash in found["drawn"].values())
    assert len({str(dash) for _count, _style, dash in found["drawn"].values()}) == 3
    # The views differ by the design above the level line, for whatever is drawn.
    assert found["straight view"] == pytest.approx([found["design above level"]] * 2, abs=1e-6)


def test_points_stay_while_their_stations_do(seen):
    """Whatever has the layer read anew, an edit or a run that wrote it: the chosen stations are found in it again."""
    assert seen["choose"]["read anew"] == pytest.approx([200.0, 2150.0], abs=0.01)
    kept, gone, back = seen["leave"]["station gone"]
    assert kept == pytest.approx([1000.0], abs=0.01) and gone == back == []


def test_nothing_is_written(seen):
    assert seen["choose"]["same file"] is True


def test_the_button_hands_it_over_as_a_chord(seen):
    found = seen["form"]
    assert found["entry"] == "tautline:designheights" and found["given"]["DESIGN"] in ("chord", "0")
    assert found["given"]["HEIGHT_UNIT"] in ("metre", "0") and found["undulation"] in ("field", "2")
    (s_a, h_a), (s_b, h_b) = found["controls"]
    given = [float(found["given"][key]) for key in ("CHAINAGE_A", "CHAINAGE_B")]
    assert given == pytest.approx([s_a, s_b], abs=1e-4) and found["heights"] == pytest.approx([h_a, h_b], abs=1e-6)
    assert found["stations"] == found["layer"], "the stations that the recorded run took"
    assert any("takes precedence over the chord" in text for text in found["messages"]), (
        "the axis layer states a design"
    )


def test_leaving_and_other_ways_of_choosing(seen):
    found = seen["leave"]
    assert found["left"] == [False, False, False, False] and found["ranges"] and found["selects again"] == 1
    assert found["of the selection"] == pytest.approx([450.0, 2000.0], abs=0.01)
    (s_a, h_a, k_a), (s_b, h_b, k_b) = found["points"]
    assert k_a is None and k_b is None and s_a == pytest.approx(425.0, abs=3.0) and s_b == pytest.approx(1975.0, abs=3)
    assert h_b > h_a, "the second was clicked higher up"
    assert found["ends"][0] == pytest.approx([s_a, s_b])
    assert found["keys"] == pytest.approx([0.0, 2600.0], abs=0.01)
    assert found["third begins anew"] == [1, True]
    points, text = found["the same twice"]
    assert points == 1 and "one chainage" in text
    assert found["another axis"] == [True, 0, True] and found["left by the button"] == [False, False]


def test_many_stations_follow_the_pointer(seen):
    found = seen["many"]
    print(found)
    assert found["line"] == 20_000 and found["follows"]
