"""What runs say of the accuracies they were given: the number that was typed, in the unit it was typed in."""

import pytest

pyproj = pytest.importorskip("pyproj")

from tests.host.unit_job import LABELS, METRES  # noqa: E402

# 0.008 and 0.007 of each unit; metres in millimetres.
SAID = {"metre": ("8.0 mm", "7.0 mm"), "foot": ("0.008 ft", "0.007 ft"), "us_foot": ("0.008 US ft", "0.007 US ft")}
EARTH = pyproj.Geod(ellps="WGS84")


def straight(toolbox, unit, number=31):
    """Stations 100 m apart, on a curve of s^2 / 2R with readings of 0.008 of the ``unit``, heights in it."""
    places = [EARTH.fwd(8.0, 50.0, 60.0, 100.0 * k)[:2] if k else (8.0, 50.0) for k in range(number)]
    rows = [
        {"at": at, "height": (120.0 + (100.0 * k - 1500.0) ** 2 / 12.76e6) / METRES[unit] + 0.008 * ((7 * k) % 3 - 1)}
        for k, at in enumerate(places)
    ]
    axis = toolbox.lines([{"at": [places[0], places[-1]], "name": "A"}])
    return {"STATIONS": toolbox.points(rows), "AXIS": axis, "HEIGHT_UNIT": unit}


@pytest.mark.parametrize("unit", METRES)
def test_a_standard_deviation_for_all_is_told_as_it_was_typed(toolbox, tmp_path, unit):
    given, (sigma, sigma_line), page = straight(toolbox, unit), SAID[unit], tmp_path / "shapes.html"
    test = toolbox.run("testcurvature", SIGMA=0.008, HTML=str(page), **given)
    fit = toolbox.run(
        "fitreference", FIT="line", LINE="fitted", REFERENCE="memory:", SIGMA=0.008, SIGMA_LINE=0.007, **given
    )
    for text in (test.said, page.read_text("utf-8"), fit.said):
        assert f"standard deviation {sigma} for all" in text, LABELS[unit]
    assert f"standard deviation {sigma_line} for all" in fit.said


def test_a_fine_standard_deviation_is_not_rounded_away(toolbox):
    run = toolbox.run("testcurvature", SIGMA=0.00075, **straight(toolbox, "metre"))
    assert "standard deviation 0.75 mm for all" in run.said
