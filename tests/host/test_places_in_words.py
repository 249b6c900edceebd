"""Places along the axis and lengths in sentences: station notation and the run's unit, in a job in feet too."""

import re

import pytest

pyproj = pytest.importorskip("pyproj")

from tests.host.unit_job import METRES  # noqa: E402

EARTH = pyproj.Geod(ellps="WGS84")
US = METRES["us_foot"]


def job(toolbox, wave=0.0, bend=(), number=31, first=-50.0):
    """Stations 100 US survey feet apart from ``first`` along an axis on the equator to the east, heights in feet: a
    straight line with a ``wave`` in feet at the first; the axis by way of ``bend``, feet along and aside."""
    ends = [EARTH.fwd(0.0, 0.0, 90.0, s * US)[:2] for s in (first, first + 100.0 * (number - 1))]
    middle = [EARTH.fwd(*EARTH.fwd(0.0, 0.0, 90.0, s * US)[:2], 180.0, y * US)[:2] for s, y in bend]
    rows = []
    for k in range(number):
        s = (first + 100.0 * k) * US
        height = 1000.0 + (s - 1500.0 * US) ** 2 / 2 / 6_378_137.0 / US + (wave if k == 0 else 0.0)
        rows.append({"at": EARTH.fwd(0.0, 0.0, 90.0, s)[:2], "height": height + 0.002 * ((7 * k) % 3 - 1)})
    axis = toolbox.lines([{"at": [(0.0, 0.0), *middle, ends[1]], "name": "A"}])
    return {
        "STATIONS": toolbox.points(rows),
        "AXIS": axis,
        "CHAINAGE_HEIGHT": 0.0,
        "HEIGHT_UNIT": "us_foot",
        "CHAINAGE_UNIT": "us_foot",
    }


def test_a_control_beyond_the_axis_is_told_in_notation(toolbox):
    said = toolbox.refusal("designheights", DESIGN="chord", CHAINAGE_A="500+00", **job(toolbox))
    assert "Axis 'A': control A at chainage 500+00 has no height" in said
    assert "lies within 3.281 US ft of it" in said and not re.search(r"\d m\b", said)


def test_equal_controls_are_told_in_notation(toolbox):
    more = {"CHAINAGE_A": "5+00", "CHAINAGE_B": "5+00", "HEIGHT_A": 1000.0, "HEIGHT_B": 1000.0}
    said = toolbox.refusal("designheights", DESIGN="chord", **more, **job(toolbox))
    assert "Both controls are at chainage 5+00; they must be apart." in said


def test_a_bent_axis_departs_in_the_unit_of_chainages(toolbox):
    run = toolbox.run("designheights", DESIGN="chord", **job(toolbox, bend=[(1500.0, 100.0)]))
    (bends,) = [text for text in run.warnings if "bends: it departs" in text]
    # 100 feet aside in the middle, from the chord of the first and last station on it.
    assert float(re.search(r"departs ([\d.]+) US ft from the geodesic", bends)[1]) == pytest.approx(100.0, abs=4.0)


def test_the_greatest_departure_is_near_a_station(toolbox, tmp_path):
    page = tmp_path / "shapes.html"
    run = toolbox.run("testcurvature", SIGMA=0.002, REMOVE_BLUNDERS=False, HTML=str(page), **job(toolbox, wave=-0.2))
    (sentence,) = run.column("sentence")
    for text in (sentence, run.said, page.read_text("utf-8")):
        assert re.search(r"departures to ±[\d.]+ US ft near \u22120\+50 \(", text), text


@pytest.mark.parametrize("unit", METRES)
def test_a_tilt_has_no_unit(toolbox, tmp_path, unit):
    """Ten stations 10 m apart that rise by 0.2 mm from each to the next: 20 ppm in every unit."""
    surveys = []
    for name, rise, day in (("first", 0.0, "2025-01-01"), ("second", 0.0002, "2026-01-01")):
        rows = [
            {"at": (0.0001 * k, 0.0), "axis": "A", "station": f"P{k}", "chainage": 10.0 * k / METRES[unit], "sd": 0.001}
            | {"height": (50.0 + rise * k) / METRES[unit], "date": day}
            for k in range(10)
        ]
        surveys.append(toolbox.points(rows, name=name))
    page = tmp_path / "changes.html"
    units = {"HEIGHT_UNIT": unit, "CHAINAGE_UNIT": unit, "TILT": True}
    run = toolbox.run("comparesurveys", SURVEYS=surveys, REPORT=str(page), **units)
    assert ", tilt +20.0 ppm (not judged)" in run.said
    text = page.read_text("utf-8")
    assert "Tilt (ppm)" in text and "+20.0" in text and "per km" not in text + run.said
