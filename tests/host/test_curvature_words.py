"""What testcurvature says: its verdict carries the interval and its percentage, lengths are in the run's unit."""

import re

import pytest

FOOT = 0.3048


def row(toolbox, bend, number=31, spacing=0.0002, unit=1.0):
    """Stations along the equator, in ``unit`` metres: level where ``bend`` is 0, straight where it is 1 (s^2 / 2R)."""
    metres = 111_319.490793
    middle = 0.5 * (number - 1) * spacing
    rows = []
    for k in range(number):
        s = (k * spacing - middle) * metres
        noise = 0.0005 * (-1) ** (k // 2)
        rows.append({"at": (k * spacing, 0.0), "height": (50.0 + bend * s**2 / 2 / 6_378_137.0 + noise) / unit})
    axis = toolbox.lines([{"at": [(0.0, 0.0), ((number - 1) * spacing, 0.0)], "name": "line"}])
    return {"STATIONS": toolbox.points(rows), "AXIS": axis}


@pytest.mark.parametrize("bend, spacing", [(0.0, 0.001), (1.0, 0.001), (0.5, 0.002), (1.0, 0.0002)])
def test_every_verdict_says_what_its_interval_is(toolbox, bend, spacing):
    run = toolbox.run("testcurvature", SIGMA=0.002, **row(toolbox, bend, spacing=spacing))
    (sentence,) = run.column("sentence")
    assert re.search(r"curvature factor \u2212?[\d.]+ ± [\d.]+ \(95 %\)", sentence), sentence


def test_what_would_decide_is_in_the_units_of_the_run(toolbox):
    given = row(toolbox, 0.5, spacing=0.0001, unit=FOOT)
    run = toolbox.run("testcurvature", SIGMA=0.002 / FOOT, HEIGHT_UNIT="foot", **given)
    (sentence,) = run.column("sentence")
    assert "undecided" in sentence and re.search(r"[Aa] length of \d+ ft", sentence), sentence
    assert not re.search(r"\d m\b|\d km\b|\d mm\b", sentence), sentence


def test_a_page_draws_some_axes_and_has_the_numbers_of_all(toolbox, tmp_path):
    points, lines = [], []
    for axis in range(13):
        at = 0.01 * axis
        lines.append({"at": [(0.0, at), (0.01, at)], "name": f"axis {axis}"})
        points += [{"at": (0.001 * k, at), "height": 50.0 + 0.001 * (k % 3)} for k in range(11)]
    page = tmp_path / "shapes.html"
    given = {"STATIONS": toolbox.points(points), "AXIS": toolbox.lines(lines)}
    toolbox.run("testcurvature", SIGMA=0.002, HTML=str(page), **given)
    text = page.read_text("utf-8")
    assert text.count("<figure>") == 12 and "The first 12 of 13 axes are drawn; the numbers of all are above." in text
    assert all(text.count(f"Axis &#39;axis {axis}&#39;") >= 1 for axis in range(13)) and text.count("<table>") == 13
